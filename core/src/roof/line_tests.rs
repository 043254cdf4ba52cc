use super::test_roofs::{ft, gable, hip, plane, pt, roof, tee, transition, wall};
use super::{Beyond, LineKind, Opening, Outfall, PlaneInput, Roof, RoofInput, Shape, Vertex, Water, cautions};
use crate::num;
use crate::record::Calculation;
use crate::units::{AreaUnit, Length};
use approx::assert_abs_diff_eq;

fn count(roof: &Roof, kind: LineKind) -> usize {
    roof.lines_of(kind).count()
}

fn codes(roof: &Roof) -> Vec<&'static str> {
    roof.cautions().iter().map(|c| c.code().name).collect()
}

#[test]
fn a_gable() {
    let r = roof(gable());
    assert_eq!((r.lines().len(), count(&r, LineKind::Eave), count(&r, LineKind::Rake)), (7, 2, 4));
    let ridge = r.line("ridge 1").unwrap();
    assert_eq!((ridge.length, ridge.plan_length, ridge.slope.degrees()), (ft(40.0), ft(40.0), 0.0));
    assert_abs_diff_eq!(ridge.dihedral.unwrap().degrees(), 180.0 - 2.0 * num::atan_deg(0.5), epsilon = 1e-12);
    assert_abs_diff_eq!(ridge.bend().unwrap().degrees(), 2.0 * num::atan_deg(0.5), epsilon = 1e-12);
    for side in ridge.sides() {
        assert_eq!((side.meeting_angle.degrees(), side.skew.degrees(), side.water), (90.0, 0.0, Water::Away));
    }
    for rake in r.lines_of(LineKind::Rake) {
        assert_eq!((rake.side.meeting_angle.degrees(), rake.side.water, &rake.beyond), (0.0, Water::Along, &Beyond::Open));
        assert_abs_diff_eq!(rake.length.mm(), 3048.0 * 1.25_f64.sqrt(), epsilon = 1e-9);
        assert_abs_diff_eq!(rake.slope.degrees(), num::atan_deg(0.5), epsilon = 1e-12);
    }
    assert!(r.cautions().is_empty());
    assert!(r.drains().iter().all(|d| d.to == Outfall::Off));
    assert_eq!(r.drains().len(), 2);
    assert!(r.line("ridge 2").is_err() && r.plane("south").is_ok() && r.plane("s").is_err());
}

#[test]
fn a_ridge_out_of_level_is_still_a_ridge() {
    let v = |x: f64, y: f64, z: f64| Vertex::new(ft(x), ft(y), ft(z));
    let solid = |name: &str, outer| PlaneInput { name: name.into(), shape: Shape::Space { outer, holes: vec![], flatness: Some(Length::inches(2)) } };
    let r = roof(vec![
        solid("south", vec![v(0.0, 0.0, 9.0), v(40.0, 0.0, 9.0), v(40.0, 10.0, 14.1), v(0.0, 10.0, 14.0)]),
        solid("north", vec![v(40.0, 20.0, 9.0), v(0.0, 20.0, 9.0), v(0.0, 10.0, 14.0), v(40.0, 10.0, 14.1)]),
    ]);
    let ridge = r.line("ridge 1").unwrap();
    assert_abs_diff_eq!(ridge.slope.degrees(), num::atan_deg(0.1 / 40.0), epsilon = 1e-9);
    assert_abs_diff_eq!(ridge.length.mm(), 304.8 * (1600.0_f64 + 0.01).sqrt(), epsilon = 1e-8);
    assert_eq!((r.lines().len(), count(&r, LineKind::Rake)), (7, 4));
}

