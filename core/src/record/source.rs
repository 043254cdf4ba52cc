//! The source that every rule, table figure and default carries.

use core::fmt;
use std::borrow::Cow;

/// How the cited place was seen by whoever wrote the figure down.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Seen {
    /// Read in the document named.
    Text,
    /// Read in another text that quotes the document.
    Secondary,
    /// Recalled, not read: to be confirmed before metal is cut by it.
    Memory,
    /// Follows from the document's figures or from geometry alone.
    Derived,
}

/// A place in a published document.
///
/// ```
/// use seamwright::record::{Citation, Seen};
/// const C: Citation = Citation::new("NIST SP 811", "2008", "Appendix B.8", Seen::Secondary);
/// assert_eq!(C.to_string(), "NIST SP 811 (2008), Appendix B.8 [secondary]");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Citation {
    /// The document's name or number.
    pub document: Cow<'static, str>,
    /// Its edition or year; empty where the copy did not show one.
    pub edition: Cow<'static, str>,
    /// Clause, table or page.
    pub place: Cow<'static, str>,
    /// How it was seen.
    pub seen: Seen,
}

impl Citation {
    /// A citation from literals, for tables.
    #[must_use]
    pub const fn new(document: &'static str, edition: &'static str, place: &'static str, seen: Seen) -> Self {
        Citation { document: Cow::Borrowed(document), edition: Cow::Borrowed(edition), place: Cow::Borrowed(place), seen }
    }
}

impl fmt::Display for Citation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.document)?;
        if !self.edition.is_empty() {
            write!(f, " ({})", self.edition)?;
        }
        if !self.place.is_empty() {
            write!(f, ", {}", self.place)?;
        }
        f.write_str(match self.seen {
            Seen::Text => "",
            Seen::Secondary => " [secondary]",
            Seen::Memory => " [from memory]",
            Seen::Derived => " [derived]",
        })
    }
}

/// Where a rule, a figure or a choice comes from.
///
/// ```
/// use seamwright::record::Source;
/// assert_eq!(Source::CommonPractice.to_string(), "common practice, no published source");
/// let engineer = Source::Engineer { name: "of record".into(), document: "calculation 12".into() };
/// assert_eq!(engineer.to_string(), "engineer of record, calculation 12");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Source {
    /// A published document.
    Published(Citation),
    /// A habit of the trade without a published source: a default that the caller can change.
    CommonPractice,
    /// The engineer's own figure.
    Engineer {
        /// Who.
        name: Cow<'static, str>,
        /// In which document.
        document: Cow<'static, str>,
    },
    /// The caller's own figure.
    User {
        /// What the caller says of it.
        note: Cow<'static, str>,
    },
}

impl Source {
    /// A published source from literals, for tables.
    #[must_use]
    pub const fn published(document: &'static str, edition: &'static str, place: &'static str, seen: Seen) -> Self {
        Source::Published(Citation::new(document, edition, place, seen))
    }

    /// A figure that the caller gave, without further note.
    #[must_use]
    pub const fn user() -> Self {
        Source::User { note: Cow::Borrowed("given") }
    }

    /// A relation of plane or solid geometry, which needs no authority.
    #[must_use]
    pub const fn geometry() -> Self {
        Source::Published(Citation::new("geometry", "", "", Seen::Derived))
    }

    /// Whether the figure was recalled and not read.
    #[must_use]
    pub fn rests_on_memory(&self) -> bool {
        matches!(self, Source::Published(Citation { seen: Seen::Memory, .. }))
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Source::Published(c) => c.fmt(f),
            Source::CommonPractice => f.write_str("common practice, no published source"),
            Source::Engineer { name, document } => write!(f, "engineer {name}, {document}"),
            Source::User { note } => write!(f, "user: {note}"),
        }
    }
}
