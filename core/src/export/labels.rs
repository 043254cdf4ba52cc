//! Where labels go: beside what they name where there is room, otherwise at the end of a leader; never on each other and never on the figure.

use super::fold::Point;

/// An upright box, y upwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Area {
    pub(super) low: Point,
    pub(super) high: Point,
}

impl Area {
    /// Nothing yet.
    pub(super) const EMPTY: Area = Area { low: (f64::INFINITY, f64::INFINITY), high: (f64::NEG_INFINITY, f64::NEG_INFINITY) };

    pub(super) fn about(centre: Point, width: f64, height: f64) -> Area {
        Area { low: (centre.0 - width / 2.0, centre.1 - height / 2.0), high: (centre.0 + width / 2.0, centre.1 + height / 2.0) }
    }

    pub(super) fn cover(&mut self, p: Point) {
        self.low = (self.low.0.min(p.0), self.low.1.min(p.1));
        self.high = (self.high.0.max(p.0), self.high.1.max(p.1));
    }

    pub(super) fn grown(self, by: f64) -> Area {
        Area { low: (self.low.0 - by, self.low.1 - by), high: (self.high.0 + by, self.high.1 + by) }
    }

    /// With the room that other labels leave around it.
    fn roomy(self) -> Area {
        Area { low: (self.low.0 - 2.0 * ROOM, self.low.1 - ROOM), high: (self.high.0 + 2.0 * ROOM, self.high.1 + ROOM) }
    }

    pub(super) fn meets(&self, other: &Area) -> bool {
        self.low.0 < other.high.0 && other.low.0 < self.high.0 && self.low.1 < other.high.1 && other.low.1 < self.high.1
    }

    pub(super) fn nearest(&self, p: Point) -> Point {
        (p.0.max(self.low.0).min(self.high.0), p.1.max(self.low.1).min(self.high.1))
    }

    /// Whether some of the segment lies in the box.
    pub(super) fn is_hit_by(&self, a: Point, b: Point) -> bool {
        if a.0.max(b.0) < self.low.0 || a.0.min(b.0) > self.high.0 || a.1.max(b.1) < self.low.1 || a.1.min(b.1) > self.high.1 {
            return false;
        }
        let (mut from, mut to) = (0.0_f64, 1.0_f64);
        for (start, end, low, high) in [(a.0, b.0, self.low.0, self.high.0), (a.1, b.1, self.low.1, self.high.1)] {
            let way = end - start;
            if way == 0.0 {
                if start < low || start > high {
                    return false;
                }
            } else {
                let (t, u) = ((low - start) / way, (high - start) / way);
                from = from.max(t.min(u));
                to = to.min(t.max(u));
            }
        }
        from <= to
    }
}

/// A label that wants a place.
#[derive(Debug, Clone)]
pub(super) struct Wanted {
    pub(super) text: String,
    /// What it names.
    pub(super) anchor: Point,
    /// The direction in which it would rather stand, of any length but none.
    pub(super) towards: Point,
    pub(super) width: f64,
    pub(super) height: f64,
    /// Whether it must stand on that side of what it names; then it always has a leader, which shows the side.
    pub(super) one_side: bool,
}

/// A label in its place.
#[derive(Debug, Clone)]
pub(super) struct Placed {
    pub(super) text: String,
    pub(super) area: Area,
    /// From what it names to the label, where it stands off.
    pub(super) leader: Option<(Point, Point)>,
}

/// Room between labels, and between a label and a leader; twice that where they stand side by side, so that two are not read as one.
const ROOM: f64 = 0.6;
/// From this distance on a label has a leader.
const LEADER_FROM: f64 = 2.2;
const RINGS: u32 = 30;
const RING: f64 = 1.6;

/// The figure's chords by the handful, each handful in its box: most of them are far from a label.
struct Figure<'a> {
    all: &'a [(Point, Point)],
    handfuls: Vec<(Area, &'a [(Point, Point)])>,
}

