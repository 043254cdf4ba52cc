//! Tape along a line, developed over the panels that it crosses.

use super::cautions::SKEW_WITHOUT_LAPS;
use crate::error::{Error, ErrorKind, Faults};
use crate::practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{Angle, Length};

/// The most rolls or tubes that one line may need; more is taken for a mistake.
pub(super) const MOST: f64 = 1e6;

/// Whole containers of a size for an amount, an excess of a billionth ignored as noise.
pub(super) fn whole(amount: f64, size: f64, path: &str) -> Result<u32, Error> {
    let ratio = amount / size;
    let up = (ratio * (1.0 - 1e-9)).ceil();
    if (0.0..=MOST).contains(&up) {
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number between 0 and a million")]
        Ok(up as u32)
    } else {
        Err(Error::new(ErrorKind::TooLarge, "too many containers for one line").at(path).value_of(up).accepts("at most a million"))
    }
}

/// A waste factor: what is ordered over what is needed, less one.
pub(super) fn waste_fault(waste_ratio: f64) -> Result<(), Error> {
    if (0.0..=10.0).contains(&waste_ratio) {
        Ok(())
    } else {
        Err(Error::new(ErrorKind::OutOfRange, "not a share of waste").at("waste_ratio").value_of(waste_ratio).accepts("0 to 10, where 0.1 is a tenth more"))
    }
}

/// A straight piece of a panel's cross-section, square to the seams.
///
/// ```
/// use seamwright::sealant::SurfacePiece;
/// use seamwright::units::Length;
/// let seam_side = SurfacePiece { across: Length::ZERO, rise: Length::inches(2) };
/// assert!(seam_side.rise.is_positive());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SurfacePiece {
    /// Across the panel; negative where the surface turns back.
    pub across: Length,
    /// Square to the pan, away from the roof; negative downward.
    pub rise: Length,
}

/// Tape that follows the surface of the panels along a line.
///
/// Each straight piece (dx, dz) of the cross-section takes sqrt((dx / sin phi)^2 + dz^2), phi being the angle between seams and line.
///
/// # Errors
/// Computing refuses, with the field: no piece, no bay ([`ErrorKind::Missing`]); a meeting angle outside 0 to 180 degrees, a negative lap, a roll
/// of zero or less, a waste outside 0 to 10 ([`ErrorKind::OutOfRange`]); pieces that do not lead across the panel ([`ErrorKind::Geometry`]); more than a
/// million rolls ([`ErrorKind::TooLarge`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::sealant::{SurfacePiece, TapeLine};
/// use seamwright::units::{Angle, Length};
/// let piece = |across, rise| SurfacePiece { across: Length::inches(across), rise: Length::inches(rise) };
/// // A flat pan of 15 in and a square seam 1 in wide and 2 in high.
/// let tape = TapeLine {
///     section: vec![piece(15, 0), piece(0, 2), piece(1, 0), piece(0, -2)],
///     bays: 30,
///     meeting: Angle::SQUARE,
///     lap: Length::inches(1),
///     laps_per_bay: 2,
///     waste_ratio: 0.1,
///     roll: Length::feet(50),
/// }
/// .compute()?;
/// assert_eq!((tape.per_bay, tape.total, tape.rolls), (Length::inches(22), Length::inches(660), 2));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TapeLine {
    /// The surface over one coverage, piece after piece.
    pub section: Vec<SurfacePiece>,
    /// How many bays the line crosses.
    pub bays: u32,
    /// Angle between seams and line; 90 degrees is square.
    pub meeting: Angle,
    /// Length of one lap of tape on tape.
    pub lap: Length,
    /// Laps in each bay.
    pub laps_per_bay: u32,
    /// Share ordered beyond what is needed: 0.1 is a tenth more.
    pub waste_ratio: f64,
    /// Length of one roll.
    pub roll: Length,
}

/// What tape a line needs.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::sealant::{SurfacePiece, TapeLine};
/// use seamwright::units::{Angle, Length};
/// let flat = SurfacePiece { across: Length::inches(16), rise: Length::ZERO };
/// let line = TapeLine { section: vec![flat], bays: 3, meeting: Angle::parse("30 deg")?, lap: Length::ZERO, laps_per_bay: 0, waste_ratio: 0.0, roll: Length::feet(50) };
/// let need = line.compute()?;
/// assert_eq!((need.straight_per_bay, need.total, need.rolls), (Length::inches(32), Length::inches(96), 1));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct TapeNeed {
    /// One bay, straight along the line.
    pub straight_per_bay: Length,
    /// One bay, developed over the surface, with its laps.
    pub per_bay: Length,
    /// The whole line, without waste.
    pub total: Length,
    /// The whole line with waste.
    pub ordered: Length,
    /// Whole rolls.
    pub rolls: u32,
    /// Splices: where a roll ends the next laps over it by one lap, which the rolls hold as well.
    pub splices: u32,
    /// What to know before it is ordered.
    pub cautions: Vec<Caution>,
}

