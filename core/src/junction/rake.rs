//! The rake: the last panel's side edge, a Z beside it, and a trim over both that hooks a cleat on the fascia.
//!
//! The section is square to the rake line: there the deck is level and the fascia stands square to it, whatever the pitch. The junction line is the
//! deck's edge at the fascia; the roof lies on the side of negative x.

use super::cautions::{RAKE_EDGE_PINNED, RAKE_TRIM_RIDES};
use super::draft::{FastenerRow, TrimSheet, Walk, keep_under, leg, refuse_short, tape, tape_too_thick, thick_tape};
use super::drip::DripFace;
use super::fit::{self, Beside, Deck};
use super::least::LeastRule;
use super::levels::Levels;
use super::parts::{Bites, JunctionTrim, LayoutLine, Side, SideEnd, Solved};
use super::rake_parts::{PanelEdge, RakeInnerEdge, RakeStand, RakeZ};
use super::support::{SectionPoint, Support};
use crate::error::{Error, Faults};
use crate::panel::{Hold, PanelEnd};
use crate::pitch::BendAt;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::trim::{Direction, Edge, Face};
use crate::units::{Angle, Length, Sum};

/// What is chosen at a rake.
///
/// ```
/// use seamwright::junction::{Bites, ContinuousCleat, DripFace, DripHem, FastenerRow, RakeDetail, RakeInnerEdge, RakeStand, RakeZ, TrimSheet, LeastRule};
/// use seamwright::practice::junction as practice;
/// use seamwright::record::Source;
/// use seamwright::units::{Angle, Length};
/// let inch = |text: &str| Length::parse(text);
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(24) };
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let detail = RakeDetail {
///     below_deck: LeastRule::IRC_BELOW_DECK,
///     edge_from_line: inch("1/2\"")?,
///     turn_up: inch("1 3/4\"")?,
///     seam_room: Length::inches(1),
///     z: RakeZ {
///         stands: RakeStand::OnPan,
///         sheet,
///         from_turned_up_edge: inch("1/8\"")?,
///         lower_flange: inch("1\"")?,
///         top_flange: inch("1\"")?,
///         tape_width: inch("7/8\"")?,
///         tape: inch("1/16\"")?,
///         bites: Bites::Structure,
///         screws: row.clone(),
///     },
///     sheet,
///     inner: RakeInnerEdge { cover: inch("1/8\"")?, drop: inch("1\"")?, hem: practice::EDGE_HEM, above_pan: inch("1/4\"")? },
///     z_cover: LeastRule::COVER_OF_Z,
///     rivets: row.clone(),
///     trim_tape_width: inch("7/8\"")?,
///     face: DripFace {
///         depth: inch("3\"")?,
///         kick: Angle::parse("45 deg")?,
///         clears: practice::DRIP_CLEARS_FACE,
///         hem: DripHem::Hooked(ContinuousCleat {
///             sheet,
///             height: inch("2\"")?,
///             fasteners_above_bend: inch("1\"")?,
///             fasteners: row,
///             hem: practice::EDGE_HEM,
///             hem_gap: (sheet.thickness + practice::HOOKED_HEM_ROOM).length()?,
///             short_of_fold: inch("1/16\"")?,
///             engagement: inch("3/8\"")?,
///         }),
///     },
/// };
/// assert!(detail.face.hem.cleat().is_some());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RakeDetail {
    /// From the rake line to the turned-up edge of the last panel.
    pub edge_from_line: Length,
    /// How high a ripped edge is turned up above the pan; a panel that ends on a seam has its leg there instead.
    pub turn_up: Length,
    /// What must stay free between the nearest seam and the nearest part of the Z or of the trim.
    pub seam_room: Length,
    /// The Z.
    pub z: RakeZ,
    /// The rake trim's sheet.
    pub sheet: TrimSheet,
    /// Its edge on the roof.
    pub inner: RakeInnerEdge,
    /// How far the trim's top must run past the Z's top flange; in a job file [`LeastRule::COVER_OF_Z`] unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::z_cover"))]
    pub z_cover: LeastRule,
    /// Rivets through the trim into the top flange of the Z, in the middle of that flange.
    pub rivets: FastenerRow,
    /// Width of the tape between that flange and the trim.
    pub trim_tape_width: Length,
    /// Its face on the fascia.
    pub face: DripFace,
    /// How far the face must come down below the deck; in a job file [`LeastRule::IRC_BELOW_DECK`] unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::below_deck"))]
    pub below_deck: LeastRule,
}

