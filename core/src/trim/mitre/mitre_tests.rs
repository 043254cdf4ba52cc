use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::trim::flat_tests::any_profile;
use crate::trim::{BendRule, Direction, Edge, Face, Flat, FlatBend, NeutralFactor, Part, Placement, Point, Profile};
use crate::units::{Angle, BendAngle, Length};
use proptest::prelude::*;

type V3 = [f64; 3];

fn mm(v: f64) -> Length {
    Length::from_mm(v).unwrap()
}

fn deg(v: f64) -> Angle {
    Angle::degrees_from(v).unwrap()
}

fn middle() -> BendRule {
    BendRule::neutral_axis(NeutralFactor::MIDDLE)
}

fn plan(turn: f64, first: f64, second: f64) -> MitreCorner {
    MitreCorner::Plan { turn: deg(turn), first_rise: deg(first), second_rise: deg(second) }
}

fn mitre(profile: Profile, corner: MitreCorner, second: SecondHalf) -> Mitre {
    let placement = Placement::default();
    Mitre { profile, placement, rule: middle(), corner, second, closes_on: SheetSurface::Upper, tolerance: Length::micrometres(1) }
}

fn angle_trim() -> Profile {
    Profile::builder(mm(0.6))
        .painted(Face::Upper)
        .inside_radius(mm(0.8))
        .leg("flange", mm(100.0))
        .down(BendAngle::SQUARE)
        .leg("face", mm(80.0))
        .build()
        .unwrap()
}

/// One leg of a profile that is put at this heading, alone.
fn leg_at(heading: f64) -> (Profile, Placement) {
    let strip = Profile::builder(mm(0.6)).painted(Face::Upper).leg("strip", mm(100.0)).build().unwrap();
    (strip, Placement { heading: deg(heading), ..Placement::default() })
}

#[test]
fn a_level_square_corner_cuts_the_flange_at_45_degrees_and_the_face_square() {
    let made = mitre(angle_trim(), plan(-90.0, 0.0, 0.0), SecondHalf::Upright).compute().unwrap();
    // To the right: the edge that starts at the run is on the inside of the turn's far side, so the cut runs back along the run.
    let angles: Vec<f64> = made.first.legs.iter().map(|l| l.angle.degrees()).collect();
    assert_eq!(angles, [135.0, 90.0]);
    // The flange's flat part is 98.6 mm to the tangent line (100 - 0.6 - 0.8); at 45 degrees the cut comes back as much.
    assert_eq!(made.first.legs[0].to, Point { x: mm(98.6), y: mm(-98.6) });
    // The face lies at the outside of the flange: 100 mm across on the upper face.
    assert_eq!(made.first.legs[1].from.y, mm(-100.0));
    assert_eq!((made.first.legs[1].bevel.degrees(), made.first.legs[0].bevel.degrees()), (45.0, 0.0));
    assert_eq!((made.turn, made.roll), (Angle::SQUARE, Angle::ZERO));
    // An inside corner is the same profile with the turn the other way.
    let inside = mitre(angle_trim(), plan(90.0, 0.0, 0.0), SecondHalf::Upright).compute().unwrap();
    assert_eq!(inside.first.legs[0].angle, deg(45.0));
    // The upper face closes; the lower parts or overruns by a thickness at the face: 0.6 mm tan 45.
    assert_eq!(inside.first.opening, mm(0.6));
}

/// The cut in the bend is the developed curve: for a square bend on the upper face of radius r + t a sine, from geometry.
#[test]
fn the_line_in_a_bend_is_the_developed_curve() {
    let made = mitre(angle_trim(), plan(-90.0, 0.0, 0.0), SecondHalf::Upright).compute().unwrap();
    let bend = &made.first.flat.bends()[0];
    let inside: Vec<&Point> = made.first.line.iter().filter(|p| p.x >= bend.from && p.x <= bend.to).collect();
    assert!(inside.len() >= 5 && inside.iter().any(|p| p.x == bend.line), "{inside:?}");
    for p in &inside {
        let share = (p.x.pm() - bend.from.pm()) as f64 / bend.allowance().pm() as f64;
        let turned = share * core::f64::consts::FRAC_PI_2;
        assert!((p.y.mm() + 98.6 + 1.4 * crate::num::sin(turned)).abs() < 1e-8, "{share}: {}", p.y);
    }
    // Half way between two points the chord strays by less than the tolerance of 0.001 mm.
    for pair in inside.windows(2) {
        let share = ((pair[0].x.pm() + pair[1].x.pm()) as f64 / 2.0 - bend.from.pm() as f64) / bend.allowance().pm() as f64;
        let curve = -98.6 - 1.4 * crate::num::sin(share * core::f64::consts::FRAC_PI_2);
        assert!(((pair[0].y.mm() + pair[1].y.mm()) / 2.0 - curve).abs() < 1e-3);
    }
}

