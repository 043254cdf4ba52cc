//! The lines that the crew strikes: each is measured from something that is there by then, and lies where the section says.

use super::test_sections::{degrees, len, mm, near, row, slope};
use super::{
    Datum, DripHem, EaveFixing, LayoutLine, RidgeVent, Side, SidewallFlange, Solved, WallCover, coping_tests, covered_tests, curb_back_tests, eave_tests,
    expansion_tests, high_side_tests, rake_tests, ridge_tests, sidewall_tests, step_tests, transition_tests, valley_tests,
};
use crate::error::Error;
use crate::record::Calculation;
use crate::units::{Length, Sum};
use proptest::prelude::*;

/// The place of what a line is measured from, if that is struck before it.
fn datum(earlier: &[LayoutLine], line: &LayoutLine) -> Option<Length> {
    let struck = |name: &str| earlier.iter().find(|l| l.side == line.side && l.name == name).map(|l| l.from_line);
    match &line.datum {
        Datum::JunctionLine => Some(Length::ZERO),
        Datum::TrimLowerEdge => struck("trim lower edge"),
        Datum::TrimTopEdge => struck("trim top edge"),
        Datum::Line(name) => struck(name),
    }
}

fn check(kind: &str, solved: &Solved) {
    assert!(!solved.lines.is_empty(), "{kind}");
    for (i, line) in solved.lines.iter().enumerate() {
        let earlier = &solved.lines[..i];
        assert!(!earlier.iter().any(|l| l.side == line.side && l.name == line.name), "{kind}: {} is struck twice", line.name);
        let from = datum(earlier, line).unwrap_or_else(|| panic!("{kind}: {} is measured from {}, which is not there yet", line.name, line.datum));
        let stepped: Sum = if line.datum == Datum::TrimTopEdge { from - line.from_datum } else { from + line.from_datum };
        assert_eq!(stepped.length().unwrap(), line.from_line, "{kind}: {}", line.name);
        // What lies along the line under the same name lies there too; rounding is a picometre or two.
        for along in solved.along.iter().filter(|a| a.side == line.side && a.name == line.name) {
            assert!((along.from_line.pm() - line.from_line.pm()).abs() <= 2, "{kind}: {}", line.name);
        }
    }
}

/// Every kind at these slopes, with this much stand-off; none where it cannot be built so.
fn kinds(a: f64, b: f64, stand_off: Length) -> Vec<(&'static str, Result<Solved, Error>)> {
    let (first, second) = (slope(a), slope(b));
    let mut eave = eave_tests::asked(first);
    eave.roof.levels.stand_off = stand_off;
    eave.detail.panel.fixed = Some(EaveFixing { up_the_slope: len("3\""), fasteners: row() });
    let mut ridge = ridge_tests::asked(first, second);
    ridge.first.levels.stand_off = stand_off;
    ridge.detail.vent = RidgeVent::Vented { slot: len("1\""), open_ratio: 0.4 };
    for end in [&mut ridge.detail.first, &mut ridge.detail.second] {
        end.flange = len("16\"");
        end.hold_back = len("6\"");
    }
    let mut high = high_side_tests::asked(first);
    high.roof.levels.stand_off = stand_off;
    high.detail.end.flange = len("16\"");
    let mut hip = covered_tests::hip("6:12", "6:12", 90.0);
    (hip.corner.first, hip.corner.second) = (first, second);
    let mut headwall = covered_tests::headwall("4:12");
    headwall.roof.pitch = first;
    headwall.detail.wall.leg = len("20\"");
    let mut let_in = headwall.clone();
    let_in.detail.wall.cover = WallCover::Reglet(Box::new(covered_tests::reglet()));
    let mut rake = rake_tests::asked();
    rake.levels.stand_off = stand_off;
    let mut valley = valley_tests::valley("6:12", "6:12");
    (valley.corner.first, valley.corner.second) = (first, second);
    valley.detail.second.hook = valley_tests::receiver();
    vec![
        ("eave", eave.compute()),
        ("ridge", ridge.compute()),
        ("high side", high.compute()),
        ("hip", hip.compute()),
        ("headwall", headwall.compute()),
        ("headwall with a reglet", let_in.compute()),
        ("rake", rake.compute()),
        ("sidewall on a Z", sidewall_tests::raised().compute()),
        ("sidewall on the pan", sidewall_tests::on_pan().compute()),
        ("valley", valley.compute()),
        ("pitch transition", transition_tests::transition("3:12", "8:12").compute()),
        ("expansion joint along", expansion_tests::along().compute()),
        ("expansion joint across", expansion_tests::across().compute()),
        ("step", step_tests::step(25.0, 20.0).compute()),
        ("coping", coping_tests::coping().compute()),
        ("curb's back", curb_back_tests::curb(slope(25.0)).compute()),
    ]
}

