//! The folded section of a trim.

use super::dxf::{DrawingUnit, Dxf, Layer, LineType, Vertex};
use super::fold::{Drawn, Fold, Point, Stretch, Trace, left_of};
use super::labels::{self, Area, Placed, Wanted};
use super::number::degrees;
use super::svg::{Anchor, Go, Look, Svg, text_width};
use super::trim_drawing::{TrimDrawing, bend_name, letter};
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::trim::{Direction, Edge, Face, LegEnd, Part};

const LABEL: f64 = 3.0;
const TITLE: f64 = 4.2;
const ROW: f64 = 4.6;
const MARGIN: f64 = 6.0;
/// A label keeps this far from the sheet's faces.
const CLEAR: f64 = 0.9;
const INK: &str = "#1b1b1b";
const METAL: &str = "#d9dde0";
const PAINT: &str = "#b3401a";
const QUIET: &str = "#5b6670";

const SHEET_OUTLINE: Layer = Layer { name: "SHEET-OUTLINE", colour: 7, line_type: LineType::Continuous };
const PAINTED_FACE: Layer = Layer { name: "PAINTED-FACE", colour: 30, line_type: LineType::Continuous };
const LAYERS: &[Layer] = &[SHEET_OUTLINE, PAINTED_FACE];

/// A section with its labels in place, y upwards, in millimetres of paper.
pub(super) struct Laid {
    pub(super) fold: Fold,
    pub(super) labels: Vec<Placed>,
    scale: String,
}

/// The most bends of a section with labels: each label is held against every other.
const MOST_BENDS: usize = 500;

/// Folds the section at its scale and places its labels.
pub(super) fn lay(drawing: &TrimDrawing<'_>) -> Result<Laid, Error> {
    let bends = drawing.flat.bends().len();
    if bends > MOST_BENDS {
        return Err(Error::new(ErrorKind::TooLarge, "too many bends for a section with labels")
            .at("profile.bends")
            .value_of(bends)
            .accepts(format!("at most {MOST_BENDS}"))
            .cured_by("its DXF, or its flat, which know no limit"));
    }
    let turned = drawing.turned.degrees();
    let extent = Fold::of(&drawing.flat, Drawn::truly(1.0, turned)).extent();
    let (scale, said) = drawing.scale((extent.high.0 - extent.low.0).max(extent.high.1 - extent.low.1));
    let fold = Fold::of(&drawing.flat, Drawn { scale, least_thickness: 0.7, least_radius: 0.3, turned });
    let chords = fold.chords();
    let labels = labels::place(wanted(drawing, &fold)?, &chords, fold.half + CLEAR);
    Ok(Laid { fold, labels, scale: said })
}

fn label(text: String, anchor: Point, towards: Point) -> Wanted {
    Wanted { width: text_width(&text, LABEL), height: LABEL, text, anchor, towards, one_side: false }
}

fn middle(a: Point, b: Point) -> Point {
    ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0)
}

fn wanted(drawing: &TrimDrawing<'_>, fold: &Fold) -> Result<Vec<Wanted>, Error> {
    let extent = fold.extent();
    let centre = middle(extent.low, extent.high);
    // Labels stand outside the figure rather than in it.
    let outwards = |anchor: Point, heading: f64| {
        let left = left_of((0.0, 0.0), heading, 1.0);
        let out = left.0 * (anchor.0 - centre.0) + left.1 * (anchor.1 - centre.1);
        if out < 0.0 { (-left.0, -left.1) } else { left }
    };
    let (mut legs, mut bends) = (Vec::new(), Vec::new());
    let mut longest: (f64, Point, f64) = (-1.0, (0.0, 0.0), 0.0);
    for stretch in &fold.stretches {
        match *stretch {
            Stretch::Leg { part, from, to, heading } => {
                let anchor = middle(from, to);
                let length = num::hypot(to.0 - from.0, to.1 - from.1);
                if length > longest.0 {
                    // Away from the middle, where the leg's own dimension stands, and from a hem that lies on the leg.
                    let part_way = if part == Part::Body(0) && drawing.profile.start_edge != Edge::Raw { 0.75 } else { 0.25 };
                    longest = (length, (from.0 + (to.0 - from.0) * part_way, from.1 + (to.1 - from.1) * part_way), heading);
                }
                let text = match part {
                    Part::Body(i) => match drawing.profile.legs.get(i) {
                        Some(leg) => format!("{} {}", letter(i), drawing.text(leg.length)?),
                        None => letter(i),
                    },
                    hem => match edge_of(drawing, hem) {
                        // Its straight rest lies within the curl, which has the label.
                        Some(Edge::WiredEdge { .. }) => continue,
                        Some(edge) => edge_text(edge, drawing)?,
                        // A lip lies inside the hem, which says how wide both are.
                        None => continue,
                    },
                };
                legs.push(label(text, anchor, outwards(anchor, heading)));
            }
            Stretch::Bend { part, centre: pivot, radius, heading, sweep, .. } => {
                let turn = if sweep < 0.0 { -1.0 } else { 1.0 };
                let anchor = left_of(pivot, heading + sweep / 2.0, -turn * radius);
                let out = (anchor.0 - pivot.0, anchor.1 - pivot.1);
                match part {
                    Part::Body(_) => bends.push(label(format!("{}: {}", bend_name(part), degrees(sweep.abs())), anchor, out)),
                    hem => {
                        if let Some(edge @ Edge::WiredEdge { .. }) = edge_of(drawing, hem) {
                            legs.push(label(edge_text(edge, drawing)?, anchor, out));
                        }
                    }
                }
            }
        }
    }
    let (_, anchor, heading) = longest;
    let side = if drawing.profile.painted == Face::Upper { 1.0 } else { -1.0 };
    let painted = label("painted face".to_owned(), left_of(anchor, heading, side * fold.half), left_of((0.0, 0.0), heading, side));
    let mut all = vec![Wanted { one_side: true, ..painted }];
    if let Some(Stretch::Leg { from, heading, .. }) = fold.stretches.first() {
        all.push(label("start".to_owned(), *from, (-num::cos_deg(*heading), -num::sin_deg(*heading))));
    }
    all.append(&mut legs);
    all.append(&mut bends);
    Ok(all)
}

