//! Where a contour crosses itself: boxes over runs of its curves, halved until two curves are left.

use super::curve::{Curve, Extent, Round, length, minus};
use super::strip::{Contour, SheetPart};

/// Boxes over ever shorter runs of curves. Node `i` has the children `2 i + 1` and `2 i + 2`, and halves its run.
struct Boxes {
    nodes: Vec<Option<Extent>>,
    count: usize,
}

/// A node with the run of curves that it holds.
#[derive(Clone, Copy)]
struct Run {
    node: usize,
    from: usize,
    to: usize,
}

impl Run {
    fn halves(self) -> [Run; 2] {
        let middle = usize::midpoint(self.from, self.to);
        [Run { node: 2 * self.node + 1, from: self.from, to: middle }, Run { node: 2 * self.node + 2, from: middle, to: self.to }]
    }

    const fn is_one(self) -> bool {
        self.to - self.from == 1
    }
}

impl Boxes {
    fn over(curves: &[Curve]) -> Boxes {
        let mut out = Boxes { nodes: vec![None; 4 * curves.len() + 3], count: curves.len() };
        if !curves.is_empty() {
            out.fill(out.root(), curves);
        }
        out
    }

    fn root(&self) -> Run {
        Run { node: 0, from: 0, to: self.count }
    }

    fn fill(&mut self, run: Run, curves: &[Curve]) -> Option<Extent> {
        let extent = if run.is_one() {
            curves.get(run.from).map(Curve::extent)
        } else {
            let [a, b] = run.halves().map(|half| self.fill(half, curves));
            a.zip(b).map(|(a, b)| a.join(b))
        };
        if let Some(place) = self.nodes.get_mut(run.node) {
            *place = extent;
        }
        extent
    }

    fn extent(&self, run: Run) -> Option<&Extent> {
        self.nodes.get(run.node).and_then(Option::as_ref)
    }

    /// The first pair of curves, the first of them before the second in the contour, for which `hit` says so, among those whose boxes meet.
    fn pair(&self, hit: &mut impl FnMut(usize, usize) -> bool) -> Option<(usize, usize)> {
        if self.count == 0 {
            return None;
        }
        let mut open = vec![(self.root(), self.root())];
        while let Some((a, b)) = open.pop() {
            if a.from + 1 >= b.to || !self.extent(a).zip(self.extent(b)).is_some_and(|(x, y)| x.meets(y)) {
                continue;
            }
            match (a.is_one(), b.is_one()) {
                (true, true) => {
                    if a.from < b.from && hit(a.from, b.from) {
                        return Some((a.from, b.from));
                    }
                }
                // The longer run is halved; the first half is looked at first.
                (false, _) if b.is_one() || a.to - a.from >= b.to - b.from => open.extend(a.halves().into_iter().rev().map(|half| (half, b))),
                _ => open.extend(b.halves().into_iter().rev().map(|half| (a, half))),
            }
        }
        None
    }
}

/// Two neighbours of a contour meet where they join and nowhere else: a line runs square or tangent into what follows it, and two arcs touch from outside, or
/// one inside the other. Only two bends of one radius without a flat between them are one circle, which may close on itself.
fn neighbours_meet(a: &Curve, b: &Curve) -> bool {
    let one_circle = |p: Round, q: Round| length(minus(p.centre, q.centre)) < 1e-9 && (p.radius - q.radius).abs() < 1e-9 && p.turn * q.turn > 0.0;
    match (a.round, b.round) {
        (Some(p), Some(q)) => one_circle(p, q) && (p.turn + q.turn).abs() >= 360.0,
        _ => false,
    }
}

/// Two pieces of the sheet that overlap, if it crosses itself; the one nearer to the start edge first.
pub(super) fn self_crossing(contour: &Contour) -> Option<(SheetPart, SheetPart)> {
    let (curves, count) = (&contour.curves, contour.curves.len());
    let boxes = Boxes::over(curves);
    let found = boxes.pair(&mut |i, j| {
        let (Some(a), Some(b)) = (curves.get(i), curves.get(j)) else { return false };
        if j == i + 1 || (i == 0 && j + 1 == count) { neighbours_meet(a, b) } else { a.meets(b) }
    });
    let (one, other) = found.and_then(|(i, j)| Some((*contour.pieces.get(i)?, *contour.pieces.get(j)?)))?;
    let place = |p: SheetPart| match p {
        SheetPart::Leg(part) => (part, 0),
        SheetPart::Bend(part) => (part, 1),
    };
    Some(if place(one) <= place(other) { (one, other) } else { (other, one) })
}
