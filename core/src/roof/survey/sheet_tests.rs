//! Measuring sheets: least, in order, and enough to get the roof back.

use super::joined_tests::{from_edge, same_lines};
use crate::error::ErrorKind;
use crate::num;
use crate::record::Calculation;
use crate::roof::test_roofs::{gable, hip, pt, roof, tee};
use crate::roof::{
    JoinedPlanes, LevelSide, LinePart, MeasuringSheet, Opening, Outline, PitchNeed, PlaneSheet, Point, Roof, SheetLine, SketchedPlane, SketchedRoof,
    SlopeAnchor, SlopeEnd, TieReading, Vertex,
};
use crate::units::Length;
use proptest::prelude::*;
use std::collections::BTreeSet;

fn lines(sheet: &PlaneSheet, part: LinePart) -> Vec<(String, usize)> {
    sheet.lines.iter().filter(|l| l.part == part).map(|l| (format!("{}-{}", l.from, l.to), l.number)).collect()
}

#[test]
fn a_hip_roof_is_walked_round_its_eaves() {
    let sheet = SketchedRoof::of(&roof(hip())).compute().unwrap();
    let order: Vec<&str> = sheet.planes.iter().map(|p| p.plane.as_str()).collect();
    assert_eq!(order, ["south", "east", "north", "west"]);
    let south = &sheet.planes[0];
    assert_eq!(lines(south, LinePart::Side), [("A-B", 1), ("B-C", 2), ("C-D", 3), ("D-A", 4)].map(|(a, n)| (a.to_owned(), n)));
    assert_eq!((lines(south, LinePart::Diagonal).len(), lines(south, LinePart::Check).len()), (1, 2));
    // The east triangle shares the hip from B to C; its two checks go to marks on its sides.
    let east = &sheet.planes[1];
    let shared: Vec<(usize, &str)> = east.lines.iter().filter_map(|l| Some((l.number, l.shared.as_deref()?))).collect();
    assert_eq!(shared, [(2, "south")]);
    assert_eq!((east.marks.len(), lines(east, LinePart::Check).len(), lines(east, LinePart::Diagonal).len()), (2, 2, 0));
    assert_eq!(east.marks[0].distance, Length::feet(10), "half of the eave of 20 ft");
    // Four hips and the ridge are measured once: 2 x (4 + 3) sides less five, two diagonals, eight checks.
    assert_eq!((sheet.lines, sheet.joints.len()), (14 - 5 + 2 + 8, 5));
    let from_north = SketchedRoof { start: Some("north".into()), ..SketchedRoof::of(&roof(hip())) }.compute().unwrap();
    assert_eq!(from_north.planes.iter().map(|p| p.plane.as_str()).collect::<Vec<_>>(), ["north", "west", "south", "east"]);
}

#[test]
fn bad_sketches_are_refused() {
    let sketch = |outer: Vec<_>| SketchedRoof::new(vec![SketchedPlane::new("a", outer)]);
    let e = sketch(vec![pt(0.0, 0.0), pt(10.0, 5.0), pt(10.0, 0.0), pt(0.0, 6.0)]).compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "planes[0].outer[0]"));
    let e = sketch(vec![pt(0.0, 0.0), pt(10.0, 0.0), pt(10.0, 0.5)]).compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "planes[0].outer"), "{e}");
    let mut two = sketch(vec![pt(0.0, 0.0), pt(10.0, 0.0), pt(10.0, 5.0)]);
    two.planes.push(two.planes[0].clone());
    two.start = Some("b".into());
    two.tolerance = Some(Length::ZERO);
    let e = two.compute().unwrap_err();
    let found: Vec<&str> = core::iter::once(&e).chain(e.others()).map(crate::error::Error::path).collect();
    assert_eq!(found, ["tolerance", "planes[1].name", "start"]);
    assert_eq!(SketchedRoof::new(vec![]).compute().unwrap_err().kind(), ErrorKind::Missing);
    let sheet = SketchedRoof::of(&roof(gable())).compute().unwrap();
    assert_eq!(sheet.filled(&[]).unwrap_err().path(), "lengths");
}

