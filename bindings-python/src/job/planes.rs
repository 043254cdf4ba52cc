//! The planes of a packet: panels, clips, and what moves with heat.

use crate::assembly::{ClipRule, ClipSchedule, PlaneMovement, PlanePins};
use crate::layout::{LaidPlane, Layout, ListedPlane, MarkedSeams};
use crate::place::part;
use crate::record::Source;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::job as core_job;

part! {
    /// The panels of one plane, with the line behind every edge of the outline that they were laid on.
    PlaneLay(core_job::PlaneLay) in "seamwright.job",
    shown of: format_args!("{}, {} panels", of.name, of.laid.panels.len());

    /// Number of the plane in the roof.
    plane(of) -> usize = of.plane;
    /// Its name.
    name(of) -> String = of.name.clone();
    /// What was laid, on the plane's own outline with a vertex wherever one line of the roof ends and the next begins, broken where a valley's pan runs out on it.
    layout(of) -> Layout = Layout(of.layout.clone());
    /// For every edge of that outline, the number of its line in the roof.
    lines(of) -> Vec<usize> = of.lines.clone();
    /// For every break of that layout, the number of the valley whose pan runs out there.
    broken_by(of) -> Vec<usize> = of.broken_by.clone();
    /// The panels.
    laid(of, here) -> LaidPlane = LaidPlane::placed(Layout(of.layout.clone()), of.laid.clone(), here.place("laid"));
    /// The list for shop and crew, where the job asks for one.
    listed(of, here) -> Option<ListedPlane> = of.listed.as_ref().map(|list| here.one("listed", list));
    /// The marks of the seams, where the job asks for them.
    marks(of, here) -> Option<MarkedSeams> = of.marks.as_ref().map(|marks| here.one("marks", marks));
}

part! {
    /// The clips of one plane.
    PlaneClips(core_job::PlaneClips) in "seamwright.job",
    shown of: format_args!("{}, {}", of.plane, of.schedule.clips);

    /// The plane's name.
    plane(of) -> String = of.plane.clone();
    /// The rule that set them: the engineer's where the job has a schedule.
    rule(of, here) -> ClipRule = here.one("rule", &of.rule);
    /// The greatest spacing along a seam.
    spacing(of) -> Length = Length(of.rule.spacing());
    /// From a seam's ends to its first and last clip.
    end_distance(of) -> Length = Length(of.rule.end_distance());
    /// Whose spacing it is: the engineer's where the job has a schedule.
    source(of) -> Source = Source(of.rule.source().clone());
    /// Where they stand.
    schedule(of, here) -> ClipSchedule = here.one("schedule", &of.schedule);
}

part! {
    /// Where the panels of one plane are held, and how they move with heat.
    PlaneHeat(core_job::PlaneHeat) in "seamwright.job",
    shown of: &of.plane;

    /// The plane's name.
    plane(of) -> String = of.plane.clone();
    /// Where each panel is held.
    pins(of, here) -> PlanePins = here.one("pins", &of.pins);
    /// The folds and gaps at the moving ends; ``None`` where the job gives no temperatures.
    movement(of, here) -> Option<PlaneMovement> = of.movement.as_ref().map(|movement| here.one("movement", movement));
}
