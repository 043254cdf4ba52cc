//! Blanks: planned, folded at a panel's end, and as plain data.

use crate::document::document;
use crate::error::Raise;
use crate::given::{Given, Text};
use crate::names::{name_of, named};
use crate::place::{cautions, part};
use crate::record::Caution;
use crate::units::{Area, BendAngle, Length, LengthFormat, Mass, SurfaceMass};
use pyo3::prelude::*;
use pyo3::types::PyBytes;
use seamwright::export::BlankDrawing;
use seamwright::trim as core_trim;

/// A point of a blank: across from the start edge, and along the run from the near end.
pub(super) type At = (Length, Length);

pub(super) fn at(p: core_trim::Point) -> At {
    (Length(p.x), Length(p.y))
}

fn lines(all: &[core_trim::BlankLine]) -> Vec<(At, At)> {
    all.iter().map(|l| (at(l.from), at(l.to))).collect()
}

/// A drawing as SVG text.
pub(super) fn svg(drawing: BlankDrawing<'_>) -> PyResult<String> {
    drawing.svg().raise()
}

/// A drawing as the bytes of a DXF file.
pub(super) fn dxf<'py>(py: Python<'py>, drawing: BlankDrawing<'_>, unit: &Text) -> PyResult<Bound<'py, PyBytes>> {
    Ok(PyBytes::new(py, &drawing.dxf(named(unit, "unit")?).raise()?))
}

document! {
    /// A blank of a trim: its profile, its length along the run, and what is cut at its ends.
    ///
    /// >>> from seamwright.trim import BlankPlan
    /// >>> legs = [{"name": "flange", "length": "4 in", "start": "sheet-edge", "end": "outer-corner"},
    /// ...     {"name": "face", "length": "3 in", "start": "outer-corner", "end": "sheet-edge"}]
    /// >>> bends = [{"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}]
    /// >>> profile = {"thickness": "0.024 in", "legs": legs, "bends": bends, "painted": "upper"}
    /// >>> notch = {"bend": {"body": 0}, "depth": "2 in", "shape": {"vee": {"width": "1 in"}}}
    /// >>> plan = BlankPlan.from_dict({"profile": profile, "rule": "sharp-corner", "length": "10 ft", "tolerance": "0.01 mm", "far": {"notches": [notch]}})
    /// >>> made = plan.compute()
    /// >>> round(made.area.get("in2"), 6)
    /// 839.0
    BlankPlan(seamwright::trim::BlankPlan) in "seamwright.trim" gives PlannedBlank
}

document! {
    /// The end of a panel, folded along its junction line at a skew.
    ///
    /// >>> from seamwright.trim import EndFold
    /// >>> hem = {"closed-hem": {"width": "1 in", "direction": "down"}}
    /// >>> fold = EndFold.from_dict({"width": "16 in", "meeting": "45 deg", "hem": hem, "thickness": "0.024 in", "rule": "sharp-corner",
    /// ...     "ends": "mirrored", "shown": "12 in"})
    /// >>> format(fold.compute().overrun, "in/16")
    /// '2"'
    EndFold(seamwright::trim::EndFold) in "seamwright.trim" gives FoldedEnd
}

part! {
    /// A planned blank.
    PlannedBlank(core_trim::PlannedBlank) in "seamwright.trim",
    shown made: format_args!("girth {}, {} bends", made.flat.girth(), made.blank.bends.len());

    /// The width of the sheet: the stretch-out of the profile.
    girth(made) -> Length = Length(made.flat.girth());
    /// The bend lines of the profile, measured from the start edge.
    stations(made) -> Vec<Length> = made.flat.bends().iter().map(|b| Length(b.line)).collect();
    /// The blank.
    blank(made, here) -> FlatBlank = here.one("blank", &made.blank);
    /// The area of its metal.
    area(made) -> Area = Area(made.area);
    {
        /// A drawing of it with its running distances, as SVG text.
        fn svg(&self, name: Text, format: Given<LengthFormat>) -> PyResult<String> {
            svg(BlankDrawing::of_plan(&name.0, &self.core, format.at("format")?))
        }

        /// The same as the bytes of a DXF file, in ``millimetre`` or ``inch``, true and whole.
        fn dxf<'py>(&self, py: Python<'py>, name: Text, format: Given<LengthFormat>, unit: Text) -> PyResult<Bound<'py, PyBytes>> {
            dxf(py, BlankDrawing::of_plan(&name.0, &self.core, format.at("format")?), &unit)
        }
    }
}

part! {
    /// A panel's folded end in the flat.
    FoldedEnd(core_trim::FoldedEnd) in "seamwright.trim",
    shown made: format_args!("{} beyond the line", made.beyond);

    /// The end of the panel in the flat.
    blank(made, here) -> FlatBlank = here.one("blank", &made.blank);
    /// Beyond the finished end line, square to it: what the blank is longer for the fold.
    beyond(made) -> Length = Length(made.beyond);
    /// From the bend line to the edge of the fold, square to the line.
    depth(made) -> Length = Length(made.depth);
    /// What each end would overrun, along the line, if it were left along the seam.
    overrun(made) -> Length = Length(made.overrun);
}

