//! A blank as SVG.

use super::blank_break::Break;
use super::blank_drawing::BlankDrawing;
use super::blank_dxf::bend_text;
use super::labels::{self, Wanted};
use super::svg::{Anchor, Go, Look, Svg, text_width};
use super::trim_drawing::GaugeEdge;
use super::trim_flat::bend_look;
use crate::error::Error;
use crate::num;
use crate::trim::{BlankEdge, BlankLine, Direction, Point};
use crate::units::{AreaUnit, Length};

const LABEL: f64 = 3.0;
const SMALL: f64 = 2.6;
const TITLE: f64 = 4.2;
const ROW: f64 = 4.6;
const MARGIN: f64 = 6.0;
/// Labels across the sheet stand at least this far apart.
const PITCH: f64 = 4.2;
const LEAD: f64 = 6.0;
const INK: &str = "#1b1b1b";
const METAL: &str = "#eceff1";
const QUIET: &str = "#5b6670";
/// A turn of the outline of fewer degrees is part of a curve.
const CORNER: f64 = 20.0;
/// More corners than this stay in the DXF.
const MOST_CORNERS: usize = 60;

/// Where the figure lies on paper.
struct Paper<'a> {
    broken: &'a Break,
    scale: f64,
    left: f64,
    /// The paper's y of the figure's lowest point.
    foot: f64,
    low: Point,
}

impl Paper<'_> {
    fn at(&self, p: Point) -> Result<(f64, f64), Error> {
        let (x, y) = self.low.to(p)?;
        Ok((self.left + x * self.scale, self.foot - self.broken.drawn(y) * self.scale))
    }
}

/// The direction of a stretch where it starts and where it ends, in degrees.
fn headings(edge: &BlankEdge) -> Result<(f64, f64), Error> {
    let (x, y) = edge.from.to(edge.to)?;
    let chord = num::atan2_deg(y, x);
    let half = edge.arc.map_or(0.0, |a| a.turn.degrees() / 2.0);
    Ok((chord - half, chord + half))
}

/// The corners that a crew marks: where the outline turns or becomes another side, and where bend lines end.
fn corners(drawing: &BlankDrawing<'_>) -> Result<Vec<Point>, Error> {
    let outline = &drawing.blank.outline;
    let mut out: Vec<Point> = Vec::new();
    for (edge, next) in outline.iter().zip(outline.iter().cycle().skip(1)) {
        let turn = (headings(next)?.0 - headings(edge)?.1 + 540.0) % 360.0 - 180.0;
        if edge.side != next.side || turn.abs() >= CORNER {
            out.push(edge.to);
        }
    }
    let ends = drawing.blank.bends.iter().flat_map(|b| &b.lines).flat_map(|l| [l.from, l.to]);
    out.extend(ends);
    out.sort_by_key(|p| (p.y, p.x));
    out.dedup();
    Ok(out)
}

fn outline_steps(drawing: &BlankDrawing<'_>, paper: &Paper<'_>) -> Result<Vec<Go>, Error> {
    let mut steps = Vec::new();
    let mut pen: Option<Point> = None;
    for edge in &drawing.blank.outline {
        let pieces = paper.broken.pieces(edge, paper.low)?;
        for (from, to) in pieces {
            if pen != Some(from) {
                steps.push(Go::Move(paper.at(from)?));
            }
            let on_paper = paper.at(to)?;
            steps.push(match edge.arc {
                Some(arc) => Go::Arc {
                    radius: arc.radius.mm() * paper.scale,
                    large: arc.turn.degrees().abs() > 180.0,
                    // y runs down on paper, so what turns counter-clockwise in the blank does so as it is seen.
                    clockwise: arc.turn.degrees() < 0.0,
                    to: on_paper,
                },
                None => Go::Line(on_paper),
            });
            pen = Some(to);
        }
    }
    Ok(steps)
}

