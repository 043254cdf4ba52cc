//! Where the copings of walls run, and where they meet: each corner once.
//!
//! A wall is given by its face toward the roof, a line in plan, and stands on one side of it. Runs are measured along the outer edge of the top, which is
//! the junction line of a coping: at an outside corner it is longer than the wall's face, at an inside corner shorter, by `t tan(turn / 2)`.

use super::bay::Flank;
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::Side;
use crate::num;
use crate::practice::assembly as practice;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::roof::{Point, Vertex};
use crate::units::{Angle, Length};

/// A wall that has a coping.
///
/// ```
/// use seamwright::assembly::{CopedWall, Flank};
/// use seamwright::roof::Point;
/// use seamwright::units::Length;
/// let (from, to) = (Point::default(), Point::new(Length::feet(40), Length::ZERO));
/// let wall = CopedWall { name: "south parapet".into(), from, to, top: Length::feet(14), thickness: Length::inches(8), stands: Flank::Right, coping: 0 };
/// assert_eq!(wall.stands, Flank::Right, "the roof lies on the left of it");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopedWall {
    /// Its name.
    pub name: String,
    /// One end of its face toward the roof, in plan.
    pub from: Point,
    /// The other.
    pub to: Point,
    /// The height of its top's upper edge.
    pub top: Length,
    /// From face to face.
    pub thickness: Length,
    /// On which side of the face, walking from one end to the other, the wall itself stands; the roof lies on the other.
    pub stands: Flank,
    /// Which coping it has, by number: only like ones are mitred to each other.
    pub coping: usize,
}

/// A wall without a coping, against which a coping may end.
///
/// ```
/// use seamwright::assembly::PlainWall;
/// use seamwright::roof::Point;
/// use seamwright::units::Length;
/// let tower = PlainWall { name: "tower".into(), from: Point::default(), to: Point::new(Length::feet(9), Length::ZERO), top: None };
/// assert_eq!(tower.top, None); // higher than every coping
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlainWall {
    /// Its name.
    pub name: String,
    /// One end of its face in plan.
    pub from: Point,
    /// The other.
    pub to: Point,
    /// The height of its top; without one it is higher than every coping.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub top: Option<Length>,
}

/// The coped walls of a roof.
///
/// Walls in line, of one coping and one height, are one run. Where two walls of one height meet at their ends there is a corner piece, where a wall ends on
/// the face of another of its height a tee piece; a lower wall ends against a higher one; every other end is free.
///
/// # Errors
/// Computing refuses a wall without length or thickness, two that look to different sides where they meet or have copings of unlike section there, one folded
/// back on itself, three ends in one point, a wall that passes through another, and one that ends past the end of another's face; each with what would do.
///
/// ```
/// use seamwright::assembly::{CopedWall, CopingCornerKind, CopingMeets, CopingWalls, Flank};
/// use seamwright::record::Calculation;
/// use seamwright::roof::Point;
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let wall = |name: &str, from, to| CopedWall {
///     name: name.into(), from, to, top: Length::feet(14), thickness: Length::inches(8), stands: Flank::Right, coping: 0,
/// };
/// let walls = CopingWalls {
///     walls: vec![wall("south", p(0, 0), p(40, 0)), wall("east", p(40, 0), p(40, 25))],
///     plain: vec![],
///     tolerance: Length::parse("1/16\"")?,
/// };
/// let found = walls.compute()?;
/// // The outer edge of each passes the corner of the faces by the thickness.
/// assert_eq!(found.runs[0].length, (Length::feet(40) + Length::inches(8)).length()?);
/// assert_eq!((found.corners.len(), found.corners[0].kind), (1, CopingCornerKind::Outside));
/// assert_eq!(found.runs[0].ends, [CopingMeets::Free, CopingMeets::Corner { corner: 0 }]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingWalls {
    /// The walls.
    pub walls: Vec<CopedWall>,
    /// Walls without a coping.
    #[cfg_attr(feature = "serde", serde(default))]
    pub plain: Vec<PlainWall>,
    /// How far apart ends and faces that meet may lie.
    pub tolerance: Length,
}

