//! The directions of a junction's section: the planes, the wall or the face beside them, and where a distance from the junction line lies.

use super::fold::Point;
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::{Adjoining, Levels, SectionPoint, Side, Solved};
use crate::num;
use crate::record::Calculation;
use crate::units::{Angle, Length};

/// A roof plane as a junction's section sees it.
///
/// A plane that is level in the section is cut across its seams, as at a rake or a sidewall; any other is cut along them.
///
/// ```
/// use seamwright::export::SectionPlane;
/// use seamwright::junction::Levels;
/// use seamwright::units::Angle;
/// let eave = SectionPlane { rise: Angle::parse("-18.4 deg")?, levels: Levels::default() };
/// assert!(eave.rise.degrees() < 0.0, "toward the eave the deck falls");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionPlane {
    /// How steeply the deck rises in the section, walking toward +x: at an eave minus the slope, at a ridge plus the slope of the first plane and
    /// minus that of the second, at a hip likewise with the backing angles, at a valley minus and plus, at a transition plus both, at a rake
    /// and a sidewall nothing.
    pub rise: Angle,
    /// The layers on the deck.
    pub levels: Levels,
}

/// What lies on the other side of a junction.
///
/// ```
/// use seamwright::export::Other;
/// use seamwright::units::Angle;
/// assert_ne!(Other::Fascia { fall: Angle::SQUARE }, Other::Wall);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Other {
    /// A second roof plane, on the side of positive x.
    Plane(SectionPlane),
    /// A wall that stands up from the junction line.
    Wall,
    /// A face that goes down from the junction line: a fascia, or the wall under a high side.
    Fascia {
        /// How steeply the face falls walking toward +x; 90 degrees is plumb.
        fall: Angle,
    },
    /// The outside of a wall whose top is the first plane: the section of a coping, whose wall stands among [`Solved::adjoining`]. What lies on the roof
    /// side belongs to the first side, what lies on the outside to the second, each measured from the top edge of its own face.
    WallTop,
    /// Nothing.
    Nothing,
}

/// A direction of the section with its outward side, in millimetres of paper, y upwards, from the junction line.
#[derive(Debug, Clone, Copy)]
pub(super) struct Axis {
    /// Where it starts: the junction line, or the wall's top edge on its own side, or the edge of an upper deck; in true millimetres until it is
    /// [scaled](Axes::scaled).
    origin: Point,
    /// Along the plane, toward +x; up a wall; down a face.
    pub(super) d: Point,
    /// Outward.
    pub(super) n: Point,
    /// Degrees of `d`.
    pub(super) heading: f64,
    /// 1 where positive distances from the junction line run with `d`, else -1.
    pub(super) up: f64,
    /// 1 where the panels lie with `d`, else -1.
    pub(super) panels: f64,
}

impl Axis {
    fn new(heading: f64, outward_left: bool, up: f64, panels: f64) -> Axis {
        let (s, c) = (num::sin_deg(heading), num::cos_deg(heading));
        Axis { origin: (0.0, 0.0), d: (c, s), n: if outward_left { (-s, c) } else { (s, -c) }, heading, up, panels }
    }

    /// The point so far along and so high.
    pub(super) fn at(&self, a: f64, h: f64) -> Point {
        (self.origin.0 + self.d.0 * a + self.n.0 * h, self.origin.1 + self.d.1 * a + self.n.1 * h)
    }

    fn from(self, origin: Point) -> Axis {
        Axis { origin, ..self }
    }

    /// How far along and how high a point lies.
    pub(super) fn of(&self, p: Point) -> Point {
        let (x, y) = (p.0 - self.origin.0, p.1 - self.origin.1);
        (self.d.0 * x + self.d.1 * y, self.n.0 * x + self.n.1 * y)
    }

    /// Where a distance from the junction line lies.
    pub(super) fn place(&self, from_line: Length, scale: f64) -> f64 {
        from_line.mm() * scale * self.up
    }
}

/// A point of the section on paper.
pub(super) fn on_paper(p: SectionPoint, scale: f64) -> Point {
    (p.x.mm() * scale, p.z.mm() * scale)
}

/// The axes of a section.
#[derive(Debug, Clone, Copy)]
pub(super) struct Axes {
    pub(super) first: Axis,
    pub(super) second: Option<Axis>,
    /// Up the riser of a step, from its upper edge.
    pub(super) riser: Option<Axis>,
}

