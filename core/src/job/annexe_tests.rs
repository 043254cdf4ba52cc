//! Copings and pipes in a job: what a small annexe takes, worked by hand, and what is refused.

#![cfg(feature = "serde")]

use super::test_jobs::{ANNEXE, annexe_json, annexe_with, at, near, refused, work};
use super::*;
use crate::assembly::{CopingCornerKind, CopingMeets, Fixing};
use crate::error::ErrorKind;
use crate::junction::{CopingHold, FixedLine};
use crate::record::Calculation;
use crate::units::Length;
use serde_json::{Value, json};

fn annexe() -> Packet {
    Job::from_json(ANNEXE).unwrap().compute().unwrap()
}

#[test]
fn the_annexe_s_copings_are_what_they_are_by_hand() {
    let packet = annexe();
    let (east, north) = (&packet.copings[0], &packet.copings[1]);
    assert_eq!((east.run.walls[0].as_str(), north.run.walls[0].as_str()), ("east parapet", "north parapet"));
    // Each outer edge passes the corner of the faces by 8 in of thickness.
    assert!(near(east.run.length, (22.0 * 12.0 + 8.0) * 25.4) && near(north.run.length, (38.0 * 12.0 + 8.0) * 25.4));
    assert_eq!(east.run.ends, [CopingMeets::Free, CopingMeets::Corner { corner: 0 }]);
    assert_eq!((packet.coping_corners.len(), packet.coping_corners[0].corner.kind), (1, CopingCornerKind::Outside));
    // Steel over 10 ft from 70 to 160 degF: 12e-6 * 3048 * 50 = 1.8288 mm, with 1/8 in of clearance less than the rule's 1/4 in.
    assert!(near(east.pieces.gap_when_laid, 6.35));
    for (item, run) in [(east, 272.0), (north, 464.0)] {
        let pieces: f64 = item.pieces.pieces.iter().map(|p| p.length.mm() * f64::from(u32::try_from(p.count).unwrap())).sum();
        let gaps = f64::from(u32::try_from(item.pieces.joints).unwrap()) * 6.35;
        assert!((pieces + gaps + 18.0 * 25.4 - run * 25.4).abs() < 1e-6, "{}", item.name);
        assert_eq!((item.pieces.end_caps, item.pieces.wall_ends), (1, 0));
    }
    // A mitre of 45 degrees reaches past the leg by what the drip stands out of the wall's outer face.
    let out = east.section.trim("coping").unwrap().corners.iter().map(|c| c.x).max().unwrap();
    for cut in packet.coping_corners[0].cut {
        assert!(near(cut, 18.0 * 25.4 + out.mm()));
    }
    assert!(out > Length::parse("3/4 in").unwrap() && out < Length::parse("2 in").unwrap());
}

