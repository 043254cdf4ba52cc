//! Runs of coping over walls in plan.

use super::{CopedWall, CopingCornerKind, CopingMeets, CopingPlan, CopingWalls, Flank, PlainWall};
use crate::error::ErrorKind;
use crate::junction::Side;
use crate::record::Calculation;
use crate::roof::Point;
use crate::units::Length;
use proptest::prelude::*;

fn p(x: i32, y: i32) -> Point {
    Point::new(Length::micrometres(x * 1000), Length::micrometres(y * 1000))
}

/// 200 mm thick, its top at 5 m, the roof on the left.
fn wall(name: &str, from: Point, to: Point) -> CopedWall {
    CopedWall { name: name.into(), from, to, top: Length::micrometres(5_000_000), thickness: Length::micrometres(200_000), stands: Flank::Right, coping: 0 }
}

fn walls(walls: Vec<CopedWall>) -> CopingWalls {
    CopingWalls { walls, plain: vec![], tolerance: Length::micrometres(1600) }
}

fn mm(plan: &CopingPlan, run: usize) -> f64 {
    plan.runs[run].length.mm()
}

#[test]
fn a_yard_has_four_corners_and_each_is_counted_once() {
    let yard = walls(vec![
        wall("south", p(0, 0), p(9000, 0)),
        wall("east", p(9000, 0), p(9000, 6000)),
        // Given the other way round: the wall stands on its left.
        CopedWall { stands: Flank::Left, ..wall("north", p(0, 6000), p(9000, 6000)) },
        wall("west", p(0, 6000), p(0, 0)),
    ]);
    let plan = yard.compute().unwrap();
    assert_eq!(plan.corners.iter().map(|c| c.kind).collect::<Vec<_>>(), [CopingCornerKind::Outside; 4]);
    // Each outer edge passes its face by the thickness at both ends.
    for (run, face) in [(0, 9000.0), (1, 6000.0), (2, 9000.0), (3, 6000.0)] {
        assert!((mm(&plan, run) - face - 400.0).abs() < 1e-9, "{run}");
        assert!(plan.runs[run].ends.iter().all(|e| matches!(e, CopingMeets::Corner { .. })));
    }
    // Every run names two of the four corners, and every corner is named twice.
    let mut named: Vec<usize> =
        plan.runs.iter().flat_map(|r| &r.ends).filter_map(|e| if let CopingMeets::Corner { corner } = e { Some(*corner) } else { None }).collect();
    named.sort_unstable();
    assert_eq!(named, [0, 0, 1, 1, 2, 2, 3, 3]);
    assert!(plan.corners.iter().all(|c| (c.turn.degrees() - 90.0).abs() < 1e-9));
    assert_eq!(plan, yard.explain().unwrap().0);
}

#[test]
fn an_inside_corner_takes_the_thickness_off() {
    let plan = walls(vec![wall("south", p(0, 0), p(9000, 0)), wall("recess", p(9000, 0), p(9000, -4000))]).compute().unwrap();
    assert_eq!(plan.corners[0].kind, CopingCornerKind::Inside);
    assert!((mm(&plan, 0) - 8800.0).abs() < 1e-9 && (mm(&plan, 1) - 3800.0).abs() < 1e-9);
    assert!((plan.corners[0].at.x.mm() - 8800.0).abs() < 1e-9 && (plan.corners[0].at.y.mm() + 200.0).abs() < 1e-9);
}

#[test]
fn walls_in_line_are_one_run_and_a_tee_is_on_it() {
    let plan = walls(vec![
        wall("a", p(0, 0), p(5000, 0)),
        wall("b", p(5000, 0), p(12_000, 0)),
        // Up from the roof side of b: its own thickness lies east of its face.
        wall("party", p(9000, 0), p(9000, 6000)),
    ])
    .compute()
    .unwrap();
    assert_eq!(plan.runs.iter().map(|r| r.walls.join("+")).collect::<Vec<_>>(), ["a+b", "party"]);
    let tee = plan.runs[0].tees[0];
    assert!((tee.at.mm() - 9100.0).abs() < 1e-9 && (tee.width.mm() - 200.0).abs() < 1e-9);
    assert_eq!((tee.side, plan.corners[tee.corner].kind, plan.corners[tee.corner].runs), (Side::First, CopingCornerKind::Tee, [0, 1]));
    assert_eq!(plan.runs[1].ends, [CopingMeets::Corner { corner: tee.corner }, CopingMeets::Free]);
    assert!((mm(&plan, 0) - 12_000.0).abs() < 1e-9 && (mm(&plan, 1) - 6000.0).abs() < 1e-9);
}

