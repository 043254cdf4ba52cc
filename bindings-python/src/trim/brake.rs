//! Orders of bends at the brake.

use super::flat::Part as FlatPart;
use crate::document::document;
use crate::json::{dict, written};
use crate::names::name_of;
use crate::place::part;
use crate::units::{Angle, Length};
use pyo3::prelude::*;
use pyo3::types::PyDict;
use seamwright::trim as core_trim;

document! {
    /// The bends of a trim in the order in which the brake makes them. Computing gives the gauge list, and refuses an order in which anything is in the way.
    ///
    /// >>> from seamwright.trim import Bend, BendOrder, BendRule, Leg, NeutralFactor, Profile
    /// >>> legs = [Leg("a", "50 mm", "sheet-edge", "outer-corner"), Leg("b", "80 mm", "outer-corner", "sheet-edge")]
    /// >>> profile = Profile("1 mm", legs, [Bend("90 deg", "up", "1 mm")], "upper")
    /// >>> plan = {"brake": {"clamp_line": "sight-line"}, "steps": [{"bend": {"body": 0}, "gauged": "start", "face_up": "upper"}]}
    /// >>> order = BendOrder.from_dict({"profile": profile, "rule": BendRule.neutral_axis(NeutralFactor.MIDDLE), "plan": plan})
    /// >>> order.compute().steps[0].gauge
    /// Length('49 mm')
    BendOrder(core_trim::BendOrder) in "seamwright.trim" gives OrderSheet
}

document! {
    /// Whether an order works: as `BendOrder`, with what is in the way as a result instead of a refusal.
    OrderTrial(core_trim::OrderTrial) in "seamwright.trim" gives OrderVerdict
}

document! {
    /// A search for an order of bends in which nothing is in the way.
    OrderSearch(core_trim::OrderSearch) in "seamwright.trim" gives OrderFound
}

part! {
    /// The gauge list of an order that works.
    OrderSheet(core_trim::OrderSheet) in "seamwright.trim",
    shown sheet: format_args!("{} steps, {} turns, {} flips", sheet.steps.len(), sheet.turns, sheet.flips);

    /// The steps in order.
    steps(sheet, here) -> Vec<GaugeStep> = here.all("steps", &sheet.steps);
    /// How often the piece is turned end for end.
    turns(sheet) -> u32 = sheet.turns;
    /// How often its other face comes up.
    flips(sheet) -> u32 = sheet.flips;
}

part! {
    /// The verdict on an order.
    OrderVerdict(core_trim::OrderVerdict) in "seamwright.trim",
    shown verdict: format_args!("{} steps, {} faults", verdict.steps.len(), verdict.faults.len());

    /// Whether nothing is in the way.
    works(verdict) -> bool = verdict.works;
    /// What is in the way, step by step.
    faults(verdict, here) -> Vec<StepFault> = here.all("faults", &verdict.faults);
    /// The steps, as if each could be done.
    steps(verdict, here) -> Vec<GaugeStep> = here.all("steps", &verdict.steps);
    /// How often the piece is turned end for end.
    turns(verdict) -> u32 = verdict.turns;
    /// How often its other face comes up.
    flips(verdict) -> u32 = verdict.flips;
}

part! {
    /// What a search found.
    OrderFound(core_trim::OrderFound) in "seamwright.trim",
    shown found: format_args!("{} steps, {} nodes", found.steps.len(), found.nodes);

    /// What it can say: ``works``, ``none-works``, or ``effort-spent`` where it is not known whether an order works.
    outcome(found) -> String = name_of(&found.outcome)?;
    /// Turns and flips together, where an order works.
    handlings(found) -> Option<u32> = found.handlings;
    /// The nodes that were looked at.
    nodes(found) -> u32 = found.nodes;
    {
        /// The steps as a plan takes them, where an order works.
        #[getter]
        fn steps<'py>(&self, py: Python<'py>) -> PyResult<Vec<Bound<'py, PyDict>>> {
            self.core.steps.iter().map(|step| dict(py, &written(step)?)).collect()
        }
    }
}

part! {
    /// One step with its figures.
    GaugeStep(core_trim::GaugeStep) in "seamwright.trim",
    shown step: format_args!("{} to {}, gauge {}", step.bend, step.to, step.gauge);

    /// The bend by its index, or ``start-hem`` or ``end-hem``.
    bend(step) -> FlatPart = step.bend.into();
    /// The edge towards the back gauge: ``start`` or ``end``.
    gauged(step) -> String = name_of(&step.gauged)?;
    /// The face that lies upwards: ``upper`` or ``lower``.
    face_up(step) -> String = name_of(&step.face_up)?;
    /// Whether the swung side goes ``up`` or ``down``.
    folds(step) -> String = name_of(&step.folds)?;
    /// How it is closed: ``swing`` or ``press``.
    way(step) -> String = name_of(&step.way)?;
    /// The bend before the step, from flat.
    before(step) -> Angle = Angle(step.from);
    /// The bend after the step, from flat.
    after(step) -> Angle = Angle(step.to);
    /// The angle that it is folded to, from which it springs back.
    folded_to(step) -> Angle = Angle(step.folded_to);
    /// Whether the piece is turned end for end before the step.
    turned(step) -> bool = step.handling.turned;
    /// Whether its other face comes up before the step.
    flipped(step) -> bool = step.handling.flipped;
    /// From the gauged edge to the bend line, along the sheet.
    from_edge(step) -> Length = Length(step.from_edge);
    /// From the gauged edge to the line that lies at the clamp line, along the sheet.
    clamp_line(step) -> Length = Length(step.clamp_line);
    /// What the back gauge is set to: from the clamp line to the outermost point of the clamped side as it lies in the brake.
    gauge(step) -> Length = Length(step.gauge);
    /// What of the sheet stands at the gauge, in words.
    stop(step) -> String = step.stop.to_string();
    /// Flat under the clamp: from the clamp line back to an edge or to a bend made before.
    clamped(step) -> Length = Length(step.clamped);
    /// Flat that is swung: from the clamp line on to an edge or to a bend made before.
    swung(step) -> Length = Length(step.swung);
}

part! {
    /// Why a step cannot be done.
    StepFault(core_trim::StepFault) in "seamwright.trim",
    shown fault: fault;

    /// The bend of the step.
    bend(fault) -> FlatPart = fault.bend().into();
    /// The bend's angle from flat when something hits; `None` where the flat is too short.
    at(fault) -> Option<Angle> = fault.at().map(Angle);
    /// What moves, in words.
    moving(fault) -> Option<String> = fault.bodies().map(|(moving, _)| moving.to_string());
    /// What it hits, in words.
    still(fault) -> Option<String> = fault.bodies().map(|(_, still)| still.to_string());
    /// The sentence.
    message(fault) -> String = fault.to_string();
}
