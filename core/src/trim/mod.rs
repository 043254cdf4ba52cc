//! Trims: profiles of legs, bends and hems, bend rules, flat patterns and folded outlines.
//!
//! A [`Profile`] is walked from its start edge to its end edge. Legs say to which point of a bend each end is dimensioned ([`LegEnd`]); every bend rule is
//! brought to one quantity, the flat length between the two tangent lines of a bend ([`BendRule`]); so any rule works with legs dimensioned in any
//! way, and the published rules with their own leg conventions agree with their documents.
//!
//! Three quantities are called K in the trade, and they are three types here:
//!
//! | type | is | at r = t, 90 degrees |
//! |---|---|---|
//! | [`NeutralFactor`] | place of the neutral line as a share of the thickness, from the inside face | 0.33 to 0.45 by rule |
//! | [`DinFactor`] | k of DIN 6935: twice that | 0.65 |
//! | [`SetbackFactor`] | tan(A/2), from radius plus thickness to setback | 1 |
//!
//! What the brake needs stands on the flat pattern: [`TrimFigures`] for lines, size, faces and mass, [`FormingCheck`] for whether it can be formed at all,
//! [`BendOrder`] for the gauge at each step and what is in the way on each swing, [`OrderSearch`] for an order that works.

mod aviation;
mod brake;
mod builder;
pub mod cautions;
mod chain;
mod check;
mod deductions;
mod din;
mod edge;
mod factors;
mod figures;
mod flat;
mod handbook;
#[cfg(feature = "serde")]
mod json;
mod leg;
mod neutral_axis;
mod outline;
mod point;
mod profile;
mod rule;
mod sharp_corner;
mod size;
mod solve;
mod walk;

#[cfg(test)]
mod figures_tests;
#[cfg(test)]
mod flat_tests;
#[cfg(all(test, feature = "serde"))]
mod json_tests;
#[cfg(test)]
mod outline_tests;
#[cfg(test)]
mod rule_tests;

pub use brake::{
    BendOrder, BendStep, Brake, ClampLine, FoldTakes, FoldWay, FoldingPlan, FormingCheck, FormingFault, FormingMetal, FormingReport, GaugeStep, Handling,
    HitBody, Hole, HoleFinding, HoleLimit, MAX_SEARCHED, MAX_STEPS, OrderFound, OrderOutcome, OrderSearch, OrderSheet, OrderTrial, OrderVerdict, RadiusFinding,
    SheetEdge, SheetPart, Springback, SpringbackFactor, StepFault, ToolOutline, Tooling,
};
pub use builder::ProfileBuilder;
pub use chain::{Chain, ChainLeg};
pub use deductions::{Deduction, DeductionTable};
pub use din::din_compensation;
pub use edge::Edge;
pub use factors::{DinFactor, NeutralFactor, SetbackFactor, equivalent_neutral_factor};
pub use figures::{BendLines, FaceWidths, Figures, LinesFromEdge, PieceFigures, SectionFigures, TrimFigures};
pub use flat::{Flat, FlatBend, FlatLeg, FlatPattern};
pub use handbook::HandbookMetal;
pub use leg::{Bend, Direction, Face, Leg, LegEnd};
pub use neutral_axis::NeutralAxis;
pub use outline::{Arc, Bounds, Outline, Piece, Placement};
pub use point::Point;
pub use profile::Profile;
pub use rule::BendRule;
pub use size::BendSize;
pub use walk::Part;
