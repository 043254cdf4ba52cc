//! A drawing of a trim asked for as one document, so that it is had in every language.

use super::dxf::DrawingUnit;
use super::svg::PaperUnit;
use super::trim_drawing::{GaugeEdge, TrimDrawing};
use crate::error::{Error, ErrorKind};
use crate::record::{Calculation, Recorder};
use crate::trim::{BendRule, Profile};
use crate::units::{Angle, Length, LengthFormat};

/// What of a trim is drawn, and as what.
///
/// ```
/// use seamwright::export::{DrawingUnit, TrimView};
/// assert_ne!(TrimView::SectionSvg, TrimView::SectionDxf { unit: DrawingUnit::Inch });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum TrimView {
    /// The folded section, for print.
    SectionSvg,
    /// The flat, for print.
    FlatSvg,
    /// The folded section, true, for a machine.
    SectionDxf {
        /// The unit of the drawing.
        unit: DrawingUnit,
    },
    /// The flat of a piece of this length, true, for a machine.
    FlatDxf {
        /// The unit of the drawing.
        unit: DrawingUnit,
        /// Length of the piece.
        piece: Length,
    },
}

/// A drawing of a trim, as [`TrimDrawing`] makes it.
///
/// # Errors
/// Computing refuses every fault of the profile ([`Profile::unfold`], under `profile`), and what the drawing refuses, at `figure`, `view` or `profile.bends`.
///
/// ```
/// use seamwright::export::{DrawnTrim, TrimView};
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, Profile};
/// use seamwright::units::{BendAngle, Length, LengthFormat};
/// let profile = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(30))
///     .leg("flange", Length::inches(4))
///     .down(BendAngle::SQUARE)
///     .leg("face", Length::inches(3))
///     .build()?;
/// let format = LengthFormat::parse("in/16")?;
/// let (figure, paper, turned, gauge) = (None, None, None, None);
/// let drawn = DrawnTrim { profile, rule: BendRule::SharpCorner, name: "angle".into(), format, view: TrimView::FlatSvg, figure, paper, turned, gauge };
/// assert!(drawn.compute()?.contains("girth 7"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct DrawnTrim {
    /// The profile.
    pub profile: Profile,
    /// The rule of every bend that has none of its own.
    pub rule: BendRule,
    /// The trim's name.
    pub name: String,
    /// How lengths are written.
    pub format: LengthFormat,
    /// What is drawn.
    pub view: TrimView,
    /// The greatest width and height of the figure on paper; as [`TrimDrawing::new`] has it, unless said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub figure: Option<Length>,
    /// The unit in which an SVG says its size; likewise.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub paper: Option<PaperUnit>,
    /// By how much the section is turned, counter-clockwise; likewise.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub turned: Option<Angle>,
    /// The edge from which the flat is gauged; likewise.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub gauge: Option<GaugeEdge>,
}

impl Calculation for DrawnTrim {
    type Out = String;

    fn title(&self) -> String {
        format!("drawing of {}", self.name)
    }

    fn run<R: Recorder>(&self, _: &mut R) -> Result<String, Error> {
        let mut drawing = TrimDrawing::new(&self.name, &self.profile, &self.rule, self.format).map_err(|e| e.under("profile"))?;
        if let Some(figure) = self.figure {
            drawing = drawing.figure(figure)?;
        }
        if let Some(paper) = self.paper {
            drawing = drawing.paper(paper);
        }
        if let Some(turned) = self.turned {
            drawing = drawing.turned(turned);
        }
        if let Some(gauge) = self.gauge {
            drawing = drawing.gauged_from(gauge);
        }
        let text = |bytes| String::from_utf8(bytes).map_err(|_| Error::new(ErrorKind::Internal, "a drawing is not text"));
        match self.view {
            TrimView::SectionSvg => drawing.section_svg(),
            TrimView::FlatSvg => drawing.flat_svg(),
            TrimView::SectionDxf { unit } => text(drawing.section_dxf(unit)),
            TrimView::FlatDxf { unit, piece } => drawing.flat_dxf(unit, piece).map_err(|e| e.under("view.flat-dxf")).and_then(text),
        }
    }
}
