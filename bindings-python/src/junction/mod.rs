//! The classes of `seamwright.junction`.

mod kinds;
mod levels;
mod pipe;
mod solved;

pub(crate) use kinds::{
    Coping, CurbBack, Eave, ExpansionAcross, ExpansionAlong, Headwall, HighSide, Hip, PitchTransition, Rake, Ridge, Sidewall, Step, Valley,
};
pub(crate) use levels::Levels;
pub(crate) use pipe::{Pipe, PipePlan};
pub(crate) use solved::{AlongLine, JunctionTrim, LayoutLine, SectionPoint, SideEnd, Solved, datum_line};
