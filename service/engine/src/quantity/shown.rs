//! A number with its role decided at run time: what checks and steps carry, where
//! one list holds forces beside lengths. Quantities proper are in `table.rs`.

use std::borrow::Cow;

use serde::ser::SerializeStruct;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::macros::{Role, UnitDef};
use super::{System, role_of, round9};

const ONE: UnitDef = UnitDef {
    name: "1",
    member: r#","unit":"1""#,
    factor: 1.0,
    offset: 0.0,
    origin: "SI Brochure 2.3.3: a number has the unit one",
};

/// The role of a pure number; its unit is `1`.
pub const RATIO: &Role = &Role {
    name: "Ratio",
    mark: "$Ratio",
    about: "A pure number.",
    base: &ONE,
    si: &ONE,
    us: &ONE,
    units: &[ONE],
};

/// A value of any role, in base SI until it is presented.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    value: f64,
    unit: Cow<'static, str>,
    mark: &'static str,
}

impl Shown {
    /// A value in base SI with the role it is shown in.
    pub const fn new(value: f64, role: &'static Role) -> Self {
        Self {
            value,
            unit: Cow::Borrowed(role.base.name),
            mark: role.mark,
        }
    }

    /// The number as held: base SI in the engine, as read in a client.
    pub const fn value(&self) -> f64 {
        self.value
    }

    /// The unit of [`Shown::value`].
    pub fn unit(&self) -> &str {
        &self.unit
    }

    /// The number and its unit as they are printed; those of a client stay as it read them.
    pub fn printed(&self, system: System) -> (f64, &str) {
        match role_of(self.mark) {
            Some(role) => (
                role.unit(system).printed(self.value),
                role.unit(system).name,
            ),
            None => (round9(self.value), &self.unit),
        }
    }

    /// The serde mark of the role.
    pub(crate) const fn mark(&self) -> &'static str {
        self.mark
    }
}

impl From<f64> for Shown {
    fn from(value: f64) -> Self {
        Self::new(value, RATIO)
    }
}

impl Serialize for Shown {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let mut out = s.serialize_struct(self.mark, 2)?;
        out.serialize_field("value", &self.value)?;
        out.serialize_field("unit", &*self.unit)?;
        out.end()
    }
}

impl<'de> Deserialize<'de> for Shown {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        #[derive(Deserialize)]
        struct Wire {
            value: f64,
            unit: String,
        }
        let wire = Wire::deserialize(d)?;
        Ok(Self::as_read(wire.value, wire.unit))
    }
}

impl Shown {
    /// A value as a client read it: already presented, so it has no role left.
    pub fn as_read(value: f64, unit: String) -> Self {
        Self {
            value,
            unit: Cow::Owned(unit),
            mark: "Shown",
        }
    }
}

#[cfg(feature = "openapi")]
impl utoipa::PartialSchema for Shown {
    fn schema() -> utoipa::openapi::RefOr<utoipa::openapi::schema::Schema> {
        use utoipa::openapi::schema::{ObjectBuilder, Type};
        ObjectBuilder::new()
            .description(Some(
                "A value with its unit; `1` is the unit of a pure number.",
            ))
            .property("value", ObjectBuilder::new().schema_type(Type::Number))
            .property("unit", ObjectBuilder::new().schema_type(Type::String))
            .required("value")
            .required("unit")
            .into()
    }
}

#[cfg(feature = "openapi")]
impl utoipa::ToSchema for Shown {
    fn name() -> Cow<'static, str> {
        "ShownValue".into()
    }
}
