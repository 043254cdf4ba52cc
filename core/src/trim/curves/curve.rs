//! Lines and arcs of a contour in the working unit, and where two of them meet.

use crate::num;
use robust::{Coord, orient2d};

/// A point in millimetres.
pub(in crate::trim) type Xy = (f64, f64);

/// Points closer than this are one: a tenth of a picometre, the step of a length.
const SAME: f64 = 1e-10;
/// A curve shorter than this is left out of a contour: between two arcs it would leave them too near to their common tangent to be told apart.
const HAIR: f64 = 1e-4;
/// Angles closer than this are one, in degrees: a picometre at some 60 mm.
const SAME_ANGLE: f64 = 1e-9;

pub(in crate::trim) fn plus(a: Xy, b: Xy) -> Xy {
    (a.0 + b.0, a.1 + b.1)
}

pub(in crate::trim) fn minus(a: Xy, b: Xy) -> Xy {
    (a.0 - b.0, a.1 - b.1)
}

pub(in crate::trim) fn times(a: Xy, k: f64) -> Xy {
    (a.0 * k, a.1 * k)
}

pub(in crate::trim) fn dot(a: Xy, b: Xy) -> f64 {
    a.0 * b.0 + a.1 * b.1
}

pub(in crate::trim) fn length(a: Xy) -> f64 {
    (a.0 * a.0 + a.1 * a.1).sqrt()
}

/// Direction in degrees.
pub(in crate::trim) fn heading(a: Xy) -> f64 {
    num::atan2_deg(a.1, a.0)
}

/// From one direction on to another, turning counter-clockwise for a sign of 1 and clockwise for -1: 0 to 360 degrees.
pub(in crate::trim) fn ahead(from: f64, to: f64, sign: f64) -> f64 {
    let turn = (to - from) * sign % 360.0;
    if turn < 0.0 { turn + 360.0 } else { turn }
}

/// What makes a curve round.
#[derive(Debug, Clone, Copy)]
pub(in crate::trim) struct Round {
    pub(in crate::trim) centre: Xy,
    pub(in crate::trim) radius: f64,
    /// Direction from the centre to where the curve starts.
    pub(in crate::trim) heading: f64,
    /// How far it turns, counter-clockwise positive.
    pub(in crate::trim) turn: f64,
}

impl Round {
    /// Whether the arc passes this direction from its centre.
    fn passes(&self, direction: f64) -> bool {
        let at = ahead(self.heading, direction, self.turn.signum());
        at <= self.turn.abs() + SAME_ANGLE || at >= 360.0 - SAME_ANGLE
    }
}

/// A line, or an arc, from one point to another.
#[derive(Debug, Clone, Copy)]
pub(in crate::trim) struct Curve {
    pub(in crate::trim) from: Xy,
    pub(in crate::trim) to: Xy,
    pub(in crate::trim) round: Option<Round>,
}

/// A movement of the plane that keeps distances: `x' = a x + b y + c`, `y' = d x + e y + f`.
#[derive(Debug, Clone, Copy)]
pub(in crate::trim) struct Motion {
    x: (f64, f64, f64),
    y: (f64, f64, f64),
}

impl Motion {
    /// The point `from` goes to `to`, directions turn by so many degrees, then x and y are multiplied by these signs about `to`.
    pub(in crate::trim) fn placing(from: Xy, degrees: f64, signs: Xy, to: Xy) -> Motion {
        let (sin, cos) = (num::sin_deg(degrees), num::cos_deg(degrees));
        let (x, y) = ((cos * signs.0, -sin * signs.0), (sin * signs.1, cos * signs.1));
        Motion { x: (x.0, x.1, to.0 - dot(x, from)), y: (y.0, y.1, to.1 - dot(y, from)) }
    }

    /// A turn about a point, counter-clockwise positive.
    pub(in crate::trim) fn turning(about: Xy, degrees: f64) -> Motion {
        Motion::placing(about, degrees, (1.0, 1.0), about)
    }

    pub(in crate::trim) fn point(&self, p: Xy) -> Xy {
        (self.x.0 * p.0 + self.x.1 * p.1 + self.x.2, self.y.0 * p.0 + self.y.1 * p.1 + self.y.2)
    }

