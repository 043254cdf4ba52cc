use super::eave_parts::{DeckFlange, EavePanel, FlangeLies, HookStrip};
use super::test_sections::{between, degrees, face, len, mm, near, off, paths, roof, row, sheet, slope, top_end};
use super::{Along, Datum, Eave, EaveDetail, EaveFront, FastenerRow, LeastRule, Side, Step, StepDetail, StepLower, StepUpper};
use crate::error::ErrorKind;
use crate::num;
use crate::panel::{Hold, Reach};
use crate::practice::{junction as practice, movement, panel};
use crate::record::Calculation;
use crate::units::Length;
use proptest::prelude::*;

fn upper() -> StepUpper {
    StepUpper {
        sheet: sheet(),
        flange: DeckFlange { width: len("4\""), lies: FlangeLies::UnderUnderlayment, fasteners: row(), fasteners_from_edge: len("1\"") },
        face: super::DripFace { depth: len("5\""), ..face() },
        strip: HookStrip { sheet: sheet(), width: len("4\""), fasteners: row(), fasteners_from_edge: len("1\"") },
        panel: EavePanel {
            overhang: len("1 1/2\""),
            gap: len("1/4\""),
            fold: panel::END_FOLD,
            fold_opening: len("3/16\""),
            clearance: movement::CLEARANCE,
            engagement: movement::ENGAGEMENT,
            fixed: None,
        },
    }
}

/// Over a riser of 15 in, 1/8 in of sheathing behind the leg, whose top ends 1 in under the upper deck's edge.
pub(super) fn step(lower: f64, over: f64) -> Step {
    let lower_side = StepLower {
        end: top_end(),
        sheet: sheet(),
        stands_out: len("1/8\""),
        below_edge: len("1\""),
        upstand: LeastRule::UFGS_UPSTAND,
        fasteners: FastenerRow::UFGS_WALL_LEG,
        fasteners_below_top: len("1\""),
        lap: LeastRule::LAP_OVER_LEG,
        clearance: len("1\""),
    };
    Step { lower: roof(slope(lower)), upper: roof(slope(over)), riser: len("15\""), detail: StepDetail { lower: lower_side, upper: upper() } }
}

#[test]
fn a_step_worked_by_hand() {
    let s = step(30.0, 20.0);
    let solved = s.compute().unwrap();
    assert_eq!(solved.trims.iter().map(|t| &*t.name).collect::<Vec<_>>(), ["lower flashing", "continuous cleat", "eave trim", "hook strip"]);
    let c = &solved.trim("lower flashing").unwrap().corners;
    // Seam tops 48 mm out of 30 degrees, the leg 1/8 in out: z cos 30 = 48 - 3.175 sin 30.
    let z = (48.0 - 3.175 * 0.5) * 2.0 / 3.0_f64.sqrt();
    assert!(near(c[2].x.mm(), -3.175) && near(c[2].z.mm(), z));
    // The leg's top lies 14 in over the foot.
    assert!(near(c[3].x.mm(), -3.175) && near(c[3].z.mm(), 355.6));
    let legs = &solved.trim("lower flashing").unwrap().profile.legs;
    assert!(near(legs[2].length.mm(), 355.6 - z));
    assert!((solved.trim("lower flashing").unwrap().profile.bends[1].angle.degrees() - 60.0).abs() < 1e-9);
    // The face of the upper trim hangs before the sheathing, the leg and the cleat: 3.175 + 0.6096 + 0.7112 mm, its kick-out 5 in under the edge.
    let out = -(3.175 + 0.6096 + 0.7112);
    let e = &solved.trim("eave trim").unwrap().corners;
    let bend = e.iter().find(|p| near(p.z.mm(), 381.0 - 127.0)).unwrap();
    assert!(near(bend.x.mm(), out));
    // Its deck flange lies on the upper deck: through (0, 381) at 20 degrees.
    let on_deck = e.iter().filter(|p| near((p.z.mm() - 381.0) * num::cos_deg(20.0) - p.x.mm() * num::sin_deg(20.0), 0.0)).count();
    assert_eq!(on_deck, 2);
    let (lower, upper) = (solved.end(Side::First).unwrap(), solved.end(Side::Second).unwrap());
    assert_eq!((lower.reach, lower.hold), (Reach::HoldBack(len("2\"")), Hold::Pins));
    assert_eq!((upper.reach, upper.hold, upper.gap), (Reach::Overhang(len("1 1/2\"")), Hold::Slides, len("1/4\"")));
    // On the riser all is measured down from the upper deck's edge.
    let on_riser: Vec<_> = solved.lines.iter().filter(|l| l.side == Side::Riser).map(|l| (&*l.name, l.datum.clone(), l.from_line)).collect();
    assert_eq!(on_riser[0], ("leg, top edge", Datum::JunctionLine, len("-1\"")));
    assert_eq!(on_riser[1], ("leg fasteners", Datum::Line("leg, top edge".into()), len("-2\"")));
    assert_eq!((on_riser[2].0, on_riser.len()), ("continuous cleat, top edge", 4));
    assert!(solved.along.iter().any(|a| a.what == Along::ContinuousCleat && a.side == Side::Riser));
}

