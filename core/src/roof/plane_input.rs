//! The two ways to give a plane, and the checks on them.

use super::frame::Frame;
use super::vertex::Vertex;
use super::{Outline, Plane, Point};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::num::space::{V3, norm};
use crate::pitch::Pitch;
use crate::practice::roof as practice;
use crate::units::{Angle, Length};

/// A hole in a plane, such as a curb opening, by name.
///
/// ```
/// use seamwright::roof::{Opening, Point};
/// let none: Opening<Point> = Opening { name: "curb".into(), ring: vec![] };
/// assert_eq!(none.name, "curb");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "OpeningOf{P}"))]
pub struct Opening<P> {
    /// Its name, unlike that of any other hole of the plane.
    pub name: String,
    /// Its vertices in order, either way round, the first one given once.
    pub ring: Vec<P>,
}

/// The shape of a plane in one of the two forms that it can be given in.
///
/// ```
/// use seamwright::roof::{PlaneInput, Shape, Vertex};
/// use seamwright::units::Length;
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let shape = Shape::Space { outer: vec![v(0, 0, 10), v(40, 0, 10), v(40, 20, 20), v(0, 20, 20)], holes: vec![], flatness: None };
/// let plane = PlaneInput { name: "south".into(), shape }.plane()?;
/// assert!((plane.pitch().ratio() - 0.5).abs() < 1e-15);
/// assert_eq!(plane.down_slope().degrees(), 270.0);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Shape {
    /// A polygon in plan, with its pitch.
    Plan {
        /// The vertices in plan, in order, either way round.
        outer: Vec<Point>,
        /// Holes in plan.
        #[cfg_attr(feature = "serde", serde(default))]
        holes: Vec<Opening<Point>>,
        /// Its pitch.
        pitch: Pitch,
        /// The direction in plan that water runs in, counter-clockwise from x.
        down_slope: Angle,
        /// A point of the plane, inside the polygon or not.
        anchor: Vertex,
    },
    /// Vertices in space, counter-clockwise seen from above.
    Space {
        /// The vertices in space, in order, counter-clockwise seen from above.
        outer: Vec<Vertex>,
        /// Holes in space, either way round.
        #[cfg_attr(feature = "serde", serde(default))]
        holes: Vec<Opening<Vertex>>,
        /// How far a vertex may lie from the plane through the outer ring; [`practice`](crate::practice::roof::FLATNESS) unless given.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        flatness: Option<Length>,
    },
}

/// A plane as the caller gives it.
///
/// ```
/// use seamwright::roof::{PlaneInput, Point, Shape, Vertex};
/// use seamwright::pitch::Pitch;
/// use seamwright::units::{Angle, AreaUnit, Length};
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let shape = Shape::Plan {
///     outer: vec![p(0, 0), p(40, 0), p(40, 16), p(0, 16)],
///     holes: vec![],
///     pitch: Pitch::parse("9:12")?,
///     down_slope: Angle::parse("270 deg")?,
///     anchor: Vertex::new(Length::ZERO, Length::ZERO, Length::feet(10)),
/// };
/// let plane = PlaneInput { name: "south".into(), shape }.plane()?;
/// assert_eq!(plane.outline().bounds().high, p(40, 20)); // 16 ft of run at 9:12
/// assert!((plane.area().get(AreaUnit::SquareFoot) - 800.0).abs() < 1e-9);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlaneInput {
    /// Its name, unlike that of any other plane of the roof.
    pub name: String,
    /// Its shape.
    pub shape: Shape,
}

/// Paths of the two forms in a plane's input.
const PLAN: &str = "shape.plan";
const SPACE: &str = "shape.space";

