//! Crickets by hand, against published hips, against vectors, and moved, mirrored and renumbered.

use super::test_roofs::{ft, pt};
use super::{Beyond, Cricket, CricketFigures, CricketInput, CricketShape, LineKind, Opening, PlaneInput, Point, Roof, RoofInput, Shape, Vertex, Water};
use crate::error::ErrorKind;
use crate::num::space::{V3, cross, dot, norm, sub, unit};
use crate::pitch::{Pitch, SlopeRule};
use crate::record::{Calculation, Source};
use crate::units::{Angle, AreaUnit, Length};
use approx::assert_abs_diff_eq;
use proptest::prelude::*;

fn pitch(text: &str) -> Pitch {
    Pitch::parse(text).unwrap()
}

fn figures(roof: &str, width: Length, shape: CricketShape) -> CricketFigures {
    Cricket { roof: pitch(roof), width, shape }.compute().unwrap()
}

/// A mono-slope 60 by 40 ft with a hole of this width, its back at `back`, in the middle; the plane's fall toward -y.
fn input(roof: Pitch, width: f64, back: f64, shape: CricketShape) -> RoofInput {
    let (left, right) = (30.0 - width / 2.0, 30.0 + width / 2.0);
    let curb = Opening { name: "curb".into(), ring: vec![pt(left, back - 3.0), pt(right, back - 3.0), pt(right, back), pt(left, back)] };
    let plan = Shape::Plan {
        outer: vec![pt(0.0, 0.0), pt(60.0, 0.0), pt(60.0, 40.0), pt(0.0, 40.0)],
        holes: vec![curb],
        pitch: roof,
        down_slope: Angle::degrees_from(270.0).unwrap(),
        anchor: Vertex::new(Length::ZERO, Length::ZERO, ft(9.0)),
    };
    let mut out = RoofInput::new(vec![PlaneInput { name: "south".into(), shape: plan }]);
    out.crickets.push(CricketInput { plane: "south".into(), hole: "curb".into(), shape });
    out
}

fn kinds(roof: &Roof) -> Vec<(LineKind, usize)> {
    LineKind::ALL.iter().map(|k| (*k, roof.lines_of(*k).count())).filter(|(_, n)| *n > 0).collect()
}

#[test]
fn four_feet_of_curb_at_four_in_twelve() {
    // By hand: a = 24 in, c = m = 1/3: the ridge is 24 in long and 8 in high; the valleys sqrt(24^2 + 24^2 + 8^2) in.
    let f = figures("4:12", Length::inches(48), CricketShape::of(pitch("4:12")));
    assert_eq!((f.half_width, f.ridge, f.height, f.reach_plan), (Length::inches(24), Length::inches(24), Length::inches(8), Length::inches(24)));
    assert_abs_diff_eq!(f.valley.mm(), 25.4 * 1216.0_f64.sqrt(), epsilon = 1e-9);
    assert_abs_diff_eq!(f.reach.mm(), 25.4 * 640.0_f64.sqrt(), epsilon = 1e-9);
    assert_abs_diff_eq!(f.area.get(AreaUnit::SquareInch), 288.0 * (10.0_f64 / 9.0).sqrt(), epsilon = 1e-9);
    assert_abs_diff_eq!(f.covers.get(AreaUnit::SquareInch), 576.0 * (10.0_f64 / 9.0).sqrt(), epsilon = 1e-9);
    assert_eq!((f.end_height, f.ridge_slope.degrees()), (Length::ZERO, 0.0));
}

#[test]
fn its_valleys_are_those_of_published_roofs() {
    // A cricket meets the roof as two planes do over a square corner. 10:12 with 8:12: irregular hip worked on a timber framer's page, plan angle 38.660 and
    // slope 27.501 deg as recomputed (it truncates); the equal pitches from the framing square's table of hips, NAVEDTRA 14044 ch. 2: 17.44 in and 18 in a foot of run.
    let f = figures("10:12", Length::inches(48), CricketShape::of(pitch("8:12")));
    assert_abs_diff_eq!(f.valley_plan.degrees(), 38.660, epsilon = 5e-4);
    assert_abs_diff_eq!(f.valley_slope.degrees(), 27.501, epsilon = 6e-4);
    for (p, per_foot) in [("4:12", 17.44), ("6:12", 18.00)] {
        let f = figures(p, Length::inches(24), CricketShape::of(pitch(p)));
        assert_abs_diff_eq!(f.valley.mm() / 25.4, per_foot, epsilon = 5e-3);
    }
}

