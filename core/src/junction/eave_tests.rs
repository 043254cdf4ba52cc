#[cfg(feature = "serde")]
use super::test_sections::read_without;
use super::test_sections::{between, degrees, face, len, levels, mm, near, off, paths, roof, row, sheet, slope};
use super::{Along, Bites, DeckFlange, DripHem, Eave, EaveDetail, EaveFixing, EaveFront, EavePanel, FlangeLies, HookStrip, LeastRule, Levels, Side};
use crate::error::ErrorKind;
use crate::num;
use crate::panel::Hold;
use crate::pitch::{BendAt, Pitch};
use crate::practice;
use crate::record::Calculation;
use crate::trim::{Edge, LegEnd};
use crate::units::Length;
use proptest::prelude::*;

pub(super) fn asked(pitch: Pitch) -> Eave {
    let detail = EaveDetail {
        sheet: sheet(),
        flange: DeckFlange { width: len("4\""), lies: FlangeLies::UnderUnderlayment, fasteners: row(), fasteners_from_edge: len("1\"") },
        on_deck: LeastRule::IRC_OVER_EDGE_METAL,
        below_deck: LeastRule::IRC_BELOW_DECK,
        front: EaveFront::Plumb,
        face: face(),
        strip: HookStrip { sheet: sheet(), width: len("4\""), fasteners: row(), fasteners_from_edge: len("1\"") },
        panel: EavePanel {
            overhang: len("1 1/4\""),
            gap: len("1/4\""),
            fold: practice::panel::END_FOLD,
            fold_opening: len("3/16\""),
            clearance: practice::movement::CLEARANCE,
            engagement: practice::movement::ENGAGEMENT,
            fixed: None,
        },
        gutter: None,
    };
    Eave { roof: roof(pitch), detail }
}

#[test]
fn a_plumb_eave_worked_by_hand() {
    // At 45 degrees, without a cleat: the corner is the junction line itself, the face 4 in plumb, the drip 1/2 in out and, at 45 degrees, 1/2 in down.
    let mut e = asked(Pitch::parse("12:12").unwrap());
    e.detail.face.hem = DripHem::Closed { width: practice::junction::EDGE_HEM };
    e.detail.face.kick = degrees(45.0);
    e.detail.face.clears = len("1/2\"");
    let solved = e.compute().unwrap();
    assert_eq!(solved.trims.iter().map(|t| &*t.name).collect::<Vec<_>>(), ["eave trim", "hook strip"]);
    let trim = solved.trim("eave trim").unwrap();
    let c = &trim.corners;
    assert!(near(between(c[0], c[1]), 101.6) && near(c[1].x.mm(), 0.0) && near(c[1].z.mm(), 0.0));
    assert!(near(c[2].x.mm(), 0.0) && near(c[2].z.mm(), -101.6));
    assert!(near(c[3].x.mm(), 12.7) && near(c[3].z.mm(), -114.3));
    // 90 less the pitch over the eave, and back out by the kick.
    let bends: Vec<f64> = trim.profile.bends.iter().map(|b| b.angle.degrees()).collect();
    assert!(near(bends[0], 45.0) && near(bends[1], 45.0));
    assert_eq!(trim.profile.legs[3 - 1].end, LegEnd::OuterTangent);
    // Overhang 1 1/4, gap 1/4 and fold 1 in.
    let end = solved.end(Side::First).unwrap();
    assert_eq!((end.allowance().unwrap(), end.hold), (len("2 1/2\""), Hold::Slides));
    // The flange's fasteners stand 3 in up the slope, the strip's 1 3/4 in.
    let at = |name: &str| solved.along.iter().find(|a| a.name == name).unwrap();
    assert!(near(at("deck flange's fasteners").from_line.mm(), 76.2));
    assert_eq!(at("hook strip's fasteners").from_line, len("1 3/4\""));
}

