//! Rounding to a step: the shop's and the tape's.

use super::Length;
#[cfg(feature = "serde")]
use crate::error::told::Told;
use crate::error::{Error, ErrorKind};

/// Which way a length goes to a whole step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Rounding {
    /// To the next step that is not smaller.
    Ceil,
    /// To the next step that is not greater.
    Floor,
    /// To the next step away from zero.
    Away,
    /// To the next step toward zero.
    Toward,
    /// To the nearest step, a tie to the even one.
    HalfEven,
    /// To the nearest step, a tie away from zero.
    HalfAway,
}

impl Rounding {
    /// Every direction.
    pub const ALL: &'static [Rounding] = &[Rounding::Ceil, Rounding::Floor, Rounding::Away, Rounding::Toward, Rounding::HalfEven, Rounding::HalfAway];

    /// The name in text.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Rounding::Ceil => "ceil",
            Rounding::Floor => "floor",
            Rounding::Away => "away",
            Rounding::Toward => "toward",
            Rounding::HalfEven => "half-even",
            Rounding::HalfAway => "half-away",
        }
    }

    /// The direction with this name.
    ///
    /// # Errors
    /// [`ErrorKind::Unknown`] for any other text.
    pub fn parse(name: &str) -> Result<Rounding, Error> {
        Self::ALL.iter().copied().find(|r| r.name() == name).ok_or_else(|| {
            Error::new(ErrorKind::Unknown, "not a direction of rounding").value_of(name).accepts("ceil, floor, away, toward, half-even, half-away")
        })
    }

    /// Steps of `step` in `pm`, an excess or want of up to `tolerance` ignored.
    pub(crate) fn steps(self, pm: i64, step: i64, tolerance: i64) -> i64 {
        let floor = pm.div_euclid(step);
        // Less than a step, but where the floor is so low that its product wraps, and then the difference wraps back.
        let rest = pm.wrapping_sub(floor.wrapping_mul(step));
        if rest == 0 {
            return floor;
        }
        let up = match self {
            Rounding::Ceil => rest > tolerance,
            Rounding::Floor => step - rest <= tolerance,
            Rounding::Away if pm > 0 => rest > tolerance,
            Rounding::Away => step - rest <= tolerance,
            Rounding::Toward if pm > 0 => step - rest <= tolerance,
            Rounding::Toward => rest > tolerance,
            Rounding::HalfEven | Rounding::HalfAway => {
                // Twice what is beyond the half; half a step and the tolerance are each less than a step, so all fits.
                let over = rest - (step - rest);
                if over.abs() <= tolerance.saturating_mul(2) { if self == Rounding::HalfEven { floor & 1 != 0 } else { pm > 0 } } else { over > 0 }
            }
        };
        if up { floor + 1 } else { floor }
    }
}

/// The shop's rule: a step, a direction, and a tolerance within which an excess is noise.
///
/// Without the tolerance a length of 120 in that came out of trigonometry as 120.000 000 000 1 in would go up a whole step.
///
/// ```
/// use seamwright::units::{Length, Rounding, ShopRounding};
/// let up = ShopRounding::new(Length::inches(1), Rounding::Ceil)?;
/// assert_eq!(up.round(Length::parse("120 1/16\"")?)?, Length::inches(121));
/// assert_eq!(up.round(Length::parse("3048.0005 mm")?)?, Length::inches(120));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "ShopRoundingText", into = "ShopRoundingText"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ShopRounding {
    increment: Length,
    rounding: Rounding,
    tolerance: Length,
}

#[cfg(feature = "serde")]
#[derive(serde::Serialize, serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
struct ShopRoundingText {
    increment: Length,
    rounding: Rounding,
    #[serde(default = "ShopRounding::tolerance_unless_given")]
    tolerance: Length,
}

#[cfg(feature = "serde")]
impl TryFrom<ShopRoundingText> for ShopRounding {
    type Error = Told;
    fn try_from(t: ShopRoundingText) -> Result<Self, Told> {
        Ok(ShopRounding::new(t.increment, t.rounding)?.tolerating(t.tolerance)?)
    }
}

#[cfg(feature = "serde")]
impl From<ShopRounding> for ShopRoundingText {
    fn from(r: ShopRounding) -> Self {
        ShopRoundingText { increment: r.increment, rounding: r.rounding, tolerance: r.tolerance }
    }
}

impl ShopRounding {
    /// The tolerance unless another is given: 1 micrometre, far under any tape and far over the noise of geometry.
    pub const TOLERANCE: Length = Length::micrometres(1);

    #[cfg(feature = "serde")]
    fn tolerance_unless_given() -> Length {
        Self::TOLERANCE
    }

    /// A rule with this step and direction.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] if the step is not more than twice the tolerance.
    pub fn new(increment: Length, rounding: Rounding) -> Result<Self, Error> {
        ShopRounding { increment, rounding, tolerance: Length::ZERO }.tolerating(Self::TOLERANCE.min(increment.station(1, 4)?))
    }

    /// The same rule with this tolerance.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] if it is negative or not less than half the step, or the step is not more than zero.
    pub fn tolerating(mut self, tolerance: Length) -> Result<Self, Error> {
        self.increment.positive("increment")?;
        tolerance.not_negative("tolerance")?;
        if i128::from(tolerance.pm()) * 2 >= i128::from(self.increment.pm()) {
            return Err(Error::new(ErrorKind::OutOfRange, "the tolerance must be less than half the step")
                .at("tolerance")
                .value_of(tolerance)
                .accepts(format!("less than half of {}", self.increment)));
        }
        self.tolerance = tolerance;
        Ok(self)
    }

    /// The step.
    #[must_use]
    pub fn increment(&self) -> Length {
        self.increment
    }

    /// The direction.
    #[must_use]
    pub fn rounding(&self) -> Rounding {
        self.rounding
    }

    /// The tolerance.
    #[must_use]
    pub fn tolerance(&self) -> Length {
        self.tolerance
    }

    /// The length at the whole step.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range.
    pub fn round(&self, length: Length) -> Result<Length, Error> {
        let steps = self.rounding.steps(length.pm(), self.increment.pm(), self.tolerance.pm());
        steps
            .checked_mul(self.increment.pm())
            .map(Length::from_pm)
            .ok_or_else(|| Error::new(ErrorKind::Overflow, "a rounded length is too large").value_of(length).accepts("at most 9 223 372 m"))
    }
}
