//! Panels broken across a plane: lengths by hand, areas as without the break, and what cannot be broken.

use super::test_shapes::{bare, outline, panel, shapes};
use super::{EdgeUse, LaidPlane, LayDirection, Layout, ListChoices, PanelBreak, PanelList, Start};
use crate::error::ErrorKind;
use crate::panel::PanelEnd;
use crate::record::Calculation;
use crate::roof::{Outline, Point};
use crate::units::{AreaUnit, Length};
use proptest::prelude::*;

fn inches(x: i16, y: i16) -> Point {
    Point::new(Length::inches(x), Length::inches(y))
}

fn parted(at: Length, from: Length, to: Length) -> PanelBreak {
    PanelBreak { at, from, to, below: PanelEnd::hold_back(Length::ZERO), above: PanelEnd::overhang(Length::inches(8)) }
}

fn lengths(laid: &LaidPlane) -> Vec<(usize, usize, Length)> {
    laid.panels.iter().map(|p| (p.strip, p.run, p.finished)).collect()
}

/// A roof of 4 panels of 16 in and 100 in with a curb from 20 in to 44 in across; behind it a cricket whose valleys climb at 45 degrees in the plane.
/// The panels stand 3 in back from the valleys, square to them, with a fold of 1 in; the upper pieces hang 8 in over the break at 40 in.
fn beside_a_curb() -> Layout {
    let hole = vec![inches(20, 20), inches(44, 20), inches(44, 40), inches(32, 52), inches(20, 40)];
    let roof = Outline::new(vec![inches(0, 0), inches(64, 0), inches(64, 100), inches(0, 100)], vec![hole]).unwrap();
    Layout::new(roof, panel(406_400), Start::Left, |e| {
        if e.from.x == e.to.x {
            EdgeUse::Side
        } else if e.from.y == e.to.y {
            EdgeUse::End(PanelEnd::hold_back(Length::ZERO))
        } else {
            EdgeUse::End(PanelEnd::hold_back(Length::inches(3)).with_fold(Length::inches(1)))
        }
    })
    .unwrap()
}

#[test]
fn panels_beside_a_run_out_are_two_and_the_upper_keep_to_the_valley() {
    let breaks = vec![parted(Length::inches(40), Length::inches(44), Length::inches(46))];
    let l = beside_a_curb().with_breaks(breaks).compute().unwrap();
    // The third strip lies from 32 in to 48 in: below the curb, beside it in front of the break, and behind it from the valley and the break up.
    let third: Vec<_> = l.panels.iter().filter(|p| p.strip == 2).collect();
    assert_eq!(third.len(), 2);
    assert_eq!((third[0].finished, third[0].notched), (Length::inches(40), true));
    let lines: Vec<usize> = third[1].lower.iter().map(|e| e.edge).collect();
    assert_eq!((lines, third[1].lower[1].left, third[1].lower[1].right), (vec![6, 10], inches(44, 40), inches(48, 40)));
    // So short a break ends before the valley's line is 8 in below it: a step, and the whole overhang beside it.
    assert_eq!(third[1].finished, Length::inches(68));
    // Without the break they are one.
    assert_eq!(beside_a_curb().compute().unwrap().panels.iter().filter(|p| p.strip == 2).count(), 1);
    // A break as far as the fourth strip: there its upper piece keeps to the valley's line until that is 8 in below the break, at 48 + 2 sqrt(2) in across.
    let wide = beside_a_curb().with_breaks(vec![parted(Length::inches(40), Length::inches(44), Length::inches(49))]).compute().unwrap();
    let fourth: Vec<_> = wide.panels.iter().filter(|p| p.strip == 3).collect();
    assert_eq!(fourth.iter().map(|p| p.finished).collect::<Vec<_>>(), [Length::inches(40), Length::inches(68)]);
    // At 48 in across the nose lies (3 - 1) in * sqrt(2) over the valley's line, which is 36 in up there.
    let at = 36.0 + 2.0 * core::f64::consts::SQRT_2;
    assert!((fourth[1].left_length.unwrap().mm() - (100.0 - at) * 25.4).abs() < 1e-6);
    assert!((wide.covered.get(AreaUnit::SquareInch) - (64.0 * 100.0 - 24.0 * 20.0 - 12.0 * 12.0)).abs() < 1e-6);
    // The list has a piece of each, and the shapes the same runs.
    let layout = beside_a_curb().with_breaks(vec![parted(Length::inches(40), Length::inches(44), Length::inches(49))]);
    let shapes = super::CutShapes { layout: layout.clone() }.compute().unwrap();
    assert_eq!(shapes.len(), wide.panels.len());
    let list = PanelList { layout, choices: ListChoices::laid(LayDirection::LeftToRight) }.compute().unwrap();
    assert_eq!(list.pieces.len(), wide.panels.len());
}

