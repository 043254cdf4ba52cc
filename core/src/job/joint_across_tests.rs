//! Expansion joints across the panels in a job: what builds the upper planes up, what moves there, what crosses them, worked by hand; and what is refused.

#![cfg(feature = "serde")]

use super::test_jobs::{MALTINGS, at, changed, inch, near, plane, refused, work};
use super::*;
use crate::assembly::{Fixing, PairRule};
use crate::error::ErrorKind;
use crate::junction::Side;
use crate::layout::EdgeUse;
use crate::panel::{Hold, Reach};
use crate::practice;
use crate::record::Calculation;
use crate::roof::LineKind;
use crate::units::Length;
use serde_json::{Value, json};

/// Of the seam tops above the deck: underlayment, pan, seam, closure and tape of the job.
const PACKING: f64 = 1.0 / 16.0 + 0.0236 + 1.75 + 0.0276 + 1.0 / 16.0;
const JOINT: &str = "junctions.kinds[3].expansion-across";

fn maltings() -> Packet {
    Job::from_json(MALTINGS).unwrap().compute().unwrap()
}

fn maltings_with(changes: &[(&str, Value)]) -> Value {
    changed(MALTINGS, changes)
}

/// At 3:12 a run of 4 is sqrt(17) up the slope, by Pythagoras.
fn slope(run: f64) -> f64 {
    run * 17.0_f64.sqrt() / 4.0
}

#[test]
fn a_joint_ends_both_planes_and_builds_the_upper_one_up() {
    let packet = maltings();
    let joints: Vec<_> = packet.junctions.iter().filter(|j| j.kind == LineKind::ExpansionAcross).collect();
    assert_eq!(joints.iter().map(|j| j.name.as_str()).collect::<Vec<_>>(), ["expansion joint across 1", "expansion joint across 2"]);
    for (joint, names) in joints.iter().zip([["south lower", "south upper"], ["north lower", "north upper"]]) {
        let sides = [joint.first, joint.second.unwrap()];
        assert_eq!(sides.map(|s| packet.planes[s.plane].name.as_str()), names, "the lower is the first");
        assert_eq!(sides[0].levels.built_up, Length::ZERO);
        assert!(near(sides[1].levels.built_up, inch(PACKING)));
        let (below, above) = (joint.section.end(Side::First).unwrap(), joint.section.end(Side::Second).unwrap());
        assert_eq!((below.hold, above.hold), (Hold::Pins, Hold::Slides));
        // 11 in of upper flange, the cleat's front 8 in down it, half an inch before the nose.
        assert!(matches!(above.reach, Reach::HoldBack(d) if d == Length::inches(3)));
        let nose = joint.along.struck.iter().find(|l| l.name == "panel nose").unwrap();
        assert!(near(nose.from_line.exact, inch(2.5)) && joint.along.length == Length::feet(64));
        // Every corner of the flashing but its drip's lies as high over the lower deck as the packing over the upper one.
        let trim = joint.section.trim("transition trim").unwrap();
        let (sin, cos) = (1.0 / 17.0_f64.sqrt(), 4.0 / 17.0_f64.sqrt());
        for c in &trim.corners[1..] {
            assert!((c.z.mm() * cos - c.x.mm() * sin - inch(PACKING)).abs() < 1e-6, "{c:?}");
        }
        let upper = &packet.planes[sides[1].plane];
        let edge = upper.lines.iter().position(|l| *l == joint.line).unwrap();
        assert!(matches!(&upper.layout.edges[edge], EdgeUse::End(e) if e.fold == Length::parse("1 3/4\"").unwrap()));
        // 38 ft of plan, less 3 in at the cleat with 2 1/4 of gap and fold beyond it; less 2 in at the ridge with an inch turned up.
        let finished = slope(38.0 * 304.8) - inch(3.0) + inch(0.5 + 1.75) - inch(2.0) + inch(1.0);
        assert!(upper.laid.panels.iter().all(|p| near(p.finished, finished)), "{}", upper.laid.panels[0].finished.mm());
        // Held at the ridge, they move over all of that: 90 degF both ways at 6.7e-6 /degF.
        let heat = &packet.heat[sides[1].plane];
        assert_eq!(heat.pins.count(Fixing::Upper), upper.laid.panels.len());
        let moves = joint.moves.unwrap();
        assert!(near(moves.closes, 6.7e-6 * finished * 90.0) && near(moves.opens, 6.7e-6 * finished * 90.0));
        assert!(joint.water.cautions.is_empty() && joint.sealed.iter().all(|s| s.check.continuous), "{:?}", joint.water.cautions);
        let steps: Vec<_> = joint.work.iter().map(|w| w.does.as_ref()).collect();
        assert!(steps.iter().any(|s| s.contains("Build the deck above the joint up")) && steps.last().unwrap().contains("hook them on the cleat"));
        for name in ["transition trim", "offset cleat"] {
            let item = packet.trims.iter().find(|t| t.name == name && t.runs.iter().any(|r| r.line == Some(joint.line))).unwrap();
            assert!(item.runs.iter().all(|r| r.run >= Length::feet(64)), "{name}");
        }
    }
    // The packing of both upper planes: 64 ft by 38 sqrt(17) / 4 ft.
    let packing: Vec<_> = packet.order.iter().filter(|l| l.group == OrderGroup::Packing).collect();
    assert_eq!(packing.len(), 2);
    assert!(packing[0].spec.contains("south upper") && packing[0].spec.contains(&format!("{:.0} sq ft", slope(38.0) * 64.0)), "{}", packing[0].spec);
    // What water does: the upper plane's runs onto the lower one.
    assert!(packet.roof.drains().iter().filter(|d| matches!(d.to, crate::roof::Outfall::Plane(_))).count() == 2);
}

