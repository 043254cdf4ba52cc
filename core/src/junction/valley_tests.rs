#[cfg(feature = "serde")]
use super::test_sections::read_without;
use super::test_sections::{between as distance, len, levels, paths, row};
use super::{
    Along, FastenerRow, LeastBySlope, LeastRule, OffsetCleat, SectionPoint, Side, SplashRib, TrimSheet, Valley, ValleyDetail, ValleyEndSeal, ValleyHook,
    ValleySide, ValleyWidening, WideningPan,
};
use crate::error::ErrorKind;
use crate::num;
use crate::panel::{Growth, Hold, Reach};
use crate::pitch::{BendAt, Corner, Pitch, SlopeRule};
use crate::practice::{junction as practice, panel};
use crate::record::{Calculation, Source};
use crate::trim::{BendRule, Face, LegEnd, NeutralFactor, Part, Placement, Point};
use crate::units::{Angle, BendAngle, Length};
use proptest::prelude::*;

fn cleat() -> ValleyHook {
    let cleat = OffsetCleat {
        sheet: TrimSheet { thickness: Length::mils(40), inside_radius: Length::mils(40) },
        width: practice::CLEAT_WIDTH,
        tongue: len("1 1/4\""),
        rise: len("1/4\""),
        tape_width: len("1 1/2\""),
        tape: len("1/16\""),
        screws_below_tape_edge: practice::CLEAT_SCREWS_BELOW_TAPE_EDGE,
        screws: row(),
        gap: len("1/4\""),
        fold: panel::END_FOLD,
        least_engagement: len("3/8\""),
    };
    ValleyHook::OffsetCleat { cleat, least_screw_height: practice::VALLEY_SCREW_HEIGHT_LEAST }
}

pub(super) fn receiver() -> ValleyHook {
    ValleyHook::ReceiverFold { depth: len("1 1/2\""), opening: len("1/8\""), gap: len("1/4\""), fold: panel::END_FOLD, least_engagement: len("3/8\"") }
}

fn side(hook: ValleyHook) -> ValleySide {
    ValleySide { leg: len("12\""), least_leg: LeastBySlope::VALLEY_LEG, least_beyond: LeastRule::BEYOND_HOOK, hook, field_trim: len("2\"") }
}

pub(super) fn valley(first: &str, second: &str) -> Valley {
    let detail = ValleyDetail {
        sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
        bed: len("1/8\""),
        open_width: practice::VALLEY_OPEN_WIDTH,
        least_open_width: LeastRule::VALLEY_OPEN,
        widens: None,
        rib: None,
        edge_cleats: None,
        edge_hem: practice::EDGE_HEM,
        first: side(cleat()),
        second: side(cleat()),
        minimum: SlopeRule::IBC_STANDING_SEAM,
        end: ValleyEndSeal::default(),
    };
    let corner = Corner { first: Pitch::parse(first).unwrap(), second: Pitch::parse(second).unwrap(), plan: Angle::SQUARE };
    Valley { corner, first: levels(), second: levels(), length: None, detail }
}

/// Height above a plane through the origin that rises at so many degrees toward +x.
fn above(p: SectionPoint, rise: f64) -> f64 {
    p.z.mm() * num::cos_deg(rise) - p.x.mm() * num::sin_deg(rise)
}

