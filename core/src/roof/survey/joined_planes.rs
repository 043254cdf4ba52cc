//! Planes measured on the slope, joined edge to edge into a roof in space.

use super::closing;
use super::folding::{Fold, Sheet, pairs_of};
use super::measured_plane::SlopeEnd;
use super::slope_plane::{SlopePlane, SlopeUp};
use crate::error::{Error, ErrorKind, Faults};
use crate::pitch::Pitch;
use crate::practice::roof as practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::roof::{Outline, RoofInput, Vertex, Wall, plane_number};
use crate::units::{Angle, Length};

/// The most planes and joints that are solved at once.
const MOST_PLANES: usize = 128;
const MOST_JOINTS: usize = 512;

/// An edge of a plane, or of a hole in it: the edge that leaves the vertex of this number for the next.
///
/// ```
/// use seamwright::roof::PlaneEdge;
/// assert_eq!(PlaneEdge::new("south", 2).to_string(), "edge 2 of south");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlaneEdge {
    /// The plane, by name.
    pub plane: String,
    /// The edge's number in the ring as given.
    pub edge: usize,
    /// The hole of the plane that it is an edge of, by name: where a dormer's planes meet the roof that it stands on.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub hole: Option<String>,
}

impl PlaneEdge {
    /// This edge of this plane.
    #[must_use]
    pub fn new(plane: impl Into<String>, edge: usize) -> PlaneEdge {
        PlaneEdge { plane: plane.into(), edge, hole: None }
    }

    /// This edge of this hole of this plane.
    #[must_use]
    pub fn of_hole(plane: impl Into<String>, hole: impl Into<String>, edge: usize) -> PlaneEdge {
        PlaneEdge { plane: plane.into(), edge, hole: Some(hole.into()) }
    }
}

impl core::fmt::Display for PlaneEdge {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match &self.hole {
            None => write!(f, "edge {} of {}", self.edge, self.plane),
            Some(hole) => write!(f, "edge {} of {hole} in {}", self.edge, self.plane),
        }
    }
}

/// Two edges that are one line of the roof.
///
/// ```
/// use seamwright::roof::{Joint, PlaneEdge};
/// let ridge = Joint::new(PlaneEdge::new("south", 2), PlaneEdge::new("north", 2));
/// assert_eq!(ridge.offset, None); // end to end
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Joint {
    /// One edge; with an offset the longer of the two.
    pub first: PlaneEdge,
    /// The other edge, which runs the other way.
    pub second: PlaneEdge,
    /// Where the second edge covers only a part of the first: from the end of the first that comes first counter-clockwise round its plane to where
    /// the second edge begins to lie along it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub offset: Option<Length>,
}

impl Joint {
    /// Two edges that meet end to end.
    #[must_use]
    pub fn new(first: PlaneEdge, second: PlaneEdge) -> Joint {
        Joint { first, second, offset: None }
    }
}

/// A corner of one plane by where it lies from an edge of another that it does not meet: a lean-to below an eave, a dormer's roof above its opening. Two
/// such ties of one plane hold it as a shared edge would.
///
/// ```
/// use seamwright::roof::{PlaneEdge, PlaneTie};
/// use seamwright::units::Length;
/// // The lean-to's corner: from the start of the eave 5 ft along it, flush below it, and 3 ft down.
/// let tie = PlaneTie { plane: "lean-to".into(), corner: 2, from: PlaneEdge::new("south", 0), along: Length::feet(5), out: Length::ZERO, up: Length::feet(-3) };
/// assert!(tie.up.is_negative());
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlaneTie {
    /// The plane that is tied, by name.
    pub plane: String,
    /// A vertex of its ring, by number.
    pub corner: usize,
    /// The edge of the other plane. It starts at the end that comes first with its plane on the left, so counter-clockwise round a plane and clockwise
    /// round a hole.
    pub from: PlaneEdge,
    /// Level, along the edge in plan, from where it starts.
    pub along: Length,
    /// Level, square to the edge in plan, away from its plane.
    pub out: Length,
    /// Plumb, up from where the edge starts; less than 0 below it.
    pub up: Length,
}

