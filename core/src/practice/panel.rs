//! Habits of the trade for panels and their ends.

use super::roof::TRUE_LIMIT;
use crate::units::{Angle, Length};

/// Width of the lock of a folded seam.
pub const LOCK_WIDTH: Length = Length::inches_64(16);
/// How far the pan is turned up behind a closure at an upper end.
pub const TURN_UP: Length = Length::inches(1);
/// Fold of a panel's end around a cleat or a drip.
pub const END_FOLD: Length = Length::inches(1);
/// The least that is left on a skew end to be cut on the roof.
pub const SKEW_FIELD_TRIM_LEAST: Length = Length::inches(1);
/// What is left on a skew end to be cut on the roof.
pub const SKEW_FIELD_TRIM: Length = Length::inches(2);
/// The most that is left on a skew end to be cut on the roof.
pub const SKEW_FIELD_TRIM_MOST: Length = Length::inches(3);
/// Nearer to the seams than this a line is along them, and no panel ends on it: what is added square to it would be some sixty times as much along a seam.
pub const LEAST_MEETING: Angle = TRUE_LIMIT;
