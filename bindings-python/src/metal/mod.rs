//! The classes of `seamwright.metal`.

mod gauge;
mod together;

pub(crate) use gauge::{Gauge, GaugeSystem};
pub(crate) use together::{MetalMeeting, MetalsTogether};
