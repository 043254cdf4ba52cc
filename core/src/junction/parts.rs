//! What every kind of junction gives: its trims, the ends of the panels, and what lies along its line.

use super::kick_out::KickOutPiece;
use super::support::SectionPoint;
use crate::error::Error;
use crate::panel::PanelEnd;
use crate::record::{Caution, Source};
use crate::trim::Profile;
use crate::units::{Length, Sum};
use std::borrow::Cow;

/// A side of a junction. Where there is one roof plane it is the first; the second is then the wall, the fascia or nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Side {
    /// The plane on the side of negative x: the lower plane of a transition, the only plane of an eave.
    First,
    /// The plane on the side of positive x.
    Second,
    /// The riser between the two planes of a step. What lies on it is measured from its upper edge, up being positive.
    Riser,
}

/// A trim of the section, with where it lies.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JunctionTrim {
    /// What it is called.
    pub name: Cow<'static, str>,
    /// Its profile.
    pub profile: Profile,
    /// The corners of the face that lies on the supports, in the order of the legs; the first is the start edge.
    pub corners: Vec<SectionPoint>,
}

/// What a fastener through a panel bites.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Bites {
    /// Deck or framing: it pins what it goes through.
    Structure,
    /// The panel alone: it rides with it.
    Panel,
    /// A slot: what it goes through slides.
    Slot,
    /// Trim to trim, through no panel.
    Trim,
}

/// What lies along the junction's line, for each run of it.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Along {
    /// A row of fasteners.
    Fasteners {
        /// What they bite.
        bites: Bites,
        /// The spacing on centre, as the engineer or common practice gives it; its source says which.
        spacing: Length,
        /// Whose spacing it is.
        source: Source,
    },
    /// Sealant tape.
    Tape {
        /// Its width.
        width: Length,
        /// Whether it crosses the seams, and so follows the panel's surface.
        over_seams: bool,
    },
    /// A bead of gun sealant of this cross-section's width and depth.
    Bead {
        /// Width.
        width: Length,
        /// Depth.
        depth: Length,
    },
    /// Closure pieces, one a bay.
    Closures {
        /// The web's height.
        web: Length,
    },
    /// A continuous cleat.
    ContinuousCleat,
    /// An offset cleat.
    OffsetCleat,
}

/// Something along the line, with where it lies in the section.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AlongLine {
    /// What it is called.
    pub name: Cow<'static, str>,
    /// On which side of the junction.
    pub side: Side,
    /// What it is.
    pub what: Along,
    /// Its distance from the junction line, along its own plane and square to the line. On a roof and on a wall or a fascia, positive is up; across the
    /// slope, at a rake positive is toward the roof, and at a sidewall negative is.
    pub from_line: Length,
}

/// What a line is measured from: a thing that is there at that moment of the work.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Datum {
    /// The junction line: where the two decks meet, or the deck ends, struck on the deck.
    JunctionLine,
    /// The trim's lower edge, once the trim is held in place.
    TrimLowerEdge,
    /// The trim's top edge.
    TrimTopEdge,
    /// A line struck before this one on the same side, by its name.
    Line(Cow<'static, str>),
}

impl core::fmt::Display for Datum {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Datum::JunctionLine => f.pad("the junction line"),
            Datum::TrimLowerEdge => f.pad("the trim's lower edge"),
            Datum::TrimTopEdge => f.pad("the trim's top edge"),
            Datum::Line(name) => f.pad(name),
        }
    }
}

/// A line to strike, parallel to the junction line; or, where it lies over the edge of the deck, to gauge.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LayoutLine {
    /// What goes on it.
    pub name: Cow<'static, str>,
    /// On which side of the junction it is struck.
    pub side: Side,
    /// What it is measured from.
    pub datum: Datum,
    /// How far from its datum, along the slope and square to the line: up it from the junction line, a lower edge and a struck line (negative is
    /// down), down it from a top edge.
    pub from_datum: Length,
    /// Where it is, along its own plane from the junction line, in the sign of [`AlongLine::from_line`].
    pub from_line: Length,
}

impl LayoutLine {
    /// A line measured from the junction line.
    pub(super) fn from_junction(name: &'static str, side: Side, at: Sum) -> Result<LayoutLine, Error> {
        let at = at.length()?;
        Ok(LayoutLine { name: name.into(), side, datum: Datum::JunctionLine, from_datum: at, from_line: at })
    }

    /// A line measured this far down from the trim's top edge, which lies at `top`.
    pub(super) fn below_top_edge(name: &'static str, side: Side, top: Length, below: Length) -> Result<LayoutLine, Error> {
        Ok(LayoutLine { name: name.into(), side, datum: Datum::TrimTopEdge, from_datum: below, from_line: (top - below).length()? })
    }

