//! Metal moves with heat: length change, and the fold and gap that let an end move.
//!
//! A panel is fixed along one line; everywhere else it slides. At a lower end hooked over a cleat, with the fixed line above
//! it, heat draws the fold off the cleat and cold draws the nose against it. At an upper end that slides into something, with the fixed
//! line below it, it is the other way round. [`EndMovement`] gives the least fold and the gap at the laying temperature; [`EndCheck`] checks a
//! chosen fold and gap and answers with what would do. Lengths are along the seam unless said otherwise; a fold and a gap are measured
//! square to the junction line, which sees the movement times the sine of the meeting angle.

pub mod cautions;
mod change;
mod check;
mod end;
mod parting;
mod range;

#[cfg(test)]
mod change_tests;
#[cfg(test)]
mod end_tests;
#[cfg(test)]
mod parting_tests;

pub use change::{LengthChange, SkewParts, across_line};
pub use check::{EndCheck, EndVerdict};
pub use end::{EndMovement, EndRoom, MovingEnd};
pub use parting::{CapMoves, CapParting, PartingSide, SideParting};
pub use range::HeatRange;
