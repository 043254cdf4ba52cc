//! From a rough sketch to what must be measured.

use super::between_corners::{WallLines, with_corners_between};
use super::joined_planes::{Joint, PlaneEdge};
use super::measured_plane::{MOST_CORNERS, Mark};
use super::measuring_sheet::{LinePart, MeasuringSheet, PitchNeed, PlaneSheet, SheetLine};
use super::observations::{length, sub};
use super::opening_ties::{OpeningTies, opening_ties};
use super::pitch_needs::pitch_needs;
use super::shape::{NamedCorner, NamedOpening};
use super::sheet_ties::sheet_ties;
use super::triangles::{self, Cut};
use super::walk::{Walk, Walked};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::practice::roof as practice;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::roof::{Line, Opening, Outline, Plane, Point, Roof, Vertex, plane_number};
use crate::units::{Angle, Length};

/// The most planes of a sketch.
const MOST_PLANES: usize = 256;

/// A plane of a rough sketch: its corners roughly where they lie in plan.
///
/// ```
/// use seamwright::roof::{Point, SketchedPlane};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let south = SketchedPlane::new("south", vec![p(0, 0), p(40, 0), p(40, 12), p(0, 12)]);
/// assert_eq!(south.outer.len(), 4);
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SketchedPlane {
    /// Its name, unlike that of any other plane.
    pub name: String,
    /// Its corners in plan, in order, either way round.
    pub outer: Vec<Point>,
    /// Its openings in plan: chimneys, skylights, the feet of dormers.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub holes: Vec<Opening<Point>>,
    /// The direction in plan that water runs in, counter-clockwise from x, within a few degrees: it tells which pitches need not be measured.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub down_slope: Option<Angle>,
}

impl SketchedPlane {
    /// A plane without an opening, of which it is not said which way water runs.
    #[must_use]
    pub fn new(name: impl Into<String>, outer: Vec<Point>) -> SketchedPlane {
        SketchedPlane { name: name.into(), outer, holes: Vec::new(), down_slope: None }
    }
}

/// A wall in a sketch, along which planes stand at different heights and do not meet: above a lean-to, round a dormer's foot.
///
/// ```
/// use seamwright::roof::{Point, SketchedWall};
/// use seamwright::units::Length;
/// let wall = SketchedWall { from: Point::default(), to: Point::new(Length::feet(40), Length::ZERO) };
/// assert_eq!(wall.to.x, Length::feet(40));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SketchedWall {
    /// Where it starts in plan.
    pub from: Point,
    /// Where it ends in plan; which end is which does not matter.
    pub to: Point,
}

/// A rough sketch of a roof, from which the measuring sheet is made.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::roof::{LinePart, Point, SketchedPlane, SketchedRoof};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let sketch = SketchedRoof::new(vec![
///     SketchedPlane::new("south", vec![p(0, 0), p(40, 0), p(40, 12), p(0, 12)]),
///     SketchedPlane::new("north", vec![p(40, 24), p(0, 24), p(0, 12), p(40, 12)]),
/// ]);
/// let sheet = sketch.compute()?;
/// // Four sides and a diagonal, and two checks; the ridge is measured once.
/// assert_eq!(sheet.planes[0].lines.len(), 7);
/// assert_eq!((sheet.lines, sheet.joints.len()), (13, 1));
/// assert_eq!(sheet.planes[1].lines.iter().filter(|l| l.part == LinePart::Check).count(), 2);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SketchedRoof {
    /// The planes. A corner of one along a side of another is a corner of both, so that every joint is between whole sides.
    pub planes: Vec<SketchedPlane>,
    /// Where sides of two planes lie over one another in plan and are no shared line.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub walls: Vec<SketchedWall>,
    /// The plane that the walk starts with; the first unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub start: Option<String>,
    /// Corners this close are one corner; [`practice`](crate::practice::roof::SKETCH) unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tolerance: Option<Length>,
    /// Marks for a check are struck at whole steps of this; [`practice`](crate::practice::roof::MARK_STEP) unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub mark_step: Option<Length>,
}

impl SketchedRoof {
    /// A sketch of these planes, with the tolerances of common practice.
    #[must_use]
    pub fn new(planes: Vec<SketchedPlane>) -> SketchedRoof {
        SketchedRoof { planes, walls: Vec::new(), start: None, tolerance: None, mark_step: None }
    }

