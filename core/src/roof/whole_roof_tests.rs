use super::test_roofs::{ft, gable, plane, pt, tee, wall};
use super::{GapChoice, LineKind, RoofInput, Shape};
use crate::error::{Error, ErrorKind};
use crate::pitch::Pitch;
use crate::record::Calculation;
use crate::units::Length;

fn all(e: &Error) -> Vec<(ErrorKind, &str)> {
    core::iter::once(e).chain(e.others()).map(|e| (e.kind(), e.path())).collect()
}

#[test]
fn planes_that_overlap_are_both_named() {
    let square = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)];
    let under = plane("under", &square, "6:12", 270.0, (0.0, 0.0, 9.0));
    for (name, outer) in [
        ("the same", square.to_vec()),
        ("crossing", vec![(5.0, 5.0), (15.0, 5.0), (15.0, 15.0), (5.0, 15.0)]),
        ("inside", vec![(4.0, 4.0), (6.0, 4.0), (6.0, 6.0)]),
        ("across", vec![(-5.0, 4.0), (15.0, 4.0), (15.0, 6.0), (-5.0, 6.0)]),
        ("a corner", vec![(10.0, 8.0), (12.0, 10.0), (9.0, 11.0)]),
    ] {
        let e = RoofInput::new(vec![under.clone(), plane(name, &outer, "6:12", 90.0, (0.0, 0.0, 30.0))]).compute().unwrap_err();
        assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "planes[1]"), "{name}: {e}");
        assert!(e.message().contains("under") && e.message().contains(name), "{e}");
    }
    // Within the tolerance, and side by side, they do not overlap.
    let near = ft(10.0).mm() / 304.8 - 0.004;
    for outer in [vec![(near, 0.0), (20.0, 0.0), (20.0, 10.0), (near, 10.0)], vec![(10.0, -5.0), (20.0, -5.0), (20.0, 5.0), (10.0, 5.0)]] {
        assert!(RoofInput::new(vec![under.clone(), plane("beside", &outer, "6:12", 270.0, (0.0, 0.0, 9.0))]).compute().is_ok());
    }
}

#[test]
fn every_fault_at_once() {
    let mut planes = gable();
    planes[1].name = "south".into();
    planes.push(plane("crossed", &[(100.0, 0.0), (104.0, 3.0), (104.0, 0.0), (100.0, 3.0)], "6:12", 0.0, (0.0, 0.0, 0.0)));
    planes.push(plane("on top", &[(1.0, 1.0), (9.0, 1.0), (9.0, 9.0)], "6:12", 0.0, (0.0, 0.0, 0.0)));
    planes.push(plane("tiny", &[(200.0, 0.0), (204.0, 0.0), (204.0, 0.002), (200.0, 9.0)], "6:12", 0.0, (0.0, 0.0, 0.0)));
    planes.push(plane("far", &[(20_000.0, 0.0), (20_004.0, 0.0), (20_004.0, 9.0)], "6:12", 0.0, (0.0, 0.0, 0.0)));
    let mut input = RoofInput::new(planes);
    input.tolerance = Some(Length::ZERO);
    input.walls = vec![wall("", (0.0, 0.0), (1.0, 0.0)), wall("w", (0.0, 0.0), (0.0, 0.0)), wall("w", (0.0, 0.0), (9.0, 0.0))];
    let e = input.compute().unwrap_err();
    let found = all(&e);
    for expected in [
        (ErrorKind::OutOfRange, "tolerance"),
        (ErrorKind::Conflict, "planes[1].name"),
        (ErrorKind::Missing, "walls[0].name"),
        (ErrorKind::Geometry, "walls[1]"),
        (ErrorKind::Conflict, "walls[2].name"),
        (ErrorKind::Geometry, "planes[2].shape.plan.outer[0]"),
        (ErrorKind::Geometry, "planes[3]"),
        (ErrorKind::Geometry, "planes[4].shape.plan.outer[1]"),
        (ErrorKind::OutOfRange, "planes[5]"),
    ] {
        assert!(found.contains(&expected), "{expected:?} in {found:?}");
    }
    assert_eq!(all(&RoofInput::new(vec![]).compute().unwrap_err()), [(ErrorKind::Missing, "planes")]);
}

