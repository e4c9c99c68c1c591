//! The schemas of the API document: taken from the types, made exact where the derive is
//! not (closed alternatives, open answers), with the members shared by all requests.
//! Also what a body is walked along when it is refused.

use std::collections::{BTreeMap, BTreeSet};

use bearwell_engine::contract::SHARED;
use bearwell_engine::quantity::{ROLES, Role, UNIT_SETS};
use serde_json::{Map, Value, json};
use utoipa::ToSchema;
use utoipa::openapi::RefOr;
use utoipa::openapi::schema::Schema;

use crate::read::Pointer;

/// Schemas by name, as a type gives them.
pub type Named = Vec<(String, RefOr<Schema>)>;

const PREFIX: &str = "#/components/schemas/";

/// A reference to a schema by name.
pub fn reference(name: &str) -> Value {
    json!({ "$ref": format!("{PREFIX}{name}") })
}

/// Adds the schema of `T` and everything it refers to; returns its name.
pub fn collect<T: ToSchema>(all: &mut Named) -> String {
    let name = T::name().into_owned();
    all.push((name.clone(), T::schema()));
    T::schemas(all);
    name
}

/// Every schema of the document.
#[derive(Debug, Default)]
pub struct Schemas {
    all: Map<String, Value>,
}

impl Schemas {
    /// Takes over schemas as the types give them. Two different ones of one name are a
    /// fault of the program.
    pub fn add(&mut self, named: Named) {
        // types give a schema as often as they refer to it
        let mut taken = BTreeMap::new();
        for (name, schema) in named {
            if taken.get(&name) == Some(&schema) {
                continue;
            }
            let mut json = serde_json::to_value(&schema).expect("a schema is JSON");
            close_alternatives(&mut json);
            lift_descriptions(&mut json);
            units_by_column(&mut json);
            self.put(name.clone(), json);
            taken.insert(name, schema);
        }
    }

    /// Takes over one schema.
    pub fn put(&mut self, name: String, schema: Value) {
        if let Some(before) = self.all.get(&name) {
            assert_eq!(*before, schema, "two schemas are called {name}");
        }
        self.all.insert(name, schema);
    }

    /// Adds the members that every request shares to the request called `name`.
    pub fn share(&mut self, name: &str) {
        let schema = self.all.get_mut(name).expect("the request was collected");
        let members = schema["properties"]
            .as_object_mut()
            .expect("a request is an object");
        for (shared, schema) in SHARED.into_iter().zip(shared_members()) {
            let before = members.insert(shared.to_owned(), schema.clone());
            assert!(
                before.is_none() || before == Some(schema),
                "{name} has its own `{shared}`"
            );
        }
    }

    /// Opens the closed lists of names that only answers use, so that a new name is not a
    /// breaking change. What a request can reach stays closed, and so do units.
    pub fn open_answers(&mut self, requests: &[String]) {
        let closed = self.reachable(requests);
        for (name, schema) in &mut self.all {
            let unit = UNIT_SETS.iter().any(|set| set.name == name);
            if unit || closed.contains(name) || schema["type"] != "string" {
                continue;
            }
            if let Some(list) = schema.as_object_mut().and_then(|s| s.remove("enum")) {
                schema["x-extensible-enum"] = list;
            }
        }
    }

    /// Names of all schemas that the named ones refer to, themselves included.
    pub fn reachable(&self, from: &[String]) -> BTreeSet<String> {
        let mut found = BTreeSet::new();
        let mut open: Vec<String> = from.to_vec();
        while let Some(name) = open.pop() {
            if let Some(schema) = self.all.get(&name)
                && found.insert(name)
            {
                references(schema, &mut open);
            }
        }
        found
    }

    /// The schema by its name.
    pub fn get(&self, name: &str) -> Option<&Value> {
        self.all.get(name)
    }

    /// All of them, for the document.
    pub fn all(&self) -> &Map<String, Value> {
        &self.all
    }

    /// Follows references; the name is that of the last one.
    pub fn resolve<'a>(&'a self, schema: &'a Value) -> (&'a Value, Option<&'a str>) {
        let (mut schema, mut name) = (schema, None);
        while let Some(next) = schema["$ref"].as_str().and_then(|r| r.strip_prefix(PREFIX)) {
            name = Some(next);
            schema = self.all.get(next).unwrap_or(&Value::Null);
        }
        (schema, name)
    }

    /// The quantity that stands at a place in a request, if one does.
    pub fn role_at(&self, root: &Value, pointer: &str) -> Option<&'static Role> {
        let mut schema = root;
        let mut name = None;
        for part in Pointer::parts(pointer) {
            schema = self.inner(schema, &part)?;
        }
        for _ in 0..2 {
            (schema, name) = self.resolve(schema);
            match self.alternatives(schema).as_slice() {
                [only] => schema = only,
                _ => break,
            }
        }
        ROLES.iter().find(|role| Some(role.name) == name).copied()
    }

    fn inner<'a>(&'a self, schema: &'a Value, part: &str) -> Option<&'a Value> {
        let (schema, _) = self.resolve(schema);
        if let Some(found) = schema["properties"].get(part) {
            return Some(found);
        }
        if schema["type"] == "array" || schema["type"][0] == "array" {
            return Some(&schema["items"]);
        }
        self.alternatives(schema)
            .into_iter()
            .find_map(|branch| self.inner(branch, part))
    }

    fn alternatives<'a>(&self, schema: &'a Value) -> Vec<&'a Value> {
        let branches = schema["oneOf"].as_array().into_iter().flatten();
        branches.filter(|b| b["type"] != "null").collect()
    }
}

