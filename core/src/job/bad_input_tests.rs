//! Bad jobs, from their text to the packet: one clear refusal each, with its place, its value and what would be accepted.

#![cfg(feature = "serde")]

use super::test_jobs::{DEMO, at, demo_json, demo_with, refused, work};
use super::*;
use crate::error::{Error, ErrorKind};
use crate::record::Calculation;
use serde_json::{Value, json};

fn text_refused(text: &[u8]) -> Error {
    Job::from_json(text).and_then(|job| job.compute()).map(|p| p.summary).expect_err("refused")
}

/// One value of the demo job replaced: its path, the value, and what is said of it. A `*` stands for any value or acceptance but none.
type Case = (&'static str, Value, ErrorKind, &'static str, &'static str, &'static str);

fn check(cases: Vec<Case>) {
    for (path, value, kind, at, said, accepted) in cases {
        let e = refused(&demo_with(path, value.clone()));
        let case = format!("{path} = {value}: {e}");
        assert_eq!((e.kind(), e.path()), (kind, at), "{case}");
        match said {
            "*" => assert!(e.value().is_some_and(|v| !v.is_empty()), "{case}"),
            _ => assert_eq!(e.value().unwrap_or(""), said, "{case}"),
        }
        assert!(e.allowed().is_some_and(|a| !a.is_empty() && (accepted == "*" || a.contains(accepted))), "{case}");
        assert!(e.to_string().starts_with(&format!("{at}: ")), "{case}");
    }
}

#[test]
fn a_quantity_that_is_none_is_pointed_at_in_its_field() {
    use ErrorKind::{Format, OutOfRange, Parse, Unit};
    check(vec![
        ("panel.coverage", json!("16,5\""), Parse, "panel.coverage", "16,5\"", "60.3 mm"),
        ("panel.coverage", json!("NaN in"), Parse, "panel.coverage", "NaN in", "60.3 mm"),
        ("levels.tape", json!("inf mm"), Parse, "levels.tape", "inf mm", "60.3 mm"),
        ("levels.tape", json!("1e300 km"), Unit, "levels.tape", "1e300 km", "mm"),
        ("panel.coverage", json!("16"), Unit, "panel.coverage", "16", "60.3 mm"),
        ("panel.coverage", json!(16), Format, "panel.coverage", "integer `16`", "with its unit, as text"),
        ("layout.planes[6].start.datum", json!("10 5/8"), Unit, "layout.planes[6].start.datum", "10 5/8", "60.3 mm"),
        ("temperatures.laid", json!("70"), Unit, "temperatures.laid", "70", "degF"),
        ("temperatures.laid", json!("-500 degF"), OutOfRange, "temperatures.laid", "-500 degF", "-273.15 degC or more"),
        ("roof.planes[0].shape.plan.pitch", json!("90 deg"), OutOfRange, "roof.planes[0].shape.plan.pitch", "90 deg", "less than 90 deg"),
        ("roof.planes[0].shape.plan.pitch", json!("-3:12"), OutOfRange, "roof.planes[0].shape.plan.pitch", "-3:12", "0 mm or more"),
        ("paperwork.lengths", json!("furlongs"), Parse, "paperwork.lengths", "furlongs", "ft-in/16"),
        ("bend_rule", json!({"neutral-axis": {"factor": 1.5}}), OutOfRange, "bend_rule.neutral-axis.factor", "1.5", "0 (inside face)"),
        ("layout.rounding.field_cut.increment", json!("0 in"), OutOfRange, "layout.rounding.field_cut.increment", "0 mm", "more than 0"),
    ]);
    for (text, start, end) in [("16,5\"", 2, 3), ("12-3", 2, 3), ("NaN in", 0, 1), ("1/0 in", 2, 3), ("é 16 in", 0, 2)] {
        let e = refused(&demo_with("junctions.kinds[2].ridge.first.closure.set_back", json!(text)));
        assert_eq!((e.path(), e.span(), e.value()), ("junctions.kinds[2].ridge.first.closure.set_back", Some((start, end)), Some(text)), "{e}");
    }
}

