//! Presentation: wraps any serde serializer so that every quantity is converted to
//! the asked unit system, every number rounded to nine digits, and a non-finite
//! result refused. Also the digest form (plain SI without `tags`).
//!
//! A quantity is recognised by the name under which it serialises (its mark).

use serde::ser::{
    Error as _, Serialize, SerializeMap, SerializeSeq, SerializeStruct, SerializeStructVariant,
    SerializeTuple, SerializeTupleStruct, SerializeTupleVariant, Serializer,
};

use super::again::{self, written};
use super::macros::UnitDef;
use super::{role_of, round9};

/// Which units an answer is printed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, serde::Serialize, serde::Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = UnitSystem))]
#[serde(rename_all = "snake_case")]
pub enum System {
    /// Metres, kilonewtons, kilopascals.
    #[default]
    Si,
    /// Feet, pounds-force, pounds per square foot.
    UsCustomary,
}

/// The form in which a value leaves the engine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Presentation {
    /// For a reader: units of the system, nine digits, finite numbers only.
    Printed(System),
    /// For a reader who sends it again: units of the system where a number of them reads back
    /// the same, and as many digits as that takes. What is `Again` takes this form.
    Again(System),
    /// For the digest of a request: base SI, every bit, without `tags`.
    Digest,
}

impl Presentation {
    /// Unit in which what stands under a mark is printed.
    fn unit_of(self, mark: &str) -> Option<&'static UnitDef> {
        match self {
            Presentation::Digest | Presentation::Again(_) => None,
            Presentation::Printed(System::Si) => role_of(mark).map(|r| r.si),
            Presentation::Printed(System::UsCustomary) => role_of(mark).map(|r| r.us),
        }
    }
}

/// The number that a `value` holds.
fn number<T: Serialize + ?Sized>(value: &T) -> Option<f64> {
    serde_json::to_value(value).ok()?.as_f64()
}

/// A value to be serialised in the given form.
pub struct In<'a, T: ?Sized>(pub Presentation, pub &'a T);

impl<T: Serialize + ?Sized> Serialize for In<'_, T> {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        self.1.serialize(Shaper {
            inner: s,
            form: self.0,
            unit: None,
        })
    }
}

/// The wrapping serializer. `unit` is set while the `value` of a quantity is written.
struct Shaper<S> {
    inner: S,
    form: Presentation,
    unit: Option<&'static UnitDef>,
}

/// A child value on its way into the wrapped serializer.
struct Child<'a, T: ?Sized> {
    form: Presentation,
    unit: Option<&'static UnitDef>,
    value: &'a T,
}

impl<T: Serialize + ?Sized> Serialize for Child<'_, T> {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        self.value.serialize(Shaper {
            inner: s,
            form: self.form,
            unit: self.unit,
        })
    }
}

/// A compound being written; `unit` is the target unit where it is a quantity.
struct Parts<C> {
    inner: C,
    form: Presentation,
    unit: Option<&'static UnitDef>,
    base: Option<&'static UnitDef>,
}

impl<C> Parts<C> {
    fn child<'a, T: ?Sized>(&self, value: &'a T) -> Child<'a, T> {
        Child {
            form: self.form,
            unit: None,
            value,
        }
    }
}

macro_rules! forward {
    ($($method:ident($($arg:ident: $ty:ty),*);)+) => { $(
        fn $method(self, $($arg: $ty),*) -> Result<S::Ok, S::Error> {
            self.inner.$method($($arg),*)
        }
    )+ };
}

impl<S: Serializer> Serializer for Shaper<S> {
    type Ok = S::Ok;
    type Error = S::Error;
    type SerializeSeq = Parts<S::SerializeSeq>;
    type SerializeTuple = Parts<S::SerializeTuple>;
    type SerializeTupleStruct = Parts<S::SerializeTupleStruct>;
    type SerializeTupleVariant = Parts<S::SerializeTupleVariant>;
    type SerializeMap = Parts<S::SerializeMap>;
    type SerializeStruct = Parts<S::SerializeStruct>;
    type SerializeStructVariant = Parts<S::SerializeStructVariant>;

