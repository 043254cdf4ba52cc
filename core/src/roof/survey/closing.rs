//! Closing the joints of a folded roof by least squares, and what it comes to.

use super::folding::{Fold, Freedom, Pose};
use super::joined_planes::{JoinedPlanes, JoinedRoof, JointFit, PlacedPlane, PlaneTie, TieFit};
use super::least_squares::{Fit, Linear, fit};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::num::space::{V3, norm, sub};
use crate::record::{Caution, Source};
use crate::roof::{Opening, PlaneInput, RoofInput, Shape, Vertex, cautions};
use crate::units::{Angle, Length};

const MOST_STEPS: u32 = 100;
/// Slopes in radians that a plane is started from where nothing tells its slope before all joints are closed together.
const GUESSES: [f64; 5] = [0.45, 0.2, 0.7, 0.95, 1.2];

fn offsets(poses: &[Pose]) -> Vec<usize> {
    let mut total = 0;
    poses
        .iter()
        .map(|p| {
            let here = total;
            total += p.freedom.count();
            here
        })
        .collect()
}

fn unknowns(poses: &[Pose]) -> usize {
    poses.iter().map(|p| p.freedom.count()).sum()
}

impl Fold<'_> {
    fn gap(&self, poses: &[Pose], number: usize, end: usize) -> V3 {
        let Some(pair) = self.pairs.get(number).and_then(|p| p.get(end)) else { return [0.0; 3] };
        let place = |side: usize| {
            let (plane, local) = (pair.planes.get(side).copied().unwrap_or(0), pair.local.get(side).copied().unwrap_or_default());
            poses.get(plane).map_or([0.0; 3], |p| p.place(local))
        };
        sub(place(0), place(1))
    }

    fn linear(&self, poses: &[Pose]) -> Linear {
        let first = offsets(poses);
        let mut linear = Linear::new(unknowns(poses));
        for (number, pair) in self.pairs.iter().enumerate() {
            for (end, p) in pair.iter().enumerate() {
                let gap = self.gap(poses, number, end);
                let mut slopes: [Vec<(usize, f64)>; 3] = Default::default();
                for (side, sign) in [(0_usize, 1.0), (1, -1.0)] {
                    let (plane, local) = (p.planes.get(side).copied().unwrap_or(0), p.local.get(side).copied().unwrap_or_default());
                    let (Some(pose), Some(sheet), Some(base)) = (poses.get(plane), self.sheets.get(plane), first.get(plane)) else { continue };
                    for (k, way) in pose.slopes(local, sheet.reach()).into_iter().enumerate() {
                        for (axis, part) in slopes.iter_mut().zip(way) {
                            axis.push((base + k, sign * part));
                        }
                    }
                }
                for (residual, slopes) in gap.iter().zip(&slopes) {
                    linear.add(*residual, slopes);
                }
            }
        }
        for (number, tie) in self.ties.iter().enumerate() {
            let gap = self.tie_gap(poses, number);
            let mut slopes: [Vec<(usize, f64)>; 3] = Default::default();
            let mut push = |base: usize, ways: Vec<V3>, sign: f64| {
                for (k, way) in ways.into_iter().enumerate() {
                    for (axis, part) in slopes.iter_mut().zip(way) {
                        axis.push((base + k, sign * part));
                    }
                }
            };
            if let (Some(pose), Some(sheet), Some(base)) = (poses.get(tie.plane), self.sheets.get(tie.plane), first.get(tie.plane)) {
                push(*base, pose.slopes(sheet.corner(tie.corner), sheet.reach()), 1.0);
            }
            if let (Some(pose), Some(sheet), Some(base)) = (poses.get(tie.from), self.sheets.get(tie.from), first.get(tie.from)) {
                let (_, t, long) = self.tie_end(tie, pose);
                let [start, end] = sheet.edge(tie.edge).map(|p| pose.slopes(p, sheet.reach()));
                let ways = start.iter().zip(&end).map(|(s, e)| {
                    // The way along turns by what the edge's end moves across it.
                    let across = ((e[1] - s[1]) * t[0] - (e[0] - s[0]) * t[1]) / long;
                    let (dt, dn) = ([-t[1] * across, t[0] * across], [t[0] * across, t[1] * across]);
                    [s[0] + tie.along * dt[0] + tie.out * dn[0], s[1] + tie.along * dt[1] + tie.out * dn[1], s[2]]
                });
                push(*base, ways.collect(), -1.0);
            }
            for (residual, slopes) in gap.iter().zip(&slopes) {
                linear.add(*residual, slopes);
            }
        }
        linear
    }

    /// How far a tied corner lies from where its tie says.
    fn tie_gap(&self, poses: &[Pose], number: usize) -> V3 {
        let Some(tie) = self.ties.get(number) else { return [0.0; 3] };
        let (Some(own), Some(other), Some(sheet)) = (poses.get(tie.plane), poses.get(tie.from), self.sheets.get(tie.plane)) else { return [0.0; 3] };
        sub(own.place(sheet.corner(tie.corner)), self.tie_end(tie, other).0)
    }

    fn moved(&self, poses: &[Pose], step: &[f64]) -> Vec<Pose> {
        let first = offsets(poses);
        poses
            .iter()
            .zip(&first)
            .zip(self.sheets)
            .map(|((pose, from), sheet)| pose.moved(step.get(*from..from + pose.freedom.count()).unwrap_or_default(), sheet.reach()))
            .collect()
    }

    fn worst(&self, poses: &[Pose]) -> f64 {
        let joints = (0..self.pairs.len()).flat_map(|n| [0, 1].map(|end| norm(self.gap(poses, n, end))));
        joints.chain((0..self.ties.len()).map(|n| norm(self.tie_gap(poses, n)))).fold(0.0, f64::max)
    }
}

