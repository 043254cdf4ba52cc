//! The stretches of seam that clips can hold: between the lines that end the panels, less their hold-backs.

use super::plane_panels::{NOISE, PlanePanels};
use crate::error::Error;
use crate::layout::EdgeUse;
use crate::panel::Reach;
use crate::units::Length;

/// A stretch of a seam or of a panel's side along an edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct SeamRun {
    pub(super) x: Length,
    /// The y of its lower end.
    pub(super) foot: Length,
    pub(super) run: Length,
    pub(super) on_edge: bool,
}

/// The stretches of a plane, and how many the hold-backs leave nothing of.
#[derive(Debug, Default)]
pub(super) struct SeamRuns {
    pub(super) runs: Vec<SeamRun>,
    pub(super) vanished: usize,
}

/// An edge across the seams, from its left end, in millimetres from the lower left corner of the bounds.
#[derive(Debug, Clone, Copy)]
struct Across {
    x0: f64,
    y0: f64,
    x1: f64,
    y1: f64,
    /// Along a seam, at the left and the right end.
    hold_back: [f64; 2],
    /// The line that goes on from it at an outward corner on the left and on the right, already shifted by its hold-back: near the corner it may be
    /// what ends the panel.
    beside: [Option<Shifted>; 2],
}

/// A line shifted by its hold-back.
#[derive(Debug, Clone, Copy)]
struct Shifted {
    x: f64,
    y: f64,
    slope: f64,
}

impl Shifted {
    fn at(&self, x: f64) -> f64 {
        self.y + (x - self.x) * self.slope
    }
}

impl Across {
    fn y(&self, x: f64) -> f64 {
        (self.y0 * (self.x1 - x) + self.y1 * (x - self.x0)) / (self.x1 - self.x0)
    }

    fn slope(&self) -> f64 {
        (self.y1 - self.y0) / (self.x1 - self.x0)
    }

    /// Where panels end below this line, or start above it.
    fn shifted(&self, upper: bool) -> Shifted {
        let ([left, right], sign) = (self.hold_back, if upper { -1.0 } else { 1.0 });
        let lean = if left.to_bits() == right.to_bits() { 0.0 } else { sign * (right - left) / (self.x1 - self.x0) };
        Shifted { x: self.x0, y: self.y0 + sign * left, slope: self.slope() + lean }
    }

    /// The end of the panels at x.
    fn panel_end(&self, x: f64, upper: bool) -> f64 {
        let [left, right] = self.hold_back;
        let back = if left.to_bits() == right.to_bits() { left } else { (left * (self.x1 - x) + right * (x - self.x0)) / (self.x1 - self.x0) };
        let own = if upper { self.y(x) - back } else { self.y(x) + back };
        let beside = self.beside.iter().flatten().map(|b| b.at(x));
        if upper { beside.fold(own, f64::min) } else { beside.fold(own, f64::max) }
    }
}

/// From one line up to the next, and the same less hold-backs.
#[derive(Debug, Clone, Copy)]
struct Interval {
    low: f64,
    high: f64,
    from: f64,
    to: f64,
}

/// The inside of the outline just left or right of x.
fn inside(active: &[Across], x: f64, left: bool) -> Vec<Interval> {
    let mut cut: Vec<&Across> = active.iter().filter(|a| if left { a.x0 < x && x <= a.x1 } else { a.x0 <= x && x < a.x1 }).collect();
    // Edges that meet at x are told apart by where they come from.
    let sign = if left { -1.0 } else { 1.0 };
    cut.sort_by(|a, b| a.y(x).total_cmp(&b.y(x)).then((sign * a.slope()).total_cmp(&(sign * b.slope()))));
    cut.chunks_exact(2)
        .filter_map(|pair| {
            let [a, b] = *pair else { return None };
            Some(Interval { low: a.y(x), high: b.y(x), from: a.panel_end(x, false), to: b.panel_end(x, true) })
        })
        .collect()
}

/// What both lists have, both being in order.
fn shared(a: &[Interval], b: &[Interval]) -> Vec<Interval> {
    let (mut i, mut j) = (0, 0);
    let mut out = Vec::new();
    while let (Some(p), Some(q)) = (a.get(i), b.get(j)) {
        let both = Interval { low: p.low.max(q.low), high: p.high.min(q.high), from: p.from.max(q.from), to: p.to.min(q.to) };
        if both.high - both.low > NOISE.mm() {
            out.push(both);
        }
        if p.high <= q.high {
            i += 1;
        } else {
            j += 1;
        }
    }
    out
}

/// What of `a` is not in `b`, both being in order.
fn without(a: &[Interval], b: &[Interval]) -> Vec<Interval> {
    let mut out = Vec::new();
    for own in a {
        let mut rest = *own;
        for other in b.iter().filter(|o| o.high > own.low && o.low < own.high) {
            if other.low - rest.low > NOISE.mm() {
                out.push(Interval { high: other.low, to: other.low, ..rest });
            }
            rest = Interval { low: other.high, from: other.high, ..rest };
        }
        if rest.high - rest.low > NOISE.mm() {
            out.push(rest);
        }
    }
    out
}

struct Sweep<'a> {
    edges: &'a [Across],
    next: usize,
    active: Vec<Across>,
}