#[test]
fn the_roof_names_its_lines_and_stays_whole() {
    let roof = input(pitch("4:12"), 4.0, 20.0, CricketShape::of(pitch("4:12"))).compute().unwrap();
    assert_eq!(
        kinds(&roof),
        [
            (LineKind::Ridge, 1),
            (LineKind::Valley, 2),
            (LineKind::Eave, 1),
            (LineKind::Rake, 2),
            (LineKind::HighEdge, 1),
            (LineKind::CurbFront, 1),
            (LineKind::CurbSide, 4)
        ]
    );
    assert!(roof.cautions().is_empty(), "{:?}", roof.cautions());
    let names: Vec<&str> = roof.planes().iter().map(super::Plane::name).collect();
    assert_eq!(names, ["south", "south curb cricket left", "south curb cricket right"]);
    assert_eq!((roof.planes()[1].pitch().to_string(), roof.planes()[2].cricket_behind()), ("4:12".into(), Some("curb")));
    // The cricket covers what the hole grew by.
    let plan: f64 = roof.planes().iter().map(|p| p.plan_area().get(AreaUnit::SquareFoot)).sum();
    assert_abs_diff_eq!(plan, 60.0 * 40.0 - 12.0, epsilon = 1e-9);
    let along = roof.lines_of(LineKind::CurbSide).filter(|l| l.side.plane > 0).collect::<Vec<_>>();
    assert_eq!(along.len(), 2);
    assert!(along.iter().all(|l| l.beyond == Beyond::Hole("curb".into()) && l.side.water == Water::Along && l.side.meeting_angle.degrees() < 1e-9));
    let valley = roof.line("valley 1").unwrap();
    let figures = roof.crickets()[0].figures;
    assert_eq!(valley.length, figures.valley);
    assert_abs_diff_eq!(valley.slope.degrees(), figures.valley_slope.degrees(), epsilon = 1e-9);
}

#[test]
fn one_wider_than_its_curb_has_two_upright_ends() {
    let shape = CricketShape { beyond: Length::inches(6), ..CricketShape::of(pitch("4:12")) };
    let roof = input(pitch("4:12"), 4.0, 20.0, shape).compute().unwrap();
    let figures = roof.crickets()[0].figures;
    assert_eq!((figures.half_width, figures.end_height, figures.height), (Length::inches(30), Length::inches(2), Length::inches(10)));
    // The roof beside the curb ends under each face, and so does the cricket over it.
    let of = |kind| roof.lines_of(kind).filter(|l| l.plan_length == Length::inches(6)).count();
    assert_eq!((of(LineKind::CurbFront), of(LineKind::Rake)), (2, 2));
    let code = roof.cautions().iter().find(|c| c.code().number == 3115).unwrap();
    assert!(code.to_string().contains("50.8 mm"), "{code}");
    let plan: f64 = roof.planes().iter().map(|p| p.plan_area().get(AreaUnit::SquareFoot)).sum();
    assert_abs_diff_eq!(plan, 60.0 * 40.0 - 12.0, epsilon = 1e-9);
}

