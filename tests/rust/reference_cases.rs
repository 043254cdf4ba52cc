//! Runs every reference case, and counts what the collected tables still hold.

#![allow(clippy::expect_used, clippy::print_stdout, reason = "a test stops where its files are not what it reads, and prints its counts")]

use seamwright_tests::case::{self, Case, Source};
use seamwright_tests::{compare, ops, root};
use std::collections::{BTreeMap, BTreeSet};

fn cases() -> Vec<Case> {
    case::load_all(&root().join("tests/cases")).expect("the case files can be read")
}

#[test]
fn every_case_matches_its_source() {
    let mut faults = Vec::new();
    let mut deviating = 0;
    for c in cases() {
        let differences = match ops::run(&c) {
            Ok(got) => compare::differences(&c, &got),
            Err(ops::Fault::Refused(e)) if c.out.contains_key("refused") => {
                let refused = [("refused", e.kind().name()), ("refused_at", e.path())].map(|(name, said)| (name.to_owned(), said.to_owned()));
                compare::differences(&c, &refused.into())
            }
            Err(fault) => vec![format!("{fault:?}")],
        };
        match &c.deviates {
            None => faults.extend(differences.into_iter().map(|d| format!("{} ({}): {d}", c.name, c.op))),
            Some(reason) => {
                deviating += 1;
                println!("deviates: {}: {reason}", c.name);
                if differences.is_empty() {
                    faults.push(format!("{}: declared a misprint, but it matches", c.name));
                }
            }
        }
    }
    println!("{} cases, {deviating} of them declared misprints", cases().len());
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn names_are_unique_and_sources_are_named() {
    let mut names = BTreeSet::new();
    for c in cases() {
        assert!(names.insert(c.name.clone()), "{} stands twice", c.name);
        match &c.source {
            Source::Plain(text) if c.out.contains_key("refused") => assert!(["common-practice", "bad-input"].contains(&text.as_str()), "{}", c.name),
            Source::Plain(text) => assert_eq!(text, "common-practice", "{}", c.name),
            Source::Published(p) => {
                assert!(!p.document.is_empty() && !p.place.is_empty(), "{}", c.name);
                assert!(["text", "secondary", "memory", "derived"].contains(&p.seen.as_str()), "{}: seen {}", c.name, p.seen);
            }
        }
    }
}

/// `rows.toml` lists the rows of the collected reference tables; each is converted, declared unusable with its reason, or left.
#[test]
fn the_counter_knows_every_row() {
    let text = std::fs::read_to_string(root().join("tests/cases/rows.toml")).expect("rows.toml is there");
    let rows: toml::Table = toml::from_str(&text).expect("rows.toml can be read");
    let converted: BTreeSet<String> = cases().into_iter().filter_map(|c| c.row).collect();
    let mut known = BTreeSet::new();
    for (table, entry) in &rows {
        let ids: BTreeSet<String> = entry["rows"].as_array().expect("rows").iter().map(|v| v.as_str().expect("an id").to_owned()).collect();
        let unusable: BTreeMap<String, String> = entry["unusable"].as_table().expect("unusable").iter().map(|(k, v)| (k.clone(), v.to_string())).collect();
        let done = ids.iter().filter(|id| converted.contains(*id)).count();
        for id in unusable.keys() {
            assert!(ids.contains(id), "{table}: {id} is declared unusable but is no row");
            assert!(!converted.contains(id), "{table}: {id} is declared unusable but is converted");
        }
        println!("{table}: {} rows, {done} converted, {} unusable, {} left", ids.len(), unusable.len(), ids.len() - done - unusable.len());
        known.extend(ids);
    }
    let unknown: Vec<&String> = converted.difference(&known).collect();
    assert!(unknown.is_empty(), "cases name rows that no table has: {unknown:?}");
}
