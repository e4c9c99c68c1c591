//! Drawings over HTTP: which calculations have them, what comes with them, and that they
//! are the committed pictures. What a sheet shows is judged where it is drawn.

use bearwell_tests::{Door, Reply, answered, openapi, send};
use serde_json::{Value, json};

const SVG: &str = "image/svg+xml";

fn request(noun: &str, name: &str) -> Value {
    let path = openapi().join(format!("examples/{noun}/{name}.json"));
    serde_json::from_slice(&std::fs::read(path).expect("an example")).expect("JSON")
}

async fn drawn(door: &Door, noun: &str, body: &Value) -> Reply {
    let path = format!("/v1/{noun}");
    send(door.json(&path, body.to_string()).header("accept", SVG)).await
}

#[tokio::test]
async fn every_example_of_a_noun_with_a_sheet_can_be_had_as_a_drawing() {
    let door = Door::open();
    let mut count = 0;
    for example in answered() {
        let drawn = [
            "helix-capacity",
            "installation-job",
            "installation-record",
            "pile-layout",
            "pile-relocation",
        ];
        if !drawn.contains(&example.noun.as_str()) {
            continue;
        }
        let ask = door.json(&example.path(), example.request.clone());
        let reply = send(ask.header("accept", SVG)).await;
        assert_eq!(reply.status, 200, "{}", example.title());
        assert_eq!(reply.header("content-type"), Some(SVG));
        assert_eq!(reply.header("vary"), Some("Accept"));
        let policy = reply.header("content-security-policy");
        assert!(policy.is_some_and(|p| p.contains("default-src 'none'")));
        assert!(reply.header("content-digest").is_some());
        assert!(reply.bytes.starts_with(b"<svg "), "{}", example.title());
        count += 1;
    }
    assert!(count > 60, "{count}");
}

#[tokio::test]
async fn what_is_sent_is_the_committed_picture() {
    let door = Door::open();
    for (noun, name, picture) in [
        (
            "helix-capacity",
            "depth-curve-linnet",
            "helix-depth-curve-linnet",
        ),
        (
            "helix-capacity",
            "depth-curve-sizerin",
            "helix-depth-curve-sizerin",
        ),
        ("installation-record", "linnet", "record-linnet"),
        ("pile-layout", "linnet", "linnet"),
    ] {
        // the paper that goes with the units of the answer
        let reply = drawn(&door, noun, &request(noun, name)).await;
        let path = openapi().join(format!("pictures/{picture}.svg"));
        let committed = std::fs::read(path).expect("a picture");
        assert!(reply.bytes == committed, "{picture}.svg differs");
    }
}

#[tokio::test]
async fn paper_units_and_form_can_be_chosen() {
    let door = Door::open();
    let mut body = request("helix-capacity", "linnet");
    body["paper"] = json!("a4");
    body["form"] = json!("section");
    let text = |r: &Reply| String::from_utf8_lossy(&r.bytes).into_owned();
    let a4 = drawn(&door, "helix-capacity", &body).await;
    assert!(text(&a4).contains("width=\"297mm\""));
    assert!(text(&a4).contains("lbf"));
    body["paper"] = json!("letter");
    body["output_units"] = json!("si");
    let letter = drawn(&door, "helix-capacity", &body).await;
    assert!(text(&letter).contains("width=\"279.4mm\""));
    assert!(!text(&letter).contains("lbf"));
    body["form"] = json!("plan");
    let refused = drawn(&door, "helix-capacity", &body).await;
    assert_eq!(refused.status, 422);
    let problem = refused.json();
    assert_eq!(problem["errors"][0]["code"], "unknown_form");
    assert_eq!(problem["errors"][0]["pointer"], "/form");
    assert!(
        problem["errors"][0]["detail"]
            .to_string()
            .contains("section")
    );
}

/// The five rows of the pile that stopped on debris, as they were judged.
#[tokio::test]
async fn the_rows_of_a_log_can_be_had_as_a_table() {
    let door = Door::open();
    let mut body = request("installation-record", "linnet-stopped-on-debris");
    body["notes"] = json!([{"row": 4, "text": "=stopped, brick"}]);
    let ask = door.json("/v1/installation-record", body.to_string());
    let reply = send(ask.header("accept", "text/csv")).await;
    assert_eq!(reply.status, 200);
    let text = String::from_utf8_lossy(&reply.bytes).into_owned();
    let lines: Vec<&str> = text.split("\r\n").collect();
    assert_eq!(
        lines[0],
        "row [1],depth [ft],torque [ft_lbf],standing,advance_ratio [1],rotation_speed [rpm],note"
    );
    assert_eq!(lines.len(), 7, "{text}");
    assert!(lines[1].starts_with("0,1,400,counts,"), "{text}");
    assert!(lines[5].starts_with("4,5,5500,unconfirmed,"), "{text}");
    assert!(lines[5].ends_with(",\"'=stopped, brick\""), "{text}");
}

#[tokio::test]
async fn labels_reach_the_drawing_as_text_alone() {
    let door = Door::open();
    let mut body = request("helix-capacity", "sizerin");
    let hostile = "</text><script>alert(1)</script>";
    body["pile"]["label"] = json!(hostile);
    body["soil"]["layers"][0]["label"] = json!(hostile);
    body["pile"]["helices"][0]["label"] = json!("\u{202e}<image href='x'/>");
    let reply = drawn(&door, "helix-capacity", &body).await;
    let text = String::from_utf8_lossy(&reply.bytes);
    assert!(!text.contains("<script") && !text.contains("<image") && !text.contains('\u{202e}'));
    assert!(text.contains("&lt;/text&gt;"));
}

#[tokio::test]
async fn a_refusal_is_a_problem_also_where_a_drawing_was_asked_for() {
    let door = Door::open();
    let mut body = request("helix-capacity", "linnet");
    body["pile"]["helices"][0]["depth"]["value"] = json!(99);
    let reply = drawn(&door, "helix-capacity", &body).await;
    assert_eq!(reply.status, 422);
    assert_eq!(
        reply.header("content-type"),
        Some("application/problem+json")
    );
}