/// A rake as asked for.
///
/// The end that the result sets for [`Side::First`] is the panel's side edge: its hold-back is from the rake line to the turned-up edge, square to the
/// line, and its turn-up what a ripped edge adds to the width. It ends no panel along the seams.
///
/// # Errors
/// Computing refuses a turned-up edge lower than the seams or higher than the trim, a seam under the Z, an inner edge that reaches the pan, tape
/// wider than its flange or thicker than the seams leave room for, a Z covered less than its rule asks, a hem that misses its cleat, and every figure without meaning.
///
/// ```
/// use seamwright::junction::{
///     Bites, ContinuousCleat, DripFace, DripHem, FastenerRow, Levels, PanelEdge, Rake, RakeDetail, RakeInnerEdge, RakeStand, RakeZ, Side, TrimSheet,
///     LeastRule,
/// };
/// use seamwright::panel::Hold;
/// use seamwright::practice::junction as practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Angle, Length};
/// let inch = |text: &str| Length::parse(text);
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(24) };
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let detail = RakeDetail {
///     below_deck: LeastRule::IRC_BELOW_DECK,
///     edge_from_line: inch("1/2\"")?,
///     turn_up: inch("1 3/4\"")?,
///     seam_room: Length::inches(1),
///     z: RakeZ {
///         stands: RakeStand::OnPan,
///         sheet,
///         from_turned_up_edge: inch("1/8\"")?,
///         lower_flange: inch("1\"")?,
///         top_flange: inch("1\"")?,
///         tape_width: inch("7/8\"")?,
///         tape: inch("1/16\"")?,
///         bites: Bites::Structure,
///         screws: row.clone(),
///     },
///     sheet,
///     inner: RakeInnerEdge { cover: inch("1/8\"")?, drop: inch("1\"")?, hem: practice::EDGE_HEM, above_pan: inch("1/4\"")? },
///     z_cover: LeastRule::COVER_OF_Z,
///     rivets: row.clone(),
///     trim_tape_width: inch("7/8\"")?,
///     face: DripFace {
///         depth: inch("3\"")?,
///         kick: Angle::parse("45 deg")?,
///         clears: practice::DRIP_CLEARS_FACE,
///         hem: DripHem::Hooked(ContinuousCleat {
///             sheet,
///             height: inch("2\"")?,
///             fasteners_above_bend: inch("1\"")?,
///             fasteners: row,
///             hem: practice::EDGE_HEM,
///             hem_gap: (sheet.thickness + practice::HOOKED_HEM_ROOM).length()?,
///             short_of_fold: inch("1/16\"")?,
///             engagement: inch("3/8\"")?,
///         }),
///     },
/// };
/// let levels = Levels { underlayment: Length::mils(40), seam_height: inch("1 3/4\"")?, tape: inch("1/16\"")?, ..Levels::default() };
/// let solved = Rake { levels, edge: PanelEdge::Ripped, end_panel: Length::inches(12), detail }.compute()?;
/// assert_eq!(solved.end(Side::First).unwrap().hold, Hold::Pins);
/// assert!(solved.cautions.iter().any(|c| c.code().name == "rake-edge-pinned"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Rake {
    /// The layers between the deck and the underside of the trim.
    pub levels: Levels,
    /// How the layout ends the last panel.
    pub edge: PanelEdge,
    /// From the turned-up edge to the nearest seam, as the layout has it.
    pub end_panel: Length,
    /// What is chosen.
    pub detail: RakeDetail,
}

