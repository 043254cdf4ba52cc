//! Quantities are text in every serial form; a bare number is refused with a message that says so.

/// Serialises a type by `Display` and reads it by `FromStr`.
macro_rules! serde_text {
    ($($name:ident => $what:literal, $examples:expr);+ $(;)?) => {
        // The examples are what the schema shows.
        #[cfg(test)]
        mod serde_text_examples {
            use super::*;

            #[test]
            fn every_example_reads() {
                $(
                    for text in $examples {
                        assert!(serde_json::from_value::<$name>(text.into()).is_ok(), "{}: {text}", stringify!($name));
                    }
                )+
            }
        }

        $(
            #[cfg(feature = "schema")]
            impl schemars::JsonSchema for $name {
                fn schema_name() -> std::borrow::Cow<'static, str> {
                    stringify!($name).into()
                }
                fn schema_id() -> std::borrow::Cow<'static, str> {
                    concat!(module_path!(), "::", stringify!($name)).into()
                }
                fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                    schemars::json_schema!({ "type": "string", "description": concat!($what, ", as text"), "examples": $examples })
                }
            }

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
                            f.write_str(concat!($what, ", as text"))
                        }
                        fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<$name, E> {
                            // A text is one field: what is within it has no path of its own.
                            text.parse().map_err(|e: crate::error::Error| E::custom(crate::error::told::Told(e.at(""))))
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
    Length => "a length with its unit", ["92.075 mm", "12'-3 5/8\"", "3/4 in"];
    LengthFormat => "a length format: how lengths are written", ["ft-in/16", "in/32", "mm"];
    Angle => "an angle with its unit", ["270 deg", "45 deg"];
    BendAngle => "a bend angle from flat, with its unit", ["90 deg", "180 deg"];
    Area => "an area with its unit", ["10 ft2", "2.5 m2"];
    Volume => "a volume with its unit", ["10.1 floz", "300 mL"];
    Mass => "a mass with its unit", ["12 lb", "5 kg"];
    Force => "a force with its unit", ["250 lbf", "1.1 kN"];
    Pressure => "a pressure with its unit", ["30 psf", "1.5 kPa"];
    LineLoad => "a line load with its unit", ["40 lbf/ft", "0.6 kN/m"];
    SurfaceMass => "a mass for each area, with its unit", ["1.156 lb/ft2", "5.6 kg/m2"];
    LineMass => "a mass for each length, with its unit", ["1.5 lb/ft", "2.2 kg/m"];
    Density => "a density with its unit", ["7850 kg/m3"];
    Expansion => "a thermal expansion with its unit", ["12e-6 /K"];
    Temperature => "a temperature with its unit", ["68 degF", "20 degC"];
    TemperatureDifference => "a temperature difference with its unit", ["90 degF", "50 K"];
);
