//! Strips cut out of an outline: a sweep over its edges from left to right.
//!
//! Coordinates are millimetres: x from the middle of the bounds, y from their foot. Every formula gives the same bits for a mirrored outline.

/// An edge that is not along the seams, from its left to its right end, with what it adds to a panel that ends on it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Segment {
    pub(crate) x0: f64,
    pub(crate) y0: f64,
    pub(crate) x1: f64,
    pub(crate) y1: f64,
    /// The edge's number in the order of `Outline::edges`.
    pub(crate) edge: usize,
    /// What a finished panel has beyond the line, along the seam, at its left and its right end.
    pub(crate) allowance: [f64; 2],
    /// What is ordered beyond that and cut off on the roof.
    pub(crate) trim: f64,
    pub(crate) pins: bool,
    /// What goes on from its left and its right end, set by [`Clipper::new`].
    pub(crate) left: Option<Next>,
    pub(crate) right: Option<Next>,
}

/// A segment that goes on from the end of another.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Next {
    /// Its place in the order of left ends.
    at: usize,
    /// How far from their common point the two shifted lines can cross, to either side.
    reach: f64,
}

impl Segment {
    /// Height of the line at this x.
    pub(crate) fn y(&self, x: f64) -> f64 {
        if x <= self.x0 || self.y0.to_bits() == self.y1.to_bits() {
            self.y0
        } else if x >= self.x1 {
            self.y1
        } else {
            // Symmetric in the two ends.
            (self.y0 * (self.x1 - x) + self.y1 * (x - self.x0)) / (self.x1 - self.x0)
        }
    }

    /// Height of the line at this x, which may lie beyond its ends.
    pub(crate) fn y_extended(&self, x: f64) -> f64 {
        if x >= self.x0 && x <= self.x1 { self.y(x) } else { (self.y0 * (self.x1 - x) + self.y1 * (x - self.x0)) / (self.x1 - self.x0) }
    }

    /// What a finished panel has beyond the line at this x, which may lie beyond its ends.
    pub(crate) fn allowance_at(&self, x: f64) -> f64 {
        let [left, right] = self.allowance;
        if left.to_bits() == right.to_bits() { left } else { (left * (self.x1 - x) + right * (x - self.x0)) / (self.x1 - self.x0) }
    }

    /// How the allowance grows to the right, over run: nothing where the panels end parallel to the line.
    pub(crate) fn lean(&self) -> f64 {
        let [left, right] = self.allowance;
        if left.to_bits() == right.to_bits() { 0.0 } else { (right - left) / (self.x1 - self.x0) }
    }

    /// Rise to the right over run.
    pub(crate) fn slope(&self) -> f64 {
        (self.y1 - self.y0) / (self.x1 - self.x0)
    }
}

/// A stretch of a line that bounds a run from below or above.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Part<'a> {
    pub(crate) line: &'a Segment,
    pub(crate) x0: f64,
    pub(crate) x1: f64,
}

/// One connected piece of a strip.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Run<'a> {
    pub(crate) left: f64,
    pub(crate) right: f64,
    /// Its lowest boundary from left to right.
    pub(crate) lower: &'a [Part<'a>],
    /// Its highest boundary from left to right.
    pub(crate) upper: &'a [Part<'a>],
    /// Lines beyond its left and right side whose shifted line may reach into it.
    pub(crate) lower_beside: [Option<Part<'a>>; 2],
    pub(crate) upper_beside: [Option<Part<'a>>; 2],
    /// Square millimetres.
    pub(crate) area: f64,
    /// What is cut out between the lowest and the highest boundary.
    pub(crate) notches: &'a [Notch<'a>],
}

/// What a run leaves out between its lowest and its highest boundary: an opening within its width, or the gap beside an arm.
#[derive(Debug, Clone)]
pub(crate) struct Notch<'a> {
    /// The lines below it, from left to right: there the panel ends upward.
    pub(crate) lower: Vec<Part<'a>>,
    /// The lines above it.
    pub(crate) upper: Vec<Part<'a>>,
}

