//! A laid plane, indexed by the edges of its outline.

use super::bay::PanelEdge;
use crate::error::{Error, ErrorKind};
use crate::layout::{EndPart, LaidPanel, LaidPlane, Layout};
use crate::roof::{Edge, Point, Side as RoofSide};
use crate::units::Length;
use core::ops::Range;

/// Boundaries nearer to each other than this are one: noise of geometry, far under any tape.
pub(super) const NOISE: Length = Length::micrometres(1);

/// Whether two places differ by no more than noise.
pub(super) fn same_place(a: Length, b: Length) -> bool {
    (i128::from(a.pm()) - i128::from(b.pm())).abs() <= i128::from(NOISE.pm())
}

/// A part of an edge that ends a panel.
#[derive(Debug, Clone, Copy)]
pub(super) struct PartAt<'a> {
    pub(super) panel: usize,
    pub(super) end: PanelEdge,
    pub(super) part: &'a EndPart,
}

/// A panel that passes an edge, from a point of the edge to another on its right.
pub(super) type Passing = (usize, (Point, Point));

/// The panels of one strip.
#[derive(Debug, Clone)]
struct StripAt {
    left: Length,
    right: Length,
    panels: Range<usize>,
}

/// A plane with its panels laid, indexed once so that every line round it finds its own panels without a search.
///
/// ```
/// use seamwright::assembly::PlanePanels;
/// use seamwright::layout::{EdgeUse, Layout, Start};
/// use seamwright::panel::{Panel, PanelEnd, Seam};
/// use seamwright::record::Calculation;
/// use seamwright::roof::{Outline, Point};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) })?;
/// let outline = Outline::new(vec![p(0, 0), p(40, 0), p(40, 20), p(0, 20)], vec![])?;
/// let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let laid = layout.compute()?;
/// let plane = PlanePanels::new("south", &layout, &laid)?;
/// assert_eq!(plane.name(), "south");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct PlanePanels<'a> {
    name: &'a str,
    layout: &'a Layout,
    laid: &'a LaidPlane,
    edges: Vec<Edge>,
    /// Number of the first edge of each ring.
    rings: Vec<usize>,
    /// The parts on each edge, from the left.
    parts: Vec<Vec<PartAt<'a>>>,
    strips: Vec<StripAt>,
}

impl<'a> PlanePanels<'a> {
    /// The panels of this plane. The layout's outline must be the plane's own, so that edges have the same numbers.
    ///
    /// # Errors
    /// [`ErrorKind::Conflict`] where the laid plane speaks of edges that the outline has not, or the layout has not as many edge uses as the outline edges.
    pub fn new(name: &'a str, layout: &'a Layout, laid: &'a LaidPlane) -> Result<PlanePanels<'a>, Error> {
        let mut edges: Vec<Edge> = layout.outline.edges().collect();
        if layout.edges.len() != edges.len() {
            return Err(Error::new(ErrorKind::Conflict, "not as many edge uses as the outline has edges")
                .at("layout.edges")
                .value_of(layout.edges.len())
                .accepts(format!("{}, in the order of the outline's edges", edges.len())));
        }
        let mut rings = Vec::new();
        for (k, e) in edges.iter().enumerate() {
            if e.ring == rings.len() {
                rings.push(k);
            }
        }
        edges.extend(layout.break_edges());
        let mut parts: Vec<Vec<PartAt<'a>>> = vec![Vec::new(); edges.len()];
        let mut strips: Vec<StripAt> = Vec::new();
        let mut strip = None;
        for (panel, p) in laid.panels.iter().enumerate() {
            for (end, list) in [(PanelEdge::Lower, &p.lower), (PanelEdge::Upper, &p.upper)] {
                for part in list {
                    let lies = edges.get(part.edge).is_some_and(|e| lies_on(e, part));
                    let Some(on_edge) = parts.get_mut(part.edge).filter(|_| lies) else {
                        return Err(Error::new(ErrorKind::Conflict, "a laid panel ends at an edge that the outline has not there")
                            .at(format!("laid.panels[{panel}]"))
                            .value_of(format_args!("edge {}", part.edge))
                            .accepts(format!("the edges of the layout's outline, which has {}", edges.len()))
                            .cured_by("the plane as laid by this layout"));
                    };
                    on_edge.push(PartAt { panel, end, part });
                }
            }
            match strips.last_mut().filter(|_| strip == Some(p.strip)) {
                Some(s) => *s = StripAt { left: s.left.min(p.left), right: s.right.max(p.right), panels: s.panels.start..panel + 1 },
                None => strips.push(StripAt { left: p.left, right: p.right, panels: panel..panel + 1 }),
            }
            strip = Some(p.strip);
        }
        for list in &mut parts {
            list.sort_by_key(|p| p.part.left.x);
        }
        Ok(PlanePanels { name, layout, laid, edges, rings, parts, strips })
    }

    /// The plane's name.
    #[must_use]
    pub fn name(&self) -> &'a str {
        self.name
    }

