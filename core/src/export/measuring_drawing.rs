//! Sketches for a measuring sheet: one plane with its lines by number, and the walk round all of them.

use super::labels::Area;
use super::svg::{Anchor, Look, PaperUnit, Point, Svg, text_width};
use crate::roof::{LinePart, MeasuringSheet, NamedCorner, PlaneSheet, SheetLine};

const INK: &str = "#000000";
const LETTER: f64 = 4.2;
const NUMBER: f64 = 3.2;
/// Paper round the figure, for letters and numbers.
const MARGIN: f64 = 9.0;
/// The figure of a plane and that of the whole roof, at most.
const PLANE: (f64, f64) = (64.0, 60.0);
const ROOF: (f64, f64) = (150.0, 70.0);
/// The figure of an opening, at most, and how far its ties are drawn.
const OPENING: (f64, f64) = (26.0, 22.0);
const STUB: f64 = 10.0;
/// The name of an opening on its plane.
const NAME: f64 = 2.6;

/// From the sketch to paper.
struct Scale {
    low: Point,
    high: Point,
    by: f64,
    around: f64,
}

impl Scale {
    fn new(points: impl Iterator<Item = Point>, room: Point) -> Scale {
        let mut area = Area::EMPTY;
        points.for_each(|p| area.cover(p));
        let (wide, high) = ((area.high.0 - area.low.0).max(f64::MIN_POSITIVE), (area.high.1 - area.low.1).max(f64::MIN_POSITIVE));
        Scale { low: area.low, high: area.high, by: (room.0 / wide).min(room.1 / high), around: MARGIN }
    }

    fn at(&self, p: Point) -> Point {
        (self.around + (p.0 - self.low.0) * self.by, self.around + (self.high.1 - p.1) * self.by)
    }

