//! Habits of the trade for the layout of panels.

use crate::units::{Length, Rounding};

/// Step of the order length of a panel with one finished end, to the nearest.
pub const ORDER_STEP_ONE_FINISHED: Length = Length::inches_64(8);
/// Step of the order length of a panel with two finished ends, to the nearest.
pub const ORDER_STEP_BOTH_FINISHED: Length = Length::inches_64(4);
/// Step of the order length of a panel whose ends are both cut on the roof, always up.
pub const ORDER_STEP_FIELD_CUT: Length = Length::inches(1);
/// Direction for panels with a finished end: the nearest step, a tie to the longer.
pub const ORDER_ROUNDING_FINISHED: Rounding = Rounding::HalfAway;
/// Direction for panels whose ends are both cut on the roof.
pub const ORDER_ROUNDING_FIELD_CUT: Rounding = Rounding::Ceil;
