//! At least one request for every kind of problem and for every code of a refusal, and
//! the place of every fault. A code that no request here can bring up must not exist.

use std::collections::{BTreeMap, BTreeSet};
use std::time::Duration;

use bearwell::app::Settings;
use bearwell::problem::KINDS;
use bearwell_engine::catalogue;
use bearwell_tests::{Door, Reply, answered, refused, send};
use reqwest::Method;
use serde_json::{Value, json};

use crate::{faulty, plans};

/// What has been seen: kinds of problem, and codes of faults with where.
#[derive(Default)]
struct Seen {
    kinds: BTreeSet<String>,
    codes: BTreeMap<String, String>,
}

impl Seen {
    fn note(&mut self, title: &str, reply: &Reply, sent: Option<&Value>) {
        let problem = reply.json();
        let kind = problem["type"]
            .as_str()
            .unwrap()
            .rsplit('/')
            .next()
            .unwrap();
        self.kinds.insert(kind.to_owned());
        let errors = problem["errors"].as_array().unwrap();
        let order: Vec<_> = errors
            .iter()
            .map(|e| (e["pointer"].as_str(), e["code"].as_str()))
            .collect();
        assert!(
            order.is_sorted(),
            "{title}: faults are not sorted: {order:?}"
        );
        for error in errors {
            let code = error["code"].as_str().unwrap();
            let pointer = error["pointer"].as_str().unwrap();
            self.codes.insert(code.to_owned(), title.to_owned());
            if let Some(sent) = sent {
                assert!(
                    sent.pointer(pointer).is_some(),
                    "{title}: `{pointer}` is nowhere in the request"
                );
                if code == "missing_member" {
                    assert!(
                        sent.pointer(pointer).is_some_and(Value::is_object),
                        "{title}: {pointer}"
                    );
                }
            }
        }
    }
}

/// The request of `torque-capacity` with some of its text changed.
fn torque(from: &str, to: &str) -> String {
    let found = answered()
        .into_iter()
        .find(|e| e.noun == "torque-capacity" && e.name == "linnet");
    let request: Value = serde_json::from_slice(&found.unwrap().request).unwrap();
    let text = request.to_string();
    assert!(text.contains(from), "{from} in {text}");
    text.replacen(from, to, 1)
}

/// Faults that no calculation has for itself, each with its code and place.
fn common() -> Vec<(String, &'static str, &'static str)> {
    let deep = format!("{{\"label\": {}1{}}}", "[".repeat(40), "]".repeat(40));
    let long_label = format!("\"label\":\"{}\"", "x".repeat(65));
    let twin = r#"{"items": [{"id": "a", "request": {}}, {"id": "a", "request": {}}]}"#;
    vec![
        ("{\"label\":".to_owned(), "not_json", ""),
        (deep, "nested_too_deep", ""),
        (torque("\"label\"", "\"lable\""), "unknown_member", "/lable"),
        (
            torque("\"unit\":\"kip\",", ""),
            "missing_member",
            "/demand/compression",
        ),
        (
            torque("\"label\":\"A2\"", "\"label\":\"A2\",\"label\":\"A3\""),
            "duplicate_member",
            "/label",
        ),
        (
            torque("\"label\":\"A2\"", "\"label\":2"),
            "wrong_type",
            "/label",
        ),
        (
            torque("\"value\":12.5", "\"value\":1e400"),
            "number_out_of_range",
            "/demand/compression/value",
        ),
        (
            torque("\"kip\"", "\"lb\""),
            "unknown_unit",
            "/demand/compression/unit",
        ),
        (
            torque("\"us_customary\"", "\"imperial\""),
            "unknown_choice",
            "/output_units",
        ),
        (
            torque("\"shaft\":{", "\"shaft\":{\"square\":{},"),
            "one_choice_only",
            "/shaft",
        ),
        (
            torque("\"label\":\"A2\"", &long_label),
            "text_length",
            "/label",
        ),
        (
            torque("\"label\"", "\"form\":\"plan\",\"label\""),
            "unknown_form",
            "/form",
        ),
        (
            torque("\"label\"", "\"require_basis\":\"1999.1\",\"label\""),
            "basis_differs",
            "/require_basis",
        ),
        (
            torque("\"value\":2.875", "\"value\":0.001"),
            "below_minimum",
            "/shaft/round/outside_diameter",
        ),
        (
            torque("\"value\":2.875", "\"value\":1e9"),
            "above_maximum",
            "/shaft/round/outside_diameter",
        ),
        (twin.to_owned(), "duplicate_label", "/items/1/id"),
        ("{\"items\": []}".to_owned(), "list_too_short", "/items"),
        (
            json!({ "items": vec![json!({ "id": "a", "request": {} }); 1001] }).to_string(),
            "list_too_long",
            "/items",
        ),
    ]
}

