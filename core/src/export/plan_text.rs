//! Where the text of a plan goes: in what it names where there is room, otherwise beside it at the end of a leader; never on other text.
//!
//! Everything here is on paper, in millimetres, y downwards.

use super::labels::Area;
use super::plan_box::{Turned, bounds, mean};
use super::svg::Point;
use crate::num;

/// A text of its size in its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spot {
    pub(super) place: Turned,
    pub(super) size: f64,
}

/// A panel and the text that it should hold.
#[derive(Debug, Clone)]
pub(super) struct Slot {
    pub(super) ring: Vec<Point>,
    bounds: Area,
    /// How many points of the ring are its lower end; they come first.
    lower: usize,
    pub(super) text: String,
    pub(super) turned: f64,
    /// Where its text lies within it, as the sheet is now.
    pub(super) spot: Option<Spot>,
    /// Whether its text stands beside it.
    served: bool,
}

impl Slot {
    pub(super) fn new(ring: Vec<Point>, lower: usize, text: String, turned: f64) -> Slot {
        Slot { bounds: bounds(&ring), ring, lower, text, turned, spot: None, served: false }
    }

    /// Points up its middle. The mean of the corners, where a three-cornered panel is roomiest, is the last.
    pub(super) fn places(&self) -> [Point; 10] {
        let (lower, upper) = self.ring.split_at(self.lower.min(self.ring.len()));
        let (foot, head) = (mean(lower), mean(upper));
        let up = |t: f64| (foot.0 + (head.0 - foot.0) * t, foot.1 + (head.1 - foot.1) * t);
        [up(0.22), up(0.3), up(0.4), up(0.6), up(0.7), up(0.8), up(0.5), up(0.14), up(0.88), self.middle()]
    }

    pub(super) fn middle(&self) -> Point {
        mean(&self.ring)
    }

    /// Where its leader may start.
    fn start(&self) -> Turned {
        Turned::new(self.middle(), 2.0, 2.0, 0.0)
    }

    fn waits(&self) -> bool {
        self.spot.is_none() && !self.served
    }

    /// Where the text lies within the panel, clear of `others` and of the lines round its plane: the first place from the foot up, at the largest size that
    /// has one.
    fn fit<'a>(&self, outer: &[Point], holes: &[Vec<Point>], others: impl Iterator<Item = &'a Turned>) -> Option<Spot> {
        const SIZES: [f64; 4] = [2.3, 2.0, 1.8, 1.6];
        let places = self.places();
        let others: Vec<&Turned> = others.filter(|o| o.bounds().meets(&self.bounds)).collect();
        SIZES.into_iter().find_map(|size| {
            let at_foot = Turned::text((0.0, 0.0), &self.text, size, self.turned);
            let is_off_lines = |p: &Turned| {
                let p = p.grown(STROKE_ROOM);
                p.is_off_the_rim_of(outer) && holes.iter().all(|h| p.lies_outside(h))
            };
            let is_clear = |p: &Turned| p.lies_in(&self.ring) && others.iter().all(|o| !o.meets(p)) && is_off_lines(p);
            places.into_iter().map(|at| at_foot.moved(at)).find(is_clear).map(|place| Spot { place, size })
        })
    }
}

/// A text in its place.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Text {
    pub(super) text: String,
    pub(super) size: f64,
    pub(super) place: Turned,
    /// From what it names to the text, where it stands off.
    pub(super) leader: Option<(Point, Point)>,
}

/// What a sheet shows of one plane.
#[derive(Debug, Clone)]
pub(super) struct Field {
    pub(super) outer: Vec<Point>,
    bounds: Area,
    pub(super) holes: Vec<Vec<Point>>,
    /// What is cut out of panels that go on beside it.
    pub(super) notches: Vec<Vec<Point>>,
    pub(super) slots: Vec<Slot>,
}

impl Field {
    pub(super) fn new(outer: Vec<Point>, holes: Vec<Vec<Point>>, notches: Vec<Vec<Point>>, mut slots: Vec<Slot>) -> Field {
        for slot in &mut slots {
            slot.spot = slot.fit(&outer, &holes, [].iter());
        }
        Field { bounds: bounds(&outer), outer, holes, notches, slots }
    }
}

