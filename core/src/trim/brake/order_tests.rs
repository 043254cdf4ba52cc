//! Orders of bends: gauges and swings in closed form, laws, and bad input.

use super::*;
use crate::error::ErrorKind;
use crate::num;
use crate::record::Calculation;
use crate::trim::flat_tests::any_profile;
use crate::trim::{
    BendRule, Direction, Edge, Face, NeutralFactor, OverBend, Part, Point, Profile, ProfileBuilder, SpringbackBy, SpringbackFactor, SpringbackMetal,
};
use crate::units::{Angle, BendAngle, Length, LengthUnit};
use proptest::prelude::*;

fn mm(v: f64) -> Length {
    Length::from_f64(v, LengthUnit::Millimetre).unwrap()
}

fn in_mm(l: Length) -> f64 {
    l.get(LengthUnit::Millimetre)
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

fn bare(clamp_line: ClampLine) -> Brake {
    Brake { clamp_line, up: Tooling::default(), down: None, least_clamped: None, least_swung: None }
}

fn order(profile: Profile, brake: Brake, steps: Vec<BendStep>) -> BendOrder {
    BendOrder { profile, rule: middle(), plan: FoldingPlan { brake, springback: None, steps } }
}

fn up(bend: usize, gauged: SheetEdge) -> BendStep {
    BendStep::new(Part::Body(bend), gauged, Face::Upper)
}

fn polygon(name: &str, points: &[(f64, f64)]) -> ToolOutline {
    ToolOutline { name: name.into(), points: points.iter().map(|p| Point { x: mm(p.0), y: mm(p.1) }).collect() }
}

fn still(tool: ToolOutline) -> Brake {
    Brake { up: Tooling { still: vec![tool], swinging: vec![] }, ..bare(ClampLine::BendLine) }
}

fn hit_at(verdict: &OrderVerdict) -> (f64, String, String) {
    match &verdict.faults[0] {
        StepFault::Hits { at, moving, still, .. } => (at.degrees(), moving.to_string(), still.to_string()),
        other => panic!("{other}"),
    }
}

fn channel(flange: f64, web: f64) -> Profile {
    sheet(1.0, 1.0).leg("a", mm(flange)).up(BendAngle::SQUARE).leg("b", mm(web)).up(BendAngle::SQUARE).leg("c", mm(flange)).build().unwrap()
}

#[test]
fn gauges_of_a_channel() {
    let p = channel(50.0, 80.0);
    let flat = p.unfold(&middle()).unwrap();
    let (one, two) = (&flat.bends()[0], &flat.bends()[1]);
    let out = order(p.clone(), bare(ClampLine::BendLine), vec![up(0, SheetEdge::Start), up(1, SheetEdge::Start)]).compute().unwrap();
    assert_eq!((out.steps[0].gauge, out.steps[0].from_edge, out.steps[0].clamp_line), (one.line, one.line, one.line));
    assert_eq!(out.steps[0].stop, SheetPart::Leg(Part::Body(0)));
    assert_eq!((out.steps[0].clamped, out.steps[0].swung), (one.line, flat.from_end(one.line).unwrap()));
    // The first flange stands up at the gauge: from its outer face, R + T beyond the tangent line, to the second bend line.
    assert_eq!(out.steps[1].gauge, (two.line - one.to + mm(2.0)).length().unwrap());
    assert_eq!((out.steps[1].from_edge, out.steps[1].clamped), (two.line, (two.line - one.to).length().unwrap()));
    assert_eq!((out.turns, out.flips, out.steps[1].handling), (0, 0, Handling::default()));
    // From the other edge it is free again.
    let out = order(p.clone(), bare(ClampLine::BendLine), vec![up(0, SheetEdge::Start), up(1, SheetEdge::End)]).compute().unwrap();
    assert_eq!((out.steps[1].gauge, out.turns, out.flips), (flat.from_end(two.line).unwrap(), 1, 0));
    assert!(out.steps[1].handling.turned && !out.steps[1].handling.flipped);
    // To the sight line: one radius from the tangent line, on the clamped side of the bend line or beyond.
    let (out, worksheet) = order(p, bare(ClampLine::SightLine), vec![up(0, SheetEdge::Start), up(1, SheetEdge::End)]).explain().unwrap();
    assert_eq!(out.steps[0].gauge, (one.from + one.inside_radius).length().unwrap());
    assert_eq!((out.steps[0].clamp_line, out.steps[0].from_edge), (out.steps[0].gauge, one.line));
    assert_eq!(worksheet.steps().len(), 2);
}

#[test]
fn a_z_is_turned_over_or_folded_both_ways() {
    let z = sheet(1.0, 1.0).leg("a", mm(50.0)).up(BendAngle::SQUARE).leg("b", mm(80.0)).down(BendAngle::SQUARE).leg("c", mm(30.0)).build().unwrap();
    let first = up(0, SheetEdge::Start);
    let lower = |gauged| BendStep::new(Part::Body(1), gauged, Face::Lower);
    let rolled = order(z.clone(), bare(ClampLine::BendLine), vec![first, lower(SheetEdge::End)]).compute().unwrap();
    assert_eq!((rolled.turns, rolled.flips), (0, 1));
    let tumbled = order(z.clone(), bare(ClampLine::BendLine), vec![first, lower(SheetEdge::Start)]).compute().unwrap();
    assert_eq!((tumbled.turns, tumbled.flips), (1, 1));
    // The flange made first hangs down from the table: its outer face is at the gauge all the same.
    let flat = z.unfold(&middle()).unwrap();
    assert_eq!(tumbled.steps[1].gauge, (flat.bends()[1].line - flat.bends()[0].to + mm(2.0)).length().unwrap());
    let e = order(z.clone(), bare(ClampLine::BendLine), vec![first, up(1, SheetEdge::Start)]).compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value(), e.allowed()), (ErrorKind::Conflict, "plan.steps[1].face_up", Some("upper"), Some("lower")));
    let both = Brake { down: Some(Tooling::default()), ..bare(ClampLine::BendLine) };
    let out = order(z, both, vec![first, up(1, SheetEdge::Start)]).compute().unwrap();
    assert_eq!((out.turns, out.flips, out.steps[1].folds), (0, 0, Direction::Down));
    assert_eq!(out.steps[1].gauge, tumbled.steps[1].gauge);
}

