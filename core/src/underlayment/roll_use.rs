//! Rolls as they are used up, one after the other.

use super::rules::{CourseRule, Roll};
use crate::error::Error;
use crate::practice::underlayment::LEAST_PIECE;
use crate::units::Length;

/// What is left of the roll in hand, and what was opened and thrown away.
#[derive(Debug, Clone, Copy)]
pub(super) struct RollUse {
    left: Length,
    pub(super) opened: u32,
}

impl RollUse {
    /// With so much left on the roll in hand.
    pub(super) const fn with(left: Length) -> RollUse {
        RollUse { left, opened: 0 }
    }

    /// Opens another roll, and throws away what is left of the one in hand.
    fn open(&mut self, roll: &Roll) {
        self.left = roll.length;
        self.opened = self.opened.saturating_add(1);
    }

    /// What stays on the roll in hand.
    pub(super) const fn left(&self) -> Length {
        self.left
    }

    /// Lays one stretch, and gives the pieces: from, to. Each but the first begins an end lap before the last one's end. A piece that would end within the stagger of a
    /// joint below is cut short of it, where at least the least piece is left of it; where nothing does, the joint stays.
    pub(super) fn lay(&mut self, from: Length, to: Length, roll: &Roll, rule: &CourseRule, below: &[Length]) -> Result<Vec<(Length, Length)>, Error> {
        let mut out = Vec::new();
        let mut start = from;
        let least = LEAST_PIECE.min(roll.length).max((rule.end_lap * 2).length()?.min(roll.length));
        loop {
            let need = (to - start).length()?;
            if self.left < least.min(need) || self.left <= rule.end_lap && need > self.left {
                self.open(roll);
            }
            if self.left >= need {
                self.left = (self.left - need).length()?;
                out.push((start, to));
                return Ok(out);
            }
            let reach = (start + self.left).length()?;
            let end = self.joint(start, reach, rule, least, below)?;
            // What a joint cut short leaves is an offcut: the next piece comes from another roll.
            out.push((start, end));
            self.open(roll);
            start = (end - rule.end_lap).length()?;
        }
    }

    /// Where a piece that reaches so far ends.
    fn joint(&self, start: Length, reach: Length, rule: &CourseRule, least: Length, below: &[Length]) -> Result<Length, Error> {
        let clear = |at: Length| below.iter().all(|b| (at - *b).length().is_ok_and(|d| d.pm().abs() >= rule.stagger.pm()));
        let mut candidates = vec![reach];
        for b in below {
            candidates.push((*b - rule.stagger).length()?);
            candidates.push((*b + rule.stagger).length()?);
        }
        let first = (start + least).length()?;
        Ok(candidates.into_iter().filter(|at| *at <= reach && *at >= first && clear(*at)).max().unwrap_or(reach))
    }
}