part! {
    /// A flat blank, upper face up. A point of it is a pair: across from the start edge, and along the run from the near end.
    FlatBlank(core_trim::FlatBlank) in "seamwright.trim",
    shown blank: format_args!("{} sides, {} bends, {} holes", blank.outline.len(), blank.bends.len(), blank.holes.len());

    /// Thickness of the sheet.
    thickness(blank) -> Length = Length(blank.thickness);
    /// The outline, counter-clockwise and closed.
    outline(blank, here) -> Vec<BlankEdge> = here.all("outline", &blank.outline);
    /// The bends, those of the profile from the start edge first.
    bends(blank, here) -> Vec<BlankBend> = here.all("bends", &blank.bends);
    /// The holes: centre and diameter of each.
    holes(blank) -> Vec<(At, Length)> = blank.holes.iter().map(|h| (at(h.centre), Length(h.diameter))).collect();
    /// What must be known beside the numbers.
    cautions(blank) -> Vec<Caution> = cautions(&blank.cautions);
    /// The area of its metal.
    area(blank) -> Area = Area(blank.area().raise()?);
    /// Lower left and upper right of the box around it.
    bounds(blank) -> (At, At) = {
        let b = blank.bounds().raise()?;
        (at(b.least), at(b.greatest))
    };
    {
        /// Its mass, from the mass of the sheet per area.
        fn mass(&self, sheet: Given<SurfaceMass>) -> PyResult<Mass> {
            self.core.mass(sheet.at("sheet")?).raise().map(Mass)
        }

        /// The outline as points, arcs cut into chords that stray by at most the tolerance; the first point is not repeated.
        fn points(&self, tolerance: Given<Length>) -> PyResult<Vec<At>> {
            Ok(self.core.points(tolerance.at("tolerance")?).raise()?.into_iter().map(at).collect())
        }

        /// A drawing of it as SVG text.
        fn svg(&self, name: Text, format: Given<LengthFormat>) -> PyResult<String> {
            svg(BlankDrawing::new(&name.0, &self.core, format.at("format")?))
        }

        /// The same as the bytes of a DXF file, in ``millimetre`` or ``inch``, true and whole.
        fn dxf<'py>(&self, py: Python<'py>, name: Text, format: Given<LengthFormat>, unit: Text) -> PyResult<Bound<'py, PyBytes>> {
            dxf(py, BlankDrawing::new(&name.0, &self.core, format.at("format")?), &unit)
        }

        /// The drawing that notebooks show, with exact lengths.
        fn _repr_svg_(&self) -> PyResult<String> {
            svg(BlankDrawing::new("blank", &self.core, seamwright::units::LengthFormat::EXACT))
        }
    }
}

part! {
    /// A straight or round stretch of a blank's outline.
    BlankEdge(core_trim::BlankEdge) in "seamwright.trim",
    shown edge: format_args!("{}", name_of(&edge.side)?);

    /// What it is: start-edge, end-edge, near-end, far-end, notch, tab, relief or end-fold.
    side(edge) -> String = name_of(&edge.side)?;
    /// Where it starts. (In Rust this is ``from``, which is a word of Python's own.)
    start(edge) -> At = at(edge.from);
    /// Where it ends.
    end(edge) -> At = at(edge.to);
    /// The centre of its arc; none for a straight stretch.
    centre(edge) -> Option<At> = edge.arc.map(|a| at(a.centre));
    /// How far its arc turns, counter-clockwise positive; none for a straight stretch.
    turn(edge) -> Option<crate::units::Angle> = edge.arc.map(|a| crate::units::Angle(a.turn));
}

part! {
    /// A bend of a blank: its line and the tangent lines beside it, as far as they lie on the metal.
    BlankBend(core_trim::BlankBend) in "seamwright.trim",
    shown bend: format_args!("{} {}", bend.fold, bend.angle);

    /// What it is called on drawings: the bends of a profile are numbered from 1.
    name(bend) -> String = bend.fold.to_string();
    /// The bend line; in several pieces where a notch or a hole parts it.
    lines(bend) -> Vec<(At, At)> = lines(&bend.lines);
    /// The tangent lines on its two sides, likewise.
    tangents(bend) -> Vec<(At, At)> = lines(&bend.tangents);
    /// How far, from flat, square across the line.
    angle(bend) -> BendAngle = BendAngle(bend.angle);
    /// Which way, with the upper face up: ``up`` or ``down``.
    direction(bend) -> String = name_of(&bend.direction)?;
    /// Radius of the inside face.
    inside_radius(bend) -> Length = Length(bend.inside_radius);
}
