//! Sealant: tape over the panel's surface, beads by volume, and joints that move.
//!
//! [`TapeLine`] develops tape over a panel's cross-section along a line that the seams meet at any angle, and counts whole rolls.
//! [`BeadOrder`] counts whole tubes from a bead's section and length. [`JointDepth`] and [`JointWidth`] size a joint by published rules,
//! which differ, so the caller names the rule.

mod bead;
pub mod cautions;
mod joint;
mod tape;

#[cfg(test)]
mod bead_tests;
#[cfg(test)]
mod joint_tests;
#[cfg(test)]
mod tape_tests;

pub use bead::{BeadNeed, BeadOrder, BeadSection};
pub use joint::{DepthRule, JointDepth, JointWidth};
pub use tape::{SurfacePiece, TapeLine, TapeNeed};
