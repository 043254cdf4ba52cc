//! Profiles: legs, bends and edges.

use super::BendRule;
use crate::error::Raise;
use crate::given::{Given, Text};
use crate::names::{hash_written, name_of, named};
use crate::trim::Flat;
use crate::units::{BendAngle, Length};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::{PyTuple, PyType};
use seamwright::trim as core_trim;

/// A straight leg. Its ends say to what it is dimensioned: sheet-edge, outer-corner, inner-corner, outer-tangent or tangent.
#[pyclass(module = "seamwright.trim", frozen, eq, hash, from_py_object)]
#[derive(Clone, PartialEq, Eq, Hash)]
pub(crate) struct Leg(pub(super) core_trim::Leg);

#[pymethods]
impl Leg {
    #[new]
    fn new(name: Text, length: Given<Length>, start: Text, end: Text) -> PyResult<Leg> {
        let (length, start, end) = (length.at("length")?, named(&start, "start")?, named(&end, "end")?);
        Ok(Leg(core_trim::Leg { name: name.0.into(), length, start, end }))
    }

    /// What the leg is called on drawings and worksheets.
    #[getter]
    fn name(&self) -> &str {
        &self.0.name
    }

    /// Length between the points that its two ends name.
    #[getter]
    fn length(&self) -> Length {
        Length(self.0.length)
    }

    /// To what the start is dimensioned.
    #[getter]
    fn start(&self) -> PyResult<String> {
        name_of(&self.0.start)
    }

    /// To what the end is dimensioned.
    #[getter]
    fn end(&self) -> PyResult<String> {
        name_of(&self.0.end)
    }

    /// The same leg walked the other way.
    fn reversed(&self) -> Leg {
        Leg(self.0.reversed())
    }

    fn __repr__(&self) -> PyResult<String> {
        Ok(format!("Leg({:?}, '{}', '{}', '{}')", self.0.name, self.0.length, self.start()?, self.end()?))
    }

    #[allow(clippy::type_complexity, reason = "the constructor's arguments in their order")]
    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyType>, (String, Length, String, String))> {
        let l = slf.get();
        Ok((slf.get_type(), (l.name().to_owned(), l.length(), l.start()?, l.end()?)))
    }
}

/// A bend between two legs: its angle from flat, up or down, and its inside radius.
#[pyclass(module = "seamwright.trim", frozen, eq, hash, from_py_object)]
#[derive(Clone, PartialEq)]
pub(crate) struct Bend(pub(super) core_trim::Bend);

impl Hash for Bend {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.0, state);
    }
}

#[pymethods]
impl Bend {
    #[new]
    #[pyo3(signature = (angle, direction, inside_radius, rule=None))]
    fn new(angle: Given<BendAngle>, direction: Text, inside_radius: Given<Length>, rule: Option<BendRule>) -> PyResult<Bend> {
        Ok(Bend(core_trim::Bend {
            angle: angle.at("angle")?,
            direction: named(&direction, "direction")?,
            inside_radius: inside_radius.at("inside_radius")?,
            rule: rule.map(|r| Box::new(r.0)),
        }))
    }

    /// How far, from flat.
    #[getter]
    fn angle(&self) -> BendAngle {
        BendAngle(self.0.angle)
    }

    /// Which way: ``up`` or ``down``.
    #[getter]
    fn direction(&self) -> PyResult<String> {
        name_of(&self.0.direction)
    }

    /// Radius of the inside face.
    #[getter]
    fn inside_radius(&self) -> Length {
        Length(self.0.inside_radius)
    }

    /// A rule for this bend in place of the profile's.
    #[getter]
    fn rule(&self) -> Option<BendRule> {
        self.0.rule.as_deref().cloned().map(BendRule)
    }

    fn __repr__(&self) -> PyResult<String> {
        Ok(format!("<Bend: {} {}, radius {}>", self.0.angle, self.direction()?, self.0.inside_radius))
    }

    #[allow(clippy::type_complexity, reason = "the constructor's arguments in their order")]
    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyType>, (BendAngle, String, Length, Option<BendRule>))> {
        let b = slf.get();
        Ok((slf.get_type(), (b.angle(), b.direction()?, b.inside_radius(), b.rule())))
    }
}

/// An edge of a profile: raw, hemmed, or curled round a wire. A hem folded up lies on the upper face.
#[pyclass(module = "seamwright.trim", frozen, eq, hash, from_py_object)]
#[derive(Clone, PartialEq)]
pub(crate) struct Edge(core_trim::Edge);

impl Hash for Edge {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.0, state);
    }
}

#[pymethods]
impl Edge {
    /// As cut.
    #[staticmethod]
    fn raw() -> Edge {
        Edge(core_trim::Edge::Raw)
    }

