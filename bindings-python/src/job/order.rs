//! The order.

use crate::names::name_of;
use crate::place::part;
use crate::record::Source;
use crate::units::{Length, Mass};
use pyo3::prelude::*;
use seamwright::job as core_job;

part! {
    /// One line of the order.
    OrderLine(core_job::OrderLine) in "seamwright.job",
    shown line: format_args!("{} {} {}, {}", line.count, line.unit, line.item, line.spec);

    /// What kind of thing it is: panels, coil, trims, closures, sealant, clips or fasteners.
    group(line) -> String = name_of(&line.group)?;
    /// Its mark in the packet; empty where it has none.
    mark(line) -> String = line.mark.clone();
    /// What it is.
    item(line) -> String = line.item.clone();
    /// Its sheet, size or use.
    spec(line) -> String = line.spec.clone();
    /// How many.
    count(line) -> u64 = line.count;
    /// Of what: each, stick, roll, tube or coil.
    unit(line) -> &'static str = line.unit;
    /// The length of each; of a coil the whole.
    length(line) -> Option<Length> = line.length.map(Length);
    /// The net length that is needed of it.
    net(line) -> Option<Length> = line.net.map(Length);
    /// Its mass, where it follows.
    mass(line) -> Option<Mass> = line.mass.map(Mass);
    /// For fasteners and clips, whether an engineer gave the spacing behind the count.
    engineered(line) -> Option<bool> = line.engineered;
    /// What the count rests on.
    source(line) -> Option<Source> = line.source.clone().map(Source);
}
