//! Runs of trims: a line's true length and what the corners add.

use crate::error::{Error, Faults};
use crate::practice::assembly as practice;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::Length;

/// How a trim is lapped along its line and at corners.
///
/// ```
/// use seamwright::assembly::TrimChoice;
/// use seamwright::practice;
/// let usual = TrimChoice::usual();
/// assert_eq!((usual.lap, usual.takes_corners), (practice::assembly::TRIM_LAP, true));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TrimChoice {
    /// Lap of its pieces; 0 for pieces that butt.
    pub lap: Length,
    /// Whether it runs on at corners as its line says; a cleat ends there.
    pub takes_corners: bool,
}

impl TrimChoice {
    /// As is common practice: lapped, and run on at corners.
    #[must_use]
    pub const fn usual() -> TrimChoice {
        TrimChoice { lap: practice::TRIM_LAP, takes_corners: true }
    }

    /// As is common practice for a valley's pan.
    #[must_use]
    pub const fn valley() -> TrimChoice {
        TrimChoice { lap: practice::VALLEY_LAP, takes_corners: true }
    }
}

/// What a line's trims run on beyond its start and its end.
///
/// ```
/// use seamwright::assembly::LineEnds;
/// use seamwright::units::Length;
/// assert_eq!(LineEnds::default().at_start, Length::ZERO);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LineEnds {
    /// Beyond the start.
    #[cfg_attr(feature = "serde", serde(default))]
    pub at_start: Length,
    /// Beyond the end.
    #[cfg_attr(feature = "serde", serde(default))]
    pub at_end: Length,
}

/// A trim along a line. Its pieces follow from the run, the lap and the stock, which [`LapRun`](crate::stock::LapRun) splits.
///
/// # Errors
/// Computing refuses a line of zero or less, a negative lap or corner length ([`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange)).
///
/// ```
/// use seamwright::assembly::{LineEnds, TrimChoice, TrimAlong};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let ends = LineEnds { at_start: Length::ZERO, at_end: Length::inches(4) };
/// let trim = TrimAlong { line: Length::feet(30), ends, choice: TrimChoice::usual() };
/// assert_eq!(trim.compute()?.run, Length::inches(364));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TrimAlong {
    /// True length of the line.
    pub line: Length,
    /// What the corners add.
    pub ends: LineEnds,
    /// How it is lapped.
    pub choice: TrimChoice,
}

/// The run of a trim.
///
/// See [`TrimAlong`] for an example.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TrimLength {
    /// True length of the line.
    pub line: Length,
    /// What the corners add.
    pub ends: LineEnds,
    /// The length to cover: the line and both.
    pub run: Length,
    /// Lap of its pieces.
    pub lap: Length,
}

impl Calculation for TrimAlong {
    type Out = TrimLength;

    fn title(&self) -> String {
        "run of a trim".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<TrimLength, Error> {
        let mut faults = Faults::default();
        faults.keep(self.line.positive("line"));
        for (path, length) in [("ends.at_start", self.ends.at_start), ("ends.at_end", self.ends.at_end), ("choice.lap", self.choice.lap)] {
            faults.keep(length.not_negative(path));
        }
        faults.check()?;
        let ends = if self.choice.takes_corners { self.ends } else { LineEnds::default() };
        let run = (self.line + ends.at_start + ends.at_end).length()?;
        r.step(|| {
            Step::new("run of the trim")
                .formula("line + at its start + at its end")
                .with("line", self.line)
                .with("at its start", ends.at_start)
                .with("at its end", ends.at_end)
                .gives(run)
                .source(Source::geometry())
        });
        Ok(TrimLength { line: self.line, ends, run, lap: self.choice.lap })
    }
}

/// How a trim of a name is made, where it differs from the others; a line whose section has no such trim passes it over.
///
/// ```
/// use seamwright::assembly::{NamedTrim, TrimChoice};
/// use seamwright::units::Length;
/// let cleat = NamedTrim { name: "continuous cleat".into(), choice: TrimChoice { lap: Length::ZERO, takes_corners: false } };
/// assert!(!cleat.choice.takes_corners);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NamedTrim {
    /// Its name in the section.
    pub name: String,
    /// How it is lapped.
    pub choice: TrimChoice,
}
