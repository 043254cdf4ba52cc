//! The top edge of a trim that lies on the deck: its hem, and the screws along it.

use super::draft::{FastenerRow, hem, keep_under, refuse_short};
use super::parts::{Bites, LayoutLine, Side, Solved};
use crate::error::{Error, Faults};
use crate::trim::{Direction, Edge};
use crate::units::{Length, Sum};

/// The top edge of a flange or a pan on the deck, under the panels above it.
///
/// ```
/// use seamwright::junction::{FastenerRow, TopEdge};
/// use seamwright::practice::junction as practice;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let edge = TopEdge {
///     hem: practice::EDGE_HEM,
///     screws_below: Length::inches(1),
///     screws: FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice },
/// };
/// assert!(edge.hem < edge.screws_below);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TopEdge {
    /// Width of the closed hem, folded up against water; zero for a raw edge.
    pub hem: Length,
    /// From the edge down to the screws along it.
    pub screws_below: Length,
    /// Those screws, into the deck.
    pub screws: FastenerRow,
}

impl TopEdge {
    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (path, length) in [("hem", self.hem), ("screws_below", self.screws_below)] {
            faults.keep(length.not_negative(path));
        }
        keep_under(&mut faults, "screws", self.screws.check());
        faults.check()
    }

    pub(super) fn edge(&self) -> Edge {
        hem(self.hem, Direction::Up)
    }

    /// Faults of screws through the hem, or on the cleat whose back lies this far below the edge.
    pub(super) fn check_screws(&self, back: Sum) -> Result<(), Error> {
        let (path, below) = ("screws_below", self.screws_below);
        let mut faults = Faults::default();
        refuse_short(&mut faults, path, "the screws along the top edge fall on the cleat", below - back, below, "screws nearer to the edge")?;
        let cure = "screws farther from the edge, or a narrower hem";
        refuse_short(&mut faults, path, "the screws along the top edge go through its hem", self.hem - below, below, cure)?;
        faults.check()
    }

    /// Adds the screws and the lines of an edge that lies here, from the junction line up the slope.
    pub(super) fn give(&self, side: Side, top: Length, solved: &mut Solved) -> Result<(), Error> {
        let (row, screws) = ("screws along the top edge", (top - self.screws_below).length()?);
        solved.along.push(self.screws.line(row, side, Bites::Structure, screws));
        solved.lines.push(LayoutLine::from_junction("trim top edge", side, top.into())?);
        solved.lines.push(LayoutLine::below_top_edge(row, side, top, self.screws_below)?);
        Ok(())
    }
}
