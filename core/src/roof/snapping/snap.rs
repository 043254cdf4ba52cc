//! A roof whose planes almost meet, and what it takes to make them meet.

use super::rings::Faces;
use super::{flatten, merge};
use crate::error::{Error, ErrorKind, Faults};
use crate::num::space::{norm, sub};
use crate::practice::roof as practice;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::roof::{Opening, PlaneInput, RoofInput, Shape, Vertex};
use crate::units::Length;
use std::collections::BTreeSet;

/// The most vertices that are brought together at once.
const MOST_VERTICES: usize = 50_000;

/// Planes that almost meet, as from a survey of points or from another program's model, brought together within stated tolerances.
///
/// Vertices within the tolerance of each other become one; an edge that passes a neighbour's vertex within the tolerance gets a vertex there; faces that
/// are flat within the flatness are made flat; where asked, neighbouring faces of one plane become one. Every change is told with its distance, and what
/// is farther off than its tolerance is refused, not bent.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::roof::{PlaneInput, RoofInput, Shape, Snapping, Vertex};
/// use seamwright::units::Length;
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let plane = |name: &str, outer| PlaneInput { name: name.into(), shape: Shape::Space { outer, holes: vec![], flatness: None } };
/// // The north plane's ridge was surveyed 1/32 in too high.
/// let high = |x, y, z| Vertex { z: (Length::feet(z) + Length::inches_64(2)).length().unwrap(), ..v(x, y, z) };
/// let roof = RoofInput::new(vec![
///     plane("south", vec![v(0, 0, 10), v(40, 0, 10), v(40, 20, 20), v(0, 20, 20)]),
///     plane("north", vec![v(40, 40, 10), v(0, 40, 10), high(0, 20, 20), high(40, 20, 20)]),
/// ]);
/// let snapped = Snapping::new(roof).compute()?;
/// // Each plane's ridge moves by half of it.
/// assert_eq!(snapped.moves.len(), 4);
/// assert!(snapped.moves.iter().all(|m| m.by == Length::inches_64(1)));
/// assert_eq!(snapped.roof.compute()?.line("ridge 1")?.length, Length::feet(40));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Snapping {
    /// The roof as it was surveyed; its walls and limits are handed on.
    pub roof: RoofInput,
    /// How far apart vertices and edges may lie and be brought together; that of the roof unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tolerance: Option<Length>,
    /// How far a vertex may lie from its face's plane and be brought onto it; [`practice`](crate::practice::roof::FLATNESS) unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub flatness: Option<Length>,
    /// Whether neighbouring faces that lie in one plane within the tolerance become one, under the name of the first.
    #[cfg_attr(feature = "serde", serde(default))]
    pub merge_coplanar: bool,
}

impl Snapping {
    /// A roof to be snapped within its own tolerance, its faces left as many as they are.
    #[must_use]
    pub fn new(roof: RoofInput) -> Snapping {
        Snapping { roof, tolerance: None, flatness: None, merge_coplanar: false }
    }
}

/// A vertex that was moved.
///
/// ```
/// use seamwright::roof::SnapMove;
/// use seamwright::units::Length;
/// let m = SnapMove { plane: "north".into(), ring: 0, vertex: 2, by: Length::inches_64(1) };
/// assert_eq!(m.ring, 0);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SnapMove {
    /// Its plane.
    pub plane: String,
    /// Its ring: 0 is the outer one, the holes follow from 1.
    pub ring: usize,
    /// Its number in the ring as given.
    pub vertex: usize,
    /// How far it was moved, in all.
    pub by: Length,
}

/// An edge that was given a vertex where a neighbour has one.
///
/// ```
/// use seamwright::roof::{SplitEdge, Vertex};
/// use seamwright::units::Length;
/// let s = SplitEdge { plane: "north".into(), ring: 0, edge: 2, at: Vertex::default(), off: Length::ZERO };
/// assert_eq!(s.edge, 2);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SplitEdge {
    /// Its plane.
    pub plane: String,
    /// Its ring.
    pub ring: usize,
    /// The number of the vertex that it leaves, as given.
    pub edge: usize,
    /// Where.
    pub at: Vertex,
    /// How far off the straight edge that is.
    pub off: Length,
}

