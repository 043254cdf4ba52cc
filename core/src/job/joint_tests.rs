//! Expansion joints along the panels in a job: what a long gable takes at each, worked by hand, and what is refused.

#![cfg(feature = "serde")]

use super::test_jobs::{ROPEWALK, changed, inch, near, refused, work};
use super::*;
use crate::error::ErrorKind;
use crate::junction::Side;
use crate::layout::EdgeUse;
use crate::panel::{Hold, Reach};
use crate::record::Calculation;
use crate::roof::LineKind;
use crate::units::Length;
use serde_json::{Value, json};

fn ropewalk() -> Packet {
    Job::from_json(ROPEWALK).unwrap().compute().unwrap()
}

fn ropewalk_with(changes: &[(&str, Value)]) -> Value {
    changed(ROPEWALK, changes)
}

#[test]
fn each_joint_has_both_edges_its_cleats_and_its_cap() {
    let packet = ropewalk();
    let joints: Vec<_> = packet.junctions.iter().filter(|j| j.kind == LineKind::ExpansionAlong).collect();
    assert_eq!(joints.iter().map(|j| j.name.as_str()).collect::<Vec<_>>(), ["expansion joint 1", "expansion joint 2"]);
    // 20 ft at 4:12: 20 sqrt(10) / 3 ft up the slope, by Pythagoras.
    let length = 20.0 * 10.0_f64.sqrt() / 3.0 * 304.8;
    // Half the gap of 1 1/8 in, a curb of 1 1/2, and 1/8 of room.
    let edge = inch(9.0 / 16.0 + 1.5 + 0.125);
    for (joint, names) in joints.iter().zip([["south west", "south east"], ["north west", "north east"]]) {
        let line = &packet.roof.lines()[joint.line];
        assert!(near(line.length, length));
        let sides = [joint.first, joint.second.unwrap()];
        assert_eq!(sides.map(|s| packet.planes[s.plane].name.as_str()), names, "the cap is fixed on the first");
        for (of, side) in sides.into_iter().zip([Side::First, Side::Second]) {
            let end = &joint.section.end(side).unwrap();
            assert_eq!((end.turn_up, end.hold), (Length::inches(8), Hold::Slides));
            assert!(matches!(end.reach, Reach::HoldBack(d) if near(d, edge)));
            let struck = joint.along.struck.iter().find(|l| l.side == side && l.name == "panel edge").unwrap();
            assert!(near(struck.from_line.exact, edge));
            // One run of panels lies along it, 61 ft less 45 panels of 16 in wide, and none ends on it.
            let lay = &packet.planes[of.plane];
            let number = lay.lines.iter().position(|l| *l == joint.line).unwrap();
            assert_eq!(lay.layout.edges[number], EdgeUse::Side);
            let along = joint.along.sides.iter().find(|s| s.side == side).unwrap();
            assert_eq!((along.bays.len(), along.beside.len(), along.plane), (0, 1, of.plane));
            assert!(near(along.beside[0].width, inch(12.0)) && near(along.beside[0].stretch.to, length));
            assert_eq!((lay.laid.panels.len(), of.rise.degrees().abs() < 1e-9), (46, true));
        }
        // 61 ft of steel on each side at 6.7e-6 /degF, from 70 up to 160 and down to -20 degF: 90 both ways.
        let moves = 6.7e-6 * 122.0 * 304.8 * 90.0;
        let leg = edge + inch(0.0236 + 0.125);
        let far = leg + inch(2.5 + 0.125) + moves;
        let cap = joint.section.trim("joint cap").unwrap();
        assert!(cap.corners.iter().any(|c| near(c.x, far)), "{:?}, {far}", cap.corners);
        // Each trim is ordered for the whole line at least, each row of fasteners counted along it.
        for name in ["joint cleat, fixed side", "joint cleat, sliding side", "joint cap"] {
            let item = packet.trims.iter().find(|t| t.name == name && t.runs.iter().any(|r| r.line == Some(joint.line))).unwrap();
            let run = item.runs.iter().find(|r| r.line == Some(joint.line)).unwrap();
            assert!(run.run >= line.length && run.pieces.len() == 3, "{name}: {:?}", run.pieces);
        }
        // 253 in less 2 in at both ends, in spaces of at most 12: 21 and a screw more.
        let rows: Vec<_> = joint.along.rows.iter().map(|r| (r.name.as_str(), r.side, r.count)).collect();
        let screws = "cleat fasteners";
        assert_eq!(rows, [(screws, Side::First, 22), (screws, Side::Second, 22), ("rivets of the fixed leg", Side::First, 22)]);
        // The cap sheds the water; the cleats under it butt, and only the cap's laps and its lower end are sealed.
        assert_eq!(joint.along.beads.iter().map(|b| b.name.as_str()).collect::<Vec<_>>(), ["laps of the joint cap", "end of the joint cap"]);
        assert!(joint.work.last().unwrap().does.contains("cap's lower end"));
        assert!(joint.section.cautions.is_empty() && joint.water.cautions.is_empty(), "{:?}", joint.section.cautions);
    }
    // What does not go through the panels does not hold them.
    assert!(packet.heat.iter().all(|h| h.pins.cautions.iter().all(|c| !c.message().contains("expansion joint"))));
}

