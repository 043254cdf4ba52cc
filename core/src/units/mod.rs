//! Quantities of the trade: exact lengths, angles, and the physical quantities that loads and orders need.
//!
//! | quantity | held as | text |
//! |---|---|---|
//! | [`Length`] | whole picometres, exact | `12'-3 5/8"`, `92.075 mm` |
//! | [`LengthArray`] | plain numbers of one unit, for batch functions | |
//! | [`Sum`] | a total of lengths on its way back to a [`Length`] | |
//! | [`Angle`], [`BendAngle`] | degrees | `18.5 deg` |
//! | [`Area`], [`Volume`], [`Mass`], [`Force`], [`Pressure`], [`LineLoad`] ... | finite SI numbers | `9.290304 m2` |
//! | [`Temperature`], [`TemperatureDifference`] | degrees Celsius, kelvins | `20 degC`, `100 K` |
//!
//! A quantity is text with its unit, in and out; a bare number is refused.

mod angle;
mod length;
mod length_array;
mod length_format;
mod length_parse;
mod quantities;
mod quantity;
mod rounding;
#[cfg(feature = "serde")]
mod serde_text;
mod sum;
mod tape_reading;
mod temperature;

#[cfg(test)]
mod length_tests;

pub use angle::{Angle, BendAngle};
pub use length::{Length, LengthUnit};
pub use length_array::LengthArray;
pub use length_format::{LengthFormat, LengthStyle, LengthText};
pub use quantities::{
    Area, AreaUnit, Density, DensityUnit, Expansion, ExpansionUnit, Force, ForceUnit, LineLoad, LineLoadUnit, LineMass, LineMassUnit, Mass, MassUnit, Pressure,
    PressureUnit, SurfaceMass, SurfaceMassUnit, Volume, VolumeUnit,
};
pub(crate) use quantity::parse_number_and_unit;
pub use rounding::{Rounding, ShopRounding};
#[cfg(feature = "serde")]
pub(crate) use serde_text::serde_text;
pub use sum::Sum;
pub use tape_reading::TapeReading;
pub use temperature::{Temperature, TemperatureDifference, TemperatureDifferenceUnit, TemperatureScale};
