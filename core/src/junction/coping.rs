//! The coping: a cap on the top of a wall, whose two faces hook cleats or are screwed through slots.
//!
//! The wall's top falls to the roof. The junction line is its upper edge, on the outside; the roof lies on the side of negative x. What lies on either
//! face is measured from the top edge of that face: [`Side::First`] is the roof side, [`Side::Second`] the outside, and up is positive.

use super::cautions::COPING_NEARLY_LEVEL;
use super::coping_parts::CopingSide;
use super::draft::{TrimSheet, Walk, keep_under, leg, turned};
use super::drip::{FacePlace, LaidFace};
use super::fit::{self, Beside};
use super::parts::{Adjoining, Side, Solved};
use super::support::{SectionPoint, Support};
use crate::error::{Error, ErrorKind, Faults};
use crate::pitch::Pitch;
use crate::practice::junction as practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::trim::{Edge, Face, LegEnd, Profile};
use crate::units::{Angle, Length};

/// What is chosen at a coping.
///
/// ```
/// use seamwright::junction::{ContinuousCleat, CopingDetail, CopingHold, CopingLap, CopingSide, FastenerRow, TrimSheet, LeastRule};
/// use seamwright::pitch::Pitch;
/// use seamwright::practice::junction as practice;
/// use seamwright::units::{Angle, Length};
/// let inch = |text: &str| Length::parse(text);
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let cleat = ContinuousCleat {
///     sheet,
///     height: inch("3\"")?,
///     fasteners_above_bend: inch("1 1/2\"")?,
///     fasteners: FastenerRow::UFGS_EDGE_STRIP,
///     hem: inch("7/8\"")?,
///     hem_gap: (sheet.thickness + practice::HOOKED_HEM_ROOM).length()?,
///     short_of_fold: inch("1/16\"")?,
///     engagement: LeastRule::UFGS_HOOK.least,
/// };
/// let side = CopingSide {
///     behind: Length::ZERO,
///     depth: inch("4\"")?,
///     kick: Angle::parse("45 deg")?,
///     clears: practice::DRIP_CLEARS_FACE,
///     hold: CopingHold::Cleat(cleat),
///     over: None,
/// };
/// let lap = CopingLap { below_top: Length::ZERO, rule: LeastRule::LAP_OVER_LEG };
/// let detail = CopingDetail {
///     sheet,
///     bed: Length::mils(40),
///     fall: Pitch::parse("1:12")?,
///     roof_side: CopingSide { behind: Length::mils(24), over: Some(lap), ..side.clone() },
///     outside: side,
/// };
/// assert!(detail.roof_side.over.is_some());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingDetail {
    /// The coping's sheet.
    pub sheet: TrimSheet,
    /// What lies on the wall's top under the coping: a membrane.
    pub bed: Length,
    /// How the wall's top falls to the roof side.
    pub fall: Pitch,
    /// The face over the roof.
    pub roof_side: CopingSide,
    /// The face over the outside.
    pub outside: CopingSide,
}

