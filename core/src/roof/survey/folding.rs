//! Setting planes in space one after the other, each folded about the edges that it shares with those that stand.

use super::joined_planes::{EdgeAt, Numbered, NumberedTie};
use crate::num;
use crate::num::space::{V3, cross, dot, norm, scale, sub};
use crate::units::Angle;

type V2 = [f64; 2];

/// An edge within this sine of the level says too little of the pitch.
const NEARLY_LEVEL: f64 = 0.02;

/// A plane in its own coordinates, in millimetres from its first vertex.
#[derive(Debug, Clone)]
pub(super) struct Sheet {
    pub(super) local: Vec<V2>,
    pub(super) holes: Vec<Vec<V2>>,
    /// For each ring whether it was given with the plane on its right: the plane's own clockwise, a hole counter-clockwise.
    pub(super) turned: Vec<bool>,
    /// Whether y runs up the slope.
    pub(super) knows_up: bool,
    pub(super) pitch_ratio: Option<f64>,
}

impl Sheet {
    pub(super) fn corner(&self, number: usize) -> V2 {
        self.local.get(number % self.local.len().max(1)).copied().unwrap_or_default()
    }

    /// The plane's own ring, or a hole from 1.
    pub(super) fn ring(&self, ring: usize) -> &[V2] {
        let hole = |k: usize| self.holes.get(k).map_or(&[][..], Vec::as_slice);
        ring.checked_sub(1).map_or(self.local.as_slice(), hole)
    }

    /// The numbers of an edge's ends in its ring, with the plane on the left.
    pub(super) fn ends(&self, (ring, edge): EdgeAt) -> [usize; 2] {
        let next = (edge + 1) % self.ring(ring).len().max(1);
        if self.turned.get(ring).copied().unwrap_or(false) { [next, edge] } else { [edge, next] }
    }

    /// Where an edge starts and ends, with the plane on the left.
    pub(super) fn edge(&self, edge: EdgeAt) -> [V2; 2] {
        self.ends(edge).map(|i| self.ring(edge.0).get(i).copied().unwrap_or_default())
    }

    pub(super) fn edge_length(&self, edge: EdgeAt) -> f64 {
        let [a, b] = self.edge(edge);
        num::hypot(b[0] - a[0], b[1] - a[1])
    }

    /// How far the plane reaches: what turns its angles into lengths.
    pub(super) fn reach(&self) -> f64 {
        self.local.iter().fold(1.0, |m: f64, p| m.max(num::hypot(p[0], p[1])))
    }
}

/// Two places of two planes that are one place of the roof.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pair {
    pub(super) planes: [usize; 2],
    pub(super) local: [V2; 2],
}

/// The two pairs of each joint: where the first edge starts, and where it ends.
pub(super) fn pairs_of(sheets: &[Sheet], joints: &[Numbered]) -> Vec<[Pair; 2]> {
    joints
        .iter()
        .filter_map(|j| {
            let (p, q) = (sheets.get(j.planes[0])?, sheets.get(j.planes[1])?);
            let [a, b] = p.edge(j.edges[0]);
            let [c, d] = q.edge(j.edges[1]);
            let (mut start, mut end) = (a, b);
            if let Some(offset) = j.offset {
                let long = p.edge_length(j.edges[0]).max(f64::MIN_POSITIVE);
                let at = |s: f64| [a[0] + (b[0] - a[0]) / long * s, a[1] + (b[1] - a[1]) / long * s];
                (start, end) = (at(offset), at(offset + q.edge_length(j.edges[1])));
            }
            let pair = |first: V2, second: V2| Pair { planes: j.planes, local: [first, second] };
            Some([pair(start, d), pair(end, c)])
        })
        .collect()
}

/// How a plane may still turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Freedom {
    /// Set in space.
    None,
    /// About the upright axis; its pitch is known.
    Heading,
    /// About the upright axis and about its level axis.
    HeadingAndPitch,
    /// Any way.
    Any,
}

impl Freedom {
    /// Unknowns, those of its place among them.
    pub(super) fn count(self) -> usize {
        match self {
            Freedom::None => 0,
            Freedom::Heading => 4,
            Freedom::HeadingAndPitch => 5,
            Freedom::Any => 6,
        }
    }
}

