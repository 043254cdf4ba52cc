//! One way to write lengths for Rust, Python, C, jobs and CSV columns.

use super::length::ten_to;
use super::{Length, LengthUnit, Rounding};
use crate::error::{Error, ErrorKind};
use core::fmt;

/// How a length is laid out as text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LengthStyle {
    /// Decimal millimetres to the last picometre, zeros trimmed: the canonical form, whose round trip is the identity.
    Exact,
    /// Feet, inches and a fraction in lowest terms: `12'-3 5/8"`.
    FeetInches {
        /// The finest denominator: 1, 2, 4 ... 512.
        denominator: u16,
    },
    /// Inches and a fraction in lowest terms: `147 5/8"`.
    Inches {
        /// The finest denominator: 1, 2, 4 ... 512.
        denominator: u16,
    },
    /// A decimal number of one unit: `92.1 mm`.
    Decimal {
        /// The unit.
        unit: LengthUnit,
        /// Decimal places, trailing zeros kept.
        places: u8,
    },
}

/// A format for lengths, itself written as text.
///
/// | text | 92.075 mm | |
/// |---|---|---|
/// | `mm` | `92.075 mm` | exact |
/// | `ft-in/16` | `0'-3 5/8"` | feet, inches and sixteenths |
/// | `in/32` | `3 5/8"` | inches and 32nds |
/// | `in.3` | `3.625 in` | decimal, likewise `ft.4`, `cm.2`, `m.3`, `um.0` |
/// | `mm.1` | `92.1 mm` | |
///
/// A direction may follow: `in/16 ceil`. Without one, ties go to the even step.
///
/// ```
/// use seamwright::units::{Length, LengthFormat};
/// let l = Length::parse("92.075 mm")?;
/// for (format, text) in [("mm", "92.075 mm"), ("ft-in/16", "0'-3 5/8\""), ("in/32", "3 5/8\""), ("in.3", "3.625 in"), ("mm.1", "92.1 mm"), ("in/2 floor", "3 1/2\"")] {
///     let f = LengthFormat::parse(format)?;
///     assert_eq!(l.format(f)?.as_str(), text);
///     assert_eq!(f.to_string(), format);
/// }
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct LengthFormat {
    style: LengthStyle,
    rounding: Rounding,
}

impl LengthFormat {
    /// The canonical form.
    pub const EXACT: LengthFormat = LengthFormat { style: LengthStyle::Exact, rounding: Rounding::HalfEven };

    /// A format of this style and direction.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a denominator that is not a power of two up to 512, or more places than a picometre carries.
    pub fn new(style: LengthStyle, rounding: Rounding) -> Result<Self, Error> {
        match style {
            LengthStyle::Exact => {}
            LengthStyle::FeetInches { denominator } | LengthStyle::Inches { denominator } => {
                if !denominator.is_power_of_two() || denominator > 512 {
                    return Err(Error::new(ErrorKind::OutOfRange, "not a denominator of a tape")
                        .value_of(denominator)
                        .accepts("1, 2, 4, 8, 16, 32, 64, 128, 256, 512"));
                }
            }
            LengthStyle::Decimal { unit, places } => {
                let (_, most) = unit.decimal_step();
                if usize::from(places) > most {
                    return Err(Error::new(ErrorKind::OutOfRange, "more decimal places than a picometre carries")
                        .value_of(places)
                        .accepts(format!("0 to {most} for {}", unit.symbol())));
                }
            }
        }
        Ok(LengthFormat { style, rounding })
    }

    /// Reads a format from its text.
    ///
    /// # Errors
    /// [`ErrorKind::Parse`] for any other text, and those of [`LengthFormat::new`].
    pub fn parse(text: &str) -> Result<Self, Error> {
        let refuse = || {
            Error::new(ErrorKind::Parse, "not a length format")
                .value_of(text)
                .accepts("mm, ft-in/16, in/16, in.3, ft.4, mm.1, cm.1, m.3, um.0, then a direction or nothing")
        };
        let (head, rounding) = match text.split_once(' ') {
            Some((head, direction)) => (head, Rounding::parse(direction)?),
            None => (text, Rounding::HalfEven),
        };
        let number = |digits: &str| -> Result<u16, Error> {
            if digits.is_empty() || !digits.bytes().all(|b| b.is_ascii_digit()) { Err(refuse()) } else { digits.parse().map_err(|_| refuse()) }
        };
        let style = if head == "mm" {
            LengthStyle::Exact
        } else if let Some(d) = head.strip_prefix("ft-in/") {
            LengthStyle::FeetInches { denominator: number(d)? }
        } else if let Some(d) = head.strip_prefix("in/") {
            LengthStyle::Inches { denominator: number(d)? }
        } else if let Some((unit, places)) = head.split_once('.') {
            let unit = LengthUnit::parse(unit).map_err(|_| refuse())?;
            LengthStyle::Decimal { unit, places: u8::try_from(number(places)?).map_err(|_| refuse())? }
        } else {
            return Err(refuse());
        };
        Self::new(style, rounding)
    }

