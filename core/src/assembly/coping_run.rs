//! A run of coping: its pieces, the gaps at its joints, the plates under them, cleats, beads and screws.

use super::coping_walls::TeeOnRun;
use super::fastener_rows::FastenerRun;
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::{Along, Bites, Coping, LeastRule, Side, Solved};
use crate::movement::HeatRange;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::trim::Profile;
use crate::units::{Length, Sum};

/// How an end of a run of coping is made.
///
/// ```
/// use seamwright::assembly::CopingEnd;
/// use seamwright::units::Length;
/// assert_ne!(CopingEnd::Free, CopingEnd::Corner { leg: Length::inches(12) });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum CopingEnd {
    /// It ends there, closed with a cap.
    Free,
    /// It meets another run: a mitred corner piece whose leg takes so much of this run. The piece itself belongs to the corner and is counted there.
    Corner {
        /// From the corner along this run to the leg's end.
        leg: Length,
    },
    /// It ends against a higher wall, turned up behind what covers that wall's face.
    Wall,
}

/// Where another run of coping meets this one between its ends: a tee piece, which belongs to that place and is counted there.
///
/// ```
/// use seamwright::assembly::CopingTee;
/// use seamwright::junction::Side;
/// use seamwright::units::Length;
/// let tee = CopingTee { at: Length::feet(20), width: Length::inches(8), leg: Length::inches(12), side: Side::First };
/// assert!(tee.leg > tee.width);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingTee {
    /// From the start of the run to the middle of the other wall.
    pub at: Length,
    /// How much of this run the other wall takes.
    pub width: Length,
    /// From the other wall's faces along this run to the ends of the tee piece.
    pub leg: Length,
    /// The face that the other wall stands against.
    pub side: Side,
}

/// The joint between two pieces of coping: a gap over a plate of the coping's own section, which is fastened to neither.
///
/// ```
/// use seamwright::assembly::CopingJoint;
/// use seamwright::junction::LeastRule;
/// use seamwright::practice::movement as practice;
/// use seamwright::units::Length;
/// let joint = CopingJoint {
///     plate: Length::inches(12),
///     plate_lap: LeastRule::UFGS_PLATE_LAP,
///     gap: LeastRule::UFGS_END_GAP,
///     clearance: practice::CLEARANCE,
///     beads: 2,
///     bead_width: Length::parse("3/8\"")?,
///     bead_depth: Length::parse("1/4\"")?,
/// };
/// assert!(joint.plate > joint.plate_lap.least);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingJoint {
    /// Length of the plate along the run.
    pub plate: Length,
    /// How far it must lie under each piece when the gap is widest.
    pub plate_lap: LeastRule,
    /// How wide the gap must be when laid.
    pub gap: LeastRule,
    /// What of the gap must stay in the heat.
    pub clearance: Length,
    /// Beads of sealant under each of the two pieces.
    pub beads: u32,
    /// A bead's width.
    pub bead_width: Length,
    /// A bead's depth.
    pub bead_depth: Length,
}

