//! A path of water down a slope: sheet over sheet, upper over lower, all the way.

use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::Length;

/// What a sheet of a path is.
///
/// ```
/// use seamwright::junction::WaterLevel;
/// assert!(WaterLevel::Metal < WaterLevel::Underlayment);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum WaterLevel {
    /// Panels, trims, cladding: what the rain runs on.
    Metal,
    /// Underlayment, membranes and the metal that they lie on or under: what stops the water that gets past.
    Underlayment,
}

/// A sheet of a path.
///
/// ```
/// use seamwright::junction::PathSheet;
/// use seamwright::units::Length;
/// let trim = PathSheet { name: "eave trim".into(), low: Length::ZERO, high: Length::inches(4), layer: 1 };
/// assert!(trim.low < trim.high);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PathSheet {
    /// What it is called.
    pub name: String,
    /// Where its lower edge lies, measured up the slope.
    pub low: Length,
    /// Where its upper edge lies.
    pub high: Length,
    /// How far up the pile it lies: of two sheets that overlap, that with the greater number lies on the other.
    pub layer: u32,
}

/// The least lap of one sheet over another, by name.
///
/// ```
/// use seamwright::junction::PathRule;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let rule = PathRule { upper: "panels".into(), lower: "valley pan".into(), least: Length::inches(4), source: Source::CommonPractice };
/// assert_eq!(rule.least, Length::inches(4));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct PathRule {
    /// The sheet on top.
    pub upper: String,
    /// The sheet beneath.
    pub lower: String,
    /// The least lap.
    pub least: Length,
    /// Whose rule it is.
    pub source: Source,
}

/// A path of water down one slope, at one level.
///
/// Sheet over sheet is right where the one on top also reaches farther up the slope, or where a third covers its upper edge. Between the highest and the
/// lowest edge no stretch may lie open.
///
/// # Errors
/// Computing refuses a path without sheets ([`ErrorKind::Missing`]), a sheet whose upper edge does not lie above its lower ([`ErrorKind::OutOfRange`]), two sheets of one name,
/// and two that overlap in one layer ([`ErrorKind::Conflict`]).
///
/// ```
/// use seamwright::junction::{PathRule, PathSheet, WaterPath};
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::Length;
/// let sheet = |name: &str, low, high, layer| PathSheet { name: name.into(), low: Length::inches(low), high: Length::inches(high), layer };
/// let rule = PathRule { upper: "panels".into(), lower: "eave trim".into(), least: Length::inches(2), source: Source::CommonPractice };
/// let right = WaterPath { sheets: vec![sheet("panels", -1, 240, 2), sheet("eave trim", 0, 4, 1)], rules: vec![rule] }.compute()?;
/// assert!(right.holds && right.laps[0].overlap == Length::inches(4));
/// assert_eq!(right.order, ["eave trim", "panels"]); // the panels drip lower
/// // A flange on the underlayment: what runs down the underlayment gets under it at its upper edge.
/// let wrong = WaterPath { sheets: vec![sheet("underlayment", 0, 240, 1), sheet("eave trim", 0, 4, 2)], rules: vec![] }.compute()?;
/// assert_eq!(wrong.faults[0].at, Length::inches(4));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct WaterPath {
    /// The sheets, in any order.
    pub sheets: Vec<PathSheet>,
    /// The least laps; a lap that no rule names is reported and not judged.
    #[cfg_attr(feature = "serde", serde(default))]
    pub rules: Vec<PathRule>,
}

/// One sheet over another.
///
/// See [`WaterPath`] for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PathLap {
    /// The sheet on top.
    pub upper: String,
    /// The sheet beneath.
    pub lower: String,
    /// From the lower edge of the one on top, or of the one beneath if that ends higher, up the slope to where the lap ends.
    pub overlap: Length,
    /// The least lap, where a rule names it.
    pub least: Option<Length>,
    /// Whose rule that is.
    pub source: Option<Source>,
    /// Whether water runs over it, and it is as long as the rule asks.
    pub holds: bool,
}

/// How a path fails.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PathFailure {
    /// The sheet on top ends lower than the one beneath: water runs behind its upper edge.
    RunsBehind,
    /// The lap is shorter than the rule asks.
    ShortLap,
    /// Nothing covers a stretch of the slope.
    Open,
}

/// Where a path fails.
///
/// See [`WaterPath`] for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PathFault {
    /// How.
    pub failure: PathFailure,
    /// The sheet on top, or above the open stretch.
    pub upper: String,
    /// The sheet beneath, or below the open stretch.
    pub lower: String,
    /// Where on the slope: the upper edge that water runs behind, the lower edge of a short lap, the upper end of an open stretch.
    pub at: Length,
    /// By how much a lap is short, or how long a stretch lies open; nothing where water runs behind.
    pub short: Length,
}

impl PathFault {
    /// The fault in words.
    ///
    /// ```
    /// use seamwright::junction::{PathFailure, PathFault};
    /// use seamwright::units::Length;
    /// let fault = PathFault { failure: PathFailure::RunsBehind, upper: "eave trim".into(), lower: "underlayment".into(), at: Length::inches(4), short: Length::ZERO };
    /// assert!(fault.message().starts_with("water on the underlayment runs behind the upper edge of the eave trim"));
    /// ```
    #[must_use]
    pub fn message(&self) -> String {
        let (upper, lower) = (&self.upper, &self.lower);
        match self.failure {
            PathFailure::RunsBehind => format!("water on the {lower} runs behind the upper edge of the {upper}"),
            PathFailure::ShortLap => format!("the {upper} laps over the {lower} too little"),
            PathFailure::Open => format!("nothing covers the slope between the {upper} and the {lower}"),
        }
    }