/// The inside face, T - h above the axis, passes a corner of the beam at the corner's direction less asin((T - h)/distance).
#[test]
fn the_angle_at_which_a_corner_is_hit() {
    let (t, r) = (1.0, 1.5);
    let angle = 135.0;
    let p = sheet(t, r).leg("a", mm(50.0)).up(bent(angle)).leg("b", mm(60.0)).build().unwrap();
    let allowance = in_mm(p.unfold(&middle()).unwrap().bends()[0].allowance());
    let h = r + t - allowance / 2.0 / num::tan_deg(angle / 2.0);
    let corner = (-10.0, 25.0);
    let beam = polygon("beam", &[corner, (-40.0, 30.0), (-40.0, 5.0), (-20.0, 5.0)]);
    let trial = OrderTrial(order(p.clone(), still(beam.clone()), vec![up(0, SheetEdge::Start)]));
    let verdict = trial.compute().unwrap();
    let (dx, dy) = (corner.0, corner.1 - h);
    let far = num::hypot(dx, dy);
    // The face is drawn in by half a micrometre.
    let expected = num::atan2_deg(dy, dx) - num::asin_deg((t - 0.0005 - h) / far);
    let (at, moving, by) = hit_at(&verdict);
    assert!((at - expected).abs() < 1e-7, "{at} {expected}");
    assert_eq!((verdict.works, moving.as_str(), by.as_str()), (false, "leg 2", "beam"));
    let e = trial.0.compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.message()), (ErrorKind::Impossible, "plan.steps[0]", "bend 1: leg 2 hits beam"));
    assert!(e.value().unwrap().starts_with("at 11"));
    // From the other edge the same beam is hit by the shorter leg.
    let verdict = OrderTrial(order(p, still(beam), vec![up(0, SheetEdge::End)])).compute().unwrap();
    assert_eq!(hit_at(&verdict).1, "leg 1");
    assert!((hit_at(&verdict).0 - expected).abs() < 1e-7);
}

