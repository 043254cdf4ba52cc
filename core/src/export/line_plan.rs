//! A small plan of a line: what is struck on each side of it, laid flat about the junction line and seen from outside.

use super::junction_drawing::KeyEntry;
use super::number::fixed;
use super::svg::{Anchor, Look, PaperUnit, Svg, narrow_width};
use super::wording::skew_total;
use crate::assembly::StruckLine;
use crate::error::{Error, ErrorKind};
use crate::junction::{Datum, Side};
use crate::roof::LineKind;
use crate::units::{Angle, Length, LengthFormat};

const WIDTH: f64 = 60.0;
const TALLEST: f64 = 40.0;
pub(super) const LEFT: f64 = 1.5;
pub(super) const RIGHT: f64 = 25.0;
const LABEL: f64 = 29.0;
const SIZE: f64 = 3.3;
const ROW: f64 = 3.9;
/// Roof drawn beyond the outermost line of a side.
const BEYOND: f64 = 4.0;
const SEAMS_APART: f64 = 8.0;
const INK: &str = "#000000";
const QUIET: &str = "#5a5a5a";
const ROOF: &str = "#e3ecf3";
const FACE: &str = "#eeeeee";

/// A side of the line on which panels lie.
///
/// ```
/// use seamwright::export::PlanSide;
/// use seamwright::junction::Side;
/// use seamwright::units::{Angle, Length};
/// let south = PlanSide { side: Side::First, name: "south", skew: Angle::parse("33.5 deg")?, panels_from: Length::inches(-2) };
/// assert!(south.panels_from.is_negative()); // below a hip
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlanSide<'a> {
    /// Which side.
    pub side: Side,
    /// The plane's name.
    pub name: &'a str,
    /// Of the plane at the line, as [`roof::Side::skew`](crate::roof::Side::skew) has it.
    pub skew: Angle,
    /// Where its panels end, from the junction line with the sign of [`AlongLine::from_line`](crate::junction::AlongLine::from_line).
    pub panels_from: Length,
}

/// The plan of the lines that are struck along a junction, for the crew's sheet.
///
/// Distances across the line are to scale; seams stand at their true angle, and closer together than they are. Each line has its letter and its running total
/// from the junction line, and where the seams meet the line at a skew the total along a seam. Lines on a wall or on a face are drawn apart from those on the roof, and a step as its upper
/// deck, its riser and its lower deck, one under the other, each with its name and what its totals are measured from.
///
/// ```
/// use seamwright::assembly::{SideMeeting, StrikeChoice, StrikeLines};
/// use seamwright::export::{KeyEntry, LinePlan, PlanSide};
/// use seamwright::junction::{Datum, LayoutLine, Side};
/// use seamwright::record::Calculation;
/// use seamwright::roof::LineKind;
/// use seamwright::units::{Angle, Length, LengthFormat, Rounding, ShopRounding};
/// let at = Length::inches(-5);
/// let lines = [LayoutLine { name: "closure face".into(), side: Side::First, datum: Datum::JunctionLine, from_datum: at, from_line: at }];
/// let choice = StrikeChoice { tape: ShopRounding::new(Length::inches_64(4), Rounding::HalfAway)?, tolerance: Length::inches_64(4) };
/// let sides = [SideMeeting { side: Side::First, meeting: Angle::parse("56.5 deg")? }];
/// let struck = StrikeLines { lines: &lines, sides: &sides, choice }.compute()?;
/// let marks = [KeyEntry { mark: "A".into(), text: "closure face".into() }];
/// let south = PlanSide { side: Side::First, name: "south", skew: Angle::parse("33.5 deg")?, panels_from: Length::inches(-2) };
/// let svg = LinePlan::new("hip 1", LineKind::Hip, &struck, &marks, vec![south], LengthFormat::parse("in/16")?)?.svg()?;
/// assert!(svg.contains("A 5&quot;, seam 6&quot;") && svg.contains("south: seams at 56.5\u{b0}"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct LinePlan<'a> {
    title: &'a str,
    kind: LineKind,
    lines: &'a [StruckLine],
    marks: &'a [KeyEntry],
    sides: Vec<PlanSide<'a>>,
    format: LengthFormat,
}

/// What is struck on one surface, or on two that meet in the junction line.
struct Band<'a> {
    /// Which surface, where there are several.
    name: Option<String>,
    /// What its totals are measured from.
    zero: &'static str,
    lines: Vec<(&'a StruckLine, &'a KeyEntry)>,
    sides: Vec<&'a PlanSide<'a>>,
    /// A face that is no roof, laid flat.
    is_face: bool,
}

