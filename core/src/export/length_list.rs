//! Panel lists as CSV and as JSON, for the roll former, the order and the crew.

use super::sheet_text::sheet_text;
use crate::error::{Error, ErrorKind, Faults};
use crate::job::{ListColumn, ListField, PlaneLay, check_columns};
use crate::layout::{CutEdge, Group, ListGroup};
use crate::units::{Length, LengthFormat};

/// One row of a panel list: a mark of a grouped list, or one piece in the order of laying.
///
/// ```
/// use seamwright::export::PanelRow;
/// use seamwright::layout::Group;
/// use seamwright::units::Length;
/// let l = Length::inches(147);
/// let group = Group { mark: "A".into(), order: l, width: Length::inches(16), count: 1, total: l };
/// assert_eq!(PanelRow::of_group("south", &group).order, l);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PanelRow<'a> {
    /// The plane.
    pub plane: &'a str,
    /// The mark.
    pub mark: &'a str,
    /// How many pieces.
    pub count: u64,
    /// The order length of one.
    pub order: Length,
    /// The width that it covers.
    pub width: Length,
    /// The order lengths together.
    pub total: Length,
    /// Which edge is cut, where the list tells.
    pub edge: Option<CutEdge>,
    /// What only a piece has.
    pub piece: Option<PieceCells>,
}

/// What a piece has beside its mark.
///
/// ```
/// use seamwright::export::PieceCells;
/// use seamwright::units::Length;
/// let cells = PieceCells { panel: 1, piece: 1, own: Length::inches(147), low: Length::ZERO, bundle: None, blank: None, left: None, right: None };
/// assert_eq!(cells.panel, 1);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PieceCells {
    /// The panel's number in the order of laying, from 1.
    pub panel: usize,
    /// The piece of the panel, from 1 at the foot.
    pub piece: u32,
    /// Its own length.
    pub own: Length,
    /// From the foot of the plane to its lower end.
    pub low: Length,
    /// The number of its bundle.
    pub bundle: Option<usize>,
    /// The number of the blank that it shares.
    pub blank: Option<usize>,
    /// The panel's finished length along its left side.
    pub left: Option<Length>,
    /// The panel's finished length along its right side.
    pub right: Option<Length>,
}

impl<'a> PanelRow<'a> {
    /// A group of a layout.
    #[must_use]
    pub fn of_group(plane: &'a str, group: &'a Group) -> PanelRow<'a> {
        PanelRow { plane, mark: &group.mark, count: group.count, order: group.order, width: group.width, total: group.total, edge: None, piece: None }
    }

    fn of_list_group(plane: &'a str, group: &'a ListGroup) -> PanelRow<'a> {
        let (order, width, total) = (group.order, group.width, group.total);
        PanelRow { plane, mark: &group.mark, count: group.count, order, width, total, edge: Some(group.cut), piece: None }
    }

    /// The grouped list of a plane.
    #[must_use]
    pub fn groups(lay: &'a PlaneLay) -> Vec<PanelRow<'a>> {
        match &lay.listed {
            Some(list) => list.groups.iter().map(|g| PanelRow::of_list_group(&lay.name, g)).collect(),
            None => lay.laid.groups.iter().map(|g| PanelRow::of_group(&lay.name, g)).collect(),
        }
    }

    /// The pieces of a plane in the order of laying; none where the job asks for no list.
    #[must_use]
    pub fn pieces(lay: &'a PlaneLay) -> Vec<PanelRow<'a>> {
        let Some(list) = &lay.listed else { return Vec::new() };
        let of = |piece: &crate::layout::ListedPiece| {
            let group = list.groups.get(piece.group)?;
            let (panel, bundle, blank) = (piece.number, piece.bundle.map(|b| b + 1), piece.pair.map(|b| b + 1));
            let (left, right) = lay.laid.panels.get(piece.panel).map_or((None, None), |p| (p.left_length, p.right_length));
            let cells = PieceCells { panel, piece: piece.piece, own: piece.own, low: piece.low, bundle, blank, left, right };
            Some(PanelRow { count: 1, total: piece.order, piece: Some(cells), ..PanelRow::of_list_group(&lay.name, group) })
        };
        list.pieces.iter().filter_map(of).collect()
    }
}

/// What stands in a cell.
enum Cell {
    Text(String),
    Number(u64),
    Empty,
}

/// Groups of panels, each with its plane's name, as CSV after RFC 4180: a row of headings, then a row a group, with the columns and in the order that the caller gives.
///
/// Names and headings that a spreadsheet would take for a formula stand behind an apostrophe.
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
/// As [`panel_rows_csv`], at `groups`.
pub fn length_list_csv<'a>(groups: impl IntoIterator<Item = (&'a str, &'a Group)>, columns: &[ListColumn]) -> Result<Vec<u8>, Error> {
    panel_rows_csv(groups.into_iter().map(|(plane, group)| PanelRow::of_group(plane, group)), columns).map_err(|e| e.moved("rows", "groups"))
}

