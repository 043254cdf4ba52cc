//! The older linear rule of DIN 6935, for square bends alone.

use super::size::BendMm;
use crate::error::{Error, ErrorKind};
use crate::record::{Seen, Source, Step};
use crate::units::{BendAngle, Length};

/// Of the inside radius: 2 - pi/2, as printed.
const PER_RADIUS_FACTOR: f64 = 0.43;
/// Of the thickness, as printed: it fixes k at 0.662, as at r/s of about 1.06.
const PER_THICKNESS_FACTOR: f64 = 1.48;

pub(super) static SOURCE: Source =
    Source::published("DIN 6935", "1975-10", "v = 0.43 r + 1.48 s for bends of 90 degrees, as given in a workshop spreadsheet", Seen::Secondary);

#[inline]
pub(super) fn allowance_mm(bend: &BendMm) -> Result<f64, Error> {
    if bend.size.angle != BendAngle::SQUARE {
        return Err(Error::new(ErrorKind::OutOfRange, "the linear rule of DIN 6935 is for square bends")
            .at("angle")
            .value_of(bend.size.angle)
            .accepts("90 deg from flat")
            .cured_by("the rule din-6935 for this bend"));
    }
    Ok(2.0 * (bend.r + bend.t) - (PER_RADIUS_FACTOR * bend.r + PER_THICKNESS_FACTOR * bend.t))
}

pub(super) fn step(bend: &BendMm, allowance: Length) -> Step {
    Step::new("flat length of the bend BA")
        .formula("2 (r + s) - v, v = 0.43 r + 1.48 s")
        .with("r", bend.size.inside_radius)
        .with("s", bend.size.thickness)
        .gives(allowance)
        .source(SOURCE.clone())
}
