//! Common practice for underlayment and membranes.

use crate::units::Length;

/// An offcut shorter than this is not laid: 4 ft.
pub const LEAST_PIECE: Length = Length::feet(4);
/// Membrane under a valley reaches beyond the edges of its pan by this on each side: 4 in.
pub const BEYOND_VALLEY_PAN: Length = Length::inches(4);
/// A membrane that lies under metal is rated to at least this, in degrees Celsius: 115.
pub const HOT_METAL_CELSIUS: f64 = 115.0;
