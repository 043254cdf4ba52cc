//! Errors through serde: a deserializer keeps nothing of a refusal but its text, so the text carries the whole of it.
//!
//! A fault is one line, for people too: `path: message, got "value" at 2..3; accepted: this; cure: that [parse]`.

use super::{Error, ErrorKind};
use core::fmt;

/// An error as a deserializer takes it.
#[derive(Debug)]
pub(crate) struct Told(pub(crate) Error);

impl From<Error> for Told {
    fn from(error: Error) -> Told {
        Told(error)
    }
}

impl fmt::Display for Told {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (i, e) in core::iter::once(&self.0).chain(self.0.others()).enumerate() {
            if i > 0 {
                f.write_str("\n")?;
            }
            if !e.path().is_empty() {
                write!(f, "{}: ", e.path())?;
            }
            f.write_str(e.message())?;
            if let Some(value) = e.value() {
                write!(f, ", got {value:?}")?;
            }
            if let Some((start, end)) = e.span() {
                write!(f, " at {start}..{end}")?;
            }
            if let Some(allowed) = e.allowed() {
                write!(f, "; accepted: {allowed}")?;
            }
            if let Some(cure) = e.cure() {
                write!(f, "; cure: {cure}")?;
            }
            write!(f, " [{}]", e.kind())?;
        }
        Ok(())
    }
}

/// The error that was told in this text; `None` for a text of another hand.
pub(crate) fn heard(text: &str) -> Option<Error> {
    let mut all = text.split('\n').map(fault);
    let mut first = all.next()??;
    first.0.others = all.collect::<Option<Vec<Error>>>()?;
    Some(first)
}

fn fault(line: &str) -> Option<Error> {
    let (rest, kind) = line.strip_suffix(']')?.rsplit_once(" [")?;
    let kind = *ErrorKind::ALL.iter().find(|k| k.name() == kind)?;
    // A value may hold anything, and so is read before what follows it is looked for.
    let (head, value, rest) = match rest.split_once(", got \"") {
        Some((head, quoted)) => {
            let (value, rest) = unquoted(quoted)?;
            (Some(head), Some(value), rest)
        }
        None => (None, None, rest),
    };
    let (rest, cure) = parted(rest, "; cure: ");
    let (rest, allowed) = parted(rest, "; accepted: ");
    let (rest, span) = match rest.rsplit_once(" at ").and_then(|(before, span)| Some((before, range(span)?))) {
        Some((before, span)) => (before, Some(span)),
        None => (rest, None),
    };
    let head = match head {
        Some(head) if rest.is_empty() => head,
        Some(_) => return None,
        None => rest,
    };
    // A path has no blank in it, so that a message with a colon stays whole.
    let (path, message) = head.split_once(": ").filter(|(path, _)| !path.contains(' ')).unwrap_or(("", head));
    let mut e = Error::new(kind, message.to_owned()).at(path);
    e.0.value = value;
    e.0.span = span;
    e.0.allowed = allowed.map(|a| a.to_owned().into());
    e.0.cure = cure.map(|c| c.to_owned().into());
    Some(e)
}

fn parted<'a>(text: &'a str, by: &str) -> (&'a str, Option<&'a str>) {
    text.split_once(by).map_or((text, None), |(before, after)| (before, Some(after)))
}

fn range(text: &str) -> Option<(usize, usize)> {
    let (start, end) = text.split_once("..")?;
    Some((start.parse().ok()?, end.parse().ok()?))
}

/// The text that Rust's debug form quotes, from behind its first quote; and what follows its last.
fn unquoted(text: &str) -> Option<(String, &str)> {
    let mut out = String::new();
    let mut chars = text.chars();
    loop {
        let c = match chars.next()? {
            '"' => return Some((out, chars.as_str())),
            '\\' => match chars.next()? {
                'n' => '\n',
                'r' => '\r',
                't' => '\t',
                '0' => '\0',
                'u' => {
                    let (code, rest) = chars.as_str().strip_prefix('{')?.split_once('}')?;
                    chars = rest.chars();
                    char::from_u32(u32::from_str_radix(code, 16).ok()?)?
                }
                same => same,
            },
            c => c,
        };
        out.push(c);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn same(e: Error) {
        assert_eq!(heard(&Told(e.clone()).to_string()), Some(e));
    }

    #[test]
    fn what_is_told_is_heard() {
        same(Error::new(ErrorKind::Missing, "a coated steel needs its coating"));
        same(Error::new(ErrorKind::OutOfRange, "the step: too fine").at("tolerance").value_of("0 mm").accepts("more than 0; or none").cured_by("a step"));
        let mut faults = crate::error::Faults::default();
        faults.add(Error::new(ErrorKind::Parse, "not a number").at("rows[0].angle").value_of("\"; accepted: all\n[parse]\\ \u{7f}").pointing(2, 3));
        faults.add(Error::new(ErrorKind::Conflict, "two rows").at("rows"));
        same(faults.check().unwrap_err());
    }

    #[test]
    fn another_hand_is_not_heard() {
        for text in ["", "missing field `a`", "no [such kind]", "a, got \"b [parse]", "a, got \"b\" c [parse]", "a [parse]\nb"] {
            assert_eq!(heard(text), None, "{text}");
        }
    }

    proptest! {
        #[test]
        fn any_value_and_span_come_through(value in any::<String>(), span in any::<Option<(usize, usize)>>()) {
            let mut e = Error::new(ErrorKind::Parse, "not a length").value_of(value).accepts("a length with its unit");
            if let Some((start, end)) = span {
                e = e.pointing(start, end);
            }
            same(e);
        }

        #[test]
        fn no_text_is_too_much(text in any::<String>()) {
            let _ = heard(&text);
            let _ = heard(&format!("a: b, got {text} [parse]"));
        }
    }
}
