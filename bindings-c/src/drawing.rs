//! Drawings of a trim.

#![allow(unsafe_code, reason = "exports: fixed names, and pointers that the caller lends")]

use crate::boundary::{TextOut, guard, text_in};
use crate::error::sw_error;
use crate::status::sw_status;
use core::ffi::c_char;
use seamwright_core::export::DrawnTrim;
use seamwright_core::job::LONGEST_INPUT;
use seamwright_core::record::{Calculation, read_json};

/// A drawing of a trim, as the text of an SVG or of a DXF file.
///
/// `asked` is one JSON object: `profile` and `rule` as for `sw_flat_from_json`, `name`, `format` (`"in/16"`), and as `view` one of `"section-svg"`,
/// `"flat-svg"`, `{"section-dxf": {"unit": "inch"}}` and `{"flat-dxf": {"unit": "millimetre", "piece": "3 m"}}`; and, where they are wanted, `figure`, `paper`,
/// `turned` and `gauge`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_trim_drawing(
    asked: *const c_char,
    asked_len: usize,
    buffer: *mut c_char,
    capacity: usize,
    needed: *mut usize,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = TextOut::at(buffer, capacity, needed)?;
            let asked = text_in(asked, asked_len, "asked")?;
            let drawing = read_json::<DrawnTrim>(asked.as_bytes(), LONGEST_INPUT).and_then(|d| d.compute()).map_err(|e| e.under("asked"))?;
            Ok(out.put(Some(&drawing)))
        })
    }
}
