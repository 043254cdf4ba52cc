//! Sealant of many lines together, by size.

use super::line_parts::LineAssembly;
use crate::error::Error;
use crate::record::Calculation;
use crate::sealant::{BeadNeed, BeadOrder, BeadSection, SurfacePiece, TapeLine, TapeNeed};
use crate::units::{Angle, Length, Sum, Volume};
use std::collections::BTreeMap;

/// All tape of one width.
///
/// ```
/// use seamwright::assembly::TapeTotal;
/// use seamwright::units::Length;
/// let total = TapeTotal { width: Length::inches(1), length: Length::feet(95) };
/// let need = total.order(Length::feet(50), Length::inches(1), 0.1)?;
/// assert_eq!((need.rolls, need.splices), (3, 2));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct TapeTotal {
    /// Width.
    pub width: Length,
    /// Length, without waste.
    pub length: Length,
}

impl TapeTotal {
    /// Whole rolls of this length, with this share of waste; where one ends, the next laps over it by so much.
    ///
    /// # Errors
    /// As [`TapeLine`].
    pub fn order(&self, roll: Length, lap: Length, waste_ratio: f64) -> Result<TapeNeed, Error> {
        let section = vec![SurfacePiece { across: self.length, rise: Length::ZERO }];
        TapeLine { section, bays: 1, meeting: Angle::SQUARE, lap, laps_per_bay: 0, waste_ratio, roll }.compute()
    }
}

/// All beads of one section.
///
/// ```
/// use seamwright::assembly::BeadTotal;
/// use seamwright::units::{Length, Volume};
/// let quarter = Length::parse("1/4\"")?;
/// let total = BeadTotal { width: quarter, depth: quarter, length: Length::feet(100) };
/// assert_eq!(total.order(Volume::parse("10.1 floz")?, 0.0)?.tubes, 5);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct BeadTotal {
    /// Width.
    pub width: Length,
    /// Depth.
    pub depth: Length,
    /// Length.
    pub length: Length,
}

impl BeadTotal {
    /// Whole tubes of this volume, with this share of waste.
    ///
    /// # Errors
    /// As [`BeadOrder`].
    pub fn order(&self, tube: Volume, waste_ratio: f64) -> Result<BeadNeed, Error> {
        BeadOrder { section: BeadSection::Rectangular { width: self.width, depth: self.depth }, length: self.length, waste_ratio, tube }.compute()
    }
}

/// Sealant of many lines.
///
/// See [`sealant_totals`] for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct SealantTotals {
    /// Tape by width, the narrowest first.
    pub tapes: Vec<TapeTotal>,
    /// Beads by section, the narrowest first.
    pub beads: Vec<BeadTotal>,
    /// Plugs of hollow seams.
    pub plugs: usize,
}

impl SealantTotals {
    /// Adds so much of a bead of this size.
    pub(crate) fn add_bead(&mut self, width: Length, depth: Length, length: Length) -> Result<(), Error> {
        if !length.is_positive() {
            return Ok(());
        }
        match self.beads.binary_search_by_key(&(width, depth), |b| (b.width, b.depth)) {
            Ok(at) => {
                if let Some(bead) = self.beads.get_mut(at) {
                    bead.length = (bead.length + length).length()?;
                }
            }
            Err(at) => self.beads.insert(at, BeadTotal { width, depth, length }),
        }
        Ok(())
    }

    /// Adds so much tape of this width.
    pub(crate) fn add_tape(&mut self, width: Length, length: Length) -> Result<(), Error> {
        match self.tapes.binary_search_by_key(&width, |t| t.width) {
            Ok(at) => {
                if let Some(tape) = self.tapes.get_mut(at) {
                    tape.length = (tape.length + length).length()?;
                }
            }
            Err(at) => self.tapes.insert(at, TapeTotal { width, length }),
        }
        Ok(())
    }
}

/// The sealant of these lines, by size.
///
/// # Errors
/// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) for totals beyond the range of lengths.
///
/// ```
/// use seamwright::assembly::sealant_totals;
/// assert_eq!(sealant_totals(&[])?.plugs, 0);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn sealant_totals<'a>(lines: impl IntoIterator<Item = &'a LineAssembly>) -> Result<SealantTotals, Error> {
    let mut tapes: BTreeMap<Length, Sum> = BTreeMap::new();
    let mut beads: BTreeMap<(Length, Length), Sum> = BTreeMap::new();
    let mut plugs = 0;
    for line in lines {
        for tape in &line.tapes {
            *tapes.entry(tape.width).or_default() += tape.length;
        }
        for bead in &line.beads {
            *beads.entry((bead.width, bead.depth)).or_default() += bead.length;
        }
        plugs += line.plugs.iter().map(|p| p.count).sum::<usize>();
    }
    Ok(SealantTotals {
        tapes: tapes.into_iter().map(|(width, length)| Ok(TapeTotal { width, length: length.length()? })).collect::<Result<_, Error>>()?,
        beads: beads.into_iter().map(|((width, depth), length)| Ok(BeadTotal { width, depth, length: length.length()? })).collect::<Result<_, Error>>()?,
        plugs,
    })
}
