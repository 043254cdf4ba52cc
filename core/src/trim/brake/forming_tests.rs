//! Forming checks: each fault and its edge, crossings against chords, many bends, and bad input.

use super::strip::{SKIN, Strip, finished};
use super::*;
use crate::error::ErrorKind;
use crate::metal::{Alloy, Grain, RadiusLimit, Temper};
use crate::record::{Calculation, Source};
use crate::trim::flat_tests::any_profile;
use crate::trim::outline_tests::any_chain;
use crate::trim::{BendRule, Direction, Edge, Face, NeutralFactor, Part, Profile, ProfileBuilder};
use crate::units::{Angle, BendAngle, Length, LengthUnit};
use proptest::prelude::*;
use robust::{Coord, orient2d};

fn mm(v: f64) -> Length {
    Length::from_f64(v, LengthUnit::Millimetre).unwrap()
}

fn bent(degrees: f64) -> BendAngle {
    BendAngle::from_flat(Angle::degrees_from(degrees).unwrap()).unwrap()
}

fn middle() -> BendRule {
    BendRule::neutral_axis(NeutralFactor::MIDDLE)
}

fn sheet(t: f64, r: f64) -> ProfileBuilder {
    Profile::builder(mm(t)).painted(Face::Upper).inside_radius(mm(r))
}

fn report(p: Profile) -> FormingReport {
    FormingCheck::new(p, middle()).compute().unwrap()
}

/// Three bends to the left around a rectangle; the last leg overlaps the first by `over`.
fn box_of(over: f64) -> Profile {
    sheet(1.0, 1.0)
        .leg("a", mm(50.0))
        .up(BendAngle::SQUARE)
        .leg("b", mm(40.0))
        .up(BendAngle::SQUARE)
        .leg("c", mm(50.0))
        .up(BendAngle::SQUARE)
        .leg("d", mm(39.0 + over))
        .build()
        .unwrap()
}

#[test]
fn a_box_may_touch_itself_and_not_more() {
    assert!(report(box_of(0.0)).forms, "closed to its own thickness");
    assert!(report(box_of(0.0009)).forms, "less than a micrometre is a touch");
    let found = report(box_of(0.0011));
    assert_eq!(found.faults, [FormingFault::Crosses { one: SheetPart::Leg(Part::Body(0)), other: SheetPart::Leg(Part::Body(3)) }]);
    assert_eq!((found.forms, found.faults[0].to_string().as_str()), (false, "leg 1 and leg 4 overlap when folded"));
    let e = found.require().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "profile.legs[0]"));
}

#[test]
fn hems_close_on_their_legs() {
    for (edge, forms) in [
        (Edge::closed_hem(mm(12.0), Direction::Up), true),
        (Edge::open_hem(mm(12.0), mm(4.0), Direction::Down), true),
        (Edge::open_hem(mm(12.0), Length::from_pm(1), Direction::Down), true),
    ] {
        let p = sheet(0.6, 0.6).leg("a", mm(50.0)).up(BendAngle::SQUARE).leg("b", mm(60.0)).end(edge).build().unwrap();
        assert_eq!(report(p).forms, forms);
    }
    // Inside a corner the hem of one leg meets the next leg.
    let p = sheet(0.6, 0.6).leg("a", mm(20.0)).up(bent(135.0)).leg("b", mm(20.0)).start(Edge::open_hem(mm(12.0), mm(8.0), Direction::Up)).build().unwrap();
    let found = report(p);
    assert!(matches!(found.faults[..], [FormingFault::Crosses { .. }]), "{:?}", found.faults);
    // What cannot be a hem at all is a fault of the profile.
    let mut long = sheet(0.6, 0.6).leg("a", mm(50.0)).end(Edge::closed_hem(mm(12.0), Direction::Up)).build().unwrap();
    long.end_edge = Edge::closed_hem(mm(60.0), Direction::Up);
    let e = FormingCheck::new(long, middle()).compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "profile.end_edge.width"));
}

