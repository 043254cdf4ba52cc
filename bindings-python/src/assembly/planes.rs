//! What a whole plane needs: clips, where its panels are held, and how they move with heat.

use crate::movement::EndVerdict;
use crate::names::name_of;
use crate::place::{cautions, lengths, part};
use crate::record::Caution;
use crate::units::{Angle, Length};
use pyo3::prelude::*;
use seamwright::assembly as core_assembly;

part! {
    /// The clips of a plane.
    ClipSchedule(core_assembly::ClipSchedule) in "seamwright.assembly",
    shown of: format_args!("{} clips, {} screws{}", of.clips, of.screws, if of.engineered { "" } else { ", not engineered" });

    /// Seams of one schedule together, the longest first.
    groups(of, here) -> Vec<ClipGroup> = here.all("groups", &of.groups);
    /// All clips.
    clips(of) -> usize = of.clips;
    /// Those in the fixed zone.
    fixed(of) -> usize = of.fixed;
    /// The others; all of them where no fixed zone is given.
    sliding(of) -> usize = of.sliding;
    /// Screws.
    screws(of) -> usize = of.screws;
    /// Whether the spacing is an engineer's.
    engineered(of) -> bool = of.engineered;
    /// What to know before it is built.
    cautions(of) -> Vec<Caution> = cautions(&of.cautions);
}

part! {
    /// Seams with one schedule of clips.
    ClipGroup(core_assembly::ClipGroup) in "seamwright.assembly",
    shown group: format_args!("{} seams of {}, {} clips each", group.seams(), group.run, group.positions.len());

    /// The length of seam between the ends of its panels.
    run(group) -> Length = Length(group.run);
    /// Whether they are panels' sides along an edge, and no seams.
    on_edge(group) -> bool = group.on_edge;
    /// How many seams have this schedule.
    seams(group) -> usize = group.seams();
    /// Where each is, across the plane.
    at(group) -> Vec<Length> = lengths(&group.at);
    /// The clips, from the seam's lower end.
    positions(group) -> Vec<Length> = lengths(&group.positions);
    /// Which of them are fixed, by number along the seam.
    fixed(group) -> Vec<usize> = group.fixed.clone();
}

part! {
    /// Where the panels of a plane are held.
    PlanePins(core_assembly::PlanePins) in "seamwright.assembly",
    shown pins: format_args!("{} panels", pins.panels.len());

    /// Each panel, in the order of the laid plane.
    panels(pins, here) -> Vec<PanelPin> = here.all("panels", &pins.panels);
    /// The faults, each with its first panel.
    cautions(pins) -> Vec<Caution> = cautions(&pins.cautions);
}

part! {
    /// Where one panel is held.
    PanelPin(core_assembly::PanelPin) in "seamwright.assembly",
    shown pin: format_args!("panel {}, {}", pin.panel, name_of(&pin.fixing)?);

    /// The panel, as its number among the panels of its plane.
    panel(pin) -> usize = pin.panel;
    /// Where it is pinned: at its ``lower`` or ``upper`` end, by a ``zone`` of fixed clips or at an ``opening``; or a fault: ``twice``, ``along`` a
    /// side, or ``nowhere``.
    fixing(pin) -> String = name_of(&pin.fixing)?;
    /// How far apart its pins are, where there are two levels.
    apart(pin) -> Option<Length> = pin.apart.map(Length);
}

part! {
    /// How the panels of a plane move with heat.
    PlaneMovement(core_assembly::PlaneMovement) in "seamwright.assembly",
    shown of: format_args!("{} edges", of.ends.len());

    /// Each edge at which panels move, in the order of the outline's.
    ends(of, here) -> Vec<EdgeMovement> = here.all("ends", &of.ends);
    /// What fails, and what else to know.
    cautions(of) -> Vec<Caution> = cautions(&of.cautions);
}

part! {
    /// The panels that move at one edge.
    EdgeMovement(core_assembly::EdgeMovement) in "seamwright.assembly",
    shown edge: format_args!("edge {}, {} panels, {} fail", edge.edge, edge.panels, edge.failing);

    /// The edge, in the order of the outline's.
    edge(edge) -> usize = edge.edge;
    /// Which end of the panels lies there: ``lower`` or ``upper``.
    end(edge) -> String = name_of(&edge.end)?;
    /// The meeting angle.
    meeting(edge) -> Angle = Angle(edge.meeting);
    /// How many panels move there.
    panels(edge) -> usize = edge.panels;
    /// The panel that moves most, as its number among the panels of its plane.
    worst(edge) -> usize = edge.worst;
    /// The same in words.
    worst_name(edge) -> String = edge.worst_name.clone();
    /// From its moving end to its fixed line, along the seam.
    to_fixed(edge) -> Length = Length(edge.to_fixed);
    /// The fold given.
    fold(edge) -> Length = Length(edge.fold);
    /// The gap given.
    gap(edge) -> Length = Length(edge.gap);
    /// How far that end moves over the year, square to the line.
    travel(edge) -> Length = Length(edge.travel);
    /// The verdict on fold and gap for that panel; ``None`` where the end hooks nothing.
    verdict(edge, here) -> Option<EndVerdict> = edge.verdict.as_ref().map(|verdict| here.one("verdict", verdict));
    /// How many panels fail.
    failing(edge) -> usize = edge.failing;
}
