//! Every common-practice default of the library, named; nothing else holds a default.
//!
//! These are habits of the trade without a published source. A caller can change each, and results show them as
//! [`Source::CommonPractice`](crate::record::Source::CommonPractice).

pub mod assembly;
pub mod closure;
pub mod junction;
pub mod layout;
pub mod movement;
pub mod panel;
pub mod roof;
pub mod sealant;
pub mod trim;
pub mod underlayment;
