//! Corners of whole roofs: every end of a line is set in order or closed, and of nothing is there too much.
#![cfg(feature = "serde")]

use super::{Corner, CornerAllowances, Corners, LineEnd, PairRule, RoofCorners, TrimEnd};
use crate::record::Calculation;
use crate::roof::sample_roofs::SAMPLES;
use crate::roof::{LineKind, PlaneInput, Point, Roof, RoofInput, Shape, StepInput, Vertex, Wall};
use crate::units::{Angle, Length};
use std::collections::BTreeSet;

fn corners(roof: &Roof) -> RoofCorners {
    Corners { lines: roof.lines(), tolerance: roof.tolerance(), allowances: &CornerAllowances::usual(), joints: &[], stands: &[] }.compute().unwrap()
}

/// Whether no trim of a corner lies, by way of others, over itself: such trims could not be set one after the other.
fn can_be_set(corner: &Corner) -> bool {
    let laps: Vec<(&str, &str)> = corner
        .pairs
        .iter()
        .filter_map(|p| match &p.rule {
            PairRule::Laps { over, under } => Some((over.as_str(), under.as_str())),
            _ => None,
        })
        .collect();
    let mut left: BTreeSet<&str> = corner.lines.iter().map(|l| l.name.as_str()).collect();
    // What lies over nothing that is left is set next.
    while let Some(next) = left.iter().copied().find(|l| !laps.iter().any(|(over, under)| over == l && left.contains(under))) {
        left.remove(next);
    }
    left.is_empty()
}

/// What holds at the corners of any roof.
fn check(name: &str, roof: &Roof) -> RoofCorners {
    let out = corners(roof);
    assert!(out.cautions.is_empty(), "{name}: {:?}", out.cautions.iter().map(crate::record::Caution::message).collect::<Vec<_>>());
    // Both ends of every line once, and once more over a riser.
    let mut ends = BTreeSet::new();
    for l in out.corners.iter().flat_map(|c| &c.lines) {
        assert!(ends.insert((l.line, l.end, l.above.is_some())), "{name}: {} twice", l.name);
        let of = if l.above.is_some() { &out.upper_ends } else { &out.ends }[l.line];
        assert_eq!(if l.end == LineEnd::Start { of.at_start } else { of.at_end }, l.allowance);
    }
    let steps = roof.lines().iter().filter(|l| l.riser.is_some()).count();
    assert_eq!(ends.len(), 2 * (roof.lines().len() + steps), "{name}");
    for corner in &out.corners {
        let n = corner.lines.len();
        assert_eq!(corner.pairs.len(), n * (n - 1) / 2);
        assert!(can_be_set(corner), "{name}: {corner:?}");
        for l in &corner.lines {
            let of = |p: &&super::CornerPair| p.first == l.name || p.second == l.name;
            let takes = corner.pairs.iter().filter(of).any(|p| match &p.rule {
                PairRule::Laps { over, .. } | PairRule::Slides { over, .. } => *over == l.name,
                PairRule::Mitred => true,
                PairRule::RunsOn => p.first == l.name,
                PairRule::Covered { .. } | PairRule::NoRule => false,
            });
            let outlet = l.closed == TrimEnd::Outlet;
            assert!(takes == l.allowance.is_positive() || outlet, "{name}: {l:?}");
            let under = corner.pairs.iter().filter(of).any(|p| match &p.rule {
                PairRule::Laps { under, .. } => *under == l.name,
                PairRule::Covered { .. } => true,
                _ => false,
            });
            assert_eq!(under, l.closed == TrimEnd::Covered || outlet && under, "{name}: {l:?}");
            assert!(l.closed != TrimEnd::Undecided);
        }
        for p in &corner.pairs {
            let cut = p.cut.map(Angle::degrees);
            assert!(cut.is_none_or(|c| c > 0.0 && c <= 90.0) && p.between.degrees() > 0.0 && p.between.degrees() <= 180.0, "{name}: {p:?}");
            assert_eq!(cut.is_none(), matches!(p.rule, PairRule::Covered { .. }), "{name}: {p:?}");
        }
    }
    out
}

