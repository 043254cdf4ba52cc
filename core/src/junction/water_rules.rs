//! The least laps of a path of water, each with its source.

use crate::error::{Error, Faults};
use crate::practice::junction as practice;
use crate::record::{Seen, Source};
use crate::units::Length;

/// A least lap and whose rule it is.
///
/// ```
/// use seamwright::junction::LapRule;
/// use seamwright::units::Length;
/// assert_eq!(LapRule::IRC_OVER_EDGE_METAL.least, Length::inches(2));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LapRule {
    /// The least lap.
    pub least: Length,
    /// Whose rule it is.
    pub source: Source,
}

impl LapRule {
    /// Edge metal reaches at least 2 in up the deck, and underlayment lies over it along eaves. The clause is written for shingles; it is the nearest published one.
    pub const IRC_OVER_EDGE_METAL: LapRule =
        LapRule { least: Length::inches(2), source: Source::published("International Residential Code", "2012 to 2021", "R905.2.8.5", Seen::Secondary) };

    /// A lap that is not soldered is at least 3 in.
    pub const UFGS_UNSOLDERED: LapRule = LapRule { least: Length::inches(3), source: Source::published("UFGS-07600", "", "3.1.6.2", Seen::Text) };

    /// A habit of the trade.
    #[must_use]
    pub const fn habit(least: Length) -> LapRule {
        LapRule { least, source: Source::CommonPractice }
    }
}

/// The least laps at every junction. What is left out of a job is as [`WaterRules::default`] has it.
///
/// ```
/// use seamwright::junction::{LapRule, WaterRules};
/// use seamwright::units::Length;
/// let strict = WaterRules { underlayment_over_metal: LapRule::habit(Length::inches(4)), ..WaterRules::default() };
/// assert!(strict.underlayment_over_metal.least > WaterRules::default().underlayment_over_metal.least);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct WaterRules {
    /// Panels over the metal that they hook or run past: an eave trim, a valley pan, the upper flange of a transition.
    pub panels_over_metal: LapRule,
    /// Metal over panels that end below it: a cap, a wall flashing, the lower flange of a transition.
    pub metal_over_panels: LapRule,
    /// Underlayment over the upper edge of metal on the deck.
    pub underlayment_over_metal: LapRule,
    /// Underlayment up past a line that it ends at: over a ridge, up a wall, under the trim of a transition.
    pub underlayment_past_line: LapRule,
}

impl Default for WaterRules {
    fn default() -> WaterRules {
        WaterRules {
            panels_over_metal: LapRule::IRC_OVER_EDGE_METAL,
            metal_over_panels: LapRule::UFGS_UNSOLDERED,
            underlayment_over_metal: LapRule::IRC_OVER_EDGE_METAL,
            underlayment_past_line: LapRule::habit(practice::UNDERLAYMENT_PAST_LINE),
        }
    }
}

impl WaterRules {
    /// Refuses laps below nothing.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange), each by its field.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (path, rule) in [
            ("panels_over_metal", &self.panels_over_metal),
            ("metal_over_panels", &self.metal_over_panels),
            ("underlayment_over_metal", &self.underlayment_over_metal),
            ("underlayment_past_line", &self.underlayment_past_line),
        ] {
            faults.keep(rule.least.not_negative("least").map_err(|e| e.under(path)));
        }
        faults.check()
    }
}
