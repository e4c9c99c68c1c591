//! Tables in the API document. `x-table` tells, for each column, its quantity and whether
//! it must be there: what a schema of JSON alone says clumsily.

use serde_json::json;
use utoipa::openapi::RefOr;
use utoipa::openapi::extensions::ExtensionsBuilder;
use utoipa::openapi::schema::{
    AdditionalProperties, ArrayBuilder, ObjectBuilder, Schema, SchemaType, Type,
};

use super::{Column, Columns, Table};

/// Schemas by name.
pub(super) type Named = Vec<(String, RefOr<Schema>)>;

impl<C: Columns> utoipa::PartialSchema for Table<C> {
    fn schema() -> RefOr<Schema> {
        let needed = C::ALL.iter().filter(|c| c.required).count();
        let columns = ArrayBuilder::new()
            .description(Some(columns_text(C::ALL)))
            .items(column_schema(C::ALL))
            .min_items(Some(needed))
            .max_items(Some(C::ALL.len()));
        let cell = if needed < C::ALL.len() {
            SchemaType::from_iter([Type::Number, Type::Null])
        } else {
            Type::Number.into()
        };
        let row = ArrayBuilder::new()
            .items(ObjectBuilder::new().schema_type(cell))
            .min_items(Some(needed))
            .max_items(Some(C::ALL.len()));
        let rows = ArrayBuilder::new()
            .description(Some(
                "Rows, each with one number for each column, in the order of `columns`.",
            ))
            .items(row)
            .min_items(Some(C::LEAST_ROWS))
            .max_items(Some(C::MOST_ROWS));
        ObjectBuilder::new()
            .description(Some(C::ABOUT))
            .property("columns", columns)
            .property("rows", rows)
            .required("columns")
            .required("rows")
            .additional_properties(Some(AdditionalProperties::FreeForm(false)))
            .extensions(Some(
                ExtensionsBuilder::new()
                    .add("x-table", told(C::ALL))
                    .build(),
            ))
            .into()
    }
}

impl<C: Columns> utoipa::ToSchema for Table<C> {
    fn name() -> std::borrow::Cow<'static, str> {
        C::NAME.into()
    }

    fn schemas(out: &mut Named) {
        for column in C::ALL {
            (column.schemas)(out);
        }
    }
}

fn columns_text(columns: &[Column]) -> String {
    let mut text = String::from("The columns, each once, in any order:");
    for column in columns {
        let may = if column.required {
            ""
        } else {
            ", may be left out"
        };
        let units: Vec<_> = column
            .role
            .units
            .iter()
            .map(|u| format!("`{}`", u.name))
            .collect();
        text += &format!(
            " `{}` ({}{may}): {}",
            column.name,
            units.join(", "),
            column.about
        );
    }
    text
}

fn column_schema(columns: &[Column]) -> ObjectBuilder {
    let names: Vec<&str> = columns.iter().map(|c| c.name).collect();
    let name = ObjectBuilder::new()
        .schema_type(Type::String)
        .description(Some("Name of the column."))
        .enum_values(Some(names));
    let unit = ObjectBuilder::new()
        .schema_type(Type::String)
        .description(Some(
            "Unit of its numbers; one of the units of its quantity.",
        ));
    ObjectBuilder::new()
        .property("name", name)
        .property("unit", unit)
        .required("name")
        .required("unit")
        .additional_properties(Some(AdditionalProperties::FreeForm(false)))
}

fn told(columns: &[Column]) -> serde_json::Value {
    let one =
        |c: &Column| json!({ "name": c.name, "quantity": c.role.name, "required": c.required });
    columns.iter().map(one).collect()
}
