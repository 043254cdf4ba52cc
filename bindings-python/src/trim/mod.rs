//! The classes of `seamwright.trim`.

mod batch;
mod blank;
mod brake;
mod calculations;
mod drawing;
mod factors;
mod figures;
mod flat;
mod forming;
mod mitre;
mod profile;
mod rule;
mod taper;

pub(crate) use batch::_girths_into;
pub(crate) use blank::{BlankBend, BlankEdge, BlankPlan, EndFold, FlatBlank, FoldedEnd, PlannedBlank};
pub(crate) use brake::{BendOrder, GaugeStep, OrderFound, OrderSearch, OrderSheet, OrderTrial, OrderVerdict, StepFault};
pub(crate) use calculations::{
    BendFigures, BendFound, Chain, Course, DinMinimumRadius, Joggle, JoggleParts, MatchedSection, MatchingSection, NominalBend, NominalFlat, NominalSeam,
    NominalSum, OverBend, ReliefHole, SeamMetal, Springback, Sprung, Tooled, TrialBend, TrialFound, Vertices,
};
pub(crate) use drawing::DrawnTrim;
pub(crate) use factors::{DinFactor, NeutralFactor, SetbackFactor};
pub(crate) use figures::{BendLines, FaceWidths, Figures, PieceFigures, SectionFigures, TrimFigures};
pub(crate) use flat::{Flat, FlatBend, FlatLeg, FlatPattern, Part};
pub(crate) use forming::{FormingCheck, FormingFault, FormingReport, HoleFinding, RadiusFinding};
pub(crate) use mitre::{LegCut, Mitre, MitreHalf, MitredCorner};
pub(crate) use profile::{Bend, Edge, Leg, Profile};
pub(crate) use rule::{BendRule, BendSize, Deduction, DeductionTable, din_compensation};
pub(crate) use taper::{Taper, TaperBend, TaperLeg, TaperedPiece, TaperedPieces, TaperedRun, TaperedTrim};