#[test]
fn sheets_without_a_thickness_or_its_system_are_refused() {
    use ErrorKind::{Conflict, Format, Missing, OutOfRange, Unit, Unknown};
    let sheet = "junctions.kinds[0].eave.sheet.thickness";
    check(vec![
        ("metals.panel.thickness", json!("0 in"), OutOfRange, "metals.panel.thickness", "0 mm", "more than 0 mm"),
        ("metals.panel.thickness", json!("-0.02 in"), OutOfRange, "metals.panel.thickness", "-0.508 mm", "more than 0 mm"),
        ("metals.trims[1].thickness", json!("0 in"), OutOfRange, "metals.trims[1].thickness", "0 mm", "more than 0 mm"),
        ("metals.panel.thickness", json!("24 ga"), Unit, "metals.panel.thickness", "24 ga", "24 ga galvanized"),
        ("metals.panel.thickness", json!("24"), Unit, "metals.panel.thickness", "24", "24 ga galvanized"),
        ("metals.panel.thickness", json!(24), Format, "metals.panel.thickness", "integer `24`", "a gauge with its system"),
        ("metals.panel.coating", Value::Null, Missing, "metals.panel.coating", "aluminium-zinc-coated-steel", "AZ50"),
        ("metals.panel.coating", json!("G90"), Conflict, "metals.panel.coating", "G90", "AZ50"),
        ("metals.panel.alloy", json!("tin"), Unknown, "metals.panel.alloy", "tin", "copper"),
        ("metals.trims[1].thickness", json!("0.0276 in"), Conflict, "metals.trims[1]", "0.70104 mm", "different thickness"),
        (sheet, json!("0 in"), OutOfRange, sheet, "0 mm", "more than 0 mm"),
        (sheet, json!("-0.03 in"), OutOfRange, sheet, "-0.762 mm", "more than 0 mm"),
        (sheet, json!("0.05 in"), Missing, "junctions.kinds[0].eave", "1.27 mm", "0.70104 mm, 0.85344 mm"),
        ("metals.trims", json!([]), Missing, "junctions.kinds[0].eave", "*", "metals.trims"),
    ]);
    // One fault of a detail is said once, with every line that it is on.
    let e = refused(&demo_with(sheet, json!("0 in")));
    assert!(e.others().is_empty() && e.message().contains("eave 1, eave 2") && e.message().contains("eave 11"), "{e}");
    assert!(refused(&demo_with(sheet, json!("0.05 in"))).message().contains("eave trim"));
}

#[test]
fn planes_that_cannot_be_are_refused() {
    let mut json = demo_json();
    at(&mut json, "roof.planes[0].shape.plan.outer").as_array_mut().unwrap().swap(5, 6);
    let e = refused(&json);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "roof.planes[0].shape.plan.outer[1]"));
    assert!(e.message().contains("meets the edge that leaves outer[4]") && e.allowed().is_some(), "{e}");

    let mut json = demo_json();
    for k in [2, 3] {
        *at(&mut json, &format!("roof.planes[5].shape.plan.outer[{k}].y")) = json!("3 ft");
    }
    let e = refused(&json);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "roof.planes[5]"));
    assert!(e.message().contains("main south and porch overlap") && e.value().unwrap().contains("914.400 mm") && e.cure().is_some(), "{e}");

    let e = refused(&demo_with("roof.planes", json!([])));
    assert_eq!((e.kind(), e.path(), e.allowed()), (ErrorKind::Missing, "roof.planes", Some("1 plane or more")));
    let e = refused(&demo_with("roof.walls[0].to", json!({"x": "0 in", "y": "0 in"})));
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "roof.walls[0]"));
}