/// The plane that is set in space, from which the others are folded: its slope plane needs a pitch and a way up.
///
/// ```
/// use seamwright::roof::{SlopeAnchor, Vertex};
/// use seamwright::units::Angle;
/// let anchor = SlopeAnchor { plane: "south".into(), corner: 0, at: Vertex::default(), down_slope: Angle::parse("270 deg")? };
/// assert_eq!(anchor.corner, 0);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SlopeAnchor {
    /// The plane, by name.
    pub plane: String,
    /// A vertex of its ring, by number.
    pub corner: usize,
    /// Where that vertex stands in space.
    pub at: Vertex,
    /// The direction in plan that water runs in on it, counter-clockwise from x.
    pub down_slope: Angle,
}

/// A roof as planes measured on the slope, with the edges that they share.
///
/// One plane is set in space; each neighbour is folded about the edge that it shares, until it closes with the others. Where y runs up the slope in
/// a plane's coordinates, or a level side says which way is up, a shared edge that slopes fixes the plane's pitch and direction; where it shares level
/// edges only, its pitch must be given. What is given beyond that is a check, and what fails to close is reported joint by joint.
///
/// ```
/// use seamwright::pitch::Pitch;
/// use seamwright::record::Calculation;
/// use seamwright::roof::{Joint, JoinedPlanes, LineKind, PlaneEdge, Point, SlopeAnchor, SlopePlane, Vertex};
/// use seamwright::units::{Angle, Length};
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let slope = |name: &str| SlopePlane { pitch: Some(Pitch::parse("9:12").unwrap()), ..SlopePlane::new(name, vec![p(0, 0), p(40, 0), p(40, 20), p(0, 20)]) };
/// let joined = JoinedPlanes::new(
///     vec![slope("south"), slope("north")],
///     vec![Joint::new(PlaneEdge::new("south", 2), PlaneEdge::new("north", 2))],
///     SlopeAnchor { plane: "south".into(), corner: 0, at: Vertex::default(), down_slope: Angle::parse("270 deg")? },
/// )
/// .compute()?;
/// assert!(joined.misclosure < Length::from_pm(1000));
/// let roof = joined.roof.compute()?;
/// assert_eq!(roof.line("ridge 1")?.start.z, Length::feet(12)); // 20 ft up a 9:12 slope
/// assert_eq!(roof.lines_of(LineKind::Rake).count(), 4);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JoinedPlanes {
    /// The planes.
    pub planes: Vec<SlopePlane>,
    /// Which edge joins which.
    pub joints: Vec<Joint>,
    /// What ties planes that no edge joins to the others.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub ties: Vec<PlaneTie>,
    /// The plane that is set in space.
    pub anchor: SlopeAnchor,
    /// How far the ends of joined edges may lie apart; [`practice`](crate::practice::roof::CLOSURE) unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub closure: Option<Length>,
    /// Walls that the roof runs into; they are handed on to the roof.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub walls: Vec<Wall>,
}

impl JoinedPlanes {
    /// Planes and joints with the closure of common practice, and no tie.
    #[must_use]
    pub fn new(planes: Vec<SlopePlane>, joints: Vec<Joint>, anchor: SlopeAnchor) -> JoinedPlanes {
        JoinedPlanes { planes, joints, ties: Vec::new(), anchor, closure: None, walls: Vec::new() }
    }
}

/// How well two joined edges close.
///
/// ```
/// use seamwright::roof::{JointFit, PlaneEdge};
/// use seamwright::units::Length;
/// let (first, second) = (PlaneEdge::new("south", 2), PlaneEdge::new("north", 2));
/// let fit = JointFit { first, second, longer_by: Length::ZERO, start_gap: Length::ZERO, end_gap: Length::inches_64(4) };
/// assert_eq!(fit.misclosure(), Length::inches_64(4));
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JointFit {
    /// One edge.
    pub first: PlaneEdge,
    /// The other.
    pub second: PlaneEdge,
    /// How much longer the first was measured than the second; with an offset, 0.
    pub longer_by: Length,
    /// How far apart the two edges lie in space where the first starts.
    pub start_gap: Length,
    /// How far apart they lie where it ends.
    pub end_gap: Length,
}

impl JointFit {
    /// The larger of the two gaps.
    #[must_use]
    pub fn misclosure(&self) -> Length {
        self.start_gap.max(self.end_gap)
    }
}

/// How well a tie closes.
///
/// ```
/// use seamwright::roof::{PlaneEdge, TieFit};
/// use seamwright::units::Length;
/// let fit = TieFit { plane: "lean-to".into(), corner: 2, from: PlaneEdge::new("south", 0), gap: Length::inches_64(4) };
/// assert!(fit.gap.is_positive());
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TieFit {
    /// The plane that is tied.
    pub plane: String,
    /// Its vertex.
    pub corner: usize,
    /// The edge that it is measured from.
    pub from: PlaneEdge,
    /// How far from where the tie says the vertex comes to lie.
    pub gap: Length,
}

