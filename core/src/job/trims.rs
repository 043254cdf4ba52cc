//! Trims over the whole roof: those alike are one trim, with its flat pattern, its runs and the lengths that they are cut from.

use super::holder_joints::PieceMeet;
use super::input::Job;
use crate::assembly::{PanEndCut, PanEndLeg, TrimLength};
use crate::error::{Error, ErrorKind};
use crate::junction::JunctionTrim;
use crate::metal::Sheet;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::roof::Roof;
use crate::stock::{CutPlan, Cutting, LapMode, LapRun, Piece};
use crate::trim::{Flat, FlatPattern, HeldLine, NearCut, Part, Point, Profile, TaperedPieces, TaperedRun, profile_along};
use crate::units::{Length, LineMass};

/// One run of a trim along a line.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let run = &packet.trims[0].runs[0];
/// assert!(run.line.is_some_and(|line| run.run >= packet.roof.lines()[line].length));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "CutTrimRun"))]
pub struct TrimRun {
    /// Number of the line in the roof; none for what stands on a wall: a coping and its corners.
    pub line: Option<usize>,
    /// The name of the line, or of the coping.
    pub name: String,
    /// What is covered, with what corners add; of pieces that are set apart their lengths together.
    pub run: Length,
    /// The pieces, laps and all, in the order in which they are set.
    pub pieces: Vec<Length>,
}

/// A trim as the shop makes it.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let trim = &packet.trims[0];
/// assert_eq!(trim.mark, "T1");
/// assert!(trim.flat.girth() > trim.profile.legs[0].length);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TrimItem {
    /// Its mark: T1, T2 and so on.
    pub mark: String,
    /// What it is called.
    pub name: String,
    /// Its profile; of a tapered trim that at the lower end of its run.
    pub profile: Profile,
    /// Its flat pattern by the job's bend rule.
    pub flat: Flat,
    /// Its sheet.
    pub sheet: Sheet,
    /// Mass for each length of it; of a tapered trim at the lower end of its run.
    pub line_mass: LineMass,
    /// How far its pieces lap; nothing where they butt.
    pub lap: Length,
    /// What is left between its pieces where they butt; nothing where they lap.
    pub gap: Length,
    /// Where it goes.
    pub runs: Vec<TrimRun>,
    /// How its pieces are cut from the lengths that are bought.
    pub cutting: CutPlan,
    /// Whose lengths `cutting` counts, by their labels.
    pub stock: Vec<String>,
    /// Where it tapers, each piece with its place on the run, its profiles at both ends and its blank, from the lower end of the run up; the same for all its runs.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub tapered: Option<TaperedPieces>,
}

impl TrimItem {
    /// The net length of all runs.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range of a length.
    pub fn total(&self) -> Result<Length, Error> {
        Length::total(self.runs.iter().map(|r| &r.run))
    }
}

impl TrimItem {
    /// Whether it is drawn as this profile of a section is, or from the other end; not said where it looks alike from both.
    pub(super) fn drawn(&self, of: &Profile) -> Option<bool> {
        let upper = self.tapered.as_ref().and_then(|t| t.pieces.last()).map_or(&self.profile, |top| &top.far);
        (!same(upper, &upper.reversed())).then(|| same(&self.profile, of))
    }
}

/// A trim along one line, before like ones are put together.
pub(super) struct Wanted<'a> {
    pub(super) line: Option<usize>,
    pub(super) name: &'a str,
    pub(super) path: &'a str,
    pub(super) trim: &'a JunctionTrim,
    pub(super) pieces: Pieces,
}

/// How a trim is divided along its line.
pub(super) enum Pieces {
    /// Over so much, lapped or butted.
    Lapped(Length),
    /// Lapped over so much, each made for its place on a run that tapers.
    Tapered(Length, Box<WantedTaper>),
    /// Set as they are, apart from each other.
    Set(Vec<Length>),
}

impl Pieces {
    fn taper(&self) -> Option<&WantedTaper> {
        match self {
            Pieces::Tapered(_, taper) => Some(taper),
            Pieces::Lapped(_) | Pieces::Set(_) => None,
        }
    }
}

