//! Tests of `pile-relocation`. What is expected stands with its origin: the two invented houses,
//! statics by hand, cases calculated elsewhere, `pile-layout` itself.

mod stories;

use super::*;
use crate::contract::{Answer, Call, Refusal, Verdict, Work, run};
use crate::trace::Trace;

/// A request from JSON.
fn request(text: &str) -> Request {
    let call: Call<Request> = serde_json::from_str(text).unwrap_or_else(|e| panic!("{e}"));
    call.request
}

/// The answer to a request.
fn ask(request: &Request) -> Result<Answer<Outcome>, Refusal> {
    run::<PileRelocation>(&Call::from(request.clone()), Work::new(Trace::off(), None))
}

/// The answer, which there must be.
fn answer(request: &Request) -> Answer<Outcome> {
    ask(request).unwrap_or_else(|r| panic!("{:?}", r.issues))
}