/// Names of the schemas that a schema refers to.
pub fn references(schema: &Value, out: &mut Vec<String>) {
    match schema {
        Value::Object(members) => {
            let target = members.get("$ref").and_then(Value::as_str);
            out.extend(
                target
                    .and_then(|r| r.strip_prefix(PREFIX))
                    .map(str::to_owned),
            );
            members.values().for_each(|inner| references(inner, out));
        }
        Value::Array(items) => items.iter().for_each(|inner| references(inner, out)),
        _ => {}
    }
}

/// "One of these objects" is closed: exactly one member selects the alternative.
fn close_alternatives(schema: &mut Value) {
    let Some(branches) = schema.get_mut("oneOf").and_then(Value::as_array_mut) else {
        return;
    };
    for branch in branches {
        let tagged = branch["properties"]
            .as_object()
            .is_some_and(|p| p.len() == 1)
            && branch["required"].as_array().is_some_and(|r| r.len() == 1);
        if tagged {
            branch["additionalProperties"] = false.into();
        }
    }
}

/// The unit of a column is one of those of its own quantity, and a column that is needed is
/// there.
fn units_by_column(schema: &mut Value) {
    let Some(told) = schema.get("x-table").and_then(Value::as_array).cloned() else {
        return;
    };
    let named = |column: &Value| json!({ "properties": { "name": { "const": column["name"] } }, "required": ["name"] });
    let unit = |column: &Value| {
        let role = ROLES.iter().find(|role| column["quantity"] == role.name);
        match UNIT_SETS
            .iter()
            .find(|set| role.is_some_and(|role| role.units == set.units))
        {
            Some(set) => reference(set.name),
            None => json!({ "const": "1" }),
        }
    };
    let rule = |column: &Value| json!({ "if": named(column), "then": { "properties": { "unit": unit(column) } } });
    let columns = &mut schema["properties"]["columns"];
    columns["items"]["allOf"] = told.iter().map(rule).collect();
    let once = |column: &Value| json!({ "contains": named(column), "minContains": usize::from(column["required"] == true), "maxContains": 1 });
    columns["allOf"] = told.iter().map(once).collect();
}

/// The description of an optional member stands beside its alternatives, not within one.
fn lift_descriptions(schema: &mut Value) {
    let Some(members) = schema.get_mut("properties").and_then(Value::as_object_mut) else {
        return;
    };
    for member in members.values_mut() {
        let branches = member.get_mut("oneOf").and_then(Value::as_array_mut);
        let Some([first, second]) = branches.map(Vec::as_mut_slice) else {
            continue;
        };
        if second["type"] == "null"
            && let Some(text) = first.as_object_mut().and_then(|f| f.remove("description"))
        {
            member["description"] = text;
        }
    }
}

/// Schemas of the shared members, in the order of their names.
fn shared_members() -> [Value; SHARED.len()] {
    let or_null = |schema: Value, text: &str| json!({ "oneOf": [schema, { "type": "null" }], "description": text });
    [
        or_null(
            reference("UnitSystem"),
            "Units of the answer; `si` when left out. What each quantity is printed in stands in `GET /v1/units`.",
        ),
        json!({
            "type": ["array", "null"],
            "items": reference("Include"),
            "description": "Parts of the answer that are left out otherwise: `steps`, the working equation by equation."
        }),
        json!({
            "type": ["string", "null"],
            "description": "Refuse with `basis_differs` unless the service computes on this calculation basis; it stands in `provenance` of every answer and in `GET /version`."
        }),
        json!({
            "type": ["string", "null"],
            "description": "Which sheet or table, where the asked media type has several; each type has a default."
        }),
        or_null(
            reference("Paper"),
            "Paper size of a drawing; `letter` with `us_customary` and `a4` with `si` when left out.",
        ),
    ]
}

/// Collects the schemas that the shared members refer to.
pub fn collect_shared(all: &mut Named) {
    collect::<bearwell_engine::quantity::System>(all);
    collect::<bearwell_engine::contract::Include>(all);
    collect::<bearwell_engine::contract::Paper>(all);
}
