//! Where the two flanges of a pitch transition meet, and what a riser between them does.

use super::transition_tests::{slopes, transition};
use super::{Bending, Levels, Support};
use crate::error::ErrorKind;
use crate::num;
use crate::pitch::Turn;
use crate::record::Calculation;
use crate::units::Length;
use proptest::prelude::*;

fn len(text: &str) -> Length {
    Length::parse(text).unwrap()
}

/// The bend found by walking along the upper flange until it is `h` above the lower deck: no formula of the calculation in it.
fn bend_by_bisection(a: f64, b: f64, h: f64, p: f64) -> f64 {
    let above_lower = |u: f64| {
        let (x, z) = (u * num::cos_deg(b) - p * num::sin_deg(b), u * num::sin_deg(b) + p * num::cos_deg(b));
        z * num::cos_deg(a) - x * num::sin_deg(a)
    };
    let (mut low, mut high) = (-1e7, 1e7);
    let rising = above_lower(high) > above_lower(low);
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if (above_lower(middle) < h) == rising { low = middle } else { high = middle }
    }
    0.5 * (low + high)
}

#[test]
fn the_bend_lies_up_the_slope_over_a_shallow_roof_and_down_it_over_a_steep_one() {
    let shallow_below = transition("3:12", "8:12").section().unwrap();
    assert!(shallow_below.bend_on_upper.is_positive());
    assert_eq!(shallow_below.bends.len(), 1);
    assert_eq!(shallow_below.bends[0].turn, Turn::Up);
    let steep_below = transition("12:12", "4:12").section().unwrap();
    assert!(steep_below.bend_on_upper.is_negative());
    assert_eq!(steep_below.bends[0].turn, Turn::Down);
}

#[test]
fn packing_of_h_over_cos_d_puts_the_bend_on_the_line() {
    for (lower, upper) in [("3:12", "8:12"), ("12:12", "4:12")] {
        let mut t = transition(lower, upper);
        let h = t.lower.levels.compute().unwrap();
        let d = t.upper.pitch.angle().degrees() - t.lower.pitch.angle().degrees();
        t.detail.packing = Length::from_mm(h.mm() / num::cos_deg(d)).unwrap();
        assert!(t.section().unwrap().bend_on_upper.pm().abs() <= 2, "{lower} {upper}");
    }
}

#[test]
fn one_slope_needs_packing_of_h() {
    let mut t = transition("4:12", "4:12");
    let e = t.section().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "detail.packing"));
    assert!(e.cure().unwrap().contains("46.0375 mm"), "{e}");
    t.detail.packing = t.lower.levels.compute().unwrap();
    assert!(t.section().unwrap().bends.is_empty());
    t.detail.packing = len("2 3/4\"");
    t.detail.bending = Bending::Riser { distance: Length::ZERO };
    let out = t.section().unwrap();
    assert_eq!(out.step.unwrap().drop, len("15/16\""));
    assert_eq!(out.bends.iter().map(|b| b.bend.degrees()).collect::<Vec<_>>(), [90.0, 90.0]);
}

#[test]
fn a_riser_that_would_dam_water_is_refused_by_how_much() {
    let mut t = transition("3:12", "8:12");
    let s = t.section().unwrap().bend_on_upper;
    t.detail.bending = Bending::Riser { distance: len("1\"") };
    let e = t.section().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "detail.bending.riser.distance"));
    assert!(e.message().contains("dam water by"), "{e}");
    assert!(e.cure().unwrap().contains(&s.to_string()), "{e}");
    // At the distance of the cure the riser has no height, and is the direct bend.
    t.detail.bending = Bending::Riser { distance: s };
    assert!(t.section().unwrap().step.unwrap().drop.pm().abs() <= 1);
}

#[test]
fn seams_below_a_shallower_roof_must_stop_short() {
    let mut t = transition("12:12", "4:12");
    t.detail.end.hold_back = len("1\"");
    let e = t.section().unwrap_err();
    assert_eq!(e.path(), "detail.end.hold_back");
    // h cot D + clearance, common practice, no published source.
    let h = t.lower.levels.compute().unwrap();
    let d = t.lower.pitch.angle().degrees() - t.upper.pitch.angle().degrees();
    let needed = Length::from_mm(h.mm() / num::tan_deg(d) + t.detail.end.clearance.mm()).unwrap();
    t.detail.end.hold_back = Length::from_pm(needed.pm() - 5);
    assert!(t.section().is_err());
    t.detail.end.hold_back = Length::from_pm(needed.pm() + 5);
    assert!(t.section().is_ok());
}

#[test]
fn a_wide_free_flange_is_said() {
    let mut t = transition("3:12", "8:12");
    t.detail.unsupported_limit = len("2\"");
    let out = t.section().unwrap();
    assert_eq!(out.cautions.len(), 1);
    assert_eq!(out.cautions[0].code().number, 6001);
}

proptest! {
    #[test]
    fn the_direct_bend_is_where_the_flanges_meet(a in 1.0_f64..60.0, b in 1.0_f64..60.0, h in 10_i32..100, p in 0_i32..60) {
        prop_assume!((a - b).abs() > 0.5);
        let mut t = slopes(a, b);
        t.lower.levels = Levels { seam_height: Length::micrometres(h * 1000), ..Levels::default() };
        t.detail.packing = Length::micrometres(p * 1000);
        let out = t.section().unwrap();
        prop_assert!((out.bend_on_upper.mm() - bend_by_bisection(a, b, f64::from(h), f64::from(p))).abs() < 1e-6);
        let lower = Support { rise: t.lower.pitch.angle(), height: out.h };
        let upper = Support { rise: t.upper.pitch.angle(), height: t.detail.packing };
        let met = lower.meets(&upper).unwrap();
        for (got, expected) in [(out.foot, met), (out.top, met)] {
            prop_assert!((got.x.mm() - expected.x.mm()).abs() < 1e-6 && (got.z.mm() - expected.z.mm()).abs() < 1e-6);
        }
    }

    #[test]
    fn a_riser_is_square_to_the_lower_plane_and_as_high_as_its_drop(a in 1.0_f64..50.0, b in 1.0_f64..50.0, p in 0_i32..80, distance in 0_i32..2000) {
        let mut t = slopes(a, b);
        t.detail.packing = Length::micrometres(p * 1000);
        t.detail.bending = Bending::Riser { distance: Length::micrometres(distance * 1000) };
        if let Ok(out) = t.section() {
            let (dx, dz) = (out.top.x.mm() - out.foot.x.mm(), out.top.z.mm() - out.foot.z.mm());
            prop_assert!((dx * num::cos_deg(a) + dz * num::sin_deg(a)).abs() < 1e-6);
            prop_assert!((num::hypot(dx, dz) - out.step.unwrap().drop.mm()).abs() < 1e-6);
        }
    }
}
