//! The sidewall: a wall along the slope, beside the last panel.

use super::cautions::{FLASHING_RIDES, FLASHING_TIES_PANEL, KICK_OUT_MISSING, PINNED_ALONG_SEAM};
use super::draft::{TrimSheet, Walk, keep_under, leg, refuse_short, tape, tape_too_thick, thick_tape};
use super::drip_edge::DripEdge;
use super::fit::{self, Beside, Deck};
use super::kick_out::{KickOut, KickOutPiece, WallHand};
use super::least::LeastRule;
use super::levels::RoofSide;
use super::parts::{AlongLine, Bites, JunctionTrim, LayoutLine, Side, SideEnd, Solved};
use super::sidewall_parts::{PanelSide, SidewallFlange, SidewallFoot};
use super::support::Support;
use super::wall::WallLeg;
use crate::error::{Error, ErrorKind, Faults};
use crate::panel::{Hold, PanelEnd};
use crate::record::{Calculation, Caution, CautionCode, Recorder, Source, Step};
use crate::trim::{Edge, Face};
use crate::units::{Angle, Length, Sum};

/// What is chosen at a sidewall.
///
/// ```
/// use seamwright::junction::{
///     Bites, DripEdge, FastenerRow, KickOutDetail, PanelSide, SidewallDetail, SidewallFlange, SidewallFoot, TrimSheet, WallCover, WallLeg, LeastRule,
/// };
/// use seamwright::practice::junction as practice;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let detail = SidewallDetail {
///     cover: LeastRule::SIDE_COVER,
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     edge: PanelSide::TurnedUp { height: Length::parse("1 3/4\"")? },
///     edge_from_wall: Length::parse("1/2\"")?,
///     flange: SidewallFlange::OnZ {
///         web_from_wall: Length::inches(3),
///         foot: Length::inches(2),
///         web_to_screws: Length::inches(1),
///         tape_width: Length::parse("7/8\"")?,
///         tape_beneath: Length::parse("1/16\"")?,
///         bites: Bites::Panel,
///         screws: row.clone(),
///         cover: Length::parse("3/4\"")?,
///         trim_tape_width: practice::Z_TAPE_WIDTH,
///         rivets: row,
///     },
///     drip: DripEdge { leg: Length::parse("3/4\"")?, turn: practice::DRIP_TURN, hem: practice::EDGE_HEM, above_pan: Length::parse("1/4\"")? },
///     wall: WallLeg {
///         leg: Length::inches(8),
///         stands_out: Length::ZERO,
///         upstand: LeastRule::UFGS_UPSTAND,
///         fasteners: Some(FastenerRow::UFGS_WALL_LEG),
///         fasteners_below_top: Length::inches(1),
///         cover: WallCover::Cladding { lap: Length::inches(6), rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: Length::inches(1) },
///     },
///     foot: SidewallFoot::DiesIntoWall { kick_out: Some(KickOutDetail::thrown(Length::inches(4)).into()) },
/// };
/// assert!(detail.wall.leg >= detail.wall.upstand.least);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SidewallDetail {
    /// The sheet of every trim.
    pub sheet: TrimSheet,
    /// The last panel's edge.
    pub edge: PanelSide,
    /// From the wall's face to that edge.
    pub edge_from_wall: Length,
    /// What the flange lies on.
    pub flange: SidewallFlange,
    /// How far the flange must reach over the last panel, from that panel's edge; in a job file [`LeastRule::SIDE_COVER`] unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::side_cover"))]
    pub cover: LeastRule,
    /// The flange's edge.
    pub drip: DripEdge,
    /// The leg up the wall.
    pub wall: WallLeg,
    /// The lower end.
    pub foot: SidewallFoot,
}

