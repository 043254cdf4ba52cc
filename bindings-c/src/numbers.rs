//! From the header's numbers to the core's enumerations.

use crate::length::*;
use crate::packet::*;
use seamwright_core::error::{Error, ErrorKind};
use seamwright_core::job::Stage;
use seamwright_core::units::{LengthUnit, Rounding};

/// Units of length by number.
pub(crate) const LENGTH_UNITS: &[(i32, LengthUnit)] = &[
    (SW_LENGTH_UNIT_INCH, LengthUnit::Inch),
    (SW_LENGTH_UNIT_FOOT, LengthUnit::Foot),
    (SW_LENGTH_UNIT_MILLIMETRE, LengthUnit::Millimetre),
    (SW_LENGTH_UNIT_CENTIMETRE, LengthUnit::Centimetre),
    (SW_LENGTH_UNIT_METRE, LengthUnit::Metre),
    (SW_LENGTH_UNIT_MICROMETRE, LengthUnit::Micrometre),
];

/// Directions of rounding by number.
pub(crate) const ROUNDINGS: &[(i32, Rounding)] = &[
    (SW_ROUNDING_CEIL, Rounding::Ceil),
    (SW_ROUNDING_FLOOR, Rounding::Floor),
    (SW_ROUNDING_AWAY, Rounding::Away),
    (SW_ROUNDING_TOWARD, Rounding::Toward),
    (SW_ROUNDING_HALF_EVEN, Rounding::HalfEven),
    (SW_ROUNDING_HALF_AWAY, Rounding::HalfAway),
];

/// Stages of the work on a job by number.
pub(crate) const STAGES: &[(i32, Stage)] = &[
    (SW_STAGE_ROOF, Stage::Roof),
    (SW_STAGE_SECTIONS, Stage::Sections),
    (SW_STAGE_PANELS, Stage::Panels),
    (SW_STAGE_LINES, Stage::Lines),
    (SW_STAGE_CLIPS, Stage::Clips),
    (SW_STAGE_TRIMS, Stage::Trims),
    (SW_STAGE_ORDER, Stage::Order),
];

pub(crate) fn length_unit(number: i32) -> Result<LengthUnit, Error> {
    find(LENGTH_UNITS, number).ok_or_else(|| {
        Error::new(ErrorKind::Unit, "not the number of a unit of length").at("unit").value_of(number).accepts("one of the SW_LENGTH_UNIT_ numbers")
    })
}

pub(crate) fn rounding(number: i32) -> Result<Rounding, Error> {
    find(ROUNDINGS, number).ok_or_else(|| {
        Error::new(ErrorKind::Unknown, "not the number of a direction of rounding").at("direction").value_of(number).accepts("one of the SW_ROUNDING_ numbers")
    })
}

/// The entry with this number.
pub(crate) fn find<T: Copy>(table: &[(i32, T)], number: i32) -> Option<T> {
    table.iter().find(|(n, _)| *n == number).map(|(_, t)| *t)
}
