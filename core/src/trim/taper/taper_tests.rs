use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::stock::LapMode;
use crate::trim::flat_tests::any_profile;
use crate::trim::{BendRule, BlankSide, Direction, Edge, Face, LegEnd, NeutralFactor, Part, Point, Profile, cautions};
use crate::units::{Angle, AreaUnit, BendAngle, Length};
use proptest::prelude::*;

fn mm(v: f64) -> Length {
    Length::from_mm(v).unwrap()
}

fn axis(k: f64) -> BendRule {
    BendRule::neutral_axis(NeutralFactor::new(k).unwrap())
}

fn taper(near: Profile, far: Profile, length: f64) -> Taper {
    Taper { near, far, length: mm(length), rule: axis(0.5), held: HeldLine::StartEdge, offset: Point::ORIGIN, tolerance: Length::micrometres(1) }
}

/// Four sides of a square, the corners sharp or of this radius; legs to the tangent lines.
fn square(side: f64, thickness: f64, radius: f64) -> Profile {
    let mut b = Profile::builder(mm(thickness)).painted(Face::Lower).inside_radius(mm(radius)).measured_to(LegEnd::Tangent).leg("1", mm(side));
    for name in ["2", "3", "4"] {
        b = b.up(BendAngle::SQUARE).leg(name, mm(side));
    }
    b.build().unwrap()
}

fn apart(a: Point, b: Point) -> f64 {
    a.distance(b).unwrap().mm()
}

/// A right square frustum developed by hand: sides of 200 and 100 mm, 120 mm high, corners without metal. By Pythagoras each face is 130 mm high
/// and each corner sqrt(120^2 + 50^2 + 50^2) long; the faces turn from each other by acos(50^2 / 130^2).
#[test]
#[allow(clippy::disallowed_methods, reason = "an outside check uses the standard library")]
fn a_frustum_developed_by_pythagoras() {
    let mut asked = taper(square(200.0, 1.0, 0.0), square(100.0, 1.0, 0.0), 120.0);
    asked.rule = axis(0.0);
    asked.offset = Point { x: mm(50.0), y: mm(50.0) };
    let made = asked.compute().unwrap();
    let corner = 19_400.0_f64.sqrt();
    for leg in &made.legs {
        assert_eq!(leg.slant, mm(130.0));
        for side in [leg.start, leg.end] {
            assert!((side.length().unwrap().mm() - corner).abs() < 1e-8);
        }
        // The diagonal of the trapezium: half of both sides along, 130 up.
        assert!((apart(leg.start.from, leg.end.to) - (150.0_f64.powi(2) + 130.0_f64.powi(2)).sqrt()).abs() < 1e-8);
    }
    for bend in &made.bends {
        assert!((bend.turn.degrees() - (2500.0_f64 / 16_900.0).acos().to_degrees()).abs() < 1e-9, "{}", bend.turn);
        assert_eq!(bend.across, Length::ZERO);
    }
    let area = made.blank.area().unwrap().get(AreaUnit::SquareMillimetre);
    assert!((area - 4.0 * 150.0 * 130.0).abs() < 1e-5, "{area}");
    // Near end, one edge, far end, other edge: each leg gives one stretch at each end.
    let count = |side: BlankSide| made.blank.outline.iter().filter(|e| e.side == side).count();
    assert_eq!([BlankSide::NearEnd, BlankSide::EndEdge, BlankSide::FarEnd, BlankSide::StartEdge].map(count), [4, 1, 4, 1]);
}

