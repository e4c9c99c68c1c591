//! The client crate against the real service, and against one that is busy.

use std::io::{Read, Write};
use std::net::TcpListener;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;
use std::time::Duration;

use bearwell_client::{Client, Error, Outcome};
use bearwell_engine::contract::{Call, Include, Options, Verdict};
use bearwell_engine::quantity::System;
use bearwell_engine::torque::{self, TorqueCapacity};
use bearwell_engine::{frost, helix, layout};
use bearwell_tests::{Door, answered};
use serde::de::DeserializeOwned;

fn linnet<R: DeserializeOwned>(noun: &str) -> Call<R> {
    let found = answered()
        .into_iter()
        .find(|e| e.noun == noun && e.name == "linnet");
    serde_json::from_slice(&found.unwrap().request).unwrap()
}

#[tokio::test]
async fn every_calculation_gives_a_typed_answer() {
    let door = Door::open();
    let client = Client::new(door.base()).unwrap();
    let torque = linnet::<torque::Request>("torque-capacity");
    let answer = client.torque_capacity(torque).await.unwrap();
    assert_ne!(answer.verdict, Verdict::NotAsked);
    assert!(!answer.checks.is_empty() && !answer.methods.is_empty());
    let helix = linnet::<helix::Request>("helix-capacity");
    client.helix_capacity(helix).await.unwrap();
    let frost = linnet::<frost::Request>("frost-embedment");
    client.frost_embedment(frost).await.unwrap();
    let layout = linnet::<layout::Request>("pile-layout");
    client.pile_layout(layout).await.unwrap();
}

#[tokio::test]
async fn options_travel_and_units_do_not_change_an_answer() {
    let door = Door::open();
    let client = Client::new(door.base()).unwrap();
    let request = linnet::<torque::Request>("torque-capacity").request;
    let ask = |system| Call {
        options: Options {
            output_units: Some(system),
            include: Some(vec![Include::Steps]),
            ..Options::default()
        },
        request: request.clone(),
    };
    let si = client.torque_capacity(ask(System::Si)).await.unwrap();
    let us = client
        .torque_capacity(ask(System::UsCustomary))
        .await
        .unwrap();
    assert!(si.steps.is_some_and(|steps| !steps.is_empty()));
    assert_eq!(si.provenance, us.provenance);
    assert_eq!(si.verdict, us.verdict);
    for (a, b) in si.checks.iter().zip(&us.checks) {
        assert_eq!(a.utilisation_ratio, b.utilisation_ratio, "{}", a.id);
    }
}

#[tokio::test]
async fn a_refusal_is_a_typed_problem() {
    let door = Door::open();
    let client = Client::new(door.base()).unwrap();
    let mut call = linnet::<torque::Request>("torque-capacity");
    call.options.require_basis = Some("1999.1".to_owned());
    let error = client.torque_capacity(call).await.unwrap_err();
    let problem = error.problem().expect("a problem");
    assert_eq!(
        (problem.status, problem.code()),
        (422, "values_out_of_range")
    );
    assert!(problem.has("basis_differs"));
    assert_eq!(problem.stage.as_deref(), Some("values"));
    assert_eq!(problem.errors[0].pointer, "/require_basis");
}

#[tokio::test]
async fn a_batch_keeps_order_and_problems() {
    let door = Door::open();
    let client = Client::new(door.base()).unwrap();
    let good = linnet::<torque::Request>("torque-capacity");
    let mut bad = good.clone();
    bad.options.form = Some("plan".to_owned());
    let items = [("a", &good), ("b", &bad), ("c", &good)];
    let items: Vec<_> = items.map(|(id, call)| (id.to_owned(), call.clone())).into();
    let results = client.batch::<TorqueCapacity>(&items).await.unwrap();
    let ids: Vec<_> = results.iter().map(|r| r.id.as_str()).collect();
    assert_eq!(ids, ["a", "b", "c"]);
    assert!(matches!(results[0].outcome, Outcome::Answer(_)));
    let Outcome::Problem(problem) = &results[1].outcome else {
        panic!("b is answered")
    };
    assert!(problem.has("unknown_form"));
}

