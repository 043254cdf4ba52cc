//! The unfolding itself: one pass over the walk, shared by the girth alone, the whole flat and the worksheet.
//!
//! Every setback and every allowance is rounded to the picometre once; from there on all is exact, so the figures of a worksheet
//! add up to its girth, and a piece turned end for end has the same girth to the picometre.

use super::din::{self, LastFactor};
use super::leg::LegEnd;
use super::profile::Profile;
use super::rule::BendRule;
use super::size::{BendMm, BendSize, sum, to_length};
use super::walk::{Part, Walk, WalkBend, WalkLeg};
use crate::error::{Error, ErrorKind};
use crate::record::{Recorder, Source, Step};
use crate::units::Length;

/// What one bend takes, whatever its place in the walk.
#[derive(Debug, Clone, Copy)]
pub(super) struct Solved<'a> {
    pub(super) mm: BendMm,
    pub(super) rule: &'a BendRule,
    pub(super) allowance: Length,
}

/// What takes the parts of the flat as they come.
pub(super) trait Sink {
    fn leg(&mut self, leg: &WalkLeg<'_>, from: Length, to: Length);
    fn bend(&mut self, bend: &WalkBend<'_>, solved: &Solved<'_>, from: Length, to: Length);
}

/// The girth alone needs no parts.
impl Sink for () {
    #[inline(always)]
    fn leg(&mut self, _: &WalkLeg<'_>, _: Length, _: Length) {}
    #[inline(always)]
    fn bend(&mut self, _: &WalkBend<'_>, _: &Solved<'_>, _: Length, _: Length) {}
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

/// Solves the bends of one sheet. Most bends of a trim are like the one before: then its figures stay.
struct Solver<'a> {
    thickness: Length,
    t: f64,
    rule: &'a BendRule,
    last: Option<Solved<'a>>,
    /// Whether the last bend took a nominal figure of its own, which no other takes.
    nominal: bool,
    factors: LastFactor,
}

impl<'a> Solver<'a> {
    /// Solves the bend into `last`.
    #[inline(always)]
    fn solve(&mut self, bend: &WalkBend<'a>) -> Result<(), Error> {
        let rule = bend.rule.unwrap_or(self.rule);
        match &self.last {
            Some(s)
                if s.mm.size.angle == bend.angle
                    && s.mm.size.inside_radius == bend.inside_radius
                    && core::ptr::eq(s.rule, rule)
                    && !self.nominal
                    && bend.nominal.is_none() =>
            {
                Ok(())
            }
            _ => self.anew(bend, rule),
        }
    }

    /// Out of line, so that the loop over like bends stays small.
    #[inline(never)]
    fn anew(&mut self, bend: &WalkBend<'a>, rule: &'a BendRule) -> Result<(), Error> {
        let mm = measure(bend, self.thickness, self.t)?;
        let allowance = match rule {
            BendRule::Din6935 => to_length(din::allowance_after(&mm, &mut self.factors)?)?,
            rule => allowance(bend, &mm, rule)?,
        };
        if allowance.is_negative() {
            return Err(negative_allowance(allowance));
        }
        self.nominal = bend.nominal.is_some();
        self.last = Some(Solved { mm, rule, allowance });
        Ok(())
    }
}

/// What the bend takes under the rule; an edge's fold may have a nominal figure of its own.
#[inline(always)]
pub(super) fn allowance(bend: &WalkBend<'_>, mm: &BendMm, rule: &BendRule) -> Result<Length, Error> {
    match (rule, bend.nominal) {
        (BendRule::SharpCorner, Some(nominal)) => Ok(nominal.allowance),
        _ => to_length(rule.allowance_mm(mm)?),
    }
}

/// How far one end of a leg lies beyond the tangent line of the bend there.
#[inline(always)]
pub(super) fn setback(end: LegEnd, bend: Option<&BendMm>) -> Result<Length, Error> {
    match (end, bend) {
        (LegEnd::SheetEdge, None) => Ok(Length::ZERO),
        (end, Some(bend)) => end.beyond(bend),
        (_, None) => Err(not_an_edge()),
    }
}

#[cold]
pub(super) fn not_an_edge() -> Error {
    Error::new(ErrorKind::Conflict, "the leg ends at the sheet's edge, not at a bend").accepts("sheet-edge")
}

/// The flat part of a leg between its setbacks.
#[inline(always)]
pub(super) fn flat_part(leg: &WalkLeg<'_>, start: Length, end: Length) -> Result<Length, Error> {
    match leg.length.pm().checked_sub(start.pm()).and_then(|rest| rest.checked_sub(end.pm())) {
        Some(flat) if flat >= 0 && leg.length.is_positive() => Ok(Length::from_pm(flat)),
        _ => Err(swallowed(leg, start, end)),
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
            .missing_by(least.pm() - leg.length.pm())
            .cured_by("a longer leg or a smaller inside radius"),
        Err(e) => e.at("length"),
    }
}

/// The leg before, as the next one sees it.
struct Before {
    flat: Length,
    /// How far a return of the start edge reaches over the next leg.
    reach: Length,
}

impl Before {
    /// Whether no return reaches past the leg that it lies on: the next one at the start edge, the one before at the end edge.
    #[inline(always)]
    fn bears(&self, leg: &WalkLeg<'_>, flat: Length) -> bool {
        self.reach <= flat && (!leg.part.is_of_end_edge() || leg.reach <= self.flat)
    }

