//! The panels of a junction's section with their seams, folds and turn-ups, and the closures and offset cleats between them and the trims.

use super::fold::Point;
use super::section_axis::Axis;
use super::section_metal::{Metal, Piece, SHEET, middle, stack, strip};
use crate::junction::{Along, AlongLine, Levels, Side, Solved};
use crate::num;
use crate::panel::{PanelEnd, Reach};
use crate::units::Length;

/// Drawn between a fold and what it hooks.
const CLEAR: f64 = 0.25;
/// Least drawn height of the pan's middle above the deck, so that the underlayment shows.
const LEAST_PAN: f64 = 1.1;
/// Tape is drawn at least this thick.
pub(super) const TAPE: f64 = 0.6;

/// How a section cuts a panel.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Cut {
    /// Along the seams: a seam is seen from its side.
    Along,
    /// Across the seams, the edge being a seam's leg unless it is turned up.
    AcrossOnLeg,
    /// Across the seams, the edge being flat unless it is turned up.
    AcrossFlat,
}

/// A panel on paper.
#[derive(Debug, Clone)]
pub(super) struct Panel {
    pub(super) side: Side,
    /// The middle of the pan's sheet from its far end, with fold or turn-up.
    pub(super) pan: Vec<Point>,
    /// The seam seen from its side.
    pub(super) seam: Vec<Point>,
    /// Height of the pan's upper face.
    pub(super) top: f64,
    /// The ends along the axis: of the pan toward the line, and of the drawing.
    pub(super) end: f64,
    pub(super) far: f64,
    /// Where a leader may point at.
    pub(super) handles: Vec<Point>,
}

/// What the layers of a side are on paper.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    /// Height of the top of what builds the deck up.
    pub(super) built_up: f64,
    /// Height of the pan's middle.
    pub(super) pan: f64,
    /// Height of the seam tops above the pan's middle.
    pub(super) seam: f64,
    /// Height of the closures' upper face above the deck.
    closure: f64,
}

impl Layers {
    /// Over an axis that is drawn on top of so much of what builds the deck up.
    pub(super) fn of(levels: &Levels, raised: Length, scale: f64) -> Layers {
        let built_up = (levels.built_up.mm() - raised.mm()).max(0.0) * scale;
        let below = built_up + (levels.underlayment.mm() + levels.stand_off.mm()) * scale;
        let pan = (below + levels.pan.mm() * scale / 2.0).max(built_up + LEAST_PAN);
        let seam_top = below + (levels.pan.mm() + levels.seam_height.mm()) * scale;
        Layers { built_up, pan, seam: (seam_top - pan).max(0.0), closure: seam_top + levels.closure_metal.mm() * scale }
    }
}

/// Closures by their web, standing on their tape; their flanges reach as far as the tapes under and over them.
pub(super) fn closures(solved: &Solved, axis: &Axis, side: Side, layers: &Layers, scale: f64) -> Vec<Metal> {
    let mut out = Vec::new();
    for (index, line) in of_side(solved, side) {
        let Along::Closures { web } = line.what else { continue };
        let face = axis.place(line.from_line, scale);
        let reach = |over: bool| {
            let tapes = of_side(solved, side).filter_map(|(_, l)| match l.what {
                Along::Tape { width, over_seams } if over_seams == over => Some((axis.place(l.from_line, scale), width.mm() * scale / 2.0)),
                _ => None,
            });
            let nearest = tapes.fold(None, |best: Option<(f64, f64)>, tape| match best {
                Some(b) if (b.0 - face).abs() <= (tape.0 - face).abs() => Some(b),
                _ => Some(tape),
            });
            nearest.map(|(centre, half)| if centre < face { centre - half } else { centre + half })
        };
        let top = layers.closure - SHEET / 2.0;
        let foot = (layers.closure - web.mm() * scale).max(layers.pan + SHEET / 2.0 + TAPE) + SHEET / 2.0;
        let mut points = Vec::with_capacity(4);
        points.extend(reach(true).map(|a| axis.at(a, foot)));
        points.extend([axis.at(face, foot), axis.at(face, top)]);
        points.extend(reach(false).map(|a| axis.at(a, top)));
        let handles = vec![middle(axis.at(face, foot), axis.at(face, top), 0.5)];
        out.push(Metal { piece: Piece::Closure(index), outline: strip(&points, SHEET), handles, legs: Vec::new() });
    }
    out
}

