//! What the pans of valleys come to at their lower ends, from the roof's lines there and the sections of its eaves; and where a pan that runs out on a plane
//! breaks that plane's panels.

use super::choices::Detail;
use super::input::Job;
use super::lay::PlaneLay;
use super::sections::order;
use super::trims::starts_low;
use crate::assembly::{BeadAlong, BeadRun, LineEnd, PanEnd, PanEndCut, PanEndOn, PanEndSide, RoofCorners};
use crate::error::{Error, ErrorKind};
use crate::junction::{Side, Solved, ValleyEndSeal, ValleyWidening};
use crate::layout::PanelBreak;
use crate::num;
use crate::panel::{Growth, PanelEnd, Reach};
use crate::record::{Calculation, Recorder};
use crate::roof::{self, Line, LineKind, Roof};
use crate::units::{Angle, Length};

/// Which end of a line is a valley's lower one, and how the pan ends there; nothing for another line, or where the roof there is not known.
pub(super) type KnownEnd = Option<(LineEnd, PanEndCut)>;

/// What stands around a valley's lower end.
pub(super) struct Foot<'a> {
    pub(super) job: &'a Job,
    pub(super) roof: &'a Roof,
    pub(super) solved: &'a [Option<Solved>],
}

/// Towards a line's other end in a plane's own axes, in millimetres.
fn way(from: roof::Point, to: roof::Point) -> Result<(f64, f64), Error> {
    Ok(((to.x - from.x).length()?.mm(), (to.y - from.y).length()?.mm()))
}

fn between(a: (f64, f64), b: (f64, f64)) -> Result<Angle, Error> {
    Angle::degrees_from(num::atan2_deg((a.0 * b.1 - a.1 * b.0).abs(), a.0 * b.0 + a.1 * b.1))
}

/// The lines that a plane ends against beside a valley's lower end, and which go on down from there: it goes on below the valley.
fn runs_out(beside: LineKind, along: (f64, f64)) -> bool {
    let upright = matches!(beside, LineKind::CurbSide | LineKind::Sidewall | LineKind::CurbFront | LineKind::Headwall | LineKind::CurbBack);
    upright && along.1 < -1e-6 * num::hypot(along.0, along.1)
}

/// From the junction line to the pan's centreline and to its edge, at the valley's lower end.
fn pan_at_foot(valley: &Solved, side: Side) -> Option<(Length, Length)> {
    let foot = if valley.lower_lines.is_empty() { &valley.lines } else { &valley.lower_lines };
    let place = |name: &str| foot.iter().find(|l| l.side == side && l.name == name).map(|l| l.from_line);
    place("pan centreline").zip(place("pan edge"))
}

/// Level away from a valley: to the left of one who looks up it where the plane does, as it lies on the left of a line that starts at its lower end.
const fn level_away(starts_low: bool) -> (f64, f64) {
    if starts_low { (-1.0, 0.0) } else { (1.0, 0.0) }
}

/// The end of a leg that runs out over the panels below it, cut level.
fn over_the_roof(job: &Job, up: (f64, f64), starts_low: bool, (centre, edge): (Length, Length), grows: Option<Growth>) -> Result<PanEndSide, Error> {
    let beyond = job.supplies.trims.corners.of(LineKind::Valley);
    Ok(PanEndSide { on: PanEndOn::Roof, angle: between(up, level_away(starts_low))?, centre, edge, beyond, fold: Length::ZERO, grows })
}

/// Where the pan of a valley breaks the panels of a plane that goes on below it: level with the valley's lower end, from there to as far out as the pan reaches. The pieces below
/// end there, and the pan laps over them; those above go on to the pan's end, so that they lap over the pan, and over the pieces below where the pan is none.
///
/// `low` and `high` are the valley's ends in the plane, `beside` what the plane ends against from its lower one on, with the far end of that.
pub(super) fn breaks_panels(
    job: &Job,
    (valley, grows): (&Solved, Option<Growth>),
    (side, line): (Side, &Line),
    (low, high, starts_low): (roof::Point, roof::Point, bool),
    (beside, far): (LineKind, roof::Point),
) -> Result<Option<PanelBreak>, Error> {
    if !runs_out(beside, way(low, far)?) {
        return Ok(None);
    }
    let Some(pan) = pan_at_foot(valley, side) else { return Ok(None) };
    let up = way(low, high)?;
    let end = over_the_roof(job, up, starts_low, pan, grows)?;
    if !end.beyond.is_positive() {
        let fault = Error::new(ErrorKind::OutOfRange, "a valley's pan runs out on a plane, and laps nothing there").at("supplies.trims.corners");
        return Err(fault.value_of(end.beyond).accepts("more than 0 for valleys").cured_by("a lap of valleys at corners").about(&line.name));
    }
    let level = level_away(starts_low);
    let long = num::hypot(up.0, up.1);
    let (ux, uy) = (up.0 / long, up.1 / long);
    // Square to the valley and away from it, the plane's own side.
    let nx = if starts_low { -uy } else { uy };
    let (at_edge, out) = end.corner()?;
    let out = (out.mm() * nx - at_edge.mm() * ux) * level.0;
    let to = (low.x + Length::from_mm(out * level.0)?).length()?;
    let (from, to) = (low.x.min(to), low.x.max(to));
    Ok(Some(PanelBreak { at: low.y, from, to, below: PanelEnd::hold_back(Length::ZERO), above: PanelEnd::overhang(end.beyond) }))
}

