//! A valley's pan seen square from above, laid flat about its centreline: what lies on it, how it widens, and how its lower end is cut.

use super::number::fixed;
use super::svg::{Anchor, Look, PaperUnit, Point, Svg, narrow_width};
use crate::assembly::{PanEndCut, PanEndLeg, PanEndOn};
use crate::error::{Error, ErrorKind};
use crate::junction::{LayoutLine, Side, Solved};
use crate::units::{Length, LengthFormat};

const WIDE: f64 = 96.0;
const LEFT: f64 = 24.0;
/// Of the pan above the end of its line, in millimetres of paper: to scale, then broken, then the upper end.
const ABOVE: f64 = 44.0;
const BREAK: f64 = 5.0;
const UPPER: f64 = 16.0;
const SIZE: f64 = 3.4;
const ROW: f64 = 4.4;
const INK: &str = "#000000";
const QUIET: &str = "#5a5a5a";
const METAL: &str = "#f1efe8";
const PANELS: &str = "#dbe7f0";

/// The plan of a valley's pan for the crew.
///
/// The lower end is at the foot of the page and to scale; above the break stands the upper end of the line. Lines that turn away from the centreline run straight from the one to the other.
///
/// ```
/// use seamwright::assembly::{PanEnd, PanEndOn, PanEndSide};
/// use seamwright::export::PanPlan;
/// use seamwright::junction::{BeadSize, Datum, LayoutLine, Side, Solved};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Length, LengthFormat};
/// let line = |name: &'static str, side, inches| LayoutLine {
///     name: name.into(), side, datum: Datum::JunctionLine, from_datum: Length::inches(inches), from_line: Length::inches(inches),
/// };
/// let lines = [Side::First, Side::Second].into_iter().flat_map(|s| [line("pan edge", s, 12), line("pan centreline", s, 0), line("panel nose", s, 3)]);
/// let solved = Solved { lines: lines.collect(), ..Solved::default() };
/// let leg = PanEndSide {
///     on: PanEndOn::Eave, angle: Angle::parse("131.8 deg")?, centre: Length::ZERO, edge: Length::inches(12), beyond: Length::inches(2), fold: Length::inches(1),
///     grows: None,
/// };
/// let bead = BeadSize { width: Length::parse("1/4\"")?, depth: Length::parse("1/4\"")? };
/// let cut = PanEnd { first: leg, second: leg, beads: 2, bead }.compute()?;
/// let svg = PanPlan { title: "valley 1", solved: &solved, end: Some(&cut), first_on_left: true, format: LengthFormat::parse("in/16")? }.svg()?;
/// assert!(svg.contains("end of the") && svg.contains("over the eave"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct PanPlan<'a> {
    /// What it is of.
    pub title: &'a str,
    /// The valley's section.
    pub solved: &'a Solved,
    /// Its lower end, where that is known.
    pub end: Option<&'a PanEndCut>,
    /// Whether one who looks up the valley has its first side on the left.
    pub first_on_left: bool,
    /// How lengths are written.
    pub format: LengthFormat,
}

/// One side's places from the junction line, in millimetres of the roof: at the lower end and at the upper.
struct Places {
    side: Side,
    lines: Vec<(&'static str, Length, Length)>,
}

impl Places {
    fn at(&self, name: &str) -> (f64, f64) {
        self.lines.iter().find(|(n, ..)| *n == name).map_or((0.0, 0.0), |(_, foot, top)| (foot.mm(), top.mm()))
    }
}

fn place(lines: &[LayoutLine], side: Side, name: &str) -> Option<Length> {
    lines.iter().find(|l| l.side == side && l.name == name).map(|l| l.from_line)
}

impl PanPlan<'_> {
    fn side(&self, side: Side) -> Result<Places, Error> {
        let top = &self.solved.lines;
        let foot = if self.solved.lower_lines.is_empty() { top } else { &self.solved.lower_lines };
        let missing = || Error::new(ErrorKind::Missing, "no pan of a valley lies there").at("solved.lines").accepts("a valley's pan edge, centreline and nose");
        let centre = place(foot, side, "pan centreline").ok_or_else(missing)?;
        let mut lines = Vec::new();
        for name in ["panel nose", "cleat screws", "pan edge"] {
            if let (Some(a), Some(b)) = (place(foot, side, name), place(top, side, name)) {
                lines.push((name, (a - centre).length()?, (b - centre).length()?));
            }
        }
        if !["panel nose", "pan edge"].iter().all(|n| lines.iter().any(|(l, ..)| l == n)) {
            return Err(missing());
        }
        Ok(Places { side, lines })
    }

