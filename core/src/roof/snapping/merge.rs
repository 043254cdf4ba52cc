//! Neighbouring faces of one plane made one.

use super::rings::{Face, Faces};
use super::snap::MergedFaces;
use crate::num::space::{V3, cross, dot, norm, scale, sub};
use crate::practice::roof as practice;

fn normal(faces: &Faces<'_>, ring: &[usize]) -> V3 {
    let first = ring.first().map_or([0.0; 3], |n| faces.node(*n));
    let area = ring.iter().zip(ring.iter().cycle().skip(1)).fold([0.0; 3], |s: V3, (a, b)| {
        let c = cross(sub(faces.node(*a), first), sub(faces.node(*b), first));
        [s[0] + c[0], s[1] + c[1], s[2] + c[2]]
    });
    scale(area, 1.0 / norm(area).max(f64::MIN_POSITIVE))
}

/// The outer ring of two faces together: what is left when edges that run both ways go. None unless that is one ring.
fn together(a: &[usize], b: &[usize]) -> Option<Vec<usize>> {
    let edges = |r: &[usize]| r.iter().copied().zip(r.iter().copied().cycle().skip(1)).take(r.len()).collect::<Vec<_>>();
    let (ea, eb) = (edges(a), edges(b));
    let mut rest: Vec<(usize, usize)> = ea.iter().filter(|(p, q)| !eb.contains(&(*q, *p))).copied().collect();
    let shared = ea.len() - rest.len();
    rest.extend(eb.iter().filter(|(p, q)| !ea.contains(&(*q, *p))));
    if shared == 0 || rest.is_empty() {
        return None;
    }
    // Each node once, or the faces touch in a corner besides.
    let mut ring = Vec::with_capacity(rest.len());
    let (start, mut here) = rest.first().copied()?;
    ring.push(start);
    while here != start {
        if ring.contains(&here) || ring.len() > rest.len() {
            return None;
        }
        ring.push(here);
        here = rest.iter().find(|(p, _)| *p == here)?.1;
    }
    (ring.len() == rest.len()).then_some(ring)
}

/// Whether all nodes of the faces lie within the tolerance of the plane through the ring.
fn flat(faces: &Faces<'_>, ring: &[usize], of: [&Face; 2], tolerance: f64) -> bool {
    let n = normal(faces, ring);
    let mut count = 0.0;
    let mean = ring.iter().fold(0.0, |m, node| {
        count += 1.0;
        m + dot(n, faces.node(*node))
    }) / f64::max(count, 1.0);
    of.iter().flat_map(|f| f.nodes()).all(|node| (dot(n, faces.node(node)) - mean).abs() <= tolerance)
}

pub(super) fn merged(faces: &mut Faces<'_>, tolerance: f64) -> Vec<MergedFaces> {
    let mut out = Vec::new();
    let limit = practice::TRUE_LIMIT.sin();
    let mut first = 0;
    while first < faces.faces.len() {
        let found = (first + 1..faces.faces.len()).find_map(|second| {
            let (a, b) = (faces.faces.get(first)?, faces.faces.get(second)?);
            let (ra, rb) = (&a.rings.first()?.nodes, &b.rings.first()?.nodes);
            if !rb.iter().any(|n| ra.contains(n)) {
                return None;
            }
            let (m, n) = (normal(faces, ra), normal(faces, rb));
            if norm(cross(m, n)) > limit || dot(m, n) <= 0.0 {
                return None;
            }
            let ring = together(ra, rb)?;
            flat(faces, &ring, [a, b], tolerance).then_some((second, ring))
        });
        let Some((second, ring)) = found else {
            first += 1;
            continue;
        };
        let gone = faces.faces.remove(second);
        let from = faces.name(gone.plane).to_owned();
        if let Some(face) = faces.faces.get_mut(first) {
            let into = face.plane;
            if let Some(outer) = face.rings.first_mut() {
                outer.replace(ring);
            }
            face.rings.extend(gone.rings.into_iter().skip(1));
            out.push(MergedFaces { into: faces.name(into).to_owned(), from });
        }
    }
    straighten(faces, tolerance);
    out
}

/// Leaves out nodes in the middle of a straight line of a merged face that no other face was given: the seams of what was merged.
fn straighten(faces: &mut Faces<'_>, tolerance: f64) {
    let merged: Vec<usize> = faces.faces.iter().filter_map(|f| f.rings.first()).filter(|r| r.was_merged()).flat_map(|r| r.nodes.clone()).collect();
    for node in merged {
        // Every ring that has it must run straight there, and none but merged ones have it as given.
        let own = || faces.faces.iter().flat_map(|f| &f.rings).filter(|r| r.nodes.contains(&node));
        if own().all(|r| r.nodes.len() > 3 && r.is_put_in(node) && straight(faces, &r.nodes, node, tolerance)) {
            for ring in faces.faces.iter_mut().flat_map(|f| &mut f.rings) {
                ring.leave_out(node);
            }
        }
    }
}

fn straight(faces: &Faces<'_>, ring: &[usize], node: usize, tolerance: f64) -> bool {
    let n = ring.len();
    let Some(at) = ring.iter().position(|x| *x == node) else { return true };
    let place = |i: usize| ring.get(i % n.max(1)).map_or([0.0; 3], |x| faces.node(*x));
    let (a, b, c) = (place(at + n - 1), place(at), place(at + 1));
    let d = sub(c, a);
    let along = dot(sub(b, a), d) / dot(d, d).max(f64::MIN_POSITIVE);
    along > 0.0 && along < 1.0 && norm(sub(sub(b, a), scale(d, along))) <= tolerance
}
