//! The eave: a drip trim on the deck and down the fascia, and the panels that run past it and fold around a strip.
//!
//! The junction line is the deck's lower edge, where the deck meets the fascia. The roof lies on the side of negative x, the fascia faces +x.

use super::cautions::{EAVE_PINNED, FLANGE_OVER_UNDERLAYMENT, NOSE_BEHIND_DRIP};
use super::draft::{TrimSheet, Walk, along, keep_under, opposite_sign, refuse_short, within};
use super::drip::DripFace;
use super::eave_parts::{DeckFlange, EaveFront, EavePanel, FlangeLies, GutterOpening, HookStrip};
use super::parts::{Bites, Side, SideEnd, Solved};
use super::support::Support;
use super::{JunctionTrim, Levels};
use crate::error::{Error, Faults};
use crate::panel::{Hold, PanelEnd};
use crate::pitch::Pitch;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::trim::{Edge, Face};
use crate::units::Length;

/// An eave as asked for.
///
/// # Errors
/// Computing refuses what misses what it needs, by how much and with the cure: fasteners off the deck, a fold that is closed tight, holds too little
/// or strikes the face, a nose that the gutter does not catch, a hem that misses its cleat; and every figure without meaning.
///
/// ```
/// use seamwright::junction::{DeckFlange, DripFace, DripHem, Eave, EaveFront, EavePanel, FlangeLies, HookStrip, Levels, Row, Side, TrimSheet};
/// use seamwright::panel::Hold;
/// use seamwright::pitch::Pitch;
/// use seamwright::practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Angle, Length};
/// let row = Row { spacing: Length::inches(12), source: Source::CommonPractice };
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let eave = Eave {
///     pitch: Pitch::parse("4:12")?,
///     levels: Levels { underlayment: Length::mils(40), seam_height: Length::parse("1 3/4\"")?, ..Levels::default() },
///     sheet,
///     flange: DeckFlange { width: Length::inches(4), lies: FlangeLies::UnderUnderlayment, fasteners: row.clone(), fasteners_from_edge: Length::inches(1) },
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
/// let solved = eave.compute()?;
/// let end = solved.end(Side::First).unwrap();
/// assert_eq!(end.allowance()?, Length::parse("2 1/2\"")?);
/// assert_eq!(end.hold, Hold::Slides);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Eave {
    /// Pitch of the roof.
    pub pitch: Pitch,
    /// The layers on the deck; the underlayment and the stand-off bear on the eave.
    pub levels: Levels,
    /// The drip trim's sheet.
    pub sheet: TrimSheet,
    /// Its deck flange.
    pub flange: DeckFlange,
    /// How the face below falls.
    pub front: EaveFront,
    /// Its face with the drip.
    pub face: DripFace,
    /// The strip that the panels hook.
    pub strip: HookStrip,
    /// The panels' ends.
    pub panel: EavePanel,
    /// The gutter, where there is one.
    #[cfg_attr(feature = "serde", serde(default))]
    pub gutter: Option<GutterOpening>,
}

