//! Folded outlines and chains: closed forms, laws and bad input.

use super::flat_tests::any_profile;
use super::*;
use crate::error::ErrorKind;
use crate::units::{Angle, BendAngle, Length, LengthUnit};
use proptest::prelude::*;

fn mm(v: f64) -> Length {
    Length::from_f64(v, LengthUnit::Millimetre).unwrap()
}

fn axis(k: f64) -> BendRule {
    BendRule::neutral_axis(NeutralFactor::new(k).unwrap())
}

fn at(x: f64, y: f64) -> Point {
    Point { x: mm(x), y: mm(y) }
}

fn apart(a: Point, b: Point) -> i64 {
    a.distance(b).unwrap().pm()
}

/// Legs to the outer corner that turn four times to the left close on themselves.
#[test]
fn a_square_tube_closes() {
    let mut b = Profile::builder(mm(1.0)).painted(Face::Lower).inside_radius(mm(2.0)).leg_between("1", mm(20.0), LegEnd::SheetEdge, LegEnd::OuterCorner);
    for _ in 0..3 {
        b = b.up(BendAngle::SQUARE).leg("side", mm(40.0));
    }
    let p = b.up(BendAngle::SQUARE).leg("last", mm(20.0)).build().unwrap();
    let o = p.unfold(&axis(0.4)).unwrap().outline().unwrap();
    assert_eq!(o.face(Face::Lower).last().unwrap().to, Point::ORIGIN);
    assert_eq!(o.bounds(), Bounds { least: at(-20.0, 0.0), greatest: at(20.0, 40.0) });
    // Inside faces are 38 mm apart.
    assert_eq!(o.face(Face::Upper)[4].from.y, mm(39.0));
}

#[test]
fn hems_lie_on_the_face_that_they_are_folded_to() {
    let body = |edge: Edge| Profile::builder(mm(0.6)).painted(Face::Upper).leg("body", mm(50.0)).end(edge).build().unwrap();
    // Closed, up: the return lies on the upper face, its own upper face down.
    let o = body(Edge::closed_hem(mm(12.0), Direction::Up)).unfold(&axis(0.5)).unwrap().outline().unwrap();
    let back = o.face(Face::Upper)[2];
    assert_eq!((back.from, back.to), (at(49.4, 0.6), at(38.0, 0.6)));
    assert_eq!(o.bounds(), Bounds { least: Point::ORIGIN, greatest: at(50.0, 1.2) });
    // Open, down: clear by the gap.
    let o = body(Edge::open_hem(mm(12.0), mm(4.0), Direction::Down)).unfold(&axis(0.5)).unwrap().outline().unwrap();
    assert_eq!((o.face(Face::Lower)[0].to.y, o.face(Face::Lower)[2].to.y), (Length::ZERO, mm(-4.0)));
    assert_eq!(o.bounds(), Bounds { least: at(0.0, -4.6), greatest: at(50.0, 0.6) });
    // At the start edge the body still lies along +x, and the fold is left of it.
    let p = Profile::builder(mm(0.6)).painted(Face::Upper).leg("body", mm(50.0)).start(Edge::closed_hem(mm(12.0), Direction::Up)).build().unwrap();
    let o = p.unfold(&axis(0.5)).unwrap().outline().unwrap();
    assert_eq!(o.bounds(), Bounds { least: at(-0.6, 0.0), greatest: at(49.4, 1.2) });
}

/// The area of the section: thickness times flats, and sectors of rings.
#[test]
fn points_enclose_the_area_of_the_section() {
    let p = Profile::builder(mm(1.5))
        .painted(Face::Upper)
        .inside_radius(mm(6.0))
        .leg("a", mm(40.0))
        .up(BendAngle::from_flat(Angle::degrees_from(70.0).unwrap()).unwrap())
        .leg("b", mm(40.0))
        .down(BendAngle::from_flat(Angle::degrees_from(110.0).unwrap()).unwrap())
        .leg("c", mm(40.0))
        .build()
        .unwrap();
    let flat = p.unfold(&axis(0.5)).unwrap();
    let expected: f64 = flat.legs().iter().map(|l| l.length().get(LengthUnit::Millimetre) * 1.5).sum::<f64>()
        + flat.bends().iter().map(|b| b.angle.angle().radians() * (7.5_f64 * 7.5 - 6.0 * 6.0) / 2.0).sum::<f64>();
    let points: Vec<(f64, f64)> = flat
        .outline()
        .unwrap()
        .points(Length::micrometres(1))
        .unwrap()
        .iter()
        .map(|p| (p.x.get(LengthUnit::Millimetre), p.y.get(LengthUnit::Millimetre)))
        .collect();
    let area: f64 = points.iter().zip(points.iter().cycle().skip(1)).map(|(a, b)| (a.0 * b.1 - b.0 * a.1) / 2.0).sum();
    assert!((area - expected).abs() < 0.02, "{area} {expected}");
}