    /// The layout.
    #[must_use]
    pub fn layout(&self) -> &'a Layout {
        self.layout
    }

    /// The panels as laid.
    #[must_use]
    pub fn laid(&self) -> &'a LaidPlane {
        self.laid
    }

    /// The number, in the order of [`Outline::edges`](crate::roof::Outline::edges), of the edge on which this side of a line lies: the place of
    /// its [`EdgeUse`](crate::layout::EdgeUse).
    ///
    /// # Errors
    /// [`ErrorKind::Conflict`] where the outline has no such edge, or one that does not run as the line does.
    pub fn edge_of(&self, side: &RoofSide) -> Result<usize, Error> {
        let unlike = |message: &'static str| {
            Error::new(ErrorKind::Conflict, message)
                .at("side")
                .value_of(format_args!("plane {}, ring {}, edge {}", side.plane, side.ring, side.edge))
                .accepts(format!("an edge of the outline of {}", self.name))
                .cured_by("lay the panels on the plane's own outline")
        };
        let line = vector(side.start, side.end);
        let first = self.rings.get(side.ring).copied().ok_or_else(|| unlike("the line lies on a ring that the layout's outline has not"))?;
        // An edge of the plane may be parted where one line ends and the next begins: the edge that holds the middle of the line is its own.
        let mut best: Option<(usize, f64)> = None;
        for (k, e) in self.edges.iter().enumerate().skip(first).take_while(|(_, e)| e.ring == side.ring) {
            let along = vector(e.from, e.to);
            let (dot, cross) = (along.0 * line.0 + along.1 * line.1, along.0 * line.1 - along.1 * line.0);
            // Within a degree: out-of-true edges that the roof took for one differ by far less.
            if dot <= 0.0 || cross.abs() > dot * 0.0175 {
                continue;
            }
            let start = vector(e.from, side.start);
            let middle = (start.0 + line.0 / 2.0, start.1 + line.1 / 2.0);
            let squared = along.0 * along.0 + along.1 * along.1;
            let share = (middle.0 * along.0 + middle.1 * along.1) / squared;
            let off = (middle.1 * along.0 - middle.0 * along.1).abs() / squared.sqrt();
            if (0.0..=1.0).contains(&share) && best.is_none_or(|(_, least)| off < least) {
                best = Some((k, off));
            }
        }
        best.map(|(k, _)| k).ok_or_else(|| unlike("the line does not run along an edge of the layout's outline"))
    }

    pub(super) fn edge(&self, number: usize) -> Option<&Edge> {
        self.edges.get(number)
    }

    /// The edges of the outline, without those of breaks.
    pub(super) fn edges(&self) -> &[Edge] {
        self.edges.get(..self.layout.edges.len()).unwrap_or_default()
    }

    /// The parts of this edge that overlap the stretch between two x, from the left.
    pub(super) fn parts(&self, edge: usize, left: Length, right: Length) -> &[PartAt<'a>] {
        let all = self.parts.get(edge).map_or(&[][..], Vec::as_slice);
        let first = all.partition_point(|p| p.part.right.x <= left);
        let end = all.partition_point(|p| p.part.left.x < right);
        all.get(first..end).unwrap_or_default()
    }

    /// The panels of the strip that holds the places just left (or just right) of this x, with their numbers.
    pub(super) fn beside(&self, x: Length, on_left: bool) -> impl Iterator<Item = (usize, &'a LaidPanel)> {
        let found = if on_left {
            self.strips.get(self.strips.partition_point(|s| s.right < x)).filter(|s| s.left < x)
        } else {
            self.strips.get(self.strips.partition_point(|s| s.right <= x)).filter(|s| s.left <= x)
        };
        let range = found.map_or(0..0, |s| s.panels.clone());
        let first = range.start;
        self.laid.panels.get(range).unwrap_or_default().iter().enumerate().map(move |(k, p)| (first + k, p))
    }

    /// The panels that pass this edge, cut around an opening or a notch, between two points of it, with the stretch of each.
    pub(super) fn passing(&self, edge: usize, ends: (Point, Point)) -> Result<Vec<Passing>, Error> {
        let run = (ends.1.x - ends.0.x).length()?.mm();
        let point = |x: Length| -> Result<Point, Error> {
            let up = (ends.1.y - ends.0.y).length()?.mm() * ((x - ends.0.x).length()?.mm() / run);
            Ok(Point::new(x, (ends.0.y + Length::from_mm(up)?).length()?))
        };
        let mut ended: Vec<usize> = self.parts(edge, ends.0.x, ends.1.x).iter().map(|p| p.panel).collect();
        ended.sort_unstable();
        let mut out = Vec::new();
        for (k, p) in self.between(ends.0.x, ends.1.x).filter(|(k, p)| p.notched && ended.binary_search(k).is_err()) {
            let (left, right) = (p.left.max(ends.0.x), p.right.min(ends.1.x));
            if right <= left {
                continue;
            }
            let middle = point((left + (right - left).length()?.station(1, 2)?).length()?)?;
            if middle.y > foot(p) && middle.y < head(p) {
                out.push((k, (point(left)?, point(right)?)));
            }
        }
        Ok(out)
    }

    /// The panels of every strip that overlaps the stretch between two x, with their numbers, from the left.
    fn between(&self, left: Length, right: Length) -> impl Iterator<Item = (usize, &'a LaidPanel)> {
        let first = self.strips.partition_point(|s| s.right <= left);
        let end = self.strips.partition_point(|s| s.left < right);
        let panels = self.strips.get(first..end).unwrap_or_default().iter().flat_map(|s| s.panels.clone());
        panels.filter_map(|k| self.laid.panels.get(k).map(|p| (k, p)))
    }

    /// The panels beside an edge along the seams, or cut by one that is not quite along them; `None` where the outline has no such edge.
    pub(super) fn beside_edge(&self, edge: usize) -> Option<Vec<usize>> {
        let e = self.edges.get(edge)?;
        if e.from.x != e.to.x {
            return Some(self.parts.get(edge)?.iter().map(|p| p.panel).collect());
        }
        let (low, high) = (e.from.y.min(e.to.y), e.from.y.max(e.to.y));
        let of = |p: &LaidPanel| foot(p).max(low) < head(p).min(high);
        Some(self.beside(e.from.x, e.to.y > e.from.y).filter(|(_, p)| of(p)).map(|(k, _)| k).collect())
    }

    pub(super) fn mark(&self, panel: usize) -> String {
        self.laid.panels.get(panel).and_then(|p| self.laid.mark_of(p)).unwrap_or_default().to_owned()
    }

    /// How a caution names a panel.
    pub(super) fn panel_name(&self, panel: usize) -> String {
        match self.laid.panels.get(panel) {
            Some(p) => format!("strip {} run {} ({})", p.strip + 1, p.run + 1, self.mark(panel)),
            None => String::new(),
        }
    }
}

