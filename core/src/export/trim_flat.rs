//! The flat of a trim.

use super::dxf::{DrawingUnit, Dxf, Layer, LineType, Vertex};
use super::labels;
use super::number::degrees;
use super::svg::{Anchor, Look, Svg, text_width};
use super::trim_drawing::{GaugeEdge, TrimDrawing, bend_name};
use crate::error::Error;
use crate::trim::{Direction, FlatBend};
use crate::units::Length;

const LABEL: f64 = 3.0;
const TITLE: f64 = 4.2;
const ROW: f64 = 4.6;
const MARGIN: f64 = 6.0;
/// Labels across the sheet stand at least this far apart.
const PITCH: f64 = 4.2;
/// The sheet is drawn this high; its length is not to scale.
const STRIP: f64 = 34.0;
/// Room for the slanted part of a leader.
const LEAD: f64 = 6.0;
const INK: &str = "#1b1b1b";
const METAL: &str = "#eceff1";
const UP: &str = "#1f5c99";
const DOWN: &str = "#7a2e8a";
const QUIET: &str = "#5b6670";
const UP_DASHES: &[f64] = &[4.0, 1.5];
const DOWN_DASHES: &[f64] = &[3.0, 1.2, 0.2, 1.2];

pub(super) const BLANK_EDGE: Layer = Layer { name: "BLANK-EDGE", colour: 7, line_type: LineType::Continuous };
pub(super) const BEND_UP: Layer = Layer { name: "BEND-UP", colour: 5, line_type: LineType::Dashed };
pub(super) const BEND_DOWN: Layer = Layer { name: "BEND-DOWN", colour: 6, line_type: LineType::DashDot };
pub(super) const BEND_TANGENT: Layer = Layer { name: "BEND-TANGENT", colour: 8, line_type: LineType::Continuous };
pub(super) const NOTES: Layer = Layer { name: "NOTES", colour: 3, line_type: LineType::Continuous };
const LAYERS: &[Layer] = &[BLANK_EDGE, BEND_UP, BEND_DOWN, BEND_TANGENT, NOTES];

pub(super) const fn way(direction: Direction) -> &'static str {
    match direction {
        Direction::Up => "up",
        Direction::Down => "down",
    }
}

fn bend_text(bend: &FlatBend) -> String {
    format!("{} {} {}", bend_name(bend.part), way(bend.direction), degrees(bend.angle.degrees()))
}

/// Both edges and every bend line, from the start edge.
fn stations(drawing: &TrimDrawing<'_>) -> Vec<Length> {
    let mut out = vec![Length::ZERO];
    out.extend(drawing.flat.bends().iter().map(|b| b.line));
    out.push(drawing.flat.girth());
    out
}

/// A station as it is read from the gauging edge.
fn running(drawing: &TrimDrawing<'_>, station: Length) -> Result<String, Error> {
    drawing.text(match drawing.gauge {
        GaugeEdge::Start => station,
        GaugeEdge::End => drawing.flat.from_end(station)?,
    })
}

fn notes(drawing: &TrimDrawing<'_>, scale: &str) -> Result<Vec<String>, Error> {
    let edge = match drawing.gauge {
        GaugeEdge::Start => "start edge",
        GaugeEdge::End => "end edge",
    };
    Ok(vec![
        format!("Upper face up, {}. Distances run from the {edge}, drawn heavy.", drawing.painted_text()),
        format!(
            "Scale {scale} across the sheet, its length not to scale. Sheet {}, rule {}.",
            drawing.fine_text(drawing.flat.thickness())?,
            drawing.flat.rule()
        ),
    ])
}