#[test]
fn every_corner_of_every_roof_has_an_order_in_which_its_trims_are_set() {
    for sample in SAMPLES {
        check(sample.name, &sample.roof());
    }
}

/// Which lies over the other where a roof has these two, by the first corner that has both.
fn over(roof: &str, one: &str, other: &str) -> String {
    let roof = SAMPLES.iter().find(|s| s.name == roof).unwrap().roof();
    let pairs = corners(&roof).corners.into_iter().flat_map(|c| c.pairs);
    let found = pairs.into_iter().find(|p| p.first.starts_with(one) && p.second.starts_with(other) || p.first.starts_with(other) && p.second.starts_with(one));
    match found.unwrap().rule {
        PairRule::Laps { over, .. } | PairRule::Slides { over, .. } => over.trim_end_matches(|c: char| c.is_ascii_digit() || c == ' ').to_owned(),
        rule => format!("{rule:?}"),
    }
}

/// Common practice, no published source: what is above lies over what is below.
#[test]
fn the_upper_lies_over_the_lower() {
    // A hip over a half gable comes down on the gable's rake; a rake over a hipped foot comes down on the hip.
    assert_eq!(over("half-hip", "hip", "rake"), "hip");
    assert_eq!(over("dutch-gable", "hip", "rake"), "rake");
    // At the break of a mansard the upper hip lies over the break's trim, and that over the lower hip, which the upper one laps too.
    assert_eq!(over("mansard", "hip 5", "shallow-to-steep"), "hip");
    assert_eq!(over("mansard", "hip 1", "shallow-to-steep"), "shallow-to-steep transition");
    assert_eq!(over("mansard", "hip 1", "hip 5"), "hip");
    assert_eq!(over("butterfly", "rake", "valley"), "rake");
    assert_eq!(over("gable-dormers", "curb side", "valley"), "valley");
    assert_eq!(over("gable-dormers", "curb side", "eave"), "eave");
    assert_eq!(over("shed-dormer", "curb side", "steep-to-shallow"), "steep-to-shallow transition");
    assert_eq!(over("chimney-cricket", "curb side", "sidewall"), "sidewall");
    assert_eq!(over("chimney-cricket", "curb side", "valley"), "valley");
    assert_eq!(over("skewed-end", "ridge", "high edge"), "ridge");
    assert_eq!(over("skewed-end", "high edge", "eave"), "high edge");
    assert_eq!(over("gable", "ridge", "rake"), "ridge");
    // A gablet's rake comes down to where the flashing of the gablet's wall ends.
    assert_eq!(over("dutch-gable", "rake", "headwall"), "rake");
}

/// Common practice, no published source: a rake that goes down from the end of an upper plane's eave has its head under what covers both, and does not run on up the roof.
#[test]
fn a_rake_that_hangs_from_an_eave_does_not_run_on_over_it() {
    for (roof, by) in [("half-hip", "hip"), ("lean-tos", "steep-to-shallow")] {
        let out = corners(&SAMPLES.iter().find(|s| s.name == roof).unwrap().roof());
        let mut seen = 0;
        for corner in out.corners.iter().filter(|c| c.lines.iter().any(|l| l.name.starts_with(by)) && c.lines.iter().any(|l| l.kind == LineKind::Eave)) {
            for (rake, pair) in corner.lines.iter().flat_map(|l| corner.pairs.iter().map(move |p| (l, p))) {
                if rake.kind == LineKind::Rake
                    && (pair.first == rake.name && pair.second.starts_with("eave") || pair.second == rake.name && pair.first.starts_with("eave"))
                {
                    let PairRule::Covered { by: third } = &pair.rule else { panic!("{pair:?}") };
                    assert!(third.starts_with(by) && rake.closed == TrimEnd::Covered && rake.allowance == Length::ZERO, "{rake:?} {pair:?}");
                    seen += 1;
                }
            }
        }
        assert_eq!(seen, if roof == "half-hip" { 4 } else { 2 }, "{roof}");
    }
    // In the notch of a plane nothing covers both: the eave lies over the rake that goes down from it.
    let outer = space(&[(0, 0, 0), (20, 0, 0), (20, 20, 10), (0, 20, 10), (-10, 20, 10), (-10, 8, 4), (0, 8, 4)]);
    let roof = RoofInput::new(vec![outer]).compute().unwrap();
    let out = check("notch", &roof);
    let corner = out.corners.iter().find(|c| (c.at.x, c.at.y) == (Length::ZERO, Length::feet(8))).unwrap();
    let PairRule::Laps { over, under } = &corner.pairs[0].rule else { panic!("{corner:?}") };
    assert!(over.starts_with("eave") && under.starts_with("rake"), "{corner:?}");
}

