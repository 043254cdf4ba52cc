//! What was measured, by number: residuals, what each depends on, and whether it is enough.

use super::least_squares::{Factored, Linear, dot};
use super::measured_plane::{LevelSide, Mark, MeasuredLength, MeasuredOpening, SlopeEnd, SquareCorner};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::units::Length;
use core::ops::Range;

pub(super) type V2 = [f64; 2];

pub(super) fn sub(a: V2, b: V2) -> V2 {
    [a[0] - b[0], a[1] - b[1]]
}

pub(super) fn along(a: V2, d: V2, by: f64) -> V2 {
    [a[0] + d[0] * by, a[1] + d[1] * by]
}

pub(super) fn length(a: V2) -> f64 {
    num::hypot(a[0], a[1])
}

/// A corner, or a mark at so many millimetres from one corner toward another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Spot {
    Corner(usize),
    Mark { from: usize, toward: usize, at: f64 },
}

/// One observation; its residual is a length.
#[derive(Debug, Clone, Copy)]
pub(super) enum Observed {
    Distance {
        from: Spot,
        to: Spot,
        length: Length,
    },
    /// The arms from the first corner to the others are square.
    Square {
        at: usize,
        arms: [usize; 2],
    },
    /// The two sides are parallel, running the ways given.
    Parallel {
        one: [usize; 2],
        two: [usize; 2],
    },
}

/// An observation with its name, its path and its tolerance.
#[derive(Debug, Clone)]
pub(super) struct Observation {
    pub(super) what: String,
    pub(super) path: String,
    pub(super) observed: Observed,
    pub(super) tolerance: Length,
}

/// Everything known of a plane.
#[derive(Debug, Clone)]
pub(super) struct Known {
    /// The corners of the plane, and then those of its openings.
    pub(super) corners: Vec<String>,
    /// Where each ring begins and ends among them, the plane's own first.
    pub(super) rings: Vec<Range<usize>>,
    marks: Vec<(String, Spot)>,
    pub(super) observed: Vec<Observation>,
    /// The side that lays the axes, as it runs round the ring.
    pub(super) axis: Option<([usize; 2], SlopeEnd)>,
}

impl Known {
    pub(super) fn new(own: &[String], openings: &[MeasuredOpening]) -> Known {
        let mut corners = own.to_vec();
        let mut rings: Vec<Range<usize>> = core::iter::once(0..own.len()).collect();
        for opening in openings {
            rings.push(corners.len()..corners.len() + opening.corners.len());
            corners.extend(opening.corners.iter().cloned());
        }
        Known { corners, rings, marks: Vec::new(), observed: Vec::new(), axis: None }
    }

    pub(super) fn count(&self) -> usize {
        self.corners.len()
    }