impl PlaneInput {
    /// The plane, checked.
    ///
    /// # Errors
    /// Every fault at once. [`ErrorKind::Geometry`] with the vertex for rings that cross or touch, repeated vertices, spikes, no area; for
    /// a vertex off the plane, by how much; for a plane that is vertical, faces down, or is too level to tell which way water runs.
    /// [`ErrorKind::OutOfRange`] for a plane more than 9 km across and for a flatness of less than nothing, [`ErrorKind::Missing`] for a plane or hole
    /// without a name, [`ErrorKind::Conflict`] for two holes of one name.
    pub fn plane(&self) -> Result<Plane, Error> {
        let mut faults = Faults::default();
        if self.name.trim().is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "a plane needs a name").at("name"));
        }
        let plane = match &self.shape {
            Shape::Plan { outer, holes, pitch, down_slope, anchor } => {
                check_names(holes, PLAN, &mut faults);
                faults.keep(from_plan(outer, holes, *pitch, *down_slope, *anchor).map_err(|e| rings_of_openings(e).under(PLAN)))
            }
            Shape::Space { outer, holes, flatness } => {
                check_names(holes, SPACE, &mut faults);
                let flatness = flatness.map_or(Ok(practice::FLATNESS), |f| f.not_negative("flatness"));
                faults.keep(flatness.and_then(|f| from_space(outer, holes, f)).map_err(|e| rings_of_openings(e).under(SPACE)))
            }
        };
        faults.check()?;
        let mut plane = plane.ok_or_else(|| Error::new(ErrorKind::Internal, "a plane without fault is missing"))?;
        plane.name.clone_from(&self.name);
        Ok(plane)
    }
}

fn check_names<P>(holes: &[Opening<P>], under: &str, faults: &mut Faults) {
    for (i, hole) in holes.iter().enumerate() {
        if hole.name.trim().is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "a hole needs a name").at(format!("{under}.holes[{i}].name")));
        } else if holes.iter().take(i).any(|o| o.name == hole.name) {
            faults.add(Error::new(ErrorKind::Conflict, "two holes have one name").at(format!("{under}.holes[{i}].name")).value_of(&hole.name));
        }
    }
}

/// An outline knows its holes as bare rings; here each is the ring of an opening, and paths say so.
fn rings_of_openings(e: Error) -> Error {
    let mut faults = Faults::default();
    for one in core::iter::once(&e).chain(e.others()) {
        let path = match one.path().strip_prefix("holes[").and_then(|rest| rest.split_once(']')) {
            Some((number, rest)) if rest.is_empty() || rest.starts_with('[') => format!("holes[{number}].ring{rest}"),
            _ => one.path().to_owned(),
        };
        let mut again = Error::new(one.kind(), one.message().to_owned()).at(path);
        if let Some(value) = one.value() {
            again = again.value_of(value);
        }
        if let Some(allowed) = one.allowed() {
            again = again.accepts(allowed.to_owned());
        }
        if let Some(cure) = one.cure() {
            again = again.cured_by(cure.to_owned());
        }
        if let Some((start, end)) = one.span() {
            again = again.pointing(start, end);
        }
        faults.add(again);
    }
    faults.check().err().unwrap_or(e)
}

fn names<P>(holes: &[Opening<P>]) -> Vec<String> {
    holes.iter().map(|h| h.name.clone()).collect()
}

/// The sine and cosine of a direction, exact under mirroring in either axis and in the diagonal.
fn compass(angle: Angle) -> [f64; 2] {
    let turn = angle.degrees() % 360.0;
    let (up, half) = if turn.abs() > 180.0 { (-turn.signum(), 360.0 - turn.abs()) } else { (turn.signum(), turn.abs()) };
    let (right, quarter) = if half > 90.0 { (-1.0, 180.0 - half) } else { (1.0, half) };
    // Sine and cosine of the smaller half of the quarter, so that x and y change places exactly.
    let (x, y) = if quarter > 45.0 { (num::sin_deg(90.0 - quarter), num::cos_deg(90.0 - quarter)) } else { (num::cos_deg(quarter), num::sin_deg(quarter)) };
    [right * x + 0.0, up * y + 0.0]
}

fn normal_degrees(degrees: f64) -> Angle {
    let turn = degrees % 360.0;
    let turn = if turn < 0.0 { turn + 360.0 } else { turn };
    Angle::of_degrees(if turn >= 360.0 { 0.0 } else { turn + 0.0 })
}