    /// The drawing as SVG.
    ///
    /// # Errors
    /// [`ErrorKind::Missing`] for a section that is no valley's; those of writing a length in the format.
    pub fn svg(&self) -> Result<String, Error> {
        let sides = [self.side(Side::First)?, self.side(Side::Second)?];
        let widest = sides.iter().map(|s| s.at("pan edge").0.max(s.at("pan edge").1)).collect::<Vec<_>>();
        let scale = WIDE / widest.iter().sum::<f64>();
        let is_left = |side: Side| (side == Side::First) == self.first_on_left;
        let left_leg = if self.first_on_left { widest.first() } else { widest.last() };
        let axis = LEFT + left_leg.copied().unwrap_or_default() * scale;
        let cuts = self.end.map(|e| [&e.first, &e.second]);
        let lowest = cuts.iter().flatten().flat_map(|l| [l.at_centre, l.at_edge]).map(Length::mm).fold(0.0, f64::max) * scale;
        let foot = 8.0 + UPPER + BREAK + ABOVE;
        let notes = self.notes(&sides)?;
        let height = foot + lowest + 8.0 + notes.len() as f64 * ROW + 1.0;
        let mut svg = Svg::new(LEFT + WIDE + LEFT, height, PaperUnit::Millimetre, self.title);
        let top = foot - ABOVE - BREAK - UPPER;
        let x = |side: Side, out: f64| if is_left(side) { axis - out * scale } else { axis + out * scale };
        for (k, s) in sides.iter().enumerate() {
            let cut = cuts.and_then(|c| c.get(k).copied());
            let lower = |out: f64| -> f64 { cut.map_or(0.0, |l| cut_at(l, out)) * scale + foot };
            let (edge, nose) = (s.at("pan edge"), s.at("panel nose"));
            // Above the foot a leaning line stands between its two places.
            let on_line = |(at_foot, at_top): (f64, f64), y: f64| {
                let share = ((foot - y) / (foot - top)).max(0.0);
                (x(s.side, at_foot + (at_top - at_foot) * share), y)
            };
            let pan = [on_line(edge, top), on_line(edge, foot.min(lower(edge.0))), on_line(edge, lower(edge.0)), (axis, lower(0.0)), (axis, top)];
            svg.group("pan", Look { stroke: INK, width: 0.35, dashes: &[], fill: METAL }, |svg| svg.polyline(&pan, true));
            // Panels lie over the pan from their noses out, down to where their own plane ends.
            let panel_end = |out: f64| -> f64 {
                let own = cut.map_or(0.0, |l| fold_at(l, out));
                foot + if cut.is_some_and(|l| l.on == PanEndOn::Eave) { own * scale } else { own.min(0.0) * scale }
            };
            let panels = [
                on_line(nose, top),
                on_line(nose, foot.min(panel_end(nose.0))),
                on_line(nose, panel_end(nose.0)),
                on_line(edge, panel_end(edge.0)),
                on_line(edge, foot.min(panel_end(edge.0))),
                on_line(edge, top),
            ];
            svg.group("panels", Look { stroke: QUIET, width: 0.25, dashes: &[], fill: PANELS }, |svg| svg.polyline(&panels, true));
            if s.lines.iter().any(|(n, ..)| *n == "cleat screws") {
                let screws = s.at("cleat screws");
                let end = lower(screws.0).min(panel_end(screws.0));
                svg.group("cleat screws", Look::dashed(QUIET, 0.25, &[1.2, 1.2]), |svg| {
                    svg.polyline(&[on_line(screws, top), on_line(screws, foot.min(end)), on_line(screws, end)], false);
                });
            }
            svg.group("panels", Look::area(QUIET), |svg| {
                svg.narrow_text((x(s.side, f64::midpoint(nose.0, edge.0)), foot - ABOVE / 2.0), SIZE, Anchor::Middle, 0.0, "panels");
            });
            if let Some(leg) = cut.filter(|l| l.fold.is_positive()) {
                let at = |out: f64| foot + fold_at(leg, out) * scale;
                svg.group("fold", Look::dashed(INK, 0.3, &[2.0, 1.0]), |svg| svg.line((axis, at(0.0)), (x(s.side, edge.0), at(edge.0))));
            }
        }
        svg.group("centreline", Look::dashed(INK, 0.35, &[5.0, 1.2, 1.0, 1.2]), |svg| svg.line((axis, top - 3.0), (axis, foot + lowest + 3.0)));
        let (left, right) = (LEFT - 4.0, LEFT + WIDE + 4.0);
        svg.group("end of the valley's line", Look::dashed(INK, 0.3, &[3.0, 1.5]), |svg| svg.line((left, foot), (right, foot)));
        broken(&mut svg, (left, right), foot - ABOVE - BREAK);
        svg.group("words", Look::area(INK), |svg| {
            svg.narrow_text((axis + 1.5, top - 3.2), SIZE, Anchor::Start, 0.0, "up the valley");
            for (at, anchor, side) in [(left - 1.0, Anchor::End, Side::First), (right + 1.0, Anchor::Start, Side::Second)] {
                let text = if (side == Side::First) == self.first_on_left { "first side" } else { "second side" };
                svg.narrow_text((at, top + 5.0), SIZE, anchor, 0.0, text);
            }
            svg.narrow_text((right + 1.0, foot - 1.4), SIZE * 0.9, Anchor::Start, 0.0, "end of the");
            svg.narrow_text((right + 1.0, foot + 2.6), SIZE * 0.9, Anchor::Start, 0.0, "valley's line");
        });
        if let Some(cuts) = cuts {
            for (s, leg) in sides.iter().zip(cuts) {
                let edge = x(s.side, s.at("pan edge").0);
                let out = if is_left(s.side) { -3.0 } else { 3.0 };
                self.measured(&mut svg, (edge, foot), out, leg.at_edge, scale)?;
            }
        }
        let under = foot + lowest + 8.0;
        svg.group("notes", Look::area(INK), |svg| {
            for (k, note) in notes.iter().enumerate() {
                let wide = LEFT + WIDE + LEFT - 4.0;
                let size = SIZE * (wide / narrow_width(note, SIZE)).min(1.0);
                svg.narrow_text((2.0, under + (k as f64 + 0.8) * ROW), size, Anchor::Start, 0.0, note);
            }
        });
        Ok(svg.finish())
    }