#[test]
fn a_nose_in_its_place_is_not_hit() {
    // A beam with its face at the clamp line: a square bend of a sharp sheet set to its sight line comes to lie against it.
    for (r, angle, line) in
        [(0.0, 90.0, ClampLine::SightLine), (1.0, 90.0, ClampLine::SightLine), (1.0, 45.0, ClampLine::SightLine), (1.0, 30.0, ClampLine::BendLine)]
    {
        let p = sheet(1.0, r).leg("a", mm(50.0)).up(bent(angle)).leg("b", mm(60.0)).build().unwrap();
        let beam = polygon("beam", &[(0.0, 1.0), (0.0, 100.0), (-30.0, 100.0), (-30.0, 1.0)]);
        let table = polygon("table", &[(0.0, 0.0), (0.0, -50.0), (-90.0, -50.0), (-90.0, 0.0)]);
        let apron = polygon("apron", &[(0.0, 0.0), (80.0, 0.0), (80.0, -20.0), (0.0, -20.0)]);
        let brake = Brake { up: Tooling { still: vec![beam, table], swinging: vec![apron] }, ..bare(line) };
        for gauged in [SheetEdge::Start, SheetEdge::End] {
            let verdict = OrderTrial(order(p.clone(), brake.clone(), vec![up(0, gauged)])).compute().unwrap();
            assert!(verdict.works, "{r} {angle} {line:?}: {}", verdict.faults[0]);
        }
    }
    // Set to its bend line, half the allowance less the radius is pushed into the beam.
    let p = sheet(1.0, 0.0).leg("a", mm(50.0)).up(BendAngle::SQUARE).leg("b", mm(60.0)).build().unwrap();
    let beam = polygon("beam", &[(0.0, 1.0), (0.0, 100.0), (-30.0, 100.0), (-30.0, 1.0)]);
    let verdict = OrderTrial(order(p, still(beam), vec![up(0, SheetEdge::Start)])).compute().unwrap();
    let (at, moving, _) = hit_at(&verdict);
    // First where the sheet is held against tools at all, one thickness beyond the tangent line.
    assert!((at - num::atan2_deg(std::f64::consts::FRAC_PI_8 + 1.0, std::f64::consts::FRAC_PI_8)).abs() < 0.1, "{at} {moving}");
}