/// A vertex that was left out, because it came to lie on its neighbour or to run straight back.
///
/// ```
/// use seamwright::roof::DroppedVertex;
/// assert_eq!(DroppedVertex { plane: "a".into(), ring: 0, vertex: 3 }.vertex, 3);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DroppedVertex {
    /// Its plane.
    pub plane: String,
    /// Its ring.
    pub ring: usize,
    /// Its number in the ring as given.
    pub vertex: usize,
}

/// A face that was not flat, and how flat it is now.
///
/// ```
/// use seamwright::roof::FlattenedFace;
/// use seamwright::units::Length;
/// let f = FlattenedFace { plane: "south".into(), off_before: Length::inches_64(3), off_after: Length::ZERO };
/// assert!(f.off_after < f.off_before);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FlattenedFace {
    /// Its plane.
    pub plane: String,
    /// The farthest that a vertex lay from the plane through it, after the vertices were brought together.
    pub off_before: Length,
    /// The farthest that one lies from it now.
    pub off_after: Length,
}

/// Two faces of one plane that became one.
///
/// ```
/// use seamwright::roof::MergedFaces;
/// assert_eq!(MergedFaces { into: "south".into(), from: "south 2".into() }.into, "south");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MergedFaces {
    /// The face that stays.
    pub into: String,
    /// The face that went into it.
    pub from: String,
}

/// A roof whose planes meet, and what was done to it. It comes from [`Snapping`].
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SnappedRoof {
    /// The roof, every plane by its vertices in space.
    pub roof: RoofInput,
    /// The vertices that were moved, in the order given.
    pub moves: Vec<SnapMove>,
    /// The edges that were split, and are still.
    pub splits: Vec<SplitEdge>,
    /// The vertices that were left out.
    pub dropped: Vec<DroppedVertex>,
    /// The faces that were made flat.
    pub flattened: Vec<FlattenedFace>,
    /// The faces that became one.
    pub merged: Vec<MergedFaces>,
}

impl Calculation for Snapping {
    type Out = SnappedRoof;

    fn title(&self) -> String {
        "The roof's planes brought together".to_owned()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<SnappedRoof, Error> {
        let mut faults = Faults::default();
        let tolerance = faults.keep(self.tolerance.or(self.roof.tolerance).unwrap_or(practice::TOLERANCE).positive("tolerance"));
        let flatness = faults.keep(self.flatness.unwrap_or(practice::FLATNESS).not_negative("flatness"));
        if self.roof.planes.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "a roof needs a plane").at("roof.planes").accepts("1 plane or more"));
        }
        let given = faults.keep(vertices(&self.roof));
        faults.check()?;
        let (Some(tolerance), Some(flatness), Some(given)) = (tolerance, flatness, given) else {
            return Err(Error::new(ErrorKind::Internal, "a fault was lost"));
        };
        let mut faces = Faces::new(&self.roof.planes, &given, tolerance)?;
        let dropped = faces.drop_repeated()?;
        let mut splits = faces.split(tolerance)?;
        let merged = if self.merge_coplanar { merge::merged(&mut faces, tolerance.mm()) } else { Vec::new() };
        // A seam that was merged away splits nothing.
        let kept = faces.kept();
        splits.retain(|s| kept.get(s.plane.as_str()).is_some_and(|places| places.contains(&s.at)));
        let flattened = flatten::flattened(&mut faces, flatness)?;
        let roof = self.rebuilt(&faces)?;
        let (mut moves, mut faults) = (Vec::new(), Faults::default());
        for start in &faces.starts {
            let Some(to) = faces.nodes.get(start.node) else { continue };
            let by = Length::from_mm(norm(sub(*to, start.at)))?;
            if by.pm() > tolerance.pm().saturating_add(flatness.pm()) {
                let said =
                    Error::new(ErrorKind::Geometry, format!("a vertex of {} would have to move too far for its faces to be flat", faces.name(start.plane)));
                let said =
                    said.at(faces.path(start.plane, start.ring, start.vertex)).value_of(by).accepts(format!("at most {tolerance} and {flatness} together"));
                faults.add(said.cured_by("split a face there into planes, or allow more flatness"));
            }
            if by > Length::ZERO {
                moves.push(SnapMove { plane: faces.name(start.plane).to_owned(), ring: start.ring, vertex: start.vertex, by });
            }
        }
        faults.check()?;
        for m in &moves {
            r.step(|| Step::new(format!("move of vertex {} of {}", m.vertex, m.plane)).with("tolerance", tolerance).gives(m.by).source(Source::geometry()));
        }
        for f in &flattened {
            r.step(|| Step::new(format!("flatness of {}", f.plane)).with("before", f.off_before).gives(f.off_after).source(Source::geometry()));
        }
        Ok(SnappedRoof { roof, moves, splits, dropped, flattened, merged })
    }
}

