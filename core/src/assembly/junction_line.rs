//! A solved junction met with the panels along one real line.

use super::bay::{Flank, SideBays};
use super::cautions::{CORNER_BAY, PLUG_SEAMS};
use super::closures::{ClosureChoice, ClosureRun};
use super::corners::LineEnd;
use super::fastener_rows::{FastenerRun, is_engineered};
use super::line_bays::LineBays;
use super::line_parts::{BeadRun, CleatKind, CleatRun, ClosureRow, FastenerRow, LineAssembly, SeamPlugs, TapeRun, TrimRun};
use super::pan_end::PanEndCut;
use super::plane_panels::PlanePanels;
use super::struck_lines::{SideMeeting, StrikeChoice, StrikeLines};
use super::tapes::{BeadAlong, SeamSurface, TapeChoice, TapeOverPanels, surface_missing};
use super::trim_runs::{LineEnds, NamedTrim, TrimAlong, TrimChoice};
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::{Along, AlongLine, Bites, JunctionTrim, Side, Solved};
use crate::record::{Calculation, Caution, Recorder, Source};
use crate::roof::Line;
use crate::units::Length;

/// One side of a junction line: the panels there, and what its closures and tape are made to.
///
/// See [`JunctionLine`] for an example.
#[derive(Debug, Clone, Copy)]
pub struct JunctionSide<'a> {
    /// Which side of the section.
    pub side: Side,
    /// On which flank of the line it lies.
    pub flank: Flank,
    /// The panels of the plane there.
    pub panels: &'a PlanePanels<'a>,
    /// What its closures are made to, where the section has closures on this side.
    pub closure: Option<&'a ClosureChoice>,
    /// The seams' surface, where tape crosses them on this side.
    pub surface: Option<&'a SeamSurface>,
    /// Whether the seams are hollow, as snap-lock and batten seams are.
    pub hollow_seams: bool,
}

/// What a line's supplies are made and set to.
///
/// ```
/// use seamwright::assembly::{LineChoices, StrikeChoice, TapeChoice, TrimChoice};
/// use seamwright::units::{Length, Rounding, ShopRounding};
/// let strike = StrikeChoice { tape: ShopRounding::new(Length::inches_64(4), Rounding::HalfAway)?, tolerance: Length::inches_64(4) };
/// let choices = LineChoices { row_end_distance: Length::inches(1), tape: TapeChoice::default(), trim: TrimChoice::usual(), named: vec![], strike };
/// assert!(choices.named.is_empty());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LineChoices {
    /// Distance of a row's first and last fastener from the ends of the line.
    pub row_end_distance: Length,
    /// How tape over seams is lapped.
    #[cfg_attr(feature = "serde", serde(default))]
    pub tape: TapeChoice,
    /// How trims are lapped.
    pub trim: TrimChoice,
    /// How trims of a name are, where it differs.
    #[cfg_attr(feature = "serde", serde(default))]
    pub named: Vec<NamedTrim>,
    /// How lines are struck.
    pub strike: StrikeChoice,
}

