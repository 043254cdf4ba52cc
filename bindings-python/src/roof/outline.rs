//! `seamwright.roof.Outline`, its points and its edges.

use crate::error::{Raise, raised};
use crate::given::Given;
use crate::names::hash_written;
use crate::parts::{Reduced, reduced};
use crate::units::{Area, Length};
use core::hash::{Hash, Hasher};
#[cfg(feature = "stubs")]
use pyo3::PyTypeInfo;
use pyo3::exceptions::PyTypeError;
#[cfg(feature = "stubs")]
use pyo3::inspect::PyStaticExpr;
use pyo3::prelude::*;
use pyo3::types::{PyString, PyType};
use seamwright::error::Error;
use seamwright::roof as core_roof;

/// A point in a plane: x across the slope to the right as seen from below, y up the slope.
///
/// >>> from seamwright.roof import Point
/// >>> format(Point("3 ft", "0 ft").x, "in/16")
/// '36"'
#[pyclass(module = "seamwright.roof", frozen, eq, ord, hash)]
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) struct Point(pub(crate) core_roof::Point);

#[pymethods]
impl Point {
    #[new]
    fn new(x: Given<Length>, y: Given<Length>) -> PyResult<Point> {
        Ok(Point(core_roof::Point::new(x.at("x")?, y.at("y")?)))
    }

    /// Across the slope, to the right.
    #[getter]
    fn x(&self) -> Length {
        Length(self.0.x)
    }

    /// Up the slope.
    #[getter]
    fn y(&self) -> Length {
        Length(self.0.y)
    }

    fn __repr__(&self) -> String {
        format!("Point('{}', '{}')", self.0.x, self.0.y)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Length, Length)) {
        (slf.get_type(), (slf.get().x(), slf.get().y()))
    }
}

/// An argument that is a point, or a tuple of its two lengths.
pub(crate) struct GivenPoint(Result<core_roof::Point, Error>);

impl GivenPoint {
    /// The point; a refusal names this argument.
    pub(crate) fn at(self, path: &str) -> PyResult<core_roof::Point> {
        self.0.raise_at(path)
    }
}

impl<'py> FromPyObject<'_, 'py> for GivenPoint {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = PyStaticExpr::BinOp {
        left: &<Point as PyTypeInfo>::TYPE_HINT,
        op: pyo3::inspect::PyStaticOperator::BitOr,
        right: &<(Given<Length>, Given<Length>) as FromPyObject<'_, '_>>::INPUT_TYPE,
    };

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if let Ok(point) = obj.cast::<Point>() {
            return Ok(GivenPoint(Ok(point.get().0)));
        }
        let Ok((x, y)) = obj.extract::<(Bound<'_, PyAny>, Bound<'_, PyAny>)>() else {
            let name = obj.get_type().name().map_or_else(|_| "an object".to_owned(), |n| n.to_string());
            return Err(PyTypeError::new_err(format!("a Point or a tuple of its two lengths is expected, not {name}")));
        };
        let (x, y) = (x.extract::<Given<Length>>()?.core(), y.extract::<Given<Length>>()?.core());
        Ok(GivenPoint(x.map_err(|e| e.under("x")).and_then(|x| Ok(core_roof::Point::new(x, y.map_err(|e| e.under("y"))?)))))
    }
}

/// An argument that is the points of a ring in order.
pub(crate) struct GivenRing(Vec<GivenPoint>);

impl GivenRing {
    fn at(self, path: &str) -> PyResult<Vec<core_roof::Point>> {
        self.0.into_iter().enumerate().map(|(i, point)| point.at(&format!("{path}[{i}]"))).collect()
    }
}

impl<'py> FromPyObject<'_, 'py> for GivenRing {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr =
        pyo3::type_hint_subscript!(pyo3::type_hint_identifier!("collections.abc", "Iterable"), <GivenPoint as FromPyObject<'_, '_>>::INPUT_TYPE);

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if obj.is_instance_of::<PyString>() {
            return Err(PyTypeError::new_err("the points of a ring are expected, not one text"));
        }
        obj.try_iter()?.map(|item| item?.extract::<GivenPoint>()).collect::<PyResult<_>>().map(GivenRing)
    }
}

/// The upright rectangle that just holds an outline.
///
/// >>> from seamwright.roof import Outline
/// >>> bounds = Outline([("0 ft", "0 ft"), ("4 ft", "0 ft"), ("0 ft", "3 ft")]).bounds
/// >>> format(bounds.width(), "ft-in/16"), format(bounds.height(), "ft-in/16")
/// ('4\'-0"', '3\'-0"')
#[pyclass(module = "seamwright.roof", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct Bounds(core_roof::Bounds);

#[pymethods]
impl Bounds {
    #[new]
    fn new(low: GivenPoint, high: GivenPoint) -> PyResult<Bounds> {
        Ok(Bounds(core_roof::Bounds { low: low.at("low")?, high: high.at("high")? }))
    }

    /// Its lower left corner.
    #[getter]
    fn low(&self) -> Point {
        Point(self.0.low)
    }

    /// Its upper right corner.
    #[getter]
    fn high(&self) -> Point {
        Point(self.0.high)
    }

    /// How far it reaches across the slope.
    fn width(&self) -> PyResult<Length> {
        self.0.width().raise().map(Length)
    }

    /// How far it reaches up the slope.
    fn height(&self) -> PyResult<Length> {
        self.0.height().raise().map(Length)
    }

    fn __repr__(&self) -> String {
        format!("Bounds({}, {})", self.low().__repr__(), self.high().__repr__())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Point, Point)) {
        (slf.get_type(), (slf.get().low(), slf.get().high()))
    }
}

