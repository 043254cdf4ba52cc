//! Cutting required pieces from stock sticks, and splitting runs into lapped pieces.
//!
//! [`LapRun`] splits a run that is longer than a stick into pieces with laps. [`Cutting`] packs the pieces into sticks of one
//! or several stock lengths, with kerf, end loss and, where given, the cost of each; its [`CutPlan`] carries a lower bound
//! that no plan can beat, and says whether the plan is proven by meeting it.

mod bound;
pub mod cautions;
mod cutting;
mod input;
mod lap;
mod pack;
mod plan;

#[cfg(test)]
mod cutting_tests;
#[cfg(test)]
mod lap_tests;

pub use input::{Cutting, MAX_PIECES, Piece, StockLength};
pub use lap::{LapMode, LapPiece, LapRun, LappedRun};
pub use plan::{CutPlan, Measure, PieceCount, ScrapReport, StickPlan};
