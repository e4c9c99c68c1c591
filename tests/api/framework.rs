//! What every response has, and what the framework itself would say differently: paths,
//! methods, media types, sizes.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use bearwell::service::Service;
use bearwell_tests::{Door, Reply, answered, send};
use reqwest::Method;
use sha2::{Digest, Sha256};

/// A problem of this kind, well formed.
fn is(reply: &Reply, status: u16, code: &str) {
    assert_eq!(
        reply.status,
        status,
        "{}",
        String::from_utf8_lossy(&reply.bytes)
    );
    assert_eq!(
        reply.header("content-type"),
        Some("application/problem+json")
    );
    assert_eq!(reply.header("bearwell-version"), Some(bearwell::VERSION));
    assert!(reply.header("x-request-id").is_some());
    let problem = reply.json();
    assert_eq!(problem["type"], format!("/problems/{code}"));
    assert_eq!(problem["status"], status);
    for member in ["title", "detail"] {
        assert!(
            problem[member].as_str().is_some_and(|t| !t.is_empty()),
            "{member}"
        );
    }
    assert!(problem["errors"].is_array());
    assert_eq!(reply.bytes.last(), Some(&b'\n'));
}

#[tokio::test]
async fn unknown_paths() {
    let door = Door::open();
    for path in [
        "/",
        "/v1",
        "/v1/",
        "/v1/helix",
        "/v1/helix-capacity/",
        "/%ff",
        "/..%2f",
        "/problems/nothing",
    ] {
        is(&door.get(path).await, 404, "unknown_path");
    }
    is(&door.post("/v1/nothing", "{}").await, 404, "unknown_path");
}

#[tokio::test]
async fn other_methods_name_those_allowed() {
    let door = Door::open();
    for entry in Service::standard().entries {
        for path in [
            format!("/v1/{}", entry.name),
            format!("/v1/{}/batch", entry.name),
        ] {
            for method in [
                Method::GET,
                Method::PUT,
                Method::DELETE,
                Method::PATCH,
                Method::OPTIONS,
            ] {
                let reply = send(door.request(method, &path)).await;
                is(&reply, 405, "method_not_allowed");
                assert_eq!(reply.header("allow"), Some("POST"));
            }
        }
    }
    for path in [
        "/version",
        "/v1/units",
        "/openapi.json",
        "/problems",
        "/problems/overloaded",
        "/health/ready",
    ] {
        let reply = door.post(path, "{}").await;
        is(&reply, 405, "method_not_allowed");
        assert_eq!(reply.header("allow"), Some("GET, HEAD"));
        let head = send(door.request(Method::HEAD, path)).await;
        assert_eq!((head.status, head.bytes.len()), (200, 0), "{path}");
        let get = door.get(path).await;
        assert_eq!(
            head.header("content-digest"),
            get.header("content-digest"),
            "{path}"
        );
    }
}

#[tokio::test]
async fn media_types_that_cannot_be_had() {
    let door = Door::open();
    let example = &answered()[0];
    for accept in ["text/csv", "application/json;q=0", "image/png, text/html"] {
        let request = door.json(&example.path(), example.request.clone());
        let reply = send(request.header("accept", accept)).await;
        is(&reply, 406, "not_acceptable");
        assert!(
            reply.json()["detail"]
                .as_str()
                .unwrap()
                .contains("application/json")
        );
    }
    for accept in [
        "*/*",
        "application/*;q=0.2",
        "text/csv, application/json",
        "application/JSON",
    ] {
        let request = door.json(&example.path(), example.request.clone());
        let reply = send(request.header("accept", accept)).await;
        assert_eq!(reply.status, 200, "{accept}");
        assert_eq!(reply.header("content-type"), Some("application/json"));
    }
    let csv = send(
        door.request(Method::GET, "/v1/limits")
            .header("accept", "text/csv"),
    )
    .await;
    is(&csv, 406, "not_acceptable");
}

#[tokio::test]
async fn media_types_that_are_not_read() {
    let door = Door::open();
    let example = &answered()[0];
    let path = example.path();
    let body = || example.request.clone();
    let post = || door.request(Method::POST, &path);
    is(
        &send(post().body(body())).await,
        415,
        "unsupported_media_type",
    );
    for given in [
        "text/plain",
        "application/x-ndjson",
        "application/json; charset=latin-1",
        "application/xml",
    ] {
        let reply = send(post().header("content-type", given).body(body())).await;
        is(&reply, 415, "unsupported_media_type");
    }
    for given in [
        "application/json; charset=utf-8",
        "Application/JSON",
        "application/json;charset=\"UTF-8\"",
    ] {
        let reply = send(post().header("content-type", given).body(body())).await;
        assert_eq!(reply.status, 200, "{given}");
    }
    let coded = door.json(&path, body()).header("content-encoding", "gzip");
    is(&send(coded).await, 415, "unsupported_media_type");
}

#[tokio::test]
async fn bodies_that_are_too_large() {
    let door = Door::open();
    let path = answered()[0].path();
    let long = |bytes: usize| " ".repeat(bytes);
    is(
        &door.post(&path, long((2 << 20) + 1)).await,
        413,
        "body_too_large",
    );
    is(
        &door.post(&path, long(2 << 20)).await,
        400,
        "malformed_body",
    );
    let batch = format!("{path}/batch");
    is(
        &door.post(&batch, long((16 << 20) + 1)).await,
        413,
        "body_too_large",
    );
    is(
        &door.post(&batch, long(2 << 20)).await,
        400,
        "malformed_body",
    );
}

#[tokio::test]
async fn what_2xx_carries() {
    let door = Door::open();
    let example = &answered()[0];
    let mut replies = vec![door.post(&example.path(), example.request.clone()).await];
    for path in [
        "/version",
        "/v1/references",
        "/openapi.json",
        "/problems",
        "/health/live",
    ] {
        replies.push(door.get(path).await);
    }
    for reply in replies {
        assert_eq!(reply.status, 200);
        assert_eq!(reply.header("vary"), Some("Accept"));
        assert_eq!(reply.header("bearwell-version"), Some(bearwell::VERSION));
        assert_eq!(reply.header("x-content-type-options"), Some("nosniff"));
        let sum = STANDARD.encode(Sha256::digest(&reply.bytes));
        assert_eq!(
            reply.header("content-digest"),
            Some(&*format!("sha-256=:{sum}:"))
        );
    }
}

#[tokio::test]
async fn request_ids() {
    let door = Door::open();
    let own = send(
        door.request(Method::GET, "/version")
            .header("x-request-id", "lot-31"),
    )
    .await;
    assert_eq!(own.header("x-request-id"), Some("lot-31"));
    let (a, b) = (door.get("/version").await, door.get("/version").await);
    assert_ne!(a.header("x-request-id"), b.header("x-request-id"));
    let long = "x".repeat(65);
    let refused = send(
        door.request(Method::GET, "/version")
            .header("x-request-id", &long),
    )
    .await;
    assert_ne!(refused.header("x-request-id"), Some(&*long));
}
