//! A long blank with its plain middle broken out.

use crate::error::Error;
use crate::trim::{Arc, BlankEdge, BlankLine, Bounds, FlatBlank, Point};
use crate::units::Length;

/// What is left out of a figure: heights above its lowest point, in millimetres of metal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Break {
    /// From here to there nothing is drawn, but for a gap.
    out: Option<(f64, f64)>,
    gap: f64,
}

impl Break {
    /// Breaks out the longest stretch of the blank on which nothing happens, if what remains is then no higher than about the blank is wide.
    pub(super) fn of(blank: &FlatBlank, bounds: Bounds, width: f64) -> Result<Break, Error> {
        let mut heights = Vec::new();
        let mut take = |p: Point| -> Result<(), Error> {
            heights.push(bounds.least.to(p)?.1);
            Ok(())
        };
        for edge in &blank.outline {
            take(edge.from)?;
            if let Some(Arc { centre, radius, .. }) = edge.arc {
                for y in [(centre.y + radius).length()?, (centre.y - radius).length()?] {
                    take(Point { x: centre.x, y })?;
                }
            }
        }
        for hole in &blank.holes {
            let radius = Length::from_pm(hole.diameter.pm() / 2);
            for y in [(hole.centre.y + radius).length()?, (hole.centre.y - radius).length()?] {
                take(Point { x: hole.centre.x, y })?;
            }
        }
        for line in blank.bends.iter().flat_map(|b| &b.lines) {
            take(line.from)?;
            take(line.to)?;
        }
        heights.sort_by(f64::total_cmp);
        let longest = heights.windows(2).filter_map(|w| Some((*w.first()?, *w.get(1)?))).fold((0.0, 0.0), |a, b| if b.1 - b.0 > a.1 - a.0 { b } else { a });
        let (gap, stays) = (width * 0.08, width * 0.35);
        // Some of the plain stretch stays on either side of the break.
        let out = (longest.0 + stays, longest.1 - stays);
        let whole = heights.last().copied().unwrap_or(0.0);
        let worth = whole > 1.6 * width && out.1 - out.0 > 2.0 * gap;
        let broken = Break { out: worth.then_some(out), gap };
        // What runs aside on its way past the break would jump there.
        let lines = blank.bends.iter().flat_map(|b| &b.lines).map(|l| (l.from, l.to));
        for (from, to) in blank.outline.iter().filter(|e| e.arc.is_none()).map(|e| (e.from, e.to)).chain(lines) {
            if let [(_, a), (b, _)] = broken.split(from, to, bounds.least)?.as_slice()
                && a.to(*b)?.0.abs() > 0.1 * (out.1 - out.0)
            {
                return Ok(Break { out: None, gap });
            }
        }
        Ok(broken)
    }

    pub(super) fn is_broken(&self) -> bool {
        self.out.is_some()
    }

    pub(super) fn said(&self) -> &'static str {
        if self.is_broken() { ", a plain piece of the length broken out" } else { "" }
    }

    /// Where a height comes to lie in the figure.
    pub(super) fn drawn(&self, y: f64) -> f64 {
        match self.out {
            // Points on the break are rounded to the picometre.
            Some((from, to)) if y >= to - 1e-6 => y - (to - from) + self.gap,
            Some((from, _)) if y > from => from,
            _ => y,
        }
    }

    /// Whether a height lies above the break.
    pub(super) fn is_upper(&self, y: f64) -> bool {
        self.out.is_some_and(|(from, to)| y > (from + to) / 2.0)
    }

    fn split(&self, from: Point, to: Point, low: Point) -> Result<Vec<(Point, Point)>, Error> {
        let (a, b) = (low.to(from)?.1, low.to(to)?.1);
        let Some((near, far)) = self.out.filter(|(near, far)| a.min(b) <= *near && a.max(b) >= *far) else {
            return Ok(vec![(from, to)]);
        };
        let (x, y) = from.to(to)?;
        let at = |height: f64| -> Result<Point, Error> {
            let share = (height - a) / (b - a);
            Ok(Point { x: (from.x + Length::from_mm(x * share)?).length()?, y: (from.y + Length::from_mm(y * share)?).length()? })
        };
        let (first, second) = if b > a { (near, far) } else { (far, near) };
        Ok(vec![(from, at(first)?), (at(second)?, to)])
    }

    /// A stretch of the outline without what is left out.
    pub(super) fn pieces(&self, edge: &BlankEdge, low: Point) -> Result<Vec<(Point, Point)>, Error> {
        if edge.arc.is_some() { Ok(vec![(edge.from, edge.to)]) } else { self.split(edge.from, edge.to, low) }
    }

    /// A line without what is left out.
    pub(super) fn line_pieces(&self, line: &BlankLine, low: Point) -> Result<Vec<(Point, Point)>, Error> {
        self.split(line.from, line.to, low)
    }

    /// The two lines of the break: across the metal on either side of it.
    pub(super) fn marks(&self, blank: &FlatBlank, low: Point) -> Result<Vec<Vec<Point>>, Error> {
        if self.out.is_none() {
            return Ok(Vec::new());
        }
        let mut out = Vec::new();
        for i in 0..2 {
            let mut ends = Vec::new();
            for edge in &blank.outline {
                let pieces = self.pieces(edge, low)?;
                if let [(_, a), (b, _)] = pieces.as_slice() {
                    // The piece's end that lies on this side of what is left out.
                    let lower_first = low.to(*a)?.1 < low.to(*b)?.1;
                    ends.push(if lower_first == (i == 0) { *a } else { *b });
                }
            }
            ends.sort_by_key(|p| p.x);
            for pair in ends.chunks(2) {
                if let [a, b] = pair {
                    out.push(vec![*a, *b]);
                }
            }
        }
        Ok(out)
    }
}
