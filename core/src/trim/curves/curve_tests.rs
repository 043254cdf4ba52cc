//! Meetings of lines and arcs, and first contacts, against points laid along them.

use super::curve::*;
use crate::num;
use proptest::prelude::*;

fn arc(centre: Xy, radius: f64, heading: f64, turn: f64) -> Curve {
    let at = |d: f64| plus(centre, times((num::cos_deg(d), num::sin_deg(d)), radius));
    Curve { from: at(heading), to: at(heading + turn), round: Some(Round { centre, radius, heading, turn }) }
}

/// Points along a curve, close to each other.
fn along(c: &Curve, count: u32) -> Vec<Xy> {
    (0..=count)
        .map(|i| {
            let share = f64::from(i) / f64::from(count);
            match c.round {
                Some(r) => arc(r.centre, r.radius, r.heading, r.turn * share).to,
                None => plus(c.from, times(minus(c.to, c.from), share)),
            }
        })
        .collect()
}

/// The least distance between two curves by their chords, and how far chords stray.
fn apart(a: &Curve, b: &Curve) -> f64 {
    let chords = |c: &Curve| -> Vec<(Xy, Xy)> { along(c, 64).windows(2).map(|w| (w[0], w[1])).collect() };
    let from_line = |p: Xy, (a, b): (Xy, Xy)| {
        let way = minus(b, a);
        let at = (dot(minus(p, a), way) / dot(way, way)).clamp(0.0, 1.0);
        length(minus(p, plus(a, times(way, at))))
    };
    let mut least = f64::INFINITY;
    for &p in &chords(a) {
        for &q in &chords(b) {
            if Curve::line(p.0, p.1).meets(&Curve::line(q.0, q.1)) {
                return 0.0;
            }
            for d in [from_line(p.0, q), from_line(p.1, q), from_line(q.0, p), from_line(q.1, p)] {
                least = least.min(d);
            }
        }
    }
    least
}

fn any_curve() -> impl Strategy<Value = Curve> {
    let xy = (-20.0_f64..20.0, -20.0_f64..20.0);
    prop_oneof![
        (xy.clone(), xy.clone()).prop_filter("a line has a length", |(a, b)| length(minus(*b, *a)) > 1.0).prop_map(|(a, b)| Curve::line(a, b)),
        (xy, 0.5_f64..10.0, 0.0_f64..360.0, prop_oneof![-350.0_f64..-5.0, 5.0_f64..350.0]).prop_map(|(c, r, h, t)| arc(c, r, h, t)),
    ]
}

#[test]
fn known_meetings() {
    let unit = arc((0.0, 0.0), 1.0, 0.0, 90.0);
    assert!(unit.meets(&Curve::line((0.0, 0.0), (1.0, 1.0))));
    assert!(!unit.meets(&Curve::line((0.0, 0.0), (-1.0, -1.0))));
    assert!(!unit.meets(&Curve::line((0.0, 0.0), (0.5, 0.5))));
    assert!(unit.meets(&arc((1.0, 1.0), 1.0, 180.0, 90.0)));
    // One circle twice: on it, beside it, end to end.
    assert!(unit.meets(&arc((0.0, 0.0), 1.0, 45.0, 90.0)) && unit.meets(&arc((0.0, 0.0), 1.0, 90.0, 90.0)));
    assert!(!unit.meets(&arc((0.0, 0.0), 1.0, 100.0, 200.0)));
    // In one line, and at a common end.
    assert!(Curve::line((0.0, 0.0), (2.0, 0.0)).meets(&Curve::line((1.0, 0.0), (3.0, 0.0))));
    assert!(!Curve::line((0.0, 0.0), (1.0, 0.0)).meets(&Curve::line((2.0, 0.0), (3.0, 0.0))));
    assert!(Curve::line((0.0, 0.0), (1.0, 0.0)).meets(&Curve::line((1.0, 0.0), (3.0, 5.0))));
}

