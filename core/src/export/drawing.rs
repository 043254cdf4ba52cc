//! Drawings and pages by name, from JSON: the door for callers that know names and documents and not Rust's types.

use super::drawn_blank::DrawnBlank;
use super::drawn_trim::DrawnTrim;
use super::measuring_page::measuring_sheet_html;
use super::plan::roof_plan_svg;
use super::svg::PaperUnit;
use crate::error::{Error, ErrorKind, Faults};
use crate::job::{LONGEST_INPUT, Paper};
use crate::layout::{LaidPlane, Layout};
use crate::record::{Calculation, read_json};
use crate::roof::{RoofInput, SketchedRoof};
use crate::units::{Length, LengthFormat};

/// The plan of a roof, and what it shows: a document that stands for [`roof_plan_svg`](super::roof_plan_svg).
///
/// ```
/// use seamwright::export::RoofPlan;
/// let plan = RoofPlan::from_json(
///     br#"{"name": "boathouse", "figure": "180 mm", "paper": "millimetre", "lengths": "ft-in/16", "roof": {"planes": [{"name": "shed", "shape": {"plan": {
///         "outer": [{"x": "0'", "y": "0'"}, {"x": "20'", "y": "0'"}, {"x": "20'", "y": "12'"}, {"x": "0'", "y": "12'"}],
///         "pitch": "3:12", "down_slope": "270 deg", "anchor": {"x": "0'", "y": "0'", "z": "8'"}}}}]}}"#,
/// )?;
/// assert!(plan.svg()?.contains("eave 1, 20&#39;-0&quot;"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RoofPlan {
    /// What stands above it.
    pub name: String,
    /// The roof.
    pub roof: RoofInput,
    /// The panels of each plane, in the order of the planes, `None` for one that is not laid; empty for a plan without panels.
    #[serde(default)]
    pub layouts: Vec<Option<Layout>>,
    /// The greatest width and height of the roof on paper.
    pub figure: Length,
    /// The unit in which the drawing says its size.
    pub paper: PaperUnit,
    /// How lengths are written.
    pub lengths: LengthFormat,
}

impl RoofPlan {
    /// Reads it from JSON.
    ///
    /// # Errors
    /// Those of reading, with the path, as of [`compute_json`](crate::job::compute_json).
    pub fn from_json(json: &[u8]) -> Result<RoofPlan, Error> {
        read_json(json, LONGEST_INPUT)
    }

    /// The drawing.
    ///
    /// # Errors
    /// Those of the roof under `roof` and of the layouts under `layouts`, all of them; then as [`roof_plan_svg`](super::roof_plan_svg).
    pub fn svg(&self) -> Result<String, Error> {
        let mut faults = Faults::default();
        let roof = faults.keep(self.roof.compute().map_err(|e| e.under("roof")));
        let lay = |(i, layout): (usize, &Option<Layout>)| layout.as_ref().map(|l| l.compute().map_err(|e| e.under(&format!("layouts[{i}]")))).transpose();
        let laid: Vec<Option<LaidPlane>> = self.layouts.iter().enumerate().filter_map(|l| faults.keep(lay(l))).collect();
        faults.check()?;
        let roof = roof.ok_or_else(|| Error::new(ErrorKind::Internal, "a roof without fault is missing"))?;
        let none = vec![None; roof.planes().len()];
        let shown: Vec<Option<&LaidPlane>> = if self.layouts.is_empty() { none } else { laid.iter().map(Option::as_ref).collect() };
        roof_plan_svg(&self.name, &roof, &shown, self.figure, self.paper, self.lengths).map_err(|e| e.moved("laid", "layouts").moved("format", "lengths"))
    }
}

/// A measuring sheet for print: a document that stands for [`measuring_sheet_html`](super::measuring_sheet_html).
///
/// ```
/// use seamwright::export::MeasuringPage;
/// let page = MeasuringPage::from_json(
///     br#"{"job": "boathouse", "paper": "letter", "lengths": "ft-in/16", "sketch": {"planes": [{"name": "shed", "outer":
///         [{"x": "0'", "y": "0'"}, {"x": "20'", "y": "0'"}, {"x": "20'", "y": "12'"}, {"x": "0'", "y": "12'"}]}]}}"#,
/// )?;
/// assert!(page.html()?.contains("1. shed"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeasuringPage {
    /// The job's name.
    pub job: String,
    /// The sketch.
    pub sketch: SketchedRoof,
    /// The paper.
    pub paper: Paper,
    /// How rough lengths are written.
    pub lengths: LengthFormat,
}

impl MeasuringPage {
    /// Reads it from JSON.
    ///
    /// # Errors
    /// As [`RoofPlan::from_json`].
    pub fn from_json(json: &[u8]) -> Result<MeasuringPage, Error> {
        read_json(json, LONGEST_INPUT)
    }

    /// The page.
    ///
    /// # Errors
    /// Those of the sketch under `sketch`; then as [`measuring_sheet_html`](super::measuring_sheet_html).
    pub fn html(&self) -> Result<String, Error> {
        let sheet = self.sketch.compute().map_err(|e| e.under("sketch"))?;
        let page = measuring_sheet_html(&sheet, &self.job, self.paper, self.lengths)?;
        String::from_utf8(page).map_err(|e| Error::new(ErrorKind::Internal, "the page is no text").value_of(e))
    }
}

/// What each name draws, from JSON to text.
type Drawing = (&'static str, fn(&[u8]) -> Result<String, Error>);

const DRAWINGS: &[Drawing] = &[
    ("roof.measuring-page", |json| MeasuringPage::from_json(json)?.html()),
    ("roof.roof-plan", |json| RoofPlan::from_json(json)?.svg()),
    ("trim.drawn-blank", |json| read_json::<DrawnBlank>(json, LONGEST_INPUT)?.compute()),
    ("trim.drawn-trim", |json| read_json::<DrawnTrim>(json, LONGEST_INPUT)?.compute()),
];

/// The names of all drawings and pages that can be made from JSON.
///
/// ```
/// assert!(seamwright::export::drawing_names().any(|name| name == "roof.roof-plan"));
/// ```
pub fn drawing_names() -> impl Iterator<Item = &'static str> {
    DRAWINGS.iter().map(|(name, _)| *name)
}

/// The drawing or page of this name, as text, from its document: `roof.roof-plan` from a [`RoofPlan`], `roof.measuring-page` from a [`MeasuringPage`],
/// `trim.drawn-blank` from a [`DrawnBlank`], `trim.drawn-trim` from a [`DrawnTrim`].
///
/// # Errors
/// [`ErrorKind::Unknown`] at `name`, with the names that there are; those of reading, with the path; those of the drawing.
///
/// ```
/// use seamwright::export::drawing_json;
/// let e = drawing_json("roof.roof-plan", r#"{"name": "boathouse", "roof": {"planes": []}, "figure": "180 mm", "paper": "inch", "lengths": "mm.0"}"#).unwrap_err();
/// assert_eq!(e.path(), "roof.planes");
/// assert!(drawing_json("roof.plan", "{}").unwrap_err().allowed().unwrap().contains("roof.roof-plan"));
/// ```
pub fn drawing_json(name: &str, input: &str) -> Result<String, Error> {
    let Some((_, draw)) = DRAWINGS.iter().find(|(known, _)| *known == name) else {
        let said = Error::new(ErrorKind::Unknown, "no drawing has this name").at("name").value_of(name);
        return Err(said.accepts(drawing_names().collect::<Vec<_>>().join(", ")));
    };
    draw(input.as_bytes())
}
