//! Packing in a job: under all of a plane's panels, or under a transition's flange alone.
#![cfg(feature = "serde")]

use super::test_jobs::{demo_json, plane, refused, shed, small, work};
use super::{OrderGroup, Packet};
use crate::error::{Error, ErrorKind};
use crate::roof::LineKind;
use crate::units::Length;
use serde_json::json;

/// The demo with this packing at its transition to a shallower roof.
fn with(packing: &str, reach: &str) -> Result<Packet, Error> {
    let mut job = demo_json();
    let detail = job["junctions"]["kinds"].as_array_mut().unwrap().iter_mut().find_map(|k| k.get_mut("shallow-to-steep")).unwrap();
    detail["packing"] = json!(packing);
    detail["packing_reach"] = json!(reach);
    // Little packing leaves the bend farther down, and the lower panels with it.
    (detail["end"]["hold_back"], detail["end"]["flange"]) = (json!("6\""), json!("15\""));
    detail["upper_flange"] = json!("13\"");
    work(&job)
}

fn packing_of(packet: &Packet) -> Vec<(&str, &str, Option<Length>)> {
    packet.order.iter().filter(|l| l.group == OrderGroup::Packing).map(|l| (l.item.as_str(), l.spec.as_str(), l.net)).collect()
}

#[test]
fn packing_under_a_flange_is_ordered_by_the_line() {
    let packet = with("3/4\"", "under-flange").unwrap();
    let lines: Vec<_> = packet.junctions.iter().filter(|j| j.kind == LineKind::ShallowToSteep).collect();
    assert!(!lines.is_empty());
    assert!(packet.junctions.iter().all(|j| j.first.levels.built_up == Length::ZERO));
    let ordered = packing_of(&packet);
    assert_eq!(ordered.len(), lines.len());
    for (line, (item, spec, net)) in lines.iter().zip(ordered) {
        assert_eq!((item, net), ("packing under a flange", Some(line.along.length)));
        assert!(spec.contains(&line.name) && spec.contains("0.7500 in thick"), "{spec}");
    }
    assert!(packing_of(&with("0\"", "under-flange").unwrap()).is_empty());
}

#[test]
fn packing_under_all_of_the_panels_lifts_what_stands_on_their_plane() {
    let packet = with("1/16\"", "under-panels").unwrap();
    let packing = Length::parse("1/16\"").unwrap();
    for line in packet.junctions.iter().filter(|j| j.kind == LineKind::ShallowToSteep) {
        let upper = line.second.as_ref().unwrap();
        assert_eq!((line.first.levels.built_up, upper.levels.built_up), (Length::ZERO, packing));
        let others = packet.junctions.iter().filter(|j| j.line != line.line).flat_map(|j| core::iter::once(&j.first).chain(&j.second));
        let lifted: Vec<_> = others.filter(|s| s.plane == upper.plane).collect();
        assert!(!lifted.is_empty() && lifted.iter().all(|s| s.levels.built_up == packing));
    }
    let ordered = packing_of(&packet);
    assert!(
        !ordered.is_empty() && ordered.iter().all(|(item, spec, net)| *item == "packing over the deck" && spec.contains("0.0625 in thick") && net.is_none())
    );
}

#[test]
fn one_plane_is_built_up_by_one_thickness() {
    // Two skirts under one roof; the ends of the skirts are rakes.
    let skirt = |name: &str, x0: &str, x1: &str| plane(name, &[[x0, "0 m"], [x1, "0 m"], [x1, "3 m"], [x0, "3 m"]], "10:12", "270 deg", ["0 m", "3 m", "5 m"]);
    let upper = plane("upper", &[["0 m", "3 m"], ["12 m", "3 m"], ["12 m", "8 m"], ["0 m", "8 m"]], "4:12", "270 deg", ["0 m", "3 m", "5 m"]);
    let mut job = small(json!([skirt("west", "0 m", "6 m"), skirt("east", "6 m", "12 m"), upper]), json!([]));
    let kinds = job["junctions"]["kinds"].as_array_mut().unwrap();
    kinds.push(shed()["junctions"]["kinds"].as_array().unwrap().last().unwrap().clone());
    let detail = kinds.iter_mut().find_map(|k| k.get_mut("shallow-to-steep")).unwrap();
    detail["packing_reach"] = json!("under-panels");
    let mut other = detail.clone();
    let packet = work(&job).unwrap();
    let lines: Vec<_> = packet.junctions.iter().filter(|j| j.kind == LineKind::ShallowToSteep).map(|j| j.name.clone()).collect();
    assert_eq!((lines.len(), packing_of(&packet).len()), (2, 1));
    other["packing"] = json!("1\"");
    job["junctions"]["lines"] = json!([{"line": lines[1], "detail": {"shallow-to-steep": other}}]);
    let e = refused(&job);
    assert_eq!(
        (e.kind(), e.path(), e.value(), e.allowed()),
        (ErrorKind::Conflict, "junctions.lines[0].detail.shallow-to-steep.packing", Some("25.4 mm"), Some("19.05 mm")),
        "{e}"
    );
    other["packing"] = json!("0\"");
    job["junctions"]["lines"] = json!([{"line": lines[1], "detail": {"shallow-to-steep": other}}]);
    let e = refused(&job);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, format!("lines.{}", lines[1]).as_str()), "{e}");
}
