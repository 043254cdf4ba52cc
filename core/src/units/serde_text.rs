//! Quantities are text in every serial form; a bare number is refused with a message that says so.

/// Serialises a type by `Display` and reads it by `FromStr`.
macro_rules! serde_text {
    ($($name:ty => $what:literal),+ $(,)?) => {
        $(
            impl serde::Serialize for $name {
                fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                    serializer.collect_str(self)
                }
            }

            impl<'de> serde::Deserialize<'de> for $name {
                fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                    struct Text;
                    impl serde::de::Visitor<'_> for Text {
                        type Value = $name;
                        fn expecting(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                            f.write_str(concat!($what, " as text with its unit"))
                        }
                        fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<$name, E> {
                            text.parse().map_err(|e| E::custom(crate::error::told::Told(e)))
                        }
                    }
                    deserializer.deserialize_str(Text)
                }
            }
        )+
    };
}
pub(crate) use serde_text;

use super::{
    Angle, Area, BendAngle, Density, Expansion, Force, Length, LengthFormat, LineLoad, LineMass, Mass, Pressure, SurfaceMass, Temperature,
    TemperatureDifference, Volume,
};

serde_text!(
    Length => "a length",
    LengthFormat => "a length format",
    Angle => "an angle",
    BendAngle => "a bend angle from flat",
    Area => "an area",
    Volume => "a volume",
    Mass => "a mass",
    Force => "a force",
    Pressure => "a pressure",
    LineLoad => "a line load",
    SurfaceMass => "a mass per area",
    LineMass => "a mass per length",
    Density => "a density",
    Expansion => "an expansion",
    Temperature => "a temperature",
    TemperatureDifference => "a temperature difference",
);