/// The shape of a plane: a simple polygon, convex or not, with holes. A vertex is a Point or a tuple of two lengths.
///
/// A ring may wind either way; it is stored with the outer ring counter-clockwise and the holes clockwise, each from the vertex that was given
/// first, so that the plane always lies on the left of an edge. All checks are exact: nothing is snapped.
///
/// >>> from seamwright.roof import Outline, Point
/// >>> curb = [("10 ft", "5 ft"), ("14 ft", "5 ft"), ("14 ft", "9 ft"), ("10 ft", "9 ft")]
/// >>> slope = Outline([("0 ft", "0 ft"), ("40 ft", "0 ft"), ("40 ft", "20 ft"), ("0 ft", "20 ft")], [curb])
/// >>> round(slope.area.get("ft2"), 9), slope.contains(Point("12 ft", "7 ft"))
/// (784.0, False)
#[pyclass(module = "seamwright.roof", frozen, eq, hash, from_py_object)]
#[derive(Clone, PartialEq, Eq)]
pub(crate) struct Outline(pub(crate) core_roof::Outline);

impl Hash for Outline {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (self.0.outer(), self.0.holes()).hash(state);
    }
}

impl Outline {
    /// The rings as the caller gave them, the outer one first.
    fn given_rings(&self) -> Vec<Vec<Point>> {
        let mut rings: Vec<Vec<Point>> = self.0.rings().map(|ring| ring.iter().copied().map(Point).collect()).collect();
        // A ring was turned if its first edge, which leaves the same vertex, is not the first that was given.
        let turned: Vec<usize> = self.0.edges().filter(|e| e.index == 0 && e.given != 0).map(|e| e.ring).collect();
        for ring in turned {
            if let Some(rest) = rings.get_mut(ring).and_then(|points| points.get_mut(1..)) {
                rest.reverse();
            }
        }
        rings
    }
}

#[pymethods]
impl Outline {
    #[new]
    #[pyo3(signature = (outer, holes=None))]
    fn new(outer: GivenRing, holes: Option<Vec<GivenRing>>) -> PyResult<Outline> {
        let holes = holes.unwrap_or_default().into_iter().enumerate().map(|(i, ring)| ring.at(&format!("holes[{i}]"))).collect::<PyResult<_>>()?;
        core_roof::Outline::new(outer.at("outer")?, holes).map_err(|e| raised(&e)).map(Outline)
    }

    /// The outer ring, counter-clockwise.
    #[getter]
    fn outer(&self) -> Vec<Point> {
        self.0.outer().iter().copied().map(Point).collect()
    }

    /// The holes, each clockwise.
    #[getter]
    fn holes(&self) -> Vec<Vec<Point>> {
        self.0.holes().iter().map(|ring| ring.iter().copied().map(Point).collect()).collect()
    }

    /// The area within the outer ring and outside the holes.
    #[getter]
    fn area(&self) -> Area {
        Area(self.0.area())
    }

    /// The upright rectangle that just holds it.
    #[getter]
    fn bounds(&self) -> Bounds {
        Bounds(self.0.bounds())
    }

    /// Every edge, ring by ring, the outer one first.
    #[getter]
    fn edges(slf: &Bound<'_, Self>) -> Vec<Edge> {
        slf.get().0.edges().enumerate().map(|(number, edge)| Edge { of: slf.clone().unbind(), number, edge }).collect()
    }

    /// Whether the point lies in the plane: within the outer ring and not within a hole; a point on an edge does.
    fn contains(&self, point: GivenPoint) -> PyResult<bool> {
        Ok(self.0.contains(point.at("point")?))
    }

    fn __repr__(&self) -> String {
        let holes = match self.0.holes().len() {
            0 => String::new(),
            1 => ", 1 hole".to_owned(),
            n => format!(", {n} holes"),
        };
        format!("<Outline: {} vertices{holes}, {}>", self.0.outer().len(), self.0.area())
    }

    #[allow(clippy::type_complexity, reason = "the constructor's arguments in their order")]
    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Vec<Point>, Vec<Vec<Point>>)) {
        let mut rings = slf.get().given_rings().into_iter();
        (slf.get_type(), (rings.next().unwrap_or_default(), rings.collect()))
    }
}

/// One edge of an outline, from a vertex to the next; the plane lies on its left.
#[pyclass(module = "seamwright.roof", frozen, eq, hash)]
pub(crate) struct Edge {
    of: Py<Outline>,
    number: usize,
    edge: core_roof::Edge,
}

impl PartialEq for Edge {
    fn eq(&self, other: &Edge) -> bool {
        self.edge == other.edge
    }
}

impl Hash for Edge {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.edge, state);
    }
}

#[pymethods]
impl Edge {
    /// The ring: 0 is the outer one, the holes follow from 1.
    #[getter]
    fn ring(&self) -> usize {
        self.edge.ring
    }

    /// Its number in the ring as stored: the edge that leaves the vertex of this number.
    #[getter]
    fn index(&self) -> usize {
        self.edge.index
    }

    /// Its number in the ring as it was given, which differs where the winding was turned.
    #[getter]
    fn given(&self) -> usize {
        self.edge.given
    }

    /// Where it starts. (In Rust this is ``from``, which is a word of Python's own.)
    #[getter]
    fn start(&self) -> Point {
        Point(self.edge.from)
    }

    /// Where it ends.
    #[getter]
    fn end(&self) -> Point {
        Point(self.edge.to)
    }

    fn __repr__(&self) -> String {
        let e = &self.edge;
        format!("<Edge {} of ring {}: {}, {} to {}, {}>", e.index, e.ring, e.from.x, e.from.y, e.to.x, e.to.y)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py, Outline>> {
        reduced(slf.py(), &slf.get().of, "edges", slf.get().number)
    }
}
