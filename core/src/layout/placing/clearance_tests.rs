use super::super::{EdgeUse, Layout, NarrowChoice, NarrowLimit, Start, cautions};
use super::clear_search::{Circle, Wave};
use super::{ClearOf, Obstacle, Prefer, SeamClearance, SeamShift};
use crate::error::ErrorKind;
use crate::panel::{Panel, PanelEnd, Seam};
use crate::record::Calculation;
use crate::roof::{Outline, Point};
use crate::units::Length;
use proptest::prelude::*;

fn inch(v: i16) -> Length {
    Length::inches(v)
}

fn p(x: i16, y: i16) -> Point {
    Point::new(inch(x), inch(y))
}

fn layout(outer: Vec<Point>) -> Layout {
    let panel = Panel::new(inch(16), inch(1), Seam::DoubleLock { lock: Length::inches_64(16) }).unwrap();
    Layout::new(Outline::new(outer, vec![]).unwrap(), panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO))).unwrap()
}

fn box_of(width: i16) -> Layout {
    layout(vec![p(0, 0), p(width, 0), p(width, 100), p(0, 100)])
}

fn point(name: &str, x: i16, clearance: i16) -> ClearOf {
    ClearOf { name: name.to_owned(), what: Obstacle::Point(p(x, 10)), clearance: inch(clearance) }
}

fn shifted(layout: Layout, clear_of: Vec<ClearOf>, prefer: Prefer) -> SeamShift {
    SeamClearance { layout, clear_of, prefer }.compute().unwrap()
}

#[test]
fn each_preference_has_its_shift() {
    // Seams at 0, 16, 32, 48; something at 33 wants 3 in: seams may lie from 4 in to 14 in beyond those asked for.
    let thing = || vec![point("foot", 33, 3)];
    let near = shifted(box_of(60), thing(), Prefer::Nearest);
    assert_eq!((near.shift, near.clear, near.distances[0].spare), (inch(-2), true, Length::ZERO));
    assert_eq!(near.distances[0].seam, inch(30));
    assert_eq!(near.ranges.iter().map(|r| (r.from, r.to)).collect::<Vec<_>>(), [(inch(4), inch(14))]);
    let clearest = shifted(box_of(60), thing(), Prefer::Clearest);
    assert_eq!((clearest.shift, clearest.distances[0].distance), (inch(-7), inch(8)));
    // 60 in leaves 12 in beside three panels: equal ends of 14 in are the widest, and a seam at 14 in is 1 in short of 33 in less 16 in less 3 in.
    let widest = shifted(box_of(60), thing(), Prefer::WidestEnds);
    assert_eq!((widest.shift, widest.left_end, widest.right_end), (inch(-2), inch(14), inch(14)));
    // All of them take four strips but those that leave five.
    let coil = shifted(box_of(60), thing(), Prefer::LeastCoil);
    assert_eq!((coil.found.panels, coil.asked.unwrap().panels), (4, 4));
}

#[test]
fn nothing_to_keep_clear_of_moves_nothing() {
    let found = shifted(box_of(64), vec![], Prefer::Nearest);
    assert_eq!((found.shift, found.clear, found.ranges.len()), (Length::ZERO, true, 1));
    assert_eq!(found.asked, Some(found.found));
}

#[test]
fn the_least_coil_is_found_without_trying_them_all() {
    // A gable end of 80 in: five panels, of which one has the peak in its middle, take the least.
    let gable = layout(vec![p(0, 0), p(80, 0), p(80, 20), p(40, 100), p(0, 20)]);
    let gable = Layout { start: Start::Datum(inch(3)), ..gable };
    let found = shifted(gable.clone(), vec![], Prefer::LeastCoil);
    let brute = (0..160).map(|k| {
        let start = Start::Datum(Length::inches_64(64 * k / 10));
        Layout { start, ..gable.clone() }.compute().unwrap().coil.length
    });
    assert!(brute.min().unwrap() >= found.found.coil, "{}", found.found.coil);
    assert_eq!((found.shift, found.found.coil, found.found.panels), (inch(-3), inch(372), 5));
    assert!(found.found.coil < found.asked.unwrap().coil);
}

#[test]
fn a_least_end_holds_where_it_can() {
    // Nearest would be 2 in to the left, which leaves a panel of 14 in at the left and, of 66 in, 4 in at the right.
    let narrow = |least| NarrowLimit { least: inch(least), choice: NarrowChoice::Report };
    let free = shifted(box_of(66), vec![point("foot", 33, 3)], Prefer::Nearest);
    assert_eq!((free.shift, free.right_end), (inch(-2), inch(4)));
    let held = shifted(box_of(66).with_narrow(narrow(6)), vec![point("foot", 33, 3)], Prefer::Nearest);
    assert_eq!((held.shift, held.left_end, held.right_end), (inch(-4), inch(12), inch(6)));
}

#[test]
fn what_cannot_all_be_kept_clear_of_falls_short_least() {
    // Points at 0, 5 and 10 in of every 16 want 3 in: the widest room, between 10 and 16, is 6 in wide, but 0 and 5 leave 5 in.
    let found = shifted(box_of(64), vec![point("a", 16, 4), point("b", 21, 4), point("c", 26, 4)], Prefer::Nearest);
    assert!(!found.clear && found.ranges.is_empty());
    assert_eq!((found.shift, found.distances.iter().map(|d| d.spare).collect::<Vec<_>>()), (inch(-3), vec![inch(-1), inch(4), inch(-1)]));
    assert_eq!(found.cautions.iter().filter(|c| c.code() == cautions::SEAM_NOT_CLEAR).count(), 2);
    assert_eq!(found.cautions[0].subject(), "clear_of[0]");
}

