//! Where each panel lies along the seams, its field trims with it: what lapped pieces are measured from.

use super::clip::Clipper;
use super::grid::Grid;
use super::input::Layout;
use super::measure::{Measured, measure};
use crate::error::Error;
use crate::units::Length;

/// The lowest and the highest point of a panel as ordered, from the foot of the outline's bounds.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Extent {
    pub(crate) foot: Length,
    pub(crate) head: Length,
}

impl Extent {
    pub(super) fn of(m: &Measured) -> Result<Extent, Error> {
        Ok(Extent { foot: Length::from_mm(m.foot)?, head: Length::from_mm(m.head)? })
    }
}

impl Layout {
    /// The extent of every panel, in the order of [`LaidPlane::panels`](super::LaidPlane::panels).
    pub(crate) fn extents(&self) -> Result<Vec<Extent>, Error> {
        let grid = Grid::new(&self.outline.bounds(), self.panel.coverage, self.start)?;
        let (mut segments, _) = self.segments(&grid)?;
        let mut clipper = Clipper::new(&mut segments);
        let mut out = Vec::new();
        for strip in grid.strips() {
            clipper.cut(strip.left, strip.right);
            for run in clipper.runs() {
                let Some(m) = measure(&run) else { continue };
                if Length::from_mm(m.finished)?.is_positive() {
                    out.push(Extent::of(&m)?);
                }
            }
        }
        Ok(out)
    }
}
