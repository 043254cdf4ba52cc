//! The line of defence along a junction: what seals it from one end of the run to the other, and where it breaks.

use super::bay::Stretch;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::Length;

/// What a place of the sealed line needs.
///
/// ```
/// use seamwright::assembly::SealNeed;
/// assert_eq!(SealNeed::Plug.lacks(), "a plug in the hollow of the seam");
/// assert!(SealNeed::TapeLap.cure().starts_with("cut the tape"));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SealNeed {
    /// Sealant tape.
    Tape,
    /// A closure piece.
    Closure,
    /// A bead of gun sealant.
    Bead,
    /// A plug in the hollow of a seam.
    Plug,
    /// A lap of tape on tape where a ribbon cannot follow the surface uncut.
    TapeLap,
    /// Sealant in the lap of two pieces of trim.
    TrimLap,
    /// The joint with the sealed line of the line that it meets.
    Corner,
}

impl SealNeed {
    /// What is missing, in words.
    #[must_use]
    pub const fn lacks(self) -> &'static str {
        match self {
            SealNeed::Tape => "sealant tape",
            SealNeed::Closure => "a closure piece",
            SealNeed::Bead => "a bead of sealant",
            SealNeed::Plug => "a plug in the hollow of the seam",
            SealNeed::TapeLap => "a lap of the tape at the seam",
            SealNeed::TrimLap => "sealant in the lap of the trim",
            SealNeed::Corner => "the joint with the line that it meets",
        }
    }

    /// What closes the break. Common practice, no published source.
    #[must_use]
    pub const fn cure(self) -> &'static str {
        match self {
            SealNeed::Tape => "run the tape on, pressed and not stretched",
            SealNeed::Closure => "make a closure to the bay by hand, or choose a start of the seams that leaves no such bay",
            SealNeed::Bead => "gun a bead into the gap",
            SealNeed::Plug => "plug the hollow where the seam crosses the line",
            SealNeed::TapeLap => "cut the tape at the foot and at the top of the seam and lap it",
            SealNeed::TrimLap => "lap the pieces on two beads of sealant",
            SealNeed::Corner => "decide which of the two lines laps over the other, and join their tape in the corner",
        }
    }
}

/// One layer of the line: what must go through from end to end.
///
/// ```
/// use seamwright::assembly::{SealLayer, SealNeed};
/// let never_laid = SealLayer { name: "tape over the closures".into(), need: SealNeed::Tape, stretches: vec![] };
/// assert!(never_laid.stretches.is_empty());
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SealLayer {
    /// What it is.
    pub name: String,
    /// What is missing where it does not reach.
    pub need: SealNeed,
    /// Where it lies along the line, in any order; stretches may overlap.
    pub stretches: Vec<Stretch>,
}

/// A place where something passes through the line, or two parts of it meet.
///
/// ```
/// use seamwright::assembly::{SealNeed, SealPassage};
/// use seamwright::units::Length;
/// let seam = SealPassage { name: "hollow of seam 2".into(), need: SealNeed::Plug, at: Length::inches(16), sealed: false };
/// assert_eq!(seam.need, SealNeed::Plug);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SealPassage {
    /// What it is.
    pub name: String,
    /// What it needs.
    pub need: SealNeed,
    /// Where, from the start of the line.
    pub at: Length,
    /// Whether it has what it needs.
    pub sealed: bool,
}

/// The sealed line of one side of a junction, from one end of the run to the other.
///
/// Every layer must go through by itself: tape above a missing closure does not close it. A gap of just the limit passes.
///
/// # Errors
/// Computing refuses a line without a layer or a passage ([`ErrorKind::Missing`]), a run of zero or less, a negative limit, and stretches, bays and passages that do not lie on the run in order
/// ([`ErrorKind::OutOfRange`]), each by its path.
///
/// ```
/// use seamwright::assembly::{SealLayer, SealNeed, SealPassage, SealedLine, Stretch};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let on = |from, to| Stretch { from: Length::inches(from), to: Length::inches(to) };
/// let line = SealedLine {
///     run: Length::inches(48),
///     longest_gap: Length::inches_64(4),
///     bays: vec![on(0, 16), on(16, 32), on(32, 48)],
///     layers: vec![SealLayer { name: "tape".into(), need: SealNeed::Tape, stretches: vec![on(0, 32)] }],
///     passages: vec![SealPassage { name: "seam".into(), need: SealNeed::Plug, at: Length::inches(16), sealed: true }],
/// };
/// let check = line.compute()?;
/// assert!(!check.continuous);
/// let end = &check.breaks[0];
/// assert_eq!((end.from, end.to, end.bay, end.missing), (Length::inches(32), Length::inches(48), Some(3), SealNeed::Tape));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SealedLine {
    /// Length of the line.
    pub run: Length,
    /// No gap may be longer.
    pub longest_gap: Length,
    /// The bays, so that a break can be named by its own.
    #[cfg_attr(feature = "serde", serde(default))]
    pub bays: Vec<Stretch>,
    /// The layers.
    #[cfg_attr(feature = "serde", serde(default))]
    pub layers: Vec<SealLayer>,
    /// What passes through them.
    #[cfg_attr(feature = "serde", serde(default))]
    pub passages: Vec<SealPassage>,
}

