//! The wiring: sections set panel ends, ends set panels, and the lines met with the panels give the rest.

use super::built_up::built_up;
use super::cautions;
use super::choices::Chosen;
use super::copings::{CopingItem, Copings};
use super::end_caps::Ends;
use super::input::{Job, Paperwork};
use super::joints;
use super::kick_outs;
use super::lay::{Lay, PlaneLay, lines_around};
use super::metals_meet;
use super::order::{Bought, coil, fastener_rows};
use super::packet::{JunctionItem, PACKET_FORMAT, PACKET_VERSION, Packet, SITE_CAUTIONS, SectionSide, SourceCount, Summary};
use super::pan_ends::{Foot, KnownEnd, breaks_panels, lap_beads};
use super::pipes::PipeItem;
use super::plane_work::{PlaneClips, PlaneHeat};
use super::progress::{Progress, Stage, Teller};
use super::receiver_laps;
use super::rides;
use super::seals;
use super::sections::{Sections, along_the_seams, order};
use super::trims::{self, Pieces, TrimItem, Wanted, WantedTaper, starts_low};
use super::underlay;
use super::water;
use super::wire::Wiring;
use crate::assembly::{LineAssembly, PlanePanels, RoofCorners, SideSeal};
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::{AlongLine, JointMoves, SectionWork, Side, Solved};
use crate::layout::{EdgeUse, PanelBreak};
use crate::panel::{Hold, PanelEnd};
use crate::pitch::SlopeRule;
use crate::record::{Calculation, Caution, Off, Recorder, Source, Worksheet};
use crate::roof::{Line, LineKind, Point, Roof};
use crate::units::{Angle, Length};
use core::ops::ControlFlow;

impl Calculation for Job {
    type Out = Packet;

    fn title(&self) -> String {
        self.name.clone()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Packet, Error> {
        self.build(r, &mut Teller(&mut |_| ControlFlow::Continue(())))
    }
}

impl Job {
    /// The packet, with the caller told how far the work is.
    ///
    /// # Errors
    /// Every refusal of the parts, with the path to what is refused; [`ErrorKind::Cancelled`] where `progress` stops the work.
    ///
    /// ```
    /// use core::ops::ControlFlow;
    /// use seamwright::error::ErrorKind;
    /// use seamwright::job::{Job, Stage};
    /// let job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
    /// let stop = job.packet(&mut |p| if p.stage == Stage::Panels { ControlFlow::Break(()) } else { ControlFlow::Continue(()) });
    /// assert_eq!(stop.unwrap_err().kind(), ErrorKind::Cancelled);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn packet(&self, progress: &mut dyn FnMut(Progress) -> ControlFlow<()>) -> Result<Packet, Error> {
        self.build(&mut Off, &mut Teller(progress))
    }

    /// The packet with its working, with the caller told how far the work is.
    ///
    /// # Errors
    /// As [`Job::packet`].
    pub fn packet_explained(&self, progress: &mut dyn FnMut(Progress) -> ControlFlow<()>) -> Result<(Packet, Worksheet), Error> {
        let mut worksheet = Worksheet::new(self.title());
        let packet = self.build(&mut worksheet, &mut Teller(progress))?;
        Ok((packet, worksheet))
    }

    /// How lengths are written: what lies half way between two steps as the crew's tape reads it.
    pub(super) fn papers(&self) -> Paperwork {
        self.paperwork.read_by(self.supplies.crew.tape)
    }

