//! Water at a pipe: its base over the pan below, and against the pan above or under it.

use super::Adjoining;
use super::parts::{Along, Side, Solved};
use super::pipe::Pipe;
use super::pipe_parts::UpperEdge;
use super::row_shelter::{RowShelter, Shelter};
use super::section_sheets::{PANELS, SEEN};
use super::section_water::{FacePath, PathFace, SectionWater, WaterCheck};
use super::water_path::{PathSheet, WaterLevel, WaterPath};
use super::water_rules::WaterRules;
use crate::error::Error;
use crate::record::{Calculation, Recorder};
use crate::roof::Water;
use crate::units::Length;

const BASE: &str = "base of the pipe";

impl Pipe {
    /// Its water, of the metal alone: what dresses the underlayment to a pipe is no part of its section.
    pub(super) fn water<R: Recorder>(&self, r: &mut R, solved: &Solved, rules: &WaterRules) -> Result<WaterCheck, Error> {
        rules.check().map_err(|e| e.under("rules"))?;
        let mut out = WaterCheck::default();
        let lapped = self.upper_edge == UpperEdge::UnderLap;
        for other in &solved.adjoining {
            let Adjoining::Pipe { hole, base, .. } = other else { continue };
            let sheet = |name: &str, low: Length, high: Length, layer| PathSheet { name: name.to_owned(), low, high, layer };
            let (down, foot) = ((-hole.0).length()?, (-base.0).length()?);
            let below = vec![sheet(PANELS, (foot - SEEN).length()?, down, 1), sheet(BASE, foot, Length::ZERO, 2)];
            let above = vec![sheet(PANELS, hole.1, (base.1 + SEEN).length()?, if lapped { 3 } else { 1 }), sheet(BASE, Length::ZERO, base.1, 2)];
            for (face, water, sheets, name) in
                [(PathFace::First, Water::Away, below, "metal below the pipe"), (PathFace::Second, Water::Toward, above, "metal above the pipe")]
            {
                let check = r.part(|| name.into(), |r| WaterPath { sheets, rules: Vec::new() }.run(r))?;
                out.paths.push(FacePath { face, water, level: WaterLevel::Metal, check });
            }
        }
        for row in solved.along.iter().filter(|a| matches!(a.what, Along::Fasteners { .. })) {
            let shelter = if lapped && row.side == Side::Second { Shelter::Under(PANELS.to_owned()) } else { Shelter::None };
            out.rows.push(RowShelter { name: row.name.clone().into_owned(), side: row.side, shelter });
        }
        SectionWater { solved, sides: &[], rules }.cautions(&mut out);
        Ok(out)
    }
}
