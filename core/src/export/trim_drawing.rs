//! What a drawing of a trim is made from.

use super::dxf::DrawingUnit;
use super::svg::PaperUnit;
use super::{trim_flat, trim_section};
use crate::error::Error;
use crate::trim::{BendRule, Face, Flat, Part, Profile};
use crate::units::{Angle, Length, LengthFormat};

/// The edge from which the running distances of a flat are measured.
///
/// ```
/// use seamwright::export::GaugeEdge;
/// assert_ne!(GaugeEdge::Start, GaugeEdge::End);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum GaugeEdge {
    /// The edge where the profile's walk starts.
    Start,
    /// The edge where it ends.
    End,
}

/// The drawings of one trim: its folded section and its flat, as SVG for print and as DXF for a machine.
///
/// Legs are lettered and bends numbered from the start edge, alike on every drawing of the trim. On paper, a sheet too thin to be seen is drawn thicker,
/// with its bends opened to match, and the drawing says so; its figures are those of the metal, and DXF is always true.
///
/// ```
/// use seamwright::export::{DrawingUnit, TrimDrawing};
/// use seamwright::trim::{BendRule, Direction, Edge, Face, NeutralFactor, Profile};
/// use seamwright::units::{BendAngle, Length, LengthFormat};
/// let drip = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(30))
///     .leg("deck flange", Length::inches(4))
///     .down(BendAngle::SQUARE)
///     .leg("face", Length::inches(3))
///     .end(Edge::closed_hem(Length::inches_64(32), Direction::Down))
///     .build()?;
/// let drawing = TrimDrawing::new("drip", &drip, &BendRule::neutral_axis(NeutralFactor::new(0.4)?), LengthFormat::parse("in/16")?)?;
/// assert!(drawing.section_svg()?.contains("deck flange"));
/// assert!(drawing.flat_svg()?.contains("girth"));
/// let dxf = drawing.flat_dxf(DrawingUnit::Inch, Length::feet(10))?;
/// assert_eq!(dxf, drawing.flat_dxf(DrawingUnit::Inch, Length::feet(10))?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct TrimDrawing<'a> {
    pub(super) name: &'a str,
    pub(super) profile: &'a Profile,
    pub(super) flat: Flat,
    pub(super) format: LengthFormat,
    pub(super) figure: Length,
    pub(super) paper: PaperUnit,
    pub(super) turned: Angle,
    pub(super) gauge: GaugeEdge,
}

