//! Flat patterns.

use super::{BendLines, BendRule, FaceWidths, Profile, SectionFigures};
use crate::error::Raise;
use crate::given::Given;
use crate::names::{hash_written, name_of};
use crate::place::{Part as _, Place};
use crate::record::{Caution, Worksheet};
use crate::units::{BendAngle, Length, LineMass, SurfaceMass};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::record::Calculation;
use seamwright::trim as core_trim;

/// Which leg or bend of the profile: its index, or the hem of an edge.
#[derive(IntoPyObject)]
pub(crate) enum Part {
    Index(usize),
    Hem(&'static str),
}

impl From<core_trim::Part> for Part {
    fn from(part: core_trim::Part) -> Part {
        match part {
            core_trim::Part::StartHem => Part::Hem("start-hem"),
            core_trim::Part::Body(index) => Part::Index(index),
            core_trim::Part::EndHem => Part::Hem("end-hem"),
            core_trim::Part::StartLip => Part::Hem("start-lip"),
            core_trim::Part::EndLip => Part::Hem("end-lip"),
        }
    }
}

/// The flat pattern of a profile under a bend rule, as a calculation that can show each leg and bend.
///
/// >>> from seamwright.trim import Bend, BendRule, FlatPattern, Leg, NeutralFactor, Profile
/// >>> legs = [Leg("a", '2"', "sheet-edge", "outer-corner"), Leg("b", '3"', "outer-corner", "sheet-edge")]
/// >>> profile = Profile("0.024 in", legs, [Bend("90 deg", "up", "0.024 in")], "upper")
/// >>> flat, sheet = FlatPattern(profile, BendRule.neutral_axis(NeutralFactor(0.33))).explain()
/// >>> format(flat.girth, "in.3"), len(sheet.steps())
/// ('4.954 in', 5)
#[pyclass(module = "seamwright.trim", frozen, eq, hash)]
#[derive(Clone, PartialEq)]
pub(crate) struct FlatPattern(core_trim::FlatPattern);

impl Hash for FlatPattern {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.0, state);
    }
}

#[pymethods]
impl FlatPattern {
    #[new]
    fn new(profile: &Bound<'_, Profile>, rule: BendRule) -> FlatPattern {
        FlatPattern(core_trim::FlatPattern { profile: profile.get().0.clone(), rule: rule.0 })
    }

    /// What is unfolded.
    #[getter]
    fn profile(&self) -> Profile {
        Profile(self.0.profile.clone())
    }

    /// The rule of every bend that has none of its own.
    #[getter]
    fn rule(&self) -> BendRule {
        BendRule(self.0.rule.clone())
    }

    /// The flat pattern.
    fn compute(&self) -> PyResult<Flat> {
        Ok(Flat { flat: self.0.compute().raise()?, of: self.clone() })
    }

    /// The flat pattern, and its worksheet.
    fn explain(&self) -> PyResult<(Flat, Worksheet)> {
        let (flat, sheet) = self.0.explain().raise()?;
        Ok((Flat { flat, of: self.clone() }, Worksheet(sheet)))
    }

    fn __repr__(&self) -> String {
        format!("<FlatPattern: {}>", self.0.title())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Profile, BendRule)) {
        (slf.get_type(), (slf.get().profile(), slf.get().rule()))
    }
}

/// A flat pattern with the rule that made it. Stations are measured from the start edge, with the upper face up.
///
/// It pickles as its profile and rule, which unfold again.
#[pyclass(module = "seamwright.trim", frozen, eq, hash)]
#[derive(Clone, PartialEq)]
pub(crate) struct Flat {
    of: FlatPattern,
    flat: core_trim::Flat,
}

impl Hash for Flat {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.of.hash(state);
    }
}

impl Flat {
    /// One that core has unfolded already.
    pub(crate) fn known(profile: &core_trim::Profile, flat: core_trim::Flat) -> Flat {
        Flat { of: FlatPattern(core_trim::FlatPattern { profile: profile.clone(), rule: flat.rule().clone() }), flat }
    }

    pub(super) fn of(profile: &Profile, rule: &BendRule) -> PyResult<Flat> {
        FlatPattern(core_trim::FlatPattern { profile: profile.0.clone(), rule: rule.0.clone() }).compute()
    }
}

#[pymethods]
impl Flat {
    /// The width of the blank: the stretch-out.
    #[getter]
    fn girth(&self) -> Length {
        Length(self.flat.girth())
    }

    /// Thickness of the sheet.
    #[getter]
    fn thickness(&self) -> Length {
        Length(self.flat.thickness())
    }

    /// The flat parts in order, returns of hems among them; one more than the bends.
    #[getter]
    fn legs(&self) -> Vec<FlatLeg> {
        self.flat.legs().iter().copied().map(FlatLeg).collect()
    }

    /// The bends in order, folds of hems among them.
    #[getter]
    fn bends(&self) -> Vec<FlatBend> {
        self.flat.bends().iter().map(|b| FlatBend { rule: self.flat.rule_of(b).clone(), bend: b.clone() }).collect()
    }

    /// The rule of every bend that has none of its own.
    #[getter]
    fn rule(&self) -> BendRule {
        BendRule(self.flat.rule().clone())
    }

    /// What must be known beside the numbers.
    #[getter]
    fn cautions(&self) -> Vec<Caution> {
        self.flat.cautions().iter().map(Caution::from).collect()
    }

