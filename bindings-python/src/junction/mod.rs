//! The classes of `seamwright.junction`.

mod adjoining;
mod cap_outline;
mod end_proposal;
mod kick_out;
mod kinds;
mod levels;
mod moves;
mod pipe;
mod solved;
mod water;
mod work;

pub(crate) use adjoining::Adjoining;
pub(crate) use cap_outline::{CapBlank, CapOutline};
pub(crate) use end_proposal::{EndProposal, ProposedEnd, ProposedEnds};
pub(crate) use kick_out::{KickOut, KickOutPiece};
pub(crate) use kinds::{
    Coping, CurbBack, Eave, ExpansionAcross, ExpansionAlong, Headwall, HighSide, Hip, PitchTransition, Rake, Ridge, Sidewall, Step, Valley,
};
pub(crate) use levels::Levels;
pub(crate) use moves::JointMoves;
pub(crate) use pipe::{BeadSize, Pipe, PipePlan};
pub(crate) use solved::{AlongLine, JunctionTrim, LayoutLine, SectionPoint, SideEnd, Solved, datum_line};
pub(crate) use water::{FacePath, PathCheck, PathFault, PathLap, RowShelter, WaterCheck, WaterPath};
pub(crate) use work::{LineOrder, WorkPlan, WorkStep};
