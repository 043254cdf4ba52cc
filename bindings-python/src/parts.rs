//! Pickling of a part as its place in the result that it was read from: the result is then written once, however many parts are.

use pyo3::prelude::*;

/// What a part reduces to: the function that finds it again, and its owner, the owner's list and its number there.
pub(crate) type Reduced<'py, Owner> = (Bound<'py, PyAny>, (Bound<'py, Owner>, &'static str, usize));

/// The reduction of a part in one of its owner's lists.
pub(crate) fn reduced<'py, Owner>(py: Python<'py>, owner: &Py<Owner>, list: &'static str, number: usize) -> PyResult<Reduced<'py, Owner>> {
    Ok((py.import("seamwright._parts")?.getattr("part")?, (owner.bind(py).clone(), list, number)))
}

/// What an attribute of its owner reduces to.
pub(crate) type ReducedAttribute<'py, Owner> = (Bound<'py, PyAny>, (Bound<'py, Owner>, &'static str));

/// The reduction of an attribute.
pub(crate) fn reduced_attribute<'py, Owner>(py: Python<'py>, owner: &Py<Owner>, name: &'static str) -> PyResult<ReducedAttribute<'py, Owner>> {
    Ok((py.import("builtins")?.getattr("getattr")?, (owner.bind(py).clone(), name)))
}
