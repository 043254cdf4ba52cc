use super::test_lines::{Laid, engineer, ft, gable, hip, inch, plane, shed_with_curb, tee, usual_end};
use super::{
    ClipPlan, ClipRule, ClipSchedule, CornerAllowances, Corners, FixedZone, Fixing, KindAllowance, LineEnd, MovementChoice, MovementPlan, PairRule, PanelEdge,
    PinPlan, RoofCorners, TrimEnd, cautions, laps_over,
};
use crate::error::ErrorKind;
use crate::layout::{EdgeUse, Start};
use crate::movement::{EndCheck, EndMovement, MovingEnd};
use crate::panel::{Hold, PanelEnd};
use crate::practice;
use crate::record::{Calculation, Source};
use crate::roof::{LineKind, Roof};
use crate::spacing::{Spacing, SpacingRule, SupportUse};
use crate::units::{Angle, Expansion, Length, LengthUnit, Temperature};
use proptest::prelude::*;

fn corners(roof: &Roof) -> RoofCorners {
    let allowances = CornerAllowances::usual();
    let calculation = Corners { lines: roof.lines(), tolerance: roof.tolerance(), allowances: &allowances, joints: &[], stands: &[] };
    let out = calculation.compute().unwrap();
    assert_eq!(out, calculation.explain().unwrap().0);
    out
}

fn named<'a>(c: impl IntoIterator<Item = &'a crate::record::Caution>) -> Vec<&'static str> {
    c.into_iter().map(|c| c.code().name).collect()
}

#[test]
fn a_hip_roof_has_six_corners() {
    let laid = Laid::new(hip(40.0, 10.0), Start::Left);
    let out = corners(&laid.roof);
    assert_eq!(out.corners.len(), 6);
    for corner in &out.corners {
        // At the ground a hip over two eaves, which are mitred; above a ridge over two hips.
        let upper = corner.lines.iter().find(|l| l.kind == LineKind::Ridge).or(corner.lines.iter().find(|l| l.kind == LineKind::Hip)).unwrap();
        assert_eq!((corner.lines.len(), corner.pairs.len()), (3, 3));
        let laps = corner.pairs.iter().filter(|p| matches!(&p.rule, PairRule::Laps { over, .. } if *over == upper.name)).count();
        let mitred = corner.pairs.iter().filter(|p| p.rule == PairRule::Mitred).count();
        assert_eq!((laps, mitred), (2, 1));
        assert!(corner.pairs.iter().all(|p| p.source == Source::CommonPractice));
    }
    assert!(out.cautions.is_empty());
    // Every line end takes its allowance once, though it meets two others.
    assert!(out.ends.iter().all(|e| e.at_start == Length::inches(4) && e.at_end == Length::inches(4)));
}

#[test]
fn a_valley_takes_its_own_allowance_and_a_split_ridge_runs_on() {
    let laid = Laid::new(tee(), Start::Left);
    let out = corners(&laid.roof);
    let end = |name: &str, kind: LineKind| {
        let lines = out.corners.iter().flat_map(|c| &c.lines);
        lines.filter(|l| l.name == name && l.kind == kind).map(|l| l.allowance).collect::<Vec<_>>()
    };
    // Over the eaves at its foot; under the ridges at its head, where the two valleys are mitred to each other.
    assert_eq!(end("valley 1", LineKind::Valley), [Length::inches(8), Length::inches(8)]);
    let meet = out.corners.iter().find(|c| c.lines.iter().filter(|l| l.kind == LineKind::Ridge).count() == 3).unwrap();
    let on = meet.pairs.iter().filter(|p| p.rule == PairRule::RunsOn).count();
    let mitred = meet.pairs.iter().filter(|p| p.rule == PairRule::Mitred).count();
    assert_eq!((on, mitred, meet.pairs.len()), (1, 3, 10));
    assert!(meet.pairs.iter().all(|p| !matches!(p.rule, PairRule::NoRule)));
}

