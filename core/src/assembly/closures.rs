//! Closure pieces for the real bays of a line.

use super::bay::{Bay, BayEnd, Hand, SideBays, Stretch};
use super::cautions::BAY_TOO_SMALL;
use crate::closure::{ClosureBay, ClosureFasteners, ClosurePiece};
use crate::error::{Error, ErrorKind};
use crate::practice::closure as practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::Length;
use std::collections::BTreeMap;

/// What closure pieces are made to, beside the bay itself; the web's height comes from the junction's section.
///
/// ```
/// use seamwright::assembly::ClosureChoice;
/// use seamwright::practice;
/// use seamwright::units::Length;
/// let choice = ClosureChoice::usual(Length::mils(48), Length::inches(2));
/// assert_eq!((choice.tab, choice.from_tab), (practice::closure::TAB, practice::closure::FASTENER_FROM_TAB));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClosureChoice {
    /// Width of a seam where it meets the pan.
    pub seam_width_at_foot: Length,
    /// The tape under the lower flange, pressed.
    #[cfg_attr(feature = "serde", serde(default))]
    pub compressed_tape: Length,
    /// What a piece is shorter than its bay, both ends together, along the line.
    #[cfg_attr(feature = "serde", serde(default))]
    pub clearance: Length,
    /// Length of each end tab.
    pub tab: Length,
    /// Width of the lower flange.
    pub lower_flange: Length,
    /// Width of the top flange; 0 for a piece without one.
    #[cfg_attr(feature = "serde", serde(default))]
    pub top_flange: Length,
    /// How far the top flange runs over each seam; 0 for a piece that stays between the seams.
    #[cfg_attr(feature = "serde", serde(default))]
    pub top_lap: Length,
    /// Distance of the end screws from their tabs, along the line.
    pub from_tab: Length,
}

impl ClosureChoice {
    /// As is common practice, for a seam this wide at its foot and a lower flange of this width: without a top flange, tape or clearance.
    #[must_use]
    pub const fn usual(seam_width_at_foot: Length, lower_flange: Length) -> ClosureChoice {
        ClosureChoice {
            seam_width_at_foot,
            compressed_tape: Length::ZERO,
            clearance: Length::ZERO,
            tab: practice::TAB,
            lower_flange,
            top_flange: Length::ZERO,
            top_lap: Length::ZERO,
            from_tab: practice::FASTENER_FROM_TAB,
        }
    }
}

/// Closures for every bay of one side of a line.
///
/// A bay that ends at a seam on one side only keeps half of a seam's foot clear. A bay without room for a piece with two screws gets none, and a
/// caution. Bays are grouped where every figure that goes into their piece is the same; nothing is rounded.
///
/// # Errors
/// Computing refuses a web of zero or less ([`ErrorKind::OutOfRange`]) and what [`ClosureBay`] refuses of the choices, under `closure`.
///
/// ```
/// use seamwright::assembly::{Bay, BayEnd, ClosureChoice, ClosureRun, Flank, Hand, PanelEdge, SideBays};
/// use seamwright::junction::Side;
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Length};
/// let bay = |k: i16, width: i16| Bay {
///     panel: 0, strip: 0, run: 0, mark: "A".into(), end: PanelEdge::Upper, from: Length::inches(16 * k), to: Length::inches(16 * k + width),
///     length: Length::inches(width), width: Length::inches(width), meeting: Angle::SQUARE, hand: Hand::Square, notched: false, left: BayEnd::Seam, right: BayEnd::Seam,
/// };
/// let bays = SideBays {
///     side: Side::First, flank: Flank::Left, plane: 0, meeting: Angle::SQUARE, bays: vec![bay(0, 16), bay(1, 16), bay(2, 2)], gaps: vec![], beside: vec![],
///     seams: vec![], covered: Length::inches(34), cautions: vec![],
/// };
/// let choice = ClosureChoice::usual(Length::inches(1), Length::inches(2));
/// let list = ClosureRun { bays: &bays, web: Length::inches(2), choice: &choice, spacing: None }.compute()?;
/// assert_eq!((list.groups.len(), list.pieces, list.screws), (1, 2, 4));
/// assert_eq!(list.without, [2]); // 2 in have no room for two screws
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct ClosureRun<'a> {
    /// The bays.
    pub bays: &'a SideBays,
    /// The web's height, from the section.
    pub web: Length,
    /// What the pieces are made to.
    pub choice: &'a ClosureChoice,
    /// The greatest spacing of their screws; `None` for the starting figure of common practice.
    pub spacing: Option<Length>,
}

