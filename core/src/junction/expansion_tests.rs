//! Expansion joints along and across the panels.

use super::test_sections::{between, len, levels, mm, near, off, paths, roof, row, sheet, slope, top_end};
use super::{
    Bending, Bites, ExpansionAcross, ExpansionAcrossDetail, ExpansionAlong, ExpansionAlongDetail, JointSide, LeastRule, OffsetCleat, PitchTransition,
    PitchTransitionDetail, Side, TopEdge, TopEnd,
};
use crate::error::ErrorKind;
use crate::movement::HeatRange;
use crate::panel::{Hold, Reach};
use crate::practice::movement;
use crate::record::Calculation;
use crate::units::{Expansion, Length, Temperature};
use proptest::prelude::*;

fn range() -> HeatRange {
    let at = |text: &str| Temperature::parse(text).unwrap();
    HeatRange { expansion: Expansion::parse("12e-6 /K").unwrap(), coldest: at("-20 degC"), laid: at("20 degC"), hottest: at("70 degC") }
}

pub(super) fn along() -> ExpansionAlong {
    let side = JointSide { levels: levels(), to_fixed: len("15 m"), first_seam: len("300 mm") };
    let detail = ExpansionAlongDetail {
        sheet: sheet(),
        gap: len("25 mm"),
        clearance: len("3 mm"),
        curb_width: len("38 mm"),
        curb_height: len("210 mm"),
        edge_room: len("3 mm"),
        turn_up: len("200 mm"),
        upstand: LeastRule::UFC_UPSTAND,
        cleat_room: len("3 mm"),
        cleat_fasteners: row(),
        fasteners_from_edge: len("19 mm"),
        drop: len("120 mm"),
        lap: LeastRule::LAP_OVER_LEG,
        hook: len("50 mm"),
        engagement: len("10 mm"),
        play: len("1.5 mm"),
        rivets: row(),
    };
    ExpansionAlong { first: side, second: side, range: range(), detail }
}

#[test]
fn a_joint_along_the_panels_worked_by_hand() {
    let solved = along().compute().unwrap();
    // 30 m of steel: 12e-6 * 30000 * 50 = 18 mm close in the heat and 14.4 mm open in the cold; 18 + 3 of the gap of 25 mm are wanted.
    assert_eq!(along().wanted_gap().unwrap(), len("21 mm"));
    // From the middle: half the gap, the curb, 3 mm, the pan of 0.6 mm and 3 mm to the cleat.
    let leg = 12.5 + 38.0 + 3.0 + 0.6 + 3.0;
    let c = &solved.trim("joint cap").unwrap().corners;
    let t = 0.6096;
    assert!(near(c[0].x.mm(), -leg - t) && near(c[0].z.mm(), 90.0));
    assert!(near(c[1].z.mm(), 210.0 + t) && near(c[2].z.mm(), 210.0 + t));
    // The sliding leg stands 50 + 3 + 14.4 mm off the cleat's; the return reaches back to a sheet over the hook's root.
    let far = leg + 50.0 + 3.0 + 14.4;
    assert!(near(c[3].x.mm(), far) && near(c[3].z.mm(), 90.0 - 1.5) && near(c[4].x.mm(), far - 50.0 + t));
    let hook = &solved.trim("joint cleat, sliding side").unwrap().corners;
    assert!(near(hook[2].x.mm(), leg) && near(hook[3].x.mm(), leg + 50.0));
    // In the heat the cleat draws 18 mm away: what is left of hook under return.
    let engaged = (hook[3].x.mm() - 18.0) - c[4].x.mm();
    assert!(near(engaged, 50.0 - t - 3.0 - 14.4 - 18.0));
    // In the cold it comes 14.4 mm nearer, and neither tip strikes a leg.
    assert!(near(far - (hook[3].x.mm() + 14.4), 3.0) && near(c[4].x.mm() - (leg + t + 14.4), 3.0));
    for side in [Side::First, Side::Second] {
        let end = solved.end(side).unwrap();
        assert_eq!((end.reach, end.hold, end.turn_up), (Reach::HoldBack(len("53.5 mm")), Hold::Slides, len("200 mm")));
    }
    assert!(solved.along.iter().all(|a| !matches!(a.what, super::Along::Fasteners { bites: Bites::Panel, .. })), "nothing goes through a panel");
}

