//! Cutting required pieces from stock sticks and coil, and splitting runs into lapped pieces.
//!
//! [`LapRun`] splits a run that is longer than a stick into pieces with laps. [`Cutting`] packs the pieces into sticks of one
//! or several stock lengths, with kerf, end loss and, where given, the cost of each; its [`CutPlan`] carries a lower bound
//! that no plan can beat, and says whether the plan is proven by meeting it. [`Slitting`] does the same across the width of a coil: blanks of given girths
//! and lengths, and what drops off.

mod bound;
pub mod cautions;
mod cutting;
mod input;
mod lap;
mod many;
mod pack;
mod plan;
mod slitting;

#[cfg(test)]
mod cutting_tests;
#[cfg(test)]
mod lap_tests;
#[cfg(test)]
mod slitting_tests;

pub use input::{Cutting, MAX_PIECES, Piece, StockLength};
pub use lap::{LapMode, LapPiece, LapRun, LappedRun};
pub use plan::{CutPlan, Measure, PieceCount, ScrapReport, StickPlan};
pub use slitting::{Across, Blank, DropPlan, MAX_BLANKS, SlitPlan, SlitScrap, Slitting};