pub(super) fn closed(input: &JoinedPlanes, fold: &Fold<'_>, closure: Length) -> Result<JoinedRoof, Error> {
    let fitted = searched(input, fold, closure)?;
    check_fixed(input, fold, &fitted)?;
    let poses = &fitted.state;
    let joints = joint_fits(input, fold, poses)?;
    let mut faults = Faults::default();
    let mut open: Vec<(usize, &JointFit)> = joints.iter().enumerate().filter(|(_, j)| j.misclosure() > closure).collect();
    open.sort_by_key(|(k, j)| (core::cmp::Reverse(j.misclosure()), *k));
    for (k, j) in open {
        faults.add(
            Error::new(ErrorKind::Geometry, format!("{} and {} do not close", j.first, j.second))
                .at(format!("joints[{k}]"))
                .value_of(j.misclosure())
                .accepts(format!("at most {closure}"))
                .cured_by("measure the planes round these edges again, or check which edge joins which"),
        );
    }
    let ties = tie_fits(input, fold, poses)?;
    for (k, tie) in ties.iter().enumerate().filter(|(_, t)| t.gap > closure) {
        faults.add(
            Error::new(ErrorKind::Geometry, format!("vertex {} of {} does not come where its tie to {} says", tie.corner, tie.plane, tie.from))
                .at(format!("ties[{k}]"))
                .value_of(tie.gap)
                .accepts(format!("at most {closure}"))
                .cured_by("measure the ties of this plane again, and the planes that they run between"),
        );
    }
    for (i, ((pose, sheet), plane)) in poses.iter().zip(fold.sheets).zip(&input.planes).enumerate() {
        let normal = pose.normal();
        let path = format!("planes[{i}]");
        if normal[2] <= 0.0 {
            faults.add(Error::new(ErrorKind::Geometry, format!("{} comes out upright or facing down", plane.name)).at(path).cured_by("check its joints"));
        } else if sheet.knows_up && pose.up[2] <= 0.0 {
            let said = Error::new(ErrorKind::Geometry, format!("{} comes out falling the way that was given as up", plane.name)).at(format!("{path}.up"));
            faults.add(said.cured_by("check which way is up in its coordinates"));
        }
    }
    faults.check()?;
    let misclosure = joints.iter().map(JointFit::misclosure).chain(ties.iter().map(|t| t.gap)).max().unwrap_or(Length::ZERO);
    let roof = roof(input, fold, poses, closure)?;
    let planes = poses.iter().zip(&input.planes).map(|(pose, plane)| placed(pose, &plane.name)).collect();
    let checks = fitted.linear.residuals.len().saturating_sub(unknowns(poses));
    let mut said = Vec::new();
    if checks == 0 && input.planes.len() > 1 {
        said.push(Caution::new(cautions::NOTHING_CLOSES, "joints", Source::geometry()));
    }
    Ok(JoinedRoof { roof, joints, ties, misclosure, planes, checks, steps: fitted.steps, cautions: said })
}

