//! The edges of a plane in plan, so held that what lies far away is passed over.

use super::Plane;
use super::vertex::Vertex;

pub(super) type V2 = [f64; 2];

/// Edges that are not halved any more.
const FEW: usize = 8;
/// Rounding must not hide an edge: places this near to a box, in millimetres, count as in it.
const MARGIN: f64 = 1e-3;

/// An upright rectangle, in millimetres.
#[derive(Debug, Clone, Copy)]
pub(super) struct Around {
    low: V2,
    high: V2,
}

impl Around {
    pub(super) fn of((a, b): (V2, V2)) -> Around {
        Around { low: [a[0].min(b[0]) - MARGIN, a[1].min(b[1]) - MARGIN], high: [a[0].max(b[0]) + MARGIN, a[1].max(b[1]) + MARGIN] }
    }

    fn with(self, other: Around) -> Around {
        let low = [self.low[0].min(other.low[0]), self.low[1].min(other.low[1])];
        Around { low, high: [self.high[0].max(other.high[0]), self.high[1].max(other.high[1])] }
    }

    fn meets(&self, other: &Around) -> bool {
        self.low[0] <= other.high[0] && other.low[0] <= self.high[0] && self.low[1] <= other.high[1] && other.low[1] <= self.high[1]
    }

    /// The square of the distance of a place, 0 within.
    fn from(&self, p: V2) -> f64 {
        let off = |low: f64, at: f64, high: f64| (low - at).max(at - high).max(0.0);
        let (x, y) = (off(self.low[0], p[0], self.high[0]), off(self.low[1], p[1], self.high[1]));
        x * x + y * y
    }
}

/// A stretch of a ring, the box round it, and its halves.
struct Chain {
    from: usize,
    to: usize,
    around: Around,
    halves: Option<[usize; 2]>,
}

/// The edges of a plane, ring by ring, each ring halved and halved again.
///
/// A question about a place goes down only those stretches whose boxes are near it, so that one face with thousands of corners takes hardly more of a small
/// neighbour's time than another small one.
pub(super) struct PlanEdges {
    edges: Vec<(V2, V2)>,
    chains: Vec<Chain>,
    /// The chain of each whole ring.
    rings: Vec<usize>,
    inner: Option<V2>,
}

impl PlanEdges {
    /// In millimetres from a vertex.
    pub(super) fn of(plane: &Plane, origin: Vertex) -> PlanEdges {
        let at = |v: &Vertex| {
            let d = v.from(origin);
            [d[0], d[1]]
        };
        let rings = plane.rings.iter().map(|ring| ring.iter().map(at).collect());
        PlanEdges::round(rings)
    }

    fn round(rings: impl Iterator<Item = Vec<V2>>) -> PlanEdges {
        let mut out = PlanEdges { edges: Vec::new(), chains: Vec::new(), rings: Vec::new(), inner: None };
        for ring in rings {
            let first = out.edges.len();
            out.edges.extend(ring.iter().zip(ring.iter().cycle().skip(1)).map(|(a, b)| (*a, *b)));
            let chain = halve(&out.edges, first, out.edges.len(), &mut out.chains);
            out.rings.extend(chain);
        }
        out.inner = inner_point(&out.edges);
        out
    }

    /// Some point well inside.
    pub(super) fn inner_point(&self) -> Option<V2> {
        self.inner
    }

    /// The box round everything.
    pub(super) fn around(&self) -> Option<Around> {
        self.rings.iter().filter_map(|r| self.chains.get(*r)).map(|c| c.around).reduce(Around::with)
    }

    /// Goes down every chain that is let in, to its edges.
    fn walk(&self, mut enter: impl FnMut(&Chain, &[(V2, V2)]) -> bool, mut at: impl FnMut(&(V2, V2))) {
        let mut open = self.rings.clone();
        while let Some(chain) = open.pop().and_then(|c| self.chains.get(c)) {
            let edges = self.edges.get(chain.from..chain.to).unwrap_or_default();
            match chain.halves {
                _ if !enter(chain, edges) => {}
                Some(halves) => open.extend(halves),
                None => edges.iter().for_each(&mut at),
            }
        }
    }

