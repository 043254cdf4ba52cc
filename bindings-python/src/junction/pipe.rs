//! Pipes through the roof.

use super::Solved;
use crate::document::document;
use crate::place::part;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::junction as core_junction;

document! {
    /// A round pipe through the roof: its hole with room for the movement, its base and where that lies between the seams.
    ///
    /// >>> from seamwright.junction import Pipe
    /// >>> base = {"shape": "rectangular", "seal": "2 in", "tape_width": '7/8"', "tape_lap": "1 in", "screws_from_edge": '1/2"',
    /// ...     "screws": {"spacing": '1 1/2"', "source": "common-practice"}}
    /// >>> temperatures = {"expansion": "12e-6 /K", "coldest": "-20 degC", "laid": "20 degC", "hottest": "70 degC"}
    /// >>> pipe = Pipe.from_dict({"diameter": '3 1/2"', "pitch": "4:12", "coverage": "18 in", "seam_width": "1 in", "from_seam": "9 in", "least_to_seam": "2 in",
    /// ...     "clearance": '1/4"', "fixed": "above", "to_fixed": "20 ft", "range": temperatures, "base": base, "upper_edge": "on-pan",
    /// ...     "may_cross_seams": False})
    /// >>> made = pipe.compute()
    /// >>> format(made.hole_across, "in/16"), format(made.base_across, "in/16"), made.screws
    /// ('4"', '8"', 20)
    Pipe(core_junction::Pipe) in "seamwright.junction" gives PipePlan
}

part! {
    /// What a pipe takes.
    PipePlan(core_junction::PipePlan) in "seamwright.junction",
    shown made: format_args!("base {} across, {} screws", made.base_across, made.screws);

    /// The hole in the pan, across the slope.
    hole_across(made) -> Length = Length(made.hole_across);
    /// From the pipe's middle to the hole's lower edge, along the slope.
    hole_down(made) -> Length = Length(made.hole_down);
    /// From the pipe's middle to its upper edge.
    hole_up(made) -> Length = Length(made.hole_up);
    /// The base, across the slope.
    base_across(made) -> Length = Length(made.base_across);
    /// From the pipe's middle to its lower edge.
    base_down(made) -> Length = Length(made.base_down);
    /// From the pipe's middle to its upper edge.
    base_up(made) -> Length = Length(made.base_up);
    /// From the base's left and right edge to the foot of the seam there; negative where it covers it.
    to_seam(made) -> (Length, Length) = (Length(made.to_seam[0]), Length(made.to_seam[1]));
    /// Seams that the base crosses.
    seams_crossed(made) -> u64 = made.seams_crossed;
    /// Screws around the base.
    screws(made) -> u64 = made.screws;
    /// Whether an engineer gave their spacing.
    engineered(made) -> bool = made.engineered;
    /// Tape around the base, its lap with it.
    tape(made) -> Length = Length(made.tape);
    /// The collar's bead and its clamp: the pipe's circumference.
    collar(made) -> Length = Length(made.collar);
    /// The section along the seams.
    section(made, here) -> Solved = here.one("section", &made.section);
}

part! {
    /// The section of a bead of sealant.
    BeadSize(core_junction::BeadSize) in "seamwright.junction",
    shown bead: format_args!("{} by {}", bead.width, bead.depth);

    /// Its width.
    width(bead) -> Length = Length(bead.width);
    /// Its depth.
    depth(bead) -> Length = Length(bead.depth);
}
