//! A request as it stands on the wire: the calculation's own members beside the ones
//! that every calculation shares.

use std::borrow::Cow;
use std::fmt;
use std::marker::PhantomData;

use serde::de::{DeserializeSeed, Error as _, IntoDeserializer, MapAccess, Visitor};
use serde::ser::SerializeMap;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::quantity::System;

/// Parts of an answer that are sent only when asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Include {
    /// The working, equation by equation.
    Steps,
}

/// Paper size of drawings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Paper {
    /// 8.5 x 11 in.
    Letter,
    /// 210 x 297 mm.
    A4,
}

/// Members that every request may carry.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Options {
    /// Units of the answer; `si` when left out.
    pub output_units: Option<System>,
    /// Parts of the answer that are left out otherwise.
    pub include: Option<Vec<Include>>,
    /// Refuse unless the service computes on this basis.
    pub require_basis: Option<String>,
    /// Which sheet or table, where a media type has several.
    pub form: Option<String>,
    /// Paper size of a drawing.
    pub paper: Option<Paper>,
}

/// Names of the shared members, in the order they are written.
pub const SHARED: [&str; 5] = ["output_units", "include", "require_basis", "form", "paper"];

impl Options {
    /// Whether the working was asked for.
    pub fn steps(&self) -> bool {
        self.include
            .as_ref()
            .is_some_and(|list| list.contains(&Include::Steps))
    }

    /// Unit system of the answer.
    pub fn system(&self) -> System {
        self.output_units.unwrap_or_default()
    }
}

/// A request with the shared members.
#[derive(Debug, Clone, PartialEq)]
pub struct Call<R> {
    /// Members shared by all calculations.
    pub options: Options,
    /// The calculation's own members.
    pub request: R,
}

impl<R> From<R> for Call<R> {
    fn from(request: R) -> Self {
        Self {
            options: Options::default(),
            request,
        }
    }
}

impl<R: Serialize> Serialize for Call<R> {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        // the request is a struct: its members go into this map one by one
        let own = serde_json::to_value(&self.request).map_err(serde::ser::Error::custom)?;
        let serde_json::Value::Object(own) = own else {
            return Err(serde::ser::Error::custom("a request is an object"));
        };
        let mut map = s.serialize_map(None)?;
        for (key, value) in &own {
            map.serialize_entry(key, value)?;
        }
        let o = &self.options;
        if let Some(v) = &o.output_units {
            map.serialize_entry("output_units", v)?;
        }
        if let Some(v) = &o.include {
            map.serialize_entry("include", v)?;
        }
        if let Some(v) = &o.require_basis {
            map.serialize_entry("require_basis", v)?;
        }
        if let Some(v) = &o.form {
            map.serialize_entry("form", v)?;
        }
        if let Some(v) = &o.paper {
            map.serialize_entry("paper", v)?;
        }
        map.end()
    }
}

impl<'de, R: Deserialize<'de>> Deserialize<'de> for Call<R> {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        struct CallVisitor<R>(PhantomData<R>);
        impl<'de, R: Deserialize<'de>> Visitor<'de> for CallVisitor<R> {
            type Value = Call<R>;
            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str("an object")
            }
            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Call<R>, A::Error> {
                let mut peel = Peel {
                    map,
                    options: Options::default(),
                    seen: [false; SHARED.len()],
                };
                let request =
                    R::deserialize(serde::de::value::MapAccessDeserializer::new(&mut peel))?;
                Ok(Call {
                    options: peel.options,
                    request,
                })
            }
        }
        d.deserialize_map(CallVisitor(PhantomData))
    }
}

/// Takes the shared members out of the map as it passes by.
struct Peel<A> {
    map: A,
    options: Options,
    seen: [bool; SHARED.len()],
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for &mut Peel<A> {
    type Error = A::Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Result<Option<K::Value>, A::Error> {
        loop {
            let Some(key) = self.map.next_key::<Cow<'de, str>>()? else {
                return Ok(None);
            };
            let Some(at) = SHARED.iter().position(|name| *name == key) else {
                return seed.deserialize(key.into_deserializer()).map(Some);
            };
            if std::mem::replace(&mut self.seen[at], true) {
                return Err(A::Error::custom(format_args!("duplicate field `{key}`")));
            }
            match at {
                0 => self.options.output_units = self.map.next_value()?,
                1 => self.options.include = self.map.next_value()?,
                2 => self.options.require_basis = self.map.next_value()?,
                3 => self.options.form = self.map.next_value()?,
                _ => self.options.paper = self.map.next_value()?,
            }
        }
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, A::Error> {
        self.map.next_value_seed(seed)
    }
}
