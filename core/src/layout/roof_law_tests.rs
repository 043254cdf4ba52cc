//! One roof, wherever it stands, whichever way it is turned and however it is numbered, takes the same panels.

use super::test_shapes::panel;
use super::{EdgeUse, LaidPlane, Layout, Start};
use crate::num;
use crate::panel::PanelEnd;
use crate::record::Calculation;
use crate::roof::{LineKind, PlaneInput, Roof, RoofInput, Shape, Vertex};
use crate::units::Length;
use proptest::prelude::*;

/// A tip over a ring of eave corners that it sees all of: hips at the corners that stand out, valleys at those that stand in.
#[derive(Debug, Clone)]
struct Tent {
    corners: Vec<Vertex>,
    tip: Vertex,
}

fn mm(n: f64) -> Length {
    Length::from_mm(n).unwrap()
}

fn tents() -> impl Strategy<Value = Tent> {
    (prop::collection::vec((4.0..14.0_f64, -0.2..0.2_f64), 3..8), 1.2..7.0_f64, 0.0..360.0_f64).prop_map(|(corners, height, turn)| {
        let n = corners.len() as f64;
        let corner = |(k, (r, off)): (usize, &(f64, f64))| {
            let a = turn + 360.0 * (k as f64 + off) / n;
            Vertex::new(mm(1e3 * r * num::cos_deg(a)), mm(1e3 * r * num::sin_deg(a)), Length::ZERO)
        };
        Tent { corners: corners.iter().enumerate().map(corner).collect(), tip: Vertex::new(mm(0.0), mm(0.0), mm(1e3 * height)) }
    })
}

/// Its planes, after the map; `mirrored` turns their rings round.
fn planes(tent: &Tent, map: impl Fn(Vertex) -> Vertex, mirrored: bool) -> Vec<PlaneInput> {
    let next = tent.corners.iter().cycle().skip(1);
    let of = |(k, (a, b)): (usize, (&Vertex, &Vertex))| {
        let mut outer = vec![map(*a), map(*b), map(tent.tip)];
        if mirrored {
            outer.reverse();
        }
        PlaneInput { name: k.to_string(), shape: Shape::Space { outer, holes: vec![], flatness: None } }
    };
    tent.corners.iter().zip(next).enumerate().map(of).collect()
}

fn end(kind: LineKind) -> PanelEnd {
    match kind {
        LineKind::Eave => PanelEnd::overhang(Length::inches(1)).with_fold(Length::inches(1)),
        LineKind::Hip => PanelEnd::hold_back(Length::inches_64(96)).with_turn_up(Length::inches(1)).with_field_trim(Length::inches(2)),
        _ => PanelEnd::hold_back(Length::inches(4)).with_fold(Length::inches(1)),
    }
}

/// How a plane starts: where, and at which share of its width a datum lies.
#[derive(Debug, Clone, Copy)]
enum From {
    Left,
    CentreSeam,
    Datum(i32),
}

impl From {
    fn start(self, width: Length, mirrored: bool) -> Start {
        match (self, mirrored) {
            (From::Left, false) => Start::Left,
            (From::Left, true) => Start::Right,
            (From::CentreSeam, _) => Start::CentreSeam,
            (From::Datum(um), false) => Start::Datum(Length::micrometres(um)),
            (From::Datum(um), true) => Start::Datum((width - Length::micrometres(um)).length().unwrap()),
        }
    }
}

/// The panels of every plane, in the order of the planes' names.
fn laid(planes: Vec<PlaneInput>, coverage: i32, from: From, mirrored: bool) -> Vec<LaidPlane> {
    let roof: Roof = RoofInput::new(planes).compute().unwrap();
    let mut uses: Vec<Vec<EdgeUse>> = roof.planes().iter().map(|p| vec![EdgeUse::Side; p.outline().edge_count()]).collect();
    for line in roof.lines() {
        for side in line.sides() {
            // Almost along the seams no panel ends.
            if side.meeting_angle.degrees() > 2.0 {
                uses[side.plane][side.edge] = EdgeUse::End(end(line.kind));
            }
        }
    }
    let mut out: Vec<(String, LaidPlane)> = roof
        .planes()
        .iter()
        .zip(uses)
        .map(|(p, uses)| {
            let width = p.outline().bounds().width().unwrap();
            let mut uses = uses.into_iter();
            let layout = Layout::new(p.outline().clone(), panel(coverage), from.start(width, mirrored), |_| uses.next().unwrap()).unwrap();
            (p.name().to_owned(), layout.compute().unwrap())
        })
        .collect();
    out.sort_by(|a, b| a.0.cmp(&b.0));
    out.into_iter().map(|(_, laid)| laid).collect()
}

