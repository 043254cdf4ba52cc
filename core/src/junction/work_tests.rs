//! The order of work of every kind, from what must be in place before what.

use super::test_sections::{len, row, slope};
use super::work_tasks::{THERE, of_kind};
use super::{
    CopingHold, Datum, EaveFixing, FlangeLies, LayoutLine, LineOrder, RidgeVent, SectionKind, SectionWork, Side, Solved, WallCover, WorkPlan, WorkStep,
    WorkTask, coping_tests, covered_tests, curb_back_tests, eave_tests, expansion_tests, high_side_tests, order_of_work, pipe_tests, rake_tests, ridge_tests,
    sidewall_tests, step_tests, transition_tests, valley_tests,
};
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::roof::LineKind;
use crate::units::Length;
use proptest::prelude::*;
use std::collections::BTreeSet;

fn line(name: &'static str, datum: Datum, from_datum: i16, from_line: i16) -> LayoutLine {
    LayoutLine { name: name.into(), side: Side::First, datum, from_datum: Length::inches(from_datum), from_line: Length::inches(from_line) }
}

/// A section of every kind.
fn sections() -> Vec<(SectionKind, Solved)> {
    let mut eave = eave_tests::asked(slope(25.0));
    eave.detail.panel.fixed = Some(EaveFixing { up_the_slope: len("3\""), fasteners: row() });
    let mut over = eave.clone();
    over.detail.flange.lies = FlangeLies::OverUnderlayment;
    let mut ridge = ridge_tests::asked(slope(25.0), slope(30.0));
    ridge.detail.vent = RidgeVent::Vented { slot: len("1\""), open_ratio: 0.4 };
    let mut let_in = covered_tests::headwall("4:12");
    let_in.detail.wall.cover = WallCover::Reglet(Box::new(covered_tests::reglet()));
    let transition = transition_tests::transition("3:12", "8:12").compute().unwrap();
    let mut screwed = coping_tests::coping();
    screwed.detail.roof_side.hold = CopingHold::Screws(coping_tests::screws());
    let mut vented = covered_tests::headwall("4:12");
    vented.detail.vent = RidgeVent::Vented { slot: len("1\""), open_ratio: 0.4 };
    let step = step_tests::step(15.0, 20.0);
    let mut step_over = step.clone();
    step_over.detail.upper.flange.lies = FlangeLies::OverUnderlayment;
    let lines = [
        (LineKind::Eave, eave.compute().unwrap()),
        (LineKind::Eave, over.compute().unwrap()),
        (LineKind::Rake, rake_tests::asked().compute().unwrap()),
        (LineKind::Ridge, ridge.compute().unwrap()),
        (LineKind::Hip, covered_tests::hip("6:12", "6:12", 90.0).compute().unwrap()),
        (LineKind::HighEdge, high_side_tests::asked(slope(20.0)).compute().unwrap()),
        (LineKind::Valley, valley_tests::valley("6:12", "6:12").compute().unwrap()),
        (LineKind::Headwall, let_in.compute().unwrap()),
        (LineKind::CurbFront, covered_tests::headwall("4:12").compute().unwrap()),
        (LineKind::Sidewall, sidewall_tests::raised().compute().unwrap()),
        (LineKind::CurbSide, sidewall_tests::on_pan().compute().unwrap()),
        (LineKind::ShallowToSteep, transition.clone()),
        (LineKind::SteepToShallow, transition),
        (LineKind::CurbBack, curb_back_tests::curb(slope(25.0)).compute().unwrap()),
    ];
    let others = [
        (SectionKind::Coping, coping_tests::coping().compute().unwrap()),
        (SectionKind::Coping, screwed.compute().unwrap()),
        (SectionKind::Line(LineKind::Step), step.compute().unwrap()),
        (SectionKind::Line(LineKind::Step), step_over.compute().unwrap()),
        (SectionKind::Line(LineKind::ExpansionAcross), expansion_tests::across().compute().unwrap()),
        (SectionKind::Line(LineKind::ExpansionAlong), expansion_tests::along().compute().unwrap()),
        (SectionKind::Pipe, pipe_tests::pipe().compute().unwrap().section),
        (SectionKind::Line(LineKind::Headwall), vented.compute().unwrap()),
    ];
    lines.into_iter().map(|(kind, solved)| (kind.into(), solved)).chain(others).collect()
}