#[test]
fn a_valley_without_an_eave_dies_into_the_roof_below() {
    // The same roof, its eaves at the valleys' feet taken for something that no pan laps over: each valley then runs out there, once, at its lower end alone.
    let laid = Laid::new(tee(), Start::Left);
    let mut lines = laid.roof.lines().to_vec();
    lines.iter_mut().filter(|l| l.kind == LineKind::Eave).for_each(|l| l.kind = LineKind::CurbFront);
    let allowances = CornerAllowances::usual();
    let out = Corners { lines: &lines, tolerance: laid.roof.tolerance(), allowances: &allowances, joints: &[], stands: &[] }.compute().unwrap();
    for valley in laid.roof.lines_of(LineKind::Valley) {
        let number = lines.iter().position(|l| l.name == valley.name).unwrap();
        assert_eq!((out.ends[number].at_start, out.ends[number].at_end), (Length::inches(8), Length::inches(8)));
    }
}

/// A steeper plane above a shallower one: rakes meet the transition on both sides.
fn two_pitches() -> Roof {
    let planes = vec![
        plane("lower", &[(0.0, 0.0), (30.0, 0.0), (30.0, 10.0), (0.0, 10.0)], &[], "3:12", 270.0, (0.0, 0.0, 9.0)),
        plane("upper", &[(0.0, 10.0), (30.0, 10.0), (30.0, 18.0), (0.0, 18.0)], &[], "8:12", 270.0, (0.0, 10.0, 11.5)),
    ];
    Laid::new(planes, Start::Left).roof
}

#[test]
fn a_transition_laps_under_the_rake_above_it_and_over_the_one_below() {
    let roof = two_pitches();
    let out = corners(&roof);
    assert!(out.cautions.is_empty());
    let plane_of = |name: &str| roof.lines().iter().find(|l| l.name == name && l.kind == LineKind::Rake).map(|l| roof.planes()[l.side.plane].name());
    let laps: Vec<_> = out
        .corners
        .iter()
        .flat_map(|c| &c.pairs)
        .filter_map(|p| match &p.rule {
            PairRule::Laps { over, under } if over.contains("transition") || under.contains("transition") => Some((plane_of(over), plane_of(under))),
            _ => None,
        })
        .collect();
    assert_eq!(laps.len(), 4);
    assert_eq!(laps.iter().filter(|l| **l == (Some("upper"), None)).count(), 2);
    assert_eq!(laps.iter().filter(|l| **l == (None, Some("lower"))).count(), 2);
}

#[test]
fn lines_without_a_rule_are_named_once_a_kind() {
    let mut lines = two_pitches().lines().to_vec();
    lines.iter_mut().filter(|l| l.kind == LineKind::Rake).for_each(|l| l.kind = LineKind::Unknown);
    let allowances = CornerAllowances::usual();
    let out = Corners { lines: &lines, tolerance: Length::mils(50), allowances: &allowances, joints: &[], stands: &[] }.compute().unwrap();
    // At the eave and the top, at the transition, and where two of them meet there.
    assert_eq!(named(&out.cautions), ["no-corner-rule"; 4]);
    assert!(out.cautions.iter().any(|c| c.message().starts_with("steep-to-shallow transition and unknown meet at 4 corner")), "{}", out.cautions[1].message());
}

#[test]
fn upper_laps_over_lower_and_never_both_ways() {
    for a in LineKind::ALL {
        for b in LineKind::ALL {
            assert!(!(laps_over(*a, *b) && laps_over(*b, *a)), "{a} and {b}");
        }
    }
    let over = |a, b| assert!(laps_over(a, b));
    over(LineKind::Ridge, LineKind::Hip);
    over(LineKind::Hip, LineKind::Eave);
    over(LineKind::Hip, LineKind::Valley);
    over(LineKind::Valley, LineKind::Eave);
    over(LineKind::Sidewall, LineKind::Eave);
    over(LineKind::Rake, LineKind::Eave);
    over(LineKind::Ridge, LineKind::Rake);
    over(LineKind::CurbSide, LineKind::Ridge);
    over(LineKind::CurbSide, LineKind::Valley);
}

