//! The classes of `seamwright.job`.

mod given;
mod input;
mod order;
mod packet;
mod planes;
mod progress;
mod revise;
mod summary;
mod trims;
mod underlay;
mod walls_and_pipes;

pub(crate) use given::{Metals, Paperwork, Temperatures};
pub(crate) use input::Job;
pub(crate) use order::OrderLine;
pub(crate) use packet::{JunctionItem, Packet, SectionSide};
pub(crate) use planes::{PlaneClips, PlaneHeat, PlaneLay};
pub(crate) use progress::Progress;
pub(crate) use revise::{JobRevised, JobRevision, PanelChange};
pub(crate) use summary::{SourceCount, Summary};
pub(crate) use trims::{CapItem, EndCap, TrimItem, TrimRun};
pub(crate) use underlay::{EaveUnderlayment, PlaneUnderlayment, UnderlaymentPlan, ValleyUnderlayment};
pub(crate) use walls_and_pipes::{CopingCornerItem, CopingItem, KickOutItem, PipeItem};