#[test]
fn what_does_not_fit_says_by_how_much_and_what_would() {
    // 8 ft of curb, 12:12 on 4:12: the top lies 12 ft up in plan; the plane ends 10 ft behind the curb.
    let e = input(pitch("4:12"), 8.0, 30.0, CricketShape::of(pitch("12:12"))).compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "crickets[0].shape"));
    let short = 2.0 * 304.8 * (10.0_f64 / 9.0).sqrt();
    assert!(e.message().contains("edge 2 of south") && e.message().contains(&format!("{short:.3}")[..6]), "{e}");
    assert!(e.cure().unwrap().contains("10.00:12"), "{:?}", e.cure());
    // That pitch as it says just touches; a hair less fits.
    assert!(input(pitch("4:12"), 8.0, 30.0, CricketShape::of(pitch("9.99:12"))).compute().is_ok());

    // Another hole stands 4 ft behind, over the ridge: 6 ft reach past it by 2 ft in plan.
    let mut near = input(pitch("4:12"), 4.0, 20.0, CricketShape::of(pitch("12:12")));
    let Shape::Plan { holes, .. } = &mut near.planes[0].shape else { panic!("a plan") };
    holes.push(Opening { name: "vent".into(), ring: vec![pt(29.5, 24.0), pt(30.5, 24.0), pt(30.5, 25.0), pt(29.5, 25.0)] });
    let e = near.compute().unwrap_err();
    assert!(e.message().contains("the hole vent") && e.message().contains("642.57"), "{e}");

    // Past the rake.
    let shape = CricketShape { beyond: ft(27.0), ..CricketShape::of(pitch("1:12")) };
    let e = input(pitch("4:12"), 6.0, 20.0, shape).compute().unwrap_err();
    assert!(e.message().contains("of south"), "{e}");

    let wrong = |f: &dyn Fn(&mut CricketInput)| {
        let mut wrong = input(pitch("4:12"), 4.0, 20.0, CricketShape::of(pitch("4:12")));
        f(&mut wrong.crickets[0]);
        let e = wrong.compute().unwrap_err();
        (e.kind(), e.path().to_owned(), e.to_string())
    };
    let (kind, path, text) = wrong(&|c| c.hole = "chimney".into());
    assert!((kind, path.as_str()) == (ErrorKind::Unknown, "crickets[0].hole") && text.contains("curb"), "{text}");
    assert_eq!(wrong(&|c| c.plane = "north".into()).1, "crickets[0].plane");
    assert_eq!(wrong(&|c| c.shape.pitch = pitch("0:12")).1, "crickets[0].shape.pitch");
    assert_eq!(wrong(&|c| c.shape.beyond = Length::inches(-1)).1, "crickets[0].shape.beyond");
    let mut twice = input(pitch("4:12"), 4.0, 20.0, CricketShape::of(pitch("4:12")));
    twice.crickets.push(twice.crickets[0].clone());
    assert!(twice.compute().is_err());

    // A hole turned by 45 degrees has two backs, one out of level is not level.
    let ring = |ring: Vec<Point>| {
        let mut turned = input(pitch("4:12"), 4.0, 20.0, CricketShape::of(pitch("4:12")));
        let Shape::Plan { holes, .. } = &mut turned.planes[0].shape else { panic!("a plan") };
        holes[0].ring = ring;
        let e = turned.compute().unwrap_err();
        (e.path().to_owned(), e.to_string())
    };
    let (path, text) = ring(vec![pt(30.0, 18.0), pt(32.0, 20.0), pt(30.0, 22.0), pt(28.0, 20.0)]);
    assert!(path == "crickets[0].hole" && text.contains("2 edges"), "{text}");
    let (_, text) = ring(vec![pt(28.0, 17.0), pt(32.0, 17.0), pt(32.0, 20.5), pt(28.0, 20.0)]);
    assert!(text.contains("not level"), "{text}");
}

#[test]
fn valleys_too_flat_for_their_metal_say_which_cricket_would_do() {
    let rule = SlopeRule::given("valley metal", pitch("2:12"), Source::CommonPractice);
    let shape = |p: &str| CricketShape { valley: Some(rule.clone()), ..CricketShape::of(pitch(p)) };
    let e = Cricket { roof: pitch("4:12"), width: Length::inches(48), shape: shape("2:12") }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "shape.valley"));
    // 1 / tan^2 R = 1 / m^2 + 1 / c^2: c = 1 / sqrt(36 - 9).
    assert!(e.cure().unwrap().contains("2.31:12"), "{:?}", e.cure());
    assert!(Cricket { roof: pitch("4:12"), width: Length::inches(48), shape: shape("2.31:12") }.compute().is_ok());
    let e = Cricket { roof: pitch("2:12"), width: Length::inches(48), shape: shape("12:12") }.compute().unwrap_err();
    assert!(e.cure().unwrap().contains("steeper roof"), "{:?}", e.cure());
}

/// The upward unit normal of a plane that rises by these ratios along x and y.
fn normal(x: f64, y: f64) -> V3 {
    unit([-x, -y, 1.0]).unwrap()
}

/// Every measure of every line in an order of its own. Where the ridge falls the cricket's directions lie between whole degrees, and the last bits of its
/// angles are their own: then lengths alone.
fn measures(roof: &Roof, angles: bool) -> Vec<String> {
    let angle = |a: Angle| if angles { format!("{}", a.degrees() + 0.0) } else { String::new() };
    let mut out: Vec<String> = roof
        .lines()
        .iter()
        .map(|l| {
            let mut sides: Vec<String> = l.sides().map(|s| format!("{} {} {:?}", angle(s.backing), angle(s.meeting_angle), s.water)).collect();
            sides.sort();
            format!("{:?} {} {} {} {:?} {sides:?}", l.kind, l.length, l.plan_length, angle(l.slope), l.dihedral.map(angle))
        })
        .collect();
    out.sort();
    out
}

