//! Flat patterns: published cases, laws and bad input.

use super::*;
use crate::error::ErrorKind;
use crate::record::{Calculation, Entry};
use crate::units::{Angle, BendAngle, Length, LengthUnit};
use proptest::prelude::*;

fn mm(v: f64) -> Length {
    Length::from_f64(v, LengthUnit::Millimetre).unwrap()
}

fn flat_angle(degrees: f64) -> BendAngle {
    BendAngle::from_flat(Angle::degrees_from(degrees).unwrap()).unwrap()
}

fn axis(k: f64) -> BendRule {
    BendRule::neutral_axis(NeutralFactor::new(k).unwrap())
}

/// A box of three legs to the outer corner.
fn channel(t: Length, r: Length, a: Length, b: Length, c: Length) -> Profile {
    Profile::builder(t).painted(Face::Upper).inside_radius(r).leg("a", a).up(BendAngle::SQUARE).leg("b", b).up(BendAngle::SQUARE).leg("c", c).build().unwrap()
}

/// FAA-H-8083-31, chapter 4, channel of 1.00, 2.00, 1.00 in: flats 0.8, 1.6, 0.8, then 3.74 in developed. The print takes the setback at R = 0.16 and the
/// allowance, rounded to 0.27, at 0.156; with R = 0.16 throughout the formula gives 3.758.
#[test]
fn aviation_channel() {
    let p = channel(Length::mils(40), Length::mils(160), Length::inches(1), Length::inches(2), Length::inches(1));
    let flat = p.unfold(&BendRule::Aviation).unwrap();
    let flats: Vec<Length> = flat.legs().iter().map(|l| l.length()).collect();
    assert_eq!(flats, [Length::mils(800), Length::mils(1600), Length::mils(800)]);
    assert!((flat.girth().get(LengthUnit::Inch) - 3.758).abs() < 0.0005, "{}", flat.girth().get(LengthUnit::Inch));
    // The printed steps one by one: the allowance at the chart's radius, rounded as printed, on the printed flats.
    let chart = BendSize { thickness: Length::mils(40), inside_radius: Length::mils(156), angle: BendAngle::SQUARE };
    let ba = BendRule::Aviation.allowance(chart).unwrap().get(LengthUnit::Inch);
    assert!((ba - 0.27).abs() < 0.005 && (3.2 + 2.0 * 0.27 - 3.74_f64).abs() < 1e-12);
}

/// Sheet-metal layout workbook, 6th edition (2012): outside dimensions .740 + .420 + 1.050 + 1.000 in with three deductions of .079 make
/// 2.973 in; the .420 is an inside dimension of .370 in plus the thickness.
#[test]
fn workbook_bracket_by_table_and_by_formula() {
    let t = Length::mils(50);
    let r = Length::mils(32);
    let rule = BendRule::Deductions(
        DeductionTable::new(
            vec![Deduction { thickness: t, inside_radius: r, angle: BendAngle::SQUARE, deduction: Length::mils(79) }],
            crate::record::Source::user(),
        )
        .unwrap(),
    );
    let p = Profile::builder(t)
        .painted(Face::Upper)
        .inside_radius(r)
        .leg("a", Length::mils(740))
        .up(BendAngle::SQUARE)
        // Outside corner to outside corner is .420; to the inner corner it is .370.
        .leg_between("b", Length::mils(370), LegEnd::OuterCorner, LegEnd::InnerCorner)
        .up(BendAngle::SQUARE)
        .leg("c", Length::mils(1050))
        .down(BendAngle::SQUARE)
        .leg("d", Length::mils(1000))
        .build()
        .unwrap();
    assert_eq!(p.girth(&rule).unwrap(), Length::mils(2973));
    assert!((p.girth(&BendRule::Aviation).unwrap().get(LengthUnit::Inch) - 2.974).abs() < 0.0005);
}

/// Groover, Fundamentals of Modern Manufacturing (from memory): 38 + 6.08 + 25 = 69.08 mm between tangents.
#[test]
fn legs_to_the_tangents_add_to_the_allowance() {
    let p = Profile::builder(mm(3.2))
        .painted(Face::Upper)
        .inside_radius(mm(4.75))
        .measured_to(LegEnd::Tangent)
        .leg("a", mm(38.0))
        .up(flat_angle(60.0))
        .leg("b", mm(25.0))
        .build()
        .unwrap();
    assert!((p.girth(&axis(0.33)).unwrap().get(LengthUnit::Millimetre) - 69.08).abs() < 0.005);
}

