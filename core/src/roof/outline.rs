//! The outline of a plane: a simple polygon with holes, checked exactly.

use super::ring_check::{Frame, RingCheck, Side, side};
use crate::error::Error;
#[cfg(feature = "serde")]
use crate::error::told::Told;
use crate::num;
use crate::units::{Angle, Area, AreaUnit, Length};

/// A point in a plane: x across the slope to the right as seen from below, y up the slope.
///
/// ```
/// use seamwright::roof::Point;
/// use seamwright::units::Length;
/// assert_eq!(Point::new(Length::feet(3), Length::ZERO).x, Length::inches(36));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Point {
    /// Across the slope, to the right.
    pub x: Length,
    /// Up the slope.
    pub y: Length,
}

impl Point {
    /// The point at these coordinates.
    #[must_use]
    pub const fn new(x: Length, y: Length) -> Point {
        Point { x, y }
    }
}

/// The upright rectangle that just holds an outline.
///
/// ```
/// use seamwright::roof::{Bounds, Point};
/// use seamwright::units::Length;
/// let b = Bounds { low: Point::default(), high: Point::new(Length::feet(4), Length::feet(3)) };
/// assert_eq!(b.width()?, Length::feet(4));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Bounds {
    /// Its lower left corner.
    pub low: Point,
    /// Its upper right corner.
    pub high: Point,
}

impl Bounds {
    /// How far it reaches across the slope.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range; never for an outline's own bounds.
    pub fn width(&self) -> Result<Length, Error> {
        (self.high.x - self.low.x).length()
    }

    /// How far it reaches up the slope.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range; never for an outline's own bounds.
    pub fn height(&self) -> Result<Length, Error> {
        (self.high.y - self.low.y).length()
    }
}

/// One edge of an outline, from a vertex to the next; the plane lies on its left.
///
/// ```
/// use seamwright::roof::{Outline, Point};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let clockwise = Outline::new(vec![p(0, 0), p(0, 3), p(4, 0)], vec![])?;
/// let first = clockwise.edges().next().unwrap();
/// assert_eq!((first.from, first.to), (p(0, 0), p(4, 0)));
/// assert_eq!(first.given, 2); // the caller's third edge, from (4, 0) back to (0, 0)
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Edge {
    /// The ring: 0 is the outer one, the holes follow from 1.
    pub ring: usize,
    /// Its number in the ring as stored: the edge that leaves the vertex of this number.
    pub index: usize,
    /// Its number in the ring as the caller gave it, which differs where the winding was turned.
    pub given: usize,
    /// Where it starts.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
}

impl Edge {
    /// The angle at which seams, which run along y, meet it: 90 degrees for a level edge, 0 for one along them.
    #[allow(clippy::cast_precision_loss, reason = "an outline's differences are exact in floating point")]
    pub(crate) fn meeting(&self) -> Angle {
        let (across, up) = ((self.to.x - self.from.x).pm() as f64, (self.to.y - self.from.y).pm() as f64);
        Angle::of_degrees(num::atan2_deg(across.abs(), up.abs()))
    }
}

/// The shape of a plane: a simple polygon, convex or not, with holes.
///
/// Any winding is accepted; it is stored with the outer ring counter-clockwise and the holes clockwise, each from the vertex that the
/// caller gave first, so that the plane always lies on the left of an [`Edge`]. Vertices in the middle of a straight line are kept.
/// All checks are exact: nothing is snapped, and two lines that miss each other by a picometre do not touch.
///
/// Two outlines are equal when their stored rings are, whatever winding they came in.
///
/// ```
/// use seamwright::roof::{Outline, Point};
/// use seamwright::units::{AreaUnit, Length};
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let gable = Outline::new(vec![p(0, 0), p(40, 0), p(40, 20), p(0, 20)], vec![vec![p(10, 5), p(14, 5), p(14, 9), p(10, 9)]])?;
/// assert!((gable.area().get(AreaUnit::SquareFoot) - 784.0).abs() < 1e-9);
/// assert_eq!(gable.bounds().high, p(40, 20));
/// let crossed = Outline::new(vec![p(0, 0), p(4, 3), p(4, 0), p(0, 3)], vec![]).unwrap_err();
/// assert_eq!(crossed.path(), "outer"); // no area; and the meeting of two edges in `crossed.others()`
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Clone)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "OutlineText", into = "OutlineText"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Outline {
    outer: Vec<Point>,
    holes: Vec<Vec<Point>>,
    /// Whether each ring, the outer one first, was turned to its stored winding.
    turned: Vec<bool>,
    bounds: Bounds,
    twice_area: i128,
}

impl PartialEq for Outline {
    fn eq(&self, other: &Self) -> bool {
        self.outer == other.outer && self.holes == other.holes
    }
}
impl Eq for Outline {}

/// What equality compares: two that are equal are written alike.
impl core::fmt::Debug for Outline {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("Outline").field("outer", &self.outer).field("holes", &self.holes).finish_non_exhaustive()
    }
}

