//! Small roofs, worked out by hand: a shed, a gable and a hipped roof, in metres.

#![cfg(feature = "serde")]

use super::test_jobs::{gable, hipped, shed, work};
use super::*;
use crate::junction::Side;
use crate::roof::LineKind;
use crate::units::{AreaUnit, Length};

fn kinds(packet: &Packet, kind: LineKind) -> usize {
    packet.junctions.iter().filter(|j| j.kind == kind).count()
}

fn metres(n: u32) -> Length {
    Length::from_mm(f64::from(n) * 1000.0).unwrap()
}

fn end(packet: &Packet, line: &str, side: Side) -> f64 {
    packet.junction(line).unwrap().section.end(side).unwrap().allowance().unwrap().mm()
}

#[test]
fn a_shed_has_one_length() {
    let packet = work(&shed()).unwrap();
    for (kind, count) in [(LineKind::Eave, 1), (LineKind::HighEdge, 1), (LineKind::Rake, 2)] {
        assert_eq!(kinds(&packet, kind), count, "{kind}");
    }
    // 4 m of run at 3:12.
    let clear = 4000.0 * 1.0625_f64.sqrt();
    let lay = packet.plane("shed").unwrap();
    // 8 m in strips of 16 in: 19 whole ones and a rip.
    assert_eq!((lay.laid.panels.len(), lay.laid.panels[19].width), (20, (metres(8) - Length::inches(16) * 19).length().unwrap()));
    let finished = clear + end(&packet, "eave 1", Side::First) + end(&packet, "high edge 1", Side::First);
    for panel in &lay.laid.panels {
        assert!((panel.finished.mm() - finished).abs() < 1e-6, "{} not {finished}", panel.finished);
    }
    // The eave's end: 1 1/2 in over, 3/8 in gap, 1 1/4 in fold. The high edge's: 2 in short and 1 in turned up.
    assert!((end(&packet, "high edge 1", Side::First) + 25.4).abs() < 25.4, "{}", end(&packet, "high edge 1", Side::First));
    assert!((packet.summary.area.get(AreaUnit::SquareMetre) - 8.0 * clear / 1000.0).abs() < 1e-9);
    assert_eq!(packet.junction("high edge 1").unwrap().along.closures[0].list.pieces, 20);
    let stations = |name: &str| packet.junction(name).unwrap().along.length;
    assert_eq!((stations("eave 1"), stations("high edge 1")), (metres(8), metres(8)));
    assert!((stations("rake 1").mm() - clear).abs() < 1e-6);
}

#[test]
fn both_sides_of_a_gable_are_alike() {
    let packet = work(&gable()).unwrap();
    for (kind, count) in [(LineKind::Eave, 2), (LineKind::Ridge, 1), (LineKind::Rake, 4)] {
        assert_eq!(kinds(&packet, kind), count, "{kind}");
    }
    let clear = 4000.0 * (1.0 + 4.0 / 9.0_f64).sqrt();
    let finished = clear + end(&packet, "eave 1", Side::First) + end(&packet, "ridge 1", Side::First);
    assert!((end(&packet, "ridge 1", Side::First) - end(&packet, "ridge 1", Side::Second)).abs() < 1e-9);
    for lay in &packet.planes {
        // 10 m: 24 strips of 16 in and one of 246.4 mm.
        assert_eq!(lay.laid.panels.len(), 25);
        assert!(lay.laid.panels.iter().all(|p| (p.finished.mm() - finished).abs() < 1e-6));
    }
    assert_eq!(packet.summary.lengths, 1);
    let ridge = packet.junction("ridge 1").unwrap();
    assert_eq!(ridge.along.closures.iter().map(|c| c.list.pieces).collect::<Vec<_>>(), [25, 25]);
    // One ridge cap, 10 m: 3048 mm sticks lap 4 in, so 3 cover 2946.4 each and the fourth the rest.
    let cap = packet.trims.iter().find(|t| t.runs.iter().any(|r| r.line == Some(ridge.line))).unwrap();
    let run = cap.runs.iter().find(|r| r.line == Some(ridge.line)).unwrap();
    assert_eq!(run.pieces.len(), 4);
    assert!(run.run >= metres(10));
}

#[test]
fn a_hipped_roof_has_four_hips_and_two_pairs_of_planes() {
    let packet = work(&hipped()).unwrap();
    for (kind, count) in [(LineKind::Eave, 4), (LineKind::Hip, 4), (LineKind::Ridge, 1), (LineKind::Rake, 0)] {
        assert_eq!(kinds(&packet, kind), count, "{kind}");
    }
    // Hip of equal pitches over a square corner: its plan is 4 m by 4 m, its rise 4 m x 8/12.
    let rise = 4000.0 * 8.0 / 12.0;
    for k in 1..=4 {
        let hip = packet.junction(&format!("hip {k}")).unwrap();
        assert!((hip.along.length.mm() - (2.0_f64 * 4000.0 * 4000.0 + rise * rise).sqrt()).abs() < 1e-6);
    }
    let area = 12.0 * 8.0 * (1.0 + 4.0 / 9.0_f64).sqrt();
    assert!((packet.summary.area.get(AreaUnit::SquareMetre) - area).abs() < 1e-9);
    let covered: f64 = packet.planes.iter().map(|p| p.laid.covered.get(AreaUnit::SquareMetre) + p.laid.uncovered.get(AreaUnit::SquareMetre)).sum();
    assert!((covered - area).abs() < 1e-6);
    // A hip's trims run along a sloping line; its closures stand at the meeting angle, one hand on each side.
    let hip = packet.junction("hip 1").unwrap();
    assert_eq!(hip.along.closures.len(), 2);
    assert_eq!(hip.along.trims.len(), hip.section.trims.len());
    let lengths = |name: &str| packet.plane(name).unwrap().laid.panels.iter().map(|p| p.order).collect::<std::collections::BTreeSet<_>>().len();
    assert!(lengths("east") > 3 && lengths("south") > 3);
}
