//! What a pipe's flashing is made of.

use super::draft::{FastenerRow, keep_under, refuse_short};
use super::least::LeastRule;
use crate::error::{Error, Faults};
use crate::units::Length;

/// Where a panel is fixed, seen from a pipe.
///
/// ```
/// use seamwright::junction::FixedLine;
/// assert_ne!(FixedLine::Above, FixedLine::Below);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum FixedLine {
    /// Up the slope from it.
    Above,
    /// Down the slope from it.
    Below,
}

/// The outline of a pipe's base.
///
/// ```
/// use seamwright::junction::PipeShape;
/// assert_ne!(PipeShape::Round, PipeShape::Rectangular);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PipeShape {
    /// Round.
    Round,
    /// With sides along the seams and across them.
    Rectangular,
}

impl PipeShape {
    /// In words, as lists and sheets say it.
    pub(crate) const fn word(self) -> &'static str {
        match self {
            PipeShape::Round => "round",
            PipeShape::Rectangular => "rectangular",
        }
    }
}

/// What the upper edge of a base does.
///
/// ```
/// use seamwright::junction::UpperEdge;
/// assert_ne!(UpperEdge::OnPan, UpperEdge::UnderLap);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum UpperEdge {
    /// It lies on the pan, against the water.
    OnPan,
    /// It goes under the panel above, at an end lap.
    UnderLap,
}

/// The base of a pipe's boot or collar.
///
/// ```
/// use seamwright::junction::{FastenerRow, PipeBase, PipeShape};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let screws = FastenerRow { spacing: Length::parse("1 1/2\"")?, source: Source::CommonPractice };
/// let (tape_width, tape_lap, screws_from_edge) = (Length::parse("7/8\"")?, Length::inches(1), Length::parse("1/2\"")?);
/// let base = PipeBase { shape: PipeShape::Round, seal: Length::inches(2), tape_width, tape_lap, screws, screws_from_edge };
/// assert!(base.tape_width < base.seal);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PipeBase {
    /// Its outline.
    pub shape: PipeShape,
    /// From the hole's edge to its own, all round.
    pub seal: Length,
    /// Width of the tape under it, its middle on the line of the screws.
    pub tape_width: Length,
    /// How far the tape's ends lap.
    pub tape_lap: Length,
    /// Its screws, into the pan alone.
    pub screws: FastenerRow,
    /// From its edge to them.
    pub screws_from_edge: Length,
}

impl PipeBase {
    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "screws", self.screws.check());
        faults.keep(self.seal.positive("seal"));
        faults.keep(self.tape_width.positive("tape_width"));
        faults.keep(self.tape_lap.not_negative("tape_lap"));
        faults.keep(self.screws_from_edge.not_negative("screws_from_edge"));
        core::mem::take(&mut faults).check()?;
        let half = self.tape_width.station(1, 2)?;
        let (out, into) = (half - self.screws_from_edge, self.screws_from_edge + half - self.seal);
        refuse_short(&mut faults, "tape_width", "the tape reaches past the base's edge", out, self.tape_width, "narrower tape, or screws farther in")?;
        refuse_short(&mut faults, "seal", "the tape reaches into the hole", into, self.seal, "a wider seal, or narrower tape")?;
        faults.check()
    }
}

/// How far the next pipe or curb is, and must be.
///
/// ```
/// use seamwright::junction::{PipeSpacing, LeastRule};
/// use seamwright::units::Length;
/// let next = PipeSpacing { distance: Length::feet(2), rule: LeastRule::NAVFAC_APART };
/// assert!(next.distance > next.rule.least);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PipeSpacing {
    /// Between them.
    pub distance: Length,
    /// How far it must be.
    pub rule: LeastRule,
}