#[test]
fn fields_are_refused_by_their_path() {
    use ErrorKind::{Format, Missing, Unknown};
    check(vec![
        ("format", json!("seamwright-packet"), Unknown, "format", "seamwright-packet", "seamwright-job"),
        ("version", json!(2), Format, "version", "2", "1"),
        ("version", json!(-1), Format, "version", "integer `-1`", "a whole number, 0 or more"),
        ("name", json!(" "), Missing, "name", " ", "a name"),
        ("name", Value::Null, Format, "name", "null", "a string"),
        ("roof", Value::Null, Format, "roof", "null", "an object"),
        ("roof", json!([]), Format, "roof", "sequence", "an object"),
        ("layout.start", json!("middle"), Unknown, "layout.start", "middle", "centre-panel"),
        ("paperwork.paper", json!("a5"), Unknown, "paperwork.paper", "a5", "letter or a4"),
        ("junctions.kinds[0]", json!({"eaves": {}}), Unknown, "junctions.kinds[0]", "eaves", "eave, rake"),
        ("supplies.closures", json!(["1 in", "1/4\""]), Format, "supplies.closures", "sequence", "an object"),
        ("layout.planes[0].plane", json!("main suoth"), Unknown, "layout.planes[0].plane", "main suoth", "main south"),
        ("layout.planes[1].plane", json!("main south"), ErrorKind::Conflict, "layout.planes[1].plane", "main south", "each plane once"),
    ]);
    let mut json = demo_json();
    json["panel"]["colour"] = json!("red");
    let e = refused(&json);
    assert_eq!((e.kind(), e.path(), e.value()), (Unknown, "panel.colour", Some("colour")));
    assert!(e.allowed().unwrap().contains("coverage"), "{e}");
    for (object, field) in
        [("panel", "seam_height"), ("roof.planes[3].shape.plan", "pitch"), ("junctions.kinds[7].steep-to-shallow.end.closure", "tape_beneath")]
    {
        let mut json = demo_json();
        at(&mut json, object).as_object_mut().unwrap().remove(field);
        let e = refused(&json);
        assert_eq!((e.kind(), e.path()), (Missing, format!("{object}.{field}").as_str()), "{e}");
    }
    let two = json!({"eave": demo_json()["junctions"]["kinds"][0]["eave"], "rake": {}});
    let e = refused(&demo_with("junctions.kinds[0]", two));
    assert_eq!((e.kind(), e.path(), e.allowed()), (Format, "junctions.kinds[0]", Some("an object of one entry")), "{e}");
    let twice = String::from_utf8(DEMO.to_vec()).unwrap().replacen("\"version\": 1,", "\"version\": 1, \"version\": 1,", 1);
    let e = text_refused(twice.as_bytes());
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "version"), "{e}");
}

/// A list of values in the order of the fields is no object, wherever it stands: in a struct, a list or a choice.
#[test]
fn fields_are_read_by_their_names_alone() {
    let listed = |path: &str| {
        let mut json = demo_json();
        let place = at(&mut json, path);
        *place = Value::Array(place.as_object().unwrap().values().cloned().collect());
        refused(&json)
    };
    for path in ["panel", "supplies.sealant.tape_laps", "roof.planes[0]", "roof.planes[0].shape.plan", "junctions.kinds[0].eave", "panel.seam.snap-lock"] {
        let e = listed(path);
        assert_eq!((e.kind(), e.path(), e.value(), e.allowed()), (ErrorKind::Format, path, Some("sequence"), Some("an object")), "{e}");
        assert!(e.cure().unwrap().starts_with("each value under its name: "), "{e}");
    }
    assert_eq!(listed("supplies.sealant.tape_laps").cure(), Some("each value under its name: lap, laps_per_seam_side"));
}

#[test]
fn lines_and_their_details_must_fit() {
    let mut json = demo_json();
    at(&mut json, "junctions.kinds").as_array_mut().unwrap().remove(4);
    let e = refused(&json);
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Missing, "junctions.kinds", Some("valley 1, valley 2")));
    assert_eq!(e.allowed(), Some("a detail for the kind valley"));

    let eave = demo_json()["junctions"]["kinds"][0].clone();
    let with = |lines: Value| refused(&demo_with("junctions.lines", lines));
    let e = with(json!([{"line": "eave 99", "detail": eave}]));
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Unknown, "junctions.lines[0].line", Some("eave 99")));
    assert!(e.allowed().unwrap().contains("eave 11"), "{e}");
    let e = with(json!([{"line": "ridge 1", "detail": eave}]));
    assert_eq!((e.kind(), e.path(), e.value(), e.allowed()), (ErrorKind::Conflict, "junctions.lines[0].detail", Some("eave"), Some("ridge")));
    let e = with(json!([{"line": "eave 1", "detail": eave}, {"line": "eave 1", "detail": eave}]));
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Conflict, "junctions.lines[1].line", Some("eave 1")));
    let mut json = demo_json();
    at(&mut json, "junctions.kinds").as_array_mut().unwrap().push(eave);
    let e = refused(&json);
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Conflict, "junctions.kinds[12]", Some("eave")));
    assert!(e.allowed().unwrap().contains("junctions.lines"), "{e}");
}

