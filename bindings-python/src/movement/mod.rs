//! The classes of `seamwright.movement`.

mod change;

pub(crate) use change::LengthChange;
