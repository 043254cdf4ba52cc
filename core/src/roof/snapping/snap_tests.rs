//! Snapping: what is told, what is refused, and that a shaken roof comes together again.

use crate::error::{Error, ErrorKind};
use crate::record::Calculation;
use crate::roof::test_roofs::{gable, hip, roof, tee};
use crate::roof::{LineKind, PlaneInput, Roof, RoofInput, Shape, Snapping, Vertex};
use crate::units::Length;
use proptest::prelude::*;

fn solid(roof: &Roof) -> Vec<PlaneInput> {
    let plane =
        |p: &crate::roof::Plane| PlaneInput { name: p.name().into(), shape: Shape::Space { outer: p.rings()[0].clone(), holes: vec![], flatness: None } };
    roof.planes().iter().map(plane).collect()
}

fn outer(planes: &mut [PlaneInput], plane: usize) -> &mut Vec<Vertex> {
    let Shape::Space { outer, .. } = &mut planes[plane].shape else { panic!("in space") };
    outer
}

fn up(l: &mut Length, by: Length) {
    *l = (*l + by).length().unwrap();
}

fn snap(planes: Vec<PlaneInput>) -> Snapping {
    Snapping::new(RoofInput::new(planes))
}

fn refusal(s: &Snapping) -> Error {
    s.compute().unwrap_err()
}

#[test]
fn a_sound_roof_stays_as_it_is() {
    for planes in [gable(), hip()] {
        let given = roof(planes);
        let out = snap(solid(&given)).compute().unwrap();
        assert!(out.splits.is_empty() && out.dropped.is_empty() && out.merged.is_empty() && out.flattened.is_empty());
        assert!(out.moves.iter().all(|m| m.by <= Length::from_pm(2)), "{:?}", out.moves);
    }
}

#[test]
fn an_edge_is_split_where_neighbours_end_along_it() {
    // The north plane's ridge is met by two planes of the south, between which the wing's ridge ends.
    let given = roof(tee(60.0, 10.0, 20.0, 20.0));
    let out = snap(solid(&given)).compute().unwrap();
    assert_eq!(out.splits.iter().map(|s| (s.plane.as_str(), s.edge, s.off)).collect::<Vec<_>>(), [("north", 0, Length::ZERO)]);
    let again = out.roof.compute().unwrap();
    assert_eq!(again.planes()[0].rings()[0].len(), 5);
    let kinds = |r: &Roof| LineKind::ALL.iter().map(|k| r.lines_of(*k).count()).collect::<Vec<_>>();
    assert_eq!(kinds(&again), kinds(&given));
}

#[test]
fn faces_are_made_flat_and_the_error_told() {
    let mut planes = solid(&roof(gable()));
    up(&mut outer(&mut planes, 0)[0].z, Length::inches_64(4));
    let out = snap(planes.clone()).compute().unwrap();
    // One corner of a rectangle up by d: each corner stands d / 4 off the best plane in height (as the plane's own check says).
    let f = &out.flattened[0];
    let upright = 25.4 / 16.0 / 4.0 * crate::num::cos_deg(26.565_051_177_078);
    assert!(f.plane == "south" && (f.off_before.mm() - upright).abs() < 0.01, "{f:?}");
    assert!(out.flattened.iter().all(|f| f.off_after < Length::from_pm(1000)));
    let flat = out.roof.compute().unwrap();
    assert!(flat.planes().iter().all(|p| p.off_plane() < Length::from_pm(2000)));
    // Beyond the flatness it is refused, with the plane, the vertex and the distance.
    up(&mut outer(&mut planes, 0)[0].z, Length::inches(3));
    let e = refusal(&snap(planes));
    assert_eq!(e.kind(), ErrorKind::Geometry);
    assert!(e.message().contains("south") && e.path().starts_with("roof.planes[0].shape.space.outer[") && e.value().unwrap().ends_with("mm"), "{e}");
}

