//! Holds the numbers and names of cautions apart over all rooms, from the sources: two rooms, or two branches, may pick the same one.

#![allow(clippy::expect_used, clippy::panic, reason = "a test stops where its files are not what it reads")]

use seamwright_tests::root;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// A caution as its source declares it.
struct Declared {
    constant: String,
    number: u16,
    name: String,
    file: PathBuf,
}

fn sources(path: &Path, out: &mut Vec<PathBuf>) {
    let mut entries: Vec<PathBuf> = std::fs::read_dir(path).expect("a folder").map(|e| e.expect("an entry").path()).collect();
    entries.sort();
    for entry in entries {
        if entry.is_dir() {
            sources(&entry, out);
        } else if entry.extension().is_some_and(|e| e == "rs") && !entry.to_string_lossy().ends_with("_tests.rs") {
            out.push(entry);
        }
    }
}

/// What stands behind a field's name, up to the next comma, bracket or quote.
fn field<'a>(text: &'a str, name: &str, file: &Path) -> &'a str {
    let (_, rest) = text.split_once(name).unwrap_or_else(|| panic!("{}: a caution without {name}", file.display()));
    rest.split([',', '}', '\n']).next().unwrap_or_default().trim().trim_matches('"')
}

/// Every caution that a source declares; examples in comments are none.
fn declared() -> Vec<Declared> {
    let mut files = Vec::new();
    sources(&root().join("core/src"), &mut files);
    let mut out = Vec::new();
    for file in files {
        let text = std::fs::read_to_string(&file).expect("a source");
        let code: String = text.lines().filter(|l| !l.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n");
        for part in code.split("const ").skip(1) {
            let Some((constant, rest)) = part.split_once(": CautionCode") else { continue };
            if constant.contains(|c: char| !(c.is_ascii_uppercase() || c.is_ascii_digit() || c == '_')) {
                continue;
            }
            let number = field(rest, "number:", &file).replace('_', "").parse().unwrap_or_else(|e| panic!("{}: {constant}: {e}", file.display()));
            out.push(Declared { constant: constant.to_owned(), number, name: field(rest, "name:", &file).to_owned(), file: file.clone() });
        }
    }
    out
}

fn room(c: &Declared) -> String {
    c.file.strip_prefix(root().join("core/src")).expect("under core/src").iter().next().expect("a room").to_string_lossy().into_owned()
}

#[test]
fn every_caution_has_a_number_of_its_own() {
    let all = declared();
    let mut numbers: BTreeMap<u16, Vec<&str>> = BTreeMap::new();
    let mut names: BTreeMap<(String, &str), Vec<&str>> = BTreeMap::new();
    for c in &all {
        numbers.entry(c.number).or_default().push(&c.constant);
        // Two rooms may say the same of what is theirs; one room may not.
        names.entry((room(c), &c.name)).or_default().push(&c.constant);
    }
    let twice: Vec<String> = numbers.iter().filter(|(_, of)| of.len() > 1).map(|(n, of)| format!("{n} is {}", of.join(" and "))).collect();
    assert!(twice.is_empty(), "{twice:#?}");
    let alike: Vec<String> = names.iter().filter(|(_, of)| of.len() > 1).map(|((room, n), of)| format!("{n} of {room} is {}", of.join(" and "))).collect();
    assert!(alike.is_empty(), "{alike:#?}");
    assert!(all.len() >= 130, "{} cautions found", all.len());
    // The reading loses none: what the rooms list is what was found.
    let listed: std::collections::BTreeSet<u16> = seamwright::junction::CAUTIONS.iter().chain(seamwright::job::CAUTIONS).map(|c| c.number).collect();
    assert!(listed.iter().all(|n| numbers.contains_key(n)), "{listed:?}");
}

/// Rooms keep to numbers of their own, so that none takes what another will need next.
#[test]
fn every_caution_lies_in_its_room_s_range_and_is_listed() {
    let mut faults = Vec::new();
    let mut ranges: BTreeMap<String, (u16, u16)> = BTreeMap::new();
    for c in declared() {
        let range = ranges.entry(room(&c)).or_insert((c.number, c.number));
        *range = (range.0.min(c.number), range.1.max(c.number));
        let text = std::fs::read_to_string(&c.file).expect("a source");
        if let Some((_, list)) = text.split_once("pub const ALL: &[CautionCode] = &[") {
            let listed = list.split("];").next().unwrap_or_default().split(',').any(|n| n.trim() == c.constant);
            if !listed {
                faults.push(format!("{} is not among all cautions of {}", c.constant, c.file.display()));
            }
        }
    }
    let rooms: Vec<(&String, &(u16, u16))> = ranges.iter().collect();
    for (i, (room, (low, high))) in rooms.iter().enumerate() {
        for (other, (from, to)) in rooms.iter().take(i) {
            if low <= to && from <= high {
                faults.push(format!("{room} has {low} to {high}, {other} {from} to {to}"));
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}
