//! What a tape shows of a length.

use super::{Length, ShopRounding};
use crate::error::Error;

/// A length as it is, and as it is read off the tape.
///
/// ```
/// use seamwright::units::{Length, Rounding, ShopRounding, TapeReading};
/// let tape = ShopRounding::new(Length::inches(1), Rounding::HalfAway)?;
/// let reading = TapeReading::of(Length::parse("3 3/8\"")?, tape)?;
/// assert_eq!(reading.read, Length::inches(3));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TapeReading {
    /// As it is.
    pub exact: Length,
    /// As it is read.
    pub read: Length,
}

impl TapeReading {
    /// A length read off this tape.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range.
    pub fn of(exact: Length, tape: ShopRounding) -> Result<TapeReading, Error> {
        Ok(TapeReading { exact, read: tape.round(exact)? })
    }
}
