//! Whether an outline closes and keeps clear of itself.

use super::shape::{BlankEdge, FlatBlank};
use crate::error::{Error, ErrorKind, Faults};
use crate::trim::Point;
use crate::trim::curves::{Boxes, Curve, Round, heading, meet};

/// More stretches than this are not looked at.
const MOST: usize = 20_000;

fn fault(message: &'static str, value: impl core::fmt::Display) -> Error {
    Error::new(ErrorKind::Geometry, message).at("outline").value_of(value).accepts("one closed line that neither crosses nor touches itself")
}

/// A stretch in millimetres from a corner of the blank.
fn curve(edge: &BlankEdge, origin: Point) -> Result<Curve, Error> {
    let round = |arc: crate::trim::Arc| -> Result<Round, Error> {
        let start = heading(arc.centre.to(edge.from)?);
        Ok(Round { centre: origin.to(arc.centre)?, radius: arc.radius.mm(), heading: start, turn: arc.turn.degrees() })
    };
    Ok(Curve { from: origin.to(edge.from)?, to: origin.to(edge.to)?, round: edge.arc.map(round).transpose()? })
}

pub(super) fn check(blank: &FlatBlank) -> Result<(), Error> {
    let outline = &blank.outline;
    let Some(first) = outline.first().filter(|_| outline.len() >= 3) else {
        return Err(fault("a blank needs at least three sides", outline.len()));
    };
    if outline.len() > MOST {
        return Err(Error::new(ErrorKind::TooLarge, "the outline has too many stretches")
            .at("outline")
            .value_of(outline.len())
            .accepts(format!("at most {MOST}"))
            .cured_by("a coarser tolerance"));
    }
    for (i, (edge, next)) in outline.iter().zip(outline.iter().cycle().skip(1)).enumerate() {
        if edge.to != next.from {
            return Err(fault(
                "the outline is open",
                format_args!("stretch {i} ends at {}, {} and the next starts at {}, {}", edge.to.x, edge.to.y, next.from.x, next.from.y),
            ));
        }
        if edge.from == edge.to {
            return Err(fault("a stretch of the outline has no length", format_args!("stretch {i} at {}, {}", edge.from.x, edge.from.y)));
        }
    }
    let curves: Vec<Curve> = outline.iter().map(|e| curve(e, first.from)).collect::<Result<_, _>>()?;
    match Boxes::over(&curves).pair(|i, j| meet(&curves, i, j)) {
        Some((i, j)) => {
            let at = outline.get(j).map_or(first.from, |e| e.from);
            Err(fault("the outline crosses or touches itself", format_args!("stretches {i} and {j}, near {}, {}", at.x, at.y)))
        }
        None => holes(blank),
    }
}

/// Every hole in the metal: clear of the outline and of the other holes.
fn holes(blank: &FlatBlank) -> Result<(), Error> {
    let mut faults = Faults::default();
    for (i, hole) in blank.holes.iter().enumerate() {
        let radius = hole.diameter.positive(&format!("holes[{i}].diameter"))?.mm() / 2.0;
        let clear = blank.clear_of_edge(hole.centre)?;
        let mut refuse = |message: &'static str, accepts: &'static str| {
            let at = format_args!("{} at {}, {}", hole.diameter, hole.centre.x, hole.centre.y).to_string();
            faults.add(Error::new(ErrorKind::Geometry, message).at(format!("holes[{i}]")).value_of(at).accepts(accepts));
        };
        if clear <= radius {
            refuse("a hole breaks through the outline or lies outside it", "a hole in the metal, clear of the outline");
        }
        if blank.holes.iter().take(i).any(|o| o.touches(hole)) {
            refuse("two holes lie on each other", "holes apart");
        }
    }
    faults.check()
}