    /// The ring of the plane itself, out of something for every corner.
    pub(super) fn outer<'a, T>(&self, all: &'a [T]) -> &'a [T] {
        self.rings.first().and_then(|r| all.get(r.clone())).unwrap_or_default()
    }

    /// The rings of its openings.
    pub(super) fn openings<'a, T>(&self, all: &'a [T]) -> impl Iterator<Item = &'a [T]> {
        self.rings.iter().skip(1).map(move |r| all.get(r.clone()).unwrap_or_default())
    }

    /// The corners before and after one in its ring.
    fn beside(&self, corner: usize) -> [usize; 2] {
        let ring = self.rings.iter().find(|r| r.contains(&corner)).cloned().unwrap_or_default();
        let n = ring.len().max(1);
        let at = |by: usize| ring.start + (corner - ring.start.min(corner) + by) % n;
        [at(n - 1), at(1)]
    }

    pub(super) fn name(&self, corner: usize) -> &str {
        self.corners.get(corner).map_or("", String::as_str)
    }

    pub(super) fn pair(&self, [a, b]: [usize; 2]) -> String {
        format!("{}-{}", self.name(a), self.name(b))
    }

    fn corner(&self, name: &str, path: &str) -> Result<usize, Error> {
        self.corners
            .iter()
            .position(|c| c == name)
            .ok_or_else(|| Error::new(ErrorKind::Unknown, "the plane has no corner of this name").at(path).value_of(name).accepts(self.corners.join(", ")))
    }

    fn spot(&self, name: &str, path: &str) -> Result<Spot, Error> {
        if let Some((_, spot)) = self.marks.iter().find(|(n, _)| n == name) {
            return Ok(*spot);
        }
        self.corner(name, path).map(Spot::Corner).map_err(|e| {
            let names = self.corners.iter().chain(self.marks.iter().map(|(n, _)| n)).cloned().collect::<Vec<_>>().join(", ");
            Error::new(ErrorKind::Unknown, "the plane has no corner or mark of this name").at(e.path()).value_of(name).accepts(names)
        })
    }

    fn unlike(a: usize, b: usize, name: &str, path: &str) -> Result<(), Error> {
        if a == b { Err(Error::new(ErrorKind::Conflict, "twice the same corner").at(path).value_of(name).accepts("two corners")) } else { Ok(()) }
    }

    pub(super) fn mark(&mut self, mark: &Mark) -> Result<(), Error> {
        let (from, toward) = (self.corner(&mark.from, "from")?, self.corner(&mark.toward, "toward")?);
        Known::unlike(from, toward, &mark.toward, "toward")?;
        let at = mark.distance.positive("distance")?.mm();
        self.marks.push((mark.name.clone(), Spot::Mark { from, toward, at }));
        Ok(())
    }

    fn add(&mut self, what: String, path: String, observed: Observed, tolerance: Length) {
        self.observed.push(Observation { what, path, observed, tolerance });
    }

    pub(super) fn length(&mut self, given: &MeasuredLength, tolerance: Length) -> Result<(), Error> {
        let mut faults = Faults::default();
        let from = faults.keep(self.spot(&given.from, "from"));
        let to = faults.keep(self.spot(&given.to, "to"));
        faults.keep(given.length.positive("length"));
        faults.keep(given.tolerance.unwrap_or(tolerance).positive("tolerance"));
        if given.from == given.to {
            faults.add(Error::new(ErrorKind::Conflict, "measured from a corner to itself").at("to").value_of(&given.to).accepts("two corners or marks"));
        }
        if given.length.mm() >= GREATEST_MM {
            let far = Error::new(ErrorKind::OutOfRange, "longer than any roof plane").at("length").value_of(given.length);
            faults.add(far.accepts("less than 5 km").cured_by("check the unit of the reading"));
        }
        faults.check()?;
        let (Some(from), Some(to)) = (from, to) else { return Ok(()) };
        let path = format!("lengths[{}]", self.observed.len());
        self.add(format!("{}-{}", given.from, given.to), path, Observed::Distance { from, to, length: given.length }, given.tolerance.unwrap_or(tolerance));
        Ok(())
    }

    pub(super) fn square(&mut self, given: &SquareCorner, tolerance: Length) -> Result<(), Error> {
        let at = self.corner(&given.at, "at")?;
        let arms = match &given.between {
            None => self.beside(at),
            Some([one, two]) => [self.corner(one, "between[0]")?, self.corner(two, "between[1]")?],
        };
        Known::unlike(arms[0], arms[1], self.name(arms[1]), "between[1]")?;
        Known::unlike(at, arms[0], &given.at, "between[0]")?;
        Known::unlike(at, arms[1], &given.at, "between[1]")?;
        let tolerance = given.tolerance.unwrap_or(tolerance).positive("tolerance")?;
        let number = self.observed.iter().filter(|o| matches!(o.observed, Observed::Square { .. })).count();
        let what = format!("square at {} to {} and {}", given.at, self.name(arms[0]), self.name(arms[1]));
        self.add(what, format!("square[{number}]"), Observed::Square { at, arms }, tolerance);
        Ok(())
    }

    pub(super) fn level(&mut self, given: &LevelSide, tolerance: Length) -> Result<(), Error> {
        let [a, b] = [self.corner(&given.side[0], "side[0]")?, self.corner(&given.side[1], "side[1]")?];
        let next = |corner: usize| self.rings.first().filter(|r| r.contains(&corner)).map(|_| self.beside(corner)[1]);
        let ring = match () {
            () if next(a) == Some(b) => [a, b],
            () if next(b) == Some(a) => [b, a],
            () => {
                let said = Error::new(ErrorKind::Geometry, "no side of the plane runs between the two corners").at("side");
                return Err(said.value_of(self.pair([a, b])).accepts("the two ends of a side"));
            }
        };
        let Some((axis, end)) = self.axis else {
            self.axis = Some((ring, given.end));
            return Ok(());
        };
        // Round the ring the foot and the head run against each other.
        let two = if end == given.end { ring } else { [ring[1], ring[0]] };
        let number = self.observed.iter().filter(|o| matches!(o.observed, Observed::Parallel { .. })).count() + 1;
        let what = format!("{} parallel to {}", self.pair(ring), self.pair(axis));
        self.add(what, format!("level[{number}]"), Observed::Parallel { one: axis, two }, tolerance);
        Ok(())
    }

    /// The measured distances between corners, by the number of the observation.
    pub(super) fn between_corners(&self) -> impl Iterator<Item = (usize, usize, usize, f64, f64)> {
        self.observed.iter().enumerate().filter_map(|(i, o)| match o.observed {
            Observed::Distance { from: Spot::Corner(a), to: Spot::Corner(b), length } => Some((i, a, b, length.mm(), o.tolerance.mm())),
            _ => None,
        })
    }

    /// Residuals over their tolerances, and what they depend on, for corners at these places.
    pub(super) fn linear(&self, at: &[V2]) -> Linear {
        let mut linear = Linear::new(2 * self.count());
        for o in &self.observed {
            let (residual, slopes) = o.observed.at(at);
            let weight = 1.0 / o.tolerance.mm();
            let slopes: Vec<(usize, f64)> = slopes.into_iter().flat_map(|(corner, d)| [(2 * corner, d[0] * weight), (2 * corner + 1, d[1] * weight)]).collect();
            linear.add(residual * weight, &slopes);
        }
        linear
    }
}

