//! The classes of `seamwright.pitch`.

mod bends;
mod corner;
mod framing;
mod minimum;
mod value;

pub(crate) use bends::{BendAt, JunctionBend};
pub(crate) use corner::{Corner, CornerGeometry, CornerSide};
pub(crate) use framing::{Framing, FramingRow};
pub(crate) use minimum::{SlopeCheck, SlopeRule};
pub(crate) use value::Pitch;
