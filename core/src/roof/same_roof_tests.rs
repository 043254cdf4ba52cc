//! One roof, moved, mirrored, renumbered or turned, is still one roof.

use super::test_roofs::{gable, hip, roof, tee};
use super::{PlaneInput, Point, Roof, RoofInput, Shape, Vertex};
use crate::num;
use crate::record::Calculation;
use crate::units::{Angle, AreaUnit, Length};
use proptest::prelude::*;

/// Every measure of every line, without names and numbers, in an order of their own. `hand` is -1 for a mirrored roof.
fn measures(roof: &Roof, hand: f64) -> Vec<String> {
    let mut out: Vec<String> = roof
        .lines()
        .iter()
        .map(|l| {
            let mut sides: Vec<String> = l
                .sides()
                .map(|s| {
                    // A line along the seams has no hand.
                    let skew = if s.meeting_angle.degrees() > 0.0 { s.skew.degrees() * hand + 0.0 } else { 90.0 };
                    format!("{} {} {skew} {:?}", s.backing, s.meeting_angle, s.water)
                })
                .collect();
            sides.sort();
            format!("{:?} {} {} {} {:?} {sides:?}", l.kind, l.length, l.plan_length, l.slope, l.dihedral)
        })
        .collect();
    out.sort();
    out
}

fn mapped(planes: &[PlaneInput], point: impl Fn(Point) -> Point, fall: impl Fn(f64) -> f64, up: Length) -> Vec<PlaneInput> {
    planes
        .iter()
        .map(|p| {
            let Shape::Plan { outer, pitch, down_slope, anchor, .. } = &p.shape else { panic!("a plan") };
            let a = point(Point::new(anchor.x, anchor.y));
            PlaneInput {
                name: p.name.clone(),
                shape: Shape::Plan {
                    outer: outer.iter().map(|&q| point(q)).collect(),
                    holes: vec![],
                    pitch: *pitch,
                    down_slope: Angle::degrees_from(fall(down_slope.degrees())).unwrap(),
                    anchor: Vertex::new(a.x, a.y, (anchor.z + up).length().unwrap()),
                },
            }
        })
        .collect()
}

fn solid(roof: &Roof) -> Vec<PlaneInput> {
    roof.planes()
        .iter()
        .map(|p| PlaneInput { name: p.name().into(), shape: Shape::Space { outer: p.rings()[0].clone(), holes: vec![], flatness: None } })
        .collect()
}