/// A plane by its vertices in feet.
fn space(at: &[(i16, i16, i16)]) -> PlaneInput {
    let outer = at.iter().map(|&(x, y, z)| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z))).collect();
    PlaneInput { name: format!("plane at {:?}", at.first()), shape: Shape::Space { outer, holes: vec![], flatness: None } }
}

/// Common practice, no published source.
#[test]
fn what_comes_down_lies_over_what_runs_level_from_there() {
    // A wing lower than the house, their south slope one: the house's hip comes down to where the wing's ridge and the valley start.
    let planes = [
        space(&[(0, 0, 0), (60, 0, 0), (60, 8, 8), (16, 8, 8), (12, 12, 12)]),
        space(&[(0, 60, 0), (0, 0, 0), (12, 12, 12), (12, 60, 12)]),
        space(&[(24, 16, 0), (24, 60, 0), (12, 60, 12), (12, 12, 12), (16, 8, 8)]),
        space(&[(60, 16, 0), (24, 16, 0), (16, 8, 8), (60, 8, 8)]),
    ];
    let roof = RoofInput::new(planes.into()).compute().unwrap();
    let out = check("broken hip", &roof);
    let corner = out.corners.iter().find(|c| (c.at.x, c.at.y) == (Length::feet(16), Length::feet(8))).unwrap();
    let of = |kind| corner.lines.iter().find(|l| l.kind == kind).unwrap();
    let (hip, ridge, valley) = (of(LineKind::Hip), of(LineKind::Ridge), of(LineKind::Valley));
    let closed = [hip, ridge, valley].map(|l| (l.closed, l.allowance));
    let lap = Length::inches(4);
    assert_eq!(closed, [(TrimEnd::Capped, lap), (TrimEnd::Covered, lap), (TrimEnd::Covered, Length::ZERO)]);
    let over_ridge = corner.pairs.iter().any(|p| p.rule == PairRule::Laps { over: hip.name.clone(), under: ridge.name.clone() });
    assert!(over_ridge, "{corner:?}");

    // A tower in a slope: its front's flashing is set first, those of its sides over the ends of it.
    let slope = space(&[(0, 0, 0), (40, 0, 0), (40, 20, 10), (24, 20, 10), (24, 10, 5), (16, 10, 5), (16, 20, 10), (0, 20, 10)]);
    let mut roof = RoofInput::new(vec![slope]);
    let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
    for (name, from, to) in [("front", p(16, 10), p(24, 10)), ("west", p(16, 10), p(16, 20)), ("east", p(24, 10), p(24, 20))] {
        roof.walls.push(Wall::new(name, from, to));
    }
    let out = check("tower", &roof.compute().unwrap());
    let front: Vec<_> = out.corners.iter().filter(|c| c.lines.iter().any(|l| l.kind == LineKind::Headwall)).collect();
    assert_eq!(front.len(), 2);
    for corner in front {
        let PairRule::Laps { over, under } = &corner.pairs[0].rule else { panic!("{corner:?}") };
        assert!(over.starts_with("sidewall") && under.starts_with("headwall"), "{corner:?}");
    }
}

