//! Profiles said in several ways, offset bends and nominal sums: laws, closed forms and bad input.

use super::flat_tests::any_profile;
use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::{Angle, BendAngle, Length, LengthUnit};
use proptest::prelude::*;

fn mm(v: f64) -> Length {
    Length::from_f64(v, LengthUnit::Millimetre).unwrap()
}

fn axis(k: f64) -> BendRule {
    BendRule::neutral_axis(NeutralFactor::new(k).unwrap())
}

fn flat_angle(degrees: f64) -> BendAngle {
    BendAngle::from_flat(Angle::degrees_from(degrees).unwrap()).unwrap()
}

fn joggle(depth: f64, degrees: f64) -> Joggle {
    Joggle { name: "web".into(), depth: mm(depth), angle: flat_angle(degrees), direction: Direction::Up, inside_radius: mm(1.0), thickness: mm(0.6) }
}

/// Folded, the two legs run alike and the one lies the depth above the other: seen in the outline, which knows nothing of the formula.
#[test]
fn an_offset_bend_sets_the_sheet_over_by_its_depth() {
    for (depth, degrees) in [(3.0, 30.0), (12.0, 45.0), (6.0, 60.0), (20.0, 90.0), (15.0, 120.0)] {
        for direction in [Direction::Up, Direction::Down] {
            let p = Profile::builder(mm(0.6))
                .painted(Face::Upper)
                .inside_radius(mm(1.0))
                .leg("lap", mm(40.0))
                .joggle("web", mm(depth), flat_angle(degrees), direction)
                .leg("apron", mm(50.0))
                .build()
                .unwrap();
            let o = p.unfold(&axis(0.4)).unwrap().outline().unwrap();
            for face in [Face::Upper, Face::Lower] {
                let pieces = o.face(face);
                let (first, last) = (pieces.first().unwrap(), pieces.last().unwrap());
                assert!((last.from.y.pm() - last.to.y.pm()).abs() <= 2);
                let over = (last.to.y.pm() - first.to.y.pm()) as f64 / 1e9;
                let sign = if direction == Direction::Up { 1.0 } else { -1.0 };
                assert!((over - sign * depth).abs() < 1e-8, "{depth} {degrees} {over}");
            }
        }
    }
}

#[test]
fn an_offset_bend_says_what_it_cannot_do() {
    // (2 R + T)(1 - cos 60) = 1.3 mm: just that is two bends without a flat web.
    let least = joggle(1.3, 60.0).compute().unwrap();
    assert_eq!(least.web_flat, Length::ZERO);
    let e = joggle(1.299, 60.0).compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.allowed()), (ErrorKind::Impossible, "depth", Some("at least 1.3 mm")));
    let e = Joggle { thickness: Length::ZERO, inside_radius: mm(-1.0), ..joggle(-3.0, 180.0) }.compute().unwrap_err();
    let paths: Vec<&str> = e.others().iter().map(|o| o.path()).collect();
    assert_eq!((e.path(), paths), ("depth", vec!["thickness", "inside_radius", "angle"]));
    assert!(joggle(3.0, 0.0).compute().is_err() && joggle(3.0, 200.0).compute().is_err());
    assert!(Joggle { depth: Length::MAX, ..joggle(3.0, 1e-9) }.compute().is_err());
    let e = Profile::builder(mm(0.6))
        .painted(Face::Upper)
        .inside_radius(mm(1.0))
        .leg("lap", mm(40.0))
        .joggle("web", mm(0.1), flat_angle(60.0), Direction::Up)
        .leg("apron", mm(50.0))
        .build()
        .unwrap_err();
    assert_eq!((e.path(), e.others().len()), ("legs[1].depth", 0));
    let e = Profile::builder(mm(0.6)).painted(Face::Upper).joggle("web", mm(9.0), flat_angle(60.0), Direction::Up).build().unwrap_err();
    assert_eq!(e.path(), "bends[0]");
}

fn item(name: &'static str, length: f64) -> CourseItem {
    CourseItem::Leg { name: name.into(), length: mm(length), start: None, end: None }
}

