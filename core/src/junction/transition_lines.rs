//! What lies along a pitch transition's lower panels, and the lines to strike there.

use super::parts::{Along, AlongLine, Datum, LayoutLine, Side, Solved};
use super::top_end::Ended;
use super::transition::PitchTransitionDetail;
use crate::error::Error;
use crate::record::{Recorder, Source, Step};
use crate::units::Length;

/// Its line is struck first, for the trim to be held to.
const LOWER_EDGE: &str = "trim lower edge";

/// Adds the lower panels' end to its junction, with the bead behind its seams, and gives back the rivets, which come when the trim is on; `edge` is the
/// trim's lower edge, from the junction line up the slope.
///
/// The trim is tried in place before the closures are set: their lines step back up the slope from its lower edge.
pub(super) fn add_lower<R: Recorder>(
    r: &mut R,
    mut ended: Ended,
    d: &PitchTransitionDetail,
    edge: Length,
    solved: &mut Solved,
) -> Result<Option<AlongLine>, Error> {
    ended.lines = ended.lines.into_iter().filter(|l| l.name != LOWER_EDGE).map(|l| stepped(l, edge)).collect::<Result<_, _>>()?;
    let at = ended.lines.iter().take_while(|l| l.datum == Datum::JunctionLine).count();
    ended.lines.insert(at, LayoutLine::from_junction(LOWER_EDGE, Side::First, edge.into())?);
    for line in &ended.lines {
        r.step(|| {
            let step = Step::new(line.name.clone()).formula(format!("measured from {}", line.datum));
            step.with("from the junction line", line.from_line).gives(line.from_datum).source(Source::user())
        });
    }
    let rivets = ended.along.iter().position(|a| a.name == "rivets").map(|i| ended.along.remove(i));
    ended.give("detail.end", solved);
    if let Some(bead) = d.seam_bead {
        let (name, what) = ("bead behind the seams".into(), Along::Bead { width: bead.width, depth: bead.depth });
        solved.along.push(AlongLine { name, side: Side::First, what, from_line: (-d.end.hold_back).length()? });
    }
    Ok(rivets)
}

/// The line measured from the trim's lower edge; the panels' own end stays on the junction line.
fn stepped(line: LayoutLine, edge: Length) -> Result<LayoutLine, Error> {
    if line.name == "panel end" {
        return Ok(line);
    }
    let from_datum = (line.from_line - edge).length()?;
    Ok(LayoutLine { datum: Datum::TrimLowerEdge, from_datum, ..line })
}
