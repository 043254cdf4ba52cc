//! The classes of `seamwright.layout`.

mod input;
mod laid;
mod limits;

pub(crate) use input::{EdgeUse, Layout, Start};
pub(crate) use laid::{Coil, EndPart, Group, LaidPanel, LaidPlane, mark};
pub(crate) use limits::{LengthLimit, NarrowLimit, OrderRounding};