impl Snapping {
    fn rebuilt(&self, faces: &Faces<'_>) -> Result<RoofInput, Error> {
        let mut planes = Vec::new();
        for face in &faces.faces {
            let Some(given) = self.roof.planes.get(face.plane) else { continue };
            let ring = |nodes: &[usize]| nodes.iter().map(|n| faces.vertex(*n)).collect::<Result<Vec<Vertex>, Error>>();
            let mut rings = face.rings.iter();
            let outer = ring(rings.next().map_or(&[], |r| r.nodes.as_slice()))?;
            let holes = rings.map(|r| Ok(Opening { name: r.name.clone(), ring: ring(&r.nodes)? })).collect::<Result<Vec<_>, Error>>()?;
            let flatness = if let Shape::Space { flatness, .. } = given.shape { flatness } else { None };
            planes.push(PlaneInput { name: given.name.clone(), shape: Shape::Space { outer, holes, flatness } });
        }
        Ok(RoofInput { planes, ..self.roof.clone() })
    }
}

/// Every ring of every plane in space: as given, or from its plan.
fn vertices(roof: &RoofInput) -> Result<Vec<Vec<Vec<Vertex>>>, Error> {
    let count = |p: &PlaneInput| match &p.shape {
        Shape::Space { outer, holes, .. } => outer.len() + holes.iter().map(|h| h.ring.len()).sum::<usize>(),
        Shape::Plan { outer, holes, .. } => outer.len() + holes.iter().map(|h| h.ring.len()).sum::<usize>(),
    };
    let total: usize = roof.planes.iter().map(count).sum();
    if total > MOST_VERTICES {
        let said = Error::new(ErrorKind::TooLarge, "more vertices than are brought together at once").at("roof.planes");
        return Err(said.value_of(format_args!("{total} vertices")).accepts(format!("at most {MOST_VERTICES}")));
    }
    let mut faults = Faults::default();
    let (mut out, mut names) = (Vec::new(), BTreeSet::new());
    for (i, plane) in roof.planes.iter().enumerate() {
        let path = format!("roof.planes[{i}]");
        if plane.name.trim().is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "a plane needs a name").at(format!("{path}.name")));
        } else if !names.insert(plane.name.as_str()) {
            faults.add(Error::new(ErrorKind::Conflict, "two planes have one name").at(format!("{path}.name")).value_of(&plane.name));
        }
        let rings = match &plane.shape {
            Shape::Space { outer, holes, .. } => core::iter::once(outer.clone()).chain(holes.iter().map(|h| h.ring.clone())).collect(),
            Shape::Plan { .. } => match faults.keep(plane.plane().map_err(|e| e.under(&path).about(&plane.name))) {
                Some(p) => p.rings().to_vec(),
                None => continue,
            },
        };
        out.push(rings);
    }
    let all = || out.iter().enumerate().flat_map(|(i, rings): (usize, &Vec<Vec<Vertex>>)| rings.iter().flatten().map(move |v| (i, v)));
    if let Some((_, first)) = all().next() {
        for (i, v) in all() {
            let far = v.from(*first).iter().fold(0.0, |m: f64, d| m.max(d.abs()));
            if far >= practice::GREATEST_EXTENT.mm() {
                let name = roof.planes.get(i).map_or("", |p| p.name.as_str());
                let said =
                    Error::new(ErrorKind::OutOfRange, format!("a vertex of {name} lies too far from the first of the roof")).at(format!("roof.planes[{i}]"));
                let said = said.value_of(format_args!("{far:.0} mm")).accepts(format!("less than {}", practice::GREATEST_EXTENT));
                faults.add(said.cured_by("check the unit of the coordinates"));
                break;
            }
        }
    }
    faults.check()?;
    Ok(out)
}
