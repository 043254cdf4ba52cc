//! One opaque error type for the whole library.
//!
//! A refusal names the field, the value and what would be accepted. A validator collects every fault it sees and returns
//! them as one [`Error`] whose further faults are in [`Error::others`].

use core::fmt;
use std::borrow::Cow;

#[cfg(test)]
mod error_tests;
#[cfg(feature = "serde")]
pub(crate) mod told;

/// What kind of fault an [`Error`] reports. The numbers are fixed: C status codes and Python classes use them.
///
/// ```
/// use seamwright::error::ErrorKind;
/// assert_eq!(ErrorKind::Parse.code(), 1);
/// assert_eq!(ErrorKind::from_code(1), Some(ErrorKind::Parse));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[non_exhaustive]
#[repr(i32)]
pub enum ErrorKind {
    /// Text that does not follow the notation; the span points at the character.
    Parse = 1,
    /// A unit, or a named system of units, is missing or is not one for this quantity.
    Unit = 2,
    /// A number that is NaN or infinite.
    NotFinite = 3,
    /// A value outside the range that has a meaning.
    OutOfRange = 4,
    /// A field that is needed and is not there.
    Missing = 5,
    /// A name that is not known: a field, a metal, a line, a plane.
    Unknown = 6,
    /// Two inputs that contradict each other.
    Conflict = 7,
    /// Geometry that cannot be: self-crossing, overlapping, degenerate.
    Geometry = 8,
    /// A design that cannot be built as asked; the value says by how much it fails.
    Impossible = 9,
    /// A result too large for its type.
    Overflow = 10,
    /// A document that is not of the format or version expected.
    Format = 11,
    /// An input larger or deeper than the stated limit.
    TooLarge = 12,
    /// The caller asked the work to stop.
    Cancelled = 13,
    /// A fault of the library itself.
    Internal = 255,
}

impl ErrorKind {
    /// Every kind, in the order of its number.
    pub const ALL: &'static [ErrorKind] = &[
        ErrorKind::Parse,
        ErrorKind::Unit,
        ErrorKind::NotFinite,
        ErrorKind::OutOfRange,
        ErrorKind::Missing,
        ErrorKind::Unknown,
        ErrorKind::Conflict,
        ErrorKind::Geometry,
        ErrorKind::Impossible,
        ErrorKind::Overflow,
        ErrorKind::Format,
        ErrorKind::TooLarge,
        ErrorKind::Cancelled,
        ErrorKind::Internal,
    ];

    /// The fixed number of this kind; never 0, which C uses for success.
    #[must_use]
    pub const fn code(self) -> i32 {
        self as i32
    }

    /// The kind with this number, if there is one.
    #[must_use]
    pub fn from_code(code: i32) -> Option<ErrorKind> {
        Self::ALL.iter().copied().find(|k| k.code() == code)
    }

    /// A short name in words, as messages show it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            ErrorKind::Parse => "parse",
            ErrorKind::Unit => "unit",
            ErrorKind::NotFinite => "not finite",
            ErrorKind::OutOfRange => "out of range",
            ErrorKind::Missing => "missing",
            ErrorKind::Unknown => "unknown",
            ErrorKind::Conflict => "conflict",
            ErrorKind::Geometry => "geometry",
            ErrorKind::Impossible => "impossible",
            ErrorKind::Overflow => "overflow",
            ErrorKind::Format => "format",
            ErrorKind::TooLarge => "too large",
            ErrorKind::Cancelled => "cancelled",
            ErrorKind::Internal => "internal",
        }
    }
}

impl fmt::Display for ErrorKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

#[derive(Debug, Clone, PartialEq, Eq)]
struct Inner {
    kind: ErrorKind,
    path: String,
    message: Cow<'static, str>,
    value: Option<String>,
    allowed: Option<Cow<'static, str>>,
    span: Option<(usize, usize)>,
    cure: Option<Cow<'static, str>>,
    missed_by: Option<i64>,
    others: Vec<Error>,
}

/// A refusal: what is wrong, where, with which value, and what would be accepted.
///
/// Its text tells the [others](Error::others) too: a fault that differs in its place and value alone is told once, with the first of its places.
///
/// ```
/// use seamwright::error::ErrorKind;
/// use seamwright::units::Length;
/// let e = Length::parse("12-3").unwrap_err();
/// assert_eq!(e.kind(), ErrorKind::Parse);
/// assert_eq!(e.value(), Some("12-3"));
/// assert_eq!(e.span(), Some((2, 3)));
/// ```
#[derive(Clone, PartialEq, Eq)]
pub struct Error(Box<Inner>);

impl Error {
    /// A fault of this kind with its message, a sentence fragment without a full stop.
    #[must_use]
    #[cold]
    pub fn new(kind: ErrorKind, message: impl Into<Cow<'static, str>>) -> Self {
        Error(Box::new(Inner {
            kind,
            path: String::new(),
            message: message.into(),
            value: None,
            allowed: None,
            span: None,
            cure: None,
            missed_by: None,
            others: Vec::new(),
        }))
    }

