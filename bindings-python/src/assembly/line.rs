//! What lies along a line of the roof.

use super::{ClosureRow, SideBays, StruckLine};
use crate::names::name_of;
use crate::place::{cautions, part};
use crate::record::{Caution, Source};
use crate::spacing::Stations;
use crate::trim::Profile;
use crate::units::{Length, Volume};
use pyo3::prelude::*;
use seamwright::assembly as core_assembly;

part! {
    /// A line of the roof with everything that lies along it.
    LineAssembly(core_assembly::LineAssembly) in "seamwright.assembly",
    shown line: format_args!("{}, {}", line.name, line.length);

    /// The line's name.
    name(line) -> String = line.name.clone();
    /// Its kind.
    kind(line) -> String = name_of(&line.kind)?;
    /// Its true length.
    length(line) -> Length = Length(line.length);
    /// The sides with panels.
    sides(line, here) -> Vec<SideBays> = here.all("sides", &line.sides);
    /// Closures.
    closures(line, here) -> Vec<ClosureRow> = here.all("closures", &line.closures);
    /// Tapes.
    tapes(line, here) -> Vec<TapeRun> = here.all("tapes", &line.tapes);
    /// Beads.
    beads(line, here) -> Vec<BeadRun> = here.all("beads", &line.beads);
    /// Plugs.
    plugs(line, here) -> Vec<SeamPlugs> = here.all("plugs", &line.plugs);
    /// Rows of fasteners.
    rows(line, here) -> Vec<FastenerRow> = here.all("rows", &line.rows);
    /// Cleats.
    cleats(line, here) -> Vec<CleatRun> = here.all("cleats", &line.cleats);
    /// Trims, in the order in which they are set.
    trims(line, here) -> Vec<TrimRun> = here.all("trims", &line.trims);
    /// Lines to strike, in the order of the work.
    struck(line, here) -> Vec<StruckLine> = here.all("struck", &line.struck);
    /// The same at the line's lower end, where they turn away from it; else none.
    struck_lower(line, here) -> Vec<StruckLine> = here.all("struck_lower", &line.struck_lower);
    /// What to know before it is built. The section's own cautions are not repeated.
    cautions(line) -> Vec<Caution> = cautions(&line.cautions);
}

part! {
    /// Sealant tape along a line.
    TapeRun(core_assembly::TapeRun) in "seamwright.assembly",
    shown tape: format_args!("{}, {} of {}", tape.name, tape.length, tape.width);

    /// What it is called in the section.
    name(tape) -> String = tape.name.clone();
    /// On which side: ``first`` or ``second``.
    side(tape) -> String = name_of(&tape.side)?;
    /// Its width.
    width(tape) -> Length = Length(tape.width);
    /// Whether it follows the panels over their seams.
    over_seams(tape) -> bool = tape.over_seams;
    /// Its length: straight, or developed over pans and seams with its laps.
    length(tape) -> Length = Length(tape.length);
}

part! {
    /// A bead of gun sealant along a line.
    BeadRun(core_assembly::BeadRun) in "seamwright.assembly",
    shown bead: format_args!("{}, {}", bead.name, bead.length);

    /// What it is called in the section.
    name(bead) -> String = bead.name.clone();
    /// On which side: ``first`` or ``second``.
    side(bead) -> String = name_of(&bead.side)?;
    /// Its width.
    width(bead) -> Length = Length(bead.width);
    /// Its depth.
    depth(bead) -> Length = Length(bead.depth);
    /// Its length.
    length(bead) -> Length = Length(bead.length);
    /// Its volume.
    volume(bead) -> Volume = Volume(bead.volume);
}

part! {
    /// Plugs in the hollows of seams.
    SeamPlugs(core_assembly::SeamPlugs) in "seamwright.assembly",
    shown plugs: format_args!("{} on the {} side", plugs.count, name_of(&plugs.side)?);

    /// On which side: ``first`` or ``second``.
    side(plugs) -> String = name_of(&plugs.side)?;
    /// How many: one for every seam that crosses the line or ends its bays.
    count(plugs) -> usize = plugs.count;
}

part! {
    /// A row of fasteners along a line.
    FastenerRow(core_assembly::FastenerRow) in "seamwright.assembly",
    shown row: format_args!("{}, {} at {}{}", row.name, row.count, row.spacing, if row.engineered { "" } else { ", not engineered" });

    /// What it is called in the section.
    name(row) -> String = row.name.clone();
    /// On which side: ``first`` or ``second``.
    side(row) -> String = name_of(&row.side)?;
    /// What they bite: structure, panel, slot or trim.
    bites(row) -> String = name_of(&row.bites)?;
    /// Greatest spacing on centre.
    spacing(row) -> Length = Length(row.spacing);
    /// Whose spacing it is.
    source(row) -> Source = Source(row.source.clone());
    /// Whether that is an engineer.
    engineered(row) -> bool = row.engineered;
    /// How many there are.
    count(row) -> usize = row.count;
    /// Stations along the line; ``None`` for the screws of closures, which go by the bay: their stations are those of each piece.
    stations(row, here) -> Option<Stations> = row.stations.as_ref().map(|stations| here.one("stations", stations));
}

part! {
    /// A cleat along a line.
    CleatRun(core_assembly::CleatRun) in "seamwright.assembly",
    shown cleat: format_args!("{}, {}", cleat.name, cleat.length);

    /// What it is called in the section.
    name(cleat) -> String = cleat.name.clone();
    /// On which side: ``first`` or ``second``.
    side(cleat) -> String = name_of(&cleat.side)?;
    /// What it is: ``continuous``, hooked by a trim's hem, or ``offset``, hooked by the panels' folds.
    kind(cleat) -> String = name_of(&cleat.kind)?;
    /// Its length: the line's.
    length(cleat) -> Length = Length(cleat.length);
}

part! {
    /// A trim along a line, before like ones of the roof are put together.
    TrimRun(core_assembly::TrimRun) in "seamwright.assembly",
    shown trim: format_args!("{}, {}", trim.name, trim.length.run);

    /// What it is called in the section.
    name(trim) -> String = trim.name.clone();
    /// Its number among the section's trims.
    trim(trim) -> usize = trim.trim;
    /// Its profile.
    profile(trim) -> Profile = Profile(trim.profile.clone());
    /// Its profile at the line's lower end, where it tapers; else ``None``.
    lower(trim) -> Option<Profile> = trim.lower.clone().map(Profile);
    /// True length of the line.
    line(trim) -> Length = Length(trim.length.line);
    /// What the corner adds beyond the line's start.
    at_start(trim) -> Length = Length(trim.length.ends.at_start);
    /// What the corner adds beyond its end.
    at_end(trim) -> Length = Length(trim.length.ends.at_end);
    /// The length to cover: the line and both.
    run(trim) -> Length = Length(trim.length.run);
    /// Lap of its pieces.
    lap(trim) -> Length = Length(trim.length.lap);
}
