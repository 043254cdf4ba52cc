//! The step: an upper plane that ends over a plumb riser, above a lower one that ends at its foot.
//!
//! The lower plane lies on the side of negative x, its junction line where its deck meets the riser; the upper plane lies on the side of positive x, and
//! both rise toward +x. The upper panels end as at an eave, the lower ones as at a headwall; the upper trim's face comes down over the lower trim's leg.
//! Each side is measured from a line of its own: the lower plane from the riser's foot, the upper plane and the riser ([`Side::Riser`]) from the edge of
//! the upper deck.

use super::draft::{Walk, along, keep_under, leg, refuse_short, turned};
use super::drip::FacePlace;
use super::eave::{Eave, EaveDetail};
use super::eave_parts::EaveFront;
use super::fit::{self, Beside, Deck};
use super::least::LeastRule;
use super::levels::RoofSide;
use super::parts::{Adjoining, AlongLine, Bites, LayoutLine, Side, SideEnd, Solved};
use super::step_parts::StepDetail;
use super::support::{SectionPoint, Support};
use super::top_end::Place;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step as Working};
use crate::trim::{Edge, Face};
use crate::units::{Angle, Length};

/// A step in a roof as asked for.
///
/// The lower flashing's flange lies on the seam tops, `h` above the lower deck; with the leg `w` out from the riser its bend stands `h / cos S - w tan S` above
/// the foot, and its leg goes up to where the detail ends it below the upper deck's edge.
///
/// # Errors
/// Computing refuses a riser that is too low for the upstand, by how much and with what would cure it; a face that laps the leg too little or comes too near the
/// flange; and all that an eave and a headwall refuse.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{
///     Bites, ContinuousCleat, DeckFlange, DripEdge, DripFace, DripHem, EavePanel, FastenerRow, FlangeLies, HookStrip, Levels, RoofSide, Side, Step, StepDetail,
///     StepLower, StepUpper, TopClosure, TopEnd, TrimSheet, LeastRule,
/// };
/// use seamwright::pitch::Pitch;
/// use seamwright::practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Angle, Length};
/// let inch = |text: &str| Length::parse(text);
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
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
///     rivets: Some(row.clone()),
///     hollow_seams: false,
///     cap_tape_width: inch("1/2\"")?,
///     hold_back: inch("2\"")?,
///     clearance: inch("1/4\"")?,
///     turn_up: practice::panel::TURN_UP,
///     field_trim: Length::ZERO,
/// };
/// let lower = StepLower {
///     end,
///     sheet,
///     stands_out: Length::ZERO,
///     below_edge: inch("1\"")?,
///     upstand: LeastRule::UFGS_UPSTAND,
///     fasteners: FastenerRow::UFGS_WALL_LEG,
///     fasteners_below_top: inch("1\"")?,
///     lap: LeastRule::LAP_OVER_LEG,
///     clearance: inch("1\"")?,
/// };
/// let upper = StepUpper {
///     sheet,
///     flange: DeckFlange { width: inch("4\"")?, lies: FlangeLies::UnderUnderlayment, fasteners: row.clone(), fasteners_from_edge: inch("1\"")? },
///     face: DripFace { depth: inch("5\"")?, kick: Angle::parse("40 deg")?, clears: inch("5/8\"")?, hem: DripHem::Closed { width: inch("1/2\"")? } },
///     strip: HookStrip { sheet, width: inch("4\"")?, fasteners: row, fasteners_from_edge: inch("1\"")? },
///     panel: EavePanel {
///         overhang: inch("1 1/2\"")?,
///         gap: inch("1/4\"")?,
///         fold: practice::panel::END_FOLD,
///         fold_opening: inch("3/16\"")?,
///         clearance: practice::movement::CLEARANCE,
///         engagement: practice::movement::ENGAGEMENT,
///         fixed: None,
///     },
/// };
/// let levels = Levels { pan: Length::mils(24), seam_height: inch("1 3/4\"")?, ..Levels::default() };
/// let roof = RoofSide { pitch: Pitch::parse("3:12")?, levels };
/// let mut step = Step { lower: roof, upper: roof, riser: Length::inches(14), detail: StepDetail { lower, upper } };
/// let solved = step.compute()?;
/// assert_eq!(solved.ends.iter().map(|e| e.side).collect::<Vec<_>>(), [Side::First, Side::Second]);
/// assert_eq!(solved.trims.last().map(|t| &*t.name), Some("hook strip"));
/// step.riser = Length::inches(8);
/// assert_eq!(step.compute().unwrap_err().path(), "riser");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Step {
    /// The roof below.
    pub lower: RoofSide,
    /// The roof above.
    pub upper: RoofSide,
    /// From the lower deck, at the riser's foot, plumb up to the edge of the upper deck.
    pub riser: Length,
    /// What is chosen.
    pub detail: StepDetail,
}

