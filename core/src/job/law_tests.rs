//! Laws of a whole job: it explains what it computes, and gives the same whichever way its roof is numbered, mirrored or measured.

#![cfg(feature = "serde")]

use super::test_jobs::{DEMO, at, demo, demo_json, demo_packet, gable, hipped, read, shed, work};
use super::*;
use crate::record::Calculation;
use crate::units::Length;
use core::ops::ControlFlow;
use serde_json::{Value, json};

fn bytes(packet: &Packet) -> Vec<u8> {
    serde_json::to_vec(packet).unwrap()
}

#[test]
fn explaining_is_computing() {
    let (explained, worksheet) = demo().explain().unwrap();
    assert_eq!(&explained, demo_packet());
    assert_eq!(bytes(&explained), bytes(demo_packet()));
    assert_eq!(worksheet.title, demo().name);
    assert!(worksheet.entries.len() > 50);
    let (told, again) = demo().packet_explained(&mut |_| ControlFlow::Continue(())).unwrap();
    assert_eq!((&told, &again), (&explained, &worksheet));
    for json in [shed(), gable(), hipped()] {
        let job = read(&json).unwrap();
        assert_eq!(job.explain().unwrap().0, job.compute().unwrap());
    }
}

#[test]
fn the_same_job_gives_the_same_bytes() {
    assert_eq!(bytes(&Job::from_json(DEMO).unwrap().compute().unwrap()), bytes(demo_packet()));
}

#[test]
fn millimetres_give_what_inches_give() {
    let metric = serde_json::to_string(&demo()).unwrap();
    fn inches(v: &Value, out: &mut Vec<String>) {
        match v {
            Value::String(s) if Length::parse(s).is_ok() && !s.ends_with(" mm") => out.push(s.clone()),
            Value::Array(all) => all.iter().for_each(|v| inches(v, out)),
            Value::Object(all) => all.values().for_each(|v| inches(v, out)),
            _ => {}
        }
    }
    let mut left = Vec::new();
    inches(&serde_json::from_str(&metric).unwrap(), &mut left);
    assert_eq!(left, ["10 ft"], "what the shop calls its sticks, and no length");
    let job = Job::from_json(metric.as_bytes()).unwrap();
    assert_eq!(job, demo());
    assert_eq!(bytes(&job.compute().unwrap()), bytes(demo_packet()));
}

/// A line of the order as far as it does not depend on the numbering of planes.
fn bought(packet: &Packet) -> Vec<String> {
    let mut out: Vec<String> = packet
        .order
        .iter()
        .map(|l| {
            // A panel's mark starts with the number of its plane; a trim's is a number.
            let mark = if l.group == OrderGroup::Panels { l.mark.trim_start_matches(|c: char| c.is_ascii_digit()) } else { "" };
            format!("{:?} {mark} {} {} {} {} {:?} {:?}", l.group, l.item, l.spec, l.count, l.unit, l.length, l.engineered)
        })
        .collect();
    out.sort();
    out
}

fn runs(packet: &Packet) -> Vec<(String, Length, usize)> {
    let mut out: Vec<_> = packet.trims.iter().flat_map(|t| t.runs.iter().map(|r| (t.name.clone(), r.run, r.pieces.len()))).collect();
    out.sort();
    out
}

fn lengths(packet: &Packet, plane: &str) -> Vec<(Length, Length, Length)> {
    let mut out: Vec<_> = packet.plane(plane).unwrap().laid.panels.iter().map(|p| (p.finished, p.width, p.order)).collect();
    out.sort();
    out
}

fn same_within(a: &[(Length, Length, Length)], b: &[(Length, Length, Length)], nanometres: i64, name: &str) {
    assert_eq!(a.len(), b.len(), "{name}");
    for (p, q) in a.iter().zip(b) {
        assert_eq!(p.2, q.2, "{name}");
        for (x, y) in [(p.0, q.0), (p.1, q.1)] {
            assert!((x.pm() - y.pm()).abs() <= nanometres * 1000, "{name}: {x} and {y}");
        }
    }
}

#[test]
fn renumbered_planes_give_the_same_lengths_and_order() {
    let was = demo_packet();
    for turn in [1, 3, 7] {
        let mut json = demo_json();
        at(&mut json, "roof.planes").as_array_mut().unwrap().rotate_left(turn);
        if turn == 3 {
            at(&mut json, "roof.planes").as_array_mut().unwrap().reverse();
        }
        let packet = work(&json).unwrap();
        for lay in &was.planes {
            same_within(&lengths(was, &lay.name), &lengths(&packet, &lay.name), 0, &lay.name);
        }
        assert_eq!(bought(&packet), bought(was), "turned by {turn}");
        assert_eq!(runs(&packet), runs(was));
    }
}