#[test]
fn a_teardrop_of_more_than_half_a_turn() {
    // Past 180 degrees the return leans back to the leg and meets it where 2 r (1 + cos) ... is used up: legs to the tangent lines.
    let teardrop =
        |back: f64| sheet(0.5, 2.0).measured_to(crate::trim::LegEnd::Tangent).leg("a", mm(50.0)).up(bent(210.0)).leg("back", mm(back)).build().unwrap();
    // The return starts at height 2 r + t + (r cos 30 - r) above the inside of the leg and falls with sin 30; its lower corner is half a thickness ahead of it.
    let r = 2.0;
    let height = r + r * crate::num::cos_deg(30.0);
    let reach = height / 0.5;
    assert!(report(teardrop(reach - 0.001)).forms);
    let found = report(teardrop(reach + 0.004));
    assert_eq!(found.faults, [FormingFault::Crosses { one: SheetPart::Leg(Part::Body(0)), other: SheetPart::Leg(Part::Body(1)) }]);
    // A whole turn runs into its own leg.
    let loop_ = sheet(0.5, 2.0).measured_to(crate::trim::LegEnd::Tangent).leg("a", mm(50.0)).up(bent(350.0)).leg("b", mm(1.0)).build().unwrap();
    assert!(matches!(report(loop_).faults[..], [FormingFault::Crosses { .. }]));
    // Two bends of one radius without a flat between them, by more than a full turn.
    let double = sheet(0.5, 2.0)
        .measured_to(crate::trim::LegEnd::Tangent)
        .leg("a", mm(5.0))
        .up(bent(190.0))
        .leg("no flat", Length::from_pm(1))
        .up(bent(190.0))
        .leg("b", mm(0.5))
        .build()
        .unwrap();
    assert!(matches!(report(double).faults[..], [FormingFault::Crosses { .. }]));
}

#[test]
fn limits_are_kept_or_told() {
    let p = sheet(0.6, 0.6).leg("a", mm(50.0)).up(BendAngle::SQUARE).leg("b", mm(8.0)).end(Edge::open_hem(mm(6.0), mm(2.0), Direction::Down)).build().unwrap();
    let flat = p.unfold(&middle()).unwrap();
    let at = flat.bends()[0].from;
    let hole = |label: &str, station: Length| Hole { label: label.into(), station, size: mm(4.0) };
    let user = Source::User { note: "punch list".into() };
    let check = FormingCheck {
        metal: Some(FormingMetal { alloy: Alloy::Aluminium5052, temper: Temper::H34, grain: Grain::Along }),
        least_leg: Some(mm(5.0)),
        stock_width: Some(mm(60.0)),
        takes: vec![FoldTakes { fold: Part::EndHem, takes: mm(2.5) }],
        holes: vec![hole("far", mm(20.0)), hole("near", (at - mm(5.0)).length().unwrap()), hole("in", flat.bends()[0].line), hole("notch", mm(-1.0))],
        hole_limit: Some(HoleLimit { least: mm(4.0), source: user.clone() }),
        ..FormingCheck::new(p.clone(), middle())
    };
    let (out, worksheet) = check.explain().unwrap();
    assert_eq!(out, check.compute().unwrap());
    let told: Vec<String> = out.faults.iter().map(ToString::to_string).collect();
    assert_eq!(told.len(), 5, "{told:#?}");
    assert!(told[0].starts_with("the return of the end hem has a flat part of 4.4 mm"), "{}", told[0]);
    // Aluminum Design Manual 2005, Part VII, Table 3-1: 5052-H34 of 1/32 in, 1 t (0.6 mm falls in that column); of more than 90 degrees it says nothing.
    assert!(matches!(out.radii[0].limit, RadiusLimit::Published { radius, .. } if radius == mm(0.6)));
    assert!(matches!(out.radii[1].limit, RadiusLimit::NoPublishedLimit));
    assert_eq!(out.cautions.iter().filter(|c| c.code().name == "no-published-radius").count(), 1);
    assert!(told.iter().any(|t| t == "the fold of the end hem has a gap of 2 mm and must take 2.5 mm"), "{told:#?}");
    assert!(told.iter().any(|t| t.starts_with("the blank is") && t.ends_with("the stock 60 mm")));
    assert!(told.iter().any(|t| t.starts_with("hole near is 3 mm from bend 1, it must be 4 mm away (user: punch list)")), "{told:#?}");
    assert!(told.iter().any(|t| t == "hole in reaches into bend 1"));
    assert_eq!(out.holes[0].distance, (at - mm(22.0)).length().unwrap());
    assert_eq!(out.cautions.iter().filter(|c| c.code().name == "not-judged").map(|c| c.subject()).collect::<Vec<_>>(), ["plan"]);
    assert!(worksheet.steps().len() > 2 && out.require().unwrap_err().others().len() == 4);

    let sharp = FormingCheck {
        profile: {
            let mut q = p.clone();
            q.bends[0].inside_radius = mm(0.5);
            q
        },
        ..check.clone()
    };
    let told: Vec<String> = sharp.compute().unwrap().faults.iter().map(ToString::to_string).collect();
    assert!(told.iter().any(|t| t.starts_with("bend 1 has an inside radius of 0.5 mm, the metal needs 0.6 mm (Aluminum Design Manual")), "{told:#?}");

    // Nothing said, nothing judged, and said so.
    let bare = FormingCheck { holes: check.holes.clone(), ..FormingCheck::new(p, middle()) }.compute().unwrap();
    let lacks: Vec<&str> = bare.cautions.iter().filter(|c| c.code().name == "not-judged").map(|c| c.subject()).collect();
    assert_eq!(lacks, ["least_leg", "metal", "stock_width", "hole_limit", "plan"]);
    assert_eq!(bare.faults.len(), 1, "a hole in a bend needs no limit");
}

