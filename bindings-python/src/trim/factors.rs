//! The three quantities that the trade calls K.

use crate::error::Raise;
use crate::given::Given;
use crate::names::hash_written;
use crate::units::{BendAngle, Length};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::trim as core_trim;

/// Place of the neutral line as a share of the thickness, from the inside face.
///
/// >>> from seamwright.trim import NeutralFactor
/// >>> NeutralFactor.MIDDLE == NeutralFactor(0.5)
/// True
#[pyclass(module = "seamwright.trim", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct NeutralFactor(pub(super) core_trim::NeutralFactor);

impl Hash for NeutralFactor {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.0, state);
    }
}

#[pymethods]
impl NeutralFactor {
    /// The middle of the sheet.
    #[classattr]
    const MIDDLE: NeutralFactor = NeutralFactor(core_trim::NeutralFactor::MIDDLE);

    #[new]
    fn new(factor: f64) -> PyResult<NeutralFactor> {
        core_trim::NeutralFactor::new(factor).raise().map(NeutralFactor)
    }

    /// The factor.
    #[getter]
    fn value(&self) -> f64 {
        self.0.value()
    }

    fn __repr__(&self) -> String {
        format!("NeutralFactor({})", self.0.value())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (f64,)) {
        (slf.get_type(), (slf.get().0.value(),))
    }
}

/// The factor k of DIN 6935, which is twice a neutral factor.
#[pyclass(module = "seamwright.trim", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct DinFactor {
    of: (Length, Length),
    factor: core_trim::DinFactor,
}

impl Hash for DinFactor {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.of.hash(state);
    }
}

#[pymethods]
impl DinFactor {
    /// The factor for this radius and thickness.
    #[staticmethod]
    fn of(inside_radius: Given<Length>, thickness: Given<Length>) -> PyResult<DinFactor> {
        let (radius, thickness) = (inside_radius.at("inside_radius")?, thickness.at("thickness")?);
        let factor = core_trim::DinFactor::of(radius, thickness).raise()?;
        Ok(DinFactor { of: (Length(radius), Length(thickness)), factor })
    }

    /// The factor.
    #[getter]
    fn value(&self) -> f64 {
        self.factor.value()
    }

    /// The neutral factor that it stands for.
    #[getter]
    fn neutral(&self) -> NeutralFactor {
        NeutralFactor(self.factor.neutral())
    }

    fn __repr__(&self) -> String {
        format!("DinFactor.of('{}', '{}')", self.of.0.0, self.of.1.0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (Length, Length))> {
        Ok((slf.get_type().getattr("of")?, slf.get().of))
    }
}

/// The tangent of half the bend, the factor from radius plus thickness to setback.
#[pyclass(module = "seamwright.trim", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct SetbackFactor {
    of: BendAngle,
    factor: core_trim::SetbackFactor,
}

impl Hash for SetbackFactor {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.of.hash(state);
    }
}

#[pymethods]
impl SetbackFactor {
    /// The factor for this bend.
    #[staticmethod]
    fn of(angle: Given<BendAngle>) -> PyResult<SetbackFactor> {
        let angle = angle.at("angle")?;
        Ok(SetbackFactor { of: BendAngle(angle), factor: core_trim::SetbackFactor::of(angle).raise()? })
    }

    /// The factor.
    #[getter]
    fn value(&self) -> f64 {
        self.factor.value()
    }

    fn __repr__(&self) -> String {
        format!("SetbackFactor.of('{}')", self.of.0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (BendAngle,))> {
        Ok((slf.get_type().getattr("of")?, (slf.get().of,)))
    }
}
