//! The true blank of a closure piece: its Z unfolded, its flanges cut to the seams, its tabs beside them.

use super::piece::{ClosureBay, ClosurePiece};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::{BendRule, BlankEnd, BlankPlan, Direction, EndCut, Face, Flat, Part, PlannedBlank, Profile, Tab};
use crate::units::{Angle, BendAngle, Length};

/// A closure piece for one bay with its bends: what [`ClosureBay`] leaves out of its rectangle.
///
/// The Z is walked from the uphill edge of its lower flange to the downhill edge of its top flange, so that the upper face of the web looks uphill, where its
/// tabs turn. Along the run the far end is the one to which the seams lean as they rise for a meeting angle under 90 degrees.
///
/// # Errors
/// Computing refuses what [`ClosureBay`] refuses, at `bay`; a thickness of zero or less, a negative radius or relief, a flange or web swallowed by its
/// bends, and a bay without tabs ([`ErrorKind::OutOfRange`], [`ErrorKind::Impossible`]); what [`BlankPlan`] refuses of the result.
///
/// ```
/// use seamwright::closure::{ClosureBay, ClosureBlank, ClosureFasteners};
/// use seamwright::practice;
/// use seamwright::record::Calculation;
/// use seamwright::trim::BendRule;
/// use seamwright::units::{Angle, Length};
/// let bay = ClosureBay {
///     coverage: Length::inches(16),
///     seam_width_at_foot: Length::inches(1),
///     seam_height: Length::inches(2),
///     compressed_tape: Length::ZERO,
///     meeting: Angle::SQUARE,
///     clearance: Length::ZERO,
///     tab: practice::closure::TAB,
///     lower_flange: Length::inches(2),
///     top_flange: Length::inches(1),
///     top_lap: Length::ZERO,
///     fasteners: ClosureFasteners::usual(),
/// };
/// let blank = ClosureBlank { bay, thickness: Length::mils(24), inside_radius: Length::mils(30), relief: Length::inches_64(4), rule: BendRule::SharpCorner };
/// let made = blank.compute()?;
/// // A sum of nominal legs and tabs is the rectangle of the bay.
/// assert_eq!(made.planned.blank.bounds()?.size()?, (made.piece.blank.width, made.piece.blank.length));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ClosureBlank {
    /// The bay.
    pub bay: ClosureBay,
    /// Thickness of the sheet.
    pub thickness: Length,
    /// Inside radius of every bend.
    pub inside_radius: Length,
    /// Width of the slot between each tab and the flanges' bends.
    pub relief: Length,
    /// The bend rule.
    pub rule: BendRule,
}

/// A closure piece and its true blank.
///
/// ```
/// use seamwright::closure::{ClosureBay, ClosureBlank, ClosureFasteners};
/// use seamwright::practice;
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, NeutralFactor};
/// use seamwright::units::{Angle, Length};
/// let bay = ClosureBay {
///     coverage: Length::inches(16),
///     seam_width_at_foot: Length::inches(1),
///     seam_height: Length::inches(2),
///     compressed_tape: Length::ZERO,
///     meeting: Angle::parse("45 deg")?,
///     clearance: Length::ZERO,
///     tab: practice::closure::TAB,
///     lower_flange: Length::inches(2),
///     top_flange: Length::inches(1),
///     top_lap: Length::ZERO,
///     fasteners: ClosureFasteners::usual(),
/// };
/// let rule = BendRule::neutral_axis(NeutralFactor::MIDDLE);
/// let made = ClosureBlank { bay, thickness: Length::mils(24), inside_radius: Length::mils(30), relief: Length::inches_64(4), rule }.compute()?;
/// // Two bends of the Z and two of the tabs; metal for them makes the blank narrower than the sum of its legs.
/// assert_eq!(made.planned.blank.bends.len(), 4);
/// assert!(made.planned.flat.girth() < made.piece.blank.width);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct CutClosure {
    /// The piece as it stands.
    pub piece: ClosurePiece,
    /// Its blank, the uphill edge of the lower flange on the y axis.
    pub planned: PlannedBlank,
}

/// A fault of the Z at the field of the bay that it comes from; a bend's lies in the radius, or the rule.
fn in_bay(e: Error) -> Error {
    if !e.path().starts_with("legs[") {
        return e.at("rule");
    }
    e.moved("legs[0].length", "bay.lower_flange").moved("legs[1].length", "bay.seam_height").moved("legs[2].length", "bay.top_flange")
}