#[cfg(feature = "serde")]
#[derive(serde::Serialize, serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
struct OutlineText {
    outer: Vec<Point>,
    #[serde(default)]
    holes: Vec<Vec<Point>>,
}

#[cfg(feature = "serde")]
impl TryFrom<OutlineText> for Outline {
    type Error = Told;
    fn try_from(t: OutlineText) -> Result<Self, Told> {
        Ok(Outline::new(t.outer, t.holes)?)
    }
}

#[cfg(feature = "serde")]
impl From<Outline> for OutlineText {
    fn from(o: Outline) -> Self {
        OutlineText { outer: o.outer, holes: o.holes }
    }
}

impl Outline {
    /// The outline with these rings, checked.
    ///
    /// # Errors
    /// Every fault at once, each with the vertex in its path (`outer[3]`, `holes[0][2]`; the numbers are the caller's, from 0):
    /// [`ErrorKind::Geometry`](crate::error::ErrorKind::Geometry) for fewer than three vertices, neighbours that coincide, a spike, edges that cross or touch, no area, a hole
    /// outside the outer ring or inside another hole; [`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange) for an outline more than 9 km across, which is mostly a
    /// mixed-up unit.
    pub fn new(outer: Vec<Point>, holes: Vec<Vec<Point>>) -> Result<Outline, Error> {
        let mut check = RingCheck::default();
        let bounds = check.check(core::iter::once(outer.as_slice()).chain(holes.iter().map(Vec::as_slice)))?;
        let rings = &check.rings;
        let mut turned = Vec::with_capacity(rings.len());
        let mut stored = Vec::with_capacity(rings.len());
        let mut twice_area = 0;
        for (r, points) in core::iter::once(outer).chain(holes).enumerate() {
            let area = rings.get(r).map_or(0, |ring| ring.twice_area);
            let turn = (area < 0) == (r == 0);
            twice_area += if r == 0 { area.abs() } else { -area.abs() };
            turned.push(turn);
            stored.push(if turn { turn_ring(points) } else { points });
        }
        let mut stored = stored.into_iter();
        let outer = stored.next().unwrap_or_default();
        Ok(Outline { outer, holes: stored.collect(), turned, bounds, twice_area })
    }

    /// The outer ring, counter-clockwise.
    #[must_use]
    pub fn outer(&self) -> &[Point] {
        &self.outer
    }

    /// The holes, each clockwise.
    #[must_use]
    pub fn holes(&self) -> &[Vec<Point>] {
        &self.holes
    }

    /// The area within the outer ring and outside the holes: exact until it is turned into floating point once.
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "areas are floating point by design, rounded once here")]
    pub fn area(&self) -> Area {
        Area::of(self.twice_area as f64 * 0.5e-24, AreaUnit::SquareMetre)
    }

    /// The upright rectangle that just holds it.
    #[must_use]
    pub fn bounds(&self) -> Bounds {
        self.bounds
    }

    /// The rings, the outer one first.
    pub fn rings(&self) -> impl Iterator<Item = &[Point]> {
        core::iter::once(self.outer.as_slice()).chain(self.holes.iter().map(Vec::as_slice))
    }

    /// How many edges there are in all rings.
    #[must_use]
    pub fn edge_count(&self) -> usize {
        self.rings().map(<[Point]>::len).sum()
    }

    /// Every edge, ring by ring, the outer one first.
    pub fn edges(&self) -> impl Iterator<Item = Edge> {
        self.rings().zip(&self.turned).enumerate().flat_map(|(ring, (points, &turned))| {
            let n = points.len();
            points.iter().zip(points.iter().cycle().skip(1)).enumerate().map(move |(index, (&from, &to))| Edge {
                ring,
                index,
                given: if turned { n - 1 - index } else { index },
                from,
                to,
            })
        })
    }

    /// Whether the point lies in the plane: within the outer ring and not within a hole; a point on an edge does.
    ///
    /// ```
    /// use seamwright::roof::{Outline, Point};
    /// use seamwright::units::Length;
    /// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
    /// let square = Outline::new(vec![p(0, 0), p(4, 0), p(4, 4), p(0, 4)], vec![])?;
    /// assert!(square.contains(p(4, 2)) && !square.contains(p(5, 2)));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub fn contains(&self, point: Point) -> bool {
        let b = &self.bounds;
        if point.x < b.low.x || point.x > b.high.x || point.y < b.low.y || point.y > b.high.y {
            return false;
        }
        let frame = Frame::of(b);
        let at = frame.coord(point);
        self.rings().enumerate().all(|(r, points)| {
            let edges = points.iter().zip(points.iter().cycle().skip(1)).map(|(a, b)| (frame.coord(*a), frame.coord(*b)));
            match side(edges, at) {
                Side::On => true,
                Side::Inside => r == 0,
                Side::Outside => r != 0,
            }
        })
    }
}

/// The same ring the other way round, from the same first vertex.
fn turn_ring(mut points: Vec<Point>) -> Vec<Point> {
    if let Some(rest) = points.get_mut(1..) {
        rest.reverse();
    }
    points
}
