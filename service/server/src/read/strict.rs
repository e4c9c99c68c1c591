//! Wraps a deserializer so that a request has one form only: a struct is read from an
//! object and never from a list, no object repeats a member, and a choice without content
//! is a text and never an object. What is left to serde: everything else.

use std::borrow::Cow;
use std::fmt;

use serde::Deserializer;
use serde::de::{
    DeserializeSeed, EnumAccess, Error, IgnoredAny, IntoDeserializer, MapAccess, SeqAccess,
    Unexpected, VariantAccess, Visitor,
};

/// The wrapper; also what its parts are wrapped in.
pub struct Strict<T>(pub T);

/// A visitor on its way in.
struct Guard<V> {
    visitor: V,
    expects: Expects,
}

#[derive(Clone, Copy, PartialEq)]
enum Expects {
    /// A struct: never a list.
    Struct,
    /// A map: its members are compared.
    Map,
    Other,
}

macro_rules! forward {
    ($($method:ident)+) => { $(
        fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
            self.0.$method(visitor)
        }
    )+ };
}

macro_rules! guarded {
    ($($method:ident($($arg:ident: $ty:ty),*) $expects:ident;)+) => { $(
        fn $method<V: Visitor<'de>>(self, $($arg: $ty,)* visitor: V) -> Result<V::Value, D::Error> {
            self.0.$method($($arg,)* Guard { visitor, expects: Expects::$expects })
        }
    )+ };
}

impl<'de, D: Deserializer<'de>> Deserializer<'de> for Strict<D> {
    type Error = D::Error;

    forward! {
        deserialize_any deserialize_bool deserialize_i8 deserialize_i16 deserialize_i32
        deserialize_i64 deserialize_u8 deserialize_u16 deserialize_u32 deserialize_u64
        deserialize_f32 deserialize_f64 deserialize_char deserialize_str deserialize_string
        deserialize_bytes deserialize_byte_buf deserialize_unit deserialize_identifier
        deserialize_ignored_any
    }

    guarded! {
        deserialize_option() Other;
        deserialize_unit_struct(name: &'static str) Other;
        deserialize_newtype_struct(name: &'static str) Other;
        deserialize_seq() Other;
        deserialize_tuple(len: usize) Other;
        deserialize_tuple_struct(name: &'static str, len: usize) Other;
        deserialize_map() Map;
        deserialize_struct(name: &'static str, fields: &'static [&'static str]) Struct;
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_any(Choice(visitor))
    }
}

impl<'de, V: Visitor<'de>> Visitor<'de> for Guard<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        self.visitor.expecting(f)
    }

    fn visit_none<E: Error>(self) -> Result<V::Value, E> {
        self.visitor.visit_none()
    }

    fn visit_unit<E: Error>(self) -> Result<V::Value, E> {
        self.visitor.visit_unit()
    }

    fn visit_some<D: Deserializer<'de>>(self, inner: D) -> Result<V::Value, D::Error> {
        self.visitor.visit_some(Strict(inner))
    }

    fn visit_newtype_struct<D: Deserializer<'de>>(self, inner: D) -> Result<V::Value, D::Error> {
        self.visitor.visit_newtype_struct(Strict(inner))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, items: A) -> Result<V::Value, A::Error> {
        if self.expects == Expects::Struct {
            return Err(A::Error::invalid_type(Unexpected::Seq, &self.visitor));
        }
        self.visitor.visit_seq(Strict(items))
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<V::Value, A::Error> {
        let seen = (self.expects == Expects::Map).then(Vec::new);
        self.visitor.visit_map(Members { map, seen })
    }
}

impl<'de, S: DeserializeSeed<'de>> DeserializeSeed<'de> for Strict<S> {
    type Value = S::Value;
    fn deserialize<D: Deserializer<'de>>(self, inner: D) -> Result<S::Value, D::Error> {
        self.0.deserialize(Strict(inner))
    }
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for Strict<A> {
    type Error = A::Error;
    fn next_element_seed<S: DeserializeSeed<'de>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, A::Error> {
        self.0.next_element_seed(Strict(seed))
    }
    fn size_hint(&self) -> Option<usize> {
        self.0.size_hint()
    }
}

/// The members of an object; `seen` where they have to be compared.
struct Members<'de, A> {
    map: A,
    seen: Option<Vec<Cow<'de, str>>>,
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Members<'de, A> {
    type Error = A::Error;

    fn next_key_seed<S: DeserializeSeed<'de>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, A::Error> {
        let Some(seen) = &mut self.seen else {
            return self.map.next_key_seed(seed);
        };
        let Some(key) = self.map.next_key::<Cow<'de, str>>()? else {
            return Ok(None);
        };
        if seen.contains(&key) {
            return Err(A::Error::custom(format_args!("duplicate field `{key}`")));
        }
        seen.push(key.clone());
        seed.deserialize(key.into_deserializer()).map(Some)
    }

    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, A::Error> {
        self.map.next_value_seed(Strict(seed))
    }
}

/// A visitor of one of several alternatives.
struct Choice<V>(V);

impl<'de, V: Visitor<'de>> Visitor<'de> for Choice<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        self.0.expecting(f)
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<V::Value, E> {
        self.0.visit_enum(text.into_deserializer())
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<V::Value, A::Error> {
        self.0.visit_enum(Tagged(map))
    }
}

/// An object whose only member selects an alternative and holds its content.
struct Tagged<A>(A);

impl<'de, A: MapAccess<'de>> EnumAccess<'de> for Tagged<A> {
    type Error = A::Error;
    type Variant = Self;
    fn variant_seed<S: DeserializeSeed<'de>>(
        mut self,
        seed: S,
    ) -> Result<(S::Value, Self), A::Error> {
        match self.0.next_key_seed(seed)? {
            Some(variant) => Ok((variant, self)),
            None => Err(A::Error::custom(NOT_ONE)),
        }
    }
}

/// What is said of an object that selects no alternative, or more than one.
pub const NOT_ONE: &str = "exactly one member selects the alternative";

impl<'de, A: MapAccess<'de>> VariantAccess<'de> for Tagged<A> {
    type Error = A::Error;

    fn unit_variant(self) -> Result<(), A::Error> {
        Err(A::Error::invalid_type(Unexpected::Map, &"a text"))
    }

    fn newtype_variant_seed<S: DeserializeSeed<'de>>(
        mut self,
        seed: S,
    ) -> Result<S::Value, A::Error> {
        let value = self.0.next_value_seed(Strict(seed))?;
        match self.0.next_key::<IgnoredAny>()? {
            None => Ok(value),
            Some(_) => Err(A::Error::custom(NOT_ONE)),
        }
    }

    fn tuple_variant<V: Visitor<'de>>(self, _: usize, visitor: V) -> Result<V::Value, A::Error> {
        Err(A::Error::invalid_type(Unexpected::TupleVariant, &visitor))
    }

    /// Alternatives of a request hold one value of their own type.
    fn struct_variant<V: Visitor<'de>>(
        self,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, A::Error> {
        Err(A::Error::invalid_type(Unexpected::StructVariant, &visitor))
    }
}
