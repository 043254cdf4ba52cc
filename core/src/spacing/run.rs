//! Stations at equal or fixed spacing.

use super::cautions::{LAST_FAR_FROM_END, ONE_STATION};
use super::stations::Stations;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::Length;

/// The most stations one run may have; a spacing that gives more is taken for a mistake.
pub const MAX_STATIONS: u32 = 1_000_000;

/// What a fixed spacing does at the end of the run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum LastStation {
    /// The last full step is the last station.
    AsItFalls,
    /// One more station at the end distance, unless one stands there already.
    AtEndDistance,
}

/// How stations are spaced.
///
/// ```
/// use seamwright::spacing::{LastStation, SpacingRule};
/// use seamwright::units::Length;
/// let rule = SpacingRule::Fixed { start: Length::inches(3), spacing: Length::inches(12), last: LastStation::AtEndDistance };
/// assert_ne!(rule, SpacingRule::Equal { maximum: Length::inches(12) });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum SpacingRule {
    /// Equal spaces between the two end distances, the fewest that keep each at or under the maximum on centre.
    Equal {
        /// Greatest spacing on centre.
        maximum: Length,
    },
    /// Full steps from a start, none nearer to the far end than the end distance.
    Fixed {
        /// Distance of the first station from the start of the run.
        start: Length,
        /// Spacing on centre.
        spacing: Length,
        /// What happens at the far end.
        last: LastStation,
    },
}

/// Stations along one run.
///
/// At equal spacing the first and last stations sit at the end distance from either end. At fixed spacing the end distance
/// is that of the far end; the start is the rule's own.
///
/// # Errors
/// Computing refuses, with the field: a run or spacing of zero or less, a negative start or end distance
/// ([`ErrorKind::OutOfRange`]); end distances that do not fit in the run ([`ErrorKind::Impossible`]); more than [`MAX_STATIONS`] stations
/// ([`ErrorKind::TooLarge`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::spacing::{LastStation, Spacing, SpacingRule};
/// use seamwright::units::Length;
/// let s = Spacing {
///     run: Length::feet(10),
///     end_distance: Length::inches(1),
///     rule: SpacingRule::Fixed { start: Length::inches(1), spacing: Length::inches(12), last: LastStation::AtEndDistance },
/// };
/// let found = s.compute()?;
/// assert_eq!((found.count(), found.last_spacing), (11, Some(Length::inches(10))));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Spacing {
    /// Length of the run.
    pub run: Length,
    /// Distance of the end stations from the ends of the run.
    pub end_distance: Length,
    /// How the stations are spaced.
    pub rule: SpacingRule,
}

impl Spacing {
    fn validate(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.run.positive("run"));
        faults.keep(self.end_distance.not_negative("end_distance"));
        match self.rule {
            SpacingRule::Equal { maximum } => {
                faults.keep(maximum.positive("rule.maximum"));
            }
            SpacingRule::Fixed { start, spacing, .. } => {
                faults.keep(start.not_negative("rule.start"));
                faults.keep(spacing.positive("rule.spacing"));
            }
        }
        faults.check()
    }
}

/// How many whole steps, checked against the limit.
fn step_count(steps: i128, path: &str, step: Length) -> Result<u32, Error> {
    u32::try_from(steps).ok().filter(|&n| n < MAX_STATIONS).ok_or_else(|| {
        Error::new(ErrorKind::TooLarge, "the spacing gives too many stations")
            .at(path)
            .value_of(step)
            .accepts(format!("at most {MAX_STATIONS} stations on a run"))
    })
}

/// A length times a count of steps, exact.
fn steps_of(step: Length, n: u32) -> Result<Length, Error> {
    step.station(n, 1)
}

impl Calculation for Spacing {
    type Out = Stations;