/// A server that gives these responses one after the other, then the last again and
/// again; also how often it was asked.
fn scripted(responses: Vec<String>) -> (String, Arc<AtomicUsize>) {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let base = format!("http://{}", listener.local_addr().unwrap());
    let asked = Arc::new(AtomicUsize::new(0));
    let count = asked.clone();
    thread::spawn(move || {
        for connection in listener.incoming() {
            let mut connection = connection.unwrap();
            let mut request = Vec::new();
            let mut buffer = [0; 4096];
            // a request ends here where its length says so
            loop {
                let n = connection.read(&mut buffer).unwrap();
                request.extend_from_slice(&buffer[..n]);
                let text = String::from_utf8_lossy(&request).to_lowercase();
                let Some(head) = text.find("\r\n\r\n") else {
                    continue;
                };
                let length = text.split("content-length: ").nth(1).unwrap();
                let length: usize = length.split("\r\n").next().unwrap().parse().unwrap();
                if n == 0 || request.len() >= head + 4 + length {
                    break;
                }
            }
            let at = count
                .fetch_add(1, Ordering::SeqCst)
                .min(responses.len() - 1);
            connection.write_all(responses[at].as_bytes()).unwrap();
        }
    });
    (base, asked)
}

fn response(status: &str, headers: &str, body: &str) -> String {
    format!(
        "HTTP/1.1 {status}\r\ncontent-length: {}\r\nconnection: close\r\n{headers}\r\n{body}",
        body.len()
    )
}

fn busy(status: &str) -> String {
    let body =
        r#"{"type":"/problems/overloaded","title":"t","status":503,"detail":"d","errors":[]}"#;
    response(status, "retry-after: 0\r\n", body)
}

#[tokio::test]
async fn a_busy_service_is_asked_again() {
    let found = answered()
        .into_iter()
        .find(|e| e.noun == "torque-capacity" && e.name == "linnet");
    let golden = std::fs::read_to_string(found.unwrap().golden).unwrap();
    let ok = response("200 OK", "", &golden);
    let (base, asked) = scripted(vec![busy("503 Busy"), busy("429 Slow down"), ok]);
    let client = Client::new(base).unwrap();
    let call = linnet::<torque::Request>("torque-capacity");
    client.torque_capacity(call).await.unwrap();
    assert_eq!(asked.load(Ordering::SeqCst), 3);
}

#[tokio::test]
async fn but_not_for_ever_and_not_after_a_refusal() {
    let call = linnet::<torque::Request>("torque-capacity");
    let (base, asked) = scripted(vec![busy("503 Busy")]);
    let client = Client::builder(base).attempts(2).build().unwrap();
    let error = client.torque_capacity(call.clone()).await.unwrap_err();
    assert_eq!(error.problem().map(|p| p.code()), Some("overloaded"));
    assert_eq!(asked.load(Ordering::SeqCst), 2);

    let (base, asked) = scripted(vec![response("422 No", "", "<html>")]);
    let client = Client::new(base).unwrap();
    let error = client.torque_capacity(call.clone()).await.unwrap_err();
    assert!(
        matches!(error, Error::Unreadable { status: 422, .. }),
        "{error}"
    );
    assert_eq!(asked.load(Ordering::SeqCst), 1);
}

/// It waits as long as it is asked to, within its own bound.
#[tokio::test]
async fn the_wait_is_the_one_asked_for() {
    let call = linnet::<torque::Request>("torque-capacity");
    let slow = response("503 Busy", "retry-after: 1\r\n", "{}");
    let (base, _) = scripted(vec![slow.clone(), busy("503 Busy")]);
    let client = Client::builder(base).attempts(2).build().unwrap();
    let since = std::time::Instant::now();
    client.torque_capacity(call.clone()).await.unwrap_err();
    assert!(since.elapsed() >= Duration::from_secs(1));

    let patient = response("503 Busy", "retry-after: 3600\r\n", "{}");
    let (base, _) = scripted(vec![patient, busy("503 Busy")]);
    let client = Client::builder(base)
        .attempts(2)
        .longest_wait(Duration::from_millis(10));
    let since = std::time::Instant::now();
    client
        .build()
        .unwrap()
        .torque_capacity(call)
        .await
        .unwrap_err();
    assert!(since.elapsed() < Duration::from_secs(5));
}
