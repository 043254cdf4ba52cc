//! The parting of a ridge that rides, by hand.

use super::{CapParting, HeatRange, PartingSide};
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::{Angle, Expansion, Length, Temperature};

fn range() -> HeatRange {
    let at = |text: &str| Temperature::parse(text).unwrap();
    HeatRange { expansion: Expansion::parse("12e-6 /K").unwrap(), coldest: at("-20 degC"), laid: at("20 degC"), hottest: at("70 degC") }
}

fn side(slope: &str, metres: i16) -> PartingSide {
    PartingSide { slope: Angle::parse(slope).unwrap(), meeting: Angle::SQUARE, to_fixed: Length::parse(&format!("{metres} m")).unwrap() }
}

fn near(a: Length, b: f64) -> bool {
    (a.mm() - b).abs() < 1e-6
}

#[test]
fn two_unequal_sides_by_hand() {
    // Steel, 12e-6: 10 m make 6 mm for 50 K up and 4.8 mm for 40 K down, 20 m twice that. cos 30 = sqrt(3)/2, cos 60 = 1/2.
    let asked = CapParting { first: Some(side("30 deg", 10)), second: Some(side("60 deg", 20)), range: range() };
    let (out, sheet) = asked.explain().unwrap();
    assert_eq!(asked.compute().unwrap(), out);
    assert!(!sheet.entries.is_empty());
    let root = 3.0_f64.sqrt();
    assert!(near(out.closes, 3.0 * root + 6.0) && near(out.opens, 2.4 * root + 4.8), "{out:?}");
    let (one, two) = (out.first.unwrap(), out.second.unwrap());
    assert!(near(one.rises, 3.0) && near(one.falls, 2.4) && near(two.rises, 6.0 * root) && near(two.falls, 4.8 * root));
    // At a hip the seams meet the line at 45 degrees: the part square to it is 1/sqrt(2) of all.
    let skew = PartingSide { meeting: Angle::parse("45 deg").unwrap(), ..side("0 deg", 10) };
    let hip = CapParting { first: None, second: Some(skew), range: range() }.compute().unwrap();
    assert!(near(hip.closes, 6.0 / 2.0_f64.sqrt()) && hip.first.is_none() && near(hip.second.unwrap().rises, 0.0));
}

#[test]
fn what_means_nothing_is_refused_together() {
    let bad = PartingSide { slope: Angle::parse("90 deg").unwrap(), meeting: Angle::ZERO, to_fixed: Length::inches(-1) };
    let e = CapParting { first: Some(bad), second: None, range: range() }.compute().unwrap_err();
    let mut paths: Vec<&str> = std::iter::once(e.path()).chain(e.others().iter().map(|o| o.path())).collect();
    paths.sort_unstable();
    assert_eq!(paths, ["first.meeting", "first.slope", "first.to_fixed"]);
    let none = CapParting { first: None, second: None, range: range() }.compute().unwrap_err();
    assert_eq!((none.kind(), none.path()), (ErrorKind::Missing, "first"));
}
