//! The classes of `seamwright.junction`.

mod kinds;
mod levels;
mod solved;

pub(crate) use kinds::{CurbBack, Eave, Headwall, HighSide, Hip, PitchTransition, Rake, Ridge, Sidewall, Valley};
pub(crate) use levels::Levels;
pub(crate) use solved::{AlongLine, JunctionTrim, LayoutLine, SectionPoint, SideEnd, Solved, datum_line};
