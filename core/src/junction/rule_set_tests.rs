//! Rules held against each other: sections that are built keep theirs, and what is called a contradiction is refused by the section too.

#![cfg(feature = "serde")]

use super::test_sections::{len, slope};
use super::{
    JunctionInput, LeastRule, RuleCheck, WaterRules, WholeJunction, coping_tests, covered_tests, curb_back_tests, eave_tests, expansion_tests, high_side_tests,
    rake_tests, ridge_tests, sidewall_tests, step_tests, transition_tests, valley_tests,
};
use crate::error::{Error, ErrorKind};
use crate::record::{Calculation, Source};
use crate::units::Length;
use serde_json::Value;

fn all() -> Vec<JunctionInput> {
    let s = slope(30.0);
    let mut receiver = valley_tests::valley("6:12", "8:12");
    receiver.detail.first.hook = valley_tests::receiver();
    let mut reglet = covered_tests::headwall("4:12");
    reglet.detail.wall.cover = super::WallCover::Reglet(Box::new(covered_tests::reglet()));
    vec![
        JunctionInput::Coping(Box::new(coping_tests::coping())),
        JunctionInput::CurbBack(Box::new(curb_back_tests::curb(slope(20.0)))),
        JunctionInput::Eave(Box::new(eave_tests::asked(s))),
        JunctionInput::ExpansionAcross(Box::new(expansion_tests::across())),
        JunctionInput::ExpansionAlong(Box::new(expansion_tests::along())),
        JunctionInput::Headwall(Box::new(covered_tests::headwall("4:12"))),
        JunctionInput::Headwall(Box::new(reglet)),
        JunctionInput::HighSide(Box::new(high_side_tests::asked(s))),
        JunctionInput::Hip(Box::new(covered_tests::hip("6:12", "8:12", 90.0))),
        JunctionInput::PitchTransition(Box::new(transition_tests::transition("3:12", "8:12"))),
        JunctionInput::Rake(Box::new(rake_tests::asked())),
        JunctionInput::Ridge(Box::new(ridge_tests::asked(s, s))),
        JunctionInput::Sidewall(Box::new(sidewall_tests::raised())),
        JunctionInput::Sidewall(Box::new(sidewall_tests::on_pan())),
        JunctionInput::Step(Box::new(step_tests::step(15.0, 0.0))),
        JunctionInput::Valley(Box::new(valley_tests::valley("6:12", "6:12"))),
        JunctionInput::Valley(Box::new(receiver)),
    ]
}

fn check(of: &JunctionInput, water: WaterRules) -> Result<Vec<super::RuleRoom>, Error> {
    RuleCheck { junctions: vec![of.clone()], water }.compute()
}

/// Water that asks for nothing: a lap too short is a caution of the section and no refusal.
fn dry() -> WaterRules {
    let none = LeastRule::given("nothing", Length::ZERO, Source::user());
    WaterRules { panels_over_metal: none.clone(), metal_over_panels: none.clone(), underlayment_over_metal: none.clone(), underlayment_past_line: none }
}

#[test]
fn sections_that_are_built_keep_their_rules() {
    for of in all() {
        let rooms = check(&of, WaterRules::default()).unwrap_or_else(|e| panic!("{}: {e}", of.name()));
        assert!(rooms.len() > 1 && rooms.iter().all(|r| !r.spare.is_negative()), "{}", of.name());
    }
    let asked = RuleCheck { junctions: all(), water: WaterRules::default() };
    let (out, sheet) = asked.explain().unwrap();
    assert_eq!((asked.compute().unwrap(), sheet.steps().len()), (out.clone(), out.len()));
    assert!(out.iter().flat_map(|r| &r.asks).filter(|p| p.source.is_some()).count() > 20, "the rules have their sources");
}

/// Paths of every length in a document.
fn lengths(value: &Value, path: &str, out: &mut Vec<String>) {
    match value {
        Value::Object(of) => of.iter().for_each(|(k, v)| lengths(v, &format!("{path}/{k}"), out)),
        Value::Array(of) => of.iter().enumerate().for_each(|(k, v)| lengths(v, &format!("{path}/{k}"), out)),
        Value::String(text) if Length::parse(text).is_ok() => out.push(path.to_owned()),
        _ => {}
    }
}

/// Each length of each kind is made short, longer and far too long in turn: what is then called a contradiction must be what no section keeps.
#[test]
fn what_contradicts_is_refused_by_the_section_too() {
    let (mut contradictions, mut tried) = (0, 0);
    for of in all() {
        let document = serde_json::to_value(&of).unwrap();
        let mut paths = Vec::new();
        lengths(&document, "", &mut paths);
        for path in paths.iter().filter(|p| p.contains("/detail/")) {
            for other in ["0 mm", "1 mm", "25 mm", "150 mm", "2 m"] {
                let mut changed = document.clone();
                *changed.pointer_mut(path).unwrap() = Value::from(other);
                let Ok(changed) = serde_json::from_value::<JunctionInput>(changed) else { continue };
                tried += 1;
                let Err(e) = check(&changed, dry()) else { continue };
                contradictions += 1;
                let all = std::iter::once(&e).chain(e.others());
                for e in all {
                    assert!(e.kind() == ErrorKind::Conflict && e.cure().is_some() && e.message().contains(" more than "), "{e}");
                }
                assert!(WholeJunction { of: changed, water: dry() }.compute().is_err(), "{path} = {other}: {e}");
            }
        }
    }
    assert!(tried > 1500 && contradictions > 300, "{tried}, {contradictions}");
}

#[test]
fn every_contradiction_is_told_with_both_rules() {
    let mut eave = eave_tests::asked(slope(30.0));
    eave.detail.panel.clearance = len("50 mm");
    eave.detail.below_deck = LeastRule::given("own", len("1 m"), Source::user());
    let mut valley = valley_tests::valley("6:12", "6:12");
    valley.detail.second.least_beyond.least = len("500 mm");
    let mut water = WaterRules::default();
    water.panels_over_metal.least = len("1 m");
    let e = RuleCheck { junctions: vec![JunctionInput::Eave(Box::new(eave)), JunctionInput::Valley(Box::new(valley))], water }.compute().unwrap_err();
    let all: Vec<&Error> = std::iter::once(&e).chain(e.others()).collect();
    let found = |path: &str| all.iter().find(|e| e.path() == path).unwrap_or_else(|| panic!("{path}: {e}"));
    let gap = found("junctions[0].eave.detail.panel.clearance");
    assert!(gap.message().starts_with("no section keeps both: junctions[0].eave.detail.panel.clearance 50 mm asks for"), "{gap}");
    assert!(gap.message().ends_with("more than junctions[0].eave.detail.panel.gap 6.35 mm leaves"), "{gap}");
    // 12 in of leg; 3 in of half the open width, 1/4 in of gap and 3 1/2 in of cleat leave 133.35 mm for 500 mm.
    let beyond = found("junctions[1].valley.detail.second.least_beyond.least");
    assert!(
        beyond.message().contains("500 mm (common practice") && beyond.message().contains("half of junctions[1].valley.detail.open_width 76.2 mm"),
        "{beyond}"
    );
    assert!(beyond.cure().unwrap().starts_with("366.65 mm of room: "), "{beyond}");
    let laps = all.iter().filter(|e| e.path() == "water.panels_over_metal.least").count();
    assert_eq!(laps, 3, "the eave and both sides of the valley: {e}");
    assert!(found("junctions[0].eave.detail.below_deck.least").allowed().is_some());
}
