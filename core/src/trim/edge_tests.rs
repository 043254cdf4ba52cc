//! Edges of several folds: closed forms, the trade's figures and bad input.

use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::{Length, LengthUnit};
use core::f64::consts::PI;
use proptest::prelude::*;

fn mm(v: f64) -> Length {
    Length::from_f64(v, LengthUnit::Millimetre).unwrap()
}

fn mm_of(l: Length) -> f64 {
    l.get(LengthUnit::Millimetre)
}

fn axis(k: f64) -> BendRule {
    BendRule::neutral_axis(NeutralFactor::new(k).unwrap())
}

fn strip(t: f64, end: Edge) -> Result<Profile, crate::error::Error> {
    Profile::builder(mm(t)).painted(Face::Upper).leg("body", mm(60.0)).end(end).build()
}

fn outline(t: f64, end: Edge) -> Outline {
    strip(t, end).unwrap().unfold(&axis(0.4)).unwrap().outline().unwrap()
}

/// The return touches where the tangents from its end to the arc are alike: A = 180 + 2 atan(R/L).
#[test]
fn a_teardrop_closes_until_it_touches_or_clears_the_leg() {
    for (r, l) in [(2.0, 2.0), (3.0, 9.0), (1.0, 14.0), (4.0, 1.5)] {
        let hem = |gap: f64| Edge::teardrop_hem(mm(r), mm(l), mm(gap), Direction::Up);
        let flat = strip(0.6, hem(0.0)).unwrap().unfold(&axis(0.4)).unwrap();
        let closed = 2.0 * crate::num::atan_deg(r / l);
        assert!((flat.bends()[0].angle.degrees() - 180.0 - closed).abs() < 1e-9);
        assert_eq!((flat.legs()[1].length(), flat.bends()[0].part), (mm(l), Part::EndHem));
        // What it takes: the arc on the neutral line and the return.
        let expected = 60.0 - (r + 0.6) + (PI + closed / 180.0 * PI) * (r + 0.4 * 0.6) + l;
        assert!((mm_of(flat.girth()) - expected).abs() < 1e-8);
        for gap in [0.0, 0.3 * r, r, 1.9 * r] {
            let o = outline(0.6, hem(gap));
            // The end's inside corner stands the gap above the leg's upper face, 0.6 mm up.
            let end = o.face(Face::Upper).last().unwrap().to;
            assert!((mm_of(end.y) - 0.6 - gap).abs() < 1e-8, "{r} {l} {gap}: {}", end.y);
            // And it stays over the leg that it closes on.
            assert!(mm_of(end.x) > 0.0 && end.x < mm(60.0));
        }
    }
}

/// Three layers, the sheet's edge inside: one thickness between the first and the third.
#[test]
fn a_double_hem_is_two_folds() {
    let (t, w, k) = (0.6, 12.0, 0.4);
    let p = strip(t, Edge::double_hem(mm(w), Direction::Up)).unwrap();
    let flat = p.unfold(&axis(k)).unwrap();
    let parts: Vec<Part> = flat.bends().iter().map(|b| b.part).collect();
    assert_eq!(parts, [Part::EndHem, Part::EndLip]);
    assert_eq!(flat.bends().iter().map(|b| b.inside_radius).collect::<Vec<_>>(), [mm(t / 2.0), Length::ZERO]);
    // Flat parts: the leg to the outside of the fold; the strip between both folds; the lip as long as that.
    let between = w - 1.5 * t - t;
    let expected = (60.0 - 1.5 * t) + PI * (0.5 * t + k * t) + between + PI * k * t + between;
    assert!((mm_of(flat.girth()) - expected).abs() < 1e-8, "{} {expected}", flat.girth());
    let o = flat.outline().unwrap();
    assert_eq!(o.bounds(), Bounds { least: Point::ORIGIN, greatest: Point { x: mm(60.0), y: mm(3.0 * t) } });
    // From the outside of one fold to the outside of the other.
    let outer = o.face(Face::Lower);
    assert_eq!(outer[2].part, Part::EndHem);
    let turned = outer[3].arc.unwrap();
    assert!((mm_of(turned.centre.x) - t - (60.0 - w)).abs() < 1e-8);
    // The lip lies on the leg: its inside face at one thickness over the leg's, its edge short of the first arc.
    let lip = o.face(Face::Upper).last().unwrap();
    assert_eq!((lip.part, lip.from.y, lip.to.y), (Part::EndLip, mm(2.0 * t), mm(2.0 * t)));
    assert!((mm_of(lip.to.x) - (60.0 - 1.5 * t)).abs() < 1e-8);
    // NAVEDTRA 14251, figure 2-55: twice the width, to the picometre, in any thickness.
    for t in [0.4, 0.601, 1.0] {
        assert_eq!(strip(t, Edge::double_hem(mm(w), Direction::Down)).unwrap().girth(&BendRule::SharpCorner).unwrap(), mm(60.0 + 2.0 * w));
    }
}

