//! The two macros that make unit sets and quantities. What exists is listed in
//! `table.rs`; nothing here knows any particular unit.

/// One unit of measure: its name on the wire and how it relates to the SI base.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UnitDef {
    /// Name on the wire.
    pub name: &'static str,
    /// The member of a quantity in which its name stands, with the comma before it.
    pub(super) member: &'static str,
    /// SI value of one of this unit.
    pub factor: f64,
    /// SI value of zero of this unit (only temperatures have one).
    pub offset: f64,
    /// Where the factor comes from.
    pub origin: &'static str,
}

/// What a number means beside its dimension: which unit it is shown in.
#[derive(Debug)]
pub struct Role {
    /// Name of the quantity, as in the API document.
    pub name: &'static str,
    /// The name under which serde serialises it; tells the presenter what it is.
    pub mark: &'static str,
    /// Plain text of what the role is for.
    pub about: &'static str,
    /// Base SI unit (factor 1), the plain serde form.
    pub base: &'static UnitDef,
    /// Unit printed when `output_units` is `si`.
    pub si: &'static UnitDef,
    /// Unit printed when `output_units` is `us_customary`.
    pub us: &'static UnitDef,
    /// Every unit accepted.
    pub units: &'static [UnitDef],
}

/// Any quantity, for code that takes whichever it is given.
pub trait Quantity: Copy {
    /// How it is named and shown.
    const ROLE: &'static Role;
    /// From a value in base SI.
    fn from_si(value: f64) -> Self;
    /// Value in base SI.
    fn si(self) -> f64;
}

/// The units of one dimension, as the caller writes them.
#[derive(Debug)]
pub struct UnitSet {
    /// Name of the set, as in the API document.
    pub name: &'static str,
    /// Plain text of what it measures.
    pub about: &'static str,
    /// The units, in declared order.
    pub units: &'static [UnitDef],
    /// Spellings that are not accepted, with what to write instead.
    pub hints: &'static [(&'static str, &'static str)],
}

impl UnitSet {
    /// What is said of a unit that is not in the set.
    pub fn unknown(&self, got: &str) -> String {
        let hint = self.hints.iter().find(|(wrong, _)| *wrong == got);
        super::unknown_unit(got, hint.map(|(_, text)| *text), self.units)
    }
}

macro_rules! units {
    ($(
        $(#[doc = $about:literal])+
        $set:ident base $base:ident {
            $($variant:ident $name:literal = $factor:expr $(, offset $offset:expr)? ; $origin:literal)+
        }
        hint { $($wrong:literal => $hint:literal)* }
    )+) => { $(
        $(#[doc = $about])+
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
        pub enum $set {
            $(#[doc = $name] #[cfg_attr(feature = "openapi", schema(rename = $name))] $variant,)+
        }

        impl $set {
            /// Every unit of this set, in declared order.
            pub const ALL: &'static [UnitDef] = &[$(UnitDef {
                name: $name,
                member: concat!(",\"unit\":\"", $name, "\""),
                factor: $factor,
                offset: 0.0 $(+ $offset)?,
                origin: $origin,
            }),+];

            /// The SI base unit.
            pub const BASE: $set = $set::$base;

            /// Definition of this unit.
            pub const fn def(self) -> &'static UnitDef {
                &Self::ALL[self as usize]
            }
        }

        impl serde::Serialize for $set {
            fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
                s.serialize_str(self.def().name)
            }
        }

        impl<'de> serde::Deserialize<'de> for $set {
            fn deserialize<D: serde::Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
                struct Visitor;
                impl serde::de::Visitor<'_> for Visitor {
                    type Value = $set;
                    fn expecting(&self, f: &mut std::fmt::Formatter) -> std::fmt::Result {
                        f.write_str("a unit name")
                    }
                    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<$set, E> {
                        $(if text == $name { return Ok($set::$variant); })+
                        let hint: Option<&str> = None;
                        $(let hint = if text == $wrong { Some($hint) } else { hint };)*
                        Err(E::custom(super::unknown_unit(text, hint, $set::ALL)))
                    }
                }
                d.deserialize_str(Visitor)
            }
        }
    )+

    /// Every set of units, in declared order.
    pub const UNIT_SETS: &[UnitSet] = &[$(UnitSet {
        name: stringify!($set),
        about: concat!($($about),+),
        units: $set::ALL,
        hints: &[$(($wrong, $hint)),*],
    }),+];
    };
}

