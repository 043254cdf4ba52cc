//! The checks of creep along one way from the datum.

use super::super::cautions;
use super::super::input::NarrowLimit;
use super::super::placing::PlaneSide;
use super::creep::{Creep, CreepCheck};
use crate::error::{Error, ErrorKind};
use crate::record::{Caution, Source};
use crate::units::{Length, ShopRounding, TapeReading};

/// One way from the datum.
pub(super) struct Way {
    pub(super) toward: PlaneSide,
    /// The datum.
    pub(super) from: Length,
    pub(super) coverage: Length,
    /// Panels that begin before the plane ends, whole or ripped.
    pub(super) panels: u32,
    /// What the last of them covers.
    pub(super) end: Length,
}

impl Way {
    /// From a seam to the plane's bound on this side; none where the bound is not beyond the seam.
    pub(super) fn new(toward: PlaneSide, from: Length, bound: Length, coverage: Length) -> Result<Option<Way>, Error> {
        let across = match toward {
            PlaneSide::Left => (from - bound).length()?,
            PlaneSide::Right => (bound - from).length()?,
        };
        if !across.is_positive() {
            return Ok(None);
        }
        let whole = across.pm() / coverage.pm();
        let rest = across.pm() % coverage.pm();
        let count = whole + i64::from(rest > 0);
        let panels = u32::try_from(count).map_err(|_| Error::new(ErrorKind::TooLarge, "too many panels from the datum").value_of(count))?;
        Ok(Some(Way { toward, from, coverage, panels, end: if rest > 0 { Length::from_pm(rest) } else { coverage } }))
    }

    fn seam(&self, panels: u32) -> Result<Length, Error> {
        let far = times(self.coverage, panels)?;
        match self.toward {
            PlaneSide::Left => (self.from - far).length(),
            PlaneSide::Right => (self.from + far).length(),
        }
    }

    pub(super) fn checks(&self, creep: &Creep, tape: ShopRounding) -> Result<Vec<CreepCheck>, Error> {
        let mut out = Vec::new();
        let mut at = creep.every;
        while at < self.panels {
            let recover_over = creep.every.min(self.panels - at);
            let allowed = times(creep.each, creep.every)?;
            out.push(CreepCheck {
                toward: self.toward,
                panels: at,
                x: self.seam(at)?,
                across: TapeReading::of(times(self.coverage, at)?, tape)?,
                allowed,
                unchecked: times(creep.each, at)?,
                recover_over,
                pull: up(allowed, recover_over),
            });
            let Some(next) = at.checked_add(creep.every) else { break };
            at = next;
        }
        Ok(out)
    }

    pub(super) fn cautions(&self, creep: &Creep, narrow: Option<NarrowLimit>, checks: &[CreepCheck], out: &mut Vec<Caution>) -> Result<(), Error> {
        let path = match self.toward {
            PlaneSide::Left => "checks.left",
            PlaneSide::Right => "checks.right",
        };
        if let Some(narrow) = narrow {
            let left = |panels: u32| (self.end - times(creep.each, panels)?).length();
            // The last mark is recovered over what follows it, and what follows it creeps.
            let last = checks.last().map_or(self.panels, |c| self.panels - c.panels);
            let (width, kept) = (left(self.panels)?, left(last)?);
            if width < narrow.least && self.end >= narrow.least {
                let caution = Caution::new(cautions::CREEP_NARROWS_END, path, Source::user()).arg("each", creep.each).arg("panels", self.panels);
                out.push(caution.arg("width", width).arg("least", narrow.least).arg("kept", kept));
            }
        }
        if let Some(within) = creep.meets_within {
            // Both planes creep, at the worst apart from each other.
            let apart = times(creep.each, creep.every.min(self.panels).saturating_mul(2))?;
            if apart > within {
                let every = i128::from(within.pm()) / (2 * i128::from(creep.each.pm())).max(1);
                let caution = Caution::new(cautions::CREEP_PARTS_SEAMS, path, Source::user()).arg("each", creep.each).arg("apart", apart);
                out.push(caution.arg("within", within).arg("every", every));
            }
        }
        if let Some(most) = creep.pull
            && let Some(check) = checks.iter().find(|c| c.pull > most)
        {
            let caution = Caution::new(cautions::PULL_TOO_GREAT, path, Source::user()).arg("drift", check.allowed).arg("panels", check.recover_over);
            out.push(caution.arg("pull", check.pull).arg("most", most));
        }
        Ok(())
    }
}

fn times(length: Length, n: u32) -> Result<Length, Error> {
    let pm = i128::from(length.pm()) * i128::from(n);
    i64::try_from(pm)
        .map(Length::from_pm)
        .map_err(|_| Error::new(ErrorKind::Overflow, "a running length is too large").value_of(length).accepts("at most 9 223 372 m in all"))
}

/// One of `n` equal shares, up to the picometre, so that the shares are never too little.
fn up(length: Length, n: u32) -> Length {
    Length::from_pm(-(-length.pm()).div_euclid(i64::from(n.max(1))))
}
