//! Water paths and the shelter of fasteners by hand, for every kind; and that what is wrong is found.

use super::test_sections::{degrees, len, levels, slope};
use super::{
    Along, FacePath, FlangeLies, LeastRule, Levels, PathFace, PathFailure, PathRule, PathSheet, RidgeVent, SectionWater, Shelter, Side, Solved, WallCover,
    WaterCheck, WaterLevel, WaterPath, WaterRules, WaterSide, coping_tests, covered_tests, curb_back_tests, eave_tests, expansion_tests, high_side_tests,
    rake_tests, ridge_tests, sidewall_tests, transition_tests, valley_tests,
};
use crate::error::ErrorKind;
use crate::record::{Calculation, Source};
use crate::roof::Water;
use crate::units::Length;
use proptest::prelude::*;

fn sheet(name: &str, low: i16, high: i16, layer: u32) -> PathSheet {
    PathSheet { name: name.into(), low: Length::inches(low), high: Length::inches(high), layer }
}

fn side(side: Side, rise: f64, water: Water, levels: Levels) -> WaterSide {
    WaterSide { side, rise: degrees(rise), water, levels }
}

fn water(solved: &Solved, sides: &[WaterSide]) -> WaterCheck {
    let rules = WaterRules::default();
    let asked = SectionWater { solved, sides, rules: &rules };
    let (out, sheet) = asked.explain().unwrap();
    assert_eq!(asked.compute().unwrap(), out);
    assert!(!sheet.steps().is_empty());
    out
}

fn path(check: &WaterCheck, face: PathFace, level: WaterLevel) -> &FacePath {
    check.paths.iter().find(|p| p.face == face && p.level == level).unwrap()
}

fn laps(path: &FacePath) -> Vec<(&str, &str, f64)> {
    path.check.laps.iter().map(|l| (&*l.upper, &*l.lower, (l.overlap.mm() / 25.4 * 1e6).round() / 1e6)).collect()
}

fn shelter<'a>(check: &'a WaterCheck, name: &str) -> &'a Shelter {
    &check.rows.iter().find(|r| r.name == name).unwrap_or_else(|| panic!("{name}: {:?}", check.rows)).shelter
}

fn under(name: &str) -> Shelter {
    Shelter::Under(name.into())
}

/// What the crew laps itself has the room that the section leaves for it: up the curbs of a joint as much as they are high, under a coping as much as its face comes down over
/// what comes up the wall.
#[test]
fn laps_that_the_crew_makes_have_so_much_room() {
    let joint = expansion_tests::along();
    let solved = joint.compute().unwrap();
    let sides = [Side::First, Side::Second].map(|s| side(s, 0.0, Water::Along, levels()));
    let of = |least: &str| {
        let past = LeastRule { least: len(least), ..LeastRule::UNDERLAYMENT_PAST_LINE };
        let rules = WaterRules { underlayment_past_line: past, ..WaterRules::default() };
        SectionWater { solved: &solved, sides: &sides, rules: &rules }.compute().unwrap()
    };
    let (just, short) = (of("210 mm"), of("211 mm"));
    for (face, check) in [(PathFace::First, &just), (PathFace::Second, &just)] {
        let under = path(check, face, WaterLevel::Underlayment);
        assert!(under.check.holds && under.check.laps[0].overlap == joint.detail.curb_height && under.check.laps[0].overlap == len("210 mm"));
    }
    let fault = &path(&short, PathFace::First, WaterLevel::Underlayment).check.faults[0];
    assert_eq!((fault.failure, fault.short, fault.at), (PathFailure::ShortLap, len("1 mm"), Length::ZERO));
    assert!(!short.holds() && short.cautions.iter().any(|c| c.code().name == "water-path-fails"), "{:?}", short.cautions);
    // The membrane of a wall's top.
    let coping = coping_tests::coping();
    let lap = coping.detail.roof_side.lap().unwrap().unwrap();
    let solved = coping.compute().unwrap();
    let at = |least: Length| {
        let rules = WaterRules { underlayment_over_metal: LeastRule { least, ..LeastRule::IRC_OVER_EDGE_METAL }, ..WaterRules::default() };
        coping.water(&mut crate::record::Off, &solved, &rules).unwrap()
    };
    let told = path(&at(lap), PathFace::FirstUpright, WaterLevel::Underlayment).check.clone();
    assert_eq!((told.holds, told.laps[0].overlap), (true, lap));
    let told = path(&at((lap + len("2 mm")).length().unwrap()), PathFace::FirstUpright, WaterLevel::Underlayment).check.clone();
    assert_eq!((told.holds, told.faults[0].short, told.faults[0].at), (false, len("2 mm"), (-coping.detail.roof_side.depth).length().unwrap()));
}