#[test]
fn a_plan_is_followed() {
    let brake = Brake { clamp_line: ClampLine::BendLine, up: Tooling::default(), down: None, least_clamped: Some(mm(500.0)), least_swung: None };
    let steps = (0..3).map(|i| BendStep::new(Part::Body(i), SheetEdge::Start, Face::Upper)).collect();
    let check = FormingCheck { plan: Some(FoldingPlan { brake, springback: None, steps }), ..FormingCheck::new(box_of(-5.0), middle()) };
    let out = check.compute().unwrap();
    assert_eq!(out.faults.len(), 3);
    assert_eq!(out.faults[2].subject(), "plan.steps[2]");
    assert_eq!(out.require().unwrap_err().path(), "plan.steps[0]");
    let mut short = check;
    short.plan.as_mut().unwrap().steps.pop();
    assert_eq!(short.compute().unwrap_err().path(), "plan.steps");
}

#[test]
fn bad_checks_are_refused_with_their_places() {
    let good = FormingCheck::new(box_of(-5.0), middle());
    let hole = |station: f64, size: f64| Hole { label: "h".into(), station: mm(station), size: mm(size) };
    let e = FormingCheck {
        least_leg: Some(Length::ZERO),
        stock_width: Some(mm(-1.0)),
        takes: vec![FoldTakes { fold: Part::Body(0), takes: Length::ZERO }],
        holes: vec![hole(10.0, 0.0)],
        hole_limit: Some(HoleLimit { least: mm(-1.0), source: Source::user() }),
        ..good.clone()
    }
    .compute()
    .unwrap_err();
    let mut paths = vec![e.path()];
    paths.extend(e.others().iter().map(crate::error::Error::path));
    assert_eq!(paths, ["least_leg", "stock_width", "takes[0].takes", "holes[0].size", "hole_limit.least"]);
    let e = FormingCheck { takes: vec![FoldTakes { fold: Part::Body(0), takes: mm(1.0) }], ..good.clone() }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Unknown, "takes[0].fold"));
    let e = FormingCheck { holes: vec![hole(-5.0, 4.0), hole(5000.0, 4.0)], ..good.clone() }.compute().unwrap_err();
    assert_eq!((e.path(), e.others()[0].path()), ("holes[0].station", "holes[1].station"));
    let e = FormingCheck { holes: vec![hole(1.0, 4.0); 10_001], ..good }.compute().unwrap_err();
    assert_eq!(e.kind(), ErrorKind::TooLarge);
}

/// A corrugation, and a coil that comes back into itself at its end, of ten thousand bends.
#[test]
fn ten_thousand_bends() {
    let corrugated = |last: f64| {
        let mut b = sheet(0.5, 0.5).leg("leg", mm(20.0));
        for i in 0..10_000 {
            b = if i % 4 < 2 { b.up(bent(80.0)) } else { b.down(bent(80.0)) }.leg("leg", mm(if i == 9_999 { last } else { 20.0 }));
        }
        b.build().unwrap()
    };
    assert!(report(corrugated(20.0)).forms);
    let found = report(corrugated(300_000.0));
    assert!(found.faults.iter().all(|f| matches!(f, FormingFault::Crosses { .. })), "{:?}", found.faults);
    let order = BendOrder {
        profile: corrugated(20.0),
        rule: middle(),
        plan: FoldingPlan {
            brake: Brake { clamp_line: ClampLine::BendLine, up: Tooling::default(), down: None, least_clamped: None, least_swung: None },
            springback: None,
            steps: vec![],
        },
    };
    let e = order.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::TooLarge, "profile.bends"));
}

/// Whether the contour, cut into chords, crosses itself, every side against every other.
fn crosses_by_chords(p: &Profile) -> bool {
    let points: Vec<Coord<f64>> = p
        .unfold(&middle())
        .unwrap()
        .outline()
        .unwrap()
        .points(Length::micrometres(1))
        .unwrap()
        .iter()
        .map(|p| Coord { x: p.x.get(LengthUnit::Millimetre), y: p.y.get(LengthUnit::Millimetre) })
        .collect();
    let n = points.len();
    let side = |i: usize| (points[i], points[(i + 1) % n]);
    (0..n).any(|i| {
        (i + 2..n).any(|j| {
            let ((a, b), (c, d)) = (side(i), side(j));
            !(i == 0 && j + 1 == n) && orient2d(a, b, c) * orient2d(a, b, d) < 0.0 && orient2d(c, d, a) * orient2d(c, d, b) < 0.0
        })
    })
}

