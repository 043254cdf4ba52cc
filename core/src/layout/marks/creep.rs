//! How panels creep, as given and as it is checked on the roof.

use super::super::placing::PlaneSide;
use crate::error::{Error, ErrorKind, Faults};
use crate::units::{Length, TapeReading};

/// What a panel may be wider or narrower than its coverage as it is laid, and how often the crew looks.
///
/// ```
/// use seamwright::layout::Creep;
/// use seamwright::units::Length;
/// let creep = Creep { each: Length::parse("1/32\"")?, every: 10, pull: None, meets_within: None };
/// assert_eq!(creep.every, 10);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Creep {
    /// Plus or minus, a panel.
    pub each: Length,
    /// After how many panels the crew checks against a mark.
    pub every: u32,
    /// The most that one panel can be pulled by to recover; none where nobody knows.
    #[cfg_attr(feature = "serde", serde(default))]
    pub pull: Option<Length>,
    /// For a plane that shares its datum with another: how far apart their seams may be where they should meet.
    #[cfg_attr(feature = "serde", serde(default))]
    pub meets_within: Option<Length>,
}

impl Creep {
    pub(crate) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.each.not_negative("each"));
        if self.every == 0 {
            faults.add(Error::new(ErrorKind::OutOfRange, "after no panel there is nothing to check").at("every").value_of(0).accepts("1 or more"));
        }
        for (path, length) in [("pull", self.pull), ("meets_within", self.meets_within)] {
            faults.keep(length.map_or(Ok(Length::ZERO), |l| l.not_negative(path)));
        }
        faults.check()
    }
}

/// A mark that the crew checks against.
///
/// ```
/// # use seamwright::layout::{Creep, EdgeUse, Layout, MarkFrom, SeamMarks, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::{Length, Rounding, ShopRounding};
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// # let outline = Outline::new(vec![p(0, 0), p(400, 0), p(400, 100), p(0, 100)], vec![])?;
/// # let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// # let tape = ShopRounding::new(Length::parse("1/16\"")?, Rounding::HalfAway)?;
/// let creep = Creep { each: Length::parse("1/32\"")?, every: 10, pull: None, meets_within: None };
/// let marked = SeamMarks { layout, from: MarkFrom::Left, tape, creep: Some(creep) }.compute()?;
/// // 25 panels: after the second check five are left to recover in.
/// assert_eq!(marked.checks[1].pull, Length::parse("1/16\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CreepCheck {
    /// Which way from the datum.
    pub toward: PlaneSide,
    /// After how many panels from the datum.
    pub panels: u32,
    /// The x of the seam.
    pub x: Length,
    /// From the datum, across the slope.
    pub across: TapeReading,
    /// How far off the seam may be here if every mark before was recovered: plus or minus.
    pub allowed: Length,
    /// How far off it may be if nobody ever looked.
    pub unchecked: Length,
    /// Panels from here to the next mark, or to the end.
    pub recover_over: u32,
    /// What each of those is pulled by to be right again at the next mark.
    pub pull: Length,
}