    fn build<R: Recorder>(&self, r: &mut R, teller: &mut Teller<'_>) -> Result<Packet, Error> {
        self.check()?;
        let roof = r.part(|| self.roof.title(), |r| self.roof.run(r)).map_err(|e| e.under("roof"))?;
        self.junctions.check(&roof)?;
        teller.tell(Stage::Roof, 1, 1)?;

        self.check_joint_holds(&roof)?;
        let chosen: Vec<Option<Chosen<'_>>> = roof.lines().iter().map(|l| self.junctions.of(l)).collect();
        let drawn = Sections { job: self, roof: &roof, built_up: built_up(&roof, &chosen)? };
        let mut scheduled = Scheduled::new(self);
        let rules = self.hold_rules(&chosen);
        let mut solved = with_rules(self.across(r, teller, &roof, &drawn, &chosen, &mut scheduled), &rules)?;
        let planes = self.panels(r, teller, &roof, &solved)?;
        let along = with_rules(self.beside(r, &roof, &drawn, &chosen, &planes, &mut solved, &mut scheduled), &rules)?;
        rules?;
        let copings = self.copings(r, &roof, &solved, &mut scheduled)?;
        let sections = solved.iter().flatten().chain(copings.items.iter().map(|c| &c.section));
        let trims = sections.flat_map(|s| &s.trims).map(|t| t.name.as_ref()).collect();
        self.supplies.trims.check_laps(&trims)?;

        let panels = planes.iter().map(|p| PlanePanels::new(&p.name, &p.layout, &p.laid)).collect::<Result<Vec<_>, _>>()?;
        let wiring = Wiring::new(self, &roof, &planes, &panels)?;
        let heat = self.heat(r, &wiring, &solved)?;
        let moves = joints::moves(r, &drawn, &chosen, (&planes, &heat), along)?;
        let mut corners = r.part(|| "corners".into(), |r| wiring.corners(r, &moves, &solved))?;
        let foot = Foot { job: self, roof: &roof, solved: &solved };
        let pan_ends = foot.ends(r, &mut corners)?;
        let mut junctions = self.lines(r, teller, &roof, &drawn, &chosen, solved, &wiring, (&corners, &pan_ends))?;
        let clips = self.clips(r, teller, &wiring)?;
        for junction in &mut junctions {
            junction.moves = moves.iter().find(|(line, _)| *line == junction.line).map(|(_, moves)| *moves);
            junction.rides = rides::of(r, self, junction, &planes, &heat)?;
        }
        let pipes = self.pipes(r, &roof, &planes, &heat, &mut scheduled)?;
        scheduled.finish(self)?;
        let trims = self.trims(r, teller, &roof, &junctions, &copings)?;
        for junction in &mut junctions {
            let (sealed, beads) = seals::of(r, self, &roof, junction, &corners, &trims)?;
            junction.sealed = sealed;
            junction.along.beads.extend(beads);
            if let Some(cut) = &junction.pan_end {
                junction.along.beads.extend(lap_beads(r, &planes, junction.line, cut).map_err(|e| e.about(&junction.name))?);
            }
        }
        let ends = Ends { job: self, roof: &roof, corners: &corners, junctions: &junctions, trims: &trims }.closed()?;
        for (number, bead) in ends.beads {
            if let Some(junction) = junctions.get_mut(number) {
                junction.along.beads.push(bead);
            }
        }
        let metals_met = metals_meet::of(r, self, &roof, &junctions, &trims)?;
        let underlayment = underlay::plan(r, self, &roof, &junctions)?;
        let kick_outs = kick_outs::items(self, &junctions)?;
        let misses = kick_outs::misses_gutter(r, &roof, &junctions, &corners)?;
        let bought = Bought {
            job: self,
            planes: &planes,
            trims: &trims,
            junctions: &junctions,
            copings: &copings,
            kick_outs: &kick_outs,
            pipes: &pipes,
            end_caps: &ends.caps,
            cap_pieces: &ends.pieces,
            clips: &clips,
            underlayment: underlayment.as_ref(),
            built_up: &drawn.built_up,
        };
        let order = bought.lines()?;
        teller.tell(Stage::Order, 1, 1)?;

        let mut all: Vec<Caution> = roof.cautions().iter().map(|c| c.clone().under("roof")).collect();
        if self.roof.minimum_slope.is_none() {
            // The panel's own approval is not known; the code's minimum holds for any.
            let rule = &SlopeRule::IBC_STANDING_SEAM;
            let said = Caution::new(cautions::SLOPE_OF_PANEL_UNKNOWN, "roof.minimum_slope", rule.source.clone());
            all.push(said.arg("minimum", rule.limit).arg("covering", &rule.covering));
            for plane in roof.planes() {
                all.extend(rule.check(&plane.pitch()).cautions().iter().map(|c| c.clone().under(&format!("planes.{}", plane.name()))));
            }
        }
        all.extend(self.metals.panel.cautions().into_iter().map(|c| c.under("metals.panel")));
        for (i, sheet) in self.metals.trims.iter().enumerate() {
            all.extend(sheet.cautions().into_iter().map(|c| c.under(&format!("metals.trims[{i}]"))));
        }
        for line in roof.lines().iter().filter(|l| l.kind == LineKind::Unknown) {
            all.push(Caution::new(cautions::LINE_UNKNOWN, format!("lines.{}", line.name), Source::geometry()));
        }
        for plane in &planes {
            let path = format!("planes.{}", plane.name);
            let more = plane.listed.iter().flat_map(|l| &l.cautions).chain(plane.marks.iter().flat_map(|m| &m.cautions));
            all.extend(plane.laid.cautions.iter().chain(more).map(|c| c.clone().under(&path)));
        }
        for junction in &junctions {
            let path = format!("lines.{}", junction.name);
            let seals = junction.water.cautions.iter().cloned().chain(junction.sealed.iter().filter_map(SideSeal::caution));
            all.extend(
                junction
                    .section
                    .cautions
                    .iter()
                    .chain(&junction.along.cautions)
                    .cloned()
                    .chain(seals)
                    .chain(junction.rides.as_ref().map(rides::caution))
                    .map(|c| c.under(&path)),
            );
        }
        for coping in &copings.items {
            let said = coping.section.cautions.iter().chain(&coping.pieces.cautions);
            all.extend(said.map(|c| c.clone().under(&format!("copings.{}", coping.name))));
        }
        for pipe in &pipes {
            all.extend(pipe.made.section.cautions.iter().map(|c| c.clone().under(&format!("pipes.{}", pipe.name))));
        }
        all.extend(misses);
        all.extend(corners.cautions.iter().map(|c| c.clone().under("corners")));
        all.extend(ends.cautions);
        for trim in &trims {
            let path = format!("trims.{}", trim.mark);
            all.extend(trim.flat.cautions().iter().chain(&trim.cutting.cautions).map(|c| c.clone().under(&path)));
            all.extend(receiver_laps::caution(trim)?.map(|c| c.under(&path)));
        }
        for clip in &clips {
            all.extend(clip.schedule.cautions.iter().map(|c| c.clone().under(&format!("planes.{}.clips", clip.plane))));
        }
        for of in &heat {
            let path = format!("planes.{}", of.plane);
            all.extend(of.pins.cautions.iter().map(|c| c.clone().under(&path)));
            all.extend(of.movement.iter().flat_map(|m| &m.cautions).map(|c| c.clone().under(&path)));
        }
        all.extend(metals_met.iter().map(crate::metal::MetalMeeting::caution));
        all.extend(underlayment.iter().flat_map(|u| &u.cautions).cloned());
        if self.temperatures.is_none() {
            all.push(Caution::new(cautions::MOVEMENT_UNCHECKED, "temperatures", Source::user()));
        }
        let summary = summary(&roof, &planes, &junctions, (&copings.items, &pipes), &trims, &clips, &all)?;
        Ok(Packet {
            format: PACKET_FORMAT.into(),
            version: PACKET_VERSION,
            library: env!("CARGO_PKG_VERSION").into(),
            job: self.name.clone(),
            paperwork: self.papers(),
            metals: self.metals.clone(),
            temperatures: self.temperatures,
            columns: self.layout.columns.clone(),
            summary,
            roof,
            planes,
            junctions,
            copings: copings.items,
            coping_corners: copings.corners,
            kick_outs,
            pipes,
            corners,
            trims,
            end_caps: ends.caps,
            cap_pieces: ends.pieces,
            metals_met,
            underlayment,
            clips,
            heat,
            order,
            cautions: all,
            site: SITE_CAUTIONS.iter().map(|s| (*s).into()).collect(),
        })
    }

