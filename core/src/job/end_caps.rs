//! The end caps of a job: what closes a trim where its line ends and nothing lies over it.

use super::cautions::CAP_WITHOUT_TRIM;
use super::input::Job;
use super::packet::JunctionItem;
use super::sections::order;
use super::trims::{TrimItem, starts_low};
use crate::assembly::{BeadAlong, BeadRun, CornerLine, LineEnd, RoofCorners, TrimEnd};
use crate::error::Error;
use crate::junction::Side;
use crate::record::{Calculation, Caution, Source};
use crate::roof::Roof;
use crate::units::Length;

/// How a cap's outline lies to the drawing of the trim that it closes, seen from outside.
///
/// ```
/// use seamwright::job::CapHand;
/// assert_eq!(CapHand::Opposite.name(), "opposite hand");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum CapHand {
    /// As the trim is drawn.
    AsDrawn,
    /// Its mirror image.
    Opposite,
    /// The trim looks alike from both ends.
    Either,
}

impl CapHand {
    /// The hand in words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            CapHand::AsDrawn => "as drawn",
            CapHand::Opposite => "opposite hand",
            CapHand::Either => "either hand",
        }
    }
}

/// An end cap. The shop makes it to the outline of the trim's section, with tabs on it; it is set in a bead.
///
/// ```
/// use seamwright::job::{CapHand, Job};
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// // At the eave the two rakes of a gable end in caps of opposite hands, both to the section of one trim.
/// let caps: Vec<_> = packet.end_caps.iter().filter(|c| c.name == "rake 3" || c.name == "rake 4").collect();
/// assert_eq!(caps[0].mark, caps[1].mark);
/// assert_eq!([caps[0].hand, caps[1].hand], [CapHand::AsDrawn, CapHand::Opposite]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EndCap {
    /// The line's number in the roof.
    pub line: usize,
    /// Its name.
    pub name: String,
    /// Which end of it.
    pub end: LineEnd,
    /// Along the upper edge of a step, its riser; none at any other.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub above: Option<Length>,
    /// The mark of the trim that it closes, and whose section is its outline.
    pub mark: String,
    /// That trim's name.
    pub trim: String,
    /// How its outline lies to the trim's drawing.
    pub hand: CapHand,
}

/// What closes the ends of the job's trims.
#[derive(Debug, Default)]
pub(super) struct ClosedEnds {
    pub(super) caps: Vec<EndCap>,
    /// The bead across each end that is capped or turned up, by the number of its junction.
    pub(super) beads: Vec<(usize, BeadRun)>,
    pub(super) cautions: Vec<Caution>,
}

/// The ends of a roof's trims: where they lie, and what trims there are.
pub(super) struct Ends<'a> {
    pub(super) job: &'a Job,
    pub(super) roof: &'a Roof,
    pub(super) corners: &'a RoofCorners,
    pub(super) junctions: &'a [JunctionItem],
    pub(super) trims: &'a [TrimItem],
}

impl Ends<'_> {
    /// The trim that is seen at this end of its line, as it is made, and whether it is drawn as seen from outside there; not said where it looks alike from both ends.
    fn seen(&self, junction: &JunctionItem, end: &CornerLine) -> Option<(&TrimItem, Option<bool>)> {
        let side = if end.above.is_some() { Side::Second } else { Side::First };
        let trim = junction.section.outer_trim(&junction.water, side)?;
        let item = self.trims.iter().find(|t| t.name == *trim.name && t.runs.iter().any(|r| r.line == Some(end.line)))?;
        let line = self.roof.lines().get(end.line)?;
        // A section is seen along its line if its first side is the line's own, which lies on the left.
        let along = match &item.tapered {
            Some(_) => item.drawn(&trim.profile).map(|_| starts_low(self.roof, end.line)),
            None => item.drawn(&trim.profile).map(|as_is| as_is == (order(line).first == line.side.plane)),
        };
        Some((item, along.map(|along| along == (end.end == LineEnd::Start))))
    }

    /// Every cap and every bead.
    pub(super) fn closed(&self) -> Result<ClosedEnds, Error> {
        let mut out = ClosedEnds::default();
        let seal = &self.job.supplies.sealant.line;
        for (number, corner) in self.corners.corners.iter().enumerate() {
            for end in corner.lines.iter().filter(|l| matches!(l.closed, TrimEnd::Capped | TrimEnd::TurnedUp)) {
                let found = self.junctions.iter().position(|j| j.line == end.line);
                let Some((at, (item, outside))) = found.and_then(|at| Some((at, self.seen(self.junctions.get(at)?, end)?))) else {
                    let said = Caution::new(CAP_WITHOUT_TRIM, format!("corners.corners[{number}]"), Source::CommonPractice);
                    out.cautions.push(said.arg("line", &end.name).arg("end", if end.end == LineEnd::Start { "start" } else { "end" }));
                    continue;
                };
                // A trim that tapers is capped at its upper end: the lower one is open for the water.
                let girth = item.tapered.as_ref().and_then(|t| t.pieces.last()).map_or(item.flat.girth(), |top| top.trim.far.girth());
                let bead = BeadAlong { width: seal.lap_bead.width, depth: seal.lap_bead.depth, length: girth };
                if seal.bedded_laps && bead.width.is_positive() && bead.depth.is_positive() {
                    let run = BeadRun {
                        name: format!("end of the {}", item.name),
                        side: if end.above.is_some() { Side::Second } else { Side::First },
                        width: bead.width,
                        depth: bead.depth,
                        length: bead.length,
                        volume: bead.compute()?,
                    };
                    out.beads.push((at, run));
                }
                if end.closed == TrimEnd::Capped {
                    let hand = outside.map_or(CapHand::Either, |outside| if outside { CapHand::AsDrawn } else { CapHand::Opposite });
                    let (mark, trim) = (item.mark.clone(), item.name.clone());
                    out.caps.push(EndCap { line: end.line, name: end.name.clone(), end: end.end, above: end.above, mark, trim, hand });
                }
            }
        }
        Ok(out)
    }
}
