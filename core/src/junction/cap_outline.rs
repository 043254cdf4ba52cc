//! The blank of an end cap: the hollow between a trim and what it lies over, and the tabs that go under the trim.

use super::draft::{TrimSheet, keep_under};
use super::support::{SectionPoint, Support};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::practice::junction as practice;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::{BlankBend, BlankEdge, BlankFold, BlankLine, BlankSide, Direction, FlatBlank, Point};
use crate::units::{Angle, BendAngle, Length};

/// The cap at the end of a trim, as its section gives it.
///
/// The cap stands square to the line. Above, its edge is the trim's own underside, below it is what the trim lies over: the pan of the first side, that of the second, and where
/// the two meet. Where the trim's edge stands free the cap goes down from it square to the pan; where a leg goes up a wall the cap ends plumb at the wall; where the trim comes down
/// through the level of the pan, as at a rake, the cap ends there. Tabs along the trim are bent back under it, set in sealant and riveted; an edge too short for one has none.
/// The source is geometry; bends are sharp, and nothing is taken off for the bead on which the cap stands.
///
/// # Errors
/// Computing refuses fewer than two corners, other than one or two supports, a negative tab ([`ErrorKind::OutOfRange`]), and a trim that leaves no hollow of
/// [`LEAST_HOLLOW`](crate::practice::junction::LEAST_HOLLOW) anywhere ([`ErrorKind::Impossible`]): its end is folded down.
///
/// ```
/// use seamwright::junction::{CapOutline, SectionPoint, Support, TrimSheet};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Length};
/// let at = |x: i16, z: i16| SectionPoint { x: Length::inches(x), z: Length::inches(z) };
/// let cap = CapOutline {
///     corners: vec![at(-6, 2), at(0, 2), at(0, -4)],
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     on: vec![Support { rise: Angle::ZERO, height: Length::ZERO }],
///     tab: Length::ZERO,
/// };
/// // Over a level pan, down to where the face comes down past it: 6 in by 2 in.
/// let (width, height) = cap.compute()?.blank.bounds()?.size()?;
/// assert_eq!((width, height), (Length::inches(6), Length::inches(2)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CapOutline {
    /// The corners of the trim's face that lies on its supports, from the first side to the second.
    pub corners: Vec<SectionPoint>,
    /// The cap's sheet.
    pub sheet: TrimSheet,
    /// What the cap stands on: the upper faces of the pans, that of the first side and, where there is one, that of the second.
    pub on: Vec<Support>,
    /// Width of its tabs; nothing for none. [`CAP_TAB`](crate::practice::junction::CAP_TAB) unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::cap_tab"))]
    pub tab: Length,
}

/// An end cap as the shop makes it.
///
/// See [`CapOutline`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CapBlank {
    /// The face of the cap in the section, counter-clockwise, without its tabs.
    pub face: Vec<SectionPoint>,
    /// The greatest height of the hollow over what the cap stands on, plumb.
    pub height: Length,
    /// How many tabs it has.
    pub tabs: usize,
    /// The blank: x across as in the section from its leftmost point, y up from its lowest.
    pub blank: FlatBlank,
}

type P = (f64, f64);

/// Corners, each with what the side is that starts there, and the lines of bends.
type Outline = (Vec<(P, BlankSide)>, Vec<(P, P)>);

/// What the cap stands on, as a line from the first side to the second with at most one bend.
struct Ground {
    /// Slope and height at x = 0 of each side.
    sides: [(f64, f64); 2],
    /// Where they meet; before everything where they are one.
    bend: f64,
}

impl Ground {
    fn of(on: &[Support]) -> Ground {
        let line = |s: &Support| (s.rise.sin() / s.rise.cos(), s.height.mm() / s.rise.cos());
        let first = on.first().map_or((0.0, 0.0), line);
        let second = on.get(1).map_or(first, line);
        let (by, apart) = (first.0 - second.0, second.1 - first.1);
        Ground { sides: [first, second], bend: if by.abs() < 1e-9 { f64::NEG_INFINITY } else { apart / by } }
    }

    fn side(&self, x: f64) -> (f64, f64) {
        let [first, second] = self.sides;
        if x < self.bend { first } else { second }
    }

