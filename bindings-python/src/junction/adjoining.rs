//! What others build at a junction.

use crate::names::{name_of, tag_of};
use crate::place::part;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::junction as core_junction;
use seamwright::junction::Adjoining as Core;

part! {
    /// What others build and the section reckons with: it is drawn and named, and neither made nor ordered. What it has not is ``None``.
    Adjoining(core_junction::Adjoining) in "seamwright.junction",
    shown it: tag_of(it)?;

    /// What it is: vent-slot, gutter, cladding, built-up, packing, pipe, joint-curbs, riser, wall-top or covered.
    what(it) -> String = tag_of(it)?;
    /// The width of a vent's slot on each side, along the slope from the junction line, or of each curb of a joint.
    width(it) -> Option<Length> = match it {
        Core::VentSlot { width, .. } | Core::JointCurbs { width, .. } => Some(Length(*width)),
        _ => None,
    };
    /// The share of a vented closure's web that is open.
    open_ratio(it) -> Option<f64> = if let Core::VentSlot { open_ratio, .. } = it { Some(*open_ratio) } else { None };
    /// The back edge of a gutter, level and square to the eave from the junction line.
    back(it) -> Option<Length> = if let Core::Gutter { back, .. } = it { Some(Length(*back)) } else { None };
    /// Its front lip.
    front(it) -> Option<Length> = if let Core::Gutter { front, .. } = it { Some(Length(*front)) } else { None };
    /// The height of cladding's lower edge above the junction line.
    lower_edge(it) -> Option<Length> = if let Core::Cladding { lower_edge } = it { Some(Length(*lower_edge)) } else { None };
    /// By how much a deck is built up, or how thick packing on it is, square to it; how high curbs stand above their decks, or a riser from the lower deck to the upper.
    height(it) -> Option<Length> = match it {
        Core::BuiltUp { height, .. } | Core::Packing { height, .. } | Core::JointCurbs { height, .. } | Core::Riser { height } => Some(Length(*height)),
        _ => None,
    };
    /// From the junction line to the edges of packing under a flange, up the slope.
    reach(it) -> Option<(Length, Length)> = if let Core::Packing { reach, .. } = it { Some((Length(reach.0), Length(reach.1))) } else { None };
    /// The diameter of a pipe.
    diameter(it) -> Option<Length> = if let Core::Pipe { diameter, .. } = it { Some(Length(*diameter)) } else { None };
    /// From a pipe's middle to the edges of the hole in the pan, down and up the slope.
    hole(it) -> Option<(Length, Length)> = if let Core::Pipe { hole, .. } = it { Some((Length(hole.0), Length(hole.1))) } else { None };
    /// From its middle to the edges of its base, down and up the slope.
    base(it) -> Option<(Length, Length)> = if let Core::Pipe { base, .. } = it { Some((Length(base.0), Length(base.1))) } else { None };
    /// Between the curbs of a joint, and between the decks.
    gap(it) -> Option<Length> = if let Core::JointCurbs { gap, .. } = it { Some(Length(*gap)) } else { None };
    /// The thickness of the wall under a coping, from face to face; or how far what comes up a wall's face stands out from it.
    thickness(it) -> Option<Length> = match it {
        Core::WallTop { thickness } | Core::Covered { thickness, .. } => Some(Length(*thickness)),
        _ => None,
    };
    /// On which face of a wall something comes up: ``first`` or ``second``.
    side(it) -> Option<String> = if let Core::Covered { side, .. } = it { Some(name_of(side)?) } else { None };
    /// Its top, from the wall's top edge on that side; negative is below it.
    top_edge(it) -> Option<Length> = if let Core::Covered { top_edge, .. } = it { Some(Length(*top_edge)) } else { None };
}