/// A band with its heights up the page.
struct Laid<'a> {
    band: Band<'a>,
    labels: Vec<Label>,
    scale: f64,
    /// Of what is drawn, and of the labels with it.
    drawn: (f64, f64),
    reach: (f64, f64),
}

/// A label with the height of its line and its own, up the page.
struct Label {
    line: f64,
    at: f64,
    text: String,
}

impl<'a> LinePlan<'a> {
    /// The plan of these struck lines, each with its mark; of a junction of this kind, with panels on these sides.
    ///
    /// # Errors
    /// [`ErrorKind::Conflict`] where the marks are not one for each line.
    pub fn new(
        title: &'a str,
        kind: LineKind,
        lines: &'a [StruckLine],
        marks: &'a [KeyEntry],
        sides: Vec<PlanSide<'a>>,
        format: LengthFormat,
    ) -> Result<LinePlan<'a>, Error> {
        if marks.len() != lines.len() {
            return Err(Error::new(ErrorKind::Conflict, "not a mark for each line")
                .at("marks")
                .value_of(marks.len())
                .accepts(format!("{} of them", lines.len())));
        }
        Ok(LinePlan { title, kind, lines, marks, sides, format })
    }

    /// Whether what is up the slope on this side is down the page: where both sides rise to the line or fall to it, the second is turned about.
    fn is_turned(&self, side: Side) -> bool {
        side == Side::Second && matches!(self.kind, LineKind::Ridge | LineKind::Hip | LineKind::Valley | LineKind::CurbBack | LineKind::ExpansionAlong)
    }

    /// Up the page, in millimetres of the roof.
    fn height(&self, side: Side, from_line: Length) -> f64 {
        if self.is_turned(side) { -from_line.mm() } else { from_line.mm() }
    }

    /// The surfaces from the top of the page down: one where all lines lie on the roof, else each by its name.
    fn bands(&self) -> Vec<Band<'_>> {
        let band = |name: Option<(&str, Side)>, zero, side: Option<Side>| {
            let sides: Vec<_> = self.sides.iter().filter(|s| side.is_none_or(|of| s.side == of)).collect();
            let name = name.map(|(what, of)| self.sides.iter().find(|s| s.side == of).map_or(format!("{what}:"), |s| format!("{what}, {}:", s.name)));
            let lines = self.lines.iter().zip(self.marks).filter(|(line, _)| side.is_none_or(|of| line.side == of)).collect();
            let is_face = side.is_some() && sides.is_empty();
            Band { name, zero, lines, sides, is_face }
        };
        let on = |side| self.lines.iter().any(|l| l.side == side);
        let (first, second) = (Some(Side::First), Some(Side::Second));
        let line = "0 junction line";
        if self.kind == LineKind::Step {
            let upper = band(Some(("Upper deck", Side::Second)), "0 edge of the deck", second);
            let riser = band(Some(("Riser", Side::Riser)), "0 edge of the upper deck", Some(Side::Riser));
            return vec![upper, riser, band(Some(("Lower deck", Side::First)), "0 foot of the riser", first)];
        }
        // What is struck on a wall or a face stands on no plane of the roof.
        if !on(Side::Second) || self.sides.is_empty() || self.sides.iter().any(|s| s.side == Side::Second) {
            return vec![band(None, line, None)];
        }
        let roof = band(Some(("Roof", Side::First)), line, first);
        match self.kind {
            LineKind::Headwall | LineKind::Sidewall | LineKind::CurbFront | LineKind::CurbSide => vec![band(Some(("Wall", Side::Second)), line, second), roof],
            LineKind::CurbBack => vec![roof, band(Some(("Wall", Side::Second)), line, second)],
            _ => vec![roof, band(Some(("Face", Side::Second)), line, second)],
        }
    }

    /// The least and the greatest height of a band, in millimetres of the roof.
    fn span(&self, band: &Band<'_>) -> (f64, f64) {
        let heights = band.lines.iter().map(|(l, _)| self.height(l.side, l.from_line.exact));
        let heights = heights.chain(band.sides.iter().map(|s| self.height(s.side, s.panels_from)));
        heights.fold((0.0, 0.0), |(low, high): (f64, f64), h| (low.min(h), high.max(h)))
    }

    fn laid<'b>(&self, band: Band<'b>, scale: f64) -> Result<Laid<'b>, Error> {
        let (low, high) = self.span(&band);
        let mut labels = self.labels(&band, scale)?;
        Self::spread(&mut labels);
        // A face or a wall ends at its own line; roof goes on beyond both.
        let beyond = |reach: f64| if band.is_face && reach == 0.0 { 0.0 } else { reach * scale + BEYOND };
        let drawn = (-beyond(-low), beyond(high));
        let name = if band.name.is_some() { ROW } else { 0.0 };
        let top = labels.iter().map(|l| l.at + ROW / 2.0).fold(drawn.1, f64::max) + name;
        let bottom = labels.iter().map(|l| l.at - ROW / 2.0).fold(drawn.0, f64::min);
        Ok(Laid { band, labels, scale, drawn, reach: (bottom, top) })
    }

    /// The lines across the page: each height with the text of its label.
    fn labels(&self, band: &Band<'_>, scale: f64) -> Result<Vec<Label>, Error> {
        let mut out = vec![Label { line: 0.0, at: 0.0, text: band.zero.to_owned() }];
        for (line, key) in &band.lines {
            let size = |l: Length| self.format.string(if l.is_negative() { (-l).length()? } else { l });
            let mut text = format!("{} {}", key.mark, size(line.from_line.read)?);
            // What is measured from a trim's edge runs from there along a seam too; the plan's totals are the junction line's.
            if let Some(seam) = skew_total(line).filter(|_| line.start == Datum::JunctionLine) {
                text.push_str(&format!(", seam {}", size(seam)?));
            }
            let height = self.height(line.side, line.from_line.exact) * scale;
            out.push(Label { line: height, at: height, text });
        }
        out.sort_by(|a, b| b.line.total_cmp(&a.line));
        Ok(out)
    }

    /// Labels apart by a row, each as near to its line as that leaves it.
    fn spread(labels: &mut [Label]) {
        // Groups that would overlap are set out about their middle; one pass downward merges each new label into the groups above it.
        let mut groups: Vec<(usize, usize, f64)> = Vec::new();
        for i in 0..labels.len() {
            let mut group = (i, i + 1, labels.get(i).map_or(0.0, |l| l.line));
            while let Some(above) = groups.last().copied() {
                let half = |g: (usize, usize, f64)| (g.1 - g.0) as f64 * ROW / 2.0;
                if above.2 - half(above) >= group.2 + half(group) {
                    break;
                }
                groups.pop();
                let (from, to) = (above.0, group.1);
                let heights: f64 = labels.iter().take(to).skip(from).map(|l| l.line).sum();
                group = (from, to, heights / (to - from) as f64);
            }
            groups.push(group);
        }
        for (from, to, middle) in groups {
            let top = middle + (to - from - 1) as f64 * ROW / 2.0;
            for (k, label) in labels.iter_mut().take(to).skip(from).enumerate() {
                label.at = top - k as f64 * ROW;
            }
        }
    }

    /// The angle of the seams and its bevel, as a rise off what it is nearer to, for a side that is not square.
    fn bevel(&self, side: &PlanSide<'_>) -> Result<Option<String>, Error> {
        let skew = side.skew.degrees().abs();
        if skew < 0.05 || runs_along(side.skew) {
            return Ok(None);
        }
        let angle = fixed(((90.0 - skew) * 2.0).round() / 2.0, 1);
        let base = if self.format.is_inch() { Length::inches(12) } else { Length::micrometres(100_000) };
        let tangent = side.skew.tan().abs();
        let rise = self.format.string(Length::from_mm(base.mm() * tangent.min(1.0 / tangent))?)?;
        let from = if tangent <= 1.0 { "square" } else { "the line" };
        Ok(Some(format!("{}: seams at {angle}\u{b0}, {rise} in {} off {from}", side.name, self.format.string(base)?)))
    }

    /// The drawing as SVG.
    ///
    /// # Errors
    /// Those of writing a length in the format.
    pub fn svg(&self) -> Result<String, Error> {
        let bands = self.bands();
        let tall: f64 = bands.iter().map(|b| self.span(b)).map(|(low, high)| high - low).sum();
        // Each surface beside the first has its name and its own line.
        let room = TALLEST - 3.0 * (bands.len() as f64 - 1.0);
        let scale = if tall > 0.0 { room / tall } else { 1.0 };
        let laid = bands.into_iter().map(|b| self.laid(b, scale)).collect::<Result<Vec<_>, Error>>()?;
        let mut notes = Vec::new();
        for side in &self.sides {
            notes.extend(self.bevel(side)?);
        }
        let has_seams = self.sides.iter().any(|s| !runs_along(s.skew));
        notes.push(if has_seams { "Laid flat; seams are farther apart." } else { "Laid flat, seen from outside." }.to_owned());
        let reach: f64 = laid.iter().map(|l| l.reach.1 - l.reach.0).sum();
        let height = reach + 1.0 + notes.len() as f64 * ROW + 1.0;
        let mut svg = Svg::new(WIDTH, height, PaperUnit::Millimetre, self.title);
        let mut below = 0.5;
        for one in &laid {
            self.draw(&mut svg, one, &|h| below + one.reach.1 - h);
            below += one.reach.1 - one.reach.0;
        }
        svg.group("notes", Look::area(QUIET), |svg| {
            for (i, note) in notes.iter().enumerate() {
                let size = fitted(note, SIZE * 0.92, WIDTH - LEFT - 0.5);
                svg.narrow_text((LEFT, below + (i as f64 + 0.9) * ROW), size, Anchor::Start, 0.0, note);
            }
        });
        Ok(svg.finish())
    }

    /// One band, its heights turned into places down the page.
    fn draw(&self, svg: &mut Svg, laid: &Laid<'_>, y: &impl Fn(f64) -> f64) {
        let (band, labels, (bottom, top)) = (&laid.band, &laid.labels, laid.drawn);
        let area = |svg: &mut Svg, colour, from: f64, to: f64| {
            svg.group("panels", Look::area(colour), |svg| svg.polyline(&[(LEFT, y(from)), (RIGHT, y(from)), (RIGHT, y(to)), (LEFT, y(to))], true));
        };
        if band.is_face {
            area(svg, FACE, bottom, top);
        }
        for side in &band.sides {
            let from = self.height(side.side, side.panels_from) * laid.scale;
            // Panels lie on the side of the page to which the slope's own sign points: up a slope that rises from the line, down one that falls.
            let to = if self.is_above(side) { top } else { bottom };
            area(svg, ROOF, from, to);
            svg.group("seams", Look::line(QUIET, 0.2), |svg| seams(svg, side.skew, from, to, y));
        }
        svg.group("lines", Look::line(INK, 0.25), |svg| {
            for label in labels {
                svg.line((LEFT, y(label.line)), (RIGHT, y(label.line)));
                svg.polyline(&[(RIGHT, y(label.line)), (LABEL - 2.0, y(label.at)), (LABEL - 0.6, y(label.at))], false);
            }
        });
        svg.group("junction line", Look::line(INK, 0.7), |svg| svg.line((LEFT, y(0.0)), (RIGHT, y(0.0))));
        svg.group("distances", Look::area(INK), |svg| {
            for label in labels {
                let size = fitted(&label.text, SIZE, WIDTH - LABEL - 0.5);
                svg.narrow_text((LABEL, y(label.at) + size * 0.35), size, Anchor::Start, 0.0, &label.text);
            }
        });
        if let Some(name) = &band.name {
            svg.group("surface", Look::area(INK), |svg| {
                let size = fitted(name, SIZE, WIDTH - LEFT - 0.5);
                svg.narrow_text((LEFT, y(laid.reach.1) + size), size, Anchor::Start, 0.0, name);
            });
        }
    }

    /// Whether this side's panels are drawn above the junction line.
    fn is_above(&self, side: &PlanSide<'_>) -> bool {
        let rises = match self.kind {
            LineKind::Eave | LineKind::Valley | LineKind::CurbBack | LineKind::Rake | LineKind::ExpansionAlong => true,
            kind if kind.parts_a_slope() => side.side == Side::Second,
            _ => false,
        };
        rises != self.is_turned(side.side)
    }
}

