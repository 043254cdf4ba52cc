//! Trims.

use crate::units::Length;

/// What a blank may differ from that of a round bend, across a bend line that leans, before it is said: 0.1 mm, about what a shear keeps.
pub const ROUND_BEND: Length = Length::micrometres(100);