/// Rows of a panel list as CSV after RFC 4180, with the columns that the caller chooses, orders and names.
///
/// ```
/// use seamwright::export::{ListColumn, ListField, PanelRow, panel_rows_csv};
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let columns = [ListColumn { heading: "mark".into(), field: ListField::Mark }, ListColumn { heading: "pieces".into(), field: ListField::Count }];
/// let csv = panel_rows_csv(packet.planes.iter().flat_map(PanelRow::groups), &columns)?;
/// assert!(csv.starts_with(b"mark,pieces\r\n1A,"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
///
/// # Errors
/// [`ErrorKind::Missing`] for no columns, [`ErrorKind::Conflict`] for a heading given twice or a column of pieces in a grouped list; [`ErrorKind::Overflow`] where a
/// length cannot be rounded to its format. Every fault is reported.
pub fn panel_rows_csv<'a>(rows: impl IntoIterator<Item = PanelRow<'a>>, columns: &[ListColumn]) -> Result<Vec<u8>, Error> {
    check_columns(columns)?;
    let mut out = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    out.write_record(columns.iter().map(|c| sheet_text(&c.heading).into_owned())).map_err(unwritten)?;
    for row in cells(rows, columns)? {
        let texts = row.into_iter().map(|cell| match cell {
            Cell::Text(text) => text,
            Cell::Number(n) => n.to_string(),
            Cell::Empty => String::new(),
        });
        out.write_record(texts).map_err(unwritten)?;
    }
    out.into_inner().map_err(|e| Error::new(ErrorKind::Internal, "the list could not be written").value_of(e.error()))
}

/// The same rows and columns as JSON: a list of objects, the headings their names in the order of the columns, counts as numbers, what is empty as null.
///
/// ```
/// use seamwright::export::{ListColumn, ListField, PanelRow, panel_rows_json};
/// use seamwright::layout::Group;
/// use seamwright::units::{Length, LengthFormat};
/// let group = Group { mark: "A".into(), order: Length::inches(147), width: Length::inches(16), count: 12, total: Length::inches(1764) };
/// let columns = [
///     ListColumn { heading: "pieces".into(), field: ListField::Count },
///     ListColumn { heading: "length".into(), field: ListField::OrderLength(LengthFormat::parse("mm.1")?) },
/// ];
/// let json = panel_rows_json([PanelRow::of_group("south", &group)], &columns)?;
/// assert_eq!(String::from_utf8(json).unwrap(), "[\n{\"pieces\":12,\"length\":\"3733.8 mm\"}\n]\n");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
///
/// # Errors
/// As [`panel_rows_csv`].
#[cfg(feature = "serde")]
pub fn panel_rows_json<'a>(rows: impl IntoIterator<Item = PanelRow<'a>>, columns: &[ListColumn]) -> Result<Vec<u8>, Error> {
    check_columns(columns)?;
    let quoted = |text: &str| serde_json::Value::from(text).to_string();
    let mut out = String::from("[");
    for (i, row) in cells(rows, columns)?.into_iter().enumerate() {
        out.push_str(if i > 0 { ",\n{" } else { "\n{" });
        for (k, (cell, column)) in row.into_iter().zip(columns).enumerate() {
            let value = match cell {
                Cell::Text(text) => quoted(&text),
                Cell::Number(n) => n.to_string(),
                Cell::Empty => "null".to_owned(),
            };
            out.push_str(&format!("{}{}:{value}", if k > 0 { "," } else { "" }, quoted(&column.heading)));
        }
        out.push('}');
    }
    out.push_str("\n]\n");
    Ok(out.into_bytes())
}

