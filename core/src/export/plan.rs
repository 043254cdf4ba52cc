//! The plan of a roof with its panels.

use super::labels::Area;
use super::plan_box::{Turned, bounds, is_within, readable};
use super::plan_marks::{self, PlanMark};
use super::plan_text::{Beside, Care, Field, Harm, Sheet, Slot, Text};
use super::svg::{Anchor, Look, PaperUnit, Point, Svg, text_width};
use crate::error::{Error, ErrorKind};
use crate::layout::{EndPart, LaidPanel, LaidPlane};
use crate::num;
use crate::roof::{Beyond, Line, LineKind, Plane, Roof};
use crate::units::{Length, LengthFormat};

const TITLE: f64 = 4.2;
const LABEL: f64 = 3.0;
const ROW: f64 = 4.8;
const MARGIN: f64 = 6.0;
/// Length of the arrow beside a plane's name.
const ARROW: f64 = 5.0;
/// Text along a line, of a hole, and of a panel too narrow to hold its own.
const SMALL: f64 = 2.1;
const TINY: f64 = 1.8;
/// How far the name of a line stands off it with its length before the length is left out.
const LEADER: f64 = 12.0;
const INK: &str = "#1b1b1b";
const QUIET: &str = "#5b6670";
const PAPER: &str = "#ffffff";

/// How a kind of line is drawn: level lines of the top blue, sloping outward corners green, gathering lines red, free edges dark, walls brown. Each has dashes
/// or a width of its own too, so that a print in grey tells them apart.
pub(super) const fn look(kind: LineKind) -> Look {
    match kind {
        LineKind::Ridge => Look::line("#1f5c99", 1.2),
        LineKind::HighEdge => Look::dashed("#1f5c99", 0.6, &[3.0, 1.8]),
        LineKind::Hip => Look::dashed("#2c7a3f", 0.8, &[7.0, 2.0]),
        LineKind::Valley => Look::dashed("#b3261a", 0.9, &[5.0, 2.0, 0.2, 2.0]),
        LineKind::SteepToShallow => Look::dashed("#8a5a00", 0.7, &[4.0, 1.8, 0.2, 1.8, 0.2, 1.8]),
        LineKind::ShallowToSteep => Look::dashed("#8a5a00", 0.7, &[1.4, 1.8]),
        LineKind::Eave => Look::line("#1b1b1b", 0.8),
        LineKind::Rake => Look::line("#1b1b1b", 0.35),
        LineKind::Headwall => Look::dashed("#7a3b12", 1.6, &[8.0, 2.8]),
        LineKind::Sidewall => Look::dashed("#7a3b12", 1.6, &[2.4, 3.4]),
        LineKind::CurbFront => Look::dashed("#7a2e8a", 0.5, &[2.0, 1.4]),
        LineKind::CurbSide => Look::dashed("#7a2e8a", 0.6, &[0.2, 1.4]),
        LineKind::CurbBack => Look::dashed("#7a2e8a", 1.1, &[2.0, 2.4]),
        LineKind::Step => Look::dashed("#00695c", 1.0, &[6.0, 1.8, 1.2, 1.8]),
        LineKind::ExpansionAlong => Look::dashed("#00695c", 1.4, &[3.0, 2.0, 3.0, 4.0]),
        LineKind::ExpansionAcross => Look::dashed("#00695c", 1.4, &[8.0, 2.0, 2.0, 2.0]),
        LineKind::Unknown => Look::dashed("#c2185b", 1.3, &[0.2, 2.4]),
    }
}