impl ClosureBlank {
    fn profile(&self, web: Length) -> Result<Profile, Error> {
        let z = Profile::builder(self.thickness)
            .painted(Face::Upper)
            .inside_radius(self.inside_radius)
            .leg("lower flange", self.bay.lower_flange)
            .up(BendAngle::SQUARE)
            .leg("web", web);
        if self.bay.top_flange == Length::ZERO { z.build() } else { z.down(BendAngle::SQUARE).leg("top flange", self.bay.top_flange).build() }
    }

    /// How far along the run the cut must start at the start edge for the web's end to lie at its station: the flange runs on down the slope.
    fn start(&self, flat: &Flat) -> Result<Length, Error> {
        let (Some(flange), Some(bend)) = (flat.legs().first(), flat.bends().first()) else { return Ok(Length::ZERO) };
        // In the bend the cut goes halfway between square and the flange's own slope.
        let down = flange.length().mm() + bend.allowance().mm() / 2.0;
        Length::from_mm(down * self.bay.meeting.cos() / self.bay.meeting.sin())
    }

    fn end(&self, flat: &Flat, bend: BendAngle, lap: Length) -> Result<BlankEnd, Error> {
        let web = flat.legs().get(1).ok_or_else(|| Error::new(ErrorKind::Internal, "a Z without a web"))?;
        // Without a top flange the tab goes to the sheet's edge, where nothing is to be slotted.
        let top = if self.bay.top_flange.is_positive() { self.relief } else { Length::ZERO };
        let width = (web.length() - self.relief - top).length().map_err(|e| e.under("relief"))?;
        if !width.is_positive() {
            return Err(Error::new(ErrorKind::Impossible, "the slots leave nothing of the tabs")
                .at("relief")
                .value_of(self.relief)
                .accepts(format!("less than half of the web's flat part, {}", web.length())));
        }
        let along = Angle::degrees_from(180.0 - self.bay.meeting.degrees())?;
        let (mut angles, mut steps) = (vec![along, Angle::SQUARE], vec![Length::ZERO]);
        if self.bay.top_flange.is_positive() {
            angles.push(along);
            steps.push(lap);
        }
        let tab = Tab {
            leg: Part::Body(1),
            from: self.relief,
            width,
            length: self.bay.tab,
            angle: bend,
            direction: Direction::Up,
            inside_radius: self.inside_radius,
            relief: self.relief,
        };
        let tabs = if self.bay.tab.is_positive() { vec![tab] } else { Vec::new() };
        Ok(BlankEnd { cut: EndCut::Legs { start: self.start(flat)?, angles, steps }, notches: Vec::new(), tabs })
    }
}

impl Calculation for ClosureBlank {
    type Out = CutClosure;

    fn title(&self) -> String {
        format!("blank of a closure piece, {}, sheet {}", self.rule, self.thickness)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<CutClosure, Error> {
        let mut faults = Faults::default();
        faults.keep(self.thickness.positive("thickness"));
        faults.keep(self.inside_radius.not_negative("inside_radius"));
        faults.keep(self.relief.not_negative("relief"));
        let piece = faults.keep(r.part(|| self.bay.title(), |r| self.bay.run(r)).map_err(|e| e.under("bay")));
        faults.check()?;
        let piece = piece.ok_or_else(|| Error::new(ErrorKind::Internal, "a fault was lost"))?;
        let profile = self.profile(piece.web_height).map_err(in_bay)?;
        let flat = profile.unfold(&self.rule).map_err(in_bay)?;
        let lap = self.bay.top_lap;
        let back = Length::from_pm(-lap.pm());
        let plan = BlankPlan {
            near: self.end(&flat, piece.tab_bends.1, back)?,
            far: self.end(&flat, piece.tab_bends.0, lap)?,
            profile,
            rule: self.rule.clone(),
            length: piece.length,
            holes: Vec::new(),
            // The ends are straight: there is no curve to stray from.
            tolerance: Length::micrometres(1),
        };
        let planned = r.part(|| plan.title(), |r| plan.run(r));
        let planned = planned.map_err(|e| e.moved("near.tabs[0].length", "bay.tab").moved("far.tabs[0].length", "bay.tab"))?;
        r.step(|| {
            Step::new("narrower than the sum of the legs")
                .formula("lower flange + web + top flange - girth")
                .with("sum of the legs", piece.blank.width)
                .with("girth", planned.flat.girth())
                .gives(Length::from_pm(piece.blank.width.pm() - planned.flat.girth().pm()))
                .source(Source::geometry())
        });
        Ok(CutClosure { piece, planned })
    }
}
