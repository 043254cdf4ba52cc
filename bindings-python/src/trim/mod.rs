//! The classes of `seamwright.trim`.

mod brake;
mod factors;
mod figures;
mod flat;
mod forming;
mod profile;
mod rule;

pub(crate) use brake::{BendOrder, GaugeStep, OrderFound, OrderSearch, OrderSheet, OrderTrial, OrderVerdict, StepFault};
pub(crate) use factors::{DinFactor, NeutralFactor, SetbackFactor};
pub(crate) use figures::{BendLines, FaceWidths, Figures, PieceFigures, SectionFigures, TrimFigures};
pub(crate) use flat::{Flat, FlatBend, FlatLeg, FlatPattern};
pub(crate) use forming::{FormingCheck, FormingFault, FormingReport, HoleFinding, RadiusFinding};
pub(crate) use profile::{Bend, Edge, Leg, Profile};
pub(crate) use rule::{BendRule, BendSize, Deduction, DeductionTable, din_compensation};
