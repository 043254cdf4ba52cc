#[cfg(feature = "serde")]
use super::test_sections::read_without;
use super::test_sections::{len, paths, row};
use super::{
    Bites, Counterflashing, DripEdge, FastenerRow, KickOutDetail, LeastRule, Levels, PanelSide, RoofSide, Side, Sidewall, SidewallDetail, SidewallFlange,
    SidewallFoot, TrimSheet, WallCover, WallHand, WallLeg,
};
use crate::panel::{Hold, Reach};
use crate::pitch::Pitch;
use crate::practice::junction as practice;
use crate::record::Calculation;
use crate::units::Length;
use proptest::prelude::*;

pub(super) fn raised() -> Sidewall {
    let detail = SidewallDetail {
        cover: LeastRule::SIDE_COVER,
        sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
        edge: PanelSide::TurnedUp { height: len("1 3/4\"") },
        edge_from_wall: len("1/2\""),
        flange: SidewallFlange::OnZ {
            web_from_wall: len("3\""),
            foot: len("2\""),
            web_to_screws: len("1\""),
            tape_width: len("7/8\""),
            tape_beneath: len("1/16\""),
            bites: Bites::Panel,
            screws: row(),
            cover: len("3/4\""),
            trim_tape_width: practice::Z_TAPE_WIDTH,
            rivets: row(),
        },
        drip: DripEdge { leg: len("3/4\""), turn: practice::DRIP_TURN, hem: practice::EDGE_HEM, above_pan: len("1/4\"") },
        wall: WallLeg {
            leg: len("8\""),
            stands_out: len("1/8\""),
            upstand: LeastRule::UFGS_UPSTAND,
            fasteners: Some(FastenerRow::UFGS_WALL_LEG),
            fasteners_below_top: len("1\""),
            cover: WallCover::Cladding { lap: len("6\""), rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: len("1\"") },
        },
        foot: SidewallFoot::EndsAtEave,
    };
    let levels = Levels { underlayment: len("1/16\""), seam_height: len("1 3/4\""), tape: len("1/16\""), ..Levels::default() };
    Sidewall { roof: RoofSide { pitch: Pitch::parse("4:12").unwrap(), levels }, first_seam_from_wall: len("12\""), wall: WallHand::Right, detail }
}

pub(super) fn on_pan() -> Sidewall {
    let mut s = raised();
    s.detail.edge = PanelSide::Flat;
    s.detail.flange =
        SidewallFlange::OnPan { width: len("5\""), tape_width: len("1\""), edge_to_fasteners: len("1/2\""), bites: Bites::Panel, fasteners: row() };
    s.detail.drip.leg = Length::ZERO;
    s
}

fn inches(l: Length) -> f64 {
    l.mm() / 25.4
}

#[test]
fn tape_too_thick_for_its_z_is_refused_by_how_much() {
    let mut sidewall = raised();
    let SidewallFlange::OnZ { tape_beneath, .. } = &mut sidewall.detail.flange else { panic!("on a Z") };
    *tape_beneath = len("60 mm");
    let e = sidewall.compute().unwrap_err();
    let all: Vec<&crate::error::Error> = std::iter::once(&e).chain(e.others()).collect();
    let tape = all.iter().find(|e| e.path() == "detail.flange.on-z.tape_beneath").unwrap();
    // The flashing lies at the level of the seam tops, and of their height its sheet takes its thickness.
    let limit = len(tape.allowed().unwrap().strip_prefix("less than ").unwrap());
    assert!((limit.mm() - (sidewall.roof.levels.seam_height - sidewall.detail.sheet.thickness).length().unwrap().mm()).abs() < 1e-6, "{tape}");
    let over = len(tape.message().rsplit(" by ").next().unwrap());
    assert!((over.mm() - (60.0 - limit.mm())).abs() < 1e-6 && tape.cure().is_some(), "{tape}");
}

