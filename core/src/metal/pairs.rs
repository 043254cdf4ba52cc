//! Which metals may touch, and which may drain on which. Common practice throughout: no published table is behind these rows.

use super::{Alloy, cautions};
use crate::record::{Caution, Source};

/// How two metals meet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PairWay {
    /// They touch where it is wet.
    Contact,
    /// Water runs from the first over the second.
    RunOff,
}

/// What common practice says of two metals.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PairVerdict {
    /// They go together.
    Good,
    /// They must be kept apart.
    KeepApart,
    /// Nothing is recorded: it is not guessed.
    NotJudged,
}

/// Two metals and the way that they meet. By run-off, water leaves `upper` for `lower`; by contact the order does not matter.
///
/// ```
/// use seamwright::metal::{Alloy, MetalPair, PairVerdict, PairWay};
/// let gutter = MetalPair { upper: Alloy::Copper, lower: Alloy::AluminiumZincCoatedSteel, way: PairWay::RunOff };
/// assert_eq!(gutter.verdict(), PairVerdict::KeepApart);
/// assert!(gutter.caution("eave").is_some());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct MetalPair {
    /// The metal above, or one of the two.
    pub upper: Alloy,
    /// The metal below, or the other.
    pub lower: Alloy,
    /// How they meet.
    pub way: PairWay,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Family {
    Copper,
    Stainless,
    BareSteel,
    /// Aluminium, zinc, and steel under their coatings.
    Bright,
}

fn family(alloy: Alloy) -> Family {
    match alloy {
        Alloy::Copper => Family::Copper,
        Alloy::Stainless304 | Alloy::Stainless316 => Family::Stainless,
        Alloy::CarbonSteel => Family::BareSteel,
        _ => Family::Bright,
    }
}

impl MetalPair {
    /// What common practice says. Copper is kept from aluminium, zinc, bare and coated steel, both by touch and above them; below them it
    /// may lie, for their water does it no harm. Like metals go together, and the light metals and coatings with each other.
    /// Stainless is judged only with itself.
    #[must_use]
    pub fn verdict(&self) -> PairVerdict {
        if self.upper == self.lower {
            return PairVerdict::Good;
        }
        match (family(self.upper), family(self.lower), self.way) {
            (Family::Stainless, Family::Stainless, _) | (Family::Bright, Family::Bright, _) => PairVerdict::Good,
            (Family::Copper, Family::Bright | Family::BareSteel, _) => PairVerdict::KeepApart,
            (Family::Bright | Family::BareSteel, Family::Copper, PairWay::Contact) => PairVerdict::KeepApart,
            (Family::Bright, Family::Copper, PairWay::RunOff) => PairVerdict::Good,
            _ => PairVerdict::NotJudged,
        }
    }

    /// Where the verdict comes from.
    #[must_use]
    pub const fn source(&self) -> Source {
        Source::CommonPractice
    }

    /// The caution that belongs to the verdict, on this subject; `None` where the metals go together.
    #[must_use]
    pub fn caution(&self, subject: &str) -> Option<Caution> {
        let code = match self.verdict() {
            PairVerdict::Good => return None,
            PairVerdict::KeepApart => cautions::UNLIKE_METALS,
            PairVerdict::NotJudged => cautions::UNJUDGED_METALS,
        };
        let way = match self.way {
            PairWay::Contact => "contact",
            PairWay::RunOff => "run-off",
        };
        Some(Caution::new(code, subject, Source::CommonPractice).arg("upper", self.upper).arg("lower", self.lower).arg("way", way))
    }
}
