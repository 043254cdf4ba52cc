//! The flat pattern of an 8-bend profile, with and without its working.

#![allow(missing_docs, reason = "criterion's macros make an undocumented main")]

use criterion::{Criterion, criterion_group, criterion_main};
use seamwright::error::Error;
use seamwright::record::Calculation;
use seamwright::trim::{BendRule, FlatPattern, NeutralFactor, Profile};
use seamwright::units::{Angle, BendAngle, Length};
use std::hint::black_box;

/// Legs of one inch with eight bends, all square or all different.
fn profile(degrees: [f64; 8]) -> Result<Profile, Error> {
    let mut builder = Profile::builder(Length::mils(24)).inside_radius(Length::mils(30)).leg("0", Length::inches(1));
    for (i, d) in degrees.into_iter().enumerate() {
        let angle = BendAngle::from_flat(Angle::degrees_from(d)?)?;
        builder = if i % 2 == 0 { builder.up(angle) } else { builder.down(angle) }.leg((i + 1).to_string(), Length::inches(1));
    }
    builder.painted(seamwright::trim::Face::Upper).build()
}

fn flat(c: &mut Criterion) {
    let shapes = [("square", [90.0; 8]), ("different", [30.0, 45.0, 60.0, 75.0, 90.0, 100.0, 110.0, 120.0])];
    for (shape, degrees) in shapes {
        let made = NeutralFactor::new(0.44).and_then(|k| Ok((profile(degrees)?, BendRule::neutral_axis(k))));
        let (profile, neutral) = match made {
            Ok(made) => made,
            Err(e) => {
                c.bench_function(&format!("{shape} could not be built: {e}"), |b| b.iter(|| ()));
                continue;
            }
        };
        for rule in [neutral, BendRule::Din6935] {
            let pattern = FlatPattern { profile: profile.clone(), rule };
            c.bench_function(&format!("8 {shape} bends, {}, recorder off", pattern.rule.name()), |b| b.iter(|| black_box(&pattern).compute()));
            c.bench_function(&format!("8 {shape} bends, {}, without the trait", pattern.rule.name()), |b| {
                b.iter(|| black_box(&pattern.profile).unfold(black_box(&pattern.rule)))
            });
            c.bench_function(&format!("8 {shape} bends, {}, with the folded outline", pattern.rule.name()), |b| {
                b.iter(|| black_box(&pattern).compute().and_then(|flat| flat.outline()))
            });
            c.bench_function(&format!("8 {shape} bends, {}, with worksheet", pattern.rule.name()), |b| b.iter(|| black_box(&pattern).explain()));
        }
    }
}

criterion_group!(benches, flat);
criterion_main!(benches);