/// A run of coping along one wall.
///
/// A piece grows and shrinks about its middle, so that a gap moves by `alpha P dT`, `P` being the longest piece. The gap when laid is the greater of the
/// rule's and of the clearance with what closes in the heat.
///
/// # Errors
/// Computing refuses what the coping refuses, a run that its corner pieces fill, corner pieces that are too short, a plate that laps too little in the
/// cold, temperatures out of order ([`ErrorKind::Conflict`]); each with by how much and the cure.
///
/// ```
/// use seamwright::assembly::{CopingEnd, CopingJoint, CopingRun};
/// use seamwright::junction::{ContinuousCleat, Coping, CopingDetail, CopingHold, CopingSide, FastenerRow, TrimSheet, LeastRule};
/// use seamwright::movement::HeatRange;
/// use seamwright::pitch::Pitch;
/// use seamwright::practice::{junction as practice, movement};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Expansion, Length, Temperature};
/// let inch = |text: &str| Length::parse(text);
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let cleat = ContinuousCleat {
///     sheet,
///     height: inch("3\"")?,
///     fasteners_above_bend: inch("1 1/2\"")?,
///     fasteners: FastenerRow::UFGS_EDGE_STRIP,
///     hem: inch("7/8\"")?,
///     hem_gap: (sheet.thickness + practice::HOOKED_HEM_ROOM).length()?,
///     short_of_fold: inch("1/16\"")?,
///     engagement: LeastRule::UFGS_HOOK.least,
/// };
/// let side = CopingSide { behind: Length::ZERO, depth: inch("4\"")?, kick: Angle::parse("40 deg")?, clears: inch("3/4\"")?, hold: CopingHold::Cleat(cleat), over: None };
/// let detail = CopingDetail { sheet, bed: Length::mils(40), fall: Pitch::parse("1:12")?, roof_side: side.clone(), outside: side };
/// let run = CopingRun {
///     coping: Coping { thickness: Length::inches(8), detail },
///     run: Length::feet(42),
///     ends: [CopingEnd::Corner { leg: Length::inches(18) }, CopingEnd::Free],
///     corner_leg: LeastRule::UFGS_CORNER_LEG,
///     piece: Length::feet(10),
///     least_piece: Length::feet(2),
///     joint: CopingJoint {
///         plate: Length::inches(12),
///         plate_lap: LeastRule::UFGS_PLATE_LAP,
///         gap: LeastRule::UFGS_END_GAP,
///         clearance: movement::CLEARANCE,
///         beads: 2,
///         bead_width: inch("3/8\"")?,
///         bead_depth: inch("1/4\"")?,
///     },
///     cleat_piece: Length::feet(10),
///     cleat_gap: inch("1/4\"")?,
///     end_distance: Length::inches(1),
///     tees: vec![],
///     range: HeatRange {
///         expansion: Expansion::parse("12e-6 /K")?,
///         coldest: Temperature::parse("-20 degC")?,
///         laid: Temperature::parse("20 degC")?,
///         hottest: Temperature::parse("70 degC")?,
///     },
/// };
/// let made = run.compute()?;
/// // 40 ft 6 in in pieces of 10 ft and gaps of 1/4 in: the short rest is shared with the piece before it.
/// assert_eq!(made.pieces.iter().map(|p| p.count).collect::<Vec<_>>(), [3, 2]);
/// assert_eq!((made.joints, made.end_caps, made.cleats.len()), (5, 1, 2));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingRun {
    /// The coping in its section.
    pub coping: Coping,
    /// Length of the wall's top, from corner to corner or to its free end.
    pub run: Length,
    /// Its ends.
    pub ends: [CopingEnd; 2],
    /// How long the legs of corner pieces must be.
    pub corner_leg: LeastRule,
    /// The longest piece.
    pub piece: Length,
    /// The shortest piece worth setting; a shorter rest is shared with the piece before it.
    pub least_piece: Length,
    /// Its joints.
    pub joint: CopingJoint,
    /// The longest piece of cleat.
    pub cleat_piece: Length,
    /// Between pieces of cleat.
    pub cleat_gap: Length,
    /// From each end of the run to the first of a row's fasteners.
    pub end_distance: Length,
    /// Where other runs meet it between its ends, from its start on.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub tees: Vec<CopingTee>,
    /// The temperatures of its metal.
    pub range: HeatRange,
}

/// Pieces of one length. See [`CopingRun`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingPiece {
    /// How many.
    pub count: u64,
    /// Their length.
    pub length: Length,
}

/// The pieces of one cleat. See [`CopingRun`].
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingCleat {
    /// On which face.
    pub side: Side,
    /// How many pieces.
    pub pieces: u64,
    /// Their length together: the run less the gaps, and less what other walls take of it.
    pub length: Length,
}

/// A row of screws. See [`CopingRun`].
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingScrews {
    /// What it is called in the section.
    pub name: String,
    /// On which face.
    pub side: Side,
    /// What they bite.
    pub bites: Bites,
    /// On centre, at the most.
    pub spacing: Length,
    /// How many.
    pub count: u64,
    /// Whether an engineer gave the spacing.
    pub engineered: bool,
    /// Whose spacing it is.
    pub source: Source,
}