#[test]
fn every_bad_face_at_once_with_its_plane_vertex_and_distance() {
    let ft = Length::feet;
    let v = |x: i16, y: i16, z: i16| super::Vertex::new(ft(x), ft(y), ft(z));
    let space = |name: &str, outer: Vec<super::Vertex>| super::PlaneInput { name: name.into(), shape: Shape::Space { outer, holes: vec![], flatness: None } };
    let flat = |name: &str, outer: &[(f64, f64)]| plane(name, outer, "6:12", 270.0, (0.0, 0.0, 9.0));
    let wide = super::Vertex { x: Length::from_pm(40_000_000_000_000_000), ..v(0, 8, 4) };
    let e = RoofInput::new(vec![
        flat("good", &[(0.0, 0.0), (9.0, 0.0), (9.0, 9.0), (0.0, 9.0)]),
        flat("touching", &[(20.0, 0.0), (24.0, 0.0), (24.0, 4.0), (22.0, 0.0), (20.0, 4.0)]),
        flat("crossing", &[(30.0, 0.0), (34.0, 4.0), (34.0, 0.0), (30.0, 5.0)]),
        flat("no area", &[(40.0, 0.0), (44.0, 0.0), (42.0, 0.0)]),
        flat("doubled", &[(50.0, 0.0), (54.0, 0.0), (54.0, 0.0), (54.0, 4.0)]),
        flat("spiked", &[(60.0, 0.0), (64.0, 0.0), (64.0, 4.0), (64.0, 7.0), (64.0, 4.0), (60.0, 4.0)]),
        space("upright", vec![v(70, 0, 0), v(74, 0, 0), v(74, 0, 4), v(70, 0, 4)]),
        space("down", vec![v(80, 0, 0), v(80, 4, 2), v(84, 4, 3), v(84, 0, 0)]),
        space("bent", vec![v(90, 0, 0), v(94, 0, 0), v(94, 4, 3), v(90, 4, 2)]),
        space("wide", vec![v(0, 0, 0), wide, v(0, 9, 4)]),
        flat("on top", &[(1.0, 1.0), (8.0, 1.0), (8.0, 8.0)]),
    ])
    .compute()
    .unwrap_err();
    for (path, name, message, value) in [
        ("planes[1].shape.plan.outer[0]", "touching", "meets", "at 6705.6 mm, 0 mm"),
        ("planes[2].shape.plan.outer[0]", "crossing", "meets", "at 9821.333 mm, 677.333 mm"),
        ("planes[3].shape.plan.outer", "no area", "no area", "0 m2"),
        ("planes[4].shape.plan.outer[2]", "doubled", "on its neighbour", "0 mm"),
        ("planes[5].shape.plan.outer[3]", "spiked", "runs back", "914.4 mm"),
        ("planes[6].shape.space.outer", "upright", "vertical", "90 deg"),
        ("planes[7].shape.space.outer", "down", "faces down", "deg"),
        ("planes[7].shape.space.outer[0]", "down", "the plane", "mm"),
        ("planes[8].shape.space.outer[2]", "bent", "above the plane", "mm"),
        ("planes[9].shape.space.outer[1]", "wide", "too far", "40000000 mm"),
        ("planes[10]", "on top", "overlap", "mm deep"),
    ] {
        let found = core::iter::once(&e)
            .chain(e.others())
            .any(|f| f.path() == path && f.message().contains(name) && f.message().contains(message) && f.value().unwrap_or_default().contains(value));
        assert!(found, "{path} {name}: {message} {value} in\n{e}");
    }
}

