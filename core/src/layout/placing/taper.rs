//! A plane out of square, taken up by every panel a little.

use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Angle, Length};

/// Panels that one tapered stretch may have.
const PANELS: i128 = 100_000;

/// Whole panels between two edges that are not parallel, each drawn out or pushed together a little, differently at foot and head.
///
/// The panel's maker, or a trial on the bench, says how much wider or narrower than its coverage a panel may be laid.
///
/// ```
/// use seamwright::layout::TaperedLay;
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let eighth = Length::parse("1/8\"")?;
/// let rake = TaperedLay {
///     foot: Length::inches(320),
///     head: Length::inches(321),
///     run: Length::feet(20),
///     coverage: Length::inches(16),
///     wider: eighth,
///     narrower: eighth,
///     panels: None,
/// };
/// let laid = rake.compute()?;
/// assert_eq!((laid.panels, laid.head), (20, Length::parse("16.05 in")?));
/// assert_eq!(laid.marks[10].head, Length::parse("160.5 in")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TaperedLay {
    /// Between the two outermost seams, measured square to the first of them, at the foot.
    pub foot: Length,
    /// The same at the head.
    pub head: Length,
    /// From the foot's line to the head's, along the first seam.
    pub run: Length,
    /// The panel's coverage.
    pub coverage: Length,
    /// How much wider than its coverage a panel may be laid.
    pub wider: Length,
    /// How much narrower.
    pub narrower: Length,
    /// How many panels; none for what keeps them nearest to their coverage.
    #[cfg_attr(feature = "serde", serde(default))]
    pub panels: Option<u32>,
}

/// Where one seam is marked, from the first.
///
/// ```
/// use seamwright::layout::TaperMark;
/// use seamwright::units::Length;
/// let first = TaperMark { foot: Length::ZERO, head: Length::ZERO };
/// assert_eq!(first.foot, first.head);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct TaperMark {
    /// At the foot.
    pub foot: Length,
    /// At the head.
    pub head: Length,
}

/// A tapered stretch.
///
/// ```
/// use seamwright::layout::TaperedLay;
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let (sixteenth, run) = (Length::parse("1/16\"")?, Length::feet(20));
/// let lay = TaperedLay { foot: Length::inches(32), head: Length::inches(33), run, coverage: Length::inches(16), wider: sixteenth, narrower: sixteenth, panels: None };
/// // Two panels would each have to grow by 1/2 in.
/// let refused = lay.compute().unwrap_err();
/// assert_eq!((refused.path(), refused.allowed()), ("wider", Some("at least 12.7 mm, with 2 panels")));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct TaperedPanels {
    /// How many.
    pub panels: u32,
    /// The fewest that the panel allows.
    pub fewest: u32,
    /// The most.
    pub most: u32,
    /// What each covers at the foot.
    pub foot: Length,
    /// What each covers at the head.
    pub head: Length,
    /// Foot less coverage: more than zero where panels are drawn out.
    pub foot_off: Length,
    /// Head less coverage.
    pub head_off: Length,
    /// How much wider each is at the head than at the foot.
    pub taper: Length,
    /// The angle between the first and the last seam: positive where they part upward.
    pub out_of_square: Angle,
    /// Every seam, the first and the last among them, rounded once each.
    pub marks: Vec<TaperMark>,
}

