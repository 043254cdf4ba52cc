//! Two halves of different sections: leg by leg, each is cut where its plane meets the plane of the other's.

use super::corner::Frame;
use super::cut::PlaneCut;
use super::section::{Section, Stretch};
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::num::space::{V3, add, cross, dot, norm, scale, unit};
use crate::trim::size::to_length;
use crate::units::Length;

/// Two legs whose planes turn from each other by less than this, as a sine, are taken as parallel.
const PARALLEL: f64 = 1e-9;
/// Lines or planes nearer than this, in millimetres, are one.
const NEAR: f64 = 1e-6;

/// The cuts of both halves, one for each stretch, and how far their corners part.
pub(super) struct Met {
    pub(super) planes: (Vec<PlaneCut>, Vec<PlaneCut>),
    pub(super) parts: Length,
}

#[derive(Debug, Clone, Copy)]
struct Line {
    at: V3,
    way: V3,
}

/// A leg's plane: a point of it, and its normal.
struct Sheet {
    at: V3,
    normal: V3,
}

fn sheet(stretch: &Stretch, frame: &Frame) -> Sheet {
    let way = frame.point((num::cos_deg(stretch.heading), num::sin_deg(stretch.heading)), 0.0);
    Sheet { at: frame.point(stretch.from, 0.0), normal: cross(way, frame.along) }
}

/// The point of a line nearest to another line; nothing for parallel ones.
fn nearest(a: Line, b: Line) -> Option<V3> {
    let across = cross(a.way, b.way);
    let square = dot(across, across);
    if square < PARALLEL * PARALLEL {
        return None;
    }
    let between = add(b.at, scale(a.at, -1.0));
    Some(add(a.at, scale(a.way, dot(cross(between, b.way), across) / square)))
}

/// Where two planes meet, through the point of it that lies nearest to the first's own.
fn meeting(a: &Sheet, b: &Sheet) -> Option<Line> {
    let way = unit(cross(a.normal, b.normal)).filter(|_| norm(cross(a.normal, b.normal)) >= PARALLEL)?;
    // From a's point, within a, towards b.
    let within = cross(way, a.normal);
    let by = dot(add(b.at, scale(a.at, -1.0)), b.normal) / dot(within, b.normal);
    Some(Line { at: add(a.at, scale(within, by)), way })
}

/// The plane through a point with this normal, as it cuts a run; nothing where it lies along the run.
fn plane(at: V3, normal: V3, frame: &Frame) -> Option<PlaneCut> {
    let facing = dot(normal, frame.along);
    (facing.abs() > 1e-9 * norm(normal)).then(|| PlaneCut {
        at_origin: dot(normal, at) / facing,
        by_x: -dot(normal, frame.x) / facing,
        by_y: -dot(normal, frame.y) / facing,
    })
}

/// The part of `v` square to the unit vector `way`.
fn square_to(v: V3, way: V3) -> V3 {
    add(v, scale(way, -dot(v, way)))
}

fn no_meeting(i: usize, what: String) -> Error {
    Error::new(ErrorKind::Impossible, "the two halves' legs do not meet").at(format!("profile.legs[{i}]")).value_of(what).accepts("legs whose planes meet")
}

/// The line of each leg, those in one plane left open.
fn leg_lines(sheets: &[(Sheet, Sheet)]) -> Result<Vec<Option<Line>>, Error> {
    let mut out = Vec::with_capacity(sheets.len());
    for (i, (a, b)) in sheets.iter().enumerate() {
        let line = meeting(a, b);
        if line.is_none() {
            let apart = dot(add(b.at, scale(a.at, -1.0)), a.normal).abs();
            if apart > NEAR {
                return Err(no_meeting(i, format!("leg {i} in order, hems counted: parallel, {} apart", to_length(apart)?)));
            }
        }
        out.push(line);
    }
    Ok(out)
}

/// Closes the lines of legs that lie in one plane: through the corners at both ends, or through one of them halfway between the runs.
fn close_open(lines: &mut [Option<Line>], sheets: &[(Sheet, Sheet)], frames: &(Frame, Frame)) {
    let known: Vec<Option<Line>> = lines.to_vec();
    let halfway = add(frames.1.along, scale(frames.0.along, -1.0));
    for (i, line) in lines.iter_mut().enumerate().filter(|(_, line)| line.is_none()) {
        let Some((a, _)) = sheets.get(i) else { continue };
        // A neighbour's line comes through this leg's plane at the corner between them.
        let through = |neighbour: Option<&Option<Line>>| -> Option<V3> {
            let l = neighbour.copied().flatten()?;
            let falls = dot(l.way, a.normal);
            (falls.abs() > PARALLEL).then(|| add(l.at, scale(l.way, dot(add(a.at, scale(l.at, -1.0)), a.normal) / falls)))
        };
        let before = through(i.checked_sub(1).and_then(|b| known.get(b)));
        let after = through(known.get(i + 1));
        let across = unit(square_to(halfway, a.normal)).unwrap_or(frames.0.x);
        *line = Some(match (before, after) {
            (Some(p), Some(q)) => Line { at: p, way: unit(add(q, scale(p, -1.0))).unwrap_or(across) },
            (Some(p), None) | (None, Some(p)) => Line { at: p, way: across },
            (None, None) => Line {
                at: nearest(Line { at: a.at, way: frames.0.along }, Line { at: sheets.get(i).map_or(a.at, |s| s.1.at), way: frames.1.along }).unwrap_or(a.at),
                way: across,
            },
        });
    }
}

