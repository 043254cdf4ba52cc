//! What a section is of.

use crate::roof::LineKind;
use core::fmt;

/// What a section is of: a line that the roof's geometry names, or what stands on the roof or in it wherever the caller puts it.
///
/// ```
/// use seamwright::junction::SectionKind;
/// use seamwright::roof::LineKind;
/// assert_eq!(SectionKind::from(LineKind::Eave).to_string(), LineKind::Eave.to_string());
/// assert_eq!(SectionKind::all().filter(|k| k.to_string() == "pipe").count(), 1);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum SectionKind {
    /// A line of the roof.
    Line(LineKind),
    /// The cap on the top of a wall.
    Coping,
    /// A pipe through the roof.
    Pipe,
}

impl SectionKind {
    /// Every kind.
    pub fn all() -> impl Iterator<Item = SectionKind> {
        let lines = LineKind::ALL.iter().copied().map(SectionKind::Line);
        lines.chain([SectionKind::Coping, SectionKind::Pipe])
    }
}

impl From<LineKind> for SectionKind {
    fn from(kind: LineKind) -> SectionKind {
        SectionKind::Line(kind)
    }
}

impl fmt::Display for SectionKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SectionKind::Line(kind) => kind.fmt(f),
            SectionKind::Coping => f.pad("coping"),
            SectionKind::Pipe => f.pad("pipe"),
        }
    }
}
