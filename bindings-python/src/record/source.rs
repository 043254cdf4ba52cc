//! `seamwright.record.Source`.

use crate::error::Raise;
use crate::given::Text;
use pyo3::prelude::*;
use pyo3::types::PyTuple;
use seamwright::error::{Error, ErrorKind};
use seamwright::record as core;

/// Where a rule, a figure or a choice comes from: a published document, common practice, the engineer or the user.
///
/// >>> from seamwright.record import Source
/// >>> str(Source.engineer("of record", "calculation 12"))
/// 'engineer of record, calculation 12'
#[pyclass(module = "seamwright.record", frozen, eq, hash, from_py_object)]
#[derive(Clone, PartialEq, Eq, Hash)]
pub(crate) struct Source(pub(crate) core::Source);

const SEEN: [(core::Seen, &str); 4] =
    [(core::Seen::Text, "text"), (core::Seen::Secondary, "secondary"), (core::Seen::Memory, "memory"), (core::Seen::Derived, "derived")];

#[pymethods]
impl Source {
    /// A habit of the trade without a published source.
    #[classattr]
    const COMMON_PRACTICE: Source = Source(core::Source::CommonPractice);

    /// A published place; ``seen`` says how it was seen: text, secondary, memory or derived.
    #[staticmethod]
    fn published(document: Text, edition: Text, place: Text, seen: Text) -> PyResult<Source> {
        let (seen, _) = SEEN
            .into_iter()
            .find(|(_, name)| *name == seen.0)
            .ok_or_else(|| Error::new(ErrorKind::Unknown, "not a way to have seen a document").value_of(&seen.0).accepts("text, secondary, memory, derived"))
            .raise_at("seen")?;
        let citation = core::Citation { document: document.0.into(), edition: edition.0.into(), place: place.0.into(), seen };
        Ok(Source(core::Source::Published(citation)))
    }

    /// The engineer's own figure.
    #[staticmethod]
    fn engineer(name: Text, document: Text) -> Source {
        Source(core::Source::Engineer { name: name.0.into(), document: document.0.into() })
    }

    /// The user's own figure, with what is said of it.
    #[staticmethod]
    fn user(note: Text) -> Source {
        Source(core::Source::User { note: note.0.into() })
    }

    /// The document of a published source or of the engineer.
    #[getter]
    fn document(&self) -> Option<&str> {
        match &self.0 {
            core::Source::Published(c) => Some(&c.document),
            core::Source::Engineer { document, .. } => Some(document),
            core::Source::CommonPractice | core::Source::User { .. } => None,
        }
    }

    /// The edition of a published source; empty where the copy did not show one.
    #[getter]
    fn edition(&self) -> Option<&str> {
        self.citation().map(|c| &*c.edition)
    }

    /// Clause, table or page of a published source.
    #[getter]
    fn place(&self) -> Option<&str> {
        self.citation().map(|c| &*c.place)
    }

    /// How a published source was seen: text, secondary, memory or derived.
    #[getter]
    fn seen(&self) -> Option<&'static str> {
        self.citation().and_then(|c| SEEN.into_iter().find(|(seen, _)| *seen == c.seen)).map(|(_, name)| name)
    }

    /// Whether the figure was recalled and not read: to be confirmed before metal is cut by it.
    #[getter]
    fn rests_on_memory(&self) -> bool {
        self.0.rests_on_memory()
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("<Source: {}>", self.0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let class = slf.get_type();
        let (maker, arguments) = match &slf.get().0 {
            core::Source::Published(c) => ("published", vec![&*c.document, &*c.edition, &*c.place, slf.get().seen().unwrap_or_default()]),
            core::Source::Engineer { name, document } => ("engineer", vec![&**name, &**document]),
            core::Source::User { note } => ("user", vec![&**note]),
            core::Source::CommonPractice => ("_common_practice", Vec::new()),
        };
        Ok((class.getattr(maker)?, PyTuple::new(slf.py(), arguments)?))
    }

    /// For unpickling.
    #[staticmethod]
    fn _common_practice() -> Source {
        Self::COMMON_PRACTICE
    }
}

impl Source {
    fn citation(&self) -> Option<&core::Citation> {
        match &self.0 {
            core::Source::Published(c) => Some(c),
            _ => None,
        }
    }
}