#[test]
fn a_polygon_with_an_inner_corner_is_measured_within_itself() {
    // An L: from the far ends of its arms no tape runs within it.
    let l = vec![pt(0.0, 0.0), pt(20.0, 0.0), pt(20.0, 8.0), pt(8.0, 8.0), pt(8.0, 20.0), pt(0.0, 20.0)];
    let sheet = SketchedRoof::new(vec![SketchedPlane::new("l", l)]).compute().unwrap();
    let plane = &sheet.planes[0];
    let all: BTreeSet<String> = plane.lines.iter().map(|l| format!("{}{}", l.from, l.to)).collect();
    assert_eq!((lines(plane, LinePart::Diagonal).len(), lines(plane, LinePart::Check).len()), (3, 2));
    // C is (20, 8), E (8, 20): the straight line between them leaves the plane.
    assert!(!all.contains("CE") && !all.contains("BE") && !all.contains("CF"), "{all:?}");
}

fn spot(plane: &PlaneSheet, name: &str) -> [f64; 2] {
    let corner = |name: &str| {
        let at = plane.corners.iter().chain(plane.openings.iter().flat_map(|o| &o.corners)).find(|c| c.name == name).unwrap().at;
        [at.x.mm(), at.y.mm()]
    };
    let Some(mark) = plane.marks.iter().find(|m| m.name == name) else { return corner(name) };
    let (a, b) = (corner(&mark.from), corner(&mark.toward));
    let part = mark.distance.mm() / num::hypot(b[0] - a[0], b[1] - a[1]);
    [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part]
}

#[test]
fn the_sheet_says_which_pitches_follow() {
    let needs = |roof: &Roof| -> Vec<(String, String)> {
        SketchedRoof::of(roof).compute().unwrap().planes.iter().map(|p| (p.plane.clone(), p.pitch.to_string())).collect()
    };
    let pairs = |given: &[(&str, &str)]| given.iter().map(|(a, b)| ((*a).to_owned(), (*b).to_owned())).collect::<Vec<_>>();
    // Over the hips every pitch follows from the first; over a ridge alone none does.
    let hips = pairs(&[("south", "measure"), ("east", "follows from south"), ("north", "follows from east and west"), ("west", "follows from south")]);
    assert_eq!(needs(&roof(hip())), hips);
    assert_eq!(needs(&roof(gable())), pairs(&[("south", "measure"), ("north", "measure")]));
    // Without the way that water runs nothing is taken for sloping.
    let mut silent = SketchedRoof::of(&roof(hip()));
    silent.planes.iter_mut().for_each(|p| p.down_slope = None);
    assert!(silent.compute().unwrap().planes.iter().all(|p| p.pitch == PitchNeed::Measured));
    // What the sheet asks for is enough to fold the roof. None of it can be left out where no loop of planes closes.
    for planes in [gable(), hip(), tee(60.0, 10.0, 20.0, 20.0)] {
        let given = roof(planes);
        let sheet = SketchedRoof::of(&given).compute().unwrap();
        let asked: Vec<&str> = sheet.planes.iter().filter(|p| p.pitch == PitchNeed::Measured).map(|p| p.plane.as_str()).collect();
        let read = read(&sheet, &given, |_| 0.0);
        same_lines(&given, &rebuilt(&sheet, &given, &read, &asked), 1e-6);
        for left_out in asked.iter().skip(1).filter(|_| given.planes().len() == 2) {
            let fewer: Vec<&str> = asked.iter().copied().filter(|a| a != left_out).collect();
            assert_eq!(joined(&sheet, &given, &read, &fewer).compute().unwrap_err().kind(), ErrorKind::Missing, "{left_out}");
        }
    }
}

/// A rectangle with a chimney in its middle, which stands in the way of both diagonals, a skylight and a three-sided vent.
fn pierced() -> SketchedPlane {
    let hole = |name: &str, ring: &[(f64, f64)]| Opening { name: name.into(), ring: ring.iter().map(|&(x, y)| pt(x, y)).collect() };
    let holes = vec![
        hole("chimney", &[(18.0, 8.0), (22.0, 8.0), (22.0, 12.0), (18.0, 12.0)]),
        hole("skylight", &[(30.0, 4.0), (30.0, 8.0), (34.0, 8.0), (34.0, 4.0)]),
        hole("vent", &[(5.0, 5.0), (8.0, 5.0), (6.5, 8.0)]),
    ];
    SketchedPlane { holes, ..SketchedPlane::new("south", vec![pt(0.0, 0.0), pt(40.0, 0.0), pt(40.0, 20.0), pt(0.0, 20.0)]) }
}