    /// The same fault, placed at this field. A path is written as in the job: `roof.planes[3].pitch`.
    #[must_use]
    pub fn at(mut self, path: impl Into<String>) -> Self {
        self.0.path = path.into();
        self
    }

    /// The same fault (and the others with it), its path put behind a prefix: how a caller says where a part sits.
    #[must_use]
    pub fn under(mut self, prefix: &str) -> Self {
        if !prefix.is_empty() {
            let old = core::mem::take(&mut self.0.path);
            self.0.path = if old.is_empty() {
                prefix.to_owned()
            } else if old.starts_with('[') {
                format!("{prefix}{old}")
            } else {
                format!("{prefix}.{old}")
            };
        }
        self.0.others = core::mem::take(&mut self.0.others).into_iter().map(|o| o.under(prefix)).collect();
        self
    }

    /// The same fault (and the others with it), its path moved from one prefix to another; a path without the prefix stays.
    ///
    /// ```
    /// use seamwright::error::{Error, ErrorKind};
    /// let e = Error::new(ErrorKind::Impossible, "the fold is too short").at("detail.fold").moved("detail", "junctions.kinds[0].eave");
    /// assert_eq!(e.path(), "junctions.kinds[0].eave.fold");
    /// ```
    #[must_use]
    pub fn moved(mut self, from: &str, to: &str) -> Self {
        if let Some(rest) = self.0.path.strip_prefix(from)
            && (rest.is_empty() || rest.starts_with(['.', '[']))
        {
            self.0.path = format!("{to}{rest}");
        }
        let others = core::mem::take(&mut self.0.others);
        self.0.others = others.into_iter().map(|o| o.moved(from, to)).collect();
        self
    }

    /// The same fault (and the others with it), said of this thing: for a fault whose path many things share.
    ///
    /// ```
    /// use seamwright::error::{Error, ErrorKind};
    /// let e = Error::new(ErrorKind::Impossible, "the fold is too short").at("junctions.kinds[0].panel.fold").about("eave 3");
    /// assert_eq!(e.message(), "the fold is too short (eave 3)");
    /// ```
    #[must_use]
    pub fn about(mut self, what: &str) -> Self {
        self.0.message = format!("{} ({what})", self.0.message).into();
        let others = core::mem::take(&mut self.0.others);
        self.0.others = others.into_iter().map(|o| o.about(what)).collect();
        self
    }

    /// The same fault with the offending value as text.
    #[must_use]
    pub fn value_of(mut self, value: impl fmt::Display) -> Self {
        self.0.value = Some(value.to_string());
        self
    }

    /// The same fault with what would be accepted.
    #[must_use]
    pub fn accepts(mut self, allowed: impl Into<Cow<'static, str>>) -> Self {
        self.0.allowed = Some(allowed.into());
        self
    }

    /// The same fault with the byte range, in the value's text, that it points at.
    #[must_use]
    pub fn pointing(mut self, start: usize, end: usize) -> Self {
        self.0.span = Some((start, end));
        self
    }

    /// The same fault with the input that would cure it.
    #[must_use]
    pub fn cured_by(mut self, cure: impl Into<Cow<'static, str>>) -> Self {
        self.0.cure = Some(cure.into());
        self
    }

    /// The same fault with the distance by which the value misses what would be accepted, in whole steps of a length: what a caller tells that knows it by another name.
    /// It is no part of the error's text.
    #[must_use]
    pub(crate) fn missing_by(mut self, steps: i64) -> Self {
        self.0.missed_by = Some(steps);
        self
    }

    /// That distance, where the fault is one of lengths.
    pub(crate) fn missed_by(&self) -> Option<i64> {
        self.0.missed_by
    }

    /// The kind of fault.
    #[must_use]
    pub fn kind(&self) -> ErrorKind {
        self.0.kind
    }

    /// Where the fault is, as a path into the input; empty where the whole input is at fault.
    #[must_use]
    pub fn path(&self) -> &str {
        &self.0.path
    }

    /// The message alone, without path or value.
    #[must_use]
    pub fn message(&self) -> &str {
        &self.0.message
    }

    /// The offending value as text.
    #[must_use]
    pub fn value(&self) -> Option<&str> {
        self.0.value.as_deref()
    }

    /// What would be accepted.
    #[must_use]
    pub fn allowed(&self) -> Option<&str> {
        self.0.allowed.as_deref()
    }

    /// The byte range in [`value`](Self::value) that the fault points at.
    #[must_use]
    pub fn span(&self) -> Option<(usize, usize)> {
        self.0.span
    }

    /// The input that would cure it, where one can be named.
    #[must_use]
    pub fn cure(&self) -> Option<&str> {
        self.0.cure.as_deref()
    }

