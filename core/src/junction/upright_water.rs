//! Water down upright faces: the riser of a step, the curbs of a joint along the panels, the wall under a coping.

use super::coping::Coping;
use super::parts::{Adjoining, Side, Solved};
use super::row_shelter;
use super::section_sheets::{FaceSheet, PANELS, SEEN, Upright, WaterSide, before};
use super::section_water::{FacePath, PathFace, SectionWater, WaterCheck, in_room, numbered};
use super::support::SectionPoint;
use super::top_end::side_name;
use super::water_path::{WaterLevel, WaterPath};
use super::water_rules::WaterRules;
use crate::error::Error;
use crate::panel::Reach;
use crate::record::{Calculation, Recorder};
use crate::roof::Water;
use crate::units::Length;

/// What comes up the wall under a coping.
const COVERED: &str = "what comes up the wall";
/// What lies on the wall's top under it.
const MEMBRANE: &str = "membrane on the wall's top";

/// The path of metal down an upright face. Its laps are judged by the section's own rules, so that none is named here.
fn path<R: Recorder>(r: &mut R, face: PathFace, mut sheets: Vec<FaceSheet<'_>>) -> Result<Option<FacePath>, Error> {
    if sheets.is_empty() {
        return Ok(None);
    }
    sheets.sort_by(|a, b| a.height().total_cmp(&b.height()));
    let check = WaterPath { sheets: numbered(sheets.iter()), rules: Vec::new() }.run(r)?;
    Ok(Some(FacePath { face, water: Water::Toward, level: WaterLevel::Metal, check }))
}

/// The panels' edge that is turned up before a curb, whose face stands so far from the line.
fn turned_up(solved: &Solved, of: &WaterSide, face: Length) -> Result<Option<FaceSheet<'static>>, Error> {
    let Some(end) = solved.end(of.side).filter(|end| end.turn_up.is_positive()) else { return Ok(None) };
    let Reach::HoldBack(edge) = end.reach else { return Ok(None) };
    let (off, low) = ((edge - face).length()?, of.levels.pan_face()?);
    Ok(Some(FaceSheet { name: PANELS, trim: None, low, high: (low + end.turn_up).length()?, heights: (off, off) }))
}

/// The riser of a step, and the curbs of a joint.
pub(super) fn uprights<R: Recorder>(r: &mut R, solved: &Solved, sides: &[WaterSide], out: &mut WaterCheck) -> Result<(), Error> {
    for other in &solved.adjoining {
        match other {
            Adjoining::Riser { .. } => {
                let riser = Upright { origin: SectionPoint { x: Length::ZERO, z: Length::ZERO }, is_mirrored: false };
                let sheets = before(solved, riser)?;
                out.paths.extend(r.part(|| "metal on the riser".into(), |r| path(r, PathFace::Riser, sheets))?);
                row_shelter::on_face(solved, Side::Riser, &mut out.rows);
            }
            Adjoining::JointCurbs { gap, width, .. } => {
                let from_line = (gap.station(1, 2)? + *width).length()?;
                for of in sides {
                    let (face, x) = match of.side {
                        Side::First => (PathFace::FirstUpright, (-from_line).length()?),
                        Side::Second | Side::Riser => (PathFace::SecondUpright, from_line),
                    };
                    let mut sheets = before(solved, Upright { origin: SectionPoint { x, z: Length::ZERO }, is_mirrored: of.side != Side::First })?;
                    sheets.extend(turned_up(solved, of, from_line)?);
                    out.paths.extend(r.part(|| format!("metal on the curb, {}", side_name(of.side)), |r| path(r, face, sheets))?);
                }
            }
            _ => {}
        }
    }
    Ok(())
}

impl Coping {
    /// Its water: on either face the coping over what comes up the wall; under it the membrane of the wall's top over the same, where there are both.
    pub(super) fn water<R: Recorder>(&self, r: &mut R, solved: &Solved, rules: &WaterRules) -> Result<WaterCheck, Error> {
        rules.check().map_err(|e| e.under("rules"))?;
        let mut out = WaterCheck::default();
        let [inner, outer] = self.places()?;
        for (side, face, chosen, place) in
            [(Side::First, PathFace::FirstUpright, &self.detail.roof_side, inner), (Side::Second, PathFace::SecondUpright, &self.detail.outside, outer)]
        {
            let mut sheets = before(solved, Upright { origin: place.origin, is_mirrored: side == Side::Second })?;
            if let Some(over) = &chosen.over {
                let (high, behind) = ((-over.below_top).length()?, (-chosen.behind).length()?);
                sheets.push(FaceSheet { name: COVERED, trim: None, low: (high - SEEN).length()?, high, heights: (behind, behind) });
                // The membrane comes down over it under the coping's face, as far as that does.
                if let Some(lap) = chosen.lap()?.filter(|_| self.detail.bed.is_positive()) {
                    let check = in_room((MEMBRANE, COVERED), &rules.underlayment_over_metal, (lap, (-chosen.depth).length()?))?;
                    out.paths.push(FacePath { face, water: Water::Toward, level: WaterLevel::Underlayment, check });
                }
            }
            out.paths.extend(r.part(|| format!("metal on the upright face, {}", side_name(side)), |r| path(r, face, sheets))?);
            row_shelter::on_face(solved, side, &mut out.rows);
        }
        SectionWater { solved, sides: &[], rules }.cautions(&mut out);
        Ok(out)
    }
}
