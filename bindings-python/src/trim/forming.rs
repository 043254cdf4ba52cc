//! Whether a trim can be formed.

use super::flat::Part as FlatPart;
use crate::document::document;
use crate::error::Raise;
use crate::place::{cautions, part};
use crate::record::{Caution, Source};
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::metal::RadiusLimit;
use seamwright::trim as core_trim;

document! {
    /// A trim, and the limits that it is to keep. What is left out is not judged, and a caution says so.
    ///
    /// >>> from seamwright.trim import Bend, BendRule, FormingCheck, Leg, NeutralFactor, Profile
    /// >>> legs = [Leg("a", "50 mm", "sheet-edge", "outer-corner"), Leg("lip", "8 mm", "outer-corner", "sheet-edge")]
    /// >>> profile = Profile("1 mm", legs, [Bend("90 deg", "up", "1 mm")], "upper")
    /// >>> check = {"profile": profile, "rule": BendRule.neutral_axis(NeutralFactor.MIDDLE), "least_leg": "10 mm"}
    /// >>> [fault.message for fault in FormingCheck.from_dict(check).compute().faults]
    /// ['leg 2 has a flat part of 6 mm, the brake needs 10 mm']
    FormingCheck(core_trim::FormingCheck) in "seamwright.trim" gives FormingReport
}

part! {
    /// What a `FormingCheck` finds.
    FormingReport(core_trim::FormingReport) in "seamwright.trim",
    shown report: format_args!("{} faults, girth {}", report.faults.len(), report.girth);

    /// Whether no fault was found. What was not judged stands in the cautions.
    forms(report) -> bool = report.forms;
    /// Every fault.
    faults(report, here) -> Vec<FormingFault> = here.all("faults", &report.faults);
    /// Width of the blank.
    girth(report) -> Length = Length(report.girth);
    /// The least inside radius of each bend, where the metal is given.
    radii(report, here) -> Vec<RadiusFinding> = here.all("radii", &report.radii);
    /// Each hole with the bend nearest to it.
    holes(report, here) -> Vec<HoleFinding> = here.all("holes", &report.holes);
    /// What was not judged, what no source limits, and what the flat pattern says.
    cautions(report) -> Vec<Caution> = cautions(&report.cautions);
    {
        /// Refuses a trim that cannot be formed.
        fn require(&self) -> PyResult<()> {
            self.core.require().raise()
        }
    }
}

part! {
    /// Why a trim cannot be formed as asked.
    FormingFault(core_trim::FormingFault) in "seamwright.trim",
    shown fault: fault;

    /// Its kind, as ``leg-too-short``.
    name(fault) -> &'static str = fault.name();
    /// Where it lies, as a path into the check.
    subject(fault) -> String = fault.subject();
    /// The sentence.
    message(fault) -> String = fault.to_string();
}

part! {
    /// The least inside radius of one bend, as far as it is published.
    RadiusFinding(core_trim::RadiusFinding) in "seamwright.trim",
    shown finding: format_args!("{}: {}", finding.bend, finding.limit);

    /// The bend by its index, or ``start-hem`` or ``end-hem``.
    bend(finding) -> FlatPart = finding.bend.into();
    /// Its inside radius.
    radius(finding) -> Length = Length(finding.radius);
    /// The least, where one is published.
    least(finding) -> Option<Length> = match &finding.limit {
        RadiusLimit::Published { radius, .. } => Some(Length(*radius)),
        RadiusLimit::NoPublishedLimit => None,
    };
    /// Where it is published.
    source(finding) -> Option<Source> = match &finding.limit {
        RadiusLimit::Published { source, .. } => Some(Source(source.clone())),
        RadiusLimit::NoPublishedLimit => None,
    };
}

part! {
    /// A hole and the bend nearest to it.
    HoleFinding(core_trim::HoleFinding) in "seamwright.trim",
    shown finding: format_args!("{}: {} from {}", finding.hole, finding.distance, finding.bend);

    /// The hole.
    hole(finding) -> String = finding.hole.clone();
    /// The nearest bend by its index, or ``start-hem`` or ``end-hem``.
    bend(finding) -> FlatPart = finding.bend.into();
    /// From the hole's edge to that bend's nearer tangent line; negative where the hole reaches into the bend.
    distance(finding) -> Length = Length(finding.distance);
}
