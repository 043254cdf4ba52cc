//! The dimensions of a section, side by side: for each datum a bar with the lines that are measured from it, and a row of figures over the bars.

use super::fold::Point;
use super::labels::spread;
use super::section_axis::Axis;
use super::svg::narrow_width;
use crate::error::Error;
use crate::junction::{Datum, LayoutLine};
use crate::units::{Length, LengthFormat};

/// Size of the figures.
pub(super) const TEXT: f64 = 3.6;
/// Least distance between two figures of a row.
const PITCH: f64 = 4.5;
const BEND: f64 = 3.4;
/// From one bar to the next.
const STEP: f64 = 2.6;

/// From a datum to the lines that are measured from it.
#[derive(Debug, Clone)]
pub(super) struct Bar {
    pub(super) ends: (Point, Point),
    /// The datum.
    pub(super) origin: Point,
    /// The lines.
    pub(super) ticks: Vec<Point>,
}

/// The dimensions of one side: a bar for each datum, and one row of figures.
#[derive(Debug, Clone)]
pub(super) struct Row {
    pub(super) bars: Vec<Bar>,
    /// From what is struck square through the bars, and on to the figure.
    pub(super) witnesses: Vec<[Point; 4]>,
    pub(super) figures: Vec<Figure>,
}

/// A figure of a row.
#[derive(Debug, Clone)]
pub(super) struct Figure {
    pub(super) at: Point,
    pub(super) text: String,
    /// Degrees by which it is turned, counter-clockwise.
    pub(super) turned: f64,
    /// Whether it ends at its point, rather than starting there.
    pub(super) ends_here: bool,
    /// Its long edges, for keeping clear of it.
    pub(super) edges: [(Point, Point); 2],
}

/// What is read of a line: from its datum, and from the junction line.
#[derive(Debug, Clone, Copy)]
pub(super) struct LineRead {
    pub(super) from_datum: Length,
    pub(super) from_line: Length,
}

/// A line of one side with its letter and what is read from its datum to it.
#[derive(Debug, Clone)]
pub(super) struct Struck<'a> {
    pub(super) letter: String,
    pub(super) line: &'a LayoutLine,
    pub(super) read: Length,
}

/// The lines that are measured from one datum.
struct Group<'a> {
    datum: &'a Datum,
    origin: f64,
    lines: Vec<f64>,
}

/// The dimensions of one side, from `base` outward (`outward` 1) or inward (-1); what is struck lies at height `struck`.
pub(super) fn row(lines: &[Struck<'_>], axis: &Axis, scale: f64, format: LengthFormat, (outward, base, struck): (f64, f64, f64)) -> Result<Option<Row>, Error> {
    let mut groups: Vec<Group<'_>> = Vec::new();
    let mut stations: Vec<(f64, String)> = Vec::new();
    for Struck { letter, line, read } in lines {
        let at = axis.place(line.from_line, scale);
        // Down from a top edge, up from anything else.
        let way = if line.datum == Datum::TrimTopEdge { 1.0 } else { -1.0 };
        let origin = at + way * axis.place(line.from_datum, scale);
        match groups.iter_mut().find(|g| *g.datum == line.datum && (g.origin - origin).abs() < 0.05) {
            Some(group) => group.lines.push(at),
            None => groups.push(Group { datum: &line.datum, origin, lines: vec![at] }),
        }
        let size = if read.is_negative() { (-*read).length()? } else { *read };
        stations.push((at, format!("{letter}  {}{}", format.text(size)?.as_str(), from(&line.datum, lines))));
    }
    for group in &groups {
        // A datum that is no line of its own says what it is.
        let is_line = lines.iter().any(|s| (axis.place(s.line.from_line, scale) - group.origin).abs() < 0.05);
        if *group.datum == Datum::JunctionLine || !is_line {
            stations.push((group.origin, if *group.datum == Datum::JunctionLine { "0".to_owned() } else { group.datum.to_string() }));
        }
    }
    if stations.is_empty() {
        return Ok(None);
    }
    stations.sort_by(|x, y| x.0.total_cmp(&y.0));
    let mut height = base;
    let mut bars = Vec::with_capacity(groups.len());
    for group in &groups {
        let (low, high) = group.lines.iter().fold((group.origin, group.origin), |(l, h), a| (l.min(*a), h.max(*a)));
        let ticks = group.lines.iter().map(|a| axis.at(*a, height)).collect();
        bars.push(Bar { ends: (axis.at(low, height), axis.at(high, height)), origin: axis.at(group.origin, height), ticks });
        height += outward * STEP;
    }
    let (witnesses, figures) = figures(&stations, axis, (outward, height - outward * STEP, struck));
    Ok(Some(Row { bars, witnesses, figures }))
}

/// What a figure says of its datum; of the junction line nothing, which is the rule.
fn from(datum: &Datum, lines: &[Struck<'_>]) -> String {
    match datum {
        Datum::JunctionLine => String::new(),
        Datum::TrimLowerEdge | Datum::TrimTopEdge => " from edge".to_owned(),
        Datum::Line(name) => match lines.iter().find(|s| s.line.name == *name) {
            Some(Struck { letter, .. }) => format!(" from {letter}"),
            None => format!(" from {name}"),
        },
    }
}

fn figures(stations: &[(f64, String)], axis: &Axis, (outward, height, struck): (f64, f64, f64)) -> (Vec<[Point; 4]>, Vec<Figure>) {
    let places: Vec<f64> = stations.iter().map(|(a, _)| *a).collect();
    // Figures read from below or from the right.
    let heading = wrapped(axis.heading + outward * 90.0);
    let flips = !(-89.9..=90.1).contains(&heading);
    let turned = if flips { wrapped(heading + 180.0) } else { heading };
    let mut witnesses = Vec::with_capacity(stations.len());
    let mut figures = Vec::with_capacity(stations.len());
    for ((a, text), to) in stations.iter().zip(spread(&places, PITCH)) {
        let start = height + outward * BEND;
        witnesses.push([axis.at(*a, struck), axis.at(*a, height), axis.at(*a, height + outward * 0.8), axis.at(to, start)]);
        let edge = |across: f64| (axis.at(to + across, start + outward * 0.4), axis.at(to + across, start + outward * (0.4 + narrow_width(text, TEXT))));
        let edges = [edge(-TEXT / 2.0), edge(TEXT / 2.0)];
        figures.push(Figure { at: axis.at(to, start + outward * 0.6), text: text.clone(), turned, ends_here: flips, edges });
    }
    (witnesses, figures)
}

/// Degrees between -180 and 180.
pub(super) fn wrapped(degrees: f64) -> f64 {
    let mut d = degrees;
    while d > 180.0 {
        d -= 360.0;
    }
    while d <= -180.0 {
        d += 360.0;
    }
    d
}
