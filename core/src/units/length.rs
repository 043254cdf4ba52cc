//! The exact length.

use super::{Area, AreaUnit, LengthFormat, Sum};
use crate::error::{Error, ErrorKind};
use core::fmt;

/// A unit of length that input and output may use. The US survey foot is not among them: NIST retired it in 2022 (from memory).
///
/// ```
/// use seamwright::units::LengthUnit;
/// assert_eq!(LengthUnit::Inch.picometres(), 25_400_000_000);
/// assert_eq!(LengthUnit::parse("ft").unwrap(), LengthUnit::Foot);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum LengthUnit {
    /// 25.4 mm exactly.
    Inch,
    /// 12 inches.
    Foot,
    /// One thousandth of a metre.
    Millimetre,
    /// One hundredth of a metre.
    Centimetre,
    /// The metre.
    Metre,
    /// One millionth of a metre.
    Micrometre,
}

impl LengthUnit {
    /// Every unit.
    pub const ALL: &'static [LengthUnit] =
        &[LengthUnit::Inch, LengthUnit::Foot, LengthUnit::Millimetre, LengthUnit::Centimetre, LengthUnit::Metre, LengthUnit::Micrometre];

    /// Picometres in one of this unit, exactly (NIST SP 811 B.8: 1 in = 25.4 mm, 1 ft = 0.3048 m).
    #[must_use]
    pub const fn picometres(self) -> i64 {
        match self {
            LengthUnit::Inch => 25_400_000_000,
            LengthUnit::Foot => 304_800_000_000,
            LengthUnit::Millimetre => 1_000_000_000,
            LengthUnit::Centimetre => 10_000_000_000,
            LengthUnit::Metre => 1_000_000_000_000,
            LengthUnit::Micrometre => 1_000_000,
        }
    }

    /// The last decimal place of this unit that is a whole number of picometres, as that number and the place.
    pub(super) const fn decimal_step(self) -> (u64, usize) {
        match self {
            LengthUnit::Inch => (254, 8),
            LengthUnit::Foot => (3048, 8),
            LengthUnit::Millimetre => (1, 9),
            LengthUnit::Centimetre => (1, 10),
            LengthUnit::Metre => (1, 12),
            LengthUnit::Micrometre => (1, 6),
        }
    }

    /// The unit's symbol as text.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            LengthUnit::Inch => "in",
            LengthUnit::Foot => "ft",
            LengthUnit::Millimetre => "mm",
            LengthUnit::Centimetre => "cm",
            LengthUnit::Metre => "m",
            LengthUnit::Micrometre => "um",
        }
    }

    /// The unit with this symbol.
    ///
    /// # Errors
    /// [`ErrorKind::Unit`] for any other text.
    pub fn parse(symbol: &str) -> Result<LengthUnit, Error> {
        Self::ALL
            .iter()
            .copied()
            .find(|u| u.symbol() == symbol)
            .ok_or_else(|| Error::new(ErrorKind::Unit, "not a unit of length").value_of(symbol).accepts("in, ft, mm, cm, m, um"))
    }
}

/// A power of ten by its exponent; the greatest that 64 bits hold where that is more than 18.
#[inline]
pub(super) fn ten_to(exponent: usize) -> u64 {
    const POWERS: [u64; 19] = {
        let mut powers = [1; 19];
        let mut i = 1;
        while i < powers.len() {
            powers[i] = powers[i - 1] * 10;
            i += 1;
        }
        powers
    };
    *POWERS.get(exponent).unwrap_or(&POWERS[18])
}