impl<'a> TrimDrawing<'a> {
    /// The drawings of a profile that is unfolded by this rule, with lengths written in this format. The figure is at most 150 mm of paper wide and high,
    /// sizes are said in millimetres, the first leg runs to the right and the flat is gauged from the start edge, unless said otherwise.
    ///
    /// # Errors
    /// Those of [`Profile::unfold`].
    pub fn new(name: &'a str, profile: &'a Profile, rule: &BendRule, format: LengthFormat) -> Result<TrimDrawing<'a>, Error> {
        Ok(TrimDrawing {
            name,
            profile,
            flat: profile.unfold(rule)?,
            format,
            figure: Length::micrometres(150_000),
            paper: PaperUnit::Millimetre,
            turned: Angle::ZERO,
            gauge: GaugeEdge::Start,
        })
    }

    /// The greatest width and height of the figure on paper; text and margins come around it.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange) for a figure of zero or less.
    pub fn figure(mut self, size: Length) -> Result<TrimDrawing<'a>, Error> {
        self.figure = size.positive("figure")?;
        Ok(self)
    }

    /// The unit in which an SVG says its size.
    #[must_use]
    pub fn paper(mut self, unit: PaperUnit) -> TrimDrawing<'a> {
        self.paper = unit;
        self
    }

    /// The section turned counter-clockwise by this angle, to be drawn as it is installed.
    #[must_use]
    pub fn turned(mut self, angle: Angle) -> TrimDrawing<'a> {
        self.turned = angle;
        self
    }

    /// The edge from which the flat is gauged.
    #[must_use]
    pub fn gauged_from(mut self, edge: GaugeEdge) -> TrimDrawing<'a> {
        self.gauge = edge;
        self
    }

    /// The flat pattern that is drawn.
    #[must_use]
    pub fn flat(&self) -> &Flat {
        &self.flat
    }

    /// The folded section as SVG: both faces, the painted one marked, each leg's dimension and each bend's angle, and a schedule of both.
    ///
    /// # Errors
    /// [`ErrorKind::TooLarge`](crate::error::ErrorKind::TooLarge) for more than 500 bends, which no paper bears;
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) where a length cannot be rounded to the format.
    pub fn section_svg(&self) -> Result<String, Error> {
        trim_section::svg(self)
    }

    /// The folded section as DXF, true to the metal, its arcs as bulges. Layers: `SHEET-OUTLINE`, `PAINTED-FACE`.
    #[must_use]
    pub fn section_dxf(&self, unit: DrawingUnit) -> Vec<u8> {
        trim_section::dxf(self, unit)
    }

    /// The flat as SVG: bend lines with their number, direction and angle, running distances from the gauging edge, and the girth.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) where a length cannot be rounded to the format.
    pub fn flat_svg(&self) -> Result<String, Error> {
        trim_flat::svg(self)
    }

    /// The flat of a piece of this length as DXF, upper face up, true to the metal, with the start edge on the y axis.
    /// Layers: `BLANK-EDGE`, `BEND-UP`, `BEND-DOWN`, `BEND-TANGENT`, `NOTES`.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange) for a piece of zero or less, and as [`TrimDrawing::section_svg`].
    pub fn flat_dxf(&self, unit: DrawingUnit, piece: Length) -> Result<Vec<u8>, Error> {
        trim_flat::dxf(self, unit, piece.positive("piece")?)
    }

    pub(super) fn text(&self, length: Length) -> Result<String, Error> {
        self.format.string(length)
    }

    /// A radius or a thickness, for which the steps of a tape are too coarse.
    pub(super) fn fine_text(&self, length: Length) -> Result<String, Error> {
        self.format.fine()?.string(length)
    }

    pub(super) fn scale(&self, extent: f64) -> (f64, String) {
        usual_scale(self.figure.mm(), extent)
    }

    pub(super) fn painted_text(&self) -> &'static str {
        match self.profile.painted {
            Face::Upper => "painted face up",
            Face::Lower => "painted face down",
        }
    }
}

/// The drawn length of a millimetre, and how it is said: the largest of the usual scales at which this extent keeps to the room on paper.
pub(super) fn usual_scale(room: f64, extent: f64) -> (f64, String) {
    const SCALES: [(f64, f64); 22] = [
        (10.0, 1.0),
        (5.0, 1.0),
        (4.0, 1.0),
        (3.0, 1.0),
        (2.0, 1.0),
        (1.0, 1.0),
        (1.0, 2.0),
        (1.0, 3.0),
        (1.0, 4.0),
        (1.0, 5.0),
        (1.0, 6.0),
        (1.0, 8.0),
        (1.0, 10.0),
        (1.0, 12.0),
        (1.0, 15.0),
        (1.0, 20.0),
        (1.0, 25.0),
        (1.0, 30.0),
        (1.0, 40.0),
        (1.0, 50.0),
        (1.0, 75.0),
        (1.0, 100.0),
    ];
    let (paper, real) = SCALES.into_iter().find(|(paper, real)| extent * paper <= room * real).unwrap_or_else(|| (1.0, (extent / room).ceil()));
    (paper / real, format!("{paper:.0}:{real:.0}"))
}

/// The letter of a leg: a to z, then a1 and so on.
pub(super) fn letter(index: usize) -> String {
    let letter = u8::try_from(index % 26).map_or('?', |d| char::from(b'a' + d));
    match index / 26 {
        0 => letter.to_string(),
        round => format!("{letter}{round}"),
    }
}

/// What a bend is called on drawings.
pub(super) fn bend_name(part: Part) -> String {
    match part {
        Part::Body(i) => (i + 1).to_string(),
        hem => hem.to_string(),
    }
}