/// A length beyond this is a mixed-up unit.
const GREATEST_MM: f64 = 5e6;

fn corner(at: &[V2], number: usize) -> V2 {
    at.get(number).copied().unwrap_or_default()
}

impl Spot {
    fn place(self, at: &[V2]) -> V2 {
        match self {
            Spot::Corner(number) => corner(at, number),
            Spot::Mark { from, toward, at: distance } => {
                let d = sub(corner(at, toward), corner(at, from));
                along(corner(at, from), d, distance / length(d).max(f64::MIN_POSITIVE))
            }
        }
    }

    /// What a pull at the spot in this direction is to each corner.
    fn pull(self, at: &[V2], d: V2, out: &mut Vec<(usize, V2)>) {
        match self {
            Spot::Corner(number) => out.push((number, d)),
            Spot::Mark { from, toward, at: distance } => {
                let line = sub(corner(at, toward), corner(at, from));
                let long = length(line).max(f64::MIN_POSITIVE);
                let u = [line[0] / long, line[1] / long];
                // Along the line the mark goes with its own corner; across it, in proportion.
                let lengthwise = d[0] * u[0] + d[1] * u[1];
                let across = along(d, u, -lengthwise);
                let part = distance / long;
                out.push((from, along(d, across, -part)));
                out.push((toward, [across[0] * part, across[1] * part]));
            }
        }
    }
}

impl Observed {
    /// The residual in millimetres, solved less measured, and how it grows with each corner.
    pub(super) fn at(&self, at: &[V2]) -> (f64, Vec<(usize, V2)>) {
        let mut slopes = Vec::new();
        match *self {
            Observed::Distance { from, to, length: measured } => {
                let d = sub(to.place(at), from.place(at));
                let long = length(d);
                let u = if long > 0.0 { [d[0] / long, d[1] / long] } else { [1.0, 0.0] };
                to.pull(at, u, &mut slopes);
                from.pull(at, [-u[0], -u[1]], &mut slopes);
                (long - measured.mm(), slopes)
            }
            Observed::Square { at: apex, arms } => {
                let [a, b] = arms.map(|arm| sub(corner(at, arm), corner(at, apex)));
                let (scale, longer_first) = longer(a, b);
                let off = (a[0] * b[0] + a[1] * b[1]) / scale;
                let (da, db) = ([b[0] / scale, b[1] / scale], [a[0] / scale, a[1] / scale]);
                arms_slopes(&mut slopes, [apex, arms[0], apex, arms[1]], da, db, off, a, b, longer_first);
                (off, slopes)
            }
            Observed::Parallel { one, two } => {
                let (a, b) = (sub(corner(at, one[1]), corner(at, one[0])), sub(corner(at, two[1]), corner(at, two[0])));
                let (scale, longer_first) = longer(a, b);
                let off = (a[0] * b[1] - a[1] * b[0]) / scale;
                let (da, db) = ([b[1] / scale, -b[0] / scale], [-a[1] / scale, a[0] / scale]);
                arms_slopes(&mut slopes, [one[0], one[1], two[0], two[1]], da, db, off, a, b, longer_first);
                (off, slopes)
            }
        }
    }
}

