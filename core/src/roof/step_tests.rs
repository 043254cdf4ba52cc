//! Steps: what is one, how high, and what is refused.

use super::{LineKind, Outfall, PlaneInput, Point, RoofInput, Shape, StepInput, Vertex, Water};
use crate::error::ErrorKind;
use crate::pitch::Pitch;
use crate::record::Calculation;
use crate::units::{Angle, Length};

fn plan(name: &str, outer: &[(i32, i32)], pitch: &str, down: f64, anchor: (i32, i32, i32)) -> PlaneInput {
    let mm = |v: i32| Length::micrometres(v * 1000);
    let outer = outer.iter().map(|(x, y)| Point::new(mm(*x), mm(*y))).collect();
    let (x, y, z) = anchor;
    let (pitch, down_slope) = (Pitch::parse(pitch).unwrap(), Angle::degrees_from(down).unwrap());
    PlaneInput { name: name.into(), shape: Shape::Plan { outer, holes: vec![], pitch, down_slope, anchor: Vertex { x: mm(x), y: mm(y), z: mm(z) } } }
}

/// A hall 10 m wide whose eave lies 500 mm over the upper end of a porch 4 m wide.
fn roof() -> RoofInput {
    let hall = plan("hall", &[(0, 0), (10_000, 0), (10_000, 6000), (0, 6000)], "4:12", 270.0, (0, 0, 4500));
    let porch = plan("porch", &[(3000, -3000), (7000, -3000), (7000, 0), (3000, 0)], "3:12", 270.0, (3000, 0, 4000));
    let mut roof = RoofInput::new(vec![hall, porch]);
    roof.steps = vec![StepInput { lower: "porch".into(), upper: "hall".into() }];
    roof
}

#[test]
fn a_step_is_one_line_and_takes_the_eave_and_the_high_edge_over_it() {
    let found = roof().compute().unwrap();
    let step = found.line("step 1").unwrap();
    assert_eq!((step.kind, step.riser, step.length), (LineKind::Step, Some(Length::micrometres(500_000)), Length::micrometres(4_000_000)));
    assert_eq!((step.start.z, step.end.z), (Length::micrometres(4_000_000), Length::micrometres(4_000_000)));
    let (porch, hall) = (&step.side, step.other().unwrap());
    assert_eq!((porch.plane, hall.plane, porch.water, hall.water), (1, 0, Water::Away, Water::Toward));
    assert_eq!(step.crossing(), Some((0, 1)));
    // Each side stands on its own plane: the porch's top, and 3 to 7 m along the hall's foot.
    let top = 3000.0 * (1.0_f64 + 1.0 / 16.0).sqrt();
    assert!((porch.start.y.mm() - porch.end.y.mm()).abs() < 1e-6 && (porch.start.y.mm() - top).abs() < 1e-6);
    let xs = [hall.start.x.mm(), hall.end.x.mm()];
    assert!(xs.iter().any(|x| (x - 3000.0).abs() < 1e-6) && xs.iter().any(|x| (x - 7000.0).abs() < 1e-6) && hall.start.y.mm().abs() < 1e-6);
    assert!((porch.meeting_angle.degrees() - 90.0).abs() < 1e-9 && (hall.meeting_angle.degrees() - 90.0).abs() < 1e-9);
    assert!(porch.backing.degrees() > 0.0 && hall.backing.degrees() < 0.0);
    // What is left of the hall's lower end is two eaves; the porch has no high edge.
    assert_eq!(found.lines_of(LineKind::Eave).count(), 3);
    assert_eq!(found.lines_of(LineKind::HighEdge).map(|l| l.side.plane).collect::<Vec<_>>(), [0]);
    assert!(found.drains().iter().any(|d| d.plane == 0 && d.to == Outfall::Plane(1)));
    // Without its name it is an eave over a high edge, as before.
    let plain = RoofInput { steps: vec![], ..roof() }.compute().unwrap();
    assert_eq!((plain.lines_of(LineKind::Step).count(), plain.lines_of(LineKind::HighEdge).count()), (0, 2));
}

#[test]
fn what_is_no_step_is_refused_by_why_and_how_much() {
    let refused = |change: &dyn Fn(&mut RoofInput)| {
        let mut roof = roof();
        change(&mut roof);
        roof.compute().unwrap_err()
    };
    let porch = |pitch: &str, down: f64, anchor: (i32, i32, i32)| plan("porch", &[(3000, -3000), (7000, -3000), (7000, 0), (3000, 0)], pitch, down, anchor);
    let e = refused(&|r| r.steps[0].lower = "shed".into());
    assert_eq!((e.kind(), e.path(), e.value(), e.allowed()), (ErrorKind::Unknown, "steps[0].lower", Some("shed"), Some("hall, porch")));
    let e = refused(&|r| r.steps.push(r.steps[0].clone()));
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "steps[1]"));
    let e = refused(&|r| r.steps[0] = StepInput { lower: "hall".into(), upper: "porch".into() });
    assert_eq!((e.kind(), e.value(), e.cure()), (ErrorKind::Geometry, Some("-500 mm"), Some("the two names exchanged")));
    let e = refused(&|r| r.planes[1] = porch("3:12", 270.0, (3000, 0, 4500)));
    assert!(e.message().contains("no riser"), "{e}");
    // The porch falls to the hall: 4500 less 3500 at its foot.
    let e = refused(&|r| r.planes[1] = porch("3:12", 90.0, (3000, 0, 3500)));
    assert!(e.message().contains("dammed") && e.value().unwrap().contains("porch runs toward"), "{e}");
    // It falls to one side, its end climbing 1 m over 4 m.
    let e = refused(&|r| r.planes[1] = porch("3:12", 180.0, (3000, 0, 3000)));
    assert!(e.message().contains("varies by 1000 mm") && e.value() == Some("500 mm to 1500 mm"), "{e}");
    let e = refused(&|r| r.planes[1] = plan("porch", &[(3000, -3000), (7000, -3000), (7000, -100), (3000, -100)], "3:12", 270.0, (3000, -100, 4000)));
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "steps[0]"));
    assert!(e.message().contains("plumb over"), "{e}");
    // A wall between them in the roof's terms is not asked for: a step has its own riser.
    let e = refused(&|r| r.steps[0].upper = "porch".into());
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "steps[0]"));
}
