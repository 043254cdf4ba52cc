use super::cautions::{ALL, NOT_ENGINEERED, RESTS_ON_MEMORY};
use super::*;
use crate::error::ErrorKind;
use crate::record::{Calculation, Seen, Source};
use crate::units::{AreaUnit, Force, ForceUnit, Length, LengthUnit, Pressure, PressureUnit};
use proptest::prelude::*;

fn service(psf: f64, lbf: f64, document: Source) -> LoadCase {
    LoadCase::Service {
        pressure: ServicePressure(Pressure::new(psf, PressureUnit::PoundPerSquareFoot).unwrap()),
        resistance: AllowableResistance { force: Force::new(lbf, ForceUnit::PoundForce).unwrap(), document, factor: None },
    }
}

#[test]
fn a_published_copper_roof() {
    // Copper in Architecture, UL Construction 496: seams 18 in on centre, cleats at 16 in: 2 ft2 each; at the 105 psf greatest static
    // pressure of UL 580 class 90 a cleat takes 210 lb.
    let case = service(105.0, 210.0, Source::user());
    let v = FastenerCheck { case: case.clone(), width: Length::inches(18), spacing: Length::inches(16) }.compute().unwrap();
    assert!((v.area.get(AreaUnit::SquareFoot) - 2.0).abs() < 0.0005);
    assert!((v.demand.get(ForceUnit::PoundForce) - 210.0).abs() < 0.005);
    assert!((v.use_ratio - 1.0).abs() < 1e-12);
    let s = SpacingFromLoad { case, width: Length::inches(18), cap: None }.compute().unwrap();
    assert!((s.by_load.get(LengthUnit::Inch) - 16.0).abs() < 1e-9);
}

#[test]
fn a_cap_governs_only_where_it_is_less() {
    // UFC 3-110-03 (2006), chapter 4: at most 5 ft in the field, 30 in at edges and corners.
    let source = Source::published("UFC 3-110-03", "26 Sep 2006", "chapter 4, p. 27", Seen::Text);
    let mut s = SpacingFromLoad {
        case: service(20.0, 150.0, Source::user()),
        width: Length::inches(18),
        cap: Some(SpacingCap { spacing: Length::inches(30), source }),
    };
    let edge = s.compute().unwrap();
    assert_eq!((edge.greatest, edge.capped), (Length::inches(30), true));
    assert!((edge.by_load.get(LengthUnit::Foot) - 5.0).abs() < 1e-9);
    s.case = service(90.0, 150.0, Source::user());
    let corner = s.compute().unwrap();
    assert!(!corner.capped && corner.greatest == corner.by_load);
}

#[test]
fn the_source_of_the_resistance_decides_the_caution() {
    let codes = |document| {
        let s = SpacingFromLoad { case: service(20.0, 150.0, document), width: Length::inches(18), cap: None };
        s.compute().unwrap().cautions.iter().map(|c| c.code()).collect::<Vec<_>>()
    };
    assert_eq!(codes(Source::user()), [NOT_ENGINEERED]);
    assert_eq!(codes(Source::CommonPractice), [NOT_ENGINEERED]);
    assert_eq!(codes(Source::Engineer { name: "of record".into(), document: "12".into() }), []);
    assert_eq!(codes(Source::published("a test report", "", "", Seen::Memory)), [RESTS_ON_MEMORY]);
}

#[test]
fn factors_are_kept_with_what_they_made() {
    let two = SafetyFactor { factor: 2.0, source: Source::published("TAS 102", "1995", "1.5", Seen::Text) };
    let ultimate = UltimateResistance { force: Force::parse("500 lbf").unwrap(), document: Source::user() };
    let a = ultimate.allowable(&two).unwrap();
    assert!((a.force.get(ForceUnit::PoundForce) - 250.0).abs() < 1e-9);
    assert_eq!(a.factor, Some(two));
    let nominal = NominalResistance { force: Force::parse("500 lbf").unwrap(), document: Source::user() };
    for factor in [0.99, 0.0, -2.0, f64::NAN, f64::INFINITY] {
        let e = nominal.allowable(&SafetyFactor { factor, source: Source::user() }).unwrap_err();
        assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "factor"));
    }
    for factor in [1.01, 0.0, -0.5, f64::NAN] {
        assert_eq!(nominal.design(&ResistanceFactor { factor, source: Source::user() }).unwrap_err().path(), "factor");
    }
    let none = NominalResistance { force: Force::ZERO, document: Source::user() };
    assert_eq!(none.design(&ResistanceFactor { factor: 0.5, source: Source::user() }).unwrap_err().path(), "force");
}

#[test]
fn bad_input_names_its_field() {
    let s = SpacingFromLoad {
        case: service(0.0, -1.0, Source::user()),
        width: Length::ZERO,
        cap: Some(SpacingCap { spacing: Length::ZERO, source: Source::user() }),
    };
    let e = s.compute().unwrap_err();
    let paths: Vec<&str> = core::iter::once(&e).chain(e.others()).map(crate::error::Error::path).collect();
    assert_eq!(paths, ["case.pressure", "case.resistance.force", "width", "cap.spacing"]);
    let e = FastenerCheck { case: service(1.0, 1.0, Source::user()), width: Length::inches(1), spacing: Length::ZERO }.compute().unwrap_err();
    assert_eq!(e.path(), "spacing");
    let e = SpacingFromLoad { case: service(1e9, 1e-9, Source::user()), width: Length::inches(18), cap: None }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "case.resistance.force"));
}

#[test]
fn caution_numbers_are_this_rooms_and_differ() {
    for (i, c) in ALL.iter().enumerate() {
        assert_eq!(usize::from(c.number), 3200 + i);
    }
}

#[cfg(feature = "serde")]
#[test]
fn a_case_round_trips_and_names_its_level() {
    let case = service(30.0, 150.0, Source::CommonPractice);
    let text = serde_json::to_string(&case).unwrap();
    assert!(text.starts_with(r#"{"service":{"pressure":""#), "{text}");
    assert_eq!(serde_json::from_str::<LoadCase>(&text).unwrap(), case);
}

proptest! {
    #[test]
    fn a_spacing_from_load_just_carries_it(psf in 1.0_f64..200.0, lbf in 10.0_f64..2000.0, inches in 6_i16..40) {
        let case = service(psf, lbf, Source::user());
        let s = SpacingFromLoad { case: case.clone(), width: Length::inches(inches), cap: None };
        let found = s.compute().unwrap();
        let v = FastenerCheck { case, width: Length::inches(inches), spacing: found.greatest };
        prop_assert!((v.compute().unwrap().use_ratio - 1.0).abs() < 1e-9);
        prop_assert_eq!(s.explain().unwrap().0, found);
        prop_assert_eq!(v.explain().unwrap().0, v.compute().unwrap());
    }
}