fn mirrored_x(x: &mut Value) {
    let given = Length::parse(x.as_str().unwrap()).unwrap();
    *x = json!((-given).length().unwrap().to_string());
}

/// The demo seen in a mirror: x is -x, left is right, and a datum is measured from the other side.
fn mirrored() -> Value {
    let mut json = demo_json();
    for plane in at(&mut json, "roof.planes").as_array_mut().unwrap() {
        let plan = &mut plane["shape"]["plan"];
        let down: f64 = plan["down_slope"].as_str().unwrap().trim_end_matches(" deg").parse().unwrap();
        plan["down_slope"] = json!(format!("{} deg", (540.0 - down) % 360.0));
        mirrored_x(&mut plan["anchor"]["x"]);
        for corner in plan["outer"].as_array_mut().unwrap() {
            mirrored_x(&mut corner["x"]);
        }
        for hole in plan["holes"].as_array_mut().unwrap() {
            for corner in hole["ring"].as_array_mut().unwrap() {
                mirrored_x(&mut corner["x"]);
            }
        }
    }
    for wall in at(&mut json, "roof.walls").as_array_mut().unwrap() {
        mirrored_x(&mut wall["from"]["x"]);
        mirrored_x(&mut wall["to"]["x"]);
    }
    json["layout"]["start"] = json!("right");
    let planes = demo_packet().roof.planes();
    for choice in at(&mut json, "layout.planes").as_array_mut().unwrap() {
        let width = planes.iter().find(|p| p.name() == choice["plane"].as_str().unwrap()).unwrap().outline().bounds().high.x;
        let start = choice["start"].clone();
        choice["start"] = match start.as_str() {
            Some("left") => json!("right"),
            Some("right") => json!("left"),
            Some(_) => start,
            None => json!({ "datum": (width - Length::parse(start["datum"].as_str().unwrap()).unwrap()).length().unwrap().to_string() }),
        };
    }
    json
}

#[test]
fn a_mirrored_roof_orders_the_same_lengths_and_trims() {
    let (was, packet) = (demo_packet(), work(&mirrored()).unwrap());
    for lay in &was.planes {
        same_within(&lengths(was, &lay.name), &lengths(&packet, &lay.name), 0, &lay.name);
    }
    assert_eq!(runs(&packet), runs(was));
    let swapped: Vec<String> = {
        let swap = |l: String| {
            let exchanged = |l: String, a: &str, b: &str| l.replace(a, "\u{0}").replace(b, a).replace('\u{0}', b);
            let hands = [("left hand", "right hand"), ("opposite hand", "as drawn"), ("wall on the left", "wall on the right")];
            let l = hands.iter().fold(l, |l, (a, b)| exchanged(l, a, b));
            // The tabs of a closure change places with its hand.
            let Some((head, rest)) = l.split_once("tabs bent ") else { return l };
            let (tabs, tail) = rest.split_once(" deg").unwrap();
            let (a, b) = tabs.split_once(" and ").unwrap();
            format!("{head}tabs bent {b} and {a} deg{tail}")
        };
        let mut all: Vec<String> = bought(&packet).into_iter().map(swap).collect();
        all.sort();
        all
    };
    assert_eq!(swapped, bought(was));
}

#[test]
fn a_moved_roof_orders_the_same() {
    let mut json = demo_json();
    let shift = Length::parse("431000 m").unwrap();
    let moved = |v: &mut Value| *v = json!((Length::parse(v.as_str().unwrap()).unwrap() + shift).length().unwrap().to_string());
    for plane in at(&mut json, "roof.planes").as_array_mut().unwrap() {
        let plan = &mut plane["shape"]["plan"];
        for axis in ["x", "y"] {
            moved(&mut plan["anchor"][axis]);
            for corner in plan["outer"].as_array_mut().unwrap() {
                moved(&mut corner[axis]);
            }
            for corner in plan["holes"].as_array_mut().unwrap().iter_mut().flat_map(|h| h["ring"].as_array_mut().unwrap()) {
                moved(&mut corner[axis]);
            }
        }
    }
    for wall in at(&mut json, "roof.walls").as_array_mut().unwrap() {
        for end in ["from", "to"] {
            moved(&mut wall[end]["x"]);
            moved(&mut wall[end]["y"]);
        }
    }
    let (was, packet) = (demo_packet(), work(&json).unwrap());
    assert_eq!(bought(&packet), bought(was));
    assert_eq!(packet.planes, was.planes);
    assert_eq!(packet.trims, was.trims);
}
