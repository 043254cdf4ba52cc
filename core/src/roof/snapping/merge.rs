//! Neighbouring faces of one plane made one.

use super::rings::{Face, Faces};
use super::snap::MergedFaces;
use crate::num::space::{V3, cross, dot, norm, scale, sub};
use crate::practice::roof as practice;
use std::collections::{BTreeMap, BTreeSet};

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
    let back: BTreeSet<(usize, usize)> = eb.iter().map(|(p, q)| (*q, *p)).collect();
    let mut rest: Vec<(usize, usize)> = ea.iter().filter(|e| !back.contains(e)).copied().collect();
    if rest.len() == ea.len() {
        return None;
    }
    let forth: BTreeSet<(usize, usize)> = ea.into_iter().filter(|e| back.contains(e)).collect();
    rest.extend(eb.into_iter().filter(|(p, q)| !forth.contains(&(*q, *p))));
    let next: BTreeMap<usize, usize> = rest.iter().copied().collect();
    let (start, mut here) = rest.first().copied()?;
    let mut ring = vec![start];
    // Each node once, or the faces touch in a corner besides.
    while here != start {
        if ring.len() == rest.len() {
            return None;
        }
        ring.push(here);
        here = *next.get(&here)?;
    }
    (ring.len() == rest.len() && next.len() == rest.len()).then_some(ring)
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

/// Which faces have a node in their outer ring.
fn by_node(faces: &Faces<'_>) -> BTreeMap<usize, BTreeSet<usize>> {
    let mut out: BTreeMap<usize, BTreeSet<usize>> = BTreeMap::new();
    for (number, face) in faces.faces.iter().enumerate() {
        for node in face.rings.first().into_iter().flat_map(|r| &r.nodes) {
            out.entry(*node).or_default().insert(number);
        }
    }
    out
}

pub(super) fn merged(faces: &mut Faces<'_>, tolerance: f64) -> Vec<MergedFaces> {
    let mut out = Vec::new();
    let limit = practice::TRUE_LIMIT.sin();
    let mut at = by_node(faces);
    let mut gone = vec![false; faces.faces.len()];
    let mut first = 0;
    while first < faces.faces.len() {
        // Only faces that share a node can be neighbours.
        let own = faces.faces.get(first).filter(|_| !gone.get(first).copied().unwrap_or(true)).and_then(|f| f.rings.first());
        let beside: BTreeSet<usize> = own.into_iter().flat_map(|r| &r.nodes).filter_map(|n| at.get(n)).flatten().copied().filter(|n| *n > first).collect();
        let found = beside.into_iter().find_map(|second| {
            let (a, b) = (faces.faces.get(first)?, faces.faces.get(second)?);
            let (ra, rb) = (&a.rings.first()?.nodes, &b.rings.first()?.nodes);
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
        let Some(face) = faces.faces.get_mut(second) else { break };
        let (from, rings) = (face.plane, core::mem::take(&mut face.rings));
        for node in rings.first().into_iter().flat_map(|r| &r.nodes) {
            if let Some(of) = at.get_mut(node) {
                of.remove(&second);
                of.insert(first);
            }
        }
        if let Some(gone) = gone.get_mut(second) {
            *gone = true;
        }
        let from = faces.name(from).to_owned();
        if let Some(face) = faces.faces.get_mut(first) {
            let into = face.plane;
            if let Some(outer) = face.rings.first_mut() {
                outer.replace(ring);
            }
            face.rings.extend(rings.into_iter().skip(1));
            out.push(MergedFaces { into: faces.name(into).to_owned(), from });
        }
    }
    let mut left = gone.iter().map(|g| !g);
    faces.faces.retain(|_| left.next().unwrap_or(true));
    straighten(faces, tolerance);
    out
}

/// Leaves out nodes in the middle of a straight line of a merged face that no other face was given: the seams of what was merged.
fn straighten(faces: &mut Faces<'_>, tolerance: f64) {
    let merged: Vec<usize> = faces.faces.iter().filter_map(|f| f.rings.first()).filter(|r| r.was_merged()).flat_map(|r| r.nodes.clone()).collect();
    // The rings that have each of those nodes.
    let mut at: BTreeMap<usize, BTreeSet<(usize, usize)>> = merged.iter().map(|node| (*node, BTreeSet::new())).collect();
    for (f, face) in faces.faces.iter().enumerate() {
        for (r, ring) in face.rings.iter().enumerate() {
            for node in &ring.nodes {
                if let Some(of) = at.get_mut(node) {
                    of.insert((f, r));
                }
            }
        }
    }
    for node in merged {
        let Some(of) = at.get(&node) else { continue };
        // Every ring that has it must run straight there, and none but merged ones have it as given.
        let mut own = of.iter().filter_map(|(f, r)| faces.faces.get(*f)?.rings.get(*r)).filter(|r| r.nodes.contains(&node));
        if own.all(|r| r.nodes.len() > 3 && r.is_put_in(node) && straight(faces, &r.nodes, node, tolerance)) {
            for (f, r) in of {
                if let Some(ring) = faces.faces.get_mut(*f).and_then(|face| face.rings.get_mut(*r)) {
                    ring.leave_out(node);
                }
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
