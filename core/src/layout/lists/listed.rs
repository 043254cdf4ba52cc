//! What a list holds.

use super::super::laid::{Coil, Group};
use super::super::placing::LayDirection;
use crate::record::Caution;
use crate::units::{Area, Length, Mass};

/// Which sides of a piece are cut away, and with them the leg that the next panel would close on.
///
/// ```
/// use seamwright::layout::CutEdge;
/// assert_eq!(CutEdge::of(true, false), CutEdge::Right);
/// assert_eq!(CutEdge::Right.mirrored(), CutEdge::Left);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum CutEdge {
    /// A whole panel.
    #[default]
    None,
    /// The left side is cut.
    Left,
    /// The right side is cut.
    Right,
    /// Both are.
    Both,
}

impl CutEdge {
    /// From whether each side is a seam.
    #[must_use]
    pub const fn of(left_on_seam: bool, right_on_seam: bool) -> CutEdge {
        match (left_on_seam, right_on_seam) {
            (true, true) => CutEdge::None,
            (false, true) => CutEdge::Left,
            (true, false) => CutEdge::Right,
            (false, false) => CutEdge::Both,
        }
    }

    /// That of the mirrored panel.
    #[must_use]
    pub const fn mirrored(self) -> CutEdge {
        match self {
            CutEdge::Left => CutEdge::Right,
            CutEdge::Right => CutEdge::Left,
            other => other,
        }
    }

    /// The name in lists.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            CutEdge::None => "whole",
            CutEdge::Left => "left edge cut",
            CutEdge::Right => "right edge cut",
            CutEdge::Both => "both edges cut",
        }
    }
}

/// One piece, in the order of laying.
///
/// ```
/// # use seamwright::layout::{EdgeUse, LayDirection, Layout, ListChoices, PanelList, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// # let outline = Outline::new(vec![p(0, 0), p(40, 0), p(40, 100), p(0, 100)], vec![])?;
/// let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let list = PanelList { layout, choices: ListChoices::laid(LayDirection::RightToLeft) }.compute()?;
/// // The rip at the right is laid first.
/// assert_eq!((list.pieces[0].number, list.pieces[0].panel, list.mark_of(0)), (1, 2, Some("B")));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ListedPiece {
    /// The panel's number in the order of laying, from 1.
    pub number: usize,
    /// The panel, in [`LaidPlane::panels`](crate::layout::LaidPlane::panels).
    pub panel: usize,
    /// The piece of the panel from the foot, from 1.
    pub piece: u32,
    /// From the lowest point of the plane's outline to the piece's lower end, along the seams; less than zero where it hangs over.
    pub low: Length,
    /// Its own order length.
    pub own: Length,
    /// The length that it is formed to: its group's.
    pub order: Length,
    /// Its group.
    pub group: usize,
    /// Its pair, where it shares a blank.
    pub pair: Option<usize>,
    /// Its bundle, where there are bundles.
    pub bundle: Option<usize>,
}

/// Pieces of one order length, width and cut edge.
///
/// ```
/// use seamwright::layout::{CutEdge, ListGroup};
/// use seamwright::units::Length;
/// let l = Length::inches(100);
/// let group = ListGroup { mark: "A".into(), order: l, width: Length::inches(16), cut: CutEdge::None, count: 1, total: l };
/// assert_eq!(group.plain().total, l);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ListGroup {
    /// The mark.
    pub mark: String,
    /// The order length.
    pub order: Length,
    /// The width that they cover.
    pub width: Length,
    /// Which edge is cut.
    pub cut: CutEdge,
    /// How many pieces.
    pub count: u64,
    /// Their order lengths together.
    pub total: Length,
}

impl ListGroup {
    /// The same without its cut edge.
    #[must_use]
    pub fn plain(&self) -> Group {
        Group { mark: self.mark.clone(), order: self.order, width: self.width, count: self.count, total: self.total }
    }
}

/// Two skew pieces from one blank. The cut between them is both ends at once, so the blank is shorter than the two by the drop over one coverage.
///
/// ```
/// use seamwright::layout::BlankPair;
/// use seamwright::units::Length;
/// let pair = BlankPair { below: 0, above: 3, blank: Length::inches(192), saved: Length::inches(8) };
/// assert!(pair.saved.is_positive());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BlankPair {
    /// The piece whose upper end is skew, in [`ListedPlane::pieces`].
    pub below: usize,
    /// The piece whose lower end is skew.
    pub above: usize,
    /// The length of the blank.
    pub blank: Length,
    /// What it saves beside two blanks.
    pub saved: Length,
}