#[test]
fn a_square_valley_by_hand() {
    // Two planes of 6:12: the bend is acos(4/5); the sine of each half is sqrt(0.1).
    let v = valley("6:12", "6:12");
    let solved = v.compute().unwrap();
    let [edge1, centre, edge2] = solved.trims[0].corners[..] else { panic!() };
    let half = num::acos_deg(0.8) / 2.0;
    assert!(centre.x.pm().abs() <= 2 && (centre.z.mm() - 25.4 / 8.0 / num::cos_deg(half)).abs() < 1e-9);
    assert!((distance(edge1, centre) - 12.0 * 25.4).abs() < 1e-9 && (distance(centre, edge2) - 12.0 * 25.4).abs() < 1e-9);
    assert!((solved.trims[0].profile.bends[0].angle.degrees() - 2.0 * half).abs() < 1e-9);
    // Cleat front: 3 in + 1/4 in from the centreline, and that bed tan(half) from the line.
    let front = 3.25 * 25.4 + 25.4 / 8.0 * num::tan_deg(half);
    for s in [Side::First, Side::Second] {
        let end = solved.end(s).unwrap();
        let Reach::HoldBack(reach) = end.reach else { panic!() };
        assert!((reach.mm() - front).abs() < 1e-9);
        assert_eq!((end.gap, end.fold, end.hold), (len("1/4\""), len("1\""), Hold::Slides));
        let along: Vec<f64> = solved.along.iter().filter(|a| a.side == s).map(|a| a.from_line.mm() - front).collect();
        for (got, inches) in along.iter().zip([2.75, 0.0, 3.0]) {
            assert!((got - inches * 25.4).abs() < 1e-9);
        }
    }
    // The screws lie 6.25 in from the centreline: 6.25 sqrt(0.1) = 1.976 in above the flow line.
    let height = 6.25 * 25.4 * 0.1_f64.sqrt();
    let said = &solved.cautions[0];
    let told = Length::parse(&said.arguments()[0].1).unwrap();
    assert!(said.code().number == 6061 && (told.mm() - height).abs() < 1e-6, "{said}");
}

#[test]
fn screws_in_the_water_are_refused_by_how_much() {
    let mut v = valley("1:12", "1:12");
    let e = v.compute().unwrap_err();
    assert_eq!(paths(&e), ["detail.first.hook.offset-cleat.least_screw_height", "detail.second.hook.offset-cleat.least_screw_height"]);
    // Normals (-1, 0, 12) and (0, -1, 12): cosine of the bend 144/145, so the sine of each half is sqrt(1/290).
    let short = 0.75 * 25.4 - 6.25 * 25.4 * (1.0_f64 / 290.0).sqrt();
    let by: f64 = e.message().rsplit(" by ").next().unwrap().trim_end_matches(" mm").parse().unwrap();
    assert!((by - short).abs() < 1e-6, "{e}");
    assert!(e.cure().unwrap().contains("receiver"));
    v.detail.first.hook = receiver();
    v.detail.second.hook = receiver();
    assert!(v.compute().unwrap().along.is_empty());
}

#[test]
fn a_receiver_fold_is_three_layers() {
    let mut v = valley("6:12", "6:12");
    v.detail.first.hook = receiver();
    let solved = v.compute().unwrap();
    let pan = &solved.trims[0];
    assert_eq!(pan.profile.legs.iter().map(|l| &*l.name).collect::<Vec<_>>(), ["outer part 1", "return 1", "leg 1", "leg 2"]);
    assert_eq!(pan.corners.len(), pan.profile.legs.len() + 1);
    assert_eq!((pan.profile.legs[1].length, pan.profile.legs[1].start), (len("1 1/2\""), LegEnd::OuterTangent));
    // It opens 1/8 in and its outer part lies two sheets and the opening higher.
    assert_eq!(pan.profile.bends[1].inside_radius, len("1/16\""));
    let c1 = v.corner.compute().unwrap().first.backing.degrees();
    for p in &pan.corners[..2] {
        assert!((above(*p, -c1) - 25.4 * (0.25 + 0.048)).abs() < 1e-6);
    }
    assert!((above(pan.corners[2], -c1) - 25.4 / 8.0).abs() < 1e-6);
    let said: Vec<(u16, &str)> = solved.cautions.iter().map(|c| (c.code().number, c.subject())).collect();
    assert_eq!(said, [(6060, "detail.first.hook"), (6061, "detail.second.hook")]);
    // The flat pan takes twice the fold's depth more than one with a cleat, less what its two folds save.
    let girth = |v: &Valley| v.compute().unwrap().trims[0].profile.girth(&BendRule::neutral_axis(NeutralFactor::MIDDLE)).unwrap().mm();
    let more = girth(&v) - girth(&valley("6:12", "6:12"));
    let (t, k) = (0.024 * 25.4, NeutralFactor::MIDDLE.value());
    let allowance = |r: f64| std::f64::consts::PI * (r + k * t) - 2.0 * (r + t);
    assert!((more - (2.0 * 38.1 + allowance(0.0) + allowance(25.4 / 16.0))).abs() < 1e-6, "{more}");
}

