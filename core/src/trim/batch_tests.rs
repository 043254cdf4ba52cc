//! Girths of many elements: the scalar path is the reference, refusal by refusal.

use super::flat_tests::{any_profile, spoil};
use super::*;
use crate::error::ErrorKind;
use crate::record::Source;
use crate::units::{Angle, BendAngle, Length, LengthArray, LengthUnit};
use proptest::prelude::*;

fn mm(values: &[f64]) -> LengthArray<'_> {
    LengthArray { values, unit: LengthUnit::Millimetre }
}

fn axis(k: f64) -> BendRule {
    BendRule::neutral_axis(NeutralFactor::new(k).unwrap())
}

/// One element as the scalar path has it.
fn alone(profile: &Profile, t: Length, r: Length) -> Profile {
    let mut p = profile.clone();
    p.thickness = t;
    p.bends.iter_mut().for_each(|b| b.inside_radius = r);
    p
}

/// Square bends with legs to the outer corner.
fn squares(count: usize, leg: Length) -> Profile {
    let mut b = Profile::builder(Length::mils(24)).painted(Face::Upper).inside_radius(Length::mils(30)).leg("first", leg);
    for _ in 0..count {
        b = b.up(BendAngle::SQUARE).leg("next", leg);
    }
    b.build().unwrap()
}

fn table() -> DeductionTable {
    let row = |t, r, degrees, d| Deduction {
        thickness: Length::micrometres(t),
        inside_radius: Length::micrometres(r),
        angle: BendAngle::from_flat(Angle::degrees_from(degrees).unwrap()).unwrap(),
        deduction: Length::micrometres(d),
    };
    DeductionTable::new(vec![row(600, 1000, 30.0, 300), row(600, 1000, 120.0, 1900), row(700, 1000, 90.0, 1400)], Source::user()).unwrap()
}

/// FAA-H-8083-31, chapter 4: the channel of 1.00, 2.00, 1.00 in at T = 0.040 and R = 0.16 in; the formula gives 3.758 in.
#[test]
fn the_aviation_channel_among_others() {
    let p = {
        let b = Profile::builder(Length::mils(40)).painted(Face::Upper).inside_radius(Length::mils(160)).leg("a", Length::inches(1)).up(BendAngle::SQUARE);
        b.leg("b", Length::inches(2)).up(BendAngle::SQUARE).leg("c", Length::inches(1)).build().unwrap()
    };
    let (t, r) = ([0.05, 0.04, 0.03], [0.1, 0.16, 0.2]);
    let inch = |values| LengthArray { values, unit: LengthUnit::Inch };
    let found = girths(&p, &BendRule::Aviation, inch(&t), inch(&r), LengthUnit::Inch).unwrap();
    assert!((found[1] - 3.758).abs() < 0.0005, "{found:?}");
}

/// DIN 6935 as table books print it: s = 5, r = 6 mm, an opening of 60 degrees gives v = 5.82 mm off the legs to the outer tangents.
#[test]
fn din_with_a_factor_for_each_element() {
    let p = Profile::builder(Length::micrometres(5000))
        .painted(Face::Upper)
        .inside_radius(Length::micrometres(6000))
        .measured_to(LegEnd::OuterTangent)
        .leg("a", Length::micrometres(50_000))
        .up(BendAngle::between_flanges(Angle::degrees_from(60.0).unwrap()).unwrap())
        .leg("b", Length::micrometres(20_000))
        .build()
        .unwrap();
    let found = girths(&p, &BendRule::Din6935, mm(&[5.0, 1.0]), mm(&[6.0, 6.0]), LengthUnit::Millimetre).unwrap();
    assert!((found[0] - (70.0 - 5.8229)).abs() < 5e-5, "{found:?}");
    // r/s = 6: k is 1, the neutral line lies in the middle.
    let arc = core::f64::consts::PI * 120.0 / 180.0 * 6.5;
    assert!((found[1] - (70.0 - 2.0 * 7.0 + arc)).abs() < 1e-9, "{found:?}");
}

