//! The top of a mono-slope: a one-sided ridge whose cap goes down a plumb wall.
//!
//! The junction line is the deck's upper edge at the outer face of the wall. The roof lies on the side of negative x, the wall faces +x.

use super::draft::{TrimSheet, Walk, keep_under};
use super::drip::DripFace;
use super::parts::{Side, Solved};
use super::support::{SectionPoint, Support};
use super::top_side::TopSide;
use crate::error::{Error, Faults};
use crate::pitch::BendAt;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::Face;
use crate::units::Angle;

/// A high side as asked for.
///
/// # Errors
/// Computing refuses what misses what it needs, by how much and with the cure: closures off the panels, a cap that does not cover them, a wall leg
/// that ends above its corner, a hem that misses its cleat; and every figure without meaning.
///
/// ```
/// use seamwright::junction::{Bites, CapDrip, DripFace, DripHem, HighSide, Levels, Row, Side, TopClosure, TopSide, TrimSheet};
/// use seamwright::panel::Hold;
/// use seamwright::pitch::Pitch;
/// use seamwright::practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Angle, Length};
/// let inch = |text: &str| Length::parse(text);
/// let row = Row { spacing: Length::inches(6), source: Source::CommonPractice };
/// let high = HighSide {
///     side: TopSide {
///         pitch: Pitch::parse("2:12")?,
///         levels: Levels { seam_height: inch("1 3/4\"")?, tape: inch("1/16\"")?, ..Levels::default() },
///         hold_back: inch("1\"")?,
///         turn_up: practice::panel::TURN_UP,
///         panel_margin: inch("1/2\"")?,
///         closure: TopClosure {
///             face: inch("4\"")?,
///             lower_flange: inch("1 1/4\"")?,
///             top_flange: inch("1\"")?,
///             face_to_screws: inch("5/8\"")?,
///             tape_width: inch("7/8\"")?,
///             tape: inch("1/16\"")?,
///             bites: Bites::Structure,
///             screws: row.clone(),
///         },
///         hollow_seams: false,
///         cap_tape_width: inch("7/8\"")?,
///         cover: inch("1\"")?,
///         drip: CapDrip { leg: inch("1\"")?, turn: Angle::SQUARE, hem: practice::junction::EDGE_HEM, above_pan: inch("1/4\"")? },
///         rivets: Some(row),
///     },
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     face: DripFace {
///         depth: inch("4\"")?,
///         kick: Angle::parse("45 deg")?,
///         clears: practice::junction::DRIP_CLEARS_FACE,
///         hem: DripHem::Closed { width: practice::junction::EDGE_HEM },
///     },
/// };
/// let solved = high.compute()?;
/// // Over the wall the cap bends by 90 degrees and the pitch.
/// let bend = solved.trim("high-side cap").unwrap().profile.bends[1].angle.degrees();
/// assert!((bend - 90.0 - Pitch::parse("2:12")?.angle().degrees()).abs() < 1e-6);
/// assert_eq!(solved.end(Side::First).unwrap().hold, Hold::Pins);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct HighSide {
    /// The roof's side, the junction line at the outer face of the wall.
    pub side: TopSide,
    /// The cap's sheet.
    pub sheet: TrimSheet,
    /// The leg down the wall with its drip.
    pub face: DripFace,
}

impl HighSide {
    /// Where the plane of the seam tops meets the wall: the bend of the cap.
    ///
    /// # Errors
    /// A negative layer; [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range.
    pub fn bend(&self) -> Result<SectionPoint, Error> {
        let seam_tops = Support { rise: self.side.pitch.angle(), height: self.side.levels.compute().map_err(|e| e.under("side.levels"))? };
        seam_tops.meets(&Support { rise: wall()?, height: self.face.packing() })
    }

    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "side", self.side.check());
        keep_under(&mut faults, "sheet", self.sheet.check());
        keep_under(&mut faults, "face", self.face.check(self.sheet));
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
        format!("high side of a roof of {}", self.side.pitch)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.check()?;
        let bend = BendAt::HighEave { pitch: self.side.pitch };
        r.part(|| bend.title(), |r| bend.run(r))?;
        let apex = self.bend()?;
        r.step(|| {
            Step::new("bend of the cap")
                .formula("where the plane of the seam tops meets the wall")
                .gives(format_args!("{} above the junction line, {} out from the wall", apex.z, apex.x))
                .source(Source::geometry())
        });
        let side = r.part(|| "roof's side".into(), |r| self.side.lay(r, Side::First, apex).map_err(|e| e.under("side")))?;
        let face = r.part(|| "wall's side".into(), |r| self.face.lay(r, self.sheet, wall()?, apex))?;
        let cap = Walk {
            name: "high-side cap",
            sheet: self.sheet,
            start: side.drip,
            legs: &[("roof drip", side.edge), ("roof flange", apex), ("wall leg", face.bend), ("wall drip", face.drip)],
            start_edge: self.side.hem(),
            end_edge: face.edge,
            painted: Face::Upper,
        }
        .lay()?;
        let mut solved = Solved { ends: vec![side.end], ..Solved::default() };
        if let Some((cleat, lines)) = face.cleat {
            solved.trims.push(cleat);
            solved.along.extend(lines);
        }
        solved.trims.push(cap);
        solved.along.extend(side.along);
        solved.cautions.extend(side.cautions.into_iter().map(|c| c.under("side")));
        solved.cautions.extend(face.cautions);
        Ok(solved)
    }
}
