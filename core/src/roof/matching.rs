//! Which edges run together, and for how far.

use super::Plane;
use super::line::{EdgeId, Piece};
use super::overlap::{Box2, near_pairs};
use super::vertex::{Twice, Vertex};
use crate::error::Error;
use crate::num::space::{V3, dot, norm, scale, sub};
use crate::units::Length;

/// An edge of a plane, with the plane on its left.
#[derive(Debug, Clone, Copy)]
pub(super) struct RoofEdge {
    pub(super) id: EdgeId,
    pub(super) from: Vertex,
    pub(super) to: Vertex,
    /// Unit direction and length in millimetres.
    along: V3,
    pub(super) length: f64,
}

impl RoofEdge {
    /// Every edge of every plane, in order.
    pub(super) fn all(planes: &[(usize, &Plane)]) -> Vec<RoofEdge> {
        let mut out = Vec::new();
        for &(number, plane) in planes {
            // The plan has the same rings, and knows how the caller numbered them.
            let given = plane.plan.edges().map(|e| (e.ring, e.index, e.given));
            let ends = plane.rings.iter().flat_map(|r| r.iter().zip(r.iter().cycle().skip(1)));
            for ((ring, edge, given), (&from, &to)) in given.zip(ends) {
                let d = to.from(from);
                let length = norm(d);
                out.push(RoofEdge { id: EdgeId { plane: number, ring, edge, given }, from, to, along: scale(d, 1.0 / length), length });
            }
        }
        out
    }

    /// How far along the edge a vertex stands, and how far off it, in millimetres.
    pub(super) fn station(&self, v: Vertex) -> (f64, f64) {
        let d = v.from(self.from);
        let s = dot(d, self.along);
        (s, norm(sub(d, scale(self.along, s))))
    }

    /// The vertex at this station.
    pub(super) fn at(&self, station: f64) -> Result<Vertex, Error> {
        let [x, y, z] = scale(self.along, station);
        let add = |l: Length, d: f64| (l + Length::from_mm(d)?).length();
        Ok(Vertex { x: add(self.from.x, x)?, y: add(self.from.y, y)?, z: add(self.from.z, z)? })
    }

    pub(super) fn plan_box(&self) -> Box2 {
        Box2::round([&self.from, &self.to])
    }
}

/// A stretch of one edge: from and to in millimetres from its start.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stretch {
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) start: Twice,
    pub(super) end: Twice,
}

impl Stretch {
    pub(super) fn piece(&self) -> Piece {
        Piece { start: self.start, end: self.end }
    }
}

/// Two edges of different planes that run together, the other way round as neighbours do.
#[derive(Debug, Clone, Copy)]
pub(super) struct Meeting {
    /// Numbers of the two edges; the first is the lower.
    pub(super) edges: (usize, usize),
    /// The stretch of each.
    pub(super) on: (Stretch, Stretch),
}

/// Two edges that run together but are farther apart than the tolerance.
#[derive(Debug, Clone, Copy)]
pub(super) struct NearMiss {
    pub(super) edges: (usize, usize),
    pub(super) gap: f64,
}

/// All meetings of edges, in order. Edges up to `reach` tolerances apart are told as near misses.
pub(super) fn meetings(edges: &[RoofEdge], tolerance: f64, tolerance_pm: i64, reach: i64) -> (Vec<Meeting>, Vec<NearMiss>) {
    let boxes: Vec<Box2> = edges.iter().map(RoofEdge::plan_box).collect();
    let (mut met, mut missed) = (Vec::new(), Vec::new());
    #[allow(clippy::cast_precision_loss, reason = "a handful")]
    let far = tolerance * reach as f64;
    for (i, j) in near_pairs(&boxes, tolerance_pm.saturating_mul(reach)) {
        let (Some(e), Some(f)) = (edges.get(i), edges.get(j)) else { continue };
        if e.id.plane == f.id.plane {
            continue;
        }
        match run_together(e, f, tolerance, far) {
            Some(Together::Met([a, b])) => met.push(Meeting { edges: (i, j), on: (a, b) }),
            Some(Together::Missed(gap)) => missed.push(NearMiss { edges: (i, j), gap }),
            None => {}
        }
    }
    (met, missed)
}

