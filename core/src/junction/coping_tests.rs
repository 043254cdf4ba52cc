use super::test_sections::{between, cleat, degrees, len, mm, near, paths, row, sheet, slope};
use super::{Along, Bites, Coping, CopingDetail, CopingHold, CopingLap, CopingSide, LeastRule, Side, SlottedScrews};
use crate::error::ErrorKind;
use crate::num;
use crate::pitch::Pitch;
use crate::record::Calculation;
use crate::units::Length;
use proptest::prelude::*;

fn side() -> CopingSide {
    CopingSide { behind: Length::ZERO, depth: len("4\""), kick: degrees(40.0), clears: len("5/8\""), hold: CopingHold::Cleat(cleat()), over: None }
}

pub(super) fn screws() -> SlottedScrews {
    SlottedScrews { row: row(), above_bend: len("1\""), hem: len("1/2\""), shank: len("1/4\""), slot: len("1/2\""), travel: len("1/8\"") }
}

/// On a wall of 8 in that falls by 1:12, with the leg of a base flashing behind the cleat of the roof side.
pub(super) fn coping() -> Coping {
    let lap = CopingLap { below_top: Length::ZERO, rule: LeastRule::LAP_OVER_LEG };
    let roof_side = CopingSide { behind: len("0.6 mm"), over: Some(lap), ..side() };
    let detail = CopingDetail { sheet: sheet(), bed: len("1 mm"), fall: Pitch::parse("1:12").unwrap(), roof_side, outside: side() };
    Coping { thickness: len("8\""), detail }
}

#[test]
fn a_coping_worked_by_hand() {
    let solved = coping().compute().unwrap();
    assert_eq!(solved.trims.iter().map(|t| &*t.name).collect::<Vec<_>>(), ["continuous cleat, roof side", "continuous cleat, outside", "coping"]);
    let c = &solved.trim("coping").unwrap().corners;
    // The top lies 1 mm off a line of 1 in 12: z = x / 12 + sqrt(145) / 12. The faces stand off by a cleat of 0.7112 mm, that of the roof side by 0.6 mm more.
    let at = |x: f64| x / 12.0 + 145.0_f64.sqrt() / 12.0;
    let (inner, outer) = (-203.2 - 0.6 - 0.7112, 0.7112);
    assert!(near(c[2].x.mm(), inner) && near(c[2].z.mm(), at(inner)) && near(c[3].x.mm(), outer) && near(c[3].z.mm(), at(outer)));
    // The bends of the kick-outs: 4 in down from the top edge of each face, of which that on the roof side lies 8/12 in lower.
    let drop = 203.2 / 12.0;
    assert!(near(c[1].x.mm(), inner) && near(c[1].z.mm(), -drop - 101.6) && near(c[4].x.mm(), outer) && near(c[4].z.mm(), -101.6));
    // Each drip's edge stands 5/8 in out at 40 degrees from plumb.
    let down = 15.875 / num::tan_deg(40.0);
    assert!(near(c[0].x.mm(), inner - 15.875) && near(c[0].z.mm(), c[1].z.mm() - down));
    assert!(near(c[5].x.mm(), outer + 15.875) && near(c[5].z.mm(), -101.6 - down));
    let bends: Vec<f64> = solved.trim("coping").unwrap().profile.bends.iter().map(|b| b.angle.degrees()).collect();
    let fall = num::atan2_deg(1.0, 12.0);
    for (got, want) in bends.iter().zip([40.0, 90.0 - fall, 90.0 + fall, 40.0]) {
        assert!((got - want).abs() < 1e-9, "{got} {want}");
    }
    // The cleats lie on their faces; each reaches 2 in up from the bend behind the drip.
    for (name, x) in [("continuous cleat, roof side", -203.8), ("continuous cleat, outside", 0.0)] {
        let corners = &solved.trim(name).unwrap().corners;
        assert_eq!(corners.iter().filter(|c| near(c.x.mm(), x)).count(), 2, "{name}");
        let (high, low) = (corners.iter().map(|c| c.z).max().unwrap(), corners.iter().filter(|c| near(c.x.mm(), x)).map(|c| c.z).min().unwrap());
        assert!(near((high - low).length().unwrap().mm(), 50.8), "{name}");
    }
    assert_eq!(solved.cautions, []);
    assert!(solved.ends.is_empty());
    // The joint plate is the coping without its hems.
    let plate = coping().joint_plate().unwrap();
    let lengths = |p: &crate::trim::Profile| p.legs.iter().map(|l| l.length).collect::<Vec<_>>();
    assert_eq!(lengths(&plate), lengths(&solved.trim("coping").unwrap().profile));
    assert_eq!(plate.start_edge, crate::trim::Edge::Raw);
    let rule = crate::trim::BendRule::SharpCorner;
    assert!(crate::trim::FlatPattern { profile: plate, rule }.compute().is_ok(), "it can be folded");
}