#[test]
fn bad_corners_are_refused() {
    let laid = Laid::new(gable(), Start::Left);
    let kind = KindAllowance { kind: LineKind::Rake, length: Length::inches(-1) };
    let allowances = CornerAllowances { usual: Length::inches(-2), by_kind: vec![kind], source: Source::user() };
    let e = Corners { lines: laid.roof.lines(), tolerance: Length::ZERO, allowances: &allowances, joints: &[], stands: &[] }.compute().unwrap_err();
    let paths: Vec<_> = core::iter::once(&e).chain(e.others()).map(crate::error::Error::path).collect();
    assert_eq!(paths, ["tolerance", "allowances.usual", "allowances.by_kind[0].length"]);
    // Ends nearer than the tolerance are one corner, ends farther apart are each their own: nothing is lost, and what ends alone is capped.
    let mut lines = laid.roof.lines().to_vec();
    let ridge = lines.iter().position(|l| l.kind == LineKind::Ridge).unwrap();
    lines[ridge].start.z = (lines[ridge].start.z + Length::mils(40)).length().unwrap();
    let usual = CornerAllowances::usual();
    let count = |tolerance| {
        let found = Corners { lines: &lines, tolerance, allowances: &usual, joints: &[], stands: &[] }.compute().unwrap().corners;
        let alone: Vec<_> = found.iter().filter(|c| c.lines.len() == 1).map(|c| c.lines[0].closed).collect();
        (found.iter().map(|c| c.lines.len()).sum::<usize>(), found.len(), alone)
    };
    assert_eq!((count(Length::mils(50)), count(Length::mils(30))), ((14, 6, vec![]), (14, 7, vec![TrimEnd::Capped])));
    let at_start = |c: &RoofCorners| c.corners.iter().flat_map(|c| &c.lines).filter(|l| l.end == LineEnd::Start).count();
    assert_eq!(at_start(&corners(&laid.roof)), laid.roof.lines().len());
}

fn spaced() -> ClipRule {
    ClipRule::Spaced { spacing: Length::inches(24), end_distance: Length::inches(6), source: engineer() }
}

fn clips(laid: &Laid, plane: usize, rule: &ClipRule, along_edges: bool, fixed: Option<FixedZone>) -> ClipSchedule {
    let panels = laid.panels();
    let plan = ClipPlan { panels: &panels[plane], rule, along_edges, fixed, screws_each: 2 };
    let (out, sheet) = plan.explain().unwrap();
    assert_eq!(out, plan.compute().unwrap());
    assert!(!sheet.steps().is_empty());
    out
}

#[test]
fn equal_seams_share_a_schedule() {
    let laid = Laid::new(gable(), Start::Left);
    let out = clips(&laid, 0, &spaced(), true, None);
    // 10 ft at 6:12 is 134.164 in of slope, 2 in held back at the ridge: 132.164 in, 120.164 between the end clips, 6 spaces.
    let (inner, edges) = (&out.groups[0], &out.groups[1]);
    let seams = if inner.on_edge { edges } else { inner };
    let rakes = if inner.on_edge { inner } else { edges };
    assert_eq!((seams.seams(), rakes.seams(), seams.positions.len()), (29, 2, 7));
    assert!((seams.run.get(LengthUnit::Inch) - (60.0 * 5.0_f64.sqrt() - 2.0)).abs() < 1e-9);
    assert_eq!((seams.positions[0], out.clips, out.screws, out.fixed, out.sliding), (Length::inches(6), 31 * 7, 62 * 7, 0, 31 * 7));
    assert!(out.engineered && out.cautions.is_empty());
    let own = ClipRule::Spaced { spacing: Length::inches(24), end_distance: Length::inches(6), source: Source::CommonPractice };
    assert_eq!(named(&clips(&laid, 0, &own, false, None).cautions), ["clips-not-engineered"]);
}

#[test]
fn jack_seams_of_a_hip_are_shorter_by_the_drop() {
    let laid = Laid::new(hip(40.0, 10.0), Start::CentreSeam);
    let out = clips(&laid, 1, &spaced(), false, None);
    // The triangle: a seam in the middle and pairs beside it, each shorter by 16 in * sqrt(5)/2.
    assert_eq!(out.groups[0].seams(), 1);
    assert!(out.groups.iter().skip(1).all(|g| g.seams() == 2));
    for (a, b) in out.groups.iter().skip(1).zip(out.groups.iter().skip(2)) {
        assert!(((a.run - b.run).length().unwrap().get(LengthUnit::Inch) - 8.0 * 5.0_f64.sqrt()).abs() < 1e-9);
    }
    // The middle ends at the apex: 2 in held back square to the hips are 2 / sin(phi), sin = 2/3.
    assert!((out.groups[0].run.get(LengthUnit::Inch) - (60.0 * 5.0_f64.sqrt() - 3.0)).abs() < 1e-6);
    for g in &out.groups {
        let own = Spacing { run: g.run, end_distance: Length::inches(6), rule: SpacingRule::Equal { maximum: Length::inches(24) } };
        if g.run > Length::inches(12) {
            assert_eq!(g.positions, own.compute().unwrap().positions);
        }
    }
}

