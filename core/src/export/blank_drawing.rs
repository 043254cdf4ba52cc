//! What a drawing of a blank is made from.

use super::dxf::DrawingUnit;
use super::svg::PaperUnit;
use super::trim_drawing::{GaugeEdge, usual_scale};
use super::{blank_dxf, blank_svg};
use crate::error::{Error, ErrorKind};
use crate::trim::{FlatBlank, PlannedBlank, TaperedTrim};
use crate::units::{Length, LengthFormat};

/// Where bend lines meet the two ends of a blank, measured along each end from the start edge, and how long each end is.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Stations {
    pub(super) near: Vec<Length>,
    pub(super) far: Vec<Length>,
    pub(super) girths: (Length, Length),
}

/// The drawings of one blank: as SVG for print and as DXF for a machine.
///
/// On paper the blank is drawn to scale with a piece of its length broken out where it is long and plain; bend lines carry their number, direction and
/// angle, running distances are measured along each end from the gauging edge, and a table gives every corner. DXF is always true and whole.
///
/// ```
/// use seamwright::export::{BlankDrawing, DrawingUnit};
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, BlankEnd, BlankPlan, Face, NeutralFactor, Profile};
/// use seamwright::units::{BendAngle, Length, LengthFormat};
/// let profile = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(24))
///     .leg("flange", Length::inches(4))
///     .down(BendAngle::SQUARE)
///     .leg("face", Length::inches(3))
///     .build()?;
/// let rule = BendRule::neutral_axis(NeutralFactor::MIDDLE);
/// let (near, far, tolerance) = (BlankEnd::default(), BlankEnd::default(), Length::micrometres(10));
/// let planned = BlankPlan { profile, rule, length: Length::feet(10), near, far, holes: vec![], tolerance }.compute()?;
/// let drawing = BlankDrawing::of_plan("eave drip", &planned, LengthFormat::parse("in/16")?);
/// assert!(drawing.svg()?.contains("broken"));
/// assert_eq!(drawing.dxf(DrawingUnit::Inch)?, drawing.dxf(DrawingUnit::Inch)?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct BlankDrawing<'a> {
    pub(super) name: &'a str,
    pub(super) blank: &'a FlatBlank,
    pub(super) stations: Option<Stations>,
    pub(super) format: LengthFormat,
    pub(super) figure: Length,
    pub(super) paper: PaperUnit,
    pub(super) gauge: GaugeEdge,
}

impl<'a> BlankDrawing<'a> {
    /// The drawings of any blank, with lengths written in this format. The figure is at most 150 mm of paper wide and high, sizes are said in
    /// millimetres and the gauging edge is the start edge, unless said otherwise.
    #[must_use]
    pub fn new(name: &'a str, blank: &'a FlatBlank, format: LengthFormat) -> BlankDrawing<'a> {
        BlankDrawing { name, blank, stations: None, format, figure: Length::micrometres(150_000), paper: PaperUnit::Millimetre, gauge: GaugeEdge::Start }
    }

    /// Those of a planned blank, with its stations.
    #[must_use]
    pub fn of_plan(name: &'a str, planned: &'a PlannedBlank, format: LengthFormat) -> BlankDrawing<'a> {
        let lines: Vec<Length> = planned.flat.bends().iter().map(|b| b.line).collect();
        let girth = planned.flat.girth();
        let stations = Stations { near: lines.clone(), far: lines, girths: (girth, girth) };
        BlankDrawing { stations: Some(stations), ..BlankDrawing::new(name, &planned.blank, format) }
    }

    /// Those of a tapered trim, with the stations of both its ends.
    #[must_use]
    pub fn of_taper(name: &'a str, taper: &'a TaperedTrim, format: LengthFormat) -> BlankDrawing<'a> {
        let stations = Stations {
            near: taper.bends.iter().map(|b| b.near_station).collect(),
            far: taper.bends.iter().map(|b| b.far_station).collect(),
            // On an end that is cut askew distances run square to the start edge, and to the other edge's own foot.
            girths: (taper.legs.last().filter(|_| taper.near_is_cut).map_or(taper.near.girth(), |l| l.end.from.x), taper.far.girth()),
        };
        BlankDrawing { stations: Some(stations), ..BlankDrawing::new(name, &taper.blank, format) }
    }

    /// The greatest width and height of the figure on paper; text and margins come around it.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a figure of zero or less.
    pub fn figure(mut self, size: Length) -> Result<BlankDrawing<'a>, Error> {
        self.figure = size.positive("figure")?;
        Ok(self)
    }

    /// The unit in which an SVG says its size.
    #[must_use]
    pub fn paper(mut self, unit: PaperUnit) -> BlankDrawing<'a> {
        self.paper = unit;
        self
    }

    /// The edge from which distances across are measured.
    #[must_use]
    pub fn gauged_from(mut self, edge: GaugeEdge) -> BlankDrawing<'a> {
        self.gauge = edge;
        self
    }

    /// The blank as SVG.
    ///
    /// # Errors
    /// [`ErrorKind::Missing`] for a blank without an outline, [`ErrorKind::Overflow`] where a length cannot be rounded to the format.
    pub fn svg(&self) -> Result<String, Error> {
        self.drawable()?;
        blank_svg::svg(self)
    }

    /// The blank as DXF, upper face up, true and whole. Layers: `BLANK-EDGE`, `BLANK-HOLE`, `BEND-UP`, `BEND-DOWN`, `BEND-TANGENT`, `NOTES`.
    ///
    /// # Errors
    /// As [`BlankDrawing::svg`].
    pub fn dxf(&self, unit: DrawingUnit) -> Result<Vec<u8>, Error> {
        self.drawable()?;
        blank_dxf::dxf(self, unit)
    }

    fn drawable(&self) -> Result<(), Error> {
        if self.blank.outline.is_empty() {
            return Err(Error::new(ErrorKind::Missing, "a blank without an outline cannot be drawn").at("outline").accepts("at least three sides"));
        }
        Ok(())
    }

    pub(super) fn text(&self, length: Length) -> Result<String, Error> {
        self.format.string(length)
    }

    /// A station along an end as it is read from the gauging edge.
    pub(super) fn running(&self, station: Length, girth: Length) -> Result<String, Error> {
        self.text(match self.gauge {
            GaugeEdge::Start => station,
            GaugeEdge::End => (girth - station).length()?,
        })
    }

    pub(super) const fn edge_name(&self) -> &'static str {
        match self.gauge {
            GaugeEdge::Start => "start edge",
            GaugeEdge::End => "end edge",
        }
    }

    pub(super) fn scale(&self, extent: f64) -> (f64, String) {
        usual_scale(self.figure.mm(), extent)
    }
}
