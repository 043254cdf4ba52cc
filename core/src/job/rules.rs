//! The rules of a job held against each other.

use super::choices::{Chosen, Detail};
use super::input::Job;
use crate::error::Error;
use crate::junction::{Levels, RuleBook, RuleRoom, chosen};
use crate::record::{Calculation, Off, Recorder};
use crate::units::Length;
use std::collections::BTreeSet;

/// Whether the rules of a job can be kept together, on any roof.
///
/// The job itself refuses what contradicts in the details that serve some line of its roof, and says of each junction which laps of water are short; here both are contradictions, of
/// details that serve no line too.
///
/// Looked at are those of every detail, as [`RuleCheck`](crate::junction::RuleCheck) does; the laps that water asks; the clearance and the engagement that moving ends
/// keep; what a sealed line allows; the laps of tapes and trims; the least width of a panel. The result lists every demand with what it leaves over.
///
/// # Errors
/// Computing refuses every contradiction at once ([`ErrorKind::Conflict`](crate::error::ErrorKind::Conflict)), with every part by its path, its length and its source, by
/// how much, and what would cure it.
///
/// ```
/// use seamwright::job::{Job, JobRules};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let mut job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
/// assert!(JobRules { job: job.clone() }.compute()?.len() > 100);
/// job.supplies.movement.engagement = Length::inches(2);
/// job.supplies.sealant.line.longest_gap = Length::ZERO;
/// let e = JobRules { job }.compute().unwrap_err();
/// assert!(e.message().contains("supplies.movement.engagement 50.8 mm"), "{e}");
/// assert_eq!(e.others().last().unwrap().path(), "job.supplies.closures.clearance");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct JobRules {
    /// The job.
    pub job: Job,
}

impl Detail {
    fn asks(&self, book: &mut RuleBook, l: &Levels) {
        match self {
            Detail::Eave(d) => d.asks(book),
            Detail::Rake(d) => d.asks(book, l),
            Detail::Ridge(d) => d.asks(book, (l, l)),
            Detail::HighEdge(d) => d.asks(book, l),
            Detail::Hip(d) => d.asks(book, (l, l)),
            Detail::Valley(d) => d.asks(book, (l, l)),
            Detail::Headwall(d) | Detail::CurbFront(d) => d.asks(book, l),
            Detail::Sidewall(d) | Detail::CurbSide(d) => d.asks(book, l),
            Detail::ShallowToSteep(d) | Detail::SteepToShallow(d) => d.asks(book, (l, l)),
            Detail::CurbBack(d) => d.asks(book, l),
            Detail::Step(d) => d.asks(book, l),
            Detail::ExpansionAlong(d) => d.asks(book, l),
            Detail::ExpansionAcross(d) => d.asks(book, l),
        }
    }
}

impl Job {
    /// Refuses every contradiction among the rules of what serves some line or wall of the roof, each as [`JobRules`] tells it. The laps that water asks for refuse nothing here, as no
    /// section does: where one is short the junction says so.
    pub(super) fn hold_rules(&self, chosen: &[Option<Chosen<'_>>]) -> Result<(), Error> {
        let serving: BTreeSet<&str> = chosen.iter().flatten().map(|c| c.path.as_str()).collect();
        let mut book = RuleBook::for_faults(self.keeps_moving());
        self.asks(&mut book, &|path| serving.contains(path));
        book.close(&mut Off).map(|_| ())
    }

    fn keeps_moving(&self) -> Option<(Length, Length)> {
        self.temperatures.map(|_| (self.supplies.movement.clearance, self.supplies.movement.engagement))
    }

    /// What all that is chosen asks for, of details those whose path serves.
    fn asks(&self, book: &mut RuleBook, serves: &dyn Fn(&str) -> bool) {
        let levels = self.layers();
        let kinds = self.junctions.kinds.iter().enumerate().map(|(i, d)| (format!("junctions.kinds[{i}].{}", d.tag()), d));
        let lines = self.junctions.lines.iter().enumerate().map(|(i, c)| (format!("junctions.lines[{i}].detail.{}", c.detail.tag()), &c.detail));
        for (path, detail) in kinds.chain(lines).filter(|(path, _)| serves(path)) {
            book.under(path, |b| detail.asks(b, &levels));
        }
        for (i, coping) in self.copings.iter().enumerate() {
            book.under(format!("copings[{i}].detail"), |b| coping.detail.asks(b));
        }
        if let Some(narrow) = &self.layout.narrow {
            book.ask([chosen("layout.narrow.least", narrow.least)], [chosen("panel.coverage", self.panel.coverage)], "a smaller least width, or a wider panel");
        }
        if let Some((lap, limit)) = self.layout.limit.as_ref().and_then(|l| l.end_lap.map(|lap| (lap, l.length))) {
            book.ask([chosen("layout.limit.end_lap", lap)], [chosen("layout.limit.length", limit)], "a shorter lap, or longer panels");
        }
        book.under("supplies", |b| {
            let (seal, closures, trims) = (&self.supplies.sealant, &self.supplies.closures, &self.supplies.trims);
            // A trim must show something beside its lap.
            let piece = || chosen("trims.least_piece", trims.least_piece);
            b.ask([chosen("trims.lap", trims.lap)], [piece()], "longer least pieces, or a shorter lap");
            for (i, own) in trims.laps.iter().enumerate() {
                b.ask([chosen(format!("trims.laps[{i}].lap"), own.lap)], [piece()], "longer least pieces, or a shorter lap");
            }
            for (path, meet) in trims.holders.lengths().filter(|(_, meet)| meet.lap().is_positive()) {
                b.ask([chosen(format!("trims.{path}"), meet.lap())], [piece()], "longer least pieces, or a shorter lap");
            }
            b.ask([chosen("sealant.tape_laps.lap", seal.tape_laps.lap)], [chosen("sealant.roll", seal.roll)], "longer rolls, or a shorter lap");
            let gap = || chosen("sealant.line.longest_gap", seal.line.longest_gap);
            for (end, by) in
                [("sealant.line.stops_short.at_start", seal.line.stops_short.at_start), ("sealant.line.stops_short.at_end", seal.line.stops_short.at_end)]
            {
                if by > Length::ZERO {
                    b.ask([chosen(end, by)], [gap()], "tape that goes on to the end of the line, or a longer gap");
                }
            }
            // Each end of a piece stands off its seam by half of what the piece is shorter.
            b.ask([chosen("closures.clearance", closures.clearance).half()], [gap()], "closures cut nearer to their bays, or a longer gap");
        });
    }
}

impl Calculation for JobRules {
    type Out = Vec<RuleRoom>;

    fn title(&self) -> String {
        format!("rules of {} against each other", self.job.name)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Vec<RuleRoom>, Error> {
        self.job.supplies.water.check().map_err(|e| e.under("job.supplies.water"))?;
        let mut book = RuleBook::new((self.job.supplies.water.clone(), "supplies.water"), self.job.keeps_moving());
        self.job.asks(&mut book, &|_| true);
        book.close(r).map_err(|e| e.under("job"))
    }
}
