//! The list of a plane.

use super::super::cautions;
use super::super::extent::Extent;
use super::super::input::Layout;
use super::super::laid::{Coil, LaidPanel, LaidPlane, mark};
use super::super::placing::LayDirection;
use super::bundles::bundled;
use super::choices::{EndLaps, ListChoices, MarkOrder};
use super::grouping::raised;
use super::laps::{Cut, LapLines, Short};
use super::listed::{CutEdge, ListGroup, ListedPiece, ListedPlane};
use super::pairs::pairs;
use super::waste::waste;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{AreaUnit, Length, Mass, MassUnit, Sum, SurfaceMassUnit};
use core::cmp::Reverse;
use std::collections::BTreeMap;

/// The panels of a plane as a list for shop and crew.
///
/// Pieces stand in the order of laying. A mark means one order length, one width and one cut edge.
///
/// ```
/// # use seamwright::layout::{EdgeUse, LayDirection, Layout, ListChoices, PanelList, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// let outline = Outline::new(vec![p(0, 0), p(40, 0), p(40, 100), p(0, 100)], vec![])?;
/// let layout = Layout::new(outline, panel, Start::CentrePanel, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let list = PanelList { layout, choices: ListChoices::laid(LayDirection::LeftToRight) }.compute()?;
/// // The rips at both sides are no longer one mark: each has lost another leg.
/// assert_eq!(list.groups.iter().map(|g| (g.mark.as_str(), g.count)).collect::<Vec<_>>(), [("A", 1), ("B", 1), ("C", 1)]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct PanelList {
    /// The layout.
    pub layout: Layout,
    /// How the list is made.
    pub choices: ListChoices,
}

/// What makes pieces alike, with the cut edge as it lies to the direction of laying: so that a mirrored plane has the same marks.
type Key = (Reverse<Length>, Reverse<Length>, u8);

fn edge_rank(cut: CutEdge, direction: LayDirection) -> u8 {
    match (cut, direction) {
        (CutEdge::None, _) => 0,
        (CutEdge::Left, LayDirection::LeftToRight) | (CutEdge::Right, LayDirection::RightToLeft) => 1,
        (CutEdge::Right, LayDirection::LeftToRight) | (CutEdge::Left, LayDirection::RightToLeft) => 2,
        (CutEdge::Both, _) => 3,
    }
}

fn cut_of(panel: &LaidPanel) -> CutEdge {
    CutEdge::of(panel.left_on_seam, panel.right_on_seam)
}

impl PanelList {
    /// The list of a layout whose panels are laid; `choices` fits the layout.
    pub(crate) fn of<R: Recorder>(layout: &Layout, laid: &LaidPlane, choices: &ListChoices, r: &mut R) -> Result<ListedPlane, Error> {
        choices.check(layout.limit.as_ref())?;
        PanelList::with_extents(layout, laid, &layout.extents()?, choices, r)
    }

    fn with_extents<R: Recorder>(layout: &Layout, laid: &LaidPlane, extents: &[Extent], choices: &ListChoices, r: &mut R) -> Result<ListedPlane, Error> {
        let mut cautions = Vec::new();
        let (mut pieces, panels) = pieces(layout, laid, extents, choices, &mut cautions, r)?;
        raise(&mut pieces, &panels, choices);
        let groups = group(&mut pieces, &panels, choices)?;
        let pairs = match &choices.pairs {
            Some(choice) => pairs(layout, &laid.panels, &pieces, choice, choices.greatest(layout.limit.as_ref()))?,
            None => Vec::new(),
        };
        for (k, pair) in pairs.iter().enumerate() {
            r.step(|| {
                let order = |i: usize| pieces.get(i).map_or(Length::ZERO, |p| p.order);
                let step = Step::new(format!("pair {}", k + 1)).formula("both order lengths - drop over the coverage + kerf, down to the step");
                step.with("below", order(pair.below)).with("above", order(pair.above)).with("saved", pair.saved).gives(pair.blank).source(Source::geometry())
            });
            for i in [pair.below, pair.above] {
                if let Some(piece) = pieces.get_mut(i) {
                    piece.pair = Some(k);
                }
            }
        }
        let width = laid.coil.width;
        let bundles = match &choices.bundles {
            Some(limits) => bundled(&mut pieces, limits, width, layout.sheet, &mut cautions)?,
            None => Vec::new(),
        };
        let length = (groups.iter().map(|g| g.total).sum::<Sum>() - pairs.iter().map(|p| p.saved).sum::<Sum>()).length().map_err(|e| e.under("coil.length"))?;
        let area = length.times(width);
        let mass = layout.sheet.map(|m| Mass::of(area.get(AreaUnit::SquareMetre) * m.get(SurfaceMassUnit::KilogramPerSquareMetre), MassUnit::Kilogram));
        let waste = waste(layout, width, &laid.panels, &pieces, &pairs)?;
        r.step(|| {
            Step::new("what covers nothing")
                .formula("coil - covered = seams + rips + skew cuts + ends")
                .with("coil", waste.coil)
                .with("covered", waste.covered)
                .with("seams", waste.seams)
                .with("rips", waste.rips)
                .with("skew cuts", waste.skew_cuts)
                .gives(format_args!("ends {}", waste.ends))
        });
        Ok(ListedPlane { direction: choices.direction, pieces, groups, pairs, bundles, coil: Coil { width, length, area, mass }, waste, cautions })
    }
}