    fn at(&self, x: f64) -> f64 {
        let (slope, start) = self.side(x);
        start + slope * x
    }

    fn over(&self, p: P) -> f64 {
        p.1 - self.at(p.0)
    }

    /// The foot of a point, square to the side that it stands over; plumb where that would be on the other side.
    fn foot(&self, p: P) -> P {
        let (slope, start) = self.side(p.0);
        let x = (p.0 + slope * (p.1 - start)) / (1.0 + slope * slope);
        let x = if (x < self.bend) == (p.0 < self.bend) { x } else { p.0 };
        (x, self.at(x))
    }
}

/// Where a wall's leg begins: what goes straight up at an end of the trim is left out of the hollow.
fn without_wall_legs(corners: &[P]) -> (&[P], [bool; 2]) {
    let goes_up = |from: P, to: P| (to.0 - from.0).abs() < NOISE && to.1 > from.1;
    let (mut inner, mut walls) = (corners, [false; 2]);
    while let [.., from, to] = inner
        && goes_up(*from, *to)
    {
        (inner, walls[1]) = (&inner[..inner.len() - 1], true);
    }
    while let [to, from, ..] = inner
        && goes_up(*from, *to)
    {
        (inner, walls[0]) = (&inner[1..], true);
    }
    (inner, walls)
}

/// Shorter is rounding.
const NOISE: f64 = 1e-6;

/// The stretch of the trim over the ground that stands highest, and whether each of its ends is one of the trim's own.
fn highest_stretch(corners: &[P], ground: &Ground) -> (Vec<P>, [bool; 2]) {
    let mut runs: Vec<(Vec<P>, [bool; 2])> = Vec::new();
    let mut run: (Vec<P>, [bool; 2]) = (Vec::new(), [true, false]);
    // Split where the ground bends, so that along each piece the height over it is straight.
    let mut pieces: Vec<P> = Vec::new();
    for (i, p) in corners.iter().enumerate() {
        if let Some(before) = i.checked_sub(1).and_then(|j| corners.get(j))
            && (before.0 - ground.bend) * (p.0 - ground.bend) < -NOISE
        {
            let t = (ground.bend - before.0) / (p.0 - before.0);
            pieces.push((ground.bend, before.1 + t * (p.1 - before.1)));
        }
        pieces.push(*p);
    }
    for (i, p) in pieces.iter().enumerate() {
        let here = ground.over(*p);
        if let Some(before) = i.checked_sub(1).and_then(|j| pieces.get(j)) {
            let was = ground.over(*before);
            if (was > NOISE && here < -NOISE) || (was < -NOISE && here > NOISE) {
                let t = was / (was - here);
                let cut = (before.0 + t * (p.0 - before.0), before.1 + t * (p.1 - before.1));
                run.0.push(cut);
            }
        }
        if here >= -NOISE {
            run.0.push(*p);
        } else {
            runs.push(core::mem::take(&mut run));
        }
    }
    run.1[1] = true;
    runs.push(run);
    let height = |r: &(Vec<P>, [bool; 2])| r.0.iter().map(|p| ground.over(*p)).fold(0.0, f64::max);
    runs.into_iter().filter(|r| r.0.len() > 1).max_by(|a, b| height(a).total_cmp(&height(b))).unwrap_or_default()
}

/// A line without the points at which it does not turn, as where the ground bends under a straight leg.
fn without_straight_corners(line: &[P]) -> Vec<P> {
    let mut out: Vec<P> = Vec::with_capacity(line.len());
    for (i, p) in line.iter().enumerate() {
        let is_straight = out.last().zip(line.get(i + 1)).is_some_and(|(a, b)| {
            let (u, v) = ((p.0 - a.0, p.1 - a.1), (b.0 - p.0, b.1 - p.1));
            (u.0 * v.1 - u.1 * v.0).abs() <= NOISE * num::hypot(b.0 - a.0, b.1 - a.1)
        });
        if !is_straight {
            out.push(*p);
        }
    }
    out
}

