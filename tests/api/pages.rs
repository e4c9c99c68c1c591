//! Catalogues, document, health and problem pages.

use std::collections::BTreeSet;

use bearwell::problem::KINDS;
use bearwell_engine::{catalogue, limits, quantity, source};
use bearwell_tests::{Door, answered, openapi, send};
use reqwest::Method;
use serde_json::Value;

fn column(page: &Value, list: &str, member: &str) -> Vec<String> {
    let entries = page[list]
        .as_array()
        .unwrap_or_else(|| panic!("no `{list}`"));
    let text = |e: &Value| e[member].as_str().unwrap().to_owned();
    entries.iter().map(text).collect()
}

#[tokio::test]
async fn catalogues_are_complete() {
    let door = Door::open();
    for (path, list, member, want) in [
        (
            "/v1/methods",
            "methods",
            "id",
            catalogue::all_methods()
                .iter()
                .map(|d| d.id)
                .collect::<Vec<_>>(),
        ),
        (
            "/v1/checks",
            "checks",
            "code",
            catalogue::all_checks().iter().map(|d| d.id).collect(),
        ),
        (
            "/v1/warnings",
            "warnings",
            "code",
            catalogue::all_warnings().iter().map(|d| d.id).collect(),
        ),
        (
            "/v1/cautions",
            "cautions",
            "code",
            catalogue::all_cautions().iter().map(|d| d.id).collect(),
        ),
        (
            "/v1/references",
            "references",
            "id",
            source::all().map(|r| r.id).collect(),
        ),
        (
            "/v1/limits",
            "limits",
            "id",
            limits::ALL.iter().map(|l| l.id).collect(),
        ),
        (
            "/v1/units",
            "quantities",
            "name",
            quantity::ROLES.iter().map(|r| r.name).collect(),
        ),
        (
            "/v1/units",
            "unit_sets",
            "name",
            quantity::UNIT_SETS.iter().map(|s| s.name).collect(),
        ),
        (
            "/problems",
            "problems",
            "code",
            KINDS.iter().map(|k| k.slug).collect(),
        ),
        (
            "/problems",
            "refusals",
            "code",
            catalogue::all_refusals().iter().map(|d| d.id).collect(),
        ),
    ] {
        let page = door.get(path).await.json();
        assert_eq!(column(&page, list, member), want, "{path}");
    }
}

/// Every code and reference that an answer names is listed.
#[tokio::test]
async fn answers_name_only_what_is_listed() {
    let door = Door::open();
    let listed = |page: Value, list: &str, member: &str| -> BTreeSet<String> {
        column(&page, list, member).into_iter().collect()
    };
    let methods = listed(door.get("/v1/methods").await.json(), "methods", "id");
    let checks = listed(door.get("/v1/checks").await.json(), "checks", "code");
    let warnings = listed(door.get("/v1/warnings").await.json(), "warnings", "code");
    let cautions = listed(door.get("/v1/cautions").await.json(), "cautions", "code");
    let references = listed(door.get("/v1/references").await.json(), "references", "id");
    for example in answered() {
        let answer = door
            .post(&example.path(), example.request.clone())
            .await
            .json();
        let title = example.title();
        let named = |list: &str, member: &str, known: &BTreeSet<String>| {
            for code in column(&answer, list, member) {
                assert!(
                    known.contains(&code),
                    "{title}: `{code}` is in no catalogue"
                );
            }
        };
        named("methods", "id", &methods);
        named("checks", "id", &checks);
        named("warnings", "code", &warnings);
        named("cautions", "code", &cautions);
        for check in answer["checks"].as_array().unwrap() {
            let id = check["source"]["id"].as_str().unwrap();
            assert!(references.contains(id), "{title}: `{id}` is no reference");
        }
    }
}

#[tokio::test]
async fn the_served_document_is_the_checked_in_one() {
    let door = Door::open();
    let served = door.get("/openapi.json").await;
    assert_eq!(served.status, 200);
    let checked_in = std::fs::read(openapi().join("bearwell.json")).unwrap();
    assert!(
        served.bytes == checked_in,
        "openapi/bearwell.json is not what is served"
    );
}

#[tokio::test]
async fn every_problem_and_refusal_has_its_page() {
    let door = Door::open();
    let codes = KINDS.iter().map(|k| k.slug);
    let codes = codes.chain(catalogue::all_refusals().into_iter().map(|d| d.id));
    for code in codes {
        let path = format!("/problems/{code}");
        assert_eq!(door.get(&path).await.json()["code"], code);
        let html = send(
            door.request(Method::GET, &path)
                .header("accept", "text/html"),
        )
        .await;
        assert_eq!(
            html.header("content-type"),
            Some("text/html; charset=utf-8")
        );
        assert!(String::from_utf8(html.bytes).unwrap().contains(code));
    }
    let list = send(
        door.request(Method::GET, "/problems")
            .header("accept", "text/html"),
    )
    .await;
    assert!(
        String::from_utf8(list.bytes)
            .unwrap()
            .contains("/problems/overloaded")
    );
}

#[tokio::test]
async fn health_and_version() {
    let door = Door::open();
    assert_eq!(door.get("/health/live").await.json()["status"], "live");
    assert_eq!(door.get("/health/ready").await.json()["status"], "ready");
    let version = door.get("/version").await.json();
    assert_eq!(version["version"], bearwell::VERSION);
    assert_eq!(
        version["calculation_basis"],
        bearwell_engine::contract::CALCULATION_BASIS
    );
}
