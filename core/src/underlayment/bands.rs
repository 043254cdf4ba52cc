//! What a band across an outline covers: the stretches of it that the outline reaches into, and their area.

use crate::roof::{Outline, Point};

type P = (f64, f64);

/// Between two heights at which something of the outline begins or ends: what lies inside, each with its left and right side at both heights.
struct Slab {
    y0: f64,
    y1: f64,
    inside: Vec<(P, P)>,
}

/// A part of an outline between two heights and two sides, in millimetres from the foot and the left of its bounds.
pub(super) struct Band {
    slabs: Vec<Slab>,
}

fn x_at((p, q): &(P, P), y: f64) -> f64 {
    if y >= q.1 {
        q.0
    } else if y <= p.1 {
        p.0
    } else {
        p.0 + (q.0 - p.0) * (y - p.1) / (q.1 - p.1)
    }
}

impl Band {
    pub(super) fn of(outline: &Outline, (low, high): P, (left, right): P) -> Band {
        let b = outline.bounds();
        let at = |p: Point| (p.x.mm() - b.low.x.mm(), p.y.mm() - b.low.y.mm());
        let edges: Vec<(P, P)> = outline
            .edges()
            .map(|e| (at(e.from), at(e.to)))
            .map(|(p, q)| if p.1 <= q.1 { (p, q) } else { (q, p) })
            .filter(|(p, q)| q.1 > low && p.1 < high && q.1 > p.1)
            .collect();
        // Where an edge crosses a side of the band it is cut, so that between two levels each lies wholly within or wholly beyond.
        let crossings = edges.iter().flat_map(|(p, q)| {
            [left, right].into_iter().filter(move |x| (p.0 - x) * (q.0 - x) < 0.0).map(move |x| p.1 + (q.1 - p.1) * (x - p.0) / (q.0 - p.0))
        });
        let ends = edges.iter().flat_map(|(p, q)| [p.1, q.1]);
        let mut levels: Vec<f64> = ends.chain(crossings).filter(|y| *y > low && *y < high).chain([low, high]).collect();
        levels.sort_by(f64::total_cmp);
        levels.dedup();
        let mut slabs = Vec::with_capacity(levels.len());
        for pair in levels.windows(2) {
            let &[y0, y1] = pair else { continue };
            let middle = f64::midpoint(y0, y1);
            // Between two levels edges run from one to the other and do not cross.
            let mut crossing: Vec<&(P, P)> = edges.iter().filter(|(p, q)| p.1 <= middle && q.1 > middle).collect();
            crossing.sort_by(|a, b| x_at(a, middle).total_cmp(&x_at(b, middle)));
            let side = |edge: &(P, P)| (x_at(edge, y0).clamp(left, right), x_at(edge, y1).clamp(left, right));
            let pairs = crossing.chunks(2).filter_map(|c| if let &[a, b] = c { Some((side(a), side(b))) } else { None });
            slabs.push(Slab { y0, y1, inside: pairs.filter(|(a, b)| b.0 > a.0 || b.1 > a.1).collect() });
        }
        Band { slabs }
    }

    /// The stretches across that it reaches into, from and to, sorted and apart.
    pub(super) fn stretches(&self) -> Vec<P> {
        let mut out: Vec<P> = self.slabs.iter().flat_map(|s| &s.inside).map(|(a, b)| (a.0.min(a.1), b.0.max(b.1))).collect();
        out.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut joined: Vec<P> = Vec::with_capacity(out.len());
        for (from, to) in out {
            match joined.last_mut() {
                Some(last) if from <= last.1 => last.1 = last.1.max(to),
                _ => joined.push((from, to)),
            }
        }
        joined
    }

    /// Its area in square millimetres.
    pub(super) fn area(&self) -> f64 {
        self.slabs.iter().map(|s| s.inside.iter().map(|(a, b)| f64::midpoint(b.0 - a.0, b.1 - a.1)).sum::<f64>() * (s.y1 - s.y0)).sum()
    }
}