    /// What cures it. Common practice, no published source.
    #[must_use]
    pub fn cure(&self) -> String {
        match self.failure {
            PathFailure::RunsBehind => format!("bring the {} over the {}, or strip its upper edge in", self.lower, self.upper),
            PathFailure::ShortLap => format!("{} more of the {}, or another rule", self.short, self.lower),
            PathFailure::Open => format!("a wider {}", self.lower),
        }
    }
}

/// A path as checked.
///
/// See [`WaterPath`] for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PathCheck {
    /// Whether water runs over every lap from the top to the bottom.
    pub holds: bool,
    /// The sheets from the top of the slope to the bottom, by their lower edges.
    pub order: Vec<String>,
    /// Every two sheets that overlap, the highest lap first.
    pub laps: Vec<PathLap>,
    /// Where it fails.
    pub faults: Vec<PathFault>,
}

impl WaterPath {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        if self.sheets.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "a path without sheets").at("sheets").accepts("one sheet or more"));
        }
        for (i, s) in self.sheets.iter().enumerate() {
            if s.high <= s.low {
                let error = Error::new(ErrorKind::OutOfRange, "a sheet that covers nothing").at(format!("sheets[{i}].high")).value_of(s.high);
                faults.add(error.accepts(format!("more than its lower edge at {}", s.low)));
            }
            for other in self.sheets.iter().take(i) {
                if other.name == s.name {
                    faults.add(
                        Error::new(ErrorKind::Conflict, "two sheets of one name").at(format!("sheets[{i}].name")).value_of(&s.name).accepts("each name once"),
                    );
                } else if other.layer == s.layer && other.low < s.high && s.low < other.high {
                    faults.add(
                        Error::new(ErrorKind::Conflict, format!("neither {} nor {} lies on the other", other.name, s.name))
                            .at(format!("sheets[{i}].layer"))
                            .value_of(s.layer)
                            .accepts("different layers for sheets that overlap"),
                    );
                }
            }
        }
        for (i, rule) in self.rules.iter().enumerate() {
            faults.keep(rule.least.not_negative(&format!("rules[{i}].least")));
        }
        faults.check()
    }

    /// Whether a sheet above this one lies over its upper edge.
    fn is_covered(&self, sheet: &PathSheet) -> bool {
        self.sheets.iter().any(|c| c.layer > sheet.layer && c.low < sheet.high && c.high > sheet.high)
    }

    /// The stretches between the highest and the lowest edge that no sheet covers: the sheets above and below, and where.
    fn open(&self) -> Result<Vec<PathFault>, Error> {
        let mut down: Vec<&PathSheet> = self.sheets.iter().collect();
        down.sort_by_key(|s| core::cmp::Reverse(s.high));
        let mut out = Vec::new();
        let mut lowest: Option<&PathSheet> = None;
        for s in down {
            if let Some(above) = lowest.filter(|above| s.high < above.low) {
                let short = (above.low - s.high).length()?;
                out.push(PathFault { failure: PathFailure::Open, upper: above.name.clone(), lower: s.name.clone(), at: above.low, short });
            }
            lowest = lowest.filter(|above| above.low <= s.low).or(Some(s));
        }
        Ok(out)
    }
}

impl Calculation for WaterPath {
    type Out = PathCheck;

    fn title(&self) -> String {
        "path of water down the slope".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<PathCheck, Error> {
        self.check()?;
        let mut down: Vec<&PathSheet> = self.sheets.iter().collect();
        down.sort_by(|a, b| (b.low, b.high).cmp(&(a.low, a.high)).then_with(|| a.name.cmp(&b.name)));
        let mut laps = Vec::new();
        let mut faults = Vec::new();
        for (i, a) in down.iter().enumerate() {
            for b in down.iter().skip(i + 1) {
                let (low, high) = (a.low.max(b.low), a.high.min(b.high));
                if high <= low {
                    continue;
                }
                let (upper, lower) = if a.layer > b.layer { (a, b) } else { (b, a) };
                let overlap = (high - low).length()?;
                let rule = self.rules.iter().find(|r| r.upper == upper.name && r.lower == lower.name);
                let fault = |failure, at, short| PathFault { failure, upper: upper.name.clone(), lower: lower.name.clone(), at, short };
                let behind = upper.high < lower.high && !self.is_covered(upper);
                let short = rule.map_or(Length::ZERO, |r| r.least) > overlap;
                if behind {
                    faults.push(fault(PathFailure::RunsBehind, upper.high, Length::ZERO));
                }
                if let Some(rule) = rule.filter(|_| short) {
                    faults.push(fault(PathFailure::ShortLap, low, (rule.least - overlap).length()?));
                }
                r.step(|| {
                    let step = Step::new(format!("{} over {}", upper.name, lower.name)).formula("overlap up the slope").with("from", low).with("to", high);
                    let step = if let Some(rule) = rule { step.with("least", rule.least).source(rule.source.clone()) } else { step.source(Source::geometry()) };
                    step.gives(overlap)
                });
                laps.push(PathLap {
                    upper: upper.name.clone(),
                    lower: lower.name.clone(),
                    overlap,
                    least: rule.map(|r| r.least),
                    source: rule.map(|r| r.source.clone()),
                    holds: !behind && !short,
                });
            }
        }
        faults.extend(self.open()?);
        faults.sort_by_key(|f| core::cmp::Reverse(f.at));
        r.step(|| {
            Step::new("faults of the path").formula("laps the wrong way or too short, and open stretches").gives(faults.len()).source(Source::CommonPractice)
        });
        Ok(PathCheck { holds: faults.is_empty(), order: down.iter().map(|s| s.name.clone()).collect(), laps, faults })
    }
}
