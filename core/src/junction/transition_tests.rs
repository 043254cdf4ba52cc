//! The pitch transition as a whole: trims, panel ends, lines and what lies along them.

#[cfg(feature = "serde")]
use super::test_sections::read_without;
use super::test_sections::{degrees, len, near, off, paths, slope};
use super::{
    Adjoining, Along, BeadSize, Bending, Bites, CLEAT_OFF_LEVEL, Datum, DripEdge, FastenerRow, LayoutLine, LeastRule, Levels, OffsetCleat, PackingReach,
    PitchTransition, PitchTransitionDetail, RoofSide, SectionPoint, Side, Solved, TopClosure, TopEdge, TopEnd, TrimSheet,
};
use crate::closure::Face;
use crate::error::ErrorKind;
use crate::num;
use crate::panel::{Hold, Reach};
use crate::pitch::Pitch;
use crate::practice::{closure, junction as practice, panel};
use crate::record::{Calculation, Source};
use crate::trim::{BendRule, NeutralFactor};
use crate::units::Length;
use proptest::prelude::*;

const SHEET: TrimSheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };

fn row(spacing: &str) -> FastenerRow {
    FastenerRow { spacing: len(spacing), source: Source::CommonPractice }
}

/// The layers come to 1 13/16 in.
fn levels() -> Levels {
    Levels { pan: len("1/32\""), seam_height: len("1 3/4\""), tape: len("1/32\""), ..Levels::default() }
}

pub(super) fn transition(lower: &str, upper: &str) -> PitchTransition {
    let side = |pitch: &str| RoofSide { pitch: Pitch::parse(pitch).unwrap(), levels: levels() };
    let row = row("12\"");
    PitchTransition {
        lower: side(lower),
        upper: side(upper),
        detail: PitchTransitionDetail {
            sheet: SHEET,
            end: TopEnd {
                flange: len("14\""),
                cover: LeastRule::UFGS_UNSOLDERED,
                drip: DripEdge { leg: len("3/4\""), turn: practice::DRIP_TURN, hem: practice::EDGE_HEM, above_pan: len("1/4\"") },
                closure: TopClosure {
                    set_back: closure::SET_BACK,
                    face: Face::LeadingEdge,
                    lower_flange: len("2 1/2\""),
                    top_flange: len("1 1/8\""),
                    tape_width: len("7/8\""),
                    tape_beneath: len("1/16\""),
                    panel_margin: LeastRule::PANEL_MARGIN,
                },
                bites: Bites::Structure,
                screws: row.clone(),
                rivets: None,
                hollow_seams: false,
                cap_tape_width: len("7/8\""),
                hold_back: if lower == "3:12" { len("1\"") } else { len("6\"") },
                clearance: len("1/4\""),
                turn_up: panel::TURN_UP,
                field_trim: Length::ZERO,
            },
            seam_bead: Some(BeadSize { width: len("3/8\""), depth: len("1/4\"") }),
            packing: Length::ZERO,
            packing_reach: PackingReach::UnderPanels,
            bending: Bending::Direct,
            unsupported_limit: len("24\""),
            upper_flange: len("14\""),
            top_edge: TopEdge { hem: Length::ZERO, screws_below: len("1\""), screws: row.clone() },
            cleat: OffsetCleat {
                sheet: SHEET,
                width: practice::CLEAT_WIDTH,
                tongue: len("1 1/4\""),
                rise: len("1/4\""),
                tape_width: len("1 1/2\""),
                tape: len("1/16\""),
                screws_below_tape_edge: practice::CLEAT_SCREWS_BELOW_TAPE_EDGE,
                screws: row,
                gap: Length::ZERO,
                fold: panel::END_FOLD,
                least_engagement: len("3/8\""),
            },
            front_below_top: practice::CLEAT_FRONT_BELOW_TOP,
            head_lap: LeastRule::HEAD_LAP,
        },
    }
}