#[test]
fn the_order_has_every_piece_once() {
    let packet = annexe();
    let coping = packet.trims.iter().find(|t| t.name == "coping").unwrap();
    let straight: usize = packet.copings.iter().flat_map(|c| &c.pieces.pieces).map(|p| usize::try_from(p.count).unwrap()).sum();
    let cut: usize = coping.runs.iter().map(|r| r.pieces.len()).sum();
    assert_eq!(cut, straight + 2, "two halves of one corner piece");
    assert!(coping.runs.iter().all(|r| r.line.is_none()));
    let plates = packet.trims.iter().find(|t| t.name == "joint plate").unwrap();
    let joints: u64 = packet.copings.iter().map(|c| c.pieces.joints).sum();
    assert_eq!(plates.runs.iter().map(|r| r.pieces.len()).sum::<usize>(), usize::try_from(joints).unwrap());
    for cleat in packet.trims.iter().filter(|t| t.name.starts_with("continuous cleat, ")) {
        let item = |name: &str| packet.copings.iter().find(|c| c.name == name).unwrap();
        for run in &cleat.runs {
            let made = item(&run.name).pieces.cleats.iter().find(|c| c.length == run.run).unwrap();
            assert_eq!(u64::try_from(run.pieces.len()).unwrap(), made.pieces);
        }
        assert_eq!(cleat.runs.len(), 2);
    }
    let ordered = |item: &str| packet.order.iter().filter(|l| l.item == item).map(|l| l.count).sum::<u64>();
    assert_eq!((ordered("coping, outside corner"), ordered("coping, end cap"), ordered("pipe boot with its clamp")), (1, 2, 1));
    let screws: u64 = packet.copings.iter().flat_map(|c| &c.pieces.screws).map(|s| s.count).sum();
    let of_lines: u64 =
        packet.junctions.iter().flat_map(|j| &j.along.rows).filter(|r| r.name == "continuous cleat's fasteners").map(|r| u64::try_from(r.count).unwrap()).sum();
    assert_eq!(ordered("continuous cleat's fasteners"), screws + of_lines);
    assert_eq!(ordered("screws of a pipe's base"), packet.pipes[0].made.screws);
    let bead: f64 = packet.copings.iter().map(|c| c.pieces.bead.mm() + c.pieces.end_bead.mm()).sum::<f64>() + packet.pipes[0].made.collar.mm();
    let gun = packet.order.iter().find(|l| l.item == "gun sealant" && l.spec.contains("3/8") && l.spec.contains("1/4")).unwrap();
    let of_lines: f64 =
        packet.junctions.iter().flat_map(|j| &j.along.beads).filter(|b| near(b.width, 9.525) && near(b.depth, 6.35)).map(|b| b.length.mm()).sum();
    assert!((gun.net.unwrap().mm() - bead - of_lines).abs() < 1e-6);
}

#[test]
fn the_engineer_s_rows_serve_copings_and_pipes() {
    let packet = annexe();
    for screws in packet.copings.iter().flat_map(|c| &c.pieces.screws) {
        assert_eq!((screws.engineered, screws.spacing), (true, Length::inches(8)));
    }
    let mut json = annexe_json();
    json["engineer"]["rows"].as_array_mut().unwrap().push(json!({"line": "pipe", "row": "screws of the base", "spacing": "1 in"}));
    json["engineer"]["rows"].as_array_mut().unwrap().push(json!({"line": "coping 2", "row": "continuous cleat's fasteners", "spacing": "6 in"}));
    let more = work(&json).unwrap();
    assert!(more.pipes[0].made.engineered && more.pipes[0].made.screws > packet.pipes[0].made.screws);
    assert_eq!(more.copings.iter().map(|c| c.pieces.screws[0].spacing).collect::<Vec<_>>(), [Length::inches(8), Length::inches(6)]);
    let e = refused(&annexe_with("engineer.rows[0]", json!({"line": "coping", "row": "face screws", "spacing": "6 in"})));
    assert_eq!((e.path(), e.allowed()), ("engineer.rows[0]", Some("a row among continuous cleat's fasteners")));
}

