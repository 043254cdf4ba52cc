//! The C interface of seamwright: a thin layer over the core crate, described for its users in `docs/c-conventions.md`.
//!
//! No rule, default, formula or table of the trade lives here. Pointers are read and written in [`boundary`] only, and every
//! export runs inside its guard.

#[cfg(panic = "abort")]
compile_error!("the C interface turns a panic into a status, which needs panic = \"unwind\"");

mod abi;
pub mod angle;
pub mod batch;
pub mod drawing;
pub mod error;
pub mod flat;
pub mod job;
pub mod length;
pub mod metal;
pub mod movement;
pub mod packet;
pub mod pitch;
pub mod quantity;
pub mod spacing;
pub mod status;
pub mod trim;
pub mod version;

pub mod boundary;
mod numbers;

#[cfg(test)]
mod boundary_tests;
#[cfg(test)]
mod numbers_tests;

pub use abi::SW_ABI_VERSION;