#[test]
fn a_screwed_face_has_its_slots_and_its_line() {
    let mut c = coping();
    c.detail.roof_side.hold = CopingHold::Screws(screws());
    let solved = c.compute().unwrap();
    let found = solved.along.iter().find(|a| a.name == "face screws").unwrap();
    assert!(matches!(found.what, Along::Fasteners { bites: Bites::Slot, .. }) && found.side == Side::First);
    assert_eq!(found.from_line, len("-3\""));
    assert_eq!(solved.trims.len(), 2);
    assert_eq!(solved.along.iter().filter(|a| a.what == Along::ContinuousCleat).count(), 1);
}

#[test]
fn faults_are_told_by_how_much() {
    let refused = |change: &dyn Fn(&mut Coping)| {
        let mut c = coping();
        change(&mut c);
        c.compute().unwrap_err()
    };
    // 4 in of face over a flashing that ends 1 in below the top: 1 in short of 4 in.
    let e = refused(&|c| c.detail.roof_side.over.as_mut().unwrap().below_top = len("1\""));
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "detail.roof_side.depth"));
    assert_eq!(e.message(), "lap over the leg that comes up under it: 76.2 mm, too little by 25.4 mm");
    assert_eq!(e.cure(), Some("a face deeper by 25.4 mm"));
    // 1/4 in of shank and 3/8 in of travel in a slot of 1/2 in.
    let e = refused(&|c| c.detail.roof_side.hold = CopingHold::Screws(SlottedScrews { travel: len("3/8\""), ..screws() }));
    assert_eq!((e.path(), e.message()), ("detail.roof_side.hold.screws.slot", "the slot binds on its screw by 3.175 mm"));
    let e = refused(&|c| {
        c.detail.roof_side.hold = CopingHold::Screws(screws());
        c.detail.outside.hold = CopingHold::Screws(screws());
    });
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "detail.outside.hold"));
    let e = refused(&|c| c.detail.outside.depth = len("1\""));
    assert_eq!(
        (e.path(), e.message().starts_with("the cleat passes the upper edge of the face that it lies on by")),
        ("detail.outside.hold.cleat.height", true),
        "{e}"
    );
    let e = refused(&|c| c.detail.fall = slope(50.0));
    assert_eq!(e.path(), "detail.fall");
    // All faults at once.
    let e = refused(&|c| {
        c.thickness = Length::ZERO;
        c.detail.bed = len("-1 mm");
        c.detail.roof_side.kick = degrees(90.0);
        c.detail.outside.clears = Length::ZERO;
    });
    assert_eq!(paths(&e), ["thickness", "detail.bed", "detail.roof_side.kick", "detail.outside.clears"]);
    // A hem that is folded toward the wall reaches into it where the drip hardly turns out.
    let e = refused(&|c| {
        c.detail.outside.kick = degrees(6.0);
        c.detail.outside.clears = len("1/16\"");
        if let CopingHold::Cleat(cleat) = &mut c.detail.outside.hold {
            cleat.hem_gap = len("1/4\"");
        }
    });
    assert!(e.message().contains("run into each other by"), "{e}");
}

#[test]
fn a_nearly_level_top_is_told() {
    for (fall, told) in [("0:12", 1), ("1/4:12", 1), ("1/2:12", 0)] {
        let mut c = coping();
        c.detail.fall = Pitch::parse(fall).unwrap();
        let solved = c.compute().unwrap();
        assert_eq!(solved.cautions.iter().filter(|c| c.code().number == 6090).count(), told, "{fall}");
    }
}

