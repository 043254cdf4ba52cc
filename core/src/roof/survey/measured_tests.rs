//! Measured planes against closed forms: right triangles, Heron, Cayley and Menger.

use crate::error::{Error, ErrorKind};
use crate::record::Calculation;
use crate::roof::{LevelSide, Mark, MeasuredLength, MeasuredPlane, PlaneShape, PlaneSide, Point, SlopeEnd, SquareCorner, cautions};
use crate::units::{Area, AreaUnit, Length, LengthFormat};
use proptest::prelude::*;

fn mm(x: f64) -> Length {
    Length::from_mm(x).unwrap()
}

fn ft(x: f64) -> Length {
    mm(x * 304.8)
}

fn plane<const N: usize>(corners: [&str; N], lengths: &[(&str, &str, Length)]) -> MeasuredPlane {
    let mut plane = MeasuredPlane::new("south", corners);
    plane.lengths = lengths.iter().map(|(a, b, l)| MeasuredLength::new(*a, *b, *l)).collect();
    plane
}

fn apart(shape: &PlaneShape, a: usize, b: usize) -> f64 {
    let (p, q) = (shape.corners[a].at, shape.corners[b].at);
    crate::num::hypot(p.x.mm() - q.x.mm(), p.y.mm() - q.y.mm())
}

fn area(shape: &PlaneShape) -> Area {
    let ring = shape.corners.iter().map(|c| c.at).collect();
    crate::roof::Outline::new(ring, vec![]).unwrap().area()
}

fn level(plane: &mut MeasuredPlane, a: &str, b: &str, end: SlopeEnd) {
    plane.level.push(LevelSide { side: [a.into(), b.into()], end });
}

fn refusal(plane: &MeasuredPlane) -> Error {
    let e = plane.compute().unwrap_err();
    assert_eq!(plane.explain().unwrap_err().to_string(), e.to_string());
    e
}

#[test]
fn three_four_five_is_square() {
    let mut p = plane(["A", "B", "C"], &[("A", "B", ft(4.0)), ("B", "C", ft(3.0)), ("C", "A", ft(5.0))]);
    level(&mut p, "B", "A", SlopeEnd::Foot);
    let shape = p.compute().unwrap();
    let at: Vec<Point> = shape.corners.iter().map(|c| c.at).collect();
    assert_eq!(at, [Point::new(ft(0.0), ft(0.0)), Point::new(ft(4.0), ft(0.0)), Point::new(ft(4.0), ft(3.0))]);
    assert_eq!((shape.needed, shape.checks, shape.misclosure, shape.fit_ratio), (3, 0, None, None));
    assert_eq!(shape.line, "south: square within 3.175 mm");
    let codes: Vec<_> = shape.cautions.iter().map(|c| c.code()).collect();
    assert_eq!(codes, [cautions::UNCHECKED_READINGS]);
}

#[test]
fn a_triangle_has_herons_area_and_a_head_lies_above() {
    // 13, 14, 15: the best known triangle of whole sides, area 84 (Heron of Alexandria, Metrica I.8).
    let mut p = plane(["A", "B", "C"], &[("A", "B", ft(13.0)), ("B", "C", ft(14.0)), ("C", "A", ft(15.0))]);
    level(&mut p, "B", "C", SlopeEnd::Head);
    let shape = p.compute().unwrap();
    approx::assert_abs_diff_eq!(area(&shape).get(AreaUnit::SquareFoot), 84.0, epsilon = 1e-9);
    // Below its level head of 14 the triangle is 2 x 84 / 14 = 12 deep.
    assert_eq!((shape.corners[0].at.y, shape.corners[1].at.y), (Length::ZERO, ft(12.0)));
    assert!(shape.corners[1].at.x > shape.corners[2].at.x, "counter-clockwise a head runs to the left");
}