/// A bundle, opened from the top in the order of its pieces.
///
/// ```
/// use seamwright::layout::Bundle;
/// use seamwright::units::Length;
/// let bundle = Bundle { number: 1, pieces: vec![0, 1], length: Length::feet(20), mass: None };
/// assert_eq!(bundle.pieces.len(), 2);
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Bundle {
    /// Its number in the order in which the crew opens them, from 1.
    pub number: usize,
    /// Its pieces from the top, in [`ListedPlane::pieces`].
    pub pieces: Vec<usize>,
    /// Its longest piece.
    pub length: Length,
    /// Its mass, every piece at the full width of the coil, where the sheet's is known.
    pub mass: Option<Mass>,
}

/// Where the coil goes that covers nothing. The four parts are together exactly the coil less what is covered.
///
/// ```
/// # use seamwright::layout::{EdgeUse, LayDirection, Layout, ListChoices, PanelList, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::{AreaUnit, Length};
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// # let outline = Outline::new(vec![p(0, 0), p(24, 0), p(24, 100), p(0, 100)], vec![])?;
/// let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::overhang(Length::inches(1))))?;
/// let waste = PanelList { layout, choices: ListChoices::laid(LayDirection::LeftToRight) }.compute()?.waste;
/// // Two panels of 102 in: 8 in ripped off one, 2 3/4 in of each in its legs, 2 in beyond the lines over 24 in.
/// assert!((waste.rips.get(AreaUnit::SquareInch) - 816.0).abs() < 1e-9);
/// assert!((waste.seams.get(AreaUnit::SquareInch) - 561.0).abs() < 1e-9);
/// assert!((waste.ends.get(AreaUnit::SquareInch) - 48.0).abs() < 1e-9);
/// assert!(waste.skew_cuts.get(AreaUnit::SquareInch).abs() < 1e-9);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Waste {
    /// The coil.
    pub coil: Area,
    /// What panels cover of the plane, between the junction lines.
    pub covered: Area,
    /// The legs of the seams: developed width less coverage.
    pub seams: Area,
    /// Ripped off beside the width that is covered.
    pub rips: Area,
    /// Cut off between the lowest and the highest point of the junction lines: skew ends, openings, notches; less what pairs save.
    pub skew_cuts: Area,
    /// Beyond those lines: folds, turn-ups, overhangs, laps, field trim and rounding, less hold-backs. It may be less than zero.
    pub ends: Area,
}

/// The list of a plane.
///
/// ```
/// # use seamwright::layout::{BundleLimits, EdgeUse, LayDirection, Layout, ListChoices, PanelList, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// # let outline = Outline::new(vec![p(0, 0), p(80, 0), p(80, 100), p(0, 100)], vec![])?;
/// let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let bundles = Some(BundleLimits { count: Some(2), ..BundleLimits::default() });
/// let list = PanelList { layout, choices: ListChoices { bundles, ..ListChoices::laid(LayDirection::LeftToRight) } }.compute()?;
/// assert_eq!(list.bundles.iter().map(|b| b.pieces.len()).collect::<Vec<_>>(), [2, 2, 1]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ListedPlane {
    /// The way in which panels follow each other.
    pub direction: LayDirection,
    /// Every piece, in the order of laying: strip by strip, in a strip from the foot up.
    pub pieces: Vec<ListedPiece>,
    /// The grouped list, in the order of its marks.
    pub groups: Vec<ListGroup>,
    /// Pairs from one blank.
    pub pairs: Vec<BlankPair>,
    /// Bundles, in the order in which the crew opens them.
    pub bundles: Vec<Bundle>,
    /// The coil.
    pub coil: Coil,
    /// Where the coil goes that covers nothing.
    pub waste: Waste,
    /// What to know before metal is formed.
    pub cautions: Vec<Caution>,
}

impl ListedPlane {
    /// The mark of a piece.
    #[must_use]
    pub fn mark_of(&self, piece: usize) -> Option<&str> {
        self.groups.get(self.pieces.get(piece)?.group).map(|g| g.mark.as_str())
    }
}