/// A text that is to stand beside what it names.
#[derive(Debug, Clone, Copy)]
pub(super) struct Beside<'a> {
    pub(super) text: &'a str,
    pub(super) size: f64,
    /// Width and height of its box.
    pub(super) extent: Point,
    /// The direction in which it would rather stand, in degrees clockwise from the right.
    pub(super) towards: f64,
}

impl<'a> Beside<'a> {
    pub(super) fn new(text: &'a str, size: f64, towards: f64) -> Beside<'a> {
        let half = Turned::text((0.0, 0.0), text, size, 0.0).half;
        Beside { text, size, extent: (2.0 * half.0, 2.0 * half.1), towards }
    }
}

/// What a box does to the text of panels.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub(super) struct Harm {
    pub(super) lost: usize,
    pub(super) smaller: usize,
}

/// What a text that stands off, and its leader, keep clear of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Care {
    /// Of every text, and of the last place that a panel has for its own.
    Harmless,
    /// Of the texts that stand already.
    Free,
    /// As free, but the leader may pass under them.
    Under,
}

/// A sheet that fills up with text. What stands on it makes the text of panels move, as long as they have room.
#[derive(Debug, Clone)]
pub(super) struct Sheet {
    pub(super) fields: Vec<Field>,
    /// Texts and leaders, but not the text within panels.
    taken: Vec<Turned>,
}

/// Between text and the middle of a line.
const LINE_ROOM: f64 = 0.5;
/// Between a panel's text, whose box has a margin of its own, and the middle of a line round its plane.
const STROKE_ROOM: f64 = 0.25;
/// Round a text that stands off.
const GAP: f64 = 0.4;
/// Room on both sides of a leader together.
const LEADER_ROOM: f64 = 0.6;
/// A text this near to a panel that waits for one is in the way of its leader.
const CROWDED: f64 = 4.0;

impl Sheet {
    pub(super) fn new(fields: Vec<Field>) -> Sheet {
        Sheet { fields, taken: Vec::new() }
    }

    pub(super) fn take(&mut self, text: &Text) {
        let leader = text.leader.map(|(from, to)| Turned::along(from, to, LEADER_ROOM));
        // What stands off has nothing around it to part it from other text.
        let place = if leader.is_some() { text.place.grown(GAP) } else { text.place };
        for new in core::iter::once(place).chain(leader) {
            self.taken.push(new);
            for Field { outer, holes, slots, .. } in self.fields.iter_mut().filter(|f| f.bounds.meets(new.bounds())) {
                for slot in slots.iter_mut().filter(|s| s.spot.is_some_and(|t| t.place.meets(&new))) {
                    slot.spot = slot.fit(outer, holes, self.taken.iter());
                }
            }
        }
    }

    /// The next panel that has no room for its text, by plane; from now on its text counts as beside it.
    pub(super) fn next_waiting(&mut self) -> Option<(usize, Slot)> {
        let (number, slot) = self.fields.iter_mut().enumerate().find_map(|(number, f)| f.slots.iter_mut().find(|s| s.waits()).map(|s| (number, s)))?;
        slot.served = true;
        Some((number, slot.clone()))
    }

    pub(super) fn taken(&self) -> &[Turned] {
        &self.taken
    }

    pub(super) fn is_free(&self, place: &Turned) -> bool {
        self.taken.iter().all(|t| !t.meets(place))
    }

    /// Whether a box lies on no plane, and clear of the lines round them.
    pub(super) fn is_outside(&self, place: &Turned) -> bool {
        let place = place.grown(LINE_ROOM);
        self.fields.iter().all(|f| !f.bounds.meets(place.bounds()) || place.lies_outside(&f.outer))
    }

    /// Whether a box lies within a plane, off its holes and clear of the lines round it.
    pub(super) fn is_inside(&self, field: usize, place: &Turned) -> bool {
        let place = place.grown(LINE_ROOM);
        self.fields.get(field).is_some_and(|f| f.bounds.meets(place.bounds()) && place.lies_in(&f.outer) && f.holes.iter().all(|h| place.lies_outside(h)))
    }