impl ListedPlane {
    /// Brings a laid plane to its list: groups, marks, order lengths, pieces and coil. A panel in pieces takes the order length and the group of its lowest.
    pub(crate) fn onto(&self, laid: &mut LaidPlane) {
        laid.groups = self.groups.iter().map(ListGroup::plain).collect();
        laid.coil = self.coil;
        for piece in &self.pieces {
            if let Some(panel) = laid.panels.get_mut(piece.panel) {
                if piece.piece == 1 {
                    (panel.order, panel.group) = (piece.order, piece.group);
                }
                panel.pieces = piece.piece;
            }
        }
    }
}

/// The panels in the order of laying.
fn in_order(laid: &LaidPlane, extents: &[Extent], direction: LayDirection) -> Vec<usize> {
    let mut order: Vec<usize> = (0..laid.panels.len()).collect();
    order.sort_by_key(|&i| {
        let foot = extents.get(i).map(|e| e.foot);
        laid.panels.get(i).map(|p| {
            let (strip, side) = (i128::try_from(p.strip).unwrap_or(i128::MAX), i128::from(p.left.pm()));
            match direction {
                LayDirection::LeftToRight => (strip, foot, side),
                LayDirection::RightToLeft => (-strip, foot, -i128::from(p.right.pm())),
            }
        })
    });
    order
}

/// The pieces in the order of laying, not yet grouped, with each its panel.
fn pieces<'a, R: Recorder>(
    layout: &Layout,
    laid: &'a LaidPlane,
    extents: &[Extent],
    choices: &ListChoices,
    cautions: &mut Vec<Caution>,
    r: &mut R,
) -> Result<(Vec<ListedPiece>, Vec<&'a LaidPanel>), Error> {
    if extents.len() != laid.panels.len() {
        return Err(Error::new(ErrorKind::Internal, "the list is not of the panels that were laid").value_of(extents.len()));
    }
    let with_extent: Vec<(LaidPanel, Extent)> = match &choices.laps {
        Some(_) => laid.panels.iter().cloned().zip(extents.iter().copied()).collect(),
        None => Vec::new(),
    };
    let step = layout.rounding.both_finished.increment();
    let lines = choices.laps.as_ref().map(|laps| LapLines::new(laps, step, &with_extent, r)).transpose().map_err(|e| e.under("laps"))?.flatten();
    // Counted from the first strip that has a panel, from whichever side: a strip without one is none to the crew.
    let strips = || laid.panels.iter().map(|p| p.strip);
    let (first, last) = (strips().min().unwrap_or(0), strips().max().unwrap_or(0));
    let count = laid.panels.len();
    let (mut out, mut of, mut cuts) = (Vec::with_capacity(count), Vec::with_capacity(count), Vec::new());
    let (mut short, mut lapped) = (Short::default(), 0_usize);
    let mut faults = Faults::default();
    for (number, panel) in in_order(laid, extents, choices.direction).into_iter().enumerate() {
        let (Some(p), Some(&extent)) = (laid.panels.get(panel), extents.get(panel)) else { continue };
        let nth = if choices.direction == LayDirection::LeftToRight { p.strip - first } else { last - p.strip };
        cuts.clear();
        let cut = match &lines {
            Some(lines) => lines.cut(p, extent, nth % 2 == 1, &mut short, &mut cuts).map_err(|e| e.under(&format!("strips[{}].runs[{}]", p.strip, p.run))),
            None => equal_cuts(layout, p, extent, &mut cuts),
        };
        if faults.keep(cut).is_none() {
            continue;
        }
        lapped += usize::from(lines.is_some() && cuts.len() > 1);
        for (k, cut) in cuts.iter().enumerate() {
            let piece = u32::try_from(k + 1).unwrap_or(u32::MAX);
            out.push(ListedPiece { number: number + 1, panel, piece, low: cut.low, own: cut.own, order: cut.own, group: 0, pair: None, bundle: None });
            of.push(p);
        }
    }
    faults.check()?;
    short.caution(choices.laps.as_ref().map_or(Length::ZERO, |l| l.least_piece), cautions);
    if let (Some(laps), true) = (&choices.laps, lapped > 0) {
        let least = laps.least();
        let caution = Caution::new(cautions::END_LAPPED, "pieces", Source::user()).arg("count", lapped).arg("lap", laps.lap);
        cautions.push(caution.arg("limit", least.map_or(Length::ZERO, |l| l.length)).arg("governs", least.map_or("", |l| l.governs.name())));
    }
    Ok((out, of))
}