#[test]
fn the_flue_stands_where_it_is_measured() {
    let packet = annexe();
    let flue = &packet.pipes[0];
    let (along, up) = ((12.0 * 12.0 + 8.0) * 25.4, 9.5 * 304.8);
    assert!(near(flue.on_plane.x, along) && near(flue.on_plane.y, up));
    // In plan it lies nearer to the eave by the slope factor of 3:12, and a quarter of that higher.
    let plan = up / (1.0_f64 + 1.0 / 16.0).sqrt();
    assert!(near(flue.at.x, along) && (flue.at.y.mm() - plan).abs() < 1e-4 && (flue.at.z.mm() - 3048.0 - plan / 4.0).abs() < 1e-4);
    // 152 in across from the left rake: 8 in into the tenth panel of 16 in.
    assert_eq!(flue.panels, [9]);
    assert!(near(flue.pipe.from_seam, 8.0 * 25.4) && flue.pipe.coverage == Length::inches(16));
    let panel = &packet.planes[0].laid.panels[9];
    assert!(near(flue.above_end, up - panel.lower[0].left.y.mm()) && flue.foot == "eave 1");
    // The headwall's closures fix the panels at their tops.
    assert_eq!(packet.heat[0].pins.panels[9].fixing, Fixing::Upper);
    assert_eq!(flue.pipe.fixed, FixedLine::Above);
    assert!(near(flue.pipe.to_fixed, panel.upper[0].left.y.mm() - up));
    assert_eq!(flue.made, flue.pipe.compute().unwrap());
    // By its point in plan it is the same pipe.
    let mm = |l: Length| format!("{} mm", l.mm());
    let by_plan = work(&annexe_with("pipes[0].place", json!({"plan": {"x": mm(flue.at.x), "y": mm(flue.at.y)}}))).unwrap();
    assert!((by_plan.pipes[0].on_plane.y.mm() - up).abs() < 1e-4 && by_plan.pipes[0].made.screws == flue.made.screws);
    // From the right end of the eave, and down from the headwall.
    let right = json!({"off-line": {"line": "eave 1", "from": "right", "along": "7'-4\"", "off": "9'-6\""}});
    assert!(near(work(&annexe_with("pipes[0].place", right)).unwrap().pipes[0].on_plane.x, along));
    let down = json!({"off-line": {"line": "headwall 1", "from": "left", "along": "12'-8\"", "off": "-10 ft"}});
    let place = work(&annexe_with("pipes[0].place", down)).unwrap().pipes[0].on_plane;
    assert!(near(place.x, along) && (place.y.mm() - (22.0 * 304.8 * (1.0_f64 + 1.0 / 16.0).sqrt() - 3048.0)).abs() < 1e-4);
}

#[test]
fn a_pipe_on_a_seam_is_refused_with_the_start_that_clears_it() {
    let near_seam = json!({"off-line": {"line": "eave 1", "from": "left", "along": "12'-0\"", "off": "9'-6\""}});
    let json = annexe_with("pipes[0].place", near_seam);
    let e = refused(&json);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "pipes[0].place"));
    assert!(e.message().contains("too near to the seam") && e.message().contains("boiler flue"), "{e}");
    let cure = e.cure().unwrap();
    let datum = cure.split("{\"datum\": \"").nth(1).and_then(|c| c.split('"').next()).unwrap();
    assert!(cure.contains("as its start in layout.planes"), "{cure}");
    // What it says does.
    let mut json = json;
    json["layout"]["planes"] = json!([{"plane": "annexe", "start": {"datum": datum}}]);
    let packet = work(&json).unwrap();
    assert!(packet.pipes[0].made.to_seam.iter().all(|d| *d >= packet.pipes[0].pipe.least_to_seam));
    // No shift helps a base that no panel takes; it may cross its seams if the job says so.
    let mut wide = annexe_with("pipes[0].diameter", json!("10 in"));
    let e = refused(&wide);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "pipes[0].detail.base.seal"));
    *at(&mut wide, "pipes[0].detail.may_cross_seams") = json!(true);
    *at(&mut wide, "pipes[0].detail.base.seal") = json!("4 in");
    let crossing = work(&wide).unwrap();
    assert!(crossing.pipes[0].made.seams_crossed > 0 && crossing.pipes[0].panels.len() > 1);
}

/// Where a value is put, the value, and the refusal: its kind, its path, its value and what is accepted; a `*` stands for any.
type Case = (&'static str, Value, ErrorKind, &'static str, &'static str, &'static str);

