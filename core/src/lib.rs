//! Layout, fabrication and estimating of standing-seam sheet-metal roofs.
//!
//! The library turns a measured roof, a panel and an engineer's loads into metal that fits: panel lengths, the flat width and
//! bend lines of every trim, the lines that the crew strikes at each junction, fasteners, sealant and the order.
//!
//! Lengths are exact ([`units::Length`]), every rule carries its [`record::Source`], calculations can show their working
//! ([`record::Calculation`]), and a refusal names the field, the value and what would be accepted ([`error::Error`]).
//!
//! The rooms, from the ground up: see `DEVELOPERS.md` for the table of floors, which a test holds.
//!
//! **Safety.** The library computes; it does not license. Structural spacing, loads, and fire and weather approvals belong to a licensed
//! engineer, the local code and the panel's own test report.

#![forbid(unsafe_code)]

pub mod assembly;
pub mod closure;
pub mod error;
#[cfg(feature = "export")]
pub mod export;
pub mod fastener;
pub mod job;
pub mod junction;
pub mod layout;
pub mod metal;
pub mod movement;
pub mod num;
pub mod panel;
pub mod pitch;
pub mod practice;
pub mod record;
pub mod roof;
pub mod sealant;
pub mod spacing;
pub mod stock;
pub mod trim;
pub mod underlayment;
pub mod units;
