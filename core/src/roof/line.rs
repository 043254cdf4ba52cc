//! The lines of the roof, measured.

use super::kind::{self, Lie, LineKind, Water};
use super::vertex::{Twice, Vertex};
use super::{Plane, Point};
use crate::error::Error;
use crate::num;
use crate::num::space::{V3, cross, dot, norm, scale};
use crate::units::{Angle, Length};

/// A plane on one side of a line.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::roof::{PlaneInput, RoofInput, Shape, Vertex, Water};
/// use seamwright::units::Length;
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let shape = Shape::Space { outer: vec![v(0, 0, 10), v(40, 0, 10), v(40, 20, 20), v(0, 20, 20)], holes: vec![], flatness: None };
/// let roof = RoofInput::new(vec![PlaneInput { name: "shed".into(), shape }]).compute()?;
/// let eave = &roof.line("eave 1")?.side;
/// assert_eq!((eave.water, eave.meeting_angle.degrees(), eave.skew.degrees()), (Water::Toward, 90.0, 0.0));
/// assert_eq!(eave.backing.degrees(), -roof.planes()[0].slope().degrees()); // the plane rises from its eave
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "LineSide"))]
#[non_exhaustive]
pub struct Side {
    /// Number of the plane in the roof.
    pub plane: usize,
    /// The ring of the plane's outline: 0 is the outer one, the holes follow from 1.
    pub ring: usize,
    /// The edge of that ring, as the outline stores it.
    pub edge: usize,
    /// The edge's number in the ring as the caller gave it.
    pub given_edge: usize,
    /// Where the line starts in the plane's own axes. From start to end the plane lies on its left.
    pub start: Point,
    /// Where it ends in the plane's own axes.
    pub end: Point,
    /// How steeply the plane falls away from the line, in the section square to the line: 0 is level across it, less
    /// than 0 where the plane rises from it.
    pub backing: Angle,
    /// Between seams and line in the plane: 90 degrees is square, 0 is along the seams.
    pub meeting_angle: Angle,
    /// The angle in the plane between the line and the level: more than 0 where, looking up the slope, the line rises to the right.
    /// Its size is 90 degrees less the meeting angle. Above 0 the seams that end at the line from below are longer to the right.
    pub skew: Angle,
    /// Which way water on this side runs.
    pub water: Water,
}

/// What is on the other side of a line.
///
/// ```
/// use seamwright::roof::Beyond;
/// assert_ne!(Beyond::Wall("tower".into()), Beyond::Open);
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Beyond {
    /// Another plane.
    Plane(Side),
    /// A wall, by its name.
    Wall(String),
    /// A hole, by its name.
    Hole(String),
    /// Nothing.
    Open,
}

/// A line of the roof.
///
/// Which of two planes is the `side` is a matter of numbering alone; the measures do not depend on it.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::roof::{LineKind, PlaneInput, RoofInput, Shape, Vertex};
/// use seamwright::units::Length;
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let plane = |name: &str, outer| PlaneInput { name: name.into(), shape: Shape::Space { outer, holes: vec![], flatness: None } };
/// // A corner of two slopes at 12:12: the planes stand at 120 degrees, and the hip at 35.26.
/// let roof = RoofInput::new(vec![
///     plane("south", vec![v(0, 0, 0), v(20, 0, 0), v(10, 10, 10)]),
///     plane("west", vec![v(0, 20, 0), v(0, 0, 0), v(10, 10, 10)]),
/// ])
/// .compute()?;
/// let hip = roof.lines_of(LineKind::Hip).next().unwrap();
/// assert!((hip.dihedral.unwrap().degrees() - 120.0).abs() < 1e-12);
/// assert!((hip.side.backing.degrees() - 30.0).abs() < 1e-12);
/// assert!((hip.slope.degrees() - 35.264389682754654).abs() < 1e-12);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Line {
    /// Its kind and a number among those of its kind, in the order of planes and edges: `hip 2`.
    pub name: String,
    /// What it is.
    pub kind: LineKind,
    /// Where it starts; `side` lies on its left.
    pub start: Vertex,
    /// Where it ends.
    pub end: Vertex,
    /// True length.
    pub length: Length,
    /// Length in plan.
    pub plan_length: Length,
    /// Its own slope from level, 0 or more.
    pub slope: Angle,
    /// Between the two planes where there are two: below them at a ridge or hip, above them at a valley, 180 degrees or less.
    pub dihedral: Option<Angle>,
    /// The plane that it belongs to: the first by number; at a step the lower one, at an expansion joint the one that its cap or flashing is fixed on, across the panels the lower.
    pub side: Side,
    /// What is on its right.
    pub beyond: Beyond,
    /// At a step, from the line up to the edge of the plane above; none at any other line.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub riser: Option<Length>,
}

impl Line {
    /// The other plane, where there is one.
    #[must_use]
    pub fn other(&self) -> Option<&Side> {
        match &self.beyond {
            Beyond::Plane(side) => Some(side),
            _ => None,
        }
    }