/// Printed tables of compound mitres for a piece that springs at 38 or 45 degrees from the wall into a square corner: mitre 31.62 and bevel
/// 33.86, 35.26 and 30.00 degrees (widely printed, from memory). The mitre is measured from square, the bevel as the plane leans.
#[test]
fn compound_mitres_of_the_printed_tables() {
    for (spring, cut, bevel) in [(38.0, 31.62, 33.86), (45.0, 35.26, 30.0)] {
        let (profile, placement) = leg_at(90.0 - spring);
        let made = Mitre { placement, ..mitre(profile, plan(90.0, 0.0, 0.0), SecondHalf::Upright) }.compute().unwrap();
        let leg = made.first.legs[0];
        assert!((90.0 - leg.angle.degrees() - cut).abs() < 0.005, "{}", leg.angle);
        assert!((leg.bevel.degrees() - bevel).abs() < 0.005, "{}", leg.bevel);
    }
}

#[test]
fn runs_that_do_not_turn_are_cut_square_and_a_rake_at_its_peak_is_cut_plumb() {
    let straight = mitre(angle_trim(), plan(0.0, 10.0, 10.0), SecondHalf::Upright).compute().unwrap();
    assert!(straight.first.line.iter().all(|p| p.y == Length::ZERO));
    // Up 26.565 degrees (6 in 12) and down again: the level flange is cut square, the face plumb: 26.565 from square.
    let rise = 26.565_051_177_077_99;
    let peak = mitre(angle_trim(), plan(0.0, rise, -rise), SecondHalf::Upright).compute().unwrap();
    assert_eq!(peak.first.legs[0].angle, Angle::SQUARE);
    assert!((peak.first.legs[1].angle.degrees() - (90.0 + rise)).abs() < 1e-9 || (peak.first.legs[1].angle.degrees() - (90.0 - rise)).abs() < 1e-9);
    assert!((peak.turn.degrees() - 2.0 * rise).abs() < 1e-9);
}

#[test]
fn what_does_not_meet_is_refused_by_how_much() {
    let e = mitre(angle_trim(), plan(90.0, 0.0, 20.0), SecondHalf::Upright).compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "second"));
    assert!(e.value().unwrap().contains("20"), "{:?}", e.value());
    for (corner, path, kind) in [
        (plan(180.0, 0.0, 0.0), "corner.plan.turn", ErrorKind::OutOfRange),
        (plan(0.0, 90.0, 0.0), "corner.plan.first_rise", ErrorKind::OutOfRange),
        (plan(0.0, 0.0, -90.0), "corner.plan.second_rise", ErrorKind::OutOfRange),
    ] {
        let e = mitre(angle_trim(), corner, SecondHalf::Turned).compute().unwrap_err();
        assert_eq!((e.kind(), e.path()), (kind, path));
    }
    let way = |x: i16, y: i16, z: i16| Way { x: Length::inches(x), y: Length::inches(y), z: Length::inches(z) };
    let ways = |a: Way, b: Way| MitreCorner::Ways { first: RunWay { along: a, up: None }, second: RunWay { along: b, up: None } };
    for (a, b, path) in [
        (way(0, 0, 0), way(0, 1, 0), "corner.ways.first.along"),
        (way(0, 1, 0), way(0, 0, 1), "corner.ways.second.up"),
        (way(0, 1, 0), way(0, -1, 0), "corner"),
    ] {
        assert_eq!(mitre(angle_trim(), ways(a, b), SecondHalf::Turned).compute().unwrap_err().path(), path);
    }
    let mut wrong = mitre(angle_trim(), plan(180.0, 0.0, 0.0), SecondHalf::Turned);
    wrong.tolerance = Length::ZERO;
    wrong.profile.bends[0].inside_radius = mm(-1.0);
    let e = wrong.compute().unwrap_err();
    assert_eq!((e.path(), e.others()[0].path()), ("tolerance", "profile.bends[0].inside_radius"));
    let mut fine = mitre(angle_trim(), plan(90.0, 0.0, 0.0), SecondHalf::Turned);
    fine.tolerance = Length::from_pm(1);
    fine.profile.bends[0].inside_radius = mm(70.0);
    assert_eq!(fine.compute().unwrap_err().path(), "tolerance");
}