/// The equal pieces of the layout's own limit.
fn equal_cuts(layout: &Layout, panel: &LaidPanel, extent: Extent, out: &mut Vec<Cut>) -> Result<(), Error> {
    let lap = layout.limit.and_then(|l| l.end_lap).unwrap_or_default();
    let mut low = extent.foot;
    for _ in 0..panel.pieces {
        out.push(Cut { low, own: panel.order });
        low = (low + panel.order - lap).length()?;
    }
    Ok(())
}

/// Raises lengths that are near enough to the longest of them, among pieces of one width and cut edge.
fn raise(pieces: &mut [ListedPiece], panels: &[&LaidPanel], choices: &ListChoices) {
    let Some(tolerance) = choices.tolerance else { return };
    let mut classes: BTreeMap<(Length, CutEdge), BTreeMap<Length, u64>> = BTreeMap::new();
    for (piece, panel) in pieces.iter().zip(panels) {
        *classes.entry((panel.width, cut_of(panel))).or_default().entry(piece.own).or_default() += 1;
    }
    let raised: BTreeMap<(Length, CutEdge), BTreeMap<Length, Length>> = classes
        .into_iter()
        .map(|(class, lengths)| {
            let lengths: Vec<(Length, u64)> = lengths.into_iter().rev().collect();
            let to = raised(&lengths, tolerance);
            (class, lengths.into_iter().map(|(l, _)| l).zip(to).collect())
        })
        .collect();
    for (piece, panel) in pieces.iter_mut().zip(panels) {
        if let Some(to) = raised.get(&(panel.width, cut_of(panel))).and_then(|of| of.get(&piece.own)) {
            piece.order = *to;
        }
    }
}

/// Groups the pieces and gives the groups their marks.
fn group(pieces: &mut [ListedPiece], panels: &[&LaidPanel], choices: &ListChoices) -> Result<Vec<ListGroup>, Error> {
    let key = |piece: &ListedPiece, panel: &LaidPanel| -> Key { (Reverse(piece.order), Reverse(panel.width), edge_rank(cut_of(panel), choices.direction)) };
    // Where each kind first comes in the order of laying, and how many there are.
    let mut kinds: BTreeMap<Key, (usize, u64, CutEdge)> = BTreeMap::new();
    for (i, (piece, panel)) in pieces.iter().zip(panels).enumerate() {
        kinds.entry(key(piece, panel)).or_insert((i, 0, cut_of(panel))).1 += 1;
    }
    let mut order: Vec<(Key, (usize, u64, CutEdge))> = kinds.into_iter().collect();
    if choices.marks == MarkOrder::AsLaid {
        order.sort_by_key(|(_, (first, ..))| *first);
    }
    let numbers: BTreeMap<Key, usize> = order.iter().enumerate().map(|(n, (k, _))| (*k, n)).collect();
    for (piece, panel) in pieces.iter_mut().zip(panels) {
        piece.group = numbers.get(&key(piece, panel)).copied().unwrap_or_default();
    }
    order
        .into_iter()
        .enumerate()
        .map(|(n, ((Reverse(order), Reverse(width), _), (_, count, cut)))| {
            let total = i128::from(order.pm()) * i128::from(count);
            let total = i64::try_from(total).map(Length::from_pm);
            let total = total.map_err(|_| {
                Error::new(ErrorKind::Overflow, "a total of order lengths is too large").at(format!("groups[{n}]")).accepts("at most 9 223 372 m")
            })?;
            Ok(ListGroup { mark: mark(n), order, width, cut, count, total })
        })
        .collect()
}

impl Calculation for PanelList {
    type Out = ListedPlane;

    fn title(&self) -> String {
        "the list of a plane's panels".to_owned()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<ListedPlane, Error> {
        self.layout.check().map_err(|e| e.under("layout"))?;
        self.choices.check(self.layout.limit.as_ref()).map_err(|e| e.under("choices"))?;
        let (laid, extents) = r.part(|| self.layout.title(), |r| self.layout.lay(r)).map_err(|e| e.under("layout"))?;
        let mut out = PanelList::with_extents(&self.layout, &laid, &extents, &self.choices, r).map_err(|e| e.under("choices"))?;
        out.cautions.extend(laid.cautions);
        Ok(out)
    }
}

impl EndLaps {
    /// Whether this piece could be formed, shipped and lifted.
    ///
    /// ```
    /// use seamwright::layout::{EndLaps, Governs, GreatestLength, LapArrangement};
    /// use seamwright::units::Length;
    /// let limits = vec![GreatestLength { length: Length::feet(30), governs: Governs::Lifting }];
    /// let laps = EndLaps { limits, lap: Length::inches(6), arrangement: LapArrangement::InLine, least_piece: Length::feet(4) };
    /// assert!(laps.allows(Length::feet(30)) && !laps.allows(Length::feet(31)));
    /// ```
    #[must_use]
    pub fn allows(&self, piece: Length) -> bool {
        self.limits.iter().all(|l| piece <= l.length)
    }
}