/// NAVEDTRA 14251, figure 2-56: 2 1/2 wire diameters; the arc round the wire agrees within a quarter of the wire in roof gauges.
#[test]
fn a_wired_edge_goes_round_the_wire() {
    for (d, t) in [(3.175, 0.6), (3.175, 0.4), (6.35, 0.6), (4.76, 0.8)] {
        let edge = Edge::wired_edge(mm(d), Direction::Up);
        let p = strip(t, edge.clone()).unwrap();
        assert!((mm_of(p.girth(&BendRule::SharpCorner).unwrap()) - 60.0 - 2.5 * d).abs() < 1e-8);
        let flat = p.unfold(&axis(0.4)).unwrap();
        assert!((mm_of(flat.girth()) - 60.0 - 2.5 * d).abs() < 0.25 * d, "{d} {t}: {}", flat.girth());
        assert_eq!(flat.legs()[1].length(), Length::ZERO);
        // The outer corner of the sheet's edge touches the face that the wire lies on.
        let o = outline(t, edge);
        let end = o.face(Face::Lower).last().unwrap().to;
        assert!((mm_of(end.y) - t).abs() < 1e-7, "{}", end.y);
        assert!((mm_of(o.bounds().greatest.x) - 60.0).abs() < 1e-8);
        assert!((mm_of(o.bounds().greatest.y) - (2.0 * t + d)).abs() < 1e-8);
    }
    // The worksheet names the rule.
    let pattern = FlatPattern { profile: strip(0.6, Edge::wired_edge(mm(3.0), Direction::Down)).unwrap(), rule: BendRule::SharpCorner };
    let (_, sheet) = pattern.explain().unwrap();
    let step = sheet.steps().into_iter().find(|s| s.formula.contains("2 1/2 d")).unwrap();
    assert!(step.source.as_ref().unwrap().to_string().contains("NAVEDTRA 14251"));
}

#[test]
fn edges_stand_at_either_end_and_keep_their_own_rule() {
    for edge in
        [Edge::double_hem(mm(10.0), Direction::Down), Edge::teardrop_hem(mm(2.0), mm(8.0), mm(0.5), Direction::Up), Edge::wired_edge(mm(4.0), Direction::Down)]
    {
        let end = strip(0.6, edge.clone()).unwrap();
        let start = end.reversed();
        assert_eq!(start.start_edge, edge);
        let (one, two) = (end.unfold(&axis(0.4)).unwrap(), start.unfold(&axis(0.4)).unwrap());
        assert_eq!(one.girth(), two.girth());
        assert!(two.bends()[0].part.is_of_start_edge() && one.bends()[0].part == Part::EndHem);
        // The body lies along +x either way.
        let o = two.outline().unwrap();
        let body = o.face(Face::Lower).iter().find(|p| p.part == Part::Body(0)).unwrap();
        assert_eq!((body.from, body.to.y), (Point::ORIGIN, Length::ZERO));
        let own = strip(0.6, edge.clone().with_rule(axis(0.5))).unwrap();
        assert_eq!(own.end_edge.rule(), Some(&axis(0.5)));
        assert_eq!(own.girth(&axis(0.4)).unwrap(), end.girth(&axis(0.5)).unwrap());
        assert_eq!(own.girth(&BendRule::SharpCorner).unwrap(), end.girth(&axis(0.5)).unwrap());
    }
    // A teardrop has no nominal sum of its own, and the refusal stands at its edge.
    let drop = strip(0.6, Edge::teardrop_hem(mm(2.0), mm(8.0), mm(0.5), Direction::Up)).unwrap();
    let e = drop.girth(&BendRule::SharpCorner).unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "end_edge"));
}