/// The plan of a roof as SVG, x to the right and y up the page: planes by name with an arrow down each slope, their panels numbered in the order of the layout and
/// marked as in its length list, openings by name, and the lines by kind with their names and true lengths and a legend of the kinds that occur.
///
/// `laid` has one entry for each plane of the roof, `None` where it is not laid. `figure` is the greatest width and height of the drawn roof on paper; text and
/// margins come around it. Lengths are written in `format`. Text that has no room in what it names stands beside it, at the end of a leader.
///
/// ```
/// use seamwright::export::{PaperUnit, roof_plan_svg};
/// use seamwright::record::Calculation;
/// use seamwright::roof::{PlaneInput, RoofInput, Shape, Vertex};
/// use seamwright::units::{Length, LengthFormat};
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let outer = vec![v(0, 0, 8), v(20, 0, 8), v(20, 10, 13), v(0, 10, 13)];
/// let shed = PlaneInput { name: "shed".into(), shape: Shape::Space { outer, holes: vec![], flatness: None } };
/// let roof = RoofInput::new(vec![shed]).compute()?;
/// let format = LengthFormat::parse("ft-in/16")?;
/// let svg = roof_plan_svg("shed", &roof, &[None], Length::micrometres(180_000), PaperUnit::Inch, format)?;
/// assert!(svg.contains("eave 1, 20&#39;-0&quot;") && svg.contains("high edge"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
///
/// # Errors
/// [`ErrorKind::Conflict`] where `laid` does not fit the planes, [`ErrorKind::OutOfRange`] for a figure of zero or less, [`ErrorKind::Overflow`] for panels
/// beyond the range of lengths and for lengths that cannot be rounded to the format.
pub fn roof_plan_svg(name: &str, roof: &Roof, laid: &[Option<&LaidPlane>], figure: Length, paper: PaperUnit, format: LengthFormat) -> Result<String, Error> {
    marked_plan_svg(name, roof, laid, &[], figure, paper, format)
}

