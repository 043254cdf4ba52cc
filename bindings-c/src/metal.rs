//! Gauges of sheet metal.

#![allow(unsafe_code, reason = "exports: fixed names, and pointers that the caller lends")]

use crate::boundary::{Out, guard, text_in};
use crate::error::sw_error;
use crate::length::sw_length;
use crate::quantity::named;
use crate::status::{SW_OK, sw_status};
use core::ffi::c_char;
use seamwright_core::error::{Error, ErrorKind};
use seamwright_core::metal::{Gauge, GaugeSystem};
use seamwright_core::units::SurfaceMassUnit;

/// The nominal thickness of a gauge: `24 ga galvanized`, `16 oz copper`. A gauge without its system is refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_metal_gauge_thickness(gauge: *const c_char, gauge_len: usize, thickness: *mut sw_length, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(thickness, "thickness")?;
            out.put(parsed(text_in(gauge, gauge_len, "gauge")?)?.thickness().into());
            Ok(SW_OK)
        })
    }
}

/// The weight that defines a gauge, as a number of a unit of mass for each area (`lb/ft2`, `kg/m2`); `SW_MISSING` for a gauge that no weight defines.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_metal_gauge_weight(
    gauge: *const c_char,
    gauge_len: usize,
    unit: *const c_char,
    unit_len: usize,
    weight: *mut f64,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(weight, "weight")?;
            let gauge = parsed(text_in(gauge, gauge_len, "gauge")?)?;
            let unit = named(text_in(unit, unit_len, "unit")?, SurfaceMassUnit::ALL.iter().map(|u| (u.symbol(), *u)))?;
            let defining = gauge
                .defining_weight()
                .ok_or_else(|| Error::new(ErrorKind::Missing, "no weight defines this gauge").at("gauge").value_of(gauge).accepts("a gauge by weight"))?;
            out.put(defining.get(unit));
            Ok(SW_OK)
        })
    }
}

/// The number of the gauge of a system (`us-standard`, `galvanized`) whose thickness is nearest; for Brown and Sharpe 00, 000, 0000 are -1, -2, -3.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_metal_nearest_gauge(
    system: *const c_char,
    system_len: usize,
    thickness: sw_length,
    number: *mut i32,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(number, "number")?;
            let system = GaugeSystem::parse(text_in(system, system_len, "system")?).map_err(|e| e.under("system"))?;
            out.put(system.nearest(thickness.into())?.number().into());
            Ok(SW_OK)
        })
    }
}

fn parsed(text: &str) -> Result<Gauge, Error> {
    Gauge::parse(text).map_err(|e| e.under("gauge"))
}
