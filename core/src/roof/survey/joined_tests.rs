//! Planes joined on the slope against the roofs that they were taken from, and against closed forms.

use crate::error::{Error, ErrorKind};
use crate::pitch::Pitch;
use crate::record::Calculation;
use crate::roof::test_roofs::{gable, hip, pt, roof, tee, transition};
use crate::roof::{JoinedPlanes, Joint, LineKind, Opening, PlaneEdge, PlaneInput, PlaneTie, Point, Roof, SlopeAnchor, SlopeEnd, SlopePlane, SlopeUp, Vertex};
use crate::units::Length;
use proptest::prelude::*;

fn edge_of(roof: &Roof, plane: usize, ring: usize, edge: usize) -> PlaneEdge {
    let plane = &roof.planes()[plane];
    if ring == 0 { PlaneEdge::new(plane.name(), edge) } else { PlaneEdge::of_hole(plane.name(), plane.hole_names()[ring - 1].clone(), edge) }
}

/// Where a place lies from an edge: along it, out from it, and up.
pub(super) fn from_edge(at: Vertex, start: Vertex, end: Vertex) -> [Length; 3] {
    let (dx, dy) = (end.x.mm() - start.x.mm(), end.y.mm() - start.y.mm());
    let long = crate::num::hypot(dx, dy);
    let (px, py) = (at.x.mm() - start.x.mm(), at.y.mm() - start.y.mm());
    [(px * dx + py * dy) / long, (px * dy - py * dx) / long, at.z.mm() - start.z.mm()].map(|mm| Length::from_mm(mm).unwrap())
}

/// Ties for every plane that no chain of joints leads to: two of its corners from the first edge of the first plane.
fn tied(roof: &Roof, joined: &mut JoinedPlanes) {
    let number = |name: &str| roof.planes().iter().position(|p| p.name() == name).unwrap();
    let mut reached = vec![0];
    while reached.len() < roof.planes().len() {
        let beyond = |j: &Joint| {
            let (a, b) = (number(&j.first.plane), number(&j.second.plane));
            [(a, b), (b, a)].into_iter().find(|(a, b)| reached.contains(a) && !reached.contains(b)).map(|(_, b)| b)
        };
        if let Some(next) = joined.joints.iter().find_map(beyond) {
            reached.push(next);
            continue;
        }
        let next = (0..roof.planes().len()).find(|p| !reached.contains(p)).unwrap();
        for corner in [0, 1] {
            let edge = &roof.planes()[0].rings()[0];
            let [along, out, up] = from_edge(roof.planes()[next].rings()[0][corner], edge[0], edge[1]);
            joined.ties.push(PlaneTie { plane: roof.planes()[next].name().into(), corner, from: edge_of(roof, 0, 0, 0), along, out, up });
        }
        reached.push(next);
    }
}

/// The roof's planes as they lie on the slope, its shared lines as joints, anchored at its first plane; pitches are given to the planes named.
pub(super) fn unfolded(roof: &Roof, pitched: &[&str]) -> JoinedPlanes {
    let planes = roof.planes().iter().enumerate().map(|(i, p)| SlopePlane {
        pitch: (i == 0 || pitched.contains(&p.name())).then(|| p.pitch()),
        holes: p.hole_names().iter().zip(p.outline().holes()).map(|(name, ring)| Opening { name: name.clone(), ring: ring.clone() }).collect(),
        ..SlopePlane::new(p.name(), p.outline().outer().to_vec())
    });
    let whole = |s: &crate::roof::Side, l: &crate::roof::Line| {
        let e = roof.planes()[s.plane].outline().edges().find(|e| e.ring == s.ring && e.index == s.edge).unwrap();
        (crate::num::hypot(e.to.x.mm() - e.from.x.mm(), e.to.y.mm() - e.from.y.mm()) - l.length.mm()).abs() < 1e-3
    };
    let joints = roof.lines().iter().filter_map(|l| {
        let (a, b) = (&l.side, l.other()?);
        let edge = |s: &crate::roof::Side| edge_of(roof, s.plane, s.ring, s.edge);
        match (whole(a, l), whole(b, l)) {
            (true, true) => Some(Joint::new(edge(a), edge(b))),
            (false, true) | (true, false) => {
                let (long, short) = if whole(b, l) { (a, b) } else { (b, a) };
                let e = roof.planes()[long.plane].outline().edges().find(|e| e.ring == long.ring && e.index == long.edge).unwrap();
                let offset = crate::num::hypot(long.start.x.mm() - e.from.x.mm(), long.start.y.mm() - e.from.y.mm());
                Some(Joint { offset: Some(Length::from_mm(offset).unwrap()), ..Joint::new(edge(long), edge(short)) })
            }
            (false, false) => None,
        }
    });
    let first = &roof.planes()[0];
    let anchor = SlopeAnchor { plane: first.name().into(), corner: 1, at: first.rings()[0][1], down_slope: first.down_slope() };
    let mut joined = JoinedPlanes::new(planes.collect(), joints.collect(), anchor);
    tied(roof, &mut joined);
    joined
}

