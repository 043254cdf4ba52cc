//! The sidewall: a wall along the slope, beside the last panel.

use super::cautions;
use super::folded::{DripEdge, FastenerRow, FoldedSheet, at_least, trim};
use super::levels::Levels;
use super::parts::{Along, AlongLine, Bites, Side, SideEnd, Solved};
use super::support::Support;
use super::wall::WallLeg;
use crate::error::{Error, ErrorKind, Faults};
use crate::panel::{Hold, PanelEnd};
use crate::pitch::Pitch;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::trim::Edge;
use crate::units::{Angle, Length};

/// The edge of the last panel, beside the wall.
///
/// ```
/// use seamwright::junction::PanelSide;
/// use seamwright::units::Length;
/// let edge = PanelSide::TurnedUp { height: Length::parse("1 3/4\"")? };
/// assert_ne!(edge, PanelSide::Flat);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum PanelSide {
    /// Turned up, at least as high as the seams.
    TurnedUp {
        /// How high, from the pan.
        height: Length,
    },
    /// Ended flat, short of the wall.
    Flat,
}

/// What the wall flashing's flange lies on.
///
/// ```
/// use seamwright::junction::{Bites, FastenerRow, SidewallFlange};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let on_pan = SidewallFlange::OnPan {
///     width: Length::inches(5),
///     tape_width: Length::parse("7/8\"")?,
///     edge_to_fasteners: Length::parse("7/16\"")?,
///     bites: Bites::Panel,
///     fasteners: FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice },
/// };
/// assert!(matches!(on_pan, SidewallFlange::OnPan { bites: Bites::Panel, .. }));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum SidewallFlange {
    /// On a Z that stands on the pan, at the level of the seam tops; its foot points to the wall.
    OnZ {
        /// From the wall's face to the Z's web.
        web_from_wall: Length,
        /// Width of the Z's foot, from its web toward the wall.
        foot: Length,
        /// From the web to the screws through the foot.
        web_to_screws: Length,
        /// Width of the tape under the foot, centred on the screws.
        tape_width: Length,
        /// Thickness of that tape, compressed.
        tape_beneath: Length,
        /// What the screws bite.
        bites: Bites,
        /// The screws.
        screws: FastenerRow,
        /// How far the flange runs past the web to its edge.
        cover: Length,
        /// The rivets through the flange into the Z's top flange, halfway over the cover.
        rivets: FastenerRow,
    },
    /// On tape on the pan, this side of the first seam.
    OnPan {
        /// Width of the flange, from the flashing's bend.
        width: Length,
        /// Width of the tape, along the flange's edge.
        tape_width: Length,
        /// From the flange's edge to its fasteners.
        edge_to_fasteners: Length,
        /// What the fasteners bite.
        bites: Bites,
        /// The fasteners.
        fasteners: FastenerRow,
    },
}

/// The lower end of a sidewall.
///
/// ```
/// use seamwright::junction::SidewallFoot;
/// use seamwright::units::Length;
/// let foot = SidewallFoot::DiesIntoWall { kick_out: Some(Length::inches(4)) };
/// assert_ne!(foot, SidewallFoot::EndsAtEave);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum SidewallFoot {
    /// The wall ends with the eave, or before it.
    EndsAtEave,
    /// The eave dies into the wall.
    DiesIntoWall {
        /// How far from the wall a kick-out throws the water; none if there is no kick-out.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        kick_out: Option<Length>,
    },
}