#[test]
fn the_line_says_where_the_difference_goes() {
    let format = LengthFormat::parse("ft-in/16").unwrap();
    // A left rake that leans 1 3/8 in to the right over 24 ft, and a head that rises 1 in over 40 ft.
    let out = (1.375 / 12.0, 1.0 / 12.0);
    let at = [(0.0, 0.0), (40.0, 0.0), (40.0, 24.0), (out.0, 24.0)];
    let lengths = |at: &[(f64, f64)]| {
        let names = ["A", "B", "C", "D"];
        let pairs = [(0, 1), (1, 2), (2, 3), (3, 0), (0, 2), (1, 3)];
        pairs.map(|(i, j)| (names[i], names[j], ft(crate::num::hypot(at[i].0 - at[j].0, at[i].1 - at[j].1))))
    };
    let mut p = plane(["A", "B", "C", "D"], &lengths(&at));
    p.notation = Some(format);
    level(&mut p, "A", "B", SlopeEnd::Foot);
    let shape = p.compute().unwrap();
    assert_eq!(shape.line, "south: out of square 1 3/8\" over 24'-0\": put it at the left rake D-A");
    let left = &shape.out_of_true[2];
    assert_eq!((left.side, left.off, left.over), (PlaneSide::LeftRake, ft(out.0), ft(24.0)));

    let at = [(0.0, 0.0), (40.0, 0.0), (40.0, 24.0 + out.1), (0.0, 24.0)];
    p = plane(["A", "B", "C", "D"], &lengths(&at));
    p.notation = Some(format);
    level(&mut p, "A", "B", SlopeEnd::Foot);
    assert_eq!(p.compute().unwrap().line, "south: out of parallel 1\" over 40'-0\": put it at the head C-D");
    // A level head is held to the level foot: then the readings take the difference, and are refused.
    level(&mut p, "C", "D", SlopeEnd::Head);
    let e = refusal(&p);
    assert_eq!(e.kind(), ErrorKind::Impossible, "{e}");
}

#[test]
fn a_slip_is_refused_by_name_where_it_can_be_told() {
    // A pentagon with two checks: one diagonal is read a foot long.
    let at = [(0.0, 0.0), (40.0, 0.0), (42.0, 12.0), (20.0, 25.0), (-2.0, 12.0)];
    let names = ["A", "B", "C", "D", "E"];
    let mut p = MeasuredPlane::new("gable end", names);
    for i in 0..5 {
        for j in i + 1..5 {
            let l = crate::num::hypot(at[i].0 - at[j].0, at[i].1 - at[j].1);
            p.lengths.push(MeasuredLength::new(names[i], names[j], ft(l)));
        }
    }
    let shape = p.compute().unwrap();
    assert_eq!((shape.needed, shape.checks), (7, 3));
    assert!(shape.misclosure.unwrap() < Length::from_pm(1000));
    let slip = p.lengths.iter().position(|l| l.from == "B" && l.to == "D").unwrap();
    p.lengths[slip].length = (p.lengths[slip].length + ft(0.1)).length().unwrap();
    let e = refusal(&p);
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, format!("lengths[{slip}]").as_str()), "{e}");
    assert!(e.message().contains("B-D is off by 30") && e.cure() == Some("measure B-D again"), "{e}");
    // Within a tolerance of its own it is allowed, and what it is off shows.
    p.lengths[slip].tolerance = Some(ft(0.2));
    let shape = p.compute().unwrap();
    let off = shape.readings[slip].against_the_rest.unwrap();
    assert!((off.mm() + 30.48).abs() < 0.1, "{off}");
    // With one check alone nobody can tell which: all six are named.
    let square = [("A", "B", ft(40.0)), ("B", "C", ft(24.0)), ("C", "D", ft(40.0)), ("D", "A", ft(24.0)), ("A", "C", ft(46.7)), ("B", "D", ft(46.9))];
    let e = refusal(&plane(["A", "B", "C", "D"], &square));
    assert!(e.cure().unwrap().contains("A-B, B-C, C-D, D-A, A-C, B-D again, one of which is wrong"), "{e}");
}

#[test]
fn what_no_shape_can_satisfy_is_refused() {
    let e = refusal(&plane(["A", "B", "C"], &[("A", "B", ft(4.0)), ("B", "C", ft(3.0)), ("C", "A", ft(7.5))]));
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "lengths[2].length"));
    assert!(e.message().contains("C-A is longer than the way round by B-C and A-B") || e.message().contains("by A-B and B-C"), "{e}");
    // A diagonal longer than the two sides beside it, although no triangle is measured whole.
    let sides = [("A", "B", ft(10.0)), ("B", "C", ft(10.0)), ("C", "D", ft(10.0)), ("D", "A", ft(31.0)), ("B", "D", ft(15.0))];
    assert_eq!(refusal(&plane(["A", "B", "C", "D"], &sides)).path(), "lengths[3].length");
}