#[test]
fn a_lower_wall_ends_against_a_higher_one() {
    let low = |w: CopedWall| CopedWall { top: Length::micrometres(4_500_000), ..w };
    let plan = walls(vec![wall("south", p(0, 0), p(9000, 0)), low(wall("east", p(9000, 0), p(9000, 6000)))]).compute().unwrap();
    assert!(plan.corners.is_empty());
    // The higher goes over the corner; the lower comes up to its face.
    assert_eq!(plan.runs[0].ends, [CopingMeets::Free, CopingMeets::Free]);
    assert_eq!(plan.runs[1].ends, [CopingMeets::Wall { wall: "south".into() }, CopingMeets::Free]);
    assert!((mm(&plan, 0) - 9200.0).abs() < 1e-9 && (mm(&plan, 1) - 6000.0).abs() < 1e-9);
    // A wall without a coping, higher than all; and one that is lower.
    let tower = |top| PlainWall { name: "tower".into(), from: p(0, -3000), to: p(0, 3000), top };
    let mut one = walls(vec![wall("south", p(0, 0), p(9000, 0))]);
    one.plain = vec![tower(None)];
    assert_eq!(one.compute().unwrap().runs[0].ends[0], CopingMeets::Wall { wall: "tower".into() });
    one.plain = vec![tower(Some(Length::micrometres(4_000_000)))];
    assert_eq!(one.compute().unwrap().runs[0].ends[0], CopingMeets::Free);
    // On the face of a coped wall that is higher, and on one that is lower.
    let ends_on = |top: i32| {
        let on = CopedWall { top: Length::micrometres(top), ..wall("on", p(3000, 0), p(3000, 4000)) };
        walls(vec![wall("south", p(0, 0), p(9000, 0)), on]).compute().unwrap().runs[1].ends[0].clone()
    };
    assert_eq!((ends_on(4_000_000), ends_on(6_000_000)), (CopingMeets::Wall { wall: "south".into() }, CopingMeets::Free));
}

#[test]
fn walls_that_do_not_go_together_are_refused() {
    let refused = |all: Vec<CopedWall>| walls(all).compute().unwrap_err();
    let (south, east) = (wall("south", p(0, 0), p(9000, 0)), wall("east", p(9000, 0), p(9000, 6000)));
    let e = refused(vec![south.clone(), CopedWall { stands: Flank::Left, ..east.clone() }]);
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Conflict, "walls[0]", Some("south")));
    let e = refused(vec![south.clone(), CopedWall { coping: 1, ..east.clone() }]);
    assert_eq!((e.kind(), e.cure()), (ErrorKind::Conflict, Some("both walls named under one coping")));
    let e = refused(vec![south.clone(), wall("back", p(9000, 0), p(0, 100))]);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "walls[0]"));
    let e = refused(vec![south.clone(), east.clone(), wall("third", p(9000, 0), p(14_000, 3000))]);
    assert_eq!((e.kind(), e.others().len()), (ErrorKind::Geometry, 2));
    // Starts on the roof's face and goes out through the wall.
    let e = refused(vec![south.clone(), wall("through", p(3000, 0), p(3000, -4000))]);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "walls[1]"));
    let e = refused(vec![south.clone(), wall("late", p(8900, 0), p(8900, 4000))]);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "walls[1]"));
    let e = refused(vec![CopedWall { thickness: Length::ZERO, ..south.clone() }, south.clone(), wall("none", p(1, 1), p(1, 1))]);
    assert_eq!((e.path(), e.others().iter().map(|o| o.path()).collect::<Vec<_>>()), ("walls[0].thickness", vec!["walls[1].name", "walls[2]"]));
}

proptest! {
    /// Around any triangle the outer edges are those of the triangle moved out: longer than the faces by 2 t sum(cot(half the corner)).
    #[test]
    fn outer_edges_of_a_triangle(a in 20.0..120.0_f64, share in 0.2..0.8_f64, length in 3000.0..30_000.0_f64, thick in 90.0..400.0_f64) {
        let b = (180.0 - a) * share;
        prop_assume!(b > 15.0 && 180.0 - a - b > 15.0);
        let (sin, cos) = (|d: f64| crate::num::sin_deg(d), |d: f64| crate::num::cos_deg(d));
        let side = length * sin(b) / sin(180.0 - a - b);
        let at = |x: f64, y: f64| Point::new(Length::from_mm(x).unwrap(), Length::from_mm(y).unwrap());
        let (one, two, three) = (at(0.0, 0.0), at(length, 0.0), at(side * cos(a), side * sin(a)));
        let t = Length::from_mm(thick).unwrap();
        let make = |n: &str, from, to| CopedWall { thickness: t, ..wall(n, from, to) };
        let plan = walls(vec![make("a", one, two), make("b", two, three), make("c", three, one)]).compute().unwrap();
        prop_assert_eq!(plan.corners.len(), 3);
        let all: f64 = plan.runs.iter().map(|r| r.length.mm()).sum();
        let faces = length + side + length * sin(a) / sin(180.0 - a - b);
        let out: f64 = [a, b, 180.0 - a - b].iter().map(|d| 2.0 * t.mm() * cos(d / 2.0) / sin(d / 2.0)).sum();
        prop_assert!((all - faces - out).abs() < 1e-4, "{all} {faces} {out}");
    }
}