/// A house of one slope, and a porch below its eave with a foot of wall between.
fn porch() -> Roof {
    let plane = crate::roof::test_roofs::plane;
    roof(vec![
        plane("house", &[(0.0, 0.0), (40.0, 0.0), (40.0, 12.0), (0.0, 12.0)], "8:12", 270.0, (0.0, 0.0, 12.0)),
        plane("porch", &[(5.0, -9.0), (25.0, -9.0), (25.0, -1.0), (5.0, -1.0)], "3:12", 270.0, (5.0, -1.0, 10.0)),
    ])
}

#[test]
fn a_plane_that_hangs_on_a_wall_is_held_by_two_ties() {
    let given = porch();
    let mut joined = unfolded(&given, &["porch"]);
    // Its lower corners: by hand 5 and 25 ft along the eave, 9 ft out, and 2 ft and 8 ft of 3:12 below it.
    let read: Vec<[Length; 3]> = joined.ties.iter().map(|t| [t.along, t.out, t.up]).collect();
    assert_eq!(read, [[Length::feet(5), Length::feet(9), Length::feet(-4)], [Length::feet(25), Length::feet(9), Length::feet(-4)]]);
    let out = joined.compute().unwrap();
    // Four unknowns, as pitch and way up are known, and six measures.
    assert_eq!((out.checks, out.ties.len()), (2, 2));
    assert!(out.misclosure < Length::from_pm(1000));
    same_lines(&given, &out.roof.compute().unwrap(), 1e-6);
    // An inch between the ties is shared by both, half an inch at each, and refused over the closure.
    joined.ties[0].along = (joined.ties[0].along + Length::inches(1)).length().unwrap();
    let e = refusal(&joined);
    assert_eq!((e.kind(), e.path(), e.others().len()), (ErrorKind::Geometry, "ties[0]", 1));
    joined.closure = Some(Length::inches(1));
    let gaps: Vec<Length> = joined.compute().unwrap().ties.iter().map(|t| t.gap).collect();
    assert!(gaps.iter().all(|g| (g.mm() - 12.7).abs() < 1e-6), "{gaps:?}");
    // One tie does not hold it.
    joined.ties.pop();
    let e = refusal(&joined);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Missing, "planes[1]"));
}

#[test]
fn bad_ties_are_refused_with_their_place() {
    let good = unfolded(&porch(), &["porch"]);
    let with = |change: &dyn Fn(&mut PlaneTie)| {
        let mut joined = good.clone();
        change(&mut joined.ties[1]);
        let e = refusal(&joined);
        (e.kind(), e.path().to_owned())
    };
    assert_eq!(with(&|t| t.plane = "barn".into()), (ErrorKind::Unknown, "ties[1].plane".into()));
    assert_eq!(with(&|t| t.corner = 4), (ErrorKind::Unknown, "ties[1].corner".into()));
    assert_eq!(with(&|t| t.from.plane = "barn".into()), (ErrorKind::Unknown, "ties[1].from.plane".into()));
    assert_eq!(with(&|t| t.from.edge = 9), (ErrorKind::Unknown, "ties[1].from.edge".into()));
    assert_eq!(with(&|t| t.from.hole = Some("flue".into())), (ErrorKind::Unknown, "ties[1].from.hole".into()));
    assert_eq!(with(&|t| t.from.plane = "porch".into()), (ErrorKind::Conflict, "ties[1]".into()));
}

