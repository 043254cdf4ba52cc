//! `seamwright.layout.Layout`: what a layout is given.

use super::LaidPlane;
use super::limits::{LengthLimit, NarrowLimit, OrderRounding};
use super::panel_break::PanelBreak;
use crate::error::Raise;
use crate::given::{Given, Text};
use crate::names::{hash_written, name_of, named};
use crate::panel::{Panel, PanelEnd};
use crate::record::Worksheet;
use crate::roof::Outline;
use crate::units::{Length, SurfaceMass};
use core::hash::{Hash, Hasher};
#[cfg(feature = "stubs")]
use pyo3::PyTypeInfo;
use pyo3::exceptions::PyTypeError;
#[cfg(feature = "stubs")]
use pyo3::inspect::PyStaticExpr;
use pyo3::prelude::*;
use pyo3::types::{PyString, PyTuple};
use seamwright::layout as core_layout;
use seamwright::record::Calculation;
use seamwright::units as core_units;

/// Where the laying of a plane starts: at the left or right edge, with a seam or a panel in the middle, with equal rips, or with a seam at a shared
/// datum.
///
/// >>> from seamwright.layout import Start
/// >>> Start.LEFT == Start("left"), Start.datum('8"').name, Start.left_unless_narrow('6"').least
/// (True, 'datum', Length('152.4 mm'))
#[pyclass(module = "seamwright.layout", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct Start(core_layout::Start);

impl Start {
    pub(super) const fn of(start: core_layout::Start) -> Start {
        Start(start)
    }
}

#[pymethods]
impl Start {
    /// A full panel at the outline's leftmost point; the remainder is ripped at the right.
    #[classattr]
    const LEFT: Start = Start(core_layout::Start::Left);
    /// A full panel at the outline's rightmost point; the remainder is ripped at the left.
    #[classattr]
    const RIGHT: Start = Start(core_layout::Start::Right);
    /// A seam in the middle; equal rips at both sides.
    #[classattr]
    const CENTRE_SEAM: Start = Start(core_layout::Start::CentreSeam);
    /// The middle of a panel in the middle; equal rips at both sides.
    #[classattr]
    const CENTRE_PANEL: Start = Start(core_layout::Start::CentrePanel);

    /// Equal rips at both sides, as wide as they can be.
    #[classattr]
    const EQUAL_RIPS: Start = Start(core_layout::Start::EqualRips);

    #[new]
    fn new(start: GivenStart) -> Start {
        Start(start.0)
    }

    /// A full panel at the left, unless what is left at the right is narrower than this: then it is shared out between both ends.
    #[staticmethod]
    fn left_unless_narrow(least: Given<Length>) -> PyResult<Start> {
        least.at("least").map(|least| Start(core_layout::Start::LeftUnlessNarrow(least)))
    }

    /// A full panel at the right, unless what is left at the left is narrower than this: then it is shared out between both ends.
    #[staticmethod]
    fn right_unless_narrow(least: Given<Length>) -> PyResult<Start> {
        least.at("least").map(|least| Start(core_layout::Start::RightUnlessNarrow(least)))
    }

    /// A seam at this x, which other planes can share.
    #[staticmethod]
    fn datum(x: Given<Length>) -> PyResult<Start> {
        x.at("x").map(|x| Start(core_layout::Start::Datum(x)))
    }

    /// The name: left, right, centre-seam, centre-panel, equal-rips, left-unless-narrow, right-unless-narrow or datum.
    #[getter]
    fn name(&self) -> PyResult<String> {
        match self.0 {
            core_layout::Start::Datum(_) => Ok("datum".to_owned()),
            core_layout::Start::LeftUnlessNarrow(_) => Ok("left-unless-narrow".to_owned()),
            core_layout::Start::RightUnlessNarrow(_) => Ok("right-unless-narrow".to_owned()),
            named => name_of(&named),
        }
    }

    /// The x of a datum.
    #[getter]
    fn x(&self) -> Option<Length> {
        match self.0 {
            core_layout::Start::Datum(x) => Some(Length(x)),
            _ => None,
        }
    }

    /// The least width of the end panel, where the start has one.
    #[getter]
    fn least(&self) -> Option<Length> {
        match self.0 {
            core_layout::Start::LeftUnlessNarrow(least) | core_layout::Start::RightUnlessNarrow(least) => Some(Length(least)),
            _ => None,
        }
    }

    fn __repr__(&self) -> PyResult<String> {
        Ok(match self.0 {
            core_layout::Start::Datum(x) => format!("Start.datum('{x}')"),
            core_layout::Start::LeftUnlessNarrow(least) => format!("Start.left_unless_narrow('{least}')"),
            core_layout::Start::RightUnlessNarrow(least) => format!("Start.right_unless_narrow('{least}')"),
            _ => format!("Start('{}')", self.name()?),
        })
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let class = slf.get_type();
        let constructor = |name: &str, length: core_units::Length| Ok((class.getattr(name)?, (Length(length),).into_pyobject(slf.py())?));
        match slf.get().0 {
            core_layout::Start::Datum(x) => constructor("datum", x),
            core_layout::Start::LeftUnlessNarrow(least) => constructor("left_unless_narrow", least),
            core_layout::Start::RightUnlessNarrow(least) => constructor("right_unless_narrow", least),
            _ => Ok((class.into_any(), (slf.get().name()?,).into_pyobject(slf.py())?)),
        }
    }
}