/// A sidewall.
///
/// The section lies square to the slope: the roof is level in it, the wall square to it, and heights are square to the pan. The junction line is where the deck meets
/// the wall's face; distances from it are along the roof, positive away from the panels, so that everything on the roof is negative.
///
/// ```
/// use seamwright::junction::{
///     Bites, DripEdge, FastenerRow, KickOutDetail, LeastRule, Levels, PanelSide, RoofSide, Sidewall, SidewallDetail, SidewallFlange, SidewallFoot, TrimSheet,
///     WallCover, WallHand, WallLeg,
/// };
/// use seamwright::pitch::Pitch;
/// use seamwright::practice::junction as practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::Length;
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let detail = SidewallDetail {
///     cover: LeastRule::SIDE_COVER,
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     edge: PanelSide::TurnedUp { height: Length::parse("1 3/4\"")? },
///     edge_from_wall: Length::parse("1/2\"")?,
///     flange: SidewallFlange::OnZ {
///         web_from_wall: Length::inches(3),
///         foot: Length::inches(2),
///         web_to_screws: Length::inches(1),
///         tape_width: Length::parse("7/8\"")?,
///         tape_beneath: Length::parse("1/16\"")?,
///         bites: Bites::Panel,
///         screws: row.clone(),
///         cover: Length::parse("3/4\"")?,
///         trim_tape_width: practice::Z_TAPE_WIDTH,
///         rivets: row,
///     },
///     drip: DripEdge { leg: Length::parse("3/4\"")?, turn: practice::DRIP_TURN, hem: practice::EDGE_HEM, above_pan: Length::parse("1/4\"")? },
///     wall: WallLeg {
///         leg: Length::inches(8),
///         stands_out: Length::ZERO,
///         upstand: LeastRule::UFGS_UPSTAND,
///         fasteners: Some(FastenerRow::UFGS_WALL_LEG),
///         fasteners_below_top: Length::inches(1),
///         cover: WallCover::Cladding { lap: Length::inches(6), rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: Length::inches(1) },
///     },
///     foot: SidewallFoot::DiesIntoWall { kick_out: Some(KickOutDetail::thrown(Length::inches(4)).into()) },
/// };
/// let roof = RoofSide { pitch: Pitch::parse("4:12")?, levels: Levels { seam_height: Length::parse("1 3/4\"")?, ..Levels::default() } };
/// let solved = Sidewall { roof, first_seam_from_wall: Length::inches(12), wall: WallHand::Right, detail }.compute()?;
/// let flashing = solved.trim("sidewall flashing").expect("a sidewall has a flashing");
/// // The web stands 3 in from the wall and the flange covers it by 3/4 in.
/// assert_eq!(flashing.profile.legs[1].length, Length::parse("3 3/4\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Sidewall {
    /// The roof along the wall.
    pub roof: RoofSide,
    /// From the wall's face to the near side of the first seam, as the layout has it.
    pub first_seam_from_wall: Length,
    /// On which hand the wall stands, looking up the slope: only a kick-out's blank hangs on it.
    #[cfg_attr(feature = "serde", serde(default))]
    pub wall: WallHand,
    /// What is chosen.
    pub detail: SidewallDetail,
}

/// Where a sidewall has what it chooses of its kick-out.
const KICK_OUT: &str = "detail.foot.dies-into-wall.kick_out";

/// What a kind of flange gives to the junction.
struct Flange {
    /// The height of its underside above the deck.
    height: Length,
    /// Its edge, from the wall's face.
    edge: Length,
    along: Vec<AlongLine>,
    lines: Vec<LayoutLine>,
    bites: Bites,
    trims: Vec<JunctionTrim>,
}

