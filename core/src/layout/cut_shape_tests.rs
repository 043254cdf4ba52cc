//! Cut shapes: they measure what the panels of the layout measure, and lie in their rectangles.

use super::test_shapes::{by_length, outline, panel, shapes};
use super::{CutShapes, EdgeUse, EndShape, Layout, PanelShape, Start};
use crate::panel::PanelEnd;
use crate::record::Calculation;
use crate::roof::{Edge, Outline, Point};
use crate::units::Length;
use proptest::prelude::*;

fn inches(x: f64, y: f64) -> Point {
    Point::new(Length::from_mm(x * 25.4).unwrap(), Length::from_mm(y * 25.4).unwrap())
}

fn shapes_of(outer: Vec<Point>, holes: Vec<Vec<Point>>, end: impl FnMut(&Edge) -> EdgeUse) -> Vec<PanelShape> {
    CutShapes { layout: Layout::new(Outline::new(outer, holes).unwrap(), panel(406_400), Start::Left, end).unwrap() }.compute().unwrap()
}

/// In millimetres, to a nanometre.
fn near(line: &[Point], expected: &[(f64, f64)]) {
    let found: Vec<(f64, f64)> = line.iter().map(|p| (p.x.mm() / 25.4, p.y.mm() / 25.4)).collect();
    let close = |(a, b): (&(f64, f64), &(f64, f64))| (a.0 - b.0).abs() < 1e-7 && (a.1 - b.1).abs() < 1e-7;
    assert!(found.len() == expected.len() && found.iter().zip(expected).all(close), "{found:?} {expected:?}");
}

#[test]
fn a_panel_under_two_hips_turns_its_cut_its_fold_and_its_trim_where_they_cross() {
    // Hips that rise at 45 degrees to x = 8: a turn-up of 1 in and 2 in of trim, held back by 3 in, are sqrt(2) times that along the seams.
    let hip = PanelEnd::hold_back(Length::inches(3)).with_turn_up(Length::inches(1)).with_field_trim(Length::inches(2));
    let found = shapes_of(vec![inches(0.0, 0.0), inches(16.0, 0.0), inches(16.0, 100.0), inches(8.0, 108.0), inches(0.0, 100.0)], vec![], |e| {
        EdgeUse::End(if e.index == 2 || e.index == 3 { hip.clone() } else { PanelEnd::overhang(Length::inches(1)).with_fold(Length::inches(1)) })
    });
    let s = core::f64::consts::SQRT_2;
    let (up, foot) = (&found[0].upper, 2.0);
    let tent = |beyond: f64| [(0.0, foot + 100.0 + beyond * s), (8.0, foot + 108.0 + beyond * s), (16.0, foot + 100.0 + beyond * s)];
    near(&up.cut, &tent(-2.0));
    near(&up.fold, &tent(-3.0));
    near(&up.trim, &tent(0.0));
    near(&found[0].lower.cut, &[(0.0, 0.0), (16.0, 0.0)]);
    near(&found[0].lower.fold, &[(0.0, 1.0), (16.0, 1.0)]);
    assert!(found[0].lower.trim.is_empty());
}

