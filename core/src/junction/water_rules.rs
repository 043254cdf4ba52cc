//! The least laps of a path of water, each with its source.

use super::least::LeastRule;
use crate::error::{Error, Faults};

/// The least laps at every junction. What is left out of a job is as [`WaterRules::default`] has it.
///
/// ```
/// use seamwright::junction::{LeastRule, WaterRules};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let strict = WaterRules { underlayment_over_metal: LeastRule::given("lap over metal", Length::inches(4), Source::CommonPractice), ..WaterRules::default() };
/// assert!(strict.underlayment_over_metal.least > WaterRules::default().underlayment_over_metal.least);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct WaterRules {
    /// Panels over the metal that they hook or run past: an eave trim, a valley pan, the upper flange of a transition.
    pub panels_over_metal: LeastRule,
    /// Metal over panels that end below it: a cap, a wall flashing, the lower flange of a transition.
    pub metal_over_panels: LeastRule,
    /// Underlayment over the upper edge of metal on the deck.
    pub underlayment_over_metal: LeastRule,
    /// Underlayment up past a line that it ends at: over a ridge, up a wall, under the trim of a transition.
    pub underlayment_past_line: LeastRule,
}

impl Default for WaterRules {
    fn default() -> WaterRules {
        WaterRules {
            panels_over_metal: LeastRule::IRC_OVER_EDGE_METAL,
            metal_over_panels: LeastRule::UFGS_UNSOLDERED,
            underlayment_over_metal: LeastRule::IRC_OVER_EDGE_METAL,
            underlayment_past_line: LeastRule::UNDERLAYMENT_PAST_LINE,
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
