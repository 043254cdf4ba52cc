//! The lower end of a valley's pan.

use crate::names::name_of;
use crate::place::{cautions, part};
use crate::record::Caution;
use crate::units::{Angle, Length};
use pyo3::prelude::*;
use seamwright::assembly as core_assembly;

part! {
    /// The lower end of a valley's pan: how each leg is cut, folded and sealed there.
    PanEndCut(core_assembly::PanEndCut) in "seamwright.assembly",
    shown end: format_args!("runs on {}", end.run_on);

    /// How far the metal runs on beyond the end of the junction line.
    run_on(end) -> Length = Length(end.run_on);
    /// The leg on the first side.
    first(end, here) -> PanEndLeg = here.one("first", &end.first);
    /// The leg on the second side.
    second(end, here) -> PanEndLeg = here.one("second", &end.second);
    /// Beads of sealant under each end that laps over an eave or a roof.
    beads(end) -> u32 = end.beads;
    /// Width of each of them.
    bead_width(end) -> Length = Length(end.bead.width);
    /// Depth of each of them.
    bead_depth(end) -> Length = Length(end.bead.depth);
    /// The length of all of them together.
    bead_length(end) -> Length = Length(end.bead_length);
    /// What to know before it is cut.
    cautions(end) -> Vec<Caution> = cautions(&end.cautions);
}

part! {
    /// How a leg of a pan is cut at its lower end.
    PanEndLeg(core_assembly::PanEndLeg) in "seamwright.assembly",
    shown leg: format_args!("{}, cut {}", name_of(&leg.on)?, leg.cut);

    /// What it comes to: ``eave``, ``roof``, or ``against`` what its plane ends on.
    on(leg) -> String = name_of(&leg.on)?;
    /// Between the pan's centreline going up and the cut, along the leg.
    angle(leg) -> Angle = Angle(leg.angle);
    /// Where the cut meets the pan's centreline, down from the end of the junction line; negative is up from it.
    at_centre(leg) -> Length = Length(leg.at_centre);
    /// Where it meets the pan's edge.
    at_edge(leg) -> Length = Length(leg.at_edge);
    /// The length of the cut.
    cut(leg) -> Length = Length(leg.cut);
    /// From the fold's line to the cut, square to it; 0 for a raw end.
    fold(leg) -> Length = Length(leg.fold);
    /// The same along the pan.
    fold_along(leg) -> Length = Length(leg.fold_along);
}
