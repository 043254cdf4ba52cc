//! Where the balloons of a section go: near what they name, clear of the figure, their leaders crossing as little as can be.

use super::fold::Point;
use super::labels::Area;
use crate::num;

/// Radius of a balloon.
pub(super) const RADIUS: f64 = 2.7;
/// Room kept about a balloon or a label.
const ROOM: f64 = 0.7;
const RINGS: u32 = 44;
const RING: f64 = 1.5;
const TURNS: u32 = 24;

/// A mark that wants a place.
#[derive(Debug, Clone)]
pub(super) struct Wanted {
    /// The text in it.
    pub(super) text: String,
    /// Where its leader may point at, the best first.
    pub(super) handles: Vec<Point>,
    /// Half its width and height.
    pub(super) half: Point,
    /// Whether it is round.
    pub(super) round: bool,
}

impl Wanted {
    /// From what it names to its edge.
    fn leader(&self, handle: Point, area: &Area) -> (Point, Point) {
        if !self.round {
            return (handle, area.nearest(handle));
        }
        let centre = (f64::midpoint(area.low.0, area.high.0), f64::midpoint(area.low.1, area.high.1));
        let l = num::hypot(centre.0 - handle.0, centre.1 - handle.1).max(RADIUS);
        let share = 1.0 - RADIUS / l;
        (handle, (handle.0 + (centre.0 - handle.0) * share, handle.1 + (centre.1 - handle.1) * share))
    }
}

/// A mark in its place.
#[derive(Debug, Clone)]
pub(super) struct Placed {
    pub(super) text: String,
    pub(super) area: Area,
    pub(super) leader: (Point, Point),
}

impl Placed {
    pub(super) fn centre(&self) -> Point {
        (f64::midpoint(self.area.low.0, self.area.high.0), f64::midpoint(self.area.low.1, self.area.high.1))
    }
}

/// What the marks keep clear of.
#[derive(Debug, Default)]
pub(super) struct Figure {
    /// Strokes that no mark may touch, and that a leader should not cross.
    pub(super) chords: Vec<(Point, Point)>,
    /// Strokes of text and dimensions: a leader must not cross them if there is any other way.
    pub(super) words: Vec<(Point, Point)>,
    /// Areas that no mark may lie in.
    pub(super) solid: Vec<Vec<Point>>,
    /// What every mark should keep to.
    pub(super) within: Option<Area>,
}

fn crosses((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let side = |p: Point, q: Point, r: Point| (q.0 - p.0) * (r.1 - p.1) - (q.1 - p.1) * (r.0 - p.0);
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

/// A stroke with the box about it: nearly all strokes lie nowhere near what is tried, and their boxes say so.
struct Stroke {
    ends: (Point, Point),
    about: Area,
}

impl Stroke {
    fn of((a, b): (Point, Point)) -> Stroke {
        let about = Area { low: (a.0.min(b.0), a.1.min(b.1)), high: (a.0.max(b.0), a.1.max(b.1)) };
        Stroke { ends: (a, b), about }
    }

    fn is_near(&self, area: &Area) -> bool {
        let (low, high) = (&self.about.low, &self.about.high);
        low.0 <= area.high.0 && area.low.0 <= high.0 && low.1 <= area.high.1 && area.low.1 <= high.1
    }

    fn crosses(&self, other: &Stroke) -> bool {
        self.is_near(&other.about) && crosses(self.ends, other.ends)
    }
}

/// What every mark of one figure is tried against.
struct Ground<'f> {
    figure: &'f Figure,
    words: Vec<Stroke>,
    chords: Vec<Stroke>,
    /// The directions from what is named, upwards first, then to both sides by turns.
    ways: Vec<Point>,
}

impl Ground<'_> {
    fn of(figure: &Figure) -> Ground<'_> {
        let strokes = |all: &[(Point, Point)]| all.iter().map(|s| Stroke::of(*s)).collect();
        let way = |turn: u32| {
            let sign = if turn.is_multiple_of(2) { 1.0 } else { -1.0 };
            let degrees = 90.0 + sign * f64::from(turn.div_ceil(2)) * 360.0 / f64::from(TURNS);
            (num::cos_deg(degrees), num::sin_deg(degrees))
        };
        Ground { figure, words: strokes(&figure.words), chords: strokes(&figure.chords), ways: (0..TURNS).map(way).collect() }
    }
}

fn holds(ring: &[Point], p: Point) -> bool {
    ring.iter().zip(ring.iter().cycle().skip(1)).filter(|(a, b)| (a.1 > p.1) != (b.1 > p.1) && p.0 < a.0 + (b.0 - a.0) * (p.1 - a.1) / (b.1 - a.1)).count() % 2
        == 1
}

