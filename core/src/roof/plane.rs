//! A plane of the roof, checked: its vertices, slope, axes and shape.

use super::frame::Frame;
use super::{Outline, Point, Vertex};
use crate::error::Error;
use crate::pitch::Pitch;
use crate::units::{Angle, Area, AreaUnit, Length};

/// A unit vector in space, without unit: x and y in plan, z upward.
///
/// ```
/// use seamwright::roof::{Opening, Plane, PlaneInput, Point, Shape, Vertex};
/// use seamwright::pitch::Pitch;
/// use seamwright::units::{Angle, Length};
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let shape = Shape::Plan {
///     outer: vec![p(0, 0), p(40, 0), p(40, 20), p(0, 20)],
///     holes: vec![],
///     pitch: Pitch::parse("12:12")?,
///     down_slope: Angle::parse("270 deg")?,
///     anchor: Vertex::new(Length::ZERO, Length::ZERO, Length::feet(10)),
/// };
/// let plane = PlaneInput { name: "south".into(), shape }.plane()?;
/// assert!((plane.normal().z_ratio - 0.5_f64.sqrt()).abs() < 1e-15);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Direction {
    /// Its part along x.
    pub x_ratio: f64,
    /// Its part along y.
    pub y_ratio: f64,
    /// Its part upward.
    pub z_ratio: f64,
}

/// A plane of the roof. It comes from [`PlaneInput::plane`](super::PlaneInput::plane) and has been checked.
///
/// The outer ring is counter-clockwise seen from above and the holes are clockwise, so the plane lies on the left of every edge. Places
/// in the plane are [`Point`]s: x across the slope, to the right when looking up it, y up the slope; the
/// outline touches x = 0 and y = 0.
///
/// ```
/// use seamwright::roof::{PlaneInput, Point, Shape, Vertex};
/// use seamwright::units::Length;
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let shape = Shape::Space { outer: vec![v(0, 0, 10), v(40, 0, 10), v(40, 16, 22), v(0, 16, 22)], holes: vec![], flatness: None };
/// let plane = PlaneInput { name: "south".into(), shape }.plane()?;
/// assert_eq!(plane.to_plane(v(40, 16, 22))?, Point::new(Length::feet(40), Length::feet(20)));
/// assert_eq!(plane.origin()?, v(0, 0, 10));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Plane {
    pub(super) name: String,
    pub(super) holes: Vec<String>,
    pub(super) rings: Vec<Vec<Vertex>>,
    pub(super) plan: Outline,
    pub(super) outline: Outline,
    pub(super) pitch: Pitch,
    pub(super) down_slope: Angle,
    pub(super) off_plane: Length,
    #[cfg_attr(feature = "serde", serde(skip))]
    pub(super) frame: Frame,
    /// The hole that it stands behind, where it is a plane of a cricket: its first edge as given runs along the curb.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub(super) behind: Option<String>,
    /// The path of the form that it was given in.
    #[cfg_attr(feature = "serde", serde(skip))]
    pub(super) form: &'static str,
}

impl Plane {
    /// Its name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The names of its holes, in the order of the hole rings.
    #[must_use]
    pub fn hole_names(&self) -> &[String] {
        &self.holes
    }

    /// The name of the hole that it stands behind, where it is a plane of a cricket.
    #[must_use]
    pub fn cricket_behind(&self) -> Option<&str> {
        self.behind.as_deref()
    }

    /// Its vertices in space: the outer ring, then the holes, in the order of [`outline`](Self::outline).
    #[must_use]
    pub fn rings(&self) -> &[Vec<Vertex>] {
        &self.rings
    }

    /// Its shape in plan.
    #[must_use]
    pub fn plan(&self) -> &Outline {
        &self.plan
    }

    /// Its true shape, in its own axes: edge by edge the same as [`plan`](Self::plan).
    #[must_use]
    pub fn outline(&self) -> &Outline {
        &self.outline
    }

    /// Its pitch: as given, or in degrees where it follows from vertices.
    #[must_use]
    pub fn pitch(&self) -> Pitch {
        self.pitch
    }

    /// Its slope from level.
    #[must_use]
    pub fn slope(&self) -> Angle {
        self.pitch.angle()
    }

    /// The direction in plan that water runs in, counter-clockwise from x; from 0 to less than 360 degrees.
    #[must_use]
    pub fn down_slope(&self) -> Angle {
        self.down_slope
    }

    /// The upward unit normal.
    #[must_use]
    pub fn normal(&self) -> Direction {
        direction(self.frame.normal)
    }

    /// The level axis x of the plane: to the right when looking up the slope.
    #[must_use]
    pub fn across(&self) -> Direction {
        direction(self.frame.across)
    }

    /// The axis y of the plane: straight up the slope.
    #[must_use]
    pub fn up(&self) -> Direction {
        direction(self.frame.up)
    }

    /// The origin of the plane's axes in space.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) for a roof at the end of the range of lengths.
    pub fn origin(&self) -> Result<Vertex, Error> {
        self.to_space(Point::default())
    }

    /// The farthest that a vertex lies from the plane; zero for a plane given in plan.
    #[must_use]
    pub fn off_plane(&self) -> Length {
        self.off_plane
    }

    /// Its area in plan.
    #[must_use]
    pub fn plan_area(&self) -> Area {
        self.plan.area()
    }

    /// Its true area: the plan area times the slope factor.
    #[must_use]
    pub fn area(&self) -> Area {
        let plan = self.plan.area().get(AreaUnit::SquareMetre);
        Area::of(plan / self.frame.normal[2], AreaUnit::SquareMetre)
    }

    /// The place in the plane's own axes of a point in space, taken square to the plane.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) for a point beyond the range of lengths.
    pub fn to_plane(&self, vertex: Vertex) -> Result<Point, Error> {
        self.frame.point(vertex)
    }

    /// The point in space of a place in the plane's own axes.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) for a point beyond the range of lengths.
    pub fn to_space(&self, point: Point) -> Result<Vertex, Error> {
        self.frame.vertex(point)
    }

    /// The point of the plane above or below a place in plan.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) for a point beyond the range of lengths.
    pub fn at_plan(&self, plan: Point) -> Result<Vertex, Error> {
        self.frame.at_plan(plan.x, plan.y)
    }

    /// The mean width in millimetres: twice the area over the perimeter of the outer ring.
    pub(super) fn mean_width(&self) -> f64 {
        let Some(outer) = self.rings.first() else { return 0.0 };
        let perimeter: f64 = outer.iter().zip(outer.iter().cycle().skip(1)).map(|(a, b)| crate::num::space::norm(b.from(*a))).sum();
        2.0 * self.area().get(AreaUnit::SquareMillimetre) / perimeter
    }
}

fn direction(v: [f64; 3]) -> Direction {
    Direction { x_ratio: v[0] + 0.0, y_ratio: v[1] + 0.0, z_ratio: v[2] + 0.0 }
}