#[test]
fn an_opening_breaks_the_seams_that_meet_it() {
    let laid = Laid::new(shed_with_curb(), Start::Left);
    let out = clips(&laid, 0, &spaced(), false, None);
    // 128, 144, 160 and 176 in are cut in two; 29 seams in all.
    let count = out.groups.iter().map(super::ClipGroup::seams).sum::<usize>();
    assert_eq!(count, 25 + 8);
    let broken = out.groups.iter().filter(|g| g.at.contains(&Length::inches(128))).count();
    assert_eq!(broken, 2);
    let slope = 17.0_f64.sqrt() / 4.0;
    // Below: from the eave to 5 ft in plan less the 3 in of the curb's front; above: from 9 ft and 3 in to 16 ft less 2 in at the top.
    let runs: Vec<f64> = out.groups.iter().filter(|g| g.seams() == 4).map(|g| g.run.get(LengthUnit::Inch)).collect();
    assert!((runs[0] - (84.0 * slope - 5.0)).abs() < 1e-9 && (runs[1] - (60.0 * slope - 3.0)).abs() < 1e-9, "{runs:?}");
    // The curb's sides take clips where edges do: each as long as the opening, beside the rakes.
    let edges = clips(&laid, 0, &spaced(), true, None);
    let on_edge: Vec<_> = edges.groups.iter().filter(|g| g.on_edge).map(|g| (g.seams(), g.run.get(LengthUnit::Inch))).collect();
    assert!(on_edge.iter().any(|(n, run)| *n == 2 && (run - 48.0 * slope).abs() < 1e-9), "{on_edge:?}");
}

#[test]
fn clips_sit_on_supports_or_say_which_to_add() {
    let laid = Laid::new(gable(), Start::Left);
    let purlins = |spacing: i16| ClipRule::OnSupports {
        supports: [0, 3, 6, 9, 11].map(Length::feet).to_vec(),
        spacing: Length::feet(spacing),
        end_distance: Length::feet(1),
        support_use: SupportUse::Every,
        source: engineer(),
    };
    let out = clips(&laid, 0, &purlins(3), false, None);
    assert_eq!(out.groups[0].positions, [0, 3, 6, 9, 11].map(Length::feet));
    let panels = laid.panels();
    let rule = purlins(2);
    let plan = ClipPlan { panels: &panels[0], rule: &rule, along_edges: false, fixed: None, screws_each: 1 };
    let e = plan.compute().unwrap_err();
    assert_eq!(e.kind(), ErrorKind::Impossible);
    assert!(e.path().starts_with("rule, seam at 406.4 mm across") && e.cure().unwrap().contains("457.2 mm"), "{e}");
}

#[test]
fn the_fixed_zone_divides_the_clips() {
    let laid = Laid::new(gable(), Start::Left);
    let zone = FixedZone { from: Length::inches(50), to: Length::inches(80) };
    let out = clips(&laid, 0, &spaced(), false, Some(zone));
    let g = &out.groups[0];
    assert!(!g.fixed.is_empty());
    for (k, p) in g.positions.iter().enumerate() {
        assert_eq!(g.fixed.contains(&k), *p >= Length::inches(50) && *p <= Length::inches(80));
    }
    assert_eq!((out.fixed, out.sliding), (29 * g.fixed.len(), 29 * (g.positions.len() - g.fixed.len())));
    let off = FixedZone { from: Length::feet(100), to: Length::feet(101) };
    assert_eq!(named(&clips(&laid, 0, &spaced(), false, Some(off)).cautions), ["no-fixed-clip"]);
}

#[test]
fn bad_clip_rules_are_refused() {
    let laid = Laid::new(gable(), Start::Left);
    let panels = laid.panels();
    let rule = ClipRule::Spaced { spacing: Length::ZERO, end_distance: Length::inches(-1), source: engineer() };
    let zone = FixedZone { from: Length::inches(2), to: Length::inches(1) };
    let e = ClipPlan { panels: &panels[0], rule: &rule, along_edges: false, fixed: Some(zone), screws_each: 0 }.compute().unwrap_err();
    let paths: Vec<_> = core::iter::once(&e).chain(e.others()).map(crate::error::Error::path).collect();
    assert_eq!(paths, ["rule.spacing", "rule.end_distance", "screws_each", "fixed"]);
    let long = ClipRule::Spaced { spacing: Length::inches(24), end_distance: Length::feet(10), source: engineer() };
    let out = clips(&laid, 0, &long, false, None);
    assert_eq!((out.clips, named(&out.cautions)), (29, vec!["short-seam"]));
}

