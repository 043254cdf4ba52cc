//! The sealed line of every junction, once its trims are cut to pieces and its corners known.

use super::input::Job;
use super::packet::JunctionItem;
use super::trims::{TrimItem, starts_low};
use crate::assembly::{BeadRun, LineEnd, LineSeals, PairRule, PanEndOn, RoofCorners, SideSeal, TrimJoints};
use crate::error::Error;
use crate::record::{Calculation, Recorder};
use crate::roof::Roof;
use crate::units::Length;

/// Whether a rule says how a line's end joins what it meets there. An end at no corner joins nothing.
fn joined(corners: &RoofCorners, junction: &JunctionItem, end: LineEnd) -> bool {
    let here = corners.corners.iter().find(|c| c.lines.iter().any(|l| l.line == junction.line && l.end == end && l.above.is_none()));
    here.is_some_and(|c| c.lines.len() > 1 && !c.pairs.iter().any(|p| (p.first == junction.name || p.second == junction.name) && p.rule == PairRule::NoRule))
}

/// Whether the line's trims lap loose over those of another at this end, beyond an expansion joint.
fn slides(corners: &RoofCorners, junction: &JunctionItem, end: LineEnd) -> bool {
    let here = corners.corners.iter().find(|c| c.lines.iter().any(|l| l.line == junction.line && l.end == end && l.above.is_none()));
    here.is_some_and(|c| c.pairs.iter().any(|p| matches!(&p.rule, PairRule::Slides { over, .. } if *over == junction.name)))
}

/// Where trims lap: their pieces are set from the line's lower end.
fn joints(roof: &Roof, junction: &JunctionItem, corners: &RoofCorners, trims: &[TrimItem]) -> Result<Vec<TrimJoints>, Error> {
    let up = starts_low(roof, junction.line);
    let at_start = slides(corners, junction, LineEnd::Start).then_some(Length::ZERO);
    let at_end = slides(corners, junction, LineEnd::End).then_some(junction.along.length);
    let mut out = Vec::new();
    for trim in junction.section.trims.iter().filter(|t| !t.is_holder()) {
        let made = trims.iter().filter(|t| t.name == *trim.name).find_map(|t| t.runs.iter().find(|r| r.line == Some(junction.line)).map(|r| (t, r)));
        if let Some((item, run)) = made {
            // As the line's assembly has it: corners add to a step's upper trims what they do there.
            let before = junction.along.trims.iter().find(|t| t.name == *trim.name).map_or(Length::ZERO, |t| t.length.ends.at_start);
            let pieces: Vec<Length> = if up { run.pieces.clone() } else { run.pieces.iter().rev().copied().collect() };
            let mut laps = TrimJoints::of(&item.name, (item.flat.girth(), item.lap), &pieces, before, junction.along.length)?;
            laps.at = at_start.into_iter().chain(laps.at).chain(at_end).collect();
            out.push(laps);
        }
    }
    // The pan's own end lies on what is below it, in its beads.
    if let Some(cut) = junction.pan_end.as_ref().filter(|cut| [cut.first.on, cut.second.on] != [PanEndOn::Against; 2]) {
        let lap = if cut.beads == 0 { Length::ZERO } else { cut.bead.width };
        out.push(TrimJoints {
            trim: "valley pan's lower end".to_owned(),
            girth: Length::ZERO,
            lap,
            at: vec![if up { Length::ZERO } else { junction.along.length }],
        });
    }
    Ok(out)
}

/// The sealed lines of a junction.
pub(super) fn of<R: Recorder>(
    r: &mut R,
    job: &Job,
    roof: &Roof,
    junction: &JunctionItem,
    corners: &RoofCorners,
    trims: &[TrimItem],
) -> Result<(Vec<SideSeal>, Vec<BeadRun>), Error> {
    let joints = joints(roof, junction, corners, trims)?;
    let sealant = &job.supplies.sealant;
    let joined = [LineEnd::Start, LineEnd::End].map(|end| joined(corners, junction, end));
    let seals = LineSeals { along: &junction.along, solved: &junction.section, tape: sealant.tape_laps, choices: &sealant.line, joints: &joints, joined };
    let placed = |e: Error| e.moved("choices", "supplies.sealant.line");
    let sealed = r.part(|| seals.title(), |r| seals.run(r)).map_err(placed)?;
    Ok((sealed, seals.beads().map_err(placed)?))
}