/// The normal of the cut through a bend: of the plane that holds the lines of both legs.
fn bend_normal(a: Line, b: Line, between: V3) -> V3 {
    let turned = cross(a.way, b.way);
    if norm(turned) > PARALLEL {
        return turned;
    }
    // The two layers of a hem: side by side, or one line.
    let aside = square_to(add(b.at, scale(a.at, -1.0)), a.way);
    if norm(aside) > NEAR { cross(a.way, aside) } else { square_to(between, a.way) }
}

pub(super) fn meet(sections: &(Section, Section), frames: (Frame, Frame), within: Length) -> Result<Met, Error> {
    let (one, two) = (&sections.0.0, &sections.1.0);
    let turns = |s: &[Stretch]| s.iter().filter(|s| s.is_bend()).map(|s| (s.part, s.turn > 0.0)).collect::<Vec<_>>();
    if turns(one) != turns(two) {
        return Err(Error::new(ErrorKind::Conflict, "the two halves have not the same legs, bends and hems in their order")
            .at("profile")
            .value_of(format_args!("{} bends against {}", turns(two).len(), turns(one).len()))
            .accepts("the same bends, each up or down as its fellow"));
    }
    let between = add(frames.0.along, frames.1.along);
    if norm(cross(frames.0.along, frames.1.along)) < PARALLEL {
        return Err(Error::new(ErrorKind::Impossible, "runs in one line have no corner at which two sections could meet")
            .at("profile")
            .value_of("0 deg between the runs")
            .accepts("a turn")
            .cured_by("a tapered trim between the two sections"));
    }
    let legs = |s: &[Stretch], frame: &Frame| s.iter().filter(|s| !s.is_bend()).map(|s| sheet(s, frame)).collect::<Vec<_>>();
    let sheets: Vec<(Sheet, Sheet)> = legs(one, &frames.0).into_iter().zip(legs(two, &frames.1)).collect();
    let mut lines = leg_lines(&sheets)?;
    close_open(&mut lines, &sheets, &frames);
    let lines: Vec<Line> = lines.into_iter().flatten().collect();

    // Where two legs follow each other, their lines must meet on the bend.
    let mut parts = 0.0_f64;
    for (i, pair) in lines.windows(2).enumerate() {
        let [a, b] = pair else { continue };
        let apart = match nearest(*a, *b) {
            Some(on_a) => {
                let on_b = nearest(*b, *a).unwrap_or(on_a);
                norm(add(on_b, scale(on_a, -1.0))).max(misses(&sheets, i, *a, *b, &frames))
            }
            None => 0.0,
        };
        parts = parts.max(apart);
        if apart > within.mm() + NEAR {
            return Err(Error::new(ErrorKind::Impossible, "the two halves' corners part at a bend")
                .at(format!("profile.bends[{i}]"))
                .value_of(format_args!("bend {i} in order, hems counted: {}", to_length(apart)?))
                .accepts(format!("at most {within}"))
                .cured_by("leg lengths and angles of the second profile by which its corners lie on the first one's"));
        }
    }
    let cut = |stretches: &[Stretch], frame: &Frame| -> Result<Vec<PlaneCut>, Error> {
        let mut out = Vec::with_capacity(stretches.len());
        for i in 0..stretches.len() {
            let leg = i / 2;
            let Some(&a) = lines.get(leg) else { continue };
            let (at, normal) = match lines.get(leg + 1) {
                Some(&b) if i % 2 == 1 => (nearest(a, b).unwrap_or(a.at), bend_normal(a, b, between)),
                // On a leg every plane through its line cuts alike; the one nearest to square to the bisector leans least.
                _ => (a.at, square_to(between, a.way)),
            };
            out.push(plane(at, normal, frame).ok_or_else(|| no_meeting(leg, format!("leg {leg} in order, hems counted: the cut would run along the bend")))?);
        }
        Ok(out)
    };
    Ok(Met { planes: (cut(one, &frames.0)?, cut(two, &frames.1)?), parts: to_length(if parts > NEAR { parts } else { 0.0 })? })
}

/// How far apart the lines of two legs come to the edge in which the legs meet, on either half.
fn misses(sheets: &[(Sheet, Sheet)], i: usize, a: Line, b: Line, frames: &(Frame, Frame)) -> f64 {
    let (Some(before), Some(after)) = (sheets.get(i), sheets.get(i + 1)) else { return 0.0 };
    let on = |p: &Sheet, q: &Sheet, frame: &Frame| -> f64 {
        // The edge: a line along the run through where the two legs' lines cross in the section.
        let Some(edge) = meeting(p, q).map(|l| Line { at: l.at, way: frame.along }) else { return 0.0 };
        match (nearest(edge, a), nearest(edge, b)) {
            (Some(m), Some(n)) => norm(add(n, scale(m, -1.0))),
            _ => 0.0,
        }
    };
    on(&before.0, &after.0, &frames.0).max(on(&before.1, &after.1, &frames.1))
}
