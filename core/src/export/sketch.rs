//! A sketch under way: strokes, numbers on them, and names that find their own places, clear of both. It is as large as what it holds.

use super::labels::{self, Area, Placed, Wanted};
use super::svg::{Anchor, Look, PaperUnit, Point, Svg, text_width};

pub(super) const INK: &str = "#000000";
/// Numbers on lines.
pub(super) const NUMBER: f64 = 3.2;
/// Between a name and what is drawn.
const CLEAR: f64 = 0.6;
/// Paper round the sketch.
const EDGE: f64 = 1.0;

/// Lines of one look.
struct Stroke {
    name: &'static str,
    look: Look,
    lines: Vec<(Vec<Point>, bool)>,
}

/// What is being drawn; y down, from any origin.
#[derive(Default)]
pub(super) struct Sketch {
    strokes: Vec<Stroke>,
    numbers: Vec<(Point, String)>,
    names: Vec<(Wanted, f64)>,
    /// Names that may stand inside a ring or beside any of its sides.
    of_rings: Vec<(Vec<Point>, String, f64)>,
}

fn radius(text: &str) -> f64 {
    (text_width(text, NUMBER) / 2.0 + 0.7).max(2.2)
}

/// The sides of a ring.
pub(super) fn sides(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    ring.iter().copied().zip(ring.iter().copied().cycle().skip(1))
}

/// What keeps others out of a box: its sides and its diagonals.
fn bars(area: &Area) -> [(Point, Point); 6] {
    let (l, h) = (area.low, area.high);
    let (a, b, c, d) = (l, (h.0, l.1), h, (l.0, h.1));
    [(a, b), (b, c), (c, d), (d, a), (a, c), (b, d)]
}

fn wanted(text: &str, size: f64, anchor: Point, towards: Point) -> Wanted {
    Wanted { text: text.to_owned(), anchor, towards, width: text_width(text, size), height: size, one_side: false }
}

impl Sketch {
    pub(super) fn lines(&mut self, name: &'static str, look: Look, lines: impl Iterator<Item = (Point, Point)>) {
        self.strokes.push(Stroke { name, look, lines: lines.map(|(a, b)| (vec![a, b], false)).collect() });
    }

    pub(super) fn rings(&mut self, name: &'static str, look: Look, rings: impl Iterator<Item = Vec<Point>>) {
        self.strokes.push(Stroke { name, look, lines: rings.map(|ring| (ring, true)).collect() });
    }

    /// A number in a circle on its line: at the first of these places that is clear of other numbers and of `off`, or at least of other numbers.
    pub(super) fn number(&mut self, text: &str, places: &[Point], off: &[(Point, Point)]) -> Point {
        let around = |p: Point, text: &str| Area::about(p, 2.0 * radius(text), 2.0 * radius(text));
        let free = |p: &&Point| {
            let own = around(**p, text).grown(0.3);
            self.numbers.iter().all(|(centre, other)| !around(*centre, other).grown(0.3).meets(&own))
        };
        let is_off = |p: &&Point| off.iter().all(|(a, b)| !around(**p, text).is_hit_by(*a, *b));
        let found = places.iter().filter(free).find(is_off).or_else(|| places.iter().find(free)).or(places.first()).copied().unwrap_or_default();
        self.numbers.push((found, text.to_owned()));
        found
    }

    /// A name beside its place, on this side of it where there is room.
    pub(super) fn name(&mut self, text: &str, size: f64, at: Point, towards: Point) {
        self.names.push((wanted(text, size, at, towards), size));
    }

    /// A name in a ring that has room for it, or else beside the ring.
    pub(super) fn name_of_ring(&mut self, text: &str, size: f64, ring: Vec<Point>) {
        self.of_rings.push((ring, text.to_owned(), size));
    }

    fn chords(&self) -> Vec<(Point, Point)> {
        let mut out = Vec::new();
        for (line, closed) in self.strokes.iter().flat_map(|s| &s.lines) {
            out.extend(sides(line).take(if *closed { line.len() } else { line.len().saturating_sub(1) }));
        }
        let circle = |(centre, text): &(Point, String)| Area::about(*centre, 2.0 * radius(text), 2.0 * radius(text));
        out.extend(self.numbers.iter().flat_map(|n| bars(&circle(n))));
        out
    }

    /// The names in their places, each with its size.
    fn placed(&self) -> Vec<(Placed, f64)> {
        let mut chords = self.chords();
        let found = labels::place(self.names.iter().map(|(w, _)| w.clone()).collect(), &chords, CLEAR);
        let mut out: Vec<(Placed, f64)> = found.into_iter().zip(self.names.iter().map(|n| n.1)).collect();
        for (ring, text, size) in &self.of_rings {
            chords.extend(out.iter().flat_map(|(p, _)| bars(&p.area).into_iter().chain(p.leader)));
            let mut round = Area::EMPTY;
            ring.iter().for_each(|p| round.cover(*p));
            let middle = ((round.low.0 + round.high.0) / 2.0, (round.low.1 + round.high.1) / 2.0);
            let own = Area::about(middle, text_width(text, *size), *size);
            let fits =
                round.low.0 < own.low.0 - CLEAR && own.high.0 + CLEAR < round.high.0 && round.low.1 < own.low.1 - CLEAR && own.high.1 + CLEAR < round.high.1;
            let room = own.grown(CLEAR);
            let is_inside = fits && chords.iter().all(|(a, b)| !room.is_hit_by(*a, *b));
            let beside = |(anchor, way): (Point, Point)| labels::place(vec![wanted(text, *size, anchor, way)], &chords, CLEAR).pop();
            let around = || {
                let (l, h, m) = (round.low, round.high, middle);
                let tries = [((m.0, l.1), (0.0, -1.0)), ((m.0, h.1), (0.0, 1.0)), ((h.0, m.1), (1.0, 0.0)), ((l.0, m.1), (-1.0, 0.0))];
                // The shortest leader, best none.
                let long = |p: &Placed| p.leader.map_or(0.0, |(a, b)| (b.0 - a.0) * (b.0 - a.0) + (b.1 - a.1) * (b.1 - a.1));
                tries.into_iter().filter_map(beside).min_by(|a, b| long(a).total_cmp(&long(b)))
            };
            let inside = is_inside.then(|| Placed { text: text.clone(), area: own, leader: None });
            out.extend(inside.or_else(around).map(|p| (p, *size)));
        }
        out
    }

