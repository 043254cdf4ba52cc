//! A line as far as it lies on the metal of a blank.

use super::shape::{BlankEdge, BlankLine, FlatBlank};
use crate::error::Error;
use crate::num;
use crate::trim::Point;
use crate::trim::size::to_length;

/// Stretches of a line shorter than this, in millimetres, are noise of where it crosses.
const NOISE: f64 = 1e-6;

/// What lies on a line within this, in millimetres, lies along it: the rounding of a point.
const ALONG: f64 = 1.5e-9;

/// A line in millimetres from its own start.
struct Ray {
    way: (f64, f64),
    length: f64,
}

impl Ray {
    /// A point in the line's own measure: how far along it, and how far to its left.
    fn of(&self, p: (f64, f64)) -> (f64, f64) {
        (p.0 * self.way.0 + p.1 * self.way.1, self.way.0 * p.1 - self.way.1 * p.0)
    }
}

/// Where a circle about this point of the line's measure meets the line.
fn circle((along, aside): (f64, f64), radius: f64) -> Option<(f64, f64)> {
    let square = radius * radius - aside * aside;
    (square > 0.0).then(|| (along - square.sqrt(), along + square.sqrt()))
}

fn crossings(edge: &BlankEdge, start: Point, ray: &Ray, out: &mut Vec<f64>) -> Result<(), Error> {
    let (a, b) = (ray.of(start.to(edge.from)?), ray.of(start.to(edge.to)?));
    if let Some(arc) = edge.arc {
        // The ends of the arc that lie on the line, and both points of its circle: those off the arc part nothing that is not inside anyway.
        if let Some((low, high)) = circle(ray.of(start.to(arc.centre)?), arc.radius.mm()) {
            out.extend([low, high]);
        }
    }
    if a.1 == 0.0 {
        out.push(a.0);
    }
    if (a.1 > 0.0) != (b.1 > 0.0) {
        out.push(a.0 + (b.0 - a.0) * a.1 / (a.1 - b.1));
    }
    Ok(())
}

/// Whether a point lies within the outline, by the turns of the outline around it, arcs as sixteen chords with the segment beyond them.
fn inside(blank: &FlatBlank, start: Point, p: (f64, f64)) -> Result<bool, Error> {
    let mut within = false;
    for edge in &blank.outline {
        let (a, b) = (start.to(edge.from)?, start.to(edge.to)?);
        if (a.1 > p.1) != (b.1 > p.1) && p.0 < a.0 + (b.0 - a.0) * (p.1 - a.1) / (b.1 - a.1) {
            within = !within;
        }
        let Some(arc) = edge.arc else { continue };
        // Between the arc and its chord inside and outside change places.
        let c = start.to(arc.centre)?;
        let in_circle = num::hypot(p.0 - c.0, p.1 - c.1) < arc.radius.mm();
        let left = (b.0 - a.0) * (p.1 - a.1) - (b.1 - a.1) * (p.0 - a.0);
        // The arc lies to the right of its chord where it turns counter-clockwise.
        if in_circle && left * arc.turn.degrees() < 0.0 {
            within = !within;
        }
    }
    Ok(within)
}

/// Whether a point lies on the metal.
fn on_metal(blank: &FlatBlank, start: Point, p: (f64, f64)) -> Result<bool, Error> {
    for hole in &blank.holes {
        let c = start.to(hole.centre)?;
        if num::hypot(p.0 - c.0, p.1 - c.1) < hole.diameter.mm() / 2.0 {
            return Ok(false);
        }
    }
    inside(blank, start, p)
}