#[test]
fn a_rib_bends_by_geometry() {
    let mut v = valley("4:12", "8:12");
    v.detail.rib = Some(SplashRib { height: len("1\""), half_width: len("1/4\"") });
    let solved = v.compute().unwrap();
    let pan = &solved.trims[0];
    let [_, foot1, top, foot2, _] = pan.corners[..] else { panic!() };
    let g = v.corner.compute().unwrap();
    for (rise, foot) in [(-g.first.backing.degrees(), foot1), (g.second.backing.degrees(), foot2)] {
        assert!((above(foot, rise) - 25.4 / 8.0).abs() < 1e-6);
    }
    // Up, down and up again leave the bend of the valley.
    let [a, b, c] = [0, 1, 2].map(|i| pan.profile.bends[i].angle.degrees());
    let bend = BendAt::Valley(v.corner).compute().unwrap().bend.degrees();
    assert!((a - b + c - bend).abs() < 1e-6);
    assert!(a > 45.0 && c > 45.0 && top.z > foot1.z && top.z > foot2.z);
    let numbers: Vec<u16> = solved.cautions.iter().map(|c| c.code().number).collect();
    assert_eq!(numbers, [6063, 6061, 6061]);
    v.detail.rib = Some(SplashRib { height: len("1/2\""), half_width: len("1/4\"") });
    assert_eq!(v.compute().unwrap().cautions[1].code().number, 6062);
    v.detail.rib = Some(SplashRib { height: len("1\""), half_width: len("4\"") });
    assert_eq!(v.compute().unwrap_err().path(), "detail.rib.half_width");
}

#[test]
fn widths_are_refused_by_how_much() {
    let mut v = valley("6:12", "6:12");
    v.detail.open_width = len("3\"");
    v.detail.first.leg = len("9\"");
    v.detail.second.leg = len("7\"");
    let e = v.compute().unwrap_err();
    // 1 1/2 + 1/4 + 3 1/2 + 4 in = 9 1/4 in.
    assert_eq!(paths(&e), ["detail.open_width", "detail.first.leg", "detail.second.leg", "detail.second.leg"]);
    assert!(e.message().ends_with("by 25.4 mm") && e.others()[0].message().ends_with("by 6.35 mm"), "{e}");
    let mut v = valley("6:12", "6:12");
    let with = |hook: ValleyHook, own: Length| match hook {
        ValleyHook::OffsetCleat { cleat, least_screw_height } => ValleyHook::OffsetCleat { cleat: OffsetCleat { fold: own, ..cleat }, least_screw_height },
        ValleyHook::ReceiverFold { depth, opening, gap, least_engagement, .. } => ValleyHook::ReceiverFold { depth, opening, gap, fold: own, least_engagement },
    };
    v.detail.first.hook = with(cleat(), len("1/2\""));
    v.detail.second.hook = with(cleat(), len("2\""));
    let e = v.compute().unwrap_err();
    assert_eq!(paths(&e), ["detail.first.hook.offset-cleat.cleat.fold", "detail.second.hook.offset-cleat.cleat.fold"]);
    v.detail.first.hook = with(receiver(), len("1/2\""));
    // Its depth of 1 1/2 in takes the whole fold in the cold, whatever the gap when laid.
    v.detail.second.hook = with(receiver(), len("1 5/8\""));
    let deep = v.compute().unwrap_err();
    assert_eq!(paths(&deep), ["detail.first.hook.receiver-fold.fold", "detail.second.hook.receiver-fold.fold"]);
    assert!(deep.others()[0].message().ends_with("in the cold by 3.175 mm"), "{deep}");
    assert!(e.message().ends_with("by 3.175 mm") && e.others()[0].message().ends_with("by 19.05 mm"), "{e}");
}

