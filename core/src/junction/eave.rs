//! The eave: a drip trim on the deck and down the fascia, and the panels that run past it and fold around a strip.
//!
//! The junction line is the deck's lower edge, where the deck meets the fascia. The roof lies on the side of negative x, the fascia faces +x.

use super::cautions::{EAVE_PINNED, FLANGE_OVER_UNDERLAYMENT, FOLD_OVER_STRIP, NOSE_BEHIND_DRIP};
use super::draft::{TrimSheet, Walk, along, keep_under, leg, opposite_sign, refuse_short, turned, within};
use super::drip::DripFace;
use super::eave_gutter::GutterOpening;
use super::eave_parts::{DeckFlange, EaveFront, EavePanel, FlangeLies, HookStrip};
use super::fit::{self, Beside, Deck};
use super::least::LeastRule;
use super::levels::RoofSide;
use super::parts::{Adjoining, Bites, JunctionTrim, LayoutLine, Side, SideEnd, Solved};
use super::support::Support;
use crate::error::{Error, Faults};
use crate::panel::{Hold, PanelEnd};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::trim::{Edge, Face};
use crate::units::Length;

/// What is chosen at an eave.
///
/// ```
/// use seamwright::junction::{DeckFlange, DripFace, DripHem, EaveDetail, EaveFront, EavePanel, FastenerRow, FlangeLies, HookStrip, TrimSheet, LeastRule};
/// use seamwright::practice;
/// use seamwright::record::Source;
/// use seamwright::units::{Angle, Length};
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let detail = EaveDetail {
///     sheet,
///     flange: DeckFlange { width: Length::inches(4), lies: FlangeLies::UnderUnderlayment, fasteners: row.clone(), fasteners_from_edge: Length::inches(1) },
///     on_deck: LeastRule::IRC_OVER_EDGE_METAL,
///     below_deck: LeastRule::IRC_BELOW_DECK,
///     front: EaveFront::Plumb,
///     face: DripFace {
///         depth: Length::inches(3),
///         kick: Angle::parse("45 deg")?,
///         clears: practice::junction::DRIP_CLEARS_FACE,
///         hem: DripHem::Closed { width: practice::junction::EDGE_HEM },
///     },
///     strip: HookStrip { sheet, width: Length::inches(4), fasteners: row, fasteners_from_edge: Length::inches(1) },
///     panel: EavePanel {
///         overhang: Length::parse("1 1/4\"")?,
///         gap: Length::parse("1/4\"")?,
///         fold: practice::panel::END_FOLD,
///         fold_opening: Length::parse("3/16\"")?,
///         clearance: practice::movement::CLEARANCE,
///         engagement: practice::movement::ENGAGEMENT,
///         fixed: None,
///     },
///     gutter: None,
/// };
/// assert!(detail.panel.overhang < detail.strip.width);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EaveDetail {
    /// The drip trim's sheet.
    pub sheet: TrimSheet,
    /// Its deck flange.
    pub flange: DeckFlange,
    /// How far the flange must reach up the deck; in a job file [`LeastRule::IRC_OVER_EDGE_METAL`] unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::on_deck"))]
    pub on_deck: LeastRule,
    /// How the face below falls.
    pub front: EaveFront,
    /// Its face with the drip.
    pub face: DripFace,
    /// How far the face must come down below the deck; in a job file [`LeastRule::IRC_BELOW_DECK`] unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::below_deck"))]
    pub below_deck: LeastRule,
    /// The strip that the panels hook.
    pub strip: HookStrip,
    /// The panels' ends.
    pub panel: EavePanel,
    /// The gutter, where there is one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub gutter: Option<GutterOpening>,
}

