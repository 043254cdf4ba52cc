//! `seamwright.panel.Panel`: the cross-section and its developed width.

use crate::error::Raise;
use crate::given::Given;
use crate::record::{Caution, Worksheet};
use crate::units::Length;
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::{PyTuple, PyType};
use seamwright::panel as core_panel;
use seamwright::panel::Seam as Core;
use seamwright::record::Calculation;

/// One upturned leg of a panel, as its drawing gives it: the upstand along the leg, and everything folded after it.
///
/// >>> from seamwright.panel import Leg
/// >>> format(Leg('1 3/4"', '7/8"').developed(), "in/16")
/// '2 5/8"'
#[pyclass(module = "seamwright.panel", frozen, eq, hash, from_py_object)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct Leg(core_panel::Leg);

#[pymethods]
impl Leg {
    #[new]
    fn new(upstand: Given<Length>, folds: Given<Length>) -> PyResult<Leg> {
        Ok(Leg(core_panel::Leg { upstand: upstand.at("upstand")?, folds: folds.at("folds")? }))
    }

    /// From the pan up, measured along the leg where it leans.
    #[getter]
    fn upstand(&self) -> Length {
        Length(self.0.upstand)
    }

    /// Everything after the upstand: the top, returns, hooks, and the screw flange if the leg has one.
    #[getter]
    fn folds(&self) -> Length {
        Length(self.0.folds)
    }

    /// The sheet that the leg takes.
    fn developed(&self) -> PyResult<Length> {
        self.0.developed().raise().map(Length)
    }

    fn __repr__(&self) -> String {
        format!("Leg('{}', '{}')", self.0.upstand, self.0.folds)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Length, Length)) {
        (slf.get_type(), (slf.get().upstand(), slf.get().folds()))
    }
}

/// How two panels join: snap-lock, single-lock, double-lock or batten.
///
/// >>> from seamwright.panel import Seam
/// >>> Seam.double_lock('1/4"').name
/// 'double-lock'
#[pyclass(module = "seamwright.panel", frozen, eq, hash, from_py_object)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct Seam(Core);

#[pymethods]
impl Seam {
    /// The female leg snaps over the male one; ``foot`` is the width of the closed seam where it stands on the pan.
    #[staticmethod]
    fn snap_lock(male: Leg, female: Leg, foot: Given<Length>) -> PyResult<Seam> {
        Ok(Seam(Core::SnapLock { male: male.0, female: female.0, foot: foot.at("foot")? }))
    }

    /// Folded once on the roof, by 90 degrees: the flanges lie level on the seam.
    #[staticmethod]
    fn single_lock(lock: Given<Length>) -> PyResult<Seam> {
        Ok(Seam(Core::SingleLock { lock: lock.at("lock")? }))
    }

    /// Folded twice on the roof, by 180 degrees: the flanges lie against the upstand.
    #[staticmethod]
    fn double_lock(lock: Given<Length>) -> PyResult<Seam> {
        Ok(Seam(Core::DoubleLock { lock: lock.at("lock")? }))
    }

    /// Two upturned legs, alike on both sides, with ``width`` between them, and a cap that takes ``cap_leg`` more on each side.
    #[staticmethod]
    fn batten(width: Given<Length>, leg: Leg, cap_leg: Given<Length>) -> PyResult<Seam> {
        Ok(Seam(Core::Batten { width: width.at("width")?, leg: leg.0, cap_leg: cap_leg.at("cap_leg")? }))
    }

