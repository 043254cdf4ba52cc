//! The engineer's schedule, and how the work is told and stopped.

#![cfg(feature = "serde")]

use super::test_jobs::{at, demo, demo_json, demo_packet, demo_with, work};
use super::*;
use crate::error::ErrorKind;
use crate::record::Source;
use crate::units::Length;
use core::ops::ControlFlow;
use serde_json::{Value, json};

#[test]
fn scheduled_rows_stand_before_the_details() {
    let packet = demo_packet();
    let job = demo();
    let engineer = job.engineer.as_ref().unwrap();
    let mut served = 0;
    for junction in &packet.junctions {
        for row in &junction.along.rows {
            let scheduled = engineer.rows.iter().find(|r| r.line == junction.kind.name() && r.row == row.name);
            assert_eq!(row.engineered, scheduled.is_some(), "{} of {}", row.name, junction.name);
            assert_eq!(row.engineered, matches!(row.source, Source::Engineer { .. }));
            if let Some(scheduled) = scheduled {
                assert_eq!((row.spacing, &row.source), (scheduled.spacing, &engineer.source()));
                served += 1;
            }
        }
        let open: Vec<&str> = junction.along.rows.iter().filter(|r| !r.engineered).map(|r| r.name.as_str()).collect();
        assert_eq!(junction.not_engineered().collect::<Vec<_>>(), open);
    }
    assert!(served > engineer.rows.len());
    assert!(packet.clips.iter().all(|c| c.schedule.engineered && c.rule.source() == &engineer.source()));
}

#[test]
fn a_row_of_one_line_stands_before_that_of_its_kind() {
    let mut json = demo_json();
    at(&mut json, "engineer.rows").as_array_mut().unwrap().push(json!({"line": "eave 2", "row": "continuous cleat's fasteners", "spacing": "4\""}));
    for reversed in [false, true] {
        if reversed {
            at(&mut json, "engineer.rows").as_array_mut().unwrap().reverse();
        }
        let packet = work(&json).unwrap();
        for (line, spacing) in [("eave 1", 6), ("eave 2", 4)] {
            let row = packet.junction(line).unwrap().along.rows.iter().find(|r| r.name == "continuous cleat's fasteners").unwrap();
            assert_eq!((row.spacing, row.engineered), (Length::inches(spacing), true), "{line}");
        }
    }
}

#[test]
fn a_row_that_nothing_has_is_refused_with_those_that_are_there() {
    let e = work(&demo_with("engineer.rows[0].row", json!("closure screwz"))).unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Unknown, "engineer.rows[0]", Some("ridge, closure screwz")));
    assert!(e.allowed().unwrap().contains("closure screws"), "{e}");
    let e = work(&demo_with("engineer.rows[2].line", json!("eave 99"))).unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Unknown, "engineer.rows[2]"));
    assert!(e.allowed().unwrap().contains("eave 1") && e.allowed().unwrap().contains("ridge"), "{e}");
    // Both at once, and a line of another kind than those of the row.
    let mut json = demo_with("engineer.rows[0].row", json!("nails"));
    *at(&mut json, "engineer.rows[4].line") = json!("ridge");
    let e = work(&json).unwrap_err();
    assert_eq!((e.path(), e.others().len(), e.others()[0].path()), ("engineer.rows[0]", 1, "engineer.rows[4]"));
}

#[test]
fn without_a_schedule_nothing_is_engineered() {
    let packet = work(&demo_with("engineer", Value::Null)).unwrap();
    assert!(packet.junctions.iter().flat_map(|j| &j.along.rows).all(|r| !r.engineered));
    assert!(packet.clips.iter().all(|c| !c.schedule.engineered));
    let rows: usize = packet.junctions.iter().map(|j| j.along.rows.len()).sum();
    assert_eq!((packet.summary.engineered_rows, packet.summary.not_engineered_rows), (0, rows + packet.planes.len()));
    assert!(packet.order.iter().filter(|l| matches!(l.group, OrderGroup::Fasteners | OrderGroup::Clips)).all(|l| l.engineered == Some(false)));
    assert_eq!(packet.summary.sources.engineer, 0);
    for junction in packet.junctions.iter().filter(|j| !j.along.rows.is_empty()) {
        let subject = format!("lines.{}.", junction.name);
        assert!(packet.cautions.iter().any(|c| c.code().name == "row-not-engineered" && c.subject().starts_with(&subject)), "{}", junction.name);
    }
    // The spacings of the details stand.
    let ridge = packet.junction("ridge 1").unwrap().along.rows.iter().find(|r| r.name == "closure screws").unwrap();
    assert_eq!(ridge.spacing, Length::inches(8));
}

#[test]
fn without_temperatures_the_packet_says_so() {
    let packet = work(&demo_with("temperatures", Value::Null)).unwrap();
    assert!(packet.heat.iter().all(|h| h.movement.is_none()));
    assert!(packet.cautions.iter().any(|c| c.code() == cautions::MOVEMENT_UNCHECKED));
    assert!(demo_packet().heat.iter().all(|h| h.movement.is_some()));
    assert!(!demo_packet().cautions.iter().any(|c| c.code() == cautions::MOVEMENT_UNCHECKED));
}

const STAGES: [Stage; 7] = [Stage::Roof, Stage::Sections, Stage::Panels, Stage::Lines, Stage::Clips, Stage::Trims, Stage::Order];

#[test]
fn stages_come_in_order_and_count_up() {
    let mut told: Vec<Progress> = Vec::new();
    let packet = demo()
        .packet(&mut |p| {
            told.push(p);
            ControlFlow::Continue(())
        })
        .unwrap();
    assert_eq!(&packet, demo_packet());
    let mut stages: Vec<Stage> = told.iter().map(|p| p.stage).collect();
    assert!(stages.is_sorted());
    stages.dedup();
    assert_eq!(stages, STAGES);
    for stage in STAGES {
        let of: Vec<&Progress> = told.iter().filter(|p| p.stage == stage).collect();
        assert!(of.windows(2).all(|w| w[0].done < w[1].done && w[0].of == w[1].of), "{}", stage.name());
        let last = of.last().unwrap();
        assert_eq!(last.done, last.of, "{}", stage.name());
    }
    let of = |stage| told.iter().filter(|p| p.stage == stage).count();
    assert_eq!((of(Stage::Panels), of(Stage::Lines)), (packet.planes.len(), packet.roof.lines().len()));
}

#[test]
fn the_caller_stops_the_work_at_any_stage() {
    for stage in STAGES {
        let mut after = 0;
        let stop = &mut |p: Progress| {
            if p.stage >= stage {
                after += 1;
                ControlFlow::Break(())
            } else {
                ControlFlow::Continue(())
            }
        };
        let e = demo().packet(stop).unwrap_err();
        assert_eq!((e.kind(), e.path(), after), (ErrorKind::Cancelled, "progress", 1), "{}", stage.name());
        assert!(e.value().unwrap().starts_with(stage.name()), "{e}");
        let e = demo().packet_explained(&mut |p| if p.stage == stage { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }).unwrap_err();
        assert_eq!(e.kind(), ErrorKind::Cancelled);
    }
}