/// Hem by geometry: A + W - 2(R + T) + pi (R + K T); with R = 0 and K = 0.5 the trade's "43 % of the thickness", 2 - pi/2.
#[test]
fn closed_and_open_hems_by_geometry() {
    let t = mm(0.6);
    let strip = |edge: Edge| Profile::builder(t).painted(Face::Upper).leg("body", mm(50.0)).end(edge).build().unwrap();
    let closed = strip(Edge::closed_hem(mm(12.0), Direction::Down));
    let lost = 62.0 - closed.girth(&axis(0.5)).unwrap().get(LengthUnit::Millimetre);
    assert!((lost - (2.0 - core::f64::consts::FRAC_PI_2) * 0.6).abs() < 1e-9, "{lost}");
    let open = strip(Edge::open_hem(mm(12.0), mm(4.0), Direction::Up));
    let expected = 62.0 - 2.0 * 2.6 + core::f64::consts::PI * (2.0 + 0.4 * 0.6);
    assert!((open.girth(&axis(0.4)).unwrap().get(LengthUnit::Millimetre) - expected).abs() < 1e-9);
    // Nominal sum: the allowance of a single hem is its width (NAVEDTRA 14251, figure 2-54).
    assert_eq!(closed.girth(&BendRule::SharpCorner).unwrap(), mm(62.0));
    assert_eq!(closed.unfold(&axis(0.5)).unwrap().bends()[0].part, Part::EndHem);
}

#[test]
fn din_takes_a_hem_only_under_a_rule_of_its_own() {
    let hem = Edge::closed_hem(mm(12.0), Direction::Down);
    let strip = |edge: Edge| Profile::builder(mm(0.6)).painted(Face::Upper).leg("body", mm(50.0)).start(edge).build().unwrap();
    let e = strip(hem.clone()).unfold(&BendRule::Din6935).unwrap_err();
    assert_eq!(e.path(), "start_edge");
    let flat = strip(hem.with_rule(axis(0.5))).unfold(&BendRule::Din6935).unwrap();
    assert_eq!(flat.rule_of(&flat.bends()[0]).name(), "neutral axis");
    assert_eq!(flat.rule(), &BendRule::Din6935);
}

#[test]
fn din_legs_to_the_outer_tangents_give_sum_less_v() {
    let angle = BendAngle::between_flanges(Angle::degrees_from(60.0).unwrap()).unwrap();
    let p = Profile::builder(mm(5.0))
        .painted(Face::Upper)
        .inside_radius(mm(6.0))
        .measured_to(LegEnd::OuterTangent)
        .leg("a", mm(17.0))
        .up(angle)
        .leg("b", mm(20.0))
        .build()
        .unwrap();
    let v = din_compensation(BendSize { thickness: mm(5.0), inside_radius: mm(6.0), angle }).unwrap();
    assert!(((p.girth(&BendRule::Din6935).unwrap() + v).pm() - 37_000_000_000).abs() <= 1);
    // Below 90 degrees from flat there is no such tangent, and it is said at the leg.
    let mut wrong = p;
    wrong.bends[0].angle = flat_angle(60.0);
    let e = wrong.validate().unwrap_err();
    assert_eq!((e.path(), e.others()[0].path()), ("legs[0].end", "legs[1].start"));
}

#[test]
fn one_leg_is_a_strip_and_no_leg_is_refused() {
    let strip = Profile::builder(mm(0.6)).painted(Face::Lower).leg("strip", mm(100.0)).build().unwrap();
    let flat = strip.unfold(&BendRule::Din6935).unwrap();
    assert_eq!((flat.girth(), flat.bends().len()), (mm(100.0), 0));
    let e = Profile::builder(mm(0.6)).painted(Face::Lower).build().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Missing, "legs"));
}

