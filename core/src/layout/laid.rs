//! What a layout gives.

use crate::record::Caution;
use crate::roof::Point;
use crate::units::{Angle, Area, Length, Mass};

/// A stretch of one edge that ends a panel, as seen in the plane.
///
/// ```
/// # use seamwright::layout::{EdgeUse, Layout, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// // A line that rises 16 in over the panel's 16 in.
/// let outline = Outline::new(vec![p(0, 0), p(16, 0), p(16, 116), p(0, 100)], vec![])?;
/// let laid = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?.compute()?;
/// assert_eq!(laid.panels[0].upper[0].skew.degrees(), 45.0);
/// assert_eq!(laid.panels[0].lower[0].meeting().degrees(), 90.0);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EndPart {
    /// The edge, in the order of [`Outline::edges`](crate::roof::Outline::edges).
    pub edge: usize,
    /// Its left end, on the junction line.
    pub left: Point,
    /// Its right end, on the junction line.
    pub right: Point,
    /// The skew cut, from square: positive where the line rises to the right, or, where the hold-back grows along the line, the line on which the panels end.
    /// The meeting angle is 90 degrees less its amount.
    pub skew: Angle,
}

impl EndPart {
    /// The angle between the seams and the line: 90 degrees is square.
    #[must_use]
    pub fn meeting(&self) -> Angle {
        Angle::of_degrees(90.0 - self.skew.degrees().abs())
    }
}

/// One panel as laid. Lengths are along the seams; sides are as seen from below the plane, looking up it.
///
/// ```
/// # use seamwright::layout::{EdgeUse, Layout, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// let outline = Outline::new(vec![p(0, 0), p(20, 0), p(20, 100), p(0, 100)], vec![])?;
/// let laid = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?.compute()?;
/// let rip = &laid.panels[1];
/// assert_eq!((rip.width, rip.left_on_seam, rip.right_on_seam), (Length::inches(4), true, false));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LaidPanel {
    /// Its strip, from the left, from 0.
    pub strip: usize,
    /// Its run in the strip, from the foot, from 0.
    pub run: usize,
    /// The x of its left side.
    pub left: Length,
    /// The x of its right side.
    pub right: Length,
    /// How wide it covers; less than the coverage where it is ripped.
    pub width: Length,
    /// Whether its left side is a seam; else it is ripped there or ends in a point.
    pub left_on_seam: bool,
    /// Whether its right side is a seam.
    pub right_on_seam: bool,
    /// The lines that end it below, from left to right.
    pub lower: Vec<EndPart>,
    /// The lines that end it above, from left to right.
    pub upper: Vec<EndPart>,
    /// Finished length along its left side; `None` where nothing is left of it there.
    pub left_length: Option<Length>,
    /// Finished length along its right side; `None` where nothing is left of it there.
    pub right_length: Option<Length>,
    /// The greatest finished length over its width.
    pub finished: Length,
    /// The upright extent of the finished panel.
    pub blank: Length,
    /// The length to order, of each piece.
    pub order: Length,
    /// Pieces, lapped at their ends; 1 for a panel in one length.
    pub pieces: u32,
    /// Its group, which has its mark.
    pub group: usize,
    /// The area of the plane that it covers, between the junction lines.
    pub covered: Area,
    /// Whether an opening or a notch is cut out of it, or its end steps.
    pub notched: bool,
    /// What is cut out of it between its lowest and its highest line. A step of an end is none: `lower` and `upper` hold it.
    pub notches: Vec<Notch>,
    /// Whether both its ends pin it.
    pub pinned_twice: bool,
}

