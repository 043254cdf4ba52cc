//! `seamwright.units.LengthFormat`.

use super::Length;
use crate::error::Raise;
use crate::given::{Given, Text, Wraps};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::units as core;

/// How a length is written, itself written as text.
///
/// ``mm`` is exact; ``ft-in/16`` and ``in/32`` are feet, inches and fractions; ``in.3``, ``ft.4``, ``mm.1``, ``cm.1``, ``m.3`` and
/// ``um.0`` are decimal. A direction may follow: ``in/16 ceil``. Without one, ties go to the even step.
///
/// >>> from seamwright.units import LengthFormat
/// >>> LengthFormat("in/2 floor").text('3 5/8"')
/// '3 1/2"'
#[pyclass(module = "seamwright.units", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct LengthFormat(pub(crate) core::LengthFormat);

impl Wraps for LengthFormat {
    type Core = core::LengthFormat;
    const WHAT: &'static str = "a format of lengths, such as 'ft-in/16' or 'mm.1'";
    fn core(&self) -> core::LengthFormat {
        self.0
    }
}

#[pymethods]
impl LengthFormat {
    /// The canonical form: decimal millimetres, whose round trip is the identity.
    #[classattr]
    const EXACT: LengthFormat = LengthFormat(core::LengthFormat::EXACT);

    #[new]
    fn new(format: Given<LengthFormat>) -> PyResult<LengthFormat> {
        format.value().map(LengthFormat)
    }

    /// Reads a format from its text.
    #[staticmethod]
    fn parse(text: Text) -> PyResult<LengthFormat> {
        core::LengthFormat::parse(&text.0).raise().map(LengthFormat)
    }

    /// The direction of rounding: ceil, floor, away, toward, half-even or half-away.
    #[getter]
    fn rounding(&self) -> &'static str {
        self.0.rounding().name()
    }

    /// The step that this format shows; a picometre for the exact form.
    #[getter]
    fn step(&self) -> Length {
        Length(self.0.step())
    }

    /// The length as this format rounds it.
    fn rounded(&self, length: Given<Length>) -> PyResult<Length> {
        self.0.rounded(length.at("length")?).raise().map(Length)
    }

    /// The length as text.
    fn text(&self, length: Given<Length>) -> PyResult<String> {
        Ok(self.0.text(length.at("length")?).raise()?.as_str().to_owned())
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("LengthFormat('{}')", self.0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (String,)) {
        (slf.get_type(), (slf.get().__str__(),))
    }
}
