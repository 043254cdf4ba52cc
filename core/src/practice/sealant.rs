//! Sealant tape and beads.

use crate::units::{Angle, Length};

/// Skew ends: where seams meet the line at less than this, or at more than its supplement, tape needs an extra lap at each change of
/// face: about 75 degrees.
pub const TAPE_LAPS_UNDER: Angle = Angle::of_degrees(75.0);

/// A gap in a sealed line that a bead in the corner bridges, as between a closure's tab and its seam: up to 1/8 in.
pub const LONGEST_GAP: Length = Length::inches_64(8);

/// Beads in each lap of a trim: two.
pub const LAP_BEADS: u32 = 2;

/// A bead in a lap, as gunned: 1/4 in wide.
pub const LAP_BEAD_WIDTH: Length = Length::inches_64(16);

/// A bead in a lap, as gunned: 1/8 in deep.
pub const LAP_BEAD_DEPTH: Length = Length::inches_64(8);

/// A bead up the corner between a closure's tab and its seam, and over the top of it: 1/4 in wide.
pub const CORNER_BEAD_WIDTH: Length = Length::inches_64(16);

/// The same bead's depth: 1/8 in, the gap that it bridges.
pub const CORNER_BEAD_DEPTH: Length = LONGEST_GAP;