/// Every line of two roofs, by name, within this many millimetres.
pub(super) fn same_lines(a: &Roof, b: &Roof, within: f64) {
    assert_eq!(a.lines().len(), b.lines().len());
    for (l, m) in a.lines().iter().zip(b.lines()) {
        assert_eq!((&l.name, l.kind), (&m.name, m.kind));
        assert!((l.length.mm() - m.length.mm()).abs() <= within, "{} {} {}", l.name, l.length, m.length);
        for (v, w) in [(l.start, m.start), (l.end, m.end)] {
            let off = [v.x.mm() - w.x.mm(), v.y.mm() - w.y.mm(), v.z.mm() - w.z.mm()];
            assert!(off.iter().all(|o| o.abs() <= within), "{} {off:?}", l.name);
        }
    }
}

fn refusal(joined: &JoinedPlanes) -> Error {
    joined.compute().unwrap_err()
}

#[test]
fn roofs_come_back_from_their_slopes() {
    for (planes, pitched) in [
        (gable(), vec!["north"]),
        // The hips fix every pitch but the first.
        (hip(), vec![]),
        // The main ridge and the wing's ridge are level; the wing's planes hang on the valleys.
        (tee(60.0, 10.0, 20.0, 20.0), vec!["south west", "south east"]),
        (transition("3:12", "9:12"), vec!["upper"]),
    ] {
        let given = roof(planes);
        let joined = unfolded(&given, &pitched).compute().unwrap();
        assert!(joined.misclosure < Length::from_pm(1000), "{}", joined.misclosure);
        same_lines(&given, &joined.roof.compute().unwrap(), 1e-6);
        for (p, q) in given.planes().iter().zip(&joined.planes) {
            assert!((p.slope().degrees() - q.slope.degrees()).abs() < 1e-8, "{} {}", p.name(), q.slope);
        }
    }
}

#[test]
fn a_pyramid_closes_on_two_folds_that_neither_alone_would_fix() {
    // Four triangles at 12:12 about a square; only the first has its pitch, and neighbours share hips alone.
    let v = |x: i16, y: i16, z: i16| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
    let plane = |name: &str, a, b| PlaneInput {
        name: name.into(),
        shape: crate::roof::Shape::Space { outer: vec![a, b, v(10, 10, 10)], holes: vec![], flatness: None },
    };
    let given = roof(vec![
        plane("south", v(0, 0, 0), v(20, 0, 0)),
        plane("east", v(20, 0, 0), v(20, 20, 0)),
        plane("north", v(20, 20, 0), v(0, 20, 0)),
        plane("west", v(0, 20, 0), v(0, 0, 0)),
    ]);
    let mut joined = unfolded(&given, &[]);
    let out = joined.compute().unwrap();
    same_lines(&given, &out.roof.compute().unwrap(), 1e-6);
    // 4 joints of 6 equations each, and 3 planes of 5 unknowns each.
    assert_eq!(out.checks, 9);
    // Without knowing up anywhere but on the anchored plane: two planes about it are set by nothing but each other.
    for p in joined.planes.iter_mut().skip(1) {
        p.up = SlopeUp::Unknown;
    }
    let e = refusal(&joined);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Missing, "planes[1].up"));
    assert!(e.cure().unwrap().contains("say which edge of east is level"), "{e}");
    // With the eaves of two planes said level the last is set by its two hips.
    joined.planes[1].up = SlopeUp::Level { edge: 0, end: SlopeEnd::Foot };
    joined.planes[3].up = SlopeUp::Level { edge: 0, end: SlopeEnd::Foot };
    same_lines(&given, &joined.compute().unwrap().roof.compute().unwrap(), 1e-6);
}

