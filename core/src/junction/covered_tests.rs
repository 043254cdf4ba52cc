//! Hip and headwall: panels that end under a flange on the seam tops.

use super::test_sections::{between as distance, len, paths, row};
use super::{
    Along, Bites, Counterflashing, DripEdge, FastenerRow, Headwall, HeadwallDetail, Hip, HipDetail, LeastRule, Levels, RidgeVent, RoofSide, SectionPoint, Side,
    Solved, TopClosure, TopEnd, TrimSheet, WallCover, WallLeg,
};
use crate::closure::Face;
use crate::error::ErrorKind;
use crate::num;
use crate::panel::{Hold, Reach};
use crate::pitch::{BendAt, Corner, Pitch};
use crate::practice::junction as practice;
use crate::record::{Calculation, Source};
use crate::units::{Angle, Length};
use proptest::prelude::*;

fn mm(mm: f64) -> Length {
    Length::from_mm(mm).unwrap()
}

fn levels() -> Levels {
    Levels { seam_height: len("1 3/4\""), tape: len("1/16\""), ..Levels::default() }
}

/// Closures as the trade sets them: their leading edge 1/2 in back, their screws 2 3/8 in behind it.
fn end() -> TopEnd {
    TopEnd {
        flange: len("9\""),
        cover: LeastRule::UFGS_UNSOLDERED,
        drip: DripEdge { leg: len("3/4\""), turn: practice::DRIP_TURN, hem: practice::EDGE_HEM, above_pan: len("1/4\"") },
        closure: TopClosure {
            set_back: crate::practice::closure::SET_BACK,
            face: Face::LeadingEdge,
            lower_flange: len("2 1/2\""),
            top_flange: len("1 1/8\""),
            tape_width: len("7/8\""),
            tape_beneath: len("1/16\""),
            panel_margin: LeastRule::PANEL_MARGIN,
        },
        bites: Bites::Structure,
        screws: row(),
        rivets: None,
        hollow_seams: false,
        cap_tape_width: len("7/8\""),
        hold_back: len("2\""),
        clearance: len("1/4\""),
        turn_up: len("1\""),
        field_trim: len("2\""),
    }
}

const SHEET: TrimSheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };

pub(super) fn hip(first: &str, second: &str, plan: f64) -> Hip {
    let corner = Corner { first: Pitch::parse(first).unwrap(), second: Pitch::parse(second).unwrap(), plan: Angle::degrees_from(plan).unwrap() };
    Hip { corner, first: levels(), second: levels(), detail: HipDetail { first: end(), second: end(), sheet: SHEET } }
}

pub(super) fn headwall(pitch: &str) -> Headwall {
    let wall = WallLeg {
        leg: len("10\""),
        stands_out: len("1/8\""),
        upstand: LeastRule::UFGS_UPSTAND,
        fasteners: Some(FastenerRow::UFGS_WALL_LEG),
        fasteners_below_top: len("1\""),
        cover: WallCover::Cladding { lap: len("7\""), rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: len("1\"") },
    };
    Headwall {
        roof: RoofSide { pitch: Pitch::parse(pitch).unwrap(), levels: levels() },
        detail: HeadwallDetail { end: TopEnd { field_trim: Length::ZERO, ..end() }, sheet: SHEET, wall, vent: RidgeVent::Closed },
    }
}

pub(super) fn reglet() -> Counterflashing {
    Counterflashing {
        tongue: len("2\""),
        rule: LeastRule::UFGS_INTO_WALL,
        above_leg: len("1\""),
        face: len("5\""),
        least_lap: LeastRule::LAP_OVER_LEG,
        hem: practice::EDGE_HEM,
        wedges: Some(FastenerRow::UFGS_WEDGES),
        bead_width: len("1/4\""),
        bead_depth: len("1/4\""),
    }
}

/// Height above a plane through the origin that rises at so many degrees toward +x.
fn above(p: SectionPoint, rise: f64) -> f64 {
    p.z.mm() * num::cos_deg(rise) - p.x.mm() * num::sin_deg(rise)
}

fn from_line(solved: &Solved, side: Side, name: &str) -> Length {
    solved.along.iter().find(|a| a.side == side && a.name == name).unwrap().from_line
}

