//! `seamwright.roof.Snapping` and what it gives.

use super::{RoofInput, Vertex};
use crate::document::document;
use crate::place::part;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::roof as core_roof;

document! {
    /// Planes that almost meet, brought together within stated tolerances: vertices made one, edges split where a neighbour ends, faces made flat, and,
    /// where ``merge_coplanar`` is asked, neighbouring faces of one plane made one.
    ///
    /// >>> from seamwright.roof import Snapping
    /// >>> def plane(name, *corners):
    /// ...     outer = [dict(zip("xyz", (f"{c} ft" for c in corner))) for corner in corners]
    /// ...     return {"name": name, "shape": {"space": {"outer": outer}}}
    /// >>> south = plane("south", (0, 0, 10), (40, 0, 10), (40, 20, 20), (0, 20, 20))
    /// >>> north = plane("north", (40, 40, 10), (0, 40, 10), (0, 20, 20.002), (40, 20, 20))
    /// >>> snapped = Snapping.from_dict({"roof": {"planes": [south, north]}}).compute()
    /// >>> [(m.plane, m.vertex) for m in snapped.moves][0], [f.plane for f in snapped.flattened]
    /// (('south', 0), ['south', 'north'])
    Snapping(core_roof::Snapping) in "seamwright.roof" gives SnappedRoof
}

part! {
    /// A roof whose planes meet, and what was done to it.
    SnappedRoof(core_roof::SnappedRoof) in "seamwright.roof",
    shown s: format_args!("{} planes, {} moves, {} splits, {} merged", s.roof.planes.len(), s.moves.len(), s.splits.len(), s.merged.len());

    /// The roof, every plane by its vertices in space.
    roof(s) -> RoofInput = RoofInput(s.roof.clone());
    /// The vertices that were moved, in the order given.
    moves(s, here) -> Vec<SnapMove> = here.all("moves", &s.moves);
    /// The edges that were split.
    splits(s, here) -> Vec<SplitEdge> = here.all("splits", &s.splits);
    /// The vertices that were left out.
    dropped(s, here) -> Vec<DroppedVertex> = here.all("dropped", &s.dropped);
    /// The faces that were made flat.
    flattened(s, here) -> Vec<FlattenedFace> = here.all("flattened", &s.flattened);
    /// The faces that became one.
    merged(s, here) -> Vec<MergedFaces> = here.all("merged", &s.merged);
}

part! {
    /// A vertex that was moved.
    SnapMove(core_roof::SnapMove) in "seamwright.roof",
    shown m: format_args!("vertex {} of {} by {}", m.vertex, m.plane, m.by);

    /// Its plane.
    plane(m) -> String = m.plane.clone();
    /// Its ring: 0 is the outer one, the holes follow from 1.
    ring(m) -> usize = m.ring;
    /// Its number in the ring as given.
    vertex(m) -> usize = m.vertex;
    /// How far it was moved, in all.
    by(m) -> Length = Length(m.by);
}

part! {
    /// An edge that was given a vertex where a neighbour has one.
    SplitEdge(core_roof::SplitEdge) in "seamwright.roof",
    shown s: format_args!("edge {} of {}", s.edge, s.plane);

    /// Its plane.
    plane(s) -> String = s.plane.clone();
    /// Its ring.
    ring(s) -> usize = s.ring;
    /// The number of the vertex that it leaves, as given.
    edge(s) -> usize = s.edge;
    /// Where.
    at(s) -> Vertex = Vertex(s.at);
    /// How far off the straight edge that is.
    off(s) -> Length = Length(s.off);
}

part! {
    /// A vertex that was left out, because it came to lie on its neighbour or to run straight back.
    DroppedVertex(core_roof::DroppedVertex) in "seamwright.roof",
    shown d: format_args!("vertex {} of {}", d.vertex, d.plane);

    /// Its plane.
    plane(d) -> String = d.plane.clone();
    /// Its ring.
    ring(d) -> usize = d.ring;
    /// Its number in the ring as given.
    vertex(d) -> usize = d.vertex;
}

part! {
    /// A face that was not flat, and how flat it is now.
    FlattenedFace(core_roof::FlattenedFace) in "seamwright.roof",
    shown f: format_args!("{}, {} before", f.plane, f.off_before);

    /// Its plane.
    plane(f) -> String = f.plane.clone();
    /// The farthest that a vertex lay from its plane, after the vertices were brought together.
    off_before(f) -> Length = Length(f.off_before);
    /// The farthest that one lies from it now.
    off_after(f) -> Length = Length(f.off_after);
}

part! {
    /// Two faces of one plane that became one.
    MergedFaces(core_roof::MergedFaces) in "seamwright.roof",
    shown m: format_args!("{} into {}", m.from, m.into);

    /// The face that stays.
    into(m) -> String = m.into.clone();
    /// The face that went into it. (In Rust this is ``from``, which is a word of Python's own.)
    gone(m) -> String = m.from.clone();
}