#[test]
fn openings_are_placed_and_shaped_by_the_least_that_a_tape_can_reach() {
    let sheet = SketchedRoof::new(vec![pierced()]).compute().unwrap();
    let plane = &sheet.planes[0];
    let names: Vec<(&str, usize)> = plane.openings.iter().map(|o| (o.name.as_str(), o.corners.len())).collect();
    assert_eq!(names, [("chimney", 4), ("skylight", 4), ("vent", 3)]);
    // 2 x 15 - 3 for the plane's four corners and the openings' eleven, and two checks for the plane and for each opening.
    let of = |part: LinePart| lines(plane, part).len();
    assert_eq!((of(LinePart::Side), of(LinePart::Opening), of(LinePart::Check)), (4, 11, 8));
    assert_eq!(of(LinePart::Diagonal) + of(LinePart::Tie), 27 - 15);
    // Numbers run on in the order of the walk, and no pair is asked for twice.
    assert_eq!(plane.lines.iter().map(|l| l.number).collect::<Vec<_>>(), (1..=sheet.lines).collect::<Vec<_>>());
    let pairs: BTreeSet<[&str; 2]> = plane.lines.iter().map(|l| if l.from < l.to { [l.from.as_str(), &l.to] } else { [l.to.as_str(), &l.from] }).collect();
    assert_eq!(pairs.len(), sheet.lines);
    // No tape runs through an opening: a thousand places along each line are in the plane.
    let outline = Outline::new(pierced().outer, pierced().holes.into_iter().map(|h| h.ring).collect()).unwrap();
    for line in plane.lines.iter().filter(|l| !matches!(l.part, LinePart::Side | LinePart::Opening)) {
        let (a, b) = (spot(plane, &line.from), spot(plane, &line.to));
        for i in 1..1000 {
            let at = |k: usize| Length::from_mm(a[k] + (b[k] - a[k]) * f64::from(i) / 1000.0).unwrap();
            assert!(outline.contains(Point::new(at(0), at(1))), "{} {}", line.from, line.to);
        }
    }
    // Each length that is needed is: without it and the checks the shape is not fixed.
    let read: Vec<Length> = plane.lines.iter().map(|l| l.about).collect();
    let mut least = sheet.filled(&read).unwrap().remove(0);
    least.lengths.retain(|l| plane.lines.iter().any(|s| s.part != LinePart::Check && s.from == l.from && s.to == l.to));
    assert_eq!(least.compute().unwrap().checks, 0);
    for i in 0..least.lengths.len() {
        let mut less = least.clone();
        less.lengths.remove(i);
        assert_eq!(less.compute().unwrap_err().kind(), ErrorKind::Missing);
    }
}

