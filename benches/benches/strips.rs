//! The panels of one plane with a gable and an opening: strips, lengths, marks and groups.

#![allow(missing_docs, reason = "criterion's macros make an undocumented main")]

use criterion::{Criterion, criterion_group, criterion_main};
use seamwright::error::Error;
use seamwright::layout::{EdgeUse, Layout, Start};
use seamwright::panel::{Panel, PanelEnd, Seam};
use seamwright::record::Calculation;
use seamwright::roof::{Outline, Point};
use seamwright::units::Length;
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
}

criterion_group!(benches, strips);
criterion_main!(benches);
