//! Work over whole arrays in one call.

#![allow(unsafe_code, reason = "exports: fixed names, and pointers that the caller lends")]

use crate::boundary::{ArrayOut, array, guard, text_in};
use crate::error::sw_error;
use crate::length::sw_length_unit;
use crate::numbers::length_unit;
use crate::status::sw_status;
use core::ffi::c_char;
use seamwright_core::trim::{self, FlatPattern};
use seamwright_core::units::LengthArray;

/// The girths of one profile, each with a thickness and an inside radius of its own, unrounded.
///
/// The profile and its rule are one JSON object, as for `sw_flat_from_json`. Every bend takes the element's radius in place of its own, hems keep theirs.
/// All three arrays have `count` elements, and each has its unit. The first element that cannot be folded is refused at `elements[i]`, and
/// then nothing is written. `girths` may be one of the two arrays that go in.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_trim_girths(
    pattern: *const c_char,
    pattern_len: usize,
    thickness: *const f64,
    thickness_unit: sw_length_unit,
    inside_radius: *const f64,
    inside_radius_unit: sw_length_unit,
    count: usize,
    girth_unit: sw_length_unit,
    girths: *mut f64,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            // How many are needed is known; an empty array may be NULL.
            let mut needed = 0;
            let out = ArrayOut::at(girths, count, &raw mut needed, "girths")?;
            let found = {
                let json = text_in(pattern, pattern_len, "pattern")?;
                let unit = |code, path| length_unit(code).map_err(|e| e.at(path));
                let thickness = LengthArray { values: array(thickness, count, "thickness")?, unit: unit(thickness_unit, "thickness_unit")? };
                let inside_radius =
                    LengthArray { values: array(inside_radius, count, "inside_radius")?, unit: unit(inside_radius_unit, "inside_radius_unit")? };
                let unit = unit(girth_unit, "girth_unit")?;
                let FlatPattern { profile, rule } = FlatPattern::from_json(json.as_bytes()).map_err(|e| e.under("pattern"))?;
                trim::girths(&profile, &rule, thickness, inside_radius, unit)?
            };
            Ok(out.put(found.into_iter()))
        })
    }
}