    /// How many panels would have no room for their text on account of this box, and how many only for smaller text.
    /// Those that wait for a text beside them count as without room where it covers their middles.
    pub(super) fn harm(&self, place: &Turned) -> Harm {
        let mut harm = Harm::default();
        for field in self.fields.iter().filter(|f| f.bounds.meets(place.bounds())) {
            for slot in field.slots.iter().filter(|s| s.bounds.meets(place.bounds())) {
                match slot.spot {
                    Some(now) if now.place.meets(place) => match slot.fit(&field.outer, &field.holes, self.taken.iter().chain([place])) {
                        Some(then) => harm.smaller += usize::from(then.size < now.size),
                        None => harm.lost += 1,
                    },
                    None if slot.waits() && slot.start().meets(place) => harm.lost += 1,
                    _ => {}
                }
            }
        }
        harm
    }

    /// How many panels that wait for a text beside them this box stands close to, in the way of their leaders.
    pub(super) fn crowds(&self, place: &Turned) -> usize {
        let near = place.grown(CROWDED);
        let slots = self.fields.iter().filter(|f| f.bounds.meets(near.bounds())).flat_map(|f| &f.slots);
        slots.filter(|s| s.waits() && s.bounds.meets(near.bounds()) && s.start().meets(&near)).count()
    }

    /// A place for a text near what it names, with a leader: off the roof if that is near, else between other text, without taking the
    /// place of a panel's text if that can be.
    pub(super) fn stand_off(&self, anchor: Point, what: &Beside<'_>) -> Option<Text> {
        [Care::Harmless, Care::Free].into_iter().find_map(|care| self.stand_within(anchor, what, f64::INFINITY, care))
    }

