//! From planes and walls to named lines, in order, with their cautions.

use super::expansion_joints::{self, ExpansionJointInput};
use super::kind::{self, LineKind, Water};
use super::line::{self, Beyond, Line, Piece};
use super::matching::{Meeting, NearMiss, RoofEdge, Stretch, free_stretches, meetings, taken_stretches};
use super::overlap::{Box2, near_pairs};
use super::steps::{self, StepInput};
use super::walls::Wall;
use super::{Plane, cautions};
use crate::error::{Error, ErrorKind, Faults};
use crate::pitch::Pitch;
use crate::practice::roof as practice;
use crate::record::{Caution, CautionCode, Recorder, Source, Step};
use crate::units::Length;

/// A line before it has its number: where it sorts, and what to say of it.
struct Draft {
    key: (usize, f64),
    line: Line,
    remarks: Vec<Remark>,
}

type Remark = (CautionCode, Vec<(&'static str, String)>);

struct Namer<'a> {
    planes: &'a [Plane],
    walls: &'a [Wall],
    edges: Vec<RoofEdge>,
    /// Walls that stand near each edge in plan.
    near_walls: Vec<Vec<usize>>,
    tolerance: f64,
    drafts: Vec<Draft>,
    used_walls: Vec<bool>,
}

fn internal() -> Error {
    Error::new(ErrorKind::Internal, "a number of a plane, an edge or a wall is out of step")
}

/// Where the planes' edges meet, and where they miss each other by a gap.
pub(super) struct Meet {
    edges: Vec<RoofEdge>,
    met: Vec<Meeting>,
    missed: Vec<NearMiss>,
}

impl Meet {
    /// A step that is named is no gap.
    pub(super) fn of<'a>(planes: impl Iterator<Item = &'a Plane>, steps: &[StepInput], tolerance: Length) -> Meet {
        let numbered: Vec<(usize, &Plane)> = planes.enumerate().collect();
        let edges = RoofEdge::all(&numbered);
        let (met, mut missed) = meetings(&edges, tolerance, practice::GAP);
        missed.retain(|m| {
            let of = |edge: usize| edges.get(edge).and_then(|e| numbered.get(e.id.plane));
            of(m.edges.0).zip(of(m.edges.1)).is_none_or(|(a, b)| !steps::parts(steps, a.1, b.1))
        });
        Meet { edges, met, missed }
    }
}

/// All lines in the order of planes and edges, and the cautions on them, on walls and on gaps.
pub(super) fn name_lines(
    planes: &[Plane],
    walls: &[Wall],
    (steps, joints): (&[StepInput], &[ExpansionJointInput]),
    Meet { edges, met, missed }: Meet,
    tolerance: Length,
) -> Result<(Vec<Line>, Vec<Caution>), Error> {
    let near_walls = near_walls(&edges, walls, tolerance);
    let found = steps::find(steps, planes, &edges, tolerance)?;
    let mut parted = expansion_joints::find(joints, planes, &edges, &met, tolerance)?;
    let used_walls = vec![false; walls.len()];
    let mut namer = Namer { planes, walls, edges, near_walls, tolerance: tolerance.mm(), drafts: Vec::new(), used_walls };
    let all: Vec<Meeting> = met.iter().copied().chain(found.iter().map(|f| f.meeting)).collect();
    let taken = taken_stretches(namer.edges.len(), &all);
    namer.check_taken(&taken)?;
    for (number, meeting) in met.iter().enumerate() {
        let joint = parted.iter().position(|j| j.meeting == number).map(|k| parted.swap_remove(k));
        match joint {
            Some(joint) => namer.parted(meeting, joint.line)?,
            None => namer.shared(meeting)?,
        }
    }
    for step in found {
        namer.drafts.push(Draft { key: (step.meeting.edges.0, step.meeting.on.0.from), line: step.line, remarks: Vec::new() });
    }
    for (number, taken) in taken.iter().enumerate() {
        namer.free(number, taken)?;
    }
    namer.finish(&missed, tolerance)
}

/// A fault for each gap between planes, at the vertex that its first edge leaves.
pub(super) fn refuse_gaps(built: &[(String, Plane)], meet: &Meet, tolerance: Length, faults: &mut Faults) {
    for miss in &meet.missed {
        let (Some(e), Some(f)) = (meet.edges.get(miss.edges.0), meet.edges.get(miss.edges.1)) else { continue };
        let (Some((at, plane)), Some((_, other))) = (built.get(e.id.plane), built.get(f.id.plane)) else { continue };
        let ring = e.id.ring.checked_sub(1).map_or_else(|| "outer".to_owned(), |h| format!("holes[{h}].ring"));
        let said = format!("a gap between edge {} of {} and edge {} of {}", e.id.given, plane.name(), f.id.given, other.name());
        let gap = Length::from_mm(miss.gap).map_or_else(|_| format!("{} mm", miss.gap), |gap| gap.to_string());
        faults.add(
            Error::new(ErrorKind::Geometry, said)
                .at(format!("{at}.{}.{ring}[{}]", plane.form, e.id.given))
                .value_of(&gap)
                .accepts(format!("edges within {tolerance}, or more than {} apart", practice::GAP))
                .cured_by(format!("move their vertices together, or snap the roof with a tolerance of at least {gap}")),
        );
    }
}

