//! The membrane under a valley's pan.

use super::cautions::VALLEY_MEMBRANE_NARROW;
use super::rules::Roll;
use crate::error::{Error, ErrorKind, Faults};
use crate::practice::underlayment as practice;
use crate::record::{Calculation, Caution, Recorder, Seen, Source, Step};
use crate::units::Length;

/// A membrane the full length of a valley, centred on it, from the bottom up.
///
/// # Errors
/// Computing refuses lengths of zero or less, a negative lap ([`ErrorKind::OutOfRange`]) and one that takes all of the roll ([`ErrorKind::Impossible`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::underlayment::{Roll, ValleyMembrane};
/// use seamwright::units::Length;
/// let roll = Roll { width: Length::inches(36), length: Length::feet(66), rated: None };
/// let strip = ValleyMembrane { line: Length::feet(20), pan: Length::inches(24), roll, end_lap: Length::inches(6) }.compute()?;
/// assert_eq!((strip.pieces, strip.length, strip.beyond), (1, Length::feet(20), Length::inches(6)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ValleyMembrane {
    /// True length of the valley.
    pub line: Length,
    /// The width of the pan on it, both legs together.
    pub pan: Length,
    /// The rolls.
    pub roll: Roll,
    /// How far a piece laps over the one below.
    pub end_lap: Length,
}

/// A membrane under a valley.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ValleyStrip {
    /// Pieces, from the bottom up.
    pub pieces: u32,
    /// All of them, laps and all.
    pub length: Length,
    /// How far it reaches beyond the pan on each side; less than nothing where it is narrower.
    pub beyond: Length,
    /// What to know before it is ordered.
    pub cautions: Vec<Caution>,
}

impl ValleyMembrane {
    /// The width that a code asks of the strip under a valley's metal: 36 in, the full length of the valley. Written for tile; the nearest published clause.
    pub const IBC_WIDTH: (Length, Source) = (Length::inches(36), Source::published("International Building Code", "2018", "1507.3.9", Seen::Secondary));
}

impl Calculation for ValleyMembrane {
    type Out = ValleyStrip;

    fn title(&self) -> String {
        "membrane under a valley".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<ValleyStrip, Error> {
        let mut faults = Faults::default();
        faults.keep(self.roll.check().map_err(|e| e.under("roll")));
        faults.keep(self.line.positive("line"));
        faults.keep(self.pan.positive("pan"));
        faults.keep(self.end_lap.not_negative("end_lap"));
        if faults.is_empty() && self.end_lap > self.roll.length.station(1, 2)? {
            let error = Error::new(ErrorKind::Impossible, "the lap leaves too little of the roll").at("end_lap").value_of(self.end_lap);
            faults.add(error.accepts(format!("at most half of {}", self.roll.length)));
        }
        faults.check()?;
        let (mut pieces, mut reach) = (1_u32, self.roll.length);
        while reach < self.line {
            reach = (reach + self.roll.length - self.end_lap).length()?;
            pieces = pieces.saturating_add(1);
        }
        let length = (self.line + self.end_lap.station(pieces - 1, 1)?).length()?;
        r.step(|| {
            let step = Step::new("membrane along the valley").formula("line + (pieces - 1) end lap").with("line", self.line).with("pieces", pieces);
            step.with("end lap", self.end_lap).gives(length).source(Source::geometry())
        });
        let beyond = (self.roll.width - self.pan).length()?.station(1, 2)?;
        let mut cautions = Vec::new();
        if beyond < practice::BEYOND_VALLEY_PAN {
            let caution = Caution::new(VALLEY_MEMBRANE_NARROW, "roll.width", Source::CommonPractice).arg("width", self.roll.width);
            cautions.push(caution.arg("pan", self.pan).arg("least", practice::BEYOND_VALLEY_PAN));
        }
        Ok(ValleyStrip { pieces, length, beyond, cautions })
    }
}
