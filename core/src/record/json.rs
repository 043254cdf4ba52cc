//! Values from JSON, with refusals that name the place in the text: one reader for every format.

use super::by_field::{ByField, LISTED};
use crate::error::told::heard;
use crate::error::{Error, ErrorKind};
use serde::de::DeserializeOwned;
use serde_path_to_error::{Path, Segment};

/// A value from JSON text of at most so many bytes.
///
/// # Errors
/// [`ErrorKind::TooLarge`] over the limit; [`ErrorKind::Parse`] for text that is not UTF-8; [`ErrorKind::Format`] for what is not JSON, nests too
/// deeply or is of another kind; [`ErrorKind::Missing`], [`ErrorKind::Unknown`] and [`ErrorKind::Conflict`] for fields, by their path.
///
/// ```
/// use seamwright::junction::Levels;
/// use seamwright::record::read_json;
/// use seamwright::units::Length;
/// let levels: Levels = read_json(br#"{"seam_height": "1 3/4\""}"#, 1000)?;
/// assert_eq!(levels.seam_height, Length::parse("1 3/4\"")?);
/// assert_eq!(read_json::<Levels>(br#"{"seam": "2\""}"#, 1000).unwrap_err().path(), "seam");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn read_json<T: DeserializeOwned>(json: &[u8], limit: usize) -> Result<T, Error> {
    if json.len() > limit {
        return Err(Error::new(ErrorKind::TooLarge, "the text is too long")
            .value_of(format_args!("{} bytes", json.len()))
            .accepts(format!("at most {limit} bytes")));
    }
    let text = core::str::from_utf8(json).map_err(|e| {
        let start = e.valid_up_to();
        // What stands before it is text, so that a stretch of it can be shown.
        let from =
            core::str::from_utf8(json.get(..start).unwrap_or_default()).map_or(0, |before| if before.len() <= SHOWN { 0 } else { around(before, start).1 });
        Error::new(ErrorKind::Parse, "the text is not UTF-8")
            .value_of(String::from_utf8_lossy(json.get(from..json.len().min(start + SHOWN)).unwrap_or_default()))
            .pointing(start - from, start - from + char::REPLACEMENT_CHARACTER.len_utf8())
            .accepts("JSON in UTF-8")
    })?;
    let mut from = serde_json::Deserializer::from_str(text);
    let value = serde_path_to_error::deserialize(ByField(&mut from)).map_err(|e| refusal(text, &path(e.path()), e.inner()))?;
    from.end().map_err(|e| refusal(text, "", &e))?;
    Ok(value)
}

/// The path as errors write it.
fn path(path: &Path) -> String {
    let mut out = String::new();
    for segment in path {
        match segment {
            Segment::Seq { index } => out.push_str(&format!("[{index}]")),
            Segment::Map { key: name } | Segment::Enum { variant: name } => out = inside(&out, name),
            // A key that could not be read has no name; the text is pointed at.
            Segment::Unknown => {}
        }
    }
    out
}

fn inside(path: &str, name: &str) -> String {
    if path.is_empty() { name.to_owned() } else { format!("{path}.{name}") }
}

fn refusal(text: &str, path: &str, fault: &serde_json::Error) -> Error {
    let said = fault.to_string();
    let said = said.rsplit_once(" at line ").map_or(said.as_str(), |(said, _)| said);
    if said == "expected value" && serde_json::from_str::<serde::de::IgnoredAny>(text).is_ok() {
        // Sound JSON that its reader cannot go on with: an object of one entry that has another.
        return Error::new(ErrorKind::Format, "several entries where one of them is to be chosen").at(path).accepts("an object of one entry");
    }
    if !fault.is_data() {
        let (start, end) = character(text, fault.line(), fault.column());
        let (shown, from) = around(text, start);
        return Error::new(ErrorKind::Format, format!("not JSON that can be read: {said}, at line {}", fault.line()))
            .at(path)
            .value_of(shown)
            .pointing(start - from, end - from)
            .accepts("JSON");
    }
    // What core's types refuse keeps its kind, its value and its span.
    if let Some(e) = heard(said) {
        return e.under(path);
    }
    // What serde's own refusals say has one form each; see `serde::de::Error`.
    let (head, accepted) = said.split_once(", expected ").unwrap_or((said, ""));
    let accepted = accepted.replace('`', "");
    let named = |prefix: &str| head.strip_prefix(prefix).and_then(|rest| rest.strip_suffix('`'));
    if let Some(name) = named("missing field `") {
        Error::new(ErrorKind::Missing, "a field that is needed and is not there").at(inside(path, name))
    } else if let Some(name) = named("duplicate field `") {
        Error::new(ErrorKind::Conflict, "a field given twice").at(inside(path, name)).accepts("each field once")
    } else if let Some(name) = named("unknown field `") {
        // The path already goes to the field.
        Error::new(ErrorKind::Unknown, "a field that is not known").at(path).value_of(name).accepts(accepted)
    } else if let Some(name) = named("unknown variant `") {
        Error::new(ErrorKind::Unknown, "a name that is not known").at(path).value_of(name).accepts(accepted)
    } else if let Some(value) = ["invalid type: ", "invalid value: ", "invalid "].iter().find_map(|prefix| head.strip_prefix(prefix)) {
        // The name of a type of Rust's says nothing to who wrote the text.
        let accepted = match accepted.split_once(' ') {
            Some(("struct", _)) => "an object".to_owned(),
            Some(("enum", _)) => "a name, or an object of one entry".to_owned(),
            _ => match accepted.as_str() {
                "u8" | "u16" | "u32" | "u64" | "usize" => "a whole number, 0 or more".to_owned(),
                "i8" | "i16" | "i32" | "i64" | "isize" => "a whole number".to_owned(),
                "f32" | "f64" => "a number".to_owned(),
                "unit" | "unit variant" => "the name alone".to_owned(),
                _ => accepted,
            },
        };
        let error = Error::new(ErrorKind::Format, "a value of another kind").at(path).value_of(value);
        match accepted.strip_prefix(LISTED) {
            Some(fields) => error.accepts("an object").cured_by(format!("each value under its name: {fields}")),
            None => error.accepts(accepted),
        }
    } else {
        Error::new(ErrorKind::Format, said.to_owned()).at(path)
    }
}

/// The longest stretch of a text that an error carries, in bytes.
const SHOWN: usize = 400;

/// The text itself, or of a long one the stretch around a place; and where that stretch starts.
fn around(text: &str, place: usize) -> (&str, usize) {
    if text.len() <= SHOWN {
        return (text, 0);
    }
    let boundary = |mut at: usize| {
        while !text.is_char_boundary(at) {
            at -= 1;
        }
        at
    };
    let from = boundary(place.saturating_sub(20));
    let to = boundary((from + SHOWN).min(text.len()));
    (text.get(from..to).unwrap_or(text), from)
}

/// The bytes of the character at a line and a column in bytes, both counted from 1; an empty range at the end of the text.
fn character(text: &str, line: usize, column: usize) -> (usize, usize) {
    let before: usize = text.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum();
    let mut start = (before + column.saturating_sub(1)).min(text.len());
    while !text.is_char_boundary(start) {
        start -= 1;
    }
    let width = text.get(start..).and_then(|rest| rest.chars().next()).map_or(0, char::len_utf8);
    (start, start + width)
}