/// The plumb-and-level plan of a corner where a level run meets a rake: at the same vertical plane through the corner, the second section is the
/// first one sheared, by the projection of each corner along the runs (geometry). Its legs and angles are worked out here, by hand.
fn eave_and_rake(rise: f64) -> (Profile, SecondHalf) {
    // Sharp corners of the upper face in the first section: a level flange, a plumb face, a kick.
    let corners = [(0.0, 0.0), (100.0, 0.0), (100.0, -80.0), (120.0, -100.0)];
    let (cos, tan) = (crate::num::cos_deg(rise), crate::num::tan_deg(rise));
    // To the right by 90: at lateral x the corner plane lies x back along both runs... along the rake that is x on from the corner.
    let sheared = corners.map(|(x, y)| (x, cos * (y - x * tan)));
    let profile = |points: [(f64, f64); 4]| {
        let chain = crate::trim::Chain {
            thickness: mm(0.6),
            inside_radius: mm(0.8),
            face: Face::Upper,
            start: Point { x: mm(points[0].0), y: mm(points[0].1) },
            legs: points[1..].iter().map(|p| crate::trim::ChainLeg { name: "leg".into(), to: Point { x: mm(p.0), y: mm(p.1) } }).collect(),
            start_edge: Edge::Raw,
            end_edge: Edge::Raw,
            painted: Face::Upper,
        };
        (chain.profile().unwrap(), chain.placement().unwrap())
    };
    let (first, second) = (profile(corners), profile(sheared));
    (first.0, SecondHalf::Other { profile: second.0, placement: second.1, within: Length::micrometres(1) })
}

#[test]
fn two_sections_meet_leg_by_leg() {
    let rise = 18.434_948_822_922_01;
    let (profile, second) = eave_and_rake(rise);
    let asked = Mitre { placement: Placement { face: Face::Upper, ..Placement::default() }, ..mitre(profile, plan(-90.0, 0.0, rise), second) };
    let made = asked.compute().unwrap();
    assert!(made.parts <= Length::from_pm(10_000), "{}", made.parts);
    // The level flange is cut at 45 degrees as on a level corner: both flanges meet in the vertical plane.
    assert!((made.first.legs[0].angle.degrees() - 135.0).abs() < 1e-6, "{}", made.first.legs[0].angle);
    let frames = (frame(0.0, 0.0, 0.0), frame(-90.0, rise, 0.0));
    let fold = |half: &MitreHalf, frame: Frame3, station: Length, along: Length, placement: &Placement| {
        frame.at(section_point(&half.flat, placement, SheetSurface::Upper, station), along)
    };
    let SecondHalf::Other { placement, .. } = &asked.second else { unreachable!() };
    for (a, b) in made.first.legs.iter().zip(&made.second.legs) {
        // Each leg's cut lies on the other's: the ends of one, carried out to the other's line, are on it.
        let ends = |half: &MitreHalf, cut: &LegCut, frame: Frame3, placement: &Placement| [cut.from, cut.to].map(|p| fold(half, frame, p.x, p.y, placement));
        let (p, q) = (ends(&made.first, a, frames.0, &asked.placement), ends(&made.second, b, frames.1, placement));
        for point in q {
            assert!(off_line(point, p) < 1e-5, "{}", off_line(point, p));
        }
    }
    // With the first profile again the corners part at the first bend, and it is said by how much.
    let again = Mitre { second: SecondHalf::Other { profile: asked.profile.clone(), placement: asked.placement, within: mm(0.5) }, ..asked.clone() };
    let e = again.compute().unwrap_err();
    assert_eq!(e.kind(), ErrorKind::Impossible);
    assert!(e.path().starts_with("second.other.profile."), "{}", e.path());
    let straight = Mitre { corner: plan(0.0, 10.0, 10.0), ..asked.clone() };
    assert_eq!(straight.compute().unwrap_err().path(), "second.other.profile");
    let fewer = Mitre { second: SecondHalf::Other { profile: angle_trim(), placement: Placement::default(), within: mm(0.5) }, ..asked };
    assert_eq!(fewer.compute().unwrap_err().kind(), ErrorKind::Conflict);
}

