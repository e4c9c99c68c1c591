//! Rules of the API document: what every path, schema and response must have.

use std::collections::BTreeSet;
use std::path::Path;

use bearwell_engine::quantity::{ROLES, UNIT_SETS};
use serde_json::Value;

use crate::command;
use crate::examples::EXAMPLES;
use crate::service::Service;
use crate::table::{CALCULATIONS, CSV};

fn document() -> Value {
    serde_json::from_str(Service::standard().document()).unwrap()
}

fn schemas(document: &Value) -> &serde_json::Map<String, Value> {
    document["components"]["schemas"].as_object().unwrap()
}

fn operations(document: &Value) -> Vec<(String, &Value)> {
    let paths = document["paths"].as_object().unwrap();
    let of_path = |(path, item): (&String, &'_ Value)| -> Vec<(String, String)> {
        let methods = item.as_object().unwrap().keys();
        methods.map(|m| (path.clone(), m.clone())).collect()
    };
    let all: Vec<_> = paths.iter().flat_map(of_path).collect();
    all.into_iter()
        .map(|(path, method)| {
            (
                format!("{method} {path}"),
                &document["paths"][&path][&method],
            )
        })
        .collect()
}

/// Calls `visit` on every object in the document.
fn every(
    value: &Value,
    place: &str,
    visit: &mut impl FnMut(&str, &serde_json::Map<String, Value>),
) {
    match value {
        Value::Object(members) => {
            visit(place, members);
            for (name, inner) in members {
                // examples are data, not schema
                if !["example", "examples"].contains(&name.as_str()) {
                    every(inner, &format!("{place}/{name}"), visit);
                }
            }
        }
        Value::Array(items) => {
            for (at, inner) in items.iter().enumerate() {
                every(inner, &format!("{place}/{at}"), visit);
            }
        }
        _ => {}
    }
}

/// The checked-in document is the one this program makes. `BEARWELL_BLESS=1` writes it.
#[test]
fn is_the_checked_in_one() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../openapi/bearwell.json");
    let made = Service::standard().document();
    if std::env::var_os("BEARWELL_BLESS").is_some() {
        std::fs::write(&file, made).unwrap();
    }
    let checked_in = std::fs::read_to_string(&file).unwrap_or_default();
    assert!(
        checked_in == made,
        "openapi/bearwell.json is not what the types say; BEARWELL_BLESS=1 cargo test writes it"
    );
}

#[test]
fn is_the_same_each_time() {
    let again = Service::new(CALCULATIONS);
    assert!(again.document() == Service::standard().document());
}

#[test]
fn says_what_it_is() {
    let document = document();
    assert_eq!(document["openapi"], "3.1.0");
    for member in [
        "title",
        "version",
        "summary",
        "description",
        "license",
        "contact",
    ] {
        assert!(!document["info"][member].is_null(), "info.{member}");
    }
    assert_eq!(document["info"]["license"]["identifier"], "Apache-2.0");
    assert_ne!(document["servers"], Value::Null);
    assert_ne!(document["tags"], Value::Null);
}

#[test]
fn every_reference_resolves_and_every_schema_is_used() {
    let document = document();
    let mut used = BTreeSet::new();
    every(&document, "", &mut |place, members| {
        if let Some(target) = members.get("$ref").and_then(Value::as_str) {
            let pointer = target.strip_prefix('#').expect(target);
            assert!(document.pointer(pointer).is_some(), "{place}: {target}");
            used.insert(target.to_owned());
        }
    });
    for name in schemas(&document).keys() {
        let target = format!("#/components/schemas/{name}");
        assert!(used.contains(&target), "nothing refers to {name}");
    }
}

#[test]
fn every_operation_is_told_and_shown() {
    let document = document();
    let mut ids = BTreeSet::new();
    for (name, operation) in operations(&document) {
        for member in ["summary", "description", "operationId"] {
            assert!(
                operation[member].as_str().is_some_and(|t| !t.is_empty()),
                "{name} {member}"
            );
        }
        assert!(
            ids.insert(operation["operationId"].as_str().unwrap()),
            "{name}: id stands twice"
        );
        assert_eq!(
            operation["tags"].as_array().map(Vec::len),
            Some(1),
            "{name}"
        );
        let answer = &operation["responses"]["200"]["content"]["application/json"];
        let shown = |media: &Value| media.get("example").or(media.get("examples")).is_some();
        assert!(shown(answer), "{name}: no executed example");
        if name.starts_with("post") {
            let content = &operation["requestBody"]["content"];
            assert!(
                shown(&content["application/json"]),
                "{name}: no example request"
            );
            assert!(
                content.get("text/csv").is_none_or(shown),
                "{name}: no example in CSV"
            );
        }
    }
}

#[test]
fn every_response_is_described_and_every_other_one_is_a_problem() {
    let document = document();
    for (name, operation) in operations(&document) {
        let responses = operation["responses"].as_object().unwrap();
        assert!(responses.len() > 1, "{name}");
        for (status, response) in responses {
            let response = match response["$ref"].as_str() {
                Some(target) => document.pointer(&target[1..]).unwrap(),
                None => response,
            };
            assert!(
                response["description"]
                    .as_str()
                    .is_some_and(|t| !t.is_empty()),
                "{name} {status}"
            );
            if status != "200" {
                let schema = &response["content"]["application/problem+json"]["schema"]["$ref"];
                assert_eq!(schema, "#/components/schemas/Problem", "{name} {status}");
            }
        }
    }
}

