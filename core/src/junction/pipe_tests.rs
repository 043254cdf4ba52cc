use super::test_sections::{len, mm, near, paths, row, slope};
use super::{Along, Bites, FastenerRow, FixedLine, LeastRule, Pipe, PipeBase, PipeShape, PipeSpacing, UpperEdge};
use crate::error::ErrorKind;
use crate::movement::HeatRange;
use crate::num;
use crate::record::Calculation;
use crate::units::{Expansion, Length, Temperature};
use proptest::prelude::*;

pub(super) fn pipe() -> Pipe {
    let at = |text: &str| Temperature::parse(text).unwrap();
    Pipe {
        diameter: len("100 mm"),
        pitch: slope(30.0),
        coverage: len("450 mm"),
        seam_width: len("20 mm"),
        from_seam: len("225 mm"),
        least_to_seam: len("50 mm"),
        clearance: len("5 mm"),
        fixed: FixedLine::Above,
        to_fixed: len("10 m"),
        range: HeatRange { expansion: Expansion::parse("12e-6 /K").unwrap(), coldest: at("-20 degC"), laid: at("20 degC"), hottest: at("70 degC") },
        base: PipeBase {
            shape: PipeShape::Rectangular,
            seal: len("50 mm"),
            tape_width: len("20 mm"),
            tape_lap: len("25 mm"),
            screws: FastenerRow { spacing: len("40 mm"), ..row() },
            screws_from_edge: len("12 mm"),
        },
        upper_edge: UpperEdge::OnPan,
        may_cross_seams: false,
        next: None,
    }
}

#[test]
fn a_pipe_worked_by_hand() {
    let made = pipe().compute().unwrap();
    // 100 mm cut at 30 degrees: 50 / cos 30 up and down. 10 m of steel: 6 mm in the heat, by which the hole's upper edge comes down, 4.8 mm in the cold.
    let half = 50.0 / num::cos_deg(30.0);
    assert!(near(made.hole_up.mm(), half + 5.0 + 6.0) && near(made.hole_down.mm(), half + 5.0 + 4.8));
    assert_eq!((made.hole_across, made.base_across), (len("110 mm"), len("210 mm")));
    assert!(near(made.base_up.mm(), made.hole_up.mm() + 50.0) && near(made.base_down.mm(), made.hole_down.mm() + 50.0));
    // 225 less half the base and half a seam.
    assert_eq!((made.to_seam, made.seams_crossed), ([len("110 mm"); 2], 0));
    // Screws 12 mm in: 186 mm across in 5 spaces; 2 half + 10 + 10.8 + 100 - 24 = 212.27 mm along in 6.
    let along = 2.0 * half + 20.8 + 100.0 - 24.0;
    assert_eq!((made.screws, made.engineered), (2 * (5 + 6), false));
    assert!(near(made.tape.mm(), 2.0 * (186.0 + along) + 25.0));
    assert!(near(made.collar.mm(), 314.159_265_358_979));
    assert!(made.section.along.iter().all(|a| !matches!(a.what, Along::Fasteners { bites, .. } if bites != Bites::Panel)), "it rides");
    assert_eq!(made.section.cautions.iter().map(|c| c.code().number).collect::<Vec<_>>(), [6091]);
    // Fixed below, it moves the other way.
    let below = Pipe { fixed: FixedLine::Below, upper_edge: UpperEdge::UnderLap, ..pipe() }.compute().unwrap();
    assert_eq!((below.hole_up, below.hole_down), (made.hole_down, made.hole_up));
    assert!(below.section.cautions.is_empty());
}

#[test]
fn a_round_base_covers_the_hole_with_one_diameter() {
    let mut p = pipe();
    p.base.shape = PipeShape::Round;
    let made = p.compute().unwrap();
    assert!(near(made.base_across.mm(), made.base_up.mm() + made.base_down.mm()));
    assert!(made.base_across >= (made.hole_across + p.base.seal * 2).length().unwrap());
    let around = (made.base_across.mm() - 24.0) * core::f64::consts::PI;
    assert!(near(made.tape.mm(), around + 25.0));
    assert!(made.screws >= 4 && around / 40.0 <= f64::from(u32::try_from(made.screws).unwrap()));
}

