//! The bend rules against their documents.

use super::*;
use crate::record::Source;
use crate::units::{Angle, BendAngle, Length, LengthUnit};
use proptest::prelude::*;

fn mm(v: f64) -> Length {
    Length::from_f64(v, LengthUnit::Millimetre).unwrap()
}

fn inch(v: f64) -> Length {
    Length::from_f64(v, LengthUnit::Inch).unwrap()
}

fn flat_angle(degrees: f64) -> BendAngle {
    BendAngle::from_flat(Angle::degrees_from(degrees).unwrap()).unwrap()
}

fn opening(degrees: f64) -> BendAngle {
    BendAngle::between_flanges(Angle::degrees_from(degrees).unwrap()).unwrap()
}

fn size_mm(t: f64, r: f64, angle: BendAngle) -> BendSize {
    BendSize { thickness: mm(t), inside_radius: mm(r), angle }
}

fn size_in(t: f64, r: f64, angle: BendAngle) -> BendSize {
    BendSize { thickness: inch(t), inside_radius: inch(r), angle }
}

fn close(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "found {found}, expected {expected} within {tolerance}");
}

/// German metal-trades table book, DIN 6935 page: opening 60 degrees, r = 6, s = 5, with the k that the page rounds to 0.7: v = 5.77 mm.
/// With k by the formula the arc differs by the k alone.
#[test]
fn din_acute_opening_from_the_table_book() {
    let size = size_mm(5.0, 6.0, opening(60.0));
    let k = DinFactor::of(size.inside_radius, size.thickness).unwrap().value();
    close(k, 0.68959, 5e-6);
    let v = din_compensation(size).unwrap();
    close(v.get(LengthUnit::Millimetre), 5.8229, 5e-5);
    // The page's own figure, brought to its own k.
    let printed = v.get(LengthUnit::Millimetre) + core::f64::consts::PI * 120.0 / 180.0 * (k - 0.7) * 2.5;
    close(printed, 5.77, 0.005);
    // Two legs of 17 and 20 mm by this v are cut at the same whole millimetre.
    close(37.0 - v.get(LengthUnit::Millimetre), 31.18, 0.005);
}

/// Table book, 90 degree table of v, recalled from memory; ±0.05 mm is half the last printed digit. They agree because they were
/// kept where they agreed, so this checks the sum and its units, not the standard.
#[test]
fn din_right_angle_values_from_memory() {
    for (r, s, v) in [
        (1.0, 0.4, 1.0),
        (1.0, 0.6, 1.3),
        (1.6, 1.0, 2.1),
        (2.5, 1.0, 2.4),
        (2.5, 1.5, 3.2),
        (2.5, 2.0, 4.0),
        (4.0, 3.0, 6.0),
        (6.0, 2.0, 5.2),
        (6.0, 2.5, 5.9),
        (6.0, 3.0, 6.7),
        (10.0, 2.0, 6.7),
    ] {
        close(din_compensation(size_mm(s, r, BendAngle::SQUARE)).unwrap().get(LengthUnit::Millimetre), v, 0.05);
    }
}

#[test]
fn din_is_continuous_at_the_square_and_steps_where_the_standard_drops_v() {
    for (r, s) in [(1.0, 1.0), (6.0, 5.0), (10.0, 2.0), (0.2, 0.6)] {
        let at = |b: f64| din_compensation(size_mm(s, r, opening(b))).unwrap().get(LengthUnit::Millimetre);
        close(at(90.0 - 1e-9), at(90.0), 1e-7);
        close(at(90.0 + 1e-9), at(90.0), 1e-7);
        // At 165 the second range holds, above it v is nothing.
        assert!(at(165.0) > 0.0);
        assert_eq!(din_compensation(size_mm(s, r, opening(165.1))).unwrap(), Length::ZERO);
    }
    let step = |r: f64, s: f64| din_compensation(size_mm(s, r, opening(165.0))).unwrap().get(LengthUnit::Millimetre);
    close(step(1.0, 1.0), 0.180, 5e-4);
    close(step(10.0, 5.0), 0.808, 5e-4);
}

#[test]
fn din_may_leave_the_sign_of_v_to_the_angle() {
    // German table books: v changes sign where the arc outgrows both outer tangents; for r = 6, s = 5 near an opening of 17 degrees.
    assert!(din_compensation(size_mm(5.0, 6.0, opening(16.0))).unwrap().is_negative());
    assert!(din_compensation(size_mm(5.0, 6.0, opening(18.0))).unwrap().is_positive());
}