/// Kind, length and plan length of every line, by kind and length.
fn lengths(roof: &Roof) -> Vec<(LineKind, f64, f64)> {
    let mut out: Vec<_> = roof.lines().iter().map(|l| (l.kind, l.length.mm(), l.plan_length.mm())).collect();
    out.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    out
}

fn mapped(input: &RoofInput, point: impl Fn(Point) -> Point, fall: f64, up: Length) -> RoofInput {
    let mut out = input.clone();
    for p in &mut out.planes {
        let Shape::Plan { outer, holes, down_slope, anchor, .. } = &mut p.shape else { panic!("a plan") };
        outer.iter_mut().chain(holes.iter_mut().flat_map(|h| &mut h.ring)).for_each(|q| *q = point(*q));
        let at = point(Point::new(anchor.x, anchor.y));
        *anchor = Vertex::new(at.x, at.y, (anchor.z + up).length().unwrap());
        *down_slope = Angle::degrees_from(fall).unwrap();
    }
    out
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    /// Its lines from the planes' normals alone.
    #[test]
    fn as_vectors_have_it(m in 0.05..1.2_f64, c in 0.02..1.2_f64, g in 0.0..0.5_f64, level in any::<bool>(), width in 300.0..3000.0_f64, beyond in 0.0..300.0_f64) {
        let g = if level { 0.0 } else { g };
        let of = |ratio: f64| Pitch::from_angle(Angle::degrees_from(crate::num::atan_deg(ratio)).unwrap()).unwrap();
        let shape = CricketShape { pitch: of(c), ridge_fall: (!level).then(|| of(g)), beyond: Length::from_mm(beyond).unwrap(), valley: None };
        let found = Cricket { roof: of(m), width: Length::from_mm(width).unwrap(), shape }.compute().unwrap();
        let (roof, right, left) = (normal(0.0, m), normal(-c, -g), normal(c, -g));
        let (valley, ridge) = (unit(cross(roof, right)).unwrap(), unit(cross(left, right)).unwrap());
        // From the curb's back, level, to the roof's plane along the ridge.
        let a = width / 2.0 + beyond;
        let along = crate::num::space::scale(ridge, 1.0 / ridge[1]);
        let crest = [0.0, 0.0, c * a];
        let t = dot(roof, crest) / -dot(roof, along);
        let top = [0.0, t, c * a + t * along[2]];
        prop_assert!(dot(roof, top).abs() < 1e-9);
        prop_assert!((norm(sub(top, crest)) - found.ridge.mm()).abs() < 1e-6, "{} {}", norm(sub(top, crest)), found.ridge);
        let run = sub(top, [a, 0.0, 0.0]);
        prop_assert!((norm(run) - found.valley.mm()).abs() < 1e-6);
        prop_assert!((dot(unit(run).unwrap(), valley).abs() - 1.0).abs() < 1e-12);
        prop_assert!((valley[2].abs() - found.valley_slope.sin()).abs() < 1e-12);
        prop_assert!((crate::num::atan2_deg(t, a) - found.valley_plan.degrees()).abs() < 1e-9);
        let area = norm(cross(sub(top, crest), sub([a, 0.0, 0.0], crest))) / 2.0;
        prop_assert!((area / found.area.get(AreaUnit::SquareMillimetre) - 1.0).abs() < 1e-9);
        // The seams of each plane run up its own slope.
        for (n, meeting) in [(roof, found.roof_meeting), (right, found.cricket_meeting)] {
            let up = unit([-n[0] * n[2], -n[1] * n[2], 1.0 - n[2] * n[2]]).unwrap();
            let angle = crate::num::acos_deg(dot(up, valley).abs().min(1.0));
            prop_assert!((angle - meeting.degrees()).abs() < 1e-6, "{angle} {meeting}");
        }
        let bend = crate::num::acos_deg(dot(roof, right).min(1.0));
        prop_assert!((found.roof_backing.degrees() + found.cricket_backing.degrees() - bend).abs() < 1e-5);
    }

    /// A roof with a cricket is whole, and the same wherever it stands and whichever way round it is given.
    #[test]
    fn moved_mirrored_and_renumbered(
        m in 2_i16..14, c in 1_i16..14, g in 0_i16..3, width in 1.0..6.0_f64, past in 0.0..0.5_f64, wide in any::<bool>(),
        dx in any::<i32>(), dy in any::<i32>(), dz in any::<i32>(), shift in 0_usize..4
    ) {
        let of = |p: i16| Pitch::in_twelve(Length::inches(p)).unwrap();
        let beyond = if wide { ft(0.1 + past) } else { Length::ZERO };
        let shape = CricketShape { pitch: of(c), ridge_fall: (g > 0).then(|| of(g)), beyond, valley: None };
        let input = input(of(m), width, 12.0, shape);
        let here = input.compute().unwrap();
        let bent = if g > 0 && here.lines_of(LineKind::Ridge).count() == 0 { LineKind::Hip } else { LineKind::Ridge };
        prop_assert_eq!((here.lines_of(LineKind::Valley).count(), here.lines_of(bent).count(), here.lines_of(LineKind::Unknown).count()), (2, 1, 0));
        let figures = here.crickets()[0].figures;
        let ridge = here.lines_of(bent).next().unwrap();
        prop_assert!((ridge.length.mm() - figures.ridge.mm()).abs() < 1e-6 && (ridge.slope.degrees() - figures.ridge_slope.degrees()).abs() < 1e-6);
        for v in here.lines_of(LineKind::Valley) {
            prop_assert!((v.length.mm() - figures.valley.mm()).abs() < 1e-6 && (v.slope.degrees() - figures.valley_slope.degrees()).abs() < 1e-6);
        }
        for p in &here.planes()[1..] {
            prop_assert!((p.area().get(AreaUnit::SquareMillimetre) / figures.area.get(AreaUnit::SquareMillimetre) - 1.0).abs() < 1e-9);
        }
        let angles = g == 0;
        let expected = measures(&here, angles);
        let um = Length::micrometres;
        let by = |l: Length, d: i32| (l + um(d)).length().unwrap();
        let minus = |l: Length| (-l).length().unwrap();
        let moved = mapped(&input, |q| Point::new(by(q.x, dx), by(q.y, dy)), 270.0, um(dz));
        prop_assert_eq!(&measures(&moved.compute().unwrap(), angles), &expected);
        let mirrored = mapped(&input, |q| Point::new(minus(q.x), q.y), 270.0, Length::ZERO);
        prop_assert_eq!(&measures(&mirrored.compute().unwrap(), angles), &expected);
        let turned = mapped(&input, |q| Point::new(q.y, minus(q.x)), 180.0, Length::ZERO);
        let turned = turned.compute().unwrap();
        if angles {
            prop_assert_eq!(&measures(&turned, angles), &expected);
        }
        // A quarter turn takes a direction between whole degrees to other last bits: within a nanometre.
        for (a, b) in lengths(&turned).iter().zip(&lengths(&here)) {
            prop_assert!(a.0 == b.0 && (a.1 - b.1).abs() <= 1e-6 && (a.2 - b.2).abs() <= 1e-6, "{a:?} {b:?}");
        }
        prop_assert_eq!(turned.lines().len(), here.lines().len());
        let mut again = input.clone();
        let Shape::Plan { holes, .. } = &mut again.planes[0].shape else { panic!("a plan") };
        holes[0].ring.rotate_left(shift);
        if shift % 2 == 0 { holes[0].ring.reverse(); }
        prop_assert_eq!(&measures(&again.compute().unwrap(), angles), &expected);
        // The same plane by its vertices.
        let mut bare = input.clone();
        bare.crickets.clear();
        let plane = &bare.compute().unwrap().planes()[0].clone();
        let hole = Opening { name: "curb".into(), ring: plane.rings()[1].clone() };
        bare.planes[0].shape = Shape::Space { outer: plane.rings()[0].clone(), holes: vec![hole], flatness: None };
        bare.crickets = input.crickets.clone();
        let solid = bare.compute().unwrap();
        prop_assert_eq!(solid.lines().len(), here.lines().len());
        for (a, b) in here.lines().iter().zip(solid.lines()) {
            prop_assert_eq!((&a.name, a.kind), (&b.name, b.kind));
            prop_assert!((a.length.mm() - b.length.mm()).abs() < 1e-6);
        }
    }
}

#[test]
fn computing_and_explaining_agree() {
    let input = input(pitch("4:12"), 4.0, 20.0, CricketShape::of(pitch("4:12")));
    let (explained, sheet) = input.explain().unwrap();
    assert_eq!(explained, input.compute().unwrap());
    assert!(sheet.steps().len() > explained.lines().len());
}
