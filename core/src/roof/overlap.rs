//! Near pairs, and planes that overlap in plan.

use super::plan_edges::{Around, PlanEdges, V2};
use super::vertex::Vertex;

/// The upright rectangle round something in plan, in picometres.
#[derive(Debug, Clone, Copy)]
pub(super) struct Box2 {
    low: [i64; 2],
    high: [i64; 2],
}

impl Box2 {
    pub(super) fn round<'a>(vertices: impl IntoIterator<Item = &'a Vertex>) -> Box2 {
        let mut b = Box2 { low: [i64::MAX; 2], high: [i64::MIN; 2] };
        for v in vertices {
            let (x, y) = (v.x.pm(), v.y.pm());
            b.low = [b.low[0].min(x), b.low[1].min(y)];
            b.high = [b.high[0].max(x), b.high[1].max(y)];
        }
        b
    }

    fn meets(&self, other: &Box2) -> bool {
        let apart = |axis: usize| self.low.get(axis) > other.high.get(axis) || other.low.get(axis) > self.high.get(axis);
        !apart(0) && !apart(1)
    }

    fn with(self, other: Box2) -> Box2 {
        let [low, high] = [(self.low, other.low), (self.high, other.high)];
        Box2 { low: [low.0[0].min(low.1[0]), low.0[1].min(low.1[1])], high: [high.0[0].max(high.1[0]), high.0[1].max(high.1[1])] }
    }

    fn grown(self, by: i64) -> Box2 {
        Box2 { low: self.low.map(|c| c.saturating_sub(by)), high: self.high.map(|c| c.saturating_add(by)) }
    }
}

/// Every two boxes that come within twice `margin` of each other, lower number first, in order; with a margin below zero, that lie so deep in each other.
///
/// Boxes are halved by their middles, across the wider way, until few are left; two halves whose own boxes part have no pair between them. So the work grows
/// as n log n with the boxes, wherever they lie, and with the pairs that there are.
pub(super) fn near_pairs(boxes: &[Box2], margin: i64) -> Vec<(usize, usize)> {
    let mut items: Vec<(usize, Box2)> = boxes.iter().map(|b| b.grown(margin)).enumerate().collect();
    let mut nodes = Vec::with_capacity(items.len() / 2 + 1);
    let Some(root) = halve(&mut items, 0, &mut nodes) else { return Vec::new() };
    let (mut pairs, mut open) = (Vec::new(), vec![(root, root)]);
    while let Some((a, b)) = open.pop() {
        let (Some(one), Some(two)) = (nodes.get(a), nodes.get(b)) else { continue };
        if !one.around.meets(&two.around) {
            continue;
        }
        match (one.halves, two.halves) {
            (Some([low, high]), _) if a == b => open.extend([(low, low), (high, high), (low, high)]),
            (Some([low, high]), _) if two.halves.is_none() || one.count() >= two.count() => open.extend([(low, b), (high, b)]),
            (_, Some([low, high])) => open.extend([(a, low), (a, high)]),
            _ => {
                let of = |node: &Node| items.get(node.from..node.to).unwrap_or_default();
                for (k, (i, first)) in of(one).iter().enumerate() {
                    let rest = of(two).iter().skip(if a == b { k + 1 } else { 0 });
                    pairs.extend(rest.filter(|(_, second)| first.meets(second)).map(|(j, _)| (*i.min(j), *i.max(j))));
                }
            }
        }
    }
    pairs.sort_unstable();
    pairs
}

/// Boxes that are not halved any more.
const FEW: usize = 8;

/// A stretch of boxes, the box around them, and its halves.
struct Node {
    from: usize,
    to: usize,
    around: Box2,
    halves: Option<[usize; 2]>,
}

impl Node {
    fn count(&self) -> usize {
        self.to - self.from
    }
}

