//! Levels of load and of resistance, each a type of its own.

use crate::error::{Error, ErrorKind};
use crate::record::Source;
use crate::units::{Force, ForceUnit, Pressure};

/// A pressure at service level (allowable stress design), as a magnitude away from the roof.
///
/// ```
/// use seamwright::fastener::ServicePressure;
/// use seamwright::units::Pressure;
/// let p = ServicePressure(Pressure::parse("30 psf")?);
/// assert!(p.0 > Pressure::ZERO);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(transparent))]
pub struct ServicePressure(pub Pressure);

/// A pressure at strength level (load and resistance factor design, limit state), as a magnitude away from the roof.
///
/// ```
/// use seamwright::fastener::StrengthPressure;
/// use seamwright::units::Pressure;
/// let p = StrengthPressure(Pressure::parse("50 psf")?);
/// assert!(p.0 > Pressure::ZERO);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(transparent))]
pub struct StrengthPressure(pub Pressure);

/// A safety factor, by which an ultimate or nominal resistance is divided.
///
/// ```
/// use seamwright::fastener::SafetyFactor;
/// use seamwright::record::Source;
/// let f = SafetyFactor { factor: 2.0, source: Source::user() };
/// assert_eq!(f.factor, 2.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SafetyFactor {
    /// The factor; 1 or more.
    pub factor: f64,
    /// Who sets it.
    pub source: Source,
}

impl SafetyFactor {
    fn checked(&self) -> Result<f64, Error> {
        if self.factor >= 1.0 && self.factor.is_finite() {
            Ok(self.factor)
        } else {
            Err(Error::new(ErrorKind::OutOfRange, "not a safety factor").at("factor").value_of(self.factor).accepts("a finite number of 1 or more"))
        }
    }
}

/// A resistance factor, by which a nominal resistance is multiplied.
///
/// ```
/// use seamwright::fastener::ResistanceFactor;
/// use seamwright::record::Source;
/// let f = ResistanceFactor { factor: 0.5, source: Source::user() };
/// assert_eq!(f.factor, 0.5);
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ResistanceFactor {
    /// The factor; more than 0, at most 1.
    pub factor: f64,
    /// Who sets it.
    pub source: Source,
}

impl ResistanceFactor {
    fn checked(&self) -> Result<f64, Error> {
        if self.factor > 0.0 && self.factor <= 1.0 {
            Ok(self.factor)
        } else {
            Err(Error::new(ErrorKind::OutOfRange, "not a resistance factor").at("factor").value_of(self.factor).accepts("more than 0, at most 1"))
        }
    }
}

pub(super) fn positive(force: Force, path: &str) -> Result<Force, Error> {
    if force > Force::ZERO {
        Ok(force)
    } else {
        Err(Error::new(ErrorKind::OutOfRange, "a resistance must be more than zero").at(path).value_of(force).accepts("more than 0 N"))
    }
}

/// What broke a test piece.
///
/// ```
/// use seamwright::fastener::{SafetyFactor, UltimateResistance};
/// use seamwright::record::Source;
/// use seamwright::units::{Force, ForceUnit};
/// let test = UltimateResistance { force: Force::parse("500 lbf")?, document: Source::user() };
/// let allowable = test.allowable(&SafetyFactor { factor: 2.0, source: Source::user() })?;
/// assert!((allowable.force.get(ForceUnit::PoundForce) - 250.0).abs() < 1e-9);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct UltimateResistance {
    /// The force on one fastener.
    pub force: Force,
    /// The document that gives it.
    pub document: Source,
}

impl UltimateResistance {
    /// The allowable resistance with this safety factor.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a factor under 1 or a force of zero or less.
    pub fn allowable(&self, factor: &SafetyFactor) -> Result<AllowableResistance, Error> {
        allowable(self.force, &self.document, factor)
    }
}

/// A resistance by a standard's formula, before its factor.
///
/// ```
/// use seamwright::fastener::{NominalResistance, ResistanceFactor};
/// use seamwright::record::Source;
/// use seamwright::units::{Force, ForceUnit};
/// let nominal = NominalResistance { force: Force::parse("300 lbf")?, document: Source::user() };
/// let design = nominal.design(&ResistanceFactor { factor: 0.5, source: Source::user() })?;
/// assert!((design.force.get(ForceUnit::PoundForce) - 150.0).abs() < 1e-9);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NominalResistance {
    /// The force on one fastener.
    pub force: Force,
    /// The document that gives it.
    pub document: Source,
}

impl NominalResistance {
    /// The allowable resistance with this safety factor.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a factor under 1 or a force of zero or less.
    pub fn allowable(&self, factor: &SafetyFactor) -> Result<AllowableResistance, Error> {
        allowable(self.force, &self.document, factor)
    }

    /// The design resistance with this resistance factor.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a factor outside 0 to 1 or a force of zero or less.
    pub fn design(&self, factor: &ResistanceFactor) -> Result<DesignResistance, Error> {
        let value = positive(self.force, "force")?.get(ForceUnit::Newton) * factor.checked()?;
        Ok(DesignResistance { force: Force::new(value, ForceUnit::Newton)?, document: self.document.clone(), factor: Some(factor.clone()) })
    }
}

fn allowable(force: Force, document: &Source, factor: &SafetyFactor) -> Result<AllowableResistance, Error> {
    let value = positive(force, "force")?.get(ForceUnit::Newton) / factor.checked()?;
    Ok(AllowableResistance { force: Force::new(value, ForceUnit::Newton)?, document: document.clone(), factor: Some(factor.clone()) })
}

/// A resistance after its safety factor, to be set against service loads.
///
/// ```
/// use seamwright::fastener::AllowableResistance;
/// use seamwright::record::Source;
/// use seamwright::units::Force;
/// let stated = AllowableResistance { force: Force::parse("150 lbf")?, document: Source::user(), factor: None };
/// assert!(stated.factor.is_none());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct AllowableResistance {
    /// The force on one fastener.
    pub force: Force,
    /// The document that gives it.
    pub document: Source,
    /// The factor that is in it; none where the document states the allowable resistance itself.
    #[cfg_attr(feature = "serde", serde(default))]
    pub factor: Option<SafetyFactor>,
}

/// A resistance after its resistance factor, to be set against strength-level loads.
///
/// ```
/// use seamwright::fastener::DesignResistance;
/// use seamwright::record::Source;
/// use seamwright::units::Force;
/// let stated = DesignResistance { force: Force::parse("250 lbf")?, document: Source::user(), factor: None };
/// assert!(stated.factor.is_none());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct DesignResistance {
    /// The force on one fastener.
    pub force: Force,
    /// The document that gives it.
    pub document: Source,
    /// The factor that is in it; none where the document states the design resistance itself.
    #[cfg_attr(feature = "serde", serde(default))]
    pub factor: Option<ResistanceFactor>,
}