    /// The sketch of a roof that is known, to measure it again: its planes in plan, whose corners lie as near as the roof's do.
    #[must_use]
    pub fn of(roof: &Roof) -> SketchedRoof {
        let plane = |p: &Plane| {
            let hole = |(name, ring): (&String, &Vec<Point>)| Opening { name: name.clone(), ring: ring.clone() };
            let holes = p.hole_names().iter().zip(p.plan().holes()).map(hole).collect();
            SketchedPlane { holes, down_slope: Some(p.down_slope()), ..SketchedPlane::new(p.name(), p.plan().outer().to_vec()) }
        };
        let plan = |v: Vertex| Point::new(v.x, v.y);
        let over =
            |l: &&Line| l.other().is_none() && roof.planes().iter().any(|p| p.plan().edges().any(|e| lies_over([plan(l.start), plan(l.end)], [e.to, e.from])));
        let walls = roof.lines().iter().filter(over).map(|l| SketchedWall { from: plan(l.start), to: plan(l.end) }).collect();
        SketchedRoof { walls, tolerance: Some(roof.tolerance()), ..SketchedRoof::new(roof.planes().iter().map(plane).collect()) }
    }

    fn checked(&self) -> Result<(Vec<Outline>, usize, Length, Length), Error> {
        let mut faults = Faults::default();
        let tolerance = faults.keep(self.tolerance.unwrap_or(practice::SKETCH).positive("tolerance")).unwrap_or(practice::SKETCH);
        let step = faults.keep(self.mark_step.unwrap_or(practice::MARK_STEP).positive("mark_step")).unwrap_or(practice::MARK_STEP);
        if self.planes.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "a sketch needs a plane").at("planes").accepts("1 plane or more"));
        }
        if self.planes.len() > MOST_PLANES {
            let said = Error::new(ErrorKind::TooLarge, "more planes than a sheet is made for").at("planes");
            faults.add(said.value_of(format_args!("{} planes", self.planes.len())).accepts(format!("at most {MOST_PLANES}")));
        }
        let mut outlines = Vec::new();
        for (i, plane) in self.planes.iter().enumerate() {
            let path = format!("planes[{i}]");
            if plane.name.trim().is_empty() {
                faults.add(Error::new(ErrorKind::Missing, "a plane needs a name").at(format!("{path}.name")));
            } else if self.planes.iter().take(i).any(|p| p.name == plane.name) {
                faults.add(Error::new(ErrorKind::Conflict, "two planes have one name").at(format!("{path}.name")).value_of(&plane.name));
            }
            for (k, hole) in plane.holes.iter().enumerate() {
                let path = format!("{path}.holes[{k}].name");
                if hole.name.trim().is_empty() {
                    faults.add(Error::new(ErrorKind::Missing, "an opening needs a name").at(path));
                } else if plane.holes.iter().take(k).any(|h| h.name == hole.name) {
                    faults.add(Error::new(ErrorKind::Conflict, "two openings of a plane have one name").at(path).value_of(&hole.name));
                }
            }
            let count = plane.outer.len() + plane.holes.iter().map(|h| h.ring.len()).sum::<usize>();
            if count > MOST_CORNERS {
                let said = Error::new(ErrorKind::TooLarge, "more corners than are solved for, with those of its openings").at(format!("{path}.outer"));
                faults.add(said.value_of(format_args!("{count} corners")).accepts(format!("at most {MOST_CORNERS}")));
                continue;
            }
            let holes = plane.holes.iter().map(|h| h.ring.clone()).collect();
            outlines.extend(faults.keep(Outline::new(plane.outer.clone(), holes).map_err(|e| e.under(&path).about(&plane.name))));
        }
        let start = match &self.start {
            None => Some(0),
            Some(name) => faults.keep(plane_number(self.planes.iter().map(|p| p.name.as_str()), name, "start")),
        };
        faults.check()?;
        let outlines = with_corners_between(&outlines, &WallLines::new(&self.walls, tolerance.mm()), tolerance.mm())?;
        if let Some(i) = outlines.iter().position(|o| o.rings().map(<[Point]>::len).sum::<usize>() > MOST_CORNERS) {
            let said = Error::new(ErrorKind::TooLarge, "more corners than are solved for, with those of its neighbours along its sides");
            return Err(said.at(format!("planes[{i}].outer")).accepts(format!("at most {MOST_CORNERS}")));
        }
        Ok((outlines, start.unwrap_or(0), tolerance, step))
    }
}

