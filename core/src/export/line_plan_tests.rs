use super::junction_drawing::KeyEntry;
use super::line_plan::{LEFT, RIGHT};
use super::{LinePlan, PlanSide};
use crate::assembly::{SideMeeting, StrikeChoice, StrikeLines, StruckLine};
use crate::junction::{Datum, LayoutLine, Side};
use crate::record::Calculation;
use crate::roof::LineKind;
use crate::units::{Angle, Length, LengthFormat, Rounding, ShopRounding};
use proptest::prelude::*;

/// Lines at these sixteenths from the junction line.
fn struck(at: &[(Side, i32)], meeting: f64) -> Vec<StruckLine> {
    let lines: Vec<LayoutLine> = at
        .iter()
        .enumerate()
        .map(|(i, (side, n))| {
            let at = Length::inches_64(n * 4);
            LayoutLine { name: format!("line {i}").into(), side: *side, datum: Datum::JunctionLine, from_datum: at, from_line: at }
        })
        .collect();
    let choice = StrikeChoice { tape: ShopRounding::new(Length::inches_64(4), Rounding::HalfAway).unwrap(), tolerance: Length::inches_64(4) };
    let meeting = Angle::degrees_from(meeting).unwrap();
    let sides = [Side::First, Side::Second].map(|side| SideMeeting { side, meeting });
    StrikeLines { lines: &lines, sides: &sides, choice }.compute().unwrap()
}

fn svg(kind: LineKind, lines: &[StruckLine], skews: &[f64]) -> String {
    let marks: Vec<KeyEntry> = (0..lines.len()).map(|i| KeyEntry { mark: format!("M{i}"), text: String::new() }).collect();
    let sides = skews.iter().zip([Side::First, Side::Second]);
    let sides = sides.map(|(s, side)| PlanSide { side, name: "south", skew: Angle::degrees_from(*s).unwrap(), panels_from: Length::inches(-2) }).collect();
    LinePlan::new("p", kind, lines, &marks, sides, LengthFormat::parse("in/16").unwrap()).unwrap().svg().unwrap()
}

/// A number of an attribute.
fn attribute(element: &str, name: &str) -> f64 {
    let (_, rest) = element.split_once(&format!(" {name}=\"")).unwrap();
    rest.split_once('"').unwrap().0.parse().unwrap()
}

/// The elements of a group, by its title.
fn group<'a>(svg: &'a str, name: &str) -> Vec<&'a str> {
    let (_, rest) = svg.split_once(&format!("<title>{name}</title>\n")).unwrap();
    rest.split_once("</g>").unwrap().0.lines().map(str::trim).filter(|l| !l.is_empty()).collect()
}

#[test]
fn lines_lie_at_their_distances_in_one_scale() {
    // A transition: 8 in down on the lower side, 4 in up on the upper: 12 in are 40 mm of paper.
    let lines = struck(&[(Side::First, -128), (Side::Second, 64)], 90.0);
    let drawn = svg(LineKind::SteepToShallow, &lines, &[]);
    let height = |i: usize| attribute(group(&drawn, "lines").iter().filter(|l| l.starts_with("<line")).nth(i).unwrap(), "y1");
    assert!((height(2) - height(0) - 40.0).abs() < 2e-3 && (height(1) - height(0) - 40.0 / 3.0).abs() < 2e-3, "{drawn}");
}

#[test]
fn a_step_is_drawn_as_its_two_decks_and_its_riser_each_by_its_name() {
    // Lines of all three at one height: in one plan they would lie on each other.
    let lines = struck(&[(Side::Second, 32), (Side::Second, -16), (Side::Riser, -32), (Side::First, -48), (Side::First, -96)], 90.0);
    let drawn = svg(LineKind::Step, &lines, &[0.0, 0.0]);
    let text = |i: usize| drawn.match_indices("<title>surface</title>").nth(i).map(|(at, _)| drawn[at..].split("</text>").next().unwrap().to_owned());
    assert!(text(0).unwrap().ends_with("Upper deck, south:") && text(1).unwrap().ends_with("Riser:") && text(2).unwrap().ends_with("Lower deck, south:"));
    let mut last = 0.0;
    for (i, names) in [&["M0", "M1"][..], &["M2"], &["M3", "M4"]].iter().enumerate() {
        // Each label once, under its own surface's name and over the next one's.
        let from = drawn.match_indices("<title>distances</title>").nth(i).unwrap().0;
        let words = drawn[from..].split("</g>").next().unwrap();
        let places: Vec<f64> = words.lines().filter(|l| l.trim_start().starts_with("<text")).map(|l| attribute(l, "y")).collect();
        assert!(names.iter().all(|n| words.contains(n)) && places.len() == names.len() + 1, "{words}");
        assert!(places.iter().all(|y| *y > last), "{places:?} {last}");
        last = places.iter().copied().fold(last, f64::max);
    }
    assert!(drawn.contains("0 foot of the riser") && drawn.contains("0 edge of the upper deck") && drawn.contains("0 edge of the deck"));
}

