//! `seamwright.layout.LaidPlane`: what a layout gives.

use super::Layout;
use crate::error::Raise;
use crate::given::Whole;
use crate::names::hash_written;
use crate::parts::{Reduced, ReducedAttribute, reduced, reduced_attribute};
use crate::place::Place;
use crate::record::Caution;
use crate::roof::Point;
use crate::units::{Angle, Area, Length, Mass};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyTuple;
use seamwright::error::{Error, ErrorKind};
use seamwright::layout as core_layout;

/// A plane with its panels laid. It pickles as its layout, which computes it again, or as its place in a packet, which gives it marks of its
/// own; its parts pickle as their place in it.
#[pyclass(module = "seamwright.layout", frozen, eq, hash)]
pub(crate) struct LaidPlane {
    of: Layout,
    laid: core_layout::LaidPlane,
    place: Option<Place>,
}

impl PartialEq for LaidPlane {
    fn eq(&self, other: &LaidPlane) -> bool {
        self.of == other.of && self.laid == other.laid
    }
}

impl Hash for LaidPlane {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.of.hash(state);
    }
}

impl LaidPlane {
    pub(crate) fn core(&self) -> &core_layout::LaidPlane {
        &self.laid
    }

    pub(super) fn new(of: Layout, laid: core_layout::LaidPlane) -> LaidPlane {
        LaidPlane { of, laid, place: None }
    }

    /// One that stands in a packet.
    pub(crate) fn placed(of: Layout, laid: core_layout::LaidPlane, place: Place) -> LaidPlane {
        LaidPlane { of, laid, place: Some(place) }
    }
}

#[pymethods]
impl LaidPlane {
    /// What was laid.
    #[getter]
    fn layout(&self) -> Layout {
        self.of.clone()
    }

    /// The panels, strip by strip from the left, in a strip from the foot up.
    #[getter]
    fn panels(slf: &Bound<'_, Self>) -> Vec<LaidPanel> {
        slf.get().laid.panels.iter().enumerate().map(|(number, panel)| LaidPanel { of: slf.clone().unbind(), number, panel: panel.clone() }).collect()
    }

    /// The grouped length list, the longest first, at one length the widest first.
    #[getter]
    fn groups(slf: &Bound<'_, Self>) -> Vec<Group> {
        slf.get().laid.groups.iter().enumerate().map(|(number, group)| Group { of: slf.clone().unbind(), number, group: group.clone() }).collect()
    }

    /// The x of every seam line within the outline's bounds, its edges among them where a seam falls there.
    #[getter]
    fn seams(&self) -> Vec<Length> {
        self.laid.seams.iter().copied().map(Length).collect()
    }

    /// The coil.
    #[getter]
    fn coil(slf: &Bound<'_, Self>) -> Coil {
        Coil { of: slf.clone().unbind(), coil: slf.get().laid.coil }
    }

    /// The area that the panels cover, between the junction lines.
    #[getter]
    fn covered(&self) -> Area {
        Area(self.laid.covered)
    }

    /// The area of the parts that get no panel, because hold-backs leave nothing of it.
    #[getter]
    fn uncovered(&self) -> Area {
        Area(self.laid.uncovered)
    }

    /// What to know before metal is formed.
    #[getter]
    fn cautions(&self) -> Vec<Caution> {
        self.laid.cautions.iter().map(Caution::from).collect()
    }

    /// The mark of a panel of this plane.
    fn mark_of(&self, panel: &Bound<'_, LaidPanel>) -> Option<&str> {
        self.laid.mark_of(&panel.get().panel)
    }

    fn __repr__(&self) -> String {
        format!("<LaidPlane: {} panels in {} groups, {}>", self.laid.panels.len(), self.laid.groups.len(), self.laid.covered)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        match &slf.get().place {
            Some(place) => place.reduced(slf.py()),
            None => Ok((slf.get().layout().into_pyobject(slf.py())?.getattr("compute")?, PyTuple::empty(slf.py()))),
        }
    }
}

/// One panel as laid. Lengths are along the seams; sides are as seen from below the plane, looking up it.
#[pyclass(module = "seamwright.layout", frozen, eq, hash)]
pub(crate) struct LaidPanel {
    of: Py<LaidPlane>,
    number: usize,
    panel: core_layout::LaidPanel,
}

impl PartialEq for LaidPanel {
    fn eq(&self, other: &LaidPanel) -> bool {
        self.panel == other.panel
    }
}

impl Hash for LaidPanel {
    fn hash<H: Hasher>(&self, state: &mut H) {
        let p = &self.panel;
        (p.strip, p.run, p.left, p.right, p.finished, p.order).hash(state);
    }
}

impl LaidPanel {
    fn end(slf: &Bound<'_, Self>, list: &'static str, parts: &[core_layout::EndPart]) -> Vec<EndPart> {
        EndPart::all(slf.as_any(), list, parts)
    }
}

#[pymethods]
impl LaidPanel {
    /// Its strip, from the left, from 0.
    #[getter]
    fn strip(&self) -> usize {
        self.panel.strip
    }