impl<'a> Figure<'a> {
    fn of(all: &'a [(Point, Point)]) -> Figure<'a> {
        let boxed = |handful: &'a [(Point, Point)]| {
            let mut area = Area::EMPTY;
            for (a, b) in handful {
                area.cover(*a);
                area.cover(*b);
            }
            (area.grown(1e-6), handful)
        };
        Figure { all, handfuls: all.chunks(16).map(boxed).collect() }
    }

    /// The chords whose box may meet this one.
    fn near(&self, area: Area) -> impl Iterator<Item = &(Point, Point)> {
        self.handfuls.iter().filter(move |(around, _)| around.meets(&area)).flat_map(|(_, handful)| handful.iter())
    }
}

/// Places labels in order, clear by `clear` of the chords of the figure.
pub(super) fn place(wanted: Vec<Wanted>, chords: &[(Point, Point)], clear: f64) -> Vec<Placed> {
    let chords = &Figure::of(chords);
    let mut placed: Vec<Placed> = Vec::with_capacity(wanted.len());
    for want in wanted {
        let (area, leader) = [true, false]
            .into_iter()
            .find_map(|strict| in_rings(&want, &placed, chords, clear, strict))
            .unwrap_or_else(|| below(&want, &placed, chords, clear));
        placed.push(Placed { text: want.text, area, leader });
    }
    placed
}

type Spot = (Area, Option<(Point, Point)>);

fn in_rings(want: &Wanted, placed: &[Placed], chords: &Figure<'_>, clear: f64, strict: bool) -> Option<Spot> {
    let length = (want.towards.0 * want.towards.0 + want.towards.1 * want.towards.1).sqrt();
    let (x, y) = if length > 0.0 { (want.towards.0 / length, want.towards.1 / length) } else { (0.0, 1.0) };
    // Ahead, half aside, behind, half behind, square aside; then what lies between these. Cosine and sine of 45 and of 22.5 degrees.
    const HALF: f64 = core::f64::consts::FRAC_1_SQRT_2;
    const C: f64 = 0.923_879_532_511_286_7;
    const S: f64 = 0.382_683_432_365_089_8;
    const TURNS: [(f64, f64); 16] = [
        (1.0, 0.0),
        (HALF, HALF),
        (HALF, -HALF),
        (-1.0, 0.0),
        (-HALF, HALF),
        (-HALF, -HALF),
        (0.0, 1.0),
        (0.0, -1.0),
        (C, S),
        (C, -S),
        (S, C),
        (S, -C),
        (-C, S),
        (-C, -S),
        (-S, C),
        (-S, -C),
    ];
    for ring in 0..RINGS {
        let off = 0.2 + RING * f64::from(ring);
        for (c, s) in TURNS {
            if want.one_side && c < HALF {
                continue;
            }
            for area in beside(want, (x * c - y * s, x * s + y * c), off, clear) {
                let end = area.nearest(want.anchor);
                let leader = (want.one_side || apart(want.anchor, end) > clear + LEADER_FROM).then_some((want.anchor, end));
                let free = |p: &Placed| {
                    !p.area.roomy().meets(&area)
                        && p.leader.is_none_or(|(a, b)| !area.roomy().is_hit_by(a, b))
                        && leader.is_none_or(|(a, b)| !p.area.roomy().is_hit_by(a, b))
                        && (!strict || leader.is_none_or(|l| p.leader.is_none_or(|m| !cross(l, m))))
                };
                let room = area.grown(clear);
                let off_figure = chords.near(room).all(|(a, b)| !room.is_hit_by(*a, *b));
                if off_figure && placed.iter().all(free) && (!strict || leader.is_none_or(|l| is_clear_of(l, chords, clear))) {
                    return Some((area, leader));
                }
            }
        }
    }
    None
}

