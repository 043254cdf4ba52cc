//! Spacing from load, and the check of a given spacing.

use super::cautions::{NOT_ENGINEERED, RESTS_ON_MEMORY};
use super::level::{AllowableResistance, DesignResistance, ServicePressure, StrengthPressure, positive};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{Area, AreaUnit, Force, ForceUnit, Length, Pressure, PressureUnit};

/// Statics of a uniform pressure shared by fasteners in a row.
const STATICS: Source = Source::published("statics", "", "uniform pressure on a tributary area", crate::record::Seen::Derived);

/// A pressure and a resistance of the same level.
///
/// ```
/// use seamwright::fastener::{AllowableResistance, LoadCase, ServicePressure};
/// use seamwright::record::Source;
/// use seamwright::units::{Force, Pressure};
/// let case = LoadCase::Service {
///     pressure: ServicePressure(Pressure::parse("30 psf")?),
///     resistance: AllowableResistance { force: Force::parse("150 lbf")?, document: Source::user(), factor: None },
/// };
/// assert!(matches!(case, LoadCase::Service { .. }));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum LoadCase {
    /// Service loads against allowable resistance.
    Service {
        /// The pressure.
        pressure: ServicePressure,
        /// The resistance of one fastener or clip.
        resistance: AllowableResistance,
    },
    /// Strength-level loads against design resistance.
    Strength {
        /// The pressure.
        pressure: StrengthPressure,
        /// The resistance of one fastener or clip.
        resistance: DesignResistance,
    },
}

impl LoadCase {
    fn parts(&self) -> (Pressure, Force, &Source, Option<&Source>) {
        match self {
            LoadCase::Service { pressure, resistance } => (pressure.0, resistance.force, &resistance.document, resistance.factor.as_ref().map(|f| &f.source)),
            LoadCase::Strength { pressure, resistance } => (pressure.0, resistance.force, &resistance.document, resistance.factor.as_ref().map(|f| &f.source)),
        }
    }

    fn level(&self) -> &'static str {
        match self {
            LoadCase::Service { .. } => "service level, allowable resistance",
            LoadCase::Strength { .. } => "strength level, design resistance",
        }
    }

    fn validate(&self) -> Result<(), Error> {
        let (pressure, force, ..) = self.parts();
        let mut faults = Faults::default();
        if pressure <= Pressure::ZERO {
            faults.add(
                Error::new(ErrorKind::OutOfRange, "a pressure away from the roof must be more than zero")
                    .at("pressure")
                    .value_of(pressure)
                    .accepts("more than 0 Pa"),
            );
        }
        faults.keep(positive(force, "resistance.force"));
        faults.check().map_err(|e| e.under("case"))
    }

    fn cautions(&self) -> Vec<Caution> {
        let (_, _, document, factor) = self.parts();
        let mut out = Vec::new();
        if matches!(document, Source::CommonPractice | Source::User { .. }) {
            out.push(Caution::new(NOT_ENGINEERED, "case.resistance", document.clone()).arg("source", document));
        }
        for source in [Some(document), factor].into_iter().flatten().filter(|s| s.rests_on_memory()) {
            out.push(Caution::new(RESTS_ON_MEMORY, "case.resistance", source.clone()).arg("source", source));
        }
        out
    }
}

/// A spacing that may not be exceeded whatever the load.
///
/// ```
/// use seamwright::fastener::SpacingCap;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let cap = SpacingCap { spacing: Length::inches(30), source: Source::user() };
/// assert_eq!(cap.spacing, Length::inches(30));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SpacingCap {
    /// The greatest spacing on centre.
    pub spacing: Length,
    /// Who sets it.
    pub source: Source,
}

/// The greatest spacing of fasteners along a line that the load allows: s = R / (p w), under a cap where there is one.
///
/// # Errors
/// Computing refuses a pressure, resistance, width or cap of zero or less ([`ErrorKind::OutOfRange`]), and a spacing beyond the range of a
/// length ([`ErrorKind::Overflow`]).
///
/// ```
/// use seamwright::fastener::{AllowableResistance, LoadCase, ServicePressure, SpacingFromLoad};
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Force, Length, LengthUnit, Pressure};
/// let case = LoadCase::Service {
///     pressure: ServicePressure(Pressure::parse("50 psf")?),
///     resistance: AllowableResistance { force: Force::parse("150 lbf")?, document: Source::user(), factor: None },
/// };
/// // 150 lbf / (50 psf x 1.5 ft) = 2 ft.
/// let found = SpacingFromLoad { case, width: Length::inches(18), cap: None }.compute()?;
/// assert!((found.by_load.get(LengthUnit::Foot) - 2.0).abs() < 1e-9);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SpacingFromLoad {
    /// The pressure and the resistance.
    pub case: LoadCase,
    /// The width that each fastener takes, square to the line: for clips in seams, the coverage.
    pub width: Length,
    /// A spacing not to be exceeded.
    #[cfg_attr(feature = "serde", serde(default))]
    pub cap: Option<SpacingCap>,
}

/// A spacing from load.
///
/// ```
/// use seamwright::fastener::{AllowableResistance, LoadCase, ServicePressure, SpacingFromLoad};
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Force, Length, Pressure};
/// let case = LoadCase::Service {
///     pressure: ServicePressure(Pressure::parse("50 psf")?),
///     resistance: AllowableResistance { force: Force::parse("160 lbf")?, document: Source::CommonPractice, factor: None },
/// };
/// let found = SpacingFromLoad { case, width: Length::inches(18), cap: None }.compute()?;
/// assert!(!found.capped);
/// assert_eq!(found.cautions[0].code().name, "not-engineered");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct LoadSpacing {
    /// What the load alone allows.
    pub by_load: Length,
    /// What may be used: the lesser of that and the cap.
    pub greatest: Length,
    /// Whether the cap governs.
    pub capped: bool,
    /// What to know before it is built.
    pub cautions: Vec<Caution>,
}

