//! What a folding plan says: the brake with the user's tools, and the steps in order.

use crate::error::{Error, ErrorKind, Faults};
use crate::trim::curves::{Curve, Xy, length, minus};
use crate::trim::leg::Face;
use crate::trim::point::Point;
use crate::trim::springback::SpringbackBy;
use crate::trim::walk::Part;
use crate::units::{BendAngle, Length};

/// The most corners of one tool.
const MOST_CORNERS: usize = 500;
/// The most tools of one kind.
const MOST_TOOLS: usize = 20;

/// One tool of a brake, as a polygon in the plane square to the bend.
///
/// The tools stand in the brake's own coordinates: the origin is the line at which the brake bends ([`ClampLine`] says which line of a bend is brought there),
/// on the underside of the clamped sheet; x runs away from the back gauge, so that the gauge is at negative x, and y upwards.
/// There is no tool but those that are given.
///
/// ```
/// use seamwright::trim::{Point, ToolOutline};
/// use seamwright::units::Length;
/// let at = |x, y| Point { x: Length::inches(x), y: Length::inches(y) };
/// let beam = ToolOutline { name: "clamping beam".into(), points: vec![at(0, 0), at(-4, 0), at(-4, 6)] };
/// assert_eq!(beam.points.len(), 3);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ToolOutline {
    /// What the shop calls it.
    pub name: String,
    /// Its corners in order, either way round; the first is not repeated.
    pub points: Vec<Point>,
}

impl ToolOutline {
    /// Its sides.
    pub(super) fn curves(&self) -> Vec<Curve> {
        let corners: Vec<Xy> = self.points.iter().map(|p| (p.x.mm(), p.y.mm())).collect();
        corners.iter().zip(corners.iter().cycle().skip(1)).map(|(a, b)| Curve::line(*a, *b)).filter(|c| length(minus(c.to, c.from)) > 0.0).collect()
    }

    fn check(&self) -> Result<(), Error> {
        let at = |e: Error| e.at("points");
        if self.points.len() < 3 {
            return Err(at(Error::new(ErrorKind::Geometry, "a tool needs three corners").value_of(self.points.len()).accepts("3 or more")));
        }
        if self.points.len() > MOST_CORNERS {
            return Err(at(Error::new(ErrorKind::TooLarge, "too many corners").value_of(self.points.len()).accepts(format!("at most {MOST_CORNERS}"))));
        }
        let sides = self.curves();
        let doubled: f64 = sides.iter().map(|s| (s.from.0 * s.to.1) - (s.from.1 * s.to.0)).sum();
        let around: f64 = sides.iter().map(|s| length(minus(s.to, s.from))).sum();
        if sides.len() < self.points.len() || doubled.abs() < 1e-9 * around * around {
            return Err(at(Error::new(ErrorKind::Geometry, "a tool without area, or a corner twice")
                .value_of(&self.name)
                .accepts("corners that differ and go around an area")));
        }
        for (i, a) in sides.iter().enumerate() {
            for (j, b) in sides.iter().enumerate().skip(i + 2) {
                if !(i == 0 && j + 1 == sides.len()) && a.meets(b) {
                    return Err(at(Error::new(ErrorKind::Geometry, "the outline of a tool crosses itself")
                        .value_of(format_args!("sides {} and {}", i + 1, j + 1))
                        .accepts("sides that meet at their ends only")));
                }
            }
        }
        Ok(())
    }
}

/// The tools of one way of folding.
///
/// ```
/// use seamwright::trim::Tooling;
/// assert!(Tooling::default().still.is_empty());
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(default, deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Tooling {
    /// Tools that stand still while the sheet swings: the clamping beam with its nose, the table, the stops of the gauge.
    pub still: Vec<ToolOutline>,
    /// Tools that turn with the swung side, drawn where they rest before the swing: the folding beam.
    pub swinging: Vec<ToolOutline>,
}

/// Which line of a bend is brought to the line at which the brake bends.
///
/// ```
/// use seamwright::trim::ClampLine;
/// assert_ne!(ClampLine::BendLine, ClampLine::SightLine);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum ClampLine {
    /// The bend line, halfway between the tangent lines.
    BendLine,
    /// The sight line: one inside radius beyond the tangent line that goes under the nose, where the inside face of a square bend comes to stand (aviation practice, from
    /// memory).
    SightLine,
}