/// Identical pieces.
///
/// See [`ClosureRun`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClosureGroup {
    /// The bay that the pieces fit.
    pub bay: ClosureBay,
    /// The hand.
    pub hand: Hand,
    /// What the bay ends at on the left, looking up the slope.
    pub left: BayEnd,
    /// What it ends at on the right.
    pub right: BayEnd,
    /// The piece.
    pub piece: ClosurePiece,
    /// How many.
    pub count: usize,
    /// Screws of one piece.
    pub screws_each: usize,
    /// The bays, by number along the line.
    pub bays: Vec<usize>,
}

/// The closures of one side of a line.
///
/// See [`ClosureRun`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClosureList {
    /// Identical pieces together, in the order in which they first come along the line.
    pub groups: Vec<ClosureGroup>,
    /// All pieces.
    pub pieces: usize,
    /// All screws.
    pub screws: usize,
    /// The bays that take no piece, by number along the line.
    pub without: Vec<usize>,
    /// What to know before they are cut; each that several pieces share is said once.
    pub cautions: Vec<Caution>,
}

/// Every figure that makes two bays differ.
type Key = (Length, u64, BayEnd, BayEnd);

fn key(bay: &Bay) -> Key {
    (bay.width, bay.meeting.degrees().to_bits(), bay.left, bay.right)
}

/// Bays that are alike, in the order in which they first come.
pub(super) fn alike(bays: &[Bay]) -> Vec<Vec<usize>> {
    let mut at: BTreeMap<Key, usize> = BTreeMap::new();
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (k, bay) in bays.iter().enumerate() {
        let group = *at.entry(key(bay)).or_insert(groups.len());
        match groups.get_mut(group) {
            Some(list) => list.push(k),
            None => groups.push(vec![k]),
        }
    }
    groups
}

impl ClosureRun<'_> {
    fn closure_bay(&self, bay: &Bay) -> Result<ClosureBay, Error> {
        let c = self.choice;
        Ok(ClosureBay {
            coverage: bay.width,
            seam_width_at_foot: c.seam_width_at_foot.station(bay.seam_ends(), 2)?,
            seam_height: (self.web + c.compressed_tape).length()?,
            compressed_tape: c.compressed_tape,
            meeting: bay.meeting,
            clearance: c.clearance,
            tab: c.tab,
            lower_flange: c.lower_flange,
            top_flange: c.top_flange,
            top_lap: c.top_lap,
            fasteners: ClosureFasteners { from_tab: c.from_tab, engineered: self.spacing },
        })
    }
}

/// Keeps a caution unless one of its kind and words is there already.
pub(super) fn keep_once(cautions: &mut Vec<Caution>, caution: Caution) {
    if !cautions.contains(&caution) {
        cautions.push(caution);
    }
}

impl Calculation for ClosureRun<'_> {
    type Out = ClosureList;

    fn title(&self) -> String {
        "closures for the bays of a line".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<ClosureList, Error> {
        self.web.positive("web")?;
        let mut out = ClosureList { groups: Vec::new(), pieces: 0, screws: 0, without: Vec::new(), cautions: Vec::new() };
        for bays in alike(&self.bays.bays) {
            let Some(bay) = bays.first().and_then(|k| self.bays.bays.get(*k)) else { continue };
            let closure = self.closure_bay(bay)?;
            let piece = match r.part(|| format!("{} for {} bay(s) of {}", closure.title(), bays.len(), bay.width), |r| closure.run(r)) {
                Ok(piece) => piece,
                Err(e) if e.kind() == ErrorKind::Impossible => {
                    let stretch = Stretch { from: bay.from, to: bay.to };
                    out.cautions.push(
                        Caution::new(BAY_TOO_SMALL, format!("bays[{}]", bays.first().copied().unwrap_or_default()), Source::geometry())
                            .arg("count", bays.len())
                            .arg("width", bay.width)
                            .arg("from", stretch.from)
                            .arg("to", stretch.to)
                            .arg("reason", e.message()),
                    );
                    out.without.extend(bays);
                    continue;
                }
                Err(e) => return Err(e.under("closure")),
            };
            for caution in &piece.cautions {
                keep_once(&mut out.cautions, caution.clone());
            }
            let (count, screws_each) = (bays.len(), piece.fasteners.count());
            out.pieces += count;
            out.screws += count * screws_each;
            out.groups.push(ClosureGroup { bay: closure, hand: bay.hand, left: bay.left, right: bay.right, piece, count, screws_each, bays });
        }
        out.without.sort_unstable();
        r.step(|| {
            Step::new("closure screws")
                .formula("for each kind of piece, pieces x screws of one")
                .with("kinds", out.groups.len())
                .with("pieces", out.pieces)
                .gives(out.screws)
                .source(Source::geometry())
        });
        Ok(out)
    }
}