#[derive(Debug, Clone, Copy)]
struct RunSpan {
    left: f64,
    right: f64,
    first: usize,
    middle: usize,
    end: usize,
    area: f64,
    /// From and to, in the strip's notches.
    notches: (usize, usize),
    foot: f64,
}

/// The part of a run between two neighbouring breaks of the outline.
#[derive(Debug, Clone, Copy)]
struct Trapezoid<'a> {
    lower: &'a Segment,
    upper: &'a Segment,
    x0: f64,
    x1: f64,
    run: usize,
}

impl Trapezoid<'_> {
    fn area(&self) -> f64 {
        let middle = (self.x0 + self.x1) * 0.5;
        (self.upper.y(middle) - self.lower.y(middle)) * (self.x1 - self.x0)
    }
}

/// Cuts strips, asked for from left to right. Its buffers are reused: a strip allocates nothing once they have grown.
#[derive(Debug)]
pub(crate) struct Clipper<'a> {
    /// By their left ends.
    segments: &'a [Segment],
    next: usize,
    /// Left of these ends, sorted, lie breaks of the outline.
    breaks: Vec<f64>,
    next_break: usize,
    active: Vec<&'a Segment>,
    slab: Vec<&'a Segment>,
    cells: Vec<Trapezoid<'a>>,
    parts: Vec<Part<'a>>,
    runs: Vec<RunSpan>,
    notches: Vec<Notch<'a>>,
}

impl<'a> Clipper<'a> {
    pub(crate) fn new(segments: &'a mut [Segment]) -> Clipper<'a> {
        segments.sort_by(|a, b| a.x0.total_cmp(&b.x0));
        link(segments);
        let segments = &*segments;
        let mut breaks: Vec<f64> = segments.iter().flat_map(|s| [s.x0, s.x1]).collect();
        breaks.sort_by(f64::total_cmp);
        breaks.dedup_by(|a, b| a.to_bits() == b.to_bits());
        Clipper {
            segments,
            next: 0,
            breaks,
            next_break: 0,
            active: Vec::new(),
            slab: Vec::new(),
            cells: Vec::new(),
            parts: Vec::new(),
            runs: Vec::new(),
            notches: Vec::new(),
        }
    }

    /// Cuts the strip between these two x, which must lie right of the strip before.
    pub(crate) fn cut(&mut self, left: f64, right: f64) {
        self.active.retain(|s| s.x1 > left);
        while let Some(s) = self.segments.get(self.next).filter(|s| s.x0 < right) {
            if s.x1 > left {
                self.active.push(s);
            }
            self.next += 1;
        }
        while self.breaks.get(self.next_break).is_some_and(|&x| x <= left) {
            self.next_break += 1;
        }
        self.parts.clear();
        self.runs.clear();
        self.notches.clear();
        if self.breaks.get(self.next_break).is_some_and(|&x| x < right) { self.cut_broken(left, right) } else { self.cut_plain(left, right) }
    }

    /// The runs of the strip that was cut last, from the foot up.
    pub(crate) fn runs(&self) -> impl Iterator<Item = Run<'_>> {
        self.runs.iter().map(|r| {
            let lower = self.parts.get(r.first..r.middle).unwrap_or_default();
            let upper = self.parts.get(r.middle..r.end).unwrap_or_default();
            let (lower_beside, upper_beside) = (self.beside(lower, r), self.beside(upper, r));
            let notches = self.notches.get(r.notches.0..r.notches.1).unwrap_or_default();
            Run { left: r.left, right: r.right, lower, upper, lower_beside, upper_beside, area: r.area, notches }
        })
    }