#[test]
fn a_break_that_does_not_part_is_refused() {
    // A hole at the break's height within the panel's width: the panel goes on at its other side.
    let hole = vec![inches(20, 38), inches(26, 38), inches(26, 44), inches(20, 44)];
    let roof = Outline::new(vec![inches(0, 0), inches(64, 0), inches(64, 100), inches(0, 100)], vec![hole]).unwrap();
    let layout = |breaks| Layout::new(roof.clone(), panel(406_400), Start::Left, bare).unwrap().with_breaks(breaks);
    let e = layout(vec![parted(Length::inches(40), Length::inches(27), Length::inches(28))]).compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Impossible, "breaks[0]", Some("strips[1].runs[0]")), "{e}");
    assert!(e.cure().unwrap().contains("start or datum"));
    // Broken on both sides of the hole it is in two.
    let both = [(27, 28), (17, 18)].map(|(a, b)| parted(Length::inches(40), Length::inches(a), Length::inches(b)));
    assert_eq!(lengths(&layout(both.to_vec()).compute().unwrap()).iter().filter(|p| p.0 == 1).count(), 2);
    let e = layout(vec![parted(Length::inches(120), Length::inches(27), Length::inches(28))]).compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "breaks[0]"));
    let mut wrong = vec![parted(Length::inches(40), Length::inches(28), Length::inches(28))];
    wrong[0].below = PanelEnd::hold_back(Length::inches(-1));
    let e = layout(wrong).check().unwrap_err();
    assert_eq!((e.path(), e.others().len()), ("breaks[0].to", 1), "{e}");
}

#[test]
fn two_breaks_at_one_height_part_a_panel_once() {
    let roof = Outline::new(vec![inches(0, 0), inches(64, 0), inches(64, 100), inches(0, 100)], vec![]).unwrap();
    let breaks = [(17, 18), (20, 40), (30, 31)].map(|(a, b)| parted(Length::inches(40), Length::inches(a), Length::inches(b)));
    let l = Layout::new(roof, panel(406_400), Start::Left, bare).unwrap().with_breaks(breaks.to_vec()).compute().unwrap();
    let both = |strip| vec![(strip, 0, Length::inches(40)), (strip, 1, Length::inches(68))];
    assert_eq!(lengths(&l), [vec![(0, 0, Length::inches(100))], both(1), both(2), vec![(3, 0, Length::inches(100))]].concat());
}

proptest! {
    /// Whatever the plane, a break changes no area, and no piece reaches across it between the sides of the panels that it breaks.
    #[test]
    fn a_break_covers_what_was_covered(shape in shapes(), at in -6000..6000_i32, from in -6000..6000_i32, long in 1..4000_i32) {
        let whole = Layout::new(outline(&shape, (0, 0)), panel(406_400), Start::Left, bare).unwrap();
        let (at, from, to) = (Length::micrometres(at * 1000), Length::micrometres(from * 1000), Length::micrometres((from + long) * 1000));
        let b = PanelBreak { above: PanelEnd::hold_back(Length::ZERO), ..parted(at, from, to) };
        let before = whole.compute().unwrap();
        match whole.with_breaks(vec![b]).compute() {
            Ok(after) => {
                let sum = |l: &LaidPlane| l.covered.get(AreaUnit::SquareMillimetre) + l.uncovered.get(AreaUnit::SquareMillimetre);
                prop_assert!((sum(&before) - sum(&after)).abs() < 1e-3);
                prop_assert!(after.panels.len() > before.panels.len());
                let below = after.panels.iter().flat_map(|p| &p.upper).filter(|e| e.left.y == at && e.right.y == at).map(|e| (e.left.x, e.right.x));
                let above = after.panels.iter().flat_map(|p| &p.lower).filter(|e| e.left.y == at && e.right.y == at).map(|e| (e.left.x, e.right.x));
                let sorted = |mut of: Vec<(Length, Length)>| {
                    of.sort_unstable();
                    of
                };
                prop_assert_eq!(sorted(below.collect()), sorted(above.collect()));
            }
            Err(e) => prop_assert!(matches!(e.kind(), ErrorKind::Impossible | ErrorKind::OutOfRange) && e.path() == "breaks[0]", "{}", e),
        }
    }
}
