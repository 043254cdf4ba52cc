//! The expansion joint across the panels: the upper panels slide over a flashing that is fixed to the deck and covers the lower panels' ends.
//!
//! It is a pitch transition between two planes of one slope: its flange lies in the plane of the lower seam tops, on packing of that height over the
//! upper deck, which is built up by it under all of the upper panels; these hook an offset cleat on the flange. What is added here is the movement.

use super::draft::{keep_under, refuse_short};
use super::expansion_moves::JointMoves;
use super::least::LeastRule;
use super::levels::RoofSide;
use super::parts::Solved;
use super::transition::{PackingReach, PitchTransition, PitchTransitionDetail};
use crate::error::{Error, ErrorKind, Faults};
use crate::movement::{EndMovement, HeatRange, MovingEnd};
use crate::record::{Calculation, Recorder, Step};
use crate::units::{Angle, Length};

/// What is chosen at an expansion joint across the panels.
///
/// ```
/// use seamwright::junction::{ExpansionAcrossDetail, LeastRule};
/// use seamwright::record::read_json;
/// let joint = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../docs/junctions/inputs/expansion-joint-across-the-panels.json"));
/// let joint: serde_json::Value = serde_json::from_str(joint).unwrap();
/// let detail: ExpansionAcrossDetail = read_json(joint["detail"].to_string().as_bytes(), 1 << 20)?;
/// assert_eq!(detail.lap, LeastRule::SLIDING_LAP);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ExpansionAcrossDetail {
    /// What must stay between the fold's nose and the cleat in the cold; in a job file [`CLEARANCE`](crate::practice::movement::CLEARANCE) unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::clearance"))]
    pub clearance: Length,
    /// How far the upper panels must lap over the flashing beside their movement.
    pub lap: LeastRule,
    /// The flashing, its packing over the upper deck, and the ends on both sides of it.
    pub flashing: PitchTransitionDetail,
}

impl ExpansionAcrossDetail {
    /// The plane above this one, built up by the packing.
    pub(crate) fn upper(&self, lower: RoofSide) -> RoofSide {
        let mut upper = lower;
        upper.levels.built_up = self.flashing.packing;
        upper
    }

    /// Flashing and ends over this roof, whatever moves there.
    pub(crate) fn solve<R: Recorder>(&self, roof: RoofSide, r: &mut R) -> Result<Solved, Error> {
        if self.flashing.packing_reach != PackingReach::UnderPanels {
            let error = Error::new(ErrorKind::Conflict, "the upper panels slide on the packing, which goes on under all of them");
            return Err(error.at("detail.flashing.packing_reach").value_of("under-flange").accepts("under-panels"));
        }
        let transition = PitchTransition { lower: roof, upper: self.upper(roof), detail: self.flashing.clone() };
        let solved = r.part(|| "flashing and ends".into(), |r| transition.run(r));
        solved.map_err(|e| e.moved("detail", "detail.flashing").moved("lower", "roof").moved("upper", "roof"))
    }
}

/// An expansion joint across the panels as asked for.
///
/// # Errors
/// Computing refuses a lap, a fold or a gap too small for the movement, by how much and with the cure, and all that a pitch transition refuses: packing
/// other than the height of the seam tops among it.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{
///     Bending, Bites, DripEdge, ExpansionAcross, ExpansionAcrossDetail, FastenerRow, Levels, OffsetCleat, PackingReach, PitchTransitionDetail, RoofSide, Side, TopClosure, TopEdge, TopEnd,
///     TrimSheet, LeastRule,
/// };
/// use seamwright::movement::HeatRange;
/// use seamwright::pitch::Pitch;
/// use seamwright::practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Expansion, Length, Temperature};
/// let inch = |text: &str| Length::parse(text);
/// let levels = Levels { pan: Length::mils(24), seam_height: inch("1 3/4\"")?, ..Levels::default() };
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let mut joint = ExpansionAcross {
///     roof: RoofSide { pitch: Pitch::parse("3:12")?, levels },
///     to_fixed: Length::feet(50),
///     below_to_fixed: practice::movement::FAR_SIDE_TO_FIXED,
///     range: HeatRange {
///         expansion: Expansion::parse("12e-6 /K")?,
///         coldest: Temperature::parse("-20 degC")?,
///         laid: Temperature::parse("20 degC")?,
///         hottest: Temperature::parse("70 degC")?,
///     },
///     detail: ExpansionAcrossDetail {
///         clearance: practice::movement::CLEARANCE,
///         lap: LeastRule::SLIDING_LAP,
///         flashing: PitchTransitionDetail {
///             sheet,
///             end: TopEnd {
///                 flange: Length::inches(9),
///                 cover: LeastRule::UFGS_UNSOLDERED,
///                 drip: DripEdge { leg: inch("3/4\"")?, turn: practice::junction::DRIP_TURN, hem: practice::junction::EDGE_HEM, above_pan: inch("1/4\"")? },
///                 closure: TopClosure {
///                     set_back: practice::closure::SET_BACK,
///                     face: Face::LeadingEdge,
///                     lower_flange: inch("2 1/2\"")?,
///                     top_flange: inch("1 1/8\"")?,
///                     tape_width: inch("7/8\"")?,
///                     tape_beneath: inch("1/16\"")?,
///                     panel_margin: LeastRule::PANEL_MARGIN,
///                 },
///                 bites: Bites::Structure,
///                 screws: row.clone(),
///                 rivets: None,
///                 hollow_seams: false,
///                 cap_tape_width: inch("7/8\"")?,
///                 hold_back: Length::inches(1),
///                 clearance: inch("1/4\"")?,
///                 turn_up: practice::panel::TURN_UP,
///                 field_trim: Length::ZERO,
///             },
///             seam_bead: None,
///             packing: (levels.seam_height + levels.pan).length()?,
///             packing_reach: PackingReach::UnderPanels,
///             bending: Bending::Direct,
///             unsupported_limit: Length::inches(2),
///             upper_flange: Length::inches(11),
///             top_edge: TopEdge { hem: practice::junction::EDGE_HEM, screws_below: Length::inches(1), screws: row.clone() },
///             cleat: OffsetCleat {
///                 sheet,
///                 width: Length::inches(5),
///                 tongue: Length::inches(2),
///                 rise: inch("1/4\"")?,
///                 tape_width: inch("1 1/2\"")?,
///                 tape: inch("1/16\"")?,
///                 screws_below_tape_edge: practice::junction::CLEAT_SCREWS_BELOW_TAPE_EDGE,
///                 screws: row,
///                 gap: inch("1/2\"")?,
///                 fold: inch("1 3/4\"")?,
///                 least_engagement: practice::movement::ENGAGEMENT,
///             },
///             front_below_top: Length::inches(8),
///             head_lap: LeastRule::HEAD_LAP,
///         },
///     },
/// };
/// let solved = joint.compute()?;
/// assert_eq!(solved.end(Side::Second).map(|e| e.fold), Some(inch("1 3/4\"")?));
/// joint.to_fixed = Length::feet(200);
/// assert_eq!(joint.compute().unwrap_err().path(), "detail.flashing.cleat.fold");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ExpansionAcross {
    /// The roof on both sides of the joint.
    pub roof: RoofSide,
    /// From the upper panels' lower end up to the line that fixes them.
    pub to_fixed: Length,
    /// From the joint down to the line that fixes what carries the flashing, where that moves too; nothing where it is fixed, and in a job file
    /// [`FAR_SIDE_TO_FIXED`](crate::practice::movement::FAR_SIDE_TO_FIXED) unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::far_side_to_fixed"))]
    pub below_to_fixed: Length,
    /// The temperatures of the roof.
    pub range: HeatRange,
    /// What is chosen.
    pub detail: ExpansionAcrossDetail,
}

