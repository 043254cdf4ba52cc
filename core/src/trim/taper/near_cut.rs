//! The near end of a tapered piece cut askew: on each side of the line that runs straight along it, along a line of its own.

use super::piece::{TaperBend, TaperLeg, TaperedTrim, stretches};
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::trim::size::to_length;
use crate::trim::{BlankFold, BlankLine, BlankSide, Flat, Part, Point};
use crate::units::{Angle, Length};

/// How the near end is cut on one side of a bend that runs straight along the piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct NearCut {
    /// Up that bend's line from the near section to the cut.
    pub(crate) at: Length,
    /// In the plane of the leg beside that bend, between its line going up and the cut: 90 degrees is square.
    pub(crate) angle: Angle,
}

/// Shorter than this below the near section a cut is noise of the bend's own radius, and the end stays square there: in millimetres.
const NOISE: f64 = 1.0;

/// How far out from the held bend's line the sides of each leg lie as bent, over the leg beside it: in millimetres, the start and the end of every leg.
fn out_of(flat: &Flat, held: usize) -> Vec<(f64, f64)> {
    let (legs, bends) = (flat.legs(), flat.bends());
    let turns: Vec<f64> = bends.iter().map(|b| b.direction.sign() * b.angle.degrees()).collect();
    let radius = |k: usize| bends.get(k).map_or(0.0, |b| b.allowance().mm() / b.angle.angle().radians());
    let long = |k: usize| legs.get(k).map_or(0.0, |l| l.length().mm());
    // From a bend's corner line to its tangent lines; a fold has none.
    let tangent = bends.get(held).map_or(0.0, |b| if b.angle.degrees() < 180.0 { radius(held) * num::tan_deg(b.angle.degrees() * 0.5) } else { 0.0 });
    let swept = |k: usize, from: f64, to: f64| {
        let by = num::sin_deg(to) - num::sin_deg(from);
        if turns.get(k).is_some_and(|t| *t < 0.0) { -radius(k) * by } else { radius(k) * by }
    };
    let mut out = vec![(0.0, 0.0); legs.len()];
    let (mut at, mut heading) = (tangent, 0.0);
    for k in held + 1..legs.len() {
        let end = at + long(k) * num::cos_deg(heading);
        if let Some(slot) = out.get_mut(k) {
            *slot = (at, end);
        }
        let next = heading + turns.get(k).copied().unwrap_or_default();
        (at, heading) = (end + swept(k, heading, next), next);
    }
    let (mut at, mut heading) = (tangent, 0.0);
    for k in (0..=held.min(legs.len().saturating_sub(1))).rev() {
        let start = at + long(k) * num::cos_deg(heading);
        if let Some(slot) = out.get_mut(k) {
            *slot = (start, at);
        }
        if let Some(before) = k.checked_sub(1) {
            let next = heading - turns.get(before).copied().unwrap_or_default();
            (at, heading) = (start + swept(before, next, heading), next);
        }
    }
    out
}

/// A line along the piece, from where it is cut.
fn from_cut(line: BlankLine, share: f64) -> Result<BlankLine, Error> {
    let between = |a: Length, b: Length| to_length(a.mm() + (b.mm() - a.mm()) * share);
    Ok(BlankLine { from: Point { x: between(line.from.x, line.to.x)?, y: between(line.from.y, line.to.y)? }, to: line.to })
}

