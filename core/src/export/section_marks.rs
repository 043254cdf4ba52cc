//! Fasteners, tape and beads of a junction's section.

use super::fold::Point;
use super::section_axis::{Axis, on_paper};
use super::section_metal::{Metal, heights, lowest_top, stack};
use super::section_panel::{Panel, TAPE};
use crate::junction::{Along, AlongLine, Bites, JunctionTrim};
use crate::num;

/// Screws reach this far below the deck.
const BITE: f64 = 4.0;

/// Something that lies along the line.
#[derive(Debug, Clone)]
pub(super) enum Mark {
    /// A fastener from its head to its point.
    Fastener { head: Point, point: Point, rivet: bool },
    /// Tape as a ring.
    Tape(Vec<Point>),
    /// A bead about its middle.
    Bead { at: Point, radius: f64 },
}

impl Mark {
    /// Where its leader points at.
    pub(super) fn handle(&self) -> Point {
        match self {
            Mark::Fastener { head, .. } => *head,
            Mark::Tape(ring) => {
                let count = ring.iter().fold(0.0, |n, _| n + 1.0);
                let sum = ring.iter().fold((0.0, 0.0), |s, p| (s.0 + p.0, s.1 + p.1));
                if count > 0.0 { (sum.0 / count, sum.1 / count) } else { (0.0, 0.0) }
            }
            Mark::Bead { at, .. } => *at,
        }
    }

    /// Its strokes, for keeping clear of it.
    pub(super) fn chords(&self) -> Vec<(Point, Point)> {
        match self {
            Mark::Fastener { head, point, .. } => {
                let l = num::hypot(point.0 - head.0, point.1 - head.1).max(0.1);
                let (x, y) = ((point.0 - head.0) / l, (point.1 - head.1) / l);
                let over = (head.0 - x * 0.9, head.1 - y * 0.9);
                vec![(over, *point), ((over.0 - y * 1.2, over.1 + x * 1.2), (over.0 + y * 1.2, over.1 - x * 1.2))]
            }
            Mark::Tape(ring) => ring.iter().copied().zip(ring.iter().copied().cycle().skip(1)).collect(),
            Mark::Bead { at, radius } => vec![((at.0 - radius, at.1), (at.0 + radius, at.1)), ((at.0, at.1 - radius), (at.0, at.1 + radius))],
        }
    }
}

/// What the marks of a side are set on.
pub(super) struct Ground<'a> {
    pub(super) axis: &'a Axis,
    pub(super) metal: &'a [Metal],
    pub(super) panel: Option<&'a Panel>,
    pub(super) trims: &'a [JunctionTrim],
    pub(super) scale: f64,
    /// Whether fasteners go through the first sheet alone, as behind a counterflashing.
    pub(super) is_wall: bool,
    /// Whether fasteners bite the curb under the metal, and not the deck.
    pub(super) is_curb: bool,
}

