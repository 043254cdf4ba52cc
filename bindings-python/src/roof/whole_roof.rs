//! `seamwright.roof.Roof` and its input.

use super::{Drain, Line, PlacedCricket, Plane, Point};
use crate::by_name::Document;
use crate::error::{Raise, raised};
use crate::given::{Given, Text};
use crate::layout::LaidPlane;
use crate::names::{hash_written, named};
use crate::parts::{Reduced, reduced};
use crate::place::{Part, Place};
use crate::record::{Caution, Worksheet};
use crate::units::{Area, Length, LengthFormat};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyDict;
use seamwright::error::{Error, ErrorKind};
use seamwright::export::roof_plan_svg;
use seamwright::record::Calculation;
use seamwright::roof as core_roof;
use seamwright::roof::LineKind;

/// A roof as it is given: planes in plan with pitch and direction, or by vertices in space, and walls.
///
/// It is read from JSON text or from a dict of the same form, in which quantities may stand as themselves.
///
/// >>> from seamwright.roof import RoofInput
/// >>> corners = [("0 ft", "0 ft", "10 ft"), ("40 ft", "0 ft", "10 ft"), ("40 ft", "20 ft", "20 ft"), ("0 ft", "20 ft", "20 ft")]
/// >>> outer = [dict(zip("xyz", corner)) for corner in corners]
/// >>> shed = RoofInput.from_dict({"planes": [{"name": "shed", "shape": {"space": {"outer": outer}}}]})
/// >>> [line.name for line in shed.compute().lines]
/// ['eave 1', 'rake 1', 'high edge 1', 'rake 2']
#[pyclass(module = "seamwright.roof", frozen, eq, hash)]
#[derive(Clone, PartialEq)]
pub(crate) struct RoofInput(pub(crate) core_roof::RoofInput);

impl Hash for RoofInput {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.0, state);
    }
}

#[pymethods]
impl RoofInput {
    /// Reads a roof from JSON text.
    #[staticmethod]
    fn from_json(text: Text) -> PyResult<RoofInput> {
        core_roof::RoofInput::from_json(text.0.as_bytes()).raise().map(RoofInput)
    }

    /// Reads a roof from a dict.
    #[staticmethod]
    fn from_dict(mapping: &Bound<'_, PyDict>) -> PyResult<RoofInput> {
        core_roof::RoofInput::from_json(mapping.extract::<Document>()?.0.as_bytes()).raise().map(RoofInput)
    }

    /// The roof as JSON text, with every quantity in its canonical form.
    fn to_json(&self) -> PyResult<String> {
        serde_json::to_string(&self.0).map_err(|e| raised(&Error::new(ErrorKind::Internal, e.to_string())))
    }

    /// The roof as a dict, with every quantity as text in its canonical form.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        Ok(py.import("json")?.getattr("loads")?.call1((self.to_json()?,))?.cast_into::<PyDict>()?)
    }

    /// The roof with its lines named and measured.
    fn compute(&self) -> PyResult<Roof> {
        self.0.compute().raise().map(|roof| Roof { of: self.clone(), roof })
    }

    /// The roof with its lines named and measured, and the worksheet.
    fn explain(&self) -> PyResult<(Roof, Worksheet)> {
        let (roof, sheet) = self.0.explain().raise()?;
        Ok((Roof { of: self.clone(), roof }, Worksheet(sheet)))
    }

    fn __repr__(&self) -> String {
        format!("<RoofInput: {} planes, {} walls>", self.0.planes.len(), self.0.walls.len())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (String,))> {
        Ok((slf.get_type().getattr("_restored")?, (slf.get().to_json()?,)))
    }

    /// For unpickling: without a limit of size, which guards against text from elsewhere.
    #[staticmethod]
    fn _restored(text: Text) -> PyResult<RoofInput> {
        serde_json::from_str(&text.0).map(RoofInput).map_err(|e| raised(&Error::new(ErrorKind::Format, e.to_string())))
    }
}