#[test]
fn every_fault_is_told_with_its_place() {
    let e = Profile::builder(Length::ZERO)
        .painted(Face::Upper)
        .inside_radius(mm(1.0))
        .leg("a", mm(10.0))
        .up(BendAngle::SQUARE)
        .leg("b", mm(10.0))
        .start(Edge::open_hem(mm(-1.0), Length::ZERO, Direction::Up))
        .build()
        .unwrap_err();
    let mut paths = vec![e.path().to_owned()];
    paths.extend(e.others().iter().map(|o| o.path().to_owned()));
    assert_eq!(paths, ["thickness", "start_edge.width", "start_edge.gap"]);

    let e = Profile::builder(mm(1.0))
        .painted(Face::Upper)
        .inside_radius(mm(5.0))
        .leg("a", mm(10.0))
        .up(BendAngle::SQUARE)
        .leg("b", mm(11.0))
        .up(BendAngle::FOLDED)
        .leg("c", Length::ZERO)
        .up(flat_angle(0.0))
        .leg("d", mm(10.0))
        .build()
        .unwrap_err();
    let mut paths = vec![e.path().to_owned()];
    paths.extend(e.others().iter().map(|o| o.path().to_owned()));
    assert_eq!(paths, ["bends[2].angle", "legs[1].end"]);
    assert!(e.others()[0].message().contains("no corner"));

    let short = Profile::builder(mm(1.0))
        .painted(Face::Upper)
        .inside_radius(mm(5.0))
        .leg("a", mm(10.0))
        .up(BendAngle::SQUARE)
        .leg("b", mm(11.999))
        .up(BendAngle::SQUARE)
        .leg("c", mm(5.0))
        .build()
        .unwrap_err();
    assert_eq!(short.path(), "legs[1].length");
    assert_eq!((short.value(), short.allowed()), (Some("11.999 mm"), Some("at least 12 mm")));
    assert_eq!(short.others()[0].path(), "legs[2].length");
}

#[test]
fn the_builder_asks_for_what_it_lacks() {
    let e =
        Profile::builder(mm(1.0)).leg("a", mm(10.0)).leg("b", mm(10.0)).up(BendAngle::SQUARE).up(BendAngle::SQUARE).up(BendAngle::SQUARE).build().unwrap_err();
    let mut paths = vec![e.path().to_owned()];
    paths.extend(e.others().iter().map(|o| o.path().to_owned()));
    assert_eq!(paths, ["legs[1]", "bends[0].inside_radius", "bends[1].inside_radius", "bends[2]", "bends[2].inside_radius", "painted"]);
}

#[test]
fn a_hem_longer_than_its_leg_is_refused() {
    let body = |edges: (Edge, Edge)| Profile::builder(mm(0.6)).painted(Face::Upper).leg("body", mm(20.0)).start(edges.0).end(edges.1).build();
    let hem = |w: f64| Edge::closed_hem(mm(w), Direction::Up);
    assert!(body((Edge::Raw, hem(20.0))).is_ok());
    assert_eq!(body((Edge::Raw, hem(20.7))).unwrap_err().path(), "end_edge.width");
    assert_eq!(body((hem(20.7), Edge::Raw)).unwrap_err().path(), "start_edge.width");
    let swallowed = body((hem(0.5), Edge::Raw)).unwrap_err();
    assert_eq!(swallowed.path(), "start_edge.width");
    assert_eq!(swallowed.allowed(), Some("at least 0.6 mm"));
    // The unfolding itself refuses it too, for a profile that was put together by hand.
    let mut p = body((Edge::Raw, hem(20.0))).unwrap();
    p.end_edge = hem(30.0);
    assert_eq!(p.girth(&axis(0.4)).unwrap_err().path(), "end_edge.width");
}

#[test]
fn profiles_put_together_by_hand_are_checked() {
    let good = channel(mm(0.6), mm(0.6), mm(20.0), mm(30.0), mm(20.0));
    for (spoil, path) in [
        ((|p: &mut Profile| p.bends.clear()) as fn(&mut Profile), "bends"),
        (|p| p.legs.clear(), "legs"),
        (|p| p.legs[1].start = LegEnd::SheetEdge, "legs[1].start"),
        (|p| p.legs[0].start = LegEnd::Tangent, "legs[0].start"),
        (|p| p.legs[2].end = LegEnd::OuterCorner, "legs[2].end"),
        (|p| p.thickness = mm(-0.6), "thickness"),
        (|p| p.bends[1].inside_radius = mm(-0.1), "bends[1].inside_radius"),
        (|p| p.legs[1].length = Length::MIN, "legs[1].length"),
    ] {
        let mut p = good.clone();
        spoil(&mut p);
        assert_eq!(p.validate().unwrap_err().path(), path);
        assert_eq!(p.unfold(&axis(0.4)).unwrap_err().path(), path);
        assert_eq!(p.girth(&axis(0.4)).unwrap_err().path(), path);
    }
    // Too large for a length.
    let mut p = good;
    p.legs[0].length = Length::MAX;
    p.legs[1].length = Length::MAX;
    assert_eq!(p.girth(&axis(0.4)).unwrap_err().kind(), ErrorKind::Overflow);
}

