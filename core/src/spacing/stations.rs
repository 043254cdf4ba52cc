//! The stations found, and the line that the crew works from.

use crate::error::Error;
use crate::record::Caution;
use crate::units::{Length, LengthFormat};

/// Stations along a run, in order from its start.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::spacing::{Spacing, SpacingRule};
/// use seamwright::units::Length;
/// let s = Spacing { run: Length::inches(100), end_distance: Length::inches(2), rule: SpacingRule::Equal { maximum: Length::inches(12) } };
/// let stations = s.compute()?;
/// assert_eq!(stations.count(), 9);
/// assert_eq!(stations.spacing, Some(Length::inches(12)));
/// assert_eq!(stations.positions[1], Length::inches(14));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Stations {
    /// Distance of each station from the start of the run.
    pub positions: Vec<Length>,
    /// The common spacing on centre, the first one as laid out; none where there is a single station.
    pub spacing: Option<Length>,
    /// The last spacing, where it differs from the common one.
    pub last_spacing: Option<Length>,
    /// Distance of the last station from the end of the run.
    pub last_end_distance: Length,
    /// What to know before it is built.
    pub cautions: Vec<Caution>,
}

impl Stations {
    /// How many stations there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.positions.len()
    }

    /// Distance of the first station from the start of the run.
    #[must_use]
    pub fn start(&self) -> Length {
        self.positions.first().copied().unwrap_or_default()
    }

    /// What the crew works from.
    #[must_use]
    pub fn crew(&self) -> CrewLine {
        CrewLine { start: self.start(), spacing: self.spacing, count: self.count(), last_spacing: self.last_spacing, end_distance: self.last_end_distance }
    }
}

/// Start, spacing, count and end distance: all that is needed with a tape in hand.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::spacing::{Spacing, SpacingRule};
/// use seamwright::units::{Length, LengthFormat};
/// let s = Spacing { run: Length::inches(100), end_distance: Length::inches(2), rule: SpacingRule::Equal { maximum: Length::inches(12) } };
/// let text = s.compute()?.crew().text(LengthFormat::parse("in/16")?)?;
/// assert_eq!(text, "start 2\", then 12\" on centre, 9 in all, last 2\" from the end");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct CrewLine {
    /// Distance of the first station from the start of the run.
    pub start: Length,
    /// The common spacing on centre; none where there is a single station.
    pub spacing: Option<Length>,
    /// How many stations there are.
    pub count: usize,
    /// The last spacing, where it differs from the common one.
    pub last_spacing: Option<Length>,
    /// Distance of the last station from the end of the run.
    pub end_distance: Length,
}

impl CrewLine {
    /// The line in words, lengths in this format.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) if rounding a length leaves the range.
    pub fn text(&self, format: LengthFormat) -> Result<String, Error> {
        let mut out = format!("start {}", self.start.format(format)?.as_str());
        if let Some(s) = self.spacing {
            out.push_str(&format!(", then {} on centre", s.format(format)?.as_str()));
        }
        if let Some(s) = self.last_spacing {
            out.push_str(&format!(", the last space {}", s.format(format)?.as_str()));
        }
        out.push_str(&format!(", {} in all, last {} from the end", self.count, self.end_distance.format(format)?.as_str()));
        Ok(out)
    }
}
