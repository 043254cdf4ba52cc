//! Skew pieces in pairs: the cut at the top of the one is the cut at the foot of the other.
//!
//! Neither is turned: turning a piece end for end would swap its open and its overlapping leg. So both skews rise to the same side, and a pair is of one plane
//! and one hand.

use super::super::input::Layout;
use super::super::laid::{EndPart, LaidPanel};
use super::choices::PairChoice;
use super::listed::{BlankPair, ListedPiece};
use crate::error::Error;
use crate::num;
use crate::units::{Angle, Length};
use core::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

/// Skews this near to each other, in degrees, are one cut: over a wide panel they part by less than any shears see.
const ALIKE: f64 = 1e-6;

/// The skew of an end on one line; none for an end on several.
fn skew(parts: &[EndPart]) -> Option<f64> {
    match parts {
        [only] => Some(only.skew.degrees()),
        _ => None,
    }
}

/// Pieces with one skew end, by their skew in steps of [`ALIKE`].
#[derive(Default)]
struct OfSkew {
    degrees: f64,
    /// Skew above.
    below: Vec<usize>,
    /// Skew below.
    above: Vec<usize>,
}

#[allow(clippy::cast_possible_truncation, reason = "at most 90 degrees in millionths")]
fn by_skew(layout: &Layout, panels: &[LaidPanel], pieces: &[ListedPiece]) -> BTreeMap<i64, OfSkew> {
    let mut out: BTreeMap<i64, OfSkew> = BTreeMap::new();
    for (i, piece) in pieces.iter().enumerate() {
        let Some(p) = panels.get(piece.panel) else { continue };
        if p.notched || !p.left_on_seam || !p.right_on_seam || p.width != layout.panel.coverage {
            continue;
        }
        // A lapped end is square.
        let last = pieces.get(i + 1).is_none_or(|next| next.panel != piece.panel);
        let low = if piece.piece == 1 { skew(&p.lower) } else { Some(0.0) };
        let high = if last { skew(&p.upper) } else { Some(0.0) };
        let (Some(low), Some(high)) = (low, high) else { continue };
        let (degrees, is_below) = match (low.abs() > ALIKE, high.abs() > ALIKE) {
            (false, true) => (high, true),
            (true, false) => (low, false),
            _ => continue,
        };
        let of = out.entry((degrees / ALIKE).round() as i64).or_default();
        of.degrees = degrees;
        if is_below { of.below.push(i) } else { of.above.push(i) }
    }
    out
}

/// The most pairs that fit. What fits a piece fits every shorter one.
///
/// The longest piece has the fewest partners, and each of them is one of every shorter piece: so any of them that is free will do, and the first in the order
/// of laying is taken. Where the longest two fit, all do, and pieces are paired as they are laid.
fn paired(of: &OfSkew, length: impl Fn(usize) -> Length, fits: impl Fn(usize, usize) -> bool) -> Vec<(usize, usize)> {
    let longest = |of: &[usize]| of.iter().copied().max_by_key(|&i| length(i));
    let mut below = of.below.clone();
    if !longest(&of.below).zip(longest(&of.above)).is_none_or(|(a, b)| fits(a, b)) {
        below.sort_by_key(|&i| Reverse(length(i)));
    }
    let mut above = of.above.clone();
    above.sort_by_key(|&i| length(i));
    let mut rest = above.into_iter().peekable();
    let (mut free, mut out) = (BTreeSet::new(), Vec::new());
    for a in below {
        while let Some(b) = rest.next_if(|&b| fits(a, b)) {
            free.insert(b);
        }
        out.extend(free.pop_first().map(|b| (a, b)));
    }
    out
}

/// The pairs that save metal: as many as the greatest length of a blank allows. All pairs of one skew save alike, so the most pairs save most.
pub(super) fn pairs(
    layout: &Layout,
    panels: &[LaidPanel],
    pieces: &[ListedPiece],
    choice: &PairChoice,
    greatest: Option<Length>,
) -> Result<Vec<BlankPair>, Error> {
    let rounding = &layout.rounding;
    let step = rounding.both_finished.increment().max(rounding.one_finished.increment()).max(rounding.field_cut.increment());
    let mut out = Vec::new();
    for of in by_skew(layout, panels, pieces).values() {
        let skew = Angle::degrees_from(of.degrees)?;
        // Along the seams: the drop over one coverage, less what the cut takes.
        let drop = layout.panel.coverage.mm() * num::tan_deg(of.degrees).abs() - choice.kerf.mm() / skew.cos();
        if drop <= 0.0 {
            continue;
        }
        // A blank stays on the shop's steps, and never shorter than its two pieces.
        let saved = Length::from_mm(drop)?;
        let saved = Length::from_pm(saved.pm().div_euclid(step.pm()) * step.pm());
        if !saved.is_positive() {
            continue;
        }
        let length = |i: usize| pieces.get(i).map_or(Length::ZERO, |p| p.order);
        let blank = |a: usize, b: usize| length(a) + length(b) - saved;
        let fits = |a: usize, b: usize| greatest.is_none_or(|most| blank(a, b) <= most.into());
        for (below, above) in paired(of, length, fits) {
            out.push(BlankPair { below, above, blank: blank(below, above).length()?, saved });
        }
    }
    out.sort_by_key(|p| (p.below.min(p.above), p.below));
    Ok(out)
}

#[cfg(test)]
mod tests {
    use super::super::super::matching::matched;
    use super::{OfSkew, paired};
    use crate::units::Length;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn as_many_pairs_as_any_matching_has(below in prop::collection::vec(1..40_i64, 0..30), above in prop::collection::vec(1..40_i64, 0..30), most in 0..90_i64) {
            let (n, lengths) = (below.len(), [below, above].concat());
            let of = OfSkew { degrees: 30.0, below: (0..n).collect(), above: (n..lengths.len()).collect() };
            let fits = |a: usize, b: usize| lengths[a] + lengths[b] <= most;
            let found = paired(&of, |i| Length::from_pm(lengths[i]), fits);
            let mut used = vec![false; lengths.len()];
            for (a, b) in found.iter().copied() {
                prop_assert!(a < n && b >= n && fits(a, b) && !used[a] && !used[b]);
                (used[a], used[b]) = (true, true);
            }
            let best = matched(n, lengths.len() - n, |a, b| fits(a, n + b)).into_iter().flatten().count();
            prop_assert_eq!(found.len(), best);
        }
    }
}