#[test]
fn a_course_is_the_builder_in_one_list() {
    let square = |direction| CourseItem::Bend { angle: BendAngle::SQUARE, direction, inside_radius: mm(1.0), rule: None };
    let offset = CourseItem::Joggle { name: "step".into(), depth: mm(6.0), angle: flat_angle(45.0), direction: Direction::Down, inside_radius: mm(0.5) };
    let course = Course {
        thickness: mm(0.6),
        start_edge: Edge::open_hem(mm(12.0), mm(3.0), Direction::Up),
        items: vec![item("a", 40.0), square(Direction::Up), item("b", 30.0), offset, item("c", 50.0)],
        end_edge: Edge::Raw,
        measured_to: LegEnd::OuterCorner,
        painted: Face::Lower,
    };
    let built = Profile::builder(mm(0.6))
        .painted(Face::Lower)
        .start(course.start_edge.clone())
        .inside_radius(mm(1.0))
        .leg("a", mm(40.0))
        .up(BendAngle::SQUARE)
        .leg("b", mm(30.0))
        .inside_radius(mm(0.5))
        .joggle("step", mm(6.0), flat_angle(45.0), Direction::Down)
        .leg("c", mm(50.0))
        .build()
        .unwrap();
    let (profile, sheet) = course.explain().unwrap();
    assert_eq!((&profile, &course.compute().unwrap()), (&built, &built));
    assert_eq!(sheet.steps().len(), 4, "the working of the offset bend");
    let faulty = |items: Vec<CourseItem>| {
        let e = Course { items, ..course.clone() }.compute().unwrap_err();
        (e.path().to_owned(), e.others().len())
    };
    assert_eq!(faulty(vec![]), ("legs".to_owned(), 0));
    assert_eq!(faulty(vec![item("a", 40.0), item("b", 40.0)]), ("items[1]".to_owned(), 0));
    assert_eq!(faulty(vec![square(Direction::Up)]), ("items[0]".to_owned(), 0));
    let shallow = CourseItem::Joggle { name: "step".into(), depth: mm(0.1), angle: flat_angle(45.0), direction: Direction::Up, inside_radius: mm(1.0) };
    assert_eq!(faulty(vec![item("a", 40.0), shallow, item("b", 40.0)]), ("items[1].depth".to_owned(), 0));
}

#[cfg(feature = "serde")]
#[test]
fn a_course_in_job_form() {
    let json = r#"{
        "thickness": "0.024 in", "painted": "upper", "measured_to": "outer-corner",
        "items": [
            {"leg": {"name": "lap", "length": "1 in"}},
            {"joggle": {"name": "step", "depth": "1/4\"", "angle": "45 deg", "direction": "up", "inside_radius": "0.03 in"}},
            {"leg": {"name": "apron", "length": "6 in"}},
            {"bend": {"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in", "rule": "aviation"}},
            {"leg": {"name": "face", "length": "3 in", "end": "outer-tangent"}}
        ],
        "end_edge": {"double-hem": {"width": "1/4\"", "direction": "down"}}
    }"#;
    let course: Course = serde_json::from_str(json).unwrap();
    let profile = course.compute().unwrap();
    assert_eq!((profile.legs.len(), profile.bends.len()), (4, 3));
    assert_eq!(profile.bends[2].rule.as_deref(), Some(&BendRule::Aviation));
    assert_eq!(serde_json::from_str::<Course>(&serde_json::to_string(&course).unwrap()).unwrap(), course);
    assert!(serde_json::from_str::<Course>(&json.replace("\"depth\"", "\"offset\"")).is_err());
}

/// A shape: thickness, radius, the flat parts, and the turn after each but the last.
#[derive(Debug, Clone)]
struct Shape {
    thickness: Length,
    radius: Length,
    flats: Vec<Length>,
    turns: Vec<f64>,
    edges: (Edge, Edge),
}

impl Shape {
    /// How far each end of each leg lies beyond its tangent line, to the corner that is asked for.
    fn lengths(&self, end: impl Fn(Direction) -> LegEnd) -> Vec<Length> {
        let at = |i: usize| {
            let turn = *self.turns.get(i)?;
            let size = BendSize { thickness: self.thickness, inside_radius: self.radius, angle: flat_angle(turn.abs()) };
            Some(end(if turn > 0.0 { Direction::Up } else { Direction::Down }).beyond_tangent(size).unwrap())
        };
        let fold = |edge: &Edge| if edge.is_raw() { Length::ZERO } else { (edge.first_radius(self.thickness) + self.thickness).length().unwrap() };
        (0..self.flats.len())
            .map(|i| {
                let before = i.checked_sub(1).and_then(at).unwrap_or_else(|| fold(&self.edges.0));
                let after = at(i).unwrap_or_else(|| fold(&self.edges.1));
                (self.flats[i] + before + after).length().unwrap()
            })
            .collect()
    }

