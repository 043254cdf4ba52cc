//! How steep a roof is, and the geometry that two pitches make where their planes meet.
//!
//! | item | holds |
//! |---|---|
//! | [`Pitch`] | rise to run of two exact lengths, or degrees, kept as given |
//! | [`Corner`] | hip and valley at any plan corner and any two pitches: plan, slope, backing, dihedral, meeting angles, length factor |
//! | [`Framing`] | the framing square's row of one pitch |
//! | [`BendAt`] | the bend from flat at each kind of junction |
//! | [`SlopeRule`] | a minimum slope with its clause, compared exactly |

mod bends;
pub mod cautions;
mod corner;
mod framing;
mod minimum;
mod value;

#[cfg(test)]
mod corner_tests;
#[cfg(test)]
mod framing_tests;
#[cfg(test)]
mod rules_tests;
#[cfg(test)]
mod value_tests;

pub use bends::{BendAt, JunctionBend, Turn};
pub use corner::{Corner, CornerGeometry, CornerSide};
pub use framing::{Framing, FramingRow};
pub use minimum::{SlopeCheck, SlopeRule};
pub use value::Pitch;