pub(super) fn svg(drawing: &TrimDrawing<'_>) -> Result<String, Error> {
    let flat = &drawing.flat;
    let (scale, said) = drawing.scale(flat.girth().mm());
    let notes = notes(drawing, &said)?;
    let legend = [(Direction::Up, "bend up"), (Direction::Down, "bend down")];

    let xs: Vec<f64> = stations(drawing).into_iter().map(|s| s.mm() * scale).collect();
    let runs = stations(drawing).into_iter().map(|s| running(drawing, s)).collect::<Result<Vec<_>, _>>()?;
    let run_places = labels::spread(&xs, PITCH);
    let bend_xs: Vec<f64> = flat.bends().iter().map(|b| b.line.mm() * scale).collect();
    let bend_places = labels::spread(&bend_xs, PITCH);
    let bend_texts: Vec<String> = flat.bends().iter().map(bend_text).collect();
    let girth = format!("girth {}", drawing.text(flat.girth())?);

    let longest = |texts: &[String]| texts.iter().map(|t| text_width(t, LABEL)).fold(0.0, f64::max);
    let ends = |places: &[f64]| places.iter().fold((0.0_f64, 0.0_f64), |(low, high), p| (low.min(p - PITCH / 2.0), high.max(p + PITCH / 2.0)));
    let width = flat.girth().mm() * scale;
    let half_girth_text = text_width(&girth, LABEL) / 2.0;
    let (mut low, mut high) = ((width / 2.0 - half_girth_text).min(0.0), (width / 2.0 + half_girth_text).max(width));
    for (l, h) in [ends(&run_places), ends(&bend_places)] {
        (low, high) = (low.min(l), high.max(h));
    }
    let inner = notes.iter().map(|n| text_width(n, LABEL)).fold(text_width(drawing.name, TITLE).max(high - low), f64::max);
    let shift = MARGIN + (inner - (high - low)) / 2.0 - low;
    let top = MARGIN + TITLE + 3.0 + longest(&bend_texts) + LEAD + 1.0;
    let bottom = top + STRIP;
    let girth_line = bottom + LEAD + longest(&runs) + 3.0;
    let foot = girth_line + LABEL + 4.0;
    let height = foot + ROW * 3.0 + MARGIN;

    let mut svg = Svg::new(inner + 2.0 * MARGIN, height, drawing.paper, drawing.name);
    svg.group("name", Look::area(INK), |svg| svg.text((MARGIN, MARGIN + TITLE * 0.8), TITLE, Anchor::Start, 0.0, drawing.name));
    svg.group("blank", Look { stroke: INK, width: 0.25, dashes: &[], fill: METAL }, |svg| {
        svg.polyline(&[(shift, top), (shift + width, top), (shift + width, bottom), (shift, bottom)], true);
    });
    let edge = match drawing.gauge {
        GaugeEdge::Start => shift,
        GaugeEdge::End => shift + width,
    };
    svg.group("gauging edge", Look::line(INK, 0.9), |svg| svg.line((edge, top), (edge, bottom)));
    for (direction, name) in legend {
        svg.group(name, bend_look(direction), |svg| {
            for (_, x) in flat.bends().iter().zip(&bend_xs).filter(|(b, _)| b.direction == direction) {
                svg.line((shift + x, top), (shift + x, bottom));
            }
        });
    }
    svg.group("leaders", Look::line(QUIET, 0.13), |svg| {
        for (x, place) in bend_xs.iter().zip(&bend_places) {
            svg.polyline(&[(shift + x, top), (shift + x, top - 1.0), (shift + place, top - LEAD + 1.0), (shift + place, top - LEAD)], false);
        }
        for (x, place) in xs.iter().zip(&run_places) {
            svg.polyline(&[(shift + x, bottom), (shift + x, bottom + 1.0), (shift + place, bottom + LEAD - 1.0), (shift + place, bottom + LEAD)], false);
        }
    });
    svg.group("bends", Look::area(INK), |svg| {
        for (text, place) in bend_texts.iter().zip(&bend_places) {
            svg.text((shift + place + LABEL * 0.35, top - LEAD - 0.8), LABEL, Anchor::Start, -90.0, text);
        }
    });
    svg.group("running distances", Look::area(INK), |svg| {
        for (text, place) in runs.iter().zip(&run_places) {
            svg.text((shift + place + LABEL * 0.35, bottom + LEAD + 0.8), LABEL, Anchor::End, -90.0, text);
        }
    });
    svg.group("girth", Look::line(INK, 0.15), |svg| {
        svg.line((shift, girth_line), (shift + width, girth_line));
        for x in [shift, shift + width] {
            svg.line((x, girth_line - 1.4), (x, girth_line + 1.4));
        }
    });
    svg.group("girth", Look::area(INK), |svg| svg.text((shift + width / 2.0, girth_line + LABEL + 0.6), LABEL, Anchor::Middle, 0.0, &girth));
    let mut x = MARGIN;
    for (direction, name) in legend {
        svg.group("legend", bend_look(direction), |svg| svg.line((x, foot + ROW - 2.2), (x + 12.0, foot + ROW - 2.2)));
        svg.group("legend", Look::area(INK), |svg| svg.text((x + 14.0, foot + ROW - 1.2), LABEL, Anchor::Start, 0.0, name));
        x += 20.0 + text_width(name, LABEL);
    }
    svg.group("notes", Look::area(QUIET), |svg| {
        for (y, note) in (2_u32..).zip(&notes) {
            svg.text((MARGIN, foot + ROW * f64::from(y) - 1.2), LABEL, Anchor::Start, 0.0, note);
        }
    });
    Ok(svg.finish())
}