#[test]
fn a_hip_roof() {
    let r = roof(hip());
    assert_eq!((r.lines().len(), count(&r, LineKind::Ridge), count(&r, LineKind::Hip), count(&r, LineKind::Eave)), (9, 1, 4, 4));
    assert_eq!(r.line("ridge 1").unwrap().length, ft(20.0));
    for hip in r.lines_of(LineKind::Hip) {
        // 10 ft of common run at 18 in of hip to the foot.
        assert_abs_diff_eq!(hip.length.mm(), 15.0 * 304.8, epsilon = 1e-9);
        assert!(hip.sides().all(|s| s.water == Water::Away));
        let skews: Vec<f64> = hip.sides().map(|s| s.skew.degrees()).collect();
        assert_abs_diff_eq!(skews[0], -skews[1], epsilon = 1e-12);
    }
    // The south plane's right end is cut by the hip at 40,0 - 30,10, which rises to the left.
    let right = r.lines_round(0).find(|l| l.kind == LineKind::Hip && l.start == r.planes()[0].rings()[0][1]).unwrap();
    assert!(right.side.skew.degrees() < 0.0);
    assert_eq!(right.side.start, pt(40.0, 0.0));
}

#[test]
fn valleys_and_an_edge_met_in_part() {
    let r = roof(tee(60.0, 10.0, 20.0, 20.0));
    assert_eq!((count(&r, LineKind::Ridge), count(&r, LineKind::Valley), count(&r, LineKind::Hip), count(&r, LineKind::Unknown)), (3, 2, 0, 0));
    let ridges: Vec<Length> = r.lines_of(LineKind::Ridge).map(|l| l.length).collect();
    assert_eq!(ridges, [ft(30.0), ft(30.0), ft(30.0)]);
    assert_eq!(r.lines().iter().filter(|l| l.side.plane == 0 && l.kind == LineKind::Ridge).count(), 2);
    for valley in r.lines_of(LineKind::Valley) {
        assert!(valley.sides().all(|s| s.water == Water::Toward && s.backing.degrees() < 0.0));
        assert_abs_diff_eq!(valley.length.mm(), 15.0 * 304.8, epsilon = 1e-9);
    }
    assert_eq!(r.drains().iter().filter(|d| d.to == Outfall::Valley).count(), 4);
    assert!(r.cautions().is_empty(), "{:?}", r.cautions());
}

#[test]
fn transitions_both_ways() {
    for (lower, upper, kind) in [("12:12", "4:12", LineKind::ShallowToSteep), ("3:12", "9:12", LineKind::SteepToShallow)] {
        let r = roof(transition(lower, upper));
        let t = r.lines_of(kind).next().unwrap();
        assert_eq!((t.length, t.crossing()), (ft(30.0), Some((1, 0))));
        let (s_low, s_up) = (r.planes()[0].slope().degrees(), r.planes()[1].slope().degrees());
        assert_abs_diff_eq!(t.bend().unwrap().degrees(), s_low - s_up, epsilon = 1e-12);
        assert_abs_diff_eq!(t.dihedral.unwrap().degrees(), 180.0 - (s_low - s_up).abs(), epsilon = 1e-12);
        assert_eq!((count(&r, LineKind::HighEdge), count(&r, LineKind::Eave), count(&r, LineKind::Rake)), (1, 1, 4));
        assert!(r.drains().iter().any(|d| d.plane == 1 && d.to == Outfall::Plane(0)));
    }
    let same = roof(transition("6:12", "6:12"));
    assert_eq!((count(&same, LineKind::Unknown), codes(&same)), (1, vec!["coplanar"]));
}

#[test]
fn a_butterfly_is_a_level_valley() {
    let r = roof(vec![
        plane("south", &[(0.0, 0.0), (40.0, 0.0), (40.0, 10.0), (0.0, 10.0)], "2:12", 90.0, (0.0, 10.0, 9.0)),
        plane("north", &[(0.0, 10.0), (40.0, 10.0), (40.0, 20.0), (0.0, 20.0)], "2:12", 270.0, (0.0, 10.0, 9.0)),
    ]);
    assert_eq!((count(&r, LineKind::Valley), count(&r, LineKind::HighEdge), codes(&r)), (1, 2, vec!["level-valley"]));
}

