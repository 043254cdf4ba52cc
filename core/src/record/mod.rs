//! Where numbers come from: sources, cautions, and the steps of a calculation.

#[cfg(feature = "serde")]
mod by_field;
mod caution;
#[cfg(feature = "serde")]
mod json;
mod source;
mod worksheet;

pub use caution::{Caution, CautionCode};
#[cfg(feature = "serde")]
pub use json::read_json;
pub use source::{Citation, Seen, Source};
pub use worksheet::{Calculation, Entry, Off, Recorder, Step, Worksheet, compute_all};
