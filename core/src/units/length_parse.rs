//! Reading lengths as tapes, drawings and spreadsheets write them.
//!
//! One pass over the bytes, without allocation. Numbers stay exact rationals until the unit is known and are rounded to a
//! picometre once.

use super::length::ten_to;
use super::{Length, LengthUnit};
use crate::error::{Error, ErrorKind};

const ACCEPTED: &str = "12'-3 5/8\", 147 5/8\", 12ft 3.625in, 3.5 in, 60.3 mm, 1.2 m";

/// A number as written: a whole part and what follows it.
#[derive(Clone, Copy)]
struct Number {
    whole: u64,
    part: Part,
    start: usize,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Part {
    None,
    Fraction {
        numerator: u64,
        denominator: u64,
    },
    /// At most [`SHORT`] digits after the point, zeros among them.
    Decimals {
        digits: u64,
        places: usize,
    },
    /// Byte range of more digits than that.
    LongDecimals {
        start: usize,
        end: usize,
    },
}

/// As many digits as surely fit into 64 bits when they are counted as one number.
const SHORT: usize = 18;

/// Copied into the rare paths, so that the place in the text can stay in a register on the common one.
#[derive(Clone, Copy)]
struct Scan<'a> {
    text: &'a str,
    bytes: &'a [u8],
    at: usize,
}

/// Reads a length; `bare` is the unit of a number without one, `exact` refuses rounding.
pub(super) fn parse(text: &str, bare: Option<LengthUnit>, exact: bool) -> Result<Length, Error> {
    let mut s = Scan { text, bytes: text.as_bytes(), at: 0 };
    let negative = s.lead()?;
    let first = s.number()?;
    s.spaces();
    let unit_at = s.at;
    let (feet, last, unit) = match s.unit()? {
        None => {
            if !s.done() {
                return Err(s.unexpected());
            }
            let Some(unit) = bare else {
                return Err(Error::new(ErrorKind::Unit, "a length needs its unit").value_of(text).pointing(unit_at, unit_at).accepts(ACCEPTED));
            };
            (0, first, unit)
        }
        Some(LengthUnit::Foot) => {
            s.separators();
            if s.done() { (0, first, LengthUnit::Foot) } else { (s.whole_feet(&first)?, s.inches()?, LengthUnit::Inch) }
        }
        Some(LengthUnit::Inch) => {
            s.spaces();
            if s.peek().is_ascii_digit() {
                return Err(s.fault("inches stand after feet, not before", first.start));
            }
            (0, first, LengthUnit::Inch)
        }
        Some(metric) => (0, first, metric),
    };
    s.spaces();
    if !s.done() {
        return Err(s.unexpected());
    }
    let (rest, inexact) = s.value(&last, unit);
    if exact && inexact {
        return Err(Error::new(ErrorKind::OutOfRange, "not a whole number of picometres").value_of(text).accepts("a value that needs no rounding"));
    }
    // Numbers of 18 digits in any unit stay far below 128 bits.
    let pm = feet + rest;
    match i64::try_from(pm) {
        Ok(pm) => Ok(Length::from_pm(if negative { -pm } else { pm })),
        // One more than the greatest fits where it is negative.
        Err(_) if negative && pm == u128::from(i64::MIN.unsigned_abs()) => Ok(Length::MIN),
        Err(_) => Err(s.too_large()),
    }
}

#[inline]
fn picometres(whole: u64, unit: LengthUnit) -> u128 {
    u128::from(whole) * u128::from(unit.picometres().unsigned_abs())
}

/// A fraction of a unit of so many picometres, half-even, and whether rounding was needed.
#[inline]
fn part_of(pm: u64, numerator: u64, denominator: u64) -> (u128, bool) {
    let round = |floor: u128, rest: u64| {
        // At most 18 digits were read, so twice the rest fits.
        let up = rest * 2 > denominator || (rest * 2 == denominator && floor & 1 == 1);
        (floor + u128::from(up), rest != 0)
    };
    match numerator.checked_mul(pm) {
        Some(product) if denominator.is_power_of_two() => round(u128::from(product >> denominator.trailing_zeros()), product & (denominator - 1)),
        // 64-bit division where it fits: it is several times faster.
        Some(product) => round(u128::from(product / denominator), product % denominator),
        None => {
            let product = u128::from(numerator) * u128::from(pm);
            let floor = product / u128::from(denominator);
            #[allow(clippy::cast_possible_truncation, reason = "a remainder is less than its 64-bit divisor")]
            round(floor, (product - floor * u128::from(denominator)) as u64)
        }
    }
}

