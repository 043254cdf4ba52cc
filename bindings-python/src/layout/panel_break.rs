//! Where panels are broken in two across a plane.

use crate::given::Given;
use crate::panel::PanelEnd;
use crate::units::Length;
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::layout as core_layout;

/// A level stretch of a plane across which every panel that lies on it is broken in two, over the panel's whole width: as where the pan of a valley
/// runs out between them.
///
/// ``at`` is its height up the plane, ``start`` and ``stop`` are its two ends across; ``below`` says how the pieces below it end there, ``above`` how
/// those above it do. Its two edges are numbered after those of the outline, that of the pieces below first.
///
/// >>> from seamwright.layout import PanelBreak
/// >>> from seamwright.panel import PanelEnd
/// >>> PanelBreak('40"', '20"', '24"', PanelEnd.hold_back('0"'), PanelEnd.overhang('8"')).at
/// Length('1016 mm')
#[pyclass(module = "seamwright.layout", frozen, eq, hash, from_py_object)]
#[derive(Clone, PartialEq, Eq)]
pub(crate) struct PanelBreak(pub(super) core_layout::PanelBreak);

impl core::hash::Hash for PanelBreak {
    fn hash<H: core::hash::Hasher>(&self, state: &mut H) {
        let b = &self.0;
        (b.at, b.from, b.to, &b.below, &b.above).hash(state);
    }
}

#[pymethods]
impl PanelBreak {
    #[new]
    #[pyo3(signature = (at, start, stop, below, above))]
    fn new(at: Given<Length>, start: Given<Length>, stop: Given<Length>, below: PanelEnd, above: PanelEnd) -> PyResult<PanelBreak> {
        let (at, from, to) = (at.at("at")?, start.at("from")?, stop.at("to")?);
        Ok(PanelBreak(core_layout::PanelBreak { at, from, to, below: below.0, above: above.0 }))
    }

    /// How far up the plane, as a y of the outline.
    #[getter]
    fn at(&self) -> Length {
        Length(self.0.at)
    }

    /// Its left end, as an x of the outline.
    #[getter]
    fn start(&self) -> Length {
        Length(self.0.from)
    }

    /// Its right end.
    #[getter]
    fn stop(&self) -> Length {
        Length(self.0.to)
    }

    /// How the pieces below it end there.
    #[getter]
    fn below(&self) -> PanelEnd {
        PanelEnd(self.0.below.clone())
    }

    /// How those above it end there.
    #[getter]
    fn above(&self) -> PanelEnd {
        PanelEnd(self.0.above.clone())
    }

    fn __repr__(&self) -> String {
        format!("<PanelBreak: {} up, from {} to {}>", self.0.at, self.0.from, self.0.to)
    }

    #[allow(clippy::type_complexity, reason = "the arguments in their order")]
    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Length, Length, Length, PanelEnd, PanelEnd)) {
        let b = slf.get();
        (slf.get_type(), (b.at(), b.start(), b.stop(), b.below(), b.above()))
    }
}