#[test]
fn tools_are_hit_by_what_was_bent_before() {
    let p = channel(50.0, 80.0);
    // The first flange stands 78 mm behind the second bend line, where the beam is.
    let beam = polygon("clamping beam", &[(0.0, 1.0), (-30.0, 60.0), (-100.0, 60.0), (-100.0, 20.0)]);
    let verdict = OrderTrial(order(p.clone(), still(beam), vec![up(0, SheetEdge::Start), up(1, SheetEdge::Start)])).compute().unwrap();
    assert_eq!(verdict.faults.len(), 1);
    assert_eq!(hit_at(&verdict), (0.0, "leg 1".into(), "clamping beam".into()));
    assert_eq!(verdict.faults[0].bend(), Part::Body(1));
    // A folding beam meets a flange that hangs from the clamped side.
    let z = sheet(1.0, 1.0).leg("a", mm(50.0)).down(BendAngle::SQUARE).leg("b", mm(30.0)).up(BendAngle::SQUARE).leg("c", mm(60.0)).build().unwrap();
    let apron = polygon("folding beam", &[(0.0, 0.0), (90.0, 0.0), (90.0, -15.0), (0.0, -45.0)]);
    let brake = Brake { up: Tooling { still: vec![], swinging: vec![apron] }, ..bare(ClampLine::BendLine) };
    let steps = vec![BendStep::new(Part::Body(0), SheetEdge::Start, Face::Lower), up(1, SheetEdge::Start)];
    let verdict = OrderTrial(order(z.clone(), brake.clone(), steps)).compute().unwrap();
    assert!(verdict.works, "{:?}", verdict.faults);
    // A beam that reaches under the clamped side dips by its corner's swing, onto a return that lies 45 mm below the sheet.
    let u = sheet(1.0, 1.0).leg("return", mm(60.0)).down(BendAngle::SQUARE).leg("a", mm(47.0)).down(BendAngle::SQUARE).leg("b", mm(30.0));
    let u = u.up(BendAngle::SQUARE).leg("c", mm(60.0)).build().unwrap();
    let wide = polygon("folding beam", &[(0.0, 0.0), (90.0, 0.0), (90.0, -15.0), (-20.0, -44.0)]);
    let brake = Brake { up: Tooling { still: vec![], swinging: vec![wide] }, ..bare(ClampLine::BendLine) };
    let allowance = in_mm(u.unfold(&middle()).unwrap().bends()[2].allowance());
    let h = 2.0 - allowance / 2.0;
    let over = |bend: usize| BendStep::new(Part::Body(bend), SheetEdge::Start, Face::Lower);
    let verdict = OrderTrial(order(u, brake, vec![over(0), over(1), up(2, SheetEdge::Start)])).compute().unwrap();
    let (at, moving, by) = hit_at(&verdict);
    assert_eq!((verdict.faults.len(), moving.as_str(), by.as_str()), (1, "folding beam", "leg 1"));
    let lowest = num::asin_deg((45.0005 + h) / num::hypot(20.0, 44.0 + h));
    let expected = num::atan2_deg(-44.0 - h, 20.0) + lowest;
    assert!((at - expected).abs() < 1e-7, "{at} {expected}");
}

/// A hem is folded over, then pressed shut; a drip behind it goes on.
#[test]
fn a_hem_is_begun_and_pressed() {
    let p = sheet(0.6, 0.8)
        .leg("deck", mm(100.0))
        .down(BendAngle::SQUARE)
        .leg("face", mm(80.0))
        .up(bent(30.0))
        .leg("kick", mm(20.0))
        .end(Edge::closed_hem(mm(12.0), Direction::Up))
        .build()
        .unwrap();
    let beam = polygon("beam", &[(0.0, 0.6), (0.0, 10.0), (-30.0, 100.0), (-60.0, 100.0), (-60.0, 0.6)]);
    let brake = Brake { up: Tooling { still: vec![beam], swinging: vec![] }, ..bare(ClampLine::SightLine) };
    let hem = BendStep::new(Part::EndHem, SheetEdge::Start, Face::Upper);
    let rest = [BendStep::new(Part::Body(1), SheetEdge::Start, Face::Upper), BendStep::new(Part::Body(0), SheetEdge::Start, Face::Lower)];
    let mut plan = order(p, brake, vec![hem.until(bent(60.0)), hem.pressed()]);
    plan.plan.steps.extend(rest);
    let out = plan.compute().unwrap();
    assert_eq!((out.steps[0].to.degrees(), out.steps[1].from.degrees(), out.steps[1].to.degrees()), (60.0, 60.0, 180.0));
    assert_eq!((out.turns, out.flips), (1, 1));
    // Swung to 180 in one go, the hem meets the beam it is clamped by.
    plan.plan.steps = vec![hem];
    plan.plan.steps.extend(rest);
    let verdict = OrderTrial(plan.clone()).compute().unwrap();
    assert_eq!((verdict.faults.len(), hit_at(&verdict).2.as_str()), (1, "beam"));
    // An edge under its hem no longer lies at the gauge.
    plan.plan.brake = bare(ClampLine::BendLine);
    plan.plan.steps = vec![hem, BendStep::new(Part::Body(1), SheetEdge::End, Face::Upper), rest[1]];
    let out = plan.compute().unwrap();
    let flat = plan.profile.unfold(&middle()).unwrap();
    let fold = flat.bends().iter().find(|b| b.part == Part::EndHem).unwrap();
    assert!((in_mm(out.steps[1].gauge) - in_mm((fold.from - flat.bends()[1].line).length().unwrap()) - 0.6).abs() < 1e-8);
    assert_eq!(out.steps[1].stop, SheetPart::Bend(Part::EndHem));
}