impl TaperedLay {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (path, length) in [("foot", self.foot), ("head", self.head), ("run", self.run), ("coverage", self.coverage)] {
            faults.keep(length.positive(path));
        }
        faults.keep(self.wider.not_negative("wider"));
        faults.keep(self.narrower.not_negative("narrower"));
        if self.narrower >= self.coverage && self.coverage.is_positive() {
            let fault = Error::new(ErrorKind::Conflict, "nothing is left of the panel").at("narrower").value_of(self.narrower);
            faults.add(fault.accepts(format!("less than {}", self.coverage)));
        }
        if self.panels == Some(0) {
            faults.add(Error::new(ErrorKind::OutOfRange, "no panel").at("panels").value_of(0).accepts("1 or more"));
        }
        faults.check()
    }

    /// The widths in order, in picometres.
    fn widths(&self) -> (i128, i128) {
        let (a, b) = (i128::from(self.foot.pm()), i128::from(self.head.pm()));
        (a.min(b), a.max(b))
    }

    /// The fewest and the most panels that stay within what the panel allows.
    fn range(&self) -> (i128, i128) {
        let (least, greatest) = self.widths();
        let (widest, narrowest) =
            (i128::from(self.coverage.pm()) + i128::from(self.wider.pm()), i128::from(self.coverage.pm()) - i128::from(self.narrower.pm()));
        (-(-greatest).div_euclid(widest), least.div_euclid(narrowest))
    }

    /// How far `n` panels depart from their coverage: the most that one is wider, the most that one is narrower, in picometres, up.
    fn off(&self, n: i128) -> (i128, i128) {
        let ((least, greatest), coverage) = (self.widths(), i128::from(self.coverage.pm()));
        (-(-greatest).div_euclid(n) - coverage, coverage - least.div_euclid(n))
    }

    /// The number of panels that keeps the widest departure least: where the two departures change places, or beside it.
    fn nearest(&self, fewest: i128, most: i128) -> i128 {
        let (least, greatest) = self.widths();
        let balance = (least + greatest).div_euclid(2 * i128::from(self.coverage.pm()));
        let worst = |n: i128| {
            let (wider, narrower) = self.off(n);
            wider.max(narrower)
        };
        let (a, b) = (balance.clamp(fewest, most), (balance + 1).clamp(fewest, most));
        if worst(b) < worst(a) { b } else { a }
    }

    fn refusal(&self, n: i128) -> Error {
        let (wider, narrower) = self.off(n);
        let text = |pm: i128| Length::from_pm(i64::try_from(pm).unwrap_or(i64::MAX));
        let fault = |path: &str, asked: Length, needed: i128, way: &str| {
            Error::new(ErrorKind::Impossible, format!("the edge is further out of square than the panels can be {way}"))
                .at(path)
                .value_of(asked)
                .accepts(format!("at least {}, with {n} panels", text(needed)))
                .cured_by("a ripped panel at the edge, or a panel that allows more")
        };
        let mut faults = Faults::default();
        if wider > i128::from(self.wider.pm()) {
            faults.add(fault("wider", self.wider, wider, "drawn out"));
        }
        if narrower > i128::from(self.narrower.pm()) {
            faults.add(fault("narrower", self.narrower, narrower, "pushed together"));
        }
        faults.check().err().unwrap_or_else(|| Error::new(ErrorKind::Internal, "a taper is refused without a reason"))
    }

    fn count(&self) -> Result<(u32, u32, u32), Error> {
        let (fewest, most) = self.range();
        if most > PANELS || fewest > PANELS {
            return Err(Error::new(ErrorKind::TooLarge, "the coverage gives too many panels")
                .at("coverage")
                .value_of(self.coverage)
                .accepts(format!("at most {PANELS} panels")));
        }
        let n = match self.panels {
            Some(n) => i128::from(n),
            None if fewest > most => return Err(self.refusal(self.nearest(1, PANELS))),
            None => self.nearest(fewest.max(1), most),
        };
        if n < fewest || n > most {
            return Err(if fewest > most {
                self.refusal(n)
            } else {
                Error::new(ErrorKind::Impossible, "so many panels would be further from their coverage than they allow")
                    .at("panels")
                    .value_of(n)
                    .accepts(format!("{fewest} to {most}"))
            });
        }
        let small = |n: i128| u32::try_from(n).map_err(|_| Error::new(ErrorKind::Internal, "a number of panels is out of range").value_of(n));
        Ok((small(n)?, small(fewest.max(1))?, small(most)?))
    }
}

impl Calculation for TaperedLay {
    type Out = TaperedPanels;

    fn title(&self) -> String {
        format!("panels between edges {} and {} apart", self.foot, self.head)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<TaperedPanels, Error> {
        self.check()?;
        let (panels, fewest, most) = self.count()?;
        let (foot, head) = (self.foot.station(1, panels)?, self.head.station(1, panels)?);
        let out = (self.head - self.foot).length()?;
        let (foot_off, head_off) = ((foot - self.coverage).length()?, (head - self.coverage).length()?);
        for (what, apart, each, off) in [("at the foot", self.foot, foot, foot_off), ("at the head", self.head, head, head_off)] {
            r.step(|| {
                let step = Step::new(format!("each panel covers {what}")).formula("between the edges / panels").with("between the edges", apart);
                step.with("panels", panels).with("more than its coverage", off).gives(each).source(Source::geometry())
            });
        }
        let out_of_square = Angle::degrees_from(num::atan2_deg(out.mm(), self.run.mm()))?;
        r.step(|| Step::new("out of square").formula("atan((head - foot) / run)").with("head - foot", out).with("run", self.run).gives(out_of_square));
        let marks =
            (0..=panels).map(|k| Ok(TaperMark { foot: self.foot.station(k, panels)?, head: self.head.station(k, panels)? })).collect::<Result<_, Error>>()?;
        Ok(TaperedPanels { panels, fewest, most, foot, head, foot_off, head_off, taper: out.station(1, panels)?, out_of_square, marks })
    }
}
