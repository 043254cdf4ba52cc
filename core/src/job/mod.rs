//! The job: from what is given to what the shop and the crew work from.

#[cfg(feature = "serde")]
mod by_name;

#[cfg(test)]
#[cfg(feature = "serde")]
mod by_name_tests;

#[cfg(feature = "serde")]
pub use by_name::{CALCULATIONS, LONGEST_INPUT, NamedCalculation, compute_json, explain_json, named, names};