/// A plane as it was set in space.
///
/// ```
/// use seamwright::roof::PlacedPlane;
/// use seamwright::units::Angle;
/// let p = PlacedPlane { name: "south".into(), slope: Angle::parse("30 deg")?, down_slope: Angle::parse("270 deg")? };
/// assert_eq!(p.slope.degrees(), 30.0);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlacedPlane {
    /// Its name.
    pub name: String,
    /// Its slope from level.
    pub slope: Angle,
    /// The direction in plan that water runs in, counter-clockwise from x.
    pub down_slope: Angle,
}

/// A roof in space from planes on the slope. It comes from [`JoinedPlanes`].
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JoinedRoof {
    /// The roof, its planes by their vertices in space; corners that are joined are one vertex, in the middle of what did not close.
    pub roof: RoofInput,
    /// How each joint closes, in the order given.
    pub joints: Vec<JointFit>,
    /// How each tie closes, in the order given.
    pub ties: Vec<TieFit>,
    /// The largest gap of all.
    pub misclosure: Length,
    /// How the planes lie, in the order given.
    pub planes: Vec<PlacedPlane>,
    /// How many measures more than needed the joints and pitches held.
    pub checks: usize,
    /// Steps that the search took.
    pub steps: u32,
    /// What the reader must know before metal is cut.
    pub cautions: Vec<Caution>,
}

/// An edge by numbers: its ring, the plane's own being 0, and its number there.
pub(super) type EdgeAt = (usize, usize);

/// A joint by numbers: planes and edges.
#[derive(Debug, Clone, Copy)]
pub(super) struct Numbered {
    pub(super) planes: [usize; 2],
    pub(super) edges: [EdgeAt; 2],
    pub(super) offset: Option<f64>,
}

/// A tie by numbers, in millimetres.
#[derive(Debug, Clone, Copy)]
pub(super) struct NumberedTie {
    pub(super) plane: usize,
    pub(super) corner: usize,
    pub(super) from: usize,
    pub(super) edge: EdgeAt,
    pub(super) along: f64,
    pub(super) out: f64,
    pub(super) up: f64,
}

impl Calculation for JoinedPlanes {
    type Out = JoinedRoof;

