//! `seamwright.pitch.BendAt` and the bend it gives.

use super::{Corner, Pitch};
use crate::error::Raise;
use crate::given::Given;
use crate::record::Worksheet;
use crate::units::BendAngle;
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyTuple;
use seamwright::pitch as core_pitch;
use seamwright::pitch::BendAt as Core;
use seamwright::record::Calculation;

/// A junction whose bend is asked for, in the section square to its line. Walls and fascias are plumb.
///
/// >>> from seamwright.pitch import BendAt
/// >>> str(BendAt.headwall("12:12").compute().bend), BendAt.ridge("12:12", "12:12").compute().turn
/// ('45 deg', 'down')
#[pyclass(module = "seamwright.pitch", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct BendAt(Core);

impl Hash for BendAt {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.0.name().hash(state);
        match self.0 {
            Core::Ridge { first: a, second: b } | Core::PitchTransition { lower: a, upper: b } => (Pitch(a), Pitch(b)).hash(state),
            Core::Hip(corner) | Core::Valley(corner) => Corner(corner).hash(state),
            Core::Eave { pitch } | Core::HighEave { pitch } | Core::Headwall { pitch } => Pitch(pitch).hash(state),
            Core::Rake | Core::Sidewall => {}
        }
    }
}

#[pymethods]
impl BendAt {
    /// Two planes that fall away from a level line.
    #[staticmethod]
    fn ridge(first: Given<Pitch>, second: Given<Pitch>) -> PyResult<BendAt> {
        Ok(BendAt(Core::Ridge { first: first.at("first")?, second: second.at("second")? }))
    }

    /// A hip.
    #[staticmethod]
    fn hip(corner: &Bound<'_, Corner>) -> BendAt {
        BendAt(Core::Hip(corner.get().0))
    }

    /// A valley.
    #[staticmethod]
    fn valley(corner: &Bound<'_, Corner>) -> BendAt {
        BendAt(Core::Valley(corner.get().0))
    }

    /// A change of pitch down one slope.
    #[staticmethod]
    fn pitch_transition(lower: Given<Pitch>, upper: Given<Pitch>) -> PyResult<BendAt> {
        Ok(BendAt(Core::PitchTransition { lower: lower.at("lower")?, upper: upper.at("upper")? }))
    }

    /// From the roof down over a plumb fascia at the low edge.
    #[staticmethod]
    fn eave(pitch: Given<Pitch>) -> PyResult<BendAt> {
        Ok(BendAt(Core::Eave { pitch: pitch.at("pitch")? }))
    }

    /// From the roof down over a plumb face at the high edge of a single slope.
    #[staticmethod]
    fn high_eave(pitch: Given<Pitch>) -> PyResult<BendAt> {
        Ok(BendAt(Core::HighEave { pitch: pitch.at("pitch")? }))
    }

    /// From the roof up a plumb wall that it rises to.
    #[staticmethod]
    fn headwall(pitch: Given<Pitch>) -> PyResult<BendAt> {
        Ok(BendAt(Core::Headwall { pitch: pitch.at("pitch")? }))
    }

    /// From the roof down over a plumb face along the slope.
    #[staticmethod]
    fn rake() -> BendAt {
        BendAt(Core::Rake)
    }

    /// From the roof up a plumb wall along the slope.
    #[staticmethod]
    fn sidewall() -> BendAt {
        BendAt(Core::Sidewall)
    }

    /// The junction in the trade's words.
    #[getter]
    fn name(&self) -> &'static str {
        self.0.name()
    }

    /// The bend.
    fn compute(&self) -> PyResult<JunctionBend> {
        self.0.compute().raise().map(|bend| JunctionBend { of: *self, bend })
    }

    /// The bend, and its worksheet.
    fn explain(&self) -> PyResult<(JunctionBend, Worksheet)> {
        let (bend, sheet) = self.0.explain().raise()?;
        Ok((JunctionBend { of: *self, bend }, Worksheet(sheet)))
    }

    fn __repr__(&self) -> String {
        match self.0 {
            Core::Ridge { first, second } => format!("BendAt.ridge('{first}', '{second}')"),
            Core::Hip(corner) => format!("BendAt.hip({})", Corner(corner).__repr__()),
            Core::Valley(corner) => format!("BendAt.valley({})", Corner(corner).__repr__()),
            Core::PitchTransition { lower, upper } => format!("BendAt.pitch_transition('{lower}', '{upper}')"),
            Core::Eave { pitch } => format!("BendAt.eave('{pitch}')"),
            Core::HighEave { pitch } => format!("BendAt.high_eave('{pitch}')"),
            Core::Headwall { pitch } => format!("BendAt.headwall('{pitch}')"),
            Core::Rake => "BendAt.rake()".to_owned(),
            Core::Sidewall => "BendAt.sidewall()".to_owned(),
        }
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let (py, class) = (slf.py(), slf.get_type());
        Ok(match slf.get().0 {
            Core::Ridge { first, second } => (class.getattr("ridge")?, (Pitch(first), Pitch(second)).into_pyobject(py)?),
            Core::Hip(corner) => (class.getattr("hip")?, (Corner(corner),).into_pyobject(py)?),
            Core::Valley(corner) => (class.getattr("valley")?, (Corner(corner),).into_pyobject(py)?),
            Core::PitchTransition { lower, upper } => (class.getattr("pitch_transition")?, (Pitch(lower), Pitch(upper)).into_pyobject(py)?),
            Core::Eave { pitch } => (class.getattr("eave")?, (Pitch(pitch),).into_pyobject(py)?),
            Core::HighEave { pitch } => (class.getattr("high_eave")?, (Pitch(pitch),).into_pyobject(py)?),
            Core::Headwall { pitch } => (class.getattr("headwall")?, (Pitch(pitch),).into_pyobject(py)?),
            Core::Rake => (class.getattr("rake")?, PyTuple::empty(py)),
            Core::Sidewall => (class.getattr("sidewall")?, PyTuple::empty(py)),
        })
    }
}

/// A bend that a junction asks for. It pickles as its junction, which computes it again.
#[pyclass(module = "seamwright.pitch", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct JunctionBend {
    of: BendAt,
    bend: core_pitch::JunctionBend,
}

impl Hash for JunctionBend {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.of.hash(state);
    }
}

#[pymethods]
impl JunctionBend {
    /// How far the sheet is bent, from flat.
    #[getter]
    fn bend(&self) -> BendAngle {
        BendAngle(self.bend.bend)
    }

    /// To which side a sheet that comes down or across the roof turns: ``down`` away from the weather, ``up`` towards it, or ``none``.
    #[getter]
    fn turn(&self) -> &'static str {
        match self.bend.turn {
            core_pitch::Turn::Down => "down",
            core_pitch::Turn::Up => "up",
            core_pitch::Turn::None => "none",
        }
    }

    fn __repr__(&self) -> String {
        format!("{}.compute()", self.of.__repr__())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, ())> {
        Ok((slf.get().of.into_pyobject(slf.py())?.getattr("compute")?, ()))
    }
}