/// The number of the node of these boxes, the first of which is number `from`; none for no box.
fn halve(items: &mut [(usize, Box2)], from: usize, nodes: &mut Vec<Node>) -> Option<usize> {
    let around = items.iter().map(|(_, b)| *b).reduce(Box2::with)?;
    let count = items.len();
    let halves = if count > FEW {
        let middle = |b: &Box2, axis: usize| b.low.get(axis).zip(b.high.get(axis)).map_or(0, |(l, h)| i128::from(*l) + i128::from(*h));
        let spread = |axis: usize| {
            let middles = || items.iter().map(|(_, b)| middle(b, axis));
            middles().max().unwrap_or(0) - middles().min().unwrap_or(0)
        };
        let axis = usize::from(spread(1) > spread(0));
        items.select_nth_unstable_by_key(count / 2, |(i, b)| (middle(b, axis), *i));
        let (low, high) = items.split_at_mut(count / 2);
        halve(low, from, nodes).zip(halve(high, from + count / 2, nodes)).map(|(low, high)| [low, high])
    } else {
        None
    };
    nodes.push(Node { from, to: from + count, around, halves });
    Some(nodes.len() - 1)
}

/// Points of `these` edges at which it could lie deepest inside `those`: the ends, the crossings, and the middles between. What is far from `those` is left out.
fn probes(these: &PlanEdges, those: &PlanEdges) -> Vec<V2> {
    let mut out = Vec::new();
    for (a, b) in those.around().map(|around| these.near(&around)).unwrap_or_default() {
        let r = [b[0] - a[0], b[1] - a[1]];
        let mut cuts = vec![0.0, 1.0];
        for (c, d) in those.near(&Around::of((a, b))) {
            let s = [d[0] - c[0], d[1] - c[1]];
            let both = r[0] * s[1] - r[1] * s[0];
            let ac = [c[0] - a[0], c[1] - a[1]];
            let (t, u) = ((ac[0] * s[1] - ac[1] * s[0]) / both, (ac[0] * r[1] - ac[1] * r[0]) / both);
            if t > 0.0 && t < 1.0 && (0.0..=1.0).contains(&u) {
                cuts.push(t);
            }
        }
        cuts.sort_by(f64::total_cmp);
        let at = |t: f64| [a[0] + t * r[0], a[1] + t * r[1]];
        out.push(a);
        out.extend(cuts.iter().zip(cuts.iter().skip(1)).map(|(s, t)| at((s + t) / 2.0)));
    }
    out
}

/// How deep two planes lie in each other in plan, in millimetres, where that is more than the tolerance.
pub(super) fn overlap(a: &PlanEdges, b: &PlanEdges, tolerance: f64) -> Option<f64> {
    let on_a = probes(a, b).into_iter().map(|p| b.depth(p));
    let on_b = probes(b, a).into_iter().map(|p| a.depth(p));
    // Where the outlines coincide, only a point inside tells.
    let inside = [a.inner_point().map(|p| b.depth(p)), b.inner_point().map(|p| a.depth(p))].into_iter().flatten();
    let deepest = on_a.chain(on_b).chain(inside).fold(0.0, f64::max);
    (deepest > tolerance).then_some(deepest)
}

#[cfg(test)]
mod tests {
    use super::{Box2, near_pairs};
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn near_pairs_are_those_of_trying_all(
            boxes in prop::collection::vec((-500_i64..500, -500_i64..500, 0_i64..60, 0_i64..60), 0..120), flat in 0..3_u8, margin in 0_i64..20
        ) {
            // All in a row or a column, too.
            let boxes: Vec<Box2> = boxes
                .into_iter()
                .map(|(x, y, w, h)| (if flat == 1 { 0 } else { x }, if flat == 2 { 0 } else { y }, w, h))
                .map(|(x, y, w, h)| Box2 { low: [x, y], high: [x + w, y + h] })
                .collect();
            let mut all = Vec::new();
            for i in 0..boxes.len() {
                for j in i + 1..boxes.len() {
                    let (a, b) = (boxes[i].grown(margin), boxes[j].grown(margin));
                    if (0..2).all(|k| a.low[k] <= b.high[k] && b.low[k] <= a.high[k]) {
                        all.push((i, j));
                    }
                }
            }
            prop_assert_eq!(near_pairs(&boxes, margin), all);
        }
    }
}