/// A sidewall.
///
/// The section lies square to the slope: the roof is level in it, the wall square to it, and heights are square to the pan. The junction line is where the deck meets
/// the wall's face; distances from it are along the roof, positive away from the panels, so that everything on the roof is negative.
///
/// ```
/// use seamwright::junction::{
///     Bites, DripEdge, FastenerRow, FoldedSheet, Levels, PanelSide, Sidewall, SidewallFlange, SidewallFoot, WallCover, WallLeg, WallRule,
/// };
/// use seamwright::pitch::Pitch;
/// use seamwright::practice::junction as practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::Length;
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let sidewall = Sidewall {
///     pitch: Pitch::parse("4:12")?,
///     sheet: FoldedSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     levels: Levels { seam_height: Length::parse("1 3/4\"")?, ..Levels::default() },
///     edge: PanelSide::TurnedUp { height: Length::parse("1 3/4\"")? },
///     edge_from_wall: Length::parse("1/2\"")?,
///     first_seam_from_wall: Length::inches(12),
///     flange: SidewallFlange::OnZ {
///         web_from_wall: Length::inches(3),
///         foot: Length::inches(2),
///         web_to_screws: Length::inches(1),
///         tape_width: Length::parse("7/8\"")?,
///         tape_beneath: Length::parse("1/16\"")?,
///         bites: Bites::Panel,
///         screws: row.clone(),
///         cover: Length::parse("1/2\"")?,
///         rivets: row,
///     },
///     drip: DripEdge { depth: Length::parse("3/4\"")?, hem: practice::EDGE_HEM },
///     wall: WallLeg {
///         leg: Length::inches(8),
///         stands_out: Length::ZERO,
///         upstand: WallRule::UFGS_UPSTAND,
///         fasteners: FastenerRow::UFGS_WALL_LEG,
///         fasteners_below_top: Length::inches(1),
///         cover: WallCover::Cladding { lap: Length::inches(6), rule: WallRule::UFGS_BEHIND_CLADDING, clearance: Length::inches(1) },
///     },
///     foot: SidewallFoot::DiesIntoWall { kick_out: Some(Length::inches(4)) },
/// };
/// let solved = sidewall.compute()?;
/// let flashing = solved.trim("sidewall flashing").expect("a sidewall has a flashing");
/// // The web stands 3 in from the wall and the flange covers it by 1/2 in.
/// assert_eq!(flashing.profile.legs[1].length, Length::parse("3 1/2\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Sidewall {
    /// The roof's pitch, along the wall.
    pub pitch: Pitch,
    /// The sheet of every trim.
    pub sheet: FoldedSheet,
    /// The layers between the deck and a flange on the seam tops.
    pub levels: Levels,
    /// The last panel's edge.
    pub edge: PanelSide,
    /// From the wall's face to that edge.
    pub edge_from_wall: Length,
    /// From the wall's face to the near side of the first seam.
    pub first_seam_from_wall: Length,
    /// What the flange lies on.
    pub flange: SidewallFlange,
    /// The flange's edge.
    pub drip: DripEdge,
    /// The leg up the wall.
    pub wall: WallLeg,
    /// The lower end.
    pub foot: SidewallFoot,
}

/// What a kind of flange gives to the junction.
struct Flange {
    /// The height of its underside above the deck.
    height: Length,
    /// Its edge, from the wall's face.
    edge: Length,
    along: Vec<AlongLine>,
    bites: Bites,
    trims: Vec<super::JunctionTrim>,
}