type Fitted = Fit<Vec<Pose>>;

fn searched(input: &JoinedPlanes, fold: &Fold<'_>, closure: Length) -> Result<Fitted, Error> {
    let mut best: Option<Fitted> = None;
    for guess in GUESSES {
        let (start, guessed) = fold.start(input.anchor.corner, guess).map_err(|plane| not_set(input, plane))?;
        let found = fit(start, MOST_STEPS, |p| fold.linear(p), |p, step| fold.moved(p, step));
        if !guessed {
            best = Some(found);
            break;
        }
        let settled = found.settled && found.state.iter().all(|p| p.normal()[2] > 0.0);
        match &best {
            _ if !settled => {}
            Some(b) if fold.worst(&b.state) <= closure.mm() && fold.worst(&found.state) <= closure.mm() => {
                if let Some(i) = other_slope(b, &found) {
                    // Where it can move freely the check that follows says so.
                    if b.linear.factored().rank() >= unknowns(&b.state) {
                        let name = input.planes.get(i).map_or("", |p| p.name.as_str());
                        let said = Error::new(ErrorKind::Conflict, format!("the joints close with more than one slope of {name}"));
                        return Err(said.at(format!("planes[{i}].pitch")).cured_by(format!("measure the pitch of {name}")));
                    }
                }
            }
            Some(b) if fold.worst(&b.state) <= fold.worst(&found.state) => {}
            _ => best = Some(found),
        }
    }
    let best = best.filter(|b| b.settled).ok_or_else(|| {
        let said = Error::new(ErrorKind::Impossible, "the search for a roof that closes did not settle").at("joints");
        said.value_of(format_args!("{MOST_STEPS} steps")).cured_by("check which edge joins which, or give the pitch of more planes")
    })?;
    Ok(best)
}

fn other_slope(a: &Fitted, b: &Fitted) -> Option<usize> {
    a.state.iter().zip(&b.state).position(|(p, q)| (p.up[2] - q.up[2]).abs() > 1e-6)
}

fn not_set(input: &JoinedPlanes, plane: usize) -> Error {
    let name = input.planes.get(plane).map_or("", |p| p.name.as_str());
    Error::new(ErrorKind::Missing, format!("{name} is not fixed: it shares one line only, and which way is up in it is not known"))
        .at(format!("planes[{plane}].up"))
        .accepts("along-y, a level edge, or a second joint at an angle to the first")
        .cured_by(format!("say which edge of {name} is level, or join another of its edges"))
}