#[test]
fn axes_may_lie_any_way_where_a_side_is_level() {
    let given = roof(hip());
    let mut joined = unfolded(&given, &[]);
    for (i, p) in joined.planes.iter_mut().enumerate() {
        let turn = 20.0 + 77.0 * i as f64;
        let (c, s) = (crate::num::cos_deg(turn), crate::num::sin_deg(turn));
        for q in &mut p.outer {
            let (x, y) = (q.x.mm(), q.y.mm());
            *q = Point::new(Length::from_mm(c * x - s * y).unwrap(), Length::from_mm(s * x + c * y).unwrap());
        }
        p.up = SlopeUp::Level { edge: 0, end: SlopeEnd::Foot };
    }
    same_lines(&given, &joined.compute().unwrap().roof.compute().unwrap(), 1e-6);
    // Given clockwise, edge n runs between the same two vertices: the ring turns about its first vertex.
    for p in &mut joined.planes {
        p.outer[1..].reverse();
        p.up = SlopeUp::Level { edge: p.outer.len() - 1, end: SlopeEnd::Foot };
    }
    let count = |joined: &JoinedPlanes, e: &PlaneEdge| joined.planes.iter().find(|p| p.name == e.plane).unwrap().outer.len();
    for k in 0..joined.joints.len() {
        let (n, m) = (count(&joined, &joined.joints[k].first), count(&joined, &joined.joints[k].second));
        let j = &mut joined.joints[k];
        j.first.edge = n - 1 - j.first.edge;
        j.second.edge = m - 1 - j.second.edge;
    }
    joined.anchor.corner = joined.planes[0].outer.len() - 1;
    same_lines(&given, &joined.compute().unwrap().roof.compute().unwrap(), 1e-6);
}

#[test]
fn what_is_not_fixed_is_named_with_what_would_fix_it() {
    let given = roof(gable());
    let e = refusal(&unfolded(&given, &[]));
    assert_eq!((e.kind(), e.path()), (ErrorKind::Missing, "planes[1].pitch"), "{e}");
    assert_eq!(e.cure(), Some("measure the pitch of north, or join an edge of it that slopes"));
    let mut apart = unfolded(&given, &["north"]);
    apart.joints.clear();
    let e = refusal(&apart);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Missing, "planes[1]"));
    let mut bare = unfolded(&given, &["north"]);
    bare.planes[0].pitch = None;
    bare.planes[0].up = SlopeUp::Unknown;
    bare.anchor.corner = 9;
    let e = refusal(&bare);
    let found: Vec<&str> = core::iter::once(&e).chain(e.others()).map(Error::path).collect();
    assert_eq!(found, ["planes[0].pitch", "planes[0].up", "anchor.corner"]);
}

#[test]
fn misclosure_is_told_joint_by_joint_and_refused_beyond_the_tolerance() {
    let given = roof(hip());
    let mut joined = unfolded(&given, &[]);
    // The east triangle's apex was measured a tenth of an inch too high up the slope: its two hips grow alike.
    let off = Length::mils(100);
    joined.planes[1].outer[2].y = (joined.planes[1].outer[2].y + off).length().unwrap();
    let out = joined.compute().unwrap();
    assert!(out.misclosure > Length::mils(20) && out.misclosure < off, "{}", out.misclosure);
    let of = |name: &str| out.joints.iter().filter(|j| j.first.plane == name || j.second.plane == name).map(|j| j.misclosure()).max().unwrap();
    assert!(of("east") == out.misclosure && of("west") < out.misclosure);
    // It grows with the slip, by its own share and no more, until it is refused with the planes and edges.
    joined.closure = Some(Length::mils(10));
    let e = refusal(&joined);
    assert_eq!(e.kind(), ErrorKind::Geometry, "{e}");
    assert!(e.path().starts_with("joints[") && e.message().contains("of east"), "{e}");
    joined.closure = None;
    joined.planes[1].outer[2].y = (joined.planes[1].outer[2].y + Length::inches(3)).length().unwrap();
    let e = refusal(&joined);
    assert!(e.message().contains("differ in length") && e.value().is_some(), "{e}");
    assert_eq!(core::iter::once(&e).chain(e.others()).count(), 2, "both its hips: {e}");
}

