//! A job whose roof has a cricket: its planes are laid, its lines are flashed.

#![cfg(feature = "serde")]

use super::test_jobs::{demo_with, work};
use crate::assembly::PanEndOn;
use crate::error::ErrorKind;
use crate::junction::Side;
use crate::num;
use crate::record::Calculation;
use crate::roof::LineKind;
use crate::units::{AreaUnit, Length};
use serde_json::json;

fn with_cricket(pitch: &str) -> serde_json::Value {
    // The demo's exhaust curb, widened to 8 ft.
    let corner = |x: &str, y: &str| json!({"x": x, "y": y});
    let ring = json!([corner("20'", "25'-0 3/8\""), corner("28'", "25'-0 3/8\""), corner("28'", "27'-6 3/8\""), corner("20'", "27'-6 3/8\"")]);
    let mut job = demo_with("roof.planes[1].shape.plan.holes[0].ring", ring);
    job["roof"]["crickets"] = json!([{"plane": "main north", "hole": "exhaust curb", "shape": {"pitch": pitch}}]);
    job["layout"]["planes"].as_array_mut().unwrap().push(json!({"plane": "main north exhaust curb cricket left", "start": "right"}));
    job
}

#[test]
fn its_planes_are_laid_and_its_lines_flashed() {
    let packet = work(&with_cricket("8:12")).unwrap();
    let cricket = &packet.roof.crickets()[0];
    // Half of 8 ft at one pitch with the roof: 4 ft up the plan.
    assert_eq!((cricket.figures.ridge, cricket.figures.height), (Length::feet(4), Length::inches(32)));
    let names: Vec<&str> = packet.planes.iter().map(|p| p.name.as_str()).collect();
    assert_eq!(names[names.len() - 2..], ["main north exhaust curb cricket left", "main north exhaust curb cricket right"]);
    for plane in &packet.planes[names.len() - 2..] {
        assert!(!plane.laid.panels.is_empty(), "{}", plane.name);
        let kinds: Vec<LineKind> = plane.lines.iter().map(|l| packet.roof.lines()[*l].kind).collect();
        assert!([LineKind::Ridge, LineKind::Valley, LineKind::CurbSide].iter().all(|k| kinds.contains(k)) && kinds.len() == 3, "{kinds:?}");
        // As long as the valley's way up the slope lets them be: the seam at 16 in from the ridge's end of the curb has 4 ft less 16 in.
        assert!(plane.laid.panels.iter().all(|p| p.finished < Length::inches(63)));
    }
    // Both valleys are pans with their cleats, and the panels of the roof end at them; no pan stands behind the curb itself.
    let valleys: Vec<_> = packet.junctions.iter().filter(|j| j.kind == LineKind::Valley && j.first.plane == cricket.plane).collect();
    assert_eq!(valleys.len(), 2);
    for valley in valleys {
        assert!(valley.along.sides.iter().all(|s| !s.bays.is_empty()), "{}", valley.name);
        assert_eq!(valley.along.trims[0].length.line, cricket.figures.valley);
        assert!((valley.along.sides[0].meeting.degrees() - cricket.figures.roof_meeting.degrees()).abs() < 1e-9);
    }
    assert!(packet.junctions.iter().all(|j| j.kind != LineKind::CurbBack));
    // Each pan runs on at both ends, under the ridge and out on the roof beside the curb, and every corner of the cricket has its order.
    let valleys: Vec<_> = packet.junctions.iter().filter(|j| j.kind == LineKind::Valley && j.first.plane == cricket.plane).collect();
    for valley in &valleys {
        let run = valley.along.trims[0].length;
        // On the roof's side the pan's end is cut level, 8 in down the slope from the curb's corner; on the cricket's along the curb.
        let cut = valley.pan_end.as_ref().unwrap();
        assert!(run.ends.at_start == cut.run_on || run.ends.at_end == cut.run_on, "{run:?}");
        let on = |side| cut.leg(side).on;
        let (roof, small) = if valley.first.plane == cricket.plane { (Side::First, Side::Second) } else { (Side::Second, Side::First) };
        assert_eq!((on(roof), on(small)), (PanEndOn::Roof, PanEndOn::Against));
        let meeting = valley.along.sides.iter().find(|s| s.side == roof).unwrap().meeting;
        let leg = cut.leg(roof);
        let at_line = leg.at_centre.mm()
            - valley.section.lines.iter().find(|l| l.side == roof && l.name == "pan centreline").unwrap().from_line.mm() * num::tan_deg(meeting.degrees());
        assert!((at_line - 203.2 / num::cos_deg(meeting.degrees())).abs() < 1e-6, "{leg:?}");
        assert!(cut.leg(small).at_edge.is_negative() && cut.run_on == leg.at_edge);
        let beads: Vec<_> = valley.along.beads.iter().filter(|b| b.name.contains("pan's end")).map(|b| b.length).collect();
        assert_eq!(beads, [cut.bead_length]);
        assert_eq!(valley.along.cautions.iter().filter(|c| c.code().number == 7016).count(), 1, "{}", valley.name);
        // The sealed line passes over the end.
        assert!(valley.sealed.iter().all(|s| s.check.continuous), "{:?}", valley.sealed);
        // Cleats end with the line: beside the curb, and where the panels of the roof go on.
        for cleat in valley.along.trims.iter().filter(|t| t.name == "offset cleat") {
            assert!(cleat.length.ends.at_start == Length::ZERO || cleat.length.ends.at_end == Length::ZERO);
            assert!(cleat.length.run <= valley.along.trims[0].length.run);
        }
    }
    assert!(packet.corners.cautions.iter().all(|c| c.code().number != 7005 || !c.message().contains("curb")), "{:?}", packet.corners.cautions);
}