    fn title(&self) -> String {
        "The roof from planes measured on the slope".to_owned()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<JoinedRoof, Error> {
        let (sheets, joints, ties, anchor, closure) = self.sheets()?;
        let fold = Fold { sheets: &sheets, joints: &joints, ties: &ties, pairs: pairs_of(&sheets, &joints), anchor, anchor_fall: self.anchor.down_slope };
        let out = closing::closed(self, &fold, closure)?;
        for fit in &out.joints {
            r.step(|| {
                Step::new(format!("misclosure of {} with {}", fit.first, fit.second))
                    .formula("greater of the gaps at the two ends")
                    .with("gap where the first starts", fit.start_gap)
                    .with("gap where it ends", fit.end_gap)
                    .with("difference of the lengths", fit.longer_by)
                    .gives(fit.misclosure())
                    .source(Source::geometry())
            });
        }
        for fit in &out.ties {
            r.step(|| Step::new(format!("misclosure of vertex {} of {} from {}", fit.corner, fit.plane, fit.from)).gives(fit.gap).source(Source::geometry()));
        }
        for plane in &out.planes {
            r.step(|| Step::new(format!("slope of {}", plane.name)).with("water runs to", plane.down_slope).gives(plane.slope).source(Source::geometry()));
        }
        Ok(out)
    }
}

type Prepared = (Vec<Sheet>, Vec<Numbered>, Vec<NumberedTie>, usize, Length);

impl JoinedPlanes {
    /// Everything by number, or every fault of names, rings and joints.
    fn sheets(&self) -> Result<Prepared, Error> {
        let mut faults = Faults::default();
        let closure = faults.keep(self.closure.unwrap_or(practice::CLOSURE).positive("closure")).unwrap_or(practice::CLOSURE);
        if self.planes.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "a roof needs a plane").at("planes").accepts("1 plane or more"));
        }
        if self.planes.len() > MOST_PLANES {
            let said = Error::new(ErrorKind::TooLarge, "more planes than are joined at once").at("planes");
            faults.add(said.value_of(format_args!("{} planes", self.planes.len())).accepts(format!("at most {MOST_PLANES}")));
        }
        if self.joints.len() > MOST_JOINTS {
            let said = Error::new(ErrorKind::TooLarge, "more joints than are solved at once").at("joints");
            faults.add(said.value_of(format_args!("{} joints", self.joints.len())).accepts(format!("at most {MOST_JOINTS}")));
        }
        if self.ties.len() > MOST_JOINTS {
            let said = Error::new(ErrorKind::TooLarge, "more ties than are solved at once").at("ties");
            faults.add(said.value_of(format_args!("{} ties", self.ties.len())).accepts(format!("at most {MOST_JOINTS}")));
        }
        if self.planes.len() > MOST_PLANES || self.joints.len() > MOST_JOINTS || self.ties.len() > MOST_JOINTS {
            // What is too large is not looked at further.
            faults.check()?;
            return Err(Error::new(ErrorKind::Internal, "a fault was lost"));
        }
        let mut sheets = Vec::new();
        for (i, plane) in self.planes.iter().enumerate() {
            let path = format!("planes[{i}]");
            if plane.name.trim().is_empty() {
                faults.add(Error::new(ErrorKind::Missing, "a plane needs a name").at(format!("{path}.name")));
            } else if self.planes.iter().take(i).any(|p| p.name == plane.name) {
                faults.add(Error::new(ErrorKind::Conflict, "two planes have one name").at(format!("{path}.name")).value_of(&plane.name));
            }
            sheets.extend(faults.keep(sheet(plane).map_err(|e| e.under(&path).about(&plane.name))));
        }
        faults.check()?;
        let mut faults = Faults::default();
        let number = |name: &str, path: &str| plane_number(self.planes.iter().map(|p| p.name.as_str()), name, path);
        let mut joints: Vec<Numbered> = Vec::new();
        for (k, joint) in self.joints.iter().enumerate() {
            let path = format!("joints[{k}]");
            let mut of = |edge: &PlaneEdge, side: &str| faults.keep(self.edge_at(edge, &sheets).map_err(|e| e.under(&format!("{path}.{side}"))));
            let (Some((p, e)), Some((q, f))) = (of(&joint.first, "first"), of(&joint.second, "second")) else { continue };
            if p == q {
                faults.add(Error::new(ErrorKind::Conflict, "a plane joined to itself").at(&path).value_of(&joint.first.plane).accepts("edges of two planes"));
                continue;
            }
            let numbered = Numbered { planes: [p, q], edges: [e, f], offset: joint.offset.map(Length::mm) };
            let same_end = |a: (usize, EdgeAt), b: &Numbered| (0..2).any(|i| (b.planes.get(i), b.edges.get(i)) == (Some(&a.0), Some(&a.1)));
            for other in &joints {
                let whole = joint.offset.is_none() || other.offset.is_none();
                for end in [(p, e), (q, f)].into_iter().filter(|end| whole && same_end(*end, other)) {
                    let said = Error::new(ErrorKind::Conflict, "an edge is joined twice").at(&path);
                    let name = self.planes.get(end.0).map_or("", |p| p.name.as_str());
                    faults.add(
                        said.value_of(format_args!("edge {} of {name}", end.1.1)).accepts("one joint for an edge, or offsets that say which part joins which"),
                    );
                }
            }
            faults.keep(check_lengths(joint, &numbered, &sheets, closure).map_err(|e| e.under(&path)));
            joints.push(numbered);
        }
        let mut ties: Vec<NumberedTie> = Vec::new();
        for (k, tie) in self.ties.iter().enumerate() {
            let path = format!("ties[{k}]");
            let plane = faults.keep(number(&tie.plane, &format!("{path}.plane")));
            let from = faults.keep(self.edge_at(&tie.from, &sheets).map_err(|e| e.under(&format!("{path}.from"))));
            let (Some(plane), Some((from, edge))) = (plane, from) else { continue };
            let count = sheets.get(plane).map_or(0, |s: &Sheet| s.local.len());
            if tie.corner >= count {
                let said = Error::new(ErrorKind::Unknown, format!("{} has no such vertex", tie.plane)).at(format!("{path}.corner"));
                faults.add(said.value_of(tie.corner).accepts(format!("0 to {}", count.saturating_sub(1))));
            }
            if plane == from {
                faults.add(Error::new(ErrorKind::Conflict, "a plane tied to itself").at(&path).value_of(&tie.plane).accepts("an edge of another plane"));
            }
            ties.push(NumberedTie { plane, corner: tie.corner, from, edge, along: tie.along.mm(), out: tie.out.mm(), up: tie.up.mm() });
        }
        let anchor = faults.keep(number(&self.anchor.plane, "anchor.plane"));
        if let Some((number, plane)) = anchor.and_then(|a| self.planes.get(a).map(|p| (a, p))) {
            if plane.pitch.is_none() {
                let said = Error::new(ErrorKind::Missing, format!("the anchored plane {} needs its pitch", plane.name));
                faults.add(said.at(format!("planes[{number}].pitch")).cured_by("measure its pitch, or anchor a plane whose pitch is known"));
            }
            if plane.up == SlopeUp::Unknown {
                let said = Error::new(ErrorKind::Missing, format!("the anchored plane {} needs to know which way is up", plane.name));
                faults.add(said.at(format!("planes[{number}].up")).accepts("along-y, or a level edge"));
            }
            if self.anchor.corner >= plane.outer.len() {
                let said = Error::new(ErrorKind::Unknown, format!("{} has no such vertex", plane.name)).at("anchor.corner");
                faults.add(said.value_of(self.anchor.corner).accepts(format!("0 to {}", plane.outer.len().saturating_sub(1))));
            }
        }
        faults.check()?;
        let anchor = anchor.ok_or_else(|| Error::new(ErrorKind::Internal, "the anchored plane is missing"))?;
        self.check_reached(&joints, &ties, anchor)?;
        Ok((sheets, joints, ties, anchor, closure))
    }

    /// A plane and an edge of it or of a hole in it, by number.
    fn edge_at(&self, edge: &PlaneEdge, sheets: &[Sheet]) -> Result<(usize, EdgeAt), Error> {
        let unknown = |what: String, path: &str| Error::new(ErrorKind::Unknown, what).at(path);
        let plane = plane_number(self.planes.iter().map(|p| p.name.as_str()), &edge.plane, "plane")?;
        let given = self.planes.get(plane).ok_or_else(|| Error::new(ErrorKind::Internal, "a plane is missing").value_of(plane))?;
        let ring = match &edge.hole {
            None => 0,
            Some(hole) => match given.holes.iter().position(|h| h.name == *hole) {
                Some(k) => k + 1,
                None => {
                    let names = given.holes.iter().map(|h| h.name.as_str()).collect::<Vec<_>>().join(", ");
                    return Err(unknown(format!("{} has no hole of this name", edge.plane), "hole").value_of(hole).accepts(names));
                }
            },
        };
        let count = sheets.get(plane).map_or(0, |s| s.ring(ring).len());
        if edge.edge >= count {
            let said = unknown(format!("{} has no such edge", edge.plane), "edge");
            return Err(said.value_of(edge.edge).accepts(format!("0 to {}", count.saturating_sub(1))));
        }
        Ok((plane, (ring, edge.edge)))
    }

    /// A chain of joints, or of ties two by two, must lead from the anchored plane to every other.
    fn check_reached(&self, joints: &[Numbered], ties: &[NumberedTie], anchor: usize) -> Result<(), Error> {
        let mut reached = vec![false; self.planes.len()];
        let mut open = vec![anchor];
        loop {
            let Some(plane) = open.pop() else {
                let is = |plane: usize| reached.get(plane).copied().unwrap_or(false);
                let held = |plane: usize| ties.iter().filter(|t| t.plane == plane && is(t.from)).count() > 1;
                let Some(tied) = (0..reached.len()).find(|p| !is(*p) && held(*p)) else { break };
                open.push(tied);
                continue;
            };
            if let Some(seen) = reached.get_mut(plane).filter(|s| !**s) {
                *seen = true;
                let beyond = joints.iter().filter_map(|j| match j.planes {
                    [a, b] if a == plane => Some(b),
                    [a, b] if b == plane => Some(a),
                    _ => None,
                });
                open.extend(beyond);
            }
        }
        let mut faults = Faults::default();
        for (i, (plane, _)) in self.planes.iter().zip(&reached).enumerate().filter(|(_, (_, r))| !**r) {
            let said = Error::new(ErrorKind::Missing, format!("{} is not fixed: no joint leads to it from {}", plane.name, self.anchor.plane));
            let cure = format!("say which edge of {} joins which edge of a plane that is reached, or tie two of its corners to one", plane.name);
            faults.add(said.at(format!("planes[{i}]")).cured_by(cure));
        }
        faults.check()
    }
}