type Lengths = (Length, Length, Length, Length, Option<Length>, Option<Length>);

/// Every length of every panel, from the left; of a mirrored roof from the right, its sides changed.
fn lengths(laid: &[LaidPlane], mirrored: bool) -> Vec<Vec<Lengths>> {
    laid.iter()
        .map(|l| {
            let mut of: Vec<Lengths> = l
                .panels
                .iter()
                .map(|p| {
                    let (left, right) = if mirrored { (p.right_length, p.left_length) } else { (p.left_length, p.right_length) };
                    (p.width, p.finished, p.blank, p.order, left, right)
                })
                .collect();
            of.sort();
            of
        })
        .collect()
}

fn starts() -> impl Strategy<Value = From> {
    prop_oneof![Just(From::Left), Just(From::CentreSeam), (-2_000_000..20_000_000_i32).prop_map(From::Datum)]
}

/// What a map's coordinates are: a few hundred kilometres east, some thousand north.
fn map_offsets() -> impl Strategy<Value = [i64; 3]> {
    [100_000_000_000_000_000..900_000_000_000_000_000_i64, 1_000_000_000_000_000_000..6_000_000_000_000_000_000_i64, 0..3_000_000_000_000_000_i64]
}

fn moved(v: Vertex, by: [i64; 3]) -> Vertex {
    let one = |l: Length, by: i64| (l + Length::from_pm(by)).length().unwrap();
    Vertex::new(one(v.x, by[0]), one(v.y, by[1]), one(v.z, by[2]))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn moved_mirrored_and_renumbered_roofs_take_the_same_panels(
        tent in tents(), coverage in 250_000..700_000_i32, from in starts(), by in map_offsets(), shift in 0..8_usize
    ) {
        let here = planes(&tent, |v| v, false);
        let expected = lengths(&laid(here.clone(), coverage, from, false), false);

        prop_assert_eq!(&lengths(&laid(planes(&tent, |v| moved(v, by), false), coverage, from, false), false), &expected);

        let mirror = |v: Vertex| Vertex::new((-v.x).length().unwrap(), v.y, v.z);
        prop_assert_eq!(&lengths(&laid(planes(&tent, mirror, true), coverage, from, true), true), &expected);
        prop_assert_eq!(&lengths(&laid(planes(&tent, |v| moved(mirror(v), by), true), coverage, from, true), true), &expected);

        let mut shuffled = here;
        let count = shuffled.len();
        shuffled.rotate_left(shift % count);
        shuffled.swap(0, count - 1);
        for (i, p) in shuffled.iter_mut().enumerate() {
            if let Shape::Space { outer, .. } = &mut p.shape {
                outer.rotate_left(i % 3);
            }
        }
        prop_assert_eq!(&lengths(&laid(shuffled, coverage, from, false), false), &expected);
    }

    #[test]
    fn a_turned_roof_takes_the_same_panels_within_a_nanometre_and_orders_the_same(
        tent in tents(), coverage in 250_000..700_000_i32, from in starts(), turn in 0.0..360.0_f64, by in map_offsets()
    ) {
        let here = lengths(&laid(planes(&tent, |v| v, false), coverage, from, false), false);
        let (c, s) = (num::cos_deg(turn), num::sin_deg(turn));
        // The corners are rounded to the picometre where they stand.
        let spin = |v: Vertex| Vertex::new(mm(c * v.x.mm() - s * v.y.mm()), mm(s * v.x.mm() + c * v.y.mm()), v.z);
        for there in [planes(&tent, spin, false), planes(&tent, |v| moved(spin(v), by), false)] {
            let there = lengths(&laid(there, coverage, from, false), false);
            prop_assert_eq!(here.len(), there.len());
            for (a, b) in here.iter().flatten().zip(there.iter().flatten()) {
                let near = |a: Length, b: Length| (a - b).pm().abs() <= 1_000;
                prop_assert!(near(a.0, b.0) && near(a.1, b.1) && near(a.2, b.2), "{a:?} and {b:?}");
                prop_assert!(near(a.4.unwrap_or_default(), b.4.unwrap_or_default()) && near(a.5.unwrap_or_default(), b.5.unwrap_or_default()));
                prop_assert_eq!(a.3, b.3);
            }
            prop_assert_eq!(here.iter().map(Vec::len).collect::<Vec<_>>(), there.iter().map(Vec::len).collect::<Vec<_>>());
        }
    }
}
