//! Closure pieces between the seams.

use crate::units::Length;

/// Length of the end tabs that turn up against the seams: 1 in.
pub const TAB: Length = Length::inches(1);
/// Set-back of the closure's face from the edge of the trim above it: 1/2 in.
pub const SET_BACK: Length = Length::inches_64(32);
/// Distance of the end fasteners from their tabs: 1 1/2 in, between the least and the greatest below.
pub const FASTENER_FROM_TAB: Length = Length::inches_64(96);
/// Least distance of an end fastener from its tab: 1 in.
pub const LEAST_FROM_TAB: Length = Length::inches(1);
/// Greatest distance of an end fastener from its tab: 2 in.
pub const GREATEST_FROM_TAB: Length = Length::inches(2);
/// Fasteners on centre until an engineer says otherwise: 12 in, a starting figure and never a strength.
pub const ON_CENTRE: Length = Length::inches(12);
