//! The classes of `seamwright.record`.

mod caution;
mod source;
mod worksheet;

pub(crate) use caution::Caution;
pub(crate) use source::Source;
pub(crate) use worksheet::{Step, Worksheet};
