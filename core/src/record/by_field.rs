//! Fields by their names alone. What serde derives for a struct also reads a list of its values in their order, which the schemas of the formats refuse
//! and which goes wrong without a word when a field is added. This stands between a format and the types, and refuses such a list wherever it is.

use core::fmt;
use serde::de::{DeserializeSeed, Deserializer, EnumAccess, Error, Expected, MapAccess, SeqAccess, Unexpected, VariantAccess, Visitor};

/// A deserializer, or what it gives access to: structs in it are objects.
pub(super) struct ByField<T>(pub(super) T);

/// A visitor of what can hold a struct.
struct Through<V>(V);

/// A visitor of a struct.
struct Named<V> {
    visitor: V,
    fields: &'static [&'static str],
}

/// What stands before the names of the fields in the fault that a list is.
pub(super) const LISTED: &str = "an object of ";

struct Fields(&'static [&'static str]);

impl Expected for Fields {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{LISTED}{}", self.0.join(", "))
    }
}

impl<'de, V: Visitor<'de>> Visitor<'de> for Named<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.visitor.expecting(f)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, _: A) -> Result<V::Value, A::Error> {
        Err(A::Error::invalid_type(Unexpected::Seq, &Fields(self.fields)))
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<V::Value, A::Error> {
        self.visitor.visit_map(ByField(map))
    }
}

/// Methods that hand a value to the visitor as it is.
macro_rules! as_it_is {
    ($($method:ident($ty:ty))*) => {
        $(fn $method<E: Error>(self, value: $ty) -> Result<V::Value, E> {
            self.0.$method(value)
        })*
    };
}

impl<'de, V: Visitor<'de>> Visitor<'de> for Through<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.expecting(f)
    }

    as_it_is! { visit_bool(bool) visit_i64(i64) visit_u64(u64) visit_f64(f64) visit_str(&str) visit_borrowed_str(&'de str) visit_string(String) }

    fn visit_unit<E: Error>(self) -> Result<V::Value, E> {
        self.0.visit_unit()
    }

    fn visit_none<E: Error>(self) -> Result<V::Value, E> {
        self.0.visit_none()
    }

    fn visit_some<D: Deserializer<'de>>(self, inner: D) -> Result<V::Value, D::Error> {
        self.0.visit_some(ByField(inner))
    }

    fn visit_newtype_struct<D: Deserializer<'de>>(self, inner: D) -> Result<V::Value, D::Error> {
        self.0.visit_newtype_struct(ByField(inner))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<V::Value, A::Error> {
        self.0.visit_seq(ByField(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<V::Value, A::Error> {
        self.0.visit_map(ByField(map))
    }

    fn visit_enum<A: EnumAccess<'de>>(self, choice: A) -> Result<V::Value, A::Error> {
        self.0.visit_enum(ByField(choice))
    }
}

impl<'de, S: DeserializeSeed<'de>> DeserializeSeed<'de> for ByField<S> {
    type Value = S::Value;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<S::Value, D::Error> {
        self.0.deserialize(ByField(from))
    }
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for ByField<A> {
    type Error = A::Error;

    fn next_element_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, A::Error> {
        self.0.next_element_seed(ByField(seed))
    }

    fn size_hint(&self) -> Option<usize> {
        self.0.size_hint()
    }
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for ByField<A> {
    type Error = A::Error;

    fn next_key_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, A::Error> {
        self.0.next_key_seed(seed)
    }

    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, A::Error> {
        self.0.next_value_seed(ByField(seed))
    }

    fn size_hint(&self) -> Option<usize> {
        self.0.size_hint()
    }
}

impl<'de, A: EnumAccess<'de>> EnumAccess<'de> for ByField<A> {
    type Error = A::Error;
    type Variant = ByField<A::Variant>;

    fn variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<(S::Value, Self::Variant), A::Error> {
        self.0.variant_seed(seed).map(|(name, variant)| (name, ByField(variant)))
    }
}

impl<'de, A: VariantAccess<'de>> VariantAccess<'de> for ByField<A> {
    type Error = A::Error;

    fn unit_variant(self) -> Result<(), A::Error> {
        self.0.unit_variant()
    }

    fn newtype_variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<S::Value, A::Error> {
        self.0.newtype_variant_seed(ByField(seed))
    }

    fn tuple_variant<V: Visitor<'de>>(self, len: usize, visitor: V) -> Result<V::Value, A::Error> {
        self.0.tuple_variant(len, Through(visitor))
    }

    fn struct_variant<V: Visitor<'de>>(self, fields: &'static [&'static str], visitor: V) -> Result<V::Value, A::Error> {
        self.0.struct_variant(fields, Named { visitor, fields })
    }
}

/// Methods for what can hold a struct, and for what cannot.
macro_rules! deserialize {
    ($how:expr; $($method:ident($($name:ident: $ty:ty),*))*) => {
        $(fn $method<V: Visitor<'de>>(self, $($name: $ty,)* visitor: V) -> Result<V::Value, D::Error> {
            self.0.$method($($name,)* $how(visitor))
        })*
    };
}

impl<'de, D: Deserializer<'de>> Deserializer<'de> for ByField<D> {
    type Error = D::Error;

    fn deserialize_struct<V: Visitor<'de>>(self, name: &'static str, fields: &'static [&'static str], visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_struct(name, fields, Named { visitor, fields })
    }

    deserialize! { Through;
        deserialize_any() deserialize_option() deserialize_newtype_struct(name: &'static str) deserialize_seq() deserialize_tuple(len: usize)
        deserialize_tuple_struct(name: &'static str, len: usize) deserialize_map() deserialize_enum(name: &'static str, names: &'static [&'static str])
    }

    deserialize! { core::convert::identity;
        deserialize_bool() deserialize_i8() deserialize_i16() deserialize_i32() deserialize_i64() deserialize_i128() deserialize_u8() deserialize_u16()
        deserialize_u32() deserialize_u64() deserialize_u128() deserialize_f32() deserialize_f64() deserialize_char() deserialize_str() deserialize_string()
        deserialize_bytes() deserialize_byte_buf() deserialize_unit() deserialize_unit_struct(name: &'static str) deserialize_identifier()
        deserialize_ignored_any()
    }

    fn is_human_readable(&self) -> bool {
        self.0.is_human_readable()
    }
}