/// The edge that this part is the hem of; a lip has none.
fn edge_of<'a>(drawing: &'a TrimDrawing<'_>, part: Part) -> Option<&'a Edge> {
    match part {
        Part::StartHem => Some(&drawing.profile.start_edge),
        Part::EndHem => Some(&drawing.profile.end_edge),
        _ => None,
    }
}

/// What is said of an edge: how wide its hem is, or what it is curled round.
fn edge_text(edge: &Edge, drawing: &TrimDrawing<'_>) -> Result<String, Error> {
    Ok(match edge {
        Edge::ClosedHem { width, .. } | Edge::OpenHem { width, .. } => format!("hem {}", drawing.text(*width)?),
        Edge::DoubleHem { width, .. } => format!("double hem {}", drawing.text(*width)?),
        Edge::TeardropHem { inside_radius, return_flat, .. } => {
            format!("teardrop hem {}, radius {}", drawing.text(*return_flat)?, drawing.fine_text(*inside_radius)?)
        }
        Edge::WiredEdge { wire, .. } => format!("wire {}", drawing.text(*wire)?),
        _ => "edge".to_owned(),
    })
}

const fn end_name(end: LegEnd) -> &'static str {
    match end {
        LegEnd::SheetEdge => "sheet's edge",
        LegEnd::OuterCorner => "outer corner",
        LegEnd::InnerCorner => "inner corner",
        LegEnd::OuterTangent => "outermost line",
        LegEnd::Tangent => "tangent line",
    }
}

/// The schedule below the figure, column by column.
fn schedule(drawing: &TrimDrawing<'_>) -> Result<Vec<[String; 4]>, Error> {
    let mut rows = Vec::new();
    for (i, leg) in drawing.profile.legs.iter().enumerate() {
        rows.push([letter(i), leg.name.to_string(), drawing.text(leg.length)?, format!("{} to {}", end_name(leg.start), end_name(leg.end))]);
    }
    for bend in drawing.flat.bends() {
        let way = match bend.direction {
            Direction::Up => "up",
            Direction::Down => "down",
        };
        rows.push([
            bend_name(bend.part),
            format!("bend {way}"),
            degrees(bend.angle.degrees()),
            format!("inside radius {}, {}", drawing.fine_text(bend.inside_radius)?, drawing.flat.rule_of(bend).name()),
        ]);
    }
    Ok(rows)
}

fn path(start: Point, traces: &[Trace], close: bool, map: impl Fn(Point) -> Point) -> Vec<Go> {
    let mut steps = vec![Go::Move(map(start))];
    for trace in traces {
        steps.push(match *trace {
            Trace::Line { to } => Go::Line(map(to)),
            // Paper's y runs down, so counter-clockwise stays counter-clockwise to the eye.
            Trace::Arc { radius, sweep, to } => Go::Arc { radius, large: sweep.abs() > 180.0, clockwise: sweep < 0.0, to: map(to) },
        });
    }
    if close {
        steps.push(Go::Close);
    }
    steps
}