#[test]
fn every_kind_has_its_lines() {
    for (kind, solved) in kinds(25.0, 30.0, len("1/4\"")) {
        check(kind, &solved.unwrap_or_else(|e| panic!("{kind}: {e}")));
    }
}

fn told(solved: &Solved, side: Side) -> Vec<(&str, String, Length)> {
    solved.lines.iter().filter(|l| l.side == side).map(|l| (&*l.name, l.datum.to_string(), l.from_datum)).collect()
}

#[test]
fn the_lines_of_an_eave_by_hand() {
    // A plumb face on a level deck, without a cleat: the corner is the line. Flange and strip are 4 in wide, the strip 1 1/4 in out.
    let mut eave = eave_tests::asked(slope(0.0));
    eave.detail.face.hem = DripHem::Closed { width: len("1/2\"") };
    let solved = eave.compute().unwrap();
    let line = || "the junction line".to_owned();
    let expected = [
        ("trim top edge", line(), len("4\"")),
        ("deck flange's fasteners", "the trim's top edge".to_owned(), len("1\"")),
        ("hook strip, top edge", line(), len("2 3/4\"")),
        ("hook strip's fasteners", "hook strip, top edge".to_owned(), len("-1\"")),
        ("hook strip, lower edge", line(), len("-1 1/4\"")),
        ("panel nose", "hook strip, lower edge".to_owned(), len("-1/4\"")),
    ];
    assert_eq!(told(&solved, Side::First), expected);
    assert!(told(&solved, Side::Second).is_empty());
}

#[test]
fn the_lines_of_a_ridge_by_hand() {
    // Seam tops 48 mm out of 12:12 on both sides: a flange of 8 in and 48 mm ends 8 in down from the line.
    let mut ridge = ridge_tests::asked(slope(45.0), slope(45.0));
    for end in [&mut ridge.detail.first, &mut ridge.detail.second] {
        end.flange = (len("8\"") + len("48 mm")).length().unwrap();
    }
    let solved = ridge.compute().unwrap();
    let (line, face) = ("the junction line", "closure face");
    // The web 1 in up from the edge, a lower flange of 1 1/4 in with tape of 7/8 in along its middle.
    let expected = [
        ("panel end", line, -2.0),
        (face, line, -7.0),
        ("closure tape, lower edge", face, 0.1875),
        ("closure screws", face, 0.625),
        ("closure tape, upper edge", face, 1.0625),
        ("trim lower edge", face, -1.0),
    ];
    for side in [Side::First, Side::Second] {
        let told = told(&solved, side);
        assert_eq!(told.len(), expected.len());
        for (got, want) in told.iter().zip(expected) {
            assert!(got.0 == want.0 && got.1 == want.1 && near(got.2.mm(), want.2 * 25.4), "{got:?} {want:?}");
        }
    }
}

