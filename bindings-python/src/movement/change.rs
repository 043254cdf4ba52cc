//! `seamwright.movement.LengthChange`.

use crate::error::Raise;
use crate::given::Given;
use crate::record::Worksheet;
use crate::units::{Expansion, Length, TemperatureDifference};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::movement as core;
use seamwright::record::Calculation;

/// How much longer a length of metal gets with heat; shorter with a negative difference.
///
/// >>> from seamwright.movement import LengthChange
/// >>> format(LengthChange("9.5e-6 /degF", '1"', "60 degF").compute(), "in.5")
/// '0.00057 in'
#[pyclass(module = "seamwright.movement", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct LengthChange(core::LengthChange);

#[pymethods]
impl LengthChange {
    #[new]
    fn new(expansion: Given<Expansion>, length: Given<Length>, difference: Given<TemperatureDifference>) -> PyResult<LengthChange> {
        let (expansion, length, difference) = (expansion.at("expansion")?, length.at("length")?, difference.at("difference")?);
        Ok(LengthChange(core::LengthChange { expansion, length, difference }))
    }

    /// Coefficient of linear expansion.
    #[getter]
    fn expansion(&self) -> Expansion {
        Expansion(self.0.expansion)
    }

    /// The length that moves.
    #[getter]
    fn length(&self) -> Length {
        Length(self.0.length)
    }

    /// How much warmer it gets; negative for cooling.
    #[getter]
    fn difference(&self) -> TemperatureDifference {
        TemperatureDifference(self.0.difference)
    }

    /// The change.
    fn compute(&self) -> PyResult<Length> {
        self.0.compute().raise().map(Length)
    }

    /// The change, and its worksheet.
    fn explain(&self) -> PyResult<(Length, Worksheet)> {
        let (change, sheet) = self.0.explain().raise()?;
        Ok((Length(change), Worksheet(sheet)))
    }

    fn __repr__(&self) -> String {
        format!("LengthChange('{}', '{}', '{}')", self.0.expansion, self.0.length, self.0.difference)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Expansion, Length, TemperatureDifference)) {
        let c = slf.get();
        (slf.get_type(), (c.expansion(), c.length(), c.difference()))
    }
}
