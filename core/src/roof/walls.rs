//! Walls that the roof runs into.

use super::matching::{RoofEdge, Stretch};
use super::overlap::Box2;
use super::plane_number::has_plane;
use super::vertex::{Twice, Vertex};
use super::{Plane, PlaneInput, Point};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::units::Length;
use std::collections::BTreeSet;

/// A wall that the roof runs into: a vertical face over a straight line in plan.
///
/// An edge of a plane runs into it where it lies on the line and below the wall's top. So the eave of a tower's own roof, which stands on
/// the tower's walls, does not run into them if their top is given. Where the top is not level, as under a gable, the planes that stand on the wall are named
/// instead.
///
/// ```
/// use seamwright::roof::{Point, Wall};
/// use seamwright::units::Length;
/// let mut wall = Wall::new("tower", Point::default(), Point::new(Length::feet(9), Length::ZERO));
/// assert_eq!(wall.top, None); // higher than every plane
/// wall.top = Some(Length::feet(30));
/// let gablet = Wall::new("gablet", Point::default(), Point::new(Length::ZERO, Length::feet(9))).carrying(["upper south", "upper north"]);
/// assert_eq!(gablet.carries.len(), 2);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Wall {
    /// Its name, unlike that of any other wall.
    pub name: String,
    /// Where it starts in plan.
    pub from: Point,
    /// Where it ends in plan; which end is which does not matter.
    pub to: Point,
    /// The height of its top; without one it is higher than every plane.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub top: Option<Length>,
    /// Planes that stand on the wall, by name: their edges lie over it and do not run into it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub carries: Vec<String>,
}

pub(super) fn check(walls: &[Wall], planes: &[PlaneInput], tolerance: f64, faults: &mut Faults) {
    let mut names = BTreeSet::new();
    let named: Vec<&str> = planes.iter().map(|p| p.name.as_str()).collect();
    for (i, wall) in walls.iter().enumerate() {
        if wall.name.trim().is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "a wall needs a name").at(format!("walls[{i}].name")));
        } else if !names.insert(wall.name.as_str()) {
            faults.add(Error::new(ErrorKind::Conflict, "two walls have one name").at(format!("walls[{i}].name")).value_of(&wall.name));
        }
        let d = on_ground(wall.to).from(on_ground(wall.from));
        if num::hypot(d[0], d[1]) <= tolerance {
            faults.add(Error::new(ErrorKind::Geometry, "a wall has no length").at(format!("walls[{i}]")).accepts("ends farther apart than the tolerance"));
        }
        for (k, name) in wall.carries.iter().enumerate() {
            has_plane(&named, name, &format!("walls[{i}].carries[{k}]"), faults);
        }
    }
}

fn on_ground(p: Point) -> Vertex {
    Vertex { x: p.x, y: p.y, z: Length::ZERO }
}

impl Wall {
    /// A wall that is higher than every plane.
    #[must_use]
    pub fn new(name: impl Into<String>, from: Point, to: Point) -> Wall {
        Wall { name: name.into(), from, to, top: None, carries: Vec::new() }
    }

    /// The same wall under these planes.
    #[must_use]
    pub fn carrying(self, planes: impl IntoIterator<Item = impl Into<String>>) -> Wall {
        Wall { carries: planes.into_iter().map(Into::into).collect(), ..self }
    }

    pub(super) fn plan_box(&self) -> Box2 {
        Box2::round([&on_ground(self.from), &on_ground(self.to)])
    }

    /// The part of a stretch of an edge along which the wall stands.
    pub(super) fn along(&self, plane: &Plane, edge: &RoofEdge, free: &Stretch, tolerance: f64) -> Result<Option<Stretch>, Error> {
        if self.carries.iter().any(|name| name == plane.name()) {
            return Ok(None);
        }
        let d = edge.to.from(edge.from);
        let plan = num::hypot(d[0], d[1]);
        let (ux, uy) = (d[0] / plan, d[1] / plan);
        // Stations in plan are in proportion to those along the edge.
        let factor = edge.length / plan;
        let ground = Vertex { z: Length::ZERO, ..edge.from };
        let station = |p: Point| {
            let w = on_ground(p).from(ground);
            ((w[0] * ux + w[1] * uy) * factor, (w[1] * ux - w[0] * uy).abs())
        };
        let ((a, a_off), (b, b_off)) = (station(self.from), station(self.to));
        let (low, high) = if a <= b { ((a, a_off, self.from), (b, b_off, self.to)) } else { ((b, b_off, self.to), (a, a_off, self.from)) };
        // Distance off the wall's line at a station of the edge, between and beyond the ends.
        let off = |s: f64| {
            let t = (s - low.0) / (high.0 - low.0);
            let signed = |p: Point| {
                let w = on_ground(p).from(ground);
                w[1] * ux - w[0] * uy
            };
            (signed(low.2) + t * (signed(high.2) - signed(low.2))).abs()
        };
        let (mut from, mut start) = (free.from, free.start);
        if low.0 > free.from + tolerance {
            (from, start) = (low.0, Twice::at(plane.at_plan(low.2)?));
        }
        let (mut to, mut end) = (free.to, free.end);
        if high.0 < free.to - tolerance {
            (to, end) = (high.0, Twice::at(plane.at_plan(high.2)?));
        }
        if to - from <= tolerance || off(from) > tolerance || off(to) > tolerance {
            return Ok(None);
        }
        Ok(self.below_top(edge, Stretch { from, to, start, end }, tolerance))
    }

    /// The part of a stretch that lies below the wall's top.
    fn below_top(&self, edge: &RoofEdge, stretch: Stretch, tolerance: f64) -> Option<Stretch> {
        let Some(top) = self.top else { return Some(stretch) };
        let datum = Vertex { z: top, ..edge.from };
        let climb = edge.to.from(edge.from)[2] / edge.length;
        let foot = edge.from.from(datum)[2];
        let over = |s: f64| foot + s * climb;
        // An edge that only reaches the top with the tolerance runs over the wall, not into it.
        match (over(stretch.from) >= -tolerance, over(stretch.to) >= -tolerance) {
            (true, true) => None,
            (false, false) => Some(stretch),
            (starts_over, _) => {
                let s = -foot / climb;
                let at = edge.at(s).ok()?;
                let cut = if starts_over { Stretch { from: s, start: Twice::at(at), ..stretch } } else { Stretch { to: s, end: Twice::at(at), ..stretch } };
                // What is left of the end above the top within the tolerance goes with the rest.
                let whole = (s - stretch.from).abs() <= tolerance || (stretch.to - s).abs() <= tolerance || s <= stretch.from || s >= stretch.to;
                if whole { (over((stretch.from + stretch.to) / 2.0) < 0.0).then_some(stretch) } else { Some(cut) }
            }
        }
    }
}
