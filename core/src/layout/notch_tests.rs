//! What is cut out of panels: with their ends it makes up what they cover.

use super::test_shapes::{bare, outline, panel, shapes};
use super::{EndPart, LaidPlane, Layout, Start};
use crate::record::Calculation;
use crate::roof::{Outline, Point};
use crate::units::{AreaUnit, Length};
use proptest::prelude::*;

/// The area between two lines, in square millimetres.
fn between(lower: &[EndPart], upper: &[EndPart]) -> f64 {
    let ring: Vec<(f64, f64)> =
        lower.iter().flat_map(|e| [e.left, e.right]).chain(upper.iter().rev().flat_map(|e| [e.right, e.left])).map(|p| (p.x.mm(), p.y.mm())).collect();
    ring.iter().zip(ring.iter().cycle().skip(1)).map(|(p, q)| p.0 * q.1 - q.0 * p.1).sum::<f64>() / 2.0
}

fn inches(x: i16, y: i16) -> Point {
    Point::new(Length::inches(x), Length::inches(y))
}

fn laid(outer: Vec<Point>, holes: Vec<Vec<Point>>) -> LaidPlane {
    Layout::new(Outline::new(outer, holes).unwrap(), panel(406_400), Start::Left, bare).unwrap().compute().unwrap()
}

fn places(parts: &[EndPart]) -> Vec<(Point, Point)> {
    parts.iter().map(|e| (e.left, e.right)).collect()
}

#[test]
fn a_curb_over_two_panels_is_a_notch_in_each_and_an_arm_a_notch_beside_it() {
    // A curb of 8 in by 10 in over the seam at 16 in: 4 in of it in each panel.
    let l =
        laid(vec![inches(0, 0), inches(32, 0), inches(32, 100), inches(0, 100)], vec![vec![inches(12, 40), inches(20, 40), inches(20, 50), inches(12, 50)]]);
    let found: Vec<_> = l.panels.iter().map(|p| (places(&p.notches[0].lower), places(&p.notches[0].upper))).collect();
    let square = |a: i16, b: i16| (vec![(inches(a, 40), inches(b, 40))], vec![(inches(a, 50), inches(b, 50))]);
    assert_eq!(found, [square(12, 16), square(16, 20)]);
    // A plane with two arms of 4 in on a strip of 16 in: the gap between them opens upward, so it is a step of the upper end and no notch.
    let two = laid(vec![inches(0, 0), inches(16, 0), inches(16, 90), inches(12, 90), inches(12, 60), inches(4, 60), inches(4, 90), inches(0, 90)], vec![]);
    assert!(two.panels[0].notches.is_empty() && two.panels[0].notched);
    // An arm that reaches beside the panel from above leaves a notch below it.
    let arm = laid(
        vec![
            inches(0, 0),
            inches(16, 0),
            inches(16, 90),
            inches(8, 90),
            inches(8, 30),
            inches(12, 30),
            inches(12, 20),
            inches(4, 20),
            inches(4, 60),
            inches(0, 60),
        ],
        vec![],
    );
    let notch = &arm.panels[0].notches[0];
    assert_eq!((places(&notch.lower), places(&notch.upper)), (vec![(inches(8, 20), inches(12, 20))], vec![(inches(8, 30), inches(12, 30))]));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn ends_and_notches_make_up_what_each_panel_covers(shape in shapes(), coverage in 150_000..900_000_i32) {
        let l = Layout::new(outline(&shape, (0, 0)), panel(coverage), Start::Left, bare).unwrap().compute().unwrap();
        for p in &l.panels {
            let notches: f64 = p.notches.iter().map(|n| between(&n.lower, &n.upper)).sum();
            let drawn = between(&p.lower, &p.upper) - notches;
            // Corners are rounded to 1 pm along metres.
            prop_assert!((drawn - p.covered.get(AreaUnit::SquareMillimetre)).abs() < 1e-3, "{} {drawn} {}", p.strip, p.covered);
            prop_assert!(p.notches.iter().all(|n| between(&n.lower, &n.upper) > 0.0));
        }
    }
}