impl Rake {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "levels", self.levels.compute().map(|_| ()));
        keep_under(&mut faults, "detail.z", self.detail.z.check());
        keep_under(&mut faults, "detail.sheet", self.detail.sheet.check());
        keep_under(&mut faults, "detail.rivets", self.detail.rivets.check());
        keep_under(&mut faults, "detail.face", self.detail.face.check(self.detail.sheet));
        for (path, length) in [
            ("levels.seam_height", self.levels.seam_height),
            ("end_panel", self.end_panel),
            ("detail.trim_tape_width", self.detail.trim_tape_width),
            ("detail.inner.drop", self.detail.inner.drop),
            ("detail.inner.hem", self.detail.inner.hem),
        ] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [
            ("detail.edge_from_line", self.detail.edge_from_line),
            ("detail.seam_room", self.detail.seam_room),
            ("detail.turn_up", self.detail.turn_up),
            ("detail.inner.cover", self.detail.inner.cover),
            ("detail.inner.above_pan", self.detail.inner.above_pan),
            ("detail.z_cover.least", self.detail.z_cover.least),
            ("detail.below_deck.least", self.detail.below_deck.least),
        ] {
            faults.keep(length.not_negative(path));
        }
        faults.check()
    }

    /// Heights above the deck: of the pan's upper face, and of the underside of the trim.
    fn heights(&self) -> Result<(Length, Length), Error> {
        let (l, z) = (&self.levels, &self.detail.z);
        // The top flange of a cleat lies over the turned-up edge, as high as the seams.
        let over = if z.stands == RakeStand::OnDeck { (z.sheet.thickness - l.closure_metal).length()?.max(Length::ZERO) } else { Length::ZERO };
        Ok((l.pan_face()?, (l.compute()? + over).length()?))
    }

    fn check_fit(&self, pan: Length, h: Length, inner: Length) -> Result<(), Error> {
        let mut faults = Faults::default();
        if self.edge == PanelEdge::Ripped {
            let (path, turn_up) = ("detail.turn_up", self.detail.turn_up);
            refuse_short(
                &mut faults,
                path,
                "the turned-up edge is lower than the seams",
                self.levels.seam_height - turn_up,
                turn_up,
                "a wider rip, turned up higher",
            )?;
            let (what, room) = match self.detail.z.stands {
                RakeStand::OnPan => ("the turned-up edge lifts the trim", h.into()),
                RakeStand::OnDeck => ("the turned-up edge lifts the cleat", h - self.levels.tape - self.detail.z.sheet.thickness),
            };
            refuse_short(&mut faults, path, what, pan + turn_up - room, turn_up, "an edge turned up to the seam height")?;
        }
        if self.detail.z.stands == RakeStand::OnDeck {
            let z = &self.detail.z;
            let off = z.lower_flange + z.from_turned_up_edge - self.detail.edge_from_line;
            let cure = "a panel edge farther from the rake, or a narrower foot";
            refuse_short(&mut faults, "detail.z.lower_flange", "the cleat's foot passes the edge of the deck", off, z.lower_flange, cure)?;
            let short = z.from_turned_up_edge + self.levels.pan - z.top_flange;
            let what = "the cleat's top flange does not reach over the turned-up edge";
            refuse_short(&mut faults, "detail.z.top_flange", what, short, z.top_flange, "a wider top flange")?;
        }
        refuse_short(
            &mut faults,
            "end_panel",
            "a seam comes under the Z or the trim",
            inner - self.detail.edge_from_line + self.detail.seam_room - self.end_panel,
            self.end_panel,
            "a wider end panel: another start of the layout, or equal rips",
        )?;
        let (cover, rule) = (self.detail.inner.cover, &self.detail.z_cover);
        rule.check(&mut faults, "detail.inner.cover", cover, cover, format!("a cover greater by {}", (rule.least - cover).length()?))?;
        self.detail.face.check_below(&mut faults, &self.detail.below_deck)?;
        let foot = (h - self.detail.inner.drop).length()?;
        refuse_short(
            &mut faults,
            "detail.inner.drop",
            "the trim's inner edge comes too near the pan",
            pan + self.detail.inner.above_pan - foot,
            self.detail.inner.drop,
            "an edge that turns down less",
        )?;
        refuse_short(
            &mut faults,
            "detail.trim_tape_width",
            "the tape is wider than the flange under it",
            self.detail.trim_tape_width - self.detail.z.top_flange,
            self.detail.trim_tape_width,
            "narrower tape",
        )?;
        faults.check()
    }

    /// The panel's edge first, then the Z from it, then the trim's edge from the Z.
    fn lines(&self, web: Length, screws: Length, inner: Length) -> Result<Vec<LayoutLine>, Error> {
        let (edge, half) = (self.detail.edge_from_line, self.detail.z.tape_width.station(1, 2)?);
        let panel = LayoutLine::from_junction("panel edge", Side::First, edge.into())?;
        if self.detail.z.stands == RakeStand::OnDeck {
            let from_web = |name: &'static str, at: Length| LayoutLine::from_line(name, Side::First, "web of the cleat", web, at - web);
            let at_web = LayoutLine::from_line("web of the cleat", Side::First, "panel edge", edge, web - edge)?;
            return Ok(vec![panel, at_web, from_web("screws of the cleat", screws)?, from_web("trim's edge", inner)?]);
        }
        let from_web = |name: &'static str, at: Sum| LayoutLine::from_line(name, Side::First, "web of the Z", web, at - web);
        Ok(vec![
            panel,
            LayoutLine::from_line("web of the Z", Side::First, "panel edge", edge, web - edge)?,
            from_web("tape under the Z, edge on the rake's side", screws - half)?,
            from_web("screws of the Z", screws.into())?,
            from_web("tape under the Z, edge on the roof's side", screws + half)?,
            from_web("trim's edge", inner.into())?,
        ])
    }

    fn lay_z(&self, web: Length, foot: Length, top: Length) -> Result<JunctionTrim, Error> {
        let z = &self.detail.z;
        let under_top = (top - z.sheet.thickness).length()?;
        let at = |from_line: Sum, z: Length| -> Result<SectionPoint, Error> { Ok(SectionPoint { x: (-from_line).length()?, z }) };
        Walk {
            name: if z.stands == RakeStand::OnDeck { "rake cleat" } else { "rake Z" },
            sheet: z.sheet,
            start: at(web + z.top_flange, under_top)?,
            legs: &[leg("top flange", at(web.into(), under_top)?), leg("web", at(web.into(), foot)?), leg("lower flange", at(web - z.lower_flange, foot)?)],
            start_edge: Edge::Raw,
            end_edge: Edge::Raw,
            painted: Face::Lower,
        }
        .lay()
    }
}

