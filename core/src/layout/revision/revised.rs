//! What a revision gives.

use super::super::lists::CutEdge;
use crate::record::Caution;
use crate::units::{Area, Length};

/// What became of a row.
///
/// ```
/// use seamwright::layout::RowState;
/// assert_eq!(RowState::New.name(), "new");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
pub enum RowState {
    /// As before.
    Kept,
    /// As before but for how many.
    Recounted,
    /// Not on the list before.
    New,
    /// No longer wanted.
    Dropped,
}

impl RowState {
    /// The name in lists.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            RowState::Kept => "kept",
            RowState::Recounted => "recounted",
            RowState::New => "new",
            RowState::Dropped => "dropped",
        }
    }
}

/// Formed pieces that serve a row.
///
/// ```
/// use seamwright::layout::FormedUse;
/// use seamwright::units::Length;
/// let cut = FormedUse { mark: "1A".into(), count: 2, cut_off: Length::inches(3), rip_off: Length::ZERO };
/// assert!(!cut.as_it_is());
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct FormedUse {
    /// The mark under which they were formed.
    pub mark: String,
    /// How many.
    pub count: u64,
    /// What is cut off each one's length.
    pub cut_off: Length,
    /// What is ripped off each one's width.
    pub rip_off: Length,
}

impl FormedUse {
    /// Whether nothing is cut.
    #[must_use]
    pub fn as_it_is(&self) -> bool {
        self.cut_off == Length::ZERO && self.rip_off == Length::ZERO
    }
}

/// A row of the list as revised.
///
/// ```
/// use seamwright::layout::{CutEdge, RevisedRow, RowState};
/// use seamwright::units::Length;
/// let row = RevisedRow {
///     plane: "south".into(), mark: "1C".into(), order: Length::feet(19), width: Length::inches(16), cut: CutEdge::None,
///     state: RowState::New, before: 0, count: 3, from_formed: vec![], to_form: 3,
/// };
/// assert_eq!(row.to_form, row.count);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct RevisedRow {
    /// The plane.
    pub plane: String,
    /// The mark: that of the list before wherever there is one, and else one that was never used.
    pub mark: String,
    /// The order length.
    pub order: Length,
    /// The width that a piece covers.
    pub width: Length,
    /// Which edge is cut.
    pub cut: CutEdge,
    /// What became of it.
    pub state: RowState,
    /// How many there were.
    pub before: u64,
    /// How many there are.
    pub count: u64,
    /// Formed pieces that serve it, those that are used as they are first.
    pub from_formed: Vec<FormedUse>,
    /// How many are still to be formed.
    pub to_form: u64,
}

/// Formed pieces that serve nothing.
///
/// ```
/// use seamwright::layout::VoidRow;
/// use seamwright::units::Length;
/// let void = VoidRow { mark: "1B".into(), order: Length::feet(9), width: Length::inches(16), count: 1 };
/// assert_eq!(void.count, 1);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct VoidRow {
    /// The mark under which they were formed.
    pub mark: String,
    /// Their order length.
    pub order: Length,
    /// The width that they cover.
    pub width: Length,
    /// How many.
    pub count: u64,
}

/// A revised list.
///
/// ```
/// use seamwright::layout::{CutEdge, FormedRow, ListRow, Revision, RowState};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let row = |mark: &str, feet, count| {
///     ListRow { plane: "south".into(), mark: mark.into(), order: Length::feet(feet), width: Length::inches(16), cut: CutEdge::None, count }
/// };
/// // Two panels become a foot shorter; five of the twelve are formed already.
/// let revised = Revision {
///     before: vec![row("1A", 20, 12)], now: vec![row("1A", 20, 3), row("1B", 19, 9)],
///     formed: vec![FormedRow { mark: "1A".into(), count: 5 }], between_planes: false,
/// }
/// .compute()?;
/// assert_eq!(revised.rows[0].state, RowState::Recounted);
/// assert_eq!((revised.rows[0].to_form, revised.rows[1].to_form), (0, 7)); // two are cut down
/// assert_eq!((revised.rows[1].mark.as_str(), revised.rows[1].from_formed[0].cut_off), ("1B", Length::feet(1)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Revised {
    /// The rows, those of the list now in its order and then those that are dropped.
    pub rows: Vec<RevisedRow>,
    /// Formed pieces that serve nothing.
    pub void: Vec<VoidRow>,
    /// What is still to be formed, all lengths together.
    pub to_form: Length,
    /// What is formed and serves nothing: offcuts and void pieces, by the width that they cover. No other use of the formed pieces leaves less.
    pub scrap: Area,
    /// What to know before anything is cut down.
    pub cautions: Vec<Caution>,
}
