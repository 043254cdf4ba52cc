//! Springback: what a bend opens to when the tool lets go, and how far to go over.
//!
//! The elastic formula gives the ratio of the forming radius to the radius that is left, `Ri/Rf = 4 x^3 - 3 x + 1` with `x = Ri Y/(E T)`. At x = 1/2 the ratio is
//! nothing: the sheet springs back flat. The neutral length does not change, so the angle goes with `(2 Ri/T + 1)/(2 Rf/T + 1)`.

use super::cautions::FIGURE_FROM_MEMORY;
use super::size::to_length;
use super::springback_table::SpringbackMetal;
#[cfg(feature = "serde")]
use crate::error::told::Told;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Seen, Source, Step};
use crate::units::{Angle, BendAngle, Length, Pressure, PressureUnit};

static RADIUS_RATIO: Source = Source::published(
    "a web page on springback",
    "",
    "Ri/Rf = 4 x^3 - 3 x + 1; that it comes from Kalpakjian and Schmid's textbook of manufacturing is recalled",
    Seen::Secondary,
);
static ANGLE_RATIO: Source =
    Source::published("Kalpakjian and Schmid, textbook of manufacturing", "", "springback factor Ks = (2 Ri/T + 1)/(2 Rf/T + 1)", Seen::Memory);
static FORMING_RADIUS: Source = Source::published("a German metal-trades table book", "", "springback: forming radius r1 = kR (r2 + s/2) - s/2", Seen::Memory);

/// 4 x^3 - 3 x + 1, positive for x less than 1/2.
fn radius_ratio(x: f64) -> f64 {
    (4.0 * x * x - 3.0) * x + 1.0
}

/// (2 R/T + 1), the neutral radius in half thicknesses.
fn neutral(radius: Length, thickness: Length) -> f64 {
    2.0 * radius.mm() / thickness.mm() + 1.0
}

fn check_angle(angle: BendAngle, faults: &mut Faults) {
    if angle.degrees() <= 0.0 {
        faults.add(Error::new(ErrorKind::OutOfRange, "a bend of nothing is no bend").at("angle").value_of(angle).accepts("more than 0 deg from flat"));
    }
}

fn check_pressure(value: Pressure, path: &str, faults: &mut Faults) {
    if value.get(PressureUnit::Pascal) <= 0.0 {
        faults.add(Error::new(ErrorKind::OutOfRange, "must be more than zero").at(path).value_of(value).accepts("more than 0 Pa"));
    }
}

/// Y/E; what no metal has is refused.
fn strain(yield_strength: Pressure, modulus: Pressure, path: &str) -> Result<f64, Error> {
    let strain = yield_strength.get(PressureUnit::Pascal) / modulus.get(PressureUnit::Pascal);
    if strain > 0.0 && strain < 1.0 {
        return Ok(strain);
    }
    Err(Error::new(ErrorKind::Conflict, "no metal yields at such a share of its modulus")
        .at(path)
        .value_of(yield_strength)
        .accepts(format!("more than nothing and less than the modulus, {modulus}")))
}

/// The caution that a figure was recalled and not read.
fn from_memory(source: &Source) -> Caution {
    Caution::new(FIGURE_FROM_MEMORY, "", source.clone()).arg("source", source)
}

/// What a bend formed to a radius and an angle springs back to.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::Springback;
/// use seamwright::units::{BendAngle, Length, Pressure};
/// let formed = Springback {
///     thickness: Length::parse("0.0359 in")?,
///     forming_radius: Length::parse("0.5 in")?,
///     forming_angle: BendAngle::SQUARE,
///     yield_strength: Pressure::parse("40 ksi")?,
///     modulus: Pressure::parse("29000 ksi")?,
/// };
/// let sprung = formed.compute()?;
/// assert!((sprung.radius_ratio - 0.942).abs() < 5e-4);
/// assert!(sprung.inside_radius > formed.forming_radius && sprung.angle < formed.forming_angle);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Springback {
    /// Thickness of the sheet.
    pub thickness: Length,
    /// Inside radius in the tool.
    pub forming_radius: Length,
    /// Angle in the tool, from flat.
    pub forming_angle: BendAngle,
    /// Yield strength of the metal.
    pub yield_strength: Pressure,
    /// Its modulus of elasticity.
    pub modulus: Pressure,
}

