//! Crickets: two small planes behind a hole, which lead water round it.

mod figures;
mod placing;

pub use figures::{Cricket, CricketFigures, CricketShape};
pub(super) use placing::place;
pub use placing::{CricketInput, PlacedCricket};