    forward! {
        serialize_bool(v: bool); serialize_i8(v: i8); serialize_i16(v: i16); serialize_i32(v: i32);
        serialize_i64(v: i64); serialize_u8(v: u8); serialize_u16(v: u16); serialize_u32(v: u32);
        serialize_u64(v: u64); serialize_char(v: char); serialize_str(v: &str);
        serialize_bytes(v: &[u8]); serialize_none(); serialize_unit();
        serialize_unit_struct(name: &'static str);
    }

    fn serialize_unit_variant(
        self,
        name: &'static str,
        index: u32,
        variant: &'static str,
    ) -> Result<S::Ok, S::Error> {
        // the unit of a column of a table
        match self.form.unit_of(name) {
            Some(unit) => self.inner.serialize_str(unit.name),
            None => self.inner.serialize_unit_variant(name, index, variant),
        }
    }

    fn serialize_f32(self, v: f32) -> Result<S::Ok, S::Error> {
        self.serialize_f64(f64::from(v))
    }

    fn serialize_f64(self, v: f64) -> Result<S::Ok, S::Error> {
        if self.form == Presentation::Digest {
            return self.inner.serialize_f64(v);
        }
        if let Presentation::Again(_) = self.form {
            let whole = v.fract() == 0.0 && v.abs() < 1e15 && (v != 0.0 || v.is_sign_positive());
            return if whole {
                self.inner.serialize_i64(v as i64)
            } else {
                self.inner.serialize_f64(v)
            };
        }
        let shown = self.unit.map_or(v, |u| (v - u.offset) / u.factor);
        if !shown.is_finite() {
            return Err(S::Error::custom("a result is not a finite number"));
        }
        let shown = round9(shown);
        if shown.fract() == 0.0 && shown.abs() < 1e15 {
            self.inner.serialize_i64(shown as i64)
        } else {
            self.inner.serialize_f64(shown)
        }
    }

    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<S::Ok, S::Error> {
        let child = Child {
            form: self.form,
            unit: self.unit,
            value,
        };
        self.inner.serialize_some(&child)
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        name: &'static str,
        value: &T,
    ) -> Result<S::Ok, S::Error> {
        let form = match self.form {
            Presentation::Printed(system) if name == again::MARK => Presentation::Again(system),
            form => form,
        };
        // under a mark it is a bare number of a table
        let child = Child {
            form,
            unit: self.form.unit_of(name).or(self.unit),
            value,
        };
        self.inner.serialize_newtype_struct(name, &child)
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        name: &'static str,
        index: u32,
        variant: &'static str,
        value: &T,
    ) -> Result<S::Ok, S::Error> {
        let child = Child {
            form: self.form,
            unit: None,
            value,
        };
        self.inner
            .serialize_newtype_variant(name, index, variant, &child)
    }

    fn serialize_seq(self, len: Option<usize>) -> Result<Self::SerializeSeq, S::Error> {
        let inner = self.inner.serialize_seq(len)?;
        Ok(parts(inner, self.form, None))
    }

    fn serialize_tuple(self, len: usize) -> Result<Self::SerializeTuple, S::Error> {
        let inner = self.inner.serialize_tuple(len)?;
        Ok(parts(inner, self.form, None))
    }

    fn serialize_tuple_struct(
        self,
        name: &'static str,
        len: usize,
    ) -> Result<Self::SerializeTupleStruct, S::Error> {
        let inner = self.inner.serialize_tuple_struct(name, len)?;
        Ok(parts(inner, self.form, None))
    }

    fn serialize_tuple_variant(
        self,
        name: &'static str,
        index: u32,
        variant: &'static str,
        len: usize,
    ) -> Result<Self::SerializeTupleVariant, S::Error> {
        let inner = self
            .inner
            .serialize_tuple_variant(name, index, variant, len)?;
        Ok(parts(inner, self.form, None))
    }

    fn serialize_map(self, len: Option<usize>) -> Result<Self::SerializeMap, S::Error> {
        let inner = self.inner.serialize_map(len)?;
        Ok(parts(inner, self.form, None))
    }

    fn serialize_struct(
        self,
        name: &'static str,
        len: usize,
    ) -> Result<Self::SerializeStruct, S::Error> {
        let unit = match self.form {
            Presentation::Again(system) => role_of(name).map(|r| r.unit(system)),
            form => form.unit_of(name),
        };
        let base = role_of(name).map(|r| r.base);
        let inner = self.inner.serialize_struct(name, len)?;
        Ok(Parts {
            base,
            ..parts(inner, self.form, unit)
        })
    }

    fn serialize_struct_variant(
        self,
        name: &'static str,
        index: u32,
        variant: &'static str,
        len: usize,
    ) -> Result<Self::SerializeStructVariant, S::Error> {
        let inner = self
            .inner
            .serialize_struct_variant(name, index, variant, len)?;
        Ok(parts(inner, self.form, None))
    }
}

fn parts<C>(inner: C, form: Presentation, unit: Option<&'static UnitDef>) -> Parts<C> {
    Parts {
        inner,
        form,
        unit,
        base: None,
    }
}

macro_rules! elements {
    ($($compound:ident::$method:ident)+) => { $(
        impl<C: $compound> $compound for Parts<C> {
            type Ok = C::Ok;
            type Error = C::Error;
            fn $method<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), C::Error> {
                let child = self.child(value);
                self.inner.$method(&child)
            }
            fn end(self) -> Result<C::Ok, C::Error> {
                self.inner.end()
            }
        }
    )+ };
}

