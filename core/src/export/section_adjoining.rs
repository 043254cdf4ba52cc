//! What others build at a junction, in its section: as much of it as the job knows.

use super::fold::Point;
use super::section_axis::{Axes, Other};
use super::section_ground::{BEYOND, DECK, band_at};
use super::section_metal::{Metal, middle};
use super::section_panel::Panel;
use crate::junction::{Adjoining, Side, Solved};
use crate::units::Length;

/// Drawn thickness of cladding.
const CLADDING: f64 = 2.6;
/// What lies between the pan and a pipe's base: tape.
const PIPE_BASE: f64 = 0.6;
/// How far packing is drawn to taper off, for its thickness.
const TAPER: f64 = 6.0;
/// Clear of the metal under it.
const CLEAR: f64 = 0.35;

/// Something of others', by its place in the junction's list.
#[derive(Debug, Clone)]
pub(super) struct Neighbour {
    pub(super) index: usize,
    /// Whether it stands before the seams, as seen in the section.
    pub(super) is_before: bool,
    /// A body, where its face is known.
    pub(super) ring: Vec<Point>,
    pub(super) hatch: Vec<(Point, Point)>,
    /// Edges of what is known no further.
    pub(super) edges: Vec<(Point, Point)>,
    pub(super) handles: Vec<Point>,
}

/// The width of the slot in each deck.
pub(super) fn slot(solved: &Solved) -> Length {
    let widths = solved.adjoining.iter().filter_map(|a| if let Adjoining::VentSlot { width, .. } = a { Some(*width) } else { None });
    widths.fold(half_gap(solved), Length::max)
}

/// Half the gap of an expansion joint, or of the hole around a pipe.
fn half_gap(solved: &Solved) -> Length {
    let gaps = solved.adjoining.iter().filter_map(|a| match a {
        Adjoining::JointCurbs { gap, .. } => gap.station(1, 2).ok(),
        Adjoining::Pipe { hole, .. } => Some(hole.0.min(hole.1)),
        _ => None,
    });
    gaps.fold(Length::ZERO, Length::max)
}

