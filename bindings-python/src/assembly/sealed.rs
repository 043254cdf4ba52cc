//! The sealed line of a junction, from one end of its run to the other.

use crate::document::document;
use crate::names::name_of;
use crate::place::part;
use crate::record::Caution;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::assembly as core_assembly;

document! {
    /// The sealed line of one side of a junction: layers that must each go through by themselves, and places where something passes through it.
    ///
    /// >>> from seamwright.assembly import SealedLine
    /// >>> tape = {"name": "tape", "need": "tape", "stretches": [{"from": "0 in", "to": "32 in"}]}
    /// >>> seam = {"name": "hollow of seam 1", "need": "plug", "at": "16 in", "sealed": True}
    /// >>> bays = [{"from": "0 in", "to": "16 in"}, {"from": "16 in", "to": "32 in"}, {"from": "32 in", "to": "48 in"}]
    /// >>> line = SealedLine.from_dict({"run": "48 in", "longest_gap": '1/16"', "bays": bays, "layers": [tape], "passages": [seam]})
    /// >>> [(gap.name, gap.missing, gap.bay, format(gap.start, "in/16"), format(gap.stop, "in/16")) for gap in line.compute().breaks]
    /// [('tape', 'tape', 3, '32"', '48"')]
    SealedLine(core_assembly::SealedLine) in "seamwright.assembly" gives SealCheck
}

part! {
    /// Whether a sealed line goes through.
    SealCheck(core_assembly::SealCheck) in "seamwright.assembly",
    shown check: format_args!("{} layers, {} passages, {} breaks", check.layers, check.passages, check.breaks.len());

    /// Whether it does, from one end of the run to the other.
    continuous(check) -> bool = check.continuous;
    /// No gap may be longer.
    longest_gap(check) -> Length = Length(check.longest_gap);
    /// The widest gap that passes.
    widest_gap(check) -> Length = Length(check.widest_gap);
    /// How many layers were followed.
    layers(check) -> usize = check.layers;
    /// How many passages were looked at.
    passages(check) -> usize = check.passages;
    /// Where it breaks, from the start of the line.
    breaks(check, here) -> Vec<SealBreak> = here.all("breaks", &check.breaks);
}

part! {
    /// A place where a sealed line breaks.
    SealBreak(core_assembly::SealBreak) in "seamwright.assembly",
    shown gap: format_args!("{}, {} to {}", gap.name, gap.from, gap.to);

    /// The layer or the passage.
    name(gap) -> String = gap.name.clone();
    /// What is missing: tape, closure, bead, plug, tape-lap, trim-lap or corner.
    missing(gap) -> String = name_of(&gap.missing)?;
    /// The same in words.
    lacks(gap) -> &'static str = gap.missing.lacks();
    /// Where it starts, from the start of the line.
    start(gap) -> Length = Length(gap.from);
    /// Where it ends; at its start for a passage.
    stop(gap) -> Length = Length(gap.to);
    /// The bay in which it lies, counted from 1; ``None`` where no bay is known there.
    bay(gap) -> Option<usize> = gap.bay;
    /// What cures it.
    cure(gap) -> &'static str = gap.cure;
}

part! {
    /// The sealed line on one side of a line of the roof.
    SideSeal(core_assembly::SideSeal) in "seamwright.assembly",
    shown seal: format_args!("{} side, {} breaks", name_of(&seal.side)?, seal.check.breaks.len());

    /// On which side: ``first``, ``second`` or ``riser``.
    side(seal) -> String = name_of(&seal.side)?;
    /// Whether it goes through.
    check(seal, here) -> SealCheck = here.one("check", &seal.check);
    /// What must be said of it; ``None`` where it goes through.
    caution(seal) -> Option<Caution> = seal.caution().as_ref().map(Caution::from);
}