    /// Its run in the strip, from the foot, from 0.
    #[getter]
    fn run(&self) -> usize {
        self.panel.run
    }

    /// The x of its left side.
    #[getter]
    fn left(&self) -> Length {
        Length(self.panel.left)
    }

    /// The x of its right side.
    #[getter]
    fn right(&self) -> Length {
        Length(self.panel.right)
    }

    /// How wide it covers; less than the coverage where it is ripped.
    #[getter]
    fn width(&self) -> Length {
        Length(self.panel.width)
    }

    /// Whether its left side is a seam; else it is ripped there or ends in a point.
    #[getter]
    fn left_on_seam(&self) -> bool {
        self.panel.left_on_seam
    }

    /// Whether its right side is a seam.
    #[getter]
    fn right_on_seam(&self) -> bool {
        self.panel.right_on_seam
    }

    /// The lines that end it below, from left to right.
    #[getter]
    fn lower(slf: &Bound<'_, Self>) -> Vec<EndPart> {
        LaidPanel::end(slf, "lower", &slf.get().panel.lower)
    }

    /// The lines that end it above, from left to right.
    #[getter]
    fn upper(slf: &Bound<'_, Self>) -> Vec<EndPart> {
        LaidPanel::end(slf, "upper", &slf.get().panel.upper)
    }

    /// Finished length along its left side; ``None`` where nothing is left of it there.
    #[getter]
    fn left_length(&self) -> Option<Length> {
        self.panel.left_length.map(Length)
    }

    /// Finished length along its right side; ``None`` where nothing is left of it there.
    #[getter]
    fn right_length(&self) -> Option<Length> {
        self.panel.right_length.map(Length)
    }

    /// The greatest finished length over its width.
    #[getter]
    fn finished(&self) -> Length {
        Length(self.panel.finished)
    }

    /// The upright extent of the finished panel.
    #[getter]
    fn blank(&self) -> Length {
        Length(self.panel.blank)
    }

    /// The length to order, of each piece.
    #[getter]
    fn order(&self) -> Length {
        Length(self.panel.order)
    }

    /// Pieces, lapped at their ends; 1 for a panel in one length.
    #[getter]
    fn pieces(&self) -> u32 {
        self.panel.pieces
    }

    /// Its group in the length list, by number.
    #[getter]
    fn group(&self) -> usize {
        self.panel.group
    }

    /// Its mark in the length list.
    #[getter]
    fn mark(&self) -> PyResult<&str> {
        self.of.get().laid.mark_of(&self.panel).ok_or_else(|| Error::new(ErrorKind::Internal, "a panel without a group")).raise()
    }

    /// The area of the plane that it covers, between the junction lines.
    #[getter]
    fn covered(&self) -> Area {
        Area(self.panel.covered)
    }

    /// Whether an opening or a notch is cut out of it, or its end steps.
    #[getter]
    fn notched(&self) -> bool {
        self.panel.notched
    }

    /// What is cut out of it between its lowest and its highest line.
    #[getter]
    fn notches(slf: &Bound<'_, Self>) -> Vec<Notch> {
        slf.get().panel.notches.iter().enumerate().map(|(number, notch)| Notch { of: slf.clone().unbind(), number, notch: notch.clone() }).collect()
    }

    /// Whether both its ends pin it.
    #[getter]
    fn pinned_twice(&self) -> bool {
        self.panel.pinned_twice
    }

    fn __repr__(&self) -> PyResult<String> {
        let p = &self.panel;
        Ok(format!("<LaidPanel {}: strip {}, run {}, {} wide, order {}>", self.mark()?, p.strip, p.run, p.width, p.order))
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py, LaidPlane>> {
        reduced(slf.py(), &slf.get().of, "panels", slf.get().number)
    }
}

/// What is cut out of a panel between its ends: an opening within its width, or what lies beside an arm of the plane.
#[pyclass(module = "seamwright.layout", frozen, eq, hash)]
pub(crate) struct Notch {
    of: Py<LaidPanel>,
    number: usize,
    notch: core_layout::Notch,
}

impl PartialEq for Notch {
    fn eq(&self, other: &Notch) -> bool {
        self.notch == other.notch
    }
}

impl Hash for Notch {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.notch, state);
    }
}

#[pymethods]
impl Notch {
    /// The lines that bound it below, from left to right: the panel's metal ends upward there.
    #[getter]
    fn lower(slf: &Bound<'_, Self>) -> Vec<EndPart> {
        EndPart::all(slf.as_any(), "lower", &slf.get().notch.lower)
    }

    /// The lines that bound it above, from left to right.
    #[getter]
    fn upper(slf: &Bound<'_, Self>) -> Vec<EndPart> {
        EndPart::all(slf.as_any(), "upper", &slf.get().notch.upper)
    }

