//! `seamwright.roof.Line` and its sides.

use super::{Point, Roof, Vertex};
use crate::names::{hash_written, name_of};
use crate::parts::{ReducedAttribute, reduced_attribute};
use crate::units::{Angle, Length};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use seamwright::roof as core_roof;
use seamwright::roof::Beyond;

/// A line of a roof: ridge, hip, valley, eave and so on. It pickles as its name in its roof.
#[pyclass(module = "seamwright.roof", frozen, eq, hash)]
pub(crate) struct Line {
    pub(super) of: Py<Roof>,
    pub(super) line: core_roof::Line,
}

impl PartialEq for Line {
    fn eq(&self, other: &Line) -> bool {
        self.line == other.line
    }
}

impl Hash for Line {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (&self.line.name, self.line.start, self.line.end).hash(state);
    }
}

#[pymethods]
impl Line {
    /// Its kind and a number among those of its kind, in the order of planes and edges: ``hip 2``.
    #[getter]
    fn name(&self) -> &str {
        &self.line.name
    }

    /// What it is: ridge, hip, valley, steep-to-shallow, shallow-to-steep, eave, rake, high-edge, headwall, sidewall, curb-front,
    /// curb-side, curb-back or unknown.
    #[getter]
    fn kind(&self) -> PyResult<String> {
        name_of(&self.line.kind)
    }

    /// Where it starts; ``side`` lies on its left.
    #[getter]
    fn start(&self) -> Vertex {
        Vertex(self.line.start)
    }

    /// Where it ends.
    #[getter]
    fn end(&self) -> Vertex {
        Vertex(self.line.end)
    }

    /// True length.
    #[getter]
    fn length(&self) -> Length {
        Length(self.line.length)
    }

    /// Length in plan.
    #[getter]
    fn plan_length(&self) -> Length {
        Length(self.line.plan_length)
    }

    /// Its own slope from level, 0 or more.
    #[getter]
    fn slope(&self) -> Angle {
        Angle(self.line.slope)
    }

    /// Between the two planes where there are two: below them at a ridge or hip, above them at a valley, 180 degrees or less.
    #[getter]
    fn dihedral(&self) -> Option<Angle> {
        self.line.dihedral.map(Angle)
    }

    /// At a step, from the line up to the edge of the plane above; ``None`` at any other line.
    #[getter]
    fn riser(&self) -> Option<Length> {
        self.line.riser.map(Length)
    }

    /// The bend of a trim that lies on both planes, from flat: more than 0 where they bend down from the line (ridge, hip), less than 0
    /// where they bend up (valley).
    #[getter]
    fn bend(&self) -> Option<Angle> {
        self.line.bend().map(Angle)
    }

    /// The plane that it belongs to, the first by number, as seen from the line.
    #[getter]
    fn side(slf: &Bound<'_, Self>) -> Side {
        Side { of: slf.clone().unbind(), name: "side", side: slf.get().line.side.clone() }
    }

    /// The other plane, where there is one.
    #[getter]
    fn other(slf: &Bound<'_, Self>) -> Option<Side> {
        slf.get().line.other().map(|side| Side { of: slf.clone().unbind(), name: "other", side: side.clone() })
    }

    /// Its sides that are planes: one or two.
    #[getter]
    fn sides(slf: &Bound<'_, Self>) -> Vec<Side> {
        core::iter::once(Line::side(slf)).chain(Line::other(slf)).collect()
    }

    /// What is on its right: ``plane``, ``wall``, ``hole`` or ``open``.
    #[getter]
    fn beyond(&self) -> &'static str {
        match self.line.beyond {
            Beyond::Plane(_) => "plane",
            Beyond::Wall(_) => "wall",
            Beyond::Hole(_) => "hole",
            Beyond::Open => "open",
        }
    }

    /// The name of the wall that it runs along, if there is one.
    #[getter]
    fn wall(&self) -> Option<&str> {
        match &self.line.beyond {
            Beyond::Wall(name) => Some(name),
            _ => None,
        }
    }

    /// The name of the hole that it bounds, if there is one.
    #[getter]
    fn hole(&self) -> Option<&str> {
        match &self.line.beyond {
            Beyond::Hole(name) => Some(name),
            _ => None,
        }
    }

    /// The upper and the lower plane, by number, where water runs over the line from one onto the other.
    #[getter]
    fn crossing(&self) -> Option<(usize, usize)> {
        self.line.crossing()
    }

    fn __repr__(&self) -> String {
        format!("<Line {}: {}>", self.line.name, self.line.length)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (String,))> {
        let line = slf.get();
        Ok((line.of.bind(slf.py()).getattr("line")?, (line.name().to_owned(),)))
    }
}

/// A plane on one side of a line.
#[pyclass(module = "seamwright.roof", frozen, eq, hash)]
pub(crate) struct Side {
    of: Py<Line>,
    name: &'static str,
    side: core_roof::Side,
}

impl PartialEq for Side {
    fn eq(&self, other: &Side) -> bool {
        self.side == other.side
    }
}

impl Hash for Side {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&(self.side.plane, self.side.start, self.side.end), state);
    }
}

#[pymethods]
impl Side {
    /// Number of the plane in the roof.
    #[getter]
    fn plane(&self) -> usize {
        self.side.plane
    }

    /// The ring of the plane's outline: 0 is the outer one, the holes follow from 1.
    #[getter]
    fn ring(&self) -> usize {
        self.side.ring
    }

    /// The edge of that ring, as the outline stores it.
    #[getter]
    fn edge(&self) -> usize {
        self.side.edge
    }

    /// The edge's number in the ring as it was given.
    #[getter]
    fn given_edge(&self) -> usize {
        self.side.given_edge
    }

    /// Where the line starts in the plane's own axes. From start to end the plane lies on its left.
    #[getter]
    fn start(&self) -> Point {
        Point(self.side.start)
    }

    /// Where it ends in the plane's own axes.
    #[getter]
    fn end(&self) -> Point {
        Point(self.side.end)
    }

    /// How steeply the plane falls away from the line, in the section square to the line; less than 0 where it rises from it.
    #[getter]
    fn backing(&self) -> Angle {
        Angle(self.side.backing)
    }

    /// Between seams and line in the plane: 90 degrees is square, 0 is along the seams.
    #[getter]
    fn meeting_angle(&self) -> Angle {
        Angle(self.side.meeting_angle)
    }

    /// The angle in the plane between the line and the level: more than 0 where, looking up the slope, the line rises to the right.
    #[getter]
    fn skew(&self) -> Angle {
        Angle(self.side.skew)
    }

    /// Which way water on this side runs: ``toward`` the line, ``away`` or ``along``.
    #[getter]
    fn water(&self) -> PyResult<String> {
        name_of(&self.side.water)
    }

    fn __repr__(&self) -> String {
        format!("<Side: plane {}, meeting angle {}, water {}>", self.side.plane, self.side.meeting_angle, self.side.water)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<ReducedAttribute<'py, Line>> {
        reduced_attribute(slf.py(), &slf.get().of, slf.get().name)
    }
}
