//! The cross-section of a panel and its developed width.

use super::cautions::THICKNESS_IGNORED;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Seen, Source, Step};
use crate::trim::NominalSeam;
use crate::units::Length;

const DOUBLE_LOCK: Source = Source::published("Copper Roofings: A Manual", "1920s", "p. 6", Seen::Derived);
const SINGLE_LOCK: Source = Source::geometry();

/// One upturned leg of a snap-lock panel, as its drawing gives it.
///
/// ```
/// use seamwright::panel::Leg;
/// use seamwright::units::Length;
/// let female = Leg { upstand: Length::parse("1 3/4\"")?, folds: Length::parse("7/8\"")? };
/// assert_eq!(female.developed()?, Length::parse("2 5/8\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Leg {
    /// From the pan up, measured along the leg where it leans.
    pub upstand: Length,
    /// Everything after the upstand: the top, returns, hooks, and the screw flange if the leg has one.
    pub folds: Length,
}

impl Leg {
    /// The sheet that the leg takes.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range.
    pub fn developed(&self) -> Result<Length, Error> {
        (self.upstand + self.folds).length()
    }
}

/// How two panels join.
///
/// ```
/// use seamwright::panel::Seam;
/// use seamwright::units::Length;
/// let seam = Seam::DoubleLock { lock: Length::inches_64(16) };
/// assert_eq!(seam.name(), "double-lock");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Seam {
    /// The female leg snaps over the male one.
    SnapLock {
        /// The leg that is lapped over.
        male: Leg,
        /// The leg that laps over.
        female: Leg,
        /// Width of the closed seam where it stands on the pan; coverage less this is the flat of the pan.
        foot: Length,
    },
    /// Folded once on the roof, by 90 degrees: the flanges lie level on the seam.
    SingleLock {
        /// Width of the lock.
        lock: Length,
    },
    /// Folded twice on the roof, by 180 degrees: the flanges lie against the upstand.
    DoubleLock {
        /// Width of the lock.
        lock: Length,
    },
    /// Two upturned legs with a batten, or a hollow, between them and a cap of its own over both.
    Batten {
        /// Between the two legs.
        width: Length,
        /// The leg of the panel, alike on both sides.
        leg: Leg,
        /// How much metal the cap takes on each side beyond the batten's width.
        cap_leg: Length,
    },
}

impl Seam {
    /// The kind's name.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            Seam::SnapLock { .. } => "snap-lock",
            Seam::SingleLock { .. } => "single-lock",
            Seam::DoubleLock { .. } => "double-lock",
            Seam::Batten { .. } => "batten",
        }
    }
}

/// A standing-seam panel in cross-section.
///
/// ```
/// use seamwright::panel::{Panel, Seam};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// // The published case: 24 in sheets with 1 in double-lock seams cover 21 1/4 in.
/// let seam = Seam::DoubleLock { lock: Length::parse("1/4\"")? };
/// let panel = Panel::from_coil(Length::inches(24), Length::inches(1), seam)?;
/// assert_eq!(panel.coverage, Length::parse("21 1/4\"")?);
/// assert_eq!(panel.compute()?.total, Length::inches(24));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Panel {
    /// Seam to seam, across the slope.
    pub coverage: Length,
    /// From the pan to the top of the finished seam.
    pub seam_height: Length,
    /// How panels join.
    pub seam: Seam,
    /// Sheet taken up by beads or ribs in the pan, beyond its flat width; zero for a flat pan.
    #[cfg_attr(feature = "serde", serde(default))]
    pub ribs: Length,
}

/// The sheet that a panel takes across, by its parts.
///
/// ```
/// use seamwright::panel::{Panel, Seam};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// let width = panel.compute()?;
/// assert_eq!((width.low_leg, width.high_leg), (Length::parse("1 1/4\"")?, Length::parse("1 1/2\"")?));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct DevelopedWidth {
    /// The pan with its beads and ribs.
    pub pan: Length,
    /// The leg that is lapped over.
    pub low_leg: Length,
    /// The leg that laps over.
    pub high_leg: Length,
    /// All of it: the coil width.
    pub total: Length,
    /// The coil width of a batten's cap; `None` for seams without one.
    pub cap: Option<Length>,
    /// What to know before a coil is ordered by it.
    pub cautions: Vec<Caution>,
}

/// Heights square to the roof plane, from the support's surface.
///
/// ```
/// use seamwright::panel::{Panel, Seam};
/// use seamwright::units::Length;
/// let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// let levels = panel.levels(Length::mils(500), Length::mils(24))?;
/// assert_eq!((levels.underside, levels.pan, levels.seam_top), (Length::mils(500), Length::mils(524), Length::mils(1524)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Levels {
    /// Underside of the pan.
    pub underside: Length,
    /// Upper face of the pan.
    pub pan: Length,
    /// Top of the seam.
    pub seam_top: Length,
}

