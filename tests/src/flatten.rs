//! Prints every case as one line for the C harness, which has no reader for the case files:
//! `op|name|key=value|...|>key=value|...|~key=tolerance|...`, with `!` as a field of its own where the print deviates.
//! The inputs of a calculation that is run by its name stand in one field, `{=`, as JSON.

use seamwright_tests::{by_name, case, root};
use std::io::Write;

fn escape(text: &str) -> String {
    text.replace('%', "%25").replace('|', "%7C").replace('=', "%3D").replace('\n', "%0A")
}

fn main() -> Result<(), String> {
    let mut out = std::io::stdout().lock();
    for c in case::load_all(&root().join("tests/cases"))? {
        let mut line = format!("{}|{}", escape(&c.op), escape(&c.name));
        for (key, value) in &c.inputs {
            if let Some(text) = value.as_str() {
                line += &format!("|{}={}", escape(key), escape(text));
            }
        }
        if by_name::is_calculation(&c.op) {
            line += &format!("|{{={}", escape(&by_name::json(&c.inputs)?));
        }
        for (prefix, values) in [(">", &c.out), ("~", &c.tol)] {
            for (key, value) in values {
                line += &format!("|{prefix}{}={}", escape(key), escape(value));
            }
        }
        if c.deviates.is_some() {
            line += "|!";
        }
        writeln!(out, "{line}").map_err(|e| e.to_string())?;
    }
    Ok(())
}