#[test]
fn what_is_missing_is_named() {
    let mut p = plane(["A", "B", "C", "D"], &[("A", "B", ft(40.0)), ("B", "C", ft(24.0)), ("C", "D", ft(40.0)), ("D", "A", ft(24.0))]);
    let e = refusal(&p);
    assert_eq!((e.kind(), e.path(), e.cure()), (ErrorKind::Missing, "lengths", Some("measure A-C")));
    // A square corner does as well as a diagonal.
    p.square.push(SquareCorner { at: "B".into(), between: None, tolerance: None });
    let shape = p.compute().unwrap();
    assert!((apart(&shape, 0, 2) - ft(crate::num::hypot(40.0, 24.0)).mm()).abs() < 1e-6);
    p.square.clear();
    p.lengths.truncate(3);
    assert_eq!(refusal(&p).cure(), Some("measure D-A and A-C"));
    // Counted twice is not measured twice: the diagonal is there four times, a side is not.
    for _ in 0..4 {
        p.lengths.push(MeasuredLength::new("A", "C", ft(46.65)));
    }
    assert_eq!(refusal(&p).cure(), Some("measure D-A"));
    // A corner on a straight line is seen by no length along it.
    let straight = [("A", "B", ft(20.0)), ("B", "C", ft(20.0)), ("C", "D", ft(30.0)), ("D", "A", ft(50.0)), ("A", "C", ft(40.0))];
    let e = refusal(&plane(["A", "B", "C", "D"], &straight));
    assert_eq!((e.kind(), e.cure()), (ErrorKind::Missing, Some("measure B-D, which would tell most")), "{e}");
}

#[test]
fn two_shapes_are_not_guessed_between() {
    // A kite and a dart have one set of sides and one diagonal.
    let s = ft(crate::num::hypot(10.0, 4.0));
    let t = ft(crate::num::hypot(10.0, 20.0));
    let mut p = plane(["A", "B", "C", "D"], &[("A", "B", t), ("B", "C", t), ("C", "D", s), ("D", "A", s), ("A", "C", ft(20.0))]);
    let e = refusal(&p);
    assert_eq!((e.kind(), e.cure()), (ErrorKind::Conflict, Some("measure B-D, or give a sketch")), "{e}");
    let pt = |x: f64, y: f64| Point::new(ft(x), ft(y));
    p.sketch = Some(vec![pt(-9.0, 0.0), pt(0.0, -19.0), pt(11.0, 0.0), pt(0.0, 5.0)]);
    assert!((apart(&p.compute().unwrap(), 1, 3) - ft(24.0).mm()).abs() < 1e-6);
    p.sketch = Some(vec![pt(-9.0, 0.0), pt(0.0, -19.0), pt(11.0, 0.0), pt(0.0, -5.0)]);
    assert!((apart(&p.compute().unwrap(), 1, 3) - ft(16.0).mm()).abs() < 1e-6);
    p.sketch = None;
    p.lengths.push(MeasuredLength::new("B", "D", ft(24.0)));
    assert_eq!(p.compute().unwrap().checks, 1);
}

#[test]
fn marks_for_three_four_five_do_as_a_diagonal() {
    let mut p = plane(["A", "B", "C", "D"], &[("A", "B", ft(40.0)), ("B", "C", ft(24.0)), ("C", "D", ft(40.0)), ("D", "A", ft(24.0)), ("M", "N", ft(15.0))]);
    let mark = |name: &str, toward: &str, d: f64| Mark { name: name.into(), from: "A".into(), toward: toward.into(), distance: ft(d) };
    p.marks = vec![mark("M", "B", 12.0), mark("N", "D", 9.0)];
    let shape = p.compute().unwrap();
    assert!((apart(&shape, 0, 2) - ft(crate::num::hypot(40.0, 24.0)).mm()).abs() < 1e-6);
    // The middle of a side to the corner opposite: Apollonius' theorem for a triangle of 13, 14, 15.
    let median = ft(((2.0 * 15.0 * 15.0 + 2.0 * 14.0 * 14.0 - 13.0 * 13.0) / 4.0_f64).sqrt());
    let mut t = plane(["A", "B", "C"], &[("A", "B", ft(13.0)), ("B", "C", ft(14.0)), ("C", "A", ft(15.0)), ("M", "C", median)]);
    t.marks = vec![Mark { name: "M".into(), from: "A".into(), toward: "B".into(), distance: ft(6.5) }];
    let shape = t.compute().unwrap();
    assert_eq!((shape.checks, shape.misclosure.map(|m| m < Length::from_pm(1000))), (1, Some(true)));
    // And without the third side, from the median alone.
    t.lengths.remove(1);
    let shape = t.compute().unwrap();
    assert!((apart(&shape, 1, 2) - ft(14.0).mm()).abs() < 1e-6, "{shape:?}");
}