/// What a run of coping meets at an end. See [`CopingWalls`].
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum CopingMeets {
    /// Nothing: it is closed with a cap.
    Free,
    /// Another run at a corner or at a tee.
    Corner {
        /// Its number.
        corner: usize,
    },
    /// A higher wall.
    Wall {
        /// Its name.
        wall: String,
    },
}

/// A tee on a run of coping. See [`CopingWalls`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TeeOnRun {
    /// Its number among the corners.
    pub corner: usize,
    /// From the start of the run to the middle of the other wall.
    pub at: Length,
    /// How much of the run the other wall takes.
    pub width: Length,
    /// Which face the other wall stands against: the first looks to the roof.
    pub side: Side,
}

/// A run of coping over one wall, or over several in line. See [`CopingWalls`].
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RunOfCoping {
    /// Its coping.
    pub coping: usize,
    /// Its walls by name, in order.
    pub walls: Vec<String>,
    /// Where its outer edge starts; the roof lies on the left.
    pub start: Vertex,
    /// Where it ends.
    pub end: Vertex,
    /// Length of the outer edge.
    pub length: Length,
    /// What it meets at its start and at its end.
    pub ends: [CopingMeets; 2],
    /// Where other runs meet it between them, from its start on.
    pub tees: Vec<TeeOnRun>,
}

/// What is made where runs meet. See [`CopingWalls`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum CopingCornerKind {
    /// Mitred around the outside: the roof lies within the turn.
    Outside,
    /// Mitred into the inside: the walls stand within the turn.
    Inside,
    /// One run goes through, the other ends on it.
    Tee,
}

impl CopingCornerKind {
    /// The name in lists.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            CopingCornerKind::Outside => "outside corner",
            CopingCornerKind::Inside => "inside corner",
            CopingCornerKind::Tee => "tee",
        }
    }
}

/// A place where two runs of coping meet, counted once. See [`CopingWalls`].
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingCorner {
    /// What is made there.
    pub kind: CopingCornerKind,
    /// Where: the outer edges' corner, or the middle of the wall that ends at a tee.
    pub at: Vertex,
    /// How far the second run turns from the first in plan; at a tee, from the run that goes through to the one that ends on it.
    pub turn: Angle,
    /// The two runs by number; at a tee the first goes through.
    pub runs: [usize; 2],
}

/// Runs and corners. See [`CopingWalls`].
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingPlan {
    /// The runs, in the order of their first walls.
    pub runs: Vec<RunOfCoping>,
    /// The corners, in the order of the runs that end there.
    pub corners: Vec<CopingCorner>,
}

type V2 = [f64; 2];

fn dot(a: V2, b: V2) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

fn cross(a: V2, b: V2) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}

fn along(p: V2, u: V2, by: f64) -> V2 {
    [p[0] + u[0] * by, p[1] + u[1] * by]
}

/// A wall with the roof on its left, in millimetres from the first wall's start.
#[derive(Debug, Clone, Copy)]
struct Face {
    ends: [V2; 2],
    u: V2,
    length: f64,
    thick: f64,
}

impl Face {
    /// Out of the roof.
    fn out(&self) -> V2 {
        [self.u[1], -self.u[0]]
    }

    /// Where a point lies along the face and off it, outward.
    fn of(&self, p: V2) -> V2 {
        let d = [p[0] - self.ends[0][0], p[1] - self.ends[0][1]];
        [dot(d, self.u), dot(d, self.out())]
    }

    /// How far a line of another wall, so far out of its face, has to run on past a point to meet a line of this one, so far out of its own.
    fn reach(&self, own: f64, other: &Face, from: V2, way: f64, off: f64) -> f64 {
        let start = along(from, other.out(), off);
        let d = [other.u[0] * way, other.u[1] * way];
        (own - self.of(start)[1]) / dot(d, self.out())
    }
}

