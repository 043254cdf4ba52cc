//! Comparing outputs as quantities: a length by its picometres, a number with its unit by its value, the rest as text.

use crate::case::{Case, Values};
use seamwright::units::Length;

/// What does not match, one line an output; empty where all do.
#[must_use]
pub fn differences(case: &Case, got: &Values) -> Vec<String> {
    case.out
        .iter()
        .filter_map(|(name, expected)| difference(name, expected, got.get(name)?, case.tol.get(name).map(String::as_str)))
        .collect::<Vec<_>>()
        .into_iter()
        .chain(missing(case, got))
        .collect()
}

fn missing(case: &Case, got: &Values) -> Vec<String> {
    case.out.keys().filter(|name| !got.contains_key(*name)).map(|name| format!("{name}: no such output")).collect()
}

fn difference(name: &str, expected: &str, got: &str, tol: Option<&str>) -> Option<String> {
    let fault = |reason: String| Some(format!("{name}: expected {expected}, got {got}{reason}"));
    if let (Ok(a), Ok(b)) = (Length::parse(expected), Length::parse(got)) {
        let allowed = match tol.map(Length::parse) {
            None => 0,
            Some(Ok(t)) => i128::from(t.pm()),
            Some(Err(e)) => return fault(format!(", tolerance: {e}")),
        };
        let off = i128::from(a.pm()) - i128::from(b.pm());
        return if off.abs() <= allowed { None } else { fault(format!(", off by {off} pm")) };
    }
    let ((a, unit_a), (b, unit_b)) = match (number(expected), number(got)) {
        (Some(a), Some(b)) => (a, b),
        _ => return if expected == got { None } else { fault(String::new()) },
    };
    if unit_a != unit_b {
        return fault(", another unit".to_owned());
    }
    let allowed = match tol {
        None => 0.0,
        Some(t) => match number(t) {
            Some((t, unit)) if unit == unit_a => t,
            _ => return fault(format!(", a tolerance {t} in another unit")),
        },
    };
    // A printed decimal and its tolerance are themselves rounded to the nearest double.
    let noise = 4.0 * f64::EPSILON * a.abs().max(b.abs());
    if (a - b).abs() <= allowed + noise { None } else { fault(format!(", off by {}", b - a)) }
}

fn number(text: &str) -> Option<(f64, &str)> {
    let (head, unit) = text.split_once(' ').unwrap_or((text, ""));
    head.parse().ok().map(|n| (n, unit))
}
