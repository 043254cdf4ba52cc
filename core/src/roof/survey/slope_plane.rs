//! A plane by its true shape, as it lies on the slope.

use super::measured_plane::SlopeEnd;
use crate::pitch::Pitch;
use crate::roof::{Opening, Point};

/// Which way is up the slope in a plane's own coordinates.
///
/// ```
/// use seamwright::roof::{SlopeEnd, SlopeUp};
/// assert_eq!(SlopeUp::default(), SlopeUp::AlongY);
/// assert_ne!(SlopeUp::Level { edge: 0, end: SlopeEnd::Foot }, SlopeUp::Unknown);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SlopeUp {
    /// y runs straight up the slope and x is level.
    #[default]
    AlongY,
    /// Square to an edge that is level: the axes may lie any way.
    Level {
        /// The edge, by the number of the vertex that it leaves.
        edge: usize,
        /// Whether the plane rises or falls from it.
        end: SlopeEnd,
    },
    /// Not known: two joints at an angle to each other must fix the plane.
    Unknown,
}

/// A plane measured on the slope: a polygon of true lengths in its own coordinates.
///
/// ```
/// use seamwright::roof::{Point, SlopePlane};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let south = SlopePlane::new("south", vec![p(0, 0), p(40, 0), p(40, 20), p(0, 20)]);
/// assert!(south.pitch.is_none()); // the joints may fix it
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SlopePlane {
    /// Its name, unlike that of any other plane of the roof.
    pub name: String,
    /// Its vertices, in order; true lengths, seen from above.
    pub outer: Vec<Point>,
    /// Holes, in the same coordinates.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub holes: Vec<Opening<Point>>,
    /// Which way is up.
    #[cfg_attr(feature = "serde", serde(default))]
    pub up: SlopeUp,
    /// Its pitch, where it was measured.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pitch: Option<Pitch>,
}

impl SlopePlane {
    /// A plane with y up the slope, no hole, and a pitch that its joints must fix.
    #[must_use]
    pub fn new(name: impl Into<String>, outer: Vec<Point>) -> SlopePlane {
        SlopePlane { name: name.into(), outer, holes: Vec::new(), up: SlopeUp::AlongY, pitch: None }
    }
}
