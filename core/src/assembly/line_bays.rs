//! The real bays along one side of a line.

use super::bay::{Bay, BayEnd, Beside, Flank, Hand, PanelEdge, SideBays, Stretch};
use super::cautions::{CORNER_BAY, NO_PANELS_ALONG};
use super::plane_panels::{NOISE, PlanePanels, clear_at, foot, head, same_place, vector};
use crate::error::{Error, ErrorKind};
use crate::junction::Side;
use crate::layout::LaidPanel;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::roof::{Line, Point, Side as RoofSide};
use crate::units::{Angle, Length, Sum};

/// One side of a line, met with the panels of its plane.
///
/// A side whose seams run along the line has no bays but panels beside it. Where a line is part of an edge, the bay at its end is cut there.
///
/// # Errors
/// Computing refuses a flank on which no plane lies ([`ErrorKind::Missing`]) and panels that were not laid on that plane's outline
/// ([`ErrorKind::Conflict`]).
///
/// ```
/// use seamwright::assembly::{BayEnd, Flank, LineBays, PlanePanels};
/// use seamwright::junction::Side;
/// use seamwright::layout::{EdgeUse, Layout, Start};
/// use seamwright::panel::{Panel, PanelEnd, Seam};
/// use seamwright::record::Calculation;
/// use seamwright::roof::{PlaneInput, RoofInput, Shape, Vertex};
/// use seamwright::units::Length;
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let shape = Shape::Space { outer: vec![v(0, 0, 10), v(42, 0, 10), v(42, 16, 22), v(0, 16, 22)], holes: vec![], flatness: None };
/// let roof = RoofInput::new(vec![PlaneInput { name: "shed".into(), shape }]).compute()?;
/// let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) })?;
/// let layout = Layout::new(roof.planes()[0].outline().clone(), panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let laid = layout.compute()?;
/// let panels = PlanePanels::new("shed", &layout, &laid)?;
/// let eave = LineBays { line: roof.line("eave 1")?, flank: Flank::Left, side: Side::First, panels: &panels }.compute()?;
/// assert_eq!((eave.bays.len(), eave.covered), (32, Length::feet(42)));
/// let rip = &eave.bays[31];
/// assert_eq!((rip.width, rip.left, rip.right), (Length::inches(8), BayEnd::Seam, BayEnd::Rip));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct LineBays<'a> {
    /// The line.
    pub line: &'a Line,
    /// Which flank of it.
    pub flank: Flank,
    /// Which side of the junction that is.
    pub side: Side,
    /// The panels of the plane there.
    pub panels: &'a PlanePanels<'a>,
}

impl<'a> LineBays<'a> {
    /// The roof's side of the line.
    ///
    /// # Errors
    /// [`ErrorKind::Missing`] where no plane lies on that flank.
    pub fn roof_side(&self) -> Result<&'a RoofSide, Error> {
        match self.flank {
            Flank::Left => Ok(&self.line.side),
            Flank::Right => self.line.other().ok_or_else(|| {
                Error::new(ErrorKind::Missing, "no plane lies on the right of the line").at("flank").value_of(&self.line.name).accepts("the left flank")
            }),
        }
    }
}

/// Stations along the line of points in the plane.
struct Ruler {
    start: Point,
    run: (f64, f64),
    squared: f64,
    length: Length,
    reversed: bool,
}

impl Ruler {
    fn station(&self, at: Point) -> Result<Length, Error> {
        let v = vector(self.start, at);
        let share = ((v.0 * self.run.0 + v.1 * self.run.1) / self.squared).clamp(0.0, 1.0);
        let along = Length::from_mm(share * self.length.mm())?;
        if self.reversed { (self.length - along).length() } else { Ok(along) }
    }
}

/// The end of a bay on the left or right of its panel.
fn bay_end(panel: &LaidPanel, left: bool, x: Length) -> Result<BayEnd, Error> {
    let (side, on_seam) = if left { (panel.left, panel.left_on_seam) } else { (panel.right, panel.right_on_seam) };
    Ok(match on_seam {
        _ if !same_place(side, x) || clear_at(panel, left)? <= NOISE => BayEnd::Corner,
        true => BayEnd::Seam,
        false => BayEnd::Rip,
    })
}

