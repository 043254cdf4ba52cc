//! Bends at junctions, and minimum slopes at their very limits.

use super::{BendAt, Corner, Pitch, SlopeRule, Turn, cautions};
use crate::record::Calculation;
use crate::units::{Angle, Length};
use proptest::prelude::*;

fn pitch(text: &str) -> Pitch {
    Pitch::parse(text).unwrap()
}

#[test]
fn minimums_hold_at_their_limits() {
    let rules = [
        (SlopeRule::IBC_LAPPED_UNSEALED, "2.99:12", "3:12"),
        (SlopeRule::IBC_LAPPED_SEALED, "0.48:12", "0.5:12"),
        (SlopeRule::IBC_STANDING_SEAM, "0.24:12", "0.25:12"),
        (SlopeRule::IBC_STANDING_SEAM, "0.2499999:12", "1:48"),
        (SlopeRule::IBC_METAL_SHINGLES, "24.999999999 %", "25 %"),
        (SlopeRule::IBC_LAPPED_SEALED, "2.38 deg", "2.39 deg"),
    ];
    for (rule, fails, passes) in rules {
        assert!(!rule.check(&pitch(fails)).passes(), "{fails}");
        let check = rule.check(&pitch(passes));
        assert!(check.passes() && check.cautions().is_empty(), "{passes}");
    }
}

#[test]
fn a_rounded_percentage_does_not_pass() {
    let check = SlopeRule::IBC_LAPPED_SEALED.check(&pitch("4 %"));
    assert!(!check.passes());
    let codes: Vec<u16> = check.cautions().iter().map(|c| c.code().number).collect();
    assert_eq!(codes, [2000, 2001]);
    assert_eq!(check.cautions()[0].message(), "4 % is under the minimum of 1/2:12 for lapped, nonsoldered seams with applied lap sealant");
    assert!(SlopeRule::IBC_LAPPED_SEALED.check(&pitch("3.9 %")).cautions().iter().all(|c| c.code() != cautions::ROUNDED_PERCENTAGE));
}

#[test]
fn every_rule_is_cited_and_memory_is_said() {
    for rule in SlopeRule::ALL {
        let printed = f64::from(rule.printed_percentage.unwrap());
        assert!((rule.limit.percent() - printed).abs() < 0.5, "{rule:?}");
        let check = rule.check(&pitch("12:12"));
        assert!(check.passes());
        assert_eq!(check.cautions().len(), usize::from(rule.source.rests_on_memory()));
    }
    let mut numbers: Vec<u16> = cautions::ALL.iter().map(|c| c.number).collect();
    numbers.dedup();
    assert_eq!(numbers, [2000, 2001, 2002]);
}

#[test]
fn bends_at_junctions() {
    let (a, b) = (pitch("30 deg"), pitch("20 deg"));
    let square = Corner { first: pitch("12:12"), second: pitch("12:12"), plan: Angle::SQUARE };
    for (at, degrees, turn) in [
        (BendAt::Ridge { first: a, second: b }, 50.0, Turn::Down),
        (BendAt::Hip(square), 60.0, Turn::Down),
        (BendAt::Valley(square), 60.0, Turn::Up),
        (BendAt::PitchTransition { lower: b, upper: a }, 10.0, Turn::Up),
        (BendAt::PitchTransition { lower: a, upper: b }, 10.0, Turn::Down),
        (BendAt::PitchTransition { lower: a, upper: a }, 0.0, Turn::None),
        (BendAt::Eave { pitch: a }, 60.0, Turn::Down),
        (BendAt::HighEave { pitch: a }, 120.0, Turn::Down),
        (BendAt::Headwall { pitch: a }, 60.0, Turn::Up),
        (BendAt::Rake, 90.0, Turn::Down),
        (BendAt::Sidewall, 90.0, Turn::Up),
        (BendAt::Ridge { first: Pitch::FLAT, second: Pitch::FLAT }, 0.0, Turn::None),
    ] {
        let (out, sheet) = at.explain().unwrap();
        assert!((out.bend.degrees() - degrees).abs() < 1e-12, "{at:?}: {out:?}");
        assert_eq!(out.turn, turn, "{at:?}");
        assert_eq!(at.compute().unwrap(), out);
        assert!(!sheet.steps().is_empty());
    }
    assert!(BendAt::Hip(Corner { first: Pitch::FLAT, ..square }).compute().is_err());
}

#[cfg(feature = "serde")]
#[test]
fn inputs_are_tagged_and_strict() {
    let at: BendAt = serde_json::from_str(r#"{"ridge":{"first":"6:12","second":"30 deg"}}"#).unwrap();
    assert_eq!(at, BendAt::Ridge { first: pitch("6:12"), second: pitch("30 deg") });
    assert!(serde_json::from_str::<BendAt>(r#"{"eave":{"pitch":"6:12","colour":"red"}}"#).is_err());
    assert!(serde_json::from_str::<Corner>(r#"{"first":"6:12","second":"6:12","plan":90}"#).is_err());
    let rule: SlopeRule = serde_json::from_str(&serde_json::to_string(&SlopeRule::IBC_STANDING_SEAM).unwrap()).unwrap();
    assert_eq!(rule, SlopeRule::IBC_STANDING_SEAM);
}

proptest! {
    #[test]
    fn a_hip_bends_by_what_its_dihedral_lacks(r1 in 1..400_i32, r2 in 1..400_i32, w in 5.0..175.0_f64) {
        let p = |r: i32| Pitch::in_twelve(Length::inches_64(r * 4)).unwrap();
        let corner = Corner { first: p(r1), second: p(r2), plan: Angle::degrees_from(w).unwrap() };
        let bend = BendAt::Hip(corner).compute().unwrap().bend;
        prop_assert!((bend.opening().degrees() - corner.compute().unwrap().dihedral.degrees()).abs() < 1e-12);
        prop_assert_eq!(BendAt::Valley(corner).compute().unwrap().bend, bend);
    }
}