#[test]
fn the_cap_of_a_square_hip_of_equal_pitches_stands_plumb_over_the_line() {
    let solved = hip("6:12", "6:12", 90.0).compute().unwrap();
    let cap = solved.trim("hip cap").unwrap();
    assert_eq!(cap.corners.len(), 5);
    let ridge = cap.corners[2];
    assert!(ridge.x.pm().abs() <= 2);
    // Unit normals of two planes of 6:12 at a square corner: (-1, 0, 2)/sqrt 5 and (0, -1, 2)/sqrt 5; their product is 4/5, the cosine of the bend.
    let bend = num::acos_deg(0.8);
    let h = 25.4 * 1.8125;
    assert!((ridge.z.mm() - h / num::cos_deg(bend / 2.0)).abs() < 1e-9);
    assert!((cap.profile.bends[1].angle.degrees() - bend).abs() < 1e-9);
    // Along each side: h tan(bend/2) up, less the flange; the closure and its screws step up from there.
    let edge = h * num::tan_deg(bend / 2.0) - 9.0 * 25.4;
    for side in [Side::First, Side::Second] {
        assert!((from_line(&solved, side, "closures").mm() - edge - 1.625 * 25.4).abs() < 1e-9);
        assert!((from_line(&solved, side, "tape over the closures").mm() - edge - (0.5 + 0.5625) * 25.4).abs() < 1e-9);
        assert!((from_line(&solved, side, "closure screws").mm() - edge - 2.875 * 25.4).abs() < 1e-9);
        let end = solved.end(side).unwrap();
        assert_eq!((end.reach, end.hold, end.turn_up, end.field_trim), (Reach::HoldBack(len("2\"")), Hold::Pins, len("1\""), len("2\"")));
    }
}

#[test]
fn what_the_closures_bite_decides_whether_the_panels_are_pinned() {
    let mut h = hip("6:12", "6:12", 90.0);
    h.detail.second.bites = Bites::Panel;
    let solved = h.compute().unwrap();
    assert_eq!((solved.end(Side::First).unwrap().hold, solved.end(Side::Second).unwrap().hold), (Hold::Pins, Hold::Slides));
    h.detail.second.bites = Bites::Trim;
    assert_eq!(h.compute().unwrap_err().path(), "detail.second.bites");
}

/// Tape is no fastener: common practice, no published source.
#[test]
fn a_cap_or_a_flashing_that_nothing_holds_is_said() {
    let loose = |h: &Hip| h.compute().unwrap().cautions.iter().any(|c| c.code().number == 6075);
    let mut h = hip("6:12", "6:12", 90.0);
    assert!(loose(&h));
    h.detail.second.closure.set_back = practice::RIVET_REACH;
    h.detail.second.rivets = Some(row());
    assert!(!loose(&h));
    let mut w = headwall("4:12");
    w.detail.wall.fasteners = None;
    let e = w.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Missing, "detail.wall.fasteners"));
    (w.detail.end.closure.set_back, w.detail.end.rivets) = (practice::RIVET_REACH, Some(row()));
    assert!(!w.compute().unwrap().along.iter().any(|a| a.name == "leg fasteners"));
}

#[test]
fn a_negative_backing_asks_for_more_hold_back() {
    // Side 1 of 2:12 against 12:12 at 130 degrees: its plan angle is more than 90 degrees.
    let mut h = hip("2:12", "12:12", 130.0);
    assert!(h.corner.compute().unwrap().first.backing.degrees() < 0.0);
    h.first.seam_height = len("6\"");
    h.second.seam_height = len("1\"");
    h.detail.first.turn_up = Length::ZERO;
    h.detail.first.hold_back = Length::ZERO;
    let e = h.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "detail.first.hold_back"));
    assert!(e.message().contains("pierce the trim's other flange by"), "{e}");
}

#[test]
fn the_ends_are_refused_by_how_much() {
    let mut h = hip("6:12", "6:12", 90.0);
    h.detail.first.turn_up = len("2\"");
    h.detail.second.hold_back = len("12\"");
    let e = h.compute().unwrap_err();
    // 1 13/16 in of room for 2 in: 3/16 in short.
    assert_eq!((e.path(), e.message()), ("detail.first.turn_up", "the turned-up pan lifts the flange by 4.7625 mm"));
    assert_eq!(paths(&e), ["detail.first.turn_up", "detail.second.hold_back", "detail.second.flange"]);
    assert!(e.others()[0].message().contains("beyond the closures' lower flange: "), "{e}");
    h.detail.first.flange = len("-1\"");
    assert_eq!(h.compute().unwrap_err().path(), "detail.first.flange");
}

