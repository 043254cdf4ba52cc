//! Whether a closed line of curves keeps clear of itself: boxes over runs of its curves, halved until two curves are left.

use super::curve::{Curve, Extent, Round, Xy, length, minus};
use robust::{Coord, orient2d};

/// Neighbours that part by less than this where they run on tangentially, in millimetres, still touch in their common end: a few picometres of rounding.
const JOINT: f64 = 4e-9;

/// Boxes over ever shorter runs of curves. Node `i` has the children `2 i + 1` and `2 i + 2`, and halves its run.
pub(in crate::trim) struct Boxes {
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
    pub(in crate::trim) fn over(curves: &[Curve]) -> Boxes {
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

    /// The first pair of curves, the first of them before the second in the list, for which `hit` says so, among those whose boxes meet; each pair is asked once.
    pub(in crate::trim) fn pair(&self, mut hit: impl FnMut(usize, usize) -> bool) -> Option<(usize, usize)> {
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

/// Whether curve `b`, which starts where `a` ends, meets it anywhere else: runs back over it, or crosses it once more.
fn runs_into(a: &Curve, b: &Curve) -> bool {
    match (a.round, b.round) {
        (None, None) => {
            let at = |p: Xy| Coord { x: p.0, y: p.1 };
            let (along, on) = (minus(a.to, a.from), minus(b.to, b.from));
            orient2d(at(a.from), at(a.to), at(b.to)) == 0.0 && along.0 * on.0 + along.1 * on.1 < 0.0
        }
        (Some(p), Some(q)) if length(minus(p.centre, q.centre)) < JOINT && (p.radius - q.radius).abs() < JOINT => {
            p.turn * q.turn < 0.0 || (p.turn + q.turn).abs() >= 360.0
        }
        (Some(p), Some(q)) => meets_beyond(a.to, a, (&q, b), p.turn.signum() / p.radius - q.turn.signum() / q.radius),
        (Some(p), None) => meets_beyond(a.to, b, (&p, a), 1.0 / p.radius),
        (None, Some(q)) => meets_beyond(a.to, a, (&q, b), 1.0 / q.radius),
    }
}

/// Whether a curve meets an arc elsewhere than in their joint. Two curves that join tangentially part as their curvatures do, so that rounding may find a
/// second point beside the first.
fn meets_beyond(joint: Xy, curve: &Curve, (circle, arc): (&Round, &Curve), curvature: f64) -> bool {
    curve.on_circle(circle.centre, circle.radius).iter().any(|p| {
        let off = length(minus(p, joint));
        off > JOINT && off * off * curvature.abs() / 2.0 > JOINT && arc.holds(p)
    })
}

/// Whether two curves of a closed line of so many meet where they must not: neighbours beyond their common end, others anywhere.
pub(in crate::trim) fn meet(curves: &[Curve], i: usize, j: usize) -> bool {
    let (Some(a), Some(b)) = (curves.get(i), curves.get(j)) else { return false };
    if j == i + 1 {
        runs_into(a, b)
    } else if i == 0 && j + 1 == curves.len() {
        runs_into(b, a)
    } else {
        a.meets(b)
    }
}