/// A length, held as a whole number of picometres.
///
/// 1 in is 25 400 000 000 pm = 2^9 x 5^8 x 127, so every binary fraction of an inch down to 1/512, every 0.001 in and every
/// decimal metric step is exact; both systems add, compare, hash and sort without drift. The range is about 9 223 km either way.
/// Sign conventions are those of the quantity that is measured; a length by itself may be negative.
///
/// Sums, differences and multiples are [`Sum`]s until [`Sum::length`] turns them back. There is no division: equal parts
/// come from [`Length::station`], rounded once each.
///
/// ```
/// use seamwright::units::{Length, LengthFormat};
/// let l = Length::parse("12'-3 5/8\"")?;
/// assert_eq!(l, Length::parse("3749.675 mm")?);
/// assert_eq!(l.to_string(), "3749.675 mm");
/// assert_eq!(l.format(LengthFormat::parse("ft-in/16")?)?.as_str(), "12'-3 5/8\"");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Length(i64);

impl Length {
    /// No length.
    pub const ZERO: Length = Length(0);
    /// The greatest length.
    pub const MAX: Length = Length(i64::MAX);
    /// The least length.
    pub const MIN: Length = Length(i64::MIN);

    /// A length of so many picometres.
    #[must_use]
    pub const fn from_pm(pm: i64) -> Length {
        Length(pm)
    }

    /// The length in picometres.
    #[must_use]
    pub const fn pm(self) -> i64 {
        self.0
    }

    /// So many whole inches, for literals in tables and tests.
    #[must_use]
    pub const fn inches(n: i16) -> Length {
        Length(n as i64 * LengthUnit::Inch.picometres())
    }

    /// So many whole feet, for literals in tables and tests.
    #[must_use]
    pub const fn feet(n: i16) -> Length {
        Length(n as i64 * LengthUnit::Foot.picometres())
    }

    /// So many 64ths of an inch, for literals in tables and tests.
    #[must_use]
    pub const fn inches_64(n: i32) -> Length {
        Length(n as i64 * (LengthUnit::Inch.picometres() / 64))
    }

    /// So many thousandths of an inch, for literals in tables and tests.
    #[must_use]
    pub const fn mils(n: i32) -> Length {
        Length(n as i64 * (LengthUnit::Inch.picometres() / 1000))
    }

    /// So many whole micrometres, for literals in tables and tests.
    #[must_use]
    pub const fn micrometres(n: i32) -> Length {
        Length(n as i64 * LengthUnit::Micrometre.picometres())
    }

    /// The one conversion from a floating-point number: exact in the number's own bits, then rounded half-even to 1 pm.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] for NaN and infinities, [`ErrorKind::Overflow`] beyond the range.
    ///
    /// ```
    /// use seamwright::units::{Length, LengthUnit};
    /// assert_eq!(Length::from_f64(0.5, LengthUnit::Inch)?, Length::inches_64(32));
    /// assert!(Length::from_f64(f64::NAN, LengthUnit::Metre).is_err());
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[inline]
    pub fn from_f64(value: f64, unit: LengthUnit) -> Result<Length, Error> {
        match near_whole(value, unit.picometres()) {
            Some(pm) => Ok(Length(pm)),
            None => Length::from_bits_of(value, unit),
        }
    }

    /// As [`Length::from_f64`], by the bits of any number.
    pub(super) fn from_bits_of(value: f64, unit: LengthUnit) -> Result<Length, Error> {
        if !value.is_finite() {
            return Err(Error::new(ErrorKind::NotFinite, "a length must be a finite number").value_of(value).accepts("a finite number"));
        }
        let too_large =
            || Error::new(ErrorKind::Overflow, "a length is too large").value_of(format_args!("{value} {}", unit.symbol())).accepts("at most 9 223 372 m");
        // value = mantissa * 2^exponent exactly; the product with the unit is exact in 128 bits.
        let bits = value.to_bits();
        let raw = ((bits >> 52) & 0x7ff) as i32;
        let fraction = bits & ((1 << 52) - 1);
        let (mantissa, exponent) = if raw == 0 { (fraction, -1074) } else { (fraction | (1 << 52), raw - 1075) };
        let product = i128::from(mantissa) * i128::from(unit.picometres());
        let magnitude = if exponent >= 0 {
            if exponent > 40 {
                if mantissa == 0 { 0 } else { return Err(too_large()) }
            } else {
                match product.checked_mul(1_i128 << exponent) {
                    Some(p) => p,
                    None => return Err(too_large()),
                }
            }
        } else if exponent <= -127 {
            0
        } else {
            let shift = -exponent;
            let floor = product >> shift;
            let rest = product - (floor << shift);
            let half = 1_i128 << (shift - 1);
            if rest > half || (rest == half && floor & 1 == 1) { floor + 1 } else { floor }
        };
        let signed = if value < 0.0 { -magnitude } else { magnitude };
        i64::try_from(signed).map(Length).map_err(|_| too_large())
    }