#[test]
fn a_refusal_names_its_element() {
    let p = squares(2, Length::inches(1));
    let t = vec![0.6; 1000];
    let at = |index: usize, t_or_r: usize, value: f64| {
        let mut arrays = [t.clone(), vec![1.0; 1000]];
        arrays[t_or_r][index] = value;
        girths(&p, &axis(0.4), mm(&arrays[0]), mm(&arrays[1]), LengthUnit::Millimetre).unwrap_err()
    };
    for (index, which, value, kind, path) in [
        (0, 0, 0.0, ErrorKind::OutOfRange, "elements[0].thickness"),
        (999, 0, -0.6, ErrorKind::OutOfRange, "elements[999].thickness"),
        (700, 0, f64::NAN, ErrorKind::NotFinite, "elements[700].thickness"),
        (256, 1, f64::INFINITY, ErrorKind::NotFinite, "elements[256].inside_radius"),
        (255, 1, -1e-3, ErrorKind::OutOfRange, "elements[255].bends[0].inside_radius"),
        (3, 1, 12.5, ErrorKind::Impossible, "elements[3].legs[1].length"),
        (4, 1, 1e300, ErrorKind::Overflow, "elements[4].inside_radius"),
    ] {
        let e = at(index, which, value);
        assert_eq!((e.kind(), e.path()), (kind, path), "{e}");
    }
    // The first of several is told.
    let mut wrong = t.clone();
    (wrong[800], wrong[20]) = (0.0, 0.0);
    assert_eq!(girths(&p, &axis(0.4), mm(&wrong), mm(&t), LengthUnit::Millimetre).unwrap_err().path(), "elements[20].thickness");
    // A bend sharper than DIN 6935 covers.
    let e = girths(&p, &BendRule::Din6935, mm(&[0.6, 0.6]), mm(&[0.6, 0.03]), LengthUnit::Millimetre).unwrap_err();
    assert_eq!(e.path(), "elements[1].bends[0].inside_radius");
}

#[test]
fn arrays_must_be_equally_long() {
    let p = squares(1, Length::inches(1));
    let e = girths_into(&p, &axis(0.4), mm(&[0.6, 0.7]), mm(&[1.0]), &mut [0.0; 3], LengthUnit::Millimetre).unwrap_err();
    assert_eq!((e.kind(), e.path(), e.others()[0].path()), (ErrorKind::Conflict, "inside_radius", "girths"));
    assert_eq!(girths(&p, &axis(0.4), mm(&[]), mm(&[]), LengthUnit::Inch).unwrap(), [0.0; 0]);
}

#[test]
fn faults_of_the_profile_are_every_elements() {
    let good = squares(2, Length::inches(1));
    let folded = {
        let mut p = good.clone();
        p.bends[1].angle = BendAngle::FOLDED;
        p
    };
    let nothing = {
        let mut p = good.clone();
        p.bends[0].angle = BendAngle::from_flat(Angle::ZERO).unwrap();
        p
    };
    let short = {
        let mut p = good.clone();
        p.bends.pop();
        p
    };
    let backwards = {
        let mut p = good.clone();
        p.legs[0].length = Length::inches(-1);
        p
    };
    let tight = {
        let mut p = good.clone();
        p.start_edge = Edge::open_hem(Length::inches(1), Length::ZERO, Direction::Up);
        p
    };
    let edge = {
        let mut p = good;
        p.legs[0].start = LegEnd::OuterCorner;
        p
    };
    for p in [folded, nothing, short, backwards, tight, edge] {
        for rule in [axis(0.4), BendRule::Din6935, BendRule::Deductions(table())] {
            let single = alone(&p, Length::micrometres(600), Length::micrometres(1000)).girth(&rule).unwrap_err();
            assert_eq!(girths(&p, &rule, mm(&[0.6]), mm(&[1.0]), LengthUnit::Millimetre).unwrap_err(), single.under("elements[0]"));
        }
    }
}

/// Flats of exactly nothing, and sizes that round to nothing, are the scalar path's to judge.
#[test]
fn what_is_at_a_limit_is_judged_as_a_single_one_is() {
    // 10 mm between two setbacks of R + T.
    let p = squares(2, Length::micrometres(10_000));
    let found = girths(&p, &axis(0.5), mm(&[1.0]), mm(&[4.0]), LengthUnit::Millimetre).unwrap();
    assert!((found[0] - (10.0 + 2.0 * core::f64::consts::FRAC_PI_2 * 4.5)).abs() < 1e-9);
    assert!(girths(&p, &axis(0.5), mm(&[1.0]), mm(&[4.000_000_001]), LengthUnit::Millimetre).is_err());
    // Less than half a picometre of thickness is none; as much below a radius of nothing is nothing.
    assert!(girths(&p, &axis(0.5), mm(&[4e-10]), mm(&[1.0]), LengthUnit::Millimetre).is_err());
    assert!(girths(&p, &axis(0.5), mm(&[1.0]), mm(&[-4e-10]), LengthUnit::Millimetre).is_ok());
}

