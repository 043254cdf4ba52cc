//! Jobs that the tests share: the demo, small roofs with its details, and ways to change a job's text.

#![cfg(feature = "serde")]

use super::{Job, Packet};
use crate::error::{Error, ErrorKind};
use crate::record::Calculation;
use crate::units::Length;
use serde_json::{Value, json};
use std::sync::LazyLock;

pub(super) const DEMO: &[u8] = include_bytes!("../../examples/demo_job.json");

/// A small mono-slope with parapets on two sides and a pipe.
pub(super) const ANNEXE: &[u8] = include_bytes!("../../examples/annexe_job.json");

/// A long gable, parted half way by expansion joints along the panels.
pub(super) const ROPEWALK: &[u8] = include_bytes!("../../examples/ropewalk_job.json");

/// A deep gable, each slope parted by an expansion joint across its panels.
pub(super) const MALTINGS: &[u8] = include_bytes!("../../examples/maltings_job.json");

static DEMO_JOB: LazyLock<Job> = LazyLock::new(|| Job::from_json(DEMO).unwrap());
static DEMO_PACKET: LazyLock<Packet> = LazyLock::new(|| DEMO_JOB.compute().unwrap());

pub(super) fn demo() -> Job {
    DEMO_JOB.clone()
}

pub(super) fn demo_packet() -> &'static Packet {
    &DEMO_PACKET
}

pub(super) fn demo_json() -> Value {
    serde_json::from_slice(DEMO).unwrap()
}

pub(super) fn annexe_json() -> Value {
    serde_json::from_slice(ANNEXE).unwrap()
}

/// The annexe's job with one value replaced.
pub(super) fn annexe_with(path: &str, value: Value) -> Value {
    let mut json = annexe_json();
    *at(&mut json, path) = value;
    json
}

pub(super) fn read(json: &Value) -> Result<Job, Error> {
    Job::from_json(&serde_json::to_vec(json).unwrap())
}

pub(super) fn work(json: &Value) -> Result<Packet, Error> {
    read(json)?.compute()
}

/// What is said of a job that is refused, which is never that the library is at fault.
pub(super) fn refused(json: &Value) -> Error {
    let e = work(json).map(|p| p.summary).expect_err("refused");
    assert_ne!(e.kind(), ErrorKind::Internal, "{e}");
    e
}

/// Whether a length is this many millimetres, to a nanometre.
pub(super) fn near(a: Length, mm: f64) -> bool {
    (a.mm() - mm).abs() < 1e-6
}

pub(super) fn inch(v: f64) -> f64 {
    v * 25.4
}

/// A job with some values replaced.
pub(super) fn changed(job: &[u8], changes: &[(&str, Value)]) -> Value {
    let mut json: Value = serde_json::from_slice(job).unwrap();
    for (path, value) in changes {
        *at(&mut json, path) = value.clone();
    }
    json
}

/// The value at this path, written as errors write it; null where a field is not there yet.
pub(super) fn at<'a>(json: &'a mut Value, path: &str) -> &'a mut Value {
    path.replace('[', ".[").split('.').fold(json, |v, step| match step.strip_prefix('[') {
        Some(index) => &mut v[index.trim_end_matches(']').parse::<usize>().unwrap()],
        None => &mut v[step],
    })
}

/// The demo job with one value replaced.
pub(super) fn demo_with(path: &str, value: Value) -> Value {
    let mut json = demo_json();
    *at(&mut json, path) = value;
    json
}

/// The demo's details, supplies and so on over other planes; what speaks of the demo's own roof is left out.
pub(super) fn small(planes: Value, walls: Value) -> Value {
    let mut json = demo_json();
    json["name"] = json!("small");
    json["roof"] = json!({ "planes": planes, "walls": walls });
    json["layout"]["planes"] = json!([]);
    json["supplies"]["trims"]["laps"] = json!([]);
    json["engineer"] = Value::Null;
    json
}