#[test]
fn the_second_side_is_turned_about_where_both_fall_from_the_line() {
    let lines = struck(&[(Side::First, -96), (Side::Second, -96)], 90.0);
    let at = |kind| {
        let drawn = svg(kind, &lines, &[]);
        let heights = group(&drawn, "lines").iter().filter(|l| l.starts_with("<line")).map(|l| attribute(l, "y1")).collect::<Vec<_>>();
        heights.last().unwrap() - heights.first().unwrap()
    };
    // 6 in each way over a ridge; at an eave the fascia's line and the roof's lie on one side.
    assert!((at(LineKind::Ridge) - 40.0).abs() < 2e-3 && (at(LineKind::Eave) - 40.0).abs() < 2e-3);
    let ridge = svg(LineKind::Ridge, &lines, &[]);
    let zero = attribute(group(&ridge, "junction line")[0], "y1");
    let outer: Vec<f64> = group(&ridge, "lines").iter().filter(|l| l.starts_with("<line")).map(|l| attribute(l, "y1") - zero).collect();
    assert!((outer[0] + 20.0).abs() < 2e-3 && (outer[2] - 20.0).abs() < 2e-3, "{outer:?}");
}

#[test]
fn seams_stand_at_their_angle_and_lean_as_the_skew_says() {
    let lines = struck(&[(Side::First, -96)], 60.0);
    for skew in [30.0, -30.0] {
        let drawn = svg(LineKind::Hip, &lines, &[skew]);
        let seams = group(&drawn, "seams");
        assert!(seams.len() > 2, "{drawn}");
        for seam in seams {
            let (dx, up) = (attribute(seam, "x2") - attribute(seam, "x1"), attribute(seam, "y1") - attribute(seam, "y2"));
            // Above 0 to the right going up.
            assert!((dx / up - Angle::degrees_from(skew).unwrap().tan()).abs() < 0.02, "{seam}");
        }
        assert!(drawn.contains("south: seams at 60.0\u{b0}, 6 15/16&quot; in 12&quot; off square"), "{drawn}"); // 12 tan 30 = 6.93
    }
    assert!(drawn_text(&svg(LineKind::Hip, &lines, &[30.0])).contains(&"M0 6\", seam 6 15/16\"".to_owned())); // 6 / sin 60 = 6.93
    let square = svg(LineKind::Hip, &struck(&[(Side::First, -96)], 90.0), &[0.0]);
    assert!(!square.contains("off square") && !square.contains("seam 6"));
    // Along the seams there is nothing to cross.
    assert!(group(&svg(LineKind::Rake, &struck(&[(Side::First, 32)], 0.0), &[90.0]), "seams").is_empty());
}

fn drawn_text(svg: &str) -> Vec<String> {
    group(svg, "distances").iter().map(|l| l.split_once('>').unwrap().1.trim_end_matches("</text>").replace("&quot;", "\"")).collect()
}

#[test]
fn marks_that_are_not_one_a_line_are_refused() {
    let lines = struck(&[(Side::First, -96)], 90.0);
    let e = LinePlan::new("p", LineKind::Ridge, &lines, &[], vec![], LengthFormat::parse("mm").unwrap()).unwrap_err();
    assert_eq!((e.kind(), e.path()), (crate::error::ErrorKind::Conflict, "marks"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]
    #[test]
    fn labels_never_overlap_and_stay_on_the_paper(at in prop::collection::vec((any::<bool>(), -400_i32..400), 1..20), skew in -89.0..89.0) {
        let at: Vec<(Side, i32)> = at.into_iter().map(|(first, n)| (if first { Side::First } else { Side::Second }, n)).collect();
        let drawn = svg(LineKind::Hip, &struck(&at, 90.0 - f64::abs(skew)), &[skew, -skew]);
        let (_, size) = drawn.split_once("viewBox=\"0 0 ").unwrap();
        let size: Vec<f64> = size.split_once('"').unwrap().0.split(' ').map(|n| n.parse().unwrap()).collect();
        let mut last = f64::MIN;
        for text in group(&drawn, "distances") {
            let (x, y, wide, tall) = (attribute(text, "x"), attribute(text, "y"), attribute(text, "textLength"), attribute(text, "font-size"));
            prop_assert!(x + wide <= size[0] && y <= size[1] && y - tall >= 0.0, "{text}");
            prop_assert!(y - last >= tall * 0.9, "{text}");
            last = y;
        }
        for seam in group(&drawn, "seams") {
            prop_assert!(attribute(seam, "x1").min(attribute(seam, "x2")) >= LEFT - 1e-3 && attribute(seam, "x1").max(attribute(seam, "x2")) <= RIGHT + 1e-3);
        }
    }
}