/// What a run of coping takes. See [`CopingRun`].
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CopingPieces {
    /// Its pieces, corner pieces left out.
    pub pieces: Vec<CopingPiece>,
    /// Joints with a plate: between its pieces and to its corner pieces.
    pub joints: u64,
    /// Free ends, each with a cap.
    pub end_caps: u64,
    /// Ends turned up against a higher wall.
    pub wall_ends: u64,
    /// The gap to leave at the laying temperature.
    pub gap_when_laid: Length,
    /// The gap at its widest, in the cold.
    pub gap_widest: Length,
    /// The gap at its narrowest, in the heat.
    pub gap_least: Length,
    /// How far a plate then lies under each piece.
    pub plate_lap: Length,
    /// The plate's profile.
    pub plate: Profile,
    /// Beads in all joints together.
    pub bead: Length,
    /// Beads in caps and wall ends together: one across each.
    pub end_bead: Length,
    /// The cleats.
    pub cleats: Vec<CopingCleat>,
    /// The rows of screws.
    pub screws: Vec<CopingScrews>,
    /// What the reader must know of its rows.
    pub cautions: Vec<Caution>,
}

/// More pieces than any wall takes.
const MOST: i128 = 100_000;

/// The fewest pieces of this length, a gap between each two, that cover a run.
fn pieces(run: Sum, piece: Length, gap: Length, path: &str) -> Result<i128, Error> {
    let (need, step) = ((run + gap).pm(), (piece + gap).pm());
    let n = if step > 0 { need.div_euclid(step) + i128::from(need.rem_euclid(step) != 0) } else { MOST + 1 };
    if n > MOST {
        return Err(Error::new(ErrorKind::TooLarge, "the run would be split into too many pieces")
            .at(path)
            .value_of(piece)
            .accepts(format!("at most {MOST} pieces")));
    }
    Ok(n.max(1))
}

fn count(n: i128) -> u64 {
    u64::try_from(n).unwrap_or(u64::MAX)
}

impl CopingRun {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (path, length) in [
            ("run", self.run),
            ("piece", self.piece),
            ("cleat_piece", self.cleat_piece),
            ("joint.plate", self.joint.plate),
            ("joint.bead_width", self.joint.bead_width),
            ("joint.bead_depth", self.joint.bead_depth),
        ] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [
            ("least_piece", self.least_piece),
            ("cleat_gap", self.cleat_gap),
            ("joint.clearance", self.joint.clearance),
            ("joint.gap.least", self.joint.gap.least),
            ("joint.plate_lap.least", self.joint.plate_lap.least),
            ("end_distance", self.end_distance),
        ] {
            faults.keep(length.not_negative(path));
        }
        if self.piece.is_positive() && self.least_piece + self.least_piece > self.piece.into() {
            let error = Error::new(ErrorKind::Conflict, "two of the least pieces are longer than the longest piece").at("least_piece");
            faults.add(error.value_of(self.least_piece).accepts(format!("at most half of {}", self.piece)));
        }
        faults.keep(self.range.check().map_err(|e| e.under("range")));
        for (i, end) in self.ends.iter().enumerate() {
            if let CopingEnd::Corner { leg } = end {
                let cure = "a corner piece with longer legs".to_owned();
                self.corner_leg.check(&mut faults, &format!("ends[{i}].corner.leg"), *leg, *leg, cure)?;
            }
        }
        for (i, tee) in self.tees.iter().enumerate() {
            let path = format!("tees[{i}]");
            faults.keep(tee.width.positive(&format!("{path}.width")));
            self.corner_leg.check(&mut faults, &format!("{path}.leg"), tee.leg, tee.leg, "a tee piece with longer legs".to_owned())?;
            if tee.side == Side::Riser {
                let error = Error::new(ErrorKind::OutOfRange, "a coping has no such face").at(format!("{path}.side")).value_of("riser");
                faults.add(error.accepts("first, the roof side, or second, the outside"));
            }
        }
        faults.check()
    }
}

/// What lies between the places where a face is broken by the walls that stand against it, as lengths.
fn stretches(breaks: impl IntoIterator<Item = (Length, Length)>, run: Length) -> Result<Vec<Length>, Error> {
    let (mut out, mut from) = (Vec::new(), Sum::ZERO);
    for (at, width) in breaks {
        let half = width.station(1, 2)?;
        out.push((Sum::from(at) - half - from).length()?);
        from = Sum::from(at) - half + width;
    }
    out.push((Sum::from(run) - from).length()?);
    Ok(out)
}

