//! `seamwright.units.Angle` and `BendAngle`.

use crate::error::Raise;
use crate::given::{Given, Text, Wraps};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::units as core_units;

/// Hashes a finite number so that equal numbers hash alike, the two zeros too.
pub(super) fn hash_number<H: Hasher>(number: f64, state: &mut H) {
    (number + 0.0).to_bits().hash(state);
}

/// An angle in degrees, kept as given. Text is ``18.5 deg``, ``18.5°`` or ``0.3 rad``; a bare number is refused.
///
/// >>> from seamwright.units import Angle
/// >>> Angle("30 deg").sin()
/// 0.5
#[pyclass(module = "seamwright.units", frozen, eq, ord, hash)]
#[derive(Clone, Copy, PartialEq, PartialOrd)]
pub(crate) struct Angle(pub(crate) core_units::Angle);

impl Wraps for Angle {
    type Core = core_units::Angle;
    const WHAT: &'static str = "an angle with its unit, such as '18.5 deg'";
    fn core(&self) -> core_units::Angle {
        self.0
    }
}

impl Hash for Angle {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_number(self.0.degrees(), state);
    }
}

#[pymethods]
impl Angle {
    /// No angle.
    #[classattr]
    const ZERO: Angle = Angle(core_units::Angle::ZERO);
    /// The square.
    #[classattr]
    const SQUARE: Angle = Angle(core_units::Angle::SQUARE);

    #[new]
    fn new(angle: Given<Angle>) -> PyResult<Angle> {
        angle.value().map(Angle)
    }

    /// Reads an angle with its unit.
    #[staticmethod]
    fn parse(text: Text) -> PyResult<Angle> {
        core_units::Angle::parse(&text.0).raise().map(Angle)
    }

    /// An angle of so many degrees.
    #[staticmethod]
    fn degrees_from(degrees: f64) -> PyResult<Angle> {
        core_units::Angle::degrees_from(degrees).raise_at("degrees").map(Angle)
    }

    /// The angle in degrees.
    #[getter]
    fn degrees(&self) -> f64 {
        self.0.degrees()
    }

    /// The angle in radians.
    #[getter]
    fn radians(&self) -> f64 {
        self.0.radians()
    }

    /// Its sine.
    fn sin(&self) -> f64 {
        self.0.sin()
    }

    /// Its cosine.
    fn cos(&self) -> f64 {
        self.0.cos()
    }

    /// Its tangent; infinite at 90 degrees.
    fn tan(&self) -> f64 {
        self.0.tan()
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("Angle('{}')", self.0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (String,)) {
        (slf.get_type(), (slf.get().__str__(),))
    }
}

/// How far sheet is bent, measured from flat: 0 is flat, 90 is square, 180 is folded back on itself. Text gives degrees from flat.
///
/// >>> from seamwright.units import BendAngle
/// >>> BendAngle.between_flanges("120 deg") == BendAngle.from_flat("60 deg")
/// True
#[pyclass(module = "seamwright.units", frozen, eq, ord, hash)]
#[derive(Clone, Copy, PartialEq, PartialOrd)]
pub(crate) struct BendAngle(pub(crate) core_units::BendAngle);

impl Wraps for BendAngle {
    type Core = core_units::BendAngle;
    const WHAT: &'static str = "a bend from flat with its unit, such as '90 deg'";
    fn core(&self) -> core_units::BendAngle {
        self.0
    }
}

impl Hash for BendAngle {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_number(self.0.degrees(), state);
    }
}

#[pymethods]
impl BendAngle {
    /// A square bend.
    #[classattr]
    const SQUARE: BendAngle = BendAngle(core_units::BendAngle::SQUARE);
    /// A fold back on itself, as in a hem.
    #[classattr]
    const FOLDED: BendAngle = BendAngle(core_units::BendAngle::FOLDED);

    #[new]
    fn new(from_flat: Given<BendAngle>) -> PyResult<BendAngle> {
        from_flat.value().map(BendAngle)
    }

    /// The bend, measured from flat.
    #[staticmethod]
    fn from_flat(angle: Given<Angle>) -> PyResult<BendAngle> {
        core_units::BendAngle::from_flat(angle.at("angle")?).raise_at("angle").map(BendAngle)
    }

    /// The bend whose flanges stand at this angle to each other.
    #[staticmethod]
    fn between_flanges(angle: Given<Angle>) -> PyResult<BendAngle> {
        core_units::BendAngle::between_flanges(angle.at("angle")?).raise_at("angle").map(BendAngle)
    }

    /// Degrees from flat.
    #[getter]
    fn degrees(&self) -> f64 {
        self.0.degrees()
    }

    /// The angle from flat.
    #[getter]
    fn angle(&self) -> Angle {
        Angle(self.0.angle())
    }

    /// The angle between the flanges; negative where the bend goes past 180 degrees.
    #[getter]
    fn opening(&self) -> Angle {
        Angle(self.0.opening())
    }

    /// Tangent of half the bend, the factor from radius to setback; infinite at 180 degrees.
    fn half_tangent(&self) -> f64 {
        self.0.half_tangent()
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("BendAngle('{}')", self.0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (String,)) {
        (slf.get_type(), (slf.get().__str__(),))
    }
}
