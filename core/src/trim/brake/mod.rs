//! What the brake needs: whether a trim can be bent, in which order, and where the gauge stands at each step.

mod forming;
mod forming_text;
mod order;
mod plan;
mod report;
mod search;
mod step;
mod strip;

#[cfg(test)]
mod forming_tests;
#[cfg(test)]
mod order_tests;
#[cfg(test)]
mod search_tests;

pub use forming::{FoldTakes, FormingCheck, FormingFault, FormingMetal, FormingReport, Hole, HoleFinding, HoleLimit, RadiusFinding};
pub use order::{BendOrder, MAX_STEPS, OrderSheet, OrderTrial, OrderVerdict};
pub use plan::{BendStep, Brake, ClampLine, FoldWay, FoldingPlan, SheetEdge, ToolOutline, Tooling};
pub use report::{GaugeStep, Handling, HitBody, StepFault};
pub use search::{MAX_SEARCHED, OrderFound, OrderOutcome, OrderSearch};
pub use strip::SheetPart;