    fn by_legs(&self) -> Profile {
        let mut b = Profile::builder(self.thickness).painted(Face::Upper).inside_radius(self.radius).start(self.edges.0.clone()).end(self.edges.1.clone());
        for (i, length) in self.lengths(|_| LegEnd::OuterCorner).into_iter().enumerate() {
            if let Some(before) = i.checked_sub(1) {
                let turn = self.turns[before];
                b = if turn > 0.0 { b.up(flat_angle(turn)) } else { b.down(flat_angle(-turn)) };
            }
            b = b.leg("leg", length);
        }
        b.build().unwrap()
    }

    fn line(&self, lengths: &[Length]) -> (Point, Vec<ChainLeg>) {
        let start = Point { x: mm(250.0), y: mm(-120.0) };
        let (mut at, mut heading, mut legs) = (start, 0.0, Vec::new());
        for (i, length) in lengths.iter().enumerate() {
            let by = length.get(LengthUnit::Millimetre);
            at = at.moved(by * crate::num::cos_deg(heading), by * crate::num::sin_deg(heading)).unwrap();
            legs.push(ChainLeg { name: "leg".into(), to: at });
            heading += self.turns.get(i).copied().unwrap_or(0.0);
        }
        (start, legs)
    }

    fn by_vertices(&self, drawn_to: DrawnTo) -> Profile {
        self.through_vertices(drawn_to, self.line(&self.lengths(|_| drawn_to.leg_end())))
    }

    fn through_vertices(&self, drawn_to: DrawnTo, (start, legs): (Point, Vec<ChainLeg>)) -> Profile {
        let (thickness, inside_radius) = (self.thickness, self.radius);
        let (start_edge, end_edge) = self.edges.clone();
        Vertices { thickness, inside_radius, drawn_to, start, legs, start_edge, end_edge, painted: Face::Upper }.profile().unwrap()
    }

    fn by_chain(&self, face: Face) -> Profile {
        self.along_face(face, self.line(&self.lengths(|d| if d.inside() == face { LegEnd::InnerCorner } else { LegEnd::OuterCorner })))
    }

    fn along_face(&self, face: Face, (start, legs): (Point, Vec<ChainLeg>)) -> Profile {
        let (thickness, inside_radius) = (self.thickness, self.radius);
        let (start_edge, end_edge) = self.edges.clone();
        Chain { thickness, inside_radius, face, start, legs, start_edge, end_edge, painted: Face::Upper }.profile().unwrap()
    }

    fn every_way(&self) -> Vec<Profile> {
        vec![self.by_legs(), self.by_vertices(DrawnTo::Outside), self.by_vertices(DrawnTo::Inside), self.by_chain(Face::Lower), self.by_chain(Face::Upper)]
    }
}

/// The corners to which the legs of a profile lead, in doubles: where a leg goes to the outer corner of a bend, it is drawn to the inner one for those that say so.
fn corners(p: &Profile, mut heading: f64, inner: impl Fn(Direction) -> bool) -> Vec<(f64, f64)> {
    let in_mm = |l: Length| l.get(LengthUnit::Millimetre);
    let shorter = |bend: Option<&Bend>| match bend {
        Some(b) if inner(b.direction) => in_mm(p.thickness) * crate::num::tan_deg(b.angle.degrees() / 2.0),
        _ => 0.0,
    };
    let mut at = (0.0, 0.0);
    let mut out = vec![at];
    for (i, leg) in p.legs.iter().enumerate() {
        let length = in_mm(leg.length) - shorter(i.checked_sub(1).and_then(|b| p.bends.get(b))) - shorter(p.bends.get(i));
        at = (at.0 + length * crate::num::cos_deg(heading), at.1 + length * crate::num::sin_deg(heading));
        out.push(at);
        heading += p.bends.get(i).map_or(0.0, |b| b.direction.sign() * b.angle.degrees());
    }
    out
}

/// The corners as points, each rounded once.
fn drawn(corners: &[(f64, f64)]) -> (Point, Vec<ChainLeg>) {
    let start = Point { x: mm(250.0), y: mm(-120.0) };
    (start, corners[1..].iter().map(|c| ChainLeg { name: "leg".into(), to: start.moved(c.0, c.1).unwrap() }).collect())
}

fn any_shape(turn: impl Strategy<Value = f64>) -> impl Strategy<Value = Shape> {
    any_shape_of(turn, 9)
}

