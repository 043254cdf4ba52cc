//! What lies along a real line, part by part.

use super::bay::SideBays;
use super::closures::ClosureList;
use super::struck_lines::StruckLine;
use super::trim_runs::TrimLength;
use crate::junction::{Bites, Side};
use crate::record::{Caution, Source};
use crate::roof::LineKind;
use crate::spacing::Stations;
use crate::trim::Profile;
use crate::units::{Length, Volume};

/// Closures of one side. See [`JunctionLine`](super::JunctionLine).
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClosureRow {
    /// What they are called in the section.
    pub name: String,
    /// On which side.
    pub side: Side,
    /// Height of the web.
    pub web: Length,
    /// The row of screws that they take, by its name in the section; `None` where the section has none and the starting figure stands.
    pub screw_row: Option<String>,
    /// The pieces.
    pub list: ClosureList,
}

/// Tape along the line. See [`JunctionLine`](super::JunctionLine).
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TapeRun {
    /// What it is called in the section.
    pub name: String,
    /// On which side.
    pub side: Side,
    /// Its width.
    pub width: Length,
    /// Whether it follows the panels over their seams.
    pub over_seams: bool,
    /// Its length: straight, or developed over pans and seams with its laps.
    pub length: Length,
}

/// A bead along the line. See [`JunctionLine`](super::JunctionLine).
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BeadRun {
    /// What it is called in the section.
    pub name: String,
    /// On which side.
    pub side: Side,
    /// Its width.
    pub width: Length,
    /// Its depth.
    pub depth: Length,
    /// Its length.
    pub length: Length,
    /// Its volume.
    pub volume: Volume,
}

/// Plugs in the hollows of seams. See [`JunctionLine`](super::JunctionLine).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SeamPlugs {
    /// On which side.
    pub side: Side,
    /// How many: one for every seam that crosses the line or ends its bays.
    pub count: usize,
}

/// A row of fasteners. See [`JunctionLine`](super::JunctionLine).
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FastenerRow {
    /// What it is called in the section.
    pub name: String,
    /// On which side.
    pub side: Side,
    /// What they bite.
    pub bites: Bites,
    /// Greatest spacing on centre.
    pub spacing: Length,
    /// Whose spacing it is.
    pub source: Source,
    /// Whether that is an engineer.
    pub engineered: bool,
    /// How many there are.
    pub count: usize,
    /// Stations along the line; `None` for the screws of closures, which go by the bay: their stations are those of each piece.
    pub stations: Option<Stations>,
}

/// What a cleat is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum CleatKind {
    /// A continuous cleat, hooked by a trim's hem.
    Continuous,
    /// An offset cleat, hooked by the panels' folds.
    Offset,
}

/// A cleat along the line. See [`JunctionLine`](super::JunctionLine).
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CleatRun {
    /// What it is called in the section.
    pub name: String,
    /// On which side.
    pub side: Side,
    /// What it is.
    pub kind: CleatKind,
    /// Its length: the line's.
    pub length: Length,
}

/// A trim along the line. See [`JunctionLine`](super::JunctionLine).
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TrimRun {
    /// What it is called in the section.
    pub name: String,
    /// Its number among the section's trims.
    pub trim: usize,
    /// Its profile; that at the line's upper end where it tapers.
    pub profile: Profile,
    /// Its profile at the line's lower end, where it tapers.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub lower: Option<Profile>,
    /// Its run and lap.
    pub length: TrimLength,
}

/// Everything along one real line.
///
/// See [`JunctionLine`](super::JunctionLine) for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LineAssembly {
    /// The line's name.
    pub name: String,
    /// Its kind.
    pub kind: LineKind,
    /// Its true length.
    pub length: Length,
    /// The sides with panels.
    pub sides: Vec<SideBays>,
    /// Closures.
    pub closures: Vec<ClosureRow>,
    /// Tapes.
    pub tapes: Vec<TapeRun>,
    /// Beads.
    pub beads: Vec<BeadRun>,
    /// Plugs.
    pub plugs: Vec<SeamPlugs>,
    /// Rows of fasteners.
    pub rows: Vec<FastenerRow>,
    /// Cleats.
    pub cleats: Vec<CleatRun>,
    /// Trims, in the order in which they are set.
    pub trims: Vec<TrimRun>,
    /// Lines to strike, in the order of the work.
    pub struck: Vec<StruckLine>,
    /// The same at the line's lower end, where they turn away from it: then `struck` are those at its upper end, and each is struck from the one to the other.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub struck_lower: Vec<StruckLine>,
    /// What to know before it is built. The section's own cautions are not repeated.
    pub cautions: Vec<Caution>,
}