fn minus(l: Length) -> Length {
    (-l).length().unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn moved_mirrored_and_renumbered(
        half in 3.0..20.0_f64, at in 4.0..30.0_f64, past in 4.0..30.0_f64, out in 5.0..30.0_f64,
        dx in any::<i32>(), dy in any::<i32>(), dz in any::<i32>(), turn in 0.0..360.0_f64, shift in 0_usize..5
    ) {
        let planes = tee(at + 2.0 * half + past, half, at, out);
        let here = roof(planes.clone());
        prop_assert_eq!(here.lines_of(super::LineKind::Valley).count(), 2);
        let expected = measures(&here, 1.0);
        let um = Length::micrometres;
        let by = |l: Length, d: i32| (l + um(d)).length().unwrap();

        let moved = roof(mapped(&planes, |q| Point::new(by(q.x, dx), by(q.y, dy)), |f| f, um(dz)));
        prop_assert_eq!(&measures(&moved, 1.0), &expected);

        let mirrored = roof(mapped(&planes, |q| Point::new(minus(q.x), q.y), |f| 180.0 - f, Length::ZERO));
        prop_assert_eq!(&measures(&mirrored, -1.0), &expected);

        let mut shuffled = planes.clone();
        shuffled.rotate_left(shift);
        shuffled.swap(0, 3);
        for (i, p) in shuffled.iter_mut().enumerate() {
            if let Shape::Plan { outer, .. } = &mut p.shape {
                outer.rotate_left(i % 4);
                if i % 2 == 0 { outer.reverse(); }
            }
        }
        prop_assert_eq!(&measures(&roof(shuffled), 1.0), &expected);

        // Turned: the vertices are rounded to 1 pm, so lengths agree within 1 nm and angles with that over the length.
        let (c, s) = (num::cos_deg(turn), num::sin_deg(turn));
        let spin = |q: Point| {
            let (x, y) = (q.x.mm(), q.y.mm());
            Point::new(Length::from_mm(c * x - s * y).unwrap(), Length::from_mm(s * x + c * y).unwrap())
        };
        let turned = roof(mapped(&planes, spin, |f| f + turn, Length::ZERO));
        prop_assert_eq!(turned.lines().len(), here.lines().len());
        for (a, b) in here.lines().iter().zip(turned.lines()) {
            prop_assert_eq!(&a.name, &b.name);
            prop_assert!((a.length.mm() - b.length.mm()).abs() < 1e-6 && (a.plan_length.mm() - b.plan_length.mm()).abs() < 1e-6);
            for (s, t) in a.sides().zip(b.sides()) {
                prop_assert!((s.meeting_angle.degrees() - t.meeting_angle.degrees()).abs() < 1e-6);
                prop_assert!((s.backing.degrees() - t.backing.degrees()).abs() < 1e-6);
                prop_assert_eq!(s.water, t.water);
            }
        }

        // The same roof from its vertices.
        let from_solid = roof(solid(&here));
        for (a, b) in here.lines().iter().zip(from_solid.lines()) {
            prop_assert_eq!((&a.name, a.length, a.plan_length), (&b.name, b.length, b.plan_length));
        }
    }

    #[test]
    fn solid_roofs_move_and_renumber_too(half in 3.0..20.0_f64, at in 4.0..30.0_f64, out in 5.0..30.0_f64, turn in 0.0..360.0_f64, dx in any::<i32>(), dz in any::<i32>()) {
        let planes = tee(at + 2.0 * half + 9.0, half, at, out);
        let (c, s) = (num::cos_deg(turn), num::sin_deg(turn));
        let spin = |q: Point| {
            let (x, y) = (q.x.mm(), q.y.mm());
            Point::new(Length::from_mm(c * x - s * y).unwrap(), Length::from_mm(s * x + c * y).unwrap())
        };
        let here = solid(&roof(mapped(&planes, spin, |f| f + turn, Length::ZERO)));
        let expected = measures(&roof(here.clone()), 1.0);
        let changed = |map: &dyn Fn(Vertex) -> Vertex, reverse: bool| {
            let mut planes = here.clone();
            planes.rotate_left(2);
            for (i, p) in planes.iter_mut().enumerate() {
                if let Shape::Space { outer, .. } = &mut p.shape {
                    outer.rotate_left(i % 3);
                    if reverse { outer.reverse(); }
                    for v in outer.iter_mut() { *v = map(*v); }
                }
            }
            roof(planes)
        };
        let um = Length::micrometres;
        let moved = changed(&|v| Vertex::new((v.x + um(dx)).length().unwrap(), v.y, (v.z - um(dz)).length().unwrap()), false);
        prop_assert_eq!(&measures(&moved, 1.0), &expected);
        let mirrored = changed(&|v| Vertex::new(minus(v.x), v.y, v.z), true);
        prop_assert_eq!(&measures(&mirrored, -1.0), &expected);
    }

    #[test]
    fn computing_and_explaining_agree(half in 3.0..20.0_f64, at in 4.0..30.0_f64) {
        let input = RoofInput::new(tee(at + 2.0 * half + 9.0, half, at, 12.0));
        let (explained, sheet) = input.explain().unwrap();
        prop_assert_eq!(&explained, &input.compute().unwrap());
        prop_assert!(sheet.steps().len() > explained.lines().len());
    }
}

#[test]
fn equal_pitches_cover_a_plan_with_one_area() {
    // 40 ft x 20 ft at 6:12, whatever the shape: plan area times sqrt(1 + (6/12)^2).
    for planes in [gable(), hip()] {
        let r = roof(planes);
        approx::assert_abs_diff_eq!(r.area().get(AreaUnit::SquareFoot), 800.0 * 1.25_f64.sqrt(), epsilon = 1e-9);
        let outlines: f64 = r.planes().iter().map(|p| p.outline().area().get(AreaUnit::SquareFoot)).sum();
        approx::assert_abs_diff_eq!(outlines, 800.0 * 1.25_f64.sqrt(), epsilon = 1e-9);
    }
}