/// The outline closed within each part, for its fill.
fn fill_parts(drawing: &BlankDrawing<'_>, paper: &Paper<'_>) -> Result<Vec<Vec<(f64, f64)>>, Error> {
    let mut parts = vec![Vec::new(), Vec::new()];
    for edge in &drawing.blank.outline {
        for (from, to) in paper.broken.pieces(edge, paper.low)? {
            let upper = usize::from(paper.broken.is_upper(paper.low.to(from)?.1.max(paper.low.to(to)?.1)));
            if let Some(part) = parts.get_mut(upper) {
                part.push(paper.at(from)?);
                part.push(paper.at(to)?);
            }
        }
    }
    parts.retain(|p| p.len() > 2);
    Ok(parts)
}

/// Whether a line is named beside it, and not over the figure: it runs across the sheet rather than along it, or goes on where another ends, away from the upper end.
fn is_named_beside(line: &BlankLine) -> bool {
    line.from.to(line.to).is_ok_and(|(x, y)| x.abs() >= y.abs() * 0.5 || y < 0.0)
}

/// A label over or under the figure, on its line.
struct Mark {
    x: f64,
    y: f64,
    text: String,
}

fn sorted(mut marks: Vec<Mark>) -> (Vec<Mark>, Vec<f64>) {
    marks.sort_by(|a, b| a.x.total_cmp(&b.x));
    let xs: Vec<f64> = marks.iter().map(|m| m.x).collect();
    let places = labels::spread(&xs, PITCH);
    (marks, places)
}

fn marks(drawing: &BlankDrawing<'_>, paper: &Paper<'_>) -> Result<(Vec<Mark>, Vec<Mark>), Error> {
    let (mut below, mut above) = (Vec::new(), Vec::new());
    let ends = |line: Option<&BlankLine>, far: bool| line.map(|l| if far { l.to } else { l.from });
    let stations = drawing.stations.as_ref();
    for (i, bend) in drawing.blank.bends.iter().enumerate() {
        if let Some(p) = ends(bend.lines.last().filter(|l| !is_named_beside(l)), true) {
            let (x, y) = paper.at(p)?;
            let mut text = bend_text(bend);
            if let Some(s) = stations.filter(|s| s.near != s.far)
                && let Some(station) = s.far.get(i)
            {
                text = format!("{text}, {}", drawing.running(*station, s.girths.1)?);
            }
            above.push(Mark { x, y, text });
        }
        if let (Some(p), Some(s)) = (ends(bend.lines.first(), false), stations)
            && let Some(station) = s.near.get(i)
        {
            let (x, y) = paper.at(p)?;
            below.push(Mark { x, y, text: drawing.running(*station, s.girths.0)? });
        }
    }
    if let Some(s) = stations {
        let outline = &drawing.blank.outline;
        let side = |side: crate::trim::BlankSide| outline.iter().find(|e| e.side == side);
        let (start, end) = (side(crate::trim::BlankSide::StartEdge), side(crate::trim::BlankSide::EndEdge));
        for (edge, station) in [(start.map(|e| e.to), Length::ZERO), (end.map(|e| e.from), s.girths.0)] {
            if let Some(p) = edge {
                let (x, y) = paper.at(p)?;
                below.push(Mark { x, y, text: drawing.running(station, s.girths.0)? });
            }
        }
        if s.near != s.far || s.girths.0 != s.girths.1 {
            for (edge, station) in [(start.map(|e| e.from), Length::ZERO), (end.map(|e| e.to), s.girths.1)] {
                if let Some(p) = edge {
                    let (x, y) = paper.at(p)?;
                    above.push(Mark { x, y, text: drawing.running(station, s.girths.1)? });
                }
            }
        }
    }
    Ok((below, above))
}

/// The side that distances across run from.
fn heavy(drawing: &BlankDrawing<'_>) -> crate::trim::BlankSide {
    match drawing.gauge {
        GaugeEdge::Start => crate::trim::BlankSide::StartEdge,
        GaugeEdge::End => crate::trim::BlankSide::EndEdge,
    }
}

