//! The sealed line of each side of a real line, from what lies along it.

use super::bay::{Bay, BayEnd, Flank, PanelEdge, SideBays, Stretch};
use super::cautions::SEAL_BREAKS;
use super::closures::ClosureList;
use super::line_parts::{BeadRun, LineAssembly};
use super::sealed_line::{SealCheck, SealLayer, SealNeed, SealPassage, SealedLine};
use super::tapes::{BeadAlong, TapeChoice};
use super::trim_runs::LineEnds;
use crate::error::{Error, Faults};
use crate::junction::{Along, BeadSize, Side, Solved};
use crate::practice;
use crate::record::{Calculation, Caution, Recorder, Source};
use crate::units::{Angle, Length, Sum};

/// What the crew does along a sealed line.
///
/// ```
/// use seamwright::assembly::SealChoices;
/// use seamwright::practice;
/// let usual = SealChoices::default();
/// assert!(usual.plugs && usual.bedded_laps && usual.joined_corners);
/// assert_eq!(usual.longest_gap, practice::sealant::LONGEST_GAP);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields, default))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SealChoices {
    /// No gap may be longer.
    pub longest_gap: Length,
    /// Whether the hollows of seams are plugged where they cross the line.
    pub plugs: bool,
    /// Whether the laps of trims are bedded in sealant.
    pub bedded_laps: bool,
    /// Whether the tapes of two lines are joined in the corner where they meet.
    pub joined_corners: bool,
    /// How far the tapes stop short of the ends of the line.
    pub stops_short: LineEnds,
    /// How many beads lie in each lap, across the trim.
    pub lap_beads: u32,
    /// Such a bead; one of no width or depth is not gunned, as where tape takes its place.
    pub lap_bead: BeadSize,
    /// The bead up each corner between a closure and its seam, as high as the web.
    pub corner_bead: BeadSize,
}

impl Default for SealChoices {
    /// Common practice, no published source: everything plugged, bedded and joined, tape from end to end.
    fn default() -> SealChoices {
        use practice::sealant as seal;
        SealChoices {
            longest_gap: seal::LONGEST_GAP,
            plugs: true,
            bedded_laps: true,
            joined_corners: true,
            stops_short: LineEnds::default(),
            lap_beads: seal::LAP_BEADS,
            lap_bead: BeadSize { width: seal::LAP_BEAD_WIDTH, depth: seal::LAP_BEAD_DEPTH },
            corner_bead: BeadSize { width: seal::CORNER_BEAD_WIDTH, depth: seal::CORNER_BEAD_DEPTH },
        }
    }
}

impl SealChoices {
    /// Refuses lengths below nothing.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange), each by its field.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        let short = self.stops_short;
        for (path, length) in [
            ("longest_gap", self.longest_gap),
            ("stops_short.at_start", short.at_start),
            ("stops_short.at_end", short.at_end),
            ("lap_bead.width", self.lap_bead.width),
            ("lap_bead.depth", self.lap_bead.depth),
            ("corner_bead.width", self.corner_bead.width),
            ("corner_bead.depth", self.corner_bead.depth),
        ] {
            faults.keep(length.not_negative(path));
        }
        faults.check()
    }
}

/// Where the pieces of one trim lap along a line.
///
/// ```
/// use seamwright::assembly::TrimJoints;
/// use seamwright::units::Length;
/// let joints = TrimJoints { trim: "ridge cap".into(), girth: Length::inches(18), lap: Length::inches(4), at: vec![Length::feet(9)] };
/// assert_eq!(joints.at.len(), 1);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct TrimJoints {
    /// The trim.
    pub trim: String,
    /// Its developed width, which each bead in a lap runs across.
    pub girth: Length,
    /// How far its pieces lap; nothing where they butt.
    pub lap: Length,
    /// The middle of each lap along the line.
    pub at: Vec<Length>,
}

impl TrimJoints {
    /// The joints of pieces of a trim of this girth and lap, laps and all, that are set one after the other from so far before the start of a line of this length.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range of a length.
    ///
    /// ```
    /// use seamwright::assembly::TrimJoints;
    /// use seamwright::units::Length;
    /// let pieces = [Length::inches(120), Length::inches(120)];
    /// let joints = TrimJoints::of("ridge cap", (Length::inches(18), Length::inches(4)), &pieces, Length::ZERO, Length::inches(236))?;
    /// assert_eq!(joints.at, [Length::inches(118)]);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn of(trim: &str, (girth, lap): (Length, Length), pieces: &[Length], before: Length, line: Length) -> Result<TrimJoints, Error> {
        let half = lap.station(1, 2)?;
        let mut at = Vec::new();
        let mut end: Sum = -before;
        for (k, piece) in pieces.iter().enumerate() {
            end += *piece;
            if k > 0 {
                end -= lap;
            }
            if k + 1 < pieces.len() {
                at.push((end - half).length()?.max(Length::ZERO).min(line));
            }
        }
        Ok(TrimJoints { trim: trim.to_owned(), girth, lap, at })
    }
}