/// A roof with its lines named and measured. It pickles as its input, which computes it again.
///
/// >>> from seamwright.roof import Roof
/// >>> shape = '{"outer": [%s, %s, %s, %s], "pitch": "6:12", "down_slope": "270 deg", "anchor": {"x": "0 ft", "y": "0 ft", "z": "9 ft"}}'
/// >>> shape %= tuple('{"x": "%s ft", "y": "%s ft"}' % xy for xy in [(0, 0), (40, 0), (40, 20), (0, 20)])
/// >>> roof = Roof.from_json('{"planes": [{"name": "south", "shape": {"plan": %s}}]}' % shape)
/// >>> format(roof.line("rake 1").length, "ft-in/16"), str(roof.planes[0].pitch)
/// ('22\'-4 5/16"', '6:12')
#[pyclass(module = "seamwright.roof", frozen, eq, hash)]
#[derive(Clone, PartialEq)]
pub(crate) struct Roof {
    of: RoofInput,
    roof: core_roof::Roof,
}

impl Hash for Roof {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.of.hash(state);
    }
}

impl Roof {
    /// One that core has named and measured already.
    pub(crate) fn known(of: core_roof::RoofInput, roof: core_roof::Roof) -> Roof {
        Roof { of: RoofInput(of), roof }
    }

    fn lines_where(slf: &Bound<'_, Self>, wanted: impl Fn(&core_roof::Line) -> bool) -> Vec<Line> {
        slf.get().roof.lines().iter().filter(|l| wanted(l)).map(|line| Line { of: slf.clone().unbind(), line: line.clone() }).collect()
    }
}

#[pymethods]
impl Roof {
    /// The roof of this JSON text: ``RoofInput.from_json(text).compute()``.
    #[staticmethod]
    fn from_json(text: Text) -> PyResult<Roof> {
        RoofInput::from_json(text)?.compute()
    }

    /// The roof of this dict: ``RoofInput.from_dict(mapping).compute()``.
    #[staticmethod]
    fn from_dict(mapping: &Bound<'_, PyDict>) -> PyResult<Roof> {
        RoofInput::from_dict(mapping)?.compute()
    }

    /// What it was made from.
    #[getter]
    fn input(&self) -> RoofInput {
        self.of.clone()
    }

    /// The planes, in the order given; their numbers count from 0.
    #[getter]
    fn planes(slf: &Bound<'_, Self>) -> Vec<Plane> {
        slf.get().roof.planes().iter().map(|plane| Plane { of: slf.clone().unbind(), plane: plane.clone() }).collect()
    }

    /// The plane of this name.
    fn plane(slf: &Bound<'_, Self>, name: Text) -> PyResult<Plane> {
        let plane = slf.get().roof.plane(&name.0).raise_at("name")?.clone();
        Ok(Plane { of: slf.clone().unbind(), plane })
    }

    /// The walls, in the order given.
    #[getter]
    fn walls(slf: &Bound<'_, Self>) -> Vec<Wall> {
        slf.get().roof.walls().iter().enumerate().map(|(number, wall)| Wall { of: slf.clone().unbind(), number, wall: wall.clone() }).collect()
    }

    /// The crickets, in the order given.
    #[getter]
    fn crickets(slf: &Bound<'_, Self>) -> Vec<PlacedCricket> {
        let placed = slf.get().roof.crickets().iter().enumerate();
        placed.map(|(number, cricket)| PlacedCricket::at(cricket.clone(), Place::numbered(slf, "crickets", number))).collect()
    }

    /// How far apart edges were allowed to lie.
    #[getter]
    fn tolerance(&self) -> Length {
        Length(self.roof.tolerance())
    }

    /// Every line, in the order of planes and edges; their numbers count from 0.
    #[getter]
    fn lines(slf: &Bound<'_, Self>) -> Vec<Line> {
        Roof::lines_where(slf, |_| true)
    }

    /// The line of this name.
    fn line(slf: &Bound<'_, Self>, name: Text) -> PyResult<Line> {
        let line = slf.get().roof.line(&name.0).raise_at("name")?.clone();
        Ok(Line { of: slf.clone().unbind(), line })
    }

