//! The panels of a plane as the shop forms them and the crew opens them: pieces with marks in order, pairs from one blank, bundles, coil and waste.

mod bundles;
mod choices;
mod coil_totals;
mod grouping;
mod laps;
mod list;
mod listed;
mod pairs;
mod waste;

#[cfg(test)]
mod coil_tests;
#[cfg(test)]
mod list_law_tests;
#[cfg(test)]
mod list_tests;

pub use choices::{BundleLimits, EndLaps, GreatestLength, LapArrangement, ListChoices, MarkOrder, PairChoice};
pub use coil_totals::{CoilTotal, CoilTotals, CoilUse};
pub use list::PanelList;
pub use listed::{BlankPair, Bundle, CutEdge, ListGroup, ListedPiece, ListedPlane, Waste};