pub(super) const fn bend_look(direction: Direction) -> Look {
    match direction {
        Direction::Up => Look::dashed(UP, 0.3, UP_DASHES),
        Direction::Down => Look::dashed(DOWN, 0.3, DOWN_DASHES),
    }
}

pub(super) fn dxf(drawing: &TrimDrawing<'_>, unit: DrawingUnit, piece: Length) -> Result<Vec<u8>, Error> {
    let flat = &drawing.flat;
    let drawn = |l: Length| l.mm() / unit.millimetres();
    let (width, length) = (drawn(flat.girth()), drawn(piece));
    let mut dxf = Dxf::new(unit, LAYERS);
    let corner = |x: f64, y: f64| Vertex { at: (x, y), bulge: 0.0 };
    dxf.polyline(&BLANK_EDGE, &[corner(0.0, 0.0), corner(width, 0.0), corner(width, length), corner(0.0, length)], true);
    for bend in flat.bends() {
        for tangent in [bend.from, bend.to] {
            dxf.line(&BEND_TANGENT, (drawn(tangent), 0.0), (drawn(tangent), length));
        }
        let layer = match bend.direction {
            Direction::Up => &BEND_UP,
            Direction::Down => &BEND_DOWN,
        };
        dxf.line(layer, (drawn(bend.line), 0.0), (drawn(bend.line), length));
    }

    // Text as high as the closest lines allow without touching, within what can be read.
    let size = (width / 30.0).clamp(2.0 / unit.millimetres(), 6.0 / unit.millimetres());
    let xs: Vec<f64> = stations(drawing).into_iter().map(drawn).collect();
    for (station, place) in stations(drawing).into_iter().zip(labels::spread(&xs, size * 1.4)) {
        let text = running(drawing, station)?;
        dxf.text(&NOTES, (place + size * 0.35, -size - text_width(&text, size)), size, 90.0, &text);
    }
    let bend_xs: Vec<f64> = flat.bends().iter().map(|b| drawn(b.line)).collect();
    for (bend, place) in flat.bends().iter().zip(labels::spread(&bend_xs, size * 1.4)) {
        dxf.text(&NOTES, (place + size * 0.35, length + size), size, 90.0, &bend_text(bend));
    }
    let edge = match drawing.gauge {
        GaugeEdge::Start => "start edge",
        GaugeEdge::End => "end edge",
    };
    let head = length + size * 3.0 + flat.bends().iter().map(|b| text_width(&bend_text(b), size)).fold(0.0, f64::max);
    dxf.text(&NOTES, (0.0, head + size * 3.2), size, 0.0, drawing.name);
    dxf.text(&NOTES, (0.0, head + size * 1.6), size, 0.0, &format!("girth {}, distances from the {edge}", drawing.text(flat.girth())?));
    dxf.text(&NOTES, (0.0, head), size, 0.0, &format!("upper face up, {}", drawing.painted_text()));
    Ok(dxf.finish())
}
