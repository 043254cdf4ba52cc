//! What a folding plan gives: where the gauge stands at each step, how the piece is handled, and what hits.

use super::plan::{FoldWay, SheetEdge};
use super::strip::SheetPart;
use crate::error::{Error, ErrorKind};
use crate::trim::leg::{Direction, Face};
use crate::trim::walk::Part;
use crate::units::{Angle, Length};
use core::fmt;

/// How the piece is moved between two steps.
///
/// ```
/// use seamwright::trim::{Face, Handling, SheetEdge};
/// let over = Handling::between((SheetEdge::Start, Face::Upper), (SheetEdge::End, Face::Lower));
/// assert!(over.flipped && !over.turned); // rolled over: its left end stays at the left
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Handling {
    /// Its left end goes to the right: end for end.
    pub turned: bool,
    /// The other face comes up.
    pub flipped: bool,
}

impl Handling {
    /// From one way of lying (the edge at the gauge, the face that is up) to the next.
    ///
    /// The other edge at the gauge with the same face up is a turn; the other face up with the same edge at the gauge is a turn and a flip.
    #[must_use]
    pub fn between(before: (SheetEdge, Face), after: (SheetEdge, Face)) -> Handling {
        let flipped = before.1 != after.1;
        Handling { turned: (before.0 != after.0) != flipped, flipped }
    }
}

/// One step with its figures.
///
/// The gauge figure is what the back gauge is set to: the distance, square to the clamp line, from there to the outermost point of the clamped side as it lies in the brake,
/// whether that is the cut edge or a fold made before. The stop is taken to be as high as what it stops.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendOrder, BendRule, BendStep, Brake, ClampLine, Face, FoldingPlan, NeutralFactor, Part, Profile, SheetEdge, Tooling};
/// use seamwright::units::{BendAngle, Length};
/// let l = Profile::builder(Length::mils(24)).painted(Face::Upper).inside_radius(Length::mils(24)).leg("a", Length::inches(2));
/// let profile = l.up(BendAngle::SQUARE).leg("b", Length::inches(3)).build()?;
/// let brake = Brake { clamp_line: ClampLine::SightLine, up: Tooling::default(), down: None, least_clamped: None, least_swung: None };
/// let steps = vec![BendStep::new(Part::Body(0), SheetEdge::Start, Face::Upper)];
/// let order = BendOrder { profile, rule: BendRule::neutral_axis(NeutralFactor::MIDDLE), plan: FoldingPlan { brake, springback: None, steps } };
/// let step = &order.compute()?.steps[0];
/// // To one radius beyond the tangent line: the leg less one thickness.
/// assert_eq!(step.gauge, Length::mils(2000 - 24));
/// assert!(step.from_edge > step.gauge); // the bend line lies a little beyond
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct GaugeStep {
    /// The bend, or the hem.
    pub bend: Part,
    /// The edge towards the back gauge.
    pub gauged: SheetEdge,
    /// The face that lies upwards.
    pub face_up: Face,
    /// Whether the swung side goes up or down.
    pub folds: Direction,
    /// Swung or pressed.
    pub way: FoldWay,
    /// The bend before the step, from flat.
    pub from: Angle,
    /// The bend after the step, from flat.
    pub to: Angle,
    /// The angle that it is folded to, from which it springs back.
    pub folded_to: Angle,
    /// How the piece is moved before the step; not at all in the first.
    pub handling: Handling,
    /// From the gauged edge to the bend line, along the sheet.
    pub from_edge: Length,
    /// From the gauged edge to the line that lies at the clamp line, along the sheet.
    pub clamp_line: Length,
    /// What the back gauge is set to.
    pub gauge: Length,
    /// What of the sheet stands at the gauge.
    pub stop: SheetPart,
    /// Flat under the clamp: from the clamp line back to an edge or to a bend made before.
    pub clamped: Length,
    /// Flat that is swung: from the clamp line on to an edge or to a bend made before.
    pub swung: Length,
}