#[test]
fn outlines_refuse_what_they_cannot_do() {
    let p = Profile::builder(mm(0.6)).painted(Face::Upper).inside_radius(mm(1.0)).leg("a", mm(50.0)).up(BendAngle::SQUARE).leg("b", mm(9.0)).build().unwrap();
    let flat = p.unfold(&axis(0.5)).unwrap();
    for leg in [Part::Body(2), Part::StartHem] {
        assert_eq!(flat.outline_at(&Placement { leg, ..Placement::default() }).unwrap_err().kind(), ErrorKind::Unknown);
    }
    let o = flat.outline().unwrap();
    assert_eq!(o.points(Length::ZERO).unwrap_err().path(), "tolerance");
    assert_eq!(o.points(Length::from_pm(1)).unwrap_err().kind(), ErrorKind::TooLarge);
    assert!(o.points(Length::MAX).unwrap().len() >= 8);
    let far = Placement { at: Point { x: Length::MAX, y: Length::ZERO }, ..Placement::default() };
    assert_eq!(flat.outline_at(&far).unwrap_err().kind(), ErrorKind::Overflow);
}

/// Near or far, short or kilometres long: a section is put by the same rounding.
#[test]
fn a_section_far_away_is_the_same_section() {
    let p = |leg| Profile::builder(mm(0.6)).painted(Face::Upper).inside_radius(mm(1.0)).leg("a", leg).up(BendAngle::SQUARE).leg("b", mm(9.3)).build().unwrap();
    let flat = p(mm(50.0)).unfold(&axis(0.41)).unwrap();
    let far = Point { x: Length::from_pm((1 << 62) + 7), y: Length::from_pm(-(1 << 62) - 5) };
    let moved = |p: Point| Point { x: (p.x - far.x).length().unwrap(), y: (p.y - far.y).length().unwrap() };
    let (here, there) = (flat.outline().unwrap(), flat.outline_at(&Placement { at: far, ..Placement::default() }).unwrap());
    assert_eq!((moved(there.bounds().least), moved(there.bounds().greatest)), (here.bounds().least, here.bounds().greatest));
    for (a, b) in here.contour().iter().chain(here.neutral()).zip(there.contour().iter().chain(there.neutral())) {
        assert_eq!((a.from, a.to, a.arc.map(|arc| arc.centre)), (moved(b.from), moved(b.to), b.arc.map(|arc| moved(arc.centre))));
    }
    // 3 km: past what is rounded without a question.
    let long = p(mm(3.0e6)).unfold(&axis(0.41)).unwrap().outline().unwrap();
    assert_eq!((long.bounds().size().unwrap().0, long.face(Face::Lower)[0].to.x), (mm(3.0e6), mm(3.0e6 - 1.6)));
}

fn chain(face: Face, points: &[(f64, f64)]) -> Chain {
    Chain {
        thickness: mm(0.6),
        inside_radius: mm(1.0),
        face,
        start: at(points[0].0, points[0].1),
        legs: points[1..].iter().map(|p| ChainLeg { name: "leg".into(), to: at(p.0, p.1) }).collect(),
        start_edge: Edge::Raw,
        end_edge: Edge::Raw,
        painted: Face::Upper,
    }
}

