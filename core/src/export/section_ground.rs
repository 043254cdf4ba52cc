//! What a junction is built on, in its section: decks, the wall or the face beside them, and the underlayment.

use super::fold::Point;
use super::section_axis::{Axes, Axis, Other};
use super::section_metal::{Metal, heights};
use crate::junction::Levels;

/// Drawn thickness of a deck.
pub(super) const DECK: f64 = 3.0;
/// Drawn thickness of a wall.
pub(super) const WALL: f64 = 6.0;
/// Drawn thickness of what a face hangs on.
const BOARD: f64 = 4.0;
/// What a wall or a face is drawn beyond the trims on it.
pub(super) const BEYOND: f64 = 5.0;

/// A body with its hatching.
#[derive(Debug, Clone)]
pub(super) struct Band {
    pub(super) name: &'static str,
    pub(super) ring: Vec<Point>,
    pub(super) hatch: Vec<(Point, Point)>,
}

/// A band along an axis from `from` to `to`, its outer face at height 0 and its inner one `thick` below; the inner face may start and end elsewhere.
fn band(name: &'static str, axis: &Axis, (from, to): (f64, f64), inner: (f64, f64), thick: f64, pitch: f64) -> Band {
    let ring = vec![axis.at(from, 0.0), axis.at(to, 0.0), axis.at(inner.1, -thick), axis.at(inner.0, -thick)];
    let (low, high) = (from.max(inner.0), to.min(inner.1));
    let mut hatch = Vec::new();
    let mut a = low + pitch * 0.5;
    // Slanting strokes that keep within the band.
    while a + thick < high {
        hatch.push((axis.at(a, -thick), axis.at(a + thick, 0.0)));
        a += pitch;
    }
    Band { name, ring, hatch }
}

/// A band with square ends at a height: its outer face, and how thick it is.
pub(super) fn band_at(name: &'static str, axis: &Axis, (from, to): (f64, f64), (face, thick): (f64, f64), pitch: f64) -> Band {
    raised(band(name, axis, (from, to), (from, to), thick, pitch), axis, face)
}

/// A band so far out.
fn raised(band: Band, axis: &Axis, by: f64) -> Band {
    let up = |p: Point| (p.0 + axis.n.0 * by, p.1 + axis.n.1 * by);
    Band { name: band.name, ring: band.ring.into_iter().map(up).collect(), hatch: band.hatch.into_iter().map(|(a, b)| (up(a), up(b))).collect() }
}

/// The decks, from a slot at the line on where there is one, and the wall or the face on the other side.
pub(super) fn bands(planes: &[(Axis, f64)], slot: f64, other: &Other, axes: &Axes, metal: &[Metal]) -> Vec<Band> {
    let second = axes.second.as_ref();
    let mut out = Vec::new();
    for (i, (axis, far)) in planes.iter().enumerate() {
        // Where the underside meets that of the other deck, or the back of what stands beside it.
        let neighbour = match (planes.get(1 - i.min(1)), second) {
            (Some((axis, _)), _) if planes.len() > 1 && axes.riser.is_none() => Some((*axis, DECK)),
            (_, Some(axis)) if matches!(other, Other::Fascia { .. }) => Some((*axis, BOARD)),
            _ => None,
        };
        let inner = neighbour.and_then(|(n, thick)| undersides(axis, DECK, &n, thick)).filter(|a| a.abs() < 12.0).unwrap_or(0.0);
        // A fascia covers the deck's end; the deck goes to its back.
        let (start, inner) = if slot > 0.0 { (far.signum() * slot, far.signum() * slot) } else { (0.0, inner) };
        let (low, high) = (far.min(start), far.max(start));
        let ends = if *far < 0.0 { (low, inner) } else { (inner, high) };
        out.push(band("deck", axis, (low, high), ends, DECK, 2.4));
    }
    if let (Some(riser), Some((lower, _))) = (&axes.riser, planes.first()) {
        let foot = riser.of(lower.at(0.0, 0.0)).0;
        out.push(band("riser", riser, (foot, 0.0), (foot, 0.0), BOARD, 5.0));
    }
    match (other, second) {
        (Other::Wall, Some(axis)) => {
            let top = metal.iter().flat_map(|m| &m.outline).map(|p| axis.of(*p).0).fold(10.0, f64::max) + BEYOND;
            out.push(band("wall", axis, (0.0, top), (0.0, top), WALL, 3.6));
        }
        (Other::Fascia { .. }, Some(axis)) => {
            let on_face = |p: &Point| {
                let (a, h) = axis.of(*p);
                (h > -1.0 && h < 30.0).then_some(a)
            };
            let low = metal.iter().flat_map(|m| &m.outline).filter_map(on_face).fold(10.0, f64::max) + BEYOND;
            let start = planes.first().and_then(|(deck, _)| undersides(axis, BOARD, deck, 0.0)).filter(|a| a.abs() < 12.0).unwrap_or(0.0);
            out.push(band("fascia", axis, (0.0, low), (start, low), BOARD, 5.0));
        }
        _ => {}
    }
    out
}