    /// The length as a floating-point number of this unit.
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "a reader in floating point is what this is; beyond 9 km the last picometres round")]
    pub fn get(self, unit: LengthUnit) -> f64 {
        self.0 as f64 / unit.picometres() as f64
    }

    /// The working unit of geometry inside the library.
    pub(crate) fn mm(self) -> f64 {
        self.get(LengthUnit::Millimetre)
    }

    /// Back from the working unit of geometry.
    pub(crate) fn from_mm(mm: f64) -> Result<Length, Error> {
        Length::from_f64(mm, LengthUnit::Millimetre)
    }

    /// Reads any notation that a tape, a drawing or a spreadsheet uses; a unit is needed.
    ///
    /// Accepted: `12' 3-5/8"`, `12'-3 5/8"`, `147 5/8"`, `12ft 3.625in`, `0'-7/16"`, `3 5⁄8"`, `3⅝″`, `12′ 3″`, `5''`, `12' 3`, `60.3 mm`,
    /// `1.2 m`, `-1/2"`, with `-` or a true minus and ordinary or no-break spaces. Values that are not a whole number of
    /// picometres are rounded half-even.
    ///
    /// # Errors
    /// [`ErrorKind::Parse`] with a span that points at the character: decimal commas, thousands separators, inches before feet, `12-3` without
    /// marks, a zero denominator, anything left over. [`ErrorKind::Unit`] if no unit is given, [`ErrorKind::Overflow`] beyond the range.
    ///
    /// ```
    /// use seamwright::units::Length;
    /// assert_eq!(Length::parse("3 5/8\"")?, Length::inches_64(3 * 64 + 40));
    /// assert!(Length::parse("3,5 mm").unwrap_err().message().contains("comma"));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn parse(text: &str) -> Result<Length, Error> {
        super::length_parse::parse(text, None, false)
    }

    /// As [`Length::parse`], with the unit of a number that has none.
    ///
    /// # Errors
    /// As [`Length::parse`], but for the missing unit.
    ///
    /// ```
    /// use seamwright::units::{Length, LengthUnit};
    /// assert_eq!(Length::parse_in("39", LengthUnit::Inch)?, Length::inches(39));
    /// assert_eq!(Length::parse_in("39 mm", LengthUnit::Inch)?, Length::micrometres(39_000));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn parse_in(text: &str, unit: LengthUnit) -> Result<Length, Error> {
        super::length_parse::parse(text, Some(unit), false)
    }

    /// As [`Length::parse`], but refuses a value that is not a whole number of picometres.
    ///
    /// # Errors
    /// As [`Length::parse`], and [`ErrorKind::OutOfRange`] where rounding would be needed.
    ///
    /// ```
    /// use seamwright::units::Length;
    /// assert!(Length::parse_exact("1/512\"").is_ok());
    /// assert!(Length::parse_exact("1/7\"").is_err());
    /// ```
    pub fn parse_exact(text: &str) -> Result<Length, Error> {
        super::length_parse::parse(text, None, true)
    }

    /// The length in this format, in a buffer on the stack.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] if rounding leaves the range.
    pub fn format(self, format: LengthFormat) -> Result<super::LengthText, Error> {
        format.text(self)
    }

    /// The `i`-th of `n` equal parts' ends: `self * i / n`, rounded half-even once. Stations do not accumulate error.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for `n` of zero, [`ErrorKind::Overflow`] where the station is beyond the range.
    ///
    /// ```
    /// use seamwright::units::Length;
    /// let l = Length::inches(10);
    /// assert_eq!(l.station(1, 3)?.pm() + l.station(2, 3)?.pm(), l.pm());
    /// assert_eq!(l.station(3, 3)?, l);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn station(self, i: u32, n: u32) -> Result<Length, Error> {
        if n == 0 {
            return Err(Error::new(ErrorKind::OutOfRange, "a length has no zero parts").value_of("0").accepts("1 or more parts"));
        }
        let product = i128::from(self.0) * i128::from(i);
        let n = i128::from(n);
        let floor = product.div_euclid(n);
        let twice = 2 * product.rem_euclid(n);
        let rounded = if twice > n || (twice == n && floor & 1 != 0) { floor + 1 } else { floor };
        i64::try_from(rounded).map(Length).map_err(|_| Error::new(ErrorKind::Overflow, "a station is too far").accepts("at most 9 223 372 m"))
    }

    /// The area of a rectangle, an exact product turned into floating point once.
    ///
    /// ```
    /// use seamwright::units::{Area, Length};
    /// assert_eq!(Length::feet(10).times(Length::feet(10)), Area::parse("1 square")?);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "areas are floating point by design, rounded once here")]
    pub fn times(self, other: Length) -> Area {
        Area::of((i128::from(self.0) * i128::from(other.0)) as f64 / 1e24, AreaUnit::SquareMetre)
    }

    /// Whether it is less than nothing.
    #[must_use]
    pub const fn is_negative(self) -> bool {
        self.0 < 0
    }

    /// Whether it is more than nothing.
    #[must_use]
    pub const fn is_positive(self) -> bool {
        self.0 > 0
    }

    /// The same length, if it is more than nothing.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] at this path.
    pub fn positive(self, path: &str) -> Result<Length, Error> {
        if self.0 > 0 { Ok(self) } else { Err(Error::new(ErrorKind::OutOfRange, "must be more than zero").at(path).value_of(self).accepts("more than 0 mm")) }
    }

    /// The same length, if it is not less than nothing.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] at this path.
    pub fn not_negative(self, path: &str) -> Result<Length, Error> {
        if self.0 >= 0 { Ok(self) } else { Err(Error::new(ErrorKind::OutOfRange, "must not be negative").at(path).value_of(self).accepts("0 mm or more")) }
    }

    /// The sum of lengths, checked once.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range.
    pub fn total<'a>(lengths: impl IntoIterator<Item = &'a Length>) -> Result<Length, Error> {
        lengths.into_iter().copied().sum::<Sum>().length()
    }
}

