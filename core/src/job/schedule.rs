//! The engineer's schedule: spacings by row, which stand before those of the details.

use crate::error::{Error, ErrorKind, Faults};
use crate::junction::{Along, AlongLine};
use crate::record::Source;
use crate::units::Length;

/// The engineer's spacing of one row of fasteners along one kind of line.
///
/// ```
/// use seamwright::job::ScheduledRow;
/// use seamwright::units::Length;
/// let row = ScheduledRow { line: "ridge".into(), row: "closure screws".into(), spacing: Length::inches(6) };
/// assert_eq!(row.spacing, Length::parse("6 in")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ScheduledRow {
    /// A kind of line, as [`LineKind::name`](crate::roof::LineKind::name) has it, or the name of one line, which stands before its kind.
    pub line: String,
    /// The row, by its name in the packet.
    pub row: String,
    /// On centre.
    pub spacing: Length,
}

/// What the engineer of record gives.
///
/// ```
/// use seamwright::job::Schedule;
/// use seamwright::units::Length;
/// let schedule = Schedule { name: "A. Example, P.E.".into(), document: "sheet S-4".into(), rows: vec![], clips: Some(Length::inches(24)) };
/// assert_eq!(schedule.source().to_string(), "engineer A. Example, P.E., sheet S-4");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Schedule {
    /// Who answers for it.
    pub name: String,
    /// The sheet or letter that holds it.
    pub document: String,
    /// Spacings of rows.
    #[cfg_attr(feature = "serde", serde(default))]
    pub rows: Vec<ScheduledRow>,
    /// The spacing of clips along every seam.
    #[cfg_attr(feature = "serde", serde(default))]
    pub clips: Option<Length>,
}

impl Schedule {
    /// What its figures carry.
    #[must_use]
    pub fn source(&self) -> Source {
        Source::Engineer { name: self.name.clone().into(), document: self.document.clone().into() }
    }

    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (path, text) in [("name", &self.name), ("document", &self.document)] {
            if text.trim().is_empty() {
                faults.add(Error::new(ErrorKind::Missing, "an engineer's schedule names who answers for it and where it stands").at(path).accepts("a name"));
            }
        }
        for (i, row) in self.rows.iter().enumerate() {
            faults.keep(row.spacing.positive(&format!("rows[{i}].spacing")));
            if self.rows.iter().take(i).any(|o| o.line == row.line && o.row == row.row) {
                faults.add(
                    Error::new(ErrorKind::Conflict, "a row scheduled twice")
                        .at(format!("rows[{i}]"))
                        .value_of(format_args!("{}, {}", row.line, row.row))
                        .accepts("each row once"),
                );
            }
        }
        if let Some(clips) = self.clips {
            faults.keep(clips.positive("clips"));
        }
        faults.check()
    }

    /// Puts the engineer's spacings in the place of the detail's, and marks the scheduled rows that served.
    pub(super) fn apply(&self, line: &str, kind: &str, along: &mut [AlongLine], served: &mut [bool]) {
        for entry in along {
            let Along::Fasteners { spacing, source, .. } = &mut entry.what else { continue };
            let by = |wanted: &str| self.rows.iter().position(|r| r.line == wanted && r.row == entry.name);
            let of_kind = by(kind);
            // A row of the kind serves even where a line's own row stands before it.
            for i in [of_kind, by(line)].into_iter().flatten() {
                if let (Some(row), Some(flag)) = (self.rows.get(i), served.get_mut(i)) {
                    *spacing = row.spacing;
                    *source = self.source();
                    *flag = true;
                }
            }
        }
    }

    /// Refuses scheduled rows that no line of the roof has: a slip of the pen must not leave a row without its engineer.
    pub(super) fn all_served(&self, served: &[bool], known: &[(String, String)]) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (i, row) in self.rows.iter().enumerate() {
            if !served.get(i).copied().unwrap_or(false) {
                let mut rows: Vec<&str> = known.iter().filter(|(line, _)| *line == row.line).map(|(_, r)| r.as_str()).collect();
                rows.sort_unstable();
                rows.dedup();
                let accepts = if rows.is_empty() {
                    let mut lines: Vec<&str> = known.iter().map(|(line, _)| line.as_str()).collect();
                    lines.sort_unstable();
                    lines.dedup();
                    format!("a line among {}", lines.join(", "))
                } else {
                    format!("a row among {}", rows.join(", "))
                };
                faults.add(
                    Error::new(ErrorKind::Unknown, "no row of fasteners has this line and name")
                        .at(format!("engineer.rows[{i}]"))
                        .value_of(format_args!("{}, {}", row.line, row.row))
                        .accepts(accepts),
                );
            }
        }
        faults.check()
    }
}