#[test]
fn bad_copings_and_pipes_are_refused_by_field_value_and_what_would_do() {
    use ErrorKind::{Conflict, Geometry, Impossible, Missing, OutOfRange, Unknown};
    let place = |line: &str, along: &str, off: &str| json!({"off-line": {"line": line, "from": "left", "along": along, "off": off}});
    let cases: Vec<Case> = vec![
        ("copings[0].walls", json!([]), Missing, "copings[0].walls", "", "the name of a wall"),
        ("copings[0].walls[1]", json!("south parapet"), Unknown, "copings[0].walls[1]", "south parapet", "east parapet, north parapet"),
        ("copings[0].walls[1]", json!("east parapet"), Conflict, "copings[0].walls[1]", "east parapet", "each wall once"),
        ("copings[0].thickness", json!("0 in"), OutOfRange, "copings[0].thickness", "0 mm", "more than 0"),
        ("copings[0].corner", json!("6 in"), Impossible, "copings[0].corner", "152.4 mm", "304.8 mm or more"),
        ("copings[0].corner", json!("40 ft"), Impossible, "copings[0].corner", "*", "less than"),
        ("copings[0].piece", json!("12 ft"), Impossible, "copings[0]", "*", "pieces of at most 3048 mm"),
        ("copings[0].joint.plate", json!("8 in"), Impossible, "copings[0].joint.plate", "203.2 mm", "101.6 mm or more"),
        ("copings[0].detail.fall", json!("-1:12"), OutOfRange, "copings[0].detail.fall", "*", "*"),
        ("copings[0].detail.sheet.thickness", json!("0.05 in"), Missing, "copings[0].detail.sheet.thickness", "1.27 mm", "0.70104 mm"),
        ("copings[0].colour", json!("red"), Unknown, "copings[0].colour", "*", "*"),
        ("roof.walls[0].top", Value::Null, Missing, "roof.walls[0].top", "east parapet", "the height"),
        // The roof reaches 15'-6" at the north wall: a top 3 in over it leaves no room for the coping's face.
        ("roof.walls[1].top", json!("15'-9\""), Impossible, "copings[0].detail.roof_side.depth", "101.6 mm", "less than"),
        ("roof.walls[1].top", json!("16'-0\""), Impossible, "roof.walls[1].top", "4876.8 mm", "or more"),
        ("temperatures", Value::Null, Missing, "temperatures", "", "coldest"),
        ("pipes[0].name", json!(" "), Missing, "pipes[0].name", " ", "a name"),
        ("pipes[0].plane", json!("tower"), Unknown, "pipes[0].plane", "tower", "annexe"),
        ("pipes[0].diameter", json!("0 in"), OutOfRange, "pipes[0].diameter", "0 mm", "more than 0"),
        ("pipes[0].place", place("eave 7", "1 ft", "1 ft"), Unknown, "pipes[0].place.off-line.line", "eave 7", "eave 1"),
        ("pipes[0].place", place("rake 1", "1 ft", "1 ft"), Conflict, "pipes[0].place.off-line.line", "rake 1", "crosses the fall"),
        ("pipes[0].place", place("eave 1", "-1 ft", "1 ft"), OutOfRange, "pipes[0].place.off-line.along", "-304.8 mm", "0 mm or more"),
        ("pipes[0].place", place("eave 1", "50 ft", "1 ft"), Geometry, "pipes[0].place", "*", "a place on a panel"),
        ("pipes[0].place", place("eave 1", "12'-8\"", "2 in"), Impossible, "pipes[0].place", "*", "farther from that end"),
        ("pipes[0].detail.base.tape_width", json!("6 in"), Impossible, "pipes[0].detail.base.tape_width", "152.4 mm", "*"),
        ("pipes[0].detail.collar_bead.depth", json!("0 in"), OutOfRange, "pipes[0].detail.collar_bead.depth", "0 mm", "more than 0"),
        ("pipes[0].detail.clearance", json!("-1 in"), OutOfRange, "pipes[0].detail.clearance", "-25.4 mm", "0 mm or more"),
    ];
    for (path, value, kind, said_at, said, accepted) in cases {
        let e = refused(&annexe_with(path, value.clone()));
        let case = format!("{path} = {value}: {e}");
        assert_eq!((e.kind(), e.path()), (kind, said_at), "{case}");
        match said {
            "*" => assert!(e.value().is_some_and(|v| !v.is_empty()), "{case}"),
            _ => assert_eq!(e.value().unwrap_or(""), said, "{case}"),
        }
        assert!(e.allowed().is_some_and(|a| !a.is_empty() && (accepted == "*" || a.contains(accepted))), "{case}");
    }
}