    /// As [`Sheet::stand_off`], about no farther than `within`.
    pub(super) fn stand_within(&self, anchor: Point, what: &Beside<'_>, within: f64, care: Care) -> Option<Text> {
        let &Beside { text, size, extent: (width, height), towards } = what;
        const FAR: u32 = 18;
        const NEAR: u32 = 9;
        const TURNS: [f64; 16] = [0.0, 22.5, -22.5, 45.0, -45.0, 67.5, -67.5, 90.0, -90.0, 112.5, -112.5, 135.0, -135.0, 157.5, -157.5, 180.0];
        let reach = 2.0 + 1.5 * f64::from(FAR);
        let around = Area::about(anchor, 2.0 * (reach + width), 2.0 * (reach + height));
        let taken: Vec<&Turned> = self.taken.iter().filter(|t| t.bounds().meets(&around)).collect();
        // No leader can start under other text.
        let start = Turned::new(anchor, 0.0, 0.0, 0.0);
        if care != Care::Under && taken.iter().any(|t| t.meets(&start)) {
            return None;
        }
        let ways = TURNS.map(|turn| (num::cos_deg(towards + turn), num::sin_deg(towards + turn)));
        let upright = Turned::new(anchor, width, height, 0.0);
        for (outside, rings) in [(true, NEAR), (false, FAR)] {
            let offs = (0..rings).map(|ring| 2.0 + 1.5 * f64::from(ring)).take_while(|off| *off <= within);
            for (off, way) in offs.flat_map(|off| ways.map(|way| (off, way))) {
                let off = off + way.0.abs() * width / 2.0 + way.1.abs() * height / 2.0;
                let place = upright.moved((anchor.0 + way.0 * off, anchor.1 + way.1 * off));
                let room = place.grown(GAP);
                if taken.iter().any(|t| t.meets(&room)) || !(self.is_outside(&place) || !outside && (0..self.fields.len()).any(|f| self.is_inside(f, &place))) {
                    continue;
                }
                let leader = (anchor, place.nearest(anchor));
                let line = Turned::along(leader.0, leader.1, LEADER_ROOM);
                let clear = care == Care::Under || taken.iter().all(|t| !t.meets(&line));
                if clear && (care != Care::Harmless || self.harm(&room).lost + self.harm(&line).lost == 0) {
                    return Some(Text { text: text.to_owned(), size, place, leader: Some(leader) });
                }
            }
        }
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(side: f64) -> Vec<Point> {
        vec![(0.0, 0.0), (side, 0.0), (side, side), (0.0, side)]
    }

    fn slot(ring: &[Point], text: &str, turned: f64) -> Slot {
        Slot::new(ring.to_vec(), 2, text.into(), turned)
    }

    #[test]
    fn a_text_lies_within_its_panel_and_off_the_name() {
        let tall = slot(&[(0.0, 30.0), (5.0, 30.0), (5.0, 0.0), (0.0, 0.0)], "7 B", -90.0);
        let free = tall.fit(&[], &[], [].iter()).unwrap();
        assert!((free.place.at.0 - 2.5).abs() < 1e-12 && (free.place.at.1 - 23.4).abs() < 1e-12 && (free.size - 2.3).abs() < 1e-12);
        // A name over the foot sends the text up the panel.
        let name = Turned::new((2.5, 22.0), 20.0, 12.0, 0.0);
        let moved = tall.fit(&[], &[], [name].iter()).unwrap();
        assert!(moved.place.at.1 < 16.0 && !moved.place.meets(&name), "{moved:?}");
        // So does a hole.
        let hole = vec![(1.0, 16.0), (4.0, 16.0), (4.0, 28.0), (1.0, 28.0)];
        assert!(tall.fit(&[], &[hole], [].iter()).unwrap().place.at.1 < 14.0);
        // Along a line of its plane it keeps off the line's stroke.
        let low = slot(&[(0.0, 2.6), (20.0, 2.6), (20.0, 0.0), (0.0, 0.0)], "7 B", 0.0);
        let beside = |y: f64| vec![(-30.0, y), (50.0, y), (50.0, y + 90.0), (-30.0, y + 90.0)];
        let half = low.fit(&[], &[], [].iter()).unwrap().place.half.1;
        assert!(low.fit(&beside(1.3 - half - 0.2), &[], [].iter()).unwrap().size < 2.3);
        assert!(low.fit(&beside(1.3 - half - 0.3), &[], [].iter()).unwrap().size > 2.2);
        // A sliver has no room.
        assert!(slot(&[(0.0, 30.0), (1.0, 30.0), (1.0, 0.0), (0.0, 0.0)], "7 B", -90.0).fit(&[], &[], [].iter()).is_none());
    }

    #[test]
    fn a_text_without_room_stands_off_the_roof_or_between_other_text() {
        let mut sheet = Sheet::new(vec![Field::new(square(60.0), vec![], vec![], vec![])]);
        let near_the_rim = sheet.stand_off((59.8, 30.0), &Beside::new("1 A", 1.8, 180.0)).unwrap();
        assert!(sheet.is_outside(&near_the_rim.place), "{near_the_rim:?}");
        let inside = sheet.stand_off((30.0, 30.0), &Beside::new("2 A", 1.8, 0.0)).unwrap();
        assert!(sheet.is_inside(0, &inside.place) && inside.place.at.0 > 30.0, "{inside:?}");
        sheet.take(&inside);
        let next = sheet.stand_off((30.0, 30.5), &Beside::new("3 A", 1.8, 0.0)).unwrap();
        assert!(!next.place.meets(&inside.place));
    }

    #[test]
    fn harm_counts_the_panels_that_lose_their_place() {
        let strip = |x: f64| slot(&[(x, 8.0), (x + 4.0, 8.0), (x + 4.0, 0.0), (x, 0.0)], "7 B", -90.0);
        let slots: Vec<Slot> = (0..5_u32).map(|i| strip(4.0 * f64::from(i))).collect();
        let sheet = Sheet::new(vec![Field::new(vec![(0.0, 8.0), (20.0, 8.0), (20.0, 0.0), (0.0, 0.0)], vec![], vec![], slots)]);
        // A box in the middle leaves no room below it or above.
        assert_eq!(sheet.harm(&Turned::new((8.0, 4.0), 7.0, 4.0, 0.0)).lost, 2);
        assert_eq!(sheet.harm(&Turned::new((8.0, -9.0), 7.0, 4.0, 0.0)), Harm::default());
    }
}
