//! What a hooked end keeps in hand beside its travel.

use crate::units::Length;

/// The least gap that stays between a fold and what it hooks: 1/8 in.
pub const CLEARANCE: Length = Length::inches_64(8);
/// The least length that a fold keeps hooked: 3/8 in.
pub const ENGAGEMENT: Length = Length::inches_64(24);
