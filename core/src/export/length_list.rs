//! The grouped length list as CSV, for the roll former and the order.

use crate::error::{Error, ErrorKind, Faults};
use crate::layout::Group;
use crate::units::{Length, LengthFormat};
use std::borrow::Cow;

/// What a column of a length list holds. Each length says its own format.
///
/// ```
/// use seamwright::export::ListField;
/// use seamwright::units::LengthFormat;
/// assert_ne!(ListField::OrderLength(LengthFormat::parse("ft-in/16")?), ListField::OrderLength(LengthFormat::parse("mm.0")?));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
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
}

/// A column of a length list under the caller's heading.
///
/// ```
/// use seamwright::export::{ListColumn, ListField};
/// let pieces = ListColumn { heading: "pieces".into(), field: ListField::Count };
/// assert_eq!(pieces.heading, "pieces");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ListColumn {
    /// The heading, as it is written in the first row.
    pub heading: Cow<'static, str>,
    /// What stands below it.
    pub field: ListField,
}

/// Groups of panels, each with its plane's name, as CSV after RFC 4180: a row of headings, then a row a group, with the columns and in the order that the caller gives.
///
/// ```
/// use seamwright::export::{ListColumn, ListField, length_list_csv};
/// use seamwright::layout::Group;
/// use seamwright::units::{Length, LengthFormat};
/// let group = Group { mark: "A".into(), order: Length::inches(147), width: Length::inches(16), count: 12, total: Length::inches(1764) };
/// let columns = [
///     ListColumn { heading: "pieces".into(), field: ListField::Count },
///     ListColumn { heading: "length".into(), field: ListField::OrderLength(LengthFormat::parse("ft-in/16")?) },
///     ListColumn { heading: "length, mm".into(), field: ListField::OrderLength(LengthFormat::parse("mm.1")?) },
/// ];
/// let csv = length_list_csv([("south", &group)], &columns)?;
/// assert_eq!(String::from_utf8(csv).unwrap(), "pieces,length,\"length, mm\"\r\n12,\"12'-3\"\"\",3733.8 mm\r\n");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
///
/// # Errors
/// [`ErrorKind::Missing`] for no columns, [`ErrorKind::Conflict`] for a heading given twice; [`ErrorKind::Overflow`] where a length cannot be rounded to its
/// format. Every fault is reported.
pub fn length_list_csv<'a>(groups: impl IntoIterator<Item = (&'a str, &'a Group)>, columns: &[ListColumn]) -> Result<Vec<u8>, Error> {
    check(columns)?;
    let mut out = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    out.write_record(columns.iter().map(|c| c.heading.as_bytes())).map_err(unwritten)?;
    let mut faults = Faults::default();
    for (i, (plane, group)) in groups.into_iter().enumerate() {
        let mut row = Vec::with_capacity(columns.len());
        for column in columns {
            row.extend(faults.keep(cell(plane, group, column.field).map_err(|e| e.under(&format!("groups[{i}]")))));
        }
        // A row with a fault is not written, and then neither is the list.
        if row.len() == columns.len() {
            out.write_record(&row).map_err(unwritten)?;
        }
    }
    faults.check()?;
    out.into_inner().map_err(|e| Error::new(ErrorKind::Internal, "the list could not be written").value_of(e.error()))
}

fn check(columns: &[ListColumn]) -> Result<(), Error> {
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

fn cell(plane: &str, group: &Group, field: ListField) -> Result<String, Error> {
    let text = |length: Length, format: LengthFormat, name: &str| format.string(length).map_err(|e| e.at(name));
    match field {
        ListField::Plane => Ok(plane.to_owned()),
        ListField::Mark => Ok(group.mark.clone()),
        ListField::Count => Ok(group.count.to_string()),
        ListField::OrderLength(format) => text(group.order, format, "order"),
        ListField::Width(format) => text(group.width, format, "width"),
        ListField::Total(format) => text(group.total, format, "total"),
    }
}

#[allow(clippy::needless_pass_by_value, reason = "the shape that map_err asks for")]
fn unwritten(error: csv::Error) -> Error {
    Error::new(ErrorKind::Internal, "the list could not be written").value_of(error)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn groups() -> Vec<Group> {
        let group = |mark: &str, order: Length, count: u64| Group {
            mark: mark.into(),
            order,
            width: Length::inches(16),
            count,
            total: (order * i32::try_from(count).unwrap()).length().unwrap(),
        };
        vec![group("A", Length::parse("30' 4 1/2\"").unwrap(), 3), group("B,\"x\"", Length::parse("7 m").unwrap(), 11)]
    }

    fn of(groups: &[Group]) -> impl Iterator<Item = (&str, &Group)> {
        groups.iter().map(|g| ("south", g))
    }

    fn column(heading: &'static str, field: ListField) -> ListColumn {
        ListColumn { heading: heading.into(), field }
    }

    #[test]
    fn a_reader_finds_what_was_written() {
        let inch = LengthFormat::parse("ft-in/16").unwrap();
        let columns = [
            column("Total", ListField::Total(LengthFormat::EXACT)),
            column("Stück", ListField::Count),
            column("mark", ListField::Mark),
            column("width", ListField::Width(LengthFormat::parse("in.2").unwrap())),
            column("length \"ft\"\nand in", ListField::OrderLength(inch)),
        ];
        let bytes = length_list_csv(of(&groups()), &columns).unwrap();
        assert_eq!(bytes, length_list_csv(of(&groups()), &columns).unwrap());
        let mut reader = csv::Reader::from_reader(bytes.as_slice());
        let headings: Vec<String> = reader.headers().unwrap().iter().map(str::to_owned).collect();
        assert_eq!(headings, columns.iter().map(|c| c.heading.to_string()).collect::<Vec<_>>());
        let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
        assert_eq!(rows.len(), 2);
        assert_eq!(rows[0].iter().collect::<Vec<_>>(), ["27774.9 mm", "3", "A", "16.00 in", "30'-4 1/2\""]);
        assert_eq!(rows[1].get(2), Some("B,\"x\""));
        // What a length column says reads back as the length.
        assert_eq!(Length::parse(rows[0].get(4).unwrap()).unwrap(), groups()[0].order);
        assert_eq!(Length::parse(rows[1].get(0).unwrap()).unwrap(), groups()[1].total);
    }

    #[test]
    fn an_empty_layout_still_has_its_headings() {
        assert_eq!(length_list_csv([], &[column("mark", ListField::Mark)]).unwrap(), b"mark\r\n");
    }

    #[test]
    fn no_columns_and_equal_headings_are_refused() {
        assert_eq!(length_list_csv(of(&groups()), &[]).unwrap_err().kind(), ErrorKind::Missing);
        let twice = [column("n", ListField::Count), column("n", ListField::Mark), column("n", ListField::Mark)];
        let error = length_list_csv(of(&groups()), &twice).unwrap_err();
        assert_eq!((error.kind(), error.path(), error.others().len()), (ErrorKind::Conflict, "columns[1].heading", 1));
    }

    #[test]
    fn a_length_that_cannot_be_rounded_is_named() {
        let mut list = groups();
        list[1].total = Length::MAX;
        let columns = [column("mark", ListField::Mark), column("total", ListField::Total(LengthFormat::parse("ft-in/1 ceil").unwrap()))];
        let error = length_list_csv(of(&list), &columns).unwrap_err();
        assert_eq!((error.kind(), error.path()), (ErrorKind::Overflow, "groups[1].total"));
    }
}