/// The matching section is the one that was worked out by hand.
#[test]
fn a_matching_section_is_the_sheared_one() {
    let rise = 18.434_948_822_922_01;
    let (profile, second) = eave_and_rake(rise);
    let SecondHalf::Other { profile: by_hand, placement: put_by_hand, .. } = second else { unreachable!() };
    let placement = Placement { face: Face::Upper, ..Placement::default() };
    let asked = MatchingSection { profile: profile.clone(), placement, corner: plan(-90.0, 0.0, rise), plane: None, closes_on: Face::Upper };
    let (made, sheet) = asked.explain().unwrap();
    for (a, b) in made.profile.legs.iter().zip(&by_hand.legs) {
        assert!((a.length.pm() - b.length.pm()).abs() <= 3, "{} {}", a.length, b.length);
    }
    for (a, b) in made.profile.bends.iter().zip(&by_hand.bends) {
        assert!((a.angle.degrees() - b.angle.degrees()).abs() < 1e-9 && a.direction == b.direction && a.inside_radius == b.inside_radius);
    }
    assert!((made.placement.heading.degrees() - put_by_hand.heading.degrees()).abs() < 1e-9);
    assert_eq!(sheet.steps().len(), 4);
    // The same plane said by its square; a plane of another lean gives another section, which closes too.
    let square = |x: f64, y: f64, z: f64| Some(super::super::Way { x: mm(x), y: mm(y), z: mm(z) });
    assert_eq!(
        MatchingSection { plane: square(1.0, 1.0, 0.0), ..asked.clone() }.compute().unwrap().profile.bends[0].direction,
        made.profile.bends[0].direction
    );
    let leaning = MatchingSection { plane: square(1.0, 1.0, 0.3), ..asked.clone() };
    assert_ne!(leaning.compute().unwrap().profile, made.profile);
    assert_eq!(parts_of(&leaning).unwrap(), Length::ZERO);
    // What the mitre works out for itself is that profile, cut where the leg planes meet; bends of 0.8 mm part by less than that.
    let by_itself = |second| Mitre { placement, closes_on: SheetSurface::Upper, ..mitre(profile.clone(), asked.corner, second) };
    let one = by_itself(SecondHalf::Matching { plane: None }).compute().unwrap();
    let two = by_itself(SecondHalf::Other { profile: made.profile.clone(), placement: made.placement, within: Length::from_pm(1_000) }).compute().unwrap();
    for (a, b) in one.first.legs.iter().chain(&one.second.legs).zip(two.first.legs.iter().chain(&two.second.legs)) {
        assert!((a.angle.degrees() - b.angle.degrees()).abs() < 1e-6 && (a.from.y.pm() - b.from.y.pm()).abs() < 1_000, "{a:?} {b:?}");
    }
    assert!(one.parts.is_positive() && one.parts < mm(0.8), "{}", one.parts);
    let middle = Mitre { closes_on: SheetSurface::Middle, ..by_itself(SecondHalf::Matching { plane: None }) };
    assert_eq!(middle.compute().unwrap_err().path(), "closes_on");
    assert_eq!(by_itself(SecondHalf::Matching { plane: square(1.0, -1.0, 0.0) }).compute().unwrap_err().path(), "second.matching.plane");
    // A level square corner asks for the same profile again; refusals name their field.
    let level = MatchingSection { corner: plan(-90.0, 0.0, 0.0), ..asked.clone() };
    assert_eq!(level.compute().unwrap().profile, profile);
    for (bad, path) in [
        (MatchingSection { plane: square(0.0, 0.0, 0.0), ..asked.clone() }, "plane"),
        (MatchingSection { plane: square(1.0, 0.0, 0.0), ..asked.clone() }, "plane"),
        (MatchingSection { plane: square(1.0, -1.0, 0.0), ..asked.clone() }, "plane"),
        (MatchingSection { corner: plan(200.0, 0.0, 0.0), ..asked.clone() }, "corner.plan.turn"),
        (MatchingSection { profile: Profile { legs: vec![], bends: vec![], ..profile.clone() }, ..asked.clone() }, "profile.legs"),
    ] {
        assert_eq!(bad.compute().unwrap_err().path(), path);
    }
    let mut folded = asked.clone();
    folded.profile.bends[1].angle = BendAngle::FOLDED;
    folded.profile.legs[1].end = crate::trim::LegEnd::OuterTangent;
    folded.profile.legs[2].start = crate::trim::LegEnd::OuterTangent;
    assert_eq!(folded.compute().unwrap_err().path(), "profile.bends[1].angle");
    // Foreshortened until a leg has no room for its bends.
    let steep = MatchingSection { corner: plan(-90.0, 0.0, 89.5), ..asked };
    assert!(steep.compute().unwrap_err().path().starts_with("second."));
}