fn near_walls(edges: &[RoofEdge], walls: &[Wall], tolerance: Length) -> Vec<Vec<usize>> {
    let mut near = vec![Vec::new(); edges.len()];
    let boxes: Vec<Box2> = edges.iter().map(RoofEdge::plan_box).chain(walls.iter().map(Wall::plan_box)).collect();
    if !walls.is_empty() {
        for (a, b) in near_pairs(&boxes, tolerance.pm()) {
            if let (Some(list), Some(wall)) = (near.get_mut(a), b.checked_sub(edges.len())) {
                list.push(wall);
            }
        }
    }
    near
}

impl Namer<'_> {
    fn edge(&self, number: usize) -> Result<RoofEdge, Error> {
        self.edges.get(number).copied().ok_or_else(internal)
    }

    fn plane(&self, number: usize) -> Result<&Plane, Error> {
        self.planes.get(number).ok_or_else(internal)
    }

    /// No stretch may belong to two neighbours.
    fn check_taken(&self, taken: &[Vec<(Stretch, usize)>]) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (edge, list) in self.edges.iter().zip(taken) {
            for (a, b) in list.iter().zip(list.iter().skip(1)) {
                if a.0.to - b.0.from > self.tolerance {
                    let name = |e: usize| self.edge(e).and_then(|e| self.plane(e.id.plane)).map_or("", Plane::name);
                    faults.add(
                        Error::new(ErrorKind::Geometry, format!("{} and {} both meet one edge along the same stretch", name(a.1), name(b.1)))
                            .at(format!("planes[{}]", edge.id.plane))
                            .value_of(Length::from_mm(a.0.to - b.0.from)?)
                            .accepts("one neighbour at each place of an edge"),
                    );
                }
            }
        }
        faults.check()
    }

    fn shared(&mut self, meeting: &Meeting) -> Result<(), Error> {
        let (e, f) = (self.edge(meeting.edges.0)?, self.edge(meeting.edges.1)?);
        let (first, second) = (self.plane(e.id.plane)?, self.plane(f.id.plane)?);
        let names = vec![("first", first.name().to_owned()), ("second", second.name().to_owned())];
        let piece = meeting.on.0.piece();
        let measures = piece.measures();
        let (side, _) = measures.side(first, e.id, &piece, self.tolerance)?;
        let (other, _) = measures.other_side(second, f.id, &piece, self.tolerance)?;
        let turn = line::turn_between(first, second);
        let down = side.backing.degrees() + other.backing.degrees() > 0.0;
        let mut remarks: Vec<Remark> = Vec::new();
        let level = measures.is_level(self.tolerance);
        let wall = self.wall_along(meeting.edges.0, first, &e, &meeting.on.0)?;
        let kind = if let Some((wall, _)) = wall {
            let name = self.use_wall(wall);
            remarks.push((cautions::WALL_ON_SHARED_LINE, [vec![("wall", name)], names.clone()].concat()));
            LineKind::Unknown
        } else if kind::is_coplanar(turn) {
            remarks.push((cautions::COPLANAR, names.clone()));
            LineKind::Unknown
        } else {
            let flat = level || [&side, &other].iter().all(|s| s.skew.degrees().abs() <= practice::OUT_OF_LEVEL_LIMIT.degrees());
            match kind::shared(flat, down, side.water, other.water) {
                Ok(kind) => kind,
                Err(why) => {
                    remarks.push((cautions::UNKNOWN_LINE, vec![("why", why.to_owned())]));
                    LineKind::Unknown
                }
            }
        };
        if kind == LineKind::Valley && level {
            remarks.push((cautions::LEVEL_VALLEY, names));
        }
        let line = measures.line(kind, &piece, Some(180.0 - turn), side, Beyond::Plane(other))?;
        if let (LineKind::Hip | LineKind::Valley, Some((from, onto))) = (kind, line.crossing()) {
            let name = |i: usize| self.plane(i).map(|p| p.name().to_owned());
            // Over a line that bends down it runs away; where the planes bend up it is thrown against the other.
            let code = if kind == LineKind::Hip { cautions::WATER_OVER } else { cautions::WATER_ACROSS };
            remarks.push((code, vec![("from", name(from)?), ("onto", name(onto)?)]));
        }
        self.drafts.push(Draft { key: (meeting.edges.0, meeting.on.0.from), line, remarks });
        Ok(())
    }

    /// A named expansion joint; where a wall stands on it, it is a line like any other between planes.
    fn parted(&mut self, meeting: &Meeting, line: Line) -> Result<(), Error> {
        let edge = self.edge(meeting.edges.0)?;
        if self.wall_along(meeting.edges.0, self.plane(edge.id.plane)?, &edge, &meeting.on.0)?.is_some() {
            return self.shared(meeting);
        }
        self.drafts.push(Draft { key: (meeting.edges.0, meeting.on.0.from), line, remarks: Vec::new() });
        Ok(())
    }

    /// The first wall along a stretch, and where.
    fn wall_along(&self, number: usize, plane: &Plane, edge: &RoofEdge, stretch: &Stretch) -> Result<Option<(usize, Stretch)>, Error> {
        let mut found: Option<(usize, Stretch)> = None;
        for &wall in self.near_walls.get(number).map_or(&[][..], Vec::as_slice) {
            let along = self.walls.get(wall).ok_or_else(internal)?.along(plane, edge, stretch, self.tolerance)?;
            if let Some(along) = along.filter(|a| found.as_ref().is_none_or(|(_, f)| a.from < f.from)) {
                found = Some((wall, along));
            }
        }
        Ok(found)
    }

    fn use_wall(&mut self, wall: usize) -> String {
        if let Some(used) = self.used_walls.get_mut(wall) {
            *used = true;
        }
        self.walls.get(wall).map_or_else(String::new, |w| w.name.clone())
    }

    fn free(&mut self, number: usize, taken: &[(Stretch, usize)]) -> Result<(), Error> {
        let edge = self.edge(number)?;
        let taken: Vec<Stretch> = taken.iter().map(|t| t.0).collect();
        for stretch in free_stretches(&edge, &taken, self.tolerance) {
            let mut rest = Some(stretch);
            while let Some(now) = rest.take() {
                let wall = if edge.id.ring == 0 && !self.is_at_curb(&edge)? { self.wall_along(number, self.plane(edge.id.plane)?, &edge, &now)? } else { None };
                let Some((wall, along)) = wall else {
                    self.open(number, &edge, &now)?;
                    break;
                };
                if along.from > now.from {
                    self.open(number, &edge, &Stretch { to: along.from, end: along.start, ..now })?;
                }
                self.against(number, &edge, wall, &along)?;
                if along.to < now.to {
                    rest = Some(Stretch { from: along.to, start: along.end, ..now });
                }
            }
        }
        Ok(())
    }

    /// Whether it is the edge of a cricket's plane along its curb.
    fn is_at_curb(&self, edge: &RoofEdge) -> Result<bool, Error> {
        Ok(edge.id.ring == 0 && edge.id.given == 0 && self.plane(edge.id.plane)?.behind.is_some())
    }

    fn open(&mut self, number: usize, edge: &RoofEdge, stretch: &Stretch) -> Result<(), Error> {
        let plane = self.plane(edge.id.plane)?;
        let piece: Piece = stretch.piece();
        let measures = piece.measures();
        let (side, lie) = measures.side(plane, edge.id, &piece, self.tolerance)?;
        let hole = match edge.id.ring.checked_sub(1) {
            Some(h) => plane.hole_names().get(h),
            None => plane.behind.as_ref().filter(|_| edge.id.given == 0),
        };
        let (kind, beyond) = hole.map_or((lie.free(), Beyond::Open), |name| (lie.curb(), Beyond::Hole(name.clone())));
        let line = measures.line(kind, &piece, None, side, beyond)?;
        self.drafts.push(Draft { key: (number, stretch.from), line, remarks: Vec::new() });
        Ok(())
    }

    fn against(&mut self, number: usize, edge: &RoofEdge, wall: usize, stretch: &Stretch) -> Result<(), Error> {
        let name = self.use_wall(wall);
        let plane = self.plane(edge.id.plane)?;
        let piece = stretch.piece();
        let measures = piece.measures();
        let (side, lie) = measures.side(plane, edge.id, &piece, self.tolerance)?;
        let mut remarks = Vec::new();
        if side.water == Water::Toward {
            remarks.push((cautions::WATER_INTO_WALL, vec![("plane", plane.name().to_owned()), ("wall", name.clone())]));
        }
        let kind = lie.wall();
        if kind == LineKind::Unknown {
            remarks.push((cautions::UNKNOWN_LINE, vec![("why", "water runs into the wall".to_owned())]));
        }
        let line = measures.line(kind, &piece, None, side, Beyond::Wall(name))?;
        self.drafts.push(Draft { key: (number, stretch.from), line, remarks });
        Ok(())
    }

    fn finish(mut self, missed: &[NearMiss], tolerance: Length) -> Result<(Vec<Line>, Vec<Caution>), Error> {
        let mut drafts = core::mem::take(&mut self.drafts);
        drafts.sort_by(|a, b| a.key.0.cmp(&b.key.0).then(a.key.1.total_cmp(&b.key.1)));
        let mut counts = vec![0_usize; LineKind::ALL.len()];
        let (mut lines, mut out) = (Vec::with_capacity(drafts.len()), Vec::new());
        for (number, mut draft) in drafts.into_iter().enumerate() {
            let at = LineKind::ALL.iter().position(|k| *k == draft.line.kind).and_then(|k| counts.get_mut(k)).ok_or_else(internal)?;
            *at += 1;
            draft.line.name = format!("{} {at}", draft.line.kind);
            for (code, arguments) in draft.remarks {
                let caution = Caution::new(code, format!("lines[{number}]"), Source::geometry()).arg("line", &draft.line.name);
                out.push(arguments.into_iter().fold(caution, |c, (name, value)| c.arg(name, value)));
            }
            lines.push(draft.line);
        }
        for miss in missed {
            let (e, f) = (self.edge(miss.edges.0)?, self.edge(miss.edges.1)?);
            let name = |e: &RoofEdge| self.plane(e.id.plane).map(|p| format!("edge {} of {}", e.id.given, p.name()));
            out.push(
                Caution::new(cautions::NEAR_MISS, format!("planes[{}]", e.id.plane), Source::geometry())
                    .arg("first", name(&e)?)
                    .arg("second", name(&f)?)
                    .arg("gap", Length::from_mm(miss.gap)?)
                    .arg("tolerance", tolerance),
            );
        }
        for (i, wall) in self.walls.iter().enumerate().filter(|(i, _)| self.used_walls.get(*i) == Some(&false)) {
            out.push(Caution::new(cautions::UNUSED_WALL, format!("walls[{i}]"), Source::geometry()).arg("wall", &wall.name));
        }
        Ok((lines, out))
    }
}

