//! The profile of a trim: what is drawn before anything is unfolded.

use super::builder::ProfileBuilder;
use super::check;
use super::edge::Edge;
use super::leg::{Bend, Direction, Face, Leg};
use super::rule::BendRule;
use crate::error::Error;
use crate::units::Length;

/// The section of a trim: legs joined by bends between two edges.
///
/// It is walked from the start edge to the end edge; see [`Face`] and [`Direction`] for what is up. There is one bend between
/// every two legs; hems belong to the edges and are not among the bends.
///
/// ```
/// use seamwright::trim::{BendRule, Direction, Edge, Face, NeutralFactor, Profile};
/// use seamwright::units::{BendAngle, Length};
/// // An eave drip: deck flange, face and a hem folded back behind the face.
/// let drip = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(30))
///     .leg("deck flange", Length::inches(4))
///     .down(BendAngle::SQUARE)
///     .leg("face", Length::inches(3))
///     .end(Edge::closed_hem(Length::inches_64(32), Direction::Down))
///     .build()?;
/// let flat = drip.unfold(&BendRule::neutral_axis(NeutralFactor::new(0.4)?))?;
/// assert_eq!(flat.bends().len(), 2);
/// assert_eq!(flat.girth(), drip.girth(&BendRule::neutral_axis(NeutralFactor::new(0.4)?))?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Profile {
    /// Thickness of the sheet.
    pub thickness: Length,
    /// The edge where the walk starts.
    #[cfg_attr(feature = "serde", serde(default))]
    pub start_edge: Edge,
    /// The legs in order.
    pub legs: Vec<Leg>,
    /// The bends in order: one fewer than legs.
    #[cfg_attr(feature = "serde", serde(default))]
    pub bends: Vec<Bend>,
    /// The edge where the walk ends.
    #[cfg_attr(feature = "serde", serde(default))]
    pub end_edge: Edge,
    /// The painted face, or the face that is shown where the metal is bare.
    pub painted: Face,
}

impl Profile {
    /// Starts a profile in sheet of this thickness, leg by leg.
    pub fn builder(thickness: Length) -> ProfileBuilder {
        ProfileBuilder::new(thickness)
    }

    /// Whether a bend this way has the painted face on its inside, where a hem hides it and the nose of the tool meets it.
    ///
    /// ```
    /// use seamwright::trim::{Direction, Face, Profile};
    /// use seamwright::units::Length;
    /// let strip = Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(6)).build()?;
    /// assert!(strip.closes_on_paint(Direction::Up) && !strip.closes_on_paint(Direction::Down));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub fn closes_on_paint(&self, direction: Direction) -> bool {
        direction.inside() == self.painted
    }

    /// Checks everything that does not depend on a bend rule, and reports every fault.
    ///
    /// # Errors
    /// No legs, a count of bends that does not fit, lengths of zero or less, a leg end that its bend does not have, a leg swallowed by its bends'
    /// setbacks, a hem longer than the leg it lies on.
    pub fn validate(&self) -> Result<(), Error> {
        check::profile(self, None)
    }

    /// As [`Profile::validate`], and whether the rule covers every bend.
    ///
    /// # Errors
    /// As [`Profile::validate`], and each bend that is outside its rule's range.
    pub fn validate_with(&self, rule: &BendRule) -> Result<(), Error> {
        check::profile(self, Some(rule))
    }

    /// The piece turned end for end: the other edge comes first, each face stays the face it was and each bend the way it was on the brake.
    ///
    /// ```
    /// use seamwright::trim::{Face, Profile};
    /// use seamwright::units::{BendAngle, Length};
    /// let l = Profile::builder(Length::mils(24))
    ///     .painted(Face::Upper)
    ///     .inside_radius(Length::mils(24))
    ///     .leg("a", Length::inches(1))
    ///     .up(BendAngle::SQUARE)
    ///     .leg("b", Length::inches(2))
    ///     .build()?;
    /// assert_eq!(l.reversed().legs[0].length, Length::inches(2));
    /// assert_eq!(l.reversed().reversed(), l);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub fn reversed(&self) -> Profile {
        Profile {
            thickness: self.thickness,
            start_edge: self.end_edge.clone(),
            legs: self.legs.iter().rev().map(Leg::reversed).collect(),
            bends: self.bends.iter().rev().cloned().collect(),
            end_edge: self.start_edge.clone(),
            painted: self.painted,
        }
    }
}