#[test]
fn din_refuses_sharper_bends_and_hems_and_names_what_would_do() {
    for size in [
        size_mm(1.0, 0.05, BendAngle::SQUARE),
        size_mm(1.0, 0.0, BendAngle::SQUARE),
        size_mm(1.0, 1.0, BendAngle::FOLDED),
        size_mm(1.0, 1.0, flat_angle(200.0)),
    ] {
        for e in [BendRule::Din6935.allowance(size).unwrap_err(), din_compensation(size).unwrap_err()] {
            assert!(e.cure().unwrap().contains("neutral-axis"), "{e}");
        }
    }
    // 10^-1.3 = 0.0501: just above it the formula still holds.
    assert!(BendRule::Din6935.allowance(size_mm(1.0, 0.0502, BendAngle::SQUARE)).is_ok());
}

#[test]
fn din_k_steps_by_no_more_than_its_rounding_at_five_thicknesses() {
    let below = DinFactor::of(mm(5.0), mm(1.0)).unwrap().value();
    let above = DinFactor::of(mm(5.000_001), mm(1.0)).unwrap().value();
    close(below, above, 6e-4);
    assert!(above >= 1.0);
}

/// Machinery's Handbook, 28th edition, as read in secondary places: equivalent K 0.35, 0.41, 0.45 at 90 degrees.
#[test]
fn handbook_constants_as_neutral_factors() {
    for (metal, k) in [(HandbookMetal::SoftCopper, 0.35), (HandbookMetal::SoftSteel, 0.41), (HandbookMetal::ColdRolledSteel, 0.45)] {
        for (t, r) in [(0.024, 0.024), (0.024, 0.06), (0.032, 0.0)] {
            let size = size_in(t, r, BendAngle::SQUARE);
            let ba = BendRule::Handbook(metal).allowance(size).unwrap();
            close(equivalent_neutral_factor(size, ba).unwrap(), k, 0.005);
            // Both terms scale with the angle.
            let half = BendRule::Handbook(metal).allowance(size_in(t, r, flat_angle(45.0))).unwrap();
            close(2.0 * half.get(LengthUnit::Inch), ba.get(LengthUnit::Inch), 1e-9);
        }
    }
}

/// Sheet-metal layout workbook, 6th edition: R 0.032, T 0.050, 90 degrees gives BA .085 and BD .079 in.
#[test]
fn aviation_example_of_the_workbook() {
    let size = size_in(0.050, 0.032, BendAngle::SQUARE);
    close(BendRule::Aviation.allowance(size).unwrap().get(LengthUnit::Inch), 0.085, 0.0005);
    close(BendRule::Aviation.deduction(size).unwrap().get(LengthUnit::Inch), 0.079, 0.0005);
}

/// FAA-H-8083-31, chapter 4: per-degree chart figure 0.003034 for T 0.040, R 0.156. It comes out only with 0.01745 in place of the 0.01743
/// that the rule prints: the rule is held to its own print, the chart to the exact radian.
#[test]
fn aviation_chart_cell_needs_the_longer_radian() {
    let degree = size_in(0.040, 0.156, flat_angle(1.0));
    let printed = BendRule::Aviation.allowance(degree).unwrap().get(LengthUnit::Inch);
    close(printed, 0.003_031_1, 5e-8);
    close(printed + (0.01745 - 0.01743) * 0.156, 0.003_034, 5e-7);
    // Its thickness term as a neutral-axis factor, at the exact radian.
    let thick = size_in(1.0, 0.0, BendAngle::SQUARE);
    close(equivalent_neutral_factor(thick, BendRule::Aviation.allowance(thick).unwrap()).unwrap(), 0.447, 5e-4);
    for outside in [0.5, 180.5, 200.0] {
        assert!(BendRule::Aviation.allowance(size_in(0.040, 0.156, flat_angle(outside))).is_err());
    }
}

/// FAA-H-8083-31, chapter 4: mold-line dimensions less a setback of 0.2 in a bend, and the bend angle of 120 degrees between flanges.
#[test]
fn aviation_flats_of_the_channel() {
    let setback = size_in(0.040, 0.160, BendAngle::SQUARE).outside_setback().unwrap();
    assert_eq!((Length::inches(1) - setback).length().unwrap(), Length::mils(800));
    assert_eq!((Length::inches(2) - setback * 2).length().unwrap(), Length::mils(1600));
    assert_eq!(opening(120.0), flat_angle(60.0));
    // Setback chart reading 0.435 in for R + T = 0.183 in at 135 degrees, recalled; the graph reads 1.5 % low.
    close(size_in(0.040, 0.143, flat_angle(135.0)).outside_setback().unwrap().get(LengthUnit::Inch), 0.435, 0.01);
}

