//! The private extension under the Python package `seamwright`.
//!
//! Nothing here knows the trade: every class wraps one type of core and hands the work on. Rooms have core's names; the public
//! modules of the package re-export them.

#![forbid(unsafe_code)]

mod by_name;
mod error;
mod given;
mod metal;
mod movement;
mod names;
mod pitch;
mod record;
mod trim;
mod units;

/// The compiled part of `seamwright`; use `seamwright` and its rooms instead.
#[pyo3::pymodule]
mod _seamwright {
    #[pymodule_export]
    use crate::by_name::{_calculation_names, _compute_json, _explain_json};
    #[pymodule_export]
    use crate::error::{_error_kinds, _raise_kind};
    #[pymodule_export]
    use crate::metal::{Gauge, GaugeSystem};
    #[pymodule_export]
    use crate::movement::LengthChange;
    #[pymodule_export]
    use crate::pitch::{BendAt, Corner, CornerGeometry, CornerSide, Framing, FramingRow, JunctionBend, Pitch, SlopeCheck, SlopeRule};
    #[pymodule_export]
    use crate::record::{Caution, Source, Step, Worksheet};
    #[pymodule_export]
    use crate::trim::{
        Bend, BendRule, BendSize, Deduction, DeductionTable, DinFactor, Edge, Flat, FlatBend, FlatLeg, FlatPattern, Leg, NeutralFactor, Profile, SetbackFactor,
        din_compensation,
    };
    #[pymodule_export]
    use crate::units::{
        Angle, Area, BendAngle, Density, Expansion, Force, Length, LengthFormat, LineLoad, LineMass, Mass, Pressure, ShopRounding, SurfaceMass, Temperature,
        TemperatureDifference, Volume,
    };

    /// The version of the library.
    #[pymodule_export]
    const VERSION: &str = env!("CARGO_PKG_VERSION");
}
