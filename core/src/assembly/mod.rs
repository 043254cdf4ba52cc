//! Junction lines met with the laid panels: everything that lies along a real line of the roof.
//!
//! A junction is solved in its section, and a plane is laid in panels; here the two meet. [`PlanePanels`] indexes a laid plane by its edges;
//! [`JunctionLine`] takes a line, its section and the panels on its sides, and gives the real bays, closures, tape, beads, rows of fasteners, cleats,
//! trims and the lines to strike. [`Corners`] says which trim laps over which, and what each runs on; [`CornerPlan`] does so for a roof and adds up the runs. [`ClipPlan`], [`PinPlan`] and [`MovementPlan`] take a
//! whole plane: clips along its seams, what pins its panels, and whether their moving ends have room.
//!
//! Stations run along a line from its start; its left flank is its own side. Left and right of a bay are as seen looking up the slope.

mod bay;
pub mod cautions;
mod clips;
mod closures;
mod coping_run;
mod coping_walls;
mod corner_ends;
mod corner_plan;
mod corner_rules;
mod corners;
mod end_movement;
mod fastener_rows;
mod junction_line;
mod line_bays;
mod line_parts;
mod line_seals;
mod pan_end;
mod pins;
mod plane_panels;
mod sealed_line;
mod seam_runs;
mod struck_lines;
mod tapes;
mod totals;
mod trim_runs;

#[cfg(test)]
mod along_tests;
#[cfg(test)]
mod bay_tests;
#[cfg(test)]
mod coping_run_tests;
#[cfg(test)]
mod coping_walls_tests;
#[cfg(test)]
mod corner_plan_tests;
#[cfg(test)]
mod corner_tests;
#[cfg(test)]
mod pan_end_tests;
#[cfg(test)]
mod plane_tests;
#[cfg(test)]
mod sealed_line_tests;
#[cfg(test)]
mod test_lines;

pub use crate::units::TapeReading;
pub use bay::{Bay, BayEnd, Beside, Flank, Hand, PanelEdge, SideBays, Stretch};
pub use clips::{ClipGroup, ClipPlan, ClipRule, ClipSchedule, FixedZone};
pub use closures::{ClosureChoice, ClosureGroup, ClosureList, ClosureRun};
pub(crate) use coping_run::coping_stretches;
pub use coping_run::{CopingCleat, CopingEnd, CopingJoint, CopingPiece, CopingPieces, CopingRun, CopingScrews, CopingTee};
pub use coping_walls::{CopedWall, CopingCorner, CopingCornerKind, CopingMeets, CopingPlan, CopingWalls, PlainWall, RunOfCoping, TeeOnRun};
pub use corner_ends::{PairRule, TrimEnd};
pub use corner_plan::{ClosedEnds, CornerPlan, CornerSchedule, CornerToCorner, EndAtCorner, JointOpening, KindWithCorners, LineStands, LineWithCorners};
pub use corner_rules::laps_over;
pub use corners::{Corner, CornerAllowances, CornerLine, CornerPair, Corners, KindAllowance, LineEnd, RoofCorners};
pub use end_movement::{EdgeMovement, MovementChoice, MovementPlan, PlaneMovement};
pub use fastener_rows::{FastenerRun, FastenerStations};
pub use junction_line::{JunctionLine, JunctionSide, LineChoices};
pub use line_bays::LineBays;
pub use line_parts::{BeadRun, CleatKind, CleatRun, ClosureRow, FastenerRow, LineAssembly, SeamPlugs, TapeRun, TrimRun};
pub use line_seals::{LineSeals, SealChoices, SideSeal, TrimJoints};
pub use pan_end::{PanEnd, PanEndCut, PanEndLeg, PanEndOn, PanEndSide};
pub use pins::{Fixing, PanelPin, PinPlan, PlanePins};
pub use plane_panels::PlanePanels;
pub use sealed_line::{SealBreak, SealCheck, SealLayer, SealNeed, SealPassage, SealedLine};
pub use struck_lines::{SideMeeting, StrikeChoice, StrikeLines, StruckLine};
pub use tapes::{BeadAlong, DevelopedTape, SeamSurface, TapeChoice, TapeOverPanels};
pub use totals::{BeadTotal, SealantTotals, TapeTotal, sealant_totals};
pub use trim_runs::{LineEnds, NamedTrim, TrimAlong, TrimChoice, TrimLength};