/// The trim sheet of this thickness.
pub(super) fn sheet_of(job: &Job, thickness: Length, path: &str) -> Result<Sheet, Error> {
    job.metals.trims.iter().find(|s| s.thickness() == thickness).copied().ok_or_else(|| {
        Error::new(ErrorKind::Missing, "no trim sheet of this thickness")
            .at(path)
            .value_of(thickness)
            .accepts(if job.metals.trims.is_empty() {
                "a thickness of metals.trims, which has none".to_owned()
            } else {
                job.metals.trims.iter().map(|s| s.thickness().to_string()).collect::<Vec<_>>().join(", ")
            })
            .cured_by("add the sheet to metals.trims")
    })
}

/// A trim that tapers along its line, walked as one sees it who looks up the line.
pub(super) struct WantedTaper {
    lower: Profile,
    upper: Profile,
    /// The bend that runs straight along the line.
    held: usize,
    /// The line, and how far the trim runs on beyond its lower and its upper end.
    line: Length,
    beyond: (Length, Length),
    /// How its lower end is cut, on the sides of that bend as they come in the walk.
    end: Option<[NearCut; 2]>,
}

/// Whether a line starts at its lower end, or is level. Trims are set from there, each piece under the one above it.
pub(super) fn starts_low(roof: &Roof, line: usize) -> bool {
    roof.lines().get(line).is_none_or(|l| l.start.z <= l.end.z)
}

/// How far a chord of a blank's end may stray from the curve in a bend.
const CHORD: Length = Length::micrometres(10);

impl WantedTaper {
    pub(super) fn new((upper, lower): (&JunctionTrim, &JunctionTrim), length: &TrimLength, up: bool, end: Option<&PanEndCut>) -> Result<WantedTaper, Error> {
        // What stands still between the two sections runs straight along the line.
        let bends = upper.profile.bends.len();
        let held = upper.corners.iter().zip(&lower.corners).skip(1).position(|(a, b)| a == b).filter(|k| *k < bends);
        let held = held.ok_or_else(|| Error::new(ErrorKind::Internal, "a trim that tapers has no bend along its line").value_of(&upper.name))?;
        let ends = length.ends;
        let below = if up { ends.at_start } else { ends.at_end };
        let cut = |leg: &PanEndLeg| Ok(NearCut { at: (below - leg.at_centre).length()?, angle: leg.angle });
        let end = match end {
            Some(e) if up => Some([cut(&e.first)?, cut(&e.second)?]),
            Some(e) => Some([cut(&e.second)?, cut(&e.first)?]),
            None => None,
        };
        let (lower, upper) = (&lower.profile, &upper.profile);
        // A section is seen by one who looks along its line: from the lower end of a line that starts high, from behind.
        Ok(if up {
            WantedTaper { lower: lower.clone(), upper: upper.clone(), held, line: length.line, beyond: (ends.at_start, ends.at_end), end }
        } else {
            let held = bends - 1 - held;
            WantedTaper { lower: lower.reversed(), upper: upper.reversed(), held, line: length.line, beyond: (ends.at_end, ends.at_start), end }
        })
    }

    fn at(&self, station: Length) -> Result<Profile, Error> {
        profile_along(&self.lower, &self.upper, station, self.line)
    }

    /// Where the run begins: it is widest there.
    fn foot(&self) -> Result<Profile, Error> {
        self.at((-self.beyond.0).length()?)
    }

    /// The run in pieces, from its lower end up.
    fn pieces<R: Recorder>(&self, r: &mut R, job: &Job, laps: &LapRun) -> Result<TaperedPieces, Error> {
        let mut run = TaperedRun {
            near: self.foot()?,
            far: self.at((self.line + self.beyond.1).length()?)?,
            run: laps.run,
            longest: laps.longest,
            lap: laps.lap,
            mode: laps.mode,
            least_piece: laps.least_piece,
            rule: job.bend_rule.clone(),
            held: HeldLine::Bend(Part::Body(self.held)),
            offset: Point::ORIGIN,
            tolerance: CHORD,
        };
        let over = |made: &TaperedPieces| -> Result<Length, Error> {
            made.pieces.iter().try_fold(Length::ZERO, |most, p| Ok(most.max((p.trim.blank.bounds()?.size()?.1 - laps.longest).length()?)))
        };
        // A return lies as its leg's mirror image about a line that leans, and so makes the blank a little longer than the piece: the pieces leave that off.
        // What they leave off moves their ends, and with them the lean by a trifle: twice is enough but for noise.
        for _ in 0..4 {
            let more = over(&run.compute()?)?;
            if !more.is_positive() {
                break;
            }
            run.longest = (run.longest - more).length()?;
        }
        let mut made = run.run(r)?;
        if let (Some(cuts), Some(first)) = (self.end, made.pieces.first_mut()) {
            let long = (first.to - first.from).length()?;
            first.trim = first.trim.clone().with_near_cut(Part::Body(self.held), long, cuts)?;
            r.step(|| {
                let step = Step::new("metal of the lowest piece, its end cut as it lies").formula("each leg to the line on which its plane ends");
                step.with("angle on the left", cuts[0].angle).with("angle on the right", cuts[1].angle).gives(first.trim.area).source(Source::geometry())
            });
        }
        Ok(made)
    }