    fn beside(&self, parts: &[Part<'a>], run: &RunSpan) -> [Option<Part<'a>>; 2] {
        let whole = |next: Next| self.segments.get(next.at).map(|line| Part { line, x0: line.x0, x1: line.x1 });
        let left = parts.first().filter(|p| p.line.x0 <= run.left).and_then(|p| p.line.left.filter(|n| p.line.x0 + n.reach > run.left));
        let right = parts.last().filter(|p| p.line.x1 >= run.right).and_then(|p| p.line.right.filter(|n| p.line.x1 - n.reach < run.right));
        [left.and_then(whole), right.and_then(whole)]
    }

    /// No vertex within the strip: every edge crosses all of it.
    fn cut_plain(&mut self, left: f64, right: f64) {
        let middle = (left + right) * 0.5;
        sort_upward(&mut self.active, middle);
        for pair in self.active.chunks_exact(2) {
            let [lower, upper] = *pair else { continue };
            let first = self.parts.len();
            self.parts.push(Part { line: lower, x0: left, x1: right });
            self.parts.push(Part { line: upper, x0: left, x1: right });
            let area = (upper.y(middle) - lower.y(middle)) * (right - left);
            self.runs.push(RunSpan { left, right, first, middle: first + 1, end: first + 2, area, notches: (0, 0), foot: 0.0 });
        }
    }

    /// Vertices within the strip: trapezoids between them, joined where they open into each other.
    fn cut_broken(&mut self, left: f64, right: f64) {
        self.cells.clear();
        let (mut x0, mut before) = (left, 0..0);
        let mut at = self.next_break;
        while x0 < right {
            let x1 = self.breaks.get(at).copied().unwrap_or(right).min(right);
            at += 1;
            self.slab.clear();
            self.slab.extend(self.active.iter().copied().filter(|s| s.x0 <= x0 && s.x1 >= x1));
            sort_upward(&mut self.slab, (x0 + x1) * 0.5);
            let first = self.cells.len();
            for pair in self.slab.chunks_exact(2) {
                let [lower, upper] = *pair else { continue };
                self.cells.push(Trapezoid { lower, upper, x0, x1, run: self.cells.len() });
            }
            self.join(before, first, x0);
            before = first..self.cells.len();
            x0 = x1;
        }
        self.gather();
        self.runs.sort_by(|a, b| a.foot.total_cmp(&b.foot).then(a.left.total_cmp(&b.left)));
    }

    /// Gives trapezoids on the two sides of `x` one run where their openings overlap.
    fn join(&mut self, before: core::ops::Range<usize>, first: usize, x: f64) {
        for b in first..self.cells.len() {
            for a in before.clone() {
                let (Some(&one), Some(&two)) = (self.cells.get(a), self.cells.get(b)) else { continue };
                let overlap = one.upper.y(x).min(two.upper.y(x)) - one.lower.y(x).max(two.lower.y(x));
                if overlap > 0.0 && one.run != two.run {
                    for cell in self.cells.iter_mut().filter(|c| c.run == two.run) {
                        cell.run = one.run;
                    }
                }
            }
        }
    }

    fn gather(&mut self) {
        for (k, cell) in self.cells.iter().enumerate() {
            // A run is gathered at its first trapezoid.
            if self.cells.iter().take(k).any(|c| c.run == cell.run) {
                continue;
            }
            let of_run = || self.cells.iter().skip(k).filter(|c| c.run == cell.run);
            let first = self.parts.len();
            let (mut right, mut area, mut foot) = (cell.x0, 0_i128, f64::INFINITY);
            let (first_notch, mut below) = (self.notches.len(), cell);
            // Trapezoids come slab by slab from the left, and in a slab from the foot up.
            for c in of_run() {
                area += whole(c.area());
                if right < c.x1 {
                    right = c.x1;
                    extend(&mut self.parts, first, c.lower, c);
                    foot = foot.min(c.lower.y(c.x0)).min(c.lower.y(c.x1));
                } else {
                    leave_out(&mut self.notches, first_notch, &Trapezoid { lower: below.upper, upper: c.lower, ..*c });
                }
                below = c;
            }
            let middle = self.parts.len();
            let mut cells = of_run().peekable();
            while let Some(c) = cells.next() {
                if cells.peek().is_none_or(|n| n.x0 > c.x0) {
                    extend(&mut self.parts, middle, c.upper, c);
                }
            }
            let end = self.parts.len();
            self.runs.push(RunSpan { left: cell.x0, right, first, middle, end, area: parted(area), notches: (first_notch, self.notches.len()), foot });
        }
    }
}

/// Adds the gap between two trapezoids of a slab to the notch that it goes on from, or as a notch of its own. One that forks is two.
fn leave_out<'a>(notches: &mut Vec<Notch<'a>>, first: usize, gap: &Trapezoid<'a>) {
    let x = gap.x0;
    let goes_on = |n: &Notch<'a>| match (n.lower.last(), n.upper.last()) {
        (Some(below), Some(above)) => below.x1.to_bits() == x.to_bits() && above.line.y(x).min(gap.upper.y(x)) > below.line.y(x).max(gap.lower.y(x)),
        _ => false,
    };
    let open = notches.iter_mut().skip(first).find(|n| goes_on(n));
    if let Some(notch) = open {
        extend(&mut notch.lower, 0, gap.lower, gap);
        extend(&mut notch.upper, 0, gap.upper, gap);
    } else {
        let part = |line| vec![Part { line, x0: gap.x0, x1: gap.x1 }];
        notches.push(Notch { lower: part(gap.lower), upper: part(gap.upper) });
    }
}

