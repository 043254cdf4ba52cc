//! Flat patterns.

#![allow(unsafe_code, reason = "exports: fixed names, and pointers that the caller lends")]

use crate::angle::sw_angle;
use crate::boundary::{Out, TextOut, caught, guard, handle, text_in};
use crate::error::sw_error;
use crate::length::sw_length;
use crate::status::{SW_OK, sw_status};
use core::ffi::c_char;
use seamwright_core::error::{Error, ErrorKind};
use seamwright_core::record::Calculation;
use seamwright_core::trim::{Direction, Flat, FlatPattern};

/// The flat pattern of a trim. All stations are measured from the start edge, with the upper face up.
///
/// It never changes, so threads may read it at the same time. Free it with `sw_flat_free`, once, when none does.
#[derive(Debug)]
pub struct sw_flat {
    flat: Flat,
}

/// Which way a bend turns, with the upper face up: one of the `SW_DIRECTION_` numbers.
pub type sw_direction = i32;

/// Closes on the upper face.
pub const SW_DIRECTION_UP: sw_direction = 1;
/// Closes on the lower face.
pub const SW_DIRECTION_DOWN: sw_direction = 2;

/// A bend in the flat, or the fold of a hem.
#[derive(Debug, Clone, Copy, PartialEq)]
#[repr(C)]
pub struct sw_flat_bend {
    /// The tangent line towards the start edge.
    pub from: sw_length,
    /// The bend line, halfway between the tangent lines.
    pub line: sw_length,
    /// The tangent line towards the end edge.
    pub to: sw_length,
    /// How far, from flat.
    pub angle: sw_angle,
    /// Which way.
    pub direction: sw_direction,
}

/// The flat part of a leg, or of the return of a hem.
#[derive(Debug, Clone, Copy, PartialEq)]
#[repr(C)]
pub struct sw_flat_leg {
    /// Where it starts.
    pub from: sw_length,
    /// Where it ends.
    pub to: sw_length,
}

/// Unfolds a profile under a bend rule, both in one JSON object: `{"profile": {...}, "rule": "din-6935"}`. An error's path leads into
/// the JSON: `pattern.profile.legs[1].length`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_flat_from_json(pattern: *const c_char, pattern_len: usize, flat: *mut *mut sw_flat, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(flat, "flat")?;
            let json = text_in(pattern, pattern_len, "pattern")?;
            let made = FlatPattern::from_json(json.as_bytes()).and_then(|p| p.compute()).map_err(|e| e.under("pattern"))?;
            out.put(Box::into_raw(Box::new(sw_flat { flat: made })));
            Ok(SW_OK)
        })
    }
}

/// Frees a flat pattern; NULL is left alone.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_flat_free(flat: *mut sw_flat) {
    caught((), || {
        if !flat.is_null() {
            // SAFETY: made by `sw_flat_from_json` from a Box, and freed once, by the caller's promise.
            drop(unsafe { Box::from_raw(flat) });
        }
    });
}

/// # Safety
/// `flat` is NULL or live for `'a`.
unsafe fn lent<'a>(flat: *const sw_flat) -> Result<&'a Flat, Error> {
    // SAFETY: the caller's promise.
    unsafe { handle(flat) }.map(|f| &f.flat).ok_or_else(|| Error::new(ErrorKind::Missing, "the pointer is NULL").at("flat"))
}

/// The part of this index.
fn at<T>(parts: &[T], index: usize) -> Result<&T, Error> {
    parts.get(index).ok_or_else(|| {
        Error::new(ErrorKind::OutOfRange, "no part of this index").at("index").value_of(index).accepts(format!("less than {}, counted from 0", parts.len()))
    })
}

/// The width of the blank: the stretch-out.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_flat_girth(flat: *const sw_flat, girth: *mut sw_length, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(girth, "girth")?;
            out.put(lent(flat)?.girth().into());
            Ok(SW_OK)
        })
    }
}

/// How many bends there are, folds of hems among them; 0 for NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_flat_bend_count(flat: *const sw_flat) -> usize {
    caught(0, || {
        // SAFETY: NULL or live by the caller's promise.
        unsafe { handle(flat) }.map_or(0, |f| f.flat.bends().len())
    })
}

/// How many flat parts there are, returns of hems among them: one more than the bends; 0 for NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_flat_leg_count(flat: *const sw_flat) -> usize {
    caught(0, || {
        // SAFETY: NULL or live by the caller's promise.
        unsafe { handle(flat) }.map_or(0, |f| f.flat.legs().len())
    })
}

/// One of the bends, counted from 0 at the start edge; `SW_OUT_OF_RANGE` beyond the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_flat_bend_at(flat: *const sw_flat, index: usize, bend: *mut sw_flat_bend, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(bend, "bend")?;
            let found = at(lent(flat)?.bends(), index)?;
            let direction = match found.direction {
                Direction::Up => SW_DIRECTION_UP,
                Direction::Down => SW_DIRECTION_DOWN,
            };
            let angle = found.angle.angle().into();
            out.put(sw_flat_bend { from: found.from.into(), line: found.line.into(), to: found.to.into(), angle, direction });
            Ok(SW_OK)
        })
    }
}

/// One of the flat parts, counted from 0 at the start edge; `SW_OUT_OF_RANGE` beyond the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_flat_leg_at(flat: *const sw_flat, index: usize, leg: *mut sw_flat_leg, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(leg, "leg")?;
            let found = at(lent(flat)?.legs(), index)?;
            out.put(sw_flat_leg { from: found.from.into(), to: found.to.into() });
            Ok(SW_OK)
        })
    }
}

/// The name of the rule of every bend that has none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_flat_rule_name(
    flat: *const sw_flat,
    buffer: *mut c_char,
    capacity: usize,
    needed: *mut usize,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = TextOut::at(buffer, capacity, needed)?;
            Ok(out.put(Some(lent(flat)?.rule().name())))
        })
    }
}
