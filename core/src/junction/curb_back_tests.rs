//! The flat back of a curb.

use super::test_sections::{len, near, off, paths, slope};
use super::{
    Bites, Counterflashing, CricketRule, CurbBack, CurbBackDetail, Datum, FastenerRow, LayoutLine, LeastRule, Levels, OffsetCleat, RoofSide, SectionPoint,
    Side, Solved, TopEdge, TrimSheet, ValleyHook, WallCover, WallLeg,
};
use crate::error::ErrorKind;
use crate::num;
use crate::panel::{Hold, Reach};
use crate::pitch::Pitch;
use crate::practice::{junction as practice, panel};
use crate::record::{Calculation, Source};
use crate::units::Length;
use proptest::prelude::*;

const SHEET: TrimSheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };

pub(super) fn curb(pitch: Pitch) -> CurbBack {
    let row = FastenerRow { spacing: len("12\""), source: Source::CommonPractice };
    CurbBack {
        roof: RoofSide { pitch, levels: Levels { underlayment: len("1/16\""), pan: len("1/32\""), seam_height: len("1 3/4\""), ..Levels::default() } },
        width: len("24\""),
        detail: CurbBackDetail {
            sheet: SHEET,
            wall: WallLeg {
                leg: len("10\""),
                stands_out: len("1/8\""),
                upstand: LeastRule::UFGS_UPSTAND,
                fasteners: Some(FastenerRow::UFGS_WALL_LEG),
                fasteners_below_top: len("1\""),
                cover: WallCover::Cladding { lap: len("7\""), rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: len("2\"") },
            },
            reach: len("18\""),
            top_edge: TopEdge { hem: practice::EDGE_HEM, screws_below: len("1\""), screws: row.clone() },
            under_panels: LeastRule::UFGS_UNDER_COVERING,
            least_beyond: LeastRule::BEYOND_HOOK,
            clear_width: len("6\""),
            least_clear_width: LeastRule::CLEAR_BEHIND_CURB,
            seam_cut_back: len("1 1/4\""),
            least_to_seams: LeastRule { least: len("7\""), ..LeastRule::SEAMS_FROM_CURB },
            hook: ValleyHook::OffsetCleat {
                least_screw_height: practice::VALLEY_SCREW_HEIGHT_LEAST,
                cleat: OffsetCleat {
                    sheet: SHEET,
                    width: practice::CLEAT_WIDTH,
                    tongue: len("1 1/4\""),
                    rise: len("1/4\""),
                    tape_width: len("1 1/2\""),
                    tape: len("1/16\""),
                    screws_below_tape_edge: practice::CLEAT_SCREWS_BELOW_TAPE_EDGE,
                    screws: row,
                    gap: len("1/4\""),
                    fold: panel::END_FOLD,
                    least_engagement: len("3/8\""),
                },
            },
            cricket: CricketRule::IRC,
        },
    }
}

fn four_twelve() -> CurbBack {
    curb(Pitch::parse("4:12").unwrap())
}

fn line<'a>(solved: &'a Solved, name: &str) -> &'a LayoutLine {
    solved.lines.iter().find(|l| l.name == name).unwrap()
}

/// How far up the slope, which falls toward +x, a point lies.
fn up(p: SectionPoint, slope: f64) -> f64 {
    p.z.mm() * num::sin_deg(slope) - p.x.mm() * num::cos_deg(slope)
}

#[test]
fn by_hand_in_a_roof_of_four_twelve() {
    // tan S = 1/3: sin S = 1 / sqrt 10, cos S = 3 / sqrt 10. The pan lies 1/16 in above the deck, its leg 1/8 in out from the curb.
    let c = four_twelve();
    let solved = c.compute().unwrap();
    let low = 25.4 * (0.0625 / 3.0 + 0.125 * 10.0_f64.sqrt() / 3.0);
    assert!(near(line(&solved, "panel nose").from_line.mm(), low + 6.0 * 25.4));
    assert!(near(line(&solved, "offset cleat, front").from_line.mm(), low + 6.25 * 25.4));
    assert!(near(line(&solved, "cleat back").from_line.mm(), low + 9.75 * 25.4));
    assert!(near(line(&solved, "cleat screws").from_line.mm(), low + 9.25 * 25.4));
    assert!(near(line(&solved, "seam ends").from_line.mm(), low + 7.25 * 25.4));
    assert!(near(line(&solved, "trim top edge").from_line.mm(), low + 18.0 * 25.4));
    // From the pan's top edge: 18 - 6 1/4 in to the front, 3 1/2 in less to the back.
    assert_eq!((line(&solved, "offset cleat, front").from_datum, line(&solved, "cleat back").from_datum), (len("11 3/4\""), len("8 1/4\"")));
    let end = solved.end(Side::First).unwrap();
    let Reach::HoldBack(front) = end.reach else { panic!("the panels end above the curb") };
    assert!(near(front.mm(), low + 6.25 * 25.4));
    assert_eq!((end.gap, end.fold, end.turn_up, end.hold), (len("1/4\""), len("1\""), Length::ZERO, Hold::Slides));
    // The pan bends up by 90 degrees and the pitch.
    let pan = solved.trim("back pan").unwrap();
    assert!(near(pan.profile.bends[0].angle.degrees(), 90.0 + num::atan2_deg(1.0, 3.0)));
    assert_eq!(pan.profile.legs[1].length, len("10\""));
}

