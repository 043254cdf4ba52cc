//! The section of each kind of junction, solved in the plane square to its line.
//!
//! In that plane the supports are lines: the deck, the plane of the seam tops, a flange on its packing. A trim's legs are what lies
//! between successive intersections of its supports. [`Levels`] stacks what lies between a deck and the underside of a trim;
//! [`Support`] is one line of the section; each kind has a file of its own.
//!
//! A curb or a chimney is four junctions: a [`Headwall`] below it, a [`Sidewall`] along each side, their wall the curb, and a [`CurbBack`] above it.
//!
//! Signs: along a slope, positions are measured from the junction line and are positive **up** the slope, on either side; heights are square to the
//! plane that they belong to, from its deck, positive outward.

mod cap_outline;
#[cfg(test)]
mod cap_outline_tests;
mod cautions;
mod convex;
mod coping;
mod coping_parts;
mod curb_back;
#[cfg(feature = "serde")]
mod defaults;
mod draft;
mod drip;
mod drip_edge;
mod eave;
mod eave_gutter;
mod eave_parts;
mod end_proposal;
mod expansion_across;
mod expansion_along;
mod expansion_moves;
mod fit;
mod foldable;
mod headwall;
mod high_side;
mod hip;
mod holder;
mod kick_out;
mod least;
mod least_by_slope;
mod levels;
mod line_order;
mod offset_cleat;
mod outer_trim;
mod parts;
mod pipe;
mod pipe_parts;
mod pipe_water;
mod rake;
mod rake_parts;
mod ridge;
mod row_shelter;
mod rule_asks;
mod rule_set;
mod section_fit;
mod section_kind;
mod section_sheets;
mod section_water;
mod sidewall;
mod sidewall_parts;
mod step;
mod step_parts;
mod support;
mod top_closure;
mod top_edge;
mod top_end;
mod transition;
mod transition_lines;
mod transition_section;
mod upright_water;
mod valley;
mod valley_hook;
mod valley_widens;
mod wall;
mod water_path;
mod water_rules;
mod whole;
mod work;
mod work_plan;
mod work_tasks;

#[cfg(test)]
mod coping_tests;
#[cfg(test)]
mod covered_tests;
#[cfg(test)]
mod curb_back_tests;
#[cfg(test)]
mod eave_gutter_tests;
#[cfg(test)]
mod eave_tests;
#[cfg(test)]
mod end_proposal_tests;
#[cfg(test)]
mod expansion_tests;
#[cfg(test)]
mod fit_tests;
#[cfg(test)]
mod foldable_tests;
#[cfg(test)]
mod high_side_tests;
#[cfg(test)]
mod kick_out_tests;
#[cfg(test)]
mod least_tests;
#[cfg(test)]
mod lines_tests;
#[cfg(test)]
mod pipe_tests;
#[cfg(test)]
mod rake_tests;
#[cfg(test)]
mod ridge_tests;
#[cfg(test)]
mod rule_set_tests;
#[cfg(test)]
mod section_water_tests;
#[cfg(test)]
mod sidewall_tests;
#[cfg(test)]
mod step_tests;
#[cfg(test)]
mod test_sections;
#[cfg(test)]
mod transition_section_tests;
#[cfg(test)]
mod transition_tests;
#[cfg(test)]
mod valley_tests;
#[cfg(test)]
mod whole_tests;
#[cfg(test)]
mod work_tests;