#[test]
fn the_upper_side_is_an_eave_seen_from_behind() {
    let mut s = step(15.0, 25.0);
    // Nothing on the riser but a leg of no thickness to speak of: the eave itself.
    s.detail.lower.stands_out = Length::ZERO;
    s.detail.lower.sheet.thickness = Length::from_pm(1);
    s.detail.lower.sheet.inside_radius = Length::ZERO;
    let u = &s.detail.upper;
    let detail = EaveDetail {
        sheet: u.sheet,
        flange: u.flange.clone(),
        on_deck: LeastRule::IRC_OVER_EDGE_METAL,
        below_deck: LeastRule::IRC_BELOW_DECK,
        front: EaveFront::Plumb,
        face: u.face.clone(),
        strip: u.strip.clone(),
        panel: u.panel.clone(),
        gutter: None,
    };
    let eave = Eave { roof: s.upper, detail }.compute().unwrap();
    let solved = s.compute().unwrap();
    for trim in &eave.trims {
        let own = solved.trim(&trim.name).unwrap();
        for (p, q) in trim.corners.iter().rev().zip(&own.corners) {
            assert!(near(-p.x.mm(), q.x.mm()) && near(p.z.mm() + 381.0, q.z.mm()), "{}", trim.name);
        }
        assert_eq!(own.profile.bends.len(), trim.profile.bends.len());
    }
    let nose = |lines: &[super::LayoutLine]| lines.iter().find(|l| l.name == "panel nose").unwrap().from_line;
    assert_eq!(nose(&eave.lines), nose(&solved.lines));
}

#[test]
fn a_riser_too_low_is_refused_by_how_much() {
    // Level below: 48 mm to the flange, the pan 1.6 mm over the deck, and 8 in are asked over it: 203.2 + 1.6 + 25.4 mm.
    let mut s = step(0.0, 20.0);
    s.lower.pitch = crate::pitch::Pitch::parse("0:12").unwrap();
    s.riser = mm(2200);
    s.detail.upper.face.depth = len("3\"");
    s.detail.lower.lap.least = len("2\"");
    let e = s.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "riser"));
    assert_eq!(e.message(), "the riser is too low for the base flashing up the wall: 193 mm, too little by 10.2 mm");
    assert!(e.cure().unwrap().starts_with("a riser higher by 10.2 mm"), "{e}");
    s.riser = mm(2302);
    s.compute().unwrap();
    // On a slope the same upstand takes more of the riser.
    let mut s = step(40.0, 20.0);
    s.riser = len("9\"");
    let more = s.compute().unwrap_err();
    assert_eq!(more.path(), "riser");
}

