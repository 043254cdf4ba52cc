//! `seamwright.units.Temperature`.

use super::TemperatureDifference;
use super::angle::hash_number;
use crate::error::Raise;
use crate::given::{Given, Text, Wraps};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::error::{Error, ErrorKind};
use seamwright::units as core_units;
use seamwright::units::TemperatureScale;

/// A temperature, held in degrees Celsius. Text is ``20 degC``, ``68 degF`` or ``293.15 K``.
///
/// >>> from seamwright.units import Temperature
/// >>> Temperature("32 degF").get("degC")
/// 0.0
#[pyclass(module = "seamwright.units", frozen, eq, ord, hash)]
#[derive(Clone, Copy, PartialEq, PartialOrd)]
pub(crate) struct Temperature(pub(crate) core_units::Temperature);

impl Wraps for Temperature {
    type Core = core_units::Temperature;
    const WHAT: &'static str = "a temperature with its scale, such as '20 degC'";
    fn core(&self) -> core_units::Temperature {
        self.0
    }
}

impl Hash for Temperature {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_number(self.0.get(TemperatureScale::Celsius), state);
    }
}

fn scale(symbol: &Text) -> PyResult<TemperatureScale> {
    TemperatureScale::ALL
        .iter()
        .copied()
        .find(|s| s.symbol() == symbol.0)
        .ok_or_else(|| Error::new(ErrorKind::Unit, "not a scale of temperature").value_of(&symbol.0).accepts(Temperature::scales().join(", ")))
        .raise_at("scale")
}

#[pymethods]
impl Temperature {
    #[new]
    fn __new__(temperature: Given<Temperature>) -> PyResult<Temperature> {
        temperature.value().map(Temperature)
    }

    /// The symbols of the scales, the one that is held first.
    #[staticmethod]
    fn scales() -> Vec<&'static str> {
        TemperatureScale::ALL.iter().map(|s| s.symbol()).collect()
    }

    /// A temperature on this scale.
    #[staticmethod]
    fn new(value: f64, scale: Text) -> PyResult<Temperature> {
        core_units::Temperature::new(value, self::scale(&scale)?).raise_at("value").map(Temperature)
    }

    /// Reads a number with its scale.
    #[staticmethod]
    fn parse(text: Text) -> PyResult<Temperature> {
        core_units::Temperature::parse(&text.0).raise().map(Temperature)
    }

    /// The number on this scale.
    fn get(&self, scale: Text) -> PyResult<f64> {
        Ok(self.0.get(self::scale(&scale)?))
    }

    /// How much warmer this is than the other; negative where it is colder.
    fn above(&self, other: Given<Temperature>) -> PyResult<TemperatureDifference> {
        Ok(TemperatureDifference(self.0.above(other.at("other")?)))
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("Temperature('{}')", self.0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (String,)) {
        (slf.get_type(), (slf.get().__str__(),))
    }
}
