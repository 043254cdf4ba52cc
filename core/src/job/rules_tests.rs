//! A job refuses rules that contradict each other in what serves its roof, and only there.

#![cfg(feature = "serde")]

use super::test_jobs::{annexe_json, at, demo_json, demo_with, read, refused, work};
use super::{JobRules, Packet};
use crate::error::{Error, ErrorKind};
use crate::record::Calculation;
use serde_json::{Value, json};

/// A refusal and all that stand with it: kind, path and words.
fn told(e: &Error) -> Vec<(ErrorKind, String, String)> {
    core::iter::once(e).chain(e.others()).map(|e| (e.kind(), e.path().to_owned(), e.message().to_owned())).collect()
}

fn rules(job: &Value) -> Result<usize, Error> {
    JobRules { job: read(job)? }.compute().map(|rooms| rooms.len())
}

#[test]
fn what_contradicts_is_told_all_at_once_and_in_the_words_of_the_rules() {
    // Moving ends keep 1/8 in and 2 in: more than any fold of the demo has.
    let job = demo_with("supplies.movement", json!({ "engagement": "2 in" }));
    let (of_job, of_rules) = (refused(&job), rules(&job).unwrap_err());
    let under_job: Vec<_> = told(&of_job).into_iter().map(|(kind, path, text)| (kind, format!("job.{path}"), text)).collect();
    assert_eq!(under_job, told(&of_rules));
    assert!(under_job.len() > 2 && under_job.iter().all(|t| t.0 == ErrorKind::Conflict && t.2.contains("supplies.movement.engagement 50.8 mm")), "{of_job}");
    assert!(of_job.cure().is_some());
    // What a section refuses comes first, and the contradictions with it.
    let mut both = job;
    *at(&mut both, "junctions.kinds[0].eave.panel.fold") = json!("1/4 in");
    let e = refused(&both);
    assert!(told(&e).iter().any(|t| t.2.contains("supplies.movement.engagement")) && told(&e).iter().any(|t| t.2.contains("eave 1")), "{e}");
}

#[test]
fn a_detail_that_serves_no_line_refuses_nothing() {
    // The demo has no step: the annexe's detail of one stands there for nothing, and its lap is more than any face has.
    let mut job = demo_json();
    let annexe = annexe_json();
    let mut step = annexe["junctions"]["kinds"].as_array().unwrap().iter().find(|k| k.get("step").is_some()).unwrap().clone();
    step["step"]["lower"]["lap"] = json!({ "least": "40 in", "source": "common-practice" });
    at(&mut job, "junctions.kinds").as_array_mut().unwrap().push(step.clone());
    let e = rules(&job).unwrap_err();
    assert!(told(&e).iter().all(|t| t.1.starts_with("job.junctions.kinds[12].step.")), "{e}");
    let packet: Packet = work(&job).unwrap();
    assert_eq!(packet.summary, super::test_jobs::demo_packet().summary);
    // Where it serves a line it does.
    let mut served = annexe;
    *at(&mut served, "junctions.kinds").as_array_mut().unwrap().iter_mut().find(|k| k.get("step").is_some()).unwrap() = step;
    assert!(told(&refused(&served)).iter().any(|t| t.2.starts_with("no section keeps both")));
}