#[test]
fn tables_are_looked_up_by_exact_size() {
    let mut p = squares(3, Length::inches(2));
    p.bends[1].rule = Some(Box::new(axis(0.4)));
    let rule = BendRule::Deductions(table());
    let found = girths(&p, &rule, mm(&[0.6, 0.7]), mm(&[1.0, 1.0]), LengthUnit::Millimetre).unwrap();
    for (i, t) in [600, 700].into_iter().enumerate() {
        let single = alone(&p, Length::micrometres(t), Length::micrometres(1000)).girth(&rule).unwrap();
        assert!((found[i] - single.mm()).abs() < 1e-8, "{} {single}", found[i]);
    }
    let e = girths(&p, &rule, mm(&[0.6, 0.65]), mm(&[1.0, 1.0]), LengthUnit::Millimetre).unwrap_err();
    assert_eq!(e.path(), "elements[1].bends[0].inside_radius");
}

fn any_rule() -> impl Strategy<Value = BendRule> {
    prop_oneof![
        (0.0_f64..=1.0).prop_map(axis),
        Just(BendRule::Din6935),
        Just(BendRule::Aviation),
        Just(BendRule::SharpCorner),
        prop::sample::select(HandbookMetal::ALL).prop_map(BendRule::Handbook),
        Just(BendRule::Deductions(table())),
    ]
}

/// Thickness and radius in nanometres, as trims have them; a tenth of them in the rows of the table.
fn tame() -> impl Strategy<Value = (i64, i64)> {
    prop_oneof![1 => Just((600_000, 1_000_000)), 9 => (200_000..1_500_000_i64, 100_000..3_000_000_i64)]
}

/// The same, past every limit.
fn wild() -> impl Strategy<Value = (i64, i64)> {
    (prop_oneof![Just(0), -5..2_000_000_i64], prop_oneof![Just(1_000_000), -5..60_000_000_i64])
}

proptest! {
    /// Every element is what the scalar path gives, up to its roundings to the picometre; the first that it refuses is refused as there.
    #[test]
    fn each_element_is_the_single_girth(
        mut p in any_profile(),
        rule in any_rule(),
        own in prop::option::of((any_rule(), 0_usize..9)),
        elements in prop_oneof![prop::collection::vec(tame(), 0..600), prop::collection::vec(wild(), 0..6)],
        hem_rule in prop_oneof![4 => (0.0_f64..=1.0).prop_map(axis), 1 => Just(BendRule::SharpCorner), 1 => Just(BendRule::Din6935)],
        spoilt in prop::option::weighted(0.2, (0_u8..8, 0_usize..9, -1_000_i32..5_000)),
    ) {
        if let Some((what, which, by)) = spoilt {
            p = spoil(p, what, which, Length::micrometres(by));
        }
        p.start_edge = p.start_edge.with_rule(hem_rule.clone());
        p.end_edge = p.end_edge.with_rule(hem_rule);
        if let Some((own, i)) = own && i < p.bends.len() {
            p.bends[i].rule = Some(Box::new(own));
        }
        // Thickness in millimetres, radius in inches: any number of nanometres.
        let t: Vec<f64> = elements.iter().map(|(t, _)| *t as f64 / 1e6).collect();
        let r: Vec<f64> = elements.iter().map(|(_, r)| *r as f64 / 25.4e6).collect();
        let inches = LengthArray { values: &r, unit: LengthUnit::Inch };
        let mut expected = Ok(Vec::new());
        for (i, (t, r)) in t.iter().zip(&r).enumerate() {
            let single = alone(&p, Length::from_f64(*t, LengthUnit::Millimetre).unwrap(), Length::from_f64(*r, LengthUnit::Inch).unwrap()).girth(&rule);
            match (&mut expected, single) {
                (Ok(all), Ok(girth)) => all.push(girth.get(LengthUnit::Foot)),
                (Ok(_), Err(e)) => expected = Err(e.under(&format!("elements[{i}]"))),
                (Err(_), _) => {}
            }
        }
        match (girths(&p, &rule, mm(&t), inches, LengthUnit::Foot), expected) {
            (Ok(found), Ok(expected)) => {
                prop_assert_eq!(found.len(), expected.len());
                for (a, b) in found.iter().zip(&expected) {
                    // Three roundings of half a picometre for each bend, and those of thickness and radius.
                    prop_assert!((a - b).abs() * 304.8e9 < 100.0, "{a} {b}");
                }
            }
            (found, expected) => prop_assert_eq!(found.map(|_| ()), expected.map(|_| ())),
        }
    }
}