impl Calculation for SketchedRoof {
    type Out = MeasuringSheet;

    fn title(&self) -> String {
        "What to measure on the roof".to_owned()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<MeasuringSheet, Error> {
        let (outlines, start, tolerance, step) = self.checked()?;
        let names: Vec<&str> = self.planes.iter().map(|p| p.name.as_str()).collect();
        let walk = Walk::new(&outlines, &names, tolerance.mm(), start)?;
        let mut sheet = MeasuringSheet { planes: Vec::new(), joints: Vec::new(), ties: Vec::new(), lines: 0, marks: 0 };
        let mut sides = Sides { walls: WallLines::new(&self.walls, tolerance.mm()), measured: Vec::new() };
        let mut faults = Faults::default();
        for walked in &walk.planes {
            let name = names.get(walked.plane).copied().unwrap_or_default();
            let Some(ways) = Ways::of(walked) else {
                let said = Error::new(ErrorKind::Geometry, format!("{name} cannot be cut into triangles: corners lie in one line"));
                faults.add(said.at(format!("planes[{}].outer", walked.plane)).cured_by("leave out corners in the middle of a straight side, or move them"));
                continue;
            };
            let plane = self.plane_sheet(&walk, walked, &ways, step, &mut sides, &mut sheet)?;
            let corners = plane.corners.len() + plane.openings.iter().map(|o| o.corners.len()).sum::<usize>();
            r.step(|| {
                Step::new(format!("lengths of {name}"))
                    .formula("2 x corners - 3, and the checks")
                    .with("corners", corners)
                    .with("checks", practice::CHECKS * (1 + plane.openings.len()))
                    .gives(plane.lines.len())
                    .source(Source::geometry())
            });
            sheet.planes.push(plane);
        }
        faults.check()?;
        let falls: Vec<Option<Angle>> = sheet.planes.iter().map(|p| self.planes.get(p.number).and_then(|s| s.down_slope)).collect();
        sheet.ties = sheet_ties(&sheet, tolerance.mm())?;
        let needs = pitch_needs(&sheet, &falls);
        for (plane, need) in sheet.planes.iter_mut().zip(needs) {
            plane.pitch = need;
        }
        Ok(sheet)
    }
}

/// A side by the numbers of its two corners in the roof, as it runs round its plane.
type Side = (usize, usize);
/// A side that was measured: its number on the sheet, and which edge it is.
type Measured = (Side, usize, PlaneEdge);

/// What is known of sides while the sheets are made.
struct Sides {
    walls: WallLines,
    measured: Vec<Measured>,
}

/// How the tape can be laid on a plane.
struct Ways {
    /// The plane alone cut into triangles by lines that keep clear of its openings, where it can be.
    cut: Option<Cut>,
    openings: OpeningTies,
    checks: Vec<[usize; 2]>,
}

impl Ways {
    fn of(walked: &Walked) -> Option<Ways> {
        let rings = places(walked);
        let cut = triangles::cut(&rings);
        if walked.holes.is_empty() {
            let checks = cut.as_ref()?.others.clone();
            return Some(Ways { cut, openings: OpeningTies::default(), checks });
        }
        let openings = opening_ties(&rings, cut.as_ref().map_or(&[], |c| &c.diagonals))?;
        let checks = openings.spare.clone();
        Some(Ways { cut, openings, checks })
    }
}

/// The rings of a plane in millimetres, its own first.
fn places(walked: &Walked) -> Vec<Vec<[f64; 2]>> {
    let place = |ring: &[Point]| ring.iter().map(|p| [p.x.mm(), p.y.mm()]).collect();
    core::iter::once(place(&walked.points)).chain(walked.holes.iter().map(|h| place(&h.1))).collect()
}

/// Lines as they come onto the sheet of a plane.
struct Lines<'a> {
    walk: &'a Walk,
    /// The plane's corners and those of its openings.
    corners: Vec<usize>,
    points: Vec<Point>,
    lines: Vec<SheetLine>,
}