    #[inline(always)]
    fn of(leg: &WalkLeg<'_>, flat: Length) -> Before {
        Before { flat, reach: if leg.part.is_of_start_edge() { leg.reach } else { Length::ZERO } }
    }
}

/// Whether it has a bend between every two legs, and edges that can be folded.
#[inline(always)]
pub(super) fn is_whole(profile: &Profile) -> bool {
    let edges = || profile.start_edge.is_sound(profile.thickness) && profile.end_edge.is_sound(profile.thickness);
    profile.legs.len() == profile.bends.len() + 1 && edges()
}

#[cold]
pub(super) fn not_a_profile() -> Error {
    Error::new(ErrorKind::Conflict, "not a profile")
}

/// Unfolds the profile into the sink and gives its girth. Faults come without their path: the caller asks [`super::check`] for all of them.
#[inline]
pub(super) fn unfold<R: Recorder, S: Sink>(profile: &Profile, walk: &Walk<'_>, rule: &BendRule, r: &mut R, sink: &mut S) -> Result<Length, Error> {
    if !is_whole(profile) || !profile.thickness.is_positive() {
        return Err(not_a_profile());
    }
    let mut solver = Solver { thickness: profile.thickness, t: profile.thickness.mm(), rule, last: None, nominal: false, factors: LastFactor::default() };
    let mut before = Before { flat: Length::ZERO, reach: Length::ZERO };
    let mut from = Length::ZERO;
    let mut at = 0;
    while let Some(leg) = walk.leg(at) {
        let start = setback(leg.start, solver.last.as_ref().map(|before| &before.mm))?;
        let bend = walk.bend(at);
        if let Some(bend) = &bend {
            solver.solve(bend)?;
        }
        let after = bend.as_ref().zip(solver.last.as_ref());
        let end = setback(leg.end, after.map(|(_, solved)| &solved.mm))?;
        let flat = flat_part(&leg, start, end)?;
        if !before.bears(&leg, flat) {
            return Err(Error::new(ErrorKind::Impossible, "a hem longer than its leg"));
        }
        before = Before::of(&leg, flat);
        let to = sum(from, flat)?;
        r.step(|| leg_step(&leg, start, end, flat, to));
        sink.leg(&leg, from, to);
        from = to;
        if let Some((bend, solved)) = after {
            let to = sum(from, solved.allowance)?;
            r.step(|| bend_step(bend, solved));
            r.step(|| line_step(bend, solved, from, to));
            sink.bend(bend, solved, from, to);
            from = to;
        }
        at += 1;
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

fn bend_step(bend: &WalkBend<'_>, solved: &Solved<'_>) -> Step {
    let mut step = match (solved.rule, &bend.nominal) {
        (BendRule::SharpCorner, Some(nominal)) => nominal.step(&solved.mm),
        (rule, _) => rule.step(&solved.mm, solved.allowance),
    };
    step.what = match bend.part {
        Part::Body(i) => format!("{} of bend {}, {}", step.what, i + 1, solved.rule),
        part => format!("{} of {part}, {}", step.what, solved.rule),
    }
    .into();
    step
}

fn line_step(bend: &WalkBend<'_>, solved: &Solved<'_>, from: Length, to: Length) -> Step {
    Step::new(match bend.part {
        Part::Body(i) => format!("line of bend {}", i + 1),
        part => format!("line of {part}"),
    })
    .formula("halfway between its tangent lines, from the start edge")
    .with("first tangent line", from)
    .with("second tangent line", to)
    .gives(halfway(from, solved.allowance))
}

/// The bend's centre line: half the allowance beyond the first tangent line, cut to the picometre.
#[inline]
pub(super) fn halfway(from: Length, allowance: Length) -> Length {
    Length::from_pm(from.pm() + allowance.pm() / 2)
}