#[test]
fn ten_thousand_bends_give_a_right_answer() {
    let mut b = Profile::builder(mm(0.5)).painted(Face::Upper).inside_radius(mm(0.5)).measured_to(LegEnd::Tangent).leg("0", mm(1.0));
    for i in 0..10_000 {
        b = if i % 2 == 0 { b.up(BendAngle::SQUARE) } else { b.down(BendAngle::SQUARE) };
        b = b.leg("n", mm(1.0));
    }
    let p = b.build().unwrap();
    let expected = 10_001.0 + 10_000.0 * core::f64::consts::FRAC_PI_2 * 0.75;
    assert!((p.girth(&axis(0.5)).unwrap().get(LengthUnit::Millimetre) - expected).abs() < 1e-5);
    // Ten thousand faults are as many errors.
    let mut p = p;
    p.legs.iter_mut().for_each(|l| l.length = Length::ZERO);
    assert_eq!(p.validate().unwrap_err().others().len(), 10_000);
}

#[test]
fn cautions_say_what_the_numbers_do_not() {
    let numbers = |p: &Profile, rule: &BendRule| p.unfold(rule).unwrap().cautions().iter().map(|c| c.code().number).collect::<Vec<_>>();
    let soft = channel(mm(0.6), mm(0.6), mm(20.0), mm(30.0), mm(20.0));
    assert!(numbers(&soft, &axis(0.5)).is_empty());
    assert_eq!(numbers(&soft, &axis(0.55)), [cautions::NEUTRAL_FACTOR_ABOVE_HALF.number]);
    assert_eq!(numbers(&soft, &BendRule::SharpCorner), [cautions::NOMINAL_SUM.number]);
    let sharp = channel(mm(0.6), mm(0.5), mm(20.0), mm(30.0), mm(20.0));
    assert_eq!(numbers(&sharp, &axis(0.5)), [cautions::RADIUS_UNDER_THICKNESS.number; 2]);
    let mut slight = soft.clone();
    slight.bends[1].angle = flat_angle(10.0);
    let flat = slight.unfold(&BendRule::Din6935).unwrap();
    assert_eq!(flat.cautions()[0].code(), cautions::DIN_COMPENSATION_DROPPED);
    assert_eq!(flat.cautions()[0].subject(), "bends[1]");
    let row = |a: f64, d: f64| Deduction { thickness: mm(0.6), inside_radius: mm(0.6), angle: flat_angle(a), deduction: mm(d) };
    let table = BendRule::Deductions(DeductionTable::new(vec![row(0.5, 0.0), row(90.0, 1.0)], crate::record::Source::user()).unwrap());
    assert_eq!(numbers(&slight, &table), [cautions::DEDUCTION_INTERPOLATED.number]);
    let all: Vec<u16> = cautions::ALL.iter().map(|c| c.number).collect();
    assert!(all.windows(2).all(|w| w[0] < w[1]) && all.iter().all(|n| (3000..3100).contains(n)));
}

#[cfg(feature = "serde")]
#[test]
fn a_profile_in_job_form() {
    let json = r#"{
        "thickness": "0.024 in",
        "start_edge": {"open-hem": {"width": "1/2\"", "gap": "5/32\"", "direction": "down"}},
        "legs": [
            {"name": "face", "length": "3\"", "start": "outer-tangent", "end": "outer-corner"},
            {"name": "flange", "length": "4\"", "start": "outer-corner", "end": "sheet-edge"}
        ],
        "bends": [{"angle": "90 deg", "direction": "up", "inside_radius": "0.03 in"}],
        "painted": "upper"
    }"#;
    let p: Profile = serde_json::from_str(json).unwrap();
    p.validate().unwrap();
    assert_eq!(serde_json::from_str::<Profile>(&serde_json::to_string(&p).unwrap()).unwrap(), p);
    for wrong in [("\"painted\"", "\"paint\""), ("\"90 deg\"", "90"), ("\"gap\"", "\"gape\""), ("\"painted\": \"upper\"", "\"painted\": \"up\"")] {
        assert!(serde_json::from_str::<Profile>(&json.replace(wrong.0, wrong.1)).is_err(), "{wrong:?}");
    }
}

