//! The classes of `seamwright.stock`.

use crate::place::{cautions, part};
use crate::record::Caution;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::stock as core_stock;
use seamwright::stock::Measure;

/// What a plan takes: a length of sticks, or a cost.
#[derive(IntoPyObject)]
pub(crate) enum Taken {
    Length(Length),
    Cost(u64),
}

impl From<Measure> for Taken {
    fn from(measure: Measure) -> Taken {
        match measure {
            Measure::Length(length) => Taken::Length(Length(length)),
            Measure::Cost(cost) => Taken::Cost(cost),
        }
    }
}

part! {
    /// A cutting plan with what no plan can beat.
    CutPlan(core_stock::CutPlan) in "seamwright.stock",
    shown plan: format_args!("{} sticks, {}", plan.stick_count(), plan.takes);

    /// The sticks, those cut alike together.
    sticks(plan, here) -> Vec<StickPlan> = here.all("sticks", &plan.sticks);
    /// How many of each stock length are bought, in the order of the input.
    buy(plan) -> Vec<u32> = plan.buy.clone();
    /// How many sticks are bought in all.
    stick_count(plan) -> u32 = plan.stick_count();
    /// What the plan takes: the total length of the sticks, or their cost where costs are given.
    takes(plan) -> Taken = plan.takes.into();
    /// What no plan can take less than.
    bound(plan) -> Taken = plan.bound.into();
    /// Whether the plan meets the bound, so that none is better.
    proven(plan) -> bool = plan.proven;
    /// Where the bought length goes.
    scrap(plan, here) -> ScrapReport = here.one("scrap", &plan.scrap);
    /// What to know before it is cut.
    cautions(plan) -> Vec<Caution> = cautions(&plan.cautions);
}

part! {
    /// Sticks that are cut alike.
    StickPlan(core_stock::StickPlan) in "seamwright.stock",
    shown stick: format_args!("{} sticks of stock {}", stick.count, stick.stock);

    /// Index into the stock lengths.
    stock(stick) -> usize = stick.stock;
    /// How many sticks are cut like this.
    count(stick) -> u32 = stick.count;
    /// What is cut from each, longest first: the index of the piece, and how many of it.
    pieces(stick) -> Vec<(usize, u32)> = stick.pieces.iter().map(|p| (p.piece, p.count)).collect();
    /// What the cuts take of each stick.
    kerf(stick) -> Length = Length(stick.kerf);
    /// What is left of each stick.
    offcut(stick) -> Length = Length(stick.offcut);
}

part! {
    /// Where the bought length goes. The four parts add up to it exactly.
    ScrapReport(core_stock::ScrapReport) in "seamwright.stock",
    shown scrap: format_args!("{} bought, {} in pieces", scrap.bought, scrap.pieces);

    /// Total length of the sticks.
    bought(scrap) -> Length = Length(scrap.bought);
    /// Total length of the pieces.
    pieces(scrap) -> Length = Length(scrap.pieces);
    /// Lost to cuts.
    kerf(scrap) -> Length = Length(scrap.kerf);
    /// Lost at the ends.
    end_loss(scrap) -> Length = Length(scrap.end_loss);
    /// Left over.
    offcuts(scrap) -> Length = Length(scrap.offcuts);
    /// The part of the bought length that does not end in a piece: 0 is none.
    scrap_ratio(scrap) -> f64 = scrap.scrap_ratio;
}
