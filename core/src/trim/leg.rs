//! Legs, bends and faces: the words in which a profile is said.

use super::factors::no_corner;
use super::rule::BendRule;
use super::size::{BendMm, to_length};
use crate::error::{Error, ErrorKind};
use crate::units::{BendAngle, Length};
use std::borrow::Cow;

/// A face of the sheet, seen in the section from the start edge towards the end edge.
///
/// With the first leg drawn from left to right, the upper face is the one above it: always the one on the walker's left hand.
///
/// ```
/// use seamwright::trim::Face;
/// assert_eq!(Face::Upper.opposite(), Face::Lower);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Face {
    /// On the left hand of one who walks from the start edge to the end edge.
    Upper,
    /// On the right hand.
    Lower,
}

impl Face {
    /// The other face.
    #[must_use]
    pub const fn opposite(self) -> Face {
        match self {
            Face::Upper => Face::Lower,
            Face::Lower => Face::Upper,
        }
    }
}

/// Which way a bend turns, walking from the start edge to the end edge.
///
/// Up turns to the left (counter-clockwise as drawn), so the upper face is its inside; down turns to the right, so the lower face is.
/// With the sheet on the brake, upper face up, an up bend is folded upwards wherever it lies.
///
/// ```
/// use seamwright::trim::{Direction, Face};
/// assert_eq!(Direction::Up.inside(), Face::Upper);
/// assert_eq!(Direction::Down.outside(), Face::Upper);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Direction {
    /// To the left: closes on the upper face.
    Up,
    /// To the right: closes on the lower face.
    Down,
}

impl Direction {
    /// The face on the inside of the bend.
    #[must_use]
    pub const fn inside(self) -> Face {
        match self {
            Direction::Up => Face::Upper,
            Direction::Down => Face::Lower,
        }
    }

    /// The face on the outside of the bend.
    #[must_use]
    pub const fn outside(self) -> Face {
        self.inside().opposite()
    }

    /// The bend the other way.
    #[must_use]
    pub const fn opposite(self) -> Direction {
        match self {
            Direction::Up => Direction::Down,
            Direction::Down => Direction::Up,
        }
    }

    /// 1 for up, -1 for down: the sign of the turn, counter-clockwise positive.
    pub(super) const fn sign(self) -> f64 {
        match self {
            Direction::Up => 1.0,
            Direction::Down => -1.0,
        }
    }
}

/// To which point of the bend, or of the sheet, one end of a leg is dimensioned.
///
/// With R the inside radius, T the thickness and A the angle from flat, the point lies beyond the tangent line by
///
/// | end | by | for |
/// |---|---|---|
/// | `OuterCorner` | (R + T) tan(A/2) | less than 180 degrees |
/// | `InnerCorner` | R tan(A/2) | less than 180 degrees |
/// | `OuterTangent` | R + T | 90 degrees and more |
/// | `Tangent` | 0 | any |
/// | `SheetEdge` | - | the outermost ends of a profile without a hem there |
///
/// ```
/// use seamwright::trim::{BendSize, LegEnd};
/// use seamwright::units::{BendAngle, Length};
/// let size = BendSize { thickness: Length::mils(40), inside_radius: Length::mils(60), angle: BendAngle::FOLDED };
/// assert_eq!(LegEnd::OuterTangent.beyond_tangent(size)?, Length::mils(100));
/// assert!(LegEnd::OuterCorner.beyond_tangent(size).is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum LegEnd {
    /// The raw edge of the sheet: only where the profile starts or ends without a hem.
    SheetEdge,
    /// Where the outside faces of the two legs would meet.
    OuterCorner,
    /// Where the inside faces of the two legs would meet.
    InnerCorner,
    /// The outermost line of the bend, square to the leg: the usual measure of a leg with a hem or an acute bend.
    OuterTangent,
    /// The tangent line, where the flat part ends.
    Tangent,
}