/// Places the marks one by one, and then each again against the others.
pub(super) fn place(wanted: &[Wanted], figure: &Figure) -> Vec<Placed> {
    let ground = Ground::of(figure);
    let mut placed: Vec<Option<Placed>> = vec![None; wanted.len()];
    for _ in 0..3 {
        for (i, want) in wanted.iter().enumerate() {
            if let Some(slot) = placed.get_mut(i) {
                *slot = None;
            }
            let best = best(want, &placed, &ground);
            if let Some(slot) = placed.get_mut(i) {
                *slot = Some(best);
            }
        }
    }
    placed.into_iter().flatten().collect()
}

fn best(want: &Wanted, placed: &[Option<Placed>], ground: &Ground<'_>) -> Placed {
    let mut found: Option<(f64, Placed)> = None;
    for (rank, handle) in (0_u32..).zip(&want.handles) {
        let fixed = f64::from(rank) * 2.0;
        for ring in 0..RINGS {
            let off = 1.6 + RING * f64::from(ring);
            if found.as_ref().is_some_and(|(cost, _)| off + fixed >= *cost) {
                break;
            }
            for way in &ground.ways {
                let reach = off + (way.0.abs() * want.half.0 + way.1.abs() * want.half.1);
                let centre = (handle.0 + way.0 * reach, handle.1 + way.1 * reach);
                let area = Area::about(centre, want.half.0 * 2.0, want.half.1 * 2.0);
                if !is_free(&area, placed, ground) {
                    continue;
                }
                let leader = want.leader(*handle, &area);
                let limit = found.as_ref().map_or(f64::INFINITY, |(least, _)| least - off - fixed);
                if let Some(crossed) = crossing_cost(leader, placed, ground, limit) {
                    found = Some((off + fixed + crossed, Placed { text: want.text.clone(), area, leader }));
                }
            }
        }
    }
    found.map_or_else(|| below(want, placed, ground.figure), |(_, p)| p)
}

fn is_free(area: &Area, placed: &[Option<Placed>], ground: &Ground<'_>) -> bool {
    let grown = area.grown(ROOM);
    let keeps_within = |w: &Area| w.low.0 <= area.low.0 && w.low.1 <= area.low.1 && area.high.0 <= w.high.0 && area.high.1 <= w.high.1;
    if !ground.figure.within.as_ref().is_none_or(keeps_within) {
        return false;
    }
    placed.iter().flatten().all(|p| !p.area.meets(&grown) && !grown.is_hit_by(p.leader.0, p.leader.1))
        && ground.chords.iter().chain(&ground.words).all(|s| !(s.is_near(&grown) && grown.is_hit_by(s.ends.0, s.ends.1)))
        && ground.figure.solid.iter().all(|ring| !holds(ring, (f64::midpoint(area.low.0, area.high.0), f64::midpoint(area.low.1, area.high.1))))
}

/// What a leader crosses, if that costs less than the limit.
fn crossing_cost(leader: (Point, Point), placed: &[Option<Placed>], ground: &Ground<'_>, limit: f64) -> Option<f64> {
    // A leader starts on what it names: its first half millimetre crosses nothing of note.
    let (from, to) = leader;
    let l = num::hypot(to.0 - from.0, to.1 - from.1);
    let start = if l > 0.7 { (from.0 + (to.0 - from.0) * 0.6 / l, from.1 + (to.1 - from.1) * 0.6 / l) } else { from };
    let line = Stroke::of((start, to));
    let mut cost = 0.0;
    if cost >= limit {
        return None;
    }
    for other in placed.iter().flatten() {
        if crosses(line.ends, other.leader) {
            cost += 40.0;
        }
        if other.area.grown(0.3).is_hit_by(start, to) {
            cost += 200.0;
        }
    }
    for (strokes, each) in [(&ground.words, 60.0), (&ground.chords, 3.0)] {
        for stroke in strokes {
            if stroke.crosses(&line) {
                cost += each;
                if cost >= limit {
                    return None;
                }
            }
        }
    }
    (cost < limit).then_some(cost)
}

/// Below everything: there is always room there.
fn below(want: &Wanted, placed: &[Option<Placed>], figure: &Figure) -> Placed {
    let handle = want.handles.first().copied().unwrap_or_default();
    let strokes = figure.chords.iter().chain(&figure.words).map(|(a, b)| a.1.min(b.1));
    let lowest = strokes.chain(placed.iter().flatten().map(|p| p.area.low.1)).fold(handle.1, f64::min);
    let area = Area::about((handle.0, lowest - 2.0 * ROOM - want.half.1), want.half.0 * 2.0, want.half.1 * 2.0);
    Placed { text: want.text.clone(), area, leader: want.leader(handle, &area) }
}
