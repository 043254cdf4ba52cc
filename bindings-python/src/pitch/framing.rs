//! `seamwright.pitch.Framing` and the row it gives.

use super::Pitch;
use crate::error::Raise;
use crate::given::Given;
use crate::record::Worksheet;
use crate::units::Length;
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::pitch as core_pitch;
use seamwright::record::Calculation;

/// The framing-square row of a pitch, for a square plan corner with this pitch on both sides.
///
/// >>> from seamwright.pitch import Framing
/// >>> row = Framing("6:12", '16"').compute()
/// >>> format(row.jack_difference, "in.3"), format(row.hip_per_foot, "in/16")
/// ('17.889 in', '18"')
#[pyclass(module = "seamwright.pitch", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct Framing(core_pitch::Framing);

impl Hash for Framing {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (Pitch(self.0.pitch), self.0.spacing).hash(state);
    }
}

#[pymethods]
impl Framing {
    #[new]
    fn new(pitch: Given<Pitch>, spacing: Given<Length>) -> PyResult<Framing> {
        Ok(Framing(core_pitch::Framing { pitch: pitch.at("pitch")?, spacing: spacing.at("spacing")? }))
    }

    /// The pitch of both planes.
    #[getter]
    fn pitch(&self) -> Pitch {
        Pitch(self.0.pitch)
    }

    /// The spacing of jacks along the eave: seams, battens or rafters.
    #[getter]
    fn spacing(&self) -> Length {
        Length(self.0.spacing)
    }

    /// The row.
    fn compute(&self) -> PyResult<FramingRow> {
        self.0.compute().raise().map(|row| FramingRow { of: *self, row })
    }

    /// The row, and its worksheet.
    fn explain(&self) -> PyResult<(FramingRow, Worksheet)> {
        let (row, sheet) = self.0.explain().raise()?;
        Ok((FramingRow { of: *self, row }, Worksheet(sheet)))
    }

    fn __repr__(&self) -> String {
        format!("Framing('{}', '{}')", self.0.pitch, self.0.spacing)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Pitch, Length)) {
        (slf.get_type(), (slf.get().pitch(), slf.get().spacing()))
    }
}

/// One row of the framing square. It pickles as its input, which computes it again.
#[pyclass(module = "seamwright.pitch", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct FramingRow {
    of: Framing,
    row: core_pitch::FramingRow,
}

impl Hash for FramingRow {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.of.hash(state);
    }
}

#[pymethods]
impl FramingRow {
    /// Length down the slope for each foot of common run.
    #[getter]
    fn common_per_foot(&self) -> Length {
        Length(self.row.common_per_foot)
    }

    /// Length of a hip or valley for each foot of common run.
    #[getter]
    fn hip_per_foot(&self) -> Length {
        Length(self.row.hip_per_foot)
    }

    /// Level run of a hip or valley for each foot of common run.
    #[getter]
    fn hip_run_per_foot(&self) -> Length {
        Length(self.row.hip_run_per_foot)
    }

    /// The difference in length of two neighbouring jacks at the spacing.
    #[getter]
    fn jack_difference(&self) -> Length {
        Length(self.row.jack_difference)
    }

    /// The figure to set against 12 in on the tongue for the side cut of a jack.
    #[getter]
    fn jack_side_cut(&self) -> Length {
        Length(self.row.jack_side_cut)
    }

    /// The figure to set against 12 in on the tongue for the side cut of a hip or valley.
    #[getter]
    fn hip_side_cut(&self) -> Length {
        Length(self.row.hip_side_cut)
    }

    /// Tangent of the backing angle, rise over hip length.
    #[getter]
    fn backing_ratio(&self) -> f64 {
        self.row.backing_ratio
    }

    fn __repr__(&self) -> String {
        format!("{}.compute()", self.of.__repr__())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, ())> {
        Ok((slf.get().of.into_pyobject(slf.py())?.getattr("compute")?, ()))
    }
}
