//! Whether an outline closes and keeps clear of itself.

use super::shape::{BlankEdge, FlatBlank};
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::trim::Point;
use robust::{Coord, orient2d};

/// More stretches than this are not compared pair by pair.
const MOST: usize = 20_000;
/// Chords of an arc, as it is held against other stretches.
const CHORDS: u32 = 16;

/// The chords of one stretch, in millimetres from a corner of the blank.
struct Chords {
    points: Vec<(f64, f64)>,
    low: (f64, f64),
    high: (f64, f64),
}

fn fault(message: &'static str, value: impl core::fmt::Display) -> Error {
    Error::new(ErrorKind::Geometry, message).at("outline").value_of(value).accepts("one closed line that neither crosses nor touches itself")
}

fn chords(edge: &BlankEdge, origin: Point) -> Result<Chords, Error> {
    let mut points = vec![origin.to(edge.from)?];
    if let Some(arc) = edge.arc {
        let ((cx, cy), (x, y)) = (origin.to(arc.centre)?, arc.centre.to(edge.from)?);
        for i in 1..CHORDS {
            let turn = arc.turn.degrees() * f64::from(i) / f64::from(CHORDS);
            let (sin, cos) = (num::sin_deg(turn), num::cos_deg(turn));
            points.push((cx + x * cos - y * sin, cy + x * sin + y * cos));
        }
    }
    points.push(origin.to(edge.to)?);
    let fold = |pick: fn(f64, f64) -> f64, start: f64| points.iter().fold((start, start), |a, p| (pick(a.0, p.0), pick(a.1, p.1)));
    Ok(Chords { low: fold(f64::min, f64::INFINITY), high: fold(f64::max, f64::NEG_INFINITY), points })
}

fn side(a: (f64, f64), b: (f64, f64), c: (f64, f64)) -> f64 {
    let at = |p: (f64, f64)| Coord { x: p.0, y: p.1 };
    orient2d(at(a), at(b), at(c))
}

/// Whether two segments share a point; those that only share the end of the one and the start of the other are asked not to count it.
fn meet(a: (f64, f64), b: (f64, f64), c: (f64, f64), d: (f64, f64), follow: bool) -> bool {
    let (abc, abd, cda, cdb) = (side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b));
    if follow {
        // b and c are one point: only doubling back counts.
        return abd == 0.0 && (b.0 - a.0) * (d.0 - c.0) + (b.1 - a.1) * (d.1 - c.1) < 0.0;
    }
    let opposite = |x: f64, y: f64| (x > 0.0) != (y > 0.0) && x != 0.0 && y != 0.0;
    if opposite(abc, abd) && opposite(cda, cdb) {
        return true;
    }
    let within = |p: (f64, f64), q: (f64, f64), r: (f64, f64)| r.0 >= p.0.min(q.0) && r.0 <= p.0.max(q.0) && r.1 >= p.1.min(q.1) && r.1 <= p.1.max(q.1);
    (abc == 0.0 && within(a, b, c)) || (abd == 0.0 && within(a, b, d)) || (cda == 0.0 && within(c, d, a)) || (cdb == 0.0 && within(c, d, b))
}

pub(super) fn check(blank: &FlatBlank) -> Result<(), Error> {
    let outline = &blank.outline;
    let Some(first) = outline.first().filter(|_| outline.len() >= 3) else {
        return Err(fault("a blank needs at least three sides", outline.len()));
    };
    if outline.len() > MOST {
        return Err(Error::new(ErrorKind::TooLarge, "the outline has too many stretches")
            .at("outline")
            .value_of(outline.len())
            .accepts(format!("at most {MOST}"))
            .cured_by("a coarser tolerance"));
    }
    for (i, (edge, next)) in outline.iter().zip(outline.iter().cycle().skip(1)).enumerate() {
        if edge.to != next.from {
            return Err(fault(
                "the outline is open",
                format_args!("stretch {i} ends at {}, {} and the next starts at {}, {}", edge.to.x, edge.to.y, next.from.x, next.from.y),
            ));
        }
        if edge.from == edge.to {
            return Err(fault("a stretch of the outline has no length", format_args!("stretch {i} at {}, {}", edge.from.x, edge.from.y)));
        }
    }
    let origin = first.from;
    let all: Vec<Chords> = outline.iter().map(|e| chords(e, origin)).collect::<Result<_, _>>()?;
    // By their lowest x, so that only stretches beside each other are compared.
    let mut order: Vec<usize> = (0..all.len()).collect();
    let low = |i: usize| all.get(i).map_or(0.0, |c| c.low.0);
    order.sort_by(|a, b| low(*a).total_cmp(&low(*b)).then(a.cmp(b)));
    for (k, &i) in order.iter().enumerate() {
        let Some(a) = all.get(i) else { continue };
        for &j in order.get(k + 1..).unwrap_or_default() {
            let Some(b) = all.get(j) else { continue };
            if b.low.0 > a.high.0 {
                break;
            }
            if b.low.1 > a.high.1 || b.high.1 < a.low.1 {
                continue;
            }
            if crosses(a, b, i, j, all.len()) {
                let (i, j) = (i.min(j), i.max(j));
                let at = outline.get(j).map_or(origin, |e| e.from);
                return Err(fault("the outline crosses or touches itself", format_args!("stretches {i} and {j}, near {}, {}", at.x, at.y)));
            }
        }
    }
    Ok(())
}

fn crosses(a: &Chords, b: &Chords, i: usize, j: usize, count: usize) -> bool {
    let (follows, precedes) = ((i + 1) % count == j, (j + 1) % count == i);
    let (last_a, last_b) = (a.points.len().saturating_sub(2), b.points.len().saturating_sub(2));
    for (m, p) in a.points.windows(2).enumerate() {
        for (n, q) in b.points.windows(2).enumerate() {
            let ([a0, a1], [b0, b1]) = (p, q) else { continue };
            let hit = if follows && m == last_a && n == 0 {
                meet(*a0, *a1, *b0, *b1, true)
            } else if precedes && n == last_b && m == 0 {
                meet(*b0, *b1, *a0, *a1, true)
            } else {
                meet(*a0, *a1, *b0, *b1, false)
            };
            if hit {
                return true;
            }
        }
    }
    false
}
