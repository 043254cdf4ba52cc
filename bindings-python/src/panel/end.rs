//! `seamwright.panel.PanelEnd`.

use crate::error::Raise;
use crate::given::{Given, Text};
use crate::names::{name_of, named};
use crate::record::Source;
use crate::units::{Angle, Length};
use pyo3::prelude::*;
use seamwright::panel as core_panel;
use seamwright::panel::Reach as Core;

/// Where the fold line, or the cut edge without a fold, lies from the junction line.
///
/// >>> from seamwright.panel import PanelEnd, Reach
/// >>> PanelEnd.overhang('1"').reach == Reach.overhang('1"')
/// True
#[pyclass(module = "seamwright.panel", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct Reach(Core);

#[pymethods]
impl Reach {
    /// Short of the line by this much.
    #[staticmethod]
    fn hold_back(distance: Given<Length>) -> PyResult<Reach> {
        distance.at("distance").map(|d| Reach(Core::HoldBack(d)))
    }

    /// Past the line by this much.
    #[staticmethod]
    fn overhang(distance: Given<Length>) -> PyResult<Reach> {
        distance.at("distance").map(|d| Reach(Core::Overhang(d)))
    }

    /// Which of the two: ``hold-back`` or ``overhang``.
    #[getter]
    fn kind(&self) -> &'static str {
        match self.0 {
            Core::HoldBack(_) => "hold-back",
            Core::Overhang(_) => "overhang",
        }
    }

    /// By how much.
    #[getter]
    fn distance(&self) -> Length {
        let (Core::HoldBack(d) | Core::Overhang(d)) = self.0;
        Length(d)
    }

    fn __repr__(&self) -> String {
        format!("Reach.{}('{}')", self.maker(), self.distance().0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (Length,))> {
        Ok((slf.get_type().getattr(slf.get().maker())?, (slf.get().distance(),)))
    }
}

impl Reach {
    fn maker(&self) -> &'static str {
        match self.0 {
            Core::HoldBack(_) => "hold_back",
            Core::Overhang(_) => "overhang",
        }
    }
}

/// One end of a panel at a junction: distances square to the junction line, which the layout converts along the seams.
///
/// The metal beyond the junction line is overhang (or minus the hold-back) + gap + fold + turn-up. The field trim is no part of the
/// finished panel; it is ordered and cut off on the roof. An end slides and is shop-finished unless said otherwise.
///
/// >>> from seamwright.panel import PanelEnd
/// >>> end = PanelEnd.hold_back('3"', fold='1"')
/// >>> format(end.allowance(), "in/16"), format(end.along_seam("30 deg"), "in/16")
/// ('-2"', '-4"')
#[pyclass(module = "seamwright.panel", frozen, eq, hash, from_py_object)]
#[derive(Clone, PartialEq, Eq, Hash)]
pub(crate) struct PanelEnd(pub(crate) core_panel::PanelEnd);

/// What an end may have beside its reach.
struct Extras {
    gap: Option<Given<Length>>,
    fold: Option<Given<Length>>,
    turn_up: Option<Given<Length>>,
    field_trim: Option<Given<Length>>,
    hold: Option<Text>,
    source: Option<Source>,
}

impl PanelEnd {
    fn made(end: core_panel::PanelEnd, extras: Extras) -> PyResult<PanelEnd> {
        let mut end = end;
        if let Some(gap) = extras.gap {
            end = end.with_gap(gap.at("gap")?);
        }
        if let Some(fold) = extras.fold {
            end = end.with_fold(fold.at("fold")?);
        }
        if let Some(turn_up) = extras.turn_up {
            end = end.with_turn_up(turn_up.at("turn_up")?);
        }
        if let Some(field_trim) = extras.field_trim {
            end = end.with_field_trim(field_trim.at("field_trim")?);
        }
        if let Some(hold) = extras.hold {
            end = end.holding(named(&hold, "hold")?);
        }
        if let Some(source) = extras.source {
            end = end.from_source(source.0);
        }
        end.check().raise()?;
        Ok(PanelEnd(end))
    }
}

#[pymethods]
impl PanelEnd {
    /// An end short of the junction line by this much. ``hold`` is ``slides`` or ``pins``.
    #[staticmethod]
    #[pyo3(signature = (distance, *, gap=None, fold=None, turn_up=None, field_trim=None, hold=None, source=None))]
    fn hold_back(
        distance: Given<Length>,
        gap: Option<Given<Length>>,
        fold: Option<Given<Length>>,
        turn_up: Option<Given<Length>>,
        field_trim: Option<Given<Length>>,
        hold: Option<Text>,
        source: Option<Source>,
    ) -> PyResult<PanelEnd> {
        PanelEnd::made(core_panel::PanelEnd::hold_back(distance.at("distance")?), Extras { gap, fold, turn_up, field_trim, hold, source })
    }

