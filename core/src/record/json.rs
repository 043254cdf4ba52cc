//! Inputs from JSON, with refusals that name the place in the text.

use crate::error::{Error, ErrorKind};
use serde::de::DeserializeOwned;
use serde_path_to_error::{Path, Segment};

/// Reads a value from JSON text of at most `limit` bytes; each refusal has its path in the text.
pub(crate) fn read_json<T: DeserializeOwned>(json: &[u8], limit: usize) -> Result<T, Error> {
    if json.len() > limit {
        let allowed = format!("at most {} MiB", limit >> 20);
        return Err(Error::new(ErrorKind::TooLarge, "the text is too long").value_of(format_args!("{} bytes", json.len())).accepts(allowed));
    }
    let text = core::str::from_utf8(json).map_err(|e| {
        let start = e.valid_up_to();
        Error::new(ErrorKind::Parse, "the text is not UTF-8")
            .value_of(String::from_utf8_lossy(json))
            .pointing(start, start + char::REPLACEMENT_CHARACTER.len_utf8())
            .accepts("JSON in UTF-8")
    })?;
    let mut from = serde_json::Deserializer::from_str(text);
    let value = serde_path_to_error::deserialize(&mut from).map_err(|e| refusal(text, &path(e.path()), e.inner()))?;
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
    if !fault.is_data() {
        let (start, end) = character(text, fault.line(), fault.column());
        return Error::new(ErrorKind::Format, format!("not JSON that can be read: {said}")).at(path).value_of(text).pointing(start, end).accepts("JSON");
    }
    // What serde's own refusals say has one form each; see `serde::de::Error`. What core's types say stays as it is.
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
    } else if let Some(value) = head.strip_prefix("invalid type: ").or_else(|| head.strip_prefix("invalid value: ")) {
        Error::new(ErrorKind::Format, "a value of another kind").at(path).value_of(value).accepts(accepted)
    } else {
        Error::new(ErrorKind::Format, said.to_owned()).at(path)
    }
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
