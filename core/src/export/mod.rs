//! The packet's files, as pure writers: the same input gives the same bytes, with no date and no place in them.
//!
//! | writer | gives |
//! |---|---|
//! | [`packet_files`] | every file of a job's packet, by name |
//! | [`PanPlan`] | a valley's pan from above, with its lower end, as SVG |
//! | [`order_list_csv`] | the order, as CSV |
//! | [`TrimDrawing`] | the folded section and the flat of a trim, as SVG and as DXF |
//! | [`BlankDrawing`] | a blank with its notches, tabs, mitres and bend lines, as SVG and as DXF |
//! | [`JunctionDrawing`] | the section of a junction for the crew, as SVG |
//! | [`length_list_csv`] | the grouped length list of a layout, as CSV |
//! | [`panel_rows_csv`] | the grouped list or the pieces in the order of laying, as CSV; `panel_rows_json` the same as JSON |
//! | [`seam_marks_csv`], [`creep_checks_csv`] | the marks of the seams and the checks of creep, as CSV |
//! | [`roof_plan_svg`] | the plan of a roof with its panels, as SVG |
//! | [`crew_page_html`] | the printed sheet of a junction for the crew, as HTML |
//! | [`measuring_sheet_html`] | what to measure on a roof, as HTML with blanks to fill in |
//! | `drawing_json` | a plan or a measuring sheet by its name, from JSON (feature `serde`) |
//! | [`worksheet_markdown`] | a worksheet as Markdown |

mod blank_break;
mod blank_drawing;
mod blank_dxf;
mod blank_svg;
mod coping_sheets;
mod course_list;
mod crew_joints;
mod crew_page;
mod crew_sheets;
mod crew_water;
#[cfg(feature = "serde")]
mod drawing;
mod drawn_blank;
mod drawn_trim;
mod dxf;
mod dxf_frame;
mod fold;
mod junction_drawing;
mod labels;
mod length_list;
mod line_plan;
mod mark_list;
mod measuring_drawing;
mod measuring_page;
mod number;
mod order_list;
mod packet_files;
mod pan_plan;
mod pipe_sheets;
mod plan;
mod plan_box;
mod plan_marks;
mod plan_text;
mod section_adjoining;
mod section_axis;
mod section_balloons;
mod section_dims;
mod section_ground;
mod section_ink;
mod section_marks;
mod section_metal;
mod section_panel;
mod section_scene;
mod sheet_text;
mod sketch;
mod svg;
mod trim_drawing;
mod trim_flat;
mod trim_section;
mod wording;
mod worksheet;

#[cfg(test)]
mod blank_drawing_tests;
#[cfg(test)]
mod junction_drawing_tests;
#[cfg(all(test, feature = "serde"))]
mod junction_samples;
#[cfg(test)]
mod line_plan_tests;
#[cfg(test)]
mod packet_list_tests;
#[cfg(test)]
mod plan_tests;
#[cfg(test)]
mod trim_drawing_tests;

pub use crate::job::{ListColumn, ListField};
pub use blank_drawing::BlankDrawing;
pub use course_list::course_list_csv;
pub use crew_page::{CautionNote, CrewSheet, FastenerLine, MaterialLine, StrikeLine, crew_page_html};
#[cfg(feature = "serde")]
pub use drawing::{MeasuringPage, RoofPlan, drawing_json, drawing_names};
pub use drawn_blank::{BlankOf, BlankView, DrawnBlank};
pub use drawn_trim::{DrawnTrim, TrimView};
pub use dxf::DrawingUnit;
pub use junction_drawing::{JunctionDrawing, KeyEntry};
#[cfg(feature = "serde")]
pub use length_list::panel_rows_json;
pub use length_list::{PanelRow, PieceCells, length_list_csv, panel_rows_csv};
pub use line_plan::{LinePlan, PlanSide};
pub use mark_list::{creep_checks_csv, seam_marks_csv};
pub use measuring_page::measuring_sheet_html;
pub use order_list::order_list_csv;
pub use packet_files::{Artefact, packet_files, packet_summary};
pub use pan_plan::PanPlan;
pub use plan::roof_plan_svg;
pub use section_axis::{Other, SectionPlane};
pub use svg::PaperUnit;
pub use trim_drawing::{GaugeEdge, TrimDrawing};
pub use wording::struck_distance;
pub use worksheet::worksheet_markdown;
