//! Flat patterns and rules from JSON: what is read, and where each refusal points.

use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::{BendAngle, Length};
use proptest::prelude::*;

const GOOD: &str = r#"{
  "profile": {
    "thickness": "0.05 in",
    "legs": [
      {"name": "a", "length": "1 in", "start": "sheet-edge", "end": "outer-corner"},
      {"name": "b", "length": "1 in", "start": "outer-corner", "end": "sheet-edge"}
    ],
    "bends": [{"angle": "90 deg", "direction": "up", "inside_radius": "0.05 in"}],
    "painted": "upper"
  },
  "rule": {"neutral-axis": {"factor": 0.5}}
}"#;

#[test]
fn a_pattern_is_read_and_unfolds() {
    let pattern = FlatPattern::from_json(GOOD.as_bytes()).unwrap();
    let built = Profile::builder(Length::mils(50))
        .painted(Face::Upper)
        .inside_radius(Length::mils(50))
        .leg("a", Length::inches(1))
        .up(BendAngle::SQUARE)
        .leg("b", Length::inches(1))
        .build()
        .unwrap();
    assert_eq!(pattern, FlatPattern { profile: built, rule: BendRule::neutral_axis(NeutralFactor::MIDDLE) });
    assert_eq!(FlatPattern::from_json(&serde_json::to_vec(&pattern).unwrap()).unwrap(), pattern);
    assert_eq!(pattern.compute().unwrap().bends()[0].from, Length::mils(900));
}

#[test]
fn each_fault_has_its_kind_and_its_path() {
    let cases = [
        ("\"1 in\", \"start\": \"outer", "1, \"start\": \"outer", ErrorKind::Format, "profile.legs[1].length"),
        ("\"90 deg\"", "\"90\"", ErrorKind::Unit, "profile.bends[0].angle"),
        ("\"direction\": \"up\", ", "", ErrorKind::Missing, "profile.bends[0].direction"),
        (",\n    \"painted\": \"upper\"", "", ErrorKind::Missing, "profile.painted"),
        ("\"direction\": \"up\"", "\"direction\": \"left\"", ErrorKind::Unknown, "profile.bends[0].direction"),
        ("\"inside_radius\"", "\"radius\"", ErrorKind::Unknown, "profile.bends[0].radius"),
        ("neutral-axis", "axis", ErrorKind::Unknown, "rule"),
        ("0.5", "1.5", ErrorKind::OutOfRange, "rule.neutral-axis.factor"),
        ("\"rule\"", "\"rules\"", ErrorKind::Unknown, "rules"),
        ("\"painted\"", "\"thickness\": \"1 mm\", \"painted\"", ErrorKind::Conflict, "profile.thickness"),
    ];
    for (was, is, kind, path) in cases {
        assert!(GOOD.contains(was), "{was}");
        let e = FlatPattern::from_json(GOOD.replacen(was, is, 1).as_bytes()).unwrap_err();
        assert_eq!((e.kind(), e.path()), (kind, path), "{is}: {e}");
    }
    assert_eq!(FlatPattern::from_json(b"{}").unwrap_err().path(), "profile");
    let e = FlatPattern::from_json(br#"{"rule": "rule"}"#).unwrap_err();
    assert_eq!((e.path(), e.value()), ("rule", Some("rule")));
    let e = FlatPattern::from_json(GOOD.replacen("\"90 deg\"", "90", 1).as_bytes()).unwrap_err();
    assert_eq!((e.path(), e.value()), ("profile.bends[0].angle", Some("integer `90`")));
}

#[test]
fn what_is_not_json_is_pointed_at() {
    let e = FlatPattern::from_json(b"{\n \"profile\": ;}").unwrap_err();
    assert_eq!((e.kind(), e.span()), (ErrorKind::Format, Some((14, 15))));
    let e = BendRule::from_json(b"\"aviation\" 1").unwrap_err();
    assert_eq!((e.kind(), e.span()), (ErrorKind::Format, Some((11, 12))));
    assert_eq!(BendRule::from_json(b"").unwrap_err().kind(), ErrorKind::Format);
    assert_eq!(BendRule::from_json(b"\"avi\xff\"").unwrap_err().kind(), ErrorKind::Parse);
}

#[test]
fn text_beyond_the_limit_or_nested_is_refused() {
    let mut long = b"\"aviation\"".to_vec();
    long.resize(1 << 20, b' ');
    assert_eq!(BendRule::from_json(&long).unwrap(), BendRule::Aviation);
    long.push(b' ');
    assert_eq!(BendRule::from_json(&long).unwrap_err().kind(), ErrorKind::TooLarge);
    let deep = GOOD.replace("\"0.05 in\",\n", &format!("{}1,\n", "[".repeat(100_000)));
    let e = FlatPattern::from_json(deep.as_bytes()).unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Format, "profile.thickness", Some("sequence")));
}

proptest! {
    #[test]
    fn any_change_is_read_or_refused(at in 0..GOOD.len(), len in 0_usize..30, with in "[\\[\\]{}:,\"0-9a-z é-]{0,6}") {
        let end = (at + len).min(GOOD.len());
        let text = format!("{}{with}{}", &GOOD[..at], &GOOD[end..]);
        if let Err(e) = FlatPattern::from_json(text.as_bytes()) {
            prop_assert_ne!(e.kind(), ErrorKind::Internal);
            if let (Some((start, end)), Some(value)) = (e.span(), e.value()) {
                prop_assert!(value.get(start..end).is_some());
            }
        }
    }
}
