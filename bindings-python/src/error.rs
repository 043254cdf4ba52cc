//! Core's one error type as the package's exceptions, which are defined in Python so that they pickle.

use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::error::{Error, ErrorKind};

mod imported {
    pyo3::import_exception!(seamwright._errors, SeamwrightError);
    pyo3::import_exception!(seamwright._errors, InputError);
}

/// A refusal by core as an exception: the caller's input is at fault unless the kind says otherwise.
pub(crate) fn raised(error: &Error) -> PyErr {
    let value = error.value().map(str::to_owned);
    // Core points in bytes, Python indexes in characters.
    let span = error.span().map(|(start, end)| {
        let characters = |byte: usize| error.value().and_then(|v| v.get(..byte)).map_or(byte, |s| s.chars().count());
        (characters(start), characters(end))
    });
    let others: Vec<PyErr> = error.others().iter().map(raised).collect();
    let arguments = (
        error.to_string(),
        error.kind().name(),
        error.kind().code(),
        error.message().to_owned(),
        error.path().to_owned(),
        value,
        error.allowed().map(str::to_owned),
        span,
        error.cure().map(str::to_owned),
        others,
    );
    match error.kind() {
        ErrorKind::Internal | ErrorKind::Cancelled => PyErr::new::<imported::SeamwrightError, _>(arguments),
        _ => PyErr::new::<imported::InputError, _>(arguments),
    }
}

/// Turns core's results into Python's.
pub(crate) trait Raise<T> {
    /// The value, or the refusal as an exception.
    fn raise(self) -> PyResult<T>;

    /// The value, or the refusal as an exception that names this argument.
    fn raise_at(self, path: &str) -> PyResult<T>;
}

impl<T> Raise<T> for Result<T, Error> {
    fn raise(self) -> PyResult<T> {
        self.map_err(|e| raised(&e))
    }

    fn raise_at(self, path: &str) -> PyResult<T> {
        self.map_err(|e| raised(&e.under(path)))
    }
}

/// The class in which a panic of this extension arrives in Python. The package makes it a `SeamwrightError`.
#[pyfunction]
pub(crate) fn _panic_class(py: Python<'_>) -> Bound<'_, PyType> {
    py.get_type::<pyo3::panic::PanicException>()
}

/// Every kind of fault: its fixed number and its name.
#[pyfunction]
pub(crate) fn _error_kinds() -> Vec<(i32, &'static str)> {
    ErrorKind::ALL.iter().map(|k| (k.code(), k.name())).collect()
}

/// Raises a fault of the kind with this number, to test what arrives in Python.
#[pyfunction]
pub(crate) fn _raise_kind(code: i32) -> PyResult<()> {
    let kind = ErrorKind::from_code(code).ok_or_else(|| PyTypeError::new_err("not the number of a kind of fault"))?;
    let second = Error::new(kind, "a further fault").at("further");
    let mut faults = seamwright::error::Faults::default();
    faults.add(Error::new(kind, "a fault raised on purpose").at("field").value_of("5\u{2033},").pointing(4, 5).accepts("nothing").cured_by("not asking"));
    faults.add(second);
    faults.check().raise()
}
