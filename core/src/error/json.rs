//! JSON read into the library's types, with refusals that name the place in the text.

use super::{Error, ErrorKind};
use serde::de::DeserializeOwned;
use serde_path_to_error::{Path, Segment};

/// The longest text that a refusal quotes whole, in bytes; of a longer one it quotes what stands around the fault.
const QUOTED: usize = 1 << 12;
/// How much it then quotes on either side, in bytes.
const AROUND: usize = 80;

/// Reads a value from JSON of at most this many bytes.
///
/// Nesting is limited by the reader, and a type that is not recursive takes no more than its own, so that no text exhausts the stack.
pub(crate) fn read<T: DeserializeOwned>(json: &[u8], limit: usize) -> Result<T, Error> {
    if json.len() > limit {
        let most = if limit % (1 << 20) == 0 { format!("at most {} MiB", limit >> 20) } else { format!("at most {limit} bytes") };
        return Err(Error::new(ErrorKind::TooLarge, "the text is too long").value_of(format_args!("{} bytes", json.len())).accepts(most));
    }
    let text = core::str::from_utf8(json).map_err(|e| not_utf8(json, e.valid_up_to()))?;
    let mut from = serde_json::Deserializer::from_str(text);
    let value = serde_path_to_error::deserialize(&mut from).map_err(|e| refusal(text, &path(e.path()), e.inner()))?;
    from.end().map_err(|e| refusal(text, "", &e))?;
    Ok(value)
}

fn not_utf8(json: &[u8], start: usize) -> Error {
    let (mut from, to) = if json.len() <= QUOTED { (0, json.len()) } else { (start.saturating_sub(AROUND), (start + AROUND).min(json.len())) };
    // What is before the fault is whole characters; the quotation begins with one.
    while from > 0 && json.get(from).is_some_and(|b| b & 0xC0 == 0x80) {
        from -= 1;
    }
    Error::new(ErrorKind::Parse, "the text is not UTF-8")
        .value_of(String::from_utf8_lossy(json.get(from..to).unwrap_or_default()))
        .pointing(start - from, start - from + char::REPLACEMENT_CHARACTER.len_utf8())
        .accepts("JSON in UTF-8")
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
        let error = |value: &str, from: usize| {
            Error::new(ErrorKind::Format, format!("not JSON that can be read: {said}"))
                .at(path)
                .value_of(value)
                .pointing(start - from, end - from)
                .accepts("JSON")
        };
        if text.len() <= QUOTED {
            return error(text, 0);
        }
        let (from, to) = (boundary(text, start.saturating_sub(AROUND)), boundary(text, (end + AROUND).min(text.len())));
        return error(text.get(from..to).unwrap_or_default(), from);
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

/// The last character boundary at or before a byte.
fn boundary(text: &str, mut at: usize) -> usize {
    at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

/// The bytes of the character at a line and a column in bytes, both counted from 1; an empty range at the end of the text.
fn character(text: &str, line: usize, column: usize) -> (usize, usize) {
    let before: usize = text.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum();
    let start = boundary(text, before + column.saturating_sub(1));
    let width = text.get(start..).and_then(|rest| rest.chars().next()).map_or(0, char::len_utf8);
    (start, start + width)
}
