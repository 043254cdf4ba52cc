//! Blanks: the shape that is cut from flat sheet, with its bend lines, notches, tabs and holes.

mod clip;
mod crossing;
mod end;
mod end_fold;
mod end_line;
mod measure;
mod notch;
mod plan;
mod relief;
mod shape;
mod tab;

#[cfg(test)]
mod blank_tests;

pub use end::{BlankEnd, EndCut, HolePlace, MitredEnd, Notch, NotchShape, PieceEnd, PlannedHole, Tab};
pub use end_fold::{EndFold, FoldEnds, FoldedEnd};
pub use plan::{BlankPlan, PlannedBlank};
pub use relief::{ReliefHabit, ReliefHole};
pub use shape::{BlankBend, BlankEdge, BlankFold, BlankHole, BlankLine, BlankSide, FlatBlank};
