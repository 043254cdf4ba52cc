use super::{Bending, Cleat, Closure, Levels, PitchTransition, Support, TransitionLines};
use crate::error::ErrorKind;
use crate::num;
use crate::pitch::{Pitch, Turn};
use crate::practice::junction as practice;
use crate::record::Calculation;
use crate::units::{Angle, Length};
use proptest::prelude::*;

fn len(text: &str) -> Length {
    Length::parse(text).unwrap()
}

fn asked(lower: &str, upper: &str) -> PitchTransition {
    PitchTransition {
        lower: Pitch::parse(lower).unwrap(),
        upper: Pitch::parse(upper).unwrap(),
        levels: Levels { seam_height: len("1 3/4\""), tape: len("1/16\""), ..Levels::default() },
        packing: Length::ZERO,
        bending: Bending::Direct,
        lower_hold_back: if lower == "3:12" { len("1\"") } else { len("6\"") },
        clearance: len("1/4\""),
        unsupported_limit: len("24\""),
    }
}

fn lines(transition: PitchTransition) -> TransitionLines {
    TransitionLines {
        transition,
        lower_flange: len("14\""),
        upper_flange: len("14\""),
        closure: Closure {
            setback: crate::practice::closure::SET_BACK,
            face_to_screws: practice::CLOSURE_FACE_TO_SCREWS,
            screws_to_edge: len("1/2\""),
            tape_width: len("7/8\""),
            panel_margin: len("1/2\""),
        },
        cleat: Cleat {
            front_below_top: practice::CLEAT_FRONT_BELOW_TOP,
            width: practice::CLEAT_WIDTH,
            tape_width: len("1 1/2\""),
            screws_below_tape_edge: practice::CLEAT_SCREWS_BELOW_TAPE_EDGE,
            top_screws_below_top: len("1\""),
            head_lap: len("1\""),
            gap: Length::ZERO,
            fold: crate::practice::panel::END_FOLD,
        },
    }
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
fn trade_check_values() {
    // Common practice, no published source: 1/2 in set back and 2 3/8 in to the flange's centre put the screws 2 7/8 in from the edge.
    let out = lines(asked("3:12", "8:12")).compute().unwrap();
    let from = |name: &str| out.line(name).unwrap().from_datum;
    assert_eq!(from("closure screws"), len("2 7/8\""));
    // A cleat 3 1/2 in wide whose front is 6 in below the trim's top has its back at 2 1/2 in; its screws sit 1/2 in below its tape's upper edge.
    assert_eq!(from("cleat back"), len("2 1/2\""));
    assert_eq!(from("cleat screws"), len("3\""));
    // A panel that measures 39 in to the cleat, with a 1 in fold, no gap and the bend ignored, is cut at 40 in.
    assert_eq!((len("39\"") + out.upper_panel_addition).length().unwrap(), len("40\""));
}

#[test]
fn the_bend_lies_up_the_slope_over_a_shallow_roof_and_down_it_over_a_steep_one() {
    let shallow_below = asked("3:12", "8:12").compute().unwrap();
    assert!(shallow_below.bend_on_upper.is_positive());
    assert_eq!(shallow_below.bends.len(), 1);
    assert_eq!(shallow_below.bends[0].turn, Turn::Up);
    let steep_below = asked("12:12", "4:12").compute().unwrap();
    assert!(steep_below.bend_on_upper.is_negative());
    assert_eq!(steep_below.bends[0].turn, Turn::Down);
}

#[test]
fn packing_of_h_over_cos_d_puts_the_bend_on_the_line() {
    for (lower, upper) in [("3:12", "8:12"), ("12:12", "4:12")] {
        let mut t = asked(lower, upper);
        let h = t.levels.compute().unwrap();
        let d = t.upper.angle().degrees() - t.lower.angle().degrees();
        t.packing = Length::from_mm(h.mm() / num::cos_deg(d)).unwrap();
        assert!(t.compute().unwrap().bend_on_upper.pm().abs() <= 2, "{lower} {upper}");
    }
}

#[test]
fn one_slope_needs_packing_of_h() {
    let mut t = asked("4:12", "4:12");
    let e = t.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "packing"));
    assert!(e.cure().unwrap().contains("46.0375 mm"), "{e}");
    t.packing = t.levels.compute().unwrap();
    assert!(t.compute().unwrap().bends.is_empty());
    t.packing = len("2 3/4\"");
    t.bending = Bending::Riser { distance: Length::ZERO };
    let out = t.compute().unwrap();
    assert_eq!(out.step.unwrap().drop, len("15/16\""));
    assert_eq!(out.bends.iter().map(|b| b.bend.degrees()).collect::<Vec<_>>(), [90.0, 90.0]);
}

#[test]
fn a_riser_that_would_dam_water_is_refused_by_how_much() {
    let mut t = asked("3:12", "8:12");
    let s = t.compute().unwrap().bend_on_upper;
    t.bending = Bending::Riser { distance: len("1\"") };
    let e = t.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "bending.riser.distance"));
    assert!(e.message().contains("dam water by"), "{e}");
    assert!(e.cure().unwrap().contains(&s.to_string()), "{e}");
    // At the distance of the cure the riser has no height, and is the direct bend.
    t.bending = Bending::Riser { distance: s };
    assert!(t.compute().unwrap().step.unwrap().drop.pm().abs() <= 1);
}

