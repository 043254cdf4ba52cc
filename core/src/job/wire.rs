//! What each line and each plane hands to the assembly.

use super::choices::Detail;
use super::input::Job;
use super::lay::PlaneLay;
use super::sections::order;
use crate::assembly::{
    ClosureChoice, Corners, Flank, JunctionLine, JunctionSide, LineAssembly, LineChoices, LineEnd, LineEnds, NamedTrim, PanEndCut, PlanePanels, RoofCorners,
    SeamSurface, StrikeChoice, TrimChoice,
};
use crate::error::Error;
use crate::junction::{JointMoves, Side, Solved, TopEnd};
use crate::record::{Calculation, Recorder};
use crate::roof::{Line, Roof};
use crate::units::Length;

/// The job's choices in the assembly's terms, worked out once.
pub(super) struct Wiring<'a> {
    pub(super) job: &'a Job,
    pub(super) roof: &'a Roof,
    pub(super) planes: &'a [PlaneLay],
    pub(super) panels: &'a [PlanePanels<'a>],
    seam_foot: Length,
    surface: SeamSurface,
    choices: LineChoices,
}

/// What the corners of a line add to its trims, and at a step to those of its upper edge; and how a valley's pan ends at its lower end.
pub(super) type LineMeets<'a> = ([LineEnds; 2], Option<(LineEnd, &'a PanEndCut)>);

impl<'a> Wiring<'a> {
    pub(super) fn new(job: &'a Job, roof: &'a Roof, planes: &'a [PlaneLay], panels: &'a [PlanePanels<'a>]) -> Result<Wiring<'a>, Error> {
        let seam_foot = job.panel.seam_foot(job.metals.panel.thickness()).map_err(|e| e.under("panel"))?;
        let s = &job.supplies;
        let trims = &s.trims;
        let choices = LineChoices {
            row_end_distance: s.crew.end_distance,
            tape: s.sealant.tape_laps,
            trim: TrimChoice { lap: trims.lap, takes_corners: true },
            named: Vec::new(),
            strike: StrikeChoice { tape: s.crew.tape, tolerance: s.crew.tolerance },
        };
        let surface = SeamSurface::upright(job.panel.seam_height, seam_foot).map_err(|e| e.under("panel"))?;
        Ok(Wiring { job, roof, planes, panels, seam_foot, surface, choices })
    }

    /// Where the lines meet, with what moves at every expansion joint and how high each line's trims stand over it.
    pub(super) fn corners<R: Recorder>(&self, r: &mut R, joints: &[(usize, JointMoves)], solved: &[Option<Solved>]) -> Result<RoofCorners, Error> {
        let allowances = &self.job.supplies.trims.corners;
        let stands: Vec<Length> = solved.iter().map(|s| s.as_ref().map_or(Length::ZERO, highest)).collect();
        Corners { lines: self.roof.lines(), tolerance: self.roof.tolerance(), allowances, joints, stands: &stands }
            .run(r)
            .map_err(|e| e.moved("allowances", "supplies.trims.corners"))
    }

    fn closure(&self, end: &TopEnd) -> ClosureChoice {
        let s = &self.job.supplies.closures;
        ClosureChoice {
            seam_width_at_foot: self.seam_foot,
            compressed_tape: end.closure.tape_beneath,
            clearance: s.clearance,
            tab: s.tab,
            lower_flange: end.closure.lower_flange,
            top_flange: end.closure.top_flange,
            // Without a top flange there is nothing to lap.
            top_lap: if end.closure.top_flange.is_positive() { s.top_lap } else { Length::ZERO },
            from_tab: s.from_tab,
        }
    }

    /// What lies along one line.
    pub(super) fn line<R: Recorder>(
        &self,
        r: &mut R,
        line: &Line,
        detail: &Detail,
        solved: &Solved,
        ([ends, upper_ends], pan_end): LineMeets<'_>,
    ) -> Result<LineAssembly, Error> {
        let order = order(line);
        let mut sides = Vec::with_capacity(2);
        let closures: Vec<(Side, usize, Option<&TopEnd>, Option<ClosureChoice>)> = [(Side::First, Some(order.first)), (Side::Second, order.second)]
            .into_iter()
            .filter_map(|(side, plane)| {
                let end = top_end(detail, side);
                Some((side, plane?, end, end.map(|e| self.closure(e))))
            })
            .collect();
        for (side, plane, end, closure) in &closures {
            let (Some(panels), Some(flank)) = (self.panels.get(*plane), Flank::of(line, *plane)) else { continue };
            sides.push(JunctionSide {
                side: *side,
                flank,
                panels,
                closure: closure.as_ref(),
                surface: Some(&self.surface),
                hollow_seams: end.is_some_and(|e| e.hollow_seams),
            });
        }
        let choice = |name: &str| TrimChoice { lap: self.job.supplies.trims.lap_of(name), takes_corners: true };
        let named = solved.trims.iter().map(|t| NamedTrim { name: t.name.to_string(), choice: choice(&t.name) }).collect();
        let choices = LineChoices { named, ..self.choices.clone() };
        JunctionLine { line, solved, sides: &sides, ends, upper_ends, pan_end, choices: &choices }.run(r)
    }
}

/// How high the trims of a section stand over its line.
fn highest(solved: &Solved) -> Length {
    solved.trims.iter().chain(&solved.lower_trims).flat_map(|t| &t.corners).map(|c| c.z).fold(Length::ZERO, Length::max)
}

/// The covered end of the panels on one side of a line, where its detail has one.
fn top_end(detail: &Detail, side: Side) -> Option<&TopEnd> {
    match (detail, side) {
        (Detail::Ridge(d), Side::First) => Some(&d.first),
        (Detail::Ridge(d), Side::Second) => Some(&d.second),
        (Detail::Hip(d), Side::First) => Some(&d.first),
        (Detail::Hip(d), Side::Second) => Some(&d.second),
        (Detail::HighEdge(d), Side::First) => Some(&d.end),
        (Detail::Headwall(d) | Detail::CurbFront(d), Side::First) => Some(&d.end),
        (Detail::ShallowToSteep(d) | Detail::SteepToShallow(d), Side::First) => Some(&d.end),
        (Detail::Step(d), Side::First) => Some(&d.lower.end),
        (Detail::ExpansionAcross(d), Side::First) => Some(&d.flashing.end),
        _ => None,
    }
}