pub(super) fn plane(name: &str, outer: &[[&str; 2]], pitch: &str, down: &str, anchor: [&str; 3]) -> Value {
    let outer: Vec<Value> = outer.iter().map(|[x, y]| json!({"x": x, "y": y})).collect();
    let [x, y, z] = anchor;
    json!({"name": name, "shape": {"plan": {"outer": outer, "holes": [], "pitch": pitch, "down_slope": down, "anchor": {"x": x, "y": y, "z": z}}}})
}

/// 8 m by 4 m at 1:4, with its low edge on x.
pub(super) fn shed() -> Value {
    let outer = [["0 m", "0 m"], ["8 m", "0 m"], ["8 m", "4 m"], ["0 m", "4 m"]];
    let mut json = small(json!([plane("shed", &outer, "3:12", "270 deg", ["0 m", "0 m", "3 m"])]), json!([]));
    let end = demo_json()["junctions"]["kinds"][2]["ridge"]["first"].clone();
    json["junctions"]["kinds"].as_array_mut().unwrap().push(json!({"high-edge": high_edge(end)}));
    json
}

fn high_edge(end: Value) -> Value {
    let face = demo_json()["junctions"]["kinds"][1]["rake"]["face"].clone();
    json!({"end": end, "sheet": {"thickness": "0.0276 in", "inside_radius": "0.03 in"}, "face": face})
}

/// 10 m by 8 m, ridge along x.
pub(super) fn gable() -> Value {
    let south = [["0 m", "0 m"], ["10 m", "0 m"], ["10 m", "4 m"], ["0 m", "4 m"]];
    let north = [["10 m", "8 m"], ["0 m", "8 m"], ["0 m", "4 m"], ["10 m", "4 m"]];
    let planes = json!([plane("south", &south, "8:12", "270 deg", ["0 m", "0 m", "3 m"]), plane("north", &north, "8:12", "90 deg", ["0 m", "8 m", "3 m"])]);
    small(planes, json!([]))
}

/// 12 m by 8 m with four planes of 8:12, ridge of 4 m.
pub(super) fn hipped() -> Value {
    let at = ["0 m", "0 m", "3 m"];
    let far = ["12 m", "8 m", "3 m"];
    let planes = json!([
        plane("south", &[["0 m", "0 m"], ["12 m", "0 m"], ["8 m", "4 m"], ["4 m", "4 m"]], "8:12", "270 deg", at),
        plane("east", &[["12 m", "0 m"], ["12 m", "8 m"], ["8 m", "4 m"]], "8:12", "0 deg", far),
        plane("north", &[["12 m", "8 m"], ["0 m", "8 m"], ["4 m", "4 m"], ["8 m", "4 m"]], "8:12", "90 deg", far),
        plane("west", &[["0 m", "8 m"], ["0 m", "0 m"], ["4 m", "4 m"]], "8:12", "180 deg", at),
    ]);
    small(planes, json!([]))
}

/// The demo's job with these fields of its layout.
pub(crate) fn demo_laid(fields: Value) -> Job {
    let mut job = demo_json();
    let layout = job["layout"].as_object_mut().unwrap();
    for (name, value) in fields.as_object().unwrap() {
        if value.is_null() {
            layout.remove(name)
        } else {
            layout.insert(name.clone(), value.clone())
        };
    }
    read(&job).unwrap()
}

/// Seams shared by these planes; all others, and the first, lie as in the demo.
pub(crate) fn sharing(names: &[&str]) -> Value {
    let demo = demo_json();
    let follows = |plane: &Value| names[1..].iter().any(|n| plane["plane"] == *n);
    let planes: Vec<_> = demo["layout"]["planes"].as_array().unwrap().iter().filter(|p| !follows(p)).cloned().collect();
    json!({ "planes": planes, "shared": [{ "planes": names }] })
}

pub(crate) fn packet_laid(fields: Value) -> Packet {
    demo_laid(fields).compute().unwrap()
}
