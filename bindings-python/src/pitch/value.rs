//! `seamwright.pitch.Pitch`.

use crate::error::Raise;
use crate::given::{Given, Text, Wraps};
use crate::units::{Angle, Length};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::pitch as core;

/// The pitch of a roof plane, kept as given: a ratio of two exact lengths, or degrees.
///
/// Text is ``6:12``, ``6 1/2:12``, ``150 mm:300 mm``, ``33.3 %`` or ``26.5 deg``; a bare number is refused. Two ratios are equal if they are
/// the same slope; a ratio and degrees are never equal.
///
/// >>> from seamwright.pitch import Pitch
/// >>> Pitch("6:12") == Pitch("50 %"), Pitch("5:12").slope_factor * 12
/// (True, 13.0)
#[pyclass(module = "seamwright.pitch", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct Pitch(pub(crate) core::Pitch);

impl Wraps for Pitch {
    type Core = core::Pitch;
    const WHAT: &'static str = "a pitch, such as '6:12', '33.3 %' or '26.5 deg'";
    fn core(&self) -> core::Pitch {
        self.0
    }
}

#[pymethods]
impl Pitch {
    /// No slope at all.
    #[classattr]
    const FLAT: Pitch = Pitch(core::Pitch::FLAT);

    #[new]
    fn new(pitch: Given<Pitch>) -> PyResult<Pitch> {
        pitch.value().map(Pitch)
    }

    /// Reads a pitch from its text.
    #[staticmethod]
    fn parse(text: Text) -> PyResult<Pitch> {
        core::Pitch::parse(&text.0).raise().map(Pitch)
    }

    /// A pitch from a rise and the level run over which it rises, both as measured.
    ///
    /// >>> Pitch.rise_run("1.2 m", "3 m").percent
    /// 40.0
    #[staticmethod]
    fn rise_run(rise: Given<Length>, run: Given<Length>) -> PyResult<Pitch> {
        core::Pitch::rise_run(rise.at("rise")?, run.at("run")?).raise().map(Pitch)
    }

    /// A pitch by its rise in a run of 12 in.
    #[staticmethod]
    fn in_twelve(rise: Given<Length>) -> PyResult<Pitch> {
        core::Pitch::in_twelve(rise.at("rise")?).raise().map(Pitch)
    }

    /// A pitch from its slope angle, measured up from level.
    #[staticmethod]
    fn from_angle(angle: Given<Angle>) -> PyResult<Pitch> {
        core::Pitch::from_angle(angle.at("angle")?).raise().map(Pitch)
    }

    /// The rise and the run as given; ``None`` for a pitch in degrees.
    #[getter]
    fn as_rise_run(&self) -> Option<(Length, Length)> {
        self.0.as_rise_run().map(|(rise, run)| (Length(rise), Length(run)))
    }

    /// Whether it was given in degrees.
    #[getter]
    fn is_in_degrees(&self) -> bool {
        self.0.is_in_degrees()
    }

    /// Whether it has no slope.
    #[getter]
    fn is_flat(&self) -> bool {
        self.0.is_flat()
    }

    /// The slope angle, measured up from level.
    #[getter]
    fn angle(&self) -> Angle {
        Angle(self.0.angle())
    }

    /// Rise over run, the tangent of the slope angle.
    #[getter]
    fn ratio(&self) -> f64 {
        self.0.ratio()
    }

    /// The rise in percent of the run.
    #[getter]
    fn percent(&self) -> f64 {
        self.0.percent()
    }

    /// True length down the slope for each unit of level run; also surface for each unit of plan area.
    #[getter]
    fn slope_factor(&self) -> f64 {
        self.0.slope_factor()
    }

    /// Sine of the slope angle: rise for each unit of length down the slope.
    #[getter]
    fn sine(&self) -> f64 {
        self.0.sine()
    }

    /// Cosine of the slope angle: level run for each unit of length down the slope.
    #[getter]
    fn cosine(&self) -> f64 {
        self.0.cosine()
    }

    /// The rise over this level run.
    ///
    /// >>> format(Pitch("7:12").rise_over("8'"), "in/16")
    /// '56"'
    fn rise_over(&self, run: Given<Length>) -> PyResult<Length> {
        self.0.rise_over(run.at("run")?).raise().map(Length)
    }

    /// The true length down the slope over this level run.
    fn slope_length(&self, run: Given<Length>) -> PyResult<Length> {
        self.0.slope_length(run.at("run")?).raise().map(Length)
    }

    /// Which of two pitches is the steeper: -1 where the other is, 0 for the same slope, 1 where this is.
    ///
    /// >>> Pitch("12:12").compare("45 deg")
    /// 0
    fn compare(&self, other: Given<Pitch>) -> PyResult<i8> {
        Ok(self.0.compare(&other.at("other")?) as i8)
    }

    /// Whether it is as steep as this limit or steeper; ratios are compared exactly.
    ///
    /// >>> Pitch("1:48").at_least("1/4:12"), Pitch("2 %").at_least("1/4:12")
    /// (True, False)
    fn at_least(&self, limit: Given<Pitch>) -> PyResult<bool> {
        Ok(self.0.at_least(&limit.at("limit")?))
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("Pitch('{}')", self.0)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (String,)) {
        (slf.get_type(), (slf.get().__str__(),))
    }
}
