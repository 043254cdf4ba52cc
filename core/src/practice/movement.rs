//! What a hooked end keeps in hand beside its travel, and what the far side of a joint is taken to do.

use crate::units::Length;

/// The least gap that stays between a fold and what it hooks: 1/8 in.
pub const CLEARANCE: Length = Length::inches_64(8);
/// The least length that a fold keeps hooked: 3/8 in.
pub const ENGAGEMENT: Length = Length::inches_64(24);
/// From an expansion joint across the panels to where the side below it is held: nothing, as its flashing is fixed to the deck.
pub const FAR_SIDE_TO_FIXED: Length = Length::ZERO;
