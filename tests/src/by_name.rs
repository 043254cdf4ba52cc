//! Calculations run by their names, as callers do that know documents and not Rust's types.

use crate::case::{Case, Values};
use crate::ops::Fault;
use seamwright::job::named;
use seamwright::record::Worksheet;
use serde_json::Value;

/// Whether a calculation has this name.
#[must_use]
pub fn is_calculation(op: &str) -> bool {
    named(op).is_ok()
}

/// The inputs of a case as JSON.
///
/// # Errors
/// What JSON cannot hold, in words.
pub fn json(inputs: &toml::Table) -> Result<String, String> {
    serde_json::to_string(inputs).map_err(|e| e.to_string())
}

/// Computes and explains; the outputs are those that the case expects, by their paths.
///
/// # Errors
/// A fault of the case, or the library's refusal.
pub fn run(case: &Case) -> Result<Values, Fault> {
    let calculation = named(&case.op).map_err(|_| Fault::Case(format!("no operation {}", case.op)))?;
    let input = json(&case.inputs).map_err(Fault::Case)?;
    let computed = calculation.compute_json(&input)?;
    let (explained, sheet) = calculation.explain_json(&input)?;
    if explained != computed {
        return Err(Fault::Case("explaining gives another result than computing".to_owned()));
    }
    let out = serde_json::from_str(&computed).map_err(|e| Fault::Case(e.to_string()))?;
    Ok(case.out.keys().filter_map(|path| Some((path.clone(), at(&out, &sheet, path)?))).collect())
}

/// What stands at a path, as text: `positions[2]` in the result, `positions.count` for how many there are, `value` for a result that is a
/// single value, `worksheet.steps[0]` for what the first of all steps of the worksheet gives. Nothing for an object, an array, or a path
/// that leads nowhere.
#[must_use]
pub fn at(out: &Value, sheet: &Worksheet, path: &str) -> Option<String> {
    if let Some(index) = path.strip_prefix("worksheet.steps[").and_then(|rest| rest.strip_suffix(']')) {
        return sheet.steps().get(index.parse::<usize>().ok()?).map(|step| step.result.clone());
    }
    let mut here = out;
    for step in path.split(['.', '[']).filter(|s| !s.is_empty() && (path != "value" || out.is_object())) {
        here = match (step.strip_suffix(']'), here) {
            (Some(index), Value::Array(items)) => items.get(index.parse::<usize>().ok()?)?,
            (None, Value::Array(items)) if step == "count" => return Some(items.len().to_string()),
            (None, Value::Object(fields)) => fields.get(step)?,
            _ => return None,
        };
    }
    match here {
        Value::String(text) => Some(text.clone()),
        Value::Null | Value::Bool(_) | Value::Number(_) => Some(here.to_string()),
        Value::Array(_) | Value::Object(_) => None,
    }
}