    /// The layout.
    #[must_use]
    pub fn style(&self) -> LengthStyle {
        self.style
    }

    /// Whether it is of the inch and the foot.
    #[must_use]
    pub fn is_inch(&self) -> bool {
        match self.style {
            LengthStyle::FeetInches { .. } | LengthStyle::Inches { .. } => true,
            LengthStyle::Decimal { unit, .. } => matches!(unit, LengthUnit::Inch | LengthUnit::Foot),
            LengthStyle::Exact => false,
        }
    }

    /// The format of the same system for thicknesses and radii: 0.0001 in, or 0.01 mm.
    ///
    /// # Errors
    /// None with the places as they stand; the checks of [`LengthFormat::new`] apply to them too.
    ///
    /// ```
    /// use seamwright::units::{Length, LengthFormat};
    /// let fine = LengthFormat::parse("ft-in/16")?.fine()?;
    /// assert_eq!(fine.text(Length::parse("0.0236 in")?)?.as_str(), "0.0236 in");
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn fine(&self) -> Result<LengthFormat, Error> {
        let style = if self.is_inch() {
            LengthStyle::Decimal { unit: LengthUnit::Inch, places: 4 }
        } else {
            LengthStyle::Decimal { unit: LengthUnit::Millimetre, places: 2 }
        };
        LengthFormat::new(style, Rounding::HalfEven)
    }

    /// The direction of rounding.
    #[must_use]
    pub fn rounding(&self) -> Rounding {
        self.rounding
    }

    /// The same layout, rounded this way.
    ///
    /// ```
    /// use seamwright::units::{Length, LengthFormat, Rounding};
    /// let (even, tie) = (LengthFormat::parse("in/16")?, Length::parse("17/32\"")?);
    /// assert_eq!(tie.format(even)?.as_str(), "1/2\"");
    /// assert_eq!(tie.format(even.rounding_by(Rounding::HalfAway))?.as_str(), "9/16\"");
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub const fn rounding_by(self, rounding: Rounding) -> LengthFormat {
        LengthFormat { style: self.style, rounding }
    }

    /// The step that this format shows; a picometre for the exact form.
    #[must_use]
    pub fn step(&self) -> Length {
        Length::from_pm(match self.style {
            LengthStyle::Exact => 1,
            // A power of two: a shift is a division by it.
            LengthStyle::FeetInches { denominator } | LengthStyle::Inches { denominator } => LengthUnit::Inch.picometres() >> denominator.trailing_zeros(),
            LengthStyle::Decimal { unit, places } => {
                let (step, most) = unit.decimal_step();
                (step * ten_to(most - usize::from(places))).cast_signed()
            }
        })
    }

    /// The length as this format rounds it.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] if rounding leaves the range.
    pub fn rounded(&self, length: Length) -> Result<Length, Error> {
        let step = self.step().pm();
        self.rounding
            .steps(length.pm(), step, 0)
            .checked_mul(step)
            .map(Length::from_pm)
            .ok_or_else(|| Error::new(ErrorKind::Overflow, "a rounded length is too large").value_of(length).accepts("at most 9 223 372 m"))
    }

    /// The length as text in a buffer on the stack.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] if rounding leaves the range.
    pub fn text(&self, length: Length) -> Result<LengthText, Error> {
        let step = self.step().pm();
        let steps = self.rounding.steps(length.pm(), step, 0);
        // Written where it is returned: a copy of bytes that were stored one by one a moment ago costs as much as all the rest.
        let mut text = match steps.checked_mul(step) {
            Some(_) => Ok(LengthText::default()),
            None => Err(Error::new(ErrorKind::Overflow, "a rounded length is too large").value_of(length).accepts("at most 9 223 372 m")),
        };
        if let Ok(out) = &mut text {
            self.write(steps, out);
        }
        text
    }

    /// So many steps as text.
    #[inline]
    fn write(&self, steps: i64, out: &mut LengthText) {
        if steps < 0 {
            out.push(b'-');
        }
        let n = steps.unsigned_abs();
        match self.style {
            LengthStyle::Exact => out.push_exact(n),
            LengthStyle::FeetInches { denominator } => {
                let halvings = denominator.trailing_zeros();
                let feet = (n >> halvings) / 12;
                out.push_number(feet, 1);
                out.push(b'\'');
                out.push(b'-');
                // After feet the whole inches always stand, so that 12'-0 1/8" is never read as twelve and an eighth.
                let inches = n - ((feet * 12) << halvings);
                if inches > 0 && inches >> halvings == 0 {
                    out.push_str("0 ");
                }
                out.push_inches(inches, halvings);
            }
            LengthStyle::Inches { denominator } => out.push_inches(n, denominator.trailing_zeros()),
            LengthStyle::Decimal { unit, places } => {
                let scale = ten_to(usize::from(places));
                out.push_number(n / scale, 1);
                if places > 0 {
                    out.push(b'.');
                    out.push_number(n % scale, usize::from(places));
                }
                out.push(b' ');
                out.push_str(unit.symbol());
            }
        }
    }