/// Offset cleats that are no trims of the junction: a Z from its front to the far edge of its tape.
pub(super) fn cleats(solved: &Solved, axis: &Axis, side: Side, metal: &[Metal], scale: f64) -> Vec<Metal> {
    let mut out = Vec::new();
    for (index, line) in of_side(solved, side) {
        if line.what != Along::OffsetCleat {
            continue;
        }
        let front = axis.place(line.from_line, scale);
        let is_trim = solved.trims.iter().flat_map(|t| &t.corners).any(|c| (axis.of(super::section_axis::on_paper(*c, scale)).0 - front).abs() < scale);
        let tape = of_side(solved, side).filter_map(|(_, l)| match l.what {
            Along::Tape { width, over_seams: false } => Some((axis.place(l.from_line, scale), width.mm() * scale / 2.0)),
            _ => None,
        });
        let nearest = tape.fold(None, |best: Option<(f64, f64)>, t| match best {
            Some(b) if (b.0 - front).abs() <= (t.0 - front).abs() => Some(b),
            _ => Some(t),
        });
        let Some((centre, half)) = nearest else { continue };
        if is_trim {
            continue;
        }
        let way = if centre < front { -1.0 } else { 1.0 };
        let end = solved.end(side).map_or(Length::ZERO, |e| e.fold).mm() * scale;
        let web = (front + way * (end + 1.0)) * way;
        let web = web.min((centre - way * half) * way) * way;
        let under = stack(metal, axis, centre).last().map_or(0.0, |(_, top)| *top);
        let foot = under + TAPE + SHEET / 2.0;
        let tongue = foot + (6.0 * scale).max(2.2);
        let points = [axis.at(front, tongue), axis.at(web, tongue), axis.at(web, foot), axis.at(centre + way * half, foot)];
        let handles = vec![middle(points[0], points[1], 0.5), middle(points[2], points[3], 0.5)];
        out.push(Metal { piece: Piece::Cleat(index), outline: strip(&points, SHEET), handles, legs: Vec::new() });
    }
    out
}

fn of_side(solved: &Solved, side: Side) -> impl Iterator<Item = (usize, &AlongLine)> {
    solved.along.iter().enumerate().filter(move |(_, l)| l.side == side)
}

/// Where an end lies along an axis: the pan's fold line or cut edge.
pub(super) fn end_at(end: &PanelEnd, axis: &Axis, scale: f64) -> f64 {
    let toward_panels = match end.reach {
        Reach::HoldBack(d) => d.mm() - end.gap.mm(),
        Reach::Overhang(d) => -d.mm() - end.gap.mm(),
    };
    axis.panels * toward_panels * scale
}

/// A panel from the far end of the drawing to its own end.
pub(super) fn panel(axis: &Axis, (side, end): (Side, &PanelEnd), (layers, cut): (&Layers, Cut), metal: &[Metal], far: f64, scale: f64) -> Panel {
    let toward = axis.panels;
    let at = end_at(end, axis, scale);
    let mut pan = layers.pan;
    let (fold, turn_up) = (end.fold.mm() * scale, end.turn_up.mm() * scale);
    if fold > 0.0 {
        // What the panel hooks lies under it, and it lies on the highest of that.
        let reach = ((far - at) * toward).clamp(0.0, 400.0);
        let mut u = 0.0;
        while u < reach {
            let over = stack(metal, axis, at + toward * u).into_iter().filter(|(low, _)| *low < layers.pan + layers.seam * 0.6);
            pan = over.map(|(_, top)| top + CLEAR + SHEET / 2.0).fold(pan, f64::max);
            u += 0.5;
        }
    }
    let mut points = vec![axis.at(far, pan)];
    let mut seam = Vec::new();
    let mut seam_end = at;
    if fold > 0.0 {
        let low = fold_height(&stack(metal, axis, at + toward * fold * 0.7), pan);
        let radius = (pan - low) / 2.0;
        let centre = at + toward * radius;
        let mut degrees = 90.0;
        while degrees >= -90.0 {
            points.push(axis.at(centre - toward * radius * num::cos_deg(degrees), low + radius + radius * num::sin_deg(degrees)));
            degrees -= 15.0;
        }
        points.push(axis.at(at + toward * fold.max(radius), low));
        seam_end = at + toward * (radius + 0.6);
    } else {
        points.push(axis.at(at, pan));
        if turn_up > 0.0 {
            points.push(axis.at(at, pan + turn_up));
        } else if cut == Cut::AcrossOnLeg {
            points.push(axis.at(at, pan + layers.seam));
        }
    }
    if cut == Cut::Along {
        seam = vec![axis.at(far, pan), axis.at(seam_end, pan), axis.at(seam_end, pan + layers.seam), axis.at(far, pan + layers.seam)];
    }
    let handles = [0.85, 0.75, 0.9, 0.65, 0.55].map(|share| axis.at(at + (far - at) * share, pan)).to_vec();
    Panel { side, pan: points, seam, top: pan + SHEET / 2.0, end: at, far, handles }
}

/// The middle of a fold's lower layer: under what lies under the pan, clear of what lies below that.
fn fold_height(stack: &[(f64, f64)], pan: f64) -> f64 {
    let mut hooked: Option<f64> = None;
    for (low, high) in stack.iter().rev().filter(|(_, high)| *high < pan) {
        match hooked {
            None => hooked = Some(*low),
            Some(under) if *high > under - 0.35 => hooked = Some(under.min(*low)),
            Some(under) => {
                let own = under - CLEAR - SHEET / 2.0;
                return if own - SHEET / 2.0 < *high + 0.1 { f64::midpoint(under, *high) } else { own };
            }
        }
    }
    hooked.map_or(pan - 2.2, |under| under - CLEAR - SHEET / 2.0)
}