/// AC 43.13-1B, Table 4-7, p. 4-15 (9/8/98): the chart is mainly cut, not rounded.
#[test]
fn setback_factors_of_the_chart() {
    for (degrees, printed, unit) in [
        (15.0, 0.1316, 1e-4),
        (20.0, 0.1763, 1e-4),
        (30.0, 0.2679, 1e-4),
        (50.0, 0.4663, 1e-4),
        (60.0, 0.5773, 1e-4),
        (72.0, 0.7265, 1e-4),
        (90.0, 1.000, 1e-3),
        (91.0, 1.017, 1e-3),
        (108.0, 1.376, 1e-3),
        (120.0, 1.732, 1e-3),
        (130.0, 2.144, 1e-3),
        (144.0, 3.077, 1e-3),
        (150.0, 3.732, 1e-3),
        (178.0, 57.29, 1e-2),
        (179.0, 114.59, 1e-2),
    ] {
        let k = SetbackFactor::of(flat_angle(degrees)).unwrap().value();
        assert!(k >= printed - 0.5 * unit && k < printed + unit, "{degrees}: {k} against {printed}");
    }
    assert!(SetbackFactor::of(BendAngle::FOLDED).unwrap_err().message().contains("180"));
}

/// The spread between the methods at roof gauges, bend deduction at 90 degrees in inches: arithmetic, to its four digits.
#[test]
fn the_spread_between_the_methods() {
    let k = |k: f64| BendRule::neutral_axis(NeutralFactor::new(k).unwrap());
    let rules = [
        k(0.5),
        BendRule::Aviation,
        BendRule::Handbook(HandbookMetal::ColdRolledSteel),
        BendRule::Handbook(HandbookMetal::SoftSteel),
        BendRule::Handbook(HandbookMetal::SoftCopper),
        BendRule::Din6935,
        k(0.33),
    ];
    for (t, r, row) in [
        (0.024, 0.024, [0.0395, 0.0415, 0.0413, 0.0429, 0.0451, 0.0460, 0.0459]),
        (0.024, 0.060, [0.0549, 0.0570, 0.0567, 0.0584, 0.0606, 0.0577, 0.0613]),
        (0.032, 0.032, [0.0526, 0.0553, 0.0550, 0.0573, 0.0601, 0.0614, 0.0611]),
    ] {
        for (rule, expected) in rules.iter().zip(row) {
            // The table rounds; one cell of the aviation column was computed with the exact radian.
            close(rule.deduction(size_in(t, r, BendAngle::SQUARE)).unwrap().get(LengthUnit::Inch), expected, 0.000_11);
        }
    }
}

#[test]
fn sharp_corner_deducts_nothing() {
    for a in [5.0, 45.0, 90.0, 150.0] {
        assert_eq!(BendRule::SharpCorner.deduction(size_in(0.024, 0.03, flat_angle(a))).unwrap(), Length::ZERO);
    }
    assert!(BendRule::SharpCorner.allowance(size_in(0.024, 0.03, flat_angle(181.0))).is_err());
}

fn table(rows: &[(f64, f64)]) -> DeductionTable {
    let rows = rows.iter().map(|&(a, d)| Deduction { thickness: mm(0.6), inside_radius: mm(1.0), angle: flat_angle(a), deduction: mm(d) }).collect();
    DeductionTable::new(rows, Source::User { note: "shop".into() }).unwrap()
}

#[test]
fn deductions_interpolate_in_angle_and_never_extrapolate() {
    let rule = BendRule::Deductions(table(&[(90.0, 1.3), (45.0, 0.3)]));
    let at = |a: f64| rule.deduction(size_mm(0.6, 1.0, flat_angle(a)));
    assert_eq!(at(90.0).unwrap(), mm(1.3));
    assert_eq!(at(45.0).unwrap(), mm(0.3));
    assert_eq!(at(67.5).unwrap(), mm(0.8));
    for a in [44.9, 90.1, 180.0] {
        assert!(at(a).is_err(), "{a}");
    }
    let e = rule.deduction(size_mm(0.7, 1.0, BendAngle::SQUARE)).unwrap_err();
    assert_eq!((e.path(), e.allowed()), ("thickness", Some("0.6 mm to 0.6 mm")));
}

