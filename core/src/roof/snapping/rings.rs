//! Faces as rings of shared nodes.

use super::snap::{DroppedVertex, SplitEdge};
use crate::error::{Error, ErrorKind, Faults};
use crate::num::space::{V3, dot, norm, scale, sub};
use crate::roof::clusters::{clusters, widest};
use crate::roof::{PlaneInput, Shape, Vertex};
use crate::units::Length;
use std::collections::{BTreeMap, BTreeSet};

/// Nodes along an edge, each with how far along.
type Stations = Vec<(f64, usize)>;

/// Where a given vertex was, and the node that it became.
pub(super) struct Start {
    pub(super) plane: usize,
    pub(super) ring: usize,
    pub(super) vertex: usize,
    pub(super) node: usize,
    pub(super) at: V3,
}

pub(super) struct Ring {
    /// The name of the hole; empty for the outer ring.
    pub(super) name: String,
    pub(super) nodes: Vec<usize>,
    /// The number of each as given; none where it was put in.
    given: Vec<Option<usize>>,
}

impl Ring {
    /// Another ring in its place, no vertex of which is numbered as given.
    pub(super) fn replace(&mut self, nodes: Vec<usize>) {
        self.given = vec![None; nodes.len()];
        self.nodes = nodes;
    }

    /// Whether the node was put in and not given.
    pub(super) fn is_put_in(&self, node: usize) -> bool {
        self.nodes.iter().zip(&self.given).any(|(n, given)| *n == node && given.is_none())
    }

    pub(super) fn leave_out(&mut self, node: usize) {
        if let Some(at) = self.nodes.iter().position(|n| *n == node) {
            self.nodes.remove(at);
            self.given.remove(at);
        }
    }

    /// Whether it is the ring of faces that were merged.
    pub(super) fn was_merged(&self) -> bool {
        !self.given.is_empty() && self.given.iter().all(Option::is_none)
    }
}

pub(super) struct Face {
    pub(super) plane: usize,
    pub(super) rings: Vec<Ring>,
}

impl Face {
    pub(super) fn nodes(&self) -> impl Iterator<Item = usize> {
        self.rings.iter().flat_map(|r| r.nodes.iter().copied())
    }
}

pub(super) struct Faces<'a> {
    planes: &'a [PlaneInput],
    origin: Vertex,
    /// Places in millimetres from the first vertex.
    pub(super) nodes: Vec<V3>,
    pub(super) faces: Vec<Face>,
    pub(super) starts: Vec<Start>,
}