impl CapOutline {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "sheet", self.sheet.check());
        faults.keep(self.tab.not_negative("tab"));
        let count =
            |path: &str, n: usize, accepts: &str| Error::new(ErrorKind::OutOfRange, format!("{n} given")).at(path).value_of(n).accepts(accepts.to_owned());
        if self.corners.len() < 2 {
            faults.add(count("corners", self.corners.len(), "two corners or more"));
        }
        if !(1..=2).contains(&self.on.len()) {
            faults.add(count("on", self.on.len(), "one support or two"));
        }
        for (i, s) in self.on.iter().enumerate() {
            if s.rise.degrees().abs() >= 89.0 {
                let error = Error::new(ErrorKind::OutOfRange, "a support too steep to stand on").at(format!("on[{i}].rise"));
                faults.add(error.value_of(s.rise).accepts("less than 89 degrees either way"));
            }
        }
        faults.check()
    }

    /// The face, counter-clockwise, and how many of its first sides are along the trim.
    fn face(&self) -> Result<(Vec<P>, usize, f64), Error> {
        let ground = Ground::of(&self.on);
        let corners: Vec<P> = self.corners.iter().map(|p| (p.x.mm(), p.z.mm())).collect();
        let (inner, walls) = without_wall_legs(&corners);
        let (top, own) = highest_stretch(inner, &ground);
        let height = top.iter().map(|p| ground.over(*p)).fold(0.0, f64::max);
        let top = without_straight_corners(&top);
        let (Some(first), Some(last)) = (top.first().copied(), top.last().copied()) else { return Err(self.no_hollow(0.0)) };
        if height < practice::LEAST_HOLLOW.mm() {
            return Err(self.no_hollow(height));
        }
        let foot = |p: P, own: bool, wall: bool| match (own && ground.over(p) > NOISE, wall) {
            (false, _) => p,
            (true, true) => (p.0, ground.at(p.0)),
            (true, false) => ground.foot(p),
        };
        let (from, to) = (foot(first, own[0], walls[0]), foot(last, own[1], walls[1]));
        // Over the top from the second side to the first, and back along the ground.
        let mut ring: Vec<P> = top.iter().rev().copied().collect();
        let along = ring.len() - 1;
        let bend = (ground.bend, ground.at(ground.bend));
        ring.push(from);
        if self.on.len() == 2 && from.0 + NOISE < bend.0 && bend.0 < to.0 - NOISE {
            ring.push(bend);
        }
        ring.push(to);
        let near = |a: P, b: P| num::hypot(a.0 - b.0, a.1 - b.1) < NOISE;
        // A foot that is its own point is no corner; the sides along the trim come first and have none.
        let mut face: Vec<P> = Vec::with_capacity(ring.len());
        for p in ring {
            if face.last().is_none_or(|q| !near(*q, p)) {
                face.push(p);
            }
        }
        if face.first().zip(face.last()).is_some_and(|(a, b)| near(*a, *b)) {
            face.pop();
        }
        Ok((face, along, height))
    }

    fn no_hollow(&self, height: f64) -> Error {
        let error = Error::new(ErrorKind::Impossible, "the trim leaves no hollow for a cap to close").at("corners");
        let error = match Length::from_mm(height) {
            Ok(height) => error.value_of(height),
            Err(_) => error,
        };
        error.accepts(format!("{} or more over what it lies on", practice::LEAST_HOLLOW)).cured_by("the trim's end folded down")
    }

    /// Where a tab begins along its side, and how far its end stands in from there at the tip, at both its ends: square mitres, but where the next tab would be in the way half of
    /// the corner, with room for the snips.
    fn mitres(&self, face: &[P], along: usize, side: usize) -> [(f64, f64); 2] {
        let n = face.len();
        let at = |i: usize| face.get(i % n).copied().unwrap_or_default();
        let way = |i: usize| {
            let (a, b) = (at(i), at(i + 1));
            num::atan2_deg(b.1 - a.1, b.0 - a.0)
        };
        let room = |before: usize, after: usize| {
            let turn = (way(after) - way(before) + 540.0) % 360.0 - 180.0;
            // Half of what lies outside the corner, between the two sides that meet there.
            let half = (180.0 + turn) / 2.0;
            if half > 45.0 || before >= along || after >= along {
                return (0.0, self.tab.mm());
            }
            (practice::SNIPS_CLEARANCE.mm() / 2.0 / num::sin_deg(half), self.tab.mm() * num::cos_deg(half) / num::sin_deg(half))
        };
        [room((side + n - 1) % n, side), room(side, (side + 1) % n)]
    }

    /// The outline with its tabs, as points with what each side is, and the bends.
    fn with_tabs(&self, face: &[P], along: usize, tabs: bool) -> Outline {
        let (n, tab) = (face.len(), self.tab.mm());
        let (mut out, mut bends) = (Vec::new(), Vec::new());
        for (i, p) in face.iter().enumerate() {
            let q = face.get((i + 1) % n).copied().unwrap_or_default();
            let length = num::hypot(q.0 - p.0, q.1 - p.1);
            let [(start, from), (end, to)] = self.mitres(face, along, i);
            let side = if i < along { BlankSide::FarEnd } else { BlankSide::NearEnd };
            if tabs && i < along && tab > 0.0 && length - start - from - end - to >= practice::LEAST_HOLLOW.mm() {
                let u = ((q.0 - p.0) / length, (q.1 - p.1) / length);
                let on = |by: f64, out: f64| (p.0 + u.0 * by + u.1 * out, p.1 + u.1 * by - u.0 * out);
                let (first, last) = (on(start, 0.0), on(length - end, 0.0));
                if start > 0.0 {
                    out.push((*p, side));
                }
                out.extend([(first, BlankSide::Tab), (on(start + from, tab), BlankSide::Tab), (on(length - end - to, tab), BlankSide::Tab)]);
                if end > 0.0 {
                    out.push((last, side));
                }
                bends.push((first, last));
            } else {
                out.push((*p, side));
            }
        }
        (out, bends)
    }

    fn blank(&self, face: &[P], along: usize, tabs: bool) -> Result<FlatBlank, Error> {
        let (around, folds) = self.with_tabs(face, along, tabs);
        let least = around.iter().fold((f64::MAX, f64::MAX), |l, (p, _)| (l.0.min(p.0), l.1.min(p.1)));
        let point = |p: P| -> Result<Point, Error> { Ok(Point { x: Length::from_mm(p.0 - least.0)?, y: Length::from_mm(p.1 - least.1)? }) };
        let mut outline = Vec::with_capacity(around.len());
        for (i, (p, side)) in around.iter().enumerate() {
            let (to, _) = around.get((i + 1) % around.len()).copied().unwrap_or((*p, *side));
            outline.push(BlankEdge { side: *side, from: point(*p)?, to: point(to)?, arc: None });
        }
        let mut bends = Vec::with_capacity(folds.len());
        for (i, (p, q)) in folds.into_iter().enumerate() {
            let line = BlankLine { from: point(p)?, to: point(q)? };
            let angle = BendAngle::from_flat(Angle::SQUARE)?;
            let inside_radius = self.sheet.inside_radius;
            bends.push(BlankBend { fold: BlankFold::Tab(i), lines: vec![line], tangents: vec![line, line], angle, direction: Direction::Down, inside_radius });
        }
        let blank = FlatBlank { thickness: self.sheet.thickness, outline, bends, holes: Vec::new(), cautions: Vec::new() };
        blank.check()?;
        Ok(blank)
    }
}

impl Calculation for CapOutline {
    type Out = CapBlank;

    fn title(&self) -> String {
        "end cap".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<CapBlank, Error> {
        self.check()?;
        let (face, along, height) = self.face()?;
        let height = Length::from_mm(height)?;
        r.step(|| Step::new("greatest height of the hollow").formula("trim's underside - pan").gives(height).source(Source::geometry()));
        // Tabs that would lie on each other, in a trim folded upon itself, are left out: the shop laps such an end otherwise.
        let blank = match self.blank(&face, along, true) {
            Err(e) if e.kind() == ErrorKind::Geometry && self.tab.is_positive() => self.blank(&face, along, false)?,
            made => made?,
        };
        let corners = face.iter().map(|(x, z)| Ok(SectionPoint { x: Length::from_mm(*x)?, z: Length::from_mm(*z)? })).collect::<Result<_, Error>>()?;
        Ok(CapBlank { face: corners, height, tabs: blank.bends.len(), blank })
    }
}
