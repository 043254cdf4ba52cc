//! Stations that can only sit where a support is.

use super::cautions::SUPPORTS_NOT_USED;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::Length;

/// Which of the supports within reach carry a station.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::spacing::{SupportSpacing, SupportUse};
/// use seamwright::units::Length;
/// let supports = vec![Length::ZERO, Length::feet(2), Length::feet(4)];
/// let mut s = SupportSpacing { run: Length::feet(4), greatest_end_distance: Length::ZERO, maximum: Length::feet(4), supports, support_use: SupportUse::Every };
/// assert_eq!(s.compute()?.positions.len(), 3);
/// s.support_use = SupportUse::Fewest;
/// assert_eq!(s.compute()?.positions.len(), 2);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SupportUse {
    /// Every support on the run.
    Every,
    /// The fewest supports that keep to the maximum.
    Fewest,
}

/// Stations on given supports, such as purlins, no farther apart than a maximum.
///
/// # Errors
/// Computing refuses, with the field: a run or maximum of zero or less, a negative end distance ([`ErrorKind::OutOfRange`]); supports that are
/// not in ascending order ([`ErrorKind::Conflict`]); supports that cannot give the spacing ([`ErrorKind::Impossible`]), whose cure names the
/// supports to add.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::spacing::{SupportSpacing, SupportUse};
/// use seamwright::units::Length;
/// let mut s = SupportSpacing {
///     run: Length::feet(10),
///     greatest_end_distance: Length::feet(1),
///     maximum: Length::feet(5),
///     supports: [1, 3, 5, 9].map(Length::feet).to_vec(),
///     support_use: SupportUse::Fewest,
/// };
/// assert_eq!(s.compute()?.positions, [1, 5, 9].map(Length::feet));
/// s.maximum = Length::feet(3);
/// let e = s.compute().unwrap_err();
/// assert_eq!(e.cure(), Some("add supports at 2133.6 mm"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SupportSpacing {
    /// Length of the run.
    pub run: Length,
    /// The farthest that the first and last station may be from the ends.
    pub greatest_end_distance: Length,
    /// Greatest spacing on centre.
    pub maximum: Length,
    /// Distance of each support from the start of the run, ascending. Those before the start or past the end carry nothing of this run.
    pub supports: Vec<Length>,
    /// Which of them carry a station.
    pub support_use: SupportUse,
}

/// The supports that carry a station.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::spacing::{SupportSpacing, SupportUse};
/// use seamwright::units::Length;
/// let s = SupportSpacing {
///     run: Length::feet(4),
///     greatest_end_distance: Length::feet(1),
///     maximum: Length::feet(2),
///     supports: vec![Length::feet(1), Length::feet(2), Length::feet(3)],
///     support_use: SupportUse::Fewest,
/// };
/// let found = s.compute()?;
/// assert_eq!((found.used.as_slice(), found.not_used.as_slice()), ([0, 2].as_slice(), [1].as_slice()));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct SupportStations {
    /// Distance of each station from the start of the run.
    pub positions: Vec<Length>,
    /// Index of the support under each station.
    pub used: Vec<usize>,
    /// Index of each support that carries none.
    pub not_used: Vec<usize>,
    /// The greatest spacing found; none where there is a single station.
    pub greatest_spacing: Option<Length>,
    /// Distance of the last station from the end of the run.
    pub last_end_distance: Length,
    /// What to know before it is built.
    pub cautions: Vec<Caution>,
}

impl SupportSpacing {
    fn validate(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.run.positive("run"));
        faults.keep(self.greatest_end_distance.not_negative("greatest_end_distance"));
        faults.keep(self.maximum.positive("maximum"));
        for (i, pair) in self.supports.windows(2).enumerate() {
            if let [a, b] = pair
                && a >= b
            {
                faults.add(
                    Error::new(ErrorKind::Conflict, "supports must be in ascending order")
                        .at(format!("supports[{}]", i + 1))
                        .value_of(b)
                        .accepts(format!("more than {a}")),
                );
            }
        }
        faults.check()
    }
}

/// Where supports would have to be added between two points that are too far apart.
fn added(from: Length, to: Length, maximum: Length) -> Result<Vec<Length>, Error> {
    let between = (to - from).length()?;
    let gap = i128::from(between.pm());
    let step = i128::from(maximum.pm());
    let n = u32::try_from(gap.div_euclid(step) + i128::from(gap.rem_euclid(step) != 0)).map_err(|_| {
        Error::new(ErrorKind::TooLarge, "too many supports would have to be added").at("maximum").value_of(maximum).accepts("a greater spacing")
    })?;
    (1..n.min(LISTED)).map(|i| (from + between.station(i, n)?).length()).collect()
}

