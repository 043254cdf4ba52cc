//! The sheet metal of a junction's section on paper: trims folded at their true place, and what lies over what.

use super::fold::{Drawn, Fold, Point, Stretch, left_of};
use super::section_axis::{Axis, on_paper};
use crate::error::{Error, ErrorKind};
use crate::junction::JunctionTrim;
use crate::num;
use crate::trim::{BendRule, NeutralFactor, Part};

/// Sheet is drawn at least this thick.
pub(super) const SHEET: f64 = 0.5;
/// Bends are opened to at least this inside radius, so that hems show.
const LEAST_RADIUS: f64 = 0.28;

/// What a piece of metal is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Piece {
    /// A trim of the junction, by its place in the list.
    Trim(usize),
    /// Closures, by their place among what lies along the line.
    Closure(usize),
    /// An offset cleat, by its place among what lies along the line.
    Cleat(usize),
}

/// A piece of metal: a closed outline, and points on it that a leader may point at, the best first.
#[derive(Debug, Clone)]
pub(super) struct Metal {
    pub(super) piece: Piece,
    pub(super) outline: Vec<Point>,
    pub(super) handles: Vec<Point>,
    /// The middles of its legs.
    pub(super) legs: Vec<Point>,
}

fn add(p: Point, by: Point) -> Point {
    (p.0 + by.0, p.1 + by.1)
}

fn less(p: Point, q: Point) -> Point {
    (p.0 - q.0, p.1 - q.1)
}

fn along(p: Point, heading: f64, by: f64) -> Point {
    (p.0 + by * num::cos_deg(heading), p.1 + by * num::sin_deg(heading))
}

/// Between two points.
pub(super) fn middle(a: Point, b: Point, share: f64) -> Point {
    (a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share)
}

fn length(a: Point, b: Point) -> f64 {
    num::hypot(b.0 - a.0, b.1 - a.1)
}

/// Where the walk of a fold would reach its leg `wanted` if the bend before it had no radius: kept by opened bends.
fn corner_before(fold: &Fold, wanted: Part) -> Option<(Point, f64)> {
    let mut bend: Option<(f64, f64)> = None;
    for stretch in &fold.stretches {
        match *stretch {
            Stretch::Bend { radius, sweep, .. } => bend = Some((radius, sweep.abs())),
            Stretch::Leg { part, from, heading, .. } if part == wanted => {
                let reach = bend.map_or(0.0, |(radius, sweep)| if sweep <= 90.0 { radius * num::tan_deg(sweep / 2.0) } else { radius });
                return Some((along(from, heading, -reach), heading));
            }
            Stretch::Leg { .. } => {}
        }
    }
    None
}

