//! Tests of `drag-force`: published and recomputed cases, random profiles against a numeric
//! integration, properties, faults, examples. Helpers that all of them use are here.

mod cases;
mod examples;
mod figures;
mod profiles;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::{DragForce, Outcome, Request};
use crate::contract::{Answer, Calculation, Call, CheckStatus, Refusal, Work, run};
use crate::trace::Trace;

/// A quantity on the wire.
fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

/// Reads, range-checks and runs a request; stages before physics must pass.
fn ask(request: Json) -> Result<Answer<Outcome>, Refusal> {
    let call: Call<Request> = serde_json::from_value(request).expect("a request");
    let mut issues = Vec::new();
    DragForce::lengths(&call.request, &mut issues);
    assert!(issues.is_empty(), "{issues:?}");
    call.request.validate().expect("in range");
    run::<DragForce>(&call, Work::new(Trace::on(), None))
}

fn answer(request: Json) -> Answer<Outcome> {
    ask(request).expect("an answer")
}

/// Pointers and codes of a refusal.
fn faults(request: Json) -> Vec<(String, String)> {
    let issues = ask(request).expect_err("a refusal").issues.into_iter();
    issues.map(|i| (i.pointer, i.code.into_owned())).collect()
}

fn statuses(answer: &Answer<Outcome>, id: &str) -> Vec<CheckStatus> {
    let checks = answer.checks.iter().filter(|c| c.id == id);
    checks.map(|c| c.status).collect()
}

fn warned(answer: &Answer<Outcome>, code: &str) -> bool {
    answer.warnings.iter().any(|w| w.code == code)
}

/// `got` is `want` within a relative tolerance.
#[track_caller]
fn close(got: f64, want: f64, tolerance: f64) {
    assert!(
        (got - want).abs() <= tolerance * want.abs(),
        "{got} is not {want} within {tolerance}"
    );
}

/// `got` rounded to the digits that were printed is `want`.
#[track_caller]
fn prints(got: f64, want: f64, unit: f64) {
    assert!(
        (got - want).abs() <= unit / 2.0,
        "{got} does not print {want}"
    );
}