#[test]
fn edges_that_cannot_be_are_refused_with_every_fault() {
    let up = Direction::Up;
    let one = |edge: Edge| {
        let e = strip(0.6, edge).unwrap_err();
        (e.kind(), e.path().to_owned(), e.others().iter().map(|o| o.path().to_owned()).collect::<Vec<_>>())
    };
    let none: Vec<String> = vec![];
    let (range, conflict, impossible) = (ErrorKind::OutOfRange, ErrorKind::Conflict, ErrorKind::Impossible);
    for (edge, kind, path) in [
        (Edge::double_hem(mm(1.5), up), impossible, "end_edge.width"),
        (Edge::double_hem(mm(70.0), up), impossible, "end_edge.width"),
        (Edge::wired_edge(Length::ZERO, up), range, "end_edge.wire"),
        (Edge::wired_edge(mm(-3.0), up), range, "end_edge.wire"),
        // The bead alone is wider than the leg is long.
        (Edge::wired_edge(mm(60.0), up), impossible, "end_edge.wire"),
        (Edge::teardrop_hem(mm(2.0), mm(8.0), mm(4.0), up), conflict, "end_edge.gap"),
        (Edge::teardrop_hem(mm(2.0), mm(8.0), mm(-0.1), up), range, "end_edge.gap"),
        (Edge::teardrop_hem(Length::ZERO, mm(8.0), Length::ZERO, up), range, "end_edge.inside_radius"),
        (Edge::teardrop_hem(mm(2.0), mm(58.0), Length::ZERO, up), impossible, "end_edge.return_flat"),
        (Edge::teardrop_hem(mm(2.0), Length::MAX, Length::ZERO, up), impossible, "end_edge.return_flat"),
        (Edge::teardrop_hem(Length::MAX, mm(8.0), Length::ZERO, up), impossible, "end_edge.return_flat"),
        // So thin beside its wire that the gap of the curl is lost in the rounding.
        (Edge::wired_edge(Length::MAX, up), impossible, "end_edge.wire"),
    ] {
        assert_eq!(one(edge.clone()), (kind, path.to_owned(), none.clone()), "{edge:?}");
    }
    let three = one(Edge::teardrop_hem(mm(-2.0), mm(-8.0), mm(-1.0), up));
    assert_eq!(three, (range, "end_edge.inside_radius".into(), vec!["end_edge.return_flat".into(), "end_edge.gap".into()]));
}