impl Lines<'_> {
    fn point(&self, i: usize) -> Point {
        self.points.get(i).copied().unwrap_or_default()
    }

    fn corner(&self, i: usize) -> usize {
        self.corners.get(i).copied().unwrap_or(0)
    }

    fn called(&self, i: usize) -> String {
        self.walk.name(self.corner(i))
    }

    fn push(&mut self, (from, to): (String, String), part: LinePart, about: Length, shared: Option<(usize, String)>, sheet: &mut MeasuringSheet) -> usize {
        let (number, shared) = match shared {
            Some((number, plane)) => (number, Some(plane)),
            None => {
                sheet.lines += 1;
                (sheet.lines, None)
            }
        };
        self.lines.push(SheetLine { number, from, to, part, about, shared });
        number
    }

    /// A side, which another plane may have measured already; where a wall stands along it, it is this plane's alone.
    fn side(&mut self, [i, j]: [usize; 2], part: LinePart, edge: PlaneEdge, sides: &mut Sides, sheet: &mut MeasuringSheet) -> Result<(), Error> {
        let side = (self.corner(i), self.corner(j));
        if sides.walls.hold(self.point(i), self.point(j)) {
            self.add(i, j, part, None, sheet)?;
            return Ok(());
        }
        let before = sides.measured.iter().find(|m| m.0 == (side.1, side.0)).map(|(_, number, edge)| (*number, edge.clone()));
        if let Some((_, first)) = &before {
            sheet.joints.push(Joint::new(first.clone(), edge.clone()));
        }
        let number = self.add(i, j, part, before.map(|(n, e)| (n, e.plane)), sheet)?;
        sides.measured.push((side, number, edge));
        Ok(())
    }

    /// A length between two corners.
    fn add(&mut self, i: usize, j: usize, part: LinePart, shared: Option<(usize, String)>, sheet: &mut MeasuringSheet) -> Result<usize, Error> {
        let about = about(self.point(i), self.point(j))?;
        Ok(self.push((self.called(i), self.called(j)), part, about, shared, sheet))
    }
}

fn about(a: Point, b: Point) -> Result<Length, Error> {
    Length::from_mm(num::hypot(b.x.mm() - a.x.mm(), b.y.mm() - a.y.mm()))
}