/// A trim folded on paper at its true place, its sheet and bends drawn thick enough to be seen.
pub(super) fn trim(index: usize, trim: &JunctionTrim, scale: f64) -> Result<Metal, Error> {
    let path = || format!("solved.trims[{index}]");
    let (Some(start), Some(next)) = (trim.corners.first(), trim.corners.get(1)) else {
        return Err(Error::new(ErrorKind::Missing, "a trim is placed by its first two corners").at(path()).value_of(trim.corners.len()).accepts("2 or more"));
    };
    let flat = trim.profile.unfold(&BendRule::neutral_axis(NeutralFactor::MIDDLE)).map_err(|e| e.under(&path()))?;
    let (start, next) = (on_paper(*start, scale), on_paper(*next, scale));
    if length(start, next) == 0.0 {
        return Err(Error::new(ErrorKind::Geometry, "the first two corners of a trim are one").at(path()).accepts("two points"));
    }
    let turned = num::atan2_deg(next.1 - start.1, next.0 - start.0);
    let exact = Fold::of(&flat, Drawn { scale, least_thickness: 0.0, least_radius: 0.0, turned });
    let drawn = Fold::of(&flat, Drawn { scale, least_thickness: SHEET, least_radius: LEAST_RADIUS, turned });
    // The first corner lies on the lower face: at the sheet's edge, or outside a hem's fold.
    let hemmed = exact.stretches.first().is_some_and(|s| matches!(s, Stretch::Leg { part, .. } if part.is_of_start_edge()));
    let anchor = anchor(&exact);
    let (Some((first, heading)), Some((true_anchor, _)), Some((drawn_anchor, _))) =
        (corner_before(&exact, Part::Body(0)), corner_before(&exact, anchor), corner_before(&drawn, anchor))
    else {
        return Err(Error::new(ErrorKind::Missing, "a trim without legs").at(path()));
    };
    let first = left_of(along(first, heading, if hemmed { -exact.half } else { 0.0 }), heading, -exact.half);
    let shift = add(less(start, first), less(true_anchor, drawn_anchor));
    let outline = outline(&drawn).into_iter().map(|p| add(p, shift)).collect();
    let mut legs: Vec<(f64, Point, Point)> = drawn
        .stretches
        .iter()
        .filter_map(|s| match *s {
            Stretch::Leg { part: Part::Body(_), from, to, .. } => Some((length(from, to), add(from, shift), add(to, shift))),
            _ => None,
        })
        .collect();
    legs.sort_by(|a, b| b.0.total_cmp(&a.0));
    let handles = legs.iter().flat_map(|(_, from, to)| [0.5, 0.3, 0.7, 0.15, 0.85].map(|share| middle(*from, *to, share))).collect();
    let legs = legs.iter().map(|(_, from, to)| middle(*from, *to, 0.5)).collect();
    Ok(Metal { piece: Piece::Trim(index), outline, handles, legs })
}

/// The leg that stays at its true place when bends are opened. Sheet folded back on itself takes room, which those beyond its folds give: the anchor is the
/// longest leg of the stretch, between such folds, that has the most legs.
fn anchor(fold: &Fold) -> Part {
    let mut runs: Vec<Vec<(Part, f64)>> = vec![Vec::new()];
    for stretch in &fold.stretches {
        match *stretch {
            Stretch::Leg { part: part @ Part::Body(_), from, to, .. } => {
                if let Some(run) = runs.last_mut() {
                    run.push((part, length(from, to)));
                }
            }
            Stretch::Bend { part: Part::Body(_), sweep, .. } if sweep.abs() > 170.0 => runs.push(Vec::new()),
            _ => {}
        }
    }
    let run = runs.iter().fold(None, |best: Option<&Vec<(Part, f64)>>, run| match best {
        Some(b) if b.len() >= run.len() => Some(b),
        _ => Some(run),
    });
    run.into_iter().flatten().fold((Part::Body(0), -1.0), |best, leg| if leg.1 > best.1 { *leg } else { best }).0
}

/// Both faces of a fold as one ring of points.
fn outline(fold: &Fold) -> Vec<Point> {
    let mut ring = face(fold, fold.half);
    ring.extend(face(fold, -fold.half).into_iter().rev());
    ring
}

fn face(fold: &Fold, side: f64) -> Vec<Point> {
    let mut out = Vec::new();
    for stretch in &fold.stretches {
        match *stretch {
            Stretch::Leg { from, to, heading, .. } => out.extend([left_of(from, heading, side), left_of(to, heading, side)]),
            Stretch::Bend { centre, radius, heading, sweep, .. } => {
                let turn = if sweep < 0.0 { -1.0 } else { 1.0 };
                let radius = (radius - turn * side).max(0.0);
                let parts = (sweep.abs() / 15.0).ceil().max(1.0);
                let mut i = 1.0;
                while i < parts {
                    out.push(left_of(centre, heading + sweep * i / parts, -turn * radius));
                    i += 1.0;
                }
            }
        }
    }
    out
}

