//! What builds the deck of a plane up: the packing of the lines below it, under all of its panels.

use super::choices::{Chosen, Detail};
use super::sections::order;
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::PackingReach;
use crate::roof::Roof;
use crate::units::Length;

/// The packing of a line's detail that goes on under all of the panels above, and where it is said.
fn packing(chosen: &Chosen<'_>) -> Option<(Length, String)> {
    let (detail, under) = match chosen.detail {
        Detail::ExpansionAcross(d) => (&d.flashing, ".flashing"),
        Detail::ShallowToSteep(d) | Detail::SteepToShallow(d) => (&**d, ""),
        _ => return None,
    };
    (detail.packing_reach == PackingReach::UnderPanels && detail.packing.is_positive()).then(|| (detail.packing, format!("{}{under}.packing", chosen.path)))
}

/// By how much each plane's deck is built up.
pub(super) fn built_up(roof: &Roof, chosen: &[Option<Chosen<'_>>]) -> Result<Vec<Length>, Error> {
    let mut out: Vec<Option<(Length, &str)>> = vec![None; roof.planes().len()];
    let mut faults = Faults::default();
    let name = |plane: usize| roof.planes().get(plane).map_or("", |p| p.name());
    let lines = || roof.lines().iter().zip(chosen).map(|(line, chosen)| (line, chosen.as_ref().and_then(packing)));
    for (line, packing) in lines() {
        let (Some((packing, path)), Some(upper)) = (packing, order(line).second) else { continue };
        match out.get_mut(upper) {
            Some(Some((other, of))) if *other != packing => faults.add(
                Error::new(ErrorKind::Conflict, format!("two lines build the deck of {} up, and not alike: {of} by {other}", name(upper)))
                    .at(path)
                    .value_of(packing)
                    .accepts(other.to_string())
                    .about(&line.name),
            ),
            Some(slot) => *slot = Some((packing, &line.name)),
            None => {}
        }
    }
    for (line, own) in lines().filter(|(l, _)| l.kind.parts_a_slope()) {
        if let Some((plane, _)) = line.crossing()
            && let Some((packing, of)) = out.get(plane).copied().flatten()
            && own.is_none()
        {
            faults.add(
                Error::new(ErrorKind::Impossible, format!("metal of the {} lies on the deck of {}, which {of} builds up by {packing}", line.kind, name(plane)))
                    .at(format!("lines.{}", line.name))
                    .value_of(packing)
                    .accepts("a deck that nothing builds up")
                    .cured_by("planes that part otherwise, so that no packing lies on what is above this line, or packing under its flange alone"),
            );
        }
    }
    faults.check()?;
    Ok(out.into_iter().map(|of| of.map_or(Length::ZERO, |(packing, _)| packing)).collect())
}