    fn __repr__(&self) -> String {
        format!("<Notch: {} lines below, {} above>", self.notch.lower.len(), self.notch.upper.len())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py, LaidPanel>> {
        reduced(slf.py(), &slf.get().of, "notches", slf.get().number)
    }
}

/// A stretch of one edge that ends a panel, as seen in the plane.
#[pyclass(module = "seamwright.layout", frozen, eq, hash)]
pub(crate) struct EndPart {
    /// A panel or a notch.
    of: Py<PyAny>,
    list: &'static str,
    number: usize,
    part: core_layout::EndPart,
}

impl PartialEq for EndPart {
    fn eq(&self, other: &EndPart) -> bool {
        self.part == other.part
    }
}

impl Hash for EndPart {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (self.part.edge, self.part.left, self.part.right).hash(state);
    }
}

impl EndPart {
    fn all(of: &Bound<'_, PyAny>, list: &'static str, parts: &[core_layout::EndPart]) -> Vec<EndPart> {
        parts.iter().enumerate().map(|(number, part)| EndPart { of: of.clone().unbind(), list, number, part: part.clone() }).collect()
    }
}

#[pymethods]
impl EndPart {
    /// The edge, in the order of the outline's edges.
    #[getter]
    fn edge(&self) -> usize {
        self.part.edge
    }

    /// Its left end, on the junction line.
    #[getter]
    fn left(&self) -> Point {
        Point(self.part.left)
    }

    /// Its right end, on the junction line.
    #[getter]
    fn right(&self) -> Point {
        Point(self.part.right)
    }

    /// The skew cut, from square: positive where the line rises to the right.
    #[getter]
    fn skew(&self) -> Angle {
        Angle(self.part.skew)
    }

    /// The angle between the seams and the line: 90 degrees is square.
    #[getter]
    fn meeting(&self) -> Angle {
        Angle(self.part.meeting())
    }

    fn __repr__(&self) -> String {
        format!("<EndPart: edge {}, skew {}>", self.part.edge, self.part.skew)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py, PyAny>> {
        reduced(slf.py(), &slf.get().of, slf.get().list, slf.get().number)
    }
}

/// Panels of one order length and one width.
#[pyclass(module = "seamwright.layout", frozen, eq, hash)]
pub(crate) struct Group {
    of: Py<LaidPlane>,
    number: usize,
    group: core_layout::Group,
}

impl PartialEq for Group {
    fn eq(&self, other: &Group) -> bool {
        self.group == other.group
    }
}

impl Hash for Group {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.group, state);
    }
}

#[pymethods]
impl Group {
    /// The mark: A for the longest, then B and so on.
    #[getter]
    fn mark(&self) -> &str {
        &self.group.mark
    }

    /// The order length.
    #[getter]
    fn order(&self) -> Length {
        Length(self.group.order)
    }

    /// The width that they cover.
    #[getter]
    fn width(&self) -> Length {
        Length(self.group.width)
    }

    /// How many pieces.
    #[getter]
    fn count(&self) -> u64 {
        self.group.count
    }

    /// Their order lengths together.
    #[getter]
    fn total(&self) -> Length {
        Length(self.group.total)
    }

    fn __repr__(&self) -> String {
        let g = &self.group;
        format!("<Group {}: {} of {}, {} wide>", g.mark, g.count, g.order, g.width)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py, LaidPlane>> {
        reduced(slf.py(), &slf.get().of, "groups", slf.get().number)
    }
}

/// The coil that the panels of a plane take.
#[pyclass(module = "seamwright.layout", frozen, eq, hash)]
pub(crate) struct Coil {
    of: Py<LaidPlane>,
    coil: core_layout::Coil,
}

impl PartialEq for Coil {
    fn eq(&self, other: &Coil) -> bool {
        self.coil == other.coil
    }
}

impl Hash for Coil {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.coil, state);
    }
}

#[pymethods]
impl Coil {
    /// Its width: the panel's developed width. Ripped panels are cut from it too.
    #[getter]
    fn width(&self) -> Length {
        Length(self.coil.width)
    }

    /// Its length: all order lengths together.
    #[getter]
    fn length(&self) -> Length {
        Length(self.coil.length)
    }

    /// Its area.
    #[getter]
    fn area(&self) -> Area {
        Area(self.coil.area)
    }

    /// Its mass, if the sheet's is known.
    #[getter]
    fn mass(&self) -> Option<Mass> {
        self.coil.mass.map(Mass)
    }

    fn __repr__(&self) -> String {
        format!("<Coil: {} wide, {} long>", self.coil.width, self.coil.length)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<ReducedAttribute<'py, LaidPlane>> {
        reduced_attribute(slf.py(), &slf.get().of, "coil")
    }
}

/// The mark of this number: A to Z, then AA and so on.
///
/// >>> from seamwright.layout import mark
/// >>> mark(0), mark(25), mark(26)
/// ('A', 'Z', 'AA')
#[pyfunction]
pub(crate) fn mark(number: Whole<u32>) -> PyResult<String> {
    // A pointer is as wide on every platform that Python has.
    Ok(core_layout::mark(usize::try_from(number.at("number")?).unwrap_or(usize::MAX)))
}
