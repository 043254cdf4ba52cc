//! What a job gives: everything that the shop, the crew and the office work from.

use super::copings::{CopingCornerItem, CopingItem};
use super::end_caps::{CapItem, EndCap};
use super::input::{Metals, Paperwork, Temperatures};
use super::kick_outs::KickOutItem;
use super::lay::PlaneLay;
use super::list_columns::ListColumn;
use super::order::OrderLine;
use super::pipes::PipeItem;
use super::plane_work::{PlaneClips, PlaneHeat};
use super::trims::TrimItem;
use super::underlay::UnderlaymentPlan;
use crate::assembly::{LineAssembly, PanEndCut, RoofCorners, SideSeal};
use crate::junction::{JointMoves, Levels, Solved, WaterCheck, WorkStep};
use crate::metal::MetalMeeting;
use crate::movement::CapMoves;
use crate::record::{Caution, Seen, Source};
use crate::roof::{LineKind, Roof};
use crate::units::{Angle, Area, Length, Mass};
use std::borrow::Cow;

/// The name of the packet format.
pub const PACKET_FORMAT: &str = "seamwright-packet";
/// The version of the packet format that this library writes.
pub const PACKET_VERSION: u32 = 1;

/// What every packet says about the work's dangers and about who decides.
pub const SITE_CAUTIONS: &[&str] = &[
    "Tie off: fall protection as the law of the place asks; cover or fence every hole.",
    "Stop at the site's wind limit; never carry a panel across the wind.",
    "Gloves and eye protection: every sheet edge cuts.",
    "Cut with shears or nibbler, not with abrasive wheels: they burn the coating.",
    "Fastener and clip spacing, loads, fire and weather are for the licensed engineer, the local code and the panel's own test report.",
    "Check the first panel and the first trim on the roof before the rest is cut.",
];

/// A side of a junction's section, as a drawing needs it.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let ridge = packet.junction("ridge 1").expect("the demo has a ridge");
/// assert!(ridge.first.rise.degrees() > 0.0); // up to the ridge
/// assert!(ridge.second.is_some_and(|s| s.rise.degrees() < 0.0)); // and down from it
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SectionSide {
    /// Number of the plane in the roof.
    pub plane: usize,
    /// The direction of the deck in the section, walking from the first side to the second: positive where it rises.
    pub rise: Angle,
    /// The layers on the deck.
    pub levels: Levels,
}

/// One line of the roof, worked out.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let ridge = packet.junction("ridge 1").expect("the demo has a ridge");
/// assert_eq!(ridge.detail, "junctions.kinds[2].ridge");
/// assert!(ridge.not_engineered().any(|row| row == "rivets")); // the demo's engineer gives the screws alone
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JunctionItem {
    /// Number of the line in the roof.
    pub line: usize,
    /// Its name.
    pub name: String,
    /// Its kind.
    pub kind: LineKind,
    /// Where in the job its detail stands.
    pub detail: String,
    /// The plane on the first side of the section.
    pub first: SectionSide,
    /// The plane on the second side, where there is one.
    pub second: Option<SectionSide>,
    /// Its section.
    pub section: Solved,
    /// What lies along the real line.
    pub along: LineAssembly,
    /// How a valley's pan is cut, folded and sealed at its lower end, where the roof there is known.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub pan_end: Option<PanEndCut>,
    /// At an expansion joint, what moves there over the year.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub moves: Option<JointMoves>,
    /// What its cap must let pass over the year, where its closures ride with panels that move and the job gives temperatures.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub rides: Option<CapMoves>,
    /// The line of defence of each side on which something seals, and whether it goes through from end to end.
    pub sealed: Vec<SideSeal>,
    /// What laps what, and whether its fasteners stay out of running water.
    pub water: WaterCheck,
    /// The order of work, with the lines that are struck for each step.
    pub work: Vec<WorkStep>,
}

impl JunctionItem {
    /// Rows of fasteners whose spacing no engineer gave.
    pub fn not_engineered(&self) -> impl Iterator<Item = &str> {
        self.along.rows.iter().filter(|r| !r.engineered).map(|r| r.name.as_str())
    }
}

/// How many figures rest on what.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// assert!(packet.summary.sources.memory > 0); // to be confirmed before metal is cut
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SourceCount {
    /// Published and seen as text.
    pub text: usize,
    /// Published, seen through another document.
    pub secondary: usize,
    /// Published, from memory: confirm before metal is cut.
    pub memory: usize,
    /// Derived, from geometry or from another source.
    pub derived: usize,
    /// Common practice, no published source.
    pub common_practice: usize,
    /// The engineer's.
    pub engineer: usize,
    /// The caller's.
    pub user: usize,
}

