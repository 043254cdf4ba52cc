//! Sketches for a measuring sheet: one plane with its lines by number, and the walk round all of them.

use super::labels::Area;
use super::sketch::{INK, NUMBER, Sketch, sides};
use super::svg::{Look, Point};
use crate::roof::{LinePart, MeasuringSheet, NamedCorner, NamedOpening, PlaneSheet, SheetLine};

const LETTER: f64 = 4.2;
/// The figure of a plane and that of the whole roof, at most.
const PLANE: (f64, f64) = (70.0, 64.0);
const ROOF: (f64, f64) = (150.0, 70.0);
/// The figure of an opening, at most, and how far past its number a tie is drawn.
const OPENING: (f64, f64) = (28.0, 24.0);
const PAST: f64 = 4.5;
/// The name of an opening on its plane.
const NAME: f64 = 2.6;
/// Where on a line its number stands: as near to its middle as there is room.
const ALONG: &[f64] = &[0.5, 0.38, 0.62, 0.3, 0.7, 0.22, 0.78, 0.15, 0.85];
/// How far from its corner the number of a tie stands.
const OUT: &[f64] = &[5.0, 6.5, 8.0, 9.5, 11.0, 12.5, 14.0, 16.0, 18.0, 20.0];

/// From the sketch to paper.
struct Scale {
    low: Point,
    high: Point,
    by: f64,
}

impl Scale {
    fn new(points: impl Iterator<Item = Point>, room: Point) -> Scale {
        let mut area = Area::EMPTY;
        points.for_each(|p| area.cover(p));
        let (wide, high) = ((area.high.0 - area.low.0).max(f64::MIN_POSITIVE), (area.high.1 - area.low.1).max(f64::MIN_POSITIVE));
        Scale { low: area.low, high: area.high, by: (room.0 / wide).min(room.1 / high) }
    }

    fn at(&self, p: Point) -> Point {
        ((p.0 - self.low.0) * self.by, (self.high.1 - p.1) * self.by)
    }
}

fn corners(plane: &PlaneSheet) -> Vec<Point> {
    plane.corners.iter().map(|c| (c.at.x.mm(), c.at.y.mm())).collect()
}

fn on_paper(corners: &[NamedCorner], scale: &Scale) -> Vec<Point> {
    corners.iter().map(|c| scale.at((c.at.x.mm(), c.at.y.mm()))).collect()
}

fn unit(from: Point, to: Point) -> Point {
    let (x, y) = (to.0 - from.0, to.1 - from.1);
    let long = (x * x + y * y).sqrt().max(f64::MIN_POSITIVE);
    (x / long, y / long)
}

/// Out of the polygon at each of its corners; y down, the ring runs clockwise on paper.
fn outward(ring: &[Point], i: usize) -> Point {
    let n = ring.len().max(1);
    let at = |k: usize| ring.get(k % n).copied().unwrap_or_default();
    let (a, b) = (unit(at(i + n - 1), at(i)), unit(at(i), at(i + 1)));
    // On paper y runs down, so that the outside of a counter-clockwise ring is at its right: (-y, x) in these axes.
    let (x, y) = (-(a.1 + b.1), a.0 + b.0);
    let long = (x * x + y * y).sqrt();
    // A corner that runs straight back has no middle; there its own way goes out.
    if long > 1e-6 { (x / long, y / long) } else { a }
}

/// Where a place of the plane lies on paper, by the name of its corner or mark.
fn place(plane: &PlaneSheet, scale: &Scale, name: &str) -> Point {
    let all = plane.corners.iter().chain(plane.openings.iter().flat_map(|o| &o.corners));
    let corner = |name: &str| all.clone().find(|c| c.name == name).map(|c| scale.at((c.at.x.mm(), c.at.y.mm())));
    let mark = || {
        let mark = plane.marks.iter().find(|m| m.name == name)?;
        let (a, b) = (corner(&mark.from)?, corner(&mark.toward)?);
        let about = plane.lines.iter().find(|l| l.from == mark.from && l.to == mark.toward)?.about;
        let part = mark.distance.mm() / about.mm().max(f64::MIN_POSITIVE);
        Some((a.0 + (b.0 - a.0) * part, a.1 + (b.1 - a.1) * part))
    };
    corner(name).or_else(mark).unwrap_or_default()
}

/// The opening of a plane that a line is drawn beside: that of the corner which it runs to.
fn opening_of(plane: &PlaneSheet, line: &SheetLine) -> Option<usize> {
    plane.openings.iter().position(|o| o.corners.iter().any(|c| c.name == line.to))
}

fn between((a, b): (Point, Point), part: f64) -> Point {
    (a.0 + (b.0 - a.0) * part, a.1 + (b.1 - a.1) * part)
}

