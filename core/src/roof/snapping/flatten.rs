//! Faces made flat without parting from their neighbours.

use super::rings::{Face, Faces};
use super::snap::FlattenedFace;
use crate::error::{Error, ErrorKind, Faults};
use crate::num::space::{V3, cross, dot, norm, scale, sub};
use crate::units::Length;

/// Rounds of fitting planes and moving nodes onto them, at most.
const MOST_ROUNDS: usize = 500;
/// Faces are flat when no node is farther off, in millimetres: a tenth of a nanometre.
const FLAT_MM: f64 = 1e-7;
/// Holds a node where its planes cross so flatly that they would throw it far away.
const HOLD: f64 = 1e-4;

/// The plane through a face: its unit normal from the area, through the mean of its outer nodes.
fn plane_of(faces: &Faces<'_>, face: &Face) -> Option<(V3, f64)> {
    let outer = &face.rings.first()?.nodes;
    let first = faces.node(*outer.first()?);
    let (mut area, mut mean, mut count) = ([0.0; 3], [0.0; 3], 0.0);
    for (a, b) in outer.iter().zip(outer.iter().cycle().skip(1)) {
        let (p, q) = (sub(faces.node(*a), first), sub(faces.node(*b), first));
        let c = cross(p, q);
        area = [area[0] + c[0], area[1] + c[1], area[2] + c[2]];
        mean = [mean[0] + p[0], mean[1] + p[1], mean[2] + p[2]];
        count += 1.0;
    }
    let size = norm(area);
    let normal = (size > 0.0).then(|| scale(area, 1.0 / size))?;
    let mean = [first[0] + mean[0] / count, first[1] + mean[1] / count, first[2] + mean[2] / count];
    Some((normal, dot(normal, mean)))
}

fn off(faces: &Faces<'_>, face: &Face, plane: (V3, f64)) -> (f64, usize) {
    face.nodes().map(|n| ((dot(plane.0, faces.node(n)) - plane.1).abs(), n)).fold((0.0, 0), |m, o| if o.0 > m.0 { o } else { m })
}

pub(super) fn flattened(faces: &mut Faces<'_>, flatness: Length) -> Result<Vec<FlattenedFace>, Error> {
    let mut faults = Faults::default();
    let mut before = Vec::new();
    for face in &faces.faces {
        let Some(plane) = plane_of(faces, face) else {
            let said = Error::new(ErrorKind::Geometry, format!("{} encloses no area", faces.name(face.plane)));
            faults.add(said.at(format!("roof.planes[{}]", face.plane)).value_of(Length::ZERO).accepts("a face with an area"));
            continue;
        };
        let (most, node) = off(faces, face, plane);
        before.push(most);
        if most > flatness.mm() {
            let at = faces.starts.iter().find(|s| s.node == node && s.plane == face.plane);
            let path = at.map_or_else(|| format!("roof.planes[{}]", face.plane), |s| faces.path(s.plane, s.ring, s.vertex));
            faults.add(
                Error::new(ErrorKind::Geometry, format!("{} is not flat: this vertex lies off its plane", faces.name(face.plane)))
                    .at(path)
                    .value_of(Length::from_mm(most)?)
                    .accepts(format!("at most {flatness}"))
                    .cured_by("split the face into planes, or allow more flatness"),
            );
        }
    }
    faults.check()?;
    let mut of_node: Vec<Vec<usize>> = vec![Vec::new(); faces.nodes.len()];
    for (number, face) in faces.faces.iter().enumerate() {
        for node in face.nodes() {
            if let Some(list) = of_node.get_mut(node).filter(|l| !l.contains(&number)) {
                list.push(number);
            }
        }
    }
    for _ in 0..MOST_ROUNDS {
        let planes: Vec<(V3, f64)> = faces.faces.iter().map(|f| plane_of(faces, f).unwrap_or(([0.0; 3], 0.0))).collect();
        let worst = faces.faces.iter().zip(&planes).map(|(f, p)| off(faces, f, *p).0).fold(0.0, f64::max);
        if worst <= FLAT_MM {
            break;
        }
        for (node, of) in of_node.iter().enumerate() {
            let here = faces.node(node);
            let own: Vec<(V3, f64)> = of.iter().filter_map(|f| planes.get(*f)).map(|(n, d)| (*n, d - dot(*n, here))).collect();
            let step = nearest(&own);
            if let Some(place) = faces.nodes.get_mut(node) {
                *place = [here[0] + step[0], here[1] + step[1], here[2] + step[2]];
            }
        }
    }
    let mut out = Vec::new();
    for (face, off_before) in faces.faces.iter().zip(before) {
        if off_before > FLAT_MM * 10.0 {
            let after = plane_of(faces, face).map_or(0.0, |p| off(faces, face, p).0);
            let (off_before, off_after) = (Length::from_mm(off_before)?, Length::from_mm(after)?);
            out.push(FlattenedFace { plane: faces.name(face.plane).to_owned(), off_before, off_after });
        }
    }
    Ok(out)
}

/// The least step that comes onto all planes, each by its normal and its distance; held where they cross flatly.
fn nearest(planes: &[(V3, f64)]) -> V3 {
    let mut m = [[HOLD, 0.0, 0.0], [0.0, HOLD, 0.0], [0.0, 0.0, HOLD]];
    let mut right = [0.0; 3];
    for (n, d) in planes {
        for (row, a) in m.iter_mut().zip(n) {
            for (cell, b) in row.iter_mut().zip(n) {
                *cell += a * b;
            }
        }
        for (r, a) in right.iter_mut().zip(n) {
            *r += a * d;
        }
    }
    // Cramer's rule; the matrix is positive, and so is its determinant.
    let whole = dot(m[0], cross(m[1], m[2]));
    let inverse = [cross(m[1], m[2]), cross(m[2], m[0]), cross(m[0], m[1])];
    [0, 1, 2].map(|i: usize| inverse.iter().zip(&right).map(|(c, r)| c.get(i).copied().unwrap_or(0.0) * r).sum::<f64>() / whole)
}
