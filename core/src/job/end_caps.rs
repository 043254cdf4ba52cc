//! The end caps of a job: what closes a trim where its line ends and nothing lies over it.

use super::alike::alike_corners;
use super::cautions::CAP_WITHOUT_TRIM;
use super::input::Job;
use super::packet::{JunctionItem, SectionSide};
use super::sections::order;
use super::trims::{TrimItem, starts_low};
use crate::assembly::{BeadAlong, BeadRun, CornerLine, LineEnd, RoofCorners, TrimEnd};
use crate::error::{Error, ErrorKind};
use crate::junction::{Adjoining, CapBlank, CapOutline, JunctionTrim, SectionPoint, Side, Support, TrimSheet};
use crate::metal::Sheet;
use crate::practice::junction::CAP_TAB;
use crate::record::{Calculation, Caution, Source};
use crate::roof::{LineKind, Roof};
use crate::units::{Angle, Length};

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

/// An end cap: it closes the hollow between its trim and what that lies over, with tabs under the trim, and is set in a bead.
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
    /// The mark of its blank; none where the trim leaves no hollow, and its end is folded down.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub piece: Option<String>,
}

/// The blank of end caps that are alike.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let ridge = packet.end_caps.iter().find(|c| c.name == "ridge 1").expect("its ends are capped");
/// let piece = packet.cap_pieces.iter().find(|p| Some(&p.mark) == ridge.piece.as_ref()).expect("it has a blank");
/// assert_eq!((&piece.trim_mark, &*piece.trim), (&ridge.mark, "ridge cap"));
/// // A tab along each slope of the cap.
/// assert_eq!(piece.made.tabs, 2);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CapItem {
    /// Its mark: E1, E2 and so on.
    pub mark: String,
    /// The mark of the trim that it closes.
    pub trim_mark: String,
    /// That trim's name.
    pub trim: String,
    /// Its sheet.
    pub sheet: Sheet,
    /// The cap, as the trim is drawn.
    pub made: CapBlank,
}

/// What closes the ends of the job's trims.
#[derive(Debug, Default)]
pub(super) struct ClosedEnds {
    pub(super) caps: Vec<EndCap>,
    /// Their blanks.
    pub(super) pieces: Vec<CapItem>,
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

fn sheet_of(trim: &JunctionTrim) -> TrimSheet {
    let thickness = trim.profile.thickness;
    TrimSheet { thickness, inside_radius: trim.profile.bends.first().map_or(thickness, |b| b.inside_radius) }
}

/// The upper faces of the pans beside a trim.
fn supports(junction: &JunctionItem, end: &CornerLine) -> Result<Vec<Support>, Error> {
    let second = junction.second.as_ref();
    // Each edge of a step is over one plane.
    let sides: Vec<&SectionSide> = match (junction.kind, end.above) {
        (LineKind::Step, Some(_)) => second.into_iter().collect(),
        (LineKind::Step, None) => vec![&junction.first],
        _ => core::iter::once(&junction.first).chain(second).collect(),
    };
    let mut out = Vec::with_capacity(2);
    for side in sides {
        out.push(Support { rise: side.rise, height: side.levels.pan_face()? });
    }
    // Packing under a flange fills what is under that.
    let packing = junction.section.adjoining.iter().find_map(|a| if let Adjoining::Packing { height, .. } = a { Some(*height) } else { None });
    if let (Some(upper), Some(packing)) = (out.get_mut(1), packing) {
        upper.height = upper.height.max(packing);
    }
    Ok(out)
}

/// The same cap as seen from the other side.
fn mirrored(asked: &CapOutline) -> Result<CapOutline, Error> {
    let mirror = |p: &SectionPoint| -> Result<SectionPoint, Error> { Ok(SectionPoint { x: (-p.x).length()?, z: p.z }) };
    let corners = asked.corners.iter().rev().map(mirror).collect::<Result<_, _>>()?;
    let on = asked.on.iter().rev().map(|s| Support { rise: Angle::of_degrees(-s.rise.degrees()), ..*s }).collect();
    Ok(CapOutline { corners, on, ..asked.clone() })
}

/// How far the middle of a blank's metal lies beyond the middle of its box.
fn leans(made: &CapBlank) -> Result<f64, Error> {
    let (width, _) = made.blank.bounds()?.size()?;
    let (mut area, mut moment) = (0.0, 0.0);
    for edge in &made.blank.outline {
        let (a, b) = ((edge.from.x.mm(), edge.from.y.mm()), (edge.to.x.mm(), edge.to.y.mm()));
        let cross = a.0 * b.1 - b.0 * a.1;
        area += cross / 2.0;
        moment += cross * (a.0 + b.0) / 6.0;
    }
    Ok(moment / area - width.mm() / 2.0)
}

fn alike(a: &CapBlank, b: &CapBlank) -> bool {
    let corners = |of: &CapBlank| of.blank.outline.iter().map(|e| e.from).collect::<Vec<_>>();
    alike_corners(&corners(a), &corners(b))
}

/// The trim that is seen at an end of its line.
#[derive(Clone, Copy)]
struct Seen<'a> {
    /// In the section.
    trim: &'a JunctionTrim,
    /// As it is made.
    item: &'a TrimItem,
    /// Whether it is drawn as the section is; not said where it looks alike from both ends.
    drawn: Option<bool>,
    /// Whether the section is seen from outside there.
    is_outside: bool,
}

