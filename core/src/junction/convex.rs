//! Convex pieces of a section, and how deep one lies in another.

/// A point in millimetres.
pub(super) type P = (f64, f64);

/// A convex piece with its box.
#[derive(Debug, Clone)]
pub(super) struct Convex {
    points: Vec<P>,
    low: P,
    high: P,
}

impl Convex {
    pub(super) fn new(points: Vec<P>) -> Convex {
        let mut out = Convex { points, low: (f64::INFINITY, f64::INFINITY), high: (f64::NEG_INFINITY, f64::NEG_INFINITY) };
        for p in &out.points {
            out.low = (out.low.0.min(p.0), out.low.1.min(p.1));
            out.high = (out.high.0.max(p.0), out.high.1.max(p.1));
        }
        out
    }

    pub(super) fn centre(&self) -> P {
        (f64::midpoint(self.low.0, self.high.0), f64::midpoint(self.low.1, self.high.1))
    }

    /// Whether the boxes are apart by more than this.
    pub(super) fn is_far(&self, other: &Convex, touch: f64) -> bool {
        self.low.0 > other.high.0 + touch || other.low.0 > self.high.0 + touch || self.low.1 > other.high.1 + touch || other.low.1 > self.high.1 + touch
    }

    /// How far the one must be moved, the shortest way, to be out of the other; less than zero where they are apart.
    ///
    /// Two convex pieces are apart where they are apart seen along an edge of either.
    pub(super) fn depth(&self, other: &Convex, touch: f64) -> f64 {
        let mut least = f64::INFINITY;
        for piece in [self, other] {
            for (a, b) in piece.points.iter().zip(piece.points.iter().cycle().skip(1)) {
                let (x, y) = (b.0 - a.0, b.1 - a.1);
                let length = (x * x + y * y).sqrt();
                if length == 0.0 {
                    continue;
                }
                let normal = (y / length, -x / length);
                let ((l0, h0), (l1, h1)) = (self.seen(normal), other.seen(normal));
                least = least.min((h0 - l1).min(h1 - l0));
                if least < -touch {
                    return least;
                }
            }
        }
        least
    }

    fn seen(&self, normal: P) -> (f64, f64) {
        self.points.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), p| {
            let d = p.0 * normal.0 + p.1 * normal.1;
            (low.min(d), high.max(d))
        })
    }
}
