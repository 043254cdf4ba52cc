//! Temperatures and differences of temperature, kept apart: 200 degF is 93 degC, a difference of 200 degF is 111 K.

use super::quantity::{parse_number_and_unit, quantity};
use crate::error::{Error, ErrorKind};
use core::fmt;

/// A scale of temperature.
///
/// ```
/// use seamwright::units::TemperatureScale;
/// let symbols: Vec<&str> = TemperatureScale::ALL.iter().map(|s| s.symbol()).collect();
/// assert_eq!(symbols, ["degC", "degF", "K"]);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum TemperatureScale {
    /// `degC`
    Celsius,
    /// `degF`
    Fahrenheit,
    /// `K`
    Kelvin,
}

impl TemperatureScale {
    /// Every scale; the first is the one held.
    pub const ALL: &'static [TemperatureScale] = &[TemperatureScale::Celsius, TemperatureScale::Fahrenheit, TemperatureScale::Kelvin];

    /// The scale's symbol as text.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            TemperatureScale::Celsius => "degC",
            TemperatureScale::Fahrenheit => "degF",
            TemperatureScale::Kelvin => "K",
        }
    }
}

/// A temperature, held in degrees Celsius.
///
/// ```
/// use seamwright::units::{Temperature, TemperatureScale};
/// let t = Temperature::parse("160 degF")?;
/// assert!((t.get(TemperatureScale::Celsius) - 71.1111).abs() < 1e-4);
/// assert_eq!(t.to_string(), "71.11111111111111 degC");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Temperature(f64);

impl Temperature {
    /// A temperature on this scale.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] for NaN and infinities, [`ErrorKind::OutOfRange`] under absolute zero.
    pub fn new(value: f64, scale: TemperatureScale) -> Result<Self, Error> {
        let celsius = match scale {
            TemperatureScale::Celsius => value,
            TemperatureScale::Fahrenheit => (value - 32.0) / 1.8,
            TemperatureScale::Kelvin => value - 273.15,
        };
        if !celsius.is_finite() {
            return Err(Error::new(ErrorKind::NotFinite, "not a finite temperature").value_of(value).accepts("a finite number"));
        }
        if celsius < -273.15 {
            return Err(Error::new(ErrorKind::OutOfRange, "a temperature under absolute zero").value_of(value).accepts("-273.15 degC or more"));
        }
        Ok(Temperature(celsius + 0.0))
    }

    /// The number on this scale.
    #[must_use]
    pub fn get(self, scale: TemperatureScale) -> f64 {
        match scale {
            TemperatureScale::Celsius => self.0,
            TemperatureScale::Fahrenheit => self.0 * 1.8 + 32.0,
            TemperatureScale::Kelvin => self.0 + 273.15,
        }
    }

    /// How much warmer this is than `other`; negative where it is colder.
    #[must_use]
    pub fn above(self, other: Temperature) -> TemperatureDifference {
        TemperatureDifference::of(self.0 - other.0, TemperatureDifferenceUnit::Kelvin)
    }

    /// Reads a number with its scale.
    ///
    /// # Errors
    /// [`ErrorKind::Parse`] or [`ErrorKind::Unit`], and those of [`Temperature::new`].
    pub fn parse(text: &str) -> Result<Self, Error> {
        let (value, unit) = parse_number_and_unit(text, "degC, degF, K")?;
        let symbol = match unit {
            "\u{b0}C" => "degC",
            "\u{b0}F" => "degF",
            other => other,
        };
        let scale = TemperatureScale::ALL
            .iter()
            .copied()
            .find(|s| s.symbol() == symbol)
            .ok_or_else(|| Error::new(ErrorKind::Unit, "not a scale of temperature").value_of(text).accepts("degC, degF, K"))?;
        Self::new(value, scale).map_err(|e| e.value_of(text))
    }
}

impl fmt::Display for Temperature {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&format!("{} {}", self.0, TemperatureScale::Celsius.symbol()))
    }
}

impl core::str::FromStr for Temperature {
    type Err = Error;
    fn from_str(text: &str) -> Result<Self, Error> {
        Temperature::parse(text)
    }
}

quantity!(
    /// A difference of temperature, never a temperature: `200 degF` here is 111 K.
    ///
    /// ```
    /// use seamwright::units::{TemperatureDifference, TemperatureDifferenceUnit};
    /// let d = TemperatureDifference::parse("200 degF")?;
    /// assert!((d.get(TemperatureDifferenceUnit::Kelvin) - 111.1111).abs() < 1e-4);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    TemperatureDifference, TemperatureDifferenceUnit, "temperature difference", "K, degC, degF",
    [(Kelvin, "K", 1.0), (DegreeCelsius, "degC", 1.0), (DegreeFahrenheit, "degF", 1.0 / 1.8)]
);