/// A strip of sheet along these points, as a ring.
pub(super) fn strip(points: &[Point], thickness: f64) -> Vec<Point> {
    let half = thickness / 2.0;
    let side = |sign: f64| {
        let mut out = Vec::with_capacity(points.len());
        for (i, p) in points.iter().enumerate() {
            let before = i.checked_sub(1).and_then(|j| points.get(j)).map(|q| unit(*q, *p));
            let after = points.get(i + 1).map(|q| unit(*p, *q));
            let (u, v) = (before.or(after).unwrap_or((1.0, 0.0)), after.or(before).unwrap_or((1.0, 0.0)));
            // The mitre of two offset lines.
            let (x, y) = (-u.1 - v.1, u.0 + v.0);
            let share = 2.0 / (x * x + y * y).max(0.2);
            out.push((p.0 + sign * half * x * share, p.1 + sign * half * y * share));
        }
        out
    };
    let mut ring = side(1.0);
    ring.extend(side(-1.0).into_iter().rev());
    ring
}

fn unit(a: Point, b: Point) -> Point {
    let l = length(a, b);
    if l > 0.0 { ((b.0 - a.0) / l, (b.1 - a.1) / l) } else { (1.0, 0.0) }
}

/// Where a ring lies over a place of an axis: its stretches by height, from low to high.
pub(super) fn heights(ring: &[Point], axis: &Axis, a: f64) -> Vec<(f64, f64)> {
    let mut out: Vec<f64> = Vec::new();
    for (p, q) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let (p, q) = (axis.of(*p), axis.of(*q));
        if (p.0 > a) != (q.0 > a) {
            out.push(p.1 + (q.1 - p.1) * (a - p.0) / (q.0 - p.0));
        }
    }
    out.sort_by(f64::total_cmp);
    out.chunks(2).filter_map(|pair| Some((*pair.first()?, *pair.get(1)?))).collect()
}

/// All the metal over a place of an axis, from low to high.
pub(super) fn stack(metal: &[Metal], axis: &Axis, a: f64) -> Vec<(f64, f64)> {
    let mut out: Vec<(f64, f64)> = metal.iter().flat_map(|m| heights(&m.outline, axis, a)).collect();
    out.sort_by(|x, y| x.0.total_cmp(&y.0));
    out
}

/// The top of the lowest metal at or above a height, with all that lies on it with gaps of at most `touch`.
pub(super) fn lowest_top(stack: &[(f64, f64)], from: f64, touch: f64) -> Option<f64> {
    let mut top: Option<f64> = None;
    for (low, high) in stack.iter().filter(|(_, high)| *high >= from) {
        match top {
            Some(t) if *low > t + touch => break,
            Some(t) => top = Some(t.max(*high)),
            None => top = Some(*high),
        }
    }
    top
}

/// Trims that lie on one another are drawn apart by what their sheet is drawn too thick; each moves outward from what was set before it.
pub(super) fn part(metal: &mut [Metal], axes: &[Axis]) {
    for i in 1..metal.len() {
        let (before, rest) = metal.split_at_mut(i);
        let Some(own) = rest.first_mut() else { continue };
        for axis in axes {
            let over = own.legs.iter().map(|leg| overlap(own, before, axis, *leg)).fold(0.0, f64::max);
            if over > 0.0 {
                let by = (axis.n.0 * over, axis.n.1 * over);
                own.outline.iter_mut().chain(own.handles.iter_mut()).chain(own.legs.iter_mut()).for_each(|p| *p = add(*p, by));
            }
        }
    }
}

/// By how much a leg that runs with an axis sinks into the sheet under it.
fn overlap(own: &Metal, before: &[Metal], axis: &Axis, leg: Point) -> f64 {
    let (a, h) = axis.of(leg);
    // A leg that stands up from the axis shows more than its sheet here.
    let Some((low, _)) = heights(&own.outline, axis, a).into_iter().find(|(low, high)| *low <= h && h <= *high && high - low < 1.6 * SHEET) else { return 0.0 };
    let tops = stack(before, axis, a).into_iter().filter(|(under, top)| top - under < 1.6 * SHEET && *under < low).map(|(_, top)| top - low);
    tops.filter(|over| *over > 0.0 && *over < SHEET).fold(0.0, f64::max)
}