#[test]
fn seams_below_a_shallower_roof_must_stop_short() {
    let mut t = asked("12:12", "4:12");
    t.lower_hold_back = len("1\"");
    let e = t.compute().unwrap_err();
    assert_eq!(e.path(), "lower_hold_back");
    // h cot D + clearance, common practice, no published source.
    let h = t.levels.compute().unwrap();
    let d = t.lower.angle().degrees() - t.upper.angle().degrees();
    let needed = Length::from_mm(h.mm() / num::tan_deg(d) + t.clearance.mm()).unwrap();
    t.lower_hold_back = Length::from_pm(needed.pm() - 5);
    assert!(t.compute().is_err());
    t.lower_hold_back = Length::from_pm(needed.pm() + 5);
    assert!(t.compute().is_ok());
}

#[test]
fn a_wide_free_flange_is_said() {
    let mut t = asked("3:12", "8:12");
    t.unsupported_limit = len("2\"");
    let out = t.compute().unwrap();
    assert_eq!(out.cautions.len(), 1);
    assert_eq!(out.cautions[0].code().number, 6001);
}

#[test]
fn a_closure_that_falls_off_the_panel_is_refused_by_how_much() {
    let mut l = lines(asked("3:12", "8:12"));
    l.transition.lower_hold_back = len("3'");
    let e = l.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "closure"));
    assert!(e.message().contains("falls off the lower panel by"), "{e}");
}

#[test]
fn every_fault_is_told_at_once() {
    let mut l = lines(asked("3:12", "8:12"));
    l.cleat.gap = len("2\"");
    l.cleat.screws_below_tape_edge = len("2\"");
    l.cleat.tape_width = len("4\"");
    l.cleat.top_screws_below_top = len("3\"");
    let e = l.compute().unwrap_err();
    let paths: Vec<&str> = std::iter::once(e.path()).chain(e.others().iter().map(|o| o.path())).collect();
    assert_eq!(paths, ["cleat.tape_width", "cleat.top_screws_below_top", "cleat.gap"]);
    l.closure.setback = len("-1\"");
    assert_eq!(l.compute().unwrap_err().path(), "closure.setback");
}

#[test]
fn a_cleat_over_air_is_refused() {
    let mut l = lines(asked("12:12", "4:12"));
    l.upper_flange = len("9\"");
    let e = l.compute().unwrap_err();
    assert!(e.message().contains("misses the upper deck"), "{e}");
}

proptest! {
    #[test]
    fn the_direct_bend_is_where_the_flanges_meet(a in 1.0_f64..60.0, b in 1.0_f64..60.0, h in 10_i32..100, p in 0_i32..60) {
        prop_assume!((a - b).abs() > 0.5);
        let t = PitchTransition {
            lower: Pitch::from_angle(Angle::degrees_from(a).unwrap()).unwrap(),
            upper: Pitch::from_angle(Angle::degrees_from(b).unwrap()).unwrap(),
            levels: Levels { seam_height: Length::micrometres(h * 1000), ..Levels::default() },
            packing: Length::micrometres(p * 1000),
            lower_hold_back: len("100 m"),
            unsupported_limit: len("200 m"),
            ..asked("3:12", "8:12")
        };
        let out = t.compute().unwrap();
        prop_assert!((out.bend_on_upper.mm() - bend_by_bisection(a, b, f64::from(h), f64::from(p))).abs() < 1e-6);
        let lower = Support { rise: t.lower.angle(), height: out.h };
        let upper = Support { rise: t.upper.angle(), height: t.packing };
        let met = lower.meets(&upper).unwrap();
        for (got, expected) in [(out.foot, met), (out.top, met)] {
            prop_assert!((got.x.mm() - expected.x.mm()).abs() < 1e-6 && (got.z.mm() - expected.z.mm()).abs() < 1e-6);
        }
    }

    #[test]
    fn a_riser_is_square_to_the_lower_plane_and_as_high_as_its_drop(a in 1.0_f64..50.0, b in 1.0_f64..50.0, p in 0_i32..80, distance in 0_i32..2000) {
        let t = PitchTransition {
            lower: Pitch::from_angle(Angle::degrees_from(a).unwrap()).unwrap(),
            upper: Pitch::from_angle(Angle::degrees_from(b).unwrap()).unwrap(),
            packing: Length::micrometres(p * 1000),
            bending: Bending::Riser { distance: Length::micrometres(distance * 1000) },
            lower_hold_back: len("100 m"),
            unsupported_limit: len("200 m"),
            ..asked("3:12", "8:12")
        };
        if let Ok(out) = t.compute() {
            let (dx, dz) = (out.top.x.mm() - out.foot.x.mm(), out.top.z.mm() - out.foot.z.mm());
            prop_assert!((dx * num::cos_deg(a) + dz * num::sin_deg(a)).abs() < 1e-6);
            prop_assert!((num::hypot(dx, dz) - out.step.unwrap().drop.mm()).abs() < 1e-6);
        }
    }

    #[test]
    fn explaining_computes_the_same(a in 0_i32..200, b in 0_i32..200) {
        let pitch = |n: i32| Pitch::in_twelve(Length::inches_64(n * 4)).unwrap();
        let l = lines(PitchTransition { lower: pitch(a), upper: pitch(b), ..asked("3:12", "8:12") });
        match (l.compute(), l.explain()) {
            (Ok(out), Ok((same, sheet))) => {
                prop_assert_eq!(out, same);
                prop_assert!(sheet.steps().len() > 14);
            }
            (Err(a), Err(b)) => prop_assert_eq!(a, b),
            (a, b) => prop_assert!(false, "{:?} {:?}", a, b),
        }
    }
}