/// The whole number of picometres nearest to so many units, where ordinary arithmetic is sure of it: nearer than half-way by more than its own rounding, and
/// within the range.
#[inline]
#[allow(clippy::cast_precision_loss, reason = "a unit's picometres are a whole number far below 2^53")]
fn near_whole(value: f64, unit: i64) -> Option<i64> {
    // Where neighbouring numbers lie one apart: a sum with it is the nearest whole number, and its last bits are that number's.
    const WHOLE: f64 = 6_755_399_441_055_744.0;
    let number = |sum: f64| sum.to_bits().wrapping_sub(WHOLE.to_bits()).cast_signed();
    if !(value.abs() < 4e6 && unit <= 1_000_000_000_000) {
        return None;
    }
    let units = value + WHOLE;
    // The difference is exact; the product, at most 5e11, is rounded by at most 2^-15.
    let rest = (value - (units - WHOLE)) * unit as f64;
    let nearest = rest + WHOLE;
    ((rest - (nearest - WHOLE)).abs() < 0.4999).then(|| number(units) * unit + number(nearest))
}

impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(LengthFormat::EXACT.exact_text(*self).as_str())
    }
}

impl core::str::FromStr for Length {
    type Err = Error;
    fn from_str(text: &str) -> Result<Length, Error> {
        Length::parse(text)
    }
}