/// Two slopes in degrees, with so much hold-back that no seam reaches the trim.
pub(super) fn slopes(lower: f64, upper: f64) -> PitchTransition {
    let mut t = transition("3:12", "8:12");
    (t.lower.pitch, t.upper.pitch) = (slope(lower), slope(upper));
    t.detail.end.hold_back = len("100 m");
    t.detail.unsupported_limit = len("200 m");
    t
}

/// Two slopes in degrees, with flanges and a hold-back to fit them.
fn fitted(lower: f64, upper: f64, packing: Length) -> PitchTransition {
    let mut t = slopes(lower, upper);
    t.detail.packing = packing;
    let at = t.section().unwrap().bend_on_lower;
    t.detail.end.hold_back = (len("2\"") - at.min(Length::ZERO)).length().unwrap();
    let back = (t.detail.end.hold_back + at).length().unwrap();
    t.detail.end.flange = (back + len("6\"")).length().unwrap();
    let above = (-t.section().unwrap().bend_on_upper).length().unwrap().max(Length::ZERO);
    t.detail.upper_flange = (above + len("8\"")).length().unwrap();
    t
}

fn line<'a>(solved: &'a Solved, name: &str) -> &'a LayoutLine {
    solved.lines.iter().find(|l| l.name == name).unwrap()
}

fn along(solved: &Solved, name: &str) -> Length {
    solved.along.iter().find(|l| l.name == name).unwrap().from_line
}

/// Where a point lies along a plane that rises at so many degrees.
fn place(p: SectionPoint, rise: f64) -> f64 {
    p.x.mm() * num::cos_deg(rise) + p.z.mm() * num::sin_deg(rise)
}

#[test]
fn trade_check_values() {
    // Common practice, no published source: 1/2 in set back and 2 3/8 in to the flange's centre put the screws 2 7/8 in from the edge.
    let solved = transition("3:12", "8:12").compute().unwrap();
    let from = |name: &str| line(&solved, name).from_datum;
    assert_eq!(from("closure screws"), len("2 7/8\""));
    // A cleat 3 1/2 in wide whose front is 6 in below the trim's top has its back at 2 1/2 in; its screws sit 1/2 in below its tape's upper edge.
    assert_eq!(from("cleat back"), len("2 1/2\""));
    assert_eq!(from("offset cleat, front"), len("6\""));
    assert_eq!(from("cleat screws"), len("3\""));
    // A panel that measures 39 in to the cleat, with a 1 in fold, no gap and the bend ignored, is cut at 40 in: its length to the line, and what
    // the end adds to that.
    let end = solved.end(Side::Second).unwrap();
    let to_line = len("39\"") + line(&solved, "offset cleat, front").from_line;
    assert_eq!((to_line + end.allowance().unwrap()).length().unwrap(), len("40\""));
}

#[test]
fn by_hand_over_a_shallow_roof() {
    // tan 3:12 = 1/4 and tan 8:12 = 2/3: sin D = 5 / sqrt 221 and cos D = 14 / sqrt 221. h = 1 13/16 in.
    let solved = transition("3:12", "8:12").compute().unwrap();
    let s = 25.4 * 1.8125 * 221.0_f64.sqrt() / 5.0;
    let edge = s * 14.0 / 221.0_f64.sqrt() - 14.0 * 25.4;
    assert!(near(line(&solved, "trim lower edge").from_line.mm(), edge));
    assert!(near(line(&solved, "trim top edge").from_line.mm(), s + 14.0 * 25.4));
    assert!(near(along(&solved, "closure screws").mm(), edge + 2.875 * 25.4));
    assert!(near(along(&solved, "cleat screws").mm(), s + 11.0 * 25.4));
    let Reach::HoldBack(front) = solved.end(Side::Second).unwrap().reach else { panic!("the front lies above the line") };
    assert!(near(front.mm(), s + 8.0 * 25.4));
    let bends: Vec<f64> = solved.trim("transition trim").unwrap().profile.bends.iter().map(|b| b.angle.degrees()).collect();
    assert!(bends.len() == 2 && near(bends[0], 90.0) && near(bends[1], num::atan2_deg(5.0, 14.0)), "{bends:?}");
}