/// Everything of others'. A slot is left out of the decks; here it is pointed at.
pub(super) fn neighbours(solved: &Solved, axes: &Axes, other: &Other, panels: &[Panel], metal: &[Metal], scale: f64) -> Vec<Neighbour> {
    let mut out = Vec::new();
    for (index, what) in solved.adjoining.iter().enumerate() {
        let bare = Neighbour { index, is_before: false, ring: Vec::new(), hatch: Vec::new(), edges: Vec::new(), handles: Vec::new() };
        match (what, other, &axes.second) {
            (Adjoining::VentSlot { width, .. }, ..) => {
                let other = axes.second.as_ref().filter(|_| matches!(other, Other::Plane(_)));
                let sides = core::iter::once(&axes.first).chain(other);
                let handles = sides.map(|axis| axis.at(axis.panels * width.mm() * scale / 2.0, -0.5)).collect();
                out.push(Neighbour { handles, ..bare });
            }
            (Adjoining::Gutter { back, front }, ..) => {
                // Its height is not known: plumb lines under the panel's nose, down to where the face breaks off.
                let nose = panels.iter().flat_map(|p| &p.pan).map(|p| p.1).fold(0.0, f64::min);
                let low = metal.iter().flat_map(|m| &m.outline).map(|p| p.1).fold(nose - 10.0, f64::min) - BEYOND;
                let plumb = |x: &Length| ((x.mm() * scale, nose - 1.5), (x.mm() * scale, low));
                let edges = vec![plumb(back), plumb(front)];
                let handles = [0.85, 0.6, 0.4].map(|share| middle(plumb(front).0, plumb(front).1, share)).to_vec();
                out.push(Neighbour { edges, handles, ..bare });
            }
            (Adjoining::Cladding { lower_edge }, Other::Wall, Some(wall)) => {
                let from = wall.place(*lower_edge, scale);
                let on_wall = || metal.iter().flat_map(|m| &m.outline).map(|p| wall.of(*p));
                let to = on_wall().map(|(a, _)| a).fold(10.0_f64.max(from), f64::max) + BEYOND;
                let face = on_wall().filter(|(a, h)| *a >= from && *h < 30.0).map(|(_, h)| h).fold(0.0, f64::max) + CLEAR;
                let band = band_at("cladding", wall, (from, to), (face + CLADDING, CLADDING), 4.4);
                let handles = [0.6, 0.4, 0.8].map(|share| wall.at(from + (to - from) * share, face + CLADDING)).to_vec();
                out.push(Neighbour { ring: band.ring, hatch: band.hatch, handles, ..bare });
            }
            (Adjoining::WallTop { .. }, Other::WallTop, Some(outside)) => {
                let below = |share: f64| outside.at(share, -outside.of(axes.first.at(0.0, 0.0)).1.abs() / 2.0);
                out.push(Neighbour { handles: [14.0, 20.0, 8.0].map(below).to_vec(), ..bare });
            }
            (Adjoining::Covered { side, top_edge, thickness }, Other::WallTop, _) => {
                // Down past the trim on its face.
                let axis = axes.side(*side);
                let down = metal.iter().flat_map(|m| &m.outline).map(|p| axis.of(*p).0 * -axis.up).fold(10.0, f64::max) + BEYOND;
                let top = axis.place(*top_edge, scale);
                let (face, thick) = ((thickness.mm() * scale).max(0.4), (thickness.mm() * scale).max(0.4));
                let ends = if axis.up > 0.0 { (-down, top) } else { (top, down) };
                let band = band_at("covered", axis, ends, (face, thick), 400.0);
                let handles = [0.1, 0.04].map(|share| axis.at(-axis.up * down * (1.0 - share), face / 2.0)).to_vec();
                out.push(Neighbour { ring: band.ring, hatch: band.hatch, handles, ..bare });
            }
            (Adjoining::BuiltUp { height, from }, _, Some(axis)) => {
                let far = panels.iter().filter(|p| axis.panels * p.far > 0.0 && p.side == Side::Second).map(|p| p.far).fold(0.0, f64::max);
                let (low, thick) = (height.mm() * scale - DECK, DECK);
                if low > 0.0 {
                    let band = band_at("built-up deck", axis, (axis.place(*from, scale), far), (-thick, low), 7.0);
                    let handles = [0.5, 0.6, 0.4].map(|share| axis.at(far * share, -thick - low / 2.0)).to_vec();
                    out.push(Neighbour { ring: band.ring, hatch: band.hatch, handles, ..bare });
                }
            }
            (Adjoining::Packing { height, reach }, _, Some(axis)) => {
                let place = |l: Length| axis.place(l, scale);
                let (from, to, thick) = (place(reach.0), place(reach.1), height.mm() * scale);
                let end = to + axis.panels * TAPER * thick;
                let ring = vec![axis.at(from, 0.0), axis.at(end, 0.0), axis.at(to, thick), axis.at(from, thick)];
                let handles = [0.5, 0.3, 0.7].map(|share| axis.at(from + (to - from) * share, thick / 2.0)).to_vec();
                out.push(Neighbour { ring, handles, ..bare });
            }
            (Adjoining::Pipe { diameter, hole, base }, _, Some(up)) => {
                let half = diameter.mm() * scale / 2.0;
                let foot = axes.first.at(-hole.0.mm() * scale * 2.0, 0.0).1 - 6.0;
                let collar = up.at(base.1.mm() * scale, 0.0).1 + half.max(6.0);
                let top = collar + 12.0;
                let pan = panels.iter().map(|p| p.top).fold(0.0, f64::max) + PIPE_BASE;
                let ring = vec![(-half, foot), (half, foot), (half, top), (-half, top)];
                let handles = [0.95, 0.9, 0.1].map(|share| (half, foot + (top - foot) * share)).to_vec();
                out.push(Neighbour { ring, handles, is_before: true, ..bare.clone() });
                // The base lies on the pan; from the hole's edges its boot goes up to the pipe.
                for (axis, way, hole, base, x) in [(&axes.first, -1.0, hole.0, base.0, -half), (up, 1.0, hole.1, base.1, half)] {
                    let (near, far) = (way * hole.mm() * scale, way * base.mm() * scale);
                    let (inner, outer) = ([axis.at(far, pan), axis.at(near, pan), (x, collar), (x, collar + 4.0)], x + way * 1.3);
                    let mut ring = inner.to_vec();
                    ring.extend([(outer, collar + 4.0), (outer, collar + 0.4), axis.at(near + way * 1.4, pan + 1.3), axis.at(far, pan + 1.3)]);
                    let (low, high) = (axis.at(near + way * 1.4, pan + 1.3), (outer, collar + 0.4));
                    let handles = [0.5, 0.7, 0.3].map(|share| middle(low, high, share)).to_vec();
                    out.push(Neighbour { ring, handles, is_before: true, ..bare.clone() });
                }
            }
            (Adjoining::JointCurbs { gap, width, height }, ..) => {
                for axis in core::iter::once(&axes.first).chain(&axes.second) {
                    let (from, thick) = (gap.mm() * scale / 2.0 * axis.panels, width.mm() * scale * axis.panels);
                    let (low, high) = (from.min(from + thick), from.max(from + thick));
                    let band = band_at("curb", axis, (low, high), (height.mm() * scale, height.mm() * scale), 400.0);
                    let cross = [((low, 0.0), (high, 1.0)), ((low, 1.0), (high, 0.0))];
                    let hatch = cross.map(|(a, b)| (axis.at(a.0, a.1 * height.mm() * scale), axis.at(b.0, b.1 * height.mm() * scale))).to_vec();
                    let handles = [0.5, 0.7].map(|share| axis.at(f64::midpoint(low, high), height.mm() * scale * share)).to_vec();
                    out.push(Neighbour { ring: band.ring, hatch, handles, ..bare.clone() });
                }
            }
            (Adjoining::Riser { .. }, ..) => {
                let Some(riser) = &axes.riser else { continue };
                let foot = riser.of(axes.first.at(0.0, 0.0)).0;
                out.push(Neighbour { handles: [0.5, 0.6, 0.4, 0.7].map(|share| riser.at(foot * share, -1.5)).to_vec(), ..bare });
            }
            // There is no wall for it.
            (
                Adjoining::Cladding { .. }
                | Adjoining::WallTop { .. }
                | Adjoining::Covered { .. }
                | Adjoining::BuiltUp { .. }
                | Adjoining::Packing { .. }
                | Adjoining::Pipe { .. },
                ..,
            ) => {}
        }
    }
    out
}
