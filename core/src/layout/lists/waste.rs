//! Where the coil goes, in whole square picometres, so that the parts add up exactly.

use super::super::input::Layout;
use super::super::laid::LaidPanel;
use super::super::placing::area_of;
use super::listed::{BlankPair, ListedPiece, Waste};
use crate::error::{Error, ErrorKind};
use crate::units::{AreaUnit, Length};

fn wide(length: Length) -> i128 {
    i128::from(length.pm())
}

/// The upright extent of a panel between its junction lines.
fn extent(panel: &LaidPanel) -> i128 {
    let low = panel.lower.iter().map(|e| e.left.y.min(e.right.y)).min();
    let high = panel.upper.iter().map(|e| e.left.y.max(e.right.y)).max();
    low.zip(high).map_or(0, |(low, high)| wide(high) - wide(low))
}

#[allow(clippy::cast_possible_truncation, reason = "checked to fit before")]
pub(super) fn waste(layout: &Layout, developed: Length, panels: &[LaidPanel], pieces: &[ListedPiece], pairs: &[BlankPair]) -> Result<Waste, Error> {
    let (coverage, developed) = (wide(layout.panel.coverage), wide(developed));
    let mut lengths = vec![0_i128; panels.len()];
    for piece in pieces {
        if let Some(length) = lengths.get_mut(piece.panel) {
            *length += wide(piece.order);
        }
    }
    let too_large = || Error::new(ErrorKind::Overflow, "the plane is too large for an account of its coil").at("waste");
    let times = |a: i128, b: i128| a.checked_mul(b).ok_or_else(too_large);
    let (mut coil, mut covered, mut seams, mut rips, mut skew, mut ends) = (0_i128, 0_i128, 0_i128, 0_i128, 0_i128, 0_i128);
    for (panel, length) in panels.iter().zip(lengths) {
        let (width, between) = (wide(panel.width), extent(panel));
        let square_picometres = panel.covered.get(AreaUnit::SquareMillimetre) * 1e18;
        if square_picometres.abs() > 1e37 {
            return Err(too_large());
        }
        let own = square_picometres as i128;
        coil += times(length, developed)?;
        covered += own;
        seams += times(length, developed - coverage)?;
        rips += times(length, coverage - width)?;
        skew += times(between, width)? - own;
        ends += times(length - between, width)?;
    }
    for pair in pairs {
        let saved = wide(pair.saved);
        coil -= times(saved, developed)?;
        seams -= times(saved, developed - coverage)?;
        skew -= times(saved, coverage)?;
    }
    Ok(Waste { coil: area_of(coil), covered: area_of(covered), seams: area_of(seams), rips: area_of(rips), skew_cuts: area_of(skew), ends: area_of(ends) })
}