#[test]
fn a_chain_names_outer_and_inner_corners() {
    let z = chain(Face::Lower, &[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (60.0, 20.0)]).profile().unwrap();
    let ends: Vec<_> = z.legs.iter().map(|l| (l.start, l.end)).collect();
    assert_eq!(ends, [(LegEnd::SheetEdge, LegEnd::OuterCorner), (LegEnd::OuterCorner, LegEnd::InnerCorner), (LegEnd::InnerCorner, LegEnd::SheetEdge)]);
    assert_eq!((z.bends[0].direction, z.bends[1].direction), (Direction::Up, Direction::Down));
    // The other face of the same piece is the same metal.
    let other = chain(Face::Upper, &[(0.0, 0.6), (29.4, 0.6), (29.4, 20.6), (60.0, 20.6)]).profile().unwrap();
    assert_eq!(z.girth(&axis(0.4)).unwrap(), other.girth(&axis(0.4)).unwrap());
}

#[test]
fn a_chain_is_refused_where_it_does_not_turn() {
    for (points, path, word) in [
        (&[(0.0, 0.0), (30.0, 0.0), (60.0, 0.0), (60.0, 9.0)][..], "legs[0].to", "line"),
        (&[(0.0, 0.0), (30.0, 0.0), (60.0, 0.0005), (60.0, 9.0)], "legs[0].to", "line"),
        (&[(0.0, 0.0), (30.0, 0.0), (30.0, 9.0), (30.0, 3.0)], "legs[1].to", "back"),
        (&[(0.0, 0.0), (30.0, 0.0), (30.0, 0.0)], "legs[1].to", "on the one before"),
    ] {
        let e = chain(Face::Lower, points).profile().unwrap_err();
        assert_eq!(e.path(), path);
        assert!(e.message().contains(word), "{e}");
    }
    assert_eq!(chain(Face::Lower, &[(0.0, 0.0)]).profile().unwrap_err().path(), "legs");
    assert_eq!(chain(Face::Lower, &[(0.0, 0.0)]).placement().unwrap_err().path(), "legs");
}

