//! DIN 6935: compensation value v over three ranges of the opening angle.
//!
//! With the opening angle b = 180 degrees - A, the cut length of two legs is a + b - v, and
//!
//! | opening | legs measured to | v |
//! |---|---|---|
//! | 0 to 90 | the outer tangents of the bend | `2 (r + s) - arc` |
//! | over 90 to 165 | the outer corner | `2 (r + s) tan(A/2) - arc` |
//! | over 165 to 180 | the outer corner | 0, declared negligible |
//!
//! where `arc = pi A/180 (r + k s/2)`. So for acute openings v is *not* the bend deduction, which is measured to the corner; only the arc is
//! common. v may have either sign. The standard adds a mostly negative v; here, as in the table books, a positive v is subtracted.

use super::factors::DinFactor;
use super::rule::BendRule;
use super::size::{BendMm, BendSize, to_length};
use crate::error::{Error, ErrorKind};
use crate::record::{Source, Step};
use crate::units::Length;

/// The opening angle above which v is taken as zero, as degrees from flat.
const NEGLIGIBLE_BELOW: f64 = 15.0;

pub(super) static SOURCE: Source = Source::published(
    "DIN 6935",
    "",
    "compensation value v by opening angle, correction factor k, as given in a German metal-trades table book",
    crate::record::Seen::Secondary,
);

/// The factor of the last radius met in one sheet. One radius is usual in a trim, and the logarithm in the factor knows nothing of the angle.
#[derive(Default)]
pub(super) struct LastFactor(Option<(Length, DinFactor)>);

impl LastFactor {
    #[inline]
    fn of(&mut self, bend: &BendMm) -> Result<DinFactor, Error> {
        match self.0 {
            Some((radius, factor)) if radius == bend.size.inside_radius => Ok(factor),
            _ => {
                let factor = DinFactor::of_ratio(bend.r / bend.t)?;
                self.0 = Some((bend.size.inside_radius, factor));
                Ok(factor)
            }
        }
    }
}

/// The length of the neutral line in the bend with this factor k, without the third range.
#[inline]
fn arc_mm(bend: &BendMm, k: f64) -> f64 {
    bend.radians() * (bend.r + k * bend.t / 2.0)
}

/// Whether the factor k enters: not in the third range.
pub(super) fn takes_factor(bend: &BendMm) -> bool {
    bend.degrees() >= NEGLIGIBLE_BELOW
}

pub(super) fn allowance_mm(bend: &BendMm) -> Result<f64, Error> {
    allowance_after(bend, &mut LastFactor::default())
}

/// The same, with the factor of the bend before where it had this radius; the sheet must be one.
#[inline]
pub(super) fn allowance_after(bend: &BendMm, factors: &mut LastFactor) -> Result<f64, Error> {
    no_hem(bend)?;
    allowance_with(bend, factors.of(bend)?.value())
}

/// Hems are outside the range.
#[inline]
pub(super) fn no_hem(bend: &BendMm) -> Result<(), Error> {
    if bend.degrees() < 180.0 {
        return Ok(());
    }
    Err(Error::new(ErrorKind::OutOfRange, "a hem is outside the range of DIN 6935")
        .at("angle")
        .value_of(bend.size.angle)
        .accepts("less than 180 deg from flat")
        .cured_by("for the hem alone the neutral-axis, handbook, aviation or sharp-corner rule"))
}

/// The allowance with this factor k, in the range that the angle falls in.
#[inline]
pub(super) fn allowance_with(bend: &BendMm, k: f64) -> Result<f64, Error> {
    if takes_factor(bend) { Ok(arc_mm(bend, k)) } else { bend.two_setbacks() }
}

/// What the third range drops: the v that the second range would give. `None` outside the third range.
pub(super) fn dropped_mm(bend: &BendMm) -> Option<f64> {
    if takes_factor(bend) {
        return None;
    }
    Some(bend.two_setbacks().ok()? - arc_mm(bend, LastFactor::default().of(bend).ok()?.value()))
}

