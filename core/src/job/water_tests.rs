//! Water over a whole job: sealed lines, paths, the order of work, underlayment and unlike metals.

#![cfg(feature = "serde")]

use super::test_jobs::{annexe_with, at, demo_json, demo_packet, demo_with, read, work};
use super::{OrderGroup, Packet};
use crate::assembly::SealNeed;
use crate::error::ErrorKind;
use crate::junction::Shelter;
use crate::metal::{Alloy, PairWay};
use crate::record::Calculation;
use crate::roof::LineKind;
use crate::units::{AreaUnit, Length};
use serde_json::json;

fn breaks(packet: &Packet, line: &str) -> Vec<SealNeed> {
    packet.junction(line).unwrap().sealed.iter().flat_map(|s| &s.check.breaks).map(|b| b.missing).collect()
}

#[test]
fn every_line_of_the_demo_is_looked_at() {
    let packet = demo_packet();
    for junction in &packet.junctions {
        assert!(!junction.work.is_empty() && !junction.water.paths.is_empty(), "{}", junction.name);
        let rows = junction.along.rows.len();
        assert_eq!(junction.water.rows.len(), rows, "{}", junction.name);
        let struck: usize = junction.work.iter().map(|s| s.lines.len()).sum();
        assert_eq!(struck, junction.section.lines.len(), "{}", junction.name);
        // What closes is sealed on each side that closes.
        let closed = junction.along.closures.len();
        assert!(junction.sealed.len() >= closed, "{}", junction.name);
        // A caution of the packet for each side that breaks.
        for seal in junction.sealed.iter().filter(|s| !s.check.continuous) {
            let subject = format!("lines.{}.sealed", junction.name);
            assert!(packet.cautions.iter().any(|c| c.code().number == 7017 && c.subject() == subject), "{subject}: {:?}", seal.check.breaks[0]);
        }
    }
    // Screws of every kind lie under something or in a face; only what each section names itself stands in the water.
    for junction in packet.junctions.iter().filter(|j| !matches!(j.kind, LineKind::CurbFront | LineKind::Sidewall | LineKind::CurbSide)) {
        assert!(junction.water.rows.iter().all(|r| r.shelter != Shelter::None), "{}: {:?}", junction.name, junction.water.rows);
    }
}

#[test]
fn hollows_left_open_break_the_line_and_order_no_plugs() {
    let plugs = |p: &Packet| p.order.iter().filter(|l| l.item == "seam plug").count();
    let usual = demo_packet();
    let mut json = demo_json();
    *at(&mut json, "supplies.sealant.line") = json!({ "plugs": false });
    let open = work(&json).unwrap();
    assert_eq!((plugs(usual), plugs(&open)), (1, 0));
    let seams: usize = open.junction("ridge 1").unwrap().along.plugs.iter().map(|p| p.count).sum();
    let missing = |p: &Packet| breaks(p, "ridge 1").into_iter().filter(|n| *n == SealNeed::Plug).count();
    assert_eq!((missing(usual), missing(&open)), (0, seams));
    // Trims that butt break it at each joint; a limit below nothing is refused where it stands.
    *at(&mut json, "supplies.sealant.line") = json!({ "bedded_laps": false });
    let dry = work(&json).unwrap();
    let laps = |p: &Packet| p.junctions.iter().flat_map(|j| &j.sealed).flat_map(|s| &s.check.breaks).filter(|b| b.missing == SealNeed::TrimLap).count();
    let joints: usize = dry
        .trims
        .iter()
        .filter(|t| !matches!(t.name.as_str(), "continuous cleat" | "offset cleat" | "hook strip"))
        .flat_map(|t| &t.runs)
        .map(|r| r.pieces.len() - 1)
        .sum();
    let pan_ends = dry.junctions.iter().filter(|j| j.pan_end.is_some()).count();
    assert!(joints > 0 && pan_ends > 0);
    assert_eq!((laps(usual), laps(&dry)), (0, joints + pan_ends));
    *at(&mut json, "supplies.sealant.line") = json!({ "longest_gap": "-1 mm", "stops_short": { "at_start": "-1 mm" } });
    let e = work(&json).unwrap_err();
    assert_eq!((e.path(), e.others()[0].path()), ("supplies.sealant.line.longest_gap", "supplies.sealant.line.stops_short.at_start"));
}