/// The stretches of one face of a run of coping between the walls that stand against it.
pub(crate) fn coping_stretches(tees: &[TeeOnRun], run: Length, side: Side) -> Result<Vec<Length>, Error> {
    stretches(tees.iter().filter(|t| t.side == side).map(|t| (t.at, t.width)), run)
}

impl CopingRun {
    /// The straight pieces, in the order in which they are set, and the joints between them and to the pieces of corners and tees.
    fn split(&self, gap: Length) -> Result<(Vec<CopingPiece>, u64), Error> {
        let taken = |end: &CopingEnd| match end {
            CopingEnd::Corner { leg } => *leg + gap,
            CopingEnd::Free | CopingEnd::Wall => Sum::ZERO,
        };
        let (mut out, mut joints) = (Vec::new(), 0_u64);
        let mut from = taken(&self.ends[0]);
        for (i, tee) in self.tees.iter().enumerate() {
            let half = tee.width.station(1, 2)?;
            let to = Sum::from(tee.at) - half - tee.leg - gap;
            joints += self.segment(from, to, gap, &format!("tees[{i}]"), &mut out)? + 2;
            from = Sum::from(tee.at) - half + tee.width + tee.leg + gap;
        }
        let to = Sum::from(self.run) - taken(&self.ends[1]);
        let path = if self.tees.is_empty() { "ends".to_owned() } else { format!("tees[{}]", self.tees.len() - 1) };
        joints += self.segment(from, to, gap, &path, &mut out)?;
        let corners = self.ends.iter().filter(|e| matches!(e, CopingEnd::Corner { .. })).fold(0, |n, _| n + 1);
        Ok((out, joints + corners))
    }

    /// The pieces of one straight stretch; gives the joints between them.
    fn segment(&self, from: Sum, to: Sum, gap: Length, path: &str, out: &mut Vec<CopingPiece>) -> Result<u64, Error> {
        let straight = to - from;
        if straight <= Sum::ZERO {
            return Err(Error::new(ErrorKind::Impossible, "the corner pieces leave no room for a piece between them")
                .at(path)
                .value_of((Sum::from(self.run) - straight).length()?)
                .accepts(format!("less than {}", self.run))
                .cured_by("corner pieces with shorter legs, or one piece with both corners"));
        }
        let n = pieces(straight, self.piece, gap, "piece")?;
        let full = i32::try_from(n - 1).map_err(|_| Error::new(ErrorKind::Internal, "pieces beyond counting").value_of(n))?;
        let last = (straight - (gap * full) - (self.piece * full)).length()?;
        let mut add = |count: i128, length: Length| match out.last_mut().filter(|p| p.length == length) {
            Some(same) => same.count = same.count.saturating_add(self::count(count)),
            None if count > 0 => out.push(CopingPiece { count: self::count(count), length }),
            None => {}
        };
        if last < self.least_piece && n > 1 {
            // The rest is too short to be held: the last two share.
            let shared = (self.piece + last).length()?;
            let half = shared.station(1, 2)?;
            add(n - 2, self.piece);
            add(1, half);
            add(1, (shared - half).length()?);
        } else {
            add(n - 1, self.piece);
            add(1, last);
        }
        Ok(self::count(n - 1))
    }

