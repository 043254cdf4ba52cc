//! Text that no spreadsheet takes for a formula.

use std::borrow::Cow;

/// The text as a cell: behind an apostrophe where it begins as a formula does (`=`, `+`, `-`, `@`, a tab or a line's end; OWASP, CSV injection, from memory).
pub(super) fn sheet_text(text: &str) -> Cow<'_, str> {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r', '\n']) { Cow::Owned(format!("'{text}")) } else { Cow::Borrowed(text) }
}
