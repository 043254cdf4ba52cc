//! The outline of a plane: a simple polygon with holes, checked exactly.

#[cfg(feature = "serde")]
use crate::error::told::Told;
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::units::{Area, AreaUnit, Length, Sum};
use robust::{Coord, orient2d};

/// Faults of crossing and touching that one refusal lists; a tangle of many vertices would have a square number of them.
const CROSSINGS_LISTED: usize = 64;
/// Whole picometres up to this are exact in floating point, and so are the predicates on them: about 9 km.
const EXTENT_PM: i128 = 1 << 53;

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
    /// [`ErrorKind::Overflow`] beyond the range; never for an outline's own bounds.
    pub fn width(&self) -> Result<Length, Error> {
        (self.high.x - self.low.x).length()
    }

    /// How far it reaches up the slope.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range; never for an outline's own bounds.
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
#[derive(Debug, Clone)]
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
    /// [`ErrorKind::Geometry`] for fewer than three vertices, neighbours that coincide, a spike, edges that cross or touch, no area, a hole
    /// outside the outer ring or inside another hole; [`ErrorKind::OutOfRange`] for an outline more than 9 km across, which is mostly a
    /// mixed-up unit.
    pub fn new(outer: Vec<Point>, holes: Vec<Vec<Point>>) -> Result<Outline, Error> {
        let bounds = bounds_of(&outer, &holes)?;
        let frame = Frame { x: bounds.low.x.pm(), y: bounds.low.y.pm() };
        let mut faults = Faults::default();
        let rings: Vec<Ring> = core::iter::once(&outer)
            .chain(&holes)
            .enumerate()
            .map(|(r, points)| {
                let ring = Ring::new(r, points, &frame);
                ring.check(&mut faults);
                ring
            })
            .collect();
        let crossed = check_crossings(&rings, &frame, &mut faults);
        if !crossed {
            check_holes(&rings, &mut faults);
        }
        faults.check()?;

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
        let frame = Frame { x: b.low.x.pm(), y: b.low.y.pm() };
        let at = frame.coord(point);
        self.rings().enumerate().all(|(r, points)| match Ring::new(r, points, &frame).side(at) {
            Side::On => true,
            Side::Inside => r == 0,
            Side::Outside => r != 0,
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

fn bounds_of(outer: &[Point], holes: &[Vec<Point>]) -> Result<Bounds, Error> {
    let mut all = outer.iter().chain(holes.iter().flatten()).copied();
    let Some(first) = all.next() else {
        return Err(too_few("outer".to_owned(), 0));
    };
    let bounds = all.fold(Bounds { low: first, high: first }, |b, p| Bounds {
        low: Point::new(b.low.x.min(p.x), b.low.y.min(p.y)),
        high: Point::new(b.high.x.max(p.x), b.high.y.max(p.y)),
    });
    for (name, low, high) in [("x", bounds.low.x, bounds.high.x), ("y", bounds.low.y, bounds.high.y)] {
        let extent: Sum = high - low;
        if extent.pm() >= EXTENT_PM {
            return Err(Error::new(ErrorKind::OutOfRange, format!("the outline is too far across in {name}"))
                .value_of(format_args!("{low} to {high}"))
                .accepts("less than 9 km from end to end")
                .cured_by("check the unit of the coordinates"));
        }
    }
    Ok(bounds)
}

fn too_few(path: String, count: usize) -> Error {
    Error::new(ErrorKind::Geometry, "a ring has too few vertices").at(path).value_of(format_args!("{count} vertices")).accepts("3 or more vertices")
}

/// The origin that is subtracted exactly before floating point starts.
struct Frame {
    x: i64,
    y: i64,
}

impl Frame {
    #[allow(clippy::cast_precision_loss, reason = "within the extent that `bounds_of` allows, every picometre is exact")]
    fn coord(&self, p: Point) -> Coord<f64> {
        Coord { x: (p.x.pm() - self.x) as f64, y: (p.y.pm() - self.y) as f64 }
    }
}

impl Frame {
    /// Back to lengths, to the micrometre: a place to look at.
    #[allow(clippy::cast_possible_truncation, reason = "within the extent that `bounds_of` allows")]
    fn point(&self, at: Coord<f64>) -> (Length, Length) {
        let one = |origin: i64, c: f64| {
            let pm = (i128::from(origin) + c as i128).div_euclid(1_000_000) * 1_000_000;
            Length::from_pm(i64::try_from(pm).unwrap_or_default())
        };
        (one(self.x, at.x), one(self.y, at.y))
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    Inside,
    On,
    Outside,
}

/// A ring without repeated neighbours; every vertex keeps the caller's number.
struct Ring {
    number: usize,
    given: usize,
    vertices: Vec<(usize, Coord<f64>)>,
    repeated: Vec<usize>,
    /// Twice the signed area in square picometres, exact: counter-clockwise is positive.
    twice_area: i128,
}

/// A coordinate as the whole number that it is.
#[allow(clippy::cast_possible_truncation, reason = "the coordinates are whole numbers under 2^53")]
fn exact(c: f64) -> i64 {
    c as i64
}

fn times(a: f64, b: f64) -> i128 {
    i128::from(exact(a)) * i128::from(exact(b))
}

fn same(a: Coord<f64>, b: Coord<f64>) -> bool {
    // Whole picometres, so equality is exact.
    a.x.to_bits() == b.x.to_bits() && a.y.to_bits() == b.y.to_bits()
}

impl Ring {
    fn new(number: usize, points: &[Point], frame: &Frame) -> Ring {
        let mut vertices: Vec<(usize, Coord<f64>)> = Vec::with_capacity(points.len());
        let mut repeated = Vec::new();
        for (i, &p) in points.iter().enumerate() {
            let at = frame.coord(p);
            if vertices.last().is_some_and(|&(_, last)| same(last, at)) {
                repeated.push(i);
            } else {
                vertices.push((i, at));
            }
        }
        while vertices.len() > 1 && vertices.first().zip(vertices.last()).is_some_and(|(a, b)| same(a.1, b.1)) {
            repeated.extend(vertices.pop().map(|(i, _)| i));
        }
        let mut ring = Ring { number, given: points.len(), vertices, repeated, twice_area: 0 };
        ring.twice_area = ring.edges().map(|(_, a, b)| times(a.x, b.y) - times(b.x, a.y)).sum();
        ring
    }

    fn path(&self) -> String {
        if self.number == 0 { "outer".to_owned() } else { format!("holes[{}]", self.number - 1) }
    }

    fn edges(&self) -> impl Iterator<Item = (usize, Coord<f64>, Coord<f64>)> {
        let next = self.vertices.iter().cycle().skip(1);
        self.vertices.iter().zip(next).map(|(&(i, a), &(_, b))| (i, a, b))
    }

    fn check(&self, faults: &mut Faults) {
        let path = self.path();
        for &i in &self.repeated {
            faults.add(
                Error::new(ErrorKind::Geometry, "a vertex lies on its neighbour")
                    .at(format!("{path}[{i}]"))
                    .value_of(Length::ZERO)
                    .accepts("vertices that differ from their neighbours, the first one given once")
                    .cured_by("leave one of the two out"),
            );
        }
        if self.vertices.len() < 3 {
            faults.add(too_few(path, if self.repeated.is_empty() { self.given } else { self.vertices.len() }));
            return;
        }
        let n = self.vertices.len();
        for (k, &(i, b)) in self.vertices.iter().enumerate() {
            let (Some(&(_, a)), Some(&(_, c))) = (self.vertices.get((k + n - 1) % n), self.vertices.get((k + 1) % n)) else { continue };
            if orient2d(a, b, c) == 0.0 && (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) < 0.0 {
                let back = num::hypot(c.x - b.x, c.y - b.y).min(num::hypot(b.x - a.x, b.y - a.y)) / 1e9;
                faults.add(
                    Error::new(ErrorKind::Geometry, "a spike: the outline runs back over itself")
                        .at(format!("{path}[{i}]"))
                        .value_of(Length::from_mm(back).unwrap_or_default())
                        .accepts("an outline that never runs back over itself")
                        .cured_by("leave the vertex out"),
                );
            }
        }
        if self.twice_area == 0 {
            faults.add(Error::new(ErrorKind::Geometry, "a ring encloses no area").at(path).value_of("0 m2").accepts("a simple polygon"));
        }
    }

    fn side(&self, p: Coord<f64>) -> Side {
        let mut inside = false;
        for (_, a, b) in self.edges() {
            let turn = orient2d(a, b, p);
            if turn == 0.0 && within(a, b, p) {
                return Side::On;
            }
            if (a.y > p.y) != (b.y > p.y) && (turn > 0.0) == (b.y > a.y) {
                inside = !inside;
            }
        }
        if inside { Side::Inside } else { Side::Outside }
    }
}

/// Whether `p`, known to lie on the line through `a` and `b`, lies between them.
fn within(a: Coord<f64>, b: Coord<f64>, p: Coord<f64>) -> bool {
    p.x >= a.x.min(b.x) && p.x <= a.x.max(b.x) && p.y >= a.y.min(b.y) && p.y <= a.y.max(b.y)
}

/// Whether two edges have a point in common.
fn meet(a: Coord<f64>, b: Coord<f64>, c: Coord<f64>, d: Coord<f64>) -> bool {
    let (abc, abd) = (orient2d(a, b, c), orient2d(a, b, d));
    if (abc > 0.0 && abd > 0.0) || (abc < 0.0 && abd < 0.0) {
        return false;
    }
    let (cda, cdb) = (orient2d(c, d, a), orient2d(c, d, b));
    if (abc > 0.0 && abd < 0.0 || abc < 0.0 && abd > 0.0) && (cda > 0.0 && cdb < 0.0 || cda < 0.0 && cdb > 0.0) {
        return true;
    }
    (abc == 0.0 && within(a, b, c)) || (abd == 0.0 && within(a, b, d)) || (cda == 0.0 && within(c, d, a)) || (cdb == 0.0 && within(c, d, b))
}

/// An edge that meets another: its ring, and its number as given.
type Met = (usize, usize);

/// Where two edges that meet do: where they cross, or the first end of one that lies on the other.
fn meeting_place(a: Coord<f64>, b: Coord<f64>, c: Coord<f64>, d: Coord<f64>) -> Coord<f64> {
    for (p, q, end) in [(a, b, c), (a, b, d), (c, d, a), (c, d, b)] {
        if orient2d(p, q, end) == 0.0 && within(p, q, end) {
            return end;
        }
    }
    let (c_side, d_side) = (orient2d(a, b, c), orient2d(a, b, d));
    let t = c_side / (c_side - d_side);
    Coord { x: c.x + (d.x - c.x) * t, y: c.y + (d.y - c.y) * t }
}

struct SweptEdge {
    left: f64,
    low: f64,
    high: f64,
    ring: usize,
    position: usize,
    given: usize,
    from: Coord<f64>,
    to: Coord<f64>,
}

/// Adds a fault for every two edges that meet other than as neighbours; says whether there was one.
fn check_crossings(rings: &[Ring], frame: &Frame, faults: &mut Faults) -> bool {
    let mut edges: Vec<SweptEdge> = Vec::new();
    for (r, ring) in rings.iter().enumerate().filter(|(_, ring)| ring.vertices.len() >= 3) {
        edges.extend(ring.edges().enumerate().map(|(position, (given, from, to))| SweptEdge {
            left: from.x.min(to.x),
            low: from.y.min(to.y),
            high: from.y.max(to.y),
            ring: r,
            position,
            given,
            from,
            to,
        }));
    }
    // Ordered by their left ends, an edge can meet only those that start before it ends.
    let mut order: Vec<(i64, usize)> = edges.iter().enumerate().map(|(i, e)| (exact(e.left), i)).collect();
    order.sort_unstable();
    let edges: Vec<&SweptEdge> = order.iter().filter_map(|&(_, i)| edges.get(i)).collect();
    let mut found: Vec<(Met, Met, Coord<f64>)> = Vec::new();
    for (k, e) in edges.iter().enumerate() {
        let right = e.from.x.max(e.to.x);
        for f in edges.iter().skip(k + 1).take_while(|f| f.left <= right) {
            if f.high < e.low || f.low > e.high {
                continue;
            }
            if e.ring == f.ring {
                let n = rings.get(e.ring).map_or(0, |r| r.vertices.len());
                let apart = e.position.abs_diff(f.position);
                if apart == 1 || apart + 1 == n {
                    continue;
                }
            }
            if meet(e.from, e.to, f.from, f.to) {
                let (one, two) = ((e.ring, e.given), (f.ring, f.given));
                let at = meeting_place(e.from, e.to, f.from, f.to);
                found.push(if one < two { (one, two, at) } else { (two, one, at) });
            }
        }
    }
    found.sort_by_key(|(one, two, _)| (*one, *two));
    let name = |(r, i): Met| format!("{}[{i}]", rings.get(r).map_or_else(String::new, Ring::path));
    for &(one, two, at) in found.iter().take(CROSSINGS_LISTED) {
        let (x, y) = frame.point(at);
        faults.add(
            Error::new(ErrorKind::Geometry, format!("the edge that leaves this vertex meets the edge that leaves {}", name(two)))
                .at(name(one))
                .value_of(format_args!("at {x}, {y}"))
                .accepts("edges that meet only at the vertex between neighbours"),
        );
    }
    if found.len() > CROSSINGS_LISTED {
        faults.add(Error::new(ErrorKind::Geometry, "more edges meet than are listed").value_of(format_args!("{} meetings in all", found.len())));
    }
    !found.is_empty()
}

/// With no edges meeting, one vertex tells where a whole ring lies.
fn check_holes(rings: &[Ring], faults: &mut Faults) {
    let Some((outer, holes)) = rings.split_first() else { return };
    for hole in holes {
        let Some(&(_, at)) = hole.vertices.first() else { continue };
        if outer.vertices.len() >= 3 && outer.side(at) != Side::Inside {
            faults.add(Error::new(ErrorKind::Geometry, "a hole lies outside the outer ring").at(hole.path()).accepts("holes within the outer ring"));
        }
        for other in holes.iter().filter(|o| o.number != hole.number && o.vertices.len() >= 3) {
            if other.side(at) == Side::Inside {
                faults.add(
                    Error::new(ErrorKind::Geometry, format!("a hole lies inside {}", other.path())).at(hole.path()).accepts("holes apart from each other"),
                );
            }
        }
    }
}
