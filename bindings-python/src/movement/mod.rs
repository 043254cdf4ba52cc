//! The classes of `seamwright.movement`.

mod change;
mod check;

pub(crate) use change::LengthChange;
pub(crate) use check::EndVerdict;
