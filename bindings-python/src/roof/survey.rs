//! Measured roofs: `seamwright.roof.MeasuredPlane`, `JoinedPlanes`, `SketchedRoof` and what they give.

use super::{Point, RoofInput};
use crate::document::document;
use crate::error::Raise;
use crate::given::{Given, GivenAll, Text};
use crate::json::{dict, written};
use crate::names::{name_of, named};
use crate::place::{cautions, part};
use crate::record::Caution;
use crate::units::{Angle, Length, LengthFormat};
use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyDict};
use seamwright::export;
use seamwright::roof as core_roof;

document! {
    /// One plane of a roof by the lengths measured between its corners, more than are needed; the shape is solved by least squares.
    ///
    /// >>> from seamwright.roof import MeasuredPlane
    /// >>> read = [("A", "B", "40'"), ("B", "C", "24'"), ("C", "D", "40'"), ("D", "A", "24'"), ("A", "C", "46'-7 3/4\""), ("B", "D", "46'-7 3/4\"")]
    /// >>> lengths = [{"from": a, "to": b, "length": length} for a, b, length in read]
    /// >>> level = [{"side": ["A", "B"], "end": "foot"}]
    /// >>> plane = MeasuredPlane.from_dict({"name": "south", "corners": list("ABCD"), "lengths": lengths, "level": level, "notation": "ft-in/16"})
    /// >>> shape = plane.compute()
    /// >>> shape.line, shape.checks, shape.corners[2].name
    /// ('south: square and parallel within 1/8"', 1, 'C')
    MeasuredPlane(core_roof::MeasuredPlane) in "seamwright.roof" gives PlaneShape
}

part! {
    /// The shape of a measured plane.
    PlaneShape(core_roof::PlaneShape) in "seamwright.roof",
    shown s: format_args!("{}, {} corners, {} checks", s.name, s.corners.len(), s.checks);

    /// The plane's name.
    name(s) -> String = s.name.clone();
    /// Its corners, in the order given; the shape touches x = 0 and y = 0.
    corners(s, here) -> Vec<NamedCorner> = here.all("corners", &s.corners);
    /// Its openings, in the order given, in the same axes.
    openings(s, here) -> Vec<NamedOpening> = here.all("openings", &s.openings);
    /// Every observation with its residual: lengths, squares, parallels, each in the order given.
    readings(s, here) -> Vec<Reading> = here.all("readings", &s.readings);
    /// How many lengths the shape needs: two for each corner, those of the openings among them, less three.
    needed(s) -> usize = s.needed;
    /// How many more were given.
    checks(s) -> usize = s.checks;
    /// The greatest that a reading is off what the rest say; ``None`` where nothing is checked.
    misclosure(s) -> Option<Length> = s.misclosure.map(Length);
    /// The root of the mean square of the residuals over their tolerances, for each check; ``None`` without a check.
    fit_ratio(s) -> Option<f64> = s.fit_ratio;
    /// Steps that the search took.
    steps(s) -> u32 = s.steps;
    /// The greatest move of its last step.
    last_step(s) -> Length = Length(s.last_step);
    /// The sides that should be square or parallel to the level side and how far they are off.
    out_of_true(s, here) -> Vec<OutOfTrue> = here.all("out_of_true", &s.out_of_true);
    /// How true the plane is and where the difference goes, in one line.
    line(s) -> String = s.line.clone();
    /// What the reader must know before metal is cut.
    cautions(s) -> Vec<Caution> = cautions(&s.cautions);
    {
        /// The plane as ``JoinedPlanes`` takes it: edge i runs from corner i to the next.
        #[getter]
        fn slope_plane<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
            dict(py, &written(&self.core.slope_plane)?)
        }
    }
}

part! {
    /// A corner of a measured or sketched plane.
    NamedCorner(core_roof::NamedCorner) in "seamwright.roof",
    shown c: format_args!("{} at {}, {}", c.name, c.at.x, c.at.y);

    /// Its name.
    name(c) -> String = c.name.clone();
    /// Where it lies.
    at(c) -> Point = Point(c.at);
}