/// The same, with what stands on the roof beside its lines.
pub(super) fn marked_plan_svg(
    name: &str,
    roof: &Roof,
    laid: &[Option<&LaidPlane>],
    marks: &[PlanMark],
    figure: Length,
    paper: PaperUnit,
    format: LengthFormat,
) -> Result<String, Error> {
    if laid.len() != roof.planes().len() {
        return Err(Error::new(ErrorKind::Conflict, "one entry for each plane of the roof is needed")
            .at("laid")
            .value_of(laid.len())
            .accepts(roof.planes().len().to_string()));
    }
    // Everything that can fail comes before the first stroke.
    let to_paper = ToPaper::new(roof, figure.positive("figure")?.mm());
    let fields = roof.planes().iter().zip(laid).map(|(plane, laid)| field(plane, *laid, &to_paper)).collect::<Result<Vec<_>, _>>()?;
    let mut texts = Texts::place(roof, Sheet::new(fields), &to_paper, format)?;
    let marks = plan_marks::place(marks, &mut texts.sheet, &|p| to_paper.point(p), to_paper.scale);

    // What stands beside the figure makes the sheet larger.
    let mut area = Area::EMPTY;
    texts.sheet.fields.iter().flat_map(|f| &f.outer).for_each(|p| area.cover(*p));
    texts.sheet.taken().iter().flat_map(Turned::corners).for_each(|p| area.cover(p));
    marks.iter().flat_map(plan_marks::Drawn::corners).for_each(|p| area.cover(p));
    let area = area.grown(1.0);
    let kinds: Vec<LineKind> = LineKind::ALL.iter().copied().filter(|k| roof.lines_of(*k).next().is_some()).collect();
    let note = "Panels: number on the plane, mark of the length list. Lines: name, true length. Arrows point down the slope.";
    let inner = (area.high.0 - area.low.0).max(text_width(note, SMALL)).max(text_width(name, TITLE));
    let head = MARGIN + TITLE + 2.0;
    let foot = head + (area.high.1 - area.low.1) + 3.0;
    let shift = (MARGIN + (inner - (area.high.0 - area.low.0)) / 2.0 - area.low.0, head - area.low.1);
    let at = |p: Point| (p.0 + shift.0, p.1 + shift.1);
    let line_at = |p: crate::roof::Vertex| at(to_paper.point((p.x.mm(), p.y.mm())));
    let legend = Legend::new(&kinds, inner);

    let mut svg = Svg::new(inner + 2.0 * MARGIN, foot + legend.height() + ROW + MARGIN, paper, name);
    svg.group("name", Look::area(INK), |svg| svg.text((MARGIN, MARGIN + TITLE * 0.8), TITLE, Anchor::Start, 0.0, name));
    for (plane, field) in roof.planes().iter().zip(&texts.sheet.fields) {
        let ring = |svg: &mut Svg, ring: &[Point]| svg.polyline(&ring.iter().map(|p| at(*p)).collect::<Vec<_>>(), true);
        svg.group(plane.name(), Look { stroke: QUIET, width: 0.1, dashes: &[], fill: "#f4f6f7" }, |svg| ring(svg, &field.outer));
        svg.group("panels", Look { stroke: QUIET, width: 0.12, dashes: &[], fill: "#e3e8eb" }, |svg| field.slots.iter().for_each(|s| ring(svg, &s.ring)));
        svg.group("notches", Look { stroke: QUIET, width: 0.12, dashes: &[], fill: "#f4f6f7" }, |svg| field.notches.iter().for_each(|n| ring(svg, n)));
        svg.group("openings", Look { stroke: QUIET, width: 0.1, dashes: &[], fill: PAPER }, |svg| field.holes.iter().for_each(|h| ring(svg, h)));
    }
    // Lines of two planes may lie one over the other in plan, as a rake over a sidewall: the narrow on the wide.
    let mut by_width = kinds.clone();
    by_width.sort_by(|a, b| look(*b).width.total_cmp(&look(*a).width));
    for kind in &by_width {
        svg.group(kind.name(), look(*kind), |svg| roof.lines_of(*kind).for_each(|l| svg.line(line_at(l.start), line_at(l.end))));
    }
    marks.iter().for_each(|m| m.ink(&mut svg, &at));
    // Names lie on panels, so each has paper behind it.
    let covering = || texts.names.iter().chain(&texts.lines).chain(&texts.apart).chain(marks.iter().map(|m| &m.text));
    svg.group("leaders", Look { stroke: QUIET, width: 0.15, dashes: &[], fill: QUIET }, |svg| {
        covering().filter_map(|t| t.leader).for_each(|(from, to)| {
            svg.line(at(from), at(to));
            svg.circle(at(from), 0.25);
        });
    });
    svg.group("behind text", Look::area(PAPER), |svg| covering().for_each(|t| svg.polyline(&t.place.corners().map(at), true)));
    let write = |svg: &mut Svg, t: &Text, along: f64| {
        svg.text(at(t.place.point(along, t.size * 0.35)), t.size, Anchor::Middle, t.place.degrees, &t.text);
    };
    for (name, list) in [("panel numbers", &texts.panels), ("panel and opening names apart", &texts.apart), ("line names", &texts.lines)] {
        svg.group(name, Look::area(INK), |svg| list.iter().for_each(|t| write(svg, t, 0.0)));
    }
    if !marks.is_empty() {
        svg.group("copings and pipes", Look::area(INK), |svg| marks.iter().for_each(|m| write(svg, &m.text, 0.0)));
    }
    for (plane, name) in roof.planes().iter().zip(&texts.names) {
        svg.group("plane name", Look::area(INK), |svg| write(svg, name, -ARROW / 2.0));
        let middle = at(name.place.point(name.place.half.0 - ARROW / 2.0 - 0.5, 0.0));
        svg.group("down the slope", Look::line(INK, 0.4), |svg| arrow(svg, middle, plane));
    }
    legend.draw(&mut svg, foot);
    svg.group("note", Look::area(QUIET), |svg| svg.text((MARGIN, foot + legend.height() + ROW * 0.7), SMALL, Anchor::Start, 0.0, note));
    Ok(svg.finish())
}

/// From the roof's plan to paper.
pub(super) struct ToPaper {
    low_x: f64,
    high_y: f64,
    scale: f64,
}

impl ToPaper {
    pub(super) fn new(roof: &Roof, figure: f64) -> ToPaper {
        let mut area = Area::EMPTY;
        roof.planes().iter().flat_map(|p| p.plan().outer()).for_each(|p| area.cover((p.x.mm(), p.y.mm())));
        ToPaper { low_x: area.low.0, high_y: area.high.1, scale: figure / (area.high.0 - area.low.0).max(area.high.1 - area.low.1) }
    }