macro_rules! quantities {
    ($(
        $(#[doc = $about:literal])+
        $name:ident($set:ident) shown $si:ident | $us:ident ;
    )+) => {
        $(
        $(#[doc = $about])+
        ///
        /// Held in base SI; written and read as `{"value": ..., "unit": ...}`.
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(f64);

        impl $name {
            /// How this quantity is named and shown.
            pub const ROLE: &'static Role = &Role {
                name: stringify!($name),
                mark: concat!("$", stringify!($name)),
                about: concat!($($about),+),
                base: $set::BASE.def(),
                si: $set::$si.def(),
                us: $set::$us.def(),
                units: $set::ALL,
            };
            /// Nothing of it.
            pub const ZERO: $name = $name(0.0);

            /// From a value in the given unit.
            pub const fn new(value: f64, unit: $set) -> Self {
                let def = unit.def();
                Self(value * def.factor + def.offset)
            }
            /// From a value in base SI.
            pub const fn from_si(value: f64) -> Self {
                Self(value)
            }
            /// Value in base SI.
            pub const fn si(self) -> f64 {
                self.0
            }
            /// Value in the given unit.
            pub const fn get(self, unit: $set) -> f64 {
                let def = unit.def();
                (self.0 - def.offset) / def.factor
            }
            /// The larger of the two.
            pub fn max(self, other: Self) -> Self {
                if other.0 > self.0 { other } else { self }
            }
            /// The smaller of the two.
            pub fn min(self, other: Self) -> Self {
                if other.0 < self.0 { other } else { self }
            }
        }

        impl Quantity for $name {
            const ROLE: &'static Role = $name::ROLE;
            fn from_si(value: f64) -> Self {
                $name::from_si(value)
            }
            fn si(self) -> f64 {
                $name::si(self)
            }
        }

        impl std::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self { Self(self.0 + other.0) }
        }
        impl std::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self { Self(self.0 - other.0) }
        }
        impl std::ops::Neg for $name {
            type Output = Self;
            fn neg(self) -> Self { Self(-self.0) }
        }
        impl std::ops::Mul<f64> for $name {
            type Output = Self;
            fn mul(self, by: f64) -> Self { Self(self.0 * by) }
        }
        impl std::ops::Mul<$name> for f64 {
            type Output = $name;
            fn mul(self, by: $name) -> $name { $name(self * by.0) }
        }
        impl std::ops::Div<f64> for $name {
            type Output = Self;
            fn div(self, by: f64) -> Self { Self(self.0 / by) }
        }
        impl std::ops::Div for $name {
            type Output = f64;
            fn div(self, by: Self) -> f64 { self.0 / by.0 }
        }
        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
                items.fold(Self(0.0), |total, item| total + item)
            }
        }

        impl validator::ValidateRange<Self> for $name {
            fn greater_than(&self, max: Self) -> Option<bool> { Some(self.0 > max.0) }
            fn less_than(&self, min: Self) -> Option<bool> { Some(self.0 < min.0) }
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
                use serde::ser::SerializeStruct;
                let mut out = s.serialize_struct(Self::ROLE.mark, 2)?;
                out.serialize_field("value", &self.0)?;
                out.serialize_field("unit", Self::ROLE.base.name)?;
                out.end()
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
                #[derive(serde::Deserialize)]
                #[serde(deny_unknown_fields, rename = "quantity")]
                struct Wire { value: f64, unit: $set }
                let wire = Wire::deserialize(d)?;
                Ok(Self::new(wire.value, wire.unit))
            }
        }

        impl From<$name> for Shown {
            fn from(q: $name) -> Shown { Shown::new(q.0, $name::ROLE) }
        }

        #[cfg(feature = "openapi")]
        impl utoipa::PartialSchema for $name {
            fn schema() -> utoipa::openapi::RefOr<utoipa::openapi::schema::Schema> {
                super::quantity_schema($name::ROLE, stringify!($set))
            }
        }
        #[cfg(feature = "openapi")]
        impl utoipa::ToSchema for $name {
            fn name() -> std::borrow::Cow<'static, str> { stringify!($name).into() }
            fn schemas(out: &mut Vec<(String, utoipa::openapi::RefOr<utoipa::openapi::schema::Schema>)>) {
                use utoipa::PartialSchema;
                out.push((stringify!($set).into(), $set::schema()));
            }
        }
        )+

        /// Every role, in declared order.
        pub const ROLES: &[&Role] = &[$($name::ROLE),+];

        /// The role a serde mark stands for.
        pub fn role_of(mark: &str) -> Option<&'static Role> {
            match mark.strip_prefix('$')? {
                $(stringify!($name) => Some($name::ROLE),)+
                "Ratio" => Some(RATIO),
                _ => None,
            }
        }
    };
}

pub(super) use quantities;
pub(super) use units;
