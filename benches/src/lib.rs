//! Timings of seamwright: `cargo bench -p seamwright-benches`. They print; nothing asserts a time.

pub mod junctions;
pub mod polygons;
pub mod roofs;
