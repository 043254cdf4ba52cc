//! Where seams are put: clear of what stands in the plane, spread over a plane out of square, and from which side they are laid.

mod clear_of;
mod clear_search;
mod direction;
mod seam_clearance;
mod taper;

#[cfg(test)]
mod clearance_tests;
#[cfg(test)]
mod direction_tests;
#[cfg(test)]
mod taper_tests;

pub use clear_of::{ClearOf, ClearRange, LayCost, Obstacle, Prefer, SeamDistance, SeamShift};
pub(super) use direction::area_of;
pub use direction::{DirectionCost, DirectionOfLay, LayDirection, LayDirections, PlaneSide};
pub use seam_clearance::SeamClearance;
pub use taper::{TaperMark, TaperedLay, TaperedPanels};
