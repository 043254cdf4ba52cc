//! The running marks of every seam.

use super::super::grid::Grid;
use super::super::input::Layout;
use super::super::laid::{EndPart, LaidPlane};
use super::super::placing::PlaneSide;
use super::creep::{Creep, CreepCheck};
use super::creep_checks::Way;
use crate::error::{Error, Faults};
use crate::num;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::roof::{Edge, Point};
use crate::units::{Length, ShopRounding, TapeReading};

/// What marks run from.
///
/// ```
/// use seamwright::layout::MarkFrom;
/// assert_ne!(MarkFrom::Left, MarkFrom::Right);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum MarkFrom {
    /// The plane's leftmost point; marks grow to the right.
    Left,
    /// The plane's rightmost point; marks grow to the left.
    Right,
    /// A line at this x, such as a rafter or the datum that planes share; marks grow to the right and are less than zero at the left of it.
    Datum(Length),
}

/// The seams of a layout, to be marked on the roof.
///
/// ```
/// # use seamwright::layout::{EdgeUse, Layout, MarkFrom, SeamMarks, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::{Length, Rounding, ShopRounding};
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// let panel = Panel::new(Length::parse("16.03 in")?, Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// let outline = Outline::new(vec![p(0, 0), p(400, 0), p(400, 100), p(0, 100)], vec![])?;
/// let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let tape = ShopRounding::new(Length::parse("1/16\"")?, Rounding::HalfAway)?;
/// let marked = SeamMarks { layout, from: MarkFrom::Left, tape, creep: None }.compute()?;
/// // Each mark is rounded by itself: the twentieth seam stands at 320.6 in and is read as 320 5/8 in.
/// assert_eq!(marked.seams[20].across.read, Length::parse("320 5/8\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SeamMarks {
    /// The layout.
    pub layout: Layout,
    /// What marks run from.
    pub from: MarkFrom,
    /// What the crew's tape is read to.
    pub tape: ShopRounding,
    /// How panels creep; none for marks alone.
    #[cfg_attr(feature = "serde", serde(default))]
    pub creep: Option<Creep>,
}

/// Where a seam meets the edge that its panels end at.
///
/// ```
/// use seamwright::layout::EndMark;
/// use seamwright::roof::Point;
/// use seamwright::units::{Length, TapeReading};
/// let along = TapeReading { exact: Length::inches(32), read: Length::inches(32) };
/// let mark = EndMark { edge: 0, at: Point::new(Length::inches(32), Length::ZERO), along };
/// assert_eq!(mark.along.read, mark.at.x);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EndMark {
    /// The edge, in the order of [`Outline::edges`](crate::roof::Outline::edges).
    pub edge: usize,
    /// The point, on the junction line.
    pub at: Point,
    /// Along the edge, from the end of it that is the nearer to where marks run from; on a skew edge that is more than across the slope.
    pub along: TapeReading,
}

/// The marks of one seam.
///
/// ```
/// use seamwright::layout::SeamMark;
/// use seamwright::units::{Length, TapeReading};
/// let across = TapeReading { exact: Length::inches(16), read: Length::inches(16) };
/// let seam = SeamMark { seam: 1, x: Length::inches(16), across, foot: None, head: None };
/// assert_eq!(seam.seam, 1);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SeamMark {
    /// Its number in [`LaidPlane::seams`].
    pub seam: usize,
    /// Its x.
    pub x: Length,
    /// From the datum, across the slope: the mark at eave and ridge wherever they are square to the seams.
    pub across: TapeReading,
    /// Where it meets its lowest edge; none where no panel lies beside it.
    pub foot: Option<EndMark>,
    /// Where it meets its highest edge.
    pub head: Option<EndMark>,
}

/// Every seam's marks.
///
/// ```
/// # use seamwright::layout::{EdgeUse, Layout, MarkFrom, SeamMarks, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::{Length, Rounding, ShopRounding};
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// // The ridge climbs by 3 in 4.
/// let outline = Outline::new(vec![p(0, 0), p(64, 0), p(64, 148), p(0, 100)], vec![])?;
/// let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let tape = ShopRounding::new(Length::parse("1/16\"")?, Rounding::HalfAway)?;
/// let marked = SeamMarks { layout, from: MarkFrom::Left, tape, creep: None }.compute()?;
/// let seam = &marked.seams[2];
/// assert_eq!((seam.across.read, seam.head.map(|h| h.along.read)), (Length::inches(32), Some(Length::inches(40))));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MarkedSeams {
    /// The x that marks run from.
    pub from: Length,
    /// The marks, from the left.
    pub seams: Vec<SeamMark>,
    /// Where the crew checks for creep, from the datum outward, to the right and then to the left.
    pub checks: Vec<CreepCheck>,
    /// What to know before the first panel is laid.
    pub cautions: Vec<Caution>,
}

/// The ends of the panels beside a seam.
#[derive(Default)]
struct Beside {
    foot: Option<(usize, Point)>,
    head: Option<(usize, Point)>,
}

impl Beside {
    fn meet(&mut self, low: Option<(usize, Point)>, high: Option<(usize, Point)>) {
        if let Some(low) = low.filter(|l| self.foot.is_none_or(|f| l.1.y < f.1.y)) {
            self.foot = Some(low);
        }
        if let Some(high) = high.filter(|h| self.head.is_none_or(|f| h.1.y > f.1.y)) {
            self.head = Some(high);
        }
    }
}

