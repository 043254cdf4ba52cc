//! What hems, wired edges and seams take, as the trade's books give it: sums of widths that leave the thickness out.

use super::cautions::{SHARE_FROM_MEMORY, THICKNESS_LEFT_OUT};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Seen, Source, Step};
use crate::units::Length;

static HEM: Source = Source::published("NAVEDTRA 14251, Steelworker vol. 2", "1996", "chapter 2, figure 2-54", Seen::Text);
pub(super) static DOUBLE_HEM: Source = Source::published("NAVEDTRA 14251, Steelworker vol. 2", "1996", "chapter 2, figure 2-55", Seen::Text);
pub(super) static WIRED: Source = Source::published("NAVEDTRA 14251, Steelworker vol. 2", "1996", "chapter 2, figure 2-56", Seen::Text);
static GROOVED: Source = Source::published("a metalworker's note on lock seams", "", "three times the seam's width", Seen::Text);
static GROOVED_SHARE: Source = Source::published("NAVEDTRA 14251, Steelworker vol. 2", "1996", "chapter 2: half on each side", Seen::Memory);
// With a lock of 1/4 in the manuals' 1 1/4 and 1 1/2 in for a seam of 1 in, 1 and 1 1/4 in for one of 3/4 in; with one of 3/8 in the
// second upstand of 1 3/4 in for a seam of 1 in of UFGS-07600, p. 14. One rule, two widths of lock.
static DOUBLE_LOCK: Source = Source::published("Copper Roofings: A Manual", "1920s", "p. 6", Seen::Derived);

/// An edge or a seam whose metal a book gives as a sum of widths.
///
/// | kind | first | second | together |
/// |---|---|---|---|
/// | `Hem` | W | - | W |
/// | `DoubleHem` | W | W | 2 W |
/// | `WiredEdge` | 2 1/2 d | - | 2 1/2 d |
/// | `GroovedSeam` | 1 1/2 w | 1 1/2 w | 3 w |
/// | `SingleLock`, `DoubleLock` | H + w, the low upstand | H + 2 w, the high one | 2 H + 3 w |
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::NominalSeam;
/// use seamwright::units::Length;
/// // The copper manuals: upstands of 1 1/4 and 1 1/2 in.
/// let metal = NominalSeam::DoubleLock { height: Length::inches(1), lock: Length::parse("1/4\"")? }.compute()?;
/// assert_eq!((metal.first, metal.second), (Length::parse("1 1/4\"")?, Length::parse("1 1/2\"")?));
/// // UFGS-07600: a second upstand of 1 3/4 in is the same rule with a lock of 3/8 in.
/// assert_eq!(NominalSeam::DoubleLock { height: Length::inches(1), lock: Length::parse("3/8\"")? }.compute()?.second, Length::parse("1 3/4\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[non_exhaustive]
pub enum NominalSeam {
    /// A hem folded once.
    Hem {
        /// From the outside of the fold to the sheet's edge.
        width: Length,
    },
    /// A hem folded over twice.
    DoubleHem {
        /// From fold to fold.
        width: Length,
    },
    /// An edge curled round a wire.
    WiredEdge {
        /// Diameter of the wire.
        wire: Length,
    },
    /// Two hooks locked into each other and flattened: four layers at the joint.
    GroovedSeam {
        /// Width of the lock.
        lock: Length,
    },
    /// A standing seam folded once.
    SingleLock {
        /// From the pan to the top of the finished seam.
        height: Length,
        /// Width of the lock.
        lock: Length,
    },
    /// A standing seam folded twice.
    DoubleLock {
        /// From the pan to the top of the finished seam.
        height: Length,
        /// Width of the lock.
        lock: Length,
    },
}

/// What an edge or a seam takes on each side.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::NominalSeam;
/// use seamwright::units::Length;
/// let metal = NominalSeam::GroovedSeam { lock: Length::parse("1/4\"")? }.compute()?;
/// assert_eq!((metal.first, metal.total), (Length::parse("3/8\"")?, Length::parse("3/4\"")?));
/// assert!(metal.cautions.iter().any(|c| c.code().name == "share-from-memory"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct SeamMetal {
    /// The one side, or the low upstand, or the first strip of a hem.
    pub first: Length,
    /// The other side, or the high upstand, or the second strip of a hem; nothing where there is none.
    pub second: Length,
    /// Together.
    pub total: Length,
    /// What must be known beside the numbers.
    pub cautions: Vec<Caution>,
}