/// How far the corners of a profile and of its matching section part, as the mitre of the two tells it.
fn parts_of(asked: &MatchingSection) -> Result<Length, crate::error::Error> {
    let made = asked.compute()?;
    let second = SecondHalf::Other { profile: made.profile, placement: made.placement, within: Length::from_pm(1_000) };
    Ok(Mitre { placement: asked.placement, closes_on: asked.closes_on.into(), ..mitre(asked.profile.clone(), asked.corner, second) }.compute()?.parts)
}

fn off_line(p: V3, [a, b]: [V3; 2]) -> f64 {
    let (ab, ap) = ([b[0] - a[0], b[1] - a[1], b[2] - a[2]], [p[0] - a[0], p[1] - a[1], p[2] - a[2]]);
    let c = [ab[1] * ap[2] - ab[2] * ap[1], ab[2] * ap[0] - ab[0] * ap[2], ab[0] * ap[1] - ab[1] * ap[0]];
    ((c[0] * c[0] + c[1] * c[1] + c[2] * c[2]) / (ab[0] * ab[0] + ab[1] * ab[1] + ab[2] * ab[2])).sqrt()
}

// From here on the folding is done again, by a walk of its own, to hold the cuts against it.

#[derive(Clone, Copy)]
struct Frame3 {
    x: V3,
    y: V3,
    along: V3,
}

impl Frame3 {
    fn at(&self, (x, y): (f64, f64), along: Length) -> V3 {
        let a = along.mm();
        [0, 1, 2].map(|i| self.x[i] * x + self.y[i] * y + self.along[i] * a)
    }
}

/// Heading in plan from +y, counter-clockwise; rise; turn of the section about its run.
#[allow(clippy::disallowed_methods, reason = "an outside check uses the standard library")]
fn frame(turn: f64, rise: f64, roll: f64) -> Frame3 {
    let (s, c) = turn.to_radians().sin_cos();
    let (u, o) = rise.to_radians().sin_cos();
    let along = [-s * o, c * o, u];
    let right = [c, s, 0.0];
    let up = [right[1] * along[2] - right[2] * along[1], right[2] * along[0] - right[0] * along[2], right[0] * along[1] - right[1] * along[0]];
    let (rs, rc) = roll.to_radians().sin_cos();
    Frame3 { x: [0, 1, 2].map(|i| right[i] * rc + up[i] * rs), y: [0, 1, 2].map(|i| up[i] * rc - right[i] * rs), along }
}