impl Axes {
    pub(super) fn of(solved: &Solved, first: &SectionPlane, other: &Other) -> Result<Axes, Error> {
        let mut faults = Faults::default();
        check_plane(&mut faults, "first", first);
        match other {
            Other::Plane(plane) => check_plane(&mut faults, "second", plane),
            Other::Fascia { fall } if !(fall.degrees() > 0.0 && fall.degrees() < 180.0) => {
                let error = Error::new(ErrorKind::OutOfRange, "a face goes down from the junction line").at("other.fall").value_of(fall);
                faults.add(error.accepts("more than 0 deg and less than 180 deg; 90 deg is plumb"));
            }
            Other::Nothing if uses(solved, Side::Second) => {
                let error = Error::new(ErrorKind::Conflict, "the junction has a second side").at("other").value_of("nothing");
                faults.add(error.accepts("what lies there: a plane, a wall, a fascia"));
            }
            _ => {}
        }
        faults.check()?;
        let rise = first.rise.degrees();
        if *other == Other::WallTop {
            let t = wall_top(solved)
                .ok_or_else(|| Error::new(ErrorKind::Conflict, "the junction knows of no wall under it").at("other").value_of("wall-top"))?
                .mm();
            let inner = Axis::new(90.0, true, 1.0, -1.0).from((-t, -t * first.rise.tan()));
            return Ok(Axes { first: inner, second: Some(Axis::new(-90.0, true, -1.0, 1.0)), riser: None });
        }
        let up = match other {
            // Behind a curb the roof falls to the wall.
            Other::Wall => {
                if rise < 0.0 {
                    -1.0
                } else {
                    1.0
                }
            }
            Other::Fascia { .. } | Other::WallTop | Other::Nothing => {
                if rise > 0.0 {
                    1.0
                } else {
                    -1.0
                }
            }
            // At a ridge and a hip all lies below the line, at a valley and over a transition above it; a backing angle may have either sign.
            Other::Plane(_) => match sum(solved, Side::First) {
                s if s > 0.0 => -1.0,
                s if s < 0.0 => 1.0,
                _ if rise < 0.0 => -1.0,
                _ => 1.0,
            },
        };
        let second = match other {
            Other::Plane(plane) => {
                let rise = plane.rise.degrees();
                let up = match sum(solved, Side::Second) {
                    s if s > 0.0 => 1.0,
                    s if s < 0.0 => -1.0,
                    _ if rise < 0.0 => -1.0,
                    _ => 1.0,
                };
                Some(Axis::new(rise, true, up, 1.0))
            }
            Other::Wall => Some(Axis::new(90.0, true, 1.0, 1.0)),
            Other::Fascia { fall } => Some(Axis::new(-fall.degrees(), true, -1.0, 1.0)),
            Other::WallTop | Other::Nothing => None,
        };
        let edge = riser(solved).map(|height| (0.0, height.mm()));
        let lift = built_up(solved).map_or(0.0, Length::mm);
        let second = second.map(|axis| edge.map_or(axis, |edge| axis.from(edge))).map(|axis| axis.from(axis.at(0.0, lift)));
        let riser = edge.map(|edge| Axis::new(90.0, true, 1.0, -1.0).from(edge));
        Ok(Axes { first: Axis::new(rise, true, up, -1.0), second, riser })
    }

    /// The axes on paper, at so many millimetres of it a millimetre.
    pub(super) fn scaled(&self, scale: f64) -> Axes {
        let on_paper = |axis: Axis| axis.from((axis.origin.0 * scale, axis.origin.1 * scale));
        Axes { first: on_paper(self.first), second: self.second.map(on_paper), riser: self.riser.map(on_paper) }
    }

    pub(super) fn side(&self, side: Side) -> &Axis {
        match (side, &self.second, &self.riser) {
            (Side::Second, Some(axis), _) | (Side::Riser, _, Some(axis)) => axis,
            _ => &self.first,
        }
    }
}

/// The height of a step.
pub(super) fn riser(solved: &Solved) -> Option<Length> {
    solved.adjoining.iter().find_map(|a| if let Adjoining::Riser { height } = a { Some(*height) } else { None })
}

/// By how much the second plane's deck is built up.
pub(super) fn built_up(solved: &Solved) -> Option<Length> {
    solved.adjoining.iter().find_map(|a| if let Adjoining::BuiltUp { height, .. } = a { Some(*height) } else { None })
}

/// The thickness of the wall under a coping.
pub(super) fn wall_top(solved: &Solved) -> Option<Length> {
    solved.adjoining.iter().find_map(|a| if let Adjoining::WallTop { thickness } = a { Some(*thickness) } else { None })
}

fn check_plane(faults: &mut Faults, path: &str, plane: &SectionPlane) {
    let rise = plane.rise.degrees();
    if !(rise > -90.0 && rise < 90.0) {
        let error = Error::new(ErrorKind::OutOfRange, "a deck is not that steep").at(format!("{path}.rise")).value_of(plane.rise);
        faults.add(error.accepts("more than -90 deg and less than 90 deg"));
    }
    faults.keep(plane.levels.compute().map_err(|e| e.under("levels").under(path)));
}

fn uses(solved: &Solved, side: Side) -> bool {
    solved.ends.iter().any(|e| e.side == side) || solved.along.iter().any(|a| a.side == side) || solved.lines.iter().any(|l| l.side == side)
}

/// On which side of the line most of what lies along a side lies, in its own sign.
fn sum(solved: &Solved, side: Side) -> f64 {
    let along = solved.along.iter().filter(|a| a.side == side).map(|a| a.from_line.mm());
    along.chain(solved.lines.iter().filter(|l| l.side == side).map(|l| l.from_line.mm())).sum()
}
