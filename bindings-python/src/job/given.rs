//! What a packet keeps of its job: sheets, temperatures, how lengths are written.

use crate::metal::Sheet;
use crate::names::name_of;
use crate::place::part;
use crate::units::{LengthFormat, Temperature};
use pyo3::prelude::*;
use seamwright::job as core_job;

part! {
    /// The sheets of a job.
    Metals(core_job::Metals) in "seamwright.job",
    shown metals: format_args!("panels of {}, {} for trims", metals.panel.alloy(), metals.trims.len());

    /// The panels' sheet.
    panel(metals, here) -> Sheet = here.one("panel", &metals.panel);
    /// The sheets that trims and cleats are folded from, each of another thickness.
    trims(metals, here) -> Vec<Sheet> = here.all("trims", &metals.trims);
    /// The gutters' metal; ``None`` where it is not known.
    gutter(metals) -> Option<String> = metals.gutter.as_ref().map(name_of).transpose()?;
}

part! {
    /// The temperatures of the metal.
    Temperatures(core_job::Temperatures) in "seamwright.job",
    shown metal: format_args!("laid at {}, {} to {}", metal.laid, metal.coldest, metal.hottest);

    /// When the panels are laid.
    laid(metal) -> Temperature = Temperature(metal.laid);
    /// On the coldest night.
    coldest(metal) -> Temperature = Temperature(metal.coldest);
    /// On the hottest afternoon.
    hottest(metal) -> Temperature = Temperature(metal.hottest);
}

part! {
    /// How lengths are written, and on what.
    Paperwork(core_job::Paperwork) in "seamwright.job",
    shown paper: format_args!("{}, {}", paper.lengths, name_of(&paper.paper)?);

    /// The notation of lengths for crew and shop: panels and runs.
    lengths(paper) -> LengthFormat = LengthFormat(paper.lengths);
    /// The notation of what is small, where the job gives one of its own; else ``None``.
    details(paper) -> Option<LengthFormat> = paper.details.map(LengthFormat);
    /// The notation of what is small: widths, trims, spacings and struck lines.
    small(paper) -> LengthFormat = LengthFormat(paper.small());
    /// The crew's sheets: ``letter`` or ``a4``.
    paper(paper) -> String = name_of(&paper.paper)?;
}
