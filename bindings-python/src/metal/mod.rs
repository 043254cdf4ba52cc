//! The classes of `seamwright.metal`.

mod gauge;
mod sheet;
mod together;

pub(crate) use gauge::{Gauge, GaugeSystem};
pub(crate) use sheet::Sheet;
pub(crate) use together::{MetalMeeting, MetalsTogether};