/// What the search finds at one end of a wall.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Found {
    Free,
    /// In line with the other end of this wall.
    InLine(usize),
    /// A corner with this wall; how far the outer edge runs on.
    Mitre(usize, f64),
    /// On the face of this wall, from where to where along it, on this side; how far the outer edge runs on.
    Tee {
        on: usize,
        from: f64,
        to: f64,
        side: Side,
        on_by: f64,
    },
    /// Against this higher coped wall; how far the outer edge runs on.
    Coped(usize, f64),
    /// The higher of two walls at a corner.
    Over(f64),
    Plain(usize),
}

impl Found {
    fn runs_on(self) -> f64 {
        match self {
            Found::Mitre(_, by) | Found::Tee { on_by: by, .. } | Found::Coped(_, by) | Found::Over(by) => by,
            Found::Free | Found::InLine(_) | Found::Plain(_) => 0.0,
        }
    }
}

fn turn(from: V2, to: V2) -> f64 {
    num::atan2_deg(cross(from, to), dot(from, to))
}

impl CopingWalls {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        let tolerance = faults.keep(self.tolerance.positive("tolerance"));
        for (i, wall) in self.walls.iter().enumerate() {
            let path = format!("walls[{i}]");
            faults.keep(wall.thickness.positive(&format!("{path}.thickness")).map_err(|e| e.about(&wall.name)));
            if self.walls.iter().take(i).any(|w| w.name == wall.name) {
                let error = Error::new(ErrorKind::Conflict, "a wall that has two copings").at(format!("{path}.name")).value_of(&wall.name);
                faults.add(error.accepts("each wall once"));
            }
            let length = num::hypot((wall.to.x - wall.from.x).length()?.mm(), (wall.to.y - wall.from.y).length()?.mm());
            if tolerance.is_some_and(|t| length <= t.mm()) {
                let error = Error::new(ErrorKind::Geometry, "a wall has no length").at(path.clone()).value_of(&wall.name);
                faults.add(error.accepts("ends farther apart than the tolerance"));
            }
        }
        faults.check()
    }

    fn place(&self, p: Point, origin: Point) -> Result<V2, Error> {
        Ok([(p.x - origin.x).length()?.mm(), (p.y - origin.y).length()?.mm()])
    }

    fn faces(&self, origin: Point) -> Result<Vec<Face>, Error> {
        self.walls
            .iter()
            .map(|w| {
                let (from, to) = if w.stands == Flank::Right { (w.from, w.to) } else { (w.to, w.from) };
                let ends = [self.place(from, origin)?, self.place(to, origin)?];
                let d = [ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]];
                let length = num::hypot(d[0], d[1]);
                Ok(Face { ends, u: [d[0] / length, d[1] / length], length, thick: w.thickness.mm() })
            })
            .collect()
    }

    fn name(&self, wall: usize) -> &str {
        self.walls.get(wall).map_or("", |w| w.name.as_str())
    }

    fn top(&self, wall: usize) -> Length {
        self.walls.get(wall).map_or(Length::ZERO, |w| w.top)
    }

    /// Above zero where the first wall's top is the higher, 0 where both are one within the tolerance.
    fn higher(&self, a: usize, b: usize) -> i8 {
        let d = self.top(a).mm() - self.top(b).mm();
        if d.abs() <= self.tolerance.mm() { 0 } else { if d > 0.0 { 1 } else { -1 } }
    }

    fn refused(&self, kind: ErrorKind, message: &'static str, wall: usize, accepts: &'static str) -> Error {
        Error::new(kind, message).at(format!("walls[{wall}]")).value_of(self.name(wall)).accepts(accepts)
    }

    /// What one end of a wall meets; 0 is its start.
    fn end(&self, faces: &[Face], wall: usize, end: usize, plain: &[[V2; 2]]) -> Result<Found, Error> {
        let tolerance = self.tolerance.mm();
        let Some((own, here)) = faces.get(wall).and_then(|f| Some((f, *f.ends.get(end)?))) else { return Ok(Found::Free) };
        let mut ends = Vec::new();
        for (v, face) in faces.iter().enumerate().filter(|(v, _)| *v != wall) {
            for (e, p) in face.ends.iter().enumerate() {
                if num::hypot(p[0] - here[0], p[1] - here[1]) <= tolerance {
                    ends.push((v, e));
                }
            }
        }
        match ends[..] {
            [] => {}
            [(v, e)] => return self.at_ends(faces, (wall, end), (v, e)),
            _ => {
                return Err(self
                    .refused(ErrorKind::Geometry, "the ends of three walls meet in one point", wall, "two ends in a point, or one on a face")
                    .cured_by("one wall that goes through, and the other's end on its face"));
            }
        }
        // Away from the end, along the wall.
        let away = if end == 0 { own.u } else { [-own.u[0], -own.u[1]] };
        for (v, face) in faces.iter().enumerate().filter(|(v, _)| *v != wall) {
            let [at, off] = face.of(here);
            let (roof_side, outside) = (off.abs() <= tolerance, (off - face.thick).abs() <= tolerance);
            if !(roof_side || outside) || at < -tolerance || at > face.length + tolerance || cross(away, face.u).abs() < LEVEL_TURN {
                continue;
            }
            let outward = dot(away, face.out());
            if (outward > 0.0) == roof_side {
                return Err(self.refused(ErrorKind::Geometry, "a wall passes through another", wall, "a wall that ends on the face that it comes to"));
            }
            let (line, side) = if roof_side { (0.0, Side::First) } else { (face.thick, Side::Second) };
            // Towards the face the outer edge runs so far past the face's own end.
            let on_by = face.reach(line, own, here, if end == 0 { -1.0 } else { 1.0 }, own.thick);
            let edge = along(along(here, own.out(), own.thick), away, -on_by);
            let other = face.of(edge)[0];
            return match self.higher(wall, v) {
                1 => Ok(Found::Over(on_by)),
                -1 => Ok(Found::Coped(v, on_by)),
                _ => {
                    let (from, to) = (at.min(other), at.max(other));
                    if from < -tolerance || to > face.length + tolerance {
                        return Err(self
                            .refused(ErrorKind::Geometry, "a wall ends past the end of another's face", wall, "its whole thickness on the face")
                            .cured_by("the two walls' faces meeting at their ends, as at a corner"));
                    }
                    Ok(Found::Tee { on: v, from, to, side, on_by })
                }
            };
        }
        for (k, (ends, plain)) in plain.iter().zip(&self.plain).enumerate() {
            let d = [ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]];
            let length = num::hypot(d[0], d[1]);
            if length <= tolerance {
                continue;
            }
            let u = [d[0] / length, d[1] / length];
            let h = [here[0] - ends[0][0], here[1] - ends[0][1]];
            let meets = cross(u, h).abs() <= tolerance && (-tolerance..=length + tolerance).contains(&dot(u, h)) && cross(u, own.u).abs() >= LEVEL_TURN;
            if meets && plain.top.is_none_or(|top| top > self.top(wall)) {
                return Ok(Found::Plain(k));
            }
        }
        Ok(Found::Free)
    }

    /// Two walls that meet at their ends.
    fn at_ends(&self, faces: &[Face], (a, end): (usize, usize), (b, other): (usize, usize)) -> Result<Found, Error> {
        let (Some(own), Some(beside)) = (faces.get(a), faces.get(b)) else { return Ok(Found::Free) };
        if end == other {
            return Err(self
                .refused(ErrorKind::Conflict, "two walls that meet look to different sides", a, "the roof on one and the same side of both")
                .about(self.name(b))
                .cured_by("a wall named on each face that looks over a roof"));
        }
        let (first, second) = if end == 1 { (own.u, beside.u) } else { (beside.u, own.u) };
        let degrees = turn(first, second);
        let (like, higher) = (self.walls.get(a).map(|w| w.coping) == self.walls.get(b).map(|w| w.coping), self.higher(a, b));
        if degrees.abs() <= practice::COPING_IN_LINE.degrees() {
            return Ok(match higher {
                0 if like => Found::InLine(b),
                -1 => Found::Coped(b, 0.0),
                _ => Found::Free,
            });
        }
        if degrees.abs() >= 180.0 - practice::COPING_SHARPEST.degrees() {
            return Err(self.refused(ErrorKind::Geometry, "a wall is folded back on another", a, "walls that turn by less").about(self.name(b)));
        }
        let here = own.ends.get(end).copied().unwrap_or_default();
        let way = if end == 1 { 1.0 } else { -1.0 };
        let meets = |line: f64| beside.reach(line, own, here, way, own.thick);
        match higher {
            0 if like => Ok(Found::Mitre(b, meets(beside.thick))),
            0 => Err(self
                .refused(ErrorKind::Conflict, "copings of unlike section meet at a corner", a, "walls of one coping there, or tops of unlike height")
                .about(self.name(b))
                .cured_by("both walls named under one coping")),
            // The higher goes over the corner, the lower comes up to its face: the one to the roof within the turn, the outer one around it.
            1 => Ok(Found::Over(meets(if degrees > 0.0 { beside.thick } else { 0.0 }))),
            _ => Ok(Found::Coped(b, meets(if degrees > 0.0 { 0.0 } else { beside.thick }))),
        }
    }
}

