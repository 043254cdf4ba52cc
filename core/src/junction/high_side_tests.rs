use super::test_sections::{between, face, len, mm, near, off, paths, roof, sheet, slope, top_end};
use super::{Along, Bites, HighSide, HighSideDetail, LeastRule, Side, Solved};
use crate::error::ErrorKind;
use crate::num;
use crate::panel::Hold;
use crate::pitch::{BendAt, Pitch};
use crate::record::Calculation;
use crate::units::Length;
use proptest::prelude::*;

pub(super) fn asked(pitch: Pitch) -> HighSide {
    HighSide { roof: roof(pitch), detail: HighSideDetail { end: top_end(), sheet: sheet(), face: face(), below_deck: LeastRule::IRC_BELOW_DECK } }
}

fn along(solved: &Solved, name: &str) -> f64 {
    solved.along.iter().find(|a| a.name == name).unwrap().from_line.mm()
}

#[test]
fn a_high_side_worked_by_hand() {
    // A roof of 30 degrees, seam tops 48 mm out, the wall leg on a cleat 0.7112 mm thick.
    let high = asked(slope(30.0));
    let solved = high.compute().unwrap();
    assert_eq!(solved.trims.iter().map(|t| &*t.name).collect::<Vec<_>>(), ["continuous cleat", "high-side cap"]);
    let c = &solved.trim("high-side cap").unwrap().corners;
    let root3 = 3.0_f64.sqrt();
    // z cos 30 = 48 + x sin 30.
    let z = (48.0 + 0.7112 * 0.5) * 2.0 / root3;
    assert!(near(c[2].x.mm(), 0.7112) && near(c[2].z.mm(), z));
    // The flange is 8 in long from there, and so its edge lies 8 in less the bend's own place along the slope below the line.
    assert!(near(between(c[1], c[2]), 203.2));
    assert!(near(along(&solved, "rivets"), 0.7112 * root3 / 2.0 + z * 0.5 - 203.2));
    // The wall leg ends 4 in below the deck's edge.
    assert!(near(c[3].z.mm(), -101.6) && near(between(c[2], c[3]), z + 101.6));
    assert_eq!(solved.end(Side::First).unwrap().allowance().unwrap(), len("-1\""));
    assert_eq!(solved.ends.len(), 1);
    assert_eq!(solved.end(Side::First).unwrap().hold, Hold::Pins);
    assert!(solved.along.iter().any(|a| a.what == Along::ContinuousCleat && a.side == Side::Second));
    assert_eq!(solved.cautions.iter().map(|c| c.code().number).collect::<Vec<_>>(), [6016, 6052]);
}

#[test]
fn panels_that_slide_are_said() {
    let mut high = asked(slope(10.0));
    high.detail.end.bites = Bites::Panel;
    assert_eq!(high.compute().unwrap_err().path(), "detail.end.rivets");
    high.detail.end.rivets = None;
    let solved = high.compute().unwrap();
    assert_eq!(solved.end(Side::First).unwrap().hold, Hold::Slides);
    assert!(solved.cautions.iter().any(|c| c.code().number == 6017));
}

#[test]
fn bad_figures_are_told_at_once() {
    let mut high = asked(slope(10.0));
    high.detail.end.hold_back = len("-1\"");
    high.detail.face.kick = crate::units::Angle::ZERO;
    high.detail.sheet.inside_radius = len("-1 mm");
    assert_eq!(paths(&high.compute().unwrap_err()), ["detail.end.hold_back", "detail.sheet.inside_radius", "detail.face.kick"]);
    let mut high = asked(slope(10.0));
    high.detail.end.hold_back = len("6\"");
    let refused = high.compute().unwrap_err();
    assert_eq!((refused.kind(), refused.path()), (ErrorKind::Impossible, "detail.end.hold_back"));
    // z cos 10 = 48 + 0.7112 sin 10; the lower flange's edge lies 2 1/4 in up from the edge of 8 in of flange, and 1/2 in of panel is asked beyond it.
    let z = (48.0 + 0.7112 * num::sin_deg(10.0)) / num::cos_deg(10.0);
    let bend = 0.7112 * num::cos_deg(10.0) + z * num::sin_deg(10.0);
    let by = Length::parse(refused.message().rsplit(" by ").next().unwrap()).unwrap();
    assert!(near(by.mm(), bend + (6.0 - 8.0 + 2.75) * 25.4), "{refused}");
    high.detail.end.hold_back = len("2\"");
    high.detail.face.depth = Length::ZERO;
    assert_eq!(high.compute().unwrap_err().path(), "detail.face.depth");
}

#[cfg(feature = "serde")]
#[test]
fn a_high_side_is_text_and_back() {
    let high = asked(Pitch::parse("1/2:12").unwrap());
    let text = serde_json::to_string(&high).unwrap();
    assert_eq!(serde_json::from_str::<HighSide>(&text).unwrap(), high);
}

proptest! {
    #[test]
    fn corners_lie_on_their_supports(a in 0.0_f64..60.0, stand_off in 0_i32..600, depth in 600_i32..4000) {
        let mut high = asked(slope(a));
        high.roof.levels.stand_off = mm(stand_off);
        high.detail.face.depth = mm(depth);
        high.detail.end.flange = len("1 m");
        let solved = high.compute().unwrap();
        let h = 48.0 + f64::from(stand_off) * 0.1;
        let cap = solved.trim("high-side cap").unwrap();
        let c = &cap.corners;
        prop_assert!(near(off(c[1], a), h) && near(off(c[2], a), h) && near(off(c[0], a), h - 25.4));
        prop_assert!(near(c[2].x.mm(), 0.7112) && near(c[3].x.mm(), 0.7112) && near(c[4].x.mm(), 0.7112 + 15.875));
        prop_assert!(near(between(c[1], c[2]), 1000.0));
        let bend = BendAt::HighEave { pitch: high.roof.pitch }.compute().unwrap().bend.degrees();
        prop_assert!(near(cap.profile.bends[1].angle.degrees(), bend) && near(bend, 90.0 + a));
        for (leg, pair) in cap.profile.legs.iter().zip(c.windows(2)) {
            prop_assert!(near(leg.length.mm(), between(pair[0], pair[1])));
        }
    }

    #[test]
    fn explaining_computes_the_same(a in 0.0_f64..70.0, hold in 0_i32..900) {
        let mut high = asked(slope(a));
        high.detail.end.hold_back = mm(hold);
        match (high.compute(), high.explain()) {
            (Ok(out), Ok((same, working))) => {
                prop_assert_eq!(out, same);
                prop_assert!(working.steps().len() >= 6);
            }
            (Err(a), Err(b)) => prop_assert_eq!(a, b),
            (a, b) => prop_assert!(false, "{:?} {:?}", a, b),
        }
    }
}
