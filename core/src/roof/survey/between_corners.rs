//! Corners of one plane that lie along a side of another.

use super::observations::{V2, length, sub};
use crate::error::Error;
use crate::roof::{Outline, Point};

/// The outlines with a corner wherever another plane has one along their side, so that every joint is between whole sides.
pub(super) fn with_corners_between(outlines: &[Outline], tolerance: f64) -> Result<Vec<Outline>, Error> {
    let corners: Vec<Point> = outlines.iter().flat_map(Outline::rings).flatten().copied().collect();
    outlines.iter().map(|outline| with_corners(outline, &corners, tolerance)).collect()
}

fn place(p: Point) -> V2 {
    [p.x.mm(), p.y.mm()]
}

fn with_corners(outline: &Outline, corners: &[Point], tolerance: f64) -> Result<Outline, Error> {
    let own: Vec<Point> = outline.rings().flatten().copied().collect();
    let others: Vec<Point> = corners.iter().filter(|c| !own.iter().any(|o| near(**c, *o, tolerance))).copied().collect();
    let mut rings = outline.rings().map(|ring| ring_with_corners(ring, &others, tolerance));
    let outer = rings.next().unwrap_or_default();
    let holes: Vec<Vec<Point>> = rings.collect();
    if outer.len() + holes.iter().map(Vec::len).sum::<usize>() == own.len() { Ok(outline.clone()) } else { Outline::new(outer, holes) }
}

fn near(p: Point, q: Point, tolerance: f64) -> bool {
    length(sub(place(p), place(q))) <= tolerance
}

fn ring_with_corners(own: &[Point], corners: &[Point], tolerance: f64) -> Vec<Point> {
    let mut ring: Vec<Point> = Vec::new();
    for (from, to) in own.iter().zip(own.iter().cycle().skip(1)) {
        let way = sub(place(*to), place(*from));
        let long = length(way);
        let mut between: Vec<(f64, Point)> = Vec::new();
        for corner in corners {
            let off = sub(place(*corner), place(*from));
            let along = (off[0] * way[0] + off[1] * way[1]) / long;
            let beside = (off[1] * way[0] - off[0] * way[1]).abs() / long;
            if along > 0.0 && along < long && beside <= tolerance && !between.iter().any(|(_, p)| near(*p, *corner, tolerance)) {
                between.push((along, *corner));
            }
        }
        between.sort_by(|a, b| a.0.total_cmp(&b.0));
        ring.push(*from);
        ring.extend(between.into_iter().map(|(_, p)| p));
    }
    ring
}
