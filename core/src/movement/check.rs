//! The check of a chosen fold and gap.

use super::cautions::{FOLD_DRAWS_OFF, GAP_CLOSES, MOVES_ALONG_LINE};
use super::end::{EndMovement, EndRoom};
use crate::error::{Error, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{ExpansionUnit, Length, TemperatureDifferenceUnit};

/// A fold and a gap that someone chose, to be checked against the movement of their end.
///
/// # Errors
/// Those of [`EndMovement`], and a negative fold or gap ([`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange)).
///
/// ```
/// use seamwright::movement::{EndCheck, EndMovement, MovingEnd};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Expansion, Length, Temperature};
/// let movement = EndMovement {
///     end: MovingEnd::LowerHooked,
///     expansion: Expansion::parse("6.5e-6 /degF")?,
///     to_fixed: Length::feet(40),
///     coldest: Temperature::parse("-20 degF")?,
///     laid: Temperature::parse("70 degF")?,
///     hottest: Temperature::parse("160 degF")?,
///     clearance: Length::inches_64(8),
///     engagement: Length::inches_64(24),
///     meeting: Angle::SQUARE,
/// };
/// let verdict = EndCheck { movement, fold: Length::inches(1), gap: Length::inches_64(28) }.compute()?;
/// assert!(!verdict.holds);
/// assert!(verdict.would_do.least_fold > Length::inches(1));
/// assert!(verdict.greatest_to_fixed.unwrap() < Length::feet(40));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct EndCheck {
    /// The end and its movement.
    pub movement: EndMovement,
    /// The fold chosen, square to the line.
    pub fold: Length,
    /// The gap chosen at the laying temperature, square to the line.
    pub gap: Length,
}

/// Whether a fold and gap do, and what would.
///
/// ```
/// use seamwright::movement::{EndCheck, EndMovement, MovingEnd};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Expansion, Length, Temperature};
/// let movement = EndMovement {
///     end: MovingEnd::LowerHooked,
///     expansion: Expansion::parse("12e-6 /K")?,
///     to_fixed: Length::feet(30),
///     coldest: Temperature::parse("-20 degC")?,
///     laid: Temperature::parse("20 degC")?,
///     hottest: Temperature::parse("70 degC")?,
///     clearance: Length::inches_64(8),
///     engagement: Length::inches_64(24),
///     meeting: Angle::SQUARE,
/// };
/// let room = movement.compute()?;
/// let verdict = EndCheck { movement, fold: room.least_fold, gap: room.gap_when_laid }.compute()?;
/// assert!(verdict.holds);
/// assert_eq!(verdict.least_engagement, movement.engagement);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EndVerdict {
    /// Whether both the clearance and the engagement are kept all year.
    pub holds: bool,
    /// The least gap of the year; negative where metal pushes.
    pub least_gap: Length,
    /// The least hooked length of the year; negative where the fold is off.
    pub least_engagement: Length,
    /// The least and greatest gap when laid that would do with this fold; none where no gap does.
    pub gaps: Option<(Length, Length)>,
    /// The greatest distance to the fixed line that this fold allows; none where the metal does not move.
    pub greatest_to_fixed: Option<Length>,
    /// The least fold, and the gap with it, that would do.
    pub would_do: EndRoom,
    /// What fails, and what else to know.
    pub cautions: Vec<Caution>,
}

impl Calculation for EndCheck {
    type Out = EndVerdict;

    fn title(&self) -> String {
        "check of a fold and a gap".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<EndVerdict, Error> {
        let mut faults = Faults::default();
        faults.keep(self.fold.not_negative("fold"));
        faults.keep(self.gap.not_negative("gap"));
        faults.keep(self.movement.validate().map_err(|e| e.under("movement")));
        faults.check()?;
        let m = &self.movement;
        let room = r.part(|| m.title(), |r| m.run(r))?;
        let least_gap = (self.gap - room.closing).length()?;
        r.step(|| {
            Step::new("least gap")
                .formula("gap - what closes")
                .with("gap", self.gap)
                .with("what closes", room.closing)
                .gives(least_gap)
                .source(Source::geometry())
        });
        let least_engagement = (self.fold - self.gap - room.opening).length()?;
        r.step(|| {
            Step::new("least engagement")
                .formula("fold - gap - what opens")
                .with("fold", self.fold)
                .with("gap", self.gap)
                .with("what opens", room.opening)
                .gives(least_engagement)
                .source(Source::geometry())
        });
        let greatest_gap = (self.fold - m.engagement - room.opening).length()?;
        let gaps = (greatest_gap >= room.gap_when_laid).then_some((room.gap_when_laid, greatest_gap));
        let per_mm = m.expansion.get(ExpansionUnit::PerKelvin) * m.hottest.above(m.coldest).get(TemperatureDifferenceUnit::Kelvin) * m.meeting.sin();
        let spare = (self.fold - m.clearance - m.engagement).length()?.max(Length::ZERO);
        let greatest_to_fixed = if per_mm > 0.0 { Some(Length::from_mm(spare.mm() / per_mm).map_err(|e| e.under("fold"))?) } else { None };
        let mut cautions = Vec::new();
        if least_gap < m.clearance {
            cautions.push(
                Caution::new(GAP_CLOSES, "gap", Source::geometry())
                    .arg("temperature", m.closes_at())
                    .arg("found", least_gap)
                    .arg("wanted", m.clearance)
                    .arg("would_do", room.gap_when_laid),
            );
        }
        if least_engagement < m.engagement {
            let would_do = (self.gap.max(room.gap_when_laid) + m.engagement + room.opening).length()?;
            cautions.push(
                Caution::new(FOLD_DRAWS_OFF, "fold", Source::geometry())
                    .arg("temperature", m.opens_at())
                    .arg("found", least_engagement)
                    .arg("wanted", m.engagement)
                    .arg("would_do", would_do),
            );
        }
        let holds = cautions.is_empty();
        if room.along.is_positive() {
            cautions.push(Caution::new(MOVES_ALONG_LINE, "movement.meeting", Source::geometry()).arg("along", room.along));
        }
        Ok(EndVerdict { holds, least_gap, least_engagement, gaps, greatest_to_fixed, would_do: room, cautions })
    }
}