/// Every cell, or every fault.
fn cells<'a>(rows: impl IntoIterator<Item = PanelRow<'a>>, columns: &[ListColumn]) -> Result<Vec<Vec<Cell>>, Error> {
    let mut faults = Faults::default();
    let mut out = Vec::new();
    for (i, row) in rows.into_iter().enumerate() {
        let mut of = Vec::with_capacity(columns.len());
        for (k, column) in columns.iter().enumerate() {
            if row.piece.is_none() && column.field.is_of_pieces() {
                // Said once: it is the column that is at fault.
                if i == 0 {
                    let fault = Error::new(ErrorKind::Conflict, "a grouped list has no such column").at(format!("columns[{k}].field"));
                    faults.add(fault.value_of(&column.heading).accepts("plane, mark, count, order-length, width, total, edge"));
                }
                continue;
            }
            of.extend(faults.keep(cell(&row, column.field).map_err(|e| e.under(&format!("rows[{i}]")))));
        }
        out.push(of);
    }
    faults.check()?;
    Ok(out)
}

fn cell(row: &PanelRow<'_>, field: ListField) -> Result<Cell, Error> {
    let text = |length: Length, format: LengthFormat, name: &str| format.string(length).map(Cell::Text).map_err(|e| e.at(name));
    let number = |n: Option<usize>| n.map_or(Cell::Empty, |n| Cell::Number(u64::try_from(n).unwrap_or(u64::MAX)));
    let piece = row.piece;
    Ok(match field {
        ListField::Plane => Cell::Text(sheet_text(row.plane).into_owned()),
        ListField::Mark => Cell::Text(sheet_text(row.mark).into_owned()),
        ListField::Count => Cell::Number(row.count),
        ListField::OrderLength(format) => text(row.order, format, "order")?,
        ListField::Width(format) => text(row.width, format, "width")?,
        ListField::Total(format) => text(row.total, format, "total")?,
        ListField::Edge => row.edge.map_or(Cell::Empty, |edge| Cell::Text(edge.name().to_owned())),
        ListField::Panel => number(piece.map(|p| p.panel)),
        ListField::Piece => piece.map_or(Cell::Empty, |p| Cell::Number(u64::from(p.piece))),
        ListField::OwnLength(format) => piece.map_or(Ok(Cell::Empty), |p| text(p.own, format, "own"))?,
        ListField::Low(format) => piece.map_or(Ok(Cell::Empty), |p| text(p.low, format, "low"))?,
        ListField::Bundle => number(piece.and_then(|p| p.bundle)),
        ListField::Blank => number(piece.and_then(|p| p.blank)),
        ListField::LeftSeam(format) => piece.and_then(|p| p.left).map_or(Ok(Cell::Empty), |l| text(l, format, "left"))?,
        ListField::RightSeam(format) => piece.and_then(|p| p.right).map_or(Ok(Cell::Empty), |l| text(l, format, "right"))?,
    })
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

    #[test]
    fn what_a_spreadsheet_would_run_stands_behind_an_apostrophe() {
        let mut group = groups().remove(0);
        group.mark = "+1".into();
        let columns = [column("=cmd()", ListField::Plane), column("mark", ListField::Mark), column("total", ListField::Total(LengthFormat::EXACT))];
        group.total = Length::inches(-1);
        let csv = String::from_utf8(length_list_csv([("@south", &group)], &columns).unwrap()).unwrap();
        // A length is the library's own text and starts as it starts.
        assert_eq!(csv, "'=cmd(),mark,total\r\n'@south,'+1,-25.4 mm\r\n");
    }

    #[test]
    fn a_grouped_list_has_no_columns_of_pieces() {
        let columns = [column("n", ListField::Count), column("bundle", ListField::Bundle), column("low", ListField::Low(LengthFormat::EXACT))];
        let error = length_list_csv(of(&groups()), &columns).unwrap_err();
        assert_eq!((error.kind(), error.path(), error.others().len()), (ErrorKind::Conflict, "columns[1].field", 1));
    }

    #[cfg(feature = "serde")]
    #[test]
    fn json_has_the_headings_in_their_order_and_counts_as_numbers() {
        let list = groups();
        let columns = [column("z \"q\"", ListField::Count), column("a", ListField::Mark), column("edge", ListField::Edge)];
        let bytes = panel_rows_json(list.iter().map(|g| PanelRow::of_group("south", g)), &columns).unwrap();
        assert!(bytes.starts_with(b"[\n{\"z \\\"q\\\"\":3,\"a\":\"A\",\"edge\":null},"));
        let read: serde_json::Value = serde_json::from_slice(&bytes).unwrap();
        assert_eq!((&read[1]["a"], &read[1]["z \"q\""]), (&serde_json::json!("B,\"x\""), &serde_json::json!(11)));
    }
}