#[test]
fn upper_over_lower_by_hand() {
    let rule =
        |upper: &str, lower: &str, inches| PathRule { upper: upper.into(), lower: lower.into(), least: Length::inches(inches), source: Source::CommonPractice };
    // Three sheets shingled down a slope: 10 over 6 by 4 in, 6 over 2 by 3 in where the rule asks 4.
    let right = vec![sheet("c", 9, 20, 3), sheet("b", 4, 13, 2), sheet("a", 0, 7, 1)];
    let check = WaterPath { sheets: right.clone(), rules: vec![rule("c", "b", 4), rule("b", "a", 4)] }.compute().unwrap();
    assert_eq!(check.order, ["c", "b", "a"]);
    assert_eq!(check.laps.iter().map(|l| (l.overlap, l.holds)).collect::<Vec<_>>(), [(Length::inches(4), true), (Length::inches(3), false)]);
    assert_eq!((check.faults.len(), check.faults[0].failure, check.faults[0].short), (1, PathFailure::ShortLap, Length::inches(1)));
    // The lower over the upper: water on b runs behind the upper edge of a, 7 in up.
    let wrong = WaterPath { sheets: vec![sheet("b", 4, 13, 1), sheet("a", 0, 7, 2)], rules: vec![] }.compute().unwrap();
    assert_eq!((wrong.holds, wrong.faults[0].failure, wrong.faults[0].at), (false, PathFailure::RunsBehind, Length::inches(7)));
    assert_eq!(wrong.faults[0].message(), "water on the b runs behind the upper edge of the a");
    // A third that covers that edge cures it: a cleat on a flange, under the panels.
    let cured = WaterPath { sheets: vec![sheet("b", 4, 13, 1), sheet("a", 0, 7, 2), sheet("panels", 5, 40, 3)], rules: vec![] }.compute().unwrap();
    assert!(cured.holds);
    // An open stretch of 2 in between two sheets.
    let open = WaterPath { sheets: vec![sheet("b", 9, 13, 1), sheet("a", 0, 7, 2)], rules: vec![] }.compute().unwrap();
    assert_eq!((open.faults[0].failure, open.faults[0].at, open.faults[0].short), (PathFailure::Open, Length::inches(9), Length::inches(2)));
}

#[test]
fn paths_without_meaning_are_refused_together() {
    let bad = WaterPath {
        sheets: vec![sheet("a", 0, 7, 1), sheet("a", 3, 3, 2), sheet("b", 2, 9, 1)],
        rules: vec![PathRule { upper: "a".into(), lower: "b".into(), least: Length::inches(-1), source: Source::CommonPractice }],
    };
    let e = bad.compute().unwrap_err();
    let paths: Vec<(ErrorKind, &str)> = std::iter::once(&e).chain(e.others()).map(|e| (e.kind(), e.path())).collect();
    use ErrorKind::{Conflict, OutOfRange};
    assert_eq!(paths, [(OutOfRange, "sheets[1].high"), (Conflict, "sheets[1].name"), (Conflict, "sheets[2].layer"), (OutOfRange, "rules[0].least")]);
    let none = WaterPath { sheets: vec![], rules: vec![] }.compute().unwrap_err();
    assert_eq!((none.kind(), none.path()), (ErrorKind::Missing, "sheets"));
}

