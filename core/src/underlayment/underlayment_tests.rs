//! Courses, membranes and rolls by hand, and laws of both.

use super::{Across, CourseLayout, CourseRule, EaveMembrane, EaveReach, LaidCourses, Roll, ValleyMembrane};
use crate::error::{Error, ErrorKind};
use crate::pitch::Pitch;
use crate::record::{Calculation, Source};
use crate::roof::{Outline, Point};
use crate::units::{AreaUnit, Length, Temperature};
use proptest::prelude::*;

fn p(x: i16, y: i16) -> Point {
    Point::new(Length::inches(x), Length::inches(y))
}

fn roll(feet: i16) -> Roll {
    Roll { width: Length::inches(36), length: Length::feet(feet), rated: None }
}

fn rectangle(x: i16, y: i16) -> Outline {
    Outline::new(vec![p(0, 0), p(x, 0), p(x, y), p(0, y)], vec![]).unwrap()
}

fn lay(outline: Outline, roll: Roll, rule: CourseRule) -> LaidCourses {
    let asked = CourseLayout { outline, roll, rule, from: Length::ZERO, to: None, across: None, left: Length::ZERO };
    let (out, sheet) = asked.explain().unwrap();
    assert_eq!(asked.compute().unwrap(), out);
    assert!(sheet.steps().len() > 2);
    out
}

fn spans(laid: &LaidCourses, course: usize) -> Vec<(f64, f64)> {
    laid.courses[course].pieces.iter().map(|p| (p.from.mm() / 25.4, p.to.mm() / 25.4)).collect()
}

fn paths(e: &Error) -> Vec<&str> {
    std::iter::once(e.path()).chain(e.others().iter().map(Error::path)).collect()
}

#[test]
fn marks_and_rolls_of_a_rectangle_by_hand() {
    // 480 in wide and 100 up: 0-36, 34-70, 68-100. One roll of 100 ft holds 1200 in: two courses and 240 in of the third, then 4 in back on another.
    let laid = lay(rectangle(480, 100), roll(100), CourseRule::IRC_ONE_LAYER);
    assert_eq!(
        laid.courses.iter().map(|c| (c.foot, c.top)).collect::<Vec<_>>(),
        [(0, 36), (34, 70), (68, 100)].map(|(a, b)| (Length::inches(a), Length::inches(b)))
    );
    assert_eq!(laid.courses.iter().map(|c| c.exposure).collect::<Vec<_>>(), [34, 34, 32].map(Length::inches));
    assert_eq!(spans(&laid, 2), [(0.0, 240.0), (236.0, 480.0)]);
    assert_eq!((laid.rolls, laid.length, laid.left), (2, Length::inches(3 * 480 + 4), Length::inches(2400 - 1444)));
    // 48 000 in2 of the 51 984 that are unrolled.
    assert!((laid.waste_ratio - (1.0 - 48_000.0 / (1444.0 * 36.0))).abs() < 1e-12);
    assert!((laid.covered.get(AreaUnit::SquareInch) - 48_000.0).abs() < 1e-6 && laid.cautions.is_empty());
}

#[test]
fn two_layers_begin_with_a_strip() {
    let laid = lay(rectangle(240, 100), roll(100), CourseRule::IRC_TWO_LAYERS);
    let tops: Vec<Length> = laid.courses.iter().map(|c| c.top).collect();
    assert_eq!(tops, [19, 36, 53, 70, 87, 100].map(Length::inches));
    assert_eq!((laid.courses[0].width, laid.courses[1].foot, laid.courses[2].foot), (Length::inches(19), Length::ZERO, Length::inches(17)));
    // Everywhere two deep: every point but those of a lap's own edge lies in two strips, from the foot to the last course's lower edge.
    for at in (1..85).step_by(2) {
        let deep = laid.courses.iter().filter(|c| c.foot <= Length::inches(at) && Length::inches(at) < c.top).count();
        assert!(deep >= 2, "{at}: {deep}");
    }
}

