//! The way round a roof: its corners by name, and its planes in the order in which a crew comes to them.

use super::observations::{V2, length, sub};
use crate::error::{Error, ErrorKind, Faults};
use crate::roof::clusters::clusters;
use crate::roof::{Outline, Point};

/// A plane as the walk comes to it.
pub(super) struct Walked {
    /// Its number in the sketch.
    pub(super) plane: usize,
    /// Its corners by their numbers in the roof, counter-clockwise, from the side that the walk comes to first.
    pub(super) corners: Vec<usize>,
    /// Where they lie in the sketch.
    pub(super) points: Vec<Point>,
    /// Its openings in the same way, clockwise.
    pub(super) holes: Vec<(Vec<usize>, Vec<Point>)>,
}

pub(super) struct Walk {
    pub(super) planes: Vec<Walked>,
    /// Corners in the order of their names.
    named: Vec<usize>,
}

/// A side of a plane or of an opening in it, by its corners in the roof.
#[derive(Clone, Copy)]
struct Side {
    plane: usize,
    ring: usize,
    edge: usize,
    from: usize,
    to: usize,
    start: V2,
    end: V2,
}

impl Walk {
    /// The walk goes along the free sides, counter-clockwise, and then to the planes that have none, the nearest first.
    pub(super) fn new(outlines: &[Outline], names: &[&str], tolerance: f64, start: usize) -> Result<Walk, Error> {
        let places: Vec<[f64; 3]> = outlines.iter().flat_map(Outline::rings).flatten().map(|p| [p.x.mm(), p.y.mm(), 0.0]).collect();
        let corner_of = clusters(&places, tolerance);
        let mut sides: Vec<Side> = Vec::new();
        let mut faults = Faults::default();
        let mut first = 0;
        for (plane, outline) in outlines.iter().enumerate() {
            let mut seen: Vec<usize> = Vec::new();
            for (number, ring) in outline.rings().enumerate() {
                let n = ring.len();
                let own = |i: usize| corner_of.get(first + i % n).copied().unwrap_or(0);
                for (edge, (p, q)) in ring.iter().zip(ring.iter().cycle().skip(1)).enumerate() {
                    let (from, to) = (own(edge), own(edge + 1));
                    if seen.contains(&from) {
                        let name = names.get(plane).copied().unwrap_or_default();
                        let path = if number == 0 { "outer".to_owned() } else { format!("holes[{}].ring", number - 1) };
                        let said = Error::new(ErrorKind::Geometry, format!("two corners of {name} count as one")).at(format!("planes[{plane}].{path}"));
                        faults.add(said.value_of(format_args!("{}, {}", p.x, p.y)).accepts("corners farther apart than the tolerance of the sketch"));
                    }
                    seen.push(from);
                    sides.push(Side { plane, ring: number, edge, from, to, start: [p.x.mm(), p.y.mm()], end: [q.x.mm(), q.y.mm()] });
                }
                first += n;
            }
        }
        faults.check()?;
        let order = order(&sides, outlines.len(), start);
        let mut named: Vec<usize> = Vec::new();
        let mut planes = Vec::new();
        for (plane, edge) in order {
            let ring = |number: usize, edge: usize, points: &[Point]| {
                let own: Vec<&Side> = sides.iter().filter(|s| s.plane == plane && s.ring == number).collect();
                let corners: Vec<usize> = own.iter().cycle().skip(edge).take(own.len()).map(|s| s.from).collect();
                (corners, points.iter().cycle().skip(edge).take(points.len()).copied().collect::<Vec<Point>>())
            };
            let Some(outline) = outlines.get(plane) else { continue };
            let (corners, points) = ring(0, edge, outline.outer());
            let holes: Vec<_> = (1..).zip(outline.holes()).map(|(number, points)| ring(number, 0, points)).collect();
            for corner in corners.iter().chain(holes.iter().flat_map(|h| &h.0)) {
                if !named.contains(corner) {
                    named.push(*corner);
                }
            }
            planes.push(Walked { plane, corners, points, holes });
        }
        Ok(Walk { planes, named })
    }

    /// A corner's name: A to Z without I and O, which are read as figures; then AA and on.
    pub(super) fn name(&self, corner: usize) -> String {
        let count = LETTERS.len();
        let mut number = self.named.iter().position(|c| *c == corner).unwrap_or(0);
        let mut letters = Vec::new();
        loop {
            letters.extend(LETTERS.get(number % count).copied().map(char::from));
            if number < count {
                break;
            }
            number = number / count - 1;
        }
        letters.iter().rev().collect()
    }
}

const LETTERS: &[u8] = b"ABCDEFGHJKLMNPQRSTUVWXYZ";

/// Planes in the order of the walk, each with the side that it starts from.
fn order(sides: &[Side], count: usize, start: usize) -> Vec<(usize, usize)> {
    let shared = |s: &Side| sides.iter().any(|o| o.plane != s.plane && (o.from, o.to) == (s.to, s.from));
    let mut free: Vec<&Side> = sides.iter().filter(|s| s.ring == 0 && !shared(s)).collect();
    let mut out: Vec<(usize, usize)> = Vec::new();
    let mut here: Option<V2> = None;
    while !free.is_empty() {
        let next = match here {
            None => free.iter().position(|s| s.plane == start).unwrap_or(0),
            Some(here) => {
                let far = |s: &Side| length(sub(s.start, here));
                let nearest = free.iter().enumerate().min_by(|(_, a), (_, b)| far(a).total_cmp(&far(b)));
                nearest.map_or(0, |(i, _)| i)
            }
        };
        let side = free.remove(next);
        here = Some(side.end);
        if !out.iter().any(|(plane, _)| *plane == side.plane) {
            out.push((side.plane, side.edge));
        }
    }
    let middle = |plane: usize| {
        let own: Vec<&Side> = sides.iter().filter(|s| s.plane == plane && s.ring == 0).collect();
        let mut count = 0.0;
        let sum = own.iter().fold([0.0, 0.0], |m: V2, s| {
            count += 1.0;
            [m[0] + s.start[0], m[1] + s.start[1]]
        });
        [sum[0] / f64::max(count, 1.0), sum[1] / f64::max(count, 1.0)]
    };
    while out.len() < count {
        let last = out.last().map_or([0.0, 0.0], |(plane, _)| middle(*plane));
        let rest = (0..count).filter(|p| !out.iter().any(|(q, _)| q == p));
        let Some(next) = rest.min_by(|a, b| length(sub(middle(*a), last)).total_cmp(&length(sub(middle(*b), last)))) else { break };
        out.push((next, 0));
    }
    // The plane asked for comes first even where it has no free side.
    if let Some(at) = out.iter().position(|(plane, _)| *plane == start) {
        let first = out.remove(at);
        out.insert(0, first);
    }
    out
}
