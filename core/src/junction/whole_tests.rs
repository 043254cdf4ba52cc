//! A junction worked out whole is its section, its work and its water; and many at once are one after another.

use super::test_sections::slope;
use super::{
    JunctionInput, SectionKind, SectionWater, SectionWork, Shelter, Side, WaterLevel, WaterRules, WaterSide, WholeJunction, coping_tests, eave_tests,
    pipe_tests, step_tests, transition_tests, valley_tests,
};
use crate::record::{Calculation, compute_all};
use crate::roof::{LineKind, Water};

fn whole(of: JunctionInput) -> WholeJunction {
    WholeJunction { of, water: WaterRules::default() }
}

#[test]
fn a_whole_junction_is_what_its_parts_give() {
    let eave = eave_tests::asked(slope(25.0));
    let asked = whole(JunctionInput::Eave(Box::new(eave.clone())));
    let (out, sheet) = asked.explain().unwrap();
    assert_eq!(asked.compute().unwrap(), out);
    assert_eq!(sheet.entries.len(), 3);
    let section = eave.compute().unwrap();
    assert_eq!(out.work, SectionWork { kind: LineKind::Eave.into(), solved: &section }.compute().unwrap());
    let rise = super::test_sections::degrees(-25.0);
    let sides = [WaterSide { side: Side::First, rise, water: Water::Toward, levels: eave.roof.levels }];
    assert_eq!(out.water, Some(SectionWater { solved: &section, sides: &sides, rules: &WaterRules::default() }.compute().unwrap()));
    assert_eq!(out.section, section);
    // The kind of a transition is told by its pitches; what is no line of the roof has no water of its own.
    let up = |low, high| JunctionInput::PitchTransition(Box::new(transition_tests::transition(low, high))).kind();
    assert_eq!(up("3:12", "8:12"), SectionKind::Line(LineKind::SteepToShallow));
    assert_eq!(up("8:12", "3:12"), SectionKind::Line(LineKind::ShallowToSteep));
    for of in [JunctionInput::Coping(Box::new(coping_tests::coping())), JunctionInput::Pipe(Box::new(pipe_tests::pipe()))] {
        let out = whole(of).compute().unwrap();
        assert!(out.water.is_none() && out.work.len() >= 5);
    }
    // On a step water runs from the upper deck, which begins over the riser, on the lower flashing and from that on the lower panels.
    for (low, high) in [(30.0, 20.0), (15.0, 20.0), (20.0, 20.0), (3.0, 30.0)] {
        let step = step_tests::step(low, high);
        let out = whole(JunctionInput::Step(Box::new(step))).compute().unwrap().water.unwrap();
        assert!(out.paths.iter().all(|p| p.check.holds), "{low} {high}: {:?}", out.paths);
        let metal = out.paths.iter().filter(|p| p.level == WaterLevel::Metal).map(|p| p.check.order.clone());
        let metal: Vec<Vec<String>> = metal
            .map(|mut names| {
                names.sort();
                names
            })
            .collect();
        assert_eq!(metal, [["lower flashing", "panels"], ["eave trim", "panels"]]);
        assert!(out.rows.iter().any(|r| r.name == "deck flange's fasteners" && r.shelter != Shelter::None), "{:?}", out.rows);
    }
    assert_eq!(whole(JunctionInput::Valley(Box::new(valley_tests::valley("6:12", "6:12")))).compute().unwrap().water.unwrap().paths.len(), 4);
}

#[test]
fn many_at_once_are_one_after_another_and_each_fault_has_its_number() {
    let eave = |degrees| whole(JunctionInput::Eave(Box::new(eave_tests::asked(slope(degrees)))));
    let all: Vec<WholeJunction> = [10.0, 20.0, 30.0].into_iter().map(eave).collect();
    assert_eq!(compute_all(&all).unwrap(), all.iter().map(|j| j.compute().unwrap()).collect::<Vec<_>>());
    let mut bad = all;
    for i in [0, 2] {
        if let JunctionInput::Eave(eave) = &mut bad[i].of {
            eave.detail.panel.fold = crate::units::Length::ZERO;
        }
    }
    let e = compute_all(&bad).unwrap_err();
    assert!(e.path().starts_with("[0].of.eave.detail.panel"), "{e}");
    assert!(e.others().iter().any(|o| o.path().starts_with("[2].of.eave.detail.panel")), "{e}");
    assert!(compute_all::<WholeJunction>(&[]).unwrap().is_empty());
}