impl Step {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.riser.positive("riser"));
        for (path, side) in [("lower", &self.lower), ("upper", &self.upper)] {
            if side.pitch.angle().degrees() >= 90.0 {
                let error = Error::new(ErrorKind::OutOfRange, "the roof stands as plumb as the riser").at(format!("{path}.pitch"));
                faults.add(error.value_of(side.pitch).accepts("less than 90 deg"));
            }
            for (layer, height) in side.levels.layers() {
                faults.keep(height.not_negative(&format!("{path}.levels.{layer}")));
            }
        }
        keep_under(&mut faults, "detail.lower", self.detail.lower.check());
        faults.check()
    }

    /// The upper side as an eave, and what lies on the riser behind its face.
    pub(super) fn upper_eave(&self) -> Result<(Eave, Length), Error> {
        let (u, l) = (&self.detail.upper, &self.detail.lower);
        let detail = EaveDetail {
            sheet: u.sheet,
            flange: u.flange.clone(),
            on_deck: LeastRule::IRC_OVER_EDGE_METAL,
            below_deck: LeastRule::IRC_BELOW_DECK,
            front: EaveFront::Plumb,
            face: u.face.clone(),
            strip: u.strip.clone(),
            panel: u.panel.clone(),
            gutter: None,
        };
        Ok((Eave { roof: self.upper, detail }, (l.stands_out + l.sheet.thickness).length()?))
    }

    /// The upper side, solved as an eave whose face hangs in front of what lies on the riser, and set on its edge.
    fn upper<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        let (eave, behind) = self.upper_eave()?;
        let solved = eave.solve(r, behind).map_err(|e| e.moved("detail", "detail.upper").moved("roof", "upper"))?;
        let place = FacePlace { origin: SectionPoint { x: Length::ZERO, z: self.riser }, is_mirrored: true };
        let side = |s: Side| if s == Side::First { Side::Second } else { Side::Riser };
        Ok(Solved {
            trims: solved.trims.into_iter().map(|trim| place.trim(trim)).collect::<Result<_, _>>()?,
            along: solved.along.into_iter().map(|a| AlongLine { side: side(a.side), ..a }).collect(),
            lines: solved.lines.into_iter().map(|l| LayoutLine { side: side(l.side), ..l }).collect(),
            ends: solved.ends.into_iter().map(|e| SideEnd { side: side(e.side), ..e }).collect(),
            cautions: solved.cautions.into_iter().map(|c| c.moved("detail", "detail.upper")).collect(),
            ..Solved::default()
        })
    }

    /// The lower flashing's leg, up from its bend: its top, or by how much the riser is too low.
    fn leg<R: Recorder>(&self, r: &mut R, faults: &mut Faults, corner: SectionPoint) -> Result<SectionPoint, Error> {
        let (l, slope) = (&self.detail.lower, self.lower.pitch.angle());
        let top = SectionPoint { x: corner.x, z: (self.riser - l.below_edge).length()? };
        let length = (top.z - corner.z).length()?;
        let pan = self.lower.levels.pan_face()?;
        let upstand = Length::from_mm(top.z.mm() * slope.cos() - top.x.mm() * slope.sin() - pan.mm())?;
        r.step(|| {
            let step = Working::new("upstand, square to the pan").formula("(riser - below the edge) cos S + distance from the riser sin S - height of the pan");
            step.with("riser", self.riser)
                .with("below the edge", l.below_edge)
                .with("S", slope)
                .with("pan", pan)
                .with("least", l.upstand.least)
                .gives(upstand)
                .source(l.upstand.source.clone())
        });
        let short = (l.upstand.least - upstand).length()?;
        if short.is_positive() || !length.is_positive() {
            // A leg must rise from its bend at all, whatever the rule.
            let more = Length::from_mm((short.mm() / slope.cos()).max(-length.mm()))?;
            let error = Error::new(
                ErrorKind::Impossible,
                format!("the riser is too low for the {}: {upstand}, too little by {}", l.upstand.what, short.max(Length::ZERO)),
            );
            faults.add(
                error
                    .at("riser")
                    .value_of(self.riser)
                    .accepts(format!("{} or more ({})", (self.riser + more).length()?, l.upstand.source))
                    .cured_by(format!("a riser higher by {more}, a leg that ends nearer to the upper deck, or a pitch transition over packing")),
            );
        }
        Ok(top)
    }

    /// Whether the upper trim's face covers the leg, and stays off the flange under it.
    fn check_face<R: Recorder>(&self, r: &mut R, faults: &mut Faults, upper: &Solved, seam_tops: Support) -> Result<(), Error> {
        let (l, face) = (&self.detail.lower, &self.detail.upper.face);
        let lap = (face.depth - l.below_edge).length()?;
        r.step(|| {
            let step = Working::new("lap of the upper face over the leg").formula("depth of the face - leg's top below the edge").with("depth", face.depth);
            step.with("below the edge", l.below_edge).with("least", l.lap.least).gives(lap).source(l.lap.source.clone())
        });
        let more = (l.lap.least - lap).length()?;
        l.lap.check(faults, "detail.upper.face.depth", lap, face.depth, format!("a face deeper by {more}, or a leg that goes up higher"))?;
        let misses = l.fasteners_below_top - lap;
        let cure = "fasteners nearer to the top";
        refuse_short(faults, "detail.lower.fasteners_below_top", "the leg's fasteners stand below what covers them", misses, l.fasteners_below_top, cure)?;
        let Some(trim) = upper.trim("eave trim") else { return Ok(()) };
        // Square to the flange, from its upper face to the lowest corner of the upper trim.
        let (sin, cos) = (seam_tops.rise.sin(), seam_tops.rise.cos());
        let over = trim.corners.iter().map(|c| c.z.mm() * cos - c.x.mm() * sin).fold(f64::INFINITY, f64::min) - seam_tops.height.mm() - l.sheet.thickness.mm();
        let over = Length::from_mm(over)?;
        r.step(|| Working::new("clear under the upper trim's drip, square to the flange").with("asked", l.clearance).gives(over).source(Source::geometry()));
        let what = "the upper trim's drip comes too near the flange under it";
        refuse_short(faults, "detail.upper.face.depth", what, l.clearance - over, face.depth, "a shallower face, or a higher riser")
    }
}