/// Places for the label's box, this way from its anchor; with `clear` all around it, it is off by so much from the line through the anchor square to the way.
/// Centred on the way a wide box leaves its anchor behind where the way is slanted; so it may slide along that line until its nearest corner stands on the way.
/// Where some of these places need no leader, they are those.
fn beside(want: &Wanted, way: Point, off: f64, clear: f64) -> impl Iterator<Item = Area> {
    let half = ((want.width / 2.0 + clear) * way.0.signum(), (want.height / 2.0 + clear) * way.1.signum());
    let reach = off + half.0 * way.0 + half.1 * way.1;
    let whole = way.0 * half.1 - way.1 * half.0;
    let at = move |part: f64| {
        let along = whole * part;
        Area::about((want.anchor.0 + way.0 * reach - way.1 * along, want.anchor.1 + way.1 * reach + way.0 * along), want.width, want.height)
    };
    let near = move |area: &Area| apart(want.anchor, area.nearest(want.anchor)) <= clear + LEADER_FROM;
    let some_near = near(&at(0.0)) || near(&at(1.0));
    const ALL: &[f64] = &[0.0, 0.25, 0.5, 0.75, 1.0];
    const ENDS: &[f64] = &[0.0, 1.0];
    let parts = if some_near { ALL } else { ENDS };
    parts.iter().map(move |part| at(*part)).filter(move |area| !some_near || near(area))
}

/// Below everything, in a row of its own: there is always room there.
fn below(want: &Wanted, placed: &[Placed], chords: &Figure<'_>, clear: f64) -> Spot {
    let lowest = chords.all.iter().map(|(a, b)| a.1.min(b.1)).chain(placed.iter().map(|p| p.area.low.1)).fold(want.anchor.1, f64::min);
    let area = Area::about((want.anchor.0, lowest - clear - ROOM - want.height), want.width, want.height);
    (area, Some((want.anchor, area.nearest(want.anchor))))
}

/// Whether a leader, once it has left the sheet where it starts, stays away from the figure.
fn is_clear_of((start, end): (Point, Point), chords: &Figure<'_>, clear: f64) -> bool {
    let (x, y) = (end.0 - start.0, end.1 - start.1);
    let part = (clear / (x * x + y * y).sqrt()).min(1.0);
    let out = (start.0 + x * part, start.1 + y * part);
    let mut along = Area::EMPTY;
    along.cover(out);
    along.cover(end);
    chords.near(along.grown(0.31)).all(|chord| !cross((out, end), *chord) && [chord.0, chord.1].into_iter().all(|p| distance(p, (out, end)) > 0.3))
}

fn apart(p: Point, q: Point) -> f64 {
    let (x, y) = (q.0 - p.0, q.1 - p.1);
    (x * x + y * y).sqrt()
}

/// From a point to the nearest of a segment.
fn distance(p: Point, (a, b): (Point, Point)) -> f64 {
    let (x, y) = (b.0 - a.0, b.1 - a.1);
    let square = x * x + y * y;
    let t = if square > 0.0 { (((p.0 - a.0) * x + (p.1 - a.1) * y) / square).clamp(0.0, 1.0) } else { 0.0 };
    apart(p, (a.0 + x * t, a.1 + y * t))
}