#[test]
fn its_refusals_stand_in_the_jobs_own_path() {
    let e = work(&with_cricket("24:12")).unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "roof.crickets[0].shape"));
    assert!(e.message().contains("main north"), "{e}");
    let mut job = with_cricket("8:12");
    job["layout"]["planes"][0]["plane"] = json!("main north curb cricket left");
    let e = work(&job).unwrap_err();
    assert!(e.path() == "layout.planes[0].plane" && e.allowed().unwrap().contains("exhaust curb cricket right"), "{e}");
    // Valleys too flat for the detail's metal: the valley's own section says so.
    let e = work(&with_cricket("1:12")).unwrap_err();
    assert!(e.to_string().contains("the valley is too flat"), "{e}");
}

/// The demo's planes fall at 6:12, the cricket's at 8:12; its curb lies from 20 ft to 28 ft across the plan and its upper corners 25 ft 0 3/8 in up it.
#[test]
fn panels_under_a_pan_that_runs_out_are_broken_where_it_ends() {
    let packet = work(&with_cricket("8:12")).unwrap();
    let lay = packet.planes.iter().find(|p| p.name == "main north").unwrap();
    let before = super::test_jobs::demo_packet().plane("main north").unwrap();
    assert!(before.layout.breaks.is_empty() && before.broken_by.is_empty() && lay.layout.breaks.len() == 2);
    let whole = lay.layout.clone().with_breaks(Vec::new()).compute().unwrap();
    let edges: Vec<_> = lay.layout.outline.edges().collect();
    for (k, (b, &valley)) in lay.layout.breaks.iter().zip(&lay.broken_by).enumerate() {
        let junction = packet.junctions.iter().find(|j| j.line == valley).unwrap();
        // The valley's lower end in this plane, and the pan's lap below it.
        let edge = edges[lay.lines.iter().position(|l| *l == valley).unwrap()];
        let (low, high) = if edge.from.y < edge.to.y { (edge.from, edge.to) } else { (edge.to, edge.from) };
        assert!(b.at == low.y && (b.from == low.x || b.to == low.x));
        assert_eq!((b.below.allowance().unwrap(), b.above.allowance().unwrap()), (Length::ZERO, Length::inches(8)));
        // The pan's outer corner, from the valley's line: its edge so far out, met by the level line 8 in below.
        let (dx, dy) = ((high.x - low.x).length().unwrap().mm(), (high.y - low.y).length().unwrap().mm());
        let edge = junction.section.lines.iter().find(|l| l.side == Side::Second && l.name == "pan edge").unwrap().from_line.mm();
        let first = junction.first.plane == lay.plane;
        let edge = if first { junction.section.lines.iter().find(|l| l.side == Side::First && l.name == "pan edge").unwrap().from_line.mm() } else { edge };
        let out = edge * num::hypot(dx, dy) / dy + 203.2 * dx.abs() / dy;
        let reach = (b.to - b.from).length().unwrap().mm();
        assert!((reach - out).abs() < 1e-6, "{reach} {out}");
        // Every panel that the pan reaches into is in two there, over its whole width; the pieces lap by the 8 in of the pan.
        let [below, above] = [0, 1].map(|n| lay.lines.len() + 2 * k + n);
        let upper: Vec<_> = lay.laid.panels.iter().filter(|p| p.lower.iter().any(|e| e.edge == above)).collect();
        let lower: Vec<_> = lay.laid.panels.iter().filter(|p| p.upper.iter().any(|e| e.edge == below)).collect();
        let strips = |of: &[&crate::layout::LaidPanel]| of.iter().map(|p| p.strip).collect::<Vec<_>>();
        assert_eq!(strips(&upper), strips(&lower));
        assert!(lay.laid.panels.iter().filter(|p| p.left < b.to && b.from < p.right).all(|p| strips(&upper).contains(&p.strip)));
        let plain = upper.iter().zip(&lower).filter(|(u, l)| u.lower.len() == 1 && l.upper.len() == 1);
        assert!(plain.clone().count() == 1);
        for (u, l) in plain {
            let whole = whole.panels.iter().find(|p| p.strip == u.strip).unwrap();
            assert!(((u.finished.mm() + l.finished.mm()) - (whole.finished.mm() + 203.2)).abs() < 1e-6, "{} {} {}", u.finished, l.finished, whole.finished);
        }
        // Beads in the laps beside the pan: two, from its outer corner to the seam beyond it.
        let far = if b.from == low.x { upper.iter().map(|p| p.right).max() } else { upper.iter().map(|p| p.left).min() }.unwrap();
        let rest = if b.from == low.x { (far - b.to).length() } else { (b.from - far).length() }.unwrap();
        let beads: Vec<_> = junction.along.beads.iter().filter(|b| b.name == "beads in the panels' laps beside the pan").map(|b| b.length).collect();
        assert_eq!(beads, [(rest * 2).length().unwrap()]);
    }
    // Four pieces more than without, in the list too; nothing else of the plane is covered twice or left bare.
    assert_eq!(lay.laid.panels.len(), whole.panels.len() + 4);
    assert!((lay.laid.covered.get(AreaUnit::SquareFoot) - whole.covered.get(AreaUnit::SquareFoot)).abs() < 1e-9);
    assert_eq!(lay.laid.groups.iter().map(|g| g.count).sum::<u64>(), lay.laid.panels.len() as u64);
}

#[test]
fn a_pan_that_runs_out_without_a_lap_is_refused() {
    let mut job = with_cricket("8:12");
    job["supplies"]["trims"]["corners"] = json!({ "usual": "0 in", "by_kind": [], "source": "common-practice" });
    let e = work(&job).unwrap_err();
    assert!(e.path() == "supplies.trims.corners" && e.cure().is_some(), "{e}");
}
