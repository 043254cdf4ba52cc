//! The classes of `seamwright.stock`.

use crate::document::document;
use crate::place::{cautions, part};
use crate::record::Caution;
use crate::units::{Area, Length};
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

document! {
    /// Blanks to be cut from a coil: drops of the blanks' lengths, each slit into strips.
    ///
    /// >>> from seamwright.stock import Slitting
    /// >>> drip = {"label": "drip", "girth": '7"', "length": "10 ft", "count": 13}
    /// >>> plan = Slitting.from_dict({"coil_width": '48"', "edge_trim": '1/4"', "blanks": [drip]}).compute()
    /// >>> plan.across[0].count, plan.drop_count, plan.proven
    /// (6, 3, True)
    Slitting(core_stock::Slitting) in "seamwright.stock" gives SlitPlan
}

part! {
    /// The slitting list of a coil.
    SlitPlan(core_stock::SlitPlan) in "seamwright.stock",
    shown plan: format_args!("{} drops, {} of coil", plan.drop_count(), plan.coil_length);

    /// The drops, longest first, those slit alike together.
    drops(plan, here) -> Vec<DropPlan> = here.all("drops", &plan.drops);
    /// For each blank asked for, how many of it alone lie side by side.
    across(plan, here) -> Vec<Across> = here.all("across", &plan.across);
    /// How many drops are cut off the coil.
    drop_count(plan) -> u32 = plan.drop_count();
    /// Length of coil that is cut off.
    coil_length(plan) -> Length = Length(plan.coil_length);
    /// What no plan of such drops can take less than.
    bound(plan) -> Length = Length(plan.bound);
    /// Whether the plan meets the bound, so that none is better.
    proven(plan) -> bool = plan.proven;
    /// Where the coil goes.
    scrap(plan, here) -> SlitScrap = here.one("scrap", &plan.scrap);
    /// What to know before it is cut.
    cautions(plan) -> Vec<Caution> = cautions(&plan.cautions);
}

part! {
    /// How many of one blank alone lie side by side.
    Across(core_stock::Across) in "seamwright.stock",
    shown across: format_args!("{}, {} left", across.count, across.left);

    /// How many strips of this girth the trimmed coil gives.
    count(across) -> u64 = across.count;
    /// What is left beside them.
    left(across) -> Length = Length(across.left);
}

part! {
    /// Drops that are slit alike.
    DropPlan(core_stock::DropPlan) in "seamwright.stock",
    shown drop: format_args!("{} drops of {}", drop.count, drop.length);

    /// The length that is cut off the coil.
    length(drop) -> Length = Length(drop.length);
    /// How many drops are slit like this.
    count(drop) -> u32 = drop.count;
    /// The strips side by side, widest first: the index of the blank, and how many of it.
    strips(drop) -> Vec<(usize, u32)> = drop.strips.iter().map(|s| (s.piece, s.count)).collect();
    /// Width of what drops off beside the strips, the edge trim not counted.
    offcut(drop) -> Length = Length(drop.offcut);
}

part! {
    /// Where the coil goes.
    SlitScrap(core_stock::SlitScrap) in "seamwright.stock",
    shown scrap: format_args!("{} of coil, {} in blanks", scrap.coil, scrap.blanks);

    /// Area of the coil that is cut off.
    coil(scrap) -> Area = Area(scrap.coil);
    /// Area of the blanks.
    blanks(scrap) -> Area = Area(scrap.blanks);
    /// Area of the edge trim.
    edge_trim(scrap) -> Area = Area(scrap.edge_trim);
    /// Area of what drops off beside the strips.
    offcuts(scrap) -> Area = Area(scrap.offcuts);
    /// The part of the coil that does not end in a blank: 0 is none.
    scrap_ratio(scrap) -> f64 = scrap.scrap_ratio;
}