impl Sidewall {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.edge_from_wall.not_negative("edge_from_wall"));
        faults.keep(self.first_seam_from_wall.positive("first_seam_from_wall"));
        if let PanelSide::TurnedUp { height } = self.edge {
            faults.keep(height.positive("edge.turned-up.height"));
        }
        self.drip.check(&mut faults);
        if let Err(e) = self.wall.check() {
            faults.add(e.under("wall"));
        }
        if let SidewallFoot::DiesIntoWall { kick_out: Some(throw) } = self.foot {
            faults.keep(throw.positive("foot.dies-into-wall.kick_out"));
        }
        let bites = match &self.flange {
            SidewallFlange::OnZ { web_from_wall, foot, web_to_screws, tape_width, tape_beneath, bites, screws, cover, rivets } => {
                faults.keep(web_from_wall.positive("flange.on-z.web_from_wall"));
                faults.keep(foot.positive("flange.on-z.foot"));
                faults.keep(cover.positive("flange.on-z.cover"));
                faults.keep(screws.spacing.positive("flange.on-z.screws.spacing"));
                faults.keep(rivets.spacing.positive("flange.on-z.rivets.spacing"));
                faults.keep(web_to_screws.not_negative("flange.on-z.web_to_screws"));
                faults.keep(tape_width.not_negative("flange.on-z.tape_width"));
                faults.keep(tape_beneath.not_negative("flange.on-z.tape_beneath"));
                ("flange.on-z.bites", *bites)
            }
            SidewallFlange::OnPan { width, tape_width, edge_to_fasteners, bites, fasteners } => {
                faults.keep(width.positive("flange.on-pan.width"));
                faults.keep(fasteners.spacing.positive("flange.on-pan.fasteners.spacing"));
                faults.keep(tape_width.not_negative("flange.on-pan.tape_width"));
                faults.keep(edge_to_fasteners.not_negative("flange.on-pan.edge_to_fasteners"));
                ("flange.on-pan.bites", *bites)
            }
        };
        if bites.1 == Bites::Trim {
            faults.add(Error::new(ErrorKind::Conflict, "these fasteners go through the panel").at(bites.0).value_of("trim").accepts("structure, panel, slot"));
        }
        faults.check()
    }

    fn at(name: &'static str, what: Along, from_wall: Length) -> Result<AlongLine, Error> {
        Ok(AlongLine { name: name.into(), side: Side::First, what, from_line: (-from_wall).length()? })
    }

    fn row(row: &FastenerRow, bites: Bites) -> Along {
        Along::Fasteners { bites, spacing: row.spacing, source: row.source.clone() }
    }

    /// From the deck to the top of the pan.
    fn pan(&self) -> Result<Length, Error> {
        (self.levels.underlayment + self.levels.stand_off + self.levels.pan).length()
    }

    fn flange<R: Recorder>(&self, r: &mut R, faults: &mut Faults, h: Length) -> Result<Flange, Error> {
        match &self.flange {
            SidewallFlange::OnZ { web_from_wall, foot, web_to_screws, tape_width, tape_beneath, bites, screws, cover, rivets } => {
                let edge = (*web_from_wall + *cover).length()?;
                let foot_edge = (*web_from_wall - *foot).length()?;
                let screws_at = (*web_from_wall - *web_to_screws).length()?;
                // The Z reaches from the tape on the pan to the underside of the flange.
                let low = (self.pan()? + *tape_beneath).length()?;
                let high = (h - self.levels.tape - self.sheet.thickness).length()?;
                let web = (high - low).length()?;
                r.step(|| {
                    let step = Step::new("underside of the Z's top flange above its foot").formula("level of the flange - tape - sheet - pan - tape beneath");
                    step.with("flange", h).with("tape", self.levels.tape).with("tape beneath", *tape_beneath).gives(web)
                });
                faults.keep(web.positive("flange.on-z.tape_beneath").map_err(|e| e.accepts("tape thinner than the seam is high")));
                let room = h - self.pan()?;
                at_least(faults, "drip.depth", "the drip stands on the pan", room, self.drip.depth, self.drip.depth, "a shallower drip")?;
                at_least(
                    faults,
                    "flange.on-z.foot",
                    "the Z's foot misses the panel",
                    foot_edge,
                    self.edge_from_wall,
                    *foot,
                    "a narrower foot, or a web farther from the wall",
                )?;
                at_least(faults, "flange.on-z.web_to_screws", "the screws miss the Z's foot", *foot, *web_to_screws, *web_to_screws, "a wider foot")?;
                let half = tape_width.station(1, 2)?;
                let tape = "the tape reaches past the Z's foot";
                at_least(faults, "flange.on-z.tape_width", tape, *foot - *web_to_screws, half, *tape_width, "narrower tape, or a wider foot")?;
                at_least(
                    faults,
                    "flange.on-z.web_from_wall",
                    "the flange runs into the first seam",
                    self.first_seam_from_wall,
                    edge,
                    *web_from_wall,
                    "a web nearer to the wall",
                )?;
                let z = Support { rise: Angle::ZERO, height: low };
                let top = Support { rise: Angle::ZERO, height: high };
                let web_low = z.point((-*web_from_wall).length()?)?;
                let web_high = top.point((-*web_from_wall).length()?)?;
                // Walked from the top flange's edge, which ends with the cover less the drip's own thickness, down the web and toward the wall.
                let start = top.point((-*web_from_wall - *cover + self.sheet.thickness).length()?)?;
                let foot_end = z.point((-foot_edge).length()?)?;
                let piece = trim("Z", self.sheet, start, &[("top flange", web_high), ("web", web_low), ("foot", foot_end)], (Edge::Raw, Edge::Raw));
                let trims = faults.keep(piece).into_iter().collect();
                let along = vec![
                    Self::at("tape under the Z", Along::Tape { width: *tape_width, over_seams: false }, screws_at)?,
                    Self::at("screws of the Z", Self::row(screws, *bites), screws_at)?,
                    Self::at("rivets", Self::row(rivets, Bites::Trim), (*web_from_wall + cover.station(1, 2)?).length()?)?,
                ];
                Ok(Flange { height: h, edge, along, bites: *bites, trims })
            }
            SidewallFlange::OnPan { width, tape_width, edge_to_fasteners, bites, fasteners } => {
                let height = (self.pan()? + self.levels.tape).length()?;
                let edge = (self.wall.stands_out + *width).length()?;
                let tape_edge = (edge - *tape_width).length()?;
                at_least(faults, "flange.on-pan.width", "the flange runs into the first seam", self.first_seam_from_wall, edge, *width, "a narrower flange")?;
                at_least(
                    faults,
                    "flange.on-pan.tape_width",
                    "the tape misses the panel",
                    tape_edge,
                    self.edge_from_wall,
                    *tape_width,
                    "narrower tape, or a wider flange",
                )?;
                let path = "flange.on-pan.edge_to_fasteners";
                at_least(faults, path, "the fasteners miss their tape", *tape_width, *edge_to_fasteners, *edge_to_fasteners, "wider tape")?;
                if self.drip.depth.is_positive() {
                    let error = Error::new(ErrorKind::Conflict, "a flange on the pan has nothing below it to turn down to").at("drip.depth");
                    faults.add(error.value_of(self.drip.depth).accepts("0").cured_by("a hem alone"));
                }
                if let PanelSide::TurnedUp { height } = self.edge {
                    let error = Error::new(ErrorKind::Conflict, "the flange cannot lie on a pan that is turned up under it").at("edge").value_of(height);
                    faults.add(error.accepts("flat").cured_by("a flange on a Z, at the level of the seam tops"));
                }
                let tape_at = (edge - tape_width.station(1, 2)?).length()?;
                let along = vec![
                    Self::at("tape under the flange", Along::Tape { width: *tape_width, over_seams: false }, tape_at)?,
                    Self::at("fasteners of the flange", Self::row(fasteners, *bites), (edge - *edge_to_fasteners).length()?)?,
                ];
                Ok(Flange { height, edge, along, bites: *bites, trims: Vec::new() })
            }
        }
    }

    /// Whether a turned-up edge is as high as the seams and fits under the flange.
    fn turned_up(&self, faults: &mut Faults, height: Length, flange: Length) -> Result<(), Error> {
        let path = "edge.turned-up.height";
        at_least(faults, path, "the panel's edge is lower than the seams", height, self.levels.seam_height, height, "a higher edge")?;
        at_least(faults, path, "the panel's edge lifts the flashing", flange - self.pan()?, height, height, "a lower edge")
    }

    fn cautions(&self, bites: Bites) -> Vec<Caution> {
        let mut out = Vec::new();
        if bites == Bites::Structure {
            out.push(Caution::new(cautions::PINNED_ALONG_SEAM, "flange", Source::CommonPractice));
        }
        match self.foot {
            SidewallFoot::EndsAtEave => {}
            SidewallFoot::DiesIntoWall { kick_out: None } => out.push(Caution::new(cautions::KICK_OUT_MISSING, "foot", Source::CommonPractice)),
            SidewallFoot::DiesIntoWall { kick_out: Some(throw) } => {
                out.push(Caution::new(cautions::KICK_OUT, "foot", Source::CommonPractice).arg("throw", throw).arg("leg", self.wall.leg));
            }
        }
        out
    }
}