#[test]
fn what_stands_on_a_built_up_plane_stands_as_much_higher() {
    let packet = maltings();
    let ridge = packet.junction("ridge 1").unwrap();
    // The cap's underside lies h over both decks, so that its corner stands h / cos of the slope over the line: twice the packing.
    let apex = ridge.section.trim("ridge cap").unwrap().corners.iter().map(|c| c.z.mm()).fold(f64::MIN, f64::max);
    let cos = 4.0 / 17.0_f64.sqrt();
    assert!((apex - 2.0 * inch(PACKING) / cos).abs() < inch(0.0276) + 1e-6 && apex >= 2.0 * inch(PACKING) / cos - 1e-6, "{apex}");
    assert!(near(ridge.first.levels.built_up, inch(PACKING)) && near(ridge.second.unwrap().levels.built_up, inch(PACKING)));
    // A rake's trim on the upper plane is as much longer, its Z the same.
    let trim = |name: &str, part: &str| {
        let line = packet.junction(name).unwrap().line;
        packet.trims.iter().find(|t| t.name == part && t.runs.iter().any(|r| r.line == Some(line))).unwrap()
    };
    let (lower, upper) = (trim("rake 1", "rake trim"), trim("rake 3", "rake trim"));
    assert!(((upper.flat.girth() - lower.flat.girth()).length().unwrap().mm() - inch(PACKING)).abs() < 1e-6);
    assert_eq!(trim("rake 1", "rake Z").mark, trim("rake 3", "rake Z").mark);
}