#[test]
fn the_working_says_what_moves_at_a_joint() {
    let (packet, worksheet) = Job::from_json(ROPEWALK).unwrap().explain().unwrap();
    assert_eq!(packet, ropewalk());
    let said = serde_json::to_string(&worksheet).unwrap();
    for plane in ["south west", "south east", "north west", "north east"] {
        assert!(said.contains(&format!("width of {plane} that moves at the joint")), "{plane}");
    }
}

#[test]
fn the_cap_lies_under_the_ridge_and_over_the_eaves() {
    use crate::assembly::PairRule;
    let packet = ropewalk();
    let pairs = packet.corners.corners.iter().flat_map(|c| &c.pairs).filter(|p| p.first.starts_with("expansion") || p.second.starts_with("expansion"));
    let mut seen = [0, 0];
    for pair in pairs {
        match &pair.rule {
            PairRule::Laps { over, under } if under.starts_with("expansion") && over.starts_with("ridge") => seen[0] += 1,
            PairRule::Laps { over, under } if over.starts_with("expansion") && under.starts_with("eave") => seen[1] += 1,
            PairRule::RunsOn => assert!(pair.first.starts_with("expansion") && pair.second.starts_with("expansion"), "{pair:?}"),
            PairRule::Mitred => assert!(pair.first.starts_with("expansion") && pair.second.starts_with("expansion"), "{pair:?}"),
            PairRule::Covered { by } => assert!(by.starts_with("ridge"), "{pair:?}"),
            other => panic!("{other:?}, {pair:?}"),
        }
    }
    // Two ridge lines over two caps, and a cap over two eaves at each foot.
    assert_eq!(seen, [4, 4]);
}

#[test]
fn a_wider_roof_asks_for_a_wider_gap_and_seams_that_fit() {
    const JOINT: &str = "junctions.kinds[3].expansion-along";
    let of = |field: &str| format!("{JOINT}.{field}");
    // The least gap: what 122 ft close in 90 degF, and 1/8 in.
    let e = refused(&ropewalk_with(&[(&of("gap"), json!("1\""))]));
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Impossible, of("gap").as_str(), Some("25.4 mm")), "{e}");
    let least = 6.7e-6 * 122.0 * 304.8 * 90.0 + inch(0.125);
    let short = Length::from_mm(least - 25.4).unwrap().to_string();
    assert!(e.message().contains(&short) || e.allowed().is_some_and(|a| a.contains(&Length::from_mm(least).unwrap().to_string())), "{e}");
    let e = refused(&ropewalk_with(&[(&of("hook"), json!("2\""))]));
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, of("hook").as_str()), "{e}");
    let e = refused(&ropewalk_with(&[(&of("turn_up"), json!("-8\""))]));
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::OutOfRange, of("turn_up").as_str(), Some("-203.2 mm")), "{e}");
    let mut cold = ropewalk_with(&[]);
    cold.as_object_mut().unwrap().remove("temperatures");
    let e = refused(&cold);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Missing, "temperatures"), "{e}");
    // Seams from the joint outward by 2 in: the first stands on the curb.
    let e = refused(&ropewalk_with(&[("layout.planes[0].start", json!({"datum": "60'-10\""}))]));
    assert_eq!((e.kind(), e.value()), (ErrorKind::Impossible, Some("50.8 mm")), "{e}");
    assert!(e.path().starts_with("lines.expansion joint") && e.cure().unwrap().contains("layout.planes"), "{e}");
    // Whole panels to the joint: 16 in less 2 3/16 in and 8 in of edge are 21 13/16 in, more than the coil leaves beside a seam's leg.
    let packet = work(&ropewalk_with(&[("layout.planes[0].start", json!("right"))])).unwrap();
    let said: Vec<_> = packet.cautions.iter().filter(|c| c.code().number == 8004).collect();
    assert_eq!(said.len(), 2, "south west and, with its seams, north west");
    assert!(said[0].message().contains("554.0375"), "{}", said[0].message());
    // No joint named: the line is not known.
    let mut plain = ropewalk_with(&[]);
    plain["roof"].as_object_mut().unwrap().remove("expansion_joints");
    assert_eq!(work(&plain).unwrap().roof.lines_of(LineKind::Unknown).count(), 2);
    // No detail for it.
    let mut bare = ropewalk_with(&[]);
    bare["junctions"]["kinds"].as_array_mut().unwrap().truncate(3);
    let e = refused(&bare);
    assert_eq!(
        (e.kind(), e.value(), e.allowed()),
        (ErrorKind::Missing, Some("expansion joint 1, expansion joint 2"), Some("a detail for the kind expansion joint"))
    );
}
