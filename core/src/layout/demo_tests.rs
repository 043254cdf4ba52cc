//! The roof of the demo job: real in size, with every kind of line that the job must show, and nothing to warn of.

#![cfg(feature = "serde")]

use super::{EdgeUse, LaidPlane, Layout, Start};
use crate::panel::{Panel, PanelEnd, Seam};
use crate::record::Calculation;
use crate::roof::{Edge, LineKind, Roof, RoofInput};
use crate::units::{AreaUnit, Length};

fn demo() -> Roof {
    let job: serde_json::Value = serde_json::from_str(include_str!("../../examples/demo_job.json")).unwrap();
    let input: RoofInput = serde_json::from_value(job["roof"].clone()).unwrap();
    input.compute().unwrap()
}

/// Panels that reach the lines, without allowances.
fn laid(roof: &Roof) -> Vec<LaidPlane> {
    let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) }).unwrap();
    let lay = |plane: &crate::roof::Plane| {
        let bare = |e: &Edge| if e.from.x == e.to.x { EdgeUse::Side } else { EdgeUse::End(PanelEnd::hold_back(Length::ZERO)) };
        Layout::new(plane.outline().clone(), panel, Start::Left, bare).unwrap().compute().unwrap()
    };
    roof.planes().iter().map(lay).collect()
}

#[test]
fn every_line_has_its_name_and_every_kind_occurs() {
    let roof = demo();
    let counts: Vec<(&str, usize)> = LineKind::ALL.iter().map(|k| (k.name(), roof.lines_of(*k).count())).filter(|c| c.1 > 0).collect();
    assert_eq!(
        counts,
        [
            // The hall's and the wing's.
            ("ridge", 2),
            ("hip", 2),
            ("valley", 2),
            // The hall onto its porch, and the hall over its skirt.
            ("steep-to-shallow transition", 1),
            ("shallow-to-steep transition", 1),
            // The hall's eaves run on beside the porch, the wing and the skirt.
            ("eave", 11),
            ("rake", 9),
            ("headwall", 1),
            ("sidewall", 1),
            ("curb front", 1),
            ("curb side", 2),
            ("curb back", 1),
        ]
    );
    assert_eq!(roof.cautions(), []);
}

#[test]
fn the_planes_cover_the_building() {
    let roof = demo();
    assert_eq!(roof.planes().len(), 8);
    assert!(roof.planes().iter().all(|p| p.area().get(AreaUnit::SquareFoot) > 50.0));
    // Rectangles of the hall, its wing, porch, skirt and lean-to, less the curb, in inches.
    let footprint: f64 = 865.75 * 461.25 + 304.5 * 211.5 + 328.5 * 126.75 + 414.75 * 40.5 + 138.75 * 261.75 - 24.0 * 30.0;
    let plan: f64 = roof.planes().iter().map(|p| p.plan_area().get(AreaUnit::SquareInch)).sum();
    assert!((plan - footprint).abs() < 1e-6 * footprint, "{plan} {footprint}");
}

#[test]
fn planes_meet_exactly() {
    let roof = demo();
    for line in roof.lines() {
        for side in line.sides() {
            let plane = &roof.planes()[side.plane];
            // Each side runs with its plane on its left, so the other plane's runs back.
            let ends = if side == &line.side { [line.start, line.end] } else { [line.end, line.start] };
            for (own, end) in [side.start, side.end].into_iter().zip(ends) {
                let at = plane.to_space(own).unwrap();
                for (a, b) in [(at.x, end.x), (at.y, end.y), (at.z, end.z)] {
                    let off = (a - b).length().unwrap();
                    assert!(off.pm().abs() <= 100, "{} on {}: {off}", line.name, plane.name());
                }
            }
        }
    }
}

#[test]
fn its_panels_are_as_many_and_as_long_as_on_a_real_roof() {
    let roof = demo();
    let laid = laid(&roof);
    let count: usize = laid.iter().map(|l| l.panels.len()).sum();
    assert!((180..=260).contains(&count), "{count}");
    let longest = laid.iter().flat_map(|l| &l.panels).map(|p| p.finished).max().unwrap();
    assert!(longest > Length::feet(20) && longest < Length::feet(40), "{longest}");
    // Only the corners of hips and valleys have short ones.
    let short = laid.iter().flat_map(|l| &l.panels).filter(|p| p.finished < Length::feet(4));
    assert!(short.clone().all(|p| p.lower.iter().chain(&p.upper).any(|e| e.skew.degrees() != 0.0) || p.notched), "{}", short.count());
    let covered: f64 = laid.iter().map(|l| l.covered.get(AreaUnit::SquareInch)).sum();
    let area = roof.area().get(AreaUnit::SquareInch);
    assert!((covered - area).abs() < 1e-9 * area, "{covered} {area}");
}
