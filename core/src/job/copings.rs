//! The copings of a job: on which walls they stand, and what their runs and corners take.

use super::build::Scheduled;
use super::input::Job;
use super::trims::sheet_of;
use crate::assembly::{
    CopedWall, CopingCorner, CopingCornerKind, CopingEnd, CopingJoint, CopingMeets, CopingPieces, CopingPlan, CopingRun, CopingTee, CopingWalls, Flank,
    PlainWall, RunOfCoping,
};
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::{Along, Coping, CopingDetail, JunctionTrim, LeastRule, Side, Solved};
use crate::num;
use crate::record::{Calculation, Recorder};
use crate::roof::{Beyond, Line, Point, Roof, Wall};
use crate::stock::{LapMode, LapRun};
use crate::units::{Length, Sum};

/// A coping and the walls of the roof that have it: parapets, by the names that the roof gives them. A wall's top is the upper edge of its own.
///
/// ```
/// use seamwright::job::Job;
/// let job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/annexe_job.json")))?;
/// assert_eq!(job.copings[0].walls, ["east parapet", "north parapet"]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingChoice {
    /// The walls, by name. Each has its `top` in the roof, and its line is the face over the roof.
    pub walls: Vec<String>,
    /// The walls, from face to face.
    pub thickness: Length,
    /// The coping in its section.
    pub detail: CopingDetail,
    /// The longest piece.
    pub piece: Length,
    /// How long the legs of corner and tee pieces are made.
    pub corner: Length,
    /// How long they must be.
    pub corner_leg: LeastRule,
    /// The joints between pieces.
    pub joint: CopingJoint,
    /// The longest piece of cleat.
    pub cleat_piece: Length,
    /// Between pieces of cleat.
    pub cleat_gap: Length,
}

/// A run of coping, worked out.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/annexe_job.json")))?.compute()?;
/// assert_eq!(packet.copings.iter().map(|c| c.name.as_str()).collect::<Vec<_>>(), ["coping 1", "coping 2"]);
/// assert_eq!(packet.coping_corners.len(), 1, "one piece, whichever run it is looked for from");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingItem {
    /// Its name: coping 1, coping 2 and so on.
    pub name: String,
    /// Where in the job its choice stands.
    pub choice: String,
    /// Where it runs, and what it meets.
    pub run: RunOfCoping,
    /// The coping as it was worked out.
    pub coping: Coping,
    /// Its section.
    pub section: Solved,
    /// What the run takes.
    pub pieces: CopingPieces,
}

/// A corner or tee piece of coping: made once, whichever of its runs it is looked for from.
///
/// See [`CopingItem`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingCornerItem {
    /// Its name: coping corner 1 and so on.
    pub name: String,
    /// What it is.
    pub corner: CopingCorner,
    /// The runs that meet there, by name.
    pub runs: [String; 2],
    /// The leg along each of them; at a tee the first goes through, with a leg to both sides.
    pub legs: [Length; 2],
    /// The lengths of coping that it is cut from, each to its longest edge.
    pub cut: [Length; 2],
}

/// All of them.
#[derive(Debug, Default)]
pub(super) struct Copings {
    pub(super) items: Vec<CopingItem>,
    pub(super) corners: Vec<CopingCornerItem>,
}

/// The lines of the roof that run into a wall.
fn lines_at<'a>(roof: &'a Roof, wall: &'a str) -> impl Iterator<Item = (usize, &'a Line)> + 'a {
    roof.lines().iter().enumerate().filter(move |(_, l)| matches!(&l.beyond, Beyond::Wall(name) if name == wall))
}

fn direction(from: Point, to: Point) -> Result<[f64; 2], Error> {
    Ok([(to.x - from.x).length()?.mm(), (to.y - from.y).length()?.mm()])
}

/// On which side of a wall's line it stands: not on that of the planes that run into it.
fn stands(roof: &Roof, wall: &Wall, path: &str) -> Result<Flank, Error> {
    let d = direction(wall.from, wall.to)?;
    let (mut left, mut right) = (false, false);
    for (_, line) in lines_at(roof, &wall.name) {
        // A plane lies on the left of its own line.
        let l = direction(Point::new(line.start.x, line.start.y), Point::new(line.end.x, line.end.y))?;
        if l[0] * d[0] + l[1] * d[1] > 0.0 { left = true } else { right = true }
    }
    let fault = |message: &'static str, cure: &'static str| Error::new(ErrorKind::Conflict, message).at(path).value_of(&wall.name).cured_by(cure);
    match (left, right) {
        (true, false) => Ok(Flank::Right),
        (false, true) => Ok(Flank::Left),
        (true, true) => Err(fault("planes run into both sides of the wall's line, which is one face", "a wall for each face, its thickness apart")
            .accepts("a wall with planes on one side of its line")),
        (false, false) => {
            Err(fault("no plane runs into the wall, so that the side of the roof is not known", "the wall's line on an edge of a plane, its top over it")
                .accepts("a wall that a plane of the roof runs into"))
        }
    }
}