#[test]
fn two_pipes_stand_as_far_apart_as_their_rule_asks() {
    let mut json = annexe_json();
    let mut vent = json["pipes"][0].clone();
    vent["name"] = json!("vent");
    vent["place"]["off-line"]["off"] = json!("10'-6\"");
    json["pipes"].as_array_mut().unwrap().push(vent);
    // 12 in between middles, 3 1/2 in of pipe: 8 1/2 in, short of 18 in.
    let e = refused(&json);
    assert_eq!((e.kind(), e.path(), e.value(), e.others().len()), (ErrorKind::Impossible, "pipes[0].place", Some("215.9 mm"), 1));
    *at(&mut json, "pipes[1].place.off-line.off") = json!("11'-4\"");
    let packet = work(&json).unwrap();
    // 22 in between middles.
    assert!(near(packet.pipes[1].pipe.next.as_ref().unwrap().distance, 18.5 * 25.4));
    assert_eq!(packet.order.iter().filter(|l| l.item == "pipe boot with its clamp").map(|l| l.count).collect::<Vec<_>>(), [1, 1]);
    *at(&mut json, "pipes[1].name") = json!("boiler flue");
    assert_eq!(refused(&json).path(), "pipes[1].name");
}

#[test]
fn a_tee_and_a_higher_wall_in_a_job() {
    // A wall across the roof along the fall has the roof on both of its sides: two faces, and the one of the west has the coping.
    let mut json = annexe_json();
    let e = {
        let mut both = json.clone();
        let walls = both["roof"]["walls"].as_array_mut().unwrap();
        walls.push(json!({"name": "lost", "from": {"x": "60'", "y": "0'"}, "to": {"x": "60'", "y": "22'"}, "top": "17'-6\""}));
        both["copings"][0]["walls"] = json!(["east parapet", "north parapet", "lost"]);
        refused(&both)
    };
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Conflict, "copings[0].walls[2]", Some("lost")));
    // Lower than the east one, the north parapet ends against it, and no corner piece is made.
    json["roof"]["walls"][1]["top"] = json!("17'-0\"");
    let packet = work(&json).unwrap();
    assert!(packet.coping_corners.is_empty());
    assert_eq!(packet.copings[1].run.ends[0], CopingMeets::Wall { wall: "east parapet".into() });
    let n = |item: &str| packet.order.iter().filter(|l| l.item == item).map(|l| l.count).sum::<u64>();
    assert_eq!((n("coping, end cap"), n("coping, end turned up against a wall")), (3, 1));
    let hold = &packet.copings[0].coping.detail.outside.hold;
    assert!(matches!(hold, CopingHold::Cleat(_)));
}

