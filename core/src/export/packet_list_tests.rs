//! The lists among the files of a packet.

#![cfg(feature = "serde")]

use super::packet_files;
use crate::error::ErrorKind;
use crate::job::{Job, Packet};
use crate::record::Calculation;

/// The demo's job with these fields of its layout.
fn job(fields: serde_json::Value) -> Job {
    let mut job: serde_json::Value = serde_json::from_slice(include_bytes!("../../examples/demo_job.json")).unwrap();
    let layout = job["layout"].as_object_mut().unwrap();
    for (name, value) in fields.as_object().unwrap() {
        if value.is_null() {
            layout.remove(name)
        } else {
            layout.insert(name.clone(), value.clone())
        };
    }
    Job::from_json(job.to_string().as_bytes()).unwrap()
}

/// Seams shared by these planes; all others, and the first, lie as in the demo.
fn sharing(names: &[&str]) -> serde_json::Value {
    let demo: serde_json::Value = serde_json::from_slice(include_bytes!("../../examples/demo_job.json")).unwrap();
    let follows = |plane: &serde_json::Value| names[1..].iter().any(|n| plane["plane"] == *n);
    let planes: Vec<_> = demo["layout"]["planes"].as_array().unwrap().iter().filter(|p| !follows(p)).cloned().collect();
    serde_json::json!({ "planes": planes, "shared": [{ "planes": names }] })
}

fn packet(fields: serde_json::Value) -> Packet {
    job(fields).compute().unwrap()
}

#[test]
fn the_packet_shows_what_the_job_asks_for_and_nothing_more() {
    let names = |p: &Packet| packet_files(p, None).unwrap().into_iter().map(|f| f.name).filter(|n| n.starts_with("lists/")).collect::<Vec<_>>();
    let plain = packet(serde_json::json!({}));
    assert_eq!(names(&plain), ["lists/panels.csv", "lists/order.csv"]);
    assert!(plain.planes.iter().all(|l| l.listed.is_none() && l.marks.is_none()));
    let mut fields = serde_json::json!({
        "list": { "direction": "right-to-left", "bundles": { "count": 10 } },
        "marks": { "from": "right", "creep": { "each": "1/32 in", "every": 10, "meets_within": "1/8 in" } },
        "columns": [{ "heading": "=n", "field": "count" }, { "heading": "mm", "field": { "order-length": "mm.0 ceil" } }, { "heading": "edge", "field": "edge" }],
    });
    fields.as_object_mut().unwrap().append(sharing(&["main south", "porch"]).as_object_mut().unwrap());
    let p = packet(fields);
    assert_eq!(names(&p), ["lists/panels.csv", "lists/panels.json", "lists/pieces.csv", "lists/seam-marks.csv", "lists/creep-checks.csv", "lists/order.csv"]);
    let files = packet_files(&p, None).unwrap();
    let text = |name: &str| String::from_utf8(files.iter().find(|f| f.name == name).unwrap().bytes.clone()).unwrap();
    assert!(text("lists/panels.csv").starts_with("'=n,mm,edge\r\n"));
    let json: serde_json::Value = serde_json::from_str(&text("lists/panels.json")).unwrap();
    assert_eq!(json.as_array().unwrap().len(), p.planes.iter().map(|l| l.laid.groups.len()).sum::<usize>());
    let pieces: usize = p.planes.iter().map(|l| l.listed.as_ref().unwrap().pieces.len()).sum();
    assert_eq!(text("lists/pieces.csv").lines().count(), pieces + 1);
    let seams: usize = p.planes.iter().map(|l| l.marks.as_ref().unwrap().seams.len()).sum();
    assert_eq!(text("lists/seam-marks.csv").lines().count(), seams + 1);
    // Only planes that share their seams can part: ten panels of 1/32 in on both are 5/8 in.
    let parting: Vec<_> = p.cautions.iter().filter(|c| c.code().name == "creep-parts-seams").map(|c| c.subject().to_owned()).collect();
    assert!(parting.iter().all(|s| s.starts_with("planes.main south") || s.starts_with("planes.porch")) && parting.len() >= 2, "{parting:?}");
    let e = job(serde_json::json!({ "columns": [{ "heading": "b", "field": "bundle" }] })).compute().and_then(|p| packet_files(&p, None)).unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "columns[0].field"));
    let twice = serde_json::json!({ "columns": [{ "heading": "b", "field": "mark" }, { "heading": "b", "field": "mark" }] });
    assert_eq!(job(twice).compute().unwrap_err().path(), "layout.columns[1].heading");
}
