//! `seamwright.roof.Plane` and its vertices.

use super::outline::GivenPoint;
use super::{Outline, Point, Roof};
use crate::error::Raise;
use crate::given::Given;
use crate::names::hash_written;
use crate::pitch::Pitch;
use crate::units::{Angle, Area, Length};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::roof as core_roof;

/// A point in space: x and y in plan, z upward.
///
/// >>> from seamwright.roof import Vertex
/// >>> format(Vertex("3 ft", "0 ft", "9 ft").z, "in/16")
/// '108"'
#[pyclass(module = "seamwright.roof", frozen, eq, ord, hash)]
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) struct Vertex(pub(crate) core_roof::Vertex);

#[pymethods]
impl Vertex {
    #[new]
    fn new(x: Given<Length>, y: Given<Length>, z: Given<Length>) -> PyResult<Vertex> {
        Ok(Vertex(core_roof::Vertex::new(x.at("x")?, y.at("y")?, z.at("z")?)))
    }

    /// In plan, to the right.
    #[getter]
    fn x(&self) -> Length {
        Length(self.0.x)
    }

    /// In plan, away.
    #[getter]
    fn y(&self) -> Length {
        Length(self.0.y)
    }

    /// Upward.
    #[getter]
    fn z(&self) -> Length {
        Length(self.0.z)
    }

    fn __repr__(&self) -> String {
        format!("Vertex('{}', '{}', '{}')", self.0.x, self.0.y, self.0.z)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Length, Length, Length)) {
        (slf.get_type(), (slf.get().x(), slf.get().y(), slf.get().z()))
    }
}

/// A plane of a roof, checked. Places in it are Points: x across the slope, to the right when looking up it, y up the slope; the outline
/// touches x = 0 and y = 0. It pickles as its name in its roof.
#[pyclass(module = "seamwright.roof", frozen, eq, hash)]
pub(crate) struct Plane {
    pub(super) of: Py<Roof>,
    pub(super) plane: core_roof::Plane,
}

impl PartialEq for Plane {
    fn eq(&self, other: &Plane) -> bool {
        self.plane == other.plane
    }
}

impl Hash for Plane {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.plane.name().hash(state);
        hash_written(&self.plane.rings(), state);
    }
}

fn ratios(d: core_roof::Direction) -> (f64, f64, f64) {
    (d.x_ratio, d.y_ratio, d.z_ratio)
}

#[pymethods]
impl Plane {
    /// Its name.
    #[getter]
    fn name(&self) -> &str {
        self.plane.name()
    }

    /// The names of its holes, in the order of the hole rings.
    #[getter]
    fn hole_names(&self) -> Vec<String> {
        self.plane.hole_names().to_vec()
    }

    /// Its vertices in space: the outer ring, then the holes, in the order of the outline.
    #[getter]
    fn rings(&self) -> Vec<Vec<Vertex>> {
        self.plane.rings().iter().map(|ring| ring.iter().copied().map(Vertex).collect()).collect()
    }

    /// Its shape in plan.
    #[getter]
    fn plan(&self) -> Outline {
        Outline(self.plane.plan().clone())
    }

    /// Its true shape in its own axes, edge by edge the same as in plan: what a layout takes.
    #[getter]
    fn outline(&self) -> Outline {
        Outline(self.plane.outline().clone())
    }

    /// Its pitch: as given, or in degrees where it follows from vertices.
    #[getter]
    fn pitch(&self) -> Pitch {
        Pitch(self.plane.pitch())
    }

    /// Its slope from level.
    #[getter]
    fn slope(&self) -> Angle {
        Angle(self.plane.slope())
    }

    /// The direction in plan that water runs in, counter-clockwise from x; from 0 to less than 360 degrees.
    #[getter]
    fn down_slope(&self) -> Angle {
        Angle(self.plane.down_slope())
    }

    /// The upward unit normal: its parts along x and y in plan and upward.
    #[getter]
    fn normal(&self) -> (f64, f64, f64) {
        ratios(self.plane.normal())
    }

    /// The level axis x of the plane, as a unit vector: to the right when looking up the slope.
    #[getter]
    fn across(&self) -> (f64, f64, f64) {
        ratios(self.plane.across())
    }

    /// The axis y of the plane, as a unit vector: straight up the slope.
    #[getter]
    fn up(&self) -> (f64, f64, f64) {
        ratios(self.plane.up())
    }

    /// The origin of the plane's axes in space.
    fn origin(&self) -> PyResult<Vertex> {
        self.plane.origin().raise().map(Vertex)
    }

    /// The farthest that a vertex lies from the plane; zero for a plane given in plan.
    #[getter]
    fn off_plane(&self) -> Length {
        Length(self.plane.off_plane())
    }

    /// Its area in plan.
    #[getter]
    fn plan_area(&self) -> Area {
        Area(self.plane.plan_area())
    }

    /// Its true area.
    #[getter]
    fn area(&self) -> Area {
        Area(self.plane.area())
    }

    /// The place in the plane's own axes of a point in space, taken square to the plane.
    fn to_plane(&self, vertex: &Bound<'_, Vertex>) -> PyResult<Point> {
        self.plane.to_plane(vertex.get().0).raise().map(Point)
    }

    /// The point in space of a place in the plane's own axes.
    fn to_space(&self, point: GivenPoint) -> PyResult<Vertex> {
        self.plane.to_space(point.at("point")?).raise().map(Vertex)
    }

    /// The point of the plane above or below a place in plan.
    fn at_plan(&self, plan: GivenPoint) -> PyResult<Vertex> {
        self.plane.at_plan(plan.at("plan")?).raise().map(Vertex)
    }

    fn __repr__(&self) -> String {
        format!("<Plane {}: {}, {}>", self.plane.name(), self.plane.pitch(), self.plane.area())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (String,))> {
        let plane = slf.get();
        Ok((plane.of.bind(slf.py()).getattr("plane")?, (plane.name().to_owned(),)))
    }
}