/// A solved junction met with the panels along one real line.
///
/// Which fasteners are the closures' screws follows from the section: a row through the panels that lies on the closures' lower flange. They go by the bay.
///
/// # Errors
/// Computing refuses closures or tape over seams on a side whose panels, closure choice or surface is not given ([`ErrorKind::Missing`]), two entries for one side
/// ([`ErrorKind::Conflict`]), and what the parts refuse.
///
/// ```
/// use seamwright::assembly::{ClosureChoice, Flank, JunctionLine, JunctionSide, LineChoices, LineEnds, PlanePanels, SeamSurface, StrikeChoice, TapeChoice, TrimChoice};
/// use seamwright::junction::{Along, AlongLine, Bites, Side, SideEnd, Solved};
/// use seamwright::layout::{EdgeUse, Layout, Start};
/// use seamwright::panel::{Panel, PanelEnd, Seam};
/// use seamwright::record::{Calculation, Source};
/// use seamwright::roof::{PlaneInput, RoofInput, Shape, Vertex};
/// use seamwright::units::{Length, Rounding, ShopRounding};
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let shape = Shape::Space { outer: vec![v(0, 0, 10), v(40, 0, 10), v(40, 16, 22), v(0, 16, 22)], holes: vec![], flatness: None };
/// let roof = RoofInput::new(vec![PlaneInput { name: "shed".into(), shape }]).compute()?;
/// let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) })?;
/// let layout = Layout::new(roof.planes()[0].outline().clone(), panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let laid = layout.compute()?;
/// let panels = PlanePanels::new("shed", &layout, &laid)?;
/// let at = |name: &'static str, inches, what| AlongLine { name: name.into(), side: Side::First, what, from_line: Length::inches(inches) };
/// let solved = Solved {
///     along: vec![
///         at("closures", -4, Along::Closures { web: Length::inches(2) }),
///         at("closure screws", -3, Along::Fasteners { bites: Bites::Structure, spacing: Length::inches(12), source: Source::CommonPractice }),
///     ],
///     ..Solved::default()
/// };
/// let strike = StrikeChoice { tape: ShopRounding::new(Length::inches_64(4), Rounding::HalfAway)?, tolerance: Length::inches_64(4) };
/// let choices = LineChoices { row_end_distance: Length::inches(1), tape: TapeChoice::default(), trim: TrimChoice::usual(), named: vec![], strike };
/// let closure = ClosureChoice::usual(Length::inches(1), Length::inches(2));
/// let side = JunctionSide { side: Side::First, flank: Flank::Left, panels: &panels, closure: Some(&closure), surface: None, hollow_seams: false };
/// let top = JunctionLine { line: roof.line("high edge 1")?, solved: &solved, sides: &[side], ends: LineEnds::default(), upper_ends: LineEnds::default(), pan_end: None, choices: &choices };
/// let top = top.compute()?;
/// assert_eq!((top.closures[0].list.pieces, top.rows[0].count), (30, 60));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct JunctionLine<'a> {
    /// The line.
    pub line: &'a Line,
    /// Its section.
    pub solved: &'a Solved,
    /// The sides with panels.
    pub sides: &'a [JunctionSide<'a>],
    /// What corners add to its trims.
    pub ends: LineEnds,
    /// At a step, what they add to the trims along its upper edge.
    pub upper_ends: LineEnds,
    /// For a valley whose lower end is known: which end of the line that is, and how the pan ends there.
    pub pan_end: Option<(LineEnd, &'a PanEndCut)>,
    /// What its supplies are made and set to.
    pub choices: &'a LineChoices,
}

/// The things along one line, as they are found.
struct Work {
    out: LineAssembly,
}

fn missing(what: &str, side: Side, field: &'static str) -> Error {
    Error::new(ErrorKind::Missing, format!("{what} needs what is not given for its side"))
        .at(format!("sides.{field}"))
        .value_of(format_args!("{side:?}"))
        .accepts("an entry for every side of the section with panels, closures or tape over seams")
}

