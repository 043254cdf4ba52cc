#[cfg(feature = "serde")]
use super::test_sections::read_without;
use super::test_sections::{between, degrees, len, mm, near, off, paths, roof, row, sheet, slope, top_end};
use super::{Along, Bites, Ridge, RidgeDetail, RidgeVent, Side};
use crate::error::ErrorKind;
use crate::num;
use crate::panel::Hold;
use crate::pitch::{BendAt, Pitch};
use crate::record::Calculation;
use crate::units::Length;
use proptest::prelude::*;

pub(super) fn asked(first: Pitch, second: Pitch) -> Ridge {
    let detail = RidgeDetail { first: top_end(), second: top_end(), sheet: sheet(), vent: RidgeVent::Closed };
    Ridge { first: roof(first), second: roof(second), detail }
}

fn numbers(ridge: &Ridge) -> Vec<u16> {
    ridge.compute().unwrap().cautions.iter().map(|c| c.code().number).collect()
}

#[test]
fn an_even_ridge_worked_by_hand() {
    // 48 mm out from two planes of 45 degrees the seam tops meet 48 sqrt 2 mm above the line, 48 mm up each slope: a flange of 6 in and 48 mm ends 6 in
    // down it.
    let mut ridge = asked(Pitch::parse("12:12").unwrap(), Pitch::parse("12:12").unwrap());
    for end in [&mut ridge.detail.first, &mut ridge.detail.second] {
        end.flange = (len("6\"") + len("48 mm")).length().unwrap();
    }
    let apex = ridge.bend().unwrap();
    assert!(near(apex.x.mm(), 0.0) && near(apex.z.mm(), 48.0 * 2.0_f64.sqrt()));
    let solved = ridge.compute().unwrap();
    let cap = solved.trim("ridge cap").unwrap();
    let lengths: Vec<f64> = cap.profile.legs.iter().map(|l| l.length.mm()).collect();
    assert!(near(lengths[0], 25.4) && near(lengths[1], 152.4 + 48.0) && near(lengths[2], 152.4 + 48.0) && near(lengths[3], 25.4));
    assert!(cap.profile.bends.iter().all(|b| near(b.angle.degrees(), 90.0)));
    assert_eq!(numbers(&ridge), [6016, 6052, 6016, 6052]);
    // From the line down each side: the closures' face at 5 in, their screws 5/8 in behind it, the drip 1 in past it.
    for side in [Side::First, Side::Second] {
        let at = |name: &str| solved.along.iter().find(|a| a.side == side && a.name == name).unwrap();
        for (name, place) in [("closures", "-5\""), ("closure screws", "-4 3/8\""), ("tape over the closures", "-5 1/2\""), ("rivets", "-6\"")] {
            assert!(near(at(name).from_line.mm(), len(place).mm()), "{name}");
        }
        // 45 mm of seam less 1/16 in of tape.
        assert_eq!(at("closures").what, Along::Closures { web: len("43.4125 mm") });
        let end = solved.end(side).unwrap();
        assert_eq!((end.allowance().unwrap(), end.hold), (len("-1\""), Hold::Pins));
    }
}

#[test]
fn unequal_planes_put_the_bend_off_the_line() {
    // A level first plane, 48 mm out, against 45 degrees: 48 = -x + 48 sqrt 2.
    let ridge = asked(slope(0.0), slope(45.0));
    let apex = ridge.bend().unwrap();
    assert!(near(apex.x.mm(), 48.0 * (2.0_f64.sqrt() - 1.0)) && near(apex.z.mm(), 48.0));
    let solved = ridge.compute().unwrap();
    let caution = solved.cautions.iter().find(|c| c.code().number == 6015).unwrap();
    assert!(caution.message().contains("toward the second side"), "{caution}");
    // Alike in pitch, but 10 mm higher on the first side: (h2 - h1) / (2 sin 45), toward the higher side.
    let mut ridge = asked(slope(45.0), slope(45.0));
    ridge.first.levels.stand_off = len("10 mm");
    assert!(near(ridge.bend().unwrap().x.mm(), -10.0 / 2.0_f64.sqrt()));
    assert!(numbers(&ridge).contains(&6015));
}

