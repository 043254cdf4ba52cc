//! A million girths of one profile in one call.

#![allow(missing_docs, reason = "criterion's macros make an undocumented main")]

use criterion::{Criterion, criterion_group, criterion_main};
use seamwright::error::Error;
use seamwright::trim::{BendRule, Face, NeutralFactor, Profile, girths_into};
use seamwright::units::{Angle, BendAngle, Length, LengthArray, LengthUnit};
use std::hint::black_box;

const COUNT: u32 = 1_000_000;

fn profile(degrees: [f64; 8]) -> Result<Profile, Error> {
    let mut builder = Profile::builder(Length::mils(24)).inside_radius(Length::mils(30)).leg("0", Length::inches(1));
    for (i, d) in degrees.into_iter().enumerate() {
        let angle = BendAngle::from_flat(Angle::degrees_from(d)?)?;
        builder = if i % 2 == 0 { builder.up(angle) } else { builder.down(angle) }.leg((i + 1).to_string(), Length::inches(1));
    }
    builder.painted(Face::Upper).build()
}

/// Numbers from `least`, spread over `span` without order: the multiplier has no factor in common with the count, and their product fits.
fn spread(least: f64, span: f64, multiplier: u32) -> Vec<f64> {
    (0..COUNT).map(|i| least + span * f64::from(i * multiplier % COUNT) / f64::from(COUNT)).collect()
}

fn batch(c: &mut Criterion) {
    let (thickness, radius) = (spread(0.5, 0.5, 1607), spread(0.6, 2.0, 2203));
    let mut out = vec![0.0; thickness.len()];
    let mm = |values| LengthArray { values, unit: LengthUnit::Millimetre };
    for (shape, degrees) in [("square", [90.0; 8]), ("different", [30.0, 45.0, 60.0, 75.0, 90.0, 100.0, 110.0, 120.0])] {
        let Ok((profile, neutral)) = NeutralFactor::new(0.44).and_then(|k| Ok((profile(degrees)?, BendRule::neutral_axis(k)))) else {
            c.bench_function(&format!("a million girths, 8 {shape} bends, could not be built"), |b| b.iter(|| ()));
            continue;
        };
        for rule in [neutral, BendRule::Din6935] {
            c.bench_function(&format!("a million girths, 8 {shape} bends, {}", rule.name()), |b| {
                b.iter(|| girths_into(black_box(&profile), &rule, mm(&thickness), mm(&radius), black_box(&mut out), LengthUnit::Millimetre));
            });
        }
    }
}

criterion_group!(benches, batch);
criterion_main!(benches);