impl Sidewall {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.detail.edge_from_wall.not_negative("detail.edge_from_wall"));
        faults.keep(self.first_seam_from_wall.positive("first_seam_from_wall"));
        faults.keep(self.detail.cover.least.not_negative("detail.cover.least"));
        if let PanelSide::TurnedUp { height } = self.detail.edge {
            faults.keep(height.positive("detail.edge.turned-up.height"));
        }
        keep_under(&mut faults, "detail.sheet", self.detail.sheet.check());
        keep_under(&mut faults, "detail.drip", self.detail.drip.check());
        keep_under(&mut faults, "detail.wall", self.detail.wall.check());
        if let SidewallFoot::DiesIntoWall { kick_out: Some(kick_out) } = &self.detail.foot {
            keep_under(&mut faults, KICK_OUT, kick_out.check());
        }
        let bites = match &self.detail.flange {
            SidewallFlange::OnZ { web_from_wall, foot, web_to_screws, tape_width, tape_beneath, bites, screws, cover, trim_tape_width, rivets } => {
                faults.keep(web_from_wall.positive("detail.flange.on-z.web_from_wall"));
                faults.keep(foot.positive("detail.flange.on-z.foot"));
                faults.keep(cover.positive("detail.flange.on-z.cover"));
                keep_under(&mut faults, "detail.flange.on-z.screws", screws.check());
                keep_under(&mut faults, "detail.flange.on-z.rivets", rivets.check());
                faults.keep(web_to_screws.not_negative("detail.flange.on-z.web_to_screws"));
                faults.keep(tape_width.positive("detail.flange.on-z.tape_width"));
                faults.keep(trim_tape_width.positive("detail.flange.on-z.trim_tape_width"));
                faults.keep(tape_beneath.not_negative("detail.flange.on-z.tape_beneath"));
                ("detail.flange.on-z.bites", *bites)
            }
            SidewallFlange::OnPan { width, tape_width, edge_to_fasteners, bites, fasteners } => {
                faults.keep(width.positive("detail.flange.on-pan.width"));
                keep_under(&mut faults, "detail.flange.on-pan.fasteners", fasteners.check());
                faults.keep(tape_width.not_negative("detail.flange.on-pan.tape_width"));
                faults.keep(edge_to_fasteners.not_negative("detail.flange.on-pan.edge_to_fasteners"));
                ("detail.flange.on-pan.bites", *bites)
            }
        };
        if bites.1 == Bites::Trim {
            faults.add(Error::new(ErrorKind::Conflict, "these fasteners go through the panel").at(bites.0).value_of("trim").accepts("structure, panel, slot"));
        }
        faults.check()
    }

    fn flange<R: Recorder>(&self, r: &mut R, faults: &mut Faults, h: Length) -> Result<Flange, Error> {
        match &self.detail.flange {
            SidewallFlange::OnZ { web_from_wall, foot, web_to_screws, tape_width, tape_beneath, bites, screws, cover, trim_tape_width, rivets } => {
                let edge = (*web_from_wall + *cover).length()?;
                let foot_edge = (*web_from_wall - *foot).length()?;
                let screws_at = (*web_from_wall - *web_to_screws).length()?;
                // The Z reaches from the tape on the pan to the underside of the flange.
                let low = (self.roof.levels.pan_face()? + *tape_beneath).length()?;
                let high = (h - self.roof.levels.tape - self.detail.sheet.thickness).length()?;
                let web = (high - low).length()?;
                r.step(|| {
                    let step = Step::new("underside of the Z's top flange above its foot").formula("level of the flange - tape - sheet - pan - tape beneath");
                    step.with("flange", h).with("tape", self.roof.levels.tape).with("tape beneath", *tape_beneath).gives(web)
                });
                if !web.is_positive() {
                    faults.add(tape_too_thick("detail.flange.on-z.tape_beneath", "the Z", *tape_beneath, web)?);
                }
                let (drip, depth) = (&self.detail.drip, self.detail.drip.depth()?);
                let room = h - self.roof.levels.pan_face()?;
                let what = "the drip comes too near the pan";
                refuse_short(faults, "detail.drip.leg", what, depth + drip.above_pan - room, drip.leg, "a shorter drip")?;
                refuse_short(
                    faults,
                    "detail.flange.on-z.foot",
                    "the Z's foot misses the panel",
                    self.detail.edge_from_wall - foot_edge,
                    *foot,
                    "a narrower foot, or a web farther from the wall",
                )?;
                refuse_short(
                    faults,
                    "detail.flange.on-z.web_to_screws",
                    "the screws miss the Z's foot",
                    *web_to_screws - *foot,
                    *web_to_screws,
                    "a wider foot",
                )?;
                let half = tape_width.station(1, 2)?;
                let what = "the tape reaches past the Z's foot";
                refuse_short(faults, "detail.flange.on-z.tape_width", what, half - (*foot - *web_to_screws), *tape_width, "narrower tape, or a wider foot")?;
                refuse_short(
                    faults,
                    "detail.flange.on-z.web_from_wall",
                    "the flange runs into the first seam",
                    edge - self.first_seam_from_wall,
                    *web_from_wall,
                    "a web nearer to the wall",
                )?;
                // Its top flange ends inside the drip; tape and rivets lie in the middle of the cover.
                let wide = *trim_tape_width + self.detail.sheet.thickness * 2 - *cover;
                let what = "the Z's top flange is narrower than the tape on it";
                refuse_short(faults, "detail.flange.on-z.cover", what, wide, *cover, "a greater cover, or narrower tape")?;
                let z = Support { rise: Angle::ZERO, height: low };
                let top = Support { rise: Angle::ZERO, height: high };
                let web_low = z.point((-*web_from_wall).length()?)?;
                let web_high = top.point((-*web_from_wall).length()?)?;
                // Walked from the top flange's edge, which ends with the cover less the drip's own thickness, down the web and toward the wall.
                let start = top.point((-*web_from_wall - *cover + self.detail.sheet.thickness).length()?)?;
                let foot_end = z.point((-foot_edge).length()?)?;
                let piece = Walk {
                    name: "Z",
                    sheet: self.detail.sheet,
                    start,
                    legs: &[leg("top flange", web_high), leg("web", web_low), leg("foot", foot_end)],
                    start_edge: Edge::Raw,
                    end_edge: Edge::Raw,
                    painted: Face::Upper,
                };
                let trims = faults.keep(piece.lay()).into_iter().collect();
                let over = (-(*web_from_wall + cover.station(1, 2)?)).length()?;
                let along = vec![
                    tape("tape under the Z", Side::First, *tape_width, false, (-screws_at).length()?),
                    screws.line("screws of the Z", Side::First, *bites, (-screws_at).length()?),
                    tape("tape over the Z", Side::First, *trim_tape_width, false, over),
                    rivets.line("rivets", Side::First, Bites::Trim, over),
                ];
                let (web_at, screws_at) = ((-*web_from_wall).length()?, -screws_at);
                let from_web = |name: &'static str, at: Sum| LayoutLine::from_line(name, Side::First, "web of the Z", web_at, at - web_at);
                let lines = vec![
                    LayoutLine::from_junction("web of the Z", Side::First, web_at.into())?,
                    from_web("tape under the Z, edge on the roof's side", screws_at - half)?,
                    from_web("screws of the Z", screws_at)?,
                    from_web("tape under the Z, edge on the wall's side", screws_at + half)?,
                    from_web("trim's edge", -edge)?,
                ];
                Ok(Flange { height: h, edge, along, lines, bites: *bites, trims })
            }
            SidewallFlange::OnPan { width, tape_width, edge_to_fasteners, bites, fasteners } => {
                let height = (self.roof.levels.pan_face()? + self.roof.levels.tape).length()?;
                let edge = (self.detail.wall.stands_out + *width).length()?;
                let tape_edge = (edge - *tape_width).length()?;
                refuse_short(
                    faults,
                    "detail.flange.on-pan.width",
                    "the flange runs into the first seam",
                    edge - self.first_seam_from_wall,
                    *width,
                    "a narrower flange",
                )?;
                refuse_short(
                    faults,
                    "detail.flange.on-pan.tape_width",
                    "the tape misses the panel",
                    self.detail.edge_from_wall - tape_edge,
                    *tape_width,
                    "narrower tape, or a wider flange",
                )?;
                let path = "detail.flange.on-pan.edge_to_fasteners";
                refuse_short(faults, path, "the fasteners miss their tape", *edge_to_fasteners - *tape_width, *edge_to_fasteners, "wider tape")?;
                if self.detail.drip.leg.is_positive() {
                    let error = Error::new(ErrorKind::Conflict, "a flange on the pan has nothing below it to turn down to").at("detail.drip.leg");
                    faults.add(error.value_of(self.detail.drip.leg).accepts("0").cured_by("a hem alone"));
                }
                if let PanelSide::TurnedUp { height } = self.detail.edge {
                    let error = Error::new(ErrorKind::Conflict, "the flange cannot lie on a pan that is turned up under it").at("detail.edge").value_of(height);
                    faults.add(error.accepts("flat").cured_by("a flange on a Z, at the level of the seam tops"));
                }
                let along = vec![
                    tape("tape under the flange", Side::First, *tape_width, false, (tape_width.station(1, 2)? - edge).length()?),
                    fasteners.line("fasteners of the flange", Side::First, *bites, (*edge_to_fasteners - edge).length()?),
                ];
                let edge_at = (-edge).length()?;
                let from_edge = |name: &'static str, by: Length| LayoutLine::from_line(name, Side::First, "trim's edge", edge_at, by.into());
                let lines = vec![
                    LayoutLine::from_junction("trim's edge", Side::First, edge_at.into())?,
                    from_edge("tape under the flange, edge on the wall's side", *tape_width)?,
                    from_edge("fasteners of the flange", *edge_to_fasteners)?,
                ];
                Ok(Flange { height, edge, along, lines, bites: *bites, trims: Vec::new() })
            }
        }
    }

    /// Whether a turned-up edge is as high as the seams and fits under the flange.
    fn turned_up(&self, faults: &mut Faults, height: Length, flange: Length) -> Result<(), Error> {
        let path = "detail.edge.turned-up.height";
        refuse_short(faults, path, "the panel's edge is lower than the seams", self.roof.levels.seam_height - height, height, "a higher edge")?;
        refuse_short(faults, path, "the panel's edge lifts the flashing", height - (flange - self.roof.levels.pan_face()?), height, "a lower edge")
    }

    /// What the flange's fasteners do with the leg's: a flashing that goes with the panel and is fastened to the wall pins the panel as screws in the deck do.
    fn hold(&self, bites: Bites) -> (Hold, Option<CautionCode>) {
        match (bites, &self.detail.wall.fasteners) {
            (Bites::Structure, _) => (Hold::Pins, Some(PINNED_ALONG_SEAM)),
            (Bites::Panel, Some(_)) => (Hold::Pins, Some(FLASHING_TIES_PANEL)),
            (Bites::Panel, None) => (Hold::Slides, Some(FLASHING_RIDES)),
            (Bites::Slot | Bites::Trim, _) => (Hold::Slides, None),
        }
    }

    fn cautions(&self, said: Option<CautionCode>) -> Vec<Caution> {
        let mut out: Vec<Caution> = said.into_iter().map(|code| Caution::new(code, "detail.flange", Source::CommonPractice)).collect();
        if matches!(self.detail.foot, SidewallFoot::DiesIntoWall { kick_out: None }) {
            out.push(Caution::new(KICK_OUT_MISSING, "detail.foot", Source::CommonPractice));
        }
        out
    }

    /// The kick-out under a flashing whose flange is so wide: within its drip, or short of the hem that is folded under it.
    fn kick_out<R: Recorder>(&self, r: &mut R, flange: Length) -> Result<Option<KickOutPiece>, Error> {
        let SidewallFoot::DiesIntoWall { kick_out: Some(detail) } = &self.detail.foot else { return Ok(None) };
        let (sheet, drip) = (self.detail.sheet, &self.detail.drip);
        let within = if drip.leg.is_positive() { sheet.thickness + sheet.inside_radius } else { drip.hem + sheet.thickness };
        let flange = (flange - within).length()?;
        let asked = KickOut { pitch: self.roof.pitch, sheet, flange, leg: self.detail.wall.leg, wall: self.wall, detail: (**detail).clone() };
        let made = r.part(|| asked.title(), |r| asked.run(r));
        made.map(Some).map_err(|e| e.moved("detail", KICK_OUT).moved("flange", "detail.flange").moved("leg", "detail.wall.leg"))
    }
}