#[test]
fn water_over_a_hip_is_told_apart_from_water_against_a_plane() {
    let ft = Length::feet;
    let v = |x: i16, y: i16, z: i16| super::Vertex::new(ft(x), ft(y), ft(z));
    let space = |name: &str, outer: Vec<super::Vertex>| super::PlaneInput { name: name.into(), shape: Shape::Space { outer, holes: vec![], flatness: None } };
    // A steep plane drains over a line that slopes; beyond it the roof bends down, or up, and falls away from the line.
    let high = space("high", vec![v(0, 0, 0), v(20, 0, 10), v(20, 20, 20), v(0, 20, 10)]);
    for (far, code) in [((0, -20, -20), super::cautions::WATER_OVER), ((0, -20, -5), super::cautions::WATER_ACROSS)] {
        let low = space("low", vec![v(far.0, far.1, far.2), v(20, -20, far.2 + 10), v(20, 0, 10), v(0, 0, 0)]);
        let r = RoofInput::new(vec![high.clone(), low]).compute().unwrap();
        let found: Vec<u16> = r.cautions().iter().map(|c| c.code().number).collect();
        assert_eq!(found, [code.number], "{:?}", r.cautions());
        assert!(r.cautions()[0].message().contains("water of high"), "{}", r.cautions()[0]);
    }
}

