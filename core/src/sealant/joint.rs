//! Depth and width of joints.

use crate::error::{Error, ErrorKind, Faults};
use crate::movement::LengthChange;
use crate::record::{Calculation, Recorder, Seen, Source, Step};
use crate::units::{Expansion, Length, TemperatureDifference};

/// A published rule for the depth of sealant in a joint; they differ, so the caller names one.
///
/// ```
/// use seamwright::sealant::DepthRule;
/// assert_eq!(DepthRule::FullWidthThenHalf.source().to_string(), "Construction Waterproofing Handbook, p. 5.6");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum DepthRule {
    /// Half the width, within 1/4 to 1/2 in, for widths of 1/4 to 2 in (Allen, Architectural Detailing).
    HalfWidth,
    /// The width up to 1/2 in and half of it above, within 1/4 to 1/2 in, for widths of 1/4 to 1 in (Construction Waterproofing Handbook).
    FullWidthThenHalf,
}

const QUARTER: Length = Length::inches_64(16);
const HALF: Length = Length::inches_64(32);

impl DepthRule {
    /// Where the rule stands.
    #[must_use]
    pub fn source(self) -> Source {
        match self {
            DepthRule::HalfWidth => Source::published("Allen, Architectural Detailing", "", "sealant joints", Seen::Text),
            DepthRule::FullWidthThenHalf => Source::published("Construction Waterproofing Handbook", "", "p. 5.6", Seen::Text),
        }
    }

    fn widest(self) -> Length {
        match self {
            DepthRule::HalfWidth => Length::inches(2),
            DepthRule::FullWidthThenHalf => Length::inches(1),
        }
    }
}

/// Depth of sealant in a joint of some width.
///
/// # Errors
/// Computing refuses a width that the rule does not cover ([`ErrorKind::OutOfRange`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::sealant::{DepthRule, JointDepth};
/// use seamwright::units::Length;
/// let width = Length::parse("3/8\"")?;
/// assert_eq!(JointDepth { rule: DepthRule::HalfWidth, width }.compute()?, Length::parse("1/4\"")?);
/// assert_eq!(JointDepth { rule: DepthRule::FullWidthThenHalf, width }.compute()?, width);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct JointDepth {
    /// The rule to follow.
    pub rule: DepthRule,
    /// Width of the joint.
    pub width: Length,
}

impl Calculation for JointDepth {
    type Out = Length;

    fn title(&self) -> String {
        "depth of sealant in a joint".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Length, Error> {
        let widest = self.rule.widest();
        if self.width < QUARTER || self.width > widest {
            return Err(Error::new(ErrorKind::OutOfRange, "the rule does not cover this width")
                .at("width")
                .value_of(self.width)
                .accepts(format!("{QUARTER} to {widest}")));
        }
        let raw = match self.rule {
            DepthRule::FullWidthThenHalf if self.width <= HALF => self.width,
            _ => self.width.station(1, 2)?,
        };
        let depth = raw.max(QUARTER).min(HALF);
        r.step(|| {
            let s = Step::new("depth").with("width", self.width).gives(depth).source(self.rule.source());
            match self.rule {
                DepthRule::HalfWidth => s.formula("width / 2, within 1/4 to 1/2 in"),
                DepthRule::FullWidthThenHalf => s.formula("width up to 1/2 in, width / 2 above, within 1/4 to 1/2 in"),
            }
        });
        Ok(depth)
    }
}

const WIDTH_RULE: Source = Source::published("Cornell University ARCH 262, assignment 2", "2002", "joint width", Seen::Text);

/// Width of a joint that moves: (100 / X)(alpha L dT + M) + t, X being the movement capability in percent.
///
/// # Errors
/// Computing refuses a negative length, movement or tolerance, an expansion under zero, a range of temperature under zero, a capability outside 0 to 1
/// ([`ErrorKind::OutOfRange`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::sealant::JointWidth;
/// use seamwright::units::{Expansion, Length, LengthUnit, TemperatureDifference};
/// let width = JointWidth {
///     expansion: Expansion::parse("12.8e-6 /degF")?,
///     length: Length::feet(10),
///     range: TemperatureDifference::parse("180 degF")?,
///     other_movement: Length::ZERO,
///     tolerance: Length::parse("1/8\"")?,
///     capability_ratio: 0.5,
/// }
/// .compute()?;
/// assert!((width.get(LengthUnit::Inch) - 0.678).abs() < 0.0005);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct JointWidth {
    /// Coefficient of linear expansion of what the joint parts.
    pub expansion: Expansion,
    /// The length that moves toward the joint.
    pub length: Length,
    /// From coldest to hottest.
    pub range: TemperatureDifference,
    /// Other movement, as of loads or moisture.
    pub other_movement: Length,
    /// Construction tolerance, added at the end.
    pub tolerance: Length,
    /// Movement capability of the sealant: 0.5 for one of 50 percent.
    pub capability_ratio: f64,
}

impl Calculation for JointWidth {
    type Out = Length;

    fn title(&self) -> String {
        "width of a joint that moves".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Length, Error> {
        let mut faults = Faults::default();
        faults.keep(self.other_movement.not_negative("other_movement"));
        faults.keep(self.tolerance.not_negative("tolerance"));
        if self.range < TemperatureDifference::ZERO {
            faults
                .add(Error::new(ErrorKind::OutOfRange, "a range of temperature must not be negative").at("range").value_of(self.range).accepts("0 K or more"));
        }
        if !(self.capability_ratio > 0.0 && self.capability_ratio <= 1.0) {
            faults.add(
                Error::new(ErrorKind::OutOfRange, "not a movement capability")
                    .at("capability_ratio")
                    .value_of(self.capability_ratio)
                    .accepts("more than 0, at most 1, where 0.5 is 50 percent"),
            );
        }
        let change = LengthChange { expansion: self.expansion, length: self.length, difference: self.range };
        let thermal = faults.keep(r.part(|| change.title(), |r| change.run(r)));
        faults.check()?;
        let moves = (thermal.unwrap_or_default() + self.other_movement).length()?;
        let open = Length::from_mm(moves.mm() / self.capability_ratio).map_err(|e| e.under("capability_ratio"))?;
        let width = (open + self.tolerance).length()?;
        r.step(|| {
            Step::new("width")
                .formula("(alpha L dT + M) / capability + t")
                .with("alpha L dT + M", moves)
                .with("capability", self.capability_ratio)
                .with("t", self.tolerance)
                .gives(width)
                .source(WIDTH_RULE)
        });
        Ok(width)
    }
}
