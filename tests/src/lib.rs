//! The reference cases: one set of data files, run by Rust here, by Python and by C.
//!
//! A case names a public function or a calculation, its inputs and the outputs that a source outside this project prints.

pub mod by_name;
pub mod case;
pub mod compare;
pub mod ops;

use std::path::PathBuf;

/// The code of the README and of the guide is run.
#[cfg(doctest)]
#[doc = include_str!("../../README.md")]
#[doc = include_str!("../../docs/trims.md")]
#[doc = include_str!("../../docs/junctions/README.md")]
pub struct Guide;

/// The folder of the workspace.
#[must_use]
pub fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("..")
}