/// What builds a deck up, from the far end of its plane to the line or to the slot there, cut off square or plumb, whichever is shorter.
pub(super) fn packing(axis: &Axis, top: f64, (far, slot): (f64, f64)) -> Option<Band> {
    let near = far.signum() * slot;
    let plumb = near + top * axis.d.1 / axis.d.0;
    let above = if far < 0.0 { near.min(plumb) } else { near.max(plumb) };
    let ends = |near: f64| (near.min(far), near.max(far));
    (top > 0.0).then(|| raised(band("built-up deck", axis, ends(above), ends(near), top, 7.0), axis, top))
}

/// The wall under a coping, so thick, its top along the line from the outer axis' start to the inner's.
pub(super) fn wall_under(inner: &Axis, outer: &Axis, metal: &[Metal]) -> Band {
    let low = metal.iter().flat_map(|m| &m.outline).map(|p| outer.of(*p).0).fold(10.0, f64::max) + BEYOND;
    let (down, behind) = outer.of(inner.at(0.0, 0.0));
    let ring = vec![outer.at(0.0, 0.0), outer.at(low, 0.0), outer.at(low, behind), outer.at(down, behind)];
    // Slanting strokes between the lower edge of the top and where the wall breaks off, cut off at the faces.
    let (head, thick) = (down + 1.0, -behind);
    let mut hatch = Vec::new();
    let mut c = head + 4.0;
    while c < low + thick {
        let (from, to) = ((c - low).max(0.0), (c - head).min(thick));
        if to > from {
            hatch.push((outer.at(c - from, -from), outer.at(c - to, -to)));
        }
        c += 6.0;
    }
    Band { name: "wall", ring, hatch }
}

/// The line along which the drawing of a plane breaks off, up to a height.
pub(super) fn broken(axis: &Axis, far: f64, top: f64) -> Vec<Point> {
    let (low, high) = (-DECK - 1.6, top + 1.6);
    let middle = f64::midpoint(low, high);
    [(0.0, low), (0.0, middle - 1.2), (1.1, middle - 0.5), (-1.1, middle + 0.5), (0.0, middle + 1.2), (0.0, high)].map(|(a, h)| axis.at(far + a, h)).to_vec()
}

/// Where, along the first axis, its underside meets the underside of the other.
fn undersides(axis: &Axis, thick: f64, other: &Axis, other_thick: f64) -> Option<f64> {
    // A point a d - thick n lies at height -other_thick over the other axis.
    let slope = axis.d.0 * other.n.0 + axis.d.1 * other.n.1;
    let square = axis.n.0 * other.n.0 + axis.n.1 * other.n.1;
    (slope.abs() > 0.03).then(|| (thick * square - other_thick) / slope)
}

/// The underlayment from the far end of a plane to the line or to the slot there: over the edge of a trim that lies on the deck, and on from there no further than a lap.
pub(super) fn underlayment(axis: &Axis, (levels, deck): (&Levels, f64), (far, slot): (f64, f64), metal: &[Metal], scale: f64) -> Vec<Point> {
    const OVER: f64 = 9.0;
    let own = deck + (levels.underlayment.mm() * scale).max(0.45) - 0.1;
    let step = if far < 0.0 { 0.5 } else { -0.5 };
    let mut out = vec![axis.at(far, own)];
    let mut a = far;
    let mut lapped = 0.0;
    while a.abs() > slot + 0.3 && (a > 0.0) == (far > 0.0) {
        let on_deck = metal.iter().flat_map(|m| heights(&m.outline, axis, a)).filter(|(low, _)| *low < deck + 0.2 + levels.underlayment.mm() * scale * 0.5);
        let top = on_deck.filter(|(_, high)| *high > deck - 0.5).map(|(_, high)| high).fold(None, |t: Option<f64>, h| Some(t.map_or(h, |t| t.max(h))));
        match top {
            Some(top) => {
                if lapped == 0.0 {
                    out.push(axis.at(a - step * 2.0, own));
                }
                lapped += 0.5;
                out.push(axis.at(a, top + 0.35));
                if lapped > OVER {
                    return out;
                }
            }
            None if lapped > 0.0 => return out,
            None => {}
        }
        a += step;
    }
    out.push(axis.at(far.signum() * slot, own));
    out
}
