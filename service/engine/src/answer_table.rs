//! Long lists of numbers in an answer: named columns, each with its unit, and rows of bare
//! numbers. Tables in requests are in `table`. No engineering here.

use std::borrow::Cow;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::quantity::{Role, Shown, System, role_of, round9};

/// A table of an answer, in the units asked for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct AnswerTable {
    /// The columns.
    pub columns: Vec<AnswerColumn>,
    /// The rows, each with one number for each column, in their order.
    pub rows: Vec<Vec<Cell>>,
}

/// A column of a table.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct AnswerColumn {
    /// Its name.
    pub name: Cow<'static, str>,
    /// Unit of its numbers; `1` for a pure number.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub unit: ColumnUnit,
}

/// The unit of a column: that of a role until it is presented, a name once it is read.
#[derive(Debug, Clone)]
pub struct ColumnUnit {
    name: Cow<'static, str>,
    mark: &'static str,
}

/// A number of a table, in base SI until it is presented.
#[derive(Debug, Clone, Copy)]
pub struct Cell {
    value: f64,
    mark: &'static str,
}

// how a number is presented is no part of it: read back it is the same number
impl PartialEq for ColumnUnit {
    fn eq(&self, other: &Self) -> bool {
        self.name == other.name
    }
}

impl PartialEq for Cell {
    fn eq(&self, other: &Self) -> bool {
        self.value == other.value
    }
}

impl AnswerColumn {
    /// A column of a quantity.
    pub fn of(name: &'static str, role: &'static Role) -> Self {
        Self {
            name: name.into(),
            unit: ColumnUnit {
                name: role.base.name.into(),
                mark: role.mark,
            },
        }
    }
}

impl ColumnUnit {
    /// Its name as it is printed.
    pub fn printed(&self, system: System) -> &str {
        role_of(self.mark).map_or(&self.name, |role| role.unit(system).name)
    }
}

impl Cell {
    /// The number as it is printed.
    pub fn printed(self, system: System) -> f64 {
        match role_of(self.mark) {
            Some(role) => role.unit(system).printed(self.value),
            None => round9(self.value),
        }
    }

    /// A number of a quantity.
    pub fn of(quantity: impl Into<Shown>) -> Self {
        let shown = quantity.into();
        Self {
            value: shown.value(),
            mark: shown.mark(),
        }
    }

    /// The number: base SI in the engine, as read in a client.
    pub const fn value(self) -> f64 {
        self.value
    }
}

impl Serialize for ColumnUnit {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        match &self.name {
            // under the mark of its role, so that it is presented
            Cow::Borrowed(base) => s.serialize_unit_variant(self.mark, 0, base),
            Cow::Owned(name) => s.serialize_str(name),
        }
    }
}

impl<'de> Deserialize<'de> for ColumnUnit {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        String::deserialize(d).map(|name| Self {
            name: name.into(),
            mark: "ColumnUnit",
        })
    }
}

impl Serialize for Cell {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.serialize_newtype_struct(self.mark, &self.value)
    }
}

impl<'de> Deserialize<'de> for Cell {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        let value = f64::deserialize(d)?;
        Ok(Self {
            value,
            mark: "Cell",
        })
    }
}

#[cfg(feature = "openapi")]
impl utoipa::PartialSchema for Cell {
    fn schema() -> utoipa::openapi::RefOr<utoipa::openapi::schema::Schema> {
        use utoipa::openapi::schema::{ObjectBuilder, Type};
        ObjectBuilder::new().schema_type(Type::Number).into()
    }
}

#[cfg(feature = "openapi")]
impl utoipa::ToSchema for Cell {
    fn name() -> Cow<'static, str> {
        "TableCell".into()
    }
}
