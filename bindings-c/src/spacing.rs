//! Stations of fasteners along a run.

#![allow(unsafe_code, reason = "exports: fixed names, and pointers that the caller lends")]

use crate::boundary::{ArrayOut, guard};
use crate::error::sw_error;
use crate::length::sw_length;
use crate::status::sw_status;
use seamwright_core::record::Calculation;
use seamwright_core::spacing::{Spacing, SpacingRule};

/// Stations at equal spaces, the fewest that keep each at or under the maximum on centre; the first and the last stand at the end distance.
///
/// `stations` receives as many as `capacity` allows, each measured from the start of the run; `*needed` is how many there are, and
/// is written too when the array is too small (`SW_BUFFER_TOO_SMALL`, no error). A NULL array of capacity 0 asks for the number alone.
/// The path of a refused maximum is the core's: `rule.maximum`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_spacing_equal(
    run: sw_length,
    end_distance: sw_length,
    maximum: sw_length,
    stations: *mut sw_length,
    capacity: usize,
    needed: *mut usize,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = ArrayOut::at(stations, capacity, needed, "stations")?;
            let rule = SpacingRule::Equal { maximum: maximum.into() };
            let found = Spacing { run: run.into(), end_distance: end_distance.into(), rule }.compute()?;
            Ok(out.put(found.positions.iter().map(|&p| p.into())))
        })
    }
}
