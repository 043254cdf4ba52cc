//! The two ends of a tapered trim, held against each other.

use super::piece::Taper;
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::trim::{Edge, Flat, Part, Point, Profile};
use crate::units::Length;

/// How far a leg may stand out of its plane: noise of angles that were worked out twice.
const NOISE: Length = Length::micrometres(1);

/// The line of a tapered trim that runs straight along, square to both end sections (but for the offset that the caller gives).
///
/// ```
/// use seamwright::trim::{HeldLine, Part};
/// assert_ne!(HeldLine::StartEdge, HeldLine::Bend(Part::Body(0)));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum HeldLine {
    /// The edge where the profile's walk starts.
    StartEdge,
    /// A bend, or the fold of a hem.
    Bend(Part),
    /// The edge where it ends.
    EndEdge,
}

fn unlike(path: String, value: impl core::fmt::Display, near: impl core::fmt::Display) -> Error {
    Error::new(ErrorKind::Conflict, "the two ends of a tapered trim differ in more than their lengths")
        .at(path)
        .value_of(value)
        .accepts(format!("as at the near end: {near}"))
}

/// An edge but for its width, which may differ between the ends.
fn hem(edge: &Edge) -> String {
    let name = edge.name();
    match edge {
        Edge::Raw => name.to_owned(),
        Edge::ClosedHem { direction, .. } | Edge::DoubleHem { direction, .. } => format!("{name}, {direction:?}").to_lowercase(),
        Edge::OpenHem { gap, direction, .. } => format!("{name} of {gap}, {direction:?}").to_lowercase(),
        Edge::TeardropHem { inside_radius, return_flat, gap, direction, .. } => {
            format!("{name} of radius {inside_radius}, return {return_flat}, gap {gap}, {direction:?}").to_lowercase()
        }
        Edge::WiredEdge { wire, direction, .. } => format!("{name} of {wire}, {direction:?}").to_lowercase(),
    }
}

/// What must be the same at both ends.
pub(super) fn same_build(near: &Profile, far: &Profile) -> Result<(), Error> {
    let mut faults = Faults::default();
    let mut same = |is: bool, fault: &dyn Fn() -> Error| {
        if !is {
            faults.add(fault());
        }
    };
    same(near.thickness == far.thickness, &|| unlike("far.thickness".into(), far.thickness, near.thickness));
    same(near.legs.len() == far.legs.len(), &|| unlike("far.legs".into(), far.legs.len(), format_args!("{} legs", near.legs.len())));
    same(near.bends.len() == far.bends.len(), &|| unlike("far.bends".into(), far.bends.len(), format_args!("{} bends", near.bends.len())));
    same(near.painted == far.painted, &|| unlike("far.painted".into(), format_args!("{:?}", far.painted), format_args!("{:?}", near.painted)));
    for (i, (a, b)) in near.legs.iter().zip(&far.legs).enumerate() {
        for (field, x, y) in [("start", a.start, b.start), ("end", a.end, b.end)] {
            same(x == y, &|| unlike(format!("far.legs[{i}].{field}"), format_args!("{y:?}"), format_args!("{x:?}")));
        }
    }
    for (i, (a, b)) in near.bends.iter().zip(&far.bends).enumerate() {
        same(a.direction == b.direction, &|| unlike(format!("far.bends[{i}].direction"), format_args!("{:?}", b.direction), format_args!("{:?}", a.direction)));
        same(a.inside_radius == b.inside_radius, &|| unlike(format!("far.bends[{i}].inside_radius"), b.inside_radius, a.inside_radius));
        same(a.rule == b.rule, &|| unlike(format!("far.bends[{i}].rule"), "another rule", "its own rule, or none"));
    }
    for (field, a, b) in [("start_edge", &near.start_edge, &far.start_edge), ("end_edge", &near.end_edge, &far.end_edge)] {
        same(hem(a) == hem(b) && a.rule() == b.rule(), &|| unlike(format!("far.{field}"), hem(b), hem(a)));
    }
    faults.check()
}

/// Legs lie in one plane from end to end only where they are parallel at both ends: so the angles must be the same, to what a micrometre of warp hides.
pub(super) fn same_angles(near: &Flat, far: &Flat) -> Result<(), Error> {
    let mut faults = Faults::default();
    for (i, (a, b)) in near.bends().iter().zip(far.bends()).enumerate() {
        let turn = b.angle.degrees() - a.angle.degrees();
        let widest = |flat: &Flat| flat.legs().iter().skip(i).take(2).map(|l| l.length().mm()).fold(0.0, f64::max);
        let warp = Length::from_mm(widest(near).max(widest(far)) * num::sin_deg(turn.abs().min(90.0)))?;
        if warp > NOISE {
            faults.add(
                Error::new(ErrorKind::Geometry, "the bend's angle differs between the ends: its legs would be warped, and no flat sheet is")
                    .at(format!("far.bends[{i}].angle"))
                    .value_of(format_args!("{}, which is {turn} deg off: a leg would stand {warp} out of its plane", b.angle))
                    .accepts(format!("{}, as at the near end (to {NOISE} of warp)", a.angle))
                    .cured_by("the same angles at both ends, or a trim in two parts with a fold between them"),
            );
        }
    }
    faults.check()
}

/// Where each edge and bend line goes between the sections, in millimetres: the start edge, each bend, the end edge.
pub(super) fn shifts(taper: &Taper, near: &Flat, far: &Flat, headings: &[f64]) -> Result<Vec<(f64, f64)>, Error> {
    let mut out = vec![(0.0, 0.0)];
    let mut at = (0.0, 0.0);
    for ((a, b), heading) in near.legs().iter().zip(far.legs()).zip(headings) {
        let wider = (b.length() - a.length()).length()?.mm();
        at = (at.0 + wider * num::cos_deg(*heading), at.1 + wider * num::sin_deg(*heading));
        out.push(at);
    }
    let held = match taper.held {
        HeldLine::StartEdge => 0,
        HeldLine::EndEdge => out.len() - 1,
        HeldLine::Bend(part) => near.bends().iter().position(|b| b.part == part).map(|i| i + 1).ok_or_else(|| {
            Error::new(ErrorKind::Unknown, "the profile has no such bend")
                .at("held")
                .value_of(part)
                .accepts(format!("one of its {} bends, hems counted, or an edge", near.bends().len()))
        })?,
    };
    let base = out.get(held).copied().unwrap_or_default();
    let Point { x, y } = taper.offset;
    for d in &mut out {
        *d = (d.0 - base.0 + x.mm(), d.1 - base.1 + y.mm());
    }
    Ok(out)
}