/// What is cut out of a panel between its ends: an opening within its width, or what lies beside an arm of the plane.
///
/// Points are on the junction lines; how far the metal ends from them is told by the [`PanelEnd`](crate::panel::PanelEnd) of each edge.
///
/// ```
/// # use seamwright::layout::{EdgeUse, Layout, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// // A pipe's curb of 4 in, 6 in from the left seam, 40 in up.
/// let hole = vec![p(6, 40), p(10, 40), p(10, 44), p(6, 44)];
/// let outline = Outline::new(vec![p(0, 0), p(16, 0), p(16, 100), p(0, 100)], vec![hole])?;
/// let laid = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?.compute()?;
/// let notch = &laid.panels[0].notches[0];
/// assert_eq!((notch.lower[0].left, notch.upper[0].right), (p(6, 40), p(10, 44)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Notch {
    /// The lines that bound it below, from left to right: the panel's metal ends upward there.
    pub lower: Vec<EndPart>,
    /// The lines that bound it above, from left to right.
    pub upper: Vec<EndPart>,
}

/// Panels of one order length and one width.
///
/// ```
/// # use seamwright::layout::{EdgeUse, Layout, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// let outline = Outline::new(vec![p(0, 0), p(36, 0), p(36, 100), p(0, 100)], vec![])?;
/// let laid = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?.compute()?;
/// let a = &laid.groups[0];
/// assert_eq!((a.mark.as_str(), a.count, a.order, a.width), ("A", 2, Length::inches(100), Length::inches(16)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Group {
    /// The mark: A for the longest, then B and so on.
    pub mark: String,
    /// The order length.
    pub order: Length,
    /// The width that they cover.
    pub width: Length,
    /// How many pieces.
    pub count: u64,
    /// Their order lengths together.
    pub total: Length,
}

/// The coil that all panels take.
///
/// ```
/// # use seamwright::layout::{EdgeUse, Layout, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// let outline = Outline::new(vec![p(0, 0), p(32, 0), p(32, 100), p(0, 100)], vec![])?;
/// let laid = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?.compute()?;
/// assert_eq!((laid.coil.length, laid.coil.width), (Length::inches(200), Length::parse("18 3/4\"")?));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Coil {
    /// Its width: the panel's developed width. Ripped panels are cut from it too.
    pub width: Length,
    /// Its length: all order lengths together.
    pub length: Length,
    /// Its area.
    pub area: Area,
    /// Its mass, if the sheet's is known.
    pub mass: Option<Mass>,
}

/// A plane with its panels laid.
///
/// ```
/// # use seamwright::layout::{EdgeUse, Layout, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// let outline = Outline::new(vec![p(0, 0), p(32, 0), p(32, 100), p(0, 100)], vec![])?;
/// let laid = Layout::new(outline, panel, Start::CentreSeam, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?.compute()?;
/// assert_eq!(laid.seams, [Length::ZERO, Length::inches(16), Length::inches(32)]);
/// assert_eq!(laid.mark_of(&laid.panels[1]), Some("A"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LaidPlane {
    /// The panels, strip by strip from the left, in a strip from the foot up.
    pub panels: Vec<LaidPanel>,
    /// The grouped length list, the longest first, at one length the widest first.
    pub groups: Vec<Group>,
    /// The x of every seam line within the outline's bounds, its edges among them where a seam falls there.
    pub seams: Vec<Length>,
    /// The coil.
    pub coil: Coil,
    /// The area that the panels cover, between the junction lines.
    pub covered: Area,
    /// The area of the parts that get no panel, because hold-backs leave nothing of it.
    pub uncovered: Area,
    /// What to know before metal is formed.
    pub cautions: Vec<Caution>,
}

impl LaidPlane {
    /// The mark of a panel of this plane.
    #[must_use]
    pub fn mark_of(&self, panel: &LaidPanel) -> Option<&str> {
        self.groups.get(panel.group).map(|g| g.mark.as_str())
    }
}

/// The mark of this number: A to Z, then AA and so on.
///
/// ```
/// use seamwright::layout::mark;
/// assert_eq!((mark(0), mark(25), mark(26), mark(702)), ("A".into(), "Z".into(), "AA".into(), "AAA".into()));
/// ```
#[must_use]
pub fn mark(number: usize) -> String {
    let mut letters = Vec::new();
    let mut rest = number;
    loop {
        letters.push(u8::try_from(rest % 26).map_or('?', |d| char::from(b'A' + d)));
        rest /= 26;
        if rest == 0 {
            return letters.iter().rev().collect();
        }
        rest -= 1;
    }
}
