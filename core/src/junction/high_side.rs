//! The top of a mono-slope: a one-sided ridge whose cap goes down a plumb wall.
//!
//! The junction line is the deck's upper edge at the outer face of the wall. The roof lies on the side of negative x, the wall faces +x.

use super::draft::{TrimSheet, Walk, along, keep_under, turned};
use super::drip::DripFace;
use super::fit::{self, Beside, Deck};
use super::least::LeastRule;
use super::levels::RoofSide;
use super::parts::{Side, Solved};
use super::support::{SectionPoint, Support};
use super::top_end::{Place, TopEnd, cap_not_held};
use crate::error::{Error, ErrorKind, Faults};
use crate::pitch::BendAt;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::Face;
use crate::units::{Angle, Length};

/// What is chosen at a high side.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{Bites, DripEdge, DripFace, DripHem, FastenerRow, HighSideDetail, TopClosure, TopEnd, TrimSheet, LeastRule};
/// use seamwright::practice;
/// use seamwright::record::Source;
/// use seamwright::units::{Angle, Length};
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
/// let detail = HighSideDetail {
///     below_deck: LeastRule::IRC_BELOW_DECK,
///     end,
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     face: DripFace {
///         depth: inch("4\"")?,
///         kick: Angle::parse("45 deg")?,
///         clears: practice::junction::DRIP_CLEARS_FACE,
///         hem: DripHem::Closed { width: practice::junction::EDGE_HEM },
///     },
/// };
/// assert!(detail.face.hem.cleat().is_none());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HighSideDetail {
    /// The ends of the panels, with the cap's flange over them.
    pub end: TopEnd,
    /// The cap's sheet.
    pub sheet: TrimSheet,
    /// The leg down the wall with its drip.
    pub face: DripFace,
    /// How far that leg must come down below the deck; in a job file [`LeastRule::IRC_BELOW_DECK`] unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::below_deck"))]
    pub below_deck: LeastRule,
}

/// A high side as asked for.
///
/// # Errors
/// Computing refuses what misses what it needs, by how much and with the cure: closures off the panels, a cap that does not cover them, a wall leg
/// that ends above its corner, a hem that misses its cleat; and every figure without meaning.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{
///     Bites, DripEdge, DripFace, DripHem, FastenerRow, HighSide, HighSideDetail, Levels, RoofSide, Side, TopClosure, TopEnd, TrimSheet, LeastRule,
/// };
/// use seamwright::panel::Hold;
/// use seamwright::pitch::Pitch;
/// use seamwright::practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Angle, Length};
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
/// let detail = HighSideDetail {
///     below_deck: LeastRule::IRC_BELOW_DECK,
///     end,
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     face: DripFace {
///         depth: inch("4\"")?,
///         kick: Angle::parse("45 deg")?,
///         clears: practice::junction::DRIP_CLEARS_FACE,
///         hem: DripHem::Closed { width: practice::junction::EDGE_HEM },
///     },
/// };
/// let roof = RoofSide { pitch: Pitch::parse("2:12")?, levels: Levels { seam_height: inch("1 3/4\"")?, tape: inch("1/16\"")?, ..Levels::default() } };
/// let solved = HighSide { roof, detail }.compute()?;
/// // Over the wall the cap bends by 90 degrees and the pitch.
/// let bend = solved.trim("high-side cap").unwrap().profile.bends[1].angle.degrees();
/// assert!((bend - 90.0 - Pitch::parse("2:12")?.angle().degrees()).abs() < 1e-6);
/// assert_eq!(solved.end(Side::First).unwrap().hold, Hold::Pins);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct HighSide {
    /// The roof, the junction line at the outer face of the wall.
    pub roof: RoofSide,
    /// What is chosen.
    pub detail: HighSideDetail,
}

impl HighSide {
    fn seam_tops(&self) -> Result<Support, Error> {
        Ok(Support { rise: self.roof.pitch.angle(), height: self.roof.levels.compute().map_err(|e| e.under("roof.levels"))? })
    }