#[test]
fn openings_come_back_from_the_tape_where_they_are() {
    let sheet = SketchedRoof::new(vec![pierced()]).compute().unwrap();
    // The roof is not the sketch: a foot longer, and what is in it moved.
    let truth = |c: [f64; 2]| [c[0] * 1.025, c[1] * 0.99 + c[0] * 0.01];
    let plane = &sheet.planes[0];
    let length = |l: &SheetLine| {
        let (a, b) = (truth(spot(plane, &l.from)), truth(spot(plane, &l.to)));
        Length::from_mm(num::hypot(b[0] - a[0], b[1] - a[1])).unwrap()
    };
    assert!(plane.marks.is_empty());
    let read: Vec<Length> = plane.lines.iter().map(length).collect();
    let measured = sheet.filled(&read).unwrap().remove(0);
    let shape = measured.compute().unwrap();
    assert_eq!((shape.needed, shape.checks, shape.openings.len(), shape.slope_plane.holes.len()), (27, 8, 3, 3));
    assert!(shape.misclosure.unwrap() < Length::from_pm(1000));
    let all = |shape: &crate::roof::PlaneShape| -> Vec<(String, [f64; 2])> {
        shape.corners.iter().chain(shape.openings.iter().flat_map(|o| &o.corners)).map(|c| (c.name.clone(), [c.at.x.mm(), c.at.y.mm()])).collect()
    };
    // Every pair of corners is as far apart as on the roof, and on the same side.
    let found = all(&shape);
    for (one, p) in &found {
        for (two, q) in &found {
            let (a, b) = (truth(spot(plane, one)), truth(spot(plane, two)));
            assert!((num::hypot(q[0] - p[0], q[1] - p[1]) - num::hypot(b[0] - a[0], b[1] - a[1])).abs() < 1e-6, "{one} {two}");
        }
    }
    assert_eq!(shape.slope_plane.holes[1].ring, shape.openings[1].corners.iter().map(|c| c.at).collect::<Vec<_>>());
    // A slip of an inch in a tie is found by the opening's own checks.
    let tie = plane.lines.iter().find(|l| l.part == LinePart::Tie).unwrap();
    let mut slipped = measured;
    let wrong = slipped.lengths.iter_mut().find(|l| l.from == tie.from && l.to == tie.to).unwrap();
    wrong.length = (wrong.length + Length::inches(1)).length().unwrap();
    assert_eq!(slipped.compute().unwrap_err().kind(), ErrorKind::Impossible);
}

#[test]
fn bad_openings_are_refused() {
    let mut sketch = SketchedRoof::new(vec![pierced()]);
    sketch.planes[0].holes[1].name = "chimney".into();
    sketch.planes[0].holes[2].name = " ".into();
    let e = sketch.compute().unwrap_err();
    let found: Vec<&str> = core::iter::once(&e).chain(e.others()).map(crate::error::Error::path).collect();
    assert_eq!(found, ["planes[0].holes[1].name", "planes[0].holes[2].name"]);
    let mut sketch = SketchedRoof::new(vec![pierced()]);
    sketch.planes[0].holes[0].ring[0] = pt(-3.0, 3.0);
    assert_eq!(sketch.compute().unwrap_err().kind(), ErrorKind::Geometry);
    let mut measured = SketchedRoof::new(vec![pierced()]).compute().unwrap().filled(&[Length::feet(1); 35]).unwrap().remove(0);
    measured.openings[0].corners.truncate(2);
    measured.openings[1].name = "vent".into();
    measured.openings[2].corners[1] = "A".into();
    let e = measured.compute().unwrap_err();
    let found: Vec<&str> = core::iter::once(&e).chain(e.others()).map(crate::error::Error::path).collect();
    assert!(["openings[0].corners", "openings[2].name", "openings[2].corners[1]"].iter().all(|p| found.contains(p)), "{found:?}");
}

/// The true length of every line of a sheet on a roof that is known, off by what `off` says of each.
fn read(sheet: &MeasuringSheet, roof: &Roof, off: impl Fn(usize) -> f64) -> Vec<Length> {
    let mut out = vec![Length::ZERO; sheet.lines];
    for plane in &sheet.planes {
        let known = &roof.planes()[plane.number];
        let place = |name: &str| -> [f64; 3] {
            let corner = |name: &str| {
                let at = plane.corners.iter().chain(plane.openings.iter().flat_map(|o| &o.corners)).find(|c| c.name == name).unwrap().at;
                let v = known.at_plan(at).unwrap();
                [v.x.mm(), v.y.mm(), v.z.mm()]
            };
            match plane.marks.iter().find(|m| m.name == name) {
                None => corner(name),
                Some(m) => {
                    let (a, b) = (corner(&m.from), corner(&m.toward));
                    let d = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
                    let part = m.distance.mm() / num::hypot(num::hypot(d[0], d[1]), d[2]);
                    [a[0] + d[0] * part, a[1] + d[1] * part, a[2] + d[2] * part]
                }
            }
        };
        for line in plane.lines.iter().filter(|l| l.shared.is_none()) {
            let (a, b) = (place(&line.from), place(&line.to));
            let true_mm = num::hypot(num::hypot(b[0] - a[0], b[1] - a[1]), b[2] - a[2]);
            out[line.number - 1] = Length::from_mm(true_mm + off(line.number)).unwrap();
        }
    }
    out
}

