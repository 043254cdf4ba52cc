//! `seamwright.pitch.SlopeRule` and the check it makes.

use super::Pitch;
use crate::given::{Given, Text};
use crate::record::{Caution, Source};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::pitch as core_pitch;
use seamwright::pitch::SlopeRule as Core;

/// The least pitch that a document allows for a covering.
///
/// >>> from seamwright.pitch import SlopeRule
/// >>> SlopeRule.IBC_STANDING_SEAM.check("1/4:12").passes
/// True
#[pyclass(module = "seamwright.pitch", frozen, eq, hash)]
#[derive(Clone, PartialEq, Eq, Hash)]
pub(crate) struct SlopeRule(Core);

#[pymethods]
impl SlopeRule {
    /// Lapped, nonsoldered seams without lap sealant.
    #[classattr]
    const IBC_LAPPED_UNSEALED: SlopeRule = SlopeRule(Core::IBC_LAPPED_UNSEALED);
    /// Lapped, nonsoldered seams with applied lap sealant.
    #[classattr]
    const IBC_LAPPED_SEALED: SlopeRule = SlopeRule(Core::IBC_LAPPED_SEALED);
    /// Standing seams.
    #[classattr]
    const IBC_STANDING_SEAM: SlopeRule = SlopeRule(Core::IBC_STANDING_SEAM);
    /// Metal roof shingles.
    #[classattr]
    const IBC_METAL_SHINGLES: SlopeRule = SlopeRule(Core::IBC_METAL_SHINGLES);
    /// The residential code of Florida, without lap sealant.
    #[classattr]
    const FLORIDA_LAPPED_UNSEALED: SlopeRule = SlopeRule(Core::FLORIDA_LAPPED_UNSEALED);
    /// The residential code of Florida, with applied lap sealant.
    #[classattr]
    const FLORIDA_LAPPED_SEALED: SlopeRule = SlopeRule(Core::FLORIDA_LAPPED_SEALED);
    /// The residential code of Florida, standing seams.
    #[classattr]
    const FLORIDA_STANDING_SEAM: SlopeRule = SlopeRule(Core::FLORIDA_STANDING_SEAM);
    /// The residential code, without lap sealant.
    #[classattr]
    const IRC_LAPPED_UNSEALED: SlopeRule = SlopeRule(Core::IRC_LAPPED_UNSEALED);
    /// The residential code, with applied lap sealant.
    #[classattr]
    const IRC_LAPPED_SEALED: SlopeRule = SlopeRule(Core::IRC_LAPPED_SEALED);
    /// The residential code, standing seams.
    #[classattr]
    const IRC_STANDING_SEAM: SlopeRule = SlopeRule(Core::IRC_STANDING_SEAM);
    /// The residential code, metal roof shingles.
    #[classattr]
    const IRC_METAL_SHINGLES: SlopeRule = SlopeRule(Core::IRC_METAL_SHINGLES);

    #[new]
    #[pyo3(signature = (covering, limit, source, printed_percentage=None))]
    fn new(covering: Text, limit: Given<Pitch>, source: Source, printed_percentage: Option<u8>) -> PyResult<SlopeRule> {
        Ok(SlopeRule(Core { covering: covering.0.into(), limit: limit.at("limit")?, printed_percentage, source: source.0 }))
    }

    /// A rule from another document: the panel's own approval, the engineer, a local code.
    #[staticmethod]
    fn given(covering: Text, limit: Given<Pitch>, source: Source) -> PyResult<SlopeRule> {
        Ok(SlopeRule(Core::given(covering.0, limit.at("limit")?, source.0)))
    }

    /// Every rule that the library holds.
    #[staticmethod]
    fn all() -> Vec<SlopeRule> {
        Core::ALL.iter().cloned().map(SlopeRule).collect()
    }

    /// The covering that the rule speaks of.
    #[getter]
    fn covering(&self) -> &str {
        &self.0.covering
    }

    /// The least pitch.
    #[getter]
    fn limit(&self) -> Pitch {
        Pitch(self.0.limit)
    }

    /// The whole percentage that the document prints beside it, if it prints one; it is never compared.
    #[getter]
    fn printed_percentage(&self) -> Option<u8> {
        self.0.printed_percentage
    }

    /// Where the rule stands.
    #[getter]
    fn source(&self) -> Source {
        Source(self.0.source.clone())
    }

    /// Compares a pitch with the rule: ratios exactly, degrees through the tangent.
    fn check(&self, pitch: Given<Pitch>) -> PyResult<SlopeCheck> {
        Ok(SlopeCheck(self.0.check(&pitch.at("pitch")?)))
    }

    fn __repr__(&self) -> String {
        format!("<SlopeRule: {} for {}, {}>", self.0.limit, self.0.covering, self.0.source)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (String, Pitch, Source, Option<u8>)) {
        let rule = slf.get();
        (slf.get_type(), (rule.covering().to_owned(), rule.limit(), rule.source(), rule.printed_percentage()))
    }
}

/// The answer to a slope check, with the rule that gave it. It pickles as its rule and pitch, which check again.
#[pyclass(module = "seamwright.pitch", frozen, eq, hash)]
#[derive(Clone, PartialEq)]
pub(crate) struct SlopeCheck(core_pitch::SlopeCheck);

impl Hash for SlopeCheck {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (self.0.rule(), self.0.pitch()).hash(state);
    }
}

#[pymethods]
impl SlopeCheck {
    /// Whether the pitch is the limit or steeper.
    #[getter]
    fn passes(&self) -> bool {
        self.0.passes()
    }

    /// The pitch that was checked.
    #[getter]
    fn pitch(&self) -> Pitch {
        Pitch(self.0.pitch())
    }

    /// The rule.
    #[getter]
    fn rule(&self) -> SlopeRule {
        SlopeRule(self.0.rule().clone())
    }

    /// The document and clause of the rule.
    #[getter]
    fn source(&self) -> Source {
        Source(self.0.source().clone())
    }

    /// What to know of the answer.
    #[getter]
    fn cautions(&self) -> Vec<Caution> {
        self.0.cautions().iter().map(Caution::from).collect()
    }

    fn __repr__(&self) -> String {
        let verdict = if self.0.passes() { "passes" } else { "fails" };
        format!("<SlopeCheck: {} {verdict} {}>", self.0.pitch(), self.rule().__repr__())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (Pitch,))> {
        Ok((slf.get().rule().into_pyobject(slf.py())?.getattr("check")?, (slf.get().pitch(),)))
    }
}