    /// Nothing written lies on a line, on a number or on another name.
    #[cfg(test)]
    pub(super) fn check(&self) {
        let (chords, names) = (self.chords(), self.placed());
        assert_eq!(names.len(), self.names.len() + self.of_rings.len());
        for (i, (name, _)) in names.iter().enumerate() {
            assert!(chords.iter().all(|(a, b)| !name.area.is_hit_by(*a, *b)), "{} on a line or a number", name.text);
            assert!(names.iter().take(i).all(|(other, _)| !other.area.meets(&name.area)), "{} on another name", name.text);
        }
        let around = |(centre, text): &(Point, String)| Area::about(*centre, 2.0 * radius(text), 2.0 * radius(text));
        for (i, number) in self.numbers.iter().enumerate() {
            assert!(self.numbers.iter().take(i).all(|other| !around(other).meets(&around(number))), "{} on another number", number.1);
        }
    }

    /// The document.
    pub(super) fn svg(self, title: &str) -> String {
        let names = self.placed();
        let mut area = Area::EMPTY;
        for (line, _) in self.strokes.iter().flat_map(|s| &s.lines) {
            line.iter().for_each(|p| area.cover(*p));
        }
        let circles = self.numbers.iter().map(|(centre, text)| Area::about(*centre, 2.0 * radius(text), 2.0 * radius(text)));
        for part in circles.chain(names.iter().map(|(p, _)| p.area)) {
            area.cover(part.low);
            area.cover(part.high);
        }
        let area = area.grown(EDGE);
        let on = |p: Point| (p.0 - area.low.0, p.1 - area.low.1);
        let mut svg = Svg::new(area.high.0 - area.low.0, area.high.1 - area.low.1, PaperUnit::Millimetre, title);
        for stroke in &self.strokes {
            svg.group(stroke.name, stroke.look, |svg| {
                for (line, closed) in &stroke.lines {
                    match line.as_slice() {
                        [a, b] if !closed => svg.line(on(*a), on(*b)),
                        line => svg.polyline(&line.iter().map(|p| on(*p)).collect::<Vec<_>>(), *closed),
                    }
                }
            });
        }
        svg.group("behind numbers", Look { stroke: INK, width: 0.2, dashes: &[], fill: "#ffffff" }, |svg| {
            for (centre, text) in &self.numbers {
                svg.circle(on(*centre), radius(text));
            }
        });
        if names.iter().any(|(p, _)| p.leader.is_some()) {
            svg.group("leaders", Look::line(INK, 0.15), |svg| names.iter().filter_map(|(p, _)| p.leader).for_each(|(a, b)| svg.line(on(a), on(b))));
        }
        svg.group("numbers", Look::area(INK), |svg| {
            let mut put = |centre: Point, size: f64, text: &str| {
                let at = on(centre);
                svg.text((at.0, at.1 + size * 0.36), size, Anchor::Middle, 0.0, text);
            };
            self.numbers.iter().for_each(|(centre, text)| put(*centre, NUMBER, text));
            for (p, size) in &names {
                put(((p.area.low.0 + p.area.high.0) / 2.0, (p.area.low.1 + p.area.high.1) / 2.0), *size, &p.text);
            }
        });
        svg.finish()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(at: Point, size: Point) -> Vec<Point> {
        vec![at, (at.0 + size.0, at.1), (at.0 + size.0, at.1 + size.1), (at.0, at.1 + size.1)]
    }

    #[test]
    fn a_name_goes_into_its_ring_or_to_a_side_with_room() {
        let mut sketch = Sketch::default();
        let hole = ring((0.0, 4.0), (8.0, 5.0));
        sketch.rings("sides", Look::line(INK, 0.6), [ring((-30.0, 0.0), (60.0, 30.0)), hole.clone()].into_iter());
        sketch.number("3", &[(4.0, 0.0)], &[]);
        sketch.name_of_ring("a flue with a long name", 2.6, hole.clone());
        sketch.name_of_ring("in", 2.6, hole);
        sketch.check();
        let places = sketch.placed();
        assert!(places[0].0.area.low.1 > 9.0, "below the ring: a number stands above it");
        let inside = places[1].0.area;
        assert!(0.0 < inside.low.0 && inside.high.0 < 8.0 && 4.0 < inside.low.1 && inside.high.1 < 9.0);
    }

    #[test]
    fn numbers_leave_each_other_room() {
        let mut sketch = Sketch::default();
        let places: Vec<Point> = (0..6).map(|i| (f64::from(i) * 5.0, 0.0)).collect();
        sketch.lines("side", Look::line(INK, 0.6), [((0.0, 0.0), (25.0, 0.0))].into_iter());
        let across = [((5.0, -9.0), (5.0, 9.0))];
        let found: Vec<f64> = ["12", "8", "144"].map(|n| sketch.number(n, &places, &across).0).to_vec();
        assert_eq!(found, [0.0, 10.0, 20.0], "144 is as wide as two places are apart");
        sketch.check();
    }
}