#[cfg(feature = "serde")]
#[test]
fn a_coping_is_text_and_back() {
    let c = coping();
    assert_eq!(super::test_sections::read_without(&c, &[]), c);
    let mut usual = c;
    usual.detail.outside.clears = crate::practice::junction::DRIP_CLEARS_FACE;
    assert_eq!(super::test_sections::read_without(&usual, &["/detail/outside/clears"]), usual);
}

proptest! {
    #[test]
    fn corners_lie_on_their_supports(t in 600_i32..6000, a in 0.0_f64..20.0, behind in 0_i32..400, bed in 0_i32..60, depth in 1100_i32..3000, kick in 25.0_f64..60.0) {
        let mut c = coping();
        c.thickness = mm(t);
        (c.detail.fall, c.detail.bed) = (slope(a), mm(bed));
        (c.detail.roof_side.behind, c.detail.roof_side.depth, c.detail.roof_side.kick) = (mm(behind), mm(depth), degrees(kick));
        c.detail.roof_side.clears = len("1\"");
        let solved = c.compute().unwrap();
        let cap = solved.trim("coping").unwrap();
        let p = &cap.corners;
        let off = |i: usize| p[i].z.mm() * num::cos_deg(a) - p[i].x.mm() * num::sin_deg(a);
        prop_assert!(near(off(2), mm(bed).mm()) && near(off(3), mm(bed).mm()));
        let inner = -(mm(t).mm() + mm(behind).mm() + 0.7112);
        prop_assert!(near(p[1].x.mm(), inner) && near(p[2].x.mm(), inner) && near(p[0].x.mm(), inner - 25.4));
        prop_assert!(near(p[1].z.mm(), -mm(t).mm() * num::tan_deg(a) - mm(depth).mm()));
        for (leg, pair) in cap.profile.legs.iter().zip(p.windows(2)) {
            prop_assert!(near(leg.length.mm(), between(pair[0], pair[1])));
        }
        prop_assert!((cap.profile.bends[1].angle.degrees() + cap.profile.bends[2].angle.degrees() - 180.0).abs() < 1e-9);
        let rule = crate::trim::BendRule::SharpCorner;
        prop_assert!(cap.profile.unfold(&rule).unwrap().girth().is_positive());
    }

    #[test]
    fn a_level_coping_with_like_faces_is_its_own_mirror_image(t in 600_i32..6000, depth in 1100_i32..3000) {
        let mut c = coping();
        (c.thickness, c.detail.fall) = (mm(t), slope(0.0));
        c.detail.outside.depth = mm(depth);
        c.detail.roof_side = c.detail.outside.clone();
        let solved = c.compute().unwrap();
        let p = &solved.trim("coping").unwrap().corners;
        for (i, one) in p.iter().enumerate() {
            let other = p[p.len() - 1 - i];
            prop_assert!(near(one.x.mm() + other.x.mm(), -mm(t).mm()) && near(one.z.mm(), other.z.mm()));
        }
        let profile = &solved.trim("coping").unwrap().profile;
        for (a, b) in profile.legs.iter().zip(profile.legs.iter().rev()) {
            prop_assert!((a.length.pm() - b.length.pm()).abs() <= 2);
        }
        let (one, other) = (&solved.trims[0], &solved.trims[1]);
        prop_assert_eq!(one.profile.legs.len(), other.profile.legs.len());
        for (a, b) in one.corners.iter().zip(other.corners.iter().rev()) {
            prop_assert!(near(a.x.mm() + b.x.mm(), -mm(t).mm()) && near(a.z.mm(), b.z.mm()));
        }
    }

    #[test]
    fn explaining_computes_the_same(t in 0_i32..4000, depth in 0_i32..2000) {
        let mut c = coping();
        (c.thickness, c.detail.roof_side.depth) = (mm(t), mm(depth));
        match (c.compute(), c.explain()) {
            (Ok(out), Ok((same, working))) => {
                prop_assert_eq!(out, same);
                prop_assert!(working.steps().len() >= 5);
            }
            (Err(a), Err(b)) => prop_assert_eq!(a, b),
            (a, b) => prop_assert!(false, "{:?} {:?}", a, b),
        }
    }
}