    /// Whether the shop would cut the lower ends of both alike.
    fn ends_like(&self, other: &WantedTaper) -> bool {
        let near = |a: Length, b: Length| (a - b).length().is_ok_and(|d| d.pm().unsigned_abs() <= ALIKE.pm().unsigned_abs());
        match (self.end, other.end) {
            (None, None) => true,
            (Some(a), Some(b)) => a.iter().zip(&b).all(|(x, y)| near(x.at, y.at) && (x.angle.degrees() - y.angle.degrees()).abs() < 1e-6),
            _ => false,
        }
    }
}

/// Lengths apart by less than this are one: what the geometry of two like corners may differ by.
const ALIKE: Length = Length::micrometres(1);

/// Whether the shop would make one trim of the two, whichever edge each is walked from. What tapers is made for its run, and walked one way.
fn alike(a: &Wanted<'_>, b: &Wanted<'_>) -> bool {
    a.trim.name == b.trim.name
        && match (a.pieces.taper(), b.pieces.taper()) {
            (None, None) => same(&a.trim.profile, &b.trim.profile) || same(&a.trim.profile, &b.trim.profile.reversed()),
            (Some(x), Some(y)) => (x.line, x.beyond) == (y.line, y.beyond) && x.ends_like(y) && same(&x.upper, &y.upper) && same(&x.lower, &y.lower),
            _ => false,
        }
}

fn same(p: &Profile, q: &Profile) -> bool {
    let near = |x: Length, y: Length| (x - y).length().is_ok_and(|d| d.pm().unsigned_abs() <= ALIKE.pm().unsigned_abs());
    p.thickness == q.thickness
        && (&p.start_edge, &p.end_edge, p.painted) == (&q.start_edge, &q.end_edge, q.painted)
        && p.legs.len() == q.legs.len()
        && p.bends.len() == q.bends.len()
        && p.legs.iter().zip(&q.legs).all(|(x, y)| (x.start, x.end) == (y.start, y.end) && near(x.length, y.length))
        && p.bends.iter().zip(&q.bends).all(|(x, y)| {
            x.direction == y.direction && x.inside_radius == y.inside_radius && (x.angle.degrees() - y.angle.degrees()).abs() < 1e-6 && x.rule == y.rule
        })
}