fn pins(laid: &Laid, plane: usize, fixed: Option<FixedZone>, tolerance: Option<Length>) -> super::PlanePins {
    let panels = laid.panels();
    let plan = PinPlan { panels: &panels[plane], pinned_along: &[], fixed, tolerance };
    let out = plan.compute().unwrap();
    assert_eq!(out, plan.explain().unwrap().0);
    out
}

#[test]
fn pins_are_found_and_their_faults_named() {
    let laid = Laid::new(gable(), Start::Left);
    let out = pins(&laid, 0, None, None);
    assert_eq!((out.count(Fixing::Upper), out.cautions.len()), (30, 0));
    // Fixed clips half way down as well: two levels.
    let zone = FixedZone { from: Length::inches(60), to: Length::inches(72) };
    let twice = pins(&laid, 0, Some(zone), None);
    assert_eq!((twice.count(Fixing::Twice), named(&twice.cautions)), (30, vec!["two-pins"]));
    let apart = twice.panels[0].apart.unwrap().get(LengthUnit::Inch);
    assert!((apart - (60.0 * 5.0_f64.sqrt() - 72.0)).abs() < 1e-9);
    assert!(twice.cautions[0].message().contains("strip 1 run 1 (A)"), "{}", twice.cautions[0].message());
    // A tolerance over that makes one of them.
    assert_eq!(pins(&laid, 0, Some(zone), Some(Length::inches(63))).count(Fixing::Upper), 30);
    // Nothing pins, then a zone does.
    let loose = Laid::with_ends(gable(), Start::Left, |kind| match usual_end(kind) {
        EdgeUse::End(end) => EdgeUse::End(end.holding(Hold::Slides)),
        side => side,
    });
    let none = pins(&loose, 0, None, None);
    assert_eq!((none.count(Fixing::Nowhere), named(&none.cautions)), (30, vec!["no-pin"]));
    assert_eq!(pins(&loose, 0, Some(zone), None).count(Fixing::Zone), 30);
}

#[test]
fn a_z_screwed_through_the_pan_pins_the_end_panel_along() {
    let laid = Laid::with_ends(gable(), Start::Left, |kind| match kind {
        LineKind::Rake => EdgeUse::End(PanelEnd::hold_back(Length::inches(1)).holding(Hold::Pins)),
        _ => usual_end(kind),
    });
    let out = pins(&laid, 0, None, None);
    assert_eq!((out.count(Fixing::Along), out.count(Fixing::Upper), named(&out.cautions)), (2, 28, vec!["pinned-along"]));
    assert!(out.panels[0].fixing == Fixing::Along && out.panels[29].fixing == Fixing::Along);
    // The same said by the number of the edge.
    let plain = Laid::new(gable(), Start::Left);
    let panels = plain.panels();
    let rake = plain.roof.lines_round(0).find(|l| l.kind == LineKind::Rake).unwrap();
    let edge = panels[0].edge_of(&rake.side).unwrap();
    let one = PinPlan { panels: &panels[0], pinned_along: &[edge], fixed: None, tolerance: None }.compute().unwrap();
    assert_eq!(one.count(Fixing::Along), 1);
    let e = PinPlan { panels: &panels[0], pinned_along: &[99], fixed: None, tolerance: Some(Length::ZERO) }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "pinned_along"));
    let e = PinPlan { panels: &panels[0], pinned_along: &[], fixed: None, tolerance: Some(Length::inches(-1)) }.compute().unwrap_err();
    assert_eq!(e.path(), "tolerance");
}

