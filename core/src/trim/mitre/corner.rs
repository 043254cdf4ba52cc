//! The two runs that meet, and the frames in which their sections stand.

use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::num::space::{V3, add, cross, dot, norm, scale, unit};
use crate::units::{Angle, Length};

/// A way in space, by three lengths measured along it: x and y in plan, z upward. Only its direction counts.
///
/// ```
/// use seamwright::trim::Way;
/// use seamwright::units::Length;
/// // Up a slope of 4 in 12.
/// let rake = Way { x: Length::ZERO, y: Length::inches(12), z: Length::inches(4) };
/// assert_ne!(rake, Way::UP);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Way {
    /// In plan, to the right.
    pub x: Length,
    /// In plan, away.
    pub y: Length,
    /// Upward.
    pub z: Length,
}

impl Way {
    /// Straight up.
    pub const UP: Way = Way { x: Length::ZERO, y: Length::ZERO, z: Length::inches(1) };

    pub(super) fn unit(self, path: &str) -> Result<V3, Error> {
        unit([self.x.mm(), self.y.mm(), self.z.mm()]).ok_or_else(|| {
            Error::new(ErrorKind::Geometry, "a way needs a direction").at(path).value_of("0 mm, 0 mm, 0 mm").accepts("at least one length that is not zero")
        })
    }
}

/// A run of trim: which way it goes, and which way its section's height points.
///
/// ```
/// use seamwright::trim::{RunWay, Way};
/// use seamwright::units::Length;
/// let level = RunWay { along: Way { x: Length::ZERO, y: Length::inches(1), z: Length::ZERO }, up: None };
/// assert!(level.up.is_none());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct RunWay {
    /// Along the run, onward through the corner.
    pub along: Way,
    /// A way on the upward side of the section; what of it is square to the run is the section's y. Straight up where it is left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub up: Option<Way>,
}

/// A corner of a trim, walked through: the first run arrives, the second leaves.
///
/// The section of each run stands square to it, as it is seen by one who looks along the run: x to the right and level, y upward. So the same
/// profile makes an outside corner with a turn one way and an inside corner with the other.
///
/// ```
/// use seamwright::trim::MitreCorner;
/// use seamwright::units::Angle;
/// // A square corner to the right on the level.
/// let corner = MitreCorner::Plan { turn: Angle::degrees_from(-90.0)?, first_rise: Angle::ZERO, second_rise: Angle::ZERO };
/// assert_ne!(corner, MitreCorner::Plan { turn: Angle::SQUARE, first_rise: Angle::ZERO, second_rise: Angle::ZERO });
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum MitreCorner {
    /// By its plan and two slopes.
    Plan {
        /// How far the run turns in plan: to the left positive, 0 straight on; between -180 and 180 degrees.
        turn: Angle,
        /// How far the first run rises as it arrives, from the level; negative where it falls.
        first_rise: Angle,
        /// How far the second run rises as it leaves.
        second_rise: Angle,
    },
    /// By two ways in space.
    Ways {
        /// The run that arrives.
        first: RunWay,
        /// The run that leaves.
        second: RunWay,
    },
}

/// Where a section stands: x to the right, y upward, and the run, onward.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame {
    pub(super) x: V3,
    pub(super) y: V3,
    pub(super) along: V3,
}

impl Frame {
    fn of(run: &RunWay, path: &str) -> Result<Frame, Error> {
        let along = run.along.unit(&format!("{path}.along"))?;
        let up = run.up.unwrap_or(Way::UP).unit(&format!("{path}.up"))?;
        let right = cross(along, up);
        // Under a thousandth of a degree the way up says nothing about which side is up.
        if norm(right) < 1e-5 {
            return Err(Error::new(ErrorKind::Geometry, "the section's upward way lies along the run")
                .at(format!("{path}.up"))
                .value_of(if run.up.is_some() { "along the run" } else { "straight up, with a plumb run" })
                .accepts("a way that leaves the run"));
        }
        let x = scale(right, 1.0 / norm(right));
        Ok(Frame { x, y: cross(x, along), along })
    }

    fn rising(turn: f64, rise: Angle) -> Frame {
        let (sin, cos) = (num::sin_deg(turn), num::cos_deg(turn));
        let (up, on) = (rise.sin(), rise.cos());
        Frame { x: [cos, sin, 0.0], y: [sin * up, -cos * up, on], along: [-sin * on, cos * on, up] }
    }

    pub(super) fn point(&self, (x, y): (f64, f64), along: f64) -> V3 {
        add(add(scale(self.x, x), scale(self.y, y)), scale(self.along, along))
    }
}

impl MitreCorner {
    /// Both frames, or every fault.
    pub(super) fn frames(&self) -> Result<(Frame, Frame), Error> {
        let mut faults = Faults::default();
        let frames = match self {
            MitreCorner::Plan { turn, first_rise, second_rise } => {
                if turn.degrees().abs() >= 180.0 {
                    faults.add(
                        Error::new(ErrorKind::OutOfRange, "a run that turns back on itself has no mitre")
                            .at("plan.turn")
                            .value_of(turn)
                            .accepts("more than -180 deg and less than 180 deg"),
                    );
                }
                for (path, rise) in [("plan.first_rise", first_rise), ("plan.second_rise", second_rise)] {
                    if rise.degrees().abs() >= 90.0 {
                        faults.add(
                            Error::new(ErrorKind::OutOfRange, "a plumb run has no direction in plan")
                                .at(path)
                                .value_of(rise)
                                .accepts("more than -90 deg and less than 90 deg")
                                .cured_by("the two ways in space"),
                        );
                    }
                }
                Some((Frame::rising(0.0, *first_rise), Frame::rising(turn.degrees(), *second_rise)))
            }
            MitreCorner::Ways { first, second } => {
                let (a, b) = (faults.keep(Frame::of(first, "ways.first")), faults.keep(Frame::of(second, "ways.second")));
                a.zip(b)
            }
        };
        faults.check()?;
        let (first, second) = frames.ok_or_else(|| Error::new(ErrorKind::Internal, "a fault was lost"))?;
        let between = dot(first.along, second.along);
        if 1.0 + between < 1e-9 {
            return Err(Error::new(ErrorKind::OutOfRange, "a run that turns back on itself has no mitre")
                .value_of(format_args!("{} deg between the runs", num::acos_deg(between.max(-1.0))))
                .accepts("less than 180 deg between the runs"));
        }
        Ok((first, second))
    }
}
