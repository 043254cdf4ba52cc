//! Lines and arcs of a plane figure in the working unit: where they meet, and whether a closed line of them keeps clear of itself.

mod crossing;
mod curve;

#[cfg(test)]
mod curve_tests;

pub(in crate::trim) use crossing::{Boxes, meet};
pub(in crate::trim) use curve::{Curve, Motion, Round, Xy, first_contact, heading, length, minus, plus, times};
