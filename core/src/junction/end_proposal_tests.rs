//! Ends proposed from the temperatures: the figures by hand, and that every junction with them in it is built and keeps what was asked.

use super::test_sections::{len, slope};
use super::{
    EndProposal, JunctionInput, ProposedEnds, Side, ValleyHook, covered_tests, curb_back_tests, eave_tests, expansion_tests, step_tests, transition_tests,
    valley_tests,
};
use crate::error::{Error, ErrorKind};
use crate::movement::HeatRange;
use crate::num;
use crate::panel::Reach;
use crate::record::Calculation;
use crate::units::{Expansion, Length, Rounding, ShopRounding, Temperature};
use proptest::prelude::*;

fn range(expansion: &str) -> HeatRange {
    let t = |text| Temperature::parse(text).unwrap();
    HeatRange { expansion: Expansion::parse(expansion).unwrap(), coldest: t("-20 degC"), laid: t("20 degC"), hottest: t("70 degC") }
}

fn asked(of: JunctionInput, to_fixed: &str) -> EndProposal {
    EndProposal { of, range: range("12e-6 /K"), to_fixed: len(to_fixed), second_to_fixed: None, clearance: None, rounding: None }
}

fn eave() -> JunctionInput {
    JunctionInput::Eave(Box::new(eave_tests::asked(slope(30.0))))
}

/// 20 m of 12e-6 /K: 40 K of cold are 9.6 mm, 50 K of heat 12 mm. With 3.175 mm of clearance the gap is 12.775 mm, and with 9.525 mm of engagement the fold 34.3 mm.
#[test]
fn an_eave_by_hand() {
    let ask = asked(eave(), "20 m");
    let out = ask.compute().unwrap();
    let [end] = &out.ends[..] else { panic!("one end") };
    assert_eq!((end.side, end.gap, end.fold, end.travel), (Side::First, len("12.775 mm"), len("34.3 mm"), len("21.6 mm")));
    assert_eq!((end.clearance_in_the_cold, end.engagement_in_the_heat), (len("3.175 mm"), len("9.525 mm")));
    let JunctionInput::Eave(proposed) = &out.of else { panic!("an eave") };
    // The strip goes as far out as the fold needs in the cold: its edge stands 34.3 - 3.175 mm before the face, and its top stays.
    let before = eave_tests::asked(slope(30.0)).detail;
    let overhang = (proposed.face_at(Length::ZERO).unwrap() + len("31.125 mm")).length().unwrap();
    assert_eq!(proposed.detail.panel.overhang, overhang.max(before.panel.overhang));
    let top = |d: &super::EaveDetail| (d.panel.overhang - d.strip.width).length().unwrap();
    assert_eq!(top(&proposed.detail), top(&before));
    assert_eq!((end.end.reach, end.end.gap, end.end.fold), (Reach::Overhang(overhang), end.gap, end.fold));
    assert_eq!(proposed.compute().unwrap().end(Side::First), Some(&end.end));
    let (explained, sheet) = ask.explain().unwrap();
    assert!(explained == out && !sheet.steps().is_empty());
}

/// To sixteenths of an inch: 12.775 mm go up to 9/16 in (14.2875 mm), and the fold keeps 9.525 mm in the heat: 14.2875 + 12 + 9.525 = 35.8125 mm, 1 7/16 in.
#[test]
fn what_the_brake_rounds_is_brought_up() {
    let mut ask = asked(eave(), "20 m");
    ask.rounding = Some(ShopRounding::new(len("1/16\""), Rounding::Ceil).unwrap());
    let out = ask.compute().unwrap();
    assert_eq!((out.ends[0].gap, out.ends[0].fold), (len("9/16\""), len("1 7/16\"")));
    assert!(out.ends[0].engagement_in_the_heat >= len("3/8\"") && out.ends[0].clearance_in_the_cold >= len("1/8\""));
    // Rounding that would cut short is not let do so.
    ask.rounding = Some(ShopRounding::new(len("1/16\""), Rounding::Floor).unwrap());
    assert_eq!((ask.compute().unwrap().ends[0].gap, ask.compute().unwrap().ends[0].fold), (len("12.775 mm"), len("34.3 mm")));
}

