//! Points of a section.

use super::size::{sum, to_length};
use crate::error::Error;
use crate::units::Length;

/// A point in the plane square to the trim: x to the right, y upwards.
///
/// ```
/// use seamwright::trim::Point;
/// use seamwright::units::Length;
/// let p = Point { x: Length::inches(3), y: Length::inches(4) };
/// assert_eq!(p.distance(Point::ORIGIN)?, Length::inches(5));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Point {
    /// To the right.
    pub x: Length,
    /// Upwards.
    pub y: Length,
}

impl Point {
    /// Where both are nothing.
    pub const ORIGIN: Point = Point { x: Length::ZERO, y: Length::ZERO };

    /// The distance to another point.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range of a length.
    pub fn distance(self, other: Point) -> Result<Length, Error> {
        let (x, y) = self.to(other)?;
        to_length(crate::num::hypot(x, y))
    }

    /// The way to another point in the working unit, subtracted exactly first.
    pub(super) fn to(self, other: Point) -> Result<(f64, f64), Error> {
        Ok(((other.x - self.x).length()?.mm(), (other.y - self.y).length()?.mm()))
    }

    /// This point moved by so much.
    #[inline(always)]
    pub(super) fn moved(self, x: f64, y: f64) -> Result<Point, Error> {
        Ok(Point { x: sum(self.x, to_length(x)?)?, y: sum(self.y, to_length(y)?)? })
    }
}
