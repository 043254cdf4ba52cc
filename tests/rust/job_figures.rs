//! The figures of the example jobs, pinned: the panels, the order, copings, pipes, steps and expansion joints of each packet.
//!
//! They stand in `tests/jobs`, a line each, `path = value`, and the tests in Python and C read the same files, so that each binding is held to what Rust gives.
//! `SW_WRITE_FIGURES=1 cargo test -p seamwright-tests --test job_figures` writes them.

#![allow(clippy::expect_used, clippy::panic, reason = "a test stops where its files are not what it reads")]

use seamwright::job::Job;
use seamwright::record::Calculation;
use seamwright_tests::root;
use serde_json::Value;
use std::fmt::Write;

const JOBS: &[&str] = &["annexe", "ropewalk", "maltings"];

/// The parts of a packet whose figures are pinned, whole; `*` is any number.
const PARTS: &[&str] = &[
    "job",
    "paperwork",
    "metals",
    "temperatures",
    "summary",
    "planes.*.name",
    "planes.*.laid.groups",
    "planes.*.laid.panels.*.mark",
    "planes.*.laid.panels.*.left",
    "planes.*.laid.panels.*.right",
    "planes.*.laid.panels.*.finished",
    "planes.*.laid.panels.*.order",
    "junctions.*.name",
    "junctions.*.kind",
    "junctions.*.along.length",
    "copings.*.name",
    "copings.*.run",
    "copings.*.pieces",
    "coping_corners",
    "pipes.*.name",
    "pipes.*.mark",
    "pipes.*.panels",
    "pipes.*.at",
    "pipes.*.foot",
    "pipes.*.above_end",
    "pipes.*.collar_bead",
    "pipes.*.made.hole_across",
    "pipes.*.made.hole_down",
    "pipes.*.made.hole_up",
    "pipes.*.made.base_across",
    "pipes.*.made.to_seam",
    "pipes.*.made.screws",
    "pipes.*.made.tape",
    "trims.*.mark",
    "trims.*.name",
    "end_caps",
    "clips.*.rule",
    "order",
];
/// The same of a line of these kinds alone.
const KINDS: &[&str] = &["step", "expansion-along", "expansion-across"];
const OF_KINDS: &[&str] = &["section.trims.*.name", "along.struck.*.name", "along.struck.*.from_start.read", "along.trims", "moves", "rides"];

/// Whether a path begins with this pattern, step by step.
fn begins(path: &[String], pattern: &str) -> bool {
    let mut steps = path.iter();
    pattern.split('.').all(|wanted| steps.next().is_some_and(|step| if wanted == "*" { step.parse::<usize>().is_ok() } else { step == wanted }))
}

fn is_pinned(path: &[String], packet: &Value) -> bool {
    let kind = || path.get(1).and_then(|n| packet["junctions"][n.parse::<usize>().ok()?]["kind"].as_str()).unwrap_or_default();
    PARTS.iter().any(|p| begins(path, p)) || OF_KINDS.iter().any(|p| begins(path, &format!("junctions.*.{p}")) && KINDS.contains(&kind()))
}

fn text(path: &[String]) -> String {
    path.iter().fold(String::new(), |out, step| match (out.is_empty(), step.parse::<usize>()) {
        (_, Ok(number)) => format!("{out}[{number}]"),
        (true, _) => step.clone(),
        (false, _) => format!("{out}.{step}"),
    })
}

/// Every pinned value, with the count of every list on the way.
fn walk(value: &Value, path: &mut Vec<String>, packet: &Value, out: &mut String) {
    let mut line = |path: &str, value: &str| writeln!(out, "{path} = {value}").expect("text takes lines");
    match value {
        Value::Array(list) => {
            if is_pinned(path, packet)
                || matches!(path.as_slice(), [one] if ["planes", "junctions", "copings", "pipes", "trims", "clips"].contains(&one.as_str()))
            {
                line(&format!("{}.count", text(path)), &list.len().to_string());
            }
            for (number, inner) in list.iter().enumerate() {
                path.push(number.to_string());
                walk(inner, path, packet, out);
                path.pop();
            }
        }
        Value::Object(fields) => {
            for (name, inner) in fields {
                path.push(name.clone());
                walk(inner, path, packet, out);
                path.pop();
            }
        }
        _ if !is_pinned(path, packet) => {}
        Value::String(words) => line(&text(path), words),
        other => line(&text(path), &other.to_string()),
    }
}

#[test]
fn the_example_jobs_give_their_pinned_figures() {
    let mut faults = Vec::new();
    for name in JOBS {
        let job = std::fs::read(root().join(format!("core/examples/{name}_job.json"))).expect("the job");
        let packet = Job::from_json(&job).and_then(|job| job.compute()).unwrap_or_else(|e| panic!("{name}: {e}"));
        let packet = serde_json::to_value(&packet).expect("a packet that can be written");
        let mut wanted = String::new();
        walk(&packet, &mut Vec::new(), &packet, &mut wanted);
        for line in wanted.lines() {
            assert!(line.is_ascii() && !line.contains('\\'), "plain text, which C reads too: {line}");
        }
        let path = root().join(format!("tests/jobs/{name}.figures"));
        if std::env::var_os("SW_WRITE_FIGURES").is_some() {
            std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
            std::fs::write(&path, &wanted).expect("a file that can be written");
        }
        let held = std::fs::read_to_string(&path).unwrap_or_default();
        for (number, (held, wanted)) in held.lines().zip(wanted.lines()).enumerate().filter(|(_, (a, b))| a != b).take(5) {
            faults.push(format!("{name}, line {}: {held}, the library gives {wanted}", number + 1));
        }
        if held.lines().count() != wanted.lines().count() {
            faults.push(format!("{name}: {} lines, the library gives {}", held.lines().count(), wanted.lines().count()));
        }
    }
    assert!(faults.is_empty(), "{}\nrun SW_WRITE_FIGURES=1 cargo test -p seamwright-tests --test job_figures", faults.join("\n"));
}