/// At a hip end the hip leaves the ridge at more than a right angle: within its lap a ridge cut along it would end short of the corner in its middle, and the hip's own leg lies under it where it is
/// cut square. A hip is cut along the eave at its foot; a pan along its eaves, though they leave it at more than a right angle: the panels end there.
#[test]
fn a_trim_is_not_cut_along_a_line_that_leaves_it() {
    let roof = |name: &str| SAMPLES.iter().find(|s| s.name == name).unwrap().roof();
    let of = |roof: &Roof, over: &str, under: &str| {
        let pairs = corners(roof).corners.into_iter().flat_map(|c| c.pairs);
        pairs.filter(|p| matches!(&p.rule, PairRule::Laps { over: o, under: u } if o.starts_with(over) && u.starts_with(under))).collect::<Vec<_>>()
    };
    let hip = roof("hip");
    let ridge = of(&hip, "ridge", "hip");
    assert_eq!(ridge.len(), 4);
    for p in ridge {
        assert!(p.between.degrees() > 90.0 && p.cut == Some(Angle::SQUARE) && p.cut_plan == Some(Angle::SQUARE), "{p:?}");
    }
    assert!(of(&hip, "hip", "eave").iter().all(|p| p.between.degrees() < 90.0 && p.cut == Some(p.between)));
    let pans = of(&roof("l-plan"), "valley", "eave");
    assert_eq!(pans.len(), 2);
    for p in pans {
        assert!((p.between.degrees() + p.cut.unwrap().degrees() - 180.0).abs() < 1e-9 && p.between.degrees() > 90.0, "{p:?}");
    }
    // Square to a line that slopes, a cut is not square as seen from above.
    for p in of(&roof("dutch-gable"), "rake", "hip") {
        assert_eq!((p.cut, p.cut_plan), (Some(Angle::SQUARE), None), "{p:?}");
    }
}

/// Where a slope bends, the rake above it laps over the one below, and both are cut half way between them; not along the other, which would be nearly along themselves.
#[test]
fn lines_that_go_on_over_a_bend_of_the_slope_are_cut_half_way() {
    for (sample, kind) in [("gambrel", LineKind::Rake), ("mansard", LineKind::Hip), ("saltbox", LineKind::Rake)] {
        let roof = SAMPLES.iter().find(|s| s.name == sample).unwrap().roof();
        let mut seen = 0;
        for corner in corners(&roof)
            .corners
            .iter()
            .filter(|c| c.lines.iter().filter(|l| l.kind == kind).count() == 2 && c.lines.iter().any(|l| roof.lines()[l.line].crossing().is_some()))
        {
            let slopes: Vec<f64> = corner.lines.iter().filter(|l| l.kind == kind).map(|l| roof.lines()[l.line].slope.degrees()).collect();
            let pair =
                corner.pairs.iter().find(|p| corner.lines.iter().filter(|l| l.kind == kind && (l.name == p.first || l.name == p.second)).count() == 2).unwrap();
            assert!(matches!(pair.rule, PairRule::Laps { .. }));
            // In one line as seen from above: the bend is the difference of their own slopes.
            let bend = (slopes[0] - slopes[1]).abs();
            assert!((pair.plan.degrees() - 180.0).abs() < 1e-6 && (pair.cut.unwrap().degrees() - (90.0 - bend / 2.0)).abs() < 1e-6, "{pair:?} {bend}");
            assert_eq!(pair.cut_plan, None, "the cut is not plumb");
            seen += 1;
        }
        assert_eq!(seen, if sample == "saltbox" { 2 } else { 4 }, "{sample}");
    }
}

#[test]
fn cuts_are_those_between_the_lines() {
    let roof = SAMPLES.iter().find(|s| s.name == "pyramid").unwrap().roof();
    let out = corners(&roof);
    let hip = roof.lines().iter().find(|l| l.kind == LineKind::Hip).unwrap();
    // Between a hip of equal pitches and its eave: cos is the plan's 45 degrees times the cosine of the hip's slope.
    let by_hand = crate::num::acos_deg(hip.slope.cos() * 0.5_f64.sqrt());
    for p in out.corners.iter().flat_map(|c| &c.pairs).filter(|p| matches!(p.rule, PairRule::Laps { .. })) {
        assert!((p.between.degrees() - by_hand).abs() < 1e-6 && p.cut == Some(p.between), "{p:?} {by_hand}");
        assert!((p.plan.degrees() - 45.0).abs() < 1e-6 && p.cut_plan == Some(p.plan), "{p:?}");
    }
    // At the top each two hips are mitred half way between them: 45 degrees from above where they stand square to each other, in one line where opposite.
    for p in out.corners.iter().flat_map(|c| &c.pairs).filter(|p| p.first.starts_with("hip") && p.second.starts_with("hip")) {
        assert_eq!((&p.rule, p.cut.map(|c| c.degrees() * 2.0)), (&PairRule::Mitred, Some(p.between.degrees())));
        assert!((p.cut_plan.unwrap().degrees() * 2.0 - p.plan.degrees()).abs() < 1e-6, "{p:?}");
    }
    // Eaves at their corner are mitred at half of a right angle.
    let eaves = out.corners.iter().flat_map(|c| &c.pairs).find(|p| p.first.starts_with("eave") && p.second.starts_with("eave")).unwrap();
    assert_eq!((&eaves.rule, eaves.cut.map(|c| (c.degrees() * 1e6).round())), (&PairRule::Mitred, Some(45e6)));
}

