//! Where panels are broken in two across a plane: what lies below it ends there, and what lies above it begins.

use super::clip::Segment;
use super::grid::Grid;
use super::input::{EdgeUse, Layout};
use crate::error::{Error, ErrorKind, Faults};
use crate::panel::{Hold, PanelEnd};
use crate::roof::{Edge, Point};
use crate::units::Length;

/// A level stretch of a plane across which every panel that lies on it is broken in two, over the panel's whole width: as where the pan of a valley runs out between them.
///
/// Its two edges are numbered after those of the outline: of the first break first what ends the pieces below it, then what ends those above it, and so on.
///
/// ```
/// use seamwright::layout::{EdgeUse, Layout, PanelBreak, Start};
/// use seamwright::panel::{Panel, PanelEnd, Seam};
/// use seamwright::record::Calculation;
/// use seamwright::roof::{Outline, Point};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// let outline = Outline::new(vec![p(0, 0), p(48, 0), p(48, 100), p(0, 100)], vec![])?;
/// let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// // From 20 in to 24 in across, which one panel lies on: its upper piece laps the lower by 8 in.
/// let parted = PanelBreak {
///     at: Length::inches(40), from: Length::inches(20), to: Length::inches(24),
///     below: PanelEnd::hold_back(Length::ZERO), above: PanelEnd::overhang(Length::inches(8)),
/// };
/// let laid = layout.with_breaks(vec![parted]).compute()?;
/// let lengths: Vec<_> = laid.panels.iter().map(|p| p.finished).collect();
/// assert_eq!(lengths, [100, 40, 68, 100].map(Length::inches));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PanelBreak {
    /// How far up the plane, as a y of the outline.
    pub at: Length,
    /// Its left end, as an x of the outline.
    pub from: Length,
    /// Its right end.
    pub to: Length,
    /// How the pieces below it end there.
    pub below: PanelEnd,
    /// How those above it end there.
    pub above: PanelEnd,
}

/// Lines nearer than this to a break are met by it and not crossed, in millimetres: as the sweep tells heights apart.
const CLOSE: f64 = 1e-3;

impl PanelBreak {
    fn check(&self, path: &str, faults: &mut Faults) {
        if self.from >= self.to {
            let fault = Error::new(ErrorKind::OutOfRange, "a break has no length").at(format!("{path}.to")).value_of(self.to);
            faults.add(fault.accepts(format!("more than {}", self.from)));
        }
        for (name, end) in [("below", &self.below), ("above", &self.above)] {
            let path = format!("{path}.{name}");
            faults.keep(end.check().map_err(|e| e.under(&path)));
            if end.grows.is_some() {
                let fault = Error::new(ErrorKind::Geometry, "a hold-back that grows down its line lies at a level edge").at(format!("{path}.grows"));
                faults.add(fault.accepts("none: a break is level"));
            }
        }
    }

    /// The stretches of it that lie in the plane, each to the sides of the panels that it breaks: in millimetres from the middle.
    fn stretches(&self, edges: &[Segment], grid: &Grid, y: f64) -> Vec<(f64, f64)> {
        let (from, to) = (grid.mm(self.from), grid.mm(self.to));
        let (mut left, mut right) = (f64::INFINITY, f64::NEG_INFINITY);
        for strip in grid.strips().filter(|s| s.left < to && from < s.right) {
            (left, right) = (left.min(strip.left), right.max(strip.right));
        }
        let crossing = |s: &Segment| {
            let x = s.x0 + (y - s.y0) / s.slope();
            (x > s.x0 && x < s.x1).then_some(x)
        };
        let mut xs: Vec<f64> = edges.iter().flat_map(|s| [Some(s.x0), Some(s.x1), crossing(s)]).flatten().filter(|x| *x > left && *x < right).collect();
        xs.extend([left, right]);
        xs.sort_by(f64::total_cmp);
        let inside = |x: f64| {
            let heights = || edges.iter().filter(|s| s.x0 < x && x < s.x1).map(|s| s.y(x));
            heights().all(|h| (h - y).abs() > CLOSE) && heights().filter(|h| *h < y).count() % 2 == 1
        };
        let mut out: Vec<(f64, f64)> = Vec::new();
        for (a, b) in xs.iter().zip(xs.iter().skip(1)).filter(|(a, b)| a < b && inside((*a + *b) * 0.5)) {
            match out.last_mut() {
                Some(last) if last.1 >= *a => last.1 = *b,
                _ => out.push((*a, *b)),
            }
        }
        out.retain(|(a, b)| *a < to && from < *b);
        out
    }
}

/// A stretch across which panels are broken: the number of its break, its height from the foot and its ends from the middle, in millimetres.
type Stretch = (usize, f64, (f64, f64));

/// What of a stretch no other covers.
fn without(stretch: (f64, f64), taken: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut out = vec![stretch];
    for (a, b) in taken {
        out = out.into_iter().flat_map(|(x0, x1)| [(x0, x1.min(*a)), (x0.max(*b), x1)]).filter(|(x0, x1)| x0 < x1).collect();
    }
    out
}

impl Layout {
    /// The same layout with its panels broken across these stretches.
    #[must_use]
    pub fn with_breaks(self, breaks: Vec<PanelBreak>) -> Layout {
        Layout { breaks, ..self }
    }

