//! `seamwright.movement.EndVerdict`.

use crate::place::{cautions, part};
use crate::record::Caution;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::movement as core_movement;

part! {
    /// The verdict on the fold and the gap of an end that moves, with what would do.
    EndVerdict(core_movement::EndVerdict) in "seamwright.movement",
    shown verdict: if verdict.holds { "holds" } else { "does not hold" };

    /// Whether both the clearance and the engagement are kept all year.
    holds(verdict) -> bool = verdict.holds;
    /// The least gap of the year; negative where metal pushes.
    least_gap(verdict) -> Length = Length(verdict.least_gap);
    /// The least hooked length of the year; negative where the fold is off.
    least_engagement(verdict) -> Length = Length(verdict.least_engagement);
    /// The least and greatest gap when laid that would do with this fold; ``None`` where no gap does.
    gaps(verdict) -> Option<(Length, Length)> = verdict.gaps.map(|(least, greatest)| (Length(least), Length(greatest)));
    /// The greatest distance to the fixed line that this fold allows; ``None`` where the metal does not move.
    greatest_to_fixed(verdict) -> Option<Length> = verdict.greatest_to_fixed.map(Length);
    /// The least fold that would do: clearance, engagement and the whole travel.
    least_fold(verdict) -> Length = Length(verdict.would_do.least_fold);
    /// The gap to leave with it at the laying temperature.
    gap_when_laid(verdict) -> Length = Length(verdict.would_do.gap_when_laid);
    /// What fails, and what else to know.
    cautions(verdict) -> Vec<Caution> = cautions(&verdict.cautions);
}