fn vertical(path: &str, slope_degrees: f64) -> Error {
    Error::new(ErrorKind::Geometry, "a vertical plane is not a roof plane")
        .at(path)
        .value_of(Angle::of_degrees(slope_degrees))
        .accepts(format!("a slope of less than {}", practice::STEEPEST))
        .cured_by("give it as a wall")
}

fn from_plan(outer: &[Point], holes: &[Opening<Point>], pitch: Pitch, down_slope: Angle, anchor: Vertex) -> Result<Plane, Error> {
    let mut faults = Faults::default();
    if pitch.angle() >= practice::STEEPEST {
        faults.add(vertical("pitch", pitch.angle().degrees()));
    }
    let plan = faults.keep(Outline::new(outer.to_vec(), holes.iter().map(|h| h.ring.clone()).collect()));
    faults.check()?;
    let plan = plan.ok_or_else(|| Error::new(ErrorKind::Internal, "an outline without fault is missing"))?;
    let fall = compass(down_slope);
    let rise_ratio = pitch.ratio();
    let height = |p: Point| -> Result<Vertex, Error> {
        let level = Vertex { x: p.x, y: p.y, z: anchor.z };
        let d = level.from(anchor);
        let rise = Length::from_mm(-rise_ratio * (d[0] * fall[0] + d[1] * fall[1])).map_err(|e| e.at("anchor"))?;
        Ok(Vertex { z: (anchor.z + rise).length().map_err(|e| e.at("anchor"))?, ..level })
    };
    let rings = plan.rings().map(|ring| ring.iter().map(|&p| height(p)).collect::<Result<Vec<_>, _>>()).collect::<Result<Vec<_>, _>>()?;
    let frame = Frame::new(&rings, fall, rise_ratio);
    assemble(rings, plan, names(holes), frame, pitch, normal_degrees(down_slope.degrees()))
}

fn from_space(outer: &[Vertex], holes: &[Opening<Vertex>], flatness: Length) -> Result<Plane, Error> {
    let flat = |ring: &[Vertex]| ring.iter().map(|v| Point::new(v.x, v.y)).collect::<Vec<_>>();
    let area = twice_area(outer)?;
    let size = norm(area);
    let Some(normal) = (size > 0.0).then(|| area.map(|a| a / size)) else {
        // The faults of its plan say more than that there is no area.
        Outline::new(flat(outer), vec![])?;
        return Err(Error::new(ErrorKind::Geometry, "the vertices enclose no area").at("outer").value_of("0 m2").accepts("a face with an area"));
    };
    if normal[2].abs() <= practice::STEEPEST.cos() {
        return Err(vertical("outer", num::acos_deg(normal[2].abs())));
    }
    // What else is at fault shows with it: a plane that faces down is looked at from above.
    let mut faults = Faults::default();
    let down = normal[2] < 0.0;
    let normal = if down { normal.map(|n| -n) } else { normal };
    if down {
        let said = Error::new(ErrorKind::Geometry, "the plane faces down").at("outer").value_of(Angle::of_degrees(180.0 - num::acos_deg(normal[2])));
        faults.add(said.accepts("an upper side").cured_by("list the vertices counter-clockwise as seen from above"));
    }
    let plan = faults.keep(Outline::new(flat(outer), holes.iter().map(|h| flat(&h.ring)).collect()));

    let level = num::hypot(normal[0], normal[1]);
    let rise_ratio = level / normal[2];
    let fall = if level > 0.0 { [normal[0] / level, normal[1] / level] } else { [0.0, -1.0] };
    let given = || core::iter::once(outer.to_vec()).chain(holes.iter().map(|h| h.ring.clone())).collect::<Vec<_>>();
    let rings = plan.as_ref().map_or_else(given, |plan| heights(plan, outer, holes));
    let frame = Frame::new(&rings, fall, rise_ratio);
    let mut worst = 0.0_f64;
    for (path, v) in outer
        .iter()
        .enumerate()
        .map(|(i, v)| (format!("outer[{i}]"), v))
        .chain(holes.iter().enumerate().flat_map(|(h, hole)| hole.ring.iter().enumerate().map(move |(i, v)| (format!("holes[{h}][{i}]"), v))))
    {
        let above = frame.above(*v);
        worst = worst.max(above.abs());
        if above.abs() > flatness.mm() {
            faults.add(
                Error::new(ErrorKind::Geometry, format!("the vertex lies {} the plane", if above > 0.0 { "above" } else { "below" }))
                    .at(path)
                    .value_of(Length::from_mm(above.abs())?)
                    .accepts(format!("at most {flatness} from the plane through the outer ring"))
                    .cured_by("split the face into planes, or allow more flatness"),
            );
        }
    }
    let reach = frame.reach();
    if reach * level <= flatness.mm() {
        faults.add(
            Error::new(ErrorKind::Geometry, "the plane is too level to tell which way water runs")
                .at("outer")
                .value_of(Length::from_mm(reach * level)?)
                .accepts(format!("a fall of more than {flatness} from top to bottom"))
                .cured_by("give it in plan, with its pitch and direction"),
        );
    }
    faults.check()?;
    let plan = plan.ok_or_else(|| Error::new(ErrorKind::Internal, "an outline without fault is missing"))?;
    let pitch = Pitch::from_angle(Angle::of_degrees(num::atan2_deg(level, normal[2])))?;
    let down_slope = normal_degrees(num::atan2_deg(normal[1], normal[0]));
    let mut plane = assemble(rings, plan, names(holes), frame, pitch, down_slope)?;
    plane.off_plane = Length::from_mm(worst)?;
    plane.form = SPACE;
    Ok(plane)
}