    fn point(&self, p: Point) -> Point {
        ((p.0 - self.low_x) * self.scale, (self.high_y - p.1) * self.scale)
    }

    fn ring(&self, ring: &[crate::roof::Point]) -> Vec<Point> {
        ring.iter().map(|p| self.point((p.x.mm(), p.y.mm()))).collect()
    }
}

pub(super) fn field(plane: &Plane, laid: Option<&LaidPlane>, to_paper: &ToPaper) -> Result<Field, Error> {
    let turned = readable(-plane.down_slope().degrees());
    let mut slots = Vec::new();
    for (number, (laid, panel)) in (1_usize..).zip(laid.iter().flat_map(|l| l.panels.iter().map(move |p| (l, p)))) {
        let ring = panel_ring(plane, panel)?.into_iter().map(|p| to_paper.point(p)).collect();
        slots.push(Slot::new(ring, 2 * panel.lower.len(), format!("{number} {}", laid.mark_of(panel).unwrap_or("")), turned));
    }
    let holes = plane.plan().holes().iter().map(|h| to_paper.ring(h)).collect();
    let mut notches = Vec::new();
    for notch in laid.iter().flat_map(|l| &l.panels).flat_map(|p| &p.notches) {
        notches.push(between(plane, &notch.lower, &notch.upper)?.into_iter().map(|p| to_paper.point(p)).collect());
    }
    Ok(Field::new(to_paper.ring(plane.plan().outer()), holes, notches, slots))
}

/// Between junction lines, in plan, counter-clockwise as seen from above: along the lower end to the right, back along the upper.
pub(super) fn panel_ring(plane: &Plane, panel: &LaidPanel) -> Result<Vec<Point>, Error> {
    between(plane, &panel.lower, &panel.upper)
}

/// In plan, what lies between these lines of a plane.
pub(super) fn between(plane: &Plane, lower: &[EndPart], upper: &[EndPart]) -> Result<Vec<Point>, Error> {
    let lower = lower.iter().flat_map(|e| [e.left, e.right]);
    let upper = upper.iter().rev().flat_map(|e| [e.right, e.left]);
    lower.chain(upper).map(|p| plane.to_space(p).map(|v| (v.x.mm(), v.y.mm()))).collect()
}

/// An arrow about a point, down a plane's slope.
fn arrow(svg: &mut Svg, at: Point, plane: &Plane) {
    let down = plane.down_slope();
    let (x, y) = (down.cos(), -down.sin());
    let along = |by: f64| (at.0 + x * by, at.1 + y * by);
    let to = along(ARROW * 0.45);
    svg.line(along(-ARROW * 0.45), to);
    let barb = |side: f64| (to.0 - x * 1.6 + y * side, to.1 - y * 1.6 - x * side);
    svg.polyline(&[barb(0.9), to, barb(-0.9)], false);
}

/// Every text of a plan.
pub(super) struct Texts {
    pub(super) sheet: Sheet,
    /// One for each plane, with room for its arrow at its right end.
    names: Vec<Text>,
    pub(super) lines: Vec<Text>,
    pub(super) panels: Vec<Text>,
    /// Of openings, and of panels that cannot hold their own.
    pub(super) apart: Vec<Text>,
}

impl Texts {
    pub(super) fn place(roof: &Roof, sheet: Sheet, to_paper: &ToPaper, format: LengthFormat) -> Result<Texts, Error> {
        let mut texts = Texts { sheet, names: Vec::new(), lines: Vec::new(), panels: Vec::new(), apart: Vec::new() };
        for (number, plane) in roof.planes().iter().enumerate() {
            let text = plane_name(&texts.sheet, number, plane);
            texts.sheet.take(&text);
            texts.names.push(text);
        }
        for line in roof.lines().iter().filter(|l| !matches!(l.beyond, Beyond::Hole(_))) {
            let length = format.text(line.length).map_err(|e| e.at("format"))?;
            let text = line_name(&texts.sheet, line, length.as_str(), to_paper);
            texts.sheet.take(&text);
            texts.lines.push(text);
        }
        texts.holes(roof);
        texts.panels();
        Ok(texts)
    }