impl Job {
    /// What can be checked before the roof is known.
    pub(super) fn check_copings(&self, faults: &mut Faults) {
        for (i, coping) in self.copings.iter().enumerate() {
            let path = format!("copings[{i}]");
            if coping.walls.is_empty() {
                faults.add(Error::new(ErrorKind::Missing, "a coping stands on a wall").at(format!("{path}.walls")).accepts("the name of a wall or more"));
            }
            for (k, name) in coping.walls.iter().enumerate() {
                let at = format!("{path}.walls[{k}]");
                match self.roof.walls.iter().position(|w| w.name == *name) {
                    None => {
                        let names = self.roof.walls.iter().map(|w| w.name.as_str()).collect::<Vec<_>>().join(", ");
                        let accepts = if names.is_empty() { "a wall of roof.walls, which has none".to_owned() } else { names };
                        faults.add(Error::new(ErrorKind::Unknown, "the roof has no wall of this name").at(at).value_of(name).accepts(accepts));
                    }
                    Some(wall) => {
                        if self.roof.walls.get(wall).is_some_and(|w| w.top.is_none()) {
                            let error = Error::new(ErrorKind::Missing, "a wall with a coping has a top").at(format!("roof.walls[{wall}].top"));
                            faults.add(error.value_of(name).accepts("the height of the upper edge of its top"));
                        }
                    }
                }
                let before = self.copings.iter().take(i).flat_map(|c| &c.walls).chain(coping.walls.iter().take(k));
                if before.into_iter().any(|other| other == name) {
                    let error = Error::new(ErrorKind::Conflict, "a wall that has two copings").at(format!("{path}.walls[{k}]")).value_of(name);
                    faults.add(error.accepts("each wall once"));
                }
            }
            for (field, length) in [("thickness", coping.thickness), ("corner", coping.corner), ("piece", coping.piece)] {
                faults.keep(length.positive(&format!("{path}.{field}")));
            }
        }
        if !self.copings.is_empty() && self.temperatures.is_none() {
            let error = Error::new(ErrorKind::Missing, "the gaps of a coping follow from its metal's temperatures").at("temperatures");
            faults.add(error.accepts("the metal's temperatures when laid, at its coldest and at its hottest"));
        }
    }

    /// Where the copings run.
    fn coping_plan<R: Recorder>(&self, r: &mut R, roof: &Roof) -> Result<CopingPlan, Error> {
        let (mut walls, mut paths, mut faults) = (Vec::new(), Vec::new(), Faults::default());
        for (i, coping) in self.copings.iter().enumerate() {
            for (k, name) in coping.walls.iter().enumerate() {
                let path = format!("copings[{i}].walls[{k}]");
                let Some(wall) = roof.walls().iter().find(|w| w.name == *name) else { continue };
                let Some(flank) = faults.keep(stands(roof, wall, &path)) else { continue };
                let (name, top) = (name.clone(), wall.top.unwrap_or_default());
                walls.push(CopedWall { name, from: wall.from, to: wall.to, top, thickness: coping.thickness, stands: flank, coping: i });
                paths.push((format!("copings[{i}].thickness"), path));
            }
        }
        faults.check()?;
        let coped = |wall: &&Wall| !walls.iter().any(|w: &CopedWall| w.name == wall.name);
        let plain = roof.walls().iter().filter(coped).map(|w| PlainWall { name: w.name.clone(), from: w.from, to: w.to, top: w.top }).collect();
        let plan = CopingWalls { walls, plain, tolerance: roof.tolerance() };
        r.part(|| plan.title(), |r| plan.run(r)).map_err(|e| {
            paths
                .iter()
                .enumerate()
                .fold(e, |e, (k, (thickness, path))| e.moved(&format!("walls[{k}].thickness"), thickness).moved(&format!("walls[{k}]"), path))
        })
    }