#[test]
fn by_hand_over_a_steep_roof() {
    // tan 12:12 = 1 and tan 4:12 = 1/3: sin D = -1 / sqrt 5 and cos D = 2 / sqrt 5, so that the bend lies h sqrt 5 down the upper plane and 2 h down the lower.
    let solved = transition("12:12", "4:12").compute().unwrap();
    let h = 25.4 * 1.8125;
    assert!(near(line(&solved, "trim lower edge").from_line.mm(), -2.0 * h - 14.0 * 25.4));
    assert!(near(line(&solved, "offset cleat, front").from_line.mm(), -h * 5.0_f64.sqrt() + 8.0 * 25.4));
    let end = solved.end(Side::First).unwrap();
    assert_eq!((end.reach, end.turn_up, end.hold), (Reach::HoldBack(len("6\"")), len("1\""), Hold::Pins));
    assert_eq!(solved.end(Side::Second).unwrap().hold, Hold::Slides);
}

#[test]
fn the_order_of_the_work() {
    // Closures whose top flange reaches the drip, for rivets through its face.
    let mut t = transition("3:12", "8:12");
    (t.detail.end.closure.face, t.detail.end.closure.top_flange, t.detail.end.cap_tape_width) = (Face::Web, len("1/2\""), len("1/2\""));
    t.detail.end.rivets = Some(row("12\""));
    let solved = t.compute().unwrap();
    let names: Vec<&str> = solved.along.iter().map(|a| &*a.name).collect();
    assert_eq!(
        names,
        [
            "tape under the closures",
            "closures",
            "closure screws",
            "tape over the closures",
            "bead behind the seams",
            "screws along the top edge",
            "rivets",
            "cleat tape",
            "offset cleat, front",
            "cleat screws",
        ]
    );
    let bites = |name: &str| match &solved.along.iter().find(|a| a.name == name).unwrap().what {
        Along::Fasteners { bites, spacing, .. } => (*bites, *spacing),
        other => panic!("{other:?}"),
    };
    for (name, what) in
        [("closure screws", Bites::Structure), ("rivets", Bites::Trim), ("screws along the top edge", Bites::Structure), ("cleat screws", Bites::Structure)]
    {
        assert_eq!(bites(name), (what, len("12\"")), "{name}");
    }
    assert_eq!(along(&solved, "bead behind the seams"), len("-1\""));
    assert_eq!(along(&solved, "rivets"), line(&solved, "trim lower edge").from_line);
    let lines: Vec<(&str, String)> = solved.lines.iter().map(|l| (&*l.name, l.datum.to_string())).collect();
    let (junction, edge, top) = ("the junction line", "the trim's lower edge", "the trim's top edge");
    let expected = [
        ("panel end", junction),
        ("trim lower edge", junction),
        ("closure face", edge),
        ("closure tape, lower edge", edge),
        ("closure screws", edge),
        ("closure tape, upper edge", edge),
        ("trim top edge", junction),
        ("screws along the top edge", top),
        ("cleat back", top),
        ("cleat tape, lower edge", top),
        ("cleat screws", top),
        ("offset cleat, front", top),
        ("panel nose", top),
    ];
    assert_eq!(lines, expected.map(|(name, datum)| (name, datum.to_owned())));
    assert_eq!(solved.trims.iter().map(|t| &*t.name).collect::<Vec<_>>(), ["transition trim", "offset cleat"]);
}

#[test]
fn the_cleat_stands_on_its_tape_on_the_upper_flange() {
    let mut t = transition("3:12", "8:12");
    t.detail.packing = len("1\"");
    let solved = t.compute().unwrap();
    let cleat = solved.trim("offset cleat").unwrap();
    let rise = t.upper.pitch.angle().degrees();
    let low = 25.4 * (1.0 + 0.024 + 0.0625);
    let front = line(&solved, "offset cleat, front").from_line.mm();
    for (p, up, height) in [(0, 0.0, low + 6.35), (1, 31.75, low + 6.35), (2, 31.75, low), (3, 88.9, low)] {
        let p = cleat.corners[p];
        assert!(near(off(p, rise), height) && near(place(p, rise), front + up), "{p:?}");
    }
    let girth = cleat.profile.girth(&BendRule::neutral_axis(NeutralFactor::new(0.4).unwrap())).unwrap();
    assert!(girth > len("3 1/2\"") && girth < len("3 3/4\""), "{girth}");
}

