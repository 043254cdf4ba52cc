//! The two edges of a profile: raw, or hemmed.

use super::leg::Direction;
use super::rule::BendRule;
use crate::error::{Error, ErrorKind, Faults};
use crate::units::{BendAngle, Length};

/// How an edge of the profile is finished.
///
/// A hem is a bend of 180 degrees and a return. Its width is measured from the outside of the fold to the sheet's edge, and the
/// leg that it lies on is measured to the outside of the fold ([`LegEnd::OuterTangent`](super::LegEnd::OuterTangent)) or to the
/// tangent line. A hem folded up lies on the upper face, at either edge.
///
/// ```
/// use seamwright::trim::{Direction, Edge};
/// use seamwright::units::Length;
/// let stiff = Edge::closed_hem(Length::parse("1/2\"")?, Direction::Down);
/// let hook = Edge::open_hem(Length::parse("1/2\"")?, Length::parse("5/32\"")?, Direction::Down);
/// assert_ne!(stiff, hook);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Edge {
    /// As cut.
    #[default]
    Raw,
    /// Folded flat on itself: inside radius 0.
    ClosedHem {
        /// From the outside of the fold to the sheet's edge.
        width: Length,
        /// The face that it lies on: up is the upper.
        direction: Direction,
        /// A bend rule for the fold in place of the profile's.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        rule: Option<Box<BendRule>>,
    },
    /// Folded back with a gap, to hook a cleat: inside radius half the gap.
    OpenHem {
        /// From the outside of the fold to the sheet's edge.
        width: Length,
        /// Clear between the two layers.
        gap: Length,
        /// The face that it lies on: up is the upper.
        direction: Direction,
        /// A bend rule for the fold in place of the profile's.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        rule: Option<Box<BendRule>>,
    },
}

impl Edge {
    /// A closed hem under the profile's own bend rule.
    #[must_use]
    pub const fn closed_hem(width: Length, direction: Direction) -> Edge {
        Edge::ClosedHem { width, direction, rule: None }
    }

    /// An open hem under the profile's own bend rule.
    #[must_use]
    pub const fn open_hem(width: Length, gap: Length, direction: Direction) -> Edge {
        Edge::OpenHem { width, gap, direction, rule: None }
    }

    /// The same edge with a bend rule of its own; a raw edge stays as it is.
    #[must_use]
    pub fn with_rule(self, own: BendRule) -> Edge {
        match self {
            Edge::Raw => Edge::Raw,
            Edge::ClosedHem { width, direction, .. } => Edge::ClosedHem { width, direction, rule: Some(Box::new(own)) },
            Edge::OpenHem { width, gap, direction, .. } => Edge::OpenHem { width, gap, direction, rule: Some(Box::new(own)) },
        }
    }

    /// Whether it is as cut.
    #[must_use]
    pub const fn is_raw(&self) -> bool {
        matches!(self, Edge::Raw)
    }

    /// Whether it is an open hem without a gap, which the fold alone would not show.
    #[inline]
    pub(super) fn lacks_gap(&self) -> bool {
        matches!(self, Edge::OpenHem { gap, .. } if !gap.is_positive())
    }

    /// The return and the bend that the edge stands for. Half a gap of an odd number of picometres loses half a picometre.
    #[inline]
    pub(super) fn fold(&self) -> Option<Fold<'_>> {
        match self {
            Edge::Raw => None,
            Edge::ClosedHem { width, direction, rule } => {
                Some(Fold { width: *width, angle: BendAngle::FOLDED, inside_radius: Length::ZERO, direction: *direction, rule: rule.as_deref() })
            }
            Edge::OpenHem { width, gap, direction, rule } => Some(Fold {
                width: *width,
                angle: BendAngle::FOLDED,
                inside_radius: Length::from_pm(gap.pm() / 2),
                direction: *direction,
                rule: rule.as_deref(),
            }),
        }
    }

    /// Every fault of the edge's own figures.
    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        match self {
            Edge::Raw => {}
            Edge::ClosedHem { width, .. } => {
                faults.keep(width.positive("width"));
            }
            Edge::OpenHem { width, gap, .. } => {
                faults.keep(width.positive("width"));
                if self.lacks_gap() {
                    faults.add(
                        Error::new(ErrorKind::OutOfRange, "an open hem needs a gap").at("gap").value_of(gap).accepts("more than 0 mm").cured_by("a closed hem"),
                    );
                }
            }
        }
        faults.check()
    }
}

/// What an edge adds to the walk: one return leg and one bend.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fold<'a> {
    pub(super) width: Length,
    pub(super) angle: BendAngle,
    pub(super) inside_radius: Length,
    pub(super) direction: Direction,
    pub(super) rule: Option<&'a BendRule>,
}