/// The beads in the laps of a plane's upper pieces over its lower ones, beside the pan that runs out between them.
pub(super) fn lap_beads<R: Recorder>(r: &mut R, planes: &[PlaneLay], line: usize, cut: &PanEndCut) -> Result<Option<BeadRun>, Error> {
    let mut long = Length::ZERO;
    for lay in planes {
        for (k, from, to) in lay.layout.break_stretches()? {
            if let Some(b) = lay.layout.breaks.get(k).filter(|_| lay.broken_by.get(k) == Some(&line)) {
                let under = (b.to.min(to.x) - b.from.max(from.x)).length()?.max(Length::ZERO);
                long = (long + to.x - from.x - under).length()?;
            }
        }
    }
    let length = (long * i32::try_from(cut.beads).unwrap_or(i32::MAX)).length()?;
    if !length.is_positive() {
        return Ok(None);
    }
    let name = "beads in the panels' laps beside the pan";
    let bead = BeadAlong { width: cut.bead.width, depth: cut.bead.depth, length };
    let volume = r.part(|| format!("{name}: {}", bead.title()), |r| bead.run(r)).map_err(|e| e.under(name))?;
    Ok(Some(BeadRun { name: name.to_owned(), side: Side::First, width: bead.width, depth: bead.depth, length, volume }))
}

impl Job {
    /// What seals the lower end of a valley's pan, and how the pan's edges go out; nothing for another line.
    pub(super) fn valley_end(&self, line: &Line) -> Result<Option<(ValleyEndSeal, Option<Growth>)>, Error> {
        let Some(Detail::Valley(d)) = self.junctions.of(line).map(|c| c.detail) else { return Ok(None) };
        Ok(Some((d.end, d.widens.as_ref().map(ValleyWidening::of_the_pan).transpose()?.flatten())))
    }
}

impl Foot<'_> {
    /// One leg: nothing where the roof there is another than a pan's end is known for.
    fn side(
        &self,
        (valley, grows): (&Solved, Option<Growth>),
        side: Side,
        plane: usize,
        (line, number): (&Line, usize),
        met: &[usize],
    ) -> Result<Option<PanEndSide>, Error> {
        let Some(own) = line.sides().find(|s| s.plane == plane) else { return Ok(None) };
        let starts = own.start.y <= own.end.y;
        let (low, high) = if starts { (own.start, own.end) } else { (own.end, own.start) };
        let up = way(low, high)?;
        let beside = met.iter().filter(|n| **n != number).filter_map(|n| {
            let other = self.roof.lines().get(*n)?;
            other.sides().find(|s| s.plane == plane).map(|s| (*n, other, s))
        });
        let [(at, other, edge)] = beside.collect::<Vec<_>>()[..] else { return Ok(None) };
        let (to_start, to_end) = (way(low, edge.start)?, way(low, edge.end)?);
        let far = |v: (f64, f64)| v.0 * v.0 + v.1 * v.1;
        let along = if far(to_start) > far(to_end) { to_start } else { to_end };
        let Some((centre, outer)) = pan_at_foot(valley, side) else { return Ok(None) };
        let end = PanEndSide { on: PanEndOn::Against, angle: between(up, along)?, centre, edge: outer, beyond: Length::ZERO, fold: Length::ZERO, grows };
        Ok(match other.kind {
            LineKind::Eave => {
                let panels = self.solved.get(at).and_then(Option::as_ref).and_then(|s| s.end(Side::First));
                let (beyond, fold) = match panels {
                    Some(p) => match p.reach {
                        Reach::Overhang(d) => ((d + p.gap).length()?, p.fold),
                        Reach::HoldBack(d) => ((p.gap - d).length()?, p.fold),
                    },
                    None => (Length::ZERO, Length::ZERO),
                };
                Some(PanEndSide { on: PanEndOn::Eave, beyond, fold, ..end })
            }
            kind if runs_out(kind, along) => Some(over_the_roof(self.job, up, starts, (centre, outer), grows)?),
            LineKind::CurbSide | LineKind::Sidewall | LineKind::CurbFront | LineKind::Headwall | LineKind::CurbBack | LineKind::Rake => Some(end),
            _ => None,
        })
    }

    /// The lower end of every valley that is known, by the line's number; the corners take what each pan runs on.
    pub(super) fn ends<R: Recorder>(&self, r: &mut R, corners: &mut RoofCorners) -> Result<Vec<KnownEnd>, Error> {
        let mut out = vec![None; self.roof.lines().len()];
        for (number, line) in self.roof.lines().iter().enumerate().filter(|(_, l)| l.kind == LineKind::Valley) {
            let (Some(valley), Some((seal, grows))) = (self.solved.get(number).and_then(Option::as_ref), self.job.valley_end(line)?) else { continue };
            let end = if starts_low(self.roof, number) { LineEnd::Start } else { LineEnd::End };
            let here = corners.corners.iter_mut().find(|c| c.lines.iter().any(|l| l.line == number && l.end == end));
            let Some(here) = here else { continue };
            let met: Vec<usize> = here.lines.iter().map(|l| l.line).collect();
            let order = order(line);
            let Some(second) = order.second else { continue };
            let first = self.side((valley, grows), Side::First, order.first, (line, number), &met)?;
            let Some((first, second)) = first.zip(self.side((valley, grows), Side::Second, second, (line, number), &met)?) else { continue };
            let asked = PanEnd { first, second, beads: seal.beads, bead: seal.bead };
            let cut = r.part(|| format!("lower end of {}", line.name), |r| asked.run(r)).map_err(|e| e.about(&line.name))?;
            here.lines.iter_mut().filter(|l| l.line == number && l.end == end).for_each(|l| l.allowance = cut.run_on);
            if let Some(ends) = corners.ends.get_mut(number) {
                match end {
                    LineEnd::Start => ends.at_start = cut.run_on,
                    LineEnd::End => ends.at_end = cut.run_on,
                }
            }
            if let Some(slot) = out.get_mut(number) {
                *slot = Some((end, cut));
            }
        }
        Ok(out)
    }
}
