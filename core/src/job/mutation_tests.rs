//! The demo job's text changed at random: what comes of it is a packet or a refusal, never a panic.

#![cfg(feature = "serde")]

use super::Job;
use super::test_jobs::{DEMO, annexe_json, demo_json};
use crate::record::Calculation;
use proptest::prelude::*;
use serde_json::{Number, Value, json};

/// Every place of a job, as a JSON pointer.
fn places(of: &Value, at: &str, out: &mut Vec<String>) {
    match of {
        Value::Object(fields) => fields.iter().for_each(|(name, v)| places(v, &format!("{at}/{name}"), out)),
        Value::Array(all) => all.iter().enumerate().for_each(|(i, v)| places(v, &format!("{at}/{i}"), out)),
        _ => {}
    }
    if !at.is_empty() {
        out.push(at.to_owned());
    }
}

#[derive(Debug, Clone)]
enum Change {
    Drop,
    Twice,
    Put(Value),
    /// The number at the head of a text becomes another.
    Scale(f64),
    Swap(prop::sample::Index),
}

fn apply(json: &mut Value, place: &str, change: &Change) {
    let mut all = Vec::new();
    places(json, "", &mut all);
    match change {
        Change::Drop | Change::Twice => {
            let (parent, name) = place.rsplit_once('/').unwrap();
            match json.pointer_mut(parent) {
                Some(Value::Object(fields)) => {
                    fields.remove(name);
                }
                Some(Value::Array(of)) => {
                    if let Some(i) = name.parse::<usize>().ok().filter(|i| *i < of.len()) {
                        let taken = of.remove(i);
                        if matches!(change, Change::Twice) {
                            of.extend([taken.clone(), taken]);
                        }
                    }
                }
                _ => {}
            }
        }
        Change::Put(value) => *json.pointer_mut(place).unwrap() = value.clone(),
        Change::Scale(by) => match json.pointer_mut(place) {
            Some(Value::String(text)) => {
                let end = text.find(|c: char| !(c.is_ascii_digit() || "+-.".contains(c))).unwrap_or(text.len());
                if let Ok(number) = text[..end].parse::<f64>() {
                    *text = format!("{}{}", number * by, &text[end..]);
                }
            }
            Some(Value::Number(number)) => *number = number.as_f64().and_then(|n| Number::from_f64(n * by)).unwrap_or_else(|| 0.into()),
            _ => {}
        },
        Change::Swap(other) => {
            let other = other.get::<String>(&all);
            let (a, b) = (json.pointer(place).cloned().unwrap(), json.pointer(other).cloned().unwrap());
            if !other.starts_with(place) && !place.starts_with(other.as_str()) {
                *json.pointer_mut(place).unwrap() = b;
                *json.pointer_mut(other).unwrap() = a;
            }
        }
    }
}

fn change() -> impl Strategy<Value = Change> {
    let put = prop_oneof![
        Just(json!(null)),
        Just(json!([])),
        Just(json!({})),
        Just(json!(true)),
        any::<i64>().prop_map(|n| json!(n)),
        any::<f64>().prop_map(|n| json!(n)),
        ".{0,12}".prop_map(|s| json!(s)),
        (-40_i32..40, prop::sample::select(vec!["in", "mm", "m", "'", "\"", "deg", "degF", "mL", "", "km"])).prop_map(|(n, unit)| json!(format!("{n} {unit}"))),
        prop::sample::select(vec!["0 in", "9000 m", "-9000 m", "1e18 mm", "0.000000001 mm", "9223372 m", "0:12", "0.001:12", "1000:12", "89.999 deg", "24 ga"])
            .prop_map(|s| json!(s)),
    ];
    prop_oneof![
        2 => Just(Change::Drop),
        1 => Just(Change::Twice),
        4 => put.prop_map(Change::Put),
        6 => prop_oneof![Just(-1.0), Just(0.0), Just(0.5), Just(2.0), Just(10.0), 0.9..1.1_f64, any::<f64>()].prop_map(Change::Scale),
        3 => any::<prop::sample::Index>().prop_map(Change::Swap),
    ]
}

fn no_panic(text: &[u8]) {
    if let Err(e) = Job::from_json(text).and_then(|job| job.compute()) {
        assert!(!e.message().is_empty());
        assert_ne!(e.kind(), crate::error::ErrorKind::Internal, "{e}");
        for o in e.others() {
            assert_ne!(o.kind(), crate::error::ErrorKind::Internal, "{o}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, max_shrink_iters: 64, ..ProptestConfig::default() })]

    #[test]
    fn a_changed_job_is_worked_or_refused(changes in prop::collection::vec((any::<prop::sample::Index>(), change()), 1..3)) {
        let mut json = demo_json();
        for (place, change) in &changes {
            let mut all = Vec::new();
            places(&json, "", &mut all);
            apply(&mut json, place.get::<String>(&all), change);
        }
        no_panic(&serde_json::to_vec(&json).unwrap());
    }

    #[test]
    fn a_changed_job_with_copings_and_pipes_is_worked_or_refused(changes in prop::collection::vec((any::<prop::sample::Index>(), change()), 1..3)) {
        let mut json = annexe_json();
        for (place, change) in &changes {
            let mut all = Vec::new();
            // What speaks of the roof, its walls, its copings and its pipes is changed twice as often as the rest.
            for part in ["/roof", "/copings", "/pipes", ""] {
                places(json.pointer(part).unwrap_or(&Value::Null), part, &mut all);
            }
            apply(&mut json, place.get::<String>(&all), change);
        }
        no_panic(&serde_json::to_vec(&json).unwrap());
    }

    #[test]
    fn a_spoilt_text_is_worked_or_refused(at in any::<prop::sample::Index>(), byte in any::<u8>(), cut in any::<bool>()) {
        let mut text = DEMO.to_vec();
        let at = at.index(text.len());
        if cut {
            text.truncate(at);
        } else {
            text[at] = byte;
        }
        no_panic(&text);
    }
}