#[test]
fn the_bend_over_a_plumb_fascia_is_that_of_the_pitch_room() {
    for n in 0..=24 {
        let pitch = Pitch::in_twelve(Length::inches(n)).unwrap();
        let bend = BendAt::Eave { pitch }.compute().unwrap().bend.degrees();
        let mut e = asked(pitch);
        e.detail.panel.overhang = len("2\"");
        let solved = e.compute().unwrap();
        assert!(near(solved.trim("eave trim").unwrap().profile.bends[0].angle.degrees(), bend), "{n}");
    }
}

#[test]
fn a_face_square_to_the_roof_bends_square() {
    let mut e = asked(slope(30.0));
    e.detail.front = EaveFront::SquareToRoof;
    let solved = e.compute().unwrap();
    assert!(near(solved.trim("eave trim").unwrap().profile.bends[0].angle.degrees(), 90.0));
    e.detail.front = EaveFront::BelowLevel(degrees(25.0));
    let refused = e.compute().unwrap_err();
    assert_eq!((refused.kind(), refused.path()), (ErrorKind::OutOfRange, "detail.front"));
}

#[test]
fn an_open_hem_hooks_the_cleat() {
    let solved = asked(slope(20.0)).compute().unwrap();
    assert_eq!(solved.trims[0].name, "continuous cleat");
    assert!(matches!(solved.trim("eave trim").unwrap().profile.end_edge, Edge::OpenHem { .. }));
    assert!(solved.along.iter().any(|a| a.what == Along::ContinuousCleat && a.side == Side::Second));

    // Of a hem of 1/2 in, 0.024 in of sheet and 1/16 in short of the fold leave 0.4135 in.
    let mut e = asked(slope(20.0));
    let DripHem::Hooked(cleat) = &mut e.detail.face.hem else { panic!("hooked") };
    cleat.engagement = len("0.4135\"");
    assert!(e.compute().is_ok());
    let DripHem::Hooked(cleat) = &mut e.detail.face.hem else { panic!("hooked") };
    cleat.engagement = len("0.4235\"");
    cleat.hem_gap = Length::mils(20);
    cleat.fasteners_above_bend = len("3\"");
    let refused = e.compute().unwrap_err();
    assert_eq!(paths(&refused), ["detail.face.hem.hooked.hem_gap", "detail.face.hem.hooked.hem", "detail.face.hem.hooked.fasteners_above_bend"]);
    assert!(refused.others()[0].message().contains("0.254 mm"), "{refused}");
}

#[test]
fn a_cleat_above_the_deck_is_refused() {
    let mut e = asked(slope(20.0));
    let DripHem::Hooked(cleat) = &mut e.detail.face.hem else { panic!("hooked") };
    cleat.height = len("5\"");
    let refused = e.compute().unwrap_err();
    assert_eq!((refused.kind(), refused.path()), (ErrorKind::Impossible, "detail.face.hem.hooked.height"));
}

#[test]
fn folds_that_fail_are_refused_together() {
    let mut e = asked(slope(20.0));
    e.detail.panel.fold_opening = len("0.014\"");
    e.detail.panel.fold = len("1/2\"");
    let refused = e.compute().unwrap_err();
    assert_eq!(paths(&refused), ["detail.panel.fold_opening", "detail.panel.fold"]);
    // The strip is 0.024 in thick; 1/2 in of fold less 1/4 in of gap is 1/8 in short of 3/8 in.
    assert!(refused.message().contains("0.254 mm"), "{refused}");
    assert!(refused.others()[0].message().contains("3.175 mm"), "{refused}");

    let mut e = asked(slope(20.0));
    e.detail.panel.fold = len("1 3/4\"");
    let refused = e.compute().unwrap_err();
    assert!(refused.message().contains("strikes the face"), "{refused}");
    assert!(refused.cure().is_some());

    // At 45 degrees, on a closed hem, the outside of the face stands 0.6096 mm out of plumb through the junction line. The fold's underside lies
    // 2 (0.6096) - 4.7625 - 0.6 mm from the deck; there the face is (0.6096 - that sin 45) / cos 45 down the slope.
    let mut e = asked(slope(45.0));
    e.detail.face.hem = DripHem::Closed { width: practice::junction::EDGE_HEM };
    let at = 0.6096 * 2.0_f64.sqrt() + 4.7625 + 0.6 - 1.2192;
    e.detail.panel.overhang = Length::from_mm(at + 25.4 - 3.175 + 1e-6).unwrap();
    assert!(e.compute().is_ok());
    e.detail.panel.overhang = Length::from_mm(at + 25.4 - 3.175 - 0.5).unwrap();
    let refused = e.compute().unwrap_err();
    assert_eq!(refused.path(), "detail.panel.fold");
    let by = Length::parse(refused.message().rsplit(" by ").next().unwrap()).unwrap();
    assert!(near(by.mm(), 0.5), "{refused}");

    let mut e = asked(slope(20.0));
    e.detail.panel.gap = len("1/16\"");
    assert_eq!(paths(&e.compute().unwrap_err()), ["detail.panel.gap"]);
}