#[test]
fn one_plane_needs_no_bend_at_the_line() {
    let mut t = transition("4:12", "4:12");
    t.detail.packing = t.lower.levels.compute().unwrap();
    let trim = t.compute().unwrap().trims.swap_remove(0);
    assert_eq!(trim.profile.legs.iter().map(|l| &*l.name).collect::<Vec<_>>(), ["drip", "flange"]);
    assert!(near(trim.profile.legs[1].length.mm(), 28.0 * 25.4));
    // Slopes so little apart that the bend would stand out by less than any tool can make.
    t.upper.pitch = slope(t.lower.pitch.angle().degrees() + 1e-9);
    let same = t.compute().unwrap().trims.swap_remove(0);
    assert_eq!(same.profile.legs.len(), 2);
}

#[test]
fn a_riser_is_a_leg_of_its_own() {
    let mut t = transition("3:12", "8:12");
    let s = t.section().unwrap().bend_on_upper;
    t.detail.bending = Bending::Riser { distance: (s + len("3\"")).length().unwrap() };
    let trim = t.compute().unwrap().trims.swap_remove(0);
    assert_eq!(trim.profile.legs.iter().map(|l| &*l.name).collect::<Vec<_>>(), ["drip", "lower flange", "riser", "upper flange"]);
    // 3 in farther up a plane that rises by D against the lower one.
    let drop = 76.2 * 5.0 / 221.0_f64.sqrt();
    assert!(near(trim.profile.legs[2].length.mm(), drop));
    // At the direct bend the riser has no height: it is the direct bend.
    t.detail.bending = Bending::Riser { distance: s };
    assert_eq!(t.compute().unwrap().trims[0].profile.legs.len(), 3);
}

#[test]
fn what_the_closures_bite_decides_whether_the_lower_panels_are_pinned() {
    let mut t = transition("3:12", "8:12");
    t.detail.end.bites = Bites::Panel;
    assert_eq!(t.compute().unwrap().end(Side::First).unwrap().hold, Hold::Slides);
    t.detail.end.bites = Bites::Trim;
    assert_eq!(t.compute().unwrap_err().path(), "detail.end.bites");
}

#[test]
fn a_front_below_the_line_is_an_overhang() {
    // Packing of more than h / cos D brings the bend below the line on either side.
    let mut t = transition("3:12", "8:12");
    t.detail.packing = len("3\"");
    t.detail.end.hold_back = len("9\"");
    t.detail.end.flange = len("14\"");
    let bend = t.section().unwrap().bend_on_upper;
    t.detail.upper_flange = (len("5 1/2\"") - bend).length().unwrap();
    t.detail.head_lap.least = Length::ZERO;
    let end = t.compute().unwrap().end(Side::Second).unwrap().clone();
    assert_eq!((end.reach, end.fold), (Reach::Overhang(len("1/2\"")), len("1\"")));
    // Tape and screws still lie over the deck; with the tape's lower edge below the line they do not.
    t.detail.upper_flange = (len("3 31/32\"") - bend).length().unwrap();
    let e = t.compute().unwrap_err();
    assert!(e.path() == "detail.front_below_top" && e.message().contains("misses the upper deck by 0.79375 mm"), "{e}");
}

#[test]
fn a_cleat_over_air_is_refused() {
    let mut t = transition("12:12", "4:12");
    t.detail.upper_flange = len("9\"");
    let e = t.compute().unwrap_err();
    assert!(e.path() == "detail.front_below_top" && e.message().contains("misses the upper deck"), "{e}");
}

