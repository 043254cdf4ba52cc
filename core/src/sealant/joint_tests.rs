use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::{Expansion, Length, LengthUnit, TemperatureDifference};
use proptest::prelude::*;

fn inches(text: &str) -> Length {
    Length::parse_in(text, LengthUnit::Inch).unwrap()
}

fn depth(rule: DepthRule, width: &str) -> Length {
    JointDepth { rule, width: inches(width) }.compute().unwrap()
}

#[test]
fn printed_depths() {
    // Allen, Architectural Detailing: 1/4 -> 1/4, 3/4 -> 3/8, 1 1/4 -> 1/2.
    for (w, d) in [("1/4", "1/4"), ("3/4", "3/8"), ("1 1/4", "1/2")] {
        assert_eq!(depth(DepthRule::HalfWidth, w), inches(d));
    }
    // Construction Waterproofing Handbook, p. 5.6: depth as width up to 1/2 in, half of it above, 1/4 to 1/2 in.
    for (w, d) in [("1/4", "1/4"), ("3/8", "3/8"), ("1/2", "1/2"), ("3/4", "3/8"), ("1", "1/2")] {
        assert_eq!(depth(DepthRule::FullWidthThenHalf, w), inches(d));
    }
}

#[test]
fn joint_widths() {
    // Cornell ARCH 262 (2002): X 50, e 3.6e-6, L 240 in, dT 95 degF, M 0.0002 L + 0.125 in, t 0.125 in.
    let w = JointWidth {
        expansion: Expansion::parse("3.6e-6 /degF").unwrap(),
        length: inches("240"),
        range: TemperatureDifference::parse("95 degF").unwrap(),
        other_movement: inches("0.173"),
        tolerance: inches("0.125"),
        capability_ratio: 0.5,
    };
    assert!((w.compute().unwrap().get(LengthUnit::Inch) - 0.635).abs() < 0.0005);
    assert_eq!(w.explain().unwrap().0, w.compute().unwrap());
    // A glazing association's bulletin on sealant joints: 240 in x 0.000023 x 80, which is right for kelvins: 0.44 in.
    let g = JointWidth {
        expansion: Expansion::parse("0.000023 /K").unwrap(),
        range: TemperatureDifference::parse("80 K").unwrap(),
        other_movement: Length::ZERO,
        tolerance: Length::ZERO,
        capability_ratio: 1.0,
        ..w
    };
    assert!((g.compute().unwrap().get(LengthUnit::Inch) - 0.44).abs() < 0.005);
}

#[test]
fn bad_input_names_its_field() {
    let refused = |rule, w| JointDepth { rule, width: inches(w) }.compute().unwrap_err();
    for (rule, w) in
        [(DepthRule::HalfWidth, "15/64"), (DepthRule::HalfWidth, "2 1/64"), (DepthRule::FullWidthThenHalf, "1 1/64"), (DepthRule::FullWidthThenHalf, "0")]
    {
        let e = refused(rule, w);
        assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "width"));
    }
    let w = JointWidth {
        expansion: Expansion::parse("-1e-6 /K").unwrap(),
        length: inches("-1"),
        range: TemperatureDifference::parse("-1 K").unwrap(),
        other_movement: inches("-1"),
        tolerance: inches("-1"),
        capability_ratio: f64::NAN,
    };
    let e = w.compute().unwrap_err();
    let mut paths: Vec<&str> = core::iter::once(&e).chain(e.others()).map(crate::error::Error::path).collect();
    paths.sort_unstable();
    assert_eq!(paths, ["capability_ratio", "expansion", "length", "other_movement", "range", "tolerance"]);
}

proptest! {
    #[test]
    fn depth_stays_in_its_band_and_explaining_agrees(sixty_fourths in 16_i32..=64, half: bool) {
        let rule = if half { DepthRule::HalfWidth } else { DepthRule::FullWidthThenHalf };
        let j = JointDepth { rule, width: Length::inches_64(sixty_fourths) };
        let d = j.compute().unwrap();
        prop_assert!(d >= inches("1/4") && d <= inches("1/2") && d <= j.width);
        prop_assert_eq!(j.explain().unwrap().0, d);
    }
}
