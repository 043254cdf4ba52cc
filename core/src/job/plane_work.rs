//! What each plane needs beside its panels: clips along the seams, where panels are held, and their movement with heat.

use super::wire::Wiring;
use crate::assembly::{ClipPlan, ClipRule, ClipSchedule, MovementChoice, MovementPlan, PinPlan, PlaneMovement, PlanePins};
use crate::error::{Error, ErrorKind};
use crate::record::{Calculation, Recorder, Source};

/// The clips of one plane.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let porch = packet.clips.iter().find(|c| c.plane == "porch").expect("the demo has a porch");
/// assert!(porch.schedule.engineered); // the demo's engineer gives their spacing
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlaneClips {
    /// The plane's name.
    pub plane: String,
    /// The rule that set them: the engineer's where the job has a schedule.
    pub rule: ClipRule,
    /// Where they stand.
    pub schedule: ClipSchedule,
}

/// Where the panels of one plane are held, and how they move with heat.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let porch = packet.heat.iter().find(|h| h.plane == "porch").expect("the demo has a porch");
/// assert!(porch.movement.is_some()); // the demo gives temperatures
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlaneHeat {
    /// The plane's name.
    pub plane: String,
    /// Where each panel is held.
    pub pins: PlanePins,
    /// The folds and gaps at the moving ends; none where the job gives no temperatures.
    pub movement: Option<PlaneMovement>,
}

impl Wiring<'_> {
    fn clip_rule(&self) -> ClipRule {
        let supply = &self.job.supplies.clips;
        let engineered = self.job.engineer.as_ref().and_then(|s| s.clips.map(|spacing| (spacing, s.source())));
        let (spacing, source) = engineered.unwrap_or((supply.spacing, Source::user()));
        ClipRule::Spaced { spacing, end_distance: supply.end_distance, source }
    }

    /// The clips of a plane.
    pub(super) fn clips<R: Recorder>(&self, r: &mut R, plane: usize) -> Result<PlaneClips, Error> {
        let (panels, lay) = self.panels.get(plane).zip(self.planes.get(plane)).ok_or_else(|| lost(plane))?;
        let rule = self.clip_rule();
        let plan = ClipPlan { panels, rule: &rule, along_edges: false, fixed: None, screws_each: self.job.supplies.clips.screws };
        let schedule = r.part(|| format!("clips on {}", lay.name), |r| plan.run(r)).map_err(|e| e.under("supplies.clips").about(&lay.name))?;
        Ok(PlaneClips { plane: lay.name.clone(), rule, schedule })
    }

    /// Where a plane's panels are held, and how they move; `pinned` are the lines along the seams whose fasteners pin the panels beside them.
    pub(super) fn heat<R: Recorder>(&self, r: &mut R, plane: usize, pinned: &[usize]) -> Result<PlaneHeat, Error> {
        let (panels, lay) = self.panels.get(plane).zip(self.planes.get(plane)).ok_or_else(|| lost(plane))?;
        let pinned_along: Vec<usize> = lay.lines.iter().enumerate().filter(|(_, line)| pinned.contains(line)).map(|(edge, _)| edge).collect();
        let plan = PinPlan { panels, pinned_along: &pinned_along, fixed: None, tolerance: None };
        let pins = r.part(|| format!("where the panels of {} are held", lay.name), |r| plan.run(r)).map_err(|e| e.about(&lay.name))?;
        let movement = match &self.job.temperatures {
            None => None,
            Some(t) => {
                let choice = MovementChoice {
                    expansion: self.job.metals.panel.alloy().expansion().value,
                    coldest: t.coldest,
                    laid: t.laid,
                    hottest: t.hottest,
                    clearance: self.job.supplies.movement.clearance,
                    engagement: self.job.supplies.movement.engagement,
                };
                let plan = MovementPlan { panels, pins: &pins, fixed: None, choice: &choice };
                Some(r.part(|| format!("movement of {}", lay.name), |r| plan.run(r)).map_err(|e| e.about(&lay.name))?)
            }
        };
        Ok(PlaneHeat { plane: lay.name.clone(), pins, movement })
    }
}

fn lost(plane: usize) -> Error {
    Error::new(ErrorKind::Internal, "a plane is missing").value_of(plane)
}