#[test]
fn a_flashing_on_a_z_by_hand() {
    let solved = raised().compute().unwrap();
    let names: Vec<&str> = solved.trims.iter().map(|t| &*t.name).collect();
    assert_eq!(names, ["Z", "sidewall flashing"]);
    let at = |name: &str| -> Vec<(f64, f64)> { solved.trim(name).unwrap().corners.iter().map(|p| (inches(p.x), inches(p.z))).collect() };
    // Flange at 1/16 + 1 3/4 + 1/16 = 1.875 in; web 3 in from the wall, 3/4 in of cover; leg 1/8 in out, 8 in up.
    let expected = [(-3.75, 1.125), (-3.75, 1.875), (-0.125, 1.875), (-0.125, 9.875)];
    for (got, want) in at("sidewall flashing").iter().zip(expected) {
        assert!((got.0 - want.0).abs() < 1e-9 && (got.1 - want.1).abs() < 1e-9, "{got:?} {want:?}");
    }
    // The Z's lower face: one sheet below the tape under the flange, on the tape on the pan, its foot 1 in from the wall.
    let expected = [(-3.726, 1.7885), (-3.0, 1.7885), (-3.0, 0.125), (-1.0, 0.125)];
    for (got, want) in at("Z").iter().zip(expected) {
        assert!((got.0 - want.0).abs() < 1e-9 && (got.1 - want.1).abs() < 1e-9, "{got:?} {want:?}");
    }
    let end = solved.end(Side::First).unwrap();
    // Screwed to the pan and to the wall, the flashing pins the panel.
    assert_eq!((end.reach, end.turn_up, end.hold), (Reach::HoldBack(len("1/2\"")), len("1 3/4\""), Hold::Pins));
    let along: Vec<(&str, Length)> = solved.along.iter().map(|a| (&*a.name, a.from_line)).collect();
    assert_eq!(
        along,
        [
            ("tape under the Z", Length::inches_64(-128)),
            ("screws of the Z", Length::inches_64(-128)),
            ("tape over the Z", Length::inches_64(-216)),
            ("rivets", Length::inches_64(-216)),
            ("leg fasteners", Length::inches_64(568))
        ]
    );
}

#[test]
fn a_flashing_on_the_pan_by_hand() {
    let solved = on_pan().compute().unwrap();
    let flashing = solved.trim("sidewall flashing").unwrap();
    let got: Vec<(f64, f64)> = flashing.corners.iter().map(|p| (inches(p.x), inches(p.z))).collect();
    for (got, want) in got.iter().zip([(-5.125, 0.125), (-0.125, 0.125), (-0.125, 8.125)]) {
        assert!((got.0 - want.0).abs() < 1e-9 && (got.1 - want.1).abs() < 1e-9, "{got:?}");
    }
    assert!((flashing.profile.bends[0].angle.degrees() - 90.0).abs() < 1e-9);
    let along: Vec<(&str, Length)> = solved.along.iter().map(|a| (&*a.name, a.from_line)).collect();
    assert_eq!(
        along,
        [("tape under the flange", Length::inches_64(-296)), ("fasteners of the flange", Length::inches_64(-296)), ("leg fasteners", Length::inches_64(456))]
    );
}

#[test]
fn what_misses_its_support_is_refused_by_how_much() {
    let mut s = raised();
    s.detail.edge = PanelSide::TurnedUp { height: len("1 1/2\"") };
    s.detail.edge_from_wall = len("1 1/2\"");
    s.first_seam_from_wall = len("3\"");
    s.detail.wall.leg = len("5\"");
    let e = s.compute().unwrap_err();
    assert_eq!(
        paths(&e),
        [
            "detail.flange.on-z.foot",
            "detail.flange.on-z.web_from_wall",
            "detail.edge.turned-up.height",
            "detail.wall.leg",
            "detail.wall.cover.cladding.clearance"
        ]
    );
    for (error, by) in std::iter::once(&e).chain(e.others()).zip(["12.7 mm", "19.05 mm", "6.35 mm", "30.1625 mm", "50.8 mm"]) {
        assert!(error.message().ends_with(&format!("by {by}")), "{error}");
    }
    let mut s = raised();
    s.detail.edge = PanelSide::TurnedUp { height: len("2\"") };
    assert_eq!(s.compute().unwrap_err().message(), "the panel's edge lifts the flashing by 4.7625 mm");
}

#[test]
fn a_flange_on_the_pan_wants_a_flat_pan_and_no_drip() {
    let mut s = on_pan();
    s.detail.edge = raised().detail.edge;
    s.detail.drip = raised().detail.drip;
    assert_eq!(paths(&s.compute().unwrap_err())[..2], ["detail.drip.leg", "detail.edge"]);
    let mut s = on_pan();
    s.detail.edge_from_wall = len("4 1/2\"");
    s.first_seam_from_wall = len("5\"");
    assert_eq!(paths(&s.compute().unwrap_err()), ["detail.flange.on-pan.width", "detail.flange.on-pan.tape_width", "detail.flange.on-pan.width"]);
}