/// The vertices of the plan's stored rings, which may run the other way round from those given.
fn heights(plan: &Outline, outer: &[Vertex], holes: &[Opening<Vertex>]) -> Vec<Vec<Vertex>> {
    let given = core::iter::once(outer).chain(holes.iter().map(|h| h.ring.as_slice()));
    plan.rings()
        .zip(given)
        .map(|(stored, ring)| {
            let mut ring = ring.to_vec();
            let same = stored.iter().zip(&ring).all(|(p, v)| (p.x, p.y) == (v.x, v.y));
            if let (false, Some(rest)) = (same, ring.get_mut(1..)) {
                rest.reverse();
            }
            ring
        })
        .collect()
}

/// Twice the area of a ring as a vector: exact in whole square picometres, then rounded once, so that it does not depend on
/// where the ring starts or stands.
#[allow(clippy::cast_precision_loss, reason = "the exact area is rounded once")]
fn twice_area(ring: &[Vertex]) -> Result<V3, Error> {
    let Some(first) = ring.first() else { return Ok([0.0; 3]) };
    let origin = first.pm();
    let local = |v: &Vertex| {
        let p = v.pm();
        [p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]]
    };
    if let Some((i, v)) = ring.iter().enumerate().find(|(_, v)| local(v).iter().any(|c| c.abs() >= 1 << 53)) {
        return Err(Error::new(ErrorKind::OutOfRange, "the vertex is too far from the first one")
            .at(format!("outer[{i}]"))
            .value_of(format_args!("{}, {}, {}", v.x, v.y, v.z))
            .accepts("less than 9 km")
            .cured_by("check the unit of the coordinates"));
    }
    let mut total = [0_i128; 3];
    for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let (a, b) = (local(a), local(b));
        total[0] += a[1] * b[2] - a[2] * b[1];
        total[1] += a[2] * b[0] - a[0] * b[2];
        total[2] += a[0] * b[1] - a[1] * b[0];
    }
    Ok(total.map(|t| t as f64))
}

fn assemble(rings: Vec<Vec<Vertex>>, plan: Outline, holes: Vec<String>, frame: Frame, pitch: Pitch, down_slope: Angle) -> Result<Plane, Error> {
    let mut shape = Vec::with_capacity(rings.len());
    for ring in &rings {
        shape.push(ring.iter().map(|&v| frame.point(v)).collect::<Result<Vec<_>, _>>()?);
    }
    let mut shape = shape.into_iter();
    let outer = shape.next().unwrap_or_default();
    let outline = Outline::new(outer, shape.collect())?;
    Ok(Plane { name: String::new(), holes, rings, plan, outline, pitch, down_slope, off_plane: Length::ZERO, frame, behind: None, form: PLAN })
}