/// A bend that has sprung back.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::Springback;
/// use seamwright::units::{BendAngle, Length, Pressure};
/// let (thickness, forming_radius) = (Length::mils(24), Length::ZERO);
/// let (yield_strength, modulus) = (Pressure::parse("40 ksi")?, Pressure::parse("29000 ksi")?);
/// let sharp = Springback { thickness, forming_radius, forming_angle: BendAngle::SQUARE, yield_strength, modulus }.compute()?;
/// assert_eq!((sharp.strain_ratio, sharp.angle), (0.0, BendAngle::SQUARE));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Sprung {
    /// x = Ri Y/(E T).
    pub strain_ratio: f64,
    /// Forming radius to the radius that is left.
    pub radius_ratio: f64,
    /// The angle that is left to the forming angle.
    pub angle_ratio: f64,
    /// The inside radius that is left.
    pub inside_radius: Length,
    /// The angle that is left, from flat.
    pub angle: BendAngle,
    /// What must be known beside the numbers.
    pub cautions: Vec<Caution>,
}

impl Calculation for Springback {
    type Out = Sprung;

    fn title(&self) -> String {
        format!("springback from {} and {} in sheet {}", self.forming_angle, self.forming_radius, self.thickness)
    }

    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a thickness, a strength or a modulus of zero or less, a negative radius, an angle of nothing (all at once);
    /// [`ErrorKind::Conflict`] for a strength beyond the modulus; [`ErrorKind::Impossible`] for x of 1/2 or more, where nothing of the bend is left.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Sprung, Error> {
        let mut faults = Faults::default();
        faults.keep(self.thickness.positive("thickness"));
        faults.keep(self.forming_radius.not_negative("forming_radius"));
        if self.forming_angle.degrees() <= 0.0 {
            let e = Error::new(ErrorKind::OutOfRange, "a bend of nothing is no bend").at("forming_angle");
            faults.add(e.value_of(self.forming_angle).accepts("more than 0 deg from flat"));
        }
        check_pressure(self.yield_strength, "yield_strength", &mut faults);
        check_pressure(self.modulus, "modulus", &mut faults);
        faults.check()?;
        let strain = strain(self.yield_strength, self.modulus, "yield_strength")?;
        let x = self.forming_radius.mm() * strain / self.thickness.mm();
        r.step(|| strain_step(x, self.forming_radius, self.yield_strength, self.modulus, self.thickness));
        if x >= 0.5 {
            return Err(Error::new(ErrorKind::Impossible, "the sheet springs back flat: the bend stays elastic")
                .at("forming_radius")
                .value_of(self.forming_radius)
                .accepts(format!("less than {} mm: x = Ri Y/(E T) less than 0.5", 0.5 * self.thickness.mm() / strain)));
        }
        let ratio = radius_ratio(x);
        r.step(|| Step::new("radius ratio Ri/Rf").formula("4 x^3 - 3 x + 1").with("x", x).gives(ratio).source(RADIUS_RATIO.clone()));
        let inside_radius = to_length(self.forming_radius.mm() / ratio)?;
        r.step(|| Step::new("radius left Rf").formula("Ri / (Ri/Rf)").with("Ri", self.forming_radius).gives(inside_radius));
        let angle_ratio = neutral(self.forming_radius, self.thickness) / neutral(inside_radius, self.thickness);
        r.step(|| angle_step(angle_ratio, self.forming_radius, inside_radius, self.thickness));
        let angle = BendAngle::from_flat(Angle::degrees_from(self.forming_angle.degrees() * angle_ratio)?)?;
        r.step(|| Step::new("angle left Af").formula("Ks Ai").with("Ks", angle_ratio).with("Ai", self.forming_angle).gives(angle));
        Ok(Sprung { strain_ratio: x, radius_ratio: ratio, angle_ratio, inside_radius, angle, cautions: vec![from_memory(&ANGLE_RATIO)] })
    }
}

fn strain_step(x: f64, radius: Length, yield_strength: Pressure, modulus: Pressure, thickness: Length) -> Step {
    let step = Step::new("x").formula("Ri Y/(E T)").with("Ri", radius).with("Y", yield_strength).with("E", modulus).with("T", thickness);
    step.gives(x).source(RADIUS_RATIO.clone())
}

