//! The roof's planes and the lines where they meet.
//!
//! [`Outline`] is the validated shape of one plane, in the plane: x across the slope, y up it.

mod outline;

#[cfg(test)]
mod outline_tests;

pub use outline::{Bounds, Edge, Outline, Point};