fn extend<'a>(parts: &mut Vec<Part<'a>>, first: usize, line: &'a Segment, cell: &Trapezoid<'a>) {
    let count = parts.len();
    match parts.last_mut() {
        Some(last) if count > first && last.line.edge == line.edge => last.x1 = cell.x1,
        _ => parts.push(Part { line, x0: cell.x0, x1: cell.x1 }),
    }
}

/// Joins segments, sorted by their left ends, that go on from each other and are shifted differently.
fn link(segments: &mut [Segment]) {
    for k in 0..segments.len() {
        let Some(&a) = segments.get(k) else { continue };
        let from = segments.partition_point(|b| b.x0 < a.x1);
        let mut on = segments.iter().enumerate().skip(from).take_while(|(_, b)| b.x0 <= a.x1).filter(|(_, b)| b.y0.to_bits() == a.y1.to_bits());
        let (Some((at, b)), None) = (on.next(), on.next()) else { continue };
        let ([_, of_a], [of_b, _]) = (a.allowance, b.allowance);
        let apart = (of_a - of_b).abs().max((of_a + a.trim - of_b - b.trim).abs());
        // The shifted lines may be turned toward each other.
        let reach = apart / ((a.slope() - b.slope()).abs() - a.lean().abs() - b.lean().abs());
        if reach > 0.0 && reach.is_finite() {
            if let Some(a) = segments.get_mut(k) {
                a.right = Some(Next { at, reach });
            }
            if let Some(b) = segments.get_mut(at) {
                b.left = Some(Next { at: k, reach });
            }
        }
    }
}

/// An area in steps of 1e-9 mm2, so that a sum is the same from the left and from the right.
#[allow(clippy::cast_possible_truncation, reason = "saturates far beyond any roof")]
fn whole(square_millimetres: f64) -> i128 {
    (square_millimetres * 1e9).round() as i128
}

#[allow(clippy::cast_precision_loss, reason = "rounded once here")]
fn parted(area: i128) -> f64 {
    area as f64 / 1e9
}

fn sort_upward(segments: &mut [&Segment], middle: f64) {
    match segments {
        [_] | [] => {}
        [a, b] => {
            if a.y(middle) > b.y(middle) {
                core::mem::swap(a, b);
            }
        }
        _ => segments.sort_by(|a, b| a.y(middle).total_cmp(&b.y(middle))),
    }
}