elements! {
    SerializeSeq::serialize_element SerializeTuple::serialize_element
    SerializeTupleStruct::serialize_field SerializeTupleVariant::serialize_field
}

impl<C: SerializeMap> SerializeMap for Parts<C> {
    type Ok = C::Ok;
    type Error = C::Error;
    fn serialize_key<T: Serialize + ?Sized>(&mut self, key: &T) -> Result<(), C::Error> {
        self.inner.serialize_key(key)
    }
    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), C::Error> {
        let child = self.child(value);
        self.inner.serialize_value(&child)
    }
    fn end(self) -> Result<C::Ok, C::Error> {
        self.inner.end()
    }
}

impl<C: SerializeStruct> SerializeStruct for Parts<C> {
    type Ok = C::Ok;
    type Error = C::Error;
    fn serialize_field<T: Serialize + ?Sized>(
        &mut self,
        key: &'static str,
        value: &T,
    ) -> Result<(), C::Error> {
        if let (Presentation::Again(_), Some(unit), Some(base), "value") =
            (self.form, self.unit, self.base, key)
            && let Some(held) = number(value)
        {
            let (shown, unit) = written(held, unit, base);
            self.unit = Some(unit);
            let child = self.child(&shown);
            return self.inner.serialize_field(key, &child);
        }
        match (self.unit, key) {
            (Some(unit), "value") => self.inner.serialize_field(
                key,
                &Child {
                    form: self.form,
                    unit: Some(unit),
                    value,
                },
            ),
            (Some(unit), "unit") => self.inner.serialize_field(key, unit.name),
            (None, "tags") if self.form == Presentation::Digest => self.inner.skip_field(key),
            _ => {
                let child = self.child(value);
                self.inner.serialize_field(key, &child)
            }
        }
    }
    fn end(self) -> Result<C::Ok, C::Error> {
        self.inner.end()
    }
    fn skip_field(&mut self, key: &'static str) -> Result<(), C::Error> {
        self.inner.skip_field(key)
    }
}

impl<C: SerializeStructVariant> SerializeStructVariant for Parts<C> {
    type Ok = C::Ok;
    type Error = C::Error;
    fn serialize_field<T: Serialize + ?Sized>(
        &mut self,
        key: &'static str,
        value: &T,
    ) -> Result<(), C::Error> {
        let child = self.child(value);
        self.inner.serialize_field(key, &child)
    }
    fn end(self) -> Result<C::Ok, C::Error> {
        self.inner.end()
    }
}
