//! The classes of `seamwright.roof`.

mod cricket;
mod drain;
mod line;
mod outline;
mod plane;
mod snapping;
mod survey;
mod whole_roof;

pub(crate) use cricket::{Cricket, CricketFigures, PlacedCricket};
pub(crate) use drain::Drain;
pub(crate) use line::{Line, Side};
pub(crate) use outline::{Bounds, Edge, Outline, Point};
pub(crate) use plane::{Plane, Vertex};
pub(crate) use snapping::{DroppedVertex, FlattenedFace, MergedFaces, SnapMove, SnappedRoof, Snapping, SplitEdge};
pub(crate) use survey::{
    JoinedPlanes, JoinedRoof, JointFit, MeasuredPlane, MeasuringSheet, NamedCorner, NamedOpening, OutOfTrue, PlacedPlane, PlaneShape, PlaneSheet, Reading,
    SheetLine, SketchedRoof,
};
pub(crate) use whole_roof::{Roof, RoofInput, Wall};
