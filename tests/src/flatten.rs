//! Prints every case as one line for the C harness, which has no reader for the case files:
//! `op|name|key=value|...|>key=value|...|~key=tolerance|...`, with `!` as a field of its own where the print deviates.

use seamwright_tests::{case, root};
use std::io::Write;

fn escape(text: &str) -> String {
    text.replace('%', "%25").replace('|', "%7C").replace('=', "%3D").replace('\n', "%0A")
}

fn main() -> Result<(), String> {
    let mut out = std::io::stdout().lock();
    for c in case::load_all(&root().join("tests/cases"))? {
        let mut line = format!("{}|{}", escape(&c.op), escape(&c.name));
        for (prefix, values) in [("", &c.inputs), (">", &c.out), ("~", &c.tol)] {
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