impl LineBays<'_> {
    /// One bay between two points of the line; `None` for noise.
    fn bay(&self, number: usize, end: PanelEdge, (left, right): (Point, Point), meeting: Angle, ruler: &Ruler) -> Result<Option<Bay>, Error> {
        let width = (right.x - left.x).length()?;
        let Some(panel) = self.panels.laid().panels.get(number).filter(|_| width > NOISE) else { return Ok(None) };
        let (a, b) = (ruler.station(left)?, ruler.station(right)?);
        Ok(Some(Bay {
            panel: number,
            strip: panel.strip,
            run: panel.run,
            mark: self.panels.mark(number),
            end,
            from: a.min(b),
            to: a.max(b),
            length: Length::ZERO,
            width,
            meeting,
            hand: Hand::of(meeting),
            notched: false,
            left: bay_end(panel, true, left.x)?,
            right: bay_end(panel, false, right.x)?,
        }))
    }

    /// The bays of panels that end at the line, cut at its ends.
    fn ending(&self, edge: usize, ruler: &Ruler, ends: (Point, Point)) -> Result<Vec<Bay>, Error> {
        let mut out = Vec::new();
        for at in self.panels.parts(edge, ends.0.x, ends.1.x) {
            let left = if at.part.left.x < ends.0.x { ends.0 } else { at.part.left };
            let right = if at.part.right.x > ends.1.x { ends.1 } else { at.part.right };
            let meeting = Angle::degrees_from(90.0 - at.part.skew.degrees())?;
            out.extend(self.bay(at.panel, at.end, (left, right), meeting, ruler)?);
        }
        Ok(out)
    }

    /// The bays of panels that are cut around an opening or a notch at the line: its stretches where no panel ends.
    fn notched(&self, of: &RoofSide, edge: usize, ruler: &Ruler, ends: (Point, Point)) -> Result<Vec<Bay>, Error> {
        // The plane lies on the left of its edges: above one that runs to the right.
        let end = if of.end.x > of.start.x { PanelEdge::Lower } else { PanelEdge::Upper };
        let meeting = Angle::degrees_from(90.0 - of.skew.degrees())?;
        let mut out = Vec::new();
        for (panel, stretch) in self.panels.passing(edge, ends)? {
            let bay = self.bay(panel, end, stretch, meeting, ruler)?;
            out.extend(bay.map(|b| Bay { notched: true, ..b }));
        }
        Ok(out)
    }

    /// The panels beside a line along the seams.
    fn beside(&self, of: &RoofSide, ruler: &Ruler) -> Result<Vec<Beside>, Error> {
        let (x, up) = (of.start.x, of.end.y > of.start.y);
        let (low, high) = (of.start.y.min(of.end.y), of.start.y.max(of.end.y));
        let mut out = Vec::new();
        // The plane lies on the left of its edges: on the left in x where the edge runs up.
        for (k, p) in self.panels.beside(x, up) {
            let (from, to) = (foot(p).max(low), head(p).min(high));
            if (to - from).length()? <= NOISE {
                continue;
            }
            let (a, b) = (ruler.station(Point::new(x, from))?, ruler.station(Point::new(x, to))?);
            let side = if up { p.right } else { p.left };
            let on_seam = if up { p.right_on_seam } else { p.left_on_seam };
            let at = if on_seam && same_place(side, x) { BayEnd::Seam } else { BayEnd::Rip };
            out.push(Beside { panel: k, mark: self.panels.mark(k), width: p.width, stretch: Stretch { from: a.min(b), to: a.max(b) }, at });
        }
        out.sort_by_key(|b| b.stretch.from);
        Ok(out)
    }
}

