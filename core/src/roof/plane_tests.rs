use super::{Opening, Plane, PlaneInput, Point, Shape, Vertex};
use crate::error::{Error, ErrorKind};
use crate::pitch::Pitch;
use crate::units::{Angle, AreaUnit, Length};
use proptest::prelude::*;

fn p(x: i16, y: i16) -> Point {
    Point::new(Length::feet(x), Length::feet(y))
}

fn v(x: i16, y: i16, z: i16) -> Vertex {
    Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z))
}

fn plan(outer: Vec<Point>, holes: Vec<Vec<Point>>, pitch: &str, fall: &str) -> Result<Plane, Error> {
    let holes = holes.into_iter().enumerate().map(|(i, ring)| Opening { name: format!("curb {i}"), ring }).collect();
    let shape = Shape::Plan { outer, holes, pitch: Pitch::parse(pitch).unwrap(), down_slope: Angle::parse(fall).unwrap(), anchor: v(0, 0, 10) };
    PlaneInput { name: "a".into(), shape }.plane()
}

fn space(outer: Vec<Vertex>) -> Result<Plane, Error> {
    PlaneInput { name: "a".into(), shape: Shape::Space { outer, holes: vec![], flatness: None } }.plane()
}

fn paths(e: &Error) -> Vec<&str> {
    core::iter::once(e).chain(e.others()).map(Error::path).collect()
}

#[test]
fn a_plan_polygon_rises_from_its_anchor() {
    let a = plan(vec![p(0, 0), p(0, 16), p(40, 16), p(40, 0)], vec![vec![p(10, 4), p(14, 4), p(14, 8), p(10, 8)]], "9:12", "270 deg").unwrap();
    assert_eq!(a.rings()[0], [v(0, 0, 10), v(40, 0, 10), v(40, 16, 22), v(0, 16, 22)]);
    assert_eq!(a.rings()[1][1], v(10, 8, 16));
    assert_eq!(a.outline().outer(), [p(0, 0), p(40, 0), p(40, 20), p(0, 20)]);
    assert_eq!(a.outline().holes(), [vec![p(10, 5), p(10, 10), p(14, 10), p(14, 5)]]);
    assert_eq!((a.to_plane(v(40, 16, 22)).unwrap(), a.to_space(p(40, 20)).unwrap()), (p(40, 20), v(40, 16, 22)));
    assert_eq!((a.origin().unwrap(), a.at_plan(p(3, 4)).unwrap()), (v(0, 0, 10), v(3, 4, 13)));
    assert!((a.area().get(AreaUnit::SquareFoot) - (640.0 - 16.0) * 1.25).abs() < 1e-9);
    assert!((a.outline().area().get(AreaUnit::SquareFoot) - (640.0 - 16.0) * 1.25).abs() < 1e-9);
}

#[test]
fn x_is_to_the_right_when_looking_up_the_slope() {
    for (fall, right) in [("270 deg", (1.0, 0.0)), ("180 deg", (0.0, -1.0)), ("90 deg", (-1.0, 0.0)), ("0 deg", (0.0, 1.0)), ("-90 deg", (1.0, 0.0))] {
        let a = plan(vec![p(0, 0), p(9, 0), p(9, 9), p(0, 9)], vec![], "6:12", fall).unwrap();
        assert_eq!((a.across().x_ratio, a.across().y_ratio, a.across().z_ratio), (right.0, right.1, 0.0), "{fall}");
        assert!(a.up().z_ratio > 0.0);
        assert!((0.0..360.0).contains(&a.down_slope().degrees()));
    }
}

#[test]
fn both_forms_give_one_plane() {
    let a = plan(vec![p(0, 0), p(40, 0), p(30, 16), p(0, 16)], vec![], "9:12", "270 deg").unwrap();
    let b = space(a.rings()[0].clone()).unwrap();
    assert_eq!((a.rings(), a.outline(), a.off_plane()), (b.rings(), b.outline(), b.off_plane()));
    assert!((a.slope().degrees() - b.slope().degrees()).abs() < 1e-12);
    assert_eq!(a.down_slope(), b.down_slope());
}

#[test]
fn refuses_planes_that_are_no_roof() {
    for (outer, message) in [
        (vec![v(0, 0, 0), v(4, 0, 0), v(4, 0, 4), v(0, 0, 4)], "vertical"),
        (vec![v(0, 0, 0), v(0, 4, 2), v(4, 4, 2), v(4, 0, 0)], "faces down"),
        (vec![v(0, 0, 0), v(4, 0, 0), v(4, 4, 0), v(0, 4, 0)], "too level"),
        (vec![v(0, 0, 0), v(4, 0, 0), v(9, 0, 0)], "outer"),
        (vec![v(0, 0, 0)], "too few"),
        (vec![], "too few"),
    ] {
        let e = space(outer).unwrap_err();
        assert_eq!(e.kind(), ErrorKind::Geometry);
        assert!(e.to_string().contains(message), "{e}");
    }
    let steep = plan(vec![p(0, 0), p(4, 0)], vec![], "89.95 deg", "270 deg").unwrap_err();
    assert_eq!(paths(&steep), ["shape.plan.pitch", "shape.plan.outer"]);
    let far = Length::from_f64(40.0e3, crate::units::LengthUnit::Metre).unwrap();
    for outer in [vec![v(0, 0, 0), Vertex { x: far, ..v(0, 0, 0) }, v(4, 4, 3)], vec![v(0, 0, 0), v(4, 0, 0), Vertex { z: Length::MAX, ..v(4, 4, 3) }]] {
        let e = space(outer).unwrap_err();
        assert_eq!((e.kind(), e.cure()), (ErrorKind::OutOfRange, Some("check the unit of the coordinates")));
    }
}

