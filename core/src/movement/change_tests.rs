use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::{Angle, Expansion, Length, LengthUnit, Temperature, TemperatureDifference, TemperatureDifferenceUnit};
use proptest::prelude::*;

fn change(expansion: &str, length: &str, difference: &str) -> Length {
    LengthChange {
        expansion: Expansion::parse(expansion).unwrap(),
        length: Length::parse(length).unwrap(),
        difference: TemperatureDifference::parse(difference).unwrap(),
    }
    .compute()
    .unwrap()
}

/// Copper Tube in Buildings (Publication 88), Table 6, p. 8: metres, kelvins, millimetres printed.
const COPPER_TABLE: &[(&str, i32, f64)] = &[
    ("0.1 m", 30, 0.05),
    ("0.1 m", 60, 0.10),
    ("0.1 m", 70, 0.12),
    ("0.1 m", 80, 0.13),
    ("0.1 m", 100, 0.17),
    ("0.5 m", 30, 0.25),
    ("0.5 m", 40, 0.34),
    ("0.5 m", 50, 0.42),
    ("0.5 m", 60, 0.50),
    ("0.5 m", 70, 0.59),
    ("0.5 m", 80, 0.67),
    ("0.5 m", 90, 0.76),
    ("1 m", 30, 0.50),
    ("1 m", 40, 0.67),
    ("1 m", 50, 0.84),
    ("1 m", 70, 1.18),
    ("1 m", 100, 1.68),
    ("2 m", 30, 1.01),
    ("2 m", 70, 2.35),
    ("2 m", 80, 2.69),
    ("2 m", 100, 3.36),
    ("3 m", 40, 2.02),
    ("3 m", 60, 3.02),
    ("3 m", 70, 3.53),
    ("3 m", 80, 4.03),
    ("3 m", 90, 4.54),
    ("3 m", 100, 5.04),
    ("4 m", 40, 2.69),
    ("4 m", 50, 3.36),
    ("4 m", 60, 4.03),
    ("4 m", 70, 4.70),
    ("4 m", 100, 6.72),
    ("5 m", 40, 3.36),
    ("5 m", 50, 4.20),
    ("5 m", 60, 5.04),
    ("5 m", 70, 5.88),
    ("5 m", 100, 8.40),
    ("10 m", 30, 5.04),
    ("10 m", 40, 6.72),
    ("10 m", 60, 10.08),
    ("10 m", 80, 13.44),
    ("10 m", 90, 15.12),
    ("25 m", 30, 12.60),
    ("25 m", 50, 21.00),
    ("25 m", 60, 25.20),
    ("25 m", 70, 29.40),
    ("25 m", 80, 33.60),
    ("25 m", 90, 37.80),
];

#[test]
fn a_published_table_of_copper() {
    for &(length, kelvins, printed) in COPPER_TABLE {
        let found = change("16.8e-6 /K", length, &format!("{kelvins} K")).get(LengthUnit::Millimetre);
        // Half a unit of the last printed digit.
        assert!((found - printed).abs() <= 0.005 + 1e-9, "{length} {kelvins} K: {found} against {printed}");
    }
    // The same table prints 5.40 mm for 4 m and 80 K, where its own coefficient gives 5.376: a misprint for 5.38.
    let misprinted = change("16.8e-6 /K", "4 m", "80 K").get(LengthUnit::Millimetre);
    assert!((misprinted - 5.376).abs() < 1e-6);
}

