//! The lengths of one run, in millimetres.
//!
//! An end that meets several lines follows each line, shifted by its own allowance, to the next: where two shifted lines cross within
//! the reach of both, the cut turns there, as the lines are struck on the roof, be it in this run or in one beside it. Lines that do not
//! cross there leave a step between them.

use super::clip::{Part, Run};

/// What one run measures.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Measured {
    /// Greatest finished length over the width.
    pub(crate) finished: f64,
    /// The x of that seam line.
    pub(crate) at: f64,
    /// Its clear length.
    pub(crate) clear: f64,
    /// What the lower and the upper end add there.
    pub(crate) lower_allowance: f64,
    pub(crate) upper_allowance: f64,
    /// Finished lengths along the two sides.
    pub(crate) left: f64,
    pub(crate) right: f64,
    /// The lowest and the highest point of the panel as ordered: with the field trims.
    pub(crate) foot: f64,
    pub(crate) head: f64,
    /// Upright extent of the finished panel.
    pub(crate) blank: f64,
    /// The same with the field trims.
    pub(crate) ordered: f64,
    /// Finished ends: those with no field trim.
    pub(crate) lower_finished: bool,
    pub(crate) upper_finished: bool,
    /// Whether a line of each end is skew.
    pub(crate) both_skew: bool,
    /// Whether both ends pin the panel.
    pub(crate) pinned_twice: bool,
    /// Whether an end steps within the width.
    pub(crate) stepped: bool,
}

/// Lines further apart than this where they should meet are joined by an edge along the seams.
const STEP: f64 = 1e-6;

/// One end of a run, seen so that further out is more: up at the upper end, down at the lower.
#[derive(Clone, Copy)]
struct End<'a> {
    parts: &'a [Part<'a>],
    /// Lines beyond the run's left and right side that may cut into it.
    beside: [Option<Part<'a>>; 2],
    outward: f64,
    with_trim: bool,
}

/// How two neighbouring shifted lines go on from one to the other.
#[derive(Clone, Copy)]
enum Turn {
    /// They cross at this x and the nearer in counts: an outward corner.
    Inner(f64),
    /// They cross at this x and the further out counts: an inward corner.
    Outer(f64),
}

/// A part that an end turns into, and how.
type Beside<'a> = (&'a Part<'a>, Turn);

impl Turn {
    fn at(self) -> f64 {
        let (Turn::Inner(x) | Turn::Outer(x)) = self;
        x
    }

    fn choose(self, own: f64, other: f64) -> f64 {
        match self {
            Turn::Inner(_) => own.min(other),
            Turn::Outer(_) => own.max(other),
        }
    }
}

impl End<'_> {
    /// How far out this part's shifted line is.
    fn line(&self, part: &Part<'_>, x: f64) -> f64 {
        let trim = if self.with_trim { part.line.trim } else { 0.0 };
        self.outward * part.line.y_extended(x) + (part.line.allowance_at(x) + trim)
    }

    fn cross(&self, a: &Part<'_>, b: &Part<'_>, near: f64) -> Option<(f64, f64)> {
        let turn = self.outward * (a.line.slope() - b.line.slope()) + (a.line.lean() - b.line.lean());
        let x = near + (self.line(b, near) - self.line(a, near)) / turn;
        x.is_finite().then_some((x, turn))
    }

    fn turn(&self, a: &Part<'_>, b: &Part<'_>) -> Option<Turn> {
        if (a.line.y(a.x1) - b.line.y(b.x0)).abs() > STEP {
            return None;
        }
        let (x, turn) = self.cross(a, b, a.x1)?;
        (x >= a.line.x0 && x <= b.line.x1).then_some(if turn > 0.0 { Turn::Inner(x) } else { Turn::Outer(x) })
    }

    fn neighbours(&self, i: usize) -> (Option<Beside<'_>>, Option<Beside<'_>>) {
        let Some(part) = self.parts.get(i) else { return (None, None) };
        let [beyond_left, beyond_right] = &self.beside;
        let left = i.checked_sub(1).map_or(beyond_left.as_ref(), |j| self.parts.get(j));
        let right = self.parts.get(i + 1).or(beyond_right.as_ref());
        (left.and_then(|other| Some((other, self.turn(other, part)?))), right.and_then(|other| Some((other, self.turn(part, other)?))))
    }

    /// One line from side to side.
    fn only(&self) -> Option<&Part<'_>> {
        match (self.parts, &self.beside) {
            ([only], [None, None]) => Some(only),
            _ => None,
        }
    }

    /// How far out the end is at this x, which lies on part `i`.
    fn reach(&self, i: usize, x: f64) -> f64 {
        let Some(part) = self.parts.get(i) else { return f64::NEG_INFINITY };
        let own = self.line(part, x);
        if self.only().is_some() {
            return own;
        }
        let (left, right) = self.neighbours(i);
        // What lies nearer in counts last, whichever side it is on.
        let both = [left, right];
        let of = |inner: bool, out: f64| {
            let turns = both.iter().flatten().filter(|(_, turn)| matches!(turn, Turn::Inner(_)) == inner);
            turns.fold(out, |out, (other, turn)| turn.choose(out, self.line(other, x)))
        };
        of(true, of(false, own))
    }

    /// Where the end may bend on part `i`, beside the part's own ends.
    fn bends(&self, i: usize) -> [Option<f64>; 3] {
        let (left, right) = self.neighbours(i);
        let over = match (left, right, self.parts.get(i)) {
            // A short part may vanish between its neighbours.
            (Some((l, _)), Some((r, _)), Some(part)) => self.cross(l, r, (part.x0 + part.x1) * 0.5).map(|(x, _)| x),
            _ => None,
        };
        [left.map(|(_, t)| t.at()), right.map(|(_, t)| t.at()), over]
    }

    /// The furthest out that the end reaches.
    fn furthest(&self) -> f64 {
        if let Some(only) = self.only() {
            return self.line(only, only.x0).max(self.line(only, only.x1));
        }
        let mut out = f64::NEG_INFINITY;
        for (i, part) in self.parts.iter().enumerate() {
            let bends = self.bends(i).into_iter().flatten().filter(|&x| x > part.x0 && x < part.x1);
            out = [part.x0, part.x1].into_iter().chain(bends).map(|x| self.reach(i, x)).fold(out, f64::max);
        }
        out
    }

    fn steps(&self) -> bool {
        self.parts.iter().zip(self.parts.iter().skip(1)).any(|(a, b)| (a.line.y(a.x1) - b.line.y(b.x0)).abs() > STEP)
    }
}