    fn size(&self) -> Point {
        (2.0 * self.around + (self.high.0 - self.low.0) * self.by, 2.0 * self.around + (self.high.1 - self.low.1) * self.by)
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

/// The sketch of one plane: its sides full, its diagonals dashed and its checks dotted, each with its number, and its corners by letter. Its openings are
/// outlines here; each has a sketch of its own.
pub(super) fn plane_svg(plane: &PlaneSheet) -> String {
    let points = corners(plane);
    let scale = Scale::new(points.iter().copied(), PLANE);
    let ring: Vec<Point> = points.iter().map(|p| scale.at(*p)).collect();
    let size = scale.size();
    let holes: Vec<Vec<Point>> = plane.openings.iter().map(|o| on_paper(&o.corners, &scale)).collect();
    let lines = || plane.lines.iter().filter(|l| opening_of(plane, l).is_none());
    let ends = |part: LinePart| lines().filter(move |l| l.part == part).map(|l| (place(plane, &scale, &l.from), place(plane, &scale, &l.to)));
    let mut svg = Svg::new(size.0, size.1, PaperUnit::Millimetre, &plane.plane);
    svg.group("diagonals", Look::dashed(INK, 0.3, &[2.4, 1.2]), |svg| ends(LinePart::Diagonal).for_each(|(a, b)| svg.line(a, b)));
    svg.group("checks", Look::dashed(INK, 0.3, &[0.3, 1.1]), |svg| ends(LinePart::Check).for_each(|(a, b)| svg.line(a, b)));
    svg.group("sides", Look::line(INK, 0.6), |svg| svg.polyline(&ring, true));
    svg.group("openings", Look::line(INK, 0.45), |svg| holes.iter().for_each(|h| svg.polyline(h, true)));

    let mut taken: Vec<Area> = Vec::new();
    let mut texts: Vec<(Point, f64, String)> = Vec::new();
    let mut put = |centre: Point, size: f64, text: &str| {
        taken.push(Area::about(centre, text_width(text, size) + 1.2, size + 0.8));
        texts.push((centre, size, text.to_owned()));
    };
    for (i, corner) in plane.corners.iter().enumerate() {
        let (at, out) = (ring.get(i).copied().unwrap_or_default(), outward(&ring, i));
        put((at.0 + out.0 * 4.4, at.1 + out.1 * 4.4), LETTER, &corner.name);
    }
    for (opening, hole) in plane.openings.iter().zip(&holes) {
        let mut area = Area::EMPTY;
        hole.iter().for_each(|p| area.cover(*p));
        put(((area.low.0 + area.high.0) / 2.0, area.low.1 - 2.4), NAME, &opening.name);
    }
    let mut struck = Vec::new();
    for mark in &plane.marks {
        let at = place(plane, &scale, &mark.name);
        // The number of its side stays off it.
        struck.push(Area::about(at, 1.0, 1.0));
        let way = unit(place(plane, &scale, &mark.from), place(plane, &scale, &mark.toward));
        // Outside its side, beside the side's own number.
        put((at.0 - way.1 * 4.4 + way.0 * 3.5, at.1 + way.0 * 4.4 + way.1 * 3.5), NUMBER, &mark.name);
        svg.group("mark", Look::line(INK, 0.5), |svg| {
            svg.line((at.0 - way.1 * 1.4, at.1 + way.0 * 1.4), (at.0 + way.1 * 1.4, at.1 - way.0 * 1.4));
        });
    }
    taken.append(&mut struck);
    let mut circles: Vec<(Point, String)> = Vec::new();
    for line in lines() {
        let text = line.number.to_string();
        let (a, b) = (place(plane, &scale, &line.from), place(plane, &scale, &line.to));
        let room = (text_width(&text, NUMBER) + 1.6).max(NUMBER + 1.6);
        // On the line, as near to its middle as other numbers leave room.
        let along = [0.5, 0.38, 0.62, 0.3, 0.7, 0.22, 0.78, 0.15, 0.85];
        let at = |t: f64| (a.0 + (b.0 - a.0) * t, a.1 + (b.1 - a.1) * t);
        let free = |t: &f64| {
            let own = Area::about(at(*t), room, room);
            !taken.iter().any(|other| other.meets(&own))
        };
        let centre = at(along.into_iter().find(free).unwrap_or(0.5));
        taken.push(Area::about(centre, room, room));
        circles.push((centre, text));
    }
    numbers_and_letters(&mut svg, &circles, &texts);
    svg.finish()
}

/// The sketch of an opening: its sides by number, and from its corners a short way toward the corners of the plane that they are tied to.
pub(super) fn opening_svg(plane: &PlaneSheet, number: usize) -> String {
    let Some(opening) = plane.openings.get(number) else { return String::new() };
    let places = opening.corners.iter().map(|c| (c.at.x.mm(), c.at.y.mm()));
    let scale = Scale { around: STUB + MARGIN, ..Scale::new(places, OPENING) };
    let ring = on_paper(&opening.corners, &scale);
    let size = scale.size();
    let mut svg = Svg::new(size.0, size.1, PaperUnit::Millimetre, &opening.name);
    svg.group("opening", Look::line(INK, 0.6), |svg| svg.polyline(&ring, true));
    let mut taken: Vec<Area> = Vec::new();
    let mut circles: Vec<(Point, String)> = Vec::new();
    let mut texts: Vec<(Point, f64, String)> = Vec::new();
    for (i, corner) in opening.corners.iter().enumerate() {
        // Out of the plane is into the opening, where no tie runs.
        let (at, out) = (ring.get(i).copied().unwrap_or_default(), outward(&ring, i));
        texts.push(((at.0 + out.0 * 4.0, at.1 + out.1 * 4.0), LETTER, corner.name.clone()));
    }
    for line in plane.lines.iter().filter(|l| opening_of(plane, l) == Some(number)) {
        let (from, to) = (place(plane, &scale, &line.from), place(plane, &scale, &line.to));
        let room = NUMBER + 2.0;
        let inside = line.part == LinePart::Opening;
        let way = unit(to, from);
        let end = if inside { from } else { (to.0 + way.0 * STUB, to.1 + way.1 * STUB) };
        let at = |t: f64| (to.0 + (end.0 - to.0) * t, to.1 + (end.1 - to.1) * t);
        let free = |t: &f64| {
            let own = Area::about(at(*t), room, room);
            !taken.iter().any(|other| other.meets(&own))
        };
        let centre = at([0.5, 0.62, 0.38, 0.74, 0.28].into_iter().find(free).unwrap_or(0.5));
        taken.push(Area::about(centre, room, room));
        circles.push((centre, line.number.to_string()));
        if !inside {
            let dashes: &[f64] = if line.part == LinePart::Check { &[0.3, 1.1] } else { &[1.2, 0.8] };
            svg.group("tie", Look::dashed(INK, 0.3, dashes), |svg| svg.line(to, end));
            texts.push(((end.0 + way.0 * 2.6, end.1 + way.1 * 2.6), NUMBER, line.from.clone()));
        }
    }
    numbers_and_letters(&mut svg, &circles, &texts);
    svg.finish()
}

fn numbers_and_letters(svg: &mut Svg, circles: &[(Point, String)], texts: &[(Point, f64, String)]) {
    svg.group("behind numbers", Look { stroke: INK, width: 0.2, dashes: &[], fill: "#ffffff" }, |svg| {
        for (centre, text) in circles {
            svg.circle(*centre, (text_width(text, NUMBER) / 2.0 + 0.7).max(2.2));
        }
    });
    svg.group("numbers", Look::area(INK), |svg| {
        for (centre, text) in circles {
            svg.text((centre.0, centre.1 + NUMBER * 0.36), NUMBER, Anchor::Middle, 0.0, text);
        }
        for (centre, size, text) in texts {
            svg.text((centre.0, centre.1 + size * 0.36), *size, Anchor::Middle, 0.0, text);
        }
    });
}

/// The walk: every plane with its number and name, and the corners by letter.
pub(super) fn overview_svg(sheet: &MeasuringSheet) -> String {
    let scale = Scale::new(sheet.planes.iter().flat_map(corners), ROOF);
    let size = scale.size();
    let mut svg = Svg::new(size.0, size.1, PaperUnit::Millimetre, "the walk");
    let rings: Vec<Vec<Point>> = sheet.planes.iter().map(|p| corners(p).into_iter().map(|c| scale.at(c)).collect()).collect();
    svg.group("planes", Look::line(INK, 0.5), |svg| rings.iter().for_each(|r| svg.polyline(r, true)));
    svg.group("openings", Look::line(INK, 0.3), |svg| {
        for opening in sheet.planes.iter().flat_map(|p| &p.openings) {
            svg.polyline(&on_paper(&opening.corners, &scale), true);
        }
    });
    svg.group("names", Look::area(INK), |svg| {
        for (number, (plane, ring)) in (1_usize..).zip(sheet.planes.iter().zip(&rings)) {
            let middle = middle(ring);
            svg.text((middle.0, middle.1 - 0.5), LETTER, Anchor::Middle, 0.0, &number.to_string());
            svg.text((middle.0, middle.1 + NUMBER), NUMBER, Anchor::Middle, 0.0, &plane.plane);
        }
    });
    // Each corner once, out of the first plane that has it.
    let mut named: Vec<&str> = Vec::new();
    svg.group("corners", Look::area(INK), |svg| {
        for (plane, ring) in sheet.planes.iter().zip(&rings) {
            for (i, corner) in plane.corners.iter().enumerate().filter(|(_, c)| !named.contains(&c.name.as_str())).collect::<Vec<_>>() {
                named.push(&corner.name);
                let (at, out) = (ring.get(i).copied().unwrap_or_default(), outward(ring, i));
                svg.text((at.0 + out.0 * 3.4, at.1 + out.1 * 3.4 + NUMBER * 0.36), NUMBER, Anchor::Middle, 0.0, &corner.name);
            }
        }
    });
    svg.finish()
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
