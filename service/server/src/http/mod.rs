//! The door over HTTP: routes and what they share. Reading, calculating and writing are
//! not here.

mod accept;
mod body;
mod calculate;
mod content;
#[cfg(feature = "docs-ui")]
mod docs;
mod get;
mod log;
mod respond;
mod stream;

use std::sync::atomic::{AtomicBool, AtomicU64};
use std::time::Duration;

use actix_web::web::{self, Data, ServiceConfig};
use actix_web::{HttpRequest, HttpResponse};

pub use body::media_of;
pub use log::log;
pub use respond::choose;

use crate::pool::Pool;
use crate::problem::{self, Problem};
use crate::service::Service;

/// What every handler can reach.
pub struct State {
    /// The calculations.
    pub service: &'static Service,
    /// Threads for what takes long.
    pub pool: Pool,
    /// Longest time a calculation may take.
    pub deadline: Duration,
    /// Whether new requests are welcome.
    pub ready: AtomicBool,
    /// Requests so far, for their ids.
    pub requests: AtomicU64,
    /// Beginning of every request id.
    pub run: String,
}

/// Every route.
pub fn routes(config: &mut ServiceConfig, state: &Data<State>) {
    calculate::routes(config, state.service);
    get::routes(config);
    #[cfg(feature = "docs-ui")]
    docs::routes(config);
    config.default_service(web::to(not_found));
}

async fn not_found(request: HttpRequest) -> Result<HttpResponse, Problem> {
    let path: String = request.path().chars().take(100).collect();
    let detail = format!("nothing at `{path}`; /openapi.json lists every path");
    Err(Problem::new(&problem::UNKNOWN_PATH, detail))
}

/// The answer to a method that a path does not have.
async fn only(allowed: &'static str) -> HttpResponse {
    let detail = format!("allowed here: {allowed}");
    let problem = Problem::new(&problem::METHOD_NOT_ALLOWED, detail);
    let mut response = respond::problem(&problem);
    let allowed = actix_web::http::header::HeaderValue::from_static(allowed);
    let headers = response.headers_mut();
    headers.insert(actix_web::http::header::ALLOW, allowed);
    response
}
