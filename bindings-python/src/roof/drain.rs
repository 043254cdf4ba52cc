//! `seamwright.roof.Drain`.

use super::Roof;
use crate::error::Raise;
use crate::parts::{Reduced, reduced};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use seamwright::error::{Error, ErrorKind};
use seamwright::roof as core_roof;
use seamwright::roof::Outfall;

/// Water of one plane that reaches one line.
#[pyclass(module = "seamwright.roof", frozen, eq, hash)]
pub(crate) struct Drain {
    pub(super) of: Py<Roof>,
    pub(super) number: usize,
    pub(super) drain: core_roof::Drain,
}

impl PartialEq for Drain {
    fn eq(&self, other: &Drain) -> bool {
        self.drain == other.drain
    }
}

impl Hash for Drain {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.drain.hash(state);
    }
}

#[pymethods]
impl Drain {
    /// The plane that drains, by number.
    #[getter]
    fn plane(&self) -> usize {
        self.drain.plane
    }

    /// The line that its water reaches, by number.
    #[getter]
    fn line(&self) -> usize {
        self.drain.line
    }

    /// Where the water goes from there: onto a ``plane``, into a ``valley``, ``off`` the roof, against a ``wall`` or a ``curb``, or ``unknown``.
    #[getter]
    fn to(&self) -> PyResult<&'static str> {
        Ok(match self.drain.to {
            Outfall::Plane(_) => "plane",
            Outfall::Valley => "valley",
            Outfall::Off => "off",
            Outfall::Wall => "wall",
            Outfall::Curb => "curb",
            Outfall::Unknown => "unknown",
            _ => return Err(Error::new(ErrorKind::Internal, "an outfall without a name")).raise(),
        })
    }

    /// The number of the plane that the water runs onto, if it does.
    #[getter]
    fn onto(&self) -> Option<usize> {
        match self.drain.to {
            Outfall::Plane(number) => Some(number),
            _ => None,
        }
    }

    fn __repr__(&self) -> PyResult<String> {
        Ok(format!("<Drain: plane {} at line {}, {}>", self.drain.plane, self.drain.line, self.to()?))
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py, Roof>> {
        reduced(slf.py(), &slf.get().of, "drains", slf.get().number)
    }
}
