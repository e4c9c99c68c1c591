//! Batches as JSON and one item a line.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use bearwell_tests::{Door, Example, Reply, answered, send};
use reqwest::Method;
use serde_json::{Value, json};
use sha2::{Digest, Sha256};

const NDJSON: &str = "application/x-ndjson";

fn linnet(noun: &str) -> (Example, Value) {
    let found = answered()
        .into_iter()
        .find(|e| e.noun == noun && e.name == "linnet");
    let example = found.unwrap_or_else(|| panic!("{noun} has no linnet"));
    let request = serde_json::from_slice(&example.request).unwrap();
    (example, request)
}

async fn lines(door: &Door, path: &str, media: &str, body: String) -> Reply {
    let request = door
        .request(Method::POST, path)
        .header("content-type", media);
    send(request.header("accept", NDJSON).body(body)).await
}

#[tokio::test]
async fn items_stand_for_themselves_and_in_order() {
    let door = Door::open();
    let (example, request) = linnet("torque-capacity");
    let path = format!("{}/batch", example.path());
    let mut items: Vec<Value> = (0..20)
        .map(|at| json!({ "id": format!("lot-{at}"), "request": request.clone() }))
        .collect();
    items[3]["request"]["shaft"] = json!({ "round": 3 });
    items[7]["request"] = json!(null);
    let body = json!({ "items": items }).to_string();
    let reply = door.post(&path, body).await;
    assert_eq!(reply.status, 200);
    let batch = reply.json();
    assert_eq!(
        batch["counts"],
        json!({ "item_count": 20, "answer_count": 18, "problem_count": 2 })
    );
    let single = door.post(&example.path(), request.to_string()).await;
    let results = batch["items"].as_array().unwrap();
    for (at, result) in results.iter().enumerate() {
        assert_eq!(result["id"], format!("lot-{at}"));
        if [3, 7].contains(&at) {
            assert_eq!(result["problem"]["status"], 422);
            assert_eq!(result.get("answer"), None);
        } else {
            assert_eq!(result["answer"], single.json());
            assert_eq!(result.get("problem"), None);
        }
    }
    assert_eq!(
        results[3]["problem"]["errors"][0]["pointer"],
        "/shaft/round"
    );
    // the bytes of an answer within a batch are those of the answer alone
    let text = String::from_utf8(reply.bytes).unwrap();
    let alone = String::from_utf8(single.bytes).unwrap();
    assert!(text.contains(alone.trim_end()));
}

#[tokio::test]
async fn defaults_fill_what_an_item_does_not_set() {
    let door = Door::open();
    let (example, request) = linnet("torque-capacity");
    let path = format!("{}/batch", example.path());
    let label = |text: &str| json!({ "label": text });
    let body = json!({
        "defaults": request,
        "items": [
            { "id": "own", "request": label("own") },
            { "id": "null", "request": { "label": null } },
            { "id": "all", "request": {} },
            { "id": "wrong", "request": 3 },
            { "id": "bad", "request": { "label": "" } },
        ],
    });
    let batch = door.post(&path, body.to_string()).await.json();
    let answer = |at: usize| &batch["items"][at]["answer"];
    assert_eq!(answer(0)["result"]["label"], "own");
    let single = door.post(&example.path(), request.to_string()).await.json();
    assert_eq!(answer(1), &single, "null is absent, so the default holds");
    assert_eq!(answer(2), &single);
    assert_eq!(
        batch["items"][3]["problem"]["errors"][0]["code"],
        "wrong_type"
    );
    assert_eq!(
        batch["items"][4]["problem"]["errors"][0]["pointer"],
        "/label"
    );
}

#[tokio::test]
async fn an_envelope_that_cannot_be_read_is_a_problem() {
    let door = Door::open();
    let path = "/v1/torque-capacity/batch";
    let many: Vec<Value> = (0..1001)
        .map(|at| json!({ "id": at.to_string(), "request": {} }))
        .collect();
    for (body, status, pointer, code) in [
        ("{".to_owned(), 400, "", "not_json"),
        ("{}".to_owned(), 422, "", "missing_member"),
        ("[]".to_owned(), 422, "", "wrong_type"),
        (
            json!({ "items": [] }).to_string(),
            422,
            "/items",
            "list_too_short",
        ),
        (
            json!({ "items": many }).to_string(),
            422,
            "/items",
            "list_too_long",
        ),
        (
            json!({ "items": [{ "id": "a" }] }).to_string(),
            422,
            "/items/0",
            "missing_member",
        ),
        (
            json!({ "items": [{ "id": 1, "request": {} }] }).to_string(),
            422,
            "/items/0/id",
            "wrong_type",
        ),
        (
            json!({ "items": [{ "id": "", "request": {} }] }).to_string(),
            422,
            "/items/0/id",
            "text_length",
        ),
        (
            json!({ "items": [{ "id": "a", "request": {} }, { "id": "a", "request": {} }] })
                .to_string(),
            422,
            "/items/1/id",
            "duplicate_label",
        ),
        (
            json!({ "items": [{ "id": "a", "request": {}, "x": 1 }] }).to_string(),
            422,
            "/items/0/x",
            "unknown_member",
        ),
        (
            json!({ "item": [] , "items": []}).to_string(),
            422,
            "/item",
            "unknown_member",
        ),
        (
            json!({ "defaults": [], "items": []}).to_string(),
            422,
            "/defaults",
            "wrong_type",
        ),
    ] {
        let reply = door.post(path, body.clone()).await;
        assert_eq!(reply.status, status, "{body}");
        let issue = &reply.json()["errors"][0];
        assert_eq!(
            (&issue["pointer"], &issue["code"]),
            (&json!(pointer), &json!(code))
        );
    }
}