#[test]
fn an_eave_by_hand() {
    let mut eave = eave_tests::asked(slope(0.0));
    let at = [side(Side::First, 0.0, Water::Toward, eave.roof.levels)];
    let check = water(&eave.compute().unwrap(), &at);
    assert!(check.holds(), "{check:?}");
    // A flange of 4 in on the deck, panels over all of it.
    let metal = path(&check, PathFace::First, WaterLevel::Metal);
    assert_eq!((laps(metal)[0].0, laps(metal)[0].1), ("panels", "eave trim"));
    assert!(laps(metal)[0].2 >= 4.0);
    // The cleat of 28 mils behind the face carries the corner, and the flange with it, so far out from the line.
    assert_eq!(laps(path(&check, PathFace::First, WaterLevel::Underlayment)), [("underlayment", "eave trim", 3.972)]);
    assert_eq!((shelter(&check, "deck flange's fasteners"), shelter(&check, "hook strip's fasteners")), (&under("panels"), &under("panels")));
    // On the underlayment: water runs behind the flange's upper edge, as the section itself says.
    eave.detail.flange.lies = FlangeLies::OverUnderlayment;
    let wrong = water(&eave.compute().unwrap(), &at);
    let path = path(&wrong, PathFace::First, WaterLevel::Underlayment);
    assert_eq!((path.check.holds, path.check.faults[0].failure, path.check.faults[0].at), (false, PathFailure::RunsBehind, len("3.972\"")));
    assert!(wrong.cautions.is_empty());
    // Panels screwed at the eave on purpose: nothing lies over those screws.
    eave.detail.panel.fixed = Some(super::EaveFixing { up_the_slope: len("3\""), fasteners: super::test_sections::row() });
    let fixed = water(&eave.compute().unwrap(), &at);
    assert_eq!(shelter(&fixed, "panel fasteners"), &Shelter::None);
    assert_eq!(fixed.cautions.iter().map(|c| c.code().number).collect::<Vec<_>>(), [6094]);
}

#[test]
fn a_ridge_by_hand() {
    // Flanges of 8 in and 48 mm whose edge lies 8 in down, panels held back 2 in: the cap laps them by 6 in.
    let mut ridge = ridge_tests::asked(slope(45.0), slope(45.0));
    for end in [&mut ridge.detail.first, &mut ridge.detail.second] {
        end.flange = (len("8\"") + len("48 mm")).length().unwrap();
    }
    let at = [side(Side::First, 45.0, Water::Away, levels()), side(Side::Second, -45.0, Water::Away, levels())];
    let check = water(&ridge.compute().unwrap(), &at);
    assert!(check.holds(), "{check:?}");
    for face in [PathFace::First, PathFace::Second] {
        let found = laps(path(&check, face, WaterLevel::Metal));
        assert_eq!((found.len(), found[0].0, found[0].1, found[0].2), (1, check.paths[0].check.laps[0].upper.as_str(), "panels", 6.0));
    }
    // The closures' screws under the cap, the rivets through its turned-down edge.
    assert!(matches!(shelter(&check, "closure screws"), Shelter::Under(_)));
    assert_eq!(shelter(&check, "rivets"), &Shelter::Face);
    // Without a turned-down edge they stand in the water, and the section says so itself.
    for end in [&mut ridge.detail.first, &mut ridge.detail.second] {
        (end.drip.leg, end.drip.hem) = (Length::ZERO, Length::ZERO);
    }
    let flat = water(&ridge.compute().unwrap(), &at);
    assert_eq!(shelter(&flat, "rivets"), &Shelter::None);
    assert!(!flat.holds() && flat.cautions.is_empty());
}

/// Air passes a slot: the underlayment ends at its edge, under the cap. Geometry, no published source.
#[test]
fn underlayment_ends_at_a_slot() {
    let mut ridge = ridge_tests::asked(slope(45.0), slope(45.0));
    for end in [&mut ridge.detail.first, &mut ridge.detail.second] {
        end.flange = (len("8\"") + len("48 mm")).length().unwrap();
    }
    ridge.detail.vent = RidgeVent::Vented { slot: len("1\""), open_ratio: 0.5 };
    let solved = ridge.compute().unwrap();
    let at = [side(Side::First, 45.0, Water::Away, levels()), side(Side::Second, -45.0, Water::Away, levels())];
    let check = water(&solved, &at);
    for (face, of) in [(PathFace::First, Side::First), (PathFace::Second, Side::Second)] {
        assert!(solved.lines.iter().any(|l| l.side == of && l.name == "trim lower edge" && l.from_line == len("-8\"")));
        let found = laps(path(&check, face, WaterLevel::Underlayment));
        // From the slot's edge, 1 in down, to the cap's edge.
        assert_eq!(found, [("ridge cap", "underlayment", 7.0)]);
    }
    assert!(check.holds());
}