/// With an open hem in place of every edge whose metal touches itself.
fn without_touching_edges(mut p: Profile) -> Profile {
    let open = |width: Length, direction: Direction| Edge::open_hem(width, Length::micrometres(500), direction);
    for edge in [&mut p.start_edge, &mut p.end_edge] {
        match edge {
            Edge::ClosedHem { width, direction, .. } | Edge::DoubleHem { width, direction, .. } => *edge = open(*width, *direction),
            Edge::TeardropHem { direction, .. } | Edge::WiredEdge { direction, .. } => *edge = open(Length::micrometres(12_000), *direction),
            Edge::Raw | Edge::OpenHem { .. } => {}
        }
    }
    p
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Two ways to find a crossing agree: lines and arcs by boxes, and chords all against all. (A crossing within the micrometre of a touch does not come up.)
    #[test]
    fn crossings_agree_with_chords(p in any_profile()) {
        let p = without_touching_edges(p);
        prop_assume!(p.validate_with(&middle()).is_ok());
        let flat = p.unfold(&middle()).unwrap();
        let found = Strip::fold(&flat, &finished(&flat), SKIN).unwrap().contour().crossing();
        prop_assert_eq!(found.is_some(), crosses_by_chords(&p), "{:?}", found);
        // The other way round it crosses too.
        let turned = p.reversed().unfold(&middle()).unwrap();
        prop_assert_eq!(Strip::fold(&turned, &finished(&turned), SKIN).unwrap().contour().crossing().is_some(), found.is_some());
    }

    /// Every bend made, the strip is the folded outline; none made, it is the blank; and the middle line keeps its length all the way.
    #[test]
    fn the_strip_goes_from_the_blank_to_the_outline(p in any_profile(), share in 0.01_f64..1.0) {
        let flat = p.unfold(&middle()).unwrap();
        let outline = flat.outline().unwrap();
        let strip = Strip::fold(&flat, &finished(&flat), 0.0).unwrap();
        let near = |q: crate::trim::Point, at: (f64, f64)| {
            let d = (q.x.get(LengthUnit::Millimetre) - at.0, q.y.get(LengthUnit::Millimetre) - at.1);
            crate::num::hypot(d.0, d.1) < 1e-6
        };
        // The outline has its first leg of the body on the axis, the strip its first leg of all.
        let placed = flat.outline_at(&crate::trim::Placement { leg: flat.legs()[0].part, ..crate::trim::Placement::default() }).unwrap();
        for (face, of) in [(Face::Lower, strip.stretches.iter().map(|s| s.lower).collect::<Vec<_>>()), (Face::Upper, strip.stretches.iter().map(|s| s.upper).collect())] {
            for (piece, curve) in placed.face(face).iter().zip(of) {
                prop_assert!(near(piece.from, curve.from) && near(piece.to, curve.to));
            }
        }
        prop_assert_eq!(outline.face(Face::Upper).len(), strip.stretches.len());
        let blank = Strip::fold(&flat, &vec![0.0; flat.bends().len()], 0.0).unwrap();
        let girth = flat.girth().get(LengthUnit::Millimetre);
        prop_assert!((blank.legs.last().unwrap().1.0 - girth).abs() < 1e-6 && blank.stretches.len() == flat.legs().len());
        // Half way, the allowance of each bend is shared between what is bent and what is still flat.
        let part: Vec<f64> = finished(&flat).iter().map(|d| d * share).collect();
        let half = Strip::fold(&flat, &part, 0.0).unwrap();
        let run: f64 = half.legs.iter().map(|l| crate::trim::curves::length(crate::trim::curves::minus(l.1, l.0))).sum();
        let bent: f64 = flat.bends().iter().map(|b| b.allowance().get(LengthUnit::Millimetre) * share).sum();
        prop_assert!((run + bent - girth).abs() < 1e-6, "{run} {bent} {girth}");
    }

    /// Chains far from the origin, with sharp and wide turns.
    #[test]
    fn chains_agree_with_chords(c in any_chain()) {
        let p = without_touching_edges(c.profile().unwrap());
        prop_assume!(p.validate_with(&middle()).is_ok());
        prop_assert_eq!(!report(p.clone()).forms, crosses_by_chords(&p));
    }
}