#[test]
fn too_many_readings_are_refused_at_once() {
    let mut p = plane(["A", "B", "C"], &[("A", "B", ft(4.0)), ("B", "C", ft(3.0)), ("C", "A", ft(5.0))]);
    for _ in 0..1000 {
        p.lengths.extend_from_within(0..3);
    }
    assert_eq!(p.compute().unwrap().checks, 3000);
    p.lengths.extend_from_within(..);
    assert_eq!((refusal(&p).kind(), refusal(&p).path()), (ErrorKind::TooLarge, "lengths"));
}

#[test]
fn every_fault_of_the_names_at_once() {
    let mut p = plane(["A", "A", ""], &[("A", "X", ft(4.0)), ("A", "A", ft(0.0)), ("A", "A", ft(40_000.0))]);
    p.name = " ".into();
    p.tolerance = Some(Length::ZERO);
    p.sketch = Some(vec![]);
    p.marks.push(Mark { name: "A".into(), from: "Q".into(), toward: "A".into(), distance: ft(1.0) });
    p.square.push(SquareCorner { at: "Z".into(), between: None, tolerance: None });
    let e = refusal(&p);
    let found: Vec<(ErrorKind, &str)> = core::iter::once(&e).chain(e.others()).map(|e| (e.kind(), e.path())).collect();
    for expected in [
        (ErrorKind::Missing, "name"),
        (ErrorKind::Conflict, "corners[1]"),
        (ErrorKind::Missing, "corners[2]"),
        (ErrorKind::Conflict, "marks[0].name"),
        (ErrorKind::Unknown, "marks[0].from"),
        (ErrorKind::OutOfRange, "tolerance"),
        (ErrorKind::Conflict, "sketch"),
        (ErrorKind::Unknown, "lengths[0].to"),
        (ErrorKind::OutOfRange, "lengths[1].length"),
        (ErrorKind::Conflict, "lengths[1].to"),
        (ErrorKind::OutOfRange, "lengths[2].length"),
        (ErrorKind::Unknown, "square[0].at"),
    ] {
        assert!(found.contains(&expected), "{expected:?} in {found:?}");
    }
    let mut far = plane(["A", "B", "C", "D"], &[("A", "B", ft(4.0))]);
    far.marks.push(Mark { name: "M".into(), from: "B".into(), toward: "A".into(), distance: ft(4.5) });
    assert_eq!(refusal(&far).path(), "marks[0].distance");
    far.marks.clear();
    level(&mut far, "A", "C", SlopeEnd::Foot);
    assert_eq!(refusal(&far).path(), "level[0].side");
}