    /// Where the plane of the seam tops meets the wall: the bend of the cap.
    ///
    /// # Errors
    /// A negative layer; a plumb roof; [`ErrorKind::Overflow`] beyond the range.
    pub fn bend(&self) -> Result<SectionPoint, Error> {
        self.seam_tops()?.meets(&Support { rise: wall()?, height: self.detail.face.packing() }).map_err(|e| e.at("roof.pitch"))
    }

    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        let detail = &self.detail;
        if self.roof.pitch.angle().degrees() >= 90.0 {
            let error = Error::new(ErrorKind::OutOfRange, "the roof stands as plumb as the wall").at("roof.pitch");
            faults.add(error.value_of(self.roof.pitch).accepts("less than 90 deg"));
        }
        keep_under(&mut faults, "roof.levels", self.roof.levels.compute().map(|_| ()));
        keep_under(&mut faults, "detail.end", detail.end.check(&self.roof.levels));
        keep_under(&mut faults, "detail.sheet", detail.sheet.check());
        keep_under(&mut faults, "detail.face", detail.face.check(detail.sheet));
        faults.keep(detail.below_deck.least.not_negative("detail.below_deck.least"));
        faults.check()
    }
}

/// Down a plumb wall that faces +x.
fn wall() -> Result<Angle, Error> {
    Angle::degrees_from(-90.0)
}

impl Calculation for HighSide {
    type Out = Solved;

    fn title(&self) -> String {
        format!("high side of a roof of {}", self.roof.pitch)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.check()?;
        let (slope, detail) = (self.roof.pitch.angle(), &self.detail);
        let bend = BendAt::HighEave { pitch: self.roof.pitch };
        r.part(|| bend.title(), |r| bend.run(r))?;
        r.part(|| self.roof.levels.title(), |r| self.roof.levels.run(r))?;
        let (seam_tops, apex) = (self.seam_tops()?, self.bend()?);
        r.step(|| {
            Step::new("bend of the cap")
                .formula("where the plane of the seam tops meets the wall leg")
                .gives(format_args!("{} above the line", apex.z))
                .source(Source::geometry())
        });
        // The foot of the panels' ends is what comes nearest to the wall leg: everything above it leans back.
        let place = Place {
            side: Side::First,
            levels: self.roof.levels,
            bend: along(apex, slope)?,
            limit: Length::from_mm(detail.face.packing().mm() / slope.cos())?,
            meeting: Angle::SQUARE,
            seam_tops,
            down: -1,
        };
        let mut faults = Faults::default();
        detail.face.check_below(&mut faults, &detail.below_deck)?;
        let ended = r.part(|| "panels below the wall".into(), |r| detail.end.solve(r, &place));
        let ended = faults.keep(ended.map_err(|e| e.under("detail.end")));
        faults.check()?;
        let Some(ended) = ended else { return Ok(Solved::default()) };
        let face = r.part(|| "wall leg".into(), |r| detail.face.lay(r, detail.sheet, wall()?, apex)).map_err(|e| e.under("detail"))?;
        let (start, edge) = ended.corners;
        let mut legs = Vec::with_capacity(4);
        legs.extend(edge.map(|p| detail.end.drip.leg_to("roof drip", p)));
        legs.push(detail.end.flange_to("roof flange", apex));
        legs.extend(face.legs(("wall leg", "wall drip"), turned(slope, 90.0)?));
        let cap = Walk {
            name: "high-side cap",
            sheet: detail.sheet,
            start,
            legs: &legs,
            start_edge: detail.end.drip.edge(),
            end_edge: face.edge.clone(),
            painted: Face::Upper,
        }
        .lay()?;
        let mut solved = Solved::default();
        face.give(&mut solved);
        solved.trims.push(cap);
        ended.give("detail.end", &mut solved);
        let into = fit::check(&solved, &[Deck::turned(Side::First, slope, &self.roof.levels, &detail.end, "detail.end")], Beside::Face(wall()?))?;
        solved.cautions.extend(into);
        if detail.face.hem.cleat().is_none() {
            solved.cautions.extend(cap_not_held("high-side cap", &detail.end, &detail.end));
        }
        Ok(solved)
    }
}