fn work(kind: SectionKind, solved: &Solved) -> Vec<WorkStep> {
    let asked = SectionWork { kind, solved };
    let (out, sheet) = asked.explain().unwrap_or_else(|e| panic!("{kind}: {e}"));
    assert_eq!(asked.compute().unwrap(), out);
    assert!(!sheet.steps().is_empty());
    out
}

#[test]
fn everything_is_there_when_it_is_needed() {
    let mut seen = BTreeSet::new();
    for (kind, solved) in sections() {
        seen.insert(kind);
        let steps = work(kind, &solved);
        let mut there: BTreeSet<String> = THERE.iter().map(|t| (*t).to_owned()).collect();
        let mut struck: BTreeSet<usize> = BTreeSet::new();
        for step in &steps {
            for need in &step.needs {
                assert!(there.contains(&**need), "{kind}: {} before {need}", step.does);
            }
            for &i in &step.lines {
                let line = &solved.lines[i];
                let named = |name: &str| struck.iter().any(|k| solved.lines[*k].side == line.side && solved.lines[*k].name == name);
                let is_there = match &line.datum {
                    Datum::JunctionLine => true,
                    Datum::TrimTopEdge => named("trim top edge") && there.contains("trim's top edge"),
                    Datum::TrimLowerEdge => named("trim lower edge") && there.contains("trim's lower edge"),
                    Datum::Line(name) => named(name),
                };
                assert!(is_there, "{kind}: {} from {}", line.name, line.datum);
                assert!(struck.insert(i), "{kind}: {} twice", line.name);
            }
            there.extend(step.gives.iter().map(|g| g.clone().into_owned()));
        }
        assert_eq!(struck.len(), solved.lines.len(), "{kind}");
        assert!(!steps.iter().any(|s| s.does.starts_with("Strike the lines that are left")), "{kind}: {:?}", steps.last());
        // Every trim of the section is set by some step that names it, or by the step of its kind.
        assert!(steps.len() >= 4, "{kind}");
    }
    assert_eq!(seen.len(), SectionKind::all().count() - 1, "every kind but the unknown line");
}

#[test]
fn an_eave_by_hand() {
    let (kind, solved) = sections().remove(0);
    let given: Vec<String> = work(kind, &solved).iter().map(|s| s.gives.join("+")).collect();
    assert_eq!(given, ["square", "continuous cleat", "eave trim+trim's top edge", "flange fastened", "underlayment", "hook strip", "panels"]);
    // On the underlayment the underlayment comes first.
    let (kind, over) = sections().remove(1);
    let given: Vec<String> = work(kind, &over).iter().map(|s| s.gives.join("+")).collect();
    assert_eq!(given, ["square", "underlayment", "continuous cleat", "eave trim+trim's top edge", "flange fastened", "hook strip", "panels"]);
    // The closures' lines of a ridge come when the panels they are struck on lie there.
    let (kind, ridge) = sections().remove(3);
    let steps = work(kind, &ridge);
    let panels = steps.iter().position(|s| s.gives == ["panels"]).unwrap();
    let face = ridge.lines.iter().position(|l| l.name == "closure face").unwrap();
    assert!(steps.iter().position(|s| s.lines.contains(&face)).unwrap() > panels);
    assert_eq!(steps[0].gives, ["slot"]);
}