#[test]
fn every_quantity_has_its_own_units_and_is_closed() {
    let document = document();
    let schemas = schemas(&document);
    let mut seen = 0;
    for role in ROLES {
        let Some(schema) = schemas.get(role.name) else {
            continue;
        };
        seen += 1;
        assert_eq!(
            schema["required"],
            serde_json::json!(["value", "unit"]),
            "{}",
            role.name
        );
        assert_eq!(schema["additionalProperties"], false, "{}", role.name);
        let set = schema["properties"]["unit"]["$ref"].as_str().unwrap();
        let set = set.rsplit('/').next().unwrap();
        let known = UNIT_SETS.iter().find(|s| s.name == set).unwrap();
        let names: Vec<&str> = known.units.iter().map(|u| u.name).collect();
        assert_eq!(schemas[set]["enum"], serde_json::json!(names), "{set}");
        assert!(
            std::ptr::eq(known.units, role.units),
            "{} has units of {set}",
            role.name
        );
    }
    assert!(seen > 5);
}

/// Everything a request can hold is closed, told, and limited where it is a list.
#[test]
fn requests_are_closed_and_limited() {
    let service = Service::standard();
    let requests: Vec<String> = service.names.iter().map(|n| n.request.clone()).collect();
    for name in service.schemas.reachable(&requests) {
        let schema = service.schemas.get(&name).unwrap();
        every(schema, &name, &mut |place, members| {
            // conditions speak of members that are told where they stand
            if ["/if/", "/then/", "/contains/"]
                .iter()
                .any(|c| place.contains(c))
            {
                return;
            }
            let property = place.rsplit('/').nth(1) == Some("properties");
            let kind = |k: &str| members.get("type").is_some_and(|t| t == k || t[0] == k);
            if kind("object") && !members.contains_key("additionalProperties") {
                panic!("{place} is open");
            }
            if property
                && !members.contains_key("description")
                && !place.ends_with("/unit")
                && !place.ends_with("/value")
            {
                panic!("{place} is not described");
            }
            let free = place.ends_with("/include") || place == "Tags";
            if kind("array") && !free && !members.contains_key("maxItems") {
                panic!("{place} has no maxItems");
            }
            if property
                && kind("number")
                && place.contains("Request")
                && !members.contains_key("maximum")
            {
                panic!("{place} has no maximum");
            }
        });
    }
}

/// A request in CSV is the one beside it in JSON, and the document shows it.
#[test]
fn examples_in_csv_are_those_in_json() {
    let service = Service::standard();
    let document = document();
    let mut seen = 0;
    for example in EXAMPLES {
        let (Some(csv), Some(entry)) = (example.csv, service.entry(example.noun)) else {
            continue;
        };
        seen += 1;
        let json = command::calc(service, entry, example.request, "*/*", None);
        let title = format!("{}/{}", example.noun, example.name);
        assert!(json.is_ok(), "{title}");
        let of_csv = command::calc_as(service, entry, CSV, csv, "*/*", None);
        assert!(of_csv == json, "{title}: {of_csv:?}");
        let content =
            &document["paths"][format!("/v1/{}", entry.name)]["post"]["requestBody"]["content"];
        let shown = &content["text/csv"]["examples"][example.name]["value"];
        assert_eq!(shown.as_str().map(str::as_bytes), Some(csv), "{title}");
    }
    let declared = CALCULATIONS.iter().filter(|entry| entry.csv.is_some());
    assert!(seen > 0 && seen == declared.count());
}

/// Each request among the examples is one by its schema, each answer too.
#[test]
fn examples_match_their_schemas() {
    let document = document();
    let service = Service::standard();
    for (entry, names) in service.entries.iter().zip(&service.names) {
        let validator = |schema: &str| {
            let root = serde_json::json!({
                "$ref": format!("#/components/schemas/{schema}"),
                "components": document["components"],
            });
            jsonschema::validator_for(&root).unwrap()
        };
        let request = validator(&names.request);
        let answer = validator(&format!("{}Answer", super::answers::stem(names)));
        let problem = validator("Problem");
        for example in EXAMPLES.iter().filter(|e| e.noun == entry.name) {
            if let Ok(sent) = serde_json::from_slice::<Value>(example.request)
                && !example.refused
                && let Some(fault) = request.iter_errors(&sent).next()
            {
                panic!(
                    "{}/{}: {fault} at {}",
                    entry.name,
                    example.name,
                    fault.instance_path()
                );
            }
            let got = command::calc(service, entry, example.request, "*/*", None);
            assert_eq!(
                got.is_err(),
                example.refused,
                "{}/{}",
                entry.name,
                example.name
            );
            let (validator, bytes) = match got {
                Ok(bytes) => (&answer, bytes),
                Err(refused) => (&problem, refused.to_bytes()),
            };
            let got: Value = serde_json::from_slice(&bytes).unwrap();
            if let Some(fault) = validator.iter_errors(&got).next() {
                panic!(
                    "{}/{}: {fault} at {}",
                    entry.name,
                    example.name,
                    fault.instance_path()
                );
            }
        }
    }
}

/// A form line makes beams: what a beam may have, its line and its sides may have too, but for
/// what the line itself says.
#[test]
fn form_lines_know_what_beams_know() {
    let document = document();
    let members = |schema: &str| {
        let own = &document["components"]["schemas"][schema]["properties"];
        let own = own.as_object().expect("an object").clone();
        own.into_iter().map(|(name, _)| name).collect::<Vec<_>>()
    };
    let by_line = ["points", "width", "joins_outline", "openings"];
    for beam in members("GradeBeam") {
        if by_line.contains(&beam.as_str()) {
            continue;
        }
        for schema in ["PlanOutline", "OutlineSide"] {
            assert!(members(schema).contains(&beam), "{schema}.{beam}");
        }
    }
}
