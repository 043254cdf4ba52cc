//! Stations along a run: where clips, screws, rivets and cleats go.
//!
//! A run starts at 0 and ends at its length. [`Spacing`] places stations at equal or fixed spacing, [`SupportSpacing`] places
//! them on the supports that exist. Each station is rounded once from its own exact ratio, so that nothing adds up along a
//! long run. What the crew works from is [`Stations::crew`]: start, spacing, count, end distance.
//!
//! A spacing is geometry here. What spacing the load allows is another question; see the engineer's schedule.

pub mod cautions;
mod run;
mod stations;
mod supports;

#[cfg(test)]
mod run_tests;
#[cfg(test)]
mod supports_tests;

pub use run::{LastStation, MAX_STATIONS, Spacing, SpacingRule};
pub use stations::{CrewLine, Stations};
pub use supports::{SupportSpacing, SupportStations, SupportUse};