#[test]
fn a_valleys_sides_move_by_their_own_panels_and_skews() {
    let mut v = valley_tests::valley("6:12", "9:12");
    v.detail.second.hook = valley_tests::receiver();
    v.detail.first.leg = len("16\"");
    v.detail.second.leg = len("16\"");
    let at = v.corner.compute().unwrap();
    let ask = EndProposal { second_to_fixed: Some(len("6 m")), ..asked(JunctionInput::Valley(Box::new(v)), "12 m") };
    let out = ask.compute().unwrap();
    for (end, metres, seen) in [(&out.ends[0], 12.0, at.first), (&out.ends[1], 6.0, at.second)] {
        let travel = 12e-6 * 90.0 * metres * 1000.0 * num::sin_deg(seen.meeting().degrees());
        assert!((end.travel.mm() - travel).abs() < 1e-6, "{} of {travel}", end.travel);
    }
    assert!(out.cautions.iter().all(|c| c.code().name == "moves-along-line") && out.cautions.len() == 2);
    let JunctionInput::Valley(proposed) = &out.of else { panic!("a valley") };
    assert!(matches!(&proposed.detail.second.hook, ValleyHook::ReceiverFold { fold, gap, .. } if (*fold, *gap) == (out.ends[1].fold, out.ends[1].gap)));
}

/// 40 m of 12e-6 /K above a riser: 19.2 mm in the cold, 24 mm in the heat. The gap is 19.2 + 3.175 mm, the fold 22.375 + 24 + 9.525 mm.
#[test]
fn a_steps_upper_end_by_hand() {
    let before = step_tests::step(30.0, 20.0);
    let out = asked(JunctionInput::Step(Box::new(before.clone())), "40 m").compute().unwrap();
    let [end] = &out.ends[..] else { panic!("one end") };
    assert_eq!((end.side, end.gap, end.fold, end.travel), (Side::Second, len("22.375 mm"), len("55.9 mm"), len("43.2 mm")));
    let JunctionInput::Step(proposed) = &out.of else { panic!("a step") };
    let (old, new) = (&before.detail.upper, &proposed.detail.upper);
    // The face's outside hangs 3.175 + 0.6096 + 0.7112 + 0.6096 mm before the deck's edge; the fold's lower layer lies 4.7625 mm under the strip's top, which is two sheets over the deck,
    // less its pan. In the cold the fold's edge stands 55.9 - 3.175 mm before the face, down a slope of 20 degrees.
    let (out, hangs) = (3.175 + 0.6096 + 0.7112 + 0.6096, 2.0 * 0.6096 - 4.7625 - before.upper.levels.pan.mm());
    let (sine, cosine) = (num::sin_deg(20.0), num::cos_deg(20.0));
    let overhang = (out - hangs * sine) / cosine + 55.9 - 3.175;
    assert!((new.panel.overhang.mm() - overhang).abs() < 1e-6, "{} of {overhang}", new.panel.overhang);
    assert_eq!((new.panel.overhang - new.strip.width).length(), (old.panel.overhang - old.strip.width).length());
    assert_eq!(proposed.compute().unwrap().end(Side::Second), Some(&end.end));
    assert_eq!((end.end.gap, end.end.fold), (end.gap, end.fold));
}

/// 20 m above the joint and 5 m below it: 12 mm in the cold and 15 mm in the heat. The gap is 12 + 3.175 mm, the fold 15.175 + 15 + 10 mm.
#[test]
fn a_joint_across_moves_on_both_sides_and_its_front_keeps_the_lap() {
    let mut joint = expansion_tests::across();
    joint.below_to_fixed = len("5 m");
    (joint.to_fixed, joint.range.hottest) = (len("1 m"), Temperature::parse("30 degC").unwrap());
    let out = asked(JunctionInput::ExpansionAcross(Box::new(joint.clone())), "20 m").compute().unwrap();
    let [end] = &out.ends[..] else { panic!("one end") };
    assert_eq!((end.side, end.gap, end.fold, end.travel), (Side::Second, len("15.175 mm"), len("40.175 mm"), len("27 mm")));
    let JunctionInput::ExpansionAcross(proposed) = &out.of else { panic!("a joint") };
    // It takes on what was asked with, and is built as any other.
    assert_eq!((proposed.to_fixed, &proposed.range), (len("20 m"), &range("12e-6 /K")));
    assert_eq!(proposed.compute().unwrap().end(Side::Second), Some(&end.end));
    assert_eq!(proposed.detail.flashing.front_below_top, joint.detail.flashing.front_below_top);
    // A front too short for its lap comes down by what is missing: least + 27 - 15.175 mm, and the upper flange with it.
    joint.detail.lap.least = joint.detail.flashing.front_below_top;
    let out = asked(JunctionInput::ExpansionAcross(Box::new(joint.clone())), "20 m").compute().unwrap();
    let JunctionInput::ExpansionAcross(lower) = &out.of else { panic!("a joint") };
    let by = len("11.825 mm");
    assert_eq!(lower.detail.flashing.front_below_top, (joint.detail.flashing.front_below_top + by).length().unwrap());
    assert_eq!(lower.detail.flashing.upper_flange, (joint.detail.flashing.upper_flange + by).length().unwrap());
    joint.below_to_fixed = len("-1 m");
    let e = asked(JunctionInput::ExpansionAcross(Box::new(joint)), "20 m").compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "of.expansion-across.below_to_fixed"));
}