impl Scan<'_> {
    #[inline(always)]
    fn done(&self) -> bool {
        self.at >= self.bytes.len()
    }

    /// The byte that stands here; 0 at the end.
    #[inline(always)]
    fn peek(&self) -> u8 {
        self.bytes.get(self.at).copied().unwrap_or(0)
    }

    /// The character that stands here, where its first byte is not ASCII; NUL otherwise, and for what no length holds.
    #[inline(always)]
    fn wide(self) -> char {
        let first = self.peek();
        if first < 0x80 {
            return '\0';
        }
        // All marks, spaces, hyphens and fractions have two bytes, or three of which this is the first.
        let low = |ahead: usize| u32::from(self.bytes.get(self.at + ahead).map_or(0, |b| b & 0x3f));
        let code = match first {
            0xC2..=0xDF => u32::from(first & 0x1f) << 6 | low(1),
            0xE2 => 0x2000 | low(1) << 6 | low(2),
            _ => 0,
        };
        char::from_u32(code).unwrap_or('\0')
    }

    /// Steps over this byte if it stands here.
    #[inline(always)]
    fn take(&mut self, byte: u8) -> bool {
        let found = self.peek() == byte;
        self.at += usize::from(found);
        found
    }

    #[inline(always)]
    fn spaces(&mut self) {
        // Most often something else stands here: one question instead of three.
        while !matches!(self.peek(), b'!'..=0x7f) {
            match self.peek() {
                b' ' | b'\t' => self.at += 1,
                0x80.. => match self.wide() {
                    // No-break, narrow no-break, thin space.
                    c @ ('\u{a0}' | '\u{202f}' | '\u{2009}') => self.at += c.len_utf8(),
                    _ => return,
                },
                _ => return,
            }
        }
    }

    #[inline(always)]
    fn hyphen(&mut self) -> bool {
        self.take(b'-') || self.take_wide(|c| matches!(c, '\u{2010}' | '\u{2011}' | '\u{2013}'))
    }

    #[inline(always)]
    fn slash(&mut self) -> bool {
        self.take(b'/') || self.take_wide(|c| matches!(c, '\u{2044}' | '\u{2215}'))
    }

    /// Steps over a character beyond ASCII if it is one of these.
    #[inline(always)]
    fn take_wide(&mut self, these: impl Fn(char) -> bool) -> bool {
        let c = self.wide();
        let found = these(c);
        if found {
            self.at += c.len_utf8();
        }
        found
    }

    #[inline(always)]
    fn sign(&mut self) -> bool {
        match self.peek() {
            b'-' => {
                self.at += 1;
                true
            }
            b'+' => {
                self.at += 1;
                false
            }
            _ => self.take_wide(|c| c == '\u{2212}'),
        }
    }

    /// What may stand in front of the first number; whether it is a minus. Most texts start with a digit.
    #[inline(always)]
    fn lead(&mut self) -> Result<bool, Error> {
        if self.peek().is_ascii_digit() {
            return Ok(false);
        }
        self.spaces();
        let negative = self.sign();
        self.spaces();
        if self.done() { Err(self.fault("a length is missing", self.at)) } else { Ok(negative) }
    }

    /// What may stand between feet and inches: spaces and one hyphen.
    #[inline(always)]
    fn separators(&mut self) {
        self.spaces();
        let before = self.at;
        if self.hyphen() {
            self.spaces();
            if self.done() {
                self.at = before;
            }
        }
    }

    /// The feet that stand before inches.
    #[inline(always)]
    fn whole_feet(&self, n: &Number) -> Result<u128, Error> {
        if n.part == Part::None {
            Ok(picometres(n.whole, LengthUnit::Foot))
        } else {
            Err(self.fault("a part of a foot and inches cannot stand together", n.start))
        }
    }

    /// The inches after feet; their mark may be missing.
    #[inline(always)]
    fn inches(&mut self) -> Result<Number, Error> {
        let n = self.number()?;
        self.spaces();
        let at = self.at;
        match self.unit()? {
            None | Some(LengthUnit::Inch) => Ok(n),
            Some(LengthUnit::Foot) => Err(self.fault("feet twice", at)),
            Some(_) => Err(self.fault("feet and metric units cannot stand together", at)),
        }
    }

    /// Steps over the digits that stand here: the number that they make, right for up to [`SHORT`] of them, and how many they are.
    #[inline(always)]
    fn run_of_digits(&mut self) -> (u64, usize) {
        let (mut n, mut count) = (0_u64, 0);
        for byte in self.bytes.get(self.at..).unwrap_or_default() {
            let digit = byte.wrapping_sub(b'0');
            if digit > 9 {
                break;
            }
            n = n.wrapping_mul(10).wrapping_add(u64::from(digit));
            count += 1;
        }
        self.at += count;
        (n, count)
    }

    /// The whole number that stands here; nothing is stepped over where there is none.
    #[inline(always)]
    fn digits(&mut self) -> Result<u64, Error> {
        let (n, count) = self.run_of_digits();
        if count > SHORT { Err(self.too_large()) } else { Ok(n) }
    }

    #[inline(always)]
    fn number(&mut self) -> Result<Number, Error> {
        let start = self.at;
        let whole = self.digits()?;
        let none = self.at == start;
        let number = |whole, part| Ok(Number { whole, part, start });
        match self.peek() {
            b'.' => {
                self.at += 1;
                let part = self.decimals(none)?;
                if self.peek() == b'/' || self.vulgar().is_some() {
                    return Err(self.fault("decimals and a fraction cannot stand together", self.at));
                }
                return number(whole, part);
            }
            b',' => return Err(self.fault("a decimal comma or thousands separator is not accepted", self.at)),
            b'\'' | b'"' | b'a'..=b'z' if !none => return number(whole, Part::None),
            _ => {}
        }
        if none {
            return match self.vulgar() {
                Some(part) => number(0, part),
                None if self.done() => Err(self.fault("a number is missing", self.at)),
                None => Err(self.unexpected()),
            };
        }
        if self.slash() {
            return number(0, Part::Fraction { numerator: whole, denominator: self.denominator()? });
        }
        // A fraction may follow, behind spaces, one hyphen, or (vulgar) directly.
        let back = self.at;
        self.spaces();
        if !self.peek().is_ascii_digit() {
            if self.hyphen() {
                self.spaces();
            }
            if let Some(part) = self.vulgar() {
                return number(whole, part);
            }
        }
        if self.peek().is_ascii_digit() {
            let numerator = self.digits()?;
            if self.slash() {
                return number(whole, Part::Fraction { numerator, denominator: self.denominator()? });
            }
        }
        self.at = back;
        number(whole, Part::None)
    }

    #[inline(always)]
    fn denominator(&mut self) -> Result<u64, Error> {
        let at = self.at;
        match self.digits()? {
            0 => Err(self.fault(if self.at > at { "a denominator of zero" } else { "a denominator is missing" }, at)),
            d => Ok(d),
        }
    }

    #[inline(always)]
    fn vulgar(&mut self) -> Option<Part> {
        let c = self.wide();
        let (numerator, denominator) = match c {
            '\u{bd}' => (1, 2),
            '\u{bc}' => (1, 4),
            '\u{be}' => (3, 4),
            '\u{215b}' => (1, 8),
            '\u{215c}' => (3, 8),
            '\u{215d}' => (5, 8),
            '\u{215e}' => (7, 8),
            '\u{2153}' => (1, 3),
            '\u{2154}' => (2, 3),
            '\u{2155}' => (1, 5),
            '\u{2156}' => (2, 5),
            '\u{2157}' => (3, 5),
            '\u{2158}' => (4, 5),
            '\u{2159}' => (1, 6),
            '\u{215a}' => (5, 6),
            '\u{2152}' => (1, 10),
            '\u{2151}' => (1, 9),
            _ => return None,
        };
        self.at += c.len_utf8();
        Some(Part::Fraction { numerator, denominator })
    }

    /// The digits after the point; `needed` where none stand before it.
    #[inline(always)]
    fn decimals(&mut self, needed: bool) -> Result<Part, Error> {
        let start = self.at;
        let (digits, places) = self.run_of_digits();
        if matches!(self.peek(), b',' | b'.') {
            return Err(self.fault("a decimal comma or thousands separator is not accepted", self.at));
        }
        if places == 0 && needed {
            return Err(self.fault("a number is missing", start - 1));
        }
        if places > SHORT {
            return Ok(self.long_decimals(start));
        }
        Ok(if digits == 0 { Part::None } else { Part::Decimals { digits, places } })
    }

    /// More digits after the point than [`SHORT`], up to here; zeros at their end are left out.
    #[cold]
    fn long_decimals(self, start: usize) -> Part {
        let bytes = self.bytes.get(start..self.at).unwrap_or_default();
        match bytes.iter().rposition(|b| *b != b'0').map_or(0, |last| last + 1) {
            0 => Part::None,
            places if places > SHORT => Part::LongDecimals { start, end: start + places },
            places => Part::Decimals { digits: bytes.iter().take(places).fold(0, |n, b| n * 10 + u64::from(b - b'0')), places },
        }
    }

    /// The unit that stands here, as a mark or a word.
    #[inline(always)]
    fn unit(&mut self) -> Result<Option<LengthUnit>, Error> {
        match self.peek() {
            b'"' => {
                self.at += 1;
                Ok(Some(LengthUnit::Inch))
            }
            b'\'' => {
                self.at += 1;
                Ok(Some(if self.take(b'\'') { LengthUnit::Inch } else { LengthUnit::Foot }))
            }
            b'a'..=b'z' | b'A'..=b'Z' => self.word().map(Some),
            0x80.. => match self.wide() {
                '\u{2033}' | '\u{201d}' | '\u{201c}' => {
                    self.at += '\u{2033}'.len_utf8();
                    Ok(Some(LengthUnit::Inch))
                }
                c @ ('\u{2032}' | '\u{2019}') => {
                    self.at += c.len_utf8();
                    Ok(Some(if self.take_wide(|next| next == c) { LengthUnit::Inch } else { LengthUnit::Foot }))
                }
                '\u{b5}' | '\u{3bc}' => self.word().map(Some),
                _ => Ok(None),
            },
            _ => Ok(None),
        }
    }

    #[inline(always)]
    fn word(&mut self) -> Result<LengthUnit, Error> {
        // The usual words have two letters; a third, or the start of a wide character, makes it another.
        let unit = match self.bytes.get(self.at..self.at + 2) {
            Some(b"in") => LengthUnit::Inch,
            Some(b"ft") => LengthUnit::Foot,
            Some(b"mm") => LengthUnit::Millimetre,
            _ => return self.other_word().map(|(unit, end)| self.step_to(end, unit)),
        };
        match self.bytes.get(self.at + 2) {
            Some(b'a'..=b'z' | b'A'..=b'Z' | 0x80..) => self.other_word().map(|(unit, end)| self.step_to(end, unit)),
            Some(b'.') if unit != LengthUnit::Millimetre => Ok(self.step_to(self.at + 3, unit)),
            _ => Ok(self.step_to(self.at + 2, unit)),
        }
    }

    #[inline(always)]
    fn step_to(&mut self, end: usize, unit: LengthUnit) -> LengthUnit {
        self.at = end;
        unit
    }

    /// A longer word, or one with other letters, and where it ends.
    #[inline(never)]
    fn other_word(mut self) -> Result<(LengthUnit, usize), Error> {
        let at = self.at;
        // The micro sign and the Greek letter are part of a word.
        while self.peek().is_ascii_alphabetic() || matches!(self.wide(), '\u{b5}' | '\u{3bc}') {
            self.at += if self.peek() < 0x80 { 1 } else { '\u{b5}'.len_utf8() };
        }
        let unit = match self.bytes.get(at..self.at).unwrap_or_default() {
            b"mm" => LengthUnit::Millimetre,
            b"in" | b"inch" | b"inches" => LengthUnit::Inch,
            b"ft" | b"foot" | b"feet" => LengthUnit::Foot,
            b"m" => LengthUnit::Metre,
            b"cm" => LengthUnit::Centimetre,
            b"um" | b"\xc2\xb5m" | b"\xce\xbcm" => LengthUnit::Micrometre,
            word => self.capitals(word, at)?,
        };
        if matches!(unit, LengthUnit::Foot | LengthUnit::Inch) {
            self.take(b'.');
        }
        Ok((unit, self.at))
    }

    /// A unit with capitals.
    fn capitals(self, word: &[u8], at: usize) -> Result<LengthUnit, Error> {
        let is = |names: &[&[u8]]| names.iter().any(|name| word.eq_ignore_ascii_case(name));
        if is(&[b"in", b"inch", b"inches"]) {
            Ok(LengthUnit::Inch)
        } else if is(&[b"ft", b"foot", b"feet"]) {
            Ok(LengthUnit::Foot)
        } else {
            Err(Error::new(ErrorKind::Unit, "not a unit of length").value_of(self.text).pointing(at, self.at).accepts("', \", ft, in, mm, cm, m, um"))
        }
    }

    /// Picometres of a number in this unit, and whether rounding was needed.
    #[inline(always)]
    fn value(&self, n: &Number, unit: LengthUnit) -> (u128, bool) {
        let pm = unit.picometres().unsigned_abs();
        let (part, inexact) = match n.part {
            Part::None => (0, false),
            Part::LongDecimals { start, end } => self.long_value(start, end, pm),
            Part::Fraction { numerator, denominator } => part_of(pm, numerator, denominator),
            Part::Decimals { digits, places } => {
                // Most decimals are whole picometres, and then nothing is divided.
                let (step, most) = unit.decimal_step();
                match most.checked_sub(places) {
                    Some(zeros) => (u128::from(digits) * u128::from(step * ten_to(zeros)), false),
                    None => part_of(pm, digits, ten_to(places)),
                }
            }
        };
        (picometres(n.whole, unit) + part, inexact)
    }

    /// Long decimals by exact long division from the last digit, at 100 times the unit so that the half is seen.
    #[cold]
    fn long_value(self, start: usize, end: usize, pm: u64) -> (u128, bool) {
        let mut carried: u64 = 0;
        let mut rest = false;
        for b in self.bytes.get(start..end).unwrap_or_default().iter().rev() {
            // At most 10 times the 1e14 of a metre.
            let sum = u64::from(b - b'0') * (pm * 100) + carried;
            rest |= !sum.is_multiple_of(10);
            carried = sum / 10;
        }
        let (floor, part) = (carried / 100, carried % 100);
        let up = part > 50 || (part == 50 && (rest || floor & 1 == 1));
        (u128::from(floor) + u128::from(up), rest || part != 0)
    }

    #[cold]
    fn too_large(self) -> Error {
        Error::new(ErrorKind::Overflow, "a length is too large").value_of(self.text).accepts("at most 9 223 372 m")
    }

    /// The fault at the character that stands here.
    #[cold]
    fn unexpected(self) -> Error {
        match self.text.get(self.at..).and_then(|r| r.chars().next()) {
            Some(',') => self.fault("a decimal comma or thousands separator is not accepted", self.at),
            Some('-') => self.fault("two numbers without marks between them", self.at),
            Some(_) => self.fault("an unexpected character", self.at),
            None => self.fault("the text ends too soon", self.at),
        }
    }

    #[cold]
    fn fault(self, message: &'static str, at: usize) -> Error {
        let width = self.text.get(at..).and_then(|r| r.chars().next()).map_or(0, char::len_utf8);
        Error::new(ErrorKind::Parse, message).value_of(self.text).pointing(at, at + width).accepts(ACCEPTED)
    }
}