#[test]
fn walls_above_beside_and_below() {
    let mut input = RoofInput::new(vec![plane("a", &[(0.0, 0.0), (30.0, 0.0), (30.0, 10.0), (0.0, 10.0)], "3:12", 270.0, (0.0, 0.0, 9.0))]);
    // Along part of the top, past both ends of a side, and one that touches nothing.
    input.walls = vec![wall("top", (25.0, 10.0), (10.0, 10.0)), wall("side", (0.0, 12.0), (0.0, -2.0)), wall("far", (50.0, 0.0), (50.0, 9.0))];
    let r = input.compute().unwrap();
    let head = r.line("headwall 1").unwrap();
    assert_eq!((head.length, &head.beyond), (ft(15.0), &Beyond::Wall("top".into())));
    assert_eq!((head.side.start, head.side.water), (r.planes()[0].to_plane(r.planes()[0].at_plan(pt(25.0, 10.0)).unwrap()).unwrap(), Water::Away));
    assert_eq!(r.lines_of(LineKind::HighEdge).map(|l| l.length).collect::<Vec<_>>(), [ft(5.0), ft(10.0)]);
    assert_abs_diff_eq!(r.line("sidewall 1").unwrap().length.mm(), 3048.0 * (1.0_f64 + 0.0625).sqrt(), epsilon = 1e-9);
    assert_eq!(codes(&r), ["unused-wall"]);

    input.walls = vec![wall("foot", (0.0, 0.0), (30.0, 0.0))];
    let r = input.compute().unwrap();
    assert_eq!(codes(&r), ["water-into-wall", "unknown-line"]);
    assert_eq!((count(&r, LineKind::Unknown), r.drains()[0].to), (1, Outfall::Wall));
    assert!(r.cautions()[0].message().contains("water on a runs into the wall foot"));
}

#[test]
fn an_edge_above_the_top_of_a_wall_does_not_run_into_it() {
    // A tower's roof stands on the wall that the low roof runs into.
    let mut input = RoofInput::new(vec![
        plane("low", &[(0.0, 0.0), (30.0, 0.0), (30.0, 10.0), (0.0, 10.0)], "3:12", 270.0, (0.0, 0.0, 9.0)),
        plane("tower", &[(5.0, 10.0), (15.0, 10.0), (15.0, 20.0), (5.0, 20.0)], "3:12", 270.0, (0.0, 10.0, 25.0)),
    ]);
    input.walls = vec![wall("tower", (5.0, 10.0), (15.0, 10.0)), wall("side", (0.0, 0.0), (0.0, 10.0))];
    input.walls[0].top = Some(ft(25.0));
    // The side wall ends half way up the slope, at 9 ft + 5 ft x 3/12.
    input.walls[1].top = Some(ft(10.25));
    let r = input.compute().unwrap();
    assert_eq!((count(&r, LineKind::Headwall), count(&r, LineKind::Eave), count(&r, LineKind::Unknown)), (1, 2, 0));
    let half = 1524.0 * (1.0_f64 + 0.0625).sqrt();
    assert_abs_diff_eq!(r.line("sidewall 1").unwrap().length.mm(), half, epsilon = 1e-6);
    let open = r.lines_round(0).filter(|l| l.kind == LineKind::Rake).map(|l| l.length.mm()).fold(f64::INFINITY, f64::min);
    assert_abs_diff_eq!(open, half, epsilon = 1e-6);
    assert!(r.cautions().is_empty(), "{:?}", r.cautions());
}

#[test]
fn a_wall_on_a_ridge_is_not_named() {
    let mut input = RoofInput::new(gable());
    input.walls = vec![wall("fire wall", (0.0, 10.0), (40.0, 10.0))];
    let r = input.compute().unwrap();
    assert_eq!((count(&r, LineKind::Unknown), codes(&r)), (1, vec!["wall-on-shared-line"]));
}