    /// Further faults found in the same validation.
    #[must_use]
    pub fn others(&self) -> &[Error] {
        &self.0.others
    }
}

/// How many different faults a message tells, and of one that many places share, how many of those it names; [`Error::others`] has them all.
const TOLD: usize = 40;
const PLACES: usize = 8;

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut told: Vec<(&Error, Vec<&Error>)> = vec![(self, Vec::new())];
        let mut untold = 0_usize;
        for other in &self.0.others {
            if let Some((_, places)) = told.iter_mut().find(|(first, _)| first.says_the_same(other)) {
                places.push(other);
            } else if told.len() < TOLD {
                told.push((other, Vec::new()));
            } else {
                untold += 1;
            }
        }
        for (k, (first, places)) in told.into_iter().enumerate() {
            if k > 0 {
                f.write_str("\n")?;
            }
            first.tell(f)?;
            if let Some((next, rest)) = places.split_first() {
                write!(f, "\nthe same at {} more", places.len())?;
                f.write_str(if places.len() > PLACES { ", the first of them " } else { ": " })?;
                next.place(f, first)?;
                for place in rest.iter().take(PLACES - 1) {
                    f.write_str(", ")?;
                    place.place(f, first)?;
                }
            }
        }
        if untold > 0 {
            write!(f, "\nand {untold} further faults")?;
        }
        Ok(())
    }
}

impl Error {
    /// Whether another fault differs in its place and its value alone.
    fn says_the_same(&self, other: &Error) -> bool {
        let (a, b) = (&*self.0, &*other.0);
        a.kind == b.kind && a.message == b.message && a.allowed == b.allowed && a.cure == b.cure && a.span.is_none() && b.span.is_none()
    }

    /// The path of a fault that says the same as one told before, with its value where that is another.
    fn place(&self, f: &mut fmt::Formatter<'_>, before: &Error) -> fmt::Result {
        f.write_str(&self.0.path)?;
        match &self.0.value {
            Some(v) if self.0.value != before.0.value => {
                f.write_str(" (")?;
                shown(f, v)?;
                f.write_str(")")
            }
            _ => Ok(()),
        }
    }

    /// This fault alone, on one line.
    fn tell(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let e = &*self.0;
        if !e.path.is_empty() {
            write!(f, "{}: ", e.path)?;
        }
        f.write_str(&e.message)?;
        if let Some(v) = &e.value {
            f.write_str(", got ")?;
            shown(f, v)?;
        }
        if let Some((start, _)) = e.span {
            write!(f, " at character {}", self.column(start))?;
        }
        if let Some(a) = &e.allowed {
            write!(f, "; accepted: {a}")?;
        }
        if let Some(c) = &e.cure {
            write!(f, "; cure: {c}")?;
        }
        Ok(())
    }

    fn column(&self, byte: usize) -> usize {
        self.0.value.as_deref().and_then(|v| v.get(..byte)).map_or(byte, |s| s.chars().count()) + 1
    }
}

/// A value in quotation marks: one can be a whole document, of which a message shows the beginning.
fn shown(f: &mut fmt::Formatter<'_>, value: &str) -> fmt::Result {
    let shown: String = value.chars().take(80).collect();
    write!(f, "{shown:?}")?;
    if shown.len() < value.len() { f.write_str("...") } else { Ok(()) }
}

impl fmt::Debug for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Error({:?}: {self})", self.0.kind)
    }
}

impl core::error::Error for Error {}

/// Collects faults so that a validator can report all of them at once.
///
/// ```
/// use seamwright::error::{Error, ErrorKind, Faults};
/// let mut faults = Faults::default();
/// faults.add(Error::new(ErrorKind::Missing, "no coverage").at("panel.coverage"));
/// faults.add(Error::new(ErrorKind::Missing, "no metal").at("sheet.alloy"));
/// let e = faults.check().unwrap_err();
/// assert_eq!((e.path(), e.others().len()), ("panel.coverage", 1));
/// ```
#[derive(Debug, Default)]
pub struct Faults(Vec<Error>);

impl Faults {
    /// Adds a fault, with any others that it carries.
    pub fn add(&mut self, error: Error) {
        self.0.push(error);
    }

    /// Keeps the value, or adds the fault and gives `None`.
    pub fn keep<T>(&mut self, result: Result<T, Error>) -> Option<T> {
        match result {
            Ok(v) => Some(v),
            Err(e) => {
                self.0.push(e);
                None
            }
        }
    }

    /// Whether no fault was added.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// `Ok` if there was no fault.
    ///
    /// # Errors
    /// The first fault, which carries the others.
    pub fn check(self) -> Result<(), Error> {
        let mut all = Vec::new();
        for mut e in self.0 {
            let rest = core::mem::take(&mut e.0.others);
            all.push(e);
            all.extend(rest);
        }
        if all.is_empty() {
            return Ok(());
        }
        let mut first = all.remove(0);
        first.0.others = all;
        Err(first)
    }
}