    /// As computing, of a coping that is solved already: the spacings of its rows are those of the section.
    pub(crate) fn of_section<R: Recorder>(&self, solved: &Solved, r: &mut R) -> Result<CopingPieces, Error> {
        self.check()?;
        let joint = &self.joint;
        let closes = self.range.warming(self.piece, r)?;
        let opens = self.range.cooling(self.piece, r)?;
        let gap_when_laid = joint.gap.least.max((joint.clearance + closes).length()?);
        r.step(|| {
            let step = Step::new("gap when laid").formula("the greater of the rule's and of clearance + what closes").with("rule", joint.gap.least);
            step.with("clearance", joint.clearance).with("what closes", closes).gives(gap_when_laid).source(joint.gap.source.clone())
        });
        let (gap_widest, gap_least) = ((gap_when_laid + opens).length()?, (gap_when_laid - closes).length()?);
        let plate_lap = (joint.plate - gap_widest).length()?.station(1, 2)?;
        r.step(|| {
            let step =
                Step::new("plate under each piece in the cold").formula("(plate - widest gap) / 2").with("plate", joint.plate).with("widest gap", gap_widest);
            step.gives(plate_lap).source(joint.plate_lap.source.clone())
        });
        let mut faults = Faults::default();
        let longer = (joint.plate_lap.least - plate_lap).length()? * 2;
        joint.plate_lap.check(&mut faults, "joint.plate", plate_lap, joint.plate, format!("a plate longer by {}", longer.length()?))?;
        faults.check()?;
        let (pieces_of, joints) = self.split(gap_when_laid)?;
        r.step(|| Step::new("joints").formula("pieces - 1 + corner pieces + 2 tees").gives(joints).source(Source::geometry()));
        let plate = self.coping.joint_plate().map_err(|e| e.under("coping"))?;
        let across = Length::total(plate.legs.iter().map(|l| &l.length))?;
        let lines = i64::from(joint.beads) * 2 * i64::try_from(joints).unwrap_or(i64::MAX);
        let bead = Length::from_mm(across.mm() * i32::try_from(lines).map_or(f64::INFINITY, f64::from)).map_err(|e| e.at("joint.beads"))?;
        r.step(|| {
            let step = Step::new("beads").formula("joints 2 beads (faces + top + drips)").with("joints", joints).with("beads a side", joint.beads);
            step.with("across", across).gives(bead).source(Source::geometry())
        });
        let mut cleats = Vec::new();
        let (mut screws, mut cautions) = (Vec::new(), Vec::new());
        for line in &solved.along {
            let stretches = stretches(self.tees.iter().filter(|t| t.side == line.side).map(|t| (t.at, t.width)), self.run)?;
            match &line.what {
                Along::ContinuousCleat => {
                    let (mut all, mut length) = (0, Sum::ZERO);
                    for run in stretches {
                        let n = pieces(run.into(), self.cleat_piece, self.cleat_gap, "cleat_piece")?;
                        all += n;
                        length += (Sum::from(run) - (self.cleat_gap * i32::try_from(n - 1).unwrap_or(i32::MAX))).length()?;
                    }
                    cleats.push(CopingCleat { side: line.side, pieces: count(all), length: length.length()? });
                }
                Along::Fasteners { spacing, source, bites } => {
                    let (mut all, mut engineered) = (0_u64, true);
                    for run in stretches {
                        let row = FastenerRun { run, end_distance: self.end_distance, spacing: *spacing, source: source.clone() };
                        let found = r.part(|| line.name.to_string(), |r| row.run(r))?;
                        all = all.saturating_add(u64::try_from(found.stations.count()).unwrap_or(u64::MAX));
                        engineered &= found.engineered;
                        cautions.extend(found.cautions.into_iter().filter(|c| !cautions.contains(c)).collect::<Vec<_>>());
                    }
                    let (name, source) = (line.name.to_string(), source.clone());
                    screws.push(CopingScrews { name, side: line.side, bites: *bites, spacing: *spacing, count: all, engineered, source });
                }
                _ => {}
            }
        }
        let ends = |kind: CopingEnd| count(self.ends.iter().filter(|e| **e == kind).fold(0, |n, _| n + 1));
        let (end_caps, wall_ends) = (ends(CopingEnd::Free), ends(CopingEnd::Wall));
        let end_bead = (across * i32::try_from(end_caps + wall_ends).unwrap_or(i32::MAX)).length()?;
        Ok(CopingPieces {
            pieces: pieces_of,
            joints,
            end_caps,
            wall_ends,
            gap_when_laid,
            gap_widest,
            gap_least,
            plate_lap,
            plate,
            bead,
            end_bead,
            cleats,
            screws,
            cautions,
        })
    }
}

impl Calculation for CopingRun {
    type Out = CopingPieces;

    fn title(&self) -> String {
        format!("run of coping, {}", self.run)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<CopingPieces, Error> {
        self.check()?;
        let solved = r.part(|| self.coping.title(), |r| self.coping.run(r)).map_err(|e| e.under("coping"))?;
        self.of_section(&solved, r)
    }
}