    /// Whether the wall stands high enough over the roof for the coping's face, and for the flashing that goes up it.
    fn check_height(&self, roof: &Roof, solved: &[Option<Solved>], choice: usize, run: &RunOfCoping, faults: &mut Faults) -> Result<(), Error> {
        let Some(coping) = self.copings.get(choice) else { return Ok(()) };
        let drop = coping.detail.fall.rise_over(coping.thickness)?;
        for name in &run.walls {
            let Some((number, wall)) = roof.walls().iter().enumerate().find(|(_, w)| w.name == *name) else { continue };
            let top = wall.top.unwrap_or_default();
            for (i, line) in lines_at(roof, name) {
                let height = (Sum::from(top) - drop - line.start.z.max(line.end.z)).length()?;
                let needed = coping.detail.roof_side.depth;
                if height <= needed {
                    let error = Error::new(
                        ErrorKind::Impossible,
                        format!("the coping's face reaches the roof at {}, {height} under the edge of the wall's top", line.name),
                    );
                    faults.add(
                        error
                            .at(format!("copings[{choice}].detail.roof_side.depth"))
                            .value_of(needed)
                            .accepts(format!("less than {height}"))
                            .cured_by("a higher wall, or a shallower face"),
                    );
                    continue;
                }
                // Square to the line stands higher than plumb where the line slopes.
                let corners = solved.get(i).and_then(Option::as_ref).into_iter().flat_map(|s| &s.trims).flat_map(|t| &t.corners);
                let up = Length::from_mm(corners.map(|c| c.z.mm()).fold(0.0, f64::max) / line.slope.cos())?;
                if up > height {
                    let error =
                        Error::new(ErrorKind::Impossible, format!("the flashing of {} goes up past the wall's top by {}", line.name, (up - height).length()?));
                    let accepts = format!("{} or more", (Sum::from(top) + up - height).length()?);
                    faults.add(
                        error.at(format!("roof.walls[{number}].top")).value_of(top).accepts(accepts).cured_by("a higher wall, or a flashing with a lower leg"),
                    );
                }
            }
        }
        Ok(())
    }

    /// Every run and corner.
    pub(super) fn copings<R: Recorder>(&self, r: &mut R, roof: &Roof, solved: &[Option<Solved>], scheduled: &mut Scheduled) -> Result<Copings, Error> {
        let (false, Some(temperatures)) = (self.copings.is_empty(), &self.temperatures) else { return Ok(Copings::default()) };
        let plan = self.coping_plan(r, roof)?;
        let (mut out, mut faults) = (Copings::default(), Faults::default());
        for (number, run) in plan.runs.iter().enumerate() {
            let Some(choice) = self.copings.get(run.coping) else { continue };
            let (name, path) = (format!("coping {}", number + 1), format!("copings[{}]", run.coping));
            self.check_height(roof, solved, run.coping, run, &mut faults)?;
            let coping = Coping { thickness: choice.thickness, detail: choice.detail.clone() };
            let section = r.part(|| format!("section of {name}"), |r| coping.run(r)).map_err(|e| e.under(&path).about(&name));
            let Some(mut section) = faults.keep(section) else { continue };
            scheduled.apply_named(self, &name, "coping", &mut section.along);
            let leg = choice.corner;
            let end = |meets: &CopingMeets| match meets {
                CopingMeets::Free => CopingEnd::Free,
                CopingMeets::Corner { .. } => CopingEnd::Corner { leg },
                CopingMeets::Wall { .. } => CopingEnd::Wall,
            };
            let metal = sheet_of(self, choice.detail.sheet.thickness, &format!("{path}.detail.sheet.thickness"))?;
            let made = CopingRun {
                coping: coping.clone(),
                run: run.length,
                ends: [end(&run.ends[0]), end(&run.ends[1])],
                corner_leg: choice.corner_leg.clone(),
                piece: choice.piece,
                least_piece: self.supplies.trims.least_piece,
                joint: choice.joint.clone(),
                cleat_piece: choice.cleat_piece,
                cleat_gap: choice.cleat_gap,
                end_distance: self.supplies.crew.end_distance,
                tees: run.tees.iter().map(|t| CopingTee { at: t.at, width: t.width, leg, side: t.side }).collect(),
                range: temperatures.range(&metal),
            };
            let pieces = r.part(|| format!("run of {name}"), |r| made.of_section(&section, r));
            let Some(pieces) = faults.keep(pieces.map_err(|e| placed(e, &path, &name))) else { continue };
            out.items.push(CopingItem { name, choice: path, run: run.clone(), coping, section, pieces });
        }
        faults.check()?;
        for (number, corner) in plan.corners.into_iter().enumerate() {
            out.corners.extend(self.coping_corner(number, corner, &out.items)?);
        }
        Ok(out)
    }

