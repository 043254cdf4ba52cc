//! The headwall: a roof's upper end against a plumb wall.

use super::draft::{TrimSheet, Walk, along, keep_under, leg, turned};
use super::fit::{self, Beside, Deck};
use super::levels::RoofSide;
use super::parts::{Side, Solved};
use super::ridge::RidgeVent;
use super::support::Support;
use super::top_end::{Place, TopEnd};
use super::wall::WallLeg;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::{Edge, Face};
use crate::units::{Angle, Length};

/// What is chosen at a headwall.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{Bites, DripEdge, FastenerRow, HeadwallDetail, RidgeVent, TopClosure, TopEnd, TrimSheet, WallCover, WallLeg, LeastRule};
/// use seamwright::practice;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let inch = |text: &str| Length::parse(text);
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let end = TopEnd {
///     flange: inch("8\"")?,
///     cover: LeastRule::UFGS_UNSOLDERED,
///     drip: DripEdge { leg: inch("3/4\"")?, turn: practice::junction::DRIP_TURN, hem: practice::junction::EDGE_HEM, above_pan: inch("1/4\"")? },
///     closure: TopClosure {
///         set_back: practice::closure::SET_BACK,
///         face: Face::Web,
///         lower_flange: inch("1 1/4\"")?,
///         top_flange: inch("1/2\"")?,
///         tape_width: inch("7/8\"")?,
///         tape_beneath: inch("1/16\"")?,
///         panel_margin: LeastRule::PANEL_MARGIN,
///     },
///     bites: Bites::Structure,
///     screws: row.clone(),
///     rivets: Some(row),
///     hollow_seams: false,
///     cap_tape_width: inch("1/2\"")?,
///     hold_back: inch("2\"")?,
///     clearance: inch("1/4\"")?,
///     turn_up: practice::panel::TURN_UP,
///     field_trim: Length::ZERO,
/// };
/// let detail = HeadwallDetail {
///     end,
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     wall: WallLeg {
///         leg: Length::inches(9),
///         stands_out: Length::parse("1/8\"")?,
///         upstand: LeastRule::UFGS_UPSTAND,
///         fasteners: Some(FastenerRow::UFGS_WALL_LEG),
///         fasteners_below_top: Length::inches(1),
///         cover: WallCover::Cladding { lap: Length::inches(7), rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: Length::inches(1) },
///     },
///     vent: RidgeVent::Closed,
/// };
/// assert!(detail.wall.leg > detail.wall.upstand.least);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HeadwallDetail {
    /// The ends of the panels, with the flange over them.
    pub end: TopEnd,
    /// The sheet of the flashing and of a counterflashing.
    pub sheet: TrimSheet,
    /// The leg up the wall.
    pub wall: WallLeg,
    /// Whether air goes out there: through a slot in the deck beside the wall, and perforated closures. In a job file it is closed unless given.
    #[cfg_attr(feature = "serde", serde(default))]
    pub vent: RidgeVent,
}

/// A headwall: a one-sided ridge whose other leg goes up the wall.
///
/// The junction line is where the deck meets the wall's face. The flange lies on the seam tops, `h` above the deck; with the leg `w` out from the wall, the bend
/// lies `h / cos S - w tan S` above the line. The bend is 90 degrees less the pitch. The leg's top stands `h + leg cos S` above the deck, square to it, whatever `w` is.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{
///     Bites, DripEdge, FastenerRow, Headwall, HeadwallDetail, Levels, RidgeVent, RoofSide, TopClosure, TopEnd, TrimSheet, WallCover, WallLeg, LeastRule,
/// };
/// use seamwright::pitch::Pitch;
/// use seamwright::practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::Length;
/// let inch = |text: &str| Length::parse(text);
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let end = TopEnd {
///     flange: inch("8\"")?,
///     cover: LeastRule::UFGS_UNSOLDERED,
///     drip: DripEdge { leg: inch("3/4\"")?, turn: practice::junction::DRIP_TURN, hem: practice::junction::EDGE_HEM, above_pan: inch("1/4\"")? },
///     closure: TopClosure {
///         set_back: practice::closure::SET_BACK,
///         face: Face::Web,
///         lower_flange: inch("1 1/4\"")?,
///         top_flange: inch("1/2\"")?,
///         tape_width: inch("7/8\"")?,
///         tape_beneath: inch("1/16\"")?,
///         panel_margin: LeastRule::PANEL_MARGIN,
///     },
///     bites: Bites::Structure,
///     screws: row.clone(),
///     rivets: Some(row),
///     hollow_seams: false,
///     cap_tape_width: inch("1/2\"")?,
///     hold_back: inch("2\"")?,
///     clearance: inch("1/4\"")?,
///     turn_up: practice::panel::TURN_UP,
///     field_trim: Length::ZERO,
/// };
/// let detail = HeadwallDetail {
///     end,
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     wall: WallLeg {
///         leg: Length::inches(9),
///         stands_out: Length::parse("1/8\"")?,
///         upstand: LeastRule::UFGS_UPSTAND,
///         fasteners: Some(FastenerRow::UFGS_WALL_LEG),
///         fasteners_below_top: Length::inches(1),
///         cover: WallCover::Cladding { lap: Length::inches(7), rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: Length::inches(1) },
///     },
///     vent: RidgeVent::Closed,
/// };
/// let roof = RoofSide { pitch: Pitch::parse("4:12")?, levels: Levels { seam_height: inch("1 3/4\"")?, ..Levels::default() } };
/// let solved = Headwall { roof, detail }.compute()?;
/// let flashing = solved.trim("headwall flashing").expect("a headwall has a flashing");
/// assert_eq!(flashing.profile.legs.last().map(|l| l.length), Some(Length::inches(9)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Headwall {
    /// The roof, up to the wall.
    pub roof: RoofSide,
    /// What is chosen.
    pub detail: HeadwallDetail,
}

impl Calculation for Headwall {
    type Out = Solved;

    fn title(&self) -> String {
        format!("headwall above a roof of {}", self.roof.pitch)
    }

    /// Refuses a headwall whose leg stands too low, whose panels touch the wall or whose closures miss the panels; all such faults at once.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        let (slope, detail, levels) = (self.roof.pitch.angle(), &self.detail, &self.roof.levels);
        let mut faults = Faults::default();
        if slope.degrees() >= 90.0 {
            let error = Error::new(ErrorKind::OutOfRange, "the roof stands as plumb as the wall").at("roof.pitch");
            faults.add(error.value_of(self.roof.pitch).accepts("less than 90 deg"));
        }
        keep_under(&mut faults, "detail.sheet", detail.sheet.check());
        keep_under(&mut faults, "detail.wall", detail.wall.check());
        if detail.wall.fasteners.is_none() && detail.end.rivets.is_none() {
            let error = Error::new(ErrorKind::Missing, "nothing holds the flashing").at("detail.wall.fasteners").accepts("fasteners of the leg");
            faults.add(error.cured_by("fasteners near the leg's top, or rivets through the turned-down edge"));
        }
        detail.vent.check(&mut faults, "detail.vent", &[("detail.end", &detail.end)])?;
        let h = faults.keep(r.part(|| levels.title(), |r| levels.run(r)).map_err(|e| e.under("roof.levels")));
        faults.check()?;
        let h = h.unwrap_or_default();
        let seam_tops = Support { rise: slope, height: h };
        let corner = seam_tops.meets(&detail.wall.support()).map_err(|e| e.under("roof.pitch"))?;
        r.step(|| {
            let step = Step::new("bend above the line").formula("h / cos S - w tan S");
            step.with("h", h).with("S", slope).with("w", detail.wall.stands_out).gives(corner.z).source(Source::geometry())
        });
        r.step(|| Step::new("bend of the flashing from flat").formula("90 - S").with("S", slope).gives(format_args!("{} deg", 90.0 - slope.degrees())));
        // The foot of the panels' ends is what comes nearest to the wall: everything above it leans back.
        let limit = Length::from_mm(-detail.wall.stands_out.mm() / slope.cos())?;
        let place = Place { side: Side::First, levels: *levels, bend: along(corner, slope)?, limit, meeting: Angle::SQUARE, seam_tops, down: -1 };
        let mut faults = Faults::default();
        let ended = r.part(|| "panels below the wall".into(), |r| detail.end.solve(r, &place));
        let ended = faults.keep(ended.map_err(|e| e.under("detail.end")));
        let pan = Support { rise: slope, height: levels.pan_face()? };
        let wall = r.part(|| "leg up the wall".into(), |r| detail.wall.solve(r, pan, corner, detail.sheet));
        let wall = faults.keep(wall.map_err(|e| e.under("detail.wall")));
        faults.check()?;
        let mut solved = Solved::default();
        let (Some(ended), Some(wall)) = (ended, wall) else { return Ok(solved) };

        let (start, edge) = ended.corners;
        let mut legs = Vec::with_capacity(3);
        legs.extend(edge.map(|p| detail.end.drip.leg_to("drip", p)));
        legs.push(detail.end.flange_to("flange", corner));
        legs.push(leg("leg", wall.top).long(detail.wall.leg).bent(turned(slope, -90.0)?));
        let flashing = Walk {
            name: "headwall flashing",
            sheet: detail.sheet,
            start,
            legs: &legs,
            start_edge: detail.end.drip.edge(),
            end_edge: Edge::Raw,
            painted: Face::Upper,
        }
        .lay()?;
        detail.vent.give(&[Side::First], &mut solved)?;
        solved.trims.push(flashing);
        ended.give("detail.end", &mut solved);
        wall.give(&mut solved);
        fit::check(&solved, &[Deck::turned(Side::First, slope, levels, &detail.end, "detail.end")], Beside::Wall)?;
        let web = detail.end.closure.web(levels.seam_height).map_err(|e| e.under("detail.end.closure"))?;
        if let Some(opening) = detail.vent.opening(web, 1)? {
            opening.tell(r, "detail.vent", &mut solved);
        }
        Ok(solved)
    }
}
