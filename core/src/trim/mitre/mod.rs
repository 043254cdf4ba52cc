//! Mitres: where two runs of a trim meet in one plane, and the line of that plane on each flat.

mod corner;
mod cut;
mod half;
mod joint;
mod matching;
mod section;
mod unlike;

#[cfg(test)]
mod mitre_tests;

pub use corner::{MitreCorner, RunWay, Way};
pub use half::{LegCut, MitreHalf};
pub use joint::{Mitre, MitredCorner, SecondHalf};
pub use matching::{MatchedSection, MatchingSection};
pub use section::SheetSurface;