/// The sketch of one plane: its sides full, its diagonals dashed and its checks dotted, each with its number, and its corners by letter. Its openings are
/// outlines here; each has a sketch of its own.
pub(super) fn plane_svg(plane: &PlaneSheet) -> String {
    plane_sketch(plane).svg(&plane.plane)
}

fn plane_sketch(plane: &PlaneSheet) -> Sketch {
    let points = corners(plane);
    let scale = Scale::new(points.iter().copied(), PLANE);
    let ring: Vec<Point> = points.iter().map(|p| scale.at(*p)).collect();
    let holes: Vec<Vec<Point>> = plane.openings.iter().map(|o| on_paper(&o.corners, &scale)).collect();
    let place = |name: &str| place(plane, &scale, name);
    let lines = || plane.lines.iter().filter(|l| opening_of(plane, l).is_none());
    let ends = |part: LinePart| lines().filter(move |l| l.part == part).map(|l| (place(&l.from), place(&l.to)));
    let mut sketch = Sketch::default();
    sketch.lines("diagonals", Look::dashed(INK, 0.3, &[2.4, 1.2]), ends(LinePart::Diagonal));
    sketch.lines("checks", Look::dashed(INK, 0.3, &[0.3, 1.1]), ends(LinePart::Check));
    sketch.rings("sides", Look::line(INK, 0.6), [ring.clone()].into_iter());
    sketch.rings("openings", Look::line(INK, 0.45), holes.iter().cloned());
    let ticks: Vec<(Point, Point)> = plane
        .marks
        .iter()
        .map(|mark| {
            let (at, way) = (place(&mark.name), unit(place(&mark.from), place(&mark.toward)));
            ((at.0 - way.1 * 1.4, at.1 + way.0 * 1.4), (at.0 + way.1 * 1.4, at.1 - way.0 * 1.4))
        })
        .collect();
    sketch.lines("marks", Look::line(INK, 0.5), ticks.iter().copied());
    let off: Vec<(Point, Point)> = holes.iter().flat_map(|h| sides(h)).chain(ticks).collect();
    for line in lines() {
        let ends = (place(&line.from), place(&line.to));
        let places: Vec<Point> = ALONG.iter().map(|part| between(ends, *part)).collect();
        sketch.number(&line.number.to_string(), &places, &off);
    }
    for (i, corner) in plane.corners.iter().enumerate() {
        sketch.name(&corner.name, LETTER, ring.get(i).copied().unwrap_or_default(), outward(&ring, i));
    }
    for mark in &plane.marks {
        let way = unit(place(&mark.from), place(&mark.toward));
        // Outside its side.
        sketch.name(&mark.name, NUMBER, place(&mark.name), (-way.1, way.0));
    }
    for (opening, hole) in plane.openings.iter().zip(holes) {
        sketch.name_of_ring(&opening.name, NAME, hole);
    }
    sketch
}

/// The sketch of an opening: its sides by number, and from its corners a short way toward the corners of the plane that they are tied to.
pub(super) fn opening_svg(plane: &PlaneSheet, number: usize) -> String {
    plane.openings.get(number).map_or_else(String::new, |opening| opening_sketch(plane, number, opening).svg(&opening.name))
}

fn opening_sketch(plane: &PlaneSheet, number: usize, opening: &NamedOpening) -> Sketch {
    let scale = Scale::new(opening.corners.iter().map(|c| (c.at.x.mm(), c.at.y.mm())), OPENING);
    let ring = on_paper(&opening.corners, &scale);
    let place = |name: &str| place(plane, &scale, name);
    let mut sketch = Sketch::default();
    sketch.rings("opening", Look::line(INK, 0.6), [ring.clone()].into_iter());
    let all = || plane.lines.iter().filter(|l| opening_of(plane, l) == Some(number));
    for side in all().filter(|l| l.part == LinePart::Opening) {
        let ends = (place(&side.from), place(&side.to));
        let places: Vec<Point> = ALONG.iter().map(|part| between(ends, *part)).collect();
        sketch.number(&side.number.to_string(), &places, &[]);
    }
    let mut ties: Vec<(Point, Point)> = Vec::new();
    let mut ends = Vec::new();
    for tie in all().filter(|l| l.part != LinePart::Opening) {
        let (from, to) = (place(&tie.from), place(&tie.to));
        let way = unit(to, from);
        let out = |by: f64| (to.0 + way.0 * by, to.1 + way.1 * by);
        let places: Vec<Point> = OUT.iter().map(|by| out(*by)).collect();
        let off: Vec<(Point, Point)> = sides(&ring).chain(ties.iter().copied()).collect();
        let at = sketch.number(&tie.number.to_string(), &places, &off);
        let end = (at.0 + way.0 * PAST, at.1 + way.1 * PAST);
        let dashes: &'static [f64] = if tie.part == LinePart::Check { &[0.3, 1.1] } else { &[1.2, 0.8] };
        sketch.lines("tie", Look::dashed(INK, 0.3, dashes), [(to, end)].into_iter());
        ties.push((to, end));
        ends.push((tie.from.as_str(), end, way));
    }
    for (i, corner) in opening.corners.iter().enumerate() {
        // Out of the plane is into the opening, where no tie runs.
        sketch.name(&corner.name, LETTER, ring.get(i).copied().unwrap_or_default(), outward(&ring, i));
    }
    for (name, end, way) in ends {
        sketch.name(name, NUMBER, end, way);
    }
    sketch
}