pub use cap_outline::{CapBlank, CapOutline};
pub use cautions::{
    ALL as CAUTIONS, CAP_NOT_HELD, CAP_OFF_LINE, CAP_RIDES, CLEAT_OFF_LEVEL, COPING_NEARLY_LEVEL, CRICKET_REQUIRED, DRIP_CROSSES_SEAMS, DRIP_NEAR_FACE,
    EAVE_PINNED, FASTENERS_IN_WATER, FLANGE_OVER_UNDERLAYMENT, FLASHING_RIDES, FLASHING_TIES_PANEL, FOLD_OVER_STRIP, KICK_OUT_MISSING, LOW_SPLASH_RIB,
    NOSE_BEHIND_DRIP, PAN_NOT_HELD, PINNED_ALONG_SEAM, PIPE_AGAINST_WATER, PIPE_CROSSES_SEAMS, RAKE_EDGE_PINNED, RAKE_TRIM_RIDES, RECEIVER_STANDS_UP,
    RIB_AND_SNOW, RIVETS_ON_SLOPE, RUNS_INTO_FACE, SCREWS_THROUGH_VALLEY, SEAM_HOLLOWS, SKEW_END_WITHOUT_TRIM, TAPE_TOO_THICK, TOP_SLIDES, UNEQUAL_WITHOUT_RIB,
    UNSUPPORTED_FLANGE, VENT_CHOKED, WATER_DAMS_BEHIND, WATER_PATH_FAILS,
};
pub use coping::{Coping, CopingDetail};
pub use coping_parts::{CopingHold, CopingLap, CopingSide, SlottedScrews};
pub use curb_back::{CricketRule, CurbBack, CurbBackDetail};
pub use draft::{FastenerRow, TrimSheet};
pub use drip::{ContinuousCleat, DripFace, DripHem};
pub use drip_edge::DripEdge;
pub use eave::{Eave, EaveDetail};
pub use eave_gutter::{GutterLip, GutterOpening};
pub use eave_parts::{DeckFlange, EaveFixing, EaveFront, EavePanel, FlangeLies, HookStrip};
pub use end_proposal::{EndProposal, ProposedEnd, ProposedEnds};
pub use expansion_across::{ExpansionAcross, ExpansionAcrossDetail};
pub use expansion_along::{ExpansionAlong, ExpansionAlongDetail, JointSide};
pub use expansion_moves::JointMoves;
pub use headwall::{Headwall, HeadwallDetail};
pub use high_side::{HighSide, HighSideDetail};
pub use hip::{Hip, HipDetail};
pub use holder::Holder;
pub use kick_out::{KickOut, KickOutCorner, KickOutDetail, KickOutPiece, WallHand};
pub use least::LeastRule;
pub use least_by_slope::{LeastBySlope, LeastUnder};
pub use levels::{Levels, RoofSide};
pub use line_order::LineOrder;
pub use offset_cleat::OffsetCleat;
pub use parts::{Adjoining, Along, AlongLine, Bites, Datum, JunctionTrim, LayoutLine, Side, SideEnd, Solved};
pub use pipe::{Pipe, PipePlan};
pub use pipe_parts::{FixedLine, PipeBase, PipeShape, PipeSpacing, UpperEdge};
pub use rake::{Rake, RakeDetail};
pub use rake_parts::{PanelEdge, RakeInnerEdge, RakeStand, RakeZ};
pub use ridge::{Ridge, RidgeDetail, RidgeVent, VentOpening};
pub use row_shelter::{RowShelter, Shelter};
pub(crate) use rule_set::{RuleBook, chosen};
pub use rule_set::{RuleCheck, RulePart, RuleRoom};
pub use section_fit::{Meeting, SectionFit, SectionPart, Touch};
pub use section_kind::SectionKind;
pub use section_sheets::WaterSide;
pub use section_water::{FacePath, PathFace, SectionWater, WaterCheck};
pub use sidewall::{Sidewall, SidewallDetail};
pub use sidewall_parts::{PanelSide, SidewallFlange, SidewallFoot};
pub use step::Step;
pub use step_parts::{StepDetail, StepLower, StepUpper};
pub use support::{SectionPoint, Support};
pub use top_closure::TopClosure;
pub use top_edge::TopEdge;
pub use top_end::TopEnd;
pub use transition::{BeadSize, PackingReach, PitchTransition, PitchTransitionDetail};
pub use transition_section::{Bending, TransitionSection, WaterStep};
pub use valley::{SplashRib, Valley, ValleyDetail, ValleyEndSeal, ValleySide};
pub use valley_hook::ValleyHook;
pub use valley_widens::{ValleyWidening, WideningPan};
pub use wall::{Counterflashing, WallCover, WallLeg};
pub use water_path::{PathCheck, PathFailure, PathFault, PathLap, PathRule, PathSheet, WaterLevel, WaterPath};
pub use water_rules::WaterRules;
pub use whole::{JunctionInput, WholeJunction, WorkedJunction};
pub use work::{SectionWork, WorkStep, order_of_work};
pub use work_plan::{WorkPlan, WorkTask};
