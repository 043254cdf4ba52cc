//! Lengths.

#![allow(unsafe_code, reason = "exports: fixed names, and pointers that the caller lends")]

use crate::boundary::{Out, TextOut, array, guard, text_in};
use crate::error::sw_error;
use crate::numbers::{length_unit, rounding};
use crate::status::{SW_OK, sw_status};
use core::ffi::c_char;
use seamwright_core::units::{Length, LengthFormat, ShopRounding, Sum};

/// An exact length in picometres: 1 mm is 1000000000, 1 in is 25400000000. Copy, compare and hash it as the number that it is;
/// `{0}` is no length.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[repr(C)]
pub struct sw_length {
    /// Whole picometres.
    pub pm: i64,
}

impl From<Length> for sw_length {
    fn from(l: Length) -> sw_length {
        sw_length { pm: l.pm() }
    }
}

impl From<sw_length> for Length {
    fn from(l: sw_length) -> Length {
        Length::from_pm(l.pm)
    }
}

/// A unit of length: one of the `SW_LENGTH_UNIT_` numbers.
pub type sw_length_unit = i32;

/// 25.4 mm exactly.
pub const SW_LENGTH_UNIT_INCH: sw_length_unit = 1;
/// 12 inches.
pub const SW_LENGTH_UNIT_FOOT: sw_length_unit = 2;
/// One thousandth of a metre.
pub const SW_LENGTH_UNIT_MILLIMETRE: sw_length_unit = 3;
/// One hundredth of a metre.
pub const SW_LENGTH_UNIT_CENTIMETRE: sw_length_unit = 4;
/// The metre.
pub const SW_LENGTH_UNIT_METRE: sw_length_unit = 5;
/// One millionth of a metre.
pub const SW_LENGTH_UNIT_MICROMETRE: sw_length_unit = 6;

/// Which way a length goes to a whole step: one of the `SW_ROUNDING_` numbers.
pub type sw_rounding = i32;

/// To the next step that is not smaller.
pub const SW_ROUNDING_CEIL: sw_rounding = 1;
/// To the next step that is not greater.
pub const SW_ROUNDING_FLOOR: sw_rounding = 2;
/// To the next step away from zero.
pub const SW_ROUNDING_AWAY: sw_rounding = 3;
/// To the next step toward zero.
pub const SW_ROUNDING_TOWARD: sw_rounding = 4;
/// To the nearest step, a tie to the even one.
pub const SW_ROUNDING_HALF_EVEN: sw_rounding = 5;
/// To the nearest step, a tie away from zero.
pub const SW_ROUNDING_HALF_AWAY: sw_rounding = 6;

/// Reads a length with its unit, in any notation of a tape, a drawing or a spreadsheet: `12'-3 5/8"`, `60.3 mm`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_length_parse(text: *const c_char, text_len: usize, length: *mut sw_length, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(length, "length")?;
            out.put(Length::parse(text_in(text, text_len, "text")?)?.into());
            Ok(SW_OK)
        })
    }
}

/// As `sw_length_parse`, with the unit of a number that has none.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_length_parse_in(
    text: *const c_char,
    text_len: usize,
    unit: sw_length_unit,
    length: *mut sw_length,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(length, "length")?;
            out.put(Length::parse_in(text_in(text, text_len, "text")?, length_unit(unit)?)?.into());
            Ok(SW_OK)
        })
    }
}

/// As `sw_length_parse`, but refuses a value that is not a whole number of picometres.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_length_parse_exact(text: *const c_char, text_len: usize, length: *mut sw_length, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(length, "length")?;
            out.put(Length::parse_exact(text_in(text, text_len, "text")?)?.into());
            Ok(SW_OK)
        })
    }
}

/// Writes a length in a format, itself text: `mm` (exact), `ft-in/16`, `in/32`, `in.3`, `mm.1 ceil`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_length_format(
    length: sw_length,
    format: *const c_char,
    format_len: usize,
    buffer: *mut c_char,
    capacity: usize,
    needed: *mut usize,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = TextOut::at(buffer, capacity, needed)?;
            let format = LengthFormat::parse(text_in(format, format_len, "format")?).map_err(|e| e.under("format"))?;
            Ok(out.put(Some(Length::from(length).format(format)?.as_str())))
        })
    }
}

/// The one conversion from a floating-point number, rounded half-even to a picometre. NaN and infinities are refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_length_from_f64(value: f64, unit: sw_length_unit, length: *mut sw_length, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(length, "length")?;
            out.put(Length::from_f64(value, length_unit(unit)?).map_err(|e| e.under("value"))?.into());
            Ok(SW_OK)
        })
    }
}

/// A length as a floating-point number of a unit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_length_get(length: sw_length, unit: sw_length_unit, value: *mut f64, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(value, "value")?;
            out.put(Length::from(length).get(length_unit(unit)?));
            Ok(SW_OK)
        })
    }
}

/// The total of an array of lengths, exact, checked once at its end. An empty array may be NULL; its total is no length.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_length_sum(lengths: *const sw_length, count: usize, total: *mut sw_length, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(total, "total")?;
            let sum: Sum = array(lengths, count, "lengths")?.iter().map(|&l| Length::from(l)).sum();
            out.put(sum.length()?.into());
            Ok(SW_OK)
        })
    }
}

/// `length * i / n`, rounded half-even once: the end of the i-th of n equal parts. There is no division that would add up errors.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_length_station(length: sw_length, i: u32, n: u32, station: *mut sw_length, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(station, "station")?;
            out.put(Length::from(length).station(i, n)?.into());
            Ok(SW_OK)
        })
    }
}

/// A length at a whole step of the shop, an excess within the library's tolerance for noise ignored.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_length_round(
    length: sw_length,
    increment: sw_length,
    direction: sw_rounding,
    rounded: *mut sw_length,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(rounded, "rounded")?;
            out.put(ShopRounding::new(increment.into(), rounding(direction)?)?.round(length.into())?.into());
            Ok(SW_OK)
        })
    }
}

/// As `sw_length_round`, with the excess to be ignored.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_length_round_tolerating(
    length: sw_length,
    increment: sw_length,
    direction: sw_rounding,
    tolerance: sw_length,
    rounded: *mut sw_length,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(rounded, "rounded")?;
            let shop = ShopRounding::new(increment.into(), rounding(direction)?)?.tolerating(tolerance.into())?;
            out.put(shop.round(length.into())?.into());
            Ok(SW_OK)
        })
    }
}
