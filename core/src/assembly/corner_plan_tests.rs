//! Whole roofs with their corners: runs are lines and allowances, each end once, and what is refused.
#![cfg(feature = "serde")]

use super::{CornerAllowances, CornerPlan, CornerSchedule, Corners, JointOpening, KindAllowance, LineStands, TrimEnd};
use crate::error::ErrorKind;
use crate::junction::JointMoves;
use crate::record::Calculation;
use crate::roof::sample_roofs::SAMPLES;
use crate::roof::{ExpansionJointInput, LineKind, PlaneInput, Point, RoofInput, Shape, StepInput, Vertex, Wall};
use crate::units::Length;

fn plan(roof: RoofInput) -> CornerPlan {
    CornerPlan { roof, allowances: CornerAllowances::usual(), joints: vec![], stands: vec![] }
}

/// The schedule is that of [`Corners`] on the same roof, and its sums are those of a clerk.
fn check(name: &str, asked: &CornerPlan, moves: &[(usize, JointMoves)]) -> CornerSchedule {
    let made = asked.compute().unwrap();
    let roof = asked.roof.compute().unwrap();
    let own = Corners { lines: roof.lines(), tolerance: roof.tolerance(), allowances: &asked.allowances, joints: moves, stands: &[] }.compute().unwrap();
    assert_eq!((&made.corners, &made.cautions), (&own.corners, &own.cautions), "{name}");
    let mut sum = 0;
    for (i, (line, of)) in made.lines.iter().zip(roof.lines()).enumerate() {
        for (edge, ends) in [(Some(line.along), own.ends[i]), (line.upper, own.upper_ends[i])] {
            let Some(edge) = edge else { continue };
            assert_eq!((edge.length, edge.at_start.allowance, edge.at_end.allowance), (of.length, ends.at_start, ends.at_end), "{name}: {}", line.name);
            assert_eq!(edge.run, (of.length + ends.at_start + ends.at_end).length().unwrap());
            for end in [edge.at_start, edge.at_end] {
                assert!(made.corners[end.corner].lines.iter().any(|l| l.line == i && l.closed == end.closed));
            }
            sum += edge.run.pm();
        }
        assert_eq!((line.name == of.name, line.kind, line.upper.is_some()), (true, of.kind, of.riser.is_some()));
    }
    let steps = roof.lines().iter().filter(|l| l.riser.is_some()).count();
    assert_eq!(made.lines.len(), roof.lines().len());
    assert_eq!(made.closed.iter().map(|c| c.count).sum::<usize>(), 2 * (made.lines.len() + steps), "{name}");
    assert_eq!(made.kinds.iter().map(|k| k.count).sum::<usize>(), made.lines.len() + steps, "{name}");
    assert_eq!(made.kinds.iter().map(|k| k.run.pm()).sum::<i64>(), sum, "{name}");
    made
}

#[test]
fn the_schedule_is_that_of_the_corners() {
    for sample in SAMPLES {
        check(sample.name, &plan(sample.input()), &[]);
    }
    // A wall beside a slope and one across its top: their inside corner is turned up.
    let mut roof = RoofInput::new(vec![plane("slope", (0, 30), (0, 10), (20, 20))]);
    let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
    roof.walls = vec![Wall::new("top", p(0, 20), p(30, 20)), Wall::new("side", p(0, 0), p(0, 20))];
    let made = check("inside corner", &plan(roof), &[]);
    assert_eq!(made.closed.iter().filter(|c| c.name == TrimEnd::TurnedUp).map(|c| c.count).collect::<Vec<_>>(), [1]);
}

/// A plane over a rectangle in plan, in feet, whose foot and top lie at these heights.
fn plane(name: &str, x: (i16, i16), foot: (i16, i16), top: (i16, i16)) -> PlaneInput {
    let at = |x: i16, (y, z): (i16, i16)| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
    let outer = vec![at(x.0, foot), at(x.1, foot), at(x.1, top), at(x.0, top)];
    PlaneInput { name: name.into(), shape: Shape::Space { outer, holes: vec![], flatness: None } }
}

#[test]
fn a_step_s_upper_edge_is_a_run_of_its_own() {
    let mut roof = RoofInput::new(vec![plane("hall", (0, 30), (0, 15), (20, 25)), plane("porch", (0, 30), (-10, 8), (0, 12))]);
    roof.steps = vec![StepInput { lower: "porch".into(), upper: "hall".into() }];
    let made = check("step", &plan(roof), &[]);
    let step = made.lines.iter().find(|l| l.kind == LineKind::Step).unwrap();
    let (foot, upper) = (step.along, step.upper.unwrap());
    // At its foot over the porch's rakes, above it under the hall's.
    assert_eq!((foot.run, upper.run), ((Length::feet(30) + Length::inches(8)).length().unwrap(), Length::feet(30)));
    assert_eq!(
        [foot.at_start.closed, foot.at_end.closed, upper.at_start.closed, upper.at_end.closed],
        [TrimEnd::Capped, TrimEnd::Capped, TrimEnd::Covered, TrimEnd::Covered]
    );
    let named = |name: &str| made.kinds.iter().find(|k| k.name == name).map(|k| (k.count, k.run));
    assert_eq!((named("step"), named("step, upper edge")), (Some((1, foot.run)), Some((1, upper.run))));
}