/// What hits, or is hit.
///
/// ```
/// use seamwright::trim::{HitBody, Part, SheetPart};
/// assert_eq!(HitBody::Tool("nose".into()).to_string(), "nose");
/// assert_eq!(HitBody::Sheet(SheetPart::Leg(Part::Body(0))).to_string(), "leg 1");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum HitBody {
    /// A part of the sheet.
    Sheet(SheetPart),
    /// A tool, by its name.
    Tool(String),
}

impl fmt::Display for HitBody {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            HitBody::Sheet(part) => part.fmt(f),
            HitBody::Tool(name) => f.write_str(name),
        }
    }
}

/// Why a step cannot be done.
///
/// ```
/// use seamwright::trim::{Part, StepFault};
/// use seamwright::units::Length;
/// let short = StepFault::ClampedTooShort { bend: Part::Body(1), flat: Length::inches_64(16), least: Length::inches_64(24) };
/// assert_eq!(short.to_string(), "bend 2: 6.35 mm of flat under the clamp, the brake needs 9.525 mm");
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum StepFault {
    /// Something hits on the swing.
    Hits {
        /// The bend that is being made.
        bend: Part,
        /// Its angle from flat when it hits; the angle before the step where it does not even lie in.
        at: Angle,
        /// What moves.
        moving: HitBody,
        /// What it hits.
        still: HitBody,
    },
    /// Too little to hold.
    ClampedTooShort {
        /// The bend that is to be made.
        bend: Part,
        /// The flat under the clamp.
        flat: Length,
        /// What the brake needs.
        least: Length,
    },
    /// Too little to swing.
    SwungTooShort {
        /// The bend that is to be made.
        bend: Part,
        /// The flat before the clamp line.
        flat: Length,
        /// What the brake needs.
        least: Length,
    },
}

/// How a step calls its bend.
fn called(bend: Part) -> String {
    match bend {
        Part::Body(i) => format!("bend {}", i.saturating_add(1)),
        hem => hem.to_string(),
    }
}

impl StepFault {
    /// The bend of the step.
    #[must_use]
    pub const fn bend(&self) -> Part {
        match self {
            StepFault::Hits { bend, .. } | StepFault::ClampedTooShort { bend, .. } | StepFault::SwungTooShort { bend, .. } => *bend,
        }
    }

    /// The bend's angle when something hits; none where the flat is too short.
    #[must_use]
    pub const fn at(&self) -> Option<Angle> {
        match self {
            StepFault::Hits { at, .. } => Some(*at),
            StepFault::ClampedTooShort { .. } | StepFault::SwungTooShort { .. } => None,
        }
    }

    /// What moves, and what it hits; none where the flat is too short.
    #[must_use]
    pub const fn bodies(&self) -> Option<(&HitBody, &HitBody)> {
        match self {
            StepFault::Hits { moving, still, .. } => Some((moving, still)),
            StepFault::ClampedTooShort { .. } | StepFault::SwungTooShort { .. } => None,
        }
    }

    /// The same as a refusal.
    pub(super) fn error(&self) -> Error {
        let bend = called(self.bend());
        match self {
            StepFault::Hits { at, moving, still, .. } => Error::new(ErrorKind::Impossible, format!("{bend}: {moving} hits {still}"))
                .value_of(format_args!("at {at}"))
                .accepts("a swing that nothing is in the way of")
                .cured_by("another order, the other edge at the gauge, or tools that clear it"),
            StepFault::ClampedTooShort { flat, least, .. } => {
                Error::new(ErrorKind::Impossible, format!("{bend}: too little flat under the clamp")).value_of(flat).accepts(format!("at least {least}"))
            }
            StepFault::SwungTooShort { flat, least, .. } => {
                Error::new(ErrorKind::Impossible, format!("{bend}: too little flat to swing")).value_of(flat).accepts(format!("at least {least}"))
            }
        }
    }
}

impl fmt::Display for StepFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let bend = called(self.bend());
        match self {
            StepFault::Hits { at, moving, still, .. } => write!(f, "{bend}: {moving} hits {still} at {at}"),
            StepFault::ClampedTooShort { flat, least, .. } => write!(f, "{bend}: {flat} of flat under the clamp, the brake needs {least}"),
            StepFault::SwungTooShort { flat, least, .. } => write!(f, "{bend}: {flat} of flat to swing, the brake needs {least}"),
        }
    }
}