    /// How far below or above the end of the line something lies, as an upright measure.
    fn measured(&self, svg: &mut Svg, (edge, foot): Point, out: f64, below: Length, scale: f64) -> Result<(), Error> {
        let (at, to) = (edge + out, foot + below.mm() * scale);
        if (to - foot).abs() < 0.5 {
            return Ok(());
        }
        let text = self.format.string(if below.is_negative() { (-below).length()? } else { below })?;
        svg.group("measure", Look::line(QUIET, 0.25), |svg| {
            svg.line((at, foot), (at, to));
            for y in [foot, to] {
                svg.line((at - 1.2, y), (at + 1.2, y));
            }
        });
        let beside = if out < 0.0 { at - 1.0 } else { at + 1.0 + SIZE * 0.72 };
        svg.group("measure", Look::area(INK), |svg| svg.narrow_text((beside, f64::midpoint(foot, to)), SIZE, Anchor::Middle, -90.0, &text));
        Ok(())
    }

    fn notes(&self, sides: &[Places; 2]) -> Result<Vec<String>, Error> {
        let mut out = Vec::new();
        let turns = sides.iter().flat_map(|s| &s.lines).any(|(_, foot, top)| foot != top);
        for s in sides {
            let name = if s.side == Side::First { "First" } else { "Second" };
            let told = |of: &dyn Fn(&(&'static str, Length, Length)) -> Length| -> Result<String, Error> {
                let each = s.lines.iter().map(|l| Ok(format!("{} {}", l.0, self.format.string(of(l))?))).collect::<Result<Vec<_>, Error>>()?;
                Ok(each.join(", "))
            };
            if turns {
                out.push(format!("{name} side from the centreline, at the top: {}", told(&|l| l.2)?));
                out.push(format!("{name} side from the centreline, at the foot: {}", told(&|l| l.1)?));
            } else {
                out.push(format!("{name} side from the centreline: {}", told(&|l| l.1)?));
            }
        }
        for (name, leg) in self.end.iter().flat_map(|e| [("First", &e.first), ("Second", &e.second)]) {
            out.push(format!("{name} side, cut {}, at {}\u{b0} to the centreline:", on(leg.on), fixed((leg.angle.degrees() * 2.0).round() / 2.0, 1)));
            out.push(format!("    {}", self.cut(leg)?));
        }
        out.push("Seen square to the pan; long stretches are broken out.".to_owned());
        Ok(out)
    }

    fn cut(&self, leg: &PanEndLeg) -> Result<String, Error> {
        let below = |at: Length| below(self.format, at);
        let fold = if leg.fold == Length::ZERO { String::new() } else { format!(", {} folded under", self.format.string(leg.fold)?) };
        Ok(format!("{} the end of the line at the centreline, {} it at the edge{fold}", below(leg.at_centre)?, below(leg.at_edge)?))
    }
}

/// So far below or above something, or at it.
pub(super) fn below(format: LengthFormat, at: Length) -> Result<String, Error> {
    let (size, way) = if at.is_negative() { ((-at).length()?, "above") } else { (at, "below") };
    let text = format.string(size)?;
    Ok(if format.string(Length::ZERO)? == text { "at".to_owned() } else { format!("{text} {way}") })
}

/// What a leg's end lies on.
pub(super) const fn on(what: PanEndOn) -> &'static str {
    match what {
        PanEndOn::Eave => "over the eave",
        PanEndOn::Roof => "level, over the roof below",
        PanEndOn::Against => "along what the plane ends against",
    }
}

/// How far down from the end of the line a leg's cut lies so far out from the centreline.
fn cut_at(leg: &PanEndLeg, out: f64) -> f64 {
    leg.at_centre.mm() - out * leg.angle.cos() / leg.angle.sin()
}

/// And its fold: on a raw end the cut itself.
fn fold_at(leg: &PanEndLeg, out: f64) -> f64 {
    cut_at(leg, out) - leg.fold_along.mm()
}

/// A break across the figure.
fn broken(svg: &mut Svg, (left, right): (f64, f64), at: f64) {
    let zigzag = |y: f64| -> Vec<Point> {
        let middle = f64::midpoint(left, right);
        vec![(left, y), (middle - 3.0, y), (middle - 1.0, y - 1.6), (middle + 1.0, y + 1.6), (middle + 3.0, y), (right, y)]
    };
    let (a, b) = (zigzag(at), zigzag(at + BREAK * 0.5));
    let area: Vec<Point> = a.iter().chain(b.iter().rev()).copied().collect();
    svg.group("break", Look::area("#ffffff"), |svg| svg.polyline(&area, true));
    svg.group("break", Look::line(QUIET, 0.3), |svg| {
        svg.polyline(&a, false);
        svg.polyline(&b, false);
    });
}
