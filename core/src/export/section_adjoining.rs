//! What others build at a junction, in its section: as much of it as the job knows.

use super::fold::Point;
use super::section_axis::{Axes, Other};
use super::section_ground::{BEYOND, band_at};
use super::section_metal::{Metal, middle};
use super::section_panel::Panel;
use crate::junction::{Adjoining, Solved};
use crate::units::Length;

/// Drawn thickness of cladding.
const CLADDING: f64 = 2.6;
/// Clear of the metal under it.
const CLEAR: f64 = 0.35;

/// Something of others', by its place in the junction's list.
#[derive(Debug, Clone)]
pub(super) struct Neighbour {
    pub(super) index: usize,
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
    widths.fold(Length::ZERO, Length::max)
}

/// Everything of others'. A slot is left out of the decks; here it is pointed at.
pub(super) fn neighbours(solved: &Solved, axes: &Axes, other: &Other, panels: &[Panel], metal: &[Metal], scale: f64) -> Vec<Neighbour> {
    let mut out = Vec::new();
    for (index, what) in solved.adjoining.iter().enumerate() {
        let bare = Neighbour { index, ring: Vec::new(), hatch: Vec::new(), edges: Vec::new(), handles: Vec::new() };
        match (what, other, &axes.second) {
            (Adjoining::VentSlot { width, .. }, ..) => {
                let sides = core::iter::once(&axes.first).chain(&axes.second);
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
            // There is no wall for it.
            (Adjoining::Cladding { .. }, ..) => {}
        }
    }
    out
}