    /// How panels end at an edge by its number, those of the breaks after those of the outline; `None` along a side, and where there is no such edge.
    ///
    /// ```
    /// # use seamwright::layout::{EdgeUse, Layout, Start};
    /// # use seamwright::panel::{Panel, PanelEnd, Seam};
    /// # use seamwright::roof::{Outline, Point};
    /// # use seamwright::units::Length;
    /// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
    /// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
    /// let outline = Outline::new(vec![p(0, 0), p(48, 0), p(48, 100), p(0, 100)], vec![])?;
    /// let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
    /// assert!(layout.end_at(3).is_some() && layout.end_at(4).is_none());
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub fn end_at(&self, edge: usize) -> Option<&PanelEnd> {
        let Some(past) = edge.checked_sub(self.edges.len()) else {
            return match self.edges.get(edge)? {
                EdgeUse::End(end) => Some(end),
                EdgeUse::Side => None,
            };
        };
        self.breaks.get(past / 2).map(|b| if past % 2 == 0 { &b.below } else { &b.above })
    }

    pub(super) fn check_breaks(&self, faults: &mut Faults) {
        for (k, b) in self.breaks.iter().enumerate() {
            b.check(&format!("breaks[{k}]"), faults);
        }
    }

    /// The two edges of every break, in the order of their numbers, from the one bound of the outline to the other: the plane lies on the left of each.
    pub(crate) fn break_edges(&self) -> impl Iterator<Item = Edge> + '_ {
        let (bounds, ring) = (self.outline.bounds(), usize::MAX);
        self.breaks.iter().enumerate().flat_map(move |(k, b)| {
            let (left, right) = (Point::new(bounds.low.x, b.at), Point::new(bounds.high.x, b.at));
            [(right, left, 2 * k), (left, right, 2 * k + 1)].map(|(from, to, index)| Edge { ring, index, given: index, from, to })
        })
    }

    /// Every stretch across which panels are broken.
    fn broken(&self, outline: &[Segment], grid: &Grid) -> Result<Vec<Stretch>, Error> {
        let foot = self.outline.bounds().low.y;
        let mut out = Vec::<Stretch>::new();
        for (k, b) in self.breaks.iter().enumerate() {
            let y = (b.at - foot).length()?.mm();
            let found = b.stretches(outline, grid, y);
            if found.is_empty() {
                return Err(Error::new(ErrorKind::OutOfRange, "a break lies beside the plane")
                    .at(format!("breaks[{k}]"))
                    .value_of(format_args!("{} up, from {} to {}", b.at, b.from, b.to))
                    .accepts("a stretch within the outline"));
            }
            // What another break parts at the same height is parted once.
            let level: Vec<(f64, f64)> = out.iter().filter(|(_, other, _)| (other - y).abs() <= CLOSE).map(|(.., stretch)| *stretch).collect();
            out.extend(found.into_iter().flat_map(|stretch| without(stretch, &level)).map(|stretch| (k, y, stretch)));
        }
        Ok(out)
    }

    /// The breaks as the sweep takes them, after the outline's own. Of two edges that lie on each other the upper comes first: what is put in later goes below it.
    pub(super) fn break_segments(&self, outline: &mut Vec<Segment>, grid: &Grid) -> Result<(), Error> {
        for (k, y, (x0, x1)) in self.broken(outline, grid)? {
            let Some(b) = self.breaks.get(k) else { continue };
            let number = self.edges.len() + 2 * k;
            for (edge, end, over) in [(number + 1, &b.above, true), (number, &b.below, false)] {
                let beyond = end.allowance()?.mm();
                if let Some(mut segment) = Segment::between(edge, (x0, y), (x1, y)) {
                    (segment.allowance, segment.trim, segment.pins, segment.over) = ([beyond; 2], end.field_trim.mm(), end.hold == Hold::Pins, over);
                    outline.push(segment);
                }
            }
        }
        Ok(())
    }

    /// Where panels are broken: each break by its number, from the left to the right end of what it parts.
    pub(crate) fn break_stretches(&self) -> Result<Vec<(usize, Point, Point)>, Error> {
        if self.breaks.is_empty() {
            return Ok(Vec::new());
        }
        let (grid, foot) = (Grid::new(&self.outline.bounds(), self.panel.coverage, self.start)?, self.outline.bounds().low.y);
        let edges = self.outline.edges().enumerate().filter_map(|(k, e)| Segment::of(k, &e, &grid, foot).transpose()).collect::<Result<Vec<_>, _>>()?;
        let stretches = self.broken(&edges, &grid)?;
        let at = |k: usize| self.breaks.get(k).map_or(foot, |b| b.at);
        stretches.into_iter().map(|(k, _, (x0, x1))| Ok((k, Point::new(grid.x(x0)?, at(k)), Point::new(grid.x(x1)?, at(k))))).collect()
    }

    /// The break that a panel holds together, where it lies beside it within the panel's width.
    pub(super) fn unbroken(&self, edges: impl Iterator<Item = usize>) -> Option<Error> {
        let k = edges.filter_map(|e| e.checked_sub(self.edges.len())).min()? / 2;
        let fault =
            Error::new(ErrorKind::Impossible, "a break does not go through a panel: what lies beside it holds the panel together").at(format!("breaks[{k}]"));
        Some(
            fault
                .accepts("a break to both sides of every panel that it lies on")
                .cured_by("another start or datum of the seams, so that no opening lies beside the break in one panel with it"),
        )
    }
}