/// Joined edges must be of one length, or the second lie within the first.
fn check_lengths(joint: &Joint, numbered: &Numbered, sheets: &[Sheet], closure: Length) -> Result<(), Error> {
    let long = |i: usize| {
        let (plane, edge) = (numbered.planes.get(i).copied().unwrap_or(0), numbered.edges.get(i).copied().unwrap_or_default());
        sheets.get(plane).map_or(0.0, |s| s.edge_length(edge))
    };
    let (first, second) = (long(0), long(1));
    match joint.offset {
        None if (first - second).abs() > closure.mm() => {
            let message = format!("{} and {} differ in length", joint.first, joint.second);
            Err(Error::new(ErrorKind::Geometry, message)
                .value_of(Length::from_mm((first - second).abs())?)
                .accepts(format!("at most {closure} between {} and {}", Length::from_mm(first)?, Length::from_mm(second)?))
                .cured_by("measure both again; if one covers only a part of the other, give the offset"))
        }
        Some(offset) if offset.mm() < -closure.mm() || offset.mm() + second > first + closure.mm() => {
            let message = format!("{} does not lie within {}", joint.second, joint.first);
            Err(Error::new(ErrorKind::OutOfRange, message)
                .at("offset")
                .value_of(offset)
                .accepts(format!("0 mm to {}", Length::from_mm(first - second)?))
                .cured_by("the first edge is the longer one; measure along it from the end that comes first counter-clockwise"))
        }
        _ => Ok(()),
    }
}

