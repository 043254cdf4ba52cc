//! Holds the floor table: a room stands only on the rooms that the table gives it.

#![allow(clippy::expect_used, reason = "a test stops where its files are not what it reads")]

use seamwright_tests::root;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

/// Room, and the rooms that it may use. The order is the order of the floors, ground first.
const FLOORS: &[(&str, &[&str])] = &[
    ("num", &[]),
    ("error", &[]),
    ("record", &["error"]),
    ("units", &["num", "error", "record"]),
    ("practice", &["num", "error", "record", "units"]),
    ("pitch", &["ground"]),
    ("metal", &["ground"]),
    ("stock", &["ground"]),
    ("spacing", &["ground"]),
    // Trim also stands on stock, because the lapped pieces of a run are laid out in one place only.
    ("trim", &["ground", "metal", "stock"]),
    ("roof", &["ground", "pitch"]),
    ("fastener", &["ground", "metal", "spacing"]),
    ("movement", &["ground", "metal"]),
    ("panel", &["ground", "trim", "metal"]),
    ("wind", &["ground", "roof"]),
    // Closure also stands on spacing: the screws of a bay are stations along a line, and that mechanism exists once.
    ("closure", &["ground", "panel", "trim", "movement", "spacing"]),
    ("sealant", &["ground", "panel", "trim", "movement"]),
    ("underlayment", &["ground", "pitch", "roof"]),
    ("junction", &["ground", "panel", "trim", "closure", "sealant", "fastener", "movement", "roof", "pitch", "metal"]),
    ("layout", &["ground", "panel", "roof", "metal", "spacing"]),
    // Assembly also reads the `PanelEnd`s behind a layout: what pins a panel, and the fold and gap of its moving end.
    ("assembly", &["ground", "layout", "junction", "closure", "sealant", "fastener", "wind", "movement", "roof", "trim", "spacing", "panel"]),
    (
        "job",
        &[
            "ground",
            "assembly",
            "layout",
            "junction",
            "stock",
            "wind",
            "movement",
            "roof",
            "panel",
            "trim",
            "metal",
            "pitch",
            "fastener",
            "closure",
            "sealant",
            "spacing",
            "underlayment",
        ],
    ),
];
const GROUND: &[&str] = &["num", "error", "record", "units", "practice"];

fn sources(path: &Path, out: &mut Vec<std::path::PathBuf>) {
    if path.is_dir() {
        for entry in std::fs::read_dir(path).expect("a folder") {
            sources(&entry.expect("an entry").path(), out);
        }
    } else if path.extension().is_some_and(|e| e == "rs") {
        out.push(path.to_path_buf());
    }
}

/// Rooms named behind `crate::` in code, documentation aside: links in docs may point anywhere.
fn rooms_used(text: &str) -> BTreeSet<String> {
    let mut used = BTreeSet::new();
    for line in text.lines().map(str::trim_start).filter(|l| !l.starts_with("//")) {
        for (at, _) in line.match_indices("crate::") {
            let rest = &line[at + 7..];
            let names: Vec<&str> = match rest.strip_prefix('{') {
                Some(group) => group.split(['{', '}', ',']).map(str::trim).collect(),
                None => vec![rest],
            };
            for name in names {
                let word: String = name.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
                if word.starts_with(|c: char| c.is_lowercase()) {
                    used.insert(word);
                }
            }
        }
    }
    used
}

fn rooms() -> BTreeMap<String, BTreeSet<String>> {
    let src = root().join("core/src");
    let mut out: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    let mut paths = Vec::new();
    sources(&src, &mut paths);
    for path in paths {
        let relative = path.strip_prefix(&src).expect("under src");
        let room = relative.components().next().expect("a name").as_os_str().to_string_lossy().trim_end_matches(".rs").to_owned();
        if room != "lib" {
            out.entry(room).or_default().extend(rooms_used(&std::fs::read_to_string(&path).expect("a source file")));
        }
    }
    out
}

#[test]
fn no_room_reaches_up_or_sideways() {
    let mut faults = Vec::new();
    let known: BTreeSet<&str> = FLOORS.iter().map(|(room, _)| *room).chain(["export"]).collect();
    for (room, used) in rooms() {
        if !known.contains(room.as_str()) {
            faults.push(format!("{room} is not in the floor table"));
            continue;
        }
        // Export stands on everything below it; nothing stands on export.
        let allowed: BTreeSet<&str> = match FLOORS.iter().find(|(name, _)| *name == room) {
            Some((_, allowed)) => allowed.iter().flat_map(|a| if *a == "ground" { GROUND.to_vec() } else { vec![*a] }).collect(),
            None => FLOORS.iter().map(|(name, _)| *name).collect(),
        };
        for other in used {
            if other != room && known.contains(other.as_str()) && !allowed.contains(other.as_str()) {
                faults.push(format!("{room} uses {other}"));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_table_itself_never_points_up() {
    let order: Vec<&str> = FLOORS.iter().map(|(room, _)| *room).collect();
    for (at, (room, allowed)) in FLOORS.iter().enumerate() {
        for other in allowed.iter().filter(|o| **o != "ground") {
            let below = order.iter().position(|r| r == other).expect("a room of the table");
            assert!(below < at, "{room} may use {other}, which stands no lower");
        }
    }
}

#[test]
fn the_reader_sees_groups_and_skips_docs() {
    let used = rooms_used("use crate::{units::Length, num};\n/// [`crate::job`]\nlet x = crate::trim::Profile;\nuse crate::error::{Error};");
    assert_eq!(used.into_iter().collect::<Vec<_>>(), ["error", "num", "trim", "units"]);
}