    pub(in crate::trim) fn curve(&self, c: &Curve) -> Curve {
        let (from, to) = (self.point(c.from), self.point(c.to));
        let mirrors = self.x.0 * self.y.1 - self.x.1 * self.y.0 < 0.0;
        let round = c.round.map(|r| {
            let centre = self.point(r.centre);
            // A sharp fold's arc has no start to take the direction from.
            let tip = self.point(plus(r.centre, (num::cos_deg(r.heading), num::sin_deg(r.heading))));
            Round { centre, radius: r.radius, heading: heading(minus(tip, centre)), turn: if mirrors { -r.turn } else { r.turn } }
        });
        Curve { from, to, round }
    }

    pub(in crate::trim) fn curves(&self, all: &[Curve]) -> Vec<Curve> {
        all.iter().map(|c| self.curve(c)).collect()
    }
}

/// The box around a curve.
#[derive(Debug, Clone, Copy)]
pub(in crate::trim) struct Extent {
    pub(in crate::trim) least: Xy,
    pub(in crate::trim) greatest: Xy,
}

impl Extent {
    pub(in crate::trim) fn join(self, other: Extent) -> Extent {
        Extent {
            least: (self.least.0.min(other.least.0), self.least.1.min(other.least.1)),
            greatest: (self.greatest.0.max(other.greatest.0), self.greatest.1.max(other.greatest.1)),
        }
    }

    pub(in crate::trim) fn meets(&self, other: &Extent) -> bool {
        self.least.0 <= other.greatest.0 && other.least.0 <= self.greatest.0 && self.least.1 <= other.greatest.1 && other.least.1 <= self.greatest.1
    }
}

impl Curve {
    pub(in crate::trim) const fn line(from: Xy, to: Xy) -> Curve {
        Curve { from, to, round: None }
    }

    /// Whether it is too short to count.
    pub(in crate::trim) fn is_nothing(&self) -> bool {
        match self.round {
            Some(r) => r.radius * r.turn.abs() * num::RADIANS_PER_DEGREE < HAIR,
            None => length(minus(self.to, self.from)) < HAIR,
        }
    }

    pub(in crate::trim) fn reversed(&self) -> Curve {
        let round = self.round.map(|r| Round { heading: r.heading + r.turn, turn: -r.turn, ..r });
        Curve { from: self.to, to: self.from, round }
    }

    /// How far it goes to the left.
    pub(in crate::trim) fn least_x(&self) -> f64 {
        let ends = self.from.0.min(self.to.0);
        match self.round {
            Some(r) if r.passes(180.0) => ends.min(r.centre.0 - r.radius),
            _ => ends,
        }
    }

    /// The box around it, a little wider than it is.
    pub(in crate::trim) fn extent(&self) -> Extent {
        let ends = Extent {
            least: (self.from.0.min(self.to.0) - SAME, self.from.1.min(self.to.1) - SAME),
            greatest: (self.from.0.max(self.to.0) + SAME, self.from.1.max(self.to.1) + SAME),
        };
        let Some(r) = self.round else { return ends };
        let mut out = ends;
        for (direction, way) in [(0.0, (1.0, 0.0)), (90.0, (0.0, 1.0)), (180.0, (-1.0, 0.0)), (270.0, (0.0, -1.0))] {
            if r.passes(direction) {
                let p = plus(r.centre, times(way, r.radius + SAME));
                out = out.join(Extent { least: p, greatest: p });
            }
        }
        out
    }

    /// Least and greatest distance from a point, or beyond them.
    pub(in crate::trim) fn reach(&self, about: Xy) -> (f64, f64) {
        let (near, far) = match self.round {
            Some(r) => {
                let centre = length(minus(r.centre, about));
                ((centre - r.radius).abs(), centre + r.radius)
            }
            None => {
                let (from, along) = (minus(self.from, about), minus(self.to, self.from));
                let at = (-dot(from, along) / dot(along, along)).clamp(0.0, 1.0);
                (length(plus(from, times(along, at))), length(from).max(length(minus(self.to, about))))
            }
        };
        (near - SAME, far + SAME)
    }

