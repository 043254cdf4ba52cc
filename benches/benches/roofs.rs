//! Whole roofs: 100,000 panels with allowances, groups, marks and the marks of their seams; the lines of 10,000 faces.

#![allow(missing_docs, reason = "criterion's macros make an undocumented main")]

use criterion::{Criterion, criterion_group, criterion_main};
use seamwright::record::Calculation;
use seamwright_benches::roofs::{Stand, hips, list, planes};
use std::hint::black_box;

fn roofs(c: &mut Criterion) {
    let mut group = c.benchmark_group("roofs");
    group.sample_size(10);
    match planes(100_000) {
        Ok(made) => group.bench_function("100000 panels, listed and marked", |b| b.iter(|| list(black_box(&made)))),
        Err(e) => group.bench_function(format!("the planes were refused: {e}"), |b| b.iter(|| ())),
    };
    for (name, stand) in [("in a square", Stand::Square), ("in a row", Stand::Row)] {
        let roof = hips(10_000, stand);
        group.bench_function(format!("lines of 10000 faces {name}"), |b| b.iter(|| black_box(&roof).compute()));
    }
    group.finish();
}

criterion_group!(benches, roofs);
criterion_main!(benches);
