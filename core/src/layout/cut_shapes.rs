//! What each panel is cut to, as it lies on its blank before it is folded.

use super::clip::{Clipper, Part, Run};
use super::grid::Grid;
use super::input::{EdgeUse, Layout};
use super::measure::{End, measure};
use crate::error::Error;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::roof::Point;
use crate::units::Length;

/// A layout whose panels are to be cut.
///
/// ```
/// # use seamwright::layout::{CutShapes, EdgeUse, Layout, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// // Under a line that rises 12 in over the panel's 16 in, with a fold of 1 in: 1 1/4 in along the seams.
/// let outline = Outline::new(vec![p(0, 0), p(16, 0), p(16, 112), p(0, 100)], vec![])?;
/// let end = |k: usize| EdgeUse::End(PanelEnd::hold_back(Length::ZERO).with_fold(Length::inches(if k == 2 { 1 } else { 0 })));
/// let shapes = CutShapes { layout: Layout::new(outline, panel, Start::Left, |edge| end(edge.index))? }.compute()?;
/// let upper = &shapes[0].upper;
/// assert_eq!(upper.cut, [Point::new(Length::ZERO, Length::parse("101 1/4\"")?), Point::new(Length::inches(16), Length::parse("113 1/4\"")?)]);
/// assert_eq!(upper.fold, [p(0, 100), p(16, 112)]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct CutShapes {
    /// The layout.
    pub layout: Layout,
}

/// Lines across a panel where it ends, each from left to right. Where an end steps, two points stand over each other.
///
/// ```
/// use seamwright::layout::EndShape;
/// assert!(EndShape::default().fold.is_empty());
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EndShape {
    /// Where the finished metal ends, its fold or turn-up laid flat: the skew cut.
    pub cut: Vec<Point>,
    /// Where it is folded over, or the pan is turned up; empty for an end without either.
    pub fold: Vec<Point>,
    /// Where the metal ends as ordered, what is cut off on the roof with it; empty for an end without field trim.
    pub trim: Vec<Point>,
}

/// What is cut out of a panel between its ends, down to the metal: its folds and turn-ups stand in it.
///
/// ```
/// use seamwright::layout::NotchShape;
/// assert_eq!(NotchShape::default().lower.cut, []);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NotchShape {
    /// Its lower edge: the metal below it ends upward there.
    pub lower: EndShape,
    /// Its upper edge.
    pub upper: EndShape,
}

/// The shape of one panel's pan, in axes of its own: x from the left side of what it covers, y up the slope from the foot of its blank. The legs of its seams
/// stand beside it; how they are trimmed back at an end is the junction's matter.
///
/// ```
/// # use seamwright::layout::{CutShapes, EdgeUse, Layout, Start};
/// # use seamwright::panel::{Panel, PanelEnd, Seam};
/// # use seamwright::record::Calculation;
/// # use seamwright::roof::{Outline, Point};
/// # use seamwright::units::Length;
/// # let p = |x, y| Point::new(Length::inches(x), Length::inches(y));
/// # let panel = Panel::new(Length::inches(16), Length::inches(1), Seam::DoubleLock { lock: Length::parse("1/4\"")? })?;
/// // A curb of 4 in with 1/2 in of room round it: its notch is 1 in longer than the curb.
/// let hole = vec![p(6, 40), p(10, 40), p(10, 44), p(6, 44)];
/// let outline = Outline::new(vec![p(0, 0), p(16, 0), p(16, 100), p(0, 100)], vec![hole])?;
/// let half = Length::parse("1/2\"")?;
/// let layout = Layout::new(outline, panel, Start::Left, |e| EdgeUse::End(PanelEnd::hold_back(if e.ring == 0 { Length::ZERO } else { half })))?;
/// let notch = &CutShapes { layout }.compute()?[0].notches[0];
/// assert_eq!((notch.lower.cut[0].y, notch.upper.cut[0].y), (Length::parse("39 1/2\"")?, Length::parse("44 1/2\"")?));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PanelShape {
    /// Its strip, from the left, from 0.
    pub strip: usize,
    /// Its run in the strip, from the foot, from 0.
    pub run: usize,
    /// The width that it covers: that of the rectangle.
    pub width: Length,
    /// The length of the rectangle that just holds it, field trims included, before the shop rounds it.
    pub length: Length,
    /// Its lower end.
    pub lower: EndShape,
    /// Its upper end.
    pub upper: EndShape,
    /// What is cut out of it.
    pub notches: Vec<NotchShape>,
}

