//! Courses of underlayment up a plane.

use super::bands::Band;
use super::cautions::LAPS_TOO_NEAR;
use super::roll_use::RollUse;
use super::rules::{CourseRule, Roll};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::roof::Outline;
use crate::units::{Area, AreaUnit, Length, Sum};

/// Courses of underlayment on a plane, from its foot up, each over the one below.
///
/// A course is a strip of the roll's width, laid level, and cut to the outline: it is as long as the outline reaches across the band that it covers, in as many
/// stretches as that has, holes and notches that take the whole band left out. Its top edge is the mark to which the next is laid a head lap back. Rolls are used
/// up one after the other; an offcut shorter than [`LEAST_PIECE`](crate::practice::underlayment::LEAST_PIECE) is thrown away.
///
/// # Errors
/// Computing refuses a roll without size, laps that take all of it ([`ErrorKind::Impossible`]), negative laps ([`ErrorKind::OutOfRange`]) and heights that do not lie on
/// the plane in order.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::roof::{Outline, Point};
/// use seamwright::underlayment::{CourseLayout, CourseRule, Roll};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let outline = Outline::new(vec![p(0, 0), p(40, 0), p(40, 14), p(0, 14)], vec![])?;
/// let roll = Roll { width: Length::inches(36), length: Length::feet(72), rated: None };
/// let laid = CourseLayout { outline, roll, rule: CourseRule::IRC_ONE_LAYER, from: Length::ZERO, to: None, across: None, left: Length::ZERO }.compute()?;
/// // 36 in, then 34 in more each: 36, 70, 104, 138 and to the top of 168.
/// assert_eq!(laid.courses.iter().map(|c| c.top).collect::<Vec<_>>()[..4], [36, 70, 104, 138].map(Length::inches));
/// assert_eq!((laid.courses.len(), laid.rolls), (5, 3));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct CourseLayout {
    /// The plane's outline, in its own axes.
    pub outline: Outline,
    /// The rolls.
    pub roll: Roll,
    /// How courses lap.
    pub rule: CourseRule,
    /// Where the first course's lower edge lies, up the slope from the plane's lowest point: 0, or a head lap below the top of a membrane along the eave.
    #[cfg_attr(feature = "serde", serde(default))]
    pub from: Length,
    /// Where the last course ends, up the slope from there; the plane's highest point unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub to: Option<Length>,
    /// The stretch across that they cover, from the left of the plane; all of it unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub across: Option<Across>,
    /// What is left on the roll in hand.
    #[cfg_attr(feature = "serde", serde(default))]
    pub left: Length,
}

/// A stretch across a plane, from its left.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Across {
    /// Where it starts.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

/// A piece of a course, from its left to its right end, measured from the left of the plane.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CoursePiece {
    /// Where it starts.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Its length, laps and all.
    pub length: Length,
}

/// A course.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Course {
    /// Its lower edge, up the slope from the plane's lowest point.
    pub foot: Length,
    /// Its upper edge from there: the running mark.
    pub top: Length,
    /// The width of the strip: the roll's, or the starter's.
    pub width: Length,
    /// What shows of it above the next course's lap, up the slope; the whole of it at the top.
    pub exposure: Length,
    /// Its pieces from left to right.
    pub pieces: Vec<CoursePiece>,
}

/// Courses as laid.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LaidCourses {
    /// The courses, from the foot up, the starter strip first.
    pub courses: Vec<Course>,
    /// Whole rolls that are opened, beside the one in hand.
    pub rolls: u32,
    /// All pieces together.
    pub length: Length,
    /// What is left on the last roll.
    pub left: Length,
    /// The area that is covered, of the plane itself.
    pub covered: Area,
    /// The area of all pieces.
    pub laid: Area,
    /// The share of the rolls, what is left on the last of them left out, that covers nothing: laps, what is cut off at the edges, offcuts.
    pub waste_ratio: f64,
    /// What to know before it is ordered.
    pub cautions: Vec<Caution>,
}

fn square_metres(mm2: f64) -> Result<Area, Error> {
    Area::new(mm2 * 1e-6, AreaUnit::SquareMetre)
}

impl CourseLayout {
    /// Refuses what cannot be laid, and gives where the courses end.
    fn check(&self) -> Result<Length, Error> {
        let height = self.outline.bounds().height()?;
        let to = self.to.unwrap_or(height);
        let mut faults = Faults::default();
        faults.keep(self.roll.check().map_err(|e| e.under("roll")));
        if faults.is_empty() {
            faults.keep(self.rule.check(&self.roll).map_err(|e| e.under("rule")));
        }
        for (path, at, low) in [("from", self.from, Length::ZERO), ("to", to, self.from)] {
            if at < low || at > height || (path == "to" && at <= low) {
                let error = Error::new(ErrorKind::OutOfRange, "not on the plane").at(path).value_of(at);
                faults.add(error.accepts(format!("from {low} up to {height}")));
            }
        }
        if self.left < Length::ZERO || self.left > self.roll.length {
            let error = Error::new(ErrorKind::OutOfRange, "not what a roll can have left").at("left").value_of(self.left);
            faults.add(error.accepts(format!("from 0 mm to {}", self.roll.length)));
        }
        if let Some(a) = self.across.filter(|a| a.to <= a.from) {
            faults.add(Error::new(ErrorKind::OutOfRange, "a stretch without length").at("across.to").value_of(a.to).accepts(format!("more than {}", a.from)));
        }
        faults.check().map(|()| to)
    }

