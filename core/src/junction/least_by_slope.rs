//! A least that grows as the roof gets flatter.

use super::least::LeastRule;
use crate::error::{Error, ErrorKind, Faults};
use crate::pitch::Pitch;
use crate::practice::junction as practice;
use crate::record::Source;
use crate::units::Length;
use std::borrow::Cow;

/// What a rule asks on roofs flatter than a pitch.
///
/// ```
/// use seamwright::junction::LeastBySlope;
/// let flattest = &LeastBySlope::VALLEY_LEG.flatter[0];
/// assert_eq!(flattest.under.to_string(), "2 1/2:12");
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LeastUnder {
    /// Under this pitch; at the pitch itself no more.
    pub under: Pitch,
    /// The rule there.
    pub rule: LeastRule,
}

/// A least that grows as the roof gets flatter: a rule, and others in its place under given pitches.
///
/// ```
/// use seamwright::junction::{LeastBySlope, LeastRule};
/// use seamwright::pitch::Pitch;
/// use seamwright::units::Length;
/// let leg = LeastBySlope::VALLEY_LEG;
/// assert_eq!(leg.at(Pitch::parse("4:12")?).least, Length::inches(8));
/// assert_eq!(leg.at(Pitch::parse("3:12")?).least, Length::inches(10));
/// assert_eq!(leg.at(Pitch::parse("2:12")?).least, Length::inches(12));
/// // One rule for every slope.
/// assert_eq!(LeastBySlope::everywhere(LeastRule::VALLEY_LEG).at(Pitch::FLAT).least, Length::inches(8));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LeastBySlope {
    /// The rule wherever none of the others holds.
    pub rule: LeastRule,
    /// Those of flatter roofs, the flattest first; the first that holds is the rule.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "<[_]>::is_empty"))]
    pub flatter: Cow<'static, [LeastUnder]>,
}

const fn leg(least: Length) -> LeastRule {
    LeastRule { what: Cow::Borrowed("valley pan from its centreline, on a roof of low slope"), least, source: Source::CommonPractice }
}

const fn in_twelve(rise: Length) -> Pitch {
    Pitch::of(rise, Length::inches(12))
}

const FLATTER_VALLEYS: &[LeastUnder] = &[
    LeastUnder { under: in_twelve(practice::VALLEY_FLATTEST_RISE_IN_TWELVE), rule: leg(practice::VALLEY_LEG_FLATTEST) },
    LeastUnder { under: in_twelve(practice::VALLEY_FLAT_RISE_IN_TWELVE), rule: leg(practice::VALLEY_LEG_FLAT) },
];

impl LeastBySlope {
    /// A valley's pan reaches 8 in from its centreline on each side, 10 in where its flatter plane is under 4:12, and 12 in where it is under 2 1/2:12. Common practice,
    /// no published source; the two pitches are those at which the building code's own rules of valleys and underlayment step (International Building Code 2018, ch. 15).
    pub const VALLEY_LEG: LeastBySlope = LeastBySlope { rule: LeastRule::VALLEY_LEG, flatter: Cow::Borrowed(FLATTER_VALLEYS) };

    /// One rule at every slope.
    #[must_use]
    pub const fn everywhere(rule: LeastRule) -> LeastBySlope {
        LeastBySlope { rule, flatter: Cow::Borrowed(&[]) }
    }

    /// The rule at this pitch.
    #[must_use]
    pub fn at(&self, pitch: Pitch) -> &LeastRule {
        self.flatter.iter().find(|f| pitch.compare(&f.under).is_lt()).map_or(&self.rule, |f| &f.rule)
    }

    /// The rule that asks for the least of all.
    pub(super) fn mildest(&self) -> &LeastRule {
        self.flatter.iter().map(|f| &f.rule).fold(&self.rule, |least, rule| if rule.least < least.least { rule } else { least })
    }

    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.rule.least.not_negative("rule.least"));
        for (i, f) in self.flatter.iter().enumerate() {
            faults.keep(f.rule.least.not_negative(&format!("flatter[{i}].rule.least")));
            let before = i.checked_sub(1).and_then(|k| self.flatter.get(k));
            if let Some(before) = before.filter(|b| f.under.compare(&b.under).is_le()) {
                let error = Error::new(ErrorKind::Conflict, "the rules of flatter roofs are out of order").at(format!("flatter[{i}].under")).value_of(f.under);
                faults.add(error.accepts(format!("more than {}, as the one before it is for flatter roofs", before.under)));
            }
        }
        faults.check()
    }
}