#[test]
fn trims_that_cross_a_joint_lap_loose_by_what_it_opens() {
    let packet = maltings();
    let joint = packet.junction("expansion joint across 1").unwrap();
    let here =
        |name: &str| packet.corners.corners.iter().find(|c| c.lines.iter().any(|l| l.name == name) && c.lines.iter().any(|l| l.name == joint.name)).unwrap();
    let corner = here("rake 1");
    let rule = |first: &str, second: &str| {
        let pair = corner.pairs.iter().find(|p| [&p.first, &p.second].into_iter().all(|n| n == first || n == second)).unwrap();
        pair.rule.clone()
    };
    let (over, under) = ("rake 3".to_owned(), "rake 1".to_owned());
    assert_eq!(rule("rake 1", "rake 3"), PairRule::Slides { over: over.clone(), under: under.clone(), joint: joint.name.clone() });
    assert_eq!(rule(&joint.name, "rake 3"), PairRule::Laps { over, under: joint.name.clone() });
    assert_eq!(rule(&joint.name, "rake 1"), PairRule::Laps { over: joint.name.clone(), under });
    // The upper one runs on by what any corner takes and what the joint opens in the cold.
    let allowance = |name: &str| corner.lines.iter().find(|l| l.name == name).unwrap().allowance;
    let wanted = practice::assembly::CORNER_ALLOWANCE.mm() + joint.moves.unwrap().opens.mm();
    assert!(near(allowance("rake 3"), wanted) && allowance("rake 1") == Length::ZERO);
    let rake = packet.junction("rake 3").unwrap();
    let trim = packet.trims.iter().find(|t| t.name == "rake trim" && t.runs.iter().any(|r| r.line == Some(rake.line))).unwrap();
    let run = trim.runs.iter().find(|r| r.line == Some(rake.line)).unwrap();
    // Four pieces of 10 ft lapped by 4 in and a fifth have four laps, the loose one is the fifth: two beads across the girth in each.
    let beads = rake.along.beads.iter().find(|b| b.name == "laps of the rake trim").unwrap();
    assert!(run.pieces.len() == 5 && near(beads.length, 5.0 * 2.0 * trim.flat.girth().mm()), "{} {}", beads.length, trim.flat.girth());
    // At its upper end it takes the ridge's corner too.
    assert!(near(run.run, slope(38.0 * 304.8) + wanted + practice::assembly::CORNER_ALLOWANCE.mm()), "{}", run.run);
}

#[test]
fn a_joint_along_parts_the_eaves_and_the_ridge_that_cross_it() {
    let packet = Job::from_json(super::test_jobs::ROPEWALK).unwrap().compute().unwrap();
    let slides: Vec<_> = packet.corners.corners.iter().flat_map(|c| &c.pairs).filter(|p| matches!(p.rule, PairRule::Slides { .. })).collect();
    let eave = |over: &str, under: &str, joint: &str| PairRule::Slides { over: over.into(), under: under.into(), joint: joint.into() };
    // The lines on the side where the cap is fixed, the west, lap over those on the east.
    assert!(slides.iter().any(|p| p.rule == eave("eave 1", "eave 2", "expansion joint 1")), "{slides:?}");
    assert_eq!(slides.len(), 3, "two eaves and the ridge: {slides:?}");
    assert!(slides.iter().any(|p| matches!(&p.rule, PairRule::Slides { over, under, .. } if over == "ridge 1" && under == "ridge 2")), "{slides:?}");
    let opens = packet.junction("expansion joint 1").unwrap().moves.unwrap().opens;
    let end = packet.corners.corners.iter().flat_map(|c| &c.lines).filter(|l| l.name == "eave 1").map(|l| l.allowance).max().unwrap();
    assert!(near(end, practice::assembly::CORNER_ALLOWANCE.mm() + opens.mm()));
}

