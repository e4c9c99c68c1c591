//! Writes a value as compact JSON in a presentation: quantities, numbers and what is left out.
//! Braces, commas and names of members are written here; texts and numbers in `out`.

use serde::ser::{
    Error as _, Serialize, SerializeMap, SerializeSeq, SerializeStruct, SerializeStructVariant,
    SerializeTuple, SerializeTupleStruct, SerializeTupleVariant, Serializer,
};
use serde_json::Error;

use super::again::{self, written};
use super::macros::{Role, UnitDef};
use super::out::{Out, plain};
use super::present::{Presentation, System};

/// The unit in which a number is written.
#[derive(Clone, Copy)]
enum Unit {
    /// The one it has.
    Own,
    /// This one.
    This(&'static UnitDef),
    /// That of the role, or else the base one, so that the number reads back the same.
    Again(&'static Role, System),
}

/// Writes one value. `unit` is another one while the `value` of a quantity is written.
pub(super) struct Writer<'a> {
    out: &'a mut Out,
    form: Presentation,
    unit: Unit,
}

impl<'a> Writer<'a> {
    pub fn new(out: &'a mut Out, form: Presentation) -> Self {
        Self {
            out,
            form,
            unit: Unit::Own,
        }
    }

    #[inline]
    fn open(self, open: u8, close: u8) -> Parts<'a> {
        self.out.byte(open);
        Parts {
            out: self.out,
            form: self.form,
            quantity: None,
            close,
            in_variant: false,
            first: true,
        }
    }

    /// Opens an object whose only member is an alternative with its content.
    #[inline]
    fn open_variant(self, variant: &str, open: u8, close: u8) -> Parts<'a> {
        self.out.put(b"{\"");
        self.out.put(variant.as_bytes());
        self.out.put(b"\":");
        Parts {
            in_variant: true,
            ..self.open(open, close)
        }
    }
}

/// A list or an object being written; `quantity` where it is one. What makes one is inlined:
/// handed back through memory it is read in other pieces than it was stored in, and the processor
/// waits for that each time.
pub(super) struct Parts<'a> {
    out: &'a mut Out,
    form: Presentation,
    quantity: Option<Unit>,
    close: u8,
    /// It is the only member of an object.
    in_variant: bool,
    first: bool,
}

impl Parts<'_> {
    #[inline(always)]
    fn next(&mut self) {
        if !self.first {
            self.out.byte(b',');
        }
        self.first = false;
    }

    fn child<T: Serialize + ?Sized>(&mut self, value: &T, unit: Unit) -> Result<(), Error> {
        value.serialize(Writer {
            out: self.out,
            form: self.form,
            unit,
        })
    }

    fn element<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        self.next();
        self.child(value, Unit::Own)
    }

    /// The name of a member; it is from the code, where none needs an escape. Inlined to where the
    /// name is known, it is written without a call.
    #[inline(always)]
    fn name(&mut self, key: &str) {
        debug_assert!(plain(key.as_bytes()), "{key}");
        self.next();
        self.out.byte(b'"');
        self.out.put(key.as_bytes());
        self.out.put(b"\":");
    }

    #[inline(always)]
    fn member<T: Serialize + ?Sized>(&mut self, key: &str, value: &T) -> Result<(), Error> {
        self.name(key);
        self.child(value, Unit::Own)
    }

    /// `value` of a quantity.
    fn value<T: Serialize + ?Sized>(&mut self, value: &T, unit: Unit) -> Result<(), Error> {
        self.next();
        self.out.put(b"\"value\":");
        self.child(value, unit)
    }

    /// `unit` of a quantity, where it is not the one it has.
    fn other_unit(&mut self, unit: Unit) -> bool {
        let unit = match unit {
            Unit::Own => return false,
            Unit::This(unit) => unit,
            Unit::Again(role, _) => self.out.chosen.take().unwrap_or(role.base),
        };
        debug_assert!(plain(unit.name.as_bytes()), "{}", unit.name);
        self.out.put(unit.member.as_bytes());
        true
    }

    #[inline]
    fn finish(self) {
        self.out.byte(self.close);
        if self.in_variant {
            self.out.byte(b'}');
        }
    }
}

macro_rules! as_it_is {
    ($($method:ident($ty:ty);)+) => { $(
        fn $method(self, v: $ty) -> Result<(), Error> {
            self.out.put(serde_json::to_string(&v)?.as_bytes());
            Ok(())
        }
    )+ };
}

