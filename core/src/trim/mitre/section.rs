//! One surface of the folded section, stretch by stretch, beside its stations on the flat.

use crate::error::Error;
use crate::num;
use crate::trim::outline::Placement;
use crate::trim::{Face, Flat, Part};

/// A surface of the sheet: one of its faces, or halfway between them.
///
/// ```
/// use seamwright::trim::{Face, SheetSurface};
/// assert_eq!(SheetSurface::from(Face::Upper), SheetSurface::Upper);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum SheetSurface {
    /// The upper face.
    Upper,
    /// Halfway between the faces.
    Middle,
    /// The lower face.
    Lower,
}

impl From<Face> for SheetSurface {
    fn from(face: Face) -> SheetSurface {
        match face {
            Face::Upper => SheetSurface::Upper,
            Face::Lower => SheetSurface::Lower,
        }
    }
}

/// A stretch of the surface, in millimetres from the section's own origin: a leg where it does not turn.
#[derive(Debug, Clone, Copy)]
pub(in crate::trim) struct Stretch {
    pub(in crate::trim) part: Part,
    /// Stations on the flat.
    pub(in crate::trim) stations: (f64, f64),
    /// The bend line's, and the middle of a leg.
    pub(in crate::trim) middle: f64,
    /// Where it starts and ends in the section.
    pub(in crate::trim) from: (f64, f64),
    pub(in crate::trim) to: (f64, f64),
    /// Degrees, at its start.
    pub(in crate::trim) heading: f64,
    /// Degrees by which it turns, counter-clockwise positive.
    pub(in crate::trim) turn: f64,
    /// Of the arc, on this surface.
    pub(in crate::trim) centre: (f64, f64),
    pub(in crate::trim) radius: f64,
}

impl Stretch {
    pub(in crate::trim) fn is_bend(&self) -> bool {
        self.turn != 0.0
    }

    /// The point at this share of the stretch, by length on a leg and by angle in a bend.
    pub(in crate::trim) fn at(&self, share: f64) -> (f64, f64) {
        if !self.is_bend() {
            return (self.from.0 + (self.to.0 - self.from.0) * share, self.from.1 + (self.to.1 - self.from.1) * share);
        }
        let heading = self.heading + self.turn * share;
        let out = if self.turn > 0.0 { self.radius } else { -self.radius };
        (self.centre.0 + out * num::sin_deg(heading), self.centre.1 - out * num::cos_deg(heading))
    }

    pub(in crate::trim) fn station(&self, share: f64) -> f64 {
        self.stations.0 + (self.stations.1 - self.stations.0) * share
    }
}

/// The stretches in order, from the start edge to the end edge.
#[derive(Debug, Clone)]
pub(in crate::trim) struct Section(pub(in crate::trim) Vec<Stretch>);

impl Section {
    pub(in crate::trim) fn of(flat: &Flat, placement: &Placement, surface: SheetSurface) -> Result<Section, Error> {
        let outline = flat.outline_at(placement)?;
        // Headings add up the bends instead of being read off points, which are rounded.
        let turn_of = |i: usize| flat.bends().get(i).map_or(0.0, |b| b.direction.sign() * b.angle.degrees());
        let anchor = flat.legs().iter().position(|leg| leg.part == placement.leg).unwrap_or(0);
        let mut heading = placement.heading.degrees() - (0..anchor).map(turn_of).sum::<f64>();
        let mm = |p: crate::trim::Point| (p.x.mm(), p.y.mm());
        let middle = |a: (f64, f64), b: (f64, f64)| ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0);
        let of = |upper: (f64, f64), lower: (f64, f64)| match surface {
            SheetSurface::Upper => upper,
            SheetSurface::Middle => middle(upper, lower),
            SheetSurface::Lower => lower,
        };
        let mut out = Vec::with_capacity(outline.face(Face::Upper).len());
        let pieces = outline.face(Face::Upper).iter().zip(outline.face(Face::Lower));
        let (mut legs, mut bends) = (flat.legs().iter(), flat.bends().iter().enumerate());
        for (upper, lower) in pieces {
            let (from, to) = (of(mm(upper.from), mm(lower.from)), of(mm(upper.to), mm(lower.to)));
            let mut stretch = Stretch { part: upper.part, stations: (0.0, 0.0), middle: 0.0, from, to, heading, turn: 0.0, centre: (0.0, 0.0), radius: 0.0 };
            match (upper.arc, lower.arc) {
                (Some(above), Some(below)) => {
                    if let Some((i, bend)) = bends.next() {
                        stretch.stations = (bend.from.mm(), bend.to.mm());
                        stretch.middle = bend.line.mm();
                        stretch.turn = turn_of(i);
                    }
                    stretch.centre = mm(above.centre);
                    stretch.radius = of((above.radius.mm(), 0.0), (below.radius.mm(), 0.0)).0;
                    heading += stretch.turn;
                }
                _ => {
                    if let Some(leg) = legs.next() {
                        stretch.stations = (leg.from.mm(), leg.to.mm());
                        stretch.middle = (stretch.stations.0 + stretch.stations.1) / 2.0;
                    }
                }
            }
            out.push(stretch);
        }
        Ok(Section(out))
    }
}