    /// A station measured from the end edge instead of from the start edge, or the other way.
    #[allow(clippy::wrong_self_convention, reason = "core's name: the station is measured from the end")]
    fn from_end(&self, station: Given<Length>) -> PyResult<Length> {
        self.flat.from_end(station.at("station")?).raise().map(Length)
    }

    /// The mass of the trim per length, from the mass of its sheet per area.
    fn line_mass(&self, sheet: Given<SurfaceMass>) -> PyResult<LineMass> {
        self.flat.line_mass(sheet.at("sheet")?).raise().map(LineMass)
    }

    /// The lines of every bend, from either edge.
    #[getter]
    fn lines(slf: &Bound<'_, Self>) -> PyResult<Vec<BendLines>> {
        let lines = slf.get().flat.lines().raise()?;
        Ok(lines.into_iter().enumerate().map(|(i, l)| BendLines::at(l, Place::numbered(slf, "lines", i))).collect())
    }

    /// Area, centroid and size of the section as folded.
    #[getter]
    fn section(slf: &Bound<'_, Self>) -> PyResult<SectionFigures> {
        slf.get().flat.section().raise().map(|s| SectionFigures::at(s, Place::under(slf, "section")))
    }

    /// Developed widths of both faces as folded.
    #[getter]
    fn faces(slf: &Bound<'_, Self>) -> PyResult<FaceWidths> {
        slf.get().flat.faces().raise().map(|f| FaceWidths::at(f, Place::under(slf, "faces")))
    }

    /// The closed contour of the folded section as points, x and y, the first leg along the x axis: arcs cut into chords that stray from them by at most the tolerance.
    fn contour(&self, tolerance: Given<Length>) -> PyResult<Vec<(Length, Length)>> {
        let outline = self.flat.outline().raise()?;
        let points = outline.points(tolerance.at("tolerance")?).raise()?;
        Ok(points.into_iter().map(|p| (Length(p.x), Length(p.y))).collect())
    }

    fn __repr__(&self) -> String {
        format!("<Flat: girth {}, {} bends, {}>", self.flat.girth(), self.flat.bends().len(), self.flat.rule())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, ())> {
        Ok((slf.get().of.clone().into_pyobject(slf.py())?.getattr("compute")?, ()))
    }
}

/// The flat part of a leg, between tangent lines. It is read from its flat pattern and does not pickle alone.
#[pyclass(module = "seamwright.trim", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) struct FlatLeg(core_trim::FlatLeg);

impl Hash for FlatLeg {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.0, state);
    }
}

#[pymethods]
impl FlatLeg {
    /// Which leg of the profile by its index, or the return of an edge: ``start-hem``, ``end-hem``, or the ``start-lip`` or ``end-lip`` of a double hem.
    #[getter]
    fn part(&self) -> Part {
        self.0.part.into()
    }

    /// Where it starts. (In Rust this is ``from``, which is a word of Python's own.)
    #[getter]
    fn start(&self) -> Length {
        Length(self.0.from)
    }

    /// Where it ends.
    #[getter]
    fn end(&self) -> Length {
        Length(self.0.to)
    }

    /// Its length; never negative.
    #[getter]
    fn length(&self) -> Length {
        Length(self.0.length())
    }

    fn __repr__(&self) -> String {
        format!("<FlatLeg {}: {} to {}>", self.0.part, self.0.from, self.0.to)
    }
}

/// A bend in the flat: two tangent lines and the bend line halfway between. It is read from its flat pattern and does not pickle alone.
#[pyclass(module = "seamwright.trim", frozen, eq, hash)]
#[derive(Clone, PartialEq)]
pub(crate) struct FlatBend {
    bend: core_trim::FlatBend,
    rule: core_trim::BendRule,
}

impl Hash for FlatBend {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.bend, state);
    }
}

#[pymethods]
impl FlatBend {
    /// Which bend of the profile by its index, or the fold of an edge: ``start-hem``, ``end-hem``, or the ``start-lip`` or ``end-lip`` of a double hem.
    #[getter]
    fn part(&self) -> Part {
        self.bend.part.into()
    }

    /// The tangent line towards the start edge. (In Rust this is ``from``, which is a word of Python's own.)
    #[getter]
    fn start(&self) -> Length {
        Length(self.bend.from)
    }

    /// The bend line, halfway between the tangent lines.
    #[getter]
    fn line(&self) -> Length {
        Length(self.bend.line)
    }

    /// The tangent line towards the end edge.
    #[getter]
    fn end(&self) -> Length {
        Length(self.bend.to)
    }

    /// How far, from flat.
    #[getter]
    fn angle(&self) -> BendAngle {
        BendAngle(self.bend.angle)
    }

    /// Which way, with the upper face up: ``up`` or ``down``.
    #[getter]
    fn direction(&self) -> PyResult<String> {
        name_of(&self.bend.direction)
    }

    /// Radius of the inside face.
    #[getter]
    fn inside_radius(&self) -> Length {
        Length(self.bend.inside_radius)
    }

    /// The rule that gave its allowance: its own or the pattern's.
    #[getter]
    fn rule(&self) -> BendRule {
        BendRule(self.rule.clone())
    }

    /// The flat length that the bend takes.
    #[getter]
    fn allowance(&self) -> Length {
        Length(self.bend.allowance())
    }

    fn __repr__(&self) -> String {
        format!("<FlatBend {}: {} at {}>", self.bend.part, self.bend.angle, self.bend.line)
    }
}
