//! The faults that the derived range checks find, as issues with pointers, and limits
//! printed in the units the value is shown in. Which range applies stands in the types.

use std::borrow::Cow;
use std::collections::HashMap;

use bearwell_engine::catalogue::refusals;
use bearwell_engine::contract::Issue;
use bearwell_engine::quantity::{ROLES, Role, in_both_systems};
use bearwell_engine::text::SELF;
use serde_json::Value;
use validator::{Validate, ValidationError, ValidationErrors, ValidationErrorsKind};

use super::pointer::Pointer;
use crate::schemas::Schemas;

/// Every value outside its range.
pub fn ranges(request: &impl Validate, schemas: &Schemas, root: &Value) -> Vec<Issue> {
    let mut found = Vec::new();
    if let Err(errors) = request.validate() {
        gather(&errors, &mut Pointer::default(), &mut found);
    }
    found
        .into_iter()
        .map(|(pointer, error)| {
            let role = schemas.role_at(root, &pointer);
            issue(pointer, &error, role)
        })
        .collect()
}

fn gather(
    errors: &ValidationErrors,
    place: &mut Pointer,
    found: &mut Vec<(String, ValidationError)>,
) {
    for (field, kind) in errors.errors() {
        match kind {
            ValidationErrorsKind::Field(errors) => {
                let pointer = if field == SELF {
                    place.to_string()
                } else {
                    place.to(field)
                };
                found.extend(errors.iter().map(|e| (pointer.clone(), e.clone())));
            }
            ValidationErrorsKind::Struct(inner) => {
                place.inside(field, |place| gather(inner, place, found));
            }
            ValidationErrorsKind::List(items) => place.inside(field, |place| {
                for (at, inner) in items {
                    place.inside(at, |place| gather(inner, place, found));
                }
            }),
        }
    }
}

fn issue(pointer: String, error: &ValidationError, role: Option<&Role>) -> Issue {
    if error.code != "range" {
        let text = error.message.as_deref().unwrap_or("out of bounds");
        return Issue::new(pointer, &refusals::TEXT_LENGTH, text.to_owned());
    }
    let params = &error.params;
    // a cell of a table says itself which quantity it is
    let named = params.get("role").and_then(Value::as_str);
    let of_cell = named.and_then(|name| ROLES.iter().find(|role| role.name == name));
    let role = role.or(of_cell.copied());
    let value = base(params, "value");
    let below = |name| base(params, name).filter(|min| value.is_some_and(|v| v < *min));
    let (code, side, limit) = match below("min").map(|_| "min") {
        Some(name) => (&refusals::BELOW_MINIMUM, "below", name),
        None => (&refusals::ABOVE_MAXIMUM, "above", "max"),
    };
    let limit = printed(params, limit, role);
    let detail = format!("{} is {side} {limit}", printed(params, "value", role));
    Issue::new(pointer, code, detail).limit(limit)
}

type Params = HashMap<Cow<'static, str>, Value>;

/// A number, or the base-SI value of a quantity.
fn base(params: &Params, name: &str) -> Option<f64> {
    let given = params.get(name)?;
    given.as_f64().or_else(|| given["value"].as_f64())
}

fn printed(params: &Params, name: &str, role: Option<&Role>) -> String {
    let given = params.get(name).unwrap_or(&Value::Null);
    match (given["value"].as_f64(), role) {
        (Some(value), Some(role)) => role.in_both_systems(value),
        (Some(value), None) => in_both_systems(value, given["unit"].as_str().unwrap_or_default()),
        (None, _) => match given.as_f64() {
            Some(number) => number.to_string(),
            None => given.to_string(),
        },
    }
}