impl Panel {
    /// A panel with a flat pan.
    ///
    /// # Errors
    /// As [`Panel::check`].
    pub fn new(coverage: Length, seam_height: Length, seam: Seam) -> Result<Panel, Error> {
        let panel = Panel { coverage, seam_height, seam, ribs: Length::ZERO };
        panel.check()?;
        Ok(panel)
    }

    /// The panel with a flat pan that uses this coil width up: its coverage is what the legs leave.
    ///
    /// # Errors
    /// As [`Panel::check`]; [`ErrorKind::Impossible`] where the legs alone take the coil.
    pub fn from_coil(coil_width: Length, seam_height: Length, seam: Seam) -> Result<Panel, Error> {
        coil_width.positive("coil_width")?;
        let panel = Panel { coverage: coil_width, seam_height, seam, ribs: Length::ZERO };
        panel.check()?;
        let (low, high) = panel.legs()?;
        let coverage = (coil_width - low - high + panel.foot_of_pan()).length()?;
        if !coverage.is_positive() {
            return Err(Error::new(ErrorKind::Impossible, "the legs take the whole coil")
                .at("coil_width")
                .value_of(coil_width)
                .accepts(format!("more than {}", (low + high - panel.foot_of_pan()).length()?)));
        }
        Panel::new(coverage, seam_height, seam)
    }

    /// Whether the section can be.
    ///
    /// # Errors
    /// Every fault at once: [`ErrorKind::OutOfRange`] for lengths that are not more than zero (or negative, where zero has a meaning),
    /// [`ErrorKind::Conflict`] for a seam as wide as the coverage, a lock as wide as the seam is high, or a leg that cannot reach the top.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.coverage.positive("coverage"));
        faults.keep(self.seam_height.positive("seam_height"));
        faults.keep(self.ribs.not_negative("ribs"));
        match self.seam {
            Seam::SnapLock { male, female, foot } => {
                faults.keep(foot.not_negative("seam.foot"));
                for (name, leg) in [("male", male), ("female", female)] {
                    faults.keep(leg.upstand.positive(&format!("seam.{name}.upstand")));
                    faults.keep(leg.folds.not_negative(&format!("seam.{name}.folds")));
                }
                self.leg_reaches(female, "seam.female", &mut faults);
                self.narrower_than_coverage(foot, "seam.foot", &mut faults);
            }
            Seam::SingleLock { lock } | Seam::DoubleLock { lock } => {
                faults.keep(lock.positive("seam.lock"));
                if lock >= self.seam_height && self.seam_height.is_positive() {
                    faults.add(
                        Error::new(ErrorKind::Conflict, "the lock is as wide as the seam is high")
                            .at("seam.lock")
                            .value_of(lock)
                            .accepts(format!("less than the seam height, {}", self.seam_height)),
                    );
                }
            }
            Seam::Batten { width, leg, cap_leg } => {
                faults.keep(width.positive("seam.width"));
                faults.keep(leg.upstand.positive("seam.leg.upstand"));
                faults.keep(leg.folds.not_negative("seam.leg.folds"));
                faults.keep(cap_leg.not_negative("seam.cap_leg"));
                self.narrower_than_coverage(width, "seam.width", &mut faults);
            }
        }
        faults.check()
    }

    fn narrower_than_coverage(&self, width: Length, path: &str, faults: &mut Faults) {
        if width >= self.coverage && self.coverage.is_positive() {
            faults.add(
                Error::new(ErrorKind::Conflict, "the seam leaves no pan")
                    .at(path)
                    .value_of(width)
                    .accepts(format!("less than the coverage, {}", self.coverage)),
            );
        }
    }

    fn leg_reaches(&self, leg: Leg, path: &str, faults: &mut Faults) {
        if let Ok(developed) = leg.developed()
            && developed < self.seam_height
        {
            faults.add(
                Error::new(ErrorKind::Conflict, "the leg that laps over does not reach the top of the seam")
                    .at(path)
                    .value_of(developed)
                    .accepts(format!("at least the seam height, {}", self.seam_height)),
            );
        }
    }

    /// The part of the coverage that is seam and not pan. Folded seams are taken as having no width at their foot, as the published allowances do.
    fn foot_of_pan(&self) -> Length {
        match self.seam {
            Seam::SnapLock { foot, .. } => foot,
            Seam::SingleLock { .. } | Seam::DoubleLock { .. } => Length::ZERO,
            Seam::Batten { width, .. } => width,
        }
    }

    /// Developed low and high leg.
    fn legs(&self) -> Result<(Length, Length), Error> {
        Ok(match self.seam {
            Seam::SnapLock { male, female, .. } => (male.developed()?, female.developed()?),
            Seam::SingleLock { lock } => NominalSeam::SingleLock { height: self.seam_height, lock }.sides()?,
            Seam::DoubleLock { lock } => NominalSeam::DoubleLock { height: self.seam_height, lock }.sides()?,
            Seam::Batten { leg, .. } => (leg.developed()?, leg.developed()?),
        })
    }

    /// Width of the closed seam where it stands on the pan: what a closure between two seams has to clear. A folded seam is two sheets thick there.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a thickness that is not more than zero, [`ErrorKind::Overflow`] beyond the range.
    ///
    /// ```
    /// use seamwright::panel::{Panel, Seam};
    /// use seamwright::units::Length;
    /// let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::SingleLock { lock: Length::inches_64(24) })?;
    /// assert_eq!(panel.seam_foot(Length::mils(24))?, Length::mils(48));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn seam_foot(&self, thickness: Length) -> Result<Length, Error> {
        thickness.positive("thickness")?;
        match self.seam {
            Seam::SnapLock { foot, .. } => Ok(foot),
            Seam::SingleLock { .. } | Seam::DoubleLock { .. } => (thickness * 2).length(),
            Seam::Batten { width, .. } => Ok(width),
        }
    }

    /// The panel's levels above what carries it: a deck with its underlayment, or the supports that clips stand it off.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a negative stand-off or a thickness that is not more than zero, [`ErrorKind::Overflow`] beyond the range.
    ///
    /// ```
    /// use seamwright::panel::{Panel, Seam};
    /// use seamwright::units::Length;
    /// let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::SingleLock { lock: Length::inches_64(24) })?;
    /// let levels = panel.levels(Length::ZERO, Length::mils(24))?;
    /// assert_eq!(levels.seam_top, Length::mils(2024));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn levels(&self, stand_off: Length, thickness: Length) -> Result<Levels, Error> {
        let mut faults = Faults::default();
        faults.keep(stand_off.not_negative("stand_off"));
        faults.keep(thickness.positive("thickness"));
        faults.check()?;
        let pan = (stand_off + thickness).length()?;
        Ok(Levels { underside: stand_off, pan, seam_top: (pan + self.seam_height).length()? })
    }
}

