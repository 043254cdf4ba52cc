//! How trims meet at corners, and how their ends are cut and closed there.

use crate::error::Error;
use crate::num;
use crate::roof::Vertex;
use crate::units::{Angle, Length};

/// How the trims of two lines meet.
///
/// See [`Corners`](super::Corners) for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PairRule {
    /// One laps over the other; the lines by name.
    Laps {
        /// The upper.
        over: String,
        /// The lower.
        under: String,
    },
    /// They are of one kind: mitred and sealed.
    Mitred,
    /// They are of one kind and in one straight line: lapped as along a line.
    RunsOn,
    /// They are of one kind and in one straight line, and an expansion joint parts them: the one laps loose over the other, so that they slide. The lap when laid is
    /// the upper one's allowance here.
    Slides {
        /// The upper: along the panels that on the side on which the joint's cap is fixed, across them that on the upper plane.
        over: String,
        /// The lower.
        under: String,
        /// The joint.
        joint: String,
    },
    /// No rule sets them in order, and a third that laps over both covers them.
    Covered {
        /// The third line.
        by: String,
    },
    /// No rule sets them in order.
    NoRule,
}

/// How the end of a trim is closed where its line ends.
///
/// ```
/// use seamwright::assembly::TrimEnd;
/// assert!(TrimEnd::Capped < TrimEnd::Covered); // what is covered by one and laps over another needs no cap
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum TrimEnd {
    /// Nothing lies over it: an end cap.
    Capped,
    /// Another wall stands across it, in an inside corner: the run-on is turned up that wall, behind what covers its face.
    TurnedUp,
    /// The foot of a wall's flashing over an eave: a kick-out that throws the water off the wall.
    KickOut,
    /// Joined to the trim of another line of its kind.
    Joined,
    /// The trim of another line lies over it.
    Covered,
    /// The lower end of a valley's pan, and either end of the pan behind a curb: open, for the water.
    Outlet,
    /// No rule says what lies over what; a caution names the corner.
    Undecided,
}

/// Two lines in one within a degree go on from each other.
pub(super) const STRAIGHT: f64 = 179.0;

/// Slopes nearer than this, in degrees, are one: what the geometry of two like hips may differ by.
const LIKE_SLOPES: f64 = 1e-6;

/// The angle between two ways, each from its first point to its second; none where one has no length.
fn angle([ax, ay, az]: [f64; 3], [bx, by, bz]: [f64; 3]) -> Option<Angle> {
    let cross = [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx];
    let sine = cross.iter().map(|c| c * c).sum::<f64>().sqrt();
    Angle::degrees_from(num::atan2_deg(sine, ax * bx + ay * by + az * bz)).ok()
}

/// Which way one turns in plan at a corner who comes from `back` and goes out to `out`: more than 0 to the left.
pub(super) fn turns(corner: Vertex, out: Vertex, back: Vertex) -> f64 {
    let way = |to: Vertex| {
        let along = |to: Length, from: Length| (to - from).length().map_or(0.0, Length::mm);
        (along(to.x, corner.x), along(to.y, corner.y))
    };
    let ((ox, oy), (bx, by)) = (way(out), way(back));
    ox * by - oy * bx
}

/// Two ways from a corner, in space and as seen from above.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ways {
    pub(super) between: Angle,
    pub(super) plan: Angle,
    /// How steeply each climbs, in degrees.
    climbs: [f64; 2],
}

/// How two trims meet, as far as it matters to how they are cut.
#[derive(Debug, Clone, Copy)]
pub(super) struct Meeting<'a> {
    pub(super) rule: &'a PairRule,
    /// Whether they are of one kind.
    pub(super) alike: bool,
    /// Whether the one that laps over the other is the first.
    pub(super) first_over: bool,
    /// Whether the lower is an eave.
    pub(super) over_eave: bool,
}

impl Ways {
    /// Each from its first point to its second; none where one has no length.
    pub(super) fn of(a: (Vertex, Vertex), b: (Vertex, Vertex)) -> Option<Ways> {
        let way = |(from, to): (Vertex, Vertex)| -> Result<[f64; 3], Error> {
            let along = |p: Length, q: Length| (q - p).length().map(Length::mm);
            Ok([along(from.x, to.x)?, along(from.y, to.y)?, along(from.z, to.z)?])
        };
        let (a, b) = (way(a).ok()?, way(b).ok()?);
        let flat = |[x, y, _]: [f64; 3]| [x, y, 0.0];
        let climb = |[x, y, z]: [f64; 3]| num::atan2_deg(z, num::hypot(x, y));
        Some(Ways { between: angle(a, b)?, plan: angle(flat(a), flat(b))?, climbs: [climb(a), climb(b)] })
    }

    /// The cut across a trim's end, from its own line: in the plane of both, and as seen from above where it can be set from there.
    pub(super) fn cut(&self, at: Meeting<'_>) -> (Option<Angle>, Option<Angle>) {
        let acute = |a: Angle| Angle::of_degrees(a.degrees().min(180.0 - a.degrees()));
        let half = |a: Angle| Angle::of_degrees(a.degrees() / 2.0);
        let [first, second] = self.climbs;
        let half_way = (Some(half(self.between)), Some(half(self.plan)).filter(|_| (first - second).abs() < LIKE_SLOPES));
        let is_level = (if at.first_over { first } else { second }).abs() < LIKE_SLOPES;
        match at.rule {
            PairRule::Covered { .. } | PairRule::NoRule => (None, None),
            // One that goes on from the other is lapped as along a line; over a bend of the slope half way between the two.
            PairRule::Laps { .. } | PairRule::RunsOn | PairRule::Slides { .. } if self.between.degrees() > STRAIGHT => {
                (Some(Angle::SQUARE), Some(Angle::SQUARE))
            }
            PairRule::Laps { .. } if !at.alike && self.plan.degrees() <= STRAIGHT => {
                // Away from the corner the line below leaves the trim's leg: cut along it, the leg would have to run on far beyond the corner, and the leg of what lies
                // below lies under it there. An eave is where the panels end: the cut follows it.
                if self.between.degrees() > 90.0 && !at.over_eave {
                    return (Some(Angle::SQUARE), Some(Angle::SQUARE).filter(|_| is_level));
                }
                (Some(acute(self.between)), Some(acute(self.plan)).filter(|a| a.degrees() > 180.0 - STRAIGHT))
            }
            PairRule::Laps { .. } | PairRule::RunsOn | PairRule::Slides { .. } | PairRule::Mitred => half_way,
        }
    }
}
