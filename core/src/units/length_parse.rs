//! Reading lengths as tapes, drawings and spreadsheets write them.
//!
//! One pass over the bytes, without allocation. Numbers stay exact rationals until the unit is known and are rounded to a
//! picometre once.

use super::{Length, LengthUnit};
use crate::error::{Error, ErrorKind};

const ACCEPTED: &str = "12'-3 5/8\", 147 5/8\", 12ft 3.625in, 3.5 in, 60.3 mm, 1.2 m";

#[derive(Clone, Copy, PartialEq, Eq)]
enum Mark {
    Feet,
    Inches,
    Metric(LengthUnit),
}

impl Mark {
    fn unit(self) -> LengthUnit {
        match self {
            Mark::Feet => LengthUnit::Foot,
            Mark::Inches => LengthUnit::Inch,
            Mark::Metric(u) => u,
        }
    }

    fn of(unit: LengthUnit) -> Mark {
        match unit {
            LengthUnit::Foot => Mark::Feet,
            LengthUnit::Inch => Mark::Inches,
            LengthUnit::Millimetre | LengthUnit::Centimetre | LengthUnit::Metre | LengthUnit::Micrometre => Mark::Metric(unit),
        }
    }
}

/// A number as written: a whole part, then a fraction or the place of its decimals.
#[derive(Clone, Copy, Default)]
struct Number {
    whole: u64,
    numerator: u64,
    denominator: u64,
    /// Byte range of decimals too long for `numerator`; empty otherwise.
    long_decimals: (usize, usize),
    start: usize,
    end: usize,
}

struct Scan<'a> {
    text: &'a str,
    bytes: &'a [u8],
    at: usize,
}

/// Reads a length; `bare` is the unit of a number without one, `exact` refuses rounding.
pub(super) fn parse(text: &str, bare: Option<LengthUnit>, exact: bool) -> Result<Length, Error> {
    let mut s = Scan { text, bytes: text.as_bytes(), at: 0 };
    s.spaces();
    let negative = s.sign();
    s.spaces();
    if s.done() {
        return Err(s.fault("a length is missing", s.at));
    }
    let first = s.number()?;
    s.spaces();
    let mark_at = s.at;
    let (pm, inexact) = match s.mark()? {
        None => {
            if !s.done() {
                return Err(s.unexpected());
            }
            let Some(unit) = bare else {
                return Err(Error::new(ErrorKind::Unit, "a length needs its unit").value_of(text).pointing(mark_at, mark_at).accepts(ACCEPTED));
            };
            s.value(first, Mark::of(unit))?
        }
        Some(Mark::Feet) => {
            s.separators();
            if s.done() {
                s.value(first, Mark::Feet)?
            } else {
                if first.denominator != 0 || first.long_decimals.1 > 0 {
                    return Err(s.fault("a part of a foot and inches cannot stand together", first.start));
                }
                let second = s.number()?;
                s.spaces();
                let second_at = s.at;
                match s.mark()? {
                    None | Some(Mark::Inches) => {}
                    Some(Mark::Feet) => return Err(s.fault("feet twice", second_at)),
                    Some(Mark::Metric(_)) => return Err(s.fault("feet and metric units cannot stand together", second_at)),
                }
                let (feet, _) = s.value(first, Mark::Feet)?;
                let (inches, inexact) = s.value(second, Mark::Inches)?;
                (feet.saturating_add(inches), inexact)
            }
        }
        Some(Mark::Inches) => {
            s.spaces();
            if !s.done() && s.peek().is_ascii_digit() {
                return Err(s.fault("inches stand after feet, not before", first.start));
            }
            s.value(first, Mark::Inches)?
        }
        Some(metric) => s.value(first, metric)?,
    };
    s.spaces();
    if !s.done() {
        return Err(s.unexpected());
    }
    if exact && inexact {
        return Err(Error::new(ErrorKind::OutOfRange, "not a whole number of picometres").value_of(text).accepts("a value that needs no rounding"));
    }
    let signed = if negative { -pm } else { pm };
    i64::try_from(signed).map(Length::from_pm).map_err(|_| s.too_large())
}

