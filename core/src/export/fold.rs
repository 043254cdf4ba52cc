//! The folded section as stretches of its middle line, and its two faces; y upwards.

use crate::num;
use crate::trim::{Direction, Face, Flat, FlatBend, Part};

/// A point of a section.
pub(super) type Point = (f64, f64);

/// How a section is drawn: true at a scale, or with the sheet thicker and the bends opened to match, so that hems stay legible.
#[derive(Debug, Clone, Copy)]
pub(super) struct Drawn {
    /// Drawn length of a millimetre.
    pub(super) scale: f64,
    /// Least drawn thickness.
    pub(super) least_thickness: f64,
    /// Least drawn inside radius.
    pub(super) least_radius: f64,
    /// Degrees by which the whole is turned, counter-clockwise; at 0 the first leg that is no hem runs to the right.
    pub(super) turned: f64,
}

impl Drawn {
    /// True to the metal, in millimetres divided by `unit`.
    pub(super) const fn truly(unit: f64, turned: f64) -> Drawn {
        Drawn { scale: 1.0 / unit, least_thickness: 0.0, least_radius: 0.0, turned }
    }
}

/// A straight or bent stretch of the middle line.
#[derive(Debug, Clone, Copy)]
pub(super) enum Stretch {
    Leg { part: Part, from: Point, to: Point, heading: f64 },
    Bend { part: Part, centre: Point, radius: f64, from: Point, heading: f64, sweep: f64 },
}

/// A stretch of a face.
#[derive(Debug, Clone, Copy)]
pub(super) enum Trace {
    Line { to: Point },
    Arc { radius: f64, sweep: f64, to: Point },
}

/// A folded section.
#[derive(Debug)]
pub(super) struct Fold {
    pub(super) stretches: Vec<Stretch>,
    /// Half the drawn thickness.
    pub(super) half: f64,
    /// Whether the drawn thickness and the drawn radii are those of the metal.
    pub(super) is_true: bool,
}

fn along(p: Point, heading: f64, by: f64) -> Point {
    (p.0 + by * num::cos_deg(heading), p.1 + by * num::sin_deg(heading))
}

/// A point to the left of one who walks this way.
pub(super) fn left_of(p: Point, heading: f64, by: f64) -> Point {
    (p.0 - by * num::sin_deg(heading), p.1 + by * num::cos_deg(heading))
}

const fn sign(direction: Direction) -> f64 {
    match direction {
        Direction::Up => 1.0,
        Direction::Down => -1.0,
    }
}

/// How far the bend reaches beyond its tangent line along the leg, at this radius: to the corner up to the square, to the outermost line beyond.
fn reach(radius: f64, degrees: f64) -> f64 {
    if degrees <= 90.0 { radius * num::tan_deg(degrees / 2.0) } else { radius }
}

/// A bend as drawn.
struct Opened<'a> {
    bend: &'a FlatBend,
    degrees: f64,
    /// Radius of the middle line.
    radius: f64,
    /// By how much it now reaches further than in truth.
    more: f64,
}

/// Beside each bend the leg towards the nearer edge, in millimetres: the return of a hem.
fn outer_legs(flat: &Flat) -> impl Iterator<Item = f64> {
    let legs = flat.legs();
    flat.bends().iter().enumerate().map(move |(i, bend)| {
        let outer = if bend.part.is_of_start_edge() { i } else { i + 1 };
        legs.get(outer).map_or(0.0, |leg| leg.length().mm())
    })
}

/// How far a fold past 180 degrees closes until the end of its return, this long, comes to the inside of its leg, with either face; at most so far.
fn closing(most: f64, radius: f64, half: f64, back: f64) -> f64 {
    let (inside, outside) = (radius - half, radius + half);
    let clear = |degrees: f64| {
        let (sin, cos) = (num::sin_deg(degrees), num::cos_deg(degrees));
        inside - inside * cos + back * sin >= 0.0 && inside - outside * cos + back * sin >= 0.0
    };
    let mut degrees = 180.0;
    while degrees < most && clear(degrees + 0.25) {
        degrees += 0.25;
    }
    degrees.min(most)
}