/// The same frustum in thick sheet: what a bend that is round across its corner would change, by a numerical integral of its own.
#[test]
#[allow(clippy::disallowed_methods, reason = "an outside check uses the standard library")]
fn a_bend_in_a_leaning_corner_says_what_a_round_one_would_change() {
    let mut asked = taper(square(200.0, 1.0, 2.0), square(100.0, 1.0, 2.0), 120.0);
    asked.offset = Point { x: mm(50.0), y: mm(50.0) };
    let made = asked.compute().unwrap();
    let (rho, length) = (2.5, 19_400.0_f64.sqrt());
    // The first bend's rulings go by (-50, 50) in the section; its arc turns from +x to +y.
    let steps = 100_000;
    let across: f64 = (0..steps)
        .map(|i| {
            let a = (f64::from(i) + 0.5) / f64::from(steps) * std::f64::consts::FRAC_PI_2;
            let lean = (-50.0 * a.cos() + 50.0 * a.sin()) / length;
            (1.0 - lean * lean).sqrt() * rho * std::f64::consts::FRAC_PI_2 / f64::from(steps)
        })
        .sum();
    let bend = &made.bends[0];
    assert!((bend.across.mm() - across).abs() < 1e-8, "{} {across}", bend.across);
    let turn = (2500.0_f64 / 16_900.0).acos();
    let laid = 2.0 * 3.0 * (1.0 - 2500.0 / 19_400.0_f64).sqrt() - across;
    let round = 2.0 * 3.0 * (turn / 2.0).tan() - turn * rho;
    assert!((bend.round_bend.unwrap().mm() - (laid - round)).abs() < 1e-8, "{:?} {}", bend.round_bend, laid - round);
    let oblique = made.blank.cautions.iter().filter(|c| c.code() == cautions::TAPER_BEND_OBLIQUE).count();
    assert_eq!(oblique, 3);
}

/// A tapered eave trim, its face from 80 to 105 mm over 3 m, the upper edge straight: along both ends the blank is as wide as the girth there.
#[test]
fn the_ends_keep_the_girths_of_their_profiles() {
    let drip = |face: f64| {
        Profile::builder(mm(0.6))
            .painted(Face::Upper)
            .inside_radius(mm(0.8))
            .leg("flange", mm(100.0))
            .down(BendAngle::SQUARE)
            .leg("face", mm(face))
            .end(Edge::closed_hem(mm(12.0), Direction::Down))
            .build()
            .unwrap()
    };
    let made = taper(drip(80.0), drip(105.0), 3000.0).compute().unwrap();
    assert_eq!((made.near.girth(), made.far.girth()), (drip(80.0).girth(&axis(0.5)).unwrap(), drip(105.0).girth(&axis(0.5)).unwrap()));
    assert_eq!((made.far.girth() - made.near.girth()).length().unwrap(), mm(25.0));
    for (side, flat) in [(BlankSide::NearEnd, &made.near), (BlankSide::FarEnd, &made.far)] {
        let along: f64 = made.blank.outline.iter().filter(|e| e.side == side).map(|e| apart(e.from, e.to)).sum();
        assert!((along - flat.girth().mm()).abs() < 1e-6, "{along} {}", flat.girth());
    }
    // The bend at the flange runs straight along, the hem's leans: 25 mm in 3 m, and its return is its mirror image.
    assert_eq!(made.bends[0].line.length().unwrap(), mm(3000.0));
    let hem = &made.bends[1];
    assert!((hem.line.length().unwrap().mm() - (3000.0_f64 * 3000.0 + 625.0).sqrt()).abs() < 1e-6);
    assert_eq!((hem.turn, hem.near_station, hem.far_station), (BendAngle::FOLDED, made.near.bends()[1].line, made.far.bends()[1].line));
    assert!(made.blank.cautions.iter().all(|c| c.code() != cautions::TAPER_BEND_OBLIQUE));
    // The hem's edge comes to lie square to its leg's ends when folded: in the flat it stands off by twice the angle at which the fold leans.
    let (face, back) = (&made.legs[1], &made.legs[2]);
    let lean = |a: Point, b: Point| crate::num::atan2((b.x.pm() - a.x.pm()) as f64, (b.y.pm() - a.y.pm()) as f64);
    let (fold, edge) = (lean(face.end.from, face.end.to), lean(back.end.from, back.end.to));
    assert!((edge - fold).abs() < 1e-9, "a hem of one width keeps its edge along its fold: {fold} {edge}");
}

#[test]
fn prisms_are_rectangles_whatever_is_held() {
    for held in [HeldLine::StartEdge, HeldLine::Bend(Part::Body(1)), HeldLine::EndEdge] {
        let p = square(40.0, 0.6, 0.6);
        let made = Taper { held, ..taper(p.clone(), p.clone(), 500.0) }.compute().unwrap();
        let (width, height) = made.blank.bounds().unwrap().size().unwrap();
        assert_eq!((width, height), (p.girth(&axis(0.5)).unwrap(), mm(500.0)));
        assert!(made.bends.iter().all(|b| (b.turn.degrees() - 90.0).abs() < 1e-9 && b.round_bend.unwrap().pm().abs() < 10));
    }
    let e = Taper { held: HeldLine::Bend(Part::StartHem), ..taper(square(40.0, 0.6, 0.6), square(40.0, 0.6, 0.6), 500.0) }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Unknown, "held"));
}