#[test]
fn what_takes_no_proposal_is_refused() {
    let at = |e: Error| (e.kind(), e.path().to_owned());
    let ridge = JunctionInput::Headwall(Box::new(covered_tests::headwall("4:12")));
    let e = asked(ridge, "10 m").compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Conflict, "of", Some("headwall")));
    let mut fixed = eave_tests::asked(slope(30.0));
    fixed.detail.panel.fixed = Some(super::EaveFixing { up_the_slope: len("2\""), fasteners: super::test_sections::row() });
    assert_eq!(at(asked(JunctionInput::Eave(Box::new(fixed)), "10 m").compute().unwrap_err()).1, "of");
    let mut ask = asked(eave(), "-1 m");
    assert_eq!(at(ask.compute().unwrap_err()), (ErrorKind::OutOfRange, "to_fixed".into()));
    ask = asked(eave(), "10 m");
    ask.clearance = Some(len("-1 mm"));
    assert_eq!(at(ask.compute().unwrap_err()), (ErrorKind::OutOfRange, "clearance".into()));
    ask = asked(eave(), "10 m");
    ask.range.laid = Temperature::parse("90 degC").unwrap();
    assert_eq!(at(ask.compute().unwrap_err()), (ErrorKind::Conflict, "range.laid".into()));
    // A transition whose trim has no room for so long a cleat says so, by how much.
    let t = JunctionInput::PitchTransition(Box::new(transition_tests::transition("3:12", "8:12")));
    let e = asked(t, "80 m").compute().unwrap_err();
    assert!(e.path().starts_with("proposed.pitch-transition.detail.") && e.cure().is_some(), "{e}");
}

proptest! {
    #[test]
    fn proposed_ends_keep_what_is_asked(metres in 1.0_f64..25.0, angle in 5.0_f64..50.0, cold in -40.0_f64..15.0, hot in 25.0_f64..90.0, kind in 0_usize..4) {
        let of = match kind {
            0 => eave(),
            1 => JunctionInput::PitchTransition(Box::new(transition_tests::transition("3:12", "8:12"))),
            2 => JunctionInput::Step(Box::new(step_tests::step(30.0, angle))),
            _ => JunctionInput::CurbBack(Box::new(curb_back_tests::curb(slope(angle)))),
        };
        let mut ask = asked(of, &format!("{} mm", metres * 1000.0));
        let t = |degrees: f64| Temperature::parse(&format!("{degrees} degC")).unwrap();
        (ask.range.coldest, ask.range.hottest) = (t(cold), t(hot));
        let ProposedEnds { of, ends, .. } = match ask.compute() {
            Ok(out) => out,
            // The section alone has the right to refuse.
            Err(e) => { prop_assert!(e.path().starts_with("proposed."), "{e}"); return Ok(()) }
        };
        for end in &ends {
            prop_assert_eq!((end.clearance_in_the_cold, end.end.gap, end.end.fold), (len("1/8\""), end.gap, end.fold));
            let off = (end.engagement_in_the_heat - len("3/8\"")).length().unwrap();
            prop_assert!(off.mm().abs() < 1e-8);
            let grown = 12e-6 * (hot - cold) * metres * 1000.0;
            prop_assert!((end.travel.mm() - grown).abs() < 1e-6);
        }
        // Proposed again, it stays as it is.
        let again = EndProposal { of: of.clone(), ..ask }.compute().unwrap();
        prop_assert_eq!(again.of, of);
    }
}
