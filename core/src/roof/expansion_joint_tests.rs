//! Expansion joints along and across the panels: what is one, and what is refused.

use super::{ExpansionJointInput, LineKind, PlaneInput, Point, RoofInput, Shape, Vertex, Wall, Water, cautions};
use crate::error::ErrorKind;
use crate::pitch::Pitch;
use crate::record::Calculation;
use crate::units::{Angle, Length};

fn mm(v: i32) -> Length {
    Length::micrometres(v * 1000)
}

fn plan(name: &str, outer: &[(i32, i32)], pitch: &str, down: f64, (x, y, z): (i32, i32, i32)) -> PlaneInput {
    let outer = outer.iter().map(|(x, y)| Point::new(mm(*x), mm(*y))).collect();
    let (pitch, down_slope) = (Pitch::parse(pitch).unwrap(), Angle::degrees_from(down).unwrap());
    PlaneInput { name: name.into(), shape: Shape::Plan { outer, holes: vec![], pitch, down_slope, anchor: Vertex { x: mm(x), y: mm(y), z: mm(z) } } }
}

fn joint(fixed: &str, sliding: &str) -> ExpansionJointInput {
    ExpansionJointInput { fixed: fixed.into(), sliding: sliding.into() }
}

fn east(outer: &[(i32, i32)], pitch: &str, down: f64, z: i32) -> PlaneInput {
    plan("east", outer, pitch, down, (20_000, 0, z))
}

const EAST: &[(i32, i32)] = &[(20_000, 0), (30_000, 0), (30_000, 8000), (20_000, 8000)];

/// A shed 30 m wide and 8 m deep in plan, parted 20 m from its left end; the cap is fixed to the plane on the right.
fn roof() -> RoofInput {
    let west = plan("west", &[(0, 0), (20_000, 0), (20_000, 8000), (0, 8000)], "3:12", 270.0, (0, 0, 3000));
    let mut roof = RoofInput::new(vec![west, east(EAST, "3:12", 270.0, 3000)]);
    roof.expansion_joints = vec![joint("east", "west")];
    roof
}

#[test]
fn a_joint_is_one_line_up_the_slope_between_planes_in_one() {
    let found = roof().compute().unwrap();
    let line = found.line("expansion joint 1").unwrap();
    // 8 m at 3:12: 8 x 17 / (4 x sqrt(17)) = 2 sqrt(17) m up the slope, by Pythagoras.
    assert!((line.length.mm() - 2000.0 * 17.0_f64.sqrt()).abs() < 1e-6);
    assert_eq!((line.kind, line.plan_length, line.riser), (LineKind::ExpansionAlong, mm(8000), None));
    let (own, other) = (&line.side, line.other().unwrap());
    assert_eq!((own.plane, other.plane, own.water, other.water), (1, 0, Water::Along, Water::Along), "the fixed side is the line's own");
    for side in [own, other] {
        assert!(side.meeting_angle.degrees().abs() < 1e-9 && side.backing.degrees().abs() < 1e-9);
        assert!((side.start.x - side.end.x).length().unwrap().mm().abs() < 1e-9);
    }
    // On the plane at the left it lies 20 m from the left end.
    assert!((other.start.x.mm() - 20_000.0).abs() < 1e-6);
    assert!(line.crossing().is_none() && found.drains().iter().all(|d| found.lines()[d.line].kind == LineKind::Eave));
    assert_eq!((found.lines_of(LineKind::Rake).count(), found.lines_of(LineKind::Eave).count(), found.lines_of(LineKind::HighEdge).count()), (2, 2, 2));
    assert!(found.cautions().is_empty(), "{:?}", found.cautions());
    // Without its name it is a line that cannot be told, as before.
    let plain = RoofInput { expansion_joints: vec![], ..roof() }.compute().unwrap();
    assert_eq!(plain.lines_of(LineKind::Unknown).count(), 1);
    assert!(plain.cautions().iter().any(|c| c.code() == cautions::COPLANAR));
}

#[test]
fn a_joint_on_a_level_line_runs_across_the_panels() {
    use super::Outfall;
    // 30 m to the right at 3:12; the joint lies 20 m along, and the lower plane is the one on the right.
    let mut roof = roof();
    roof.planes[0] = plan("west", &[(0, 0), (20_000, 0), (20_000, 8000), (0, 8000)], "3:12", 0.0, (20_000, 0, 3000));
    roof.planes[1] = east(EAST, "3:12", 0.0, 3000);
    let found = roof.compute().unwrap();
    let line = found.line("expansion joint across 1").unwrap();
    assert_eq!((line.kind, line.length, line.slope.degrees().abs() < 1e-9, line.riser), (LineKind::ExpansionAcross, mm(8000), true, None));
    let (own, other) = (&line.side, line.other().unwrap());
    assert_eq!((own.plane, other.plane, own.water, other.water), (1, 0, Water::Away, Water::Toward), "the lower plane is the line's own");
    assert_eq!(line.crossing(), Some((0, 1)));
    assert!((own.meeting_angle.degrees() - 90.0).abs() < 1e-9 && line.bend().unwrap().degrees().abs() < 1e-9);
    assert!(found.drains().iter().any(|d| d.plane == 0 && d.to == Outfall::Plane(1)));
    assert_eq!((found.lines_of(LineKind::Rake).count(), found.lines_of(LineKind::Eave).count(), found.lines_of(LineKind::HighEdge).count()), (4, 1, 1));
    assert!(found.cautions().is_empty(), "{:?}", found.cautions());
    // Without its name it is a line that cannot be told.
    let plain = RoofInput { expansion_joints: vec![], ..roof }.compute().unwrap();
    assert_eq!(plain.lines_of(LineKind::Unknown).count(), 1);
}

