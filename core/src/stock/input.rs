//! What is to be cut, and from what.

use crate::error::{Error, ErrorKind, Faults};
use crate::units::Length;

/// The most pieces that one cutting may ask for.
pub const MAX_PIECES: u32 = 1_000_000_000;

/// A stick that can be bought, in any number.
///
/// ```
/// use seamwright::stock::StockLength;
/// use seamwright::units::Length;
/// let ten_foot = StockLength { label: "10 ft".into(), length: Length::feet(10), cost: None };
/// assert_eq!(ten_foot.length, Length::inches(120));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StockLength {
    /// What the shop calls it.
    pub label: String,
    /// Its length as bought.
    pub length: Length,
    /// Its cost in whole units of the caller's smallest coin. Either every stock length has one, and the plan costs least, or none
    /// has, and the plan takes the least total length.
    #[cfg_attr(feature = "serde", serde(default))]
    pub cost: Option<u64>,
}

/// A piece that is needed.
///
/// ```
/// use seamwright::stock::Piece;
/// use seamwright::units::Length;
/// let p = Piece { label: "ridge cap".into(), length: Length::inches(93), count: 4 };
/// assert_eq!(p.count, 4);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Piece {
    /// Its mark.
    pub label: String,
    /// Its finished length.
    pub length: Length,
    /// How many are needed.
    pub count: u32,
}

/// Pieces to cut from sticks.
///
/// Between two pieces a cut takes the kerf; after the last piece it takes the kerf or, where less than a kerf is left, what is
/// left. The end loss is trimmed off each stick once.
///
/// # Errors
/// Computing refuses, with the field: no stock length or no piece ([`ErrorKind::Missing`]); a length or count of zero or less, a
/// negative kerf or end loss ([`ErrorKind::OutOfRange`]); costs on some stock lengths only ([`ErrorKind::Conflict`]); a piece that no stick can give
/// ([`ErrorKind::Impossible`]); more than [`MAX_PIECES`] pieces ([`ErrorKind::TooLarge`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{Cutting, Piece, StockLength};
/// use seamwright::units::Length;
/// let plan = Cutting {
///     stock: vec![StockLength { label: "10 ft".into(), length: Length::feet(10), cost: None }],
///     pieces: vec![Piece { label: "A".into(), length: Length::inches(70), count: 2 }, Piece { label: "B".into(), length: Length::inches(49), count: 2 }],
///     kerf: Length::inches_64(8),
///     end_loss: Length::ZERO,
/// }
/// .compute()?;
/// assert_eq!(plan.stick_count(), 2);
/// assert!(plan.proven);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Cutting {
    /// The sticks that can be bought.
    pub stock: Vec<StockLength>,
    /// The pieces that are needed.
    pub pieces: Vec<Piece>,
    /// What a cut takes.
    pub kerf: Length,
    /// What is trimmed off each stick.
    pub end_loss: Length,
}

/// A stock length as the packing sees it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bin {
    /// Room for pieces, each counted with its kerf.
    pub(super) room: i64,
    /// What it costs: the cost, or the length in picometres.
    pub(super) cost: u64,
}

/// The cutting in the terms of packing.
#[derive(Debug)]
pub(super) struct Problem {
    /// One for each stock length.
    pub(super) bins: Vec<Bin>,
    /// Size, with its kerf, and count of each kind of piece.
    pub(super) sizes: Vec<(i64, u32)>,
}

impl Cutting {
    pub(super) fn problem(&self) -> Result<Problem, Error> {
        let mut faults = Faults::default();
        if self.stock.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "no stock length to cut from").at("stock").accepts("one stock length or more"));
        }
        if self.pieces.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "no piece to cut").at("pieces").accepts("one piece or more"));
        }
        faults.keep(self.kerf.not_negative("kerf"));
        faults.keep(self.end_loss.not_negative("end_loss"));
        let costed = self.stock.iter().filter(|s| s.cost.is_some()).count();
        for (i, s) in self.stock.iter().enumerate() {
            faults.keep(s.length.positive(&format!("stock[{i}].length")));
            if s.cost.is_none() && costed > 0 {
                faults.add(
                    Error::new(ErrorKind::Conflict, "other stock lengths have a cost and this one has none")
                        .at(format!("stock[{i}].cost"))
                        .value_of(&s.label)
                        .accepts("a cost for every stock length, or for none"),
                );
            }
        }
        let mut total = 0_u64;
        for (i, p) in self.pieces.iter().enumerate() {
            faults.keep(p.length.positive(&format!("pieces[{i}].length")));
            if p.count == 0 {
                faults.add(
                    Error::new(ErrorKind::OutOfRange, "a piece that is not needed").at(format!("pieces[{i}].count")).value_of(p.count).accepts("1 or more"),
                );
            }
            total += u64::from(p.count);
        }
        if total > u64::from(MAX_PIECES) {
            faults.add(
                Error::new(ErrorKind::TooLarge, "too many pieces in one cutting").at("pieces").value_of(total).accepts(format!("at most {MAX_PIECES} in all")),
            );
        }
        faults.check()?;

        let bins: Vec<Bin> = self
            .stock
            .iter()
            .enumerate()
            .map(|(i, s)| {
                let room = (s.length - self.end_loss + self.kerf).length().map_err(|e| e.under(&format!("stock[{i}].length")))?;
                // Without costs the length itself is what is to be least; it is positive.
                Ok(Bin { room: room.pm(), cost: s.cost.unwrap_or(s.length.pm().unsigned_abs()) })
            })
            .collect::<Result<_, Error>>()?;
        let most = bins.iter().map(|b| b.room).max().unwrap_or(0);
        let mut sizes = Vec::with_capacity(self.pieces.len());
        let mut faults = Faults::default();
        for (i, p) in self.pieces.iter().enumerate() {
            let size = (p.length + self.kerf).length().map_err(|e| e.under(&format!("pieces[{i}].length")))?.pm();
            if size > most {
                let longest = (Length::from_pm(most) - self.kerf).length()?;
                let accepts = if longest.is_positive() {
                    format!("at most {longest}, what the longest stick gives")
                } else {
                    "a stick longer than its end loss".to_owned()
                };
                faults.add(
                    Error::new(ErrorKind::Impossible, "no stick gives this piece")
                        .at(format!("pieces[{i}].length"))
                        .value_of(p.length)
                        .accepts(accepts)
                        .cured_by("a longer stock length, or the run split into lapped pieces"),
                );
            }
            sizes.push((size, p.count));
        }
        faults.check()?;
        Ok(Problem { bins, sizes })
    }
}
