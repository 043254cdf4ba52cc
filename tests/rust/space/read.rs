//! Quantities and names out of JSON; what is not there stops the test.

use super::vector::{V3, v};
use serde_json::Value;

fn number(text: &str) -> (f64, &str) {
    let end = text.find(|c: char| !(c.is_ascii_digit() || "+-.eE".contains(c))).unwrap_or(text.len());
    (text[..end].parse().unwrap_or_else(|e| panic!("{text}: {e}")), text[end..].trim())
}

/// A length in millimetres, of a text in millimetres or in decimal or whole and fractional inches.
pub(crate) fn length(value: &Value) -> f64 {
    let text = value.as_str().unwrap_or_else(|| panic!("no length: {value}"));
    if let Some(mm) = text.strip_suffix("mm") {
        return mm.trim().parse().unwrap_or_else(|e| panic!("{text}: {e}"));
    }
    let inches = text.strip_suffix('"').or_else(|| text.strip_suffix("in")).unwrap_or_else(|| panic!("{text}: neither mm nor inches")).trim();
    let part = |p: &str| match p.split_once('/') {
        Some((a, b)) => a.parse::<f64>().unwrap_or_else(|e| panic!("{text}: {e}")) / b.parse::<f64>().unwrap_or_else(|e| panic!("{text}: {e}")),
        None => p.parse().unwrap_or_else(|e| panic!("{text}: {e}")),
    };
    inches.split(' ').map(part).sum::<f64>() * 25.4
}

pub(crate) fn degrees(value: &Value) -> f64 {
    let (n, unit) = number(value.as_str().unwrap_or_else(|| panic!("no angle: {value}")));
    assert_eq!(unit, "deg", "{value}");
    n
}

pub(crate) fn text(value: &Value) -> &str {
    value.as_str().unwrap_or_else(|| panic!("no text: {value}"))
}

pub(crate) fn list(value: &Value) -> &[Value] {
    value.as_array().map_or_else(|| panic!("no list: {value}"), Vec::as_slice)
}

pub(crate) fn index(value: &Value) -> usize {
    value.as_u64().and_then(|n| usize::try_from(n).ok()).unwrap_or_else(|| panic!("no number: {value}"))
}

pub(crate) fn point(value: &Value) -> V3 {
    v(length(&value["x"]), length(&value["y"]), length(&value["z"]))
}

/// A length that may be left out, with what it then is.
pub(crate) fn length_or(value: &Value, default: f64) -> f64 {
    if value.is_null() { default } else { length(value) }
}

/// The value at a path as the library writes it: `junctions.kinds[0].eave`.
pub(crate) fn at<'a>(json: &'a Value, path: &str) -> &'a Value {
    path.replace('[', ".[").split('.').fold(json, |v, step| match step.strip_prefix('[') {
        Some(i) => &v[i.trim_end_matches(']').parse::<usize>().unwrap_or_else(|e| panic!("{path}: {e}"))],
        None => &v[step],
    })
}

pub(crate) fn mm(length: f64) -> Value {
    Value::String(format!("{length:.9} mm"))
}