    /// The edges whose boxes meet this one.
    pub(super) fn near(&self, place: &Around) -> Vec<(V2, V2)> {
        let mut out = Vec::new();
        self.walk(
            |chain, _| chain.around.meets(place),
            |edge| {
                if Around::of(*edge).meets(place) {
                    out.push(*edge)
                }
            },
        );
        out
    }

    /// Whether a place lies inside: an odd number of edges lies right of it.
    fn is_inside(&self, p: V2) -> bool {
        let crossed = core::cell::Cell::new(false);
        self.walk(
            |chain, edges| {
                let Around { low, high } = chain.around;
                if high[1] <= p[1] || low[1] > p[1] || high[0] <= p[0] {
                    return false;
                }
                if low[0] > p[0] {
                    // All of it lies right of the place: it goes over its height an odd number of times if its ends lie on two sides of it.
                    let over = |v: V2| v[1] > p[1];
                    let ends = edges.first().zip(edges.last()).is_some_and(|((a, _), (_, b))| over(*a) != over(*b));
                    crossed.set(crossed.get() != ends);
                    return false;
                }
                true
            },
            |(a, b)| {
                let right = (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0] + (p[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0]);
                crossed.set(crossed.get() != right);
            },
        );
        crossed.get()
    }

    /// How far inside the edges a place lies; 0 outside.
    pub(super) fn depth(&self, p: V2) -> f64 {
        if !self.is_inside(p) {
            return 0.0;
        }
        let nearest = core::cell::Cell::new(f64::INFINITY);
        self.walk(
            |chain, _| chain.around.from(p) <= nearest.get(),
            |(a, b)| {
                let (d, e) = ([b[0] - a[0], b[1] - a[1]], [p[0] - a[0], p[1] - a[1]]);
                let t = ((d[0] * e[0] + d[1] * e[1]) / (d[0] * d[0] + d[1] * d[1])).clamp(0.0, 1.0);
                let off = [e[0] - t * d[0], e[1] - t * d[1]];
                nearest.set(nearest.get().min(off[0] * off[0] + off[1] * off[1]));
            },
        );
        nearest.get().sqrt()
    }
}

/// The number of the chain of these edges; none for no edge.
fn halve(edges: &[(V2, V2)], from: usize, to: usize, chains: &mut Vec<Chain>) -> Option<usize> {
    let (around, halves) = if to - from > FEW {
        let middle = from + (to - from) / 2;
        let halves = [halve(edges, from, middle, chains)?, halve(edges, middle, to, chains)?];
        (halves.iter().filter_map(|h| chains.get(*h)).map(|c| c.around).reduce(Around::with)?, Some(halves))
    } else {
        (edges.get(from..to)?.iter().map(|e| Around::of(*e)).reduce(Around::with)?, None)
    };
    chains.push(Chain { from, to, around, halves });
    Some(chains.len() - 1)
}

/// The widest place of a level cut between two vertices.
fn inner_point(edges: &[(V2, V2)]) -> Option<V2> {
    let mut heights: Vec<f64> = edges.iter().map(|(a, _)| a[1]).collect();
    heights.sort_by(f64::total_cmp);
    let (low, high) = heights.iter().zip(heights.iter().skip(1)).max_by(|a, b| (a.1 - a.0).total_cmp(&(b.1 - b.0)))?;
    let y = (low + high) / 2.0;
    let mut cuts: Vec<f64> = edges.iter().filter(|(a, b)| (a[1] > y) != (b[1] > y)).map(|(a, b)| a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0])).collect();
    cuts.sort_by(f64::total_cmp);
    let (left, right) = cuts.chunks_exact(2).filter_map(|c| Some((*c.first()?, *c.last()?))).max_by(|a, b| (a.1 - a.0).total_cmp(&(b.1 - b.0)))?;
    Some([(left + right) / 2.0, y])
}