    /// Whether a point that lies on its line or circle lies on it.
    pub(super) fn holds(&self, p: Xy) -> bool {
        match self.round {
            Some(r) => r.passes(heading(minus(p, r.centre))),
            None => {
                let along = minus(self.to, self.from);
                let at = dot(minus(p, self.from), along);
                let slack = SAME * length(along);
                at >= -slack && at <= dot(along, along) + slack
            }
        }
    }

    /// The points of it that lie so far from a centre.
    pub(in crate::trim) fn on_circle(&self, centre: Xy, radius: f64) -> Points {
        let found = match self.round {
            Some(r) => circles(r.centre, r.radius, centre, radius),
            None => line_and_circle(self.from, minus(self.to, self.from), centre, radius),
        };
        found.that(|p| self.holds(p))
    }

    /// Whether the two curves have a point in common.
    pub(in crate::trim) fn meets(&self, other: &Curve) -> bool {
        match (self.round, other.round) {
            (None, None) => lines_meet(self, other),
            (_, Some(r)) => {
                if let Some(own) = self.round
                    && length(minus(own.centre, r.centre)) < SAME
                    && (own.radius - r.radius).abs() < SAME
                {
                    return own.passes(r.heading) || own.passes(r.heading + r.turn) || r.passes(own.heading);
                }
                self.on_circle(r.centre, r.radius).that(|p| other.holds(p)).any()
            }
            (Some(r), None) => other.on_circle(r.centre, r.radius).that(|p| self.holds(p)).any(),
        }
    }

    /// The point of contact where an arc of this radius about `centre`, outside or inside, touches this curve's line or circle.
    fn touched_from(&self, centre: Xy, radius: f64) -> Points {
        match self.round {
            None => {
                let along = minus(self.to, self.from);
                let at = dot(minus(centre, self.from), along) / dot(along, along);
                Points::one(plus(self.from, times(along, at)))
            }
            Some(r) => {
                let way = minus(centre, r.centre);
                let far = length(way);
                if far < SAME {
                    return Points::default();
                }
                let unit = times(way, 1.0 / far);
                // Beyond the centre where the other circle holds this one.
                let side = if radius > r.radius && far < radius { -1.0 } else { 1.0 };
                Points::one(plus(r.centre, times(unit, side * r.radius)))
            }
        }
    }

    /// Where the centre of an arc of this radius lies, on a circle about `axis`, when it touches this curve's line or circle.
    fn touching_centres(&self, radius: f64, axis: Xy, orbit: f64) -> [Points; 2] {
        match self.round {
            None => {
                let along = minus(self.to, self.from);
                let normal = times((-along.1, along.0), radius / length(along));
                [1.0, -1.0].map(|side| line_and_circle(plus(self.from, times(normal, side)), along, axis, orbit))
            }
            Some(r) => [r.radius + radius, (r.radius - radius).abs()].map(|apart| circles(r.centre, apart, axis, orbit)),
        }
    }
}

/// At most two points.
#[derive(Debug, Clone, Copy, Default)]
pub(in crate::trim) struct Points {
    all: [Xy; 2],
    count: usize,
}

impl Points {
    fn one(p: Xy) -> Points {
        Points { all: [p, p], count: 1 }
    }

    fn two(a: Xy, b: Xy) -> Points {
        Points { all: [a, b], count: 2 }
    }

    pub(in crate::trim) fn iter(&self) -> impl Iterator<Item = Xy> + '_ {
        self.all.iter().copied().take(self.count)
    }

    fn that(&self, keep: impl Fn(Xy) -> bool) -> Points {
        let mut out = Points::default();
        for p in self.iter().filter(|p| keep(*p)) {
            if let Some(place) = out.all.get_mut(out.count) {
                *place = p;
                out.count += 1;
            }
        }
        out
    }

    fn any(&self) -> bool {
        self.count > 0
    }
}