impl TaperedTrim {
    /// The piece, so long, with its near end cut: of the sides of the held bend that before it in the walk, and that after it.
    pub(crate) fn with_near_cut(self, held: Part, long: Length, cuts: [NearCut; 2]) -> Result<TaperedTrim, Error> {
        let lost = || Error::new(ErrorKind::Internal, "a tapered trim without the bend that runs along it").value_of(held);
        let held = self.bends.iter().position(|b| b.part == held).ok_or_else(lost)?;
        let (near, far) = (out_of(&self.near, held), out_of(&self.far, held));
        // Where a line that lies so far out at the near section, and so far at the far one, meets the cut: as a share of the piece.
        let share = |cut: &NearCut, near: f64, far: f64| -> Result<f64, Error> {
            let cot = num::cos_deg(cut.angle.degrees()) / num::sin_deg(cut.angle.degrees());
            let up = (cut.at.mm() + near * cot) / (1.0 - (far - near) / long.mm() * cot);
            if up < -NOISE || up >= long.mm() {
                return Err(Error::new(ErrorKind::Impossible, format!("the lowest piece does not reach over its cut end, which goes up {}", to_length(up)?))
                    .at("least_piece")
                    .value_of(long)
                    .accepts(format!("a piece longer than {}", to_length(up.max(0.0))?))
                    .cured_by("a longer least piece, or longer stock"));
            }
            Ok(up.max(0.0) / long.mm())
        };
        let [before, after] = &cuts;
        let mut sides = Vec::with_capacity(self.legs.len());
        for (k, (a, b)) in near.iter().zip(&far).enumerate() {
            let cut = if k <= held { before } else { after };
            sides.push((share(cut, a.0, b.0)?, share(cut, a.1, b.1)?));
        }
        let middle = [share(before, 0.0, 0.0)?, share(after, 0.0, 0.0)?];
        self.cut_at(&sides, held, middle)
    }

    /// The piece with both sides of each leg cut at these shares of their length, and the held bend's line at those of its two sides.
    fn cut_at(self, sides: &[(f64, f64)], held: usize, middle: [f64; 2]) -> Result<TaperedTrim, Error> {
        let mut line = Vec::new();
        let mut legs: Vec<TaperLeg> = Vec::with_capacity(self.legs.len());
        for (k, (leg, (start, end))) in self.legs.iter().zip(sides).enumerate() {
            if let Some(bend) = self.bends.get(held).filter(|_| k == held + 1) {
                for share in middle {
                    line.push(from_cut(bend.line, share)?.from);
                }
            }
            let leg = TaperLeg { start: from_cut(leg.start, *start)?, end: from_cut(leg.end, *end)?, ..*leg };
            line.extend([leg.start.from, leg.end.from]);
            legs.push(leg);
        }
        let of_bend = |k: usize| -> f64 {
            if k == held {
                return middle.into_iter().fold(0.0, f64::max);
            }
            let (end, start) = (sides.get(k).map_or(0.0, |s| s.1), sides.get(k + 1).map_or(0.0, |s| s.0));
            f64::midpoint(end, start)
        };
        let cut_bend = |(k, bend): (usize, &TaperBend)| -> Result<TaperBend, Error> {
            let line = from_cut(bend.line, of_bend(k))?;
            Ok(TaperBend { line, near_station: line.from.x, ..*bend })
        };
        let bends: Vec<TaperBend> = self.bends.iter().enumerate().map(cut_bend).collect::<Result<_, Error>>()?;
        let mut blank = self.blank;
        for fold in &mut blank.bends {
            let at = bends.iter().position(|b| fold.fold == BlankFold::Bend(b.part));
            let Some((k, bend)) = at.and_then(|k| Some((k, bends.get(k)?))) else { continue };
            fold.lines = vec![bend.line];
            fold.tangents = legs.get(k).map(|l| l.end).into_iter().chain(legs.get(k + 1).map(|l| l.start)).collect();
        }
        let mut outline = Vec::with_capacity(blank.outline.len() + 2);
        stretches(&line, BlankSide::NearEnd, &mut outline);
        let last = line.last().copied().unwrap_or(Point::ORIGIN);
        for edge in &blank.outline {
            match edge.side {
                BlankSide::NearEnd => {}
                BlankSide::EndEdge => stretches(&[last, edge.to], BlankSide::EndEdge, &mut outline),
                BlankSide::StartEdge => stretches(&[edge.from, line.first().copied().unwrap_or(Point::ORIGIN)], BlankSide::StartEdge, &mut outline),
                _ => outline.push(*edge),
            }
        }
        blank.outline = outline;
        blank.check().map_err(|e| e.under("blank"))?;
        let area = blank.area()?;
        Ok(TaperedTrim { legs, bends, blank, near_is_cut: true, area, ..self })
    }
}