impl Ends<'_> {
    /// The trim that is seen at this end of its line.
    fn seen<'a>(&'a self, junction: &'a JunctionItem, end: &CornerLine) -> Option<Seen<'a>> {
        let side = if end.above.is_some() { Side::Second } else { Side::First };
        let trim = junction.section.outer_trim(&junction.water, side)?;
        let item = self.trims.iter().find(|t| t.name == *trim.name && t.runs.iter().any(|r| r.line == Some(end.line)))?;
        let line = self.roof.lines().get(end.line)?;
        // A section is seen along its line if its first side is the line's own, which lies on the left.
        let along = match &item.tapered {
            Some(_) => starts_low(self.roof, end.line),
            None => order(line).first == line.side.plane,
        };
        let drawn = item.drawn(&trim.profile).map(|as_is| as_is || item.tapered.is_some());
        Some(Seen { trim, item, drawn, is_outside: along == (end.end == LineEnd::Start) })
    }

    /// The mark of the blank of a cap, among those that there are or a new one, and how it lies there; no mark where nothing is to be closed.
    fn piece(
        &self,
        (junction, end): (&JunctionItem, &CornerLine),
        Seen { trim, item, drawn, is_outside }: Seen<'_>,
        pieces: &mut Vec<CapItem>,
    ) -> Result<(Option<String>, CapHand), Error> {
        let hand = |as_drawn: bool| if as_drawn { CapHand::AsDrawn } else { CapHand::Opposite };
        let of_trim = drawn.map_or(CapHand::Either, |drawn| hand(drawn == is_outside));
        let as_seen = CapOutline { corners: trim.corners.clone(), sheet: sheet_of(trim), on: supports(junction, end)?, tab: CAP_TAB };
        let made = match as_seen.compute() {
            Err(e) if e.kind() == ErrorKind::Impossible => return Ok((None, of_trim)),
            made => made.map_err(|e| e.about(&end.name))?,
        };
        let turned = mirrored(&as_seen)?.compute().map_err(|e| e.about(&end.name))?;
        let is_alike = alike(&made, &turned);
        // As its trim is drawn; of a trim that looks alike from both ends as that hand on which more of the metal lies to the left.
        let is_turned = !drawn.unwrap_or(leans(&made)? <= 0.0);
        let as_drawn = if is_turned { turned } else { made };
        let hand = if is_alike { CapHand::Either } else { hand(is_outside != is_turned) };
        if let Some(same) = pieces.iter().find(|p| p.trim_mark == item.mark && alike(&p.made, &as_drawn)) {
            return Ok((Some(same.mark.clone()), hand));
        }
        let mark = format!("E{}", pieces.len() + 1);
        pieces.push(CapItem { mark: mark.clone(), trim_mark: item.mark.clone(), trim: item.name.clone(), sheet: item.sheet, made: as_drawn });
        Ok((Some(mark), hand))
    }

    /// Every cap and every bead.
    pub(super) fn closed(&self) -> Result<ClosedEnds, Error> {
        let mut out = ClosedEnds::default();
        let seal = &self.job.supplies.sealant.line;
        for (number, corner) in self.corners.corners.iter().enumerate() {
            for end in corner.lines.iter().filter(|l| matches!(l.closed, TrimEnd::Capped | TrimEnd::TurnedUp)) {
                let found = self.junctions.iter().position(|j| j.line == end.line);
                let Some((at, seen)) = found.and_then(|at| Some((at, self.seen(self.junctions.get(at)?, end)?))) else {
                    let said = Caution::new(CAP_WITHOUT_TRIM, format!("corners.corners[{number}]"), Source::CommonPractice);
                    out.cautions.push(said.arg("line", &end.name).arg("end", if end.end == LineEnd::Start { "start" } else { "end" }));
                    continue;
                };
                let item = seen.item;
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
                    let (mark, trim) = (item.mark.clone(), item.name.clone());
                    let junction = self.junctions.get(at).ok_or_else(|| Error::new(ErrorKind::Internal, "an end without its line"))?;
                    let (piece, hand) = self.piece((junction, end), seen, &mut out.pieces)?;
                    out.caps.push(EndCap { line: end.line, name: end.name.clone(), end: end.end, above: end.above, mark, trim, hand, piece });
                }
            }
        }
        Ok(out)
    }
}
