//! Calculations by name: that each is its type's, and what is refused.

#![cfg(feature = "serde")]

use super::*;
use crate::error::{Error, ErrorKind};
use crate::record::Calculation;
use crate::spacing::{LastStation, Spacing, SpacingRule};
use crate::units::Length;
use std::collections::BTreeSet;

const SPACING: &str = r#"{"run": "10 ft", "end_distance": "1 in", "rule": {"fixed": {"start": "1 in", "spacing": "12 in", "last": "at-end-distance"}}}"#;
const SCREW: &str = r#"{"edition": "y2012", "head_ply": {"thickness": "0.0188 in", "ultimate": "33 ksi"},
    "far_ply": {"thickness": "0.0188 in", "ultimate": "33 ksi"}, "screw": {"diameter": "0.19 in", "head": "0.34 in"}}"#;

fn refused(name: &str, input: &str) -> Error {
    let e = compute_json(name, input).unwrap_err();
    assert_eq!(explain_json(name, input).unwrap_err().to_string(), e.to_string());
    e
}

fn kebab(name: &str) -> String {
    name.chars().enumerate().flat_map(|(i, c)| [(i > 0 && c.is_uppercase()).then_some('-'), Some(c.to_ascii_lowercase())]).flatten().collect()
}

#[test]
fn a_name_is_the_room_and_the_type() {
    for c in CALCULATIONS {
        let mut path = c.type_name().split("::");
        let (room, calculation) = (path.nth(1).unwrap(), path.last().unwrap());
        assert_eq!(c.name(), format!("{room}.{}", kebab(calculation)));
    }
    assert_eq!(names().collect::<BTreeSet<_>>().len(), CALCULATIONS.len());
    let e = named("spacing").unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Unknown, "name", Some("spacing")));
}

#[test]
fn an_answer_by_name_is_the_type_s_own() {
    let rule = SpacingRule::Fixed { start: Length::inches(1), spacing: Length::inches(12), last: LastStation::AtEndDistance };
    let own = Spacing { run: Length::feet(10), end_distance: Length::inches(1), rule };
    let (out, sheet) = explain_json("spacing.spacing", SPACING).unwrap();
    assert_eq!(out, serde_json::to_string(&own.compute().unwrap()).unwrap());
    assert_eq!(compute_json("spacing.spacing", SPACING).unwrap(), out);
    assert_eq!(sheet, own.explain().unwrap().1);
    let document: serde_json::Value = serde_json::from_str(&named("spacing.spacing").unwrap().explained_json(SPACING).unwrap()).unwrap();
    assert_eq!(document["out"], serde_json::from_str::<serde_json::Value>(&out).unwrap());
    assert_eq!(document["worksheet"]["entries"].as_array().unwrap().len(), sheet.entries.len());
    // What Rust writes as an input, the name reads.
    assert_eq!(compute_json("spacing.spacing", &serde_json::to_string(&own).unwrap()).unwrap(), out);
}

#[test]
fn each_bad_input_has_its_kind_and_its_path() {
    let cases = [
        ("spacing.spacing", SPACING, "\"start\": \"1 in\"", "\"start\": \"1 in\", \"end\": \"1 in\"", ErrorKind::Unknown, "rule.fixed.end"),
        ("spacing.spacing", SPACING, "\"run\": \"10 ft\"", "\"length\": \"10 ft\"", ErrorKind::Unknown, "length"),
        ("spacing.spacing", SPACING, "\"run\": \"10 ft\", ", "", ErrorKind::Missing, "run"),
        ("spacing.spacing", SPACING, "\"12 in\"", "\"0 in\"", ErrorKind::OutOfRange, "rule.spacing"),
        ("spacing.spacing", SPACING, "\"10 ft\"", "\"-10 ft\"", ErrorKind::OutOfRange, "run"),
        ("spacing.spacing", SPACING, "\"10 ft\"", "\"NaN ft\"", ErrorKind::Parse, "run"),
        ("spacing.spacing", SPACING, "\"10 ft\"", "\"inf mm\"", ErrorKind::Parse, "run"),
        ("spacing.spacing", SPACING, "\"10 ft\"", "NaN", ErrorKind::Format, "run"),
        ("spacing.spacing", SPACING, "\"10 ft\"", "1e999", ErrorKind::Format, "run"),
        ("spacing.spacing", SPACING, "\"10 ft\"", "10", ErrorKind::Format, "run"),
        ("spacing.spacing", SPACING, "\"10 ft\"", "\"1e300 km\"", ErrorKind::Unit, "run"),
        ("spacing.spacing", SPACING, "fixed", "staggered", ErrorKind::Unknown, "rule"),
        ("fastener.screw-connection", SCREW, "\"0.0188 in\"", "\"0 in\"", ErrorKind::OutOfRange, "head_ply.thickness"),
        ("fastener.screw-connection", SCREW, "33 ksi", "-33 ksi", ErrorKind::OutOfRange, "head_ply.ultimate"),
        ("fastener.screw-connection", SCREW, "33 ksi", "inf ksi", ErrorKind::Parse, "head_ply.ultimate"),
    ];
    for (name, good, was, is, kind, path) in cases {
        compute_json(name, good).unwrap();
        assert!(good.contains(was), "{was}");
        let e = refused(name, &good.replacen(was, is, 1));
        assert_eq!((e.kind(), e.path()), (kind, path), "{is}: {e}");
        assert!(kind == ErrorKind::Missing || e.value().is_some() || e.message().contains("got"), "{e}");
    }
}

#[test]
fn what_is_not_json_is_pointed_at() {
    for text in ["", " ", "{", "not JSON", "{\"run\" \"10 ft\"}", "\u{feff}{}", "{} {}", "\0"] {
        let e = refused("spacing.spacing", text);
        assert!(matches!(e.kind(), ErrorKind::Format | ErrorKind::Missing), "{text:?}: {e}");
    }
    let long = format!("{{\"run\": {}\"10 ft\" é;", " ".repeat(1 << 20));
    let e = refused("spacing.spacing", &long);
    let (start, end) = e.span().unwrap();
    assert_eq!((e.kind(), e.value().unwrap().get(start..end)), (ErrorKind::Format, Some("é")));
    assert!(e.value().unwrap().len() < 500, "a long text is quoted around its fault only");
}

#[test]
fn a_hundred_megabytes_of_garbage_are_refused_by_their_size() {
    let garbage = "[\"".repeat(50 << 20);
    let e = refused("stock.cutting", &garbage);
    assert_eq!((e.kind(), e.value(), e.allowed()), (ErrorKind::TooLarge, Some("104857600 bytes"), Some("at most 16777216 bytes")));
    let mut text = SPACING.to_owned();
    text.extend(std::iter::repeat_n(' ', LONGEST_INPUT - SPACING.len()));
    compute_json("spacing.spacing", &text).unwrap();
    text.push(' ');
    assert_eq!(refused("spacing.spacing", &text).kind(), ErrorKind::TooLarge);
}

#[test]
fn deep_nesting_is_an_ordinary_refusal_everywhere() {
    const LEVELS: usize = 100_000;
    let deep = "[".repeat(LEVELS);
    let objects = "{\"rule\":".repeat(LEVELS);
    for c in CALCULATIONS {
        for text in [deep.clone(), objects.clone(), format!("{{\"rule\":{deep}"), format!("{{\"pieces\":[{{\"label\":{deep}"), format!("{{\"planes\":{deep}")] {
            let e = refused(c.name(), &text);
            assert!(matches!(e.kind(), ErrorKind::Format | ErrorKind::Unknown | ErrorKind::Missing), "{}: {e}", c.name());
        }
    }
}
