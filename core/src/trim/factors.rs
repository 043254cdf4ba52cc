//! The three quantities that the trade calls K, told apart.

use super::size::BendSize;
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::units::BendAngle;
use core::fmt;

/// Where the neutral line runs in a bend: its distance from the inside face as a share of the thickness (the K of the K-factor tables).
///
/// 0 is the inside face, 0.5 mid-thickness, 1 the outside face. A factor solved back from a measured bend may exceed 0.5; then a result says so. It is
/// not the [`DinFactor`], which is twice as large, nor the [`SetbackFactor`], which knows nothing of the metal.
///
/// ```
/// use seamwright::trim::NeutralFactor;
/// assert_eq!(NeutralFactor::new(0.33)?.value(), 0.33);
/// assert!(NeutralFactor::new(f64::NAN).is_err());
/// assert!(NeutralFactor::new(1.2).is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "Given", into = "f64"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NeutralFactor(f64);

impl NeutralFactor {
    /// Mid-thickness.
    pub const MIDDLE: NeutralFactor = NeutralFactor(0.5);

    /// A factor given or measured.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`] unless it is from 0 to 1.
    pub fn new(factor: f64) -> Result<NeutralFactor, Error> {
        const ACCEPTS: &str = "0 (inside face) to 1 (outside face)";
        if !factor.is_finite() {
            return Err(Error::new(ErrorKind::NotFinite, "not a finite neutral-axis factor").value_of(factor).accepts(ACCEPTS));
        }
        if (0.0..=1.0).contains(&factor) {
            // Adding zero turns -0.0 into 0.0, so that equal values have equal bits.
            Ok(NeutralFactor(factor + 0.0))
        } else {
            Err(Error::new(ErrorKind::OutOfRange, "the neutral line lies within the thickness").value_of(factor).accepts(ACCEPTS))
        }
    }

    /// The share of the thickness.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }
}

/// A factor as a document gives it.
#[cfg(feature = "serde")]
#[derive(serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct Given(f64);

#[cfg(feature = "serde")]
impl TryFrom<Given> for NeutralFactor {
    type Error = crate::error::told::Told;
    fn try_from(factor: Given) -> Result<Self, crate::error::told::Told> {
        Ok(NeutralFactor::new(factor.0)?)
    }
}

impl TryFrom<f64> for NeutralFactor {
    type Error = Error;
    fn try_from(factor: f64) -> Result<Self, Error> {
        NeutralFactor::new(factor)
    }
}

impl From<NeutralFactor> for f64 {
    fn from(factor: NeutralFactor) -> f64 {
        factor.0
    }
}

impl fmt::Display for NeutralFactor {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// The correction factor k of DIN 6935: twice the share of the thickness at which the neutral line runs.
///
/// k = 0.65 + 0.5 log10(r/s) for r/s up to 5, and 1 (mid-thickness) above. It falls to nothing at r/s of about 0.05; sharper bends are
/// outside the formula and refused.
///
/// ```
/// use seamwright::trim::DinFactor;
/// use seamwright::units::Length;
/// let k = DinFactor::of(Length::micrometres(1000), Length::micrometres(1000))?;
/// assert_eq!(k.value(), 0.65);
/// assert_eq!(k.neutral().value(), 0.325);
/// assert!(DinFactor::of(Length::ZERO, Length::micrometres(600)).is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct DinFactor(f64);

impl DinFactor {
    /// The factor of a bend of this inside radius in metal of this thickness.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a thickness of zero or less, a negative radius, or a bend sharper than the formula covers.
    pub fn of(inside_radius: crate::units::Length, thickness: crate::units::Length) -> Result<DinFactor, Error> {
        thickness.positive("thickness")?;
        inside_radius.not_negative("inside_radius")?;
        Self::of_ratio(inside_radius.mm() / thickness.mm())
    }

    /// The formula alone, which is negative for a bend sharper than it covers.
    #[inline]
    pub(super) fn formula(ratio: f64) -> f64 {
        if ratio > 5.0 { 1.0 } else { 0.65 + 0.5 * num::log10(ratio) }
    }

    pub(super) fn of_ratio(ratio: f64) -> Result<DinFactor, Error> {
        let k = DinFactor::formula(ratio);
        if k >= 0.0 {
            Ok(DinFactor(k))
        } else {
            Err(Error::new(ErrorKind::OutOfRange, "the bend is sharper than DIN 6935 covers: k would be negative")
                .at("inside_radius")
                .value_of(format_args!("r/s = {ratio}"))
                .accepts("an inside radius of at least about 0.0502 times the thickness")
                .cured_by("a larger radius, or for this bend the neutral-axis, handbook or sharp-corner rule"))
        }
    }

    /// The factor k.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }

    /// The same place of the neutral line as a neutral-axis factor: k/2.
    #[must_use]
    pub fn neutral(self) -> NeutralFactor {
        NeutralFactor(self.0 / 2.0)
    }
}

/// The factor from (inside radius + thickness) to outside setback: tan(A/2), with A from flat (the K of aviation K-charts).
///
/// Pure geometry. At 180 degrees it is infinite, so a hem has no setback and none is made up: 180 and more is refused, as AC 43.13-1B, Table
/// 4-7, prints "Inf.".
///
/// ```
/// use seamwright::trim::SetbackFactor;
/// use seamwright::units::BendAngle;
/// assert_eq!(SetbackFactor::of(BendAngle::SQUARE)?.value(), 1.0);
/// assert!(SetbackFactor::of(BendAngle::FOLDED).is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct SetbackFactor(f64);

impl SetbackFactor {
    /// The factor of a bend.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] at 180 degrees and more.
    pub fn of(angle: BendAngle) -> Result<SetbackFactor, Error> {
        if angle.degrees() < 180.0 { Ok(SetbackFactor(angle.half_tangent())) } else { Err(no_corner(angle)) }
    }

    /// The factor.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }
}

#[cold]
pub(super) fn no_corner(angle: BendAngle) -> Error {
    Error::new(ErrorKind::OutOfRange, "a bend of 180 degrees or more has no corner, so no setback and no deduction")
        .at("angle")
        .value_of(angle)
        .accepts("less than 180 deg from flat")
        .cured_by("measure the leg to the outer tangent or to the tangent line")
}

/// The neutral-axis factor that gives this allowance, as a plain ratio: it can lie outside 0 to 1 for rules that are not about the neutral line.
///
/// `K = (BA / A - R) / T`, with A in radians; source: geometry.
///
/// # Errors
/// [`ErrorKind::OutOfRange`] where the size is not that of a bend.
///
/// ```
/// use seamwright::trim::{equivalent_neutral_factor, BendRule, BendSize, HandbookMetal};
/// use seamwright::units::{BendAngle, Length};
/// let size = BendSize { thickness: Length::mils(40), inside_radius: Length::mils(40), angle: BendAngle::SQUARE };
/// let allowance = BendRule::Handbook(HandbookMetal::SoftSteel).allowance(size)?;
/// assert!((equivalent_neutral_factor(size, allowance)? - 0.4074).abs() < 5e-5);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn equivalent_neutral_factor(size: BendSize, allowance: crate::units::Length) -> Result<f64, Error> {
    size.check()?;
    Ok((allowance.mm() / size.angle.angle().radians() - size.inside_radius.mm()) / size.thickness.mm())
}