/// Whether a part lies within its edge's bounds.
fn lies_on(edge: &Edge, part: &EndPart) -> bool {
    let within = |at: Length, a: Length, b: Length| (at >= a.min(b) || same_place(at, a.min(b))) && (at <= a.max(b) || same_place(at, a.max(b)));
    [part.left, part.right].iter().all(|p| within(p.x, edge.from.x, edge.to.x) && within(p.y, edge.from.y, edge.to.y))
}

/// From one point to another, in millimetres.
pub(super) fn vector(from: Point, to: Point) -> (f64, f64) {
    let mm = |a: Length, b: Length| Length::from_mm(b.mm() - a.mm()).unwrap_or_default().mm();
    match ((to.x - from.x).length(), (to.y - from.y).length()) {
        (Ok(x), Ok(y)) => (x.mm(), y.mm()),
        _ => (mm(from.x, to.x), mm(from.y, to.y)),
    }
}

/// The clear length of a panel along its left or right side, between the lines that end it there.
pub(super) fn clear_at(panel: &LaidPanel, left: bool) -> Result<Length, Error> {
    let ends = if left {
        panel.lower.first().zip(panel.upper.first()).map(|(l, u)| (l.left.y, u.left.y))
    } else {
        panel.lower.last().zip(panel.upper.last()).map(|(l, u)| (l.right.y, u.right.y))
    };
    ends.map_or(Ok(Length::ZERO), |(low, high)| (high - low).length())
}

/// The lowest place of a panel's lower end.
pub(super) fn foot(panel: &LaidPanel) -> Length {
    panel.lower.iter().flat_map(|e| [e.left.y, e.right.y]).min().unwrap_or_default()
}

/// The highest place of its upper end.
pub(super) fn head(panel: &LaidPanel) -> Length {
    panel.upper.iter().flat_map(|e| [e.left.y, e.right.y]).max().unwrap_or_default()
}
