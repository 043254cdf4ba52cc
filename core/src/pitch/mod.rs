//! How steep a roof is, and the geometry that two pitches make where their planes meet.
//!
//! | item | holds |
//! |---|---|
//! | [`Pitch`] | rise to run of two exact lengths, or degrees, kept as given |

mod value;

#[cfg(test)]
mod value_tests;

pub use value::Pitch;
