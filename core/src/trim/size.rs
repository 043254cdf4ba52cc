//! The size of one bend, and the setbacks that follow from geometry alone.

use super::factors::{SetbackFactor, no_corner};
use crate::error::{Error, ErrorKind, Faults};
use crate::units::{BendAngle, Length};

/// Thickness, inside radius and angle of one bend: what every bend rule works from.
///
/// The angle is measured from flat: 90 is square, 180 a hem.
///
/// ```
/// use seamwright::trim::BendSize;
/// use seamwright::units::{BendAngle, Length};
/// // FAA-H-8083-31, chapter 4: with R + T = 0.20 in, a square bend sets back 0.20 in.
/// let size = BendSize { thickness: Length::mils(40), inside_radius: Length::mils(160), angle: BendAngle::SQUARE };
/// assert_eq!(size.outside_setback()?, Length::mils(200));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BendSize {
    /// Thickness of the sheet.
    pub thickness: Length,
    /// Radius of the inside face.
    pub inside_radius: Length,
    /// How far it is bent, from flat.
    pub angle: BendAngle,
}

impl BendSize {
    /// Refuses what is not a bend.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a thickness of zero or less, a negative radius or an angle of zero; all faults at once.
    pub fn check(self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.thickness.positive("thickness"));
        faults.keep(self.inside_radius.not_negative("inside_radius"));
        if self.angle.degrees() <= 0.0 {
            faults.add(
                Error::new(ErrorKind::OutOfRange, "a bend of nothing is no bend")
                    .at("angle")
                    .value_of(self.angle)
                    .accepts("more than 0 deg from flat")
                    .cured_by("join the two legs into one"),
            );
        }
        faults.check()
    }

    /// From the tangent line to the corner of the outside faces: `(R + T) tan(A/2)`. Source: geometry.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] at 180 degrees and more, or where this is not a bend.
    pub fn outside_setback(self) -> Result<Length, Error> {
        self.check()?;
        let factor = SetbackFactor::of(self.angle)?.value();
        to_length((self.inside_radius.mm() + self.thickness.mm()) * factor)
    }

    /// From the tangent line to the corner of the inside faces: `R tan(A/2)`. Source: geometry.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] at 180 degrees and more, or where this is not a bend.
    pub fn inside_setback(self) -> Result<Length, Error> {
        self.check()?;
        let factor = SetbackFactor::of(self.angle)?.value();
        to_length(self.inside_radius.mm() * factor)
    }
}

/// A checked bend in the working unit, with what several formulas share computed once.
#[derive(Debug, Clone, Copy)]
pub(super) struct BendMm {
    pub(super) size: BendSize,
    /// Thickness.
    pub(super) t: f64,
    /// Inside radius.
    pub(super) r: f64,
    /// Tangent of half the angle; infinite at 180 degrees, negative beyond.
    pub(super) half_tangent: f64,
    /// Outside setback; nothing at 180 degrees and more, where there is none.
    pub(super) outside: Length,
}

impl BendMm {
    /// Of a checked size; `t` is its thickness, which one profile converts once.
    #[inline(always)]
    pub(super) fn of(size: BendSize, t: f64) -> Result<BendMm, Error> {
        let r = size.inside_radius.mm();
        let half_tangent = size.angle.half_tangent();
        let outside = if size.angle.degrees() < 180.0 { to_length((r + t) * half_tangent)? } else { Length::ZERO };
        Ok(BendMm { size, t, r, half_tangent, outside })
    }

    /// The bend of this angle with this radius and thickness, one of which may be nothing: for what is linear in both.
    pub(super) fn unit(angle: BendAngle, r: f64, t: f64) -> BendMm {
        let size = BendSize { thickness: Length::ZERO, inside_radius: Length::ZERO, angle };
        BendMm { size, t, r, half_tangent: angle.half_tangent(), outside: Length::ZERO }
    }

    /// Degrees from flat.
    #[inline]
    pub(super) fn degrees(&self) -> f64 {
        self.size.angle.degrees()
    }

    #[inline]
    pub(super) fn radians(&self) -> f64 {
        self.size.angle.angle().radians()
    }

    /// Both outside setbacks together.
    #[inline]
    pub(super) fn two_setbacks(&self) -> Result<f64, Error> {
        if self.degrees() < 180.0 { Ok(2.0 * (self.r + self.t) * self.half_tangent) } else { Err(no_corner(self.size.angle)) }
    }
}

/// What [`round`] can take, in millimetres: anything that fits on a brake.
pub(super) const QUICK_MM: f64 = 2.0e6;

/// Millimetres below [`QUICK_MM`] to picometres, half-even: a whole number below 2^51 plus 1.5 * 2^52 stands in the low bits of the sum.
#[inline(always)]
pub(super) fn round(mm: f64) -> i64 {
    const SHIFT: f64 = 6_755_399_441_055_744.0;
    (mm * 1e9 + SHIFT).to_bits().cast_signed().wrapping_sub(SHIFT.to_bits().cast_signed())
}

/// Millimetres to a length, half-even to the picometre: the one rounding of this room.
#[inline(always)]
pub(super) fn to_length(mm: f64) -> Result<Length, Error> {
    if mm.abs() < QUICK_MM { Ok(Length::from_pm(round(mm))) } else { Length::from_mm(mm) }
}

/// The sum of two lengths, which can leave the range.
#[inline(always)]
pub(super) fn sum(a: Length, b: Length) -> Result<Length, Error> {
    match a.pm().checked_add(b.pm()) {
        Some(pm) => Ok(Length::from_pm(pm)),
        None => (a + b).length(),
    }
}