    /// The sections of all lines that end panels; a refusal gathers those of every line.
    fn across<R: Recorder>(
        &self,
        r: &mut R,
        teller: &mut Teller<'_>,
        roof: &Roof,
        sections: &Sections<'_>,
        chosen: &[Option<Chosen<'_>>],
        scheduled: &mut Scheduled,
    ) -> Result<Vec<Option<Solved>>, Error> {
        let mut out = Vec::with_capacity(chosen.len());
        let mut faults = ByLine::default();
        for (i, (line, chosen)) in roof.lines().iter().zip(chosen).enumerate() {
            let solved = match chosen {
                Some(chosen) if !along_the_seams(line.kind) => {
                    let solved = r.part(|| format!("section of {}", line.name), |r| sections.across(r, line, chosen));
                    faults.keep(line, solved).map(|s| scheduled.apply(self, line, s))
                }
                _ => None,
            };
            out.push(solved);
            teller.tell(Stage::Sections, i + 1, roof.lines().len())?;
        }
        faults.check()?;
        Ok(out)
    }

    /// The sections of the lines along the seams, once the panels are laid; and what moves at the expansion joints among them.
    #[allow(clippy::too_many_arguments, reason = "what the first half of the work gave")]
    fn beside<R: Recorder>(
        &self,
        r: &mut R,
        roof: &Roof,
        sections: &Sections<'_>,
        chosen: &[Option<Chosen<'_>>],
        planes: &[PlaneLay],
        solved: &mut [Option<Solved>],
        scheduled: &mut Scheduled,
    ) -> Result<Vec<(usize, JointMoves)>, Error> {
        let (mut faults, mut out) = (ByLine::default(), Vec::new());
        for (number, ((line, chosen), slot)) in roof.lines().iter().zip(chosen).zip(solved).enumerate() {
            if let (Some(chosen), true) = (chosen, along_the_seams(line.kind)) {
                let found = r.part(|| format!("section of {}", line.name), |r| sections.beside(r, line, chosen, planes));
                if let Some((section, moves)) = faults.keep(line, found) {
                    *slot = Some(scheduled.apply(self, line, section));
                    out.extend(moves.map(|moves| (number, moves)));
                }
            }
        }
        faults.check()?;
        Ok(out)
    }

    fn panels<R: Recorder>(&self, r: &mut R, teller: &mut Teller<'_>, roof: &Roof, solved: &[Option<Solved>]) -> Result<Vec<PlaneLay>, Error> {
        let starts = self.layout.starts(roof, self.panel.coverage).map_err(|e| e.under("layout"))?;
        let (sheet, tape) = (self.metals.panel.surface_mass()?, self.supplies.crew.tape);
        let lay = Lay { roof, panel: self.panel, choices: &self.layout, sheet, tape, starts, around: lines_around(roof) };
        let end = |line: &Line, number: usize, plane: usize| -> Result<EdgeUse, Error> {
            if along_the_seams(line.kind) {
                return Ok(EdgeUse::Side);
            }
            if line.kind == LineKind::Unknown {
                // The panels end at the line itself, and a caution says so.
                return Ok(EdgeUse::End(PanelEnd::hold_back(Length::ZERO)));
            }
            let side = if order(line).first == plane { Side::First } else { Side::Second };
            let set = solved.get(number).and_then(Option::as_ref).and_then(|s| s.end(side)).cloned();
            set.map(EdgeUse::End).ok_or_else(|| Error::new(ErrorKind::Internal, "a section sets no end for its panels").value_of(&line.name))
        };
        let broken = |plane: usize, number: usize, ends: (Point, Point, bool), other: usize, far: Point| -> Result<Option<PanelBreak>, Error> {
            let (Some(line), Some(other), Some(valley)) = (roof.lines().get(number), roof.lines().get(other), solved.get(number).and_then(Option::as_ref))
            else {
                return Ok(None);
            };
            let side = if order(line).first == plane { Side::First } else { Side::Second };
            let grows = self.valley_end(line)?.and_then(|(_, grows)| grows);
            breaks_panels(self, (valley, grows), (side, line), ends, (other.kind, far))
        };
        let mut out = Vec::with_capacity(roof.planes().len());
        let mut faults = Faults::default();
        for plane in 0..roof.planes().len() {
            let breaks = |number: usize, ends: (Point, Point, bool), other: usize, far: Point| broken(plane, number, ends, other, far);
            out.extend(faults.keep(lay.plane(r, plane, &|line, number| end(line, number, plane), &breaks)));
            teller.tell(Stage::Panels, plane + 1, roof.planes().len())?;
        }
        faults.check()?;
        Ok(out)
    }

    #[allow(clippy::too_many_arguments, reason = "what the first half of the work gave")]
    fn lines<R: Recorder>(
        &self,
        r: &mut R,
        teller: &mut Teller<'_>,
        roof: &Roof,
        sections: &Sections<'_>,
        chosen: &[Option<Chosen<'_>>],
        solved: Vec<Option<Solved>>,
        wiring: &Wiring<'_>,
        (corners, pan_ends): (&RoofCorners, &[KnownEnd]),
    ) -> Result<Vec<JunctionItem>, Error> {
        let mut out = Vec::new();
        let mut faults = ByLine::default();
        for (i, ((line, chosen), solved)) in roof.lines().iter().zip(chosen).zip(solved).enumerate() {
            if let (Some(chosen), Some(solved)) = (chosen, solved) {
                let pan_end = pan_ends.get(i).and_then(Option::as_ref);
                let ends = [&corners.ends, &corners.upper_ends].map(|of| of.get(i).copied().unwrap_or_default());
                let met = (ends, pan_end.map(|(end, cut)| (*end, cut)));
                let along: Result<LineAssembly, Error> = r.part(|| format!("along {}", line.name), |r| wiring.line(r, line, chosen.detail, &solved, met));
                if let Some(along) = faults.keep(line, along.map_err(|e| e.under(&chosen.path))) {
                    let (first, second) = section_sides(line, sections)?;
                    let water = r.part(|| format!("water on {}", line.name), |r| water::of(r, self, line, &solved, first, second))?;
                    let order = SectionWork { kind: line.kind.into(), solved: &solved };
                    let work = r.part(|| order.title(), |r| order.run(r)).map_err(|e| e.about(&line.name))?;
                    let detail = chosen.path.clone();
                    out.push(JunctionItem {
                        line: i,
                        name: line.name.clone(),
                        kind: line.kind,
                        detail,
                        first,
                        second,
                        section: solved,
                        along,
                        pan_end: pan_end.map(|(_, cut)| cut.clone()),
                        moves: None,
                        rides: None,
                        sealed: Vec::new(),
                        water,
                        work,
                    });
                }
            }
            teller.tell(Stage::Lines, i + 1, roof.lines().len())?;
        }
        faults.check()?;
        Ok(out)
    }

    /// Where the panels of every plane are held, and how they move.
    fn heat<R: Recorder>(&self, r: &mut R, wiring: &Wiring<'_>, solved: &[Option<Solved>]) -> Result<Vec<PlaneHeat>, Error> {
        let lines = wiring.roof.lines().iter().zip(solved).enumerate();
        let pins = |solved: &Solved| solved.ends.iter().any(|e| e.end.hold == Hold::Pins);
        let pinned: Vec<usize> =
            lines.filter(|(_, (line, solved))| along_the_seams(line.kind) && solved.as_ref().is_some_and(pins)).map(|(number, _)| number).collect();
        (0..wiring.planes.len()).map(|plane| wiring.heat(r, plane, &pinned)).collect()
    }

    fn clips<R: Recorder>(&self, r: &mut R, teller: &mut Teller<'_>, wiring: &Wiring<'_>) -> Result<Vec<PlaneClips>, Error> {
        let of = wiring.planes.len();
        let mut clips = Vec::with_capacity(of);
        for plane in 0..of {
            clips.push(wiring.clips(r, plane)?);
            teller.tell(Stage::Clips, plane + 1, of)?;
        }
        Ok(clips)
    }

    fn trims<R: Recorder>(
        &self,
        r: &mut R,
        teller: &mut Teller<'_>,
        roof: &Roof,
        junctions: &[JunctionItem],
        copings: &Copings,
    ) -> Result<Vec<TrimItem>, Error> {
        let mut wanted = Vec::new();
        for junction in junctions {
            for run in &junction.along.trims {
                let trim = junction.section.trims.get(run.trim).ok_or_else(|| Error::new(ErrorKind::Internal, "a trim of the section is missing"))?;
                let lower = run.lower.as_ref().and_then(|_| junction.section.lower_trims.get(run.trim));
                let pieces = match lower {
                    Some(lower) => {
                        let end = junction.pan_end.as_ref().filter(|_| !trim.is_holder());
                        Pieces::Tapered(run.length.run, Box::new(WantedTaper::new((trim, lower), &run.length, starts_low(roof, junction.line), end)?))
                    }
                    None => Pieces::Lapped(run.length.run),
                };
                wanted.push(Wanted { line: Some(junction.line), name: &junction.name, path: &junction.detail, trim, pieces });
            }
        }
        let cut = copings.items.iter().map(|c| Ok((c, c.cut(self)?))).collect::<Result<Vec<_>, Error>>()?;
        for (coping, trims) in &cut {
            for (trim, pieces) in trims.iter().filter(|(_, pieces)| !pieces.is_empty()) {
                wanted.push(Wanted { line: None, name: &coping.name, path: &coping.choice, trim, pieces: Pieces::Set(pieces.clone()) });
            }
        }
        for corner in &copings.corners {
            for (run, length) in corner.runs.iter().zip(corner.cut) {
                let of = cut.iter().find(|(c, _)| c.name == *run).and_then(|(c, trims)| Some((c, trims.iter().find(|(t, _)| t.name == "coping")?)));
                if let Some((coping, (trim, _))) = of {
                    wanted.push(Wanted { line: None, name: &corner.name, path: &coping.choice, trim, pieces: Pieces::Set(vec![length]) });
                }
            }
        }
        let items = trims::items(self, &wanted, r)?;
        teller.tell(Stage::Trims, items.len(), items.len())?;
        Ok(items)
    }
}

/// What the sections refuse, with the contradictions among the rules that they keep.
fn with_rules<T>(found: Result<T, Error>, rules: &Result<(), Error>) -> Result<T, Error> {
    let mut faults = Faults::default();
    match (found, rules) {
        (Err(e), Err(also)) if e.kind() != ErrorKind::Cancelled => {
            faults.add(e.clone());
            faults.add(also.clone());
            faults.check().and(Err(e))
        }
        (found, _) => found,
    }
}

/// Refusals with the lines that they are of. A path goes to the detail, which many lines may share: what is wrong with it is said once.
#[derive(Default)]
struct ByLine<'a>(Vec<(Error, Vec<&'a str>)>);

impl<'a> ByLine<'a> {
    fn keep<T>(&mut self, line: &'a Line, result: Result<T, Error>) -> Option<T> {
        match result {
            Ok(value) => Some(value),
            Err(e) => {
                match self.0.iter_mut().find(|(of, _)| *of == e) {
                    Some((_, lines)) => lines.push(&line.name),
                    None => self.0.push((e, vec![&line.name])),
                }
                None
            }
        }
    }

