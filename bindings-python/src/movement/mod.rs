//! The classes of `seamwright.movement`.

mod change;
mod check;
mod parting;

pub(crate) use change::LengthChange;
pub(crate) use check::EndVerdict;
pub(crate) use parting::{CapMoves, SideParting};
