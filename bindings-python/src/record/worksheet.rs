//! `seamwright.record.Worksheet` and `Step`.

use super::Source;
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::record as core_record;

/// One step of a worksheet, as a foreman would check it by hand.
#[pyclass(module = "seamwright.record", frozen, eq, hash, from_py_object)]
#[derive(Clone, PartialEq)]
pub(crate) struct Step(core_record::Step);

impl Hash for Step {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (&self.0.what, &self.0.formula, &self.0.with, &self.0.result, &self.0.source).hash(state);
    }
}

#[pymethods]
impl Step {
    #[new]
    fn new(what: String, formula: String, inputs: Vec<(String, String)>, result: String, source: Option<Source>) -> Step {
        let with = inputs.into_iter().map(|(symbol, value)| (symbol.into(), value)).collect();
        Step(core_record::Step { what: what.into(), formula: formula.into(), with, result, source: source.map(|s| s.0) })
    }

    /// What is computed.
    #[getter]
    fn what(&self) -> &str {
        &self.0.what
    }

    /// The formula in words and symbols.
    #[getter]
    fn formula(&self) -> &str {
        &self.0.formula
    }

    /// The values put in, each with its symbol. (In Rust this is ``with``, which is a word of Python's own.)
    #[getter]
    fn inputs(&self) -> Vec<(String, String)> {
        self.0.with.iter().map(|(symbol, value)| (symbol.to_string(), value.clone())).collect()
    }

    /// The result.
    #[getter]
    fn result(&self) -> &str {
        &self.0.result
    }

    /// The source of the rule, where it is more than arithmetic.
    #[getter]
    fn source(&self) -> Option<Source> {
        self.0.source.clone().map(Source)
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("<Step: {}>", self.0)
    }

    #[allow(clippy::type_complexity, reason = "the constructor's arguments in their order")]
    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (String, String, Vec<(String, String)>, String, Option<Source>)) {
        let s = slf.get();
        (slf.get_type(), (s.what().to_owned(), s.formula().to_owned(), s.inputs(), s.result().to_owned(), s.source()))
    }
}

/// A step, or a part with steps of its own.
#[derive(FromPyObject, IntoPyObject)]
pub(crate) enum Entry {
    Step(Step),
    Part(Worksheet),
}

/// The recorded working of a calculation.
///
/// >>> from seamwright.pitch import Corner
/// >>> geometry, sheet = Corner("12:12", "12:12", "90 deg").explain()
/// >>> print(sheet.steps()[0])
/// plan angle D1 from eave 1 to the line = atan(sin W / (m1/m2 + cos W)) with W = 90 deg, m1 = 1, m2 = 1 = 45 deg (geometry [derived])
#[pyclass(module = "seamwright.record", frozen, eq, hash, from_py_object)]
#[derive(Clone, PartialEq)]
pub(crate) struct Worksheet(pub(crate) core_record::Worksheet);

impl Hash for Worksheet {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.0.title.hash(state);
        self.0.entries.len().hash(state);
    }
}

#[pymethods]
impl Worksheet {
    #[new]
    fn new(title: String, entries: Vec<Entry>) -> Worksheet {
        let entries = entries
            .into_iter()
            .map(|e| match e {
                Entry::Step(s) => core_record::Entry::Step(s.0),
                Entry::Part(p) => core_record::Entry::Part(p.0),
            })
            .collect();
        Worksheet(core_record::Worksheet { title, entries })
    }

    /// What the sheet, or this part of it, works out.
    #[getter]
    fn title(&self) -> &str {
        &self.0.title
    }

    /// Steps and parts in the order of the work.
    #[getter]
    fn entries(&self) -> Vec<Entry> {
        self.0
            .entries
            .iter()
            .map(|e| match e {
                core_record::Entry::Step(s) => Entry::Step(Step(s.clone())),
                core_record::Entry::Part(p) => Entry::Part(Worksheet(p.clone())),
            })
            .collect()
    }

    /// Every step of this sheet and of its parts, in order.
    fn steps(&self) -> Vec<Step> {
        self.0.steps().into_iter().cloned().map(Step).collect()
    }

    fn __repr__(&self) -> String {
        format!("<Worksheet: {}, {} entries>", self.0.title, self.0.entries.len())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (String, Vec<Entry>)) {
        let sheet = slf.get();
        (slf.get_type(), (sheet.0.title.clone(), sheet.entries()))
    }
}
