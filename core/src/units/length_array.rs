//! Many lengths as plain numbers of one unit.

use super::LengthUnit;

/// Lengths as plain numbers, and the unit that all of them are in: what batch functions take in place of a [`Length`](super::Length) each.
///
/// ```
/// use seamwright::units::{LengthArray, LengthUnit};
/// let radii = LengthArray { values: &[0.03, 0.06], unit: LengthUnit::Inch };
/// assert_eq!(radii.values.len(), 2);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LengthArray<'a> {
    /// The numbers.
    pub values: &'a [f64],
    /// Their unit.
    pub unit: LengthUnit,
}
