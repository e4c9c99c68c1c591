//! Tests of `pile-relocation`. What is expected stands with its origin: the two invented houses,
//! statics by hand, cases calculated elsewhere, `pile-layout` itself.

mod brute;
mod events;
mod examples;
mod intervals;
mod jobs;
mod plans;
mod statics;
mod stories;

use super::*;
use crate::contract::{Answer, Call, Check, CheckStatus, Refusal, Verdict, Work, run};
use crate::examples::request as example;
use crate::quantity::{Force, ForceUnit};
use crate::trace::Trace;

/// A request from JSON.
fn request(text: &str) -> Request {
    let call: Call<Request> = serde_json::from_str(text).unwrap_or_else(|e| panic!("{e}"));
    call.request
}

/// The request of an example.
fn shown(name: &str) -> Request {
    request(&example::<PileRelocation>(name))
}

/// The answer to a request.
fn ask(request: &Request) -> Result<Answer<Outcome>, Refusal> {
    let call = Call::from(request.clone());
    run::<PileRelocation>(&call, Work::new(Trace::off(), None))
}

/// The answer, which there must be.
fn answer(request: &Request) -> Answer<Outcome> {
    ask(request).unwrap_or_else(|r| panic!("{:?}", r.issues))
}

/// Events from JSON.
fn events(text: &str) -> Vec<RelocationEvent> {
    serde_json::from_str(text).unwrap_or_else(|e| panic!("{e}"))
}

fn pile<'a>(outcome: &'a Outcome, label: &str) -> &'a RelocatedPile {
    let mut all = outcome.piles.iter();
    all.find(|p| p.label == label).expect("a pile")
}

fn check<'a>(answer: &'a Answer<Outcome>, id: &str, subject: &str) -> &'a Check {
    let is = |c: &&Check| c.id == id && c.subject.as_ref().is_some_and(|s| s.label == subject);
    let found = answer.checks.iter().find(is);
    found.unwrap_or_else(|| panic!("no {id} of {subject}: {:?}", answer.checks))
}

fn warned(answer: &Answer<Outcome>, code: &str) -> bool {
    answer.warnings.iter().any(|w| w.code == code)
}

fn lbf(force: Force) -> f64 {
    force.get(ForceUnit::Lbf)
}

#[track_caller]
fn near(found: f64, expected: f64, within: f64) {
    assert!(
        (found - expected).abs() <= within,
        "{found}, not {expected}"
    );
}
