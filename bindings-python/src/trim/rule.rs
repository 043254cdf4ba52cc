//! Bend rules, the size of a bend, tables of deductions.

use super::NeutralFactor;
use crate::error::Raise;
use crate::given::{Given, Text};
use crate::names::{hash_written, name_of, named};
use crate::record::Source;
use crate::units::{BendAngle, Length};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::{PyTuple, PyType};
use seamwright::trim as core_trim;
use seamwright::trim::BendRule as Core;

/// Thickness, inside radius and angle of a bend.
///
/// >>> from seamwright.trim import BendSize
/// >>> format(BendSize("0.04 in", "0.16 in", "90 deg").outside_setback(), "in.3")
/// '0.200 in'
#[pyclass(module = "seamwright.trim", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct BendSize(core_trim::BendSize);

impl Hash for BendSize {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.0, state);
    }
}

#[pymethods]
impl BendSize {
    #[new]
    fn new(thickness: Given<Length>, inside_radius: Given<Length>, angle: Given<BendAngle>) -> PyResult<BendSize> {
        let (thickness, inside_radius, angle) = (thickness.at("thickness")?, inside_radius.at("inside_radius")?, angle.at("angle")?);
        Ok(BendSize(core_trim::BendSize { thickness, inside_radius, angle }))
    }

    /// Thickness of the sheet.
    #[getter]
    fn thickness(&self) -> Length {
        Length(self.0.thickness)
    }

    /// Radius of the inside face.
    #[getter]
    fn inside_radius(&self) -> Length {
        Length(self.0.inside_radius)
    }

    /// How far it is bent, from flat.
    #[getter]
    fn angle(&self) -> BendAngle {
        BendAngle(self.0.angle)
    }

    /// From the tangent line to the corner of the outside faces.
    fn outside_setback(&self) -> PyResult<Length> {
        self.0.outside_setback().raise().map(Length)
    }

    /// From the tangent line to the corner of the inside faces.
    fn inside_setback(&self) -> PyResult<Length> {
        self.0.inside_setback().raise().map(Length)
    }

    fn __repr__(&self) -> String {
        format!("BendSize('{}', '{}', '{}')", self.0.thickness, self.0.inside_radius, self.0.angle)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Length, Length, BendAngle)) {
        let s = slf.get();
        (slf.get_type(), (s.thickness(), s.inside_radius(), s.angle()))
    }
}

/// The compensation value of DIN 6935, with the standard's own leg convention: to be subtracted from the sum of the legs.
#[pyfunction]
pub(crate) fn din_compensation(size: &Bound<'_, BendSize>) -> PyResult<Length> {
    core_trim::din_compensation(size.get().0).raise().map(Length)
}

/// One measured deduction: what two legs to the outer corner are together longer than their flat.
#[pyclass(module = "seamwright.trim", frozen, eq, hash, from_py_object)]
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct Deduction(core_trim::Deduction);

impl Hash for Deduction {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.0, state);
    }
}

#[pymethods]
impl Deduction {
    #[new]
    fn new(thickness: Given<Length>, inside_radius: Given<Length>, angle: Given<BendAngle>, deduction: Given<Length>) -> PyResult<Deduction> {
        Ok(Deduction(core_trim::Deduction {
            thickness: thickness.at("thickness")?,
            inside_radius: inside_radius.at("inside_radius")?,
            angle: angle.at("angle")?,
            deduction: deduction.at("deduction")?,
        }))
    }

    /// Thickness of the sheet.
    #[getter]
    fn thickness(&self) -> Length {
        Length(self.0.thickness)
    }

    /// Inside radius of the bend.
    #[getter]
    fn inside_radius(&self) -> Length {
        Length(self.0.inside_radius)
    }

    /// Angle from flat, less than 180 degrees.
    #[getter]
    fn angle(&self) -> BendAngle {
        BendAngle(self.0.angle)
    }

    /// The deduction.
    #[getter]
    fn deduction(&self) -> Length {
        Length(self.0.deduction)
    }

    fn __repr__(&self) -> String {
        format!("Deduction('{}', '{}', '{}', '{}')", self.0.thickness, self.0.inside_radius, self.0.angle, self.0.deduction)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Length, Length, BendAngle, Length)) {
        let d = slf.get();
        (slf.get_type(), (d.thickness(), d.inside_radius(), d.angle(), d.deduction()))
    }
}

/// A table of measured deductions with its source. Between its rows it is interpolated in thickness, radius and angle, and never beyond them.
#[pyclass(module = "seamwright.trim", frozen, eq, hash)]
#[derive(Clone, PartialEq)]
pub(crate) struct DeductionTable(core_trim::DeductionTable);

impl Hash for DeductionTable {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.0, state);
    }
}

#[pymethods]
impl DeductionTable {
    #[new]
    fn new(rows: Vec<Deduction>, source: Source) -> PyResult<DeductionTable> {
        core_trim::DeductionTable::new(rows.into_iter().map(|d| d.0).collect(), source.0).raise().map(DeductionTable)
    }