/// An argument that is a start, or the name of one.
pub(crate) struct GivenStart(core_layout::Start);

impl GivenStart {
    /// The value.
    pub(super) fn core(&self) -> core_layout::Start {
        self.0
    }
}

impl<'py> FromPyObject<'_, 'py> for GivenStart {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = PyStaticExpr::BinOp {
        left: &<Start as PyTypeInfo>::TYPE_HINT,
        op: pyo3::inspect::PyStaticOperator::BitOr,
        right: &<PyString as PyTypeInfo>::TYPE_HINT,
    };

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if let Ok(start) = obj.cast::<Start>() {
            Ok(GivenStart(start.get().0))
        } else if obj.is_instance_of::<PyString>() {
            Ok(GivenStart(named(&obj.extract::<Text>()?, "start")?))
        } else {
            Err(PyTypeError::new_err("a Start or the name of one is expected"))
        }
    }
}

/// What an edge of the outline is to the panels: an end that they meet in some way, or a side that they run along.
///
/// >>> from seamwright.layout import EdgeUse
/// >>> from seamwright.panel import PanelEnd
/// >>> ridge = EdgeUse.end(PanelEnd.hold_back('3"'))
/// >>> ridge.panel_end.reach.kind, EdgeUse.SIDE.panel_end
/// ('hold-back', None)
#[pyclass(module = "seamwright.layout", frozen, eq, hash, from_py_object)]
#[derive(Clone, PartialEq, Eq)]
pub(crate) struct EdgeUse(core_layout::EdgeUse);

impl Hash for EdgeUse {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.panel_end().hash(state);
    }
}

#[pymethods]
impl EdgeUse {
    /// Panels run along it: a rake or a sidewall. Where it is out of parallel it cuts panels without any allowance.
    #[classattr]
    const SIDE: EdgeUse = EdgeUse(core_layout::EdgeUse::Side);

    /// Panels end there in this way. An edge along the seams ends no panel, whatever it says; one almost along them is refused, unless nothing is added there.
    #[staticmethod]
    fn end(panel_end: PanelEnd) -> EdgeUse {
        EdgeUse(core_layout::EdgeUse::End(panel_end.0))
    }

    /// How panels end there; ``None`` for a side.
    #[getter]
    fn panel_end(&self) -> Option<PanelEnd> {
        match &self.0 {
            core_layout::EdgeUse::End(end) => Some(PanelEnd(end.clone())),
            core_layout::EdgeUse::Side => None,
        }
    }

    fn __repr__(&self) -> PyResult<String> {
        Ok(match self.panel_end() {
            Some(end) => format!("<EdgeUse: end, {}>", end.__repr__()?),
            None => "<EdgeUse: side>".to_owned(),
        })
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let class = slf.get_type();
        Ok(match slf.get().panel_end() {
            Some(end) => (class.getattr("end")?, (end,).into_pyobject(slf.py())?),
            None => (class.getattr("_side")?, PyTuple::empty(slf.py())),
        })
    }

    /// For unpickling.
    #[staticmethod]
    fn _side() -> EdgeUse {
        Self::SIDE
    }
}

/// Panels to be laid on a plane: seams run up the slope, along y.
///
/// ``edges`` says what each edge is to the panels, in the order of ``outline.edges``. Order lengths are rounded by common practice unless
/// ``rounding`` is given; ``narrow`` is the least width, ``limit`` the greatest length, and with the mass of ``sheet`` for each area the
/// coil's mass is known too. ``breaks`` are the stretches across which panels are broken in two.
///
/// >>> from seamwright.layout import EdgeUse, Layout
/// >>> from seamwright.panel import Panel, PanelEnd, Seam
/// >>> from seamwright.roof import Outline
/// >>> outline = Outline([("0 ft", "0 ft"), ("40 ft", "0 ft"), ("40 ft", "20 ft"), ("0 ft", "20 ft")])
/// >>> eave = EdgeUse.end(PanelEnd.overhang('1"', fold='1"'))
/// >>> ridge = EdgeUse.end(PanelEnd.hold_back('3"', turn_up='1"'))
/// >>> panel = Panel('16"', '2"', Seam.double_lock('3/8"'))
/// >>> laid = Layout(outline, panel, "left", [eave, EdgeUse.SIDE, ridge, EdgeUse.SIDE]).compute()
/// >>> [(group.mark, group.count, format(group.order, "ft-in/16")) for group in laid.groups]
/// [('A', 30, '20\'-0"')]
#[pyclass(module = "seamwright.layout", frozen, eq, hash)]
#[derive(Clone, PartialEq)]
pub(crate) struct Layout(pub(crate) core_layout::Layout);