fn cross((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let side = |p: Point, q: Point, r: Point| (q.0 - p.0) * (r.1 - p.1) - (q.1 - p.1) * (r.0 - p.0);
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

/// Moves sorted places apart to at least this pitch, each as little as can be.
pub(super) fn spread(places: &[f64], pitch: f64) -> Vec<f64> {
    // With i pitches taken off the i-th place, "at least a pitch apart" becomes "in order": neighbours out of order share their mean.
    let mut pools: Vec<(f64, f64)> = Vec::new();
    let mut taken = 0.0;
    for place in places {
        let mut pool = (*place - taken, 1.0);
        taken += pitch;
        while let Some(last) = pools.last().copied().filter(|last| last.0 > pool.0) {
            pools.pop();
            pool = ((last.0 * last.1 + pool.0 * pool.1) / (last.1 + pool.1), last.1 + pool.1);
        }
        pools.push(pool);
    }
    let mut out = Vec::with_capacity(places.len());
    let mut added = 0.0;
    for (mean, count) in pools {
        let mut left = count;
        while left > 0.5 {
            out.push(mean + added);
            added += pitch;
            left -= 1.0;
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn places_far_apart_stay_and_places_together_share() {
        assert_eq!(spread(&[0.0, 10.0], 3.0), [0.0, 10.0]);
        assert_eq!(spread(&[5.0, 5.0], 3.0), [3.5, 6.5]);
        assert_eq!(spread(&[0.0, 0.0, 0.0, 20.0], 2.0), [-2.0, 0.0, 2.0, 20.0]);
    }

    #[test]
    fn a_segment_hits_a_box_that_it_only_passes_through() {
        let area = Area::about((0.0, 0.0), 2.0, 2.0);
        assert!(area.is_hit_by((-5.0, 0.0), (5.0, 0.5)));
        assert!(area.is_hit_by((0.0, 0.0), (0.0, 0.0)));
        assert!(!area.is_hit_by((-5.0, 3.0), (5.0, 3.0)));
        assert!(!area.is_hit_by((0.0, 5.0), (5.0, 0.0)));
    }

    /// A wide label beside a slanted leg: its corner comes to the leg's middle, and no leader is needed.
    #[test]
    fn a_wide_label_slides_to_what_it_names() {
        let leg = ((-20.0, -20.0), (20.0, 20.0));
        let want = Wanted { text: "wide".to_owned(), anchor: (0.0, 0.0), towards: (-1.0, 1.0), width: 36.0, height: 3.0, one_side: false };
        let placed = place(vec![want], &[leg], 0.5).remove(0);
        assert_eq!(placed.leader, None);
        assert!(apart((0.0, 0.0), placed.area.nearest((0.0, 0.0))) <= 0.5 + LEADER_FROM, "{placed:?}");
        assert!(!placed.area.grown(0.5).is_hit_by(leg.0, leg.1));
    }

    proptest! {
        #[test]
        fn a_label_is_near_what_it_names_or_led_to_it(
            spots in proptest::collection::vec((-40.0_f64..40.0, -40.0_f64..40.0, -1.0_f64..1.0, -1.0_f64..1.0, 2.0_f64..60.0, any::<bool>()), 1..25),
        ) {
            let wanted = |(x, y, dx, dy, width, one_side)| Wanted { text: String::new(), anchor: (x, y), towards: (dx, dy), width, height: 3.0, one_side };
            let placed = place(spots.iter().copied().map(wanted).collect(), &[((-40.0, -30.0), (40.0, 30.0))], 0.5);
            for (spot, label) in spots.iter().zip(&placed) {
                let anchor = (spot.0, spot.1);
                let gap = apart(anchor, label.area.nearest(anchor));
                match label.leader {
                    Some((from, to)) => prop_assert!(from == anchor && to == label.area.nearest(anchor)),
                    None => prop_assert!(gap <= 0.5 + LEADER_FROM && !spot.5, "{gap}"),
                }
            }
        }

        #[test]
        fn spreading_keeps_order_and_pitch(mut places in proptest::collection::vec(0.0_f64..50.0, 0..40)) {
            places.sort_by(f64::total_cmp);
            let out = spread(&places, 3.0);
            prop_assert_eq!(out.len(), places.len());
            for pair in out.windows(2) {
                prop_assert!(pair[1] - pair[0] >= 3.0 - 1e-9);
            }
        }

        #[test]
        fn labels_on_one_spot_all_find_room(count in 1_usize..60) {
            let wanted = (0..count).map(|i| Wanted { text: i.to_string(), anchor: (0.0, 0.0), towards: (0.0, 1.0), width: 9.0, height: 3.0, one_side: false }).collect();
            let placed = place(wanted, &[((-30.0, 0.0), (30.0, 0.0))], 0.5);
            for (i, a) in placed.iter().enumerate() {
                prop_assert!(!a.area.is_hit_by((-30.0, 0.0), (30.0, 0.0)));
                for b in &placed[..i] {
                    prop_assert!(!a.area.meets(&b.area));
                }
            }
        }
    }
}