fn longer(a: V2, b: V2) -> (f64, bool) {
    let (la, lb) = (length(a), length(b));
    (la.max(lb).max(f64::MIN_POSITIVE), la >= lb)
}

/// Slopes of a product of two arms over the longer of them.
#[allow(clippy::too_many_arguments, reason = "two arms, alike")]
fn arms_slopes(slopes: &mut Vec<(usize, V2)>, ends: [usize; 4], da: V2, db: V2, off: f64, a: V2, b: V2, longer_first: bool) {
    let of_scale = |arm: V2, is_longer: bool| {
        let square = arm[0] * arm[0] + arm[1] * arm[1];
        if is_longer && square > 0.0 { -off / square } else { 0.0 }
    };
    let da = along(da, a, of_scale(a, longer_first));
    let db = along(db, b, of_scale(b, !longer_first));
    for (foot, head, d) in [(ends[0], ends[1], da), (ends[2], ends[3], db)] {
        slopes.push((head, d));
        slopes.push((foot, [-d[0], -d[1]]));
    }
}

/// No length may be more than any other way between its ends.
pub(super) fn check_reach(known: &Known) -> Result<(), Error> {
    let n = known.count();
    let mut faults = Faults::default();
    for (number, a, b, direct, tolerance) in known.between_corners() {
        // The shortest other way at its longest, by Bellman and Ford's rounds; at most 64 corners.
        let mut way: Vec<(f64, Option<usize>)> = vec![(f64::INFINITY, None); n];
        if let Some(start) = way.get_mut(a) {
            start.0 = 0.0;
        }
        for _ in 0..n {
            let mut changed = false;
            for (other, p, q, length, slack) in known.between_corners().filter(|(i, ..)| *i != number) {
                for (here, there) in [(p, q), (q, p)] {
                    let reached = way.get(here).map_or(f64::INFINITY, |w| w.0) + length + slack;
                    if let Some(place) = way.get_mut(there).filter(|w| reached < w.0) {
                        *place = (reached, Some(other));
                        changed = true;
                    }
                }
            }
            if !changed {
                break;
            }
        }
        let shortest = way.get(b).map_or(f64::INFINITY, |w| w.0);
        if direct - tolerance > shortest {
            let mut names = Vec::new();
            let mut here = b;
            while let Some(edge) = way.get(here).and_then(|w| w.1).filter(|_| here != a && names.len() < n) {
                let Some((_, p, q, ..)) = known.between_corners().find(|(i, ..)| *i == edge) else { break };
                names.push(known.observed.get(edge).map_or("", |o| o.what.as_str()));
                here = if p == here { q } else { p };
            }
            names.reverse();
            let o = known.observed.get(number);
            faults.add(
                Error::new(ErrorKind::Impossible, format!("{} is longer than the way round by {}", o.map_or("", |o| o.what.as_str()), names.join(" and ")))
                    .at(format!("{}.length", o.map_or("", |o| o.path.as_str())))
                    .value_of(Length::from_mm(direct)?)
                    .accepts(format!("at most {}, with the tolerances", Length::from_mm(shortest + tolerance)?))
                    .cured_by(format!("measure {} and {} again", o.map_or("", |o| o.what.as_str()), names.join(", "))),
            );
        }
    }
    faults.check()
}