#[test]
fn the_order_of_the_work() {
    let solved = four_twelve().compute().unwrap();
    let names: Vec<(&str, Side)> = solved.along.iter().map(|a| (&*a.name, a.side)).collect();
    assert_eq!(
        names,
        [
            ("screws along the top edge", Side::First),
            ("leg fasteners", Side::Second),
            ("cleat tape", Side::First),
            ("offset cleat, front", Side::First),
            ("cleat screws", Side::First),
        ]
    );
    for row in &solved.along {
        if let super::Along::Fasteners { bites, .. } = row.what {
            assert_eq!(bites, Bites::Structure, "{}", row.name);
        }
    }
    assert_eq!(solved.trims.iter().map(|t| &*t.name).collect::<Vec<_>>(), ["back pan", "offset cleat"]);
}

#[test]
fn a_leg_too_low_is_refused_square_to_the_pan() {
    // 8 in square to a roof of 12:12 ask for a leg of (8 in + 24 mil) sqrt 2, though 10 in plumb are more than 8.
    let mut c = curb(Pitch::parse("12:12").unwrap());
    let e = c.compute().unwrap_err();
    assert_eq!((e.kind(), paths(&e)), (ErrorKind::Impossible, vec!["detail.wall.leg"]));
    let least = 8.024 * 25.4 * 2.0_f64.sqrt();
    c.detail.wall.leg = Length::from_mm(least - 1e-6).unwrap();
    assert!(c.compute().is_err());
    c.detail.wall.leg = Length::from_mm(least + 1e-6).unwrap();
    assert!(c.compute().is_ok());
}

#[test]
fn screws_near_the_low_line_are_refused_with_the_width_that_cures_them() {
    // 1/2:12: 9 1/4 in along the pan rise 9.25 / sqrt 577 = 0.385 in.
    let mut c = curb(Pitch::parse("1/2:12").unwrap());
    let e = c.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "detail.clear_width"));
    let rise = 577.0_f64.sqrt();
    let short = Length::from_mm(25.4 * (0.75 - 9.25 / rise)).unwrap();
    assert!(e.message().contains(&short.to_string()), "{e}");
    let cure = e.cure().unwrap();
    let more = len(cure.trim_start_matches("a clear width greater by ").trim_end_matches(", a receiver fold, or a cricket"));
    assert!(near(more.mm(), 25.4 * (0.75 * rise - 9.25)), "{e}");
    c.detail.clear_width = (c.detail.clear_width + more).length().unwrap();
    c.detail.reach = len("36\"");
    assert!(c.compute().is_ok());
}

#[test]
fn a_wide_curb_needs_a_cricket() {
    let codes = |c: &CurbBack| c.compute().unwrap().cautions.iter().map(|c| c.code().name).collect::<Vec<_>>();
    let mut c = four_twelve();
    assert_eq!(codes(&c), ["water-dams-behind"]);
    c.width = len("30\"");
    assert_eq!(codes(&c), ["water-dams-behind"], "the rule speaks of more than 30 in");
    c.width = len("30 1/16\"");
    assert_eq!(codes(&c), ["water-dams-behind", "cricket-required"]);
    assert_eq!(c.compute().unwrap().cautions[1].source(), &CricketRule::IRC.source);
    c.detail.cricket = CricketRule::given(len("36\""), Source::user());
    assert_eq!(codes(&c), ["water-dams-behind"]);
    // 9 1/4 in along a roof of 4:12.
    let dams = c.compute().unwrap().cautions.remove(0);
    assert!(dams.message().contains(&Length::from_mm(9.25 * 25.4 / 10.0_f64.sqrt()).unwrap().to_string()), "{}", dams.message());
    c.roof.levels.stand_off = len("1\"");
    assert_eq!(codes(&c), ["water-dams-behind", "cleat-off-level"]);
}