/// Names the planes that can still move, and what would fix them.
fn check_fixed(input: &JoinedPlanes, fold: &Fold<'_>, fitted: &Fitted) -> Result<(), Error> {
    let factored = fitted.linear.factored();
    if factored.rank() >= unknowns(&fitted.state) {
        return Ok(());
    }
    let first = offsets(&fitted.state);
    let mut moves = vec![0.0_f64; fitted.state.len()];
    for way in factored.free() {
        for ((m, pose), from) in moves.iter_mut().zip(&fitted.state).zip(&first) {
            let part = way.get(*from..from + pose.freedom.count()).unwrap_or_default();
            *m = part.iter().fold(*m, |m, s| m.max(s.abs()));
        }
    }
    let loose: Vec<bool> = moves.iter().map(|m| *m > 1e-5).collect();
    let is_loose = |plane: usize| loose.get(plane).copied().unwrap_or(false);
    let tied = |plane: usize| fold.ties.iter().any(|t| t.plane == plane && !is_loose(t.from));
    let beside_fixed = |plane: usize| tied(plane) || fold.joints.iter().any(|j| j.planes.contains(&plane) && j.planes.iter().any(|p| !is_loose(*p)));
    let mut faults = Faults::default();
    for (i, plane) in input.planes.iter().enumerate().filter(|(i, _)| is_loose(*i)) {
        let what = match fitted.state.get(i).map(|p| p.freedom) {
            Some(Freedom::HeadingAndPitch) => format!("measure the pitch of {}, or join an edge of it that slopes", plane.name),
            _ => format!("say which edge of {} is level, or join another of its edges", plane.name),
        };
        let error = Error::new(ErrorKind::Missing, format!("{} is not fixed: it can turn about its joints", plane.name)).at(format!("planes[{i}].pitch"));
        faults.add(if beside_fixed(i) { error.cured_by(what) } else { error.cured_by("fix the plane that it hangs on") });
    }
    faults.check()?;
    Err(Error::new(ErrorKind::Missing, "the joints do not fix the roof").at("joints"))
}

fn joint_fits(input: &JoinedPlanes, fold: &Fold<'_>, poses: &[Pose]) -> Result<Vec<JointFit>, Error> {
    let mut out = Vec::with_capacity(input.joints.len());
    for (k, (joint, numbered)) in input.joints.iter().zip(fold.joints).enumerate() {
        let long = |i: usize| {
            let (plane, edge) = (numbered.planes.get(i).copied().unwrap_or(0), numbered.edges.get(i).copied().unwrap_or_default());
            fold.sheets.get(plane).map_or(0.0, |s| s.edge_length(edge))
        };
        out.push(JointFit {
            first: joint.first.clone(),
            second: joint.second.clone(),
            longer_by: if joint.offset.is_some() { Length::ZERO } else { Length::from_mm(long(0) - long(1))? },
            start_gap: Length::from_mm(norm(fold.gap(poses, k, 0)))?,
            end_gap: Length::from_mm(norm(fold.gap(poses, k, 1)))?,
        });
    }
    Ok(out)
}

fn tie_fits(input: &JoinedPlanes, fold: &Fold<'_>, poses: &[Pose]) -> Result<Vec<TieFit>, Error> {
    let fit = |(k, tie): (usize, &PlaneTie)| {
        let gap = Length::from_mm(norm(fold.tie_gap(poses, k)))?;
        Ok(TieFit { plane: tie.plane.clone(), corner: tie.corner, from: tie.from.clone(), gap })
    };
    input.ties.iter().enumerate().map(fit).collect()
}

fn placed(pose: &Pose, name: &str) -> PlacedPlane {
    let n = pose.normal();
    let level = num::hypot(n[0], n[1]);
    let turn = num::atan2_deg(n[1], n[0]);
    let turn = if turn < 0.0 { turn + 360.0 } else { turn + 0.0 };
    let turn = if turn >= 360.0 { 0.0 } else { turn };
    PlacedPlane { name: name.to_owned(), slope: Angle::of_degrees(num::atan2_deg(level, n[2])), down_slope: Angle::of_degrees(turn) }
}

/// Corners that are one, by joint: each plane's vertices are numbered on from those of the planes before it.
struct Corners {
    /// Where each ring of each plane begins.
    first: Vec<Vec<usize>>,
    parent: Vec<usize>,
}