impl Calculation for Sidewall {
    type Out = Solved;

    fn title(&self) -> String {
        format!("sidewall along a roof of {}", self.roof.pitch)
    }

    /// Refuses a sidewall whose leg stands too low or whose flange, Z or tape misses what it lies on; all such faults at once.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.check()?;
        let h = r.part(|| self.roof.levels.title(), |r| self.roof.levels.run(r).map_err(|e| e.under("roof.levels")))?;
        let mut faults = Faults::default();
        let flange = self.flange(r, &mut faults, h)?;
        let mut end = PanelEnd::hold_back(self.detail.edge_from_wall);
        if let PanelSide::TurnedUp { height } = self.detail.edge {
            self.turned_up(&mut faults, height, flange.height)?;
            end = end.with_turn_up(height);
        }
        let (cover, rule) = ((flange.edge - self.detail.edge_from_wall).length()?, &self.detail.cover);
        r.step(|| {
            let step = Step::new("flange over the last panel").formula("flange's edge - panel's edge, from the wall").with("flange's edge", flange.edge);
            step.with("panel's edge", self.detail.edge_from_wall).with("least", rule.least).gives(cover).source(rule.source.clone())
        });
        let (path, asked) = self.detail.flange.reach();
        rule.check(&mut faults, path, cover, asked, format!("a flange that reaches farther by {}", (rule.least - cover).length()?))?;
        let clear = "the panel's edge stands in the wall flashing";
        refuse_short(
            &mut faults,
            "detail.edge_from_wall",
            clear,
            self.detail.wall.stands_out - self.detail.edge_from_wall,
            self.detail.edge_from_wall,
            "an edge farther from the wall",
        )?;