#[test]
fn springback_is_folded_over() {
    let p =
        sheet(0.6, 0.6).leg("a", mm(50.0)).up(BendAngle::SQUARE).leg("b", mm(60.0)).end(Edge::open_hem(mm(12.0), mm(4.0), Direction::Down)).build().unwrap();
    let hem = BendStep::new(Part::EndHem, SheetEdge::Start, Face::Lower);
    let mut plan = order(p, bare(ClampLine::BendLine), vec![hem.until(bent(90.0)), hem.pressed(), up(0, SheetEdge::Start)]);
    plan.plan.springback = Some(SpringbackBy::Factor(SpringbackFactor::new(0.9).unwrap()));
    let out = plan.compute().unwrap();
    let folded: Vec<f64> = out.steps.iter().map(|s| s.folded_to.degrees()).collect();
    assert_eq!(folded, [100.0, 180.0, 100.0]);
    plan.plan.springback = Some(SpringbackBy::Angle(Angle::degrees_from(3.0).unwrap()));
    let folded: Vec<f64> = plan.compute().unwrap().steps.iter().map(|s| s.folded_to.degrees()).collect();
    assert_eq!(folded, [93.0, 180.0, 93.0]);
    plan.plan.springback = Some(SpringbackBy::Angle(Angle::degrees_from(-3.0).unwrap()));
    assert_eq!(plan.compute().unwrap_err().path(), "plan.springback.angle");
    plan.plan.springback = Some(SpringbackBy::Factor(SpringbackFactor::new(0.2).unwrap()));
    assert_eq!(plan.compute().unwrap_err().path(), "plan.steps[0].to");
    // By the table and by the formula each bend has its own: the tooling of the same bend says the same.
    let strength = |text: &str| crate::units::Pressure::parse(text).unwrap();
    let elastic = SpringbackBy::Elastic { yield_strength: strength("40 ksi"), modulus: strength("29000 ksi") };
    for by in [SpringbackBy::Table(SpringbackMetal::Dc01), elastic] {
        plan.plan.springback = Some(by);
        let tool = OverBend { thickness: mm(0.6), inside_radius: mm(0.6), angle: BendAngle::SQUARE, by }.compute().unwrap();
        assert_eq!(plan.compute().unwrap().steps[2].folded_to, tool.forming_angle.angle());
        assert!(tool.forming_angle > BendAngle::SQUARE);
    }
    // Nor is a bend folded by a table that does not have it.
    plan.plan.springback = Some(SpringbackBy::Table(SpringbackMetal::Dc01));
    plan.profile.bends[0].inside_radius = mm(0.3);
    let e = plan.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "plan.steps[2].bend"));
    assert!(SpringbackFactor::new(0.0).is_err() && SpringbackFactor::new(f64::NAN).is_err());
}

#[test]
fn limits_of_the_brake() {
    let brake = Brake { least_clamped: Some(mm(30.0)), least_swung: Some(mm(45.0)), ..bare(ClampLine::BendLine) };
    let p = channel(40.0, 80.0);
    let verdict = OrderTrial(order(p.clone(), brake.clone(), vec![up(0, SheetEdge::Start), up(1, SheetEdge::Start)])).compute().unwrap();
    assert!(matches!(verdict.faults[..], [StepFault::SwungTooShort { bend: Part::Body(1), .. }]), "{:?}", verdict.faults);
    let e = order(p, Brake { least_clamped: Some(mm(60.0)), ..brake }, vec![up(0, SheetEdge::Start), up(1, SheetEdge::Start)]).compute().unwrap_err();
    assert_eq!((e.path(), e.others().len()), ("plan.steps[0]", 1));
}

