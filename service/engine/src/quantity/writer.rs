//! Writes a value as compact JSON in a presentation: quantities, numbers and what is left out.
//! Braces, commas and names of members are written here; every number, and every text that needs
//! an escape, by `serde_json`.

use serde::ser::{
    Error as _, Serialize, SerializeMap, SerializeSeq, SerializeStruct, SerializeStructVariant,
    SerializeTuple, SerializeTupleStruct, SerializeTupleVariant, Serializer,
};
use serde_json::Error;

use super::again::{self, written};
use super::macros::UnitDef;
use super::present::Presentation;
use super::{role_of, round9};

/// Writes one value. `unit` is set while the `value` of a quantity is written.
pub(super) struct Writer<'a> {
    out: &'a mut Vec<u8>,
    form: Presentation,
    unit: Option<&'static UnitDef>,
}

impl<'a> Writer<'a> {
    pub fn new(out: &'a mut Vec<u8>, form: Presentation) -> Self {
        Self {
            out,
            form,
            unit: None,
        }
    }

    fn open(self, open: &[u8], close: &'static [u8]) -> Parts<'a> {
        self.out.extend_from_slice(open);
        Parts {
            out: self.out,
            form: self.form,
            unit: None,
            base: None,
            close,
            first: true,
        }
    }

    /// Opens an object whose only member is an alternative with its content.
    fn open_variant(self, variant: &str, open: u8, close: &'static [u8]) -> Parts<'a> {
        self.out.push(b'{');
        name(self.out, variant);
        self.open(&[open], close)
    }
}

/// A list or an object being written; `unit` is the target unit where it is a quantity.
pub(super) struct Parts<'a> {
    out: &'a mut Vec<u8>,
    form: Presentation,
    unit: Option<&'static UnitDef>,
    base: Option<&'static UnitDef>,
    close: &'static [u8],
    first: bool,
}

impl Parts<'_> {
    fn next(&mut self) {
        if !self.first {
            self.out.push(b',');
        }
        self.first = false;
    }

    fn child<T: Serialize + ?Sized>(
        &mut self,
        value: &T,
        unit: Option<&'static UnitDef>,
    ) -> Result<(), Error> {
        value.serialize(Writer {
            out: self.out,
            form: self.form,
            unit,
        })
    }

    fn element<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        self.next();
        self.child(value, None)
    }

    fn member<T: Serialize + ?Sized>(
        &mut self,
        key: &str,
        value: &T,
        unit: Option<&'static UnitDef>,
    ) -> Result<(), Error> {
        self.next();
        name(self.out, key);
        self.child(value, unit)
    }

    fn finish(self) {
        self.out.extend_from_slice(self.close);
    }
}

/// A member's name from the code, where none needs an escape.
fn name(out: &mut Vec<u8>, key: &str) {
    debug_assert!(plain(key), "{key}");
    out.push(b'"');
    out.extend_from_slice(key.as_bytes());
    out.extend_from_slice(b"\":");
}

/// Whether a text stands in JSON as it is.
fn plain(text: &str) -> bool {
    // without an early end, so that many bytes are looked at together
    let escape = |b: &u8| (*b < 0x20) | (*b == b'"') | (*b == b'\\');
    !text.as_bytes().iter().fold(false, |any, b| any | escape(b))
}

fn text(out: &mut Vec<u8>, text: &str) -> Result<(), Error> {
    if !plain(text) {
        return serde_json::to_writer(out, text);
    }
    out.push(b'"');
    out.extend_from_slice(text.as_bytes());
    out.push(b'"');
    Ok(())
}

/// The number that a `value` holds.
fn number<T: Serialize + ?Sized>(value: &T) -> Option<f64> {
    serde_json::to_value(value).ok()?.as_f64()
}

macro_rules! as_it_is {
    ($($method:ident($ty:ty);)+) => { $(
        fn $method(self, v: $ty) -> Result<(), Error> {
            serde_json::to_writer(self.out, &v)
        }
    )+ };
}

impl<'a> Serializer for Writer<'a> {
    type Ok = ();
    type Error = Error;
    type SerializeSeq = Parts<'a>;
    type SerializeTuple = Parts<'a>;
    type SerializeTupleStruct = Parts<'a>;
    type SerializeTupleVariant = Parts<'a>;
    type SerializeMap = Parts<'a>;
    type SerializeStruct = Parts<'a>;
    type SerializeStructVariant = Parts<'a>;

    as_it_is! {
        serialize_bool(bool); serialize_i8(i8); serialize_i16(i16); serialize_i32(i32);
        serialize_i64(i64); serialize_u8(u8); serialize_u16(u16); serialize_u32(u32);
        serialize_u64(u64); serialize_char(char); serialize_bytes(&[u8]);
    }

    fn serialize_str(self, v: &str) -> Result<(), Error> {
        text(self.out, v)
    }

    fn serialize_none(self) -> Result<(), Error> {
        self.serialize_unit()
    }

    fn serialize_unit(self) -> Result<(), Error> {
        self.out.extend_from_slice(b"null");
        Ok(())
    }

    fn serialize_unit_struct(self, _: &'static str) -> Result<(), Error> {
        self.serialize_unit()
    }

