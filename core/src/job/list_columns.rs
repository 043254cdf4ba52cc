//! The columns of a panel list, as the caller chooses, orders and names them.

use crate::error::{Error, ErrorKind, Faults};
use crate::units::LengthFormat;
use std::borrow::Cow;

/// What a column of a panel list holds. Each length says its own format.
///
/// A grouped list has a row for each mark; the columns from [`Panel`](ListField::Panel) on are of the list of pieces.
///
/// ```
/// use seamwright::job::ListField;
/// use seamwright::units::LengthFormat;
/// assert_ne!(ListField::OrderLength(LengthFormat::parse("ft-in/16")?), ListField::OrderLength(LengthFormat::parse("mm.0")?));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum ListField {
    /// The plane that the group is laid on.
    Plane,
    /// The group's mark.
    Mark,
    /// How many pieces.
    Count,
    /// The order length of one piece.
    OrderLength(LengthFormat),
    /// The width that a piece covers.
    Width(LengthFormat),
    /// The order lengths of the group together.
    Total(LengthFormat),
    /// Which edge is cut; empty where the list does not tell.
    Edge,
    /// The panel's number in the order of laying.
    Panel,
    /// The piece of the panel, from the foot.
    Piece,
    /// The piece's own length, before lengths are brought together.
    OwnLength(LengthFormat),
    /// From the foot of the plane to the piece's lower end.
    Low(LengthFormat),
    /// The bundle; empty where there are none.
    Bundle,
    /// The number of the blank that two pieces share; empty for a blank of its own.
    Blank,
    /// The panel's finished length along its left side, as the crew measures it before laps; empty where nothing is left of it there.
    LeftSeam(LengthFormat),
    /// The panel's finished length along its right side.
    RightSeam(LengthFormat),
}

impl ListField {
    /// Whether only the list of pieces has it.
    #[must_use]
    pub const fn is_of_pieces(self) -> bool {
        matches!(
            self,
            ListField::Panel
                | ListField::Piece
                | ListField::OwnLength(_)
                | ListField::Low(_)
                | ListField::Bundle
                | ListField::Blank
                | ListField::LeftSeam(_)
                | ListField::RightSeam(_)
        )
    }
}

/// A column of a panel list under the caller's heading.
///
/// ```
/// use seamwright::job::{ListColumn, ListField};
/// let pieces = ListColumn { heading: "pieces".into(), field: ListField::Count };
/// assert_eq!(pieces.heading, "pieces");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ListColumn {
    /// The heading, as it is written in the first row.
    pub heading: Cow<'static, str>,
    /// What stands below it.
    pub field: ListField,
}

/// Whether these are columns.
pub(crate) fn check_columns(columns: &[ListColumn]) -> Result<(), Error> {
    if columns.is_empty() {
        return Err(Error::new(ErrorKind::Missing, "no columns").at("columns").accepts("one column or more"));
    }
    let mut faults = Faults::default();
    for (i, column) in columns.iter().enumerate() {
        if columns.iter().take(i).any(|other| other.heading == column.heading) {
            faults.add(
                Error::new(ErrorKind::Conflict, "a heading is given twice")
                    .at(format!("columns[{i}].heading"))
                    .value_of(&column.heading)
                    .accepts("headings that differ"),
            );
        }
    }
    faults.check()
}
