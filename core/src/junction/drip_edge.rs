//! The free edge of a flange: turned down and hemmed.

use super::draft::{LegTo, hem, leg};
use super::support::{SectionPoint, Support};
use crate::error::{Error, ErrorKind, Faults};
use crate::trim::{Direction, Edge};
use crate::units::{Angle, Length};

/// The free edge of a flange over a roof: turned down toward the pan, and hemmed out of sight.
///
/// In a job file `turn` is [`DRIP_TURN`](crate::practice::junction::DRIP_TURN) and `hem` is [`EDGE_HEM`](crate::practice::junction::EDGE_HEM) unless given.
///
/// ```
/// use seamwright::junction::DripEdge;
/// use seamwright::practice::junction as practice;
/// use seamwright::units::{Angle, Length};
/// let drip = DripEdge { leg: Length::inches(1), turn: Angle::parse("30 deg")?, hem: practice::EDGE_HEM, above_pan: Length::ZERO };
/// assert_eq!(drip.depth()?, Length::parse("1/2\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DripEdge {
    /// From the flange to the outside of the hem; zero for an edge that ends in the flange's own plane.
    pub leg: Length,
    /// How far it turns down from the flange; 90 degrees is square to it, less kicks out.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::drip_turn"))]
    pub turn: Angle,
    /// Width of the closed hem; zero for a raw edge.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::edge_hem"))]
    pub hem: Length,
    /// What must stay free between the edge and the pan.
    pub above_pan: Length,
}

impl DripEdge {
    /// How far the edge hangs below the flange, square to it.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range of a length.
    pub fn depth(&self) -> Result<Length, Error> {
        Length::from_mm(self.leg.mm() * self.turn.sin())
    }

    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (path, length) in [("leg", self.leg), ("hem", self.hem), ("above_pan", self.above_pan)] {
            faults.keep(length.not_negative(path));
        }
        // An edge that turns back under its flange would shed onto what the flange covers.
        if !(self.turn.degrees() > 0.0 && self.turn.degrees() <= 90.0) {
            let error = Error::new(ErrorKind::OutOfRange, "an angle without meaning here").at("turn").value_of(self.turn);
            faults.add(error.accepts("more than 0 deg and at most 90 deg"));
        }
        faults.check()
    }

    /// The edge's leg, walked from its outermost corner to the flange.
    pub(super) const fn leg_to(&self, name: &'static str, flange: SectionPoint) -> LegTo {
        leg(name, flange).long(self.leg)
    }

    pub(super) fn edge(&self) -> Edge {
        hem(self.hem, Direction::Down)
    }

    /// The outermost corner of a flange that lies on this support and ends at this point along it, and the edge of the flange where it turns down.
    /// The edge looks toward +x where `toward` is 1, and toward -x where it is -1.
    pub(super) fn corners(&self, support: &Support, along: Length, toward: i32) -> Result<(SectionPoint, Option<SectionPoint>), Error> {
        let edge = support.point(along)?;
        if self.leg == Length::ZERO {
            return Ok((edge, None));
        }
        let low = Support { rise: support.rise, height: (support.height - self.depth()?).length()? };
        let out = Length::from_mm(self.leg.mm() * self.turn.cos())?;
        Ok((low.point((along + out * toward).length()?)?, Some(edge)))
    }
}