type Line = Vec<(f64, f64)>;

/// Where one line lies above another: from the first to the last such place across a panel. Both are straight between their points.
fn open_between(lower: &[(f64, f64)], upper: &[(f64, f64)]) -> Option<(f64, f64)> {
    let mut open: Option<(f64, f64)> = None;
    for (a, b) in lower.iter().zip(lower.iter().skip(1)) {
        for (c, d) in upper.iter().zip(upper.iter().skip(1)) {
            let (from, to) = (a.0.max(c.0), b.0.min(d.0));
            if from >= to {
                continue;
            }
            let room = |x: f64| height((*c, *d), x) - height((*a, *b), x);
            let (left, right) = (room(from), room(to));
            let zero = from + (to - from) * left / (left - right);
            let found = match (left > 0.0, right > 0.0) {
                (true, true) => (from, to),
                (true, false) => (from, zero),
                (false, true) => (zero, to),
                (false, false) => continue,
            };
            open = Some(open.map_or(found, |o| (o.0.min(found.0), o.1.max(found.1))));
        }
    }
    open
}

fn height((a, b): ((f64, f64), (f64, f64)), x: f64) -> f64 {
    if x <= a.0 {
        a.1
    } else if x >= b.0 {
        b.1
    } else {
        (a.1 * (b.0 - x) + b.1 * (x - a.0)) / (b.0 - a.0)
    }
}

/// What of a line lies between two places across the panel.
fn within(line: &[(f64, f64)], (from, to): (f64, f64)) -> Line {
    let mut out: Line = Vec::with_capacity(line.len());
    for (a, b) in line.iter().zip(line.iter().skip(1)) {
        let (x0, x1) = (a.0.max(from), b.0.min(to));
        if x0 > x1 || (x0 >= x1 && a.0 < b.0) {
            continue;
        }
        for p in [(x0, if a.0 < b.0 { height((*a, *b), x0) } else { a.1 }), (x1, if a.0 < b.0 { height((*a, *b), x1) } else { b.1 })] {
            if out.last() != Some(&p) {
                out.push(p);
            }
        }
    }
    out
}

/// From the middle of the plane to the panel's own axes.
#[derive(Clone, Copy)]
struct Axes {
    left: f64,
    foot: f64,
}

impl Axes {
    fn points(self, line: &[(f64, f64)]) -> Result<Vec<Point>, Error> {
        let mut out: Vec<Point> = Vec::with_capacity(line.len());
        for (x, y) in line {
            let p = Point::new(Length::from_mm(x - self.left)?, Length::from_mm(y - self.foot)?);
            if out.last() != Some(&p) {
                out.push(p);
            }
        }
        Ok(out)
    }
}

impl Layout {
    /// The same layout with its ends cut at their fold lines.
    fn unfolded(&self) -> Layout {
        let mut out = self.clone();
        for edge in &mut out.edges {
            if let EdgeUse::End(end) = edge {
                (end.fold, end.turn_up) = (Length::ZERO, Length::ZERO);
            }
        }
        for end in out.breaks.iter_mut().flat_map(|b| [&mut b.below, &mut b.above]) {
            (end.fold, end.turn_up) = (Length::ZERO, Length::ZERO);
        }
        out
    }

