//! The classes of `seamwright.assembly`.

mod bays;
mod clips;
mod closures;
mod coping;
mod corners;
mod line;
mod pan_end;
mod planes;
mod sealed;
mod struck;

pub(crate) use bays::{Bay, Beside, SideBays, Stretch};
pub(crate) use clips::ClipRule;
pub(crate) use closures::{ClosureGroup, ClosureList, ClosureRow};
pub(crate) use coping::{CopingCleat, CopingCorner, CopingMeets, CopingPiece, CopingPieces, CopingRun, CopingScrews, RunOfCoping, TeeOnRun};
pub(crate) use corners::{Corner, CornerLine, CornerPair, RoofCorners};
pub(crate) use line::{BeadRun, CleatRun, FastenerRow, LineAssembly, SeamPlugs, TapeRun, TrimRun};
pub(crate) use pan_end::{PanEndCut, PanEndLeg};
pub(crate) use planes::{ClipGroup, ClipSchedule, EdgeMovement, PanelPin, PlaneMovement, PlanePins};
pub(crate) use sealed::{SealBreak, SealCheck, SealedLine, SideSeal};
pub(crate) use struck::{StruckLine, TapeReading};
