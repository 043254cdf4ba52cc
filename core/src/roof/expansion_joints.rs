//! Expansion joints: two planes that lie in one, parted along their fall, or across it where the upper panels slide over a flashing on the lower side.

use super::kind::{self, LineKind};
use super::line::{self, Beyond, Line};
use super::matching::{Meeting, RoofEdge};
use super::plane_number::plane_number;
use super::{Plane, Side, Water};
use crate::error::{Error, ErrorKind, Faults};
use crate::practice::roof as practice;
use crate::units::{Angle, Length};

/// An expansion joint of the roof, by the names of the planes on both sides of it. It is one along the panels where the line between the planes runs with
/// their fall, and one across them where it is level.
///
/// ```
/// use seamwright::roof::ExpansionJointInput;
/// let joint = ExpansionJointInput { fixed: "hall west".into(), sliding: "hall east".into() };
/// assert_ne!(joint.fixed, joint.sliding);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ExpansionJointInput {
    /// The plane on the side where the joint's cap is fixed; across the panels the lower one, whose ends the flashing covers.
    pub fixed: String,
    /// The plane on the side where it slides; across the panels the upper one, whose panels slide over the flashing.
    pub sliding: String,
}

/// A joint's line before it has its name.
pub(super) struct FoundJoint {
    /// Number of the meeting that it takes.
    pub(super) meeting: usize,
    pub(super) line: Line,
}

/// The lines of every joint; a fault for each that the planes do not make.
pub(super) fn find(joints: &[ExpansionJointInput], planes: &[Plane], edges: &[RoofEdge], met: &[Meeting], tolerance: Length) -> Result<Vec<FoundJoint>, Error> {
    let (mut out, mut faults) = (Vec::new(), Faults::default());
    for (i, joint) in joints.iter().enumerate() {
        let path = format!("expansion_joints[{i}]");
        let both = format!("{} and {}", joint.fixed, joint.sliding);
        let is_same = |o: &ExpansionJointInput| o == joint || (&o.fixed, &o.sliding) == (&joint.sliding, &joint.fixed);
        if joint.fixed == joint.sliding || joints.iter().take(i).any(is_same) {
            let (message, allowed) = if joint.fixed == joint.sliding {
                ("an expansion joint of a plane with itself", "two planes")
            } else {
                ("an expansion joint given twice", "each joint once")
            };
            faults.add(Error::new(ErrorKind::Conflict, message).at(path).value_of(both).accepts(allowed));
            continue;
        }
        let mut number = |field: &str, name: &str| faults.keep(plane_number(planes.iter().map(Plane::name), name, format!("{path}.{field}")));
        let (Some(fixed), Some(sliding)) = (number("fixed", &joint.fixed), number("sliding", &joint.sliding)) else { continue };
        if let Some(found) = faults.keep(lines(planes, edges, met, (fixed, sliding), tolerance).map_err(|e| e.at(path).about(&both))) {
            out.extend(found);
        }
    }
    faults.check()?;
    Ok(out)
}

/// The lines between these two planes, along the fall or level.
fn lines(planes: &[Plane], edges: &[RoofEdge], met: &[Meeting], (fixed, sliding): (usize, usize), tolerance: Length) -> Result<Vec<FoundJoint>, Error> {
    let lost = || Error::new(ErrorKind::Internal, "a plane or an edge is missing");
    let (first, second) = planes.get(fixed).zip(planes.get(sliding)).ok_or_else(lost)?;
    let geometry = |message: &'static str| Error::new(ErrorKind::Geometry, message);
    let (mut out, mut skew) = (Vec::new(), None);
    for (number, meeting) in met.iter().enumerate() {
        let (e, f) = edges.get(meeting.edges.0).zip(edges.get(meeting.edges.1)).ok_or_else(lost)?;
        // The side to which the cap is fixed is the line's own.
        let (own, other, piece) = match (e.id.plane, f.id.plane) {
            (a, b) if (a, b) == (fixed, sliding) => (e.id, f.id, meeting.on.0.piece()),
            (a, b) if (a, b) == (sliding, fixed) => (f.id, e.id, meeting.on.1.piece()),
            _ => continue,
        };
        let turn = line::turn_between(first, second);
        if !kind::is_coplanar(turn) {
            return Err(geometry("the planes of an expansion joint do not lie in one plane")
                .value_of(format!("they bend by {}", Angle::degrees_from(turn)?))
                .accepts(format!("less than {}", practice::COPLANAR_LIMIT))
                .cured_by("one pitch, one fall and one level for both"));
        }
        let measures = piece.measures();
        let (side, _) = measures.side(first, own, &piece, tolerance.mm())?;
        let (beyond, _) = measures.other_side(second, other, &piece, tolerance.mm())?;
        let kind = match (side.water, beyond.water) {
            (Water::Along, Water::Along) => Some(LineKind::ExpansionAlong),
            _ if measures.is_level(tolerance.mm()) => Some(LineKind::ExpansionAcross),
            _ => None,
        };
        if kind == Some(LineKind::ExpansionAcross) {
            slides_over(first, second, &side)?;
        }
        match kind {
            Some(kind) => {
                let line = measures.line(kind, &piece, Some(180.0 - turn), side, Beyond::Plane(beyond))?;
                out.push(FoundJoint { meeting: number, line });
            }
            None => skew = Some(side.meeting_angle),
        }
    }
    match (out.is_empty(), skew) {
        (false, _) => Ok(out),
        (true, Some(angle)) => Err(geometry("the line between the planes neither runs with the fall nor is level: its panels end on it at a skew")
            .value_of(format!("{angle} off the seams"))
            .accepts(format!("0 deg or 90 deg, within {tolerance} over its length"))
            .cured_by("planes parted straight up the slope, or level across it")),
        (true, None) => Err(geometry("the planes of an expansion joint do not meet")
            .value_of(format!("no edge of {} runs along one of {}", first.name(), second.name()))
            .accepts(format!("edges within {tolerance} of each other, the joint's gap between them left to its detail"))),
    }
}

/// Across the panels the upper ones slide over the flashing: water runs from the sliding side onto the fixed one.
fn slides_over(fixed: &Plane, sliding: &Plane, side: &Side) -> Result<(), Error> {
    if side.water == Water::Away {
        return Ok(());
    }
    let error = Error::new(ErrorKind::Geometry, "the lower panels of an expansion joint across the panels would slide over the upper ones, against the water");
    let error = error.value_of(format!("{} above {}", fixed.name(), sliding.name()));
    Err(error.accepts("the lower plane as fixed, the upper one as sliding").cured_by("the two names exchanged"))
}