    /// An end past the junction line by this much. ``hold`` is ``slides`` or ``pins``.
    #[staticmethod]
    #[pyo3(signature = (distance, *, gap=None, fold=None, turn_up=None, field_trim=None, hold=None, source=None))]
    fn overhang(
        distance: Given<Length>,
        gap: Option<Given<Length>>,
        fold: Option<Given<Length>>,
        turn_up: Option<Given<Length>>,
        field_trim: Option<Given<Length>>,
        hold: Option<Text>,
        source: Option<Source>,
    ) -> PyResult<PanelEnd> {
        PanelEnd::made(core_panel::PanelEnd::overhang(distance.at("distance")?), Extras { gap, fold, turn_up, field_trim, hold, source })
    }

    /// Hold-back or overhang.
    #[getter]
    fn reach(&self) -> Reach {
        Reach(self.0.reach)
    }

    /// How the end is held back farther down the line: by so much, over so much of the line; ``None`` where it runs parallel.
    #[getter]
    fn grows(&self) -> Option<(Length, Length)> {
        self.0.grows.map(|g| (Length(g.by), Length(g.over)))
    }

    /// Room between the fold and what it hooks, at laying.
    #[getter]
    fn gap(&self) -> Length {
        Length(self.0.gap)
    }

    /// The fold around a cleat or a drip.
    #[getter]
    fn fold(&self) -> Length {
        Length(self.0.fold)
    }

    /// The pan turned up behind a closure.
    #[getter]
    fn turn_up(&self) -> Length {
        Length(self.0.turn_up)
    }

    /// Left on for a cut on the roof; zero for a shop-finished end.
    #[getter]
    fn field_trim(&self) -> Length {
        Length(self.0.field_trim)
    }

    /// Whether the end pins the panel: ``slides`` or ``pins``.
    #[getter]
    fn hold(&self) -> PyResult<String> {
        name_of(&self.0.hold)
    }

    /// Where these figures come from.
    #[getter]
    fn source(&self) -> Source {
        Source(self.0.source.clone())
    }

    /// What the finished panel has beyond the junction line, square to it; negative where it ends short.
    fn allowance(&self) -> PyResult<Length> {
        self.0.allowance().raise().map(Length)
    }

    /// The allowance along a seam that meets the junction line at this angle; 90 degrees is square.
    fn along_seam(&self, meeting: Given<Angle>) -> PyResult<Length> {
        self.0.along_seam(meeting.at("meeting")?).raise().map(Length)
    }

    /// The field trim along a seam that meets the junction line at this angle.
    fn field_trim_along_seam(&self, meeting: Given<Angle>) -> PyResult<Length> {
        self.0.field_trim_along_seam(meeting.at("meeting")?).raise().map(Length)
    }

    pub(crate) fn __repr__(&self) -> PyResult<String> {
        let (end, reach) = (&self.0, self.reach());
        let mut text = format!("<PanelEnd: {} {}", reach.kind(), reach.distance().0);
        for (name, length) in [("gap", end.gap), ("fold", end.fold), ("turn-up", end.turn_up), ("field trim", end.field_trim)] {
            if length != seamwright::units::Length::ZERO {
                text.push_str(&format!(", {name} {length}"));
            }
        }
        Ok(format!("{text}, {}, {}>", self.hold()?, end.source))
    }

    #[allow(clippy::type_complexity, reason = "the arguments in their order")]
    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (Reach, Length, Length, Length, Length, String, Source))> {
        let end = slf.get();
        let arguments = (end.reach(), end.gap(), end.fold(), end.turn_up(), end.field_trim(), end.hold()?, end.source());
        Ok((slf.get_type().getattr("_restored")?, arguments))
    }

    /// For unpickling.
    #[staticmethod]
    fn _restored(
        reach: &Bound<'_, Reach>,
        gap: Given<Length>,
        fold: Given<Length>,
        turn_up: Given<Length>,
        field_trim: Given<Length>,
        hold: Text,
        source: Source,
    ) -> PyResult<PanelEnd> {
        let end = core_panel::PanelEnd { reach: reach.get().0, ..core_panel::PanelEnd::hold_back(seamwright::units::Length::ZERO) };
        let extras = Extras { gap: Some(gap), fold: Some(fold), turn_up: Some(turn_up), field_trim: Some(field_trim), hold: Some(hold), source: Some(source) };
        PanelEnd::made(end, extras)
    }
}

/// A distance square to a junction line, measured along a seam that meets the line at this angle; 90 degrees is square.
///
/// >>> from seamwright.panel import along_seam
/// >>> format(along_seam('3"', "150 deg"), "in/16")
/// '6"'
#[pyfunction]
pub(crate) fn along_seam(distance: Given<Length>, meeting: Given<Angle>) -> PyResult<Length> {
    core_panel::along_seam(distance.at("distance")?, meeting.at("meeting")?).raise().map(Length)
}
