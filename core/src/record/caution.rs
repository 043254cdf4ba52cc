//! Cautions: what a result says beside its numbers.

use super::Source;
use core::fmt;
use std::borrow::Cow;

/// A numbered kind of caution. Each room lists its own in `cautions.rs`; numbers start with the room's floor and never change.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct CautionCode {
    /// The fixed number.
    pub number: u16,
    /// A short name in kebab case.
    pub name: &'static str,
    /// The sentence, with `{argument}` where an argument of the caution goes.
    pub text: &'static str,
}

/// Something that the reader must know before metal is cut by the result.
///
/// ```
/// use seamwright::record::{Caution, CautionCode, Source};
/// const SHORT: CautionCode = CautionCode { number: 9999, name: "short", text: "only {found} of {needed}" };
/// let c = Caution::new(SHORT, "eave.hem", Source::CommonPractice).arg("found", "3/8 in").arg("needed", "1/2 in");
/// assert_eq!(c.message(), "only 3/8 in of 1/2 in");
/// assert_eq!(c.to_string(), "9999 short, eave.hem: only 3/8 in of 1/2 in");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Caution {
    code: CautionCode,
    subject: String,
    arguments: Vec<(Cow<'static, str>, String)>,
    source: Source,
}

impl Caution {
    /// A caution on a subject, given as a path into the job or the packet.
    #[must_use]
    pub fn new(code: CautionCode, subject: impl Into<String>, source: Source) -> Self {
        Caution { code, subject: subject.into(), arguments: Vec::new(), source }
    }

    /// The same caution with one more argument.
    #[must_use]
    pub fn arg(mut self, name: &'static str, value: impl fmt::Display) -> Self {
        self.arguments.push((Cow::Borrowed(name), value.to_string()));
        self
    }

    /// The same caution with its subject put behind a prefix.
    #[must_use]
    pub fn under(mut self, prefix: &str) -> Self {
        self.subject = if self.subject.is_empty() { prefix.to_owned() } else { format!("{prefix}.{}", self.subject) };
        self
    }

    /// The same caution, its subject moved from one prefix to another; a subject without the prefix stays.
    #[must_use]
    pub(crate) fn moved(mut self, from: &str, to: &str) -> Self {
        if let Some(rest) = self.subject.strip_prefix(from)
            && (rest.is_empty() || rest.starts_with(['.', '[']))
        {
            self.subject = format!("{to}{rest}");
        }
        self
    }

    /// Its numbered kind.
    #[must_use]
    pub fn code(&self) -> CautionCode {
        self.code
    }

    /// What it is about, as a path.
    #[must_use]
    pub fn subject(&self) -> &str {
        &self.subject
    }

    /// Its arguments by name.
    #[must_use]
    pub fn arguments(&self) -> &[(Cow<'static, str>, String)] {
        &self.arguments
    }

    /// Where the rule behind it comes from.
    #[must_use]
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// The sentence with its arguments filled in.
    #[must_use]
    pub fn message(&self) -> String {
        let mut out = self.code.text.to_owned();
        for (name, value) in &self.arguments {
            out = out.replace(&format!("{{{name}}}"), value);
        }
        out
    }
}

impl fmt::Display for Caution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.code.number, self.code.name)?;
        if !self.subject.is_empty() {
            write!(f, ", {}", self.subject)?;
        }
        write!(f, ": {}", self.message())
    }
}

#[cfg(feature = "serde")]
impl serde::Serialize for Caution {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        use serde::ser::SerializeStruct;
        let mut s = serializer.serialize_struct("Caution", 6)?;
        s.serialize_field("number", &self.code.number)?;
        s.serialize_field("name", self.code.name)?;
        s.serialize_field("subject", &self.subject)?;
        s.serialize_field("message", &self.message())?;
        let arguments: std::collections::BTreeMap<&str, &str> = self.arguments.iter().map(|(k, v)| (&**k, v.as_str())).collect();
        s.serialize_field("arguments", &arguments)?;
        s.serialize_field("source", &self.source)?;
        s.end()
    }
}

/// A caution as it is written.
#[cfg(feature = "schema")]
#[derive(schemars::JsonSchema)]
#[schemars(rename = "Caution", deny_unknown_fields)]
#[allow(dead_code, reason = "the schema's form only")]
struct CautionText {
    /// The fixed number of its kind.
    number: u16,
    /// The short name of its kind.
    name: String,
    /// What it is about, as a path into the job or the packet.
    subject: String,
    /// The sentence.
    message: String,
    /// What the sentence speaks of, by name.
    arguments: std::collections::BTreeMap<String, String>,
    /// Where the rule behind it comes from.
    source: Source,
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Caution {
    fn schema_name() -> Cow<'static, str> {
        CautionText::schema_name()
    }
    fn schema_id() -> Cow<'static, str> {
        CautionText::schema_id()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        CautionText::json_schema(generator)
    }
}
