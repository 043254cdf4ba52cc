//! How the list of a plane is made.

use super::super::input::{Governs, LengthLimit};
use super::super::placing::LayDirection;
use crate::error::{Error, ErrorKind, Faults};
use crate::units::{Length, Mass, MassUnit};

/// In which order marks are given.
///
/// ```
/// use seamwright::layout::MarkOrder;
/// assert_eq!(MarkOrder::default(), MarkOrder::LongestFirst);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum MarkOrder {
    /// A for the longest.
    #[default]
    LongestFirst,
    /// A for what is laid first.
    AsLaid,
}

/// A length that no piece may be longer than, and what sets it.
///
/// ```
/// use seamwright::layout::{Governs, GreatestLength};
/// use seamwright::units::Length;
/// let lift = GreatestLength { length: Length::feet(30), governs: Governs::Lifting };
/// assert_eq!(lift.governs.name(), "lifting");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct GreatestLength {
    /// The greatest order length.
    pub length: Length,
    /// What sets it.
    pub governs: Governs,
}

/// Where end laps lie beside each other.
///
/// ```
/// use seamwright::layout::LapArrangement;
/// use seamwright::units::Length;
/// assert_ne!(LapArrangement::InLine, LapArrangement::Staggered { by: Length::feet(2) });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum LapArrangement {
    /// In one line across the plane.
    InLine,
    /// Every second panel's laps lie higher.
    Staggered {
        /// By this much.
        by: Length,
    },
}

/// End laps where a panel is longer than can be formed, shipped or lifted.
///
/// ```
/// use seamwright::layout::{EndLaps, Governs, GreatestLength, LapArrangement};
/// use seamwright::units::Length;
/// let limits = vec![
///     GreatestLength { length: Length::feet(45), governs: Governs::Shipping },
///     GreatestLength { length: Length::feet(30), governs: Governs::Lifting },
/// ];
/// let laps = EndLaps { limits, lap: Length::inches(6), arrangement: LapArrangement::InLine, least_piece: Length::feet(4) };
/// assert_eq!(laps.least().map(|l| l.governs), Some(Governs::Lifting));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EndLaps {
    /// What limits a piece; the least of them governs.
    pub limits: Vec<GreatestLength>,
    /// How far pieces lap: the upper over the lower.
    pub lap: Length,
    /// Where laps lie beside each other.
    pub arrangement: LapArrangement,
    /// A piece shorter than this is not made where its neighbour can take it in, and is said where it cannot.
    pub least_piece: Length,
}

impl EndLaps {
    /// The limit that governs.
    #[must_use]
    pub fn least(&self) -> Option<GreatestLength> {
        self.limits.iter().copied().min_by_key(|l| l.length)
    }

    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        if self.limits.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "nothing limits a piece").at("limits").accepts("one limit or more"));
        }
        for (i, limit) in self.limits.iter().enumerate() {
            faults.keep(limit.length.positive(&format!("limits[{i}].length")));
        }
        faults.keep(self.lap.positive("lap"));
        faults.keep(self.least_piece.not_negative("least_piece"));
        if let LapArrangement::Staggered { by } = self.arrangement {
            faults.keep(by.positive("arrangement.staggered.by"));
        }
        if let Some(limit) = self.least().filter(|l| l.length.is_positive()) {
            let by = match self.arrangement {
                LapArrangement::InLine => Length::ZERO,
                LapArrangement::Staggered { by } => by,
            };
            if self.lap + by * 2 >= limit.length.into() {
                let fault = Error::new(ErrorKind::Conflict, "lap and stagger take the whole piece").at("lap").value_of(self.lap);
                faults.add(fault.accepts(format!("with twice the stagger of {by}, less than {}", limit.length)));
            }
            if self.least_piece > limit.length {
                let fault = Error::new(ErrorKind::Conflict, "the least piece is longer than the longest").at("least_piece").value_of(self.least_piece);
                faults.add(fault.accepts(format!("at most {}", limit.length)));
            }
        }
        faults.check()
    }
}