impl Calculation for Sidewall {
    type Out = Solved;

    fn title(&self) -> String {
        format!("sidewall along a roof of {}", self.pitch)
    }

    /// Refuses a sidewall whose leg stands too low or whose flange, Z or tape misses what it lies on; all such faults at once.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.check()?;
        let h = r.part(|| self.levels.title(), |r| self.levels.run(r).map_err(|e| e.under("levels")))?;
        let mut faults = Faults::default();
        let flange = self.flange(r, &mut faults, h)?;
        let mut end = PanelEnd::hold_back(self.edge_from_wall);
        if let PanelSide::TurnedUp { height } = self.edge {
            self.turned_up(&mut faults, height, flange.height)?;
            end = end.with_turn_up(height);
        }
        let clear = "the panel's edge stands in the wall flashing";
        at_least(&mut faults, "edge_from_wall", clear, self.edge_from_wall, self.wall.stands_out, self.edge_from_wall, "an edge farther from the wall")?;

        let level = Support { rise: Angle::ZERO, height: flange.height };
        let corner = level.meets(&self.wall.support())?;
        r.step(|| Step::new("level of the flange above the deck").gives(corner.z).source(Source::geometry()));
        let pan = Support { rise: Angle::ZERO, height: self.pan()? };
        let wall = faults.keep(r.part(|| "leg up the wall".into(), |r| self.wall.solve(r, pan, corner, self.sheet)).map_err(|e| e.under("wall")));
        let (start, edge) = self.drip.corners(&level, (-flange.edge).length()?)?;
        faults.check()?;
        let Some(wall) = wall else { return Ok(Solved::default()) };
        let mut legs = Vec::with_capacity(3);
        legs.extend(edge.map(|p| ("drip", p)));
        legs.push(("flange", corner));
        legs.push(("leg", wall.top));
        let flashing = trim("sidewall flashing", self.sheet, start, &legs, (self.drip.edge(), Edge::Raw))?;

        let mut trims = flange.trims;
        trims.push(flashing);
        trims.extend(wall.counterflashing);
        let along = flange.along.into_iter().chain(wall.along).collect();
        let hold = if flange.bites == Bites::Structure { Hold::Pins } else { Hold::Slides };
        let ends = vec![SideEnd { side: Side::First, end: end.holding(hold) }];
        Ok(Solved { trims, ends, along, lines: Vec::new(), cautions: self.cautions(flange.bites) })
    }
}