/// An eave as asked for.
///
/// # Errors
/// Computing refuses what misses what it needs, by how much and with the cure: fasteners off the deck, a fold that is closed tight, holds too little
/// or strikes the face, a nose that the gutter does not catch in the heat and in the cold, a gutter's lip that stands too high, a hem that misses its cleat; and every figure without meaning.
///
/// ```
/// use seamwright::junction::{
///     DeckFlange, DripFace, DripHem, Eave, EaveDetail, EaveFront, EavePanel, FastenerRow, FlangeLies, HookStrip, Levels, RoofSide, Side, TrimSheet,
///     LeastRule,
/// };
/// use seamwright::panel::Hold;
/// use seamwright::pitch::Pitch;
/// use seamwright::practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Angle, Length};
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let detail = EaveDetail {
///     sheet,
///     flange: DeckFlange { width: Length::inches(4), lies: FlangeLies::UnderUnderlayment, fasteners: row.clone(), fasteners_from_edge: Length::inches(1) },
///     on_deck: LeastRule::IRC_OVER_EDGE_METAL,
///     below_deck: LeastRule::IRC_BELOW_DECK,
///     front: EaveFront::Plumb,
///     face: DripFace {
///         depth: Length::inches(3),
///         kick: Angle::parse("45 deg")?,
///         clears: practice::junction::DRIP_CLEARS_FACE,
///         hem: DripHem::Closed { width: practice::junction::EDGE_HEM },
///     },
///     strip: HookStrip { sheet, width: Length::inches(4), fasteners: row, fasteners_from_edge: Length::inches(1) },
///     panel: EavePanel {
///         overhang: Length::parse("1 1/4\"")?,
///         gap: Length::parse("1/4\"")?,
///         fold: practice::panel::END_FOLD,
///         fold_opening: Length::parse("3/16\"")?,
///         clearance: practice::movement::CLEARANCE,
///         engagement: practice::movement::ENGAGEMENT,
///         fixed: None,
///     },
///     gutter: None,
/// };
/// let levels = Levels { underlayment: Length::mils(40), seam_height: Length::parse("1 3/4\"")?, ..Levels::default() };
/// let solved = Eave { roof: RoofSide { pitch: Pitch::parse("4:12")?, levels }, detail }.compute()?;
/// let end = solved.end(Side::First).unwrap();
/// assert_eq!(end.allowance()?, Length::parse("2 1/2\"")?);
/// assert_eq!(end.hold, Hold::Slides);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Eave {
    /// The roof above; the underlayment and the stand-off bear on the eave.
    pub roof: RoofSide,
    /// What is chosen.
    pub detail: EaveDetail,
}

impl Eave {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        let p = &self.detail.panel;
        keep_under(&mut faults, "roof.levels", self.roof.levels.compute().map(|_| ()));
        keep_under(&mut faults, "detail.sheet", self.detail.sheet.check());
        keep_under(&mut faults, "detail.flange.fasteners", self.detail.flange.fasteners.check());
        keep_under(&mut faults, "detail.face", self.detail.face.check(self.detail.sheet));
        keep_under(&mut faults, "detail.strip.sheet", self.detail.strip.sheet.check());
        keep_under(&mut faults, "detail.strip.fasteners", self.detail.strip.fasteners.check());
        for (path, length) in [
            ("detail.flange.width", self.detail.flange.width),
            ("detail.strip.width", self.detail.strip.width),
            ("detail.panel.overhang", p.overhang),
            ("detail.panel.fold", p.fold),
        ] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [
            ("detail.flange.fasteners_from_edge", self.detail.flange.fasteners_from_edge),
            ("detail.strip.fasteners_from_edge", self.detail.strip.fasteners_from_edge),
            ("detail.panel.gap", p.gap),
            ("detail.panel.fold_opening", p.fold_opening),
            ("detail.panel.clearance", p.clearance),
            ("detail.panel.engagement", p.engagement),
            ("detail.on_deck.least", self.detail.on_deck.least),
            ("detail.below_deck.least", self.detail.below_deck.least),
        ] {
            faults.keep(length.not_negative(path));
        }
        if let Some(fixed) = &p.fixed {
            faults.keep(fixed.up_the_slope.not_negative("detail.panel.fixed.up_the_slope"));
            keep_under(&mut faults, "detail.panel.fixed.fasteners", fixed.fasteners.check());
        }
        if let Some(gutter) = self.detail.gutter {
            gutter.check(&mut faults);
        }
        let slope = self.roof.pitch.angle();
        if let Some(fall) = faults.keep(self.detail.front.fall(slope)) {
            within(&mut faults, "detail.front", fall, slope.degrees(), 180.0);
        }
        faults.check()
    }

    /// The folds of the panels against the strip and against the face.
    fn check_panel(&self, faults: &mut Faults, face_at: Length) -> Result<(), Error> {
        let p = &self.detail.panel;
        refuse_short(
            faults,
            "detail.panel.fold_opening",
            "the fold is closed tighter than the strip is thick",
            self.detail.strip.sheet.thickness - p.fold_opening,
            p.fold_opening,
            "a fold opened to the strip's thickness and 1/8 in",
        )?;
        refuse_short(
            faults,
            "detail.panel.fold",
            "the fold hooks the strip too little",
            p.engagement + p.gap - p.fold,
            p.fold,
            "a longer fold, or a smaller gap",
        )?;
        // A panel that slides is drawn up until only the clearance is left.
        let room = if p.fixed.is_some() { p.gap } else { p.clearance.min(p.gap) };
        refuse_short(
            faults,
            "detail.panel.fold",
            "the fold strikes the face of the trim",
            face_at + p.fold - p.overhang - room,
            p.fold,
            "a longer overhang, or a shorter fold",
        )?;
        if p.fixed.is_none() {
            refuse_short(
                faults,
                "detail.panel.gap",
                "the gap when laid is less than the least of the year",
                p.clearance - p.gap,
                p.gap,
                "a wider gap, as the movement of the panels asks for",
            )?;
        }
        Ok(())
    }
}

