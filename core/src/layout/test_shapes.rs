//! Planes of any shape for the laws: any vertex in any strip.

use super::EdgeUse;
use crate::num;
use crate::panel::{Panel, PanelEnd, Seam};
use crate::practice::panel as practice;
use crate::roof::{Edge, Outline, Point};
use crate::units::Length;
use proptest::prelude::*;

/// A star with a star-shaped hole around its middle: whole micrometres, any vertex in any strip.
#[derive(Debug, Clone)]
pub(super) struct Shape {
    pub(super) outer: Vec<(i64, i64)>,
    pub(super) hole: Vec<(i64, i64)>,
}

#[allow(clippy::cast_possible_truncation, reason = "a few metres in micrometres")]
fn star(radii: &[f64], turn: f64) -> Vec<(i64, i64)> {
    let n = radii.len() as f64;
    radii
        .iter()
        .enumerate()
        .map(|(i, r)| {
            let a = turn + 360.0 * i as f64 / n;
            ((r * num::cos_deg(a) * 1e3) as i64, (r * num::sin_deg(a) * 1e3) as i64)
        })
        .collect()
}

pub(super) fn shapes() -> impl Strategy<Value = Shape> {
    let outer = prop::collection::vec(1500.0..9000.0_f64, 3..20);
    // Inside the circle that the outer ring's edges cannot enter: 1500 / 2 for a triangle.
    let hole = prop::collection::vec(20.0..700.0_f64, 3..9);
    (outer, hole, any::<bool>(), 0.0..360.0_f64)
        .prop_map(|(outer, hole, with_hole, turn)| Shape { outer: star(&outer, turn), hole: if with_hole { star(&hole, turn + 11.0) } else { Vec::new() } })
}

fn point((x, y): (i64, i64), (dx, dy): (i64, i64)) -> Point {
    Point::new(Length::from_pm(x * 1_000_000 + dx), Length::from_pm(y * 1_000_000 + dy))
}

pub(super) fn outline(shape: &Shape, by: (i64, i64)) -> Outline {
    let ring = |r: &[(i64, i64)]| r.iter().map(|&v| point(v, by)).collect::<Vec<_>>();
    let holes = if shape.hole.is_empty() { vec![] } else { vec![ring(&shape.hole)] };
    Outline::new(ring(&shape.outer), holes).unwrap()
}

pub(super) fn mirrored(shape: &Shape) -> Shape {
    let ring = |r: &[(i64, i64)]| r.iter().rev().map(|&(x, y)| (-x, y)).collect();
    Shape { outer: ring(&shape.outer), hole: ring(&shape.hole) }
}

pub(super) fn panel(coverage_um: i32) -> Panel {
    Panel::new(Length::micrometres(coverage_um), Length::inches(1), Seam::DoubleLock { lock: Length::inches_64(16) }).unwrap()
}

pub(super) fn bare(_: &Edge) -> EdgeUse {
    EdgeUse::End(PanelEnd::hold_back(Length::ZERO))
}

/// An end that depends on the edge's own length alone, so that it follows the edge into any position and winding.
pub(super) fn by_length(e: &Edge) -> EdgeUse {
    let (dx, dy) = ((e.to.x - e.from.x).pm() as f64, (e.to.y - e.from.y).pm() as f64);
    let size = (dx * dx + dy * dy).sqrt() / 1e9;
    // Almost along the seams an edge ends no panel; twice as far off as what is refused, so that a turn within rounding changes nothing.
    if e.meeting().degrees() < 2.0 * practice::LEAST_MEETING.degrees() {
        return EdgeUse::Side;
    }
    #[allow(clippy::cast_possible_truncation, reason = "a few metres in millimetres")]
    let k = (size * 7.0) as i32 % 5;
    let end = PanelEnd::hold_back(Length::micrometres(3000 * k)).with_fold(Length::micrometres(1270 * k));
    EdgeUse::End(if k > 2 { end.with_field_trim(Length::inches(2)) } else { end })
}