/// The stretches along which two edges run together in plan, each at its own height, whatever lies between them: of the first and of the second.
pub(super) fn over_in_plan(e: &RoofEdge, f: &RoofEdge, tolerance: f64) -> Result<Option<[Stretch; 2]>, Error> {
    let flat = |edge: &RoofEdge| {
        let (from, to) = (Vertex { z: Length::ZERO, ..edge.from }, Vertex { z: Length::ZERO, ..edge.to });
        let d = to.from(from);
        let length = norm(d);
        (length > tolerance).then(|| RoofEdge { id: edge.id, from, to, along: scale(d, 1.0 / length), length })
    };
    let (Some(flat_e), Some(flat_f)) = (flat(e), flat(f)) else { return Ok(None) };
    let Some(Together::Met([on_e, on_f])) = run_together(&flat_e, &flat_f, tolerance, tolerance) else { return Ok(None) };
    let lift = |edge: &RoofEdge, flat: &RoofEdge, on: &Stretch| -> Result<Stretch, Error> {
        let (from, to) = (on.from * edge.length / flat.length, on.to * edge.length / flat.length);
        let at = |s: f64| match s {
            _ if s <= tolerance => Ok(edge.from),
            _ if s >= edge.length - tolerance => Ok(edge.to),
            _ => edge.at(s),
        };
        Ok(Stretch { from, to, start: Twice::at(at(from)?), end: Twice::at(at(to)?) })
    };
    Ok(Some([lift(e, &flat_e, &on_e)?, lift(f, &flat_f, &on_f)?]))
}

#[allow(clippy::large_enum_variant, reason = "it lives for one match")]
enum Together {
    Met([Stretch; 2]),
    Missed(f64),
}

/// An end of the stretch that two edges share: the vertex of each that stands there, if it does.
struct SharedEnd {
    on_e: f64,
    on_f: f64,
    apart: f64,
    at: Twice,
}

fn run_together(e: &RoofEdge, f: &RoofEdge, tolerance: f64, far: f64) -> Option<Together> {
    // Each has its plane on the left, so neighbours run against each other.
    if dot(e.along, f.along) >= 0.0 {
        return None;
    }
    let start = shared_end(e, e.from, 0.0, f, f.to, f.length, true, tolerance);
    let end = shared_end(e, e.to, e.length, f, f.from, 0.0, false, tolerance);
    if end.on_e - start.on_e <= tolerance {
        return None;
    }
    let gap = start.apart.max(end.apart);
    if gap > far {
        return None;
    }
    // A near miss runs nearly the same way; edges that fan out from a corner are none.
    if gap > tolerance {
        return ((start.apart - end.apart).abs() <= tolerance && end.on_e - start.on_e > far).then_some(Together::Missed(gap));
    }
    let on_e = Stretch { from: start.on_e, to: end.on_e, start: start.at, end: end.at };
    let on_f = Stretch { from: end.on_f, to: start.on_f, start: end.at, end: start.at };
    Some(Together::Met([on_e, on_f]))
}

/// The end of the common stretch where `e` has its vertex `ev` at station `es`, and `f` its vertex `fv` at station `fs`.
#[allow(clippy::too_many_arguments, reason = "two edges, alike")]
fn shared_end(e: &RoofEdge, ev: Vertex, es: f64, f: &RoofEdge, fv: Vertex, fs: f64, is_start: bool, tolerance: f64) -> SharedEnd {
    let (fv_on_e, fv_off) = e.station(fv);
    let (ev_on_f, ev_off) = f.station(ev);
    if (fv_on_e - es).abs() <= tolerance {
        // Both end here: half way between, so that neither counts for more.
        return SharedEnd { on_e: es, on_f: fs, apart: fv_off.max(ev_off), at: Twice::middle(ev, fv) };
    }
    if (fv_on_e > es) == is_start {
        SharedEnd { on_e: fv_on_e, on_f: fs, apart: fv_off, at: Twice::at(fv) }
    } else {
        SharedEnd { on_e: es, on_f: ev_on_f, apart: ev_off, at: Twice::at(ev) }
    }
}

/// What is left of an edge between the stretches that are taken, which are in order.
pub(super) fn free_stretches(edge: &RoofEdge, taken: &[Stretch], tolerance: f64) -> Vec<Stretch> {
    let mut out = Vec::new();
    let (mut from, mut start) = (0.0, Twice::at(edge.from));
    for t in taken {
        if t.from - from > tolerance {
            out.push(Stretch { from, to: t.from, start, end: t.start });
        }
        if t.to > from {
            (from, start) = (t.to, t.end);
        }
    }
    if edge.length - from > tolerance {
        out.push(Stretch { from, to: edge.length, start, end: Twice::at(edge.to) });
    }
    out
}
