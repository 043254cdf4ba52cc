//! Bundles in the order of laying.
//!
//! What is laid next lies in the bundle that is opened next, so bundles are stretches of the order of laying; filling each before the next is begun gives the
//! fewest of such stretches.

use super::super::cautions;
use super::choices::BundleLimits;
use super::listed::{Bundle, ListedPiece};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Caution, Source};
use crate::units::{Length, Mass, MassUnit, SurfaceMass, SurfaceMassUnit};

/// The mass of one piece at the full width of the coil.
fn mass(order: Length, width: Length, sheet: SurfaceMass) -> f64 {
    order.times(width).get(crate::units::AreaUnit::SquareMetre) * sheet.get(SurfaceMassUnit::KilogramPerSquareMetre)
}

pub(super) fn bundled(
    pieces: &mut [ListedPiece],
    limits: &BundleLimits,
    width: Length,
    sheet: Option<SurfaceMass>,
    cautions: &mut Vec<Caution>,
) -> Result<Vec<Bundle>, Error> {
    let most = limits.mass.map(|m| m.get(MassUnit::Kilogram));
    if most.is_some() && sheet.is_none() {
        return Err(Error::new(ErrorKind::Missing, "a bundle's mass needs the sheet's")
            .at("bundles.mass")
            .accepts("the mass of the sheet for each area of it"));
    }
    let mut faults = Faults::default();
    let mut out: Vec<(Bundle, f64)> = Vec::new();
    for (i, piece) in pieces.iter_mut().enumerate() {
        let own = sheet.map_or(0.0, |s| mass(piece.order, width, s));
        if let Some(most) = limits.length.filter(|m| piece.order > *m) {
            faults.add(
                Error::new(ErrorKind::Impossible, "a piece is longer than a bundle may be")
                    .at("bundles.length")
                    .value_of(most)
                    .accepts(format!("at least {}, piece {} of panel {}", piece.order, piece.piece, piece.number)),
            );
        }
        if let Some(most) = most.filter(|m| own > *m) {
            let fault =
                Error::new(ErrorKind::Impossible, "a piece is heavier than a bundle may be").at("bundles.mass").value_of(Mass::of(most, MassUnit::Kilogram));
            faults.add(fault.accepts(format!("at least {}, piece {} of panel {}", Mass::of(own, MassUnit::Kilogram), piece.piece, piece.number)));
        }
        let room = out.last().is_some_and(|(bundle, total)| {
            let counted = limits.count.is_none_or(|c| u32::try_from(bundle.pieces.len()).is_ok_and(|n| n < c));
            counted && most.is_none_or(|m| total + own <= m)
        });
        if !room {
            out.push((Bundle { number: out.len() + 1, pieces: Vec::new(), length: Length::ZERO, mass: None }, 0.0));
        }
        piece.bundle = out.len().checked_sub(1);
        if let Some((bundle, total)) = out.last_mut() {
            bundle.pieces.push(i);
            bundle.length = bundle.length.max(piece.order);
            *total += own;
        }
    }
    faults.check()?;
    // From the top down each piece should bear on one at least as long.
    let overhangs = |b: &Bundle| b.pieces.iter().zip(b.pieces.iter().skip(1)).any(|(a, b)| pieces.get(*a).map(|p| p.order) > pieces.get(*b).map(|p| p.order));
    let over: Vec<usize> = out.iter().filter(|(b, _)| overhangs(b)).map(|(b, _)| b.number).collect();
    if let Some(first) = over.first() {
        cautions.push(Caution::new(cautions::LONGER_ON_TOP, format!("bundles[{}]", first - 1), Source::CommonPractice).arg("count", over.len()));
    }
    Ok(out.into_iter().map(|(bundle, total)| Bundle { mass: sheet.map(|_| Mass::of(total, MassUnit::Kilogram)), ..bundle }).collect())
}