#[test]
fn published_examples_in_inches() {
    // Copper Flashings, p. 60: one inch of copper, 60 degF, coefficient .0000095.
    assert!((change("9.5e-6 /degF", "1 in", "60 degF").get(LengthUnit::Inch) - 0.00057).abs() < 5e-9);
    assert!((change("9.5e-6 /degF", "1 in", "-60 degF").get(LengthUnit::Inch) + 0.00057).abs() < 5e-9);
    // Construction Canada, Nov 2016, example 2: 40 ft of steel at 6.7e-6 (8.04e-5 in for each ft), 98.1 degF.
    assert!((change("6.7e-6 /degF", "40 ft", "98.1 degF").get(LengthUnit::Inch) - 0.3155).abs() < 5e-5);
    // The same, example 1: 40 ft of steel, 160 degF, 0.51 in.
    assert!((change("6.7e-6 /degF", "40 ft", "160 degF").get(LengthUnit::Inch) - 0.51).abs() < 0.005);
    // Ten feet and 100 degF with the coefficients of the Copper Development Association's handbook (Table 1.1A), of its fact sheet of Aug 2001, and of steel.
    assert!((change("9.8e-6 /degF", "10 ft", "100 degF").get(LengthUnit::Inch) - 0.118).abs() < 0.0005);
    assert!((change("9.33e-6 /degF", "10 ft", "100 degF").get(LengthUnit::Inch) - 0.1120).abs() < 5e-5);
    assert!((change("6.7e-6 /degF", "10 ft", "100 degF").get(LengthUnit::Inch) - 0.0804).abs() < 5e-5);
}

#[test]
fn ranges_of_temperature_are_not_temperatures() {
    let at = |t: &str| Temperature::parse(t).unwrap();
    let range = |a: &str, b: &str| at(b).above(at(a)).get(TemperatureDifferenceUnit::DegreeFahrenheit);
    // Copper Flashings, p. 60, and Construction Canada, Nov 2016; the latter prints the second as 54.5 C, which is 98.1 degF.
    assert!((range("-20 degF", "150 degF") - 170.0).abs() < 1e-9);
    assert!((range("-26.5 degF", "88.9 degF") - 115.4).abs() < 1e-9);
    assert!((at("88.9 degF").above(at("-26.5 degF")).get(TemperatureDifferenceUnit::Kelvin) - 64.111).abs() < 0.0005);
}

#[test]
fn bad_input_names_its_field() {
    let e = LengthChange { expansion: Expansion::parse("-1e-6 /K").unwrap(), length: Length::from_pm(-1), difference: TemperatureDifference::ZERO }
        .compute()
        .unwrap_err();
    assert_eq!((e.kind(), e.path(), e.others()[0].path()), (ErrorKind::OutOfRange, "length", "expansion"));
    let e = LengthChange { expansion: Expansion::parse("1 /K").unwrap(), length: Length::MAX, difference: TemperatureDifference::parse("100 K").unwrap() }
        .compute();
    assert_eq!(e.unwrap_err().kind(), ErrorKind::Overflow);
    for degrees in [0.0, 180.0, -30.0, 270.0] {
        let e = across_line(Length::inches(1), Angle::degrees_from(degrees).unwrap()).unwrap_err();
        assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "meeting"));
    }
}

proptest! {
    #[test]
    fn the_parts_make_the_whole(pm in -1_000_000_000_000_i64..1_000_000_000_000, degrees in 0.001_f64..179.999) {
        let parts = across_line(Length::from_pm(pm), Angle::degrees_from(degrees).unwrap()).unwrap();
        let (a, b, whole) = (parts.across.mm(), parts.along.mm(), Length::from_pm(pm).mm());
        prop_assert!((crate::num::hypot(a, b) - whole.abs()).abs() < 1e-8);
        prop_assert!(a * whole >= 0.0);
    }

    #[test]
    fn explaining_computes_the_same(pm in 0_i64..100_000_000_000_000, alpha in 0.0_f64..4e-5, kelvins in -150.0_f64..150.0) {
        let c = LengthChange {
            expansion: Expansion::new(alpha, crate::units::ExpansionUnit::PerKelvin).unwrap(),
            length: Length::from_pm(pm),
            difference: TemperatureDifference::new(kelvins, TemperatureDifferenceUnit::Kelvin).unwrap(),
        };
        let (out, sheet) = c.explain().unwrap();
        prop_assert_eq!(out, c.compute().unwrap());
        prop_assert_eq!(sheet.steps().len(), 1);
    }
}
