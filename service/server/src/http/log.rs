//! What happens around every request: an id, the headers all responses carry, one line
//! in the log.

use std::sync::atomic::Ordering;
use std::time::Instant;

use actix_web::Error;
use actix_web::body::{BoxBody, MessageBody};
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::http::header::{HeaderName, HeaderValue};
use actix_web::middleware::Next;
use actix_web::web::Data;
use tracing::Instrument as _;

use super::State;
use crate::problem::Problem;

const REQUEST_ID: HeaderName = HeaderName::from_static("x-request-id");
const VERSION: HeaderName = HeaderName::from_static("bearwell-version");
const NO_SNIFF: HeaderName = HeaderName::from_static("x-content-type-options");

/// Wraps every request.
pub async fn log(
    request: ServiceRequest,
    next: Next<impl MessageBody + 'static>,
) -> Result<ServiceResponse<BoxBody>, Error> {
    let began = Instant::now();
    let id = id(&request);
    let (method, path) = (request.method().clone(), request.path().to_owned());
    let span = tracing::error_span!("call", request_id = id);
    // an error of the framework itself says nothing of its cause
    let mut response = match next.call(request).instrument(span.clone()).await {
        Ok(response) => response.map_into_boxed_body(),
        Err(_) => return Err(Problem::internal().into()),
    };
    let headers = response.headers_mut();
    headers.insert(VERSION, HeaderValue::from_static(crate::VERSION));
    headers.insert(NO_SNIFF, HeaderValue::from_static("nosniff"));
    if let Ok(value) = HeaderValue::from_str(&id) {
        headers.insert(REQUEST_ID, value);
    }
    let status = response.status().as_u16();
    let microseconds = began.elapsed().as_micros() as u64;
    // a task of its own runs once this one has sent the response
    actix_web::rt::spawn(async move {
        tracing::info!(
            parent: &span,
            method = method.as_str(),
            path,
            status,
            microseconds,
            "request"
        );
    });
    Ok(response)
}

/// The caller's id where it is a plain one, else a new one.
fn id(request: &ServiceRequest) -> String {
    let sent = request.headers().get(REQUEST_ID);
    let plain =
        |id: &&str| (1..=64).contains(&id.len()) && id.bytes().all(|b| b.is_ascii_graphic());
    if let Some(id) = sent.and_then(|v| v.to_str().ok()).filter(plain) {
        return id.to_owned();
    }
    match request.app_data::<Data<State>>() {
        Some(state) => {
            let number = state.requests.fetch_add(1, Ordering::Relaxed);
            format!("{}-{number:x}", state.run)
        }
        None => "-".to_owned(),
    }
}
