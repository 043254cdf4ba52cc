//! Lays every part of a packet out in space from the packet alone, with vectors of its own, and looks whether they meet.
//!
//! Nothing here calls the library for geometry: it reads JSON, builds the frame of each line from the vertices of the planes beside it, and places
//! trims, closures, cleats, tapes, rows and panels' ends in it.

#![allow(clippy::expect_used, clippy::panic, reason = "a test stops where something does not fit")]
#![allow(clippy::disallowed_methods, reason = "the library's own trigonometry is what it must not lean on")]

mod alone;
mod draws;
mod frame;
mod others;
mod read;
mod roof;
mod roofs;
mod section;
mod valleys;
mod vector;

use roof::Roof;
use seamwright::job::Job;
use seamwright::record::Calculation;
use serde_json::Value;
use vector::Draw;

fn demo() -> Value {
    let path = seamwright_tests::root().join("core/examples/demo_job.json");
    serde_json::from_slice(&std::fs::read(path).expect("the demo job")).expect("JSON")
}

fn packet(job: &Value) -> Result<Value, String> {
    let packet = Job::from_json(job.to_string().as_bytes()).and_then(|j| j.compute()).map_err(|e| e.to_string())?;
    Ok(serde_json::to_value(packet).expect("a packet is JSON"))
}

#[test]
fn every_line_of_the_demo_lies_where_its_section_says() {
    let job = demo();
    let packet = packet(&job).expect("the demo");
    let seen = Roof::read(&packet, &job).check();
    assert!(seen.lines == packet["junctions"].as_array().map_or(0, Vec::len) && seen.lines > 30 && seen.panels > 150 && seen.bays > 300, "{seen:?}");
}

#[test]
fn what_is_moved_by_a_micrometre_is_seen() {
    let job = demo();
    let packet = packet(&job).expect("the demo");
    let roof = Roof::read(&packet, &job);
    let mut kinds = std::collections::BTreeSet::new();
    let (mut unseen, mut all) = (Vec::new(), 0);
    for junction in packet["junctions"].as_array().expect("a list") {
        if kinds.insert(junction["kind"].to_string()) {
            let (own, moved) = roof.unseen(junction);
            unseen.extend(own);
            all += moved;
        }
    }
    assert!(kinds.len() == 12 && unseen.is_empty(), "{} of {all} unseen: {unseen:#?}", unseen.len());
}

/// A thousand junctions of a kind that can be built, of random pitches, corners, layers and sheets, all lie where they say.
fn a_thousand(kind: &str) {
    let (built, drawn, refused) = alone::check(&demo(), kind, 1000);
    assert!(built == 1000, "{kind}: {built} of {drawn} built; refused: {refused:#?}");
}

#[test]
fn what_is_no_line_of_a_roof_is_seen_to_move_by_a_micrometre() {
    let (mut unseen, mut all) = (Vec::new(), 0);
    for kind in ["coping", "step", "expansion-across", "expansion-along", "pipe"] {
        let (own, moved) = alone::unseen(&demo(), kind, 4);
        unseen.extend(own);
        all += moved;
    }
    assert!(unseen.is_empty(), "{} of {all} unseen: {unseen:#?}", unseen.len());
}

#[test]
fn drawn_copings() {
    a_thousand("coping");
}

#[test]
fn drawn_steps() {
    a_thousand("step");
}

#[test]
fn drawn_expansion_joints_across_the_panels() {
    a_thousand("expansion-across");
}

#[test]
fn drawn_expansion_joints_along_the_panels() {
    a_thousand("expansion-along");
}

#[test]
fn drawn_pipes() {
    a_thousand("pipe");
}

#[test]
fn drawn_eaves() {
    a_thousand("eave");
}

#[test]
fn drawn_rakes() {
    a_thousand("rake");
}

#[test]
fn drawn_ridges() {
    a_thousand("ridge");
}

#[test]
fn drawn_hips() {
    a_thousand("hip");
}

#[test]
fn drawn_high_edges() {
    a_thousand("high-edge");
}

#[test]
fn drawn_headwalls() {
    a_thousand("headwall");
}

#[test]
fn drawn_sidewalls() {
    a_thousand("sidewall");
}

#[test]
fn drawn_valleys() {
    a_thousand("valley");
}

#[test]
fn drawn_transitions_to_a_shallower_roof() {
    a_thousand("steep-to-shallow");
}

#[test]
fn drawn_transitions_to_a_steeper_roof() {
    a_thousand("shallow-to-steep");
}

#[test]
fn drawn_curb_backs() {
    a_thousand("curb-back");
}

/// Of so many drawn roofs at least so many can be built, and all that can lie where they say.
fn drawn_roofs(cases: u64, least: u64, roof: impl Fn(&Value, &mut Draw) -> Value) {
    let demo = demo();
    let (mut built, mut refused) = (0, Vec::new());
    for seed in 0..cases {
        let job = roof(&demo, &mut Draw::seeded(seed));
        match packet(&job) {
            Ok(packet) => {
                let seen = Roof::read(&packet, &job).check();
                assert!(seen.lines > 3 && seen.panels > 0 && seen.bays > 0, "roof {seed}: {seen:?}");
                built += 1;
            }
            Err(e) => refused.push(format!("{seed}: {}", e.chars().take(160).collect::<String>())),
        }
    }
    assert!(built >= least, "{built} built; refused: {refused:#?}");
}

#[test]
fn drawn_roofs_with_a_hip() {
    drawn_roofs(120, 50, |demo, draw| roofs::corner(demo, true, draw));
}

#[test]
fn drawn_roofs_with_a_valley() {
    drawn_roofs(120, 50, |demo, draw| roofs::corner(demo, false, draw));
}

#[test]
fn drawn_gables() {
    drawn_roofs(120, 50, roofs::gable);
}

#[test]
fn drawn_roofs_of_two_pitches() {
    drawn_roofs(120, 25, roofs::transition);
}

#[test]
fn drawn_roofs_with_a_curb() {
    drawn_roofs(120, 50, roofs::curb);
}

#[test]
fn drawn_roofs_with_a_cricket() {
    drawn_roofs(120, 40, roofs::cricket);
}

#[test]
fn drawn_roofs_with_a_valley_that_widens() {
    drawn_roofs(120, 40, roofs::widening);
}