impl Calculation for Eave {
    type Out = Solved;

    fn title(&self) -> String {
        format!("eave of a roof of {}", self.roof.pitch)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.solve(r, Length::ZERO)
    }
}

impl Eave {
    /// How high over the deck the flange lies.
    fn flange_level(&self) -> Result<Length, Error> {
        match self.detail.flange.lies {
            FlangeLies::UnderUnderlayment => Ok(self.roof.levels.built_up),
            FlangeLies::OverUnderlayment => self.roof.levels.bed(),
        }
    }

    /// Down the slope from the junction line to the outside of the face, as far down as the fold hangs, with something so thick behind it.
    pub(super) fn face_at(&self, behind: Length) -> Result<Length, Error> {
        let d = &self.detail;
        let slope = self.roof.pitch.angle();
        let (deck_rise, heading) = (opposite_sign(slope)?, opposite_sign(d.front.fall(slope)?)?);
        let outside = Support { rise: heading, height: (d.face.packing() + behind + d.sheet.thickness).length()? };
        let on_flange = Support { rise: deck_rise, height: (self.flange_level()? + d.sheet.thickness).length()? };
        // The fold's lower layer hangs as far below the strip's top as the fold is open; the face is nearer there where the roof is steep.
        let hangs = on_flange.height + d.strip.sheet.thickness - d.panel.fold_opening - self.roof.levels.pan;
        let under = Support { rise: deck_rise, height: hangs.length()? };
        Ok(along(on_flange.meets(&outside)?, deck_rise)?.max(along(under.meets(&outside)?, deck_rise)?))
    }