/// Cayley and Menger's determinant of four points: 288 times the square of the volume, 0 for points of one plane.
fn cayley_menger(d: &dyn Fn(usize, usize) -> f64) -> f64 {
    let mut m: Vec<Vec<f64>> = (0..5)
        .map(|i| {
            (0..5)
                .map(|j| {
                    if i == j {
                        0.0
                    } else if i == 4 || j == 4 {
                        1.0
                    } else {
                        d(i, j) * d(i, j)
                    }
                })
                .collect()
        })
        .collect();
    let mut det = 1.0;
    for k in 0..5 {
        let pivot = (k..5).max_by(|a, b| m[*a][k].abs().total_cmp(&m[*b][k].abs())).unwrap();
        if pivot != k {
            m.swap(pivot, k);
            det = -det;
        }
        det *= m[k][k];
        for i in k + 1..5 {
            let by = m[i][k] / m[k][k];
            let row = m[k].clone();
            for (cell, above) in m[i].iter_mut().zip(&row).skip(k) {
                *cell -= by * above;
            }
        }
    }
    det
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn exact_lengths_give_the_shape_back(
        radii in prop::collection::vec((3000.0..9000.0_f64, -0.35..0.35_f64), 4..7), squash in 0.4..1.0_f64, mirror in any::<bool>()
    ) {
        let n = radii.len();
        let names: Vec<String> = (0..n).map(|i| format!("P{i}")).collect();
        let at: Vec<[f64; 2]> = radii.iter().enumerate().map(|(i, (r, jitter))| {
            let turn = (i as f64 + jitter) / n as f64 * 360.0;
            [r * crate::num::cos_deg(turn), squash * r * crate::num::sin_deg(turn)]
        }).collect();
        let mut p = MeasuredPlane::new("any", ["A"]);
        p.corners.clone_from(&names);
        for i in 0..n {
            for j in i + 1..n {
                p.lengths.push(MeasuredLength::new(&names[i], &names[j], mm(crate::num::hypot(at[i][0] - at[j][0], at[i][1] - at[j][1]))));
            }
        }
        if mirror {
            // Which length is given first does not matter.
            p.lengths.reverse();
        }
        let shape = p.compute().unwrap();
        prop_assert_eq!(shape.checks, n * (n - 1) / 2 - (2 * n - 3));
        for i in 0..n {
            for j in i + 1..n {
                prop_assert!((apart(&shape, i, j) - crate::num::hypot(at[i][0] - at[j][0], at[i][1] - at[j][1])).abs() < 1e-6);
            }
        }
        prop_assert!(shape.misclosure.unwrap() < Length::from_pm(1000) && shape.last_step < Length::from_pm(1000));
        // Four of them lie in one plane whatever was read: the determinant is nothing beside the cube of what it is made of.
        let read = |i: usize, j: usize| apart(&shape, i, j) / 10_000.0;
        prop_assert!(cayley_menger(&read).abs() < 1e-9);
    }

    #[test]
    fn readings_off_within_the_tape_stay_within_it(offs in prop::collection::vec(-1.0..1.0_f64, 6), wide in 20.0..60.0_f64, deep in 8.0..40.0_f64) {
        let names = ["A", "B", "C", "D"];
        let at = [(0.0, 0.0), (wide, 0.0), (wide, deep), (0.0, deep)];
        let mut p = MeasuredPlane::new("any", names);
        for ((i, j), off) in [(0, 1), (1, 2), (2, 3), (3, 0), (0, 2), (1, 3)].into_iter().zip(&offs) {
            // Half the tolerance, so that what is left over can never pass it.
            let l = ft(crate::num::hypot(at[i].0 - at[j].0, at[i].1 - at[j].1)).mm() + off * 3.175 / 2.0;
            p.lengths.push(MeasuredLength::new(names[i], names[j], mm(l)));
        }
        let shape = p.compute().unwrap();
        // The residuals are what least squares says: square to every move of a corner. By hand: a push of corner C changes BC, CD and AC.
        let unit = |a: usize, b: usize| {
            let (p, q) = (shape.corners[a].at, shape.corners[b].at);
            let d = [q.x.mm() - p.x.mm(), q.y.mm() - p.y.mm()];
            let l = crate::num::hypot(d[0], d[1]);
            [d[0] / l, d[1] / l]
        };
        let r = |k: usize| shape.readings[k].residual.mm();
        for axis in 0..2 {
            let pushed = r(1) * unit(1, 2)[axis] + r(2) * unit(3, 2)[axis] + r(4) * unit(0, 2)[axis];
            prop_assert!(pushed.abs() < 1e-5, "{pushed}");
        }
        prop_assert!(shape.readings.iter().all(|r| r.residual.mm().abs() <= r.tolerance.mm()));
        // What is left out says as much as what is left over: each reading less what the other five make it.
        let mut five = p.clone();
        five.lengths.remove(5);
        five.sketch = Some(shape.corners.iter().map(|c| c.at).collect());
        let alone = apart(&five.compute().unwrap(), 1, 3) - p.lengths[5].length.mm();
        prop_assert!((shape.readings[5].against_the_rest.unwrap().mm() - alone).abs() < 0.02 * alone.abs() + 1e-3);
    }
}
