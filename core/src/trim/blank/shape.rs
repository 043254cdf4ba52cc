//! The blank as plain data.

use super::{clip, crossing, measure};
use crate::error::Error;
use crate::num;
use crate::record::Caution;
use crate::trim::{Arc, Bounds, Direction, Part, Point};
use crate::units::{Area, AreaUnit, BendAngle, Length, Mass, MassUnit, SurfaceMass, SurfaceMassUnit};
use core::fmt;

/// What a stretch of a blank's outline is.
///
/// ```
/// use seamwright::trim::BlankSide;
/// assert_ne!(BlankSide::NearEnd, BlankSide::FarEnd);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum BlankSide {
    /// The edge where the profile's walk starts.
    StartEdge,
    /// The edge where it ends.
    EndEdge,
    /// The end where the piece begins along its run.
    NearEnd,
    /// The end where it stops.
    FarEnd,
    /// The side of a notch.
    Notch,
    /// The side or the tip of a tab.
    Tab,
    /// The slot beside a tab.
    Relief,
    /// The side or the tip of a folded end.
    EndFold,
}

/// A straight or round stretch of a blank's outline.
///
/// ```
/// use seamwright::trim::{BlankEdge, BlankSide, Point};
/// let edge = BlankEdge { side: BlankSide::NearEnd, from: Point::ORIGIN, to: Point::ORIGIN, arc: None };
/// assert!(edge.arc.is_none());
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BlankEdge {
    /// What it is.
    pub side: BlankSide,
    /// Where it starts.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
    /// The arc; a straight stretch has none.
    pub arc: Option<Arc>,
}

/// What a bend line of a blank folds.
///
/// ```
/// use seamwright::trim::{BlankFold, Part};
/// // As drawings have it: bends are numbered from 1.
/// assert_eq!(BlankFold::Bend(Part::Body(0)).to_string(), "1");
/// assert_eq!(BlankFold::Tab(1).to_string(), "tab 2");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum BlankFold {
    /// A bend of the profile, or the fold of a hem.
    Bend(Part),
    /// The tab of this index, those of the near end first.
    Tab(usize),
    /// The fold at an end.
    EndFold,
}

impl fmt::Display for BlankFold {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            BlankFold::Bend(Part::Body(i)) => (i + 1).fmt(f),
            BlankFold::Bend(hem) => hem.fmt(f),
            BlankFold::Tab(i) => write!(f, "tab {}", i + 1),
            BlankFold::EndFold => f.write_str("end fold"),
        }
    }
}

/// A straight line on a blank.
///
/// ```
/// use seamwright::trim::{BlankLine, Point};
/// use seamwright::units::Length;
/// let line = BlankLine { from: Point::ORIGIN, to: Point { x: Length::inches(3), y: Length::inches(4) } };
/// assert_eq!(line.length()?, Length::inches(5));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BlankLine {
    /// Where it starts.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
}

impl BlankLine {
    /// Its length.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range of a length.
    pub fn length(&self) -> Result<Length, Error> {
        self.from.distance(self.to)
    }
}

/// A bend of a blank: its line, and the tangent lines beside it, as far as they lie on the metal.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, BlankFold, Face, HeldLine, NeutralFactor, Part, Point, Profile, Taper};
/// use seamwright::units::{BendAngle, Length};
/// let angle = |face: i16| {
///     Profile::builder(Length::mils(24))
///         .painted(Face::Upper)
///         .inside_radius(Length::mils(24))
///         .leg("flange", Length::inches(4))
///         .down(BendAngle::SQUARE)
///         .leg("face", Length::inches(face))
///         .build()
/// };
/// let taper = Taper {
///     near: angle(2)?,
///     far: angle(3)?,
///     length: Length::feet(10),
///     rule: BendRule::neutral_axis(NeutralFactor::MIDDLE),
///     held: HeldLine::StartEdge,
///     offset: Point::ORIGIN,
///     tolerance: Length::micrometres(10),
/// };
/// let bends = taper.compute()?.blank.bends;
/// assert_eq!((bends.len(), bends[0].fold), (1, BlankFold::Bend(Part::Body(0))));
/// assert_eq!((bends[0].lines.len(), bends[0].tangents.len()), (1, 2));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BlankBend {
    /// What it folds.
    pub fold: BlankFold,
    /// The bend line; in several pieces where a notch or a hole parts it.
    pub lines: Vec<BlankLine>,
    /// The tangent lines on its two sides, likewise.
    pub tangents: Vec<BlankLine>,
    /// How far, from flat, square across the line.
    pub angle: BendAngle,
    /// Which way, with the upper face up.
    pub direction: Direction,
    /// Radius of the inside face.
    pub inside_radius: Length,
}