    fn check(self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (e, lines) in self.0 {
            faults.add(e.about(&lines.join(", ")));
        }
        faults.check()
    }
}

/// The engineer's schedule as it is used up.
pub(super) struct Scheduled {
    served: Vec<bool>,
    known: Vec<(String, String)>,
}

impl Scheduled {
    fn new(job: &Job) -> Scheduled {
        Scheduled { served: vec![false; job.engineer.as_ref().map_or(0, |s| s.rows.len())], known: Vec::new() }
    }

    fn apply(&mut self, job: &Job, line: &Line, mut solved: Solved) -> Solved {
        self.apply_named(job, &line.name, line.kind.name(), &mut solved.along);
        solved
    }

    /// The same for what is no line of the roof, by its own name and that of its kind.
    pub(super) fn apply_named(&mut self, job: &Job, name: &str, kind: &str, along: &mut [AlongLine]) {
        let Some(schedule) = &job.engineer else { return };
        for entry in along.iter().filter(|a| matches!(a.what, crate::junction::Along::Fasteners { .. })) {
            for wanted in [kind, name] {
                self.known.push((wanted.to_owned(), entry.name.to_string()));
            }
        }
        schedule.apply(name, kind, along, &mut self.served);
    }

    fn finish(&self, job: &Job) -> Result<(), Error> {
        job.engineer.as_ref().map_or(Ok(()), |s| s.all_served(&self.served, &self.known))
    }
}

/// The sides of a section as a drawing needs them. A plane falls away from its line at its backing angle: on the first side that is upward in the walk.
fn section_sides(line: &Line, sections: &Sections<'_>) -> Result<(SectionSide, Option<SectionSide>), Error> {
    let order = order(line);
    let backing = |plane: usize| -> Result<f64, Error> {
        let side = line.sides().find(|s| s.plane == plane).ok_or_else(|| Error::new(ErrorKind::Internal, "a side is missing").value_of(&line.name))?;
        Ok(side.backing.degrees())
    };
    let first = SectionSide { plane: order.first, rise: Angle::degrees_from(backing(order.first)?)?, levels: sections.levels(order.first) };
    let second = match order.second {
        Some(plane) => Some(SectionSide { plane, rise: Angle::degrees_from(-backing(plane)?)?, levels: sections.levels(plane) }),
        None => None,
    };
    Ok((first, second))
}

fn summary(
    roof: &Roof,
    planes: &[PlaneLay],
    junctions: &[JunctionItem],
    (copings, pipes): (&[CopingItem], &[PipeItem]),
    trims: &[TrimItem],
    clips: &[PlaneClips],
    cautions: &[Caution],
) -> Result<Summary, Error> {
    let groups = || planes.iter().flat_map(|p| &p.laid.groups);
    let rows = || fastener_rows(junctions, copings, pipes);
    let mut sources = SourceCount::default();
    for source in cautions.iter().map(Caution::source).chain(rows().map(|row| row.source)).chain(clips.iter().map(|c| c.rule.source())) {
        sources.add(source);
    }
    for trim in trims {
        sources.add(trim.flat.rule().source());
    }
    let lengths: std::collections::BTreeSet<Length> = groups().map(|g| g.order).collect();
    let engineered = rows().filter(|row| row.engineered).count() + clips.iter().filter(|c| c.schedule.engineered).count();
    let all_rows = rows().count() + clips.len();
    let (coil, coil_mass) = coil(planes)?;
    Ok(Summary {
        planes: planes.len(),
        area: roof.area(),
        lines: roof.lines().len(),
        panels: planes.iter().map(|p| p.laid.panels.len()).sum(),
        pieces: groups().map(|g| g.count).sum(),
        lengths: lengths.len(),
        shortest: lengths.first().copied().unwrap_or_default(),
        longest: lengths.last().copied().unwrap_or_default(),
        panel_length: Length::total(groups().map(|g| &g.total))?,
        coil,
        coil_mass,
        trims: trims.len(),
        sticks: trims.iter().map(|t| u64::from(t.cutting.stick_count())).sum(),
        closures: junctions.iter().flat_map(|j| &j.along.closures).map(|c| u64::try_from(c.list.pieces).unwrap_or(u64::MAX)).sum(),
        cautions: cautions.len(),
        engineered_rows: engineered,
        not_engineered_rows: all_rows - engineered,
        sources,
    })
}