#[cfg(feature = "serde")]
#[test]
fn a_chain_in_job_form() {
    let c = chain(Face::Lower, &[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0)]);
    let json = serde_json::to_string(&c).unwrap();
    assert!(json.contains(r#""to":{"x":"30 mm","y":"0 mm"}"#), "{json}");
    assert_eq!(serde_json::from_str::<Chain>(&json).unwrap(), c);
    let placed = c.placement().unwrap();
    assert_eq!(serde_json::from_str::<Placement>(&serde_json::to_string(&placed).unwrap()).unwrap(), placed);
}

pub(super) fn any_chain() -> impl Strategy<Value = Chain> {
    let turns = prop::collection::vec((prop_oneof![-140.0_f64..-2.0, 2.0_f64..140.0], 25.0_f64..90.0), 1..8);
    (turns, any::<bool>(), 200_i32..1500, 0_i32..2500, 0..3).prop_map(|(turns, upper, t, r, hem)| {
        let (mut x, mut y, mut heading) = (1_000_000.0, -500_000.0, 17.0);
        let mut points = vec![(x, y)];
        for (turn, length) in turns {
            x += length * crate::num::cos_deg(heading);
            y += length * crate::num::sin_deg(heading);
            points.push((x, y));
            heading += turn;
        }
        let face = if upper { Face::Upper } else { Face::Lower };
        let edge = match hem {
            0 => Edge::Raw,
            1 => Edge::closed_hem(mm(6.0), Direction::Up),
            _ => Edge::open_hem(mm(8.0), mm(3.0), Direction::Down),
        };
        Chain { thickness: Length::micrometres(t), inside_radius: Length::micrometres(r), start_edge: edge, ..chain(face, &points) }
    })
}

proptest! {
    /// Integrated along the folded section, the neutral line is as long as the blank is wide; under the neutral-axis rule its arcs lie where the factor says.
    #[test]
    fn the_neutral_line_is_the_girth(p in any_profile(), k in 0.0_f64..=1.0) {
        let flat = p.unfold(&axis(k)).unwrap();
        let o = flat.outline().unwrap();
        let mut total = crate::units::Sum::ZERO;
        for piece in o.neutral() {
            total += piece.length().unwrap();
        }
        prop_assert!((total.pm() - i128::from(flat.girth().pm())).abs() <= 6 * o.neutral().len() as i128, "{total:?}");
        for (piece, bend) in o.neutral().iter().filter(|p| p.arc.is_some()).zip(flat.bends()).filter(|(_, b)| b.rule.is_none()) {
            let radius = bend.inside_radius.get(LengthUnit::Millimetre) + k * p.thickness.get(LengthUnit::Millimetre);
            prop_assert!((piece.arc.unwrap().radius.get(LengthUnit::Millimetre) - radius).abs() < 1e-7);
        }
    }

    /// Each face is one unbroken curve; the faces are a thickness apart; arcs keep their radius; all lies in the box.
    #[test]
    fn faces_are_unbroken(p in any_profile()) {
        let flat = p.unfold(&axis(0.4)).unwrap();
        let o = flat.outline().unwrap();
        for face in [Face::Upper, Face::Lower] {
            for pair in o.face(face).windows(2) {
                prop_assert_eq!(pair[0].to, pair[1].from);
            }
            for piece in o.face(face) {
                if let Some(arc) = piece.arc {
                    prop_assert!((arc.centre.distance(piece.from).unwrap().pm() - arc.radius.pm()).abs() <= 3);
                    prop_assert!((arc.centre.distance(piece.to).unwrap().pm() - arc.radius.pm()).abs() <= 3);
                }
            }
        }
        for (a, b) in o.face(Face::Upper).iter().zip(o.face(Face::Lower)) {
            prop_assert!((apart(a.from, b.from) - p.thickness.pm()).abs() <= 3);
        }
        let b = o.bounds();
        let mut touched = [false; 4];
        for q in o.points(Length::micrometres(20)).unwrap() {
            prop_assert!(q.x.pm() >= b.least.x.pm() - 3 && q.x.pm() <= b.greatest.x.pm() + 3 && q.y.pm() >= b.least.y.pm() - 3 && q.y.pm() <= b.greatest.y.pm() + 3);
            // Chords fall short of the box by their tolerance at most.
            let near = |l: Length, m: Length| (l.pm() - m.pm()).abs() <= 20_000_010;
            for (t, hit) in touched.iter_mut().zip([near(q.x, b.least.x), near(q.x, b.greatest.x), near(q.y, b.least.y), near(q.y, b.greatest.y)]) {
                *t |= hit;
            }
        }
        prop_assert_eq!(touched, [true; 4]);
    }

    /// Folding what was unfolded: the outline of the chain's profile lies on the vertices that the chain was given, far from the origin too.
    #[test]
    fn a_chain_folds_back_onto_its_vertices(c in any_chain()) {
        let p = c.profile().unwrap();
        let o = p.unfold(&axis(0.4)).unwrap().outline_at(&c.placement().unwrap()).unwrap();
        let pieces = o.face(c.face);
        prop_assert!(apart(pieces.last().unwrap().to, c.legs.last().unwrap().to) <= 2000, "{}", apart(pieces.last().unwrap().to, c.legs.last().unwrap().to));
        let skip = usize::from(!c.start_edge.is_raw());
        let mut from = c.start;
        for (i, leg) in c.legs.iter().enumerate() {
            // Both ends of the flat part lie on the line through the two vertices.
            let line = pieces[2 * (i + skip)];
            let (dx, dy) = (leg.to.x.get(LengthUnit::Millimetre) - from.x.get(LengthUnit::Millimetre), leg.to.y.get(LengthUnit::Millimetre) - from.y.get(LengthUnit::Millimetre));
            for q in [line.from, line.to] {
                let (x, y) = ((q.x - from.x).length().unwrap().get(LengthUnit::Millimetre), (q.y - from.y).length().unwrap().get(LengthUnit::Millimetre));
                prop_assert!((dx * y - dy * x).abs() / crate::num::hypot(dx, dy) < 1e-6);
            }
            from = leg.to;
        }
    }

    /// The other end first, seen from the other end: the mirror image of the section.
    #[test]
    fn turned_end_for_end_the_section_is_the_same(p in any_profile()) {
        let one = p.unfold(&axis(0.4)).unwrap().outline().unwrap();
        let two = p.reversed().unfold(&axis(0.4)).unwrap().outline().unwrap();
        let ends = |o: &Outline| {
            let f = o.face(Face::Upper);
            apart(f.first().unwrap().from, f.last().unwrap().to)
        };
        prop_assert!((ends(&one) - ends(&two)).abs() <= 200, "{} {}", ends(&one), ends(&two));
    }
}