/// The most supports that a cure lists.
const LISTED: u32 = 20;

fn refuse(message: String, list: &[Length]) -> Error {
    let names: Vec<String> = list.iter().map(Length::to_string).collect();
    Error::new(ErrorKind::Impossible, message)
        .at("supports")
        .accepts("supports no farther apart than the maximum, and within the end distance of both ends")
        .cured_by(format!("add supports at {}", names.join(", ")))
}

impl Calculation for SupportSpacing {
    type Out = SupportStations;

    fn title(&self) -> String {
        "stations on supports".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<SupportStations, Error> {
        self.validate()?;
        let on_run: Vec<(usize, Length)> = self.supports.iter().copied().enumerate().filter(|&(_, s)| s >= Length::ZERO && s <= self.run).collect();
        let last_limit = (self.run - self.greatest_end_distance).length()?;
        let first_limit = self.greatest_end_distance.min(self.run);
        // The first station: the farthest support that is still within the end distance.
        let within = on_run.iter().take_while(|&&(_, s)| s <= first_limit).count();
        if within == 0 {
            let message = match on_run.first() {
                Some((_, s)) => format!("the first support, at {s}, is more than {} from the start of the run", self.greatest_end_distance),
                None => "no support is on the run".to_owned(),
            };
            let mut list = vec![first_limit];
            match on_run.first() {
                Some(&(_, s)) => list.extend(added(first_limit, s, self.maximum)?),
                None if last_limit > first_limit => {
                    list.extend(added(first_limit, last_limit, self.maximum)?);
                    list.push(last_limit);
                }
                None => {}
            }
            return Err(refuse(message, &list).value_of(format!("{} supports on the run", on_run.len())));
        }
        let mut chosen = match self.support_use {
            SupportUse::Every => 0,
            SupportUse::Fewest => within - 1,
        };
        let mut picks = vec![chosen];
        let position = |i: usize| on_run.get(i).map_or(Length::ZERO, |&(_, s)| s);
        loop {
            let here = position(chosen);
            let more = chosen + 1 < on_run.len();
            if here >= last_limit && (self.support_use == SupportUse::Fewest || !more) {
                break;
            }
            let reach = (here + self.maximum).length()?;
            if !more {
                let mut list = added(here, last_limit, self.maximum)?;
                list.push(last_limit);
                let rest = (self.run - here).length()?;
                return Err(refuse(format!("the last support, at {here}, is {rest} from the end of the run"), &list).value_of(here));
            }
            let next = match self.support_use {
                SupportUse::Every => chosen + 1,
                SupportUse::Fewest => chosen + on_run.iter().skip(chosen + 1).take_while(|&&(_, s)| s <= reach).count().max(1),
            };
            let there = position(next);
            if there > reach {
                let list = added(here, there, self.maximum)?;
                let gap = (there - here).length()?;
                return Err(refuse(format!("the supports at {here} and {there} are farther apart than {}", self.maximum), &list).value_of(gap));
            }
            chosen = next;
            picks.push(chosen);
        }
        let positions: Vec<Length> = picks.iter().map(|&i| position(i)).collect();
        let used: Vec<usize> = picks.iter().filter_map(|&i| on_run.get(i).map(|p| p.0)).collect();
        let not_used: Vec<usize> = (0..self.supports.len()).filter(|i| used.binary_search(i).is_err()).collect();
        let mut greatest_spacing = None;
        for pair in positions.windows(2) {
            if let [a, b] = pair {
                greatest_spacing = greatest_spacing.max(Some((*b - *a).length()?));
            }
        }
        let last = positions.last().copied().unwrap_or_default();
        let last_end_distance = (self.run - last).length()?;
        r.step(|| {
            Step::new("stations on supports")
                .formula("each the farthest support within the maximum of the one before, or every support")
                .with("maximum", self.maximum)
                .with("greatest end distance", self.greatest_end_distance)
                .with("supports on the run", on_run.len())
                .gives(positions.iter().map(Length::to_string).collect::<Vec<_>>().join(", "))
                .source(Source::geometry())
        });
        let mut cautions = Vec::new();
        if !not_used.is_empty() {
            cautions.push(Caution::new(SUPPORTS_NOT_USED, "supports", Source::geometry()).arg("count", not_used.len()));
        }
        Ok(SupportStations { positions, used, not_used, greatest_spacing, last_end_distance, cautions })
    }
}