part! {
    /// An opening with its corners where they lie.
    NamedOpening(core_roof::NamedOpening) in "seamwright.roof",
    shown o: format_args!("{}, {} corners", o.name, o.corners.len());

    /// Its name.
    name(o) -> String = o.name.clone();
    /// Its corners, in order.
    corners(o, here) -> Vec<NamedCorner> = here.all("corners", &o.corners);
}

part! {
    /// One observation after the shape was solved.
    Reading(core_roof::Reading) in "seamwright.roof",
    shown r: format_args!("{}, residual {}", r.what, r.residual);

    /// What was observed: ``A-C``, ``square at B to A and C``, ``C-D parallel to A-B``.
    what(r) -> String = r.what.clone();
    /// What the tape said; ``None`` for a square corner or a parallel side.
    measured(r) -> Option<Length> = r.measured.map(Length);
    /// What the solved shape gives.
    solved(r) -> Option<Length> = r.solved.map(Length);
    /// Solved less measured; for a square or a parallel how far the end of the shorter arm stands off.
    residual(r) -> Length = Length(r.residual);
    /// How far it may be off.
    tolerance(r) -> Length = Length(r.tolerance);
    /// How far the reading is off what the other readings alone say; ``None`` where nothing checks it.
    against_the_rest(r) -> Option<Length> = r.against_the_rest.map(Length);
}

part! {
    /// A side that ought to be square or parallel to the level one, and how far it is off.
    OutOfTrue(core_roof::OutOfTrue) in "seamwright.roof",
    shown o: format_args!("{} {}-{} by {}", o.side, o.from, o.to, o.off);

    /// The corner where the side starts, counter-clockwise. (In Rust this is ``from``, which is a word of Python's own.)
    start(o) -> String = o.from.clone();
    /// The corner where it ends.
    end(o) -> String = o.to.clone();
    /// What it is: ``foot``, ``head``, ``left-rake`` or ``right-rake``.
    side(o) -> String = name_of(&o.side)?;
    /// How far it is off from one end to the other: a rake to the right as it rises, a foot or head upward as it runs to the right.
    off(o) -> Length = Length(o.off);
    /// Over this length square to that.
    over(o) -> Length = Length(o.over);
}

document! {
    /// Planes measured on the slope, joined edge to edge into a roof in space.
    ///
    /// >>> from seamwright.roof import JoinedPlanes
    /// >>> outer = [{"x": f"{x} ft", "y": f"{y} ft"} for x, y in [(0, 0), (40, 0), (40, 20), (0, 20)]]
    /// >>> planes = [{"name": name, "outer": outer, "pitch": "9:12"} for name in ("south", "north")]
    /// >>> ridge = {"first": {"plane": "south", "edge": 2}, "second": {"plane": "north", "edge": 2}}
    /// >>> anchor = {"plane": "south", "corner": 0, "at": {"x": "0 ft", "y": "0 ft", "z": "10 ft"}, "down_slope": "270 deg"}
    /// >>> joined = JoinedPlanes.from_dict({"planes": planes, "joints": [ridge], "anchor": anchor}).compute()
    /// >>> format(joined.roof.compute().line("ridge 1").start.z, "ft-in/16"), joined.misclosure < joined.roof.compute().tolerance
    /// ('22\'-0"', True)
    JoinedPlanes(core_roof::JoinedPlanes) in "seamwright.roof" gives JoinedRoof
}