/// Sine of the least angle at which a wall comes to another's face.
const LEVEL_TURN: f64 = 0.01;

impl Calculation for CopingWalls {
    type Out = CopingPlan;

    fn title(&self) -> String {
        "runs of coping and their corners".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<CopingPlan, Error> {
        self.check()?;
        let origin = self.walls.first().map(|w| w.from).unwrap_or_default();
        let faces = self.faces(origin)?;
        let plain = self.plain.iter().map(|w| Ok([self.place(w.from, origin)?, self.place(w.to, origin)?])).collect::<Result<Vec<_>, Error>>()?;
        let mut faults = Faults::default();
        let mut found = Vec::with_capacity(faces.len());
        for wall in 0..faces.len() {
            let ends = [self.end(&faces, wall, 0, &plain), self.end(&faces, wall, 1, &plain)];
            found.push(ends.map(|end| faults.keep(end).unwrap_or(Found::Free)));
        }
        faults.check()?;
        let ends_of = |wall: usize| found.get(wall).copied().unwrap_or([Found::Free; 2]);

        // Walls in line are one run: from each wall that follows none.
        let (mut chains, mut run_of, mut before) = (Vec::new(), vec![0; faces.len()], vec![0.0; faces.len()]);
        for first in (0..faces.len()).filter(|w| !matches!(ends_of(*w)[0], Found::InLine(_))) {
            let (mut chain, mut wall, mut at) = (vec![first], first, 0.0);
            loop {
                if let (Some(run), Some(b)) = (run_of.get_mut(wall), before.get_mut(wall)) {
                    (*run, *b) = (chains.len(), at);
                }
                at += faces.get(wall).map_or(0.0, |f| f.length);
                match ends_of(wall)[1] {
                    Found::InLine(next) if chain.len() <= faces.len() => {
                        chain.push(next);
                        wall = next;
                    }
                    _ => break,
                }
            }
            chains.push((chain, at));
        }

        let mut plan = CopingPlan { runs: Vec::with_capacity(chains.len()), corners: Vec::new() };
        let vertex = |p: V2, wall: usize| -> Result<Vertex, Error> {
            Ok(Vertex { x: (origin.x + Length::from_mm(p[0])?).length()?, y: (origin.y + Length::from_mm(p[1])?).length()?, z: self.top(wall) })
        };
        // The outer edge past an end.
        let outer = |wall: usize, end: usize| -> Option<V2> {
            let face = faces.get(wall)?;
            let way = if end == 1 { 1.0 } else { -1.0 };
            Some(along(along(*face.ends.get(end)?, face.out(), face.thick), face.u, way * ends_of(wall)[end].runs_on()))
        };
        let mut tees: Vec<(usize, usize, Found, usize)> = Vec::new();
        for (number, (chain, faced)) in chains.iter().enumerate() {
            let (Some(&first), Some(&last)) = (chain.first(), chain.last()) else { continue };
            let length = Length::from_mm(faced + ends_of(first)[0].runs_on() + ends_of(last)[1].runs_on())?;
            let mut ends = [CopingMeets::Free, CopingMeets::Free];
            for (slot, (wall, end)) in ends.iter_mut().zip([(first, 0), (last, 1)]) {
                *slot = match ends_of(wall)[end] {
                    Found::Mitre(other, _) => {
                        let run = run_of.get(other).copied().unwrap_or_default();
                        let (Some(own), Some(beside)) = (faces.get(wall), faces.get(other)) else { continue };
                        let (one, two, runs) = if end == 1 { (own, beside, [number, run]) } else { (beside, own, [run, number]) };
                        let known = plan.corners.iter().position(|c| c.runs == runs && c.kind != CopingCornerKind::Tee);
                        let corner = match known {
                            Some(known) => known,
                            None => {
                                let degrees = turn(one.u, two.u);
                                let kind = if degrees > 0.0 { CopingCornerKind::Outside } else { CopingCornerKind::Inside };
                                let at = vertex(outer(wall, end).unwrap_or_default(), wall)?;
                                plan.corners.push(CopingCorner { kind, at, turn: Angle::degrees_from(degrees)?, runs });
                                plan.corners.len() - 1
                            }
                        };
                        CopingMeets::Corner { corner }
                    }
                    tee @ Found::Tee { on, from, to, side, .. } => {
                        let run = run_of.get(on).copied().unwrap_or_default();
                        let (Some(own), Some(through)) = (faces.get(wall), faces.get(on)) else { continue };
                        let off = if side == Side::First { 0.0 } else { through.thick };
                        let at = along(along(*through.ends.first().unwrap_or(&[0.0; 2]), through.u, (from + to) / 2.0), through.out(), off);
                        let away = if end == 0 { own.u } else { [-own.u[0], -own.u[1]] };
                        let turn = Angle::degrees_from(turn(through.u, away))?;
                        plan.corners.push(CopingCorner { kind: CopingCornerKind::Tee, at: vertex(at, wall)?, turn, runs: [run, number] });
                        tees.push((run, on, tee, plan.corners.len() - 1));
                        CopingMeets::Corner { corner: plan.corners.len() - 1 }
                    }
                    Found::Coped(other, _) => CopingMeets::Wall { wall: self.name(other).to_owned() },
                    Found::Plain(k) => CopingMeets::Wall { wall: self.plain.get(k).map_or_else(String::new, |w| w.name.clone()) },
                    Found::Free | Found::InLine(_) | Found::Over(_) => CopingMeets::Free,
                };
            }
            let (start, end) = (vertex(outer(first, 0).unwrap_or_default(), first)?, vertex(outer(last, 1).unwrap_or_default(), last)?);
            r.step(|| {
                let step = Step::new(format!("outer edge over {}", self.name(first))).formula("faces + what the outer edge runs on at its ends");
                step.with("faces", format_args!("{faced:.3} mm")).gives(length).source(Source::geometry())
            });
            let (coping, walls) = (self.walls.get(first).map_or(0, |w| w.coping), chain.iter().map(|w| self.name(*w).to_owned()).collect());
            plan.runs.push(RunOfCoping { coping, walls, start, end, length, ends, tees: Vec::new() });
        }
        for (run, wall, tee, corner) in tees {
            let Found::Tee { from, to, side, .. } = tee else { continue };
            let first = chains.get(run).and_then(|(chain, _)| chain.first()).copied().unwrap_or_default();
            let start = before.get(wall).copied().unwrap_or_default() + ends_of(first)[0].runs_on();
            let tee = TeeOnRun { corner, at: Length::from_mm(start + (from + to) / 2.0)?, width: Length::from_mm(to - from)?, side };
            if let Some(on) = plan.runs.get_mut(run) {
                on.tees.push(tee);
            }
        }
        for run in &mut plan.runs {
            run.tees.sort_by_key(|t| (t.at, t.corner));
        }
        Ok(plan)
    }
}