    fn holes(&mut self, roof: &Roof) {
        for (number, plane) in roof.planes().iter().enumerate() {
            for (hole, name) in plane.hole_names().iter().enumerate() {
                let Some(ring) = self.sheet.fields.get(number).and_then(|f| f.holes.get(hole)) else { continue };
                let middle = middle(ring);
                // One that planes lie over, as under a dormer, is no opening to be seen.
                if self.sheet.fields.iter().enumerate().any(|(other, f)| other != number && is_within(&f.outer, middle)) {
                    continue;
                }
                let text = |size: f64, place: Turned| Text { text: name.clone(), size, place, leader: None };
                let fits = |t: &Text| t.place.lies_in(ring) && self.sheet.is_free(&t.place);
                let inside = [SMALL, TINY].map(|size| text(size, Turned::text(middle, name, size, 0.0))).into_iter().find(fits);
                let beside = || self.sheet.stand_off(middle, &Beside::new(name, TINY, -45.0));
                let placed = inside.or_else(beside).unwrap_or_else(|| text(TINY, Turned::text(middle, name, TINY, 0.0)));
                self.sheet.take(&placed);
                self.apart.push(placed);
            }
        }
    }

    /// Panels that cannot hold their text come first; the others make room for what stands off, and what has no room left comes after them.
    fn panels(&mut self) {
        while let Some((field, slot)) = self.sheet.next_waiting() {
            self.apart(field, &slot);
        }
        let within = |s: &Slot| s.spot.map(|spot| Text { text: s.text.clone(), size: spot.size, place: spot.place, leader: None });
        self.panels = self.sheet.fields.iter().flat_map(|f| &f.slots).filter_map(within).collect();
    }

    fn apart(&mut self, field: usize, slot: &Slot) {
        let centre = self.sheet.fields.get(field).map(|f| middle(&f.outer)).unwrap_or_default();
        let mean = slot.middle();
        let towards = |p: Point| num::atan2_deg(p.1 - centre.1, p.0 - centre.0);
        let length = |t: &Text| t.leader.map_or(0.0, |(from, to)| num::hypot(to.0 - from.0, to.1 - from.1));
        // The shortest leader of all that start up its middle.
        let shortest = |care: Care| {
            slot.places().into_iter().fold(None, |best: Option<Text>, start| {
                let within = best.as_ref().map_or(f64::INFINITY, length);
                let text = self.sheet.stand_within(start, &Beside::new(&slot.text, TINY, towards(start)), within, care);
                text.filter(|t| length(t) < within).or(best)
            })
        };
        let beside = shortest(Care::Harmless).or_else(|| shortest(Care::Free)).or_else(|| shortest(Care::Under));
        let over = || Text { text: slot.text.clone(), size: TINY, place: Turned::text(mean, &slot.text, TINY, slot.turned), leader: None };
        let text = beside.unwrap_or_else(over);
        self.sheet.take(&text);
        self.apart.push(text);
    }
}