#[cfg(test)]
mod tests {
    use super::{Around, FEW, PlanEdges, V2};
    use crate::num;
    use proptest::prelude::*;

    fn star(radii: &[f64], at: V2) -> Vec<V2> {
        let n = radii.len() as f64;
        radii.iter().enumerate().map(|(k, r)| [at[0] + r * num::cos_deg(360.0 * k as f64 / n), at[1] + r * num::sin_deg(360.0 * k as f64 / n)]).collect()
    }

    /// How far inside a place lies, by every edge.
    fn depth_by_all(p: V2, edges: &[(V2, V2)]) -> f64 {
        let crossing = |(a, b): &&(V2, V2)| (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0] + (p[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0]);
        if edges.iter().filter(crossing).count() % 2 == 0 {
            return 0.0;
        }
        let off = |(a, b): &(V2, V2)| {
            let (d, e) = ([b[0] - a[0], b[1] - a[1]], [p[0] - a[0], p[1] - a[1]]);
            let t = ((d[0] * e[0] + d[1] * e[1]) / (d[0] * d[0] + d[1] * d[1])).clamp(0.0, 1.0);
            let off = [e[0] - t * d[0], e[1] - t * d[1]];
            off[0] * off[0] + off[1] * off[1]
        };
        edges.iter().map(off).fold(f64::INFINITY, f64::min).sqrt()
    }

    proptest! {
        #[test]
        fn depth_and_neighbours_are_those_of_trying_all(
            outer in prop::collection::vec(50.0..100.0_f64, 3..200), hole in prop::collection::vec(5.0..40.0_f64, 3..30), with_hole in any::<bool>(),
            places in prop::collection::vec((-110.0..110.0_f64, -110.0..110.0_f64), 1..30)
        ) {
            let rings = core::iter::once(star(&outer, [0.0; 2])).chain(with_hole.then(|| star(&hole, [1.0, 2.0])));
            let all = PlanEdges::round(rings);
            for (x, y) in places {
                prop_assert_eq!(all.depth([x, y]).to_bits(), depth_by_all([x, y], &all.edges).to_bits());
                let place = Around::of(([x, y], [x + 9.0, y + 7.0]));
                let (mut near, mut tried) = (all.near(&place), all.edges.iter().filter(|e| Around::of(**e).meets(&place)).copied().collect::<Vec<_>>());
                near.sort_by(|a, b| a.partial_cmp(b).unwrap());
                tried.sort_by(|a, b| a.partial_cmp(b).unwrap());
                prop_assert_eq!(near, tried);
            }
        }
    }

    #[test]
    fn one_more_doubling_of_the_corners_is_one_more_step() {
        // A saw of so many teeth on the top edge: how many chains a place beside one tooth is asked of.
        let entered = |teeth: u32| {
            let top = (0..teeth).rev().flat_map(|k| [[f64::from(k) + 0.9, 10.0], [f64::from(k) + 0.5, 11.0]]);
            let ring: Vec<V2> = [[0.0, 0.0], [f64::from(teeth), 0.0]].into_iter().chain(top).collect();
            let all = PlanEdges::round(core::iter::once(ring));
            let place = Around::of(([f64::from(teeth / 2), 10.2], [f64::from(teeth / 2) + 0.3, 10.8]));
            let mut count = 0_u32;
            all.walk(
                |chain, _| {
                    count += 1;
                    chain.around.meets(&place)
                },
                |_| {},
            );
            count
        };
        for doublings in 6..16 {
            assert!(entered(1 << doublings) <= 4 * doublings + 8, "{doublings}: {} chains of up to {FEW} edges", entered(1 << doublings));
        }
    }
}