impl Fold {
    /// Folds the flat again.
    pub(super) fn of(flat: &Flat, drawn: Drawn) -> Fold {
        let thickness = flat.thickness().mm() * drawn.scale;
        let half = thickness.max(drawn.least_thickness) / 2.0;
        let mut is_true = thickness >= drawn.least_thickness;
        let mut bends = Vec::with_capacity(flat.bends().len());
        for bend in flat.bends() {
            let inside = bend.inside_radius.mm() * drawn.scale;
            if inside < drawn.least_radius {
                is_true = false;
            }
            let (true_radius, radius) = (inside + thickness / 2.0, inside.max(drawn.least_radius) + half);
            let degrees = bend.angle.degrees();
            bends.push(Opened { bend, degrees, radius, more: reach(radius, degrees) - reach(true_radius, degrees) });
        }
        if half > thickness / 2.0 {
            // What closes past 180 degrees ends on its leg: the return, drawn thicker, ends there earlier.
            for (opened, leg) in bends.iter_mut().zip(outer_legs(flat)) {
                if opened.degrees > 180.0 {
                    opened.degrees = closing(opened.degrees, opened.radius, half, leg * drawn.scale);
                }
            }
        }
        let mut heading = drawn.turned - bends.iter().take_while(|o| o.bend.part.is_of_start_edge()).map(|o| sign(o.bend.direction) * o.degrees).sum::<f64>();
        let mut at = (0.0, 0.0);
        let mut stretches = Vec::with_capacity(2 * bends.len() + 1);
        let mut before = 0.0;
        let mut rest = bends.iter();
        for leg in flat.legs() {
            let next = rest.next();
            let taken = before + next.map_or(0.0, |o| o.more);
            let length = leg.length().mm() * drawn.scale;
            // A leg shorter than what its opened bends take keeps a short stretch, so that it can be seen.
            let shown = if taken > 0.0 { (length - taken).max(length.min(half)) } else { length - taken };
            let to = along(at, heading, shown);
            stretches.push(Stretch::Leg { part: leg.part, from: at, to, heading });
            at = to;
            if let Some(Opened { bend, degrees, radius, more }) = next {
                let turn = sign(bend.direction);
                let centre = left_of(at, heading, turn * radius);
                let sweep = turn * degrees;
                stretches.push(Stretch::Bend { part: bend.part, centre, radius: *radius, from: at, heading, sweep });
                heading += sweep;
                at = left_of(centre, heading, -turn * radius);
                before = *more;
            }
        }
        Fold { stretches, half, is_true }
    }

    /// A face from the start edge to the end edge: where it begins, and its stretches.
    pub(super) fn face(&self, face: Face) -> (Point, Vec<Trace>) {
        let side = match face {
            Face::Upper => self.half,
            Face::Lower => -self.half,
        };
        let mut start = (0.0, 0.0);
        let mut out = Vec::with_capacity(self.stretches.len());
        for (i, stretch) in self.stretches.iter().enumerate() {
            match *stretch {
                Stretch::Leg { from, to, heading, .. } => {
                    if i == 0 {
                        start = left_of(from, heading, side);
                    }
                    out.push(Trace::Line { to: left_of(to, heading, side) });
                }
                Stretch::Bend { centre, radius, heading, sweep, .. } => {
                    let turn = if sweep < 0.0 { -1.0 } else { 1.0 };
                    let face_radius = radius - turn * side;
                    let to = left_of(centre, heading + sweep, -turn * face_radius);
                    // A sharp inside corner has no arc.
                    out.push(if face_radius > 1e-6 { Trace::Arc { radius: face_radius, sweep, to } } else { Trace::Line { to } });
                }
            }
        }
        (start, out)
    }

    /// The closed outline: the upper face forth and the lower face back.
    pub(super) fn outline(&self) -> (Point, Vec<Trace>) {
        let (start, mut out) = self.face(Face::Upper);
        let (low_start, low) = self.face(Face::Lower);
        if let Some(Trace::Line { to } | Trace::Arc { to, .. }) = low.last().copied() {
            out.push(Trace::Line { to });
        }
        for (i, trace) in low.iter().enumerate().rev() {
            let to = match i.checked_sub(1).and_then(|before| low.get(before)) {
                Some(Trace::Line { to } | Trace::Arc { to, .. }) => *to,
                None => low_start,
            };
            out.push(match *trace {
                Trace::Line { .. } => Trace::Line { to },
                Trace::Arc { radius, sweep, .. } => Trace::Arc { radius, sweep: -sweep, to },
            });
        }
        (start, out)
    }

    /// The middle line as short chords, for keeping clear of it.
    pub(super) fn chords(&self) -> Vec<(Point, Point)> {
        let mut out = Vec::new();
        for stretch in &self.stretches {
            match *stretch {
                Stretch::Leg { from, to, .. } => out.push((from, to)),
                Stretch::Bend { centre, radius, from, heading, sweep, .. } => {
                    let turn = if sweep < 0.0 { -1.0 } else { 1.0 };
                    let mut at = from;
                    for i in 1..=8 {
                        let to = left_of(centre, heading + sweep * f64::from(i) / 8.0, -turn * radius);
                        out.push((at, to));
                        at = to;
                    }
                }
            }
        }
        out
    }
}
