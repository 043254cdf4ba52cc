//! Every figure of one bend under a rule.

use super::factors::equivalent_neutral_factor;
use super::rule::BendRule;
use super::size::{BendMm, BendSize};
use crate::error::{Error, ErrorKind};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Angle, Length};

/// One bend and its rule, for all that can be said of it.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendFigures, BendRule, BendSize, HandbookMetal};
/// use seamwright::units::{BendAngle, Length};
/// let size = BendSize { thickness: Length::mils(40), inside_radius: Length::mils(40), angle: BendAngle::SQUARE };
/// let found = BendFigures { size, rule: BendRule::Handbook(HandbookMetal::SoftSteel) }.compute()?;
/// assert_eq!(found.outside_setback, Some(Length::mils(80)));
/// assert!((found.neutral_factor - 0.4074).abs() < 5e-5);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct BendFigures {
    /// Thickness, inside radius and angle.
    pub size: BendSize,
    /// The rule.
    pub rule: BendRule,
}

/// The figures of one bend.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendFigures, BendRule, BendSize};
/// use seamwright::units::{BendAngle, Length};
/// let size = BendSize { thickness: Length::mils(24), inside_radius: Length::ZERO, angle: BendAngle::FOLDED };
/// let hem = BendFigures { size, rule: BendRule::Aviation }.compute()?;
/// assert_eq!((hem.outside_setback, hem.deduction), (None, None));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct BendFound {
    /// The angle between the flanges: 180 degrees less the bend.
    pub opening: Angle,
    /// From the tangent line to the corner of the outside faces; none at 180 degrees and more.
    pub outside_setback: Option<Length>,
    /// From the tangent line to the corner of the inside faces; none at 180 degrees and more.
    pub inside_setback: Option<Length>,
    /// The bend allowance BA: flat length between the tangent lines.
    pub allowance: Length,
    /// The bend deduction BD, for legs to the outer corner; none at 180 degrees and more.
    pub deduction: Option<Length>,
    /// The neutral-axis factor that gives this allowance; outside 0 to 1 for rules that are not about the neutral line.
    pub neutral_factor: f64,
}

impl Calculation for BendFigures {
    type Out = BendFound;

    fn title(&self) -> String {
        format!("bend of {} with inside radius {} in sheet {}, {}", self.size.angle, self.size.inside_radius, self.size.thickness, self.rule)
    }

    /// # Errors
    /// Those of [`BendSize::check`] and [`BendRule::allowance`], at `size`.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<BendFound, Error> {
        let size = self.size;
        let under = |e: Error| e.under("size");
        let allowance = self.rule.allowance(size).map_err(under)?;
        r.step(|| match BendMm::of(size, size.thickness.mm()) {
            Ok(mm) => self.rule.step(&mm, allowance),
            Err(_) => Step::new("bend allowance BA").gives(allowance),
        });
        let factor = equivalent_neutral_factor(size, allowance).map_err(under)?;
        if !factor.is_finite() {
            let e = Error::new(ErrorKind::OutOfRange, "the bend is too slight to reckon with").at("size.angle").value_of(size.angle);
            return Err(e.accepts("more than 1e-300 deg from flat"));
        }
        let (mut outside_setback, mut inside_setback, mut deduction) = (None, None, None);
        if size.angle.degrees() < 180.0 {
            let (outside, inside) = (size.outside_setback().map_err(under)?, size.inside_setback().map_err(under)?);
            r.step(|| {
                let step = Step::new("outside setback").formula("(R + T) tan(A/2)").with("R", size.inside_radius).with("T", size.thickness);
                step.with("A", size.angle).gives(outside).source(Source::geometry())
            });
            r.step(|| {
                let step = Step::new("inside setback").formula("R tan(A/2)").with("R", size.inside_radius).with("A", size.angle);
                step.gives(inside).source(Source::geometry())
            });
            let bd = self.rule.deduction(size).map_err(under)?;
            r.step(|| {
                let step = Step::new("bend deduction BD").formula("2 outside setbacks - BA").with("outside setback", outside).with("BA", allowance);
                step.gives(bd).source(Source::geometry())
            });
            (outside_setback, inside_setback, deduction) = (Some(outside), Some(inside), Some(bd));
        }
        r.step(|| {
            let step = Step::new("neutral-axis factor that gives it").formula("(BA / A - R) / T").with("BA", allowance).with("A", size.angle);
            step.with("R", size.inside_radius).with("T", size.thickness).gives(factor).source(Source::geometry())
        });
        Ok(BendFound { opening: size.angle.opening(), outside_setback, inside_setback, allowance, deduction, neutral_factor: factor })
    }
}
