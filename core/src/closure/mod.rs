//! Closure pieces: what stands between the seams under a trim.
//!
//! A closure piece is a Z for one bay: a web standing on the pan along the junction line, a lower flange pointing uphill, behind
//! the web, so that its fasteners are on the dry side, and a top flange pointing downhill under the trim. Its ends turn up as tabs
//! against the seams. [`ClosureBay`] gives the piece for any meeting angle, [`ClosureBlank`] its true blank with the metal of its bends,
//! [`ClosureSetting`] the lines that the crew strikes for it.
//!
//! Distances across the bay run along the junction line; distances up the slope are square to that line, on the pan.

mod blank;
pub mod cautions;
mod piece;
mod setting;

#[cfg(test)]
mod blank_tests;
#[cfg(test)]
mod closure_tests;

pub use blank::{ClosureBlank, CutClosure};
pub use piece::{Blank, ClosureBay, ClosureFasteners, ClosurePiece};
pub use setting::{ClosureLines, ClosureSetting, Face};
