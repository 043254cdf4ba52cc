//! A list as the revision reads it, and what is formed already.

use super::super::laid::Group;
use super::super::lists::{CutEdge, ListGroup};
use crate::units::Length;

/// One row of a length list.
///
/// ```
/// use seamwright::layout::{CutEdge, ListRow};
/// use seamwright::units::Length;
/// let row = ListRow { plane: "south".into(), mark: "1A".into(), order: Length::feet(20), width: Length::inches(16), cut: CutEdge::None, count: 12 };
/// assert_eq!(row.count, 12);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ListRow {
    /// The plane.
    pub plane: String,
    /// The mark.
    pub mark: String,
    /// The order length.
    pub order: Length,
    /// The width that a piece covers.
    pub width: Length,
    /// Which edge is cut.
    #[cfg_attr(feature = "serde", serde(default))]
    pub cut: CutEdge,
    /// How many pieces.
    pub count: u64,
}

impl ListRow {
    /// A row of a plane's list.
    #[must_use]
    pub fn of(plane: &str, group: &ListGroup) -> ListRow {
        ListRow { plane: plane.to_owned(), mark: group.mark.clone(), order: group.order, width: group.width, cut: group.cut, count: group.count }
    }

    /// A row of a layout's groups, which do not tell the two sides of a plane apart: what covers less than a panel counts as cut at both edges, so that it is
    /// used again only as it is or shorter.
    #[must_use]
    pub fn of_group(plane: &str, group: &Group, coverage: Length) -> ListRow {
        let cut = if group.width == coverage { CutEdge::None } else { CutEdge::Both };
        ListRow { plane: plane.to_owned(), mark: group.mark.clone(), order: group.order, width: group.width, cut, count: group.count }
    }
}

/// Pieces that are formed.
///
/// ```
/// use seamwright::layout::FormedRow;
/// let formed = FormedRow { mark: "1A".into(), count: 5 };
/// assert_eq!(formed.count, 5);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct FormedRow {
    /// The mark under which they were formed, as the list before has it.
    pub mark: String,
    /// How many of them.
    pub count: u64,
}