#[test]
fn what_cannot_be_built_says_by_how_much() {
    use ErrorKind::{Conflict, Impossible, OutOfRange, Unknown};
    let laps = "supplies.trims.laps[0].trim";
    check(vec![
        ("junctions.kinds[2].ridge.first.hold_back", json!("6 in"), Impossible, "junctions.kinds[2].ridge.first.hold_back", "152.4 mm", "12.7 mm or more"),
        (
            "junctions.kinds[7].steep-to-shallow.end.hold_back",
            json!("6 in"),
            Impossible,
            "junctions.kinds[7].steep-to-shallow.end.hold_back",
            "152.4 mm",
            "12.7 mm or more",
        ),
        ("layout.limit.length", json!("12 ft"), Impossible, "planes.main south.strips[0].runs[0]", "7094.5375 mm", "at most 3657.6 mm"),
        ("layout.limit.length", json!("0 ft"), OutOfRange, "layout.limit.length", "0 mm", "more than 0 mm"),
        ("layout.limit.end_lap", json!("50 ft"), Conflict, "layout.limit.end_lap", "15240 mm", "less than 13716 mm"),
        ("layout.narrow.least", json!("0 in"), OutOfRange, "layout.narrow.least", "0 mm", "more than 0 mm"),
        (
            "junctions.kinds[0].eave.flange.fasteners.spacing",
            json!("0 in"),
            OutOfRange,
            "junctions.kinds[0].eave.flange.fasteners.spacing",
            "0 mm",
            "more than 0 mm",
        ),
        ("junctions.kinds[1].rake.rivets.spacing", json!("-1 in"), OutOfRange, "junctions.kinds[1].rake.rivets.spacing", "-25.4 mm", "more than 0 mm"),
        ("supplies.clips.spacing", json!("0 in"), OutOfRange, "supplies.clips.spacing", "0 mm", "more than 0 mm"),
        ("engineer.rows[0].spacing", json!("0 in"), OutOfRange, "engineer.rows[0].spacing", "0 mm", "more than 0 mm"),
        ("engineer.clips", json!("0 in"), OutOfRange, "engineer.clips", "0 mm", "more than 0 mm"),
        ("engineer.rows[1].line", json!("ridge"), Conflict, "engineer.rows[1]", "ridge, closure screws", "each row once"),
        ("levels.tape", json!("-1 in"), OutOfRange, "levels.tape", "-25.4 mm", "0 mm or more"),
        ("temperatures.laid", json!("170 degF"), Conflict, "temperatures.laid", "*", "from -28.8"),
        (laps, json!("valley pam"), Unknown, laps, "valley pam", "valley pan"),
        ("supplies.trims.stock[0].length", json!("0 in"), OutOfRange, "supplies.trims.stock[0].length", "0 mm", "more than 0 mm"),
        ("supplies.trims.end_loss", json!("11 ft"), Conflict, "supplies.trims.end_loss", "3352.8 mm", "less than 3048 mm"),
        ("supplies.trims.lap", json!("10 ft"), Conflict, "supplies.trims.lap", "3048 mm", "less than 3048 mm"),
        ("supplies.trims.laps[0].lap", json!("10 ft"), Conflict, "supplies.trims.laps[0].lap", "3048 mm", "less than 3048 mm"),
        ("supplies.trims.least_piece", json!("8 ft"), Conflict, "supplies.trims.least_piece", "2438.4 mm", "at most half"),
        ("supplies.trims.greatest_girth", json!("10 in"), Impossible, "junctions.kinds[7].steep-to-shallow", "*", "at most 254 mm"),
        (
            "supplies.trims.corners",
            json!({"usual": "-1 in", "source": "common-practice"}),
            OutOfRange,
            "supplies.trims.corners.usual",
            "-25.4 mm",
            "0 mm or more",
        ),
        ("supplies.sealant.tape_waste_ratio", json!(1e300), OutOfRange, "supplies.sealant.tape_waste_ratio", "*", "0 to 10"),
        ("supplies.sealant.tube_waste_ratio", json!(-0.5), OutOfRange, "supplies.sealant.tube_waste_ratio", "-0.5", "0 to 10"),
        ("supplies.sealant.tube", json!("0 mL"), OutOfRange, "supplies.sealant.tube", "0 m3", "more than 0"),
        ("supplies.closures.tab", json!("0 in"), OutOfRange, "supplies.closures.tab", "0 mm", "more than 0 mm"),
        ("supplies.closures.tab", json!("16 in"), Impossible, "supplies.closures.tab", "406.4 mm", "at most 3"),
        ("supplies.closures.clearance", json!("16 in"), Impossible, "supplies.closures.clearance", "406.4 mm", "less than 3"),
        ("supplies.closures.from_tab", json!("8 in"), Impossible, "supplies.closures.from_tab", "203.2 mm", "less than half of 3"),
        ("supplies.clips.screws", json!(0), OutOfRange, "supplies.clips.screws", "0", "1 or more"),
        ("panel.coverage", json!("0 in"), OutOfRange, "panel.coverage", "0 mm", "more than 0 mm"),
    ]);
    let e = refused(&demo_with("layout.limit.length", json!("12 ft")));
    assert_eq!((e.message(), e.cure()), ("a panel is longer than shipping allows", Some("allow end laps")));
    // All of them are there, and told in a few lines: one, and the first places of the rest.
    assert!(e.others().len() > 100 && e.others().iter().all(|o| o.message() == e.message() && o.path().starts_with("planes.")));
    let text = e.to_string();
    assert!(text.contains(&format!("\nthe same at {} more, the first of them planes.main south.strips[1].runs[0], ", e.others().len())), "{text}");
    assert_eq!((text.lines().count(), text.matches("planes.").count()), (2, 9), "{text}");
    let lapped = work(&demo_with("layout.limit", json!({"length": "12 ft", "governs": "shipping", "end_lap": "6 in"}))).unwrap();
    assert!(lapped.summary.pieces > u64::try_from(lapped.summary.panels).unwrap() && lapped.summary.longest <= crate::units::Length::feet(12));
    let e = refused(&demo_with("supplies.trims.stock", json!([])));
    assert_eq!((e.kind(), e.path(), e.allowed()), (ErrorKind::Missing, "supplies.trims.stock", Some("one stock length or more")));
}

