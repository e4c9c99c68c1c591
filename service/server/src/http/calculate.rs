//! Routes of the calculations and of their batches. What takes long runs on the pool,
//! within the deadline; the rest is answered where it arrives.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use actix_web::web::{self, Bytes, Data, Payload, ServiceConfig};
use actix_web::{HttpRequest, HttpResponse};
use bearwell_engine::limits::{BATCH_BODY_BYTES, BODY_BYTES};
use tokio::sync::oneshot;
use tokio::time::timeout;
use tracing::Span;

use super::content::Content;
use super::{State, body, only, respond, stream};
use crate::batch::{self, Batch};
use crate::problem::{self, Problem};
use crate::service::Service;
use crate::table::{Ask, Entry, JSON};

/// One item a line.
pub const NDJSON: &str = "application/x-ndjson";

/// Adds two routes for each calculation.
pub fn routes(config: &mut ServiceConfig, service: &'static Service) {
    for entry in service.entries {
        let media: Arc<[&'static str]> = entry.media().into();
        let one = web::post().to(move |request, state, payload| {
            calculate(entry, media.clone(), request, state, payload)
        });
        let many = web::post()
            .to(move |request, state, payload| calculate_batch(entry, request, state, payload));
        for (path, route) in [
            (format!("/v1/{}", entry.name), one),
            (format!("/v1/{}/batch", entry.name), many),
        ] {
            let otherwise = web::to(|| only("POST"));
            config.service(web::resource(path).route(route).default_service(otherwise));
        }
    }
}

async fn calculate(
    entry: &'static Entry,
    media: Arc<[&'static str]>,
    request: HttpRequest,
    state: Data<State>,
    payload: Payload,
) -> Result<HttpResponse, Problem> {
    let media = respond::media(&request, &media)?;
    let (read, body) = body::take(&request, payload, BODY_BYTES, &entry.reads()).await?;
    let csv = entry.csv_of(read);
    let service = state.service;
    let answer = move |body: &Bytes, stop: Option<Arc<AtomicBool>>| {
        let schemas = &service.schemas;
        let ask = Ask {
            body,
            csv,
            schemas,
            media,
            form: None,
            stop,
        };
        let reply = service.answer(entry, &ask)?;
        Ok::<_, Problem>((reply.media, Content::new(reply.into_bytes())))
    };
    let (media, content) = if entry.takes_long(&body) {
        pooled(&state, move |stop| answer(&body, Some(stop.clone()))).await??
    } else {
        answer(&body, None)?
    };
    Ok(respond::content(media, content))
}

async fn calculate_batch(
    entry: &'static Entry,
    request: HttpRequest,
    state: Data<State>,
    payload: Payload,
) -> Result<HttpResponse, Problem> {
    let media = respond::media(&request, &[JSON, NDJSON])?;
    let (read, body) = body::take(&request, payload, BATCH_BODY_BYTES, &[JSON, NDJSON]).await?;
    let lines = read == NDJSON;
    if media == NDJSON {
        return stream::respond(entry, &state, body, lines).await;
    }
    let service = state.service;
    let answered = pooled(&state, move |stop| {
        let batch = read_batch(&body, lines, service, entry)?;
        let answers = batch::answer_json(&batch, service, entry, stop);
        Ok::<_, Problem>(answers.map(Content::new))
    });
    match answered.await?? {
        Some(content) => Ok(respond::content(JSON, content)),
        None => Err(late(&state)),
    }
}

/// Reads the envelope of a batch.
pub fn read_batch<'a>(
    body: &'a [u8],
    lines: bool,
    service: &Service,
    entry: &Entry,
) -> Result<Batch<'a>, Problem> {
    if lines {
        Batch::from_lines(body, service, entry)
    } else {
        Batch::from_json(body, service, entry)
    }
}

/// Sets the flag when it is dropped: whoever waited is gone.
pub struct StopOnDrop(pub Arc<AtomicBool>);

impl Drop for StopOnDrop {
    fn drop(&mut self) {
        self.0.store(true, Ordering::Relaxed);
    }
}

/// What is said when as much is waiting as is accepted.
pub fn busy() -> Problem {
    Problem::new(&problem::OVERLOADED, "too many calculations are waiting")
}

fn late(state: &State) -> Problem {
    let seconds = state.deadline.as_secs_f64();
    let detail = format!("stopped after {seconds} s");
    Problem::new(&problem::DEADLINE_EXCEEDED, detail)
}

/// Runs work on the pool until the deadline, or until the client is gone.
async fn pooled<T: Send + 'static>(
    state: &State,
    work: impl FnOnce(&Arc<AtomicBool>) -> T + Send + 'static,
) -> Result<T, Problem> {
    let stop = Arc::new(AtomicBool::new(false));
    let _guard = StopOnDrop(stop.clone());
    let (send, receive) = oneshot::channel();
    let span = Span::current();
    let job = move || {
        if !stop.load(Ordering::Relaxed) {
            // an error only means that nobody waits any more
            let _ = send.send(span.in_scope(|| work(&stop)));
        }
    };
    state.pool.run(job).map_err(|_| busy())?;
    match timeout(state.deadline, receive).await {
        Ok(Ok(done)) => Ok(done),
        Ok(Err(_)) => Err(Problem::internal()),
        Err(_) => Err(late(state)),
    }
}
