//! One junction of every kind with all its parts, lines, checks and its order of work; and a thousand of it.

#![allow(missing_docs, reason = "criterion's macros make an undocumented main")]

use criterion::{Criterion, criterion_group, criterion_main};
use seamwright::junction::WholeJunction;
use seamwright::record::{Calculation, compute_all};
use seamwright_benches::junctions::all;
use std::hint::black_box;

fn junction(c: &mut Criterion) {
    let junctions = match all() {
        Ok(junctions) => junctions,
        Err(e) => {
            c.bench_function(&format!("junctions could not be read: {e}"), |b| b.iter(|| ()));
            return;
        }
    };
    for (name, junction) in &junctions {
        c.bench_function(&format!("junction: {name}"), |b| b.iter(|| black_box(junction).compute()));
    }
    for count in [10, 100, 1000] {
        let many: Vec<WholeJunction> = junctions.iter().map(|(_, j)| j).cycle().take(count).cloned().collect();
        c.bench_function(&format!("{count} junctions in one call"), |b| b.iter(|| compute_all(black_box(&many))));
    }
}

criterion_group!(benches, junction);
criterion_main!(benches);
