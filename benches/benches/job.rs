//! The demo job: read from its JSON, worked out, and its packet written as JSON.

#![allow(missing_docs, reason = "criterion's macros make an undocumented main")]

use criterion::{Criterion, criterion_group, criterion_main};
use seamwright::job::Job;
use seamwright::record::Calculation;
use std::hint::black_box;

const DEMO: &[u8] = include_bytes!("../../core/examples/demo_job.json");

fn job(c: &mut Criterion) {
    let (job, packet) = match Job::from_json(DEMO).and_then(|job| Ok((job.compute()?, job))) {
        Ok((packet, job)) => (job, packet),
        Err(e) => {
            c.bench_function(&format!("the demo job was refused: {e}"), |b| b.iter(|| ()));
            return;
        }
    };
    c.bench_function("demo job, read", |b| b.iter(|| Job::from_json(black_box(DEMO))));
    c.bench_function("demo job, worked out", |b| b.iter(|| black_box(&job).compute()));
    c.bench_function("demo job, read and worked out", |b| b.iter(|| Job::from_json(black_box(DEMO)).and_then(|job| job.compute())));
    c.bench_function("demo job, with worksheet", |b| b.iter(|| black_box(&job).explain()));
    c.bench_function("demo job, packet as JSON", |b| b.iter(|| serde_json::to_vec(black_box(&packet))));
}

criterion_group!(benches, job);
criterion_main!(benches);