#[test]
fn laps_under_a_rule_are_named_by_their_line() {
    let rule = json!({ "panels_over_metal": { "least": "30 in", "source": "common-practice" } });
    let packet = work(&demo_with("supplies.water", rule)).unwrap();
    let told = |p: &Packet| p.cautions.iter().filter(|c| c.code().number == 6093).map(|c| c.subject().to_owned()).collect::<Vec<_>>();
    let (usual, strict) = (told(demo_packet()), told(&packet));
    assert!(!usual.iter().any(|s| s.starts_with("lines.eave")) && strict.iter().any(|s| s == "lines.eave 1.water"), "{usual:?}");
    assert_eq!(usual.iter().filter(|s| s.contains("ridge")).count(), strict.iter().filter(|s| s.contains("ridge")).count());
    let e =
        read(&demo_with("supplies.water", json!({ "metal_over_panels": { "least": "-1 in", "source": "common-practice" } }))).unwrap().compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "supplies.water.metal_over_panels.least"));
}

#[test]
fn underlayment_is_taken_off_ordered_and_listed() {
    let roll = json!({ "width": "48 in", "length": "250 ft", "rated": "130 degC" });
    let membrane = json!({ "width": "36 in", "length": "66 ft" });
    let supply = json!({
        "roll": roll,
        "eave": { "roll": membrane, "overhang": "12 in", "head_lap": "4 in", "end_lap": "6 in" },
        "valley": { "roll": membrane, "end_lap": "6 in" },
    });
    let packet = work(&demo_with("supplies.underlayment", supply.clone())).unwrap();
    let plan = packet.underlayment.as_ref().unwrap();
    assert_eq!(plan.planes.len(), packet.planes.len());
    for (plane, own) in plan.planes.iter().zip(packet.roof.planes()) {
        let field = plane.field.as_ref().unwrap();
        // The field covers its plane, or all of it above the membrane along its foot.
        let area = own.area().get(AreaUnit::SquareMetre);
        let covered = field.covered.get(AreaUnit::SquareMetre);
        let from = field.courses[0].foot;
        assert!(if from == Length::ZERO { (covered - area).abs() < 1e-6 } else { covered < area }, "{}: {covered} of {area}", plane.plane);
        assert!(field.laid >= field.covered);
        for eave in &plane.eaves {
            assert!(eave.band.covers >= eave.band.least);
        }
    }
    let eaves: usize = plan.planes.iter().map(|p| p.eaves.len()).sum();
    assert_eq!(eaves, packet.roof.lines_of(LineKind::Eave).count());
    assert_eq!(plan.valleys.len(), packet.roof.lines_of(LineKind::Valley).count());
    let ordered: Vec<(&str, u64)> = packet.order.iter().filter(|l| l.group == OrderGroup::Underlayment).map(|l| (l.item.as_str(), l.count)).collect();
    assert_eq!(
        ordered,
        [
            ("underlayment", u64::from(plan.field_rolls)),
            ("membrane along eaves", u64::from(plan.eave_rolls)),
            ("membrane under valleys", u64::from(plan.valley_rolls))
        ]
    );
    // Rolled out, all of them hold what is laid.
    let net = |item: &str| packet.order.iter().find(|l| l.item == item).and_then(|l| l.net).unwrap();
    assert!(net("underlayment").mm() <= f64::from(plan.field_rolls) * Length::feet(250).mm());
    // The membranes' rating is not known: each is asked about.
    let hot: Vec<&str> = packet.cautions.iter().filter(|c| c.code().number == 5201).map(|c| c.subject()).collect();
    assert_eq!(hot, ["supplies.underlayment.eave.roll.rated", "supplies.underlayment.valley.roll.rated"]);
    let mut bad = supply;
    bad["rule"] = json!({ "head_lap": "48 in", "end_lap": "-1 in", "source": "common-practice" });
    bad["eave"]["overhang"] = json!("-1 in");
    bad["valley"]["end_lap"] = json!("60 ft");
    let e = work(&demo_with("supplies.underlayment", bad)).unwrap_err();
    let paths: Vec<&str> = std::iter::once(e.path()).chain(e.others().iter().map(crate::error::Error::path)).collect();
    let under = |p: &str| format!("supplies.underlayment.{p}");
    assert_eq!(paths, [under("rule.end_lap"), under("rule.head_lap"), under("eave.overhang"), under("valley.end_lap")]);
}