fn angle_step(ratio: f64, forming: Length, left: Length, thickness: Length) -> Step {
    let step = Step::new("angle ratio Ks").formula("(2 Ri/T + 1)/(2 Rf/T + 1)").with("Ri", forming).with("Rf", left).with("T", thickness);
    step.gives(ratio).source(ANGLE_RATIO.clone())
}

/// What is left of an angle after springback: the angle after by the angle while folding, both from flat.
///
/// ```
/// use seamwright::trim::SpringbackFactor;
/// assert_eq!(SpringbackFactor::new(0.98)?.value(), 0.98);
/// assert!(SpringbackFactor::new(1.02).is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "GivenFactor", into = "f64"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SpringbackFactor(f64);

impl SpringbackFactor {
    /// A factor given or measured.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`] unless it is more than 0 and at most 1.
    pub fn new(factor: f64) -> Result<SpringbackFactor, Error> {
        const ACCEPTS: &str = "more than 0, at most 1 (no springback)";
        if !factor.is_finite() {
            return Err(Error::new(ErrorKind::NotFinite, "not a finite springback factor").value_of(factor).accepts(ACCEPTS));
        }
        if factor > 0.0 && factor <= 1.0 {
            Ok(SpringbackFactor(factor))
        } else {
            Err(Error::new(ErrorKind::OutOfRange, "not a springback factor").value_of(factor).accepts(ACCEPTS))
        }
    }

    /// The ratio.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }
}

/// A factor as a document gives it.
#[cfg(feature = "serde")]
#[derive(serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct GivenFactor(f64);

#[cfg(feature = "serde")]
impl TryFrom<GivenFactor> for SpringbackFactor {
    type Error = Told;
    fn try_from(factor: GivenFactor) -> Result<Self, Told> {
        Ok(SpringbackFactor::new(factor.0)?)
    }
}

impl From<SpringbackFactor> for f64 {
    fn from(factor: SpringbackFactor) -> f64 {
        factor.0
    }
}

/// How the springback of a metal is known.
///
/// ```
/// use seamwright::trim::{SpringbackBy, SpringbackFactor, SpringbackMetal};
/// use seamwright::units::Angle;
/// assert_ne!(SpringbackBy::Table(SpringbackMetal::Dc01), SpringbackBy::Table(SpringbackMetal::Dc04));
/// // As the shop found it on its own brake.
/// let (angle, factor) = (SpringbackBy::Angle(Angle::parse("2 deg")?), SpringbackBy::Factor(SpringbackFactor::new(0.97)?));
/// assert_ne!(angle, factor);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SpringbackBy {
    /// By the elastic formula.
    Elastic {
        /// Yield strength of the metal.
        yield_strength: Pressure,
        /// Its modulus of elasticity.
        modulus: Pressure,
    },
    /// By the table of factors of a metal.
    Table(SpringbackMetal),
    /// By a factor given or measured: a bend of A is folded to A by the factor.
    Factor(SpringbackFactor),
    /// By an angle given or measured: a bend of A is folded to A plus this.
    Angle(Angle),
}

/// What a way of knowing it says of one bend.
struct Found {
    /// The angle that is left to the forming angle.
    angle_ratio: f64,
    /// Inside radius in the tool, in millimetres, where that is the elastic formula's; otherwise it follows from the ratio.
    forming: Option<(f64, f64)>,
}

impl SpringbackBy {
    /// Its own figures, at paths under it.
    pub(super) fn check(self, faults: &mut Faults, path: &str) {
        match self {
            SpringbackBy::Elastic { yield_strength, modulus } => {
                check_pressure(yield_strength, &format!("{path}.elastic.yield_strength"), faults);
                check_pressure(modulus, &format!("{path}.elastic.modulus"), faults);
            }
            SpringbackBy::Angle(angle) if !(0.0..90.0).contains(&angle.degrees()) => {
                let e = Error::new(ErrorKind::OutOfRange, "not an angle of springback").at(format!("{path}.angle"));
                faults.add(e.value_of(angle).accepts("0 deg to less than 90 deg"));
            }
            SpringbackBy::Angle(_) | SpringbackBy::Factor(_) | SpringbackBy::Table(_) => {}
        }
    }