impl Calculation for SpacingFromLoad {
    type Out = LoadSpacing;

    fn title(&self) -> String {
        "fastener spacing from load".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<LoadSpacing, Error> {
        let mut faults = Faults::default();
        faults.keep(self.case.validate());
        faults.keep(self.width.positive("width"));
        if let Some(cap) = &self.cap {
            faults.keep(cap.spacing.positive("cap.spacing"));
        }
        faults.check()?;
        let (pressure, force, document, _) = self.case.parts();
        // N / (Pa mm) is 1e6 / mm of N/(N/mm2).
        let by_load =
            Length::from_mm(force.get(ForceUnit::Newton) * 1e6 / (pressure.get(PressureUnit::Pascal) * self.width.mm())).map_err(|e| e.under("case"))?;
        r.step(|| {
            Step::new(format!("spacing by load ({})", self.case.level()))
                .formula("R / (p w)")
                .with("R", force)
                .with("R from", document)
                .with("p", pressure)
                .with("w", self.width)
                .gives(by_load)
                .source(STATICS)
        });
        if !by_load.is_positive() {
            return Err(Error::new(ErrorKind::Impossible, "no spacing is close enough for this load")
                .at("case.resistance.force")
                .value_of(force)
                .accepts("a greater resistance"));
        }
        let (greatest, capped) = match &self.cap {
            Some(cap) if cap.spacing < by_load => (cap.spacing, true),
            _ => (by_load, false),
        };
        if let Some(cap) = &self.cap {
            r.step(|| {
                Step::new("spacing under the cap")
                    .formula("least(by load, cap)")
                    .with("by load", by_load)
                    .with("cap", cap.spacing)
                    .gives(greatest)
                    .source(cap.source.clone())
            });
        }
        Ok(LoadSpacing { by_load, greatest, capped, cautions: self.case.cautions() })
    }
}

/// The check of a given spacing against the load.
///
/// # Errors
/// Computing refuses a pressure, resistance, width or spacing of zero or less ([`ErrorKind::OutOfRange`]).
///
/// ```
/// use seamwright::fastener::{DesignResistance, FastenerCheck, LoadCase, StrengthPressure};
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{AreaUnit, Force, Length, Pressure};
/// let case = LoadCase::Strength {
///     pressure: StrengthPressure(Pressure::parse("60 psf")?),
///     resistance: DesignResistance { force: Force::parse("100 lbf")?, document: Source::user(), factor: None },
/// };
/// let v = FastenerCheck { case, width: Length::inches(18), spacing: Length::inches(16) }.compute()?;
/// assert!((v.area.get(AreaUnit::SquareFoot) - 2.0).abs() < 1e-12);
/// assert!(!v.holds);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct FastenerCheck {
    /// The pressure and the resistance.
    pub case: LoadCase,
    /// The width that each fastener takes, square to the line.
    pub width: Length,
    /// The spacing on centre.
    pub spacing: Length,
}

/// Whether a spacing carries its load.
///
/// ```
/// use seamwright::fastener::{AllowableResistance, FastenerCheck, LoadCase, ServicePressure};
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Force, Length, Pressure};
/// let case = LoadCase::Service {
///     pressure: ServicePressure(Pressure::parse("50 psf")?),
///     resistance: AllowableResistance { force: Force::parse("160 lbf")?, document: Source::CommonPractice, factor: None },
/// };
/// let verdict = FastenerCheck { case, width: Length::inches(18), spacing: Length::inches(24) }.compute()?;
/// assert!(verdict.holds && verdict.use_ratio < 1.0);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct FastenerVerdict {
    /// Whether the demand is not more than the resistance.
    pub holds: bool,
    /// The area that each fastener takes.
    pub area: Area,
    /// The force on each fastener, at the level of the case.
    pub demand: Force,
    /// Demand over resistance.
    pub use_ratio: f64,
    /// What to know before it is built.
    pub cautions: Vec<Caution>,
}

impl Calculation for FastenerCheck {
    type Out = FastenerVerdict;

    fn title(&self) -> String {
        "check of a fastener spacing".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<FastenerVerdict, Error> {
        let mut faults = Faults::default();
        faults.keep(self.case.validate());
        faults.keep(self.width.positive("width"));
        faults.keep(self.spacing.positive("spacing"));
        faults.check()?;
        let (pressure, force, document, _) = self.case.parts();
        let area = self.width.times(self.spacing);
        r.step(|| Step::new("tributary area").formula("w s").with("w", self.width).with("s", self.spacing).gives(area).source(STATICS));
        let demand =
            Force::new(pressure.get(PressureUnit::Pascal) * area.get(AreaUnit::SquareMetre), ForceUnit::Newton).map_err(|e| e.under("case.pressure"))?;
        r.step(|| Step::new(format!("force on each ({})", self.case.level())).formula("p A").with("p", pressure).with("A", area).gives(demand).source(STATICS));
        let use_ratio = demand.get(ForceUnit::Newton) / force.get(ForceUnit::Newton);
        if !use_ratio.is_finite() {
            return Err(Error::new(ErrorKind::Overflow, "the resistance is too small to compare")
                .at("case.resistance.force")
                .value_of(force)
                .accepts("a greater resistance"));
        }
        r.step(|| Step::new("use").formula("demand / R").with("demand", demand).with("R", force).with("R from", document).gives(use_ratio));
        Ok(FastenerVerdict { holds: demand <= force, area, demand, use_ratio, cautions: self.case.cautions() })
    }
}