#[test]
fn a_curb_has_front_sides_and_back() {
    let mut planes = gable();
    if let Shape::Plan { holes, .. } = &mut planes[0].shape {
        holes.push(Opening { name: "hatch".into(), ring: vec![pt(10.0, 3.0), pt(14.0, 3.0), pt(14.0, 6.0), pt(10.0, 6.0)] });
    }
    let r = roof(planes);
    assert_eq!((count(&r, LineKind::CurbFront), count(&r, LineKind::CurbSide), count(&r, LineKind::CurbBack)), (1, 2, 1));
    let front = r.line("curb front 1").unwrap();
    assert_eq!((front.start.y, front.side.water, &front.beyond), (ft(3.0), Water::Away, &Beyond::Hole("hatch".into())));
    assert_eq!(r.line("curb back 1").unwrap().start.y, ft(6.0));
    assert!(r.drains().iter().any(|d| d.to == Outfall::Curb));
}

#[test]
fn a_dormer_in_a_hole_meets_the_main_plane() {
    // A gabled dormer on the south plane: valleys against two edges of the hole, its face open below.
    let mut planes = gable();
    // Main height is 9 + y/2; the dormer's ridge at y = 8 is 13, its eaves at y = 4 are 11.
    if let Shape::Plan { holes, .. } = &mut planes[0].shape {
        holes.push(Opening { name: "dormer".into(), ring: vec![pt(16.0, 4.0), pt(24.0, 4.0), pt(20.0, 8.0)] });
    }
    planes.push(plane("dormer west", &[(16.0, 4.0), (20.0, 4.0), (20.0, 8.0)], "6:12", 180.0, (16.0, 4.0, 11.0)));
    planes.push(plane("dormer east", &[(20.0, 4.0), (24.0, 4.0), (20.0, 8.0)], "6:12", 0.0, (24.0, 4.0, 11.0)));
    let r = roof(planes);
    assert_eq!((count(&r, LineKind::Valley), count(&r, LineKind::Ridge), count(&r, LineKind::CurbFront)), (2, 2, 1));
}

#[test]
fn a_cone_of_eight_sides() {
    let corner = |i: i32| (20.0 * num::cos_deg(45.0 * f64::from(i)), 20.0 * num::sin_deg(45.0 * f64::from(i)));
    let planes: Vec<PlaneInput> =
        (0..8).map(|i| plane(&format!("face {i}"), &[corner(i), corner(i + 1), (0.0, 0.0)], "8:12", 45.0 * f64::from(i) + 22.5, (0.0, 0.0, 30.0))).collect();
    let r = roof(planes);
    assert_eq!((count(&r, LineKind::Hip), count(&r, LineKind::Eave), r.lines().len()), (8, 8, 16));
    let plan = 0.5 * 400.0 * num::sin_deg(45.0) * 8.0;
    assert_abs_diff_eq!(r.area().get(AreaUnit::SquareFoot), plan * (1.0_f64 + 4.0 / 9.0).sqrt(), epsilon = 1e-9);
    let hips: Vec<f64> = r.lines_of(LineKind::Hip).map(|l| l.length.mm()).collect();
    for h in &hips {
        assert_abs_diff_eq!(*h, hips[0], epsilon = 1e-6);
    }
}

#[test]
fn skewed_edges_go_by_their_water() {
    // A corner cut at 45 degrees at the foot and at the top, and an edge 3 degrees out of square.
    let out = 18.0 * num::tan_deg(3.0);
    let outer = [(6.0, 0.0), (30.0 + out, 0.0), (30.0, 18.0), (6.0, 18.0), (0.0, 12.0), (0.0, 6.0)];
    let r = roof(vec![plane("a", &outer, "4:12", 270.0, (0.0, 0.0, 9.0))]);
    let kinds: Vec<LineKind> = r.lines().iter().map(|l| l.kind).collect();
    assert_eq!(kinds, [LineKind::Eave, LineKind::Rake, LineKind::HighEdge, LineKind::HighEdge, LineKind::Rake, LineKind::Eave]);
    assert_eq!(r.line("rake 1").unwrap().side.water, Water::Away);
}

#[test]
fn cautions_have_numbers_of_their_own() {
    let mut numbers: Vec<u16> = cautions::ALL.iter().map(|c| c.number).collect();
    numbers.dedup();
    assert_eq!(numbers.len(), cautions::ALL.len());
    assert!(numbers.iter().all(|n| (3100..3200).contains(n)));
}