    /// The lines of this kind, in order.
    fn lines_of(slf: &Bound<'_, Self>, kind: Text) -> PyResult<Vec<Line>> {
        let kind: LineKind = named(&kind, "kind")?;
        Ok(Roof::lines_where(slf, |l| l.kind == kind))
    }

    /// The lines round the plane of this number, in the order of the roof's lines.
    fn lines_round(slf: &Bound<'_, Self>, plane: usize) -> Vec<Line> {
        Roof::lines_where(slf, |l| l.sides().any(|s| s.plane == plane))
    }

    /// Where the water of each plane goes, in the order of planes and lines.
    #[getter]
    fn drains(slf: &Bound<'_, Self>) -> Vec<Drain> {
        slf.get().roof.drains().iter().enumerate().map(|(number, drain)| Drain { of: slf.clone().unbind(), number, drain: *drain }).collect()
    }

    /// What the reader must know before metal is cut.
    #[getter]
    fn cautions(&self) -> Vec<Caution> {
        self.roof.cautions().iter().map(Caution::from).collect()
    }

    /// The true area of all planes.
    #[getter]
    fn area(&self) -> Area {
        Area(self.roof.area())
    }

    /// The plan as SVG: planes with an arrow down each slope, their panels numbered and marked, lines by kind with names, true lengths and a legend.
    ///
    /// ``laid`` has one entry for each plane, ``None`` for one that is not laid; without it no panels are shown. ``figure`` is the greatest width and height of the
    /// roof on paper, ``paper`` the unit in which the drawing says its size, ``millimetre`` or ``inch``.
    #[pyo3(signature = (name, figure, lengths, paper, laid=None))]
    fn plan_svg(
        &self,
        name: Text,
        figure: Given<Length>,
        lengths: Given<LengthFormat>,
        paper: Text,
        laid: Option<Vec<Option<Py<LaidPlane>>>>,
    ) -> PyResult<String> {
        let (figure, lengths, paper) = (figure.at("figure")?, lengths.at("lengths")?, named(&paper, "paper")?);
        let none = || self.roof.planes().iter().map(|_| None).collect();
        let laid = laid.unwrap_or_else(none);
        let shown: Vec<_> = laid.iter().map(|l| l.as_ref().map(|l| l.get().core())).collect();
        roof_plan_svg(&name.0, &self.roof, &shown, figure, paper, lengths).raise()
    }

    fn __repr__(&self) -> String {
        format!("<Roof: {} planes, {} lines, {}>", self.roof.planes().len(), self.roof.lines().len(), self.roof.area())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, ())> {
        Ok((slf.get().input().into_pyobject(slf.py())?.getattr("compute")?, ()))
    }
}

/// A wall that the roof runs into: a vertical face over a straight line in plan.
#[pyclass(module = "seamwright.roof", frozen, eq, hash)]
pub(crate) struct Wall {
    of: Py<Roof>,
    number: usize,
    wall: core_roof::Wall,
}

impl PartialEq for Wall {
    fn eq(&self, other: &Wall) -> bool {
        self.wall == other.wall
    }
}

impl Hash for Wall {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (&self.wall.name, self.wall.from, self.wall.to, self.wall.top, &self.wall.carries).hash(state);
    }
}

#[pymethods]
impl Wall {
    /// Its name.
    #[getter]
    fn name(&self) -> &str {
        &self.wall.name
    }

    /// Where it starts in plan. (In Rust this is ``from``, which is a word of Python's own.)
    #[getter]
    fn start(&self) -> Point {
        Point(self.wall.from)
    }

    /// Where it ends in plan.
    #[getter]
    fn end(&self) -> Point {
        Point(self.wall.to)
    }

    /// The height of its top; ``None`` where it is higher than every plane.
    #[getter]
    fn top(&self) -> Option<Length> {
        self.wall.top.map(Length)
    }

    /// The planes that stand on it, by name.
    #[getter]
    fn carries(&self) -> Vec<String> {
        self.wall.carries.clone()
    }

    fn __repr__(&self) -> String {
        format!("<Wall {}>", self.wall.name)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py, Roof>> {
        reduced(slf.py(), &slf.get().of, "walls", slf.get().number)
    }
}