#[test]
fn bad_plans_are_refused_with_their_place() {
    let p = channel(50.0, 80.0);
    let good = vec![up(0, SheetEdge::Start), up(1, SheetEdge::End)];
    let refused = |steps: Vec<BendStep>, brake: Brake| {
        let o = order(p.clone(), brake, steps);
        let e = o.compute().unwrap_err();
        assert_eq!(OrderTrial(o).compute().unwrap_err(), e);
        (e.kind(), e.path().to_owned())
    };
    let bare = bare(ClampLine::BendLine);
    assert_eq!(refused(vec![up(2, SheetEdge::Start)], bare.clone()), (ErrorKind::Unknown, "plan.steps[0].bend".into()));
    assert_eq!(refused(vec![BendStep::new(Part::EndHem, SheetEdge::Start, Face::Upper)], bare.clone()), (ErrorKind::Unknown, "plan.steps[0].bend".into()));
    assert_eq!(refused(vec![good[0], good[0]], bare.clone()), (ErrorKind::Conflict, "plan.steps[1].bend".into()));
    assert_eq!(refused(vec![good[0]], bare.clone()), (ErrorKind::Missing, "plan.steps".into()));
    assert_eq!(refused(vec![], bare.clone()), (ErrorKind::Missing, "plan.steps".into()));
    assert_eq!(refused(vec![good[0].until(bent(30.0)), good[1]], bare.clone()), (ErrorKind::Missing, "plan.steps".into()));
    assert_eq!(refused(vec![good[0].until(bent(100.0)), good[1]], bare.clone()), (ErrorKind::OutOfRange, "plan.steps[0].to".into()));
    assert_eq!(refused(vec![good[0].until(bent(0.0)), good[1]], bare.clone()), (ErrorKind::OutOfRange, "plan.steps[0].to".into()));
    assert_eq!(refused(vec![good[0]; MAX_STEPS + 1], bare.clone()), (ErrorKind::TooLarge, "plan.steps".into()));
    for points in [
        &[(0.0, 0.0), (1.0, 1.0)][..],
        &[(0.0, 0.0), (1.0, 1.0), (2.0, 2.0)],
        &[(0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0)],
        &[(0.0, 0.0), (2.0, 0.0), (2.0, 0.0), (0.0, 2.0)],
    ] {
        assert_eq!(refused(good.clone(), still(polygon("tool", points))), (ErrorKind::Geometry, "plan.brake.up.still[0].points".into()), "{points:?}");
    }
    let e = order(p.clone(), Brake { least_swung: Some(Length::ZERO), ..bare }, good).compute().unwrap_err();
    assert_eq!(e.path(), "plan.brake.least_swung");
}

/// A random plan: each bend in a random order, with a random edge at the gauge, the right face up.
fn any_order() -> impl Strategy<Value = BendOrder> {
    (any_profile(), any::<u64>(), any::<bool>()).prop_map(|(p, mut dice, sight)| {
        let mut next = |n: usize| {
            dice = dice.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            usize::try_from(dice >> 33).unwrap() % n
        };
        let flat = p.unfold(&middle()).unwrap();
        let mut bends: Vec<_> = flat.bends().iter().collect();
        let mut steps = Vec::new();
        while !bends.is_empty() {
            let b = bends.remove(next(bends.len()));
            let gauged = if next(2) == 0 { SheetEdge::Start } else { SheetEdge::End };
            steps.push(BendStep::new(b.part, gauged, b.direction.inside()));
        }
        order(p, bare(if sight { ClampLine::SightLine } else { ClampLine::BendLine }), steps)
    })
}

