//! The JSON Schemas of the job and packet formats, taken from the types themselves.

use super::{JOB_VERSION, Job, PACKET_FORMAT, PACKET_VERSION, Packet};
use crate::error::{Error, ErrorKind};
use schemars::Schema;
use schemars::generate::SchemaSettings;
use schemars::transform::transform_subschemas;
use serde_json::{Map, Value};

/// The JSON Schema (draft 2020-12) of a job, as text.
///
/// It holds what can be said of a document without the trade: fields, their kinds, and the names that may be chosen. What a quantity's text may be, and whether
/// a roof can be built, only [`Job::from_json`] and the work itself say.
///
/// # Errors
/// [`ErrorKind::Internal`] if it cannot be written, which would be a fault of the library.
///
/// ```
/// let schema: serde_json::Value = serde_json::from_str(&seamwright::job::job_schema()?).expect("JSON");
/// assert_eq!(schema["properties"]["format"]["$ref"], "#/$defs/JobFormat");
/// assert_eq!(schema["additionalProperties"], false);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn job_schema() -> Result<String, Error> {
    let schema = SchemaSettings::draft2020_12().for_deserialize().into_generator().into_root_schema_for::<Job>();
    written("a seamwright job, version 1", schema, &[("version", JOB_VERSION.into())])
}

/// The JSON Schema (draft 2020-12) of a packet, as text.
///
/// # Errors
/// As [`job_schema`].
///
/// ```
/// let schema: serde_json::Value = serde_json::from_str(&seamwright::job::packet_schema()?).expect("JSON");
/// assert_eq!(schema["properties"]["format"]["const"], "seamwright-packet");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn packet_schema() -> Result<String, Error> {
    let schema = SchemaSettings::draft2020_12().for_serialize().into_generator().into_root_schema_for::<Packet>();
    written("a seamwright packet, version 1", schema, &[("format", PACKET_FORMAT.into()), ("version", PACKET_VERSION.into())])
}

/// The schema with its constant fields, and with descriptions for readers who do not know Rust.
fn written(title: &str, mut schema: Schema, constants: &[(&str, Value)]) -> Result<String, Error> {
    plain(&mut schema);
    schema.insert("title".into(), title.into());
    for (field, value) in constants {
        if let Some(at) = schema.pointer_mut(&format!("/properties/{field}")).and_then(Value::as_object_mut) {
            at.retain(|key, _| key == "description");
            at.insert("const".into(), value.clone());
        }
    }
    // Through a sorted map of its own, so that another crate's choice of serde_json's features cannot change the order.
    let mut text = serde_json::to_string_pretty(&sorted(schema.to_value()))
        .map_err(|e| Error::new(ErrorKind::Internal, "the schema cannot be written as JSON").at(title).value_of(e))?;
    text.push('\n');
    Ok(text)
}

fn sorted(value: Value) -> Value {
    match value {
        Value::Object(map) => {
            let by_name: std::collections::BTreeMap<String, Value> = map.into_iter().map(|(k, v)| (k, sorted(v))).collect();
            Value::Object(Map::from_iter(by_name))
        }
        Value::Array(list) => Value::Array(list.into_iter().map(sorted).collect()),
        other => other,
    }
}

/// Makes the documentation of Rust's types into plain descriptions: without the examples in Rust, and without the marks of links.
fn plain(schema: &mut Schema) {
    if let Some(Value::String(said)) = schema.get_mut("description") {
        *said = described(said);
    }
    transform_subschemas(&mut plain, schema);
}

fn described(docs: &str) -> String {
    let prose = docs.split("```").next().unwrap_or_default().split("\n# ").next().unwrap_or_default().trim();
    let mut out = String::with_capacity(prose.len());
    let mut rest = prose;
    while let Some((before, after)) = rest.split_once('[') {
        out.push_str(before);
        // `[text](target)` and `[text]` become their text; brackets that are not closed stay.
        let Some((text, tail)) = after.split_once(']') else {
            out.push('[');
            rest = after;
            continue;
        };
        out.push_str(text);
        rest = match tail.strip_prefix('(').and_then(|t| t.split_once(')')) {
            Some((_, tail)) => tail,
            None => tail,
        };
    }
    out.push_str(rest);
    out.replace('`', "").replace("::", ".")
}

#[cfg(test)]
mod tests {
    use super::described;

    #[test]
    fn descriptions_are_prose_without_links_and_examples() {
        assert_eq!(described("Its version: [`JOB_VERSION`].\n\n```\nlet a = [1];\n```"), "Its version: JOB_VERSION.");
        assert_eq!(described("A [line](crate::roof::Line) of [`LineKind::name`](x), [open"), "A line of LineKind.name, [open");
    }
}