/// A plane in space: where its first vertex stands and how its axes lie.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pose {
    pub(super) at: V3,
    pub(super) across: V3,
    pub(super) up: V3,
    pub(super) freedom: Freedom,
    /// The fall's direction in plan and the slope, in radians, where y runs up the slope.
    heading: f64,
    slope: f64,
}

impl Pose {
    fn sloping(at: V3, heading: f64, slope: f64, freedom: Freedom) -> Pose {
        let (fx, fy) = (num::cos(heading), num::sin(heading));
        Pose::along_fall(at, [fx, fy], num::cos(slope), num::sin(slope), freedom, heading, slope)
    }

    fn along_fall(at: V3, fall: V2, cosine: f64, sine: f64, freedom: Freedom, heading: f64, slope: f64) -> Pose {
        Pose { at, across: [-fall[1], fall[0], 0.0], up: [-fall[0] * cosine, -fall[1] * cosine, sine], freedom, heading, slope }
    }

    /// The plane that is set in space, with this corner at the origin.
    pub(super) fn anchored(sheet: &Sheet, corner: usize, fall: Angle) -> Pose {
        let ratio = sheet.pitch_ratio.unwrap_or(0.0);
        let factor = (1.0 + ratio * ratio).sqrt();
        let mut pose = Pose::along_fall([0.0; 3], [fall.cos(), fall.sin()], 1.0 / factor, ratio / factor, Freedom::None, fall.radians(), num::atan(ratio));
        pose.at = scale(pose.place(sheet.corner(corner)), -1.0);
        pose
    }

    pub(super) fn turned(&self, p: V2) -> V3 {
        [0, 1, 2].map(|i: usize| self.across.get(i).copied().unwrap_or(0.0) * p[0] + self.up.get(i).copied().unwrap_or(0.0) * p[1])
    }

    /// Where a place of the plane lies in space.
    pub(super) fn place(&self, p: V2) -> V3 {
        let d = self.turned(p);
        [self.at[0] + d[0], self.at[1] + d[1], self.at[2] + d[2]]
    }

    pub(super) fn normal(&self) -> V3 {
        cross(self.across, self.up)
    }

    /// How a place moves with each unknown; turns are counted in millimetres at `reach`.
    pub(super) fn slopes(&self, p: V2, reach: f64) -> Vec<V3> {
        let mut out = vec![[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];
        let d = self.turned(p);
        match self.freedom {
            Freedom::None => out.clear(),
            Freedom::Heading => out.push(scale(cross([0.0, 0.0, 1.0], d), 1.0 / reach)),
            Freedom::HeadingAndPitch => {
                out.push(scale(cross([0.0, 0.0, 1.0], d), 1.0 / reach));
                out.push(scale(self.normal(), p[1] / reach));
            }
            Freedom::Any => out.extend([[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]].map(|axis| scale(cross(axis, d), 1.0 / reach))),
        }
        out
    }

    /// The pose after a step of its unknowns.
    pub(super) fn moved(&self, step: &[f64], reach: f64) -> Pose {
        let part = |i: usize| step.get(i).copied().unwrap_or(0.0);
        let at = [self.at[0] + part(0), self.at[1] + part(1), self.at[2] + part(2)];
        match self.freedom {
            Freedom::None => *self,
            Freedom::Heading => Pose::sloping(at, self.heading + part(3) / reach, self.slope, self.freedom),
            Freedom::HeadingAndPitch => Pose::sloping(at, self.heading + part(3) / reach, self.slope + part(4) / reach, self.freedom),
            Freedom::Any => {
                let turn = scale([part(3), part(4), part(5)], 1.0 / reach);
                let across = rotated(self.across, turn);
                let up = rotated(self.up, turn);
                // Kept square and of unit length, which rounding would wear away.
                let across = scale(across, 1.0 / norm(across));
                let up = sub(up, scale(across, dot(up, across)));
                Pose { at, across, up: scale(up, 1.0 / norm(up)), ..*self }
            }
        }
    }
}

/// A vector turned about an axis by the axis' length (Rodrigues).
fn rotated(v: V3, turn: V3) -> V3 {
    let angle = norm(turn);
    if angle == 0.0 {
        return v;
    }
    let k = scale(turn, 1.0 / angle);
    let (c, s) = (num::cos(angle), num::sin(angle));
    let kv = cross(k, v);
    let along = dot(k, v) * (1.0 - c);
    [v[0] * c + kv[0] * s + k[0] * along, v[1] * c + kv[1] * s + k[1] * along, v[2] * c + kv[2] * s + k[2] * along]
}

/// Everything that is to be folded.
pub(super) struct Fold<'a> {
    pub(super) sheets: &'a [Sheet],
    pub(super) joints: &'a [Numbered],
    pub(super) ties: &'a [NumberedTie],
    pub(super) pairs: Vec<[Pair; 2]>,
    pub(super) anchor: usize,
    pub(super) anchor_fall: Angle,
}

