use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::{AreaUnit, Length, LengthUnit, Volume, VolumeUnit};
use proptest::prelude::*;

fn inches(text: &str) -> Length {
    Length::parse_in(text, LengthUnit::Inch).unwrap()
}

fn order(section: BeadSection, tube: &str) -> BeadOrder {
    BeadOrder { section, length: Length::feet(1), waste_ratio: 0.0, tube: Volume::parse(tube).unwrap() }
}

#[test]
fn tubes_by_exact_volume() {
    // 1 US fluid ounce is 231/128 cubic inches, 1 mL is 1 cm3.
    let cubic = |t: &str| Volume::parse(t).unwrap().get(VolumeUnit::CubicInch);
    assert!((cubic("300 mL") - 18.31).abs() < 0.005);
    assert!((cubic("29 floz") - 52.34).abs() < 0.005);
    assert!((cubic("10.1 floz") - 18.23).abs() < 0.005);
}

#[test]
fn feet_from_a_tube() {
    // V / (12 w d) for a tube of 10.1 fl oz, worked out by hand from 18.227 in3; a chart in circulation prints twice these.
    for (w, d, feet) in [("1/4", "1/4", 24.3), ("3/8", "1/4", 16.2), ("1/2", "1/4", 12.2), ("3/4", "1/2", 4.05)] {
        let o = order(BeadSection::Rectangular { width: inches(w), depth: inches(d) }, "10.1 floz");
        let found = o.compute().unwrap().length_per_tube.get(LengthUnit::Foot);
        assert!((found - feet).abs() < 0.06, "{w} {d}: {found}");
    }
}

#[test]
fn sections() {
    let area = |s: BeadSection| s.area().unwrap().get(AreaUnit::SquareInch);
    assert!((area(BeadSection::Round { diameter: inches("1/2") }) - core::f64::consts::PI / 16.0).abs() < 1e-12);
    assert!((area(BeadSection::Fillet { leg: inches("1/2") }) - 0.125).abs() < 1e-12);
    assert!((area(BeadSection::Rectangular { width: inches("1/2"), depth: inches("1/4") }) - 0.125).abs() < 1e-12);
}

#[test]
fn whole_tubes_are_bought() {
    // One square inch by 231 inches is a gallon, which is exactly one gallon tube.
    let mut o = order(BeadSection::Rectangular { width: inches("1"), depth: inches("1") }, "1 gal");
    o.length = inches("231");
    assert_eq!(o.compute().unwrap().tubes, 1);
    o.length = inches("231.01");
    assert_eq!(o.compute().unwrap().tubes, 2);
    (o.length, o.waste_ratio) = (inches("231"), 0.1);
    assert_eq!(o.compute().unwrap().tubes, 2);
}

#[test]
fn bad_input_names_its_field() {
    let mut o = order(BeadSection::Rectangular { width: Length::ZERO, depth: inches("-1") }, "0 mL");
    (o.length, o.waste_ratio) = (Length::ZERO, -0.1);
    let e = o.compute().unwrap_err();
    let paths: Vec<&str> = core::iter::once(&e).chain(e.others()).map(crate::error::Error::path).collect();
    assert_eq!(paths, ["section.width", "section.depth", "length", "waste_ratio", "tube"]);
    for s in [BeadSection::Round { diameter: Length::ZERO }, BeadSection::Fillet { leg: Length::ZERO }] {
        assert_eq!(s.area().unwrap_err().kind(), ErrorKind::OutOfRange);
    }
    let mut o = order(BeadSection::Round { diameter: Length::feet(1) }, "1 mL");
    o.length = Length::feet(30_000);
    assert_eq!(o.compute().unwrap_err().kind(), ErrorKind::TooLarge);
}

proptest! {
    #[test]
    fn tubes_hold_what_is_needed_and_no_tube_is_spare(w in 1_i32..128, d in 1_i32..128, feet in 1_i16..2000, waste in 0.0_f64..0.5, millilitres in 50.0_f64..1000.0) {
        let o = BeadOrder {
            section: BeadSection::Rectangular { width: Length::inches_64(w), depth: Length::inches_64(d) },
            length: Length::feet(feet),
            waste_ratio: waste,
            tube: Volume::new(millilitres, VolumeUnit::Millilitre).unwrap(),
        };
        let found = o.compute().unwrap();
        let needed = f64::from(w) / 64.0 * f64::from(d) / 64.0 * f64::from(feet) * 12.0 * 16.387_064 * (1.0 + waste);
        let n = f64::from(found.tubes);
        prop_assert!(n * millilitres >= needed * (1.0 - 1e-8) && (n - 1.0) * millilitres < needed);
        prop_assert_eq!(o.explain().unwrap().0, found);
    }
}