#[test]
fn bad_input_is_named() {
    let e = SeamClearance {
        layout: box_of(64),
        clear_of: vec![
            point("far", 90, 3),
            point("vast", 20, 9),
            ClearOf { name: "pipe".into(), what: Obstacle::Round { centre: p(9, 9), diameter: Length::ZERO }, clearance: inch(-1) },
        ],
        prefer: Prefer::Nearest,
    }
    .compute()
    .unwrap_err();
    let all: Vec<_> = core::iter::once(&e).chain(e.others()).map(|e| (e.kind(), e.path())).collect();
    assert_eq!(
        all,
        [
            (ErrorKind::OutOfRange, "clear_of[0].what"),
            (ErrorKind::Impossible, "clear_of[1].clearance"),
            (ErrorKind::OutOfRange, "clear_of[2].clearance"),
            (ErrorKind::OutOfRange, "clear_of[2].what.diameter"),
        ]
    );
    let many = SeamClearance { layout: box_of(64), clear_of: vec![point("a", 1, 1); 201], prefer: Prefer::Nearest };
    assert_eq!(many.compute().unwrap_err().kind(), ErrorKind::TooLarge);
}

#[test]
fn starts_share_out_what_is_left() {
    let widths = |width: i16, start: Start| -> Vec<i64> {
        let l = Layout { start, ..box_of(width) }.compute().unwrap();
        l.panels.iter().map(|p| p.width.pm() / Length::inches_64(32).pm()).collect()
    };
    // In half inches. 68 in is four panels and 4 in; equal ends take three panels and 10 in twice.
    assert_eq!(widths(68, Start::EqualRips), [20, 32, 32, 32, 20]);
    assert_eq!(widths(64, Start::EqualRips), [32, 32, 32, 32]);
    assert_eq!(widths(13, Start::EqualRips), [26]);
    assert_eq!(widths(17, Start::EqualRips), [17, 17]);
    assert_eq!(widths(68, Start::LeftUnlessNarrow(inch(4))), [32, 32, 32, 32, 8]);
    assert_eq!(widths(68, Start::LeftUnlessNarrow(inch(5))), [20, 32, 32, 32, 20]);
    assert_eq!(widths(68, Start::RightUnlessNarrow(inch(4))), [8, 32, 32, 32, 32]);
    assert_eq!(widths(68, Start::RightUnlessNarrow(inch(5))), [20, 32, 32, 32, 20]);
    let e = Layout { start: Start::LeftUnlessNarrow(inch(11)), ..box_of(68) }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.allowed()), (ErrorKind::Impossible, "start", Some("at most 254 mm")));
    assert_eq!(Layout { start: Start::LeftUnlessNarrow(Length::ZERO), ..box_of(68) }.compute().unwrap_err().kind(), ErrorKind::OutOfRange);
}

/// The distance from a seam line to a thing, by trying them all.
fn slowly(c: &Circle, w: &Wave, shift: i128) -> i128 {
    let seams = (-30..=30).map(|k| c.asked + shift + k * c.coverage);
    seams
        .map(|s| {
            if s < w.left {
                w.left - s
            } else if s > w.right {
                s - w.right
            } else {
                -(s - w.left).min(w.right - s)
            }
        })
        .min()
        .unwrap()
}

fn circles() -> impl Strategy<Value = Circle> {
    (20..90_i128, -200..200_i128, 1..5_usize, 10..300_i128).prop_flat_map(|(coverage, asked, n, width)| {
        let wave = (0..=width, 0..coverage / 3, 0..coverage / 3).prop_map(|(left, wide, clearance)| Wave { left, right: left + wide, clearance });
        prop::collection::vec(wave, n).prop_map(move |waves| Circle { coverage, asked, waves, low: 0, high: width })
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// Every whole shift of a small circle is tried, which the search does not.
    #[test]
    fn the_critical_shifts_hold_every_optimum(c in circles()) {
        let all: Vec<i128> = (0..c.coverage).map(|t| c.turned(t)).collect();
        for &t in &all {
            let worst = c.waves.iter().map(|w| slowly(&c, w, t) - w.clearance).min();
            prop_assert_eq!(c.worst(t), worst);
        }
        let tried: Vec<i128> = c.edges().chain(c.balances()).chain(c.end_shifts(None)).chain([0]).collect();
        let clear = |ts: &[i128]| ts.iter().copied().filter(|&t| c.is_clear(t)).collect::<Vec<_>>();
        prop_assert_eq!(clear(&tried).iter().map(|t| t.abs()).min(), clear(&all).iter().map(|t| t.abs()).min());
        prop_assert_eq!(tried.iter().map(|&t| c.worst(t)).max(), all.iter().map(|&t| c.worst(t)).max());
        let narrower = |t: i128| c.ends(t).0.min(c.ends(t).1);
        prop_assert_eq!(clear(&tried).iter().map(|&t| narrower(t)).max(), clear(&all).iter().map(|&t| narrower(t)).max());
    }

    #[test]
    fn the_ranges_are_what_is_clear(c in circles()) {
        let ranges = c.ranges();
        for t in 0..c.coverage {
            let within = ranges.iter().any(|&(from, to)| (from <= t && t <= to) || (from <= t + c.coverage && t + c.coverage <= to));
            prop_assert_eq!(within, c.is_clear(t), "{} in {:?}", t, ranges);
        }
        prop_assert!(ranges.windows(2).all(|w| w[0].1 < w[1].0));
    }
}