/// Where a station of the flat lies in the folded section.
#[allow(clippy::disallowed_methods, reason = "an outside check uses the standard library")]
fn section_point(flat: &Flat, placement: &Placement, surface: SheetSurface, station: Length) -> (f64, f64) {
    let t = flat.thickness().mm();
    let height = match surface {
        SheetSurface::Upper => t,
        SheetSurface::Middle => t / 2.0,
        SheetSurface::Lower => 0.0,
    };
    let sign = |b: &FlatBend| if b.direction == Direction::Up { 1.0 } else { -1.0 };
    // A walk on the lower face from the start edge at the origin: position, heading in radians.
    let (mut x, mut y, mut h) = (0.0_f64, 0.0_f64, 0.0_f64);
    let (mut found, mut put) = (None, None);
    let off = |x: f64, y: f64, h: f64, up: f64| (x - up * h.sin(), y + up * h.cos());
    for (i, leg) in flat.legs().iter().enumerate() {
        if leg.part == placement.leg {
            let base = off(x, y, h, if placement.face == Face::Upper { t } else { 0.0 });
            put = Some((base, h));
        }
        if found.is_none() && station <= leg.to {
            let by = (station.pm() - leg.from.pm()) as f64 / 1e9;
            found = Some(off(x + by * h.cos(), y + by * h.sin(), h, height));
        }
        let length = leg.length().mm();
        (x, y) = (x + length * h.cos(), y + length * h.sin());
        let Some(bend) = flat.bends().get(i) else { continue };
        let turn = sign(bend) * bend.angle.degrees().to_radians();
        let r = bend.inside_radius.mm();
        // The centre lies on the inside; the lower face is at r + t of it where the bend goes up, and at r where it goes down.
        let lower = if turn > 0.0 { r + t } else { -r };
        let centre = off(x, y, h, lower);
        if found.is_none() && station <= bend.to {
            let share = (station.pm() - bend.from.pm()) as f64 / bend.allowance().pm() as f64;
            let at = h + turn * share;
            found = Some(off(centre.0, centre.1, at, height - lower));
        }
        h += turn;
        (x, y) = off(centre.0, centre.1, h, -lower);
    }
    let ((bx, by), h0) = put.unwrap();
    let (px, py) = found.unwrap();
    let turn = placement.heading.degrees().to_radians() - h0;
    let (s, c) = turn.sin_cos();
    let (dx, dy) = (px - bx, py - by);
    (dx * c - dy * s + placement.at.x.mm(), dx * s + dy * c + placement.at.y.mm())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1000))]

    /// Folded and put at their corner, the two halves close on each other.
    #[test]
    fn two_halves_close(
        profile in any_profile(),
        turn in -150.0_f64..150.0,
        rises in (-60.0_f64..60.0, -60.0_f64..60.0),
        heading in -180.0_f64..180.0,
        at in (-200_000_i32..200_000, -200_000_i32..200_000),
        surface in prop_oneof![Just(SheetSurface::Upper), Just(SheetSurface::Middle), Just(SheetSurface::Lower)],
    ) {
        let placement = Placement {
            leg: Part::Body(0),
            face: Face::Lower,
            at: Point { x: Length::micrometres(at.0), y: Length::micrometres(at.1) },
            heading: deg(heading),
        };
        let asked = Mitre { placement, closes_on: surface, ..mitre(profile, plan(turn, rises.0, rises.1), SecondHalf::Turned) };
        let made = asked.compute().unwrap();
        prop_assert_eq!(made.first.line.len(), made.second.line.len());
        let frames = (frame(0.0, rises.0, 0.0), frame(turn, rises.1, made.roll.degrees()));
        for (a, b) in made.first.line.iter().zip(&made.second.line) {
            prop_assert_eq!(a.x, b.x);
            let p = section_point(&made.first.flat, &placement, surface, a.x);
            let (one, two) = (frames.0.at(p, a.y), frames.1.at(p, b.y));
            for i in 0..3 {
                prop_assert!((one[i] - two[i]).abs() < 1e-6, "{:?} {:?}", one, two);
            }
        }
        // Explaining gives the same.
        prop_assert_eq!(asked.explain().unwrap().0, made);
    }
    /// A profile and its matching section close at any corner: the cuts of each two legs lie on each other, and so do the corners between them.
    #[test]
    fn a_matching_section_closes(
        profile in any_profile(),
        turn in -140.0_f64..140.0,
        rises in (-50.0_f64..50.0, -50.0_f64..50.0),
        heading in -180.0_f64..180.0,
        face in prop_oneof![Just(Face::Upper), Just(Face::Lower)],
    ) {
        let mut profile = Profile { start_edge: Edge::Raw, end_edge: Edge::Raw, ..profile };
        profile.legs.first_mut().unwrap().start = crate::trim::LegEnd::SheetEdge;
        profile.legs.last_mut().unwrap().end = crate::trim::LegEnd::SheetEdge;
        let placement = Placement { heading: deg(heading), ..Placement::default() };
        let asked = MatchingSection { profile, placement, corner: plan(turn, rises.0, rises.1), plane: None, closes_on: face };
        let found = match asked.compute() {
            Ok(found) => found,
            // A leg that is seen end on has no room for its bends.
            Err(e) => { prop_assert!(e.path().starts_with("second.legs"), "{e}"); return Ok(()) }
        };
        let second = SecondHalf::Matching { plane: None };
        let corner = Mitre { placement, closes_on: face.into(), ..mitre(asked.profile.clone(), asked.corner, second) }.compute().unwrap();
        let frames = (frame(0.0, rises.0, 0.0), frame(turn, rises.1, 0.0));
        let ends = |half: &MitreHalf, cut: &LegCut, frame: Frame3, placement: &Placement| {
            [cut.from, cut.to].map(|p| frame.at(section_point(&half.flat, placement, face.into(), p.x), p.y))
        };
        for (a, b) in corner.first.legs.iter().zip(&corner.second.legs) {
            let (p, q) = (ends(&corner.first, a, frames.0, &placement), ends(&corner.second, b, frames.1, &found.placement));
            for point in p {
                // In the plumb plane that halves the plan's angle, and on the other's cut.
                let off = point[1] * crate::num::cos_deg(turn / 2.0) - point[0] * crate::num::sin_deg(turn / 2.0);
                prop_assert!(off.abs() < 1e-6, "{off}");
                prop_assert!(off_line(point, q) < 1e-6, "{}", off_line(point, q));
            }
        }
    }
}