    /// The strips from the foot up: lower and upper edge, and how wide each is.
    fn strips(&self, to: Length) -> Result<Vec<(Length, Length, Length)>, Error> {
        let mut out = Vec::new();
        if let Some(starter) = self.rule.starter {
            out.push((self.from, (self.from + starter).length()?.min(to), starter));
        }
        let mut foot = self.from;
        loop {
            let top = (foot + self.roll.width).length()?;
            out.push((foot, top.min(to), self.roll.width));
            if top >= to {
                return Ok(out);
            }
            foot = (top - self.rule.head_lap).length()?;
        }
    }
}

impl Calculation for CourseLayout {
    type Out = LaidCourses;

    fn title(&self) -> String {
        "courses of underlayment".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<LaidCourses, Error> {
        let to = self.check()?;
        let strips = self.strips(to)?;
        let exposure = (self.roll.width - self.rule.head_lap).length()?;
        r.step(|| {
            let step =
                Step::new("exposure of a course").formula("width of the roll - head lap").with("width", self.roll.width).with("head lap", self.rule.head_lap);
            step.gives(exposure).source(self.rule.source.clone())
        });
        let mut rolls = RollUse::with(self.left);
        let sides = self.across.map_or((f64::NEG_INFINITY, f64::INFINITY), |a| (a.from.mm(), a.to.mm()));
        let band = |from: Length, to: Length| Band::of(&self.outline, (from.mm(), to.mm()), sides);
        let mut courses: Vec<Course> = Vec::with_capacity(strips.len());
        let (mut length, mut near, mut laid) = (Sum::ZERO, Vec::new(), 0.0);
        let mut below: Vec<Length> = Vec::new();
        for (k, (foot, top, width)) in strips.iter().copied().enumerate() {
            let mut pieces = Vec::new();
            let mut joints = Vec::new();
            for (from, end) in band(foot, top).stretches() {
                let (from, end) = (Length::from_mm(from)?, Length::from_mm(end)?);
                if end <= from {
                    continue;
                }
                let cut = rolls.lay(from, end, &self.roll, &self.rule, &below)?;
                joints.extend(cut.iter().take(cut.len() - 1).map(|(_, joint)| *joint));
                for (from, to) in cut {
                    let long = (to - from).length()?;
                    length += long;
                    laid += long.mm() * width.mm();
                    pieces.push(CoursePiece { from, to, length: long });
                }
            }
            for at in &joints {
                if below.iter().any(|b| (*at - *b).length().is_ok_and(|d| d.pm().abs() < self.rule.stagger.pm())) {
                    near.push((k + 1, *at));
                }
            }
            let next = strips.get(k + 1).map(|s| s.0);
            let shows = next.filter(|n| *n > foot).map_or_else(|| (top - foot).length(), |n| (n - foot).length())?;
            r.step(|| {
                let step = Step::new(format!("course {}, top edge from the foot of the plane", k + 1)).formula("lower edge + width, at most to the top");
                step.with("lower edge", foot).with("width", width).with("pieces", pieces.len()).gives(top).source(Source::geometry())
            });
            courses.push(Course { foot, top, width, exposure: shows, pieces });
            below = joints;
        }
        let mut cautions = Vec::new();
        if let Some((course, at)) = near.first() {
            let caution = Caution::new(LAPS_TOO_NEAR, "courses", self.rule.source.clone()).arg("count", near.len()).arg("stagger", self.rule.stagger);
            cautions.push(caution.arg("course", course).arg("at", at));
        }
        let covered = square_metres(band(self.from, to).area())?;
        let length = length.length()?;
        let used = (self.left.mm() + f64::from(rolls.opened) * self.roll.length.mm() - rolls.left().mm()) * self.roll.width.mm();
        let waste_ratio = if used > 0.0 { 1.0 - covered.get(AreaUnit::SquareMetre) * 1e6 / used } else { 0.0 };
        r.step(|| {
            let step = Step::new("rolls").formula("one after the other, short offcuts thrown away").with("pieces together", length);
            step.with("roll", self.roll.length).gives(rolls.opened).source(Source::geometry())
        });
        Ok(LaidCourses { courses, rolls: rolls.opened, length, left: rolls.left(), covered, laid: square_metres(laid)?, waste_ratio, cautions })
    }
}