    /// The eave with its face before something so thick that lies on the fascia.
    pub(super) fn solve<R: Recorder>(&self, r: &mut R, behind: Length) -> Result<Solved, Error> {
        self.check()?;
        let packing = (self.detail.face.packing() + behind).length()?;
        let slope = self.roof.pitch.angle();
        let (deck_rise, fall) = (opposite_sign(slope)?, self.detail.front.fall(slope)?);
        let heading = opposite_sign(fall)?;
        r.step(|| {
            Step::new("bend over the eave").formula("fall of the face - slope").with("fall", fall).with("slope", slope).gives(fall.degrees() - slope.degrees())
        });

        let level = self.flange_level()?;
        let deck = Support { rise: deck_rise, height: level };
        let corner = deck.meets(&Support { rise: heading, height: packing })?;
        // Down the slope is toward +x here, so that positions along the deck run down it.
        let corner_at = along(corner, deck_rise)?;
        r.step(|| {
            Step::new("corner of the trim")
                .formula("where the deck flange meets the face")
                .with("flange above the deck", level)
                .with("face out from the fascia", packing)
                .gives(format_args!("x {}, z {}", corner.x, corner.z))
                .source(Source::geometry())
        });
        let top = (corner_at - self.detail.flange.width).length()?;
        let face = self.detail.face.lay_over(r, self.detail.sheet, heading, corner, behind).map_err(|e| e.under("detail"))?;
        let [wall, drip] = face.legs(("face", "drip"), turned(fall, -slope.degrees())?);
        let drip = Walk {
            name: "eave trim",
            sheet: self.detail.sheet,
            start: deck.point(top)?,
            legs: &[leg("deck flange", corner).long(self.detail.flange.width), wall, drip],
            start_edge: Edge::Raw,
            end_edge: face.edge.clone(),
            painted: Face::Upper,
        }
        .lay()?;
        let on_flange = Support { rise: deck_rise, height: (level + self.detail.sheet.thickness).length()? };
        let strip_top = (self.detail.panel.overhang - self.detail.strip.width).length()?;
        let strip = self.lay_strip(on_flange, strip_top)?;

        let mut faults = Faults::default();
        let flange_row = (top + self.detail.flange.fasteners_from_edge).length()?;
        let strip_row = (strip_top + self.detail.strip.fasteners_from_edge).length()?;
        refuse_short(
            &mut faults,
            "detail.flange.fasteners_from_edge",
            "the flange's fasteners miss the deck",
            flange_row.into(),
            self.detail.flange.fasteners_from_edge,
            "a wider flange, or fasteners nearer to its edge",
        )?;
        let (on_deck, rule) = ((-top).length()?, &self.detail.on_deck);
        let cure = format!("a flange wider by {}", (rule.least - on_deck).length()?);
        rule.check(&mut faults, "detail.flange.width", on_deck, self.detail.flange.width, cure)?;
        self.detail.face.check_below(&mut faults, &self.detail.below_deck)?;
        refuse_short(
            &mut faults,
            "detail.strip.fasteners_from_edge",
            "the strip's fasteners miss the deck",
            strip_row.into(),
            self.detail.strip.fasteners_from_edge,
            "a wider strip, or fasteners nearer to its edge",
        )?;
        let face_at = self.face_at(behind)?;
        r.step(|| {
            Step::new("face of the trim at the level of the fold, down the slope from the junction line")
                .formula("where the outside of the face meets the underside of the fold, or of the strip")
                .gives(face_at)
                .source(Source::geometry())
        });
        self.check_panel(&mut faults, face_at)?;

        let p = &self.detail.panel;
        let pan = Support { rise: deck_rise, height: self.roof.levels.under_pan()? };
        let nose = pan.point((p.overhang + p.gap).length()?)?;
        r.step(|| {
            Step::new("nose of the panel, level from the junction line")
                .formula("(overhang + gap) cos slope + pan sin slope")
                .with("overhang", p.overhang)
                .with("gap", p.gap)
                .with("pan", pan.height)
                .with("slope", slope)
                .gives(nose.x)
                .source(Source::geometry())
        });
        if let Some(gutter) = self.detail.gutter {
            gutter.check_under(r, &mut faults, p, &pan, face.drip.x)?;
        }
        faults.check()?;

        let drip_x = face.drip.x;
        let mut solved = Solved::default();
        face.give(&mut solved);
        solved.adjoining.extend(self.detail.gutter.map(|g| Adjoining::Gutter { back: g.back, front: g.front }));
        if self.detail.flange.lies == FlangeLies::OverUnderlayment {
            solved.cautions.push(Caution::new(FLANGE_OVER_UNDERLAYMENT, "detail.flange.lies", Source::CommonPractice));
        }
        if nose.x < drip_x {
            solved.cautions.push(Caution::new(NOSE_BEHIND_DRIP, "detail.panel.overhang", Source::geometry()).arg("behind", (drip_x - nose.x).length()?));
        }
        solved.trims.extend([drip, strip]);
        let up = |down: Length| (-down).length();
        solved.along.push(self.detail.flange.fasteners.line("deck flange's fasteners", Side::First, Bites::Structure, up(flange_row)?));
        solved.along.push(self.detail.strip.fasteners.line("hook strip's fasteners", Side::First, Bites::Structure, up(strip_row)?));
        let mut hold = Hold::Slides;
        if let Some(fixed) = &p.fixed {
            hold = Hold::Pins;
            solved.along.push(fixed.fasteners.line("panel fasteners", Side::First, Bites::Structure, fixed.up_the_slope));
            solved.cautions.push(Caution::new(EAVE_PINNED, "detail.panel.fixed", Source::CommonPractice));
        }
        let end = PanelEnd::overhang(p.overhang).with_gap(p.gap).with_fold(p.fold).holding(hold);
        let past = end.allowance()?;
        r.step(|| {
            Step::new("panel past the junction line")
                .formula("overhang + gap + fold")
                .with("overhang", p.overhang)
                .with("gap", p.gap)
                .with("fold", p.fold)
                .gives(past)
        });
        solved.ends.push(SideEnd { side: Side::First, end });
        solved.lines.extend(self.lines(up(top)?, up(strip_top)?)?);
        // The fold must reach from the underside of the pan, where that lies over the strip, to the strip's own.
        let hooked = (on_flange.height, (on_flange.height + self.detail.strip.sheet.thickness).length()?);
        let needed = (pan.height - hooked.0).length()?;
        if needed > p.fold_opening {
            let over = Caution::new(FOLD_OVER_STRIP, "detail.panel.fold_opening", Source::geometry());
            solved.cautions.push(over.arg("opening", p.fold_opening).arg("needed", needed));
        }
        let cure = ("detail.panel.fold", "a shorter fold, or a longer overhang");
        let into = fit::check(&solved, &[Deck::hooked(Side::First, deck_rise, &self.roof.levels, hooked, cure)], Beside::Face(heading))?;
        solved.cautions.extend(into);
        Ok(solved)
    }
}

