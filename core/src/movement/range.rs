//! The year's temperatures of a metal, and how far a length of it moves from the laying temperature.

use super::change::{LengthChange, expansion_fault};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder};
use crate::units::{Expansion, Length, Temperature};

/// The range of temperatures that a metal goes through, and the one at which it is laid.
///
/// ```
/// use seamwright::movement::HeatRange;
/// use seamwright::record::Off;
/// use seamwright::units::{Expansion, Length, Temperature};
/// let range = HeatRange {
///     expansion: Expansion::parse("24e-6 /K")?,
///     coldest: Temperature::parse("-20 degC")?,
///     laid: Temperature::parse("20 degC")?,
///     hottest: Temperature::parse("70 degC")?,
/// };
/// // 10 m: 24e-6 of it for 50 K up and 40 K down.
/// let heat = range.warming(Length::parse("10 m")?, &mut Off)?;
/// assert_eq!((heat, range.cooling(Length::parse("10 m")?, &mut Off)?), (Length::parse("12 mm")?, Length::parse("9.6 mm")?));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HeatRange {
    /// Coefficient of linear expansion.
    pub expansion: Expansion,
    /// The coldest that the metal gets.
    pub coldest: Temperature,
    /// Its temperature when it is laid.
    pub laid: Temperature,
    /// The hottest that it gets.
    pub hottest: Temperature,
}

impl HeatRange {
    /// Whether it means anything.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] at `expansion` for less than zero, [`ErrorKind::Conflict`] at `laid` where the laying temperature is outside the range.
    pub fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(expansion_fault(self.expansion));
        if self.coldest > self.laid || self.laid > self.hottest {
            let error = Error::new(ErrorKind::Conflict, "laid outside the range of the year").at("laid").value_of(self.laid);
            faults.add(error.accepts(format!("{} to {}", self.coldest, self.hottest)));
        }
        faults.check()
    }

    /// How far this length grows from the laying temperature to the hottest.
    ///
    /// # Errors
    /// As [`LengthChange`].
    pub fn warming<R: Recorder>(&self, length: Length, r: &mut R) -> Result<Length, Error> {
        LengthChange { expansion: self.expansion, length, difference: self.hottest.above(self.laid) }.run(r)
    }

    /// How far this length shrinks from the laying temperature to the coldest.
    ///
    /// # Errors
    /// As [`LengthChange`].
    pub fn cooling<R: Recorder>(&self, length: Length, r: &mut R) -> Result<Length, Error> {
        LengthChange { expansion: self.expansion, length, difference: self.laid.above(self.coldest) }.run(r)
    }
}