impl SourceCount {
    pub(super) fn add(&mut self, source: &Source) {
        let slot = match source {
            Source::Published(c) => match c.seen {
                Seen::Text => &mut self.text,
                Seen::Secondary => &mut self.secondary,
                Seen::Memory => &mut self.memory,
                Seen::Derived => &mut self.derived,
            },
            Source::CommonPractice => &mut self.common_practice,
            Source::Engineer { .. } => &mut self.engineer,
            Source::User { .. } => &mut self.user,
        };
        *slot += 1;
    }
}

/// The packet in a few figures.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let s = &packet.summary;
/// assert!(s.shortest < s.longest && u64::try_from(s.panels).is_ok_and(|n| n <= s.pieces));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Summary {
    /// Planes of the roof.
    pub planes: usize,
    /// True area of the roof.
    pub area: Area,
    /// Lines of the roof.
    pub lines: usize,
    /// Panels as laid.
    pub panels: usize,
    /// Pieces to form: more than panels where end laps divide them.
    pub pieces: u64,
    /// Different order lengths.
    pub lengths: usize,
    /// The shortest order length.
    pub shortest: Length,
    /// The longest order length.
    pub longest: Length,
    /// Order lengths of all panels together.
    pub panel_length: Length,
    /// Length of the coil.
    pub coil: Length,
    /// Mass of the coil.
    pub coil_mass: Option<Mass>,
    /// Different trims.
    pub trims: usize,
    /// Stock lengths of trim to buy.
    pub sticks: u64,
    /// Closure pieces.
    pub closures: u64,
    /// Cautions.
    pub cautions: usize,
    /// Rows of fasteners and clips whose spacing an engineer gave.
    pub engineered_rows: usize,
    /// Rows whose spacing nobody engineered.
    pub not_engineered_rows: usize,
    /// What the cautions and the rows rest on.
    pub sources: SourceCount,
}

/// A job worked out.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// assert_eq!(packet.format, seamwright::job::PACKET_FORMAT);
/// assert!(packet.plane("main south").is_some() && packet.junction("eave 99").is_none());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Packet {
    /// [`PACKET_FORMAT`].
    pub format: Cow<'static, str>,
    /// [`PACKET_VERSION`].
    pub version: u32,
    /// The version of the library that worked it out.
    pub library: Cow<'static, str>,
    /// The job's name.
    pub job: String,
    /// How lengths are written.
    pub paperwork: Paperwork,
    /// The sheets.
    pub metals: Metals,
    /// The metal's temperatures, where the job gives them.
    pub temperatures: Option<Temperatures>,
    /// The columns of the panel list, where the job chooses them.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub columns: Vec<ListColumn>,
    /// The packet in a few figures.
    pub summary: Summary,
    /// The roof with its lines.
    pub roof: Roof,
    /// The panels of every plane, in the order of the roof's planes.
    pub planes: Vec<PlaneLay>,
    /// The lines that could be named, worked out.
    pub junctions: Vec<JunctionItem>,
    /// The copings, run by run.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub copings: Vec<CopingItem>,
    /// Where copings meet.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub coping_corners: Vec<CopingCornerItem>,
    /// The kick-outs at the feet of wall flashings, like ones together.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub kick_outs: Vec<KickOutItem>,
    /// The pipes, in the order given.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub pipes: Vec<PipeItem>,
    /// Where lines meet.
    pub corners: RoofCorners,
    /// The trims.
    pub trims: Vec<TrimItem>,
    /// What closes them where nothing lies over their ends, corner by corner.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub end_caps: Vec<EndCap>,
    /// The blanks of the end caps, like ones together.
    pub cap_pieces: Vec<CapItem>,
    /// Where metals that do not go together touch or drain on each other.
    pub metals_met: Vec<MetalMeeting>,
    /// The underlayment, where the job asks for it.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub underlayment: Option<UnderlaymentPlan>,
    /// The clips of every plane.
    pub clips: Vec<PlaneClips>,
    /// Where the panels of every plane are held, and how they move with heat.
    pub heat: Vec<PlaneHeat>,
    /// The order.
    pub order: Vec<OrderLine>,
    /// Every caution, its subject a path into the packet or the job.
    pub cautions: Vec<Caution>,
    /// What the crew and the office must know of every job.
    pub site: Vec<Cow<'static, str>>,
}

impl Packet {
    /// The panels of the plane of this name.
    #[must_use]
    pub fn plane(&self, name: &str) -> Option<&PlaneLay> {
        self.planes.iter().find(|p| p.name == name)
    }

    /// The junction of the line of this name.
    #[must_use]
    pub fn junction(&self, name: &str) -> Option<&JunctionItem> {
        self.junctions.iter().find(|j| j.name == name)
    }
}
