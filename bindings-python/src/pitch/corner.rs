//! `seamwright.pitch.Corner` and what it gives.

use super::Pitch;
use crate::error::Raise;
use crate::given::Given;
use crate::record::Worksheet;
use crate::units::{Angle, Length};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::pitch as core_pitch;
use seamwright::record::Calculation;

/// Two planes whose eaves meet at a plan corner: a hip, or the valley of the same two planes.
///
/// The plan angle is the one between the two eaves, 90 degrees for a square building.
///
/// >>> from seamwright.pitch import Corner
/// >>> round(Corner("12:12", "12:12", "90 deg").compute().dihedral.degrees, 12)
/// 120.0
#[pyclass(module = "seamwright.pitch", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct Corner(pub(crate) core_pitch::Corner);

impl Hash for Corner {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (Pitch(self.0.first), Pitch(self.0.second), Angle(self.0.plan)).hash(state);
    }
}

#[pymethods]
impl Corner {
    #[new]
    fn new(first: Given<Pitch>, second: Given<Pitch>, plan: Given<Angle>) -> PyResult<Corner> {
        Ok(Corner(core_pitch::Corner { first: first.at("first")?, second: second.at("second")?, plan: plan.at("plan")? }))
    }

    /// The pitch of side 1.
    #[getter]
    fn first(&self) -> Pitch {
        Pitch(self.0.first)
    }

    /// The pitch of side 2.
    #[getter]
    fn second(&self) -> Pitch {
        Pitch(self.0.second)
    }

    /// The plan angle between the two eaves.
    #[getter]
    fn plan(&self) -> Angle {
        Angle(self.0.plan)
    }

    /// The geometry of the line.
    fn compute(&self) -> PyResult<CornerGeometry> {
        self.0.compute().raise().map(|geometry| CornerGeometry { of: *self, geometry })
    }

    /// The geometry of the line, and its worksheet.
    fn explain(&self) -> PyResult<(CornerGeometry, Worksheet)> {
        let (geometry, sheet) = self.0.explain().raise()?;
        Ok((CornerGeometry { of: *self, geometry }, Worksheet(sheet)))
    }

    pub(super) fn __repr__(&self) -> String {
        format!("Corner('{}', '{}', '{}')", self.0.first, self.0.second, self.0.plan)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Pitch, Pitch, Angle)) {
        let c = slf.get();
        (slf.get_type(), (c.first(), c.second(), c.plan()))
    }
}

/// The geometry of a hip or valley. It pickles as its corner, which computes it again.
#[pyclass(module = "seamwright.pitch", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct CornerGeometry {
    of: Corner,
    geometry: core_pitch::CornerGeometry,
}

impl Hash for CornerGeometry {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.of.hash(state);
    }
}

#[pymethods]
impl CornerGeometry {
    /// Side 1.
    #[getter]
    fn first(&self) -> CornerSide {
        CornerSide { of: *self, name: "first", side: self.geometry.first }
    }

    /// Side 2.
    #[getter]
    fn second(&self) -> CornerSide {
        CornerSide { of: *self, name: "second", side: self.geometry.second }
    }

    /// The slope of the line itself, up from level.
    #[getter]
    fn slope(&self) -> Angle {
        Angle(self.geometry.slope)
    }

    /// The angle between the two planes: under the roof at a hip, on the weather side at a valley.
    #[getter]
    fn dihedral(&self) -> Angle {
        Angle(self.geometry.dihedral)
    }

    fn __repr__(&self) -> String {
        format!("{}.compute()", self.of.__repr__())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, ())> {
        Ok((slf.get().of.into_pyobject(slf.py())?.getattr("compute")?, ()))
    }
}

/// What one side of a hip or valley sees of it.
#[pyclass(module = "seamwright.pitch", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct CornerSide {
    of: CornerGeometry,
    name: &'static str,
    side: core_pitch::CornerSide,
}

impl Hash for CornerSide {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (self.of, self.name).hash(state);
    }
}

#[pymethods]
impl CornerSide {
    /// In plan, from this side's eave to the line.
    #[getter]
    fn plan(&self) -> Angle {
        Angle(self.side.plan)
    }

    /// From the plane square to the line's own vertical plane down to this roof plane; negative where the plan angle is more than 90 degrees.
    #[getter]
    fn backing(&self) -> Angle {
        Angle(self.side.backing)
    }

    /// In the roof plane, from this side's eave to the line.
    #[getter]
    fn in_plane(&self) -> Angle {
        Angle(self.side.in_plane)
    }

    /// True length of the line for each unit of this side's level common run.
    #[getter]
    fn length_factor(&self) -> f64 {
        self.side.length_factor
    }

    /// The meeting angle of this side's seams with the line, in the roof plane: 90 degrees is square, 0 is along the seams.
    #[getter]
    fn meeting(&self) -> Angle {
        Angle(self.side.meeting())
    }

    /// The meeting angle with its sign: positive where the seam farther from the corner meets the line farther up the slope.
    #[getter]
    fn signed_meeting(&self) -> Angle {
        Angle(self.side.signed_meeting())
    }

    /// The skew, 90 degrees less the meeting angle, as set on a bevel.
    #[getter]
    fn skew(&self) -> Angle {
        Angle(self.side.skew())
    }

    /// How much farther up the slope the line is met after one coverage along the eave: the drop that is marked on a skew end.
    fn drop_over(&self, coverage: Given<Length>) -> PyResult<Length> {
        self.side.drop_over(coverage.at("coverage")?).raise().map(Length)
    }

    fn __repr__(&self) -> String {
        format!("{}.{}", self.of.__repr__(), self.name)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (CornerGeometry, &'static str))> {
        let side = slf.get();
        Ok((slf.py().import("builtins")?.getattr("getattr")?, (side.of, side.name)))
    }
}
