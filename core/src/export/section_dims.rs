//! The dimensions of a section: for each datum a row of running distances, parallel to what the lines are struck on.

use super::fold::Point;
use super::labels::spread;
use super::section_axis::Axis;
use super::svg::narrow_width;
use crate::error::Error;
use crate::junction::{Datum, LayoutLine};
use crate::units::LengthFormat;

/// Size of the figures.
pub(super) const TEXT: f64 = 3.6;
/// Least distance between two figures of a row.
const PITCH: f64 = 4.5;
const BEND: f64 = 3.0;

/// A row of running distances.
#[derive(Debug, Clone)]
pub(super) struct Row {
    /// From the datum to the farthest line.
    pub(super) bar: (Point, Point),
    /// Square to the bar, from what is struck through the bar, and on to the figure.
    pub(super) witnesses: Vec<[Point; 4]>,
    /// Where the datum lies on the bar.
    pub(super) origin: Point,
    /// Where the bar meets the struck lines.
    pub(super) ticks: Vec<Point>,
    /// The figures: where each starts, its text, and the degrees that it is turned, counter-clockwise, with whether it ends there instead.
    pub(super) figures: Vec<Figure>,
}

/// A figure of a row.
#[derive(Debug, Clone)]
pub(super) struct Figure {
    pub(super) at: Point,
    pub(super) text: String,
    pub(super) turned: f64,
    pub(super) ends_here: bool,
    /// Its long edges, for keeping clear of it.
    pub(super) edges: [(Point, Point); 2],
}

/// A line on its axis.
struct OnAxis {
    start: f64,
    at: f64,
    text: String,
}

/// The rows of one side, from `base` outward (`outward` 1) or inward (-1); what is struck lies at height `struck`. The letter of each line comes with it.
pub(super) fn rows(
    lines: &[(String, &LayoutLine)],
    axis: &Axis,
    scale: f64,
    format: LengthFormat,
    (outward, base, struck): (f64, f64, f64),
) -> Result<Vec<Row>, Error> {
    let mut groups: Vec<(Datum, Vec<OnAxis>)> = Vec::new();
    for (letter, line) in lines {
        let up = axis.place(line.from_line, scale);
        // Down from a top edge, up from anything else.
        let way = if line.datum == Datum::TrimTopEdge { 1.0 } else { -1.0 };
        let start = up + way * axis.place(line.from_datum, scale);
        let size = if line.from_datum.is_negative() { (-line.from_datum).length()? } else { line.from_datum };
        let on_axis = OnAxis { start, at: up, text: format!("{letter}  {}", format.text(size)?.as_str()) };
        match groups.iter_mut().find(|(d, g)| *d == line.datum && g.first().is_some_and(|f| (f.start - start).abs() < 0.05)) {
            Some((_, group)) => group.push(on_axis),
            None => groups.push((line.datum.clone(), vec![on_axis])),
        }
    }
    let mut out = Vec::with_capacity(groups.len());
    let mut height = base;
    for (datum, mut group) in groups {
        group.sort_by(|x, y| x.at.total_cmp(&y.at));
        let origin = group.first().map_or(0.0, |g| g.start);
        let zero = match &datum {
            Datum::JunctionLine => "0".to_owned(),
            Datum::TrimLowerEdge => "0 lower edge".to_owned(),
            Datum::TrimTopEdge => "0 top edge".to_owned(),
            Datum::Line(name) => match lines.iter().find(|(_, l)| l.name == *name) {
                Some((letter, _)) => format!("0 at {letter}"),
                None => format!("0 at {name}"),
            },
        };
        let mut stations: Vec<(f64, String)> = group.iter().map(|g| (g.at, g.text.clone())).collect();
        stations.push((origin, zero));
        stations.sort_by(|x, y| x.0.total_cmp(&y.0));
        let row = row(&stations, origin, axis, (outward, height, struck));
        let longest = stations.iter().map(|(_, text)| narrow_width(text, TEXT)).fold(0.0, f64::max);
        height += outward * (BEND + longest + 4.5);
        out.push(row);
    }
    Ok(out)
}

fn row(stations: &[(f64, String)], origin: f64, axis: &Axis, (outward, height, struck): (f64, f64, f64)) -> Row {
    let places: Vec<f64> = stations.iter().map(|(a, _)| *a).collect();
    let spread = spread(&places, PITCH);
    let (low, high) = places.iter().fold((origin, origin), |(l, h), a| (l.min(*a), h.max(*a)));
    // Figures read from below or from the right.
    let heading = axis.heading + outward * 90.0;
    let flips = !(-89.9..=90.1).contains(&wrapped(heading));
    let turned = if flips { wrapped(heading + 180.0) } else { wrapped(heading) };
    let mut witnesses = Vec::with_capacity(stations.len());
    let mut figures = Vec::with_capacity(stations.len());
    for ((a, text), to) in stations.iter().zip(&spread) {
        let foot = axis.at(*a, struck);
        let bend = axis.at(*a, height + outward * 0.8);
        let start = axis.at(*to, height + outward * BEND);
        witnesses.push([foot, axis.at(*a, height), bend, start]);
        let edge = |across: f64| {
            (axis.at(to + across, height + outward * (BEND + 0.4)), axis.at(to + across, height + outward * (BEND + 0.4 + narrow_width(text, TEXT))))
        };
        figures.push(Figure {
            at: axis.at(*to, height + outward * (BEND + 0.6)),
            text: text.clone(),
            turned,
            ends_here: flips,
            edges: [edge(-TEXT / 2.0), edge(TEXT / 2.0)],
        });
    }
    Row {
        bar: (axis.at(low, height), axis.at(high, height)),
        witnesses,
        origin: axis.at(origin, height),
        ticks: places.iter().filter(|a| (**a - origin).abs() > 0.01).map(|a| axis.at(*a, height)).collect(),
        figures,
    }
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