#[test]
fn seams_that_pierce_the_other_flange_are_refused() {
    // Seam tops 20 mm higher on the first of two shallow sides: the cap bends far down that side, and its seams would come through the other flange.
    let mut ridge = asked(slope(4.0), slope(4.0));
    ridge.first.levels.stand_off = len("20 mm");
    let refused = ridge.compute().unwrap_err();
    assert_eq!((refused.kind(), refused.path()), (ErrorKind::Impossible, "detail.first.hold_back"));
    // By trigonometry: the bend stands (h1 - h2) / (2 sin a) out, and at (h1 + h2) / (2 cos a) up.
    let (x, z) = (10.0 / num::sin_deg(4.0), 58.0 / num::cos_deg(4.0));
    let down = x * num::cos_deg(4.0) - z * num::sin_deg(4.0);
    assert!(refused.message().contains("pierce"), "{refused}");
    let by = Length::parse(refused.message().rsplit(" by ").next().unwrap()).unwrap();
    assert!(near(by.mm(), down - 50.8));
    // A hold-back to the bend cures it; the flanges are measured from there, and the other one has as much farther to go.
    ridge.detail.second.flange = len("14\"");
    ridge.detail.first.hold_back = Length::from_mm(down + 1e-6).unwrap();
    assert!(ridge.compute().is_ok());
    // A clearance asks for as much more.
    ridge.detail.first.clearance = len("1/4\"");
    let refused = ridge.compute().unwrap_err();
    let by = Length::parse(refused.message().rsplit(" by ").next().unwrap()).unwrap();
    assert!(near(by.mm(), 6.35), "{refused}");
}

#[test]
fn what_does_not_fit_is_refused_by_how_much() {
    let mut ridge = asked(slope(30.0), slope(30.0));
    // The cap bends 48 tan 30 mm up each slope; a drip 8 in below that, 2 1/4 in to the flange's edge and 1/2 in of panel leave this for the hold-back.
    let most = 203.2 - 48.0 * num::tan_deg(30.0) - 2.75 * 25.4;
    ridge.detail.first.cover.least = Length::ZERO;
    ridge.detail.first.hold_back = Length::from_mm(most - 1e-6).unwrap();
    assert!(ridge.compute().is_ok());
    ridge.detail.first.hold_back = Length::from_mm(most + 6.35).unwrap();
    let refused = ridge.compute().unwrap_err();
    assert_eq!((refused.kind(), refused.path()), (ErrorKind::Impossible, "detail.first.hold_back"));
    let by = Length::parse(refused.message().rsplit(" by ").next().unwrap()).unwrap();
    assert!(near(by.mm(), 6.35) && refused.message().contains("beyond the closures' lower flange"), "{refused}");

    ridge.detail.first.turn_up = len("50 mm");
    ridge.detail.first.drip.leg = len("45 mm");
    ridge.detail.first.closure.set_back = len("7/8\"");
    ridge.detail.first.closure.tape_beneath = len("45 mm");
    ridge.detail.second.closure.set_back = len("1 1/2\"");
    ridge.detail.second.cap_tape_width = len("1 1/4\"");
    ridge.detail.second.flange = len("1\"");
    let refused = ridge.compute().unwrap_err();
    assert_eq!(
        paths(&refused),
        [
            "detail.first.closure.tape_beneath",
            "detail.first.turn_up",
            "detail.first.drip.leg",
            "detail.first.closure.set_back",
            "detail.second.closure.set_back",
            "detail.second.cap_tape_width",
            "detail.second.flange"
        ]
    );
    let short: Vec<&str> = refused.others().iter().map(|e| e.message().rsplit(" by ").next().unwrap()).collect();
    // 50 - 46.4 mm; 6.35 + 45 - 46.4 mm; 1/8 in of top flange beyond the drip; 1/2 in less the reach of 1/8 in.
    assert_eq!(short, ["3.6 mm", "4.95 mm", "3.175 mm", "9.525 mm", "6.35 mm", "12.7 mm"]);
    assert!(refused.others().iter().all(|e| e.cure().is_some()));
}

#[test]
fn an_edge_that_is_not_turned_down_takes_its_rivets_on_the_slope() {
    let mut ridge = asked(slope(30.0), slope(30.0));
    ridge.detail.first.drip.leg = Length::ZERO;
    ridge.detail.first.drip.hem = Length::ZERO;
    let solved = ridge.compute().unwrap();
    assert_eq!(numbers(&ridge), [6016, 6051, 6016, 6052]);
    assert_eq!(solved.trim("ridge cap").unwrap().corners.len(), 4);
    // In the middle of the closures' top flange, 1/2 in up from the edge.
    let at = |name: &str| solved.along.iter().find(|a| a.side == Side::First && a.name == name).unwrap().from_line;
    assert!(near(at("rivets").mm(), 48.0 * num::tan_deg(30.0) - 203.2 + 12.7) && at("rivets") == at("tape over the closures"));
    // A drip that hangs no lower than metal and tape over the seams crosses none.
    ridge.detail.first.drip.leg = len("1.4 mm");
    assert_eq!(numbers(&ridge), [6016, 6016, 6052]);
}

