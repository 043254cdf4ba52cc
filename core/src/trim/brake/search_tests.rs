//! Searches for an order: against every order tried out, and what is said when the effort is spent.

use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::trim::{BendRule, Direction, Edge, Face, NeutralFactor, Part, Point, Profile};
use crate::units::{Angle, BendAngle, Length, LengthUnit};
use proptest::prelude::*;

fn mm(v: f64) -> Length {
    Length::from_f64(v, LengthUnit::Millimetre).unwrap()
}

fn bent(degrees: f64) -> BendAngle {
    BendAngle::from_flat(Angle::degrees_from(degrees).unwrap()).unwrap()
}

fn middle() -> BendRule {
    BendRule::neutral_axis(NeutralFactor::MIDDLE)
}

/// A clamping beam that leans back from its nose, so tall and so deep.
fn brake(depth: f64) -> Brake {
    let points = [(0.0, 0.6), (-25.0, 40.0), (-depth, 40.0), (-depth, 25.0)].map(|(x, y)| Point { x: mm(x), y: mm(y) }).to_vec();
    let beam = ToolOutline { name: "beam".into(), points };
    Brake { clamp_line: ClampLine::SightLine, up: Tooling { still: vec![beam], swinging: vec![] }, down: None, least_clamped: None, least_swung: None }
}

fn search(profile: Profile, brake: Brake) -> OrderSearch {
    OrderSearch { profile, rule: middle(), brake, springback: None, hem_begun: Some(bent(100.0)), most_nodes: 100_000 }
}

/// Every order, every edge at the gauge: the fewest handlings of those that work, found through the trial of whole plans.
fn fewest(s: &OrderSearch) -> Option<u32> {
    let flat = s.profile.unfold(&s.rule).unwrap();
    let mut best = None;
    let mut open = vec![Vec::<BendStep>::new()];
    while let Some(steps) = open.pop() {
        let left: Vec<_> = flat.bends().iter().filter(|b| steps.iter().all(|s| s.bend != b.part)).collect();
        if left.is_empty() {
            let plan = FoldingPlan { brake: s.brake.clone(), springback: s.springback, steps: steps.clone() };
            let verdict = OrderTrial(BendOrder { profile: s.profile.clone(), rule: s.rule.clone(), plan }).compute().unwrap();
            if verdict.works {
                let handlings = verdict.turns + verdict.flips;
                best = Some(best.map_or(handlings, |b: u32| b.min(handlings)));
            }
        }
        for bend in left {
            for gauged in [SheetEdge::Start, SheetEdge::End] {
                let step = BendStep::new(bend.part, gauged, bend.direction.inside());
                let mut more = steps.clone();
                match s.hem_begun {
                    Some(begun) if bend.angle.degrees() >= 180.0 => more.extend([step.until(begun), step.pressed()]),
                    _ => more.push(step),
                }
                open.push(more);
            }
        }
    }
    best
}

/// A drip with a hem: its order is found, and the plan that it gives computes.
#[test]
fn an_order_for_a_drip() {
    let p = Profile::builder(mm(0.6))
        .painted(Face::Upper)
        .inside_radius(mm(0.8))
        .leg("deck", mm(100.0))
        .down(BendAngle::SQUARE)
        .leg("face", mm(80.0))
        .up(bent(30.0))
        .leg("kick", mm(20.0))
        .end(Edge::closed_hem(mm(12.0), Direction::Up))
        .build()
        .unwrap();
    let s = search(p, brake(60.0));
    let (found, worksheet) = s.explain().unwrap();
    assert_eq!((found.outcome, found.steps.len(), worksheet.steps().len()), (OrderOutcome::Works, 4, 1));
    assert_eq!(found.handlings, fewest(&s));
    let plan = FoldingPlan { brake: s.brake.clone(), springback: None, steps: found.steps.clone() };
    let sheet = BendOrder { profile: s.profile.clone(), rule: middle(), plan }.compute().unwrap();
    assert_eq!(Some(sheet.turns + sheet.flips), found.handlings);
    let some = OrderSearch { most_nodes: 2, ..s.clone() }.compute().unwrap();
    assert_eq!((some.outcome, some.steps.len(), some.handlings, some.nodes), (OrderOutcome::EffortSpent, 0, None, 2));
    for (bad, path) in [
        (OrderSearch { most_nodes: 0, ..s.clone() }, "most_nodes"),
        (OrderSearch { hem_begun: Some(BendAngle::FOLDED), ..s.clone() }, "hem_begun"),
        (OrderSearch { brake: Brake { least_clamped: Some(Length::ZERO), ..s.brake.clone() }, ..s.clone() }, "brake.least_clamped"),
    ] {
        let e = bad.compute().unwrap_err();
        assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, path));
    }
}

/// A box closed by more than its own width cannot be made, whatever the order.
#[test]
fn no_order_works() {
    let p = Profile::builder(mm(1.0)).painted(Face::Upper).inside_radius(mm(1.0)).leg("a", mm(50.0)).up(BendAngle::SQUARE).leg("b", mm(40.0));
    let p = p.up(BendAngle::SQUARE).leg("c", mm(50.0)).up(BendAngle::SQUARE).leg("d", mm(45.0)).build().unwrap();
    let found = search(p.clone(), brake(60.0)).compute().unwrap();
    assert_eq!((found.outcome, found.steps.len()), (OrderOutcome::NoneWorks, 0));
    assert!(found.nodes <= 3 * 4 * 2);
    let many =
        (0..21).fold(Profile::builder(mm(1.0)).painted(Face::Upper).inside_radius(mm(1.0)).leg("a", mm(50.0)), |b, _| b.up(bent(10.0)).leg("b", mm(40.0)));
    let e = search(many.build().unwrap(), brake(60.0)).compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.allowed()), (ErrorKind::TooLarge, "profile.bends", Some("at most 20")));
    let flat = Profile::builder(mm(1.0)).painted(Face::Upper).leg("a", mm(50.0)).build().unwrap();
    let none = search(flat, brake(60.0)).compute().unwrap();
    assert_eq!((none.outcome, none.steps.len(), none.handlings, none.nodes), (OrderOutcome::Works, 0, Some(0), 0));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    /// The search and the trial of all orders agree on whether one works, and on how few handlings it takes.
    #[test]
    fn a_search_misses_nothing(
        legs in prop::collection::vec((15.0_f64..70.0, any::<bool>(), prop_oneof![Just(90.0), 30.0_f64..140.0]), 2..4),
        last in 15.0_f64..70.0,
        depth in 40.0_f64..120.0,
    ) {
        let mut b = Profile::builder(mm(0.6)).painted(Face::Upper).inside_radius(mm(0.6));
        for (length, up, angle) in &legs {
            b = b.leg("leg", mm(*length));
            b = if *up { b.up(bent(*angle)) } else { b.down(bent(*angle)) };
        }
        let s = search(b.leg("last", mm(last)).build().unwrap(), brake(depth));
        let found = s.compute().unwrap();
        prop_assert_eq!(found.handlings, fewest(&s));
        prop_assert_eq!(found.outcome == OrderOutcome::Works, found.handlings.is_some());
        prop_assert_eq!(found.steps.iter().filter(|s| matches!(s.bend, Part::Body(_))).count(), if found.handlings.is_some() { legs.len() } else { 0 });
    }
}
