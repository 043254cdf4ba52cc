//! The trims of a packet.

use crate::error::Raise;
use crate::junction::CapBlank;
use crate::metal::Sheet;
use crate::names::name_of;
use crate::place::{lengths, part};
use crate::stock::CutPlan;
use crate::trim::{Flat, Profile, TaperedPieces};
use crate::units::{Length, LineMass};
use pyo3::prelude::*;
use seamwright::job as core_job;

part! {
    /// A trim as the shop makes it: like trims of the whole roof together.
    TrimItem(core_job::TrimItem) in "seamwright.job",
    shown trim: format_args!("{}, {}, {} runs", trim.mark, trim.name, trim.runs.len());

    /// Its mark: T1, T2 and so on.
    mark(trim) -> String = trim.mark.clone();
    /// What it is called.
    name(trim) -> String = trim.name.clone();
    /// Its profile.
    profile(trim) -> Profile = Profile(trim.profile.clone());
    /// Its flat pattern by the job's bend rule.
    flat(trim) -> Flat = Flat::known(&trim.profile, trim.flat.clone());
    /// Its sheet.
    sheet(trim, here) -> Sheet = here.one("sheet", &trim.sheet);
    /// Mass for each length of it.
    line_mass(trim) -> LineMass = LineMass(trim.line_mass);
    /// How far its pieces lap; nothing where they butt.
    lap(trim) -> Length = Length(trim.lap);
    /// What is left between its pieces where they butt; nothing where they lap.
    gap(trim) -> Length = Length(trim.gap);
    /// Where it goes.
    runs(trim, here) -> Vec<TrimRun> = here.all("runs", &trim.runs);
    /// The net length of all runs.
    total(trim) -> Length = Length(trim.total().raise()?);
    /// How its pieces are cut from the lengths that are bought.
    cutting(trim, here) -> CutPlan = here.one("cutting", &trim.cutting);
    /// Whose lengths ``cutting`` counts, by their labels.
    stock(trim) -> Vec<String> = trim.stock.clone();
    /// Where it tapers, its pieces from the lower end of the run up, each with its profiles and its blank; else ``None``.
    tapered(trim, here) -> Option<TaperedPieces> = trim.tapered.as_ref().map(|made| here.one("tapered", made));
}

part! {
    /// One run of a trim along a line.
    TrimRun(core_job::TrimRun) in "seamwright.job",
    shown run: format_args!("{}, {} in {} pieces", run.name, run.run, run.pieces.len());

    /// Number of the line in the roof; ``None`` for what stands on a wall: a coping and its corners.
    line(run) -> Option<usize> = run.line;
    /// Its name.
    name(run) -> String = run.name.clone();
    /// What is covered, with what corners add.
    run(run) -> Length = Length(run.run);
    /// The pieces, laps and all, in the order in which they are set.
    pieces(run) -> Vec<Length> = lengths(&run.pieces);
}

part! {
    /// An end cap, made to the outline of a trim's section with tabs on it: it closes the trim where its line ends and nothing lies over it.
    EndCap(core_job::EndCap) in "seamwright.job",
    shown cap: format_args!("{} at the {} of {}, {}", cap.mark, name_of(&cap.end)?, cap.name, cap.hand.name());

    /// The line's number in the roof.
    line(cap) -> usize = cap.line;
    /// Its name.
    name(cap) -> String = cap.name.clone();
    /// Which end of it: ``start`` or ``end``.
    end(cap) -> String = name_of(&cap.end)?;
    /// Along the upper edge of a step, its riser; ``None`` at any other.
    above(cap) -> Option<Length> = cap.above.map(Length);
    /// The mark of the trim that it closes, and whose section is its outline.
    mark(cap) -> String = cap.mark.clone();
    /// That trim's name.
    trim(cap) -> String = cap.trim.clone();
    /// How its outline lies to the trim's drawing, seen from outside: ``as-drawn``, ``opposite`` or ``either``.
    hand(cap) -> String = name_of(&cap.hand)?;
    /// The mark of its blank; ``None`` where the trim leaves no hollow, and its end is folded down.
    piece(cap) -> Option<String> = cap.piece.clone();
}

part! {
    /// The blank of end caps that are alike.
    CapItem(core_job::CapItem) in "seamwright.job",
    shown item: format_args!("{}, end cap to {} {}", item.mark, item.trim_mark, item.trim);

    /// Its mark: E1, E2 and so on.
    mark(item) -> String = item.mark.clone();
    /// The mark of the trim that it closes.
    trim_mark(item) -> String = item.trim_mark.clone();
    /// That trim's name.
    trim(item) -> String = item.trim.clone();
    /// Its sheet.
    sheet(item, here) -> Sheet = here.one("sheet", &item.sheet);
    /// The cap, as the trim is drawn.
    made(item, here) -> CapBlank = here.one("made", &item.made);
}