#[test]
fn rivets_into_panels_that_move_are_refused() {
    let mut ridge = asked(slope(30.0), slope(30.0));
    ridge.detail.second.bites = Bites::Panel;
    let refused = ridge.compute().unwrap_err();
    assert_eq!((refused.kind(), refused.path()), (ErrorKind::Conflict, "detail.second.rivets"));
    ridge.detail.second.rivets = None;
    let solved = ridge.compute().unwrap();
    assert_eq!(solved.end(Side::First).unwrap().hold, Hold::Pins);
    assert_eq!(solved.end(Side::Second).unwrap().hold, Hold::Slides);
    assert!(solved.cautions.iter().any(|c| c.code().number == 6017 && c.subject() == "detail.second.bites"));
    // Through slots the closures stand still: the cap may be riveted to them.
    ridge.detail.second.bites = Bites::Slot;
    ridge.detail.second.rivets = Some(row());
    let solved = ridge.compute().unwrap();
    assert_eq!(solved.end(Side::Second).unwrap().hold, Hold::Slides);
    assert!(solved.cautions.iter().any(|c| c.code().number == 6020));
    ridge.detail.second.bites = Bites::Trim;
    assert_eq!(ridge.compute().unwrap_err().kind(), ErrorKind::Conflict);
}

#[test]
fn a_vented_ridge_says_what_governs() {
    let mut ridge = asked(slope(30.0), slope(30.0));
    ridge.detail.first.hollow_seams = false;
    ridge.detail.second.hollow_seams = false;
    ridge.detail.vent = RidgeVent::Vented { slot: len("20 mm"), open_ratio: 0.5 };
    // Both webs are 43.4125 mm.
    let opening = ridge.opening().unwrap().unwrap();
    assert_eq!(opening.slot, len("40 mm"));
    assert!(near(opening.closures.mm(), 43.4125) && opening.free() == opening.slot);
    assert_eq!(numbers(&ridge), [6052, 6052]);
    ridge.detail.vent = RidgeVent::Vented { slot: len("30 mm"), open_ratio: 0.5 };
    assert_eq!(numbers(&ridge), [6052, 6052, 6018]);
    ridge.detail.vent = RidgeVent::Vented { slot: len("60.8 mm"), open_ratio: 0.5 };
    let refused = ridge.compute().unwrap_err();
    assert_eq!(paths(&refused), ["detail.first.hold_back", "detail.second.hold_back"]);
    assert!(refused.message().contains("by 10 mm"), "{refused}");
    for bad in [0.0, 1.01, f64::NAN] {
        ridge.detail.vent = RidgeVent::Vented { slot: len("20 mm"), open_ratio: bad };
        assert_eq!(ridge.compute().unwrap_err().path(), "detail.vent.vented.open_ratio");
    }
}

#[test]
fn cautions_have_numbers_of_their_own() {
    let mut numbers: Vec<u16> = super::CAUTIONS.iter().map(|c| c.number).collect();
    numbers.sort_unstable();
    numbers.dedup();
    assert_eq!(numbers.len(), super::CAUTIONS.len());
}

#[test]
fn two_level_planes_have_no_ridge() {
    let refused = asked(slope(0.0), slope(0.0)).compute().unwrap_err();
    assert_eq!((refused.kind(), refused.path()), (ErrorKind::Geometry, "second.pitch"));
}

#[test]
fn bad_figures_are_told_at_once() {
    let mut ridge = asked(slope(30.0), slope(30.0));
    ridge.detail.first.drip.turn = degrees(95.0);
    ridge.detail.first.closure.tape_width = len("2\"");
    ridge.second.levels.tape = len("-1 mm");
    ridge.detail.second.screws.spacing = Length::ZERO;
    ridge.detail.sheet.thickness = Length::ZERO;
    assert_eq!(
        paths(&ridge.compute().unwrap_err()),
        ["second.levels.tape", "detail.first.drip.turn", "detail.first.closure.tape_width", "detail.second.screws.spacing", "detail.sheet.thickness"]
    );
}

#[cfg(feature = "serde")]
#[test]
fn a_ridge_is_text_and_back() {
    let mut ridge = asked(Pitch::parse("4:12").unwrap(), Pitch::parse("5:12").unwrap());
    ridge.detail.vent = RidgeVent::Vented { slot: len("20 mm"), open_ratio: 0.5 };
    let text = serde_json::to_string(&ridge).unwrap();
    assert_eq!(serde_json::from_str::<Ridge>(&text).unwrap(), ridge);
}