#[test]
fn ends_that_do_not_match_are_refused_with_every_difference() {
    let near = square(40.0, 0.6, 0.6);
    let mut far = square(50.0, 0.6, 0.6);
    far.bends[1].direction = Direction::Down;
    far.bends[2].inside_radius = mm(0.7);
    far.end_edge = Edge::closed_hem(mm(10.0), Direction::Up);
    far.legs[3].end = LegEnd::OuterTangent;
    let e = taper(near.clone(), far, 500.0).compute().unwrap_err();
    let mut paths = vec![e.path()];
    paths.extend(e.others().iter().map(|o| o.path()));
    assert_eq!(paths, ["far.legs[3].end", "far.bends[1].direction", "far.bends[2].inside_radius", "far.end_edge"]);

    let mut far = square(50.0, 0.6, 0.6);
    far.bends[0].angle = BendAngle::from_flat(Angle::degrees_from(91.0).unwrap()).unwrap();
    let e = taper(near.clone(), far.clone(), 500.0).compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "far.bends[0].angle"));
    // 50 mm sin 1 degree.
    assert!(e.value().unwrap().contains("1 deg off") && e.value().unwrap().contains("0.8726"), "{:?}", e.value());
    // What a micrometre hides is no difference.
    far.bends[0].angle = BendAngle::from_flat(Angle::degrees_from(90.000_000_1).unwrap()).unwrap();
    taper(near.clone(), far, 500.0).compute().unwrap();

    let mut none = taper(near.clone(), near, 0.0);
    none.tolerance = mm(-1.0);
    none.near.thickness = Length::ZERO;
    let e = none.compute().unwrap_err();
    let mut paths = vec![e.path()];
    paths.extend(e.others().iter().map(|o| o.path()));
    assert_eq!(paths, ["length", "tolerance", "near.thickness", "far.thickness"]);
}

#[test]
fn a_run_in_pieces_laps_on_itself() {
    let run = TaperedRun {
        near: square(40.0, 0.6, 0.6),
        far: square(64.0, 0.6, 0.6),
        run: mm(8000.0),
        longest: mm(3000.0),
        lap: mm(100.0),
        mode: LapMode::Equal,
        least_piece: Length::ZERO,
        rule: axis(0.5),
        held: HeldLine::Bend(Part::Body(1)),
        offset: Point { x: Length::ZERO, y: mm(16.0) },
        tolerance: Length::micrometres(1),
    };
    let (made, sheet) = run.explain().unwrap();
    assert_eq!((made.pieces.len(), made.laps), (3, 2));
    assert_eq!(sheet.steps().iter().filter(|s| s.what.starts_with("girths of piece")).count(), 3);
    let girth = |at: f64| 4.0 * (40.0 + 24.0 * at / 8000.0) + 3.0 * core::f64::consts::FRAC_PI_2 * 0.9;
    for (i, piece) in made.pieces.iter().enumerate() {
        for (at, flat) in [(piece.from, &piece.trim.near), (piece.to, &piece.trim.far)] {
            assert!((flat.girth().mm() - girth(at.mm())).abs() < 1e-8);
        }
        if let Some(next) = made.pieces.get(i + 1) {
            assert_eq!((piece.to - next.from).length().unwrap(), mm(100.0));
        }
    }
    assert_eq!(made.pieces[2].to, mm(8000.0));
    // The held line leaves by the run's slope: the bend above it is as long as the run's is, shared out by length.
    let lines: f64 = made.pieces.iter().map(|p| p.trim.bends[1].line.length().unwrap().mm()).sum();
    assert!((lines - (8200.0_f64 / 8000.0) * (8000.0_f64 * 8000.0 + 16.0 * 16.0).sqrt()).abs() < 1e-6, "{lines}");
    let e = TaperedRun { lap: mm(3000.0), ..run }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "lap"));
}