impl<'a> JunctionLine<'a> {
    fn side(&self, side: Side) -> Option<&'a JunctionSide<'a>> {
        self.sides.iter().find(|s| s.side == side)
    }

    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (k, s) in self.sides.iter().enumerate() {
            if self.sides.iter().take(k).any(|t| t.side == s.side || t.flank == s.flank) {
                faults.add(
                    Error::new(ErrorKind::Conflict, "two entries for one side of the line")
                        .at(format!("sides[{k}]"))
                        .value_of(format_args!("{:?}, {:?}", s.side, s.flank))
                        .accepts("each side of the section, and each flank of the line, once"),
                );
            }
        }
        faults.keep(self.choices.row_end_distance.not_negative("choices.row_end_distance"));
        faults.check()
    }

    /// The row through the panels that lies on the lower flange of closures whose face is at this place.
    fn screws_of(&self, closures: &AlongLine, lower_flange: Length) -> Option<(usize, &'a AlongLine)> {
        self.solved.along.iter().enumerate().find(|(_, row)| {
            let up = row.from_line - closures.from_line;
            row.side == closures.side
                && matches!(row.what, Along::Fasteners { bites, .. } if bites != Bites::Trim)
                && up >= Length::ZERO.into()
                && up <= lower_flange.into()
        })
    }

    fn closures<R: Recorder>(&self, at: &AlongLine, web: Length, work: &mut Work, r: &mut R) -> Result<Option<(usize, usize)>, Error> {
        let side = self.side(at.side).ok_or_else(|| missing(&at.name, at.side, "panels"))?;
        let choice = side.closure.ok_or_else(|| missing(&at.name, at.side, "closure"))?;
        let bays = work.bays(at.side).ok_or_else(|| missing(&at.name, at.side, "panels"))?;
        let seams = bays.seams.len();
        let screws = self.screws_of(at, choice.lower_flange);
        let spacing = screws.and_then(|(_, row)| if let Along::Fasteners { spacing, .. } = row.what { Some(spacing) } else { None });
        let run = ClosureRun { bays, web, choice, spacing };
        let list = r.part(|| format!("{}: {}", at.name, run.title()), |r| run.run(r))?;
        work.out.cautions.extend(list.cautions.iter().cloned().map(|c| c.under(&at.name)));
        let count = list.screws;
        if side.hollow_seams {
            let plugs = SeamPlugs { side: at.side, count: seams };
            if plugs.count > 0 {
                work.out.cautions.push(Caution::new(PLUG_SEAMS, at.name.clone(), Source::CommonPractice).arg("count", plugs.count));
            }
            work.out.plugs.push(plugs);
        }
        let screw_row = screws.map(|(_, row)| row.name.clone().into_owned());
        work.out.closures.push(ClosureRow { name: at.name.clone().into_owned(), side: at.side, web, screw_row, list });
        Ok(screws.map(|(k, _)| (k, count)))
    }

    fn tape<R: Recorder>(&self, at: &AlongLine, width: Length, over_seams: bool, work: &mut Work, r: &mut R) -> Result<(), Error> {
        let name = at.name.clone().into_owned();
        let length = if over_seams {
            let side = self.side(at.side).ok_or_else(|| missing(&name, at.side, "panels"))?;
            let surface = side.surface.ok_or_else(|| surface_missing(&name))?;
            let bays = work.bays(at.side).ok_or_else(|| missing(&name, at.side, "panels"))?;
            let over = TapeOverPanels { bays, surface, choice: self.choices.tape };
            let tape = r.part(|| format!("{name}: {}", over.title()), |r| over.run(r))?;
            work.out.cautions.extend(tape.cautions.into_iter().map(|c| c.under(&name)));
            tape.length
        } else {
            self.line.length
        };
        work.out.tapes.push(TapeRun { name, side: at.side, width, over_seams, length });
        Ok(())
    }

    fn row<R: Recorder>(&self, at: &AlongLine, by_bay: Option<usize>, work: &mut Work, r: &mut R) -> Result<(), Error> {
        let Along::Fasteners { bites, spacing, source } = &at.what else { return Ok(()) };
        let name = at.name.clone().into_owned();
        let run = FastenerRun { run: self.line.length, end_distance: self.choices.row_end_distance, spacing: *spacing, source: source.clone() };
        let (count, stations) = match by_bay {
            Some(count) => {
                if !is_engineered(source) {
                    work.out.cautions.push(run.not_engineered().under(&name));
                }
                (count, None)
            }
            None => {
                let found = r.part(|| format!("{name}: {}", run.title()), |r| run.run(r)).map_err(|e| e.under(&name))?;
                work.out.cautions.extend(found.cautions.into_iter().map(|c| c.under(&name)));
                (found.stations.count(), Some(found.stations))
            }
        };
        let engineered = is_engineered(source);
        work.out.rows.push(FastenerRow { name, side: at.side, bites: *bites, spacing: *spacing, source: source.clone(), engineered, count, stations });
        Ok(())
    }

    /// What a trim runs on. What only holds ends at the corner; a cleat beside a pan goes on to where its own plane ends.
    fn ends_of(&self, trim: &JunctionTrim) -> Result<LineEnds, Error> {
        // Past the edge of the upper deck lie a step's upper trims.
        let is_upper = self.line.riser.is_some() && trim.corners.iter().any(|c| c.x.is_positive());
        let mut ends = match (trim.is_holder(), is_upper) {
            (true, _) => LineEnds::default(),
            (false, true) => self.upper_ends,
            (false, false) => self.ends,
        };
        if let Some((end, cut)) = self.pan_end.filter(|_| trim.is_holder()) {
            let side = if trim.corners.first().is_some_and(|c| c.x.is_negative()) { Side::First } else { Side::Second };
            let foot = if self.solved.lower_lines.is_empty() { &self.solved.lines } else { &self.solved.lower_lines };
            let out = foot.iter().find(|l| l.side == side && l.name == "cleat back").map_or(Length::ZERO, |l| l.from_line);
            match end {
                LineEnd::Start => ends.at_start = cut.beside(side, out)?,
                LineEnd::End => ends.at_end = cut.beside(side, out)?,
            }
        }
        Ok(ends)
    }

    /// The beads under the pan's lower end.
    fn pan_beads<R: Recorder>(&self, work: &mut Work, r: &mut R) -> Result<(), Error> {
        let Some((_, cut)) = self.pan_end.filter(|(_, cut)| cut.bead_length.is_positive()) else { return Ok(()) };
        let name = "beads under the pan's end".to_owned();
        let bead = BeadAlong { width: cut.bead.width, depth: cut.bead.depth, length: cut.bead_length };
        let volume = r.part(|| format!("{name}: {}", bead.title()), |r| bead.run(r)).map_err(|e| e.under(&name))?;
        work.out.beads.push(BeadRun { name, side: Side::First, width: bead.width, depth: bead.depth, length: bead.length, volume });
        Ok(())
    }

    fn trims<R: Recorder>(&self, work: &mut Work, r: &mut R) -> Result<(), Error> {
        for (k, trim) in self.solved.trims.iter().enumerate() {
            let choice = self.choices.named.iter().find(|n| n.name == *trim.name).map_or(self.choices.trim, |n| n.choice);
            let along = TrimAlong { line: self.line.length, ends: self.ends_of(trim)?, choice };
            let length = r.part(|| format!("{}: {}", trim.name, along.title()), |r| along.run(r)).map_err(|e| e.under(&trim.name))?;
            let lower = self.solved.lower_trims.get(k).map(|t| &t.profile).filter(|lower| **lower != trim.profile).cloned();
            work.out.trims.push(TrimRun { name: trim.name.clone().into_owned(), trim: k, profile: trim.profile.clone(), lower, length });
        }
        Ok(())
    }
}