#[test]
fn every_fault_is_told_at_once() {
    let mut c = four_twelve();
    c.detail.clear_width = len("5\"");
    c.detail.reach = len("8 1/2\"");
    c.detail.top_edge.hem = len("1 1/4\"");
    let e = c.compute().unwrap_err();
    assert_eq!(
        paths(&e),
        [
            "detail.hook.offset-cleat.cleat.width",
            "detail.clear_width",
            "detail.seam_cut_back",
            "detail.reach",
            "detail.reach",
            "detail.top_edge.screws_below",
            "detail.top_edge.screws_below",
        ]
    );
    let mut c = four_twelve();
    (c.width, c.detail.reach, c.detail.least_beyond.least) = (Length::ZERO, len("-1\""), len("-1\""));
    (c.roof.levels.pan, c.detail.wall.leg, c.detail.top_edge.screws.spacing) = (len("-1 mm"), Length::ZERO, Length::ZERO);
    assert_eq!(
        paths(&c.compute().unwrap_err()),
        ["roof.levels.pan", "width", "detail.wall.leg", "detail.top_edge.screws.spacing", "detail.reach", "detail.least_beyond.least"]
    );
}

#[test]
fn a_counterflashing_covers_the_leg() {
    let mut c = four_twelve();
    c.detail.wall.cover = WallCover::Reglet(Box::new(Counterflashing {
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
    let solved = c.compute().unwrap();
    assert_eq!(solved.trims.iter().map(|t| &*t.name).collect::<Vec<_>>(), ["back pan", "counterflashing", "offset cleat"]);
    assert!(solved.along.iter().any(|a| a.name == "reglet bead"));
}

fn on_a_fold(pitch: Pitch) -> CurbBack {
    let mut c = curb(pitch);
    c.detail.hook = super::valley_tests::receiver();
    c
}

#[test]
fn a_fold_of_the_pan_has_no_hole_behind_a_curb() {
    let c = on_a_fold(Pitch::parse("4:12").unwrap());
    let solved = c.compute().unwrap();
    assert_eq!(solved.trims.iter().map(|t| &*t.name).collect::<Vec<_>>(), ["back pan"]);
    // Nothing but the top edge's screws, above the fold, goes through the pan: 18 in less 1, and the fold's back at 6 + 1/4 + 1 1/2.
    let through: Vec<&str> = solved.along.iter().filter(|a| a.side == Side::First).map(|a| &*a.name).collect();
    assert_eq!(through, ["screws along the top edge"]);
    let low = 25.4 * (0.0625 / 3.0 + 0.125 * 10.0_f64.sqrt() / 3.0);
    assert!(near(line(&solved, "screws along the top edge").from_line.mm(), low + 17.0 * 25.4));
    assert!(near(line(&solved, "panel nose").from_line.mm(), low + 6.0 * 25.4));
    assert_eq!((line(&solved, "panel nose").from_datum, line(&solved, "seam ends").from_datum), (len("12\""), len("1 1/4\"")));
    let end = solved.end(Side::First).unwrap();
    let Reach::HoldBack(front) = end.reach else { panic!("the panels end above the curb") };
    assert!(near(front.mm(), low + 6.25 * 25.4));
    assert_eq!((end.gap, end.fold, end.hold), (len("1/4\""), len("1\""), Hold::Slides));
    // The girth by hand, mid-line rule aside: from the edge 11 3/4 in to the fold's front, 1 1/2 in back, 7 3/4 in to the low line, 10 in up the curb.
    let legs: Vec<(&str, Length)> = solved.trims[0].profile.legs.iter().map(|l| (&*l.name, l.length)).collect();
    assert_eq!(legs, [("outer part 1", len("11 3/4\"")), ("return 1", len("1 1/2\"")), ("pan", len("7 3/4\"")), ("leg", len("10\""))]);
    // The outer part lies two sheets and the opening higher.
    let pan = &solved.trims[0].corners;
    for p in &pan[..2] {
        assert!(near(off(*p, -num::atan2_deg(1.0, 3.0)), 25.4 * (0.0625 + 0.125 + 0.048)));
    }
    let codes: Vec<&str> = solved.cautions.iter().map(|c| c.code().name).collect();
    assert_eq!(codes, ["water-dams-behind", "receiver-stands-up"]);
    assert!(solved.cautions[0].message().contains("the pan's top edge"));
    // A roof too flat for screws is not for a fold.
    assert!(on_a_fold(Pitch::parse("1/2:12").unwrap()).compute().is_ok());
    assert!(crate::trim::FlatPattern { profile: solved.trims[0].profile.clone(), rule: crate::trim::BendRule::SharpCorner }.compute().is_ok());
}

#[test]
fn a_fold_that_does_not_serve_behind_a_curb_says_why() {
    let wrong = |f: &dyn Fn(&mut CurbBack)| {
        let mut c = on_a_fold(Pitch::parse("4:12").unwrap());
        f(&mut c);
        paths(&c.compute().unwrap_err()).join(" ")
    };
    let hook = |depth: &str, opening: &str, gap: &str| ValleyHook::ReceiverFold {
        depth: len(depth),
        opening: len(opening),
        gap: len(gap),
        fold: panel::END_FOLD,
        least_engagement: len("3/8\""),
    };
    assert_eq!(wrong(&|c| c.detail.hook = hook("1/2\"", "1/8\"", "1/4\"")), "detail.hook.receiver-fold.fold");
    assert_eq!(wrong(&|c| c.detail.hook = hook("1 1/2\"", "1/64\"", "1/4\"")), "detail.hook.receiver-fold.opening");
    assert_eq!(wrong(&|c| c.detail.hook = hook("1 1/2\"", "1/8\"", "3/4\"")), "detail.hook.receiver-fold.fold");
    assert_eq!(wrong(&|c| c.detail.hook = hook("0 in", "1/8\"", "-1/4\"")), "detail.hook.receiver-fold.depth detail.hook.receiver-fold.gap");
    assert_eq!(wrong(&|c| c.detail.reach = len("11\"")), "detail.reach");
}

#[cfg(feature = "serde")]
#[test]
fn a_curb_is_the_same_after_json() {
    let c = four_twelve();
    let text = serde_json::to_string(&c).unwrap();
    assert_eq!(serde_json::from_str::<CurbBack>(&text).unwrap(), c);
}

proptest! {
    #[test]
    fn pan_and_cleat_lie_on_their_supports(s in 6.0_f64..35.0, out in 0_i32..20, bed in 0_i32..20) {
        let mut c = curb(slope(s));
        c.detail.wall.stands_out = Length::micrometres(out * 1000);
        c.roof.levels.underlayment = Length::micrometres(bed * 100);
        let solved = c.compute().unwrap();
        let bed = f64::from(bed) / 10.0;
        let pan = &solved.trim("back pan").unwrap().corners;
        prop_assert!(near(off(pan[0], -s), bed) && near(off(pan[1], -s), bed));
        prop_assert!(near(pan[1].x.mm(), -f64::from(out)) && near(pan[2].x.mm(), -f64::from(out)));
        prop_assert!(near(up(pan[0], s), line(&solved, "trim top edge").from_line.mm()));
        let cleat = &solved.trim("offset cleat").unwrap().corners;
        let low = bed + 25.4 * (0.024 + 0.0625);
        let front = line(&solved, "offset cleat, front").from_line.mm();
        for (p, from_front, height) in [(0, 88.9, low), (1, 31.75, low), (2, 31.75, low + 6.35), (3, 0.0, low + 6.35)] {
            prop_assert!(near(off(cleat[p], -s), height) && near(up(cleat[p], s), front + from_front));
        }
    }

    #[test]
    fn every_line_is_where_its_datum_says(s in 6.0_f64..35.0, clear in 60_i32..120) {
        let mut c = curb(slope(s));
        c.detail.clear_width = Length::micrometres(clear * 2540);
        c.detail.reach = len("24\"");
        c.detail.least_clear_width.least = Length::ZERO;
        let solved = c.compute().unwrap();
        let top = line(&solved, "trim top edge").from_line;
        for l in &solved.lines {
            let from_line = match &l.datum {
                Datum::JunctionLine => l.from_datum.into(),
                Datum::TrimTopEdge => top - l.from_datum,
                Datum::Line(name) => line(&solved, name).from_line + l.from_datum,
                Datum::TrimLowerEdge => unreachable!("a back pan has no lower edge"),
            };
            prop_assert_eq!(from_line.length().unwrap(), l.from_line, "{}", l.name);
        }
        for (what, struck) in
            [("offset cleat, front", "offset cleat, front"), ("cleat screws", "cleat screws"), ("screws along the top edge", "screws along the top edge")]
        {
            prop_assert_eq!(solved.along.iter().find(|a| a.name == what).unwrap().from_line, line(&solved, struck).from_line);
        }
    }

    #[test]
    fn explaining_computes_the_same(s in 0.5_f64..60.0, leg in 4_i32..20) {
        let mut c = curb(slope(s));
        c.detail.wall.leg = Length::micrometres(leg * 25_400);
        match (c.compute(), c.explain()) {
            (Ok(out), Ok((same, sheet))) => {
                prop_assert_eq!(out, same);
                prop_assert!(sheet.steps().len() > 8);
            }
            (Err(a), Err(b)) => prop_assert_eq!(a, b),
            (a, b) => prop_assert!(false, "{:?} {:?}", a, b),
        }
    }
}