#[test]
fn a_line_that_refers_to_what_is_not_there_is_an_error() {
    let of = |lines: Vec<LayoutLine>| LineOrder { lines }.compute();
    let top = || line("trim top edge", Datum::JunctionLine, 9, 9);
    assert_eq!(of(vec![top(), line("screws", Datum::TrimTopEdge, 1, 8)]).unwrap(), 2);
    // Before the edge is marked; on the other side only; never; and twice.
    let e = of(vec![line("screws", Datum::TrimTopEdge, 1, 8), top()]).unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Missing, "lines[0].datum", Some("trim top edge")));
    assert!(e.message().contains("screws on the first side is measured from the trim's top edge"), "{e}");
    assert_eq!(e.cure(), Some("strike trim top edge before screws"));
    let e = of(vec![LayoutLine { side: Side::Second, ..top() }, line("screws", Datum::TrimTopEdge, 1, 8)]).unwrap_err();
    assert_eq!(e.path(), "lines[1].datum");
    let e = of(vec![line("a", Datum::Line("b".into()), 1, 1), line("b", Datum::Line("a".into()), 1, 2), line("b", Datum::TrimLowerEdge, 1, 1)]).unwrap_err();
    let all: Vec<(ErrorKind, &str)> = std::iter::once(&e).chain(e.others()).map(|e| (e.kind(), e.path())).collect();
    assert_eq!(all, [(ErrorKind::Missing, "lines[0].datum"), (ErrorKind::Conflict, "lines[2].name"), (ErrorKind::Missing, "lines[2].datum")]);
    // And one that does not lie where its datum puts it: 9 - 1 is 8.
    let e = of(vec![top(), line("screws", Datum::TrimTopEdge, 1, 10)]).unwrap_err();
    assert_eq!((e.kind(), e.path(), e.allowed()), (ErrorKind::Conflict, "lines[1].from_line", Some("203.2 mm")));
    // A whole section is checked in the same way.
    let (kind, mut solved) = sections().remove(0);
    solved.lines.reverse();
    assert_eq!(SectionWork { kind, solved: &solved }.compute().unwrap_err().kind(), ErrorKind::Missing);
    assert_eq!(solved.check_lines().unwrap_err().kind(), ErrorKind::Missing);
}

#[test]
fn at_every_kind_a_line_waits_for_what_it_is_measured_from() {
    let mut tried = 0;
    for (kind, solved) in sections() {
        for (i, line) in solved.lines.iter().enumerate() {
            let from = match &line.datum {
                Datum::JunctionLine => continue,
                Datum::TrimTopEdge => "trim top edge",
                Datum::TrimLowerEdge => "trim lower edge",
                Datum::Line(name) => name,
            };
            // Struck too late, and never.
            let at = solved.lines.iter().position(|l| l.side == line.side && l.name == from).unwrap();
            for late in [true, false] {
                let mut without = solved.clone();
                let moved = without.lines.remove(at);
                if late {
                    without.lines.push(moved);
                }
                let e = SectionWork { kind, solved: &without }.compute().unwrap_err();
                assert_eq!(e.kind(), ErrorKind::Missing, "{kind}: {} {i}: {e}", line.name);
                assert!(e.path().ends_with(".datum") && e.value() == Some(from), "{kind}: {e}");
                tried += 1;
            }
        }
    }
    assert!(tried > 150, "{tried}");
}

#[test]
fn a_step_and_a_coping_by_hand() {
    let given = |k: usize| {
        let (kind, solved) = sections().remove(k);
        work(kind, &solved).iter().map(|s| s.gives.join("+")).collect::<Vec<String>>()
    };
    let foot = ["lower underlayment", "panels", "closure tape", "closures", "tape over", "lower flashing", "rivets", "continuous cleat"];
    let under = ["upper trim+trim's top edge", "flange fastened", "underlayment", "hook strip", "upper panels"];
    assert_eq!(given(16), [&foot[..], &under].concat());
    // On the underlayment it comes first.
    let over = ["underlayment", "upper trim+trim's top edge", "flange fastened", "hook strip", "upper panels"];
    assert_eq!(given(17), [&foot[..], &over].concat());
    assert_eq!(given(14), ["wall's top", "faces", "cleats", "joint plates", "coping"]);
    assert_eq!(given(15), ["wall's top", "faces", "cleats", "joint plates", "coping", "face screws"]);
}