    /// The ratio for a bend that is to have this radius and angle.
    fn found(self, thickness: Length, inside_radius: Length, degrees: f64, path: &str) -> Result<Found, Error> {
        let (radius, t) = (inside_radius.mm(), thickness.mm());
        let plain = |angle_ratio: f64| Found { angle_ratio, forming: None };
        Ok(match self {
            SpringbackBy::Elastic { yield_strength, modulus } => {
                let strain = strain(yield_strength, modulus, &format!("{path}.elastic.yield_strength"))?;
                let x = forming_x(radius * strain / t);
                let forming = x * t / strain;
                Found { angle_ratio: (2.0 * forming / t + 1.0) / neutral(inside_radius, thickness), forming: Some((forming, x)) }
            }
            SpringbackBy::Table(metal) => plain(metal.factor(radius / t)?),
            SpringbackBy::Factor(factor) => plain(factor.0),
            SpringbackBy::Angle(angle) => plain(degrees / (degrees + angle.degrees())),
        })
    }

    /// How the factor of one bend was come by.
    fn factor_step(self, factor: f64, angle: BendAngle, radius: Length, thickness: Length) -> Step {
        let step = Step::new("springback factor kR");
        match self {
            SpringbackBy::Table(metal) => {
                step.formula("table, between its columns in proportion").with("metal", metal.name()).with("r/s", radius.mm() / thickness.mm())
            }
            SpringbackBy::Angle(by) => step.formula("A/(A + springback)").with("A", angle).with("springback", by),
            SpringbackBy::Factor(_) | SpringbackBy::Elastic { .. } => step.formula("as given"),
        }
        .gives(factor)
        .source(if let SpringbackBy::Table(_) = self { SpringbackMetal::source() } else { Source::user() })
    }

    /// The angle to fold to for this one, in degrees.
    pub(super) fn folded(self, thickness: Length, inside_radius: Length, degrees: f64) -> Result<f64, Error> {
        match self {
            SpringbackBy::Angle(angle) => Ok(degrees + angle.degrees()),
            other => Ok(degrees / other.found(thickness, inside_radius, degrees, "springback")?.angle_ratio),
        }
    }
}

/// How far to bend over, and round what radius, for a wanted bend.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{OverBend, SpringbackBy};
/// use seamwright::units::{BendAngle, Length, Pressure};
/// let by = SpringbackBy::Elastic { yield_strength: Pressure::parse("40 ksi")?, modulus: Pressure::parse("29000 ksi")? };
/// let wanted = OverBend { thickness: Length::parse("0.0359 in")?, inside_radius: Length::parse("0.5 in")?, angle: BendAngle::SQUARE, by };
/// let tool = wanted.compute()?;
/// assert!((tool.forming_radius - Length::parse("0.4728 in")?).pm().abs() < Length::parse("0.0001 in")?.pm().into());
/// assert!(tool.forming_angle > BendAngle::SQUARE);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct OverBend {
    /// Thickness of the sheet.
    pub thickness: Length,
    /// The wanted radius of the inside face.
    pub inside_radius: Length,
    /// The wanted angle, from flat.
    pub angle: BendAngle,
    /// How the springback is known.
    pub by: SpringbackBy,
}

/// What the tool has to do for a wanted bend.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{OverBend, SpringbackBy, SpringbackMetal};
/// use seamwright::units::{BendAngle, Length};
/// let one = Length::parse("1 mm")?;
/// let tool = OverBend { thickness: one, inside_radius: one, angle: BendAngle::SQUARE, by: SpringbackBy::Table(SpringbackMetal::Dc01) }.compute()?;
/// assert_eq!(tool.angle_ratio, 0.99);
/// assert!((tool.over_bend.degrees() - (90.0 / 0.99 - 90.0)).abs() < 1e-12);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Tooled {
    /// The angle that is left to the forming angle: Ks, or kR of the table.
    pub angle_ratio: f64,
    /// Inside radius in the tool.
    pub forming_radius: Length,
    /// Angle in the tool, from flat.
    pub forming_angle: BendAngle,
    /// By how much the tool goes over the wanted angle.
    pub over_bend: Angle,
    /// x = Ri Y/(E T), where the elastic formula gave it.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub strain_ratio: Option<f64>,
    /// What must be known beside the numbers.
    pub cautions: Vec<Caution>,
}

