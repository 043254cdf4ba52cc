//! What a crew's sheet says of expansion joints: what moves there, and how the trims of lines that cross one lap loose.

use super::crew_sheets::temperature;
use crate::assembly::PairRule;
use crate::error::Error;
use crate::job::{JunctionItem, Packet};
use crate::units::LengthFormat;

/// The steps at a joint, or where this line's trims cross one.
pub(super) fn steps(packet: &Packet, junction: &JunctionItem, format: LengthFormat) -> Result<Vec<String>, Error> {
    let mut out = Vec::new();
    if let Some(moves) = &junction.moves {
        let laid = packet.temperatures.map_or(String::new(), |t| format!(" from metal at {}", temperature(format, t.laid)));
        let (closes, opens) = (format.string(moves.closes)?, format.string(moves.opens)?);
        out.push(format!("The joint closes by {closes} in the heat and opens by {opens} in the cold{laid}."));
    }
    for corner in packet.corners.corners.iter().filter(|c| c.lines.iter().any(|l| l.line == junction.line)) {
        for pair in &corner.pairs {
            let PairRule::Slides { over, under, joint } = &pair.rule else { continue };
            let Some(lap) = corner.lines.iter().find(|l| l.name == *over).map(|l| l.allowance) else { continue };
            let moves = packet.junction(joint).and_then(|j| j.moves).unwrap_or_default();
            let least = (lap - moves.opens).length()?;
            let free = format.string((lap + moves.closes).length()?)?;
            if *over == junction.name {
                let lower = packet.junction(under).map(|j| j.first.levels.built_up).unwrap_or_default();
                let higher = (junction.first.levels.built_up - lower).length()?;
                let end = if higher.is_positive() { format!(" It lies {} higher: close its end.", format.string(higher)?) } else { String::new() };
                let (lap, least) = (format.string(lap)?, format.string(least)?);
                out.push(format!(
                    "At {joint} run the trim {lap} on over that of {under}, loose, in two beads that stay soft: no rivet or screw through both; {least} stay lapped in the cold. Part cleats and strips there.{end}"
                ));
            } else if *under == junction.name {
                out.push(format!("At {joint} end the trim on the joint's line, under that of {over}: no fastener in its last {free}, so that both slide. Part cleats and strips there."));
            }
        }
    }
    Ok(out)
}