/// A folding brake: how the sheet is set, and the outlines of its tools.
///
/// ```
/// use seamwright::trim::{Brake, ClampLine, Tooling};
/// let bare = Brake { clamp_line: ClampLine::BendLine, up: Tooling::default(), down: None, least_clamped: None, least_swung: None };
/// assert!(bare.down.is_none()); // folds upwards only
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Brake {
    /// Which line of a bend lies at the origin of the tools.
    pub clamp_line: ClampLine,
    /// The tools when it folds upwards.
    #[cfg_attr(feature = "serde", serde(default))]
    pub up: Tooling,
    /// The tools when it folds downwards; without them it folds upwards only.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub down: Option<Tooling>,
    /// The least flat that it can clamp, from the clamp line back to an edge or to a bend made before.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub least_clamped: Option<Length>,
    /// The least flat that it can swing, from the clamp line on to an edge or to a bend made before.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub least_swung: Option<Length>,
}

impl Brake {
    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (name, limit) in [("least_clamped", self.least_clamped), ("least_swung", self.least_swung)] {
            faults.keep(limit.map(|l| l.positive(name)).transpose());
        }
        for (way, tooling) in [("up", Some(&self.up)), ("down", self.down.as_ref())] {
            for (kind, tools) in tooling.into_iter().flat_map(|t| [("still", &t.still), ("swinging", &t.swinging)]) {
                if tools.len() > MOST_TOOLS {
                    faults.add(
                        Error::new(ErrorKind::TooLarge, "too many tools")
                            .at(format!("{way}.{kind}"))
                            .value_of(tools.len())
                            .accepts(format!("at most {MOST_TOOLS}")),
                    );
                    continue;
                }
                for (i, tool) in tools.iter().enumerate() {
                    faults.keep(tool.check().map_err(|e| e.under(&format!("{way}.{kind}[{i}]"))));
                }
            }
        }
        faults.check()
    }
}

/// An edge of the sheet, to be set against the back gauge.
///
/// ```
/// use seamwright::trim::SheetEdge;
/// assert_eq!(SheetEdge::Start.other(), SheetEdge::End);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SheetEdge {
    /// Where the profile starts.
    Start,
    /// Where the profile ends.
    End,
}

impl SheetEdge {
    /// The other one.
    #[must_use]
    pub const fn other(self) -> SheetEdge {
        match self {
            SheetEdge::Start => SheetEdge::End,
            SheetEdge::End => SheetEdge::Start,
        }
    }
}

/// How a step closes its bend.
///
/// ```
/// use seamwright::trim::FoldWay;
/// assert_eq!(FoldWay::default(), FoldWay::Swing);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum FoldWay {
    /// Clamped at the clamp line, the other side swung by the folding beam.
    #[default]
    Swing,
    /// Pressed further between the beams, as a hem is closed: no tool stands in the fold, and it does not spring back.
    Press,
}

/// One step at the brake.
///
/// ```
/// use seamwright::trim::{BendStep, Face, FoldWay, Part, SheetEdge};
/// let step = BendStep::new(Part::Body(0), SheetEdge::Start, Face::Upper);
/// assert_eq!((step.to, step.way), (None, FoldWay::Swing));
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BendStep {
    /// The bend, or the hem.
    pub bend: Part,
    /// The edge that is set against the back gauge; the side of that edge is clamped, the other swung.
    pub gauged: SheetEdge,
    /// The face that lies upwards.
    pub face_up: Face,
    /// How far it is bent in this step, from flat; to its full angle, unless said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub to: Option<BendAngle>,
    /// How it is closed.
    #[cfg_attr(feature = "serde", serde(default))]
    pub way: FoldWay,
}

impl BendStep {
    /// A bend swung to its full angle.
    #[must_use]
    pub const fn new(bend: Part, gauged: SheetEdge, face_up: Face) -> BendStep {
        BendStep { bend, gauged, face_up, to: None, way: FoldWay::Swing }
    }

    /// The same step, stopped at this angle from flat.
    #[must_use]
    pub const fn until(mut self, angle: BendAngle) -> BendStep {
        self.to = Some(angle);
        self
    }

    /// The same bend, pressed instead of swung.
    #[must_use]
    pub const fn pressed(mut self) -> BendStep {
        self.way = FoldWay::Press;
        self
    }
}

/// The steps at a brake, in order.
///
/// ```
/// use seamwright::trim::{BendStep, Brake, ClampLine, Face, FoldingPlan, Part, SheetEdge, Tooling};
/// let plan = FoldingPlan {
///     brake: Brake { clamp_line: ClampLine::BendLine, up: Tooling::default(), down: None, least_clamped: None, least_swung: None },
///     springback: None,
///     steps: vec![BendStep::new(Part::Body(0), SheetEdge::Start, Face::Upper)],
/// };
/// assert_eq!(plan.steps.len(), 1);
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FoldingPlan {
    /// The brake.
    pub brake: Brake,
    /// What the metal springs back; nothing, unless said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub springback: Option<SpringbackBy>,
    /// The steps in order.
    pub steps: Vec<BendStep>,
}