impl Eave {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        let p = &self.panel;
        keep_under(&mut faults, "levels", self.levels.compute().map(|_| ()));
        keep_under(&mut faults, "sheet", self.sheet.check());
        keep_under(&mut faults, "flange.fasteners", self.flange.fasteners.check());
        keep_under(&mut faults, "face", self.face.check(self.sheet));
        keep_under(&mut faults, "strip.sheet", self.strip.sheet.check());
        keep_under(&mut faults, "strip.fasteners", self.strip.fasteners.check());
        for (path, length) in [("flange.width", self.flange.width), ("strip.width", self.strip.width), ("panel.overhang", p.overhang), ("panel.fold", p.fold)] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [
            ("flange.fasteners_from_edge", self.flange.fasteners_from_edge),
            ("strip.fasteners_from_edge", self.strip.fasteners_from_edge),
            ("panel.gap", p.gap),
            ("panel.fold_opening", p.fold_opening),
            ("panel.clearance", p.clearance),
            ("panel.engagement", p.engagement),
        ] {
            faults.keep(length.not_negative(path));
        }
        if let Some(fixed) = &p.fixed {
            faults.keep(fixed.up_the_slope.not_negative("panel.fixed.up_the_slope"));
            keep_under(&mut faults, "panel.fixed.fasteners", fixed.fasteners.check());
        }
        let slope = self.pitch.angle();
        if let Some(fall) = faults.keep(self.front.fall(slope)) {
            within(&mut faults, "front", fall, slope.degrees(), 180.0);
        }
        faults.check()
    }

    /// The folds of the panels against the strip and against the face.
    fn check_panel(&self, faults: &mut Faults, face_at: Length) -> Result<(), Error> {
        let p = &self.panel;
        refuse_short(
            faults,
            "panel.fold_opening",
            "the fold is closed tighter than the strip is thick",
            self.strip.sheet.thickness - p.fold_opening,
            p.fold_opening,
            "a fold opened to the strip's thickness and 1/8 in",
        )?;
        refuse_short(faults, "panel.fold", "the fold hooks the strip too little", p.engagement + p.gap - p.fold, p.fold, "a longer fold, or a smaller gap")?;
        // A panel that slides is drawn up until only the clearance is left.
        let room = if p.fixed.is_some() { p.gap } else { p.clearance.min(p.gap) };
        refuse_short(
            faults,
            "panel.fold",
            "the fold strikes the face of the trim",
            face_at + p.fold - p.overhang - room,
            p.fold,
            "a longer overhang, or a shorter fold",
        )?;
        if p.fixed.is_none() {
            refuse_short(
                faults,
                "panel.gap",
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
        format!("eave of a roof of {}", self.pitch)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.check()?;
        let slope = self.pitch.angle();
        let (deck_rise, fall) = (opposite_sign(slope)?, self.front.fall(slope)?);
        let heading = opposite_sign(fall)?;
        r.step(|| {
            Step::new("bend over the eave").formula("fall of the face - slope").with("fall", fall).with("slope", slope).gives(fall.degrees() - slope.degrees())
        });

        let level = match self.flange.lies {
            FlangeLies::UnderUnderlayment => Length::ZERO,
            FlangeLies::OverUnderlayment => self.levels.underlayment,
        };
        let deck = Support { rise: deck_rise, height: level };
        let corner = deck.meets(&Support { rise: heading, height: self.face.packing() })?;
        // Down the slope is toward +x here, so that positions along the deck run down it.
        let corner_at = along(corner, deck_rise)?;
        r.step(|| {
            Step::new("corner of the trim")
                .formula("where the deck flange meets the face")
                .with("flange above the deck", level)
                .with("face out from the fascia", self.face.packing())
                .gives(format_args!("x {}, z {}", corner.x, corner.z))
                .source(Source::geometry())
        });
        let top = (corner_at - self.flange.width).length()?;
        let face = self.face.lay(r, self.sheet, heading, corner)?;
        let drip = Walk {
            name: "eave trim",
            sheet: self.sheet,
            start: deck.point(top)?,
            legs: &[("deck flange", corner), ("face", face.bend), ("drip", face.drip)],
            start_edge: Edge::Raw,
            end_edge: face.edge,
            painted: Face::Upper,
        }
        .lay()?;
        let on_flange = Support { rise: deck_rise, height: (level + self.sheet.thickness).length()? };
        let strip_top = (self.panel.overhang - self.strip.width).length()?;
        let strip = self.lay_strip(on_flange, strip_top)?;

        let mut faults = Faults::default();
        let mut cautions = face.cautions;
        let flange_row = (top + self.flange.fasteners_from_edge).length()?;
        let strip_row = (strip_top + self.strip.fasteners_from_edge).length()?;
        refuse_short(
            &mut faults,
            "flange.fasteners_from_edge",
            "the flange's fasteners miss the deck",
            flange_row.into(),
            self.flange.fasteners_from_edge,
            "a wider flange, or fasteners nearer to its edge",
        )?;
        refuse_short(
            &mut faults,
            "strip.fasteners_from_edge",
            "the strip's fasteners miss the deck",
            strip_row.into(),
            self.strip.fasteners_from_edge,
            "a wider strip, or fasteners nearer to its edge",
        )?;
        let outside = Support { rise: heading, height: (self.face.packing() + self.sheet.thickness).length()? };
        // The fold's lower layer hangs as far below the strip's top as the fold is open; the face is nearer there where the roof is steep.
        let under = Support { rise: deck_rise, height: (on_flange.height + self.strip.sheet.thickness - self.panel.fold_opening - self.levels.pan).length()? };
        let face_at = along(on_flange.meets(&outside)?, deck_rise)?.max(along(under.meets(&outside)?, deck_rise)?);
        r.step(|| {
            Step::new("face of the trim at the level of the fold, down the slope from the junction line")
                .formula("where the outside of the face meets the underside of the fold, or of the strip")
                .gives(face_at)
                .source(Source::geometry())
        });
        self.check_panel(&mut faults, face_at)?;

        let p = &self.panel;
        let pan = Support { rise: deck_rise, height: (self.levels.underlayment + self.levels.stand_off).length()? };
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
        if let Some(gutter) = self.gutter {
            let cure = "another overhang, or a gutter set to it";
            refuse_short(&mut faults, "gutter.front", "the panel's nose passes the gutter's front lip", nose.x - gutter.front, gutter.front, cure)?;
            refuse_short(&mut faults, "gutter.back", "the panel's nose stands behind the gutter's back", gutter.back - nose.x, gutter.back, cure)?;
        }
        faults.check()?;

        if self.flange.lies == FlangeLies::OverUnderlayment {
            cautions.push(Caution::new(FLANGE_OVER_UNDERLAYMENT, "flange.lies", Source::CommonPractice));
        }
        if nose.x < face.drip.x {
            cautions.push(Caution::new(NOSE_BEHIND_DRIP, "panel.overhang", Source::geometry()).arg("behind", (face.drip.x - nose.x).length()?));
        }
        let mut solved = Solved::default();
        if let Some((cleat, lines)) = face.cleat {
            solved.trims.push(cleat);
            solved.along.extend(lines);
        }
        solved.trims.extend([drip, strip]);
        let up = |down: Length| (-down).length();
        solved.along.push(self.flange.fasteners.line("deck flange's fasteners", Side::First, Bites::Structure, up(flange_row)?));
        solved.along.push(self.strip.fasteners.line("hook strip's fasteners", Side::First, Bites::Structure, up(strip_row)?));
        let mut hold = Hold::Slides;
        if let Some(fixed) = &p.fixed {
            hold = Hold::Pins;
            solved.along.push(fixed.fasteners.line("panel fasteners", Side::First, Bites::Structure, fixed.up_the_slope));
            cautions.push(Caution::new(EAVE_PINNED, "panel.fixed", Source::CommonPractice));
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
        solved.cautions = cautions;
        Ok(solved)
    }
}

impl Eave {
    fn lay_strip(&self, on_flange: Support, top: Length) -> Result<JunctionTrim, Error> {
        Walk {
            name: "hook strip",
            sheet: self.strip.sheet,
            start: on_flange.point(top)?,
            legs: &[("strip", on_flange.point(self.panel.overhang)?)],
            start_edge: Edge::Raw,
            end_edge: Edge::Raw,
            painted: Face::Upper,
        }
        .lay()
    }
}