#[test]
fn the_job_says_how_far_a_plane_is_held() {
    let closes = |json: &Value, name: &str| work(json).unwrap().junction(name).and_then(|j| j.moves).unwrap().closes.mm();
    let hold = |plane: &str, far: &str| json!([{"line": "expansion joint across 1", "plane": plane, "to_fixed": far}]);
    let name = "expansion joint across 1";
    let all = closes(&maltings_with(&[]), name);
    // Held half way up, the upper panels move over 19 ft; what is below adds to it.
    assert!((closes(&maltings_with(&[("joint_holds", hold("south upper", "19'"))]), name) - 6.7e-6 * 19.0 * 304.8 * 90.0).abs() < 1e-6);
    assert!((closes(&maltings_with(&[("joint_holds", hold("south lower", "10'"))]), name) - all - 6.7e-6 * 3048.0 * 90.0).abs() < 1e-6);
    let e = refused(&maltings_with(&[("joint_holds", hold("south lower", "90'"))]));
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, format!("{JOINT}.flashing.cleat.fold").as_str()), "{e}");
    let e = refused(&maltings_with(&[("joint_holds", hold("north lower", "10'"))]));
    assert_eq!((e.kind(), e.path(), e.allowed()), (ErrorKind::Unknown, "joint_holds[0].plane", Some("south lower, south upper")));
    let e = refused(&maltings_with(&[("joint_holds", hold("south lower", "-1'"))]));
    assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "joint_holds[0].to_fixed"));
    let e = refused(&maltings_with(&[("joint_holds", json!([{"line": "ridge 1", "plane": "south upper", "to_fixed": "1'"}]))]));
    assert_eq!((e.kind(), e.path()), (ErrorKind::Unknown, "joint_holds[0].line"));
    assert!(e.allowed().unwrap().contains("expansion joint across 2"));
    let mut twice = hold("south lower", "1'");
    let again = twice[0].clone();
    twice.as_array_mut().unwrap().push(again);
    let e = refused(&maltings_with(&[("joint_holds", twice)]));
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "joint_holds[1]"));
}

#[test]
fn what_does_not_fit_is_refused_by_its_path() {
    let of = |field: &str| format!("{JOINT}.flashing.{field}");
    let e = refused(&maltings_with(&[(&of("packing"), json!("1 1/2\""))]));
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, of("packing").as_str()), "{e}");
    assert!(e.cure().unwrap().starts_with("packing of 48.92548 mm"), "{e}");
    let e = refused(&maltings_with(&[(&of("cleat.fold"), json!("1\""))]));
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Impossible, of("cleat.fold").as_str(), Some("25.4 mm")), "{e}");
    assert!(e.message().contains("comes off its cleat"), "{e}");
    let mut cold = maltings_with(&[]);
    cold.as_object_mut().unwrap().remove("temperatures");
    assert_eq!(refused(&cold).path(), "temperatures");
    // The names exchanged.
    let e = refused(&maltings_with(&[("roof.expansion_joints[0]", json!({"fixed": "south upper", "sliding": "south lower"}))]));
    assert_eq!((e.path(), e.cure()), ("roof.expansion_joints[0]", Some("the two names exchanged")));
    // No detail for it.
    let mut bare = maltings_with(&[]);
    bare["junctions"]["kinds"].as_array_mut().unwrap().truncate(3);
    assert_eq!(refused(&bare).allowed(), Some("a detail for the kind expansion joint across"));
    // Above a step the deck is where the roof has it.
    let mut stepped = mono(
        json!([strip("low", ("0'", "32'"), ("0'", "30'")), strip("high", ("0'", "32'"), ("30'", "60'")), strip("porch", ("32'", "40'"), ("0'", "30'"))]),
        json!([{"fixed": "low", "sliding": "high"}]),
    );
    *at(&mut stepped, "roof.planes[1].shape.plan.outer[1].x") = json!("40'");
    *at(&mut stepped, "roof.planes[1].shape.plan.outer[2].x") = json!("40'");
    *at(&mut stepped, "roof.planes[2].shape.plan.anchor.z") = json!("12'");
    stepped["roof"]["steps"] = json!([{"lower": "porch", "upper": "high"}]);
    let annexe: Value = super::test_jobs::annexe_json();
    let step = annexe["junctions"]["kinds"].as_array().unwrap().iter().find(|k| k.get("step").is_some()).unwrap().clone();
    stepped["junctions"]["kinds"].as_array_mut().unwrap().push(step);
    stepped["roof"]["walls"] = json!([{"name": "cheek", "from": {"x": "32'", "y": "0'"}, "to": {"x": "32'", "y": "30'"}}]);
    let side = super::test_jobs::demo_json()["junctions"]["kinds"].as_array().unwrap().iter().find(|k| k.get("sidewall").is_some()).unwrap().clone();
    stepped["junctions"]["kinds"].as_array_mut().unwrap().push(side);
    let e = refused(&stepped);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "lines.step 1"), "{e}");
    assert!(e.message().contains("lies on the deck of high, which expansion joint across 1 builds up by 48.92548 mm"), "{e}");
}