    fn folds(&self, parts: &[Part<'_>]) -> bool {
        parts.iter().filter_map(|p| self.end_at(p.line.edge)).any(|end| end.fold.is_positive() || end.turn_up.is_positive())
    }

    /// The lines of an end and, from the layout that is cut at its folds, of the same end there.
    fn end_shape(&self, end: &End<'_>, at_fold: Option<&End<'_>>, open: (f64, f64), axes: Axes) -> Result<EndShape, Error> {
        let lines = |end: &End<'_>| axes.points(&within(&end.line_across(), open));
        let fold = at_fold.filter(|e| self.folds(e.parts));
        let trim = end.parts.iter().any(|p| p.line.trim > 0.0).then(|| end.ordered());
        Ok(EndShape {
            cut: lines(end)?,
            fold: fold.map(lines).transpose()?.unwrap_or_default(),
            trim: trim.as_ref().map(lines).transpose()?.unwrap_or_default(),
        })
    }

    fn shape_of(&self, run: &Run<'_>, at_fold: &Run<'_>) -> Result<Option<PanelShape>, Error> {
        let Some(m) = measure(run) else { return Ok(None) };
        if !Length::from_mm(m.finished)?.is_positive() {
            return Ok(None);
        }
        let axes = Axes { left: run.left, foot: m.foot };
        let (lower, upper) = (End::lower(run), End::upper(run));
        let Some(open) = open_between(&lower.line_across(), &upper.line_across()) else { return Ok(None) };
        let mut notches = Vec::with_capacity(run.notches.len());
        for (notch, bare) in run.notches.iter().zip(at_fold.notches) {
            // Below a notch the metal ends upward, and above it downward.
            let ends = [(&notch.lower, &bare.lower, 1.0), (&notch.upper, &bare.upper, -1.0)]
                .map(|(cut, fold, outward)| (End::of(cut, outward), End::of(fold, outward)));
            let [(below, below_fold), (above, above_fold)] = ends;
            notches.push(NotchShape {
                lower: self.end_shape(&below, Some(&below_fold), open, axes)?,
                upper: self.end_shape(&above, Some(&above_fold), open, axes)?,
            });
        }
        Ok(Some(PanelShape {
            strip: 0,
            run: 0,
            width: Length::from_mm(run.right - run.left)?,
            length: Length::from_mm(m.ordered)?,
            lower: self.end_shape(&lower, Some(&End::lower(at_fold)), open, axes)?,
            upper: self.end_shape(&upper, Some(&End::upper(at_fold)), open, axes)?,
            notches,
        }))
    }
}

impl Calculation for CutShapes {
    type Out = Vec<PanelShape>;

    fn title(&self) -> String {
        format!("cut shapes of panels, coverage {}", self.layout.panel.coverage)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Vec<PanelShape>, Error> {
        let layout = &self.layout;
        layout.check().map_err(|e| e.under("layout"))?;
        let grid = Grid::new(&layout.outline.bounds(), layout.panel.coverage, layout.start).map_err(|e| e.under("layout"))?;
        let unfolded = layout.unfolded();
        let (mut segments, mut folds) = (layout.segments(&grid).map_err(|e| e.under("layout"))?.0, unfolded.segments(&grid).map_err(|e| e.under("layout"))?.0);
        let (mut clipper, mut at_folds) = (Clipper::new(&mut segments), Clipper::new(&mut folds));
        let mut out = Vec::with_capacity(grid.count());
        for (strip, s) in grid.strips().enumerate() {
            clipper.cut(s.left, s.right);
            at_folds.cut(s.left, s.right);
            // The outline alone parts a strip into runs, so both have the same.
            for (k, (run, at_fold)) in clipper.runs().zip(at_folds.runs()).enumerate() {
                let Some(shape) = layout.shape_of(&run, &at_fold)? else { continue };
                r.step(|| {
                    let written = |line: &[Point]| line.iter().map(|p| format!("({}, {})", p.x, p.y)).collect::<Vec<_>>().join(" ");
                    Step::new(format!("strip {}, run {}", strip + 1, k + 1))
                        .formula("each line shifted by its end, along the seams, to where it crosses the next")
                        .with("lower cut", written(&shape.lower.cut))
                        .with("upper cut", written(&shape.upper.cut))
                        .gives(shape.length)
                        .source(Source::geometry())
                });
                out.push(PanelShape { strip, run: k, ..shape });
            }
        }
        Ok(out)
    }
}