#[test]
fn known_contacts() {
    // A ray of 10 swings about its start onto a post at 30 degrees.
    let ray = Curve::line((1.0, 0.0), (10.0, 0.0));
    let post = Curve::line((5.0 * num::cos_deg(30.0), 2.5), (5.0 * num::cos_deg(30.0), 20.0));
    let hit = first_contact(&ray, &post, (0.0, 0.0), 1.0, 180.0).unwrap();
    assert!((hit - 30.0).abs() < 1e-9, "{hit}");
    // The other way round it comes there the long way.
    let far_end = 360.0 - num::acos_deg(0.5 * num::cos_deg(30.0));
    assert!((first_contact(&ray, &post, (0.0, 0.0), -1.0, 359.0).unwrap() - far_end).abs() < 1e-9);
    assert!(first_contact(&ray, &post, (0.0, 0.0), 1.0, 29.9).is_none());
    // A disc of radius 1 at distance 5 rolls down onto a floor: its centre one above it.
    let disc = arc((0.0, 5.0), 1.0, 0.0, 359.0);
    let floor = Curve::line((-20.0, -3.0), (20.0, -3.0));
    let hit = first_contact(&disc, &floor, (0.0, 0.0), 1.0, 180.0).unwrap();
    assert!((hit - (90.0 + num::asin_deg(2.0 / 5.0))).abs() < 1e-9, "{hit}");
    assert!((first_contact(&floor, &disc, (0.0, 0.0), -1.0, 180.0).unwrap() - hit).abs() < 1e-9);
    // Two discs of radius 1: centres at 5, first two apart at 2 asin(2/10) before the other's 120 degrees.
    let other = arc((5.0 * num::cos_deg(210.0), 5.0 * num::sin_deg(210.0)), 1.0, 10.0, 359.0);
    let hit = first_contact(&disc, &other, (0.0, 0.0), 1.0, 180.0).unwrap();
    assert!((hit - (120.0 - 2.0 * num::asin_deg(0.2))).abs() < 1e-9, "{hit}");
    // A small disc inside a hollow touches it from inside.
    let hollow = arc((0.0, 1.0), 6.0, 0.0, 359.0);
    let hit = first_contact(&arc((0.0, 5.0), 1.5, 0.0, 359.0), &hollow, (0.0, 0.0), 1.0, 180.0).unwrap();
    // Centres 4.5 apart: 25 + 1 - 10 cos(x) = 20.25.
    assert!((hit - num::acos_deg(5.75 / 10.0)).abs() < 1e-9, "{hit}");
}

proptest! {
    #[test]
    fn meetings_agree_with_chords(a in any_curve(), b in any_curve()) {
        let apart = apart(&a, &b);
        // 64 chords to at most 350 degrees of radius 10 stray by about 0.01 each.
        if apart > 0.03 {
            prop_assert!(!a.meets(&b), "{apart}");
        }
        prop_assert_eq!(a.meets(&b), b.meets(&a));
        prop_assert_eq!(a.meets(&b), a.reversed().meets(&b));
        if a.meets(&b) {
            prop_assert!(apart < 0.03, "{apart}");
            prop_assert!(a.extent().meets(&b.extent()));
        }
        let (near, far) = a.reach(b.from);
        for p in along(&a, 50) {
            let d = length(minus(p, b.from));
            prop_assert!(near <= d + 1e-9 && d <= far + 1e-9);
            let e = a.extent();
            prop_assert!(p.0 >= e.least.0 - 1e-9 && p.0 <= e.greatest.0 + 1e-9 && p.1 >= e.least.1 - 1e-9 && p.1 <= e.greatest.1 + 1e-9);
            prop_assert!(a.least_x() <= p.0 + 1e-9);
        }
    }

    /// Nothing is met before the first contact, and at it the two touch.
    #[test]
    fn a_first_contact_is_the_first(moving in any_curve(), still in any_curve(), x in -20.0_f64..20.0, y in -20.0_f64..20.0, up in any::<bool>()) {
        let (axis, sign) = ((x, y), if up { 1.0 } else { -1.0 });
        prop_assume!(apart(&moving, &still) > 0.05);
        let at = |turn: f64| Motion::turning(axis, sign * turn).curve(&moving);
        let hit = first_contact(&moving, &still, axis, sign, 300.0);
        for i in 0..1500 {
            let turn = f64::from(i) / 5.0;
            if hit.is_some_and(|h| turn > h - 1e-6) {
                break;
            }
            prop_assert!(!at(turn).meets(&still), "{hit:?} {turn}");
        }
        if let Some(h) = hit {
            prop_assert!(apart(&at(h), &still) < 0.03, "{h} {}", apart(&at(h), &still));
        }
    }

    /// A motion keeps distances, and a mirrored arc runs through the mirrored points.
    #[test]
    fn motions_move_curves_as_their_points(c in any_curve(), degrees in -400.0_f64..400.0, mirror in any::<bool>()) {
        let motion = Motion::placing((3.0, -2.0), degrees, (1.0, if mirror { -1.0 } else { 1.0 }), (7.0, 11.0));
        prop_assert!(length(minus(motion.point((3.0, -2.0)), (7.0, 11.0))) < 1e-9);
        for (p, q) in along(&c, 7).into_iter().zip(along(&motion.curve(&c), 7)) {
            prop_assert!(length(minus(motion.point(p), q)) < 1e-9);
        }
    }
}