impl SketchedRoof {
    fn plane_sheet(&self, walk: &Walk, walked: &Walked, ways: &Ways, step: Length, sides: &mut Sides, sheet: &mut MeasuringSheet) -> Result<PlaneSheet, Error> {
        let n = walked.corners.len();
        let given = self.planes.get(walked.plane);
        let name = given.map_or("", |p| p.name.as_str());
        let mut corners = walked.corners.clone();
        let mut points = walked.points.clone();
        for (ring, places) in &walked.holes {
            corners.extend(ring);
            points.extend(places);
        }
        let mut lines = Lines { walk, corners, points, lines: Vec::new() };
        for i in 0..n {
            lines.side([i, (i + 1) % n], LinePart::Side, PlaneEdge::new(name, i), sides, sheet)?;
        }
        let diagonals = ways.cut.iter().flat_map(|c| &c.diagonals);
        for [i, j] in diagonals.chain(ways.openings.needed.iter().filter(|d| d[1] < n)) {
            lines.add(*i, *j, LinePart::Diagonal, None, sheet)?;
        }
        let mut checks = 0;
        for [i, j] in ways.checks.iter().take(practice::CHECKS) {
            lines.add(*i, *j, LinePart::Check, None, sheet)?;
            checks += 1;
        }
        // Where no diagonal is left, from a mark on a side to the corner of its triangle.
        let mut marks = Vec::new();
        let apexes = ways.cut.as_ref().map(|cut| sides_of(cut, n, &walked.points)).unwrap_or_default();
        for (a, b, apex) in apexes {
            if checks >= practice::CHECKS {
                break;
            }
            let (p, q) = (lines.point(a), lines.point(b));
            let side = about(p, q)?;
            let distance = half_in_steps(side, step)?;
            let mark_at = distance.mm() / side.mm();
            let clear = walked.holes.is_empty() || {
                let mut rings = places(walked);
                let at = [p.x.mm() + (q.x.mm() - p.x.mm()) * mark_at, p.y.mm() + (q.y.mm() - p.y.mm()) * mark_at];
                if let Some(ring) = rings.first_mut() {
                    ring.insert(a + 1, at);
                }
                triangles::lies_within(&rings, a + 1, if apex > a { apex + 1 } else { apex })
            };
            if !clear {
                continue;
            }
            checks += 1;
            sheet.marks += 1;
            let mark = Mark { name: format!("m{}", sheet.marks), from: lines.called(a), toward: lines.called(b), distance };
            let at = |a: Length, b: Length| Length::from_mm(a.mm() + (b.mm() - a.mm()) * mark_at);
            let place = Point::new(at(p.x, q.x)?, at(p.y, q.y)?);
            let long = about(place, lines.point(apex))?;
            lines.push((mark.name.clone(), lines.called(apex)), LinePart::Check, long, None, sheet);
            marks.push(mark);
        }
        let named = |lines: &Lines<'_>, i: usize| NamedCorner { name: lines.called(i), at: lines.point(i) };
        let mut openings = Vec::new();
        let mut first = n;
        for (k, (ring, _)) in walked.holes.iter().enumerate() {
            let of_it = first..first + ring.len();
            let hole = given.and_then(|p| p.holes.get(k)).map_or_else(String::new, |h| h.name.clone());
            for i in of_it.clone() {
                let next = if i + 1 == of_it.end { first } else { i + 1 };
                lines.side([i, next], LinePart::Opening, PlaneEdge::of_hole(name, &hole, i - first), sides, sheet)?;
            }
            for [i, j] in ways.openings.needed.iter().filter(|t| of_it.contains(&t[1])) {
                lines.add(*i, *j, LinePart::Tie, None, sheet)?;
            }
            for [i, j] in ways.openings.checks.get(k).into_iter().flatten() {
                lines.add(*i, *j, LinePart::Check, None, sheet)?;
            }
            openings.push(NamedOpening { name: hole, corners: of_it.clone().map(|i| named(&lines, i)).collect() });
            first = of_it.end;
        }
        let corners = (0..n).map(|i| named(&lines, i)).collect();
        Ok(PlaneSheet { plane: name.to_owned(), number: walked.plane, corners, pitch: PitchNeed::Measured, openings, marks, lines: lines.lines })
    }
}

/// Whether two sides that run against one another lie over one another in plan, by more than a point.
fn lies_over([a, b]: [Point; 2], [c, d]: [Point; 2]) -> bool {
    let v = |p: Point| [p.x.mm(), p.y.mm()];
    let (way, long) = (sub(v(b), v(a)), length(sub(v(b), v(a))).max(f64::MIN_POSITIVE));
    let on = |p: Point| {
        let off = sub(v(p), v(a));
        ((off[0] * way[0] + off[1] * way[1]) / long, (off[1] * way[0] - off[0] * way[1]).abs() / long)
    };
    let (c, d) = (on(c), on(d));
    c.1.max(d.1) < 1.0 && c.0 < d.0 && d.0.min(long) - c.0.max(0.0) > 1.0
}

/// Half a length in whole steps; half of it where a step is too long.
fn half_in_steps(length: Length, step: Length) -> Result<Length, Error> {
    let steps = length.pm() / 2 / step.pm();
    if steps > 0 { (step * i32::try_from(steps).unwrap_or(i32::MAX)).length() } else { Ok(Length::from_pm(length.pm() / 2)) }
}

/// Sides of the polygon with the corner of the triangle on each, the longest side first.
fn sides_of(cut: &Cut, n: usize, points: &[Point]) -> Vec<(usize, usize, usize)> {
    let mut out = Vec::new();
    for [i, j, k] in &cut.triangles {
        for (a, b, apex) in [(*i, *j, *k), (*j, *k, *i), (*k, *i, *j)] {
            if (a + 1) % n == b {
                out.push((a, b, apex));
            }
        }
    }
    let long = |&(a, b, _): &(usize, usize, usize)| {
        let (p, q) = (points.get(a).copied().unwrap_or_default(), points.get(b).copied().unwrap_or_default());
        num::hypot(q.x.mm() - p.x.mm(), q.y.mm() - p.y.mm())
    };
    out.sort_by(|x, y| long(y).total_cmp(&long(x)).then(x.cmp(y)));
    out
}