part! {
    /// A roof in space from planes on the slope.
    JoinedRoof(core_roof::JoinedRoof) in "seamwright.roof",
    shown j: format_args!("{} planes, misclosure {}", j.planes.len(), j.misclosure);

    /// The roof, its planes by their vertices in space.
    roof(j) -> RoofInput = RoofInput(j.roof.clone());
    /// How each joint closes, in the order given.
    joints(j, here) -> Vec<JointFit> = here.all("joints", &j.joints);
    /// The largest gap of all.
    misclosure(j) -> Length = Length(j.misclosure);
    /// How the planes lie, in the order given.
    planes(j, here) -> Vec<PlacedPlane> = here.all("planes", &j.planes);
    /// How many measures more than needed the joints and pitches held.
    checks(j) -> usize = j.checks;
    /// Steps that the search took.
    steps(j) -> u32 = j.steps;
    /// What the reader must know before metal is cut.
    cautions(j) -> Vec<Caution> = cautions(&j.cautions);
    {
        /// How each tie closes, in the order given: ``plane``, ``corner``, ``from`` and ``gap``.
        #[getter]
        fn ties<'py>(&self, py: Python<'py>) -> PyResult<Vec<Bound<'py, PyDict>>> {
            self.core.ties.iter().map(|tie| dict(py, &written(tie)?)).collect()
        }
    }
}

part! {
    /// How well two joined edges close.
    JointFit(core_roof::JointFit) in "seamwright.roof",
    shown j: format_args!("{} with {}: {}", j.first, j.second, j.misclosure());

    /// The plane and the edge of the first.
    first(j) -> (String, usize) = (j.first.plane.clone(), j.first.edge);
    /// The plane and the edge of the second.
    second(j) -> (String, usize) = (j.second.plane.clone(), j.second.edge);
    /// How much longer the first was measured than the second; with an offset, 0.
    longer_by(j) -> Length = Length(j.longer_by);
    /// How far apart the two edges lie in space where the first starts.
    start_gap(j) -> Length = Length(j.start_gap);
    /// How far apart they lie where it ends.
    end_gap(j) -> Length = Length(j.end_gap);
    /// The larger of the two gaps.
    misclosure(j) -> Length = Length(j.misclosure());
}

part! {
    /// A plane as it was set in space.
    PlacedPlane(core_roof::PlacedPlane) in "seamwright.roof",
    shown p: format_args!("{} at {}", p.name, p.slope);

    /// Its name.
    name(p) -> String = p.name.clone();
    /// Its slope from level.
    slope(p) -> Angle = Angle(p.slope);
    /// The direction in plan that water runs in, counter-clockwise from x.
    down_slope(p) -> Angle = Angle(p.down_slope);
}

document! {
    /// A rough sketch of a roof, from which the measuring sheet is made.
    ///
    /// >>> from seamwright.roof import SketchedRoof
    /// >>> def plane(name, *corners):
    /// ...     return {"name": name, "outer": [{"x": f"{x} ft", "y": f"{y} ft"} for x, y in corners]}
    /// >>> south, north = plane("south", (0, 0), (40, 0), (40, 12), (0, 12)), plane("north", (40, 24), (0, 24), (0, 12), (40, 12))
    /// >>> sheet = SketchedRoof.from_dict({"planes": [south, north]}).compute()
    /// >>> [(line.number, line.start + line.end, line.part) for line in sheet.planes[0].lines][3:5], sheet.lines
    /// ([(4, 'DA', 'side'), (5, 'BD', 'diagonal')], 13)
    SketchedRoof(core_roof::SketchedRoof) in "seamwright.roof" gives MeasuringSheet
}