/// The x of which `y (4 x^3 - 3 x + 1)` is x: where the forming radius leaves the wanted one. There is one between 0 and 1/2 for any y that is not negative.
fn forming_x(y: f64) -> f64 {
    // The left side less the right grows all the way, so a bracket closes on the root; halving it is exact and the same everywhere.
    let (mut low, mut high) = (0.0, 0.5);
    for _ in 0..80 {
        let x = 0.5 * (low + high);
        if x < y * radius_ratio(x) {
            low = x;
        } else {
            high = x;
        }
    }
    low
}

impl Calculation for OverBend {
    type Out = Tooled;

    fn title(&self) -> String {
        format!("over-bending for {} and {} in sheet {}", self.angle, self.inside_radius, self.thickness)
    }

    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a thickness, a strength or a modulus of zero or less, a negative radius, an angle of nothing (all at once), or for a
    /// radius outside the table's range for the metal; [`ErrorKind::Impossible`] where the tool would have to go round a full turn, or the formula leaves
    /// no forming radius.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Tooled, Error> {
        let mut faults = Faults::default();
        faults.keep(self.thickness.positive("thickness"));
        faults.keep(self.inside_radius.not_negative("inside_radius"));
        check_angle(self.angle, &mut faults);
        self.by.check(&mut faults, "by");
        faults.check()?;
        let t = self.thickness.mm();
        let Found { angle_ratio, forming } = self.by.found(self.thickness, self.inside_radius, self.angle.degrees(), "by")?;
        let (forming_radius, mut cautions) = match (self.by, forming) {
            (SpringbackBy::Elastic { yield_strength, modulus }, Some((forming, x))) => {
                let forming = to_length(forming)?;
                r.step(|| strain_step(x, forming, yield_strength, modulus, self.thickness));
                r.step(|| {
                    let step = Step::new("forming radius Ri").formula("Rf (4 x^3 - 3 x + 1), solved with x").with("Rf", self.inside_radius);
                    step.gives(forming).source(RADIUS_RATIO.clone())
                });
                r.step(|| angle_step(angle_ratio, forming, self.inside_radius, self.thickness));
                (forming, vec![from_memory(&ANGLE_RATIO)])
            }
            (by, _) => {
                let of_table = vec![from_memory(&SpringbackMetal::source()), from_memory(&FORMING_RADIUS)];
                let cautions = if matches!(by, SpringbackBy::Table(_)) { of_table } else { vec![from_memory(&FORMING_RADIUS)] };
                r.step(|| by.factor_step(angle_ratio, self.angle, self.inside_radius, self.thickness));
                let forming = angle_ratio * (self.inside_radius.mm() + 0.5 * t) - 0.5 * t;
                if forming < 0.0 {
                    return Err(Error::new(ErrorKind::Impossible, "no tool is as sharp as this bend would need")
                        .at("inside_radius")
                        .value_of(self.inside_radius)
                        .accepts("a radius that leaves a forming radius of 0 mm or more"));
                }
                let forming = to_length(forming)?;
                r.step(|| {
                    let step = Step::new("forming radius r1").formula("kR (r2 + s/2) - s/2").with("kR", angle_ratio).with("r2", self.inside_radius);
                    step.with("s", self.thickness).gives(forming).source(FORMING_RADIUS.clone())
                });
                (forming, cautions)
            }
        };
        let strain_ratio = forming.map(|(_, x)| x);
        let degrees = self.angle.degrees() / angle_ratio;
        let forming_angle = Angle::degrees_from(degrees).and_then(BendAngle::from_flat).map_err(|_| {
            Error::new(ErrorKind::Impossible, "the tool would go round a full turn")
                .at("angle")
                .value_of(self.angle)
                .accepts(format!("less than {} deg from flat", 360.0 * angle_ratio))
        })?;
        r.step(|| Step::new("forming angle").formula("wanted angle / ratio").with("wanted angle", self.angle).with("ratio", angle_ratio).gives(forming_angle));
        cautions.dedup();
        let over_bend = Angle::degrees_from(degrees - self.angle.degrees())?;
        Ok(Tooled { angle_ratio, forming_radius, forming_angle, over_bend, strain_ratio, cautions })
    }
}
