//! A batch answered one item a line, each as soon as it is done and in order. At most
//! eight finished items wait for the client; a client that is gone ends the work.

use std::convert::Infallible;
use std::ops::ControlFlow;
use std::pin::Pin;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::task::{Context, Poll};
use std::time::{Duration, Instant};

use actix_web::HttpResponse;
use actix_web::body::{BodySize, MessageBody};
use actix_web::http::header::{CONTENT_TYPE, VARY};
use actix_web::web::Bytes;
use serde_json::json;
use sha2::{Digest, Sha256};
use tokio::sync::mpsc::error::TrySendError;
use tokio::sync::{mpsc, oneshot};

use super::calculate::{NDJSON, StopOnDrop, busy, read_batch};
use super::{State, content};
use crate::problem::Problem;
use crate::table::Entry;

/// Finished items that may wait for the client.
const IN_FLIGHT: usize = 8;
/// How often a finished item looks whether the client took one.
const LOOK_AGAIN: Duration = Duration::from_millis(1);

/// Answers a batch as a stream. A batch that cannot be read is a problem as usual.
pub async fn respond(
    entry: &'static Entry,
    state: &State,
    body: Bytes,
    lines: bool,
) -> Result<HttpResponse, Problem> {
    let service = state.service;
    let patience = state.deadline;
    let stop = Arc::new(AtomicBool::new(false));
    let guard = StopOnDrop(stop.clone());
    let (begin, begun) = oneshot::channel();
    let (sender, receiver) = mpsc::channel(IN_FLIGHT);
    let job = move || {
        let batch = match read_batch(&body, lines, service, entry) {
            Ok(batch) => batch,
            Err(problem) => return drop(begin.send(Err(problem))),
        };
        if begin.send(Ok(())).is_err() {
            return;
        }
        let mut line = Line {
            sender,
            digest: Sha256::new(),
            stop: stop.clone(),
            patience,
        };
        let counts = batch.answer(service, entry, &stop, |item| line.send(item));
        if let Some(counts) = counts {
            let digest = content::digest(line.digest.clone().finalize().as_slice());
            let last = json!({ "counts": counts, "content_digest": digest });
            // the last one; nothing is left to stop
            let _ = line.send(last.to_string().into_bytes());
        }
    };
    state.pool.run(job).map_err(|_| busy())?;
    match begun.await {
        Ok(Ok(())) => {}
        Ok(Err(problem)) => return Err(problem),
        Err(_) => return Err(Problem::internal()),
    }
    Ok(HttpResponse::Ok()
        .insert_header((CONTENT_TYPE, NDJSON))
        .insert_header((VARY, "Accept"))
        .body(Lines {
            receiver,
            _guard: guard,
        }))
}

/// Where finished items go.
struct Line {
    sender: mpsc::Sender<Bytes>,
    digest: Sha256,
    stop: Arc<AtomicBool>,
    patience: Duration,
}

impl Line {
    fn send(&mut self, mut line: Vec<u8>) -> ControlFlow<()> {
        line.push(b'\n');
        self.digest.update(&line);
        let mut line = Bytes::from(line);
        let since = Instant::now();
        while let Err(error) = self.sender.try_send(line) {
            match error {
                TrySendError::Full(back)
                    if since.elapsed() < self.patience && !self.stop.load(Ordering::Relaxed) =>
                {
                    line = back;
                    std::thread::sleep(LOOK_AGAIN);
                }
                _ => return ControlFlow::Break(()),
            }
        }
        ControlFlow::Continue(())
    }
}

/// The lines as a body.
struct Lines {
    receiver: mpsc::Receiver<Bytes>,
    _guard: StopOnDrop,
}

impl MessageBody for Lines {
    type Error = Infallible;

    fn size(&self) -> BodySize {
        BodySize::Stream
    }

    fn poll_next(
        mut self: Pin<&mut Self>,
        cx: &mut Context<'_>,
    ) -> Poll<Option<Result<Bytes, Infallible>>> {
        self.receiver.poll_recv(cx).map(|line| line.map(Ok))
    }
}