pub(super) fn svg(drawing: &BlankDrawing<'_>) -> Result<String, Error> {
    let blank = drawing.blank;
    let bounds = blank.bounds()?;
    let (width, height) = bounds.size()?;
    let broken = Break::of(blank, bounds, width.mm())?;
    let (scale, said) = drawing.scale(width.mm().max(broken.drawn(height.mm())));

    let corners = corners(drawing)?;
    let shown = corners.len().min(MOST_CORNERS);
    let gauged = blank.outline.iter().any(|e| e.side == heavy(drawing));
    let across = if gauged { format!("the {}, drawn heavy", drawing.edge_name()) } else { "the leftmost corner".to_owned() };
    let mut notes = vec![
        format!("Upper face up. Distances across run from {across}; along from the lowest corner."),
        format!("Scale {said}{}. Sheet {}.", broken.said(), drawing.format.fine()?.string(blank.thickness)?),
        format!("Box {} by {}, area {} m2.", drawing.text(width)?, drawing.text(height)?, super::number::fixed(blank.area()?.get(AreaUnit::SquareMetre), 4)),
    ];
    if shown < corners.len() {
        notes.push(format!("{} further corners stand in the DXF.", corners.len() - shown));
    }
    let row = |i: usize, p: &Point| -> Result<String, Error> {
        let across = match drawing.gauge {
            GaugeEdge::Start => (p.x - bounds.least.x).length()?,
            GaugeEdge::End => (bounds.greatest.x - p.x).length()?,
        };
        Ok(format!("{}: {} across, {} along", i + 1, drawing.text(across)?, drawing.text((p.y - bounds.least.y).length()?)?))
    };
    let rows: Vec<String> = corners.iter().take(shown).enumerate().map(|(i, p)| row(i, p)).collect::<Result<_, _>>()?;

    // Everything is laid with the figure's lower left at the origin first, then moved to where its labels leave room.
    let at_origin = Paper { broken: &broken, scale, left: 0.0, foot: 0.0, low: bounds.least };
    let (below, above) = marks(drawing, &at_origin)?;
    let longest = |marks: &[Mark]| marks.iter().map(|m| text_width(&m.text, LABEL)).fold(0.0, f64::max);
    let (up, down) = (longest(&above), longest(&below));
    let ((below, below_places), (above, above_places)) = (sorted(below), sorted(above));
    let (w, h) = (width.mm() * scale, broken.drawn(height.mm()) * scale);
    // Numbers of corners keep off the outline and off each other.
    let mut chords = Vec::new();
    for edge in &blank.outline {
        for (from, to) in broken.pieces(edge, bounds.least)? {
            let flip = |p: (f64, f64)| (p.0, -p.1);
            chords.push((flip(at_origin.at(from)?), flip(at_origin.at(to)?)));
        }
    }
    for line in blank.bends.iter().flat_map(|b| &b.lines) {
        for (from, to) in broken.line_pieces(line, bounds.least)? {
            let flip = |p: (f64, f64)| (p.0, -p.1);
            chords.push((flip(at_origin.at(from)?), flip(at_origin.at(to)?)));
        }
    }
    // Nor do they stand on the leaders, which run straight up and down from the figure.
    let reach = h + w + LEAD;
    chords.extend(above.iter().map(|m| ((m.x, -m.y), (m.x, -m.y + reach))));
    chords.extend(below.iter().map(|m| ((m.x, -m.y), (m.x, -m.y - reach))));
    let mut wanted = Vec::with_capacity(shown);
    for bend in &blank.bends {
        let Some(line) = bend.lines.first().filter(|l| is_named_beside(l)) else { continue };
        let ((ax, ay), (bx, by)) = (at_origin.at(line.from)?, at_origin.at(line.to)?);
        let (text, aside) = (bend_text(bend), if bx > ax { (ay - by, ax - bx) } else { (by - ay, bx - ax) });
        let anchor = ((ax + bx) / 2.0, -(ay + by) / 2.0);
        wanted.push(Wanted { width: text_width(&text, SMALL), height: SMALL, text, anchor, towards: (-aside.0, aside.1), one_side: false });
    }
    for (i, p) in corners.iter().take(shown).enumerate() {
        let (x, y) = at_origin.at(*p)?;
        let text = (i + 1).to_string();
        let towards = (if x < w / 2.0 { 1.0 } else { -1.0 }, if -y < h / 2.0 { 1.0 } else { -1.0 });
        wanted.push(Wanted { width: text_width(&text, SMALL), height: SMALL, text, anchor: (x, -y), towards, one_side: false });
    }
    let numbers = labels::place(wanted, &chords, 0.4);
    let (mut low, mut high, mut top_reach, mut foot_reach) = (0.0_f64, w, h, 0.0_f64);
    for place in below_places.iter().chain(&above_places) {
        (low, high) = (low.min(place - PITCH / 2.0), high.max(place + PITCH / 2.0));
    }
    for n in &numbers {
        (low, high) = (low.min(n.area.low.0 - 0.5), high.max(n.area.high.0 + 0.5));
        (foot_reach, top_reach) = (foot_reach.min(n.area.low.1 - 0.5), top_reach.max(n.area.high.1 + 0.5));
    }
    let table_width = rows.iter().map(|t| text_width(t, LABEL)).fold(0.0, f64::max);
    let text_most = notes.iter().map(|n| text_width(n, LABEL)).fold(text_width(drawing.name, TITLE).max(table_width), f64::max);
    let inner = text_most.max(high - low);
    let left = MARGIN + (inner - (high - low)) / 2.0 - low;
    let top = MARGIN + TITLE + 3.0 + up + LEAD + 1.0;
    let foot = top + top_reach;
    let paper = Paper { left, foot, ..at_origin };
    let floor = foot - foot_reach;
    let legend_y = floor + LEAD + down + 6.0;
    // The table in as many columns as fit.
    let column = table_width + 6.0;
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small count of columns")]
    let columns = (((inner + 6.0) / column).floor().max(1.0) as usize).min(rows.len().max(1));
    let per_column = rows.len().div_ceil(columns);
    let number = |n: usize| f64::from(u32::try_from(n).unwrap_or(u32::MAX));
    let table_y = legend_y + ROW * (1.0 + number(notes.len())) + 2.0;
    let page_height = table_y + ROW * number(per_column) + MARGIN;

    let mut svg = Svg::new(inner + 2.0 * MARGIN, page_height, drawing.paper, drawing.name);
    svg.group("name", Look::area(INK), |svg| svg.text((MARGIN, MARGIN + TITLE * 0.8), TITLE, Anchor::Start, 0.0, drawing.name));
    let steps = outline_steps(drawing, &paper)?;
    if broken.is_broken() {
        let parts = fill_parts(drawing, &paper)?;
        svg.group("metal", Look::area(METAL), |svg| parts.iter().for_each(|p| svg.polyline(p, true)));
        svg.group("blank", Look::line(INK, 0.25), |svg| svg.path(&steps));
        let marks = broken.marks(blank, bounds.least)?.into_iter().map(|line| line.into_iter().map(|p| paper.at(p)).collect::<Result<Vec<_>, _>>());
        let marks = marks.collect::<Result<Vec<_>, Error>>()?;
        svg.group("break", Look::line(QUIET, 0.18), |svg| marks.iter().for_each(|m| svg.polyline(m, false)));
    } else {
        let closed: Vec<Go> = steps.into_iter().chain([Go::Close]).collect();
        svg.group("blank", Look { stroke: INK, width: 0.25, dashes: &[], fill: METAL }, |svg| svg.path(&closed));
    }
    let mut gauge_lines = Vec::new();
    for edge in blank.outline.iter().filter(|e| e.side == heavy(drawing)) {
        for (from, to) in broken.pieces(edge, bounds.least)? {
            gauge_lines.push((paper.at(from)?, paper.at(to)?));
        }
    }
    svg.group("gauging edge", Look::line(INK, 0.9), |svg| gauge_lines.iter().for_each(|(a, b)| svg.line(*a, *b)));
    let mut holes = Vec::new();
    for hole in &blank.holes {
        holes.push((paper.at(hole.centre)?, hole.diameter.mm() / 2.0 * scale));
    }
    svg.group("holes", Look { stroke: INK, width: 0.25, dashes: &[], fill: "#ffffff" }, |svg| holes.iter().for_each(|(c, r)| svg.circle(*c, *r)));
    let legend = [(Direction::Up, "bend up"), (Direction::Down, "bend down")];
    for (direction, name) in legend {
        let mut lines = Vec::new();
        for line in blank.bends.iter().filter(|b| b.direction == direction).flat_map(|b| &b.lines) {
            for (from, to) in broken.line_pieces(line, bounds.least)? {
                lines.push((paper.at(from)?, paper.at(to)?));
            }
        }
        svg.group(name, bend_look(direction), |svg| lines.iter().for_each(|(a, b)| svg.line(*a, *b)));
    }
    let (top_row, foot_row) = (top, floor);
    svg.group("leaders", Look::line(QUIET, 0.13), |svg| {
        for (m, place) in above.iter().zip(&above_places) {
            svg.polyline(&[(left + m.x, foot + m.y), (left + m.x, top_row - 1.0), (left + place, top_row - LEAD + 1.0), (left + place, top_row - LEAD)], false);
        }
        for (m, place) in below.iter().zip(&below_places) {
            svg.polyline(
                &[(left + m.x, foot + m.y), (left + m.x, foot_row + 1.0), (left + place, foot_row + LEAD - 1.0), (left + place, foot_row + LEAD)],
                false,
            );
        }
        for (a, b) in numbers.iter().filter_map(|n| n.leader) {
            svg.line((left + a.0, foot - a.1), (left + b.0, foot - b.1));
        }
    });
    svg.group("bends", Look::area(INK), |svg| {
        for (m, place) in above.iter().zip(&above_places) {
            svg.text((left + place + LABEL * 0.35, top_row - LEAD - 0.8), LABEL, Anchor::Start, -90.0, &m.text);
        }
    });
    svg.group("running distances", Look::area(INK), |svg| {
        for (m, place) in below.iter().zip(&below_places) {
            svg.text((left + place + LABEL * 0.35, foot_row + LEAD + 0.8), LABEL, Anchor::End, -90.0, &m.text);
        }
    });
    svg.group("corners", Look::area(QUIET), |svg| {
        for n in &numbers {
            let centre = ((n.area.low.0 + n.area.high.0) / 2.0, n.area.low.1);
            svg.text((left + centre.0, foot - centre.1 - SMALL * 0.12), SMALL, Anchor::Middle, 0.0, &n.text);
        }
    });
    let mut x = MARGIN;
    for (direction, name) in legend {
        svg.group("legend", bend_look(direction), |svg| svg.line((x, legend_y + ROW - 2.2), (x + 12.0, legend_y + ROW - 2.2)));
        svg.group("legend", Look::area(INK), |svg| svg.text((x + 14.0, legend_y + ROW - 1.2), LABEL, Anchor::Start, 0.0, name));
        x += 20.0 + text_width(name, LABEL);
    }
    svg.group("notes", Look::area(QUIET), |svg| {
        for (i, note) in notes.iter().enumerate() {
            svg.text((MARGIN, legend_y + ROW * (2.0 + number(i)) - 1.2), LABEL, Anchor::Start, 0.0, note);
        }
    });
    svg.group("table of corners", Look::area(INK), |svg| {
        for (i, row) in rows.iter().enumerate() {
            let (c, r) = (i / per_column.max(1), i % per_column.max(1));
            svg.text((MARGIN + column * number(c), table_y + ROW * (1.0 + number(r)) - 1.2), LABEL, Anchor::Start, 0.0, row);
        }
    });
    Ok(svg.finish())
}
