//! The classes of `seamwright.units`.

mod angle;
mod length;
mod length_format;
mod quantities;
mod rounding;
mod temperature;

pub(crate) use angle::{Angle, BendAngle};
pub(crate) use length::Length;
pub(crate) use length_format::LengthFormat;
pub(crate) use quantities::{Area, Density, Expansion, Force, LineLoad, LineMass, Mass, Pressure, SurfaceMass, TemperatureDifference, Volume};
pub(crate) use rounding::ShopRounding;
pub(crate) use temperature::Temperature;
