//! A blank as DXF.

use super::blank_drawing::BlankDrawing;
use super::dxf::{DrawingUnit, Dxf, Layer, LineType, Vertex};
use super::number::degrees;
use super::svg::text_width;
use super::trim_flat::{BEND_DOWN, BEND_TANGENT, BEND_UP, BLANK_EDGE, NOTES, way};
use crate::error::Error;
use crate::num;
use crate::trim::{BlankBend, Direction, Point};

const BLANK_HOLE: Layer = Layer { name: "BLANK-HOLE", colour: 1, line_type: LineType::Continuous };
const LAYERS: &[Layer] = &[BLANK_EDGE, BLANK_HOLE, BEND_UP, BEND_DOWN, BEND_TANGENT, NOTES];

pub(super) fn bend_text(bend: &BlankBend) -> String {
    format!("{} {} {}", bend.fold, way(bend.direction), degrees(bend.angle.degrees()))
}

pub(super) fn dxf(drawing: &BlankDrawing<'_>, unit: DrawingUnit) -> Result<Vec<u8>, Error> {
    let blank = drawing.blank;
    let at = |p: Point| (p.x.mm() / unit.millimetres(), p.y.mm() / unit.millimetres());
    let mut dxf = Dxf::new(unit, LAYERS);
    let outline: Vec<Vertex> =
        blank.outline.iter().map(|e| Vertex { at: at(e.from), bulge: e.arc.map_or(0.0, |a| num::tan_deg(a.turn.degrees() / 4.0)) }).collect();
    dxf.polyline(&BLANK_EDGE, &outline, true);
    for hole in &blank.holes {
        // Two half turns are a circle.
        let ((x, y), r) = (at(hole.centre), hole.diameter.mm() / 2.0 / unit.millimetres());
        dxf.polyline(&BLANK_HOLE, &[Vertex { at: (x - r, y), bulge: 1.0 }, Vertex { at: (x + r, y), bulge: 1.0 }], true);
    }
    let box_ = blank.bounds()?;
    let ((low_x, low_y), (high_x, high_y)) = (at(box_.least), at(box_.greatest));
    // Text that can be read and does not dwarf a small blank.
    let size = ((high_x - low_x) / 30.0).clamp(2.0 / unit.millimetres(), 6.0 / unit.millimetres());
    let mut tops = Vec::new();
    for bend in &blank.bends {
        let layer = match bend.direction {
            Direction::Up => &BEND_UP,
            Direction::Down => &BEND_DOWN,
        };
        for line in &bend.tangents {
            dxf.line(&BEND_TANGENT, at(line.from), at(line.to));
        }
        for line in &bend.lines {
            dxf.line(layer, at(line.from), at(line.to));
        }
        if let Some(line) = bend.lines.last() {
            tops.push((at(line.to).0, bend_text(bend)));
        }
    }
    tops.sort_by(|a, b| a.0.total_cmp(&b.0));
    let xs: Vec<f64> = tops.iter().map(|t| t.0).collect();
    let mut head = high_y + size * 3.0;
    for ((_, text), place) in tops.iter().zip(super::labels::spread(&xs, size * 1.4)) {
        dxf.text(&NOTES, (place + size * 0.35, high_y + size), size, 90.0, text);
        head = head.max(high_y + size * 3.0 + text_width(text, size));
    }
    if let Some(stations) = &drawing.stations {
        let (girth, _) = stations.girths;
        let mut marks = vec![(crate::units::Length::ZERO, low_x)];
        for (station, bend) in stations.near.iter().zip(&blank.bends) {
            marks.push((*station, bend.lines.first().map_or(low_x, |l| at(l.from).0)));
        }
        marks.push((girth, low_x + girth.mm() / unit.millimetres()));
        let xs: Vec<f64> = marks.iter().map(|m| m.1).collect();
        for ((station, _), place) in marks.iter().zip(super::labels::spread(&xs, size * 1.4)) {
            let text = drawing.running(*station, girth)?;
            dxf.text(&NOTES, (place + size * 0.35, low_y - size - text_width(&text, size)), size, 90.0, &text);
        }
    }
    let (width, height) = box_.size()?;
    dxf.text(&NOTES, (low_x, head + size * 3.2), size, 0.0, drawing.name);
    dxf.text(
        &NOTES,
        (low_x, head + size * 1.6),
        size,
        0.0,
        &format!("box {} by {}, distances from the {}", drawing.text(width)?, drawing.text(height)?, drawing.edge_name()),
    );
    dxf.text(&NOTES, (low_x, head), size, 0.0, "upper face up");
    Ok(dxf.finish())
}