fn any_rule() -> impl Strategy<Value = BendRule> {
    prop_oneof![
        (0.0_f64..=1.0).prop_map(axis),
        Just(BendRule::Handbook(HandbookMetal::SoftSteel)),
        Just(BendRule::Handbook(HandbookMetal::ColdRolledSteel)),
        Just(BendRule::Aviation),
        Just(BendRule::SharpCorner),
    ]
}

fn any_edge() -> impl Strategy<Value = Edge> {
    let way = prop_oneof![Just(Direction::Up), Just(Direction::Down)];
    let um = Length::micrometres;
    (0..6, 5_000_i32..15_000, 500_i32..4000, way).prop_map(move |(kind, width, gap, way)| match kind {
        0 => Edge::Raw,
        1 => Edge::closed_hem(um(width), way),
        2 => Edge::open_hem(um(width), um(gap), way),
        3 => Edge::double_hem(um(width), way),
        // Past 180 degrees, where not every rule goes.
        4 => Edge::teardrop_hem(um(gap), um(width), um(gap / 3), way).with_rule(axis(0.4)),
        _ => Edge::wired_edge(um(gap), way).with_rule(axis(0.4)),
    })
}

fn any_end(square_or_more: bool) -> impl Strategy<Value = LegEnd> {
    let tangent = if square_or_more { LegEnd::OuterTangent } else { LegEnd::Tangent };
    prop_oneof![Just(LegEnd::OuterCorner), Just(LegEnd::InnerCorner), Just(LegEnd::Tangent), Just(tangent)]
}

/// Profiles that can be bent: legs long enough for their setbacks.
pub(super) fn any_profile() -> impl Strategy<Value = Profile> {
    let bend = (1.0_f64..150.0, any::<bool>(), 0_i32..3000)
        .prop_flat_map(|(degrees, up, radius)| (Just((degrees, up, radius)), any_end(degrees >= 90.0), any_end(degrees >= 90.0), 40_000_i32..120_000));
    (200_i32..1500, any_edge(), any_edge(), 40_000_i32..120_000, prop::collection::vec(bend, 0..9)).prop_map(|(t, start, end, first, bends)| {
        let at_edge = |edge: &Edge| if edge.is_raw() { LegEnd::SheetEdge } else { LegEnd::OuterTangent };
        let mut legs = vec![Leg { name: "leg".into(), length: Length::micrometres(first), start: at_edge(&start), end: at_edge(&end) }];
        let mut out = Vec::new();
        for ((degrees, up, radius), before, after, length) in bends {
            legs.last_mut().unwrap().end = before;
            legs.push(Leg { name: "leg".into(), length: Length::micrometres(length), start: after, end: at_edge(&end) });
            let direction = if up { Direction::Up } else { Direction::Down };
            out.push(Bend { angle: flat_angle(degrees), direction, inside_radius: Length::micrometres(radius), rule: None });
        }
        Profile { thickness: Length::micrometres(t), start_edge: start, legs, bends: out, end_edge: end, painted: Face::Upper }
    })
}

/// A profile with one thing in it changed, mostly for the worse.
pub(super) fn spoil(mut p: Profile, what: u8, which: usize, by: Length) -> Profile {
    let leg = which % p.legs.len();
    match what {
        0 => p.legs[leg].length = by,
        1 => p.legs[leg].start = LegEnd::OuterTangent,
        2 => p.legs[leg].end = LegEnd::SheetEdge,
        3 => p.start_edge = Edge::open_hem(by, Length::ZERO, Direction::Up),
        4 => p.end_edge = Edge::open_hem(by, by, Direction::Down),
        5 => p.thickness = by,
        6 if !p.bends.is_empty() => {
            let i = which % p.bends.len();
            p.bends[i].inside_radius = by;
        }
        7 if !p.bends.is_empty() => {
            let i = which % p.bends.len();
            p.bends[i].angle = BendAngle::FOLDED;
        }
        _ => {}
    }
    p
}

