//! Parsing and formatting a length.

#![allow(missing_docs, reason = "criterion's macros make an undocumented main")]

use criterion::{Criterion, criterion_group, criterion_main};
use seamwright::units::{Length, LengthFormat};
use std::hint::black_box;

fn length(c: &mut Criterion) {
    for (name, text) in [("tape", "12'-3 5/8\""), ("inches", "147 5/8\""), ("decimal", "12ft 3.625in"), ("metric", "3749.675 mm")] {
        c.bench_function(&format!("parse {name}"), |b| b.iter(|| Length::parse(black_box(text))));
    }
    let l = Length::parse("12'-3 5/8\"").unwrap_or(Length::ZERO);
    for format in ["ft-in/16", "in/16", "in.3", "mm.1", "mm"] {
        let f = LengthFormat::parse(format).unwrap_or(LengthFormat::EXACT);
        c.bench_function(&format!("format {format}"), |b| b.iter(|| black_box(l).format(black_box(f))));
    }
}

criterion_group!(benches, length);
criterion_main!(benches);