/// Cautions on planes by themselves.
pub(super) fn plane_cautions(planes: &[Plane], minimum: Option<Pitch>, sliver: Length, sliver_given: bool, out: &mut Vec<Caution>) -> Result<(), Error> {
    for (i, plane) in planes.iter().enumerate() {
        let subject = format!("planes[{i}]");
        if let Some(minimum) = minimum.filter(|m| !plane.pitch().at_least(m)) {
            let caution = Caution::new(cautions::BELOW_MINIMUM, subject.clone(), Source::user());
            out.push(caution.arg("plane", plane.name()).arg("pitch", plane.pitch()).arg("minimum", minimum));
        }
        let width = plane.mean_width();
        if width < sliver.mm() {
            let source = if sliver_given { Source::user() } else { Source::CommonPractice };
            let caution = Caution::new(cautions::SLIVER, subject, source);
            out.push(caution.arg("plane", plane.name()).arg("width", Length::from_mm(width)?).arg("limit", sliver));
        }
    }
    Ok(())
}

/// Records how a line was measured.
pub(super) fn tell<R: Recorder>(line: &Line, planes: &[Plane], r: &mut R) {
    let name = |i: usize| planes.get(i).map_or("", Plane::name);
    r.step(|| {
        Step::new(format!("true length of {}", line.name))
            .formula("plan length / cos(slope of the line)")
            .with("plan length", line.plan_length)
            .with("slope", line.slope)
            .gives(line.length)
            .source(Source::geometry())
    });
    for side in line.sides() {
        r.step(|| {
            Step::new(format!("meeting angle of {} on {}", line.name, name(side.plane)))
                .formula("90 deg - |angle in the plane between the line and the level|")
                .with("skew", side.skew)
                .with("water", side.water)
                .gives(side.meeting_angle)
                .source(Source::geometry())
        });
    }
    if let (Some(bend), Some(dihedral), Some(other)) = (line.bend(), line.dihedral, line.other()) {
        r.step(|| {
            Step::new(format!("bend of {}", line.name))
                .formula("sum of the backing angles, each positive where its plane falls away; its size is 180 deg - the angle between the planes")
                .with("first backing", line.side.backing)
                .with("second backing", other.backing)
                .with("angle between", dihedral)
                .gives(bend)
                .source(Source::geometry())
        });
    }
}