impl Sweep<'_> {
    /// The edges at x, which must not lie left of the one before.
    fn at(&mut self, x: f64) -> &[Across] {
        self.active.retain(|a| a.x1 >= x);
        while let Some(a) = self.edges.get(self.next).filter(|a| a.x0 <= x) {
            if a.x1 >= x {
                self.active.push(*a);
            }
            self.next += 1;
        }
        &self.active
    }
}

/// Every edge across the seams, and the x of those along them.
fn edges(panels: &PlanePanels<'_>) -> Result<(Vec<Across>, Vec<Length>), Error> {
    let low = panels.layout().outline.bounds().low;
    let mm = |from: Length, to: Length| (to - from).length().map(Length::mm);
    // In the order of the outline, with the ring and whether the plane lies below.
    let mut all: Vec<Option<(Across, bool)>> = Vec::with_capacity(panels.edges().len());
    let mut along = Vec::new();
    for (edge, edge_use) in panels.edges().iter().zip(&panels.layout().edges) {
        let upper = edge.to.x < edge.from.x;
        let (a, b) = if upper { (edge.to, edge.from) } else { (edge.from, edge.to) };
        if a.x == b.x {
            along.push(a.x);
            all.push(None);
            continue;
        }
        let (x0, y0, x1, y1) = (mm(low.x, a.x)?, mm(low.y, a.y)?, mm(low.x, b.x)?, mm(low.y, b.y)?);
        let outward = if upper { 1.0 } else { -1.0 };
        let hold_back = match edge_use {
            EdgeUse::End(end) => match end.reach {
                Reach::HoldBack(d) => end.on_edge(-d.mm(), (x1 - x0, y1 - y0), outward).ends.map(|past| -past),
                Reach::Overhang(_) => [0.0; 2],
            },
            EdgeUse::Side => [0.0; 2],
        };
        all.push(Some((Across { x0, y0, x1, y1, hold_back, beside: [None, None] }, upper)));
    }
    let mut counts: Vec<usize> = Vec::new();
    for edge in panels.edges() {
        match counts.get_mut(edge.ring) {
            Some(count) => *count += 1,
            None => counts.push(1),
        }
    }
    let mut out = Vec::with_capacity(all.len());
    for (k, (edge, own)) in panels.edges().iter().zip(&all).enumerate() {
        let Some((own, upper)) = own else { continue };
        let first = k - edge.index;
        let count = counts.get(edge.ring).copied().unwrap_or(1);
        let other = |step: usize| all.get(first + (edge.index + step) % count).copied().flatten().filter(|o| o.1 == *upper).map(|o| o.0);
        // An upper ring edge runs to the left, so the one after it lies on its left.
        let (left, right) = if *upper { (other(1), other(count - 1)) } else { (other(count - 1), other(1)) };
        let outward = |l: f64, r: f64| if *upper { l > r } else { l < r };
        let left = left.filter(|l| outward(l.slope(), own.slope())).map(|l| l.shifted(*upper));
        let right = right.filter(|r| outward(own.slope(), r.slope())).map(|r| r.shifted(*upper));
        out.push(Across { beside: [left, right], ..*own });
    }
    for (k, a, b) in panels.layout().break_stretches()? {
        let Some(parted) = panels.layout().breaks.get(k) else { continue };
        let (x0, y, x1) = (mm(low.x, a.x)?, mm(low.y, a.y)?, mm(low.x, b.x)?);
        // What ends the pieces below lies below what ends those above.
        for end in [&parted.below, &parted.above] {
            let back = match end.reach {
                Reach::HoldBack(d) => d.mm(),
                Reach::Overhang(_) => 0.0,
            };
            out.push(Across { x0, y0: y, x1, y1: y, hold_back: [back; 2], beside: [None, None] });
        }
    }
    Ok((out, along))
}

/// The stretches along every seam within the plane and, where asked for, along the edges that lie along the seams.
pub(super) fn seam_runs(panels: &PlanePanels<'_>, along_edges: bool) -> Result<SeamRuns, Error> {
    let low = panels.layout().outline.bounds().low;
    let mm = |from: Length, to: Length| (to - from).length().map(Length::mm);
    let (mut across, mut beside) = edges(panels)?;
    across.sort_by(|a, b| a.x0.total_cmp(&b.x0));
    let mut out = SeamRuns::default();
    let mut keep = |x: Length, on_edge: bool, list: Vec<Interval>| -> Result<(), Error> {
        for i in list {
            if i.to - i.from <= NOISE.mm() {
                out.vanished += 1;
                continue;
            }
            let foot = (low.y + Length::from_mm(i.from)?).length()?;
            out.runs.push(SeamRun { x, foot, run: Length::from_mm(i.to - i.from)?, on_edge });
        }
        Ok(())
    };
    let mut sweep = Sweep { edges: &across, next: 0, active: Vec::new() };
    for &x in &panels.laid().seams {
        let at = mm(low.x, x)?;
        let active = sweep.at(at);
        keep(x, false, shared(&inside(active, at, true), &inside(active, at, false)))?;
    }
    if along_edges {
        beside.sort_unstable();
        beside.dedup();
        let mut sweep = Sweep { edges: &across, next: 0, active: Vec::new() };
        for x in beside {
            let at = mm(low.x, x)?;
            let active = sweep.at(at);
            let (left, right) = (inside(active, at, true), inside(active, at, false));
            keep(x, true, without(&left, &right))?;
            keep(x, true, without(&right, &left))?;
        }
    }
    Ok(out)
}
