//! Tapered trims: one profile at one end, another at the other, and the true development between them.

mod develop;
mod ends;
mod near_cut;
mod piece;
mod run;

#[cfg(test)]
mod taper_tests;

pub use ends::HeldLine;
pub(crate) use near_cut::NearCut;
pub use piece::{Taper, TaperBend, TaperLeg, TaperedTrim};
pub(crate) use run::profile_along;
pub use run::{TaperedPiece, TaperedPieces, TaperedRun};
