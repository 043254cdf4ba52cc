//! The packet in a few figures.

use crate::place::part;
use crate::units::{Area, Length, Mass};
use pyo3::prelude::*;
use seamwright::job as core_job;

part! {
    /// A packet in a few figures.
    Summary(core_job::Summary) in "seamwright.job",
    shown of: format_args!("{} panels, {} trims, {} cautions", of.panels, of.trims, of.cautions);

    /// Planes of the roof.
    planes(of) -> usize = of.planes;
    /// True area of the roof.
    area(of) -> Area = Area(of.area);
    /// Lines of the roof.
    lines(of) -> usize = of.lines;
    /// Panels as laid.
    panels(of) -> usize = of.panels;
    /// Pieces to form: more than panels where end laps divide them.
    pieces(of) -> u64 = of.pieces;
    /// Different order lengths.
    lengths(of) -> usize = of.lengths;
    /// The shortest order length.
    shortest(of) -> Length = Length(of.shortest);
    /// The longest order length.
    longest(of) -> Length = Length(of.longest);
    /// Order lengths of all panels together.
    panel_length(of) -> Length = Length(of.panel_length);
    /// Length of the coil.
    coil(of) -> Length = Length(of.coil);
    /// Mass of the coil, where the sheet's is known.
    coil_mass(of) -> Option<Mass> = of.coil_mass.map(Mass);
    /// Different trims.
    trims(of) -> usize = of.trims;
    /// Stock lengths of trim to buy.
    sticks(of) -> u64 = of.sticks;
    /// Closure pieces.
    closures(of) -> u64 = of.closures;
    /// Cautions.
    cautions(of) -> usize = of.cautions;
    /// Rows of fasteners and clips whose spacing an engineer gave.
    engineered_rows(of) -> usize = of.engineered_rows;
    /// Rows whose spacing nobody engineered.
    not_engineered_rows(of) -> usize = of.not_engineered_rows;
    /// What the cautions and the rows rest on.
    sources(of, here) -> SourceCount = here.one("sources", &of.sources);
}

part! {
    /// How many figures rest on what.
    SourceCount(core_job::SourceCount) in "seamwright.job",
    shown of: format_args!("{} from text, {} common practice, {} the engineer's", of.text, of.common_practice, of.engineer);

    /// Published and seen as text.
    text(of) -> usize = of.text;
    /// Published, seen through another document.
    secondary(of) -> usize = of.secondary;
    /// Published, from memory: confirm before metal is cut.
    memory(of) -> usize = of.memory;
    /// Derived, from geometry or from another source.
    derived(of) -> usize = of.derived;
    /// Common practice, no published source.
    common_practice(of) -> usize = of.common_practice;
    /// The engineer's.
    engineer(of) -> usize = of.engineer;
    /// The caller's.
    user(of) -> usize = of.user;
}