impl Corners {
    fn root(&self, mut corner: usize) -> usize {
        while let Some(&above) = self.parent.get(corner).filter(|p| **p != corner) {
            corner = above;
        }
        corner
    }

    fn of(&self, plane: usize, ring: usize, corner: usize) -> usize {
        self.first.get(plane).and_then(|f| f.get(ring)).copied().unwrap_or(0) + corner
    }

    fn join(&mut self, a: usize, b: usize) {
        let (a, b) = (self.root(a), self.root(b));
        if let Some(parent) = self.parent.get_mut(a.max(b)) {
            *parent = a.min(b);
        }
    }
}

fn roof(input: &JoinedPlanes, fold: &Fold<'_>, poses: &[Pose], closure: Length) -> Result<RoofInput, Error> {
    let mut total = 0;
    let mut first = Vec::with_capacity(fold.sheets.len());
    for sheet in fold.sheets {
        let mut rings = Vec::with_capacity(1 + sheet.holes.len());
        for ring in 0..=sheet.holes.len() {
            rings.push(total);
            total += sheet.ring(ring).len();
        }
        first.push(rings);
    }
    let mut corners = Corners { first, parent: (0..total).collect() };
    for j in fold.joints.iter().filter(|j| j.offset.is_none()) {
        let ends = |i: usize| {
            let plane = j.planes.get(i).copied().unwrap_or(0);
            let edge = j.edges.get(i).copied().unwrap_or_default();
            fold.sheets.get(plane).map_or([0, 0], |s| s.ends(edge)).map(|c| corners.of(plane, edge.0, c))
        };
        let ([a, b], [c, d]) = (ends(0), ends(1));
        for (p, q) in [(a, d), (b, c)] {
            corners.join(p, q);
        }
    }
    let mut sums: Vec<(V3, f64)> = vec![([0.0; 3], 0.0); total];
    for (plane, (pose, sheet)) in poses.iter().zip(fold.sheets).enumerate() {
        for ring in 0..=sheet.holes.len() {
            for (corner, local) in sheet.ring(ring).iter().enumerate() {
                let at = pose.place(*local);
                if let Some((sum, count)) = sums.get_mut(corners.root(corners.of(plane, ring, corner))) {
                    *sum = [sum[0] + at[0], sum[1] + at[1], sum[2] + at[2]];
                    *count += 1.0;
                }
            }
        }
    }
    let origin = input.anchor.at;
    let vertex = |at: V3| -> Result<Vertex, Error> {
        let one = |o: Length, d: f64| (o + Length::from_mm(d)?).length();
        Ok(Vertex::new(one(origin.x, at[0])?, one(origin.y, at[1])?, one(origin.z, at[2])?)).map_err(|e: Error| e.at("anchor.at"))
    };
    let mut planes = Vec::with_capacity(poses.len());
    for (plane, (sheet, given)) in fold.sheets.iter().zip(&input.planes).enumerate() {
        let ring = |ring: usize| -> Result<Vec<Vertex>, Error> {
            let middle = |corner: usize| {
                let (sum, count) = sums.get(corners.root(corners.of(plane, ring, corner))).copied().unwrap_or(([0.0; 3], 1.0));
                vertex(sum.map(|s| s / count))
            };
            (0..sheet.ring(ring).len()).map(middle).collect()
        };
        let mut outer = ring(0)?;
        if sheet.turned.first().copied().unwrap_or(false)
            && let Some(rest) = outer.get_mut(1..)
        {
            rest.reverse();
        }
        let mut holes = Vec::with_capacity(given.holes.len());
        for (k, hole) in given.holes.iter().enumerate() {
            holes.push(Opening { name: hole.name.clone(), ring: ring(k + 1)? });
        }
        planes.push(PlaneInput { name: given.name.clone(), shape: Shape::Space { outer, holes, flatness: Some(closure) } });
    }
    Ok(RoofInput { walls: input.walls.clone(), ..RoofInput::new(planes) })
}
