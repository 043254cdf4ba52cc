//! A junction worked out whole is its section, its work and its water; and many at once are one after another.

use super::test_sections::{len, slope};
use super::{
    JunctionInput, PathFace, PathFailure, SectionKind, SectionWater, SectionWork, Shelter, Side, UpperEdge, WaterCheck, WaterLevel, WaterRules, WaterSide,
    WholeJunction, coping_tests, eave_tests, expansion_tests, pipe_tests, step_tests, transition_tests, valley_tests,
};
use crate::record::{Calculation, compute_all};
use crate::roof::{LineKind, Water};
use crate::units::Length;

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
    assert_eq!(out.water, SectionWater { solved: &section, sides: &sides, rules: &WaterRules::default() }.compute().unwrap());
    assert_eq!(out.section, section);
    // The kind of a transition is told by its pitches.
    let up = |low, high| JunctionInput::PitchTransition(Box::new(transition_tests::transition(low, high))).kind();
    assert_eq!(up("3:12", "8:12"), SectionKind::Line(LineKind::SteepToShallow));
    assert_eq!(up("8:12", "3:12"), SectionKind::Line(LineKind::ShallowToSteep));
    for of in [JunctionInput::Coping(Box::new(coping_tests::coping())), JunctionInput::Pipe(Box::new(pipe_tests::pipe()))] {
        let out = whole(of).compute().unwrap();
        assert!(!out.water.paths.is_empty() && out.work.len() >= 5);
    }
    // On a step water runs from the upper deck, which begins over the riser, on the lower flashing and from that on the lower panels.
    for (low, high) in [(30.0, 20.0), (15.0, 20.0), (20.0, 20.0), (3.0, 30.0)] {
        let step = step_tests::step(low, high);
        let out = whole(JunctionInput::Step(Box::new(step))).compute().unwrap().water;
        assert!(out.paths.iter().all(|p| p.check.holds), "{low} {high}: {:?}", out.paths);
        let metal = out.paths.iter().filter(|p| p.level == WaterLevel::Metal).map(|p| p.check.order.clone());
        let metal: Vec<Vec<String>> = metal
            .map(|mut names| {
                names.sort();
                names
            })
            .collect();
        assert_eq!(metal, [["lower flashing", "panels"], ["eave trim", "panels"], ["eave trim", "lower flashing"]]);
        assert!(out.rows.iter().any(|r| r.name == "deck flange's fasteners" && r.shelter != Shelter::None), "{:?}", out.rows);
    }
    assert_eq!(whole(JunctionInput::Valley(Box::new(valley_tests::valley("6:12", "6:12")))).compute().unwrap().water.paths.len(), 4);
}

fn water(of: JunctionInput) -> WaterCheck {
    whole(of).compute().unwrap().water
}

/// Of one face and level: the laps, upper over lower, with their overlap in millimetres.
fn laps(check: &WaterCheck, face: PathFace, level: WaterLevel) -> Vec<(&str, &str, f64)> {
    let path = check.paths.iter().find(|p| p.face == face && p.level == level).unwrap();
    path.check.laps.iter().map(|l| (&*l.upper, &*l.lower, (l.overlap.mm() * 1e6).round() / 1e6)).collect()
}

#[test]
fn a_coping_covers_what_comes_up_its_wall() {
    // A face of 4 in over a leg that comes up to 1/2 in under the top edge: 3 1/2 in, 88.9 mm, whatever the drip reaches beyond.
    let mut coping = coping_tests::coping();
    let over = coping.detail.roof_side.over.as_mut().unwrap();
    (over.below_top, over.rule.least) = (len("1/2\""), len("3\""));
    let check = water(JunctionInput::Coping(Box::new(coping.clone())));
    assert!(check.holds() && check.cautions.is_empty(), "{check:?}");
    let up = "what comes up the wall";
    assert_eq!(laps(&check, PathFace::FirstUpright, WaterLevel::Metal), [("coping", up, 88.9)]);
    assert_eq!(laps(&check, PathFace::FirstUpright, WaterLevel::Underlayment), [("membrane on the wall's top", up, 88.9)]);
    // On the outside nothing comes up: the coping alone.
    assert_eq!(laps(&check, PathFace::SecondUpright, WaterLevel::Metal), []);
    // Its cleats' screws go through the faces of the wall.
    assert!(check.rows.len() == 2 && check.rows.iter().all(|row| row.shelter == Shelter::Face), "{:?}", check.rows);
    // Without a membrane there is nothing under it.
    coping.detail.bed = Length::ZERO;
    let bare = water(JunctionInput::Coping(Box::new(coping)));
    assert!(bare.paths.iter().all(|p| p.level == WaterLevel::Metal));
}

