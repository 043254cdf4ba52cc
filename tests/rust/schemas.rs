//! The committed JSON Schemas are what the types give.

#![allow(clippy::expect_used, reason = "a test stops where its files are not what it reads")]

use seamwright::job::{job_schema, packet_schema};
use seamwright_tests::root;

#[test]
fn the_committed_schemas_are_the_generated_ones() {
    for (name, generated) in [("seamwright-job-1", job_schema()), ("seamwright-packet-1", packet_schema())] {
        let generated = generated.expect("a schema");
        let path = root().join("docs/schemas").join(name).with_extension("json");
        if std::env::var_os("SW_WRITE_SCHEMAS").is_some() {
            std::fs::create_dir_all(path.parent().expect("a folder")).expect("the folder of the schemas");
            std::fs::write(&path, &generated).expect("a schema that can be written");
        }
        let committed = std::fs::read_to_string(&path).unwrap_or_default();
        let first = committed.lines().zip(generated.lines()).position(|(a, b)| a != b).map_or("its length".to_owned(), |n| format!("line {}", n + 1));
        assert!(
            committed == generated,
            "docs/schemas/{name}.json differs from the types at {first}; run SW_WRITE_SCHEMAS=1 cargo test -p seamwright-tests --test schemas"
        );
    }
}