    /// Its sides that are planes: one or two.
    pub fn sides(&self) -> impl Iterator<Item = &Side> {
        core::iter::once(&self.side).chain(self.other())
    }

    /// The bend of a trim that lies on both planes, from flat: more than 0 where they bend down from the line (ridge, hip), less than 0
    /// where they bend up (valley). It is the sum of the two backing angles.
    #[must_use]
    pub fn bend(&self) -> Option<Angle> {
        self.other().map(|o| Angle::of_degrees(self.side.backing.degrees() + o.backing.degrees()))
    }

    /// The upper and the lower plane, by number, where water runs over the line from one onto the other.
    #[must_use]
    pub fn crossing(&self) -> Option<(usize, usize)> {
        let other = self.other()?;
        match (self.side.water, other.water) {
            (Water::Toward, Water::Away) => Some((self.side.plane, other.plane)),
            (Water::Away, Water::Toward) => Some((other.plane, self.side.plane)),
            _ => None,
        }
    }
}

/// An edge of a plane, by number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct EdgeId {
    pub(super) plane: usize,
    pub(super) ring: usize,
    pub(super) edge: usize,
    pub(super) given: usize,
}

/// The straight piece of the roof that becomes a line, with the first plane on its left.
#[derive(Debug, Clone, Copy)]
pub(super) struct Piece {
    pub(super) start: Twice,
    pub(super) end: Twice,
}

/// The measures of a piece that need no side.
pub(super) struct Measures {
    along: V3,
    length: f64,
    plan: f64,
    rise: f64,
}

impl Piece {
    pub(super) fn measures(&self) -> Measures {
        let d = self.end.minus(&self.start);
        let length = norm(d);
        Measures { along: scale(d, 1.0 / length), length, plan: num::hypot(d[0], d[1]), rise: d[2] }
    }
}

impl Measures {
    pub(super) fn is_level(&self, tolerance: f64) -> bool {
        kind::is_level(self.rise, self.length, tolerance)
    }

    fn reversed(&self) -> Measures {
        Measures { along: scale(self.along, -1.0), rise: -self.rise, ..*self }
    }

    /// The side on the left of the piece, and how it lies there.
    pub(super) fn side(&self, plane: &Plane, id: EdgeId, piece: &Piece, tolerance: f64) -> Result<(Side, Lie), Error> {
        let frame = &plane.frame;
        let leaving = -dot(frame.up, frame.inward(self.along));
        let lie = Lie::new(leaving, self.length, tolerance);
        // Level and to the left of the line; and square to the line in its own upright plane.
        let (hx, hy) = (self.along[0] / self.plan * self.length, self.along[1] / self.plan * self.length);
        let sine = self.rise / self.length;
        let left = [-hy, hx, 0.0];
        let upright = [-hx * sine, -hy * sine, self.plan / self.length];
        let backing = num::atan2_deg(dot(frame.normal, left), dot(frame.normal, upright));
        let skew = self.skew(dot(self.along, frame.across), dot(self.along, frame.up));
        let side = Side {
            plane: id.plane,
            ring: id.ring,
            edge: id.edge,
            given_edge: id.given,
            start: frame.point(piece.start.vertex())?,
            end: frame.point(piece.end.vertex())?,
            backing: Angle::of_degrees(backing + 0.0),
            meeting_angle: Angle::of_degrees(90.0 - skew.abs()),
            skew: Angle::of_degrees(skew + 0.0),
            water: lie.water,
        };
        Ok((side, lie))
    }

    /// As [`side`](Self::side), for the plane on the right.
    pub(super) fn other_side(&self, plane: &Plane, id: EdgeId, piece: &Piece, tolerance: f64) -> Result<(Side, Lie), Error> {
        self.reversed().side(plane, id, &Piece { start: piece.end, end: piece.start }, tolerance)
    }

    fn skew(&self, across: f64, up: f64) -> f64 {
        // Along the seams to a nanometre, left and right cannot be told apart.
        if across.abs() * self.length <= 1e-6 {
            return 90.0;
        }
        if across < 0.0 { num::atan2_deg(-up, -across) } else { num::atan2_deg(up, across) }
    }

    pub(super) fn line(&self, kind: LineKind, piece: &Piece, dihedral: Option<f64>, side: Side, beyond: Beyond) -> Result<Line, Error> {
        Ok(Line {
            name: String::new(),
            kind,
            start: piece.start.vertex(),
            end: piece.end.vertex(),
            length: Length::from_mm(self.length)?,
            plan_length: Length::from_mm(self.plan)?,
            slope: Angle::of_degrees(num::atan2_deg(self.rise.abs(), self.plan)),
            dihedral: dihedral.map(Angle::of_degrees),
            side,
            beyond,
            riser: None,
        })
    }
}

/// Degrees by which the second plane is turned from the first; 0 where they are parallel.
pub(super) fn turn_between(a: &Plane, b: &Plane) -> f64 {
    let (m, n) = (a.frame.normal, b.frame.normal);
    kind::degrees_between(norm(cross(m, n)), dot(m, n))
}