    /// The kind: snap-lock, single-lock, double-lock or batten.
    #[getter]
    fn name(&self) -> &'static str {
        self.0.name()
    }

    /// The leg that is lapped over, of a snap-lock seam.
    #[getter]
    fn male(&self) -> Option<Leg> {
        match self.0 {
            Core::SnapLock { male, .. } => Some(Leg(male)),
            _ => None,
        }
    }

    /// The leg that laps over, of a snap-lock seam.
    #[getter]
    fn female(&self) -> Option<Leg> {
        match self.0 {
            Core::SnapLock { female, .. } => Some(Leg(female)),
            _ => None,
        }
    }

    /// Width of a closed snap-lock seam where it stands on the pan.
    #[getter]
    fn foot(&self) -> Option<Length> {
        match self.0 {
            Core::SnapLock { foot, .. } => Some(Length(foot)),
            _ => None,
        }
    }

    /// Width of the lock of a seam that is folded on the roof.
    #[getter]
    fn lock(&self) -> Option<Length> {
        match self.0 {
            Core::SingleLock { lock } | Core::DoubleLock { lock } => Some(Length(lock)),
            _ => None,
        }
    }

    /// Between the two legs of a batten seam.
    #[getter]
    fn width(&self) -> Option<Length> {
        match self.0 {
            Core::Batten { width, .. } => Some(Length(width)),
            _ => None,
        }
    }

    /// The leg of a panel with batten seams.
    #[getter]
    fn leg(&self) -> Option<Leg> {
        match self.0 {
            Core::Batten { leg, .. } => Some(Leg(leg)),
            _ => None,
        }
    }

    /// How much metal a batten's cap takes on each side beyond the batten's width.
    #[getter]
    fn cap_leg(&self) -> Option<Length> {
        match self.0 {
            Core::Batten { cap_leg, .. } => Some(Length(cap_leg)),
            _ => None,
        }
    }

    fn __repr__(&self) -> String {
        let leg = |l| Leg(l).__repr__();
        match self.0 {
            Core::SnapLock { male, female, foot } => format!("Seam.snap_lock({}, {}, '{foot}')", leg(male), leg(female)),
            Core::SingleLock { lock } => format!("Seam.single_lock('{lock}')"),
            Core::DoubleLock { lock } => format!("Seam.double_lock('{lock}')"),
            Core::Batten { width, leg: l, cap_leg } => format!("Seam.batten('{width}', {}, '{cap_leg}')", leg(l)),
        }
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let (py, class) = (slf.py(), slf.get_type());
        Ok(match slf.get().0 {
            Core::SnapLock { male, female, foot } => (class.getattr("snap_lock")?, (Leg(male), Leg(female), Length(foot)).into_pyobject(py)?),
            Core::SingleLock { lock } => (class.getattr("single_lock")?, (Length(lock),).into_pyobject(py)?),
            Core::DoubleLock { lock } => (class.getattr("double_lock")?, (Length(lock),).into_pyobject(py)?),
            Core::Batten { width, leg, cap_leg } => (class.getattr("batten")?, (Length(width), Leg(leg), Length(cap_leg)).into_pyobject(py)?),
        })
    }
}

/// A standing-seam panel in cross-section. The pan is flat unless ``ribs`` says how much sheet its beads or ribs take.
///
/// >>> from seamwright.panel import Panel, Seam
/// >>> panel = Panel.from_coil('24"', '1"', Seam.double_lock('1/4"'))
/// >>> format(panel.coverage, "in/16"), format(panel.compute().total, "in/16")
/// ('21 1/4"', '24"')
#[pyclass(module = "seamwright.panel", frozen, eq, hash, from_py_object)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct Panel(pub(crate) core_panel::Panel);

#[pymethods]
impl Panel {
    #[new]
    #[pyo3(signature = (coverage, seam_height, seam, ribs=None))]
    fn new(coverage: Given<Length>, seam_height: Given<Length>, seam: Seam, ribs: Option<Given<Length>>) -> PyResult<Panel> {
        let mut panel = core_panel::Panel::new(coverage.at("coverage")?, seam_height.at("seam_height")?, seam.0).raise()?;
        if let Some(ribs) = ribs {
            panel.ribs = ribs.at("ribs")?;
            panel.check().raise()?;
        }
        Ok(Panel(panel))
    }

    /// The panel with a flat pan that uses this coil width up: its coverage is what the legs leave.
    #[staticmethod]
    fn from_coil(coil_width: Given<Length>, seam_height: Given<Length>, seam: Seam) -> PyResult<Panel> {
        core_panel::Panel::from_coil(coil_width.at("coil_width")?, seam_height.at("seam_height")?, seam.0).raise().map(Panel)
    }

    /// Seam to seam, across the slope.
    #[getter]
    fn coverage(&self) -> Length {
        Length(self.0.coverage)
    }

    /// From the pan to the top of the finished seam.
    #[getter]
    fn seam_height(&self) -> Length {
        Length(self.0.seam_height)
    }

    /// How panels join.
    #[getter]
    fn seam(&self) -> Seam {
        Seam(self.0.seam)
    }

    /// Sheet taken up by beads or ribs in the pan, beyond its flat width.
    #[getter]
    fn ribs(&self) -> Length {
        Length(self.0.ribs)
    }

