//! The classes of `seamwright.trim`.

mod asked;
mod blank;
mod factors;
mod flat;
mod mitre;
mod profile;
mod rule;
mod taper;

pub(crate) use blank::{BlankBend, BlankEdge, BlankPlan, EndFold, FlatBlank, FoldedEnd, PlannedBlank, relief_diameter};
pub(crate) use factors::{DinFactor, NeutralFactor, SetbackFactor};
pub(crate) use flat::{Flat, FlatBend, FlatLeg, FlatPattern};
pub(crate) use mitre::{LegCut, Mitre, MitreHalf, MitredCorner};
pub(crate) use profile::{Bend, Edge, Leg, Profile};
pub(crate) use rule::{BendRule, BendSize, Deduction, DeductionTable, din_compensation};
pub(crate) use taper::{Taper, TaperBend, TaperLeg, TaperedPiece, TaperedPieces, TaperedRun, TaperedTrim};