    /// Folded flat on itself.
    #[staticmethod]
    #[pyo3(signature = (width, direction, rule=None))]
    fn closed_hem(width: Given<Length>, direction: Text, rule: Option<BendRule>) -> PyResult<Edge> {
        let edge = core_trim::Edge::closed_hem(width.at("width")?, named(&direction, "direction")?);
        Ok(Edge(ruled(edge, rule)))
    }

    /// Folded back with a gap, to hook a cleat.
    #[staticmethod]
    #[pyo3(signature = (width, gap, direction, rule=None))]
    fn open_hem(width: Given<Length>, gap: Given<Length>, direction: Text, rule: Option<BendRule>) -> PyResult<Edge> {
        let edge = core_trim::Edge::open_hem(width.at("width")?, gap.at("gap")?, named(&direction, "direction")?);
        Ok(Edge(ruled(edge, rule)))
    }

    /// Folded back past 180 degrees, so that the end of the return touches the leg, or clears it by the gap.
    #[staticmethod]
    #[pyo3(signature = (inside_radius, return_flat, gap, direction, rule=None))]
    fn teardrop_hem(inside_radius: Given<Length>, return_flat: Given<Length>, gap: Given<Length>, direction: Text, rule: Option<BendRule>) -> PyResult<Edge> {
        let (inside_radius, return_flat, gap) = (inside_radius.at("inside_radius")?, return_flat.at("return_flat")?, gap.at("gap")?);
        Ok(Edge(ruled(core_trim::Edge::teardrop_hem(inside_radius, return_flat, gap, named(&direction, "direction")?), rule)))
    }

    /// Folded over twice, the sheet's edge inside.
    #[staticmethod]
    #[pyo3(signature = (width, direction, rule=None))]
    fn double_hem(width: Given<Length>, direction: Text, rule: Option<BendRule>) -> PyResult<Edge> {
        Ok(Edge(ruled(core_trim::Edge::double_hem(width.at("width")?, named(&direction, "direction")?), rule)))
    }

    /// Curled round a wire until the sheet's edge touches the leg.
    #[staticmethod]
    #[pyo3(signature = (wire, direction, rule=None))]
    fn wired_edge(wire: Given<Length>, direction: Text, rule: Option<BendRule>) -> PyResult<Edge> {
        Ok(Edge(ruled(core_trim::Edge::wired_edge(wire.at("wire")?, named(&direction, "direction")?), rule)))
    }

    /// A bend rule of its own, if it has one.
    #[getter]
    fn rule(&self) -> Option<BendRule> {
        self.0.rule().cloned().map(BendRule)
    }

    /// Whether it is as cut.
    #[getter]
    fn is_raw(&self) -> bool {
        self.0.is_raw()
    }

    fn __repr__(&self) -> PyResult<String> {
        Ok(match &self.0 {
            core_trim::Edge::ClosedHem { width, direction, .. } => format!("<Edge: closed hem {width} {}>", name_of(direction)?),
            core_trim::Edge::OpenHem { width, gap, direction, .. } => format!("<Edge: open hem {width}, gap {gap}, {}>", name_of(direction)?),
            core_trim::Edge::TeardropHem { inside_radius, return_flat, direction, .. } => {
                format!("<Edge: teardrop hem {return_flat}, radius {inside_radius}, {}>", name_of(direction)?)
            }
            core_trim::Edge::DoubleHem { width, direction, .. } => format!("<Edge: double hem {width} {}>", name_of(direction)?),
            core_trim::Edge::WiredEdge { wire, direction, .. } => format!("<Edge: wire {wire} {}>", name_of(direction)?),
            _ => "<Edge: raw>".to_owned(),
        })
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let (py, class) = (slf.py(), slf.get_type());
        let own = |rule: &Option<Box<core_trim::BendRule>>| rule.as_deref().cloned().map(BendRule);
        Ok(match &slf.get().0 {
            core_trim::Edge::ClosedHem { width, direction, rule } => {
                (class.getattr("closed_hem")?, (Length(*width), name_of(direction)?, own(rule)).into_pyobject(py)?)
            }
            core_trim::Edge::OpenHem { width, gap, direction, rule } => {
                (class.getattr("open_hem")?, (Length(*width), Length(*gap), name_of(direction)?, own(rule)).into_pyobject(py)?)
            }
            core_trim::Edge::TeardropHem { inside_radius, return_flat, gap, direction, rule } => {
                let figures = (Length(*inside_radius), Length(*return_flat), Length(*gap), name_of(direction)?, own(rule));
                (class.getattr("teardrop_hem")?, figures.into_pyobject(py)?)
            }
            core_trim::Edge::DoubleHem { width, direction, rule } => {
                (class.getattr("double_hem")?, (Length(*width), name_of(direction)?, own(rule)).into_pyobject(py)?)
            }
            core_trim::Edge::WiredEdge { wire, direction, rule } => {
                (class.getattr("wired_edge")?, (Length(*wire), name_of(direction)?, own(rule)).into_pyobject(py)?)
            }
            _ => (class.getattr("raw")?, PyTuple::empty(py)),
        })
    }
}