#[test]
fn flat_edges_and_skew_ends_are_said() {
    let mut h = hip("6:12", "6:12", 90.0);
    let numbers = |h: &Hip| h.compute().unwrap().cautions.iter().map(|c| (c.code().number, c.subject().to_owned())).collect::<Vec<_>>();
    let said = [(6052, "detail.first.drip".to_owned()), (6052, "detail.second.drip".to_owned()), (6075, "hip cap".to_owned())];
    assert_eq!(numbers(&h), said);
    h.detail.first.drip.leg = Length::ZERO;
    h.detail.first.rivets = Some(row());
    h.detail.second.field_trim = Length::ZERO;
    let said = [(6051, "detail.first.rivets".to_owned()), (6052, "detail.second.drip".to_owned()), (6050, "detail.second.field_trim".to_owned())];
    assert_eq!(numbers(&h), said);
    // Closures 1/2 in behind a drip are out of reach of rivets through it.
    h.detail.second.rivets = Some(row());
    let e = h.compute().unwrap_err();
    assert_eq!(e.path(), "detail.second.closure.set_back");
    assert!(e.message().ends_with("by 9.525 mm"), "{e}");
    h.detail.second.rivets = None;
    assert_eq!(h.compute().unwrap().trim("hip cap").unwrap().corners.len(), 4);
}

#[test]
fn a_headwall_by_hand() {
    // 12:12: h and the distance from the wall give z = h sqrt 2 - w; the bend is 45 degrees.
    let w = headwall("12:12");
    let (h, out) = (25.4 * 1.8125, 25.4 / 8.0);
    let solved = w.compute().unwrap();
    let flashing = solved.trim("headwall flashing").unwrap();
    let [.., bend, top] = flashing.corners[..] else { panic!() };
    assert!((bend.x.mm() + out).abs() < 1e-9 && (bend.z.mm() - (h * std::f64::consts::SQRT_2 - out)).abs() < 1e-9);
    assert!((top.z.mm() - bend.z.mm() - 254.0).abs() < 1e-9);
    assert!((flashing.profile.bends[1].angle.degrees() - 45.0).abs() < 1e-9);
    assert!(matches!(solved.along[1].what, Along::Closures { web } if web == len("1 11/16\"")));
}

#[test]
fn an_upstand_is_measured_square_to_the_pan() {
    // On 12:12 the flange lies 1 13/16 in over the pan, and 10 in of leg count for 7.071 in: 8.88 in. Of 8 in of leg there is 7.47 in.
    let mut w = headwall("12:12");
    assert!(w.compute().is_ok());
    w.detail.wall.leg = len("8\"");
    let e = w.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "detail.wall.leg"));
    let short = 203.2 - (25.4 * 1.8125 + 203.2 * num::cos_deg(45.0));
    assert!(e.message().ends_with(&format!("too little by {}", mm(short))), "{e}");
    assert!(e.allowed().unwrap().contains("UFGS-07600, 3.1.11"), "{e}");
    // The cure cures it.
    w.detail.wall.leg = mm(203.2 + short / num::cos_deg(45.0) + 1e-6);
    assert!(w.compute().is_ok());
}

#[test]
fn a_reglet_covers_the_leg() {
    let mut w = headwall("4:12");
    w.detail.wall.cover = WallCover::Reglet(Box::new(reglet()));
    let solved = w.compute().unwrap();
    let [foot, corner, tongue] = solved.trim("counterflashing").unwrap().corners[..] else { panic!() };
    let top = *solved.trim("headwall flashing").unwrap().corners.last().unwrap();
    assert!((top.x.mm() - corner.x.mm() - 2.0 * 0.024 * 25.4).abs() < 1e-9, "its hem lies on the outer face of the leg");
    assert!((corner.z.mm() - top.z.mm() - 25.4).abs() < 1e-9 && (top.z.mm() - foot.z.mm() - 4.0 * 25.4).abs() < 1e-9);
    assert!((tongue.x.mm() - 50.8).abs() < 1e-9);
    w.detail.wall.cover = WallCover::Reglet(Box::new(Counterflashing { tongue: len("1 1/2\""), face: len("4\""), ..reglet() }));
    let e = w.compute().unwrap_err();
    assert_eq!(paths(&e), ["detail.wall.cover.reglet.tongue", "detail.wall.cover.reglet.face"]);
    w.detail.wall.cover = WallCover::Cladding { lap: len("5\""), rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: len("6\"") };
    let e = w.compute().unwrap_err();
    assert_eq!((e.path(), e.others()[0].path()), ("detail.wall.cover.cladding.lap", "detail.wall.cover.cladding.clearance"));
}

