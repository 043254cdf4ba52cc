//! Planes brought together within a tolerance: vertices made one, edges split where a neighbour ends, faces made flat, faces of one plane made one.

mod flatten;
mod merge;
mod rings;
mod snap;

#[cfg(test)]
mod snap_tests;

pub use snap::{DroppedVertex, FlattenedFace, MergedFaces, SnapMove, SnappedRoof, Snapping, SplitEdge};
