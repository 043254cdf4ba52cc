//! The metals of the whole roof together: from the sections, which parts touch; from the roof's own drainage, which drain on which.

use super::input::Job;
use super::packet::JunctionItem;
use super::trims::TrimItem;
use crate::error::Error;
use crate::junction::{Adjoining, PathFace, Side, WaterLevel};
use crate::metal::{MetalMeeting, MetalPart, MetalsTogether, PartsMeet};
use crate::record::{Calculation, Recorder};
use crate::roof::{Outfall, Roof, Water};
use crate::trim::Edge;
use std::collections::BTreeMap;

/// The parts of the roof: the panels of each plane, each trim on each line, each gutter.
struct Parts<'a> {
    out: MetalsTogether,
    /// The trims by line and number in the section.
    trims: BTreeMap<(usize, usize), usize>,
    junctions: &'a [JunctionItem],
}

fn add(out: &mut MetalsTogether, name: impl Into<String>, alloy: crate::metal::Alloy) -> usize {
    out.parts.push(MetalPart { name: name.into(), alloy });
    out.parts.len() - 1
}

impl<'a> Parts<'a> {
    /// The panels of a plane have its number.
    fn new(job: &Job, roof: &Roof, junctions: &'a [JunctionItem], items: &[TrimItem]) -> Parts<'a> {
        let mut out = MetalsTogether { parts: Vec::new(), touches: Vec::new(), drains: Vec::new() };
        for _ in roof.planes() {
            add(&mut out, "panels", job.metals.panel.alloy());
        }
        let mut trims = BTreeMap::new();
        for junction in junctions {
            for (k, trim) in junction.section.trims.iter().enumerate() {
                let made = items.iter().find(|i| i.name == *trim.name && i.profile.thickness == trim.profile.thickness);
                if let Some(item) = made {
                    trims.insert((junction.line, k), add(&mut out, trim.name.to_string(), item.sheet.alloy()));
                }
            }
        }
        Parts { out, trims, junctions }
    }

    fn touch(&mut self, first: usize, second: usize, at: &str) {
        self.out.touches.push(PartsMeet { first, second, at: at.to_owned() });
    }

    fn drain(&mut self, first: usize, second: usize, at: &str) {
        if first != second {
            self.out.drains.push(PartsMeet { first, second, at: at.to_owned() });
        }
    }

    fn trim(&self, junction: &JunctionItem, name: &str) -> Option<usize> {
        let number = junction.section.trims.iter().position(|t| t.name == name)?;
        self.trims.get(&(junction.line, number)).copied()
    }

    /// What touches in one section: metal on metal, hems on their cleats, panels on what their folds hook.
    fn touches(&mut self, junction: &JunctionItem) {
        let solved = &junction.section;
        let of = |k: usize| self.trims.get(&(junction.line, k)).copied();
        let mut pairs: Vec<(usize, usize)> = solved.touching().into_iter().filter_map(|(a, b)| of(a).zip(of(b))).collect();
        let cleat = solved.trims.iter().position(|t| t.name == "continuous cleat").and_then(of);
        for (k, trim) in solved.trims.iter().enumerate().filter(|(_, t)| !t.is_holder()) {
            let hooks = [&trim.profile.start_edge, &trim.profile.end_edge].into_iter().any(|e| matches!(e, Edge::OpenHem { .. }));
            pairs.extend(cleat.filter(|_| hooks).zip(of(k)));
        }
        for end in solved.ends.iter().filter(|e| e.end.fold.is_positive()) {
            let side = match end.side {
                Side::First => Some(junction.first),
                Side::Second => junction.second,
                Side::Riser => None,
            };
            let holders = solved.trims.iter().enumerate().filter(|(_, t)| t.is_holder() && t.name != "continuous cleat").filter_map(|(k, _)| of(k));
            // With no strip or cleat the fold hooks the pan itself.
            let hooked: Vec<usize> = holders.chain(self.trim(junction, "valley pan").filter(|_| solved.trim("offset cleat").is_none())).collect();
            pairs.extend(side.into_iter().flat_map(|s| hooked.iter().map(move |h| (s.plane, *h))));
        }
        pairs.sort_unstable();
        pairs.dedup();
        for (a, b) in pairs {
            self.touch(a, b, &junction.name);
        }
    }

    /// What drains on what in one section, as its paths of metal have it.
    fn paths(&mut self, junction: &JunctionItem) {
        for path in junction.water.paths.iter().filter(|p| p.level == WaterLevel::Metal && p.water != Water::Along) {
            let plane = match path.face {
                PathFace::First => Some(junction.first.plane),
                PathFace::Second => junction.second.map(|s| s.plane),
                // A curb's metal covers the edge of its own plane.
                PathFace::FirstUpright => Some(junction.first.plane),
                PathFace::SecondUpright => junction.second.map(|s| s.plane),
                PathFace::Wall | PathFace::Riser => None,
            };
            for lap in &path.check.laps {
                let part = |name: &str| if name == "panels" { plane } else { self.trim(junction, name) };
                if let Some((a, b)) = part(&lap.upper).zip(part(&lap.lower)) {
                    self.drain(a, b, &junction.name);
                }
            }
        }
    }

    /// A gutter below an eave: what runs over the eave's trim, and the panels' noses, run into it.
    fn gutter(&mut self, job: &Job, junction: &JunctionItem) {
        let Some(alloy) = job.metals.gutter.filter(|_| junction.section.adjoining.iter().any(|a| matches!(a, Adjoining::Gutter { .. }))) else { return };
        let gutter = add(&mut self.out, "gutter", alloy);
        self.drain(junction.first.plane, gutter, &junction.name);
        if let Some(trim) = self.trim(junction, "eave trim") {
            self.drain(trim, gutter, &junction.name);
        }
    }

    /// What the roof itself says: a plane onto a plane, a plane into a valley, a valley onto what it runs out on.
    fn drains(&mut self, roof: &Roof) {
        for drain in roof.drains() {
            let Some(line) = roof.lines().get(drain.line) else { continue };
            match drain.to {
                Outfall::Plane(lower) => self.drain(drain.plane, lower, &line.name),
                Outfall::Valley => {
                    let Some(valley) = self.junctions.iter().find(|j| j.line == drain.line) else { continue };
                    let Some(pan) = self.trim(valley, "valley pan") else { continue };
                    self.drain(drain.plane, pan, &line.name);
                    // At its lower end it runs out over the eaves that begin there.
                    let low = if line.start.z <= line.end.z { line.start } else { line.end };
                    let near = roof.tolerance();
                    let meets = |v: crate::roof::Vertex| {
                        [(v.x, low.x), (v.y, low.y), (v.z, low.z)].iter().all(|(a, b)| (*a - *b).length().is_ok_and(|d| d.mm().abs() <= near.mm()))
                    };
                    let eaves: Vec<usize> = self
                        .junctions
                        .iter()
                        .filter(|j| roof.lines().get(j.line).is_some_and(|l| l.kind == crate::roof::LineKind::Eave && (meets(l.start) || meets(l.end))))
                        .filter_map(|j| self.trim(j, "eave trim"))
                        .collect();
                    for eave in eaves {
                        self.drain(pan, eave, &line.name);
                    }
                }
                _ => {}
            }
        }
    }
}

/// Every two kinds of part whose metals do not go together, with the places.
pub(super) fn of<R: Recorder>(r: &mut R, job: &Job, roof: &Roof, junctions: &[JunctionItem], trims: &[TrimItem]) -> Result<Vec<MetalMeeting>, Error> {
    let mut parts = Parts::new(job, roof, junctions, trims);
    for junction in junctions {
        parts.touches(junction);
        parts.paths(junction);
        parts.gutter(job, junction);
    }
    parts.drains(roof);
    let together = parts.out;
    r.part(|| together.title(), |r| together.run(r))
}
