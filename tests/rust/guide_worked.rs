//! The figures worked by hand on the guide's pages, as printed, against the document and the result. The sums themselves are reckoned again by
//! `tests/python/test_guide.py` and `tests/c/test_guide.c`.

use seamwright::pitch::Pitch;
use serde_json::Value;
use std::path::Path;

/// A value by its path: fields by a dot, entries by their number, or by name and where need be side, `lines[closure face@second].from_line`.
fn within<'a>(document: &'a Value, path: &str) -> Option<&'a Value> {
    path.split(['.', '[']).filter(|step| !step.is_empty()).try_fold(document, |value, step| {
        let Some(entry) = step.strip_suffix(']') else { return value.get(step) };
        let (name, side) = entry.split_once('@').map_or((entry, None), |(name, side)| (name, Some(side)));
        match entry.parse::<usize>() {
            Ok(number) => value.get(number),
            Err(_) => value.as_array()?.iter().find(|one| one["name"] == name && side.is_none_or(|side| one["side"] == side)),
        }
    })
}

/// In inches, degrees or as a pure number, with the unit.
fn quantity(value: &Value) -> Option<(f64, String)> {
    let text = value.as_str().map_or_else(|| value.to_string(), str::to_owned);
    if text.contains(':') {
        return Some((Pitch::parse(&text).ok()?.angle().degrees(), "deg".to_owned()));
    }
    let (number, unit) = text.split_once(' ').unwrap_or((&text, ""));
    let number: f64 = number.parse().ok()?;
    Some(if unit == "mm" { (number / 25.4, "in".to_owned()) } else { (number, unit.to_owned()) })
}

fn between<'a>(text: &'a str, before: &str, after: &str) -> Option<&'a str> {
    text.split_once(before)?.1.split_once(after).map(|(found, _)| found)
}

/// How many figures of a page stand in the result of its calculation; what does not agree goes to the faults.
pub(crate) fn worked(folder: &Path, page: &str, faults: &mut Vec<String>) -> Option<usize> {
    let (given, name) = (between(page, "(inputs/", ")")?, between(page, "to the calculation `", "`")?);
    let given = std::fs::read_to_string(folder.join("inputs").join(given)).ok()?;
    let result = seamwright::job::named(name).and_then(|c| c.compute_json(&given)).map_err(|e| faults.push(format!("{name}: {e}"))).ok()?;
    let (given, result): (Value, Value) = (serde_json::from_str(&given).ok()?, serde_json::from_str(&result).ok()?);
    let mut count = 0;
    for row in page.split_once("\n## Worked by hand\n")?.1.lines().filter(|l| l.starts_with("| ")) {
        let cells: Vec<&str> = row.trim_matches('|').split('|').map(|c| c.trim_matches([' ', '`'])).collect();
        let [symbol, by_hand, figure, place] = cells.as_slice() else { continue };
        if *by_hand == "by hand" || place.is_empty() {
            continue;
        }
        let places = figure.split(' ').next().and_then(|f| f.split_once('.')).map_or(0, |(_, digits)| digits.len());
        let printed = quantity(&Value::String((*figure).to_owned()));
        let found = within(if *by_hand == "given" { &given } else { &result }, place).and_then(quantity);
        let half = (0..places).fold(0.5, |half, _| half / 10.0) + 5e-7;
        match (printed, found) {
            (Some(a), Some(b)) if a.1 == b.1 && (a.0 - b.0).abs() <= half => count += usize::from(*by_hand != "given"),
            (_, found) => faults.push(format!("{name}: {symbol} is printed as {figure}; {place} is {found:?}")),
        }
    }
    Some(count)
}
