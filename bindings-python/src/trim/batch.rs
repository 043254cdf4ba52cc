//! Girths over arrays of NumPy.

use super::{BendRule, Profile};
use crate::arrays::{In, Out};
use crate::error::Raise;
use crate::given::Text;
use pyo3::prelude::*;
use seamwright::trim as core_trim;
use seamwright::units::{LengthArray, LengthUnit};

/// Fills `girths` with those of the elements, all in this unit. The lock on the interpreter is released meanwhile.
#[pyfunction]
pub(crate) fn _girths_into(
    py: Python<'_>,
    profile: &Bound<'_, Profile>,
    rule: BendRule,
    thickness: In<'_, f64>,
    inside_radius: In<'_, f64>,
    mut girths: Out<'_>,
    unit: Text,
) -> PyResult<()> {
    let unit = LengthUnit::parse(&unit.0).raise_at("unit")?;
    let profile = &profile.get().0;
    let thickness = LengthArray { values: thickness.values()?, unit };
    let inside_radius = LengthArray { values: inside_radius.values()?, unit };
    let out = girths.values()?;
    py.detach(|| core_trim::girths_into(profile, &rule.0, thickness, inside_radius, out, unit)).raise()
}