    fn title(&self) -> String {
        "stations along a run".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Stations, Error> {
        self.validate()?;
        match self.rule {
            SpacingRule::Equal { maximum } => equal(self.run, self.end_distance, maximum, r),
            SpacingRule::Fixed { start, spacing, last } => fixed(self.run, self.end_distance, start, spacing, last, r),
        }
    }
}

fn equal<R: Recorder>(run: Length, end: Length, maximum: Length, r: &mut R) -> Result<Stations, Error> {
    let between = (run - end * 2).length()?;
    r.step(|| {
        Step::new("length between the end stations")
            .formula("run - 2 end distance")
            .with("run", run)
            .with("end distance", end)
            .gives(between)
            .source(Source::geometry())
    });
    if between.is_negative() {
        return Err(Error::new(ErrorKind::Impossible, "the two end distances do not fit in the run")
            .at("end_distance")
            .value_of(end)
            .accepts(format!("at most {}, half of the run", run.station(1, 2)?)));
    }
    let span = i128::from(between.pm());
    let step = i128::from(maximum.pm());
    let n = step_count(span.div_euclid(step) + i128::from(span.rem_euclid(step) != 0), "rule.maximum", maximum)?;
    r.step(|| {
        Step::new("number of spaces").formula("up(between / maximum)").with("between", between).with("maximum", maximum).gives(n).source(Source::geometry())
    });
    let mut positions = Vec::new();
    let mut cautions = Vec::new();
    if n == 0 {
        positions.push(end);
        cautions.push(Caution::new(ONE_STATION, "run", Source::geometry()).arg("run", run));
    } else {
        for i in 0..=n {
            positions.push((end + between.station(i, n)?).length()?);
        }
    }
    let spacing = if n == 0 { None } else { Some(between.station(1, n)?) };
    r.step(|| {
        let s = Step::new("spacing").formula("between / spaces").with("between", between).with("spaces", n).source(Source::geometry());
        match spacing {
            Some(found) => s.gives(found),
            None => s.gives("one station"),
        }
    });
    Ok(Stations { positions, spacing, last_spacing: None, last_end_distance: end, cautions })
}

fn fixed<R: Recorder>(run: Length, end: Length, start: Length, spacing: Length, last: LastStation, r: &mut R) -> Result<Stations, Error> {
    let limit = (run - end).length()?;
    let reach = (limit - start).length()?;
    r.step(|| {
        Step::new("reach of the steps")
            .formula("run - end distance - start")
            .with("run", run)
            .with("end distance", end)
            .with("start", start)
            .gives(reach)
            .source(Source::geometry())
    });
    if reach.is_negative() {
        return Err(Error::new(ErrorKind::Impossible, "the start and the end distance do not fit in the run")
            .at("rule.start")
            .value_of(start)
            .accepts(format!("at most {limit}, the run less its end distance")));
    }
    let n = step_count(i128::from(reach.pm()).div_euclid(i128::from(spacing.pm())), "rule.spacing", spacing)?;
    r.step(|| Step::new("full steps").formula("down(reach / spacing)").with("reach", reach).with("spacing", spacing).gives(n).source(Source::geometry()));
    let mut positions = Vec::new();
    let mut at = start;
    for i in 0..=n {
        at = (start + steps_of(spacing, i)?).length()?;
        positions.push(at);
    }
    let rest = (limit - at).length()?;
    let mut last_spacing = None;
    if last == LastStation::AtEndDistance && rest.is_positive() {
        positions.push(limit);
        at = limit;
        last_spacing = Some(rest);
    }
    let last_end_distance = (run - at).length()?;
    r.step(|| {
        Step::new("last end distance")
            .formula("run - last station")
            .with("run", run)
            .with("last station", at)
            .gives(last_end_distance)
            .source(Source::geometry())
    });
    let mut cautions = Vec::new();
    if last_end_distance > end {
        cautions.push(Caution::new(LAST_FAR_FROM_END, "rule", Source::geometry()).arg("found", last_end_distance).arg("wanted", end));
    }
    if positions.len() == 1 {
        cautions.push(Caution::new(ONE_STATION, "run", Source::geometry()).arg("run", run));
    }
    // A single full step leaves only the closing space, which then is the common one.
    let (spacing, last_spacing) = if n > 0 { (Some(spacing), last_spacing) } else { (last_spacing, None) };
    Ok(Stations { positions, spacing, last_spacing, last_end_distance, cautions })
}