    /// The developed width: what coil the panel takes.
    fn compute(&self) -> PyResult<DevelopedWidth> {
        self.0.compute().raise().map(|width| DevelopedWidth { of: *self, width })
    }

    /// The developed width, and its worksheet.
    fn explain(&self) -> PyResult<(DevelopedWidth, Worksheet)> {
        let (width, sheet) = self.0.explain().raise()?;
        Ok((DevelopedWidth { of: *self, width }, Worksheet(sheet)))
    }

    /// Width of the closed seam where it stands on the pan, in sheet of this thickness: what a closure has to clear.
    fn seam_foot(&self, thickness: Given<Length>) -> PyResult<Length> {
        self.0.seam_foot(thickness.at("thickness")?).raise().map(Length)
    }

    /// The panel's levels above what carries it: a deck with its underlayment, or the supports that clips stand it off.
    fn levels(&self, stand_off: Given<Length>, thickness: Given<Length>) -> PyResult<Levels> {
        let (stand_off, thickness) = (stand_off.at("stand_off")?, thickness.at("thickness")?);
        let levels = self.0.levels(stand_off, thickness).raise()?;
        Ok(Levels { of: *self, thickness: Length(thickness), levels })
    }

    fn __repr__(&self) -> String {
        let p = &self.0;
        let ribs = if p.ribs == seamwright::units::Length::ZERO { String::new() } else { format!(", '{}'", p.ribs) };
        format!("Panel('{}', '{}', {}{ribs})", p.coverage, p.seam_height, self.seam().__repr__())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (Length, Length, Seam, Length)) {
        let p = slf.get();
        (slf.get_type(), (p.coverage(), p.seam_height(), p.seam(), p.ribs()))
    }
}

/// The sheet that a panel takes across, by its parts. It pickles as its panel, which computes it again.
#[pyclass(module = "seamwright.panel", frozen, eq, hash)]
#[derive(Clone, PartialEq, Eq)]
pub(crate) struct DevelopedWidth {
    of: Panel,
    width: core_panel::DevelopedWidth,
}

impl Hash for DevelopedWidth {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.of.hash(state);
    }
}

#[pymethods]
impl DevelopedWidth {
    /// The pan with its beads and ribs.
    #[getter]
    fn pan(&self) -> Length {
        Length(self.width.pan)
    }

    /// The leg that is lapped over.
    #[getter]
    fn low_leg(&self) -> Length {
        Length(self.width.low_leg)
    }

    /// The leg that laps over.
    #[getter]
    fn high_leg(&self) -> Length {
        Length(self.width.high_leg)
    }

    /// All of it: the coil width.
    #[getter]
    fn total(&self) -> Length {
        Length(self.width.total)
    }

    /// The coil width of a batten's cap; ``None`` for seams without one.
    #[getter]
    fn cap(&self) -> Option<Length> {
        self.width.cap.map(Length)
    }

    /// What to know before a coil is ordered by it.
    #[getter]
    fn cautions(&self) -> Vec<Caution> {
        self.width.cautions.iter().map(Caution::from).collect()
    }

    fn __repr__(&self) -> String {
        format!("{}.compute()", self.of.__repr__())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, ())> {
        Ok((slf.get().of.into_pyobject(slf.py())?.getattr("compute")?, ()))
    }
}

/// Heights square to the roof plane, from the support's surface. They pickle as their panel, which gives them again.
#[pyclass(module = "seamwright.panel", frozen, eq, hash)]
#[derive(Clone, PartialEq, Eq, Hash)]
pub(crate) struct Levels {
    of: Panel,
    thickness: Length,
    levels: core_panel::Levels,
}

#[pymethods]
impl Levels {
    /// Underside of the pan.
    #[getter]
    fn underside(&self) -> Length {
        Length(self.levels.underside)
    }

    /// Upper face of the pan.
    #[getter]
    fn pan(&self) -> Length {
        Length(self.levels.pan)
    }

    /// Top of the seam.
    #[getter]
    fn seam_top(&self) -> Length {
        Length(self.levels.seam_top)
    }

    fn __repr__(&self) -> String {
        format!("{}.levels('{}', '{}')", self.of.__repr__(), self.levels.underside, self.thickness.0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (Length, Length))> {
        let l = slf.get();
        Ok((l.of.into_pyobject(slf.py())?.getattr("levels")?, (l.underside(), l.thickness)))
    }
}
