//! The search, in whole picometres on the circle of one coverage.
//!
//! How far seams are from a thing goes up and down by one with the shift. So the greatest room at the tightest place lies at the top of one such wave
//! or where one rises and another falls, and the nearest clear shift where one clearance just holds: all of these are tried, and nothing between them can
//! be better.

/// A thing across the slope, and the clearance on both sides of it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wave {
    pub(super) left: i128,
    pub(super) right: i128,
    pub(super) clearance: i128,
}

/// Seams one coverage apart; a shift is the place of one of them from the start asked for.
#[derive(Debug, Clone)]
pub(super) struct Circle {
    pub(super) coverage: i128,
    /// A seam of the start asked for.
    pub(super) asked: i128,
    pub(super) waves: Vec<Wave>,
    /// The bounds of the plane.
    pub(super) low: i128,
    pub(super) high: i128,
}

impl Circle {
    /// A shift as the least move: more than minus half a coverage, at most half.
    pub(super) fn turned(&self, shift: i128) -> i128 {
        let t = shift.rem_euclid(self.coverage);
        if 2 * t > self.coverage { t - self.coverage } else { t }
    }

    fn shift_to(&self, seam: i128) -> i128 {
        self.turned(seam - self.asked)
    }

    /// The nearest seam line to a thing, and its distance; less than zero where it runs through.
    pub(super) fn nearest(&self, wave: &Wave, shift: i128) -> (i128, i128) {
        let from_left = (self.asked + shift - wave.left).rem_euclid(self.coverage);
        let wide = wave.right - wave.left;
        let seam = wave.left + from_left;
        if from_left <= wide {
            // A thing with its clearances is no wider than a panel, so one seam at most runs through it.
            return (seam, -(from_left.min(wide - from_left)));
        }
        let (beyond, before) = (from_left - wide, self.coverage - from_left);
        if beyond < before { (seam, beyond) } else { (seam - self.coverage, before) }
    }

    /// The least room beyond the clearances.
    pub(super) fn worst(&self, shift: i128) -> Option<i128> {
        self.waves.iter().map(|w| self.nearest(w, shift).1 - w.clearance).min()
    }

    pub(super) fn is_clear(&self, shift: i128) -> bool {
        self.worst(shift).is_none_or(|spare| spare >= 0)
    }

    /// The widths of the panels at the two bounds; a panel as wide as the plane where there is but one.
    pub(super) fn ends(&self, shift: i128) -> (i128, i128) {
        let seam = self.asked + shift;
        let whole = |rest: i128| if rest == 0 { self.coverage } else { rest }.min(self.high - self.low);
        (whole((seam - self.low).rem_euclid(self.coverage)), whole((self.high - seam).rem_euclid(self.coverage)))
    }

    /// Shifts at which a clearance just holds.
    pub(super) fn edges(&self) -> impl Iterator<Item = i128> {
        self.waves.iter().flat_map(|w| [w.left - w.clearance, w.right + w.clearance]).map(|seam| self.shift_to(seam))
    }

    /// Shifts at which an end panel is whole, has the least width, or both ends are equal.
    pub(super) fn end_shifts(&self, least: Option<i128>) -> impl Iterator<Item = i128> {
        let at_least = least.into_iter().flat_map(|l| [self.low + l, self.high - l]);
        [self.low, self.high].into_iter().chain(at_least).chain(self.halves(self.low + self.high)).map(|seam| self.shift_to(seam))
    }

    /// Shifts at which the room of one thing has its greatest, or falls as that of another rises.
    pub(super) fn balances(&self) -> impl Iterator<Item = i128> {
        let pairs = self.waves.iter().flat_map(|a| self.waves.iter().map(move |b| (a, b)));
        pairs.flat_map(|(rises, falls)| self.halves(rises.right + rises.clearance + falls.left - falls.clearance)).map(|seam| self.shift_to(seam))
    }

    /// Seams at half of this, on the circle; where the half is not whole, the two beside it.
    fn halves(&self, twice: i128) -> [i128; 4] {
        let (here, over) = (twice, twice + self.coverage);
        [here.div_euclid(2), (here + 1).div_euclid(2), over.div_euclid(2), (over + 1).div_euclid(2)]
    }

    /// The shifts that keep everything clear, as ranges from at least nothing and less than one coverage.
    pub(super) fn ranges(&self) -> Vec<(i128, i128)> {
        let mut stops: Vec<i128> = self.edges().map(|t| t.rem_euclid(self.coverage)).collect();
        stops.sort_unstable();
        stops.dedup();
        let Some((&first, &last)) = stops.first().zip(stops.last()) else { return vec![(0, self.coverage)] };
        let mut out: Vec<(i128, i128)> = Vec::new();
        for (k, &stop) in stops.iter().enumerate() {
            if !self.is_clear(stop) {
                continue;
            }
            // Between two stops a clearance holds throughout or nowhere; a range of one picometre has nothing between.
            let next = stops.get(k + 1).copied().unwrap_or(first + self.coverage);
            let on = self.is_clear((stop + next).div_euclid(2)) && self.is_clear(next);
            match out.last_mut() {
                Some(before) if before.1 == stop => before.1 = if on { next } else { stop },
                _ => out.push((stop, if on { next } else { stop })),
            }
        }
        // The last range may run on into the first.
        if out.len() > 1
            && let (Some(&(from, to)), Some(&end)) = (out.first(), out.last())
            && end.1 == first + self.coverage
            && from == first
        {
            out.remove(0);
            if let Some(end) = out.last_mut() {
                end.1 = to + self.coverage;
            }
        }
        debug_assert!(first <= last);
        out
    }
}