    /// The rows by thickness, radius and angle.
    #[getter]
    fn rows(&self) -> Vec<Deduction> {
        self.0.rows().iter().copied().map(Deduction).collect()
    }

    /// Whose figures they are.
    #[getter]
    fn source(&self) -> Source {
        Source(self.0.source().clone())
    }

    fn __repr__(&self) -> String {
        format!("<DeductionTable: {} rows, {}>", self.0.rows().len(), self.0.source())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Vec<Deduction>, Source)) {
        (slf.get_type(), (slf.get().rows(), slf.get().source()))
    }
}

/// How much sheet a bend takes.
///
/// >>> from seamwright.trim import BendRule, BendSize, NeutralFactor
/// >>> rule = BendRule.neutral_axis(NeutralFactor(0.5))
/// >>> format(rule.allowance(BendSize("0.024 in", "0.06 in", "90 deg")), "in.4")
/// '0.1131 in'
#[pyclass(module = "seamwright.trim", frozen, eq, hash, from_py_object)]
#[derive(Clone, PartialEq)]
pub(crate) struct BendRule(pub(crate) Core);

impl Hash for BendRule {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.0, state);
    }
}

#[pymethods]
impl BendRule {
    /// The neutral-axis rule with its factor, the caller's own unless a source is given.
    #[staticmethod]
    #[pyo3(signature = (factor, source=None))]
    fn neutral_axis(factor: &Bound<'_, NeutralFactor>, source: Option<Source>) -> BendRule {
        let factor = factor.get().0;
        BendRule(match source {
            Some(source) => Core::NeutralAxis(core_trim::NeutralAxis { factor, source: source.0 }),
            None => Core::neutral_axis(factor),
        })
    }

    /// DIN 6935, three ranges.
    #[staticmethod]
    fn din_6935() -> BendRule {
        BendRule(Core::Din6935)
    }

    /// DIN 6935 where it holds, and another rule for hems and for bends sharper than it covers.
    #[staticmethod]
    fn din_6935_or(otherwise: BendRule) -> PyResult<BendRule> {
        core_trim::DinOr::new(otherwise.0).raise().map(|rule| BendRule(Core::Din6935Or(rule)))
    }

    /// The older linear rule of DIN 6935, for square bends alone.
    #[staticmethod]
    fn din_6935_linear() -> BendRule {
        BendRule(Core::Din6935Linear)
    }

    /// The handbook constants: soft-copper, soft-steel or cold-rolled-steel.
    #[staticmethod]
    fn handbook(metal: Text) -> PyResult<BendRule> {
        Ok(BendRule(Core::Handbook(named(&metal, "metal")?)))
    }

    /// The formula of aviation handbooks.
    #[staticmethod]
    fn aviation() -> BendRule {
        BendRule(Core::Aviation)
    }

    /// A table of measured deductions.
    #[staticmethod]
    fn deductions(table: &Bound<'_, DeductionTable>) -> BendRule {
        BendRule(Core::Deductions(table.get().0.clone()))
    }

    /// Nominal legs are added and nothing is deducted.
    #[staticmethod]
    fn sharp_corner() -> BendRule {
        BendRule(Core::SharpCorner)
    }

    /// The name of the rule, without its figures.
    #[getter]
    fn name(&self) -> &'static str {
        self.0.name()
    }

    /// Where the rule, or the figure in it, comes from.
    #[getter]
    fn source(&self) -> Source {
        Source(self.0.source().clone())
    }

    /// The bend allowance: flat length between the tangent lines.
    fn allowance(&self, size: &Bound<'_, BendSize>) -> PyResult<Length> {
        self.0.allowance(size.get().0).raise().map(Length)
    }

    /// The bend deduction, for legs measured to the outer corner.
    fn deduction(&self, size: &Bound<'_, BendSize>) -> PyResult<Length> {
        self.0.deduction(size.get().0).raise().map(Length)
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("<BendRule: {}>", self.0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let (py, class) = (slf.py(), slf.get_type());
        Ok(match &slf.get().0 {
            Core::NeutralAxis(axis) => (class.getattr("neutral_axis")?, (NeutralFactor(axis.factor), Source(axis.source.clone())).into_pyobject(py)?),
            Core::Handbook(metal) => (class.getattr("handbook")?, (name_of(metal)?,).into_pyobject(py)?),
            Core::Deductions(table) => (class.getattr("deductions")?, (DeductionTable(table.clone()),).into_pyobject(py)?),
            Core::Din6935 => (class.getattr("din_6935")?, PyTuple::empty(py)),
            Core::Din6935Or(rule) => (class.getattr("din_6935_or")?, (BendRule(rule.otherwise().clone()),).into_pyobject(py)?),
            Core::Din6935Linear => (class.getattr("din_6935_linear")?, PyTuple::empty(py)),
            Core::Aviation => (class.getattr("aviation")?, PyTuple::empty(py)),
            Core::SharpCorner => (class.getattr("sharp_corner")?, PyTuple::empty(py)),
            _ => return Err(pyo3::exceptions::PyTypeError::new_err("this bend rule cannot be pickled")),
        })
    }
}
