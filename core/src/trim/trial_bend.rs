//! A neutral-axis factor solved back from a measured trial bend.

use super::cautions::NEUTRAL_FACTOR_ABOVE_HALF;
use super::factors::{NeutralFactor, equivalent_neutral_factor};
use super::leg::LegEnd;
use super::neutral_axis::NeutralAxis;
use super::size::BendSize;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{BendAngle, Length};

/// A strip of known width, bent once, and its two legs measured.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, LegEnd, TrialBend};
/// use seamwright::units::{BendAngle, Length};
/// let trial = TrialBend {
///     thickness: Length::mils(50),
///     inside_radius: Length::mils(32),
///     angle: BendAngle::SQUARE,
///     blank: Length::mils(1921),
///     legs: [Length::inches(1), Length::inches(1)],
///     measured_to: LegEnd::OuterCorner,
/// };
/// let found = trial.compute()?;
/// assert_eq!(found.deduction, Some(Length::mils(79)));
/// // The factor gives the measured bend back.
/// let again = BendRule::NeutralAxis(found.axis).allowance(trial.size())?;
/// assert!((again - found.allowance).pm().abs() <= 1);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TrialBend {
    /// Thickness of the sheet, measured.
    pub thickness: Length,
    /// Radius of the inside face, measured.
    pub inside_radius: Length,
    /// The bend, from flat, measured.
    pub angle: BendAngle,
    /// Width of the strip before it was bent.
    pub blank: Length,
    /// The two legs as measured after.
    pub legs: [Length; 2],
    /// To what both legs were measured at the bend.
    pub measured_to: LegEnd,
}

impl TrialBend {
    /// The size of the bend.
    #[must_use]
    pub const fn size(&self) -> BendSize {
        BendSize { thickness: self.thickness, inside_radius: self.inside_radius, angle: self.angle }
    }
}

/// What a trial bend says.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{LegEnd, TrialBend};
/// use seamwright::units::{BendAngle, Length};
/// let (one, thick) = (Length::inches(1), Length::mils(40));
/// let trial = TrialBend {
///     thickness: thick,
///     inside_radius: thick,
///     angle: BendAngle::SQUARE,
///     blank: Length::mils(2097),
///     legs: [one; 2],
///     measured_to: LegEnd::Tangent,
/// };
/// let found = trial.compute()?;
/// // 0.097 in over a square bend: beyond mid-thickness, which a measured bend may be.
/// assert!(found.axis.factor.value() > 0.5 && found.cautions.len() == 1);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct TrialFound {
    /// What the bend took: the strip less the flat parts of its legs.
    pub allowance: Length,
    /// The deduction, for a table; none at 180 degrees and more.
    pub deduction: Option<Length>,
    /// The factor with its source, ready for the neutral-axis rule.
    pub axis: NeutralAxis,
    /// What must be known beside the numbers.
    pub cautions: Vec<Caution>,
}

impl Calculation for TrialBend {
    type Out = TrialFound;

    fn title(&self) -> String {
        format!("trial bend of {} with inside radius {} in sheet {}", self.angle, self.inside_radius, self.thickness)
    }

    /// # Errors
    /// [`ErrorKind::OutOfRange`] for lengths of zero or less, an angle of nothing, or an end that the bend does not have (all at once);
    /// [`ErrorKind::Impossible`] at `blank` where the factor would lie outside the sheet: something was measured wrong.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<TrialFound, Error> {
        let mut faults = Faults::default();
        faults.keep(self.blank.positive("blank"));
        for (i, leg) in self.legs.iter().enumerate() {
            faults.keep(leg.positive(&format!("legs[{i}]")));
        }
        let size = self.size();
        let setback = faults.keep(size.check().and_then(|()| self.measured_to.beyond_tangent(size).map_err(|e| e.at("measured_to"))));
        faults.check()?;
        let setback = setback.unwrap_or_default();
        let [a, b] = self.legs;
        let flats = (a + b - setback * 2).length()?;
        r.step(|| {
            let step = Step::new("flat parts").formula("both legs - 2 setbacks").with("first leg", a).with("second leg", b).with("setback", setback);
            step.gives(flats).source(Source::geometry())
        });
        let allowance = (self.blank - flats).length()?;
        r.step(|| {
            let step = Step::new("bend allowance BA").formula("blank - flat parts").with("blank", self.blank).with("flat parts", flats);
            step.gives(allowance).source(Source::user())
        });
        let factor = equivalent_neutral_factor(size, allowance)?;
        r.step(|| {
            let step = Step::new("neutral-axis factor K").formula("(BA / A - R) / T").with("BA", allowance).with("A", self.angle);
            step.with("R", self.inside_radius).with("T", self.thickness).gives(factor).source(Source::geometry())
        });
        // The measured picometre may lie a hair outside either face.
        let factor = NeutralFactor::new(factor).map_err(|_| {
            Error::new(ErrorKind::Impossible, "the neutral line would lie outside the sheet: the blank and the legs do not belong together")
                .at("blank")
                .value_of(self.blank)
                .accepts(format!("a width that leaves a factor of 0 to 1, not {factor}"))
                .cured_by("measuring again: thickness, radius, angle, legs")
        })?;
        let deduction = if self.angle.degrees() < 180.0 { Some((size.outside_setback()? * 2 - allowance).length()?) } else { None };
        let axis = NeutralAxis { factor, source: Source::User { note: format!("solved back from a {}", self.title()).into() } };
        let mut cautions = Vec::new();
        if factor > NeutralFactor::MIDDLE {
            cautions.push(Caution::new(NEUTRAL_FACTOR_ABOVE_HALF, "axis.factor", axis.source.clone()).arg("factor", factor));
        }
        Ok(TrialFound { allowance, deduction, axis, cautions })
    }
}
