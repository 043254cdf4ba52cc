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

/// The angle between two ways, each from its first point to its second; none where one has no length.
pub(super) fn between(a: (Vertex, Vertex), b: (Vertex, Vertex)) -> Option<Angle> {
    let way = |(from, to): (Vertex, Vertex)| -> Result<[f64; 3], Error> {
        let along = |p: Length, q: Length| (q - p).length().map(Length::mm);
        Ok([along(from.x, to.x)?, along(from.y, to.y)?, along(from.z, to.z)?])
    };
    let ([ax, ay, az], [bx, by, bz]) = (way(a).ok()?, way(b).ok()?);
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

/// From a trim's own line to the cut across its end.
pub(super) fn cut_at(rule: &PairRule, between: Angle) -> Option<Angle> {
    Some(match rule {
        // One that goes on from the other is lapped as along a line.
        PairRule::Laps { .. } if between.degrees() > STRAIGHT => Angle::SQUARE,
        PairRule::Laps { .. } => Angle::of_degrees(between.degrees().min(180.0 - between.degrees())),
        PairRule::Mitred => Angle::of_degrees(between.degrees() / 2.0),
        PairRule::RunsOn | PairRule::Slides { .. } => Angle::SQUARE,
        PairRule::Covered { .. } | PairRule::NoRule => return None,
    })
}