/// UFGS-07600, 3.1.4: sheets over 18 in wide are held along their edges by cleats at 12 in at the most.
#[test]
fn a_pan_without_a_hole_is_held_by_its_hems() {
    let mut v = valley("6:12", "8:12");
    (v.detail.first.hook, v.detail.second.hook) = (receiver(), receiver());
    let solved = v.compute().unwrap();
    assert!(!solved.along.iter().any(|a| matches!(a.what, Along::Fasteners { .. })));
    assert_eq!(solved.cautions.iter().filter(|c| c.code().number == 6064).count(), 1);
    v.detail.edge_cleats = Some(FastenerRow::UFGS_CLEATS);
    let solved = v.compute().unwrap();
    assert!(!solved.cautions.iter().any(|c| c.code().number == 6064));
    for side in [Side::First, Side::Second] {
        let row = solved.along.iter().find(|a| a.side == side && a.name.starts_with("edge cleats")).unwrap();
        let edge = solved.lines.iter().find(|l| l.side == side && l.name == "pan edge").unwrap();
        assert_eq!(row.from_line, (edge.from_line + len("1\"")).length().unwrap());
        let Along::Fasteners { spacing, .. } = row.what else { panic!() };
        assert_eq!(spacing, len("12\""));
    }
    v.detail.edge_hem = Length::ZERO;
    assert_eq!(v.compute().unwrap_err().path(), "detail.edge_hem");
    // Screws hold a pan under offset cleats.
    assert!(!valley("6:12", "8:12").compute().unwrap().cautions.iter().any(|c| c.code().number == 6064));
}

#[test]
fn unequal_planes_want_a_rib() {
    let said = |v: &Valley| v.compute().unwrap().cautions.iter().any(|c| c.code().number == 6065);
    assert!(!said(&valley("6:12", "6:12")));
    let mut v = valley("6:12", "8:12");
    assert!(said(&v));
    v.detail.rib = Some(SplashRib { height: len("1\""), half_width: len("1/2\"") });
    assert!(!said(&v));
}

#[test]
fn a_hem_stays_off_what_the_panels_hook() {
    let mut v = valley("6:12", "6:12");
    // 3 + 1/4 + 3 1/2 in of 12: 5 1/4 in are left.
    v.detail.edge_hem = len("5 1/4\"");
    assert!(v.compute().is_ok());
    v.detail.edge_hem = len("10\"");
    let e = v.compute().unwrap_err();
    assert_eq!(paths(&e), ["detail.first.leg", "detail.second.leg"]);
    assert!(e.message().ends_with("by 120.65 mm"), "{e}");
}

#[test]
fn the_slope_has_its_limit() {
    let mut v = valley("6:12", "6:12");
    // A square valley of 6:12 rises 6 in 12 sqrt 2: 4.243 in 12.
    v.detail.minimum = SlopeRule::given("valleys", Pitch::parse("4.2:12").unwrap(), Source::user());
    assert!(v.compute().is_ok());
    v.detail.minimum = SlopeRule::given("valleys", Pitch::parse("4.3:12").unwrap(), Source::user());
    assert_eq!(v.compute().unwrap_err().path(), "detail.minimum");
}

#[test]
fn a_plane_that_falls_from_the_line_makes_no_valley() {
    let mut v = valley("2:12", "12:12");
    v.corner.plan = Angle::parse("130 deg").unwrap();
    let e = v.compute().unwrap_err();
    assert_eq!(e.path(), "corner.first");
    assert!(e.message().contains("holds no water"), "{e}");
    v.detail.open_width = len("-1\"");
    assert_eq!(v.compute().unwrap_err().path(), "detail.open_width");
}