#[test]
fn faults_along_the_panels_are_told_by_how_much() {
    let refused = |change: &dyn Fn(&mut ExpansionAlong)| {
        let mut j = along();
        change(&mut j);
        j.compute().unwrap_err()
    };
    let e = refused(&|j| j.detail.gap = len("20 mm"));
    assert_eq!((e.kind(), e.path(), e.message()), (ErrorKind::Impossible, "detail.gap", "the gap closes in the heat by 1 mm"));
    // 50 - 0.6096 - 3 - 14.4 - 18 = 13.9904 mm stay engaged; a hook 5 mm shorter leaves 8.9904 mm of 10.
    let e = refused(&|j| j.detail.hook = len("45 mm"));
    assert_eq!(e.path(), "detail.hook");
    assert!(e.message().ends_with(" by 1.0096 mm"), "{e}");
    let e = refused(&|j| j.detail.turn_up = len("150 mm"));
    assert_eq!((e.path(), e.message()), ("detail.turn_up", "upstand above the drainage plane: 150 mm, too little by 2.4 mm"));
    assert_eq!(refused(&|j| j.detail.curb_height = len("200 mm")).path(), "detail.curb_height");
    // 1.6 + 200 - 210 + 105 mm of lap.
    let e = refused(&|j| j.detail.drop = len("105 mm"));
    assert_eq!((e.path(), e.message()), ("detail.drop", "lap over the leg that comes up under it: 96.6 mm, too little by 5 mm"));
    assert_eq!(refused(&|j| j.detail.drop = len("180 mm")).path(), "detail.drop");
    assert_eq!(refused(&|j| j.range.laid = Temperature::parse("90 degC").unwrap()).path(), "range.laid");
    let e = refused(&|j| (j.detail.gap, j.first.to_fixed, j.second.levels.pan, j.detail.play) = (Length::ZERO, len("-1 m"), len("-1 mm"), len("-1 mm")));
    assert_eq!(paths(&e), ["first.to_fixed", "second.levels.pan", "detail.gap", "detail.play"]);
}

/// Packing to the seam tops of 48 mm; 20 m of steel to the fixed line.
pub(super) fn across() -> ExpansionAcross {
    let cleat = OffsetCleat {
        sheet: sheet(),
        width: len("130 mm"),
        tongue: len("50 mm"),
        rise: len("6 mm"),
        tape_width: len("38 mm"),
        tape: len("1.5 mm"),
        screws_below_tape_edge: len("13 mm"),
        screws: row(),
        gap: len("13 mm"),
        fold: len("40 mm"),
        least_engagement: len("10 mm"),
    };
    let flashing = PitchTransitionDetail {
        sheet: sheet(),
        end: TopEnd { rivets: None, ..top_end() },
        seam_bead: None,
        packing: len("48 mm"),
        packing_reach: super::PackingReach::UnderPanels,
        bending: Bending::Direct,
        unsupported_limit: len("100 mm"),
        upper_flange: len("280 mm"),
        top_edge: TopEdge { hem: Length::ZERO, screws_below: len("25 mm"), screws: row() },
        cleat,
        front_below_top: len("200 mm"),
        head_lap: LeastRule::HEAD_LAP,
    };
    let detail = ExpansionAcrossDetail { clearance: movement::CLEARANCE, lap: LeastRule::SLIDING_LAP, flashing };
    ExpansionAcross { roof: roof(slope(15.0)), to_fixed: len("20 m"), below_to_fixed: movement::FAR_SIDE_TO_FIXED, range: range(), detail }
}

#[test]
fn a_joint_across_the_panels_is_a_transition_of_one_slope_with_room_to_move() {
    let joint = across();
    let solved = joint.compute().unwrap();
    let mut built_up = joint.roof;
    built_up.levels.built_up = len("48 mm");
    let same = PitchTransition { lower: joint.roof, upper: built_up, detail: joint.detail.flashing.clone() }.compute().unwrap();
    assert_eq!((&solved.trims, &solved.along, &solved.lines, &solved.ends), (&same.trims, &same.along, &same.lines, &same.ends));
    // One straight sheet in the plane of the seam tops, but for its drip.
    let trim = solved.trim("transition trim").unwrap();
    assert_eq!(trim.profile.bends.len(), 1);
    assert!(trim.corners[1..].iter().all(|c| near(off(*c, 15.0), 48.0)));
    assert_eq!(solved.end(Side::Second).unwrap().hold, Hold::Slides);
}