        let level = Support { rise: Angle::ZERO, height: flange.height };
        let corner = level.meets(&self.detail.wall.support())?;
        r.step(|| Step::new("level of the flange above the deck").gives(corner.z).source(Source::geometry()));
        let pan = Support { rise: Angle::ZERO, height: self.roof.levels.pan_face()? };
        let wall =
            faults.keep(r.part(|| "leg up the wall".into(), |r| self.detail.wall.solve(r, pan, corner, self.detail.sheet)).map_err(|e| e.under("detail.wall")));
        let (start, edge) = self.detail.drip.corners(&level, (-flange.edge).length()?, -1)?;
        let kick_out = faults.keep(self.kick_out(r, (flange.edge - self.detail.wall.stands_out).length()?));
        faults.check()?;
        let (Some(wall), Some(kick_out)) = (wall, kick_out) else { return Ok(Solved::default()) };
        let mut legs = Vec::with_capacity(3);
        legs.extend(edge.map(|p| self.detail.drip.leg_to("drip", p)));
        legs.push(leg("flange", corner).bent(self.detail.drip.turn));
        legs.push(leg("leg", wall.top).bent(Angle::SQUARE));
        let flashing = Walk {
            name: "sidewall flashing",
            sheet: self.detail.sheet,
            start,
            legs: &legs,
            start_edge: self.detail.drip.edge(),
            end_edge: Edge::Raw,
            painted: Face::Upper,
        }
        .lay()?;

