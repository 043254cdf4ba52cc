//! From a rough sketch to what must be measured.

use super::between_corners::with_corners_between;
use super::joined_planes::{Joint, PlaneEdge};
use super::measured_plane::{MOST_CORNERS, Mark};
use super::measuring_sheet::{LinePart, MeasuringSheet, PlaneSheet, SheetLine};
use super::shape::NamedCorner;
use super::triangles::{self, Cut};
use super::walk::{Walk, Walked};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::practice::roof as practice;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::roof::{Outline, Point, Roof};
use crate::units::Length;

/// The most planes of a sketch.
const MOST_PLANES: usize = 256;

/// A plane of a rough sketch: its corners roughly where they lie in plan.
///
/// ```
/// use seamwright::roof::{Point, SketchedPlane};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let south = SketchedPlane { name: "south".into(), outer: vec![p(0, 0), p(40, 0), p(40, 12), p(0, 12)] };
/// assert_eq!(south.outer.len(), 4);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SketchedPlane {
    /// Its name, unlike that of any other plane.
    pub name: String,
    /// Its corners in plan, in order, either way round.
    pub outer: Vec<Point>,
}

/// A rough sketch of a roof, from which the measuring sheet is made.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::roof::{LinePart, Point, SketchedPlane, SketchedRoof};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let sketch = SketchedRoof::new(vec![
///     SketchedPlane { name: "south".into(), outer: vec![p(0, 0), p(40, 0), p(40, 12), p(0, 12)] },
///     SketchedPlane { name: "north".into(), outer: vec![p(40, 24), p(0, 24), p(0, 12), p(40, 12)] },
/// ]);
/// let sheet = sketch.compute()?;
/// // Four sides and a diagonal, and two checks; the ridge is measured once.
/// assert_eq!(sheet.planes[0].lines.len(), 7);
/// assert_eq!((sheet.lines, sheet.joints.len()), (13, 1));
/// assert_eq!(sheet.planes[1].lines.iter().filter(|l| l.part == LinePart::Check).count(), 2);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SketchedRoof {
    /// The planes. A corner of one along a side of another is a corner of both, so that every joint is between whole sides.
    pub planes: Vec<SketchedPlane>,
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
        SketchedRoof { planes, start: None, tolerance: None, mark_step: None }
    }

    /// The sketch of a roof that is known, to measure it again: its planes in plan, without their holes.
    #[must_use]
    pub fn of(roof: &Roof) -> SketchedRoof {
        SketchedRoof::new(roof.planes().iter().map(|p| SketchedPlane { name: p.name().to_owned(), outer: p.plan().outer().to_vec() }).collect())
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
            if plane.outer.len() > MOST_CORNERS {
                let said = Error::new(ErrorKind::TooLarge, "more corners than are solved for").at(format!("{path}.outer"));
                faults.add(said.value_of(format_args!("{} corners", plane.outer.len())).accepts(format!("at most {MOST_CORNERS}")));
                continue;
            }
            outlines.extend(faults.keep(Outline::new(plane.outer.clone(), Vec::new()).map_err(|e| e.under(&path).about(&plane.name))));
        }
        let start = match &self.start {
            None => Some(0),
            Some(name) => {
                let found = self.planes.iter().position(|p| p.name == *name);
                if found.is_none() {
                    let names = self.planes.iter().map(|p| p.name.as_str()).collect::<Vec<_>>().join(", ");
                    faults.add(Error::new(ErrorKind::Unknown, "the sketch has no plane of this name").at("start").value_of(name).accepts(names));
                }
                found
            }
        };
        faults.check()?;
        let outlines = with_corners_between(&outlines, tolerance.mm())?;
        if let Some(i) = outlines.iter().position(|o| o.outer().len() > MOST_CORNERS) {
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
        let mut sheet = MeasuringSheet { planes: Vec::new(), joints: Vec::new(), lines: 0, marks: 0 };
        let mut measured: Vec<(Side, usize, String, usize)> = Vec::new();
        let mut faults = Faults::default();
        for walked in &walk.planes {
            let name = names.get(walked.plane).copied().unwrap_or_default();
            let Some(cut) = triangles::cut(&walked.points) else {
                let said = Error::new(ErrorKind::Geometry, format!("{name} cannot be cut into triangles: corners lie in one line"));
                faults.add(said.at(format!("planes[{}].outer", walked.plane)).cured_by("leave out corners in the middle of a straight side, or move them"));
                continue;
            };
            let plane = self.plane_sheet(&walk, walked, &cut, step, &mut measured, &mut sheet)?;
            r.step(|| {
                Step::new(format!("lengths of {name}"))
                    .formula("2 x corners - 3, and the checks")
                    .with("corners", plane.corners.len())
                    .with("checks", practice::CHECKS)
                    .gives(plane.lines.len())
                    .source(Source::geometry())
            });
            sheet.planes.push(plane);
        }
        faults.check()?;
        Ok(sheet)
    }
}

