use super::{CoilTotals, CoilUse};
use crate::error::ErrorKind;
use crate::metal::{Alloy, Sheet};
use crate::record::Calculation;
use crate::units::{Length, MassUnit};

fn of(colour: &str, alloy: Alloy, width: i16, feet: i16) -> CoilUse {
    CoilUse { colour: colour.into(), sheet: Sheet::new(alloy, Length::mils(32), None).unwrap(), width: Length::inches(width), length: Length::feet(feet) }
}

#[test]
fn masses_follow_the_metal_and_totals_keep_colours_apart() {
    let uses = vec![
        of("a", Alloy::Aluminium3003, 24, 100),
        of("b", Alloy::Aluminium3003, 24, 100),
        of("a", Alloy::Aluminium3003, 24, 50),
        of("a", Alloy::Aluminium3003, 20, 50),
    ];
    let totals = CoilTotals { uses }.compute().unwrap();
    assert_eq!(
        totals.iter().map(|t| (t.colour.as_str(), t.width, t.length)).collect::<Vec<_>>(),
        [("a", Length::inches(24), Length::feet(150)), ("b", Length::inches(24), Length::feet(100)), ("a", Length::inches(20), Length::feet(50)),]
    );
    // 300 ft2 of 0.032 in aluminium of 2730 kg/m3 (ASTM B209, alloy 3003).
    let expected = 300.0 * 0.3048 * 0.3048 * 0.032 * 0.0254 * 2730.0;
    assert!((totals[0].mass.get(MassUnit::Kilogram) - expected).abs() < 0.005 * expected, "{} {expected}", totals[0].mass);
}

#[test]
fn every_bad_use_is_named() {
    let mut bad = of("a", Alloy::Aluminium3003, 0, 1);
    bad.length = Length::inches(-1);
    let e = CoilTotals { uses: vec![of("a", Alloy::Aluminium3003, 24, 0), bad] }.compute().unwrap_err();
    assert_eq!((e.path(), e.others()[0].path()), ("uses[1].width", "uses[1].length"));
    assert_eq!(CoilTotals { uses: vec![] }.compute().unwrap_err().kind(), ErrorKind::Missing);
}