#[test]
fn the_canopy_steps_down_from_the_annexe() {
    let packet = annexe();
    let step = packet.junction("step 1").unwrap();
    let line = &packet.roof.lines()[step.line];
    assert_eq!((line.riser, line.length), (Some(Length::inches(15)), Length::feet(12)));
    // The lower plane is the first side, the upper one the second.
    assert_eq!((packet.planes[step.first.plane].name.as_str(), packet.planes[step.second.unwrap().plane].name.as_str()), ("canopy", "annexe"));
    // Both ends of the panels are the section's: a turned-up end below, an eave's fold above.
    let ends: Vec<_> = step.section.ends.iter().map(|e| e.side).collect();
    assert_eq!(ends, [crate::junction::Side::First, crate::junction::Side::Second]);
    let edge = |plane: usize| {
        let lay = &packet.planes[plane];
        let edge = lay.lines.iter().position(|l| *l == step.line).unwrap();
        lay.layout.edges[edge].clone()
    };
    for (plane, side) in [(step.first.plane, crate::junction::Side::First), (step.second.unwrap().plane, crate::junction::Side::Second)] {
        assert_eq!(edge(plane), crate::layout::EdgeUse::End(step.section.end(side).unwrap().clone()), "{plane}");
    }
    // 12 ft of canopy in panels of 16 in: a closure for each.
    assert_eq!(step.along.closures.iter().map(|c| c.list.pieces).sum::<usize>(), 9);
    for trim in ["lower flashing", "eave trim", "hook strip"] {
        let item = packet.trims.iter().find(|t| t.runs.iter().any(|r| r.line == Some(step.line)) && t.name == trim);
        assert!(item.is_some_and(|t| t.runs.iter().any(|r| r.run >= line.length)), "{trim}");
    }
    assert!(packet.roof.drains().iter().any(|d| d.line == step.line && d.to == crate::roof::Outfall::Plane(step.first.plane)));
    assert!(step.work.iter().any(|w| w.does.contains("up the riser")) && step.work.last().unwrap().does.contains("upper panels"));
    // Above the riser the panels hang over the drip trim as at an eave, and shelter its fasteners.
    assert!(step.water.cautions.is_empty(), "{:?}", step.water.cautions);
    // Nothing breaks the sealed line under the riser.
    assert!(step.sealed.iter().all(|s| s.check.breaks.is_empty()), "{:?}", step.sealed);
}

#[test]
fn steps_that_cannot_be_are_refused() {
    use ErrorKind::{Geometry, Impossible, Missing, Unknown};
    let canopy = |path: &'static str, value: Value| (path, value);
    let cases = [
        (canopy("roof.steps[0].lower", json!("porch")), Unknown, "roof.steps[0].lower", "porch", "annexe, canopy"),
        (canopy("roof.steps[0]", json!({"lower": "annexe", "upper": "canopy"})), Geometry, "roof.steps[0]", "-381 mm", "a riser of more than"),
        (canopy("roof.planes[1].shape.plan.down_slope", json!("90 deg")), Geometry, "roof.steps[0]", "*", "water away"),
        (canopy("roof.planes[1].shape.plan.down_slope", json!("180 deg")), Geometry, "roof.steps[0]", "*", "one height within"),
        // A riser of 9 in: the flashing's leg stands too low over the pan.
        (canopy("roof.planes[1].shape.plan.anchor.z", json!("9'-3\"")), Impossible, "lines.step 1.riser", "228.6 mm", "or more"),
        (canopy("junctions.kinds[4]", json!({"high-edge": null})), ErrorKind::Format, "junctions.kinds[4].high-edge", "*", "*"),
        (
            canopy("junctions.kinds[4].step.lower.below_edge", json!("-1 in")),
            ErrorKind::OutOfRange,
            "junctions.kinds[4].step.lower.below_edge",
            "-25.4 mm",
            "0 mm or more",
        ),
    ];
    for ((path, value), kind, said_at, said, accepted) in cases {
        let e = refused(&annexe_with(path, value.clone()));
        let case = format!("{path} = {value}: {e}");
        if kind == ErrorKind::Format {
            assert!(e.path().starts_with("junctions.kinds[4]"), "{case}");
            continue;
        }
        assert_eq!((e.kind(), e.path()), (kind, said_at), "{case}");
        assert!(said == "*" || e.value() == Some(said), "{case}");
        assert!(e.allowed().is_some_and(|a| a.contains(accepted)), "{case}");
    }
    // Without a detail for it the line is named.
    let mut json = annexe_json();
    json["junctions"]["kinds"].as_array_mut().unwrap().truncate(4);
    let e = refused(&json);
    assert_eq!((e.kind(), e.value(), e.allowed()), (Missing, Some("step 1"), Some("a detail for the kind step")));
}

#[test]
fn the_annexe_explained_is_the_annexe() {
    let (packet, worksheet) = Job::from_json(ANNEXE).unwrap().explain().unwrap();
    assert_eq!(packet, annexe());
    assert!(!worksheet.entries.is_empty());
}
