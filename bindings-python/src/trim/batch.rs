//! Girths over arrays of NumPy. Shapes and types of arrays are the package's concern; here they are flat and of floats.

use super::{BendRule, Profile};
use crate::error::Raise;
use crate::given::Text;
use numpy::{PyReadonlyArray1, PyReadwriteArray1};
use pyo3::exceptions::PyTypeError;
#[cfg(feature = "stubs")]
use pyo3::inspect::PyStaticExpr;
use pyo3::prelude::*;
use seamwright::trim as core_trim;
use seamwright::units::{LengthArray, LengthUnit};

/// How the stub writes an array of floats.
#[cfg(feature = "stubs")]
const ARRAY: PyStaticExpr = pyo3::type_hint_subscript!(pyo3::type_hint_identifier!("numpy.typing", "NDArray"), pyo3::type_hint_identifier!("numpy", "float64"));

/// An array that is read.
pub(crate) struct In<'py>(PyReadonlyArray1<'py, f64>);

/// An array that is written.
pub(crate) struct Out<'py>(PyReadwriteArray1<'py, f64>);

impl<'py> FromPyObject<'_, 'py> for In<'py> {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = ARRAY;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        Ok(In(obj.extract()?))
    }
}

impl<'py> FromPyObject<'_, 'py> for Out<'py> {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = ARRAY;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        Ok(Out(obj.extract()?))
    }
}

fn gaps<E>(_: E) -> PyErr {
    PyTypeError::new_err("the array's numbers must stand one behind the other")
}

/// Fills `girths` with those of the elements, all in this unit. The lock on the interpreter is released meanwhile.
#[pyfunction]
pub(crate) fn _girths_into(
    py: Python<'_>,
    profile: &Bound<'_, Profile>,
    rule: BendRule,
    thickness: In<'_>,
    inside_radius: In<'_>,
    mut girths: Out<'_>,
    unit: Text,
) -> PyResult<()> {
    let unit = LengthUnit::parse(&unit.0).raise_at("unit")?;
    let profile = &profile.get().0;
    let thickness = LengthArray { values: thickness.0.as_slice().map_err(gaps)?, unit };
    let inside_radius = LengthArray { values: inside_radius.0.as_slice().map_err(gaps)?, unit };
    let out = girths.0.as_slice_mut().map_err(gaps)?;
    py.detach(|| core_trim::girths_into(profile, &rule.0, thickness, inside_radius, out, unit)).raise()
}
