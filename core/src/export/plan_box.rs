//! Boxes of text on a plan, turned any way. Everything here is on paper, in millimetres, y downwards.

use super::labels::Area;
use super::svg::{Point, text_width};
use crate::num;

/// A box about a point, turned clockwise.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Turned {
    pub(super) at: Point,
    /// Half its width and half its height, before it is turned.
    pub(super) half: Point,
    pub(super) degrees: f64,
    cos: f64,
    sin: f64,
    bounds: Area,
}

impl Turned {
    pub(super) fn new(at: Point, width: f64, height: f64, degrees: f64) -> Turned {
        Turned::with_axes(at, (width / 2.0, height / 2.0), degrees, num::cos_deg(degrees), num::sin_deg(degrees))
    }

    fn with_axes(at: Point, half: Point, degrees: f64, cos: f64, sin: f64) -> Turned {
        let reach = (half.0 * cos.abs() + half.1 * sin.abs(), half.0 * sin.abs() + half.1 * cos.abs());
        Turned { at, half, degrees, cos, sin, bounds: Area::about(at, 2.0 * reach.0, 2.0 * reach.1) }
    }

    /// Round a straight line, this wide.
    pub(super) fn along(from: Point, to: Point, width: f64) -> Turned {
        let (x, y) = (to.0 - from.0, to.1 - from.1);
        Turned::new(((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0), num::hypot(x, y), width, num::atan2_deg(y, x))
    }

    /// The same box about another point.
    pub(super) fn moved(&self, at: Point) -> Turned {
        Turned::with_axes(at, self.half, self.degrees, self.cos, self.sin)
    }

    /// A text of one line with a little room round it.
    pub(super) fn text(at: Point, text: &str, size: f64, degrees: f64) -> Turned {
        Turned::new(at, text_width(text, size) + 1.0, size * 0.9 + 0.4, degrees)
    }

    /// The point at these distances along and across the box from its middle.
    pub(super) fn point(&self, along: f64, across: f64) -> Point {
        (self.at.0 + along * self.cos - across * self.sin, self.at.1 + along * self.sin + across * self.cos)
    }

    pub(super) fn grown(&self, by: f64) -> Turned {
        Turned::with_axes(self.at, (self.half.0 + by, self.half.1 + by), self.degrees, self.cos, self.sin)
    }

    fn own(&self, p: Point) -> Point {
        let (x, y) = (p.0 - self.at.0, p.1 - self.at.1);
        (x * self.cos + y * self.sin, y * self.cos - x * self.sin)
    }

    pub(super) fn corners(&self) -> [Point; 4] {
        [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)].map(|(a, c)| self.point(a * self.half.0, c * self.half.1))
    }

    pub(super) fn bounds(&self) -> &Area {
        &self.bounds
    }

    fn is_apart_along_own_axes(&self, other: &Turned) -> bool {
        let corners = other.corners().map(|c| self.own(c));
        corners.iter().all(|c| c.0 >= self.half.0)
            || corners.iter().all(|c| c.0 <= -self.half.0)
            || corners.iter().all(|c| c.1 >= self.half.1)
            || corners.iter().all(|c| c.1 <= -self.half.1)
    }

    pub(super) fn meets(&self, other: &Turned) -> bool {
        self.bounds.meets(&other.bounds) && !self.is_apart_along_own_axes(other) && !other.is_apart_along_own_axes(self)
    }

    fn is_hit_by(&self, a: Point, b: Point) -> bool {
        Area::about((0.0, 0.0), 2.0 * self.half.0, 2.0 * self.half.1).is_hit_by(self.own(a), self.own(b))
    }

    pub(super) fn is_off_the_rim_of(&self, ring: &[Point]) -> bool {
        ring.iter().zip(ring.iter().cycle().skip(1)).all(|(a, b)| !self.is_hit_by(*a, *b))
    }

    pub(super) fn lies_in(&self, ring: &[Point]) -> bool {
        is_within(ring, self.at) && self.is_off_the_rim_of(ring)
    }

    pub(super) fn lies_outside(&self, ring: &[Point]) -> bool {
        !is_within(ring, self.at) && self.is_off_the_rim_of(ring)
    }

    /// The point of the box nearest to `p`.
    pub(super) fn nearest(&self, p: Point) -> Point {
        let near = Area::about((0.0, 0.0), 2.0 * self.half.0, 2.0 * self.half.1).nearest(self.own(p));
        self.point(near.0, near.1)
    }
}

/// Whether a point is within a ring.
pub(super) fn is_within(ring: &[Point], p: Point) -> bool {
    ring.iter().zip(ring.iter().cycle().skip(1)).filter(|(a, b)| (a.1 > p.1) != (b.1 > p.1) && p.0 < a.0 + (b.0 - a.0) * (p.1 - a.1) / (b.1 - a.1)).count() % 2
        == 1
}

/// A turn of text, clockwise, so that it is never upside down.
pub(super) fn readable(turned: f64) -> f64 {
    let mut t = turned;
    while t >= 90.0 {
        t -= 180.0;
    }
    while t < -90.0 {
        t += 180.0;
    }
    t
}

pub(super) fn mean(points: &[Point]) -> Point {
    let count = points.iter().fold(0.0, |n, _| n + 1.0_f64).max(1.0);
    (points.iter().map(|p| p.0).sum::<f64>() / count, points.iter().map(|p| p.1).sum::<f64>() / count)
}

pub(super) fn bounds(points: &[Point]) -> Area {
    let mut area = Area::EMPTY;
    points.iter().for_each(|p| area.cover(*p));
    area
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn text_is_never_upside_down() {
        for turned in [-360.0, -270.0, -180.0, -90.0, 0.0, 45.0, 91.0, 270.0] {
            let r = readable(turned);
            assert!((-90.0..90.0).contains(&r), "{turned} {r}");
        }
    }

    proptest! {
        /// Two boxes meet where one holds a point of the other: of many points spread over the one.
        #[test]
        fn boxes_meet_where_they_share_a_point(x in -8.0_f64..8.0, y in -8.0_f64..8.0, turn in -90.0_f64..90.0, other in -90.0_f64..90.0) {
            let a = Turned::new((0.0, 0.0), 8.0, 2.0, turn);
            let b = Turned::new((x, y), 5.0, 3.0, other);
            let steps = || (-20_i32..=20).map(|i| f64::from(i) / 20.0);
            let holds = |p: Point, room: f64| {
                let o = a.own(p);
                o.0.abs() < a.half.0 + room && o.1.abs() < a.half.1 + room
            };
            let any = |room: f64| steps().any(|i| steps().any(|j| holds(b.point(i * b.half.0, j * b.half.1), room)));
            prop_assert_eq!(a.meets(&b), b.meets(&a));
            if any(0.0) {
                prop_assert!(a.meets(&b));
            }
            if a.meets(&b) {
                prop_assert!(any(0.3));
            }
        }
    }
}
