//! Near pairs, and planes that overlap in plan.

use super::Plane;
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

    fn grown(self, by: i64) -> Box2 {
        Box2 { low: self.low.map(|c| c.saturating_sub(by)), high: self.high.map(|c| c.saturating_add(by)) }
    }
}

/// Every two boxes that come within `margin` of each other, lower number first, in order.
pub(super) fn near_pairs(boxes: &[Box2], margin: i64) -> Vec<(usize, usize)> {
    let mut order: Vec<(usize, Box2)> = boxes.iter().map(|b| b.grown(margin)).enumerate().collect();
    order.sort_by_key(|(i, b)| (b.low[0], *i));
    let mut open: Vec<(usize, Box2)> = Vec::new();
    let mut pairs = Vec::new();
    for (i, b) in order {
        open.retain(|(_, o)| o.high[0] >= b.low[0]);
        for (j, o) in &open {
            if o.low[1] <= b.high[1] && b.low[1] <= o.high[1] {
                pairs.push((i.min(*j), i.max(*j)));
            }
        }
        open.push((i, b));
    }
    pairs.sort_unstable();
    pairs
}

type V2 = [f64; 2];

/// The edges of a plane in plan, in millimetres from a vertex.
fn edges(plane: &Plane, origin: Vertex) -> Vec<(V2, V2)> {
    let at = |v: &Vertex| {
        let d = v.from(origin);
        [d[0], d[1]]
    };
    plane.rings.iter().flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)).map(move |(a, b)| (at(a), at(b)))).collect()
}

/// How far inside the edges a point lies; 0 outside.
fn depth(p: V2, edges: &[(V2, V2)]) -> f64 {
    let mut inside = false;
    let mut nearest = f64::INFINITY;
    for &(a, b) in edges {
        if (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0] + (p[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0]) {
            inside = !inside;
        }
        let (d, e) = ([b[0] - a[0], b[1] - a[1]], [p[0] - a[0], p[1] - a[1]]);
        let t = ((d[0] * e[0] + d[1] * e[1]) / (d[0] * d[0] + d[1] * d[1])).clamp(0.0, 1.0);
        let off = [e[0] - t * d[0], e[1] - t * d[1]];
        nearest = nearest.min(off[0] * off[0] + off[1] * off[1]);
    }
    if inside { nearest.sqrt() } else { 0.0 }
}

/// Points of `these` edges at which it could lie deepest inside `those`: the ends, the crossings, and the middles between.
fn probes(these: &[(V2, V2)], those: &[(V2, V2)]) -> Vec<V2> {
    let mut out = Vec::new();
    for &(a, b) in these {
        let r = [b[0] - a[0], b[1] - a[1]];
        let mut cuts = vec![0.0, 1.0];
        for &(c, d) in those {
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

/// Some point well inside: the widest place of a level cut between two vertices.
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

/// How deep two planes lie in each other in plan, in millimetres, where that is more than the tolerance.
pub(super) fn overlap(a: &Plane, b: &Plane, tolerance: f64) -> Option<f64> {
    let origin = *a.rings.first()?.first()?;
    let (ea, eb) = (edges(a, origin), edges(b, origin));
    let mut places: Vec<(V2, &[(V2, V2)])> = probes(&ea, &eb).into_iter().map(|p| (p, eb.as_slice())).collect();
    places.extend(probes(&eb, &ea).into_iter().map(|p| (p, ea.as_slice())));
    // Where the outlines coincide, only a point inside tells.
    places.extend(inner_point(&ea).map(|p| (p, eb.as_slice())));
    places.extend(inner_point(&eb).map(|p| (p, ea.as_slice())));
    let deepest = places.into_iter().map(|(p, other)| depth(p, other)).fold(0.0, f64::max);
    (deepest > tolerance).then_some(deepest)
}
