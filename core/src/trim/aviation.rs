//! The aviation rule, with its coefficients as printed.

use super::size::BendMm;
use crate::error::{Error, ErrorKind};
use crate::record::{Seen, Source, Step};
use crate::units::Length;

/// Radius term per degree, as printed: cut from the radian's 0.0174533, and a part of the rule.
const PER_RADIUS_FACTOR: f64 = 0.01743;
/// Thickness term per degree, as printed: a neutral-axis factor of about 0.447.
const PER_THICKNESS_FACTOR: f64 = 0.0078;

// FAA-H-8083-31, chapter 4, is the usual reference for it; that its print has 0.01743 was not read there.
pub(super) static SOURCE: Source = Source::published(
    "sheet-metal layout workbook",
    "6th edition, 2012",
    "empirical bend allowance (0.01743 R + 0.0078 T) per degree, 1 to 180 degrees",
    Seen::Secondary,
);

#[inline]
pub(super) fn allowance_mm(bend: &BendMm) -> Result<f64, Error> {
    if !(1.0..=180.0).contains(&bend.degrees()) {
        return Err(Error::new(ErrorKind::OutOfRange, "the aviation rule does not cover this angle")
            .at("angle")
            .value_of(bend.size.angle)
            .accepts("1 deg to 180 deg from flat")
            .cured_by("the neutral-axis rule for this bend"));
    }
    Ok((PER_RADIUS_FACTOR * bend.r + PER_THICKNESS_FACTOR * bend.t) * bend.degrees())
}

pub(super) fn step(bend: &BendMm, allowance: Length) -> Step {
    Step::new("bend allowance BA")
        .formula("(0.01743 R + 0.0078 T) A")
        .with("A", bend.size.angle)
        .with("R", bend.size.inside_radius)
        .with("T", bend.size.thickness)
        .gives(allowance)
        .source(SOURCE.clone())
}