/// What lies beside each seam.
fn beside(laid: &LaidPlane) -> Vec<Beside> {
    let left = |parts: &[EndPart]| parts.first().map(|p| (p.edge, p.left));
    let right = |parts: &[EndPart]| parts.last().map(|p| (p.edge, p.right));
    let mut out: Vec<Beside> = laid.seams.iter().map(|_| Beside::default()).collect();
    let mut meet = |x: Length, low, high| {
        if let Some(seam) = laid.seams.binary_search(&x).ok().and_then(|seam| out.get_mut(seam)) {
            seam.meet(low, high);
        }
    };
    for p in &laid.panels {
        meet(p.left, left(&p.lower), left(&p.upper));
        meet(p.right, right(&p.lower), right(&p.upper));
    }
    out
}

impl SeamMarks {
    /// The x that marks run from, and whether they grow to the left.
    fn datum(&self) -> (Length, bool) {
        let bounds = self.layout.outline.bounds();
        match self.from {
            MarkFrom::Left => (bounds.low.x, false),
            MarkFrom::Right => (bounds.high.x, true),
            MarkFrom::Datum(x) => (x, false),
        }
    }

    fn end_mark(&self, edges: &[Edge], (edge, at): (usize, Point), datum: Length) -> Result<Option<EndMark>, Error> {
        let Some(line) = edges.get(edge) else { return Ok(None) };
        let near = |p: Point| (i128::from(p.x.pm()) - i128::from(datum.pm())).abs();
        let from = if near(line.from) <= near(line.to) { line.from } else { line.to };
        let (dx, dy) = ((at.x - from.x).length()?, (at.y - from.y).length()?);
        // A level edge is measured exactly.
        let along = if dy == Length::ZERO { Length::from_pm(dx.pm().abs()) } else { Length::from_mm(num::hypot(dx.mm(), dy.mm()))? };
        Ok(Some(EndMark { edge, at, along: TapeReading::of(along, self.tape)? }))
    }

    /// The marks of a layout whose panels are laid.
    pub(crate) fn of<R: Recorder>(&self, laid: &LaidPlane, r: &mut R) -> Result<MarkedSeams, Error> {
        let mut faults = Faults::default();
        faults.keep(self.creep.map_or(Ok(()), |c| c.check().map_err(|e| e.under("creep"))));
        faults.check()?;
        let (from, leftward) = self.datum();
        let sides = beside(laid);
        let edges: Vec<Edge> = self.layout.outline.edges().collect();
        let mut seams = Vec::with_capacity(laid.seams.len());
        for (seam, (&x, of)) in laid.seams.iter().zip(sides).enumerate() {
            let across = if leftward { (from - x).length()? } else { (x - from).length()? };
            let across = TapeReading::of(across, self.tape)?;
            r.step(|| {
                Step::new(format!("seam {}", seam + 1))
                    .formula("x - datum, rounded once")
                    .with("x", x)
                    .with("datum", from)
                    .gives(across.read)
                    .source(Source::geometry())
            });
            let end = |at: Option<(usize, Point)>| at.map_or(Ok(None), |at| self.end_mark(&edges, at, from));
            seams.push(SeamMark { seam, x, across, foot: end(of.foot)?, head: end(of.head)? });
        }
        let (mut checks, mut cautions) = (Vec::new(), Vec::new());
        if let Some(creep) = &self.creep {
            for way in self.ways(from)? {
                let own = way.checks(creep, self.tape)?;
                for check in &own {
                    r.step(|| {
                        let step = Step::new(format!("check after {} panels", check.panels))
                            .formula("panels between checks x creep; recovered over the panels to the next check");
                        step.with("creep", creep.each)
                            .with("allowed", check.allowed)
                            .with("recovered over", check.recover_over)
                            .gives(check.pull)
                            .source(Source::CommonPractice)
                    });
                }
                way.cautions(creep, self.layout.narrow, &own, &mut cautions)?;
                checks.extend(own);
            }
        }
        Ok(MarkedSeams { from, seams, checks, cautions })
    }

    /// Both ways from the seam nearest to the datum.
    fn ways(&self, from: Length) -> Result<Vec<Way>, Error> {
        let (bounds, coverage) = (self.layout.outline.bounds(), self.layout.panel.coverage);
        let grid = Grid::new(&bounds, coverage, self.layout.start)?;
        let seam = grid.seam()?;
        // The seam at the datum, or the next to the right; for a plane marked from its right, the next to the left.
        let off = (i128::from(from.pm()) - i128::from(seam.pm())).rem_euclid(i128::from(coverage.pm()));
        let step = match self.from {
            MarkFrom::Right => -off,
            _ if off == 0 => 0,
            _ => i128::from(coverage.pm()) - off,
        };
        let first = (from + Length::from_pm(i64::try_from(step).unwrap_or_default())).length()?;
        let mut out = Vec::new();
        for (toward, bound) in [(PlaneSide::Right, bounds.high.x), (PlaneSide::Left, bounds.low.x)] {
            out.extend(Way::new(toward, first, bound, coverage)?);
        }
        Ok(out)
    }
}

impl Calculation for SeamMarks {
    type Out = MarkedSeams;

    fn title(&self) -> String {
        "marks of the seams".to_owned()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<MarkedSeams, Error> {
        let laid = self.layout.compute().map_err(|e| e.under("layout"))?;
        self.of(&laid, r)
    }
}