#[test]
fn a_curb_screwed_down_pins_the_panels_that_pass_it() {
    // The curb's front pins; so does the top: the panels beside the opening are pinned at two levels, those under it by the curb alone.
    let with = |front: Hold| {
        let laid = Laid::with_ends(shed_with_curb(), Start::Left, |kind| match kind {
            LineKind::CurbFront => EdgeUse::End(PanelEnd::hold_back(Length::inches(2)).holding(front)),
            _ => usual_end(kind),
        });
        let out = pins(&laid, 0, None, None);
        assert_eq!(laid.planes[0].panels.len(), 30 + 3);
        out
    };
    let (fast, loose) = (with(Hold::Pins), with(Hold::Slides));
    assert_eq!((fast.count(Fixing::Twice), fast.count(Fixing::Upper), fast.count(Fixing::Nowhere)), (2, 31, 0));
    let apart = fast.panels.iter().find_map(|p| p.apart).unwrap();
    assert!((apart.get(LengthUnit::Inch) - 11.0 * 3.0 * 17.0_f64.sqrt()).abs() < 1e-9);
    // With a loose curb the pieces below it hang on nothing.
    assert_eq!((loose.count(Fixing::Twice), loose.count(Fixing::Upper), loose.count(Fixing::Nowhere)), (0, 30, 3));
}

#[test]
fn a_short_panel_pinned_at_both_ends_counts_as_pinned_once_within_the_drop() {
    // Eave and hip both pin: only the triangle at the hip's foot is as short as the drop over one panel.
    let laid = Laid::with_ends(hip(40.0, 10.0), Start::Left, |kind| match kind {
        LineKind::Rake => EdgeUse::Side,
        _ => EdgeUse::End(PanelEnd::hold_back(Length::ZERO).holding(Hold::Pins)),
    });
    let out = pins(&laid, 0, None, None);
    assert_eq!((out.count(Fixing::Upper), out.count(Fixing::Twice)), (2, 28));
}

fn steel() -> MovementChoice {
    MovementChoice {
        expansion: Expansion::parse("6.7e-6 /degF").unwrap(),
        coldest: Temperature::parse("-20 degF").unwrap(),
        laid: Temperature::parse("70 degF").unwrap(),
        hottest: Temperature::parse("160 degF").unwrap(),
        clearance: practice::movement::CLEARANCE,
        engagement: practice::movement::ENGAGEMENT,
    }
}

#[test]
fn the_worst_panel_of_each_edge_is_checked() {
    // Ridge fixed, eave hooked: 134 in of steel moves 0.16 in; a fold of 1 in with a gap of 1/4 in does.
    let laid = Laid::new(hip(40.0, 10.0), Start::Left);
    let panels = laid.panels();
    let pins = pins(&laid, 0, None, None);
    let choice = steel();
    let plan = MovementPlan { panels: &panels[0], pins: &pins, fixed: None, choice: &choice };
    let out = plan.compute().unwrap();
    assert_eq!(out, plan.explain().unwrap().0);
    assert_eq!(out.ends.len(), 1);
    let eave = &out.ends[0];
    assert_eq!((eave.end, eave.failing, eave.meeting, eave.panels), (PanelEdge::Lower, 0, Angle::SQUARE, pins.count(Fixing::Upper)));
    let longest = laid.planes[0].panels.iter().map(|p| p.finished).max().unwrap();
    assert_eq!((eave.to_fixed, laid.planes[0].panels[eave.worst].finished), (longest, longest));
    let by_hand = EndCheck {
        movement: EndMovement {
            end: MovingEnd::LowerHooked,
            expansion: choice.expansion,
            to_fixed: longest,
            coldest: choice.coldest,
            laid: choice.laid,
            hottest: choice.hottest,
            clearance: choice.clearance,
            engagement: choice.engagement,
            meeting: Angle::SQUARE,
        },
        fold: Length::inches(1),
        gap: inch(0.25),
    };
    assert_eq!(eave.verdict.as_ref().unwrap(), &by_hand.compute().unwrap());
    assert!((eave.travel.mm() - longest.mm() * 6.7e-6 * 180.0).abs() < 1e-6);
    assert!(out.cautions.is_empty());
}