/// UFGS-07600, 3.1.13.1: wedges at 18 in.
#[test]
fn wedges_hold_a_counterflashing() {
    let mut w = headwall("12:12");
    w.detail.wall.cover = WallCover::Reglet(Box::new(reglet()));
    let at = |w: &Headwall, name: &str| w.compute().unwrap().along.iter().find(|a| a.name == name).cloned();
    let (wedges, bead) = (at(&w, "reglet wedges").unwrap(), at(&w, "reglet bead").unwrap());
    assert_eq!((wedges.side, wedges.from_line), (Side::Second, bead.from_line));
    assert!(matches!(wedges.what, Along::Fasteners { spacing, .. } if spacing == len("18\"")));
    w.detail.wall.cover = WallCover::Reglet(Box::new(Counterflashing { wedges: None, ..reglet() }));
    assert!(at(&w, "reglet wedges").is_none());
    w.detail.wall.cover = WallCover::Reglet(Box::new(Counterflashing { wedges: Some(FastenerRow { spacing: Length::ZERO, ..row() }), ..reglet() }));
    assert_eq!(w.compute().unwrap_err().path(), "detail.wall.cover.reglet.wedges.spacing");
}

#[test]
fn panels_stay_clear_of_the_wall() {
    let mut w = headwall("12:12");
    // 1/8 in from the wall is 0.177 in along 12:12; with 1/4 in clear: 0.4268 in.
    w.detail.end.hold_back = len("0.42 in");
    assert_eq!(w.compute().unwrap_err().path(), "detail.end.hold_back");
    w.detail.end.hold_back = len("0.43 in");
    assert!(w.compute().is_ok());
}

#[test]
fn a_vented_headwall_lets_through_the_lesser_of_its_slot_and_its_webs() {
    let mut w = headwall("4:12");
    w.detail.vent = RidgeVent::Vented { slot: len("1 1/2\""), open_ratio: 0.4 };
    let solved = w.compute().unwrap();
    // A web of 1 11/16 in, 0.4 of it open: 0.675 in, less than the slot.
    let told = solved.cautions.iter().find(|c| c.code().number == 6018).unwrap();
    assert!(told.message().contains("leave 17.145 mm of free height and the slot in the deck is 38.1 mm wide"), "{}", told.message());
    let line = solved.lines.iter().find(|l| l.name == "edge of the slot").unwrap();
    assert_eq!((line.side, line.from_line), (Side::First, len("-1 1/2\"")));
    let closed = headwall("4:12").compute().unwrap();
    assert_eq!((&solved.trims, &solved.along, &solved.ends), (&closed.trims, &closed.along, &closed.ends));
    // The panels are held back 2 in: a slot wider than that lies under them.
    w.detail.vent = RidgeVent::Vented { slot: len("2 1/4\""), open_ratio: 0.4 };
    let e = w.compute().unwrap_err();
    assert_eq!((e.path(), e.message()), ("detail.end.hold_back", "the pan covers the slot in the deck by 6.35 mm"));
    w.detail.vent = RidgeVent::Vented { slot: Length::ZERO, open_ratio: 1.4 };
    assert_eq!(paths(&w.compute().unwrap_err()), ["detail.vent.vented.slot", "detail.vent.vented.open_ratio"]);
}

#[test]
fn published_least_rules() {
    for rule in LeastRule::ALL {
        assert!(rule.least.is_positive() && matches!(rule.source, Source::Published(_)), "{rule:?}");
    }
    assert_eq!(LeastRule::UFGS_UPSTAND.source.to_string(), "UFGS-07600, 3.1.11");
}

