//! `seamwright.units.ShopRounding`.

use super::Length;
use crate::error::Raise;
use crate::given::{Given, Text};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::units as core;

/// The shop's rule: a step, a direction (ceil, floor, away, toward, half-even, half-away), and a tolerance within which an excess is noise.
///
/// The tolerance is a micrometre unless given.
///
/// >>> from seamwright.units import ShopRounding
/// >>> format(ShopRounding('1"', "ceil").round('120 1/16"'), "in/16")
/// '121"'
#[pyclass(module = "seamwright.units", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct ShopRounding(pub(crate) core::ShopRounding);

#[pymethods]
impl ShopRounding {
    #[new]
    #[pyo3(signature = (increment, rounding, tolerance=None))]
    fn new(increment: Given<Length>, rounding: Text, tolerance: Option<Given<Length>>) -> PyResult<ShopRounding> {
        let rounding = core::Rounding::parse(&rounding.0).raise_at("rounding")?;
        let rule = core::ShopRounding::new(increment.at("increment")?, rounding).raise()?;
        match tolerance {
            Some(tolerance) => rule.tolerating(tolerance.at("tolerance")?).raise().map(ShopRounding),
            None => Ok(ShopRounding(rule)),
        }
    }

    /// The step.
    #[getter]
    fn increment(&self) -> Length {
        Length(self.0.increment())
    }

    /// The direction: ceil, floor, away, toward, half-even or half-away.
    #[getter]
    fn rounding(&self) -> &'static str {
        self.0.rounding().name()
    }

    /// The tolerance.
    #[getter]
    fn tolerance(&self) -> Length {
        Length(self.0.tolerance())
    }

    /// The length at the whole step.
    fn round(&self, length: Given<Length>) -> PyResult<Length> {
        self.0.round(length.at("length")?).raise().map(Length)
    }

    pub(crate) fn __repr__(&self) -> String {
        format!("ShopRounding('{}', '{}', '{}')", self.0.increment(), self.0.rounding().name(), self.0.tolerance())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (String, &'static str, String)) {
        let rule = slf.get().0;
        (slf.get_type(), (rule.increment().to_string(), rule.rounding().name(), rule.tolerance().to_string()))
    }
}