#[test]
fn water_on_joints_and_steps_by_hand() {
    // Along: edges turned up by 200 mm from pans at 1.6 mm, a curb of 210 mm, a cap down to 90 mm on the fixed side and 1.5 mm lower on the other.
    let check = water(JunctionInput::ExpansionAlong(Box::new(expansion_tests::along())));
    assert!(check.holds() && check.cautions.is_empty(), "{check:?}");
    assert_eq!(laps(&check, PathFace::FirstUpright, WaterLevel::Metal), [("joint cap", "panels", 111.6)]);
    assert_eq!(laps(&check, PathFace::SecondUpright, WaterLevel::Metal), [("joint cap", "panels", 113.1)]);
    assert_eq!(laps(&check, PathFace::Second, WaterLevel::Underlayment), [("joint cap", "underlayment", 210.0)]);
    assert!(check.rows.iter().filter(|row| row.name == "cleat fasteners").all(|row| row.shelter == Shelter::Under("joint cap".into())));
    // Across: as at a transition, the flashing over the lower panels and under the upper ones, the upper underlayment over its top edge.
    let check = water(JunctionInput::ExpansionAcross(Box::new(expansion_tests::across())));
    assert!(check.holds(), "{check:?}");
    let over = |face, level| laps(&check, face, level).iter().map(|l| (l.0.to_owned(), l.1.to_owned())).collect::<Vec<_>>();
    let pair = |upper: &str, lower: &str| vec![(upper.to_owned(), lower.to_owned())];
    assert_eq!(over(PathFace::First, WaterLevel::Metal), pair("transition trim", "panels"));
    assert_eq!(over(PathFace::Second, WaterLevel::Metal), pair("panels", "transition trim"));
    assert_eq!(over(PathFace::Second, WaterLevel::Underlayment), pair("underlayment", "transition trim"));
    // A step: the upper face hangs before the leg by its depth less what the leg ends below the edge.
    let step = step_tests::step(20.0, 20.0);
    let lap = (step.detail.upper.face.depth - step.detail.lower.below_edge).length().unwrap();
    let check = water(JunctionInput::Step(Box::new(step)));
    let (upper, lower, found) = laps(&check, PathFace::Riser, WaterLevel::Metal)[0];
    assert_eq!((upper, lower), ("eave trim", "lower flashing"));
    assert!((found - lap.mm()).abs() < 2.0, "{found} {lap}");
    assert!(check.rows.iter().any(|row| row.side == Side::Riser && row.shelter == Shelter::Face));
}

#[test]
fn a_pipes_base_stands_against_the_water_or_under_a_lap() {
    let mut pipe = pipe_tests::pipe();
    let on_pan = water(JunctionInput::Pipe(Box::new(pipe.clone())));
    // The seal of 50 mm on either side of the hole is what laps.
    assert_eq!(laps(&on_pan, PathFace::First, WaterLevel::Metal), [("base of the pipe", "panels", 50.0)]);
    assert_eq!(laps(&on_pan, PathFace::Second, WaterLevel::Metal), [("base of the pipe", "panels", 50.0)]);
    let faults = |check: &WaterCheck| check.paths.iter().flat_map(|p| p.check.faults.iter().map(|f| f.failure)).collect::<Vec<_>>();
    assert_eq!(faults(&on_pan), [PathFailure::RunsBehind]);
    // The section says that itself; that its screws stand in the water is said here, once for each row.
    assert_eq!(on_pan.cautions.iter().map(|c| c.code().number).collect::<Vec<_>>(), [6094, 6094]);
    pipe.upper_edge = UpperEdge::UnderLap;
    let lapped = water(JunctionInput::Pipe(Box::new(pipe)));
    assert_eq!(laps(&lapped, PathFace::Second, WaterLevel::Metal), [("panels", "base of the pipe", 50.0)]);
    assert_eq!((faults(&lapped), lapped.cautions.len()), (vec![], 1));
    // The underlayment around a pipe is dressed with what comes with its boot: the section has none of it.
    assert!([on_pan, lapped].iter().all(|check| check.paths.iter().all(|p| p.level == WaterLevel::Metal)));
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
