use super::{Outline, Point};
use crate::error::ErrorKind;
use crate::units::{AreaUnit, Length};
use proptest::prelude::*;

fn p(x: i16, y: i16) -> Point {
    Point::new(Length::feet(x), Length::feet(y))
}

fn square(x: i16, y: i16, side: i16) -> Vec<Point> {
    vec![p(x, y), p(x + side, y), p(x + side, y + side), p(x, y + side)]
}

fn paths(e: &crate::error::Error) -> Vec<String> {
    core::iter::once(e).chain(e.others()).map(|e| e.path().to_owned()).collect()
}

#[test]
fn stores_the_plane_on_the_left() {
    let mut clockwise = square(0, 0, 20);
    clockwise.reverse();
    let o = Outline::new(clockwise, vec![square(5, 5, 2)]).unwrap();
    assert_eq!(o.outer(), [p(0, 20), p(0, 0), p(20, 0), p(20, 20)]);
    assert_eq!(o.holes(), [vec![p(5, 5), p(5, 7), p(7, 7), p(7, 5)]]);
    assert!((o.area().get(AreaUnit::SquareFoot) - 396.0).abs() < 1e-9);
    assert_eq!(o.edge_count(), 8);
    // The caller's edge k leaves the caller's vertex k; seen from the other side it arrives there.
    for e in o.edges().filter(|e| e.ring == 0) {
        let given = [p(0, 20), p(20, 20), p(20, 0), p(0, 0)];
        assert_eq!((given[e.given], given[(e.given + 1) % 4]), (e.to, e.from));
    }
    let again = Outline::new(o.outer().to_vec(), o.holes().to_vec()).unwrap();
    assert_eq!(again, o);
}

#[test]
fn refuses_each_fault_at_its_vertex() {
    for (outer, holes, expected) in [
        (vec![], vec![], vec!["outer"]),
        (vec![p(0, 0), p(1, 0)], vec![], vec!["outer"]),
        (vec![p(0, 0), p(4, 0), p(4, 0), p(0, 4)], vec![], vec!["outer[2]"]),
        (vec![p(0, 0), p(4, 0), p(0, 4), p(0, 0)], vec![], vec!["outer[3]"]),
        // A spike out of the right side, and one along an edge.
        (vec![p(0, 0), p(4, 0), p(4, 2), p(9, 2), p(4, 2), p(4, 4), p(0, 4)], vec![], vec!["outer[3]", "outer[1]", "outer[1]", "outer[2]"]),
        (vec![p(0, 0), p(4, 0), p(2, 0), p(2, 4)], vec![], vec!["outer[1]", "outer[0]"]),
        (vec![p(0, 0), p(4, 3), p(4, 0), p(0, 3)], vec![], vec!["outer", "outer[0]"]),
        // A vertex that touches a far edge.
        (vec![p(0, 0), p(6, 0), p(6, 4), p(3, 0), p(0, 4)], vec![], vec!["outer[0]", "outer[0]"]),
        (square(0, 0, 10), vec![square(20, 0, 2)], vec!["holes[0]"]),
        (square(0, 0, 10), vec![square(2, 2, 5), square(3, 3, 1)], vec!["holes[1]"]),
        (square(0, 0, 10), vec![square(8, 2, 5)], vec!["outer[1]", "outer[1]"]),
        (square(0, 0, 10), vec![square(0, 2, 5)], vec!["outer[3]", "outer[3]", "outer[3]"]),
        (square(0, 0, 10), vec![square(2, 2, 2), square(4, 4, 2)], vec!["holes[0][1]", "holes[0][1]", "holes[0][2]", "holes[0][2]"]),
        (vec![p(0, 0), p(2, 2), p(5, 5)], vec![], vec!["outer[0]", "outer[2]", "outer"]),
    ] {
        let e = Outline::new(outer.clone(), holes.clone()).unwrap_err();
        assert_eq!(e.kind(), ErrorKind::Geometry);
        assert_eq!(paths(&e), expected, "{outer:?} {holes:?}: {e}");
    }
}

#[test]
fn reports_all_faults_at_once() {
    let e = Outline::new(vec![p(0, 0), p(10, 0), p(10, 0), p(10, 10), p(0, 10)], vec![square(20, 20, 1), vec![p(1, 1), p(2, 1)]]).unwrap_err();
    assert_eq!(paths(&e), ["outer[2]", "holes[1]", "holes[0]"]);
}

