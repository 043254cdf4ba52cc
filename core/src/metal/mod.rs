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

mod alloy;
pub mod cautions;
mod coating;
mod gauge;
mod pairs;
mod radius;
mod sheet;

#[cfg(test)]
mod gauge_tests;
#[cfg(test)]
mod metal_tests;

pub use alloy::{Alloy, DensityFigure, ExpansionFigure};
pub use coating::{Coating, CoatingMetal};
pub use gauge::{Gauge, GaugeSystem};
pub use pairs::{MetalPair, PairVerdict, PairWay};
pub use radius::{Grain, MinimumRadius, RadiusLimit, Temper};
pub use sheet::{Sheet, Thickness};
