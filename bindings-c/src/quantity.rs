//! The other quantities, as text with a unit in and as a number of a named unit out.

#![allow(unsafe_code, reason = "exports: fixed names, and pointers that the caller lends")]

use crate::boundary::{Out, guard, text_in};
use crate::error::sw_error;
use crate::status::{SW_OK, sw_status};
use core::ffi::c_char;
use seamwright_core::error::{Error, ErrorKind};
use seamwright_core::units::{
    Angle, Area, AreaUnit, Density, DensityUnit, Expansion, ExpansionUnit, Force, ForceUnit, Length, LengthUnit, LineLoad, LineLoadUnit, LineMass,
    LineMassUnit, Mass, MassUnit, Pressure, PressureUnit, SurfaceMass, SurfaceMassUnit, Temperature, TemperatureDifference, TemperatureDifferenceUnit,
    TemperatureScale, Volume, VolumeUnit,
};

/// What kind of quantity a text is: one of the `SW_QUANTITY_` numbers.
pub type sw_quantity = i32;

/// A length.
pub const SW_QUANTITY_LENGTH: sw_quantity = 1;
/// An angle.
pub const SW_QUANTITY_ANGLE: sw_quantity = 2;
/// An area.
pub const SW_QUANTITY_AREA: sw_quantity = 3;
/// A volume.
pub const SW_QUANTITY_VOLUME: sw_quantity = 4;
/// A mass.
pub const SW_QUANTITY_MASS: sw_quantity = 5;
/// A force.
pub const SW_QUANTITY_FORCE: sw_quantity = 6;
/// A pressure, or a stress.
pub const SW_QUANTITY_PRESSURE: sw_quantity = 7;
/// A force along a line.
pub const SW_QUANTITY_LINE_LOAD: sw_quantity = 8;
/// A mass for each area.
pub const SW_QUANTITY_SURFACE_MASS: sw_quantity = 9;
/// A mass for each length.
pub const SW_QUANTITY_LINE_MASS: sw_quantity = 10;
/// A density.
pub const SW_QUANTITY_DENSITY: sw_quantity = 11;
/// A coefficient of linear thermal expansion.
pub const SW_QUANTITY_EXPANSION: sw_quantity = 12;
/// A temperature.
pub const SW_QUANTITY_TEMPERATURE: sw_quantity = 13;
/// A difference of temperature, never a temperature.
pub const SW_QUANTITY_TEMPERATURE_DIFFERENCE: sw_quantity = 14;

/// Reads a quantity with its unit and gives its number of another unit: `1 square` in `ft2` is 100.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_convert(
    quantity: sw_quantity,
    text: *const c_char,
    text_len: usize,
    unit: *const c_char,
    unit_len: usize,
    value: *mut f64,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(value, "value")?;
            out.put(convert(quantity, text_in(text, text_len, "text")?, text_in(unit, unit_len, "unit")?)?);
            Ok(SW_OK)
        })
    }
}

macro_rules! of_units {
    ($text:ident, $unit:ident, $quantity:ident, $units:ident) => {{
        let held = $quantity::parse($text).map_err(|e| e.under("text"))?;
        held.get(named($unit, $units::ALL.iter().map(|u| (u.symbol(), *u)))?)
    }};
}

fn convert(quantity: sw_quantity, text: &str, unit: &str) -> Result<f64, Error> {
    Ok(match quantity {
        SW_QUANTITY_LENGTH => of_units!(text, unit, Length, LengthUnit),
        SW_QUANTITY_ANGLE => {
            let read = named(unit, [("deg", Angle::degrees as fn(Angle) -> f64), ("rad", Angle::radians)].into_iter())?;
            read(Angle::parse(text).map_err(|e| e.under("text"))?)
        }
        SW_QUANTITY_AREA => of_units!(text, unit, Area, AreaUnit),
        SW_QUANTITY_VOLUME => of_units!(text, unit, Volume, VolumeUnit),
        SW_QUANTITY_MASS => of_units!(text, unit, Mass, MassUnit),
        SW_QUANTITY_FORCE => of_units!(text, unit, Force, ForceUnit),
        SW_QUANTITY_PRESSURE => of_units!(text, unit, Pressure, PressureUnit),
        SW_QUANTITY_LINE_LOAD => of_units!(text, unit, LineLoad, LineLoadUnit),
        SW_QUANTITY_SURFACE_MASS => of_units!(text, unit, SurfaceMass, SurfaceMassUnit),
        SW_QUANTITY_LINE_MASS => of_units!(text, unit, LineMass, LineMassUnit),
        SW_QUANTITY_DENSITY => of_units!(text, unit, Density, DensityUnit),
        SW_QUANTITY_EXPANSION => of_units!(text, unit, Expansion, ExpansionUnit),
        SW_QUANTITY_TEMPERATURE => {
            let scales = TemperatureScale::ALL.iter().map(|s| (s.symbol(), *s));
            Temperature::parse(text).map_err(|e| e.under("text"))?.get(named(unit, scales)?)
        }
        SW_QUANTITY_TEMPERATURE_DIFFERENCE => of_units!(text, unit, TemperatureDifference, TemperatureDifferenceUnit),
        _ => {
            return Err(Error::new(ErrorKind::Unknown, "not the number of a quantity")
                .at("quantity")
                .value_of(quantity)
                .accepts("one of the SW_QUANTITY_ numbers"));
        }
    })
}

/// The unit of this symbol.
pub(crate) fn named<U>(symbol: &str, units: impl Iterator<Item = (&'static str, U)> + Clone) -> Result<U, Error> {
    units.clone().find(|(s, _)| *s == symbol).map(|(_, u)| u).ok_or_else(|| {
        let symbols: Vec<&str> = units.map(|(s, _)| s).collect();
        Error::new(ErrorKind::Unit, "not a unit of this quantity").at("unit").value_of(symbol).accepts(symbols.join(", "))
    })
}
