//! From the packing to the plan.

use super::bound::lower_bound;
use super::cautions::NOT_PROVEN;
use super::input::Cutting;
use super::many::pack_all;
use super::pack::Load;
use super::plan::{CutPlan, Measure, PieceCount, ScrapReport, StickPlan};
use crate::error::{Error, ErrorKind};
use crate::record::{Calculation, Caution, Recorder, Seen, Source, Step};
use crate::units::{Length, Sum};
use std::collections::BTreeMap;

const BOUNDS: Source = Source::published("Martello and Toth, Knapsack Problems", "1990", "chapter 8, bounds for bin packing", Seen::Memory);

impl Cutting {
    fn measure(&self, value: u128) -> Result<Measure, Error> {
        let too_large = || Error::new(ErrorKind::Overflow, "the total is too large").at("pieces").value_of(value).accepts("a smaller order");
        if self.stock.iter().any(|s| s.cost.is_some()) {
            u64::try_from(value).map(Measure::Cost).map_err(|_| too_large())
        } else {
            i64::try_from(value).map(|pm| Measure::Length(Length::from_pm(pm))).map_err(|_| too_large())
        }
    }

    /// One stick's plan from its load.
    fn stick(&self, load: &Load, count: u32) -> Result<StickPlan, Error> {
        let stock = self.stock.get(load.stock).ok_or_else(lost)?;
        let mut pieces: Vec<PieceCount> = Vec::new();
        let mut total = Sum::ZERO;
        for &kind in &load.kinds {
            total += self.pieces.get(kind).ok_or_else(lost)?.length;
            match pieces.last_mut() {
                Some(last) if last.piece == kind => last.count += 1,
                _ => pieces.push(PieceCount { piece: kind, count: 1 }),
            }
        }
        let room = (stock.length - self.end_loss).length()?;
        // The cuts between pieces, then the one after the last, which takes no more than is left.
        let between = Sum::from(self.kerf.station(u32::try_from(load.kinds.len()).unwrap_or(u32::MAX).saturating_sub(1), 1)?);
        let left = (room - total - between).length()?;
        let last = self.kerf.min(left);
        Ok(StickPlan { stock: load.stock, count, pieces, kerf: (between + last).length()?, offcut: (left - last).length()? })
    }
}

fn lost() -> Error {
    Error::new(ErrorKind::Internal, "a piece or stick of the plan is not in the input")
}

/// A length so many times, exact.
fn times(length: Length, n: u32) -> Result<Length, Error> {
    length.station(n, 1).map_err(|_| {
        let error = Error::new(ErrorKind::Overflow, "the total is too large").at("pieces").value_of(format!("{n} of {length}"));
        error.accepts("at most 9 223 372 m in all")
    })
}

impl Calculation for Cutting {
    type Out = CutPlan;

    fn title(&self) -> String {
        "cutting from stock".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<CutPlan, Error> {
        let problem = self.problem()?;
        let bound = lower_bound(&problem);
        let loads = pack_all(&problem);
        let mut groups: BTreeMap<(usize, Vec<usize>), (Load, u32)> = BTreeMap::new();
        for (mut load, count) in loads {
            // Longest first; equal lengths in the order of the input.
            load.kinds.sort_by_key(|&k| (core::cmp::Reverse(problem.sizes.get(k).map_or(0, |s| s.0)), k));
            groups.entry((load.stock, load.kinds.clone())).or_insert((load, 0)).1 += count;
        }
        let mut sticks = groups.values().map(|(load, count)| self.stick(load, *count)).collect::<Result<Vec<_>, Error>>()?;
        sticks.sort_by_key(|s| (s.stock, core::cmp::Reverse(s.count)));

        let mut buy = vec![0_u32; self.stock.len()];
        let mut value = 0_u128;
        let (mut bought, mut made, mut kerf, mut ends, mut offcuts) = (Sum::ZERO, Sum::ZERO, Sum::ZERO, Sum::ZERO, Sum::ZERO);
        for s in &sticks {
            let stock = self.stock.get(s.stock).ok_or_else(lost)?;
            if let Some(n) = buy.get_mut(s.stock) {
                *n += s.count;
            }
            value += u128::from(stock.cost.unwrap_or(stock.length.pm().unsigned_abs())) * u128::from(s.count);
            bought += times(stock.length, s.count)?;
            kerf += times(s.kerf, s.count)?;
            ends += times(self.end_loss, s.count)?;
            offcuts += times(s.offcut, s.count)?;
        }
        for p in &self.pieces {
            made += times(p.length, p.count)?;
        }
        let total = |sum: Sum| sum.length().map_err(|e| e.under("pieces"));
        let (bought, made) = (total(bought)?, total(made)?);
        let scrap_ratio = 1.0 - made.mm() / bought.mm();
        let scrap = ScrapReport { bought, pieces: made, kerf: kerf.length()?, end_loss: ends.length()?, offcuts: offcuts.length()?, scrap_ratio };
        let (takes, lowest) = (self.measure(value)?, self.measure(bound)?);
        let proven = value == bound;
        r.step(|| {
            Step::new("what no plan can take less than")
                .formula("greatest of the bounds: all pieces spread, large pieces, thresholds")
                .gives(lowest)
                .source(BOUNDS)
        });
        r.step(|| {
            let parts: Vec<String> = self.stock.iter().zip(&buy).map(|(s, n)| format!("{n} x {}", s.label)).collect();
            Step::new("sticks bought").formula("best of best-fit decreasing and fullest-stick fillings, improved").with("sticks", parts.join(", ")).gives(takes)
        });
        r.step(|| {
            Step::new("scrap")
                .formula("bought = pieces + kerf + end loss + offcuts")
                .with("bought", scrap.bought)
                .with("pieces", scrap.pieces)
                .with("kerf", scrap.kerf)
                .with("end loss", scrap.end_loss)
                .gives(scrap.offcuts)
                .source(Source::geometry())
        });
        let mut cautions = Vec::new();
        if !proven {
            cautions.push(Caution::new(NOT_PROVEN, "sticks", BOUNDS).arg("found", takes).arg("bound", lowest));
        }
        Ok(CutPlan { sticks, buy, takes, bound: lowest, proven, scrap, cautions })
    }
}
