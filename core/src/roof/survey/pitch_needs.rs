//! Which pitches a crew must measure.

use super::joined_planes::{Joint, PlaneEdge};
use super::measuring_sheet::{MeasuringSheet, PitchNeed, PlaneSheet};
use crate::num;
use crate::practice::roof as practice;
use crate::roof::Point;
use crate::units::Angle;

/// Whether a side slopes on a plane that water runs off in this direction, so far as a rough sketch can tell.
fn slopes(from: Point, to: Point, fall: Angle) -> bool {
    let (x, y) = (to.x.mm() - from.x.mm(), to.y.mm() - from.y.mm());
    let along = x * fall.cos() + y * fall.sin();
    along.abs() > practice::LEVEL_ON_SKETCH.sin() * num::hypot(x, y)
}

fn side(sheet: &PlaneSheet, edge: &PlaneEdge) -> Option<(Point, Point)> {
    let ring = match &edge.hole {
        None => &sheet.corners,
        Some(hole) => &sheet.openings.iter().find(|o| o.name == *hole)?.corners,
    };
    let at = |i: usize| ring.get(i % ring.len().max(1)).map(|c| c.at);
    at(edge.edge).zip(at(edge.edge + 1))
}

/// For each sheet, in its order: from plane to plane over lines that slope on both, one measured pitch gives all; where no such line leads on, the next must be
/// measured: a plane that is tied to others before those that hang on it. `falls` are in the order of the sheets.
pub(super) fn pitch_needs(sheet: &MeasuringSheet, falls: &[Option<Angle>]) -> Vec<PitchNeed> {
    let (sheets, joints) = (&sheet.planes, &sheet.joints);
    let tied = sheet.ties.iter().filter_map(|t| sheets.iter().position(|s| s.plane == t.plane));
    let sloping = |joint: &Joint| {
        let end = |edge: &PlaneEdge| {
            let number = sheets.iter().position(|s| s.plane == edge.plane)?;
            let (from, to) = sheets.get(number).and_then(|s| side(s, edge))?;
            slopes(from, to, falls.get(number).copied().flatten()?).then_some(number)
        };
        Some([end(&joint.first)?, end(&joint.second)?])
    };
    let linked: Vec<[usize; 2]> = joints.iter().filter_map(sloping).collect();
    let mut needs: Vec<Option<PitchNeed>> = vec![None; sheets.len()];
    for first in core::iter::once(0).chain(tied).chain(0..sheets.len()) {
        if needs.get(first).is_none_or(Option::is_some) {
            continue;
        }
        let mut known = vec![first];
        let mut at = 0;
        while let Some(&here) = known.get(at) {
            let from: Vec<usize> = known.iter().take(at).copied().filter(|k| linked.contains(&[*k, here]) || linked.contains(&[here, *k])).collect();
            let names = from.iter().filter_map(|k| sheets.get(*k)).map(|s| s.plane.clone()).collect();
            if let Some(need) = needs.get_mut(here) {
                *need = Some(if at == 0 { PitchNeed::Measured } else { PitchNeed::Follows(names) });
            }
            for beyond in (0..sheets.len()).filter(|k| linked.contains(&[*k, here]) || linked.contains(&[here, *k])) {
                if !known.contains(&beyond) {
                    known.push(beyond);
                }
            }
            at += 1;
        }
    }
    needs.into_iter().map(|n| n.unwrap_or(PitchNeed::Measured)).collect()
}
