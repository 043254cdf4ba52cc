//! Rows of fasteners along a line.

use super::cautions::{ROW_NOT_ENGINEERED, ROW_SHORT};
use crate::error::{Error, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::spacing::{Spacing, SpacingRule, Stations};
use crate::units::Length;

/// A row of fasteners along a run, equally spaced.
///
/// A run too short for both end distances takes one fastener in its middle, with a caution; a spacing that is not an engineer's brings one too.
///
/// # Errors
/// Computing refuses a run or spacing of zero or less, a negative end distance ([`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange)),
/// and more stations than one run may have ([`ErrorKind::TooLarge`](crate::error::ErrorKind::TooLarge)).
///
/// ```
/// use seamwright::assembly::FastenerRun;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::Length;
/// let row = FastenerRun { run: Length::feet(10), end_distance: Length::inches(1), spacing: Length::inches(12), source: Source::CommonPractice };
/// let found = row.compute()?;
/// assert_eq!((found.stations.count(), found.engineered, found.cautions[0].code().name), (11, false, "row-not-engineered"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct FastenerRun {
    /// Length of the run.
    pub run: Length,
    /// Distance of the first and last fastener from its ends.
    pub end_distance: Length,
    /// Greatest spacing on centre.
    pub spacing: Length,
    /// Whose spacing it is.
    pub source: Source,
}

/// A row as set out.
///
/// See [`FastenerRun`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct FastenerStations {
    /// The stations along the run; [`Stations::crew`] is what the crew works from.
    pub stations: Stations,
    /// Whether the spacing is an engineer's.
    pub engineered: bool,
    /// What to know before it is built.
    pub cautions: Vec<Caution>,
}

impl FastenerRun {
    /// That the spacing is not an engineer's.
    pub(super) fn not_engineered(&self) -> Caution {
        Caution::new(ROW_NOT_ENGINEERED, "spacing", self.source.clone()).arg("spacing", self.spacing).arg("source", &self.source)
    }
}

/// Whether a figure is an engineer's.
pub(super) fn is_engineered(source: &Source) -> bool {
    matches!(source, Source::Engineer { .. })
}

impl Calculation for FastenerRun {
    type Out = FastenerStations;

    fn title(&self) -> String {
        "row of fasteners".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<FastenerStations, Error> {
        let mut faults = Faults::default();
        faults.keep(self.run.positive("run"));
        faults.keep(self.end_distance.not_negative("end_distance"));
        faults.keep(self.spacing.positive("spacing"));
        faults.check()?;
        let mut cautions = Vec::new();
        let half = self.run.station(1, 2)?;
        let short = self.end_distance * 2 > self.run.into();
        if short {
            r.step(|| Step::new("one fastener in the middle").formula("run / 2").with("run", self.run).gives(half).source(Source::CommonPractice));
            cautions.push(Caution::new(ROW_SHORT, "run", Source::CommonPractice).arg("run", self.run).arg("end", self.end_distance));
        }
        let stations = if short {
            let last_end_distance = (self.run - half).length()?;
            Stations { positions: vec![half], spacing: None, last_spacing: None, last_end_distance, cautions: Vec::new() }
        } else {
            let spacing = Spacing { run: self.run, end_distance: self.end_distance, rule: SpacingRule::Equal { maximum: self.spacing } };
            r.part(|| spacing.title(), |r| spacing.run(r)).map_err(|e| if e.path() == "rule.maximum" { e.at("spacing") } else { e })?
        };
        let engineered = is_engineered(&self.source);
        if !engineered {
            cautions.push(self.not_engineered());
        }
        Ok(FastenerStations { stations, engineered, cautions })
    }
}
