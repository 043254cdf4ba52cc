use super::test_shapes::{bare, outline, panel, shapes};
use super::{Layout, PolygonArrays, Start, strips};
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::roof::Outline;
use crate::units::{AreaUnit, Length, LengthArray, LengthUnit};
use proptest::prelude::*;

/// As GeoArrow has it: rings closed.
fn ragged(outlines: &[Outline], unit: LengthUnit) -> (Vec<f64>, Vec<usize>, Vec<usize>) {
    let (mut coordinates, mut rings, mut polygons) = (Vec::new(), vec![0], vec![0]);
    for o in outlines {
        for ring in o.rings() {
            coordinates.extend(ring.iter().chain(ring.first()).flat_map(|p| [p.x.get(unit), p.y.get(unit)]));
            rings.push(coordinates.len() / 2);
        }
        polygons.push(rings.len() - 1);
    }
    (coordinates, rings, polygons)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn strips_are_those_of_the_layouts(shapes in prop::collection::vec(shapes(), 1..4), coverage in 150_000..900_000_i32, start in 0..4_usize) {
        let start = [Start::Left, Start::Right, Start::CentreSeam, Start::Datum(Length::inches(7))][start];
        let outlines: Vec<Outline> = shapes.iter().map(|s| outline(s, (0, 0))).collect();
        let (values, rings, polygons) = ragged(&outlines, LengthUnit::Millimetre);
        let coordinates = LengthArray { values: &values, unit: LengthUnit::Millimetre };
        let found = strips(PolygonArrays { coordinates, rings: &rings, polygons: &polygons }, Length::micrometres(coverage), start, LengthUnit::Inch).unwrap();
        let mut at = 0;
        for (k, o) in outlines.iter().enumerate() {
            for p in Layout::new(o.clone(), panel(coverage), start, bare).unwrap().compute().unwrap().panels {
                let numbers = [found.polygon[at], found.strip[at], found.run[at]].map(|n| usize::try_from(n).unwrap());
                prop_assert_eq!(numbers, [k, p.strip, p.run]);
                let near = |a: f64, b: Length| (a - b.get(LengthUnit::Inch)).abs() < 1e-9;
                prop_assert!(near(found.left[at], p.left) && near(found.right[at], p.right));
                prop_assert!(near(found.clear[at], p.finished) && near(found.head[at] - found.foot[at], p.blank));
                prop_assert!((found.area[at] - p.covered.get(AreaUnit::SquareInch)).abs() < 1e-9 * (1.0 + found.area[at]));
                at += 1;
            }
        }
        prop_assert_eq!(at, found.area.len());
        prop_assert!([found.left.len(), found.foot.len(), found.polygon.len(), found.run.len(), found.strip.len(), found.clear.len()].iter().all(|&n| n == at));
    }
}

#[test]
fn every_bad_array_and_polygon_is_named() {
    let square = [0.0, 0.0, 1.0, 0.0, 1.0, 1.0, 0.0, 1.0];
    let of = |values: &[f64], rings: &[usize], polygons: &[usize], coverage: i16| {
        let coordinates = LengthArray { values, unit: LengthUnit::Metre };
        strips(PolygonArrays { coordinates, rings, polygons }, Length::inches(coverage), Start::Left, LengthUnit::Metre)
    };
    let told = |e: crate::error::Error| core::iter::once(&e).chain(e.others()).map(|e| (e.kind(), e.path().to_owned())).collect::<Vec<_>>();
    assert_eq!(
        told(of(&square[..7], &[0, 9], &[], 0).unwrap_err()),
        [
            (ErrorKind::OutOfRange, "coverage".to_owned()),
            (ErrorKind::Conflict, "coordinates".to_owned()),
            (ErrorKind::Conflict, "rings[1]".to_owned()),
            (ErrorKind::Missing, "polygons".to_owned()),
        ]
    );
    assert_eq!(told(of(&square, &[0, 4, 3], &[0, 1], 16).unwrap_err()), [(ErrorKind::Conflict, "rings[2]".to_owned())]);
    // The second crosses itself, the third has a number that is none, the fourth no ring.
    let mut all = square.to_vec();
    all.extend([0.0, 0.0, 1.0, 1.0, 1.0, 0.0, 0.0, 1.5]);
    all.extend([0.0, 0.0, 1.0, 0.0, f64::NAN, 1.0]);
    let e = told(of(&all, &[0, 4, 8, 11], &[0, 1, 2, 3, 3], 16).unwrap_err());
    assert_eq!(
        e,
        [
            (ErrorKind::Geometry, "polygons[1].outer[0]".to_owned()),
            (ErrorKind::NotFinite, "polygons[2].outer[2].x".to_owned()),
            (ErrorKind::Geometry, "polygons[3].outer".to_owned()),
        ]
    );
    let none = of(&[], &[0], &[0], 16).unwrap();
    assert!(none.area.is_empty());
}