impl Calculation for Panel {
    type Out = DevelopedWidth;

    fn title(&self) -> String {
        format!("developed width of a {} panel, coverage {}", self.seam.name(), self.coverage)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<DevelopedWidth, Error> {
        self.check()?;
        let foot = self.foot_of_pan();
        let pan = (self.coverage - foot + self.ribs).length()?;
        r.step(|| {
            Step::new("pan")
                .formula("coverage - seam foot + ribs")
                .with("coverage", self.coverage)
                .with("seam foot", foot)
                .with("ribs", self.ribs)
                .gives(pan)
                .source(Source::geometry())
        });
        let (low_leg, high_leg) = self.legs()?;
        match self.seam {
            Seam::SingleLock { lock } | Seam::DoubleLock { lock } => {
                let source = || if matches!(self.seam, Seam::DoubleLock { .. }) { DOUBLE_LOCK } else { SINGLE_LOCK };
                let leg = |name, formula, out: Length| Step::new(name).formula(formula).with("H", self.seam_height).with("lock", lock).gives(out);
                r.step(|| leg("low leg", "H + lock", low_leg).source(source()));
                r.step(|| leg("high leg", "H + 2 lock", high_leg).source(source()));
            }
            Seam::SnapLock { male, female, .. } => {
                r.step(|| Step::new("low leg").formula("upstand + folds").with("upstand", male.upstand).with("folds", male.folds).gives(low_leg));
                r.step(|| Step::new("high leg").formula("upstand + folds").with("upstand", female.upstand).with("folds", female.folds).gives(high_leg));
            }
            Seam::Batten { leg, .. } => {
                r.step(|| Step::new("each leg").formula("upstand + folds").with("upstand", leg.upstand).with("folds", leg.folds).gives(low_leg));
            }
        }
        let total = (pan + low_leg + high_leg).length()?;
        r.step(|| {
            Step::new("coil width").formula("pan + low leg + high leg").with("pan", pan).with("low leg", low_leg).with("high leg", high_leg).gives(total)
        });
        let cap = match self.seam {
            Seam::Batten { width, cap_leg, .. } => {
                let cap = (width + cap_leg * 2).length()?;
                r.step(|| Step::new("cap").formula("width + 2 cap leg").with("width", width).with("cap leg", cap_leg).gives(cap));
                Some(cap)
            }
            Seam::SnapLock { .. } | Seam::SingleLock { .. } | Seam::DoubleLock { .. } => None,
        };
        let cautions = vec![Caution::new(THICKNESS_IGNORED, "panel", Source::CommonPractice).arg("width", total)];
        Ok(DevelopedWidth { pan, low_leg, high_leg, total, cap, cautions })
    }
}
