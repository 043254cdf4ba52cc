//! Pans with receiver folds in lapped pieces: how the folds lie in each other.

use super::cautions::RECEIVERS_LAP;
use super::trims::TrimItem;
use crate::error::Error;
use crate::record::{Caution, Source};
use crate::trim::Direction;
use crate::units::{BendAngle, Length};

/// How far a receiver fold is open: twice the inside radius of its fold at the back; nothing for a trim without one.
fn opening(trim: &TrimItem) -> Result<Option<Length>, Error> {
    let profile = &trim.profile;
    // The return lies between the fold at the front, closed tight, and that at the back.
    let Some(at) = profile.legs.iter().position(|l| l.name.starts_with("return")) else { return Ok(None) };
    let beside = [at.checked_sub(1), Some(at)].into_iter().flatten().filter_map(|b| profile.bends.get(b));
    let widest = beside.filter(|b| b.angle == BendAngle::FOLDED && matches!(b.direction, Direction::Up | Direction::Down)).map(|b| b.inside_radius).max();
    widest.map(|radius| (radius * 2).length()).transpose()
}

/// What is said of a pan whose pieces lap, receiver folds and all.
///
/// At a lap the upper piece lies in the lower one: its pan and its return go into the lower piece's fold, which must be open by two sheets more than the upper one's; and its own
/// fold at the front must take the lower piece's return and outer part, two sheets too. So nested, the upper piece is held by the lower one; cut away, it is held by nothing there.
pub(super) fn caution(trim: &TrimItem) -> Result<Option<Caution>, Error> {
    let laps: usize = trim.runs.iter().map(|r| r.pieces.len().saturating_sub(1)).sum();
    let Some(open) = opening(trim)?.filter(|_| laps > 0) else { return Ok(None) };
    let sheets = trim.profile.thickness * 2;
    let said = Caution::new(RECEIVERS_LAP, "lap", Source::geometry()).arg("count", laps).arg("lap", trim.lap);
    Ok(Some(said.arg("opening", open).arg("lower", (sheets + open).length()?).arg("upper", sheets.length()?)))
}
