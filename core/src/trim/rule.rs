//! The bend rules as one type.

use super::deductions::DeductionTable;
use super::din::DinOr;
use super::factors::NeutralFactor;
use super::handbook::HandbookMetal;
use super::neutral_axis::NeutralAxis;
use super::size::{BendMm, BendSize, to_length};
use super::{aviation, deductions, din, din_linear, handbook, neutral_axis, sharp_corner};
use crate::error::Error;
use crate::record::{Source, Step};
use crate::units::Length;
use core::fmt;

/// How much sheet a bend takes.
///
/// Every rule is brought to one quantity: the *allowance* BA, the flat length between the two tangent lines of the bend. The *deduction* BD is
/// what two legs measured to the outer corner are together longer than their flat: `BD = 2 (R + T) tan(A/2) - BA`.
///
/// ```
/// use seamwright::trim::{BendRule, BendSize, NeutralFactor};
/// use seamwright::units::{BendAngle, Length};
/// let rule = BendRule::neutral_axis(NeutralFactor::new(0.5)?);
/// let size = BendSize { thickness: Length::mils(24), inside_radius: Length::mils(60), angle: BendAngle::SQUARE };
/// // pi/2 (0.060 + 0.012) = 0.1131 in.
/// let allowance = rule.allowance(size)?;
/// assert!(allowance > Length::parse("0.11305 in")? && allowance < Length::parse("0.11315 in")?);
/// assert_eq!(rule.to_string(), "neutral axis, factor 0.5");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum BendRule {
    /// `BA = A (R + K T)` with a neutral-axis factor.
    NeutralAxis(NeutralAxis),
    /// DIN 6935, three ranges; refuses hems and bends sharper than r/s of about 0.05.
    #[cfg_attr(feature = "serde", serde(rename = "din-6935"))]
    Din6935,
    /// DIN 6935, and a rule of the caller's choice for hems and for bends sharper than it covers.
    #[cfg_attr(feature = "serde", serde(rename = "din-6935-or"))]
    Din6935Or(DinOr),
    /// The older linear rule of DIN 6935, `v = 0.43 r + 1.48 s`: square bends only.
    #[cfg_attr(feature = "serde", serde(rename = "din-6935-linear"))]
    Din6935Linear,
    /// The handbook constants for three groups of metals.
    Handbook(HandbookMetal),
    /// `BA = (0.01743 R + 0.0078 T)` per degree, 1 to 180 degrees.
    Aviation,
    /// A table of measured deductions.
    Deductions(DeductionTable),
    /// Nominal legs are added and nothing is deducted: too wide by the deductions, as many shops choose in thin sheet.
    SharpCorner,
}

impl BendRule {
    /// The neutral-axis rule with a factor that the caller gives.
    #[must_use]
    pub const fn neutral_axis(factor: NeutralFactor) -> BendRule {
        BendRule::NeutralAxis(NeutralAxis { factor, source: Source::user() })
    }

    /// The name of the rule, without its figures.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            BendRule::NeutralAxis(_) => "neutral axis",
            BendRule::Din6935 => "DIN 6935",
            BendRule::Din6935Or(_) => "DIN 6935 or another",
            BendRule::Din6935Linear => "DIN 6935 linear",
            BendRule::Handbook(_) => "handbook",
            BendRule::Aviation => "aviation",
            BendRule::Deductions(_) => "deduction table",
            BendRule::SharpCorner => "sharp-corner sum",
        }
    }

    /// Where the rule, or the figure in it, comes from.
    #[must_use]
    pub fn source(&self) -> &Source {
        match self {
            BendRule::NeutralAxis(axis) => &axis.source,
            BendRule::Din6935 | BendRule::Din6935Or(_) => &din::SOURCE,
            BendRule::Din6935Linear => &din_linear::SOURCE,
            BendRule::Handbook(_) => &handbook::SOURCE,
            BendRule::Aviation => &aviation::SOURCE,
            BendRule::Deductions(table) => table.source(),
            BendRule::SharpCorner => &sharp_corner::SOURCE,
        }
    }

    /// The bend allowance BA: flat length between the tangent lines.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange) for a bend outside the rule's range, with the rules that would take it.
    pub fn allowance(&self, size: BendSize) -> Result<Length, Error> {
        size.check()?;
        to_length(self.allowance_mm(&BendMm::of(size, size.thickness.mm())?)?)
    }

    /// The bend deduction BD, for legs measured to the outer corner.
    ///
    /// # Errors
    /// As [`BendRule::allowance`], and at 180 degrees and more, where there is no corner.
    pub fn deduction(&self, size: BendSize) -> Result<Length, Error> {
        size.check()?;
        let bend = BendMm::of(size, size.thickness.mm())?;
        to_length(bend.two_setbacks()? - self.allowance_mm(&bend)?)
    }

    #[inline]
    pub(super) fn allowance_mm(&self, bend: &BendMm) -> Result<f64, Error> {
        match self {
            BendRule::NeutralAxis(axis) => Ok(neutral_axis::allowance_mm(axis, bend)),
            BendRule::Din6935 => din::allowance_mm(bend),
            BendRule::Din6935Or(rule) => match rule.other_for(bend) {
                Some(other) => other.allowance_mm(bend),
                None => din::allowance_mm(bend),
            },
            BendRule::Din6935Linear => din_linear::allowance_mm(bend),
            BendRule::Handbook(metal) => Ok(handbook::allowance_mm(*metal, bend)),
            BendRule::Aviation => aviation::allowance_mm(bend),
            BendRule::Deductions(table) => deductions::allowance_mm(table, bend),
            BendRule::SharpCorner => sharp_corner::allowance_mm(bend),
        }
    }

    pub(super) fn step(&self, bend: &BendMm, allowance: Length) -> Step {
        match self {
            BendRule::NeutralAxis(axis) => neutral_axis::step(axis, bend, allowance),
            BendRule::Din6935 => din::step(bend, allowance),
            BendRule::Din6935Or(rule) => match rule.other_for(bend) {
                Some(other) => {
                    let mut step = other.step(bend, allowance);
                    step.what = format!("{}, outside DIN 6935, by the {other}", step.what).into();
                    step
                }
                None => din::step(bend, allowance),
            },
            BendRule::Din6935Linear => din_linear::step(bend, allowance),
            BendRule::Handbook(metal) => handbook::step(*metal, bend, allowance),
            BendRule::Aviation => aviation::step(bend, allowance),
            BendRule::Deductions(table) => deductions::step(table, bend, allowance),
            BendRule::SharpCorner => sharp_corner::step(bend, allowance),
        }
    }
}

impl fmt::Display for BendRule {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())?;
        match self {
            BendRule::NeutralAxis(axis) => write!(f, ", factor {}", axis.factor),
            BendRule::Handbook(metal) => write!(f, ", {}", metal.metals()),
            BendRule::Din6935Or(rule) => write!(f, ", {}", rule.otherwise()),
            _ => Ok(()),
        }
    }
}