/// Closes boundaries that noise holds apart, and gives what stays open.
fn close(bays: &mut [Bay], length: Length) -> Result<Vec<Stretch>, Error> {
    let mut gaps = Vec::new();
    let mut at = Length::ZERO;
    for bay in bays.iter_mut() {
        if same_place(bay.from, at) {
            bay.from = at;
        } else if bay.from > at {
            gaps.push(Stretch { from: at, to: bay.from });
        }
        at = bay.to;
    }
    if same_place(at, length) {
        if let Some(last) = bays.last_mut() {
            last.to = length;
        }
    } else if at < length {
        gaps.push(Stretch { from: at, to: length });
    }
    for bay in bays {
        bay.length = (bay.to - bay.from).length()?;
    }
    Ok(gaps)
}

/// Every seam that the bays end at, once, in order along the line.
fn seams(bays: &[Bay], flank: Flank) -> Vec<Length> {
    let mut out: Vec<Length> = Vec::new();
    for bay in bays {
        // The plane lies on the left of the line at a lower end from left to right, at an upper end from right to left.
        let rightward = (bay.end == PanelEdge::Lower) == (flank == Flank::Left);
        let (first, last) = if rightward { (bay.left, bay.right) } else { (bay.right, bay.left) };
        for (end, at) in [(first, bay.from), (last, bay.to)] {
            if end == BayEnd::Seam && out.last() != Some(&at) {
                out.push(at);
            }
        }
    }
    out
}

impl Calculation for LineBays<'_> {
    type Out = SideBays;

    fn title(&self) -> String {
        format!("bays along {}, {}", self.line.name, self.panels.name())
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<SideBays, Error> {
        let of = self.roof_side()?;
        let edge = self.panels.edge_of(of)?;
        let length = self.line.length.positive("line.length")?;
        let run = vector(of.start, of.end);
        let ruler = Ruler { start: of.start, run, squared: run.0 * run.0 + run.1 * run.1, length, reversed: self.flank == Flank::Right };
        let along_seams = self.panels.edge(edge).is_some_and(|e| vector(e.from, e.to).0.abs() <= 1e-6);
        let ends = if of.start.x <= of.end.x { (of.start, of.end) } else { (of.end, of.start) };
        let mut bays = Vec::new();
        if !along_seams {
            bays = self.ending(edge, &ruler, ends)?;
            if bays.iter().map(|b| b.to - b.from).sum::<Sum>() + NOISE < length.into() {
                bays.extend(self.notched(of, edge, &ruler, ends)?);
            }
            bays.sort_by_key(|b| (b.from, b.to));
        }
        let beside = if along_seams { self.beside(of, &ruler)? } else { Vec::new() };
        let gaps = if along_seams { Vec::new() } else { close(&mut bays, length)? };
        let covered = bays.iter().map(|b| b.length).sum::<Sum>().length()?;
        r.step(|| {
            Step::new("bays along the line, together")
                .formula("the widths of the panels that end there / sin(meeting angle)")
                .with("bays", bays.len())
                .with("meeting angle", of.meeting_angle)
                .with("line", length)
                .gives(covered)
                .source(Source::geometry())
        });
        let mut cautions = Vec::new();
        let open = gaps.iter().map(|g| g.to - g.from).sum::<Sum>().length()?;
        if let Some(first) = gaps.first() {
            cautions.push(Caution::new(NO_PANELS_ALONG, "bays", Source::geometry()).arg("length", open).arg("from", first.from).arg("to", first.to));
        }
        let mut corners = bays.iter().enumerate().filter(|(_, b)| b.left == BayEnd::Corner || b.right == BayEnd::Corner);
        if let Some((k, first)) = corners.next() {
            let count = corners.count() + 1;
            cautions.push(Caution::new(CORNER_BAY, format!("bays[{k}]"), Source::geometry()).arg("count", count).arg("from", first.from).arg("to", first.to));
        }
        let seams = seams(&bays, self.flank);
        Ok(SideBays { side: self.side, flank: self.flank, plane: of.plane, meeting: of.meeting_angle, bays, gaps, beside, seams, covered, cautions })
    }
}