    /// A line measured this far up from one that was struck before it at `struck_at`.
    pub(super) fn from_line(name: &'static str, side: Side, struck: &'static str, struck_at: Length, by: Sum) -> Result<LayoutLine, Error> {
        Ok(LayoutLine { name: name.into(), side, datum: Datum::Line(struck.into()), from_datum: by.length()?, from_line: (by + struck_at).length()? })
    }
}

/// The end that a junction sets for the panels of one side.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SideEnd {
    /// Which side.
    pub side: Side,
    /// The end.
    pub end: PanelEnd,
}

/// What others build and the section reckons with: it is drawn and named, and neither made nor ordered.
///
/// ```
/// use seamwright::junction::Adjoining;
/// use seamwright::units::Length;
/// let gutter = Adjoining::Gutter { back: Length::ZERO, front: Length::inches(5) };
/// assert_ne!(gutter, Adjoining::Cladding { lower_edge: Length::inches(5) });
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Adjoining {
    /// A slot that is cut in the deck on each side of a ridge, under perforated closures.
    VentSlot {
        /// Its width on each side, along the slope from the junction line.
        width: Length,
        /// The share of a closure's web that is open.
        open_ratio: f64,
    },
    /// A gutter, of which the opening is known: level and square to the eave, from the junction line.
    Gutter {
        /// Its back edge.
        back: Length,
        /// Its front lip.
        front: Length,
    },
    /// The cladding of the wall, which comes down over the flashing's leg.
    Cladding {
        /// The height of its lower edge above the junction line.
        lower_edge: Length,
    },
    /// The deck of the second plane is built up.
    BuiltUp {
        /// By so much, square to it.
        height: Length,
        /// From the junction line to where that begins, up the slope.
        from: Length,
    },
    /// Packing on the deck of the second plane, under the metal that lies on it, and tapered off above.
    Packing {
        /// So thick, square to the deck.
        height: Length,
        /// From the junction line to its edges, up the slope.
        reach: (Length, Length),
    },
    /// A pipe through the roof, with its base on the pan.
    Pipe {
        /// Its diameter.
        diameter: Length,
        /// From its middle to the edges of the hole in the pan, down and up the slope.
        hole: (Length, Length),
        /// From its middle to the edges of its base.
        base: (Length, Length),
    },
    /// The curbs on both sides of an expansion joint.
    JointCurbs {
        /// Between them, and between the decks.
        gap: Length,
        /// Width of each.
        width: Length,
        /// Height of each above its deck.
        height: Length,
    },
    /// The riser of a step: the second plane's deck begins over it.
    Riser {
        /// From the lower deck plumb up to the upper deck's edge.
        height: Length,
    },
    /// The wall under a coping.
    WallTop {
        /// From face to face.
        thickness: Length,
    },
    /// What comes up a wall's face under its coping.
    Covered {
        /// On which face.
        side: Side,
        /// Its top, from the wall's top edge on that side; negative is below it.
        top_edge: Length,
        /// How far it stands out from the face.
        thickness: Length,
    },
}

/// A junction as solved in its section.
#[derive(Debug, Clone, PartialEq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Solved {
    /// The trims, in the order in which they are set.
    pub trims: Vec<JunctionTrim>,
    /// The panel ends.
    pub ends: Vec<SideEnd>,
    /// What lies along the line, in the order of the work.
    pub along: Vec<AlongLine>,
    /// The lines that the crew strikes, in the order of the work; each refers to what is there by then.
    pub lines: Vec<LayoutLine>,
    /// The same lines as they lie at the lower end of the junction line, where they turn away from it: then `lines` are those at its upper end, and each is struck
    /// between the two. Empty where all run parallel to it.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub lower_lines: Vec<LayoutLine>,
    /// The same trims as they are and lie at the lower end of the junction line, in their order, where they turn away from it or taper; empty where all run parallel to it.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub lower_trims: Vec<JunctionTrim>,
    /// The piece that turns the water off a wall at the foot of its flashing, where an eave dies into the wall.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub kick_out: Option<KickOutPiece>,
    /// What others build there.
    pub adjoining: Vec<Adjoining>,
    /// What must be said beside it.
    pub cautions: Vec<Caution>,
}

impl Solved {
    /// The end for the panels of this side, if they end here.
    #[must_use]
    pub fn end(&self, side: Side) -> Option<&PanelEnd> {
        self.ends.iter().find(|e| e.side == side).map(|e| &e.end)
    }

    /// The trim of this name.
    #[must_use]
    pub fn trim(&self, name: &str) -> Option<&JunctionTrim> {
        self.trims.iter().find(|t| t.name == name)
    }
}
