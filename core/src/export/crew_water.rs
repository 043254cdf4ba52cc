//! What a crew's sheet says of water: what laps what, and whether the sealed line goes through.

use super::number::fixed;
use crate::assembly::{CornerLine, CornerPair, LineEnd, PairRule, SideSeal, TrimEnd};
use crate::error::Error;
use crate::job::{CapHand, EndCap, JunctionItem, Packet};
use crate::junction::{PathFace, Side, WaterLevel};
use crate::roof::LineKind;
use crate::units::{Length, LengthFormat};

fn laps(junction: &JunctionItem, format: LengthFormat, out: &mut Vec<String>) -> Result<(), Error> {
    for level in [WaterLevel::Metal, WaterLevel::Underlayment] {
        let mut said: Vec<String> = Vec::new();
        for path in junction.water.paths.iter().filter(|p| p.level == level) {
            for lap in &path.check.laps {
                let least = match lap.least.filter(|least| *least != lap.overlap) {
                    Some(least) => format!(" (least {})", format.string(least)?),
                    None => String::new(),
                };
                let wrong = if lap.holds { "" } else { " WRONG" };
                let on = match path.face {
                    PathFace::Wall => " up the wall",
                    PathFace::Riser => " down the riser",
                    PathFace::FirstUpright | PathFace::SecondUpright => " down the curb",
                    PathFace::First | PathFace::Second => "",
                };
                let line = format!("{} over {} by {}{on}{least}{wrong}", lap.upper, lap.lower, format.string(lap.overlap)?);
                // Where both sides lap alike it is said once.
                if !said.contains(&line) {
                    said.push(line);
                }
            }
        }
        if !said.is_empty() {
            let name = if level == WaterLevel::Metal { "Metal" } else { "Underlayment" };
            out.push(format!("{name}: {}.", said.join("; ")));
        }
    }
    Ok(())
}

fn sealed(seal: &SideSeal, both: bool, format: LengthFormat) -> Result<String, Error> {
    let side = match (both, seal.side) {
        (true, Side::First) => " on side 1",
        (true, Side::Second) => " on side 2",
        (true, Side::Riser) => " on the riser",
        (false, _) => "",
    };
    let check = &seal.check;
    if check.continuous {
        let gap = format.string(check.longest_gap)?;
        return Ok(format!(
            "Sealed line{side}: goes through from end to end, {} layer(s), {} place(s) to look at, no gap over {gap}.",
            check.layers, check.passages
        ));
    }
    let shown = 4;
    let mut text = format!("Sealed line{side} BREAKS:");
    for b in check.breaks.iter().take(shown) {
        let bay = b.bay.map_or(String::new(), |n| format!(", bay {n}"));
        text.push_str(&format!(" at {}{bay}, {} is missing: {};", format.string(b.from)?, b.missing.lacks(), b.cure));
    }
    if check.breaks.len() > shown {
        text.push_str(&format!(" and {} more;", check.breaks.len() - shown));
    }
    text.pop();
    text.push('.');
    Ok(text)
}

/// Marks up the slope, so many and no more: the list of courses has them all.
fn marks(tops: &[Length], format: LengthFormat) -> Result<String, Error> {
    let shown = 6;
    let mut text = tops.iter().take(shown).map(|t| format.string(*t)).collect::<Result<Vec<_>, _>>()?.join(", ");
    if tops.len() > shown {
        text.push_str(&format!(" and {} more on the list", tops.len() - shown));
    }
    Ok(text)
}

/// The membrane at this line, and at an eave or over a step the marks of the field's courses.
fn membranes(packet: &Packet, junction: &JunctionItem, out: &mut Vec<String>) -> Result<(), Error> {
    let Some(plan) = &packet.underlayment else { return Ok(()) };
    let long = packet.paperwork.lengths;
    for plane in &plan.planes {
        for eave in plane.eaves.iter().filter(|e| e.line == junction.line) {
            let from = if junction.kind == LineKind::Step { "the edge over the riser" } else { "the eave" };
            let (least, tops) = (long.string(eave.band.least)?, marks(&eave.band.marks, long)?);
            out.push(format!("Membrane: at least {least} up the slope from {from}, {} course(s), top edges at {tops}.", eave.band.courses));
        }
        let foot_of = match junction.kind {
            LineKind::Eave => Some(junction.first.plane),
            LineKind::Step => junction.second.map(|s| s.plane),
            _ => None,
        };
        let is_foot = foot_of.and_then(|k| packet.planes.get(k)).is_some_and(|p| p.name == plane.plane);
        if let Some(field) = plane.field.as_ref().filter(|_| is_foot) {
            let tops: Vec<Length> = field.courses.iter().map(|c| c.top).collect();
            out.push(format!("Underlayment on {}, {} course(s), top edges at {} from its lowest point.", plane.plane, tops.len(), marks(&tops, long)?));
        }
    }
    for valley in plan.valleys.iter().filter(|v| v.line == junction.line) {
        let beyond = packet.paperwork.small().string(valley.strip.beyond)?;
        out.push(format!(
            "Membrane: {} in {} piece(s) from the bottom up, {beyond} beyond the pan on each side.",
            long.string(valley.strip.length)?,
            valley.strip.pieces
        ));
    }
    Ok(())
}