#[test]
fn a_line_that_its_own_step_must_first_put_in_place_is_an_error() {
    // The eave trim's own top edge is struck from that edge: the trim waits for the line and the line for the trim.
    let (kind, mut solved) = sections().remove(0);
    let at = solved.lines.iter().position(|l| l.name == "deck flange's fasteners").unwrap();
    solved.lines[at].name = "trim top edge, again".into();
    let e = SectionWork { kind, solved: &solved }.compute().unwrap_err();
    assert_eq!(e.kind(), ErrorKind::Conflict);
    assert!(e.to_string().contains("strike trim top edge, again on the first side"), "{e}");
}

#[test]
fn sections_without_tasks_of_their_own_set_their_trims_in_order() {
    let (_, solved) = sections().remove(2);
    let steps = SectionWork { kind: LineKind::Unknown.into(), solved: &solved }.compute().unwrap();
    assert_eq!(steps[0].does, format!("Set the {}.", solved.trims[0].name));
    assert_eq!(steps.len(), solved.trims.len() + 1);
    assert_eq!(steps.last().unwrap().lines.len(), solved.lines.len());
}

#[test]
fn plans_that_cannot_be_worked_are_refused() {
    let task = |does: &str, gives: &[&str], needs: &[&str]| WorkTask {
        does: does.into(),
        gives: gives.iter().map(|g| (*g).to_owned()).collect(),
        needs: needs.iter().map(|g| (*g).to_owned()).collect(),
    };
    let e = WorkPlan { there: vec![], tasks: vec![task("a", &["x"], &["y"]), task("b", &["y"], &["x"]), task("c", &[], &[])] }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value(), e.others().len()), (ErrorKind::Conflict, "tasks[0].needs[0]", Some("y"), 1));
    let e = WorkPlan { there: vec!["deck".into()], tasks: vec![task("a", &["x"], &["deck", "z"]), task("b", &[], &["w"])] }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.others()[0].path(), e.allowed()), (ErrorKind::Missing, "tasks[0].needs[1]", "tasks[1].needs[0]", Some("deck, x")));
    // What two tasks give is there when both are done.
    let both = WorkPlan { there: vec![], tasks: vec![task("use", &[], &["x"]), task("a", &["x"], &[]), task("b", &["x"], &[])] };
    assert_eq!(both.compute().unwrap(), [1, 2, 0]);
    assert!(WorkPlan { there: vec![], tasks: vec![] }.compute().unwrap().is_empty());
}

proptest! {
    /// The order follows from the needs: in whatever order a kind's tasks are listed, each comes after what it needs; and as listed they are in order.
    #[test]
    fn tasks_listed_in_any_order_are_put_in_order(kind in proptest::sample::select(SectionKind::all().collect::<Vec<_>>()), seed in any::<u64>()) {
        let tasks = of_kind(kind);
        let names = |n: &[&str]| n.iter().map(|n| (*n).to_owned()).collect::<Vec<String>>();
        let made: Vec<WorkTask> = tasks.iter().map(|t| WorkTask { does: t.does.into(), gives: names(t.gives), needs: names(t.needs) }).collect();
        let plan = |tasks: Vec<WorkTask>| WorkPlan { there: names(THERE), tasks };
        prop_assert_eq!(plan(made.clone()).compute().unwrap(), (0..made.len()).collect::<Vec<_>>());
        prop_assert_eq!(order_of_work(kind).len(), made.len());
        let mut mixed = made;
        let mut state = seed;
        for i in (1..mixed.len()).rev() {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            mixed.swap(i, usize::try_from(state >> 33).unwrap() % (i + 1));
        }
        let mut there: BTreeSet<String> = names(THERE).into_iter().collect();
        for k in plan(mixed.clone()).compute().unwrap() {
            prop_assert!(mixed[k].needs.iter().all(|n| there.contains(n)), "{}", mixed[k].does);
            there.extend(mixed[k].gives.iter().cloned());
        }
    }
}