#[cfg(feature = "serde")]
#[test]
fn what_is_asked_is_read_back() {
    let h = hip("6:12", "8:12", 90.0);
    assert_eq!(serde_json::from_str::<Hip>(&serde_json::to_string(&h).unwrap()).unwrap(), h);
    for cover in [headwall("4:12").detail.wall.cover, WallCover::Reglet(Box::new(reglet()))] {
        let mut w = headwall("4:12");
        w.detail.wall.cover = cover;
        let text = serde_json::to_string(&w).unwrap();
        assert_eq!(serde_json::from_str::<Headwall>(&text).unwrap(), w);
        assert!(serde_json::from_str::<Headwall>(&text.replacen('{', r#"{"other":1,"#, 1)).is_err());
    }
}

proptest! {
    #[test]
    fn the_caps_corners_lie_on_their_supports(a in 1_i32..96, b in 1_i32..96, plan in 20.0_f64..160.0, h1 in 10_i32..90, h2 in 10_i32..90) {
        let eighth = |n: i32| Pitch::in_twelve(Length::inches_64(n * 8)).unwrap();
        let mut h = hip("6:12", "6:12", plan);
        h.corner = Corner { first: eighth(a), second: eighth(b), plan: Angle::degrees_from(plan).unwrap() };
        h.first = Levels { seam_height: Length::micrometres(h1 * 1000), ..Levels::default() };
        h.second = Levels { seam_height: Length::micrometres(h2 * 1000), ..Levels::default() };
        // Room enough that nothing but geometry is at stake.
        for end in [&mut h.detail.first, &mut h.detail.second] {
            end.flange = len("10 m");
            end.hold_back = len("5 m");
            end.drip = DripEdge { leg: len("6 mm"), hem: Length::ZERO, above_pan: Length::ZERO, ..end.drip };
            end.turn_up = Length::ZERO;
        }
        let g = h.corner.compute().unwrap();
        let (c1, c2) = (g.first.backing.degrees(), g.second.backing.degrees());
        // Nearly one plane: the tops meet far away. Nearly along the seams: no panel ends there.
        prop_assume!(c1 + c2 > 1.0 && [g.first, g.second].iter().all(|s| s.meeting().degrees() >= 1.0));
        let solved = h.compute().unwrap();
        let cap = solved.trim("hip cap").unwrap();
        let [foot1, edge1, ridge, edge2, foot2] = cap.corners[..] else { panic!() };
        for (p, height) in [(edge1, f64::from(h1)), (ridge, f64::from(h1)), (foot1, f64::from(h1) - 6.0)] {
            prop_assert!((above(p, c1) - height).abs() < 1e-6);
        }
        for (p, height) in [(edge2, f64::from(h2)), (ridge, f64::from(h2)), (foot2, f64::from(h2) - 6.0)] {
            prop_assert!((above(p, -c2) - height).abs() < 1e-6);
        }
        prop_assert!((distance(edge1, ridge) - 10_000.0).abs() < 1e-6 && (distance(ridge, edge2) - 10_000.0).abs() < 1e-6);
        let bend = BendAt::Hip(h.corner).compute().unwrap().bend.degrees();
        prop_assert!((cap.profile.bends[1].angle.degrees() - bend).abs() < 1e-8);
    }

    #[test]
    fn the_headwalls_corners_lie_on_their_supports(slope in 0.0_f64..75.0, h in 20_i32..90, out in 0_i32..30, leg in 300_i32..2000) {
        let mut w = headwall("4:12");
        w.roof.pitch = Pitch::from_angle(Angle::degrees_from(slope).unwrap()).unwrap();
        w.roof.levels = Levels { seam_height: Length::micrometres(h * 1000), ..Levels::default() };
        w.detail.end.flange = len("2 m");
        w.detail.end.hold_back = len("500 mm");
        w.detail.end.turn_up = Length::ZERO;
        w.detail.end.drip.leg = len("15 mm");
        w.detail.end.drip.above_pan = Length::ZERO;
        w.detail.wall.stands_out = Length::micrometres(out * 1000);
        w.detail.wall.leg = Length::micrometres(leg * 1000);
        w.detail.wall.upstand = LeastRule::given("upstand", Length::ZERO, Source::user());
        let solved = w.compute().unwrap();
        let flashing = solved.trim("headwall flashing").unwrap();
        let [_, edge, bend, top] = flashing.corners[..] else { panic!() };
        prop_assert!((above(edge, slope) - f64::from(h)).abs() < 1e-6 && (above(bend, slope) - f64::from(h)).abs() < 1e-6);
        prop_assert!((bend.x.mm() + f64::from(out)).abs() < 1e-6 && (top.x.mm() + f64::from(out)).abs() < 1e-6);
        let asked = BendAt::Headwall { pitch: w.roof.pitch }.compute().unwrap().bend.degrees();
        prop_assert!((flashing.profile.bends[1].angle.degrees() - asked).abs() < 1e-6);
    }

    #[test]
    fn explaining_computes_the_same(a in 1_i32..200, hold_back in 0_i32..500, leg in 1_i32..1000) {
        let mut h = hip("6:12", "6:12", 90.0);
        h.corner.first = Pitch::in_twelve(Length::inches_64(a * 8)).unwrap();
        h.detail.first.hold_back = Length::micrometres(hold_back * 1000);
        let mut w = headwall("4:12");
        w.roof.pitch = h.corner.first;
        w.detail.end.hold_back = h.detail.first.hold_back;
        w.detail.wall.leg = Length::micrometres(leg * 1000);
        for (computed, explained) in [(h.compute(), h.explain()), (w.compute(), w.explain())] {
            match (computed, explained) {
                (Ok(out), Ok((same, sheet))) => {
                    prop_assert_eq!(out, same);
                    prop_assert!(sheet.steps().len() > 6);
                }
                (Err(a), Err(b)) => prop_assert_eq!(a, b),
                (a, b) => prop_assert!(false, "{:?} {:?}", a, b),
            }
        }
    }
}