/// The same plan for the same piece, seen from its other end.
fn turned(o: &BendOrder) -> BendOrder {
    let last = o.profile.bends.len();
    let part = |p: Part| match p {
        Part::StartLip => Part::EndLip,
        Part::StartHem => Part::EndHem,
        Part::EndHem => Part::StartHem,
        Part::EndLip => Part::StartLip,
        Part::Body(i) => Part::Body(last - 1 - i),
    };
    let steps = o.plan.steps.iter().map(|s| BendStep { bend: part(s.bend), gauged: s.gauged.other(), ..*s }).collect();
    BendOrder { profile: o.profile.reversed(), plan: FoldingPlan { steps, ..o.plan.clone() }, ..o.clone() }
}

/// The same plan for the same piece, its faces called the other way round.
fn renamed(o: &BendOrder) -> BendOrder {
    let mut out = o.clone();
    for b in &mut out.profile.bends {
        b.direction = b.direction.opposite();
    }
    for edge in [&mut out.profile.start_edge, &mut out.profile.end_edge] {
        match edge {
            Edge::Raw => {}
            Edge::ClosedHem { direction, .. }
            | Edge::OpenHem { direction, .. }
            | Edge::TeardropHem { direction, .. }
            | Edge::DoubleHem { direction, .. }
            | Edge::WiredEdge { direction, .. } => *direction = direction.opposite(),
        }
    }
    for s in &mut out.plan.steps {
        s.face_up = s.face_up.opposite();
    }
    out
}

fn angles(v: &OrderVerdict) -> Vec<(f64, f64)> {
    v.faults
        .iter()
        .map(|f| match f {
            StepFault::Hits { at, .. } => (at.degrees(), 0.0),
            _ => (f64::NAN, f64::NAN),
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    /// Whatever the order, the sheet ends as the section that was drawn.
    #[test]
    fn every_order_ends_in_the_same_section(o in any_order()) {
        let flat = o.profile.unfold(&o.rule).unwrap();
        let mut work = super::step::Work::new(&flat, &o.plan.brake, None);
        for step in &o.plan.steps {
            work.take(*step).unwrap();
        }
        let (made, drawn) = (super::strip::Strip::fold(&flat, &work.made, 0.0).unwrap(), flat.outline_at(&crate::trim::Placement { leg: flat.legs()[0].part, ..crate::trim::Placement::default() }).unwrap());
        for (stretch, piece) in made.stretches.iter().zip(drawn.face(Face::Lower)) {
            let far = (in_mm(piece.to.x) - stretch.lower.to.0, in_mm(piece.to.y) - stretch.lower.to.1);
            prop_assert!(num::hypot(far.0, far.1) < 1e-6);
        }
        prop_assert_eq!(made.stretches.len(), drawn.face(Face::Lower).len());
    }

    /// Which end is called the start, and which face the upper, changes nothing at the brake.
    #[test]
    fn names_of_ends_and_faces_change_nothing(o in any_order()) {
        let one = OrderTrial(o.clone()).compute().unwrap();
        for other in [turned(&o), renamed(&o)] {
            let two = OrderTrial(other).compute().unwrap();
            for (a, b) in one.steps.iter().zip(&two.steps) {
                prop_assert!((in_mm(a.gauge) - in_mm(b.gauge)).abs() < 1e-6, "{} {}", a.gauge, b.gauge);
                prop_assert!((in_mm(a.clamped) - in_mm(b.clamped)).abs() < 1e-6 && (in_mm(a.swung) - in_mm(b.swung)).abs() < 1e-6);
                prop_assert!((in_mm(a.from_edge) - in_mm(b.from_edge)).abs() < 1e-6);
                prop_assert_eq!(a.handling, b.handling);
            }
            prop_assert_eq!(angles(&one).len(), angles(&two).len());
            for (a, b) in angles(&one).iter().zip(angles(&two)) {
                prop_assert!((a.0 - b.0).abs() < 1e-6, "{} {}", a.0, b.0);
            }
        }
    }
}
