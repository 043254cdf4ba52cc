//! Sealant tape and beads.

use crate::units::Angle;

/// Skew ends: where seams meet the line at less than this, or at more than its supplement, tape needs an extra lap at each change of
/// face: about 75 degrees.
pub const TAPE_LAPS_UNDER: Angle = Angle::of_degrees(75.0);
