//! Area, extent and points of a blank.

use super::shape::{BlankEdge, FlatBlank};
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::trim::size::to_length;
use crate::trim::{Arc, Bounds, Point};
use crate::units::Length;

#[cold]
fn too_large() -> Error {
    Error::new(ErrorKind::Overflow, "the blank is too large for an area").at("outline").accepts("less than 9 223 km across")
}

/// Twice the area within the chords in square picometres: exact.
fn twice_within_chords(outline: &[BlankEdge]) -> Result<i128, Error> {
    let Some(first) = outline.first() else { return Ok(0) };
    let from = |p: Point| ((p.x - first.from.x).pm(), (p.y - first.from.y).pm());
    let mut twice = 0_i128;
    for edge in outline {
        let ((ax, ay), (bx, by)) = (from(edge.from), from(edge.to));
        let cross = ax.checked_mul(by).zip(ay.checked_mul(bx)).and_then(|(p, q)| p.checked_sub(q)).ok_or_else(too_large)?;
        twice = twice.checked_add(cross).ok_or_else(too_large)?;
    }
    Ok(twice)
}

#[allow(clippy::cast_precision_loss, reason = "the exact sum is rounded once")]
pub(super) fn square_metres(blank: &FlatBlank) -> Result<f64, Error> {
    let chords = twice_within_chords(&blank.outline)? as f64 / 2e24;
    let mut area = 0.0;
    for arc in blank.outline.iter().filter_map(|e| e.arc) {
        let (radius, turn) = (arc.radius.mm(), arc.turn.radians());
        // The segment between the arc and its chord, outward where the arc turns as the outline does.
        area += radius * radius * (turn - num::sin(turn)) / 2.0;
    }
    for hole in &blank.holes {
        let radius = hole.diameter.mm() / 2.0;
        area -= core::f64::consts::PI * radius * radius;
    }
    Ok(chords + area / 1e6)
}

/// Where an arc reaches furthest along the axes, besides its ends.
fn extremes(edge: &BlankEdge, arc: &Arc) -> Result<Vec<Point>, Error> {
    let (x, y) = arc.centre.to(edge.from)?;
    let (start, turn, radius) = (num::atan2_deg(y, x), arc.turn.degrees(), arc.radius);
    let mut out = Vec::new();
    for (axis, sx, sy) in [(0.0, 1, 0), (90.0, 0, 1), (180.0, -1, 0), (270.0, 0, -1)] {
        let ahead = ((axis - start) * turn.signum() % 360.0 + 360.0) % 360.0;
        if ahead <= turn.abs() {
            out.push(Point { x: (arc.centre.x + radius * sx).length()?, y: (arc.centre.y + radius * sy).length()? });
        }
    }
    Ok(out)
}

pub(super) fn bounds(blank: &FlatBlank) -> Result<Bounds, Error> {
    let start = blank.outline.first().map_or(Point::ORIGIN, |e| e.from);
    let mut box_ = Bounds { least: start, greatest: start };
    let mut take = |p: Point| {
        box_.least = Point { x: box_.least.x.min(p.x), y: box_.least.y.min(p.y) };
        box_.greatest = Point { x: box_.greatest.x.max(p.x), y: box_.greatest.y.max(p.y) };
    };
    for edge in &blank.outline {
        take(edge.to);
        if let Some(arc) = &edge.arc {
            extremes(edge, arc)?.into_iter().for_each(&mut take);
        }
    }
    Ok(box_)
}

pub(super) fn points(blank: &FlatBlank, tolerance: Length) -> Result<Vec<Point>, Error> {
    const MOST: f64 = 10_000.0;
    let tolerance = tolerance.positive("tolerance")?;
    let mut out = Vec::with_capacity(blank.outline.len());
    for edge in &blank.outline {
        out.push(edge.from);
        let Some(arc) = edge.arc else { continue };
        // A chord over the angle p strays by r (1 - cos(p/2)); never fewer than four to the turn.
        let (radius, turn) = (arc.radius.mm(), arc.turn.degrees());
        let step = if tolerance.mm() < radius { (2.0 * num::acos_deg(1.0 - tolerance.mm() / radius)).min(90.0) } else { 90.0 };
        let count = (turn.abs() / step).ceil();
        if count > MOST || !count.is_finite() {
            return Err(Error::new(ErrorKind::TooLarge, "an arc would need too many chords").at("tolerance").value_of(tolerance).accepts(format!(
                "for a radius of {} a tolerance of about {} mm or more",
                arc.radius,
                radius * 1e-7
            )));
        }
        let (x, y) = arc.centre.to(edge.from)?;
        let mut i = 1.0;
        while i < count {
            let (sin, cos) = (num::sin_deg(turn * i / count), num::cos_deg(turn * i / count));
            let (px, py) = (to_length(x * cos - y * sin)?, to_length(x * sin + y * cos)?);
            out.push(Point { x: (arc.centre.x + px).length()?, y: (arc.centre.y + py).length()? });
            i += 1.0;
        }
    }
    Ok(out)
}