/// A coping as asked for.
///
/// On a wall `t` thick the top falls by `t tan S`; it bends by 90 degrees less the fall at the roof side and 90 degrees and the fall at the outside.
///
/// # Errors
/// Computing refuses a top that falls to the outside, a face that covers less than its rule asks of what comes up under it, a hem that misses its cleat,
/// slots too short for the movement, two faces that are both screwed, and metal that reaches into the wall; each with by how much and the cure.
///
/// ```
/// use seamwright::junction::{ContinuousCleat, Coping, CopingDetail, CopingHold, CopingLap, CopingSide, FastenerRow, TrimSheet, LeastRule};
/// use seamwright::pitch::Pitch;
/// use seamwright::practice::junction as practice;
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Length};
/// let inch = |text: &str| Length::parse(text);
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let cleat = ContinuousCleat {
///     sheet,
///     height: inch("3\"")?,
///     fasteners_above_bend: inch("1 1/2\"")?,
///     fasteners: FastenerRow::UFGS_EDGE_STRIP,
///     hem: inch("7/8\"")?,
///     hem_gap: (sheet.thickness + practice::HOOKED_HEM_ROOM).length()?,
///     short_of_fold: inch("1/16\"")?,
///     engagement: LeastRule::UFGS_HOOK.least,
/// };
/// let side = CopingSide {
///     behind: Length::ZERO,
///     depth: inch("4\"")?,
///     kick: Angle::parse("40 deg")?,
///     clears: inch("3/4\"")?,
///     hold: CopingHold::Cleat(cleat),
///     over: None,
/// };
/// let lap = CopingLap { below_top: Length::ZERO, rule: LeastRule::LAP_OVER_LEG };
/// let coping = Coping {
///     thickness: Length::inches(8),
///     detail: CopingDetail {
///         sheet,
///         bed: Length::mils(40),
///         fall: Pitch::parse("1:12")?,
///         roof_side: CopingSide { behind: Length::mils(24), over: Some(lap), ..side.clone() },
///         outside: side,
///     },
/// };
/// let solved = coping.compute()?;
/// let cap = solved.trim("coping").expect("it is what is asked for");
/// assert_eq!(cap.profile.legs.len(), 5);
/// assert!((cap.profile.bends[1].angle.degrees() + cap.profile.bends[2].angle.degrees() - 180.0).abs() < 1e-9);
/// assert_eq!(solved.trims.len(), 3, "a cleat on each side");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Coping {
    /// The wall, from face to face.
    pub thickness: Length,
    /// What is chosen.
    pub detail: CopingDetail,
}

pub(super) const NAME: &str = "coping";

impl Coping {
    fn check(&self) -> Result<(), Error> {
        let (d, mut faults) = (&self.detail, Faults::default());
        faults.keep(self.thickness.positive("thickness"));
        faults.keep(d.bed.not_negative("detail.bed"));
        keep_under(&mut faults, "detail.sheet", d.sheet.check());
        let fall = d.fall.angle().degrees();
        if !(0.0..45.0).contains(&fall) {
            let error = Error::new(ErrorKind::OutOfRange, "the top of a wall does not fall so").at("detail.fall").value_of(d.fall);
            faults.add(error.accepts("level or a fall to the roof side, less than 45 deg"));
        }
        for (path, side) in [("detail.roof_side", &d.roof_side), ("detail.outside", &d.outside)] {
            keep_under(&mut faults, path, side.check(d.sheet));
        }
        if d.roof_side.hold.cleat().is_none() && d.outside.hold.cleat().is_none() {
            let error =
                Error::new(ErrorKind::Conflict, "both faces are screwed, and nothing lets the coping be set").at("detail.outside.hold").value_of("screws");
            faults.add(error.accepts("a cleat on one face at the least").cured_by("a cleat on the outside"));
        }
        faults.check()
    }

    /// Where the frame of each face has its origin: the wall's top edge, moved out by what lies on the face.
    pub(super) fn places(&self) -> Result<[FacePlace; 2], Error> {
        let d = &self.detail;
        let drop = d.fall.rise_over(self.thickness)?;
        let inner = SectionPoint { x: (-(self.thickness + d.roof_side.behind)).length()?, z: (-drop).length()? };
        let outer = SectionPoint { x: d.outside.behind, z: Length::ZERO };
        Ok([FacePlace { origin: inner, is_mirrored: true }, FacePlace { origin: outer, is_mirrored: false }])
    }

    /// The profile of a joint plate: the coping's own without its hems, to lie under a joint or over it.
    ///
    /// # Errors
    /// As computing.
    pub fn joint_plate(&self) -> Result<Profile, Error> {
        let solved = self.compute()?;
        let cap = solved.trim(NAME).ok_or_else(|| Error::new(ErrorKind::Internal, "a coping without its cap"))?;
        let mut plate = Profile { start_edge: Edge::Raw, end_edge: Edge::Raw, ..cap.profile.clone() };
        // Where the hems were the sheet ends.
        if let Some(first) = plate.legs.first_mut() {
            first.start = LegEnd::SheetEdge;
        }
        if let Some(last) = plate.legs.last_mut() {
            last.end = LegEnd::SheetEdge;
        }
        Ok(plate)
    }
}