impl Ground<'_> {
    fn pan_at(&self, a: f64) -> Option<f64> {
        let panel = self.panel?;
        (a >= panel.end.min(panel.far) && a <= panel.end.max(panel.far)).then_some(panel.top)
    }

    /// The mark of something along the line, if it is drawn by itself.
    pub(super) fn mark(&self, line: &AlongLine) -> Option<Mark> {
        let a = self.axis.place(line.from_line, self.scale);
        match &line.what {
            Along::Fasteners { bites: Bites::Trim, .. } => Some(self.rivet(a)),
            Along::Fasteners { bites, .. } => Some(self.screw(a, *bites, &line.name)),
            Along::Tape { width, over_seams } => Some(self.tape(a, width.mm() * self.scale / 2.0, *over_seams)),
            Along::Bead { width, depth } => {
                let radius = (f64::midpoint(width.mm(), depth.mm()) * self.scale / 2.0).max(0.9);
                Some(Mark::Bead { at: self.axis.at(a, 0.0), radius })
            }
            Along::Closures { .. } | Along::ContinuousCleat | Along::OffsetCleat => None,
        }
    }

    fn screw(&self, a: f64, bites: Bites, name: &str) -> Mark {
        let over = stack(self.metal, self.axis, a);
        let pan = self.pan_at(a);
        // A screw of the panel itself goes through the pan; any other through the lowest metal there, with what lies on it.
        let through_pan = name.contains("panel") && !name.contains("strip");
        let top = lowest_top(&over, -1.0, if self.is_wall { -1.0 } else { 2.6 * self.scale + 0.7 });
        // A cleat beside a pan is nailed to the deck, under the panels.
        let on_deck = name.starts_with("edge cleats");
        let head = match (pan, top) {
            (_, None) if on_deck => 0.0,
            (Some(pan), _) if through_pan => pan,
            (_, Some(top)) => top,
            (Some(pan), None) => pan,
            (None, None) => 0.0,
        };
        let point = match (bites, pan) {
            (Bites::Panel | Bites::Slot, Some(pan)) => pan - 1.6,
            _ if self.is_curb => head - 2.0 * BITE,
            _ => -BITE,
        };
        Mark::Fastener { head: self.axis.at(a, head), point: self.axis.at(a, point.min(head - 1.6)), rivet: false }
    }

    fn rivet(&self, a: f64) -> Mark {
        // At the edge of a flange that turns down, through the middle of what turns down, toward the roof's upper part.
        for trim in self.trims {
            for pair in trim.corners.windows(2) {
                let (Some(p), Some(q)) = (pair.first(), pair.get(1)) else { continue };
                let (p, q) = (on_paper(*p, self.scale), on_paper(*q, self.scale));
                let (u, v) = (self.axis.of(p), self.axis.of(q));
                let (run, drop) = ((u.0 - v.0).abs(), (u.1 - v.1).abs());
                let high = if u.1 > v.1 { u } else { v };
                if high.1 > 0.0 && drop > run && (high.0 - a).abs() < self.scale {
                    let at = (f64::midpoint(p.0, q.0), f64::midpoint(p.1, q.1));
                    let l = num::hypot(q.0 - p.0, q.1 - p.1);
                    let across = (-(q.1 - p.1) / l, (q.0 - p.0) / l);
                    let inward = -self.axis.panels;
                    let sign = if (across.0 * self.axis.d.0 + across.1 * self.axis.d.1) * inward < 0.0 { -1.0 } else { 1.0 };
                    let by = |d: f64| (at.0 + across.0 * sign * d, at.1 + across.1 * sign * d);
                    return Mark::Fastener { head: by(-0.4), point: by(2.6), rivet: true };
                }
            }
        }
        let top = stack(self.metal, self.axis, a).iter().map(|(_, high)| *high).fold(None, |best: Option<f64>, high| Some(best.map_or(high, |b| b.max(high))));
        let head = top.or_else(|| self.pan_at(a)).unwrap_or(0.0);
        Mark::Fastener { head: self.axis.at(a, head), point: self.axis.at(a, head - 2.8), rivet: true }
    }

    fn tape(&self, a: f64, half: f64, over_seams: bool) -> Mark {
        let middle = self.tape_height(a, over_seams);
        let (low, high) = (middle - TAPE / 2.0, middle + TAPE / 2.0);
        Mark::Tape(vec![self.axis.at(a - half, low), self.axis.at(a + half, low), self.axis.at(a + half, high), self.axis.at(a - half, high)])
    }

    /// The middle of the thin gap that the tape fills: on the pan, or else the highest under a piece of metal.
    fn tape_height(&self, a: f64, over_seams: bool) -> f64 {
        let pan = self.pan_at(a);
        if let (true, Some(pan)) = (over_seams, pan) {
            return pan + TAPE / 2.0;
        }
        let mut surfaces: Vec<(f64, f64)> = self.metal.iter().flat_map(|m| heights(&m.outline, self.axis, a)).collect();
        surfaces.extend(pan.map(|p| (p - 0.1, p)));
        surfaces.push((-1.0, 0.0));
        surfaces.sort_by(|x, y| x.1.total_cmp(&y.1));
        let most = 3.0 * self.scale + TAPE;
        let gaps = surfaces.iter().zip(surfaces.iter().skip(1)).map(|(low, high)| (low.1, high.0));
        let thin = gaps.filter(|(low, high)| high - low < most).fold(None, |_, gap| Some(gap));
        match thin {
            Some((low, high)) => f64::midpoint(low, high),
            None => surfaces.last().map_or(0.0, |(_, top)| top + TAPE / 2.0),
        }
    }
}
