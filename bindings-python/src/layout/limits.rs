//! What limits a layout: the shop's rounding, the least width, the greatest length.

use crate::error::Raise;
use crate::given::{Given, Text};
use crate::names::{name_of, named};
use crate::units::{Length, ShopRounding};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::layout as core_layout;

/// The shop's rounding of order lengths, by how many of the two ends are finished in the shop (have no field trim).
///
/// >>> from seamwright.layout import OrderRounding
/// >>> format(OrderRounding.common_practice().field_cut.round('100 1/16"'), "in/16")
/// '101"'
#[pyclass(module = "seamwright.layout", frozen, eq, hash, from_py_object)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct OrderRounding(pub(super) core_layout::OrderRounding);

#[pymethods]
impl OrderRounding {
    #[new]
    fn new(both_finished: &Bound<'_, ShopRounding>, one_finished: &Bound<'_, ShopRounding>, field_cut: &Bound<'_, ShopRounding>) -> OrderRounding {
        OrderRounding(core_layout::OrderRounding { both_finished: both_finished.get().0, one_finished: one_finished.get().0, field_cut: field_cut.get().0 })
    }

    /// The rule unless another is given (common practice).
    #[staticmethod]
    fn common_practice() -> PyResult<OrderRounding> {
        core_layout::OrderRounding::common_practice().raise().map(OrderRounding)
    }

    /// One rule for every panel.
    #[staticmethod]
    fn all(rule: &Bound<'_, ShopRounding>) -> OrderRounding {
        OrderRounding(core_layout::OrderRounding::all(rule.get().0))
    }

    /// Both ends finished.
    #[getter]
    fn both_finished(&self) -> ShopRounding {
        ShopRounding(self.0.both_finished)
    }

    /// One end finished, one cut on the roof.
    #[getter]
    fn one_finished(&self) -> ShopRounding {
        ShopRounding(self.0.one_finished)
    }

    /// Both ends cut on the roof.
    #[getter]
    fn field_cut(&self) -> ShopRounding {
        ShopRounding(self.0.field_cut)
    }

    fn __repr__(&self) -> String {
        let rules = [self.both_finished(), self.one_finished(), self.field_cut()].map(|r| r.__repr__());
        format!("OrderRounding({})", rules.join(", "))
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (ShopRounding, ShopRounding, ShopRounding)) {
        let r = slf.get();
        (slf.get_type(), (r.both_finished(), r.one_finished(), r.field_cut()))
    }
}

/// The least width of a panel, and what happens under it: ``report`` (laid with a caution) or ``refuse``.
///
/// >>> from seamwright.layout import NarrowLimit
/// >>> NarrowLimit('6"', "report").choice
/// 'report'
#[pyclass(module = "seamwright.layout", frozen, eq, hash, from_py_object)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct NarrowLimit(pub(super) core_layout::NarrowLimit);

#[pymethods]
impl NarrowLimit {
    #[new]
    fn new(least: Given<Length>, choice: Text) -> PyResult<NarrowLimit> {
        Ok(NarrowLimit(core_layout::NarrowLimit { least: least.at("least")?, choice: named(&choice, "choice")? }))
    }

    /// The least width.
    #[getter]
    fn least(&self) -> Length {
        Length(self.0.least)
    }

    /// What happens under it: ``report`` or ``refuse``.
    #[getter]
    fn choice(&self) -> PyResult<String> {
        name_of(&self.0.choice)
    }

    fn __repr__(&self) -> PyResult<String> {
        Ok(format!("NarrowLimit('{}', '{}')", self.0.least, self.choice()?))
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyType>, (Length, String))> {
        Ok((slf.get_type(), (slf.get().least(), slf.get().choice()?)))
    }
}

/// The greatest order length, what sets it (movement, forming, shipping or lifting), and how far pieces lap beyond it.
///
/// Without ``end_lap`` end laps are refused.
///
/// >>> from seamwright.layout import LengthLimit
/// >>> LengthLimit("45'", "shipping").end_lap is None
/// True
#[pyclass(module = "seamwright.layout", frozen, eq, hash, from_py_object)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct LengthLimit(pub(super) core_layout::LengthLimit);

#[pymethods]
impl LengthLimit {
    #[new]
    #[pyo3(signature = (length, governs, end_lap=None))]
    fn new(length: Given<Length>, governs: Text, end_lap: Option<Given<Length>>) -> PyResult<LengthLimit> {
        let end_lap = end_lap.map(|lap| lap.at("end_lap")).transpose()?;
        Ok(LengthLimit(core_layout::LengthLimit { length: length.at("length")?, governs: named(&governs, "governs")?, end_lap }))
    }

    /// The greatest order length of a piece.
    #[getter]
    fn length(&self) -> Length {
        Length(self.0.length)
    }

    /// What sets it: movement, forming, shipping or lifting.
    #[getter]
    fn governs(&self) -> &'static str {
        self.0.governs.name()
    }

    /// How far pieces lap at an end lap; ``None`` where end laps are refused.
    #[getter]
    fn end_lap(&self) -> Option<Length> {
        self.0.end_lap.map(Length)
    }

    fn __repr__(&self) -> String {
        let lap = self.0.end_lap.map_or_else(String::new, |lap| format!(", '{lap}'"));
        format!("LengthLimit('{}', '{}'{lap})", self.0.length, self.governs())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Length, &'static str, Option<Length>)) {
        (slf.get_type(), (slf.get().length(), slf.get().governs(), slf.get().end_lap()))
    }
}