    /// A length in this format as owned text.
    pub(crate) fn string(&self, length: Length) -> Result<String, Error> {
        Ok(self.text(length)?.as_str().to_owned())
    }

    /// The canonical text, which cannot fail: no rounding is needed.
    pub(crate) fn exact_text(self, length: Length) -> LengthText {
        let mut out = LengthText::default();
        if length.is_negative() {
            out.push(b'-');
        }
        out.push_exact(length.pm().unsigned_abs());
        out
    }
}

impl fmt::Display for LengthFormat {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.style {
            LengthStyle::Exact => f.write_str("mm")?,
            LengthStyle::FeetInches { denominator } => write!(f, "ft-in/{denominator}")?,
            LengthStyle::Inches { denominator } => write!(f, "in/{denominator}")?,
            LengthStyle::Decimal { unit, places } => write!(f, "{}.{places}", unit.symbol())?,
        }
        if self.rounding == Rounding::HalfEven { Ok(()) } else { write!(f, " {}", self.rounding.name()) }
    }
}

impl core::str::FromStr for LengthFormat {
    type Err = Error;
    fn from_str(text: &str) -> Result<Self, Error> {
        LengthFormat::parse(text)
    }
}

/// A number of one digit as ASCII.
#[inline]
#[allow(clippy::cast_possible_truncation, reason = "one digit")]
const fn digit(n: u64) -> u8 {
    b'0' + n as u8
}

/// A formatted length in a small buffer, without allocation.
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct LengthText {
    bytes: [u8; 40],
    len: usize,
}

impl Default for LengthText {
    fn default() -> Self {
        LengthText { bytes: [0; 40], len: 0 }
    }
}

impl LengthText {
    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        // Only ASCII is ever pushed, so this cannot be the empty fallback.
        self.bytes.get(..self.len).and_then(|b| core::str::from_utf8(b).ok()).unwrap_or_default()
    }

    #[inline]
    fn push(&mut self, byte: u8) {
        if let Some(slot) = self.bytes.get_mut(self.len) {
            *slot = byte;
            self.len += 1;
        }
    }

    #[inline]
    fn push_str(&mut self, text: &str) {
        if let Some(slots) = self.bytes.get_mut(self.len..self.len + text.len()) {
            slots.copy_from_slice(text.as_bytes());
            self.len += text.len();
        }
    }

    /// A number in decimal, with leading zeros up to `width`.
    #[inline]
    fn push_number(&mut self, mut n: u64, width: usize) {
        // Feet, inches and fractions mostly have one digit.
        if n < 10 && width <= 1 {
            self.push(digit(n));
            return;
        }
        let digits = n.checked_ilog10().map_or(1, |power| power as usize + 1).max(width);
        let Some(slots) = self.bytes.get_mut(self.len..self.len + digits) else { return };
        for slot in slots.iter_mut().rev() {
            *slot = digit(n % 10);
            n /= 10;
        }
        self.len += digits;
    }

    /// Inches from a count of fractions: whole, then the fraction in lowest terms, then the mark. The denominator is two to the power of `halvings`.
    #[inline]
    fn push_inches(&mut self, parts: u64, halvings: u32) {
        let whole = parts >> halvings;
        let numerator = parts - (whole << halvings);
        if whole > 0 || numerator == 0 {
            self.push_number(whole, 1);
        }
        if numerator > 0 {
            if whole > 0 {
                self.push(b' ');
            }
            let common = numerator.trailing_zeros();
            self.push_number(numerator >> common, 1);
            self.push(b'/');
            self.push_number(1 << (halvings - common), 1);
        }
        self.push(b'"');
    }

    fn push_exact(&mut self, pm: u64) {
        const MM: u64 = 1_000_000_000;
        self.push_number(pm / MM, 1);
        let mut rest = pm % MM;
        if rest > 0 {
            let mut width = 9;
            while rest.is_multiple_of(10) {
                rest /= 10;
                width -= 1;
            }
            self.push(b'.');
            self.push_number(rest, width);
        }
        self.push_str(" mm");
    }
}

impl core::ops::Deref for LengthText {
    type Target = str;
    fn deref(&self) -> &str {
        self.as_str()
    }
}

impl AsRef<str> for LengthText {
    fn as_ref(&self) -> &str {
        self.as_str()
    }
}

impl fmt::Display for LengthText {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.as_str())
    }
}

impl fmt::Debug for LengthText {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(self.as_str(), f)
    }
}
