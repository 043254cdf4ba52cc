//! Documents of the caller's that core reads and writes: JSON text, UTF-8 in bytes, or a dict of the same form.

use crate::by_name::Document;
use crate::error::{Raise, raised};
use crate::given::described;
#[cfg(feature = "stubs")]
use pyo3::PyTypeInfo;
use pyo3::exceptions::PyTypeError;
#[cfg(feature = "stubs")]
use pyo3::inspect::PyStaticExpr;
use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyDict, PyString};
use seamwright::error::{Error, ErrorKind};
use serde::Serialize;

/// An argument that is JSON: text, or bytes in UTF-8. It is not copied, so that a text that is far too long costs nothing.
pub(crate) enum Json<'py> {
    Text(Bound<'py, PyString>),
    Bytes(Bound<'py, PyBytes>),
}

impl Json<'_> {
    /// The bytes that core reads.
    pub(crate) fn bytes(&self) -> PyResult<&[u8]> {
        match self {
            Json::Bytes(bytes) => Ok(bytes.as_bytes()),
            Json::Text(text) => text
                .to_str()
                .map(str::as_bytes)
                .map_err(|_| raised(&Error::new(ErrorKind::Parse, "the text is not whole Unicode").accepts("text without lone surrogates"))),
        }
    }
}

impl<'py> FromPyObject<'_, 'py> for Json<'py> {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = PyStaticExpr::BinOp {
        left: &<PyString as PyTypeInfo>::TYPE_HINT,
        op: pyo3::inspect::PyStaticOperator::BitOr,
        right: &<PyBytes as PyTypeInfo>::TYPE_HINT,
    };

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if let Ok(text) = obj.cast::<PyString>() {
            Ok(Json::Text(text.to_owned()))
        } else if let Ok(bytes) = obj.cast::<PyBytes>() {
            Ok(Json::Bytes(bytes.to_owned()))
        } else {
            Err(PyTypeError::new_err(format!("JSON text or bytes are expected, not {}", described(&obj))))
        }
    }
}

/// The JSON of a dict, in which quantities may stand as themselves.
pub(crate) fn of_dict(mapping: &Bound<'_, PyDict>) -> PyResult<String> {
    mapping.extract::<Document>().map(|document| document.0)
}

/// A value of core as JSON text, with every quantity in its canonical form.
pub(crate) fn written<T: Serialize>(value: &T) -> PyResult<String> {
    serde_json::to_string(value).map_err(|e| raised(&Error::new(ErrorKind::Internal, "not to be written as JSON").value_of(e)))
}

/// JSON text of an object as a dict.
pub(crate) fn dict<'py>(py: Python<'py>, json: &str) -> PyResult<Bound<'py, PyDict>> {
    Ok(py.import("json")?.getattr("loads")?.call1((json,))?.cast_into::<PyDict>()?)
}

/// A value that was written by [`written`], for unpickling: without a limit of size, which guards against text from elsewhere.
pub(crate) fn restored<T: serde::de::DeserializeOwned>(text: &str) -> PyResult<T> {
    serde_json::from_str(text).map_err(|e| Error::new(ErrorKind::Format, "not what was pickled").value_of(e)).raise()
}