/// The roof from readings alone: each plane solved with its level sides, then folded from the first, with the pitches that are level at every joint.
fn rebuilt(sheet: &MeasuringSheet, roof: &Roof, lengths: &[Length], pitched: &[&str]) -> Roof {
    let mut input = joined(sheet, roof, lengths, pitched).compute().unwrap().roof;
    // Back in the order of the sketch, so that lines have the same names.
    let mut ordered = input.planes.clone();
    for (plane, sheet) in input.planes.iter().zip(&sheet.planes) {
        ordered[sheet.number] = plane.clone();
    }
    for (plane, known) in ordered.iter_mut().zip(roof.planes()) {
        let crate::roof::Shape::Space { outer, .. } = &mut plane.shape else { panic!("in space") };
        let to = known.rings()[0][0];
        let far = |v: &Vertex| num::hypot(v.x.mm() - to.x.mm(), v.y.mm() - to.y.mm());
        let first = (0..outer.len()).min_by(|a, b| far(&outer[*a]).total_cmp(&far(&outer[*b]))).unwrap();
        outer.rotate_left(first);
    }
    input.planes = ordered;
    input.walls = roof.walls().to_vec();
    input.compute().unwrap()
}

/// The planes of the readings with their joints, before they are folded.
fn joined(sheet: &MeasuringSheet, roof: &Roof, lengths: &[Length], pitched: &[&str]) -> JoinedPlanes {
    let mut planes = Vec::new();
    for (measured, plane) in sheet.filled(lengths).unwrap().iter_mut().zip(&sheet.planes) {
        let known = &roof.planes()[plane.number];
        let corner = |i: usize| {
            let at = plane.corners[i % plane.corners.len()].at;
            known.at_plan(at).unwrap()
        };
        let middle: f64 = (0..plane.corners.len()).map(|i| corner(i).z.mm()).sum::<f64>() / plane.corners.len() as f64;
        for i in 0..plane.corners.len() {
            if (corner(i).z.mm() - corner(i + 1).z.mm()).abs() < 1e-2 {
                let end = if corner(i).z.mm() < middle { SlopeEnd::Foot } else { SlopeEnd::Head };
                let name = |i: usize| plane.corners[i % plane.corners.len()].name.clone();
                measured.level.push(LevelSide { side: [name(i), name(i + 1)], end });
            }
        }
        let mut solved = measured.compute().unwrap().slope_plane;
        solved.pitch = (planes.is_empty() || pitched.contains(&plane.plane.as_str())).then(|| known.pitch());
        planes.push(solved);
    }
    let first = &sheet.planes[0];
    let at: Vertex = roof.planes()[first.number].at_plan(first.corners[0].at).unwrap();
    let anchor = SlopeAnchor { plane: first.plane.clone(), corner: 0, at, down_slope: roof.planes()[first.number].down_slope() };
    // What a level and a plumb line say of the ties.
    let on = |plane: &str, hole: Option<&str>, corner: usize| {
        let sheet = sheet.planes.iter().find(|p| p.plane == plane).unwrap();
        let ring = hole.map_or(&sheet.corners, |h| &sheet.openings.iter().find(|o| o.name == h).unwrap().corners);
        roof.planes()[sheet.number].at_plan(ring[corner % ring.len()].at).unwrap()
    };
    let read = |t: &crate::roof::SheetTie| {
        let edge = |by: usize| on(&t.from.plane, t.from.hole.as_deref(), t.from.edge + by);
        let [along, out, up] = from_edge(on(&t.plane, None, t.corner), edge(0), edge(1));
        TieReading { along, out, up }
    };
    let ties = sheet.tied(&sheet.ties.iter().map(read).collect::<Vec<_>>()).unwrap();
    JoinedPlanes { ties, ..JoinedPlanes::new(planes, sheet.joints.clone(), anchor) }
}