#[test]
fn what_a_hold_back_leaves_nothing_of_is_cut_away_and_a_curb_is_a_notch_with_its_folds() {
    // A line that rises at 45 degrees from the foot's corner, held back by sqrt(2) in: 2 in along the seams, so metal begins 2 in from the corner.
    let back = PanelEnd::hold_back(Length::from_mm(25.4 * core::f64::consts::SQRT_2).unwrap());
    let found = shapes_of(vec![inches(0.0, 0.0), inches(16.0, 0.0), inches(16.0, 16.0)], vec![], |e| {
        EdgeUse::End(if e.index == 2 { back.clone() } else { PanelEnd::hold_back(Length::ZERO) })
    });
    near(&found[0].upper.cut, &[(2.0, 0.0), (16.0, 14.0)]);
    near(&found[0].lower.cut, &[(2.0, 0.0), (16.0, 0.0)]);

    let curb = vec![inches(4.0, 40.0), inches(12.0, 40.0), inches(12.0, 50.0), inches(4.0, 50.0)];
    let up = PanelEnd::hold_back(Length::inches(1)).with_turn_up(Length::inches(4));
    let found = shapes_of(vec![inches(0.0, 0.0), inches(16.0, 0.0), inches(16.0, 100.0), inches(0.0, 100.0)], vec![curb], |e| {
        EdgeUse::End(if e.ring == 1 { up.clone() } else { PanelEnd::hold_back(Length::ZERO) })
    });
    let notch = &found[0].notches[0];
    // 1 in short of the curb the pan is turned up 4 in: laid flat the metal reaches 3 in past the curb's edge, from both sides.
    near(&notch.lower.fold, &[(4.0, 39.0), (12.0, 39.0)]);
    near(&notch.lower.cut, &[(4.0, 43.0), (12.0, 43.0)]);
    near(&notch.upper.fold, &[(4.0, 51.0), (12.0, 51.0)]);
    near(&notch.upper.cut, &[(4.0, 47.0), (12.0, 47.0)]);
}

#[test]
fn every_fault_is_that_of_the_layout() {
    let outer = vec![inches(0.0, 0.0), inches(16.0, 0.0), inches(16.0, 100.0)];
    let mut layout = Layout::new(Outline::new(outer, vec![]).unwrap(), panel(406_400), Start::Left, |_| EdgeUse::Side).unwrap();
    layout.edges.pop();
    assert!(CutShapes { layout }.compute().unwrap_err().path().starts_with("layout.edges"));
}

fn ends(line: &EndShape) -> (Point, Point) {
    (line.cut[0], line.cut[line.cut.len() - 1])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn shapes_measure_what_the_layout_measures(shape in shapes(), coverage in 250_000..900_000_i32) {
        let layout = Layout::new(outline(&shape, (0, 0)), panel(coverage), Start::Left, by_length).unwrap();
        let Ok(laid) = layout.compute() else { return Ok(()) };
        let input = CutShapes { layout };
        let found = input.compute().unwrap();
        prop_assert_eq!(&input.explain().unwrap().0, &found);
        prop_assert_eq!(found.len(), laid.panels.len());
        let close = |a: Length, b: Length| (a.pm() - b.pm()).abs() <= 1000;
        for (s, p) in found.iter().zip(&laid.panels) {
            prop_assert_eq!((s.strip, s.run, s.width), (p.strip, p.run, p.width));
            let (low, high) = (ends(&s.lower), ends(&s.upper));
            // Where the metal begins and ends at the panel's sides it is as long there as its seams.
            for (at, a, b, side) in [(Length::ZERO, low.0, high.0, p.left_length), (s.width, low.1, high.1, p.right_length)] {
                if a.x == at && b.x == at && let Some(side) = side {
                    prop_assert!(close((b.y - a.y).length().unwrap(), side), "{s:?} {p:?}");
                }
            }
            let all = [&s.lower, &s.upper].into_iter().flat_map(|e| e.cut.iter().chain(&e.trim));
            for q in all {
                prop_assert!(q.x >= Length::ZERO && q.x <= s.width && q.y >= Length::from_pm(-1000) && q.y.pm() <= s.length.pm() + 1000, "{s:?}");
            }
            // From left to right.
            for line in [&s.lower, &s.upper].into_iter().flat_map(|e| [&e.cut, &e.fold, &e.trim]) {
                prop_assert!(line.iter().zip(line.iter().skip(1)).all(|(a, b)| a.x <= b.x), "{line:?}");
            }
            if s.lower.cut.iter().chain(&s.upper.cut).all(|q| q.x == Length::ZERO || q.x == s.width) && p.lower.len() == 1 && p.upper.len() == 1 {
                let (foot, head) = (low.0.y.min(low.1.y), high.0.y.max(high.1.y));
                prop_assert!(close((head - foot).length().unwrap(), p.blank), "{s:?} {p:?}");
            }
        }
    }
}