#[test]
fn unlike_metals_are_found_by_touch_and_by_water() {
    // The demo is of one family throughout.
    assert!(demo_packet().metals_met.is_empty());
    // Copper gutters below it take its water, which does them no harm; copper trims touch it and drain on it.
    let mut json = demo_json();
    json["metals"]["gutter"] = json!("copper");
    assert!(work(&json).unwrap().metals_met.is_empty());
    let sheets = json["metals"]["trims"].as_array().unwrap().len();
    let cleat = json["metals"]["trims"][1]["thickness"].clone();
    assert!(sheets >= 2);
    json["metals"]["trims"][0] = json!({ "alloy": "copper", "thickness": json["metals"]["trims"][0]["thickness"].clone() });
    json["metals"]["gutter"] = json!("aluminium-3003");
    let packet = work(&json).unwrap();
    let of = |first: &str, second: &str, way: PairWay| packet.metals_met.iter().find(|m| m.first == first && m.second == second && m.way == way);
    // The cap drains on the panels it covers; from there into the gutter.
    let cap = packet.junction("ridge 1").unwrap().section.trims[0].name.to_string();
    let met = of(&cap, "panels", PairWay::RunOff).unwrap_or_else(|| panic!("{:?}", packet.metals_met));
    assert_eq!(met.first_alloy, Alloy::Copper);
    assert!(met.places.iter().any(|p| p == "ridge 1"), "{:?}", met.places);
    assert!(
        of(&cap, "gutter", PairWay::RunOff).is_some_and(|m| m.places.iter().any(|p| p.contains("ridge 1, ") && p.contains("eave"))),
        "{:?}",
        packet.metals_met
    );
    // And the strip lies on the eave trim.
    assert!(of("eave trim", "hook strip", PairWay::Contact).is_some(), "{cleat}: {:?}", packet.metals_met);
    let told = packet.cautions.iter().filter(|c| c.code().number == 2104).count();
    assert_eq!(told, packet.metals_met.len());
}

#[test]
fn the_upper_edge_of_a_step_has_its_membrane_as_the_eaves_beside_it_have() {
    let supply = json!({
        "roll": { "width": "48 in", "length": "250 ft" },
        "eave": { "roll": { "width": "36 in", "length": "66 ft" }, "overhang": "12 in", "head_lap": "4 in", "end_lap": "6 in" },
    });
    let packet = work(&annexe_with("supplies.underlayment", supply)).unwrap();
    let plan = packet.underlayment.as_ref().unwrap();
    let [annexe, canopy] = &plan.planes[..] else { panic!("two planes") };
    let names = |p: &super::PlaneUnderlayment| p.eaves.iter().map(|e| e.name.clone()).collect::<Vec<_>>();
    // The annexe's foot: 20 ft of eave, 12 ft over the canopy, 6 ft of eave. The canopy's own foot, and nothing at its top.
    assert_eq!((names(annexe), names(canopy)), (vec!["eave 1".into(), "eave 2".into(), "step 1".into()], vec!["eave 3".into()]));
    // (12 + 24 in) / cos S along 3:12 is 37.11 in: two courses of 36 in with a head lap of 4 in, 68 in.
    let widths = [20.0, 6.0, 12.0];
    for (eave, feet) in annexe.eaves.iter().zip(widths) {
        let covers = eave.band.covers.mm();
        assert!((covers - 68.0 * 25.4).abs() < 1e-6);
        assert!((eave.laid.covered.get(AreaUnit::SquareMetre) - feet * 0.3048 * 68.0 * 0.0254).abs() < 1e-6, "{}", eave.name);
        assert_eq!(eave.laid.courses.len(), 2);
    }
    // All of the foot is covered: the field begins a head lap (IRC, 2 in) below the membrane's top on both planes.
    for plane in [annexe, canopy] {
        assert!((plane.field.as_ref().unwrap().courses[0].foot.mm() - 66.0 * 25.4).abs() < 1e-6, "{}", plane.plane);
    }
    let net = packet.order.iter().find(|l| l.item == "membrane along eaves").and_then(|l| l.net).unwrap();
    let laid: f64 = plan.planes.iter().flat_map(|p| &p.eaves).map(|e| e.laid.length.mm()).sum();
    assert!((net.mm() - laid).abs() < 1e-6);
}
