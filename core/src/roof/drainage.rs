//! Where the water of each plane goes.

use super::line::{Beyond, Line};
use super::{LineKind, Water};

/// Where water goes that reaches a line.
///
/// ```
/// use seamwright::roof::Outfall;
/// assert_ne!(Outfall::Off, Outfall::Plane(2));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Outfall {
    /// Over the line onto the plane of this number.
    Plane(usize),
    /// Into the valley, and down along it.
    Valley,
    /// Off the roof.
    Off,
    /// Against a wall.
    Wall,
    /// Against the back of a curb.
    Curb,
    /// The line cannot be named, so neither can this.
    Unknown,
}

/// Water of one plane that reaches one line.
///
/// ```
/// use seamwright::roof::{Drain, Outfall};
/// let d = Drain { plane: 0, line: 3, to: Outfall::Off };
/// assert_eq!(d.line, 3);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Drain {
    /// The plane that drains, by number.
    pub plane: usize,
    /// The line that its water reaches, by number.
    pub line: usize,
    /// Where the water goes from there.
    pub to: Outfall,
}

pub(super) fn drains(lines: &[Line]) -> Vec<Drain> {
    let mut out = Vec::new();
    for (number, line) in lines.iter().enumerate() {
        for side in line.sides().filter(|s| s.water == Water::Toward) {
            let to = match (&line.beyond, line.kind) {
                (Beyond::Wall(_), _) => Outfall::Wall,
                (Beyond::Hole(_), _) => Outfall::Curb,
                (Beyond::Open, _) => Outfall::Off,
                (Beyond::Plane(_), LineKind::Unknown) => Outfall::Unknown,
                (Beyond::Plane(_), _) => line.crossing().map_or(Outfall::Valley, |(_, lower)| Outfall::Plane(lower)),
            };
            out.push(Drain { plane: side.plane, line: number, to });
        }
    }
    out.sort_by_key(|d| (d.plane, d.line));
    out
}
