//! Lines that the crew strikes.

use crate::junction::datum_line;
use crate::names::name_of;
use crate::place::part;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::assembly as core_assembly;

part! {
    /// A line to strike along a real line of the roof, as exact figures and as a tape is read.
    StruckLine(core_assembly::StruckLine) in "seamwright.assembly",
    shown line: format_args!("{} {}, {} from {}", line.order, line.name, line.from_start.read, line.start_text);

    /// When it is struck, from 1.
    order(line) -> usize = line.order;
    /// What goes on it.
    name(line) -> String = line.name.clone();
    /// On which side: ``first`` or ``second``.
    side(line) -> String = name_of(&line.side)?;
    /// What it is measured from in the section, in words.
    datum(line) -> String = line.datum.to_string();
    /// The name of the line that it is measured from; ``None`` where it is no struck line.
    datum_line(line) -> Option<String> = datum_line(&line.datum);
    /// From that datum, square to the line, with the section's sign.
    from_datum(line, here) -> TapeReading = here.one("from_datum", &line.from_datum);
    /// What the running total starts from, in words: the junction line or a trim's edge.
    start(line) -> String = line.start_text.clone();
    /// The running total from there, square to the line: up the slope, or down it from a trim's top edge; negative the other way.
    from_start(line, here) -> TapeReading = here.one("from_start", &line.from_start);
    /// From the junction line, square to it, positive up the slope.
    from_line(line, here) -> TapeReading = here.one("from_line", &line.from_line);
    /// The running total along a seam; ``None`` where the seams run along the line or no panels lie there.
    along_seam(line, here) -> Option<TapeReading> = line.along_seam.as_ref().map(|reading| here.one("along_seam", reading));
    /// How far off it may be.
    tolerance(line) -> Length = Length(line.tolerance);
}

part! {
    /// A length as it is and as it is read off a tape.
    TapeReading(core_assembly::TapeReading) in "seamwright.assembly",
    shown reading: format_args!("{}, read {}", reading.exact, reading.read);

    /// As it is.
    exact(reading) -> Length = Length(reading.exact);
    /// As it is read.
    read(reading) -> Length = Length(reading.read);
}