#[test]
fn faults_across_the_panels_are_told_by_how_much() {
    let refused = |change: &dyn Fn(&mut ExpansionAcross)| {
        let mut j = across();
        change(&mut j);
        j.compute().unwrap_err()
    };
    // 20 m of steel over 90 K: 21.6 mm of travel, 9.6 of it below the laying temperature. 3.175 + 10 + 21.6 mm of fold.
    let e = refused(&|j| j.detail.flashing.cleat.fold = len("34 mm"));
    assert_eq!(e.path(), "detail.flashing.cleat.fold");
    assert!(e.message().ends_with(" by 0.775 mm"), "{e}");
    // 1 m more below that moves: 1.08 mm more of travel.
    let e = refused(&|j| (j.below_to_fixed, j.detail.flashing.cleat.fold) = (len("1 m"), len("35 mm")));
    assert!(e.path() == "detail.flashing.cleat.fold" && e.message().ends_with(" by 0.855 mm"), "{e}");
    let e = refused(&|j| j.detail.flashing.cleat.gap = len("12 mm"));
    assert_eq!(e.path(), "detail.flashing.cleat.gap");
    assert!(e.message().ends_with(" by 0.775 mm"), "{e}");
    // 80 + 13 - 21.6 mm for 3 in.
    let e = refused(&|j| j.detail.flashing.front_below_top = len("80 mm"));
    assert_eq!((e.path(), e.message()), ("detail.flashing.front_below_top", "lap beside the movement: 71.4 mm, too little by 4.8 mm"));
    let e = refused(&|j| j.detail.flashing.packing = len("40 mm"));
    assert_eq!((e.path(), e.cure()), ("detail.flashing.packing", Some("packing of 48 mm")));
    assert_eq!(refused(&|j| j.roof.levels.tape = len("-1 mm")).path(), "roof.levels.tape");
    assert_eq!(
        paths(&refused(&|j| (j.to_fixed, j.below_to_fixed, j.detail.clearance) = (len("-1 m"), len("-2 m"), len("-1 mm")))),
        ["to_fixed", "below_to_fixed", "detail.clearance"]
    );
}

#[cfg(feature = "serde")]
#[test]
fn joints_are_text_and_back() {
    use super::test_sections::read_without;
    let mut a = along();
    a.detail.clearance = movement::CLEARANCE;
    a.detail.engagement = movement::ENGAGEMENT;
    assert_eq!(read_without(&a, &["/detail/clearance", "/detail/engagement"]), a);
    assert_eq!(read_without(&across(), &["/below_to_fixed", "/detail/clearance"]), across());
}

proptest! {
    #[test]
    fn the_cap_neither_binds_nor_comes_off(first in 0_i32..30, second in 0_i32..30, warm in 0_i32..50, cold in 0_i32..60, seam in 200_i32..600) {
        let mut j = along();
        (j.first.to_fixed, j.second.to_fixed) = (Length::micrometres(first * 1_000_000), Length::micrometres(second * 1_000_000));
        let at = |k: i32| Temperature::parse(&format!("{k} degC")).unwrap();
        j.range = HeatRange { expansion: j.range.expansion, coldest: at(20 - cold), laid: at(20), hottest: at(20 + warm) };
        let length = f64::from(first + second) * 1000.0;
        let (closes, opens) = (12e-6 * length * f64::from(warm), 12e-6 * length * f64::from(cold));
        j.detail.gap = Length::from_mm(closes + 3.5).unwrap();
        j.detail.hook = Length::from_mm(closes + opens + 14.0).unwrap();
        (j.first.first_seam, j.second.first_seam) = (mm(seam * 10), mm(seam * 10));
        let solved = j.compute().unwrap();
        let (c, h) = (&solved.trim("joint cap").unwrap().corners, &solved.trim("joint cleat, sliding side").unwrap().corners);
        prop_assert!((h[3].x.mm() - closes) - c[4].x.mm() >= 10.0 - 1e-6);
        prop_assert!(c[3].x.mm() - (h[3].x.mm() + opens) >= 3.0 - 1e-6);
        prop_assert!(c[4].x.mm() - (h[2].x.mm() + 0.6096 + opens) >= 3.0 - 1e-6);
        prop_assert!(j.detail.gap.mm() - closes >= 3.0);
        for trim in &solved.trims {
            for (leg, pair) in trim.profile.legs.iter().zip(trim.corners.windows(2)) {
                prop_assert!(near(leg.length.mm(), between(pair[0], pair[1])), "{}", trim.name);
            }
        }
        prop_assert_eq!(&solved, &j.explain().unwrap().0);
    }

    #[test]
    fn the_upper_panels_stay_hooked(to_fixed in 0_i32..20_000, a in 2.0_f64..45.0) {
        let mut j = across();
        (j.to_fixed, j.roof.pitch) = (Length::micrometres(to_fixed * 1000), slope(a));
        let solved = j.compute().unwrap();
        let end = solved.end(Side::Second).unwrap();
        let (heat, cold) = (12e-6 * f64::from(to_fixed) * 50.0, 12e-6 * f64::from(to_fixed) * 40.0);
        prop_assert!(end.fold.mm() - end.gap.mm() - heat >= 10.0 - 1e-6);
        prop_assert!(end.gap.mm() - cold >= 3.175 - 1e-6);
        prop_assert_eq!(&solved, &j.explain().unwrap().0);
    }
}
