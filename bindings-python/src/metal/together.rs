//! Metals of a whole roof together.

use crate::document::document;
use crate::names::name_of;
use crate::place::part;
use crate::record::Caution;
use pyo3::prelude::*;
use seamwright::metal as core_metal;

document! {
    /// The metals of a roof: its parts, those that touch, and those on which another's water runs, which is followed all the way down.
    ///
    /// >>> from seamwright.metal import MetalsTogether
    /// >>> parts = [{"name": "flashing", "alloy": "copper"}, {"name": "panels", "alloy": "copper"}]
    /// >>> parts.append({"name": "gutter", "alloy": "aluminium-zinc-coated-steel"})
    /// >>> drains = [{"first": 0, "second": 1, "at": "headwall 1"}, {"first": 1, "second": 2, "at": "eave 1"}]
    /// >>> [(m.first, m.second, m.way, m.verdict, m.places) for m in MetalsTogether.from_dict({"parts": parts, "drains": drains}).compute()]
    /// [('flashing', 'gutter', 'run-off', 'keep-apart', ['headwall 1, eave 1']), ('panels', 'gutter', 'run-off', 'keep-apart', ['eave 1'])]
    MetalsTogether(core_metal::MetalsTogether) in "seamwright.metal" gives [MetalMeeting]
}

part! {
    /// Two kinds of part whose metals do not go together, or are not judged.
    MetalMeeting(core_metal::MetalMeeting) in "seamwright.metal",
    shown meeting: format_args!("{} and {}, {}", meeting.first, meeting.second, name_of(&meeting.verdict)?);

    /// The one; by run-off, the upper.
    first(meeting) -> String = meeting.first.clone();
    /// Its metal.
    first_alloy(meeting) -> String = name_of(&meeting.first_alloy)?;
    /// The other; by run-off, the lower.
    second(meeting) -> String = meeting.second.clone();
    /// Its metal.
    second_alloy(meeting) -> String = name_of(&meeting.second_alloy)?;
    /// How they meet: ``contact`` or ``run-off``.
    way(meeting) -> String = name_of(&meeting.way)?;
    /// What is said of them: ``keep-apart`` or ``not-judged``.
    verdict(meeting) -> String = name_of(&meeting.verdict)?;
    /// Where: each the line, or the lines that the water crosses one after the other.
    places(meeting) -> Vec<String> = meeting.places.clone();
    /// What cures it.
    cure(meeting) -> &'static str = meeting.cure;
    /// What must be said of it.
    caution(meeting) -> Caution = Caution::from(&meeting.caution());
}