#[test]
fn courses_follow_the_outline_and_leave_holes_out() {
    // A triangle of 144 in on the ground and 72 up: the second band, 34 to 70, reaches across where it is widest, 34 in in from each side.
    let triangle = Outline::new(vec![p(0, 0), p(144, 0), p(72, 72)], vec![]).unwrap();
    let laid = lay(triangle, roll(100), CourseRule::IRC_ONE_LAYER);
    assert_eq!(spans(&laid, 0), [(0.0, 144.0)]);
    assert_eq!(spans(&laid, 1).len(), 1);
    assert!((spans(&laid, 1)[0].0 - 34.0).abs() < 1e-9 && (spans(&laid, 1)[0].1 - 110.0).abs() < 1e-9);
    assert!((laid.covered.get(AreaUnit::SquareInch) - 5184.0).abs() < 1e-6);
    // A hole that takes all of the band 34 to 70 and one that takes half of the first.
    let ring = |x: i16, y: i16, w: i16, h: i16| vec![p(x, y), p(x + w, y), p(x + w, y + h), p(x, y + h)];
    let pierced = Outline::new(vec![p(0, 0), p(300, 0), p(300, 120), p(0, 120)], vec![ring(100, 30, 50, 50), ring(200, 4, 20, 10)]).unwrap();
    let laid = lay(pierced, roll(100), CourseRule::IRC_ONE_LAYER);
    assert_eq!(spans(&laid, 0), [(0.0, 300.0)]);
    assert_eq!(spans(&laid, 1), [(0.0, 100.0), (150.0, 300.0)]);
    assert!((laid.covered.get(AreaUnit::SquareInch) - (36_000.0 - 2500.0 - 200.0)).abs() < 1e-6);
}

#[test]
fn end_laps_keep_apart_or_it_is_said() {
    // Rolls of 50 ft on 40 ft: the second course would end a piece at 124 in (600 - 480 + 4), far from nothing; later ones are cut 72 in clear.
    let laid = lay(rectangle(480, 400), roll(50), CourseRule::IRC_ONE_LAYER);
    let mut below: Vec<f64> = Vec::new();
    for k in 0..laid.courses.len() {
        let spans = spans(&laid, k);
        let joints: Vec<f64> = spans.iter().take(spans.len() - 1).map(|s| s.1).collect();
        for j in &joints {
            assert!(below.iter().all(|b| (j - b).abs() >= 72.0), "{k}: {joints:?} over {below:?}");
        }
        below = joints;
    }
    assert!(laid.cautions.is_empty());
    // Rolls too short for any stagger: said, with the first place.
    let short = Roll { length: Length::inches(100), ..roll(1) };
    let rule = CourseRule { stagger: Length::inches(90), ..CourseRule::IRC_ONE_LAYER };
    let laid = lay(rectangle(480, 100), short, rule);
    assert_eq!(laid.cautions.iter().map(|c| c.code().number).collect::<Vec<_>>(), [5200]);
}

#[test]
fn from_a_membrane_up() {
    // Above a membrane that covers 68 in, 4 in back.
    let asked = CourseLayout {
        outline: rectangle(240, 200),
        roll: roll(100),
        rule: CourseRule::UFGS_FELT,
        from: Length::inches(64),
        to: None,
        across: None,
        left: Length::ZERO,
    };
    let laid = asked.compute().unwrap();
    assert_eq!((laid.courses[0].foot, laid.courses[0].top, laid.courses[1].foot), (Length::inches(64), Length::inches(100), Length::inches(97)));
    assert!((laid.covered.get(AreaUnit::SquareInch) - 240.0 * 136.0).abs() < 1e-6);
    // And the membrane itself, to where it ends.
    let band = CourseLayout { to: Some(Length::inches(68)), from: Length::ZERO, ..asked };
    assert_eq!(band.compute().unwrap().courses.last().unwrap().top, Length::inches(68));
}