impl<'a> Faces<'a> {
    /// Vertices within the tolerance are one node, in the mean of them.
    pub(super) fn new(planes: &'a [PlaneInput], given: &[Vec<Vec<Vertex>>], tolerance: Length) -> Result<Faces<'a>, Error> {
        let origin = given.iter().flatten().flatten().next().copied().unwrap_or_default();
        let mut starts = Vec::new();
        for (plane, rings) in given.iter().enumerate() {
            for (ring, vertices) in rings.iter().enumerate() {
                for (vertex, v) in vertices.iter().enumerate() {
                    starts.push(Start { plane, ring, vertex, node: 0, at: v.from(origin) });
                }
            }
        }
        let roots = clusters(&starts.iter().map(|s| s.at).collect::<Vec<_>>(), tolerance.mm());
        let mut number = vec![usize::MAX; roots.len()];
        let mut sums: Vec<(V3, f64)> = Vec::new();
        for (start, root) in starts.iter_mut().zip(&roots) {
            let Some(node) = number.get_mut(*root) else { continue };
            if *node == usize::MAX {
                *node = sums.len();
                sums.push(([0.0; 3], 0.0));
            }
            start.node = *node;
            if let Some((sum, count)) = sums.get_mut(*node) {
                *sum = [sum[0] + start.at[0], sum[1] + start.at[1], sum[2] + start.at[2]];
                *count += 1.0;
            }
        }
        let nodes: Vec<V3> = sums.iter().map(|(sum, count)| scale(*sum, 1.0 / count)).collect();
        let mut faces = Faces { planes, origin, nodes, faces: Vec::new(), starts };
        faces.check_chains(tolerance)?;
        let mut rest = faces.starts.iter();
        for (plane, rings) in given.iter().enumerate() {
            let names: Vec<String> = match planes.get(plane).map(|p| &p.shape) {
                Some(Shape::Plan { holes, .. }) => holes.iter().map(|h| h.name.clone()).collect(),
                Some(Shape::Space { holes, .. }) => holes.iter().map(|h| h.name.clone()).collect(),
                None => Vec::new(),
            };
            let names = core::iter::once(String::new()).chain(names);
            let rings = rings
                .iter()
                .zip(names)
                .map(|(vertices, name)| Ring {
                    name,
                    nodes: rest.by_ref().take(vertices.len()).map(|s| s.node).collect(),
                    given: (0..vertices.len()).map(Some).collect(),
                })
                .collect();
            faces.faces.push(Face { plane, rings });
        }
        Ok(faces)
    }

    pub(super) fn name(&self, plane: usize) -> &str {
        self.planes.get(plane).map_or("", |p| p.name.as_str())
    }

    pub(super) fn node(&self, node: usize) -> V3 {
        self.nodes.get(node).copied().unwrap_or_default()
    }

    pub(super) fn vertex(&self, node: usize) -> Result<Vertex, Error> {
        let [x, y, z] = self.node(node);
        let one = |o: Length, d: f64| (o + Length::from_mm(d)?).length();
        Ok(Vertex::new(one(self.origin.x, x)?, one(self.origin.y, y)?, one(self.origin.z, z)?))
    }

    pub(super) fn path(&self, plane: usize, ring: usize, vertex: usize) -> String {
        let form = if let Some(Shape::Plan { .. }) = self.planes.get(plane).map(|p| &p.shape) { "plan" } else { "space" };
        let ring = if ring == 0 { "outer".to_owned() } else { format!("holes[{}].ring", ring - 1) };
        format!("roof.planes[{plane}].shape.{form}.{ring}[{vertex}]")
    }

    /// Vertices that are one only by others between them must not be far from where they meet.
    fn check_chains(&self, tolerance: Length) -> Result<(), Error> {
        let mut faults = Faults::default();
        for s in &self.starts {
            let off = norm(sub(self.node(s.node), s.at));
            if off > tolerance.mm() {
                let said = Error::new(
                    ErrorKind::Geometry,
                    format!("vertices lie in a chain, each near the next: this one of {} is far from their middle", self.name(s.plane)),
                );
                let said = said.at(self.path(s.plane, s.ring, s.vertex)).value_of(Length::from_mm(off)?).accepts(format!("at most {tolerance}"));
                faults.add(said.cured_by("give a smaller tolerance"));
            }
        }
        faults.check()
    }

    /// Leaves out vertices that came to lie on their neighbour, and spikes.
    pub(super) fn drop_repeated(&mut self) -> Result<Vec<DroppedVertex>, Error> {
        let (mut dropped, mut faults) = (Vec::new(), Faults::default());
        let planes = self.planes;
        for face in &mut self.faces {
            let name = planes.get(face.plane).map_or("", |p| p.name.as_str());
            for (number, ring) in face.rings.iter_mut().enumerate() {
                let mut leave = |ring: &mut Ring, at: usize| {
                    ring.nodes.remove(at);
                    if let Some(vertex) = ring.given.remove(at) {
                        dropped.push(DroppedVertex { plane: name.to_owned(), ring: number, vertex });
                    }
                };
                loop {
                    let n = ring.nodes.len();
                    let node = |i: usize| ring.nodes.get(i % n.max(1)).copied();
                    let repeated = (0..n).find(|i| n > 1 && node(*i) == node(i + 1));
                    let spike = (0..n).find(|i| n > 2 && node(*i) == node(i + 2));
                    match (repeated, spike) {
                        (Some(i), _) => leave(ring, (i + 1) % n),
                        (None, Some(i)) => leave(ring, (i + 1) % n),
                        (None, None) => break,
                    }
                }
                if ring.nodes.len() < 3 {
                    let ring_left = ring.nodes.len();
                    let said = Error::new(ErrorKind::Geometry, format!("{name} has a ring so narrow that the tolerance leaves nothing of it"));
                    let ring = if number == 0 { "outer".to_owned() } else { format!("holes[{}].ring", number - 1) };
                    let said = said.at(format!("roof.planes[{}].{ring}", face.plane)).value_of(format_args!("{} vertices left", ring_left));
                    faults.add(said.accepts("3 or more vertices that lie apart").cured_by("leave the sliver out, or give a smaller tolerance"));
                }
            }
        }
        faults.check()?;
        Ok(dropped)
    }

    /// Where the faces of each name still have vertices.
    pub(super) fn kept(&self) -> BTreeMap<&str, BTreeSet<Vertex>> {
        let mut out: BTreeMap<&str, BTreeSet<Vertex>> = BTreeMap::new();
        for face in &self.faces {
            out.entry(self.name(face.plane)).or_default().extend(face.nodes().filter_map(|n| self.vertex(n).ok()));
        }
        out
    }

    /// Puts a node into every edge that passes it within the tolerance.
    pub(super) fn split(&mut self, tolerance: Length) -> Result<Vec<SplitEdge>, Error> {
        let mut order: Vec<usize> = (0..self.nodes.len()).collect();
        let axis = widest(&self.nodes);
        let along_axis = |p: V3| p.get(axis).copied().unwrap_or(0.0);
        order.sort_by(|a, b| along_axis(self.node(*a)).total_cmp(&along_axis(self.node(*b))).then(a.cmp(b)));
        let mut splits = Vec::new();
        for number in 0..self.faces.len() {
            let Some(face) = self.faces.get(number) else { continue };
            let plane = face.plane;
            let own: Vec<usize> = face.nodes().collect();
            let mut put: Vec<(usize, usize, Stations)> = Vec::new();
            for (ring, r) in face.rings.iter().enumerate() {
                for (at, (a, b)) in r.nodes.iter().zip(r.nodes.iter().cycle().skip(1)).enumerate() {
                    let (from, to) = (self.node(*a), self.node(*b));
                    let d = sub(to, from);
                    let long = norm(d).max(f64::MIN_POSITIVE);
                    let (one, other) = (along_axis(from), along_axis(to));
                    let low = one.min(other) - tolerance.mm();
                    let first = order.partition_point(|n| along_axis(self.node(*n)) < low);
                    let mut on_it: Stations = Vec::new();
                    for n in order.iter().skip(first).take_while(|n| along_axis(self.node(**n)) <= one.max(other) + tolerance.mm()) {
                        let e = sub(self.node(*n), from);
                        let along = dot(e, d) / long;
                        let off = norm(sub(e, scale(d, along / long)));
                        if off > tolerance.mm() || along <= 0.0 || along >= long || own.contains(n) {
                            continue;
                        }
                        on_it.push((along, *n));
                        splits.push(SplitEdge {
                            plane: self.name(plane).to_owned(),
                            ring,
                            edge: r.given.get(at).copied().flatten().unwrap_or(at),
                            at: self.vertex(*n)?,
                            off: Length::from_mm(off)?,
                        });
                    }
                    on_it.sort_by(|x, y| x.0.total_cmp(&y.0));
                    put.push((ring, at, on_it));
                }
            }
            for (ring, at, on_it) in put.into_iter().rev() {
                let Some(r) = self.faces.get_mut(number).and_then(|f| f.rings.get_mut(ring)) else { continue };
                for (_, node) in on_it.into_iter().rev() {
                    r.nodes.insert(at + 1, node);
                    r.given.insert(at + 1, None);
                }
            }
        }
        Ok(splits)
    }
}
