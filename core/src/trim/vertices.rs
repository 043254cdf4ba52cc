//! A profile from a line of its outer, or of its inner, corners.

use super::chain::{ChainLeg, Line};
use super::edge::Edge;
use super::leg::{Face, LegEnd};
use super::point::Point;
use super::profile::Profile;
use crate::error::Error;
use crate::record::{Calculation, Off, Recorder};
use crate::units::Length;

/// To which corners of its bends a line is drawn.
///
/// ```
/// use seamwright::trim::{DrawnTo, LegEnd};
/// assert_eq!(DrawnTo::Inside.leg_end(), LegEnd::InnerCorner);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum DrawnTo {
    /// To where the outside faces of two legs meet: every length is an outside dimension.
    Outside,
    /// To where the inside faces meet: every length is an inside dimension.
    Inside,
}

impl DrawnTo {
    /// To what a leg is dimensioned at a bend.
    #[must_use]
    pub const fn leg_end(self) -> LegEnd {
        match self {
            DrawnTo::Outside => LegEnd::OuterCorner,
            DrawnTo::Inside => LegEnd::InnerCorner,
        }
    }
}

/// A profile said by the vertices of a drawing whose dimensions are all outside, or all inside, ones.
///
/// The distance of two vertices is the length of a leg between those corners, the turn at a vertex its bend. Where all bends turn the same way the line lies on one
/// face, as that of a [`Chain`](super::Chain) does; where they turn both ways it steps from face to face, and each length still counts along its leg. At a hem
/// the outermost vertex is the outside of the fold.
///
/// ```
/// use seamwright::trim::{ChainLeg, DrawnTo, Edge, Face, Point, Profile, Vertices};
/// use seamwright::units::{BendAngle, Length};
/// let at = |x, y| Point { x: Length::inches(x), y: Length::inches(y) };
/// let drawn = Vertices {
///     thickness: Length::mils(24),
///     inside_radius: Length::mils(30),
///     drawn_to: DrawnTo::Outside,
///     start: at(0, 0),
///     legs: vec![ChainLeg { name: "flange".into(), to: at(4, 0) }, ChainLeg { name: "face".into(), to: at(4, -3) }],
///     start_edge: Edge::Raw,
///     end_edge: Edge::Raw,
///     painted: Face::Upper,
/// };
/// let said = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(30))
///     .leg("flange", Length::inches(4))
///     .down(BendAngle::SQUARE)
///     .leg("face", Length::inches(3))
///     .build()?;
/// assert_eq!(drawn.profile()?, said);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Vertices {
    /// Thickness of the sheet.
    pub thickness: Length,
    /// Radius of the inside face at every bend.
    pub inside_radius: Length,
    /// The corners that the line is drawn to.
    pub drawn_to: DrawnTo,
    /// The first vertex.
    pub start: Point,
    /// The legs in order.
    pub legs: Vec<ChainLeg>,
    /// The edge where the walk starts.
    #[cfg_attr(feature = "serde", serde(default))]
    pub start_edge: Edge,
    /// The edge where the walk ends.
    #[cfg_attr(feature = "serde", serde(default))]
    pub end_edge: Edge,
    /// The painted face, or the face that is shown.
    pub painted: Face,
}

impl Vertices {
    /// The profile whose corners these are.
    ///
    /// # Errors
    /// As [`Chain::profile`](super::Chain::profile).
    pub fn profile(&self) -> Result<Profile, Error> {
        self.run(&mut Off)
    }
}

impl Calculation for Vertices {
    type Out = Profile;

    fn title(&self) -> String {
        format!("profile by {} vertices of its {} corners", self.legs.len() + 1, if self.drawn_to == DrawnTo::Outside { "outer" } else { "inner" })
    }

    /// # Errors
    /// As [`Vertices::profile`].
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Profile, Error> {
        let line = Line { start: self.start, legs: &self.legs, inside_radius: self.inside_radius };
        line.profile(self.thickness, (&self.start_edge, &self.end_edge), self.painted, |_| self.drawn_to.leg_end(), r)
    }
}
