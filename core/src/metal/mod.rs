//! The metals: what they weigh, how they grow with heat, how their thickness is named, how sharply they bend, which may meet.
//!
//! | item | holds |
//! |---|---|
//! | [`Alloy`] | a metal by name, its densities and coefficients of expansion, each with its source |
//! | [`Gauge`], [`GaugeSystem`] | a gauge in its named system |
//! | [`Coating`] | zinc and 55 % aluminium-zinc coatings by designation |
//! | [`Sheet`], [`Thickness`] | alloy, thickness and coating; mass for each area |
//! | [`MinimumRadius`] | the least inside bend radius, or 'no published limit' |
//! | [`MetalPair`] | two metals that touch or drain on each other |
//! | [`MetalsTogether`] | every part of a roof that touches another, or that another's water reaches |

mod alloy;
pub mod cautions;
mod coating;
mod gauge;
mod pairs;
mod radius;
mod sheet;
mod together;

#[cfg(test)]
mod gauge_tests;
#[cfg(test)]
mod metal_tests;
#[cfg(test)]
mod together_tests;

pub use alloy::{Alloy, DensityFigure, ExpansionFigure};
pub use coating::{Coating, CoatingMetal};
pub use gauge::{Gauge, GaugeSystem};
pub use pairs::{MetalPair, PairVerdict, PairWay};
pub use radius::{Grain, MinimumRadius, RadiusLimit, Temper};
pub use sheet::{Sheet, Thickness};
pub use together::{MetalMeeting, MetalPart, MetalsTogether, PartsMeet};
