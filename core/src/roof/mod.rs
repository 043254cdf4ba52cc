//! The roof's planes and the lines where they meet.
//!
//! A roof is given as planes ([`PlaneInput`]: in plan with pitch and direction, or by vertices in space) and walls; [`RoofInput`] is the
//! calculation that checks them, finds the edges that planes share, wholly or in part, and names and measures every [`Line`].
//!
//! | item | holds |
//! |---|---|
//! | [`Outline`] | the validated shape of one plane, in the plane: x across the slope, y up it |
//! | [`Plane`] | vertices, pitch, axes, outline and areas of one plane |
//! | [`Line`], [`LineKind`] | ridge, hip, valley, transitions, eave, rake and the rest, with lengths and angles on each side |
//! | [`Cricket`] | two small planes behind a hole, by their own pitch; a [`RoofInput`] takes them by the name of the hole |
//! | [`StepInput`] | two planes of which the one ends plumb over the other |
//! | [`ExpansionJointInput`] | two planes in one, with an expansion joint along their panels or across them |
//! | [`Drain`] | which line the water of a plane reaches, and where it goes |
//! | [`MeasuredPlane`] | one plane by lengths between its corners, more than it needs, solved with what each is off |
//! | [`JoinedPlanes`] | planes measured on the slope, joined edge to edge into a [`RoofInput`] |
//! | [`SketchedRoof`], [`MeasuringSheet`] | from a rough sketch what to measure, in the order of the walk |
//! | [`Snapping`] | planes that almost meet, brought together within tolerances |
//! | [`cautions`] | what the room warns of |
//!
//! Signs: directions in plan are counter-clockwise from x; a plane lies on the left of its edges; a backing angle is positive where the plane
//! falls away from the line; a skew is positive where the line rises to the right, looking up the slope.

pub mod cautions;
mod clusters;
mod crickets;
mod drainage;
mod expansion_joints;
mod frame;
#[cfg(feature = "serde")]
mod json;
mod kind;
mod line;
mod matching;
mod naming;
mod outline;
mod overlap;
mod plan_edges;
mod plane;
mod plane_input;
mod plane_number;
mod ring_check;
mod snapping;
mod steps;
mod survey;
mod vertex;
mod walls;
mod whole_roof;

#[cfg(test)]
mod cricket_tests;
#[cfg(test)]
mod expansion_joint_tests;
#[cfg(test)]
mod hip_table_tests;
#[cfg(test)]
mod line_tests;
#[cfg(test)]
mod outline_tests;
#[cfg(test)]
mod plane_tests;
#[cfg(test)]
mod same_roof_tests;
#[cfg(test)]
pub(crate) mod sample_roofs;
#[cfg(test)]
mod step_tests;
#[cfg(test)]
mod terrain_tests;
#[cfg(test)]
mod test_roofs;
#[cfg(test)]
mod whole_roof_tests;

pub use crickets::{Cricket, CricketFigures, CricketInput, CricketShape, PlacedCricket};
pub use drainage::{Drain, Outfall};
pub use expansion_joints::ExpansionJointInput;
pub use kind::{LineKind, Water};
pub use line::{Beyond, Line, Side};
pub use outline::{Bounds, Edge, Outline, Point};
pub use plane::{Direction, Plane};
pub use plane_input::{Opening, PlaneInput, Shape};
pub(crate) use plane_number::{has_plane, plane_number};
pub(crate) use ring_check::RingCheck;
pub use snapping::{DroppedVertex, FlattenedFace, MergedFaces, SnapMove, SnappedRoof, Snapping, SplitEdge};
pub use steps::StepInput;
pub use survey::{
    JoinedPlanes, JoinedRoof, Joint, JointFit, LevelSide, LinePart, Mark, MeasuredLength, MeasuredOpening, MeasuredPlane, MeasuringSheet, NamedCorner,
    NamedOpening, OutOfTrue, PitchNeed, PlacedPlane, PlaneEdge, PlaneShape, PlaneSheet, PlaneSide, PlaneTie, Reading, SheetLine, SheetTie, SketchedPlane,
    SketchedRoof, SketchedWall, SlopeAnchor, SlopeEnd, SlopePlane, SlopeUp, SquareCorner, TieFit, TieReading,
};
pub use vertex::Vertex;
pub use walls::Wall;
pub use whole_roof::{GapChoice, Roof, RoofInput};