impl NominalSeam {
    /// The kind's name.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            NominalSeam::Hem { .. } => "hem",
            NominalSeam::DoubleHem { .. } => "double hem",
            NominalSeam::WiredEdge { .. } => "wired edge",
            NominalSeam::GroovedSeam { .. } => "grooved seam",
            NominalSeam::SingleLock { .. } => "single-lock standing seam",
            NominalSeam::DoubleLock { .. } => "double-lock standing seam",
        }
    }

    /// Where the sum comes from.
    #[must_use]
    pub fn source(&self) -> Source {
        match self {
            NominalSeam::Hem { .. } => HEM.clone(),
            NominalSeam::DoubleHem { .. } => DOUBLE_HEM.clone(),
            NominalSeam::WiredEdge { .. } => WIRED.clone(),
            NominalSeam::GroovedSeam { .. } => GROOVED.clone(),
            NominalSeam::SingleLock { .. } => Source::geometry(),
            NominalSeam::DoubleLock { .. } => DOUBLE_LOCK.clone(),
        }
    }

    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        match self {
            NominalSeam::Hem { width } => drop(faults.keep(width.positive("hem.width"))),
            NominalSeam::DoubleHem { width } => drop(faults.keep(width.positive("double-hem.width"))),
            NominalSeam::WiredEdge { wire } => drop(faults.keep(wire.positive("wired-edge.wire"))),
            NominalSeam::GroovedSeam { lock } => drop(faults.keep(lock.positive("grooved-seam.lock"))),
            NominalSeam::SingleLock { height, lock } | NominalSeam::DoubleLock { height, lock } => {
                let kind = if matches!(self, NominalSeam::SingleLock { .. }) { "single-lock" } else { "double-lock" };
                faults.keep(height.positive(&format!("{kind}.height")));
                faults.keep(lock.positive(&format!("{kind}.lock")));
                if lock >= height && height.is_positive() {
                    faults.add(
                        Error::new(ErrorKind::Conflict, "the lock is as wide as the seam is high")
                            .at(format!("{kind}.lock"))
                            .value_of(lock)
                            .accepts(format!("less than the seam height, {height}")),
                    );
                }
            }
        }
        faults.check()
    }

    /// What each side takes, by the formula that its worksheet shows.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range of a length.
    pub(crate) fn sides(&self) -> Result<(Length, Length), Error> {
        Ok(match *self {
            NominalSeam::Hem { width } => (width, Length::ZERO),
            NominalSeam::DoubleHem { width } => (width, width),
            NominalSeam::WiredEdge { wire } => ((wire * 5).length()?.station(1, 2)?, Length::ZERO),
            NominalSeam::GroovedSeam { lock } => {
                let all = (lock * 3).length()?;
                let half = all.station(1, 2)?;
                (half, (all - half).length()?)
            }
            NominalSeam::SingleLock { height, lock } | NominalSeam::DoubleLock { height, lock } => ((height + lock).length()?, (height + lock * 2).length()?),
        })
    }
}

impl Calculation for NominalSeam {
    type Out = SeamMetal;

    fn title(&self) -> String {
        format!("metal of a {}", self.name())
    }

    /// # Errors
    /// [`ErrorKind::OutOfRange`] for widths of zero or less, [`ErrorKind::Conflict`] for a lock as wide as its seam is high; all at once.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<SeamMetal, Error> {
        self.check()?;
        let (first, second) = self.sides()?;
        let total = (first + second).length()?;
        r.step(|| {
            let step = Step::new(format!("{}, first side", self.name()));
            let step = match self {
                NominalSeam::Hem { width } | NominalSeam::DoubleHem { width } => step.formula("W").with("W", width),
                NominalSeam::WiredEdge { wire } => step.formula("2 1/2 d").with("d", wire),
                NominalSeam::GroovedSeam { lock } => step.formula("1 1/2 w").with("w", lock),
                NominalSeam::SingleLock { height, lock } | NominalSeam::DoubleLock { height, lock } => step.formula("H + w").with("H", height).with("w", lock),
            };
            step.gives(first).source(self.source())
        });
        if second.is_positive() {
            r.step(|| {
                let step = Step::new(format!("{}, second side", self.name()));
                let (step, source) = match self {
                    NominalSeam::GroovedSeam { lock } => (step.formula("1 1/2 w").with("w", lock), GROOVED_SHARE.clone()),
                    NominalSeam::SingleLock { height, lock } | NominalSeam::DoubleLock { height, lock } => {
                        (step.formula("H + 2 w").with("H", height).with("w", lock), self.source())
                    }
                    NominalSeam::Hem { width } | NominalSeam::DoubleHem { width } => (step.formula("W").with("W", width), self.source()),
                    NominalSeam::WiredEdge { wire } => (step.with("d", wire), self.source()),
                };
                step.gives(second).source(source)
            });
        }
        r.step(|| Step::new(format!("{} in all", self.name())).formula("both sides").gives(total).source(self.source()));
        let mut cautions = vec![Caution::new(THICKNESS_LEFT_OUT, "", self.source())];
        if matches!(self, NominalSeam::GroovedSeam { .. }) {
            cautions.push(Caution::new(SHARE_FROM_MEMORY, "", GROOVED_SHARE.clone()));
        }
        Ok(SeamMetal { first, second, total, cautions })
    }
}