/// In the plane where it takes no panel's place, upright or turned; else off the roof; else where it harms least.
fn plane_name(sheet: &Sheet, number: usize, plane: &Plane) -> Text {
    const SIZES: [f64; 2] = [LABEL, 2.5];
    // An angle that was solved for has more digits than anyone reads.
    let pitch = plane.pitch();
    let label = if pitch.is_in_degrees() { format!("{}, {:.2} deg", plane.name(), pitch.angle().degrees()) } else { format!("{}, {pitch}", plane.name()) };
    let ring = sheet.fields.get(number).map_or(&[][..], |f| f.outer.as_slice());
    let middle = middle(ring);
    let area = bounds(ring);
    let steps = || (1_u8..12).map(|i| f64::from(i) / 12.0);
    let mut spots: Vec<Point> = steps()
        .flat_map(|v| steps().map(move |u| (u, v)))
        .map(|(u, v)| (area.low.0 + (area.high.0 - area.low.0) * u, area.low.1 + (area.high.1 - area.low.1) * v))
        .chain([middle])
        .collect();
    let off = |p: &Point| (p.0 - middle.0).abs().max((p.1 - middle.1).abs());
    spots.sort_by(|p, q| off(p).total_cmp(&off(q)));
    let box_of = |size: f64| (text_width(&label, size) + 1.5 + ARROW, (size * 0.9 + 0.6).max(ARROW + 0.4));
    let mut least: Option<(Harm, Text)> = None;
    for size in SIZES {
        for degrees in [0.0, -90.0] {
            for spot in &spots {
                let (width, height) = box_of(size);
                let place = Turned::new(*spot, width, height, degrees);
                if !sheet.is_inside(number, &place) || !sheet.is_free(&place) {
                    continue;
                }
                let harm = sheet.harm(&place);
                let text = Text { text: label.clone(), size, place, leader: None };
                if harm == Harm::default() {
                    return text;
                }
                if least.as_ref().is_none_or(|(l, _)| harm < *l) {
                    least = Some((harm, text));
                }
            }
        }
    }
    let down = -plane.down_slope().degrees();
    let size = SIZES.last().copied().unwrap_or(LABEL);
    let what = Beside { text: &label, size, extent: box_of(size), towards: down };
    let beside = sheet.stand_off(foot_of(ring, plane, middle), &what).filter(|t| sheet.is_outside(&t.place));
    let within = || least.map(|(_, text)| text);
    // A plane too small for its name has it on the planes around it, from wherever a leader can start.
    let apart = || spots.iter().filter(|s| is_within(ring, **s)).find_map(|s| sheet.stand_off(*s, &what));
    let fallback = || {
        let (width, height) = box_of(size);
        Text { text: label.clone(), size, place: Turned::new(middle, width, height, 0.0), leader: None }
    };
    beside.or_else(within).or_else(apart).unwrap_or_else(fallback)
}

/// A point of a plane just above where the fall from its middle leaves it.
fn foot_of(ring: &[Point], plane: &Plane, middle: Point) -> Point {
    let down = plane.down_slope();
    let (x, y) = (down.cos(), -down.sin());
    let crossings = ring.iter().zip(ring.iter().cycle().skip(1)).filter_map(|(a, b)| {
        let (ex, ey) = (b.0 - a.0, b.1 - a.1);
        let both = x * ey - y * ex;
        let (fx, fy) = (a.0 - middle.0, a.1 - middle.1);
        let (t, u) = ((fx * ey - fy * ex) / both, (fx * y - fy * x) / both);
        (t > 0.0 && (0.0..=1.0).contains(&u)).then_some(t)
    });
    let reach = (crossings.fold(f64::INFINITY, f64::min) - 0.6).max(0.0);
    if reach.is_finite() { (middle.0 + x * reach, middle.1 + y * reach) } else { middle }
}

