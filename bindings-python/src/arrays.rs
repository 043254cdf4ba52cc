//! Arrays of NumPy. Shapes and types of arrays are the package's concern; here they are flat, of one type, their numbers one behind the other.

use numpy::{Element, PyArray1, PyReadonlyArray1, PyReadwriteArray1};
use pyo3::exceptions::PyTypeError;
#[cfg(feature = "stubs")]
use pyo3::inspect::PyStaticExpr;
use pyo3::prelude::*;

/// A type of numbers in arrays, and how a stub writes an array of it.
pub(crate) trait Number: Element {
    #[cfg(feature = "stubs")]
    const ARRAY: PyStaticExpr;
}

macro_rules! number {
    ($type:ty, $name:literal) => {
        impl Number for $type {
            #[cfg(feature = "stubs")]
            const ARRAY: PyStaticExpr =
                pyo3::type_hint_subscript!(pyo3::type_hint_identifier!("numpy.typing", "NDArray"), pyo3::type_hint_identifier!("numpy", $name));
        }
    };
}
number!(f64, "float64");
number!(u32, "uint32");
number!(usize, "uintp");

/// An array that is read.
pub(crate) struct In<'py, T: Number>(PyReadonlyArray1<'py, T>);

/// An array that is written.
pub(crate) struct Out<'py>(PyReadwriteArray1<'py, f64>);

/// An array that is made.
pub(crate) struct Made<T: Number>(pub(crate) Vec<T>);

impl<T: Number> In<'_, T> {
    /// The numbers.
    pub(crate) fn values(&self) -> PyResult<&[T]> {
        self.0.as_slice().map_err(gaps)
    }
}

impl Out<'_> {
    /// The numbers.
    pub(crate) fn values(&mut self) -> PyResult<&mut [f64]> {
        self.0.as_slice_mut().map_err(gaps)
    }
}

impl<'py, T: Number> FromPyObject<'_, 'py> for In<'py, T> {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = T::ARRAY;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        Ok(In(obj.extract()?))
    }
}

impl<'py> FromPyObject<'_, 'py> for Out<'py> {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = <f64 as Number>::ARRAY;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        Ok(Out(obj.extract()?))
    }
}

impl<'py, T: Number> IntoPyObject<'py> for Made<T> {
    type Target = PyArray1<T>;
    type Output = Bound<'py, PyArray1<T>>;
    type Error = core::convert::Infallible;

    #[cfg(feature = "stubs")]
    const OUTPUT_TYPE: PyStaticExpr = T::ARRAY;

    fn into_pyobject(self, py: Python<'py>) -> Result<Self::Output, Self::Error> {
        Ok(PyArray1::from_vec(py, self.0))
    }
}

fn gaps<E>(_: E) -> PyErr {
    PyTypeError::new_err("the array's numbers must stand one behind the other")
}
