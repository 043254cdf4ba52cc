//! The private extension under the Python package `seamwright`.
//!
//! Nothing here knows the trade: every class wraps one type of core and hands the work on. Each room of core has a module of its own, because
//! names repeat between rooms; the public modules of the package open them and re-export what they hold.

#![forbid(unsafe_code)]

mod arrays;
mod assembly;
mod by_name;
mod closure;
mod document;
mod error;
mod given;
mod job;
mod json;
mod junction;
mod layout;
mod metal;
mod movement;
mod names;
mod panel;
mod parts;
mod pitch;
mod place;
mod record;
mod roof;
mod rooms;
mod spacing;
mod stock;
mod trim;
mod underlayment;
mod units;

/// The compiled part of `seamwright`; use `seamwright` and its rooms instead.
#[pyo3::pymodule]
mod _seamwright {
    #[pymodule_export]
    use crate::by_name::{_calculation_names, _compute_all_json, _compute_json, _explain_json};
    #[pymodule_export]
    use crate::error::{_error_kinds, _panic_class, _raise_kind};
    #[pymodule_export]
    use crate::rooms::_room;
    // The stubs know the rooms as parts of the extension.
    #[cfg(feature = "stubs")]
    #[pymodule_export]
    use crate::rooms::{assembly, closure, job, junction, layout, metal, movement, panel, pitch, record, roof, spacing, stock, trim, underlayment, units};

    /// The version of the library.
    #[pymodule_export]
    const VERSION: &str = env!("CARGO_PKG_VERSION");
}