/// The walk: every plane with its number and name, and the corners by letter.
pub(super) fn overview_svg(sheet: &MeasuringSheet) -> String {
    overview_sketch(sheet).svg("the walk")
}

fn overview_sketch(sheet: &MeasuringSheet) -> Sketch {
    let scale = Scale::new(sheet.planes.iter().flat_map(corners), ROOF);
    let rings: Vec<Vec<Point>> = sheet.planes.iter().map(|p| corners(p).into_iter().map(|c| scale.at(c)).collect()).collect();
    let holes = || sheet.planes.iter().flat_map(|p| &p.openings).map(|o| on_paper(&o.corners, &scale));
    let mut sketch = Sketch::default();
    sketch.rings("planes", Look::line(INK, 0.5), rings.iter().cloned());
    sketch.rings("openings", Look::line(INK, 0.3), holes());
    for (number, (plane, ring)) in (1_usize..).zip(sheet.planes.iter().zip(&rings)) {
        let middle = middle(ring);
        sketch.name(&format!("{number}. {}", plane.plane), NUMBER, middle, (0.0, -1.0));
    }
    // Each corner once, out of the first plane that has it.
    let mut named: Vec<&str> = Vec::new();
    for (plane, ring) in sheet.planes.iter().zip(&rings) {
        for (i, corner) in plane.corners.iter().enumerate() {
            if !named.contains(&corner.name.as_str()) {
                named.push(&corner.name);
                sketch.name(&corner.name, NUMBER, ring.get(i).copied().unwrap_or_default(), outward(ring, i));
            }
        }
    }
    sketch
}

/// The centre of area of a ring.
fn middle(ring: &[Point]) -> Point {
    let (mut area, mut x, mut y) = (0.0, 0.0, 0.0);
    for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let cross = a.0 * b.1 - b.0 * a.1;
        area += cross;
        x += (a.0 + b.0) * cross;
        y += (a.1 + b.1) * cross;
    }
    if area == 0.0 { ring.first().copied().unwrap_or_default() } else { (x / (3.0 * area), y / (3.0 * area)) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Calculation;
    use crate::roof::{self, Opening, SketchedPlane, SketchedRoof, SketchedWall};
    use crate::units::Length;

    fn ring(corners: &[(i16, i16)]) -> Vec<roof::Point> {
        corners.iter().map(|&(x, y)| roof::Point::new(Length::feet(x), Length::feet(y))).collect()
    }

    /// A hip with a chimney close under its ridge and a hatch beside it, and a porch that only a wall joins to it.
    #[test]
    fn names_lie_on_no_line_and_on_no_number() {
        let hole = |name: &str, corners: &[(i16, i16)]| Opening { name: name.into(), ring: ring(corners) };
        let chimney = hole("chimney", &[(21, 5), (25, 5), (25, 9), (21, 9)]);
        let hatch = hole("hatch over the stair", &[(12, 3), (15, 3), (15, 6), (12, 6)]);
        let planes = vec![
            SketchedPlane { holes: vec![chimney, hatch], ..SketchedPlane::new("south", ring(&[(0, 0), (40, 0), (30, 10), (10, 10)])) },
            SketchedPlane::new("east", ring(&[(40, 0), (40, 20), (30, 10)])),
            SketchedPlane::new("north", ring(&[(40, 20), (0, 20), (10, 10), (30, 10)])),
            SketchedPlane::new("west", ring(&[(0, 20), (0, 0), (10, 10)])),
            SketchedPlane::new("porch", ring(&[(8, -14), (24, -14), (24, -6), (32, -6), (32, 0), (8, 0)])),
        ];
        let wall = SketchedWall { from: roof::Point::default(), to: roof::Point::new(Length::feet(40), Length::ZERO) };
        let sheet = SketchedRoof { walls: vec![wall], ..SketchedRoof::new(planes) }.compute().unwrap();
        overview_sketch(&sheet).check();
        for plane in &sheet.planes {
            plane_sketch(plane).check();
            for (number, opening) in plane.openings.iter().enumerate() {
                opening_sketch(plane, number, opening).check();
            }
        }
    }
}
