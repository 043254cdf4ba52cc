//! Underlayment and membranes taken off: courses up each plane, rolls, lap marks, the membrane at eaves and under valleys.
//!
//! Positions are those of a plane's [`Outline`](crate::roof::Outline): x across the slope, y up it. Courses are laid from the foot up, each over the one below.

mod bands;
pub mod cautions;
mod courses;
mod eave_membrane;
mod roll_use;
mod rules;
mod valley_membrane;

#[cfg(test)]
mod underlayment_tests;

pub use courses::{Across, Course, CourseLayout, CoursePiece, LaidCourses};
pub use eave_membrane::{EaveBand, EaveMembrane, EaveReach};
pub use rules::{CourseRule, Roll};
pub use valley_membrane::{ValleyMembrane, ValleyStrip};
