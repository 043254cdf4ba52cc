//! Trims over the whole roof: those alike are one trim, with its flat pattern, its runs and the lengths that they are cut from.

use super::input::Job;
use crate::error::{Error, ErrorKind};
use crate::junction::JunctionTrim;
use crate::metal::Sheet;
use crate::record::{Calculation, Recorder};
use crate::stock::{CutPlan, Cutting, LapMode, LapRun, Piece};
use crate::trim::{Flat, FlatPattern, Profile};
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
    /// Its profile.
    pub profile: Profile,
    /// Its flat pattern by the job's bend rule.
    pub flat: Flat,
    /// Its sheet.
    pub sheet: Sheet,
    /// Mass for each length of it.
    pub line_mass: LineMass,
    /// How far its pieces lap.
    pub lap: Length,
    /// Where it goes.
    pub runs: Vec<TrimRun>,
    /// How its pieces are cut from the lengths that are bought.
    pub cutting: CutPlan,
    /// Whose lengths `cutting` counts, by their labels.
    pub stock: Vec<String>,
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
    /// Lapped over so much.
    Lapped(Length),
    /// Set as they are, apart from each other.
    Set(Vec<Length>),
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

/// Lengths apart by less than this are one: what the geometry of two like corners may differ by.
const ALIKE: Length = Length::micrometres(1);

/// Whether the shop would make one trim of the two, whichever edge each is walked from.
fn alike(a: &JunctionTrim, b: &JunctionTrim) -> bool {
    a.name == b.name && (same(&a.profile, &b.profile) || same(&a.profile, &b.profile.reversed()))
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
        match groups.iter_mut().find(|g| g.first().is_some_and(|first| alike(first.trim, one.trim))) {
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
    let profile = &first.trim.profile;
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
    let lap = supply.lap_of(&first.trim.name);
    let longest = supply.stock.iter().map(|s| s.length).max().unwrap_or_default();
    let longest = (longest - supply.end_loss).length()?;
    let (mut runs, mut pieces): (Vec<TrimRun>, Vec<Piece>) = (Vec::new(), Vec::new());
    for wanted in group {
        let (run, set) = match &wanted.pieces {
            Pieces::Lapped(run) => {
                let lapped = LapRun { run: *run, longest, lap, least_piece: supply.least_piece, mode: LapMode::FullThenRest };
                let lapped = r.part(|| format!("pieces along {}", wanted.name), |r| lapped.run(r)).map_err(|e| e.under("supplies.trims"))?;
                (*run, lapped.pieces.iter().map(|p| p.length).collect::<Vec<_>>())
            }
            Pieces::Set(set) => {
                if let Some(long) = set.iter().find(|p| **p > longest) {
                    return Err(Error::new(ErrorKind::Impossible, format!("a piece is longer than a stock length gives by {}", (*long - longest).length()?))
                        .at(wanted.path)
                        .value_of(*long)
                        .accepts(format!("pieces of at most {longest}"))
                        .cured_by("shorter pieces, or longer stock")
                        .about(wanted.name));
                }
                (Length::total(set)?, set.clone())
            }
        };
        for length in &set {
            match pieces.iter_mut().find(|p| p.length == *length) {
                Some(same) => same.count = same.count.saturating_add(1),
                None => pieces.push(Piece { label: wanted.name.to_owned(), length: *length, count: 1 }),
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
        runs,
        cutting,
        stock: supply.stock.iter().map(|s| s.label.clone()).collect(),
    })
}
