//! The classes of `seamwright.metal`.

mod gauge;

pub(crate) use gauge::{Gauge, GaugeSystem};
