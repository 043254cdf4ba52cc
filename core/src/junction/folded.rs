//! What every folded trim of a junction is made of: its sheet, its free edge, and a row of fasteners.

use super::parts::JunctionTrim;
use super::support::{SectionPoint, Support};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Seen, Source};
use crate::trim::{Chain, ChainLeg, Direction, Edge, Face, Point};
use crate::units::{Length, Sum};

/// The sheet that a trim is folded from.
///
/// ```
/// use seamwright::junction::FoldedSheet;
/// use seamwright::units::Length;
/// let sheet = FoldedSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// assert!(sheet.thickness < sheet.inside_radius);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct FoldedSheet {
    /// Its thickness.
    pub thickness: Length,
    /// Radius of the inside face at every bend.
    pub inside_radius: Length,
}

/// The free edge of a flange: turned down square to the flange, and hemmed.
///
/// ```
/// use seamwright::junction::DripEdge;
/// use seamwright::units::Length;
/// let drip = DripEdge { depth: Length::parse("3/4\"")?, hem: Length::parse("1/2\"")? };
/// assert!(drip.hem < drip.depth);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct DripEdge {
    /// How far it turns down, square to the flange; zero for an edge that ends in the flange's own plane.
    pub depth: Length,
    /// Width of the closed hem, folded out of sight; zero for a raw edge.
    pub hem: Length,
}

impl DripEdge {
    pub(super) fn check(&self, faults: &mut Faults) {
        faults.keep(self.depth.not_negative("drip.depth"));
        faults.keep(self.hem.not_negative("drip.hem"));
    }

    pub(super) fn edge(&self) -> Edge {
        hem(self.hem, Direction::Down)
    }

    /// The outermost corner of a flange that lies on this support and ends at this point along it, and the edge of the flange where the edge turns down.
    pub(super) fn corners(&self, support: &Support, along: Length) -> Result<(SectionPoint, Option<SectionPoint>), Error> {
        let edge = support.point(along)?;
        if self.depth == Length::ZERO {
            return Ok((edge, None));
        }
        let low = Support { rise: support.rise, height: (support.height - self.depth).length()? };
        Ok((low.point(along)?, Some(edge)))
    }
}

/// A closed hem of this width, or a raw edge for none.
pub(super) fn hem(width: Length, direction: Direction) -> Edge {
    if width == Length::ZERO { Edge::Raw } else { Edge::closed_hem(width, direction) }
}

/// A row of fasteners along the line.
///
/// ```
/// use seamwright::junction::FastenerRow;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// assert!(row.spacing.is_positive());
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct FastenerRow {
    /// On centre.
    pub spacing: Length,
    /// Whose spacing it is.
    pub source: Source,
}

impl FastenerRow {
    /// Base flashing is fastened at its upper edge at 6 in on centre.
    pub const UFGS_WALL_LEG: FastenerRow = FastenerRow { spacing: Length::inches(6), source: Source::published("UFGS-07600", "", "3.1.11", Seen::Text) };
}

/// How far along a support a point of it lies, positive toward +x: the inverse of [`Support::point`].
pub(super) fn along(support: &Support, point: SectionPoint) -> Result<Length, Error> {
    Length::from_mm(point.x.mm() * support.rise.cos() + point.z.mm() * support.rise.sin())
}

/// A trim whose lower face runs through these corners from the first, walked toward +x; its painted face is the weather's.
pub(super) fn trim(
    name: &'static str,
    sheet: FoldedSheet,
    start: SectionPoint,
    legs: &[(&'static str, SectionPoint)],
    edges: (Edge, Edge),
) -> Result<JunctionTrim, Error> {
    let point = |p: SectionPoint| Point { x: p.x, y: p.z };
    let chain = Chain {
        thickness: sheet.thickness,
        inside_radius: sheet.inside_radius,
        face: Face::Lower,
        start: point(start),
        legs: legs.iter().map(|(name, to)| ChainLeg { name: (*name).into(), to: point(*to) }).collect(),
        start_edge: edges.0,
        end_edge: edges.1,
        painted: Face::Upper,
    };
    let profile = chain.profile().map_err(|e| e.under(name))?;
    let corners = core::iter::once(start).chain(legs.iter().map(|(_, to)| *to)).collect();
    Ok(JunctionTrim { name: name.into(), profile, corners })
}

/// A fault unless there is as much as needed: what is wrong, by how much, and what cures it.
pub(super) fn at_least(
    faults: &mut Faults,
    path: &str,
    what: &str,
    have: impl Into<Sum>,
    need: impl Into<Sum>,
    value: Length,
    cure: &'static str,
) -> Result<(), Error> {
    let short = need.into() - have;
    if short > Sum::ZERO {
        let short = short.length()?;
        let error = Error::new(ErrorKind::Impossible, format!("{what} by {short}")).at(path).value_of(value);
        faults.add(error.accepts(format!("{short} more room")).cured_by(cure));
    }
    Ok(())
}
