//! The job: from what is given to what the shop and the crew work from.
//!
//! A [`Job`] holds a measured roof, a panel, metals, a detail for each kind of line, what is bought, and the engineer's schedule where there is one.
//! Working it out gives a [`Packet`]: sections set the panels' ends, the ends set the panels, and the lines met with the panels give the rest.

mod alike;
mod build;
mod built_up;
#[cfg(test)]
mod built_up_tests;
#[cfg(feature = "serde")]
mod by_name;
mod cautions;
mod choices;
mod copings;
mod end_caps;
mod holder_joints;
mod input;
#[cfg(test)]
mod joint_across_tests;
#[cfg(test)]
mod joint_tests;
mod joints;
mod kick_outs;
mod lay;
mod list_columns;
mod metals_meet;
mod order;
mod packet;
#[cfg(feature = "serde")]
mod packet_json;
mod pan_ends;
mod pipes;
mod plane_work;
mod progress;
mod receiver_laps;
mod revise;
mod rides;
mod rules;
mod schedule;
#[cfg(feature = "schema")]
mod schema;
mod seals;
mod sections;
mod shared_seams;
mod supplies;
mod trims;
mod underlay;
mod water;
mod wire;

#[cfg(test)]
mod annexe_tests;
#[cfg(test)]
mod bad_input_tests;
#[cfg(test)]
mod by_name_tests;
#[cfg(test)]
mod corner_tests;
#[cfg(test)]
mod cricket_tests;
#[cfg(test)]
mod demo_tests;
#[cfg(test)]
mod law_tests;
#[cfg(test)]
mod list_tests;
#[cfg(test)]
mod mutation_tests;
#[cfg(test)]
mod rules_tests;
#[cfg(test)]
mod schedule_tests;
#[cfg(test)]
mod small_tests;
#[cfg(test)]
pub(crate) mod test_jobs;
#[cfg(test)]
mod valley_tests;
#[cfg(test)]
mod water_tests;

#[cfg(feature = "serde")]
pub use by_name::{CALCULATIONS, LONGEST_INPUT, NamedCalculation, compute_all_json, compute_json, explain_json, named, names};
pub use cautions::{
    ALL as CAUTIONS, CAP_PARTS, CAP_WITHOUT_TRIM, JOINT_EDGE_SHEET, KICK_OUT_MISSES_GUTTER, LINE_UNKNOWN, MOVEMENT_UNCHECKED, RECEIVERS_LAP,
    SLOPE_OF_PANEL_UNKNOWN,
};
pub use choices::{Detail, JunctionChoices, LineChoice};
pub use copings::{CopingChoice, CopingCornerItem, CopingItem};
pub use end_caps::{CapHand, CapItem, EndCap};
pub use holder_joints::{HolderJoint, HolderJoints, PieceMeet};
pub use input::{DeckLevels, JOB_VERSION, Job, JobFormat, LayoutChoices, MarkChoices, Metals, Paper, Paperwork, PlaneStart, Temperatures};
pub use joints::JointHold;
pub use kick_outs::KickOutItem;
pub use lay::PlaneLay;
#[cfg(feature = "export")]
pub(crate) use list_columns::check_columns;
pub use list_columns::{ListColumn, ListField};
pub use order::{OrderGroup, OrderLine};
pub use packet::{JunctionItem, PACKET_FORMAT, PACKET_VERSION, Packet, SITE_CAUTIONS, SectionSide, SourceCount, Summary};
pub use pipes::{PipeChoice, PipeDetail, PipeItem, PipePlace};
pub use plane_work::{PlaneClips, PlaneHeat};
pub use progress::{Progress, Stage};
pub use revise::{JobRevised, JobRevision, PanelChange};
pub use rules::JobRules;
pub use schedule::{Schedule, ScheduledRow};
#[cfg(feature = "schema")]
pub use schema::{job_schema, packet_schema};
pub use shared_seams::SharedSeams;
pub use supplies::{ClipSupply, ClosureSticks, ClosureSupply, CrewSupply, MovementSupply, SealantSupply, Supplies, TrimLap, TrimSupply};
pub use trims::{TrimItem, TrimRun};
pub use underlay::{EaveSupply, EaveUnderlayment, PlaneUnderlayment, UnderlaymentPlan, UnderlaymentSupply, ValleySupply, ValleyUnderlayment};
