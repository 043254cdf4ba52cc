//! Triangles over random heights: every inner edge is one line, and its bend and water agree with the corners opposite to it.

use super::{PlaneInput, Roof, RoofInput, Shape, Vertex, Water};
use crate::record::Calculation;
use crate::units::Length;
use proptest::prelude::*;

const SIDE: usize = 4;

fn terrain(jitter: &[(i32, i32, i32)]) -> Vec<[Vertex; 3]> {
    let at = |i: usize, j: usize| {
        let (dx, dy, dz) = jitter[i * SIDE + j];
        let um = |n: usize, d: i32| Length::micrometres(i32::try_from(n).unwrap() * 5_000_000 + d);
        Vertex::new(um(i, dx), um(j, dy), Length::micrometres(dz))
    };
    let mut out = Vec::new();
    for i in 0..SIDE - 1 {
        for j in 0..SIDE - 1 {
            out.push([at(i, j), at(i + 1, j), at(i + 1, j + 1)]);
            out.push([at(i, j), at(i + 1, j + 1), at(i, j + 1)]);
        }
    }
    out
}

fn mm(v: Vertex) -> [f64; 3] {
    [v.x.mm(), v.y.mm(), v.z.mm()]
}

/// The corner of a triangle that is on neither end of a line.
fn opposite(triangle: &[Vertex; 3], start: Vertex, end: Vertex) -> Vertex {
    *triangle.iter().find(|v| **v != start && **v != end).unwrap()
}

/// Six times the volume over the triangle `a b c` of the corner `d`: more than 0 where it stands above it, `a b c` being counter-clockwise.
fn above([a, b, c, d]: [Vertex; 4]) -> f64 {
    let o = mm(a);
    let [b, c, d] = [b, c, d].map(|v| {
        let v = mm(v);
        [v[0] - o[0], v[1] - o[1], v[2] - o[2]]
    });
    d[0] * (b[1] * c[2] - b[2] * c[1]) + d[1] * (b[2] * c[0] - b[0] * c[2]) + d[2] * (b[0] * c[1] - b[1] * c[0])
}

/// Height of a corner over the foot of its perpendicular on the line.
fn over_foot(start: Vertex, end: Vertex, corner: Vertex) -> f64 {
    let (a, b, c) = (mm(start), mm(end), mm(corner));
    let d = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
    let e = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
    let t = (d[0] * e[0] + d[1] * e[1] + d[2] * e[2]) / (d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
    e[2] - t * d[2]
}

fn roof_of(triangles: &[[Vertex; 3]]) -> Roof {
    let planes = triangles.iter().enumerate().map(|(i, t)| PlaneInput {
        name: format!("triangle {i}"),
        shape: Shape::Space { outer: t.to_vec(), holes: vec![], flatness: Some(Length::from_pm(1000)) },
    });
    RoofInput::new(planes.collect()).compute().unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn lines_agree_with_the_corners_opposite(
        jitter in prop::collection::vec((-1_400_000_i32..1_400_000, -1_400_000_i32..1_400_000, 0_i32..9_000_000), SIDE * SIDE)
    ) {
        let triangles = terrain(&jitter);
        let r = roof_of(&triangles);
        let n = SIDE - 1;
        let inner = n * n + 2 * n * (n - 1);
        prop_assert_eq!((r.lines().len(), r.lines().iter().filter(|l| l.other().is_some()).count()), (inner + 4 * n, inner));
        for line in r.lines() {
            for side in line.sides() {
                let corner = opposite(&triangles[side.plane], line.start, line.end);
                let rise = over_foot(line.start, line.end, corner);
                match side.water {
                    Water::Away => prop_assert!(rise < 0.0, "{} {rise}", line.name),
                    Water::Toward => prop_assert!(rise > 0.0, "{} {rise}", line.name),
                    Water::Along => prop_assert!(rise.abs() < 200.0, "{} {rise}", line.name),
                }
                prop_assert!((side.meeting_angle.degrees() + side.skew.degrees().abs() - 90.0).abs() < 1e-12);
            }
            if let Some(other) = line.other() {
                let [a, b, c] = triangles[line.side.plane];
                let d = opposite(&triangles[other.plane], line.start, line.end);
                let height = above([a, b, c, d]);
                let bend = line.bend().unwrap().degrees();
                prop_assert!(height.abs() < 1.0 || (height < 0.0) == (bend > 0.0), "{} {height} {bend}", line.name);
                prop_assert!((bend.abs() + line.dihedral.unwrap().degrees() - 180.0).abs() < 1e-9);
            }
        }
        let area: f64 = triangles.iter().map(|t| {
            let [a, b, c] = t.map(mm);
            let (u, v) = ([b[0] - a[0], b[1] - a[1], b[2] - a[2]], [c[0] - a[0], c[1] - a[1], c[2] - a[2]]);
            let (x, y, z) = (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]);
            0.5 * (x * x + y * y + z * z).sqrt()
        }).sum();
        approx::assert_relative_eq!(r.area().get(crate::units::AreaUnit::SquareMillimetre), area, max_relative = 1e-12);
    }
}