#[cfg(feature = "serde")]
#[test]
fn what_a_job_leaves_out_is_common_practice() {
    let mut ridge = asked(slope(30.0), slope(30.0));
    ridge.detail.first.screws.spacing = crate::practice::closure::ON_CENTRE;
    ridge.detail.first.closure.set_back = crate::practice::closure::SET_BACK;
    ridge.detail.first.turn_up = crate::practice::panel::TURN_UP;
    let left_out = ["/first/screws", "/first/turn_up", "/first/closure/set_back", "/first/drip/turn", "/first/drip/hem"];
    assert_eq!(read_without(&ridge.detail, &left_out), ridge.detail);
    ridge.detail.first.rivets = None;
    assert!(!serde_json::to_string(&ridge.detail.first).unwrap().contains("rivets"));
}

proptest! {
    #[test]
    fn corners_lie_on_the_seam_tops(a in 5.0_f64..60.0, b in 5.0_f64..60.0, up in 0_i32..150, turn in 20.0_f64..90.0) {
        let mut ridge = asked(slope(a), slope(b));
        ridge.second.levels.stand_off = mm(up);
        ridge.detail.first.drip.turn = degrees(turn);
        ridge.detail.first.hold_back = len("8\"");
        ridge.detail.first.flange = len("16\"");
        ridge.detail.second.flange = len("16\"");
        let (h1, h2) = (48.0, 48.0 + f64::from(up) * 0.1);
        let solved = match ridge.compute() {
            Ok(solved) => solved,
            // The bend lies below the panels' ends of one side: so says the distance of the other side's seam ends from its own plane.
            Err(e) => {
                let piercing = |own: f64, other: f64, h: f64, hold: f64| {
                    // The top of a seam's end at this hold-back, and its height over the other plane.
                    let (x, z) = (-hold * num::cos_deg(own) - h * num::sin_deg(own), -hold * num::sin_deg(own) + h * num::cos_deg(own));
                    x * num::sin_deg(other) + z * num::cos_deg(other)
                };
                prop_assert!(e.message().contains("pierce"), "{}", e);
                prop_assert!(piercing(a, b, h1, 203.2) > h2 - 1e-6 || piercing(b, a, h2, 50.8) > h1 - 1e-6);
                return Ok(());
            }
        };
        let cap = solved.trim("ridge cap").unwrap();
        let c = &cap.corners;
        prop_assert!(near(off(c[1], a), h1) && near(off(c[2], a), h1));
        prop_assert!(near(off(c[2], -b), h2) && near(off(c[3], -b), h2));
        // The drips hang below the flanges by what their turn makes of their leg.
        prop_assert!(near(off(c[0], a), h1 - 25.4 * num::sin_deg(turn)) && near(off(c[4], -b), h2 - 25.4));
        prop_assert!(near(between(c[0], c[1]), 25.4) && near(between(c[3], c[4]), 25.4));
        prop_assert!(near(between(c[1], c[2]), 16.0 * 25.4) && near(between(c[2], c[3]), 16.0 * 25.4));
        // One bend over the ridge: the sum of the pitches.
        let sum = BendAt::Ridge { first: ridge.first.pitch, second: ridge.second.pitch }.compute().unwrap().bend.degrees();
        prop_assert!(near(cap.profile.bends[1].angle.degrees(), sum) && near(sum, a + b));
        prop_assert!(near(cap.profile.bends[0].angle.degrees(), turn));
    }

    #[test]
    fn a_mirrored_ridge_is_the_mirror_image(a in 10.0_f64..60.0, b in 10.0_f64..60.0) {
        let here = asked(slope(a), slope(b));
        let there = asked(slope(b), slope(a));
        let (p, q) = (here.bend().unwrap(), there.bend().unwrap());
        prop_assert!(near(p.x.mm(), -q.x.mm()) && near(p.z.mm(), q.z.mm()));
        if let (Ok(here), Ok(there)) = (here.compute(), there.compute()) {
            let (c, d) = (&here.trim("ridge cap").unwrap().corners, &there.trim("ridge cap").unwrap().corners);
            for (p, q) in c.iter().zip(d.iter().rev()) {
                prop_assert!(near(p.x.mm(), -q.x.mm()) && near(p.z.mm(), q.z.mm()));
            }
        }
    }

    #[test]
    fn explaining_computes_the_same(a in 0.0_f64..60.0, b in 0.0_f64..60.0, hold in 0_i32..1200) {
        let mut ridge = asked(slope(a), slope(b));
        ridge.detail.first.hold_back = mm(hold);
        match (ridge.compute(), ridge.explain()) {
            (Ok(out), Ok((same, working))) => {
                prop_assert_eq!(out, same);
                prop_assert!(working.steps().len() >= 6);
            }
            (Err(a), Err(b)) => prop_assert_eq!(a, b),
            (a, b) => prop_assert!(false, "{:?} {:?}", a, b),
        }
    }
}