#[test]
fn a_stretch_across_and_a_roll_in_hand() {
    // The triangle's foot between 24 and 84 in from its left, 24 in up: 36 in of the slope on the left is cut by nothing but the edge itself.
    let triangle = Outline::new(vec![p(0, 0), p(144, 0), p(72, 72)], vec![]).unwrap();
    let across = Some(Across { from: Length::inches(12), to: Length::inches(84) });
    let asked = CourseLayout {
        outline: triangle,
        roll: roll(100),
        rule: CourseRule::UFGS_FELT,
        from: Length::ZERO,
        to: Some(Length::inches(24)),
        across,
        left: Length::feet(10),
    };
    let laid = asked.compute().unwrap();
    assert!((spans(&laid, 0)[0].0 - 12.0).abs() < 1e-9 && (spans(&laid, 0)[0].1 - 84.0).abs() < 1e-9);
    // A rectangle of 72 by 24 less the corner beyond the edge: from 12 to 24 in across it is 12 high and wide.
    assert!((laid.covered.get(AreaUnit::SquareInch) - (72.0 * 24.0 - 72.0)).abs() < 1e-6);
    // 10 ft in hand hold the 6 ft.
    assert_eq!((laid.rolls, laid.left), (0, Length::feet(4)));
    let e = CourseLayout { left: Length::feet(101), across: Some(Across { from: Length::ZERO, to: Length::ZERO }), ..asked }.compute().unwrap_err();
    assert_eq!(paths(&e), ["left", "across.to"]);
}

#[test]
fn what_cannot_be_laid_is_refused_by_its_path() {
    let asked = |rule, roll, from| CourseLayout { outline: rectangle(100, 100), roll, rule, from, to: None, across: None, left: Length::ZERO };
    let rule = CourseRule { head_lap: Length::inches(36), end_lap: Length::inches(-1), starter: Some(Length::inches(40)), ..CourseRule::IRC_ONE_LAYER };
    let e = asked(rule, roll(10), Length::inches(200)).compute().unwrap_err();
    assert_eq!(paths(&e), ["rule.end_lap", "rule.head_lap", "rule.starter", "from", "to"]);
    let e = asked(CourseRule::UFGS_FELT, Roll { width: Length::ZERO, ..roll(0) }, Length::inches(-1)).compute().unwrap_err();
    assert_eq!(paths(&e), ["roll.width", "roll.length", "from"]);
    let membrane = EaveMembrane {
        pitch: Pitch::parse("4:12").unwrap(),
        overhang: Length::inches(-1),
        reach: EaveReach::irc(),
        width: Length::inches(36),
        head_lap: Length::inches(36),
    };
    assert_eq!(membrane.compute().unwrap_err().path(), "overhang");
    let e = EaveMembrane { overhang: Length::ZERO, ..membrane }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "head_lap"));
    let valley = ValleyMembrane { line: Length::ZERO, pan: Length::inches(24), roll: roll(66), end_lap: Length::inches(-1) };
    assert_eq!(paths(&valley.compute().unwrap_err()), ["line", "end_lap"]);
    let e = ValleyMembrane { line: Length::feet(1), end_lap: Length::feet(66), ..valley }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "end_lap"));
}

#[test]
fn the_eave_membrane_by_hand() {
    // IRC R905.1.2: 24 in inside the wall line; from 8:12 on also 36 in along the slope.
    let at = |pitch: &str, overhang: i16| {
        let asked = EaveMembrane {
            pitch: Pitch::parse(pitch).unwrap(),
            overhang: Length::inches(overhang),
            reach: EaveReach::irc(),
            width: Length::inches(36),
            head_lap: Length::inches(6),
        };
        asked.compute().unwrap()
    };
    // 3:4:5 at 9:12: (16 + 24) / 0.8 = 50 in. One course covers 36, two 66.
    let band = at("9:12", 16);
    assert!((band.least.mm() / 25.4 - 50.0).abs() < 1e-9 && !band.steep);
    assert_eq!((band.courses, band.marks), (2, vec![Length::inches(36), Length::inches(66)]));
    // No overhang at 9:12: 24 / 0.8 = 30 in, and 36 along the slope govern. At 4:12 they do not: 24 sqrt(1 + 1/9) = 25.298.
    let band = at("9:12", 0);
    assert_eq!((band.least, band.steep, band.courses), (Length::inches(36), true, 1));
    let band = at("4:12", 0);
    assert!((band.least.mm() / 25.4 - 25.298_221_281).abs() < 1e-8 && !band.steep);
}