/// Pairs of skew pieces cut from one blank.
///
/// ```
/// use seamwright::layout::PairChoice;
/// use seamwright::units::Length;
/// assert_eq!(PairChoice { kerf: Length::ZERO }.kerf, Length::ZERO); // shears take nothing
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PairChoice {
    /// What the cut between the two takes, square to it.
    pub kerf: Length,
}

/// What one bundle may be at most. What is not given is not limited.
///
/// ```
/// use seamwright::layout::BundleLimits;
/// let limits = BundleLimits { count: Some(20), ..BundleLimits::default() };
/// assert_eq!(limits.mass, None);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BundleLimits {
    /// The mass that is lifted at once.
    #[cfg_attr(feature = "serde", serde(default))]
    pub mass: Option<Mass>,
    /// The length of its longest piece.
    #[cfg_attr(feature = "serde", serde(default))]
    pub length: Option<Length>,
    /// How many pieces.
    #[cfg_attr(feature = "serde", serde(default))]
    pub count: Option<u32>,
}

impl BundleLimits {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        if let Some(mass) = self.mass.filter(|m| m.get(MassUnit::Kilogram) <= 0.0) {
            faults.add(Error::new(ErrorKind::OutOfRange, "must be more than zero").at("mass").value_of(mass).accepts("more than 0 kg"));
        }
        faults.keep(self.length.map_or(Ok(Length::ZERO), |l| l.positive("length")));
        if self.count == Some(0) {
            faults.add(Error::new(ErrorKind::OutOfRange, "a bundle of nothing").at("count").value_of(0).accepts("1 or more"));
        }
        faults.check()
    }
}

/// How the list of a plane is made.
///
/// ```
/// use seamwright::layout::{LayDirection, ListChoices};
/// let plain = ListChoices::laid(LayDirection::LeftToRight);
/// assert!(plain.pairs.is_none() && plain.tolerance.is_none());
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ListChoices {
    /// The way in which panels follow each other.
    pub direction: LayDirection,
    /// In which order marks are given.
    #[cfg_attr(feature = "serde", serde(default))]
    pub marks: MarkOrder,
    /// Lengths that differ by no more than this are formed as the longest of them; none for a mark for each length.
    #[cfg_attr(feature = "serde", serde(default))]
    pub tolerance: Option<Length>,
    /// End laps; none for those of the layout's own limit, in equal pieces.
    #[cfg_attr(feature = "serde", serde(default))]
    pub laps: Option<EndLaps>,
    /// Pairs from one blank; none for a blank for each.
    #[cfg_attr(feature = "serde", serde(default))]
    pub pairs: Option<PairChoice>,
    /// Bundles; none for no bundles.
    #[cfg_attr(feature = "serde", serde(default))]
    pub bundles: Option<BundleLimits>,
}

impl ListChoices {
    /// Pieces in order and nothing more.
    #[must_use]
    pub const fn laid(direction: LayDirection) -> ListChoices {
        ListChoices { direction, marks: MarkOrder::LongestFirst, tolerance: None, laps: None, pairs: None, bundles: None }
    }

    /// Whether the choices fit each other and the layout's own limit.
    pub(crate) fn check(&self, limit: Option<&LengthLimit>) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.tolerance.map_or(Ok(Length::ZERO), |t| t.not_negative("tolerance")));
        if let Some(laps) = &self.laps {
            faults.keep(laps.check().map_err(|e| e.under("laps")));
            if limit.is_some() {
                faults.add(
                    Error::new(ErrorKind::Conflict, "the layout has a greatest length of its own")
                        .at("laps")
                        .accepts("end laps here, or a greatest length there"),
                );
            }
        }
        if let Some(pairs) = &self.pairs {
            faults.keep(pairs.kerf.not_negative("pairs.kerf"));
        }
        if let Some(bundles) = &self.bundles {
            faults.keep(bundles.check().map_err(|e| e.under("bundles")));
        }
        faults.check()
    }

    /// The greatest length of a blank.
    pub(super) fn greatest(&self, limit: Option<&LengthLimit>) -> Option<Length> {
        self.laps.as_ref().and_then(EndLaps::least).map(|l| l.length).or(limit.map(|l| l.length))
    }
}