#[test]
fn a_joint_s_opening_lengthens_what_slides() {
    let mut roof = RoofInput::new(vec![plane("west", (0, 60), (0, 10), (20, 20)), plane("east", (60, 120), (0, 10), (20, 20))]);
    roof.expansion_joints = vec![ExpansionJointInput { fixed: "west".into(), sliding: "east".into() }];
    let computed = roof.compute().unwrap();
    let joint = computed.lines().iter().position(|l| l.kind == LineKind::ExpansionAlong).unwrap();
    let opens = Length::parse("7/8\"").unwrap();
    let given = vec![JointOpening { line: computed.lines()[joint].name.clone(), opens }];
    let asked = CornerPlan { joints: given, ..plan(roof.clone()) };
    let made = check("joint", &asked, &[(joint, JointMoves { opens, ..JointMoves::default() })]);
    let still = check("joint that does not move", &plan(roof), &[]);
    let run = |of: &CornerSchedule, kind: &str| of.kinds.iter().find(|k| k.name == kind).unwrap().run;
    assert_eq!(run(&made, "eave"), (run(&still, "eave") + opens).length().unwrap());
}

/// Two legs of 8 in that go down from a peak at 6:12 lie 53.13 degrees apart from straight: their upper edges meet 8 tan(26.565) = 4 in beyond the lines' end, of 10 in 5 in beyond.
#[test]
fn at_a_peak_legs_run_on_until_they_meet() {
    let roof = SAMPLES.iter().find(|s| s.name == "stepped-gable").unwrap().input();
    let names: Vec<String> = roof.compute().unwrap().lines().iter().filter(|l| l.kind == LineKind::Sidewall).map(|l| l.name.clone()).collect();
    assert_eq!(names.len(), 2);
    for (height, wanted) in [(0, 4.0), (6, 4.0), (8, 4.0), (10, 5.0)] {
        // The higher of the two decides for both.
        let stands = vec![LineStands { line: names[0].clone(), height: Length::inches(height) }];
        let made = CornerPlan { stands, ..plan(roof.clone()) }.compute().unwrap();
        for line in made.lines.iter().filter(|l| l.kind == LineKind::Sidewall) {
            for end in [line.along.at_start, line.along.at_end] {
                let here = if end.closed == TrimEnd::Joined { wanted } else { 4.0 };
                assert!((end.allowance.mm() - here * 25.4).abs() < 1e-6, "{height}: {line:?}");
            }
        }
    }
}

#[test]
fn everything_wrong_is_said_at_once_with_its_path() {
    let usual = CornerAllowances::usual();
    let twice = KindAllowance { kind: LineKind::Valley, length: Length::inches(6) };
    let bad = |line: &str, opens| JointOpening { line: line.into(), opens };
    let high = |line: &str, inches| LineStands { line: line.into(), height: Length::inches(inches) };
    let roof = RoofInput::new(vec![plane("west", (0, 60), (0, 10), (20, 20))]);
    let allowances = CornerAllowances { usual: Length::inches(-1), by_kind: vec![usual.by_kind[0], twice], ..usual };
    let e = CornerPlan {
        roof: roof.clone(),
        allowances,
        joints: vec![bad("expansion joint 1", Length::inches(-2))],
        stands: vec![high("hip 9", -1), high("eave 1", 0), high("eave 1", 0)],
    }
    .compute()
    .unwrap_err();
    let paths: Vec<_> = core::iter::once(&e).chain(e.others()).map(|e| (e.kind(), e.path().to_owned())).collect();
    let wanted = [
        (ErrorKind::OutOfRange, "allowances.usual"),
        (ErrorKind::Conflict, "allowances.by_kind[1].kind"),
        (ErrorKind::OutOfRange, "joints[0].opens"),
        (ErrorKind::OutOfRange, "stands[0].height"),
        (ErrorKind::Unknown, "joints[0].line"),
        (ErrorKind::Unknown, "stands[0].line"),
        (ErrorKind::Conflict, "stands[2].line"),
    ];
    assert_eq!(paths, wanted.map(|(kind, path)| (kind, path.to_owned())));

    let mut joined = RoofInput::new(vec![plane("west", (0, 60), (0, 10), (20, 20)), plane("east", (60, 120), (0, 10), (20, 20))]);
    joined.expansion_joints = vec![ExpansionJointInput { fixed: "west".into(), sliding: "east".into() }];
    let e = CornerPlan { joints: vec![bad("expansion joint 1", Length::ZERO), bad("expansion joint 1", Length::ZERO)], ..plan(joined.clone()) }
        .compute()
        .unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "joints[1].line"));
    let e = CornerPlan { joints: vec![bad("ridge 1", Length::ZERO)], ..plan(joined) }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value(), e.allowed()), (ErrorKind::Unknown, "joints[0].line", Some("ridge 1"), Some("expansion joint 1")));
    // What the roof refuses stands under it.
    let e = plan(RoofInput::new(vec![])).compute().unwrap_err();
    assert!(e.path().starts_with("roof"), "{e}");
}
