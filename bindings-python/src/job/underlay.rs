//! The underlayment of a packet.

use crate::place::{cautions, part};
use crate::record::Caution;
use crate::underlayment::{EaveBand, LaidCourses, ValleyStrip};
use pyo3::prelude::*;
use seamwright::job as core_job;

part! {
    /// The underlayment of a roof.
    UnderlaymentPlan(core_job::UnderlaymentPlan) in "seamwright.job",
    shown plan: format_args!("{} rolls in the field, {} along eaves, {} under valleys", plan.field_rolls, plan.eave_rolls, plan.valley_rolls);

    /// The planes, in the roof's order.
    planes(plan, here) -> Vec<PlaneUnderlayment> = here.all("planes", &plan.planes);
    /// The valleys, in the roof's order.
    valleys(plan, here) -> Vec<ValleyUnderlayment> = here.all("valleys", &plan.valleys);
    /// Whole rolls for the field of all planes: what is left of one goes on to the next.
    field_rolls(plan) -> u32 = plan.field_rolls;
    /// Whole rolls along eaves.
    eave_rolls(plan) -> u32 = plan.eave_rolls;
    /// Whole rolls under valleys.
    valley_rolls(plan) -> u32 = plan.valley_rolls;
    /// What to know before they are ordered.
    cautions(plan) -> Vec<Caution> = cautions(&plan.cautions);
}

part! {
    /// The underlayment of one plane.
    PlaneUnderlayment(core_job::PlaneUnderlayment) in "seamwright.job",
    shown plane: format_args!("{}, {} eaves", plane.plane, plane.eaves.len());

    /// The plane, by name.
    plane(plane) -> String = plane.plane.clone();
    /// Membranes along its eaves.
    eaves(plane, here) -> Vec<EaveUnderlayment> = here.all("eaves", &plane.eaves);
    /// The field; ``None`` where membranes along the eave take all of the plane.
    field(plane, here) -> Option<LaidCourses> = plane.field.as_ref().map(|field| here.one("field", field));
}

part! {
    /// The membrane along one eave.
    EaveUnderlayment(core_job::EaveUnderlayment) in "seamwright.job",
    shown eave: format_args!("{}, {} courses", eave.name, eave.band.courses);

    /// Number of the line in the roof.
    line(eave) -> usize = eave.line;
    /// Its name.
    name(eave) -> String = eave.name.clone();
    /// How far it reaches, and its marks from the eave.
    band(eave, here) -> EaveBand = here.one("band", &eave.band);
    /// Its courses; heights from the lowest point of the plane.
    laid(eave, here) -> LaidCourses = here.one("laid", &eave.laid);
}

part! {
    /// The membrane under one valley.
    ValleyUnderlayment(core_job::ValleyUnderlayment) in "seamwright.job",
    shown valley: format_args!("{}, {}", valley.name, valley.strip.length);

    /// Number of the line in the roof.
    line(valley) -> usize = valley.line;
    /// Its name.
    name(valley) -> String = valley.name.clone();
    /// The strip.
    strip(valley, here) -> ValleyStrip = here.one("strip", &valley.strip);
}
