//! Roofs that the tests share. Coordinates are whole feet unless scaled.

use super::{PlaneInput, Point, Roof, RoofInput, Shape, Vertex, Wall};
use crate::pitch::Pitch;
use crate::record::Calculation;
use crate::units::{Angle, Length};

pub(super) fn ft(n: f64) -> Length {
    Length::from_mm(n * 304.8).unwrap()
}

pub(super) fn pt(x: f64, y: f64) -> Point {
    Point::new(ft(x), ft(y))
}

pub(super) fn plane(name: &str, outer: &[(f64, f64)], pitch: &str, fall: f64, anchor: (f64, f64, f64)) -> PlaneInput {
    let shape = Shape::Plan {
        outer: outer.iter().map(|&(x, y)| pt(x, y)).collect(),
        holes: vec![],
        pitch: Pitch::parse(pitch).unwrap(),
        down_slope: Angle::degrees_from(fall).unwrap(),
        anchor: Vertex::new(ft(anchor.0), ft(anchor.1), ft(anchor.2)),
    };
    PlaneInput { name: name.into(), shape }
}

pub(super) fn wall(name: &str, from: (f64, f64), to: (f64, f64)) -> Wall {
    Wall::new(name, pt(from.0, from.1), pt(to.0, to.1))
}

pub(super) fn roof(planes: Vec<PlaneInput>) -> Roof {
    RoofInput::new(planes).compute().unwrap()
}

/// 40 by 20, ridge along x.
pub(super) fn gable() -> Vec<PlaneInput> {
    vec![
        plane("south", &[(0.0, 0.0), (40.0, 0.0), (40.0, 10.0), (0.0, 10.0)], "6:12", 270.0, (0.0, 0.0, 9.0)),
        plane("north", &[(40.0, 20.0), (0.0, 20.0), (0.0, 10.0), (40.0, 10.0)], "6:12", 90.0, (0.0, 20.0, 9.0)),
    ]
}

/// 40 by 20, ridge of 20.
pub(super) fn hip() -> Vec<PlaneInput> {
    vec![
        plane("south", &[(0.0, 0.0), (40.0, 0.0), (30.0, 10.0), (10.0, 10.0)], "6:12", 270.0, (0.0, 0.0, 9.0)),
        plane("east", &[(40.0, 0.0), (40.0, 20.0), (30.0, 10.0)], "6:12", 0.0, (40.0, 0.0, 9.0)),
        plane("north", &[(40.0, 20.0), (0.0, 20.0), (10.0, 10.0), (30.0, 10.0)], "6:12", 90.0, (0.0, 20.0, 9.0)),
        plane("west", &[(0.0, 20.0), (0.0, 0.0), (10.0, 10.0)], "6:12", 180.0, (0.0, 0.0, 9.0)),
    ]
}

/// A gable of length `long` and half width `half`, with a wing of the same width at `at`, sticking out by `out`; the main ridge is one edge of the
/// north plane and two of the south planes.
pub(super) fn tee(long: f64, half: f64, at: f64, out: f64) -> Vec<PlaneInput> {
    let (left, mid, right) = (at, at + half, at + 2.0 * half);
    vec![
        plane("north", &[(0.0, half), (long, half), (long, 2.0 * half), (0.0, 2.0 * half)], "6:12", 90.0, (0.0, 2.0 * half, 9.0)),
        plane("south west", &[(0.0, 0.0), (left, 0.0), (mid, half), (0.0, half)], "6:12", 270.0, (0.0, 0.0, 9.0)),
        plane("south east", &[(right, 0.0), (long, 0.0), (long, half), (mid, half)], "6:12", 270.0, (0.0, 0.0, 9.0)),
        plane("wing west", &[(left, -out), (mid, -out), (mid, half), (left, 0.0)], "6:12", 180.0, (left, 0.0, 9.0)),
        plane("wing east", &[(mid, -out), (right, -out), (right, 0.0), (mid, half)], "6:12", 0.0, (right, 0.0, 9.0)),
    ]
}

/// Two planes of one fall, the lower 10 deep and the upper 8.
pub(super) fn transition(lower: &str, upper: &str) -> Vec<PlaneInput> {
    let rise = 10.0 * Pitch::parse(lower).unwrap().ratio();
    vec![
        plane("lower", &[(0.0, 0.0), (30.0, 0.0), (30.0, 10.0), (0.0, 10.0)], lower, 270.0, (0.0, 0.0, 9.0)),
        plane("upper", &[(0.0, 10.0), (30.0, 10.0), (30.0, 18.0), (0.0, 18.0)], upper, 270.0, (0.0, 10.0, 9.0 + rise)),
    ]
}