/// A line through `from` in direction `along`, and a circle.
fn line_and_circle(from: Xy, along: Xy, centre: Xy, radius: f64) -> Points {
    let span = length(along);
    let unit = times(along, 1.0 / span);
    let back = minus(from, centre);
    let at = -dot(back, unit);
    let foot = plus(from, times(unit, at));
    let off = length(minus(foot, centre));
    if off > radius + SAME {
        return Points::default();
    }
    let half = ((radius - off) * (radius + off)).max(0.0).sqrt();
    Points::two(plus(foot, times(unit, -half)), plus(foot, times(unit, half)))
}

/// Two circles that are not one.
fn circles(a: Xy, ra: f64, b: Xy, rb: f64) -> Points {
    let way = minus(b, a);
    let apart = length(way);
    if apart < SAME || apart > ra + rb + SAME || apart < (ra - rb).abs() - SAME {
        return Points::default();
    }
    let unit = times(way, 1.0 / apart);
    let along = (apart + (ra - rb) * (ra + rb) / apart) / 2.0;
    let half = ((ra - along) * (ra + along)).max(0.0).sqrt();
    let foot = plus(a, times(unit, along));
    let side = (-unit.1 * half, unit.0 * half);
    Points::two(plus(foot, side), minus(foot, side))
}

/// Two straight stretches, their ends included; by exact signs.
fn lines_meet(a: &Curve, b: &Curve) -> bool {
    let side = |p: Xy, q: Xy, r: Xy| {
        let at = |p: Xy| Coord { x: p.0, y: p.1 };
        orient2d(at(p), at(q), at(r))
    };
    let parted = |s: f64, t: f64| (s > 0.0 && t > 0.0) || (s < 0.0 && t < 0.0);
    let (s, t) = (side(a.from, a.to, b.from), side(a.from, a.to, b.to));
    if parted(s, t) || parted(side(b.from, b.to, a.from), side(b.from, b.to, a.to)) {
        return false;
    }
    // In one line: only if their boxes meet.
    if s == 0.0 && t == 0.0 { a.extent().meets(&b.extent()) } else { true }
}

/// How far one curve turns about an axis, at most `most` degrees, until it first meets another that stands still and that it does not meet yet.
///
/// Exact: the first contact of two curves that were apart is an end of one on the other, or a touch of an arc; the ends and the centres of arcs run on circles
/// about the axis, so that each of these angles is the meeting of circles and lines.
pub(in crate::trim) fn first_contact(moving: &Curve, still: &Curve, axis: Xy, sign: f64, most: f64) -> Option<f64> {
    let mut first: Option<f64> = None;
    let mut take = |from: Xy, to: Xy| {
        let turn = ahead(heading(minus(from, axis)), heading(minus(to, axis)), sign);
        if turn <= most && first.is_none_or(|f| turn < f) {
            first = Some(turn);
        }
    };
    for p in [moving.from, moving.to] {
        for q in still.on_circle(axis, length(minus(p, axis))).iter() {
            take(p, q);
        }
    }
    for q in [still.from, still.to] {
        for p in moving.on_circle(axis, length(minus(q, axis))).iter() {
            take(p, q);
        }
    }
    if let Some(r) = moving.round {
        touches(&r, moving, still, axis, &mut |centre| take(r.centre, centre));
    }
    if let (Some(r), None) = (still.round, moving.round) {
        touches(&r, still, moving, axis, &mut |centre| take(centre, r.centre));
    }
    first
}

/// Every place of an arc's centre, on its way about the axis, where the arc touches the other curve.
fn touches(round: &Round, arc: &Curve, other: &Curve, axis: Xy, found: &mut impl FnMut(Xy)) {
    let orbit = length(minus(round.centre, axis));
    if orbit < SAME {
        return;
    }
    for centres in other.touching_centres(round.radius, axis, orbit) {
        for centre in centres.iter() {
            let back = heading(minus(round.centre, axis)) - heading(minus(centre, axis));
            for contact in other.touched_from(centre, round.radius).iter() {
                let home = Motion::turning(axis, back).point(contact);
                if other.holds(contact) && arc.holds(home) {
                    found(centre);
                }
            }
        }
    }
}