proptest! {
    #[test]
    fn the_validator_and_the_unfolding_agree(p in any_profile(), rule in prop_oneof![any_rule(), Just(BendRule::Din6935)], what in 0_u8..9, which in any::<usize>(), um in -2_000_i32..90_000) {
        let p = spoil(p, what, which, Length::micrometres(um));
        match (p.validate_with(&rule), p.unfold(&rule)) {
            (Ok(()), Ok(_)) => {}
            (Err(told), Err(same)) => prop_assert_eq!(told, same),
            (told, found) => prop_assert!(false, "validator {told:?}, unfolding {found:?}"),
        }
    }

    #[test]
    fn parts_follow_each_other_and_add_to_the_girth(p in any_profile(), rule in any_rule()) {
        p.validate().unwrap();
        let flat = p.unfold(&rule).unwrap();
        prop_assert_eq!(flat.girth(), p.girth(&rule).unwrap());
        prop_assert_eq!(flat.legs().len(), flat.bends().len() + 1);
        let mut at = Length::ZERO;
        for (i, leg) in flat.legs().iter().enumerate() {
            prop_assert_eq!(leg.from, at);
            prop_assert!(leg.to >= leg.from);
            at = leg.to;
            if let Some(b) = flat.bends().get(i) {
                prop_assert_eq!(b.from, at);
                prop_assert!(b.from <= b.line && b.line <= b.to);
                at = b.to;
            }
        }
        prop_assert_eq!(at, flat.girth());
    }

    #[test]
    fn turned_end_for_end_the_girth_stays_and_the_lines_mirror(p in any_profile(), rule in any_rule()) {
        let flat = p.unfold(&rule).unwrap();
        let back = p.reversed().unfold(&rule).unwrap();
        prop_assert_eq!(flat.girth(), back.girth());
        for (a, b) in flat.bends().iter().zip(back.bends().iter().rev()) {
            prop_assert_eq!(flat.from_end(a.from).unwrap(), b.to);
            prop_assert_eq!(flat.from_end(a.to).unwrap(), b.from);
            prop_assert!((flat.from_end(a.line).unwrap().pm() - b.line.pm()).abs() <= 1);
            prop_assert_eq!(a.direction, b.direction);
        }
    }

    #[test]
    fn computing_and_explaining_agree(p in any_profile(), rule in any_rule()) {
        let pattern = FlatPattern { profile: p, rule };
        let computed = pattern.compute().unwrap();
        let (explained, sheet) = pattern.explain().unwrap();
        prop_assert_eq!(&computed, &explained);
        // A step for each leg, two for each bend, and the girth.
        prop_assert_eq!(sheet.steps().len(), computed.legs().len() + 2 * computed.bends().len() + 1);
        prop_assert!(matches!(sheet.entries.last(), Some(Entry::Step(s)) if s.result == computed.girth().to_string()));
    }

    /// The same piece said to other points of its bends has the same flat, within the rounding of its setbacks.
    #[test]
    fn how_a_leg_is_dimensioned_does_not_change_the_flat(p in any_profile(), rule in any_rule()) {
        let flat = p.unfold(&rule).unwrap();
        let skip = flat.legs().iter().take_while(|l| l.part.is_of_start_edge()).count();
        let mut said = p.clone();
        let last = said.legs.len() - 1;
        for (i, leg) in said.legs.iter_mut().enumerate() {
            leg.length = flat.legs()[i + skip].length();
            if i > 0 || skip > 0 { leg.start = LegEnd::Tangent; }
            if i < last || !p.end_edge.is_raw() { leg.end = LegEnd::Tangent; }
        }
        let again = said.unfold(&rule).unwrap();
        prop_assert_eq!(flat.girth(), again.girth());
        prop_assert_eq!(flat.bends(), again.bends());
    }

    #[test]
    fn garbage_profiles_never_panic(pm in prop::collection::vec(any::<i64>(), 8), degrees in 0.0_f64..360.0, rule in any_rule()) {
        let l = |i: usize| Length::from_pm(pm[i]);
        let p = Profile {
            thickness: l(0),
            start_edge: Edge::open_hem(l(1), l(2), Direction::Up),
            legs: vec![
                Leg { name: "a".into(), length: l(3), start: LegEnd::Tangent, end: LegEnd::OuterCorner },
                Leg { name: "b".into(), length: l(4), start: LegEnd::InnerCorner, end: LegEnd::OuterTangent },
            ],
            bends: vec![Bend { angle: flat_angle(degrees), direction: Direction::Down, inside_radius: l(5), rule: None }],
            end_edge: Edge::closed_hem(l(6), Direction::Down),
            painted: Face::Lower,
        };
        prop_assert_eq!(p.unfold(&rule).is_ok(), p.girth(&rule).is_ok());
        // The unfolding and the validator are two texts of one law.
        match (p.validate_with(&rule), p.unfold(&rule)) {
            (Ok(()), Err(e)) => prop_assert_eq!(e.kind(), ErrorKind::Overflow),
            (Err(e), Ok(_)) => prop_assert!(false, "unfolded in spite of {}", e),
            _ => {}
        }
    }
}