#[test]
fn faults_are_told_at_once_and_by_how_much() {
    let mut s = step(30.0, 20.0);
    s.riser = len("-1\"");
    s.lower.levels.tape = len("-1 mm");
    s.detail.lower.clearance = len("-1\"");
    assert_eq!(paths(&s.compute().unwrap_err()), ["riser", "lower.levels.tape", "detail.lower.clearance"]);
    // 5 in of face over a leg that ends 2 in under the edge: 1 in short of 4 in.
    let mut s = step(30.0, 20.0);
    s.detail.lower.below_edge = len("2\"");
    let e = s.compute().unwrap_err();
    assert_eq!((e.path(), e.message()), ("detail.upper.face.depth", "lap over the leg that comes up under it: 76.2 mm, too little by 25.4 mm"));
    let mut s = step(30.0, 20.0);
    s.detail.lower.fasteners_below_top = len("5\"");
    assert_eq!(s.compute().unwrap_err().path(), "detail.lower.fasteners_below_top");
    let mut s = step(5.0, 20.0);
    s.detail.upper.face.depth = len("12\"");
    let e = s.compute().unwrap_err();
    assert_eq!(e.path(), "detail.upper.face.depth");
    assert!(e.message().starts_with("the upper trim's drip comes too near the flange under it by "), "{e}");
    // What the eave refuses is told in the step's own terms.
    let mut s = step(30.0, 20.0);
    s.detail.upper.panel.fold = len("1/4\"");
    assert_eq!(s.compute().unwrap_err().path(), "detail.upper.panel.fold");
    let mut s = step(30.0, 20.0);
    s.detail.lower.end.hold_back = len("7\"");
    assert_eq!(s.compute().unwrap_err().path(), "detail.lower.end.hold_back");
}

#[cfg(feature = "serde")]
#[test]
fn a_step_is_text_and_back() {
    let s = step(30.0, 20.0);
    assert_eq!(super::test_sections::read_without(&s, &[]), s);
}

proptest! {
    #[test]
    fn corners_lie_on_their_supports(a in 0.0_f64..45.0, b in 3.0_f64..30.0, riser in 4500_i32..9000, out in 0_i32..200, stand_off in 0_i32..150) {
        let mut s = step(a, b);
        (s.riser, s.detail.lower.stands_out) = (mm(riser), mm(out));
        s.lower.levels.stand_off = mm(stand_off);
        s.detail.lower.end.flange = len("14\"");
        s.detail.upper.panel.overhang = len("2 1/4\"");
        let solved = s.compute().unwrap();
        let low = solved.trim("lower flashing").unwrap();
        let h = 48.0 + mm(stand_off).mm();
        prop_assert!(near(off(low.corners[1], a), h) && near(off(low.corners[2], a), h));
        prop_assert!(near(low.corners[2].x.mm(), -mm(out).mm()) && near(low.corners[3].z.mm(), mm(riser).mm() - 25.4));
        for trim in &solved.trims {
            for (leg, pair) in trim.profile.legs.iter().zip(trim.corners.windows(2)) {
                prop_assert!(near(leg.length.mm(), between(pair[0], pair[1])), "{}", trim.name);
            }
        }
        prop_assert_eq!(&solved, &s.explain().unwrap().0);
    }

    #[test]
    fn a_riser_at_the_least_height_told_is_built(a in 0.0_f64..40.0, riser in 1000_i32..2400) {
        let mut s = step(a, 20.0);
        s.riser = mm(riser);
        s.detail.upper.face.depth = len("3\"");
        s.detail.lower.lap.least = len("2\"");
        s.detail.lower.clearance = Length::ZERO;
        if let Err(e) = s.compute() {
            prop_assert_eq!(e.path(), "riser");
            let least = e.allowed().unwrap().split(" or more").next().unwrap().to_owned();
            s.riser = (Length::parse(&least).unwrap() + Length::from_pm(2)).length().unwrap();
            prop_assert!(s.compute().is_ok(), "{:?}", s.compute());
        }
        let kick = degrees(30.0);
        s.detail.upper.face.kick = kick;
        prop_assert!(practice::DRIP_CLEARS_FACE.is_positive());
    }
}