impl Calculation for Coping {
    type Out = Solved;

    fn title(&self) -> String {
        format!("coping on a wall {} thick", self.thickness)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.check()?;
        let d = &self.detail;
        let fall = d.fall.angle();
        let [inner, outer] = self.places()?;
        r.step(|| {
            let step = Step::new("fall of the top across the wall").formula("t tan S").with("t", self.thickness).with("S", fall);
            step.gives((-inner.origin.z).length().unwrap_or_default()).source(Source::geometry())
        });
        r.step(|| {
            let step = Step::new("bends of the coping").formula("90 - S at the roof side, 90 + S at the outside").with("S", fall);
            step.gives(format_args!("{} and {} deg", 90.0 - fall.degrees(), 90.0 + fall.degrees())).source(Source::geometry())
        });
        let top = Support { rise: fall, height: d.bed };
        let down = Angle::degrees_from(-90.0)?;
        let mut faults = Faults::default();
        let mut faces: Vec<LaidFace> = Vec::with_capacity(2);
        let mut corners = Vec::with_capacity(2);
        let sides = [(Side::First, "roof side", "detail.roof_side", &d.roof_side, &inner), (Side::Second, "outside", "detail.outside", &d.outside, &outer)];
        for (side, name, path, chosen, place) in sides {
            let face = chosen.face();
            let out = place.of(SectionPoint { x: face.packing(), z: Length::ZERO })?;
            let corner = top.meets(&Support { rise: down, height: out.x })?;
            let cleat = if side == Side::First { CLEATS.0 } else { CLEATS.1 };
            let laid = r.part(|| name.into(), |r| face.lay(r, d.sheet, down, place.back(corner)?).and_then(|f| f.placed(place, side, cleat)));
            corners.push(corner);
            faces.extend(faults.keep(laid.map_err(|e| moved(e, path))));
            keep_under(&mut faults, path, chosen.check_lap(r));
        }
        faults.check()?;
        let ([roof_side, outside], [one, two]) = (&faces[..], &corners[..]) else { return Ok(Solved::default()) };
        let (start, [drip, face]) = roof_side.legs_up(("roof-side drip", "roof-side face"), *one);
        let [wall, out] = outside.legs(("outside face", "outside drip"), turned(fall, 90.0)?);
        let cap = Walk {
            name: NAME,
            sheet: d.sheet,
            start,
            legs: &[drip, face, leg("top", *two).bent(turned(Angle::SQUARE, -fall.degrees())?), wall, out],
            start_edge: roof_side.edge.clone(),
            end_edge: outside.edge.clone(),
            painted: Face::Upper,
        }
        .lay()?;
        let mut solved = Solved { adjoining: vec![Adjoining::WallTop { thickness: self.thickness }], ..Solved::default() };
        let [roof_side, outside] = <[LaidFace; 2]>::try_from(faces).map_err(|_| Error::new(ErrorKind::Internal, "a coping has two faces"))?;
        for (side, path, chosen, laid) in [(Side::First, "roof_side", &d.roof_side, roof_side), (Side::Second, "outside", &d.outside, outside)] {
            laid.give_under(&mut solved, &format!("detail.{path}"));
            chosen.give(side, &mut solved)?;
        }
        solved.trims.push(cap);
        let least = Pitch::in_twelve(practice::COPING_RISE_IN_TWELVE)?;
        if !d.fall.at_least(&least) {
            solved.cautions.push(Caution::new(COPING_NEARLY_LEVEL, "detail.fall", Source::CommonPractice).arg("fall", d.fall).arg("practice", least));
        }
        fit::check(&solved, &[], Beside::WallTop { thickness: self.thickness, rise: fall })?;
        Ok(solved)
    }
}

/// A fault of a face in the coping's own terms.
fn moved(e: Error, path: &str) -> Error {
    e.under("detail").moved("detail.face.hem.hooked", &format!("{path}.hold.cleat")).moved("detail.face", path)
}

/// What the cleats are called.
pub(super) const CLEATS: (&str, &str) = ("continuous cleat, roof side", "continuous cleat, outside");