fn any_long_shape(turn: impl Strategy<Value = f64>) -> impl Strategy<Value = Shape> {
    any_shape_of(turn, 40)
}

fn any_shape_of(turn: impl Strategy<Value = f64>, legs: usize) -> impl Strategy<Value = Shape> {
    let edge = prop_oneof![
        Just(Edge::Raw),
        Just(Edge::closed_hem(mm(8.0), Direction::Up)),
        Just(Edge::open_hem(mm(9.0), mm(2.0), Direction::Down)),
        Just(Edge::double_hem(mm(8.0), Direction::Down)),
    ];
    (200_000_000_i64..1_500_000_000, 0_i64..3_000_000_000, prop::collection::vec((12_000_000_000_i64..90_000_000_000, turn), 1..legs), edge.clone(), edge)
        .prop_map(|(t, r, legs, start, end)| {
            let turns = legs.iter().skip(1).map(|l| l.1).collect();
            let flats = legs.iter().map(|l| Length::from_pm(l.0)).collect();
            Shape { thickness: Length::from_pm(t), radius: Length::from_pm(r), flats, turns, edges: (start, end) }
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    /// Square shapes have whole coordinates: leg by leg, by outside and by inside vertices and by the line of either face they are one flat, to the picometre.
    #[test]
    fn square_shapes_are_one_in_every_way(shape in any_shape(prop_oneof![Just(90.0), Just(-90.0)])) {
        let flats: Vec<Flat> = shape.every_way().iter().map(|p| p.unfold(&axis(0.4)).unwrap()).collect();
        for flat in &flats {
            prop_assert_eq!(flat, &flats[0]);
        }
        let body: Vec<Length> = flats[0].legs().iter().filter(|l| matches!(l.part, Part::Body(_))).map(|l| l.length()).collect();
        prop_assert_eq!(body, shape.flats);
    }

    /// At any angle, and on however many legs, the vertices of either kind of corner and the line of either face make the shape that was said leg by leg: every corner lies
    /// within a picometre of where it was, in x and in y, half of which is the rounding of its vertex.
    #[test]
    fn every_way_leads_to_the_same_corners(shape in any_long_shape(prop_oneof![-130.0_f64..-2.0, 2.0_f64..130.0]), tilt in -180.0_f64..180.0) {
        let said = shape.by_legs();
        let check = |made: &dyn Fn((Point, Vec<ChainLeg>)) -> Profile, inner: &dyn Fn(Direction) -> bool| {
            let ideal = corners(&said, tilt, inner);
            let (start, legs) = drawn(&ideal);
            let (x, y) = start.to(legs[0].to).unwrap();
            let found = corners(&made((start, legs)), crate::num::atan2_deg(y, x), |_| false);
            ideal.iter().zip(&found).map(|(a, b)| (a.0 - b.0).abs().max((a.1 - b.1).abs()) * 1e9).fold(0.0, f64::max)
        };
        let off = [
            check(&|line| shape.through_vertices(DrawnTo::Outside, line), &|_| false),
            check(&|line| shape.through_vertices(DrawnTo::Inside, line), &|_| true),
            check(&|line| shape.along_face(Face::Lower, line), &|d| d.inside() == Face::Lower),
            check(&|line| shape.along_face(Face::Upper, line), &|d| d.inside() == Face::Upper),
        ];
        // What is over a picometre is what doubles lose over some metres.
        prop_assert!(off.iter().all(|pm| *pm < 1.005), "{off:?} pm");
    }

    /// At any angle a vertex is a rounded point, which moves a leg's end by a picometre at most and its setback by a share of that: no leg, and no bend, differs by more than 3 pm.
    #[test]
    fn any_shape_is_one_in_every_way(shape in any_shape(prop_oneof![-130.0_f64..-2.0, 2.0_f64..130.0])) {
        let flats: Vec<Flat> = shape.every_way().iter().map(|p| p.unfold(&axis(0.4)).unwrap()).collect();
        let first = &flats[0];
        for flat in &flats {
            prop_assert_eq!(flat.legs().len(), first.legs().len());
            for (a, b) in flat.legs().iter().zip(first.legs()) {
                prop_assert!((a.length().pm() - b.length().pm()).abs() <= 3, "{} {}", a.length().pm(), b.length().pm());
            }
            for (a, b) in flat.bends().iter().zip(first.bends()) {
                prop_assert!((a.allowance().pm() - b.allowance().pm()).abs() <= 1);
                prop_assert_eq!(a.direction, b.direction);
            }
        }
    }

    /// What the bends differ by is what the leg takes up; every other leg stays as drawn, and the girth is the nominal sum.
    #[test]
    fn a_nominal_sum_is_taken_up_by_one_leg(p in any_profile(), k in 0.0_f64..=0.5, which in any::<usize>()) {
        let take_up = which % p.legs.len();
        let sum = NominalSum { profile: p.clone(), rule: axis(k), take_up };
        let (made, sheet) = sum.explain().unwrap();
        prop_assert_eq!(&made, &sum.compute().unwrap());
        prop_assert_eq!(made.nominal, p.girth(&BendRule::SharpCorner).unwrap());
        prop_assert_eq!(made.developed, p.girth(&axis(k)).unwrap());
        prop_assert_eq!(made.flat.girth(), made.nominal);
        let bends = made.bends.iter().map(|b| b.difference).sum::<crate::units::Sum>();
        prop_assert_eq!(bends.length().unwrap(), made.difference);
        let drawn = p.unfold(&axis(k)).unwrap();
        for (a, b) in made.flat.legs().iter().zip(drawn.legs()) {
            let grown = if a.part == Part::Body(take_up) { made.difference.pm() } else { 0 };
            prop_assert_eq!(a.length().pm() - b.length().pm(), grown);
        }
        prop_assert_eq!(made.cautions[0].code(), cautions::TAKEN_UP);
        prop_assert!(sheet.steps().iter().any(|s| s.result == made.difference.to_string()));
    }
}

#[test]
fn a_nominal_sum_refuses_what_it_cannot_do() {
    let p = |length: f64, end: Edge| Profile::builder(mm(0.6)).painted(Face::Upper).leg("body", mm(length)).end(end).build().unwrap();
    let of = |profile: Profile, take_up| NominalSum { profile, rule: axis(0.4), take_up }.compute();
    let e = of(p(50.0, Edge::Raw), 1).unwrap_err();
    assert_eq!((e.kind(), e.path(), e.allowed()), (ErrorKind::Unknown, "take_up", Some("less than 1, counted from 0")));
    // A wide open hem takes more than nominal: pi (R + K T) against 2 (R + T).
    let wide = of(p(50.0, Edge::open_hem(mm(14.0), mm(10.0), Direction::Up)), 0).unwrap();
    assert!(wide.difference.is_negative() && wide.leg < mm(50.0));
    // A short leg cannot give that.
    let e = of(p(14.0, Edge::open_hem(mm(13.0), mm(10.0), Direction::Up)), 0).unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Impossible, "take_up", Some("body")));
    let e = of(Profile { legs: vec![], ..p(50.0, Edge::Raw) }, 0).unwrap_err();
    assert_eq!(e.path(), "take_up");
    let e = of(p(50.0, Edge::teardrop_hem(mm(2.0), mm(6.0), Length::ZERO, Direction::Up)), 0).unwrap_err();
    assert_eq!(e.path(), "profile.end_edge");
}