/// Faults of a body in CSV, each with its code and place.
const CSV: &[(&str, &str, &str)] = &[
    ("# {}\nload [kip],displacement [in]\n0,\"0\n", "not_csv", ""),
    (
        "load [kN];displacement [mm]\n0;0\n1,5;0,2\n",
        "csv_separator",
        "",
    ),
    (
        "# {\"points\": {}}\nload [kip],displacement [in]\n0,0\n",
        "csv_member_twice",
        "/points",
    ),
];

async fn of_the_service_itself(seen: &mut Seen) {
    let settings = |deadline, waiting| Settings {
        calculations: 1,
        deadline,
        waiting,
        drain: Duration::from_secs(1),
        ..Settings::default()
    };
    let path = "/v1/faulty-and-long";
    let door = Door::open_with(settings(Duration::ZERO, 16), faulty::service());
    let late = door.post(path, faulty::how("forever")).await;
    seen.note("deadline", &late, None);
    let broken = door.post("/v1/faulty", faulty::how("not_a_number")).await;
    seen.note("not a number", &broken, None);

    let door = Door::open_with(settings(Duration::from_secs(3), 1), faulty::service());
    let mut long = Vec::new();
    for _ in 0..2 {
        long.push(tokio::spawn(send(door.json(path, faulty::how("forever")))));
        tokio::time::sleep(Duration::from_millis(300)).await;
    }
    seen.note("busy", &door.post(path, faulty::how("well")).await, None);
    for one in long {
        one.await.unwrap();
    }
    door.running.stop();
    tokio::time::sleep(Duration::from_millis(100)).await;
    seen.note("ending", &door.get("/health/ready").await, None);
}

#[tokio::test]
async fn every_code_has_a_request() {
    let door = Door::open();
    let mut seen = Seen::default();
    for (body, code, pointer) in common() {
        let batch = body.starts_with("{\"items\"");
        let path = format!("/v1/torque-capacity{}", if batch { "/batch" } else { "" });
        let reply = door.post(&path, body.clone()).await;
        // a number that no double holds, or a text that ends early, has no tree to look in
        let sent = serde_json::from_str(&body).ok();
        seen.note(code, &reply, sent.as_ref());
        let errors = reply.json()["errors"].clone();
        let found = errors.as_array().unwrap().iter();
        let found: Vec<_> = found
            .map(|e| (e["code"].as_str().unwrap(), e["pointer"].as_str().unwrap()))
            .collect();
        assert!(found.contains(&(code, pointer)), "{code}: {found:?}");
    }
    for (body, code, pointer) in CSV {
        let reply = door.csv("/v1/load-test", *body).await;
        seen.note(code, &reply, None);
        let errors = reply.json()["errors"].clone();
        let mut found = errors.as_array().unwrap().iter();
        assert!(
            found.any(|e| e["code"] == *code && e["pointer"] == *pointer),
            "{code}: {errors}"
        );
    }
    for example in refused() {
        let reply = door.post(&example.path(), example.request.clone()).await;
        let sent = serde_json::from_slice(&example.request).ok();
        seen.note(&example.title(), &reply, sent.as_ref());
    }
    for (code, plan) in plans::all() {
        let reply = door.post("/v1/pile-layout", plan.to_string()).await;
        assert_eq!(
            reply.status,
            422,
            "{code}: {}",
            String::from_utf8_lossy(&reply.bytes)
                .chars()
                .take(500)
                .collect::<String>()
        );
        assert_eq!(reply.json()["errors"][0]["code"], code, "{}", reply.json());
        seen.note(code, &reply, Some(&plan));
    }
    seen.note("path", &door.get("/v1/nothing").await, None);
    seen.note("method", &door.get("/v1/torque-capacity").await, None);
    let csv = door
        .request(Method::GET, "/v1/units")
        .header("accept", "text/csv");
    seen.note("accept", &send(csv).await, None);
    let text = door.request(Method::POST, "/v1/torque-capacity").body("{}");
    seen.note("type", &send(text).await, None);
    let large = door
        .post("/v1/torque-capacity", " ".repeat((2 << 20) + 1))
        .await;
    seen.note("size", &large, None);
    of_the_service_itself(&mut seen).await;

    let kinds = KINDS
        .iter()
        .map(|k| k.slug)
        .filter(|k| !seen.kinds.contains(*k));
    let codes = catalogue::all_refusals().into_iter().map(|d| d.id);
    let codes = codes.filter(|c| !seen.codes.contains_key(*c));
    let missing: Vec<&str> = kinds.chain(codes).collect();
    assert!(missing.is_empty(), "no request brings up {missing:?}");
    let listed: BTreeSet<&str> = catalogue::all_refusals()
        .into_iter()
        .map(|d| d.id)
        .collect();
    for (code, title) in &seen.codes {
        assert!(
            listed.contains(code.as_str()),
            "{title}: `{code}` is in no catalogue"
        );
    }
}