impl Hash for Layout {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.outline().hash(state);
        hash_written(&(&self.0.panel, &self.0.start, &self.0.edges, &self.0.breaks), state);
    }
}

#[pymethods]
impl Layout {
    #[new]
    #[pyo3(signature = (outline, panel, start, edges, *, rounding=None, narrow=None, limit=None, sheet=None, breaks=None))]
    #[allow(clippy::too_many_arguments, reason = "keywords in Python")]
    fn new(
        outline: Outline,
        panel: Panel,
        start: GivenStart,
        edges: Vec<EdgeUse>,
        rounding: Option<OrderRounding>,
        narrow: Option<NarrowLimit>,
        limit: Option<LengthLimit>,
        sheet: Option<Given<SurfaceMass>>,
        breaks: Option<Vec<PanelBreak>>,
    ) -> PyResult<Layout> {
        let rounding = match rounding {
            Some(rounding) => rounding.0,
            None => core_layout::OrderRounding::common_practice().raise()?,
        };
        let layout = core_layout::Layout {
            outline: outline.0,
            panel: panel.0,
            start: start.0,
            edges: edges.into_iter().map(|e| e.0).collect(),
            breaks: breaks.unwrap_or_default().into_iter().map(|b| b.0).collect(),
            rounding,
            narrow: narrow.map(|n| n.0),
            limit: limit.map(|l| l.0),
            sheet: sheet.map(|s| s.at("sheet")).transpose()?,
        };
        layout.check().raise()?;
        Ok(Layout(layout))
    }

    /// The plane's outline: x across, y up the slope.
    #[getter]
    fn outline(&self) -> Outline {
        Outline(self.0.outline.clone())
    }

    /// The panel.
    #[getter]
    fn panel(&self) -> Panel {
        Panel(self.0.panel)
    }

    /// Where the seams lie.
    #[getter]
    fn start(&self) -> Start {
        Start(self.0.start)
    }

    /// What each edge is to the panels, in the order of the outline's edges.
    #[getter]
    fn edges(&self) -> Vec<EdgeUse> {
        self.0.edges.iter().cloned().map(EdgeUse).collect()
    }

    /// Where panels are broken in two.
    #[getter]
    fn breaks(&self) -> Vec<PanelBreak> {
        self.0.breaks.iter().cloned().map(PanelBreak).collect()
    }

    /// The shop's rounding of order lengths.
    #[getter]
    fn rounding(&self) -> OrderRounding {
        OrderRounding(self.0.rounding)
    }

    /// The least width of a panel; ``None`` for no limit.
    #[getter]
    fn narrow(&self) -> Option<NarrowLimit> {
        self.0.narrow.map(NarrowLimit)
    }

    /// The greatest length of a panel; ``None`` for no limit.
    #[getter]
    fn limit(&self) -> Option<LengthLimit> {
        self.0.limit.map(LengthLimit)
    }

    /// Mass of the sheet for each area of it; ``None`` leaves the coil's mass out.
    #[getter]
    fn sheet(&self) -> Option<SurfaceMass> {
        self.0.sheet.map(SurfaceMass)
    }

    /// The plane with its panels laid.
    fn compute(&self) -> PyResult<LaidPlane> {
        Ok(LaidPlane::new(self.clone(), self.0.compute().raise()?))
    }

    /// The plane with its panels laid, and the worksheet.
    fn explain(&self) -> PyResult<(LaidPlane, Worksheet)> {
        let (laid, sheet) = self.0.explain().raise()?;
        Ok((LaidPlane::new(self.clone(), laid), Worksheet(sheet)))
    }

    fn __repr__(&self) -> String {
        format!("<Layout: {}, {} edges>", self.0.title(), self.0.edges.len())
    }

    #[allow(clippy::type_complexity, reason = "the arguments in their order")]
    fn __reduce__<'py>(
        slf: &Bound<'py, Self>,
    ) -> PyResult<(
        Bound<'py, PyAny>,
        (Outline, Panel, Start, Vec<EdgeUse>, OrderRounding, Option<NarrowLimit>, Option<LengthLimit>, Option<SurfaceMass>, Vec<PanelBreak>),
    )> {
        let l = slf.get();
        let arguments = (l.outline(), l.panel(), l.start(), l.edges(), l.rounding(), l.narrow(), l.limit(), l.sheet(), l.breaks());
        Ok((slf.get_type().getattr("_restored")?, arguments))
    }

    /// For unpickling.
    #[staticmethod]
    #[allow(clippy::too_many_arguments, reason = "all that a layout has")]
    fn _restored(
        outline: Outline,
        panel: Panel,
        start: GivenStart,
        edges: Vec<EdgeUse>,
        rounding: Option<OrderRounding>,
        narrow: Option<NarrowLimit>,
        limit: Option<LengthLimit>,
        sheet: Option<Given<SurfaceMass>>,
        breaks: Option<Vec<PanelBreak>>,
    ) -> PyResult<Layout> {
        Layout::new(outline, panel, start, edges, rounding, narrow, limit, sheet, breaks)
    }
}
