//! Corners of one plane that lie along a side of another.

use super::observations::{V2, length, sub};
use super::sketched_roof::SketchedWall;
use crate::error::Error;
use crate::roof::{Outline, Point};

/// Walls of a sketch as lines in plan.
pub(super) struct WallLines {
    lines: Vec<[V2; 2]>,
    tolerance: f64,
}

impl WallLines {
    pub(super) fn new(walls: &[SketchedWall], tolerance: f64) -> WallLines {
        WallLines { lines: walls.iter().map(|w| [place(w.from), place(w.to)]).collect(), tolerance }
    }

    /// Whether a wall runs along the whole of a side.
    pub(super) fn hold(&self, from: Point, to: Point) -> bool {
        let on = |p: Point, [a, b]: &[V2; 2]| {
            let (way, off) = (sub(*b, *a), sub(place(p), *a));
            let long = length(way).max(f64::MIN_POSITIVE);
            let along = (off[0] * way[0] + off[1] * way[1]) / long;
            let beside = (off[1] * way[0] - off[0] * way[1]).abs() / long;
            beside <= self.tolerance && along >= -self.tolerance && along <= long + self.tolerance
        };
        self.lines.iter().any(|wall| on(from, wall) && on(to, wall))
    }
}

/// The outlines with a corner wherever another plane has one along their side, so that every joint is between whole sides.
pub(super) fn with_corners_between(outlines: &[Outline], walls: &WallLines, tolerance: f64) -> Result<Vec<Outline>, Error> {
    let sides: Vec<[Point; 2]> = outlines.iter().flat_map(Outline::edges).map(|e| [e.from, e.to]).collect();
    outlines.iter().map(|outline| with_corners(outline, &sides, walls, tolerance)).collect()
}

fn place(p: Point) -> V2 {
    [p.x.mm(), p.y.mm()]
}

fn with_corners(outline: &Outline, sides: &[[Point; 2]], walls: &WallLines, tolerance: f64) -> Result<Outline, Error> {
    let own: Vec<Point> = outline.rings().flatten().copied().collect();
    let mut rings = outline.rings().map(|ring| ring_with_corners(ring, &own, sides, walls, tolerance));
    let outer = rings.next().unwrap_or_default();
    let holes: Vec<Vec<Point>> = rings.collect();
    if outer.len() + holes.iter().map(Vec::len).sum::<usize>() == own.len() { Ok(outline.clone()) } else { Outline::new(outer, holes) }
}

fn near(p: Point, q: Point, tolerance: f64) -> bool {
    length(sub(place(p), place(q))) <= tolerance
}

fn ring_with_corners(own: &[Point], all: &[Point], sides: &[[Point; 2]], walls: &WallLines, tolerance: f64) -> Vec<Point> {
    let mut ring: Vec<Point> = Vec::new();
    for (from, to) in own.iter().zip(own.iter().cycle().skip(1)) {
        let way = sub(place(*to), place(*from));
        let long = length(way);
        let mut between: Vec<(f64, Point)> = Vec::new();
        // What a wall parts from this side is no corner of it.
        let beside_it = |p: Point| (sub(place(p), place(*from))[1] * way[0] - sub(place(p), place(*from))[0] * way[1]).abs() / long <= tolerance;
        let parted = |s: &&[Point; 2]| beside_it(s[0]) && beside_it(s[1]) && walls.hold(s[0], s[1]);
        let parted: Vec<Point> = sides.iter().filter(parted).flatten().copied().collect();
        let joined = |s: &&[Point; 2]| beside_it(s[0]) && beside_it(s[1]) && !walls.hold(s[0], s[1]);
        let joined: Vec<Point> = sides.iter().filter(joined).flatten().copied().collect();
        let counts = |p: &Point| !all.iter().any(|o| near(*p, *o, tolerance)) && (!parted.contains(p) || joined.contains(p));
        for corner in sides.iter().map(|s| &s[0]).filter(|p| counts(p)) {
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