/// A round hole in a blank.
///
/// ```
/// use seamwright::trim::{BlankHole, Point};
/// use seamwright::units::Length;
/// let hole = BlankHole { centre: Point::ORIGIN, diameter: Length::inches_64(8) };
/// assert_eq!(hole.diameter, Length::parse("1/8\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BlankHole {
    /// Its centre.
    pub centre: Point,
    /// Its diameter.
    pub diameter: Length,
}

impl BlankHole {
    /// Whether it lies on another one.
    pub(super) fn touches(&self, other: &BlankHole) -> bool {
        self.centre.to(other.centre).is_ok_and(|(x, y)| num::hypot(x, y) < (self.diameter.mm() + other.diameter.mm()) / 2.0)
    }
}

/// A flat blank, upper face up: x from the start edge across the sheet, y along the run from the near end.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, HeldLine, NeutralFactor, Point, Profile, Taper};
/// use seamwright::units::{Area, Length, SurfaceMass};
/// let strip = |width: i16| Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(width)).build();
/// let taper = Taper {
///     near: strip(4)?,
///     far: strip(8)?,
///     length: Length::feet(1),
///     rule: BendRule::neutral_axis(NeutralFactor::MIDDLE),
///     held: HeldLine::StartEdge,
///     offset: Point::ORIGIN,
///     tolerance: Length::micrometres(10),
/// };
/// let blank = taper.compute()?.blank;
/// assert_eq!(blank.area()?, Area::parse("72 in2")?);
/// assert!((blank.mass(SurfaceMass::parse("1 lb/ft2")?)?.to_string()).starts_with("0.2267"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FlatBlank {
    /// Thickness of the sheet.
    pub thickness: Length,
    /// The outline, counter-clockwise and closed: each stretch starts where the one before it ends.
    pub outline: Vec<BlankEdge>,
    /// The bends, those of the profile from the start edge first.
    pub bends: Vec<BlankBend>,
    /// The holes.
    pub holes: Vec<BlankHole>,
    /// What must be known beside the numbers.
    pub cautions: Vec<Caution>,
}

impl FlatBlank {
    /// The area of the metal: exact for straight stretches, arcs and holes by their formula.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) where the outline is beyond the range of areas.
    pub fn area(&self) -> Result<Area, Error> {
        Area::new(measure::square_metres(self)?, AreaUnit::SquareMetre)
    }

    /// Its mass, from the mass of the sheet per area.
    ///
    /// # Errors
    /// As [`FlatBlank::area`].
    pub fn mass(&self, sheet: SurfaceMass) -> Result<Mass, Error> {
        Mass::new(sheet.get(SurfaceMassUnit::KilogramPerSquareMetre) * self.area()?.get(AreaUnit::SquareMetre), MassUnit::Kilogram)
    }

    /// The box around it, along the axes: the least sheet that it is cut from without being turned.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range of a length.
    pub fn bounds(&self) -> Result<Bounds, Error> {
        measure::bounds(self)
    }

    /// The outline as points, arcs cut into chords that stray by at most `tolerance`; the first point is not repeated.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange) for a tolerance of zero or less,
    /// [`ErrorKind::TooLarge`](crate::error::ErrorKind::TooLarge) where an arc would need more than 10 000 chords.
    pub fn points(&self, tolerance: Length) -> Result<Vec<Point>, Error> {
        measure::points(self, tolerance)
    }

    /// Refuses an outline that is open, crosses or touches itself, or has fewer than three corners, and holes that are not clear of it and of each other.
    ///
    /// # Errors
    /// [`ErrorKind::Geometry`](crate::error::ErrorKind::Geometry) at `outline`, with the two stretches and where they meet, or at each of the `holes`.
    pub fn check(&self) -> Result<(), Error> {
        crossing::check(self)
    }

    /// A line, as far as it lies on the metal.
    pub(super) fn on_metal(&self, line: BlankLine) -> Result<Vec<BlankLine>, Error> {
        clip::clip(self, line)
    }

    /// From a point to the outline, in millimetres; less than nothing for a point outside it.
    pub(super) fn clear_of_edge(&self, point: Point) -> Result<f64, Error> {
        clip::clear_of_edge(self, point)
    }
}