impl Scan<'_> {
    fn done(&self) -> bool {
        self.at >= self.bytes.len()
    }

    fn peek(&self) -> u8 {
        self.bytes.get(self.at).copied().unwrap_or(0)
    }

    fn peek_at(&self, at: usize) -> u8 {
        self.bytes.get(at).copied().unwrap_or(0)
    }

    /// Steps over `token` if the text goes on with it.
    fn take(&mut self, token: &str) -> bool {
        let found = self.bytes.get(self.at..).is_some_and(|rest| rest.starts_with(token.as_bytes()));
        if found {
            self.at += token.len();
        }
        found
    }

    fn take_any(&mut self, tokens: &[&str]) -> bool {
        tokens.iter().any(|t| self.take(t))
    }

    fn spaces(&mut self) {
        loop {
            match self.peek() {
                b' ' | b'\t' => self.at += 1,
                // No-break, narrow no-break, thin space.
                0xC2 | 0xE2 if self.take_any(&["\u{a0}", "\u{202f}", "\u{2009}"]) => {}
                _ => return,
            }
        }
    }

    fn hyphen(&mut self) -> bool {
        match self.peek() {
            b'-' => {
                self.at += 1;
                true
            }
            0xE2 => self.take_any(&["\u{2010}", "\u{2011}", "\u{2013}"]),
            _ => false,
        }
    }

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
            _ => self.take("\u{2212}"),
        }
    }

    /// What may stand between feet and inches: spaces and one hyphen.
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

    fn digits(&mut self) -> Result<Option<u64>, Error> {
        let start = self.at;
        let mut n: u64 = 0;
        while self.peek().is_ascii_digit() {
            if self.at - start >= 18 {
                return Err(self.too_large());
            }
            n = n * 10 + u64::from(self.peek() - b'0');
            self.at += 1;
        }
        Ok(if self.at > start { Some(n) } else { None })
    }

    fn number(&mut self) -> Result<Number, Error> {
        let start = self.at;
        let mut n = Number { start, ..Number::default() };
        let whole = self.digits()?;
        match self.peek() {
            b'.' => {
                self.at += 1;
                self.decimals(&mut n)?;
                n.whole = whole.unwrap_or(0);
                if whole.is_none() && n.end == start + 1 {
                    return Err(self.fault("a number is missing", start));
                }
                if self.peek() == b'/' || self.vulgar().is_some() {
                    return Err(self.fault("decimals and a fraction cannot stand together", self.at));
                }
                return Ok(n);
            }
            b',' => return Err(self.fault("a decimal comma or thousands separator is not accepted", self.at)),
            _ => {}
        }
        let Some(whole) = whole else {
            if let Some((numerator, denominator)) = self.vulgar() {
                n.numerator = numerator;
                n.denominator = denominator;
                n.end = self.at;
                return Ok(n);
            }
            return Err(if self.done() { self.fault("a number is missing", self.at) } else { self.unexpected() });
        };
        if self.slash() {
            n.numerator = whole;
            n.denominator = self.denominator()?;
            n.end = self.at;
            return Ok(n);
        }
        n.whole = whole;
        n.end = self.at;
        // A fraction may follow, behind spaces, one hyphen, or (vulgar) directly.
        let back = self.at;
        self.spaces();
        let hyphen = self.hyphen();
        if hyphen {
            self.spaces();
        }
        if let Some((numerator, denominator)) = self.vulgar() {
            n.numerator = numerator;
            n.denominator = denominator;
            n.end = self.at;
            return Ok(n);
        }
        if self.at > back && self.peek().is_ascii_digit() {
            let numerator = self.digits()?.unwrap_or(0);
            if self.slash() {
                n.numerator = numerator;
                n.denominator = self.denominator()?;
                n.end = self.at;
                return Ok(n);
            }
        }
        self.at = back;
        Ok(n)
    }

    fn slash(&mut self) -> bool {
        match self.peek() {
            b'/' => {
                self.at += 1;
                true
            }
            0xE2 => self.take_any(&["\u{2044}", "\u{2215}"]),
            _ => false,
        }
    }

    fn denominator(&mut self) -> Result<u64, Error> {
        let at = self.at;
        match self.digits()? {
            Some(0) => Err(self.fault("a denominator of zero", at)),
            Some(d) => Ok(d),
            None => Err(self.fault("a denominator is missing", at)),
        }
    }

    fn vulgar(&mut self) -> Option<(u64, u64)> {
        const VULGAR: [(&str, u64, u64); 17] = [
            ("\u{bd}", 1, 2),
            ("\u{bc}", 1, 4),
            ("\u{be}", 3, 4),
            ("\u{215b}", 1, 8),
            ("\u{215c}", 3, 8),
            ("\u{215d}", 5, 8),
            ("\u{215e}", 7, 8),
            ("\u{2153}", 1, 3),
            ("\u{2154}", 2, 3),
            ("\u{2155}", 1, 5),
            ("\u{2156}", 2, 5),
            ("\u{2157}", 3, 5),
            ("\u{2158}", 4, 5),
            ("\u{2159}", 1, 6),
            ("\u{215a}", 5, 6),
            ("\u{2152}", 1, 10),
            ("\u{2151}", 1, 9),
        ];
        if self.peek() < 0x80 {
            return None;
        }
        VULGAR.iter().find(|(token, _, _)| self.take(token)).map(|&(_, n, d)| (n, d))
    }

    /// Digits after the point.
    fn decimals(&mut self, n: &mut Number) -> Result<(), Error> {
        let start = self.at;
        while self.peek().is_ascii_digit() {
            self.at += 1;
        }
        n.end = self.at;
        if self.peek() == b',' || self.peek() == b'.' {
            return Err(self.fault("a decimal comma or thousands separator is not accepted", self.at));
        }
        let mut last = self.at;
        while last > start && self.peek_at(last - 1) == b'0' {
            last -= 1;
        }
        if last - start > 17 {
            n.long_decimals = (start, last);
            return Ok(());
        }
        if last > start {
            n.denominator = 1;
            for b in self.bytes.get(start..last).unwrap_or_default() {
                n.numerator = n.numerator * 10 + u64::from(b - b'0');
                n.denominator *= 10;
            }
        }
        Ok(())
    }

    fn mark(&mut self) -> Result<Option<Mark>, Error> {
        let at = self.at;
        Ok(Some(match self.peek() {
            b'"' => {
                self.at += 1;
                Mark::Inches
            }
            b'\'' => {
                self.at += 1;
                if self.take("'") { Mark::Inches } else { Mark::Feet }
            }
            0xE2 => {
                if self.take_any(&["\u{2033}", "\u{201d}", "\u{201c}", "\u{2032}\u{2032}", "\u{2019}\u{2019}"]) {
                    Mark::Inches
                } else if self.take_any(&["\u{2032}", "\u{2019}"]) {
                    Mark::Feet
                } else {
                    return Ok(None);
                }
            }
            b if b.is_ascii_alphabetic() || b == 0xC2 || b == 0xCE => {
                while self.peek().is_ascii_alphabetic() || self.take("\u{b5}") || self.take("\u{3bc}") {
                    if self.peek().is_ascii_alphabetic() {
                        self.at += 1;
                    }
                }
                let word = self.bytes.get(at..self.at).unwrap_or_default();
                let mark = match word {
                    b"mm" => Mark::Metric(LengthUnit::Millimetre),
                    b"in" => Mark::Inches,
                    b"ft" => Mark::Feet,
                    b"m" => Mark::Metric(LengthUnit::Metre),
                    b"cm" => Mark::Metric(LengthUnit::Centimetre),
                    // The micro sign and the Greek letter.
                    b"um" | b"\xc2\xb5m" | b"\xce\xbcm" => Mark::Metric(LengthUnit::Micrometre),
                    w if [&b"in"[..], b"inch", b"inches"].iter().any(|u| w.eq_ignore_ascii_case(u)) => Mark::Inches,
                    w if [&b"ft"[..], b"foot", b"feet"].iter().any(|u| w.eq_ignore_ascii_case(u)) => Mark::Feet,
                    _ => {
                        return Err(Error::new(ErrorKind::Unit, "not a unit of length")
                            .value_of(self.text)
                            .pointing(at, self.at.max(at + 1))
                            .accepts("', \", ft, in, mm, cm, m, um"));
                    }
                };
                if matches!(mark, Mark::Feet | Mark::Inches) && self.peek() == b'.' {
                    self.at += 1;
                }
                mark
            }
            _ => return Ok(None),
        }))
    }

    /// Picometres of a number in this unit, and whether rounding was needed.
    fn value(&self, n: Number, mark: Mark) -> Result<(i128, bool), Error> {
        let unit = mark.unit().picometres();
        let whole = i128::from(n.whole) * i128::from(unit);
        if n.long_decimals.1 > 0 {
            return Ok(self.long_value(n, whole, unit));
        }
        if n.denominator == 0 {
            return Ok((whole, false));
        }
        // 64-bit division where it fits: it is several times faster.
        let unit = unit.unsigned_abs();
        if let Some(product) = n.numerator.checked_mul(unit) {
            let (floor, rest) = (product / n.denominator, product % n.denominator);
            // At most 18 digits were read, so twice the rest fits.
            let up = rest * 2 > n.denominator || (rest * 2 == n.denominator && floor & 1 == 1);
            return Ok((whole + i128::from(floor) + i128::from(up), rest != 0));
        }
        let product = u128::from(n.numerator) * u128::from(unit);
        let denominator = u128::from(n.denominator);
        let (floor, rest) = (product / denominator, product % denominator);
        let up = rest * 2 > denominator || (rest * 2 == denominator && floor & 1 == 1);
        i128::try_from(floor).map(|f| (whole + f + i128::from(up), rest != 0)).map_err(|_| self.too_large())
    }

    /// Long decimals by exact long division from the last digit, at 100 times the unit so that the half is seen.
    fn long_value(&self, n: Number, whole: i128, unit: i64) -> (i128, bool) {
        let scaled = i128::from(unit) * 100;
        let mut carried: i128 = 0;
        let mut rest = false;
        for b in self.bytes.get(n.long_decimals.0..n.long_decimals.1).unwrap_or_default().iter().rev() {
            let sum = i128::from(b - b'0') * scaled + carried;
            rest |= sum % 10 != 0;
            carried = sum / 10;
        }
        let (floor, part) = (carried / 100, carried % 100);
        let up = part > 50 || (part == 50 && (rest || floor & 1 == 1));
        (whole + floor + i128::from(up), rest || part != 0)
    }

    #[cold]
    fn too_large(&self) -> Error {
        Error::new(ErrorKind::Overflow, "a length is too large").value_of(self.text).accepts("at most 9 223 372 m")
    }

    /// The fault at the character that stands here.
    #[cold]
    fn unexpected(&self) -> Error {
        match self.text.get(self.at..).and_then(|r| r.chars().next()) {
            Some(',') => self.fault("a decimal comma or thousands separator is not accepted", self.at),
            Some('-') => self.fault("two numbers without marks between them", self.at),
            Some(_) => self.fault("an unexpected character", self.at),
            None => self.fault("the text ends too soon", self.at),
        }
    }

    #[cold]
    fn fault(&self, message: &'static str, at: usize) -> Error {
        let width = self.text.get(at..).and_then(|r| r.chars().next()).map_or(0, char::len_utf8);
        Error::new(ErrorKind::Parse, message).value_of(self.text).pointing(at, at + width).accepts(ACCEPTED)
    }
}
