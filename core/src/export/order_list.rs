//! The order as CSV (RFC 4180).

use super::sheet_text::sheet_text;
use crate::error::{Error, ErrorKind};
use crate::job::OrderLine;
use crate::units::{Length, LengthFormat, MassUnit};

/// The order as CSV in UTF-8, a line each, lengths in the caller's notation: what, how many, how long, what it rests on, and for fasteners and clips
/// whether an engineer gave the spacing behind the count.
///
/// # Errors
/// [`ErrorKind::Overflow`] for a length that the notation cannot show.
///
/// ```
/// use seamwright::export::order_list_csv;
/// use seamwright::units::LengthFormat;
/// let empty = order_list_csv(&[], LengthFormat::EXACT)?;
/// assert!(String::from_utf8(empty).unwrap().starts_with("group,mark,item,"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn order_list_csv(order: &[OrderLine], format: LengthFormat) -> Result<Vec<u8>, Error> {
    let mut out = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    let unwritten = |e: csv::Error| Error::new(ErrorKind::Internal, "the order could not be written").value_of(e);
    out.write_record(["group", "mark", "item", "for", "count", "unit", "length each", "net length", "mass kg", "engineered", "source"]).map_err(unwritten)?;
    let length = |l: Option<Length>| l.map_or(Ok(String::new()), |l| format.string(l));
    for line in order {
        out.write_record([
            line.group.name(),
            &sheet_text(&line.mark),
            &sheet_text(&line.item),
            &sheet_text(&line.spec),
            &line.count.to_string(),
            line.unit,
            &length(line.length)?,
            &length(line.net)?,
            &line.mass.map_or(String::new(), |m| format!("{:.0}", m.get(MassUnit::Kilogram))),
            match line.engineered {
                Some(true) => "yes",
                Some(false) => "NOT ENGINEERED",
                None => "",
            },
            &line.source.as_ref().map_or(String::new(), |source| sheet_text(&source.to_string()).into_owned()),
        ])
        .map_err(unwritten)?;
    }
    out.into_inner().map_err(|e| Error::new(ErrorKind::Internal, "the order could not be written").value_of(e.error()))
}