#[cfg(feature = "serde")]
#[test]
fn edges_in_job_form() {
    for (json, edge) in [
        (r#""raw""#, Edge::Raw),
        (r#"{"closed-hem":{"width":"12 mm","direction":"up"}}"#, Edge::closed_hem(mm(12.0), Direction::Up)),
        (r#"{"double-hem":{"width":"12 mm","direction":"up"}}"#, Edge::double_hem(mm(12.0), Direction::Up)),
        (r#"{"wired-edge":{"wire":"3 mm","direction":"down"}}"#, Edge::wired_edge(mm(3.0), Direction::Down)),
        (
            r#"{"teardrop-hem":{"inside_radius":"2 mm","return_flat":"8 mm","gap":"0 mm","direction":"up","rule":"aviation"}}"#,
            Edge::teardrop_hem(mm(2.0), mm(8.0), Length::ZERO, Direction::Up).with_rule(BendRule::Aviation),
        ),
    ] {
        assert_eq!(serde_json::from_str::<Edge>(json).unwrap(), edge);
        assert_eq!(serde_json::to_string(&edge).unwrap(), json);
    }
    for part in [Part::StartLip, Part::StartHem, Part::Body(3), Part::EndHem, Part::EndLip] {
        assert_eq!(serde_json::from_str::<Part>(&serde_json::to_string(&part).unwrap()).unwrap(), part);
    }
    assert_eq!(serde_json::to_string(&Part::StartLip).unwrap(), r#""start-lip""#);
}

/// Upstands and strips of the trade's books, with their documents.
#[test]
fn nominal_seams_of_the_books() {
    let inch = |text: &str| Length::parse(text).unwrap();
    let quarter = inch("1/4\"");
    for (seam, first, second, document) in [
        // NAVEDTRA 14251, figures 2-54 to 2-56.
        (NominalSeam::Hem { width: quarter }, "1/4\"", "0\"", "2-54"),
        (NominalSeam::DoubleHem { width: quarter }, "1/4\"", "1/4\"", "2-55"),
        (NominalSeam::WiredEdge { wire: inch("1/8\"") }, "5/16\"", "0\"", "2-56"),
        // Its worked seam of 1/4 in: 3/4 in, half on each side (recalled).
        (NominalSeam::GroovedSeam { lock: quarter }, "3/8\"", "3/8\"", "lock seams"),
        // Copper Roofings, p. 6, and Copper Flashings, p. 54: seams of 1 and of 3/4 in.
        (NominalSeam::DoubleLock { height: inch("1\""), lock: quarter }, "1 1/4\"", "1 1/2\"", "Copper Roofings"),
        (NominalSeam::DoubleLock { height: inch("3/4\""), lock: quarter }, "1\"", "1 1/4\"", "Copper Roofings"),
        // UFGS-07600, p. 14: the second upstand of 1.75 in for a seam of about 1 in.
        (NominalSeam::DoubleLock { height: inch("1\""), lock: inch("3/8\"") }, "1 3/8\"", "1.75 in", "Copper Roofings"),
        (NominalSeam::SingleLock { height: inch("1\""), lock: inch("1/2\"") }, "1 1/2\"", "2\"", "geometry"),
    ] {
        let (found, sheet) = seam.explain().unwrap();
        assert_eq!((found.first, found.second), (inch(first), inch(second)), "{seam:?}");
        assert_eq!(found.total, (found.first + found.second).length().unwrap());
        assert!(sheet.steps()[0].source.as_ref().unwrap().to_string().contains(document), "{seam:?}");
        assert_eq!(found.cautions[0].code(), cautions::THICKNESS_LEFT_OUT);
    }
    let e = NominalSeam::DoubleLock { height: Length::ZERO, lock: mm(-1.0) }.compute().unwrap_err();
    assert_eq!((e.path(), e.others()[0].path()), ("double-lock.height", "double-lock.lock"));
    assert_eq!(NominalSeam::SingleLock { height: mm(25.0), lock: mm(25.0) }.compute().unwrap_err().kind(), ErrorKind::Conflict);
    assert_eq!(NominalSeam::GroovedSeam { lock: Length::MAX }.compute().unwrap_err().kind(), ErrorKind::Overflow);
}

proptest! {
    /// Whatever the figures, an edge is bent or refused, and the girth is the sum of its parts.
    #[test]
    fn any_edge_is_bent_or_refused(pm in prop::collection::vec(any::<i64>(), 3), small in prop::collection::vec(1_i64..40_000_000_000, 3), kind in 0..6, t in 1_i64..3_000_000_000) {
        for l in [pm, small] {
            let l: Vec<Length> = l.into_iter().map(Length::from_pm).collect();
            let edge = match kind {
                0 => Edge::closed_hem(l[0], Direction::Up),
                1 => Edge::open_hem(l[0], l[1], Direction::Down),
                2 | 3 => Edge::teardrop_hem(l[0], l[1], l[2], Direction::Up),
                4 => Edge::double_hem(l[0], Direction::Down),
                _ => Edge::wired_edge(l[0], Direction::Up),
            };
            let p = Profile { end_edge: edge, ..strip(0.6, Edge::closed_hem(mm(5.0), Direction::Up)).unwrap() };
            let p = Profile { thickness: Length::from_pm(t), ..p };
            match (p.validate_with(&axis(0.4)), p.unfold(&axis(0.4))) {
                (Ok(()), Ok(flat)) => {
                    let parts = flat.legs().iter().map(|l| l.length()).chain(flat.bends().iter().map(FlatBend::allowance)).sum::<crate::units::Sum>();
                    prop_assert_eq!(parts.length().unwrap(), flat.girth());
                    flat.outline().unwrap();
                }
                (Err(told), Err(same)) => prop_assert_eq!(told, same),
                (told, found) => prop_assert!(false, "validator {told:?}, unfolding {found:?}"),
            }
        }
    }
}
