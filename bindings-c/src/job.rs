//! Any calculation by its name.

#![allow(unsafe_code, reason = "exports: fixed names, and pointers that the caller lends")]

use crate::boundary::{TextOut, guard, text_in};
use crate::error::sw_error;
use crate::status::sw_status;
use core::ffi::c_char;
use seamwright_core::error::Error;
use seamwright_core::export::{drawing_json, drawing_names};
use seamwright_core::job::{NamedCalculation, named, names};

/// The names of all calculations, one a line, by floor and room: `spacing.spacing`, `closure.closure-bay`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_calculation_names(buffer: *mut c_char, capacity: usize, needed: *mut usize, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = TextOut::at(buffer, capacity, needed)?;
            Ok(out.put(Some(&names().collect::<Vec<_>>().join("\n"))))
        })
    }
}

/// Computes the calculation with this name: its result as JSON. The input is JSON of at most 16 MiB with the fields of core's type in snake_case,
/// choices in kebab-case, quantities as text with their unit; an unknown field is refused. An error's path is `name`, or leads into the
/// input: `input.rule.fixed.spacing`.
///
/// Asking for the size alone computes too: a buffer of some kilobytes saves most callers the second call.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_compute_json(
    name: *const c_char,
    name_len: usize,
    input: *const c_char,
    input_len: usize,
    buffer: *mut c_char,
    capacity: usize,
    needed: *mut usize,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = TextOut::at(buffer, capacity, needed)?;
            Ok(out.put(Some(&by_name(text_in(name, name_len, "name")?, text_in(input, input_len, "input")?, NamedCalculation::compute_json)?)))
        })
    }
}

/// As `sw_compute_json`, with the working: `{"out": ..., "worksheet": {"title": ..., "entries": [...]}}`. An entry is `{"step": {...}}` or, with
/// entries of its own, `{"part": {...}}`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_explain_json(
    name: *const c_char,
    name_len: usize,
    input: *const c_char,
    input_len: usize,
    buffer: *mut c_char,
    capacity: usize,
    needed: *mut usize,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = TextOut::at(buffer, capacity, needed)?;
            Ok(out.put(Some(&by_name(text_in(name, name_len, "name")?, text_in(input, input_len, "input")?, NamedCalculation::explained_json)?)))
        })
    }
}

/// The names of all drawings and pages that `sw_drawing_json` makes, one a line.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_drawing_names(buffer: *mut c_char, capacity: usize, needed: *mut usize, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = TextOut::at(buffer, capacity, needed)?;
            Ok(out.put(Some(&drawing_names().collect::<Vec<_>>().join("\n"))))
        })
    }
}

/// The drawing or page with this name, as SVG, HTML or DXF: `roof.roof-plan` is the plan of a roof with its panels, `roof.measuring-page` the sheet of
/// what to measure on it, `trim.drawn-trim` a trim folded or flat and `trim.drawn-blank` a blank, as SVG or as the text of a DXF file. The input is JSON as of
/// `sw_compute_json`, with the fields of core's type of that name in the room `export`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_drawing_json(
    name: *const c_char,
    name_len: usize,
    input: *const c_char,
    input_len: usize,
    buffer: *mut c_char,
    capacity: usize,
    needed: *mut usize,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = TextOut::at(buffer, capacity, needed)?;
            let (name, input) = (text_in(name, name_len, "name")?, text_in(input, input_len, "input")?);
            let is_known = drawing_names().any(|known| known == name);
            Ok(out.put(Some(&drawing_json(name, input).map_err(|e| if is_known { e.under("input") } else { e })?)))
        })
    }
}

fn by_name(name: &str, input: &str, run: fn(&NamedCalculation, &str) -> Result<String, Error>) -> Result<String, Error> {
    run(named(name)?, input).map_err(|e| e.under("input"))
}
