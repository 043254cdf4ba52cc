//! Strips of many polygons over arrays of NumPy.

use super::input::GivenStart;
use crate::arrays::{In, Made};
use crate::error::Raise;
use crate::given::{Given, Text};
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::layout as core_layout;
use seamwright::units::{LengthArray, LengthUnit};

/// The columns of `StripArrays`: numbers of polygon, strip and run; left, right, foot, head, clear and area.
type Columns = ((Made<u32>, Made<u32>, Made<u32>), (Made<f64>, Made<f64>, Made<f64>, Made<f64>, Made<f64>, Made<f64>));

/// The strips of polygons in ragged arrays, all in this unit. The lock on the interpreter is released meanwhile.
#[pyfunction]
pub(crate) fn _strips(
    py: Python<'_>,
    coordinates: In<'_, f64>,
    rings: In<'_, usize>,
    polygons: In<'_, usize>,
    coverage: Given<Length>,
    start: GivenStart,
    unit: Text,
) -> PyResult<Columns> {
    let unit = LengthUnit::parse(&unit.0).raise_at("unit")?;
    let coverage = coverage.at("coverage")?;
    let given =
        core_layout::PolygonArrays { coordinates: LengthArray { values: coordinates.values()?, unit }, rings: rings.values()?, polygons: polygons.values()? };
    let found = py.detach(|| core_layout::strips(given, coverage, start.core(), unit)).raise()?;
    let numbers = (Made(found.polygon), Made(found.strip), Made(found.run));
    Ok((numbers, (Made(found.left), Made(found.right), Made(found.foot), Made(found.head), Made(found.clear), Made(found.area))))
}
