//! The panels of one plane with a gable and an opening: strips, lengths, marks and groups. And the strips of a thousand polygons in one call.

#![allow(missing_docs, reason = "criterion's macros make an undocumented main")]

use criterion::{Criterion, criterion_group, criterion_main};
use seamwright::error::Error;
use seamwright::layout::{EdgeUse, Layout, PolygonArrays, Start};
use seamwright::panel::{Panel, PanelEnd, Seam};
use seamwright::record::Calculation;
use seamwright::roof::{Outline, Point};
use seamwright::units::{Length, LengthArray, LengthUnit};
use seamwright_benches::polygons;
use std::hint::black_box;

fn plane() -> Result<Layout, Error> {
    let ring = |corners: &[(i16, i16)]| corners.iter().map(|&(x, y)| Point::new(Length::inches(x), Length::inches(y))).collect::<Vec<_>>();
    let outer = ring(&[(0, 0), (480, 0), (480, 120), (240, 240), (0, 120)]);
    let opening = ring(&[(196, 40), (236, 40), (236, 80), (196, 80)]);
    let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::inches_64(16) })?;
    Layout::new(Outline::new(outer, vec![opening])?, panel, Start::Left, |edge| {
        if edge.from.x == edge.to.x { EdgeUse::Side } else { EdgeUse::End(PanelEnd::hold_back(Length::ZERO)) }
    })
}

fn strips(c: &mut Criterion) {
    match plane() {
        Ok(layout) => c.bench_function("30 strips of a plane", |b| b.iter(|| black_box(&layout).compute())),
        Err(e) => c.bench_function(&format!("the plane was refused: {e}"), |b| b.iter(|| ())),
    };
    let Ok(coverage) = Length::from_f64(f64::from(polygons::COVERAGE), LengthUnit::Millimetre) else { return };
    for form in polygons::FORMS {
        let (values, rings, starts) = polygons::polygons(form);
        let given = PolygonArrays { coordinates: LengthArray { values: &values, unit: LengthUnit::Millimetre }, rings: &rings, polygons: &starts };
        let lay = || seamwright::layout::strips(black_box(given), coverage, Start::Left, LengthUnit::Millimetre);
        let name = match lay() {
            Ok(found) if found.strip.iter().filter(|&&s| s == 0).count() >= polygons::COUNT => polygons::name(form),
            Ok(_) => format!("{}: too few", polygons::name(form)),
            Err(e) => format!("{}: refused: {e}", polygons::name(form)),
        };
        c.bench_function(&name, |b| b.iter(lay));
    }
}

criterion_group!(benches, strips);
criterion_main!(benches);
