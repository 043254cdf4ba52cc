//! Lines of a section, and where two of them meet.

use crate::error::{Error, ErrorKind};
use crate::num;
use crate::units::{Angle, Length};

/// A point of a section: `x` level and square to the junction line, positive toward the upper side; `z` up. The origin is the junction line at deck level.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SectionPoint {
    /// Level distance from the junction line.
    pub x: Length,
    /// Height above the junction line.
    pub z: Length,
}

/// A straight support in a section: parallel to a deck that passes through the origin and rises toward +x, at a height square to it.
///
/// ```
/// use seamwright::junction::Support;
/// use seamwright::units::{Angle, Length};
/// // Two planes at 45 and 0 degrees, 1 in out from the lower one and on the upper one.
/// let lower = Support { rise: Angle::ZERO, height: Length::inches(1) };
/// let upper = Support { rise: Angle::parse("45 deg")?, height: Length::ZERO };
/// assert_eq!(lower.meets(&upper)?.x, Length::inches(1));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Support {
    /// How steeply the deck rises toward +x.
    pub rise: Angle,
    /// The height above that deck, square to it.
    pub height: Length,
}

impl Support {
    /// Where it meets another.
    ///
    /// # Errors
    /// [`ErrorKind::Geometry`] where the two are parallel, [`ErrorKind::Overflow`] where they meet beyond every length.
    pub fn meets(&self, other: &Support) -> Result<SectionPoint, Error> {
        // Normals (-sin a, cos a); the two equations n.p = height solved by Cramer's rule.
        let (sa, ca) = (self.rise.sin(), self.rise.cos());
        let (sb, cb) = (other.rise.sin(), other.rise.cos());
        let determinant = num::sin_deg(other.rise.degrees() - self.rise.degrees());
        if determinant == 0.0 {
            return Err(Error::new(ErrorKind::Geometry, "two supports are parallel and never meet").value_of(self.rise).accepts("two different slopes"));
        }
        let (ha, hb) = (self.height.mm(), other.height.mm());
        Ok(SectionPoint { x: Length::from_mm((cb * ha - ca * hb) / determinant)?, z: Length::from_mm((sb * ha - sa * hb) / determinant)? })
    }

    /// The point at this distance along it, measured from the foot of the junction line, positive toward +x.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range of lengths.
    pub fn point(&self, along: Length) -> Result<SectionPoint, Error> {
        let (s, c) = (self.rise.sin(), self.rise.cos());
        let (t, h) = (along.mm(), self.height.mm());
        Ok(SectionPoint { x: Length::from_mm(t * c - h * s)?, z: Length::from_mm(t * s + h * c)? })
    }
}
