//! A valley whose open width grows downhill.

use super::draft::keep_under;
use super::parts::Solved;
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
    /// What the pan does.
    #[cfg_attr(feature = "serde", serde(default))]
    pub pan: WideningPan,
}

/// What the pan of a valley does whose open width grows.
///
/// ```
/// use seamwright::junction::WideningPan;
/// assert_eq!(WideningPan::default(), WideningPan::Parallel);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum WideningPan {
    /// It is one profile all along, as wide as its lower end needs; only cleats can turn with the line on it.
    #[default]
    Parallel,
    /// It widens with the open width: each leg is what is asked for at the valley's top and grows by half of it, and its edges, its hems and its receiver folds turn with
    /// the line that the panels end on. Its pieces are tapered, each with a blank of its own.
    Tapered,
}

impl ValleyWidening {
    /// 1 in for each 8 ft, from 4 in at the top.
    pub const COPPER_ROOFINGS: ValleyWidening = ValleyWidening {
        growth: Growth { by: Length::inches(1), over: Length::feet(8) },
        source: Source::published("Copper Roofings manual", "", "par. 29, 32", Seen::Text),
        pan: WideningPan::Parallel,
    };

    /// How each edge of a tapered pan goes out farther; nothing of a parallel one.
    pub(crate) fn of_the_pan(&self) -> Result<Option<Growth>, Error> {
        if self.pan == WideningPan::Tapered { self.of_a_side().map(Some) } else { Ok(None) }
    }

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
            if widens.pan == WideningPan::Parallel && matches!(side.hook, ValleyHook::ReceiverFold { .. }) {
                let fault = Error::new(ErrorKind::Conflict, "a fold of a parallel pan cannot turn with the line that the panels end on").at(path);
                let fault = fault.value_of("receiver-fold").accepts("offset-cleat, or a tapered pan");
                faults.add(fault.cured_by("a tapered pan, offset cleats, or an open width that does not grow"));
            }
        }
    }

    /// The valley as a parallel one at its lower end.
    pub(super) fn at_its_foot<R: Recorder>(&self, r: &mut R) -> Result<Option<Valley>, Error> {
        let Some((widens, length)) = self.detail.widens.as_ref().zip(self.length) else { return Ok(None) };
        let width = (self.detail.open_width + widens.growth.along(length)?).length()?;
        r.step(|| {
            let step = Step::new("open width at the lower end").formula("open width + by x length / over").with("open width", self.detail.open_width);
            step.with("by", widens.growth.by).with("over", widens.growth.over).with("length", length).gives(width).source(widens.source.clone())
        });
        let mut foot = self.clone();
        (foot.length, foot.detail.widens, foot.detail.open_width) = (None, None, width);
        if widens.pan == WideningPan::Tapered {
            let wider = widens.of_a_side()?.along(length)?;
            for (name, side) in [("leg of side 1 at the lower end", &mut foot.detail.first), ("leg of side 2 at the lower end", &mut foot.detail.second)] {
                let leg = (side.leg + wider).length()?;
                r.step(|| Step::new(name).formula("leg + half of what the open width grows").with("leg", side.leg).with("half", wider).gives(leg));
                side.leg = leg;
            }
        }
        Ok(Some(foot))
    }
}

/// The ends of a section at the valley's upper end, each held back farther down the line; and what lies elsewhere at its lower end.
pub(super) fn grow(solved: &mut Solved, growth: Growth, foot: Solved) {
    for end in &mut solved.ends {
        end.end = end.end.clone().growing(growth);
    }
    (solved.lower_lines, solved.lower_trims) = (foot.lines, foot.trims);
}