#[test]
fn the_lines_across_the_slope_by_hand() {
    // Toward the roof is positive at a rake: 1/2 in to the edge, 1/8 in and 1 in to the web, 1 in and 1/8 in to the trim's edge.
    let rake = rake_tests::asked().compute().unwrap();
    let expected = [
        ("panel edge", "the junction line", "1/2\""),
        ("web of the Z", "panel edge", "1 1/8\""),
        ("tape under the Z, edge on the rake's side", "web of the Z", "-15/16\""),
        ("screws of the Z", "web of the Z", "-1/2\""),
        ("tape under the Z, edge on the roof's side", "web of the Z", "-1/16\""),
        ("trim's edge", "web of the Z", "1 1/8\""),
    ];
    assert_eq!(told(&rake, Side::First), expected.map(|(name, from, by)| (name, from.to_owned(), len(by))));
    // The cleat's bend lies behind the drip; its edge 2 in above that, its fasteners 1 in below the edge.
    assert_eq!(told(&rake, Side::Second)[1].2, len("-1\""));
    // Away from the roof is positive at a sidewall.
    let mut sidewall = sidewall_tests::raised();
    if let SidewallFlange::OnZ { tape_width, .. } = &mut sidewall.detail.flange {
        *tape_width = len("1\"");
    }
    let solved = sidewall.compute().unwrap();
    let expected = [
        ("panel edge", "the junction line", "-1/2\""),
        ("web of the Z", "the junction line", "-3\""),
        ("tape under the Z, edge on the roof's side", "web of the Z", "1/2\""),
        ("screws of the Z", "web of the Z", "1\""),
        ("tape under the Z, edge on the wall's side", "web of the Z", "1 1/2\""),
        ("trim's edge", "web of the Z", "-3/4\""),
    ];
    assert_eq!(told(&solved, Side::First), expected.map(|(name, from, by)| (name, from.to_owned(), len(by))));
    let expected =
        [("leg, top edge", "the junction line", "9 7/8\""), ("leg fasteners", "leg, top edge", "-1\""), ("cladding, lower edge", "leg, top edge", "-6\"")];
    assert_eq!(told(&solved, Side::Second), expected.map(|(name, from, by)| (name, from.to_owned(), len(by))));
}

#[test]
fn the_lines_of_a_valley_by_hand() {
    let mut valley = valley_tests::valley("6:12", "6:12");
    valley.detail.bed = Length::ZERO;
    valley.detail.second.hook = valley_tests::receiver();
    let solved = valley.compute().unwrap();
    // On the line itself lies the centreline: 3 in to the nose, 1/4 in more to the cleat, 3 1/2 in wide, its tape 1 1/2 in, its screws 1/2 in below that.
    let expected = [
        ("pan edge", "the junction line", 12.0),
        ("pan centreline", "the junction line", 0.0),
        ("offset cleat, front", "pan centreline", 3.25),
        ("cleat tape, lower edge", "offset cleat, front", 2.0),
        ("cleat screws", "offset cleat, front", 3.0),
        ("cleat back", "offset cleat, front", 3.5),
        ("panel nose", "pan centreline", 3.0),
    ];
    let first = told(&solved, Side::First);
    assert_eq!(first.len(), expected.len());
    for (got, want) in first.iter().zip(expected) {
        assert!(got.0 == want.0 && got.1 == want.1 && near(got.2.mm(), want.2 * 25.4), "{got:?} {want:?}");
    }
    assert_eq!(told(&solved, Side::Second).iter().map(|l| l.0).collect::<Vec<_>>(), ["pan edge", "pan centreline", "panel nose"]);
}

proptest! {
    #[test]
    fn lines_step_from_what_is_there(a in 5.0_f64..50.0, b in 5.0_f64..50.0, stand_off in 0_i32..200, kick in 20.0_f64..60.0) {
        let mut built = 0;
        for (kind, solved) in kinds(a, b, mm(stand_off)) {
            if let Ok(solved) = solved {
                check(kind, &solved);
                built += 1;
            }
        }
        // What does not depend on the slopes is always built.
        prop_assert!(built >= 3, "{}", built);
        let mut high = high_side_tests::asked(slope(a));
        high.detail.face.kick = degrees(kick);
        high.detail.end.flange = len("16\"");
        check("high side", &high.compute().unwrap());
    }
}
