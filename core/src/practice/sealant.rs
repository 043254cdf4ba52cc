//! Sealant tape and beads.

use crate::units::{Angle, Length};

/// Skew ends: where seams meet the line at less than this, or at more than its supplement, tape needs an extra lap at each change of
/// face: about 75 degrees.
pub const TAPE_LAPS_UNDER: Angle = Angle::of_degrees(75.0);

/// A gap in a sealed line that a bead in the corner bridges, as between a closure's tab and its seam: up to 1/8 in.
pub const LONGEST_GAP: Length = Length::inches_64(8);