#[test]
fn refuses_a_mixed_up_unit() {
    let far = Length::from_f64(40.0e3, crate::units::LengthUnit::Metre).unwrap();
    let e = Outline::new(vec![p(0, 0), Point::new(far, Length::ZERO), p(0, 4)], vec![]).unwrap_err();
    assert_eq!((e.kind(), e.cure().is_some()), (ErrorKind::OutOfRange, true));
    let ends = Outline::new(vec![Point::new(Length::MIN, Length::MIN), Point::new(Length::MAX, Length::ZERO), p(0, 4)], vec![]).unwrap_err();
    assert_eq!(ends.kind(), ErrorKind::OutOfRange);
}

#[test]
fn a_picometre_decides() {
    let one = Length::from_pm(1);
    let touching = vec![p(0, 0), p(6, 0), p(6, 4), p(3, 0), p(0, 4)];
    let mut clear = touching.clone();
    clear[3].y = one;
    assert!(Outline::new(touching, vec![]).is_err());
    assert!(Outline::new(clear, vec![]).is_ok());
}

#[test]
fn a_tangle_is_refused_with_a_count() {
    // A star that crosses itself 101 * 48 times or so: the list stops and says so.
    let star: Vec<Point> = (0..101_i32)
        .map(|i| {
            let a = f64::from(i * 50 % 101) * 360.0 / 101.0;
            let at = |v: f64| Length::from_mm(v * 1000.0).unwrap();
            Point::new(at(crate::num::cos_deg(a)), at(crate::num::sin_deg(a)))
        })
        .collect();
    let e = Outline::new(star, vec![]).unwrap_err();
    assert_eq!(e.others().len(), 64);
    assert_eq!(e.others()[63].value(), Some("4949 meetings in all"));
}

#[test]
fn knows_what_it_contains() {
    let o = Outline::new(vec![p(0, 0), p(10, 0), p(10, 10), p(5, 5), p(0, 10)], vec![square(4, 1, 2)]).unwrap();
    for (x, y, expected) in [(1, 1, true), (5, 2, false), (4, 2, true), (5, 6, false), (5, 5, true), (0, 10, true), (11, 0, false), (9, 8, true)] {
        assert_eq!(o.contains(p(x, y)), expected, "{x} {y}");
    }
}

#[cfg(feature = "serde")]
#[test]
fn reads_and_writes_text() {
    let text = r#"{"outer":[{"x":"0 mm","y":"0 mm"},{"x":"4 ft","y":"0 in"},{"x":"0 mm","y":"1 m"}]}"#;
    let o: Outline = serde_json::from_str(text).unwrap();
    let back: Outline = serde_json::from_str(&serde_json::to_string(&o).unwrap()).unwrap();
    assert_eq!(o, back);
    let e = serde_json::from_str::<Outline>(r#"{"outer":[]}"#).unwrap_err();
    assert!(e.to_string().contains("too few vertices"), "{e}");
}

proptest! {
    #[test]
    fn area_and_bounds_move_with_the_outline(
        radii in prop::collection::vec(200.0..9000.0_f64, 3..24), dx in -1_000_000_000_i32..1_000_000_000, dy in -1_000_000_000_i32..1_000_000_000
    ) {
        let n = radii.len() as f64;
        let star = |dx: Length, dy: Length| -> Vec<Point> {
            radii.iter().enumerate().map(|(i, r)| {
                let a = 360.0 * i as f64 / n;
                let at = |v: f64, by: Length| (Length::from_mm(v).unwrap() + by).length().unwrap();
                Point::new(at(r * crate::num::cos_deg(a), dx), at(r * crate::num::sin_deg(a), dy))
            }).collect()
        };
        let here = Outline::new(star(Length::ZERO, Length::ZERO), vec![]).unwrap();
        let (dx, dy) = (Length::micrometres(dx), Length::micrometres(dy));
        let mut turned = star(dx, dy);
        turned.reverse();
        let there = Outline::new(turned, vec![]).unwrap();
        prop_assert_eq!(here.area(), there.area());
        prop_assert_eq!(here.bounds().width().unwrap(), there.bounds().width().unwrap());
        prop_assert!(there.contains(Point::new(dx, dy)));
        // The shoelace formula in floating point agrees.
        let v: Vec<(f64, f64)> = here.outer().iter().map(|p| (p.x.mm(), p.y.mm())).collect();
        let twice: f64 = (0..v.len()).map(|i| { let j = (i + 1) % v.len(); v[i].0 * v[j].1 - v[j].0 * v[i].1 }).sum();
        approx::assert_relative_eq!(here.area().get(AreaUnit::SquareMillimetre), twice / 2.0, max_relative = 1e-12);
    }
}