#[test]
fn a_blank_longer_than_the_stock_is_said() {
    let run = TaperedRun {
        near: square(40.0, 0.6, 0.6),
        far: square(640.0, 0.6, 0.6),
        run: mm(1000.0),
        longest: mm(1000.0),
        lap: mm(100.0),
        mode: LapMode::Equal,
        least_piece: Length::ZERO,
        rule: axis(0.5),
        held: HeldLine::StartEdge,
        offset: Point::ORIGIN,
        tolerance: Length::micrometres(10),
    };
    let made = run.compute().unwrap();
    assert!(made.pieces[0].trim.blank.cautions.iter().any(|c| c.code() == cautions::TAPER_BLANK_OVER_STOCK));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// What is flat came from space without stretching: in each leg every distance between its corners is that of the folded piece, and each bend is as
    /// long along its ends as its allowance.
    #[test]
    fn the_development_keeps_every_distance(
        near in any_profile(),
        wider in prop::collection::vec(-20_000_i32..40_000, 12),
        aside in (-200_000_i32..200_000, -200_000_i32..200_000),
        length in 300_000_i32..3_000_000,
    ) {
        let mut far = near.clone();
        for (leg, by) in far.legs.iter_mut().zip(&wider) {
            leg.length = (leg.length + Length::micrometres(*by)).length().unwrap();
        }
        prop_assume!(far.validate().is_ok());
        let asked = Taper {
            length: Length::micrometres(length),
            offset: Point { x: Length::micrometres(aside.0), y: Length::micrometres(aside.1) },
            ..taper(near, far, 1.0)
        };
        let made = match asked.compute() {
            Ok(made) => made,
            // Ends that lean into each other are refused, never given.
            Err(e) => { prop_assert_eq!(e.path(), "blank.outline"); return Ok(()); }
        };
        let axis = f64::from(length) / 1000.0;
        let first_hem = made.near.bends().first().filter(|b| b.part == Part::StartHem);
        let sign = |d: Direction| if d == Direction::Up { 1.0 } else { -1.0 };
        let mut heading = first_hem.map_or(0.0, |b| -sign(b.direction) * b.angle.degrees());
        // Near points of a walk along the legs alone; the bends' arcs are the same at both ends and only move it.
        let (mut p, mut q) = ([0.0, 0.0, 0.0], [f64::from(aside.0) / 1000.0, f64::from(aside.1) / 1000.0, axis]);
        for (i, leg) in made.legs.iter().enumerate() {
            let way = [crate::num::cos_deg(heading), crate::num::sin_deg(heading), 0.0];
            let (a, b) = (made.near.legs()[i].length().mm(), made.far.legs()[i].length().mm());
            let on = |r: [f64; 3], by: f64| [r[0] + way[0] * by, r[1] + way[1] * by, r[2]];
            let space = [p, q, on(p, a), on(q, b)];
            let flat = [leg.start.from, leg.start.to, leg.end.from, leg.end.to];
            for m in 0..4 {
                for n in 0..m {
                    let d: f64 = (0..3).map(|k| space[m][k] - space[n][k]).map(|d| d * d).sum::<f64>().sqrt();
                    prop_assert!((apart(flat[m], flat[n]) - d).abs() < 1e-6, "leg {i}: {} {d}", apart(flat[m], flat[n]));
                }
            }
            (p, q) = (space[2], space[3]);
            if let Some(bend) = made.near.bends().get(i) {
                heading += sign(bend.direction) * bend.angle.degrees();
                // From the end of this leg to the start of the next along the near end: as long as the allowance.
                let (from, to) = (leg.end.from, made.legs[i + 1].start.from);
                let at = |w: Point| made.blank.outline.iter().position(|e| e.side == BlankSide::NearEnd && e.from == w);
                if let (Some(s), Some(e)) = (at(from), at(to)) {
                    let curve: f64 = made.blank.outline[s..e].iter().map(|x| apart(x.from, x.to)).sum();
                    prop_assert!((curve - bend.allowance().mm()).abs() < 1e-3 * bend.allowance().mm().max(1e-3), "{curve} {}", bend.allowance());
                }
                prop_assert!((made.legs[i + 1].start.length().unwrap().mm() - leg.end.length().unwrap().mm()).abs() < 1e-6);
            }
        }
        let (out, _) = asked.explain().unwrap();
        prop_assert_eq!(out, made);
    }
}
