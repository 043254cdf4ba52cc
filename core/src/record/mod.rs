//! Where numbers come from: sources, cautions, and the steps of a calculation.

mod caution;
mod source;
mod worksheet;

pub use caution::{Caution, CautionCode};
pub use source::{Citation, Seen, Source};
pub use worksheet::{Calculation, Entry, Off, Recorder, Step, Worksheet};