pub(super) fn svg(drawing: &TrimDrawing<'_>) -> Result<String, Error> {
    let Laid { fold, labels, scale } = lay(drawing)?;
    let mut area = fold.extent();
    for placed in &labels {
        area.cover(placed.area.low);
        area.cover(placed.area.high);
    }
    let rows = schedule(drawing)?;
    let mut notes = vec![format!("Scale {scale}, sheet {}, girth {}.", drawing.fine_text(drawing.flat.thickness())?, drawing.text(drawing.flat.girth())?)];
    if !fold.is_true {
        notes.push("The sheet is drawn thicker than it is and its bends are opened to match; the figures are true.".to_owned());
    }
    let columns: Vec<f64> = (0..4).map(|c| rows.iter().map(|r| r.get(c).map_or(0.0, |t| text_width(t, LABEL))).fold(0.0, f64::max) + 3.0).collect();
    let head = MARGIN + TITLE + 3.0;
    let figure_width = area.high.0 - area.low.0;
    let inner = notes.iter().map(|n| text_width(n, LABEL)).fold(columns.iter().sum::<f64>(), f64::max).max(text_width(drawing.name, TITLE)).max(figure_width);
    let foot = head + (area.high.1 - area.low.1) + 6.0;
    let lines = |count: usize| f64::from(u32::try_from(count).unwrap_or(u32::MAX)) * ROW;
    let height = foot + lines(rows.len() + notes.len()) + MARGIN;
    let shift = MARGIN + (inner - figure_width) / 2.0;
    let map = |p: Point| (p.0 - area.low.0 + shift, area.high.1 - p.1 + head);

    let mut svg = Svg::new(inner + 2.0 * MARGIN, height, drawing.paper, drawing.name);
    svg.group("name", Look::area(INK), |svg| svg.text((MARGIN, MARGIN + TITLE * 0.8), TITLE, Anchor::Start, 0.0, drawing.name));
    let (start, outline) = fold.outline();
    svg.group("sheet", Look { stroke: INK, width: 0.18, dashes: &[], fill: METAL }, |svg| svg.path(&path(start, &outline, true, map)));
    let (start, face) = fold.face(drawing.profile.painted);
    svg.group("painted face", Look::line(PAINT, 0.4), |svg| svg.path(&path(start, &face, false, map)));
    svg.group("leaders", Look::line(QUIET, 0.13), |svg| {
        for (from, to) in labels.iter().filter_map(|p| p.leader) {
            svg.line(map(from), map(to));
        }
    });
    svg.group("dimensions", Look::area(INK), |svg| {
        for placed in &labels {
            let p = map(((placed.area.low.0 + placed.area.high.0) / 2.0, placed.area.low.1));
            svg.text((p.0, p.1 - LABEL * 0.18), LABEL, Anchor::Middle, 0.0, &placed.text);
        }
    });
    svg.group("schedule", Look::area(INK), |svg| {
        for (y, row) in (1_u32..).zip(&rows) {
            let mut x = MARGIN;
            for (text, width) in row.iter().zip(&columns) {
                svg.text((x, foot + ROW * f64::from(y) - 1.2), LABEL, Anchor::Start, 0.0, text);
                x += width;
            }
        }
    });
    svg.group("notes", Look::area(QUIET), |svg| {
        for (y, note) in (1_u32..).zip(&notes) {
            svg.text((MARGIN, foot + lines(rows.len()) + ROW * f64::from(y) - 0.4), LABEL, Anchor::Start, 0.0, note);
        }
    });
    Ok(svg.finish())
}

fn vertices(start: Point, traces: &[Trace]) -> Vec<Vertex> {
    let mut out = vec![Vertex { at: start, bulge: 0.0 }];
    for trace in traces {
        let (to, bulge) = match *trace {
            Trace::Line { to } => (to, 0.0),
            Trace::Arc { sweep, to, .. } => (to, num::tan_deg(sweep / 4.0)),
        };
        if let Some(last) = out.last_mut() {
            last.bulge = bulge;
            // A stretch of no length would be a vertex twice.
            if bulge == 0.0 && last.at == to {
                continue;
            }
        }
        out.push(Vertex { at: to, bulge: 0.0 });
    }
    out
}

pub(super) fn dxf(drawing: &TrimDrawing<'_>, unit: DrawingUnit) -> Vec<u8> {
    let fold = Fold::of(&drawing.flat, Drawn::truly(unit.millimetres(), drawing.turned.degrees()));
    let mut dxf = Dxf::new(unit, LAYERS);
    let (start, outline) = fold.outline();
    dxf.polyline(&SHEET_OUTLINE, &vertices(start, &outline), true);
    let (start, face) = fold.face(drawing.profile.painted);
    dxf.polyline(&PAINTED_FACE, &vertices(start, &face), false);
    dxf.finish()
}

impl Fold {
    /// The box about both faces.
    pub(super) fn extent(&self) -> Area {
        let mut area = Area::EMPTY;
        for (a, b) in self.chords() {
            area.cover(a);
            area.cover(b);
        }
        area.grown(self.half)
    }
}