/// The sealed lines of a real line, one for each side on which something seals.
///
/// Layers are every tape and bead of the side, and its closures with the seams between them; where there are closures, tape must lie under and over them.
/// Passages are the hollows of seams, the tape over skew seams, the laps of trims, and the corners in which the line ends.
///
/// # Errors
/// Computing refuses what [`SealChoices::check`] refuses, under `choices`.
///
/// ```
/// use seamwright::assembly::{Bay, BayEnd, Hand, LineAssembly, LineSeals, PanelEdge, SealChoices, SealNeed, SeamPlugs, SideBays, TapeChoice};
/// use seamwright::junction::{Along, AlongLine, Side, Solved};
/// use seamwright::record::Calculation;
/// use seamwright::roof::LineKind;
/// use seamwright::units::{Angle, Length};
/// let solved = Solved {
///     along: vec![AlongLine {
///         name: "cleat tape".into(), side: Side::First, what: Along::Tape { width: Length::inches(1), over_seams: false }, from_line: Length::inches(2),
///     }],
///     ..Solved::default()
/// };
/// let along = LineAssembly {
///     name: "valley 1".into(), kind: LineKind::Valley, length: Length::feet(20), sides: vec![], closures: vec![], tapes: vec![], beads: vec![],
///     plugs: vec![], rows: vec![], cleats: vec![], trims: vec![], struck: vec![], struck_lower: vec![], cautions: vec![],
/// };
/// let seals = LineSeals { along: &along, solved: &solved, tape: TapeChoice::default(), choices: &SealChoices::default(), joints: &[], joined: [true, false] };
/// let found = seals.compute()?;
/// assert_eq!(found[0].check.breaks.iter().map(|b| b.missing).collect::<Vec<_>>(), [SealNeed::Corner]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct LineSeals<'a> {
    /// What lies along the line.
    pub along: &'a LineAssembly,
    /// Its section.
    pub solved: &'a Solved,
    /// How tape is lapped over seams.
    pub tape: TapeChoice,
    /// What the crew does.
    pub choices: &'a SealChoices,
    /// Where the trims that shed water lap; a trim of the section that is not here is one piece.
    pub joints: &'a [TrimJoints],
    /// Whether a rule says how the line joins what it meets at its start and at its end.
    pub joined: [bool; 2],
}

/// The sealed line of one side.
///
/// See [`LineSeals`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SideSeal {
    /// Which side.
    pub side: Side,
    /// Whether it goes through, and where it breaks.
    pub check: SealCheck,
}

impl SideSeal {
    /// The caution that belongs to its breaks, if it has any.
    #[must_use]
    pub fn caution(&self) -> Option<Caution> {
        let first = self.check.breaks.first()?;
        let side = match self.side {
            Side::First => "first side",
            Side::Second => "second side",
            Side::Riser => "riser",
        };
        let bay = first.bay.map_or(String::new(), |b| format!(", bay {b}"));
        let caution = Caution::new(SEAL_BREAKS, "sealed", Source::CommonPractice).arg("side", side).arg("count", self.check.breaks.len());
        let caution = caution.arg("name", &first.name).arg("from", first.from).arg("bay", bay);
        Some(caution.arg("missing", first.missing.lacks()).arg("cure", first.cure))
    }
}

/// What of a bay the foot of a seam takes from one end of a closure, along the line.
fn foot(list: &ClosureList, number: usize, bay: &Bay) -> Result<Option<(Length, Length, Length)>, Error> {
    let Some(group) = list.groups.iter().find(|g| g.bays.contains(&number)) else { return Ok(None) };
    let ends = bay.seam_ends().max(1);
    let half = Length::from_mm(group.bay.seam_width_at_foot.mm() / f64::from(ends) / bay.meeting.sin())?;
    Ok(Some((half, group.bay.clearance.station(1, 2)?, group.piece.length)))
}