#[test]
fn faults_of_several_fields_are_all_told() {
    let mut json = demo_json();
    *at(&mut json, "panel.coverage") = json!("0 in");
    *at(&mut json, "supplies.clips.spacing") = json!("-1 in");
    *at(&mut json, "engineer.document") = json!("");
    let e = refused(&json);
    let paths: Vec<&str> = core::iter::once(&e).chain(e.others()).map(Error::path).collect();
    assert_eq!(paths, ["panel.coverage", "supplies.clips.spacing", "engineer.document"]);
}

#[test]
fn what_is_no_job_is_refused() {
    for text in ["", " ", "{", "not JSON", "[]", "{} {}", "\u{feff}{}", "\0"] {
        let e = text_refused(text.as_bytes());
        assert!(matches!(e.kind(), ErrorKind::Format | ErrorKind::Missing), "{text:?}: {e}");
    }
    let e = text_refused(b"{\"format\": \"seamwright-job\", \xff}");
    assert_eq!((e.kind(), e.allowed()), (ErrorKind::Parse, Some("JSON in UTF-8")));
    let cut = &DEMO[..DEMO.len() / 2];
    let e = text_refused(cut);
    assert_eq!(e.kind(), ErrorKind::Format);
    assert!(e.message().contains("line ") && e.span().is_some(), "{e}");
}

#[test]
fn a_hundred_megabytes_of_garbage_are_refused() {
    let garbage = vec![b'x'; 100 << 20];
    let e = text_refused(&garbage);
    assert_eq!((e.kind(), e.value(), e.allowed()), (ErrorKind::TooLarge, Some("104857600 bytes"), Some("at most 67108864 bytes")));
    let e = text_refused(&garbage[..Job::LONGEST]);
    assert_eq!(e.kind(), ErrorKind::Format);
    assert!(e.value().unwrap().len() < 500);
}

#[test]
fn deep_nesting_is_an_ordinary_refusal() {
    const LEVELS: usize = 100_000;
    for (open, close) in [("[", "]"), ("{\"roof\":", "}"), ("{\"roof\":{\"planes\":[", "]}}")] {
        for text in [open.repeat(LEVELS), format!("{}1{}", open.repeat(LEVELS), close.repeat(LEVELS))] {
            let e = text_refused(text.as_bytes());
            assert!(matches!(e.kind(), ErrorKind::Format | ErrorKind::Missing | ErrorKind::Unknown), "{open}: {e}");
        }
    }
    // Within a field that may hold any depth of choices.
    let deep = format!("{{\"bend_rule\": {}", "{\"deductions\":".repeat(LEVELS));
    assert!(matches!(text_refused(deep.as_bytes()).kind(), ErrorKind::Format | ErrorKind::Missing | ErrorKind::Unknown));
}
