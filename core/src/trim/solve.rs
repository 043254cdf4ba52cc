//! The unfolding itself: one pass over the walk, shared by the girth alone, the whole flat and the worksheet.
//!
//! Every setback and every allowance is rounded to the picometre once; from there on all is exact, so the figures of a worksheet
//! add up to its girth, and a piece turned end for end has the same girth to the picometre.

use super::din::{self, LastFactor};
use super::leg::LegEnd;
use super::profile::Profile;
use super::rule::BendRule;
use super::size::{BendMm, BendSize, to_length};
use super::walk::{self, Part, WalkBend, WalkLeg};
use crate::error::{Error, ErrorKind};
use crate::record::{Recorder, Source, Step};
use crate::units::Length;

/// A bend with its allowance.
#[derive(Debug, Clone, Copy)]
pub(super) struct Solved<'a> {
    pub(super) walk: WalkBend<'a>,
    pub(super) mm: BendMm,
    pub(super) rule: &'a BendRule,
    pub(super) allowance: Length,
}

/// What takes the parts of the flat as they come.
pub(super) trait Sink {
    fn leg(&mut self, leg: &WalkLeg<'_>, from: Length, to: Length);
    fn bend(&mut self, bend: &Solved<'_>, from: Length, to: Length);
}

/// The girth alone needs no parts.
impl Sink for () {
    #[inline(always)]
    fn leg(&mut self, _: &WalkLeg<'_>, _: Length, _: Length) {}
    #[inline(always)]
    fn bend(&mut self, _: &Solved<'_>, _: Length, _: Length) {}
}

/// The bend in the working unit; refuses what is not a bend.
#[inline(always)]
pub(super) fn measure(bend: &WalkBend<'_>, thickness: Length, t: f64) -> Result<BendMm, Error> {
    let size = BendSize { thickness, inside_radius: bend.inside_radius, angle: bend.angle };
    if !thickness.is_positive() || bend.inside_radius.is_negative() || bend.angle.degrees() <= 0.0 {
        size.check()?;
    }
    BendMm::of(size, t)
}

#[inline(always)]
fn solve<'a>(bend: WalkBend<'a>, thickness: Length, t: f64, rule: &'a BendRule, factors: &mut LastFactor) -> Result<Solved<'a>, Error> {
    let mm = measure(&bend, thickness, t)?;
    let allowance = match rule {
        BendRule::Din6935 => to_length(din::allowance_after(&mm, factors)?)?,
        rule => allowance(&bend, &mm, rule)?,
    };
    if allowance.is_negative() {
        return Err(negative_allowance(allowance));
    }
    Ok(Solved { walk: bend, mm, rule, allowance })
}

/// What the bend takes under the rule; an edge's fold may have a nominal figure of its own.
#[inline(always)]
pub(super) fn allowance(bend: &WalkBend<'_>, mm: &BendMm, rule: &BendRule) -> Result<Length, Error> {
    match (rule, bend.nominal) {
        (BendRule::SharpCorner, Some(nominal)) => Ok(nominal.allowance),
        _ => to_length(rule.allowance_mm(mm)?),
    }
}

/// Solves the bend in place. Most bends of a trim are like the one before: then its figures stay.
#[inline(always)]
fn solve_into<'a>(
    solved: &mut Option<Solved<'a>>,
    bend: WalkBend<'a>,
    thickness: Length,
    t: f64,
    rule: &'a BendRule,
    factors: &mut LastFactor,
) -> Result<(), Error> {
    let rule = bend.rule.unwrap_or(rule);
    match solved {
        Some(s)
            if s.walk.angle == bend.angle
                && s.walk.inside_radius == bend.inside_radius
                && core::ptr::eq(s.rule, rule)
                && s.walk.nominal.is_none()
                && bend.nominal.is_none() =>
        {
            s.walk = bend;
        }
        _ => *solved = Some(solve(bend, thickness, t, rule, factors)?),
    }
    Ok(())
}

/// How far one end of a leg lies beyond the tangent line of the bend there.
#[inline(always)]
pub(super) fn setback(end: LegEnd, bend: Option<&BendMm>) -> Result<Length, Error> {
    match (end, bend) {
        (LegEnd::SheetEdge, None) => Ok(Length::ZERO),
        (end, Some(bend)) => end.beyond(bend),
        (_, None) => Err(Error::new(ErrorKind::Conflict, "the leg ends at the sheet's edge, not at a bend").accepts("sheet-edge")),
    }
}

/// The flat part of a leg between its setbacks.
#[inline(always)]
pub(super) fn flat_part(leg: &WalkLeg<'_>, start: Length, end: Length) -> Result<Length, Error> {
    // A positive length less something that is not negative stays in range; what would not is negative anyway.
    let flat = leg.length.pm().saturating_sub(start.pm()).saturating_sub(end.pm());
    if flat < 0 || !leg.length.is_positive() {
        return Err(swallowed(leg, start, end));
    }
    Ok(Length::from_pm(flat))
}

/// The next station; the sum of many long legs can leave the range.
#[inline]
fn beyond(from: Length, by: Length) -> Result<Length, Error> {
    match from.pm().checked_add(by.pm()) {
        Some(pm) => Ok(Length::from_pm(pm)),
        None => (from + by).length(),
    }
}

#[cold]
fn swallowed(leg: &WalkLeg<'_>, start: Length, end: Length) -> Error {
    if let Err(e) = leg.length.positive("length") {
        return e;
    }
    match (start + end).length() {
        Ok(least) => Error::new(ErrorKind::Impossible, "the leg is swallowed by the setbacks of its bends")
            .at("length")
            .value_of(leg.length)
            .accepts(format!("at least {least}"))
            .cured_by("a longer leg or a smaller inside radius"),
        Err(e) => e.at("length"),
    }
}

/// Holds that a return does not reach past the leg that it lies on: the next one at the start edge, the last one at the end edge.
#[derive(Default)]
struct Hems {
    last: Length,
    waiting: Length,
}

impl Hems {
    #[inline(always)]
    fn take(&mut self, leg: &WalkLeg<'_>, flat: Length) -> Result<(), Error> {
        let starts = leg.part.is_of_start_edge();
        let fits = self.waiting <= flat && (starts || leg.reach <= self.last || !leg.part.is_of_end_edge());
        self.waiting = if starts { leg.reach } else { Length::ZERO };
        self.last = flat;
        if fits { Ok(()) } else { Err(Error::new(ErrorKind::Impossible, "a hem longer than its leg")) }
    }
}

/// Unfolds the profile into the sink and gives its girth. Faults come without their path: the caller asks [`super::check`] for all of them.
#[inline]
pub(super) fn unfold<R: Recorder, S: Sink>(profile: &Profile, rule: &BendRule, r: &mut R, sink: &mut S) -> Result<Length, Error> {
    let misfit = profile.legs.len() != profile.bends.len() + 1 || !profile.thickness.is_positive();
    if misfit || !profile.start_edge.is_sound(profile.thickness) || !profile.end_edge.is_sound(profile.thickness) {
        return Err(Error::new(ErrorKind::Conflict, "not a profile"));
    }
    let t = profile.thickness.mm();
    let mut bends = walk::bends(profile);
    let mut legs = walk::legs(profile);
    let mut next = legs.next();
    let mut start = match &next {
        Some(leg) => setback(leg.start, None)?,
        None => Length::ZERO,
    };
    let mut solved: Option<Solved<'_>> = None;
    let mut factors = LastFactor::default();
    let mut hems = Hems::default();
    let mut from = Length::ZERO;
    while let Some(leg) = next {
        let after = match bends.next() {
            Some(bend) => {
                solve_into(&mut solved, bend, profile.thickness, t, rule, &mut factors)?;
                solved.as_ref()
            }
            None => None,
        };
        let end = setback(leg.end, after.map(|b| &b.mm))?;
        let flat = flat_part(&leg, start, end)?;
        hems.take(&leg, flat)?;
        let to = beyond(from, flat)?;
        r.step(|| leg_step(&leg, start, end, flat, to));
        sink.leg(&leg, from, to);
        from = to;
        next = legs.next();
        if let Some(bend) = after {
            let to = beyond(from, bend.allowance)?;
            r.step(|| bend_step(bend));
            r.step(|| line_step(bend, from, to));
            sink.bend(bend, from, to);
            from = to;
            if let Some(leg) = &next {
                start = setback(leg.start, Some(&bend.mm))?;
            }
        }
    }
    r.step(|| Step::new("girth").formula("sum of the flat parts and the bends").gives(from).source(Source::geometry()));
    Ok(from)
}

#[cold]
pub(super) fn negative_allowance(allowance: Length) -> Error {
    Error::new(ErrorKind::Impossible, "the rule leaves no metal in the bend")
        .at("rule")
        .value_of(allowance)
        .accepts("an allowance of 0 mm or more")
        .cured_by("another rule for this bend")
}

fn leg_step(leg: &WalkLeg<'_>, start: Length, end: Length, flat: Length, to: Length) -> Step {
    Step::new(match leg.part {
        Part::Body(_) => format!("flat part of leg {}", leg.name),
        _ => format!("flat part of {}", leg.name),
    })
    .formula("length - setback at its start - setback at its end")
    .with("length", leg.length)
    .with("setback at its start", start)
    .with("setback at its end", end)
    .with("station of its end", to)
    .gives(flat)
    .source(Source::geometry())
}

fn bend_step(bend: &Solved<'_>) -> Step {
    let mut step = match (bend.rule, &bend.walk.nominal) {
        (BendRule::SharpCorner, Some(nominal)) => nominal.step(&bend.mm),
        (rule, _) => rule.step(&bend.mm, bend.allowance),
    };
    step.what = match bend.walk.part {
        Part::Body(i) => format!("{} of bend {}, {}", step.what, i + 1, bend.rule),
        part => format!("{} of {part}, {}", step.what, bend.rule),
    }
    .into();
    step
}

fn line_step(bend: &Solved<'_>, from: Length, to: Length) -> Step {
    Step::new(match bend.walk.part {
        Part::Body(i) => format!("line of bend {}", i + 1),
        part => format!("line of {part}"),
    })
    .formula("halfway between its tangent lines, from the start edge")
    .with("first tangent line", from)
    .with("second tangent line", to)
    .gives(halfway(from, bend.allowance))
}

/// The bend's centre line: half the allowance beyond the first tangent line, cut to the picometre.
#[inline]
pub(super) fn halfway(from: Length, allowance: Length) -> Length {
    Length::from_pm(from.pm() + allowance.pm() / 2)
}