impl Eave {
    /// The trim is set to its line and the strip on it, then the panels are laid against the strip.
    fn lines(&self, trim_top: Length, strip_top: Length) -> Result<Vec<LayoutLine>, Error> {
        let (flange, strip, panel) = (&self.detail.flange, &self.detail.strip, &self.detail.panel);
        let strip_edge = (-panel.overhang).length()?;
        let mut out = vec![
            LayoutLine::from_junction("trim top edge", Side::First, trim_top.into())?,
            LayoutLine::below_top_edge("deck flange's fasteners", Side::First, trim_top, flange.fasteners_from_edge)?,
            LayoutLine::from_junction("hook strip, top edge", Side::First, strip_top.into())?,
            LayoutLine::from_line("hook strip's fasteners", Side::First, "hook strip, top edge", strip_top, -strip.fasteners_from_edge)?,
            LayoutLine::from_junction("hook strip, lower edge", Side::First, strip_edge.into())?,
            LayoutLine::from_line("panel nose", Side::First, "hook strip, lower edge", strip_edge, -panel.gap)?,
        ];
        if let Some(fixed) = &panel.fixed {
            out.push(LayoutLine::from_junction("panel fasteners", Side::First, fixed.up_the_slope.into())?);
        }
        Ok(out)
    }

    fn lay_strip(&self, on_flange: Support, top: Length) -> Result<JunctionTrim, Error> {
        Walk {
            name: "hook strip",
            sheet: self.detail.strip.sheet,
            start: on_flange.point(top)?,
            legs: &[leg("strip", on_flange.point(self.detail.panel.overhang)?).long(self.detail.strip.width)],
            start_edge: Edge::Raw,
            end_edge: Edge::Raw,
            painted: Face::Upper,
        }
        .lay()
    }
}
