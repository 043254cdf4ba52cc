//! Blanks: the shape that is cut from flat sheet, with its bend lines, notches, tabs and holes.

mod crossing;
mod measure;
mod shape;

pub use shape::{BlankBend, BlankEdge, BlankFold, BlankHole, BlankLine, BlankSide, FlatBlank};