#[test]
fn fasteners_must_find_the_deck() {
    let mut e = asked(slope(20.0));
    e.detail.flange.fasteners_from_edge = len("5\"");
    e.detail.strip.fasteners_from_edge = len("3\"");
    let refused = e.compute().unwrap_err();
    assert_eq!(paths(&refused), ["detail.flange.fasteners_from_edge", "detail.strip.fasteners_from_edge"]);
    // 4 in wide and 1 1/4 in out leave 2 3/4 in on the deck.
    assert!(refused.others()[0].message().contains("6.35 mm"), "{refused}");
}

#[test]
fn what_must_be_said_is_said() {
    let numbers = |e: &Eave| e.compute().unwrap().cautions.iter().map(|c| c.code().number).collect::<Vec<_>>();
    let mut e = asked(slope(20.0));
    assert_eq!(numbers(&e), [0_u16; 0]);
    e.detail.face.clears = len("3/8\"");
    e.detail.flange.lies = FlangeLies::OverUnderlayment;
    e.detail.panel.fixed = Some(EaveFixing { up_the_slope: len("1\""), fasteners: row() });
    // So near the face, the hem reaches into it.
    assert_eq!(numbers(&e), [6010, 6011, 6012, 6084]);
    let solved = e.compute().unwrap();
    assert_eq!(solved.end(Side::First).unwrap().hold, Hold::Pins);
    assert!(solved.along.iter().any(|a| a.name == "panel fasteners" && matches!(a.what, Along::Fasteners { bites: Bites::Structure, .. })));
    let mut e = asked(slope(20.0));
    e.detail.face.clears = len("3\"");
    assert_eq!(numbers(&e), [6019]);
}

#[test]
fn bad_figures_are_told_at_once() {
    let mut e = asked(slope(20.0));
    e.detail.flange.width = Length::ZERO;
    e.detail.panel.gap = len("-1\"");
    e.detail.face.kick = degrees(90.0);
    e.detail.sheet.thickness = Length::ZERO;
    e.detail.strip.fasteners.spacing = Length::ZERO;
    let refused = e.compute().unwrap_err();
    assert_eq!(paths(&refused), ["detail.sheet.thickness", "detail.face.kick", "detail.strip.fasteners.spacing", "detail.flange.width", "detail.panel.gap"]);
    e = asked(slope(20.0));
    e.roof.levels = Levels { stand_off: len("-1\""), ..levels() };
    assert_eq!(e.compute().unwrap_err().path(), "roof.levels.stand_off");
}

#[cfg(feature = "serde")]
#[test]
fn an_eave_is_text_and_back() {
    let e = asked(Pitch::parse("4:12").unwrap());
    let text = serde_json::to_string(&e).unwrap();
    assert_eq!(serde_json::from_str::<Eave>(&text).unwrap(), e);
    assert!(serde_json::from_str::<Eave>(&text.replace("\"pitch\"", "\"slope\"")).is_err());
    assert!(serde_json::to_string(&e.compute().unwrap()).unwrap().contains("eave trim"));
}