/// A shared edge as the plane that is to be set has it, and as it stands in space.
#[derive(Clone, Copy)]
struct Standing {
    local: [V2; 2],
    space: [V3; 2],
}

impl Standing {
    fn local_direction(&self) -> V2 {
        let d = [self.local[1][0] - self.local[0][0], self.local[1][1] - self.local[0][1]];
        let long = num::hypot(d[0], d[1]).max(f64::MIN_POSITIVE);
        [d[0] / long, d[1] / long]
    }

    fn direction(&self) -> V3 {
        let d = sub(self.space[1], self.space[0]);
        scale(d, 1.0 / norm(d).max(f64::MIN_POSITIVE))
    }
}

impl Fold<'_> {
    fn freedom(&self, plane: usize) -> Freedom {
        match self.sheets.get(plane) {
            Some(s) if !s.knows_up => Freedom::Any,
            Some(s) if s.pitch_ratio.is_some() => Freedom::Heading,
            _ => Freedom::HeadingAndPitch,
        }
    }

    fn standing(&self, plane: usize, poses: &[Option<Pose>]) -> Vec<Standing> {
        let mut out = Vec::new();
        for pair in &self.pairs {
            for (own, other) in [(0, 1), (1, 0)] {
                let get = |side: usize, of: &Pair| (of.planes.get(side).copied().unwrap_or(0), of.local.get(side).copied().unwrap_or_default());
                let (number, start) = get(own, &pair[0]);
                let (beside, there) = get(other, &pair[0]);
                let (_, end) = get(own, &pair[1]);
                let (_, far) = get(other, &pair[1]);
                if number == plane
                    && let Some(Some(pose)) = poses.get(beside)
                {
                    out.push(Standing { local: [start, end], space: [pose.place(there), pose.place(far)] });
                }
            }
        }
        // Two corners that are tied are the ends of a line that stands.
        let tied: Vec<(V2, V3)> = self.ties.iter().filter(|t| t.plane == plane).filter_map(|t| self.tied(t, poses)).collect();
        for (i, a) in tied.iter().enumerate() {
            for b in tied.iter().skip(i + 1).filter(|b| num::hypot(b.0[0] - a.0[0], b.0[1] - a.0[1]) > 1.0) {
                out.push(Standing { local: [a.0, b.0], space: [a.1, b.1] });
            }
        }
        out
    }

    fn tied(&self, tie: &NumberedTie, poses: &[Option<Pose>]) -> Option<(V2, V3)> {
        let pose = poses.get(tie.from).and_then(Option::as_ref)?;
        let local = self.sheets.get(tie.plane)?.corner(tie.corner);
        Some((local, self.tie_end(tie, pose).0))
    }

    /// Where a tie says that its corner lies, with the way along its edge in plan and the edge's length there.
    pub(super) fn tie_end(&self, tie: &NumberedTie, pose: &Pose) -> (V3, V2, f64) {
        let [start, end] = self.sheets.get(tie.from).map_or([[0.0; 2]; 2], |s| s.edge(tie.edge)).map(|p| pose.place(p));
        let d = [end[0] - start[0], end[1] - start[1]];
        let long = num::hypot(d[0], d[1]).max(f64::MIN_POSITIVE);
        let t = [d[0] / long, d[1] / long];
        // With the plane on the left, away from it is to the right: (y, -x).
        ([start[0] + tie.along * t[0] + tie.out * t[1], start[1] + tie.along * t[1] - tie.out * t[0], start[2] + tie.up], t, long)
    }

    /// Every plane set after those that it joins; the slopes that nothing tells yet are guessed. Says whether one was, or which plane cannot be set.
    pub(super) fn start(&self, corner: usize, guess: f64) -> Result<(Vec<Pose>, bool), usize> {
        let mut poses: Vec<Option<Pose>> = vec![None; self.sheets.len()];
        let mut guessed = false;
        if let (Some(place), Some(sheet)) = (poses.get_mut(self.anchor), self.sheets.get(self.anchor)) {
            *place = Some(Pose::anchored(sheet, corner, self.anchor_fall));
        }
        while poses.iter().any(Option::is_none) {
            let mut best: Option<(f64, usize, Pose)> = None;
            for plane in (0..poses.len()).filter(|p| poses.get(*p).is_some_and(Option::is_none)) {
                if let Some((certainty, pose)) = self.set(plane, &self.standing(plane, &poses), guess)
                    && best.as_ref().is_none_or(|b| certainty > b.0)
                {
                    best = Some((certainty, plane, pose));
                }
            }
            let Some((certainty, plane, pose)) = best else {
                return Err(poses.iter().position(Option::is_none).unwrap_or(0));
            };
            guessed |= certainty <= 0.0;
            if let Some(place) = poses.get_mut(plane) {
                *place = Some(pose);
            }
        }
        Ok((poses.into_iter().flatten().collect(), guessed))
    }

    /// The plane set by what stands beside it, and how surely: 0 for a guess.
    fn set(&self, plane: usize, beside: &[Standing], guess: f64) -> Option<(f64, Pose)> {
        let sheet = self.sheets.get(plane)?;
        let freedom = self.freedom(plane);
        if freedom == Freedom::Any {
            return set_by_two(beside);
        }
        // The steepest of the shared edges tells most.
        let s = beside.iter().copied().reduce(|a, b| if b.local_direction()[1].abs() > a.local_direction()[1].abs() { b } else { a })?;
        let (l, d) = (s.local_direction(), s.direction());
        let (certainty, slope) = match sheet.pitch_ratio {
            Some(ratio) => (3.0, num::atan(ratio)),
            None if l[1].abs() > NEARLY_LEVEL => (2.0 + l[1].abs(), num::asin((d[2] / l[1]).clamp(0.01, 0.999))),
            None => (0.0, guess),
        };
        let beside_across = num::atan2(l[1] * num::cos(slope), l[0]);
        let heading = num::atan2(d[1], d[0]) - beside_across - core::f64::consts::FRAC_PI_2;
        Some((certainty, brought(Pose::sloping([0.0; 3], heading, slope, freedom), &[s])))
    }
}