#[test]
fn vertices_are_refused_where_they_do_not_turn() {
    let at = |x: f64, y: f64| Point { x: mm(x), y: mm(y) };
    let of = |points: &[(f64, f64)]| Vertices {
        thickness: mm(0.6),
        inside_radius: mm(1.0),
        drawn_to: DrawnTo::Inside,
        start: at(points[0].0, points[0].1),
        legs: points[1..].iter().map(|p| ChainLeg { name: "leg".into(), to: at(p.0, p.1) }).collect(),
        start_edge: Edge::Raw,
        end_edge: Edge::Raw,
        painted: Face::Upper,
    };
    let l = of(&[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0)]).profile().unwrap();
    assert_eq!((l.legs[0].end, l.legs[1].start, l.legs[1].length), (LegEnd::InnerCorner, LegEnd::InnerCorner, mm(20.0)));
    for (points, path) in [
        (&[(0.0, 0.0), (30.0, 0.0), (60.0, 0.0)][..], "legs[0].to"),
        (&[(0.0, 0.0), (30.0, 0.0), (10.0, 0.0)], "legs[0].to"),
        (&[(0.0, 0.0), (0.0, 0.0)], "legs[0].to"),
        (&[(0.0, 0.0)], "legs"),
        // Swallowed: an inner corner nearer to the edge than the radius.
        (&[(0.0, 0.0), (0.5, 0.0), (0.5, 20.0)], "legs[0].length"),
    ] {
        assert_eq!(of(points).profile().unwrap_err().path(), path, "{points:?}");
    }
}