#[test]
fn the_valley_membrane_by_hand() {
    // 100 ft in rolls of 66 ft that lap 6 in: two pieces and one lap. A pan of 30 in leaves 3 in of 36 on each side, less than 4.
    let strip = ValleyMembrane { line: Length::feet(100), pan: Length::inches(30), roll: roll(66), end_lap: Length::inches(6) }.compute().unwrap();
    assert_eq!((strip.pieces, strip.length, strip.beyond), (2, Length::inches(1206), Length::inches(3)));
    assert_eq!(strip.cautions.iter().map(|c| c.code().number).collect::<Vec<_>>(), [5202]);
    assert_eq!(ValleyMembrane::IBC_WIDTH.0, Length::inches(36));
}

#[test]
fn hot_metal_asks_for_its_kind() {
    let celsius = |t: &str| Temperature::parse(t).unwrap();
    let rated = |t: &str| Roll { rated: Some(celsius(t)), ..roll(66) };
    assert!(rated("80 degC").hot_caution("underlayment", Some(celsius("80 degC"))).is_none());
    let low = rated("80 degC").hot_caution("underlayment", Some(celsius("82 degC"))).unwrap();
    assert!(low.message().contains("reaches 82 degC") && low.message().contains("rated to 80 degC"), "{}", low.message());
    // Without temperatures of the job common practice stands.
    assert!(rated("110 degC").hot_caution("underlayment", None).is_some() && rated("121 degC").hot_caution("underlayment", None).is_none());
    assert_eq!(*low.source(), Source::CommonPractice);
}

proptest! {
    /// Every point of the plane lies in a piece of some course; nothing that is laid and covered is less than the plane.
    #[test]
    fn every_point_is_covered(w in 40_i16..700, h in 10_i16..400, cut in 0_i16..300, feet in 12_i16..80, x in 0.0_f64..1.0, y in 0.0_f64..1.0) {
        let cut = cut.min(w - 20);
        let outline = Outline::new(vec![p(0, 0), p(w, 0), p(w - cut, h), p(0, h)], vec![]).unwrap();
        let laid = lay(outline.clone(), roll(feet), CourseRule::IRC_ONE_LAYER);
        let at = Point::new(Length::from_mm(x * f64::from(w) * 25.4).unwrap(), Length::from_mm(y * f64::from(h) * 25.4).unwrap());
        if outline.contains(at) {
            let in_piece = laid.courses.iter().any(|c| c.foot <= at.y && at.y <= c.top && c.pieces.iter().any(|q| q.from <= at.x && at.x <= q.to));
            prop_assert!(in_piece, "{at:?}");
        }
        prop_assert!(laid.laid >= laid.covered);
        prop_assert!((-1e-9..1.0).contains(&laid.waste_ratio), "{}", laid.waste_ratio);
        let all = Length::total(laid.courses.iter().flat_map(|c| &c.pieces).map(|q| &q.length)).unwrap();
        prop_assert_eq!(all, laid.length);
        prop_assert!(i64::from(laid.rolls) * Length::feet(feet).pm() >= (laid.length + laid.left).length().unwrap().pm());
        // No piece is longer than a roll, and pieces of one course lap by the rule.
        for c in &laid.courses {
            prop_assert!(c.pieces.iter().all(|q| q.length <= Length::feet(feet)));
            for w in c.pieces.windows(2) {
                prop_assert_eq!((w[0].to - w[1].from).length().unwrap(), Length::inches(4));
            }
        }
    }
}
