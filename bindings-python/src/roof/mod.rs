//! The classes of `seamwright.roof`.

mod drain;
mod line;
mod outline;
mod plane;
mod whole_roof;

pub(crate) use drain::Drain;
pub(crate) use line::{Line, Side};
pub(crate) use outline::{Bounds, Edge, Outline, Point};
pub(crate) use plane::{Plane, Vertex};
pub(crate) use whole_roof::{Roof, RoofInput, Wall};