#[test]
fn cautions_on_slope_slivers_and_gaps() {
    let mut input = RoofInput::new(vec![
        plane("a", &[(0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (0.0, 10.0)], "1/4:12", 270.0, (0.0, 0.0, 9.0)),
        plane("b", &[(0.0, 10.02), (20.0, 10.02), (20.0, 10.3), (0.0, 10.3)], "1/8:12", 90.0, (0.0, 10.02, 9.0 + 10.0 / 48.0)),
    ]);
    input.minimum_slope = Some(Pitch::parse("1/4:12").unwrap());
    let r = input.compute().unwrap();
    let found: Vec<(&str, &str)> = r.cautions().iter().map(|c| (c.code().name, c.subject())).collect();
    assert_eq!(found, [("near-miss", "planes[0]"), ("below-minimum-slope", "planes[1]"), ("sliver", "planes[1]")]);
    assert!(r.cautions()[0].message().contains("edge 2 of a and edge 0 of b run side by side 6.096 mm apart"), "{}", r.cautions()[0]);
    assert_eq!(r.lines_of(LineKind::Ridge).count(), 0);
    input.sliver_width = Some(Length::inches(1));
    input.tolerance = Some(Length::inches_64(24));
    let r = input.compute().unwrap();
    assert_eq!(r.lines_of(LineKind::Ridge).count(), 1);
    assert_eq!(r.cautions().len(), 1);
}

#[test]
fn every_gap_is_told_with_its_edges_and_its_width_or_refused() {
    let told = |planes: Vec<super::PlaneInput>| -> Vec<String> {
        let r = RoofInput::new(planes).compute().unwrap();
        r.cautions().iter().filter(|c| c.code() == super::cautions::NEAR_MISS).map(|c| c.message()).collect()
    };
    let south = gable().remove(0);
    let north = |west: f64, east: f64| plane("north", &[(0.0, west), (40.0, east), (40.0, 20.0), (0.0, 20.0)], "6:12", 90.0, (0.0, west, 14.0));
    // A ridge that is open by 1 in, by 5.9 in, and as a wedge: at its wide end 3 in across and 1 in up. A foot is a gutter.
    for (west, east, width) in [(1.0, 1.0, "25.4 mm"), (5.9, 5.9, "149.86 mm"), (1.0, 3.0, "80.32")] {
        let found = told(vec![south.clone(), north(10.0 + west / 12.0, 10.0 + east / 12.0)]);
        assert!(found.len() == 1 && found[0].contains("edge 2 of south and edge 0 of north") && found[0].contains(width), "{west} {east} {found:?}");
    }
    assert!(told(vec![south.clone(), north(11.0, 11.0)]).is_empty());
    // The neighbours of a plane that is 4 in deep have no gap.
    let head = 10.0 + 1.0 / 3.0;
    let strip = plane("strip", &[(0.0, 10.0), (40.0, 10.0), (40.0, head), (0.0, head)], "7:12", 270.0, (0.0, 10.0, 14.0));
    let beyond = plane("beyond", &[(0.0, head), (40.0, head), (40.0, 20.0), (0.0, 20.0)], "6:12", 90.0, (0.0, head, 14.0 + 7.0 / 36.0));
    assert!(told(vec![south.clone(), strip, beyond]).is_empty());

    // Two gaps and a ring that crosses itself are refused at once.
    let inch = 10.0 + 1.0 / 12.0;
    let east = plane("east", &[(40.1, 0.0), (50.0, 0.0), (50.0, 10.0), (40.1, 10.0)], "6:12", 270.0, (40.1, 0.0, 9.0));
    let crossed = plane("crossed", &[(100.0, 0.0), (104.0, 3.0), (104.0, 0.0), (100.0, 4.0)], "6:12", 0.0, (0.0, 0.0, 0.0));
    let e = RoofInput { gaps: GapChoice::Refuse, ..RoofInput::new(vec![south, north(inch, inch), east, crossed]) }.compute().unwrap_err();
    let paths: Vec<&str> = all(&e).into_iter().map(|(_, path)| path).collect();
    assert_eq!(paths, ["planes[3].shape.plan.outer[0]", "planes[0].shape.plan.outer[1]", "planes[0].shape.plan.outer[2]"], "{e}");
    assert!(e.others().iter().any(|e| e.value() == Some("25.4 mm") && e.message().contains("edge 2 of south") && e.message().contains("north")), "{e}");
}

#[test]
fn edges_within_the_tolerance_are_one_line() {
    let mut planes = gable();
    if let Shape::Plan { outer, .. } = &mut planes[1].shape {
        outer[2] = pt(0.002, 10.001);
        outer[3] = pt(39.999, 9.999);
    }
    let r = RoofInput::new(planes).compute().unwrap();
    assert_eq!((r.lines().len(), r.lines_of(LineKind::Ridge).count(), r.lines_of(LineKind::Rake).count()), (7, 1, 4));
}

#[test]
fn the_order_of_lines_is_fixed() {
    let r = RoofInput::new(tee(60.0, 10.0, 20.0, 20.0)).compute().unwrap();
    let names: Vec<&str> = r.lines().iter().map(|l| l.name.as_str()).collect();
    assert_eq!(
        names,
        [
            "ridge 1", "ridge 2", "rake 1", "eave 1", "rake 2", "eave 2", "valley 1", "rake 3", "eave 3", "rake 4", "valley 2", "rake 5", "ridge 3", "eave 4",
            "rake 6", "eave 5"
        ]
    );
    // Every edge is covered by its lines.
    for (i, p) in r.planes().iter().enumerate() {
        let round: f64 = r.lines_round(i).map(|l| l.length.mm()).sum();
        let ring = &p.rings()[0];
        let perimeter: f64 = ring.iter().zip(ring.iter().cycle().skip(1)).map(|(a, b)| crate::num::space::norm(b.from(*a))).sum();
        assert!((round - perimeter).abs() < 1e-6, "{round} {perimeter}");
    }
}

#[cfg(feature = "serde")]
#[test]
fn reads_and_writes_text() {
    let mut input = RoofInput::new(gable());
    input.walls = vec![wall("w", (0.0, 0.0), (0.0, 9.0))];
    let text = serde_json::to_string(&input).unwrap();
    assert!(text.contains(r#""plan":{"outer":[{"x":"0 mm","y":"0 mm"}"#), "{text}");
    assert_eq!(serde_json::from_str::<RoofInput>(&text).unwrap(), input);
    assert!(serde_json::from_str::<RoofInput>(&text.replacen("pitch", "pitches", 1)).unwrap_err().to_string().contains("pitches"));
    let roof = serde_json::to_value(input.compute().unwrap()).unwrap();
    assert_eq!(roof["planes"][1]["pitch"], "6:12");
    let line = &roof["lines"][0];
    assert_eq!((line["kind"].as_str(), line["length"].as_str()), (Some("eave"), Some("12192 mm")));
}
