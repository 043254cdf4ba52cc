//! What ties planes that no line joins to the others.

use super::joined_planes::PlaneEdge;
use super::measuring_sheet::{MeasuringSheet, PlaneSheet, SheetTie};
use super::observations::{V2, length, sub};
use super::shape::NamedCorner;
use crate::error::Error;
use crate::units::Length;

fn place(corner: &NamedCorner) -> V2 {
    [corner.at.x.mm(), corner.at.y.mm()]
}

/// The edges of a plane and of its openings, with the plane on the left, by name and corners.
fn edges(sheet: &PlaneSheet) -> Vec<(PlaneEdge, [&NamedCorner; 2])> {
    let ring = |corners: &'_ [NamedCorner]| corners.len();
    let mut out = Vec::new();
    for (i, pair) in sheet.corners.iter().zip(sheet.corners.iter().cycle().skip(1)).take(ring(&sheet.corners)).enumerate() {
        out.push((PlaneEdge::new(&sheet.plane, i), [pair.0, pair.1]));
    }
    for hole in &sheet.openings {
        for (i, pair) in hole.corners.iter().zip(hole.corners.iter().cycle().skip(1)).take(ring(&hole.corners)).enumerate() {
            out.push((PlaneEdge::of_hole(&sheet.plane, &hole.name, i), [pair.0, pair.1]));
        }
    }
    out
}

/// The side of a group that lies nearest to an edge of an earlier plane.
struct Nearest<'a> {
    far: f64,
    long: f64,
    plane: usize,
    corners: [usize; 2],
    edge: PlaneEdge,
    ends: [&'a NamedCorner; 2],
}

/// How far a place is from a line between two others.
fn off(p: V2, [a, b]: [V2; 2]) -> f64 {
    let (way, to) = (sub(b, a), sub(p, a));
    let square = (way[0] * way[0] + way[1] * way[1]).max(f64::MIN_POSITIVE);
    let part = ((to[0] * way[0] + to[1] * way[1]) / square).clamp(0.0, 1.0);
    length([to[0] - way[0] * part, to[1] - way[1] * part])
}

/// For each group of planes that no joint leads to, two ties from one of its sides to the edge of an earlier plane that lies nearest to it; of those alike
/// within the tolerance the longest, which holds it best.
pub(super) fn sheet_ties(sheet: &MeasuringSheet, tolerance: f64) -> Result<Vec<SheetTie>, Error> {
    let planes = &sheet.planes;
    let number = |edge: &PlaneEdge| planes.iter().position(|p| p.plane == edge.plane);
    let joined: Vec<[usize; 2]> = sheet.joints.iter().filter_map(|j| Some([number(&j.first)?, number(&j.second)?])).collect();
    let mut reached: Vec<usize> = Vec::new();
    let mut ties = Vec::new();
    let spread = |reached: &mut Vec<usize>, from: usize| {
        let mut open = vec![from];
        while let Some(here) = open.pop() {
            if !reached.contains(&here) {
                reached.push(here);
                open.extend(joined.iter().filter(|j| j.contains(&here)).flatten());
            }
        }
    };
    spread(&mut reached, 0);
    while let Some(next) = (0..planes.len()).find(|p| !reached.contains(p)) {
        let mut group = Vec::new();
        spread(&mut group, next);
        let mut best: Option<Nearest<'_>> = None;
        for plane in group.iter().filter_map(|k| planes.get(*k).map(|p| (*k, p))) {
            let n = plane.1.corners.len();
            for (i, (c, d)) in plane.1.corners.iter().zip(plane.1.corners.iter().cycle().skip(1)).enumerate() {
                for (edge, ends) in reached.iter().filter_map(|k| planes.get(*k)).flat_map(edges) {
                    let line = ends.map(place);
                    let far = ((off(place(c), line) + off(place(d), line)) / tolerance).round();
                    let long = length(sub(line[1], line[0])).min(length(sub(place(d), place(c))));
                    let nearer = |b: &Nearest<'_>| far < b.far || (far.total_cmp(&b.far).is_eq() && long > b.long + tolerance);
                    if best.as_ref().is_none_or(nearer) {
                        best = Some(Nearest { far, long, plane: plane.0, corners: [i, (i + 1) % n], edge, ends });
                    }
                }
            }
        }
        let Some(Nearest { plane, corners, edge, ends, .. }) = best else { break };
        let [start, end] = ends.map(place);
        let long = length(sub(end, start)).max(f64::MIN_POSITIVE);
        let t = [(end[0] - start[0]) / long, (end[1] - start[1]) / long];
        for corner in corners {
            let Some((sheet, named)) = planes.get(plane).and_then(|p| p.corners.get(corner).map(|c| (p, c))) else { continue };
            let d = sub(place(named), start);
            ties.push(SheetTie {
                number: ties.len() + 1,
                plane: sheet.plane.clone(),
                corner,
                named: named.name.clone(),
                from: edge.clone(),
                side: ends.map(|c| c.name.clone()),
                along: Length::from_mm(d[0] * t[0] + d[1] * t[1])?,
                out: Length::from_mm(d[0] * t[1] - d[1] * t[0])?,
            });
        }
        reached.extend(group);
    }
    Ok(ties)
}
