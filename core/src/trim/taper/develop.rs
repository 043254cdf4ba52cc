//! The development: each leg's quadrilateral laid flat, one after another, with the bends between them.
//!
//! The legs are parallel at both ends, so each is a plane quadrilateral; the arc of a bend is the same at both ends, so the bend is a cylinder that is
//! swept from the one to the other, all of its rulings as long and in one direction. Both develop truly. Along a ruling the sheet keeps its length;
//! along the end sections it keeps the girth of the profile there.

use crate::error::{Error, ErrorKind};
use crate::num;

pub(super) type Flat2 = (f64, f64);

/// Where the laying stands: the near point of the ruling last laid, the direction along it, and its length.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ruling {
    pub(super) at: Flat2,
    pub(super) way: Flat2,
    pub(super) length: f64,
}

fn plus(p: Flat2, way: Flat2, by: f64) -> Flat2 {
    (p.0 + way.0 * by, p.1 + way.1 * by)
}

impl Ruling {
    /// The start edge on the y axis.
    pub(super) fn first(shift: Flat2, length: f64) -> Ruling {
        Ruling { at: (0.0, 0.0), way: (0.0, 1.0), length: ruling_length(shift, length) }
    }

    pub(super) fn far(&self) -> Flat2 {
        plus(self.at, self.way, self.length)
    }

    fn right(&self) -> Flat2 {
        (self.way.1, -self.way.0)
    }

    /// A point so far along the ruling and to its right.
    pub(super) fn point(&self, along: f64, across: f64) -> Flat2 {
        plus(plus(self.at, self.way, along), self.right(), across)
    }

    /// The ruling at the other side of a leg that runs this way in the section, so wide at the near and at the far end; and the leg's slant height,
    /// which is the distance between its two ends in its own plane.
    pub(super) fn across_leg(&self, shift: Flat2, heading: f64, widths: (f64, f64)) -> Result<(Ruling, f64), Error> {
        // What of the ruling runs along the leg's ends, and what square to them.
        let along = shift.0 * num::cos_deg(heading) + shift.1 * num::sin_deg(heading);
        let slant = (self.length * self.length - along * along).max(0.0).sqrt();
        let end = plus(plus((0.0, 0.0), self.way, along / self.length), self.right(), slant / self.length);
        let at = plus(self.at, end, widths.0);
        let far = plus(self.far(), end, widths.1);
        let (x, y) = (far.0 - at.0, far.1 - at.1);
        let length = num::hypot(x, y);
        if length <= 0.0 {
            return Err(Error::new(ErrorKind::Internal, "a ruling of no length"));
        }
        Ok((Ruling { at, way: (x / length, y / length), length }, slant))
    }
}

pub(super) fn ruling_length((x, y): Flat2, length: f64) -> f64 {
    (x * x + y * y + length * length).sqrt()
}

/// A bend between the sections: its arc starts this way and turns so far, and its rulings go this way.
pub(super) struct Sweep {
    pub(super) heading: f64,
    /// Degrees, counter-clockwise positive.
    pub(super) turn: f64,
    /// Developed radius: the allowance by the angle.
    pub(super) radius: f64,
    /// The rulings' shift in the section, by their length.
    pub(super) lean: Flat2,
}

/// Abscissas and weights of Gauss and Legendre on -1 to 1 (five points).
const GAUSS: [(f64, f64); 5] = [
    (0.0, 0.568_888_888_888_888_9),
    (0.538_469_310_105_683_1, 0.478_628_670_499_366_47),
    (-0.538_469_310_105_683_1, 0.478_628_670_499_366_47),
    (0.906_179_845_938_664, 0.236_926_885_056_189_08),
    (-0.906_179_845_938_664, 0.236_926_885_056_189_08),
];

impl Sweep {
    /// How much of a step along the arc runs along the ruling, at this share of the turn.
    fn leaning(&self, share: f64) -> f64 {
        let heading = self.heading + self.turn * share;
        self.lean.0 * num::cos_deg(heading) + self.lean.1 * num::sin_deg(heading)
    }

    /// How far along the ruling the arc comes by this share of it, in closed form.
    pub(super) fn along(&self, share: f64) -> f64 {
        let (h, k) = (self.heading, self.heading + self.turn * share);
        let swept = self.lean.0 * (num::sin_deg(k) - num::sin_deg(h)) - self.lean.1 * (num::cos_deg(k) - num::cos_deg(h));
        if self.turn < 0.0 { -self.radius * swept } else { self.radius * swept }
    }

    /// How far across the rulings the arc comes from one share to another that is near to it: the integral of the arc square to the ruling.
    pub(super) fn across(&self, from: f64, to: f64) -> f64 {
        let (middle, half) = ((from + to) / 2.0, (to - from) / 2.0);
        let sum: f64 = GAUSS
            .iter()
            .map(|(x, weight)| {
                let leaning = self.leaning(middle + half * x);
                weight * (1.0 - leaning * leaning).max(0.0).sqrt()
            })
            .sum();
        self.radius * self.turn.abs() * num::RADIANS_PER_DEGREE * half * sum
    }

    /// How many chords keep to the tolerance, and keep the integral good: an even number.
    pub(super) fn chords(&self, tolerance: f64) -> Result<u32, Error> {
        const MOST: f64 = 10_000.0;
        let lean = num::hypot(self.lean.0, self.lean.1);
        // The curve's direction against the ruling turns by at most tan of the lean for each angle of the arc.
        let bow = self.radius * lean / (1.0 - lean * lean).max(f64::MIN_POSITIVE).sqrt();
        let turn = self.turn.abs() * num::RADIANS_PER_DEGREE;
        let pairs = (turn * (bow / (8.0 * tolerance)).sqrt() / 2.0).ceil().max((turn.abs() / 0.2).ceil()).max(1.0);
        if 2.0 * pairs > MOST || !pairs.is_finite() {
            return Err(Error::new(ErrorKind::TooLarge, "the line in a bend would need too many points")
                .at("tolerance")
                .value_of(format_args!("{tolerance} mm"))
                .accepts("a tolerance that 10 000 points in a bend can keep"));
        }
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 2 and 10 000")]
        Ok(2 * pairs as u32)
    }
}