#[test]
fn a_pan_folded_from_its_flat_lies_on_its_corners() {
    let mut v = valley("5:12", "9:12");
    v.detail.edge_hem = Length::ZERO;
    v.detail.second.leg = len("14\"");
    for hooks in [[cleat(), cleat()], [receiver(), cleat()], [cleat(), receiver()], [receiver(), receiver()]] {
        let [first, second] = hooks;
        v.detail.first.hook = first;
        v.detail.second.hook = second;
        let solved = v.compute().unwrap();
        let (pan, start) = (&solved.trims[0], solved.trims[0].corners[0]);
        let heading = Angle::degrees_from(-v.corner.compute().unwrap().first.backing.degrees()).unwrap();
        let at = Point { x: start.x, y: start.z };
        let placement = Placement { leg: Part::Body(0), face: Face::Lower, at, heading };
        // The pen folds leg by leg and bend by bend; it knows nothing of the supports.
        let outline = pan.profile.unfold(&BendRule::neutral_axis(NeutralFactor::MIDDLE)).unwrap().outline_at(&placement).unwrap();
        let to = outline.face(Face::Lower).last().unwrap().to;
        let end = pan.corners[pan.corners.len() - 1];
        assert!((to.x.mm() - end.x.mm()).abs() < 1e-6 && (to.y.mm() - end.z.mm()).abs() < 1e-6, "{to:?} {end:?}");
    }
}