#[test]
fn a_valley_by_hand() {
    // A leg of 12 in, the panels' nose 3 in from the centreline, a cleat to 6 3/4 in: panels over the pan by 9 in, underlayment by 5 1/4 in.
    let mut valley = valley_tests::valley("6:12", "6:12");
    valley.detail.bed = Length::ZERO;
    let backing = valley.corner.compute().unwrap().first.backing.degrees();
    let at = [side(Side::First, -backing, Water::Toward, valley.first), side(Side::Second, backing, Water::Toward, valley.second)];
    let check = water(&valley.compute().unwrap(), &at);
    assert!(check.holds(), "{check:?}");
    assert_eq!(laps(path(&check, PathFace::First, WaterLevel::Metal)), [("panels", "valley pan", 9.0)]);
    assert_eq!(laps(path(&check, PathFace::Second, WaterLevel::Underlayment)), [("underlayment", "valley pan", 5.25)]);
    assert_eq!(shelter(&check, "cleat screws"), &under("panels"));
    // A stricter rule fails, by how much is said: 9 in where 10 are asked.
    let mut rules = WaterRules::default();
    rules.panels_over_metal.least = len("10\"");
    let strict = SectionWater { solved: &valley.compute().unwrap(), sides: &at, rules: &rules }.compute().unwrap();
    assert_eq!(strict.cautions.iter().map(|c| c.code().number).collect::<Vec<_>>(), [6093, 6093]);
    assert!(strict.cautions[0].message().contains("25.4 mm more of the valley pan"), "{}", strict.cautions[0].message());
    rules.panels_over_metal.least = len("-1\"");
    let e = SectionWater { solved: &valley.compute().unwrap(), sides: &at, rules: &rules }.compute().unwrap_err();
    assert_eq!(e.path(), "rules.panels_over_metal.least");
    let twice = SectionWater { solved: &valley.compute().unwrap(), sides: &[at[0], at[0]], rules: &WaterRules::default() }.compute().unwrap_err();
    assert_eq!((twice.kind(), twice.path()), (ErrorKind::Conflict, "sides[1].side"));
}

#[test]
fn a_transition_and_a_curbs_back() {
    let transition = transition_tests::transition("3:12", "8:12");
    let (low, high) = (transition.lower.pitch.angle().degrees(), transition.upper.pitch.angle().degrees());
    let at = [side(Side::First, low, Water::Away, transition.lower.levels), side(Side::Second, high, Water::Toward, transition.upper.levels)];
    let solved = transition.compute().unwrap();
    let check = water(&solved, &at);
    let down = path(&check, PathFace::First, WaterLevel::Metal);
    assert!(down.check.holds && down.check.laps[0].lower == "panels", "{down:?}");
    let up = path(&check, PathFace::Second, WaterLevel::Metal);
    assert!(up.check.laps.iter().all(|l| l.upper == "panels"), "{up:?}");
    let over = path(&check, PathFace::Second, WaterLevel::Underlayment);
    assert!(over.check.laps.iter().all(|l| l.upper == "underlayment"), "{over:?}");
    for row in &check.rows {
        assert_ne!(row.shelter, Shelter::None, "{row:?}");
    }
    let curb = curb_back_tests::curb(slope(25.0));
    let back = water(&curb.compute().unwrap(), &[side(Side::First, -25.0, Water::Toward, curb.roof.levels)]);
    assert!(back.holds(), "{back:?}");
    assert_eq!(path(&back, PathFace::First, WaterLevel::Metal).check.laps[0].upper, "panels");
}

