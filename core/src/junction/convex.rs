//! Convex pieces of a section, and how deep one lies in another.

/// A point in millimetres.
pub(super) type P = (f64, f64);

/// The corners of a piece: sheet, decks and seams have four.
#[derive(Debug, Clone)]
enum Points {
    Four([P; 4]),
    Many(Vec<P>),
}

/// A box around points.
#[derive(Debug, Clone, Copy)]
pub(super) struct Span {
    low: P,
    high: P,
}

impl Span {
    fn of(points: &[P]) -> Span {
        points.iter().fold(Span::EMPTY, |s, p| s.and(&Span { low: *p, high: *p }))
    }

    pub(super) const EMPTY: Span = Span { low: (f64::INFINITY, f64::INFINITY), high: (f64::NEG_INFINITY, f64::NEG_INFINITY) };

    pub(super) fn and(&self, other: &Span) -> Span {
        let low = (self.low.0.min(other.low.0), self.low.1.min(other.low.1));
        Span { low, high: (self.high.0.max(other.high.0), self.high.1.max(other.high.1)) }
    }

    /// Whether the boxes are apart by more than this.
    pub(super) fn is_far(&self, other: &Span, touch: f64) -> bool {
        self.low.0 > other.high.0 + touch || other.low.0 > self.high.0 + touch || self.low.1 > other.high.1 + touch || other.low.1 > self.high.1 + touch
    }
}

/// A convex piece with its box.
#[derive(Debug, Clone)]
pub(super) struct Convex {
    points: Points,
    span: Span,
}

impl Convex {
    pub(super) fn new(points: Vec<P>) -> Convex {
        let span = Span::of(&points);
        Convex { points: Points::Many(points), span }
    }

    pub(super) fn four(points: [P; 4]) -> Convex {
        let span = Span::of(&points);
        Convex { points: Points::Four(points), span }
    }

    fn points(&self) -> &[P] {
        match &self.points {
            Points::Four(points) => points,
            Points::Many(points) => points,
        }
    }

    pub(super) fn span(&self) -> &Span {
        &self.span
    }

    pub(super) fn centre(&self) -> P {
        let Span { low, high } = self.span;
        (f64::midpoint(low.0, high.0), f64::midpoint(low.1, high.1))
    }

    /// How far the one must be moved, the shortest way, to be out of the other; less than zero where they are apart. Anything under `least` may be given as
    /// what was seen first.
    ///
    /// Two convex pieces are apart where they are apart seen along an edge of either.
    pub(super) fn depth(&self, other: &Convex, least: f64) -> f64 {
        let mut depth = f64::INFINITY;
        for (piece, against) in [(self, other), (other, self)] {
            let points = piece.points();
            let mut before = points.last();
            for b in points {
                let Some(a) = before.replace(b) else { continue };
                let (x, y) = (b.0 - a.0, b.1 - a.1);
                let square = x * x + y * y;
                if square == 0.0 {
                    continue;
                }
                // Lengths along the edge's normal, that are yet to be divided by the edge's length.
                let normal = (y, -x);
                let ((l0, h0), (l1, h1)) = (seen(points, normal), seen(against.points(), normal));
                let short = (h0 - l1).min(h1 - l0);
                depth = depth.min(short / square.sqrt());
                if depth < least {
                    return depth;
                }
            }
        }
        depth
    }
}

fn seen(points: &[P], normal: P) -> (f64, f64) {
    points.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), p| {
        let d = p.0 * normal.0 + p.1 * normal.1;
        (low.min(d), high.max(d))
    })
}
