//! Movement with temperature.

#![allow(unsafe_code, reason = "exports: fixed names, and pointers that the caller lends")]

use crate::boundary::{Out, guard, text_in};
use crate::error::sw_error;
use crate::length::sw_length;
use crate::status::{SW_OK, sw_status};
use core::ffi::c_char;
use seamwright_core::movement::LengthChange;
use seamwright_core::record::Calculation;
use seamwright_core::units::{Expansion, TemperatureDifference};

/// The change of a length with a difference of temperature, positive for growth. The expansion and the difference are texts with a
/// unit: `16.8e-6 /K`, `60 degF`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_movement_length_change(
    expansion: *const c_char,
    expansion_len: usize,
    length: sw_length,
    difference: *const c_char,
    difference_len: usize,
    change: *mut sw_length,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(change, "change")?;
            let expansion = Expansion::parse(text_in(expansion, expansion_len, "expansion")?).map_err(|e| e.under("expansion"))?;
            let difference = TemperatureDifference::parse(text_in(difference, difference_len, "difference")?).map_err(|e| e.under("difference"))?;
            out.put(LengthChange { expansion, length: length.into(), difference }.compute()?.into());
            Ok(SW_OK)
        })
    }
}
