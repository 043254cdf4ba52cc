//! The classes of `seamwright.trim`.

mod batch;
mod calculations;
mod factors;
mod flat;
mod profile;
mod rule;

pub(crate) use batch::_girths_into;
pub(crate) use calculations::{
    BendFigures, BendFound, Chain, Course, DinMinimumRadius, Joggle, JoggleParts, NominalBend, NominalFlat, NominalSeam, NominalSum, OverBend, SeamMetal,
    Springback, Sprung, Tooled, TrialBend, TrialFound, Vertices,
};
pub(crate) use factors::{DinFactor, NeutralFactor, SetbackFactor};
pub(crate) use flat::{Flat, FlatBend, FlatLeg, FlatPattern, Part};
pub(crate) use profile::{Bend, Edge, Leg, Profile};
pub(crate) use rule::{BendRule, BendSize, Deduction, DeductionTable, din_compensation};
