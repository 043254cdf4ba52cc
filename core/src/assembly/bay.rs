//! Bays: what lies between two seams along a junction line.

use crate::junction::Side;
use crate::record::Caution;
use crate::roof::Line;
use crate::units::{Angle, Length};

/// A side of a roof line, seen from its start to its end.
///
/// ```
/// use seamwright::assembly::Flank;
/// assert_ne!(Flank::Left, Flank::Right);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Flank {
    /// The left: the line's own [`side`](Line::side).
    Left,
    /// The right: its [`other`](Line::other) side.
    Right,
}

impl Flank {
    /// The flank on which the plane of this number lies, if it lies along the line.
    #[must_use]
    pub fn of(line: &Line, plane: usize) -> Option<Flank> {
        if line.side.plane == plane { Some(Flank::Left) } else { line.other().filter(|o| o.plane == plane).map(|_| Flank::Right) }
    }
}

/// What a bay ends at.
///
/// ```
/// use seamwright::assembly::BayEnd;
/// assert_ne!(BayEnd::Seam, BayEnd::Corner);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum BayEnd {
    /// A seam.
    Seam,
    /// The ripped or turned-up side of a panel.
    Rip,
    /// A corner of the roof: the panel comes to a point there, or goes on along another line.
    Corner,
}

/// Which end of a panel lies at a line.
///
/// ```
/// use seamwright::assembly::PanelEdge;
/// assert_ne!(PanelEdge::Lower, PanelEdge::Upper);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PanelEdge {
    /// Its lower end: an eave, a valley, the foot of an upper panel.
    Lower,
    /// Its upper end: a ridge, a hip, a wall above it.
    Upper,
}

/// To which side seams lean from the line, looking up the slope.
///
/// ```
/// use seamwright::assembly::Hand;
/// use seamwright::units::Angle;
/// assert_eq!(Hand::of(Angle::SQUARE), Hand::Square);
/// assert_eq!(Hand::of(Angle::parse("40 deg")?), Hand::Right);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Hand {
    /// Square: one piece fits either way round.
    Square,
    /// They lean to the line's right end: the line rises to the right.
    Right,
    /// They lean to the line's left end.
    Left,
}

impl Hand {
    /// The hand of a bay whose seams stand at this angle from the line's right-hand direction.
    #[must_use]
    pub fn of(meeting: Angle) -> Hand {
        match meeting.degrees() {
            d if d < 90.0 => Hand::Right,
            d if d > 90.0 => Hand::Left,
            _ => Hand::Square,
        }
    }
}

/// One bay: the stretch of a line that ends one panel. Stations run along the line from its start; left and right are as seen looking up the slope.
///
/// See [`LineBays`](super::LineBays) for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Bay {
    /// The panel, as a number in [`LaidPlane::panels`](crate::layout::LaidPlane::panels).
    pub panel: usize,
    /// Its strip, from the left, from 0.
    pub strip: usize,
    /// Its run in the strip.
    pub run: usize,
    /// Its mark.
    pub mark: String,
    /// Which end of it lies here.
    pub end: PanelEdge,
    /// Where the bay starts along the line.
    pub from: Length,
    /// Where it ends along the line.
    pub to: Length,
    /// Its length along the line.
    pub length: Length,
    /// Its width across, square to the seams.
    pub width: Length,
    /// From the line's right-hand direction to the seams: 90 degrees is square, less where the line rises to the right, more where it falls.
    pub meeting: Angle,
    /// The hand.
    pub hand: Hand,
    /// Whether the panel goes on past the line beside the bay: it is cut around an opening or a notch there.
    pub notched: bool,
    /// What it ends at on the left.
    pub left: BayEnd,
    /// What it ends at on the right.
    pub right: BayEnd,
}

impl Bay {
    /// How many of its two ends stand at a seam.
    #[must_use]
    pub fn seam_ends(&self) -> u32 {
        u32::from(self.left == BayEnd::Seam) + u32::from(self.right == BayEnd::Seam)
    }
}

/// A stretch of a line, from station to station.
///
/// See [`LineBays`](super::LineBays) for an example.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Stretch {
    /// Where it starts along the line.
    pub from: Length,
    /// Where it ends along the line.
    pub to: Length,
}

/// A panel that runs along a line: at a rake, a sidewall, the side of a curb.
///
/// See [`LineBays`](super::LineBays) for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Beside {
    /// The panel, as a number in [`LaidPlane::panels`](crate::layout::LaidPlane::panels).
    pub panel: usize,
    /// Its mark.
    pub mark: String,
    /// Its width.
    pub width: Length,
    /// Along which stretch of the line.
    pub stretch: Stretch,
    /// What stands at the line: a seam, or the panel's ripped side.
    pub at: BayEnd,
}

/// One side of a line with its real bays.
///
/// See [`LineBays`](super::LineBays) for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SideBays {
    /// Which side of the junction.
    pub side: Side,
    /// On which flank of the line it lies.
    pub flank: Flank,
    /// Number of the plane in the roof.
    pub plane: usize,
    /// The meeting angle, without sign: 90 degrees is square, 0 is along the seams.
    pub meeting: Angle,
    /// The bays in order along the line.
    pub bays: Vec<Bay>,
    /// The stretches without a panel.
    pub gaps: Vec<Stretch>,
    /// The panels that run along the line, where it lies along the seams.
    pub beside: Vec<Beside>,
    /// Where seams cross the line or end at it, each once.
    pub seams: Vec<Length>,
    /// All bays together, along the line.
    pub covered: Length,
    /// What to know before pieces are cut.
    pub cautions: Vec<Caution>,
}