#[cfg(feature = "serde")]
#[test]
fn what_a_job_leaves_out_is_common_practice() {
    let mut detail = asked(slope(20.0)).detail;
    detail.face.clears = practice::junction::DRIP_CLEARS_FACE;
    let left_out = ["/face/clears", "/face/hem/hooked/hem", "/panel/fold", "/panel/clearance", "/panel/engagement"];
    assert_eq!(read_without(&detail, &left_out), detail);
    detail.face.hem = DripHem::Closed { width: practice::junction::EDGE_HEM };
    assert_eq!(read_without(&detail, &["/face/hem/closed/width"]), detail);
}

proptest! {
    #[test]
    fn corners_lie_on_their_supports(a in 0.0_f64..60.0, lean in -20.0_f64..20.0, under in 0_i32..60, depth in 900_i32..3000, over in any::<bool>()) {
        let fall = 90.0 + lean;
        prop_assume!(fall > a + 5.0);
        let mut e = asked(slope(a));
        e.detail.front = EaveFront::BelowLevel(degrees(fall));
        e.roof.levels.underlayment = mm(under);
        e.detail.flange.lies = if over { FlangeLies::OverUnderlayment } else { FlangeLies::UnderUnderlayment };
        e.detail.face.depth = mm(depth);
        e.detail.panel.overhang = len("4\"");
        e.detail.strip.width = len("8\"");
        e.detail.flange.fasteners_from_edge = len("1/8\"");
        let solved = e.compute().unwrap();
        let trim = solved.trim("eave trim").unwrap();
        let (level, cleat) = (if over { f64::from(under) * 0.1 } else { 0.0 }, 28.0 * 0.0254);
        let c = &trim.corners;
        prop_assert!(near(off(c[0], -a), level) && near(off(c[1], -a), level));
        prop_assert!(near(off(c[1], -fall), cleat) && near(off(c[2], -fall), cleat));
        // The drip's edge stands clear of the trim's face by what was asked.
        prop_assert!(near(off(c[3], -fall), cleat + 15.875));
        // The cleat lies on the fascia, and behind the drip by its own thickness.
        let k = &solved.trim("continuous cleat").unwrap().corners;
        prop_assert!(near(off(k[0], -fall), 0.0) && near(off(k[1], -fall), 0.0));
        let kick = -fall + 40.0;
        prop_assert!(near(off(c[3], kick) - off(k[1], kick), cleat) && near(off(k[1], kick), off(k[2], kick)));
        // And it stops short of the fold by the trim's sheet and 1/16 in.
        let along = |p: super::SectionPoint| p.x.mm() * num::cos_deg(kick) + p.z.mm() * num::sin_deg(kick);
        prop_assert!(near(along(c[3]) - along(k[2]), 0.6096 + 1.5875));
        let s = &solved.trim("hook strip").unwrap().corners;
        prop_assert!(near(off(s[0], -a), level + 0.6096) && near(off(s[1], -a), level + 0.6096));
        // The legs are as long as the corners are apart.
        for (leg, pair) in trim.profile.legs.iter().zip(c.windows(2)) {
            prop_assert!(near(leg.length.mm(), between(pair[0], pair[1])));
        }
    }

    #[test]
    fn explaining_computes_the_same(a in 0.0_f64..70.0, fold in 1_i32..500, gap in 0_i32..200) {
        let mut e = asked(slope(a));
        e.detail.panel.fold = mm(fold);
        e.detail.panel.gap = mm(gap);
        match (e.compute(), e.explain()) {
            (Ok(out), Ok((same, working))) => {
                prop_assert_eq!(out, same);
                prop_assert!(working.steps().len() >= 7);
            }
            (Err(a), Err(b)) => prop_assert_eq!(a, b),
            (a, b) => prop_assert!(false, "{:?} {:?}", a, b),
        }
    }
}
