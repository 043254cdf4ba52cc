//! The committed header is what the sources give, and every export keeps the house's rules.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test fails by panicking")]

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// Sources with exports, in the order in which the header shows them.
const SOURCES: &[&str] =
    &["abi", "version", "status", "error", "length", "angle", "quantity", "pitch", "metal", "movement", "trim", "flat", "batch", "spacing", "job", "packet"];

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn source(name: &str) -> PathBuf {
    root().join("src").join(name).with_extension("rs")
}

fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

fn generated() -> String {
    let mut config = cbindgen::Config::from_file(root().join("cbindgen.toml")).unwrap();
    let version = env!("CARGO_PKG_VERSION");
    config.after_includes = Some(format!("\n/** The release that this header came with; compare it with `sw_version()`. */\n#define SW_VERSION \"{version}\""));
    let mut builder = cbindgen::Builder::new().with_config(config);
    for name in SOURCES {
        builder = builder.with_src(source(name));
    }
    let mut bytes = Vec::new();
    builder.generate().unwrap().write(&mut bytes);
    String::from_utf8(bytes).unwrap()
}

#[test]
fn the_committed_header_is_the_generated_one() {
    let path = root().join("include/seamwright.h");
    let generated = generated();
    if std::env::var_os("SW_WRITE_HEADER").is_some() {
        std::fs::write(&path, &generated).unwrap();
    }
    let committed = read(&path);
    let first = committed.lines().zip(generated.lines()).position(|(a, b)| a != b).map_or("its length".to_owned(), |n| format!("line {}", n + 1));
    assert!(committed == generated, "include/seamwright.h differs from the sources at {first}; run SW_WRITE_HEADER=1 cargo test -p seamwright-c --test header");
}

/// Name, signature and body of every export in the sources.
fn exports() -> Vec<(String, String, String)> {
    let mut found = Vec::new();
    for name in SOURCES {
        let text = read(&source(name));
        for item in text.split("#[unsafe(no_mangle)]").skip(1) {
            let (head, rest) = item.split_once(" {\n").unwrap();
            let body = rest.split("\n}\n").next().unwrap();
            let name = head.split_once("fn ").unwrap().1.split('(').next().unwrap();
            found.push((name.to_owned(), head.to_owned(), body.to_owned()));
        }
    }
    found
}

#[test]
fn every_export_is_in_the_header_and_named_for_the_library() {
    let header = generated();
    let names: BTreeSet<String> = exports().into_iter().map(|(name, _, _)| name).collect();
    assert!(names.len() > 20);
    for name in &names {
        assert!(name.starts_with("sw_"), "{name}");
        assert!(header.contains(&format!("{name}(")), "{name} is not in the header");
    }
    for entry in std::fs::read_dir(root().join("src")).unwrap() {
        let path = entry.unwrap().path();
        let listed = SOURCES.iter().any(|s| path.file_stem().is_some_and(|stem| stem == *s));
        assert!(listed || !read(&path).contains("no_mangle"), "{} has exports and is not among the header's sources", path.display());
    }
}

#[test]
fn every_export_runs_inside_the_guard() {
    for (name, _, body) in exports() {
        let code: String = body.lines().filter(|l| !l.trim_start().starts_with("//")).map(str::trim).collect();
        let guarded = ["caught(", "unsafe {guard(", "unsafe { guard("].iter().any(|g| code.starts_with(g));
        assert!(guarded, "{name} does not begin with the guard: {code}");
    }
}

#[test]
fn a_call_that_takes_an_error_takes_it_last_and_returns_a_status() {
    for (name, head, _) in exports() {
        if head.contains("*mut *mut sw_error") {
            let arguments = head.split_once('(').unwrap().1;
            let last = arguments.rsplit_once(')').unwrap().0.trim().trim_end_matches(',').rsplit(',').next().unwrap().trim();
            assert_eq!(last, "error: *mut *mut sw_error", "{name}");
            assert!(head.ends_with("-> sw_status"), "{name}");
        }
    }
}
