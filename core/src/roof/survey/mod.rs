//! Measuring a roof: planes by the tape, planes on the slope, and the sheet that a crew fills in.

mod between_corners;
mod closing;
mod folding;
mod joined_planes;
mod least_squares;
mod measured_plane;
mod measuring_sheet;
mod observations;
mod opening_ties;
mod pitch_needs;
mod shape;
mod sheet_ties;
mod sketched_roof;
mod slope_plane;
mod starts;
mod triangles;
mod trueness;
mod walk;

#[cfg(test)]
mod joined_tests;
#[cfg(test)]
mod measured_tests;
#[cfg(test)]
mod sheet_tests;

pub use joined_planes::{JoinedPlanes, JoinedRoof, Joint, JointFit, PlacedPlane, PlaneEdge, PlaneTie, SlopeAnchor, TieFit};
pub use measured_plane::{LevelSide, Mark, MeasuredLength, MeasuredOpening, MeasuredPlane, SlopeEnd, SquareCorner};
pub use measuring_sheet::{LinePart, MeasuringSheet, PitchNeed, PlaneSheet, SheetLine, SheetTie, TieReading};
pub use shape::{NamedCorner, NamedOpening, PlaneShape, Reading};
pub use sketched_roof::{SketchedPlane, SketchedRoof, SketchedWall};
pub use slope_plane::{SlopePlane, SlopeUp};
pub use trueness::{OutOfTrue, PlaneSide};
