//! Faults of the service itself, busy pools, deadlines, clients that go away, and the end.

use std::sync::atomic::Ordering;
use std::time::{Duration, Instant};

use bearwell::app::Settings;
use bearwell_tests::{Door, send};
use serde_json::Value;

use crate::faulty::{AT_LENGTH, LENGTH, how, service};

const INLINE: &str = "/v1/faulty";
const POOLED: &str = "/v1/faulty-and-long";

fn door(settings: Settings) -> Door {
    Door::open_with(
        Settings {
            calculations: 1,
            ..settings
        },
        service(),
    )
}

fn code(problem: &Value) -> &str {
    problem["type"]
        .as_str()
        .unwrap()
        .rsplit('/')
        .next()
        .unwrap()
}

/// Waits until the one thread of the pool answers again.
async fn is_free_again(door: &Door) {
    let since = Instant::now();
    while door.post(POOLED, how("well")).await.status != 200 {
        assert!(
            since.elapsed() < Duration::from_secs(5),
            "the pool is still busy"
        );
        tokio::time::sleep(Duration::from_millis(10)).await;
    }
}

#[tokio::test]
async fn its_own_faults_say_nothing_of_their_cause() {
    let door = door(Settings::default());
    for path in [INLINE, POOLED] {
        for kind in ["not_a_number", "panic"] {
            let reply = door.post(path, how(kind)).await;
            assert_eq!(reply.status, 500, "{path} {kind}");
            assert_eq!(
                reply.header("content-type"),
                Some("application/problem+json")
            );
            assert_eq!(code(&reply.json()), "internal_error");
            assert!(!String::from_utf8(reply.bytes).unwrap().contains("secret"));
        }
        assert_eq!(
            door.post(path, how("well")).await.status,
            200,
            "{path} goes on"
        );
    }
    let body = format!(
        r#"{{"items": [{{"id": "a", "request": {}}}, {{"id": "b", "request": {}}}]}}"#,
        how("panic"),
        how("well")
    );
    let batch = door.post("/v1/faulty/batch", body).await.json();
    assert_eq!(batch["items"][0]["problem"]["status"], 500);
    assert_eq!(batch["items"][1]["answer"]["result"]["share_ratio"], 0.5);
}

#[tokio::test]
async fn a_deadline_ends_the_work() {
    let deadline = Duration::from_millis(50);
    let door = door(Settings {
        deadline,
        ..Settings::default()
    });
    let batch = format!(
        r#"{{"items": [{{"id": "a", "request": {}}}]}}"#,
        how("forever")
    );
    for (path, body) in [(POOLED, how("forever")), ("/v1/faulty/batch", batch)] {
        let reply = door.post(path, body).await;
        assert_eq!(
            (reply.status, code(&reply.json())),
            (503, "deadline_exceeded")
        );
        assert_eq!(reply.header("retry-after"), Some("1"));
        is_free_again(&door).await;
    }
}

#[tokio::test]
async fn more_than_can_wait_is_refused() {
    let door = door(Settings {
        waiting: 1,
        deadline: Duration::from_secs(3),
        ..Settings::default()
    });
    // one runs and one waits
    let mut long = Vec::new();
    for _ in 0..2 {
        long.push(tokio::spawn(send(door.json(POOLED, how("forever")))));
        tokio::time::sleep(Duration::from_millis(300)).await;
    }
    for path in [POOLED, "/v1/faulty-and-long/batch", "/v1/faulty/batch"] {
        let reply = door.post(path, how("well")).await;
        assert_eq!(
            (reply.status, code(&reply.json())),
            (503, "overloaded"),
            "{path}"
        );
        assert_eq!(reply.header("retry-after"), Some("1"));
    }
    // what is quick is answered all the same
    assert_eq!(door.post(INLINE, how("well")).await.status, 200);
    assert_eq!(door.get("/health/ready").await.status, 200);
    for one in long {
        let reply = one.await.unwrap();
        assert_eq!(code(&reply.json()), "deadline_exceeded");
    }
}

#[tokio::test]
async fn a_client_that_goes_away_ends_the_work() {
    let door = door(Settings {
        deadline: Duration::from_secs(60),
        ..Settings::default()
    });
    let gone = door
        .json(POOLED, how("forever"))
        .timeout(Duration::from_millis(200));
    gone.send().await.expect_err("the client gave up");
    is_free_again(&door).await;

    let lines: String = [how("well"), how("forever")]
        .iter()
        .enumerate()
        .map(|(at, request)| format!("{{\"id\": \"{at}\", \"request\": {request}}}\n"))
        .collect();
    let stream = door
        .request(reqwest::Method::POST, "/v1/faulty/batch")
        .header("content-type", "application/x-ndjson")
        .header("accept", "application/x-ndjson")
        .body(lines);
    let mut response = stream.send().await.unwrap();
    assert!(response.chunk().await.unwrap().is_some());
    drop(response);
    is_free_again(&door).await;
}

/// A client that does not read holds up the work: only a few finished items wait.
#[tokio::test]
async fn a_stream_waits_for_its_reader() {
    let door = door(Settings::default());
    let items = 200;
    let lines: String = (0..items)
        .map(|at| format!("{{\"id\": \"{at}\", \"request\": {}}}\n", how("at_length")))
        .collect();
    let before = AT_LENGTH.load(Ordering::SeqCst);
    let stream = door
        .request(reqwest::Method::POST, "/v1/faulty/batch")
        .header("content-type", "application/x-ndjson")
        .header("accept", "application/x-ndjson")
        .body(lines);
    let mut response = stream.send().await.unwrap();
    tokio::time::sleep(Duration::from_millis(1500)).await;
    let done = AT_LENGTH.load(Ordering::SeqCst) - before;
    assert!(
        done < items / 2,
        "{done} items are done and nobody has read one"
    );
    let mut bytes = 0;
    while let Some(chunk) = response.chunk().await.unwrap() {
        bytes += chunk.len();
    }
    assert_eq!(AT_LENGTH.load(Ordering::SeqCst) - before, items);
    assert!(bytes > items * LENGTH);
}

#[tokio::test]
async fn readiness_flips_before_the_end() {
    let door = Door::open_with(
        Settings {
            drain: Duration::from_millis(500),
            ..Settings::default()
        },
        service(),
    );
    assert_eq!(door.get("/health/ready").await.status, 200);
    door.running.stop();
    tokio::time::sleep(Duration::from_millis(100)).await;
    let ready = door.get("/health/ready").await;
    assert_eq!((ready.status, code(&ready.json())), (503, "not_ready"));
    assert_eq!(ready.header("retry-after"), Some("1"));
    assert_eq!(door.get("/health/live").await.status, 200);
    assert_eq!(door.post(INLINE, how("well")).await.status, 200);
}