#[test]
fn a_closure_that_falls_off_the_panel_is_refused_by_how_much() {
    let mut t = transition("3:12", "8:12");
    t.detail.end.hold_back = len("3'");
    let e = t.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "detail.end.hold_back"));
    assert!(e.message().contains("pan beyond the closures' lower flange: "), "{e}");
}

#[test]
fn slopes_that_hardly_differ_are_cured_by_packing() {
    let mut t = transition("20 deg", "20.01 deg");
    let e = t.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "detail.end.hold_back"));
    let cure = e.cure().unwrap().to_owned();
    // 272 m away the bend is no use; the packing named puts it on the line.
    assert!(cure.starts_with("packing of "), "{e}");
    let packing = cure.trim_start_matches("packing of ").split(',').next().unwrap();
    t.detail.packing = len(packing);
    assert!(t.compute().map_or_else(|e| !e.path().ends_with("hold_back"), |_| true));
}

#[test]
fn lower_panels_stop_short_of_the_upper_deck() {
    let mut t = transition("3:12", "8:12");
    t.detail.end.hold_back = len("1/8\"");
    let e = t.compute().unwrap_err();
    assert_eq!(e.path(), "detail.end.hold_back");
    assert!(e.message().contains("by 3.175 mm"), "{e}");
}

#[test]
fn every_fault_is_told_at_once() {
    let mut t = transition("3:12", "8:12");
    t.detail.cleat.gap = len("2\"");
    t.detail.cleat.screws_below_tape_edge = len("2\"");
    t.detail.cleat.rise = len("1/64\"");
    t.detail.cleat.tape = Length::ZERO;
    t.detail.top_edge.screws_below = len("3\"");
    t.detail.end.turn_up = len("2\"");
    let e = t.compute().unwrap_err();
    assert_eq!(
        paths(&e),
        [
            "detail.end.turn_up",
            "detail.cleat.screws_below_tape_edge",
            "detail.cleat.fold",
            "detail.cleat.rise",
            "detail.cleat.gap",
            "detail.top_edge.screws_below",
        ]
    );
    let mut t = transition("3:12", "8:12");
    (t.detail.packing, t.detail.top_edge.screws.spacing, t.upper.levels.pan) = (len("-1\""), Length::ZERO, len("-1 mm"));
    assert_eq!(paths(&t.compute().unwrap_err()), ["upper.levels.pan", "detail.top_edge.screws.spacing", "detail.packing"]);
    assert_eq!(t.section().unwrap_err(), t.compute().unwrap_err());
    let mut t = transition("3:12", "8:12");
    (t.detail.cleat.screws.spacing, t.detail.cleat.sheet.thickness) = (Length::ZERO, Length::ZERO);
    assert_eq!(paths(&t.compute().unwrap_err()), ["detail.cleat.sheet.thickness", "detail.cleat.screws.spacing"]);
}

#[test]
fn the_fold_is_checked_against_the_cleat() {
    let mut t = transition("3:12", "8:12");
    t.detail.cleat.fold = len("1 1/2\"");
    let e = t.compute().unwrap_err();
    assert!(e.path() == "detail.cleat.fold" && e.message().contains("strikes the cleat's web in the cold by 6.35 mm"), "{e}");
    // A gap when laid is no help: cold draws the nose up against the front, g(T) = g0 + alpha L (T - T0).
    t.detail.cleat.gap = len("1/2\"");
    let e = t.compute().unwrap_err();
    assert!(e.message().contains("in the cold by 6.35 mm"), "{e}");
    t.detail.cleat.gap = Length::ZERO;
    t.detail.cleat.fold = len("1/4\"");
    let e = t.compute().unwrap_err();
    assert!(e.message().contains("engages too little by 3.175 mm"), "{e}");
}

#[test]
fn a_hem_along_the_top_edge_stops_water_and_stays_clear_of_the_screws() {
    let mut t = transition("3:12", "8:12");
    t.detail.top_edge.hem = practice::EDGE_HEM;
    assert!(!t.compute().unwrap().trims[0].profile.end_edge.is_raw());
    t.detail.top_edge.hem = len("1 1/4\"");
    assert_eq!(t.compute().unwrap_err().path(), "detail.top_edge.screws_below");
}