impl LegEnd {
    /// How far beyond the tangent line of this bend the end lies.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] where the bend has no such point, [`ErrorKind::Conflict`] for the sheet's edge.
    pub fn beyond_tangent(self, size: super::BendSize) -> Result<Length, Error> {
        size.check()?;
        self.beyond(&BendMm::of(size, size.thickness.mm())?)
    }

    #[inline(always)]
    pub(super) fn beyond(self, bend: &BendMm) -> Result<Length, Error> {
        if self == LegEnd::OuterCorner && bend.degrees() < 180.0 { Ok(bend.outside) } else { self.beyond_other(bend) }
    }

    /// What is rarer than an outer corner, out of the way of the loop over legs.
    #[inline(never)]
    fn beyond_other(self, bend: &BendMm) -> Result<Length, Error> {
        match self {
            LegEnd::OuterTangent if bend.degrees() >= 90.0 => (bend.size.inside_radius + bend.size.thickness).length(),
            _ => self.beyond_mm(bend).and_then(to_length),
        }
    }

    /// The same in the working unit, unrounded: radius and thickness each times a number that the angle gives.
    pub(super) fn beyond_mm(self, bend: &BendMm) -> Result<f64, Error> {
        let degrees = bend.degrees();
        match self {
            LegEnd::OuterCorner | LegEnd::InnerCorner if degrees >= 180.0 => Err(no_corner(bend.size.angle).at("")),
            LegEnd::OuterCorner => Ok((bend.r + bend.t) * bend.half_tangent),
            LegEnd::InnerCorner => Ok(bend.r * bend.half_tangent),
            LegEnd::OuterTangent if degrees >= 90.0 => Ok(bend.r + bend.t),
            LegEnd::OuterTangent => Err(Error::new(ErrorKind::OutOfRange, "a bend of less than 90 degrees has no outer tangent square to the leg")
                .value_of(bend.size.angle)
                .accepts("90 deg or more from flat")
                .cured_by("measure the leg to the outer corner")),
            LegEnd::Tangent => Ok(0.0),
            LegEnd::SheetEdge => Err(Error::new(ErrorKind::Conflict, "the leg ends at a bend, not at the sheet's edge")
                .value_of("sheet-edge")
                .accepts("outer-corner, inner-corner, outer-tangent, tangent")),
        }
    }
}

/// A straight leg of a profile.
///
/// ```
/// use seamwright::trim::{Leg, LegEnd};
/// use seamwright::units::Length;
/// let flange = Leg { name: "deck flange".into(), length: Length::inches(4), start: LegEnd::SheetEdge, end: LegEnd::OuterCorner };
/// assert_eq!(flange.reversed().start, LegEnd::OuterCorner);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "ProfileLeg"))]
pub struct Leg {
    /// What the leg is called on drawings and worksheets.
    pub name: Cow<'static, str>,
    /// Length between the points that its two ends name.
    pub length: Length,
    /// To what the start is dimensioned.
    pub start: LegEnd,
    /// To what the end is dimensioned.
    pub end: LegEnd,
}

impl Leg {
    /// The same leg walked the other way.
    #[must_use]
    pub fn reversed(&self) -> Leg {
        Leg { name: self.name.clone(), length: self.length, start: self.end, end: self.start }
    }
}

/// A bend between two legs.
///
/// ```
/// use seamwright::trim::{Bend, Direction};
/// use seamwright::units::{BendAngle, Length};
/// let drip = Bend { angle: BendAngle::SQUARE, direction: Direction::Down, inside_radius: Length::mils(30), rule: None };
/// assert_eq!(drip.direction, Direction::Down);
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Bend {
    /// How far, from flat.
    pub angle: BendAngle,
    /// Which way.
    pub direction: Direction,
    /// Radius of the inside face.
    pub inside_radius: Length,
    /// A rule for this bend in place of the profile's.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rule: Option<Box<BendRule>>,
}
