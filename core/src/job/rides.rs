//! What a cap that rides must let pass over the year.

use super::cautions::CAP_PARTS;
use super::input::Job;
use super::lay::PlaneLay;
use super::packet::{JunctionItem, SectionSide};
use super::plane_work::PlaneHeat;
use crate::assembly::PanelEdge;
use crate::error::Error;
use crate::junction::CAP_RIDES;
use crate::movement::{CapMoves, CapParting, PartingSide};
use crate::record::{Calculation, Caution, Recorder, Source};
use crate::units::Angle;

/// Of a line whose closures ride with the panels: from the panel of either side that moves the most there. None without temperatures, and where no panel moves.
pub(super) fn of<R: Recorder>(r: &mut R, job: &Job, junction: &JunctionItem, planes: &[PlaneLay], heat: &[PlaneHeat]) -> Result<Option<CapMoves>, Error> {
    let Some(t) = &job.temperatures else { return Ok(None) };
    if !junction.section.cautions.iter().any(|c| c.code() == CAP_RIDES) {
        return Ok(None);
    }
    let side = |of: &SectionSide| -> Result<Option<PartingSide>, Error> {
        let Some((lay, heat)) = planes.get(of.plane).zip(heat.get(of.plane)) else { return Ok(None) };
        let here = heat.movement.iter().flat_map(|m| &m.ends).filter(|e| e.end == PanelEdge::Upper && lay.lines.get(e.edge) == Some(&junction.line));
        let Some(worst) = here.max_by_key(|e| e.to_fixed) else { return Ok(None) };
        Ok(Some(PartingSide { slope: Angle::degrees_from(of.rise.degrees().abs())?, meeting: worst.meeting, to_fixed: worst.to_fixed }))
    };
    let (first, second) = (side(&junction.first)?, junction.second.as_ref().map_or(Ok(None), side)?);
    if first.is_none() && second.is_none() {
        return Ok(None);
    }
    let parting = CapParting { first, second, range: t.range(&job.metals.panel) };
    r.part(|| format!("{}: {}", junction.name, parting.title()), |r| parting.run(r)).map(Some).map_err(|e| e.about(&junction.name))
}

/// What is said of it.
pub(super) fn caution(moves: &CapMoves) -> Caution {
    let sides = || moves.first.iter().chain(&moves.second);
    let (rises, falls) = (sides().map(|s| s.rises).max().unwrap_or_default(), sides().map(|s| s.falls).max().unwrap_or_default());
    let caution = Caution::new(CAP_PARTS, "rides", Source::geometry()).arg("closes", moves.closes).arg("opens", moves.opens);
    caution.arg("rises", rises).arg("falls", falls)
}