/// The trims of the job, in the order in which they are first met.
pub(super) fn items<R: Recorder>(job: &Job, wanted: &[Wanted<'_>], r: &mut R) -> Result<Vec<TrimItem>, Error> {
    let mut groups: Vec<Vec<&Wanted<'_>>> = Vec::new();
    for one in wanted {
        match groups.iter_mut().find(|g| g.first().is_some_and(|first| alike(first, one))) {
            Some(group) => group.push(one),
            None => groups.push(vec![one]),
        }
    }
    let mut out = Vec::with_capacity(groups.len());
    for (i, group) in groups.iter().enumerate() {
        let Some(first) = group.first() else { continue };
        let mark = format!("T{}", i + 1);
        let title = format!("{mark}, {}", first.trim.name);
        out.push(r.part(|| title, |r| item(job, mark, group, r)).map_err(|e| e.about(&first.trim.name))?);
    }
    Ok(out)
}

fn item<R: Recorder>(job: &Job, mark: String, group: &[&Wanted<'_>], r: &mut R) -> Result<TrimItem, Error> {
    let first = group.first().ok_or_else(|| Error::new(ErrorKind::Internal, "a trim without a run"))?;
    let profile = match first.pieces.taper() {
        Some(taper) => &taper.foot()?,
        None => &first.trim.profile,
    };
    let sheet = sheet_of(job, profile.thickness, first.path)?;
    let pattern = FlatPattern { profile: profile.clone(), rule: job.bend_rule.clone() };
    let flat = r.part(|| pattern.title(), |r| pattern.run(r)).map_err(|e| e.under(&format!("trims.{mark}")))?;
    let supply = &job.supplies.trims;
    if let Some(limit) = supply.greatest_girth
        && flat.girth() > limit
    {
        return Err(Error::new(ErrorKind::Impossible, format!("the girth is over the widest sheet by {}", (flat.girth() - limit).length()?))
            .at(first.path)
            .value_of(flat.girth())
            .accepts(format!("at most {limit}"))
            .cured_by("shorter legs, two trims, or a wider sheet"));
    }
    let (meet, source) = match &first.pieces {
        Pieces::Set(_) => (PieceMeet::Lap(Length::ZERO), Source::geometry()),
        Pieces::Lapped(_) | Pieces::Tapered(..) => supply.meet_of(&first.trim.name),
    };
    let (lap, gap) = (meet.lap(), meet.gap());
    r.step(|| {
        let step = Step::new("between two pieces of it");
        match meet {
            PieceMeet::Lap(lap) => step.formula("lap").gives(lap),
            PieceMeet::Gap(gap) => step.formula("gap").gives(gap),
        }
        .source(source.clone())
    });
    let longest = supply.stock.iter().map(|s| s.length).max().unwrap_or_default();
    let longest = (longest - supply.end_loss).length()?;
    let laps = |run: Length| LapRun { run, longest, lap, gap, least_piece: supply.least_piece, mode: LapMode::FullThenRest };
    let tapered = match &first.pieces {
        Pieces::Tapered(..) if gap.is_positive() => {
            return Err(Error::new(ErrorKind::Internal, "a cleat that tapers").value_of(&first.trim.name));
        }
        Pieces::Tapered(run, taper) => {
            let made = r.part(|| format!("tapered pieces along {}", first.name), |r| taper.pieces(r, job, &laps(*run)));
            Some(made.map_err(|e| e.under("supplies.trims"))?)
        }
        Pieces::Lapped(_) | Pieces::Set(_) => None,
    };
    let (mut runs, mut pieces): (Vec<TrimRun>, Vec<Piece>) = (Vec::new(), Vec::new());
    for wanted in group {
        // What is set, and the lengths of stock that it is cut from.
        let (run, set, cut): (Length, Vec<Length>, Vec<Length>) = match (&wanted.pieces, &tapered) {
            (Pieces::Tapered(run, _), Some(made)) => (
                *run,
                made.pieces.iter().map(|p| (p.to - p.from).length()).collect::<Result<_, Error>>()?,
                made.pieces.iter().map(|p| Ok(p.trim.blank.bounds()?.size()?.1)).collect::<Result<_, Error>>()?,
            ),
            (Pieces::Lapped(run) | Pieces::Tapered(run, _), _) => {
                let lapped = r.part(|| format!("pieces along {}", wanted.name), |r| laps(*run).run(r)).map_err(|e| e.under("supplies.trims"))?;
                let set: Vec<Length> = lapped.pieces.iter().map(|p| p.length).collect();
                (*run, set.clone(), set)
            }
            (Pieces::Set(set), _) => {
                if let Some(long) = set.iter().find(|p| **p > longest) {
                    return Err(Error::new(ErrorKind::Impossible, format!("a piece is longer than a stock length gives by {}", (*long - longest).length()?))
                        .at(wanted.path)
                        .value_of(*long)
                        .accepts(format!("pieces of at most {longest}"))
                        .cured_by("shorter pieces, or longer stock")
                        .about(wanted.name));
                }
                (Length::total(set)?, set.clone(), set.clone())
            }
        };
        for length in cut {
            match pieces.iter_mut().find(|p| p.length == length) {
                Some(same) => same.count = same.count.saturating_add(1),
                None => pieces.push(Piece { label: wanted.name.to_owned(), length, count: 1 }),
            }
        }
        runs.push(TrimRun { line: wanted.line, name: wanted.name.to_owned(), run, pieces: set });
    }
    let cutting = Cutting { stock: supply.stock.clone(), pieces, kerf: supply.kerf, end_loss: supply.end_loss };
    let cutting = r.part(|| cutting.title(), |r| cutting.run(r)).map_err(|e| e.under("supplies.trims"))?;
    let line_mass = flat.line_mass(sheet.surface_mass()?)?;
    Ok(TrimItem {
        mark,
        name: first.trim.name.to_string(),
        profile: profile.clone(),
        flat,
        sheet,
        line_mass,
        lap,
        gap,
        runs,
        cutting,
        stock: supply.stock.iter().map(|s| s.label.clone()).collect(),
        tapered,
    })
}