    fn serialize_unit_variant(
        self,
        name: &'static str,
        _: u32,
        variant: &'static str,
    ) -> Result<(), Error> {
        // the unit of a column of a table
        match self.form.unit_of(name) {
            Some(unit) => text(self.out, unit.name),
            None => text(self.out, variant),
        }
    }

    fn serialize_f32(self, v: f32) -> Result<(), Error> {
        self.serialize_f64(f64::from(v))
    }

    fn serialize_f64(self, v: f64) -> Result<(), Error> {
        if self.form == Presentation::Digest {
            return serde_json::to_writer(self.out, &v);
        }
        if let Presentation::Again(_) = self.form {
            let whole = v.fract() == 0.0 && v.abs() < 1e15 && (v != 0.0 || v.is_sign_positive());
            return if whole {
                self.serialize_i64(v as i64)
            } else {
                serde_json::to_writer(self.out, &v)
            };
        }
        let shown = self.unit.map_or(v, |u| (v - u.offset) / u.factor);
        if !shown.is_finite() {
            return Err(Error::custom("a result is not a finite number"));
        }
        let shown = round9(shown);
        if shown.fract() == 0.0 && shown.abs() < 1e15 {
            self.serialize_i64(shown as i64)
        } else {
            serde_json::to_writer(self.out, &shown)
        }
    }

    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<(), Error> {
        value.serialize(self)
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        name: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        let form = match self.form {
            Presentation::Printed(system) if name == again::MARK => Presentation::Again(system),
            form => form,
        };
        // under a mark it is a bare number of a table
        value.serialize(Writer {
            unit: self.form.unit_of(name).or(self.unit),
            out: self.out,
            form,
        })
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        let mut parts = self.open(b"{", b"}");
        parts.member(variant, value, None)?;
        parts.finish();
        Ok(())
    }

    fn serialize_seq(self, _: Option<usize>) -> Result<Parts<'a>, Error> {
        Ok(self.open(b"[", b"]"))
    }

    fn serialize_tuple(self, _: usize) -> Result<Parts<'a>, Error> {
        Ok(self.open(b"[", b"]"))
    }

    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Parts<'a>, Error> {
        Ok(self.open(b"[", b"]"))
    }

    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        _: usize,
    ) -> Result<Parts<'a>, Error> {
        Ok(self.open_variant(variant, b'[', b"]}"))
    }

    fn serialize_map(self, _: Option<usize>) -> Result<Parts<'a>, Error> {
        Ok(self.open(b"{", b"}"))
    }

    fn serialize_struct(self, name: &'static str, _: usize) -> Result<Parts<'a>, Error> {
        let (unit, base) = match self.form {
            Presentation::Again(system) => {
                let role = role_of(name);
                (role.map(|r| r.unit(system)), role.map(|r| r.base))
            }
            form => (form.unit_of(name), None),
        };
        Ok(Parts {
            unit,
            base,
            ..self.open(b"{", b"}")
        })
    }

    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        _: usize,
    ) -> Result<Parts<'a>, Error> {
        Ok(self.open_variant(variant, b'{', b"}}"))
    }
}

macro_rules! elements {
    ($($list:ident::$method:ident)+) => { $(
        impl $list for Parts<'_> {
            type Ok = ();
            type Error = Error;
            fn $method<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
                self.element(value)
            }
            fn end(self) -> Result<(), Error> {
                self.finish();
                Ok(())
            }
        }
    )+ };
}

elements! {
    SerializeSeq::serialize_element SerializeTuple::serialize_element
    SerializeTupleStruct::serialize_field SerializeTupleVariant::serialize_field
}

impl SerializeMap for Parts<'_> {
    type Ok = ();
    type Error = Error;

    fn serialize_key<T: Serialize + ?Sized>(&mut self, key: &T) -> Result<(), Error> {
        self.next();
        let from = self.out.len();
        self.child(key, None)?;
        if self.out.get(from) != Some(&b'"') {
            return Err(Error::custom("the name of a member is a text"));
        }
        self.out.push(b':');
        Ok(())
    }

    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        self.child(value, None)
    }

    fn end(self) -> Result<(), Error> {
        self.finish();
        Ok(())
    }
}

impl SerializeStruct for Parts<'_> {
    type Ok = ();
    type Error = Error;

    fn serialize_field<T: Serialize + ?Sized>(
        &mut self,
        key: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        if let (Presentation::Again(_), Some(unit), Some(base), "value") =
            (self.form, self.unit, self.base, key)
            && let Some(held) = number(value)
        {
            let (shown, unit) = written(held, unit, base);
            self.unit = Some(unit);
            return self.member(key, &shown, None);
        }
        match (self.unit, key) {
            (Some(unit), "value") => self.member(key, value, Some(unit)),
            (Some(unit), "unit") => self.member(key, unit.name, None),
            (None, "tags") if self.form == Presentation::Digest => Ok(()),
            _ => self.member(key, value, None),
        }
    }

    fn end(self) -> Result<(), Error> {
        self.finish();
        Ok(())
    }
}

impl SerializeStructVariant for Parts<'_> {
    type Ok = ();
    type Error = Error;

    fn serialize_field<T: Serialize + ?Sized>(
        &mut self,
        key: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        self.member(key, value, None)
    }

    fn end(self) -> Result<(), Error> {
        self.finish();
        Ok(())
    }
}
