//! Strips cut out of an outline: a sweep over its edges from left to right.
//!
//! Coordinates are millimetres: x from the middle of the bounds, y from their foot. Every formula gives the same bits for a mirrored outline.

use super::grid::Grid;
use crate::error::Error;
use crate::roof::{Edge, Point};
use crate::units::Length;

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
    /// Whether the plane lies over it.
    pub(crate) over: bool,
    /// Its place in the order of left ends, set by [`Clipper::new`].
    at: usize,
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
    /// An edge with nothing added; none where it runs along the seams.
    pub(crate) fn of(number: usize, edge: &Edge, grid: &Grid, foot: Length) -> Result<Option<Segment>, Error> {
        let (a, b) = if edge.from.x < edge.to.x { (edge.from, edge.to) } else { (edge.to, edge.from) };
        let place = |p: Point| Ok((grid.mm(p.x), (p.y - foot).length()?.mm()));
        Ok(Segment::between(number, place(a)?, place(b)?).map(|s| Segment { over: edge.from.x < edge.to.x, ..s }))
    }

    /// The same between its left and its right end.
    pub(crate) fn between(edge: usize, (x0, y0): (f64, f64), (x1, y1): (f64, f64)) -> Option<Segment> {
        (x0 < x1).then_some(Segment { x0, y0, x1, y1, edge, allowance: [0.0; 2], trim: 0.0, pins: false, over: false, at: 0 })
    }

    /// Height of the line at this x.
    #[inline]
    pub(crate) fn y(&self, x: f64) -> f64 {
        if x <= self.x0 || self.y0.to_bits() == self.y1.to_bits() {
            self.y0
        } else if x >= self.x1 {
            self.y1
        } else {
            self.through(x)
        }
    }

    #[inline]
    fn through(&self, x: f64) -> f64 {
        // Symmetric in the two ends.
        (self.y0 * (self.x1 - x) + self.y1 * (x - self.x0)) / (self.x1 - self.x0)
    }

    /// Heights of the line at these x, of which only the first and the last may be its ends.
    #[inline]
    pub(crate) fn heights(&self, at: &[f64], out: &mut Vec<f64>) {
        out.clear();
        if self.y0.to_bits() == self.y1.to_bits() {
            out.resize(at.len(), self.y0);
            return;
        }
        out.extend(at.iter().map(|&x| self.through(x)));
        if let (Some(y), Some(&x)) = (out.first_mut(), at.first()) {
            *y = self.y(x);
        }
        if let (Some(y), Some(&x)) = (out.last_mut(), at.last()) {
            *y = self.y(x);
        }
    }

    /// Height of the line at this x, which may lie beyond its ends.
    pub(crate) fn y_extended(&self, x: f64) -> f64 {
        if x >= self.x0 && x <= self.x1 { self.y(x) } else { self.through(x) }
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

/// A run by its extent and its greatest clear length.
#[derive(Debug, Clone, Copy)]
pub(crate) struct RunSpan {
    pub(crate) left: f64,
    pub(crate) right: f64,
    /// Square millimetres.
    pub(crate) area: f64,
    pub(crate) foot: f64,
    pub(crate) head: f64,
    pub(crate) clear: f64,
    /// What its trapezoids bear.
    label: usize,
    /// The area as a sum of trapezoids, where there are several.
    steps: i128,
    /// The foot of the slab at hand.
    foot_of_slab: [f64; 2],
}

/// The part of a run between two neighbouring breaks of the outline, with the heights of its corners.
#[derive(Debug, Clone, Copy)]
struct Trapezoid<'a> {
    lower: &'a Segment,
    upper: &'a Segment,
    x0: f64,
    x1: f64,
    foot: [f64; 2],
    head: [f64; 2],
    run: usize,
}

/// A segment that crosses the slab at hand, and its height where the sweep stands.
#[derive(Debug, Clone, Copy)]
struct Crossing<'a> {
    line: &'a Segment,
    y: f64,
}

/// Cuts strips, asked for from left to right. Its buffers are reused: a strip allocates nothing once they have grown.
#[derive(Debug)]
pub(crate) struct Clipper<'a> {
    /// By their left ends.
    segments: &'a [Segment],
    /// What goes on from the left and the right end of each segment; empty where no line is shifted unlike its neighbour.
    links: Vec<[Option<Next>; 2]>,
    next: usize,
    /// Every x at which an edge starts or ends, from the left, and how many of them lie behind.
    breaks: Vec<f64>,
    passed: usize,
    next_break: f64,
    /// Where the sweep stands.
    x: f64,
    /// What crosses the slab left of the next break, from the foot up: between two breaks nothing changes places.
    active: Vec<Crossing<'a>>,
    cells: Vec<Trapezoid<'a>>,
    /// The run of each label.
    labelled: Vec<usize>,
    runs: Vec<RunSpan>,
    parts: Vec<Part<'a>>,
    /// Where the lower parts of each run start, the upper ones, and where those end.
    places: Vec<[usize; 3]>,
    notches: Vec<Notch<'a>>,
    /// Where the notches of each run start and end.
    notched: Vec<[usize; 2]>,
}