/// A break in a sealed line.
///
/// See [`SealedLine`] for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SealBreak {
    /// The layer or the passage.
    pub name: String,
    /// What is missing.
    pub missing: SealNeed,
    /// Where it starts along the line.
    pub from: Length,
    /// Where it ends; at a passage the same place.
    pub to: Length,
    /// The bay that its middle lies in, from 1 at the start of the line.
    pub bay: Option<usize>,
    /// What closes it.
    pub cure: &'static str,
}

/// Whether a line is sealed from end to end.
///
/// See [`SealedLine`] for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SealCheck {
    /// Whether nothing breaks it.
    pub continuous: bool,
    /// The limit that it was checked against.
    pub longest_gap: Length,
    /// The widest gap that the limit lets pass.
    pub widest_gap: Length,
    /// How many layers were followed from end to end; none where laps alone keep the water out.
    pub layers: usize,
    /// How many passages were looked at.
    pub passages: usize,
    /// The breaks, in order along the line.
    pub breaks: Vec<SealBreak>,
}

impl SealedLine {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.run.positive("run"));
        faults.keep(self.longest_gap.not_negative("longest_gap"));
        if self.layers.is_empty() && self.passages.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "nothing that seals lies along the line").at("layers").accepts("one layer or passage or more"));
        }
        let outside = |path: String, value: String| {
            Error::new(ErrorKind::OutOfRange, "not on the run").at(path).value_of(value).accepts(format!("from 0 mm up to {}, in order", self.run))
        };
        let lies = |s: &Stretch| Length::ZERO <= s.from && s.from <= s.to && s.to <= self.run;
        let named =
            self.layers.iter().enumerate().flat_map(|(i, l)| l.stretches.iter().enumerate().map(move |(j, s)| (format!("layers[{i}].stretches[{j}]"), s)));
        for (path, s) in self.bays.iter().enumerate().map(|(i, s)| (format!("bays[{i}]"), s)).chain(named) {
            if !lies(s) {
                faults.add(outside(path, format!("{} to {}", s.from, s.to)));
            }
        }
        for (i, p) in self.passages.iter().enumerate() {
            if p.at < Length::ZERO || p.at > self.run {
                faults.add(outside(format!("passages[{i}].at"), p.at.to_string()));
            }
        }
        faults.check()
    }

    /// The bay that this place lies in, from 1.
    fn bay(&self, at: Length) -> Option<usize> {
        self.bays.iter().position(|b| b.from <= at && at <= b.to).map(|k| k + 1)
    }

    /// The stretches that a layer leaves open; a point of it seals nothing.
    fn open(&self, layer: &SealLayer) -> Vec<Stretch> {
        let mut sorted: Vec<Stretch> = layer.stretches.iter().copied().filter(|s| s.from < s.to).collect();
        sorted.sort_unstable_by_key(|s| (s.from, s.to));
        let mut out = Vec::new();
        let mut at = Length::ZERO;
        for s in sorted {
            if s.from > at {
                out.push(Stretch { from: at, to: s.from });
            }
            at = at.max(s.to);
        }
        if at < self.run {
            out.push(Stretch { from: at, to: self.run });
        }
        out
    }
}

impl Calculation for SealedLine {
    type Out = SealCheck;

    fn title(&self) -> String {
        "sealed line from end to end".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<SealCheck, Error> {
        self.check()?;
        let mut breaks = Vec::new();
        let mut widest_gap = Length::ZERO;
        for layer in &self.layers {
            let mut longest = Length::ZERO;
            for gap in self.open(layer) {
                let wide = (gap.to - gap.from).length()?;
                longest = longest.max(wide);
                // A layer that covers nothing is none, however long a gap may be.
                if wide <= self.longest_gap && wide < self.run {
                    widest_gap = widest_gap.max(wide);
                    continue;
                }
                let middle = (gap.from + wide.station(1, 2)?).length()?;
                let (missing, bay) = (layer.need, self.bay(middle));
                breaks.push(SealBreak { name: layer.name.clone(), missing, from: gap.from, to: gap.to, bay, cure: missing.cure() });
            }
            r.step(|| {
                let step =
                    Step::new(format!("longest gap of {}", layer.name)).formula("between the stretches that it covers, from the start to the end of the run");
                step.with("stretches", layer.stretches.len()).with("limit", self.longest_gap).gives(longest).source(Source::geometry())
            });
        }
        for p in self.passages.iter().filter(|p| !p.sealed) {
            breaks.push(SealBreak { name: p.name.clone(), missing: p.need, from: p.at, to: p.at, bay: self.bay(p.at), cure: p.need.cure() });
        }
        breaks.sort_by_key(|b| (b.from, b.to));
        r.step(|| {
            let step = Step::new("breaks").formula("gaps over the limit, and passages without what they need");
            step.with("layers", self.layers.len()).with("passages", self.passages.len()).gives(breaks.len()).source(Source::CommonPractice)
        });
        Ok(SealCheck {
            continuous: breaks.is_empty(),
            longest_gap: self.longest_gap,
            widest_gap,
            layers: self.layers.len(),
            passages: self.passages.len(),
            breaks,
        })
    }
}