/// A plane over a rectangle in plan whose foot and top lie at these heights; all in millimetres.
fn plane(name: &str, x: (i32, i32), foot: (i32, i32), top: (i32, i32)) -> PlaneInput {
    let at = |x: i32, (y, z): (i32, i32)| {
        let [x, y, z] = [x, y, z].map(|v| Length::micrometres(v * 1000));
        Vertex { x, y, z }
    };
    let outer = vec![at(x.0, foot), at(x.1, foot), at(x.1, top), at(x.0, top)];
    PlaneInput { name: name.into(), shape: Shape::Space { outer, holes: vec![], flatness: None } }
}

/// A hall whose foot lies 500 mm over the top of a porch, as wide as the hall or narrower.
fn hall_and_porch(from: i32, to: i32) -> Roof {
    let hall = plane("hall", (0, 10_000), (0, 4500), (6000, 6500));
    let porch = plane("porch", (from, to), (-3000, 3250), (0, 4000));
    let mut roof = RoofInput::new(vec![hall, porch]);
    roof.steps = vec![StepInput { lower: "porch".into(), upper: "hall".into() }];
    roof.compute().unwrap()
}

#[test]
fn a_step_meets_its_lower_plane_at_the_foot_and_its_upper_plane_over_the_riser() {
    // As wide as the hall: over the riser the hall's rakes lap over the upper trim, at its foot the flashing over the porch's rakes.
    let roof = hall_and_porch(0, 10_000);
    let out = check("wide", &roof);
    let step = roof.lines().iter().position(|l| l.kind == LineKind::Step).unwrap();
    let (lap, none) = (Length::inches(4), Length::ZERO);
    let (at_foot, over_riser) = (out.ends[step], out.upper_ends[step]);
    assert_eq!((at_foot.at_start, at_foot.at_end, over_riser.at_start, over_riser.at_end), (lap, lap, none, none));
    let here: Vec<_> = out.corners.iter().filter(|c| c.lines.iter().any(|l| l.line == step)).collect();
    assert_eq!(here.len(), 4);
    for corner in here {
        let upper = corner.lines.iter().any(|l| l.above.is_some());
        let PairRule::Laps { over, under } = &corner.pairs[0].rule else { panic!("{corner:?}") };
        assert_eq!((over.starts_with("rake"), under.starts_with("rake"), corner.pairs.len()), (upper, !upper, 1), "{corner:?}");
        assert!((corner.at.z.mm() - if upper { 4500.0 } else { 4000.0 }).abs() < 1e-6);
        assert_eq!(corner.lines.iter().find_map(|l| l.above), upper.then(|| Length::micrometres(500_000)));
        // Square to the line: each end is cut square.
        assert!((corner.pairs[0].cut.unwrap().degrees() - 90.0).abs() < 1e-6);
    }
    // Narrower: over the riser the trim goes on into the eaves on both sides, and each joint is lapped once.
    let roof = hall_and_porch(3000, 7000);
    let out = check("narrow", &roof);
    let joints: Vec<_> = out.corners.iter().filter(|c| c.pairs.iter().any(|p| p.rule == PairRule::RunsOn)).collect();
    assert_eq!(joints.len(), 2);
    for corner in joints {
        let taken: Vec<Length> = corner.lines.iter().map(|l| l.allowance).collect();
        assert_eq!((taken, corner.lines.len()), (vec![lap, none], 2));
        assert!(corner.lines.iter().all(|l| l.closed == TrimEnd::Joined));
    }
}