#[test]
fn walls_high_sides_rakes_and_hips() {
    let headwall = covered_tests::headwall("4:12");
    let rise = headwall.roof.pitch.angle().degrees();
    let at = [side(Side::First, rise, Water::Away, headwall.roof.levels)];
    for cover in [headwall.detail.wall.cover.clone(), WallCover::Reglet(Box::new(covered_tests::reglet()))] {
        let mut asked = headwall.clone();
        asked.detail.wall.cover = cover;
        asked.detail.wall.leg = len("20\"");
        let check = water(&asked.compute().unwrap(), &at);
        assert!(check.holds(), "{check:?}");
        let wall = path(&check, PathFace::Wall, WaterLevel::Metal);
        assert!(wall.check.laps.iter().all(|l| l.lower == "headwall flashing") && !wall.check.laps.is_empty(), "{wall:?}");
    }
    let high = high_side_tests::asked(slope(20.0));
    let check = water(&high.compute().unwrap(), &[side(Side::First, 20.0, Water::Away, high.roof.levels)]);
    assert!(check.holds(), "{check:?}");
    let rake = rake_tests::asked();
    let check = water(&rake.compute().unwrap(), &[side(Side::First, 0.0, Water::Along, rake.levels)]);
    assert_eq!(shelter(&check, "screws of the Z"), &under("rake trim"));
    assert!(matches!(shelter(&check, "rivets into the Z"), Shelter::Raised(_)), "{:?}", check.rows);
    let raised = sidewall_tests::raised();
    let check = water(&raised.compute().unwrap(), &[side(Side::First, 0.0, Water::Along, raised.roof.levels)]);
    assert_eq!(shelter(&check, "screws of the Z"), &under("sidewall flashing"));
    let on_pan = sidewall_tests::on_pan();
    let check = water(&on_pan.compute().unwrap(), &[side(Side::First, 0.0, Water::Along, on_pan.roof.levels)]);
    assert_eq!(shelter(&check, "fasteners of the flange"), &Shelter::None);
    let hip = covered_tests::hip("6:12", "6:12", 90.0);
    let backing = hip.corner.compute().unwrap().first.backing.degrees();
    let at = [side(Side::First, backing, Water::Away, hip.first), side(Side::Second, -backing, Water::Away, hip.second)];
    assert!(water(&hip.compute().unwrap(), &at).holds());
}

proptest! {
    /// However a slope is shingled, the path holds; with any two neighbours changed round it does not.
    #[test]
    fn shingles_hold_and_a_change_is_found(steps in proptest::collection::vec((2_i16..20, 1_i16..9), 2..9), which in 0_usize..8) {
        let mut sheets = Vec::new();
        let mut low = 0_i16;
        for (k, (exposed, lap)) in steps.iter().enumerate() {
            sheets.push(sheet(&format!("s{k}"), low, low + exposed + lap.min(exposed), u32::try_from(k).unwrap()));
            low += exposed;
        }
        // The last reaches highest, whatever its neighbours' laps.
        let top = sheets.iter().map(|s| s.high).max().unwrap();
        if let Some(last) = sheets.last_mut() {
            last.high = (top + Length::inches(1)).length().unwrap();
        }
        let shingled = sheets.windows(2).all(|w| w[0].high < w[1].high);
        prop_assume!(shingled);
        let check = WaterPath { sheets: sheets.clone(), rules: vec![] }.compute().unwrap();
        prop_assert!(check.holds, "{:?}", check.faults);
        let k = which % (sheets.len() - 1);
        let (a, b) = (sheets[k].layer, sheets[k + 1].layer);
        (sheets[k].layer, sheets[k + 1].layer) = (b, a);
        // Unless a third, laid later, covers the edge that the change lays open.
        let covered = sheets.iter().any(|s| s.layer > b && s.low < sheets[k].high && s.high > sheets[k].high);
        let changed = WaterPath { sheets, rules: vec![] }.compute().unwrap();
        prop_assert_eq!(changed.holds, covered);
    }

    /// A transition's paths hold over any pitches that can be built.
    #[test]
    fn ridges_hold_at_any_pitch(a in 5.0_f64..50.0, b in 5.0_f64..50.0) {
        let mut ridge = ridge_tests::asked(slope(a), slope(b));
        for end in [&mut ridge.detail.first, &mut ridge.detail.second] {
            end.flange = len("16\"");
            end.hold_back = len("6\"");
        }
        if let Ok(solved) = ridge.compute() {
            let at = [side(Side::First, a, Water::Away, levels()), side(Side::Second, -b, Water::Away, levels())];
            let check = water(&solved, &at);
            prop_assert!(check.paths.iter().all(|p| p.check.holds), "{:?}", check.paths);
            let rows = solved.along.iter().filter(|x| matches!(x.what, Along::Fasteners { .. })).count();
            prop_assert_eq!(rows, check.rows.len());
        }
    }
}
