//! A drawing of a blank asked for as one document, so that it is had in every language.

use super::blank_drawing::BlankDrawing;
use super::dxf::DrawingUnit;
use super::svg::PaperUnit;
use super::trim_drawing::GaugeEdge;
use crate::error::{Error, ErrorKind};
use crate::record::{Calculation, Recorder};
use crate::trim::{BlankPlan, EndFold, Taper};
use crate::units::{Length, LengthFormat};

/// Whose blank is drawn.
///
/// ```
/// use seamwright::export::BlankOf;
/// use seamwright::trim::{BendRule, Direction, Edge, EndFold, FoldEnds};
/// use seamwright::units::{Angle, Length};
/// let (width, shown, thickness) = (Length::inches(16), Length::inches(12), Length::mils(24));
/// let hem = Edge::closed_hem(Length::inches(1), Direction::Down);
/// let fold = EndFold { width, meeting: Angle::parse("45 deg")?, hem, thickness, rule: BendRule::SharpCorner, ends: FoldEnds::Mirrored, shown };
/// assert!(matches!(BlankOf::EndFold(fold), BlankOf::EndFold(_)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[allow(clippy::large_enum_variant, reason = "one is made for a drawing")]
pub enum BlankOf {
    /// A planned blank.
    Plan(BlankPlan),
    /// A tapered trim.
    Taper(Taper),
    /// The folded end of a panel at a skew.
    EndFold(EndFold),
}

/// As what a blank is drawn.
///
/// ```
/// use seamwright::export::{BlankView, DrawingUnit};
/// assert_ne!(BlankView::Svg, BlankView::Dxf { unit: DrawingUnit::Inch });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum BlankView {
    /// For print.
    Svg,
    /// True and whole, for a machine.
    Dxf {
        /// The unit of the drawing.
        unit: DrawingUnit,
    },
}

/// A drawing of a blank, as [`BlankDrawing`] makes it.
///
/// # Errors
/// Computing refuses what the blank's own calculation refuses, under `of.plan`, `of.taper` or `of.end-fold`, and what the drawing refuses, at `figure`.
///
/// ```
/// use seamwright::export::{BlankOf, BlankView, DrawnBlank};
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Direction, Edge, EndFold, FoldEnds};
/// use seamwright::units::{Angle, Length, LengthFormat};
/// let (width, shown, thickness) = (Length::inches(16), Length::inches(12), Length::mils(24));
/// let hem = Edge::closed_hem(Length::inches(1), Direction::Down);
/// let fold = EndFold { width, meeting: Angle::parse("45 deg")?, hem, thickness, rule: BendRule::SharpCorner, ends: FoldEnds::Mirrored, shown };
/// let (of, format, view) = (BlankOf::EndFold(fold), LengthFormat::parse("in/16")?, BlankView::Svg);
/// let drawn = DrawnBlank { of, name: "panel end".into(), format, view, figure: None, paper: None, gauge: None };
/// assert!(drawn.compute()?.contains("panel end"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct DrawnBlank {
    /// Whose blank it is.
    pub of: BlankOf,
    /// The blank's name.
    pub name: String,
    /// How lengths are written.
    pub format: LengthFormat,
    /// As what it is drawn.
    pub view: BlankView,
    /// The greatest width and height of the figure on paper; as [`BlankDrawing::new`] has it, unless said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub figure: Option<Length>,
    /// The unit in which an SVG says its size; likewise.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub paper: Option<PaperUnit>,
    /// The edge from which distances across are measured; likewise.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub gauge: Option<GaugeEdge>,
}

impl DrawnBlank {
    fn draw(&self, mut drawing: BlankDrawing<'_>) -> Result<String, Error> {
        if let Some(figure) = self.figure {
            drawing = drawing.figure(figure)?;
        }
        if let Some(paper) = self.paper {
            drawing = drawing.paper(paper);
        }
        if let Some(gauge) = self.gauge {
            drawing = drawing.gauged_from(gauge);
        }
        match self.view {
            BlankView::Svg => drawing.svg(),
            BlankView::Dxf { unit } => String::from_utf8(drawing.dxf(unit)?).map_err(|_| Error::new(ErrorKind::Internal, "a drawing is not text")),
        }
    }
}

impl Calculation for DrawnBlank {
    type Out = String;

    fn title(&self) -> String {
        format!("drawing of {}", self.name)
    }

    fn run<R: Recorder>(&self, _: &mut R) -> Result<String, Error> {
        match &self.of {
            BlankOf::Plan(plan) => self.draw(BlankDrawing::of_plan(&self.name, &plan.compute().map_err(|e| e.under("of.plan"))?, self.format)),
            BlankOf::Taper(taper) => self.draw(BlankDrawing::of_taper(&self.name, &taper.compute().map_err(|e| e.under("of.taper"))?, self.format)),
            BlankOf::EndFold(fold) => self.draw(BlankDrawing::new(&self.name, &fold.compute().map_err(|e| e.under("of.end-fold"))?.blank, self.format)),
        }
    }
}
