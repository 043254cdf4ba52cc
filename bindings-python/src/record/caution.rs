//! `seamwright.record.Caution`.

use super::Source;
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::record as core;
use std::collections::BTreeMap;

/// Something that the reader must know before metal is cut by the result.
///
/// >>> from seamwright.pitch import SlopeRule
/// >>> [caution.name for caution in SlopeRule.IBC_STANDING_SEAM.check("2 %").cautions]
/// ['below-minimum-slope', 'rounded-percentage']
#[pyclass(module = "seamwright.record", frozen, eq, hash, from_py_object)]
#[derive(Clone, PartialEq, Eq, Hash)]
pub(crate) struct Caution {
    /// The fixed number of its kind.
    #[pyo3(get)]
    number: u16,
    /// The short name of its kind.
    #[pyo3(get)]
    name: String,
    /// What it is about, as a path.
    #[pyo3(get)]
    subject: String,
    /// The sentence.
    #[pyo3(get)]
    message: String,
    /// Its arguments by name.
    #[pyo3(get)]
    arguments: BTreeMap<String, String>,
    /// Where the rule behind it comes from.
    #[pyo3(get)]
    source: Source,
    text: String,
}

impl From<&core::Caution> for Caution {
    fn from(c: &core::Caution) -> Self {
        Caution {
            number: c.code().number,
            name: c.code().name.to_owned(),
            subject: c.subject().to_owned(),
            message: c.message(),
            arguments: c.arguments().iter().map(|(name, value)| (name.to_string(), value.clone())).collect(),
            source: Source(c.source().clone()),
            text: c.to_string(),
        }
    }
}

#[pymethods]
impl Caution {
    #[new]
    fn new(number: u16, name: String, subject: String, message: String, arguments: BTreeMap<String, String>, source: Source, text: String) -> Self {
        Caution { number, name, subject, message, arguments, source, text }
    }

    fn __str__(&self) -> &str {
        &self.text
    }

    fn __repr__(&self) -> String {
        format!("<Caution: {}>", self.text)
    }

    #[allow(clippy::type_complexity, reason = "the constructor's arguments in their order")]
    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (u16, String, String, String, BTreeMap<String, String>, Source, String)) {
        let c = slf.get().clone();
        (slf.get_type(), (c.number, c.name, c.subject, c.message, c.arguments, c.source, c.text))
    }
}