#[test]
fn pins_and_kick_outs_are_said() {
    let numbers = |s: &Sidewall| s.compute().unwrap().cautions.iter().map(|c| c.code().number).collect::<Vec<_>>();
    let mut s = on_pan();
    s.detail.wall.fasteners = None;
    assert_eq!(numbers(&s), [6074]);
    s.detail.wall.fasteners = Some(FastenerRow::UFGS_WALL_LEG);
    if let SidewallFlange::OnPan { bites, .. } = &mut s.detail.flange {
        *bites = Bites::Slot;
    }
    assert!(numbers(&s).is_empty());
    s.detail.foot = SidewallFoot::DiesIntoWall { kick_out: None };
    assert_eq!(numbers(&s), [6070]);
    s.detail.foot = SidewallFoot::DiesIntoWall { kick_out: Some(KickOutDetail::thrown(len("4\"")).into()) };
    if let SidewallFlange::OnPan { bites, .. } = &mut s.detail.flange {
        *bites = Bites::Structure;
    }
    assert_eq!(numbers(&s), [6072]);
    let solved = s.compute().unwrap();
    assert_eq!(solved.end(Side::First).unwrap().hold, Hold::Pins);
    assert_eq!(solved.kick_out.unwrap().asked.detail.throw, len("4\""));
    s.detail.foot = SidewallFoot::DiesIntoWall { kick_out: Some(KickOutDetail::thrown(Length::ZERO).into()) };
    if let SidewallFlange::OnPan { bites, .. } = &mut s.detail.flange {
        *bites = Bites::Trim;
    }
    assert_eq!(paths(&s.compute().unwrap_err()), ["detail.foot.dies-into-wall.kick_out.throw", "detail.flange.on-pan.bites"]);
}

/// What fastens a panel to a flashing, and that to a wall, fastens the panel to the wall: statics, no published source.
#[test]
fn a_flashing_fastened_to_panel_and_wall_pins_the_panel() {
    for (bites, leg, holds, said) in [
        (Bites::Panel, true, Hold::Pins, Some(6073)),
        (Bites::Panel, false, Hold::Slides, Some(6074)),
        (Bites::Slot, true, Hold::Slides, None),
        (Bites::Structure, false, Hold::Pins, Some(6072)),
    ] {
        for mut s in [raised(), on_pan()] {
            s.detail.wall.fasteners = leg.then_some(FastenerRow::UFGS_WALL_LEG);
            match &mut s.detail.flange {
                SidewallFlange::OnZ { bites: b, .. } | SidewallFlange::OnPan { bites: b, .. } => *b = bites,
            }
            let solved = s.compute().unwrap();
            assert_eq!(solved.end(Side::First).unwrap().hold, holds);
            assert_eq!(solved.cautions.first().map(|c| c.code().number), said);
            // A leg without fasteners has no row and no line of them.
            assert_eq!(solved.along.iter().any(|a| a.name == "leg fasteners"), leg);
            assert_eq!(solved.lines.iter().any(|l| l.name == "leg fasteners"), leg);
        }
    }
}

#[test]
fn a_z_has_room_for_the_tape_on_it() {
    let mut s = raised();
    if let SidewallFlange::OnZ { cover, .. } = &mut s.detail.flange {
        *cover = len("1/8\"");
    }
    // 1/2 in of tape, the drip's sheet and as much on the other side, on 1/8 in.
    let e = s.compute().unwrap_err();
    assert_eq!((e.path(), e.message()), ("detail.flange.on-z.cover", "the Z's top flange is narrower than the tape on it by 10.7442 mm"));
    if let SidewallFlange::OnZ { cover, trim_tape_width, tape_width, .. } = &mut s.detail.flange {
        (*cover, *trim_tape_width, *tape_width) = (len("3/4\""), Length::ZERO, Length::ZERO);
    }
    assert_eq!(paths(&s.compute().unwrap_err()), ["detail.flange.on-z.tape_width", "detail.flange.on-z.trim_tape_width"]);
}

