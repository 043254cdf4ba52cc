//! The lines that the crew strikes at a pitch transition, and what lies along them, in the order of the work.
//!
//! The lower lines step back up the slope from the trim's lower edge and lie on the lower panel. The upper lines step down from the trim's top edge and
//! lie on the upper flange, over the upper deck.

use super::parts::{Along, AlongLine, Bites, Datum, LayoutLine, Side};
use super::transition::PitchTransitionDetail;
use crate::error::Error;
use crate::record::{Recorder, Source, Step};
use crate::units::{Length, Sum};

/// Where the trim's two edges lie, each along its own plane from the junction line, positive up the slope.
#[derive(Debug, Clone, Copy)]
pub(super) struct Places {
    pub(super) edge: Length,
    pub(super) top: Length,
}

impl Places {
    /// The lower lines, then the upper ones and, after them, those of the cleat.
    pub(super) fn lines<R: Recorder>(&self, r: &mut R, d: &PitchTransitionDetail, cleat: Vec<LayoutLine>) -> Result<Vec<LayoutLine>, Error> {
        let c = &d.end.closure;
        let (edge, top) = (self.edge, self.top);
        let from_line =
            |name: &'static str, side: Side, at: Length| LayoutLine { name: name.into(), side, datum: Datum::JunctionLine, from_datum: at, from_line: at };
        let lower = |name: &'static str, from_edge: Sum| -> Result<LayoutLine, Error> {
            let (from_datum, from_line) = (from_edge.length()?, (edge + from_edge).length()?);
            Ok(LayoutLine { name: name.into(), side: Side::First, datum: Datum::TrimLowerEdge, from_datum, from_line })
        };
        let screws = c.setback + c.face_to_screws;
        let half_tape = c.tape_width.station(1, 2)?;
        let below = d.top_screws_below_top;
        let mut lines = vec![
            from_line("lower panel end", Side::First, (-d.end.hold_back).length()?),
            from_line("trim lower edge", Side::First, edge),
            lower("closure face", c.setback.into())?,
            lower("closure tape, lower edge", screws - half_tape)?,
            lower("closure screws", screws)?,
            lower("closure tape, upper edge", screws + half_tape)?,
            lower("closure flange, upper edge", screws + c.screws_to_edge)?,
            from_line("trim top edge", Side::Second, top),
            LayoutLine {
                name: "screws along the top edge".into(),
                side: Side::Second,
                datum: Datum::TrimTopEdge,
                from_datum: below,
                from_line: (top - below).length()?,
            },
        ];
        for line in &lines {
            r.step(|| {
                let step = Step::new(line.name.clone()).formula(format!("measured from {}", line.datum));
                step.with("from the junction line", line.from_line).gives(line.from_datum).source(Source::user())
            });
        }
        lines.extend(cleat);
        Ok(lines)
    }

    /// Closures and what seals them, the bead behind the seams, the screws and rivets of the trim, then the cleat on its tape.
    pub(super) fn along(&self, d: &PitchTransitionDetail, mut lower: Vec<AlongLine>, cleat: Vec<AlongLine>) -> Result<Vec<AlongLine>, Error> {
        // The rivets go through the trim into the closures, and come when the trim is set.
        let rivets = lower.pop();
        if let Some(bead) = d.seam_bead {
            lower.push(AlongLine {
                name: "bead behind the seams".into(),
                side: Side::First,
                what: Along::Bead { width: bead.width, depth: bead.depth },
                from_line: (-d.end.hold_back).length()?,
            });
        }
        let row = &d.top_screws;
        lower.push(AlongLine {
            name: "screws along the top edge".into(),
            side: Side::Second,
            what: Along::Fasteners { bites: Bites::Structure, spacing: row.spacing, source: row.source.clone() },
            from_line: (self.top - d.top_screws_below_top).length()?,
        });
        lower.extend(rivets);
        lower.extend(cleat);
        Ok(lower)
    }
}