/// The pose with its shared edges' middles brought together.
fn brought(mut pose: Pose, beside: &[Standing]) -> Pose {
    let mut sum = [0.0; 3];
    let mut count = 0.0;
    for s in beside {
        for (local, space) in s.local.iter().zip(&s.space) {
            let d = sub(*space, pose.turned(*local));
            sum = [sum[0] + d[0], sum[1] + d[1], sum[2] + d[2]];
            count += 1.0;
        }
    }
    pose.at = scale(sum, 1.0 / f64::max(count, 1.0));
    pose
}

/// A plane that does not know up, from the two shared edges that stand most nearly square to each other.
fn set_by_two(beside: &[Standing]) -> Option<(f64, Pose)> {
    let mut best: Option<(f64, Standing, Standing)> = None;
    for (i, a) in beside.iter().enumerate() {
        for b in beside.iter().skip(i + 1) {
            let (p, q) = (a.local_direction(), b.local_direction());
            let sine = (p[0] * q[1] - p[1] * q[0]).abs();
            if sine > NEARLY_LEVEL && best.as_ref().is_none_or(|x| sine > x.0) {
                best = Some((sine, *a, *b));
            }
        }
    }
    let (sine, a, b) = best?;
    let (p, q) = (a.local_direction(), b.local_direction());
    let u = a.direction();
    let normal = cross(u, b.direction());
    let size = norm(normal);
    let normal = (size > 0.0).then(|| scale(normal, (p[0] * q[1] - p[1] * q[0]).signum() / size))?;
    let v = cross(normal, u);
    let axis = |x: f64, y: f64| [x * u[0] + y * v[0], x * u[1] + y * v[1], x * u[2] + y * v[2]];
    let pose = Pose { at: [0.0; 3], across: axis(p[0], -p[1]), up: axis(p[1], p[0]), freedom: Freedom::Any, heading: 0.0, slope: 0.0 };
    Some((1.0 + sine, brought(pose, &[a, b])))
}