#[test]
fn a_wall_on_a_joint_is_told_as_on_any_line_between_planes() {
    let mut walled = roof();
    walled.walls.push(Wall::new("fire wall", Point::new(mm(20_000), mm(0)), Point::new(mm(20_000), mm(8000))));
    let found = walled.compute().unwrap();
    assert_eq!((found.lines_of(LineKind::ExpansionAlong).count(), found.lines_of(LineKind::Unknown).count()), (0, 1));
    assert!(found.cautions().iter().any(|c| c.code() == cautions::WALL_ON_SHARED_LINE));
}

#[test]
fn what_is_no_joint_is_refused_by_why_and_how_much() {
    let refused = |change: &dyn Fn(&mut RoofInput)| {
        let mut roof = roof();
        change(&mut roof);
        roof.compute().unwrap_err()
    };
    let e = refused(&|r| r.expansion_joints[0].sliding = "annexe".into());
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Unknown, "expansion_joints[0].sliding", Some("annexe")));
    assert_eq!(e.allowed(), Some("west, east"));
    let e = refused(&|r| r.expansion_joints.push(joint("west", "east")));
    assert_eq!((e.kind(), e.path(), e.allowed()), (ErrorKind::Conflict, "expansion_joints[1]", Some("each joint once")));
    let e = refused(&|r| r.expansion_joints[0] = joint("west", "west"));
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Conflict, "expansion_joints[0]", Some("west and west")));
    // Bent along a ridge that both planes leave: 3:12 to both sides is twice atan(1/4), 28.07 degrees.
    let e = refused(&|r| {
        r.planes[0] = plan("west", &[(0, 0), (20_000, 0), (20_000, 8000), (0, 8000)], "3:12", 180.0, (20_000, 0, 3000));
        r.planes[1] = east(EAST, "3:12", 0.0, 3000);
    });
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "expansion_joints[0]"));
    assert!(e.message().contains("one plane") && e.value().unwrap().contains("28.07"), "{e}");
    // In one plane that falls to a corner: the line is neither along the fall nor level.
    let e = refused(&|r| {
        r.planes[0] = plan("west", &[(0, 0), (20_000, 0), (20_000, 8000), (0, 8000)], "3:12", 315.0, (20_000, 0, 3000));
        r.planes[1] = east(EAST, "3:12", 315.0, 3000);
    });
    assert!(e.message().contains("with the fall") && e.allowed().unwrap().starts_with("0 deg or 90 deg"), "{e}");
    // In one plane that falls to the left, the fixed side is the upper one.
    let e = refused(&|r| {
        r.planes[0] = plan("west", &[(0, 0), (20_000, 0), (20_000, 8000), (0, 8000)], "3:12", 180.0, (20_000, 0, 3000));
        r.planes[1] = east(EAST, "3:12", 180.0, 3000);
    });
    assert_eq!(
        (e.kind(), e.path(), e.value(), e.cure()),
        (ErrorKind::Geometry, "expansion_joints[0]", Some("east above west"), Some("the two names exchanged"))
    );
    // Ten metres apart.
    let e = refused(&|r| r.planes[1] = plan("east", &[(30_000, 0), (40_000, 0), (40_000, 8000), (30_000, 8000)], "3:12", 270.0, (30_000, 0, 3000)));
    assert!(e.message().contains("do not meet") && e.value().unwrap().contains("east"), "{e}");
    // A level apart they do not touch either.
    let e = refused(&|r| r.planes[1] = east(EAST, "3:12", 270.0, 4000));
    assert!(e.message().contains("do not meet"), "{e}");
}

#[test]
fn a_plane_between_two_joints_has_both() {
    let mut three = roof();
    three.planes.push(plan("annexe", &[(30_000, 0), (36_000, 0), (36_000, 8000), (30_000, 8000)], "3:12", 270.0, (30_000, 0, 3000)));
    three.expansion_joints.push(joint("annexe", "east"));
    let found = three.compute().unwrap();
    let sides: Vec<_> = found.lines_of(LineKind::ExpansionAlong).map(|l| (l.side.plane, l.other().unwrap().plane)).collect();
    assert_eq!(sides, [(1, 0), (2, 1)]);
    assert_eq!((found.lines_of(LineKind::Rake).count(), found.lines_of(LineKind::Unknown).count()), (2, 0));
    // One of them unnamed stays what the roof cannot tell.
    three.expansion_joints.pop();
    assert_eq!(three.compute().unwrap().lines_of(LineKind::Unknown).count(), 1);
}