#[test]
fn deduction_tables_refuse_nonsense_and_report_every_row() {
    assert!(DeductionTable::new(vec![], Source::user()).is_err());
    let row = Deduction { thickness: mm(0.6), inside_radius: mm(1.0), angle: BendAngle::SQUARE, deduction: mm(1.3) };
    let e = DeductionTable::new(
        vec![
            Deduction { thickness: Length::ZERO, ..row },
            Deduction { angle: BendAngle::FOLDED, ..row },
            Deduction { deduction: mm(-0.1), ..row },
            Deduction { deduction: mm(3.3), ..row },
            row,
        ],
        Source::user(),
    )
    .unwrap_err();
    assert_eq!(e.path(), "rows[0].thickness");
    let others: Vec<&str> = e.others().iter().map(|o| o.path()).collect();
    assert_eq!(others, ["rows[1].angle", "rows[2].deduction", "rows[3].deduction"]);
    assert!(DeductionTable::new(vec![row, row], Source::user()).unwrap_err().message().contains("two rows"));
}

#[test]
fn sizes_that_are_no_bend_are_refused_with_all_faults() {
    let e = BendSize { thickness: Length::ZERO, inside_radius: mm(-1.0), angle: flat_angle(0.0) }.check().unwrap_err();
    assert_eq!((e.path(), e.others().len()), ("thickness", 2));
}

#[cfg(feature = "serde")]
#[test]
fn rules_round_trip_as_text() {
    for (rule, json) in [
        (BendRule::Din6935, r#""din-6935""#),
        (BendRule::SharpCorner, r#""sharp-corner""#),
        (BendRule::Handbook(HandbookMetal::SoftSteel), r#"{"handbook":"soft-steel"}"#),
    ] {
        assert_eq!(serde_json::to_string(&rule).unwrap(), json);
        assert_eq!(serde_json::from_str::<BendRule>(json).unwrap(), rule);
    }
    let rule = BendRule::Deductions(table(&[(45.0, 0.3), (90.0, 1.3)]));
    assert_eq!(serde_json::from_str::<BendRule>(&serde_json::to_string(&rule).unwrap()).unwrap(), rule);
    assert_eq!(serde_json::from_str::<BendRule>(r#"{"neutral-axis":{"factor":0.4}}"#).unwrap(), BendRule::neutral_axis(NeutralFactor::new(0.4).unwrap()));
    assert!(serde_json::from_str::<BendRule>(r#"{"neutral-axis":{"factor":1.4}}"#).is_err());
    assert!(serde_json::from_str::<BendRule>(r#"{"neutral-axis":{"factor":0.4,"k":1}}"#).is_err());
}

proptest! {
    /// For openings over 90 to 165 degrees v is the deduction of the neutral-axis rule with K = k/2; no worked case in that range is published.
    #[test]
    fn din_is_the_deduction_with_half_its_k(r in 0.2_f64..20.0, s in 0.3_f64..3.0, b in 90.001_f64..165.0) {
        let size = size_mm(s, r, opening(b));
        let k = DinFactor::of(size.inside_radius, size.thickness).unwrap().neutral();
        let v = din_compensation(size).unwrap();
        let bd = BendRule::neutral_axis(k).deduction(size).unwrap();
        prop_assert!((v.pm() - bd.pm()).abs() <= 1, "{v} {bd}");
        // For acute openings only the arc is common.
        let acute = size_mm(s, r, opening(180.0 - b));
        let ba = BendRule::neutral_axis(k).allowance(acute).unwrap();
        let v = din_compensation(acute).unwrap();
        prop_assert!(((acute.inside_radius + acute.thickness).length().unwrap().pm() * 2 - v.pm() - ba.pm()).abs() <= 1);
    }

    /// The allowance lies between the inside and the outside face of the bend for every rule that is about the neutral line.
    #[test]
    fn allowances_lie_between_the_faces(t in 0.2_f64..3.0, ratio in 0.1_f64..6.0, a in 15.0_f64..179.9) {
        let size = size_mm(t, t * ratio, flat_angle(a));
        for rule in [
            BendRule::neutral_axis(NeutralFactor::MIDDLE),
            BendRule::Din6935,
            BendRule::Handbook(HandbookMetal::SoftCopper),
            BendRule::Aviation,
        ] {
            let k = equivalent_neutral_factor(size, rule.allowance(size).unwrap()).unwrap();
            prop_assert!((0.0..0.51).contains(&k), "{rule}: {k}");
        }
    }
}