/// A plane's ring in floating point, with the way up along y where it is known.
fn sheet(plane: &SlopePlane) -> Result<Sheet, Error> {
    let mut faults = Faults::default();
    if let Some(pitch) = plane.pitch.filter(|p: &Pitch| p.angle() >= practice::STEEPEST || p.angle() <= Angle::ZERO) {
        let said = Error::new(ErrorKind::OutOfRange, "not the pitch of a plane that can be measured on the slope").at("pitch").value_of(pitch);
        faults.add(said.accepts(format!("more than level and less than {}", practice::STEEPEST)));
    }
    let outline = faults.keep(Outline::new(plane.outer.clone(), plane.holes.iter().map(|h| h.ring.clone()).collect()));
    if let SlopeUp::Level { edge, .. } = plane.up
        && edge >= plane.outer.len()
    {
        let said = Error::new(ErrorKind::Unknown, "the plane has no such edge").at("up.level.edge").value_of(edge);
        faults.add(said.accepts(format!("0 to {}", plane.outer.len().saturating_sub(1))));
    }
    faults.check()?;
    let outline = outline.ok_or_else(|| Error::new(ErrorKind::Internal, "an outline without fault is missing"))?;
    let rings_turned: Vec<bool> = (0..=plane.holes.len()).map(|k| outline.edges().find(|e| e.ring == k).is_some_and(|e| e.given != 0)).collect();
    let turned = rings_turned.first().copied().unwrap_or(false);
    let origin = plane.outer.first().copied().unwrap_or_default();
    let place = |p: &crate::roof::Point| -> Result<[f64; 2], Error> { Ok([(p.x - origin.x).length()?.mm(), (p.y - origin.y).length()?.mm()]) };
    let mut local = plane.outer.iter().map(place).collect::<Result<Vec<_>, _>>()?;
    let mut holes = plane.holes.iter().map(|h| h.ring.iter().map(place).collect::<Result<Vec<_>, _>>()).collect::<Result<Vec<_>, _>>()?;
    if let SlopeUp::Level { edge, end } = plane.up {
        let ends = [edge, (edge + 1) % local.len().max(1)].map(|i| local.get(i).copied().unwrap_or_default());
        // Counter-clockwise a foot runs to the right and a head to the left.
        let back = turned != (end == SlopeEnd::Head);
        let d = if back { [ends[0][0] - ends[1][0], ends[0][1] - ends[1][1]] } else { [ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]] };
        let long = crate::num::hypot(d[0], d[1]).max(f64::MIN_POSITIVE);
        let u = [d[0] / long, d[1] / long];
        for p in local.iter_mut().chain(holes.iter_mut().flatten()) {
            *p = [p[0] * u[0] + p[1] * u[1], p[1] * u[0] - p[0] * u[1]];
        }
    }
    Ok(Sheet { local, holes, turned: rings_turned, knows_up: plane.up != SlopeUp::Unknown, pitch_ratio: plane.pitch.map(|p| p.ratio()) })
}