#[test]
fn an_eave_and_a_chimney_above_a_joint_stand_on_the_packing() {
    // An upper plane that is wider than the one below it has an eave beside the joint, and a hole in it a curb.
    let mut wide = maltings_with(&[]);
    for corner in [1, 2] {
        *at(&mut wide, &format!("roof.planes[1].shape.plan.outer[{corner}].x")) = json!("70'");
    }
    *at(&mut wide, "roof.planes[1].shape.plan.holes") = json!([{"name": "chimney", "ring": [
        {"x": "20'", "y": "60'"}, {"x": "24'", "y": "60'"}, {"x": "24'", "y": "63'"}, {"x": "20'", "y": "63'"}]}]);
    let demo = super::test_jobs::demo_json();
    let kinds = wide["junctions"]["kinds"].as_array_mut().unwrap();
    kinds.push(high_edge());
    for name in ["curb-front", "curb-side", "curb-back"] {
        kinds.push(demo["junctions"]["kinds"].as_array().unwrap().iter().find(|k| k.get(name).is_some()).unwrap().clone());
    }
    let packet = work(&wide).unwrap();
    let upper = packet.roof.planes().iter().position(|p| p.name() == "south upper").unwrap();
    let of = |name: &str, trim: &str| packet.junction(name).unwrap().section.trim(trim).unwrap().corners.clone();
    let eaves: Vec<_> = packet.junctions.iter().filter(|j| j.kind == LineKind::Eave).collect();
    let high = eaves.iter().find(|j| j.first.plane == upper).unwrap();
    assert!(near(high.first.levels.built_up, inch(PACKING)));
    // Its flange lies on the packing, as high over the deck as that, the one at the foot of the roof on the deck.
    let (sin, cos) = (1.0 / 17.0_f64.sqrt(), 4.0 / 17.0_f64.sqrt());
    let over = |c: &crate::junction::SectionPoint| c.z.mm() * cos + c.x.mm() * sin;
    let (low, high) = (of("eave 1", "eave trim")[0], of(&high.name, "eave trim")[0]);
    assert!((over(&low)).abs() < 1e-6 && (over(&high) - inch(PACKING)).abs() < 1e-6, "{} {}", over(&low), over(&high));
    // Behind the chimney the pan lies on the underlayment over it.
    let pan = of("curb back 1", "back pan");
    assert!((over(&pan[0]) - inch(PACKING + 1.0 / 16.0)).abs() < 1e-6, "{}", over(&pan[0]));
}

fn strip(name: &str, (x0, x1): (&str, &str), (y0, y1): (&str, &str)) -> Value {
    plane(name, &[[x0, y0], [x1, y0], [x1, y1], [x0, y1]], "3:12", "270 deg", ["0'", "0'", "14'"])
}

fn high_edge() -> Value {
    let job = maltings_with(&[]);
    json!({"high-edge": {"end": job["junctions"]["kinds"][2]["ridge"]["first"], "sheet": {"thickness": "0.0276 in", "inside_radius": "0.03 in"}, "face": job["junctions"]["kinds"][1]["rake"]["face"]}})
}

/// A mono-slope of these planes and joints, with the maltings' details.
fn mono(planes: Value, joints: Value) -> Value {
    let mut json = maltings_with(&[("roof.planes", planes), ("roof.expansion_joints", joints), ("layout.shared", json!([]))]);
    json["junctions"]["kinds"].as_array_mut().unwrap().push(high_edge());
    json
}

