//! The rules of AISI S100 for screws in sheet, by edition: where each stands and how it was seen.

use super::level::{ResistanceFactor, SafetyFactor};
use crate::record::{Seen, Source};
use crate::units::Length;

/// An edition of AISI S100, North American Specification for the Design of Cold-Formed Steel Structural Members.
///
/// ```
/// use seamwright::fastener::ScrewEdition;
/// assert_eq!(ScrewEdition::ALL.len(), 4);
/// assert_eq!(ScrewEdition::Y2016.name(), "2016");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum ScrewEdition {
    /// 2007, section E4.
    Y2007,
    /// 2012, section E4.
    Y2012,
    /// 2016 as first issued, section J4.
    Y2016,
    /// 2016 with its Supplement 3 of 2022: pull-out by thickness, other factors, another pull-over rule.
    Y2016S3,
}

/// The limit states whose factors differ.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Group {
    Sheet,
    PullOut,
    PullOver,
    Screw,
}

const BASE_SCREW: &str = "AISI S100";

impl ScrewEdition {
    /// Every edition.
    pub const ALL: &'static [ScrewEdition] = &[ScrewEdition::Y2007, ScrewEdition::Y2012, ScrewEdition::Y2016, ScrewEdition::Y2016S3];

    /// The edition in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            ScrewEdition::Y2007 => "2007",
            ScrewEdition::Y2012 => "2012",
            ScrewEdition::Y2016 => "2016",
            ScrewEdition::Y2016S3 => "2016 with Supplement 3 (2022)",
        }
    }

    fn source(self, old: &'static str, new: &'static str, seen: Seen) -> Source {
        let place = match self {
            ScrewEdition::Y2007 | ScrewEdition::Y2012 => old,
            ScrewEdition::Y2016 | ScrewEdition::Y2016S3 => new,
        };
        Source::published(BASE_SCREW, self.name(), place, seen)
    }

    /// Tilting and bearing.
    pub(super) fn shear_source(self) -> Source {
        self.source("E4.3.1", "J4.3.1", Seen::Text)
    }

    pub(super) fn pull_out_source(self) -> Source {
        self.source("E4, pull-out", "J4, pull-out", if self == ScrewEdition::Y2016S3 { Seen::Secondary } else { Seen::Text })
    }

    pub(super) fn pull_over_source(self) -> Source {
        self.source("E4, pull-over", "J4, pull-over", if self == ScrewEdition::Y2016S3 { Seen::Secondary } else { Seen::Text })
    }

    pub(super) fn washer_source(self) -> Source {
        self.source("E4, pull-over, effective diameter", "J4, pull-over, effective diameter", Seen::Secondary)
    }

    pub(super) fn diameter_source(self) -> Source {
        self.source("E4, screw diameter", "J4, screw diameter", Seen::Memory)
    }

    /// The greatest effective pull-over diameter that counts, from memory.
    pub(super) fn greatest_head(self) -> (Length, Source) {
        let limit = match self {
            ScrewEdition::Y2007 | ScrewEdition::Y2012 => Length::inches_64(32),
            ScrewEdition::Y2016 | ScrewEdition::Y2016S3 => Length::inches_64(48),
        };
        (limit, self.source("E4, limit of effective diameter", "J4, limit of effective diameter", Seen::Memory))
    }

    /// Factor of the pull-over rule: 1.5 in the classic form, 0.90 in the newer one.
    pub(super) fn pull_over_factor(self) -> f64 {
        if self == ScrewEdition::Y2016S3 { 0.90 } else { 1.5 }
    }

    /// Safety and resistance (LRFD) factor of a limit state.
    pub(super) fn factors(self, group: Group) -> (SafetyFactor, ResistanceFactor) {
        let (omega, phi, seen) = match (self, group) {
            (ScrewEdition::Y2016S3, Group::Sheet | Group::PullOut) => (2.80, 0.55, Seen::Secondary),
            (ScrewEdition::Y2016S3, Group::PullOver) => (2.90, 0.55, Seen::Secondary),
            (ScrewEdition::Y2016S3, Group::Screw) => (3.00, 0.50, Seen::Secondary),
            _ => (3.00, 0.50, Seen::Text),
        };
        let source = self.source("E4, factors", "J4, factors", seen);
        (SafetyFactor { factor: omega, source: source.clone() }, ResistanceFactor { factor: phi, source })
    }
}