/// From a point to the nearest of a stretch of the outline, in millimetres.
fn distance(edge: &BlankEdge, p: Point) -> Result<f64, Error> {
    let (a, b) = (p.to(edge.from)?, p.to(edge.to)?);
    let ends = num::hypot(a.0, a.1).min(num::hypot(b.0, b.1));
    if let Some(arc) = edge.arc {
        let (c, from) = (p.to(arc.centre)?, arc.centre.to(edge.from)?);
        let ahead = (num::atan2_deg(-c.1, -c.0) - num::atan2_deg(from.1, from.0)) * arc.turn.degrees().signum();
        let on = (ahead % 360.0 + 360.0) % 360.0 <= arc.turn.degrees().abs();
        return Ok(if on { (num::hypot(c.0, c.1) - arc.radius.mm()).abs() } else { ends });
    }
    let (x, y) = (b.0 - a.0, b.1 - a.1);
    let share = -(a.0 * x + a.1 * y) / (x * x + y * y);
    if !(0.0..=1.0).contains(&share) {
        return Ok(ends);
    }
    Ok((a.0 * y - a.1 * x).abs() / num::hypot(x, y))
}

/// From a point of the metal to the outline, in millimetres; less than nothing for a point outside it.
pub(super) fn clear_of_edge(blank: &FlatBlank, p: Point) -> Result<f64, Error> {
    let mut least = f64::INFINITY;
    for edge in &blank.outline {
        least = least.min(distance(edge, p)?);
    }
    Ok(if inside(blank, p, (0.0, 0.0))? { least } else { -least })
}

/// Where stretches of the outline run along the line. There the line is an edge of the metal, whichever side the metal is on, and no line on it.
fn edges_along(blank: &FlatBlank, start: Point, ray: &Ray) -> Result<Vec<(f64, f64)>, Error> {
    let mut out = Vec::new();
    for edge in blank.outline.iter().filter(|e| e.arc.is_none()) {
        let (a, b) = (ray.of(start.to(edge.from)?), ray.of(start.to(edge.to)?));
        if a.1.abs() <= ALONG && b.1.abs() <= ALONG {
            out.push((a.0.min(b.0), a.0.max(b.0)));
        }
    }
    Ok(out)
}

/// The line as far as it lies on the metal; not where it is the edge of it.
pub(super) fn clip(blank: &FlatBlank, line: BlankLine) -> Result<Vec<BlankLine>, Error> {
    let (x, y) = line.from.to(line.to)?;
    let length = num::hypot(x, y);
    if length == 0.0 {
        return Ok(Vec::new());
    }
    let ray = Ray { way: (x / length, y / length), length };
    let mut cuts = vec![0.0, ray.length];
    for edge in &blank.outline {
        crossings(edge, line.from, &ray, &mut cuts)?;
    }
    for hole in &blank.holes {
        if let Some((low, high)) = circle(ray.of(line.from.to(hole.centre)?), hole.diameter.mm() / 2.0) {
            cuts.extend([low, high]);
        }
    }
    let edges = edges_along(blank, line.from, &ray)?;
    cuts.extend(edges.iter().flat_map(|e| [e.0, e.1]));
    cuts.retain(|c| (0.0..=ray.length).contains(c));
    cuts.sort_by(f64::total_cmp);
    let mut runs: Vec<(f64, f64)> = Vec::new();
    for pair in cuts.windows(2) {
        let [from, to] = pair else { continue };
        let middle = (from + to) / 2.0;
        if to - from < NOISE || edges.iter().any(|e| e.0 <= middle && middle <= e.1) || !on_metal(blank, line.from, (ray.way.0 * middle, ray.way.1 * middle))? {
            continue;
        }
        match runs.last_mut() {
            Some(last) if from - last.1 < NOISE => last.1 = *to,
            _ => runs.push((*from, *to)),
        }
    }
    let at = |along: f64| -> Result<Point, Error> {
        if along <= NOISE {
            return Ok(line.from);
        }
        if ray.length - along <= NOISE {
            return Ok(line.to);
        }
        Ok(Point { x: (line.from.x + to_length(ray.way.0 * along)?).length()?, y: (line.from.y + to_length(ray.way.1 * along)?).length()? })
    };
    runs.into_iter().map(|(from, to)| Ok(BlankLine { from: at(from)?, to: at(to)? })).collect()
}