/// The compensation value v of DIN 6935, to be subtracted from the sum of the legs.
///
/// The legs go to the outer tangents of the bend for bends of 90 degrees from flat and more, to the outer corner for lesser ones (at 90 the two are one).
///
/// # Errors
/// [`ErrorKind::OutOfRange`] at 180 degrees and more, for a bend sharper than the formula covers, and where this is not a bend.
///
/// ```
/// use seamwright::trim::{din_compensation, BendSize};
/// use seamwright::units::{Angle, BendAngle, Length};
/// let size = BendSize {
///     thickness: Length::parse("5 mm")?,
///     inside_radius: Length::parse("6 mm")?,
///     angle: BendAngle::between_flanges(Angle::parse("60 deg")?)?,
/// };
/// let v = din_compensation(size)?;
/// assert!(v > Length::parse("5.8228 mm")? && v < Length::parse("5.8230 mm")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn din_compensation(size: BendSize) -> Result<Length, Error> {
    size.check()?;
    let bend = BendMm::of(size, size.thickness.mm())?;
    let arc = allowance_mm(&bend)?;
    let legs = if bend.degrees() >= 90.0 { 2.0 * (bend.r + bend.t) } else { bend.two_setbacks()? };
    to_length(legs - arc)
}

pub(super) fn step(bend: &BendMm, allowance: Length) -> Step {
    let opening = bend.size.angle.opening();
    let step = if bend.degrees() < NEGLIGIBLE_BELOW {
        Step::new("flat length of the bend BA").formula("2 (r + s) tan(A/2), as v = 0 for an opening above 165 deg")
    } else {
        Step::new("flat length of the bend BA").formula("pi A/180 (r + k s/2), k = 0.65 + 0.5 log10(r/s), 1 for r/s > 5")
    };
    let step = step.with("A", bend.size.angle).with("opening", opening).with("r", bend.size.inside_radius).with("s", bend.size.thickness);
    let step = match DinFactor::of_ratio(bend.r / bend.t) {
        Ok(k) => step.with("k", k.value()),
        Err(_) => step,
    };
    step.gives(allowance).source(SOURCE.clone())
}

/// DIN 6935 where it holds, and a rule of the caller's choice where it does not: hems, and bends sharper than r/s of about 0.05.
///
/// A result says at which bends the other rule was used.
///
/// ```
/// use seamwright::trim::{BendRule, BendSize, DinOr, NeutralFactor};
/// use seamwright::units::{BendAngle, Length};
/// let hems = BendRule::neutral_axis(NeutralFactor::MIDDLE);
/// let rule = BendRule::Din6935Or(DinOr::new(hems.clone())?);
/// let bend = BendSize { thickness: Length::mils(24), inside_radius: Length::mils(24), angle: BendAngle::SQUARE };
/// assert_eq!(rule.allowance(bend)?, BendRule::Din6935.allowance(bend)?);
/// let hem = BendSize { inside_radius: Length::ZERO, angle: BendAngle::FOLDED, ..bend };
/// assert_eq!(rule.allowance(hem)?, hems.allowance(hem)?);
/// assert!(DinOr::new(BendRule::Din6935).is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "DinOrForm", into = "DinOrForm"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DinOr {
    otherwise: Box<BendRule>,
}

#[cfg(feature = "serde")]
#[derive(serde::Serialize, serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
struct DinOrForm {
    otherwise: Box<BendRule>,
}

#[cfg(feature = "serde")]
impl TryFrom<DinOrForm> for DinOr {
    type Error = crate::error::told::Told;
    fn try_from(form: DinOrForm) -> Result<Self, crate::error::told::Told> {
        Ok(DinOr::new(*form.otherwise)?)
    }
}

#[cfg(feature = "serde")]
impl From<DinOr> for DinOrForm {
    fn from(rule: DinOr) -> Self {
        DinOrForm { otherwise: rule.otherwise }
    }
}

impl DinOr {
    /// DIN 6935, and otherwise this rule.
    ///
    /// # Errors
    /// [`ErrorKind::Conflict`] at `otherwise` for DIN 6935 itself, which does not hold there.
    pub fn new(otherwise: BendRule) -> Result<DinOr, Error> {
        if matches!(otherwise, BendRule::Din6935 | BendRule::Din6935Or(_)) {
            return Err(Error::new(ErrorKind::Conflict, "where DIN 6935 does not hold, another rule must")
                .at("otherwise")
                .value_of(&otherwise)
                .accepts("a rule other than DIN 6935"));
        }
        Ok(DinOr { otherwise: Box::new(otherwise) })
    }

    /// The rule where DIN 6935 does not hold.
    #[must_use]
    pub fn otherwise(&self) -> &BendRule {
        &self.otherwise
    }

    /// The other rule, if it is the one for this bend.
    #[inline]
    pub(super) fn other_for(&self, bend: &BendMm) -> Option<&BendRule> {
        (bend.degrees() >= 180.0 || DinFactor::of_ratio(bend.r / bend.t).is_err()).then_some(&*self.otherwise)
    }
}
