//! A job whose roof has a cricket: its planes are laid, its lines are flashed.

#![cfg(feature = "serde")]

use super::test_jobs::{demo_with, work};
use crate::assembly::PanEndOn;
use crate::error::ErrorKind;
use crate::junction::Side;
use crate::num;
use crate::roof::LineKind;
use crate::units::Length;
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