impl LineSeals<'_> {
    /// The sealant that its section does not name: the beads in the laps of its trims, and those up the corners between closures and seams.
    ///
    /// # Errors
    /// A bead of a negative size, at `choices`; [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range of a length.
    pub fn beads(&self) -> Result<Vec<BeadRun>, Error> {
        self.choices.check().map_err(|e| e.under("choices"))?;
        let mut out = Vec::new();
        let mut bead = |name: String, side: Side, size: &BeadSize, length: Length| -> Result<(), Error> {
            if size.width.is_positive() && size.depth.is_positive() && length.is_positive() {
                let along = BeadAlong { width: size.width, depth: size.depth, length };
                let volume = along.compute().map_err(|e| e.under(&name))?;
                out.push(BeadRun { name, side, width: along.width, depth: along.depth, length, volume });
            }
            Ok(())
        };
        for joints in self.joints.iter().filter(|j| self.choices.bedded_laps && j.lap.is_positive()) {
            let laps = u32::try_from(joints.at.len()).unwrap_or(u32::MAX).saturating_mul(self.choices.lap_beads);
            bead(format!("laps of the {}", joints.trim), Side::First, &self.choices.lap_bead, joints.girth.station(laps, 1)?)?;
        }
        for row in &self.along.closures {
            let bays = self.along.sides.iter().find(|s| s.side == row.side).map_or(&[][..], |s| &s.bays);
            let closed = row.list.groups.iter().flat_map(|g| &g.bays).filter_map(|k| bays.get(*k));
            let corners = closed.fold(0_u32, |sum, bay| sum.saturating_add(bay.seam_ends()));
            bead(format!("corners of the {}", row.name), row.side, &self.choices.corner_bead, row.web.station(corners, 1)?)?;
        }
        Ok(out)
    }

    /// A tape's stretch, stopped short of the ends of the line.
    fn clipped(&self, from: Length, to: Length) -> Result<Option<Stretch>, Error> {
        let run = self.along.length;
        let short = self.choices.stops_short;
        let (from, to) = (from.max(short.at_start), to.min((run - short.at_end).length()?));
        Ok((from < to).then_some(Stretch { from, to }))
    }

    fn tape(&self, bays: Option<&SideBays>, name: &str, over_seams: bool) -> Result<SealLayer, Error> {
        let mut stretches = Vec::new();
        match bays.filter(|b| over_seams && !b.bays.is_empty()) {
            Some(bays) => {
                for bay in &bays.bays {
                    stretches.extend(self.clipped(bay.from, bay.to)?);
                }
            }
            None => stretches.extend(self.clipped(Length::ZERO, self.along.length)?),
        }
        Ok(SealLayer { name: name.to_owned(), need: SealNeed::Tape, stretches })
    }

    /// The closures and the seams between them.
    fn closures(&self, bays: &SideBays, list: &ClosureList, name: &str) -> Result<SealLayer, Error> {
        let mut stretches = Vec::new();
        for (k, bay) in bays.bays.iter().enumerate() {
            let Some((half, gap, _)) = foot(list, k, bay)? else { continue };
            // A plane lies on the left of the line at a lower end from left to right, and the bay's first end is then its left.
            let rightward = (bay.end == PanelEdge::Lower) == (bays.flank == Flank::Left);
            let (first, last) = if rightward { (bay.left, bay.right) } else { (bay.right, bay.left) };
            let taken = |end: BayEnd| if end == BayEnd::Seam { half } else { Length::ZERO };
            let (from, to) = ((bay.from + taken(first) + gap).length()?, (bay.to - taken(last) - gap).length()?);
            stretches.push(Stretch { from, to: to.max(from) });
            for (end, at, toward) in [(first, bay.from, 1), (last, bay.to, -1)] {
                if end == BayEnd::Seam {
                    let other = (at + taken(end) * toward).length()?;
                    stretches.push(Stretch { from: at.min(other), to: at.max(other) });
                }
            }
        }
        let within = |s: Stretch| Stretch { from: s.from.max(Length::ZERO), to: s.to.min(self.along.length) };
        Ok(SealLayer { name: name.to_owned(), need: SealNeed::Closure, stretches: stretches.into_iter().map(within).filter(|s| s.from <= s.to).collect() })
    }

    fn side(&self, side: Side, faults_of_trims: bool) -> Result<Option<SealedLine>, Error> {
        let bays = self.along.sides.iter().find(|s| s.side == side);
        let mut layers = Vec::new();
        let mut passages = Vec::new();
        let mut taped = (false, false);
        for at in self.solved.along.iter().filter(|a| a.side == side) {
            match &at.what {
                Along::Tape { over_seams, .. } => {
                    if *over_seams {
                        taped.0 = true
                    } else {
                        taped.1 = true
                    }
                    layers.push(self.tape(bays, &at.name, *over_seams)?);
                }
                Along::Bead { .. } => {
                    layers.push(SealLayer {
                        name: at.name.clone().into_owned(),
                        need: SealNeed::Bead,
                        stretches: vec![Stretch { from: Length::ZERO, to: self.along.length }],
                    });
                }
                Along::Closures { .. } => {
                    let row = self.along.closures.iter().find(|c| c.side == side && c.name == *at.name);
                    let layer = match (bays, row) {
                        (Some(bays), Some(row)) => self.closures(bays, &row.list, &at.name)?,
                        _ => SealLayer { name: at.name.clone().into_owned(), need: SealNeed::Closure, stretches: Vec::new() },
                    };
                    layers.push(layer);
                    self.seams(side, bays, &mut passages);
                }
                Along::Fasteners { .. } | Along::ContinuousCleat | Along::OffsetCleat => {}
            }
        }
        let closed = layers.iter().any(|l| l.need == SealNeed::Closure);
        for (there, name) in [(taped.0, "tape under the closures"), (taped.1, "tape over the closures")] {
            if closed && !there {
                layers.push(SealLayer { name: name.to_owned(), need: SealNeed::Tape, stretches: Vec::new() });
            }
        }
        if layers.is_empty() && !(faults_of_trims && self.joints.iter().any(|j| !j.at.is_empty())) {
            return Ok(None);
        }
        if faults_of_trims {
            for joints in self.joints {
                let sealed = joints.lap.is_positive() && self.choices.bedded_laps;
                passages.extend(joints.at.iter().map(|at| SealPassage {
                    name: format!("lap of the {}", joints.trim),
                    need: SealNeed::TrimLap,
                    at: *at,
                    sealed,
                }));
            }
        }
        if !layers.is_empty() {
            for (joined, at, name) in
                [(self.joined[0], Length::ZERO, "corner at the start of the line"), (self.joined[1], self.along.length, "corner at the end of the line")]
            {
                passages.push(SealPassage { name: name.to_owned(), need: SealNeed::Corner, at, sealed: joined && self.choices.joined_corners });
            }
        }
        let bays = bays.map_or(Vec::new(), |b| b.bays.iter().map(|b| Stretch { from: b.from, to: b.to }).collect());
        Ok(Some(SealedLine { run: self.along.length, longest_gap: self.choices.longest_gap, bays, layers, passages }))
    }

    /// Every seam that crosses the closures: its hollow, and the tape over it.
    fn seams(&self, side: Side, bays: Option<&SideBays>, out: &mut Vec<SealPassage>) {
        let Some(bays) = bays else { return };
        let hollow = self.along.plugs.iter().any(|p| p.side == side);
        // A ribbon follows a square seam uncut, and is lapped wherever it is cut.
        let limit = practice::sealant::TAPE_LAPS_UNDER.degrees();
        let follows = |meeting: Angle| meeting.degrees() >= limit && self.tape.laps_per_seam_side == 0;
        let lapped = self.tape.laps_per_seam_side > 0 && self.tape.lap.is_positive();
        for (k, at) in bays.seams.iter().enumerate() {
            if hollow {
                out.push(SealPassage { name: format!("hollow of seam {}", k + 1), need: SealNeed::Plug, at: *at, sealed: self.choices.plugs });
            }
            let sealed = lapped || follows(bays.meeting);
            out.push(SealPassage { name: format!("tape over seam {}", k + 1), need: SealNeed::TapeLap, at: *at, sealed });
        }
    }
}

impl Calculation for LineSeals<'_> {
    type Out = Vec<SideSeal>;

    fn title(&self) -> String {
        format!("sealed line of {}", self.along.name)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Vec<SideSeal>, Error> {
        self.choices.check().map_err(|e| e.under("choices"))?;
        let mut out: Vec<SideSeal> = Vec::new();
        for side in [Side::First, Side::Second] {
            // The laps of the trims are said once, on the first side that has a line.
            if let Some(line) = self.side(side, out.is_empty())? {
                let check = r.part(|| format!("{side:?} side"), |r| line.run(r))?;
                out.push(SideSeal { side, check });
            }
        }
        Ok(out)
    }
}
