//! The shape that all floating-point quantities share.

use crate::error::{Error, ErrorKind};

/// Splits `12.5 ft2` into its number and its unit's symbol.
pub(crate) fn parse_number_and_unit<'a>(text: &'a str, accepts: &'static str) -> Result<(f64, &'a str), Error> {
    let trimmed = text.trim();
    let end = trimmed
        .char_indices()
        .find(|&(i, c)| {
            !(c.is_ascii_digit() || c == '.' || c == '+' || c == '-' || c == '\u{2212}' || ((c == 'e' || c == 'E') && exponent_follows(trimmed, i)))
        })
        .map_or(trimmed.len(), |(i, _)| i);
    let (number, unit) = trimmed.split_at(end);
    let offset = text.len() - text.trim_start().len();
    if unit.starts_with(',') {
        return Err(Error::new(ErrorKind::Parse, "a decimal comma or thousands separator is not accepted")
            .value_of(text)
            .pointing(offset + end, offset + end + 1)
            .accepts(accepts));
    }
    let value: f64 = number
        .replace('\u{2212}', "-")
        .parse()
        .map_err(|_| Error::new(ErrorKind::Parse, "not a number").value_of(text).pointing(offset, offset + end).accepts(accepts))?;
    if !value.is_finite() {
        return Err(Error::new(ErrorKind::NotFinite, "not a finite number").value_of(text).accepts(accepts));
    }
    let unit = unit.trim_start();
    if unit.is_empty() {
        return Err(Error::new(ErrorKind::Unit, "a quantity needs its unit").value_of(text).pointing(offset + end, offset + end).accepts(accepts));
    }
    Ok((value, unit))
}

fn exponent_follows(text: &str, at: usize) -> bool {
    let rest = text.get(at + 1..).unwrap_or_default();
    let rest = rest.strip_prefix(['+', '-']).unwrap_or(rest);
    at > 0 && rest.starts_with(|c: char| c.is_ascii_digit())
}

/// Makes a quantity held in one SI unit, with its unit enumeration, text and serde.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $unit:ident, $what:literal, $accepts:literal, [$($(#[$vdoc:meta])* ($variant:ident, $symbol:literal, $factor:expr)),+ $(,)?]) => {
        #[doc = concat!("A unit of ", $what, ".")]
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum $unit {
            $($(#[$vdoc])* #[doc = concat!("`", $symbol, "`")] $variant,)+
        }

        impl $unit {
            /// Every unit; the first is the one held.
            pub const ALL: &'static [$unit] = &[$($unit::$variant),+];

            /// The unit's symbol as text.
            #[must_use]
            pub const fn symbol(self) -> &'static str {
                match self { $($unit::$variant => $symbol),+ }
            }

            /// How many of the unit held are in one of this unit.
            #[must_use]
            pub const fn factor(self) -> f64 {
                match self { $($unit::$variant => $factor),+ }
            }
        }

        $(#[$doc])*
        #[doc = ""]
        #[doc = concat!("A finite number; as text with its unit: ", $accepts, ".")]
        #[derive(Debug, Clone, Copy, Default)]
        pub struct $name(f64);

        impl $name {
            /// None of it.
            pub const ZERO: $name = $name(0.0);

            /// So much of this unit.
            ///
            /// # Errors
            /// [`ErrorKind::NotFinite`](crate::error::ErrorKind::NotFinite) for NaN and infinities.
            pub fn new(value: f64, unit: $unit) -> Result<Self, crate::error::Error> {
                let held = value * unit.factor();
                if held.is_finite() {
                    // Adding zero turns -0.0 into 0.0, so that equal values have equal bits.
                    Ok($name(held + 0.0))
                } else {
                    Err(crate::error::Error::new(crate::error::ErrorKind::NotFinite, concat!("not a finite ", $what)).value_of(value).accepts("a finite number"))
                }
            }

            /// For values that are finite by construction: literals in tables, and products of lengths.
            #[allow(dead_code, reason = "not every quantity has a table")]
            pub(crate) const fn of(value: f64, unit: $unit) -> Self {
                $name(value * unit.factor())
            }

            /// The number of this unit.
            #[must_use]
            pub fn get(self, unit: $unit) -> f64 {
                self.0 / unit.factor()
            }

            /// Reads a number with its unit.
            ///
            /// # Errors
            /// [`ErrorKind::Parse`](crate::error::ErrorKind::Parse) or [`ErrorKind::Unit`](crate::error::ErrorKind::Unit).
            pub fn parse(text: &str) -> Result<Self, crate::error::Error> {
                let (value, symbol) = $crate::units::parse_number_and_unit(text, $accepts)?;
                let unit = $unit::ALL.iter().copied().find(|u| u.symbol() == symbol).ok_or_else(|| {
                    crate::error::Error::new(crate::error::ErrorKind::Unit, concat!("not a unit of ", $what)).value_of(text).accepts($accepts)
                })?;
                Self::new(value, unit)
            }
        }

        impl PartialEq for $name {
            fn eq(&self, other: &Self) -> bool {
                self.0.to_bits() == other.0.to_bits()
            }
        }
        impl Eq for $name {}
        impl PartialOrd for $name {
            fn partial_cmp(&self, other: &Self) -> Option<core::cmp::Ordering> {
                Some(self.cmp(other))
            }
        }
        impl Ord for $name {
            fn cmp(&self, other: &Self) -> core::cmp::Ordering {
                self.0.total_cmp(&other.0)
            }
        }
        impl core::hash::Hash for $name {
            fn hash<H: core::hash::Hasher>(&self, state: &mut H) {
                self.0.to_bits().hash(state);
            }
        }
        impl core::fmt::Display for $name {
            fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                f.pad(&format!("{} {}", self.0, $unit::ALL[0].symbol()))
            }
        }
        impl core::str::FromStr for $name {
            type Err = crate::error::Error;
            fn from_str(text: &str) -> Result<Self, Self::Err> {
                $name::parse(text)
            }
        }
    };
}
pub(crate) use quantity;