impl Work {
    fn bays(&self, side: Side) -> Option<&SideBays> {
        self.out.sides.iter().find(|s| s.side == side)
    }
}

impl Calculation for JunctionLine<'_> {
    type Out = LineAssembly;

    fn title(&self) -> String {
        format!("along {}", self.line.name)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<LineAssembly, Error> {
        self.check()?;
        self.solved.check_lines().map_err(|e| e.under("solved"))?;
        let mut work = Work {
            out: LineAssembly {
                name: self.line.name.clone(),
                kind: self.line.kind,
                length: self.line.length,
                sides: Vec::new(),
                closures: Vec::new(),
                tapes: Vec::new(),
                beads: Vec::new(),
                plugs: Vec::new(),
                rows: Vec::new(),
                cleats: Vec::new(),
                trims: Vec::new(),
                struck: Vec::new(),
                struck_lower: Vec::new(),
                cautions: Vec::new(),
            },
        };
        for s in self.sides {
            let bays = LineBays { line: self.line, flank: s.flank, side: s.side, panels: s.panels };
            let found = r.part(|| bays.title(), |r| bays.run(r))?;
            // A bay that ends at a corner matters to closures alone.
            let closes = self.solved.along.iter().any(|a| a.side == s.side && matches!(a.what, Along::Closures { .. }));
            let told = found.cautions.iter().filter(|c| closes || c.code() != CORNER_BAY);
            work.out.cautions.extend(told.cloned().map(|c| c.under(s.panels.name())));
            work.out.sides.push(found);
        }
        let mut by_bay: Vec<(usize, usize)> = Vec::new();
        for at in &self.solved.along {
            if let Along::Closures { web } = at.what {
                by_bay.extend(self.closures(at, web, &mut work, r)?);
            }
        }
        for (k, at) in self.solved.along.iter().enumerate() {
            let cleat = |kind| CleatRun { name: at.name.clone().into_owned(), side: at.side, kind, length: self.line.length };
            match &at.what {
                Along::Closures { .. } => {}
                Along::Tape { width, over_seams } => self.tape(at, *width, *over_seams, &mut work, r)?,
                Along::Bead { width, depth } => {
                    let bead = BeadAlong { width: *width, depth: *depth, length: self.line.length };
                    let volume = r.part(|| format!("{}: {}", at.name, bead.title()), |r| bead.run(r)).map_err(|e| e.under(&at.name))?;
                    let name = at.name.clone().into_owned();
                    work.out.beads.push(BeadRun { name, side: at.side, width: *width, depth: *depth, length: bead.length, volume });
                }
                Along::Fasteners { .. } => {
                    let count = by_bay.iter().find(|(row, _)| *row == k).map(|(_, count)| *count);
                    self.row(at, count, &mut work, r)?;
                }
                Along::ContinuousCleat => work.out.cleats.push(cleat(CleatKind::Continuous)),
                Along::OffsetCleat => work.out.cleats.push(cleat(CleatKind::Offset)),
            }
        }
        self.pan_beads(&mut work, r)?;
        self.trims(&mut work, r)?;
        work.out.cautions.extend(self.pan_end.iter().flat_map(|(_, cut)| &cut.cautions).cloned().map(|c| c.under("pan_end")));
        let sides: Vec<SideMeeting> = work.out.sides.iter().map(|s| SideMeeting { side: s.side, meeting: s.meeting }).collect();
        let strike = StrikeLines { lines: &self.solved.lines, sides: &sides, choice: self.choices.strike };
        work.out.struck = r.part(|| strike.title(), |r| strike.run(r))?;
        if !self.solved.lower_lines.is_empty() {
            let lower = StrikeLines { lines: &self.solved.lower_lines, ..strike };
            work.out.struck_lower = r.part(|| format!("{} at the lower end", lower.title()), |r| lower.run(r))?;
        }
        Ok(work.out)
    }
}