#[cfg(feature = "serde")]
#[test]
fn what_is_asked_is_read_back() {
    let mut v = valley("6:12", "8:12");
    v.detail.second.hook = receiver();
    v.detail.rib = Some(SplashRib { height: len("1\""), half_width: len("1/4\"") });
    let text = serde_json::to_string(&v).unwrap();
    assert_eq!(serde_json::from_str::<Valley>(&text).unwrap(), v);
    assert!(serde_json::from_str::<Valley>(&text.replacen('{', r#"{"other":1,"#, 1)).is_err());
}

#[cfg(feature = "serde")]
#[test]
fn what_a_job_leaves_out_is_common_practice() {
    let detail = valley("6:12", "8:12").detail;
    let cleat = ["cleat/width", "cleat/screws_below_tape_edge", "cleat/fold", "cleat/least_engagement", "least_screw_height"];
    let cleat = cleat.map(|f| format!("/first/hook/offset-cleat/{f}"));
    let side = ["least_leg", "least_beyond", "field_trim"].map(|f| format!("/first/{f}"));
    let pan = ["open_width", "least_open_width", "edge_hem"].map(|f| format!("/{f}"));
    let left_out: Vec<&str> = cleat.iter().chain(&side).chain(&pan).map(String::as_str).collect();
    assert_eq!(read_without(&detail, &left_out), detail);
}

proptest! {
    #[test]
    fn the_pans_corners_lie_on_their_supports(a in 24_i32..160, b in 24_i32..160, plan in 60.0_f64..120.0, bed in 0_i32..40, leg in 300_i32..900) {
        let pitch = |n: i32| Pitch::in_twelve(Length::inches_64(n * 8)).unwrap();
        let mut v = valley("6:12", "6:12");
        v.corner = Corner { first: pitch(a), second: pitch(b), plan: Angle::degrees_from(plan).unwrap() };
        v.detail.bed = Length::micrometres(bed * 1000);
        v.detail.first.leg = Length::micrometres(leg * 1000);
        v.detail.second.hook = receiver();
        v.detail.first.hook = receiver();
        if let Ok(solved) = v.compute() {
            let g = v.corner.compute().unwrap();
            let (c1, c2) = (-g.first.backing.degrees(), g.second.backing.degrees());
            let [edge1, front1, back1, centre, back2, front2, edge2] = solved.trims[0].corners[..] else { panic!() };
            let raised = f64::from(bed) + 25.4 * (0.125 + 0.048);
            for (p, rise, height) in [(edge1, c1, raised), (front1, c1, raised), (front2, c2, raised), (edge2, c2, raised)] {
                prop_assert!((above(p, rise) - height).abs() < 1e-6);
            }
            for (p, rise) in [(back1, c1), (centre, c1), (centre, c2), (back2, c2)] {
                prop_assert!((above(p, rise) - f64::from(bed)).abs() < 1e-6);
            }
            prop_assert!((distance(back1, centre) - 4.75 * 25.4).abs() < 1e-6 && (distance(centre, back2) - 4.75 * 25.4).abs() < 1e-6);
            prop_assert!((distance(edge1, front1) - (f64::from(leg) - 3.25 * 25.4)).abs() < 1e-6);
        } else {
            // Only the plan angle can turn a side's water away here, or its seams along the line.
            let g = v.corner.compute().unwrap();
            prop_assert!([g.first, g.second].iter().any(|s| s.backing.degrees() <= 0.0 || s.meeting().degrees() < 1.0));
        }
    }

    #[test]
    fn explaining_computes_the_same(a in 1_i32..200, leg in 100_i32..500, open in 50_i32..300) {
        let mut v = valley("6:12", "6:12");
        v.corner.first = Pitch::in_twelve(Length::inches_64(a * 8)).unwrap();
        v.detail.first.leg = Length::micrometres(leg * 1000);
        v.detail.open_width = Length::micrometres(open * 1000);
        match (v.compute(), v.explain()) {
            (Ok(out), Ok((same, sheet))) => {
                prop_assert_eq!(out, same);
                prop_assert!(sheet.steps().len() > 10);
            }
            (Err(a), Err(b)) => prop_assert_eq!(a, b),
            (a, b) => prop_assert!(false, "{:?} {:?}", a, b),
        }
    }
}

#[test]
fn the_cleat_of_a_valley_is_metal_to_fold() {
    // Across the fall of the first side, and up that of the second: a Z of 1 1/4, 1/4 and 2 1/4 in on 1/16 in of tape, on the pan.
    let v = valley("4:12", "8:12");
    let solved = v.compute().unwrap();
    let g = v.corner.compute().unwrap();
    let cleats: Vec<_> = solved.trims.iter().filter(|t| t.name == "offset cleat").collect();
    let up = [(cleats[0], -g.first.backing.degrees(), -1.0), (cleats[1], g.second.backing.degrees(), 1.0)];
    let low = 25.4 * (0.125 + 0.024 + 0.0625);
    for ((cleat, rise, way), side) in up.into_iter().zip([Side::First, Side::Second]) {
        let legs: Vec<Length> = cleat.profile.legs.iter().map(|l| l.length).collect();
        let mut wanted = [len("1 1/4\""), len("1/4\""), len("2 1/4\"")];
        if side == Side::First {
            wanted.reverse();
        }
        assert_eq!(legs, wanted);
        assert!(cleat.profile.bends.iter().all(|b| b.angle == BendAngle::SQUARE), "bends of 90 degrees are 90 degrees");
        let mut corners = cleat.corners.clone();
        if side == Side::First {
            corners.reverse();
        }
        let front = solved.along.iter().find(|a| a.side == side && a.name == "offset cleat, front").unwrap().from_line.mm();
        for (corner, (along, height)) in corners.iter().zip([(0.0, low + 6.35), (31.75, low + 6.35), (31.75, low), (88.9, low)]) {
            assert!((above(*corner, rise) - height).abs() < 1e-6);
            let at = corner.x.mm() * num::cos_deg(rise) + corner.z.mm() * num::sin_deg(rise);
            assert!((at * way - front - along).abs() < 1e-6);
        }
    }
}

/// The published rule: 4 in at the top and 1 in more for each 8 ft.
fn widening(length: &str) -> Valley {
    let mut v = valley("6:12", "6:12");
    v.detail.open_width = len("4\"");
    v.detail.widens = Some(ValleyWidening::COPPER_ROOFINGS);
    v.length = Some(len(length));
    // Low screws are another matter.
    for side in [&mut v.detail.first, &mut v.detail.second] {
        if let ValleyHook::OffsetCleat { least_screw_height, .. } = &mut side.hook {
            *least_screw_height = Length::ZERO;
        }
    }
    v
}

#[test]
fn a_valley_that_widens_by_hand() {
    // 24 ft: 4 in at the top, 7 in at the foot; on each side every line but the pan's own lies 1 1/2 in farther out at the foot.
    let solved = widening("24'").compute().unwrap();
    let mut still = widening("24'");
    (still.detail.widens, still.length) = (None, None);
    let still = still.compute().unwrap();
    assert_eq!((&solved.trims, &solved.lines, &solved.along), (&still.trims, &still.lines, &still.along));
    assert_eq!(solved.lower_lines.len(), solved.lines.len());
    for (top, foot) in solved.lines.iter().zip(&solved.lower_lines) {
        assert_eq!((&top.name, top.side, &top.datum), (&foot.name, foot.side, &foot.datum));
        let expected = if ["pan edge", "pan centreline"].contains(&&*top.name) { Length::ZERO } else { len("1 1/2\"") };
        assert_eq!((foot.from_line - top.from_line).length().unwrap(), expected, "{}", top.name);
    }
    for side in [Side::First, Side::Second] {
        let (end, was) = (solved.end(side).unwrap(), still.end(side).unwrap());
        assert_eq!((end.reach, end.grows), (was.reach, Some(Growth { by: len("1/2\""), over: len("8'") })));
    }
}

#[test]
fn one_that_widens_too_much_for_its_pan_says_so_at_its_foot() {
    // The pan reaches 12 in: 2 in open, 1/4 in gap, 3 1/2 in cleat and 4 in beyond leave 2 1/4 in, which is 36 ft of valley.
    assert!(widening("36'").compute().is_ok());
    let e = widening("40'").compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "detail.first.leg"));
    assert!(e.message().contains("6.35 mm") && e.message().contains("lower end"), "{e}");
    assert_eq!(e.others().len(), 1);

    let wrong = |f: &dyn Fn(&mut Valley)| {
        let mut v = widening("24'");
        f(&mut v);
        v.compute().unwrap_err().path().to_owned()
    };
    assert_eq!(wrong(&|v| v.length = None), "length");
    assert_eq!(wrong(&|v| v.length = Some(Length::ZERO)), "length");
    assert_eq!(wrong(&|v| v.detail.first.hook = receiver()), "detail.first.hook");
    let none = Growth { by: Length::ZERO, over: len("8'") };
    assert_eq!(
        wrong(&|v| v.detail.widens = Some(ValleyWidening { growth: none, source: Source::user(), pan: WideningPan::Parallel })),
        "detail.widens.growth.by"
    );
}

/// The development keeps each leg as a plane: between the two sections its bends are the same, its inner legs wider and its folds as deep.
#[test]
fn a_pan_that_tapers_is_wider_at_its_foot_by_the_growth_alone() {
    let mut v = widening("24'");
    v.detail.widens = Some(ValleyWidening { pan: WideningPan::Tapered, ..ValleyWidening::COPPER_ROOFINGS });
    v.detail.second.hook = receiver();
    for rib in [None, Some(SplashRib { height: len("1\""), half_width: len("1/2\"") })] {
        v.detail.rib = rib;
        let solved = v.compute().unwrap();
        let (top, foot) = (&solved.trims[0], &solved.lower_trims[0]);
        // But for the noise of corners that are rounded to picometres.
        let turns = top.profile.bends.iter().zip(&foot.profile.bends);
        assert!(top.profile.bends.len() == foot.profile.bends.len() && turns.clone().all(|(a, b)| (a.angle.degrees() - b.angle.degrees()).abs() < 1e-8));
        assert!(turns.clone().all(|(a, b)| (a.direction, a.inside_radius) == (b.direction, b.inside_radius)));
        for (a, b) in top.profile.legs.iter().zip(&foot.profile.legs) {
            let wider = if ["leg 1", "leg 2"].contains(&&*a.name) { len("1 1/2\"") } else { Length::ZERO };
            assert_eq!((b.length - a.length).length().unwrap(), wider, "{}", a.name);
        }
        // The pan reaches as far beyond what the panels hook at the foot as at the top.
        let at = |lines: &[crate::junction::LayoutLine], name: &str| lines.iter().find(|l| l.side == Side::First && l.name == name).unwrap().from_line;
        for name in ["pan edge", "panel nose", "cleat back"] {
            assert_eq!((at(&solved.lower_lines, name) - at(&solved.lines, name)).length().unwrap(), len("1 1/2\""), "{name}");
        }
        // Its centreline runs straight along, and no cleat is another Z.
        assert!(top.corners.iter().any(|c| foot.corners.contains(c)));
        assert_eq!(solved.trims[1].profile, solved.lower_trims[1].profile);
    }
    // What a parallel pan of 12 in cannot hold at 40 ft, a tapered one does.
    v.length = Some(len("40'"));
    assert!(v.compute().is_ok());
}
