//! The rows of the framing square: a square corner and one pitch on both sides.

use super::Pitch;
use crate::error::Error;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Length, LengthUnit};

/// A foot in millimetres: the run that the framing square's rows stand for.
const FOOT: f64 = 304.8;

/// The framing-square row of a pitch, for a square plan corner with this pitch on both sides.
///
/// The hip's length is given for each foot of *common* run, although the hip itself runs 16.97 in over that foot. For other corners and
/// unequal pitches use [`Corner`](super::Corner).
///
/// ```
/// use seamwright::pitch::{Framing, Pitch};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let row = Framing { pitch: Pitch::parse("6:12")?, spacing: Length::inches(16) }.compute()?;
/// assert_eq!(row.hip_per_foot, Length::inches(18));
/// assert_eq!(row.jack_difference.format("in.3".parse()?)?.as_str(), "17.889 in");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Framing {
    /// The pitch of both planes.
    pub pitch: Pitch,
    /// The spacing of jacks along the eave: seams, battens or rafters.
    pub spacing: Length,
}

/// One row of the framing square.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct FramingRow {
    /// Length down the slope for each foot of common run.
    pub common_per_foot: Length,
    /// Length of a hip or valley for each foot of common run.
    pub hip_per_foot: Length,
    /// Level run of a hip or valley for each foot of common run; the trade says 17 in.
    pub hip_run_per_foot: Length,
    /// The difference in length of two neighbouring jacks at the spacing.
    pub jack_difference: Length,
    /// The figure to set against 12 in on the tongue for the side cut of a jack.
    pub jack_side_cut: Length,
    /// The figure to set against 12 in on the tongue for the side cut of a hip or valley.
    pub hip_side_cut: Length,
    /// Tangent of the backing angle, rise over hip length.
    pub backing_ratio: f64,
}

impl Calculation for Framing {
    type Out = FramingRow;

    fn title(&self) -> String {
        format!("Framing-square row of {} at {}", self.pitch, self.spacing)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<FramingRow, Error> {
        let spacing = self.spacing.positive("spacing")?;
        let m = self.pitch.ratio();
        let (l, h) = ((1.0 + m * m).sqrt(), (2.0 + m * m).sqrt());
        let root = 2.0_f64.sqrt();
        let length = |per_foot: f64| Length::from_mm(per_foot * FOOT).map_err(|e| e.at("pitch"));
        let inches = |x: Length| format!("{} in", x.get(LengthUnit::Inch));

        let common_per_foot = length(l)?;
        r.step(|| {
            Step::new("length down the slope for each foot of run")
                .formula("12 in sqrt(1 + m^2)")
                .with("m", m)
                .gives(inches(common_per_foot))
                .source(Source::geometry())
        });
        let hip_per_foot = length(h)?;
        r.step(|| {
            Step::new("length of hip or valley for each foot of common run")
                .formula("12 in sqrt(2 + m^2)")
                .with("m", m)
                .gives(inches(hip_per_foot))
                .source(Source::geometry())
        });
        let hip_run_per_foot = length(root)?;
        r.step(|| {
            Step::new("level run of hip or valley for each foot of common run")
                .formula("12 in sqrt(2)")
                .gives(inches(hip_run_per_foot))
                .source(Source::geometry())
        });
        let jack_difference = Length::from_mm(spacing.mm() * l).map_err(|e| e.at("spacing"))?;
        r.step(|| {
            let step = Step::new("difference of jacks").formula("spacing sqrt(1 + m^2)").with("spacing", inches(spacing)).with("m", m);
            step.gives(inches(jack_difference)).source(Source::geometry())
        });
        let jack_side_cut = length(1.0 / l)?;
        r.step(|| {
            Step::new("side cut of jacks, against 12 in").formula("12 in / sqrt(1 + m^2)").with("m", m).gives(inches(jack_side_cut)).source(Source::geometry())
        });
        let hip_side_cut = length(root / h)?;
        r.step(|| {
            Step::new("side cut of hip or valley, against 12 in")
                .formula("12 in sqrt(2) / sqrt(2 + m^2)")
                .with("m", m)
                .gives(inches(hip_side_cut))
                .source(Source::geometry())
        });
        let backing_ratio = m / h;
        r.step(|| Step::new("tangent of the backing angle").formula("m / sqrt(2 + m^2)").with("m", m).gives(backing_ratio).source(Source::geometry()));
        Ok(FramingRow { common_per_foot, hip_per_foot, hip_run_per_foot, jack_difference, jack_side_cut, hip_side_cut, backing_ratio })
    }
}
