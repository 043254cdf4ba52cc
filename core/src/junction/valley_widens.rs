//! A valley whose open width grows downhill.

use super::draft::keep_under;
use super::parts::{LayoutLine, Solved};
use super::valley::Valley;
use super::valley_hook::ValleyHook;
use crate::error::{Error, ErrorKind, Faults};
use crate::panel::Growth;
use crate::record::{Recorder, Seen, Source, Step};
use crate::units::Length;

/// How the open width of a valley grows downhill: half of it on each side, so that each cleat line turns away from the centreline.
///
/// ```
/// use seamwright::junction::ValleyWidening;
/// use seamwright::units::Length;
/// let rule = ValleyWidening::COPPER_ROOFINGS;
/// assert_eq!(rule.growth.along(Length::feet(20))?, Length::parse("2 1/2\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ValleyWidening {
    /// By how much the open width grows, over how much of the valley.
    pub growth: Growth,
    /// Whose rule it is.
    pub source: Source,
}

impl ValleyWidening {
    /// 1 in for each 8 ft, from 4 in at the top.
    pub const COPPER_ROOFINGS: ValleyWidening = ValleyWidening {
        growth: Growth { by: Length::inches(1), over: Length::feet(8) },
        source: Source::published("Copper Roofings manual", "", "par. 29, 32", Seen::Text),
    };

    /// What one side's end is held back farther.
    pub(super) fn of_a_side(&self) -> Result<Growth, Error> {
        Ok(Growth { by: self.growth.by.station(1, 2)?, over: self.growth.over })
    }
}

impl Valley {
    pub(super) fn check_widening(&self, faults: &mut Faults) {
        if let Some(length) = self.length {
            faults.keep(length.positive("length"));
        }
        let Some(widens) = &self.detail.widens else { return };
        keep_under(faults, "detail.widens.growth", widens.growth.check());
        if self.length.is_none() {
            let fault = Error::new(ErrorKind::Missing, "a valley that widens needs its length").at("length");
            faults.add(fault.accepts("the length of the valley").cured_by("give its length, or a parallel valley"));
        }
        for (path, side) in [("detail.first.hook", &self.detail.first), ("detail.second.hook", &self.detail.second)] {
            if matches!(side.hook, ValleyHook::ReceiverFold { .. }) {
                let fault = Error::new(ErrorKind::Conflict, "a fold of a parallel pan cannot turn with the line that the panels end on").at(path);
                faults.add(fault.value_of("receiver-fold").accepts("offset-cleat").cured_by("offset cleats, or an open width that does not grow"));
            }
        }
    }

    /// The open width at the valley's lower end.
    pub(super) fn lower_open_width<R: Recorder>(&self, r: &mut R) -> Result<Option<Length>, Error> {
        let Some((widens, length)) = self.detail.widens.as_ref().zip(self.length) else { return Ok(None) };
        let width = (self.detail.open_width + widens.growth.along(length)?).length()?;
        r.step(|| {
            let step = Step::new("open width at the lower end").formula("open width + by x length / over").with("open width", self.detail.open_width);
            step.with("by", widens.growth.by).with("over", widens.growth.over).with("length", length).gives(width).source(widens.source.clone())
        });
        Ok(Some(width))
    }
}

/// The ends of a section at the valley's upper end, each held back farther down the line.
pub(super) fn grow(solved: &mut Solved, growth: Growth, lower: Vec<LayoutLine>) {
    for end in &mut solved.ends {
        end.end = end.end.clone().growing(growth);
    }
    solved.lower_lines = lower;
}