/// Along the line: off the roof beside a free edge, else beside it in a plane, with its length if there is room for it.
fn line_name(sheet: &Sheet, line: &Line, length: &str, to_paper: &ToPaper) -> Text {
    const ALONG: [f64; 9] = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9];
    let (start, end) = (to_paper.point((line.start.x.mm(), line.start.y.mm())), to_paper.point((line.end.x.mm(), line.end.y.mm())));
    let (x, y) = (end.0 - start.0, end.1 - start.1);
    let run = num::hypot(x, y);
    // On the line's left, which on paper with y downwards is this way, lies its own plane.
    let left = (y / run, -x / run);
    let degrees = readable(num::atan2_deg(y, x));
    let towards = num::atan2_deg(-left.1, -left.0);
    let full = format!("{}, {length}", line.name);
    let spot = |t: f64, side: f64, text: &str| {
        let height = 2.0 * Turned::text((0.0, 0.0), text, SMALL, 0.0).half.1;
        let off = side * (height / 2.0 + 0.7);
        Turned::text((start.0 + x * t + left.0 * off, start.1 + y * t + left.1 * off), text, SMALL, degrees)
    };
    // A text longer than its line runs past one end of it.
    let flush = |text: &str| {
        let part = (Turned::text((0.0, 0.0), text, SMALL, 0.0).half.0 + 0.8) / run;
        [part, 1.0 - part]
    };
    let text = |text: &str, place: Turned| Text { text: text.to_owned(), size: SMALL, place, leader: None };
    for words in [full.as_str(), line.name.as_str()] {
        let free = |place: &Turned| sheet.is_free(place);
        if line.beyond == Beyond::Open
            && let Some(place) = ALONG.into_iter().chain(flush(words)).map(|t| spot(t, -1.0, words)).find(|p| sheet.is_outside(p) && free(p))
        {
            return text(words, place);
        }
        let own = (line.side.plane, 1.0);
        let other = line.other().map(|s| (s.plane, -1.0));
        let within = [Some(own), other].into_iter().flatten().flat_map(|(plane, side)| ALONG.iter().map(move |t| (plane, *t, side)));
        // The first that leaves the most room to panels, and takes no panel's place.
        let place = within
            .map(|(plane, t, side)| (plane, spot(t, side, words)))
            .filter(|(plane, p)| sheet.is_inside(*plane, p) && free(p))
            .map(|(_, p)| (sheet.harm(&p), p))
            .filter(|(harm, _)| harm.lost == 0)
            .min_by_key(|(harm, p)| harm.smaller + sheet.crowds(p));
        if let Some((_, place)) = place {
            return text(words, place);
        }
        // With its length at the end of a short leader rather than without it.
        let near = |t: &f64| sheet.stand_within((start.0 + x * t, start.1 + y * t), &Beside::new(words, SMALL, towards), LEADER, Care::Harmless);
        if let Some(apart) = [0.5, 0.3, 0.7].iter().find_map(near) {
            return apart;
        }
    }
    let apart = |words: &str| ALONG.iter().find_map(|t| sheet.stand_off((start.0 + x * t, start.1 + y * t), &Beside::new(words, SMALL, towards)));
    apart(&full).or_else(|| apart(&line.name)).unwrap_or_else(|| text(&line.name, spot(0.5, -1.0, &line.name)))
}

/// The kinds that occur, in as many columns as the sheet has room for.
struct Legend<'a> {
    kinds: &'a [LineKind],
    columns: usize,
    column: f64,
}

impl<'a> Legend<'a> {
    fn new(kinds: &'a [LineKind], width: f64) -> Legend<'a> {
        let column = kinds.iter().map(|k| text_width(k.name(), LABEL)).fold(0.0, f64::max) + 22.0;
        let columns = (2_usize..=4).rev().find(|c| f64::from(u32::try_from(*c).unwrap_or(1)) * column <= width).unwrap_or(1);
        Legend { kinds, columns, column }
    }

    fn rows(&self) -> usize {
        self.kinds.len().div_ceil(self.columns)
    }

    fn height(&self) -> f64 {
        ROW * self.kinds.chunks(self.columns).fold(0.0, |n, _| n + 1.0)
    }

    /// Down one column after another.
    fn draw(&self, svg: &mut Svg, top: f64) {
        let mut x = MARGIN;
        for column in self.kinds.chunks(self.rows().max(1)) {
            let mut y = top;
            for kind in column {
                y += ROW;
                svg.group("legend", look(*kind), |svg| svg.line((x, y - 2.2), (x + 14.0, y - 2.2)));
                svg.group("legend", Look::area(INK), |svg| svg.text((x + 16.0, y - 1.2), LABEL, Anchor::Start, 0.0, kind.name()));
            }
            x += self.column;
        }
    }
}

/// The centre of a ring's area.
fn middle(ring: &[Point]) -> Point {
    let first = ring.first().copied().unwrap_or_default();
    let (mut area, mut x, mut y) = (0.0, 0.0, 0.0);
    for (p, q) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let (p, q) = ((p.0 - first.0, p.1 - first.1), (q.0 - first.0, q.1 - first.1));
        let cross = p.0 * q.1 - q.0 * p.1;
        area += cross;
        x += (p.0 + q.0) * cross;
        y += (p.1 + q.1) * cross;
    }
    (first.0 + x / (3.0 * area), first.1 + y / (3.0 * area))
}