macro_rules! integers {
    ($($method:ident($ty:ty);)+) => { $(
        fn $method(self, v: $ty) -> Result<(), Error> {
            self.out.whole(v);
            Ok(())
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

    as_it_is! { serialize_char(char); serialize_bytes(&[u8]); }

    integers! {
        serialize_i8(i8); serialize_i16(i16); serialize_i32(i32); serialize_i64(i64);
        serialize_u8(u8); serialize_u16(u16); serialize_u32(u32); serialize_u64(u64);
    }

    fn serialize_bool(self, v: bool) -> Result<(), Error> {
        self.out.put(if v { b"true" } else { b"false" });
        Ok(())
    }

    fn serialize_str(self, v: &str) -> Result<(), Error> {
        self.out.text(v)
    }

    fn serialize_none(self) -> Result<(), Error> {
        self.serialize_unit()
    }

    fn serialize_unit(self) -> Result<(), Error> {
        self.out.put(b"null");
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
        let unit = self.form.unit_of(name, self.out);
        self.out.known(unit.map_or(variant, |unit| unit.name));
        Ok(())
    }

    fn serialize_f32(self, v: f32) -> Result<(), Error> {
        self.serialize_f64(f64::from(v))
    }

    fn serialize_f64(self, v: f64) -> Result<(), Error> {
        let shown = match (self.form, self.unit) {
            (Presentation::Digest, _) => {
                self.out.double(v);
                return Ok(());
            }
            (Presentation::Again(_), Unit::Again(role, system)) => {
                let (shown, unit) = written(v, role.unit(system), role.base);
                self.out.chosen = Some(unit);
                shown
            }
            (Presentation::Again(_), _) => v,
            (_, Unit::This(u)) => return self.out.nine_digits((v - u.offset) / u.factor),
            _ => return self.out.nine_digits(v),
        };
        self.out.finite(shown)
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
        let unit = self.form.unit_of(name, self.out);
        value.serialize(Writer {
            unit: unit.map_or(self.unit, Unit::This),
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
        let mut parts = self.open(b'{', b'}');
        parts.member(variant, value)?;
        parts.finish();
        Ok(())
    }

    #[inline]
    fn serialize_seq(self, _: Option<usize>) -> Result<Parts<'a>, Error> {
        Ok(self.open(b'[', b']'))
    }

    #[inline]
    fn serialize_tuple(self, _: usize) -> Result<Parts<'a>, Error> {
        Ok(self.open(b'[', b']'))
    }

    #[inline]
    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Parts<'a>, Error> {
        Ok(self.open(b'[', b']'))
    }

    #[inline]
    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        _: usize,
    ) -> Result<Parts<'a>, Error> {
        Ok(self.open_variant(variant, b'[', b']'))
    }

    #[inline]
    fn serialize_map(self, _: Option<usize>) -> Result<Parts<'a>, Error> {
        Ok(self.open(b'{', b'}'))
    }

    #[inline]
    fn serialize_struct(self, name: &'static str, _: usize) -> Result<Parts<'a>, Error> {
        let quantity = match self.form {
            _ if !name.starts_with('$') => None,
            Presentation::Digest => self.out.role_of(name).map(|r| Unit::This(r.base)),
            Presentation::Again(system) => self.out.role_of(name).map(|r| Unit::Again(r, system)),
            form => form.unit_of(name, self.out).map(Unit::This),
        };
        Ok(Parts {
            quantity,
            ..self.open(b'{', b'}')
        })
    }

    #[inline]
    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        _: usize,
    ) -> Result<Parts<'a>, Error> {
        Ok(self.open_variant(variant, b'{', b'}'))
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
        let from = self.out.bytes.len();
        self.child(key, Unit::Own)?;
        if self.out.bytes.get(from) != Some(&b'"') {
            return Err(Error::custom("the name of a member is a text"));
        }
        self.out.byte(b':');
        Ok(())
    }

    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        self.child(value, Unit::Own)
    }

    fn end(self) -> Result<(), Error> {
        self.finish();
        Ok(())
    }
}

impl SerializeStruct for Parts<'_> {
    type Ok = ();
    type Error = Error;

    #[inline(always)]
    fn serialize_field<T: Serialize + ?Sized>(
        &mut self,
        key: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        if let Some(unit) = self.quantity {
            return match key {
                "value" => self.value(value, unit),
                "unit" if self.other_unit(unit) => Ok(()),
                _ => self.member(key, value),
            };
        }
        if self.form == Presentation::Digest && key == "tags" {
            return Ok(());
        }
        self.member(key, value)
    }

    fn end(self) -> Result<(), Error> {
        self.finish();
        Ok(())
    }
}

impl SerializeStructVariant for Parts<'_> {
    type Ok = ();
    type Error = Error;

    #[inline(always)]
    fn serialize_field<T: Serialize + ?Sized>(
        &mut self,
        key: &'static str,
        value: &T,
    ) -> Result<(), Error> {
        self.member(key, value)
    }

    fn end(self) -> Result<(), Error> {
        self.finish();
        Ok(())
    }
}
