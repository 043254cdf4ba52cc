//! Points in space, and the exact step from them to floating point.

use crate::num::space::V3;
use crate::units::Length;

/// A point in space: x and y in plan, z upward.
///
/// ```
/// use seamwright::roof::Vertex;
/// use seamwright::units::Length;
/// let v = Vertex::new(Length::feet(3), Length::ZERO, Length::feet(9));
/// assert_eq!(v.z, Length::inches(108));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Vertex {
    /// In plan, to the right.
    pub x: Length,
    /// In plan, away.
    pub y: Length,
    /// Upward.
    pub z: Length,
}

impl Vertex {
    /// The vertex at these coordinates.
    #[must_use]
    pub const fn new(x: Length, y: Length, z: Length) -> Vertex {
        Vertex { x, y, z }
    }

    pub(super) fn pm(self) -> [i128; 3] {
        [i128::from(self.x.pm()), i128::from(self.y.pm()), i128::from(self.z.pm())]
    }

    /// From `origin` to here in millimetres: the difference is exact, and is rounded once.
    pub(super) fn from(self, origin: Vertex) -> V3 {
        Twice::at(self).minus(&Twice::at(origin))
    }
}

/// A position in half picometres: the middle of two vertices has no rounding, so it does not depend on which came first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Twice([i128; 3]);

impl Twice {
    pub(super) fn at(v: Vertex) -> Twice {
        Twice::middle(v, v)
    }

    pub(super) fn middle(a: Vertex, b: Vertex) -> Twice {
        let ([ax, ay, az], [bx, by, bz]) = (a.pm(), b.pm());
        Twice([ax + bx, ay + by, az + bz])
    }

    /// From `other` to here in millimetres.
    #[allow(clippy::cast_precision_loss, reason = "the exact difference is rounded once")]
    pub(super) fn minus(&self, other: &Twice) -> V3 {
        let ([ax, ay, az], [bx, by, bz]) = (self.0, other.0);
        [(ax - bx) as f64 / 2e9, (ay - by) as f64 / 2e9, (az - bz) as f64 / 2e9]
    }

    /// The vertex here, half picometres rounded down. The middle of two lengths is always a length.
    pub(super) fn vertex(&self) -> Vertex {
        let half = |twice: i128| Length::from_pm(i64::try_from(twice.div_euclid(2)).unwrap_or_default());
        let [x, y, z] = self.0;
        Vertex { x: half(x), y: half(y), z: half(z) }
    }
}