impl Calculation for Step {
    type Out = Solved;

    fn title(&self) -> String {
        format!("step of {} between roofs of {} and {}", self.riser, self.lower.pitch, self.upper.pitch)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.check()?;
        let (slope, l, levels) = (self.lower.pitch.angle(), &self.detail.lower, &self.lower.levels);
        let h = r.part(|| levels.title(), |r| levels.run(r)).map_err(|e| e.under("lower.levels"))?;
        let seam_tops = Support { rise: slope, height: h };
        let corner = seam_tops.meets(&Support { rise: Angle::SQUARE, height: l.stands_out }).map_err(|e| e.under("lower.pitch"))?;
        r.step(|| {
            let step = Working::new("bend of the lower flashing above the foot").formula("h / cos S - w tan S");
            step.with("h", h).with("S", slope).with("w", l.stands_out).gives(corner.z).source(Source::geometry())
        });
        let mut faults = Faults::default();
        let top = self.leg(r, &mut faults, corner)?;
        let limit = Length::from_mm(-l.stands_out.mm() / slope.cos())?;
        let place = Place { side: Side::First, levels: *levels, bend: along(corner, slope)?, limit, meeting: Angle::SQUARE, seam_tops, down: -1 };
        let ended = r.part(|| "lower panels".into(), |r| l.end.solve(r, &place));
        let ended = faults.keep(ended.map_err(|e| e.under("detail.lower.end")));
        let upper = r.part(|| "upper panels".into(), |r| self.upper(r));
        let upper = faults.keep(upper);
        if let Some(upper) = &upper {
            self.check_face(r, &mut faults, upper, seam_tops)?;
        }
        faults.check()?;
        let (Some(ended), Some(upper)) = (ended, upper) else { return Ok(Solved::default()) };

        let (start, edge) = ended.corners;
        let mut legs = Vec::with_capacity(3);
        legs.extend(edge.map(|p| l.end.drip.leg_to("drip", p)));
        legs.push(l.end.flange_to("flange", corner));
        legs.push(leg("leg", top).bent(turned(slope, -90.0)?));
        let edges = (l.end.drip.edge(), Edge::Raw);
        let flashing =
            Walk { name: "lower flashing", sheet: l.sheet, start, legs: &legs, start_edge: edges.0, end_edge: edges.1, painted: Face::Upper }.lay()?;
        let mut solved = Solved { trims: vec![flashing], adjoining: vec![Adjoining::Riser { height: self.riser }], ..Solved::default() };
        ended.give("detail.lower.end", &mut solved);
        let (name, row, top_edge) = ("leg, top edge", "leg fasteners", (-l.below_edge).length()?);
        let at = (top_edge - l.fasteners_below_top).length()?;
        solved.lines.push(LayoutLine::from_junction(name, Side::Riser, top_edge.into())?);
        solved.lines.push(LayoutLine::from_line(row, Side::Riser, name, top_edge, -l.fasteners_below_top)?);
        solved.along.push(l.fasteners.line(row, Side::Riser, Bites::Structure, at));
        solved.trims.extend(upper.trims);
        solved.along.extend(upper.along);
        solved.lines.extend(upper.lines);
        solved.ends.extend(upper.ends);
        solved.cautions.extend(upper.cautions);
        let rise = self.upper.pitch.angle();
        let strip = &self.detail.upper.strip;
        let on = match self.detail.upper.flange.lies {
            super::eave_parts::FlangeLies::UnderUnderlayment => self.detail.upper.sheet.thickness,
            super::eave_parts::FlangeLies::OverUnderlayment => (self.detail.upper.sheet.thickness + self.upper.levels.underlayment).length()?,
        };
        let cure = ("detail.upper.panel.fold", "a shorter fold, or a longer overhang");
        let hooked = (on, (on + strip.sheet.thickness).length()?);
        fit::check(
            &solved,
            &[
                Deck::turned(Side::First, slope, levels, &l.end, "detail.lower.end"),
                Deck::hooked(Side::Second, rise, &self.upper.levels, hooked, cure).raised(self.riser),
            ],
            Beside::Riser { height: self.riser },
        )?;
        Ok(solved)
    }
}