#[test]
fn what_hangs_free_and_what_is_lifted_is_said() {
    let codes = |t: &PitchTransition| t.compute().unwrap().cautions.iter().map(|c| (c.code().name, c.subject().to_owned())).collect::<Vec<_>>();
    let drip = ("drip-crosses-seams", "detail.end.drip".to_owned());
    let mut t = transition("3:12", "8:12");
    assert_eq!(codes(&t), vec![drip.clone()]);
    t.detail.unsupported_limit = len("2\"");
    assert_eq!(codes(&t), [("unsupported-flange", "detail.end.flange".to_owned()), drip.clone()]);
    t.detail.unsupported_limit = len("24\"");
    t.detail.packing = len("1\"");
    assert_eq!(codes(&t), [drip.clone(), ("cleat-off-level", "detail.cleat.rise".to_owned())]);
    // Clips that stand the upper panels off more than the cleat rises.
    t.detail.packing = Length::ZERO;
    t.upper.levels.stand_off = len("1\"");
    let solved = t.compute().unwrap();
    let low = solved.cautions.last().unwrap();
    // 1 in less 1/16 in of tape, 1/4 in of rise and twice 24 mil.
    assert!(low.message().contains("16.2433 mm below"), "{}", low.message());
    let mut steep = transition("12:12", "4:12");
    steep.detail.unsupported_limit = len("3\"");
    assert_eq!(codes(&steep), [("unsupported-flange", "detail.upper_flange".to_owned()), drip]);
}

#[cfg(feature = "serde")]
#[test]
fn a_transition_is_the_same_after_json() {
    let t = transition("3:12", "8:12");
    let text = serde_json::to_string(&t).unwrap();
    assert_eq!(serde_json::from_str::<PitchTransition>(&text).unwrap(), t);
    let left_out = [
        "/front_below_top",
        "/cleat/width",
        "/cleat/screws_below_tape_edge",
        "/cleat/fold",
        "/cleat/least_engagement",
        "/end/closure/set_back",
        "/end/turn_up",
    ];
    let detail = PitchTransitionDetail { seam_bead: None, ..t.detail };
    assert_eq!(read_without(&detail, &left_out), detail);
    assert!(serde_json::from_str::<PitchTransition>(&text.replacen("\"packing\"", "\"packer\"", 1)).is_err());
}

proptest! {
    #[test]
    fn every_corner_of_the_trim_lies_in_its_plane(a in 2.0_f64..60.0, b in 2.0_f64..60.0, p in 0_i32..60) {
        prop_assume!((a - b).abs() > 2.0);
        let t = fitted(a, b, Length::micrometres(p * 1000));
        let (section, solved) = (t.section().unwrap(), t.compute().unwrap());
        let corners = &solved.trims[0].corners;
        prop_assert_eq!(corners.len(), 4);
        // To 1 nm: the direct bend in both planes.
        prop_assert!(near(off(corners[2], a), section.h.mm()) && near(off(corners[2], b), f64::from(p)));
        prop_assert!(near(off(corners[1], a), section.h.mm()) && near(off(corners[0], a), section.h.mm() - 19.05));
        prop_assert!(near(off(corners[3], b), f64::from(p)));
        prop_assert!(near(place(corners[1], a), line(&solved, "trim lower edge").from_line.mm()));
        prop_assert!(near(place(corners[3], b), line(&solved, "trim top edge").from_line.mm()));
    }

    #[test]
    fn every_line_is_where_its_datum_says(a in 2.0_f64..60.0, b in 2.0_f64..60.0, p in 0_i32..60) {
        prop_assume!((a - b).abs() > 2.0);
        let solved = fitted(a, b, Length::micrometres(p * 1000)).compute().unwrap();
        let (edge, top) = (line(&solved, "trim lower edge").from_line, line(&solved, "trim top edge").from_line);
        for l in &solved.lines {
            let from_line = match &l.datum {
                Datum::JunctionLine => l.from_datum.into(),
                Datum::TrimLowerEdge => edge + l.from_datum,
                Datum::TrimTopEdge => top - l.from_datum,
                Datum::Line(name) => line(&solved, name).from_line + l.from_datum,
            };
            prop_assert_eq!(from_line.length().unwrap(), l.from_line, "{}", l.name);
        }
        for (what, struck) in [("closure screws", "closure screws"), ("offset cleat, front", "offset cleat, front"),
            ("cleat screws", "cleat screws"), ("screws along the top edge", "screws along the top edge"), ("bead behind the seams", "panel end")] {
            prop_assert_eq!(along(&solved, what), line(&solved, struck).from_line);
        }
        // What an upper panel has beyond the line: gap and fold past the cleat's front.
        let end = solved.end(Side::Second).unwrap();
        let front = line(&solved, "offset cleat, front").from_line;
        prop_assert_eq!(end.allowance().unwrap(), (end.gap + end.fold - front).length().unwrap());
    }

    #[test]
    fn explaining_computes_the_same(a in 0_i32..200, b in 0_i32..200) {
        let pitch = |n: i32| Pitch::in_twelve(Length::inches_64(n * 4)).unwrap();
        let mut t = transition("3:12", "8:12");
        (t.lower.pitch, t.upper.pitch) = (pitch(a), pitch(b));
        match (t.compute(), t.explain()) {
            (Ok(out), Ok((same, sheet))) => {
                prop_assert_eq!(out, same);
                prop_assert!(sheet.steps().len() > 14);
            }
            (Err(a), Err(b)) => prop_assert_eq!(a, b),
            (a, b) => prop_assert!(false, "{:?} {:?}", a, b),
        }
    }
}