/// Directions of rows that were seen, square to each other.
struct Seen(Vec<Vec<f64>>);

impl Seen {
    /// Takes a row, and says whether it adds something.
    fn takes(&mut self, mut row: Vec<f64>) -> bool {
        let whole = dot(&row, &row).sqrt();
        for _ in 0..2 {
            for seen in &self.0 {
                let by = dot(&row, seen);
                row.iter_mut().zip(seen).for_each(|(r, s)| *r -= by * s);
            }
        }
        let rest = dot(&row, &row).sqrt();
        if rest <= whole * 1e-7 || whole == 0.0 {
            return false;
        }
        row.iter_mut().for_each(|r| *r /= rest);
        self.0.push(row);
        true
    }
}

/// A shape without any symmetry: what is enough for it is enough in general.
fn general_shape(n: usize) -> Vec<V2> {
    let mut state = 12_345_u32;
    (0..n)
        .map(|i| {
            let mut jitter = || {
                state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                f64::from(state >> 8) / f64::from(1_u32 << 24)
            };
            let turn = 360.0 * (f64::from(u32::try_from(i).unwrap_or(0)) + 0.3 * jitter()) / f64::from(u32::try_from(n).unwrap_or(1));
            let radius = 4000.0 + 2000.0 * jitter();
            [radius * num::cos_deg(turn), 0.7 * radius * num::sin_deg(turn)]
        })
        .collect()
}

fn row(observed: &Observed, at: &[V2], n: usize) -> Vec<f64> {
    let mut row = vec![0.0; 2 * n];
    for (corner, d) in observed.at(at).1 {
        for (i, part) in d.iter().enumerate() {
            if let Some(place) = row.get_mut(2 * corner + i) {
                *place += part;
            }
        }
    }
    row
}

fn distance(a: usize, b: usize) -> Observed {
    Observed::Distance { from: Spot::Corner(a), to: Spot::Corner(b), length: Length::ZERO }
}

/// All pairs of corners: sides first, then the shortest diagonals round the ring.
fn pairs(n: usize) -> impl Iterator<Item = (usize, usize)> {
    (1..=n / 2).flat_map(move |apart| (0..n).map(move |a| (a, (a + apart) % n)))
}

/// Whether the observations can fix a shape; if not, which lengths would.
pub(super) fn check_enough(known: &Known) -> Result<(), Error> {
    let n = known.count();
    let at = general_shape(n);
    let mut seen = Seen(Vec::new());
    for o in &known.observed {
        seen.takes(row(&o.observed, &at, n));
    }
    let needed = 2 * n - 3;
    let had = seen.0.len();
    if had >= needed {
        return Ok(());
    }
    let missing: Vec<String> = pairs(n).filter(|(a, b)| seen.takes(row(&distance(*a, *b), &at, n))).map(|(a, b)| known.pair([a, b])).collect();
    Err(Error::new(ErrorKind::Missing, "the measurements do not fix the shape")
        .at("lengths")
        .value_of(format_args!("{had} that count, of {} given", known.observed.len()))
        .accepts(format!("{needed} that count for {n} corners"))
        .cured_by(format!("measure {}", missing.join(" and "))))
}

/// Whether the observations fix the shape where it lies; if not, the length that would.
pub(super) fn check_fixed(known: &Known, at: &[V2], factored: &Factored) -> Result<(), Error> {
    let n = known.count();
    let needed = 2 * n - 3;
    if factored.rank() >= needed {
        return Ok(());
    }
    // The pair whose distance a move that nothing sees would change most.
    let mut best = (0.0_f64, (0, 0));
    for way in factored.free() {
        for (a, b) in pairs(n) {
            let rate = dot(&row(&distance(a, b), at, n), &way).abs();
            if rate > best.0 * 1.000_001 {
                best = (rate, (a, b));
            }
        }
    }
    Err(Error::new(ErrorKind::Missing, "a corner of the shape can move and no measurement would tell")
        .at("lengths")
        .value_of(format_args!("{} that count here", factored.rank()))
        .accepts(format!("{needed} that count for {n} corners"))
        .cured_by(format!("measure {}, which would tell most", known.pair([best.1.0, best.1.1]))))
}
