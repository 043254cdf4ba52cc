//! The handbook rule: measured constants for three groups of metals.

use super::size::BendMm;
use crate::record::{Seen, Source, Step};
use crate::units::Length;

pub(super) static SOURCE: Source = Source::published("Machinery's Handbook", "28th", "lengths of right-angle bends, scaled with the angle", Seen::Secondary);

/// Group of metals of the handbook rule `BA = (pi/2 R + c T) A/90`.
///
/// The constant c belongs to a square bend; both terms scale with the angle. Source: Machinery's Handbook, 28th edition, read in secondary places.
///
/// ```
/// use seamwright::trim::HandbookMetal;
/// assert_eq!(HandbookMetal::SoftSteel.constant_factor(), 0.64);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum HandbookMetal {
    /// Soft brass and soft copper: 0.55.
    SoftCopper,
    /// Soft steel, aluminium, half-hard copper and half-hard brass: 0.64.
    SoftSteel,
    /// Cold-rolled steel, spring steel, bronze and hard copper: 0.71.
    ColdRolledSteel,
}

impl HandbookMetal {
    /// Every group.
    pub const ALL: &'static [HandbookMetal] = &[HandbookMetal::SoftCopper, HandbookMetal::SoftSteel, HandbookMetal::ColdRolledSteel];

    /// The constant c, in thicknesses per square bend.
    #[must_use]
    pub const fn constant_factor(self) -> f64 {
        match self {
            HandbookMetal::SoftCopper => 0.55,
            HandbookMetal::SoftSteel => 0.64,
            HandbookMetal::ColdRolledSteel => 0.71,
        }
    }

    /// The metals of the group in words.
    #[must_use]
    pub const fn metals(self) -> &'static str {
        match self {
            HandbookMetal::SoftCopper => "soft brass, soft copper",
            HandbookMetal::SoftSteel => "soft steel, aluminium, half-hard copper, half-hard brass",
            HandbookMetal::ColdRolledSteel => "cold-rolled steel, spring steel, bronze, hard copper",
        }
    }
}

#[inline]
pub(super) fn allowance_mm(metal: HandbookMetal, bend: &BendMm) -> f64 {
    (core::f64::consts::FRAC_PI_2 * bend.r + metal.constant_factor() * bend.t) * (bend.degrees() / 90.0)
}

pub(super) fn step(metal: HandbookMetal, bend: &BendMm, allowance: Length) -> Step {
    Step::new("bend allowance BA")
        .formula("(pi/2 R + c T) A/90")
        .with("A", bend.size.angle)
        .with("R", bend.size.inside_radius)
        .with("c", metal.constant_factor())
        .with("T", bend.size.thickness)
        .gives(allowance)
        .source(SOURCE.clone())
}
