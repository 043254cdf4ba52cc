//! What a line's section does with water.

use super::input::Job;
use super::packet::SectionSide;
use crate::error::Error;
use crate::junction::{SectionWater, Side, Solved, WaterCheck, WaterSide};
use crate::record::{Calculation, Recorder};
use crate::roof::Line;

/// The paths of a line and the shelter of its fasteners.
pub(super) fn of<R: Recorder>(
    r: &mut R,
    job: &Job,
    line: &Line,
    solved: &Solved,
    first: SectionSide,
    second: Option<SectionSide>,
) -> Result<WaterCheck, Error> {
    let sides: Vec<WaterSide> = [(Side::First, Some(first)), (Side::Second, second)]
        .into_iter()
        .filter_map(|(side, of)| {
            let of = of?;
            let water = line.sides().find(|s| s.plane == of.plane)?.water;
            Some(WaterSide { side, rise: of.rise, water, levels: of.levels })
        })
        .collect();
    SectionWater { solved, sides: &sides, rules: &job.supplies.water }.run(r).map_err(|e| e.moved("rules", "supplies.water").about(&line.name))
}