/// A run between one line below and one above: everything is told by its two sides.
fn between(run: &Run<'_>, lower: &End<'_>, upper: &End<'_>, low: &Part<'_>, high: &Part<'_>) -> Measured {
    let both = |end: &End<'_>, part: &Part<'_>| [end.line(part, run.left), end.line(part, run.right)];
    let (down, up) = (both(lower, low), both(upper, high));
    let (trimmed_down, trimmed_up) = (both(&End { with_trim: true, ..*lower }, low), both(&End { with_trim: true, ..*upper }, high));
    let further = |[a, b]: [f64; 2]| a.max(b);
    let (furthest_down, furthest_up) = (further(trimmed_down), further(trimmed_up));
    let [left, right] = [up[0] + down[0], up[1] + down[1]];
    // At one length on both sides the left one tells.
    let (finished, at, k) = if right > left { (right, run.right, 1) } else { (left, run.left, 0) };
    let (foot, head) = (low.line.y(at), high.line.y(at));
    let of = |ends: [f64; 2]| if k == 0 { ends[0] } else { ends[1] };
    Measured {
        finished,
        at,
        clear: head - foot,
        lower_allowance: of(down) + foot,
        upper_allowance: of(up) - head,
        left,
        right,
        foot: -furthest_down,
        head: furthest_up,
        blank: further(up) + further(down),
        ordered: furthest_up + furthest_down,
        lower_finished: low.line.trim <= 0.0,
        upper_finished: high.line.trim <= 0.0,
        both_skew: [low, high].iter().all(|p| p.line.y0.to_bits() != p.line.y1.to_bits()),
        pinned_twice: low.line.pins && high.line.pins,
        stepped: false,
    }
}

pub(crate) fn measure(run: &Run<'_>) -> Option<Measured> {
    let lower = End { parts: run.lower, beside: run.lower_beside, outward: -1.0, with_trim: false };
    let upper = End { parts: run.upper, beside: run.upper_beside, outward: 1.0, with_trim: false };
    if let (Some(low), Some(high)) = (lower.only(), upper.only()) {
        return Some(between(run, &lower, &upper, low, high));
    }
    let (last_lower, last_upper) = (run.lower.len().checked_sub(1)?, run.upper.len().checked_sub(1)?);
    let ends = [run.lower, run.upper];
    let (down, up) = (End { with_trim: true, ..lower }.furthest(), End { with_trim: true, ..upper }.furthest());
    let mut out = Measured {
        finished: f64::NEG_INFINITY,
        at: run.left,
        clear: 0.0,
        lower_allowance: 0.0,
        upper_allowance: 0.0,
        left: upper.reach(0, run.left) + lower.reach(0, run.left),
        right: upper.reach(last_upper, run.right) + lower.reach(last_lower, run.right),
        foot: -down,
        head: up,
        blank: upper.furthest() + lower.furthest(),
        ordered: up + down,
        lower_finished: run.lower.iter().all(|p| p.line.trim <= 0.0),
        upper_finished: run.upper.iter().all(|p| p.line.trim <= 0.0),
        both_skew: ends.iter().all(|end| end.iter().any(|p| p.line.y0.to_bits() != p.line.y1.to_bits())),
        pinned_twice: ends.iter().all(|end| end.iter().any(|p| p.line.pins)),
        stepped: lower.steps() || upper.steps(),
    };
    // Both ends are straight between their breaks and bends, so the greatest length is at one of those.
    let (mut i, mut j) = (0, 0);
    while let (Some(low), Some(high)) = (run.lower.get(i), run.upper.get(j)) {
        let (x0, x1) = (low.x0.max(high.x0), low.x1.min(high.x1));
        let bends = lower.bends(i).into_iter().chain(upper.bends(j)).flatten().filter(|&x| x > x0 && x < x1);
        for x in [x0, x1].into_iter().chain(bends) {
            let (down, up) = (lower.reach(i, x), upper.reach(j, x));
            if up + down > out.finished {
                let (foot, head) = (low.line.y(x), high.line.y(x));
                out.finished = up + down;
                out.at = x;
                out.clear = head - foot;
                out.lower_allowance = down + foot;
                out.upper_allowance = up - head;
            }
        }
        let (low_end, high_end) = (low.x1, high.x1);
        if low_end <= high_end {
            i += 1;
        }
        if high_end <= low_end {
            j += 1;
        }
    }
    Some(out)
}
