//! The cutting plan and its scrap.

use crate::record::Caution;
use crate::units::Length;
use core::fmt;

/// What a plan is measured by: total length of sticks, or cost where every stock length has one.
///
/// ```
/// use seamwright::stock::Measure;
/// use seamwright::units::Length;
/// assert_eq!(Measure::Length(Length::feet(10)).to_string(), "3048 mm of sticks");
/// assert_eq!(Measure::Cost(1250).to_string(), "a cost of 1250");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Measure {
    /// Total length of the sticks.
    Length(Length),
    /// Total cost, in the caller's smallest coin.
    Cost(u64),
}

impl fmt::Display for Measure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Measure::Length(l) => write!(f, "{l} of sticks"),
            Measure::Cost(c) => write!(f, "a cost of {c}"),
        }
    }
}

/// So many of one piece on a stick.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{Cutting, Piece, StockLength};
/// use seamwright::units::Length;
/// let plan = Cutting {
///     stock: vec![StockLength { label: "10 ft".into(), length: Length::feet(10), cost: None }],
///     pieces: vec![Piece { label: "A".into(), length: Length::feet(3), count: 6 }],
///     kerf: Length::ZERO,
///     end_loss: Length::ZERO,
/// }
/// .compute()?;
/// assert_eq!((plan.sticks[0].pieces[0].piece, plan.sticks[0].pieces[0].count), (0, 3));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PieceCount {
    /// Index into the pieces asked for.
    pub piece: usize,
    /// How many of it are cut from one such stick.
    pub count: u32,
}

/// Sticks that are cut alike.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{Cutting, Piece, StockLength};
/// use seamwright::units::Length;
/// let plan = Cutting {
///     stock: vec![StockLength { label: "10 ft".into(), length: Length::feet(10), cost: None }],
///     pieces: vec![Piece { label: "A".into(), length: Length::feet(3), count: 6 }],
///     kerf: Length::ZERO,
///     end_loss: Length::ZERO,
/// }
/// .compute()?;
/// assert_eq!((plan.sticks.len(), plan.sticks[0].count, plan.sticks[0].offcut), (1, 2, Length::feet(1)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StickPlan {
    /// Index into the stock lengths.
    pub stock: usize,
    /// How many sticks are cut like this.
    pub count: u32,
    /// What is cut from each, longest first.
    pub pieces: Vec<PieceCount>,
    /// What the cuts take of each stick.
    pub kerf: Length,
    /// What is left of each stick.
    pub offcut: Length,
}

/// Where the bought length goes. The four parts add up to it exactly.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{Cutting, Piece, StockLength};
/// use seamwright::units::Length;
/// let plan = Cutting {
///     stock: vec![StockLength { label: "10 ft".into(), length: Length::feet(10), cost: None }],
///     pieces: vec![Piece { label: "A".into(), length: Length::feet(3), count: 6 }],
///     kerf: Length::ZERO,
///     end_loss: Length::ZERO,
/// }
/// .compute()?;
/// assert_eq!((plan.scrap.bought, plan.scrap.pieces), (Length::feet(20), Length::feet(18)));
/// assert!((plan.scrap.scrap_ratio - 0.1).abs() < 1e-12);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ScrapReport {
    /// Total length of the sticks.
    pub bought: Length,
    /// Total length of the pieces.
    pub pieces: Length,
    /// Lost to cuts.
    pub kerf: Length,
    /// Lost at the ends.
    pub end_loss: Length,
    /// Left over.
    pub offcuts: Length,
    /// The part of the bought length that does not end in a piece: 0 is none.
    pub scrap_ratio: f64,
}

/// A cutting plan with what no plan can beat.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{Cutting, Measure, Piece, StockLength};
/// use seamwright::units::Length;
/// let plan = Cutting {
///     stock: vec![StockLength { label: "10 ft".into(), length: Length::feet(10), cost: None }],
///     pieces: vec![Piece { label: "A".into(), length: Length::feet(3), count: 7 }],
///     kerf: Length::ZERO,
///     end_loss: Length::ZERO,
/// }
/// .compute()?;
/// assert_eq!((plan.stick_count(), plan.bound, plan.proven), (3, Measure::Length(Length::feet(30)), true));
/// assert_eq!(plan.scrap.offcuts, Length::feet(9));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CutPlan {
    /// The sticks, those cut alike together.
    pub sticks: Vec<StickPlan>,
    /// How many of each stock length are bought, in the order of the input.
    pub buy: Vec<u32>,
    /// What the plan takes.
    pub takes: Measure,
    /// What no plan can take less than.
    pub bound: Measure,
    /// Whether the plan meets the bound, so that none is better.
    pub proven: bool,
    /// Where the bought length goes.
    pub scrap: ScrapReport,
    /// What to know before it is cut.
    pub cautions: Vec<Caution>,
}

impl CutPlan {
    /// How many sticks are bought in all.
    #[must_use]
    pub fn stick_count(&self) -> u32 {
        self.buy.iter().sum()
    }
}