    fn coping_corner(&self, number: usize, corner: CopingCorner, items: &[CopingItem]) -> Result<Option<CopingCornerItem>, Error> {
        let [Some(one), Some(two)] = corner.runs.map(|run| items.get(run)) else { return Ok(None) };
        let leg = |item: &CopingItem| self.copings.get(item.run.coping).map_or(Length::ZERO, |c| c.corner);
        let legs = [leg(one), leg(two)];
        let cut = match corner.kind {
            CopingCornerKind::Tee => {
                let width = one.run.tees.iter().find(|t| t.corner == number).map_or(Length::ZERO, |t| t.width);
                [(legs[0] * 2 + width).length()?, legs[1]]
            }
            CopingCornerKind::Outside | CopingCornerKind::Inside => {
                // The mitre moves along the run by so much for each step out of the wall's face.
                let by = num::tan_deg(corner.turn.degrees() / 2.0);
                let longest = |item: &CopingItem, leg: Length| -> Result<Length, Error> {
                    let across = item.section.trims.iter().filter(|t| t.name == "coping").flat_map(|t| &t.corners).map(|c| c.x.mm() * by);
                    Length::from_mm(leg.mm() + across.fold(0.0, f64::max))
                };
                [longest(one, legs[0])?, longest(two, legs[1])?]
            }
        };
        Ok(Some(CopingCornerItem { name: format!("coping corner {}", number + 1), runs: [one.name.clone(), two.name.clone()], legs, cut, corner }))
    }
}

/// A refusal of a run in the job's own terms.
fn placed(e: Error, path: &str, name: &str) -> Error {
    let leg = format!("{path}.corner");
    let mut e = e.under(path).about(name);
    for (from, to) in
        [("coping.thickness", "thickness"), ("coping.detail", "detail"), ("ends[0].corner.leg", "corner"), ("ends[1].corner.leg", "corner"), ("ends", "corner")]
    {
        e = e.moved(&format!("{path}.{from}"), &format!("{path}.{to}"));
    }
    e = e.moved(&format!("{path}.least_piece"), "supplies.trims.least_piece").moved(&format!("{path}.end_distance"), "supplies.crew.end_distance");
    e = e.moved(&format!("{path}.range"), "temperatures");
    tees_moved(e, path, &leg)
}

/// A tee's own places are those of the walls; what can be cured of it is its leg.
fn tees_moved(e: Error, path: &str, leg: &str) -> Error {
    let tee = format!("{path}.tees");
    let found =
        e.path().strip_prefix(tee.as_str()).and_then(|rest| rest.strip_prefix('[')).and_then(|rest| rest.split_once(']')).map(|(k, _)| format!("{tee}[{k}]"));
    match found {
        Some(at) => e.moved(&format!("{at}.leg"), leg).moved(&at, leg),
        None => e,
    }
}

impl CopingItem {
    /// The pieces of a trim of its section, in the order in which they are set: straight pieces of the coping, cleats, and for no trim the joint plates.
    fn set(&self, trim: Option<&JunctionTrim>, choice: &CopingChoice) -> Result<Vec<Length>, Error> {
        let Some(trim) = trim else { return Ok(vec![choice.joint.plate; usize::try_from(self.pieces.joints).unwrap_or_default()]) };
        if trim.name == "coping" {
            return Ok(self.pieces.pieces.iter().flat_map(|p| core::iter::repeat_n(p.length, usize::try_from(p.count).unwrap_or_default())).collect());
        }
        let side =
            self.section.along.iter().find(|a| matches!(a.what, Along::ContinuousCleat) && a.name.starts_with(&*trim.name)).map_or(Side::Second, |a| a.side);
        let mut out = Vec::new();
        for run in crate::assembly::coping_stretches(&self.run.tees, self.run.length, side)? {
            let (longest, gap) = (choice.cleat_piece, choice.cleat_gap);
            let cleat = LapRun { run, longest, lap: Length::ZERO, gap, least_piece: Length::ZERO, mode: LapMode::FullThenRest };
            out.extend(cleat.compute().map_err(|e| e.under(&self.choice))?.pieces.iter().map(|p| p.length));
        }
        Ok(out)
    }

    /// The trims of its section with what is cut of each, and its joint plates.
    pub(super) fn cut(&self, job: &Job) -> Result<Vec<(JunctionTrim, Vec<Length>)>, Error> {
        let choice = job.copings.get(self.run.coping).ok_or_else(|| Error::new(ErrorKind::Internal, "a coping without its choice"))?;
        let mut out = Vec::with_capacity(self.section.trims.len() + 1);
        for trim in &self.section.trims {
            out.push((trim.clone(), self.set(Some(trim), choice)?));
        }
        let plate = JunctionTrim { name: "joint plate".into(), profile: self.pieces.plate.clone(), corners: Vec::new() };
        out.push((plate, self.set(None, choice)?));
        Ok(out)
    }
}