#[test]
fn a_slope_in_degrees_is_read_as_given() {
    let t = slopes(10.0, 30.0);
    assert_eq!(t.section().unwrap().difference, degrees(20.0));
}

#[test]
fn packing_goes_on_under_all_of_the_panels_or_stops_with_the_flange() {
    let packing = len("3/4\"");
    let of = |reach, built_up| {
        let mut t = fitted(14.0, 34.0, packing);
        (t.detail.packing_reach, t.upper.levels.built_up) = (reach, built_up);
        t.compute()
    };
    let off = |s: &Solved| s.cautions.iter().find(|c| c.code() == CLEAT_OFF_LEVEL).map(|c| c.arguments()[0].1.clone());
    let under_panels = of(PackingReach::UnderPanels, Length::ZERO).unwrap();
    // A deck that is said to be built up by it is the same.
    assert_eq!(of(PackingReach::UnderPanels, packing).unwrap(), under_panels);
    let under_flange = of(PackingReach::UnderFlange, Length::ZERO).unwrap();
    let top = under_flange.lines.iter().find(|l| l.name == "trim top edge").unwrap().from_line;
    let bend = top - fitted(14.0, 34.0, packing).detail.upper_flange;
    let from = bend.length().unwrap().max(Length::ZERO);
    assert_eq!(under_panels.adjoining, [Adjoining::BuiltUp { height: packing, from }]);
    assert_eq!(under_flange.adjoining, [Adjoining::Packing { height: packing, reach: (from, top) }]);
    // The trim is one and the same; where the packing tapers off the panels come down from it by its thickness more.
    assert_eq!((&under_panels.trims, &under_panels.lines), (&under_flange.trims, &under_flange.lines));
    let lift = |s| Length::parse(&off(s).unwrap()).unwrap();
    assert_eq!((lift(&under_flange) - lift(&under_panels)).length().unwrap(), packing);
    let e = of(PackingReach::UnderPanels, len("1\"")).unwrap_err();
    assert_eq!((e.kind(), e.path(), e.allowed()), (ErrorKind::Conflict, "detail.packing", Some("25.4 mm")));
    // Without packing on a deck that something else builds up, the flange would lie in it.
    let mut bare = fitted(14.0, 34.0, Length::ZERO);
    bare.upper.levels.built_up = packing;
    assert_eq!(bare.compute().unwrap_err().path(), "detail.packing");
}