#[test]
fn checks_are_counted() {
    let given = roof(gable());
    let out = unfolded(&given, &["north"]).compute().unwrap();
    // One joint: six equations, four unknowns; its level and its length are checks.
    assert_eq!((out.checks, out.cautions.len()), (2, 0));
    let roof = out.roof.compute().unwrap();
    assert_eq!(roof.lines_of(LineKind::Ridge).count(), 1);
}

#[test]
fn bad_joints_are_refused_with_their_place() {
    let given = roof(gable());
    let good = unfolded(&given, &["north"]);
    type Change<'a> = &'a dyn Fn(&mut JoinedPlanes);
    let cases: [(Change<'_>, ErrorKind, &str); 8] = [
        (&|j| j.joints[0].first.plane = "attic".into(), ErrorKind::Unknown, "joints[0].first.plane"),
        (&|j| j.joints[0].second.edge = 7, ErrorKind::Unknown, "joints[0].second.edge"),
        (&|j| j.joints[0].second = j.joints[0].first.clone(), ErrorKind::Conflict, "joints[0]"),
        (&|j| j.joints.push(j.joints[0].clone()), ErrorKind::Conflict, "joints[1]"),
        (&|j| j.joints[0].offset = Some(Length::feet(1)), ErrorKind::OutOfRange, "joints[0].offset"),
        (&|j| j.planes[1].name = "south".into(), ErrorKind::Conflict, "planes[1].name"),
        (&|j| j.planes[1].outer[0] = pt(20.0, 20.0), ErrorKind::Geometry, "planes[1].outer[0]"),
        (&|j| j.planes[1].pitch = Some(Pitch::FLAT), ErrorKind::OutOfRange, "planes[1].pitch"),
    ];
    for (change, kind, path) in cases {
        let mut bad = good.clone();
        change(&mut bad);
        let e = refusal(&bad);
        let found: Vec<(ErrorKind, &str)> = core::iter::once(&e).chain(e.others()).map(|e| (e.kind(), e.path())).collect();
        assert!(found.contains(&(kind, path)), "{path}: {e}");
    }
    // With its ridge said to be its foot a plane goes on up the slope: that closes, and the roof says what it is.
    let mut flipped = good;
    flipped.planes[1].up = SlopeUp::Level { edge: 2, end: SlopeEnd::Foot };
    let roof = flipped.compute().unwrap().roof.compute().unwrap();
    assert!(roof.cautions().iter().any(|c| c.code() == crate::roof::cautions::COPLANAR), "{:?}", roof.cautions());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn cross_wings_come_back_from_their_slopes(
        half in 3.0..20.0_f64, at in 4.0..30.0_f64, past in 4.0..30.0_f64, out in 5.0..30.0_f64, first in 0_usize..5, turn in 0.0..360.0_f64
    ) {
        let mut planes = tee(at + 2.0 * half + past, half, at, out);
        planes.rotate_left(first);
        let given = roof(planes);
        // Two planes share level lines only, or lines that are fixed only by others: their pitches are measured.
        let mut joined = unfolded(&given, &["north", "south west", "south east"]);
        same_lines(&given, &joined.compute().unwrap().roof.compute().unwrap(), 1e-6);
        // Set down elsewhere it is the same roof, turned: lengths stay.
        joined.anchor.down_slope = crate::units::Angle::degrees_from(turn).unwrap();
        joined.anchor.at = Vertex::new(Length::feet(1000), Length::feet(-2000), Length::feet(300));
        let moved = joined.compute().unwrap().roof.compute().unwrap();
        prop_assert_eq!(moved.lines().len(), given.lines().len());
        for (l, m) in given.lines().iter().zip(moved.lines()) {
            prop_assert_eq!((&l.name, l.kind), (&m.name, m.kind));
            prop_assert!((l.length.mm() - m.length.mm()).abs() < 1e-6 && (l.slope.degrees() - m.slope.degrees()).abs() < 1e-6);
        }
    }
}