/// A side by the numbers of its two corners in the roof, as it runs round its plane.
type Side = (usize, usize);

impl SketchedRoof {
    fn plane_sheet(
        &self,
        walk: &Walk,
        walked: &Walked,
        cut: &Cut,
        step: Length,
        measured: &mut Vec<(Side, usize, String, usize)>,
        sheet: &mut MeasuringSheet,
    ) -> Result<PlaneSheet, Error> {
        let n = walked.corners.len();
        let name = self.planes.get(walked.plane).map_or("", |p| p.name.as_str());
        let corner = |i: usize| walked.corners.get(i % n.max(1)).copied().unwrap_or(0);
        let point = |i: usize| walked.points.get(i % n.max(1)).copied().unwrap_or_default();
        let called = |i: usize| walk.name(corner(i));
        let about = |a: Point, b: Point| Length::from_mm(num::hypot(b.x.mm() - a.x.mm(), b.y.mm() - a.y.mm()));
        let mut lines: Vec<SheetLine> = Vec::new();
        let mut add = |from: String, to: String, part: LinePart, about: Length, shared: Option<(usize, String)>, sheet: &mut MeasuringSheet| {
            let (number, shared) = match shared {
                Some((number, plane)) => (number, Some(plane)),
                None => {
                    sheet.lines += 1;
                    (sheet.lines, None)
                }
            };
            lines.push(SheetLine { number, from, to, part, about, shared });
            number
        };
        for i in 0..n {
            let side = (corner(i), corner(i + 1));
            let before = measured.iter().find(|m| m.0 == (side.1, side.0)).map(|(_, number, plane, edge)| (*number, plane.clone(), *edge));
            if let Some((_, plane, edge)) = &before {
                sheet.joints.push(Joint::new(PlaneEdge::new(plane, *edge), PlaneEdge::new(name, i)));
            }
            let number = add(called(i), called(i + 1), LinePart::Side, about(point(i), point(i + 1))?, before.map(|(n, p, _)| (n, p)), sheet);
            measured.push((side, number, name.to_owned(), i));
        }
        for [i, j] in &cut.diagonals {
            add(called(*i), called(*j), LinePart::Diagonal, about(point(*i), point(*j))?, None, sheet);
        }
        let mut checks = 0;
        for [i, j] in cut.others.iter().take(practice::CHECKS) {
            add(called(*i), called(*j), LinePart::Check, about(point(*i), point(*j))?, None, sheet);
            checks += 1;
        }
        // Where no diagonal is left, from a mark on a side to the corner of its triangle.
        let mut marks = Vec::new();
        for (a, b, apex) in sides_of(cut, n, &walked.points).into_iter().take(practice::CHECKS - checks) {
            sheet.marks += 1;
            let side = about(point(a), point(b))?;
            let distance = half_in_steps(side, step)?;
            let mark = Mark { name: format!("m{}", sheet.marks), from: called(a), toward: called(b), distance };
            let part = distance.mm() / side.mm();
            let (p, q) = (point(a), point(b));
            let at = |a: Length, b: Length| Length::from_mm(a.mm() + (b.mm() - a.mm()) * part);
            let place = Point::new(at(p.x, q.x)?, at(p.y, q.y)?);
            add(mark.name.clone(), called(apex), LinePart::Check, about(place, point(apex))?, None, sheet);
            marks.push(mark);
        }
        let corners = (0..n).map(|i| NamedCorner { name: called(i), at: point(i) }).collect();
        Ok(PlaneSheet { plane: name.to_owned(), number: walked.plane, corners, marks, lines })
    }
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