#[tokio::test]
async fn lines_come_in_order_and_end_with_the_counts() {
    let door = Door::open();
    let (example, request) = linnet("helix-capacity");
    let path = format!("{}/batch", example.path());
    let item = |at: usize| {
        let request = if at == 5 { json!({}) } else { request.clone() };
        json!({ "id": format!("lot-{at}"), "request": request })
    };
    let sent: String = (0..30).map(|at| format!("{}\n", item(at))).collect();
    let as_json = json!({ "items": (0..30).map(item).collect::<Vec<_>>() }).to_string();
    let plain = door.post(&path, as_json.clone()).await.json();
    for (media, body) in [(NDJSON, sent.clone() + "\n"), ("application/json", as_json)] {
        let reply = lines(&door, &path, media, body).await;
        assert_eq!(
            (reply.status, reply.header("content-type")),
            (200, Some(NDJSON))
        );
        let text = String::from_utf8(reply.bytes).unwrap();
        let all: Vec<&str> = text.lines().collect();
        let (last, items) = all.split_last().unwrap();
        for (at, line) in items.iter().enumerate() {
            let line: Value = serde_json::from_str(line).unwrap();
            assert_eq!(line, plain["items"][at]);
        }
        let last: Value = serde_json::from_str(last).unwrap();
        assert_eq!(last["counts"], plain["counts"]);
        let before = text.len() - all.last().unwrap().len() - 1;
        let sum = STANDARD.encode(Sha256::digest(&text.as_bytes()[..before]));
        assert_eq!(last["content_digest"], format!("sha-256=:{sum}:"));
    }
    // lines in, one JSON value out
    let request = door
        .request(Method::POST, &path)
        .header("content-type", NDJSON);
    assert_eq!(send(request.body(sent)).await.json(), plain);
}

#[tokio::test]
async fn a_line_that_cannot_be_read_is_named() {
    let door = Door::open();
    let good = "{\"id\": \"a\", \"request\": {}}\n";
    for (bad, status, pointer, code) in [
        ("{\"id\": \"b\"", 400, "/1", "not_json"),
        (
            "{\"id\": \"b\", \"requst\": {}}",
            422,
            "/1",
            "missing_member",
        ),
        (
            "{\"id\": \"a\", \"request\": {}}",
            422,
            "/1/id",
            "duplicate_label",
        ),
    ] {
        let body = format!("{good}{bad}\n");
        let reply = lines(&door, "/v1/torque-capacity/batch", NDJSON, body).await;
        assert_eq!(reply.status, status, "{bad}");
        let problem = reply.json();
        let issue = &problem["errors"][0];
        assert_eq!(
            (&issue["pointer"], &issue["code"]),
            (&json!(pointer), &json!(code))
        );
        if status != 422 || code == "missing_member" {
            assert!(problem["detail"].as_str().unwrap().starts_with("line 2"));
        }
    }
}

/// Two hundred lots, two of them bad: the others are answered, and again with the same
/// bytes.
#[tokio::test]
async fn the_same_bytes_again() {
    let door = Door::open();
    let (example, request) = linnet("frost-embedment");
    let items: Vec<Value> = (0..200)
        .map(|at| match at {
            17 => json!({ "id": "lot-17", "request": { "nothing": 1 } }),
            99 => json!({ "id": "lot-99", "request": [] }),
            _ => json!({ "id": format!("lot-{at}"), "request": request }),
        })
        .collect();
    let body = json!({ "items": items }).to_string();
    let path = format!("{}/batch", example.path());
    let (first, second) = (
        door.post(&path, body.clone()).await,
        door.post(&path, body).await,
    );
    assert_eq!(
        first.json()["counts"],
        json!({ "item_count": 200, "answer_count": 198, "problem_count": 2 })
    );
    assert!(first.bytes == second.bytes);
    assert_eq!(
        first.header("content-digest"),
        second.header("content-digest")
    );
}