#[test]
fn a_pipe_on_a_seam_is_told_where_to_go() {
    let mut p = pipe();
    // Half the base, half a seam and 50 mm: 165 mm from a seam's middle at the least.
    p.from_seam = len("120 mm");
    let e = p.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "from_seam"));
    assert_eq!(e.message(), "the base comes too near to the seam on its left by 45 mm");
    assert_eq!(e.allowed(), Some("165 mm to 285 mm"));
    assert!(e.cure().unwrap().starts_with("the pipe's shift of 45 mm to the right"));
    p.from_seam = len("300 mm");
    let e = p.compute().unwrap_err();
    assert_eq!(e.message(), "the base comes too near to the seam on its right by 15 mm");
    p.from_seam = len("285 mm");
    p.compute().unwrap();
    // In pans of 300 mm the base of 210 mm leaves 70 mm for twice 50 mm.
    (p.coverage, p.from_seam) = (len("300 mm"), len("150 mm"));
    let e = p.compute().unwrap_err();
    assert_eq!((e.path(), e.message()), ("base.seal", "the base fits between no two seams by 30 mm"));
    p.may_cross_seams = true;
    assert_eq!(p.compute().unwrap().seams_crossed, 0, "it fits between the seams themselves");
    p.from_seam = Length::ZERO;
    let made = p.compute().unwrap();
    assert_eq!(made.seams_crossed, 1);
    assert_eq!(made.section.cautions.last().unwrap().code().number, 6092);
    p.coverage = len("100 mm");
    assert_eq!(p.compute().unwrap().seams_crossed, 3);
}

#[test]
fn faults_are_told_at_once_and_by_how_much() {
    let mut p = pipe();
    (p.diameter, p.clearance, p.from_seam) = (Length::ZERO, len("-1 mm"), len("500 mm"));
    p.base.screws.spacing = Length::ZERO;
    p.next = Some(PipeSpacing { distance: len("12\""), rule: LeastRule::NAVFAC_APART });
    assert_eq!(paths(&p.compute().unwrap_err()), ["diameter", "clearance", "from_seam", "base.screws.spacing", "next.distance"]);
    let mut p = pipe();
    p.base.screws_from_edge = len("8 mm");
    let e = p.compute().unwrap_err();
    assert_eq!((e.path(), e.message()), ("base.tape_width", "the tape reaches past the base's edge by 2 mm"));
    let mut p = pipe();
    p.base.seal = len("20 mm");
    assert_eq!(p.compute().unwrap_err().path(), "base.seal");
    let mut p = pipe();
    p.range.laid = Temperature::parse("-40 degC").unwrap();
    assert_eq!(p.compute().unwrap_err().path(), "range.laid");
    let mut p = pipe();
    p.base.screws.spacing = len("0.001 mm");
    assert_eq!(p.compute().unwrap_err().kind(), ErrorKind::TooLarge);
    assert_eq!(LeastRule::NAVFAC_APART.source.to_string(), "NAVFAC roofing guidance");
}

#[cfg(feature = "serde")]
#[test]
fn a_pipe_is_text_and_back() {
    assert_eq!(super::test_sections::read_without(&pipe(), &[]), pipe());
}

proptest! {
    #[test]
    fn the_pipe_never_strikes_its_hole(d in 300_i32..3000, a in 0.0_f64..50.0, to_fixed in 0_i32..20, warm in 0_i32..50, cold in 0_i32..60, below in any::<bool>()) {
        let mut p = pipe();
        (p.diameter, p.pitch, p.to_fixed) = (mm(d), slope(a), Length::micrometres(to_fixed * 1_000_000));
        (p.coverage, p.from_seam) = (len("1200 mm"), len("600 mm"));
        p.fixed = if below { FixedLine::Below } else { FixedLine::Above };
        let at = |k: i32| Temperature::parse(&format!("{k} degC")).unwrap();
        p.range = HeatRange { expansion: p.range.expansion, coldest: at(20 - cold), laid: at(20), hottest: at(20 + warm) };
        let made = p.compute().unwrap();
        // A point of the pan at the pipe moves away from the fixed line in the heat: down the slope where that lies above.
        let metres = f64::from(to_fixed) * 1000.0;
        let way = if below { 1.0 } else { -1.0 };
        let half = mm(d).mm() / 2.0 / num::cos_deg(a);
        for moved in [way * 12e-6 * metres * f64::from(warm), -way * 12e-6 * metres * f64::from(cold), 0.0] {
            let (upper, lower) = (made.hole_up.mm() + moved, -made.hole_down.mm() + moved);
            prop_assert!(upper >= half + 5.0 - 1e-6 && lower <= -half - 5.0 + 1e-6);
        }
        prop_assert_eq!(&made, &p.explain().unwrap().0);
    }

    #[test]
    fn a_shifted_pipe_is_clear(from in 0_i32..4500, seal in 250_i32..900) {
        let mut p = pipe();
        (p.from_seam, p.base.seal) = (mm(from), mm(seal));
        if let Err(e) = p.compute() {
            prop_assert_eq!(e.path(), "from_seam");
            let by = Length::parse(e.message().rsplit(" by ").next().unwrap()).unwrap();
            let left = e.message().contains("its left");
            p.from_seam = if left { p.from_seam + by } else { p.from_seam - by }.length().unwrap();
            let made = p.compute().unwrap();
            prop_assert!(made.to_seam.iter().all(|s| *s >= p.least_to_seam));
        }
    }
}