#[test]
fn neighbours_of_one_plane_become_one_when_asked() {
    let v = |x: i16, y: i16, z: i16| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
    let plane = |name: &str, outer: Vec<Vertex>| PlaneInput { name: name.into(), shape: Shape::Space { outer, holes: vec![], flatness: None } };
    let pieces = vec![
        plane("south", vec![v(0, 0, 0), v(20, 0, 0), v(20, 20, 10)]),
        plane("rest", vec![v(0, 0, 0), v(20, 20, 10), v(0, 20, 10)]),
        plane("more", vec![v(20, 0, 0), v(40, 0, 0), v(40, 20, 10), v(20, 20, 10)]),
        plane("north", vec![v(40, 40, 0), v(0, 40, 0), v(0, 20, 10), v(40, 20, 10)]),
    ];
    let mut s = snap(pieces.clone());
    assert!(s.compute().unwrap().merged.is_empty());
    s.merge_coplanar = true;
    let out = s.compute().unwrap();
    assert_eq!(out.merged.iter().map(|m| (m.into.as_str(), m.from.as_str())).collect::<Vec<_>>(), [("south", "rest"), ("south", "more")]);
    let r = out.roof.compute().unwrap();
    assert_eq!((r.planes().len(), r.lines().len(), r.cautions().len()), (2, 7, 0));
    // The seams between what was merged are gone from the eave, and from the ridge of the north plane, which they had split.
    assert_eq!((r.line("ridge 1").unwrap().length, out.splits.len()), (Length::feet(40), 0));
    assert_eq!(RoofInput::new(pieces).compute().unwrap().planes().len(), 4);
}

#[test]
fn chains_slivers_and_far_units_are_refused() {
    let given = roof(gable());
    let mut s = snap(solid(&given));
    s.tolerance = Some(Length::feet(25));
    let e = refusal(&s);
    assert_eq!(e.kind(), ErrorKind::Geometry, "{e}");
    let mut planes = solid(&given);
    up(&mut outer(&mut planes, 1)[0].x, Length::from_pm(40_000_000_000_000_000));
    let e = refusal(&snap(planes));
    assert_eq!((e.kind(), e.path(), e.cure()), (ErrorKind::OutOfRange, "roof.planes[1]", Some("check the unit of the coordinates")));
    let v = |x: i32, y: i32, z: i32| Vertex::new(Length::mils(x), Length::mils(y), Length::mils(z));
    let mut planes = solid(&given);
    planes.push(PlaneInput {
        name: "splinter".into(),
        shape: Shape::Space { outer: vec![v(900_000, 0, 0), v(999_000, 0, 0), v(999_000, 10, 5), v(900_000, 10, 5)], holes: vec![], flatness: None },
    });
    let e = refusal(&snap(planes.clone()));
    assert!(e.message().contains("splinter") && e.path() == "roof.planes[2].outer", "{e}");
    planes[2].name = "south".into();
    let mut s = snap(planes);
    s.tolerance = Some(Length::ZERO);
    s.flatness = Some(Length::from_pm(-1));
    let e = refusal(&s);
    let found: Vec<&str> = core::iter::once(&e).chain(e.others()).map(Error::path).collect();
    assert_eq!(found, ["tolerance", "flatness", "roof.planes[2].name"]);
    assert_eq!(refusal(&snap(vec![])).path(), "roof.planes");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn a_shaken_roof_comes_together(half in 5.0..20.0_f64, at in 6.0..30.0_f64, out in 6.0..30.0_f64, shake in prop::collection::vec(-1.0..1.0_f64, 60)) {
        let given = roof(tee(at + 2.0 * half + 9.0, half, at, out));
        let mut planes = solid(&given);
        let mut shake = shake.iter().cycle();
        // Each coordinate by at most 0.25 mm: two vertices then lie within 0.87 mm, under the sixteenth that is common practice.
        for p in 0..planes.len() {
            for v in outer(&mut planes, p) {
                for c in [&mut v.x, &mut v.y, &mut v.z] {
                    up(c, Length::from_mm(shake.next().unwrap() * 0.25).unwrap());
                }
            }
        }
        let snapped = snap(planes).compute().unwrap();
        prop_assert!(snapped.moves.iter().all(|m| m.by < Length::inches_64(8)), "{:?}", snapped.moves);
        let mut input = snapped.roof;
        // Now nothing is left to be matched by a tolerance.
        input.tolerance = Some(Length::micrometres(1));
        let r = input.compute().unwrap();
        prop_assert_eq!(r.lines().len(), given.lines().len());
        for kind in LineKind::ALL {
            prop_assert_eq!(r.lines_of(*kind).count(), given.lines_of(*kind).count(), "{}", kind);
        }
        prop_assert!(r.planes().iter().all(|p| p.off_plane() < Length::micrometres(1)), "{:?}", snapped.flattened);
        // Snapped again it stays.
        let again = Snapping::new(input).compute().unwrap();
        prop_assert!(again.moves.iter().all(|m| m.by < Length::micrometres(1)) && again.splits.is_empty());
    }
}
