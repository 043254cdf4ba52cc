//! The exact check of an outline's rings.

use super::outline::{Bounds, Point};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::units::{Length, Sum};
use core::ops::Range;
use robust::{Coord, orient2d};

/// Faults of crossing and touching that one refusal lists; a tangle of many vertices would have a square number of them.
const CROSSINGS_LISTED: usize = 64;
/// Whole picometres up to this are exact in floating point, and so are the predicates on them: about 9 km.
const EXTENT_PM: i128 = 1 << 53;

/// The upright rectangle round all rings.
fn bounds_of<'a>(rings: impl Iterator<Item = &'a [Point]>) -> Result<Bounds, Error> {
    let mut all = rings.flatten().copied();
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
#[derive(Debug, Default)]
pub(super) struct Frame {
    x: i64,
    y: i64,
}

impl Frame {
    /// The frame of an outline with these bounds.
    pub(super) fn of(bounds: &Bounds) -> Frame {
        Frame { x: bounds.low.x.pm(), y: bounds.low.y.pm() }
    }

    #[allow(clippy::cast_precision_loss, reason = "within the extent that `bounds_of` allows, every picometre is exact")]
    pub(super) fn coord(&self, p: Point) -> Coord<f64> {
        Coord { x: (p.x.pm() - self.x) as f64, y: (p.y.pm() - self.y) as f64 }
    }

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
pub(super) enum Side {
    Inside,
    On,
    Outside,
}

/// Where a point lies to the ring with these edges.
pub(super) fn side(edges: impl Iterator<Item = (Coord<f64>, Coord<f64>)>, p: Coord<f64>) -> Side {
    let mut inside = false;
    for (a, b) in edges {
        let (above_a, above_b) = (a.y > p.y, b.y > p.y);
        // An edge over or under the point says nothing of it.
        if above_a == above_b && (above_a || (a.y < p.y && b.y < p.y)) {
            continue;
        }
        let turn = orient2d(a, b, p);
        if turn == 0.0 && within(a, b, p) {
            return Side::On;
        }
        if above_a != above_b && (turn > 0.0) == (b.y > a.y) {
            inside = !inside;
        }
    }
    if inside { Side::Inside } else { Side::Outside }
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

/// A vertex, as far from the low corner of the bounds as it lies.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Corner {
    at: Coord<f64>,
    before: usize,
    after: usize,
    ring: usize,
    /// The caller's number in its ring.
    given: usize,
}

/// A ring without repeated neighbours: its stretch of the corners.
#[derive(Debug)]
pub(super) struct Ring {
    corners: Range<usize>,
    /// How many vertices the caller gave.
    given: usize,
    /// The numbers of vertices that lie on the one before.
    repeated: Vec<usize>,
    /// Twice the signed area in square picometres, exact: counter-clockwise is positive.
    pub(super) twice_area: i128,
}

/// An edge between two corners, by the left one's x.
#[derive(Debug, Clone, Copy)]
struct SweptEdge {
    left: f64,
    right: f64,
    low: f64,
    high: f64,
    from: usize,
    to: usize,
}

/// Checks the rings of one outline after the other; its buffers are reused.
#[derive(Debug, Default)]
pub(crate) struct RingCheck {
    frame: Frame,
    pub(super) rings: Vec<Ring>,
    corners: Vec<Corner>,
    /// The corners' numbers from the left, and what they are sorted by.
    order: Vec<usize>,
    keys: Vec<u64>,
    edges: Vec<SweptEdge>,
}

fn path(ring: usize) -> String {
    if ring == 0 { "outer".to_owned() } else { format!("holes[{}]", ring - 1) }
}

impl RingCheck {
    /// Checks these rings, the outer one first.
    pub(crate) fn check<'a>(&mut self, rings: impl Iterator<Item = &'a [Point]> + Clone) -> Result<Bounds, Error> {
        let bounds = bounds_of(rings.clone())?;
        self.frame = Frame::of(&bounds);
        self.rings.clear();
        self.corners.clear();
        for points in rings {
            self.add(points);
        }
        let mut faults = Faults::default();
        for number in 0..self.rings.len() {
            self.check_ring(number, &mut faults);
        }
        if !self.check_crossings(&mut faults) {
            self.check_holes(&mut faults);
        }
        faults.check()?;
        Ok(bounds)
    }

    /// Of the rings that were checked last: every corner's distance from the low corner of the bounds, in whole picometres, x and y.
    pub(crate) fn corners(&self) -> impl Iterator<Item = (f64, f64)> {
        self.corners.iter().map(|c| (c.at.x, c.at.y))
    }

    /// The numbers of those corners, from the left.
    pub(crate) fn from_left(&self) -> impl Iterator<Item = usize> {
        self.order.iter().copied()
    }

    /// Their edges by the numbers of their left and right ends, in the order of their left ends.
    pub(crate) fn edges(&self) -> impl Iterator<Item = (usize, usize)> {
        self.edges.iter().map(|e| if self.at(e.from).x <= self.at(e.to).x { (e.from, e.to) } else { (e.to, e.from) })
    }

    fn add(&mut self, points: &[Point]) {
        let (first, ring) = (self.corners.len(), self.rings.len());
        let mut repeated = Vec::new();
        let mut last = None;
        for (given, &p) in points.iter().enumerate() {
            let at = self.frame.coord(p);
            if last.is_some_and(|last| same(last, at)) {
                repeated.push(given);
            } else {
                let here = self.corners.len();
                self.corners.push(Corner { at, before: here.wrapping_sub(1), after: here + 1, ring, given });
                last = Some(at);
            }
        }
        let begin = self.corners.get(first).map(|c| c.at);
        while self.corners.len() > first + 1 && begin.zip(self.corners.last()).is_some_and(|(a, b)| same(a, b.at)) {
            repeated.extend(self.corners.pop().map(|c| c.given));
        }
        let end = self.corners.len();
        if let Some(corner) = self.corners.get_mut(first) {
            corner.before = end - 1;
        }
        if let Some(corner) = self.corners.get_mut(first..).and_then(<[Corner]>::last_mut) {
            corner.after = first;
        }
        let own = self.corners.get(first..end).unwrap_or_default();
        let mut twice_area = 0;
        if let Some(mut a) = own.last().map(|c| c.at) {
            for c in own {
                twice_area += times(a.x, c.at.y) - times(c.at.x, a.y);
                a = c.at;
            }
        }
        self.rings.push(Ring { corners: first..end, given: points.len(), repeated, twice_area });
    }

    fn at(&self, corner: usize) -> Coord<f64> {
        self.corners.get(corner).map_or(Coord { x: 0.0, y: 0.0 }, |c| c.at)
    }

    fn given(&self, corner: usize) -> (usize, usize) {
        self.corners.get(corner).map_or((0, 0), |c| (c.ring, c.given))
    }

    fn check_ring(&self, number: usize, faults: &mut Faults) {
        let Some(ring) = self.rings.get(number) else { return };
        for &i in &ring.repeated {
            faults.add(
                Error::new(ErrorKind::Geometry, "a vertex lies on its neighbour")
                    .at(format!("{}[{i}]", path(number)))
                    .value_of(Length::ZERO)
                    .accepts("vertices that differ from their neighbours, the first one given once")
                    .cured_by("leave one of the two out"),
            );
        }
        let corners = self.corners.get(ring.corners.clone()).unwrap_or_default();
        if corners.len() < 3 {
            faults.add(too_few(path(number), if ring.repeated.is_empty() { ring.given } else { corners.len() }));
            return;
        }
        for corner in corners {
            let (a, b, c) = (self.at(corner.before), corner.at, self.at(corner.after));
            if (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) < 0.0 && orient2d(a, b, c) == 0.0 {
                let back = num::hypot(c.x - b.x, c.y - b.y).min(num::hypot(b.x - a.x, b.y - a.y)) / 1e9;
                faults.add(
                    Error::new(ErrorKind::Geometry, "a spike: the outline runs back over itself")
                        .at(format!("{}[{}]", path(number), corner.given))
                        .value_of(Length::from_mm(back).unwrap_or_default())
                        .accepts("an outline that never runs back over itself")
                        .cured_by("leave the vertex out"),
                );
            }
        }
        if ring.twice_area == 0 {
            faults.add(Error::new(ErrorKind::Geometry, "a ring encloses no area").at(path(number)).value_of("0 m2").accepts("a simple polygon"));
        }
    }

    /// Sorts the corners from the left.
    fn sort(&mut self) {
        self.order.clear();
        let bits = usize::BITS - self.corners.len().leading_zeros();
        if bits <= 64 - 53 {
            // One word holds the place and the number.
            self.keys.clear();
            self.keys.extend(self.corners.iter().zip(0_u64..).map(|(c, number)| (exact(c.at.x).cast_unsigned() << bits) | number));
            self.keys.sort_unstable();
            let mask = (1 << bits) - 1;
            self.order.extend(self.keys.iter().map(|key| usize::try_from(key & mask).unwrap_or_default()));
        } else {
            self.order.extend(0..self.corners.len());
            let corners = &self.corners;
            self.order.sort_unstable_by_key(|&number| (corners.get(number).map(|c| exact(c.at.x)), number));
        }
    }

    /// The edges in the order of their left ends.
    fn sweep(&mut self) {
        self.sort();
        self.edges.clear();
        for &number in &self.order {
            let Some(&corner) = self.corners.get(number) else { continue };
            for (from, to) in [(corner.before, number), (number, corner.after)] {
                let other = if from == number { to } else { from };
                let end = self.at(other);
                // An upright edge comes with its lower number.
                if end.x > corner.at.x || (end.x.to_bits() == corner.at.x.to_bits() && other > number) {
                    let (low, high) = if end.y < corner.at.y { (end.y, corner.at.y) } else { (corner.at.y, end.y) };
                    self.edges.push(SweptEdge { left: corner.at.x, right: end.x, low, high, from, to });
                }
            }
        }
    }

    /// Adds a fault for every two edges that meet other than as neighbours; says whether there was one.
    fn check_crossings(&mut self, faults: &mut Faults) -> bool {
        self.sweep();
        let mut found: Vec<((usize, usize), (usize, usize), Coord<f64>)> = Vec::new();
        let whole = |e: &SweptEdge| self.corners.get(e.from).and_then(|c| self.rings.get(c.ring)).is_some_and(|r| r.corners.len() >= 3);
        // Ordered by their left ends, an edge can meet only those that start before it ends.
        for (k, e) in self.edges.iter().enumerate() {
            for f in self.edges.get(k + 1..).unwrap_or_default() {
                if f.left > e.right {
                    break;
                }
                if f.high < e.low || f.low > e.high || e.from == f.to || e.to == f.from {
                    continue;
                }
                let (a, b, c, d) = (self.at(e.from), self.at(e.to), self.at(f.from), self.at(f.to));
                if meet(a, b, c, d) && whole(e) && whole(f) {
                    let (one, two) = (self.given(e.from), self.given(f.from));
                    found.push(if one < two { (one, two, meeting_place(a, b, c, d)) } else { (two, one, meeting_place(c, d, a, b)) });
                }
            }
        }
        if found.is_empty() {
            return false;
        }
        found.sort_by_key(|(one, two, _)| (*one, *two));
        let name = |(ring, i): (usize, usize)| format!("{}[{i}]", path(ring));
        for &(one, two, at) in found.iter().take(CROSSINGS_LISTED) {
            let (x, y) = self.frame.point(at);
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
        true
    }

    fn side(&self, ring: &Ring, p: Coord<f64>) -> Side {
        side(self.corners.get(ring.corners.clone()).unwrap_or_default().iter().map(|c| (c.at, self.at(c.after))), p)
    }

    /// With no edges meeting, one vertex tells where a whole ring lies.
    fn check_holes(&self, faults: &mut Faults) {
        let Some((outer, holes)) = self.rings.split_first() else { return };
        for (h, hole) in holes.iter().enumerate() {
            let Some(at) = self.corners.get(hole.corners.start).filter(|_| !hole.corners.is_empty()).map(|c| c.at) else { continue };
            if outer.corners.len() >= 3 && self.side(outer, at) != Side::Inside {
                faults.add(Error::new(ErrorKind::Geometry, "a hole lies outside the outer ring").at(path(h + 1)).accepts("holes within the outer ring"));
            }
            for (o, other) in holes.iter().enumerate().filter(|(o, other)| *o != h && other.corners.len() >= 3) {
                if self.side(other, at) == Side::Inside {
                    faults.add(
                        Error::new(ErrorKind::Geometry, format!("a hole lies inside {}", path(o + 1))).at(path(h + 1)).accepts("holes apart from each other"),
                    );
                }
            }
        }
    }
}
