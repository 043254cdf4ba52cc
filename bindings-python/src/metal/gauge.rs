//! `seamwright.metal.Gauge` and `GaugeSystem`.

use crate::error::Raise;
use crate::given::{Given, Text, Whole, Wraps};
use crate::record::Source;
use crate::units::{Length, SurfaceMass};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::metal as core;

/// A system of gauges by its name: us-standard, manufacturers-standard, galvanized, brown-and-sharpe, zinc-gauge or copper.
///
/// >>> from seamwright.metal import GaugeSystem
/// >>> GaugeSystem("brown-and-sharpe").nearest("0.0216 in").number
/// 23
#[pyclass(module = "seamwright.metal", frozen, eq, ord, hash)]
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) struct GaugeSystem(core::GaugeSystem);

impl Wraps for GaugeSystem {
    type Core = core::GaugeSystem;
    const WHAT: &'static str = "a system of gauges, such as 'manufacturers-standard'";
    fn core(&self) -> core::GaugeSystem {
        self.0
    }
}

#[pymethods]
impl GaugeSystem {
    #[new]
    fn new(system: Given<GaugeSystem>) -> PyResult<GaugeSystem> {
        system.value().map(GaugeSystem)
    }

    /// The system with this name.
    #[staticmethod]
    fn parse(text: Text) -> PyResult<GaugeSystem> {
        core::GaugeSystem::parse(&text.0).raise().map(GaugeSystem)
    }

    /// Every system.
    #[staticmethod]
    fn all() -> Vec<GaugeSystem> {
        core::GaugeSystem::ALL.iter().copied().map(GaugeSystem).collect()
    }

    /// The name as text.
    #[getter]
    fn name(&self) -> &'static str {
        self.0.name()
    }

    /// The numbers that it has, in words.
    #[getter]
    fn numbers(&self) -> &'static str {
        self.0.numbers()
    }

    /// The gauge whose thickness differs least.
    fn nearest(&self, thickness: Given<Length>) -> PyResult<Gauge> {
        self.0.nearest(thickness.at("thickness")?).raise().map(Gauge)
    }

    fn __str__(&self) -> &'static str {
        self.0.name()
    }

    fn __repr__(&self) -> String {
        format!("GaugeSystem('{}')", self.0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (&'static str,)) {
        (slf.get_type(), (slf.get().0.name(),))
    }
}

/// A gauge in its system; a bare gauge number is refused.
///
/// >>> from seamwright.metal import Gauge
/// >>> format(Gauge("24 ga galvanized").charted_thickness, "in.4")
/// '0.0276 in'
#[pyclass(module = "seamwright.metal", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct Gauge(pub(super) core::Gauge);

impl Wraps for Gauge {
    type Core = core::Gauge;
    const WHAT: &'static str = "a gauge in its system, such as '24 ga galvanized'";
    fn core(&self) -> core::Gauge {
        self.0
    }
}

#[pymethods]
impl Gauge {
    #[new]
    fn __new__(gauge: Given<Gauge>) -> PyResult<Gauge> {
        gauge.value().map(Gauge)
    }

    /// The gauge of this number: for Brown and Sharpe 0000 is -3; for copper the number is its weight in oz/ft2.
    #[staticmethod]
    fn new(system: Given<GaugeSystem>, number: Whole<i16>) -> PyResult<Gauge> {
        core::Gauge::new(system.at("system")?, number.at("number")?).raise().map(Gauge)
    }

    /// Reads a gauge with its system.
    #[staticmethod]
    fn parse(text: Text) -> PyResult<Gauge> {
        core::Gauge::parse(&text.0).raise().map(Gauge)
    }

    /// Its system.
    #[getter]
    fn system(&self) -> GaugeSystem {
        GaugeSystem(self.0.system())
    }

    /// Its number in the system.
    #[getter]
    fn number(&self) -> i16 {
        self.0.number()
    }

    /// Its thickness, unrounded.
    #[getter]
    fn thickness(&self) -> Length {
        Length(self.0.thickness())
    }

    /// The thickness as charts print it.
    #[getter]
    fn charted_thickness(&self) -> Length {
        Length(self.0.charted_thickness())
    }

    /// The least thickness, where the system gives one.
    #[getter]
    fn least_thickness(&self) -> Option<Length> {
        self.0.least_thickness().map(Length)
    }

    /// The weight that defines it, where one does.
    #[getter]
    fn defining_weight(&self) -> Option<SurfaceMass> {
        self.0.defining_weight().map(SurfaceMass)
    }

    /// Where its thickness comes from.
    #[getter]
    fn source(&self) -> Source {
        Source(self.0.source())
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("Gauge('{}')", self.0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (String,)) {
        (slf.get_type(), (slf.get().__str__(),))
    }
}
