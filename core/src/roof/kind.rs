//! What a line is, told from the geometry of its sides.

use crate::num;
use crate::practice::roof as practice;
use core::fmt;

/// Which way water on a plane runs at a line.
///
/// ```
/// use seamwright::roof::Water;
/// assert_eq!(Water::Toward.to_string(), "toward");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Water {
    /// To the line: over it, into it, or against what stands there.
    Toward,
    /// Away from the line.
    Away,
    /// Beside the line, neither toward it nor away, within the tolerance.
    Along,
}

impl fmt::Display for Water {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Water::Toward => "toward",
            Water::Away => "away",
            Water::Along => "along",
        })
    }
}

/// What a line of the roof is.
///
/// | kind | sides |
/// |---|---|
/// | ridge | two planes, water away from both sides, level, or out of it in both planes by [`OUT_OF_LEVEL_LIMIT`](crate::practice::roof::OUT_OF_LEVEL_LIMIT) at most |
/// | hip | two planes that bend down from the line, which slopes |
/// | valley | two planes, water toward the line from both sides; or that bend up from the line, which slopes |
/// | pitch transition | two planes, water from one onto the other over a line as level as a ridge |
/// | eave | the free edge over which water runs |
/// | rake | the free edge within [`RAKE_LIMIT`](crate::practice::roof::RAKE_LIMIT) of the fall |
/// | high edge | the free edge from which water runs away: the top of a mono-slope |
/// | headwall, sidewall | as high edge and rake, against a wall |
/// | curb front, side, back | the edges of a hole, below it, beside it and above it |
/// | step | two planes that the roof names a step of: the lower end of the one plumb over the upper end of the other |
/// | expansion joint | two planes in one that the roof names a joint of, the line along the fall of both |
/// | expansion joint across | two planes in one that the roof names a joint of, the line level |
///
/// ```
/// use seamwright::roof::LineKind;
/// assert_eq!(LineKind::SteepToShallow.to_string(), "steep-to-shallow transition");
/// assert_eq!(LineKind::ALL.len(), 17);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum LineKind {
    /// A level line with water away from it on both sides.
    Ridge,
    /// A sloping line from which two planes bend down.
    Hip,
    /// A line to which water runs from both sides, or a sloping line from which two planes bend up.
    Valley,
    /// Going down the slope, from a steep plane to a shallow one: the plane above the line is the steeper.
    SteepToShallow,
    /// Going down the slope, from a shallow plane to a steep one: the plane below the line is the steeper.
    ShallowToSteep,
    /// A free edge over which water runs.
    Eave,
    /// A free edge along the fall.
    Rake,
    /// A free edge from which water runs away.
    HighEdge,
    /// The upper end of a plane against a wall.
    Headwall,
    /// A wall along the fall.
    Sidewall,
    /// The edge of a hole at its foot; the panels below the hole end there.
    CurbFront,
    /// The edge of a hole along the fall.
    CurbSide,
    /// The edge of a hole at its head; water runs against it.
    CurbBack,
    /// The lower end of one plane plumb over the upper end of another, a riser between them.
    Step,
    /// An expansion joint along the panels, between two planes in one, named by the roof.
    ExpansionAlong,
    /// An expansion joint across the panels, between two planes in one, named by the roof.
    ExpansionAcross,
    /// A line that the geometry does not name; a caution says why.
    Unknown,
}