/// The cap of an end; of a line whose trim is not known a caution says so.
fn cap(packet: &Packet, here: &CornerLine) -> String {
    match packet.end_caps.iter().find(|c| (c.line, c.end, c.above) == (here.line, here.end, here.above)) {
        Some(EndCap { piece: None, mark, .. }) => format!("end of {mark} folded down"),
        Some(EndCap { piece: Some(piece), mark, hand: CapHand::Either, .. }) => format!("end cap {piece} to {mark}"),
        Some(EndCap { piece: Some(piece), mark, hand, .. }) => format!("end cap {piece} to {mark}, {}", hand.name()),
        None => "end cap".to_owned(),
    }
}

/// How the line's trims meet those of the lines at its ends.
fn corners(packet: &Packet, junction: &JunctionItem, format: LengthFormat, out: &mut Vec<String>) -> Result<(), Error> {
    for corner in &packet.corners.corners {
        for here in corner.lines.iter().filter(|l| l.line == junction.line) {
            let mut said: Vec<String> = Vec::new();
            // To half a degree, as the crew sets it; square is not said.
            let angle = |pair: &CornerPair| match pair.cut.map(|cut| (cut.degrees() * 2.0).round() / 2.0) {
                Some(cut) if cut < 90.0 => format!(" at {}\u{b0}", fixed(cut, 1)),
                _ => String::new(),
            };
            for pair in corner.pairs.iter().filter(|p| p.first == here.name || p.second == here.name) {
                let other = if pair.first == here.name { &pair.second } else { &pair.first };
                match &pair.rule {
                    PairRule::Laps { over, .. } if *over == here.name => said.push(format!("over {other}{}", angle(pair))),
                    PairRule::Laps { .. } => said.push(format!("under {other}")),
                    PairRule::Mitred => said.push(format!("mitred to {other}{}", angle(pair))),
                    PairRule::RunsOn => said.push(format!("lapped with {other}")),
                    PairRule::Slides { over, .. } => said.push(format!("loose {} {other}", if *over == here.name { "over" } else { "under" })),
                    PairRule::Covered { .. } => {}
                    PairRule::NoRule => said.push(format!("with {other} DECIDE")),
                }
            }
            if here.allowance.is_positive() {
                said.push(format!("runs on {}", format.string(here.allowance)?));
            }
            said.extend(match here.closed {
                TrimEnd::Capped => Some(cap(packet, here)),
                TrimEnd::TurnedUp => Some("turned up against the wall".to_owned()),
                TrimEnd::KickOut => {
                    let made = packet.kick_outs.iter().find(|k| k.lines.contains(&here.name));
                    Some(made.map_or_else(|| "kick-out".to_owned(), |k| format!("kick-out {}", k.mark)))
                }
                TrimEnd::Outlet => Some("open for the water".to_owned()),
                TrimEnd::Joined | TrimEnd::Covered | TrimEnd::Undecided => None,
            });
            let end = if here.end == LineEnd::Start { "start" } else { "end" };
            let edge = match (here.above, junction.kind) {
                (Some(_), _) => ", over the riser",
                (None, LineKind::Step) => ", at the riser's foot",
                _ => "",
            };
            out.push(format!("Trim's {end}{edge}: {}.", said.join(", ")));
        }
    }
    Ok(())
}

/// The lines of the sheet.
pub(super) fn lines(packet: &Packet, junction: &JunctionItem, format: LengthFormat) -> Result<Vec<String>, Error> {
    let mut out = Vec::new();
    laps(junction, format, &mut out)?;
    membranes(packet, junction, &mut out)?;
    corners(packet, junction, format, &mut out)?;
    for seal in &junction.sealed {
        out.push(sealed(seal, junction.sealed.len() > 1, format)?);
    }
    Ok(out)
}