impl Calculation for Rake {
    type Out = Solved;

    fn title(&self) -> String {
        "rake".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.check()?;
        r.part(|| self.levels.title(), |r| self.levels.run(r))?;
        r.part(|| BendAt::Rake.title(), |r| BendAt::Rake.run(r))?;
        let (pan, h) = self.heights()?;
        let z = &self.detail.z;
        let web = (self.detail.edge_from_line + z.web_from_turned_up_edge()?).length()?;
        r.step(|| {
            Step::new("face of the Z from the rake line")
                .formula("turned-up edge + room + lower flange")
                .with("turned-up edge", self.detail.edge_from_line)
                .with("room", z.from_turned_up_edge)
                .with("lower flange", z.lower_flange)
                .gives(web)
        });
        let inner = (web + z.top_flange + self.detail.inner.cover).length()?;
        r.step(|| {
            let step = Step::new("inner edge of the trim from the rake line").formula("face of the Z + top flange + cover").with("top flange", z.top_flange);
            let rule = &self.detail.z_cover;
            step.with("cover", self.detail.inner.cover).with("least cover", rule.least).gives(inner).source(rule.source.clone())
        });
        self.check_fit(pan, h, inner)?;
        let on_deck = z.stands == RakeStand::OnDeck;
        let foot = if on_deck { self.levels.underlayment } else { (pan + z.tape).length()? };
        let top = (h - self.levels.tape).length()?;
        let height = (top - foot).length()?;
        if !height.is_positive() {
            return Err(tape_too_thick("detail.z.tape", "the Z", z.tape, height)?);
        }
        r.step(|| {
            let step = Step::new("height of the Z, or of the cleat").formula("underside of the trim - tape above - what it stands on");
            step.with("underside of the trim", h).with("tape above", self.levels.tape).with("stands on", foot).gives(height)
        });
        let z_trim = self.lay_z(web, foot, top)?;

        let seam_tops = Support { rise: Angle::ZERO, height: h };
        let heading = Angle::degrees_from(-90.0)?;
        let corner = seam_tops.meets(&Support { rise: heading, height: self.detail.face.packing() })?;
        let face = self.detail.face.lay(r, self.detail.sheet, heading, corner).map_err(|e| e.under("detail"))?;
        let inner_corner = seam_tops.point((-inner).length()?)?;
        let inner_foot = SectionPoint { x: inner_corner.x, z: (inner_corner.z - self.detail.inner.drop).length()? };
        let [wall, drip] = face.legs(("face", "drip"), Angle::SQUARE);
        let trim = Walk {
            name: "rake trim",
            sheet: self.detail.sheet,
            start: inner_foot,
            legs: &[leg("inner edge", inner_corner), leg("top", corner), wall, drip],
            start_edge: Edge::closed_hem(self.detail.inner.hem, Direction::Down),
            end_edge: face.edge.clone(),
            painted: Face::Upper,
        }
        .lay()?;

        let mut solved = Solved::default();
        face.give(&mut solved);
        solved.trims.extend([z_trim, trim]);
        // Toward the roof is the way in which distances are counted from this line.
        let screws = (web - z.lower_flange.station(1, 2)?).length()?;
        let rivets = (web + z.top_flange.station(1, 2)?).length()?;
        let (screwed, riveted) = if on_deck { ("screws of the cleat", "rivets into the cleat") } else { ("screws of the Z", "rivets into the Z") };
        if !on_deck {
            solved.along.push(tape("tape under the Z", Side::First, z.tape_width, false, screws));
        }
        solved.along.push(z.screws.line(screwed, Side::First, z.bites, screws));
        solved.along.push(tape("tape under the trim", Side::First, self.detail.trim_tape_width, false, rivets));
        solved.along.push(self.detail.rivets.line(riveted, Side::First, Bites::Trim, rivets));
        solved.lines.extend(self.lines(web, screws, inner)?);
        // Through slots the Z stands still and the panel moves under it; through the pan alone it goes with the panel.
        let (hold, code) = match z.bites {
            // Beside the panel they hold the cleat alone, and under its flange the panel slides.
            _ if on_deck => (Hold::Slides, None),
            Bites::Structure => (Hold::Pins, Some(RAKE_EDGE_PINNED)),
            Bites::Panel => (Hold::Slides, Some(RAKE_TRIM_RIDES)),
            Bites::Slot | Bites::Trim => (Hold::Slides, None),
        };
        solved.cautions.extend(code.map(|code| Caution::new(code, "detail.z.bites", Source::CommonPractice)));
        solved.cautions.extend(thick_tape("detail.z.tape", "under the Z", z.tape)?);
        solved.cautions.extend(thick_tape("levels.tape", "under the trim", self.levels.tape)?);
        let turn_up = match self.edge {
            PanelEdge::Seam => Length::ZERO,
            PanelEdge::Ripped => self.detail.turn_up,
        };
        solved.ends.push(SideEnd { side: Side::First, end: PanelEnd::hold_back(self.detail.edge_from_line).with_turn_up(turn_up).holding(hold) });
        let leg = if self.edge == PanelEdge::Seam { self.levels.seam_height } else { turn_up };
        let cure = ("detail.edge_from_line", "an edge farther from the line, or a wider end panel");
        let into = fit::check(&solved, &[Deck::across(&self.levels, (leg, self.end_panel), cure)], Beside::Face(heading))?;
        solved.cautions.extend(into);
        Ok(solved)
    }
}