impl LineKind {
    /// Every kind.
    pub const ALL: &'static [LineKind] = &[
        LineKind::Ridge,
        LineKind::Hip,
        LineKind::Valley,
        LineKind::SteepToShallow,
        LineKind::ShallowToSteep,
        LineKind::Eave,
        LineKind::Rake,
        LineKind::HighEdge,
        LineKind::Headwall,
        LineKind::Sidewall,
        LineKind::CurbFront,
        LineKind::CurbSide,
        LineKind::CurbBack,
        LineKind::Step,
        LineKind::ExpansionAlong,
        LineKind::ExpansionAcross,
        LineKind::Unknown,
    ];

    /// The kind in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            LineKind::Ridge => "ridge",
            LineKind::Hip => "hip",
            LineKind::Valley => "valley",
            LineKind::SteepToShallow => "steep-to-shallow transition",
            LineKind::ShallowToSteep => "shallow-to-steep transition",
            LineKind::Eave => "eave",
            LineKind::Rake => "rake",
            LineKind::HighEdge => "high edge",
            LineKind::Headwall => "headwall",
            LineKind::Sidewall => "sidewall",
            LineKind::CurbFront => "curb front",
            LineKind::CurbSide => "curb side",
            LineKind::CurbBack => "curb back",
            LineKind::Step => "step",
            LineKind::ExpansionAlong => "expansion joint",
            LineKind::ExpansionAcross => "expansion joint across",
            LineKind::Unknown => "unknown",
        }
    }

    /// Whether it parts a slope into a lower plane, which its section has first, and an upper one.
    pub(crate) const fn parts_a_slope(self) -> bool {
        matches!(self, LineKind::SteepToShallow | LineKind::ShallowToSteep | LineKind::Step | LineKind::ExpansionAcross)
    }

    /// Whether a wall, a curb or a riser stands along it, over the plane that it belongs to.
    pub(crate) const fn stands_at_a_wall(self) -> bool {
        matches!(self, LineKind::Headwall | LineKind::Sidewall | LineKind::CurbFront | LineKind::CurbSide | LineKind::CurbBack | LineKind::Step)
    }

    /// Whether it is a joint at which the metal of both sides moves.
    pub(crate) const fn is_expansion_joint(self) -> bool {
        matches!(self, LineKind::ExpansionAlong | LineKind::ExpansionAcross)
    }
}

impl fmt::Display for LineKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// What one side of a line does there, from its measures.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lie {
    /// Sine of the angle between the line and the fall; more than zero where water runs away from the line.
    pub(super) leaving: f64,
    pub(super) water: Water,
}

impl Lie {
    /// `length` and `tolerance` in millimetres.
    pub(super) fn new(leaving: f64, length: f64, tolerance: f64) -> Lie {
        let along = leaving.abs() * length <= tolerance && leaving.abs() <= practice::TRUE_LIMIT.sin();
        let water = match () {
            () if along => Water::Along,
            () if leaving > 0.0 => Water::Away,
            () => Water::Toward,
        };
        Lie { leaving, water }
    }

    fn beside_the_fall(self) -> bool {
        self.leaving.abs() <= practice::RAKE_LIMIT.sin()
    }

    pub(super) fn free(self) -> LineKind {
        self.pick(LineKind::Rake, LineKind::HighEdge, LineKind::Eave)
    }

    pub(super) fn curb(self) -> LineKind {
        self.pick(LineKind::CurbSide, LineKind::CurbFront, LineKind::CurbBack)
    }

    /// No name for an end to which water runs: it has none in the trade but that of the fault.
    pub(super) fn wall(self) -> LineKind {
        self.pick(LineKind::Sidewall, LineKind::Headwall, LineKind::Unknown)
    }

    fn pick(self, beside: LineKind, away: LineKind, toward: LineKind) -> LineKind {
        match self.water {
            _ if self.beside_the_fall() => beside,
            Water::Away => away,
            Water::Toward | Water::Along => toward,
        }
    }
}

/// Whether a line that rises by `rise` over its `length` counts as level; both in millimetres.
pub(super) fn is_level(rise: f64, length: f64, tolerance: f64) -> bool {
    rise.abs() <= tolerance && rise.abs() <= length * practice::TRUE_LIMIT.sin()
}

/// Whether two planes that bend by so many degrees are one.
pub(super) fn is_coplanar(bend_degrees: f64) -> bool {
    bend_degrees < practice::COPLANAR_LIMIT.degrees()
}

/// The kind of a line between two planes that are not one. `level` says whether it is level, or out of it by no more than a ridge may
/// be; `down` whether they bend down from it.
pub(super) fn shared(level: bool, down: bool, first: Water, second: Water) -> Result<LineKind, &'static str> {
    match (first, second) {
        (Water::Away, Water::Away) if level && down => Ok(LineKind::Ridge),
        (Water::Toward, Water::Toward) if !down => Ok(LineKind::Valley),
        (Water::Toward, Water::Away) | (Water::Away, Water::Toward) if level => Ok(if down { LineKind::ShallowToSteep } else { LineKind::SteepToShallow }),
        _ if level => Err("it is level and the fall of a plane does not leave it"),
        _ if down => Ok(LineKind::Hip),
        _ => Ok(LineKind::Valley),
    }
}

/// Degrees between two unit directions, accurate where they are near.
pub(super) fn degrees_between(sine: f64, cosine: f64) -> f64 {
    num::atan2_deg(sine, cosine)
}