/// Heights closer than this are told apart in the middle of the slab, where rounding does not matter; in millimetres.
const CLOSE: f64 = 1e-3;

impl<'a> Clipper<'a> {
    pub(crate) fn new(segments: &'a mut [Segment]) -> Clipper<'a> {
        order(segments);
        let mut breaks: Vec<i64> = segments.iter().flat_map(|s| [key(s.x0), key(s.x1)]).collect();
        breaks.sort_unstable();
        let links = link(segments);
        Clipper::sorted(segments, breaks.into_iter().map(of_key).collect(), links)
    }

    /// Of segments by their left ends, with every x at which one starts or ends, from the left.
    pub(crate) fn sorted(segments: &'a [Segment], breaks: Vec<f64>, links: Vec<[Option<Next>; 2]>) -> Clipper<'a> {
        let next_break = breaks.first().copied().unwrap_or(f64::INFINITY);
        let (active, cells, runs) = (Vec::with_capacity(16), Vec::with_capacity(8), Vec::with_capacity(4));
        let (labelled, parts, places, x) = (Vec::new(), Vec::new(), Vec::new(), f64::NEG_INFINITY);
        let (notches, notched) = (Vec::new(), Vec::new());
        Clipper { segments, links, next: 0, breaks, passed: 0, next_break, x, active, cells, labelled, runs, parts, places, notches, notched }
    }

    /// Cuts the strip between these two x, which must lie right of the strip before.
    pub(crate) fn cut(&mut self, left: f64, right: f64) {
        while self.next_break <= left {
            self.pass();
        }
        if self.x < left {
            for crossing in &mut self.active {
                crossing.y = crossing.line.y(left);
            }
        }
        self.cells.clear();
        self.runs.clear();
        let (mut x0, mut before) = (left, 0);
        // The one run of the strip, as long as one trapezoid opens to the next.
        let mut only: Option<RunSpan> = None;
        loop {
            let x1 = least(self.next_break, right);
            let first = self.cells.len();
            for pair in self.active.chunks_exact_mut(2) {
                let [lower, upper] = pair else { continue };
                let (foot, head) = ([lower.y, lower.line.y(x1)], [upper.y, upper.line.y(x1)]);
                (lower.y, upper.y) = (foot[1], head[1]);
                self.cells.push(Trapezoid { lower: lower.line, upper: upper.line, x0, x1, foot, head, run: self.cells.len() });
            }
            if first > 0 {
                match self.cells.get_mut(before..) {
                    Some([one, two]) if (before == 0 || only.is_some()) && one.opens_to(two) => {
                        two.run = one.run;
                        only.get_or_insert_with(|| RunSpan::first_of(one)).add(two);
                    }
                    _ => {
                        only = None;
                        self.join(before, first);
                    }
                }
            }
            before = first;
            self.x = x1;
            if x1 >= right {
                break;
            }
            x0 = x1;
            self.pass();
        }
        if let Some(run) = only {
            self.runs.push(run.summed());
        } else if before == 0 {
            // In one slab every trapezoid is a run.
            self.runs.extend(self.cells.iter().map(RunSpan::of));
        } else {
            self.gather();
        }
    }

    /// How many of the strips between these seams, from the first on, end before an edge does, and the two lines that bound all of them: the same numbers
    /// as by [`cut`](Self::cut), which need not be asked for them.
    pub(crate) fn skip(&mut self, seams: &[f64]) -> Option<(usize, [&'a Segment; 2])> {
        let (&left, rest) = seams.split_first()?;
        while self.next_break <= left {
            self.pass();
        }
        let [lower, upper] = self.active.as_mut_slice() else { return None };
        let next_break = self.next_break;
        let count = rest.iter().take_while(|&&right| right <= next_break).count();
        let &right = rest.get(count.checked_sub(1)?)?;
        (lower.y, upper.y) = (lower.line.y(right), upper.line.y(right));
        self.x = right;
        Some((count, [lower.line, upper.line]))
    }

    /// Goes over the next break: what ends there goes, what starts there comes in at its place.
    fn pass(&mut self) {
        let x = self.next_break;
        let rest = self.breaks.get(self.passed..).unwrap_or_default();
        self.passed += rest.iter().take_while(|&&at| at <= x).count();
        self.next_break = self.breaks.get(self.passed).copied().unwrap_or(f64::INFINITY);
        let from = self.next;
        let rest = self.segments.get(from..).unwrap_or_default();
        self.next += rest.iter().take_while(|s| s.x0 <= x).count();
        if self.x < x {
            for crossing in &mut self.active {
                crossing.y = crossing.line.y(x);
            }
            self.x = x;
        }
        if let Some([line]) = self.segments.get(from..self.next) {
            // Mostly one edge goes on from another, and takes its place.
            let mut ended = self.active.iter_mut().filter(|crossing| crossing.line.x1 <= x);
            if let (Some(one), None) = (ended.next(), ended.next())
                && one.line.y1.to_bits() == line.y0.to_bits()
            {
                *one = Crossing { line, y: line.y0 };
                return;
            }
        }
        self.active.retain(|crossing| crossing.line.x1 > x);
        let middle = (x + self.next_break) * 0.5;
        for line in self.segments.get(from..self.next).unwrap_or_default() {
            let y = line.y0;
            let below = |other: &Crossing<'_>| {
                if (other.y - y).abs() > CLOSE {
                    return other.y < y;
                }
                other.line.y(middle).total_cmp(&line.y(middle)).then(other.line.slope().total_cmp(&line.slope())).is_lt()
            };
            let at = self.active.iter().position(|other| !below(other)).unwrap_or(self.active.len());
            self.active.insert(at, Crossing { line, y });
        }
    }

    /// The runs of the strip that was cut last by their extents, from the foot up.
    pub(crate) fn spans(&self) -> &[RunSpan] {
        &self.runs
    }

    /// The runs of the strip that was cut last, from the foot up.
    pub(crate) fn runs(&mut self) -> impl Iterator<Item = Run<'_>> {
        self.gather_parts();
        let this = &*self;
        this.runs.iter().zip(this.places.iter().zip(&this.notched)).map(|(r, (&[first, middle, end], &[from, to]))| {
            let lower = this.parts.get(first..middle).unwrap_or_default();
            let upper = this.parts.get(middle..end).unwrap_or_default();
            let (lower_beside, upper_beside) = (this.beside(lower, r), this.beside(upper, r));
            Run {
                left: r.left,
                right: r.right,
                lower,
                upper,
                lower_beside,
                upper_beside,
                area: r.area,
                notches: this.notches.get(from..to).unwrap_or_default(),
            }
        })
    }

    /// The lowest and the highest boundary of every run.
    fn gather_parts(&mut self) {
        self.parts.clear();
        self.places.clear();
        self.notches.clear();
        self.notched.clear();
        for r in &self.runs {
            let (first, first_notch) = (self.parts.len(), self.notches.len());
            let of_run = || self.cells.iter().filter(|c| c.run == r.label);
            // Trapezoids come slab by slab from the left, and in a slab from the foot up.
            let (mut x, mut below) = (f64::NEG_INFINITY, None::<&Trapezoid<'_>>);
            for c in of_run() {
                match below {
                    // Over another trapezoid of the slab: what lies between the two is left out.
                    Some(below) if c.x1 <= x => {
                        let gap = Trapezoid { lower: below.upper, upper: c.lower, foot: below.head, head: c.foot, ..*c };
                        leave_out(&mut self.notches, first_notch, &gap);
                    }
                    _ => extend(&mut self.parts, first, c.lower, c),
                }
                (x, below) = (c.x1, Some(c));
            }
            let middle = self.parts.len();
            let mut cells = of_run().peekable();
            while let Some(c) = cells.next() {
                if cells.peek().is_none_or(|n| n.x0 > c.x0) {
                    extend(&mut self.parts, middle, c.upper, c);
                }
            }
            self.places.push([first, middle, self.parts.len()]);
            self.notched.push([first_notch, self.notches.len()]);
        }
    }

    fn beside(&self, parts: &[Part<'a>], run: &RunSpan) -> [Option<Part<'a>>; 2] {
        if self.links.is_empty() {
            return [None, None];
        }
        let link = |line: &Segment, end: usize| self.links.get(line.at).and_then(|l| l.get(end).copied().flatten());
        let whole = |next: Next| self.segments.get(next.at).map(|line| Part { line, x0: line.x0, x1: line.x1 });
        let left = parts.first().filter(|p| p.line.x0 <= run.left).and_then(|p| link(p.line, 0).filter(|n| p.line.x0 + n.reach > run.left));
        let right = parts.last().filter(|p| p.line.x1 >= run.right).and_then(|p| link(p.line, 1).filter(|n| p.line.x1 - n.reach < run.right));
        [left.and_then(whole), right.and_then(whole)]
    }

    /// Gives the trapezoids on the two sides of a break one label where their openings overlap. On each side they come from the foot up.
    fn join(&mut self, before: usize, first: usize) {
        if let Some((old, new)) = self.cells.split_at_mut_checked(first)
            && let Some(old) = old.get(before..)
            && Trapezoid::go_on(old, new)
        {
            for (one, two) in old.iter().zip(new) {
                two.run = one.run;
            }
            return;
        }
        let (mut a, mut b) = (before, first);
        while a < first {
            let (Some(one), Some(two)) = (self.cells.get(a), self.cells.get(b)) else { break };
            let (head, next) = (one.head[1], two.head[0]);
            // The lower label stays, so that no trapezoid bears that of a later one.
            let (to, from) = (one.run.min(two.run), one.run.max(two.run));
            if least(head, next) > most(one.foot[1], two.foot[0]) && from != to {
                for cell in self.cells.iter_mut().skip(from).filter(|c| c.run == from) {
                    cell.run = to;
                }
            }
            if head < next { a += 1 } else { b += 1 }
        }
    }

    /// The runs of the trapezoids that bear one label each.
    fn gather(&mut self) {
        self.labelled.clear();
        for cell in &self.cells {
            match self.labelled.get(cell.run).and_then(|&at| self.runs.get_mut(at)) {
                Some(run) => {
                    run.add(cell);
                    self.labelled.push(usize::MAX);
                }
                None => {
                    self.labelled.push(self.runs.len());
                    self.runs.push(RunSpan::first_of(cell));
                }
            }
        }
        for run in &mut self.runs {
            *run = run.summed();
        }
        if !self.runs.is_sorted_by(|a, b| a.foot < b.foot) {
            self.runs.sort_by(|a, b| a.foot.total_cmp(&b.foot).then(a.left.total_cmp(&b.left)));
        }
    }
}

impl Trapezoid<'_> {
    /// Whether each trapezoid left of a break opens to the one of its number at the right, and to no other.
    fn go_on(old: &[Self], new: &[Self]) -> bool {
        let (mut apart, mut below) = (true, f64::NEG_INFINITY);
        for (one, two) in old.iter().zip(new) {
            apart &= least(one.foot[1], two.foot[0]) >= below && one.opens_to(two);
            below = most(one.head[1], two.head[0]);
        }
        apart && old.len() == new.len()
    }

    /// Whether this one, left of a break, and that at its right have an opening in common.
    #[inline]
    fn opens_to(&self, right: &Self) -> bool {
        least(self.head[1], right.head[0]) > most(self.foot[1], right.foot[0])
    }

    fn area(&self) -> f64 {
        area(self.foot, self.head, [self.x0, self.x1])
    }
}

impl RunSpan {
    /// A run of one trapezoid.
    #[inline]
    fn of(cell: &Trapezoid<'_>) -> RunSpan {
        let Trapezoid { foot, head, .. } = *cell;
        RunSpan {
            left: cell.x0,
            right: cell.x1,
            area: cell.area(),
            foot: least(foot[0], foot[1]),
            head: most(head[0], head[1]),
            clear: clear(foot, head),
            label: cell.run,
            steps: 0,
            foot_of_slab: foot,
        }
    }

    /// The first of several trapezoids.
    fn first_of(cell: &Trapezoid<'_>) -> RunSpan {
        let run = RunSpan::of(cell);
        RunSpan { steps: steps(run.area), ..run }
    }

    /// With the area of all its trapezoids.
    fn summed(self) -> RunSpan {
        RunSpan { area: parted(self.steps), ..self }
    }

    /// One trapezoid more. They come slab by slab from the left, and in a slab from the foot up.
    fn add(&mut self, cell: &Trapezoid<'_>) {
        self.steps += steps(cell.area());
        if self.right < cell.x1 {
            self.right = cell.x1;
            self.foot_of_slab = cell.foot;
            self.foot = least(self.foot, least(cell.foot[0], cell.foot[1]));
        }
        self.head = most(self.head, most(cell.head[0], cell.head[1]));
        self.clear = most(self.clear, clear(self.foot_of_slab, cell.head));
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

/// Of a run between two lines its left and right side, its foot and head, its clear length and its area.
#[inline]
pub(crate) fn between(sides: [f64; 2], foot: [f64; 2], head: [f64; 2]) -> [f64; 6] {
    [sides[0], sides[1], least(foot[0], foot[1]), most(head[0], head[1]), clear(foot, head), area(foot, head, sides)]
}

/// The area between two lines from their heights at both sides.
#[inline]
fn area(foot: [f64; 2], head: [f64; 2], sides: [f64; 2]) -> f64 {
    ((head[0] - foot[0]) + (head[1] - foot[1])) * 0.5 * (sides[1] - sides[0])
}

/// The greatest length along the seams between two lines.
#[inline]
fn clear(foot: [f64; 2], head: [f64; 2]) -> f64 {
    most(head[0] - foot[0], head[1] - foot[1])
}

/// The lesser of two numbers, neither of which is NaN.
#[inline]
fn least(a: f64, b: f64) -> f64 {
    if a < b { a } else { b }
}

/// The greater of two numbers, neither of which is NaN.
#[inline]
fn most(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

/// A whole number that compares as the number does: sorts then move words.
fn key(x: f64) -> i64 {
    let bits = x.to_bits().cast_signed();
    bits ^ (((bits >> 63).cast_unsigned()) >> 1).cast_signed()
}

/// The number of a [`key`]; the sign bit stays, so the way back is the way there.
fn of_key(key: i64) -> f64 {
    f64::from_bits((key ^ (((key >> 63).cast_unsigned()) >> 1).cast_signed()).cast_unsigned())
}

/// Sorts segments by their left ends, at one place by their edges, and tells each its place.
fn order(segments: &mut [Segment]) {
    let mut keys: Vec<(i64, usize)> = segments.iter().enumerate().map(|(i, s)| (key(s.x0), i)).collect();
    keys.sort_unstable();
    let sorted: Vec<Segment> = keys.iter().enumerate().filter_map(|(at, &(_, i))| segments.get(i).map(|s| Segment { at, ..*s })).collect();
    segments.copy_from_slice(&sorted);
}

/// For segments sorted by their left ends, which go on from each other and are shifted differently. Empty where none is.
fn link(segments: &[Segment]) -> Vec<[Option<Next>; 2]> {
    let [mut lowest, mut highest] = [f64::INFINITY, f64::NEG_INFINITY];
    let (mut least, mut most) = (lowest, highest);
    for s in segments {
        let [left, right] = s.allowance;
        (lowest, highest) = (lowest.min(left).min(right), highest.max(left).max(right));
        (least, most) = (least.min(s.trim), most.max(s.trim));
    }
    if lowest >= highest && least >= most {
        return Vec::new();
    }
    let mut out = vec![[None, None]; segments.len()];
    for (k, a) in segments.iter().enumerate() {
        let from = segments.partition_point(|b| b.x0 < a.x1);
        let mut on =
            segments.iter().enumerate().skip(from).take_while(|(_, b)| b.x0 <= a.x1).filter(|(_, b)| b.over == a.over && b.y0.to_bits() == a.y1.to_bits());
        let (Some((at, b)), None) = (on.next(), on.next()) else { continue };
        let ([_, of_a], [of_b, _]) = (a.allowance, b.allowance);
        let apart = (of_a - of_b).abs().max((of_a + a.trim - of_b - b.trim).abs());
        // The shifted lines may be turned toward each other.
        let reach = apart / ((a.slope() - b.slope()).abs() - a.lean().abs() - b.lean().abs());
        if reach > 0.0 && reach.is_finite() {
            for (of, end, at) in [(k, 1, at), (at, 0, k)] {
                if let Some(slot) = out.get_mut(of).and_then(|l| l.get_mut(end)) {
                    *slot = Some(Next { at, reach });
                }
            }
        }
    }
    out
}

/// An area in steps of 1e-9 mm2, so that a sum is the same from the left and from the right.
#[allow(clippy::cast_possible_truncation, reason = "saturates far beyond any roof")]
fn steps(square_millimetres: f64) -> i128 {
    // An area is never negative but by rounding, so that half up is the nearest. What 9 000 m2 hold goes the quick way.
    let steps = square_millimetres * 1e9 + 0.5;
    if steps < 9e18 { i128::from(steps as i64) } else { steps as i128 }
}

#[allow(clippy::cast_precision_loss, reason = "rounded once here")]
fn parted(area: i128) -> f64 {
    // A sum that fits a word goes the quick way, to the same number.
    i64::try_from(area).map_or_else(|_| area as f64, |area| area as f64) / 1e9
}
