//! Pieces of panels that are longer than can be formed, shipped or lifted.
//!
//! Laps lie at common heights over the whole plane, so that they are in line, or in two lines where they are staggered. The pieces of the longest reach
//! are equal; every piece is rounded up to the shop's step, so that a lap is never less than asked for, but for the micrometre that the rounding takes for noise.

use super::super::cautions;
use super::super::extent::Extent;
use super::super::laid::LaidPanel;
use super::choices::{EndLaps, LapArrangement};
use crate::error::{Error, ErrorKind};
use crate::record::{Caution, Recorder, Source, Step};
use crate::units::{Length, Rounding, ShopRounding};

/// Laps that one panel may have.
const LAPS: i64 = 999;

/// One piece: its lower end from the foot of the plane, and its order length.
#[derive(Debug, Clone, Copy)]
pub(super) struct Cut {
    pub(super) low: Length,
    pub(super) own: Length,
}

/// The heights of the laps.
pub(super) struct LapLines<'a> {
    laps: &'a EndLaps,
    governs: &'static str,
    /// The greatest length, down to the step.
    most: Length,
    step: ShopRounding,
    lines: Vec<Length>,
    by: Length,
}

/// What became of pieces that are too short.
#[derive(Default)]
pub(super) struct Short {
    count: usize,
    first: String,
}

impl Short {
    pub(super) fn caution(self, least: Length, out: &mut Vec<Caution>) {
        if self.count > 0 {
            out.push(Caution::new(cautions::SHORT_PIECE, self.first, Source::user()).arg("count", self.count).arg("least", least));
        }
    }
}

impl<'a> LapLines<'a> {
    /// For the panels that are too long; none where no panel is.
    pub(super) fn new<R: Recorder>(laps: &'a EndLaps, step: Length, panels: &[(LaidPanel, Extent)], r: &mut R) -> Result<Option<LapLines<'a>>, Error> {
        let limit = laps.least().ok_or_else(|| Error::new(ErrorKind::Missing, "nothing limits a piece").at("limits").accepts("one limit or more"))?;
        let by = match laps.arrangement {
            LapArrangement::InLine => Length::ZERO,
            LapArrangement::Staggered { by } => by,
        };
        let long = || panels.iter().filter(|(p, _)| p.order > limit.length).map(|(_, e)| e);
        let (Some(foot), Some(head)) = (long().map(|e| e.foot).min(), long().map(|e| e.head).max()) else { return Ok(None) };
        let down = ShopRounding::new(step, Rounding::Floor)?;
        let up = ShopRounding::new(step, Rounding::Ceil)?;
        let most = down.round(limit.length)?;
        // A staggered panel's lowest piece is longer by the stagger.
        let even = down.round((most - by).length()?)?;
        let (room, net) = ((even - laps.lap).length()?, (head - foot - even).length()?);
        if !room.is_positive() {
            return Err(Error::new(ErrorKind::Impossible, "lap and stagger leave nothing of a piece in whole steps of the shop")
                .at("lap")
                .value_of(laps.lap)
                .accepts(format!("less than {even}"))
                .cured_by("a shorter lap or stagger, or a finer step"));
        }
        let count = (-(-net.pm()).div_euclid(room.pm())).max(1);
        if count > LAPS {
            return Err(Error::new(ErrorKind::Impossible, "a panel would come in too many pieces")
                .at("limits")
                .value_of(limit.length)
                .accepts(format!("a limit that makes at most {} pieces", LAPS + 1)));
        }
        let (laps_of, pieces) = (i32::try_from(count).unwrap_or(1), u32::try_from(count + 1).unwrap_or(2));
        let piece = up.round((head - foot + laps.lap * laps_of).length()?.station(1, pieces)?)?.min(even);
        let mut lines = Vec::with_capacity(pieces as usize);
        let mut at = (foot + piece).length()?;
        for _ in 0..count {
            lines.push(at);
            at = (at + piece - laps.lap).length()?;
        }
        r.step(|| {
            Step::new("length of a piece")
                .formula("(highest - lowest end of the panels that are too long + laps) / pieces, up to the step")
                .with("highest - lowest", (head - foot).length().unwrap_or_default())
                .with("lap", laps.lap)
                .with("pieces", pieces)
                .with(limit.governs.name(), limit.length)
                .gives(piece)
                .source(Source::geometry())
        });
        Ok(Some(LapLines { laps, governs: limit.governs.name(), most, step: up, lines, by }))
    }

    /// The pieces of one panel from its foot; one where it is not too long.
    pub(super) fn cut(&self, panel: &LaidPanel, extent: Extent, staggered: bool, short: &mut Short, out: &mut Vec<Cut>) -> Result<(), Error> {
        if panel.order <= self.most {
            out.push(Cut { low: extent.foot, own: panel.order });
            return Ok(());
        }
        let lap = self.laps.lap;
        let raise = if staggered { self.by } else { Length::ZERO };
        let mut lines = Vec::with_capacity(self.lines.len());
        for line in &self.lines {
            let line = (*line + raise).length()?;
            if extent.foot + lap < line.into() && line < extent.head {
                lines.push(line);
            }
        }
        let own = |low: Length, high: Length| self.step.round((high - low).length()?);
        let begin = |line: Length| (line - lap).length();
        // An end piece that is too short goes to its neighbour where that stays within the limit.
        if let Some(&first) = lines.first() {
            let next = lines.get(1).copied().unwrap_or(extent.head);
            if own(extent.foot, first)? < self.laps.least_piece && own(extent.foot, next)? <= self.most {
                lines.remove(0);
            }
        }
        if let Some(&last) = lines.last() {
            let before = match lines.len().checked_sub(2).and_then(|k| lines.get(k)) {
                Some(&line) => begin(line)?,
                None => extent.foot,
            };
            if own(begin(last)?, extent.head)? < self.laps.least_piece && own(before, extent.head)? <= self.most {
                lines.pop();
            }
        }
        let mut low = extent.foot;
        for line in lines {
            out.push(Cut { low, own: own(low, line)? });
            low = begin(line)?;
        }
        out.push(Cut { low, own: own(low, extent.head)? });
        for cut in out.iter() {
            if cut.own > self.most {
                return Err(Error::new(ErrorKind::Impossible, format!("a piece is longer than {} allows", self.governs))
                    .value_of(cut.own)
                    .accepts(format!("at most {}", self.most)));
            }
            if cut.own < self.laps.least_piece {
                if short.count == 0 {
                    short.first = format!("strips[{}].runs[{}]", panel.strip, panel.run);
                }
                short.count += 1;
            }
        }
        Ok(())
    }
}