        let (hold, said) = self.hold(flange.bites);
        let mut solved = Solved { trims: flange.trims, along: flange.along, cautions: self.cautions(said), kick_out, ..Solved::default() };
        solved.lines.push(LayoutLine::from_junction("panel edge", Side::First, -self.detail.edge_from_wall)?);
        solved.lines.extend(flange.lines);
        solved.trims.push(flashing);
        solved.ends.push(SideEnd { side: Side::First, end: end.holding(hold) });
        wall.give(&mut solved);
        if let SidewallFlange::OnZ { tape_beneath, .. } = self.detail.flange {
            solved.cautions.extend(thick_tape("detail.flange.on-z.tape_beneath", "under the Z", tape_beneath)?);
        }
        solved.cautions.extend(thick_tape("roof.levels.tape", "under the flange", self.roof.levels.tape)?);
        let turned_up = match self.detail.edge {
            PanelSide::TurnedUp { height } => height,
            PanelSide::Flat => Length::ZERO,
        };
        let seam = (self.first_seam_from_wall - self.detail.edge_from_wall).length()?;
        let cure = ("detail.edge_from_wall", "an edge farther from the wall, or nearer to it");
        fit::check(&solved, &[Deck::across(&self.roof.levels, (turned_up, seam), cure)], Beside::Wall)?;
        Ok(solved)
    }
}