#[test]
fn failing_panels_are_counted_one_by_one() {
    // A long plane, one side of it longer than the fold allows.
    let planes = vec![plane("p", &[(0.0, 0.0), (40.0, 0.0), (40.0, 60.0), (0.0, 20.0)], &[], "2:12", 270.0, (0.0, 0.0, 0.0))];
    let laid = Laid::with_ends(planes, Start::Left, |kind| match kind {
        LineKind::Rake => EdgeUse::Side,
        LineKind::Eave => EdgeUse::End(PanelEnd::overhang(Length::inches(1)).with_gap(inch(0.5)).with_fold(inch(1.25))),
        _ => EdgeUse::End(PanelEnd::hold_back(Length::ZERO).holding(Hold::Pins)),
    });
    let panels = laid.panels();
    let pins = pins(&laid, 0, None, None);
    let choice = steel();
    let out = MovementPlan { panels: &panels[0], pins: &pins, fixed: None, choice: &choice }.compute().unwrap();
    let eave = out.ends.iter().find(|e| e.end == PanelEdge::Lower).unwrap();
    let verdict = |to_fixed| {
        let movement = EndMovement {
            end: MovingEnd::LowerHooked,
            expansion: choice.expansion,
            to_fixed,
            coldest: choice.coldest,
            laid: choice.laid,
            hottest: choice.hottest,
            clearance: choice.clearance,
            engagement: choice.engagement,
            meeting: Angle::SQUARE,
        };
        EndCheck { movement, fold: inch(1.25), gap: inch(0.5) }.compute().unwrap().holds
    };
    let fail = laid.planes[0].panels.iter().filter(|p| !verdict(p.finished)).count();
    assert!(fail > 0 && fail < laid.planes[0].panels.len(), "{fail}");
    assert_eq!(eave.failing, fail);
    let said = out.cautions.iter().find(|c| c.code() == cautions::END_FAILS).unwrap();
    assert!(said.message().contains("would do") && said.message().contains(&eave.worst_name), "{}", said.message());
}

#[test]
fn fixed_clips_halve_the_way_and_both_ends_move() {
    let laid = Laid::with_ends(gable(), Start::Left, |kind| match usual_end(kind) {
        EdgeUse::End(end) => EdgeUse::End(end.holding(Hold::Slides)),
        side => side,
    });
    let panels = laid.panels();
    let zone = FixedZone { from: Length::inches(60), to: Length::inches(72) };
    let pins = pins(&laid, 0, Some(zone), None);
    let choice = steel();
    let out = MovementPlan { panels: &panels[0], pins: &pins, fixed: Some(zone), choice: &choice }.compute().unwrap();
    assert_eq!(out.ends.len(), 2);
    let of = |end| out.ends.iter().find(|e| e.end == end).unwrap();
    // 60 in and the 2 1/4 in past the eave; above, 134.164 - 72 in less the 1 in that hold-back and turn-up leave short.
    assert_eq!(of(PanelEdge::Lower).to_fixed, inch(62.25));
    assert!((of(PanelEdge::Upper).to_fixed.get(LengthUnit::Inch) - (60.0 * 5.0_f64.sqrt() - 73.0)).abs() < 1e-9);
    assert!(of(PanelEdge::Upper).verdict.is_none());
    assert_eq!(named(&out.cautions), ["end-not-checked"]);
    let short = super::PlanePins { panels: pins.panels[1..].to_vec(), cautions: vec![] };
    let e = MovementPlan { panels: &panels[0], pins: &short, fixed: None, choice: &choice }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "pins"));
    let hot = MovementChoice { laid: Temperature::parse("200 degF").unwrap(), ..choice };
    let e = MovementPlan { panels: &panels[0], pins: &pins, fixed: Some(zone), choice: &hot }.compute().unwrap_err();
    assert!(e.path().starts_with("choice."), "{}", e.path());
}

#[test]
fn caution_numbers_are_this_rooms_and_differ() {
    for (i, c) in cautions::ALL.iter().enumerate() {
        assert_eq!(usize::from(c.number), 7000 + i);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    /// The seams of any hip plane, measured in the plane: y of the hip lines less the hold-back along the seam.
    #[test]
    fn clip_runs_follow_the_outline(half in 3.0_f64..12.0, datum in -10.0_f64..10.0) {
        let laid = Laid::new(hip(3.0 * half, half), Start::Datum(inch(datum)));
        let out = clips(&laid, 0, &spaced(), false, None);
        let (long, rise) = (ft(3.0 * half).mm(), 5.0_f64.sqrt() / 2.0);
        for g in &out.groups {
            for x in &g.at {
                let x = x.mm();
                let edge = x.min(long - x);
                let hip = edge * rise - 50.8 * 1.5;
                let ridge = ft(half).mm() * rise - 50.8;
                prop_assert!((g.run.mm() - hip.min(ridge)).abs() < 2e-3, "{x}: {} {}", g.run, hip.min(ridge));
            }
            let clips = g.positions.len();
            prop_assert!(clips >= 1 && g.positions.iter().all(|p| p.is_positive() && *p < g.run));
        }
        prop_assert_eq!(out.clips, out.groups.iter().map(|g| g.seams() * g.positions.len()).sum::<usize>());
    }
}