#[test]
fn a_second_joint_up_the_slope_stands_on_the_first_one_s_packing() {
    let x = ("0'", "32'");
    let planes = json!([strip("low", x, ("0'", "30'")), strip("middle", x, ("30'", "60'")), strip("top", x, ("60'", "90'"))]);
    let joints = json!([{"fixed": "low", "sliding": "middle"}, {"fixed": "middle", "sliding": "top"}]);
    let plain = mono(planes, joints);
    // Its seam tops lie as high over the deck again.
    let e = refused(&plain);
    assert_eq!(e.path(), format!("{JOINT}.flashing.packing"));
    assert!(e.cure().unwrap().contains(&Length::from_mm(2.0 * inch(PACKING)).unwrap().to_string()), "{e}");
    let mut stepped = plain;
    let mut second = at(&mut stepped, "junctions.kinds[3]").clone();
    second["expansion-across"]["flashing"]["packing"] = json!(format!("{} in", 2.0 * PACKING));
    stepped["junctions"]["lines"] = json!([{"line": "expansion joint across 2", "detail": second}]);
    let packet = work(&stepped).unwrap();
    let second = packet.junction("expansion joint across 2").unwrap();
    assert!(near(second.first.levels.built_up, inch(PACKING)) && near(second.second.unwrap().levels.built_up, 2.0 * inch(PACKING)));
    // The middle panels are held at their upper ends by the second joint's closures, and move over the flashing of the first.
    assert_eq!(packet.heat[1].pins.count(Fixing::Upper), packet.planes[1].laid.panels.len());
}

#[test]
fn joints_along_and_across_cross_each_other() {
    let (west, east, low, high) = (("0'", "30'"), ("30'", "60'"), ("0'", "30'"), ("30'", "60'"));
    let planes = json!([strip("low west", west, low), strip("low east", east, low), strip("high west", west, high), strip("high east", east, high)]);
    let joints = json!([
        {"fixed": "low west", "sliding": "low east"}, {"fixed": "high west", "sliding": "high east"},
        {"fixed": "low west", "sliding": "high west"}, {"fixed": "low east", "sliding": "high east"}
    ]);
    let mut job = mono(planes, joints);
    let ropewalk: Value = serde_json::from_slice(super::test_jobs::ROPEWALK).unwrap();
    job["junctions"]["kinds"].as_array_mut().unwrap().push(ropewalk["junctions"]["kinds"][3].clone());
    // Whole panels of 16 in leave 6 in beside the joint on the west, and none on the east.
    job["layout"]["start"] = json!("left");
    job["layout"]["planes"] = json!([{"plane": "low east", "start": "right"}, {"plane": "high east", "start": "right"}]);
    // Curbs stand on the deck: those between the upper planes are as much higher.
    let mut upper = ropewalk["junctions"]["kinds"][3].clone();
    upper["expansion-along"]["curb_height"] = json!(format!("{} in", 8.5 + PACKING));
    job["junctions"]["lines"] = json!([{"line": "expansion joint 2", "detail": upper}]);
    let packet = work(&job).unwrap();
    let of = |kind| packet.junctions.iter().filter(|j| j.kind == kind).count();
    assert_eq!((of(LineKind::ExpansionAlong), of(LineKind::ExpansionAcross)), (2, 2));
    let cross = packet.corners.corners.iter().find(|c| c.lines.len() == 4 && c.lines.iter().all(|l| l.name.starts_with("expansion"))).unwrap();
    // The flashings lap loose over the joint along, the upper cap over the lower; a flashing lies over the lower caps and under the upper ones.
    let slides = cross.pairs.iter().filter(|p| matches!(p.rule, PairRule::Slides { .. })).count();
    let laps = cross.pairs.iter().filter(|p| matches!(p.rule, PairRule::Laps { .. })).count();
    assert_eq!((slides, laps), (2, 4), "{:?}", cross.pairs);
}
