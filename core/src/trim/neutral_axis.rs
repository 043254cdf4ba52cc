//! The neutral-axis rule: one line through the bend keeps its length.

use super::factors::NeutralFactor;
use super::size::BendMm;
use crate::record::{Source, Step};
use crate::units::Length;

/// A neutral-axis factor with where it comes from. `BA = A (R + K T)`, A in radians; source of the formula: geometry.
///
/// ```
/// use seamwright::record::Source;
/// use seamwright::trim::{BendRule, BendSize, NeutralAxis, NeutralFactor};
/// use seamwright::units::{BendAngle, Length};
/// let axis = NeutralAxis { factor: NeutralFactor::MIDDLE, source: Source::User { note: "trial bend of 3 May".into() } };
/// let size = BendSize { thickness: Length::mils(24), inside_radius: Length::mils(24), angle: BendAngle::SQUARE };
/// // 2 (R + T) - pi/2 (R + T/2) with R = T: 0.0395 in.
/// let deduction = BendRule::NeutralAxis(axis).deduction(size)?;
/// assert!(deduction > Length::parse("0.03945 in")? && deduction < Length::parse("0.03955 in")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NeutralAxis {
    /// The factor K.
    pub factor: NeutralFactor,
    /// Where the factor comes from; the caller, unless stated.
    #[cfg_attr(feature = "serde", serde(default = "Source::user"))]
    pub source: Source,
}

#[inline]
pub(super) fn allowance_mm(axis: &NeutralAxis, bend: &BendMm) -> f64 {
    bend.radians() * (bend.r + axis.factor.value() * bend.t)
}

pub(super) fn step(axis: &NeutralAxis, bend: &BendMm, allowance: Length) -> Step {
    Step::new("bend allowance BA")
        .formula("pi/180 A (R + K T)")
        .with("A", bend.size.angle)
        .with("R", bend.size.inside_radius)
        .with("K", axis.factor)
        .with("T", bend.size.thickness)
        .gives(allowance)
        .source(axis.source.clone())
}
