//! Angles, and the two ways to measure a bend.

use super::quantity::parse_number_and_unit;
use crate::error::{Error, ErrorKind};
use crate::num;
use core::fmt;

/// An angle in degrees, kept as given, so that whole degrees survive.
///
/// ```
/// use seamwright::units::Angle;
/// let a = Angle::parse("18.5 deg")?;
/// assert_eq!(a.degrees(), 18.5);
/// assert_eq!(Angle::degrees_from(30.0)?.sin(), 0.5);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct Angle(f64);

impl Angle {
    /// No angle.
    pub const ZERO: Angle = Angle(0.0);
    /// The square.
    pub const SQUARE: Angle = Angle(90.0);

    /// An angle of so many degrees.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] for NaN and infinities.
    pub fn degrees_from(degrees: f64) -> Result<Angle, Error> {
        if degrees.is_finite() {
            Ok(Angle(degrees + 0.0))
        } else {
            Err(Error::new(ErrorKind::NotFinite, "not a finite angle").value_of(degrees).accepts("a finite number of degrees"))
        }
    }

    /// For values that are finite by construction.
    pub(crate) const fn of_degrees(degrees: f64) -> Angle {
        Angle(degrees)
    }

    /// The same angle, if seams and a line can meet at it: more than 0 and less than 180 degrees. The path is `meeting`.
    pub(crate) fn meeting(self) -> Result<Angle, Error> {
        if self.0 > 0.0 && self.0 < 180.0 {
            Ok(self)
        } else {
            Err(Error::new(ErrorKind::OutOfRange, "not a meeting angle of seams and a line")
                .at("meeting")
                .value_of(self)
                .accepts("more than 0 deg and less than 180 deg"))
        }
    }

    /// The angle in degrees.
    #[must_use]
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// The angle in radians.
    #[must_use]
    pub fn radians(self) -> f64 {
        self.0 * num::RADIANS_PER_DEGREE
    }

    /// Its sine.
    #[must_use]
    pub fn sin(self) -> f64 {
        num::sin_deg(self.0)
    }

    /// Its cosine.
    #[must_use]
    pub fn cos(self) -> f64 {
        num::cos_deg(self.0)
    }

    /// Its tangent; infinite at 90 degrees.
    #[must_use]
    pub fn tan(self) -> f64 {
        num::tan_deg(self.0)
    }

    /// Reads `18.5 deg`, `18.5°` or `0.3 rad`.
    ///
    /// # Errors
    /// [`ErrorKind::Parse`] or [`ErrorKind::Unit`].
    pub fn parse(text: &str) -> Result<Angle, Error> {
        const ACCEPTS: &str = "18.5 deg, 18.5\u{b0}, 0.3 rad";
        let (value, unit) = parse_number_and_unit(text, ACCEPTS)?;
        match unit {
            "deg" | "\u{b0}" => Angle::degrees_from(value),
            "rad" => Angle::degrees_from(value / num::RADIANS_PER_DEGREE),
            _ => Err(Error::new(ErrorKind::Unit, "not a unit of angle").value_of(text).accepts(ACCEPTS)),
        }
    }
}

impl fmt::Display for Angle {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&format!("{} deg", self.0))
    }
}

impl core::str::FromStr for Angle {
    type Err = Error;
    fn from_str(text: &str) -> Result<Angle, Error> {
        Angle::parse(text)
    }
}

/// How far sheet is bent, measured from flat: 0 is flat, 90 is square, 180 is folded back on itself.
///
/// Drawings often show the angle between the flanges instead, which is 180 minus it; there is no silent conversion.
///
/// ```
/// use seamwright::units::{Angle, BendAngle};
/// let a = BendAngle::between_flanges(Angle::parse("120 deg")?)?;
/// assert_eq!(a, BendAngle::from_flat(Angle::parse("60 deg")?)?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct BendAngle(f64);

impl BendAngle {
    /// A square bend.
    pub const SQUARE: BendAngle = BendAngle(90.0);
    /// A fold back on itself, as in a hem.
    pub const FOLDED: BendAngle = BendAngle(180.0);

    /// The bend, measured from flat.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] outside 0 to 360 degrees: a teardrop hem turns by more than 180, nothing turns by a full turn.
    pub fn from_flat(angle: Angle) -> Result<BendAngle, Error> {
        let d = angle.degrees();
        if (0.0..360.0).contains(&d) {
            Ok(BendAngle(d))
        } else {
            Err(Error::new(ErrorKind::OutOfRange, "not an angle to bend by").value_of(angle).accepts("0 deg to less than 360 deg, measured from flat"))
        }
    }

    /// The bend whose flanges stand at this angle to each other.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] outside 0 to 180 degrees.
    pub fn between_flanges(angle: Angle) -> Result<BendAngle, Error> {
        let d = angle.degrees();
        if (0.0..=180.0).contains(&d) {
            Ok(BendAngle(180.0 - d))
        } else {
            Err(Error::new(ErrorKind::OutOfRange, "not an angle between flanges").value_of(angle).accepts("0 deg to 180 deg"))
        }
    }

    /// Degrees from flat.
    #[must_use]
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// The angle from flat.
    #[must_use]
    pub const fn angle(self) -> Angle {
        Angle(self.0)
    }

    /// The angle between the flanges; negative where the bend goes past 180 degrees.
    #[must_use]
    pub fn opening(self) -> Angle {
        Angle(180.0 - self.0)
    }

    /// Tangent of half the bend, the factor from radius to setback; infinite at 180 degrees.
    #[must_use]
    pub fn half_tangent(self) -> f64 {
        num::tan_deg(self.0 / 2.0)
    }
}

impl fmt::Display for BendAngle {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&format!("{} deg", self.0))
    }
}

impl core::str::FromStr for BendAngle {
    type Err = Error;
    /// Reads degrees from flat.
    fn from_str(text: &str) -> Result<BendAngle, Error> {
        Angle::parse(text).and_then(BendAngle::from_flat)
    }
}