impl TapeLine {
    fn validate(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        if self.section.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "no surface to tape").at("section").accepts("one straight piece or more"));
        }
        if self.bays == 0 {
            faults.add(Error::new(ErrorKind::Missing, "the line crosses no bay").at("bays").value_of(self.bays).accepts("1 or more"));
        }
        faults.keep(self.meeting.meeting());
        faults.keep(self.lap.not_negative("lap"));
        faults.keep(waste_fault(self.waste_ratio));
        faults.keep(self.roll.positive("roll"));
        faults.check()
    }
}

impl Calculation for TapeLine {
    type Out = TapeNeed;

    fn title(&self) -> String {
        "sealant tape along a line".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<TapeNeed, Error> {
        self.validate()?;
        let sine = self.meeting.sin();
        let across = Length::total(self.section.iter().map(|p| &p.across)).map_err(|e| e.under("section"))?;
        if !across.is_positive() {
            return Err(Error::new(ErrorKind::Geometry, "the pieces do not lead across the panel")
                .at("section")
                .value_of(across)
                .accepts("a sum of more than 0 mm across"));
        }
        let straight_per_bay = Length::from_mm(across.mm() / sine).map_err(|e| e.under("meeting"))?;
        let mut developed = 0.0;
        for p in &self.section {
            let (along, rise) = (p.across.mm() / sine, p.rise.mm());
            developed += (along * along + rise * rise).sqrt();
        }
        let surface = Length::from_mm(developed).map_err(|e| e.under("section"))?;
        r.step(|| {
            Step::new("tape over one bay")
                .formula("sum of sqrt((dx / sin phi)^2 + dz^2)")
                .with("pieces", self.section.len())
                .with("phi", self.meeting)
                .gives(surface)
                .source(Source::geometry())
        });
        let laps = times(self.lap, self.laps_per_bay, "laps_per_bay")?;
        let per_bay = (surface + laps).length().map_err(|e| e.under("laps_per_bay"))?;
        let total = times(per_bay, self.bays, "bays")?;
        r.step(|| {
            Step::new("tape of the line")
                .formula("bays (surface + laps lap)")
                .with("bays", self.bays)
                .with("surface", surface)
                .with("laps", self.laps_per_bay)
                .with("lap", self.lap)
                .gives(total)
                .source(Source::geometry())
        });
        let ordered = Length::from_mm(total.mm() * (1.0 + self.waste_ratio)).map_err(|e| e.under("waste_ratio"))?;
        // Every roll but the first gives one lap to the splice before it.
        let rolls = if ordered <= self.roll {
            whole(ordered.mm(), self.roll.mm(), "roll")?
        } else if self.lap < self.roll {
            whole(ordered.mm() - self.lap.mm(), self.roll.mm() - self.lap.mm(), "roll")?
        } else {
            let error = Error::new(ErrorKind::Impossible, "a roll is used up by the lap of its splice").at("roll").value_of(self.roll);
            return Err(error.accepts(format!("more than {}", self.lap)));
        };
        let splices = rolls.saturating_sub(1);
        r.step(|| {
            Step::new("rolls")
                .formula("up((tape (1 + waste) - lap) / (roll - lap)), one where that is a roll at most")
                .with("tape", total)
                .with("waste", self.waste_ratio)
                .with("roll", self.roll)
                .with("lap", self.lap)
                .with("splices", splices)
                .gives(rolls)
                .source(Source::user())
        });
        let mut cautions = Vec::new();
        // The last piece of a bay meets the first of the next.
        let changes = self.section.iter().zip(self.section.iter().cycle().skip(1)).filter(|(a, b)| turns(a, b)).count();
        let limit = practice::sealant::TAPE_LAPS_UNDER;
        let skewed = self.meeting < limit || self.meeting.degrees() > 180.0 - limit.degrees();
        if skewed && changes > 0 && self.laps_per_bay == 0 {
            cautions.push(Caution::new(SKEW_WITHOUT_LAPS, "laps_per_bay", Source::CommonPractice).arg("meeting", self.meeting).arg("changes", changes));
        }
        Ok(TapeNeed { straight_per_bay, per_bay, total, ordered, rolls, splices, cautions })
    }
}

/// So many of a length of tape.
fn times(length: Length, count: u32, path: &str) -> Result<Length, Error> {
    length.station(count, 1).map_err(|_| {
        let error = Error::new(ErrorKind::Overflow, format!("more tape than can be told: so many of {length}"));
        error.at(path).value_of(count).accepts("at most 9 223 372 m in all")
    })
}

/// Whether the surface changes its face between two pieces.
fn turns(a: &SurfacePiece, b: &SurfacePiece) -> bool {
    i128::from(a.across.pm()) * i128::from(b.rise.pm()) != i128::from(a.rise.pm()) * i128::from(b.across.pm())
}
