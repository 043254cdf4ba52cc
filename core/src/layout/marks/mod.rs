//! The marks that a crew strikes for every seam, and how creep is caught before it shows.

mod creep;
mod creep_checks;
mod seam_marks;

#[cfg(test)]
mod marks_tests;

pub use creep::{Creep, CreepCheck};
pub use seam_marks::{EndMark, MarkFrom, MarkedSeams, SeamMark, SeamMarks};
