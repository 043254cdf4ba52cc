//! Where lines of the roof meet.

use crate::names::name_of;
use crate::place::{cautions, part};
use crate::record::{Caution, Source};
use crate::roof::Vertex;
use crate::units::{Angle, Length};
use pyo3::prelude::*;
use seamwright::assembly as core_assembly;
use seamwright::assembly::PairRule;

part! {
    /// Where lines of a roof meet, and how their trims do.
    RoofCorners(core_assembly::RoofCorners) in "seamwright.assembly",
    shown roof: format_args!("{}", roof.corners.len());

    /// The corners, in the order of the lines that first end there.
    corners(roof, here) -> Vec<Corner> = here.all("corners", &roof.corners);
    /// For each line of the roof, in its order, what its trims run on beyond its start and its end.
    ends(roof) -> Vec<(Length, Length)> = roof.ends.iter().map(|e| (Length(e.at_start), Length(e.at_end))).collect();
    /// The same for the trims along the upper edge of each step; nothing at any other line.
    upper_ends(roof) -> Vec<(Length, Length)> = roof.upper_ends.iter().map(|e| (Length(e.at_start), Length(e.at_end))).collect();
    /// What to decide before trims are cut.
    cautions(roof) -> Vec<Caution> = cautions(&roof.cautions);
}

part! {
    /// A place where lines end.
    Corner(core_assembly::Corner) in "seamwright.assembly",
    shown corner: corner.lines.iter().map(|l| l.name.as_str()).collect::<Vec<_>>().join(", ");

    /// Where it is: the end of its first line.
    at(corner) -> Vertex = Vertex(corner.at);
    /// The lines that end there, in the roof's order.
    lines(corner, here) -> Vec<CornerLine> = here.all("lines", &corner.lines);
    /// Every two of them.
    pairs(corner, here) -> Vec<CornerPair> = here.all("pairs", &corner.pairs);
}

part! {
    /// A line at a corner.
    CornerLine(core_assembly::CornerLine) in "seamwright.assembly",
    shown line: format_args!("{} at its {}", line.name, name_of(&line.end)?);

    /// The line's number among the roof's lines.
    line(line) -> usize = line.line;
    /// Its name.
    name(line) -> String = line.name.clone();
    /// Its kind.
    kind(line) -> String = name_of(&line.kind)?;
    /// Which end of it: ``start`` or ``end``.
    end(line) -> String = name_of(&line.end)?;
    /// Along the upper edge of a step, how far over the line's own end the corner stands: its riser.
    above(line) -> Option<Length> = line.above.map(Length);
    /// What its trims run on here.
    allowance(line) -> Length = Length(line.allowance);
    /// How the end of its trim is closed here: ``capped``, ``turned-up`` a wall, ``kick-out``, ``joined``, ``covered``, ``outlet`` or ``undecided``.
    closed(line) -> String = name_of(&line.closed)?;
}

/// How the trims of two lines meet, by name.
fn rule(rule: &PairRule) -> &'static str {
    match rule {
        PairRule::Laps { .. } => "laps",
        PairRule::Mitred => "mitred",
        PairRule::RunsOn => "runs-on",
        PairRule::Slides { .. } => "slides",
        PairRule::Covered { .. } => "covered",
        PairRule::NoRule => "no-rule",
    }
}

part! {
    /// How the trims of two lines meet at a corner.
    CornerPair(core_assembly::CornerPair) in "seamwright.assembly",
    shown pair: format_args!("{} and {}, {}", pair.first, pair.second, rule(&pair.rule));

    /// The first line, by name.
    first(pair) -> String = pair.first.clone();
    /// The second, by name.
    second(pair) -> String = pair.second.clone();
    /// How they meet: one ``laps`` over the other; of one kind they are ``mitred``, or in one straight line ``runs-on``; ``covered`` by a third
    /// that laps over both; or ``no-rule`` sets them in order.
    rule(pair) -> &'static str = rule(&pair.rule);
    /// The line on top: the one that laps over the other, or the third that covers both.
    over(pair) -> Option<String> = match &pair.rule {
        PairRule::Laps { over, .. } | PairRule::Slides { over, .. } => Some(over.clone()),
        PairRule::Covered { by } => Some(by.clone()),
        PairRule::Mitred | PairRule::RunsOn | PairRule::NoRule => None,
    };
    /// The expansion joint over which they slide.
    joint(pair) -> Option<String> = match &pair.rule {
        PairRule::Slides { joint, .. } => Some(joint.clone()),
        _ => None,
    };
    /// Between the two lines at the corner.
    between(pair) -> Angle = Angle(pair.between);
    /// The same as seen from above.
    plan(pair) -> Angle = Angle(pair.plan);
    /// The bevel on the sheet: from a trim's own line to the cut across its end in the plane of both, where one is cut to the other.
    cut(pair) -> Option<Angle> = pair.cut.map(Angle);
    /// The same cut as seen from above, where it can be set from there.
    cut_plan(pair) -> Option<Angle> = pair.cut_plan.map(Angle);
    /// Where the rule comes from.
    source(pair) -> Source = Source(pair.source.clone());
}