/// The size at which a text is no wider than this.
fn fitted(text: &str, size: f64, width: f64) -> f64 {
    size * (width / narrow_width(text, size)).min(1.0)
}

/// Whether the seams run along the line.
fn runs_along(skew: Angle) -> bool {
    skew.degrees().abs() > 89.95
}

/// Seams between two heights, cut at the sides of the figure. Above 0 of skew they lean to the right going up.
fn seams(svg: &mut Svg, skew: Angle, from: f64, to: f64, y: &impl Fn(f64) -> f64) {
    if runs_along(skew) {
        return;
    }
    let lean = skew.tan() * (to - from);
    let first = ((LEFT - lean.max(0.0) - 4.0) / SEAMS_APART).floor();
    let last = ((RIGHT - lean.min(0.0)) / SEAMS_APART).ceil();
    let mut at = first * SEAMS_APART + 5.0;
    while at <= last * SEAMS_APART {
        // The share of the seam, from 0 at its foot, that lies within the figure.
        let (enter, leave) = if lean == 0.0 {
            if (LEFT..=RIGHT).contains(&at) { (0.0, 1.0) } else { (1.0, 0.0) }
        } else {
            let (a, b) = ((LEFT - at) / lean, (RIGHT - at) / lean);
            (a.min(b).max(0.0), a.max(b).min(1.0))
        };
        if leave > enter {
            let point = |s: f64| (at + lean * s, y(from + (to - from) * s));
            svg.line(point(enter), point(leave));
        }
        at += SEAMS_APART;
    }
}