#[test]
fn names_the_vertex_off_the_plane_and_its_distance() {
    // One corner of a level-sided square raised by d moves the best plane: each vertex then lies d/4 off in height.
    let mut outer = vec![v(0, 0, 0), v(10, 0, 0), v(10, 10, 10), v(0, 10, 10)];
    outer[2].z = (outer[2].z + Length::inches(4)).length().unwrap();
    let e = space(outer.clone()).unwrap_err();
    assert_eq!(paths(&e), ["shape.space.outer[0]", "shape.space.outer[1]", "shape.space.outer[2]", "shape.space.outer[3]"]);
    let off = Length::parse(e.value().unwrap()).unwrap();
    assert!((off.mm() - 25.4 * 0.5_f64.sqrt()).abs() < 0.2, "{off}");
    let shape = Shape::Space { outer, holes: vec![], flatness: Some(Length::inches(1)) };
    let plane = PlaneInput { name: "a".into(), shape }.plane().unwrap();
    assert!((plane.off_plane().mm() - off.mm()).abs() < 1e-9);
}

#[test]
fn reports_names_and_rings_at_once() {
    let shape = Shape::Plan {
        outer: vec![p(0, 0), p(4, 3), p(4, 0), p(0, 3)],
        holes: vec![
            Opening { name: String::new(), ring: vec![p(1, 1)] },
            Opening { name: "c".into(), ring: vec![] },
            Opening { name: "c".into(), ring: vec![] },
        ],
        pitch: Pitch::FLAT,
        down_slope: Angle::ZERO,
        anchor: v(0, 0, 0),
    };
    let e = PlaneInput { name: " ".into(), shape }.plane().unwrap_err();
    let found = paths(&e);
    for path in ["name", "shape.plan.holes[0].name", "shape.plan.holes[2].name", "shape.plan.outer", "shape.plan.holes[0].ring", "shape.plan.holes[1].ring"] {
        assert!(found.contains(&path), "{path} in {found:?}");
    }
}

proptest! {
    #[test]
    fn a_moved_renumbered_or_mirrored_plane_has_the_same_shape(
        depth in 500_000_i32..20_000_000, width in 500_000_i32..30_000_000, cut in 1_i32..400_000, rise in 1_i16..20,
        turn in 0.0..360.0_f64, dx in any::<i32>(), dy in any::<i32>(), dz in any::<i32>()
    ) {
        let fall = Angle::degrees_from(turn).unwrap();
        let um = Length::micrometres;
        let outer = vec![Point::new(um(0), um(0)), Point::new(um(width), um(0)), Point::new(um(width - cut), um(depth)), Point::new(um(cut / 3), um(depth))];
        let build = |outer: Vec<Point>, fall: Angle, anchor: Vertex| {
            let pitch = Pitch::in_twelve(Length::inches(rise)).unwrap();
            PlaneInput { name: "a".into(), shape: Shape::Plan { outer, holes: vec![], pitch, down_slope: fall, anchor } }.plane().unwrap()
        };
        let here = build(outer.clone(), fall, Vertex::default());
        let by = |l: Length, d: i32| (l + um(d)).length().unwrap();
        let moved = build(outer.iter().map(|q| Point::new(by(q.x, dx), by(q.y, dy))).collect(), fall, Vertex::new(um(dx), um(dy), um(dz)));
        prop_assert_eq!(here.outline(), moved.outline());
        prop_assert_eq!((here.area(), here.pitch()), (moved.area(), moved.pitch()));

        let mut renumbered = outer.clone();
        renumbered.rotate_left(2);
        let renumbered = build(renumbered, fall, Vertex::default());
        let mut again = renumbered.outline().outer().to_vec();
        again.rotate_left(2);
        prop_assert_eq!(here.outline().outer(), again.as_slice());

        // Mirrored in the x axis, where the angle is exact; the ring turns round, the first vertex stays.
        let mirrored = build(outer.iter().map(|q| Point::new(q.x, (-q.y).length().unwrap())).collect(), Angle::degrees_from(-turn).unwrap(), Vertex::default());
        let wide = here.outline().bounds().high.x;
        let mut back: Vec<Point> = mirrored.outline().outer().iter().map(|q| Point::new((wide - q.x).length().unwrap(), q.y)).collect();
        back[1..].reverse();
        prop_assert_eq!(here.outline().outer(), back.as_slice());

        // The same plane from its vertices; they are rounded to 1 pm, so that the slope moves by that over the size.
        let solid = PlaneInput { name: "a".into(), shape: Shape::Space { outer: here.rings()[0].clone(), holes: vec![], flatness: None } }.plane().unwrap();
        prop_assert!((solid.slope().degrees() - here.slope().degrees()).abs() < 1e-9);
        for (a, b) in solid.outline().outer().iter().zip(here.outline().outer()) {
            prop_assert!((a.x.mm() - b.x.mm()).abs() < 1e-6 && (a.y.mm() - b.y.mm()).abs() < 1e-6);
        }
        // There and back again.
        for (at, q) in here.rings()[0].iter().zip(here.outline().outer()) {
            let there = here.to_space(*q).unwrap();
            prop_assert!((there.x.pm() - at.x.pm()).abs() <= 3 && (there.y.pm() - at.y.pm()).abs() <= 3 && (there.z.pm() - at.z.pm()).abs() <= 3);
        }
    }
}