#[test]
fn a_counterflashing_follows_the_leg() {
    let mut s = raised();
    s.detail.wall.cover = WallCover::Reglet(Box::new(Counterflashing {
        tongue: len("2\""),
        rule: LeastRule::UFGS_INTO_WALL,
        above_leg: len("1\""),
        face: len("5\""),
        least_lap: LeastRule::LAP_OVER_LEG,
        hem: practice::EDGE_HEM,
        wedges: Some(FastenerRow::UFGS_WEDGES),
        bead_width: len("1/4\""),
        bead_depth: len("1/4\""),
    }));
    let solved = s.compute().unwrap();
    let got: Vec<(f64, f64)> = solved.trim("counterflashing").unwrap().corners.iter().map(|p| (inches(p.x), inches(p.z))).collect();
    // Off the leg's outer face by the layer of its hem.
    let bead = solved.along.last().unwrap();
    assert!(bead.name == "reglet bead" && bead.side == Side::Second && (inches(bead.from_line) - 10.875).abs() < 1e-9);
    s.detail.wall.fasteners_below_top = len("4 1/2\"");
    let e = s.compute().unwrap_err();
    assert_eq!((e.path(), e.message()), ("detail.wall.fasteners_below_top", "the leg's fasteners stand below what covers them by 12.7 mm"));
    for (got, want) in got.iter().zip([(-0.173, 5.875), (-0.173, 10.875), (2.0, 10.875)]) {
        assert!((got.0 - want.0).abs() < 1e-9 && (got.1 - want.1).abs() < 1e-9, "{got:?}");
    }
}

#[cfg(feature = "serde")]
#[test]
fn what_is_asked_is_read_back() {
    for s in [raised(), on_pan()] {
        let text = serde_json::to_string(&s).unwrap();
        assert_eq!(serde_json::from_str::<Sidewall>(&text).unwrap(), s);
        assert!(serde_json::from_str::<Sidewall>(&text.replacen('{', r#"{"other":1,"#, 1)).is_err());
    }
}

#[cfg(feature = "serde")]
#[test]
fn what_a_job_leaves_out_is_common_practice() {
    let mut detail = raised().detail;
    detail.wall.cover = WallCover::Reglet(Box::new(Counterflashing {
        tongue: len("2\""),
        rule: LeastRule::UFGS_INTO_WALL,
        above_leg: len("1\""),
        face: len("5\""),
        least_lap: LeastRule::LAP_OVER_LEG,
        hem: practice::EDGE_HEM,
        wedges: Some(FastenerRow::UFGS_WEDGES),
        bead_width: len("1/4\""),
        bead_depth: len("1/4\""),
    }));
    let left_out = ["/drip/turn", "/drip/hem", "/wall/cover/reglet/least_lap", "/wall/cover/reglet/hem"];
    assert_eq!(read_without(&detail, &left_out), detail);
}

proptest! {
    #[test]
    fn corners_lie_on_their_supports(seam in 20_i32..80, out in 0_i32..12, leg in 300_i32..900, web in 70_i32..200) {
        let mut s = raised();
        s.roof.levels = Levels { seam_height: Length::micrometres(seam * 1000), ..Levels::default() };
        s.detail.edge = PanelSide::TurnedUp { height: s.roof.levels.seam_height };
        s.detail.wall.stands_out = Length::micrometres(out * 1000);
        s.detail.wall.leg = Length::micrometres(leg * 1000);
        if let SidewallFlange::OnZ { web_from_wall, .. } = &mut s.detail.flange {
            *web_from_wall = Length::micrometres(web * 1000);
        }
        s.detail.drip.above_pan = Length::ZERO;
        s.detail.drip.leg = len("15 mm");
        let solved = s.compute().unwrap();
        let [foot, edge, bend, top] = solved.trim("sidewall flashing").unwrap().corners[..] else { panic!() };
        prop_assert!((foot.z.mm() - f64::from(seam) + 15.0).abs() < 1e-6);
        for p in [edge, bend] {
            prop_assert!((p.z.mm() - f64::from(seam)).abs() < 1e-6);
        }
        for p in [bend, top] {
            prop_assert!((p.x.mm() + f64::from(out)).abs() < 1e-6);
        }
        prop_assert!((top.z.mm() - bend.z.mm() - f64::from(leg)).abs() < 1e-6);
    }

    #[test]
    fn explaining_computes_the_same(web in 10_i32..400, leg in 1_i32..400, edge in 0_i32..60) {
        for mut s in [raised(), on_pan()] {
            s.detail.wall.leg = Length::micrometres(leg * 1000);
            s.detail.edge_from_wall = Length::micrometres(edge * 1000);
            if let SidewallFlange::OnZ { web_from_wall, .. } = &mut s.detail.flange {
                *web_from_wall = Length::micrometres(web * 1000);
            }
            match (s.compute(), s.explain()) {
                (Ok(out), Ok((same, sheet))) => {
                    prop_assert_eq!(out, same);
                    prop_assert!(sheet.steps().len() > 2);
                }
                (Err(a), Err(b)) => prop_assert_eq!(a, b),
                (a, b) => prop_assert!(false, "{:?} {:?}", a, b),
            }
        }
    }
}
