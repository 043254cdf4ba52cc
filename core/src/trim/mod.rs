//! Trims: profiles of legs, bends and edges, bend rules, flat patterns and folded outlines.
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
//! | to | use |
//! |---|---|
//! | say a profile | [`Profile::builder`], [`Course`], [`Vertices`], [`Chain`]; an offset bend is a [`Joggle`], an edge an [`Edge`] |
//! | unfold it | [`FlatPattern`]; with nominal legs and a leg that takes up the difference, [`NominalSum`] |
//! | mark out as the books do | [`NominalSeam`] |
//! | learn a rule from the shop | [`TrialBend`], [`DeductionTable`] |
//! | look at one bend | [`BendFigures`], [`DinMinimumRadius`] |
//! | go over for springback | [`OverBend`], [`Springback`] |
//!
//! What the brake needs stands on the flat pattern: [`TrimFigures`] for lines, size, faces and mass, [`FormingCheck`] for whether it can be formed at all,
//! [`BendOrder`] for the gauge at each step and what is in the way on each swing, [`OrderSearch`] for an order that works.

mod aviation;
mod batch;
mod bend_figures;
mod blank;
mod brake;
mod builder;
pub mod cautions;
mod chain;
mod check;
mod course;
mod curves;
mod deductions;
mod din;
mod din_linear;
mod din_radius;
mod edge;
mod factors;
mod figures;
mod flat;
mod handbook;
mod joggle;
#[cfg(feature = "serde")]
mod json;
mod leg;
mod mitre;
mod neutral_axis;
mod nominal_seam;
mod nominal_sum;
mod outline;
mod point;
mod profile;
mod rule;
mod sharp_corner;
mod size;
mod solve;
mod springback;
mod springback_table;
mod taper;
mod trial_bend;
mod vertices;
mod walk;

#[cfg(test)]
mod batch_tests;
#[cfg(test)]
mod edge_tests;
#[cfg(test)]
mod figures_tests;
#[cfg(test)]
mod flat_tests;
#[cfg(all(test, feature = "serde"))]
mod json_tests;
#[cfg(test)]
mod outline_tests;
#[cfg(test)]
mod profile_tests;
#[cfg(test)]
mod rule_tests;
#[cfg(test)]
mod springback_tests;

pub use batch::{girths, girths_into};
pub use bend_figures::{BendFigures, BendFound};
pub use blank::{
    BlankBend, BlankEdge, BlankEnd, BlankFold, BlankHole, BlankLine, BlankPlan, BlankSide, EndCut, EndFold, FlatBlank, FoldEnds, FoldedEnd, HolePlace,
    MitredEnd, Notch, NotchShape, PieceEnd, PlannedBlank, PlannedHole, ReliefHabit, ReliefHole, Tab,
};
pub use brake::{
    BendOrder, BendStep, Brake, ClampLine, FoldTakes, FoldWay, FoldingPlan, FormingCheck, FormingFault, FormingMetal, FormingReport, GaugeStep, Handling,
    HitBody, Hole, HoleFinding, HoleLimit, MAX_SEARCHED, MAX_STEPS, OrderFound, OrderOutcome, OrderSearch, OrderSheet, OrderTrial, OrderVerdict, RadiusFinding,
    SheetEdge, SheetPart, StepFault, ToolOutline, Tooling,
};
pub use builder::ProfileBuilder;
pub use chain::{Chain, ChainLeg};
pub use course::{Course, CourseItem};
pub use deductions::{Deduction, DeductionTable};
pub use din::{DinOr, din_compensation};
pub use din_radius::DinMinimumRadius;
pub use edge::Edge;
pub use factors::{DinFactor, NeutralFactor, SetbackFactor, equivalent_neutral_factor};
pub use figures::{BendLines, FaceWidths, Figures, LinesFromEdge, PieceFigures, SectionFigures, TrimFigures};
pub use flat::{Flat, FlatBend, FlatLeg, FlatPattern};
pub use handbook::HandbookMetal;
pub use joggle::{Joggle, JoggleParts};
pub use leg::{Bend, Direction, Face, Leg, LegEnd};
pub use mitre::{LegCut, MatchedSection, MatchingSection, Mitre, MitreCorner, MitreHalf, MitredCorner, RunWay, SecondHalf, SheetSurface, Way};
pub use neutral_axis::NeutralAxis;
pub use nominal_seam::{NominalSeam, SeamMetal};
pub use nominal_sum::{NominalBend, NominalFlat, NominalSum};
pub use outline::{Arc, Bounds, Outline, Piece, Placement};
pub use point::Point;
pub use profile::Profile;
pub use rule::BendRule;
pub use size::BendSize;
pub use springback::{OverBend, Springback, SpringbackBy, SpringbackFactor, Sprung, Tooled};
pub use springback_table::SpringbackMetal;
pub use taper::{HeldLine, Taper, TaperBend, TaperLeg, TaperedPiece, TaperedPieces, TaperedRun, TaperedTrim};
pub(crate) use taper::{NearCut, profile_along};
pub use trial_bend::{TrialBend, TrialFound};
pub use vertices::{DrawnTo, Vertices};
pub use walk::Part;
