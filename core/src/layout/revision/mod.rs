//! What a changed roof does to a list that is already on the shop's floor.

mod given;
mod revise;
mod revised;

#[cfg(test)]
mod revision_tests;

pub use given::{FormedRow, ListRow};
pub use revise::Revision;
pub use revised::{FormedUse, Revised, RevisedRow, RowState, VoidRow};