fn ruled(edge: core_trim::Edge, rule: Option<BendRule>) -> core_trim::Edge {
    match rule {
        Some(rule) => edge.with_rule(rule.0),
        None => edge,
    }
}

/// The section of a trim: legs joined by bends between two edges, walked from the start edge. Edges are raw unless given.
///
/// >>> from seamwright.trim import Bend, BendRule, Leg, Profile
/// >>> legs = [Leg("deck flange", '4"', "sheet-edge", "outer-corner"), Leg("face", '3"', "outer-corner", "sheet-edge")]
/// >>> drip = Profile("0.024 in", legs, [Bend("90 deg", "down", "0.03 in")], painted="upper")
/// >>> format(drip.girth(BendRule.handbook("soft-steel")), "in.3")
/// '6.954 in'
#[pyclass(module = "seamwright.trim", frozen, eq, hash)]
#[derive(Clone, PartialEq)]
pub(crate) struct Profile(pub(crate) core_trim::Profile);

impl Hash for Profile {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.0, state);
    }
}

#[pymethods]
impl Profile {
    #[new]
    #[pyo3(signature = (thickness, legs, bends, painted, start_edge=None, end_edge=None))]
    fn new(thickness: Given<Length>, legs: Vec<Leg>, bends: Vec<Bend>, painted: Text, start_edge: Option<Edge>, end_edge: Option<Edge>) -> PyResult<Profile> {
        let profile = core_trim::Profile {
            thickness: thickness.at("thickness")?,
            start_edge: start_edge.map(|e| e.0).unwrap_or_default(),
            legs: legs.into_iter().map(|l| l.0).collect(),
            bends: bends.into_iter().map(|b| b.0).collect(),
            end_edge: end_edge.map(|e| e.0).unwrap_or_default(),
            painted: named(&painted, "painted")?,
        };
        profile.validate().raise()?;
        Ok(Profile(profile))
    }

    /// Thickness of the sheet.
    #[getter]
    fn thickness(&self) -> Length {
        Length(self.0.thickness)
    }

    /// The legs in order.
    #[getter]
    fn legs(&self) -> Vec<Leg> {
        self.0.legs.iter().cloned().map(Leg).collect()
    }

    /// The bends in order: one fewer than legs.
    #[getter]
    fn bends(&self) -> Vec<Bend> {
        self.0.bends.iter().cloned().map(Bend).collect()
    }

    /// The painted face, or the face that is shown: ``upper`` or ``lower``.
    #[getter]
    fn painted(&self) -> PyResult<String> {
        name_of(&self.0.painted)
    }

    /// Whether a bend this way, ``up`` or ``down``, has the painted face on its inside.
    fn closes_on_paint(&self, direction: Text) -> PyResult<bool> {
        Ok(self.0.closes_on_paint(named(&direction, "direction")?))
    }

    /// The edge where the walk starts.
    #[getter]
    fn start_edge(&self) -> Edge {
        Edge(self.0.start_edge.clone())
    }

    /// The edge where the walk ends.
    #[getter]
    fn end_edge(&self) -> Edge {
        Edge(self.0.end_edge.clone())
    }

    /// The piece turned end for end.
    fn reversed(&self) -> Profile {
        Profile(self.0.reversed())
    }

    /// Refuses a rule that does not cover every bend.
    fn validate_with(&self, rule: BendRule) -> PyResult<()> {
        self.0.validate_with(&rule.0).raise()
    }

    /// The flat pattern under a bend rule.
    fn unfold(&self, rule: BendRule) -> PyResult<Flat> {
        Flat::of(self, &rule)
    }

    /// The girth alone.
    fn girth(&self, rule: BendRule) -> PyResult<Length> {
        self.0.girth(&rule.0).raise().map(Length)
    }

    fn __repr__(&self) -> String {
        let names: Vec<&str> = self.0.legs.iter().map(|l| &*l.name).collect();
        format!("<Profile: {} in sheet {}>", names.join(", "), self.0.thickness)
    }

    #[allow(clippy::type_complexity, reason = "the constructor's arguments in their order")]
    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyType>, (Length, Vec<Leg>, Vec<Bend>, String, Edge, Edge))> {
        let p = slf.get();
        Ok((slf.get_type(), (p.thickness(), p.legs(), p.bends(), p.painted()?, p.start_edge(), p.end_edge())))
    }
}