/// A hip roof, or a gable with a pitch on each side, of any size and place.
fn any_roof() -> impl Strategy<Value = (Roof, Vec<&'static str>)> {
    let sizes = (10.0..60.0_f64, 4.0..20.0_f64, 2.0..14.0_f64, 2.0..14.0_f64, any::<bool>());
    sizes.prop_map(|(long, half, rise, other, hipped)| {
        let pitch = |r: f64| format!("{}:12", (r * 8.0).round() / 8.0);
        let plane = crate::roof::test_roofs::plane;
        let long = long + 2.0 * half;
        if hipped {
            let r = pitch(rise);
            let planes = vec![
                plane("south", &[(0.0, 0.0), (long, 0.0), (long - half, half), (half, half)], &r, 270.0, (0.0, 0.0, 9.0)),
                plane("east", &[(long, 0.0), (long, 2.0 * half), (long - half, half)], &r, 0.0, (long, 0.0, 9.0)),
                plane("north", &[(long, 2.0 * half), (0.0, 2.0 * half), (half, half), (long - half, half)], &r, 90.0, (0.0, 2.0 * half, 9.0)),
                plane("west", &[(0.0, 2.0 * half), (0.0, 0.0), (half, half)], &r, 180.0, (0.0, 0.0, 9.0)),
            ];
            (roof(planes), vec![])
        } else {
            let (r, s) = ((rise * 8.0).round() / 8.0, (other * 8.0).round() / 8.0);
            let top = 9.0 + half * r / 12.0;
            let deep = half * r / s;
            let planes = vec![
                plane("south", &[(0.0, 0.0), (long, 0.0), (long, half), (0.0, half)], &pitch(r), 270.0, (0.0, 0.0, 9.0)),
                plane("north", &[(long, half + deep), (0.0, half + deep), (0.0, half), (long, half)], &pitch(s), 90.0, (0.0, half, top)),
            ];
            (roof(planes), vec!["north"])
        }
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn every_way_in_gives_one_roof((given, pitched) in any_roof(), offs in prop::collection::vec(-1.0..1.0_f64, 40)) {
        // In plan it was given; by its vertices:
        let solid = given.planes().iter().map(|p| crate::roof::PlaneInput {
            name: p.name().into(),
            shape: crate::roof::Shape::Space { outer: p.rings()[0].clone(), holes: vec![], flatness: None },
        });
        same_lines(&given, &roof(solid.collect()), 1e-6);
        // On the slope:
        let joined = super::joined_tests::unfolded(&given, &pitched).compute().unwrap();
        same_lines(&given, &joined.roof.compute().unwrap(), 1e-6);
        // By the tape, read exactly:
        let sheet = SketchedRoof::of(&given).compute().unwrap();
        same_lines(&given, &rebuilt(&sheet, &given, &read(&sheet, &given, |_| 0.0), &pitched), 1e-6);
        // And read to a sixteenth, so off by 1/32 in at most: every line within half an inch, sixteen times that. Short sides of steep planes carry it far.
        let read = read(&sheet, &given, |n| offs[n % offs.len()] * 25.4 / 16.0 / 2.0);
        let taped = rebuilt(&sheet, &given, &read, &pitched);
        prop_assert_eq!(taped.lines().len(), given.lines().len());
        for (l, m) in given.lines().iter().zip(taped.lines()) {
            prop_assert_eq!(l.kind, m.kind);
            prop_assert!((l.length.mm() - m.length.mm()).abs() < 12.7, "{} {} {}", l.name, l.length, m.length);
        }
    }
}

#[test]
fn a_sheet_of_a_cross_wing_covers_every_plane() {
    let given = roof(tee(60.0, 10.0, 20.0, 20.0));
    let sheet = SketchedRoof::of(&given).compute().unwrap();
    assert_eq!(sheet.planes.len(), 5);
    // Two valleys and the wing's ridge; the main ridge, one side of the north plane, is measured in two parts, as the two south planes have it.
    assert_eq!(sheet.joints.len(), 5);
    assert_eq!(sheet.planes.iter().find(|p| p.plane == "north").unwrap().corners.len(), 5);
    for (plane, measured) in sheet.planes.iter().zip(sheet.filled(&read(&sheet, &given, |_| 0.0)).unwrap()) {
        let shape = measured.compute().unwrap();
        assert_eq!((shape.checks, plane.corners.len()), (2, shape.corners.len()));
        assert!(shape.misclosure.unwrap() < Length::from_pm(1000), "{}", plane.plane);
    }
}

/// Two ties for each group of planes that only a wall joins to the rest, and none where lines join all; counted by hand on a sketch of each roof.
#[cfg(feature = "serde")]
#[test]
fn a_group_of_planes_that_a_wall_parts_has_two_ties() {
    use crate::roof::sample_roofs::SAMPLES;
    let tied = [("stepped-gable", 1), ("mono-slopes", 1), ("lean-tos", 2)];
    for sample in SAMPLES {
        let sheet = SketchedRoof::of(&sample.roof()).compute().unwrap();
        let groups = tied.iter().find(|(name, _)| *name == sample.name).map_or(0, |(_, groups)| *groups);
        assert_eq!(sheet.ties.len(), 2 * groups, "{}", sample.name);
        assert!(sheet.ties.iter().all(|t| sheet.planes.iter().any(|p| p.plane == t.plane && p.pitch == PitchNeed::Measured)), "{}", sample.name);
        assert_eq!(sheet.tied(&[]).is_ok(), groups == 0);
    }
    // The shed's head lies under the eave of the house, from 32 to 46 ft along it.
    let lean_tos = SAMPLES.iter().find(|s| s.name == "lean-tos").unwrap().roof();
    let sheet = SketchedRoof::of(&lean_tos).compute().unwrap();
    let shed: Vec<_> = sheet.ties.iter().filter(|t| t.plane == "shed").collect();
    assert!(shed.iter().all(|t| t.from.plane == "south" && t.out == Length::ZERO && t.from.hole.is_none()), "{shed:?}");
    assert_eq!((shed[0].along - shed[1].along).length().unwrap(), Length::feet(14));
}

/// Roofs of every common kind from their plans, their vertices, their slopes and the tape: one roof.
#[cfg(feature = "serde")]
#[test]
fn every_common_roof_is_one_by_all_four_ways_in() {
    use crate::roof::sample_roofs::SAMPLES;
    let mut done = 0;
    for sample in SAMPLES {
        let given = sample.roof();
        let pitched: Vec<&str> = given.planes().iter().map(|p| p.name()).collect();
        let solid = given.planes().iter().map(|p| crate::roof::PlaneInput {
            name: p.name().into(),
            shape: crate::roof::Shape::Space {
                outer: p.rings()[0].clone(),
                holes: p.hole_names().iter().zip(&p.rings()[1..]).map(|(name, ring)| Opening { name: name.clone(), ring: ring.clone() }).collect(),
                flatness: None,
            },
        });
        let walls = sample.input().walls;
        let walled = |input: crate::roof::RoofInput| crate::roof::RoofInput { walls: walls.clone(), ..input }.compute().unwrap();
        same_lines(&given, &walled(crate::roof::RoofInput::new(solid.collect())), 1e-3);
        let joined = super::joined_tests::unfolded(&given, &pitched).compute().unwrap();
        same_lines(&given, &walled(joined.roof), 1e-3);
        let sheet = SketchedRoof::of(&given).compute().unwrap();
        // Only the pitches that the sheet asks for.
        let asked: Vec<&str> = sheet.planes.iter().filter(|p| p.pitch == PitchNeed::Measured).map(|p| p.plane.as_str()).collect();
        let taped = rebuilt(&sheet, &given, &read(&sheet, &given, |_| 0.0), &asked);
        assert_eq!(taped.lines().len(), given.lines().len(), "{}", sample.name);
        let measures = |r: &Roof| {
            let mut all: Vec<(crate::roof::LineKind, String)> = r.lines().iter().map(|l| (l.kind, format!("{:.1}", l.length.mm()))).collect();
            all.sort_unstable();
            all
        };
        assert_eq!(measures(&taped), measures(&given), "{}", sample.name);
        done += 1;
    }
    assert_eq!(done, SAMPLES.len());
}
