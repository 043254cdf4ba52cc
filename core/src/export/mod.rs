//! The packet's files, as pure writers: the same input gives the same bytes, with no date and no place in them.
//!
//! | writer | gives |
//! |---|---|
//! | [`TrimDrawing`] | the folded section and the flat of a trim, as SVG and as DXF |
//! | [`length_list_csv`] | the grouped length list of a layout, as CSV |
//! | [`roof_plan_svg`] | the plan of a roof with its panels, as SVG |
//! | [`worksheet_markdown`] | a worksheet as Markdown |

mod dxf;
mod dxf_frame;
mod fold;
mod labels;
mod length_list;
mod number;
mod plan;
mod plan_box;
mod plan_text;
mod svg;
mod trim_drawing;
mod trim_flat;
mod trim_section;
mod worksheet;

#[cfg(test)]
mod trim_drawing_tests;

pub use dxf::DrawingUnit;
pub use length_list::{ListColumn, ListField, length_list_csv};
pub use plan::roof_plan_svg;
pub use svg::PaperUnit;
pub use trim_drawing::{GaugeEdge, TrimDrawing};
pub use worksheet::worksheet_markdown;
