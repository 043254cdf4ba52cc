//! What the pans of valleys come to at their lower ends, from the roof's lines there and the sections of its eaves.

use super::input::Job;
use super::sections::order;
use super::trims::starts_low;
use crate::assembly::{LineEnd, PanEnd, PanEndCut, PanEndOn, PanEndSide, RoofCorners};
use crate::error::Error;
use crate::junction::{Side, Solved, ValleyEndSeal};
use crate::num;
use crate::panel::Reach;
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

impl Foot<'_> {
    /// One leg: nothing where the roof there is another than a pan's end is known for.
    fn side(&self, valley: &Solved, side: Side, plane: usize, (line, number): (&Line, usize), met: &[usize]) -> Result<Option<PanEndSide>, Error> {
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
        let foot = if valley.lower_lines.is_empty() { &valley.lines } else { &valley.lower_lines };
        let place = |name: &str| foot.iter().find(|l| l.side == side && l.name == name).map(|l| l.from_line);
        let Some((centre, outer)) = place("pan centreline").zip(place("pan edge")) else { return Ok(None) };
        let end = PanEndSide { on: PanEndOn::Against, angle: between(up, along)?, centre, edge: outer, beyond: Length::ZERO, fold: Length::ZERO };
        let is_down = along.1 < -1e-6 * far(along).sqrt();
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
            LineKind::CurbSide | LineKind::Sidewall | LineKind::CurbFront | LineKind::Headwall | LineKind::CurbBack if is_down => {
                // Cut level, square to the seams: level away from the valley lies to the left of one who looks up it where the plane does.
                let level = if starts { (-1.0, 0.0) } else { (1.0, 0.0) };
                Some(PanEndSide { on: PanEndOn::Roof, angle: between(up, level)?, beyond: self.job.supplies.trims.corners.of(LineKind::Valley), ..end })
            }
            LineKind::CurbSide | LineKind::Sidewall | LineKind::CurbFront | LineKind::Headwall | LineKind::CurbBack | LineKind::Rake => Some(end),
            _ => None,
        })
    }

    /// The lower end of every valley that is known, by the line's number; the corners take what each pan runs on.
    pub(super) fn ends<R: Recorder>(
        &self,
        r: &mut R,
        seal: impl Fn(&Line) -> Option<ValleyEndSeal>,
        corners: &mut RoofCorners,
    ) -> Result<Vec<KnownEnd>, Error> {
        let mut out = vec![None; self.roof.lines().len()];
        for (number, line) in self.roof.lines().iter().enumerate().filter(|(_, l)| l.kind == LineKind::Valley) {
            let (Some(valley), Some(seal)) = (self.solved.get(number).and_then(Option::as_ref), seal(line)) else { continue };
            let end = if starts_low(self.roof, number) { LineEnd::Start } else { LineEnd::End };
            let here = corners.corners.iter_mut().find(|c| c.lines.iter().any(|l| l.line == number && l.end == end));
            let Some(here) = here else { continue };
            let met: Vec<usize> = here.lines.iter().map(|l| l.line).collect();
            let order = order(line);
            let Some(second) = order.second else { continue };
            let first = self.side(valley, Side::First, order.first, (line, number), &met)?;
            let Some((first, second)) = first.zip(self.side(valley, Side::Second, second, (line, number), &met)?) else { continue };
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