part! {
    /// What to measure on a roof, in the order of the walk round it.
    MeasuringSheet(core_roof::MeasuringSheet) in "seamwright.roof",
    shown s: format_args!("{} planes, {} lines", s.planes.len(), s.lines);

    /// The planes in the order of the walk: along the free sides counter-clockwise, then those within.
    planes(s, here) -> Vec<PlaneSheet> = here.all("planes", &s.planes);
    /// How many lengths there are in all.
    lines(s) -> usize = s.lines;
    /// How many marks there are in all.
    marks(s) -> usize = s.marks;
    {
        /// The sides that two planes share from end to end, as ``JoinedPlanes`` takes them.
        #[getter]
        fn joints<'py>(&self, py: Python<'py>) -> PyResult<Vec<Bound<'py, PyDict>>> {
            self.core.joints.iter().map(|joint| dict(py, &written(joint)?)).collect()
        }

        /// What ties planes that no line joins to those before them, two for each group of them. ``plane``, ``corner`` and ``from`` go with the readings
        /// ``along``, ``out`` and ``up`` into the ``ties`` of ``JoinedPlanes``.
        #[getter]
        fn ties<'py>(&self, py: Python<'py>) -> PyResult<Vec<Bound<'py, PyDict>>> {
            self.core.ties.iter().map(|tie| dict(py, &written(tie)?)).collect()
        }

        /// The planes with these readings, by the number of their lines.
        fn filled(&self, lengths: GivenAll<Length>) -> PyResult<Vec<MeasuredPlane>> {
            Ok(self.core.filled(&lengths.at("lengths")?).raise()?.into_iter().map(MeasuredPlane).collect())
        }

        /// The sheet as one HTML page for print, with a blank for every length. ``paper`` is ``letter`` or ``a4``.
        fn html<'py>(&self, py: Python<'py>, job: Text, paper: Text, notation: Given<LengthFormat>) -> PyResult<Bound<'py, PyBytes>> {
            let (paper, notation) = (named(&paper, "paper")?, notation.at("notation")?);
            Ok(PyBytes::new(py, &export::measuring_sheet_html(&self.core, &job.0, paper, notation).raise()?))
        }
    }
}

part! {
    /// The sheet of one plane.
    PlaneSheet(core_roof::PlaneSheet) in "seamwright.roof",
    shown p: format_args!("{}, {} lines", p.plane, p.lines.len());

    /// The plane's name.
    plane(p) -> String = p.plane.clone();
    /// Its number in the sketch.
    number(p) -> usize = p.number;
    /// Its corners, counter-clockwise, from the side that the walk comes to first; where they lie in the sketch.
    corners(p, here) -> Vec<NamedCorner> = here.all("corners", &p.corners);
    /// The planes that its pitch follows from; empty where it must be measured.
    pitch_follows(p) -> Vec<String> = if let core_roof::PitchNeed::Follows(planes) = &p.pitch { planes.clone() } else { Vec::new() };
    /// Its openings, the corners of each clockwise; where they lie in the sketch.
    openings(p, here) -> Vec<NamedOpening> = here.all("openings", &p.openings);
    /// What to measure: sides round the plane, then diagonals, then checks; then for each opening its sides, what ties it to the plane, and its checks.
    lines(p, here) -> Vec<SheetLine> = here.all("lines", &p.lines);
    {
        /// Marks to strike for its checks, as ``MeasuredPlane`` takes them.
        #[getter]
        fn marks<'py>(&self, py: Python<'py>) -> PyResult<Vec<Bound<'py, PyDict>>> {
            self.core.marks.iter().map(|mark| dict(py, &written(mark)?)).collect()
        }
    }
}

part! {
    /// One length to measure.
    SheetLine(core_roof::SheetLine) in "seamwright.roof",
    shown l: format_args!("{}: {} to {}", l.number, l.from, l.to);

    /// Its number on the sheet, from 1. A side that two planes share has one number.
    number(l) -> usize = l.number;
    /// The corner or mark that it is measured from. (In Rust this is ``from``, which is a word of Python's own.)
    start(l) -> String = l.from.clone();
    /// The corner or mark that it is measured to.
    end(l) -> String = l.to.clone();
    /// What it is for: ``side``, ``diagonal``, ``opening``, ``tie`` or ``check``.
    part(l) -> String = name_of(&l.part)?;
    /// Its length in the sketch, in plan: a slope makes it longer.
    about(l) -> Length = Length(l.about);
    /// The plane on whose sheet it was measured already.
    shared(l) -> Option<String> = l.shared.clone();
}
