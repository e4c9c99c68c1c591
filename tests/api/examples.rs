//! Every example under `openapi/examples` over HTTP, on the command line, with one worker
//! and with four. `BEARWELL_BLESS=1` approves what is answered now.

use bearwell::app::Settings;
use bearwell::command::calc;
use bearwell::service::Service;
use bearwell_tests::{Door, Example, Reply, answered, refused};
use serde_json::{Value, json};

fn approve(example: &Example, reply: &Reply, differ: &mut Vec<String>) {
    if std::env::var_os("BEARWELL_BLESS").is_some() {
        std::fs::write(&example.golden, &reply.bytes).unwrap();
    }
    match std::fs::read(&example.golden) {
        Ok(golden) if golden == reply.bytes => {}
        Ok(_) => differ.push(format!(
            "{} differs from its approved bytes",
            example.title()
        )),
        Err(_) => differ.push(format!("{} was never approved", example.title())),
    }
}

fn entries<'a>(answer: &'a Value, list: &str) -> &'a Vec<Value> {
    answer[list]
        .as_array()
        .unwrap_or_else(|| panic!("no list `{list}`"))
}

#[tokio::test]
async fn each_is_answered_as_approved() {
    let door = Door::open();
    let mut differ = Vec::new();
    for example in answered() {
        let reply = door.post(&example.path(), example.request.clone()).await;
        assert_eq!(
            reply.status,
            200,
            "{}: {}",
            example.title(),
            String::from_utf8_lossy(&reply.bytes)
        );
        let answer = reply.json();
        let title = example.title();
        let verdict = answer["verdict"].as_str().unwrap();
        // where nothing was asked, what stands among the checks only advises
        let decide = |c: &Value| ["fail", "not_evaluated"].iter().any(|s| c["status"] == *s);
        let checks = entries(&answer, "checks");
        if verdict == "not_asked" {
            assert!(!checks.iter().any(decide), "{title}: {checks:?}");
        } else {
            assert!(!checks.is_empty(), "{title}: {verdict} without a check");
        }
        assert!(
            !entries(&answer, "methods").is_empty(),
            "{title}: no method"
        );
        assert!(
            !entries(&answer, "cautions").is_empty(),
            "{title}: no caution"
        );
        if ["reject", "provisional"].contains(&verdict) {
            assert!(
                !entries(&answer, "verdict_reasons").is_empty(),
                "{title}: no reason"
            );
        }
        let digest = answer["provenance"]["request_digest"].as_str().unwrap();
        assert_eq!(digest.len(), 64, "{title}");
        no_null(&answer, &title);
        approve(&example, &reply, &mut differ);
    }
    assert!(differ.is_empty(), "{}", differ.join("\n"));
}

/// Nothing is null, and every number that has a unit beside it is finite by being JSON.
fn no_null(value: &Value, title: &str) {
    match value {
        Value::Null => panic!("{title}: null in an answer"),
        Value::Object(members) => members.values().for_each(|v| no_null(v, title)),
        Value::Array(items) => items.iter().for_each(|v| no_null(v, title)),
        _ => {}
    }
}

/// Answers in which nothing is calculated: words, classes, or why there is no number.
const NO_STEPS: [&str; 9] = [
    "corrosion-loss/linnet-aggressive",
    "corrosion-loss/organic-soil",
    "ground-heave/ex-2",
    "ground-heave/ex-3",
    "ground-heave/ex-3-by-expansion-index",
    "ground-heave/ex-3-not-known",
    "ground-heave/hv-2",
    "ground-heave/sand-possibly",
    "ground-heave/very-fine-silty-sand",
];

#[tokio::test]
async fn each_shows_its_steps() {
    let door = Door::open();
    for example in answered() {
        let mut request: Value = serde_json::from_slice(&example.request).unwrap();
        request["include"] = json!(["steps"]);
        let reply = door.post(&example.path(), request.to_string()).await;
        let answer = reply.json();
        let title = example.title();
        let steps = entries(&answer, "steps");
        assert_eq!(steps.is_empty(), NO_STEPS.contains(&&*title), "{title}");
        for step in steps {
            for text in ["symbol", "equation", "unit"] {
                let found = step[text].as_str().unwrap_or_default();
                assert!(!found.is_empty(), "{title}: no {text} in {step}");
            }
            assert!(step["value"].is_number(), "{title}: no value in {step}");
            assert!(
                step["source"]["status"].is_string(),
                "{title}: no status in {step}"
            );
        }
        request["include"] = Value::Null;
        let without = door.post(&example.path(), request.to_string()).await.json();
        assert_eq!(without.get("steps"), None, "{title}");
    }
}

#[tokio::test]
async fn each_refused_one_is_refused_as_approved() {
    let door = Door::open();
    let mut differ = Vec::new();
    for example in refused() {
        let reply = door.post(&example.path(), example.request.clone()).await;
        let title = example.title();
        assert!(
            [400, 422].contains(&reply.status),
            "{title}: {}",
            reply.status
        );
        assert_eq!(
            reply.header("content-type"),
            Some("application/problem+json"),
            "{title}"
        );
        let problem = reply.json();
        assert!(problem["stage"].is_string(), "{title}");
        assert!(!entries(&problem, "errors").is_empty(), "{title}");
        approve(&example, &reply, &mut differ);
    }
    assert!(differ.is_empty(), "{}", differ.join("\n"));
}

/// The command line gives the bytes of HTTP, and so does any number of workers.
#[tokio::test]
async fn every_door_gives_the_same_bytes() {
    let service = Service::standard();
    let workers = |workers| {
        let settings = Settings {
            workers,
            ..Settings::default()
        };
        Door::open_with(settings, service)
    };
    let (one, four) = (workers(1), workers(4));
    for example in answered().into_iter().chain(refused()) {
        let title = example.title();
        let entry = service
            .entry(&example.noun)
            .unwrap_or_else(|| panic!("{title}"));
        for media in entry.media() {
            let line = calc(service, entry, &example.request, media, None)
                .unwrap_or_else(|problem| problem.to_bytes());
            for door in [&one, &four] {
                let request = door.json(&example.path(), example.request.clone());
                let reply = bearwell_tests::send(request.header("accept", media)).await;
                assert!(reply.bytes == line, "{title} as {media}");
            }
        }
    }
}

#[test]
fn every_calculation_has_its_examples() {
    let answered = answered();
    for entry in Service::standard().entries {
        let of_noun = |e: &&Example| e.noun == entry.name;
        let mut names = answered.iter().filter(of_noun).map(|e| e.name.as_str());
        assert!(
            names.any(|name| name == "linnet"),
            "{} has no linnet.json",
            entry.name
        );
        assert!(
            refused().iter().any(|e| e.noun == entry.name),
            "{}",
            entry.name
        );
    }
    for example in answered.iter().chain(&refused()) {
        assert!(
            Service::standard().entry(&example.noun).is_some(),
            "{}",
            example.title()
        );
    }
}
