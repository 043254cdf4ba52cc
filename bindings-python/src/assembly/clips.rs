//! How clips are set.

use crate::names::{name_of, tag_of};
use crate::place::{lengths, part};
use crate::record::Source;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::assembly as core_assembly;

part! {
    /// How clips are set along the seams of a plane. What it has not is ``None``: only clips on open framing have supports.
    ClipRule(core_assembly::ClipRule) in "seamwright.assembly",
    shown rule: format_args!("{}, {}", tag_of(rule)?, rule.spacing());

    /// What it is: ``spaced`` on a deck, or ``on-supports``.
    kind(rule) -> String = tag_of(rule)?;
    /// Greatest spacing on centre.
    spacing(rule) -> Length = Length(rule.spacing());
    /// Of the first and last clip from the ends of the seam: as set on a deck, at the most on supports.
    end_distance(rule) -> Length = Length(rule.end_distance());
    /// The supports, as heights up the slope in the plane's own axes, ascending.
    supports(rule) -> Option<Vec<Length>> = match rule { core_assembly::ClipRule::OnSupports { supports, .. } => Some(lengths(supports)), _ => None };
    /// Which supports carry a clip: ``every`` or ``fewest``.
    support_use(rule) -> Option<String> = match rule {
        core_assembly::ClipRule::OnSupports { support_use, .. } => Some(name_of(support_use)?),
        core_assembly::ClipRule::Spaced { .. } => None,
    };
    /// Whose spacing it is.
    source(rule) -> Source = Source(rule.source().clone());
}