impl ExpansionAcross {
    /// The plane above, built up by the packing.
    pub(super) fn upper(&self) -> RoofSide {
        self.detail.upper(self.roof)
    }

    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.to_fixed.not_negative("to_fixed"));
        faults.keep(self.below_to_fixed.not_negative("below_to_fixed"));
        faults.keep(self.detail.clearance.not_negative("detail.clearance"));
        faults.keep(self.detail.lap.least.not_negative("detail.lap.least"));
        keep_under(&mut faults, "range", self.range.check());
        faults.check()
    }

    /// What moves at the joint, against the fold, the gap and the lap that are given.
    pub(crate) fn moves<R: Recorder>(&self, r: &mut R) -> Result<JointMoves, Error> {
        self.check()?;
        let (d, c) = (&self.detail.flashing, &self.detail.flashing.cleat);
        let HeatRange { expansion, coldest, laid, hottest } = self.range;
        let to_fixed = (self.to_fixed + self.below_to_fixed).length()?;
        r.step(|| {
            let step = Step::new("what moves at the joint").formula("from it to the fixed lines above and below");
            step.with("above", self.to_fixed).with("below", self.below_to_fixed).gives(to_fixed)
        });
        let (end, clearance, engagement, meeting) = (MovingEnd::LowerHooked, self.detail.clearance, c.least_engagement, Angle::SQUARE);
        let movement = EndMovement { end, expansion, to_fixed, coldest, laid, hottest, clearance, engagement, meeting };
        let room = r.part(|| movement.title(), |r| movement.run(r))?;
        let mut faults = Faults::default();
        let short = room.least_fold - c.fold;
        refuse_short(
            &mut faults,
            "detail.flashing.cleat.fold",
            "the fold comes off its cleat in the heat: it is too short",
            short,
            c.fold,
            "a longer fold, or joints nearer to each other",
        )?;
        let narrow = room.gap_when_laid - c.gap;
        refuse_short(
            &mut faults,
            "detail.flashing.cleat.gap",
            "the nose strikes the cleat in the cold: the gap when laid is too narrow",
            narrow,
            c.gap,
            "a wider gap",
        )?;
        let travel = (room.closing + room.opening).length()?;
        let lap = (d.front_below_top + c.gap - travel).length()?;
        r.step(|| {
            let step = Step::new("lap over the flashing beside the movement")
                .formula("front below the top + gap - travel")
                .with("front below the top", d.front_below_top);
            step.with("gap", c.gap).with("travel", travel).with("least", self.detail.lap.least).gives(lap).source(self.detail.lap.source.clone())
        });
        let more = (self.detail.lap.least - lap).length()?;
        self.detail.lap.check(
            &mut faults,
            "detail.flashing.front_below_top",
            lap,
            d.front_below_top,
            format!("a front lower by {more}, and an upper flange as much longer"),
        )?;
        faults.check()?;
        Ok(JointMoves { closes: room.opening, opens: room.closing })
    }
}

impl Calculation for ExpansionAcross {
    type Out = Solved;

    fn title(&self) -> String {
        format!("expansion joint across the panels of a roof of {}", self.roof.pitch)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.moves(r)?;
        self.detail.solve(self.roof, r)
    }
}
